/* em-said: what only says more of the repair before it.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-said.h"

#include "em-report.h"

#include "em-counts.h"
#include "em-list.h"
#include "em-parts.h"
#include "em-refer.h"

#include <string.h>

enum
{
  ALL_MAX = 16, ALL_WINDOW = 3,   /* repairs that "all" means, and items to that word */
  BOTH_WINDOW = 3,      /* items from "both" to a size */
  SHARED_MAX = 8,       /* sizes of a repair that another may have, too */
  SHORT_SENTENCE = 8,   /* items of a note that may stand for all */
  LITTLE_MAX = 5   /* words before a number */
};

/* "the nick": a noun that the current proposal has, too. Marks it used. */
static gboolean
names_current (const EmReader *r, guint first, guint end)
{
  const EmSense *its = r->current != NULL && r->current->noun != EM_NO_ITEM
                       ? em_item_says (r->items, r->current->noun, EM_SAYS_KIND) : NULL;

  for (guint i = first; its != NULL && i < end; i++)
    {
      const EmSense *noun = em_reader_is_noun (r, i) ? em_item_says (r->items, i, EM_SAYS_KIND) : NULL;

      if (noun == NULL || memcmp (noun->weight, its->weight, sizeof its->weight) != 0)
        continue;
      em_item (r->items, i)->is_used = TRUE;
      return TRUE;
    }
  return FALSE;
}

/* "same on the other half", "cav 2 same deal": the repair before it, at one more place. */
static gboolean
is_same_elsewhere (const EmReader *r, guint first, guint end)
{
  gboolean has_place = FALSE, has_other = FALSE;

  if (r->has_loose)
    return FALSE;
  for (guint i = first; i < end; i++)
    {
      has_place |= em_item_says (r->items, i, EM_SAYS_PLACE) != NULL && em_item_says (r->items, i, EM_SAYS_KIND) == NULL;
      has_other |= em_item_says (r->items, i, EM_SAYS_ONE_OF) != NULL;
      /* "Same again on the back corner." */
      has_other |= i == first && first == r->first && i + 1 < end && em_item_says (r->items, i, EM_SAYS_SAME) != NULL && em_item_says (r->items, i + 1, EM_SAYS_PREPOSITION) != NULL;
    }
  /* "There are two bushes with the same nick." */
  return has_other || ((has_place || names_current (r, first, end)) && !r->is_line_start);
}

/* ", TWO RIBS" behind the sizes of a rib: the same kind of thing. */
static gboolean
counts_current (const EmReader *r, guint first, guint noun)
{
  const EmSense *its = r->current != NULL &&
                       r->current->noun != EM_NO_ITEM ? em_item_says (r->items, r->current->noun, EM_SAYS_KIND) : NULL;
  const EmSense *counted = noun < r->end ? em_item_says (r->items, noun, EM_SAYS_KIND) : NULL;

  if (its == NULL || counted == NULL || first == 0 || !em_item_is_soft_break (r->items, first - 1) ||
      r->current->count_item != EM_NO_ITEM)
    return FALSE;
  return memcmp (its->weight, counted->weight, sizeof its->weight) == 0;
}

/* "There are", "il y en a": little words before a number. */
static guint
skip_little (const EmReader *r, guint first, guint end)
{
  guint i = first;

  while (i < end && i < first + LITTLE_MAX &&
         (em_item (r->items, i)->is_talk || (em_item_says (r->items, i, EM_SAYS_GLUE) != NULL && em_item_says (r->items, i, EM_SAYS_NUMBER) == NULL)))
    i++;
  return i;
}

/* "per plate", "per plate, 2 plates": nothing else up to end. */
static gboolean
is_per_part (const EmReader *r, guint i, guint end)
{
  if (i + 1 >= end || !em_item_is_per (r->items, i) || em_item_says (r->items, i + 1, EM_SAYS_PLACE) == NULL)
    return FALSE;
  if (i + 2 == end)
    return TRUE;
  return i + 5 == end && em_item_is_soft_break (r->items, i + 2) && em_item_says (r->items, i + 4, EM_SAYS_PLACE) != NULL &&
         (em_item_says (r->items, i + 3, EM_SAYS_NUMBER) != NULL || em_item (r->items, i + 3)->type == EM_ITEM_SIZE);
}

