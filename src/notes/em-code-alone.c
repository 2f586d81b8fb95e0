/* em-code-alone: "T-204 CORE INSERT", "die ring D-118, H13": a number that no word says of what it is.
 *
 * At the head of a note such a number is the tool's (of 71 in the corpus that a person gave to a field, all but those behind a word
 * for a drawing or an order). It is a guess from where it stands, and marked as one.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-code.h"

#include <string.h>

enum { HEAD_LINES = 3, MOST_LETTERS = 3, LEAST_DIGITS = 3, LEAST_GLUED_DIGITS = 4 /* without a dash */, MOST_DIGITS = 5, MOST_ITEMS = 4, MOST_TAIL_DIGITS = 8, TAIL_WINDOW = 8 /* items from the tool to its code */ };

/* Where the code that begins at text[at] ends, or at: capitals, a dash or none, digits. */
static guint32
end_of_code (const char *text, guint32 at)
{
  guint32 end = at, dash, digits;

  while (g_ascii_isupper (text[end]))
    end++;
  if (end == at || end > at + MOST_LETTERS)
    return at;
  dash = text[end] == '-';
  for (digits = end + dash; g_ascii_isdigit (text[digits]);)
    digits++;
  if (digits - end - dash < (dash ? LEAST_DIGITS : LEAST_GLUED_DIGITS) || digits - end - dash > MOST_DIGITS)
    return at;
  /* "A-77.2", "SR15,5", "17-4PH H1025", "X-12/3", "B-12\"" */
  return text[digits] == '\0' || strchr (" \t\r\n,;:)", text[digits]) != NULL || (text[digits] == '.' && !g_ascii_isalnum (text[digits + 1])) ? digits : at;
}

/* "H1025" is how a steel was aged, "UNS S17400" and "EN AW-7075" are steels. */
static gboolean
is_of_metal (const EmItems *items, guint i)
{
  static const char *const before[] = { "uns", "aisi", "en", "cond", "cond.", "condition", "report", "card", "ticket" };

  return em_phrase_find (em_item (items, i)->phrase, EM_SAYS_BASE) != NULL || em_phrase_find (em_item (items, i)->phrase, EM_SAYS_MATERIAL) != NULL ||
         items->text[em_item (items, i)->start] == 'H' || (i > 0 && em_item_is_any_word_of (items, i - 1, before, G_N_ELEMENTS (before))) ||
         (i > 0 && em_phrase_find (em_item (items, i - 1)->phrase, EM_SAYS_BASE) != NULL);
}

/* How many items the code at i has, none of which anything has used; 0: it is none. */
static guint
code_items (const EmItems *items, guint i)
{
  guint32 start = em_item (items, i)->start, end = end_of_code (items->text, start);
  guint n = 0;

  if (end == start || (start > 0 && strchr (" \t\n(", items->text[start - 1]) == NULL) || is_of_metal (items, i))
    return 0;
  while (n < MOST_ITEMS && i + n < items->items->len && em_item (items, i + n)->start < end)
    {
      const EmItem *item = em_item (items, i + n);

      /* The letter alone may have been taken for the label of a thickness. */
      if ((item->is_used && n > 0) || item->start + item->length > end || (item->type == EM_ITEM_SIZE && em_item_size (items, i + n)->chain != 0))
        return 0;
      n++;
    }
  return n;
}

static gboolean
is_of_repair (const EmGrammar *grammar, guint first, guint end)
{
  for (guint p = 0; p < grammar->protos->len; p++)
    {
      const EmProto *proto = grammar->protos->pdata[p];

      for (guint k = 0; k < proto->sizes->len; k++)
        if (g_array_index (proto->sizes, guint, k) >= first && g_array_index (proto->sizes, guint, k) < end)
          return TRUE;
    }
  return FALSE;
}

/* The only code among the note's first lines; *out_n: its items, 0 where there is none or several. */
static guint
find_code (const EmItems *items, guint *out_n)
{
  guint found = 0, n_lines = 0;

  *out_n = 0;
  for (guint i = 0; i < items->items->len && n_lines < HEAD_LINES; i++)
    if (em_item (items, i)->type == EM_ITEM_LINE)
      n_lines += i > 0 && em_item (items, i - 1)->type != EM_ITEM_LINE;
    else if (code_items (items, i) > 0)
      {
        if (*out_n > 0)
          {
            *out_n = 0;
            return 0;
          }
        found = i;
        *out_n = code_items (items, i);
        i += *out_n - 1;
      }
  return found;
}

