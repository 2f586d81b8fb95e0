/* em-content: what a stretch of a sentence holds, and whether that begins a repair.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-content.h"

#include "em-counts.h"
#include "em-remark.h"

#include <string.h>

enum
{
  WEAK_HEAD = 4,     /* "area", "edge": may be the place of something else */
  STATE_SIZES = 8,   /* of a repair looked over for one in a row */
  STRONG_NOUN = 7    /* a noun of this weight is a repair by itself */
};

/* "broken": a set phrase that speaks for a kind. */
static gboolean
is_damage (const EmReader *r, guint i)
{
  const EmSense *set = em_item_says (r->items, i, EM_SAYS_SET);

  for (int k = 0; set != NULL && set->set_field == NULL && k < EM_N_NOTE_KINDS; k++)
    if (set->weight[k] > 0)
      return TRUE;
  return FALSE;
}

/* "Pocket insert": the noun says which part. */
static gboolean
names_part (const EmReader *r, guint i, guint end)
{
  return i + 1 < end && em_item_says (r->items, i + 1, EM_SAYS_PLACE) != NULL &&
         em_item_says (r->items, i + 1, EM_SAYS_KIND) == NULL;
}

/* "no cracks", "without pits": none of them is there. */
static gboolean
is_none (const EmReader *r, guint i, guint first)
{
  static const char *const none[] = { "no", "any", "without", "keine", "ohne", "sin", "ningún" };

  return i > first && em_item_is_any_word_of (r->items, i - 1, none, G_N_ELEMENTS (none));
}

static void
weigh_noun (const EmReader *r, EmContent *content, const EmSense *noun, guint i, guint end)
{
  content->is_slip = (content->is_slip || !content->has_noun) && (em_item (r->items, i)->flags & EM_TOKEN_SLIP) != 0;
  content->has_noun = TRUE;
  for (int k = 0; k < EM_N_NOTE_KINDS && !em_reader_is_demoted (r, i) && !names_part (r, i, end); k++)
    {
      content->best = MAX (content->best, noun->weight[k]);
      content->best_named = MAX (content->best_named, noun->value != NULL ? 0 : noun->weight[k]);
      content->best_thing = MAX (content->best_thing, g_strcmp0 (noun->value, "state") == 0 ? 0 : noun->weight[k]);
    }
}

/* A choice told in a word: "wrapped", "square ends". "Four holes are oval" says no more than what is wrong with them. */
static gboolean
is_choice (const EmReader *r, guint i)
{
  const EmSense *set = em_item_says (r->items, i, EM_SAYS_SET);

  return set != NULL && !is_damage (r, i) && g_strcmp0 (set->set_value, "ellipsoid") != 0;
}

/* "nick same edge": where the nick told before the word is, and not what it is. */
static gboolean
is_same_place (const EmReader *r, const EmContent *content, guint i, guint end)
{
  if (i + 1 >= end || !em_item_is_word (r->items, i, "same") ||
      (em_item_says (r->items, i + 1, EM_SAYS_KIND) == NULL && em_item_says (r->items, i + 1, EM_SAYS_PLACE) == NULL))
    return FALSE;
  /* "same pocket, floor low .008" */
  return content->best_named >= STRONG_NOUN || (i + 3 < r->end && em_item_is_sign (r->items, i + 2, ',') && em_item_says (r->items, i + 3, EM_SAYS_KIND) != NULL &&
                                                em_item_says (r->items, i + 3, EM_SAYS_KIND)->value == NULL);
}

/* "Last time the bore cracked", "it has been welded before": of another time. */
static gboolean
is_of_before (const EmReader *r, guint first, guint end)
{
  for (guint i = first; i < end; i++)
    if (em_remark_has_noise (r->items, i, "aside"))
      return TRUE;
  return FALSE;
}

/* "H13, same as ever", "Stahl wie gehabt": the metal is the same. */
static gboolean
is_of_metal (const EmReader *r, guint first, guint end)
{
  gboolean has_metal = FALSE;

  for (guint i = first; i < end; i++)
    {
      if (em_reader_is_noun (r, i) || em_item_says (r->items, i, EM_SAYS_PLACE) != NULL)
        return FALSE;
      has_metal |= em_item_says (r->items, i, EM_SAYS_BASE) != NULL || em_item_says (r->items, i, EM_SAYS_MATERIAL) != NULL;
    }
  return has_metal;
}

