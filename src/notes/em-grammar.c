/* em-grammar: sentences into proposed repairs and notes that govern all.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-grammar.h"

#include "em-govern.h"

#include <math.h>
#include <string.h>

enum
{
  HEAD_NOUN = 3,         /* a noun of this weight may begin another repair */
  STRONG_NOUN = 7,       /* a noun of this weight is a repair by itself */
  PREPOSITION_WINDOW = 3,
  OWN_PER_DEMOTED = 5,   /* weights count fivefold, of nouns after a preposition twofold */
  DEMOTED = 2
};

typedef struct
{
  EmGrammar *grammar;
  EmItems   *items;
  EmProto   *current;        /* what a continuation adds to, or NULL */
  EmProto   *heading;        /* gives its kind to the lines under it, or NULL */
  GArray    *waiting;        /* EmGiven for the next proposal: things near it */
  guint32    n_chains;
  guint      first, end;     /* the sentence */
  gboolean   is_bullet;      /* it begins a numbered or bulleted line */
  gboolean   is_line_start;
} Reader;

EmGiven
em_given_new (const char *field, const char *text, const EmItem *item)
{
  EmGiven given = { .field = { .field = field, .value = (double) NAN, .low = (double) NAN, .high = (double) NAN, .text = text,
                               .start = item->start, .length = item->length, .line = item->line },
                    .size_item = EM_NO_ITEM };

  return given;
}

static EmProto *
new_proto (void)
{
  EmProto *proto = g_new0 (EmProto, 1);

  proto->sizes = g_array_new (FALSE, FALSE, sizeof (guint));
  proto->given = g_array_new (FALSE, FALSE, sizeof (EmGiven));
  proto->noun = proto->count_item = proto->typical_item = proto->chamfer_item = EM_NO_ITEM;
  proto->count = (double) NAN;
  return proto;
}

static void
free_proto (gpointer data)
{
  EmProto *proto = data;

  g_array_unref (proto->sizes);
  g_array_unref (proto->given);
  g_free (proto);
}

static guint32
line_of (const Reader *r, guint i)
{
  return em_item (r->items, i)->line;
}

static gboolean
is_sized (const Reader *r, guint i)
{
  const guint32 apart = EM_ROLE_STOCK | EM_ROLE_CLEARANCE | EM_ROLE_HARDNESS;

  return em_item_is_measure (r->items, i) && !em_item (r->items, i)->is_used &&
         (em_item_size (r->items, i)->roles & apart) == 0;
}

/* A noun after a preposition names the place: "nick IN SIDEWALL". */
static gboolean
is_demoted (const Reader *r, guint i)
{
  for (guint k = i; k-- > r->first && k + PREPOSITION_WINDOW >= i;)
    {
      const EmItem *item = em_item (r->items, k);

      if (em_item_says (r->items, k, EM_SAYS_PREPOSITION) != NULL)
        return TRUE;
      if (item->type == EM_ITEM_SIZE || em_item_is_soft_break (r->items, k) ||
          (em_item_says (r->items, k, EM_SAYS_KIND) != NULL && em_item_says (r->items, k, EM_SAYS_PLACE) == NULL))
        return FALSE;
    }
  return FALSE;
}

/* "Lifter pocket: sidewall 2.0 LG": a noun before a colon names the place when another noun follows. */
static gboolean
is_before_colon (const Reader *r, guint i)
{
  if (i + 1 >= r->end || !em_item_is_sign (r->items, i + 1, ':'))
    return FALSE;
  for (guint k = i + 2; k < r->end && k <= i + 2 + PREPOSITION_WINDOW; k++)
    if (em_item_says (r->items, k, EM_SAYS_KIND) != NULL)
      return TRUE;
  return FALSE;
}

