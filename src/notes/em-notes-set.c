/* em-notes-set: one read field into a feature or quote.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-notes-set.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <stddef.h>
#include <string.h>

enum { COUNT_MAX = 10000, TOOLS_MAX = 10000 };

G_STATIC_ASSERT (offsetof (EmReadField, feature) == 0);
G_STATIC_ASSERT (offsetof (EmReadQuestion, feature) == 0);

const char *const em_general_fields[] = {
  "units", "base", "hardness", "coating", "tools", "reference", "drawing", "tool_number", "finish", NULL,
};

static const struct { const char *field; EmQuoteText text; } quote_texts[] = {
  { "base", EM_QUOTE_BASE },           { "coating", EM_QUOTE_COATING },
  { "reference", EM_QUOTE_REFERENCE }, { "drawing", EM_QUOTE_DRAWING },
  { "tool_number", EM_QUOTE_TOOL_NUMBER },
};

/* What the lexicons call a coating. The quote takes it in the office's language, since it is printed. */
static const char *const coatings[] =
{
  /* Translators: a coating of hard chrome. Has to hold "chrom" or "crom": the cautions know it by that. */
  N_("chrome"),
  /* Translators: a nitrided case. Has to hold "nitr": the cautions know it by that. */
  N_("nitride"),
  /* Translators: a film by physical vapor deposition. Has to hold "pvd". */
  N_("pvd"),
  N_("nickel"),
};

static int
index_of (const char *const *ids, int n, const char *id)
{
  for (int i = 0; i < n; i++)
    if (g_strcmp0 (ids[i], id) == 0)
      return i;
  return -1;
}

static gboolean
is (const EmReadField *field, const char *name)
{
  return strcmp (field->field, name) == 0;
}

static void
set_kind_value (EmFeature *feature, int index, const EmReadField *field, EmOrigin origin)
{
  const EmField *info = &feature->kind->fields[index];
  double value = field->value;

  if (info->quantity == EM_QUANTITY_CHOICE)
    {
      value = EM_ABSENT;
      for (int i = 0; info->options != NULL && info->options[i] != NULL; i++)
        if (g_strcmp0 (info->options[i], field->text) == 0)
          value = i;
    }
  if (isnan (value))
    return;
  feature->value[index] = value;
  feature->low[index] = field->low;
  feature->high[index] = field->high;
  feature->origin[index] = (uint8_t) origin;
}

/* Behind the metal that the remark tells, once; a remark of the office's own stays as it is. */
static void
add_hardness (EmFeature *feature, double hrc)
{
  const char *said = feature->text[EM_FEATURE_REMARK];
  g_autofree char *metal = g_strdup_printf (_("Metal of this part: %s"), ""), *remark = NULL;

  if (said == NULL || !g_str_has_prefix (said, metal) || strchr (said, ',') != NULL)
    return;
  remark = g_strdup_printf ("%s, %.0f HRC", said, hrc);
  em_feature_set_text (feature, EM_FEATURE_REMARK, remark);
}

/* What a coating is called in the office's language. */
static const char *
coating_name (const char *coating)
{
  return index_of (coatings, G_N_ELEMENTS (coatings), coating) >= 0 ? _(coating) : coating;
}

/* Behind the metal that the remark tells, or alone; once. A remark of the office's own stays as it is. */
static void
add_coating (EmFeature *feature, const char *coating)
{
  const char *said = feature->text[EM_FEATURE_REMARK], *name = coating_name (coating);
  g_autofree char *metal = g_strdup_printf (_("Metal of this part: %s"), ""), *remark = NULL;

  if (said == NULL)
    remark = g_strdup_printf (_("Coating of this part: %s"), name);
  else if (g_str_has_prefix (said, metal) && strstr (said, name) == NULL)
    remark = g_strdup_printf ("%s, %s", said, name);
  if (remark != NULL)
    em_feature_set_text (feature, EM_FEATURE_REMARK, remark);
}