EmContent
em_content_weigh (const EmReader *r, guint first, guint end)
{
  EmContent content = { 0 };

  for (guint i = first; i < end; i++)
    {
      const EmSense *noun = em_reader_is_noun (r, i) ? em_item_says (r->items, i, EM_SAYS_KIND) : NULL;
      const EmSense *label = em_item_says (r->items, i, EM_SAYS_LABEL);

      if (noun != NULL && !is_none (r, i, first)) /* "NO CRACKS OR POROSITY ALLOWED" */
        weigh_noun (r, &content, noun, i, end);
      content.has_worn |= label != NULL && (label->roles & (EM_ROLE_WORN | EM_ROLE_FINISHED)) != 0 &&
        em_item_says (r->items, i, EM_SAYS_GLUE) == NULL;
      content.has_verb |= em_reader_is_verb (r, i);
      content.has_damage |= is_damage (r, i);
      content.has_hurt |= em_item_says (r->items, i, EM_SAYS_SET) != NULL &&
        em_item_says (r->items, i, EM_SAYS_SET)->set_field == NULL;
      content.has_given |= em_counts_is_both (r, i);
      content.n_other += em_item (r->items, i)->type == EM_ITEM_UNKNOWN || em_item_says (r->items, i, EM_SAYS_THING) != NULL;
      content.has_same |= em_item_says (r->items, i, EM_SAYS_SAME) != NULL && !is_same_place (r, &content, i, end);
      content.has_access |= em_item_says (r->items, i, EM_SAYS_ACCESS) != NULL;
      content.has_given |= is_choice (r, i) ||
        em_item_says (r->items, i, EM_SAYS_ACCESS) != NULL ||
                           em_item_says (r->items, i, EM_SAYS_EQUAL) != NULL ||
                             em_item_says (r->items, i, EM_SAYS_MANY) != NULL ||
                           em_item_says (r->items, i, EM_SAYS_TYPICAL) != NULL;
      if (em_item (r->items, i)->type == EM_ITEM_SIZE && (em_item_size (r->items, i)->roles & EM_ROLE_COUNT) != 0)
        content.has_given = content.has_count = TRUE;
      /* "Four of them." */
      if (em_item_says (r->items, i, EM_SAYS_NUMBER) != NULL && i + 1 < end &&
          em_item_says (r->items, i + 1, EM_SAYS_PLACES) != NULL)
        content.has_given = TRUE;
      if (em_reader_is_sized (r, i))
        {
          content.n_sizes++;
          content.n_row += em_item_size (r->items, i)->chain != 0;
          content.roles |= em_item_size (r->items, i)->roles;
          content.n_labelled += em_item_size (r->items, i)->label_item != G_MAXUINT32 ||
            (em_item_size (r->items, i)->roles & EM_ROLE_ADD) != 0;
        }
    }
  content.has_same &= content.n_sizes > 0 || !(is_of_before (r, first, end) || is_of_metal (r, first, end));
  return content;
}

/* "SHAFT 2.0 DIA, KEYWAY SIDE WORN .015 ON DIA" */
static gboolean
is_on_round (const EmContent *content, const EmProto *before)
{
  return ((content->roles & EM_ROLE_ON_DIAMETER) != 0 ||
          ((content->roles & EM_ROLE_PER_SIDE) != 0 && content->best <= WEAK_HEAD)) &&
         content->best < STRONG_NOUN && before != NULL && (before->roles & EM_ROLE_DIAMETER) != 0 &&
         (content->roles & EM_ROLE_DIAMETER) == 0;
}

/* "pin hole .375 dia, now .3795, washed out 5/8 down", "cutting edge 60° included, blunted R.010": what became of the thing before,
 * as long as no size of it is a place in a row and none is told anew. */
static gboolean
is_state_of (const EmReader *r, const EmContent *content, const EmProto *before)
{
  const EmSense *noun = before != NULL && before->noun != EM_NO_ITEM ? em_item_says (r->items, before->noun, EM_SAYS_KIND) : NULL;

  if (noun == NULL || noun->value != NULL || content->best == 0 || content->best_thing > 0 || before->sizes->len == 0 ||
      (before->roles & content->roles & (em_once_roles | EM_ROLE_RADIUS | EM_ROLE_DIAMETER)) != 0 ||
      ((content->roles & EM_ROLE_RADIUS) != 0 && noun->weight[WORN_CORNER] == 0))
    return FALSE;
  for (guint i = 0; i < before->sizes->len && i < STATE_SIZES; i++)
    {
      const EmSize *size = em_item_size (r->items, g_array_index (before->sizes, guint, i));

      if (size->chain != 0 || (size->roles == 0 && size->unit != EM_UNIT_DEGREE))
        return FALSE;
    }
  return TRUE;
}