/* A noun of a repair; "3.0 OD" is a size's label instead. */
static gboolean
is_noun (const Reader *r, guint i)
{
  if (em_item_says (r->items, i, EM_SAYS_KIND) == NULL || em_item (r->items, i)->is_used)
    return FALSE;
  return em_item_says (r->items, i, EM_SAYS_LABEL) == NULL || i == 0 || em_item (r->items, i - 1)->type != EM_ITEM_SIZE;
}

static gboolean
is_verb (const Reader *r, guint i)
{
  return em_item_says (r->items, i, EM_SAYS_VERB) != NULL && !em_item (r->items, i)->is_used;
}

static gboolean
is_bullet_sign (const EmItem *item)
{
  return (item->type == EM_ITEM_SIGN || item->type == EM_ITEM_PHRASE) &&
         (item->sign == '-' || item->sign == 0xd7 || item->sign == 0x2022 || item->sign == 0xb7 || item->sign == '>' ||
          item->sign == 0x25cf || item->sign == 0x25aa);
}

static int
noun_weight (const Reader *r, guint i)
{
  const EmSense *noun = em_item_says (r->items, i, EM_SAYS_KIND);
  int best = 0;

  for (int k = 0; k < EM_N_NOTE_KINDS; k++)
    best = MAX (best, noun->weight[k]);
  return best;
}

/* Where the repair that begins at start ends: at the comma before a new noun, once sizes were given. */
static guint
end_of_segment (const Reader *r, guint start)
{
  guint soft = EM_NO_ITEM, last_size = EM_NO_ITEM;
  gboolean has_noun = FALSE, has_verb = FALSE;

  for (guint i = start; i < r->end; i++)
    {
      if (em_item_is_soft_break (r->items, i))
        {
          soft = i;
          has_verb = FALSE;
        }
      else if (is_sized (r, i))
        last_size = i;
      else if (is_verb (r, i))
        has_verb = TRUE;
      else if (is_noun (r, i) && noun_weight (r, i) >= HEAD_NOUN && (has_verb || !is_demoted (r, i)))
        {
          if (has_noun && soft != EM_NO_ITEM && last_size != EM_NO_ITEM && soft > last_size)
            return soft + 1;
          has_noun = TRUE;
        }
    }
  return r->end;
}

static void
add_noun (const Reader *r, EmProto *proto, guint i)
{
  const EmSense *sense = em_item_says (r->items, i, EM_SAYS_KIND);
  gboolean demoted = is_demoted (r, i) || is_before_colon (r, i);
  int best = 0;

  for (int k = 0; k < EM_N_NOTE_KINDS; k++)
    {
      proto->weight[k] += sense->weight[k] * (demoted ? DEMOTED : OWN_PER_DEMOTED);
      best = MAX (best, sense->weight[k]);
    }
  best = demoted ? 1 : best;
  if (best > proto->noun_weight)
    {
      proto->noun_weight = best;
      proto->noun = i;
      proto->is_slip = (em_item (r->items, i)->flags & EM_TOKEN_SLIP) != 0;
    }
  em_item (r->items, i)->is_used = TRUE;
}

static void
give_text (const Reader *r, EmProto *proto, const char *field, const char *text, guint i, EmReadState state, const char *reason)
{
  const EmItem *item = em_item (r->items, i);
  EmGiven given = em_given_new (field, text, item);

  given.field.state = state;
  given.field.reason = reason;
  if (g_ascii_isdigit (text[0]) && strlen (text) <= 4)
    {
      given.field.value = (double) g_ascii_strtoll (text, NULL, 10);
      given.field.text = NULL;
    }
  g_array_append_val (proto->given, given);
}

/* Labels that also mean something without a size beside them. */
static const guint32 modifiers = EM_ROLE_BUILD | EM_ROLE_WORN | EM_ROLE_FINISHED | EM_ROLE_PER_SIDE | EM_ROLE_ON_DIAMETER;

