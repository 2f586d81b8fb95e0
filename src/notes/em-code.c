/* em-code: numbers of orders, drawings and tools.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-govern-parts.h"

#include "em-list.h"
#include "em-name.h"

#include <string.h>

enum { LONG_NUMBER = 1000 /* longer than a size */, CODE_DIGITS = 3 /* of a number that may be a code */, REFERENCE_WINDOW = 12 /* items of a code */,
       APART_WINDOW = 7 /* items from "order" to "no." */ };

static guint end_of_run (const Governor *g, guint run);

/* Something follows without a blank: "A-77" is one number though "a" is a little word. */
static gboolean
is_glued_on (const Governor *g, guint i)
{
  return i + 1 < g->c->end && (item (g, i + 1)->flags & EM_TOKEN_GLUED) != 0 && !em_item_is_sign (g->c->items, i + 1, ':') &&
         !em_item_is_sign (g->c->items, i + 1, '.') && !em_item_is_sign (g->c->items, i + 1, ',') &&
           !em_item_is_sign (g->c->items, i + 1, ')');
}

/* "NO", "number" */
static gboolean
is_number_word (const Governor *g, guint i)
{
  const EmSense *glue = says (g, i, EM_SAYS_GLUE);

  return glue != NULL && g_strcmp0 (glue->value, "number") == 0 && !is_glued_on (g, i);
}

/* "mold 2 cav": how many of them the mold has. */
static gboolean
is_counted_place (const Governor *g, guint i)
{
  const EmSense *place = i < g->c->end ? says (g, i, EM_SAYS_PLACE) : NULL;

  return place != NULL && g_strcmp0 (place->value, "counted") == 0;
}

/* "Werkzeug 2x4-fach", "Werkzeug 8-fach", "DIE 2-UP": of how many cavities it is. */
static gboolean
is_fold (const Governor *g, guint i)
{
  static const char *const folds[] = { "fach", "up", "drop", "impression", "imp", "hole", "strand" };

  for (guint k = i + 1; k < g->c->end && k <= i + EM_GOVERN_WINDOW && (item (g, k)->flags & EM_TOKEN_GLUED) != 0; k++)
    if (em_item_is_any_word_of (g->c->items, k, folds, G_N_ELEMENTS (folds)))
      return TRUE;
  return FALSE;
}

/* "MOULD 663 B-SIDE", "TOOL 812 LOWER HALF": which part of it. */
static gboolean
is_before_part (const Governor *g, guint i)
{
  static const char *const halves[] = { "half", "side", "seite", "hälfte", "lado", "mitad", "côté" };

  if (i >= g->c->end)
    return FALSE;
  for (guint k = i; k < g->c->end && k < i + EM_GOVERN_WINDOW - 1; k++)
    for (gsize h = 0; h < G_N_ELEMENTS (halves); h++)
      if (item (g, k)->length >= strlen (halves[h]) &&
          g_ascii_strncasecmp (g->c->items->text + item (g, k)->start + item (g, k)->length - strlen (halves[h]), halves[h], strlen (halves[h])) == 0)
        return TRUE;
  return says (g, i, EM_SAYS_PLACE) != NULL && says (g, i, EM_SAYS_KIND) == NULL && !is_counted_place (g, i);
}

/* "MOLD 2 PINS", "DIE .030 LOW", "MOLD 4140": a count, a size, a metal. */
static gboolean
is_other (const Governor *g, guint i)
{
  const EmSize *size = is_size (g, i) ? em_item_size (g->c->items, i) : NULL;

  /* "DRAWING 304-118", "mold 1045-B" are no metal's. */
  gboolean is_longer = i + 2 < g->c->end && em_item_is_sign (g->c->items, i + 1, '-') && is_glued_on (g, i) && is_glued_on (g, i + 1) &&
                       (is_size (g, i + 2) || (item (g, i + 2)->length == 1 && item (g, i + 2)->type != EM_ITEM_SIGN));
  /* "moule 611 mesure 12 mm": what the label names stands behind it. */
  const EmSense *label = i + 2 < g->c->end && is_size (g, i + 2) && item (g, i)->length >= CODE_DIGITS ? says (g, i + 1, EM_SAYS_LABEL) : NULL;
  gboolean is_of_next = label != NULL && (label->roles & EM_ROLE_WORN) != 0;

  if ((em_phrase_find (item (g, i)->phrase, EM_SAYS_BASE) != NULL && !is_longer) || (says (g, i, EM_SAYS_NOISE) != NULL && !is_glued_on (g, i)) || is_fold (g, i))
    return TRUE;
  return size != NULL && !is_glued_on (g, i) &&
         (size->n_decimals > 0 || size->is_fraction || size->has_fit || size->unit != EM_UNIT_NONE ||
          (size->roles & EM_ROLE_COUNT) != 0 ||
          (size->value.n < LONG_NUMBER && !is_before_part (g, i + 1) &&
           ((says (g, i + 1, EM_SAYS_LABEL) != NULL && !em_governor_is_is (g, i + 1) && !is_of_next) || says (g, i + 1, EM_SAYS_TIMES) != NULL ||
            says (g, i + 1, EM_SAYS_KIND) != NULL ||
                                            is_counted_place (g, i + 1))));
}

