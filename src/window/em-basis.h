/* em-basis: what a quote is priced on: a rate book and the metals, never changed once made.
 *
 * Counted by reference, so that a window, a print job and a background thread can
 * each hold the edition they began with. A changed rate book is a new basis.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-catalogue.h"
#include "em-rates.h"

#include <gio/gio.h>

G_BEGIN_DECLS

typedef struct EmBasis EmBasis;

/* Takes the contents of both; they are left initialised and empty. */
EmBasis *em_basis_new_take (EmRates *rates, EmCatalogue *catalogue);
/* The shop's own book and metals over the shipped ones. */
EmBasis *em_basis_load     (GError **error);
EmBasis *em_basis_ref      (EmBasis *basis);
void     em_basis_unref    (EmBasis *basis);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (EmBasis, em_basis_unref)

typedef enum { EM_BASIS_RATES = 1 << 0, EM_BASIS_CATALOGUE = 1 << 1 } EmBasisPart;

/* Writes these parts to the shop's own files, on a thread of its own. */
void  em_basis_save_async  (EmBasis *self, guint parts, GAsyncReadyCallback callback, gpointer data);
/* The parts that are on the disk now. Where they are fewer than was asked, error tells of the first that is not. */
guint em_basis_save_finish (GAsyncResult *result, GError **error);

const EmRates     *em_basis_get_rates     (const EmBasis *basis);
const EmCatalogue *em_basis_get_catalogue (const EmBasis *basis);

G_END_DECLS
