/* em-paper-view: the pages as they will be printed, in the window.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-paper-view.h"

#include "em-words.h"

#include <glib/gi18n.h>

struct _EmPaperView
{
  GtkWidget parent_instance;

  GtkWidget  *outer, *sheet_choice, *desk, *problem;
  EmPages    *pages;       /* NULL: none could be laid out */
  double      width_pt, height_pt;
  EmDocument *document;    /* owned */
  EmOutlook  *outlook;     /* owned */
};

G_DEFINE_FINAL_TYPE (EmPaperView, em_paper_view, GTK_TYPE_WIDGET)

void
em_paper_source_fill (EmPaperSource *out_source, EmDocument *document, EmOutlook *outlook)
{
  *out_source = (EmPaperSource) {
    .quote = em_document_get_quote (document), .cost = em_document_get_cost (document),
    .rates = em_document_get_rates (document), .catalogue = em_document_get_catalogue (document),
    .compare = NULL, .range = outlook != NULL ? em_outlook_get_range (outlook) : NULL,
    .logo_path = em_document_get_rates (document)->text[EM_SHOP_LOGO],
  };
}

static void
draw_page (GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer data)
{
  EmPaperView *self = data;
  int page = GPOINTER_TO_INT (g_object_get_data (G_OBJECT (area), "page"));

  (void) height;
  if (self->pages == NULL || page >= em_pages_count (self->pages))
    return;
  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_paint (cr);
  cairo_scale (cr, width / self->width_pt, width / self->width_pt);
  em_pages_draw (self->pages, page, cr);
}

static void
add_page (EmPaperView *self, int page)
{
  GtkWidget *area = gtk_drawing_area_new ();
  g_autofree char *name = g_strdup_printf (_("Page %d"), page + 1);

  gtk_drawing_area_set_content_width (GTK_DRAWING_AREA (area), (int) (self->width_pt * 1.25));
  gtk_drawing_area_set_content_height (GTK_DRAWING_AREA (area), (int) (self->height_pt * 1.25));
  g_object_set_data (G_OBJECT (area), "page", GINT_TO_POINTER (page));
  gtk_drawing_area_set_draw_func (GTK_DRAWING_AREA (area), draw_page, self, NULL);
  gtk_widget_add_css_class (area, "paper-page");
  gtk_widget_set_halign (area, GTK_ALIGN_CENTER);
  gtk_accessible_update_property (GTK_ACCESSIBLE (area), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  gtk_box_append (GTK_BOX (self->desk), area);
}

static void
lay_out (EmPaperView *self)
{
  EmPaperSource source;
  g_autoptr (GError) error = NULL;
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (self->desk)) != NULL)
    gtk_box_remove (GTK_BOX (self->desk), child);
  g_clear_pointer (&self->pages, em_pages_free);
  if (self->document == NULL)
    return;
  em_paper_source_fill (&source, self->document, self->outlook);
  em_paper_size (source.quote, source.rates, &self->width_pt, &self->height_pt);
  self->pages = em_pages_new (em_paper_view_get_sheet (self), &source, self->width_pt, self->height_pt, &error);
  gtk_label_set_text (GTK_LABEL (self->problem), error != NULL ? error->message : "");
  gtk_widget_set_visible (self->problem, error != NULL);
  for (int i = 0; self->pages != NULL && i < em_pages_count (self->pages); i++)
    add_page (self, i);
}

static void
em_paper_view_dispose (GObject *object)
{
  EmPaperView *self = EM_PAPER_VIEW (object);

  g_clear_pointer (&self->pages, em_pages_free);
  g_clear_object (&self->document);
  g_clear_object (&self->outlook);
  g_clear_pointer (&self->outer, gtk_widget_unparent);
  G_OBJECT_CLASS (em_paper_view_parent_class)->dispose (object);
}

static void
em_paper_view_class_init (EmPaperViewClass *class)
{
  G_OBJECT_CLASS (class)->dispose = em_paper_view_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (class), GTK_TYPE_BIN_LAYOUT);
}

static GtkWidget *
tool_button (const char *label, const char *action)
{
  GtkWidget *button = gtk_button_new_with_mnemonic (label);

  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), action);
  return button;
}

static void
em_paper_view_init (EmPaperView *self)
{
  const char *sheets[] = { _("Quote for the customer"), _("Bench sheet"), NULL };
  GtkWidget *bar = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *scrolled = gtk_scrolled_window_new ();
  GtkWidget *spacer = gtk_label_new (NULL);

  self->outer = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  self->sheet_choice = gtk_drop_down_new_from_strings (sheets);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->sheet_choice), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Sheet"), -1);
  g_signal_connect_swapped (self->sheet_choice, "notify::selected", G_CALLBACK (lay_out), self);
  gtk_widget_set_hexpand (spacer, TRUE);
  gtk_box_append (GTK_BOX (bar), tool_button (_("_Back to the work"), "win.paper"));
  gtk_box_append (GTK_BOX (bar), self->sheet_choice);
  gtk_box_append (GTK_BOX (bar), spacer);
  gtk_box_append (GTK_BOX (bar), tool_button (_("Pr_int…"), "win.print"));
  gtk_box_append (GTK_BOX (bar), tool_button (_("Save as P_DF…"), "win.export-pdf"));
  gtk_widget_add_css_class (bar, "pane-head");
  self->problem = gtk_label_new (NULL);
  gtk_label_set_wrap (GTK_LABEL (self->problem), TRUE);
  gtk_widget_add_css_class (self->problem, "problem");
  self->desk = gtk_box_new (GTK_ORIENTATION_VERTICAL, 18);
  gtk_widget_set_margin_top (self->desk, 18);
  gtk_widget_set_margin_bottom (self->desk, 18);
  gtk_widget_set_margin_start (self->desk, 18);
  gtk_widget_set_margin_end (self->desk, 18);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), self->desk);
  gtk_widget_set_vexpand (scrolled, TRUE);
  gtk_widget_add_css_class (scrolled, "paper-desk");
  gtk_box_append (GTK_BOX (self->outer), bar);
  gtk_box_append (GTK_BOX (self->outer), self->problem);
  gtk_box_append (GTK_BOX (self->outer), scrolled);
  gtk_widget_set_parent (self->outer, GTK_WIDGET (self));
}

void
em_paper_view_show (EmPaperView *self, EmDocument *document, EmOutlook *outlook)
{
  g_set_object (&self->document, document);
  g_set_object (&self->outlook, outlook);
  lay_out (self);
}

EmSheet
em_paper_view_get_sheet (EmPaperView *self)
{
  return gtk_drop_down_get_selected (GTK_DROP_DOWN (self->sheet_choice)) == 1 ? EM_SHEET_BENCH : EM_SHEET_QUOTE;
}

int
em_paper_view_count (EmPaperView *self)
{
  return self->pages != NULL ? em_pages_count (self->pages) : 0;
}
