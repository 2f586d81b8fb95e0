/* test-document: every edit of an open quote can be gone back on, to the byte, and is priced as the whole is.
 *
 * Expectations follow from what a step back means: the same bytes as before. The price after
 * an edit is held against pricing the whole quote anew.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-test-window.h"

#include "em-history.h"

#include <glib/gstdio.h>

typedef gboolean (*Edit) (EmDocument *document);

static gboolean edit_text (EmDocument *d) { return em_document_set_text (d, EM_QUOTE_CUSTOMER, "Another customer"); }
static gboolean edit_clear_text (EmDocument *d) { return em_document_set_text (d, EM_QUOTE_CUSTOMER, NULL); }
static gboolean edit_notes (EmDocument *d) { return em_document_set_notes (d, "Quite other words, 3 mm"); }
static gboolean edit_tools (EmDocument *d) { return em_document_set_number (d, EM_QUOTE_TOOLS, 7); }
static gboolean edit_hardness (EmDocument *d) { return em_document_set_number (d, EM_QUOTE_HARDNESS, 51.5); }
static gboolean edit_section (EmDocument *d) { return em_document_set_number (d, EM_QUOTE_SECTION, 33.25); }
static gboolean edit_margin (EmDocument *d) { return em_document_set_number (d, EM_QUOTE_MARGIN, 123456); }
static gboolean edit_contingency (EmDocument *d) { return em_document_set_number (d, EM_QUOTE_CONTINGENCY, 71000); }
static gboolean edit_rush (EmDocument *d) { return em_document_set_number (d, EM_QUOTE_RUSH, 150000); }
static gboolean edit_discount (EmDocument *d) { return em_document_set_number (d, EM_QUOTE_DISCOUNT, 30000); }
static gboolean edit_learning (EmDocument *d) { return em_document_set_number (d, EM_QUOTE_LEARNING, 910000); }
static gboolean edit_validity (EmDocument *d) { return em_document_set_number (d, EM_QUOTE_VALIDITY, 11); }
static gboolean edit_quote_finish (EmDocument *d) { return em_document_set_number (d, EM_QUOTE_FEATURE_FINISH, em_document_get_quote (d)->finish == EM_FINISH_SHOP ? EM_FINISH_CUSTOMER : EM_FINISH_SHOP); }
static gboolean edit_preheat (EmDocument *d) { return em_document_set_number (d, EM_QUOTE_PREHEAT, em_document_get_quote (d)->preheat == EM_YES ? EM_NO : EM_YES); }
static gboolean edit_units (EmDocument *d) { return em_document_set_units (d, em_document_get_units (d) == EM_UNITS_INCH ? EM_UNITS_METRIC : EM_UNITS_INCH); }
static gboolean edit_state (EmDocument *d) { return em_document_set_state (d, EM_STATE_SENT); }
static gboolean edit_breaks (EmDocument *d) { return em_document_set_breaks (d, (int32_t[]) { 3, 9 }, 2); }
static gboolean edit_add_extra (EmDocument *d) { return em_document_add_extra (d, "Texture bought out", 123400, TRUE); }
static gboolean edit_value (EmDocument *d) { return em_document_set_value (d, 0, 0, EM_LIKELY, 17.25); }
static gboolean edit_clear_value (EmDocument *d) { return em_document_set_value (d, 0, 0, EM_LIKELY, EM_ABSENT); }
static gboolean edit_low (EmDocument *d) { return em_document_set_value (d, 0, 0, EM_LOW, 0.125); }
static gboolean edit_high (EmDocument *d) { return em_document_set_value (d, 0, 0, EM_HIGH, 44.5); }
static gboolean edit_count (EmDocument *d) { return em_document_set_feature_number (d, 0, EM_FEATURE_COUNT, 13); }
static gboolean edit_stock (EmDocument *d) { return em_document_set_feature_number (d, 0, EM_FEATURE_STOCK, 0.31); }
static gboolean edit_clearance (EmDocument *d) { return em_document_set_feature_number (d, 0, EM_FEATURE_CLEARANCE, 9.5); }
static gboolean edit_slot (EmDocument *d) { return em_document_set_feature_number (d, 0, EM_FEATURE_SLOT_WIDTH, 90); }
static gboolean edit_slot_depth (EmDocument *d) { return em_document_set_feature_number (d, 0, EM_FEATURE_SLOT_DEPTH, 1); }
static gboolean edit_setting (EmDocument *d) { return em_document_set_feature_number (d, 0, EM_FEATURE_SETTING, 4); }
static gboolean edit_safety (EmDocument *d) { return em_document_set_feature_number (d, 0, EM_FEATURE_SAFETY_LAYERS, 3); }
static gboolean edit_wire (EmDocument *d) { return em_document_set_feature_number (d, 0, EM_FEATURE_WIRE, 0.4999); }
static gboolean edit_near (EmDocument *d) { return em_document_set_feature_number (d, 0, EM_FEATURE_NEAR, EM_NEAR_THREAD); }
static gboolean edit_access (EmDocument *d) { return em_document_set_feature_number (d, 0, EM_FEATURE_ACCESS, em_document_get_quote (d)->feature[0].access == EM_ACCESS_DEEP ? EM_ACCESS_OPEN : EM_ACCESS_DEEP); }
static gboolean edit_melt_out (EmDocument *d) { return em_document_set_feature_number (d, 0, EM_FEATURE_MELT_OUT, em_document_get_quote (d)->feature[0].melt_out == EM_NO ? EM_YES : EM_NO); }
static gboolean edit_cap (EmDocument *d) { return em_document_set_feature_number (d, 0, EM_FEATURE_CAP, em_document_get_quote (d)->feature[0].cap == EM_NO ? EM_YES : EM_NO); }
static gboolean edit_finish (EmDocument *d) { return em_document_set_feature_number (d, 0, EM_FEATURE_FINISH, em_document_get_quote (d)->feature[0].finish == EM_FINISH_SHOP ? EM_FINISH_CUSTOMER : EM_FINISH_SHOP); }
static gboolean edit_label (EmDocument *d) { return em_document_set_feature_text (d, 0, EM_FEATURE_LABEL, "Renamed"); }
static gboolean edit_remark (EmDocument *d) { return em_document_set_feature_text (d, 0, EM_FEATURE_REMARK, "Mind the vent"); }
static gboolean edit_override (EmDocument *d) { return em_document_set_override (d, 0, TRUE, 98765); }
static gboolean edit_actual (EmDocument *d) { return em_document_set_actual (d, 0, &(EmActual) { 61, 600, 812.5 }); }
static gboolean edit_insert (EmDocument *d) { return em_document_insert (d, 1, em_kinds[0]); }
static gboolean edit_duplicate (EmDocument *d) { return em_document_duplicate (d, 0); }
static gboolean edit_remove (EmDocument *d) { return em_document_remove (d, 0); }
static gboolean edit_move (EmDocument *d) { return em_document_move (d, 0, em_document_get_quote (d)->n_features - 1); }

static gboolean
edit_paste (EmDocument *d)
{
  g_autofree char *xml = em_document_copy_xml (d, 0);

  return em_document_paste_xml (d, 1, xml, NULL);
}

static gboolean
edit_reading (EmDocument *d)
{
  EmReading reading = { 1.5, 3, 1.25, 1.75, TRUE };

  return em_document_set_reading (d, 0, 0, &reading);
}

static const struct { const char *name; Edit edit; } edits[] =
{
  { "text", edit_text }, { "clear text", edit_clear_text }, { "notes", edit_notes }, { "tools", edit_tools },
  { "hardness", edit_hardness }, { "section", edit_section }, { "margin", edit_margin }, { "contingency", edit_contingency },
  { "rush", edit_rush }, { "discount", edit_discount }, { "learning", edit_learning }, { "validity", edit_validity },
  { "finish of all", edit_quote_finish }, { "preheat", edit_preheat }, { "units", edit_units }, { "state", edit_state },
  { "breaks", edit_breaks }, { "add extra", edit_add_extra }, { "value", edit_value }, { "clear value", edit_clear_value },
  { "low", edit_low }, { "high", edit_high }, { "count", edit_count }, { "stock", edit_stock }, { "clearance", edit_clearance },
  { "slot", edit_slot }, { "slot depth", edit_slot_depth }, { "setting", edit_setting }, { "safety", edit_safety },
  { "wire", edit_wire }, { "near", edit_near }, { "access", edit_access }, { "melt out", edit_melt_out }, { "cap", edit_cap },
  { "finish", edit_finish }, { "label", edit_label }, { "remark", edit_remark }, { "override", edit_override },
  { "actual", edit_actual }, { "insert", edit_insert }, { "duplicate", edit_duplicate }, { "remove", edit_remove },
  { "move", edit_move }, { "paste", edit_paste }, { "reading", edit_reading },
};

static void
assert_priced_as_whole (EmDocument *document, const char *after)
{
  EmCost whole;
  const EmCost *live = em_document_get_cost (document);

  em_cost_init (&whole);
  EmStatus status = em_cost_quote (&whole, em_document_get_quote (document), em_document_get_rates (document),
                                   em_document_get_catalogue (document), NULL, NULL);
  ck_assert_int_eq (status, em_document_get_status (document, NULL));
  if (status == EM_OK)
    {
      ck_assert_msg (whole.totals.total_minor == live->totals.total_minor, "after %s: live total %lld, whole %lld", after,
                     (long long) live->totals.total_minor, (long long) whole.totals.total_minor);
      ck_assert_int_eq (whole.n_faults, live->n_faults);
    }
  em_cost_clear (&whole);
}

START_TEST (every_edit_goes_back_and_forth)
{
  g_autoptr (EmDocument) document = test_demo (NULL);
  g_autofree char *before = test_bytes (document);

  ck_assert (edits[_i].edit (document));
  g_autofree char *after = test_bytes (document);
  ck_assert_msg (!g_str_equal (before, after), "%s changed nothing", edits[_i].name);
  ck_assert (em_document_is_modified (document));
  assert_priced_as_whole (document, edits[_i].name);
  em_document_undo (document);
  g_autofree char *back = test_bytes (document);
  ck_assert_msg (g_str_equal (before, back), "%s not gone back on", edits[_i].name);
  assert_priced_as_whole (document, "undo");
  ck_assert (!em_document_can_undo (document));
  em_document_redo (document);
  g_autofree char *again = test_bytes (document);
  ck_assert_msg (g_str_equal (after, again), "%s not done again", edits[_i].name);
  assert_priced_as_whole (document, "redo");
}
END_TEST

START_TEST (same_value_is_no_edit)
{
  g_autoptr (EmDocument) document = test_demo (NULL);

  ck_assert (edit_tools (document));
  ck_assert (!edit_tools (document));
  ck_assert (edit_label (document));
  ck_assert (!edit_label (document));
}
END_TEST

START_TEST (typing_is_one_step_until_broken)
{
  g_autoptr (EmDocument) document = test_demo (NULL);
  g_autofree char *before = test_bytes (document);

  em_document_set_feature_text (document, 0, EM_FEATURE_LABEL, "s");
  em_document_set_feature_text (document, 0, EM_FEATURE_LABEL, "st");
  em_document_set_feature_text (document, 0, EM_FEATURE_LABEL, "ste");
  em_document_break (document);
  g_autofree char *middle = test_bytes (document);
  em_document_set_feature_text (document, 0, EM_FEATURE_LABEL, "step");
  em_document_set_feature_text (document, 1, EM_FEATURE_LABEL, "other");
  em_document_undo (document);
  em_document_undo (document);
  g_autofree char *one = test_bytes (document);
  ck_assert_str_eq (one, middle);
  em_document_undo (document);
  g_autofree char *start = test_bytes (document);
  ck_assert_str_eq (start, before);
  ck_assert (!em_document_can_undo (document));
}
END_TEST

START_TEST (two_thousand_random_actions_go_back_to_the_start)
{
  g_autoptr (EmDocument) document = test_demo (em_demos[_i].id);
  g_autoptr (GRand) random = g_rand_new_with_seed (2026);
  g_autofree char *before = test_bytes (document);

  for (int i = 0; i < 2000; i++)
    {
      guint which = (guint) g_rand_int_range (random, 0, (gint32) G_N_ELEMENTS (edits) + 6);
      int32_t n = em_document_get_quote (document)->n_features;
      if (which >= G_N_ELEMENTS (edits) + 4)
        em_document_redo (document);
      else if (which >= G_N_ELEMENTS (edits))
        em_document_undo (document);
      else if (n < 2 || n > 12)
        em_document_undo (document);
      else
        edits[which].edit (document);
      if (em_document_get_quote (document)->n_features > 0 && g_rand_int_range (random, 0, 3) == 0)
        em_document_set_value (document, g_rand_int_range (random, 0, em_document_get_quote (document)->n_features), 0, EM_LIKELY,
                               g_rand_double_range (random, -1, 40));
      if (i % 50 == 0)
        assert_priced_as_whole (document, "random actions");
    }
  while (em_document_can_redo (document))
    em_document_redo (document);
  g_autofree char *end = test_bytes (document);
  while (em_document_can_undo (document))
    em_document_undo (document);
  g_autofree char *start = test_bytes (document);
  ck_assert_str_eq (start, before);
  while (em_document_can_redo (document))
    em_document_redo (document);
  g_autofree char *again = test_bytes (document);
  ck_assert_str_eq (again, end);
}
END_TEST

START_TEST (bad_size_keeps_the_last_good_price)
{
  g_autoptr (EmDocument) document = test_demo (NULL);
  gboolean is_stale;
  int64_t good = em_document_get_feature_price (document, 0, &is_stale), total;

  ck_assert (!is_stale);
  ck_assert_int_gt (good, 0);
  total = em_document_get_total (document, &is_stale);
  ck_assert (!is_stale);
  /* A length below nothing can't be. */
  em_document_set_value (document, 0, 0, EM_LIKELY, -3);
  ck_assert_int_eq (em_document_get_feature_price (document, 0, &is_stale), good);
  ck_assert (is_stale);
  ck_assert_int_eq (em_document_get_total (document, &is_stale), total);
  ck_assert (is_stale);
  em_document_undo (document);
  ck_assert_int_eq (em_document_get_total (document, &is_stale), total);
  ck_assert (!is_stale);
}
END_TEST

