/* test-sheets: the same quote by the window's PDF, the print dialog's engine and the command line; wires offered; data saved.
 *
 * Pages are compared by poppler's pdftoppm, which knows nothing of us. A printed file's date is its own, so that its pages
 * are compared as pictures; the others byte by byte.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-test-window.h"

#include "em-print.h"

#include <glib/gstdio.h>
#include <string.h>

static char *
scratch (const char *folder, const char *name)
{
  return g_build_filename (folder, name, NULL);
}

static void
forget (char *take_folder)
{
  GDir *dir = g_dir_open (take_folder, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = scratch (take_folder, name);

      g_remove (path);
    }
  g_clear_pointer (&dir, g_dir_close);
  g_rmdir (take_folder);
  g_free (take_folder);
}

static GBytes *
read_file (const char *path)
{
  char *data;
  gsize size;

  ck_assert_msg (g_file_get_contents (path, &data, &size, NULL), "%s cannot be read", path);
  return g_bytes_new_take (data, size);
}

static GBytes *
run_for_bytes (const char *const *argv)
{
  g_autoptr (GSubprocess) process = g_subprocess_newv (argv, G_SUBPROCESS_FLAGS_STDOUT_PIPE | G_SUBPROCESS_FLAGS_STDERR_SILENCE, NULL);
  GBytes *out = NULL;

  ck_assert_ptr_nonnull (process);
  ck_assert (g_subprocess_communicate (process, NULL, NULL, &out, NULL, NULL));
  ck_assert_msg (g_subprocess_get_successful (process), "%s failed", argv[0]);
  return out;
}

/* All pages as one stream of grey pictures. */
static GBytes *
picture (const char *path)
{
  const char *const argv[] = { "pdftoppm", "-r", "50", "-gray", path, NULL };

  return run_for_bytes (argv);
}

static void
export_by_printing (EmDocument *document, EmSheet sheet, const char *path)
{
  g_autoptr (EmPrint) print = em_print_new (document, sheet);
  g_autoptr (GError) error = NULL;

  gtk_print_operation_set_export_filename (GTK_PRINT_OPERATION (print), path);
  ck_assert_msg (gtk_print_operation_run (GTK_PRINT_OPERATION (print), GTK_PRINT_OPERATION_ACTION_EXPORT, NULL, &error)
                 == GTK_PRINT_OPERATION_RESULT_APPLY, "%s", error != NULL ? error->message : "not applied");
}

static void
export_by_command (EmDocument *document, const char *sheet, const char *folder, const char *path)
{
  g_autofree char *quote = scratch (folder, "quote.estimend");
  g_autofree char *text = test_bytes (document);
  g_autofree char *program = g_build_filename (g_getenv ("ESTIMEND_TEST_BUILD"), "src", "estimend", NULL);
  const char *const argv[] = { program, "print", quote, "--sheet", sheet, "-o", path, NULL };

  ck_assert (g_file_set_contents (quote, text, -1, NULL));
  g_bytes_unref (run_for_bytes (argv));
}

static void
choose_sheet (GtkWidget *widget, guint sheet)
{
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL; child = gtk_widget_get_next_sibling (child))
    if (GTK_IS_DROP_DOWN (child))
      gtk_drop_down_set_selected (GTK_DROP_DOWN (child), sheet);
    else
      choose_sheet (child, sheet);
}

static void
list_texts (GtkWidget *in, GString *out)
{
  if (GTK_IS_LABEL (in))
    g_string_append_printf (out, "%s\n", gtk_label_get_text (GTK_LABEL (in)));
  for (GtkWidget *child = gtk_widget_get_first_child (in); child != NULL; child = gtk_widget_get_next_sibling (child))
    list_texts (child, out);
}

static GtkWidget *
find_offers (GtkWidget *in)
{
  GtkWidget *found = GTK_IS_MENU_BUTTON (in) && g_strcmp0 (gtk_menu_button_get_label (GTK_MENU_BUTTON (in)), "Wires to offer") == 0 ? in : NULL;

  for (GtkWidget *child = gtk_widget_get_first_child (in); found == NULL && child != NULL; child = gtk_widget_get_next_sibling (child))
    found = find_offers (child);
  return found;
}

/* Bronze on a tool of P20 suits, as a compromise: it stands below what the trade would take, though it is cheaper than some of it. */
START_TEST (compromises_are_offered_last)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = test_demo ("injection-mold");
  EmWindow *window = test_window (application, document);
  g_autoptr (GString) texts = g_string_new (NULL);

  test_act (window, "win.paper");
  GtkWidget *button = find_offers (GTK_WIDGET (em_window_get_paper (window)));
  ck_assert_ptr_nonnull (button);
  gtk_menu_button_popup (GTK_MENU_BUTTON (button));
  test_settle (200);
  list_texts (GTK_WIDGET (gtk_menu_button_get_popover (GTK_MENU_BUTTON (button))), texts);
  const char *parting = strstr (texts->str, "would be a compromise"), *bronze = strstr (texts->str, "ERCuSi-A"), *near = strstr (texts->str, "P20+Ni");
  ck_assert_msg (parting != NULL && bronze != NULL && near != NULL, "%s", texts->str);
  ck_assert_msg (near < parting && parting < bronze, "%s", texts->str);
  gtk_menu_button_popdown (GTK_MENU_BUTTON (button));
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

