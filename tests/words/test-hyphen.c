/* test-hyphen: German compounds part at their joints, and nothing else does.
 *
 * Expected partings: by the rules of German spelling for compounds, worked by hand from the words' members.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-words.h"

#include "../core/em-test-main.h"

static char *
part (const char *language, const char *text)
{
  char *parted;

  em_words_push (language);
  parted = em_words_hyphenate (text);
  em_words_pop ();
  if (parted == NULL)
    return g_strdup (text);

  g_auto (GStrv) pieces = g_strsplit (parted, "\302\255", -1);
  g_free (parted);
  return g_strjoinv ("|", pieces);
}

START_TEST (test_compounds_part)
{
  static const struct { const char *word, *expected; } rows[] = {
    { "Wärmeeinbringung", "Wärme|einbringung" },
    { "Sicherheitsdatenblätter", "Sicherheits|daten|blätter" },
    { "Pulsspitzenleistung", "Puls|spitzen|leistung" },
    { "Bearbeitungszugabe", "Bearbeitungs|zugabe" },
    { "Öffnungsdurchmesser", "Öffnungs|durchmesser" },
    { "Korrosionsbeständig", "Korrosions|beständig" },
    { "Farbeindringprüfung, dann", "Farbeindring|prüfung, dann" },
    /* Short, or a name of no known members: whole. */
    { "Prüfung", "Prüfung" }, { "Zeitzuschlag", "Zeit|zuschlag" }, { "vorgeschlagen", "vorgeschlagen" }, { "Auftragsnummer", "Auftrags|nummer" }, { "", "" },
    { "Leistungen", "Leistungen" }, { "H13-Schweißdrahtrolle 0,5", "H13-Schweißdrahtrolle 0,5" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *text = part ("de", rows[i].word);

      ck_assert_msg (g_str_equal (text, rows[i].expected), "%s: “%s”", rows[i].word, text);
    }
}
END_TEST

START_TEST (test_other_languages_stay_whole)
{
  static const char *const languages[] = { "en", "es", "fr" };

  for (gsize i = 0; i < G_N_ELEMENTS (languages); i++)
    {
      g_autofree char *text = part (languages[i], "Wärmeeinbringung");

      ck_assert_str_eq (text, "Wärmeeinbringung");
    }
}
END_TEST

EM_TEST_MAIN ("hyphen", test_compounds_part, test_other_languages_stay_whole)
