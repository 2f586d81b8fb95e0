/* em-list: what heads a line, or a part of it, of a list.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-list.h"

#include <string.h>

enum { NEXT_ITEMS = 60, NEXT_LINES = 4 /* looked ahead over for the next number of a list */, INLINE_WINDOW = 80 /* items looked ahead over for "(2)" */,
      LONG_NUMERAL = 4 /* digits of an item's number that only a bracket tells */ };

gboolean
em_list_is_bullet (const EmItem *item)
{
  return (item->type == EM_ITEM_SIGN || item->type == EM_ITEM_PHRASE) &&
         (item->sign == '-' || item->sign == 0xd7 || item->sign == 0x2022 || item->sign == 0xb7 || item->sign == '>' ||
          item->sign == 0x25cf || item->sign == 0x25aa);
}

gboolean
em_list_is_mark (const EmReader *r, guint i)
{
  /* "22:10": a time of day */
  if (em_item_is_sign (r->items, i, ':') && i + 1 < r->items->items->len && em_item (r->items, i + 1)->type == EM_ITEM_SIZE && em_item_is_glued (r->items, i + 1))
    return FALSE;
  return (em_item_is_sign (r->items, i, '.') || em_item_is_sign (r->items, i, ')') || em_item_is_sign (r->items, i, ':')) &&
         (em_item (r->items, i)->flags & EM_TOKEN_GLUED) != 0;
}

/* "a" or "12" as in "a." and "12)". */
gboolean
em_list_is_numeral (const EmReader *r, guint i)
{
  const EmItem *item = em_item (r->items, i);

  return item->type == EM_ITEM_SIZE ? em_item_size (r->items, i)->is_whole && item->length <= 3 : item->type != EM_ITEM_SIGN &&
         item->length == 1;
}

/* "ITEM", "Pos" */
gboolean
em_list_is_item_word (const EmReader *r, guint i)
{
  const EmSense *word = em_item_says (r->items, i, EM_SAYS_GLUE);

  return word != NULL && g_strcmp0 (word->value, "item") == 0;
}

/* The number of "(2)" at item i; 0 when there is none. */
static guint64
bracketed_number (const EmItems *items, guint i)
{
  if (i + 2 >= items->items->len || !em_item_is_sign (items, i, '(') || em_item (items, i + 1)->type != EM_ITEM_SIZE ||
      !em_item_is_sign (items, i + 2, ')') || !em_item_size (items, i + 1)->is_whole)
    return 0;
  return em_item_size (items, i + 1)->value.n;
}

/* "(1)" heads a list when the next line begins with "(2)", or goes on with it; else it is a count. */
static gboolean
is_list_number (EmReader *r, guint i, guint end)
{
  guint64 number = bracketed_number (r->items, i);
  gboolean is_list = number != 0 && (number == r->list_number + 1 || number == 1) &&
                     (r->list_number > 0 || bracketed_number (r->items, end + 1) == number + 1);

  r->list_number = is_list ? number : 0;
  return is_list;
}

/* The whole number that a line begins with, before a word: "1   face"; 0: none. */
static guint64
leading_number (const EmItems *items, guint i)
{
  if (i + 1 >= items->items->len || em_item (items, i)->type != EM_ITEM_SIZE || !em_item_size (items, i)->is_whole ||
      em_item_size (items, i)->unit != EM_UNIT_NONE || em_item (items, i + 1)->type == EM_ITEM_SIZE ||
        em_item (items, i + 1)->type == EM_ITEM_LINE ||
      (em_item (items, i + 1)->type == EM_ITEM_SIGN && em_item (items, i + 1)->sign != '|') ||
        em_item_says (items, i + 1, EM_SAYS_TIMES) != NULL || em_item_says (items, i + 1, EM_SAYS_PLACES) != NULL)
    return 0;
  return em_item_size (items, i)->value.n;
}

/* "1 CORNER" and below it "2 CORNERS": counts. */
static gboolean
is_one_and_many (const EmItems *items, guint one, guint many)
{
  const EmItem *a = em_item (items, one), *b = em_item (items, many);

  return b->length > a->length && b->length <= a->length + 2 &&
         g_ascii_strncasecmp (items->text + a->start, items->text + b->start, a->length) == 0;
}

