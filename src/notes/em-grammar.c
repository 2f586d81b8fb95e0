/* em-grammar: sentences into proposed repairs and notes that govern all.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-grammar.h"

#include "em-fit.h"

#include "em-beside.h"
#include "em-content.h"
#include "em-code.h"
#include "em-continue.h"
#include "em-counts.h"
#include "em-govern.h"
#include "em-labels.h"
#include "em-slots.h"
#include "em-unclear.h"
#include "em-said.h"
#include "em-hand.h"
#include "em-list.h"
#include "em-metals.h"
#include "em-name.h"
#include "em-numbered.h"
#include "em-report.h"
#include "em-rows.h"
#include "em-partner.h"
#include "em-parts.h"
#include "em-proto.h"
#include "em-refer.h"
#include "em-sentence.h"
#include "em-table.h"
#include "em-where.h"

#include <string.h>

enum
{
  ONE_WINDOW = 5,        /* items to the word for another one */
  NAME_MIN = 3,          /* letters of a word that may be a part's name */
  ROW_ITEMS_MAX = 24, LED_BYTES = 3, /* of a row of sizes: items, and bytes of what may stand before the first */
  SAID_WORDS = 2         /* that may tell who or what before what is said of a part */
};

typedef struct
{
  guint    end;
  EmProto *proto;
} EmPart;

static EmProto *
start_proto (EmReader *r)
{
  EmProto *proto = em_proto_new ();

  g_ptr_array_add (r->grammar->protos, proto);
  r->current = proto;
  proto->parts = r->parts;
  proto->head = r->head;
  r->n_since_parts++;
  return proto;
}

static void
borrow_kind (EmProto *proto, const EmProto *from, const char *reason)
{
  memcpy (proto->weight, from->weight, sizeof proto->weight);
  proto->noun = from->noun;
  proto->noun_weight = from->noun_weight;
  proto->is_slip = from->is_slip;
  proto->kind_reason = reason;
  for (guint i = 0; i < from->given->len; i++)
    if (strcmp (g_array_index (from->given, EmGiven, i).field.field, "form") == 0)
      g_array_append_val (proto->given, g_array_index (from->given, EmGiven, i));
}

/* The sizes of a line of nothing but sizes with their names and counts, from item i on; 0 where it begins otherwise. *out_end: behind it. */
static guint
sizes_of_row (const EmReader *r, guint i, guint *out_end)
{
  guint limit = MIN (i + ROW_ITEMS_MAX, r->items->items->len), n = 0;
  gboolean is_led = i + 1 < limit && em_item (r->items, i)->length <= LED_BYTES && em_item (r->items, i + 1)->type == EM_ITEM_SIZE;

  *out_end = i;
  if (i >= limit || (em_item (r->items, i)->type != EM_ITEM_SIZE && !is_led))
    return 0;
  for (; i < limit && em_item (r->items, i)->type != EM_ITEM_LINE; i++)
    {
      if (em_item_says (r->items, i, EM_SAYS_KIND) != NULL || em_item_says (r->items, i, EM_SAYS_VERB) != NULL ||
          em_item (r->items, i)->type == EM_ITEM_UNKNOWN)
        return 0;
      n += em_item (r->items, i)->type == EM_ITEM_SIZE && (em_item_size (r->items, i)->roles & EM_ROLE_COUNT) == 0;
    }
  *out_end = i;
  return i < limit || i == r->items->items->len ? n : 0;
}

/* "PITS IN CAVITY" over "Ø1 X 0.5 DEEP, 4 PCS" and "Ø2.5 X 1.2 DEEP, 2 PCS": rows alike, of two sizes or more. */
static gboolean
has_rows_below (const EmReader *r, guint end)
{
  guint first_end, second_end, n = sizes_of_row (r, end + 1, &first_end);

  return n >= 2 && sizes_of_row (r, first_end + 1, &second_end) == n &&
         em_item (r->items, end + 1)->type == em_item (r->items, first_end + 1)->type &&
         em_item (r->items, end + 1)->phrase == em_item (r->items, first_end + 1)->phrase;
}

/* "EDGE NICKS:" at the end of a line, or "EDGE NICKS" with bullets or rows under it. */
static gboolean
is_heading_line (const EmReader *r, guint end)
{
  guint n = r->items->items->len;

  /* "3 dents: 1) 2 dia x 0.5 2) 3 dia x 0.6" */
  if (end > r->first && end + 3 < n && em_item_is_sign (r->items, end, ':') && em_list_is_bare_whole (r->items, end + 1) &&
      em_item_is_sign (r->items, end + 2, ')') && em_item (r->items, end + 3)->type == EM_ITEM_SIZE)
    return TRUE;
  if (end == r->first || (end < n && em_item (r->items, end)->type != EM_ITEM_LINE))
    return FALSE;
  if (em_item_is_sign (r->items, end - 1, ':'))
    return TRUE;
  if (end + 3 < n && em_item_is_sign (r->items, end + 1, '#') && em_list_is_numeral (r, end + 2) &&
      em_item (r->items, end + 3)->type == EM_ITEM_SIZE)
    return TRUE;
  if (end + 3 < n && em_list_is_numeral (r, end + 1) && em_list_is_mark (r, end + 2) &&
      em_item (r->items, end + 3)->type == EM_ITEM_SIZE)
    return TRUE;
  if (end < n && has_rows_below (r, end))
    return TRUE;
  return end + 2 < n && em_list_is_bullet (em_item (r->items, end + 1)) && em_item (r->items, end + 2)->type == EM_ITEM_SIZE;
}