START_TEST (three_ways_to_the_same_pages)
{
  static const char *const sheets[] = { "quote", "bench" };
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = test_demo (em_demos[_i].id);
  EmWindow *window = test_window (application, document);
  char *folder = g_dir_make_tmp ("estimend-XXXXXX", NULL);
  g_autofree char *exported = scratch (folder, "exported.pdf"), *printed = scratch (folder, "printed.pdf"), *commanded = scratch (folder, "commanded.pdf");

  /* One wire is offered, so that options are on the sheets of all three. */
  em_document_set_text (document, EM_QUOTE_LANGUAGE, "en");
  em_document_set_text (document, EM_QUOTE_OFFERS, em_document_get_catalogue (document)->filler[0].id);
  test_act (window, "win.paper");
  for (guint sheet = EM_SHEET_QUOTE; sheet <= EM_SHEET_BENCH; sheet++)
    {
      choose_sheet (GTK_WIDGET (em_window_get_paper (window)), sheet);
      test_settle (50);
      em_window_say (window, NULL);
      em_window_export_to (window, exported);
      for (int i = 0; i < 1000 && (em_window_get_said (window) == NULL || strstr (em_window_get_said (window), "is written") == NULL); i++)
        test_settle (20);
      ck_assert_ptr_nonnull (em_window_get_said (window));
      export_by_printing (document, (EmSheet) sheet, printed);
      export_by_command (document, sheets[sheet], folder, commanded);

      g_autoptr (GBytes) by_window = read_file (exported), by_command = read_file (commanded);
      g_autoptr (GBytes) seen = picture (exported), on_paper = picture (printed);

      ck_assert_msg (g_bytes_equal (by_window, by_command), "%s: the command's bytes are others than the window's", sheets[sheet]);
      ck_assert_int_gt (g_bytes_get_size (seen), 10000);
      ck_assert_msg (g_bytes_equal (seen, on_paper), "%s: what is printed looks different", sheets[sheet]);
    }
  gtk_window_destroy (GTK_WINDOW (window));
  forget (folder);
}
END_TEST

static void
wait_until_said (EmWindow *window, const char *text)
{
  for (int i = 0; i < 2000 && (em_window_get_said (window) == NULL || strstr (em_window_get_said (window), text) == NULL); i++)
    test_settle (10);
  ck_assert_msg (em_window_get_said (window) != NULL && strstr (em_window_get_said (window), text) != NULL, "it says: %s", em_window_get_said (window));
}

START_TEST (data_is_saved)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = test_demo (em_demos[0].id);
  EmWindow *window = test_window (application, document);
  char *folder = g_dir_make_tmp ("estimend-XXXXXX", NULL);
  g_autofree char *lines = scratch (folder, "lines.csv"), *wires = scratch (folder, "wires.csv");

  em_window_export_data_to (window, FALSE, lines);
  wait_until_said (window, "lines.csv is written.");
  em_window_export_data_to (window, TRUE, wires);
  wait_until_said (window, "wires.csv is written.");
  em_window_export_data_to (window, TRUE, "/no/such/folder/anywhere/w.csv");
  wait_until_said (window, "could not be written");

  g_autoptr (GBytes) line_bytes = read_file (lines), wire_bytes = read_file (wires);
  ck_assert_ptr_nonnull (g_strstr_len (g_bytes_get_data (line_bytes, NULL), (gssize) g_bytes_get_size (line_bytes), "\r\n1,feature,"));
  ck_assert_ptr_nonnull (g_strstr_len (g_bytes_get_data (wire_bytes, NULL), (gssize) g_bytes_get_size (wire_bytes), ",present,"));
  gtk_window_destroy (GTK_WINDOW (window));
  forget (folder);
}
END_TEST

int
main (void)
{
  g_autofree char *tool = g_find_program_in_path ("pdftoppm");
  TCase *tcase = tcase_create ("sheets");

  if (tool == NULL)
    {
      g_printerr ("pdftoppm is not installed: skipped\n");
      return 77;
    }
  tcase_add_loop_test (tcase, three_ways_to_the_same_pages, 0, em_n_demos);
  tcase_add_test (tcase, data_is_saved);
  tcase_add_test (tcase, compromises_are_offered_last);
  return test_run ("sheets", tcase, 60);
}
