/* em-document-edit: everything an office does to a quote.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-document-edit.h"

#include <string.h>

const EmNumberRow em_feature_numbers[EM_N_FEATURE_NUMBER] =
{
  [EM_FEATURE_COUNT]         = { "count", EM_QUANTITY_COUNT, 1, 10000 },
  [EM_FEATURE_STOCK]         = { "stock", EM_QUANTITY_LENGTH, 0, 10 },
  [EM_FEATURE_CLEARANCE]     = { "clearance", EM_QUANTITY_LENGTH, 0, 1000 },
  [EM_FEATURE_SLOT_WIDTH]    = { "slot_width", EM_QUANTITY_LENGTH, 0, 1000 },
  [EM_FEATURE_SLOT_DEPTH]    = { "slot_depth", EM_QUANTITY_LENGTH, 0, 1000 },
  [EM_FEATURE_SETTING]       = { "setting", EM_QUANTITY_COUNT, 0, 1000 },
  [EM_FEATURE_SAFETY_LAYERS] = { "safety_layers", EM_QUANTITY_COUNT, 0, 20 },
  [EM_FEATURE_WIRE]          = { "wire", EM_QUANTITY_LENGTH, 0, 10 },
  [EM_FEATURE_NEAR]          = { "near", EM_QUANTITY_CHOICE, 0, EM_N_NEAR - 1 },
  [EM_FEATURE_ACCESS]        = { "access", EM_QUANTITY_CHOICE, 0, EM_N_ACCESS - 1 },
  [EM_FEATURE_MELT_OUT]      = { "melt_out", EM_QUANTITY_CHOICE, 0, 2 },
  [EM_FEATURE_CAP]           = { "cap", EM_QUANTITY_CHOICE, 0, 2 },
  [EM_FEATURE_FINISH]        = { "finish", EM_QUANTITY_CHOICE, 0, EM_N_FINISH - 1 },
};

const EmNumberRow em_quote_numbers[EM_N_QUOTE_NUMBER] =
{
  [EM_QUOTE_TOOLS]       = { "tools", EM_QUANTITY_COUNT, 1, 100000 },
  [EM_QUOTE_HARDNESS]    = { "hardness", EM_QUANTITY_COUNT, 0, 70 },
  [EM_QUOTE_SECTION]     = { "section", EM_QUANTITY_LENGTH, 0, 5000 },
  [EM_QUOTE_VALIDITY]    = { "validity", EM_QUANTITY_COUNT, 0, 3650 },
  [EM_QUOTE_MARGIN]      = { "margin", EM_QUANTITY_COUNT, 0, 95 },
  [EM_QUOTE_CONTINGENCY] = { "contingency", EM_QUANTITY_COUNT, 0, 1000 },
  [EM_QUOTE_RUSH]        = { "rush", EM_QUANTITY_COUNT, 0, 1000 },
  [EM_QUOTE_DISCOUNT]    = { "discount", EM_QUANTITY_COUNT, 0, 100 },
  [EM_QUOTE_LEARNING]    = { "learning", EM_QUANTITY_COUNT, 50, 100 },
  [EM_QUOTE_FEATURE_FINISH] = { "finish", EM_QUANTITY_CHOICE, 0, EM_N_FINISH - 1 },
  [EM_QUOTE_PREHEAT]     = { "preheat", EM_QUANTITY_CHOICE, 0, 2 },
};

/* What a run of typing is grouped by: where, which part, and in which feature. */
enum { KEY_QUOTE_TEXT = 1, KEY_QUOTE_NUMBER, KEY_VALUE, KEY_FEATURE_NUMBER, KEY_FEATURE_TEXT, KEY_OVERRIDE, KEY_EXTRA, KEY_NOTES, KEY_BREAKS };

static guint64
edit_key (guint64 place, guint part, guint id)
{
  return place << 56 | (guint64) part << 32 | id;
}

static guint
feature_id (EmDocument *self, int32_t index)
{
  return em_document_get_quote (self)->feature[index].id;
}

/* −1 stands for the rate book's in counts and shares; NaN is that outside. */
static double
from_count (int64_t count)
{
  return count < 0 ? EM_ABSENT : (double) count;
}

static int64_t
to_count (double value)
{
  return em_is_absent (value) ? -1 : (int64_t) value;
}

