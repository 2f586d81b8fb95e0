/* em-dxf: the words of an ASCII drawing exchange file.
 *
 * Reads TEXT, MTEXT and DIMENSION entities and the header's $INSUNITS, nothing else, and trusts nothing: group codes must
 * be whole numbers, the file must begin with a section and end with EOF. Formatting codes are taken off.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-notes.h"

#include <gio/gio.h>
#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

enum { FILE_BYTES_MAX = 256 * 1024 * 1024, TEXT_BYTES_MAX = 4 * 1024 * 1024, CODE_MIN = -5, CODE_MAX = 1071,
      CODE_BYTES_MAX = 256 };

typedef enum { ENTITY_OTHER, ENTITY_TEXT, ENTITY_MTEXT, ENTITY_DIMENSION } Entity;

typedef struct
{
  const char *at, *end;
  guint       line;          /* of the value last read */
  int         code;
  const char *value;
  gsize       length;
  GString    *text;          /* what was found */
  Entity      entity;
  GString    *words;         /* of the entity being read */
  double      measure;
  int         type;
  gboolean    is_insunits, has_section, has_eof;
  int         insunits;
} Reader;

static gboolean
fail (const Reader *r, GError **error, const char *what)
{
  g_set_error (error, G_IO_ERROR, G_IO_ERROR_INVALID_DATA, _("Line %u: %s"), r->line, what);
  return FALSE;
}

static gboolean
read_line (Reader *r, const char **out_line, gsize *out_length)
{
  const char *stop;

  if (r->at >= r->end)
    return FALSE;
  stop = memchr (r->at, '\n', (gsize) (r->end - r->at));
  if (stop == NULL)
    stop = r->end;
  *out_line = r->at;
  *out_length = (gsize) (stop - r->at);
  if (*out_length > 0 && (*out_line)[*out_length - 1] == '\r')
    (*out_length)--;
  r->at = stop < r->end ? stop + 1 : r->end;
  r->line++;
  return TRUE;
}

/* A whole number in blanks; FALSE for anything else. */
static gboolean
parse_whole (const char *text, gsize length, gint64 low, gint64 high, int *out_value)
{
  char number[16];
  gint64 value;

  while (length > 0 && (*text == ' ' || *text == '\t'))
    text++, length--;
  while (length > 0 && (text[length - 1] == ' ' || text[length - 1] == '\t'))
    length--;
  if (length == 0 || length >= sizeof number)
    return FALSE;
  memcpy (number, text, length);
  number[length] = '\0';
  if (!g_ascii_string_to_signed (number, 10, low, high, &value, NULL))
    return FALSE;
  *out_value = (int) value;
  return TRUE;
}

/* The next group. FALSE at the end of the file or with error set. */
static gboolean
next_group (Reader *r, GError **error)
{
  const char *code;
  gsize length;

  if (!read_line (r, &code, &length))
    return FALSE;
  if (!parse_whole (code, length, CODE_MIN, CODE_MAX, &r->code))
    return fail (r, error, _("not a group code"));
  if (!read_line (r, &r->value, &r->length))
    return fail (r, error, _("the file is cut short"));
  return TRUE;
}

static gboolean
is_value (const Reader *r, const char *word)
{
  return r->length == strlen (word) && memcmp (r->value, word, r->length) == 0;
}

/* Old files hold bytes of a code page: those are read as Latin-1 (ISO 8859-1), control bytes as blanks. */
static void
append_bytes (GString *to, const char *bytes, gsize length)
{
  gboolean is_utf8 = g_utf8_validate_len (bytes, length, NULL);

  for (gsize i = 0; i < length; i++)
    {
      guchar c = (guchar) bytes[i];

      if (c < 0x20 || c == 0x7f || (!is_utf8 && c >= 0x80 && c < 0xa0))
        g_string_append_c (to, ' ');
      else if (c < 0x80 || is_utf8)
        g_string_append_c (to, (char) c);
      else
        g_string_append_unichar (to, c);
    }
}