START_TEST (unreadable_entry_marks_the_price_stale)
{
  g_autoptr (EmDocument) document = test_demo (NULL);
  uint32_t id = em_document_get_quote (document)->feature[0].id;
  gboolean is_stale;

  em_document_set_problem (document, id, "length/0", "Not a dimension");
  em_document_get_feature_price (document, 0, &is_stale);
  ck_assert (is_stale);
  em_document_get_total (document, &is_stale);
  ck_assert (is_stale);
  ck_assert (!em_document_is_modified (document));
  em_document_set_problem (document, id, "length/0", NULL);
  em_document_get_total (document, &is_stale);
  ck_assert (!is_stale);
}
END_TEST

/* Other work above what can be reckoned: the lines and prices of the quote before are not those of this one, so that none of
 * them can be shown beside it or printed; the total stays as it last was, marked. */
START_TEST (what_cannot_be_reckoned_has_no_lines)
{
  g_autoptr (EmDocument) document = test_demo (NULL);
  gboolean is_stale;

  em_document_add_extra (document, "Polishing", 5000, FALSE);
  int64_t total = em_document_get_total (document, &is_stale);
  ck_assert (!is_stale);
  em_document_add_extra (document, "Far too much", G_MAXINT64, FALSE);
  ck_assert_int_ne (em_document_get_status (document, NULL), EM_OK);
  em_document_remove_extra (document, 0);
  em_document_remove (document, 0);
  ck_assert_int_ne (em_document_get_status (document, NULL), EM_OK);
  ck_assert_int_eq (em_document_get_cost (document)->n_lines, 0);
  ck_assert_int_eq (em_document_get_cost (document)->n_features, 0);
  ck_assert_int_eq (em_document_get_total (document, &is_stale), total);
  ck_assert (is_stale);
  for (int i = 0; i < 3; i++)
    em_document_undo (document);
  ck_assert_int_eq (em_document_get_total (document, &is_stale), total);
  ck_assert (!is_stale);
  ck_assert_int_gt (em_document_get_cost (document)->n_lines, 0);
}
END_TEST