/* "Sidewall needs 0.2. Wall length 55": the same thing once more, with sizes that were not told of it. */
static gboolean
is_named_again (const EmReader *r, const EmContent *content, const EmProto *before, guint first, guint end)
{
  const guint32 told = em_once_roles | EM_ROLE_RADIUS | EM_ROLE_DIAMETER;
  const EmSense *its = before != NULL && before->noun != EM_NO_ITEM ? em_item_says (r->items, before->noun, EM_SAYS_KIND) : NULL;
  gboolean is_same = FALSE;

  if (its == NULL || content->n_sizes == 0 || content->n_sizes != content->n_labelled || content->n_row > 0 || content->has_given ||
      (content->roles & told) == 0 || (before->roles & content->roles & told) != 0 || before->sizes->len == 0)
    return FALSE;
  for (guint i = first; i < end; i++)
    if (em_reader_is_noun (r, i))
      {
        const EmSense *noun = em_item_says (r->items, i, EM_SAYS_KIND);

        if (noun == NULL || memcmp (noun->weight, its->weight, sizeof its->weight) != 0 || is_same)
          return FALSE;
        is_same = i + 1 < end && em_item_says (r->items, i + 1, EM_SAYS_LABEL) != NULL;
      }
  return is_same;
}

/* "Repair order 4711": a bare whole number measures nothing by itself. */
static gboolean
measures (const EmReader *r, guint first, guint end)
{
  for (guint i = first; i < end; i++)
    if (em_reader_is_sized (r, i))
      {
        const EmSize *size = em_item_size (r->items, i);

        if (!size->is_whole || size->unit != EM_UNIT_NONE || size->label_item != G_MAXUINT32 || size->chain != 0)
          return TRUE;
      }
  return FALSE;
}

/* "seat SR 16, mouth 20, is hammered": what became of the thing before, without a size. */
static gboolean
is_said_damage (const EmContent *content, const EmProto *before)
{
  return content->best_named == 0 && content->n_sizes == 0 && before != NULL && before->sizes->len > 0;
}

/* "Edge chipped, 3 long. On the top it is missing 1 and down the side 0.6": how much of the nick before is gone, which has no more than its length. */
static gboolean
is_gone_of_nick (const EmReader *r, const EmContent *content, const EmProto *before, guint first, guint end)
{
  const guint32 other = EM_ROLE_LENGTH | EM_ROLE_DIAMETER | EM_ROLE_RADIUS | EM_ROLE_COUNT;

  if (before == NULL || before->weight[EDGE_NICK] == 0 || before->sizes->len != 1 || (before->roles & ~(guint32) EM_ROLE_WORN) != EM_ROLE_LENGTH || !content->has_damage ||
      content->best_named > 0 || content->n_sizes == 0 || content->n_sizes > 2 || content->n_row > 0 || (content->roles & other) != 0 || r->is_bullet ||
      em_reader_line_of (r, first) != em_reader_line_of (r, before->last))
    return FALSE;
  for (guint i = first; i < end; i++)
    if (em_item_says (r->items, i, EM_SAYS_ONE_OF) != NULL || em_item_says (r->items, i, EM_SAYS_PLACE) != NULL)
      return FALSE;
  return TRUE;
}

