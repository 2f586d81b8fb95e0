/* test-broken: a PDF whose bytes can't all be taken is none: cairo's output made to fail at each of its writes in turn.
 *
 * Stands between the program and cairo, whose stream it gives a function of its own.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#define _GNU_SOURCE   /* RTLD_NEXT */

#include "em-test-paper.h"

#include "../core/em-test-main.h"
#include "em-test-tools.h"

#include <cairo-pdf.h>
#include <dlfcn.h>
#include <stdio.h>

enum { WRITES_MAX = 100000 };

static struct { cairo_write_func_t write; void *closure; long n_written, fail_at; gboolean was_hit, ends_surface; } stream;

static cairo_status_t
write_or_fail (void *closure, const unsigned char *data, unsigned int length)
{
  (void) closure;
  if (stream.n_written++ == stream.fail_at)
    {
      stream.was_hit = TRUE;
      return CAIRO_STATUS_WRITE_ERROR;
    }
  return stream.write (stream.closure, data, length);
}

cairo_surface_t *
cairo_pdf_surface_create_for_stream (cairo_write_func_t write, void *closure, double width, double height)
{
  static __typeof__ (&cairo_pdf_surface_create_for_stream) real;
  cairo_surface_t *surface;

  if (real == NULL)
    *(void **) &real = dlsym (RTLD_NEXT, "cairo_pdf_surface_create_for_stream");
  stream.write = write;
  stream.closure = closure;
  stream.n_written = 0;
  surface = real (write_or_fail, NULL, width, height);
  /* One that is finished before it is drawn on is in error at once. */
  if (stream.ends_surface)
    cairo_surface_finish (surface);
  return surface;
}

static void
check_refused (EmTestPaper *paper, const char *path, long at)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) pdf = em_paper_to_pdf (EM_SHEET_QUOTE, &paper->source, "2026-03-09", &error);
  g_autofree char *kept = NULL;

  ck_assert_msg (pdf == NULL && g_error_matches (error, EM_PAPER_ERROR, EM_PAPER_ERROR_WRITE), "write %ld of %ld: %s", at, stream.n_written, error != NULL ? error->message : "a PDF");
  g_clear_error (&error);
  ck_assert (!em_paper_export (EM_SHEET_QUOTE, &paper->source, path, "2026-03-09", &error));
  ck_assert (g_file_get_contents (path, &kept, NULL, NULL));
  ck_assert_str_eq (kept, "old");
}

START_TEST (test_every_write_may_fail)
{
  EmTestPaper paper;
  g_autofree char *folder = em_test_folder ();
  g_autofree char *path = g_build_filename (folder, "old.pdf", NULL);
  long n;

  em_test_paper_init (&paper, 1, "en", "a4");
  ck_assert (g_file_set_contents (path, "old", -1, NULL));
  stream.fail_at = -1;
  g_autoptr (GBytes) whole = em_paper_to_pdf (EM_SHEET_QUOTE, &paper.source, "2026-03-09", NULL);
  ck_assert_ptr_nonnull (whole);
  n = stream.n_written;
  ck_assert (n > 50 && n < WRITES_MAX);
  /* The first, the last, and a sample between. */
  for (long at = 0; at < n; at = at < n - 4 ? MIN (at + 1 + n / 30, n - 4) : at + 1)
    {
      stream.fail_at = at;
      stream.was_hit = FALSE;
      check_refused (&paper, path, at);
      ck_assert_msg (stream.was_hit, "write %ld was not made", at);
    }
  stream.fail_at = -1;
  g_autoptr (GBytes) again = em_paper_to_pdf (EM_SHEET_QUOTE, &paper.source, "2026-03-09", NULL);
  ck_assert (again != NULL && g_bytes_equal (whole, again));
  em_test_paper_clear (&paper);
  em_test_forget (g_steal_pointer (&folder));
}
END_TEST

START_TEST (test_surface_in_error)
{
  EmTestPaper paper;
  g_autofree char *folder = em_test_folder ();
  g_autofree char *path = g_build_filename (folder, "old.pdf", NULL);

  em_test_paper_init (&paper, 1, "en", "a4");
  ck_assert (g_file_set_contents (path, "old", -1, NULL));
  stream.fail_at = -1;
  stream.ends_surface = TRUE;
  check_refused (&paper, path, -1);
  stream.ends_surface = FALSE;
  em_test_paper_clear (&paper);
  em_test_forget (g_steal_pointer (&folder));
}
END_TEST

EM_TEST_MAIN ("broken", test_every_write_may_fail, test_surface_in_error)
