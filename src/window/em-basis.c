/* em-basis: what a quote is priced on.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-basis.h"

#include "em-book-file.h"

struct EmBasis
{
  EmRates     rates;
  EmCatalogue catalogue;
};

EmBasis *
em_basis_new_take (EmRates *rates, EmCatalogue *catalogue)
{
  EmBasis *basis = g_atomic_rc_box_new (EmBasis);

  basis->rates = *rates;
  basis->catalogue = *catalogue;
  em_rates_init (rates);
  em_catalogue_init (catalogue);
  return basis;
}

EmBasis *
em_basis_load (GError **error)
{
  EmRates rates;
  EmCatalogue catalogue;

  if (!em_book_load (&rates, &catalogue, error))
    return NULL;
  return em_basis_new_take (&rates, &catalogue);
}

EmBasis *
em_basis_ref (EmBasis *basis)
{
  return g_atomic_rc_box_acquire (basis);
}

static void
clear_basis (gpointer data)
{
  EmBasis *basis = data;

  em_rates_clear (&basis->rates);
  em_catalogue_clear (&basis->catalogue);
}

void
em_basis_unref (EmBasis *basis)
{
  g_atomic_rc_box_release_full (basis, clear_basis);
}

const EmRates *
em_basis_get_rates (const EmBasis *basis)
{
  return &basis->rates;
}

const EmCatalogue *
em_basis_get_catalogue (const EmBasis *basis)
{
  return &basis->catalogue;
}
