/* em-rates: life, copies and checks of the shop's rate book.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-rates.h"

#include <stdlib.h>
#include <string.h>

const char *const em_shop_text_ids[EM_N_SHOP_TEXT] =
{
  "name", "address", "phone", "email", "web", "registration", "bank", "logo", "terms", "paper", "number_pattern",
  "edition", "extra",
};

/* ---- one value by its row ---- */

double
em_rate_get (const EmRateField *field, const void *holder)
{
  const char *at = (const char *) holder + field->offset;

  switch (field->type)
    {
    case EM_RATE_MINOR:
    case EM_RATE_PPM:
      return (double) *(const int64_t *) (const void *) at;
    case EM_RATE_REAL:
      return *(const double *) (const void *) at;
    case EM_RATE_WHOLE:
      return *(const int32_t *) (const void *) at;
    case EM_RATE_BOOL:
      return *(const bool *) (const void *) at ? 1.0 : 0.0;
    }
  return NAN;
}

void
em_rate_set (const EmRateField *field, void *holder, double value)
{
  char *at = (char *) holder + field->offset;

  switch (field->type)
    {
    case EM_RATE_MINOR:
    case EM_RATE_PPM:
      *(int64_t *) (void *) at = (int64_t) value;
      break;
    case EM_RATE_REAL:
      *(double *) (void *) at = value;
      break;
    case EM_RATE_WHOLE:
      *(int32_t *) (void *) at = (int32_t) value;
      break;
    case EM_RATE_BOOL:
      *(bool *) (void *) at = value != 0.0;
      break;
    }
}

/* Same bits of meaning: two absent numbers are equal. */
static bool
rows_equal (const EmRateField *fields, int n, const void *a, const void *b)
{
  for (int i = 0; i < n; i++)
    {
      double x = em_rate_get (&fields[i], a), y = em_rate_get (&fields[i], b);

      if (!(x == y || (isnan (x) && isnan (y))))
        return false;
      if (fields[i].type <= EM_RATE_PPM
          && memcmp ((const char *) a + fields[i].offset, (const char *) b + fields[i].offset, sizeof (int64_t)) != 0)
        return false;
    }
  return true;
}

static EmStatus
check_rows (const EmRateField *fields, int n, const void *holder, uint32_t process_bit, EmFault *out_fault)
{
  for (int i = 0; i < n; i++)
    {
      const EmRateField *field = &fields[i];
      double value = em_rate_get (field, holder);
      EmStatus status = EM_OK;

      if (em_is_absent (value))
        {
          if (field->processes & process_bit)
            status = EM_FAULT_MISSING;
        }
      else if (isinf (value))
        status = EM_FAULT_NOT_FINITE;
      else if (value < field->low || value > field->high)
        status = EM_FAULT_RANGE;
      if (status != EM_OK)
        return em_fault_set (out_fault, status, field->id, value, field->low, field->high);
    }
  return EM_OK;
}

static bool
replace_text (char **slot, const char *text)
{
  char *copy = em_text_dup (text);

  if (text != NULL && copy == NULL)
    return false;
  free (*slot);
  *slot = copy;
  return true;
}

/* ---- machines and taxes ---- */

void
em_machine_init (EmMachine *out_machine)
{
  *out_machine = (EmMachine) { 0 };
  for (int i = 0; i < em_n_machine_fields; i++)
    if (em_machine_fields[i].type == EM_RATE_REAL)
      em_rate_set (&em_machine_fields[i], out_machine, EM_ABSENT);
  for (int s = 0; s < EM_SETTING_MAX; s++)
    for (int i = 0; i < em_n_setting_fields; i++)
      em_rate_set (&em_setting_fields[i], &out_machine->setting[s], EM_ABSENT);
}

void
em_machine_clear (EmMachine *machine)
{
  free (machine->id);
  free (machine->name);
  em_machine_init (machine);
}

EmStatus
em_machine_copy (const EmMachine *machine, EmMachine *out_copy)
{
  EmMachine copy = *machine;

  copy.id = copy.name = NULL;
  if (!replace_text (&copy.id, machine->id) || !replace_text (&copy.name, machine->name))
    {
      free (copy.id);
      return EM_FAULT_MEMORY;
    }
  *out_copy = copy;
  return EM_OK;
}

