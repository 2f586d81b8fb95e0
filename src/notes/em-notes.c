/* em-notes: a customer's words read into proposed features.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-writer.h"

#include "em-aside.h"
#include "em-merge.h"
#include "em-notes-set.h"
#include "em-resolve.h"
#include "em-unused.h"
#include "em-weak.h"

#include <math.h>
#include <string.h>

enum { STRANGE_WINDOW = 60 /* items of a repair that are looked over for words not known */, STRANGE_MIN = 4 /* bytes of one */ };
enum { GENERAL_WINDOW = 32 /* notes that govern looked over for the same once more */ };

enum { WEAK_NOUN = 3 /* a noun below this weight hardly tells the kind */ };


EmReadField
em_writer_field (const EmWriter *w, int feature, const char *field, guint item)
{
  EmReadField f = { .feature = feature, .field = field, .value = (double) NAN, .low = (double) NAN, .high = (double) NAN };

  if (item != EM_NO_ITEM)
    {
      f.start = em_item (w->items, item)->start;
      f.length = em_item (w->items, item)->length;
      f.line = em_item (w->items, item)->line;
    }
  return f;
}

/* The size and the label right beside it. */
static void
widen (const EmWriter *w, EmReadField *field, guint item)
{
  guint label = em_item_size (w->items, item)->label_item;
  const EmItem *size = em_item (w->items, item), *word;

  if (label == G_MAXUINT32 || (label != item + 1 && label + 1 != item))
    return;
  word = em_item (w->items, label);
  field->start = MIN (size->start, word->start);
  field->length = MAX (size->start + size->length, word->start + word->length) - field->start;
}

EmReadField
em_writer_fitted (const EmWriter *w, int feature, const EmFitted *fitted)
{
  EmReadField field = em_writer_field (w, feature, fitted->field, fitted->words != EM_NO_ITEM ? fitted->words : fitted->item);

  field.value = fitted->value;
  field.low = fitted->low;
  field.high = fitted->high;
  field.text = fitted->text;
  field.state = fitted->state;
  field.reason = fitted->reason;
  if (fitted->item != EM_NO_ITEM)
    widen (w, &field, fitted->words != EM_NO_ITEM ? fitted->words : fitted->item);
  return field;
}

double
em_writer_mm (const EmWriter *w, guint item)
{
  return em_fraction_in_mm (em_item_size (w->items, item)->value, em_item_size (w->items, item)->unit);
}

/* ---- one feature ---- */

static void
guess (EmWriter *w, const EmReadField *field, const EmFitted *fitted)
{
  const EmSize *size = em_item_size (w->items, fitted->item);
  EmReadField set = *field;

  set.reason = "answered";
  set.state = EM_READ_READ;
  set.value = em_fraction_in_mm (size->value, EM_UNIT_MM) * fitted->factor;
  g_array_append_val (w->as_mm, set);
  set.value = em_fraction_in_mm (size->value, EM_UNIT_INCH) * fitted->factor;
  g_array_append_val (w->as_inch, set);
  if (w->first_guess == EM_NO_ITEM)
    {
      w->first_guess = fitted->item;
      w->guess_feature = field->feature;
    }
  else if (w->guess_feature != field->feature)
    w->guess_feature = 0;
}

static void
add_fitted (EmWriter *w, int feature, const EmFitted *fitted)
{
  EmReadField field = em_writer_fitted (w, feature, fitted);
  const EmSize *size;

  if (fitted->item == EM_NO_ITEM)
    {
      /* A form told by the sizes: it stands where the kind does. */
      field.line = w->fields->len > 0 ? g_array_index (w->fields, EmReadField, 0).line : 1;
      g_array_append_val (w->fields, field);
      return;
    }
  size = em_item_size (w->items, fitted->item);
  em_item (w->items, fitted->item)->is_used = TRUE;
  g_array_append_val (w->fields, field);
  if (size->is_asked)
    guess (w, &field, fitted);
  if (g_strcmp0 (size->reason, "dual-mismatch") == 0)
    em_writer_ask_dual (w, feature, fitted);
  /* Among decimal commas "12,125" is one, too; one "1,250", with a nought that tells nothing, may still be thousands. */
  if ((size->flags & EM_TOKEN_THREE) != 0 && (!w->has_decimal_comma || (w->n_three == 1 && size->value.n % 10 == 0)))
    em_writer_ask_comma (w, feature, fitted);
}

