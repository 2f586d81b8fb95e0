/* em-continue: whether a stretch that begins no repair says more of the one before it.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-continue.h"

#include "em-refer.h"
#include "em-slots.h"

enum
{
  STATE_WORDS = 3,       /* "worn very low" */
  FILL_WINDOW = 10,      /* items from the beginning of a line to its verb */
  SIZES_MAX = 64,        /* sizes of the current repair that are looked over */
  SHAPE_NOUN = 6,        /* a noun no stronger: "flanks" */
  SIZES_LISTED = 4,      /* told one by one */
  WHOLE_ROW = 3          /* sizes of a repair that seldom lacks one */
};

/* "WORN LOW" on a line of its own; "we finish it" is none. */
static gboolean
is_only_state (const EmReader *r, const EmContent *content, guint first)
{
  if (content->n_sizes > 0 || content->n_other > 0 || content->best_thing > 0 || !r->is_line_start || r->end - first > STATE_WORDS)
    return FALSE;
  for (guint i = first; i < r->end; i++)
    if (em_item_says (r->items, i, EM_SAYS_AGENT) != NULL || em_item_says (r->items, i, EM_SAYS_FINISH) != NULL ||
        em_item_says (r->items, i, EM_SAYS_MACHINING) != NULL || em_item (r->items, i)->type == EM_ITEM_SIZE /* "Hardness measured 53 HRC" */)
      return FALSE;
  return content->has_worn || content->has_damage || content->has_hurt;
}

/* "edge 5 x 0.8 x 0.6; ⌀12 worn to 11.92": what is round and worn is no more of what has a row. */
static gboolean
is_round_behind_row (const EmReader *r, const EmContent *content, guint first)
{
  guint n_row = 0;

  if (first != r->first || first == 0 || !em_item_is_sign (r->items, first - 1, ';') || (content->roles & EM_ROLE_DIAMETER) == 0 ||
      (content->roles & EM_ROLE_WORN) == 0 || (r->current->roles & EM_ROLE_DIAMETER) != 0)
    return FALSE;
  for (guint i = 0; i < r->current->sizes->len && i < SIZES_MAX; i++)
    n_row += em_item_size (r->items, g_array_index (r->current->sizes, guint, i))->chain != 0;
  return n_row >= 2;
}

static gboolean
has_row (const EmReader *r, const EmProto *proto)
{
  for (guint i = 0; i < proto->sizes->len && i < SIZES_MAX; i++)
    if (em_item_size (r->items, g_array_index (proto->sizes, guint, i))->chain != 0)
      return TRUE;
  return FALSE;
}

/* A verb of filling in the sentence, behind its first item or its heading. */
static gboolean
fills (const EmReader *r, guint first)
{
  for (guint i = first; i < r->end && i < first + FILL_WINDOW; i++)
    if (em_item_says (r->items, i, EM_SAYS_VERB) != NULL && g_strcmp0 (em_item_says (r->items, i, EM_SAYS_VERB)->value, "fill") == 0)
      return TRUE;
  return FALSE;
}

/* "SITS IN SLOT 5 WIDE X 12 DEEP": where the repair before it lies. */
static gboolean
begins_in_slot (const EmReader *r, guint first)
{
  for (guint i = first; i < r->end && i < first + STATE_WORDS; i++)
    if (em_slots_is_in (r->items, i))
      return TRUE;
  return FALSE;
}

gboolean
em_continue_is_shape (const EmReader *r, const EmContent *content, guint first, guint end)
{
  gboolean has_ends = FALSE;

  if (r->current == NULL || (r->current->weight[DAM] == 0 && r->current->weight[RIB] == 0) || content->has_worn || content->has_damage || content->has_verb || content->n_sizes > 2 || r->has_loose ||
      em_reader_line_of (r, first) > em_reader_line_of (r, r->current->last) + 1 + r->is_dash || content->best > SHAPE_NOUN)
    return FALSE;
  for (guint i = first; i < end; i++)
    {
      const EmSense *set = em_item_says (r->items, i, EM_SAYS_SET);

      has_ends |= set != NULL && g_strcmp0 (set->set_field, "ends") == 0;
      if (set != NULL && r->current->weight[DAM] == 0)
        return FALSE;
      if (em_reader_is_sized (r, i) && em_item_size (r->items, i)->unit != EM_UNIT_DEGREE && (em_item_size (r->items, i)->roles & EM_ROLE_DRAFT) == 0)
        return FALSE;
      if (em_item_says (r->items, i, EM_SAYS_KIND) != NULL && em_item_says (r->items, i, EM_SAYS_KIND)->weight[SIDEWALL] == 0)
        return FALSE;
    }
  return has_ends || content->n_sizes > 0;
}

