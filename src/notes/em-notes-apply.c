/* em-notes-apply: proposals into the quote, without trampling what the office did.
 *
 * The quote's marks are the memory between readings. A mark without a field ties a feature to its whole stretch; a
 * rejected mark with a field says that the office changed that field itself; a rejected mark without one that it removed
 * the proposal. Values the office entered have the origin EM_ORIGIN_ENTERED.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-notes.h"

#include "em-notes-match.h"
#include "em-notes-set.h"

#include <glib/gi18n-lib.h>
#include <stdlib.h>
#include <string.h>

typedef struct
{
  EmReadResult   *result;
  const char     *text;
  EmQuote        *quote;
  EmEarlier      *earlier;
  const EmReadField *stock;   /* the general one, or NULL */
} Applier;

static void
add_mark (EmQuote *quote, guint32 start, guint32 length, guint32 id, EmMarkState state, const char *field, const char *reason)
{
  EmMark mark = { .start = start, .length = length, .feature_id = id, .state = state, .field = em_text_dup (field),
                 .reason = em_text_dup (reason) };

  em_quote_add_mark_take (quote, &mark);
}

static const EmReadField *
find_field (const EmReadResult *result, int feature, const char *name)
{
  guint first, last;

  em_read_result_range (result, feature, &first, &last);
  for (guint i = first; i < last; i++)
    {
      const EmReadField *field = &g_array_index (result->fields, EmReadField, i);

      if (strcmp (field->field, name) == 0 && field->state != EM_READ_MISSING)
        return field;
    }
  return NULL;
}

/* Answered before, or made moot: all that one of its answers would set the office has settled, or removed with its feature. */
static gboolean
is_answered (const Applier *a, const EmReadQuestion *question)
{
  for (int k = 0; k < question->n_answers; k++)
    {
      guint i = 0;

      for (; i < question->n_sets[k]; i++)
        {
          const EmReadField *set = &g_array_index (a->result->sets, EmReadField, question->first_set[k] + i);

          if (set->feature < 1 || (!em_earlier_is_rejected (a->earlier, set->feature) &&
                                   !em_earlier_is_corrected (a->earlier, em_earlier_match_of (a->earlier, set->feature),
                                                             set->field)))
            break;
        }
      if (i > 0 && i == question->n_sets[k])
        return TRUE;
    }
  return FALSE;
}

static gboolean
has_question (const Applier *a, int feature)
{
  guint first, last;

  em_read_result_questions (a->result, feature, &first, &last);
  for (guint i = first; i < last; i++)
    if (!is_answered (a, &g_array_index (a->result->questions, EmReadQuestion, i)))
      return TRUE;
  return FALSE;
}

static void
mark_questions (Applier *a, int feature, guint32 id)
{
  guint first, last;

  em_read_result_questions (a->result, feature, &first, &last);
  for (guint i = first; i < last; i++)
    {
      const EmReadQuestion *question = &g_array_index (a->result->questions, EmReadQuestion, i);

      if (!is_answered (a, question))
        add_mark (a->quote, question->start, question->length, id, EM_MARK_QUESTION, question->field, question->code);
    }
}

/* A round pit deeper than its radius is a half-ellipsoid, whose mouth the engine takes by length and width. */
static void
complete_ellipsoid (EmFeature *feature)
{
  int form = em_kind_field (feature->kind, "form"), diameter = em_kind_field (feature->kind, "diameter");
  static const char *const sides[] = { "length", "width" };

  if (strcmp (feature->kind->id, "recess") != 0 || form < 0 || diameter < 0 || em_is_absent (feature->value[form]) ||
      em_is_absent (feature->value[diameter]) ||
      strcmp (feature->kind->fields[form].options[(int) feature->value[form]], "ellipsoid") != 0)
    return;
  for (gsize i = 0; i < G_N_ELEMENTS (sides); i++)
    {
      int side = em_kind_field (feature->kind, sides[i]);

      if (side >= 0 && em_is_absent (feature->value[side]))
        {
          feature->value[side] = feature->value[diameter];
          feature->origin[side] = EM_ORIGIN_INFERRED;
        }
    }
}