/* ", all alike", ", mirrored": says no more than that of what was counted at counted: things like the repair before, or alike ones. */
static gboolean
is_only_alike (const EmReader *r, guint counted, guint end)
{
  const EmSense *noun = em_item_says (r->items, counted, EM_SAYS_KIND);
  const EmSense *its = r->current != NULL && r->current->noun != EM_NO_ITEM ? em_item_says (r->items, r->current->noun, EM_SAYS_KIND) : NULL;
  gboolean is_alike = em_item_says (r->items, counted, EM_SAYS_SAME) != NULL ||
                      (noun != NULL && its != NULL && memcmp (noun->weight, its->weight, sizeof its->weight) == 0);

  /* "4 seats per plate, 2 plates" */
  if (is_per_part (r, counted + 1, end))
    return is_alike;
  if (!em_item_is_soft_break (r->items, counted + 1) && em_item_says (r->items, counted + 1, EM_SAYS_PREPOSITION) == NULL)
    return FALSE;
  for (guint i = counted + 2; i < end; i++)
    {
      if (em_item (r->items, i)->type == EM_ITEM_SIZE || em_item_says (r->items, i, EM_SAYS_KIND) != NULL ||
          em_item_says (r->items, i, EM_SAYS_VERB) != NULL || em_item_says (r->items, i, EM_SAYS_BASE) != NULL)
        return FALSE;
      is_alike |= em_item_says (r->items, i, EM_SAYS_SAME) != NULL;
    }
  return is_alike;
}

/* "Two slides.", "All 4 drops.", "2 RIBS", "There are twelve pins in the box, all alike": a sentence of a number and what it counts. */
static gboolean
is_only_count (const EmReader *r, guint first, guint end, guint *out_number)
{
  gboolean is_start = first == r->first || counts_current (r, first, first + 1), has_count, is_whole = end == r->end;
  const EmSense *number;

  first = skip_little (r, first, end);
  /* "QTY 6 PINS", "ON 3 PLATES" in a line of its own */
  first += first + 2 < end && is_start && r->is_line_start && (em_item_says (r->items, first, EM_SAYS_QUANTITY) != NULL || em_item_says (r->items, first, EM_SAYS_PREPOSITION) != NULL);
  first += first + 2 < end && is_start && r->is_line_start && first > r->first && (em_item_is_sign (r->items, first, ':') || em_item_is_sign (r->items, first, '.'));
  if (first + 1 >= end)
    return FALSE;
  /* "All 4 drops." */
  first += first + 2 < end && (em_item_says (r->items, first, EM_SAYS_ALL) != NULL ||
                                em_item_is_all (r->items, first));
  *out_number = first;
  number = em_item_says (r->items, first, EM_SAYS_NUMBER);
  has_count = (number != NULL && strchr (number->value, '/') == NULL) ||
                       (em_item (r->items, first)->type == EM_ITEM_SIZE &&
                        (em_item_size (r->items, first)->roles & EM_ROLE_COUNT) != 0);

  /* "all 8 the same" */
  if (has_count && is_start && is_whole && first + 3 == end && em_item_says (r->items, first + 1, EM_SAYS_GLUE) != NULL &&
      em_item_says (r->items, first + 2, EM_SAYS_SAME) != NULL)
    return TRUE;
  /* "Three holes like this." */
  while (end > first + 2 && (em_item (r->items, end - 1)->is_talk || em_item_says (r->items, end - 1, EM_SAYS_GLUE) != NULL ||
                             em_item_says (r->items, end - 1, EM_SAYS_SAME) != NULL ||
                             em_item_says (r->items, end - 1, EM_SAYS_TOOLS) != NULL || em_item_is_sign (r->items, end - 1, ',')))
    end--;
  return has_count && is_start && is_whole && (end == first + 2 || (end > first + 2 && is_only_alike (r, first + 1, end))) &&
         (em_item_says (r->items, first + 1, EM_SAYS_SAME) != NULL ||
          em_item_says (r->items, first + 1, EM_SAYS_PLACE) != NULL || em_item_says (r->items, first + 1, EM_SAYS_KIND) != NULL ||
          em_item_says (r->items, first + 1, EM_SAYS_PLACES) != NULL);
}

