/* em-paper-view: the pages as they will be printed, in the window.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-paper-view.h"

#include "em-book-file.h"
#include "em-document-edit.h"
#include "em-paper-held.h"
#include "em-wire-table.h"
#include "em-words.h"

#include <glib/gi18n.h>

struct _EmPaperView
{
  GtkWidget parent_instance;

  GtkWidget     *outer, *sheet_choice, *desk, *problem, *progress, *offers_button, *offers;
  GtkAdjustment *down;        /* borrowed from what scrolls the desk */
  EmPages       *pages;       /* NULL: none could be laid out, or not yet */
  EmPaperHeld   *held;        /* what they show; NULL while there are none */
  GCancellable  *working;     /* while it is worked out in a thread; owned, or NULL */
  guint          laying_out;  /* source id, while pages are */
  double         width_pt, height_pt;
  EmDocument    *document;    /* owned */
};

/* A quote of so many features is worked out at once; pages are laid out in slices, the first of which is enough for most quotes. */
enum { SHORT_FEATURES = 200, FIRST_SLICE_US = 100000, SLICE_US = 10000 };

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

/* With as much again above and below, so that scrolling does not wait. */
static gboolean
is_about_in_sight (GtkWidget *area, EmPaperView *self)
{
  double from = gtk_adjustment_get_value (self->down), page = gtk_adjustment_get_page_size (self->down);
  graphene_rect_t bounds;

  return page <= 0 || !gtk_widget_compute_bounds (area, self->desk, &bounds)
         || ((double) (bounds.origin.y + bounds.size.height) > from - page && (double) bounds.origin.y < from + 2 * page);
}

/* Of a hundred pages only those about to be seen are drawn. */
static void
draw_page (GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer data)
{
  EmPaperView *self = data;
  int page = GPOINTER_TO_INT (g_object_get_data (G_OBJECT (area), "page"));
  gboolean is_drawn = is_about_in_sight (GTK_WIDGET (area), self);

  (void) height;
  if (self->pages == NULL || page >= em_pages_count (self->pages))
    return;
  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_paint (cr);
  g_object_set_data (G_OBJECT (area), "is-drawn", GINT_TO_POINTER (is_drawn));
  if (!is_drawn)
    return;
  cairo_scale (cr, width / self->width_pt, width / self->width_pt);
  em_pages_draw (self->pages, page, cr);
}