static void
set_shared (EmFeature *feature, const EmReadField *field)
{
  int k;

  if (is (field, "count") && field->value >= 1 && field->value <= COUNT_MAX)
    feature->count = (int32_t) field->value;
  else if (is (field, "stock"))
    feature->stock_mm = field->value;
  else if (is (field, "clearance"))
    feature->clearance_mm = field->value;
  else if (is (field, "slot_width"))
    feature->slot_width_mm = field->value;
  else if (is (field, "slot_depth"))
    feature->slot_depth_mm = field->value;
  else if (is (field, "near") && (k = index_of (em_near_ids, EM_N_NEAR, field->text)) >= 0)
    feature->near = (EmNear) k;
  else if (is (field, "access") && (k = index_of (em_access_ids, EM_N_ACCESS, field->text)) >= 0)
    feature->access = (EmAccess) k;
  else if (is (field, "finish") && (k = index_of (em_finish_ids, EM_N_FINISH, field->text)) >= 0)
    feature->finish = (EmFinish) k;
  else if (is (field, "label") && feature->text[EM_FEATURE_LABEL] == NULL)
    em_feature_set_text (feature, EM_FEATURE_LABEL, field->text);
  else if (is (field, "refuse") && feature->text[EM_FEATURE_REMARK] == NULL)
    {
      g_autofree char *remark = g_strdup_printf (_("Keep free of weld: %s"), field->text);

      em_feature_set_text (feature, EM_FEATURE_REMARK, remark);
    }
  else if (is (field, "base") && feature->text[EM_FEATURE_REMARK] == NULL)
    {
      g_autofree char *metal = g_ascii_strup (field->text, -1), *remark = g_strdup_printf (_("Metal of this part: %s"), metal);

      em_feature_set_text (feature, EM_FEATURE_REMARK, remark);
    }
  else if (is (field, "hardness"))
    add_hardness (feature, field->value);
  else if (is (field, "coating"))
    add_coating (feature, field->text);
}

void
em_feature_set_read (EmFeature *feature, const EmReadField *field, EmOrigin origin)
{
  int index = em_kind_field (feature->kind, field->field);

  if (index >= 0)
    set_kind_value (feature, index, field, origin);
  else
    set_shared (feature, field);
}

void
em_feature_reset_shared (EmFeature *feature, const char *field)
{
  if (strcmp (field, "count") == 0)
    feature->count = 1;
  else if (strcmp (field, "stock") == 0)
    feature->stock_mm = EM_ABSENT;
  else if (strcmp (field, "clearance") == 0)
    feature->clearance_mm = EM_ABSENT;
  else if (strcmp (field, "near") == 0)
    feature->near = EM_NEAR_NOTHING;
  else if (strcmp (field, "slot_width") == 0)
    feature->slot_width_mm = EM_ABSENT;
  else if (strcmp (field, "slot_depth") == 0)
    feature->slot_depth_mm = EM_ABSENT;
  else if (strcmp (field, "access") == 0)
    feature->access = EM_ACCESS_OPEN;
  else if (strcmp (field, "finish") == 0)
    feature->finish = EM_FINISH_DEFAULT;
}

void
em_feature_change_kind (EmFeature *feature, const EmKind *kind)
{
  EmFeature fresh;

  em_feature_init (&fresh, kind);
  for (int i = 0; i < feature->kind->n_fields; i++)
    {
      int to = em_kind_field (kind, feature->kind->fields[i].id);

      if (to < 0 || kind->fields[to].quantity == EM_QUANTITY_CHOICE)
        continue;
      fresh.value[to] = feature->value[i];
      fresh.low[to] = feature->low[i];
      fresh.high[to] = feature->high[i];
      fresh.origin[to] = feature->origin[i];
    }
  memcpy (feature->value, fresh.value, sizeof fresh.value);
  memcpy (feature->low, fresh.low, sizeof fresh.low);
  memcpy (feature->high, fresh.high, sizeof fresh.high);
  memcpy (feature->origin, fresh.origin, sizeof fresh.origin);
  feature->kind = kind;
  em_feature_clear (&fresh);
}