/* Fields whose value hangs on their own words alone. While those words stay, a new reading has nothing new to say, so what
 * the office made of them stays too, told to the reader or not. */
static gboolean
is_settled (const Applier *a, guint32 id, const EmReadField *field)
{
  static const char *const by_words[] = {
    "count", "near", "access", "finish", "base", "coating", "reference", "drawing", "tool_number", "tools", "hardness", "units",
  };

  for (gsize i = 0; i < G_N_ELEMENTS (by_words); i++)
    if (strcmp (field->field, by_words[i]) == 0)
      return em_earlier_says_the_same (a->earlier, id, field->field, a->text, field->start, field->length);
  return FALSE;
}

/* Read, or read with the unit the customer's own general note gives ("ALL DIMS INCH"): nothing the quote need call an assumption. */
static gboolean
is_said (const EmReadField *field)
{
  return field->state == EM_READ_READ || g_strcmp0 (field->reason, "general-note") == 0;
}

/* Clears what an earlier reading put in and this one lacks; then puts in what was read. */
static void
fill_feature (Applier *a, EmFeature *feature, int number)
{
  guint first, last;

  for (int i = 0; i < feature->kind->n_fields; i++)
    if (feature->origin[i] != EM_ORIGIN_ENTERED &&
        !em_earlier_is_corrected (a->earlier, feature->id, feature->kind->fields[i].id))
      {
        feature->value[i] = feature->low[i] = feature->high[i] = EM_ABSENT;
        feature->origin[i] = EM_ORIGIN_ENTERED;
      }
  em_read_result_range (a->result, number, &first, &last);
  for (guint i = first; i < last; i++)
    {
      const EmReadField *field = &g_array_index (a->result->fields, EmReadField, i);
      int index = em_kind_field (feature->kind, field->field);

      if (field->state == EM_READ_MISSING || em_earlier_is_corrected (a->earlier, feature->id, field->field) ||
          is_settled (a, feature->id, field))
        continue;
      if (index >= 0 && feature->origin[index] == EM_ORIGIN_ENTERED && !em_is_absent (feature->value[index]))
        continue;
      em_feature_set_read (feature, field, is_said (field) ? EM_ORIGIN_READ : EM_ORIGIN_INFERRED);
    }
  complete_ellipsoid (feature);
}

/* Shared inputs go back to their defaults unless the office changed them, so that a note taken out takes its effect with it. */
static void
reset_shared (Applier *a, EmFeature *feature, int number)
{
  static const char *const shared[] = { "count", "stock", "clearance", "near", "slot_width", "slot_depth", "access", "finish" };

  for (gsize i = 0; i < G_N_ELEMENTS (shared); i++)
    if (find_field (a->result, number, shared[i]) == NULL && em_earlier_had_field (a->earlier, feature->id, shared[i]) &&
        !em_earlier_is_corrected (a->earlier, feature->id, shared[i]))
      em_feature_reset_shared (feature, shared[i]);
}

static void
apply_general_stock (Applier *a, EmFeature *feature, int number)
{
  const EmReadField *stock = a->stock;

  if (stock != NULL && find_field (a->result, number, "stock") == NULL &&
      !em_earlier_is_corrected (a->earlier, feature->id, "stock") &&
      (em_is_absent (feature->stock_mm) || em_earlier_had_field (a->earlier, feature->id, "stock")))
    feature->stock_mm = stock->value;
}

static void
mark_feature (Applier *a, guint32 id, int number)
{
  const EmReadSpan *span = &g_array_index (a->result->spans, EmReadSpan, number - 1);
  const EmReadField *stock = a->stock;
  guint first, last;

  add_mark (a->quote, span->start, span->length, id, has_question (a, number) ? EM_MARK_QUESTION : EM_MARK_USED, NULL, NULL);
  em_read_result_range (a->result, number, &first, &last);
  for (guint i = first; i < last; i++)
    {
      const EmReadField *field = &g_array_index (a->result->fields, EmReadField, i);

      if (field->length > 0 && !em_earlier_is_corrected (a->earlier, id, field->field))
        add_mark (a->quote, field->start, field->length, id, EM_MARK_USED, field->field, field->reason);
    }
  if (stock != NULL && find_field (a->result, number, "stock") == NULL && !em_earlier_is_corrected (a->earlier, id, "stock"))
    add_mark (a->quote, stock->start, stock->length, id, EM_MARK_USED, "stock", "general-note");
  mark_questions (a, number, id);
  em_earlier_mark_corrected (a->earlier, a->result, number, a->quote, id);
}

