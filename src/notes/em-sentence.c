/* em-sentence: where one sentence of a line ends.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-sentence.h"

#include "em-list.h"

#include <string.h>

enum
{
  WHOLE_WORD = 4,       /* letters of a word that is no abbreviation */
  SHORT_WORD = 6,       /* and of one that may be */
  HEAD_WORDS = 3,       /* what is counted, and where */
  ANOTHER_WINDOW = 24   /* items of a sentence looked back over for its noun */
};

/* A full stop between two items. */
typedef struct
{
  const EmReader *r;
  guint           i;
  const EmItem   *before, *next;
} Stop;

static gboolean
says_before (const Stop *s, EmSays what)
{
  return em_item_says (s->r->items, s->i - 1, what) != NULL;
}

static gboolean
says_behind (const Stop *s, EmSays what)
{
  return em_item_says (s->r->items, s->i + 1, what) != NULL;
}

static gboolean
has_item (const Stop *s, guint ahead)
{
  return s->i + ahead < s->r->items->items->len;
}

static gboolean
is_capital (const EmItem *item)
{
  return (item->flags & EM_TOKEN_CAPITAL) != 0;
}

static gboolean
is_upper (const EmItem *item)
{
  return (item->flags & EM_TOKEN_UPPER) != 0;
}

/* "nominal dia", "punch diam": the one abbreviation (ASME Y14.38) that long labels end in. */
static gboolean
ends_in_dia (const EmReader *r, const EmItem *item)
{
  static const char *const ends[] = { " dia", " diam" };

  for (gsize i = 0; i < G_N_ELEMENTS (ends); i++)
    if (item->length > strlen (ends[i]) &&
        g_ascii_strncasecmp (r->items->text + item->start + item->length - strlen (ends[i]), ends[i], strlen (ends[i])) == 0)
      return TRUE;
  return FALSE;
}

/* "(2) PLCS": how many places, the number first. */
static gboolean
closes_count (const EmReader *r, guint places)
{
  guint number = places - 1;

  if (places == 0 || em_item_says (r->items, places, EM_SAYS_PLACES) == NULL)
    return FALSE;
  if (em_item_is_sign (r->items, number, ')') && number > 0)
    number--;
  return em_item (r->items, number)->type == EM_ITEM_SIZE || em_item_says (r->items, number, EM_SAYS_NUMBER) != NULL;
}

/* "... .900 DP. WORN SHUTOFF EDGE R.020", "... .60 LG. UNDERCUT FACE LOW .004": behind a label that closes the sizes of one noun
 * comes another noun, and no size before it. */
static gboolean
begins_another (const EmReader *r, guint stop)
{
  gboolean has_noun = FALSE, is_place;
  guint n = r->items->items->len;

  if (stop < 2 || em_item_says (r->items, stop - 1, EM_SAYS_KIND) != NULL ||
      (!closes_count (r, stop - 1) &&
       (!em_item_is_measure (r->items, stop - 2) || em_item_says (r->items, stop - 1, EM_SAYS_LABEL) == NULL)))
    return FALSE;
  for (guint i = stop; i-- > 0 && i + ANOTHER_WINDOW > stop && em_item (r->items, i)->type != EM_ITEM_LINE &&
       !em_item_is_sign (r->items, i, ';') && !has_noun;)
    has_noun = em_reader_is_noun (r, i);
  if (has_noun && (em_item_says (r->items, stop + 1, EM_SAYS_MATERIAL) != NULL ||
                   em_item_says (r->items, stop + 1, EM_SAYS_REFERENCE) != NULL))
    return TRUE;
  is_place = has_noun && stop + 1 < n && em_item_says (r->items, stop + 1, EM_SAYS_PLACE) != NULL;
  for (guint i = stop + 1; has_noun && i < n && i <= stop + (is_place ? 6 : 3); i++)
    if (em_item_says (r->items, i, EM_SAYS_KIND) != NULL)
      return i + 1 < n && (em_item (r->items, i + 1)->type == EM_ITEM_SIZE ||
                           em_item_says (r->items, i + 1, EM_SAYS_LABEL) != NULL ||
                           i > stop + 1);
    /* "CAV #5: GATE WASH" */
    else if (em_item (r->items, i)->type != EM_ITEM_PHRASE && em_item (r->items, i)->type != EM_ITEM_UNKNOWN &&
             !(is_place && (em_item_is_sign (r->items, i, '#') || em_item_is_sign (r->items, i, ':') ||
                            em_list_is_bare_whole (r->items, i))))
      return FALSE;
  return FALSE;
}

