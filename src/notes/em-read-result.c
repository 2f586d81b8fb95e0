/* em-read-result: what a reading holds, and its rows as text.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-read-result.h"

#include <math.h>
#include <string.h>

EmReadResult *
em_read_result_new (void)
{
  EmReadResult *result = g_new0 (EmReadResult, 1);

  result->fields = g_array_new (FALSE, FALSE, sizeof (EmReadField));
  result->questions = g_array_new (FALSE, FALSE, sizeof (EmReadQuestion));
  result->sets = g_array_new (FALSE, FALSE, sizeof (EmReadField));
  result->spans = g_array_new (FALSE, FALSE, sizeof (EmReadSpan));
  result->unused = g_array_new (FALSE, FALSE, sizeof (EmReadSpan));
  result->ids = g_array_new (FALSE, FALSE, sizeof (guint32));
  result->strings = g_string_chunk_new (256);
  return result;
}

void
em_read_result_free (EmReadResult *result)
{
  if (result == NULL)
    return;
  g_array_unref (result->fields);
  g_array_unref (result->questions);
  g_array_unref (result->sets);
  g_array_unref (result->spans);
  g_array_unref (result->unused);
  g_array_unref (result->ids);
  g_string_chunk_free (result->strings);
  g_free (result);
}

static const char *
unit_of (const char *field)
{
  static const struct { const char *field, *unit; } units[] = {
    { "angle", "deg" },  { "draft", "deg" },    { "arc", "deg" },  { "area", "mm2" },
    { "hardness", "HRC" }, { "count", "" },     { "corners", "" }, { "wraps", "" },
    { "tools", "" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (units); i++)
    if (strcmp (units[i].field, field) == 0)
      return units[i].unit;
  return "mm";
}

/* One line of clean UTF-8: what is no character or ends a column becomes a space. */
static void
append_clean (GString *tsv, const char *text, gsize length)
{
  const char *end = text + length;

  while (text < end)
    {
      gunichar c = g_utf8_get_char_validated (text, end - text);
      gsize n = 1;

      if (c == (gunichar) -1 || c == (gunichar) -2 || c < 0x20 || c == 0x7f)
        g_string_append_c (tsv, ' ');
      else
        {
          n = (gsize) (g_utf8_next_char (text) - text);
          g_string_append_len (tsv, text, (gssize) n);
        }
      text += n;
    }
}

static void
append_field_row (GString *tsv, const EmReadField *field)
{
  char number[40];

  if (field->state == EM_READ_MISSING)
    return;
  g_string_append_printf (tsv, "%u\t%d\t%s\t", field->line, field->feature, field->field);
  if (field->text != NULL)
    {
      append_clean (tsv, field->text, strlen (field->text));
      g_string_append (tsv, "\t\n");
      return;
    }
  /* Twelve digits hold every exact inch conversion that drawings use, without the tail of binary fractions. */
  g_ascii_formatd (number, sizeof number, "%.12g", field->value);
  g_string_append_printf (tsv, "%s\t%s\n", number, unit_of (field->field));
}

char *
em_read_result_to_tsv (const EmReadResult *result, const char *text)
{
  GString *tsv = g_string_new (NULL);
  guint f = 0, q = 0;

  for (int feature = 0; feature <= result->n_features; feature++)
    {
      for (; f < result->fields->len; f++)
        {
          const EmReadField *field = &g_array_index (result->fields, EmReadField, f);

          if (field->feature != feature)
            break;
          append_field_row (tsv, field);
        }
      for (; q < result->questions->len; q++)
        {
          const EmReadQuestion *question = &g_array_index (result->questions, EmReadQuestion, q);

          if (question->feature != feature)
            break;
          g_string_append_printf (tsv, "%u\t%d\tquestion\t%s\t\n", question->line, feature, question->code);
        }
    }
  for (guint i = 0; i < result->unused->len; i++)
    {
      const EmReadSpan *span = &g_array_index (result->unused, EmReadSpan, i);

      if (span->is_minor)
        continue;
      g_string_append_printf (tsv, "%u\t0\tunused\t", span->line);
      append_clean (tsv, text + span->start, span->length);
      g_string_append (tsv, "\t\n");
    }
  return g_string_free (tsv, FALSE);
}