static gboolean
has_field (const EmWriter *w, const char *name)
{
  for (guint i = 0; i < w->fields->len; i++)
    if (strcmp (g_array_index (w->fields, EmReadField, i).field, name) == 0)
      return TRUE;
  return FALSE;
}

static EmReadField
given_field (const EmWriter *w, int feature, const EmGiven *given)
{
  EmReadField field = given->field;

  field.feature = feature;
  if (given->size_item != EM_NO_ITEM)
    {
      const EmSize *size = em_item_size (w->items, given->size_item);

      field.value = em_writer_mm (w, given->size_item);
      field.low = em_fraction_in_mm (size->low, size->unit);
      field.high = em_fraction_in_mm (size->high, size->unit);
      if (field.reason == NULL && size->reason != NULL)
        {
          field.reason = size->reason;
          field.state = EM_READ_INFERRED;
        }
      widen (w, &field, given->size_item);
    }
  /* What lies near is told by words that may as well be of something else. */
  else if (strcmp (field.field, "near") == 0 && field.state == EM_READ_READ)
    {
      field.state = EM_READ_INFERRED;
      field.reason = "from-words";
    }
  else if (field.text == NULL && isnan (field.value))
    field.text = g_string_chunk_insert_len (w->result->strings, w->text + field.start, field.length);
  return field;
}

/* Fields of the feature stand on every kind; one of a kind's own must be there, and have the option. */
static gboolean
suits (const EmReadField *given, int kind)
{
  static const char *const own[] = { "ends", "side", "form", "wraps", "corners", "radius_to" };
  const EmKind *of = kind >= 0 ? em_kind_find (em_note_kinds[kind]) : NULL;

  for (gsize i = 0; i < G_N_ELEMENTS (own); i++)
    if (strcmp (own[i], given->field) == 0)
      {
        /* Forms are told by the fit. */
        if (of == NULL || strcmp (given->field, "form") == 0)
          return FALSE;
        for (int k = 0; k < of->n_fields; k++)
          if (strcmp (of->fields[k].id, given->field) == 0)
            return of->fields[k].options == NULL || given->text == NULL || g_strv_contains (of->fields[k].options, given->text);
        return FALSE;
      }
  return TRUE;
}

static int
compare_position (gconstpointer a, gconstpointer b)
{
  const EmReadField *p = a, *q = b;

  if ((p->state == EM_READ_MISSING) != (q->state == EM_READ_MISSING))
    return p->state == EM_READ_MISSING ? 1 : -1;
  if ((strcmp (p->field, "kind") == 0) != (strcmp (q->field, "kind") == 0))
    return strcmp (p->field, "kind") == 0 ? -1 : 1;
  return p->start < q->start ? -1 : p->start > q->start ? 1 : strcmp (p->field, q->field);
}

/* A word among those of the repair that no lexicon has, and that may be what it is. */
static gboolean
has_strange_word (const EmWriter *w, const EmProto *proto)
{
  for (guint i = proto->first; i <= proto->last && i < proto->first + STRANGE_WINDOW; i++)
    {
      const EmItem *item = em_item (w->items, i);

      if (item->type == EM_ITEM_UNKNOWN && item->length >= STRANGE_MIN && !item->is_talk && g_ascii_isalpha (w->items->text[item->start]))
        return TRUE;
    }
  return FALSE;
}