static void
set_heading (EmReader *r, guint first, guint end)
{
  EmProto *heading = em_proto_new ();

  if (r->heading != NULL)
    em_proto_free (r->heading);
  em_reader_add_items (r, heading, first, end);
  r->heading = heading;
  r->current = NULL;
}

/* One of several that were named together: the first takes the place of what named them, the others are more of its kind. */
static EmProto *
read_one_of (EmReader *r, EmProto *before, guint first, guint end)
{
  EmProto *proto = before;

  for (guint i = first; i < end; i++)
    {
      gboolean is_name = em_item (r->items, i)->type == EM_ITEM_SIZE && (em_item_size (r->items, i)->roles & EM_ROLE_REFERENCE) != 0;

      em_item (r->items, i)->is_used |= em_item_says (r->items, i, EM_SAYS_ONE_OF) != NULL ||
        em_item_says (r->items, i, EM_SAYS_NUMBER) != NULL || (is_name && i < first + 4) /* "#2" */;
    }
  if (before->sizes->len == 0)
    {
      before->count_item = EM_NO_ITEM;
      before->typical_item = EM_NO_ITEM;
      before->count = (double) NAN;
    }
  else
    borrow_kind (proto = start_proto (r), before, "heading");
  before->is_one_of = proto->is_one_of = TRUE;
  em_counts_add_those (r, proto, first, end);
  return proto;
}

/* "H900" is a name rather than a height. */
static gboolean
has_letter_label (const EmReader *r, guint first, guint end)
{
  for (guint i = first; i < end; i++)
    if (em_reader_is_sized (r, i) && em_item_size (r->items, i)->label_item != G_MAXUINT32 &&
        em_item (r->items, em_item_size (r->items, i)->label_item)->length == 1)
      return TRUE;
  return FALSE;
}

/* "slide shutoff, 4 places:" */
static gboolean
is_count_heading (const EmReader *r, const EmContent *content, guint end)
{
  return content->has_count && content->n_sizes == 0 && em_item_is_sign (r->items, end - 1, ':') && end == r->end;
}

/* "knife edge ring, ⌀120": how large round the edge is that the next part tells of. */
static gboolean
is_round_edge (const EmReader *r, const EmContent *content, guint first, guint end)
{
  if (content->roles != EM_ROLE_DIAMETER || content->n_sizes != 1 || content->best > 0)
    return FALSE;
  for (guint i = first; i < end; i++)
    if (em_reader_is_noun (r, i) && em_item_says (r->items, i, EM_SAYS_KIND)->weight[WORN_CORNER] > 0)
      return TRUE;
  return FALSE;
}

/* "Length: 40; radius: 0.5" before the noun waits for it, as long as nothing else comes first. */
static void
keep_early (EmReader *r, const EmContent *content, guint first, guint end)
{
  if (is_count_heading (r, content, end))
    {
      r->early_first = first;
      r->early_end = end;
      return;
    }
  if (content->n_sizes == 0 || content->n_sizes > content->n_labelled ||
      (content->has_noun && !is_round_edge (r, content, first, end)) || has_letter_label (r, first, end))
    {
      r->early_first = r->early_end = 0;
      return;
    }
  if (r->early_first == r->early_end || em_reader_line_of (r, first) > em_reader_line_of (r, r->early_end - 1) + 1)
    r->early_first = first;
  r->early_end = end;
}

/* "The bolt hole is in the wrong spot. Fill it, 22 deep.": what was only named before is what the sizes are of. */
static void
keep_mention (EmReader *r, const EmContent *content, guint first, guint end)
{
  /* "Ejector pin hole nearby": not what is to be done. */
  for (guint i = first; i < end; i++)
    if (em_item_says (r->items, i, EM_SAYS_NEAR) != NULL)
      return;
  if (!content->has_noun || content->best == 0)
    return;
  r->mention_first = first;
  r->mention_end = end;
}

/* Words of a sentence before: what stands in front of them there says what they are. */
static void
add_told (EmReader *r, EmProto *proto, guint first, guint end)
{
  guint own_first = r->first, own_end = r->end;

  r->first = first;
  r->end = end;
  em_reader_add_items (r, proto, first, end);
  r->first = own_first;
  r->end = own_end;
}

static void
take_mention (EmReader *r, EmProto *proto)
{
  if (r->mention_first < r->mention_end && em_reader_line_of (r, r->mention_end - 1) + 1 >= em_reader_line_of (r, r->first))
    {
      /* "The face (1.2379) is low.": a note that governs may have used it. */
      for (guint i = r->mention_first; i < r->mention_end; i++)
        if (em_item_says (r->items, i, EM_SAYS_KIND) != NULL)
          em_item (r->items, i)->is_used = FALSE;
      add_told (r, proto, r->mention_first, r->mention_end);
      proto->kind_reason = "from-words";
    }
  r->mention_first = r->mention_end = 0;
}

