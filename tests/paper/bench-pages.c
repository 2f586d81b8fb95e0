/* bench-pages: pages a second of a long quote, against plain cairo drawing the same text.
 *
 * "Plain": the very lines pdftotext reads from our pages, drawn with cairo's own text call, no layout, no drawings.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-test-paper.h"

#include "em-test-tools.h"

#include <cairo-pdf.h>

enum { N_FEATURES = 900 };

static void
draw_page (cairo_t *cr, const char *text)
{
  g_auto (GStrv) lines = g_strsplit (text, "\n", -1);

  cairo_select_font_face (cr, "DejaVu Sans", CAIRO_FONT_SLANT_NORMAL, CAIRO_FONT_WEIGHT_NORMAL);
  cairo_set_font_size (cr, 8.5);
  for (int i = 0; lines[i] != NULL; i++)
    {
      cairo_move_to (cr, 51, 48 + 11 * i);
      cairo_show_text (cr, lines[i]);
    }
  cairo_show_page (cr);
}

static double
time_plain (const char *text, const char *path)
{
  g_auto (GStrv) pages = g_strsplit (text, "\f", -1);
  gint64 start = g_get_monotonic_time ();
  cairo_surface_t *surface = cairo_pdf_surface_create (path, 595, 842);
  cairo_t *cr = cairo_create (surface);

  for (int i = 0; pages[i] != NULL && pages[i + 1] != NULL; i++)
    draw_page (cr, pages[i]);
  cairo_destroy (cr);
  cairo_surface_finish (surface);
  cairo_surface_destroy (surface);
  return (double) (g_get_monotonic_time () - start) / 1e6;
}

int
main (void)
{
  EmTestPaper paper;
  g_autofree char *folder = em_test_folder ();
  g_autofree char *path = g_build_filename (folder, "ours.pdf", NULL);
  g_autofree char *plain = g_build_filename (folder, "plain.pdf", NULL);
  const char *const argv[] = { "pdftotext", "-layout", path, "-", NULL };
  g_autofree char *text = NULL;
  gint64 start;
  double ours_s, plain_s;
  int status, n_pages = 0;

  em_test_need ("pdftotext");
  em_test_paper_init (&paper, N_FEATURES, "en", "a4");
  start = g_get_monotonic_time ();
  if (!em_paper_export (EM_SHEET_QUOTE, &paper.source, path, "2026-03-09", NULL))
    return EXIT_FAILURE;
  ours_s = (double) (g_get_monotonic_time () - start) / 1e6;
  text = em_test_run (argv, &status);
  for (const char *c = text; *c != '\0'; c++)
    n_pages += *c == '\f';
  plain_s = time_plain (text, plain);
  g_print ("%d pages: ours %.0f pages/s (%.2f s), plain text alone %.0f pages/s (%.2f s), ratio %.2f\n", n_pages, n_pages / ours_s, ours_s,
           n_pages / plain_s, plain_s, ours_s / plain_s);
  em_test_paper_clear (&paper);
  em_test_forget (g_steal_pointer (&folder));
  return EXIT_SUCCESS;
}