/* "dents on the lip edge 1.5 long, 0.3 and 0.2", "spot face low 0.4": what looks like a place to fill may be an edge, or built up. */
static gboolean
is_doubtful_pit (const EmWriter *w, const EmProto *proto, int kind)
{
  static const char *const not[] = { "not", "no", "none", "nicht", "kein", "keine", "ok", "okay" };

  if (kind != RECESS)
    return FALSE;
  if ((proto->roles & (EM_ROLE_BUILD | EM_ROLE_ADD | EM_ROLE_WORN | EM_ROLE_PER_SIDE | EM_ROLE_ON_DIAMETER)) != 0 || proto->has_build || proto->has_worn)
    return TRUE;
  for (guint i = proto->first; i <= proto->last && i < proto->first + STRANGE_WINDOW; i++)
    {
      const EmSense *noun = em_item_says (w->items, i, EM_SAYS_KIND);

      if (em_item_is_any_word_of (w->items, i, not, G_N_ELEMENTS (not)) || (i != proto->noun && noun != NULL && noun->weight[EDGE_NICK] + noun->weight[WORN_CORNER] > 0))
        return TRUE;
    }
  return FALSE;
}

static void
add_kind (EmWriter *w, int feature, const EmProto *proto, int kind, gboolean is_close)
{
  EmReadField field = em_writer_field (w, feature, "kind", proto->noun != EM_NO_ITEM ? proto->noun : proto->first);

  field.text = em_note_kinds[kind];
  field.line = em_item (w->items, proto->first)->line;
  field.reason = proto->kind_reason != NULL ? proto->kind_reason : proto->is_slip
                 ? ((em_item (w->items, proto->noun)->flags & EM_TOKEN_SLIP) != 0 ? "spelling" : "compound")
                   : proto->noun_weight < 5 || proto->is_part || is_close ||
                     (proto->kinds & (proto->kinds - 1)) != 0 || (kind == GROOVE && proto->has_fill) /* that was cut, or that was torn */ ? "from-words"
                 : proto->sizes->len == 0 ? "no-sizes" : NULL;
  /* Told by what became of it alone. */
  if (field.reason == NULL && proto->noun == EM_NO_ITEM)
    field.reason = "from-words";
  if (field.reason == NULL && is_doubtful_pit (w, proto, kind))
    field.reason = "from-words";
  if (field.reason == NULL && has_strange_word (w, proto))
    field.reason = "strange-word";
  field.state = field.reason != NULL ? EM_READ_INFERRED : EM_READ_READ;
  g_array_append_val (w->fields, field);
}

/* The item that begins at the byte is unused after all. */
static void
free_words (const EmWriter *w, guint32 start)
{
  guint low = 0, high = w->items->items->len;

  while (low < high)
    {
      guint middle = low + (high - low) / 2;
      if (em_item (w->items, middle)->start < start)
        low = middle + 1;
      else
        high = middle;
    }
  if (low < w->items->items->len && em_item (w->items, low)->start == start)
    em_item (w->items, low)->is_used = FALSE;
}

/* "weld both ends of slide where edge worn": two of what no end is wrapped of. */
static void
count_ends (EmWriter *w, const EmReadField *given, int kind)
{
  EmReadField count = *given;

  if (strcmp (given->field, "wraps") != 0 || given->value != 2 || kind < 0 || kind == RIB || kind == DAM || kind == BORE ||
      has_field (w, "count"))
    return;
  count.field = "count";
  count.text = NULL;
  count.value = 2;
  count.state = EM_READ_INFERRED;
  count.reason = "from-words";
  g_array_append_val (w->fields, count);
}

/* "deep inside the housing, access is restricted": what is told of the access itself says more. */
static gboolean
is_outdone_access (const EmProto *proto, const EmReadField *field)
{
  if (strcmp (field->field, "access") != 0 || g_strcmp0 (field->text, "deep") != 0)
    return FALSE;
  for (guint i = 0; i < proto->given->len; i++)
    {
      const EmReadField *other = &g_array_index (proto->given, EmGiven, i).field;

      if (strcmp (other->field, "access") == 0 && g_strcmp0 (other->text, "restricted") == 0)
        return TRUE;
    }
  return FALSE;
}

