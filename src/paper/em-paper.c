/* em-paper: a sheet's pages, and the PDF made of them.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "config.h"

#include "em-pdf.h"
#include "em-sheet.h"
#include "em-words.h"

#include <cairo-pdf.h>
#include <glib/gi18n.h>
#include <glib/gstdio.h>
#include <string.h>
#include <sys/stat.h>

#define MARGIN_SIDE   51.0    /* 18 mm */
#define MARGIN_TOP    48.0
#define MARGIN_BOTTOM 46.0

struct EmPages
{
  EmPaperSource source;
  EmPaperSheet  sheet;
  char         *language;   /* NULL: the program's */
  char         *title;
  const EmSheetPart *part;  /* the next; one without functions: all are there, and NULL once they are spread over pages */
  int32_t       index;      /* within the part */
  int32_t       n_done, n_all;   /* of things that are laid out one by one */
};

/* Things laid out before who waits is asked again. */
enum { AT_ONCE = 8 };

G_DEFINE_QUARK (em-paper-error-quark, em_paper_error)

static const struct { const char *id; double width_pt, height_pt; } papers[] =
{
  /* ISO 216 A4 is 210 mm × 297 mm; ANSI letter is 8.5 in × 11 in. */
  { "a4", 210 / 25.4 * 72, 297 / 25.4 * 72 },
  { "letter", 612, 792 },
};

void
em_paper_size (const EmQuote *quote, const EmRates *rates, double *out_width_pt, double *out_height_pt)
{
  const char *wanted = quote->text[EM_QUOTE_PAPER] != NULL ? quote->text[EM_QUOTE_PAPER] : rates->text[EM_SHOP_PAPER];
  gsize found = 0;

  for (gsize i = 0; i < G_N_ELEMENTS (papers); i++)
    if (g_strcmp0 (papers[i].id, wanted) == 0)
      found = i;
  *out_width_pt = papers[found].width_pt;
  *out_height_pt = papers[found].height_pt;
}

static char *
make_title (EmSheet sheet, const EmQuote *quote)
{
  const char *name = sheet == EM_SHEET_QUOTE ? _("Quote") : _("Bench sheet");
  const char *number = quote->text[EM_QUOTE_NUMBER], *tool = quote->text[EM_QUOTE_TOOL];

  return g_strdelimit (g_strconcat (name, number != NULL ? " " : "", number != NULL ? number : "", tool != NULL ? " – " : "", tool != NULL ? tool : "",
                                    NULL), "\r\n", ' ');
}

static gboolean
check_source (EmSheet sheet, const EmPaperSource *source, GError **error)
{
  gboolean is_priced = source->cost->n_features == source->quote->n_features;
  gboolean is_empty = sheet == EM_SHEET_QUOTE ? source->quote->n_features == 0 && source->quote->n_extras == 0 : source->cost->n_visits == 0;

  if (!is_priced)
    g_set_error_literal (error, EM_PAPER_ERROR, EM_PAPER_ERROR_EMPTY, _("There is nothing to print yet: the quote as it is now has not been priced."));
  else if (is_empty)
    g_set_error_literal (error, EM_PAPER_ERROR, EM_PAPER_ERROR_EMPTY,
                         sheet == EM_SHEET_QUOTE ? _("There is nothing to print yet: the quote has no feature and no further line.")
                                                 : _("There is nothing to print yet: no feature of the quote can be priced."));
  return is_priced && !is_empty;
}

static int32_t
count_all (const EmPages *pages)
{
  int32_t n = 1;

  for (const EmSheetPart *part = pages->part; part->once != NULL || part->each != NULL; part++)
    n += part->each != NULL ? part->count (&pages->sheet) : 0;
  return n;
}

EmPages *
em_pages_begin (EmSheet sheet, const EmPaperSource *source, double width_pt, double height_pt, GError **error)
{
  EmPages *pages;
  gboolean is_begun;

  g_return_val_if_fail (width_pt > 200 && height_pt > 300, NULL);
  em_words_push (source->quote->text[EM_QUOTE_LANGUAGE]);
  if (!check_source (sheet, source, error))
    {
      em_words_pop ();
      return NULL;
    }
  pages = g_new0 (EmPages, 1);
  pages->source = *source;
  pages->language = g_strdup (source->quote->text[EM_QUOTE_LANGUAGE]);
  pages->title = make_title (sheet, source->quote);
  pages->part = sheet == EM_SHEET_QUOTE ? em_sheet_quote_parts : em_sheet_bench_parts;
  pages->sheet.source = &pages->source;
  pages->sheet.flow = em_flow_new (width_pt, height_pt, MARGIN_SIDE, MARGIN_SIDE, MARGIN_TOP, MARGIN_BOTTOM);
  pages->sheet.width = em_flow_width (pages->sheet.flow);
  pages->n_all = count_all (pages);
  is_begun = em_sheet_add_letterhead (&pages->sheet, sheet == EM_SHEET_QUOTE ? _("Quote") : _("Bench sheet"), error);
  em_words_pop ();
  if (!is_begun)
    g_clear_pointer (&pages, em_pages_free);
  return pages;
}