static const EmKind *
kind_of (const Applier *a, int number)
{
  const EmReadField *kind = find_field (a->result, number, "kind");

  return kind != NULL ? em_kind_find (kind->text) : NULL;
}

static int32_t
insert_new (Applier *a, const EmKind *kind, int32_t at)
{
  EmFeature feature;

  em_feature_init (&feature, kind);
  return em_quote_insert_take (a->quote, at, &feature) == EM_OK ? at : -1;
}

/* Puts feature number in; returns where the next one goes. */
static int32_t
apply_feature (Applier *a, int number, int32_t at)
{
  const EmKind *kind = kind_of (a, number);
  const EmReadSpan *span = &g_array_index (a->result->spans, EmReadSpan, number - 1);
  guint32 id = em_earlier_match_of (a->earlier, number);
  int32_t index = id != 0 ? em_quote_find (a->quote, id) : -1;
  EmFeature *feature;

  if (em_earlier_is_rejected (a->earlier, number) || (index < 0 && kind == NULL))
    {
      gboolean is_rejected = em_earlier_is_rejected (a->earlier, number);

      g_array_index (a->result->ids, guint32, number - 1) = 0;
      add_mark (a->quote, span->start, span->length, 0, is_rejected ? EM_MARK_REJECTED : EM_MARK_QUESTION, NULL, is_rejected
                ? NULL : "which-kind");
      return at;
    }
  if (index < 0)
    index = insert_new (a, kind, at);
  if (index < 0)
    return at;
  feature = &a->quote->feature[index];
  if (kind != NULL && feature->kind != kind && !em_earlier_is_corrected (a->earlier, feature->id, "kind"))
    em_feature_change_kind (feature, kind);
  reset_shared (a, feature, number);
  fill_feature (a, feature, number);
  apply_general_stock (a, feature, number);
  g_array_index (a->result->ids, guint32, number - 1) = feature->id;
  mark_feature (a, feature->id, number);
  return index + 1;
}

/* Features whose words are gone go too, unless the office worked on them. */
static void
remove_gone (Applier *a)
{
  for (guint i = 0; i < em_earlier_n (a->earlier); i++)
    {
      guint32 id = em_earlier_id (a->earlier, i);
      int32_t index = em_quote_find (a->quote, id);

      if (index < 0 || em_earlier_is_matched (a->earlier, i) || em_earlier_has_corrections (a->earlier, id) ||
          em_feature_has_entered (&a->quote->feature[index]))
        continue;
      em_quote_remove (a->quote, index, NULL);
    }
}

/* The quote takes over what is told of one part. */
static void
adopt (Applier *a, const EmReadField *field)
{
  if (!em_earlier_is_corrected (a->earlier, 0, field->field) &&
      (em_earlier_had_field (a->earlier, 0, field->field) || em_quote_lacks_general (a->quote, field->field)))
    em_quote_set_general (a->quote, field);
  add_mark (a->quote, field->start, field->length, 0, EM_MARK_GENERAL, field->field, "from-words");
}

/* Metals are told of parts alone: the quote has one, the first, and its hardness; each repair says its own in its remark. */
static void
adopt_metal (Applier *a)
{
  int part = 0;

  for (guint i = 0; part == 0 && find_field (a->result, 0, "base") == NULL && i < a->result->fields->len; i++)
    if (strcmp (g_array_index (a->result->fields, EmReadField, i).field, "base") == 0)
      part = g_array_index (a->result->fields, EmReadField, i).feature;
  if (part == 0)
    return;
  adopt (a, find_field (a->result, part, "base"));
  if (find_field (a->result, 0, "hardness") == NULL && find_field (a->result, part, "hardness") != NULL)
    adopt (a, find_field (a->result, part, "hardness"));
}