/* The line behind end begins with "2 …", or one of the next few does, if those between begin with no number. */
static gboolean
is_second_near (const EmReader *r, guint end)
{
  guint n_lines = 0;

  for (guint i = end; i < r->items->items->len && i < end + NEXT_ITEMS && n_lines < NEXT_LINES; i++)
    if (em_item (r->items, i)->type == EM_ITEM_LINE && i + 1 < r->items->items->len)
      {
        n_lines++;
        if (leading_number (r->items, i + 1) != 0)
          return leading_number (r->items, i + 1) == 2 && n_lines > 1;
      }
  return FALSE;
}

/* "1 face …" heads a list when the next line begins with "2 …", or goes on with it; else it is a count. */
static gboolean
is_bare_number (EmReader *r, guint i, guint end)
{
  guint64 number = leading_number (r->items, i);
  gboolean is_list = number != 0 && ((number == 1 && leading_number (r->items, end + 1) == 2 &&
                                      !is_one_and_many (r->items, i + 1, end + 2)) || (number == 1 && is_second_near (r, end)) ||
                                        (number > 1 && number == r->bare_number + 1));

  /* "1 nick", "L 4 W 1 D 0.5", "2 crack": lines between that begin with no number belong to the point before. */
  r->bare_number = is_list ? number : number == 0 ? r->bare_number : 0;
  return is_list;
}

guint64
em_list_pointed_number (const EmItems *items, guint i)
{
  static const char *const words[] = { "pos", "nr", "no", "item", "itm", "punkt", "pt", "rep", "ref", "abb", "fig", "bild", "art", "lfd", "zeile", "poz", "part", "det", "ln",
                                       "op", "n", "núm", "num", "cav", "nest", "kav", "ins", "rep" };
  const EmItem *item = em_item (items, i), *word = i > 0 ? em_item (items, i - 1) : NULL;
  const char *end = word != NULL ? items->text + word->start + word->length : NULL;

  if (word == NULL || item->type != EM_ITEM_SIZE || (item->flags & EM_TOKEN_LEADING_DOT) == 0 || !em_item_is_glued (items, i) ||
      item->length > 3 || em_item_size (items, i)->unit != EM_UNIT_NONE)
    return 0;
  for (gsize k = 0; k < G_N_ELEMENTS (words); k++)
    {
      gsize length = strlen (words[k]);

      if (word->length >= length && g_ascii_strncasecmp (end - length, words[k], length) == 0 &&
          (word->length == length || end[-(gssize) length - 1] == ' '))
        return g_ascii_strtoull (items->text + item->start + 1, NULL, 10);
    }
  return 0;
}

guint64
em_list_section_at (const EmItems *items, guint i)
{
  enum { SECTION = 2048, SECTIONS_MAX = 99 };
  const EmItem *item = em_item (items, i);
  const char *text = items->text + item->start, *point;
  guint64 major, minor;

  if (item->type != EM_ITEM_SIZE || item->length > 5 || !g_ascii_isdigit (text[0]) || em_item_size (items, i)->unit != EM_UNIT_NONE ||
      (point = memchr (text, '.', item->length)) == NULL || point + 1 == text + item->length)
    return 0;
  major = g_ascii_strtoull (text, NULL, 10);
  minor = g_ascii_strtoull (point + 1, NULL, 10);
  return major > 0 && minor > 0 && point[1] != '0' && major <= SECTIONS_MAX && minor <= SECTIONS_MAX ? SECTION * major + minor : 0;
}

guint64
em_list_head_at (const EmItems *items, guint i)
{
  enum { LETTERS = 1 << 20 /* above any number of a list */, LONGEST = 3 };
  const EmItem *item = em_item (items, i);

  if (em_list_pointed_number (items, i) != 0)
    return em_list_pointed_number (items, i);
  /* "1.2" that heads a line */
  if (item->type == EM_ITEM_SIZE && item->is_used && em_list_section_at (items, i) != 0)
    return em_list_section_at (items, i);
  if (item->type == EM_ITEM_SIZE)
    return em_list_is_bare_whole (items, i) && item->length <= LONGEST ? em_item_size (items, i)->value.n : 0;
  if (item->type == EM_ITEM_SIGN || item->length != 1 || !g_ascii_isalpha (items->text[item->start]))
    return 0;
  return LETTERS + (guint64) g_ascii_tolower (items->text[item->start]);
}

