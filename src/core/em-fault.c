/* em-fault: filling a fault.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-fault.h"

#include <stddef.h>

EmStatus
em_fault_set (EmFault *out_fault, EmStatus code, const char *field,
              double value, double low, double high)
{
  if (out_fault != NULL)
    *out_fault = (EmFault) { .code = code, .field = field, .row = EM_ROW_QUOTE,
                             .value = value, .low = low, .high = high };
  return code;
}

EmStatus
em_fault_set_conflict (EmFault *out_fault, const char *field, const char *other_field,
                       double value, double low, double high)
{
  em_fault_set (out_fault, EM_FAULT_CONFLICT, field, value, low, high);
  if (out_fault != NULL)
    out_fault->other_field = other_field;
  return EM_FAULT_CONFLICT;
}
