/* test-dialogs: every question, list and popover the program opens: named for those who can't see it, no letter asked to do two
 * things in any language, and a role that says what it is.
 *
 * The system's own windows for choosing a file and for printing are not ours and not here.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-test-letters.h"
#include "em-test-names.h"

#include "em-autosave.h"
#include "em-book-window.h"
#include "em-price-report.h"
#include "em-register-window.h"
#include "em-save.h"

#include <glib/gstdio.h>

typedef struct
{
  EmApplication *application;
  EmDocument    *document;
  EmWindow      *window;
  EmBookWindow  *book;       /* NULL: not opened */
  char          *folder;
} Fixture;

typedef struct
{
  const char       *name;
  GtkWidget      *(*open) (Fixture *f);    /* what opened */
  GtkAccessibleRole role;
  int               n_least;               /* things in it that want a name, itself among them */
} Place;

static GtkWidget *
find_toplevel (GType type)
{
  g_autoptr (GList) all = gtk_window_list_toplevels ();

  for (GList *window = all; window != NULL; window = window->next)
    if (G_TYPE_CHECK_INSTANCE_TYPE (window->data, type) && gtk_widget_get_visible (window->data))
      return window->data;
  return NULL;
}

static GtkWidget *
find_mapped (GtkWidget *in, GType type)
{
  if (G_TYPE_CHECK_INSTANCE_TYPE (in, type) && gtk_widget_get_mapped (in))
    return in;
  for (GtkWidget *child = gtk_widget_get_first_child (in); child != NULL; child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = find_mapped (child, type);
      if (found != NULL)
        return found;
    }
  return NULL;
}

/* Dialogs come once files were looked at. */
static GtkWidget *
wait_for (GType type)
{
  for (int i = 0; i < 3000 && find_toplevel (type) == NULL; i++)
    test_settle (40);
  test_settle (60);
  return find_toplevel (type);
}

static GtkWidget *
find_of_class (GtkWidget *in, GType type, const char *css_class)
{
  if (G_TYPE_CHECK_INSTANCE_TYPE (in, type) && gtk_widget_has_css_class (in, css_class) && gtk_widget_get_mapped (in))
    return in;
  for (GtkWidget *child = gtk_widget_get_first_child (in); child != NULL; child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = find_of_class (child, type, css_class);
      if (found != NULL)
        return found;
    }
  return NULL;
}

static GtkWidget *
popover_in (gpointer widget)
{
  test_settle (250);
  return find_mapped (GTK_WIDGET (widget), GTK_TYPE_POPOVER);
}

/* ---- questions ---- */

static GtkWidget *
ask_before_closing (Fixture *f)
{
  em_document_set_text (f->document, EM_QUOTE_CUSTOMER, "Somebody else");
  gtk_window_close (GTK_WINDOW (f->window));
  return wait_for (GTK_TYPE_MESSAGE_DIALOG);
}

static GtkWidget *
ask_over_changed (Fixture *f)
{
  g_autofree char *path = g_build_filename (f->folder, "q.estimend", NULL);
  g_autofree char *bytes = NULL;
  gsize length;

  em_window_save_to (f->window, path);
  for (int i = 0; i < 3000 && em_document_get_path (f->document) == NULL; i++)
    test_settle (40);
  ck_assert (g_file_get_contents (path, &bytes, &length, NULL));
  g_autofree char *longer = g_strconcat (bytes, "\n", NULL);
  ck_assert (g_file_set_contents (path, longer, -1, NULL));
  em_document_set_text (f->document, EM_QUOTE_CUSTOMER, "Somebody else");
  test_act (f->window, "win.save");
  return wait_for (GTK_TYPE_MESSAGE_DIALOG);
}

/* Work that a session left which is no longer there: its lock is nobody's. */
static GtkWidget *
ask_to_recover (Fixture *f)
{
  g_autofree char *recovery = g_build_filename (g_getenv ("ESTIMEND_STATE_DIR"), "recovery", NULL);
  g_autoptr (GBytes) bytes = em_document_to_bytes (f->document, NULL);
  g_autoptr (EmJournal) journal = em_journal_new ();
  EmFileStamp none = { 0 };
  g_autoptr (GError) error = NULL;

  ck_assert_msg (em_journal_keep (journal, em_journal_ticket (journal), bytes, NULL, &none, "Q-7 · Somebody", &error), "%s", error != NULL ? error->message : "");
  g_autoptr (GDir) dir = g_dir_open (recovery, 0, NULL);
  ck_assert_ptr_nonnull (dir);
  for (const char *name = g_dir_read_name (dir); name != NULL; name = g_dir_read_name (dir))
    if (g_str_has_suffix (name, ".journal"))
      {
        g_autofree char *from = g_build_filename (recovery, name, NULL), *to = g_build_filename (recovery, "0000000000000000-1.journal", NULL);
        ck_assert_int_eq (g_rename (from, to), 0);
        break;
      }
  em_autosave_offer (f->application);
  return wait_for (GTK_TYPE_MESSAGE_DIALOG);
}

