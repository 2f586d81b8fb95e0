/* em-hand: what governs reaches its repair, or all.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-hand.h"

#include "em-refer.h"
#include "em-whose.h"

#include <string.h>

enum
{
  HEAD_NOUN = 3,   /* a noun of this weight may begin another repair */
  NAMED_WINDOW = 64,   /* repairs, or words, looked over for the one a note names */
  ITEMS_MAX = 8, REST_WINDOW = 4,   /* repairs named by their numbers in one sentence */
  SHORT_SENTENCE = 8   /* items of a note that may stand for all */
};

/* "corner" and "knocked corner" */
static gboolean
share_kind (const EmSense *a, const EmSense *b)
{
  for (int k = 0; k < EM_N_NOTE_KINDS; k++)
    if (a->weight[k] >= HEAD_NOUN && b->weight[k] >= HEAD_NOUN)
      return TRUE;
  return FALSE;
}

/* The likeliest kind of a noun is the same: "chip" and "dent", and not "chip" and "edge". */
static gboolean
share_likeliest (const EmSense *a, const EmSense *b)
{
  int best_a = 0, best_b = 0;

  for (int k = 1; k < EM_N_NOTE_KINDS; k++)
    {
      best_a = a->weight[k] > a->weight[best_a] ? k : best_a;
      best_b = b->weight[k] > b->weight[best_b] ? k : best_b;
    }
  return best_a == best_b;
}

/* "you finish the corner, we grind the heel": where the part between commas begins that item i is in, if a noun is in it. */
static guint
part_of (const EmReader *r, guint i)
{
  guint first = i;
  gboolean has_noun = FALSE;

  while (first > r->first && first + NAMED_WINDOW > i && !em_item_is_soft_break (r->items, first - 1))
    first--;
  for (guint k = first; k < r->end && k < first + NAMED_WINDOW && !em_item_is_soft_break (r->items, k); k++)
    has_noun |= em_item_says (r->items, k, EM_SAYS_PLACE) == NULL && em_item_says (r->items, k, EM_SAYS_KIND) != NULL;
  return has_noun ? first : r->first;
}

/* "SHOP TO GRIND FACE FLUSH": the one repair of that kind read so far. When several or none are meant, the note governs all, with
 * its doubt marked. NULL: it governs. */
static EmProto *
named_repair (const EmReader *r, const EmLoose *loose, EmReadField *field)
{
  const EmSense *noun = NULL;
  EmProto *named = NULL, *likeliest = NULL;
  guint n_named = 0, n_likeliest = 0, first = loose->is_near ? MAX (r->first, loose->item + 1) : part_of (r, loose->item);

  for (guint i = first; i < r->end && i < first + NAMED_WINDOW && noun == NULL; i++)
    noun = em_item_says (r->items, i, EM_SAYS_PLACE) == NULL ? em_item_says (r->items, i, EM_SAYS_KIND) : NULL;
  if (noun == NULL)
    return NULL;
  for (guint i = r->grammar->protos->len; i-- > 0 && n_likeliest < 2 && i + NAMED_WINDOW > r->grammar->protos->len;)
    {
      EmProto *proto = g_ptr_array_index (r->grammar->protos, i);
      const EmSense *its = proto->noun != EM_NO_ITEM ? em_item_says (r->items, proto->noun, EM_SAYS_KIND) : NULL;

      if (its == NULL || !share_kind (noun, its))
        continue;
      named = proto;
      n_named++;
      if (share_likeliest (noun, its))
        {
          likeliest = proto;
          n_likeliest++;
        }
    }
  field->state = EM_READ_INFERRED;
  field->reason = "from-words";
  return n_likeliest == 1 ? likeliest : n_named == 1 ? named : NULL;
}

static void
doubt (EmReadField *field)
{
  if (field->reason == NULL)
    field->reason = "from-words";
  field->state = EM_READ_INFERRED;
}

/* "; 0.2 for grinding" behind one repair is that repair's; behind several, or in a sentence of its own, it governs. */
static gboolean
is_for_current (const EmReader *r, const EmReadField *field)
{
  return r->current != NULL && r->grammar->protos->len == 1 && field->line == em_reader_line_of (r, r->current->last) &&
         (r->current->first >= r->first || (r->first > 0 && em_item_is_sign (r->items, r->first - 1, ';')));
}

/* ". STOCK .005": a sentence of no more than that, behind the second repair or a later one. */
static gboolean
is_short_for_all (const EmReader *r, const EmProto *proto)
{
  guint n_sizes = 0;

  if (r->grammar->protos->len < 2 || proto->first >= r->first || r->end - r->first > SHORT_SENTENCE || r->first == 0 ||
      !em_item_is_sign (r->items, r->first - 1, '.'))
    return FALSE;
  for (guint i = r->first; i < r->end; i++)
    n_sizes += em_item (r->items, i)->type == EM_ITEM_SIZE;
  return n_sizes == 1;
}

/* "stock 0.2 everywhere except item 4": what is told before such a word is not told of those behind it. */
static gboolean
is_before_exception (const EmReader *r, guint at)
{
  static const char *const words[] = { "except", "except for", "excepting", "apart from", "other than", "all but", "außer", "ausser", "ausgenommen", "bis auf", "sauf", "excepté", "hormis",
                                       "excepto", "salvo", "menos" };

  for (guint i = at + 1; i < r->end && i < at + NAMED_WINDOW; i++)
    if (em_item_is_any_word_of (r->items, i, words, G_N_ELEMENTS (words)))
      return TRUE;
  return FALSE;
}