static void
on_scrolled (EmPaperView *self)
{
  for (GtkWidget *area = gtk_widget_get_first_child (self->desk); area != NULL; area = gtk_widget_get_next_sibling (area))
    if (GPOINTER_TO_INT (g_object_get_data (G_OBJECT (area), "is-drawn")) != is_about_in_sight (area, self))
      gtk_widget_queue_draw (area);
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

/* What goes on is stopped. */
static void
forget_pages (EmPaperView *self)
{
  if (self->working != NULL)
    g_cancellable_cancel (self->working);
  g_clear_object (&self->working);
  g_clear_handle_id (&self->laying_out, g_source_remove);
  g_clear_pointer (&self->pages, em_pages_free);
  g_clear_pointer (&self->held, em_paper_held_free);
}

static void
show_progress (EmPaperView *self, double share)
{
  g_autofree char *text = g_strdup_printf (_("Laying out the pages: %d %%…"), (int) (share * 100));

  gtk_label_set_text (GTK_LABEL (self->progress), text);
  gtk_widget_set_visible (self->progress, TRUE);
}

static void
show_problem (EmPaperView *self, const GError *error)
{
  gtk_label_set_text (GTK_LABEL (self->problem), error != NULL ? error->message : "");
  gtk_widget_set_visible (self->problem, error != NULL);
  gtk_widget_set_visible (self->progress, FALSE);
}

/* TRUE: it is done. */
static gboolean
lay_out_for (EmPaperView *self, gint64 slice_us)
{
  gint64 from = g_get_monotonic_time ();

  while (em_pages_lay_out (self->pages))
    if (g_get_monotonic_time () - from > slice_us)
      {
        show_progress (self, em_pages_get_share (self->pages));
        return FALSE;
      }
  gtk_widget_set_visible (self->progress, FALSE);
  for (int i = 0; i < em_pages_count (self->pages); i++)
    add_page (self, i);
  return TRUE;
}

static gboolean
lay_out_some (gpointer data)
{
  EmPaperView *self = data;

  if (!lay_out_for (self, SLICE_US))
    return G_SOURCE_CONTINUE;
  self->laying_out = 0;
  return G_SOURCE_REMOVE;
}

static void
begin_pages_take (EmPaperView *self, EmPaperHeld *held, const GError *error)
{
  g_autoptr (GError) problem = NULL;

  self->held = held;
  if (held != NULL)
    {
      const EmPaperSource *source = em_paper_held_get_source (held);
      em_paper_size (source->quote, source->rates, &self->width_pt, &self->height_pt);
      self->pages = em_pages_begin (em_paper_view_get_sheet (self), source, self->width_pt, self->height_pt, &problem);
    }
  show_problem (self, held != NULL ? problem : error);
  if (self->pages != NULL && !lay_out_for (self, FIRST_SLICE_US))
    self->laying_out = g_idle_add (lay_out_some, self);
}

static void
on_held (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (EmPaperView) self = data;
  g_autoptr (GError) error = NULL;
  EmPaperHeld *held = em_paper_held_new_finish (result, &error);

  (void) source;
  /* Stopped: another may be under way. */
  if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    return;
  g_clear_object (&self->working);
  begin_pages_take (self, held, error);
}

/* A logo may be a picture of many million pixels. */
static gboolean
is_short (EmDocument *document)
{
  return em_document_get_quote (document)->n_features <= SHORT_FEATURES && em_document_get_rates (document)->text[EM_SHOP_LOGO] == NULL;
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
  show_problem (self, NULL);
  if (self->document == NULL)
    return;
  if (is_short (self->document))
    {
      EmPaperHeld *held = em_paper_held_new (self->document, &error);
      begin_pages_take (self, held, error);
      return;
    }
  self->working = g_cancellable_new ();
  show_progress (self, 0);
  em_paper_held_new_async (self->document, self->working, on_held, g_object_ref (self));
}

/* Nobody waits for it any more; shown again it begins again. */
static void
on_left (EmPaperView *self)
{
  if (self->working != NULL || self->laying_out != 0)
    forget_pages (self);
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

static void
add_hint (EmPaperView *self, const char *text)
{
  GtkWidget *hint = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (hint), 0);
  gtk_widget_add_css_class (hint, "dim-label");
  gtk_box_append (GTK_BOX (self->offers), hint);
}

static gboolean
is_offered (const EmCompareRow *row, gboolean is_compromise)
{
  return !row->is_ruled_out && !row->is_present && em_wire_is_compromise (row) == is_compromise;
}

/* Cheapest first; n: how many there are. */
static void
add_offers (EmPaperView *self, const EmCompare *compare, gboolean are_compromises, int n)
{
  g_autofree char *compromises
    = g_strdup_printf (ngettext ("%d wire that would be a compromise", "%d wires that would be a compromise", (gulong) n), n);

  if (n > 0)
    add_hint (self, are_compromises ? compromises : _("Wires the quote offers beside the chosen one, with their prices:"));
  for (int32_t i = 0; i < compare->n_rows; i++)
    if (is_offered (&compare->row[i], are_compromises))
      add_offer (self, &compare->row[i]);
}

/* Filled when it is opened: until then nobody needs the comparison. */
static void
on_offers_opened (GtkWidget *popover, EmPaperView *self)
{
  GtkWidget *child;
  EmCompare compare;
  int n_good = 0, n_compromises = 0;

  (void) popover;
  if (self->document == NULL)
    return;
  while ((child = gtk_widget_get_first_child (self->offers)) != NULL)
    gtk_box_remove (GTK_BOX (self->offers), child);
  em_compare_init (&compare);
  if (em_compare_quote (&compare, em_document_get_quote (self->document), -1, em_document_get_rates (self->document),
                        em_document_get_catalogue (self->document), NULL) == EM_OK)
    for (int32_t i = 0; i < compare.n_rows; i++)
      {
        n_good += is_offered (&compare.row[i], FALSE);
        n_compromises += is_offered (&compare.row[i], TRUE);
      }
  add_offers (self, &compare, FALSE, n_good);
  add_offers (self, &compare, TRUE, n_compromises);
  em_compare_clear (&compare);
  if (n_good + n_compromises == 0)
    add_hint (self, _("No other wire suits this work."));
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
  self->progress = gtk_label_new (NULL);
  gtk_widget_add_css_class (self->progress, "quiet");
  gtk_widget_set_visible (self->progress, FALSE);
  gtk_widget_set_margin_top (self->progress, 18);
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
  gtk_box_append (GTK_BOX (self->outer), self->progress);
  gtk_box_append (GTK_BOX (self->outer), scrolled);
  self->down = gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (scrolled));
  g_signal_connect_object (self->down, "value-changed", G_CALLBACK (on_scrolled), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->down, "changed", G_CALLBACK (on_scrolled), self, G_CONNECT_SWAPPED);
  g_signal_connect (self, "unmap", G_CALLBACK (on_left), NULL);
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

gboolean
em_paper_view_is_busy (EmPaperView *self)
{
  return self->working != NULL || self->laying_out != 0;
}

int
em_paper_view_count (EmPaperView *self)
{
  return self->pages != NULL ? em_pages_count (self->pages) : 0;
}
