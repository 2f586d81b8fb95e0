/* em-price-report: a supplier's price list row by row.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-price-report.h"

#include "em-book-pages.h"
#include "em-columns.h"
#include "em-field.h"
#include "em-words.h"

#include <glib/gi18n.h>
#include <math.h>

struct _EmPriceReport
{
  GtkWindow parent_instance;

  GtkWidget   *summary, *problem, *table, *only, *apply_button;
  EmDraft     *draft;    /* owned */
  EmPriceList *list;     /* owned */
  GArray      *shown;    /* guint: rows of list, by position in the table */
};

G_DEFINE_FINAL_TYPE (EmPriceReport, em_price_report, GTK_TYPE_WINDOW)

typedef enum { COLUMN_LINE, COLUMN_NAME, COLUMN_SIZE, COLUMN_OLD, COLUMN_NEW, COLUMN_WHAT, N_COLUMN } EmReportColumn;

static const char *
state_words (EmPriceRowState state)
{
  switch (state)
    {
    case EM_PRICE_ROW_CHANGES: return _("new price");
    case EM_PRICE_ROW_NEW_SIZE: return _("new size");
    case EM_PRICE_ROW_SAME: return _("as it is");
    case EM_PRICE_ROW_UNKNOWN: return _("not in the catalog, left out");
    case EM_PRICE_ROW_TWICE: return _("named before, left out");
    case EM_PRICE_ROW_BAD: return _("not understood, left out");
    case EM_N_PRICE_ROW: break;
    }
  return "";
}

enum { N_RANK = 4 };

static const char *
basis_words (EmPriceBasis basis)
{
  return basis == EM_PER_METRE ? _("per meter") : basis == EM_PER_GRAM ? _("per gram") : _("per stick");
}

static char *
price_text (EmPriceReport *self, gint64 minor, EmPriceBasis basis)
{
  g_autofree char *amount = em_words_money_bare (minor, &em_draft_get_rates (self->draft)->currency);

  return g_strdup_printf ("%s %s", amount, basis_words (basis));
}

static gboolean
has_price (const EmPriceRow *row)
{
  return row->state == EM_PRICE_ROW_CHANGES || row->state == EM_PRICE_ROW_NEW_SIZE || row->state == EM_PRICE_ROW_SAME;
}

/* What becomes of the row; of a price how much it moves, so that one of another unit or currency is seen. */
static char *
fate_text (const EmPriceRow *row)
{
  const char *state = state_words (row->state);

  if (row->sentence != NULL)
    return g_strdup_printf ("%s: %s", state, row->sentence);
  if (row->state != EM_PRICE_ROW_CHANGES || !row->had_price || row->old_minor == 0)
    return g_strdup (state);
  if (row->basis != row->old_basis)
    return g_strdup (_("new price, by another unit"));
  double percent = 100.0 * ((double) row->price_minor / (double) row->old_minor - 1.0);
  return g_strdup_printf ("%s (%s%.0f %%)", state, percent < -0.5 ? "−" : percent >= 0.5 ? "+" : "", fabs (percent));
}

static char *
cell_text (EmPriceReport *self, const EmPriceRow *row, EmReportColumn column)
{
  switch (column)
    {
    case COLUMN_LINE: return g_strdup_printf ("%u", row->line);
    case COLUMN_NAME: return g_strdup (row->name != NULL ? row->name : "");
    case COLUMN_SIZE: return isnan (row->wire_mm) ? g_strdup ("") : em_words_length (row->wire_mm, em_draft_get_rates (self->draft)->units, 3);
    case COLUMN_OLD: return row->had_price ? price_text (self, row->old_minor, row->old_basis) : g_strdup ("");
    case COLUMN_NEW: return has_price (row) ? price_text (self, row->price_minor, row->basis) : g_strdup ("");
    case COLUMN_WHAT: return fate_text (row);
    case N_COLUMN: break;
    }
  return g_strdup ("");
}

static gboolean
is_figure (EmReportColumn column)
{
  return column == COLUMN_LINE || column == COLUMN_SIZE || column == COLUMN_OLD || column == COLUMN_NEW;
}

static void
on_setup (GtkSignalListItemFactory *factory, GtkListItem *item)
{
  EmReportColumn column = (EmReportColumn) GPOINTER_TO_INT (g_object_get_data (G_OBJECT (factory), "column"));
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), is_figure (column) ? 1 : 0);
  gtk_label_set_wrap (GTK_LABEL (label), column == COLUMN_WHAT);
  if (is_figure (column))
    gtk_widget_add_css_class (label, "money");
  gtk_list_item_set_child (item, label);
}