static void
take_early (EmReader *r, EmProto *proto, const EmContent *content)
{
  EmContent early = em_content_weigh (r, r->early_first, r->early_end);

  if (r->early_first < r->early_end && (early.roles & content->roles & em_once_roles) == 0 &&
      em_reader_line_of (r, r->first) <= em_reader_line_of (r, r->early_end - 1) + 1)
    add_told (r, proto, r->early_first, r->early_end);
  r->early_first = r->early_end = 0;
}

/* "two dents: 3 x 2 x 0.4 deep; 5 x 2 x 0.3 deep": a whole row more behind the semicolon. */
static gboolean
is_next_row (const EmReader *r, const EmContent *content, const EmProto *before, guint first)
{
  guint n = 0;

  if (content->has_noun || content->has_verb || content->n_row != content->n_sizes || content->n_row < 2 || first == 0 || first != r->first ||
      before->sizes->len != content->n_sizes || !em_item_is_sign (r->items, first - 1, ';'))
    return FALSE;
  for (guint i = 0; i < before->sizes->len; i++)
    n += em_item_size (r->items, g_array_index (before->sizes, guint, i))->chain != 0;
  return n == content->n_row;
}

/* "- second one .030 high x 1.5 long"; "There is a second one beside it, 1.2 long" */
static gboolean
is_another_one (const EmReader *r, const EmContent *content, const EmProto *before, guint first)
{
  if (r->is_line_start && em_item_says (r->items, first, EM_SAYS_ONE_OF) != NULL && em_reader_begins_one_of (r, first))
    return TRUE;
  if (first != r->first || content->has_noun || (before->roles & content->roles & em_once_roles) == 0)
    return FALSE;
  for (guint i = first; i < r->end && i < first + ONE_WINDOW; i++)
    if (em_item_says (r->items, i, EM_SAYS_ONE_OF) != NULL)
      return TRUE;
  return FALSE;
}

/* "Stempel 2: dito, 18 lang" below "Stempel 1: edge R 0.3": the noun only says which part, as before. */
static gboolean
is_same_on_part (const EmReader *r, const EmContent *content, const EmProto *before, guint first)
{
  guint next = first + 2;

  if (!content->has_same || before == NULL || !r->is_line_start || before->noun == EM_NO_ITEM || before->noun == before->first || next >= r->end ||
      em_item (r->items, first)->type != EM_ITEM_PHRASE || em_item (r->items, first)->phrase != em_item (r->items, before->first)->phrase ||
      em_item (r->items, first + 1)->type != EM_ITEM_SIZE || (em_item_size (r->items, first + 1)->roles & EM_ROLE_REFERENCE) == 0)
    return FALSE;
  next += em_item_is_sign (r->items, next, ':') || em_item_is_sign (r->items, next, '-');
  return next < r->end && em_item_says (r->items, next, EM_SAYS_SAME) != NULL;
}

/* "Right side is the same but only 20": the noun says where, and no more. */
static gboolean
is_same_on_side (const EmReader *r, const EmContent *content, const EmProto *before, guint first, guint end)
{
  static const char *const sides[] = { "left side", "right side", "left hand side", "right hand side", "the left side", "the right side", "back side", "front side", "far side", "near side" };

  if (!content->has_same || before == NULL || content->n_sizes == 0 || content->has_verb || content->has_damage || before->sizes->len == 0)
    return FALSE;
  for (guint i = first; i + 1 < end && i < first + 2; i++)
    if (em_item_is_any_word_of (r->items, i, sides, G_N_ELEMENTS (sides)))
      return TRUE;
  return FALSE;
}

/* "Fläche 40 x 5" and below it "fehlt 0,12": how much is to be added to what was told above. */
static gboolean
is_only_missing (const EmReader *r, const EmContent *content, const EmProto *before, guint first, guint end)
{
  if (before == NULL || !r->is_line_start || r->is_bullet || content->n_sizes != 1 || (content->roles & EM_ROLE_BUILD) == 0 ||
      (content->roles & em_dimension_roles) != 0 || before->sizes->len == 0 || (before->roles & EM_ROLE_BUILD) != 0 ||
      before->weight[FACE] + before->weight[SIDEWALL] + before->weight[RIB] == 0 ||
      em_reader_line_of (r, first) != em_reader_line_of (r, before->last) + 1)
    return FALSE;
  for (guint i = first; i < end; i++)
    if (em_item_says (r->items, i, EM_SAYS_KIND) != NULL || em_item (r->items, i)->type == EM_ITEM_UNKNOWN)
      return FALSE;
  return TRUE;
}