static void
open_book (Fixture *f, const char *page)
{
  f->book = em_book_window_present (f->application, f->window, page);
  test_settle (150);
}

static GtkWidget *
ask_to_keep_the_book (Fixture *f)
{
  open_book (f, "money");
  em_draft_get_rates (em_book_window_get_draft (f->book))->bench_minor_per_h += 100;
  em_draft_touch (em_book_window_get_draft (f->book), EM_DRAFT_RATES, NULL);
  gtk_window_close (GTK_WINDOW (f->book));
  return wait_for (GTK_TYPE_MESSAGE_DIALOG);
}

static GtkWidget *
price_report (Fixture *f)
{
  g_autofree char *path = g_build_filename (f->folder, "prices.csv", NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);

  open_book (f, "wires");
  const EmFiller *wire = &em_draft_get_catalogue (em_book_window_get_draft (f->book))->filler[0];
  g_autofree char *csv = g_strdup_printf ("wire,size_mm,price,per\n%s,%g,9.99,metre\nno-such-wire,0.5,1.00,metre\n", wire->id, wire->size[0].wire_mm);
  ck_assert (g_file_set_contents (path, csv, -1, NULL));
  em_book_window_import (f->book, file);
  return wait_for (EM_TYPE_PRICE_REPORT);
}

/* ---- what opens in a window ---- */

static GtkWidget *
working_of_a_line (Fixture *f)
{
  g_signal_emit_by_name (find_of_class (GTK_WIDGET (em_window_get_money (f->window)), GTK_TYPE_BUTTON, "line"), "clicked");
  return popover_in (em_window_get_money (f->window));
}

static GtkWidget *
working_of_a_feature (Fixture *f)
{
  g_signal_emit_by_name (find_of_class (GTK_WIDGET (em_window_get_metal (f->window)), GTK_TYPE_BUTTON, "plan-line"), "clicked");
  return popover_in (em_window_get_metal (f->window));
}

static GtkWidget *
kinds_to_add (Fixture *f)
{
  test_act (f->window, "win.add");
  return popover_in (em_window_get_metal (f->window));
}

/* The number-th mapped menu button in a widget, opened. */
static GtkWidget *
open_menu (gpointer in, int number)
{
  GtkWidget *found = NULL;
  g_autoptr (GQueue) open = g_queue_new ();

  g_queue_push_tail (open, in);
  while (found == NULL && !g_queue_is_empty (open))
    {
      GtkWidget *widget = g_queue_pop_head (open);
      if (GTK_IS_MENU_BUTTON (widget) && gtk_widget_get_mapped (widget) && number-- == 0)
        found = widget;
      for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL; child = gtk_widget_get_next_sibling (child))
        g_queue_push_tail (open, child);
    }
  ck_assert_ptr_nonnull (found);
  gtk_menu_button_popup (GTK_MENU_BUTTON (found));
  return popover_in (found);
}

static GtkWidget *
main_menu (Fixture *f)
{
  return open_menu (gtk_window_get_titlebar (GTK_WINDOW (f->window)), 0);
}

static GtkWidget *
feature_menu (Fixture *f)
{
  return open_menu (em_window_get_metal (f->window), 1);
}

static GtkWidget *
wires_to_offer (Fixture *f)
{
  test_act (f->window, "win.paper");
  test_settle (100);
  return open_menu (em_window_get_paper (f->window), 0);
}

static GtkWidget *
data_menu (Fixture *f)
{
  test_act (f->window, "win.paper");
  test_settle (100);
  return open_menu (em_window_get_paper (f->window), 1);
}

static GtkWidget *
choices_of_a_drop_down (Fixture *f)
{
  GtkWidget *drop_down = find_mapped (GTK_WIDGET (em_window_get_metal (f->window)), GTK_TYPE_DROP_DOWN);

  ck_assert_ptr_nonnull (drop_down);
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (gtk_widget_get_first_child (drop_down)), TRUE);
  return popover_in (drop_down);
}