START_TEST (problems_go_with_their_feature)
{
  g_autoptr (EmDocument) document = test_demo (NULL);
  uint32_t id = em_document_get_quote (document)->feature[0].id;
  gboolean is_stale;

  em_document_set_problem (document, id, "length/0", "Not a dimension");
  ck_assert_str_eq (em_document_get_problem (document, id, "length/0"), "Not a dimension");
  em_document_remove (document, 0);
  ck_assert_uint_eq (em_document_get_problems (document), 0);
  em_document_get_total (document, &is_stale);
  ck_assert (!is_stale);
}
END_TEST

START_TEST (units_change_no_value)
{
  g_autoptr (EmDocument) document = test_demo (NULL);
  const EmQuote *quote = em_document_get_quote (document);
  g_autoptr (GArray) before = g_array_new (FALSE, FALSE, sizeof (double));

  for (int32_t i = 0; i < quote->n_features; i++)
    g_array_append_vals (before, quote->feature[i].value, EM_FIELD_MAX);
  int64_t total = em_document_get_cost (document)->totals.total_minor;
  for (int times = 0; times < 3; times++)
    edit_units (document);
  quote = em_document_get_quote (document);
  for (int32_t i = 0; i < quote->n_features; i++)
    ck_assert_mem_eq (quote->feature[i].value, &g_array_index (before, double, i * EM_FIELD_MAX), sizeof quote->feature[i].value);
  ck_assert_int_eq (em_document_get_cost (document)->totals.total_minor, total);
}
END_TEST

