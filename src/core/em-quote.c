/* em-quote: life, copies and checks of a quote.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-quote.h"

#include <stdlib.h>
#include <string.h>

enum { LINES_MAX = 100000 };   /* features, extras or marks of one quote */

const char *const em_quote_text_ids[EM_N_QUOTE_TEXT] =
{
  "number", "revision", "date", "prepared_by", "customer", "contact", "address", "email", "phone", "reference", "tool",
  "tool_number", "drawing", "base", "filler", "machine", "process", "coating", "notes", "scope", "terms", "language", "paper",
  "lead_time", "internal", "revises", "offers", "extra",
};

const char *const em_state_ids[EM_N_STATE] = { "draft", "sent", "won", "lost", "lapsed" };
const char *const em_mark_ids[EM_N_MARK] = { "used", "general", "unused", "question", "rejected" };

static bool
same (double a, double b)
{
  return a == b || (isnan (a) && isnan (b));
}

/* ---- life ---- */

void
em_quote_init (EmQuote *out_quote)
{
  *out_quote = (EmQuote) {
    .hardness_hrc = EM_ABSENT, .section_mm = EM_ABSENT, .n_tools = 1, .learning_ppm = -1, .margin_ppm = -1,
    .contingency_ppm = -1, .rush_ppm = -1, .discount_ppm = -1, .validity_days = -1, .next_id = 1,
  };
}

static void
clear_mark (EmMark *mark)
{
  free (mark->field);
  free (mark->reason);
  *mark = (EmMark) { 0 };
}

void
em_quote_clear_marks (EmQuote *quote)
{
  for (int32_t i = 0; i < quote->n_marks; i++)
    clear_mark (&quote->mark[i]);
  free (quote->mark);
  quote->mark = NULL;
  quote->n_marks = 0;
}

void
em_quote_clear (EmQuote *quote)
{
  for (int i = 0; i < EM_N_QUOTE_TEXT; i++)
    free (quote->text[i]);
  for (int32_t i = 0; i < quote->n_features; i++)
    em_feature_clear (&quote->feature[i]);
  for (int32_t i = 0; i < quote->n_extras; i++)
    free (quote->extra[i].label);
  free (quote->feature);
  free (quote->extra);
  em_quote_clear_marks (quote);
  em_quote_init (quote);
}

/* ---- copies ---- */

static EmStatus
copy_texts (const EmQuote *quote, EmQuote *copy)
{
  for (int i = 0; i < EM_N_QUOTE_TEXT; i++)
    if (quote->text[i] != NULL && (copy->text[i] = em_text_dup (quote->text[i])) == NULL)
      return EM_FAULT_MEMORY;
  return EM_OK;
}

/* Counts grow with each element that is whole, so that a half-made copy clears. */
static EmStatus
copy_features (const EmQuote *quote, EmQuote *copy)
{
  if (quote->n_features == 0)
    return EM_OK;
  copy->feature = calloc ((size_t) quote->n_features, sizeof *copy->feature);
  if (copy->feature == NULL)
    return EM_FAULT_MEMORY;
  copy->cap_features = quote->n_features;
  for (int32_t i = 0; i < quote->n_features; i++, copy->n_features++)
    if (em_feature_copy (&quote->feature[i], &copy->feature[i]) != EM_OK)
      return EM_FAULT_MEMORY;
  return EM_OK;
}

static EmStatus
copy_extras (const EmQuote *quote, EmQuote *copy)
{
  for (int32_t i = 0; i < quote->n_extras; i++)
    {
      EmExtra extra = quote->extra[i];

      extra.label = em_text_dup (extra.label);
      if ((extra.label == NULL && quote->extra[i].label != NULL) || em_quote_add_extra_take (copy, &extra) != EM_OK)
        return EM_FAULT_MEMORY;
    }
  return EM_OK;
}