/* A coating is told of parts alone: the quote has one, for its cautions; chrome before others, whose fumes are the worst. */
static void
adopt_coating (Applier *a)
{
  const EmReadField *coating = NULL;

  for (guint i = 0; i < a->result->fields->len; i++)
    {
      const EmReadField *field = &g_array_index (a->result->fields, EmReadField, i);

      if (strcmp (field->field, "coating") != 0)
        continue;
      if (field->feature == 0)
        return;
      if (coating == NULL || (strcmp (field->text, "chrome") == 0 && strcmp (coating->text, "chrome") != 0))
        coating = field;
    }
  if (coating != NULL)
    adopt (a, coating);
}

static void
apply_general (Applier *a)
{
  guint first, last;

  for (gsize i = 0; em_general_fields[i] != NULL; i++)
    if (em_earlier_had_field (a->earlier, 0, em_general_fields[i]) &&
        !em_earlier_is_corrected (a->earlier, 0, em_general_fields[i]) &&
        find_field (a->result, 0, em_general_fields[i]) == NULL)
      em_quote_reset_general (a->quote, em_general_fields[i]);
  em_read_result_range (a->result, 0, &first, &last);
  for (guint i = first; i < last; i++)
    {
      const EmReadField *field = &g_array_index (a->result->fields, EmReadField, i);

      /* Two hardnesses of one tool: the first goes into the quote, today and at every reading; the other is for the office to look at.
       * What must not be welded may be several things. */
      if (strcmp (field->field, "refuse") != 0 && find_field (a->result, 0, field->field) != field)
        {
          add_mark (a->quote, field->start, field->length, 0, EM_MARK_QUESTION, NULL, "two-values");
          continue;
        }
      add_mark (a->quote, field->start, field->length, 0, EM_MARK_GENERAL, field->field, field->reason);
      if (!em_earlier_is_corrected (a->earlier, 0, field->field) && !is_settled (a, 0, field) &&
          (em_earlier_had_field (a->earlier, 0, field->field) || em_quote_lacks_general (a->quote, field->field)))
        em_quote_set_general (a->quote, field);
    }
  adopt_metal (a);
  adopt_coating (a);
  em_earlier_mark_corrected (a->earlier, a->result, 0, a->quote, 0);
  mark_questions (a, 0, 0);
  for (guint i = 0; i < a->result->unused->len; i++)
    {
      const EmReadSpan *span = &g_array_index (a->result->unused, EmReadSpan, i);

      add_mark (a->quote, span->start, span->length, 0, EM_MARK_UNUSED, NULL, NULL);
    }
}

void
em_notes_apply (EmReadResult *result, const char *text, EmQuote *quote)
{
  Applier a = { result, text, quote, em_earlier_new (result, text, quote), find_field (result, 0, "stock") };
  int32_t at;

  if (quote->n_features == 0 && result->has_written)
    quote->units = result->written;
  g_array_set_size (result->ids, (guint) result->n_features);
  em_quote_clear_marks (quote);
  em_quote_set_text (quote, EM_QUOTE_NOTES, text);
  remove_gone (&a);
  /* New ones go after the one before them in the notes; the first ones before the first known. */
  at = quote->n_features;
  for (int number = 1; number <= result->n_features; number++)
    {
      guint32 id = em_earlier_match_of (a.earlier, number);
      int32_t index = id != 0 ? em_quote_find (quote, id) : -1;

      if (index >= 0)
        {
          at = index;
          break;
        }
    }
  for (int number = 1; number <= result->n_features; number++)
    at = apply_feature (&a, number, MIN (at, quote->n_features));
  apply_general (&a);
  em_earlier_free (a.earlier);
}

static guint32
id_of (const EmReadResult *result, int number)
{
  return number >= 1 && (guint) number <= result->ids->len ? g_array_index (result->ids, guint32, number - 1) : 0;
}

