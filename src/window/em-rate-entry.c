/* em-rate-entry: one row of a table of figures as an entry.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-rate-entry.h"

#include "em-amount-entry.h"
#include "em-field.h"
#include "em-quantity-entry.h"
#include "em-words.h"

#include <math.h>

#define PPM_PER_PERCENT 1e4

struct _EmRateEntry
{
  GtkWidget parent_instance;

  const EmRateField *field;
  EmDraft     *draft;       /* owned */
  EmRateHolder holder;
  gpointer     owner;
  char        *place;       /* or NULL */
  GtkWidget   *child;       /* an EmAmountEntry, EmQuantityEntry or check button, by the row's type */
  double       scale;       /* shown per stored */
  gboolean     is_showing;
  const void  *shown;       /* the record whose figure stands here; only compared */
};

G_DEFINE_FINAL_TYPE (EmRateEntry, em_rate_entry, GTK_TYPE_WIDGET)

static guint edited_signal;

char *
em_rate_entry_dup_where (EmRateEntry *self)
{
  return g_strdup_printf ("%s/%s", self->place != NULL ? self->place : "", self->field->id);
}

/* What can't be read any more, because it is no longer there, stands in nobody's way. */
static void
forget (EmRateEntry *self)
{
  g_autofree char *where = em_rate_entry_dup_where (self);

  em_draft_forget_problem (self->draft, where);
}

static void
settle (EmRateEntry *self, const char *problem)
{
  g_autofree char *where = em_rate_entry_dup_where (self);
  /* The entry may be on a page that is not shown. */
  g_autofree char *text = problem != NULL ? g_strdup_printf ("%s: %s", em_words (self->field->name), problem) : NULL;

  em_draft_set_problem (self->draft, where, text);
}

static void
put (EmRateEntry *self, double value)
{
  void *holder = self->holder (self->owner);

  if (self->is_showing || holder == NULL)
    return;
  gboolean is_same = em_rate_get (self->field, holder) == value || (isnan (value) && isnan (em_rate_get (self->field, holder)));
  /* Before it is told that it can be read again, or the old figure would be shown over what is typed. */
  if (!is_same)
    em_rate_set (self->field, holder, value);
  settle (self, NULL);
  if (!is_same)
    g_signal_emit (self, edited_signal, 0);
}

static void
on_amount (EmRateEntry *self, gint64 minor)
{
  put (self, (double) minor);
}

static void
on_quantity (EmRateEntry *self, const EmReading *reading)
{
  double value = reading != NULL ? reading->value : EM_ABSENT;
  int64_t ppm;

  if (self->field->type == EM_RATE_PPM)
    value = reading != NULL && em_money_scale (value, PPM_PER_PERCENT, &ppm) == EM_OK ? (double) ppm : 0;
  else if (self->field->type == EM_RATE_WHOLE && isnan (value))
    value = self->field->low;
  else if (self->scale != 1)
    value /= self->scale;
  put (self, value);
}

static void
on_unread (EmRateEntry *self, const char *problem)
{
  if (!self->is_showing)
    settle (self, problem);
}

static void
on_toggled (EmRateEntry *self)
{
  put (self, gtk_check_button_get_active (GTK_CHECK_BUTTON (self->child)) ? 1 : 0);
  em_draft_break (self->draft);
}

static void
em_rate_entry_dispose (GObject *object)
{
  EmRateEntry *self = EM_RATE_ENTRY (object);

  g_clear_pointer (&self->child, gtk_widget_unparent);
  if (self->draft != NULL)
    forget (self);
  g_clear_object (&self->draft);
  g_clear_pointer (&self->place, g_free);
  G_OBJECT_CLASS (em_rate_entry_parent_class)->dispose (object);
}

static gboolean
em_rate_entry_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (EM_RATE_ENTRY (widget)->child);
}

static void
em_rate_entry_class_init (EmRateEntryClass *class)
{
  G_OBJECT_CLASS (class)->dispose = em_rate_entry_dispose;
  GTK_WIDGET_CLASS (class)->grab_focus = em_rate_entry_grab_focus;
  edited_signal = g_signal_new ("edited", EM_TYPE_RATE_ENTRY, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (class), GTK_TYPE_BIN_LAYOUT);
}

static void
em_rate_entry_init (EmRateEntry *self)
{
  self->scale = 1;
}

static gboolean
is_length (const EmRateField *field)
{
  return field->type == EM_RATE_REAL && g_str_equal (field->unit, "mm");
}

static GtkWidget *
quantity_new (EmRateEntry *self, const char *name)
{
  const EmRateField *field = self->field;
  double scale = field->type == EM_RATE_PPM ? PPM_PER_PERCENT : 1;
  GtkWidget *entry = em_quantity_entry_new (name, is_length (field) ? EM_QUANTITY_LENGTH : EM_QUANTITY_COUNT);

  if (!is_length (field))
    em_quantity_entry_set_unit (EM_QUANTITY_ENTRY (entry), field->unit);
  em_quantity_entry_set_limits (EM_QUANTITY_ENTRY (entry), field->low / scale, field->high / scale, field->type == EM_RATE_WHOLE);
  g_signal_connect_swapped (entry, "read", G_CALLBACK (on_quantity), self);
  g_signal_connect_swapped (entry, "unread", G_CALLBACK (on_unread), self);
  return entry;
}

