/* Checks of core/em-catalogue: what a metal and a wire must hold, said by field; finding, adding and copying records.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-test-book.h"
#include "em-test-main.h"

static EmCatalogue catalogue;

static void
setup (void)
{
  em_test_catalogue (&catalogue);
}

static void
teardown (void)
{
  em_catalogue_clear (&catalogue);
}

/* A change of one number of a sound record, and what must be said. high < low: no limits to be told. */
typedef struct
{
  const char *name;
  size_t      offset;   /* of a double */
  double      value;
  EmStatus    code;
  const char *field;
  double      low, high;
} Row;

#define AT(type, member) offsetof (type, member)
#define PCT(type, end, element) (offsetof (type, composition.end) + sizeof (double) * (element))

static const Row base_rows[] =
{
  { "no density", AT (EmBase, density_g_per_mm3), NAN, EM_FAULT_MISSING, "density", 0.0015, 0.020 },
  { "lighter than magnesium", AT (EmBase, density_g_per_mm3), 0.0014, EM_FAULT_RANGE, "density", 0.0015, 0.020 },
  { "heavier than tungsten", AT (EmBase, density_g_per_mm3), 0.021, EM_FAULT_RANGE, "density", 0.0015, 0.020 },
  { "density in g/cm³", AT (EmBase, density_g_per_mm3), 7.8, EM_FAULT_RANGE, "density", 0.0015, 0.020 },
  { "infinite density", AT (EmBase, density_g_per_mm3), INFINITY, EM_FAULT_NOT_FINITE, "density", 0.0015, 0.020 },
  { "hardness upside down", AT (EmBase, hardness_high_hrc), 20, EM_FAULT_RANGE, "hardness", 28, 70 },
  { "half a hardness", AT (EmBase, hardness_high_hrc), NAN, EM_FAULT_MISSING, "hardness", 28, 70 },
  { "the other half", AT (EmBase, hardness_low_hrc), NAN, EM_FAULT_MISSING, "hardness", 0, 70 },
  { "harder than any steel", AT (EmBase, hardness_high_hrc), 71, EM_FAULT_RANGE, "hardness", 28, 70 },
  { "Vickers alone at one end", AT (EmBase, hardness_low_hv), 200, EM_FAULT_MISSING, "hardness_hv", 200, 2000 },
  { "half a preheat", AT (EmBase, preheat_high_degc), 300, EM_FAULT_MISSING, "preheat", 0, 1000 },
  { "temper too hot", AT (EmBase, temper_degc), 1001, EM_FAULT_RANGE, "temper", 0, 1000 },
  { "negative temper", AT (EmBase, temper_degc), -1, EM_FAULT_RANGE, "temper", 0, 1000 },
  { "laser preheat too hot", AT (EmBase, laser_preheat_degc), 1e9, EM_FAULT_RANGE, "laser_preheat", 0, 1000 },
  { "laser preheat infinite", AT (EmBase, laser_preheat_degc), -INFINITY, EM_FAULT_NOT_FINITE, "laser_preheat", 0, 1000 },
  { "carbon negative", PCT (EmBase, low_pct, EM_EL_C), -0.1, EM_FAULT_RANGE, "C", 0, 100 },
  { "carbon no number", PCT (EmBase, low_pct, EM_EL_C), NAN, EM_FAULT_MISSING, "C", 0, 100 },
  { "chromium upside down", PCT (EmBase, high_pct, EM_EL_CR), 0.5, EM_FAULT_RANGE, "Cr", 1.7, 100 },
  { "chromium over all", PCT (EmBase, high_pct, EM_EL_CR), 100.5, EM_FAULT_RANGE, "Cr", 1.7, 100 },
  { "molybdenum infinite", PCT (EmBase, high_pct, EM_EL_MO), INFINITY, EM_FAULT_NOT_FINITE, "Mo", 0, 100 },
};