/* "NO", "Nr" */
static gboolean
is_number_word (const EmReader *r, guint i)
{
  const EmSense *word = em_item_says (r->items, i, EM_SAYS_GLUE);

  return word != NULL && g_strcmp0 (word->value, "number") == 0;
}

/* "the rib is low. 3/32 thick, …": what became of it is told, and no size behind the point is how much. */
static gboolean
is_told_state (const EmReader *r, guint i)
{
  const EmSense *label = em_item_says (r->items, i, EM_SAYS_LABEL);

  return label != NULL && (label->roles & (EM_ROLE_BUILD | EM_ROLE_WORN)) != 0 && em_item_says (r->items, i, EM_SAYS_VERB) == NULL &&
         i > 0 && !em_item_is_measure (r->items, i - 1);
}

/* ---- what lets the sentence go on, and what ends it, in order of rank ---- */

static gboolean
is_within_word (const Stop *s)
{
  return (s->next->flags & EM_TOKEN_GLUED) != 0 && s->next->type != EM_ITEM_LINE;
}

/* "Nr. B-2093": a letter or two, and a number glued to them. */
static gboolean
is_code (const Stop *s)
{
  enum { LETTERS = 3 };
  const EmItems *items = s->r->items;
  guint number = s->i + 2;

  if (s->next->length > LETTERS || !has_item (s, 2) || !g_ascii_isalpha (items->text[s->next->start]))
    return FALSE;
  number += em_item_is_sign (items, number, '-') && em_item_is_glued (items, number);
  return number < items->items->len && em_item_is_glued (items, number) && em_item (items, number)->type == EM_ITEM_SIZE;
}

/* "Pos. 2", "Nr. 7", "Nr. B-2093" */
static gboolean
is_before_number (const Stop *s)
{
  if (is_number_word (s->r, s->i - 1) && s->next->type != EM_ITEM_LINE && is_code (s))
    return TRUE;
  return s->next->type == EM_ITEM_SIZE && (em_list_is_item_word (s->r, s->i - 1) || is_number_word (s->r, s->i - 1));
}

/* "4 no. tapped holes" */
static gboolean
is_so_many_no (const Stop *s)
{
  return s->i >= 2 && is_number_word (s->r, s->i - 1) && em_list_is_bare_whole (s->r->items, s->i - 2) &&
         (says_behind (s, EM_SAYS_KIND) || says_behind (s, EM_SAYS_THING) || says_behind (s, EM_SAYS_PLACE));
}

/* "MACH. BY CUST." */
static gboolean
is_before_agent (const Stop *s)
{
  return says_before (s, EM_SAYS_MACHINING) && says_behind (s, EM_SAYS_TIMES) && s->next->type == EM_ITEM_PHRASE &&
         g_ascii_strncasecmp (s->r->items->text + s->next->start, "by", 2) == 0;
}

/* A line, or a part of it behind a mark, begins before the item. */
static gboolean
begins_part (const EmItems *items, guint i)
{
  return i == 0 || em_item (items, i - 1)->type == EM_ITEM_LINE || em_item_is_sign (items, i - 1, ';') || em_item_is_sign (items, i - 1, ':') ||
         em_list_is_bullet (em_item (items, i - 1));
}