/* "New dams, 2 off:" over the sizes of one of them. */
static void
take_heading_count (const EmReader *r, EmProto *proto)
{
  if (proto->count_item != EM_NO_ITEM || r->heading->count_item == EM_NO_ITEM)
    return;
  proto->count = r->heading->count;
  proto->count_item = r->heading->count_item;
  proto->is_count_loose = TRUE;
}

/* The proposal that the segment fills, a new one or one there is; NULL: none. */
static EmProto *
proposal_of (EmReader *r, const EmContent *content, EmProto *before, gboolean is_repair, guint first, guint end)
{
  EmProto *proto = NULL;

  /* "Flanks have 1° draft" of a rib, which no field takes. */
  if (before != NULL && em_continue_is_shape (r, content, first, end))
    return before->weight[DAM] > 0 || em_fit_given_text (before, "ends") != NULL ? before : NULL;
  if (before != NULL && em_continue_is_listed_size (r, content))
    {
      take_heading_count (r, before);
      return before;
    }
  is_repair = is_repair && !is_only_missing (r, content, before, first, end);
  if (is_repair && !is_same_on_part (r, content, before, first) && !is_same_on_side (r, content, before, first, end))
    {
      proto = start_proto (r);
      /* "RIB R7: DITTO BUT 22 LG" */
      proto->is_same = content->has_same && before != NULL;
      if (proto->is_same && em_refer_repair (r, before, em_refer_head (r, first, end)) != before)
        proto->like = em_refer_head (r, first, end);
      proto->may_merge = before != NULL && (em_reader_line_of (r, first) == em_reader_line_of (r, before->last) ||
                                            (em_reader_line_of (r, first) == em_reader_line_of (r, before->last) + 1 &&
                                             (!r->is_bullet || !content->has_noun ||
                                              /* "- rib tip broken", "- needs 0.5 over 25, rib is 1.2 thick" */
                                              (r->is_dash && r->was_dash && before->sizes->len == 0 && content->has_verb &&
                                               !content->has_damage))));
    }
  else if (before != NULL && content->n_sizes > 0 && em_reader_line_of (r, first) == em_reader_line_of (r, before->last) &&
           (r->is_one_of || is_next_row (r, content, before, first)))
    proto = read_one_of (r, before, first, end);
  /* "Twelve molds, all the same." */
  else if (content->has_same && content->n_sizes == 0 && em_refer_counts_tools (r, first, end))
    return NULL;
  /* "- dam .045 high x 2.75 long" and below it "- second one .030 high x 1.5 long" */
  else if (before != NULL && content->n_sizes > 1 && is_another_one (r, content, before, first))
    borrow_kind (proto = start_proto (r), before, "same-as-before");
  else if (content->has_same && before != NULL)
    {
      guint64 head = em_refer_head (r, first, end);
      const EmProto *like = em_refer_repair (r, before, head);

      borrow_kind (proto = start_proto (r), like, "same-as-before");
      proto->is_same = TRUE;
      proto->like = like != before ? head : 0;
    }
  else if (r->heading != NULL && content->n_sizes > 0 && (r->is_bullet || r->current == NULL || (r->is_line_start && !em_continue_is_more (r, content, first))))
    borrow_kind (proto = start_proto (r), r->heading, "heading");
  else if (!em_content_is_edge_behind (r, content, before, first) && em_continue_is_more (r, content, first))
    proto = r->current;
  else if (em_content_tells_unnamed (r, content, first, end))
    {
      proto = start_proto (r);
      proto->may_merge = before != NULL && r->is_bullet && !content->has_noun &&
                         em_reader_line_of (r, first) == em_reader_line_of (r, before->last) + 1;
      take_mention (r, proto);
    }
  return proto;
}

/* "Location: PL edge" in the line below "Type: nick": nothing else is wrong there. TRUE: taken. */
static gboolean
take_place_line (EmReader *r, const EmContent *content, EmProto *before, guint first, guint end)
{
  if (before == NULL || !r->is_place_line || content->n_sizes > 0 || em_reader_line_of (r, first) != em_reader_line_of (r, before->last) + 1)
    return FALSE;
  for (guint i = first; i < end; i++)
    em_item (r->items, i)->is_used |= em_reader_is_noun (r, i) || em_item_says (r->items, i, EM_SAYS_PLACE) != NULL || i == first;
  em_reader_take_aside (r, before, first, end, FALSE);
  before->last = end - 1;
  return TRUE;
}

/* "Wall 30 long, 10 high. Scored, add 0.3": the damage does not make another kind of it. */
static void
add_why (EmReader *r, EmProto *proto, guint first, guint end)
{
  EmProto was = *proto;

  em_reader_add_items (r, proto, first, end);
  memcpy (proto->weight, was.weight, sizeof was.weight);
  memcpy (proto->damage, was.damage, sizeof was.damage);
  proto->noun = was.noun;
  proto->noun_weight = was.noun_weight;
  proto->kinds = was.kinds;
  proto->is_slip = was.is_slip;
}

