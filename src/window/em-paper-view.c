/* em-paper-view: the pages as they will be printed, in the window.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-paper-view.h"

#include "em-book-file.h"
#include "em-document-edit.h"
#include "em-words.h"

#include <glib/gi18n.h>

struct _EmPaperView
{
  GtkWidget parent_instance;

  GtkWidget  *outer, *sheet_choice, *desk, *problem, *offers_button, *offers;
  EmPages    *pages;       /* NULL: none could be laid out */
  double      width_pt, height_pt;
  EmDocument *document;    /* owned */
  EmPaperJob  job;         /* of the pages; all nought while there are none */
};

G_DEFINE_FINAL_TYPE (EmPaperView, em_paper_view, GTK_TYPE_WIDGET)

void
em_paper_job_of (EmPaperJob *out_job, EmDocument *document)
{
  g_autofree char *book = em_book_own_rates_path ();
  g_autofree char *folder = g_path_get_dirname (book);

  /* A fault is told where the features are; the sheets leave out what could not be worked out. */
  em_paper_job_init (out_job, em_document_get_quote (document), em_document_get_cost (document), em_document_get_rates (document),
                     em_document_get_catalogue (document), folder, FALSE, NULL);
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
forget_pages (EmPaperView *self)
{
  g_clear_pointer (&self->pages, em_pages_free);
  em_paper_job_clear (&self->job);
  self->job = (EmPaperJob) { 0 };
}

static void
lay_out (EmPaperView *self)
{
  g_autoptr (GError) error = NULL;
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (self->desk)) != NULL)
    gtk_box_remove (GTK_BOX (self->desk), child);
  forget_pages (self);
  gtk_widget_set_visible (self->offers_button, em_paper_view_get_sheet (self) == EM_SHEET_QUOTE);
  if (self->document == NULL)
    return;
  em_paper_job_of (&self->job, self->document);
  em_paper_size (self->job.source.quote, self->job.source.rates, &self->width_pt, &self->height_pt);
  self->pages = em_pages_new (em_paper_view_get_sheet (self), &self->job.source, self->width_pt, self->height_pt, &error);
  gtk_label_set_text (GTK_LABEL (self->problem), error != NULL ? error->message : "");
  gtk_widget_set_visible (self->problem, error != NULL);
  for (int i = 0; self->pages != NULL && i < em_pages_count (self->pages); i++)
    add_page (self, i);
}

static void
on_offered (GtkCheckButton *check, EmPaperView *self)
{
  g_autofree char *offers = em_paper_with_offer (em_document_get_quote (self->document), g_object_get_data (G_OBJECT (check), "filler"),
                                                 gtk_check_button_get_active (check));

  em_document_set_text (self->document, EM_QUOTE_OFFERS, offers);
  lay_out (self);
}

/* A wire that suits the work, and what it would change of the price. */
static void
add_offer (EmPaperView *self, const EmCompareRow *row)
{
  const EmFiller *filler = &em_document_get_catalogue (self->document)->filler[row->filler];
  g_autofree char *difference = em_words_money (row->difference_minor, &em_document_get_rates (self->document)->currency);
  g_autofree char *text = g_strdup_printf ("%s (%s%s)", filler->designation, row->difference_minor > 0 ? "+" : "", difference);
  GtkWidget *check = gtk_check_button_new_with_label (text);

  gtk_check_button_set_active (GTK_CHECK_BUTTON (check), em_paper_offers (em_document_get_quote (self->document), filler->id));
  g_object_set_data_full (G_OBJECT (check), "filler", g_strdup (filler->id), g_free);
  g_signal_connect (check, "toggled", G_CALLBACK (on_offered), self);
  gtk_box_append (GTK_BOX (self->offers), check);
}

/* Filled when it is opened: until then nobody needs the comparison. */
static void
on_offers_opened (GtkWidget *popover, EmPaperView *self)
{
  GtkWidget *child, *hint;
  EmCompare compare;
  int n = 0;

  (void) popover;
  if (self->document == NULL)
    return;
  while ((child = gtk_widget_get_first_child (self->offers)) != NULL)
    gtk_box_remove (GTK_BOX (self->offers), child);
  hint = gtk_label_new (NULL);
  gtk_box_append (GTK_BOX (self->offers), hint);
  em_compare_init (&compare);
  if (em_compare_quote (&compare, em_document_get_quote (self->document), -1, em_document_get_rates (self->document),
                        em_document_get_catalogue (self->document), NULL) == EM_OK)
    for (int32_t i = 0; i < compare.n_rows; i++)
      if (!compare.row[i].is_ruled_out && !compare.row[i].is_present)
        {
          add_offer (self, &compare.row[i]);
          n++;
        }
  em_compare_clear (&compare);
  gtk_label_set_text (GTK_LABEL (hint), n > 0 ? _("Wires the quote offers beside the chosen one, with their prices:") : _("No other wire suits this work."));
  gtk_label_set_xalign (GTK_LABEL (hint), 0);
  gtk_widget_add_css_class (hint, "dim-label");
}

static GtkWidget *
make_offers_button (EmPaperView *self)
{
  GtkWidget *button = gtk_menu_button_new (), *popover = g_object_new (GTK_TYPE_POPOVER, "accessible-role", GTK_ACCESSIBLE_ROLE_DIALOG, NULL), *scrolled = gtk_scrolled_window_new ();

  self->offers = gtk_box_new (GTK_ORIENTATION_VERTICAL, 4);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), self->offers);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scrolled), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_propagate_natural_height (GTK_SCROLLED_WINDOW (scrolled), TRUE);
  gtk_scrolled_window_set_max_content_height (GTK_SCROLLED_WINDOW (scrolled), 360);
  gtk_popover_set_child (GTK_POPOVER (popover), scrolled);
  g_signal_connect (popover, "show", G_CALLBACK (on_offers_opened), self);
  gtk_menu_button_set_popover (GTK_MENU_BUTTON (button), popover);
  gtk_menu_button_set_label (GTK_MENU_BUTTON (button), _("Wires to offer"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Wires to offer"), -1);
  return button;
}

static GtkWidget *
make_data_button (void)
{
  GtkWidget *button = gtk_menu_button_new ();
  g_autoptr (GMenu) menu = g_menu_new ();

  g_menu_append (menu, _("Price _lines (CSV)…"), "win.export-lines");
  g_menu_append (menu, _("_Wires compared (CSV)…"), "win.export-wires");
  gtk_menu_button_set_menu_model (GTK_MENU_BUTTON (button), G_MENU_MODEL (menu));
  gtk_menu_button_set_label (GTK_MENU_BUTTON (button), _("Save as data"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Save as data"), -1);
  return button;
}

static void
em_paper_view_dispose (GObject *object)
{
  EmPaperView *self = EM_PAPER_VIEW (object);

  forget_pages (self);
  g_clear_object (&self->document);
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
  self->offers_button = make_offers_button (self);
  gtk_box_append (GTK_BOX (bar), self->offers_button);
  gtk_box_append (GTK_BOX (bar), spacer);
  gtk_box_append (GTK_BOX (bar), tool_button (_("Pr_int…"), "win.print"));
  gtk_box_append (GTK_BOX (bar), tool_button (_("Save as P_DF…"), "win.export-pdf"));
  gtk_box_append (GTK_BOX (bar), make_data_button ());
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
em_paper_view_show (EmPaperView *self, EmDocument *document)
{
  g_set_object (&self->document, document);
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