/* "3 Stk. Stempel", "Auswerfer 3 Stk. Schaft …" at its head */
static gboolean
is_pieces_of (const Stop *s)
{
  const EmItems *items = s->r->items;
  guint first = s->i - 2;

  if (s->i < 2 || !says_before (s, EM_SAYS_PLACES) || s->before->length > WHOLE_WORD || !em_list_is_bare_whole (items, first))
    return FALSE;
  while (first > 0 && first + HEAD_WORDS > s->i - 2 && !begins_part (items, first) &&
         (em_item_says (items, first - 1, EM_SAYS_KIND) != NULL || em_item_says (items, first - 1, EM_SAYS_PLACE) != NULL))
    first--;
  return begins_part (items, first) && (says_behind (s, EM_SAYS_KIND) || says_behind (s, EM_SAYS_PLACE));
}

/* "Cav. 3" */
static gboolean
is_place_number (const Stop *s)
{
  return em_list_is_bare_whole (s->r->items, s->i + 1) && s->before->length <= WHOLE_WORD && says_before (s, EM_SAYS_PLACE);
}

/* "CUST. TO RECUT" */
static gboolean
is_agent_to (const Stop *s)
{
  return says_before (s, EM_SAYS_AGENT) && s->before->length <= WHOLE_WORD && says_behind (s, EM_SAYS_TO) &&
         g_ascii_strncasecmp (s->r->items->text + s->next->start, "to", 2) == 0;
}

/* ".50 THRU. 2 TOOLS" */
static gboolean
is_before_count (const Stop *s)
{
  return (says_before (s, EM_SAYS_LABEL) || says_before (s, EM_SAYS_PLACES)) && em_list_is_bare_whole (s->r->items, s->i + 1) &&
         has_item (s, 2) && (em_item_says (s->r->items, s->i + 2, EM_SAYS_TOOLS) != NULL ||
                             em_item_says (s->r->items, s->i + 2, EM_SAYS_KIND) != NULL);
}

/* "56 deep. moving half: …": a whole word is no abbreviation. */
static gboolean
is_whole_label (const Stop *s)
{
  const EmSense *label = em_item_says (s->r->items, s->i - 1, EM_SAYS_LABEL);

  return label != NULL && label->place == EM_LABEL_AFTER && s->before->length >= WHOLE_WORD &&
         (s->next->type == EM_ITEM_PHRASE || s->next->type == EM_ITEM_UNKNOWN) && s->next->sign == 0 &&
         !says_behind (s, EM_SAYS_TIMES) &&
         (!says_behind (s, EM_SAYS_LABEL) || (is_capital (s->next) && !is_upper (s->before)));
}

/* "1.25 long. 3 also have nicks" */
static gboolean
is_before_some (const Stop *s)
{
  const EmItems *items = s->r->items;
  guint word = s->i + 2;

  return says_before (s, EM_SAYS_LABEL) && em_list_is_bare_whole (items, s->i + 1) && has_item (s, 2) &&
         (em_item (items, word)->type == EM_ITEM_UNKNOWN || em_item_says (items, word, EM_SAYS_GLUE) != NULL) &&
         em_item_says (items, word, EM_SAYS_UNIT) == NULL && em_item_says (items, word, EM_SAYS_LABEL) == NULL;
}

/* "25 wide. 4140." */
static gboolean
is_before_metal (const Stop *s)
{
  const EmItems *items = s->r->items;

  return s->next->type == EM_ITEM_SIZE && em_phrase_find (s->next->phrase, EM_SAYS_BASE) != NULL &&
         (!has_item (s, 2) || em_item (items, s->i + 2)->type == EM_ITEM_LINE || em_item_is_sign (items, s->i + 2, '.') ||
          em_item_is_sign (items, s->i + 2, ','));
}