double
em_feature_get_number (const EmFeature *feature, EmFeatureNumber which)
{
  switch (which)
    {
    case EM_FEATURE_COUNT: return feature->count;
    case EM_FEATURE_STOCK: return feature->stock_mm;
    case EM_FEATURE_CLEARANCE: return feature->clearance_mm;
    case EM_FEATURE_SLOT_WIDTH: return feature->slot_width_mm;
    case EM_FEATURE_SLOT_DEPTH: return feature->slot_depth_mm;
    case EM_FEATURE_SETTING: return feature->setting == 0 ? EM_ABSENT : feature->setting;
    case EM_FEATURE_SAFETY_LAYERS: return from_count (feature->safety_layers);
    case EM_FEATURE_WIRE: return feature->wire_mm;
    case EM_FEATURE_NEAR: return feature->near;
    case EM_FEATURE_ACCESS: return feature->access;
    case EM_FEATURE_MELT_OUT: return feature->melt_out;
    case EM_FEATURE_CAP: return feature->cap;
    case EM_FEATURE_FINISH: return feature->finish;
    case EM_N_FEATURE_NUMBER: break;
    }
  g_return_val_if_reached (EM_ABSENT);
}

static void
put_feature_number (EmFeature *feature, EmFeatureNumber which, double value)
{
  switch (which)
    {
    case EM_FEATURE_COUNT: feature->count = em_is_absent (value) ? 1 : (int32_t) value; break;
    case EM_FEATURE_STOCK: feature->stock_mm = value; break;
    case EM_FEATURE_CLEARANCE: feature->clearance_mm = value; break;
    case EM_FEATURE_SLOT_WIDTH: feature->slot_width_mm = value; break;
    case EM_FEATURE_SLOT_DEPTH: feature->slot_depth_mm = value; break;
    case EM_FEATURE_SETTING: feature->setting = em_is_absent (value) ? 0 : (int32_t) value; break;
    case EM_FEATURE_SAFETY_LAYERS: feature->safety_layers = (int32_t) to_count (value); break;
    case EM_FEATURE_WIRE: feature->wire_mm = value; break;
    case EM_FEATURE_NEAR: feature->near = (EmNear) value; break;
    case EM_FEATURE_ACCESS: feature->access = (EmAccess) value; break;
    case EM_FEATURE_MELT_OUT: feature->melt_out = (EmChoice) value; break;
    case EM_FEATURE_CAP: feature->cap = (EmChoice) value; break;
    case EM_FEATURE_FINISH: feature->finish = (EmFinish) value; break;
    case EM_N_FEATURE_NUMBER: break;
    }
}

double
em_quote_get_number (const EmQuote *quote, EmQuoteNumber which)
{
  switch (which)
    {
    case EM_QUOTE_TOOLS: return quote->n_tools;
    case EM_QUOTE_HARDNESS: return quote->hardness_hrc;
    case EM_QUOTE_SECTION: return quote->section_mm;
    case EM_QUOTE_VALIDITY: return from_count (quote->validity_days);
    case EM_QUOTE_MARGIN: return from_count (quote->margin_ppm);
    case EM_QUOTE_CONTINGENCY: return from_count (quote->contingency_ppm);
    case EM_QUOTE_RUSH: return from_count (quote->rush_ppm);
    case EM_QUOTE_DISCOUNT: return from_count (quote->discount_ppm);
    case EM_QUOTE_LEARNING: return from_count (quote->learning_ppm);
    case EM_QUOTE_FEATURE_FINISH: return quote->finish;
    case EM_QUOTE_PREHEAT: return quote->has_preheat ? quote->preheat : EM_AUTO;
    case EM_N_QUOTE_NUMBER: break;
    }
  g_return_val_if_reached (EM_ABSENT);
}