/* A thing that is built up by itself, and no damage: a seat, a bore or a pin, or a face or wall whose two sizes are told. */
static gboolean
is_built_thing (const EmReader *r, const EmProto *before)
{
  const EmSense *noun = before->noun != EM_NO_ITEM ? em_item_says (r->items, before->noun, EM_SAYS_KIND) : NULL;
  guint first = before->sizes->len > 0 ? g_array_index (before->sizes, guint, 0) : EM_NO_ITEM;

  if (noun == NULL || first == EM_NO_ITEM || before->has_fill)
    return FALSE;
  if (noun->weight[SEAT] > 0)
    return TRUE;
  if (noun->value != NULL || noun->weight[EDGE_NICK] + noun->weight[RECESS] + noun->weight[GROOVE] + noun->weight[WORN_CORNER] > 0)
    return FALSE;
  if (noun->weight[BORE] + noun->weight[PIN] > 0)
    return before->kinds != 0 && (before->roles & EM_ROLE_DIAMETER) != 0 &&
           (before->roles & (EM_ROLE_WORN | EM_ROLE_FINISHED | EM_ROLE_RADIUS | EM_ROLE_PER_SIDE | EM_ROLE_ON_DIAMETER)) == 0;
  /* "lip face 300 x 2, pitted, build 0.3" */
  return noun->weight[FACE] + noun->weight[SIDEWALL] > 0 && before->sizes->len == 2 && (before->roles & (EM_ROLE_RADIUS | EM_ROLE_DIAMETER)) == 0;
}

/* "spherical seat R15, mouth 12, hammered, needs 0.6 all over", "wall 30 long, 10 high. Scored, add 0.3": why so much is wanted on
 * the thing before. */
gboolean
em_content_is_why (const EmReader *r, const EmContent *content, const EmProto *before, guint first)
{
  const guint32 build = EM_ROLE_BUILD | EM_ROLE_ADD, round = EM_ROLE_PER_SIDE | EM_ROLE_ON_DIAMETER;
  const guint32 wanted = build | round | EM_ROLE_WORN | EM_ROLE_WELD;
  guint32 line = em_reader_line_of (r, first);
  /* "L 40 H 5" and below it "FEHLT 0,12": a form, where each line tells one size. */
  gboolean is_next_line = before != NULL && r->is_line_start && first == r->first && line == em_reader_line_of (r, before->last) + 1 && before->sizes->len >= 2 &&
                          (content->roles & build) != 0 && !content->has_verb;

  if (before == NULL || !(content->has_damage || content->has_noun) || content->best_named > 0 || content->n_sizes != 1 || content->n_row > 0 ||
      content->has_count || (content->roles & ~wanted) != 0 || (before->roles & (build | EM_ROLE_THICKNESS)) != 0 || r->is_bullet ||
      (line != em_reader_line_of (r, before->last) && !is_next_line))
    return FALSE;
  return ((content->roles & (build | round)) != 0 || before->weight[SEAT] > 0) && is_built_thing (r, before);
}

/* "SIZE: 1.250" below "FEATURE: LEADER PIN BORE": a form, line by line. */
static gboolean
is_form_line (const EmReader *r, guint first, guint end)
{
  return r->is_line_start && first == r->first && first + 2 < end && em_item (r->items, first)->type != EM_ITEM_SIZE &&
         em_item_is_sign (r->items, first + 1, ':') && em_reader_is_sized (r, first + 2);
}

/* "SIZE .500" in a line of its own below "BORE" */
static gboolean
is_size_line (const EmReader *r, const EmContent *content, guint first, guint end)
{
  static const char *const sizes[] = { "size", "dimension", "dim", "Größe", "Maß", "Groesse", "cote", "medida", "tamaño" };

  return r->is_line_start && first == r->first && end == r->end && content->n_sizes == 1 && end == first + 2 &&
         em_item_is_any_word_of (r->items, first, sizes, G_N_ELEMENTS (sizes));
}

/* "Missing: 0.8" in the line below "Length: 25" */
static gboolean
is_more_of_form (const EmReader *r, const EmContent *content, const EmProto *before, guint first, guint end)
{
  return before != NULL && !content->has_noun && is_form_line (r, first, end) && content->n_sizes == 1 && before->sizes->len > 0 &&
         em_reader_line_of (r, first) == em_reader_line_of (r, before->last) + 1;
}

/* "REPAIR AREAS ONLY AS MARKED": which ones, the others tell. */
static gboolean
is_any_area (const EmReader *r, const EmContent *content, guint first, guint end)
{
  if (content->n_sizes > 0 || content->has_damage || content->has_worn)
    return FALSE;
  for (guint i = first; i < end; i++)
    if (em_item_is_word (r->items, i, "areas"))
      return TRUE;
  return FALSE;
}