/* "2x vert. faces" */
static gboolean
is_short_adjective (const Stop *s)
{
  static const char *const words[] = { "vert", "horiz", "rect", "circ", "cyl", "ext", "int", "inf", "sup", "izq", "der", "dcha", "opp", "adj", "diag", "ob", "unt", "li", "re", "waagr", "senkr" };

  return em_item_is_any_word_of (s->r->items, s->i - 1, words, G_N_ELEMENTS (words)) &&
         (!is_capital (s->next) || is_upper (s->before) || says_behind (s, EM_SAYS_KIND));
}

/* "o.d. worn"; where all is in capitals, "PIN O.D. UNDERSIZE", a capital tells nothing. */
static gboolean
is_pointed_word (const Stop *s)
{
  return s->before->type == EM_ITEM_PHRASE && memchr (s->r->items->text + s->before->start, '.', s->before->length) != NULL &&
         (!is_capital (s->next) || (is_upper (s->next) && s->next->length > 1 && !says_behind (s, EM_SAYS_VERB) &&
                                    !says_behind (s, EM_SAYS_REFUSE)));
}

/* "3 places. The bore …" */
static gboolean
is_whole_places (const Stop *s)
{
  return s->before->length > WHOLE_WORD && says_before (s, EM_SAYS_PLACES) && s->next->type != EM_ITEM_SIZE && s->next->sign == 0;
}

/* "drawing no. SK-2071" */
static gboolean
is_before_code (const Stop *s)
{
  const EmItems *items = s->r->items;

  return says_before (s, EM_SAYS_REFERENCE) && has_item (s, 3) && em_item_is_sign (items, s->i + 2, '-') &&
         (em_item (items, s->i + 2)->flags & EM_TOKEN_GLUED) != 0 && em_item (items, s->i + 3)->type == EM_ITEM_SIZE;
}

static gboolean
is_before_another (const Stop *s)
{
  return begins_another (s->r, s->i) || is_told_state (s->r, s->i - 1);
}

/* What begins a sentence by itself, even where all is in capitals. */
static gboolean
begins_by_itself (const Stop *s)
{
  static const EmSays beginning[] = { EM_SAYS_VERB, EM_SAYS_FINISH, EM_SAYS_REFUSE, EM_SAYS_MACHINING, EM_SAYS_AGENT, EM_SAYS_SAME };
  const EmSense *label = em_item_says (s->r->items, s->i + 1, EM_SAYS_LABEL);

  for (gsize k = 0; k < G_N_ELEMENTS (beginning); k++)
    if (says_behind (s, beginning[k]))
      return TRUE;
  return label != NULL && (label->roles & EM_ROLE_STOCK) != 0;
}

/* ".25 LG. X .03" */
static gboolean
is_abbreviation (const Stop *s)
{
  static const EmSays abbreviated[] = { EM_SAYS_LABEL, EM_SAYS_PLACES, EM_SAYS_UNIT, EM_SAYS_APPROXIMATE, EM_SAYS_TYPICAL,
                                        EM_SAYS_REFERENCE, EM_SAYS_MATERIAL, EM_SAYS_MINIMUM, EM_SAYS_MAXIMUM, EM_SAYS_QUANTITY };

  for (gsize k = 0; k < G_N_ELEMENTS (abbreviated); k++)
    if ((s->before->length <= SHORT_WORD || ends_in_dia (s->r, s->before) || abbreviated[k] == EM_SAYS_REFERENCE) &&
        says_before (s, abbreviated[k]))
      return !is_capital (s->next) || s->next->length == 1 || (is_upper (s->before) && !begins_by_itself (s));
  return FALSE;
}

/* "do not weld it! We grind it": where a capital begins what follows. A question and its answer stay together: "S7? No, A2". */
static gboolean
ends_at_mark (const EmReader *r, guint i)
{
  const EmItem *next = i + 1 < r->items->items->len ? em_item (r->items, i + 1) : NULL;

  if (!em_item_is_sign (r->items, i, '!'))
    return FALSE;
  return next == NULL || (next->type != EM_ITEM_SIGN && (next->flags & EM_TOKEN_GLUED) == 0 && is_capital (next));
}

