/* test-look: pages and drawings compared with pictures a person has looked at and approved.
 *
 * Tolerance, for another release of the drawing libraries: both pictures are averaged over blocks of 4 × 4 pixels; a block
 * differs when its grey is more than 24 of 255 away, and at most 1 % of the blocks may differ. Text is set in DejaVu Sans,
 * without which the test is skipped. To approve anew, run with ESTIMEND_APPROVE=1 and look at what it wrote.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-test-paper.h"

#include "../core/em-test-main.h"
#include "em-drawing.h"
#include "em-test-tools.h"

#include <math.h>
#include <pango/pangocairo.h>

#define DOTS_PER_POINT 0.6
#define BLOCK          4
#define GREY_FAR       24
#define SHARE_FAR      0.01

static cairo_surface_t *
make_surface (int width, int height, cairo_t **out_cr)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, width, height);

  *out_cr = cairo_create (surface);
  cairo_set_source_rgb (*out_cr, 1, 1, 1);
  cairo_paint (*out_cr);
  return surface;
}

/* Mean grey of a block, 0 … 255. */
static double
block_grey (cairo_surface_t *surface, int column, int row)
{
  const unsigned char *bytes = cairo_image_surface_get_data (surface);
  int stride = cairo_image_surface_get_stride (surface);
  double sum = 0;

  for (int y = row * BLOCK; y < (row + 1) * BLOCK; y++)
    for (int x = column * BLOCK; x < (column + 1) * BLOCK; x++)
      sum += (bytes[y * stride + 4 * x] + bytes[y * stride + 4 * x + 1] + bytes[y * stride + 4 * x + 2]) / 3.0;
  return sum / (BLOCK * BLOCK);
}

static double
share_far (cairo_surface_t *a, cairo_surface_t *b)
{
  int columns = cairo_image_surface_get_width (a) / BLOCK, rows = cairo_image_surface_get_height (a) / BLOCK, n_far = 0;

  for (int row = 0; row < rows; row++)
    for (int column = 0; column < columns; column++)
      n_far += fabs (block_grey (a, column, row) - block_grey (b, column, row)) > GREY_FAR;
  return (double) n_far / (columns * rows);
}

static void
compare (cairo_surface_t *surface, const char *name)
{
  const char *source = g_getenv ("ESTIMEND_TEST_SOURCE");
  g_autofree char *path = g_build_filename (source != NULL ? source : ".", "tests", "paper", "approved", name, NULL);
  cairo_surface_t *approved;

  cairo_surface_flush (surface);
  if (g_getenv ("ESTIMEND_APPROVE") != NULL)
    {
      ck_assert_int_eq (cairo_surface_write_to_png (surface, path), CAIRO_STATUS_SUCCESS);
      return;
    }
  approved = cairo_image_surface_create_from_png (path);
  ck_assert_msg (cairo_surface_status (approved) == CAIRO_STATUS_SUCCESS, "%s cannot be read", path);
  ck_assert_int_eq (cairo_image_surface_get_width (approved), cairo_image_surface_get_width (surface));
  ck_assert_int_eq (cairo_image_surface_get_height (approved), cairo_image_surface_get_height (surface));
  ck_assert_msg (share_far (approved, surface) <= SHARE_FAR, "%s: %.2f %% of the blocks differ", name, 100 * share_far (approved, surface));
  cairo_surface_destroy (approved);
}

/* page: from 0; −1 is the last. */
static void
compare_page (EmSheet sheet, int page, const char *language, const char *paper_size, const char *name)
{
  EmTestPaper paper;
  EmPages *pages;
  cairo_surface_t *surface;
  cairo_t *cr;
  double width, height;

  em_test_paper_init (&paper, 6, language, paper_size);
  em_paper_size (&paper.quote, &paper.rates, &width, &height);
  pages = em_pages_new (sheet, &paper.source, width, height, NULL);
  ck_assert_ptr_nonnull (pages);
  surface = make_surface ((int) (width * DOTS_PER_POINT), (int) (height * DOTS_PER_POINT), &cr);
  cairo_scale (cr, DOTS_PER_POINT, DOTS_PER_POINT);
  em_pages_draw (pages, page >= 0 ? page : em_pages_count (pages) + page, cr);
  cairo_destroy (cr);
  compare (surface, name);
  cairo_surface_destroy (surface);
  em_pages_free (pages);
  em_test_paper_clear (&paper);
}