static EmStatus
copy_marks (const EmQuote *quote, EmQuote *copy)
{
  for (int32_t i = 0; i < quote->n_marks; i++)
    {
      const EmMark *from = &quote->mark[i];
      EmMark mark = *from;

      mark.field = em_text_dup (from->field);
      mark.reason = em_text_dup (from->reason);
      if ((mark.field == NULL && from->field != NULL) || (mark.reason == NULL && from->reason != NULL))
        {
          clear_mark (&mark);
          return EM_FAULT_MEMORY;
        }
      if (em_quote_add_mark_take (copy, &mark) != EM_OK)
        return EM_FAULT_MEMORY;
    }
  return EM_OK;
}

EmStatus
em_quote_copy (const EmQuote *quote, EmQuote *out_copy)
{
  EmQuote copy = *quote;

  memset (copy.text, 0, sizeof copy.text);
  copy.n_features = copy.cap_features = copy.n_extras = copy.n_marks = 0;
  copy.feature = NULL;
  copy.extra = NULL;
  copy.mark = NULL;
  if (copy_texts (quote, &copy) != EM_OK || copy_features (quote, &copy) != EM_OK || copy_extras (quote, &copy) != EM_OK
      || copy_marks (quote, &copy) != EM_OK)
    {
      em_quote_clear (&copy);
      return EM_FAULT_MEMORY;
    }
  *out_copy = copy;
  return EM_OK;
}

/* ---- equality ---- */

static bool
numbers_equal (const EmQuote *a, const EmQuote *b)
{
  if (a->n_breaks != b->n_breaks)
    return false;
  for (int32_t i = 0; i < a->n_breaks; i++)
    if (a->break_tools[i] != b->break_tools[i])
      return false;
  return a->units == b->units && a->state == b->state && same (a->hardness_hrc, b->hardness_hrc)
         && same (a->section_mm, b->section_mm) && a->has_preheat == b->has_preheat && a->preheat == b->preheat
         && a->n_tools == b->n_tools && a->learning_ppm == b->learning_ppm && a->margin_ppm == b->margin_ppm
         && a->contingency_ppm == b->contingency_ppm && a->rush_ppm == b->rush_ppm && a->discount_ppm == b->discount_ppm
         && a->validity_days == b->validity_days && a->finish == b->finish && a->has_sent_rates == b->has_sent_rates;
}

static bool
lists_equal (const EmQuote *a, const EmQuote *b)
{
  if (a->n_features != b->n_features || a->n_extras != b->n_extras || a->n_marks != b->n_marks)
    return false;
  for (int32_t i = 0; i < a->n_features; i++)
    if (!em_feature_equal (&a->feature[i], &b->feature[i]))
      return false;
  for (int32_t i = 0; i < a->n_extras; i++)
    if (!em_text_equal (a->extra[i].label, b->extra[i].label) || a->extra[i].cost_minor != b->extra[i].cost_minor
        || a->extra[i].is_per_tool != b->extra[i].is_per_tool)
      return false;
  for (int32_t i = 0; i < a->n_marks; i++)
    {
      const EmMark *m = &a->mark[i], *n = &b->mark[i];

      if (m->start != n->start || m->length != n->length || m->feature_id != n->feature_id || m->state != n->state
          || !em_text_equal (m->field, n->field) || !em_text_equal (m->reason, n->reason))
        return false;
    }
  return true;
}

/* next_id is bookkeeping, not content: two quotes that differ in it alone are equal. */
bool
em_quote_equal (const EmQuote *a, const EmQuote *b)
{
  for (int i = 0; i < EM_N_QUOTE_TEXT; i++)
    if (!em_text_equal (a->text[i], b->text[i]))
      return false;
  return numbers_equal (a, b) && lists_equal (a, b);
}

/* ---- changes ---- */

EmStatus
em_quote_set_text (EmQuote *quote, EmQuoteText which, const char *text)
{
  char *copy = NULL;

  if (text != NULL && text[0] != '\0')
    {
      copy = em_text_dup (text);
      if (copy == NULL)
        return EM_FAULT_MEMORY;
    }
  free (quote->text[which]);
  quote->text[which] = copy;
  return EM_OK;
}

