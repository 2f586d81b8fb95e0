/* test-register: past quotes found by what is in them, read once, priced by the rates they belong to.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-book-file.h"
#include "em-cost.h"
#include "em-register.h"
#include "em-test-file.h"

static char *folder, *shop, *sub, *hidden;
static EmRates rates;
static EmCatalogue catalogue;

static void
make_folder (void)
{
  const char *data = g_getenv ("ESTIMEND_TEST_DATA");
  g_autofree char *book = g_build_filename (data, "rates.xml", NULL), *metals = g_build_filename (data, "metals.xml", NULL);

  folder = em_test_folder_new ();
  shop = g_build_filename (folder, "quotes", NULL);
  sub = g_build_filename (shop, "2025", NULL);
  hidden = g_build_filename (shop, ".old", NULL);
  ck_assert (g_mkdir_with_parents (sub, 0700) == 0 && g_mkdir (hidden, 0700) == 0);
  g_setenv ("ESTIMEND_STATE_DIR", folder, TRUE);
  ck_assert (em_rates_load (book, &rates, NULL) && em_catalogue_load (metals, &catalogue, NULL));
}

static void
drop_folder (void)
{
  em_test_folder_remove (sub);
  em_test_folder_remove (hidden);
  em_test_folder_remove (shop);
  em_test_folder_remove (folder);
  g_free (hidden);
  g_free (sub);
  g_free (shop);
  g_free (folder);
  em_rates_clear (&rates);
  em_catalogue_clear (&catalogue);
}

/* One rib, and an extra of a thousand for each unit of size, so that prices differ. */
static void
put_quote (const char *name, const char *number, const char *date, const char *customer, const char *notes, EmState state, int size)
{
  g_autofree char *path = g_build_filename (shop, name, NULL);
  EmExtra extra = { em_text_dup ("EDM"), 100000 * size, false };
  EmQuoteFile file;

  em_quote_file_init (&file);
  em_quote_set_text (&file.quote, EM_QUOTE_NUMBER, number);
  em_quote_set_text (&file.quote, EM_QUOTE_DATE, date);
  em_quote_set_text (&file.quote, EM_QUOTE_CUSTOMER, customer);
  em_quote_set_text (&file.quote, EM_QUOTE_NOTES, notes);
  file.quote.state = state;
  ck_assert (em_quote_add_extra_take (&file.quote, &extra) == EM_OK);
  if (state != EM_STATE_DRAFT)
    {
      file.sent_rates = g_new0 (EmRates, 1);
      file.sent_catalogue = g_new0 (EmCatalogue, 1);
      ck_assert (em_rates_copy (&rates, file.sent_rates) == EM_OK);
      ck_assert (em_catalogue_copy (&catalogue, file.sent_catalogue) == EM_OK);
      file.quote.has_sent_rates = true;
    }
  ck_assert (em_quote_file_save (path, &file, NULL));
  em_quote_file_clear (&file);
}

static void
put_shop (void)
{
  g_autofree char *damaged = g_build_filename (shop, "damaged.estimend", NULL), *other = g_build_filename (shop, "letter.txt", NULL);
  g_autofree char *round = g_build_filename (sub, "round", NULL);

  put_quote ("a.estimend", "Q-101", "2026-01-10", "Müller Spritzguß", "Fill pit at gate", EM_STATE_WON, 1);
  put_quote ("b.estimend", "Q-102", "2026-02-10", "Éclair Moulds", "Rib worn\nparting line", EM_STATE_LOST, 3);
  put_quote ("c.estimend", "Q-103", "2026-02-11", "Mueller & Sons", NULL, EM_STATE_DRAFT, 5);
  put_quote ("2025/d.estimend", "Q-099", "2025-12-01", "Éclair Moulds", "Shut-off", EM_STATE_LAPSED, 4);
  put_quote (".old/e.estimend", "Q-001", "2020-01-01", "Nobody", NULL, EM_STATE_WON, 1);
  ck_assert (g_file_set_contents (damaged, "<quote", -1, NULL) && g_file_set_contents (other, "hello", -1, NULL));
  ck_assert (symlink ("..", round) == 0);
}

static EmRegister *
scan (EmRegister *old)
{
  g_autoptr (GError) error = NULL;
  EmRegister *reg = em_register_scan (shop, old, &rates, &catalogue, NULL, NULL, NULL, &error);

  ck_assert_msg (reg != NULL, "%s", error != NULL ? error->message : "");
  return reg;
}