static void
put_marked_notes (EmQuote *quote, gconstpointer data)
{
  EmMark mark = { .start = 4, .length = 5, .feature_id = quote->feature[0].id, .state = EM_MARK_USED };

  (void) data;
  em_quote_clear_marks (quote);
  em_quote_set_text (quote, EM_QUOTE_NOTES, "One nicke two");
  em_quote_add_mark_take (quote, &mark);
}

/* Bytes worked by hand: "One nicke two", the mark on "nicke", 4 + 5. */
START_TEST (marks_follow_the_words)
{
  static const struct { const char *text; uint32_t start, length; int n; } rows[] =
  {
    { "So: One nicke two", 8, 5, 1 },          /* typed before: 4 further on */
    { "One nicke two more", 4, 5, 1 },         /* typed after */
    { "One nicXke two", 4, 6, 1 },             /* typed within: one longer */
    { "One two", 4, 0, 0 },                    /* taken out */
    { "One ni two", 4, 2, 1 },                 /* its end cut off */
    { "\xc3\xa4One nicke two", 6, 5, 1 },      /* two bytes before */
  };
  g_autoptr (EmDocument) document = test_demo (NULL);

  em_document_edit_quote (document, 0, EM_CHANGE_NOTES, put_marked_notes, NULL);
  em_document_set_notes (document, rows[_i].text);
  const EmQuote *quote = em_document_get_quote (document);
  ck_assert_int_eq (quote->n_marks, rows[_i].n);
  if (rows[_i].n == 1)
    {
      ck_assert_uint_eq (quote->mark[0].start, rows[_i].start);
      ck_assert_uint_eq (quote->mark[0].length, rows[_i].length);
    }
}
END_TEST

