/* Checks of core/em-rates: rows, limits, copies.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-test-book.h"
#include "em-test-main.h"

static void
book (EmRates *out_rates)
{
  em_test_rates (out_rates);
}

START_TEST (test_ids_are_unique)
{
  const EmRateField *tables[] = { em_rate_fields, em_machine_fields, em_setting_fields };
  const int counts[] = { em_n_rate_fields, em_n_machine_fields, em_n_setting_fields };

  for (int t = 0; t < 3; t++)
    for (int i = 0; i < counts[t]; i++)
      for (int u = 0; u < 3; u++)
        for (int j = 0; j < counts[u]; j++)
          ck_assert_msg ((t == u && i == j) || strcmp (tables[t][i].id, tables[u][j].id) != 0, "%s twice", tables[t][i].id);
}
END_TEST

START_TEST (test_a_good_book_passes_and_an_empty_one_does_not)
{
  EmRates rates;
  EmFault fault;

  book (&rates);
  ck_assert_int_eq (em_rates_check (&rates, &fault), EM_OK);
  em_rates_clear (&rates);
  em_rates_init (&rates);
  ck_assert_int_eq (em_rates_check (&rates, &fault), EM_FAULT_UNKNOWN);
  ck_assert_str_eq (fault.field, "currency");
  ck_assert_int_eq (fault.row, EM_ROW_RATES);
}
END_TEST

/* Every row refuses what is past either limit, and infinity, and takes the limits themselves. */
START_TEST (test_every_row_has_its_limits)
{
  for (int i = 0; i < em_n_rate_fields; i++)
    {
      const EmRateField *field = &em_rate_fields[i];
      EmRates rates;
      EmFault fault;

      book (&rates);
      em_rate_set (field, &rates, field->high);
      ck_assert_double_eq (em_rate_get (field, &rates), field->high);
      if (field->type == EM_RATE_BOOL)
        {
          em_rates_clear (&rates);
          continue;
        }
      em_rate_set (field, &rates, field->high * 2 + 1);
      ck_assert_msg (em_rates_check (&rates, &fault) == EM_FAULT_RANGE, "%s took %g", field->id, field->high * 2 + 1);
      ck_assert_str_eq (fault.field, field->id);
      ck_assert_double_eq (fault.high, field->high);
      em_rate_set (field, &rates, field->low - 1);
      ck_assert_msg (em_rates_check (&rates, &fault) == EM_FAULT_RANGE, "%s took %g", field->id, field->low - 1);
      if (field->type == EM_RATE_REAL)
        {
          em_rate_set (field, &rates, INFINITY);
          ck_assert_int_eq (em_rates_check (&rates, &fault), EM_FAULT_NOT_FINITE);
          em_rate_set (field, &rates, EM_ABSENT);
          ck_assert_int_eq (em_rates_check (&rates, &fault), EM_FAULT_MISSING);
        }
      em_rates_clear (&rates);
    }
}
END_TEST

START_TEST (test_machine_rules)
{
  EmRates rates;
  EmFault fault;

  book (&rates);
  rates.machine[0].setting[0].pulse_ms = 100;      /* at 10 Hz the period is 100 ms: duty 1 */
  ck_assert_int_eq (em_rates_check (&rates, &fault), EM_FAULT_CONFLICT);
  ck_assert_str_eq (fault.field, "pulse");
  ck_assert_double_eq_tol (fault.high, 100, 1e-12);
  ck_assert (fault.high_is_open && !fault.low_is_open);
  rates.machine[0].setting[0].pulse_ms = 5;
  rates.machine[0].pulse_energy_j = EM_ABSENT;     /* a laser needs it */
  ck_assert_int_eq (em_rates_check (&rates, &fault), EM_FAULT_MISSING);
  ck_assert_str_eq (fault.field, "pulse_energy");
  rates.machine[0].pulse_energy_j = 80;
  rates.machine[1].setting[1].wire_mm = rates.machine[1].setting[0].wire_mm;
  ck_assert_int_eq (em_rates_check (&rates, &fault), EM_FAULT_CONFLICT);
  rates.machine[1].n_settings = 0;
  ck_assert_int_eq (em_rates_check (&rates, &fault), EM_FAULT_RANGE);
  ck_assert_str_eq (fault.field, "machine_settings");
  rates.machine[1].n_settings = 1;
  rates.machine[1].wire_low_mm = 2;                /* above its own upper limit */
  ck_assert_int_eq (em_rates_check (&rates, &fault), EM_FAULT_CONFLICT);
  ck_assert_str_eq (fault.field, "wire_low");
  rates.machine[1].wire_low_mm = 0.25;
  rates.stub_mm = 333;
  ck_assert_int_eq (em_rates_check (&rates, &fault), EM_FAULT_CONFLICT);
  ck_assert_str_eq (fault.field, "stub");
  em_rates_clear (&rates);
}
END_TEST

/* What the book as a whole may not be, each alone. */
static void spoil_no_machine (EmRates *r) { while (r->n_machines > 0) em_machine_clear (&r->machine[--r->n_machines]); }
static void spoil_digits (EmRates *r) { r->currency.digits = 3; }
static void spoil_code (EmRates *r) { memcpy (r->currency.code, "XQZ", 4); }
static void spoil_id (EmRates *r) { r->machine[0].id[0] = '\0'; }
static void spoil_machine (EmRates *r) { r->machine[1].usable_ratio = 0; }
static void spoil_setting (EmRates *r) { r->machine[0].setting[1].frequency_hz = INFINITY; }
static void spoil_tax (EmRates *r) { r->n_taxes = 1; r->tax[0].rate_ppm = 1000001; }
static void spoil_tax_sign (EmRates *r) { r->n_taxes = 1; r->tax[0].rate_ppm = -1; }
static void spoil_current (EmRates *r) { r->machine[1].current_high_a = EM_ABSENT; }

