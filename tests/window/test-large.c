/* test-large: at twice the size of letters the window still fits a small screen, in every language.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-test-letters.h"

#include "em-feature-editor.h"
#include "em-metal-pane.h"

/* Of a screen of 1,366 pixels, with room for the desktop's own bar at its side. */
enum { WIDEST_PX = 1200 };

/* GTK gives what is too wide for its place more room than there is, and cuts it off at both sides. */
static void
check_within (EmWindow *window, const char *language, const char *kind)
{
  GtkWidget *pane = test_find_type (GTK_WIDGET (window), EM_TYPE_METAL_PANE), *editor = test_find_type (pane, EM_TYPE_FEATURE_EDITOR);
  graphene_rect_t bounds;

  ck_assert (gtk_widget_compute_bounds (editor, pane, &bounds));
  ck_assert_msg (bounds.origin.x >= 0 && bounds.size.width <= (float) gtk_widget_get_width (pane), "%s, %s: %g at %g of %d", language, kind,
                 (double) bounds.size.width, (double) bounds.origin.x, gtk_widget_get_width (pane));
  ck_assert_msg (gtk_widget_get_width (GTK_WIDGET (window)) <= WIDEST_PX, "%s, %s: %d wide", language, kind, gtk_widget_get_width (GTK_WIDGET (window)));
}

START_TEST (large_letters_fit)
{
  const char *language = test_languages[_i];
  g_autoptr (EmApplication) application = test_application_in (language);
  g_autoptr (EmDocument) document = test_demo (NULL);
  EmWindow *window;

  g_object_set (gtk_settings_get_default (), "gtk-xft-dpi", 2 * 96 * PANGO_SCALE, NULL);
  window = test_window (application, document);
  gtk_window_set_default_size (GTK_WINDOW (window), 600, 600);
  test_settle (300);
  check_within (window, language, "demo");
  for (int k = 0; k < em_n_kinds; k++)
    {
      em_document_insert (document, 0, em_kinds[k]);
      test_settle (60);
      check_within (window, language, em_kinds[k]->id);
    }
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

int
main (void)
{
  TCase *tcase = tcase_create ("large");

  tcase_add_loop_test (tcase, large_letters_fit, 0, TEST_LANGUAGES);
  return test_run ("large", tcase, 60);
}