static void
put_quote_number (EmQuote *quote, EmQuoteNumber which, double value)
{
  switch (which)
    {
    case EM_QUOTE_TOOLS: quote->n_tools = em_is_absent (value) ? 1 : (int32_t) value; break;
    case EM_QUOTE_HARDNESS: quote->hardness_hrc = value; break;
    case EM_QUOTE_SECTION: quote->section_mm = value; break;
    case EM_QUOTE_VALIDITY: quote->validity_days = (int32_t) to_count (value); break;
    case EM_QUOTE_MARGIN: quote->margin_ppm = to_count (value); break;
    case EM_QUOTE_CONTINGENCY: quote->contingency_ppm = to_count (value); break;
    case EM_QUOTE_RUSH: quote->rush_ppm = to_count (value); break;
    case EM_QUOTE_DISCOUNT: quote->discount_ppm = to_count (value); break;
    case EM_QUOTE_LEARNING: quote->learning_ppm = to_count (value); break;
    case EM_QUOTE_FEATURE_FINISH: quote->finish = (EmFinish) value; break;
    case EM_QUOTE_PREHEAT:
      quote->preheat = (EmChoice) value;
      quote->has_preheat = quote->preheat != EM_AUTO;
      break;
    case EM_N_QUOTE_NUMBER: break;
    }
}

typedef struct
{
  int32_t         index, to;
  guint           which;
  int             field;
  EmBound3        bound;
  double          value;
  const char     *text;
  int64_t         minor;
  gboolean        flag;
  const void     *more;
} EmEdit;

/* The quote */

static void
put_text (EmQuote *quote, gconstpointer data)
{
  const EmEdit *edit = data;

  em_quote_set_text (quote, (EmQuoteText) edit->which, edit->text);
}

gboolean
em_document_set_text (EmDocument *self, EmQuoteText which, const char *text)
{
  EmEdit edit = { .which = which, .text = text };

  if (which == EM_QUOTE_NOTES)
    return em_document_set_notes (self, text);
  return em_document_edit_quote (self, edit_key (KEY_QUOTE_TEXT, which, 0), EM_CHANGE_DETAILS, put_text, &edit);
}

static void
put_machine (EmQuote *quote, gconstpointer data)
{
  const EmEdit *edit = data;

  em_quote_set_text (quote, EM_QUOTE_MACHINE, edit->text);
  em_quote_set_text (quote, EM_QUOTE_PROCESS, edit->more);
}

gboolean
em_document_set_machine (EmDocument *self, const char *machine_id, const char *process_id)
{
  EmEdit edit = { .text = machine_id, .more = process_id };

  return em_document_edit_quote (self, edit_key (KEY_QUOTE_TEXT, EM_QUOTE_MACHINE, 0), EM_CHANGE_DETAILS, put_machine, &edit);
}

static void
put_number (EmQuote *quote, gconstpointer data)
{
  const EmEdit *edit = data;

  put_quote_number (quote, (EmQuoteNumber) edit->which, edit->value);
}

gboolean
em_document_set_number (EmDocument *self, EmQuoteNumber which, double value)
{
  EmEdit edit = { .which = which, .value = value };

  return em_document_edit_quote (self, edit_key (KEY_QUOTE_NUMBER, which, 0), EM_CHANGE_DETAILS, put_number, &edit);
}

static void
put_units (EmQuote *quote, gconstpointer data)
{
  quote->units = ((const EmEdit *) data)->which == EM_UNITS_INCH ? EM_UNITS_INCH : EM_UNITS_METRIC;
}

gboolean
em_document_set_units (EmDocument *self, EmUnits units)
{
  EmEdit edit = { .which = units };

  return em_document_edit_quote (self, 0, EM_CHANGE_UNITS, put_units, &edit);
}

static void
put_state (EmQuote *quote, gconstpointer data)
{
  quote->state = (EmState) ((const EmEdit *) data)->which;
  quote->has_sent_rates = quote->state != EM_STATE_DRAFT;
}

gboolean
em_document_set_state (EmDocument *self, EmState state)
{
  EmEdit edit = { .which = state };

  if (state != EM_STATE_DRAFT && !em_document_get_quote (self)->has_sent_rates)
    em_document_take_sent_basis (self);
  return em_document_edit_quote (self, 0, EM_CHANGE_DETAILS | EM_CHANGE_BASIS, put_state, &edit);
}

static void
put_breaks (EmQuote *quote, gconstpointer data)
{
  const EmEdit *edit = data;

  quote->n_breaks = MIN (edit->to, EM_BREAK_MAX);
  memset (quote->break_tools, 0, sizeof quote->break_tools);
  if (quote->n_breaks > 0)
    memcpy (quote->break_tools, edit->more, (gsize) quote->n_breaks * sizeof (int32_t));
}