static void
compare_drawing (EmView view, gboolean is_dark, const char *name)
{
  EmTestPaper paper;
  EmDrawingStyle style;
  cairo_t *cr;
  cairo_surface_t *surface = make_surface (320, 240, &cr);

  em_test_paper_init (&paper, 1, "en", "a4");
  paper.quote.feature[0].near = EM_NEAR_HOLE;
  paper.quote.feature[0].clearance_mm = 0.3;
  em_drawing_style_screen (&style, is_dark);
  style.font_family = "DejaVu Sans";
  cairo_set_source_rgb (cr, style.paper.red, style.paper.green, style.paper.blue);
  cairo_paint (cr);
  em_words_push ("en");
  ck_assert (em_drawing_draw (cr, 320, 240, &paper.quote.feature[0], &paper.cost.feature[0], view, EM_UNITS_METRIC, &style, 1));
  em_words_pop ();
  cairo_destroy (cr);
  compare (surface, name);
  cairo_surface_destroy (surface);
  em_test_paper_clear (&paper);
}

START_TEST (test_quote_first_page)
{
  compare_page (EM_SHEET_QUOTE, 0, "en", "a4", "quote-1.png");
}
END_TEST

START_TEST (test_quote_on_letter)
{
  compare_page (EM_SHEET_QUOTE, 0, "fr", "letter", "quote-letter.png");
}
END_TEST

START_TEST (test_bench_last_page)
{
  compare_page (EM_SHEET_BENCH, -1, "de", "a4", "bench-last.png");
}
END_TEST

/* Two stops, whole. */
START_TEST (test_bench_stops)
{
  compare_page (EM_SHEET_BENCH, 2, "de", "a4", "bench-stops.png");
}
END_TEST

START_TEST (test_bench_first_page)
{
  compare_page (EM_SHEET_BENCH, 0, "es", "letter", "bench-1.png");
}
END_TEST

/* Scope, assumptions, terms, signatures. */
START_TEST (test_quote_last_page)
{
  compare_page (EM_SHEET_QUOTE, -1, "en", "a4", "quote-last.png");
}
END_TEST

START_TEST (test_section)
{
  compare_drawing (EM_VIEW_SECTION, FALSE, "section.png");
}
END_TEST

START_TEST (test_plan_on_dark)
{
  compare_drawing (EM_VIEW_PLAN, TRUE, "plan-dark.png");
}
END_TEST

/* A drawing of nothing draws nothing and says so. */
START_TEST (test_no_shape_no_drawing)
{
  EmTestPaper paper;
  EmDrawingStyle style;
  cairo_t *cr;
  cairo_surface_t *blank = make_surface (80, 60, &cr), *surface;

  cairo_destroy (cr);
  surface = make_surface (80, 60, &cr);
  em_test_paper_init (&paper, 1, "en", "a4");
  em_drawing_style_paper (&style);
  paper.quote.feature[0].value[1] = EM_ABSENT;
  ck_assert (!em_drawing_draw (cr, 80, 60, &paper.quote.feature[0], NULL, EM_VIEW_SECTION, EM_UNITS_METRIC, &style, -1));
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  cairo_surface_flush (blank);
  ck_assert (share_far (blank, surface) == 0);
  cairo_surface_destroy (surface);
  cairo_surface_destroy (blank);
  em_test_paper_clear (&paper);
}
END_TEST

static gboolean
has_font (const char *wanted)
{
  PangoFontFamily **families;
  int n_families;
  gboolean is_found = FALSE;

  pango_font_map_list_families (pango_cairo_font_map_get_default (), &families, &n_families);
  for (int i = 0; i < n_families; i++)
    is_found = is_found || g_str_equal (pango_font_family_get_name (families[i]), wanted);
  g_free (families);
  return is_found;
}

int
main (void)
{
  const TTest *const tests[] = { test_quote_first_page, test_quote_on_letter, test_bench_last_page, test_bench_first_page, test_bench_stops,
                                 test_quote_last_page, test_section, test_plan_on_dark,
                                 test_no_shape_no_drawing };

  if (!has_font ("DejaVu Sans"))
    {
      g_printerr ("DejaVu Sans is not installed: skipped\n");
      return 77;
    }
  em_paper_set_font ("DejaVu Sans");
  return em_test_main ("look", tests, (int) G_N_ELEMENTS (tests));
}
