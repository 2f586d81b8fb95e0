/* em-basis: what a quote is priced on.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-basis.h"

#include "em-book-file.h"

#include <glib/gi18n.h>

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

/* ---- to the disk ---- */

typedef struct
{
  EmBasis *basis;     /* owned */
  guint    parts;     /* to be written */
  guint    written;
} EmSaving;

static void
free_saving (gpointer data)
{
  EmSaving *saving = data;

  em_basis_unref (saving->basis);
  g_free (saving);
}

static void
save_parts (EmSaving *saving, GError **error)
{
  g_autofree char *rates = em_book_own_rates_path (), *catalogue = em_book_own_catalogue_path (), *folder = g_path_get_dirname (rates);

  if (g_mkdir_with_parents (folder, 0755) != 0)
    {
      g_set_error (error, EM_FILE_ERROR, EM_FILE_ERROR_WRITE, _("The folder %s can’t be made."), folder);
      return;
    }
  if (saving->parts & EM_BASIS_CATALOGUE)
    {
      if (!em_catalogue_save (catalogue, &saving->basis->catalogue, TRUE, error))
        return;
      saving->written |= EM_BASIS_CATALOGUE;
    }
  if ((saving->parts & EM_BASIS_RATES) && em_rates_save (rates, &saving->basis->rates, error))
    saving->written |= EM_BASIS_RATES;
}

static void
save_in_thread (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  GError *error = NULL;

  (void) source;
  (void) cancellable;
  save_parts (data, &error);
  if (error != NULL)
    g_task_return_error (task, error);
  else
    g_task_return_boolean (task, TRUE);
}

void
em_basis_save_async (EmBasis *self, guint parts, GAsyncReadyCallback callback, gpointer data)
{
  g_autoptr (GTask) task = g_task_new (NULL, NULL, callback, data);
  EmSaving *saving = g_new0 (EmSaving, 1);

  saving->basis = em_basis_ref (self);
  saving->parts = parts;
  g_task_set_task_data (task, saving, free_saving);
  g_task_run_in_thread (task, save_in_thread);
}

guint
em_basis_save_finish (GAsyncResult *result, GError **error)
{
  const EmSaving *saving = g_task_get_task_data (G_TASK (result));

  g_task_propagate_boolean (G_TASK (result), error);
  return saving->written;
}