/* "we do the rest" in one phrase */
static gboolean
ends_in_rest (const EmItems *items, guint i)
{
  static const char rest[] = " rest";
  const EmItem *item = em_item (items, i);
  gsize n = strlen (rest);

  return item->length > n && g_ascii_strncasecmp (items->text + item->start + item->length - n, rest, n) == 0;
}

static gboolean
has_finish (const EmProto *proto)
{
  for (guint i = 0; i < proto->given->len; i++)
    if (strcmp (g_array_index (proto->given, EmGiven, i).field.field, "finish") == 0)
      return TRUE;
  return FALSE;
}

/* "You finish the dam, we do the rest": what nobody was told to finish yet. */
static guint
rest_of (const EmReader *r, const EmLoose *loose, EmProto **out_protos, guint max)
{
  static const char *const rest[] = { "rest", "others", "remainder", "remaining", "other", "übrige", "übrigen", "restliche", "restlichen", "resto", "demás", "lo demás", "reste", "autres" };
  gboolean is_rest = FALSE, has_told = FALSE;
  guint n = 0;

  for (guint i = loose->item; i < r->end && i <= loose->item + REST_WINDOW && !em_item_is_soft_break (r->items, i); i++)
    is_rest |= em_item_is_any_word_of (r->items, i, rest, G_N_ELEMENTS (rest)) || ends_in_rest (r->items, i);
  for (guint k = 0; is_rest && k < r->grammar->protos->len && n < max; k++)
    if (has_finish (g_ptr_array_index (r->grammar->protos, k)))
      has_told = TRUE;
    else
      out_protos[n++] = g_ptr_array_index (r->grammar->protos, k);
  return has_told ? n : 0;
}

/* "texture 2 mm from item 1", "stock 0.5 on items 1 and 2": said of those repairs. TRUE: it was. */
static gboolean
hand_to_items (EmReader *r, const EmLoose *loose, const EmProto *own)
{
  EmProto *named[ITEMS_MAX];
  EmGiven given = loose->given;
  guint n;

  if (!loose->is_near && strcmp (given.field.field, "stock") != 0 && strcmp (given.field.field, "finish") != 0)
    return FALSE;
  if (is_before_exception (r, loose->item))
    return FALSE;
  n = strcmp (given.field.field, "finish") == 0 ? rest_of (r, loose, named, ITEMS_MAX) : 0;
  if (n == 0)
    n = em_refer_items (r, loose->item, named, ITEMS_MAX);
  if (n == 0)
    n = em_refer_codes (r, loose->item, named, ITEMS_MAX);
  if (n == 0 && !loose->is_general && (own == NULL || own->first < r->first))
    n = em_whose_named (r, loose->item, named, ITEMS_MAX);
  doubt (&given.field);
  for (guint i = 0; i < n; i++)
    g_array_append_val (named[i]->given, given);
  return n > 0;
}

/* What governs all; its doubts are marked. */
static void
give_to_all (EmReader *r, const EmLoose *loose, EmGiven given)
{
  EmReadField *field = &given.field;
  gboolean is_finish = strcmp (field->field, "finish") == 0;

  if (!loose->is_general && field->reason == NULL && strcmp (field->field, "refuse") != 0 && !is_finish)
    {
      field->state = EM_READ_INFERRED;
      field->reason = "own-line";
    }
  /* "4. Water connections: do not weld, we fit inserts": of one point of several. */
  if (is_finish && (r->is_listed || r->is_dash) && r->grammar->protos->len > 1)
    doubt (field);
  /* Behind a repair on its line it may be that one's alone. */
  if ((strcmp (field->field, "coating") == 0 || (!loose->is_general && is_finish)) && r->current != NULL &&
      field->line == em_reader_line_of (r, r->current->last))
    doubt (field);
  g_array_append_val (r->grammar->general, given);
}

void
em_hand_out (EmReader *r, const EmLoose *loose, EmProto *proto)
{
  EmGiven given = loose->given;
  EmReadField *field = &given.field;

  if (hand_to_items (r, loose, proto))
    return;
  if (proto != NULL && strcmp (field->field, "stock") == 0 && is_short_for_all (r, proto))
    proto = NULL;
  else if (proto == NULL && !loose->is_general && strcmp (field->field, "stock") == 0 && is_for_current (r, field))
    {
      /* It may be meant for all. */
      doubt (field);
      proto = r->current;
    }
  /* "You finish the corner." behind another repair */
  if (proto != NULL && proto->first < r->first && !loose->is_general && strcmp (field->field, "finish") == 0)
    {
      EmProto *named = named_repair (r, loose, field);

      proto = named != NULL ? named : proto;
    }
  if (proto == NULL && !loose->is_general &&
      (strcmp (field->field, "finish") == 0 || strcmp (field->field, "stock") == 0 || loose->is_near))
    proto = named_repair (r, loose, field);
  if (loose->is_general || (proto == NULL && !loose->is_near))
    {
      give_to_all (r, loose, given);
      return;
    }
  if (proto == NULL && loose->is_near)
    {
      /* A thing near without its repair belongs to the repair on the same line, else to the next: most likely. */
      doubt (field);
      if (r->current != NULL && field->line <= em_reader_line_of (r, r->current->last) + 1)
        g_array_append_val (r->current->given, given);
      else
        g_array_append_val (r->waiting, given);
      return;
    }
  /* Said beside one repair it may be meant for all. */
  if (proto != NULL && strcmp (field->field, "finish") == 0)
    doubt (field);
  if (proto != NULL)
    g_array_append_val (proto->given, given);
}
