/* em-command-read: `estimend read`: drawing notes into proposed features.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-command-private.h"

#include "em-notes.h"
#include "em-save.h"
#include "em-words.h"

#include <glib/gi18n.h>

#include <string.h>

/* A longer file is no note. */
#define NOTES_MOST (64 * 1024 * 1024)

/* The file's text; a DXF's notes. NULL and error. */
static char *
load_notes (const char *path, gsize *out_length, EmUnits *inout_units, GError **error)
{
  g_autofree char *bytes = NULL;
  gsize length = 0;
  EmFileStamp stamp;

  em_file_stamp (path, &stamp);
  length = stamp.size;   /* of a pipe: none, and it is read first */
  if (length <= NOTES_MOST && !g_file_get_contents (path, &bytes, &length, error))
    return NULL;
  if (length > NOTES_MOST)
    {
      g_autofree char *size = g_strdup_printf ("%" G_GSIZE_FORMAT, length);

      g_set_error (error, EM_FILE_ERROR, EM_FILE_ERROR_TOO_LARGE, _("%s: too large for notes: %s bytes, at most %d."), path, size, NOTES_MOST);
      return NULL;
    }
  g_autofree char *lower = g_ascii_strdown (path, -1);
  if (g_str_has_suffix (lower, ".dxf"))
    {
      EmUnits units = *inout_units;
      gboolean has_units = FALSE;
      char *text = em_dxf_text (bytes, length, &units, &has_units, error);

      if (text == NULL)
        {
          g_prefix_error (error, "%s: ", path);
          return NULL;
        }
      if (has_units)
        *inout_units = units;
      *out_length = strlen (text);
      return text;
    }
  *out_length = length;
  return g_steal_pointer (&bytes);
}

/* The notes as UTF-8 for a quote; bytes that are none become U+FFFD. */
static gboolean
save_quote (EmReadResult *result, const char *text, gsize length, EmUnits units, const char *wire, const char *path, GError **error)
{
  g_autofree char *valid = g_utf8_make_valid (text, (gssize) length);
  EmQuoteFile file;
  gboolean is_good;

  em_quote_file_init (&file);
  file.quote.units = units;
  em_notes_apply (result, valid, &file.quote);
  is_good = em_quote_set_text (&file.quote, EM_QUOTE_FILLER, wire) == EM_OK && em_quote_file_save (path, &file, error);
  em_quote_file_clear (&file);
  return is_good;
}

static void
print_people (const EmReadResult *result, const char *text)
{
  g_print (ngettext ("%d feature proposed.\n", "%d features proposed.\n", (gulong) result->n_features), result->n_features);
  for (guint i = 0; i < result->questions->len; i++)
    {
      const EmReadQuestion *question = &g_array_index (result->questions, EmReadQuestion, i);

      g_print (_("Line %u, feature %d: %s\n"), question->line, question->feature, em_notes_question_text (question->code));
      for (int k = 0; k < question->n_answers; k++)
        g_print ("  – %s\n", em_notes_answer_text (question->answer[k]));
    }
  for (guint i = 0; i < result->unused->len; i++)
    {
      const EmReadSpan *span = &g_array_index (result->unused, EmReadSpan, i);
      g_autofree char *words = g_utf8_make_valid (text + span->start, span->length);

      g_strdelimit (words, "\r\n", ' ');
      g_print (_("Line %u, not used: %s\n"), span->line, words);
    }
}

static int
read_notes (const char *path, const char *out, const char *wire, gboolean is_tsv, EmUnits units)
{
  g_autoptr (GError) error = NULL;
  gsize length = 0;
  g_autofree char *text = load_notes (path, &length, &units, &error);
  g_autoptr (EmLexicon) lexicon = text != NULL ? em_lexicon_load_default (&error) : NULL;

  if (lexicon == NULL)
    {
      g_printerr ("estimend: %s\n", error->message);
      return EM_EXIT_INPUT;
    }
  /* Byte offsets of the result must hold in the text that the quote keeps. */
  g_autofree char *valid = out != NULL ? g_utf8_make_valid (text, (gssize) length) : NULL;
  if (valid != NULL)
    {
      g_free (text);
      text = g_steal_pointer (&valid);
      length = strlen (text);
    }
  g_autoptr (EmReadResult) result = em_notes_read (lexicon, text, length, units);
  if (result->n_unread > 0)
    {
      g_autofree char *unread = g_strdup_printf ("%" G_GSIZE_FORMAT, result->n_unread);

      g_printerr (_("estimend: %s: only the first %d bytes were read, the last %s were not.\n"), path, EM_NOTES_READ_MAX, unread);
    }
  if (is_tsv)
    {
      g_autofree char *tsv = em_read_result_to_tsv (result, text);
      g_print ("%s", tsv);
    }
  else
    print_people (result, text);
  if (out != NULL && !save_quote (result, text, length, units, wire, out, &error))
    {
      g_printerr ("estimend: %s\n", error->message);
      return EM_EXIT_INPUT;
    }
  return EM_EXIT_GOOD;
}

int
em_command_read (int argc, char **argv)
{
  g_autofree char *out = NULL, *units = NULL, *wire = NULL;
  gboolean is_tsv = FALSE;
  const GOptionEntry entries[] = {
    { "tsv", 0, 0, G_OPTION_ARG_NONE, &is_tsv, N_("For other programs: line, feature, field, value, unit"), NULL },
    { "output", 'o', 0, G_OPTION_ARG_FILENAME, &out, N_("Write the proposals as a quote"), N_("OUT.estimend") },
    { "wire", 0, 0, G_OPTION_ARG_STRING, &wire, N_("With -o: the wire to price with, by its id in the catalog"), N_("ID") },
    { "units", 0, 0, G_OPTION_ARG_STRING, &units, N_("What a bare number is when nothing says: mm (default) or in"), N_("UNITS") },
    G_OPTION_ENTRY_NULL
  };
  int status = EM_EXIT_INPUT;

  if (!em_command_options (&argc, &argv, _("NOTES"), entries, &status))
    return status;
  if (argc != 2)
    return em_command_misuse (_("read needs one file of notes."));
  gboolean is_inch = g_strcmp0 (units, "in") == 0;
  if (units != NULL && !is_inch && !g_str_equal (units, "mm"))
    return em_command_misuse (_("--units is “mm” or “in”, not “%s”."), units);
  return read_notes (argv[1], out, wire, is_tsv, is_inch ? EM_UNITS_INCH : EM_UNITS_METRIC);
}
