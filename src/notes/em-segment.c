/* em-segment: where one repair of a sentence ends and the next begins.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-fit.h"
#include "em-list.h"
#include "em-proto.h"

#include <stdlib.h>
#include <string.h>

enum { WEAK_NOUN = 2 /* and of this weight is a repair's if no other is */,
      HEAD_NOUN = 3, /* a noun of this weight may begin another repair */
      ON_WINDOW = 6, /* items from "0.3 on" to what that is wanted on */
      ONES_WINDOW = 3, /* items from a number to "ones" */
      PART_WINDOW = 16 /* items of a part behind "and" */ };

static int
noun_weight (const EmReader *r, guint i)
{
  const EmSense *noun = em_item_says (r->items, i, EM_SAYS_KIND);
  int best = 0;

  for (int k = 0; k < EM_N_NOTE_KINDS; k++)
    best = MAX (best, noun->weight[k]);
  return best;
}

/* "2 are .03 dia x .015" */
static gboolean
is_counted_are (const EmReader *r, guint i)
{
  return (em_item_size (r->items, i)->roles & EM_ROLE_COUNT) != 0 && em_item_is_word (r->items, i + 1, "are");
}

/* "the worst one 4.09": not one more of them. */
static gboolean
is_superlative (const EmReader *r, guint i)
{
  static const char *const words[] = { "worst", "biggest", "largest", "deepest", "smallest", "longest" };

  return em_item_is_any_word_of (r->items, i, words, G_N_ELEMENTS (words));
}

static gboolean
is_of_them (const EmReader *r, guint i)
{
  return em_item_says (r->items, i, EM_SAYS_PLACES) != NULL &&
         g_ascii_strncasecmp (r->items->text + em_item (r->items, i)->start, "of t", 4) == 0;
}

/* "and another one 15 mm, depth 0.1" */
static gboolean
is_another (const EmReader *r, guint i)
{
  return em_item_says (r->items, i, EM_SAYS_SAME) != NULL &&
         g_ascii_strncasecmp (r->items->text + em_item (r->items, i)->start, "another", 7) == 0;
}

/* "#1 is .06 long", "no. 2 3 mm long" */
static gboolean
is_numbered (const EmReader *r, guint i)
{
  const EmSense *glue = i < r->end ? em_item_says (r->items, i, EM_SAYS_GLUE) : NULL;
  guint number = i + 1;

  if (i >= r->end || !(em_item_is_sign (r->items, i, '#') || (glue != NULL && g_strcmp0 (glue->value, "number") == 0)))
    return FALSE;
  number += number < r->end && em_item_is_sign (r->items, number, '.');
  return number < r->end && em_list_is_bare_whole (r->items, number);
}

/* "and 2 more of 2 x 1 x 1" */
static gboolean
is_so_many_more (const EmReader *r, guint i)
{
  gboolean is_count = em_item (r->items, i)->type == EM_ITEM_SIZE && (em_item_size (r->items, i)->roles & EM_ROLE_COUNT) != 0;

  return i + 1 < r->end && em_item_is_word (r->items, i + 1, "more") && (is_count || em_item_says (r->items, i, EM_SAYS_NUMBER) != NULL);
}

/* "ones", or a phrase that ends so; "more". */
static gboolean
names_ones (const EmReader *r, guint i)
{
  static const char *const words[] = { "more", "others", "smaller", "weitere", "kleinere", "andere", "más", "otros", "otras", "autres" };
  const EmItem *item = em_item (r->items, i);
  guint32 n = (guint32) strlen ("ones");

  return em_item_is_any_word_of (r->items, i, words, G_N_ELEMENTS (words)) ||
         (item->length >= n && g_ascii_strncasecmp (r->items->text + item->start + item->length - n, "ones", n) == 0);
}