typedef struct { guint what; int index, n; } Change;

static void
on_told (EmDocument *document, guint what, int index, Change *change)
{
  (void) document;
  *change = (Change) { what, index, change->n + 1 };
}

static int
count_rejected (EmDocument *document)
{
  const EmQuote *quote = em_document_get_quote (document);
  int n = 0;

  for (int32_t i = 0; i < quote->n_marks; i++)
    n += quote->mark[i].state == EM_MARK_REJECTED;
  return n;
}

/* What the office changes in a feature that came from the customer's words is marked with it, but the other features are not touched: in a
 * long quote each key would wait for them. field 0 has its words; for the clearance a mark has to come. */
START_TEST (a_correction_touches_one_feature)
{
  g_autoptr (EmDocument) document = test_demo ("injection-mold");
  g_autofree char *first = test_bytes (document);
  Change change = { 0 };
  const int n_rejected = count_rejected (document);

  g_signal_connect (document, "changed", G_CALLBACK (on_told), &change);
  ck_assert (_i == 0 ? em_document_set_value (document, 1, 0, EM_LIKELY, 31) : em_document_set_feature_number (document, 1, EM_FEATURE_CLEARANCE, 31));
  ck_assert_int_eq (change.n, 1);
  ck_assert_uint_eq (change.what, EM_CHANGE_FEATURE | EM_CHANGE_MARKS);
  ck_assert_int_eq (change.index, 1);
  ck_assert_int_eq (count_rejected (document), n_rejected + 1);
  ck_assert (_i == 0 ? em_document_set_value (document, 1, 0, EM_LIKELY, 314) : em_document_set_feature_number (document, 1, EM_FEATURE_CLEARANCE, 314));
  ck_assert_uint_eq (change.what, EM_CHANGE_FEATURE);
  ck_assert_int_eq (count_rejected (document), n_rejected + 1);
  g_autofree char *second = test_bytes (document);
  for (int i = 0; i < 2; i++)
    {
      em_document_undo (document);
      g_autofree char *back = test_bytes (document);
      ck_assert_str_eq (back, first);
      ck_assert (!em_document_can_undo (document));
      em_document_redo (document);
      g_autofree char *forth = test_bytes (document);
      ck_assert_str_eq (forth, second);
    }
}
END_TEST