/* "Fill the following flush:" over holes and pockets. */
static void
keep_fill_heading (EmReader *r, const EmContent *content, guint first, guint end)
{
  if (content->n_sizes > 0 || content->has_noun || !is_heading_line (r, end))
    return;
  for (guint i = first; i < end; i++)
    if (em_item_says (r->items, i, EM_SAYS_VERB) != NULL && g_strcmp0 (em_item_says (r->items, i, EM_SAYS_VERB)->value, "fill") == 0)
      r->fill_heading = i;
}

static void
take_fill_heading (const EmReader *r, EmProto *proto)
{
  if (r->fill_heading == EM_NO_ITEM || proto->has_verb || proto->has_worn || proto->has_damage || proto->weight[RECESS] + proto->weight[BORE] == 0)
    return;
  proto->has_verb = proto->has_fill = TRUE;
  proto->fill = r->fill_heading;
}

/* One segment: a new proposal, more of the current one, a heading, or nothing (it stays unused). Returns the proposal. */
static EmProto *
read_segment (EmReader *r, guint first, guint end)
{
  EmContent content = em_content_weigh (r, first, end);
  EmProto *proto, *before = r->current;
  gboolean is_unclear = em_unclear_tells (r, &content, first, end), is_repair = is_unclear || em_content_begins_repair (r, &content, before, first, end);

  /* "Objet : lèvre de filière film 2,2 m" */
  if (r->is_mail_head && content.n_sizes < 2)
    return NULL;
  if (!is_unclear && (take_place_line (r, &content, before, first, end) || em_partner_take (r, &content, before, first, end) || em_said_take (r, &content, before, is_repair, first, end)))
    return before;
  if (is_repair && !is_unclear && content.n_sizes == 0 && is_heading_line (r, end))
    {
      set_heading (r, first, end);
      return NULL;
    }
  proto = proposal_of (r, &content, before, is_repair, first, end);
  if (proto == NULL)
    {
      keep_fill_heading (r, &content, first, end);
      keep_early (r, &content, first, end);
      keep_mention (r, &content, first, end);
      return NULL;
    }
  if (proto != before)
    take_early (r, proto, &content);
  if (is_repair && r->is_line_start && r->heading != NULL)
    {
      em_proto_free (r->heading);
      r->heading = NULL;
    }
  if (proto == before && em_content_is_why (r, &content, before, first))
    add_why (r, proto, first, end);
  else
    em_reader_add_items (r, proto, first, end);
  em_said_share_both (r, proto, before);
  if (is_unclear)
    em_unclear_make (proto);
  else if (is_repair)
    {
      em_reader_share_fill (r, proto, before);
      em_reader_share_build (r, proto, before);
      take_fill_heading (r, proto);
    }
  return proto;
}

/* "kiss-off" in "kiss-off pad": a word that is not known may be a part's name. */
static gboolean
is_name_word (const EmItem *item)
{
  return item->type == EM_ITEM_UNKNOWN && !item->is_talk && item->length >= NAME_MIN;
}

/* The label of a proposal: the first run of words that name a part of the tool, with unknown words right before it. */
static void
read_label (EmReader *r, EmProto *proto, guint first, guint end)
{
  for (guint i = first; i < end; i++)
    if (em_item_says (r->items, i, EM_SAYS_PLACE) != NULL && !em_reader_is_foreign_article (r, i))
      {
        const EmItem *from = em_item (r->items, i), *to = from;
        guint before = i;
        EmGiven label = em_given_new ("label", NULL, from);

        while (i + 1 < end && em_item_says (r->items, i + 1, EM_SAYS_PLACE) != NULL)
          to = em_item (r->items, ++i);
        while (before-- > first && is_name_word (em_item (r->items, before)))
          from = em_item (r->items, before);
        label.field.start = from->start;
        label.field.length = to->start + to->length - from->start;
        g_array_append_val (proto->given, label);
        return;
      }
}

/* "kiss-off pad", "choke dam": a word that is not known, right before a part or a repair, is which one. */
static void
use_names (const EmReader *r, guint first, guint end)
{
  for (guint i = end; i-- > first + 1;)
    if (is_name_word (em_item (r->items, i - 1)) &&
        (em_item_says (r->items, i, EM_SAYS_KIND) != NULL || em_item_says (r->items, i, EM_SAYS_PLACE) != NULL))
      em_item (r->items, i - 1)->is_used = TRUE;
}

/* "Surface is chrome plated": the words round a note that governs are used with it when no repair claims them. */
static void
use_governing_words (const EmReader *r, const GArray *parts)
{
  for (guint k = 0; k < parts->len; k++)
    if (g_array_index (parts, EmPart, k).proto != NULL)
      return;
  for (guint i = r->first; r->has_loose && i < r->end; i++)
    if (em_reader_is_noun (r, i) || em_reader_is_verb (r, i) || em_item_says (r->items, i, EM_SAYS_PLACE) != NULL)
      em_item (r->items, i)->is_used = TRUE;
}

static const char *const numbers[] = { "tool_number", "reference", "drawing", NULL };
static const char *const titles[] = { "tool_number", "reference", "drawing", "base", "hardness", "coating", "units", NULL };