static void
add_phrase (const Reader *r, EmProto *proto, guint i)
{
  EmItem *item = em_item (r->items, i);
  const EmSense *sense;

  for (guint k = 0; k < item->phrase->n_senses; k++)
    {
      sense = item->phrase->sense[k];
      if (sense->set_field != NULL)
        {
          give_text (r, proto, sense->set_field, sense->set_value, i, sense->says == EM_SAYS_SET ? EM_READ_READ : EM_READ_INFERRED,
                     sense->says == EM_SAYS_SET ? NULL : "shape-from-word");
          item->is_used = TRUE;
        }
      if (sense->says == EM_SAYS_VERB || sense->says == EM_SAYS_SET || (sense->says == EM_SAYS_LABEL && (sense->roles & EM_ROLE_WORN) != 0))
        {
          for (int w = 0; w < EM_N_NOTE_KINDS; w++)
            proto->weight[w] += sense->weight[w] * OWN_PER_DEMOTED;
          item->is_used = TRUE;
        }
      if (sense->says == EM_SAYS_LABEL && (sense->roles & ~modifiers) == 0)
        item->is_used = TRUE;
      proto->has_worn |= sense->says == EM_SAYS_LABEL && (sense->roles & EM_ROLE_WORN) != 0;
      proto->is_equal |= sense->says == EM_SAYS_EQUAL;
      item->is_used |= sense->says == EM_SAYS_SAME || sense->says == EM_SAYS_EQUAL || sense->says == EM_SAYS_PLACE;
      if (sense->says == EM_SAYS_ACCESS)
        {
          give_text (r, proto, "access", sense->value, i, EM_READ_READ, NULL);
          item->is_used = TRUE;
        }
      if (sense->says == EM_SAYS_VERB)
        {
          proto->has_verb = TRUE;
          proto->has_build |= g_strcmp0 (sense->value, "build") == 0;
        }
      if ((sense->says == EM_SAYS_TYPICAL || sense->says == EM_SAYS_MANY) && proto->typical_item == EM_NO_ITEM)
        {
          proto->typical_item = i;
          item->is_used = TRUE;
        }
    }
}

static void
add_count (const Reader *r, EmProto *proto, guint i, double count)
{
  if (proto->count_item != EM_NO_ITEM)
    return;
  proto->count = count;
  proto->count_item = i;
  em_item (r->items, i)->is_used = TRUE;
}

/* Marks what stands round a count as used with it: brackets, "X", "PLCS", "QTY". */
static void
use_count_words (const Reader *r, guint i)
{
  for (guint k = i > r->first + 2 ? i - 2 : r->first; k < r->end && k <= i + 2; k++)
    if (k < i ? em_item_says (r->items, k, EM_SAYS_QUANTITY) != NULL || em_item_says (r->items, k, EM_SAYS_TYPICAL) != NULL
              : em_item_says (r->items, k, EM_SAYS_PLACES) != NULL || em_item_says (r->items, k, EM_SAYS_TYPICAL) != NULL ||
                  em_item_says (r->items, k, EM_SAYS_TIMES) != NULL)
      em_item (r->items, k)->is_used = TRUE;
}

static gboolean
has_count_word (const Reader *r, guint i)
{
  for (guint k = i > r->first + 2 ? i - 2 : r->first; k < r->end && k <= i + 2; k++)
    if (em_item_says (r->items, k, EM_SAYS_QUANTITY) != NULL || em_item_says (r->items, k, EM_SAYS_TYPICAL) != NULL ||
        em_item_says (r->items, k, EM_SAYS_PLACES) != NULL || em_item_says (r->items, k, EM_SAYS_TIMES) != NULL)
      return TRUE;
  return FALSE;
}

static gboolean
is_chamfer (const Reader *r, guint i)
{
  const EmSize *size = em_item_size (r->items, i), *next;

  if (i + 2 >= r->end || !size->is_whole || size->unit != EM_UNIT_NONE || em_item_says (r->items, i + 1, EM_SAYS_TIMES) == NULL ||
      em_item (r->items, i + 2)->type != EM_ITEM_SIZE)
    return FALSE;
  next = em_item_size (r->items, i + 2);
  return next->unit == EM_UNIT_DEGREE && (em_item (r->items, i + 1)->flags & EM_TOKEN_GLUED) == 0;
}