/* "Werkzeug-Nr.: 31.118": a word that ends so leads to a number, whatever its points are. */
static gboolean
names_number (const Governor *g, guint i)
{
  static const char *const ends[] = { "nr", "nr.", "no", "no.", "number", "nummer", "número", "numéro", "n°", "nº", "id", "#" };
  const char *end = g->c->items->text + item (g, i)->start + item (g, i)->length;

  for (gsize k = 0; k < G_N_ELEMENTS (ends); k++)
    if (strlen (ends[k]) < item (g, i)->length && g_ascii_strncasecmp (end - strlen (ends[k]), ends[k], strlen (ends[k])) == 0)
      return TRUE;
  return FALSE;
}

/* A number with a point in it and no more that would make a size of it. */
static gboolean
is_pointed_number (const Governor *g, guint i)
{
  const EmSize *size = is_size (g, i) ? em_item_size (g->c->items, i) : NULL;

  return size != NULL && size->n_decimals > 0 && !size->is_fraction && !size->has_fit && size->unit == EM_UNIT_NONE && size->chain == 0 &&
         g_ascii_isdigit (g->c->items->text[item (g, i)->start]) && (i + 1 >= g->c->end || em_item_is_soft_break (g->c->items, i + 1));
}

/* "work order 5.118", "Zeichnung 60.441.2": behind the word for an order or a drawing so many digits with points among them, at the end of the part. */
static gboolean
is_pointed_code (const Governor *g, guint word, guint i)
{
  enum { LEAST = 4, LEAST_OF_DRAWING = 5 };
  const EmSense *sense = says (g, word, EM_SAYS_REFERENCE);
  const EmSize *size = is_size (g, i) ? em_item_size (g->c->items, i) : NULL;
  guint end = end_of_run (g, i), n_digits = 0;

  if (sense == NULL || size == NULL || size->unit != EM_UNIT_NONE || size->chain != 0 || size->is_fraction || size->has_fit || strcmp (sense->value, "tool_number") == 0 ||
      g_ascii_isdigit (g->c->items->text[item (g, i)->start]) == 0 || (end < g->c->end && !em_item_is_soft_break (g->c->items, end) && item (g, end)->type != EM_ITEM_SIGN))
    return FALSE;
  for (guint32 b = item (g, i)->start; b < item (g, end - 1)->start + item (g, end - 1)->length; b++)
    n_digits += g_ascii_isdigit (g->c->items->text[b]) != 0;
  return n_digits >= (strcmp (sense->value, "drawing") == 0 ? LEAST_OF_DRAWING : LEAST);
}

/* "die 1: nick": which of those in the list. */
static gboolean
is_list_name (const Governor *g, const EmSense *sense, guint word, guint number)
{
  /* "TAG 1: edge ding" */
  return (strcmp (sense->value, "tool_number") == 0 || em_item_is_word (g->c->items, word, "tag")) && number == word + 1 && is_size (g, number) &&
         em_item_size (g->c->items, number)->is_whole &&
         item (g, number)->length <= 2 && number + 1 < g->c->end && em_item_is_sign (g->c->items, number + 1, ':');
}

/* "LIP OF DIE: R0.5", "asiento plano Ø40": a letter glued to a number with a point, and the sign of a diameter, measure. */
static gboolean
is_radius (const Governor *g, guint from, guint to)
{
  const EmSense *label = says (g, from, EM_SAYS_LABEL);

  if (label == NULL || !is_size (g, from + 1))
    return FALSE;
  return (item (g, from)->sign != 0 && (label->roles & EM_ROLE_DIAMETER) != 0) ||
         (to == from + 2 && item (g, from)->length == 1 && em_item_size (g->c->items, from + 1)->n_decimals > 0);
}