/* "three short ones, 8 long and 0.5 deep", "there are two more, 2 x 1 x 1": so many of the kind told before, with sizes of their own. */
static gboolean
is_so_many_ones (const EmReader *r, guint i)
{
  const EmSense *number = em_item_says (r->items, i, EM_SAYS_NUMBER);
  gboolean is_count = em_item (r->items, i)->type == EM_ITEM_SIZE && (em_item_size (r->items, i)->roles & EM_ROLE_COUNT) != 0;
  guint ones = i + 1;

  if (!is_count && (number == NULL || strchr (number->value, '/') != NULL || strtol (number->value, NULL, 10) < 2))
    return FALSE;
  while (ones < r->end && ones <= i + ONES_WINDOW && !names_ones (r, ones))
    if (em_item_is_soft_break (r->items, ones) || em_reader_is_noun (r, ones) || em_item (r->items, ones++)->type == EM_ITEM_SIZE)
      return FALSE;
  if (ones >= r->end || ones > i + ONES_WINDOW)
    return FALSE;
  for (guint k = ones + 1; k < r->end && k <= ones + 2 * ONES_WINDOW; k++)
    if (em_reader_is_noun (r, k) || em_item_says (r->items, k, EM_SAYS_SOUND) != NULL || em_item_says (r->items, k, EM_SAYS_REFUSE) != NULL)
      return FALSE;
    else if (em_reader_is_sized (r, k))
      return TRUE;
  return FALSE;
}

/* "a second one beside it, 1.2 mm long", "the other on the left: 4 x 1": from the comma or colon at i sizes follow. */
static gboolean
is_break_before_sizes (const EmReader *r, guint one, guint i)
{
  for (guint k = one + 1; k < i; k++)
    if (em_item_says (r->items, k, EM_SAYS_GLUE) == NULL && em_item_says (r->items, k, EM_SAYS_NEAR) == NULL &&
        em_item_says (r->items, k, EM_SAYS_PREPOSITION) == NULL && em_item_says (r->items, k, EM_SAYS_PLACE) == NULL &&
        em_item_says (r->items, k, EM_SAYS_NUMBER) == NULL)
      return FALSE;
  return i > one && i + 1 < r->end && em_item_says (r->items, one, EM_SAYS_ONE_OF) != NULL && em_reader_is_sized (r, i + 1);
}

/* "un taraudage à 5 mm": how far it lies. */
static gboolean
is_thing_at (const EmReader *r, guint k)
{
  static const char *const at[] = { "at", "à", "a", "in" };

  return em_item_says (r->items, k, EM_SAYS_THING) != NULL && k + 2 < r->end && em_item_is_any_word_of (r->items, k + 1, at, G_N_ELEMENTS (at)) && em_reader_is_sized (r, k + 2);
}

/* "one 3 x 1 x 1, the other 2 x 1 x 1", "3 @ .1 LG, 2 @ .2 LG": what one of several named before measures. */
gboolean
em_reader_begins_one_of (const EmReader *r, guint i)
{
  const EmSense *number;

  /* "einmal 3 x 1 x 1" begins with a little word that is one of several, too. */
  for (; i < r->end && ((em_item_says (r->items, i, EM_SAYS_GLUE) != NULL && em_item_says (r->items, i, EM_SAYS_ONE_OF) == NULL) || em_item_is_soft_break (r->items, i)); i++)
    if (is_superlative (r, i))
      return FALSE;
  if (i + 1 >= r->end)
    return FALSE;
  number = em_item_says (r->items, i, EM_SAYS_NUMBER);
  if (em_item (r->items, i)->type == EM_ITEM_SIZE && (em_item_is_sign (r->items, i + 1, '@') || is_counted_are (r, i)))
    return TRUE;
  /* "Two of them are 1 x 0.3 x 0.3" */
  if (number != NULL && strchr (number->value, '/') == NULL && is_of_them (r, i + 1))
    return i + 2 >= r->end || !em_item_is_soft_break (r->items, i + 2); /* ", six of them, now 5.1" only counts */
  if (is_so_many_ones (r, i))
    return TRUE;
  /* "the first 9 mm" is a length. */
  if (em_item_says (r->items, i, EM_SAYS_LABEL) != NULL && em_item_is_measure (r->items, i + 1) &&
      em_item_size (r->items, i + 1)->chain == 0)
    return FALSE;
  if (em_item_says (r->items, i, EM_SAYS_ONE_OF) == NULL && !is_another (r, i) && !is_numbered (r, i) && !is_so_many_more (r, i) &&
      (number == NULL || strtol (number->value, NULL, 10) != 1 || strchr (number->value, '/') != NULL))
    return FALSE;
  for (guint k = i + 1 + is_numbered (r, i); k < r->end && k <= i + 4; k++)
    if (em_item_is_soft_break (r->items, k))
      return is_break_before_sizes (r, i, k);
    else if (em_reader_is_noun (r, k) || is_thing_at (r, k))
      return FALSE;
    else if (em_reader_is_sized (r, k))
      return TRUE;
  return FALSE;
}