static EmStatus
reserve_feature (EmQuote *quote)
{
  if (quote->n_features >= LINES_MAX)
    return EM_FAULT_OVERFLOW;
  if (quote->n_features < quote->cap_features)
    return EM_OK;

  int32_t cap = quote->cap_features < 8 ? 8 : quote->cap_features * 2;
  EmFeature *grown = realloc (quote->feature, (size_t) cap * sizeof *grown);

  if (grown == NULL)
    return EM_FAULT_MEMORY;
  quote->feature = grown;
  quote->cap_features = cap;
  return EM_OK;
}

uint32_t
em_quote_next_id (uint32_t next_id, uint32_t id)
{
  return next_id != 0 && id >= next_id ? id + 1 : next_id;   /* beyond the highest comes 0 */
}

/* An id that no feature has. There are fewer features than ids. */
static uint32_t
free_id (const EmQuote *quote)
{
  uint32_t id = quote->next_id;

  if (id != 0)
    return id;
  do
    id++;
  while (em_quote_find (quote, id) >= 0);
  return id;
}

/* An id from next_id on is new without a look at the features, so that many of them inserted one by one take no longer each. */
static bool
is_free (const EmQuote *quote, uint32_t id)
{
  return (quote->next_id != 0 && id >= quote->next_id) || em_quote_find (quote, id) < 0;
}

/* at is clamped into [0, n_features]. *feature is left empty. */
EmStatus
em_quote_insert_take (EmQuote *quote, int32_t at, EmFeature *feature)
{
  EmStatus status = reserve_feature (quote);

  if (status != EM_OK)
    {
      em_feature_clear (feature);
      return status;
    }
  at = at < 0 ? 0 : at > quote->n_features ? quote->n_features : at;
  if (feature->id == 0 || !is_free (quote, feature->id))
    feature->id = free_id (quote);
  quote->next_id = em_quote_next_id (quote->next_id, feature->id);
  memmove (&quote->feature[at + 1], &quote->feature[at], (size_t) (quote->n_features - at) * sizeof *quote->feature);
  quote->feature[at] = *feature;
  quote->n_features++;
  em_feature_init (feature, NULL);
  return EM_OK;
}

void
em_quote_remove (EmQuote *quote, int32_t index, EmFeature *out_feature)
{
  if (index < 0 || index >= quote->n_features)
    return;
  if (out_feature != NULL)
    *out_feature = quote->feature[index];
  else
    em_feature_clear (&quote->feature[index]);
  quote->n_features--;
  memmove (&quote->feature[index], &quote->feature[index + 1],
           (size_t) (quote->n_features - index) * sizeof *quote->feature);
}

/* to is the index the feature has afterwards. Indices outside change nothing. */
void
em_quote_move (EmQuote *quote, int32_t from, int32_t to)
{
  if (from < 0 || to < 0 || from >= quote->n_features || to >= quote->n_features || from == to)
    return;

  EmFeature moved = quote->feature[from];

  if (from < to)
    memmove (&quote->feature[from], &quote->feature[from + 1], (size_t) (to - from) * sizeof moved);
  else
    memmove (&quote->feature[to + 1], &quote->feature[to], (size_t) (from - to) * sizeof moved);
  quote->feature[to] = moved;
}

int32_t
em_quote_find (const EmQuote *quote, uint32_t feature_id)
{
  for (int32_t i = 0; i < quote->n_features; i++)
    if (quote->feature[i].id == feature_id)
      return i;
  return -1;
}

EmStatus
em_quote_add_mark_take (EmQuote *quote, EmMark *mark)
{
  EmMark *grown = quote->n_marks < LINES_MAX ? realloc (quote->mark, (size_t) (quote->n_marks + 1) * sizeof *grown) : NULL;

  if (grown == NULL)
    {
      clear_mark (mark);
      return quote->n_marks < LINES_MAX ? EM_FAULT_MEMORY : EM_FAULT_OVERFLOW;
    }
  quote->mark = grown;
  quote->mark[quote->n_marks++] = *mark;
  *mark = (EmMark) { 0 };
  return EM_OK;
}