gboolean
em_document_set_breaks (EmDocument *self, const int32_t *tools, int32_t n)
{
  EmEdit edit = { .more = tools, .to = n };

  return em_document_edit_quote (self, edit_key (KEY_BREAKS, 0, 0), EM_CHANGE_DETAILS, put_breaks, &edit);
}

static void
put_new_extra (EmQuote *quote, gconstpointer data)
{
  const EmEdit *edit = data;
  EmExtra extra = { em_text_dup (edit->text), edit->minor, edit->flag };

  em_quote_add_extra_take (quote, &extra);
}

gboolean
em_document_add_extra (EmDocument *self, const char *label, int64_t cost_minor, gboolean is_per_tool)
{
  EmEdit edit = { .text = label, .minor = cost_minor, .flag = is_per_tool };

  return em_document_edit_quote (self, 0, EM_CHANGE_DETAILS, put_new_extra, &edit);
}

static void
put_extra (EmQuote *quote, gconstpointer data)
{
  const EmEdit *edit = data;
  EmExtra *extra = &quote->extra[edit->index];

  if (!em_text_equal (extra->label, edit->text))
    {
      free (extra->label);
      extra->label = em_text_dup (edit->text);
    }
  extra->cost_minor = edit->minor;
  extra->is_per_tool = edit->flag;
}

gboolean
em_document_set_extra (EmDocument *self, int32_t index, const char *label, int64_t cost_minor, gboolean is_per_tool)
{
  EmEdit edit = { .index = index, .text = label, .minor = cost_minor, .flag = is_per_tool };

  return em_document_edit_quote (self, edit_key (KEY_EXTRA, 0, (guint) index), EM_CHANGE_DETAILS, put_extra, &edit);
}

static void
drop_extra (EmQuote *quote, gconstpointer data)
{
  em_quote_remove_extra (quote, ((const EmEdit *) data)->index);
}

gboolean
em_document_remove_extra (EmDocument *self, int32_t index)
{
  EmEdit edit = { .index = index };

  return em_document_edit_quote (self, 0, EM_CHANGE_DETAILS, drop_extra, &edit);
}

/* A feature */

/* Whether the customer's words speak of it, so that a correction must be remembered with them. */
static gboolean
has_words (const EmQuote *quote, uint32_t id)
{
  for (int32_t i = 0; i < quote->n_marks; i++)
    if (quote->mark[i].feature_id == id)
      return TRUE;
  return FALSE;
}

static double *
bound_of (EmFeature *feature, EmBound3 bound)
{
  return bound == EM_LIKELY ? feature->value : bound == EM_LOW ? feature->low : feature->high;
}

static void
put_value (EmFeature *feature, gconstpointer data)
{
  const EmEdit *edit = data;

  bound_of (feature, edit->bound)[edit->field] = edit->value;
  feature->origin[edit->field] = EM_ORIGIN_ENTERED;
}

gboolean
em_document_set_value (EmDocument *self, int32_t index, int field, EmBound3 bound, double value)
{
  const EmFeature *feature = &em_document_get_quote (self)->feature[index];
  const double present = (bound == EM_LIKELY ? feature->value : bound == EM_LOW ? feature->low : feature->high)[field];
  EmEdit edit = { .field = field, .bound = bound, .value = value };

  if (present == value || (em_is_absent (present) && em_is_absent (value)))
    return FALSE;
  return em_document_correct_feature (self, index, edit_key (KEY_VALUE, (guint) field * 4 + bound, feature->id),
                  feature->kind->fields[field].id, put_value, &edit);
}

static void
put_reading (EmFeature *feature, gconstpointer data)
{
  const EmEdit *edit = data;
  const EmReading *reading = edit->more;

  feature->value[edit->field] = reading->value;
  feature->origin[edit->field] = EM_ORIGIN_ENTERED;
  if (!em_is_absent (reading->low) || !em_is_absent (reading->high))
    {
      feature->low[edit->field] = reading->low;
      feature->high[edit->field] = reading->high;
    }
  if (!em_is_absent (reading->count) && reading->count >= 1 && reading->count <= em_feature_numbers[EM_FEATURE_COUNT].high)
    feature->count = (int32_t) reading->count;
}