/* The sizes of one part between commas. */
typedef struct
{
  guint    n;
  guint32  roles;
  gboolean has_noun, has_row, has_count;
} Group;

static const guint32 group_roles = EM_ROLE_LENGTH | EM_ROLE_WIDTH | EM_ROLE_HEIGHT | EM_ROLE_DEPTH | EM_ROLE_THICKNESS |
                                   EM_ROLE_DIAMETER |
                                   EM_ROLE_RADIUS | EM_ROLE_LEG;

/* "1X" */
static gboolean
is_times_count (const EmReader *r, guint i)
{
  return i + 1 < r->end && em_item (r->items, i)->type == EM_ITEM_SIZE &&
         (em_item_size (r->items, i)->roles & EM_ROLE_COUNT) != 0 &&
         em_item_says (r->items, i + 1, EM_SAYS_TIMES) != NULL;
}

static void
add_to_group (const EmReader *r, Group *group, guint i)
{
  group->has_count |= is_times_count (r, i);
  group->has_noun |= em_reader_is_noun (r, i);
  if (!em_reader_is_sized (r, i))
    return;
  group->n++;
  group->roles |= em_item_size (r->items, i)->roles & group_roles;
  group->has_row |= em_item_size (r->items, i)->chain != 0;
}

/* "R.02 X 1.5 LG, R.03 X 2.0 LG", "3 x 1 x 1, 2 x 1 x 1": the part after the comma at soft measures the same once more. */
static gboolean
repeats (const EmReader *r, const Group *before, guint soft)
{
  Group after = { 0 };

  /* "2X ⌀.5 THRU, 1X ⌀.25 X .4" */
  if (before->n > 0 && before->has_count && is_times_count (r, soft + 1))
    return TRUE;
  if (before->n < 2 || !before->has_row)
    return FALSE;
  for (guint i = soft + 1; i < r->end && !em_item_is_soft_break (r->items, i); i++)
    add_to_group (r, &after, i);
  /* "10 x 3 x 0.2 deep, 6 x 3 x 0.2": what is named once goes for the rows behind. */
  return after.n == before->n && after.has_row && !after.has_noun &&
         (after.n >= 3 ? (after.roles & ~before->roles) == 0 : after.roles == before->roles && after.roles != 0);
}

/* "0.5 on the slide face (45 x 30) and 0.3 on the gib face (45 x 8)": behind the row of one how much is wanted on another, which has one, too. */
static gboolean
begins_on_other (const EmReader *r, guint i)
{
  guint noun = i + 2;

  if (i + 4 >= r->end || !em_reader_is_sized (r, i) || em_item_size (r->items, i)->chain != 0 ||
      (em_item_size (r->items, i)->roles & group_roles) != 0 || em_item_says (r->items, i + 1, EM_SAYS_PREPOSITION) == NULL)
    return FALSE;
  while (noun < r->end && noun < i + ON_WINDOW && em_item_says (r->items, noun, EM_SAYS_KIND) == NULL && !em_item_is_soft_break (r->items, noun))
    noun++;
  if (noun + 1 >= r->end || em_item_says (r->items, noun, EM_SAYS_KIND) == NULL)
    return FALSE;
  for (guint k = noun + 1; k < r->end && k <= noun + 2; k++)
    if (em_reader_is_sized (r, k) && em_item_size (r->items, k)->chain != 0)
      return TRUE;
  return FALSE;
}

/* "… and on the core pin dia 8 we need 0.05 per side", "et il manque 0,1 sur la face 30 x 12": behind the sizes of one, what is to be added to another
 * whose noun stands behind a preposition, and how large that is. i: behind the "and". */
static gboolean
begins_told_on (const EmReader *r, guint i)
{
  guint n = 0, n_row = 0;
  guint32 roles = 0;
  gboolean has_noun = FALSE;

  if (i < r->first + 2 || em_item_says (r->items, i - 1, EM_SAYS_GLUE) == NULL)
    return FALSE;
  for (guint k = i; k < r->end && k < i + PART_WINDOW && !em_item_is_soft_break (r->items, k); k++)
    if (em_reader_is_sized (r, k))
      {
        n++;
        n_row += em_item_size (r->items, k)->chain != 0;
        roles |= em_item_size (r->items, k)->roles;
      }
    else if (em_item_says (r->items, k, EM_SAYS_KIND) != NULL && noun_weight (r, k) >= HEAD_NOUN)
      {
        if (!em_reader_is_demoted (r, k))
          return FALSE;
        has_noun = TRUE;
      }
  return has_noun && n >= 2 && (roles & (EM_ROLE_BUILD | EM_ROLE_PER_SIDE | EM_ROLE_ON_DIAMETER)) != 0 &&
         (n_row == 2 || (roles & EM_ROLE_DIAMETER) != 0);
}