/* Steps of a long quote are not kept without end: the oldest go, a score stays, and a saved state that went can't be come back to. */
START_TEST (a_long_history_forgets_its_start)
{
  g_autoptr (EmHistory) history = em_history_new ();
  const char *words = "Words that take some room, so that a few dozen of them are more than is to be kept";
  EmQuote quote;
  EmBasis *sent = NULL;
  guint what;
  int32_t index;
  int n = 0;

  em_quote_init (&quote);
  em_history_set_most (history, 1);
  em_history_mark_saved (history);
  for (int i = 0; i < 50; i++)
    {
      EmQuote edited;
      g_autofree char *text = g_strdup_printf ("%d %s", i, words);
      ck_assert_int_eq (em_quote_copy (&quote, &edited), EM_OK);
      em_quote_set_text (&edited, EM_QUOTE_CUSTOMER, text);
      em_history_add_quote_take (history, 0, EM_CHANGE_DETAILS, &quote, NULL);
      quote = edited;
      if (i == 40)
        em_history_mark_saved (history);
    }
  for (; em_history_undo (history, &quote, &sent, &what, &index); n++)
    {
      g_autofree char *text = g_strdup_printf ("%d %s", 48 - n, words);
      ck_assert_str_eq (quote.text[EM_QUOTE_CUSTOMER], text);
      ck_assert_int_eq (em_history_is_saved (history), 48 - n == 40);
    }
  ck_assert_int_eq (n, 20);
  for (; em_history_redo (history, &quote, &sent, &what, &index); n--)
    ;
  ck_assert_int_eq (n, 0);
  em_quote_clear (&quote);
}
END_TEST

START_TEST (sent_quote_keeps_its_rates)
{
  g_autoptr (EmDocument) document = test_demo (NULL);
  EmRates rates;
  EmCatalogue catalogue;

  em_document_set_state (document, EM_STATE_SENT);
  int64_t total = em_document_get_cost (document)->totals.total_minor;
  ck_assert_int_eq (em_rates_copy (em_document_get_rates (document), &rates), EM_OK);
  ck_assert_int_eq (em_catalogue_copy (em_document_get_catalogue (document), &catalogue), EM_OK);
  rates.bench_minor_per_h *= 3;
  g_autoptr (EmBasis) dearer = em_basis_new_take (&rates, &catalogue);
  em_document_set_basis (document, dearer);
  ck_assert_int_eq (em_document_get_cost (document)->totals.total_minor, total);
  em_document_set_state (document, EM_STATE_DRAFT);
  ck_assert_int_gt (em_document_get_cost (document)->totals.total_minor, total);
}
END_TEST

static void
on_saved (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (GError) error = NULL;

  *(int *) data = em_document_save_finish (EM_DOCUMENT (source), result, &error) ? 1 : -1;
}

