/* em-working: how a figure came about.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-working.h"

#include "em-field.h"
#include "em-words.h"

#include <glib/gi18n.h>

static char *
term_text (EmDocument *document, const EmTraceTerm *term)
{
  return em_words_term (term, em_document_get_units (document), &em_document_get_rates (document)->currency);
}

static gboolean
is_wanted (const EmTraceStep *step, int32_t row, const char *quantity)
{
  return step->row == row && (quantity == NULL || g_strcmp0 (step->quantity, quantity) == 0);
}

static char *
inputs_text (EmDocument *document, const EmTraceStep *step)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (int i = 0; i < step->n_inputs; i++)
    {
      g_autofree char *value = term_text (document, &step->input[i]);
      g_string_append_printf (text, "%s%s = %s", i > 0 ? ",  " : "", em_words (step->input[i].symbol), value);
    }
  return g_string_free (g_steal_pointer (&text), FALSE);
}

/* The i-th step to tell: of the quote from the price back to what it is made of, of a feature from the metal on. */
static const EmTraceStep *
step_at (const EmTrace *trace, int32_t row, int i)
{
  return &trace->step[row == EM_ROW_QUOTE ? trace->n_steps - 1 - i : i];
}

char *
em_working_text (EmDocument *document, int32_t row, const char *quantity)
{
  EmTrace trace;
  g_autoptr (GString) text = g_string_new (NULL);

  em_document_trace (document, row, &trace);
  for (int i = 0; i < trace.n_steps; i++)
    {
      const EmTraceStep *step = step_at (&trace, row, i);
      if (!is_wanted (step, row, quantity))
        continue;
      g_autofree char *inputs = inputs_text (document, step);
      g_autofree char *result = term_text (document, &step->result);
      g_string_append_printf (text, "%s: %s = %s\n%s\n%s\n%s\n", em_words_trace_name (step->quantity), step->result.symbol, result,
                              em_words (step->formula), inputs, em_words (step->source));
    }
  em_trace_clear (&trace);
  return g_string_free (g_steal_pointer (&text), FALSE);
}

static GtkWidget *
text_line (const char *text, const char *css_class)
{
  g_autofree char *kept = em_field_keep_figures (text);
  GtkWidget *label = gtk_label_new (kept);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 52);
  gtk_label_set_selectable (GTK_LABEL (label), TRUE);
  /* A label that can be selected but not focused lets Tab go no further. */
  gtk_widget_set_can_focus (label, FALSE);
  if (css_class != NULL)
    gtk_widget_add_css_class (label, css_class);
  return label;
}

/* The figure's name and value on one line, what it comes from beneath. */
static GtkWidget *
step_new (EmDocument *document, const EmTraceStep *step)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 1), *head = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  g_autofree char *inputs = inputs_text (document, step);
  g_autofree char *result = term_text (document, &step->result);
  GtkWidget *name = text_line (em_words_trace_name (step->quantity), "strong"), *value = text_line (result, "strong");

  /* The name gives way; a figure is never in two. */
  gtk_label_set_wrap (GTK_LABEL (value), FALSE);
  gtk_widget_set_valign (value, GTK_ALIGN_START);
  gtk_widget_set_hexpand (name, TRUE);
  gtk_label_set_xalign (GTK_LABEL (value), 1);
  gtk_widget_add_css_class (value, "money");
  gtk_box_append (GTK_BOX (head), name);
  gtk_box_append (GTK_BOX (head), value);
  gtk_box_append (GTK_BOX (box), head);
  if (step->formula != NULL)
    gtk_box_append (GTK_BOX (box), text_line (em_words (step->formula), NULL));
  if (step->n_inputs > 0)
    gtk_box_append (GTK_BOX (box), text_line (inputs, "quiet"));
  if (step->source != NULL)
    gtk_box_append (GTK_BOX (box), text_line (em_words (step->source), "remark"));
  return box;
}