static int32_t
feature_of (const EmReadResult *result, int number, EmQuote *quote, int32_t fallback)
{
  guint32 id = id_of (result, number);

  return id != 0 ? em_quote_find (quote, id) : fallback;
}

/* A proposal whose kind is asked is marked whole, and the question may be about a word of it. */
static gboolean
asks (const EmMark *mark, guint32 id, const EmReadQuestion *question)
{
  return mark->state == EM_MARK_QUESTION && mark->feature_id == id && mark->reason != NULL &&
         strcmp (mark->reason, question->code) == 0 &&
         question->start >= mark->start && question->start <= mark->start + mark->length;
}

static void
drop_question (EmQuote *quote, guint32 id, const EmReadQuestion *question)
{
  for (int32_t i = 0; i < quote->n_marks; i++)
    if (asks (&quote->mark[i], id, question))
      quote->mark[i].state = EM_MARK_USED;
}

/* By feature, so that a thousand questions do not each go through all marks. */
static GHashTable *
question_marks (const EmQuote *quote)
{
  GHashTable *marks = g_hash_table_new_full (NULL, NULL, NULL, (GDestroyNotify) g_ptr_array_unref);

  for (int32_t i = 0; i < quote->n_marks; i++)
    if (quote->mark[i].state == EM_MARK_QUESTION && quote->mark[i].reason != NULL)
      {
        gpointer key = GUINT_TO_POINTER (quote->mark[i].feature_id);
        GPtrArray *of_feature = g_hash_table_lookup (marks, key);

        if (of_feature == NULL)
          g_hash_table_insert (marks, key, of_feature = g_ptr_array_new ());
        g_ptr_array_add (of_feature, &quote->mark[i]);
      }
  return marks;
}

gboolean *
em_notes_open_questions (const EmReadResult *result, const EmQuote *quote, int *out_n)
{
  gboolean *is_open = g_new0 (gboolean, result->questions->len + 1);
  g_autoptr (GHashTable) marks = question_marks (quote);

  *out_n = 0;
  for (guint i = 0; i < result->questions->len; i++)
    {
      const EmReadQuestion *asked = &g_array_index (result->questions, EmReadQuestion, i);
      guint32 id = id_of (result, asked->feature);
      const GPtrArray *of_feature = g_hash_table_lookup (marks, GUINT_TO_POINTER (id));

      for (guint k = 0; of_feature != NULL && k < of_feature->len && !is_open[i]; k++)
        is_open[i] = asks (of_feature->pdata[k], id, asked);
      *out_n += is_open[i];
    }
  return is_open;
}

/* The quote prints what an unclear note was taken to mean. */
static void
note_assumption (EmFeature *feature, const EmReadQuestion *question, int answer)
{
  g_autofree char *taken = g_strdup_printf (_("%s Taken as: %s."), em_notes_question_text (question->code),
                                            em_notes_answer_text (question->answer[answer]));
  g_autofree char *all = NULL;

  if (feature->text[EM_FEATURE_ASSUMPTION] != NULL && strstr (feature->text[EM_FEATURE_ASSUMPTION], taken) != NULL)
    return;
  all = feature->text[EM_FEATURE_ASSUMPTION] != NULL ? g_strconcat (feature->text[EM_FEATURE_ASSUMPTION], " ", taken, NULL)
        : g_strdup (taken);
  em_feature_set_text (feature, EM_FEATURE_ASSUMPTION, all);
}

static void
apply_answer_field (const EmReadField *set, EmQuote *quote, int32_t *index)
{
  const EmKind *kind = strcmp (set->field, "kind") == 0 ? em_kind_find (set->text) : NULL;
  EmFeature *feature;

  if (*index < 0 && kind != NULL)
    {
      EmFeature fresh;

      em_feature_init (&fresh, kind);
      if (em_quote_insert_take (quote, quote->n_features, &fresh) != EM_OK)
        return;
      *index = quote->n_features - 1;
      add_mark (quote, set->start, set->length, quote->feature[*index].id, EM_MARK_USED, NULL, NULL);
    }
  if (*index < 0)
    return;
  feature = &quote->feature[*index];
  if (kind != NULL && feature->kind != kind)
    em_feature_change_kind (feature, kind);
  em_feature_set_read (feature, set, EM_ORIGIN_ENTERED);
  em_notes_corrected (quote, *index, set->field);
}