/* The next part, or the next thing of one that has many. */
static void
add_next (EmPages *pages)
{
  if (pages->part->once != NULL)
    {
      pages->part->once (&pages->sheet);
      pages->part++;
    }
  else if (pages->index < pages->part->count (&pages->sheet))
    {
      pages->part->each (&pages->sheet, pages->index++);
      pages->n_done++;
    }
  else
    {
      pages->index = 0;
      pages->part++;
    }
}

gboolean
em_pages_lay_out (EmPages *pages)
{
  if (pages->part == NULL)
    return FALSE;
  em_words_push (pages->language);
  for (int i = 0; i < AT_ONCE && (pages->part->once != NULL || pages->part->each != NULL); i++)
    add_next (pages);
  if (pages->part->once == NULL && pages->part->each == NULL)
    {
      em_flow_paginate (pages->sheet.flow);
      pages->part = NULL;
    }
  em_words_pop ();
  return pages->part != NULL;
}

double
em_pages_get_share (const EmPages *pages)
{
  return pages->part == NULL ? 1 : (double) pages->n_done / pages->n_all;
}

EmPages *
em_pages_new (EmSheet sheet, const EmPaperSource *source, double width_pt, double height_pt, GError **error)
{
  EmPages *pages = em_pages_begin (sheet, source, width_pt, height_pt, error);

  while (pages != NULL && em_pages_lay_out (pages))
    ;
  return pages;
}

int
em_pages_count (const EmPages *pages)
{
  return em_flow_pages (pages->sheet.flow);
}

const char *
em_pages_title (const EmPages *pages)
{
  return pages->title;
}

void
em_pages_draw (EmPages *pages, int page, cairo_t *cr)
{
  em_words_push (pages->language);
  em_flow_draw (pages->sheet.flow, page, cr);
  em_words_pop ();
}

void
em_pages_free (EmPages *pages)
{
  if (pages == NULL)
    return;
  em_flow_free (pages->sheet.flow);
  g_free (pages->language);
  g_free (pages->title);
  g_free (pages);
}

static cairo_status_t
append_bytes (void *closure, const unsigned char *data, unsigned int length)
{
  g_byte_array_append (closure, data, length);
  return CAIRO_STATUS_SUCCESS;
}

static void
set_metadata (cairo_surface_t *surface, const EmPages *pages, const char *date)
{
  const char *shop = pages->source.rates->text[EM_SHOP_NAME];
  g_autofree char *when = NULL;

  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_TITLE, pages->title);
  if (shop != NULL)
    cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_AUTHOR, shop);
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_CREATOR, "Estimend " EM_VERSION);
  /* cairo takes ISO 8601 with a time; without one it would put the clock's. */
  when = date != NULL && strchr (date, 'T') != NULL ? g_strdup (date) : g_strdup_printf ("%sT00:00:00Z", date != NULL ? date : "1970-01-01");
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_CREATE_DATE, when);
}

static void
add_outline (cairo_surface_t *surface, const EmPages *pages)
{
  GArray *bookmarks = em_flow_bookmarks (pages->sheet.flow);
  int parent = CAIRO_PDF_OUTLINE_ROOT;

  for (guint i = 0; i < bookmarks->len; i++)
    {
      const EmBookmark *bookmark = &g_array_index (bookmarks, EmBookmark, i);
      g_autofree char *link = g_strdup_printf ("page=%d pos=[0 %d]", bookmark->page + 1, (int) bookmark->y);
      int id = cairo_pdf_surface_add_outline (surface, bookmark->level > 1 ? parent : CAIRO_PDF_OUTLINE_ROOT, bookmark->title, link,
                                              bookmark->level > 1 ? 0 : CAIRO_PDF_OUTLINE_FLAG_OPEN);

      if (bookmark->level == 1)
        parent = id;
    }
}

/* cairo 1.16 does not tell of every write that failed, but then writes no more. */
static gboolean
is_whole (const GByteArray *bytes)
{
  static const char end[] = "%%EOF\n";
  const gsize length = sizeof end - 1;

  return bytes->len > length && memcmp (bytes->data + bytes->len - length, end, length) == 0;
}

/* ---- a page at a time ---- */

struct _EmPdf
{
  EmPages         *pages;
  GByteArray      *bytes;
  cairo_surface_t *surface;
  cairo_t         *cr;
  int              n_drawn;
};

