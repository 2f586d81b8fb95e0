/* em-feature-slot: what an entry of the feature editor stands for.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-feature-slot.h"

#include "em-words.h"

#include <glib/gi18n.h>

const EmSharedRow em_shared_rows[] =
{
  { EM_FEATURE_COUNT, GROUP_PLACE, N_("Places"), NULL },
  { EM_FEATURE_ACCESS, GROUP_PLACE, N_("Access"), NULL },
  { EM_FEATURE_NEAR, GROUP_PLACE, N_("Near it"), NULL },
  { EM_FEATURE_CLEARANCE, GROUP_PLACE, N_("Clearance"), NULL },
  { EM_FEATURE_SLOT_WIDTH, GROUP_PLACE, N_("Slot width"), N_("no slot") },
  { EM_FEATURE_SLOT_DEPTH, GROUP_PLACE, N_("Slot depth"), N_("no slot") },
  { EM_FEATURE_SETTING, GROUP_PLACE, N_("Shared setting"), N_("its own") },
  { EM_FEATURE_WIRE, GROUP_WELD, N_("Wire diameter"), N_("cheapest") },
  { EM_FEATURE_STOCK, GROUP_WELD, N_("Machining allowance"), N_("rate book") },
  { EM_FEATURE_SAFETY_LAYERS, GROUP_WELD, N_("Layers for safety"), N_("rate book") },
  { EM_FEATURE_MELT_OUT, GROUP_WELD, N_("Melt out first"), NULL },
  { EM_FEATURE_CAP, GROUP_WELD, N_("Cap the edges"), NULL },
  { EM_FEATURE_FINISH, GROUP_WELD, N_("Finish"), NULL },
};
const int em_n_shared_rows = G_N_ELEMENTS (em_shared_rows);

const char *const *
em_shared_options (EmFeatureNumber number)
{
  static const char *near[EM_N_NEAR + 1], *access[EM_N_ACCESS + 1], *finish[EM_N_FINISH + 1], *choice[4];

  switch (number)
    {
    case EM_FEATURE_NEAR:
      for (int i = 0; i < EM_N_NEAR; i++)
        near[i] = em_words_near ((EmNear) i);
      return near;
    case EM_FEATURE_ACCESS:
      for (int i = 0; i < EM_N_ACCESS; i++)
        access[i] = em_words_access ((EmAccess) i);
      return access;
    case EM_FEATURE_FINISH:
      for (int i = 0; i < EM_N_FINISH; i++)
        finish[i] = em_words_finish ((EmFinish) i);
      return finish;
    default:
      choice[0] = _("As the kind needs");
      choice[1] = _("Yes");
      choice[2] = _("No");
      return choice;
    }
}

const char *const *
em_field_options (const EmField *field)
{
  static const char *names[33];
  int n = 0;

  for (; n < 32 && field->option_names != NULL && field->option_names[n] != NULL; n++)
    names[n] = em_words (field->option_names[n]);
  names[n] = NULL;
  return names;
}

const char *
em_slot_id (const EmSlot *slot, const EmKind *kind)
{
  return slot->is_shared ? em_feature_numbers[slot->field].id : kind->fields[slot->field].id;
}

double
em_slot_value (const EmSlot *slot, const EmFeature *feature)
{
  if (slot->is_shared)
    return em_feature_get_number (feature, (EmFeatureNumber) slot->field);
  switch (slot->bound)
    {
    case EM_LOW: return feature->low[slot->field];
    case EM_HIGH: return feature->high[slot->field];
    case EM_LIKELY: break;
    }
  return feature->value[slot->field];
}

gboolean
em_slot_is_shown (const EmSlot *slot, const EmFeature *feature)
{
  if (!slot->is_shared)
    return em_field_is_shown (feature->kind, slot->field, feature->value);
  switch (slot->field)
    {
    case EM_FEATURE_SLOT_WIDTH:
    case EM_FEATURE_SLOT_DEPTH:
      return feature->kind->sits_in_slot || !em_is_absent (em_slot_value (slot, feature));
    case EM_FEATURE_CLEARANCE:
      return feature->near != EM_NEAR_NOTHING || !em_is_absent (feature->clearance_mm);
    default:
      return TRUE;
    }
}

const char *
em_slot_remark (const EmSlot *slot, const EmFeature *feature)
{
  if (slot->is_shared || slot->bound != EM_LIKELY)
    return NULL;
  switch (feature->origin[slot->field])
    {
    case EM_ORIGIN_READ: return _("from the notes");
    case EM_ORIGIN_INFERRED: return _("inferred from the notes");
    default: break;
    }
  if (feature->kind->fields[slot->field].is_required && em_is_absent (feature->value[slot->field]))
    return _("still needed");
  return em_feature_is_read (feature) ? "" : NULL;
}