static void
add_size (const Reader *r, EmProto *proto, guint i)
{
  EmSize *size = em_item_size (r->items, i);

  if ((size->roles & EM_ROLE_COUNT) != 0)
    {
      if (proto->count_item == EM_NO_ITEM)
        proto->is_count_loose = !has_count_word (r, i);
      add_count (r, proto, i, (double) size->value.n);
      use_count_words (r, i);
      return;
    }
  /* "Bore #3" is a name. */
  if ((size->roles & EM_ROLE_REFERENCE) != 0 || (i > r->first && em_item_is_sign (r->items, i - 1, '#')))
    return;
  if (is_chamfer (r, i))
    {
      proto->chamfer_item = i;
      em_item (r->items, i)->is_used = TRUE;
      return;
    }
  if (proto->chamfer_item != EM_NO_ITEM && i == proto->chamfer_item + 2)
    {
      em_item (r->items, i)->is_used = TRUE;
      return;
    }
  /* "2 SETTINGS": a bare whole number of something unknown measures nothing. */
  if (size->is_whole && size->unit == EM_UNIT_NONE && size->label_item == G_MAXUINT32 && size->chain == 0 && size->roles == 0 &&
      i + 1 < r->end && em_item (r->items, i + 1)->type == EM_ITEM_UNKNOWN)
    return;
  g_array_append_val (proto->sizes, i);
}

static void
add_number_word (const Reader *r, EmProto *proto, guint i)
{
  const EmSense *number = em_item_says (r->items, i, EM_SAYS_NUMBER);

  for (guint k = i + 1; k < r->end && k <= i + 3; k++)
    if (em_item_says (r->items, k, EM_SAYS_KIND) != NULL || em_item_says (r->items, k, EM_SAYS_PLACES) != NULL)
      {
        proto->is_count_loose |= proto->count_item == EM_NO_ITEM;
        add_count (r, proto, i, g_ascii_strtod (number->value, NULL));
        use_count_words (r, i);
        return;
      }
}

static void
use_connectives (const Reader *r, guint i)
{
  EmItem *item = em_item (r->items, i);
  static const EmSays used[] = { EM_SAYS_TO, EM_SAYS_UNIT, EM_SAYS_SLOT, EM_SAYS_PLACES, EM_SAYS_MATERIAL };

  for (gsize k = 0; k < G_N_ELEMENTS (used); k++)
    item->is_used |= em_item_says (r->items, i, used[k]) != NULL;
}

/* Adds the items from first to end; nouns that name things near were used before. */
static void
add_items (Reader *r, EmProto *proto, guint first, guint end)
{
  guint in_slot = EM_NO_ITEM;

  if (proto->last == 0 && proto->first == 0)
    proto->first = first;
  proto->last = end - 1;
  for (guint i = first; i < end; i++)
    {
      EmItem *item = em_item (r->items, i);

      if (item->is_used && item->type != EM_ITEM_PHRASE)
        continue;
      if (item->type == EM_ITEM_SIZE)
        {
          if (in_slot != EM_NO_ITEM)
            em_item_size (r->items, i)->roles |= EM_ROLE_SLOT;
          add_size (r, proto, i);
        }
      if (em_item_is_soft_break (r->items, i))
        in_slot = EM_NO_ITEM;
      if (item->type != EM_ITEM_PHRASE)
        continue;
      if (em_item_says (r->items, i, EM_SAYS_SLOT) != NULL)
        in_slot = i;
      if (is_noun (r, i))
        add_noun (r, proto, i);
      if (em_item_says (r->items, i, EM_SAYS_NUMBER) != NULL)
        add_number_word (r, proto, i);
      if (!item->is_used || em_item_says (r->items, i, EM_SAYS_KIND) != NULL || em_item_says (r->items, i, EM_SAYS_LABEL) != NULL)
        add_phrase (r, proto, i);
      use_connectives (r, i);
    }
  for (guint k = 0; k < r->waiting->len; k++)
    g_array_append_val (proto->given, g_array_index (r->waiting, EmGiven, k));
  g_array_set_size (r->waiting, 0);
}