gboolean
em_document_set_reading (EmDocument *self, int32_t index, int field, const EmReading *reading)
{
  const EmFeature *feature = &em_document_get_quote (self)->feature[index];
  EmEdit edit = { .field = field, .more = reading };

  if (feature->value[field] == reading->value && em_is_absent (reading->count) && em_is_absent (reading->low)
      && em_is_absent (reading->high))
    return FALSE;
  return em_document_correct_feature (self, index, edit_key (KEY_VALUE, (guint) field * 4 + EM_LIKELY, feature->id),
                  feature->kind->fields[field].id, put_reading, &edit);
}

static void
put_shared (EmFeature *feature, gconstpointer data)
{
  const EmEdit *edit = data;

  put_feature_number (feature, (EmFeatureNumber) edit->which, edit->value);
}

gboolean
em_document_set_feature_number (EmDocument *self, int32_t index, EmFeatureNumber which, double value)
{
  EmEdit edit = { .which = which, .value = value };

  return em_document_correct_feature (self, index, edit_key (KEY_FEATURE_NUMBER, which, feature_id (self, index)),
                  em_feature_numbers[which].id, put_shared, &edit);
}

static void
put_feature_text (EmFeature *feature, gconstpointer data)
{
  const EmEdit *edit = data;

  em_feature_set_text (feature, (EmFeatureText) edit->which, edit->text);
}

gboolean
em_document_set_feature_text (EmDocument *self, int32_t index, EmFeatureText which, const char *text)
{
  EmEdit edit = { .which = which, .text = text };
  guint64 key = edit_key (KEY_FEATURE_TEXT, which, feature_id (self, index));

  if (which == EM_FEATURE_LABEL)
    return em_document_correct_feature (self, index, key, "label", put_feature_text, &edit);
  return em_document_edit_feature (self, index, key, put_feature_text, &edit);
}

static void
put_feature_machine (EmFeature *feature, gconstpointer data)
{
  const EmEdit *edit = data;

  em_feature_set_text (feature, EM_FEATURE_MACHINE, edit->text);
  em_feature_set_text (feature, EM_FEATURE_PROCESS, edit->more);
}

gboolean
em_document_set_feature_machine (EmDocument *self, int32_t index, const char *machine_id, const char *process_id)
{
  EmEdit edit = { .text = machine_id, .more = process_id };

  return em_document_edit_feature (self, index, edit_key (KEY_FEATURE_TEXT, EM_FEATURE_MACHINE, feature_id (self, index)),
                                   put_feature_machine, &edit);
}

static void
put_accepted (EmFeature *feature, gconstpointer data)
{
  (void) data;
  for (int i = 0; i < feature->kind->n_fields; i++)
    feature->origin[i] = EM_ORIGIN_ENTERED;
}

gboolean
em_document_accept (EmDocument *self, int32_t index)
{
  return em_document_edit_feature (self, index, 0, put_accepted, NULL);
}

gboolean
em_feature_is_read (const EmFeature *feature)
{
  for (int i = 0; i < feature->kind->n_fields; i++)
    if (feature->origin[i] != EM_ORIGIN_ENTERED)
      return TRUE;
  return FALSE;
}

static void
put_wire (EmQuote *quote, gconstpointer data)
{
  em_quote_set_text (quote, EM_QUOTE_FILLER, ((const EmEdit *) data)->text);
  for (int32_t i = 0; i < quote->n_features; i++)
    em_feature_set_text (&quote->feature[i], EM_FEATURE_FILLER, NULL);
}

gboolean
em_document_choose_wire (EmDocument *self, int32_t index, const char *filler_id)
{
  const char *common = em_document_get_quote (self)->text[EM_QUOTE_FILLER];
  EmEdit edit = { .text = filler_id };

  if (index < 0)
    return em_document_edit_quote (self, 0, EM_CHANGE_DETAILS | EM_CHANGE_FEATURE, put_wire, &edit);
  em_document_break (self);
  return em_document_set_feature_text (self, index, EM_FEATURE_FILLER, em_text_equal (filler_id, common) ? NULL : filler_id);
}

static void
put_override (EmFeature *feature, gconstpointer data)
{
  const EmEdit *edit = data;

  feature->has_override = edit->flag;
  feature->override_minor = edit->flag ? edit->minor : 0;
}