static void
on_bind (GtkSignalListItemFactory *factory, GtkListItem *item, EmPriceReport *self)
{
  EmReportColumn column = (EmReportColumn) GPOINTER_TO_INT (g_object_get_data (G_OBJECT (factory), "column"));
  guint at = g_array_index (self->shown, guint, gtk_list_item_get_position (item));
  const EmPriceRow *row = self->list->rows->pdata[at];
  g_autofree char *text = cell_text (self, row, column);
  GtkWidget *label = gtk_list_item_get_child (item);

  gtk_label_set_text (GTK_LABEL (label), text);
  if (column == COLUMN_WHAT && (row->state == EM_PRICE_ROW_BAD || row->state == EM_PRICE_ROW_TWICE))
    gtk_widget_add_css_class (label, "problem");
  else
    gtk_widget_remove_css_class (label, "problem");
}

static void
add_column (EmPriceReport *self, EmReportColumn column, const char *title)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
  g_autoptr (GtkColumnViewColumn) view_column = NULL;

  g_object_set_data (G_OBJECT (factory), "column", GINT_TO_POINTER (column));
  g_signal_connect (factory, "setup", G_CALLBACK (on_setup), NULL);
  g_signal_connect (factory, "bind", G_CALLBACK (on_bind), self);
  view_column = gtk_column_view_column_new (title, factory);
  gtk_column_view_column_set_expand (view_column, column == COLUMN_WHAT || column == COLUMN_NAME);
  if (is_figure (column))
    em_columns_set_figures (view_column);
  gtk_column_view_append_column (GTK_COLUMN_VIEW (self->table), view_column);
}

/* What can't be used is seen to first, then what changes, wires the shop has not and what is as it was last; each in the order of the list. */
static int
rank (EmPriceRowState state)
{
  switch (state)
    {
    case EM_PRICE_ROW_BAD:
    case EM_PRICE_ROW_TWICE: return 0;
    case EM_PRICE_ROW_UNKNOWN: return 2;
    case EM_PRICE_ROW_SAME: return 3;
    default: return 1;
    }
}

/* All rows, or those that change something or can't be used. */
static void
fill (EmPriceReport *self)
{
  gboolean is_all = !gtk_check_button_get_active (GTK_CHECK_BUTTON (self->only));
  g_autoptr (GtkStringList) model = gtk_string_list_new (NULL);
  g_autoptr (GtkSelectionModel) selection = NULL;

  gtk_column_view_set_model (GTK_COLUMN_VIEW (self->table), NULL);
  g_array_set_size (self->shown, 0);
  for (int at = 0; at < N_RANK; at++)
    for (guint i = 0; i < self->list->rows->len; i++)
      {
        EmPriceRowState state = ((const EmPriceRow *) self->list->rows->pdata[i])->state;
        if (rank (state) != at || (!is_all && state == EM_PRICE_ROW_SAME))
          continue;
        g_array_append_val (self->shown, i);
        gtk_string_list_append (model, "");
      }
  selection = GTK_SELECTION_MODEL (gtk_no_selection_new (G_LIST_MODEL (g_steal_pointer (&model))));
  gtk_column_view_set_model (GTK_COLUMN_VIEW (self->table), selection);
}

static void
show_summary (EmPriceReport *self)
{
  const guint *n_of = self->list->n_of;
  guint n_left = n_of[EM_PRICE_ROW_UNKNOWN] + n_of[EM_PRICE_ROW_TWICE] + n_of[EM_PRICE_ROW_BAD];
  guint n_used = n_of[EM_PRICE_ROW_CHANGES] + n_of[EM_PRICE_ROW_NEW_SIZE];
  g_autofree char *used = g_strdup_printf (ngettext ("%u row changes something", "%u rows change something", n_used), n_used);
  g_autofree char *same = g_strdup_printf (ngettext ("%u is as it is already", "%u are as they are already", n_of[EM_PRICE_ROW_SAME]), n_of[EM_PRICE_ROW_SAME]);
  g_autofree char *left = g_strdup_printf (ngettext ("%u is left out", "%u are left out", n_left), n_left);
  g_autofree char *text = g_strdup_printf ("%s: %s · %s · %s", self->list->name, used, same, left);

  gtk_label_set_text (GTK_LABEL (self->summary), text);
  gtk_widget_set_sensitive (self->apply_button, n_used > 0);
}