static void
add_given (EmWriter *w, int feature, const EmProto *proto, int kind)
{
  /* "one rib": a number word for one is what is asked for anyway. */
  if (proto->count_item != EM_NO_ITEM && !(proto->count == 1 &&
                                           em_item_says (w->items, proto->count_item, EM_SAYS_NUMBER) != NULL))
    {
      EmReadField count = em_writer_field (w, feature, "count", proto->count_item);

      count.value = proto->count;
      /* "cavities 1-4: two each" */
      if (proto->is_count_loose || proto->is_per_part)
        {
          count.state = EM_READ_INFERRED;
          count.reason = "from-words";
        }
      g_array_append_val (w->fields, count);
    }
  for (guint i = 0; i < proto->given->len; i++)
    {
      const EmGiven *given = &g_array_index (proto->given, EmGiven, i);
      EmReadField field = given_field (w, feature, given);

      /* "outer corner rounded over 26 mm": a straight edge runs round nothing. */
      if (strcmp (field.field, "side") == 0 && has_field (w, "length") && !has_field (w, "diameter"))
        continue;
      if (is_outdone_access (proto, &field))
        continue;
      /* Of several repairs another may be the one that is hard to reach. */
      if (strcmp (field.field, "access") == 0 && w->grammar->protos->len > 1 && field.state == EM_READ_READ)
        {
          field.state = EM_READ_INFERRED;
          field.reason = "from-words";
        }
      if (!has_field (w, field.field) && suits (&field, kind))
        g_array_append_val (w->fields, field);
      else
        count_ends (w, &field, kind);
      /* "dam, ends tapered", which no dam has, "bore is oval": the words stay visible. */
      if (kind >= 0 && ((strcmp (field.field, "ends") == 0 && !has_field (w, "ends")) ||
                             (kind != RECESS && g_strcmp0 (field.text, "ellipsoid") == 0)))
        free_words (w, field.start);
      if (given->size_item != EM_NO_ITEM && em_item_size (w->items, given->size_item)->is_asked)
        {
          EmFitted fitted = { .field = field.field, .factor = 1, .item = given->size_item, .words = EM_NO_ITEM };

          guess (w, &field, &fitted);
        }
    }
}

static void
add_missing_field (EmWriter *w, int feature, const char *name)
{
  EmReadField field = em_writer_field (w, feature, name, EM_NO_ITEM);

  field.state = EM_READ_MISSING;
  field.line = g_array_index (w->fields, EmReadField, 0).line;
  g_array_append_val (w->fields, field);
}

static const EmReadField *
written_field (const EmWriter *w, const char *name)
{
  for (guint i = 0; i < w->fields->len; i++)
    if (strcmp (g_array_index (w->fields, EmReadField, i).field, name) == 0)
      return &g_array_index (w->fields, EmReadField, i);
  return NULL;
}

/* "ends tapered": how long they are, which only that choice asks for. */
static gboolean
is_asked_for_by_choice (const EmWriter *w, const EmKind *kind, const EmField *field)
{
  const EmReadField *choice = field->shown_when != NULL && field->is_required ? written_field (w, field->shown_when) : NULL;
  const EmField *options = choice != NULL ? &kind->fields[em_kind_field (kind, field->shown_when)] : NULL;

  for (int k = 0; options != NULL && options->options[k] != NULL; k++)
    if (g_strcmp0 (choice->text, options->options[k]) == 0)
      return (field->shown_mask & (1u << k)) != 0;
  return FALSE;
}

static void
add_missing (EmWriter *w, int feature, const EmFit *fit)
{
  const EmKind *kind = em_kind_find (em_note_kinds[fit->kind]);
  const char *missing[6];
  guint n = em_fit_missing (fit, missing, G_N_ELEMENTS (missing));

  for (guint i = 0; i < n; i++)
    add_missing_field (w, feature, missing[i]);
  for (int i = 0; kind != NULL && i < kind->n_fields; i++)
    if (is_asked_for_by_choice (w, kind, &kind->fields[i]) && written_field (w, kind->fields[i].id) == NULL)
      add_missing_field (w, feature, kind->fields[i].id);
}

/* The feature that the proposal refers to: the one before, or by its number in the list. */
static const EmFit *
fit_referred_to (const EmWriter *w, const EmProto *proto)
{
  guint at = (guint) (proto->like % EM_LISTED_KEPT);

  return proto->like != 0 && w->listed[at].head == proto->like ? &w->listed[at].fit : &w->last_fit;
}

