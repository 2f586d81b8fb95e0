/* Checks of every kind's closed form against adaptive quadrature of its profile by the GNU Scientific Library.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-kind.h"
#include "em-test-main.h"

#include <gsl/gsl_errno.h>
#include <gsl/gsl_integration.h>

static uint64_t state = 20260101;

static double
uniform (void)
{
  state = state * UINT64_C (6364136223846793005) + UINT64_C (1442695040888963407);
  return (double) (state >> 11) / 9007199254740992.0;
}

static double
slice (double z, void *data)
{
  const EmShape *shape = data;

  return shape->kind->width_mm (shape, z) * shape->kind->length_mm (shape, z);
}

static void
draw (const EmKind *kind, double *value)
{
  for (int i = 0; i < EM_FIELD_MAX; i++)
    value[i] = EM_ABSENT;
  for (int i = 0; i < kind->n_fields; i++)
    {
      const EmField *f = &kind->fields[i];

      if (!f->is_required && isnan (f->preset) && uniform () < 0.5)
        continue;
      value[i] = f->quantity == EM_QUANTITY_CHOICE || f->quantity == EM_QUANTITY_COUNT ? floor (uniform () * 5)
                 : f->quantity == EM_QUANTITY_ANGLE ? 10 + uniform () * 150 : 0.05 + 10 * uniform () * uniform ();
    }
}

START_TEST (test_all)
{
  gsl_integration_cquad_workspace *work = gsl_integration_cquad_workspace_alloc (2000);

  gsl_set_error_handler_off ();
  for (int k = 0; k < em_n_kinds; k++)
    for (int n = 0, tries = 0; n < 1000; tries++)
      {
        double value[EM_FIELD_MAX], sum = 0.0;
        EmShape shape;

        ck_assert_int_lt (tries, 2000000);
        draw (em_kinds[k], value);
        if (em_shape_solve (em_kinds[k], value, &shape, NULL) != EM_OK)
          continue;
        n++;
        gsl_integration_cquad (&(gsl_function) { slice, &shape }, 0, shape.height_mm, 0, 1e-11, work, &sum, NULL, NULL);
        ck_assert_msg (fabs (sum / shape.net_volume_mm3 - 1.0) <= 1e-9, "%s %g %g %g %g %g %g: %.15g, quadrature %.15g", em_kinds[k]->id,
                       value[0], value[1], value[2], value[3], value[4], value[5], shape.net_volume_mm3, sum);
      }
  gsl_integration_cquad_workspace_free (work);
}
END_TEST

EM_TEST_MAIN ("core: quadrature", test_all)