START_TEST (test_spoilt_books)
{
  static const struct { void (*spoil) (EmRates *); EmStatus code; const char *field; double low, high; } rows[] =
  {
    { spoil_no_machine, EM_FAULT_MISSING, "machine", 1, EM_MACHINE_MAX }, { spoil_digits, EM_FAULT_RANGE, "currency", 2, 2 },
    { spoil_code, EM_FAULT_UNKNOWN, "currency", EM_ABSENT, EM_ABSENT }, { spoil_id, EM_FAULT_MISSING, "machine", EM_ABSENT, EM_ABSENT },
    { spoil_machine, EM_FAULT_RANGE, "usable", 0.05, 1 }, { spoil_setting, EM_FAULT_NOT_FINITE, "frequency", 0.1, 10000 },
    { spoil_tax, EM_FAULT_RANGE, "tax", 0, 1000000 }, { spoil_tax_sign, EM_FAULT_RANGE, "tax", 0, 1000000 },
    { spoil_current, EM_FAULT_MISSING, "current_high", 0.5, 2000 },
  };

  for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++)
    {
      EmRates rates;
      EmFault fault;

      book (&rates);
      rows[i].spoil (&rates);
      ck_assert_msg (em_rates_check (&rates, &fault) == rows[i].code, "%s: %d", rows[i].field, fault.code);
      ck_assert_str_eq (fault.field, rows[i].field);
      ck_assert_int_eq (fault.row, EM_ROW_RATES);
      ck_assert_msg ((fault.low == rows[i].low || isnan (rows[i].low)) && (fault.high == rows[i].high || isnan (rows[i].high)), "%s: %g … %g", fault.field,
                     fault.low, fault.high);
      em_rates_clear (&rates);
    }
}
END_TEST

START_TEST (test_too_many_taxes)
{
  EmRates rates;
  EmTax tax;

  book (&rates);
  for (int i = 0; i < EM_TAX_MAX; i++)
    {
      tax = (EmTax) { em_text_dup ("Tax"), 10000, false };
      ck_assert_int_eq (em_rates_add_tax_take (&rates, &tax), EM_OK);
    }
  tax = (EmTax) { em_text_dup ("One too many"), 10000, false };
  ck_assert_int_eq (em_rates_add_tax_take (&rates, &tax), EM_FAULT_OVERFLOW);
  ck_assert_ptr_null (tax.name);
  ck_assert_int_eq (rates.n_taxes, EM_TAX_MAX);
  em_rates_clear (&rates);
}
END_TEST

START_TEST (test_two_machines_of_one_id)
{
  EmRates rates;
  EmFault fault;

  book (&rates);
  free (rates.machine[1].id);
  rates.machine[1].id = em_text_dup ("laser");
  ck_assert_int_eq (em_rates_check (&rates, &fault), EM_FAULT_CONFLICT);
  ck_assert_str_eq (fault.field, "machine");
  em_rates_clear (&rates);
}
END_TEST

START_TEST (test_copy_is_equal_and_apart)
{
  EmRates rates, copy;
  EmTax tax = { em_text_dup ("VAT"), 190000, false };

  book (&rates);
  ck_assert_int_eq (em_rates_add_tax_take (&rates, &tax), EM_OK);
  ck_assert_ptr_null (tax.name);
  ck_assert_int_eq (em_rates_set_text (&rates, EM_SHOP_NAME, "A shop"), EM_OK);
  ck_assert_int_eq (em_rates_copy (&rates, &copy), EM_OK);
  ck_assert (em_rates_equal (&rates, &copy));
  copy.machine[1].setting[0].current_a = 11;
  ck_assert (!em_rates_equal (&rates, &copy));
  copy.machine[1].setting[0].current_a = 10;
  copy.bench_minor_per_h++;
  ck_assert (!em_rates_equal (&rates, &copy));
  copy.bench_minor_per_h--;
  copy.tax[0].rate_ppm++;
  ck_assert (!em_rates_equal (&rates, &copy));
  em_rates_clear (&copy);
  ck_assert_str_eq (rates.text[EM_SHOP_NAME], "A shop");
  em_rates_clear (&rates);
}
END_TEST

START_TEST (test_too_many_machines)
{
  EmRates rates;
  EmMachine machine;

  book (&rates);
  for (int i = rates.n_machines; i < EM_MACHINE_MAX; i++)
    {
      em_test_laser (&machine);
      ck_assert_int_eq (em_rates_add_machine_take (&rates, &machine), EM_OK);
    }
  em_test_laser (&machine);
  ck_assert_int_eq (em_rates_add_machine_take (&rates, &machine), EM_FAULT_OVERFLOW);
  ck_assert_ptr_null (machine.id);    /* taken all the same */
  ck_assert_int_eq (rates.n_machines, EM_MACHINE_MAX);
  em_rates_clear (&rates);
}
END_TEST

EM_TEST_MAIN ("core: rates", test_ids_are_unique, test_a_good_book_passes_and_an_empty_one_does_not, test_every_row_has_its_limits,
              test_machine_rules, test_spoilt_books, test_too_many_taxes, test_two_machines_of_one_id, test_copy_is_equal_and_apart, test_too_many_machines)