/* "Ref: WO 77015": a short word for what kind of number it is belongs to it; "Ref: job 4410" is only the job's. */
static gboolean
is_behind_ref (const Governor *g, guint i)
{
  enum { SHORT_BYTES = 2 };

  const char *text = g->c->items->text;
  guint32 end = i > g->c->first ? item (g, i - 1)->start + item (g, i - 1)->length : 0;

  return item (g, i)->length <= SHORT_BYTES && end >= 4 && g_ascii_strncasecmp (text + end - 4, "ref:", 4) == 0;
}

/* "66/18": two numbers and the stroke between them, and no fraction of an inch. */
static gboolean
is_slashed (const Governor *g, guint number)
{
  const char *text = g->c->items->text + item (g, number)->start, *stroke = memchr (text, '/', item (g, number)->length);

  if (stroke == NULL)
    return number + 2 < g->c->end && em_item_is_sign (g->c->items, number + 1, '/') && em_item_is_glued (g->c->items, number + 1) && em_item_is_glued (g->c->items, number + 2) &&
           is_size (g, number + 2) && em_item_size (g->c->items, number)->value.n >= 10 && em_item_size (g->c->items, number + 2)->is_whole;
  return em_item_size (g->c->items, number)->value.n > em_item_size (g->c->items, number)->value.d;
}

/* "REF .500" is a size told for information; "Ref. 9021", with nothing before it, is the number of an order. */
static gboolean
is_size_told (const Governor *g, guint i, guint number)
{
  const EmSense *label = says (g, i, EM_SAYS_LABEL);
  const EmSize *size = is_size (g, number) ? em_item_size (g->c->items, number) : NULL;

  if (label == NULL || (label->roles & EM_ROLE_REFERENCE) == 0)
    return FALSE;
  /* "Ref 66/18." at the head: over one, and no part of an inch that anybody measures. */
  if (i == g->c->first && size != NULL && size->unit == EM_UNIT_NONE && size->chain == 0 && (size->flags & EM_TOKEN_DECIMAL) == 0 && is_slashed (g, number))
    return FALSE;
  return (i > g->c->first && item (g, i - 1)->type != EM_ITEM_SIGN && item (g, i - 1)->type != EM_ITEM_LINE) ||
         (size != NULL && ((size->flags & EM_TOKEN_DECIMAL) != 0 || size->unit != EM_UNIT_NONE || size->chain != 0 || item (g, number)->length < CODE_DIGITS));
}

/* "DRG 30-2217 REV C": which state of the drawing belongs to its number. */
static guint
skip_revision (const Governor *g, guint i)
{
  static const char *const words[] = { "rev", "rev.", "revision", "ind", "ind.", "indice", "index", "issue", "iss", "stand" };
  guint state = i + 1;

  if (i + 1 >= g->c->end || !em_item_is_any_word_of (g->c->items, i, words, G_N_ELEMENTS (words)))
    return i;
  state += em_item_is_sign (g->c->items, state, '.');
  if (state >= g->c->end || item (g, state)->length > 2 || item (g, state)->type == EM_ITEM_SIGN || item (g, state)->type == EM_ITEM_LINE)
    return i;
  return state + 1;
}

/* The number from from to to without the signs that only end it. */
static guint
end_of_number (const Governor *g, guint from, guint to)
{
  while (to > from + 1 && (em_item_is_sign (g->c->items, to - 1, ')') || em_item_is_sign (g->c->items, to - 1, ',') ||
                           em_item_is_sign (g->c->items, to - 1, ':') || em_item_is_sign (g->c->items, to - 1, '.') ||
                           em_item_is_sign (g->c->items, to - 1, '?')))
    to--;
  return to;
}

/* The end of the run of glued items that begins at item run. */
static guint
end_of_run (const Governor *g, guint run)
{
  guint to = run + 1;

  while (to < g->c->end && to < run + REFERENCE_WINDOW && (item (g, to)->flags & EM_TOKEN_GLUED) != 0)
    to++;
  return to;
}

static gboolean
has_digit (const Governor *g, guint from, guint to)
{
  for (guint k = from; k < to; k++)
    for (guint32 b = 0; b < item (g, k)->length; b++)
      if (g_ascii_isdigit (g->c->items->text[item (g, k)->start + b]))
        return TRUE;
  return FALSE;
}