/* "Fill please." behind a hole that nothing was told of yet: what is to be done with it. */
static gboolean
is_only_fill (const EmReader *r, const EmContent *content, const EmProto *before, guint first, guint end)
{
  guint fill = EM_NO_ITEM;

  if (content->n_sizes > 0 || content->has_noun || before == NULL || before->has_verb || before->has_worn || before->sizes->len == 0 ||
      r->is_bullet || em_reader_line_of (r, first) != em_reader_line_of (r, before->last) || end - first > SHORT_SENTENCE)
    return FALSE;
  for (guint i = first; i < end; i++)
    {
      const EmSense *verb = em_item_says (r->items, i, EM_SAYS_VERB);

      if (verb != NULL && g_strcmp0 (verb->value, "fill") == 0)
        fill = i;
      else if (em_item_says (r->items, i, EM_SAYS_GLUE) == NULL && !em_item (r->items, i)->is_talk)
        return FALSE;
    }
  return fill != EM_NO_ITEM;
}

/* The damage that the word at i tells is named at the head of the repair, too: "éclat", "Éclat sur l'arête". */
static gboolean
is_named_so (const EmReader *r, const EmProto *proto, guint i)
{
  enum { HEAD_ITEMS = 8, STEM_BYTES = 3 };
  const char *text = r->items->text, *word = g_utf8_next_char (text + em_item (r->items, i)->start);

  for (guint k = proto->first; k <= proto->last && k < proto->first + HEAD_ITEMS; k++)
    if (em_item_says (r->items, k, EM_SAYS_KIND) != NULL && em_item (r->items, k)->length > STEM_BYTES && em_item (r->items, i)->length > STEM_BYTES &&
        g_ascii_strncasecmp (g_utf8_next_char (text + em_item (r->items, k)->start), word, STEM_BYTES) == 0)
      return TRUE;
  return FALSE;
}

/* "Hay otro golpe igual enfrente" behind a nick and a face: the nearest repair of that name; else the one before. */
static EmProto *
named_same (const EmReader *r, EmProto *before, guint first, guint end)
{
  enum { BACK = 6, WINDOW = 12 };
  const GPtrArray *protos = r->grammar->protos;

  for (guint i = first; i < end && i < first + WINDOW; i++)
    for (guint k = protos->len; em_item_says (r->items, i, EM_SAYS_KIND) != NULL && k-- > 0 && k + BACK >= protos->len;)
      if (is_named_so (r, g_ptr_array_index (protos, k), i))
        return g_ptr_array_index (protos, k);
  return before;
}

/* "Same on the other half.", "Both slides are the same.": the repair before it, once more or everywhere. TRUE: taken. */
static gboolean
take_same (EmReader *r, EmProto *before, gboolean is_repair, guint first, guint end)
{
  gboolean is_elsewhere = is_same_elsewhere (r, first, end);

  if (!is_elsewhere && (is_repair || r->is_line_start))
    return FALSE;
  before = named_same (r, before, first, end);
  em_reader_take_aside (r, before, first, end, TRUE);
  if (is_elsewhere && before->count_item == EM_NO_ITEM)
    em_counts_add_same (r, before, first, end);
  for (guint i = first; i < end && (is_elsewhere || before->count_item != EM_NO_ITEM); i++)
    em_item (r->items, i)->is_used |= em_item (r->items, i)->type == EM_ITEM_PHRASE;
  return TRUE;
}

/* "- tight to get in, only from the top" in a line of its own: how the repair before it is reached. */
static gboolean
is_only_access (const EmReader *r, const EmContent *content, const EmProto *before, gboolean is_repair, guint first)
{
  return content->has_access && content->n_sizes == 0 && !is_repair && before != NULL && r->is_line_start &&
         (r->grammar->protos->len == 1 || em_reader_line_of (r, first) == em_reader_line_of (r, before->last) + 1);
}