/* "%%c" ⌀, "%%d" °, "%%p" ±, "%%%" %, "%%u" and "%%o" nothing, "%%065" a character. Returns bytes taken. */
static gsize
append_percent (GString *to, const char *at)
{
  char c = g_ascii_tolower (at[2]);

  if (c == 'c' || c == 'd' || c == 'p')
    g_string_append (to, c == 'c' ? "⌀" : c == 'd' ? "°" : "±");
  else if (c == '%')
    g_string_append_c (to, '%');
  else if (g_ascii_isdigit (c) && g_ascii_isdigit (at[3]) && g_ascii_isdigit (at[4]))
    {
      int value = (at[2] - '0') * 100 + (at[3] - '0') * 10 + (at[4] - '0');

      if (value >= 0x20 && value != 0x7f)
        g_string_append_unichar (to, (gunichar) value);
      return 5;
    }
  else if (c != 'u' && c != 'o' && c != 'k')
    return 0;
  return 3;
}

/* "\U+2205" */
static gsize
append_unicode (GString *to, const char *at)
{
  gunichar c = 0;

  if (at[2] != '+')
    return 0;
  for (int i = 3; i < 7; i++)
    {
      if (!g_ascii_isxdigit (at[i]))
        return 0;
      c = c * 16 + (gunichar) g_ascii_xdigit_value (at[i]);
    }
  if (g_unichar_validate (c) && c >= 0x20)
    g_string_append_unichar (to, c);
  return 7;
}

/* The semicolon that ends a code, near by: so that a text without any stays linear. */
static const char *
find_stop (const char *at)
{
  for (int i = 0; i < CODE_BYTES_MAX && at[i] != '\0'; i++)
    if (at[i] == ';')
      return at + i;
  return NULL;
}

/* "\S1/2;" a fraction, "\S+.002^-.001;" a stacked tolerance; both as a slash. */
static gsize
append_stack (GString *to, const char *at)
{
  const char *stop = find_stop (at);

  if (stop == NULL)
    return 2;
  if (to->len > 0 && g_ascii_isdigit (to->str[to->len - 1]))
    g_string_append_c (to, ' ');
  for (const char *c = at + 2; c < stop; c++)
    {
      if (*c == '^' || *c == '#')
        g_string_append_c (to, '/');
      else if (*c != ' ' && *c != '\\')
        g_string_append_c (to, *c);
    }
  return (gsize) (stop - at) + 1;
}

/* One backslash code of MTEXT; bytes taken. */
static gsize
append_code (GString *to, const char *at)
{
  const char *stop;
  gsize n;

  switch (at[1])
    {
    case 'P': case 'N': case 'X':
      g_string_append_c (to, '\n');
      return 2;
    case '~':
      g_string_append_c (to, ' ');
      return 2;
    case '\\': case '{': case '}':
      g_string_append_c (to, at[1]);
      return 2;
    case 'L': case 'l': case 'O': case 'o': case 'K': case 'k':
      return 2;
    case 'S':
      return append_stack (to, at);
    case 'U':
      n = append_unicode (to, at);
      return n > 0 ? n : 2;
    case 'A': case 'C': case 'c': case 'F': case 'f': case 'H': case 'p': case 'Q': case 'T': case 'W':
      stop = find_stop (at);
      return stop != NULL ? (gsize) (stop - at) + 1 : 2;
    default:
      /* A letter outside ASCII is no code: its bytes stay together. */
      return at[1] == '\0' || (guchar) at[1] >= 0x80 ? 1 : 2;
    }
}

/* Takes formatting off. In TEXT and DIMENSION only the percent codes are formatting, but the backslash ones are met there too. */
static char *
strip_codes (const char *raw)
{
  GString *plain = g_string_new (NULL);

  for (const char *at = raw; *at != '\0';)
    {
      gsize n = 0;

      if (at[0] == '%' && at[1] == '%')
        n = append_percent (plain, at);
      else if (at[0] == '\\')
        n = append_code (plain, at);
      else if (at[0] == '{' || at[0] == '}')
        n = 1;
      else if (at[0] == '^' && (at[1] == 'J' || at[1] == 'I' || at[1] == 'M' || at[1] == ' '))
        {
          g_string_append_c (plain, at[1] == 'J' ? '\n' : at[1] == ' ' ? '^' : ' ');
          n = 2;
        }
      if (n == 0)
        {
          g_string_append_c (plain, *at);
          n = 1;
        }
      at += n;
    }
  return g_string_free (plain, FALSE);
}

/* What a dimension says when its text is left to the measurement. The sixth decimal of a drawing is noise. */
static void
append_measure (GString *to, const Reader *r)
{
  char number[G_ASCII_DTOSTR_BUF_SIZE];
  int type = r->type & 7;
  double value = type == 2 || type == 5 ? r->measure * 180 / G_PI : r->measure;

  if (!isfinite (value) || value < 0)
    return;
  g_string_append (to, type == 3 ? "⌀" : type == 4 ? "R" : "");
  g_string_append (to, g_ascii_formatd (number, sizeof number, "%.6g", value));
  g_string_append (to, type == 2 || type == 5 ? "°" : "");
}

