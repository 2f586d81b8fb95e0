/* em-quantity-entry: one labelled number: typed as people write, with its unit and its problem in words.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-quantity-entry.h"

#include "em-field.h"
#include "em-steady.h"
#include "em-words.h"

#include <glib/gi18n.h>
#include <math.h>

struct _EmQuantityEntry
{
  GtkWidget parent_instance;

  GtkWidget *label, *row, *entry, *unit, *problem, *remark;   /* children */

  EmQuantityType type;
  EmUnits        units;
  double         value;       /* last shown or read; NaN: empty */
  double         low, high;
  gboolean       is_whole;
  gboolean       is_unread;   /* what stands there can't be taken */
  char          *own_unit;
  gboolean       is_emptied;  /* just now, by hand: those who hear of it may put a value in the place of none */
  gboolean       keeps_room;  /* for the unit, even where there is none */
};

G_DEFINE_FINAL_TYPE (EmQuantityEntry, em_quantity_entry, GTK_TYPE_WIDGET)

enum { READ, UNREAD, DONE, N_SIGNALS };
static guint signals[N_SIGNALS];

static void
show_problem (EmQuantityEntry *self, const char *problem)
{
  g_autofree char *kept = em_field_keep_figures (problem != NULL ? problem : "");

  gtk_label_set_text (GTK_LABEL (self->problem), kept);
  gtk_widget_set_visible (self->problem, problem != NULL);
  if (problem != NULL)
    gtk_widget_add_css_class (self->entry, "error");
  else
    gtk_widget_remove_css_class (self->entry, "error");
  gtk_accessible_update_state (GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_STATE_INVALID,
                               problem != NULL ? GTK_ACCESSIBLE_INVALID_TRUE : GTK_ACCESSIBLE_INVALID_FALSE, -1);
}

static const char *
unit_text (EmQuantityEntry *self)
{
  return self->own_unit != NULL ? self->own_unit : em_quantity_unit (self->type, self->units);
}

static char *
number_text (EmQuantityEntry *self, double value)
{
  char text[64];
  char mark = g_str_equal (em_words_language (), "en") ? '.' : ',';

  em_quantity_write (value, self->type, self->units, mark, text, sizeof text);
  return g_strdup (text);
}

static gboolean
is_within (EmQuantityEntry *self, double value)
{
  return (em_is_absent (self->low) || value >= self->low) && (em_is_absent (self->high) || value <= self->high)
         && (!self->is_whole || value == floor (value));
}

static char *
limits_text (EmQuantityEntry *self)
{
  g_autofree char *low = em_is_absent (self->low) ? NULL : number_text (self, self->low);
  g_autofree char *high = em_is_absent (self->high) ? NULL : number_text (self, self->high);

  if (low != NULL && high != NULL)
    return self->is_whole ? g_strdup_printf (_("A whole number from %s to %s"), low, high)
                          : g_strdup_printf (_("From %s to %s %s"), low, high, unit_text (self));
  return g_strdup (_("Outside its limits"));
}

static void
refuse (EmQuantityEntry *self, const char *problem)
{
  self->is_unread = TRUE;
  show_problem (self, problem);
  g_signal_emit (self, signals[UNREAD], 0, problem);
}

static void
accept (EmQuantityEntry *self, const EmReading *reading)
{
  self->is_unread = FALSE;
  self->value = reading != NULL ? reading->value : EM_ABSENT;
  show_problem (self, NULL);
  self->is_emptied = reading == NULL;
  g_signal_emit (self, signals[READ], 0, reading);
  self->is_emptied = FALSE;
}

/* What is shown is the value rounded for the eye: read back it must not become another one. */
static gboolean
shows_value (EmQuantityEntry *self, const char *text)
{
  if (em_is_absent (self->value))
    return FALSE;
  g_autofree char *shown = number_text (self, self->value);
  return g_str_equal (text, shown);
}

static void
on_changed (EmQuantityEntry *self)
{
  const char *text = gtk_editable_get_text (GTK_EDITABLE (self->entry));
  EmReading reading;
  EmFault fault;
  EmStatus status = em_quantity_read (text, self->type, self->units, "value", &reading, &fault);

  if (status == EM_FAULT_MISSING)
    accept (self, NULL);
  else if (status == EM_FAULT_NOT_FINITE)
    refuse (self, _("Too large a number"));
  else if (status != EM_OK)
    refuse (self, self->type == EM_QUANTITY_LENGTH ? _("Not a dimension. Write .020, 20 thou, 0,5 mm or 1/2")
                                                   : _("Not a number"));
  else if (!is_within (self, reading.value))
    {
      g_autofree char *limits = limits_text (self);
      refuse (self, limits);
    }
  else
    {
      if (shows_value (self, text))
        reading.value = self->value;
      accept (self, &reading);
    }
}