static const Row filler_rows[] =
{
  { "no density", AT (EmFiller, density_g_per_mm3), NAN, EM_FAULT_MISSING, "density", 0.0015, 0.020 },
  { "negative density", AT (EmFiller, density_g_per_mm3), -0.0078, EM_FAULT_RANGE, "density", 0.0015, 0.020 },
  { "no melting enthalpy", AT (EmFiller, melt_j_per_g), NAN, EM_FAULT_MISSING, "melt", 100, 5000 },
  { "melts for nothing", AT (EmFiller, melt_j_per_g), 0, EM_FAULT_RANGE, "melt", 100, 5000 },
  { "in J/kg", AT (EmFiller, melt_j_per_g), 1.3e6, EM_FAULT_RANGE, "melt", 100, 5000 },
  { "half a hardness", AT (EmFiller, hardness_low_hrc), 40, EM_FAULT_MISSING, "hardness", 40, 70 },
  { "half an aged hardness", AT (EmFiller, aged_low_hrc), 50, EM_FAULT_MISSING, "aged", 50, 70 },
  { "half a Vickers", AT (EmFiller, hardness_high_hv), 200, EM_FAULT_MISSING, "hardness_hv", 10, 2000 },
  { "stick too short", AT (EmFiller, stick_mm), 9, EM_FAULT_RANGE, "stick", 10, 5000 },
  { "stick without end", AT (EmFiller, stick_mm), INFINITY, EM_FAULT_NOT_FINITE, "stick", 10, 5000 },
  { "wire thinner than any", AT (EmFiller, size[0].wire_mm), 0.04, EM_FAULT_RANGE, "wire", 0.05, 5 },
  { "wire thicker than any", AT (EmFiller, size[4].wire_mm), 5.1, EM_FAULT_RANGE, "wire", 0.05, 5 },
  { "wire no number", AT (EmFiller, size[2].wire_mm), NAN, EM_FAULT_MISSING, "wire", 0.05, 5 },
  { "sizes out of order", AT (EmFiller, size[1].wire_mm), 0.254, EM_FAULT_RANGE, "wire", 0.254, 5 },
  { "nickel negative", PCT (EmFiller, low_pct, EM_EL_NI), -1, EM_FAULT_RANGE, "Ni", 0, 100 },
};

static void
check_fault (const char *name, EmStatus status, const EmFault *fault, EmStatus code, const char *field)
{
  ck_assert_msg (status == code && fault->code == code, "%s: %d, not %d", name, (int) status, (int) code);
  ck_assert_msg (strcmp (fault->field, field) == 0, "%s: %s, not %s", name, fault->field, field);
  ck_assert_msg (fault->row == EM_ROW_CATALOGUE, "%s: row %d", name, fault->row);
}

static void
check_limits (const Row *row, const EmFault *fault)
{
  ck_assert_msg (fault->low == row->low && fault->high == row->high, "%s: %g … %g", row->name, fault->low, fault->high);
}

START_TEST (test_base_numbers)
{
  ck_assert_int_eq (em_base_check (&catalogue.base[0], NULL), EM_OK);
  for (size_t i = 0; i < sizeof base_rows / sizeof base_rows[0]; i++)
    {
      EmBase base = catalogue.base[0];   /* strings borrowed */
      EmFault fault = { 0 };

      *(double *) (void *) ((char *) &base + base_rows[i].offset) = base_rows[i].value;
      check_fault (base_rows[i].name, em_base_check (&base, &fault), &fault, base_rows[i].code, base_rows[i].field);
      check_limits (&base_rows[i], &fault);
    }
}
END_TEST

START_TEST (test_filler_numbers)
{
  ck_assert_int_eq (em_filler_check (&catalogue.filler[0], NULL), EM_OK);
  for (size_t i = 0; i < sizeof filler_rows / sizeof filler_rows[0]; i++)
    {
      EmFiller filler = catalogue.filler[0];
      EmFault fault = { 0 };

      *(double *) (void *) ((char *) &filler + filler_rows[i].offset) = filler_rows[i].value;
      check_fault (filler_rows[i].name, em_filler_check (&filler, &fault), &fault, filler_rows[i].code, filler_rows[i].field);
      check_limits (&filler_rows[i], &fault);
    }
}
END_TEST