/* Opened and closed within half a second, GTK 4.8 keeps a popover for ever: then at least without what it showed. */
static void
let_go (GtkWidget *popover)
{
  gtk_popover_set_child (GTK_POPOVER (popover), NULL);
  /* It may have gone with what it pointed at. */
  if (gtk_widget_get_parent (popover) != NULL)
    gtk_widget_unparent (popover);
}

/* The popover may not go while it still handles its own closing. */
static gboolean
drop_popover (gpointer data)
{
  g_autoptr (GtkWidget) popover = data;

  let_go (popover);
  return G_SOURCE_REMOVE;
}

static void
on_popover_closed (GtkPopover *popover)
{
  g_idle_add (drop_popover, g_object_ref (popover));
}

static void
on_document_changed (GtkPopover *popover, guint what)
{
  if (what != EM_CHANGE_FILE && what != EM_CHANGE_SELECTION)
    gtk_popover_popdown (popover);
}

/* It does not stay where what it points at is no longer: scrolled off the screen, GTK finds no place for it. */
static void
close_when_scrolled (GtkWidget *popover, GtkWidget *at)
{
  for (GtkWidget *around = gtk_widget_get_ancestor (at, GTK_TYPE_SCROLLED_WINDOW); around != NULL;
       around = gtk_widget_get_ancestor (gtk_widget_get_parent (around), GTK_TYPE_SCROLLED_WINDOW))
    g_signal_connect_object (gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (around)), "value-changed",
                             G_CALLBACK (gtk_popover_popdown), popover, G_CONNECT_SWAPPED);
}

void
em_working_popup (GtkWidget *at, EmDocument *document, int32_t row, const char *quantity, const char *title)
{
  GtkWidget *popover = g_object_new (GTK_TYPE_POPOVER, "accessible-role", GTK_ACCESSIBLE_ROLE_DIALOG, NULL);
  GtkWidget *scrolled = gtk_scrolled_window_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 10);
  EmTrace trace;
  int n = 0;

  gtk_box_append (GTK_BOX (box), text_line (title, "section-name"));
  em_document_trace (document, row, &trace);
  for (int i = 0; i < trace.n_steps; i++)
    if (is_wanted (step_at (&trace, row, i), row, quantity))
      {
        gtk_box_append (GTK_BOX (box), step_new (document, step_at (&trace, row, i)));
        n++;
      }
  em_trace_clear (&trace);
  if (n == 0)
    gtk_box_append (GTK_BOX (box), text_line (_("Nothing could be reckoned here yet."), "quiet"));
  gtk_widget_add_css_class (box, "working");
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scrolled), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_propagate_natural_height (GTK_SCROLLED_WINDOW (scrolled), TRUE);
  gtk_scrolled_window_set_propagate_natural_width (GTK_SCROLLED_WINDOW (scrolled), TRUE);
  gtk_scrolled_window_set_max_content_height (GTK_SCROLLED_WINDOW (scrolled), 420);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), box);
  gtk_popover_set_child (GTK_POPOVER (popover), scrolled);
  gtk_popover_set_position (GTK_POPOVER (popover), GTK_POS_LEFT);
  gtk_accessible_update_property (GTK_ACCESSIBLE (popover), GTK_ACCESSIBLE_PROPERTY_LABEL, title, -1);
  gtk_widget_set_parent (popover, at);
  g_signal_connect (popover, "closed", G_CALLBACK (on_popover_closed), NULL);
  /* What it points at goes first when the window is closed under it. */
  g_signal_connect_object (at, "destroy", G_CALLBACK (let_go), popover, G_CONNECT_SWAPPED);
  /* What came about otherwise a moment ago is not left beside a new price. */
  g_signal_connect_object (document, "changed", G_CALLBACK (on_document_changed), popover, G_CONNECT_SWAPPED);
  close_when_scrolled (popover, at);
  gtk_popover_popup (GTK_POPOVER (popover));
}