/* The office has said itself what the field is. */
static gboolean
is_own (const EmQuote *quote, int32_t index, const char *field)
{
  for (int32_t i = 0; index >= 0 && i < quote->n_marks; i++)
    if (quote->mark[i].feature_id == quote->feature[index].id && quote->mark[i].state == EM_MARK_REJECTED &&
        quote->mark[i].field != NULL &&
        strcmp (quote->mark[i].field, field) == 0)
      return TRUE;
  return FALSE;
}

/* The answer is about nothing else: then it is the office's last word. */
static gboolean
is_own_by_now (const EmReadResult *result, const EmReadQuestion *asked, int answer, EmQuote *quote, int32_t feature_index)
{
  for (guint i = 0; i < asked->n_sets[answer]; i++)
    {
      const EmReadField *set = &g_array_index (result->sets, EmReadField, asked->first_set[answer] + i);

      if (!is_own (quote, feature_of (result, set->feature, quote, feature_index), set->field))
        return FALSE;
    }
  return TRUE;
}

void
em_notes_answer (const EmReadResult *result, guint question, int answer, EmQuote *quote, int32_t feature_index)
{
  const EmReadQuestion *asked;
  gboolean is_all_own;

  if (question >= result->questions->len)
    return;
  asked = &g_array_index (result->questions, EmReadQuestion, question);
  if (answer < 0 || answer >= asked->n_answers)
    return;
  is_all_own = is_own_by_now (result, asked, answer, quote, feature_index);
  for (guint i = 0; i < asked->n_sets[answer]; i++)
    {
      const EmReadField *set = &g_array_index (result->sets, EmReadField, asked->first_set[answer] + i);
      int32_t index = feature_of (result, set->feature, quote, feature_index);
      gboolean is_new = index < 0;

      if (is_own (quote, index, set->field) && !is_all_own)
        continue;
      apply_answer_field (set, quote, &index);
      if (is_new)
        feature_index = index;
      if (index >= 0 && i == 0)
        note_assumption (&quote->feature[index], asked, answer);
      if (index >= 0)
        drop_question (quote, quote->feature[index].id, asked);
    }
  drop_question (quote, 0, asked);
}

void
em_notes_corrected (EmQuote *quote, int32_t feature_index, const char *field)
{
  EmFeature *feature = feature_index >= 0 && feature_index < quote->n_features ? &quote->feature[feature_index] : NULL;
  guint32 id = feature != NULL ? feature->id : 0;
  int index = feature != NULL ? em_kind_field (feature->kind, field) : -1;

  if (index >= 0)
    feature->origin[index] = EM_ORIGIN_ENTERED;
  for (int32_t i = 0; i < quote->n_marks; i++)
    if (quote->mark[i].feature_id == id && quote->mark[i].field != NULL && strcmp (quote->mark[i].field, field) == 0)
      {
        quote->mark[i].state = EM_MARK_REJECTED;
        return;
      }
  /* Only a feature that came from the notes needs to be guarded from them. */
  if (id == 0 || em_notes_has_marks (quote, id))
    add_mark (quote, 0, 0, id, EM_MARK_REJECTED, field, NULL);
}

void
em_notes_reject (EmQuote *quote, int32_t feature_index)
{
  guint32 id;

  if (feature_index < 0 || feature_index >= quote->n_features)
    return;
  id = quote->feature[feature_index].id;
  for (int32_t i = 0; i < quote->n_marks; i++)
    if (quote->mark[i].feature_id == id)
      {
        /* A mark of one field or question means nothing without its feature. */
        if (quote->mark[i].field != NULL || quote->mark[i].reason != NULL)
          quote->mark[i].length = 0;
        free (quote->mark[i].field);
        quote->mark[i].field = NULL;
        quote->mark[i].state = EM_MARK_REJECTED;
        quote->mark[i].feature_id = 0;
      }
  em_quote_remove (quote, feature_index, NULL);
}
