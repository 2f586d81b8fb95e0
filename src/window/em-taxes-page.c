/* em-taxes-page: the taxes added to every quote, in order.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-book-pages.h"

#include "em-field.h"
#include "em-quantity-entry.h"

#include <glib/gi18n.h>

#define PPM_PER_PERCENT 1e4

typedef struct
{
  EmDraft   *draft;    /* owned */
  GtkWidget *rows, *add_button;
  int        n_rows;
} EmTaxes;

typedef struct
{
  EmTaxes   *taxes;
  int        index;
  GtkWidget *name, *rate, *on_taxes;
} EmTaxRow;

static void
free_taxes (gpointer data)
{
  EmTaxes *taxes = data;

  g_signal_handlers_disconnect_by_data (taxes->draft, taxes);
  g_object_unref (taxes->draft);
  g_free (taxes);
}

static EmTax *
tax_of (EmTaxRow *row)
{
  return &em_draft_get_rates (row->taxes->draft)->tax[row->index];
}

static void
touch (EmTaxRow *row, const char *what)
{
  g_autofree char *field = g_strdup_printf ("%d/%s", row->index, what);

  em_page_touch (row->taxes->draft, EM_DRAFT_RATES, "taxes", NULL, field);
}

static void
on_name (EmTaxRow *row)
{
  EmTax *tax = tax_of (row);

  free (tax->name);
  tax->name = em_text_dup (gtk_editable_get_text (GTK_EDITABLE (row->name)));
  touch (row, "name");
}

static char *
where_of (int index)
{
  return g_strdup_printf ("tax/%d", index);
}

static void
set_problem (EmTaxRow *row, const char *text)
{
  g_autofree char *where = where_of (row->index);
  const char *name = gtk_editable_get_text (GTK_EDITABLE (row->name));
  g_autofree char *told = text != NULL ? g_strdup_printf ("%s: %s", name, text) : NULL;

  em_draft_set_problem (row->taxes->draft, where, told);
}

static void
on_rate (EmTaxRow *row, const EmReading *reading)
{
  int64_t ppm;

  if (em_money_scale (reading != NULL ? reading->value : 0, PPM_PER_PERCENT, &ppm) != EM_OK)
    return;
  tax_of (row)->rate_ppm = ppm;
  set_problem (row, NULL);
  touch (row, "rate");
}

static void
on_unread (EmTaxRow *row, const char *problem)
{
  set_problem (row, problem);
}

static void
on_on_taxes (EmTaxRow *row)
{
  tax_of (row)->on_taxes = gtk_check_button_get_active (GTK_CHECK_BUTTON (row->on_taxes));
  touch (row, "on-taxes");
  em_draft_break (row->taxes->draft);
}

static void
on_remove (EmTaxRow *row)
{
  EmRates *rates = em_draft_get_rates (row->taxes->draft);

  /* All below move up into other rows, which show what was last read. */
  for (int i = row->index; i < rates->n_taxes; i++)
    {
      g_autofree char *where = where_of (i);
      em_draft_forget_problem (row->taxes->draft, where);
    }
  em_tax_clear (&rates->tax[row->index]);
  for (int i = row->index; i + 1 < rates->n_taxes; i++)
    rates->tax[i] = rates->tax[i + 1];
  rates->tax[--rates->n_taxes] = (EmTax) { 0 };
  em_page_touch (row->taxes->draft, EM_DRAFT_RATES, "taxes", NULL, NULL);
  em_draft_break (row->taxes->draft);
}

static void
on_add (EmTaxes *taxes)
{
  EmTax tax = { em_text_dup (_("Tax")), 0, false };

  if (em_rates_add_tax_take (em_draft_get_rates (taxes->draft), &tax) != EM_OK)
    return;
  em_page_touch (taxes->draft, EM_DRAFT_RATES, "taxes", NULL, NULL);
  em_draft_break (taxes->draft);
  /* Its name is what is written next. */
  EmTaxRow *row = g_object_get_data (G_OBJECT (gtk_widget_get_last_child (taxes->rows)), "row");
  gtk_widget_grab_focus (row->name);
}

static void
name_widget (GtkWidget *widget, const char *what, int index)
{
  g_autofree char *name = g_strdup_printf ("%s %d", what, index + 1);

  gtk_accessible_update_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}

static void
set_field (EmTaxRow *row, GtkWidget *widget, const char *what)
{
  g_autofree char *field = g_strdup_printf ("%d/%s", row->index, what);

  em_page_set_field (widget, field);
}