gboolean
em_list_is_place_line (const EmItems *items, guint i, guint end)
{
  static const char *const words[] = { "location", "loc", "loc.", "where", "place", "area", "zone", "region", "position", "side", "ort", "lage", "stelle", "bereich",
                                       "wo", "einbauort", "schadensort", "seite", "emplacement", "localisation", "lieu", "endroit", "repère",
                                       "où", "ubicación", "lugar", "zona", "sitio", "posición", "localización" };

  return i + 2 < end && em_item_is_any_word_of (items, i, words, G_N_ELEMENTS (words)) && em_item_is_sign (items, i + 1, ':') &&
         em_item (items, i + 2)->type != EM_ITEM_SIZE;
}

/* "Filled in   :", "Ausgefüllt von:", "Date:": the text before the colon at that item. */
static gboolean
is_head_text (const EmItems *items, guint first, guint colon)
{
  static const char *const heads[] = { "subject", "subj", "re", "from", "to", "cc", "attn", "betreff", "betr", "von", "an", "objet", "de", "à",
                                       "asunto", "para",
                                       "filled in", "filled in by", "filled by", "completed by", "prepared by", "raised by", "issued by", "requested by", "reported by",
                                       "checked by", "inspected by", "inspector", "signed", "signature", "contact", "contact person", "phone", "tel", "date", "date in", "received",
                                       "due", "due date", "needed by", "delivery", "ship to",
                                       "ausgefüllt von", "erstellt von", "ersteller", "aufgenommen von", "geprüft von", "bearbeiter", "sachbearbeiter", "ansprechpartner", "kontakt", "datum",
                                       "termin", "liefertermin", "unterschrift", "telefon",
                                       "rempli par", "établi par", "rédigé par", "contrôlé par", "demandeur", "date de la demande", "délai", "signature", "téléphone",
                                       "rellenado por", "elaborado por", "revisado por", "solicitante", "solicitado por", "fecha", "entrega", "firma", "contacto", "teléfono" };
  const char *text = items->text + em_item (items, first)->start;
  gsize n = em_item (items, colon - 1)->start + em_item (items, colon - 1)->length - em_item (items, first)->start;

  for (gsize k = 0; k < G_N_ELEMENTS (heads); k++)
    if (strlen (heads[k]) == n && g_ascii_strncasecmp (text, heads[k], n) == 0)
      return TRUE;
  return FALSE;
}

gboolean
em_list_is_mail_head (const EmItems *items, guint i, guint end)
{
  enum { HEAD_WORDS = 4 };

  for (guint colon = i + 1; colon < end && colon <= i + HEAD_WORDS; colon++)
    if (em_item_is_sign (items, colon, ':'))
      return is_head_text (items, i, colon);
  return FALSE;
}

gboolean
em_list_is_bare_whole (const EmItems *items, guint i)
{
  return em_item (items, i)->type == EM_ITEM_SIZE && em_item_size (items, i)->is_whole &&
         em_item_size (items, i)->unit == EM_UNIT_NONE;
}

/* "1   2   NICK": a row of a table, item and quantity before the words. */
static gboolean
is_table_row (const EmReader *r, guint i, guint end)
{
  return i + 3 < end && em_list_is_bare_whole (r->items, i) && em_list_is_bare_whole (r->items, i + 1) &&
         em_item (r->items, i + 2)->type == EM_ITEM_PHRASE &&
         em_item_says (r->items, i + 2, EM_SAYS_TIMES) == NULL && em_item_says (r->items, i + 2, EM_SAYS_LABEL) == NULL;
}

static gboolean
is_roman (const EmReader *r, guint i)
{
  const EmItem *item = em_item (r->items, i);

  for (guint32 k = 0; k < item->length; k++)
    if (strchr ("ivxIVX", r->items->text[item->start + k]) == NULL)
      return FALSE;
  return item->type != EM_ITEM_SIZE && item->type != EM_ITEM_SIGN && item->length > 0 && item->length <= 4;
}

static gboolean
is_letter (const EmReader *r, guint i)
{
  return em_item (r->items, i)->type != EM_ITEM_SIGN && em_item (r->items, i)->type != EM_ITEM_SIZE &&
         em_item (r->items, i)->length == 1;
}

