/* em-amount-entry: one labelled amount of money.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-amount-entry.h"

#include "em-field.h"
#include "em-words.h"

#include <glib/gi18n.h>

struct _EmAmountEntry
{
  GtkWidget parent_instance;

  GtkWidget *label, *row, *entry, *unit, *problem;   /* children; label NULL in tables */
  EmCurrency currency;
  gint64     minor, low, high;
  gboolean   is_shown;    /* a value was */
};

G_DEFINE_FINAL_TYPE (EmAmountEntry, em_amount_entry, GTK_TYPE_WIDGET)

enum { READ, UNREAD, N_SIGNALS };
static guint signals[N_SIGNALS];

static void
show_problem (EmAmountEntry *self, const char *problem)
{
  gtk_label_set_text (GTK_LABEL (self->problem), problem != NULL ? problem : "");
  gtk_widget_set_visible (self->problem, problem != NULL);
  if (problem != NULL)
    gtk_widget_add_css_class (self->entry, "error");
  else
    gtk_widget_remove_css_class (self->entry, "error");
  gtk_accessible_update_state (GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_STATE_INVALID,
                               problem != NULL ? GTK_ACCESSIBLE_INVALID_TRUE : GTK_ACCESSIBLE_INVALID_FALSE, -1);
}

static void
refuse (EmAmountEntry *self, const char *problem)
{
  show_problem (self, problem);
  g_signal_emit (self, signals[UNREAD], 0, problem);
}

static void
on_changed (EmAmountEntry *self)
{
  gint64 minor;

  if (!em_money_read (gtk_editable_get_text (GTK_EDITABLE (self->entry)), &self->currency, &minor))
    {
      g_autofree char *example = em_words_money_bare (self->currency.digits == 0 ? 1250 : self->currency.digits == 3 ? 12500 : 1250, &self->currency);
      g_autofree char *problem = g_strdup_printf (_("Not an amount. Write it as %s"), example);
      refuse (self, problem);
      return;
    }
  if (minor < self->low || minor > self->high)
    {
      g_autofree char *low = em_words_money_bare (self->low, &self->currency), *high = em_words_money_bare (self->high, &self->currency);
      g_autofree char *problem = g_strdup_printf (_("From %s to %s"), low, high);
      refuse (self, problem);
      return;
    }
  self->minor = minor;
  show_problem (self, NULL);
  g_signal_emit (self, signals[READ], 0, minor);
}

static void
em_amount_entry_dispose (GObject *object)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (object))) != NULL)
    gtk_widget_unparent (child);
  G_OBJECT_CLASS (em_amount_entry_parent_class)->dispose (object);
}

static gboolean
em_amount_entry_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (EM_AMOUNT_ENTRY (widget)->entry);
}

static void
em_amount_entry_class_init (EmAmountEntryClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = em_amount_entry_dispose;
  widget_class->grab_focus = em_amount_entry_grab_focus;
  signals[READ] = g_signal_new ("read", EM_TYPE_AMOUNT_ENTRY, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1, G_TYPE_INT64);
  signals[UNREAD] = g_signal_new ("unread", EM_TYPE_AMOUNT_ENTRY, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
em_amount_entry_init (EmAmountEntry *self)
{
  GtkBoxLayout *layout = GTK_BOX_LAYOUT (gtk_widget_get_layout_manager (GTK_WIDGET (self)));

  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
  gtk_box_layout_set_spacing (layout, 2);
  self->high = G_GINT64_CONSTANT (1000000000000);
  self->entry = gtk_entry_new ();
  /* The document or the draft keeps the steps back. */
  gtk_editable_set_enable_undo (GTK_EDITABLE (self->entry), FALSE);
  gtk_editable_set_width_chars (GTK_EDITABLE (self->entry), 6);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (self->entry), 9);
  gtk_editable_set_alignment (GTK_EDITABLE (self->entry), 1);
  gtk_widget_set_hexpand (self->entry, TRUE);
  gtk_widget_add_css_class (self->entry, "figure");
  gtk_widget_set_direction (GTK_WIDGET (gtk_editable_get_delegate (GTK_EDITABLE (self->entry))), GTK_TEXT_DIR_LTR);
  self->unit = gtk_label_new (NULL);
  gtk_label_set_xalign (GTK_LABEL (self->unit), 0);
  gtk_widget_add_css_class (self->unit, "unit");
  self->row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 4);
  gtk_box_append (GTK_BOX (self->row), self->entry);
  gtk_box_append (GTK_BOX (self->row), self->unit);
  self->problem = gtk_label_new (NULL);
  gtk_label_set_xalign (GTK_LABEL (self->problem), 0);
  gtk_label_set_wrap (GTK_LABEL (self->problem), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (self->problem), 18);
  gtk_widget_add_css_class (self->problem, "problem");
  gtk_widget_set_visible (self->problem, FALSE);
  gtk_widget_set_parent (self->row, GTK_WIDGET (self));
  gtk_widget_set_parent (self->problem, GTK_WIDGET (self));
  gtk_accessible_update_relation (GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_RELATION_DESCRIBED_BY, self->unit, self->problem, NULL, -1);
  g_signal_connect_swapped (self->entry, "changed", G_CALLBACK (on_changed), self);
}