/* "SAME, BUT 1.10 LG": what is not told anew is the feature's before. */
static void
fit_same (const EmFit *like, EmFit *fit)
{
  guint n_questions = 0;

  if (fit->kind != like->kind)
    return;
  for (guint i = 0; i < like->n_fitted && fit->n_fitted < EM_FIT_MAX; i++)
    if (em_fit_find (fit, like->fitted[i].field) == NULL)
      {
        EmFitted *fitted = &fit->fitted[fit->n_fitted++];

        *fitted = like->fitted[i];
        fitted->state = EM_READ_INFERRED;
        fitted->reason = "same-as-before";
      }
  for (guint i = 0; i < fit->n_questions; i++)
    if ((strcmp (fit->question[i].code, "second-leg") != 0 || em_fit_find (fit, "leg_b") == NULL) &&
        (strcmp (fit->question[i].code, "which-face") != 0 || em_fit_find (fit, "length") == NULL))
      fit->question[n_questions++] = fit->question[i];
  fit->n_questions = n_questions;
}

/* A bore or pin with neither wear nor build-up told may as well be something to fill, or only a place. */
static gboolean
lacks_work (const EmFit *fit)
{
  for (guint i = 0; i < fit->n_questions; i++)
    if (strcmp (fit->question[i].code, "side-or-diameter") == 0)
      return FALSE;
  return (fit->kind == BORE || fit->kind == PIN) && em_fit_find (fit, "worn") == NULL &&
         em_fit_find (fit, "build") == NULL;
}

static void
doubt_all (EmWriter *w, const char *reason)
{
  for (guint i = 0; i < w->fields->len; i++)
    if (g_array_index (w->fields, EmReadField, i).state == EM_READ_READ)
      {
        g_array_index (w->fields, EmReadField, i).state = EM_READ_INFERRED;
        g_array_index (w->fields, EmReadField, i).reason = reason;
      }
}

/* "(the drawing shows the same pin as ⌀22)": it may be the one before, and what both tell otherwise is sure of neither. */
static void
doubt_same (EmWriter *w, int feature)
{
  guint first, last;

  doubt_all (w, "maybe-one");
  em_read_result_range (w->result, feature - 1, &first, &last);
  for (guint i = first; i < last; i++)
    {
      EmReadField *before = &g_array_index (w->result->fields, EmReadField, i);

      for (guint k = 0; before->state == EM_READ_READ && before->text == NULL && k < w->fields->len; k++)
        {
          const EmReadField *now = &g_array_index (w->fields, EmReadField, k);

          if (strcmp (now->field, before->field) != 0 || now->text != NULL || now->value == before->value)
            continue;
          before->state = EM_READ_INFERRED;
          before->reason = "said-twice";
        }
    }
}

static void
doubt_kind (EmWriter *w, const char *reason)
{
  EmReadField *kind = &g_array_index (w->fields, EmReadField, 0);

  if (kind->state != EM_READ_READ)
    return;
  kind->state = EM_READ_INFERRED;
  kind->reason = reason;
}

/* Another kind is nearly as likely, and would give the sizes other fields. */
static void
doubt_fields (EmFit *fit)
{
  for (guint i = 0; i < fit->n_fitted; i++)
    if (fit->fitted[i].state == EM_READ_READ)
      {
        fit->fitted[i].state = EM_READ_INFERRED;
        fit->fitted[i].reason = "unsure-kind";
      }
}

/* The kind and the fields that its sizes fill. */
static void
write_fitted (EmWriter *w, int feature, const EmProto *proto, int kind, gboolean is_close, EmFit *fit)
{
  add_kind (w, feature, proto, kind, is_close);
  em_fit_sizes (w->items, proto, kind, fit);
  if (proto->is_same)
    fit_same (fit_referred_to (w, proto), fit);
  if (lacks_work (fit))
    doubt_kind (w, "no-work");
  if (fit->has_unplaced)
    doubt_kind (w, "left-over");
  if (is_close || lacks_work (fit) || proto->noun_weight < WEAK_NOUN)
    doubt_fields (fit);
  for (guint i = 0; i < fit->n_fitted; i++)
    add_fitted (w, feature, &fit->fitted[i]);
}