#define REFUSE(check, record, code, field) \
  do { EmFault fault = { 0 }; check_fault (field, check (&(record), &fault), &fault, code, field); } while (0)

START_TEST (test_base_names_and_sets)
{
  EmBase base = catalogue.base[0];

  base.id = NULL;
  REFUSE (em_base_check, base, EM_FAULT_MISSING, "id");
  base.id = (char[]) { "" };
  REFUSE (em_base_check, base, EM_FAULT_MISSING, "id");
  base = catalogue.base[0];
  base.designation = NULL;
  REFUSE (em_base_check, base, EM_FAULT_MISSING, "designation");
  base = catalogue.base[0];
  base.family = EM_N_FAMILY;
  REFUSE (em_base_check, base, EM_FAULT_UNKNOWN, "family");
  base.family = (EmFamily) -1;
  REFUSE (em_base_check, base, EM_FAULT_UNKNOWN, "family");
  base = catalogue.base[0];
  base.composition.balance = EM_N_ELEMENT;
  REFUSE (em_base_check, base, EM_FAULT_UNKNOWN, "balance");
}
END_TEST

/* Middles of the ranges beside the balance: 60 and 45 make more than all there is. */
START_TEST (test_more_than_all)
{
  EmBase base = catalogue.base[0];
  EmFault fault = { 0 };

  base.composition.low_pct[EM_EL_CR] = base.composition.high_pct[EM_EL_CR] = 60;
  base.composition.low_pct[EM_EL_NI] = 40;
  base.composition.high_pct[EM_EL_NI] = 50;
  check_fault ("more than all", em_base_check (&base, &fault), &fault, EM_FAULT_RANGE, "composition");
  ck_assert_double_eq (fault.high, 100);
  ck_assert_double_gt (fault.value, 105);
}
END_TEST

START_TEST (test_filler_names_and_sets)
{
  EmFiller filler = catalogue.filler[0];

  filler.id = NULL;
  REFUSE (em_filler_check, filler, EM_FAULT_MISSING, "id");
  filler = catalogue.filler[0];
  filler.designation = (char[]) { "" };
  REFUSE (em_filler_check, filler, EM_FAULT_MISSING, "designation");
  filler = catalogue.filler[0];
  filler.family = EM_N_FAMILY;
  REFUSE (em_filler_check, filler, EM_FAULT_UNKNOWN, "family");
  filler = catalogue.filler[0];
  filler.processes = 0;
  REFUSE (em_filler_check, filler, EM_FAULT_MISSING, "processes");
  filler.processes = 1u << EM_N_PROCESS;
  REFUSE (em_filler_check, filler, EM_FAULT_MISSING, "processes");
  filler = catalogue.filler[0];
  filler.n_sizes = EM_SIZE_MAX + 1;
  REFUSE (em_filler_check, filler, EM_FAULT_RANGE, "size");
  filler.n_sizes = -1;
  REFUSE (em_filler_check, filler, EM_FAULT_RANGE, "size");
  filler = catalogue.filler[0];
  filler.size[1].price_minor = -1;
  REFUSE (em_filler_check, filler, EM_FAULT_RANGE, "price");
  filler.size[1].price_minor = INT64_MAX;
  REFUSE (em_filler_check, filler, EM_FAULT_RANGE, "price");
  filler = catalogue.filler[0];
  filler.size[1].basis = EM_N_PRICE_BASIS;
  REFUSE (em_filler_check, filler, EM_FAULT_UNKNOWN, "basis");
}
END_TEST

