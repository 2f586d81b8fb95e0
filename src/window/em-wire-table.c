/* em-wire-table: every wire side by side.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-wire-table.h"

#include "em-field.h"
#include "em-words.h"

#include <glib/gi18n.h>
#include <math.h>

struct _EmWireTable
{
  GtkWidget parent_instance;

  GtkWidget  *box, *suited, *expander, *ruled_out;
  EmDocument *document;   /* owned */
};

G_DEFINE_FINAL_TYPE (EmWireTable, em_wire_table, GTK_TYPE_WIDGET)

static GtkWidget *
line (const char *text, const char *css_class, float xalign)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), xalign);
  if (css_class != NULL)
    gtk_widget_add_css_class (label, css_class);
  return label;
}

/* Reasons for, then against, then what rules it out. */
static char *
reasons_text (const EmCompareRow *row)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (int i = 0; i < EM_N_REASON; i++)
    if (row->reasons & EM_REASON_BIT (i))
      g_string_append_printf (text, "%s%s%s", text->len > 0 ? "\n" : "",
                              i < EM_REASON_SOFTER ? "+ " : i < EM_REASON_WRONG_PROCESS ? "− " : "× ", em_words_reason ((EmReason) i));
  return g_string_free (g_steal_pointer (&text), FALSE);
}

static char *
hardness_text (const EmPairing *pairing)
{
  if (isnan (pairing->hardness_low_hrc))
    return g_strdup ("–");
  if (pairing->hardness_low_hrc == pairing->hardness_high_hrc)
    return g_strdup_printf ("%.0f HRC", pairing->hardness_low_hrc);
  return g_strdup_printf ("%.0f–%.0f HRC", pairing->hardness_low_hrc, pairing->hardness_high_hrc);
}

static char *
price_text (EmDocument *document, const EmCompareRow *row)
{
  const EmCurrency *currency = &em_document_get_rates (document)->currency;
  g_autofree char *net = em_words_money_bare (row->net_minor, currency);
  g_autofree char *difference = em_words_money_bare (row->difference_minor, currency);

  if (row->is_ruled_out)
    return g_strdup ("–");
  if (row->is_present)
    return g_strdup (net);
  return g_strdup_printf ("%s\n%s%s", net, row->difference_minor > 0 ? "+" : "", difference);
}

static void
on_clicked (GtkButton *button, EmWireTable *self)
{
  em_document_set_text (self->document, EM_QUOTE_FILLER, g_object_get_data (G_OBJECT (button), "filler"));
  em_document_break (self->document);
}

static GtkWidget *
row_new (EmWireTable *self, const EmCompareRow *row)
{
  const EmFiller *filler = &em_document_get_catalogue (self->document)->filler[row->filler];
  GtkWidget *grid = gtk_grid_new ();
  GtkWidget *name = line (filler->designation, "strong", 0);
  g_autofree char *reasons = reasons_text (row);
  g_autofree char *hardness = hardness_text (&row->pairing);
  g_autofree char *price = price_text (self->document, row);
  GtkWidget *why = line (reasons, "remark", 0);
  GtkWidget *price_label = line (price, "money", 1);
  GtkWidget *hardness_label = line (hardness, "money", 1);

  gtk_label_set_ellipsize (GTK_LABEL (name), PANGO_ELLIPSIZE_END);
  gtk_widget_set_hexpand (name, TRUE);
  gtk_label_set_wrap (GTK_LABEL (why), TRUE);
  gtk_label_set_width_chars (GTK_LABEL (why), 12);
  gtk_label_set_justify (GTK_LABEL (price_label), GTK_JUSTIFY_RIGHT);
  gtk_widget_set_valign (price_label, GTK_ALIGN_START);
  gtk_widget_set_valign (hardness_label, GTK_ALIGN_START);
  gtk_grid_set_column_spacing (GTK_GRID (grid), 10);
  gtk_grid_attach (GTK_GRID (grid), name, 0, 0, 1, 1);
  gtk_grid_attach (GTK_GRID (grid), hardness_label, 1, 0, 1, 1);
  gtk_grid_attach (GTK_GRID (grid), price_label, 2, 0, 1, 2);
  gtk_grid_attach (GTK_GRID (grid), why, 0, 1, 2, 1);
  g_autofree char *spoken = g_strdup_printf ("%s, %s, %s, %s%s", filler->designation, hardness, price, reasons,
                                             row->is_present ? _(", chosen") : "");
  if (row->is_ruled_out)
    {
      gtk_accessible_update_property (GTK_ACCESSIBLE (grid), GTK_ACCESSIBLE_PROPERTY_LABEL, spoken, -1);
      return grid;
    }
  GtkWidget *button = gtk_button_new ();
  gtk_button_set_child (GTK_BUTTON (button), grid);
  gtk_widget_add_css_class (button, "wire-row");
  if (row->is_present)
    gtk_widget_add_css_class (button, "chosen");
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, spoken, -1);
  g_object_set_data_full (G_OBJECT (button), "filler", g_strdup (filler->id), g_free);
  g_signal_connect (button, "clicked", G_CALLBACK (on_clicked), self);
  return button;
}

static void
empty (GtkWidget *box)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (box)) != NULL)
    gtk_box_remove (GTK_BOX (box), child);
}

static void
em_wire_table_dispose (GObject *object)
{
  EmWireTable *self = EM_WIRE_TABLE (object);

  g_clear_object (&self->document);
  g_clear_pointer (&self->box, gtk_widget_unparent);
  G_OBJECT_CLASS (em_wire_table_parent_class)->dispose (object);
}

static void
em_wire_table_class_init (EmWireTableClass *class)
{
  G_OBJECT_CLASS (class)->dispose = em_wire_table_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (class), GTK_TYPE_BIN_LAYOUT);
}

static void
em_wire_table_init (EmWireTable *self)
{
  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  self->suited = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  self->ruled_out = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  self->expander = em_fold_new ("", self->ruled_out);
  gtk_box_append (GTK_BOX (self->box), self->suited);
  gtk_box_append (GTK_BOX (self->box), self->expander);
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
}

void
em_wire_table_show (EmWireTable *self, EmDocument *document, const EmCompare *compare)
{
  int n_out = 0;

  g_set_object (&self->document, document);
  empty (self->suited);
  empty (self->ruled_out);
  for (int i = 0; compare != NULL && i < compare->n_rows; i++)
    {
      n_out += compare->row[i].is_ruled_out;
      gtk_box_append (GTK_BOX (compare->row[i].is_ruled_out ? self->ruled_out : self->suited), row_new (self, &compare->row[i]));
    }
  g_autofree char *label = g_strdup_printf (ngettext ("%d wire ruled out, and why", "%d wires ruled out, and why", (gulong) n_out), n_out);
  em_fold_set_name (self->expander, label);
  gtk_widget_set_visible (self->expander, n_out > 0);
}

int
em_wire_table_count (EmWireTable *self)
{
  int n = 0;

  for (GtkWidget *child = gtk_widget_get_first_child (self->suited); child != NULL; child = gtk_widget_get_next_sibling (child))
    n++;
  return n;
}