gboolean
em_price_report_apply (EmPriceReport *self)
{
  g_autoptr (GError) error = NULL;

  if (!em_price_list_apply (self->list, em_draft_get_catalogue (self->draft), NULL, &error))
    {
      gtk_label_set_text (GTK_LABEL (self->problem), error->message);
      gtk_widget_set_visible (self->problem, TRUE);
      return FALSE;
    }
  em_page_touch (self->draft, EM_DRAFT_CATALOGUE, "wires", NULL, NULL);
  em_draft_break (self->draft);
  gtk_window_destroy (GTK_WINDOW (self));
  return TRUE;
}

static void
em_price_report_dispose (GObject *object)
{
  EmPriceReport *self = EM_PRICE_REPORT (object);

  if (self->table != NULL)
    gtk_column_view_set_model (GTK_COLUMN_VIEW (self->table), NULL);
  self->table = NULL;
  g_clear_object (&self->draft);
  g_clear_pointer (&self->list, em_price_list_free);
  g_clear_pointer (&self->shown, g_array_unref);
  G_OBJECT_CLASS (em_price_report_parent_class)->dispose (object);
}

static void
em_price_report_class_init (EmPriceReportClass *class)
{
  G_OBJECT_CLASS (class)->dispose = em_price_report_dispose;
  /* As "Leave it" does. */
  gtk_widget_class_add_binding_action (GTK_WIDGET_CLASS (class), GDK_KEY_Escape, 0, "window.close", NULL);
}

static GtkWidget *
label_new (const char *css_class)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_widget_add_css_class (label, css_class);
  return label;
}

static void
em_price_report_init (EmPriceReport *self)
{
  static const char *const titles[N_COLUMN] = { N_("Line"), N_("Wire or article"), N_("Size"), N_("Old price"), N_("New price"), N_("What becomes of it") };
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 10), *buttons = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 10);
  GtkWidget *scrolled = gtk_scrolled_window_new (), *leave = gtk_button_new_with_mnemonic (_("_Leave it"));

  self->shown = g_array_new (FALSE, FALSE, sizeof (guint));
  self->summary = label_new ("strong");
  self->problem = label_new ("problem");
  gtk_widget_set_visible (self->problem, FALSE);
  self->table = gtk_column_view_new (NULL);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->table), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Rows of the price list"), -1);
  for (int i = 0; i < N_COLUMN; i++)
    add_column (self, (EmReportColumn) i, _(titles[i]));
  em_columns_align (GTK_COLUMN_VIEW (self->table));
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), self->table);
  gtk_widget_set_vexpand (scrolled, TRUE);
  self->only = gtk_check_button_new_with_mnemonic (_("_Hide rows that change nothing"));
  em_field_wrap_check (self->only);
  gtk_widget_set_hexpand (self->only, TRUE);
  self->apply_button = gtk_button_new_with_mnemonic (_("_Take these prices"));
  gtk_widget_add_css_class (self->apply_button, "call");
  gtk_box_append (GTK_BOX (buttons), self->only);
  gtk_box_append (GTK_BOX (buttons), leave);
  gtk_box_append (GTK_BOX (buttons), self->apply_button);
  gtk_box_append (GTK_BOX (box), self->summary);
  gtk_box_append (GTK_BOX (box), scrolled);
  gtk_box_append (GTK_BOX (box), self->problem);
  gtk_box_append (GTK_BOX (box), buttons);
  gtk_widget_add_css_class (box, "book-page");
  gtk_widget_add_css_class (GTK_WIDGET (self), "estimend");
  gtk_window_set_child (GTK_WINDOW (self), box);
  gtk_window_set_default_size (GTK_WINDOW (self), 900, 560);
  gtk_window_set_title (GTK_WINDOW (self), _("Prices from a supplier"));
  g_signal_connect_swapped (self->only, "toggled", G_CALLBACK (fill), self);
  g_signal_connect_swapped (leave, "clicked", G_CALLBACK (gtk_window_destroy), self);
  g_signal_connect_swapped (self->apply_button, "clicked", G_CALLBACK (em_price_report_apply), self);
}

EmPriceReport *
em_price_report_new (GtkWindow *parent, EmDraft *draft, EmPriceList *list)
{
  EmPriceReport *self = g_object_new (EM_TYPE_PRICE_REPORT, "transient-for", parent, "modal", TRUE, "destroy-with-parent", TRUE, NULL);

  self->draft = g_object_ref (draft);
  self->list = list;
  show_summary (self);
  fill (self);
  return self;
}

const char *
em_price_report_get_summary (EmPriceReport *self)
{
  return gtk_label_get_text (GTK_LABEL (self->summary));
}