/* Numbers of the entries, in order. */
static char *
list (const EmRegister *reg, const EmRegisterQuery *query)
{
  g_autoptr (GArray) found = em_register_search (reg, query);
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < found->len; i++)
    {
      const EmRegisterEntry *entry = em_register_get_entry (reg, g_array_index (found, guint, i));
      g_string_append_printf (text, "%s%s", i > 0 ? " " : "", entry->problem != NULL ? entry->path : entry->text[EM_ENTRY_NUMBER]);
    }
  return g_string_free (text, FALSE);
}

static const struct { const char *name; EmRegisterQuery query; const char *numbers; } queries[] =
{
  { "everything, latest first", { 0 }, "Q-103 Q-102 Q-101 Q-099 damaged.estimend" },
  { "number", { .text = "q-102" }, "Q-102" },
  { "part of a number", { .text = "10" }, "Q-103 Q-102 Q-101" },
  { "accents left out", { .text = "muller" }, "Q-101" },
  { "accents written", { .text = "MÜLLER" }, "Q-101" },
  { "sharp s", { .text = "spritzguss" }, "Q-101" },
  { "two words, in any order", { .text = " moulds  eclair" }, "Q-102 Q-099" },
  { "two words, one missing", { .text = "eclair pit" }, "" },
  { "customer's words", { .text = "parting" }, "Q-102" },
  { "no word across two texts", { .text = "mouldsrib" }, "" },
  { "file name", { .text = "damaged" }, "damaged.estimend" },
  { "state", { .states = 1u << EM_STATE_WON }, "Q-101" },
  { "states", { .states = 1u << EM_STATE_LOST | 1u << EM_STATE_LAPSED }, "Q-102 Q-099" },
  { "from", { .date_from = "2026-02-10" }, "Q-103 Q-102" },
  { "from and to", { .date_from = "2026-01-01", .date_to = "2026-02-10" }, "Q-102 Q-101" },
  { "words and state", { .text = "eclair", .states = 1u << EM_STATE_LAPSED }, "Q-099" },
};

START_TEST (search)
{
  put_shop ();
  g_autoptr (EmRegister) reg = scan (NULL);
  g_autofree char *numbers = list (reg, &queries[_i].query);
  ck_assert_msg (g_str_equal (numbers, queries[_i].numbers), "%s: %s", queries[_i].name, numbers);
}
END_TEST

static const EmRegisterEntry *
find_path (const EmRegister *reg, const char *path)
{
  for (guint i = 0; i < em_register_get_length (reg); i++)
    if (g_str_equal (em_register_get_entry (reg, i)->path, path))
      return em_register_get_entry (reg, i);
  ck_abort_msg ("%s is not in the register", path);
  return NULL;
}

START_TEST (entries)
{
  put_shop ();
  g_autoptr (EmRegister) reg = scan (NULL);
  const EmRegisterEntry *won = find_path (reg, "a.estimend"), *damaged = find_path (reg, "damaged.estimend");
  g_autofree char *whole = em_register_dup_path (reg, 3), *expected = g_build_filename (sub, "d.estimend", NULL);

  ck_assert_str_eq (won->text[EM_ENTRY_CUSTOMER], "Müller Spritzguß");
  ck_assert (won->state == EM_STATE_WON && won->has_net && !won->is_partial && won->problem == NULL);
  ck_assert_str_eq (won->currency.code, rates.currency.code);
  ck_assert (damaged->problem != NULL && strstr (damaged->problem, "damaged.estimend") != NULL);
  ck_assert_str_eq (whole, expected);
}
END_TEST

/* What did not change is not read again; what did is. */
START_TEST (reads_only_what_changed)
{
  put_shop ();
  g_autoptr (EmRegister) first = scan (NULL);
  put_quote ("b.estimend", "Q-102", "2026-02-10", "Éclair Moulds", "now otherwise", EM_STATE_WON, 3);
  g_autofree char *gone = g_build_filename (shop, "c.estimend", NULL);
  g_remove (gone);
  g_autoptr (EmRegister) second = scan (first);
  ck_assert_uint_eq (em_register_get_length (second), 4);
  ck_assert (find_path (first, "a.estimend") == find_path (second, "a.estimend"));
  ck_assert (find_path (first, "b.estimend") != find_path (second, "b.estimend"));
  ck_assert (find_path (second, "b.estimend")->state == EM_STATE_WON);
  ck_assert_uint_eq (em_register_get_length (first), 5);   /* a snapshot stays as it was */
}
END_TEST