/* One size, and that the draft of something. */
gboolean
em_content_is_draft (const EmReader *r, const EmContent *content, guint first, guint end)
{
  if (content->n_sizes != 1 || content->roles != EM_ROLE_DRAFT)
    return FALSE;
  for (guint i = first; i < end; i++)
    if (em_reader_is_sized (r, i))
      return em_item_size (r->items, i)->unit == EM_UNIT_DEGREE;
  return FALSE;
}

/* "Check for cracks after welding.", "Last time the bore cracked.", "Could you look at the crack, too?": behind a repair, and without
 * a size, it is said aside. */
static gboolean
is_said_aside (const EmReader *r, const EmContent *content, const EmProto *before, guint first, guint end)
{
  if (before == NULL || content->n_sizes > 0 || content->has_count)
    return FALSE;
  /* "STEP MUST BE SQUARE TO FACE A" */
  for (guint i = first; i < end; i++)
    if (em_item_says (r->items, i, EM_SAYS_NOISE) != NULL && g_strcmp0 (em_item_says (r->items, i, EM_SAYS_NOISE)->value, "demand") == 0)
      return TRUE;
  if (r->is_bullet)
    return FALSE;
  if (em_item_is_sign (r->items, end - 1, '?') || (end < r->items->items->len && em_item_is_sign (r->items, end, '?')))
    return TRUE;
  return is_of_before (r, first, end);
}

/* "The crack was only noticed yesterday", "Der Riss ist beim Entformen entstanden": what came of a kind told before with its sizes. */
static gboolean
is_how_it_came (const EmReader *r, const EmContent *content, const EmProto *before, guint first, guint end)
{
  gboolean has_event = FALSE;

  if (before == NULL || before->sizes->len == 0 || content->n_sizes > 0 || content->has_count || content->has_given || r->is_bullet)
    return FALSE;
  for (guint i = first; i < end; i++)
    {
      const EmSense *noun = em_reader_is_noun (r, i) ? em_item_says (r->items, i, EM_SAYS_KIND) : NULL;
      gboolean is_other = noun != NULL && !em_reader_is_demoted (r, i);

      for (int k = 0; k < EM_N_NOTE_KINDS && is_other; k++)
        is_other = noun->weight[k] == 0 || before->weight[k] == 0;
      if (is_other)
        return FALSE;
      has_event |= em_remark_has_noise (r->items, i, "event");
    }
  return has_event;
}

/* "No weld in the 4 mm water hole", "do not weld within .06 of the parting line": what it names is no repair, whatever its sizes are. */
static gboolean
is_refused (const EmReader *r, const EmContent *content, guint first, guint end)
{
  while (first < end && em_item_says (r->items, first, EM_SAYS_REFUSE) == NULL &&
         (em_item (r->items, first)->is_talk || em_item_says (r->items, first, EM_SAYS_GLUE) != NULL))
    first++;
  return first < end && em_item_says (r->items, first, EM_SAYS_REFUSE) != NULL && !content->has_damage && !content->has_worn && content->n_row == 0 &&
         g_strcmp0 (em_item_says (r->items, first, EM_SAYS_REFUSE)->value, "denied") != 0;
}

/* ", 0.3 on the gib face (45 x 8)" behind another's three sizes: all that a repair has. */
static gboolean
is_whole_row (const EmContent *content, const EmProto *before)
{
  return before != NULL && content->n_row == 2 && content->n_sizes == 3 && content->has_noun && before->sizes->len == 3;
}

/* "Weld the 3 mm hole. It is a blind hole 5 mm deep": the same thing, with sizes that were not told of it. */
static gboolean
is_it (const EmReader *r, const EmContent *content, const EmProto *before, guint first)
{
  static const char *const it[] = { "it", "it's", "its", "it is", "it is a", "it's a", "this is", "this is a", "they are", "they're", "es ist", "das ist", "c'est", "es un", "es una" };
  const guint32 told = em_once_roles | EM_ROLE_RADIUS | EM_ROLE_DIAMETER;

  return before != NULL && first == r->first && em_item_is_any_word_of (r->items, first, it, G_N_ELEMENTS (it)) && content->n_sizes > 0 &&
         content->n_sizes == content->n_labelled && (content->roles & told) != 0 && (before->roles & content->roles & told) == 0 && !content->has_damage &&
         before->sizes->len > 0 && before->sizes->len < 3;
}