/* "wie Pos. 2" */
static gboolean
is_like_number (const Stop *s)
{
  return s->before->type == EM_ITEM_PHRASE && em_phrase_find (s->before->phrase, EM_SAYS_SAME) != NULL && em_list_is_bare_whole (s->r->items, s->i + 1) &&
         s->next->length <= 2;
}

/* "9 de prof. : flanc à recharger": what goes on with a comma or a colon has not ended. */
static gboolean
is_before_mark (const Stop *s)
{
  return em_item_is_sign (s->r->items, s->i + 1, ':') || em_item_is_sign (s->r->items, s->i + 1, ',');
}

/* "Stock A and B 0.3; C 0.5; D 0.1": the label heads the whole line. */
static gboolean
is_within_stock_list (const EmReader *r, guint i)
{
  enum { LINE_WINDOW = 24 };
  const EmSense *label;
  guint first = i;

  if (i + 2 >= r->items->items->len || em_item (r->items, i + 1)->length != 1 || em_item (r->items, i + 1)->type == EM_ITEM_SIGN ||
      em_item (r->items, i + 2)->type != EM_ITEM_SIZE)
    return FALSE;
  while (first > 0 && first + LINE_WINDOW > i && em_item (r->items, first - 1)->type != EM_ITEM_LINE)
    first--;
  label = em_item_says (r->items, first, EM_SAYS_LABEL);
  return label != NULL && (label->roles & EM_ROLE_STOCK) != 0;
}

gboolean
em_sentence_ends (const EmReader *r, guint i)
{
  static const struct { gboolean (*is)(const Stop *s); gboolean ends; } rules[] = {
    { is_before_mark, FALSE }, { is_within_word, FALSE }, { is_before_number, FALSE }, { is_so_many_no, FALSE }, { is_before_agent, FALSE }, { is_agent_to, FALSE },
    { is_place_number, FALSE }, { is_short_adjective, FALSE }, { is_pieces_of, FALSE }, { is_like_number, FALSE },
    { is_before_count, TRUE }, { is_whole_label, TRUE }, { is_before_some, TRUE }, { is_before_metal, TRUE },
    { is_pointed_word, FALSE }, { is_whole_places, TRUE }, { is_before_code, FALSE }, { is_before_another, TRUE },
    { is_abbreviation, FALSE },
  };
  Stop stop = { .r = r, .i = i };

  if (em_item_is_sign (r->items, i, ';') && is_within_stock_list (r, i))
    return FALSE;
  if (em_item_is_sign (r->items, i, ';') || ends_at_mark (r, i))
    return TRUE;
  if (!em_item_is_sign (r->items, i, '.') || i == 0)
    return FALSE;
  if (!has_item (&stop, 1))
    return TRUE;
  stop.before = em_item (r->items, i - 1);
  stop.next = em_item (r->items, i + 1);
  for (gsize k = 0; k < G_N_ELEMENTS (rules); k++)
    if (rules[k].is (&stop))
      return rules[k].ends;
  return TRUE;
}

gboolean
em_sentence_ends_at_point (const EmReader *r, guint i)
{
  const EmItem *before = em_item (r->items, i - 1);

  return before->type == EM_ITEM_PHRASE && before->length > 2 && r->items->text[before->start + before->length - 1] == '.' &&
         em_list_is_bare_whole (r->items, i) &&
         i + 1 < r->items->items->len && em_item_says (r->items, i + 1, EM_SAYS_KIND) != NULL &&
           em_item_says (r->items, i + 1, EM_SAYS_LABEL) == NULL &&
         em_item_says (r->items, i - 1, EM_SAYS_QUANTITY) == NULL && em_item_says (r->items, i - 1, EM_SAYS_KIND) == NULL;
}