/* "… and the .375 core pin hole": the one size between "and" and the noun is the noun's, when others stand before. */
static gboolean
is_size_of_noun (const EmReader *r, guint soft, const Group *group, guint size, guint noun)
{
  return em_item_says (r->items, soft, EM_SAYS_GLUE) != NULL && group->n == 1 && size > soft && size + 2 >= noun &&
         soft > r->first && em_reader_is_sized (r, soft - 1) &&
         !em_item_is_sign (r->items, noun - 1, '(') /* "14.6 and should be 15.0 (face 20 x 20)" */;
}

/* Behind a comma, or behind no more than "redo the". */
static gboolean
is_first_of_part (const EmReader *r, guint i)
{
  for (guint k = i; k-- > r->first && k + 3 >= i;)
    if (em_item_is_soft_break (r->items, k))
      return TRUE;
    else if (em_item_says (r->items, k, EM_SAYS_GLUE) == NULL && em_item_says (r->items, k, EM_SAYS_VERB) == NULL)
      return FALSE;
  return FALSE;
}

/* "rib 2 wide, 26 long, top 0.5": the face of a rib that has one bare size is its crest, and no other repair. */
static gboolean
is_top_of_rib (const EmReader *r, guint head, guint noun)
{
  const EmSense *rib = head != EM_NO_ITEM ? em_item_says (r->items, head, EM_SAYS_KIND)
                       : NULL, *face = em_item_says (r->items, noun, EM_SAYS_KIND);
  guint n = 0;

  if (rib == NULL || rib->weight[RIB] < HEAD_NOUN || (face->weight[FACE] == 0 && noun_weight (r, noun) > HEAD_NOUN) ||
      !is_first_of_part (r, noun))
    return FALSE;
  for (guint i = noun + 1; i < r->end && !em_item_is_soft_break (r->items, i); i++)
    if (em_reader_is_sized (r, i) && (em_item_size (r->items, i)->chain != 0 ||
                                      (em_item_size (r->items, i)->roles & group_roles) != 0))
      return FALSE;
    else
      n += em_reader_is_sized (r, i);
  return n == 1;
}

/* "ribs 1 thick, tops rounded, 30 long": how the thing is, with neither a noun nor a size nor a radius of its own. */
static gboolean
is_only_state (const EmReader *r, guint noun, guint soft, const Group *group)
{
  guint i = noun + 1;

  if (g_strcmp0 (em_item_says (r->items, noun, EM_SAYS_KIND)->value, "state") != 0 || group->n > 0 || group->has_noun)
    return FALSE;
  while (i < r->end && i <= noun + 2 && !em_item_is_soft_break (r->items, i))
    i++;
  if (i + 1 >= r->end || !em_item_is_sign (r->items, i, ',') || noun > soft + 3)
    return FALSE;
  /* "cone ⌀16, 3 deep, washed out, build 0.4" */
  if (i + 2 < r->end && em_reader_is_verb (r, i + 1) && em_reader_is_sized (r, i + 2))
    return (em_item_size (r->items, i + 2)->roles & EM_ROLE_ADD) != 0;
  return em_reader_is_sized (r, i + 1) && (em_item_size (r->items, i + 1)->roles & EM_ROLE_RADIUS) == 0 &&
         (em_item_size (r->items, i + 1)->roles & group_roles) != 0;
}

/* "land .03 wide, mashed .012": what a face or wall has lost, in a part of its own. */
static gboolean
is_loss_of_head (const EmReader *r, guint head, guint noun)
{
  const EmSense *thing = head != EM_NO_ITEM ? em_item_says (r->items, head, EM_SAYS_KIND) : NULL;
  guint size = noun + 1;

  if (thing == NULL || thing->weight[FACE] + thing->weight[SIDEWALL] == 0 || !em_item_is_soft_break (r->items, noun - 1) ||
      g_strcmp0 (em_item_says (r->items, noun, EM_SAYS_KIND)->value, "damage") != 0)
    return FALSE;
  /* "dented, 0.2 mm" */
  size += size < r->end && em_item_is_sign (r->items, size, ',');
  return size < r->end && em_reader_is_sized (r, size) && em_item_size (r->items, size)->chain == 0 &&
         (em_item_size (r->items, size)->roles & group_roles) == 0 &&
         (size + 1 >= r->end || em_item_is_soft_break (r->items, size + 1) || em_item_is_sign (r->items, size + 1, '.'));
}