static bool
machine_equal (const EmMachine *a, const EmMachine *b)
{
  if (!em_text_equal (a->id, b->id) || !em_text_equal (a->name, b->name) || a->process != b->process
      || a->is_retired != b->is_retired || a->n_settings != b->n_settings
      || !rows_equal (em_machine_fields, em_n_machine_fields, a, b))
    return false;
  for (int s = 0; s < a->n_settings; s++)
    if (!rows_equal (em_setting_fields, em_n_setting_fields, &a->setting[s], &b->setting[s]))
      return false;
  return true;
}

EmStatus
em_machine_check (const EmMachine *machine, EmFault *out_fault)
{
  uint32_t bit = 1u << machine->process;
  EmStatus status;

  if (machine->id == NULL || machine->id[0] == '\0')
    return em_fault_set (out_fault, EM_FAULT_MISSING, "machine", EM_ABSENT, EM_ABSENT, EM_ABSENT);
  status = check_rows (em_machine_fields, em_n_machine_fields, machine, bit, out_fault);
  if (status != EM_OK)
    return status;
  if (machine->wire_low_mm > machine->wire_high_mm)
    return em_fault_set_conflict (out_fault, "wire_low", "wire_high", machine->wire_low_mm, EM_ABSENT, machine->wire_high_mm);
  if (machine->n_settings < 1 || machine->n_settings > EM_SETTING_MAX)
    return em_fault_set (out_fault, EM_FAULT_RANGE, "machine_settings", machine->n_settings, 1, EM_SETTING_MAX);
  for (int s = 0; s < machine->n_settings; s++)
    {
      const EmSetting *setting = &machine->setting[s];

      status = check_rows (em_setting_fields, em_n_setting_fields, setting, bit, out_fault);
      if (status != EM_OK)
        return status;
      if (s > 0 && setting->wire_mm <= setting[-1].wire_mm)
        return em_fault_open (out_fault, true, false, em_fault_set_conflict (out_fault, "setting_wire", "machine_settings", setting->wire_mm,
                                                                             setting[-1].wire_mm, EM_ABSENT));
      /* A pulse longer than its period is no pulse: duty t·f < 1. */
      if (machine->process == EM_PROCESS_LASER && setting->pulse_ms * setting->frequency_hz >= 1000.0)
        return em_fault_open (out_fault, false, true, em_fault_set_conflict (out_fault, "pulse", "frequency", setting->pulse_ms, EM_ABSENT,
                                                                             1000.0 / setting->frequency_hz));
    }
  return EM_OK;
}

void
em_tax_clear (EmTax *tax)
{
  free (tax->name);
  *tax = (EmTax) { 0 };
}

/* ---- the book ---- */

void
em_rates_init (EmRates *out_rates)
{
  *out_rates = (EmRates) { .rounding_minor = 1, .learning_ppm = EM_PPM };
  for (int i = 0; i < em_n_rate_fields; i++)
    if (em_rate_fields[i].type == EM_RATE_REAL)
      em_rate_set (&em_rate_fields[i], out_rates, EM_ABSENT);
}

void
em_rates_clear (EmRates *rates)
{
  for (int i = 0; i < EM_N_SHOP_TEXT; i++)
    free (rates->text[i]);
  for (int i = 0; i < rates->n_machines; i++)
    em_machine_clear (&rates->machine[i]);
  for (int i = 0; i < rates->n_taxes; i++)
    em_tax_clear (&rates->tax[i]);
  em_rates_init (rates);
}

EmStatus
em_rates_copy (const EmRates *rates, EmRates *out_copy)
{
  EmRates copy = *rates;
  bool is_whole = true;

  copy.n_machines = copy.n_taxes = 0;
  memset (copy.text, 0, sizeof copy.text);
  for (int i = 0; i < EM_N_SHOP_TEXT && is_whole; i++)
    is_whole = replace_text (&copy.text[i], rates->text[i]);
  for (int i = 0; i < rates->n_machines && is_whole; i++)
    {
      is_whole = em_machine_copy (&rates->machine[i], &copy.machine[i]) == EM_OK;
      copy.n_machines += is_whole;
    }
  for (int i = 0; i < rates->n_taxes && is_whole; i++)
    {
      copy.tax[i] = rates->tax[i];
      copy.tax[i].name = NULL;
      is_whole = replace_text (&copy.tax[i].name, rates->tax[i].name);
      copy.n_taxes += is_whole;
    }
  if (!is_whole)
    {
      em_rates_clear (&copy);
      return EM_FAULT_MEMORY;
    }
  *out_copy = copy;
  return EM_OK;
}

