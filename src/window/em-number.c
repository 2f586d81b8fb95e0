/* em-number: the next free number of a quote.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-number.h"

#include <string.h>

enum { FIGURES_MAX = 9 };

/* The pattern with the day put in: what stands before and after the running number, and how many figures it has at least. */
typedef struct
{
  char *before, *after;
  int   n_figures;
} EmNumberParts;

static void
read_pattern (const char *pattern, GDateTime *day, EmNumberParts *out_parts)
{
  const char *run = strchr (pattern, '#');
  g_autoptr (GString) before = g_string_new_len (pattern, run != NULL ? run - pattern : (gssize) strlen (pattern));
  g_autoptr (GString) after = NULL;
  static const char *const marks[] = { "%Y", "%y", "%m" };

  out_parts->n_figures = 1;
  for (; run != NULL && run[out_parts->n_figures] == '#' && out_parts->n_figures < FIGURES_MAX; out_parts->n_figures++)
    continue;
  after = g_string_new (run != NULL ? run + out_parts->n_figures : "");
  for (gsize i = 0; i < G_N_ELEMENTS (marks); i++)
    {
      g_autofree char *text = g_date_time_format (day, marks[i]);
      g_string_replace (before, marks[i], text, 0);
      g_string_replace (after, marks[i], text, 0);
    }
  out_parts->before = g_string_free (g_steal_pointer (&before), FALSE);
  out_parts->after = g_string_free (g_steal_pointer (&after), FALSE);
}

/* The running number in number; −1: it is not of this pattern. */
static gint64
running_number (const EmNumberParts *parts, const char *number)
{
  gsize before = strlen (parts->before), after = strlen (parts->after), length = strlen (number);
  gint64 running = 0;

  if (length <= before + after || length - before - after > FIGURES_MAX || !g_str_has_prefix (number, parts->before)
      || !g_str_has_suffix (number, parts->after))
    return -1;
  for (gsize i = before; i < length - after; i++)
    {
      if (!g_ascii_isdigit (number[i]))
        return -1;
      running = running * 10 + (number[i] - '0');
    }
  return running;
}

char *
em_number_next (const char *pattern, GDateTime *day, const EmRegister *reg)
{
  EmNumberParts parts;
  gint64 highest = 0;

  if (pattern == NULL || *pattern == '\0')
    return NULL;
  read_pattern (pattern, day, &parts);
  for (guint i = 0; reg != NULL && i < em_register_get_length (reg); i++)
    {
      const EmRegisterEntry *entry = em_register_get_entry (reg, i);
      if (entry->problem == NULL)
        highest = MAX (highest, running_number (&parts, entry->text[EM_ENTRY_NUMBER]));
    }
  char *number = g_strdup_printf ("%s%0*" G_GINT64_FORMAT "%s", parts.before, parts.n_figures, highest + 1, parts.after);
  g_free (parts.before);
  g_free (parts.after);
  return number;
}

typedef struct
{
  char    *folder;
  EmBasis *basis;   /* owned */
} EmNumbering;

static void
free_numbering (gpointer data)
{
  EmNumbering *numbering = data;

  g_free (numbering->folder);
  em_basis_unref (numbering->basis);
  g_free (numbering);
}

static void
number_in_thread (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  EmNumbering *numbering = data;
  const EmRates *rates = em_basis_get_rates (numbering->basis);
  g_autoptr (GDateTime) today = g_date_time_new_now_local ();
  g_autoptr (EmRegister) old = NULL, reg = NULL;
  GError *error = NULL;

  (void) source;
  if (rates->text[EM_SHOP_NUMBER_PATTERN] != NULL && numbering->folder != NULL && *numbering->folder != '\0')
    {
      old = em_register_new (numbering->folder);
      reg = em_register_scan (numbering->folder, old, rates, em_basis_get_catalogue (numbering->basis), NULL, NULL, cancellable, &error);
      /* A number given twice is worse than none. */
      if (reg == NULL)
        {
          g_task_return_error (task, error);
          return;
        }
    }
  g_task_return_pointer (task, em_number_next (rates->text[EM_SHOP_NUMBER_PATTERN], today, reg), g_free);
}

void
em_number_next_async (const char *folder, EmBasis *basis, GCancellable *cancellable, GAsyncReadyCallback callback, gpointer data)
{
  g_autoptr (GTask) task = g_task_new (NULL, cancellable, callback, data);
  EmNumbering *numbering = g_new0 (EmNumbering, 1);

  numbering->folder = g_strdup (folder);
  numbering->basis = em_basis_ref (basis);
  g_task_set_task_data (task, numbering, free_numbering);
  g_task_run_in_thread (task, number_in_thread);
}

char *
em_number_next_finish (GAsyncResult *result, GError **error)
{
  return g_task_propagate_pointer (G_TASK (result), error);
}