/* What parts the name of a line from what it says: "W1 - wall", "A … step", "P = pinch". */
static gboolean
is_parting (const EmReader *r, guint i)
{
  return (em_item_is_sign (r->items, i, '-') && !em_item_is_glued (r->items, i)) ||
         em_item_is_sign (r->items, i, 0x2026 /* … */) || em_item_is_sign (r->items, i, '=') || em_item_is_sign (r->items, i, '|');
}

/* "-B- …", "(ii) …", "W1 - …", "B … hole": a name that heads a line; *out_end is the item after it. */
static gboolean
is_list_name (const EmReader *r, guint i, guint end, guint *out_end)
{
  *out_end = i + 3;
  if (i + 3 >= end)
    return FALSE;
  if (em_item_is_sign (r->items, i, '-') && is_letter (r, i + 1) && em_item_is_sign (r->items, i + 2, '-') &&
      em_item_is_glued (r->items, i + 1) && em_item_is_glued (r->items, i + 2))
    return TRUE;
  if (em_item_is_sign (r->items, i, '(') && is_roman (r, i + 1) && em_item_is_sign (r->items, i + 2, ')'))
    return TRUE;
  if (!is_letter (r, i) || em_item (r->items, i)->sign != 0)
    return FALSE;
  if (em_item_is_sign (r->items, i + 1, 0x2026))
    {
      *out_end = i + 2;
      return TRUE;
    }
  return em_list_is_bare_whole (r->items, i + 1) && em_item_is_glued (r->items, i + 1) && is_parting (r, i + 2);
}

/* The letter that a line begins with, before a word: "A  edge nick"; 0: none. */
static char
leading_letter (const EmReader *r, guint i)
{
  const EmItem *next = i + 1 < r->items->items->len ? em_item (r->items, i + 1) : NULL;

  if (next == NULL || em_item (r->items, i)->type == EM_ITEM_LINE || !is_letter (r, i) || (next->flags & EM_TOKEN_GLUED) != 0 ||
      (next->type != EM_ITEM_PHRASE && next->type != EM_ITEM_UNKNOWN))
    return 0;
  return g_ascii_toupper (r->items->text[em_item (r->items, i)->start]);
}

/* "A edge nick" heads a list when the next line begins with "B …", or goes on with it. */
static gboolean
is_bare_letter (EmReader *r, guint i, guint end)
{
  char letter = leading_letter (r, i);
  gboolean is_list = letter != 0 && ((letter == 'A' && leading_letter (r, end + 1) == 'B') ||
                                     (letter > 'A' && letter == r->bare_letter + 1));

  r->bare_letter = is_list ? letter : 0;
  return is_list;
}

/* "A2" in one word, as a metal is called: its number; 0: none. */
static guint64
code_in_word (const EmReader *r, guint i)
{
  enum { CODE_BYTES = 3 };
  const EmItem *item = em_item (r->items, i), *next = i + 1 < r->items->items->len ? em_item (r->items, i + 1) : NULL;
  const char *text = r->items->text + item->start;

  if (item->type != EM_ITEM_PHRASE || item->length < 2 || item->length > CODE_BYTES || !g_ascii_isalpha (text[0]) || next == NULL ||
      (next->type != EM_ITEM_PHRASE && next->type != EM_ITEM_UNKNOWN) || (next->flags & EM_TOKEN_GLUED) != 0 ||
      em_item_says (r->items, i + 1, EM_SAYS_TIMES) != NULL)
    return 0;
  for (guint32 k = 1; k < item->length; k++)
    if (!g_ascii_isdigit (text[k]))
      return 0;
  return g_ascii_strtoull (text + 1, NULL, 10);
}

/* The number behind the letter that a line begins with: "Z1 LAND"; 0: none. */
static guint64
leading_code (const EmReader *r, guint i)
{
  const EmItem *next = i + 2 < r->items->items->len ? em_item (r->items, i + 2) : NULL;

  if (next != NULL && code_in_word (r, i) != 0)
    return code_in_word (r, i);
  if (next == NULL || em_item (r->items, i)->type == EM_ITEM_LINE || !is_letter (r, i) ||
      !em_list_is_bare_whole (r->items, i + 1) || !em_item_is_glued (r->items, i + 1) ||
      (next->flags & EM_TOKEN_GLUED) != 0 || (next->type != EM_ITEM_PHRASE && next->type != EM_ITEM_UNKNOWN) ||
        em_item_says (r->items, i + 2, EM_SAYS_TIMES) != NULL)
    return 0;
  return em_item_size (r->items, i + 1)->value.n;
}