/* A higher margin prices drafts anew and leaves sent quotes alone. */
START_TEST (rates_of_their_own)
{
  put_shop ();
  g_autoptr (EmRegister) before = scan (NULL);
  rates.margin_ppm += 100000;
  g_autoptr (EmRegister) after = scan (before);
  ck_assert (find_path (before, "a.estimend") == find_path (after, "a.estimend"));
  ck_assert (find_path (before, "c.estimend")->net_minor < find_path (after, "c.estimend")->net_minor);
}
END_TEST

START_TEST (index_is_a_cache)
{
  put_shop ();
  g_autoptr (EmRegister) none = em_register_new (shop), reg = scan (none), cached = em_register_new (shop);
  const EmRegisterQuery all = { 0 };
  g_autofree char *a = list (reg, &all), *b = list (cached, &all);

  ck_assert_uint_eq (em_register_get_length (none), 0);
  ck_assert_str_eq (a, b);
  for (guint i = 0; i < em_register_get_length (reg); i++)
    {
      const EmRegisterEntry *x = em_register_get_entry (reg, i), *y = em_register_get_entry (cached, i);
      for (int k = 0; k < EM_N_ENTRY_TEXT; k++)
        ck_assert_str_eq (x->text[k], y->text[k]);
      ck_assert_str_eq (x->folded, y->folded);
      ck_assert (g_strcmp0 (x->problem, y->problem) == 0 && x->net_minor == y->net_minor && x->state == y->state);
      ck_assert (memcmp (&x->stamp, &y->stamp, sizeof x->stamp) == 0);
    }
  /* And nothing is read again from there. */
  g_autoptr (EmRegister) again = scan (cached);
  ck_assert (find_path (cached, "c.estimend") == find_path (again, "c.estimend"));
}
END_TEST

static char *
index_path (void)
{
  GDir *dir = g_dir_open (folder, 0, NULL);
  const char *name;
  char *path = NULL;

  while ((name = g_dir_read_name (dir)) != NULL)
    if (g_str_has_prefix (name, "register-"))
      path = g_build_filename (folder, name, NULL);
  g_dir_close (dir);
  ck_assert_ptr_nonnull (path);
  return path;
}

/* Cut anywhere or with any byte turned, the index gives entries or none, never a crash; and a scan puts all right. */
START_TEST (damaged_index)
{
  put_shop ();
  g_autoptr (EmRegister) reg = scan (NULL);
  g_autofree char *path = index_path (), *text = NULL;
  gsize length;

  ck_assert (g_file_get_contents (path, &text, &length, NULL));
  for (gsize i = 0; i < length; i += 3)
    {
      g_autofree char *turned = g_memdup2 (text, length);
      turned[i] = (char) ~turned[i];
      ck_assert (g_file_set_contents_full (path, i % 2 == 0 ? turned : text, i % 2 == 0 ? (gssize) length : (gssize) i,
                                           G_FILE_SET_CONTENTS_NONE, 0600, NULL));
      g_autoptr (EmRegister) cached = em_register_new (shop);
      for (guint k = 0; k < em_register_get_length (cached); k++)
        ck_assert (em_register_get_entry (cached, k)->state < EM_N_STATE);
    }
  ck_assert (g_file_set_contents (path, "", 0, NULL));
  g_autoptr (EmRegister) empty = em_register_new (shop), whole = scan (empty);
  ck_assert_uint_eq (em_register_get_length (empty), 0);
  ck_assert_uint_eq (em_register_get_length (whole), 5);
}
END_TEST