/* Notes other than those: beside "mold 2205, cav 3" a repair may stand, and a title may name the steel. */
static gboolean
has_other_than (const GArray *loose, const char *const *fields)
{
  for (guint i = 0; i < loose->len; i++)
    if (!g_strv_contains (fields, g_array_index (loose, EmLoose, i).given.field.field))
      return TRUE;
  return FALSE;
}

static void
read_sentence (EmReader *r)
{
  EmClause clause = { r->items, r->first, r->end, &r->n_chains };
  g_autoptr (GArray) loose = g_array_new (FALSE, FALSE, sizeof (EmLoose));
  g_autoptr (GArray) parts = g_array_new (FALSE, FALSE, sizeof (EmPart));
  gboolean is_line_start = r->is_line_start, is_told = FALSE;
  guint k = 0, start, n_given = r->current != NULL ? r->current->given->len : 0;
  const EmProto *before = r->current;

  em_clause_mark_dual (&clause);
  em_clause_mark_counts (&clause);
  r->is_bullet |= em_list_is_item_word (r, r->first) && em_item_says (r->items, r->first, EM_SAYS_KIND) == NULL;
  r->is_one_of = !r->is_line_start && em_reader_begins_one_of (r, r->first);
  em_clause_mark_chains (&clause);
  em_labels_mark (&clause);
  em_report_mark (&clause);
  em_slots_mark (r);
  em_beside_read (r, loose);
  em_govern_read (r->grammar, &clause, loose);
  r->has_loose = has_other_than (loose, numbers);
  em_parts_note (r);
  is_told = (is_line_start && em_parts_count_all (r)) || em_parts_count_named (r) || em_where_take (r);
  start = is_told ? r->end : r->first;
  for (guint first = start; first < r->end;)
    {
      gboolean is_before_one_of;
      guint end = em_reader_end_of_segment (r, first, &is_before_one_of);
      EmPart part = { end, read_segment (r, first, end) };

      r->is_one_of = is_before_one_of;

      is_told |= part.proto != NULL;
      if (part.proto != NULL)
        {
          read_label (r, part.proto, first, end);
          use_names (r, first, end);
        }
      g_array_append_val (parts, part);
      first = end;
      r->is_bullet = r->is_line_start = FALSE;
    }
  if (!is_told && is_line_start && !has_other_than (loose, titles))
    em_parts_read (r);
  use_governing_words (r, parts);
  for (guint i = 0; i < loose->len; i++)
    {
      const EmLoose *one = &g_array_index (loose, EmLoose, i);

      while (k + 1 < parts->len && one->item >= g_array_index (parts, EmPart, k).end)
        k++;
      em_hand_out (r, one, parts->len > 0 ? g_array_index (parts, EmPart, k).proto : NULL);
    }
  if (before != NULL && before == r->current)
    em_parts_share (r, n_given);
}

/* "Kante 3 - i.O." */
static gboolean
is_number_of_part (const EmReader *r, guint first, guint i)
{
  return i > first && em_list_is_bare_whole (r->items, i) && em_item (r->items, i)->length <= 2 &&
         (em_item_says (r->items, i - 1, EM_SAYS_KIND) != NULL || em_item_says (r->items, i - 1, EM_SAYS_PLACE) != NULL);
}

/* "core pin dia 5, nothing to do": the one size tells which it is, and no wear. */
static gboolean
is_named_by_size (const EmReader *r, guint first, guint part)
{
  guint n = 0;
  gboolean is_named = FALSE;

  for (guint i = first; i < part; i++)
    if (em_item_is_measure (r->items, i) && !is_number_of_part (r, first, i))
      {
        const EmSense *sign = i > first + 1 ? em_item_says (r->items, i - 1, EM_SAYS_LABEL) : NULL;
        guint noun = sign != NULL && sign->roles == EM_ROLE_DIAMETER ? i - 2 : i - 1;

        n++;
        is_named = i > first && i + 1 == part && em_item_says (r->items, noun, EM_SAYS_KIND) != NULL;
      }
  return n == 1 && is_named;
}

/* "lip gap checked .062, ok": what was measured is what is sound. */
static gboolean
is_checked (const EmReader *r, guint first, guint part)
{
  static const char *const checked[] = { "checked", "check", "inspected", "measured", "gauged", "gaged", "geprüft", "gemessen", "nachgemessen", "kontrolliert",
                                         "medido", "medida", "comprobado", "comprobada", "verificado", "verificada", "contrôlé", "contrôlée", "mesuré", "mesurée", "vérifié", "vérifiée" };
  guint n = 0;
  gboolean has_check = FALSE;

  for (guint i = first; i < part; i++)
    {
      has_check |= em_item_is_any_word_of (r->items, i, checked, G_N_ELEMENTS (checked));
      n += em_item_is_measure (r->items, i);
      if (em_item_is_soft_break (r->items, i))
        return FALSE;
    }
  return has_check && n == 1;
}