/* "wall low: 12 mil per side, wall 1.4 long": the same noun once more, with the sizes that it lacks. */
static gboolean
is_named_again (const EmReader *r, guint head, guint noun, guint32 seen)
{
  return head != EM_NO_ITEM && em_item (r->items, head)->phrase == em_item (r->items, noun)->phrase &&
         (seen & (group_roles | EM_ROLE_SLOT)) == 0 && em_item_is_soft_break (r->items, noun - 1) && noun + 1 < r->end &&
         em_reader_is_sized (r, noun + 1) && (em_item_size (r->items, noun + 1)->roles & group_roles) != 0;
}

/* "shut-off worn 0.05, area 25 x 8": how large what was told before is, and no other repair. */
static gboolean
is_area_of (const EmReader *r, guint i, guint last_size, gboolean has_noun)
{
  return has_noun && em_item_is_word (r->items, i, "area") && last_size != EM_NO_ITEM && em_reader_is_sized (r, last_size) &&
         em_item_size (r->items, last_size)->chain == 0 && em_item_is_soft_break (r->items, i - 1) && i + 1 < r->end &&
         em_reader_is_sized (r, i + 1) &&
         em_item_size (r->items, i + 1)->chain != 0;
}

/* "pin worn .003, .375 long, (6) pins, H13": how many of the thing before, and no more in that part. */
static gboolean
counts_head (const EmReader *r, guint head, guint noun, guint soft)
{
  guint number = soft + 1;

  if (head == EM_NO_ITEM || soft == EM_NO_ITEM || memcmp (em_item_says (r->items, head, EM_SAYS_KIND)->weight,
                                                          em_item_says (r->items, noun, EM_SAYS_KIND)->weight,
                                                          sizeof em_item_says (r->items, head, EM_SAYS_KIND)->weight) != 0)
    return FALSE;
  number += em_item_is_sign (r->items, number, '(') || em_item_says (r->items, number, EM_SAYS_QUANTITY) != NULL || em_item_is_word (r->items, number, "ce sont") /* ", son 3 rayas" */;
  if (number >= noun || noun > number + 2 ||
      !(em_item_says (r->items, number, EM_SAYS_NUMBER) != NULL ||
        (em_item (r->items, number)->type == EM_ITEM_SIZE && (em_item_size (r->items, number)->roles & EM_ROLE_COUNT) != 0)))
    return FALSE;
  return noun + 1 >= r->end || em_item_is_soft_break (r->items, noun + 1) || em_item_is_sign (r->items, noun + 1, '.');
}

/* "lip mashed over 40, rounded to 0.8": the state is the label of the edge's radius. */
static gboolean
is_radius_of_head (const EmReader *r, guint head, guint noun, guint32 seen)
{
  const EmSense *label = em_item_says (r->items, noun, EM_SAYS_LABEL);

  return head != EM_NO_ITEM && label != NULL && (label->roles & EM_ROLE_RADIUS) != 0 && (seen & EM_ROLE_RADIUS) == 0 &&
         em_item_says (r->items, head, EM_SAYS_KIND)->weight[WORN_CORNER] > 0;
}

/* "blade crushed: 90 long, blade of 0.7, raise 0.8": how thick the rib of before is. */
static gboolean
is_thickness_of_head (const EmReader *r, guint head, guint noun)
{
  const EmSense *thing = head != EM_NO_ITEM ? em_item_says (r->items, head, EM_SAYS_KIND) : NULL;
  guint size = noun + 1;

  if (thing == NULL || thing->weight[RIB] == 0 || !em_item_is_soft_break (r->items, noun - 1) ||
      memcmp (thing->weight, em_item_says (r->items, noun, EM_SAYS_KIND)->weight, sizeof thing->weight) != 0)
    return FALSE;
  size += size < r->end && em_item_says (r->items, size, EM_SAYS_PREPOSITION) != NULL;
  return size < r->end && em_reader_is_sized (r, size) && em_item_size (r->items, size)->chain == 0 &&
         (em_item_size (r->items, size)->roles & group_roles) == 0 && (size + 1 >= r->end || em_item_is_soft_break (r->items, size + 1));
}