/* "spherical seat R15.5, face ⌀25, eroded": how large the mouth of the sphere is. */
static gboolean
is_mouth (const EmReader *r, const EmContent *content, const EmProto *before, guint first)
{
  return before != NULL && before->weight[SEAT] > 0 && (before->roles & (EM_ROLE_SPHERE | EM_ROLE_RADIUS)) != 0 &&
         (before->roles & (EM_ROLE_DIAMETER | EM_ROLE_LARGE)) == 0 &&
         before->sizes->len == 1 && content->best < STRONG_NOUN && !content->has_verb && (content->roles & EM_ROLE_DIAMETER) != 0 && first > 0 &&
         em_item_is_soft_break (r->items, first - 1) && em_reader_line_of (r, first) == em_reader_line_of (r, before->last);
}

/* "On the core pin dia 8 we need 0.05 per side": whose noun stands behind a preposition, and yet how large it is and what is to be added; behind a
 * repair that has its sizes it is another. */
static gboolean
is_on_other (const EmContent *content, const EmProto *before)
{
  return content->best == 0 && content->n_sizes >= 2 && before != NULL && before->sizes->len >= 2 &&
         (content->roles & (EM_ROLE_BUILD | EM_ROLE_PER_SIDE | EM_ROLE_ON_DIAMETER)) != 0 &&
         (content->n_row == 2 || ((content->roles & EM_ROLE_DIAMETER) != 0 && (before->roles & EM_ROLE_DIAMETER) == 0));
}

gboolean
em_content_begins_repair (const EmReader *r, const EmContent *content, const EmProto *before, guint first, guint end)
{
  /* "Mandrel plate, outside ⌀185": how large the part is. */
  gboolean is_only_part = content->best == 0 && content->has_noun && content->n_sizes == 1 &&
                          content->roles == EM_ROLE_DIAMETER &&
                          !content->has_verb && !content->has_damage;
  /* "and it goes .4 deep at the face": only a place is named, so it is more of the repair before it. */
  gboolean is_more = ((content->best == 0 && !is_whole_row (content, before) && !is_on_other (content, before)) || is_said_damage (content, before) || is_mouth (r, content, before, first) || is_it (r, content, before, first) || is_on_round (content, before) ||
                      is_state_of (r, content, before) || is_named_again (r, content, before, first, end)) &&
                     !content->has_verb && before != NULL && before->noun != EM_NO_ITEM && !r->is_bullet &&
                     em_reader_line_of (r, first) == em_reader_line_of (r, before->last);
  gboolean is_repair = content->has_noun && !is_more && !is_only_part && !is_any_area (r, content, first, end) && (content->best >= STRONG_NOUN || content->n_sizes > 0 ||
                                            (content->best > 0 && (!r->has_loose || (content->has_verb && content->has_given)) &&
                                             (content->has_verb || content->has_worn || content->has_damage)));

  if (em_content_is_why (r, content, before, first) || is_gone_of_nick (r, content, before, first, end))
    return FALSE;
  /* "SHUTOFF DRAFT 7°": how steep it is. */
  is_repair &= !(em_content_is_draft (r, content, first, end) && content->best < STRONG_NOUN && !content->has_damage && !content->has_given);
  if (is_said_aside (r, content, before, first, end) || is_how_it_came (r, content, before, first, end) || is_refused (r, content, first, end))
    return FALSE;
  /* "Danke, Sönke": what is only spelt like a repair, and says no more of it, is none. */
  is_repair &= !content->is_slip || content->n_sizes > 0 || content->has_verb || content->has_damage || content->has_given ||
    content->has_worn;
  /* "Edge 3: same as 1." */
  is_repair |= content->has_same && content->best > 0 && before != NULL &&
    em_item_is_sign (r->items, MIN (first + 2, end - 1), ':');
  /* "PUNCH TIP BROKEN OFF .12 X .08": damage with sizes needs no noun. */
  is_repair |= content->has_damage && content->n_sizes > 0 && !is_more_of_form (r, content, before, first, end) &&
    !is_mouth (r, content, before, first);
  return is_repair;
}