static void
add_row (EmTaxes *taxes)
{
  EmTaxRow *row = g_new0 (EmTaxRow, 1);
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 10);
  GtkWidget *remove = gtk_button_new_from_icon_name ("list-remove-symbolic");

  row->taxes = taxes;
  row->index = taxes->n_rows++;
  gtk_box_append (GTK_BOX (box), em_field_text (_("As printed"), &row->name));
  row->rate = em_quantity_entry_new (_("Rate"), EM_QUANTITY_COUNT);
  em_quantity_entry_set_unit (EM_QUANTITY_ENTRY (row->rate), "%");
  em_quantity_entry_set_limits (EM_QUANTITY_ENTRY (row->rate), 0, 100, FALSE);
  row->on_taxes = gtk_check_button_new_with_label (_("also on the taxes above it"));
  em_field_wrap_check (row->on_taxes);
  gtk_widget_set_valign (row->on_taxes, GTK_ALIGN_END);
  gtk_widget_set_valign (remove, GTK_ALIGN_END);
  gtk_widget_add_css_class (remove, "flat");
  gtk_widget_add_css_class (remove, "row-remove");
  name_widget (row->on_taxes, _("Also on the taxes above it, tax"), row->index);
  name_widget (remove, _("Remove tax"), row->index);
  gtk_widget_set_tooltip_text (remove, _("Remove"));
  set_field (row, row->name, "name");
  set_field (row, row->rate, "rate");
  set_field (row, row->on_taxes, "on-taxes");
  gtk_box_append (GTK_BOX (box), row->rate);
  gtk_box_append (GTK_BOX (box), row->on_taxes);
  gtk_box_append (GTK_BOX (box), remove);
  gtk_box_append (GTK_BOX (taxes->rows), box);
  g_object_set_data_full (G_OBJECT (box), "row", row, g_free);
  g_signal_connect_swapped (row->name, "changed", G_CALLBACK (on_name), row);
  g_signal_connect_swapped (row->rate, "read", G_CALLBACK (on_rate), row);
  g_signal_connect_swapped (row->rate, "unread", G_CALLBACK (on_unread), row);
  g_signal_connect_swapped (row->on_taxes, "toggled", G_CALLBACK (on_on_taxes), row);
  g_signal_connect_swapped (remove, "clicked", G_CALLBACK (on_remove), row);
}

static void
fill_row (EmTaxRow *row)
{
  const EmTax *tax = tax_of (row);

  g_autofree char *where = where_of (row->index);

  em_field_put_text (row->name, tax->name, row);
  if (!em_draft_has_problem (row->taxes->draft, where))
    em_quantity_entry_forget_unread (EM_QUANTITY_ENTRY (row->rate));
  em_quantity_entry_set_value (EM_QUANTITY_ENTRY (row->rate), (double) tax->rate_ppm / PPM_PER_PERCENT, EM_UNITS_METRIC);
  g_signal_handlers_block_by_func (row->on_taxes, on_on_taxes, row);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (row->on_taxes), tax->on_taxes);
  g_signal_handlers_unblock_by_func (row->on_taxes, on_on_taxes, row);
}

static void
on_draft_changed (EmTaxes *taxes)
{
  int n = em_draft_get_rates (taxes->draft)->n_taxes;

  while (taxes->n_rows > n)
    {
      gtk_box_remove (GTK_BOX (taxes->rows), gtk_widget_get_last_child (taxes->rows));
      taxes->n_rows--;
    }
  while (taxes->n_rows < n)
    add_row (taxes);
  for (GtkWidget *child = gtk_widget_get_first_child (taxes->rows); child != NULL; child = gtk_widget_get_next_sibling (child))
    fill_row (g_object_get_data (G_OBJECT (child), "row"));
  gtk_widget_set_sensitive (taxes->add_button, n < EM_TAX_MAX);
}

GtkWidget *
em_taxes_page_new (EmDraft *draft)
{
  EmTaxes *taxes = g_new0 (EmTaxes, 1);
  GtkWidget *box, *page = em_page_new (&box);

  taxes->draft = g_object_ref (draft);
  taxes->rows = gtk_box_new (GTK_ORIENTATION_VERTICAL, 8);
  taxes->add_button = gtk_button_new_with_mnemonic (_("_Add a tax"));
  gtk_widget_set_halign (taxes->add_button, GTK_ALIGN_START);
  gtk_box_append (GTK_BOX (box), em_page_remark (_("Printed in this order under the net amount. Each is rounded once.")));
  gtk_box_append (GTK_BOX (box), taxes->rows);
  gtk_box_append (GTK_BOX (box), taxes->add_button);
  g_signal_connect_swapped (taxes->add_button, "clicked", G_CALLBACK (on_add), taxes);
  g_signal_connect_swapped (draft, "changed", G_CALLBACK (on_draft_changed), taxes);
  on_draft_changed (taxes);
  g_object_set_data_full (G_OBJECT (page), "taxes", taxes, free_taxes);
  return page;
}