typedef struct
{
  guint    end;
  EmProto *proto;
} EmPart;

/* What a stretch holds, before anything is used. */
typedef struct
{
  int      best;         /* strongest noun's weight */
  guint    n_sizes, n_labelled;
  gboolean has_noun, has_verb, has_worn, has_damage, has_same, has_given;
} Content;

/* "broken": a set phrase that speaks for a kind. */
static gboolean
is_damage (const Reader *r, guint i)
{
  const EmSense *set = em_item_says (r->items, i, EM_SAYS_SET);

  for (int k = 0; set != NULL && set->set_field == NULL && k < EM_N_NOTE_KINDS; k++)
    if (set->weight[k] > 0)
      return TRUE;
  return FALSE;
}

static Content
weigh (const Reader *r, guint first, guint end)
{
  Content content = { 0 };

  for (guint i = first; i < end; i++)
    {
      const EmSense *noun = is_noun (r, i) ? em_item_says (r->items, i, EM_SAYS_KIND) : NULL;
      const EmSense *label = em_item_says (r->items, i, EM_SAYS_LABEL);

      if (noun != NULL)
        {
          content.has_noun = TRUE;
          for (int k = 0; k < EM_N_NOTE_KINDS && !is_demoted (r, i); k++)
            content.best = MAX (content.best, noun->weight[k]);
        }
      content.has_worn |= label != NULL && (label->roles & EM_ROLE_WORN) != 0;
      content.has_verb |= is_verb (r, i);
      content.has_damage |= is_damage (r, i);
      content.has_same |= em_item_says (r->items, i, EM_SAYS_SAME) != NULL;
      content.has_given |= (em_item_says (r->items, i, EM_SAYS_SET) != NULL && !is_damage (r, i)) || em_item_says (r->items, i, EM_SAYS_ACCESS) != NULL ||
                           em_item_says (r->items, i, EM_SAYS_EQUAL) != NULL || em_item_says (r->items, i, EM_SAYS_MANY) != NULL ||
                           em_item_says (r->items, i, EM_SAYS_TYPICAL) != NULL;
      if (em_item (r->items, i)->type == EM_ITEM_SIZE && (em_item_size (r->items, i)->roles & EM_ROLE_COUNT) != 0)
        content.has_given = TRUE;
      if (is_sized (r, i))
        {
          content.n_sizes++;
          content.n_labelled += em_item_size (r->items, i)->label_item != G_MAXUINT32;
        }
    }
  return content;
}

static EmProto *
start_proto (Reader *r)
{
  EmProto *proto = new_proto ();

  g_ptr_array_add (r->grammar->protos, proto);
  r->current = proto;
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
}

/* Whether a stretch without a noun says more of the current proposal. */
static gboolean
continues (const Reader *r, const Content *content, guint first)
{
  guint32 line;

  if (r->current == NULL || (content->n_sizes == 0 && !content->has_given))
    return FALSE;
  line = line_of (r, r->current->last);
  if (line_of (r, first) == line)
    return TRUE;
  return line_of (r, first) == line + 1 && !r->is_bullet &&
         (r->current->sizes->len == 0 || content->n_sizes == content->n_labelled);
}

/* "EDGE NICKS:" at the end of a line, or "EDGE NICKS" with bullets under it. */
static gboolean
is_heading_line (const Reader *r, guint end)
{
  guint n = r->items->items->len;

  if (end == r->first || (end < n && em_item (r->items, end)->type != EM_ITEM_LINE))
    return FALSE;
  if (em_item_is_sign (r->items, end - 1, ':'))
    return TRUE;
  return end + 2 < n && is_bullet_sign (em_item (r->items, end + 1)) && em_item (r->items, end + 2)->type == EM_ITEM_SIZE;
}