EmPdf *
em_pdf_new (EmSheet sheet, const EmPaperSource *source, const char *date, GError **error)
{
  double width, height;
  EmPages *pages;
  EmPdf *pdf;

  em_paper_size (source->quote, source->rates, &width, &height);
  pages = em_pages_begin (sheet, source, width, height, error);
  if (pages == NULL)
    return NULL;
  pdf = g_new0 (EmPdf, 1);
  pdf->pages = pages;
  pdf->bytes = g_byte_array_new ();
  pdf->surface = cairo_pdf_surface_create_for_stream (append_bytes, pdf->bytes, width, height);
  set_metadata (pdf->surface, pages, date);
  pdf->cr = cairo_create (pdf->surface);
  /* The root that makes a PDF a tagged one, for readers that speak. */
  cairo_tag_begin (pdf->cr, "Document", NULL);
  return pdf;
}

int
em_pdf_count (const EmPdf *pdf)
{
  return em_pages_count (pdf->pages);
}

gboolean
em_pdf_lay_out (EmPdf *pdf)
{
  return em_pages_lay_out (pdf->pages);
}

double
em_pdf_get_share (const EmPdf *pdf)
{
  return em_pages_get_share (pdf->pages);
}

gboolean
em_pdf_draw (EmPdf *pdf)
{
  if (pdf->n_drawn >= em_pages_count (pdf->pages))
    return FALSE;
  em_pages_draw (pdf->pages, pdf->n_drawn++, pdf->cr);
  cairo_show_page (pdf->cr);
  return TRUE;
}

GBytes *
em_pdf_finish_take (EmPdf *pdf, GError **error)
{
  cairo_status_t status;
  GBytes *bytes = NULL;

  cairo_tag_end (pdf->cr, "Document");
  add_outline (pdf->surface, pdf->pages);
  status = cairo_status (pdf->cr);
  cairo_surface_finish (pdf->surface);
  if (status == CAIRO_STATUS_SUCCESS)
    status = cairo_surface_status (pdf->surface);
  if (status == CAIRO_STATUS_SUCCESS && !is_whole (pdf->bytes))
    status = CAIRO_STATUS_WRITE_ERROR;
  if (status == CAIRO_STATUS_SUCCESS)
    bytes = g_byte_array_free_to_bytes (g_steal_pointer (&pdf->bytes));
  else
    g_set_error (error, EM_PAPER_ERROR, EM_PAPER_ERROR_WRITE, _("The pages could not be drawn: %s"), cairo_status_to_string (status));
  em_pdf_free (pdf);
  return bytes;
}

void
em_pdf_free (EmPdf *pdf)
{
  if (pdf == NULL)
    return;
  cairo_destroy (pdf->cr);
  /* What is still written goes to nobody, but needs a place. */
  cairo_surface_finish (pdf->surface);
  cairo_surface_destroy (pdf->surface);
  g_clear_pointer (&pdf->bytes, g_byte_array_unref);
  em_pages_free (pdf->pages);
  g_free (pdf);
}

/** The sheet as a PDF document.
 *
 * date: ISO 8601, the document's creation date; the same input and date give the same bytes. */
GBytes *
em_paper_to_pdf (EmSheet sheet, const EmPaperSource *source, const char *date, GError **error)
{
  EmPdf *pdf = em_pdf_new (sheet, source, date, error);

  if (pdf == NULL)
    return NULL;
  while (em_pdf_lay_out (pdf) || em_pdf_draw (pdf))
    ;
  return em_pdf_finish_take (pdf, error);
}

/* A device or a pipe of that name would be taken away and a file put in its place. */
static gboolean
is_in_the_way (const char *path)
{
  GStatBuf about;

  return g_stat (path, &about) == 0 && !S_ISREG (about.st_mode) && !S_ISDIR (about.st_mode);
}

gboolean
em_pdf_write (GBytes *pdf, const char *path, GError **error)
{
  g_autoptr (GError) reason = NULL;

  if (is_in_the_way (path))
    {
      g_set_error (error, EM_PAPER_ERROR, EM_PAPER_ERROR_WRITE, _("%s could not be written: %s"), path,
                   _("what has that name is no regular file"));
      return FALSE;
    }
  if (!g_file_set_contents_full (path, g_bytes_get_data (pdf, NULL), (gssize) g_bytes_get_size (pdf), G_FILE_SET_CONTENTS_CONSISTENT, 0644, &reason))
    {
      g_set_error (error, EM_PAPER_ERROR, EM_PAPER_ERROR_WRITE, _("%s could not be written: %s"), path, reason->message);
      return FALSE;
    }
  return TRUE;
}

gboolean
em_paper_export (EmSheet sheet, const EmPaperSource *source, const char *path, const char *date, GError **error)
{
  g_autoptr (GBytes) pdf = em_paper_to_pdf (sheet, source, date, error);

  return pdf != NULL && em_pdf_write (pdf, path, error);
}
