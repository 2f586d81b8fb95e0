/* em-jobs-page: what past jobs say of operating factor and wire, to be taken into the rate book or left.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-book-pages.h"

#include "em-past-jobs.h"
#include "em-settings.h"
#include "em-words.h"

#include <glib/gi18n.h>

typedef struct
{
  EmDraft      *draft;     /* owned */
  EmBasis      *basis;     /* owned; drafts in the folder are priced by it */
  GCancellable *work;      /* owned; NULL: none runs */
  EmPastJobs    jobs;
  GtkWidget    *page, *look_button, *spinner, *said, *grid, *take_button;
  GtkWidget    *check[EM_N_PROCESS][EM_N_ACCESS];   /* NULL where too little is known */
  gboolean      is_unticked[EM_N_PROCESS][EM_N_ACCESS];   /* as the table stood before it was filled anew */
} EmJobs;

static void
free_jobs (gpointer data)
{
  EmJobs *jobs = data;

  if (jobs->work != NULL)
    g_cancellable_cancel (jobs->work);
  g_clear_object (&jobs->work);
  g_signal_handlers_disconnect_by_data (jobs->draft, jobs);
  g_object_unref (jobs->draft);
  em_basis_unref (jobs->basis);
  g_free (jobs);
}

/* The first machine of the process stands for its others, which take the same figure. */
static const EmMachine *
machine_of (EmJobs *jobs, EmProcess process)
{
  const EmRates *rates = em_draft_get_rates (jobs->draft);

  for (int i = 0; i < rates->n_machines; i++)
    if (rates->machine[i].process == process && !rates->machine[i].is_retired)
      return &rates->machine[i];
  return NULL;
}

static void
attach (EmJobs *jobs, const char *text, const char *css_class, int column, int row, gboolean is_figure)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), is_figure ? 1 : 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 22);
  if (css_class != NULL)
    gtk_widget_add_css_class (label, css_class);
  gtk_grid_attach (GTK_GRID (jobs->grid), label, column, row, 1, 1);
}

/* "0.31 (0.27 to 0.36)" */
static char *
found_text (double median, double low, double high)
{
  g_autofree char *middle = em_words_number (median, 2), *from = em_words_number (low, 2), *to = em_words_number (high, 2);

  return em_is_absent (median) ? g_strdup ("–") : g_strdup_printf (_("%s (%s to %s)"), middle, from, to);
}

