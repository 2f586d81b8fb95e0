/* em-kind: the table of feature kinds, and what every kind's solve has in common.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-kind.h"
#include "kinds/em-kind-parts.h"

#include <string.h>

const EmKind *const em_kinds[] =
{
  &em_kind_edge_nick, &em_kind_worn_corner, &em_kind_sidewall, &em_kind_face, &em_kind_rib, &em_kind_bore, &em_kind_seat,
  &em_kind_pin, &em_kind_dam, &em_kind_recess, &em_kind_groove,
};

const int em_n_kinds = sizeof em_kinds / sizeof em_kinds[0];

const EmKind *
em_kind_find (const char *id)
{
  for (int i = 0; id != NULL && i < em_n_kinds; i++)
    if (em_kinds[i]->id[0] == id[0] && strcmp (em_kinds[i]->id, id) == 0)
      return em_kinds[i];
  return NULL;
}

int
em_kind_field (const EmKind *kind, const char *field_id)
{
  for (int i = 0; field_id != NULL && i < kind->n_fields; i++)
    if (strcmp (kind->fields[i].id, field_id) == 0)
      return i;
  return -1;
}

/* value[] may lack the choice: its preset then decides. */
bool
em_field_is_shown (const EmKind *kind, int field, const double *value)
{
  int choice = em_kind_field (kind, kind->fields[field].shown_when);

  if (choice < 0)
    return true;

  double option = em_is_absent (value[choice]) ? kind->fields[choice].preset : value[choice];

  return option >= 0.0 && option < 32.0 && (kind->fields[field].shown_mask >> (unsigned) option & 1u) != 0;
}

static double
last_option (const EmField *field)
{
  int n = 0;

  while (field->options[n] != NULL)
    n++;
  return n - 1;
}

static EmStatus
check_field (const EmField *field, double value, EmFault *out_fault)
{
  bool is_choice = field->quantity == EM_QUANTITY_CHOICE;
  double low = is_choice ? 0.0 : field->low, high = is_choice ? last_option (field) : field->high;
  bool low_is_open = !is_choice && !field->low_allowed;
  EmStatus status = EM_OK;

  if (em_is_absent (value))
    status = field->is_required ? EM_FAULT_MISSING : EM_OK;
  else if (isinf (value))
    status = EM_FAULT_NOT_FINITE;
  else if (value < low || value > high || (value <= low && low_is_open))
    status = EM_FAULT_RANGE;
  else if ((is_choice || field->quantity == EM_QUANTITY_COUNT) && floor (value) < value)
    status = EM_FAULT_RANGE;
  if (status == EM_OK)
    return EM_OK;
  return em_fault_open (out_fault, low_is_open, false, em_fault_set (out_fault, status, field->id, value, low, high));
}

/* Where a kind's own rule leaves the lower end to the field, the field's own limit holds there, and may be refused itself. */
static void
open_low (const EmKind *kind, EmFault *fault)
{
  int field = fault != NULL ? em_kind_field (kind, fault->field) : -1;

  if (field >= 0 && fault->low <= kind->fields[field].low && !kind->fields[field].low_allowed && kind->fields[field].options == NULL)
    fault->low_is_open = true;
}

EmStatus
em_shape_solve (const EmKind *kind, const double *value, EmShape *out_shape, EmFault *out_fault)
{
  double filled[EM_FIELD_MAX];
  EmShape shape = { .kind = kind };

  for (int i = 0; i < EM_FIELD_MAX; i++)
    filled[i] = EM_ABSENT;
  for (int i = 0; i < kind->n_fields; i++)
    {
      if (!em_field_is_shown (kind, i, value))
        continue;
      filled[i] = em_is_absent (value[i]) ? kind->fields[i].preset : value[i];

      EmStatus status = check_field (&kind->fields[i], filled[i], out_fault);

      if (status != EM_OK)
        return status;
    }

  EmStatus status = kind->solve (filled, &shape, out_fault);

  if (status != EM_OK)
    {
      open_low (kind, out_fault);
      return status;
    }
  if (!(shape.net_volume_mm3 > 0.0 && shape.height_mm > 0.0 && isfinite (shape.net_volume_mm3)))
    return em_fault_set (out_fault, EM_FAULT_RANGE, kind->fields[0].id, filled[0], EM_ABSENT, EM_ABSENT);
  *out_shape = shape;
  return EM_OK;
}