static GtkWidget *
about (Fixture *f)
{
  g_action_group_activate_action (G_ACTION_GROUP (f->application), "about", NULL);
  return wait_for (GTK_TYPE_ABOUT_DIALOG);
}

static const Place places[] =
{
  { "save before closing", ask_before_closing, GTK_ACCESSIBLE_ROLE_DIALOG, 4 },
  { "changed by somebody else", ask_over_changed, GTK_ACCESSIBLE_ROLE_DIALOG, 4 },
  { "recover", ask_to_recover, GTK_ACCESSIBLE_ROLE_DIALOG, 4 },
  { "keep the rate book", ask_to_keep_the_book, GTK_ACCESSIBLE_ROLE_DIALOG, 4 },
  { "prices from a supplier", price_report, GTK_ACCESSIBLE_ROLE_WINDOW, 7 },
  { "working of a line", working_of_a_line, GTK_ACCESSIBLE_ROLE_DIALOG, 1 },
  { "working of a feature", working_of_a_feature, GTK_ACCESSIBLE_ROLE_DIALOG, 1 },
  { "kinds to add", kinds_to_add, GTK_ACCESSIBLE_ROLE_DIALOG, 12 },
  { "main menu", main_menu, GTK_ACCESSIBLE_ROLE_MENU, 15 },
  { "menu of a feature", feature_menu, GTK_ACCESSIBLE_ROLE_MENU, 6 },
  { "wires to offer", wires_to_offer, GTK_ACCESSIBLE_ROLE_DIALOG, 2 },
  { "save as data", data_menu, GTK_ACCESSIBLE_ROLE_MENU, 3 },
  { "choices of a drop-down", choices_of_a_drop_down, GTK_ACCESSIBLE_ROLE_WIDGET, 1 },
  { "about", about, GTK_ACCESSIBLE_ROLE_WINDOW, 2 },
};

static void
start (Fixture *f, const char *language)
{
  *f = (Fixture) { .application = test_application_in (language), .document = test_demo (NULL), .folder = g_dir_make_tmp ("estimend-test-XXXXXX", NULL) };
  f->window = test_window (f->application, f->document);
  test_settle (200);
}

static void
end (Fixture *f)
{
  g_object_unref (f->document);
  g_free (f->folder);
}

static void
check_place (const Place *place, const char *language)
{
  g_autofree char *where = g_strdup_printf ("%s, %s", language, place->name);
  g_autoptr (GString) list = g_string_new (NULL);
  Fixture f;
  int n_seen = 0;

  start (&f, language);
  GtkWidget *opened = place->open (&f);
  ck_assert_msg (opened != NULL, "%s: nothing opened", where);
  int n = test_count_nameless (opened, &n_seen, list);
  ck_assert_msg (n == 0, "%s: %d of %d have no name:%s", where, n, n_seen, list->str);
  ck_assert_msg (n_seen >= place->n_least, "%s: only %d things want a name", where, n_seen);
  ck_assert_msg (gtk_accessible_get_accessible_role (GTK_ACCESSIBLE (opened)) == place->role, "%s: the role is %d", where,
                 gtk_accessible_get_accessible_role (GTK_ACCESSIBLE (opened)));
  test_check_letters (opened, language, place->name);
  end (&f);
}

START_TEST (named_and_lettered)
{
  check_place (&places[_i / TEST_LANGUAGES], test_languages[_i % TEST_LANGUAGES]);
}
END_TEST

/* What a question asks is its name, and what it says beneath is told with it. */
START_TEST (a_question_is_its_name)
{
  Fixture f;

  start (&f, "en");
  GtkWidget *dialog = ask_before_closing (&f);
  g_autofree char *text = NULL, *more = NULL;
  g_object_get (dialog, "text", &text, "secondary-text", &more, NULL);
  g_autofree char *name = gtk_test_accessible_check_property (GTK_ACCESSIBLE (dialog), GTK_ACCESSIBLE_PROPERTY_LABEL, text);
  g_autofree char *description = gtk_test_accessible_check_property (GTK_ACCESSIBLE (dialog), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, more);
  ck_assert_msg (name == NULL, "named %s", name);
  ck_assert_msg (description == NULL, "described as %s", description);
  end (&f);
}
END_TEST

int
main (void)
{
  TCase *tcase = tcase_create ("dialogs");

  tcase_add_test (tcase, a_question_is_its_name);
  tcase_add_loop_test (tcase, named_and_lettered, 0, (int) G_N_ELEMENTS (places) * TEST_LANGUAGES);
  return test_run ("dialogs", tcase, 60);
}