gboolean
em_document_set_override (EmDocument *self, int32_t index, gboolean has_override, int64_t minor)
{
  EmEdit edit = { .flag = has_override, .minor = minor };

  return em_document_edit_feature (self, index, edit_key (KEY_OVERRIDE, 0, feature_id (self, index)), put_override, &edit);
}

static void
put_actual (EmFeature *feature, gconstpointer data)
{
  feature->actual = *(const EmActual *) ((const EmEdit *) data)->more;
}

gboolean
em_document_set_actual (EmDocument *self, int32_t index, const EmActual *actual)
{
  EmEdit edit = { .more = actual };

  return em_document_edit_feature (self, index, edit_key (KEY_OVERRIDE, 1, feature_id (self, index)), put_actual, &edit);
}

/* The list */

static void
put_new (EmQuote *quote, gconstpointer data)
{
  const EmEdit *edit = data;
  EmFeature feature;

  em_feature_init (&feature, edit->more);
  em_quote_insert_take (quote, edit->to, &feature);
}

static gboolean
edit_list (EmDocument *self, EmEditQuote func, const EmEdit *edit, int32_t select)
{
  gboolean is_changed = em_document_edit_quote (self, 0, EM_CHANGE_LIST | EM_CHANGE_MARKS, func, edit);
  const EmQuote *quote = em_document_get_quote (self);

  if (is_changed && quote->n_features > 0)
    em_document_set_selected (self, quote->feature[CLAMP (select, 0, quote->n_features - 1)].id);
  return is_changed;
}

gboolean
em_document_insert (EmDocument *self, int32_t at, const EmKind *kind)
{
  EmEdit edit = { .to = at, .more = kind };

  return edit_list (self, put_new, &edit, at);
}

static void
put_twin (EmQuote *quote, gconstpointer data)
{
  const EmEdit *edit = data;
  EmFeature feature;

  if (em_feature_copy (&quote->feature[edit->index], &feature) != EM_OK)
    return;
  feature.id = 0;
  em_quote_insert_take (quote, edit->index + 1, &feature);
}

gboolean
em_document_duplicate (EmDocument *self, int32_t index)
{
  EmEdit edit = { .index = index };

  return edit_list (self, put_twin, &edit, index + 1);
}

static void
drop_feature (EmQuote *quote, gconstpointer data)
{
  int32_t index = ((const EmEdit *) data)->index;

  if (has_words (quote, quote->feature[index].id))
    em_notes_reject (quote, index);
  else
    em_quote_remove (quote, index, NULL);
}

gboolean
em_document_remove (EmDocument *self, int32_t index)
{
  EmEdit edit = { .index = index };

  return edit_list (self, drop_feature, &edit, index);
}

static void
put_move (EmQuote *quote, gconstpointer data)
{
  const EmEdit *edit = data;

  em_quote_move (quote, edit->index, edit->to);
}

gboolean
em_document_move (EmDocument *self, int32_t from, int32_t to)
{
  EmEdit edit = { .index = from, .to = to };

  return edit_list (self, put_move, &edit, to);
}

char *
em_document_copy_xml (EmDocument *self, int32_t index)
{
  return em_features_to_xml (&em_document_get_quote (self)->feature[index], 1);
}

static void
put_features (EmQuote *quote, gconstpointer data)
{
  const EmEdit *edit = data;
  const EmQuote *from = edit->more;

  for (int32_t i = 0; i < from->n_features; i++)
    {
      EmFeature feature;
      if (em_feature_copy (&from->feature[i], &feature) != EM_OK)
        return;
      feature.id = 0;
      /* This quote has no words for it to come from. */
      put_accepted (&feature, NULL);
      em_quote_insert_take (quote, edit->to + i, &feature);
    }
}

gboolean
em_document_paste_xml (EmDocument *self, int32_t at, const char *xml, GError **error)
{
  EmQuote pasted;

  if (!em_features_from_xml (xml, -1, &pasted, error))
    return FALSE;

  EmEdit edit = { .to = at, .more = &pasted };
  gboolean is_changed = edit_list (self, put_features, &edit, at + pasted.n_features - 1);

  em_quote_clear (&pasted);
  return is_changed;
}