/* "Z1 LAND" heads a list when the next line begins with "Z2 …", or goes on with it. */
static gboolean
is_bare_code (EmReader *r, guint i, guint end)
{
  guint64 number = leading_code (r, i);
  char letter = number != 0 ? r->items->text[em_item (r->items, i)->start] : 0;
  /* "B1" goes on behind "A2" */
  gboolean is_next = (number > 1 && letter == r->code_letter && number == r->code_number + 1) ||
                     (number == 1 && r->code_letter != 0 && letter == r->code_letter + 1);
  gboolean is_list = is_next || (number == 1 && leading_code (r, end + 1) == 2 &&
                                 r->items->text[em_item (r->items, end + 1)->start] == letter);

  r->code_letter = is_list ? letter : 0;
  r->code_number = is_list ? number : 0;
  return is_list;
}

/* "1.1 EDGE NICK" heads a list when the next line begins with "1.2 …", or goes on with it. */
static gboolean
is_section (EmReader *r, guint i, guint end)
{
  guint64 number = em_list_section_at (r->items, i);
  const EmItem *next = i + 1 < end ? em_item (r->items, i + 1) : NULL;
  gboolean is_list = number != 0 && next != NULL && (next->type == EM_ITEM_PHRASE || next->type == EM_ITEM_UNKNOWN) && (next->flags & EM_TOKEN_GLUED) == 0 &&
                     em_item_says (r->items, i + 1, EM_SAYS_TIMES) == NULL && em_item_says (r->items, i + 1, EM_SAYS_LABEL) == NULL &&
                     ((r->section != 0 && number == r->section + 1) ||
                      (end + 1 < r->items->items->len && em_list_section_at (r->items, end + 1) == number + 1));

  r->section = is_list ? number : number == 0 ? r->section : 0;
  if (is_list)
    em_item_size (r->items, i)->roles |= EM_ROLE_REFERENCE;
  return is_list;
}

/* "(2)", "2 face", "2  4  nick": the numbers of a list without marks. Returns the item after them, or i. */
static guint
skip_listed (EmReader *r, guint i, guint end)
{
  guint number = i, after = i;

  if (is_list_number (r, i, end))
    {
      number = i + 1;
      after = i + 3;
    }
  else if (is_table_row (r, i, end))
    {
      em_item_size (r->items, i + 1)->roles |= EM_ROLE_COUNT;
      after = i + 1;
    }
  else if (is_bare_number (r, i, end) || is_bare_letter (r, i, end) || is_section (r, i, end))
    after = i + 1;
  else if (is_bare_code (r, i, end))
    {
      after = i + 1 + (em_item (r->items, i)->length == 1);
      em_item (r->items, after - 1)->is_used = TRUE;
    }
  if (after != i)
    em_item (r->items, number)->is_used = r->is_bullet = TRUE;
  return after;
}

/* "1045) edge chipped": an item's number, though a metal has it too. */
static gboolean
is_long_numeral (const EmReader *r, guint i, guint mark)
{
  return em_list_is_bare_whole (r->items, i) && em_item (r->items, i)->length == LONG_NUMERAL &&
         em_item_is_sign (r->items, mark, ')') && em_item_is_glued (r->items, mark);
}

/* "1/ nick", "1- crack": glued to the number and no more behind it, before a word. */
static gboolean
is_tight_mark (const EmReader *r, guint mark)
{
  const EmItem *next = em_item (r->items, mark + 1);

  return (em_item_is_sign (r->items, mark, '/') || em_item_is_sign (r->items, mark, '-')) && em_item_is_glued (r->items, mark) &&
         !em_item_is_glued (r->items, mark + 1) && (next->type == EM_ITEM_PHRASE || next->type == EM_ITEM_UNKNOWN) &&
         em_item_says (r->items, mark + 1, EM_SAYS_TIMES) == NULL;
}