/* What of a repair was told before an item of it. */
typedef struct
{
  guint    soft;       /* the comma before, or EM_NO_ITEM */
  guint    last_size;
  guint    head;       /* its first noun */
  guint32  seen;       /* roles of its sizes; a row has all */
  gboolean has_noun;
} Told;

/* The noun says more of the repair that it stands in. */
static gboolean
is_more_of_head (const EmReader *r, guint noun, const Told *told, const Group *group)
{
  return is_top_of_rib (r, told->head, noun) || is_area_of (r, noun, told->last_size, told->has_noun) ||
         is_named_again (r, told->head, noun, told->seen) || counts_head (r, told->head, noun, told->soft) || is_loss_of_head (r, told->head, noun) ||
         is_thickness_of_head (r, told->head, noun) || is_radius_of_head (r, told->head, noun, told->seen) ||
         (told->soft != EM_NO_ITEM && told->has_noun && is_only_state (r, noun, told->soft, group));
}

/* A slot, a pocket, a groove that was cut. */
static gboolean
is_space (const EmSense *noun)
{
  return noun->weight[RECESS] > 0 || em_fit_is_slot (noun);
}

/* Where the repair that begins at start ends: at the comma before a new noun, once sizes were given, or before the next of
 * several that were named together. */
guint
em_reader_end_of_segment (const EmReader *r, guint start, gboolean *out_is_before_one_of)
{
  /* What is one of several has the noun of the first. */
  Told told = { EM_NO_ITEM, EM_NO_ITEM, EM_NO_ITEM, 0, r->is_one_of && start > r->first };
  gboolean has_verb = FALSE;
  Group group = { 0 };

  *out_is_before_one_of = TRUE;
  for (guint i = start; i < r->end; i++)
    {
      if (em_item_is_soft_break (r->items, i))
        {
          if (i > start && (em_reader_begins_one_of (r, i + 1) || repeats (r, &group, i)))
            return i + 1;
          if (i > start && told.last_size != EM_NO_ITEM &&
              ((em_item_size (r->items, told.last_size)->chain != 0 && begins_on_other (r, i + 1)) ||
               (told.has_noun && begins_told_on (r, i + 1))))
            {
              *out_is_before_one_of = FALSE;
              return i + 1;
            }
          told.soft = i;
          has_verb = FALSE;
          memset (&group, 0, sizeof group);
        }
      else if (i > start && em_item_is_sign (r->items, i, ':') && em_reader_begins_one_of (r, i + 1))
        return i + 1;
      /* "slot 6 wide, 22 deep: wall worn 0.2" */
      else if (i > start && em_item_is_sign (r->items, i, ':') && told.last_size != EM_NO_ITEM && told.head != EM_NO_ITEM &&
               is_space (em_item_says (r->items, told.head, EM_SAYS_KIND)))
        told.soft = i;
      else if (em_reader_is_sized (r, i))
        {
          told.last_size = i;
          told.seen |= em_item_size (r->items, i)->roles | (em_item_size (r->items, i)->chain != 0 ? group_roles : 0);
        }
      else if (em_reader_is_verb (r, i))
        has_verb = TRUE;
      else if (em_reader_is_noun (r, i) && noun_weight (r, i) >= HEAD_NOUN && (has_verb || !em_reader_is_demoted (r, i)))
        {
          if (is_more_of_head (r, i, &told, &group))
            continue;
          if (told.has_noun && told.soft != EM_NO_ITEM && told.last_size != EM_NO_ITEM &&
              (told.soft > told.last_size || is_size_of_noun (r, told.soft, &group, told.last_size, i)))
            {
              *out_is_before_one_of = FALSE;
              return told.soft + 1;
            }
          told.head = told.has_noun ? told.head : i;
          told.has_noun = TRUE;
        }
      else if (em_reader_is_noun (r, i) && noun_weight (r, i) >= WEAK_NOUN && !em_reader_is_demoted (r, i))
        told.has_noun = TRUE;
      add_to_group (r, &group, i);
    }
  *out_is_before_one_of = FALSE;
  return r->end;
}