static GtkWidget *
amount_new (EmRateEntry *self, const char *name)
{
  GtkWidget *entry = em_amount_entry_new (name);

  em_amount_entry_set_limits (EM_AMOUNT_ENTRY (entry), (gint64) self->field->low, (gint64) self->field->high);
  g_signal_connect_swapped (entry, "read", G_CALLBACK (on_amount), self);
  g_signal_connect_swapped (entry, "unread", G_CALLBACK (on_unread), self);
  return entry;
}

GtkWidget *
em_rate_entry_new (const EmRateField *field, EmDraft *draft, EmRateHolder holder, gpointer owner, gboolean is_in_table)
{
  EmRateEntry *self = g_object_new (EM_TYPE_RATE_ENTRY, NULL);
  const char *name = em_words (field->name);

  self->field = field;
  self->draft = g_object_ref (draft);
  self->holder = holder;
  self->owner = owner;
  if (field->type == EM_RATE_MINOR)
    self->child = amount_new (self, is_in_table ? NULL : name);
  else if (field->type == EM_RATE_BOOL)
    {
      self->child = gtk_check_button_new_with_label (name);
      em_field_wrap_check (self->child);
      g_signal_connect_swapped (self->child, "toggled", G_CALLBACK (on_toggled), self);
    }
  else
    self->child = quantity_new (self, name);
  if (is_in_table && EM_IS_QUANTITY_ENTRY (self->child))
    em_quantity_entry_hide_label (EM_QUANTITY_ENTRY (self->child));
  else if (EM_IS_QUANTITY_ENTRY (self->child))
    em_quantity_entry_set_unit_chars (EM_QUANTITY_ENTRY (self->child), EM_AMOUNT_UNIT_CHARS);
  gtk_widget_set_parent (self->child, GTK_WIDGET (self));
  /* A problem told under one of a row moves none of the others. */
  if (is_in_table && field->type != EM_RATE_BOOL)
    gtk_widget_set_valign (GTK_WIDGET (self), GTK_ALIGN_START);
  em_rate_entry_show (self);
  return GTK_WIDGET (self);
}

void
em_rate_entry_set_place (EmRateEntry *self, const char *place)
{
  g_autofree char *name = g_strdup_printf ("%s, %s", em_words (self->field->name), place);
  GtkWidget *text = em_rate_entry_get_text_widget (self);

  g_free (self->place);
  self->place = g_strdup (place);
  gtk_accessible_update_property (GTK_ACCESSIBLE (text != NULL ? text : self->child), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}

void
em_rate_entry_set_scale (EmRateEntry *self, double factor, const char *unit)
{
  self->scale = factor;
  em_quantity_entry_set_unit (EM_QUANTITY_ENTRY (self->child), unit);
  em_quantity_entry_set_limits (EM_QUANTITY_ENTRY (self->child), self->field->low * factor, self->field->high * factor, FALSE);
  em_rate_entry_show (self);
}

/* A step back or forth settles what could not be read, wherever the keyboard is. */
static void
drop_settled (EmRateEntry *self)
{
  g_autofree char *where = em_rate_entry_dup_where (self);

  if (em_draft_has_problem (self->draft, where))
    return;
  if (EM_IS_AMOUNT_ENTRY (self->child))
    em_amount_entry_forget_unread (EM_AMOUNT_ENTRY (self->child));
  else if (EM_IS_QUANTITY_ENTRY (self->child))
    em_quantity_entry_forget_unread (EM_QUANTITY_ENTRY (self->child));
}

void
em_rate_entry_show (EmRateEntry *self)
{
  void *holder = self->holder (self->owner);
  const EmRates *rates = em_draft_get_rates (self->draft);
  double value;

  if (holder == NULL)
    return;
  value = em_rate_get (self->field, holder);
  self->is_showing = TRUE;
  if (holder != self->shown && self->shown != NULL)
    {
      forget (self);
      /* A text that was not read would stay where both have the same figure. */
      if (EM_IS_QUANTITY_ENTRY (self->child))
        em_quantity_entry_set_value (EM_QUANTITY_ENTRY (self->child), EM_ABSENT, EM_UNITS_METRIC);
    }
  self->shown = holder;
  drop_settled (self);
  if (EM_IS_AMOUNT_ENTRY (self->child))
    em_amount_entry_set_value (EM_AMOUNT_ENTRY (self->child), (gint64) value, &rates->currency, self->field->unit);
  else if (EM_IS_QUANTITY_ENTRY (self->child))
    em_quantity_entry_set_value (EM_QUANTITY_ENTRY (self->child), self->field->type == EM_RATE_PPM ? value / PPM_PER_PERCENT : value * self->scale,
                                 is_length (self->field) ? rates->units : EM_UNITS_METRIC);
  else
    gtk_check_button_set_active (GTK_CHECK_BUTTON (self->child), value != 0);
  self->is_showing = FALSE;
}

const EmRateField *
em_rate_entry_get_field (EmRateEntry *self)
{
  return self->field;
}

GtkWidget *
em_rate_entry_get_text_widget (EmRateEntry *self)
{
  if (EM_IS_AMOUNT_ENTRY (self->child))
    return em_amount_entry_get_text_widget (EM_AMOUNT_ENTRY (self->child));
  if (EM_IS_QUANTITY_ENTRY (self->child))
    return em_quantity_entry_get_text_widget (EM_QUANTITY_ENTRY (self->child));
  return NULL;
}