/* "1.", "2)", "3.)", "4 -", "item 5, core" with its number or letter at i. Returns the item after them, or i. */
static guint
skip_marked (EmReader *r, guint i, guint end, gboolean is_named)
{
  guint mark = i + 1;
  gboolean is_dash = mark + 1 < end && ((em_item_is_sign (r->items, mark, '-') && !em_item_is_glued (r->items, mark)) ||
                                        em_item_is_sign (r->items, mark, '>'));

  if (mark + 1 >= end || !(em_list_is_numeral (r, i) || is_long_numeral (r, i, mark)))
    return i;
  if (is_named && em_item_is_sign (r->items, mark, ',') && em_list_is_bare_whole (r->items, i) &&
      (em_item (r->items, mark + 1)->type == EM_ITEM_PHRASE || em_item (r->items, mark + 1)->type == EM_ITEM_UNKNOWN))
    {
      em_item (r->items, i)->is_used = r->is_bullet = TRUE;
      return mark + 1;
    }
  /* "1 - core", but "12 - 3 mm" is a range; "Item 1 : pin" with a blank, as French has it. */
  if (!em_list_is_mark (r, mark) && !is_tight_mark (r, mark) && !(is_named && (em_item_is_sign (r->items, mark, '=') || em_item_is_sign (r->items, mark, ':'))) &&
      !(is_dash && (is_named || em_item (r->items, mark + 1)->type != EM_ITEM_SIZE)))
    return i;
  em_item (r->items, i)->is_used = r->is_bullet = TRUE;
  if (em_list_is_bare_whole (r->items, i))
    {
      r->inline_number = em_item_size (r->items, i)->value.n;
      r->inline_length = 2;
    }
  else if (em_item_is_sign (r->items, mark, ')'))
    r->inline_letter = g_ascii_tolower (r->items->text[em_item (r->items, i)->start]);
  return mark + 2 < end && em_list_is_mark (r, mark + 1) ? mark + 2 : mark + 1;
}

/* "#", or the triangle and the like that a drawing flags its notes with. */
static gboolean
is_flag (const EmReader *r, guint i)
{
  static const gunichar flags[] = { '#', 0x25b3 /* △ */, 0x25b2, 0x25bd, 0x25bc, 0x25c7, 0x25c6, 0x25cb };

  for (gsize k = 0; k < G_N_ELEMENTS (flags); k++)
    if (em_item_is_sign (r->items, i, flags[k]))
      return TRUE;
  return FALSE;
}

/* "#3 .25 x .1", "#3 rib", "△3: rib". Returns the item after them, or i. */
static guint
skip_hash (EmReader *r, guint i, guint end)
{
  guint mark = i + 2;

  if (!is_flag (r, i) || mark >= end || !em_list_is_numeral (r, i + 1) ||
      em_item_says (r->items, mark, EM_SAYS_TIMES) != NULL)
    return i;
  em_item (r->items, i + 1)->is_used = r->is_bullet = TRUE;
  return em_list_is_mark (r, mark) && mark + 1 < end ? mark + 1 : mark;
}

/* "Damage 1 (", "Schaden 2 -", "Repair 3:" */
static gboolean
is_damage_number (const EmReader *r, guint i)
{
  static const char *const words[] = { "damage", "defect", "repair", "fault", "issue", "job", "problem", "schaden", "schadstelle", "reparatur", "mangel", "défaut",
                                       "dommage", "réparation", "daño", "defecto", "reparación" };

  return em_item_is_any_word_of (r->items, i, words, G_N_ELEMENTS (words)) && em_list_is_bare_whole (r->items, i + 1) &&
         em_item (r->items, i + 1)->length <= 2 &&
         (em_item_is_sign (r->items, i + 2, '(') || em_item_is_sign (r->items, i + 2, ':') || is_parting (r, i + 2));
}

/* "Ref: 2207" names an order, "Ref. 3" a point of the list. */
static gboolean
is_order (const EmReader *r, guint i, guint end)
{
  guint number = i + 1;

  while (number < end && (em_item_is_sign (r->items, number, ':') || em_item_is_sign (r->items, number, '.')))
    number++;
  return em_item_says (r->items, i, EM_SAYS_REFERENCE) != NULL && number < end && em_list_is_bare_whole (r->items, number) &&
         em_item (r->items, number)->length > 2;
}