/* "tool", "Druckgießform", "molde" */
static gboolean
names_tool (const EmItems *items, guint i)
{
  static const char *const tools[] = { "mold", "mould", "die", "tool", "form", "werkzeug", "wz", "molde", "matriz", "hilera", "moule", "outil" };
  const EmItem *item = em_item (items, i);

  for (gsize k = 0; item->type != EM_ITEM_SIZE && k < G_N_ELEMENTS (tools); k++)
    {
      gsize n = strlen (tools[k]);

      if (item->length >= n && g_ascii_strncasecmp (items->text + item->start + item->length - n, tools[k], n) == 0 && (item->length == n || n > 3 || g_ascii_strncasecmp (tools[k], "wz", n) == 0))
        return TRUE;
      if (item->length > n && g_ascii_strncasecmp (items->text + item->start, tools[k], n) == 0 && items->text[item->start + n] == ' ')
        return TRUE;
    }
  return FALSE;
}

/* Where the code that begins at text[at] ends its part, or at: "#M-602", "4178-03", "4411". */
static guint32
end_of_tail (const char *text, guint32 at)
{
  guint32 end = at, n_digits = 0;
  gboolean is_led = text[at] == '#', has_dash = FALSE;

  end += is_led;
  while (g_ascii_isupper (text[end]) && end < at + is_led + MOST_LETTERS)
    end++;
  for (; g_ascii_isdigit (text[end]) || (text[end] == '-' && g_ascii_isdigit (text[end + 1])); end++)
    {
      n_digits += g_ascii_isdigit (text[end]) != 0;
      has_dash |= text[end] == '-';
    }
  if (n_digits < (is_led || has_dash ? LEAST_DIGITS : LEAST_GLUED_DIGITS) || n_digits > MOST_TAIL_DIGITS)
    return at;
  while (text[end] == ' ')
    end++;
  return text[end] == '\0' || strchr ("\r\n,;)(", text[end]) != NULL || (text[end] == '.' && !g_ascii_isdigit (text[end + 1])) ? end : at;
}

/* "Bread tray mold 4411", "TOOL: CLOSURE 24-CAV, #M-602": the code that ends the part, or the line, that the tool begins; *out_n its items, 0: none. */
static guint
find_tail (const EmItems *items, guint *out_n)
{
  guint tool = G_MAXUINT, n_lines = 0;

  *out_n = 0;
  for (guint i = 0; i < items->items->len && n_lines < HEAD_LINES; i++)
    {
      const EmItem *item = em_item (items, i);
      guint32 end;

      if (item->type == EM_ITEM_LINE)
        n_lines += i > 0 && em_item (items, i - 1)->type != EM_ITEM_LINE;
      if (names_tool (items, i))
        tool = i;
      if (tool == G_MAXUINT || i <= tool || i > tool + TAIL_WINDOW || item->is_used || (i > 0 && em_item_is_glued (items, i) && !em_item_is_sign (items, i - 1, '#')) || is_of_metal (items, i))
        continue;
      end = end_of_tail (items->text, item->start);
      while (end > item->start && items->text[end - 1] == ' ')
        end--;
      if (end == item->start)
        continue;
      while (i + *out_n < items->items->len && em_item (items, i + *out_n)->start < end)
        (*out_n)++;
      return i;
    }
  return 0;
}

void
em_code_read_alone (EmGrammar *grammar)
{
  EmItems *items = grammar->items;
  guint n, first = find_code (items, &n);
  EmGiven given;

  if (n == 0)
    first = find_tail (items, &n);
  if (n == 0 || is_of_repair (grammar, first, first + n))
    return;
  for (guint k = 0; k < grammar->general->len; k++)
    if (strcmp (g_array_index (grammar->general, EmGiven, k).field.field, "tool_number") == 0)
      return;
  /* The sign is none of it. */
  if (n > 1 && em_item_is_sign (items, first, '#'))
    {
      em_item (items, first++)->is_used = TRUE;
      n--;
    }
  given = em_given_new ("tool_number", NULL, em_item (items, first));
  given.field.length = em_item (items, first + n - 1)->start + em_item (items, first + n - 1)->length - em_item (items, first)->start;
  given.field.state = EM_READ_INFERRED;
  given.field.reason = "from-words";
  g_array_append_val (grammar->general, given);
  for (guint k = first; k < first + n; k++)
    {
      em_item (items, k)->is_used = TRUE;
      if (em_item (items, k)->type == EM_ITEM_SIZE)
        em_item_size (items, k)->roles |= EM_ROLE_REFERENCE;
    }
}