/* Back to a draft, sent again with other rates, and all of it undone: the rates it came with are there again. */
START_TEST (sent_rates_go_back_and_forth)
{
  g_autoptr (EmDocument) document = test_demo (NULL);
  EmRates rates;
  EmCatalogue catalogue;

  em_document_set_state (document, EM_STATE_SENT);
  int64_t total = em_document_get_cost (document)->totals.total_minor;
  g_autofree char *first = test_bytes (document);
  ck_assert (em_rates_copy (em_document_get_rates (document), &rates) == EM_OK && em_catalogue_copy (em_document_get_catalogue (document), &catalogue) == EM_OK);
  rates.bench_minor_per_h *= 3;
  g_autoptr (EmBasis) dearer = em_basis_new_take (&rates, &catalogue);
  em_document_set_basis (document, dearer);
  em_document_set_state (document, EM_STATE_DRAFT);
  em_document_set_text (document, EM_QUOTE_TOOL, "Another tool");
  em_document_set_state (document, EM_STATE_SENT);
  ck_assert_int_gt (em_document_get_cost (document)->totals.total_minor, total);
  g_autofree char *last = test_bytes (document);
  for (int i = 0; i < 3; i++)
    em_document_undo (document);
  g_autofree char *undone = test_bytes (document);
  ck_assert_str_eq (first, undone);
  ck_assert_int_eq (em_document_get_cost (document)->totals.total_minor, total);
  for (int i = 0; i < 3; i++)
    em_document_redo (document);
  g_autofree char *redone = test_bytes (document);
  ck_assert_str_eq (last, redone);
}
END_TEST

START_TEST (saving_settles_what_may_be_lost)
{
  g_autoptr (EmDocument) document = test_demo (NULL);
  g_autofree char *folder = g_dir_make_tmp ("estimend-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "a.estimend", NULL);
  g_autofree char *nowhere = g_build_filename (folder, "no", "such", "a.estimend", NULL);
  int done = 0;

  edit_label (document);
  em_document_save_async (document, nowhere, NULL, on_saved, &done);
  while (done == 0)
    g_main_context_iteration (NULL, TRUE);
  ck_assert_int_eq (done, -1);
  ck_assert (em_document_is_modified (document));
  ck_assert_ptr_null (em_document_get_path (document));
  done = 0;
  em_document_save_async (document, path, NULL, on_saved, &done);
  while (done == 0)
    g_main_context_iteration (NULL, TRUE);
  ck_assert_int_eq (done, 1);
  ck_assert (!em_document_is_modified (document));
  g_autoptr (EmBasis) basis = test_basis ();
  g_autoptr (EmDocument) again = em_document_new_from_path (basis, path, NULL);
  ck_assert_ptr_nonnull (again);
  g_autofree char *a = test_bytes (document), *b = test_bytes (again);
  ck_assert_str_eq (a, b);
  edit_remark (document);
  ck_assert (em_document_is_modified (document));
  em_document_undo (document);
  ck_assert (!em_document_is_modified (document));
  g_remove (path);
  g_rmdir (folder);
}
END_TEST

int
main (void)
{
  TCase *tcase = tcase_create ("document");

  tcase_add_loop_test (tcase, every_edit_goes_back_and_forth, 0, (int) G_N_ELEMENTS (edits));
  tcase_add_test (tcase, same_value_is_no_edit);
  tcase_add_test (tcase, typing_is_one_step_until_broken);
  tcase_add_loop_test (tcase, two_thousand_random_actions_go_back_to_the_start, 0, em_n_demos);
  tcase_add_test (tcase, bad_size_keeps_the_last_good_price);
  tcase_add_test (tcase, unreadable_entry_marks_the_price_stale);
  tcase_add_test (tcase, what_cannot_be_reckoned_has_no_lines);
  tcase_add_test (tcase, problems_go_with_their_feature);
  tcase_add_test (tcase, units_change_no_value);
  tcase_add_loop_test (tcase, marks_follow_the_words, 0, 6);
  tcase_add_test (tcase, sent_quote_keeps_its_rates);
  tcase_add_test (tcase, a_long_history_forgets_its_start);
  tcase_add_loop_test (tcase, a_correction_touches_one_feature, 0, 2);
  tcase_add_test (tcase, sent_rates_go_back_and_forth);
  tcase_add_test (tcase, saving_settles_what_may_be_lost);
  return test_run ("document", tcase, 60);
}