bool
em_rates_equal (const EmRates *a, const EmRates *b)
{
  if (strcmp (a->currency.code, b->currency.code) != 0 || a->currency.digits != b->currency.digits || a->units != b->units
      || a->is_demo != b->is_demo || a->n_machines != b->n_machines || a->n_taxes != b->n_taxes
      || !rows_equal (em_rate_fields, em_n_rate_fields, a, b))
    return false;
  for (int i = 0; i < EM_N_SHOP_TEXT; i++)
    if (!em_text_equal (a->text[i], b->text[i]))
      return false;
  for (int i = 0; i < a->n_machines; i++)
    if (!machine_equal (&a->machine[i], &b->machine[i]))
      return false;
  for (int i = 0; i < a->n_taxes; i++)
    if (!em_text_equal (a->tax[i].name, b->tax[i].name) || a->tax[i].rate_ppm != b->tax[i].rate_ppm
        || a->tax[i].on_taxes != b->tax[i].on_taxes)
      return false;
  return true;
}

EmStatus
em_rates_set_text (EmRates *rates, EmShopText which, const char *text)
{
  if (!replace_text (&rates->text[which], text != NULL && text[0] != '\0' ? text : NULL))
    return EM_FAULT_MEMORY;
  return EM_OK;
}

EmStatus
em_rates_add_machine_take (EmRates *rates, EmMachine *machine)
{
  if (rates->n_machines >= EM_MACHINE_MAX)
    {
      em_machine_clear (machine);
      return EM_FAULT_OVERFLOW;
    }
  rates->machine[rates->n_machines++] = *machine;
  em_machine_init (machine);
  return EM_OK;
}

EmStatus
em_rates_add_tax_take (EmRates *rates, EmTax *tax)
{
  if (rates->n_taxes >= EM_TAX_MAX)
    {
      em_tax_clear (tax);
      return EM_FAULT_OVERFLOW;
    }
  rates->tax[rates->n_taxes++] = *tax;
  *tax = (EmTax) { 0 };
  return EM_OK;
}

int32_t
em_rates_find_machine (const EmRates *rates, const char *id)
{
  for (int32_t i = 0; id != NULL && i < rates->n_machines; i++)
    if (em_text_equal (rates->machine[i].id, id))
      return i;
  return -1;
}

static EmStatus
check_machines (const EmRates *rates, EmFault *out_fault)
{
  if (rates->n_machines < 1)
    return em_fault_set (out_fault, EM_FAULT_MISSING, "machine", 0, 1, EM_MACHINE_MAX);
  for (int32_t i = 0; i < rates->n_machines; i++)
    {
      EmStatus status = em_machine_check (&rates->machine[i], out_fault);

      if (status != EM_OK)
        return status;
      if (em_rates_find_machine (rates, rates->machine[i].id) != i)
        return em_fault_set_conflict (out_fault, "machine", "machine", i + 1, EM_ABSENT, EM_ABSENT);
    }
  return EM_OK;
}

static EmStatus
check_book (const EmRates *rates, EmFault *out_fault)
{
  EmCurrency currency;
  EmStatus status;

  if (!em_currency_find (rates->currency.code, &currency))
    return em_fault_set (out_fault, EM_FAULT_UNKNOWN, "currency", EM_ABSENT, EM_ABSENT, EM_ABSENT);
  if (currency.digits != rates->currency.digits)
    return em_fault_set (out_fault, EM_FAULT_RANGE, "currency", rates->currency.digits, currency.digits, currency.digits);
  status = check_rows (em_rate_fields, em_n_rate_fields, rates, UINT32_MAX, out_fault);
  if (status != EM_OK)
    return status;
  if (rates->stub_mm >= rates->stick_mm)
    return em_fault_open (out_fault, false, true, em_fault_set_conflict (out_fault, "stub", "stick", rates->stub_mm, 0, rates->stick_mm));
  for (int i = 0; i < rates->n_taxes; i++)
    if (rates->tax[i].rate_ppm < 0 || rates->tax[i].rate_ppm > EM_PPM)
      return em_fault_set (out_fault, EM_FAULT_RANGE, "tax", (double) rates->tax[i].rate_ppm, 0, (double) EM_PPM);
  return check_machines (rates, out_fault);
}

EmStatus
em_rates_check (const EmRates *rates, EmFault *out_fault)
{
  EmStatus status = check_book (rates, out_fault);

  if (status != EM_OK && out_fault != NULL)
    out_fault->row = EM_ROW_RATES;
  return status;
}