/* The limits themselves are allowed. */
START_TEST (test_at_the_limits)
{
  EmBase base = catalogue.base[0];
  EmFiller filler = catalogue.filler[0];

  base.density_g_per_mm3 = 0.0015;
  base.hardness_low_hrc = 0;
  base.hardness_high_hrc = 70;
  base.temper_degc = base.laser_preheat_degc = 1000;
  ck_assert_int_eq (em_base_check (&base, NULL), EM_OK);
  base.hardness_low_hrc = base.hardness_high_hrc = base.temper_degc = base.laser_preheat_degc = EM_ABSENT;
  ck_assert_int_eq (em_base_check (&base, NULL), EM_OK);
  filler.melt_j_per_g = 5000;
  filler.stick_mm = 10;
  filler.size[0].wire_mm = 0.05;
  filler.size[0].price_minor = 0;
  filler.size[4].wire_mm = 5;
  ck_assert_int_eq (em_filler_check (&filler, NULL), EM_OK);
  filler.n_sizes = 0;
  ck_assert_int_eq (em_filler_check (&filler, NULL), EM_OK);
}
END_TEST

START_TEST (test_finding)
{
  ck_assert_int_eq (em_catalogue_find_base (&catalogue, "h13"), 1);
  ck_assert_int_eq (em_catalogue_find_base (&catalogue, "H13"), -1);
  ck_assert_int_eq (em_catalogue_find_base (&catalogue, NULL), -1);
  ck_assert_int_eq (em_catalogue_find_filler (&catalogue, "p20"), 2);
  ck_assert_int_eq (em_catalogue_find_filler (&catalogue, ""), -1);
}
END_TEST

/* A copy owns what it holds: the first one cleared, it still reads the same. */
START_TEST (test_copy_stands_alone)
{
  EmCatalogue copy;

  ck_assert_int_eq (em_catalogue_copy (&catalogue, &copy), EM_OK);
  em_catalogue_clear (&catalogue);
  ck_assert_int_eq (copy.n_bases, 3);
  ck_assert_int_eq (em_catalogue_find_filler (&copy, "er420"), 1);
  ck_assert_str_eq (copy.filler[1].source, "invented for tests");
  ck_assert_int_eq (em_filler_check (&copy.filler[1], NULL), EM_OK);
  em_catalogue_clear (&copy);
}
END_TEST

/* Each member of a record of a copy is changed alone, and put back: one byte of it, so that none can be passed over. Texts are
 * changed by their own letters. */
typedef struct { const char *name; size_t offset, size; } Member;

#define MEMBER(type, member) { #member, offsetof (type, member), sizeof (((type *) 0)->member) }

static const Member base_members[] =
{
  MEMBER (EmBase, family), MEMBER (EmBase, composition.low_pct[EM_EL_C]), MEMBER (EmBase, composition.high_pct[EM_EL_SN]),
  MEMBER (EmBase, composition.balance), MEMBER (EmBase, density_g_per_mm3), MEMBER (EmBase, hardness_low_hrc), MEMBER (EmBase, hardness_high_hrc),
  MEMBER (EmBase, hardness_low_hv), MEMBER (EmBase, hardness_high_hv), MEMBER (EmBase, temper_degc), MEMBER (EmBase, preheat_low_degc),
  MEMBER (EmBase, preheat_high_degc), MEMBER (EmBase, laser_preheat_degc), MEMBER (EmBase, is_retired), MEMBER (EmBase, is_own),
};

static const Member filler_members[] =
{
  MEMBER (EmFiller, family), MEMBER (EmFiller, composition.low_pct[EM_EL_SN]), MEMBER (EmFiller, composition.high_pct[EM_EL_C]),
  MEMBER (EmFiller, composition.balance), MEMBER (EmFiller, density_g_per_mm3), MEMBER (EmFiller, melt_j_per_g), MEMBER (EmFiller, hardness_low_hrc),
  MEMBER (EmFiller, hardness_high_hrc), MEMBER (EmFiller, aged_low_hrc), MEMBER (EmFiller, aged_high_hrc), MEMBER (EmFiller, hardness_low_hv),
  MEMBER (EmFiller, hardness_high_hv), MEMBER (EmFiller, stick_mm), MEMBER (EmFiller, processes), MEMBER (EmFiller, polishes), MEMBER (EmFiller, textures),
  MEMBER (EmFiller, nitrides), MEMBER (EmFiller, machines_easily), MEMBER (EmFiller, resists_corrosion), MEMBER (EmFiller, resists_wear),
  MEMBER (EmFiller, size[0].wire_mm), MEMBER (EmFiller, size[0].price_minor), MEMBER (EmFiller, size[0].basis), MEMBER (EmFiller, size[0].is_stocked),
  MEMBER (EmFiller, is_retired), MEMBER (EmFiller, is_own), MEMBER (EmFiller, has_demo_price),
};