/* "It is the outside edge." in the line below, of an edge that runs round. */
static gboolean
is_only_side (const EmReader *r, const EmContent *content, const EmProto *before, guint first, guint end)
{
  static const char *const it[] = { "it", "it's", "it is", "that's", "that is", "this is", "es", "das", "es ist", "das ist", "c'est", "il s'agit de", "es el", "es la" };
  gboolean has_side = FALSE;

  if (content->n_sizes > 0 || before == NULL || (before->roles & EM_ROLE_DIAMETER) == 0 || before->weight[WORN_CORNER] == 0 ||
      em_reader_line_of (r, first) > em_reader_line_of (r, before->last) + 1 || !em_item_is_any_word_of (r->items, first, it, G_N_ELEMENTS (it)))
    return FALSE;
  for (guint i = first; i < end; i++)
    {
      const EmSense *noun = em_item_says (r->items, i, EM_SAYS_KIND);

      if (em_item_says (r->items, i, EM_SAYS_VERB) != NULL)
        return FALSE;
      has_side |= noun != NULL && g_strcmp0 (noun->set_field, "side") == 0;
    }
  return has_side;
}

static gboolean
says_all (const EmReader *r, guint first, guint end)
{
  static const char *const everything[] = { "everything", "alles", "tout", "tout est", "todo", "todo es", "both" };

  for (guint i = first; i < end && i < first + ALL_WINDOW; i++)
    if (em_item_says (r->items, i, EM_SAYS_ALL) != NULL || em_item_is_all (r->items, i) || em_item_is_any_word_of (r->items, i, everything, G_N_ELEMENTS (everything)) ||
        g_ascii_strncasecmp (r->items->text + em_item (r->items, i)->start, "all ", 4) == 0 /* in words of one phrase */)
      return TRUE;
  return FALSE;
}

static void
give_access (EmReader *r, EmProto *proto, guint first, guint end)
{
  /* Used up by the one before it. */
  for (guint i = first; i < end; i++)
    if (em_item_says (r->items, i, EM_SAYS_ACCESS) != NULL)
      em_item (r->items, i)->is_used = FALSE;
  em_reader_take_aside (r, proto, first, end, FALSE);
}

/* "Hard to reach." of the repair that is named, or the last; "all easy to get at" of each. */
static void
take_access (EmReader *r, EmProto *before, guint first, guint end)
{
  const GPtrArray *protos = r->grammar->protos;

  for (guint i = 0; i < protos->len && i < ALL_MAX && says_all (r, first, end); i++)
    if (g_ptr_array_index (protos, i) != before)
      give_access (r, g_ptr_array_index (protos, i), first, end);
  give_access (r, says_all (r, first, end) ? before : em_refer_named (r, before, first, end), first, end);
}

/* "QTY 2" in a line of its own behind the only repair. */
static gboolean
is_only_quantity (const EmReader *r, guint first, guint end)
{
  if (!r->is_line_start || first != r->first || end != r->end || r->grammar->protos->len != 1 || em_item_says (r->items, first, EM_SAYS_QUANTITY) == NULL)
    return FALSE;
  for (guint i = first + 1; i < end; i++)
    if (em_item (r->items, i)->type == EM_ITEM_SIZE)
      return (em_item_size (r->items, i)->roles & EM_ROLE_COUNT) != 0 && (i + 1 == end || em_item_says (r->items, i + 1, EM_SAYS_PLACES) != NULL);
    else if (!em_item_is_sign (r->items, i, ':') && !em_item_is_sign (r->items, i, '='))
      return FALSE;
  return FALSE;
}

/* "both", "each", "all" right before the size. */
static gboolean
is_of_both (const EmReader *r, guint size)
{
  static const char *const words[] = { "both", "each", "all", "beide", "je", "jeweils", "les deux", "chacune", "chacun", "ambas", "ambos", "cada una", "cada uno" };

  for (guint k = size; k-- > r->first && k + BOTH_WINDOW >= size && !em_item_is_soft_break (r->items, k);)
    if (em_item_is_any_word_of (r->items, k, words, G_N_ELEMENTS (words)))
      return TRUE;
  return FALSE;
}

/* "face A .004 low, face B .006 low": two of one name. */
static gboolean
are_alike (const EmReader *r, const EmProto *proto, const EmProto *before)
{
  return proto->noun != EM_NO_ITEM && before->noun != EM_NO_ITEM && proto->noun > before->noun && before->sizes->len > 0 && proto->sizes->len > before->sizes->len &&
         em_item (r->items, proto->noun)->phrase == em_item (r->items, before->noun)->phrase;
}