/* Won 1, lost 1, lapsed 1: one in three by count. By value as the entries say. */
START_TEST (sums)
{
  put_shop ();
  g_autoptr (EmRegister) reg = scan (NULL);
  g_autoptr (GArray) all = em_register_search (reg, &(EmRegisterQuery) { 0 });
  double won = (double) find_path (reg, "a.estimend")->net_minor, lost = (double) find_path (reg, "b.estimend")->net_minor;
  double lapsed = (double) find_path (reg, "2025/d.estimend")->net_minor;
  EmRegisterSummary sum;

  em_register_sum_up (reg, all, &sum);
  ck_assert (sum.n[EM_STATE_WON] == 1 && sum.n[EM_STATE_LOST] == 1 && sum.n[EM_STATE_LAPSED] == 1 && sum.n[EM_STATE_DRAFT] == 1);
  ck_assert_uint_eq (sum.n_unreadable, 1);
  ck_assert_double_eq_tol (sum.won_ratio, 1.0 / 3.0, 1e-12);
  ck_assert_double_eq_tol (sum.won_value_ratio, won / (won + lost + lapsed), 1e-12);
  ck_assert (won < lost && lost < lapsed);   /* extras of 1, 3 and 4 thousand */
  ck_assert_str_eq (sum.currency.code, rates.currency.code);
  ck_assert (sum.n_timed == 0 && isnan (sum.actual_ratio));
  g_autoptr (GArray) none = em_register_search (reg, &(EmRegisterQuery) { .text = "no such thing" });
  em_register_sum_up (reg, none, &sum);
  ck_assert (isnan (sum.won_ratio) && isnan (sum.won_value_ratio));
}
END_TEST

/* Puts the revision of a quote that revises another; NULL: none. */
static void
put_revision (const char *name, const char *number, const char *revision, const char *revises, EmState state, int size)
{
  g_autofree char *path = g_build_filename (shop, name, NULL);
  EmQuoteFile file;

  put_quote (name, number, "2026-03-01", "Éclair Moulds", NULL, state, size);
  ck_assert (em_quote_file_load (path, &file, NULL));
  em_quote_set_text (&file.quote, EM_QUOTE_REVISION, revision);
  em_quote_set_text (&file.quote, EM_QUOTE_REVISES, revises);
  ck_assert (em_quote_file_save (path, &file, NULL));
  em_quote_file_clear (&file);
}

static void
check_states (guint n_won, guint n_lost, guint n_sent)
{
  g_autoptr (EmRegister) reg = scan (NULL), again = em_register_new (shop);
  g_autoptr (GArray) all = em_register_search (reg, &(EmRegisterQuery) { 0 });
  EmRegisterSummary sum, sum_again;

  em_register_sum_up (reg, all, &sum);
  em_register_sum_up (again, all, &sum_again);
  ck_assert_uint_eq (sum.n[EM_STATE_WON], n_won);
  ck_assert_uint_eq (sum.n[EM_STATE_LOST], n_lost);
  ck_assert_uint_eq (sum.n[EM_STATE_SENT], n_sent);
  ck_assert_uint_eq (sum_again.n[EM_STATE_WON], n_won);
  ck_assert_uint_eq (sum_again.n[EM_STATE_LOST], n_lost);
}

/* A job is won or lost once, however often its quote was revised: the latest decided revision counts. */
START_TEST (a_job_is_won_once)
{
  put_revision ("a.estimend", "Q-7", "A", NULL, EM_STATE_LOST, 1);
  check_states (0, 1, 0);
  put_revision ("b.estimend", "Q-7", "B", "Q-7 A", EM_STATE_SENT, 2);
  check_states (0, 1, 1);
  put_revision ("c.estimend", "Q-7", "C", "Q-7 B", EM_STATE_WON, 3);
  check_states (1, 0, 0);
  /* Another quote, one that revises what lies elsewhere, and two that go round. */
  put_revision ("d.estimend", "Q-8", NULL, NULL, EM_STATE_LOST, 1);
  put_revision ("e.estimend", "Q-9", "B", "Q-9 A", EM_STATE_WON, 1);
  check_states (2, 1, 0);
  put_revision ("f.estimend", "Q-10", "A", "Q-10 A", EM_STATE_WON, 1);
  check_states (3, 1, 0);
  put_revision ("g.estimend", "Q-11", "A", "Q-11 B", EM_STATE_WON, 1);
  put_revision ("h.estimend", "Q-11", "B", "Q-11 A", EM_STATE_WON, 1);
  check_states (3, 1, 0);
}
END_TEST