static void
set_heading (Reader *r, guint first, guint end)
{
  EmProto *heading = new_proto ();

  if (r->heading != NULL)
    free_proto (r->heading);
  add_items (r, heading, first, end);
  r->heading = heading;
  r->current = NULL;
}

/* One segment: a new proposal, more of the current one, a heading, or nothing (it stays unused). Returns the proposal. */
static EmProto *
read_segment (Reader *r, guint first, guint end)
{
  Content content = weigh (r, first, end);
  gboolean is_repair = content.has_noun && (content.best >= STRONG_NOUN || content.n_sizes > 0 ||
                                            (content.best > 0 && (content.has_verb || content.has_worn || content.has_damage)));
  EmProto *proto, *before = r->current;

  /* "PUNCH TIP BROKEN OFF .12 X .08": damage with sizes needs no noun. */
  is_repair |= content.has_damage && content.n_sizes > 0;
  if (!is_repair && content.has_noun && before != NULL && line_of (r, first) == line_of (r, before->last))
    {
      /* ", corner of slide": says where the repair before it is. */
      for (guint i = first; i < end; i++)
        em_item (r->items, i)->is_used |= is_noun (r, i) || em_item_says (r->items, i, EM_SAYS_PLACE) != NULL;
      return before;
    }
  if (is_repair && content.n_sizes == 0 && is_heading_line (r, end))
    {
      set_heading (r, first, end);
      return NULL;
    }
  if (is_repair)
    {
      proto = start_proto (r);
      proto->may_merge = before != NULL && (line_of (r, first) == line_of (r, before->last) ||
                                            (line_of (r, first) == line_of (r, before->last) + 1 && !r->is_bullet));
    }
  else if (content.has_same && before != NULL)
    borrow_kind (proto = start_proto (r), before, "heading");
  else if (r->heading != NULL && content.n_sizes > 0 && (r->is_bullet || r->current == NULL))
    borrow_kind (proto = start_proto (r), r->heading, "heading");
  else if (continues (r, &content, first))
    proto = r->current;
  else if (content.has_verb && content.n_sizes > 0)
    proto = start_proto (r);
  else
    return NULL;
  if (is_repair && r->is_line_start && r->heading != NULL)
    {
      free_proto (r->heading);
      r->heading = NULL;
    }
  add_items (r, proto, first, end);
  return proto;
}

static void
hand_out (Reader *r, const EmLoose *loose, EmProto *proto)
{
  EmGiven given = loose->given;
  EmReadField *field = &given.field;

  if (loose->is_general || (proto == NULL && !loose->is_near))
    {
      if (!loose->is_general && field->reason == NULL && strcmp (field->field, "refuse") != 0 && strcmp (field->field, "finish") != 0)
        {
          field->state = EM_READ_INFERRED;
          field->reason = "own-line";
        }
      g_array_append_val (r->grammar->general, given);
      return;
    }
  if (proto == NULL && loose->is_near)
    {
      /* A thing near without its repair belongs to the repair on the same line, else to the next. */
      if (r->current != NULL && field->line <= line_of (r, r->current->last) + 1)
        g_array_append_val (r->current->given, given);
      else
        g_array_append_val (r->waiting, given);
      return;
    }
  if (proto != NULL)
    g_array_append_val (proto->given, given);
}

/* The label of a proposal: the first run of words that name a part of the tool. */
static void
read_label (Reader *r, EmProto *proto, guint first, guint end)
{
  for (guint i = first; i < end; i++)
    if (em_item_says (r->items, i, EM_SAYS_PLACE) != NULL)
      {
        const EmItem *from = em_item (r->items, i), *to = from;
        EmGiven label = em_given_new ("label", NULL, from);

        while (i + 1 < end && em_item_says (r->items, i + 1, EM_SAYS_PLACE) != NULL)
          to = em_item (r->items, ++i);
        label.field.length = to->start + to->length - from->start;
        g_array_append_val (proto->given, label);
        return;
      }
}