/* What heads a line of a list: uses it up and returns the item after it. */
guint
em_list_skip_head (EmReader *r, guint i, guint end)
{
  guint after = skip_listed (r, i, end), named;
  gboolean is_named = em_list_is_item_word (r, i) && i + 2 < end && !is_order (r, i, end), is_parted;

  if (after != i)
    return after;
  /* "Damage 1 (nick): …" */
  if (i + 3 < end && is_damage_number (r, i))
    {
      em_item_size (r->items, i + 1)->roles |= EM_ROLE_REFERENCE;
      em_item (r->items, i + 1)->is_used = r->is_bullet = TRUE;
      return i + 2 + !em_item_is_sign (r->items, i + 2, '(');
    }
  /* "Pos.1 - Formplatte" */
  if (i + 2 < end && em_list_pointed_number (r->items, i + 1) != 0)
    {
      em_item_size (r->items, i + 1)->roles |= EM_ROLE_REFERENCE;
      /* Its point tells nothing of inches. */
      em_item_size (r->items, i + 1)->flags &= ~(guint) EM_TOKEN_LEADING_DOT;
      em_item (r->items, i + 1)->is_used = r->is_bullet = TRUE;
      return i + 2 + (is_parting (r, i + 2) || em_list_is_mark (r, i + 2));
    }
  /* "ITEM 1:" */
  is_parted = is_named && i + 3 < end && (em_item_is_sign (r->items, i + 1, '.') ||
                                          (em_item_is_sign (r->items, i + 1, ':') && em_list_is_bare_whole (r->items, i + 2)));
  named = !is_named ? i : is_parted ? i + 2 : i + 1;
  if (is_list_name (r, named, end, &after))
    {
      for (guint k = named; k < after; k++)
        em_item (r->items, k)->is_used = TRUE;
      r->is_bullet = TRUE;
      return after;
    }
  if (em_list_is_bullet (em_item (r->items, named)))
    {
      r->is_dash = TRUE;
      em_item (r->items, named)->is_used = r->is_bullet = TRUE;
      /* "• 1 - core", "- 2) bore" */
      return named + 1 < end ? skip_marked (r, named + 1, end, FALSE) : named + 1;
    }
  after = skip_hash (r, named, end);
  if (after == named)
    after = skip_marked (r, named, end, is_named);
  /* "pt 3 bore", "Position: 3 Schaden: …", "op 20 weld: …" */
  if (after == named && is_named && em_item_says (r->items, i, EM_SAYS_KIND) == NULL && em_list_is_bare_whole (r->items, named) &&
      (em_item_says (r->items, named + 1, EM_SAYS_KIND) != NULL || em_item_says (r->items, named + 1, EM_SAYS_VERB) != NULL ||
       em_item_is_sign (r->items, named + 1, ',') || (is_parted && em_item (r->items, named + 1)->type != EM_ITEM_SIZE)))
    {
      em_item (r->items, named)->is_used = r->is_bullet = TRUE;
      return named + 1;
    }
  /* "AREA 20 x 10": without its number the word is a repair's own; "Ref: 2207" is an order's. */
  return after == named && is_named &&
         (em_item_says (r->items, i, EM_SAYS_KIND) != NULL || em_item_says (r->items, i, EM_SAYS_REFERENCE) != NULL) ? i : after;
}

/* "(b) vent land": a letter of a list within a line. */
static gboolean
is_bracketed_letter (const EmReader *r, guint i, guint end)
{
  return i + 3 < end && em_item_is_sign (r->items, i, '(') && is_letter (r, i + 1) && em_item_is_glued (r->items, i + 1) &&
         em_item_is_sign (r->items, i + 2, ')');
}

/* The number of "2. BORE", "2) bore" or "2 - bore" at item i; 0 when there is none. */
static guint64
dotted_number (const EmReader *r, guint i)
{
  const EmItem *next = i + 2 < r->items->items->len ? em_item (r->items, i + 2) : NULL;

  gboolean is_dash = next != NULL && em_item_is_sign (r->items, i + 1, '-') && !em_item_is_glued (r->items, i + 1);

  if (next == NULL || !em_list_is_bare_whole (r->items, i) || em_item (r->items, i)->length > 2 ||
      !(em_list_is_mark (r, i + 1) || is_dash) || em_item_is_sign (r->items, i + 1, ':') ||
      (next->flags & EM_TOKEN_GLUED) != 0 ||
      (next->type != EM_ITEM_PHRASE && next->type != EM_ITEM_UNKNOWN &&
       !(next->type == EM_ITEM_SIZE && em_item_is_sign (r->items, i + 1, ')')) /* "1) 2 dia x 0.5" */))
    return 0;
  return em_item_size (r->items, i)->value.n;
}