/* The lowest bit of a truth value or a count; a double becomes 1 more, or 1 where it is absent. */
static void
change_member (void *record, const Member *member)
{
  char *at = (char *) record + member->offset;

  if (member->size == sizeof (double) && strcmp (member->name, "size[0].price_minor") != 0)
    {
      double value;
      memcpy (&value, at, sizeof value);
      value = isnan (value) ? 1 : value + 1;
      memcpy (at, &value, sizeof value);
    }
  else
    *at ^= 1;
}

static void
check_members (EmCatalogue *copy, void *record, size_t record_size, const Member *members, size_t n)
{
  char kept[sizeof (EmFiller) > sizeof (EmBase) ? sizeof (EmFiller) : sizeof (EmBase)];

  memcpy (kept, record, record_size);
  for (size_t i = 0; i < n; i++)
    {
      change_member (record, &members[i]);
      ck_assert_msg (!em_catalogue_equal (&catalogue, copy), "%s", members[i].name);
      memcpy (record, kept, record_size);
      ck_assert_msg (em_catalogue_equal (&catalogue, copy), "%s put back", members[i].name);
    }
}

static void
check_text (EmCatalogue *copy, char **text, const char *name)
{
  char *kept = *text, other[] = "another";

  *text = other;
  ck_assert_msg (!em_catalogue_equal (&catalogue, copy), "%s", name);
  *text = kept;
}

START_TEST (test_equality)
{
  EmCatalogue copy;

  ck_assert_int_eq (em_catalogue_copy (&catalogue, &copy), EM_OK);
  ck_assert (em_catalogue_equal (&catalogue, &copy));
  check_members (&copy, &copy.base[1], sizeof (EmBase), base_members, sizeof base_members / sizeof base_members[0]);
  check_members (&copy, &copy.filler[1], sizeof (EmFiller), filler_members, sizeof filler_members / sizeof filler_members[0]);
  check_text (&copy, &copy.base[1].id, "id");
  check_text (&copy, &copy.base[1].designation, "designation");
  check_text (&copy, &copy.base[1].source, "source");
  check_text (&copy, &copy.base[1].remark, "remark");
  check_text (&copy, &copy.filler[1].id, "wire's id");
  check_text (&copy, &copy.filler[1].designation, "wire's designation");
  check_text (&copy, &copy.filler[1].source, "wire's source");
  check_text (&copy, &copy.filler[1].remark, "wire's remark");
  check_text (&copy, &copy.filler[1].supplier_ref, "supplier's reference");
  check_text (&copy, &copy.extra, "extra");
  copy.filler[0].n_sizes--;
  ck_assert (!em_catalogue_equal (&catalogue, &copy));
  copy.filler[0].n_sizes++;
  em_base_clear (&copy.base[--copy.n_bases]);
  ck_assert (!em_catalogue_equal (&catalogue, &copy));
  em_catalogue_clear (&copy);
}
END_TEST

int
main (void)
{
  const TTest *const tests[] = { test_base_numbers, test_filler_numbers, test_base_names_and_sets, test_more_than_all, test_filler_names_and_sets,
                                 test_at_the_limits, test_finding, test_copy_stands_alone, test_equality };

  return em_test_main_with ("core: catalogue", setup, teardown, tests, (int) (sizeof tests / sizeof tests[0]));
}