EmStatus
em_quote_add_extra_take (EmQuote *quote, EmExtra *extra)
{
  EmExtra *grown = quote->n_extras < LINES_MAX ? realloc (quote->extra, (size_t) (quote->n_extras + 1) * sizeof *grown) : NULL;

  if (grown == NULL)
    {
      free (extra->label);
      *extra = (EmExtra) { 0 };
      return quote->n_extras < LINES_MAX ? EM_FAULT_MEMORY : EM_FAULT_OVERFLOW;
    }
  quote->extra = grown;
  quote->extra[quote->n_extras++] = *extra;
  *extra = (EmExtra) { 0 };
  return EM_OK;
}

void
em_quote_remove_extra (EmQuote *quote, int32_t index)
{
  if (index < 0 || index >= quote->n_extras)
    return;
  free (quote->extra[index].label);
  quote->n_extras--;
  memmove (&quote->extra[index], &quote->extra[index + 1], (size_t) (quote->n_extras - index) * sizeof *quote->extra);
}

/* ---- checks ---- */

static EmStatus
check_share (const char *field, int64_t ppm, int64_t low, int64_t high, EmFault *out_fault)
{
  if (ppm == -1 || (ppm >= low && ppm <= high))
    return EM_OK;
  return em_fault_set (out_fault, EM_FAULT_RANGE, field, (double) ppm, (double) low, (double) high);
}

static EmStatus
check_tools (const EmQuote *quote, EmFault *out_fault)
{
  if (quote->n_tools < 1 || quote->n_tools > 10000)
    return em_fault_set (out_fault, EM_FAULT_RANGE, "tools", quote->n_tools, 1, 10000);
  if (quote->n_breaks < 0 || quote->n_breaks > EM_BREAK_MAX)
    return em_fault_set (out_fault, EM_FAULT_RANGE, "break", quote->n_breaks, 0, EM_BREAK_MAX);
  for (int32_t i = 0, low = 1; i < quote->n_breaks; low = quote->break_tools[i++] + 1)
    if (quote->break_tools[i] < low || quote->break_tools[i] > 10000)
      return em_fault_set (out_fault, EM_FAULT_RANGE, "break", quote->break_tools[i], low, 10000);
  return EM_OK;
}

static EmStatus
check_real (const char *field, double value, double low, double high, EmFault *out_fault)
{
  if (em_is_absent (value) || (value >= low && value <= high))
    return EM_OK;
  return em_fault_set (out_fault, isinf (value) ? EM_FAULT_NOT_FINITE : EM_FAULT_RANGE, field, value, low, high);
}

/*
 * em_quote_check:
 *
 * A margin stays below 100 % of the price, since price = cost/(1 − m); the engine stops at 95 %. Learning rates
 * below 50 % would make later tools cost less than nothing by Wright's total.
 */
EmStatus
em_quote_check (const EmQuote *quote, EmFault *out_fault)
{
  const struct { const char *field; int64_t ppm, low, high; } shares[] =
  {
    { "learning", quote->learning_ppm, 500001, 1000000 },
    { "margin", quote->margin_ppm, 0, 950000 },
    { "contingency", quote->contingency_ppm, 0, 2000000 },
    { "rush", quote->rush_ppm, 0, 5000000 },
    { "discount", quote->discount_ppm, 0, 1000000 },
    { "validity", quote->validity_days, 0, 3650 },
  };
  EmStatus status = check_tools (quote, out_fault);

  for (size_t i = 0; status == EM_OK && i < sizeof shares / sizeof shares[0]; i++)
    status = check_share (shares[i].field, shares[i].ppm, shares[i].low, shares[i].high, out_fault);
  if (status == EM_OK)
    status = check_real ("hardness", quote->hardness_hrc, 0.0, 70.0, out_fault);
  return status == EM_OK ? check_real ("section", quote->section_mm, 0.1, 5000.0, out_fault) : status;
}
