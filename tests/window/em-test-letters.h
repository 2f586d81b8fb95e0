/* em-test-letters: the letters of the mnemonics on the screen, in every language.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-test-window.h"

#include "em-place.h"
#include "em-words.h"

#include <locale.h>

static const char *const test_languages[] = { "en", "de", "es", "fr" };
enum { TEST_LANGUAGES = G_N_ELEMENTS (test_languages) };

typedef struct
{
  GHashTable *taken;     /* lower-case letter (as a number): text */
  GString    *clashes;
  int         n;
} TestLetters;

static int test_n_letters;   /* over all states of a test */

static inline void
test_letters_init (TestLetters *letters)
{
  letters->taken = g_hash_table_new_full (NULL, NULL, NULL, g_free);
  letters->clashes = g_string_new (NULL);
  letters->n = 0;
}

static inline void
test_letters_clear (TestLetters *letters)
{
  g_hash_table_unref (letters->taken);
  g_string_free (letters->clashes, TRUE);
}

static inline void
test_take_letter (TestLetters *letters, guint letter, const char *text)
{
  const char *other = g_hash_table_lookup (letters->taken, GUINT_TO_POINTER (letter));

  letters->n++;
  if (other != NULL)
    g_string_append_printf (letters->clashes, " %c: “%s”, “%s”;", (int) letter, other, text);
  else
    g_hash_table_insert (letters->taken, GUINT_TO_POINTER (letter), g_strdup (text));
}

/* Labels that are seen; those of buttons are labels too. */
static inline void
test_gather_letters (GtkWidget *widget, TestLetters *letters)
{
  if (!gtk_widget_get_mapped (widget))
    return;
  if (GTK_IS_LABEL (widget))
    {
      guint key = gtk_label_get_mnemonic_keyval (GTK_LABEL (widget));
      if (key != 0 && key != GDK_KEY_VoidSymbol && gtk_widget_is_sensitive (widget))
        test_take_letter (letters, gdk_keyval_to_lower (key), gtk_label_get_text (GTK_LABEL (widget)));
    }
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL; child = gtk_widget_get_next_sibling (child))
    test_gather_letters (child, letters);
}

static inline void
test_check_letters (gpointer window, const char *language, const char *where)
{
  TestLetters letters;

  test_letters_init (&letters);
  test_gather_letters (GTK_WIDGET (window), &letters);
  ck_assert_msg (letters.clashes->len == 0, "%s, %s:%s", language, where, letters.clashes->str);
  test_n_letters += letters.n;
  test_letters_clear (&letters);
}

static inline void
test_open_folds (GtkWidget *widget)
{
  if (GTK_IS_EXPANDER (widget))
    gtk_expander_set_expanded (GTK_EXPANDER (widget), TRUE);
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL; child = gtk_widget_get_next_sibling (child))
    test_open_folds (child);
}

static inline EmApplication *
test_application_in (const char *language)
{
  g_setenv ("LANGUAGE", language, TRUE);
  setlocale (LC_ALL, "");
  em_words_init (em_place_locale_dir ());
  return test_application ();
}

