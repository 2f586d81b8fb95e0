/* test-mnemonic: within what is on the screen at one time no letter is asked to do two things, in any language.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-test-letters.h"

#include "em-book-window.h"
#include "em-register-window.h"

#include <string.h>

/* So that the rest does not pass by showing English four times. */
START_TEST (the_language_is_the_one_asked_for)
{
  static const char *const yes[TEST_LANGUAGES] = { "Yes", "Ja", "Sí", "Oui" };
  g_autoptr (EmApplication) application = test_application_in (test_languages[_i]);

  ck_assert_str_eq (em_words_language (), test_languages[_i]);
  ck_assert_str_eq (g_dgettext (GETTEXT_PACKAGE, "Yes"), yes[_i]);
}
END_TEST

START_TEST (in_the_main_window)
{
  g_autoptr (EmApplication) application = test_application_in (test_languages[_i]);
  g_autoptr (EmDocument) document = test_demo (NULL);
  EmWindow *window = test_window (application, document);

  test_check_letters (window, test_languages[_i], "as opened");
  test_open_folds (GTK_WIDGET (window));
  test_settle (700);
  for (int k = 0; k < em_n_kinds; k++)
    {
      em_document_insert (document, 0, em_kinds[k]);
      test_settle (30);
      test_check_letters (window, test_languages[_i], em_kinds[k]->id);
    }
  test_act (window, "win.paper");
  test_settle (100);
  test_check_letters (window, test_languages[_i], "paper");
  em_window_show_welcome (window);
  test_settle (100);
  test_check_letters (window, test_languages[_i], "welcome");
  ck_assert_int_gt (test_n_letters, 60);
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

START_TEST (in_the_other_windows)
{
  static const char *const pages[] = { "money", "minutes", "deposit", "machines", "bases", "wires", "jobs", "taxes", "shop" };
  g_autoptr (EmApplication) application = test_application_in (test_languages[_i]);
  EmBookWindow *book = em_book_window_present (application, NULL, "money");
  EmRegisterWindow *reg;

  for (gsize i = 0; i < G_N_ELEMENTS (pages); i++)
    {
      em_book_window_show_page (book, pages[i]);
      test_open_folds (GTK_WIDGET (book));
      test_settle (60);
      test_check_letters (book, test_languages[_i], pages[i]);
    }
  gtk_window_destroy (GTK_WINDOW (book));
  reg = em_register_window_present (application);
  test_settle (200);
  test_check_letters (reg, test_languages[_i], "register");
  ck_assert_int_gt (test_n_letters, 20);
  gtk_window_destroy (GTK_WINDOW (reg));
}
END_TEST

static void
take_text (TestLetters *letters, const char *text)
{
  const char *mark = strchr (text, '_');

  if (mark != NULL && mark[1] != '\0' && mark[1] != '_')
    test_take_letter (letters, gdk_keyval_to_lower (gdk_unicode_to_keyval (g_utf8_get_char (mark + 1))), text);
}

/* One level of a menu is one place; sections lie side by side in it. */
static void
gather_menu (GMenuModel *menu, TestLetters *letters, const char *language)
{
  for (int i = 0; i < g_menu_model_get_n_items (menu); i++)
    {
      g_autoptr (GMenuModel) section = g_menu_model_get_item_link (menu, i, G_MENU_LINK_SECTION);
      g_autoptr (GMenuModel) submenu = g_menu_model_get_item_link (menu, i, G_MENU_LINK_SUBMENU);
      g_autofree char *text = NULL;

      if (g_menu_model_get_item_attribute (menu, i, G_MENU_ATTRIBUTE_LABEL, "s", &text) && section == NULL)
        take_text (letters, text);
      if (section != NULL)
        gather_menu (section, letters, language);
      if (submenu != NULL)
        {
          TestLetters inner;
          test_letters_init (&inner);
          gather_menu (submenu, &inner, language);
          ck_assert_msg (inner.clashes->len == 0, "%s, under “%s”:%s", language, text, inner.clashes->str);
          test_letters_clear (&inner);
        }
    }
}

static void
check_menus (GtkWidget *widget, const char *language, int *n_menus)
{
  if (GTK_IS_MENU_BUTTON (widget) && gtk_widget_get_mapped (widget))
    {
      gtk_menu_button_popup (GTK_MENU_BUTTON (widget));
      GMenuModel *menu = gtk_menu_button_get_menu_model (GTK_MENU_BUTTON (widget));
      gtk_menu_button_popdown (GTK_MENU_BUTTON (widget));
      if (menu != NULL)
        {
          TestLetters letters;
          test_letters_init (&letters);
          gather_menu (menu, &letters, language);
          ck_assert_msg (letters.clashes->len == 0, "%s, menu:%s", language, letters.clashes->str);
          (*n_menus)++;
          test_letters_clear (&letters);
        }
    }
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL; child = gtk_widget_get_next_sibling (child))
    check_menus (child, language, n_menus);
}

START_TEST (in_the_menus)
{
  g_autoptr (EmApplication) application = test_application_in (test_languages[_i]);
  g_autoptr (EmDocument) document = test_demo (NULL);
  EmWindow *window = test_window (application, document);
  int n_menus = 0;

  check_menus (GTK_WIDGET (window), test_languages[_i], &n_menus);
  ck_assert_int_ge (n_menus, 2);
  test_act (window, "win.paper");
  test_settle (100);
  check_menus (GTK_WIDGET (window), test_languages[_i], &n_menus);
  ck_assert_int_ge (n_menus, 4);
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

/* The check itself: two labels that ask for one letter are told. */
START_TEST (a_clash_is_found)
{
  TestLetters letters;
  GtkWidget *window, *box;

  gtk_init ();
  window = gtk_window_new ();
  box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  gtk_box_append (GTK_BOX (box), gtk_button_new_with_mnemonic ("_Save"));
  gtk_box_append (GTK_BOX (box), gtk_label_new_with_mnemonic ("S_ize"));
  gtk_box_append (GTK_BOX (box), gtk_label_new_with_mnemonic ("Gro_oveS"));
  gtk_window_set_child (GTK_WINDOW (window), box);
  gtk_window_present (GTK_WINDOW (window));
  test_settle (100);
  test_letters_init (&letters);
  test_gather_letters (window, &letters);
  ck_assert_int_eq (letters.n, 3);
  ck_assert_uint_eq (letters.clashes->len, 0);
  gtk_box_append (GTK_BOX (box), gtk_label_new_with_mnemonic ("_sides"));
  test_settle (50);
  test_gather_letters (gtk_widget_get_last_child (box), &letters);
  ck_assert_uint_gt (letters.clashes->len, 0);
  test_letters_clear (&letters);
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

int
main (void)
{
  TCase *tcase = tcase_create ("mnemonic");

  tcase_add_test (tcase, a_clash_is_found);
  tcase_add_loop_test (tcase, the_language_is_the_one_asked_for, 0, TEST_LANGUAGES);
  tcase_add_loop_test (tcase, in_the_main_window, 0, TEST_LANGUAGES);
  tcase_add_loop_test (tcase, in_the_other_windows, 0, TEST_LANGUAGES);
  tcase_add_loop_test (tcase, in_the_menus, 0, TEST_LANGUAGES);
  return test_run ("mnemonic", tcase, 60);
}