/* "2051 and 2052": the second number, too. */
static guint
skip_and_number (const Governor *g, guint to)
{
  const EmSense *and = to + 1 < g->c->end ? says (g, to, EM_SAYS_GLUE) : NULL;

  return and != NULL && g_strcmp0 (and->value, "and") == 0 && is_size (g, to + 1) && em_item_size (g->c->items, to + 1)->is_whole &&
         em_item_size (g->c->items, to + 1)->value.n >= LONG_NUMBER ? to + 2 : to;
}

/* "Tool: GT 4417": capitals, and the number that goes with them. Where the code ends. */
static guint
skip_number_apart (const Governor *g, guint from, guint to)
{
  enum { CAPITALS = 3 };
  const EmItem *letters = item (g, from);

  if (to != from + 1 || to >= g->c->end || letters->length > CAPITALS || letters->type == EM_ITEM_SIZE || (letters->flags & EM_TOKEN_UPPER) == 0 ||
      !g_ascii_isalpha (g->c->items->text[letters->start]) || says (g, from, EM_SAYS_PLACE) != NULL || says (g, from, EM_SAYS_KIND) != NULL || says (g, from, EM_SAYS_REFERENCE) != NULL ||
      !is_size (g, to) || !em_item_size (g->c->items, to)->is_whole || item (g, to)->length < CODE_DIGITS || em_item_size (g->c->items, to)->chain != 0 ||
      em_phrase_find (item (g, to)->phrase, EM_SAYS_BASE) != NULL)
    return to;
  return to + 1;
}

/* Behind "Bestellung folgt, Nr." at item i, "same tool (no." or "hilera de perfil nº": where the number begins; i: there is none. */
static guint
number_apart (const Governor *g, guint i)
{
  guint from;

  for (guint k = i + 1; k < g->c->end && k <= i + APART_WINDOW && !is_size (g, k) && says (g, k, EM_SAYS_REFERENCE) == NULL; k++)
    {
      /* "numbers 2051 and 2052" */
      if (!is_number_word (g, k) && !em_item_is_word (g->c->items, k, "numbers") && !em_item_is_word (g->c->items, k, "nummern"))
        continue;
      from = k + 1;
      while (from < g->c->end && (em_item_is_sign (g->c->items, from, '.') || em_item_is_sign (g->c->items, from, ':')))
        from++;
      if (from < g->c->end && item (g, from)->type != EM_ITEM_SIGN && !is_other (g, from))
        return from;
    }
  return i;
}

/* "the PO (88120)": the order's number alone between the brackets. */
static gboolean
is_long_in_brackets (const Governor *g, guint i, guint number)
{
  return strcmp (says (g, i, EM_SAYS_REFERENCE)->value, "reference") == 0 && number + 1 < g->c->end && is_size (g, number) && em_item_size (g->c->items, number)->is_whole &&
         em_item_size (g->c->items, number)->value.n >= LONG_NUMBER && em_item_is_sign (g->c->items, number + 1, ')');
}

/* Where the number of what item i names begins; *out_is_apart: words stand between. i: there is none. */
static guint
start_of_number (const Governor *g, guint i, gboolean *out_is_apart)
{
  guint from = i + 1;

  *out_is_apart = FALSE;
  /* "tool (#2210)", "the PO (88120)" */
  from += from + 2 < g->c->end && em_item_is_sign (g->c->items, from, '(') &&
          (em_item_is_sign (g->c->items, from + 1, '#') || is_long_in_brackets (g, i, from + 1));
  while (from < g->c->end && from <= i + EM_GOVERN_WINDOW &&
         (em_item_is_sign (g->c->items, from, ':') || em_item_is_sign (g->c->items, from, '#') ||
          em_item_is_sign (g->c->items, from, '.') ||
          em_item_is_sign (g->c->items, from, '=') || is_number_word (g, from) || em_governor_is_is (g, from) ||
          (em_governor_is_is (g, from - 1) && says (g, from, EM_SAYS_GLUE) != NULL) /* "el pedido es el 21-0344" */))
    from++;
  if (from < g->c->end && item (g, from)->type != EM_ITEM_SIGN && !(is_other (g, from) && !(names_number (g, i) && is_pointed_number (g, from)) && !is_pointed_code (g, i, from)) &&
      !is_size_told (g, i, from) && !(is_size (g, from) && em_name_is_day (g->c->items, from)) && has_digit (g, from, skip_number_apart (g, from, end_of_run (g, from))))
    return from;
  *out_is_apart = TRUE;
  return number_apart (g, i);
}