/* "2 FILL POCKET", "3 NO WELD": nobody counts what is to be done. The number at item i; 0 when there is none. */
static guint64
verb_number (const EmReader *r, guint i)
{
  guint64 number = leading_number (r->items, i);

  return number != 0 && (em_item_says (r->items, i + 1, EM_SAYS_VERB) != NULL ||
                         em_item_says (r->items, i + 1, EM_SAYS_REFUSE) != NULL)
         ? number : 0;
}

/* "(2)" or "2." at item i: the number of a list within a line, how many items it takes and which of them is the number. */
static guint64
inline_number (const EmReader *r, guint i, guint *out_length, guint *out_at)
{
  guint64 number = bracketed_number (r->items, i);

  *out_length = number != 0 ? 3 : 2;
  *out_at = number != 0 ? i + 1 : i;
  if (number == 0)
    number = dotted_number (r, i);
  if (number == 0)
    {
      number = verb_number (r, i);
      *out_length = 1;
    }
  return number;
}

/* "A) gouge 30 x 2 B) gouge 14 x 2": the next letter of a list within the line. */
static gboolean
is_next_letter (const EmReader *r, guint i)
{
  return r->inline_letter != 0 && i + 2 < r->items->items->len && is_letter (r, i) && em_item_is_sign (r->items, i + 1, ')') &&
         em_item_is_glued (r->items, i + 1) && !em_item_is_glued (r->items, i) &&
         g_ascii_tolower (r->items->text[em_item (r->items, i)->start]) == r->inline_letter + 1;
}

/* "… up. (1) the corner is round. (2) a hole …", "Notes: 1. … 2. …": numbers of a list that runs on in the line. Returns the item after it. */
guint
em_list_skip_number (EmReader *r, guint first, guint end)
{
  guint length, at, other_length, other_at;
  guint64 number = inline_number (r, first, &length, &at);
  gboolean has_next = number > 1 && length == r->inline_length && (number == r->inline_number + 1 || number == r->inline_number);

  for (guint i = first + 3; number == 1 && i < end && i < first + INLINE_WINDOW && !has_next; i++)
    has_next = inline_number (r, i, &other_length, &other_at) == 2 && other_length == length;
  if (is_next_letter (r, first))
    {
      r->inline_letter++;
      em_item (r->items, first)->is_used = r->is_bullet = TRUE;
      return first + 2;
    }
  if (is_bracketed_letter (r, first, end))
    {
      em_item (r->items, first + 1)->is_used = r->is_bullet = TRUE;
      return first + 3;
    }
  if (!has_next)
    return first;
  r->inline_number = number;
  r->inline_length = length;
  r->is_bullet = TRUE;
  em_item (r->items, at)->is_used = TRUE;
  return first + length;
}

/* "nick 3 x 1 x 1 2) nick 5 x 1": the next number of a list with nothing before it. */
gboolean
em_list_begins_number (const EmReader *r, guint i)
{
  if (is_next_letter (r, i))
    return TRUE;
  return r->inline_length == 2 && i + 2 < r->items->items->len && em_item_is_sign (r->items, i + 1, ')') &&
         !em_item_is_sign (r->items, i - 1, '(') &&
         dotted_number (r, i) == r->inline_number + 1;
}

/* "Please: (1) fill hole, (2) build up": a colon or comma before the next number of a list ends what stands before it. */
gboolean
em_list_precedes_number (EmReader *r, guint i, guint end)
{
  guint length, at;
  guint64 number = i + 3 < end ? inline_number (r, i + 1, &length, &at) : 0;

  if (number == 0 || (!em_item_is_sign (r->items, i, ':') && !em_item_is_sign (r->items, i, '.') &&
                      !em_item_is_soft_break (r->items, i)))
    return FALSE;
  return number == r->inline_number + 1 && (r->inline_length == 0 || length == r->inline_length) &&
         em_list_skip_number (r, i + 1, end) != i + 1;
}