/* "Screw hole stripped, leave it": what stands alone after the comma is said of the part before it, when no size does. */
static gboolean
is_said_of (const EmReader *r, guint first, guint part, guint sound)
{
  gboolean is_measured = is_checked (r, first, part) || is_named_by_size (r, first, part);

  for (guint i = first; i < part; i++)
    if ((em_item_is_measure (r->items, i) && !is_number_of_part (r, first, i) && !is_measured) || em_item_is_soft_break (r->items, i) ||
        em_phrase_find (em_item (r->items, i)->phrase, EM_SAYS_BASE) != NULL)
      return FALSE;
  /* ", lathe will clean it up" */
  for (guint i = part + 1; i < sound; i++)
    if (em_item_says (r->items, i, EM_SAYS_KIND) != NULL || em_item_says (r->items, i, EM_SAYS_PLACE) != NULL ||
        em_item (r->items, i)->type == EM_ITEM_SIZE || i > part + SAID_WORDS)
      return FALSE;
  return sound > part;
}

/* "Core pin ⌀.093 bent - replaced already", "A few scratches .001 deep, those are ok": what was told from start to part, with sizes too, asks for
 * nothing. Returns where that begins: behind the last break that a noun of a repair follows; part: no such words. */
static guint
start_of_done (const EmReader *r, guint start, guint part, guint sound)
{
  const EmSense *said = em_item_says (r->items, sound, EM_SAYS_SOUND);
  gboolean has_noun = FALSE;
  guint i = part;

  if (said == NULL || g_strcmp0 (said->value, "done") != 0 || sound > part + SAID_WORDS)
    return part;
  while (i > start && !(has_noun && em_item_is_soft_break (r->items, i)))
    {
      i--;
      has_noun |= em_item_says (r->items, i, EM_SAYS_KIND) != NULL || em_item_says (r->items, i, EM_SAYS_PLACE) != NULL;
    }
  return has_noun ? i : part;
}

/* Says that nothing is to be done; at the end of a line a bare "OK" does, too: "sprue bore  4.000  4.005  OK". */
static gboolean
is_sound (const EmReader *r, guint first, guint i, guint end)
{
  static const char *const last[] = { "ok", "okay", "accept", "accepted", "leave", "skip" };

  /* "leave it .005 heavy" */
  if (em_item_says (r->items, i, EM_SAYS_SOUND) != NULL)
    return !(i + 1 < end && em_item_is_measure (r->items, i + 1));
  if (i + 1 < end || (end < r->items->items->len && em_item (r->items, end)->type != EM_ITEM_LINE) ||
      !em_item_is_any_word_of (r->items, i, last, G_N_ELEMENTS (last)))
    return FALSE;
  if (em_item (r->items, first)->is_row)
    return TRUE;
  for (guint k = first; k < i; k++)
    if (em_item_says (r->items, k, EM_SAYS_TIMES) != NULL)
      return FALSE;
  return TRUE;
}

/* "The core is fine, cavity has a crack": the part between commas that says nothing is to be done is left out whole. */
static void
read_parts (EmReader *r, guint first, guint end)
{
  guint start = first, part = first;

  for (guint i = first; i <= end; i++)
    {
      gboolean is_end = i == end || em_item_is_soft_break (r->items, i);

      if (!is_end && is_sound (r, part, i, end))
        {
          guint stop = i;

          while (stop < end && !em_item_is_soft_break (r->items, stop))
            stop++;
          r->first = start;
          r->end = part = start_of_done (r, start, part, i);
          if (part > start && !is_said_of (r, start, part, i))
            read_sentence (r);
          start = part = i = stop;
        }
      else if (is_end)
        part = i;
    }
  r->first = start;
  r->end = end;
  if (end > start)
    read_sentence (r);
}

/* "dowel  .3125  .3125  accept": a row of a table that needs nothing. */
static gboolean
is_sound_row (const EmReader *r, guint first, guint end)
{
  if (!em_item (r->items, first)->is_row)
    return FALSE;
  if (em_item (r->items, first)->is_idle)
    return TRUE;
  for (guint i = first; i < end; i++)
    if (is_sound (r, first, i, end))
      return TRUE;
  return FALSE;
}

/* "[x]" somewhere: the boxes of the notes are those of a form, of which some are ticked. */
static gboolean
has_ticked (const EmItems *items)
{
  for (guint i = 0; i + 2 < items->items->len; i++)
    if (em_item_is_sign (items, i, '[') && em_item_is_sign (items, i + 2, ']') && em_item (items, i + 1)->length <= 3 /* a tick */ &&
        em_item (items, i + 1)->type != EM_ITEM_SIZE)
      return TRUE;
  return FALSE;
}

static gboolean
is_empty_box (const EmReader *r, guint first, guint end)
{
  return first + 1 < end && em_item_is_sign (r->items, first, '[') && em_item_is_sign (r->items, first + 1, ']');
}

/* "[ ] CRACK": a box of a form that is not ticked. TRUE: the line says nothing. Where none is, the boxes are those of a list of what is to be done. */
static gboolean
take_unticked (EmReader *r, guint first, guint end)
{
  if (!r->has_ticked || !is_empty_box (r, first, end))
    return FALSE;
  for (guint i = first; i < end; i++)
    em_item (r->items, i)->is_used = TRUE;
  return TRUE;
}