gboolean
em_continue_is_listed_size (const EmReader *r, const EmContent *content)
{
  const guint32 once = em_once_roles | EM_ROLE_RADIUS | EM_ROLE_DIAMETER | EM_ROLE_BUILD;

  return r->is_bullet && r->heading != NULL && r->current != NULL && g_strcmp0 (r->current->kind_reason, "heading") == 0 && content->n_sizes == 1 &&
         content->n_labelled == 1 && !content->has_noun && !content->has_damage && (content->roles & once) != 0 && (r->current->roles & content->roles & once) == 0 &&
         r->current->sizes->len <= SIZES_LISTED;
}

gboolean
em_continue_is_more (const EmReader *r, const EmContent *content, guint first)
{
  guint32 line;

  if (r->current == NULL || (content->n_sizes == 0 && !content->has_given && !is_only_state (r, content, first)))
    return FALSE;
  if (r->is_bullet && em_refer_continues_jotted (r, content, first))
    return TRUE;
  /* "It sits on a ⌀40 shaft": how large the part is that has it. */
  if (content->has_noun && content->best == 0 && content->n_sizes == 1 && content->roles == EM_ROLE_DIAMETER && first == r->first && has_row (r, r->current))
    return FALSE;
  line = em_reader_line_of (r, r->current->last);
  /* "Vent depth is .02" in the line below a row */
  if (r->is_line_start && em_reader_line_of (r, first) != line && !r->is_dash && r->current->sizes->len >= WHOLE_ROW &&
      em_item_says (r->items, first, EM_SAYS_PLACE) != NULL && em_item_says (r->items, first, EM_SAYS_KIND) == NULL)
    return FALSE;
  /* "INSERT B: WELD SHUT ⌀.125 VENT" below another's row: what is to be filled is another thing. */
  if (r->is_line_start && em_reader_line_of (r, first) != line && r->current->sizes->len > 1 && content->has_verb && !r->current->has_fill &&
      fills (r, first))
    return FALSE;
  if (r->is_line_start && em_refer_names_other_part (r, first) && (r->current->roles & content->roles & EM_ROLE_DIAMETER) != 0)
    return FALSE;
  /* "Edge broken, 12 long, 0.8 x 1.2. The core is undersize, too: nominal 14.00, measured 13.91": what is round is no more of an edge. */
  if (first == r->first && (content->roles & EM_ROLE_WORN) != 0 && (content->roles & EM_ROLE_FINISHED) != 0 && (content->roles & (EM_ROLE_RADIUS | EM_ROLE_HEIGHT)) == 0 &&
      content->n_sizes > 1 && r->current->sizes->len > 1 && (r->current->roles & (EM_ROLE_FINISHED | EM_ROLE_RADIUS | EM_ROLE_DIAMETER)) == 0 &&
      r->current->weight[BORE] + r->current->weight[PIN] + r->current->weight[FACE] + r->current->weight[SIDEWALL] == 0)
    return FALSE;
  if (em_reader_line_of (r, first) == line)
    return !(r->is_bullet && content->n_sizes > 1) && !is_round_behind_row (r, content, first);
  /* "Body ⌀14 worn to 13.94, 40 long" below a face or an edge: a pin or a bore of its own. */
  if (r->is_line_start && content->has_worn && content->n_sizes > 1 && (content->roles & EM_ROLE_DIAMETER) != 0 &&
      (content->roles & EM_ROLE_WORN) != 0 && r->current->sizes->len > 1 && r->current->weight[BORE] + r->current->weight[PIN] == 0)
    return FALSE;
  /* "SHUTOFF DRAFT 7°": how steep another part is. */
  if (content->has_noun && em_content_is_draft (r, content, first, r->end) && r->current->weight[DAM] == 0)
    return FALSE;
  /* A line that names a size again tells of something else. */
  if (content->n_sizes == 0 && content->n_other > 0)
    return FALSE;
  return em_reader_line_of (r, first) == line + 1 && !r->is_bullet && !r->is_listed &&
         ((r->current->roles & content->roles & em_once_roles) == 0 || begins_in_slot (r, first)) &&
         (r->current->sizes->len == 0 || content->n_sizes == content->n_labelled || em_content_fills_plan (r, content, r->current));
}
