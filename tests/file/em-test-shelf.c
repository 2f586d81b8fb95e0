/* em-test-shelf: every kind of file the program writes, each in two states, old and new.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-test-shelf.h"

#include "em-book-file.h"
#include "em-recovery.h"
#include "em-register-private.h"
#include "em-save.h"
#include "em-test-quote.h"

#include <string.h>

static struct
{
  char        *folder;
  GBytes      *quote[2];
  EmRates      rates[2];
  EmCatalogue  catalogue[2];
  EmRegister  *index[2];
  EmJournal   *journal;
} shelf;

static char *
data_file (const char *name)
{
  return g_build_filename (g_getenv ("ESTIMEND_TEST_DATA"), name, NULL);
}

/* The new one is longer, so that half of it is not the old one. */
static GBytes *
make_quote (gboolean is_new)
{
  EmQuoteFile file;
  GBytes *bytes;

  em_quote_file_init (&file);
  em_test_quote_full (&file.quote);
  g_assert_true (em_quote_set_text (&file.quote, EM_QUOTE_NUMBER, is_new ? "new" : "old") == EM_OK);
  if (!is_new)
    em_quote_remove (&file.quote, 0, NULL);
  bytes = em_quote_file_write (&file, NULL);
  em_quote_file_clear (&file);
  g_assert_nonnull (bytes);
  return bytes;
}

static EmRegister *
make_index (gboolean is_new)
{
  const EmFileStamp stamp = { 1, 2, 3, 4 };
  EmRegister *reg = em_register_new_empty (shelf.folder);

  for (int i = 0; i < (is_new ? 40 : 20); i++)
    {
      EmRegisterEntry *entry = em_register_entry_new (is_new ? "new.estimend" : "old.estimend", &stamp);

      for (int text = 0; text < EM_N_ENTRY_TEXT; text++)
        entry->text[text] = g_strdup ("");
      entry->folded = g_strdup ("");
      g_ptr_array_add (reg->entries, entry);
    }
  return reg;
}

static void
fill (void)
{
  g_autofree char *rates = data_file ("rates.xml"), *metals = data_file ("metals.xml");

  for (int i = 0; i < 2; i++)
    {
      shelf.quote[i] = make_quote (i == 1);
      g_assert_true (em_rates_load (rates, &shelf.rates[i], NULL));
      g_assert_true (em_catalogue_load (metals, &shelf.catalogue[i], NULL));
      shelf.rates[i].validity_days = i == 1 ? 45 : 30;
      shelf.catalogue[i].base[0].is_retired = i == 1;
      shelf.index[i] = make_index (i == 1);
    }
}

void
em_test_shelf_open (const char *folder)
{
  g_free (shelf.folder);
  shelf.folder = g_strdup (folder);
  g_setenv ("ESTIMEND_STATE_DIR", folder, TRUE);
  g_clear_pointer (&shelf.journal, em_journal_unref);
  shelf.journal = em_journal_new ();
  if (shelf.quote[0] == NULL)
    fill ();
  for (int i = 0; i < 2; i++)
    {
      em_register_unref (shelf.index[i]);
      shelf.index[i] = make_index (i == 1);
    }
}

void
em_test_shelf_close (void)
{
  for (int i = 0; i < 2; i++)
    {
      g_bytes_unref (shelf.quote[i]);
      em_rates_clear (&shelf.rates[i]);
      em_catalogue_clear (&shelf.catalogue[i]);
      em_register_unref (shelf.index[i]);
    }
  em_journal_unref (shelf.journal);
  g_free (shelf.folder);
  memset (&shelf, 0, sizeof shelf);
}

/* ---- the kinds ---- */

static char *
in_shelf (const char *name)
{
  return g_build_filename (shelf.folder, name, NULL);
}

static gboolean
write_quote (gboolean is_new, GError **error)
{
  g_autofree char *path = in_shelf ("q.estimend");

  return em_save_bytes (path, shelf.quote[is_new], error);
}

static char *
quote_path (void)
{
  return in_shelf ("q.estimend");
}

static gboolean
write_rates (gboolean is_new, GError **error)
{
  g_autofree char *path = in_shelf ("rates.xml");

  return em_rates_save (path, &shelf.rates[is_new], error);
}

static char *
rates_path (void)
{
  return in_shelf ("rates.xml");
}

static gboolean
write_catalogue (gboolean is_new, GError **error)
{
  g_autofree char *path = in_shelf ("metals.xml");

  return em_catalogue_save (path, &shelf.catalogue[is_new], FALSE, error);
}

static char *
catalogue_path (void)
{
  return in_shelf ("metals.xml");
}

static gboolean
write_index (gboolean is_new, GError **error)
{
  return em_register_index_write (shelf.index[is_new], error);
}

/* The one file in a folder of the shelf that begins and ends so. */
static char *
find_file (const char *folder, const char *prefix, const char *suffix)
{
  GDir *dir = g_dir_open (folder, 0, NULL);
  const char *name;
  char *path = NULL;

  while (dir != NULL && path == NULL && (name = g_dir_read_name (dir)) != NULL)
    if (g_str_has_prefix (name, prefix) && g_str_has_suffix (name, suffix))
      path = g_build_filename (folder, name, NULL);
  g_clear_pointer (&dir, g_dir_close);
  return path != NULL ? path : g_build_filename (folder, "none", NULL);
}

static char *
index_path (void)
{
  return find_file (shelf.folder, "register-", "");
}

static gboolean
write_journal (gboolean is_new, GError **error)
{
  return em_journal_keep (shelf.journal, em_journal_ticket (shelf.journal), shelf.quote[is_new], NULL, NULL, "a title", error);
}

static char *
journal_path (void)
{
  g_autofree char *recovery = in_shelf ("recovery");

  return find_file (recovery, "", ".journal");
}

const EmTestFile em_test_files[EM_TEST_N_FILES] =
{
  [EM_TEST_QUOTE_FILE] = { "quote", write_quote, quote_path },
  [EM_TEST_RATES_FILE] = { "rate book", write_rates, rates_path },
  [EM_TEST_CATALOGUE_FILE] = { "catalogue", write_catalogue, catalogue_path },
  [EM_TEST_INDEX_FILE] = { "register's index", write_index, index_path },
  [EM_TEST_JOURNAL_FILE] = { "journal", write_journal, journal_path },
};

char *
em_test_file_dup_content (const EmTestFile *file)
{
  g_autofree char *path = file->dup_path (), *content = NULL;
  gsize size;

  if (!g_file_get_contents (path, &content, &size, NULL))
    return NULL;
  /* Binary ones as text, to be compared as one. */
  for (gsize i = 0; i < size; i++)
    if (content[i] == '\0')
      content[i] = '0';
  char *kept = strstr (content, " kept=\"");
  if (file == &em_test_files[EM_TEST_JOURNAL_FILE] && kept != NULL)
    for (kept += strlen (" kept=\""); *kept != '"' && *kept != '\0'; kept++)
      *kept = '0';
  return g_steal_pointer (&content);
}