/* "Our ref: PO# 4432": the word for it is not yet the number. */
static guint
skip_word_for_it (const Governor *g, guint i, guint from)
{
  guint run = from;

  while (run + 1 < g->c->end && run < from + 2 && i + 1 < from &&
         ((says (g, run, EM_SAYS_REFERENCE) != NULL && (!em_item_is_glued (g->c->items, run + 1) || em_item_is_sign (g->c->items, run + 1, '#'))) ||
          (run > from && em_item_is_sign (g->c->items, run, '#'))))
    run++;
  return run;
}

/* ", sheet 2" behind a drawing's number belongs to it or not: used up, and a doubt. */
static gboolean
use_sheet (const Governor *g, guint to)
{
  static const char *const words[] = { "sheet", "sht", "sh", "page", "blatt", "bl", "hoja", "feuille", "folio" };
  guint at = to + (to < g->c->end && em_item_is_sign (g->c->items, to, ',')), number;

  if (at >= g->c->end || !em_item_is_any_word_of (g->c->items, at, words, G_N_ELEMENTS (words)))
    return FALSE;
  number = at + 1 + (at + 1 < g->c->end && em_item_is_sign (g->c->items, at + 1, '.'));
  if (!is_size (g, number) || !em_item_size (g->c->items, number)->is_whole)
    return FALSE;
  em_item_size (g->c->items, number)->roles |= EM_ROLE_REFERENCE;
  for (guint k = to; k <= number; k++)
    item (g, k)->is_used = TRUE;
  return TRUE;
}

/* "PO-2207", "RFQ-88": the word for it is a part of its number. */
static gboolean
is_in_number (const Governor *g, guint i, const EmSense *sense)
{
  static const char *const words[] = { "po", "p.o.", "rfq", "wo", "job", "order", "quote", "auftrag", "angebot" };

  return strcmp (sense->value, "reference") == 0 && em_item_is_any_word_of (g->c->items, i, words, G_N_ELEMENTS (words)) && i + 2 < g->c->end &&
         em_item_is_sign (g->c->items, i + 1, '-') && em_item_is_glued (g->c->items, i + 1) && em_item_is_glued (g->c->items, i + 2) &&
         is_size (g, i + 2) && em_item_size (g->c->items, i + 2)->is_whole;
}

/* "TOOL: 2-PLATE CRATE", "DIE: 4-VOID PROFILE": what it is like, by a number and a word. */
static gboolean
is_so_many_of (const Governor *g, guint from, guint to)
{
  enum { DIGITS = 2, LETTERS = 3 };
  const EmItem *word = to == from + 3 ? item (g, from + 2) : NULL;

  if (word == NULL || !is_size (g, from) || item (g, from)->length > DIGITS || !em_item_is_sign (g->c->items, from + 1, '-') || word->type == EM_ITEM_SIZE ||
      word->length < LETTERS)
    return FALSE;
  for (guint32 b = 0; b < word->length; b++)
    if (g_ascii_isdigit (g->c->items->text[word->start + b]))
      return FALSE;
  return TRUE;
}

/* "PO 45871", "DWG A-2201": the run of glued items with a digit in it. */
/* "5-l-Kanister", "Werkzeug      Nr. FM-118": a word rather than a code, or a number of something else on the line. */
static gboolean
is_lower_or_apart (const Governor *g, guint word, guint from, guint to)
{
  enum { WIDE_GAP = 3 };

  for (guint32 b = item (g, from)->start; b < item (g, to - 1)->start + item (g, to - 1)->length; b++)
    if (g_ascii_islower (g->c->items->text[b]))
      return TRUE;
  for (guint k = word; k < from; k++)
    if (item (g, k + 1)->start >= item (g, k)->start + item (g, k)->length + WIDE_GAP)
      return TRUE;
  return FALSE;
}