gboolean
em_feature_has_entered (const EmFeature *feature)
{
  for (int i = 0; i < feature->kind->n_fields; i++)
    if (feature->origin[i] == EM_ORIGIN_ENTERED && !em_is_absent (feature->value[i]))
      return TRUE;
  return feature->has_override || feature->text[EM_FEATURE_FILLER] != NULL || !em_is_absent (feature->actual.arc_on_s);
}

void
em_quote_set_general (EmQuote *quote, const EmReadField *field)
{
  for (gsize i = 0; i < G_N_ELEMENTS (quote_texts); i++)
    if (is (field, quote_texts[i].field))
      em_quote_set_text (quote, quote_texts[i].text, is (field, "coating") ? coating_name (field->text) : field->text);
  /* The unit shown is the first one named. */
  if (is (field, "units") && g_strcmp0 (field->reason, "units-differ") != 0)
    quote->units = g_strcmp0 (field->text, "in") == 0 ? EM_UNITS_INCH : EM_UNITS_METRIC;
  else if (is (field, "hardness"))
    quote->hardness_hrc = field->value;
  else if (is (field, "tools") && field->value >= 1 && field->value <= TOOLS_MAX)
    quote->n_tools = (int32_t) field->value;
  else if (is (field, "finish"))
    {
      int k = index_of (em_finish_ids, EM_N_FINISH, field->text);

      quote->finish = k >= 0 ? (EmFinish) k : quote->finish;
    }
}

void
em_quote_reset_general (EmQuote *quote, const char *field)
{
  for (gsize i = 0; i < G_N_ELEMENTS (quote_texts); i++)
    if (strcmp (field, quote_texts[i].field) == 0)
      em_quote_set_text (quote, quote_texts[i].text, NULL);
  if (strcmp (field, "hardness") == 0)
    quote->hardness_hrc = EM_ABSENT;
  else if (strcmp (field, "tools") == 0)
    quote->n_tools = 1;
  else if (strcmp (field, "finish") == 0)
    quote->finish = EM_FINISH_DEFAULT;
}

gboolean
em_quote_lacks_general (const EmQuote *quote, const char *field)
{
  for (gsize i = 0; i < G_N_ELEMENTS (quote_texts); i++)
    if (strcmp (field, quote_texts[i].field) == 0)
      return quote->text[quote_texts[i].text] == NULL;
  if (strcmp (field, "hardness") == 0)
    return em_is_absent (quote->hardness_hrc);
  if (strcmp (field, "tools") == 0)
    return quote->n_tools <= 1;
  if (strcmp (field, "finish") == 0)
    return quote->finish == EM_FINISH_DEFAULT;
  return TRUE;
}

/* EmReadField and EmReadQuestion both begin with their feature, and both arrays are in its order. */
static void
find_range (const GArray *array, guint element_size, int feature, guint *out_first, guint *out_last)
{
  guint low = 0, high = array->len;

  while (low < high)
    {
      guint middle = low + (high - low) / 2;

      if (*(const int *) (const void *) (array->data + (gsize) middle * element_size) < feature)
        low = middle + 1;
      else
        high = middle;
    }
  *out_first = low;
  while (low < array->len && *(const int *) (const void *) (array->data + (gsize) low * element_size) == feature)
    low++;
  *out_last = low;
}

void
em_read_result_range (const EmReadResult *result, int feature, guint *out_first, guint *out_last)
{
  find_range (result->fields, sizeof (EmReadField), feature, out_first, out_last);
}

void
em_read_result_questions (const EmReadResult *result, int feature, guint *out_first, guint *out_last)
{
  find_range (result->questions, sizeof (EmReadQuestion), feature, out_first, out_last);
}