/* "Q-12" has no date: it lies neither before nor after a day. */
START_TEST (what_has_no_date_lies_between_none)
{
  put_quote ("a.estimend", "Q-12", NULL, "Éclair Moulds", NULL, EM_STATE_DRAFT, 1);
  put_quote ("b.estimend", "Q-13", "2026-03-01", "Éclair Moulds", NULL, EM_STATE_DRAFT, 1);
  g_autoptr (EmRegister) reg = scan (NULL);
  g_autoptr (GArray) all = em_register_search (reg, &(EmRegisterQuery) { 0 });
  g_autoptr (GArray) to = em_register_search (reg, &(EmRegisterQuery) { .date_to = "2026-03-01" });
  g_autoptr (GArray) from = em_register_search (reg, &(EmRegisterQuery) { .date_from = "2026-03-01" });

  ck_assert_uint_eq (all->len, 2);
  ck_assert_uint_eq (to->len, 1);
  ck_assert_uint_eq (from->len, 1);
  ck_assert_str_eq (em_register_get_entry (reg, g_array_index (to, guint, 0))->text[EM_ENTRY_NUMBER], "Q-13");
}
END_TEST

START_TEST (snapshots_of_the_same_are_equal)
{
  put_shop ();
  g_autoptr (EmRegister) first = scan (NULL), again = scan (first);

  ck_assert (em_register_equal (first, again));
  put_quote ("c.estimend", "Q-103", "2026-02-11", "Mueller & Sons", "changed", EM_STATE_DRAFT, 5);
  g_autoptr (EmRegister) changed = scan (again);
  ck_assert (!em_register_equal (again, changed));
  put_quote ("f.estimend", "Q-104", "2026-02-12", "Mueller & Sons", NULL, EM_STATE_DRAFT, 5);
  g_autoptr (EmRegister) longer = scan (changed);
  ck_assert (!em_register_equal (changed, longer));
}
END_TEST

START_TEST (no_folder)
{
  g_autofree char *gone = g_build_filename (folder, "gone", NULL);
  g_autoptr (GError) error = NULL;

  ck_assert_ptr_null (em_register_scan (gone, NULL, &rates, &catalogue, NULL, NULL, NULL, &error));
  ck_assert (g_error_matches (error, EM_FILE_ERROR, EM_FILE_ERROR_READ));
}
END_TEST

START_TEST (cancelled)
{
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  g_autoptr (GError) error = NULL;

  put_shop ();
  g_cancellable_cancel (cancellable);
  ck_assert_ptr_null (em_register_scan (shop, NULL, &rates, &catalogue, NULL, NULL, cancellable, &error));
  ck_assert (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED));
}
END_TEST

typedef struct { GMainLoop *loop; EmRegister *reg; guint n_done, n_files, n_told; GThread *thread; } Awaited;

static void
on_progress (guint n_done, guint n_files, gpointer data)
{
  Awaited *awaited = data;

  awaited->n_done = n_done;
  awaited->n_files = n_files;
  awaited->n_told++;
  awaited->thread = g_thread_self ();
}

static void
on_scanned (GObject *source, GAsyncResult *result, gpointer data)
{
  Awaited *awaited = data;

  (void) source;
  awaited->reg = em_register_scan_finish (result, NULL);
  g_main_loop_quit (awaited->loop);
}

START_TEST (in_a_thread)
{
  Awaited awaited = { .loop = g_main_loop_new (NULL, FALSE) };

  put_shop ();
  em_register_scan_async (shop, NULL, &rates, &catalogue, on_progress, &awaited, NULL, on_scanned, &awaited);
  g_main_loop_run (awaited.loop);
  ck_assert_ptr_nonnull (awaited.reg);
  ck_assert_uint_eq (em_register_get_length (awaited.reg), 5);
  ck_assert (awaited.n_told >= 1 && awaited.n_files == 5 && awaited.n_done <= 5);
  ck_assert (awaited.thread == g_thread_self ());
  em_register_unref (awaited.reg);
  g_main_loop_unref (awaited.loop);
}
END_TEST

int
main (void)
{
  const EmTestRow rows[] =
  {
    EM_TEST_LOOP (search, queries), EM_TEST (entries), EM_TEST (reads_only_what_changed), EM_TEST (rates_of_their_own),
    EM_TEST (index_is_a_cache), EM_TEST (damaged_index), EM_TEST (sums), EM_TEST (a_job_is_won_once),
    EM_TEST (what_has_no_date_lies_between_none), EM_TEST (snapshots_of_the_same_are_equal), EM_TEST (no_folder), EM_TEST (cancelled),
    EM_TEST (in_a_thread),
  };

  return em_test_run_in ("register", rows, (int) G_N_ELEMENTS (rows), make_folder, drop_folder);
}