/* "one 14 mm and the other 6 mm, both 0.05 deep": as deep is the one before. */
void
em_said_share_both (const EmReader *r, const EmProto *proto, EmProto *before)
{
  const guint32 told = em_once_roles | EM_ROLE_GAP | EM_ROLE_DIAMETER | EM_ROLE_RADIUS | EM_ROLE_FINISHED | EM_ROLE_BUILD | EM_ROLE_ADD;
  const guint32 roles_before = before != NULL ? before->roles : 0;
  guint32 chain = 0;

  if (before == NULL || before == proto || before->last < r->first || !((proto->is_one_of && before->is_one_of) || are_alike (r, proto, before)))
    return;
  for (guint i = 0; i < proto->sizes->len && i < SHARED_MAX; i++)
    {
      guint item = g_array_index (proto->sizes, guint, i);
      EmSize *size = em_item_size (r->items, item);
      gboolean is_shared = is_of_both (r, item) || (size->chain != 0 && size->chain == chain);

      if (!is_shared || (size->chain == 0 && (size->roles & told) == 0) || (size->roles & roles_before & told) != 0)
        continue;
      chain = size->chain;
      size->reason = size->reason == NULL ? "from-words" : size->reason;
      g_array_append_val (before->sizes, item);
      before->roles |= size->roles;
    }
}

/* What only says more of the repair before it, without a size: how many, where, "the same". TRUE: taken. */
gboolean
em_said_take (EmReader *r, const EmContent *content, EmProto *before, gboolean is_repair, guint first, guint end)
{
  guint number;
  EmProto *named;

  if (content->n_sizes > 0 && !is_repair && em_report_take (r, before, first, end))
    return TRUE;
  if (is_only_fill (r, content, before, first, end))
    {
      em_reader_add_items (r, before, first, end);
      return TRUE;
    }
  /* "restricted access on item 2" */
  if (content->has_access && !is_repair && before != NULL && em_refer_items (r, first, &named, 1) == 1)
    {
      em_reader_take_aside (r, named, first, end, FALSE);
      return TRUE;
    }
  if (is_only_side (r, content, before, first, end))
    {
      em_reader_take_aside (r, before, first, end, FALSE);
      for (guint i = first; i < end; i++)
        em_item (r->items, i)->is_used |= em_reader_is_noun (r, i);
      return TRUE;
    }
  if (is_only_access (r, content, before, is_repair, first))
    {
      take_access (r, before, first, end);
      return TRUE;
    }
  if (content->n_sizes == 0 && before != NULL && is_only_quantity (r, first, end))
    {
      em_reader_take_aside (r, before, first, end, FALSE);
      em_item (r->items, first)->is_used = TRUE;
      return TRUE;
    }
  if (content->n_sizes == 0 && before != NULL && is_only_count (r, first, end, &number))
    {
      gboolean is_counted = before->count_item != EM_NO_ITEM;

      /* "Two slides." */
      em_reader_take_aside (r, before, first, end, TRUE);
      if (!is_counted && em_item_says (r->items, number + 1, EM_SAYS_KIND) == NULL && em_item_says (r->items, number + 1, EM_SAYS_PLACE) != NULL)
        em_parts_spread (r, before);
      em_item (r->items, number + 1)->is_used = TRUE;
      return TRUE;
    }
  /* "a polished area 3 mm from the nick": the one told before. */
  if (is_repair && content->n_sizes == 0 && r->has_loose && !content->has_verb && !content->has_damage && !r->is_bullet &&
      names_current (r, first, end))
    {
      em_reader_take_aside (r, before, first, end, FALSE);
      return TRUE;
    }
  /* "Same on the opposite corner." */
  if (!is_repair && content->has_noun && content->has_same && content->n_sizes == 0 && before != NULL && before->sizes->len > 0 && !r->is_bullet &&
      is_same_elsewhere (r, first, end))
    return take_same (r, before, is_repair, first, end);
  if (!is_repair && content->has_noun && content->n_sizes == 0 && before != NULL &&
      em_reader_line_of (r, first) == em_reader_line_of (r, before->last))
    {
      /* ", corner of slide": says where the repair before it is. */
      for (guint i = first; i < end; i++)
        em_item (r->items, i)->is_used |= em_reader_is_noun (r, i) || em_item_says (r->items, i, EM_SAYS_PLACE) != NULL;
      em_reader_take_aside (r, before, first, end, FALSE);
      return TRUE;
    }
  return content->has_same && content->n_sizes == 0 && before != NULL && !r->is_bullet && take_same (r, before, is_repair, first, end);
}