/* Shows text without taking it for typing. */
static void
put_text (EmQuantityEntry *self, const char *text)
{
  if (g_str_equal (text, gtk_editable_get_text (GTK_EDITABLE (self->entry))))
    return;
  g_signal_handlers_block_by_func (self->entry, on_changed, self);
  gtk_editable_set_text (GTK_EDITABLE (self->entry), text);
  g_signal_handlers_unblock_by_func (self->entry, on_changed, self);
}

static void
on_leave (EmQuantityEntry *self)
{
  g_signal_emit (self, signals[DONE], 0);
  /* What was typed becomes the number it was taken for: "1/2" shows as 12.7 mm. */
  if (!self->is_unread)
    {
      g_autofree char *text = em_is_absent (self->value) ? g_strdup ("") : number_text (self, self->value);
      put_text (self, text);
    }
}

static void
em_quantity_entry_dispose (GObject *object)
{
  EmQuantityEntry *self = EM_QUANTITY_ENTRY (object);
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))) != NULL)
    gtk_widget_unparent (child);
  g_clear_pointer (&self->own_unit, g_free);
  G_OBJECT_CLASS (em_quantity_entry_parent_class)->dispose (object);
}

static gboolean
em_quantity_entry_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (EM_QUANTITY_ENTRY (widget)->entry);
}

static void
em_quantity_entry_class_init (EmQuantityEntryClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = em_quantity_entry_dispose;
  widget_class->grab_focus = em_quantity_entry_grab_focus;
  signals[READ] = g_signal_new ("read", EM_TYPE_QUANTITY_ENTRY, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1, G_TYPE_POINTER);
  signals[UNREAD] = g_signal_new ("unread", EM_TYPE_QUANTITY_ENTRY, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
  signals[DONE] = g_signal_new ("done", EM_TYPE_QUANTITY_ENTRY, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  gtk_widget_class_set_layout_manager_type (widget_class, EM_TYPE_STEADY_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "quantity");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static GtkWidget *
small_label (const char *css_class)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  gtk_label_set_width_chars (GTK_LABEL (label), 8);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 14);
  gtk_widget_add_css_class (label, css_class);
  gtk_widget_set_visible (label, FALSE);
  return label;
}

static void
em_quantity_entry_init (EmQuantityEntry *self)
{
  GtkEventController *focus = gtk_event_controller_focus_new ();

  em_steady_layout_set_spacing (EM_STEADY_LAYOUT (gtk_widget_get_layout_manager (GTK_WIDGET (self))), 2);
  self->value = self->low = self->high = EM_ABSENT;
  self->label = gtk_label_new (NULL);
  gtk_label_set_xalign (GTK_LABEL (self->label), 0);
  gtk_label_set_ellipsize (GTK_LABEL (self->label), PANGO_ELLIPSIZE_END);
  gtk_widget_add_css_class (self->label, "field-name");
  self->entry = gtk_entry_new ();
  gtk_editable_set_enable_undo (GTK_EDITABLE (self->entry), FALSE);
  gtk_editable_set_width_chars (GTK_EDITABLE (self->entry), 6);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (self->entry), 9);
  gtk_editable_set_alignment (GTK_EDITABLE (self->entry), 1);
  gtk_entry_set_input_purpose (GTK_ENTRY (self->entry), GTK_INPUT_PURPOSE_FREE_FORM);
  gtk_widget_set_hexpand (self->entry, TRUE);
  gtk_widget_add_css_class (self->entry, "figure");
  /* Written from left to right everywhere: ".25" must not become "25.". */
  gtk_widget_set_direction (GTK_WIDGET (gtk_editable_get_delegate (GTK_EDITABLE (self->entry))), GTK_TEXT_DIR_LTR);
  self->unit = gtk_label_new (NULL);
  gtk_label_set_xalign (GTK_LABEL (self->unit), 0);
  gtk_label_set_width_chars (GTK_LABEL (self->unit), 3);
  gtk_widget_add_css_class (self->unit, "unit");
  self->row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 4);
  gtk_box_append (GTK_BOX (self->row), self->entry);
  gtk_box_append (GTK_BOX (self->row), self->unit);
  self->problem = small_label ("problem");
  self->remark = small_label ("remark");
  gtk_label_set_mnemonic_widget (GTK_LABEL (self->label), self->entry);
  gtk_widget_set_parent (self->label, GTK_WIDGET (self));
  gtk_widget_set_parent (self->row, GTK_WIDGET (self));
  gtk_widget_set_parent (self->problem, GTK_WIDGET (self));
  gtk_widget_set_parent (self->remark, GTK_WIDGET (self));
  gtk_accessible_update_relation (GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_RELATION_LABELLED_BY, self->label, NULL,
                                  GTK_ACCESSIBLE_RELATION_DESCRIBED_BY, self->unit, self->problem, self->remark, NULL, -1);
  gtk_accessible_update_relation (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_RELATION_LABELLED_BY, self->label, NULL, -1);
  g_signal_connect_swapped (self->entry, "changed", G_CALLBACK (on_changed), self);
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (on_leave), self);
  gtk_widget_add_controller (self->entry, focus);
}