/* "EDGE NICKS, .125 LG X .03 DP": several, and how many is not told. */
static gboolean
is_uncounted (const EmWriter *w, const EmProto *proto)
{
  /* What comes in numbers, by names that stand for one each: not "edges" or "sides". */
  static const struct { int kind; gint8 least; } counted[] = { { EDGE_NICK, 7 }, { WORN_CORNER, 8 }, { BORE, 4 }, { PIN, 5 }, { RECESS, 8 },
                                                                 { GROOVE, 9 } };
  const EmItem *item = proto->noun != EM_NO_ITEM ? em_item (w->items, proto->noun) : NULL;
  const EmSense *noun = item != NULL ? em_item_says (w->items, proto->noun, EM_SAYS_KIND) : NULL;
  const char *end = item != NULL ? w->text + item->start + item->length : NULL;

  if (noun == NULL || noun->value != NULL || proto->count_item != EM_NO_ITEM || proto->is_same || proto->kind_reason != NULL || item->length < 4 ||
      proto->is_one_of)
    return FALSE;
  if (em_item_says (w->items, proto->noun, EM_SAYS_PLURAL) != NULL)
    return TRUE;
  if ((item->phrase->languages & ~1u) != 0 || g_ascii_tolower (end[-1]) != 's' || g_ascii_tolower (end[-2]) == 's' ||
      !g_ascii_isalpha (end[-2]) /* "shaft's worn" */)
    return FALSE;
  for (gsize k = 0; k < G_N_ELEMENTS (counted); k++)
    if (noun->weight[counted[k].kind] >= counted[k].least)
      return TRUE;
  return FALSE;
}

static void
write_questions (EmWriter *w, int feature, const EmProto *proto, const EmFit *fit)
{
  em_writer_ask_fit (w, feature, fit);
  if (proto->chamfer_item != EM_NO_ITEM)
    em_writer_ask_chamfer (w, feature, proto->chamfer_item);
  if (proto->typical_item != EM_NO_ITEM && proto->count_item == EM_NO_ITEM)
    em_writer_ask_count (w, feature, proto->typical_item);
  else if (is_uncounted (w, proto))
    em_writer_ask_count (w, feature, proto->noun);
}

/* How large a damage is that nobody says what it is: as long as its first size, and as wide as the other. */
static void
write_extent (EmWriter *w, int feature, const EmProto *proto)
{
  static const char *const fields[] = { "length", "width" };

  for (guint i = 0; i < proto->sizes->len && i < G_N_ELEMENTS (fields); i++)
    {
      guint item = g_array_index (proto->sizes, guint, i);
      EmFitted fitted = { .field = fields[i], .factor = 1, .item = item, .words = EM_NO_ITEM, .reason = "from-words", .state = EM_READ_INFERRED,
                          .value = em_fraction_in_mm (em_item_size (w->items, item)->value, em_item_size (w->items, item)->unit),
                          .low = (double) NAN, .high = (double) NAN };

      add_fitted (w, feature, &fitted);
    }
}

