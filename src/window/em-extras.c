/* em-extras: bought-out work and other lines the office adds to a quote.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-extras.h"

#include "em-field.h"

#include <glib/gi18n.h>

struct _EmExtras
{
  GtkWidget parent_instance;

  GtkWidget  *expander, *rows, *add_button;
  int         n_rows;
  EmDocument *document;   /* owned */
};

G_DEFINE_FINAL_TYPE (EmExtras, em_extras, GTK_TYPE_WIDGET)

/* What belongs to one line, kept with its row. */
typedef struct
{
  EmExtras  *extras;   /* borrowed */
  int        index;
  GtkWidget *label, *amount, *per_tool;
} EmExtraRow;

static void
put_extra (EmExtraRow *row, int64_t minor)
{
  em_document_set_extra (row->extras->document, row->index, gtk_editable_get_text (GTK_EDITABLE (row->label)), minor,
                         gtk_check_button_get_active (GTK_CHECK_BUTTON (row->per_tool)));
}

static void
on_edited (EmExtraRow *row)
{
  g_autofree char *field = g_strdup_printf ("extra/%d", row->index);
  int64_t minor;

  if (em_money_read (gtk_editable_get_text (GTK_EDITABLE (row->amount)), &em_document_get_rates (row->extras->document)->currency, &minor))
    {
      gtk_widget_remove_css_class (row->amount, "error");
      gtk_widget_set_tooltip_text (row->amount, NULL);
      em_document_set_problem (row->extras->document, 0, field, NULL);
      put_extra (row, minor);
      return;
    }
  gtk_widget_add_css_class (row->amount, "error");
  gtk_widget_set_tooltip_text (row->amount, _("Not an amount"));
  em_document_set_problem (row->extras->document, 0, field, _("Not an amount"));
}

static void
on_remove (EmExtraRow *row)
{
  EmExtras *self = row->extras;
  int removed = row->index;

  /* Those below move up: what stands there and can't be taken would belong to another line. */
  for (int i = 0; i < self->n_rows; i++)
    {
      g_autofree char *field = g_strdup_printf ("extra/%d", i);
      em_document_set_problem (self->document, 0, field, NULL);
    }
  em_document_remove_extra (self->document, removed);
}

static void
on_add (EmExtras *self)
{
  em_document_add_extra (self->document, _("Bought-out work"), 0, FALSE);
}

/* "Cost of other work 2" */
static void
name_widget (GtkWidget *widget, const char *what, int index)
{
  g_autofree char *name = g_strdup_printf ("%s %d", what, index + 1);

  gtk_accessible_update_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}

static void
add_row (EmExtras *self, int index)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *remove = gtk_button_new_from_icon_name ("list-remove-symbolic");
  EmExtraRow *row = g_new0 (EmExtraRow, 1);

  row->extras = self;
  row->index = index;
  row->label = gtk_entry_new ();
  em_field_tell_whole (row->label);
  row->amount = gtk_entry_new ();
  row->per_tool = gtk_check_button_new_with_label (_("per tool"));
  gtk_widget_set_hexpand (row->label, TRUE);
  gtk_editable_set_width_chars (GTK_EDITABLE (row->label), 6);
  gtk_editable_set_width_chars (GTK_EDITABLE (row->amount), 7);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (row->amount), 9);
  gtk_editable_set_alignment (GTK_EDITABLE (row->amount), 1);
  gtk_widget_add_css_class (row->amount, "figure");
  gtk_widget_set_direction (GTK_WIDGET (gtk_editable_get_delegate (GTK_EDITABLE (row->amount))), GTK_TEXT_DIR_LTR);
  gtk_widget_add_css_class (remove, "flat");
  name_widget (row->label, _("Other work"), index);
  name_widget (row->amount, _("Cost of other work"), index);
  name_widget (row->per_tool, _("For each tool, other work"), index);
  name_widget (remove, _("Remove other work"), index);
  g_signal_connect_swapped (row->label, "changed", G_CALLBACK (on_edited), row);
  g_signal_connect_swapped (row->amount, "changed", G_CALLBACK (on_edited), row);
  g_signal_connect_swapped (row->per_tool, "toggled", G_CALLBACK (on_edited), row);
  g_signal_connect_swapped (remove, "clicked", G_CALLBACK (on_remove), row);
  gtk_box_append (GTK_BOX (box), row->label);
  gtk_box_append (GTK_BOX (box), row->amount);
  gtk_box_append (GTK_BOX (box), row->per_tool);
  gtk_box_append (GTK_BOX (box), remove);
  gtk_box_append (GTK_BOX (self->rows), box);
  g_object_set_data_full (G_OBJECT (box), "row", row, g_free);
  self->n_rows++;
}