static void
add_row (EmJobs *jobs, EmProcess process, EmAccess access, int row)
{
  const EmCalibration *found = &jobs->jobs.by[process][access];
  const EmMachine *machine = machine_of (jobs, process);
  g_autofree char *name = g_strdup_printf ("%s, %s", em_words_process (process), em_words_access (access));
  g_autofree char *counted = g_strdup_printf ("%d · %d", found->n_operating, found->n_usable);
  g_autofree char *present = em_words_number (machine->operating_ratio[access], 2), *present_wire = em_words_number (machine->usable_ratio, 2);
  g_autofree char *operating = found_text (found->operating_ratio, found->operating_low, found->operating_high);
  g_autofree char *usable = found_text (found->usable_ratio, found->usable_low, found->usable_high);
  gboolean is_known = !em_is_absent (found->operating_ratio) || !em_is_absent (found->usable_ratio);

  jobs->check[process][access] = NULL;
  if (is_known)
    {
      jobs->check[process][access] = gtk_check_button_new ();
      gtk_check_button_set_active (GTK_CHECK_BUTTON (jobs->check[process][access]), !jobs->is_unticked[process][access]);
      gtk_accessible_update_property (GTK_ACCESSIBLE (jobs->check[process][access]), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
      gtk_grid_attach (GTK_GRID (jobs->grid), jobs->check[process][access], 0, row, 1, 1);
    }
  attach (jobs, name, NULL, 1, row, FALSE);
  attach (jobs, counted, "money", 2, row, TRUE);
  attach (jobs, present, "money", 3, row, TRUE);
  attach (jobs, operating, "money", 4, row, TRUE);
  attach (jobs, present_wire, "money", 5, row, TRUE);
  attach (jobs, usable, "money", 6, row, TRUE);
}

static void
remember_ticks (EmJobs *jobs)
{
  for (int process = 0; process < EM_N_PROCESS; process++)
    for (int access = 0; access < EM_N_ACCESS; access++)
      jobs->is_unticked[process][access] = jobs->check[process][access] != NULL
                                           && !gtk_check_button_get_active (GTK_CHECK_BUTTON (jobs->check[process][access]));
}

static void
fill (EmJobs *jobs)
{
  const char *heads[] = { "", _("Process and access"), _("Features with times · with wire"), _("Operating factor now"), _("Found"),
                          _("Usable wire now"), _("Found") };
  GtkWidget *child;
  gboolean is_any = FALSE;
  int row = 1;

  remember_ticks (jobs);
  while ((child = gtk_widget_get_first_child (jobs->grid)) != NULL)
    gtk_grid_remove (GTK_GRID (jobs->grid), child);
  for (gsize i = 1; i < G_N_ELEMENTS (heads); i++)
    attach (jobs, heads[i], "field-name", (int) i, 0, i > 1);
  for (int process = 0; process < EM_N_PROCESS; process++)
    for (int access = 0; access < EM_N_ACCESS; access++)
      {
        const EmCalibration *found = &jobs->jobs.by[process][access];
        jobs->check[process][access] = NULL;
        if (found->n_operating + found->n_usable == 0 || machine_of (jobs, (EmProcess) process) == NULL)
          continue;
        add_row (jobs, (EmProcess) process, (EmAccess) access, row++);
        is_any = is_any || jobs->check[process][access] != NULL;
      }
  gtk_widget_set_visible (jobs->grid, row > 1);
  gtk_widget_set_sensitive (jobs->take_button, is_any);
}

static void
say (EmJobs *jobs, const char *text)
{
  gtk_label_set_text (GTK_LABEL (jobs->said), text);
}

static void
on_gathered (GObject *source, GAsyncResult *result, gpointer data)
{
  GtkWidget *page = data;   /* owned */
  EmJobs *jobs = g_object_get_data (G_OBJECT (page), "jobs");
  g_autoptr (GError) error = NULL;
  EmPastJobs found;

  (void) source;
  if (em_past_jobs_finish (result, &found, &error))
    {
      g_autofree char *text = g_strdup_printf (ngettext ("%u quote with times or wire noted; medians, with the middle of their spread. At least %d features are needed for a figure.",
                                                         "%u quotes with times or wire noted; medians, with the middle of their spread. At least %d features are needed for a figure.",
                                                         found.n_quotes), found.n_quotes, EM_CALIBRATE_LEAST);
      jobs->jobs = found;
      say (jobs, text);
      fill (jobs);
    }
  else if (!g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    say (jobs, error->message);
  g_clear_object (&jobs->work);
  gtk_spinner_stop (GTK_SPINNER (jobs->spinner));
  gtk_button_set_label (GTK_BUTTON (jobs->look_button), _("_Look through past jobs"));
  g_object_unref (page);
}

static void
on_look (EmJobs *jobs)
{
  g_autofree char *folder = g_settings_get_string (em_settings_get (), "shop-folder");

  if (jobs->work != NULL)
    {
      g_cancellable_cancel (jobs->work);
      return;
    }
  if (*folder == '\0')
    {
      say (jobs, _("First choose the shop’s folder, in the window of past quotes."));
      return;
    }
  jobs->work = g_cancellable_new ();
  gtk_spinner_start (GTK_SPINNER (jobs->spinner));
  gtk_button_set_label (GTK_BUTTON (jobs->look_button), _("S_top"));
  em_past_jobs_async (folder, jobs->basis, jobs->work, on_gathered, g_object_ref (jobs->page));
}

/* Into the draft: its effect is shown there, and it is kept or not. */
static void
on_take (EmJobs *jobs)
{
  for (int process = 0; process < EM_N_PROCESS; process++)
    for (int access = 0; access < EM_N_ACCESS; access++)
      if (jobs->check[process][access] != NULL && gtk_check_button_get_active (GTK_CHECK_BUTTON (jobs->check[process][access])))
        em_calibrate_accept (em_draft_get_rates (jobs->draft), (EmProcess) process, (EmAccess) access, &jobs->jobs.by[process][access]);
  em_page_touch (jobs->draft, EM_DRAFT_RATES, "jobs", NULL, NULL);
  em_draft_break (jobs->draft);
}

GtkWidget *
em_jobs_page_new (EmDraft *draft, EmBasis *basis)
{
  EmJobs *jobs = g_new0 (EmJobs, 1);
  GtkWidget *box, *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 10);

  jobs->draft = g_object_ref (draft);
  jobs->basis = em_basis_ref (basis);
  jobs->page = em_page_new (&box);
  jobs->look_button = gtk_button_new_with_mnemonic (_("_Look through past jobs"));
  jobs->spinner = gtk_spinner_new ();
  gtk_accessible_update_property (GTK_ACCESSIBLE (jobs->spinner), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Looking through past jobs"), -1);
  jobs->said = em_page_remark (NULL);
  jobs->grid = gtk_grid_new ();
  gtk_grid_set_column_spacing (GTK_GRID (jobs->grid), 14);
  gtk_grid_set_row_spacing (GTK_GRID (jobs->grid), 6);
  jobs->take_button = gtk_button_new_with_mnemonic (_("_Take the ticked ones"));
  gtk_widget_set_halign (jobs->take_button, GTK_ALIGN_START);
  gtk_box_append (GTK_BOX (row), jobs->look_button);
  gtk_box_append (GTK_BOX (row), jobs->spinner);
  gtk_box_append (GTK_BOX (box), em_page_remark (_("Note in won quotes how long features took and how much wire they used, under Price and paper. "
                                                   "From these the operating factor (arc-on per time at the bench) and the usable share of the wire are learned.")));
  gtk_box_append (GTK_BOX (box), row);
  gtk_box_append (GTK_BOX (box), jobs->said);
  gtk_box_append (GTK_BOX (box), jobs->grid);
  gtk_box_append (GTK_BOX (box), jobs->take_button);
  g_object_set_data_full (G_OBJECT (jobs->page), "jobs", jobs, free_jobs);
  fill (jobs);
  g_signal_connect_swapped (draft, "changed", G_CALLBACK (fill), jobs);
  g_signal_connect_swapped (jobs->look_button, "clicked", G_CALLBACK (on_look), jobs);
  g_signal_connect_swapped (jobs->take_button, "clicked", G_CALLBACK (on_take), jobs);
  return jobs->page;
}