GtkWidget *
em_quantity_entry_new (const char *label, EmQuantityType type)
{
  EmQuantityEntry *self = g_object_new (EM_TYPE_QUANTITY_ENTRY, NULL);

  self->type = type;
  em_quantity_entry_set_label (self, label);
  em_quantity_entry_set_value (self, EM_ABSENT, EM_UNITS_METRIC);
  return GTK_WIDGET (self);
}

void
em_quantity_entry_set_label (EmQuantityEntry *self, const char *label)
{
  gtk_label_set_text_with_mnemonic (GTK_LABEL (self->label), label);
  gtk_widget_set_tooltip_text (self->label, gtk_label_get_text (GTK_LABEL (self->label)));
}

void
em_quantity_entry_set_hint (EmQuantityEntry *self, const char *hint)
{
  gtk_entry_set_placeholder_text (GTK_ENTRY (self->entry), hint);
}

void
em_quantity_entry_set_unit (EmQuantityEntry *self, const char *unit)
{
  g_free (self->own_unit);
  self->own_unit = g_strdup (unit);
  gtk_label_set_text (GTK_LABEL (self->unit), unit_text (self));
}

void
em_quantity_entry_set_unit_chars (EmQuantityEntry *self, int n)
{
  self->keeps_room = TRUE;
  gtk_label_set_width_chars (GTK_LABEL (self->unit), n);
  gtk_widget_set_visible (self->unit, TRUE);
}

void
em_quantity_entry_set_value (EmQuantityEntry *self, double value, EmUnits units)
{
  gboolean is_same = (em_is_absent (value) && em_is_absent (self->value)) || value == self->value;
  gboolean has_focus = gtk_widget_has_focus (GTK_WIDGET (gtk_editable_get_delegate (GTK_EDITABLE (self->entry))));

  if (is_same && units == self->units && (has_focus || self->is_unread))
    return;
  self->value = value;
  /* Typing over a figure empties the field first. What stands for none is not put before what is typed next: "4" over "2" places
   * would be 41. It shows once the keyboard goes elsewhere. */
  if (self->is_emptied && units == self->units)
    return;
  self->units = units;
  g_autofree char *text = em_is_absent (value) ? g_strdup ("") : number_text (self, value);
  gtk_label_set_text (GTK_LABEL (self->unit), unit_text (self));
  gtk_widget_set_visible (self->unit, self->keeps_room || unit_text (self)[0] != '\0');
  put_text (self, text);
  if (self->is_unread)
    {
      self->is_unread = FALSE;
      show_problem (self, NULL);
    }
}

void
em_quantity_entry_set_problem (EmQuantityEntry *self, const char *problem)
{
  if (!self->is_unread)
    show_problem (self, problem);
}

void
em_quantity_entry_set_remark (EmQuantityEntry *self, const char *remark)
{
  gtk_label_set_text (GTK_LABEL (self->remark), remark != NULL ? remark : "");
  gtk_widget_set_visible (self->remark, remark != NULL);
}

void
em_quantity_entry_set_limits (EmQuantityEntry *self, double low, double high, gboolean is_whole)
{
  self->low = low;
  self->high = high;
  self->is_whole = is_whole;
}

void
em_quantity_entry_hide_label (EmQuantityEntry *self)
{
  gtk_widget_set_visible (self->label, FALSE);
}

void
em_quantity_entry_forget_unread (EmQuantityEntry *self)
{
  g_autofree char *text = em_is_absent (self->value) ? g_strdup ("") : number_text (self, self->value);

  if (!self->is_unread)
    return;
  self->is_unread = FALSE;
  show_problem (self, NULL);
  put_text (self, text);
}

void
em_quantity_entry_show_unread (EmQuantityEntry *self, const char *typed, const char *problem)
{
  self->is_unread = TRUE;
  put_text (self, typed);
  show_problem (self, problem);
}

gboolean
em_quantity_entry_has_problem (EmQuantityEntry *self)
{
  return gtk_widget_get_visible (self->problem);
}

GtkWidget *
em_quantity_entry_get_text_widget (EmQuantityEntry *self)
{
  return self->entry;
}