static void
fill_row (EmExtras *self, EmExtraRow *row, const EmExtra *extra)
{
  const EmCurrency *currency = &em_document_get_rates (self->document)->currency;
  g_autofree char *amount = em_money_write (extra->cost_minor, currency);
  g_autofree char *field = g_strdup_printf ("extra/%d", row->index);
  int64_t typed;

  /* What was typed but not taken is gone once its problem is settled, as by a step back. */
  if (em_document_get_problem (self->document, 0, field) == NULL)
    {
      gtk_widget_remove_css_class (row->amount, "error");
      gtk_widget_set_tooltip_text (row->amount, NULL);
    }
  em_field_put_text (row->label, extra->label, row);
  if (!gtk_widget_has_css_class (row->amount, "error")
      && (!em_money_read (gtk_editable_get_text (GTK_EDITABLE (row->amount)), currency, &typed) || typed != extra->cost_minor))
    em_field_put_text (row->amount, amount, row);
  g_signal_handlers_block_by_func (row->per_tool, on_edited, row);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (row->per_tool), extra->is_per_tool);
  g_signal_handlers_unblock_by_func (row->per_tool, on_edited, row);
}

static void
on_document_changed (EmExtras *self, guint what)
{
  const EmQuote *quote = em_document_get_quote (self->document);
  GtkWidget *child;
  int i = 0;

  if ((what & (EM_CHANGE_DETAILS | EM_CHANGE_BASIS | EM_CHANGE_PROBLEMS)) == 0)
    return;
  while (self->n_rows > quote->n_extras)
    {
      gtk_box_remove (GTK_BOX (self->rows), gtk_widget_get_last_child (self->rows));
      self->n_rows--;
    }
  while (self->n_rows < quote->n_extras)
    add_row (self, self->n_rows);
  for (child = gtk_widget_get_first_child (self->rows); child != NULL; child = gtk_widget_get_next_sibling (child))
    fill_row (self, g_object_get_data (G_OBJECT (child), "row"), &quote->extra[i++]);
}

static void
em_extras_dispose (GObject *object)
{
  EmExtras *self = EM_EXTRAS (object);

  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->document);
  g_clear_pointer (&self->expander, gtk_widget_unparent);
  G_OBJECT_CLASS (em_extras_parent_class)->dispose (object);
}

static void
em_extras_class_init (EmExtrasClass *class)
{
  G_OBJECT_CLASS (class)->dispose = em_extras_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (class), GTK_TYPE_BIN_LAYOUT);
}

static void
em_extras_init (EmExtras *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);

  self->rows = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  self->add_button = gtk_button_new_with_mnemonic (_("Add a _line"));
  gtk_widget_set_halign (self->add_button, GTK_ALIGN_START);
  gtk_box_append (GTK_BOX (box), self->rows);
  gtk_box_append (GTK_BOX (box), self->add_button);
  self->expander = em_fold_new (_("Other work and bought-out parts"), box);
  gtk_widget_set_parent (self->expander, GTK_WIDGET (self));
  g_signal_connect_swapped (self->add_button, "clicked", G_CALLBACK (on_add), self);
}

void
em_extras_set_document (EmExtras *self, EmDocument *document)
{
  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_set_object (&self->document, document);
  g_signal_connect_object (document, "changed", G_CALLBACK (on_document_changed), self, G_CONNECT_SWAPPED);
  on_document_changed (self, EM_CHANGE_ALL);
}