/* "Surface is chrome plated": the words round a note that governs are used with it when no repair claims them. */
static void
use_governing_words (const Reader *r, const GArray *loose, const GArray *parts)
{
  for (guint k = 0; k < parts->len; k++)
    if (g_array_index (parts, EmPart, k).proto != NULL)
      return;
  for (guint i = r->first; loose->len > 0 && i < r->end; i++)
    if (is_noun (r, i) || is_verb (r, i) || em_item_says (r->items, i, EM_SAYS_PLACE) != NULL)
      em_item (r->items, i)->is_used = TRUE;
}

static void
read_sentence (Reader *r)
{
  EmClause clause = { r->items, r->first, r->end, &r->n_chains };
  g_autoptr (GArray) loose = g_array_new (FALSE, FALSE, sizeof (EmLoose));
  g_autoptr (GArray) parts = g_array_new (FALSE, FALSE, sizeof (EmPart));
  guint k = 0;

  em_clause_mark_counts (&clause);
  em_clause_mark_chains (&clause);
  em_clause_mark_labels (&clause);
  em_govern_read (r->grammar, &clause, loose);
  for (guint first = r->first; first < r->end;)
    {
      guint end = end_of_segment (r, first);
      EmPart part = { end, read_segment (r, first, end) };

      if (part.proto != NULL)
        read_label (r, part.proto, first, end);
      g_array_append_val (parts, part);
      first = end;
      r->is_bullet = r->is_line_start = FALSE;
    }
  use_governing_words (r, loose, parts);
  for (guint i = 0; i < loose->len; i++)
    {
      const EmLoose *one = &g_array_index (loose, EmLoose, i);

      while (k + 1 < parts->len && one->item >= g_array_index (parts, EmPart, k).end)
        k++;
      hand_out (r, one, parts->len > 0 ? g_array_index (parts, EmPart, k).proto : NULL);
    }
}

/* "1.", "2)", "a)", "-", "•", "#3" at the head of a line: uses them up and returns the item after them. */
static guint
skip_bullet (Reader *r, guint i, guint end)
{
  const EmSense *word = em_item_says (r->items, i, EM_SAYS_GLUE);
  const EmItem *item;
  guint mark;

  /* "ITEM 1:" */
  if (word != NULL && g_strcmp0 (word->value, "item") == 0 && i + 2 < end)
    i++;
  item = em_item (r->items, i);
  mark = i + 1;

  if (is_bullet_sign (item))
    {
      em_item (r->items, i)->is_used = TRUE;
      r->is_bullet = TRUE;
      return i + 1;
    }
  if (item->type == EM_ITEM_SIGN && item->sign == '#' && mark < end)
    {
      i++;
      item = em_item (r->items, i);
      mark = i + 1;
    }
  if (mark >= end || !((item->type == EM_ITEM_SIZE && em_item_size (r->items, i)->is_whole && item->length <= 3) ||
                       (item->type != EM_ITEM_SIZE && item->type != EM_ITEM_SIGN && item->length == 1)))
    return i;
  if ((em_item_is_sign (r->items, mark, '.') || em_item_is_sign (r->items, mark, ')') || em_item_is_sign (r->items, mark, ':')) &&
      (em_item (r->items, mark)->flags & EM_TOKEN_GLUED) != 0 && mark + 1 < end)
    {
      em_item (r->items, i)->is_used = TRUE;
      r->is_bullet = TRUE;
      return mark + 1;
    }
  return i;
}