/* "R0.2 on the shutoff, 15 mm": a radius and one size more are an edge's. */
static gboolean
is_bare_edge (const EmContent *content)
{
  /* "R2 should be R1.5, 16 long" */
  gboolean is_told = content->n_sizes == 3 && (content->roles & EM_ROLE_FINISHED) != 0 && (content->roles & EM_ROLE_LENGTH) != 0 &&
                     (content->roles & (EM_ROLE_WIDTH | EM_ROLE_DEPTH | EM_ROLE_HEIGHT | EM_ROLE_THICKNESS | EM_ROLE_BUILD)) == 0;

  return (content->roles & EM_ROLE_RADIUS) != 0 && (content->n_sizes == 2 || is_told) && content->best == 0 &&
         (content->roles & (EM_ROLE_DIAMETER | EM_ROLE_SPHERE)) == 0;
}

/* "hob mark 5 dia, 0.8 deep": an unknown thing as deep as it says. */
static gboolean
is_bare_pit (const EmContent *content)
{
  return content->n_other > 0 && (content->roles & EM_ROLE_DEPTH) != 0 && content->best == 0 &&
         content->n_sizes == ((content->roles & EM_ROLE_DIAMETER) != 0 ? 2 : 3);
}

/* "on top: 30 x 8 low by 0.3": a row and what it lacks. */
static gboolean
is_bare_flat (const EmContent *content)
{
  return content->n_sizes == 3 && content->n_row == 2 && (content->roles & EM_ROLE_BUILD) != 0;
}

gboolean
em_content_is_edge_behind (const EmReader *r, const EmContent *content, const EmProto *before, guint first)
{
  return before != NULL && first == r->first && is_bare_edge (content) && before->sizes->len > 0 &&
         before->weight[WORN_CORNER] + before->weight[SEAT] == 0;
}

gboolean
em_content_tells_unnamed (const EmReader *r, const EmContent *content, guint first, guint end)
{
  if (content->n_sizes == 0 || !measures (r, first, end))
    return FALSE;
  /* "Sprue bush SR15.5, face ⌀25, 0.5 to put on": no part but a seat has such a radius. */
  if (content->has_verb || ((content->roles & EM_ROLE_SPHERE) != 0 && content->n_sizes > 1) ||
      /* "SEAL-OFF DIA .437 UNDERSIZE .0015 PER SIDE" */
      ((content->roles & EM_ROLE_DIAMETER) != 0 && (content->roles & EM_ROLE_PER_SIDE) != 0 && content->n_sizes > 1) || ((content->has_worn || (content->roles & EM_ROLE_ON_DIAMETER) != 0) && content->n_sizes > 1))
    return TRUE;
  /* "faceplate  ⌀4.000  ⌀4.012" in a table of what shall be and what is */
  if ((content->roles & EM_ROLE_WORN) != 0 && (content->roles & EM_ROLE_FINISHED) != 0 && content->n_sizes > 1 && (content->roles & (EM_ROLE_RADIUS | EM_ROLE_HEIGHT)) == 0)
    return TRUE;
  if (is_bare_edge (content) || is_bare_pit (content) || is_bare_flat (content) || ((content->roles & EM_ROLE_LEG) != 0 &&
                                                                                    content->n_sizes > 1))
    return TRUE;
  if ((content->has_hurt || (content->has_noun && content->n_sizes > 1)) && content->n_labelled == content->n_sizes)
    return TRUE;
  return r->mention_first < r->mention_end &&
         (content->has_worn || is_size_line (r, content, first, end) || content->n_labelled > 0 || content->n_row > 1 || is_form_line (r, first, end));
}

gboolean
em_content_fills_plan (const EmReader *r, const EmContent *content, const EmProto *before)
{
  const guint32 plan = EM_ROLE_LENGTH | EM_ROLE_WIDTH | EM_ROLE_HEIGHT | EM_ROLE_DIAMETER | EM_ROLE_RADIUS | EM_ROLE_AREA | EM_ROLE_LEG | EM_ROLE_DEPTH;
  const EmSize *added = before->sizes->len == 1 ? em_item_size (r->items, g_array_index (before->sizes, guint, 0)) : NULL;

  return added != NULL && content->n_sizes == 2 && content->n_row == 2 && !content->has_noun && (content->roles & ~(guint32) EM_ROLE_LENGTH) == 0 &&
         added->chain == 0 && (before->roles & plan) == 0 && (added->roles & (EM_ROLE_BUILD | EM_ROLE_ADD | EM_ROLE_WORN)) != 0 &&
         before->weight[FACE] + before->weight[SIDEWALL] > 0;
}