GtkWidget *
em_amount_entry_new (const char *label)
{
  EmAmountEntry *self = g_object_new (EM_TYPE_AMOUNT_ENTRY, NULL);

  if (label == NULL)
    return GTK_WIDGET (self);
  self->label = gtk_label_new_with_mnemonic (label);
  gtk_label_set_xalign (GTK_LABEL (self->label), 0);
  gtk_label_set_ellipsize (GTK_LABEL (self->label), PANGO_ELLIPSIZE_END);
  gtk_label_set_mnemonic_widget (GTK_LABEL (self->label), self->entry);
  gtk_label_set_width_chars (GTK_LABEL (self->unit), EM_AMOUNT_UNIT_CHARS);
  gtk_widget_set_tooltip_text (self->label, gtk_label_get_text (GTK_LABEL (self->label)));
  gtk_widget_add_css_class (self->label, "field-name");
  gtk_widget_insert_before (self->label, GTK_WIDGET (self), self->row);
  gtk_accessible_update_relation (GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_RELATION_LABELLED_BY, self->label, NULL, -1);
  return GTK_WIDGET (self);
}

void
em_amount_entry_set_name (EmAmountEntry *self, const char *name)
{
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}

/* Without taking it for typing. */
static void
put_amount (EmAmountEntry *self)
{
  g_autofree char *text = em_money_write (self->minor, &self->currency);

  g_signal_handlers_block_by_func (self->entry, on_changed, self);
  gtk_editable_set_text (GTK_EDITABLE (self->entry), text);
  g_signal_handlers_unblock_by_func (self->entry, on_changed, self);
  show_problem (self, NULL);
}

void
em_amount_entry_set_value (EmAmountEntry *self, gint64 minor, const EmCurrency *currency, const char *unit)
{
  gboolean is_same = self->is_shown && minor == self->minor && g_str_equal (currency->code, self->currency.code);
  g_autofree char *unit_text = g_strconcat (currency->code, unit, NULL);

  gtk_label_set_text (GTK_LABEL (self->unit), unit_text);
  /* What can't be read stays while it is being typed. */
  if (is_same && (!em_amount_entry_has_problem (self) || gtk_widget_has_focus (GTK_WIDGET (gtk_editable_get_delegate (GTK_EDITABLE (self->entry))))))
    return;
  self->minor = minor;
  self->currency = *currency;
  self->is_shown = TRUE;
  put_amount (self);
}

void
em_amount_entry_forget_unread (EmAmountEntry *self)
{
  if (self->is_shown && em_amount_entry_has_problem (self))
    put_amount (self);
}

void
em_amount_entry_set_limits (EmAmountEntry *self, gint64 low_minor, gint64 high_minor)
{
  self->low = low_minor;
  self->high = high_minor;
}

gboolean
em_amount_entry_has_problem (EmAmountEntry *self)
{
  return gtk_widget_get_visible (self->problem);
}

GtkWidget *
em_amount_entry_get_text_widget (EmAmountEntry *self)
{
  return self->entry;
}
