/* em-print: the pages to a printer.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-print.h"

/* Of layout before the dialog that tells how far it is, and stops it, has its turn. */
enum { SLICE_US = 20000 };

struct _EmPrint
{
  GtkPrintOperation parent_instance;

  EmSheet     sheet;
  EmPages    *pages;
  EmPaperHeld *held;      /* of the pages: the quote may be edited while they go to the printer */
  EmDocument *document;   /* owned */
  char       *problem;    /* why there are no pages, or NULL */
};

G_DEFINE_FINAL_TYPE (EmPrint, em_print, GTK_TYPE_PRINT_OPERATION)

static void
forget_pages (EmPrint *self)
{
  g_clear_pointer (&self->pages, em_pages_free);
  g_clear_pointer (&self->held, em_paper_held_free);
}

static void
em_print_begin_print (GtkPrintOperation *operation, GtkPrintContext *context)
{
  EmPrint *self = EM_PRINT (operation);
  g_autoptr (GError) error = NULL;

  g_clear_pointer (&self->pages, em_pages_free);
  if (self->held == NULL)
    self->held = em_paper_held_new (self->document, &error);
  if (self->held != NULL)
    self->pages = em_pages_begin (self->sheet, em_paper_held_get_source (self->held), gtk_print_context_get_width (context),
                                gtk_print_context_get_height (context), &error);
  if (self->pages == NULL)
    {
      self->problem = g_strdup (error->message);
      gtk_print_operation_cancel (operation);
    }
}

/* Called until it says that all pages are there. */
static gboolean
em_print_paginate (GtkPrintOperation *operation, GtkPrintContext *context)
{
  EmPrint *self = EM_PRINT (operation);
  gint64 from = g_get_monotonic_time ();

  (void) context;
  if (self->pages == NULL)
    return TRUE;
  while (em_pages_lay_out (self->pages))
    if (g_get_monotonic_time () - from > SLICE_US)
      return FALSE;
  gtk_print_operation_set_n_pages (operation, em_pages_count (self->pages));
  return TRUE;
}

static void
em_print_draw_page (GtkPrintOperation *operation, GtkPrintContext *context, int page)
{
  em_pages_draw (EM_PRINT (operation)->pages, page, gtk_print_context_get_cairo_context (context));
}

static void
em_print_finalize (GObject *object)
{
  EmPrint *self = EM_PRINT (object);

  forget_pages (self);
  g_clear_object (&self->document);
  g_free (self->problem);
  G_OBJECT_CLASS (em_print_parent_class)->finalize (object);
}

static void
em_print_class_init (EmPrintClass *class)
{
  G_OBJECT_CLASS (class)->finalize = em_print_finalize;
  GTK_PRINT_OPERATION_CLASS (class)->begin_print = em_print_begin_print;
  GTK_PRINT_OPERATION_CLASS (class)->paginate = em_print_paginate;
  GTK_PRINT_OPERATION_CLASS (class)->draw_page = em_print_draw_page;
}

static void
em_print_init (EmPrint *self)
{
  (void) self;
}

EmPrint *
em_print_new (EmDocument *document, EmSheet sheet)
{
  EmPrint *self = g_object_new (EM_TYPE_PRINT, "unit", GTK_UNIT_POINTS, "use-full-page", TRUE, "embed-page-setup", TRUE, NULL);
  g_autoptr (GtkPageSetup) setup = gtk_page_setup_new ();
  g_autofree char *title = em_document_dup_title (document);
  double width, height;

  self->document = g_object_ref (document);
  self->sheet = sheet;
  em_paper_size (em_document_get_quote (document), em_document_get_rates (document), &width, &height);
  g_autoptr (GtkPaperSize) size = gtk_paper_size_new (width < 600 ? GTK_PAPER_NAME_A4 : GTK_PAPER_NAME_LETTER);
  gtk_page_setup_set_paper_size (setup, size);
  gtk_print_operation_set_default_page_setup (GTK_PRINT_OPERATION (self), setup);
  gtk_print_operation_set_job_name (GTK_PRINT_OPERATION (self), title);
  return self;
}

void
em_print_hold_take (EmPrint *self, EmPaperHeld *held)
{
  forget_pages (self);
  self->held = held;
}

const char *
em_print_get_problem (EmPrint *self)
{
  return self->problem;
}