void
em_code_read (Governor *g, guint i)
{
  const EmSense *sense = says (g, i, EM_SAYS_REFERENCE);
  gboolean is_apart = FALSE, is_doubted;
  guint from, run, to;
  EmLoose *one;

  if (sense == NULL)
    return;
  from = is_in_number (g, i, sense) ? i : start_of_number (g, i, &is_apart);
  if (from == i && !is_in_number (g, i, sense))
    return;
  run = skip_word_for_it (g, i, from);
  to = end_of_number (g, from, end_of_run (g, run));
  to = skip_number_apart (g, from, to);
  if (strcmp (sense->value, "drawing") == 0)
    to = skip_revision (g, to);
  /* "Mold: 4-cav lid" */
  for (guint k = from; k < to; k++)
    if (is_counted_place (g, k))
      return;
  if (is_so_many_of (g, from, to))
    return;
  if (!has_digit (g, from, to) || is_list_name (g, sense, i, from) || is_radius (g, from, to))
    return;
  is_doubted = is_apart || (strcmp (sense->value, "drawing") == 0 && use_sheet (g, to));
  to = is_apart ? skip_and_number (g, to) : to;
  for (guint k = from; k < to; k++)
    if (is_size (g, k))
      em_item_size (g->c->items, k)->roles |= EM_ROLE_REFERENCE;
  if (!em_governor_take_once (g, sense->value))
    return;
  one = em_governor_add (g, sense->value, NULL, is_behind_ref (g, i) ? i : run < to ? run : from, to - 1);
  one->is_general = TRUE;
  /* "Ref: WO 77015": the word may be thought a part of it; "mold 12": a short number may say which of several. */
  if (is_doubted || run > from || is_behind_ref (g, i) || is_lower_or_apart (g, i, from, to) || (to == from + 1 && item (g, from)->length <= 2))
    em_governor_infer (one, "from-words");
  for (guint k = is_apart ? i : from; k < from; k++)
    item (g, k)->is_used |= k == i || is_number_word (g, k);
  item (g, i)->is_used = TRUE;
}

/* "on the 1302 mold": its number stands before it, and is no metal. */
void
em_code_read_before (Governor *g, guint i)
{
  const EmSense *sense = says (g, i, EM_SAYS_REFERENCE);
  guint number = i - 1;
  const EmSize *size = i > g->c->first + 1 && is_size (g, number) ? em_item_size (g->c->items, number) : NULL;

  if (sense == NULL || strcmp (sense->value, "tool_number") != 0 || size == NULL || item (g, number)->is_used || !size->is_whole ||
      size->unit != EM_UNIT_NONE || size->chain != 0 || item (g, number)->length < CODE_DIGITS ||
      em_phrase_find (item (g, number)->phrase, EM_SAYS_BASE) != NULL ||
      (says (g, number - 1, EM_SAYS_GLUE) == NULL && says (g, number - 1, EM_SAYS_PREPOSITION) == NULL) || !em_governor_take_once (g, "tool_number"))
    return;
  em_item_size (g->c->items, number)->roles |= EM_ROLE_REFERENCE;
  em_governor_add (g, "tool_number", NULL, number, number)->is_general = TRUE;
  item (g, i)->is_used = TRUE;
}

/* The general field that stands already; NULL: none. */
static EmReadField *
find_general (const Governor *g, const char *field)
{
  for (guint k = 0; k < g->grammar->general->len; k++)
    if (strcmp (g_array_index (g->grammar->general, EmGiven, k).field.field, field) == 0)
      return &g_array_index (g->grammar->general, EmGiven, k).field;
  return NULL;
}

/* "EX-77" in a table's column of tools: that of all rows. Where another row has another, it stays visible as unused, and neither is sure. */
void
em_code_read_cell (Governor *g, guint i)
{
  const char *field = item (g, i)->code, *text = g->c->items->text;
  guint end = MIN (item (g, i)->code_end, g->c->end);
  guint32 from = item (g, i)->start;
  EmReadField *before;

  if (field == NULL || end <= i)
    return;
  if (em_governor_take_once (g, field))
    {
      em_governor_add (g, field, NULL, i, end - 1)->is_general = TRUE;
      return;
    }
  before = find_general (g, field);
  if (before != NULL && before->length == item (g, end - 1)->start + item (g, end - 1)->length - from &&
      strncmp (text + before->start, text + from, before->length) == 0)
    return;
  for (guint k = i; k < end; k++)
    item (g, k)->is_used = FALSE;
  if (before != NULL && before->state == EM_READ_READ)
    {
      before->state = EM_READ_INFERRED;
      before->reason = "said-twice";
    }
}