static void
end_entity (Reader *r)
{
  if (r->entity != ENTITY_OTHER)
    {
      g_autofree char *plain = strip_codes (r->words->str);
      const char *gap = r->entity == ENTITY_DIMENSION ? strstr (plain, "<>") : NULL;

      if (r->entity == ENTITY_DIMENSION && *plain == '\0')
        append_measure (r->text, r);
      else if (gap != NULL)
        {
          g_string_append_len (r->text, plain, gap - plain);
          append_measure (r->text, r);
          g_string_append (r->text, gap + 2);
        }
      else
        g_string_append (r->text, plain);
      if (r->text->len > 0 && r->text->str[r->text->len - 1] != '\n')
        g_string_append_c (r->text, '\n');
    }
  g_string_truncate (r->words, 0);
  r->measure = (double) NAN;
  r->type = 0;
  r->entity = ENTITY_OTHER;
}

static void
read_number (const Reader *r, double *out_value)
{
  char number[40];
  char *end;

  if (r->length == 0 || r->length >= sizeof number)
    return;
  memcpy (number, r->value, r->length);
  number[r->length] = '\0';
  *out_value = g_ascii_strtod (number, &end);
}

static void
read_group (Reader *r)
{
  if (r->code == 0)
    {
      end_entity (r);
      r->has_section |= is_value (r, "SECTION");
      r->has_eof |= is_value (r, "EOF");
      r->entity = is_value (r, "TEXT") ? ENTITY_TEXT : is_value (r, "MTEXT") ? ENTITY_MTEXT : is_value (r, "DIMENSION")
                  ? ENTITY_DIMENSION : ENTITY_OTHER;
    }
  else if (r->code == 9)
    r->is_insunits = is_value (r, "$INSUNITS");
  else if (r->is_insunits && r->code == 70)
    {
      parse_whole (r->value, r->length, 0, 100, &r->insunits);
      r->is_insunits = FALSE;
    }
  else if (r->entity != ENTITY_OTHER && (r->code == 1 || (r->code == 3 && r->entity == ENTITY_MTEXT)))
    append_bytes (r->words, r->value, r->length);
  else if (r->entity == ENTITY_DIMENSION && r->code == 42)
    read_number (r, &r->measure);
  else if (r->entity == ENTITY_DIMENSION && r->code == 70)
    parse_whole (r->value, r->length, 0, 255, &r->type);
}

static gboolean
read_all (Reader *r, GError **error)
{
  GError *problem = NULL;

  while (!r->has_eof && next_group (r, &problem))
    {
      read_group (r);
      if (!r->has_section && r->code != 999)
        return fail (r, error, _("not an ASCII drawing exchange file"));
      if (r->text->len + r->words->len > TEXT_BYTES_MAX)
        return fail (r, error, _("more text than a drawing holds"));
    }
  if (problem != NULL)
    {
      g_propagate_error (error, problem);
      return FALSE;
    }
  return r->has_eof || fail (r, error, _("the file is cut short"));
}

char *
em_dxf_text (const char *bytes, gsize length, EmUnits *out_units, gboolean *out_has_units, GError **error)
{
  Reader r = { .at = bytes, .end = bytes + length, .text = g_string_new (NULL), .words = g_string_new (NULL),
              .measure = (double) NAN };
  gboolean is_good;

  if (length > FILE_BYTES_MAX)
    is_good = fail (&r, error, _("the file is too large"));
  else if (length == 0 || memchr (bytes, '\0', length) != NULL)
    is_good = fail (&r, error, _("not an ASCII drawing exchange file"));
  else
    is_good = read_all (&r, error);
  g_string_free (r.words, TRUE);
  if (!is_good)
    {
      g_string_free (r.text, TRUE);
      return NULL;
    }
  /* The header's units are a note that governs, so they go first, as one would write it. 1: inches, 4: millimetres. */
  *out_has_units = r.insunits == 1 || r.insunits == 4;
  if (*out_has_units)
    {
      *out_units = r.insunits == 1 ? EM_UNITS_INCH : EM_UNITS_METRIC;
      g_string_prepend (r.text, r.insunits == 1 ? "UNITS: INCHES\n" : "UNITS: MM\n");
    }
  return g_string_free (r.text, FALSE);
}
