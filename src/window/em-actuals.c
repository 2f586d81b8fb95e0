/* em-actuals: what the selected feature took after the job was done.
 *
 * Minutes on the screen, seconds in the quote.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-actuals.h"

#include "em-field.h"
#include "em-quantity-entry.h"
#include "em-words.h"

#include <glib/gi18n.h>

enum { ARC_ON, BENCH, WIRE, N_ACTUAL };

struct _EmActuals
{
  GtkWidget parent_instance;

  GtkWidget  *flow;
  GtkWidget  *entry[N_ACTUAL];
  EmDocument *document;   /* owned */
};

G_DEFINE_FINAL_TYPE (EmActuals, em_actuals, GTK_TYPE_WIDGET)

/* As shown: minutes, millimetres. */
static double
shown_value (const EmActual *actual, int which)
{
  return which == WIRE ? actual->wire_mm : (which == ARC_ON ? actual->arc_on_s : actual->bench_s) / 60;
}

static void
on_read (EmActuals *self, const EmReading *reading, GtkWidget *entry)
{
  int32_t index = self->document != NULL ? em_document_get_selected_index (self->document) : -1;
  double value = reading != NULL ? reading->value : EM_ABSENT;

  if (index < 0)
    return;
  EmActual actual = em_document_get_quote (self->document)->feature[index].actual;
  if (entry == self->entry[WIRE])
    actual.wire_mm = value;
  else if (entry == self->entry[ARC_ON])
    actual.arc_on_s = value * 60;
  else
    actual.bench_s = value * 60;
  em_document_set_actual (self->document, index, &actual);
}

static void
on_done (EmActuals *self)
{
  if (self->document != NULL)
    em_document_break (self->document);
}

static void
em_actuals_dispose (GObject *object)
{
  EmActuals *self = EM_ACTUALS (object);

  g_clear_object (&self->document);
  g_clear_pointer (&self->flow, gtk_widget_unparent);
  G_OBJECT_CLASS (em_actuals_parent_class)->dispose (object);
}

static void
em_actuals_class_init (EmActualsClass *class)
{
  G_OBJECT_CLASS (class)->dispose = em_actuals_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (class), GTK_TYPE_BIN_LAYOUT);
}

static void
em_actuals_init (EmActuals *self)
{
  static const char *const labels[N_ACTUAL] = { N_("Beam or arc on"), N_("At the bench in all"), N_("Wire used") };

  self->flow = em_fields_new ();
  gtk_widget_set_parent (self->flow, GTK_WIDGET (self));
  for (int i = 0; i < N_ACTUAL; i++)
    {
      self->entry[i] = em_quantity_entry_new (_(labels[i]), i == WIRE ? EM_QUANTITY_LENGTH : EM_QUANTITY_ANGLE);
      if (i != WIRE)
        em_quantity_entry_set_unit (EM_QUANTITY_ENTRY (self->entry[i]), "min");
      em_quantity_entry_set_limits (EM_QUANTITY_ENTRY (self->entry[i]), 0, 1e9, FALSE);
      g_signal_connect_swapped (self->entry[i], "read", G_CALLBACK (on_read), self);
      g_signal_connect_swapped (self->entry[i], "done", G_CALLBACK (on_done), self);
      em_fields_add (self->flow, self->entry[i]);
    }
}

GtkWidget *
em_actuals_new (void)
{
  return g_object_new (EM_TYPE_ACTUALS, NULL);
}

void
em_actuals_forget_unread (EmActuals *self)
{
  for (int i = 0; i < N_ACTUAL; i++)
    em_quantity_entry_forget_unread (EM_QUANTITY_ENTRY (self->entry[i]));
}

void
em_actuals_show (EmActuals *self, EmDocument *document)
{
  int32_t index = em_document_get_selected_index (document);
  const EmFeature *feature = &em_document_get_quote (document)->feature[index];
  const EmFeatureCost *cost = em_document_get_feature_cost (document, index);
  EmUnits units = em_document_get_units (document);
  const EmActual reckoned = { cost->arc_on_s, cost->task_s[EM_TASK_ARC_ON] + cost->task_s[EM_TASK_HANDLING], cost->wire_length_mm };

  g_set_object (&self->document, document);
  for (int i = 0; i < N_ACTUAL; i++)
    {
      double value = shown_value (&reckoned, i);
      g_autofree char *figure = i == WIRE ? em_words_length (value, units, 0) : em_words_duration (value * 60);
      g_autofree char *remark = cost->status == EM_OK ? g_strdup_printf (_("reckoned %s"), figure) : NULL;
      em_quantity_entry_set_value (EM_QUANTITY_ENTRY (self->entry[i]), shown_value (&feature->actual, i), units);
      em_quantity_entry_set_remark (EM_QUANTITY_ENTRY (self->entry[i]), remark);
    }
}
