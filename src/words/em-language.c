/* em-language: the language table and the switch between languages.
 *
 * gettext picks a catalog by the environment's LANGUAGE whenever the locale of LC_MESSAGES
 * is not plain "C". A push sets both and tells gettext that they changed.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-language.h"

#include "em-words.h"

#include <libintl.h>
#include <locale.h>
#include <string.h>

#define NBSP        "\302\240"       /* U+00A0 */
#define NARROW_NBSP "\342\200\257"   /* U+202F */

static const EmLanguage languages[] =
{
  { "en", '.', ",", 4, "",
    { "Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec" }, "d m y" },
  { "de", ',', ".", 4, NBSP, { NULL }, "d.m.y" },
  { "es", ',', ".", 5, NBSP,
    { "ene", "feb", "mar", "abr", "may", "jun", "jul", "ago", "sept", "oct", "nov", "dic" }, "d m y" },
  { "fr", ',', NARROW_NBSP, 4, NARROW_NBSP,
    { "janv.", "févr.", "mars", "avr.", "mai", "juin", "juil.", "août", "sept.", "oct.", "nov.", "déc." }, "d m y" },
};

/* What a pop restores. */
typedef struct
{
  const EmLanguage *language;      /* NULL: the program's */
  char             *environment;   /* LANGUAGE; NULL: unset */
  char             *locale;        /* of LC_MESSAGES */
} Saved;

static GQueue stack = G_QUEUE_INIT;
static const EmLanguage *current;  /* NULL: the program's */

/* GNU gettext's own switch: a changed number makes it look catalogs up afresh. */
extern int _nl_msg_cat_cntr;

static const EmLanguage *
find (const char *code)
{
  for (gsize i = 0; i < G_N_ELEMENTS (languages); i++)
    if (strncmp (languages[i].code, code, 2) == 0 && !g_ascii_isalpha (code[2]))
      return &languages[i];
  return NULL;
}

static const EmLanguage *
find_program (void)
{
  const char *const *names = g_get_language_names_with_category ("LC_MESSAGES");

  for (int i = 0; names[i] != NULL; i++)
    if (find (names[i]) != NULL)
      return find (names[i]);
  return &languages[0];
}

const EmLanguage *
em_language_get (void)
{
  return current != NULL ? current : find_program ();
}

void
em_language_append_grouped (const EmLanguage *language, GString *out_text, const char *digits, gsize n_digits)
{
  gboolean is_parted = n_digits >= (gsize) language->group_digits;

  for (gsize i = 0; i < n_digits; i++)
    {
      if (is_parted && i > 0 && (n_digits - i) % 3 == 0)
        g_string_append (out_text, language->group_mark);
      g_string_append_c (out_text, digits[i]);
    }
}

/* "C" alone keeps gettext from translating at all. Every glibc has C.UTF-8 built in or
 * installed; where it is missing the texts stay English. */
static void
leave_plain_c (void)
{
  const char *locale = setlocale (LC_MESSAGES, NULL);

  if (locale == NULL || strcmp (locale, "C") == 0 || strcmp (locale, "POSIX") == 0)
    setlocale (LC_MESSAGES, "C.UTF-8");
}

void
em_words_init (const char *locale_dir)
{
  /* A variable that is there already is replaced in place by a later push; a new one would move the whole environment
   * while other threads may be reading it. Empty means unset to gettext and GLib alike. */
  g_setenv ("LANGUAGE", "", FALSE);
  bindtextdomain (GETTEXT_PACKAGE, locale_dir);
  bind_textdomain_codeset (GETTEXT_PACKAGE, "UTF-8");
  textdomain (GETTEXT_PACKAGE);
}

const char *
em_words_language (void)
{
  return em_language_get ()->code;
}

void
em_words_push (const char *language)
{
  Saved *saved = g_new0 (Saved, 1);
  const EmLanguage *wanted = language != NULL ? find (language) : NULL;

  saved->language = current;
  saved->environment = g_strdup (g_getenv ("LANGUAGE"));
  saved->locale = g_strdup (setlocale (LC_MESSAGES, NULL));
  g_queue_push_tail (&stack, saved);
  if (wanted == NULL)
    return;
  current = wanted;
  g_setenv ("LANGUAGE", wanted->code, TRUE);
  leave_plain_c ();
  _nl_msg_cat_cntr++;
}

void
em_words_pop (void)
{
  Saved *saved = g_queue_pop_tail (&stack);

  g_return_if_fail (saved != NULL);
  current = saved->language;
  if (saved->environment != NULL)
    g_setenv ("LANGUAGE", saved->environment, TRUE);
  else
    g_unsetenv ("LANGUAGE");
  setlocale (LC_MESSAGES, saved->locale);
  _nl_msg_cat_cntr++;
  g_free (saved->environment);
  g_free (saved->locale);
  g_free (saved);
}

const char *
em_words (const char *text)
{
  /* gettext ("") would be the catalog's header. */
  return text == NULL || text[0] == '\0' ? "" : dgettext (GETTEXT_PACKAGE, text);
}