static void
write_feature (EmWriter *w, const EmProto *proto)
{
  gboolean is_close;
  int feature = ++w->result->n_features, second, kind = em_fit_kind (w->items, proto, &second, &is_close);
  EmReadSpan span = { em_item (w->items, proto->first)->start, 0, em_item (w->items, proto->first)->line, FALSE };
  const EmItem *last = em_item (w->items, proto->last);
  EmFit fit = { .kind = -1 };

  span.length = last->start + last->length - span.start;
  g_array_append_val (w->result->spans, span);
  g_array_set_size (w->fields, 0);
  /* "Cav 2 has the same, 1.4 long" */
  if (proto->is_same && proto->kind_reason != NULL && fit_referred_to (w, proto)->kind >= 0)
    {
      kind = fit_referred_to (w, proto)->kind;
      second = -1;
    }
  if (kind >= 0)
    write_fitted (w, feature, proto, kind, is_close, &fit);
  else if (proto->is_unclear)
    write_extent (w, feature, proto);
  add_given (w, feature, proto, kind);
  /* "raise floor .012, pocket 1.00 x .625": the second is not whole, so they may be one. */
  if (kind >= 0 && !fit.is_complete && w->last_fit.kind >= 0 && proto->may_merge && w->last_line == span.line)
    doubt_all (w, "maybe-one");
  /* "The pocket is 6 wide, 15 deep": it may be no repair, or another. */
  if (kind >= 0 && !fit.is_complete && fit.n_questions == 0)
    doubt_all (w, "incomplete");
  if (proto->is_same && proto->kind_reason == NULL)
    doubt_same (w, feature);
  if (kind >= 0)
    add_missing (w, feature, &fit);
  g_array_sort (w->fields, compare_position);
  g_array_append_vals (w->result->fields, w->fields->data, w->fields->len);
  write_questions (w, feature, proto, &fit);
  for (guint i = 0; kind < 0 && i < proto->sizes->len; i++)
    em_item (w->items, g_array_index (proto->sizes, guint, i))->is_used = TRUE;
  if (kind < 0 || second >= 0)
    em_writer_ask_kind (w, feature, proto, kind, second);
  w->last_fit = fit;
  if (proto->head != 0)
    {
      w->listed[proto->head % EM_LISTED_KEPT].head = proto->head;
      w->listed[proto->head % EM_LISTED_KEPT].fit = fit;
    }
  w->last_line = last->line;
}

/* ---- the whole ---- */

/* "bench it flush … finish to size": the same once more. */
static gboolean
is_told_already (const EmWriter *w, const EmReadField *field)
{
  for (guint i = 0; i < w->fields->len && i < GENERAL_WINDOW; i++)
    {
      const EmReadField *other = &g_array_index (w->fields, EmReadField, i);

      if (field->text != NULL && strcmp (other->field, field->field) == 0 && g_strcmp0 (other->text, field->text) == 0)
        return TRUE;
    }
  return FALSE;
}

static gboolean
is_same_saying (const EmReadField *a, const EmReadField *b)
{
  return g_strcmp0 (a->text, b->text) == 0 && (isnan (a->value) ? isnan (b->value) : a->value == b->value);
}

static void
doubt_saying (EmReadField *field)
{
  if (field->state != EM_READ_READ)
    return;
  field->state = EM_READ_INFERRED;
  field->reason = "said-twice";
}

/* "P20 … steel: H13", "customer machines … you finish": what is said first is taken, and neither is plainly read. */
static void
doubt_contradictions (EmWriter *w)
{
  static const char *const once[] = { "base", "hardness", "finish", "coating", "stock" };
  enum { OF_METAL = 2 /* the first of them */ };
  EmReadField *first[G_N_ELEMENTS (once)] = { NULL };

  for (guint i = 0; i < w->fields->len; i++)
    for (gsize k = 0; k < G_N_ELEMENTS (once); k++)
      {
        EmReadField *field = &g_array_index (w->fields, EmReadField, i);

        if (strcmp (field->field, once[k]) != 0)
          continue;
        if (first[k] == NULL)
          first[k] = field;
        if (!is_same_saying (first[k], field) || (k < OF_METAL && w->grammar->has_other_base))
          {
            doubt_saying (first[k]);
            doubt_saying (field);
          }
      }
}

static void
write_general (EmWriter *w)
{
  g_array_set_size (w->fields, 0);
  for (guint i = 0; i < w->grammar->general->len; i++)
    {
      const EmGiven *given = &g_array_index (w->grammar->general, EmGiven, i);
      EmReadField field = given_field (w, 0, given);

      if (!is_told_already (w, &field))
        g_array_append_val (w->fields, field);
    }
  g_array_sort (w->fields, compare_position);
  doubt_contradictions (w);
  g_array_append_vals (w->result->fields, w->fields->data, w->fields->len);
}