/* The number or letter among the items from first to end, which were passed over, heads what follows. */
static void
take_head (EmReader *r, guint first, guint end)
{
  for (guint i = first; i < end; i++)
    r->head = em_list_head_at (r->items, i) != 0 ? em_list_head_at (r->items, i) : r->head;
}

static void
read_line (EmReader *r, guint first, guint end)
{
  guint line_first = first;

  r->is_bullet = FALSE;
  r->was_dash = r->is_dash;
  r->is_dash = FALSE;
  r->is_line_start = TRUE;
  r->inline_number = 0;
  r->inline_letter = 0;
  r->inline_length = 0;
  r->is_listed = FALSE;
  r->is_mail_head = em_list_is_mail_head (r->items, first, end);
  r->is_place_line = em_list_is_place_line (r->items, first, end);
  if (is_sound_row (r, first, end) || take_unticked (r, first, end))
    return;
  if (em_item (r->items, first)->is_row)
    r->is_bullet = TRUE;
  else if (is_empty_box (r, first, end) && first + 2 < end)
    {
      r->is_bullet = TRUE;
      first += 2;
    }
  else
    first = em_list_skip_number (r, em_list_skip_head (r, first, end), end);
  r->is_listed = r->is_bullet;
  r->head = 0;
  /* "Cavity #4 - same as #1" */
  if (first == line_first && first + 2 < end &&
      (em_item_says (r->items, first, EM_SAYS_PLACE) != NULL || em_item_says (r->items, first, EM_SAYS_KIND) != NULL))
    r->head = em_list_head_at (r->items, first + 1 + em_item_is_sign (r->items, first + 1, '#'));
  take_head (r, line_first, first);
  /* "A  edge chipped  3 x 1" in a table */
  if (em_item (r->items, line_first)->is_row && first == line_first && em_item (r->items, first)->length <= 2)
    r->head = em_list_head_at (r->items, first);
  for (guint i = first; i <= end; i++)
    if (i > first && i < end && (em_sentence_ends_at_point (r, i) || em_list_begins_number (r, i)))
      {
        read_parts (r, first, i);
        first = em_list_skip_number (r, i, end);
        take_head (r, i, first);
        r->is_line_start = FALSE;
      }
    else if (i == end || em_sentence_ends (r, i) || em_list_precedes_number (r, i, end))
      {
        if (i > first)
          read_parts (r, first, i);
        first = em_list_skip_number (r, i + 1, end);
        take_head (r, i + 1, first);
        r->is_line_start = FALSE;
      }
}

/* Joins the grammar's record for what follows a blank line: nothing continues over it. */
static void
end_paragraph (EmReader *r)
{
  if (r->heading != NULL)
    em_proto_free (r->heading);
  r->heading = NULL;
  r->early_first = r->early_end = 0;
  r->mention_first = r->mention_end = 0;
  r->fill_heading = EM_NO_ITEM;
  em_parts_end (r);
}

EmGrammar *
em_grammar_read (EmItems *items)
{
  EmGrammar *grammar = g_new0 (EmGrammar, 1);
  EmReader r = { .grammar = grammar, .items = items, .waiting = g_array_new (FALSE, FALSE, sizeof (EmGiven)),
                 .parts = { EM_NO_ITEM, 1, FALSE, FALSE }, .fill_heading = EM_NO_ITEM };
  guint first = 0, n = items->items->len;

  em_name_read_signatures (items);
  em_table_read (items);
  em_numbered_read (items);
  r.has_ticked = has_ticked (items);
  grammar->items = items;
  grammar->protos = g_ptr_array_new_with_free_func (em_proto_free);
  grammar->general = g_array_new (FALSE, FALSE, sizeof (EmGiven));
  grammar->units_said = g_array_new (FALSE, FALSE, sizeof (EmUnitsSaid));
  grammar->metals = g_array_new (FALSE, FALSE, sizeof (EmMetal));
  grammar->coatings = g_array_new (FALSE, FALSE, sizeof (EmMetal));
  for (guint i = 0; i <= n; i++)
    if (i == n || em_item (items, i)->type == EM_ITEM_LINE)
      {
        if (i > first)
          {
            read_line (&r, first, i);
            em_parts_end_line (&r);
          }
        else
          end_paragraph (&r);
        first = i + 1;
      }
  end_paragraph (&r);
  for (guint i = 0; i < r.waiting->len && r.current != NULL; i++)
    g_array_append_val (r.current->given, g_array_index (r.waiting, EmGiven, i));
  g_array_unref (r.waiting);
  em_rows_hand_out (grammar);
  em_parts_multiply (&r);
  em_metals_hand_out (grammar);
  em_coatings_hand_out (grammar);
  em_code_read_alone (grammar);
  return grammar;
}

void
em_grammar_free (EmGrammar *grammar)
{
  g_ptr_array_unref (grammar->protos);
  g_array_unref (grammar->general);
  g_array_unref (grammar->units_said);
  g_array_unref (grammar->metals);
  g_array_unref (grammar->coatings);
  g_free (grammar);
}
