/* em-test-window: what the tests of this room share: the shipped basis, the demos, a window to act in.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-application.h"
#include "em-demo.h"
#include "em-document-edit.h"
#include "em-quantity-entry.h"

#include <check.h>
#include <stdlib.h>

static inline EmBasis *
test_basis (void)
{
  g_autoptr (GError) error = NULL;
  EmBasis *basis = em_basis_load (&error);

  ck_assert_msg (basis != NULL, "%s", error != NULL ? error->message : "no basis");
  return basis;
}

static inline EmDocument *
test_demo (const char *id)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (EmBasis) basis = test_basis ();
  EmDocument *document = em_demo_open (id, basis, &error);

  ck_assert_msg (document != NULL, "%s", error != NULL ? error->message : "no demo");
  return document;
}

static inline char *
test_bytes (EmDocument *document)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) bytes = em_document_to_bytes (document, &error);
  gsize size;
  const char *data;

  ck_assert_msg (bytes != NULL, "%s", error != NULL ? error->message : "no bytes");
  data = g_bytes_get_data (bytes, &size);
  return g_strndup (data, size);
}

static gboolean
test_wake (gpointer data)
{
  *(gboolean *) data = TRUE;
  return G_SOURCE_REMOVE;
}

/* How many times as long everything may take: more than one where what runs us is slow, as valgrind is. */
static inline guint
test_slowness (void)
{
  const char *slow = g_getenv ("ESTIMEND_TEST_SLOW");

  return slow != NULL ? (guint) MAX (atoi (slow), 1) : 1;
}

/* Lets the main loop run for a while. */
static inline void
test_settle (guint milliseconds)
{
  gboolean is_over = FALSE;

  g_timeout_add (milliseconds * test_slowness (), test_wake, &is_over);
  while (!is_over)
    g_main_context_iteration (NULL, TRUE);
}

static inline EmApplication *
test_application (void)
{
  EmApplication *application = em_application_new ();
  g_autoptr (GError) error = NULL;

  g_application_set_flags (G_APPLICATION (application), G_APPLICATION_NON_UNIQUE | G_APPLICATION_HANDLES_OPEN);
  ck_assert_msg (g_application_register (G_APPLICATION (application), NULL, &error), "%s", error != NULL ? error->message : "");
  ck_assert_ptr_nonnull (em_application_get_basis (application));
  return application;
}

static inline EmWindow *
test_window (EmApplication *application, EmDocument *document)
{
  EmWindow *window = em_application_add_window (application, document);

  test_settle (150);
  return window;
}

static inline void
test_act (EmWindow *window, const char *action)
{
  g_autofree char *name = NULL;
  g_autoptr (GVariant) target = NULL;

  ck_assert (g_action_parse_detailed_name (action, &name, &target, NULL));
  ck_assert_msg (gtk_widget_activate_action_variant (GTK_WIDGET (window), name, target), "%s is no action", action);
  test_settle (10);
}

/* The first widget of that type in a tree; NULL: none. */
static inline GtkWidget *
test_find_type (GtkWidget *in, GType type)
{
  GtkWidget *found = G_TYPE_CHECK_INSTANCE_TYPE (in, type) ? in : NULL;

  for (GtkWidget *child = gtk_widget_get_first_child (in); found == NULL && child != NULL; child = gtk_widget_get_next_sibling (child))
    found = test_find_type (child, type);
  return found;
}

/* As one change, the way typing over a selection is. */
static inline void
test_type (GtkWidget *entry, const char *text)
{
  gtk_entry_buffer_set_text (gtk_entry_get_buffer (GTK_ENTRY (entry)), text, -1);
}

/* As the keyboard does it over what is selected: first all goes, then the letters come one by one, where the cursor is. */
static inline void
test_key_in (GtkWidget *entry, const char *text)
{
  GtkEditable *editable = GTK_EDITABLE (entry);
  int at;

  gtk_editable_select_region (editable, 0, -1);
  gtk_editable_delete_selection (editable);
  for (; *text != '\0'; text = g_utf8_next_char (text))
    {
      at = gtk_editable_get_position (editable);
      gtk_editable_insert_text (editable, text, (int) (g_utf8_next_char (text) - text), &at);
      gtk_editable_set_position (editable, at);
    }
}

/* What is left of a main once its tests are added. */
static inline int
test_run (const char *name, TCase *tcase, double timeout_s)
{
  Suite *suite = suite_create (name);
  SRunner *runner;
  int n_failed;

  tcase_set_timeout (tcase, timeout_s);
  suite_add_tcase (suite, tcase);
  runner = srunner_create (suite);
  srunner_run_all (runner, CK_ENV);
  n_failed = srunner_ntests_failed (runner);
  srunner_free (runner);
  return n_failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}

static inline int
test_main (const char *name, const TTest *const *tests, int n_tests, double timeout_s)
{
  TCase *tcase = tcase_create (name);

  for (int i = 0; i < n_tests; i++)
    tcase_add_test (tcase, tests[i]);
  return test_run (name, tcase, timeout_s);
}

#define TEST_MAIN(name, ...) \
  int main (void) \
  { \
    const TTest *const tests[] = { __VA_ARGS__ }; \
    return test_main (name, tests, (int) G_N_ELEMENTS (tests), 60); \
  }