/* The proposals that are repairs: those told in parts merged, those that only say where another is left out. */
static GPtrArray *
repairs_told (EmWriter *w)
{
  GPtrArray *protos = w->grammar->protos, *told = g_ptr_array_new ();

  em_merge_slots (w->items, protos);
  for (guint i = 0; i < protos->len; i++)
    {
      EmProto *proto = g_ptr_array_index (protos, i);

      if (proto->is_merged || em_aside_is (w->items, protos, i))
        continue;
      if (i + 1 < protos->len && em_merge_is_place_of (w->items, proto, g_ptr_array_index (protos, i + 1)))
        continue;
      while (i + 1 < protos->len && em_merge_take (w->items, proto, g_ptr_array_index (protos, i + 1)))
        i++;
      if (!em_merge_is_only_told (w->items, proto))
        g_ptr_array_add (told, proto);
    }
  return told;
}

static void
write_features (EmWriter *w)
{
  g_autoptr (GPtrArray) told = repairs_told (w);

  em_weak_leave_out (w->items, told);
  for (guint i = 0; i < told->len; i++)
    write_feature (w, g_ptr_array_index (told, i));
}

static gsize
cut_length (const char *text, gsize length)
{
  if (length <= EM_NOTES_READ_MAX)
    return length;
  length = EM_NOTES_READ_MAX;
  while (length > 0 && ((guchar) text[length] & 0xc0) == 0x80)
    length--;
  return length;
}

static void
count_commas (EmWriter *w)
{
  for (guint i = 0; i < w->items->sizes->len; i++)
    {
      guint comma = g_array_index (w->items->sizes, EmSize, i).flags & (EM_TOKEN_COMMA | EM_TOKEN_THREE);

      w->has_decimal_comma |= comma == EM_TOKEN_COMMA;
      w->n_three += (comma & EM_TOKEN_THREE) != 0;
    }
}

/* "1.) nick", "2.) face": the point says no more than the bracket, and parts the number from it. */
static void
blank_list_points (char *text, gsize length)
{
  enum { MOST_DIGITS = 2 };

  for (gsize i = 1; i + 2 < length; i++)
    {
      gsize digits = 0;

      if (text[i] != '.' || text[i + 1] != ')' || (text[i + 2] != ' ' && text[i + 2] != '\t'))
        continue;
      while (digits <= MOST_DIGITS && digits < i && g_ascii_isdigit (text[i - 1 - digits]))
        digits++;
      if (digits == 0 || digits > MOST_DIGITS || (digits < i && !g_ascii_isspace (text[i - 1 - digits])))
        continue;
      text[i] = ')';
      text[i + 1] = ' ';
    }
}

EmReadResult *
em_notes_read (const EmLexicon *lexicon, const char *text, gsize length, EmUnits units)
{
  gsize read = cut_length (text, length);
  /* Ends in a zero byte, so that words may be compared at its end. */
  g_autofree char *copy = g_malloc (read + 1);
  EmWriter w = { .text = copy, .result = em_read_result_new (), .first_guess = EM_NO_ITEM, .last_fit = { .kind = -1 } };

  if (read > 0)
    memcpy (copy, text, read);
  copy[read] = '\0';
  blank_list_points (copy, read);
  w.items = em_items_new (lexicon, copy, read);
  w.grammar = em_grammar_read (w.items);
  em_resolve_units (w.grammar, units);
  w.result->has_written = w.grammar->has_written && !w.grammar->has_units;
  w.result->written = w.grammar->written;
  w.fields = g_array_new (FALSE, FALSE, sizeof (EmReadField));
  w.as_mm = g_array_new (FALSE, FALSE, sizeof (EmReadField));
  w.as_inch = g_array_new (FALSE, FALSE, sizeof (EmReadField));
  count_commas (&w);
  write_general (&w);
  write_features (&w);
  em_writer_ask_units (&w);
  em_unused_write (w.items, w.result);
  if (read < length)
    {
      EmReadSpan rest = { (guint32) read, (guint32) MIN (length - read, G_MAXUINT32), w.items->items->len > 0
                         ? em_item (w.items, w.items->items->len - 1)->line : 1, FALSE };

      w.result->n_unread = length - read;
      g_array_append_val (w.result->unused, rest);
    }
  g_array_unref (w.fields);
  g_array_unref (w.as_mm);
  g_array_unref (w.as_inch);
  em_grammar_free (w.grammar);
  em_items_free (w.items);
  return w.result;
}