/* A full stop ends a sentence unless it marks an abbreviation in front of more of the same. */
static gboolean
ends_sentence (const Reader *r, guint i)
{
  const EmItem *next, *before;
  static const EmSays abbreviated[] = { EM_SAYS_LABEL, EM_SAYS_PLACES, EM_SAYS_UNIT, EM_SAYS_APPROXIMATE, EM_SAYS_TYPICAL,
                                        EM_SAYS_REFERENCE, EM_SAYS_MATERIAL, EM_SAYS_MINIMUM, EM_SAYS_MAXIMUM, EM_SAYS_QUANTITY };

  if (em_item_is_sign (r->items, i, ';'))
    return TRUE;
  if (!em_item_is_sign (r->items, i, '.') || i == 0)
    return FALSE;
  if (i + 1 >= r->items->items->len)
    return TRUE;
  next = em_item (r->items, i + 1);
  before = em_item (r->items, i - 1);
  if ((next->flags & EM_TOKEN_GLUED) != 0 && next->type != EM_ITEM_LINE)
    return FALSE;
  for (gsize k = 0; k < G_N_ELEMENTS (abbreviated); k++)
    if ((before->length <= 6 || abbreviated[k] == EM_SAYS_REFERENCE) && em_item_says (r->items, i - 1, abbreviated[k]) != NULL)
      return (next->flags & EM_TOKEN_CAPITAL) != 0 && next->length > 1 &&
             ((before->flags & EM_TOKEN_UPPER) == 0 || em_item_says (r->items, i + 1, EM_SAYS_VERB) != NULL ||
              em_item_says (r->items, i + 1, EM_SAYS_FINISH) != NULL || em_item_says (r->items, i + 1, EM_SAYS_REFUSE) != NULL);
  return TRUE;
}

/* "The core is fine, cavity has a crack": the part between commas that says nothing is to be done is left out whole. */
static void
read_parts (Reader *r, guint first, guint end)
{
  guint start = first, part = first;

  for (guint i = first; i <= end; i++)
    {
      gboolean is_end = i == end || em_item_is_soft_break (r->items, i);

      if (!is_end && em_item_says (r->items, i, EM_SAYS_SOUND) != NULL)
        {
          guint stop = i;

          while (stop < end && !em_item_is_soft_break (r->items, stop))
            stop++;
          r->first = start;
          r->end = part;
          if (part > start)
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

static void
read_line (Reader *r, guint first, guint end)
{
  r->is_bullet = FALSE;
  r->is_line_start = TRUE;
  first = skip_bullet (r, first, end);
  for (guint i = first; i <= end; i++)
    if (i == end || ends_sentence (r, i))
      {
        if (i > first)
          read_parts (r, first, i);
        first = i + 1;
        r->is_line_start = FALSE;
      }
}

/* Joins the grammar's record for what follows a blank line: nothing continues over it. */
static void
end_paragraph (Reader *r)
{
  if (r->heading != NULL)
    free_proto (r->heading);
  r->heading = NULL;
}

EmGrammar *
em_grammar_read (EmItems *items)
{
  EmGrammar *grammar = g_new0 (EmGrammar, 1);
  Reader r = { .grammar = grammar, .items = items, .waiting = g_array_new (FALSE, FALSE, sizeof (EmGiven)) };
  guint first = 0, n = items->items->len;

  grammar->items = items;
  grammar->protos = g_ptr_array_new_with_free_func (free_proto);
  grammar->general = g_array_new (FALSE, FALSE, sizeof (EmGiven));
  for (guint i = 0; i <= n; i++)
    if (i == n || em_item (items, i)->type == EM_ITEM_LINE)
      {
        if (i > first)
          read_line (&r, first, i);
        else
          end_paragraph (&r);
        first = i + 1;
      }
  end_paragraph (&r);
  for (guint i = 0; i < r.waiting->len && r.current != NULL; i++)
    g_array_append_val (r.current->given, g_array_index (r.waiting, EmGiven, i));
  g_array_unref (r.waiting);
  return grammar;
}

void
em_grammar_free (EmGrammar *grammar)
{
  g_ptr_array_unref (grammar->protos);
  g_array_unref (grammar->general);
  g_free (grammar);
}
