/* test-soak: the real window acted upon at random for a long time, and nothing the worse for it.
 *
 * ESTIMEND_SOAK_ACTIONS (300) things an office can do with a demo, and a tenth of that with a quote already sent and with an
 * empty one, chosen and filled by a generator that starts at ESTIMEND_SOAK_SEED (1): the window's actions, typing, choices,
 * rows, wires, buttons. After each, what the window shows is what the document holds; at the end, undoing everything gives
 * the first bytes again. No warning may be logged. In a run of 2,000 and more, what is allocated is measured at the first
 * state after a fifth, three and all of it, with the steps back forgotten. Fields, pictures and fonts that are made when they
 * are first wanted may come at any time, but what leaks grows all the time: it must not have grown in both spans.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-test-window.h"

#include "em-feature-list.h"
#include "em-words.h"

#include <glib/gstdio.h>
#include <malloc.h>

enum
{
  FEATURES_MOST = 12,
  NOTES_MOST = 1500,          /* bytes; past that typing replaces them */
  STEPS_MOST = 12,            /* of one action */
  REMEMBERED = 12,            /* actions told when something fails */
  WORTH_MEASURING = 2000,     /* actions */
  LEAK_BYTES_PER_ACTION = 400, /* more than the libraries' caches of glyphs, fonts and names were seen to take; a label is some 2,000 */
  LOOKED_AT_MS = 700          /* a popover; closed within half a second GTK 4.8 keeps it for ever, which nobody's eye is fast enough for */
};

typedef struct
{
  GRand      *rand;
  EmWindow   *window;
  EmDocument *document;
  GtkSelectionModel *features;      /* as listed */
  char       *told[REMEMBERED];
  int         n_done;
  int         n_of[32];             /* by row of ways */
  char       *folder;
} EmSoak;

static EmSoak *soaked;   /* the one under way, or NULL */
static int     n_logged;

static char *
last_told (EmSoak *soak)
{
  GString *text = g_string_new (NULL);

  for (int i = MAX (0, soak->n_done - REMEMBERED + 1); i <= soak->n_done; i++)
    g_string_append_printf (text, "\n  %d: %s", i, soak->told[i % REMEMBERED]);
  return g_string_free (text, FALSE);
}

/* GTK 4.8 may draw a popover in the frame it is shown in before its part has a place, one time in thousands; the next frame has it. It
 * is told and passed over. */
static gboolean
is_of_a_popover (const GLogField *fields, gsize n_fields)
{
  for (gsize i = 0; i < n_fields; i++)
    if (g_str_equal (fields[i].key, "MESSAGE"))
      return g_str_has_prefix (fields[i].value, "Trying to snapshot GtkGizmo") && g_str_has_suffix (fields[i].value, "without a current allocation");
  return FALSE;
}

static gboolean has_writer;

/* Anything else said at the level of a warning or above is counted; a critical one ends the program, so what was done is told first. */
static GLogWriterOutput
count_warnings (GLogLevelFlags level, const GLogField *fields, gsize n_fields, gpointer data)
{
  (void) data;
  if (level & (G_LOG_LEVEL_WARNING | G_LOG_LEVEL_CRITICAL | G_LOG_LEVEL_ERROR) && !is_of_a_popover (fields, n_fields))
    {
      g_autofree char *told = soaked != NULL ? last_told (soaked) : g_strdup ("");
      n_logged++;
      fprintf (stderr, "A warning was logged after%s\n", told);
    }
  return g_log_writer_default (level, fields, n_fields, data);
}

static int
any (EmSoak *soak, int n)
{
  return g_rand_int_range (soak->rand, 0, n);
}

static void
tell (EmSoak *soak, const char *format, ...) G_GNUC_PRINTF (2, 3);

static void
tell (EmSoak *soak, const char *format, ...)
{
  char **told = &soak->told[soak->n_done % REMEMBERED];
  va_list args;

  va_start (args, format);
  g_free (*told);
  *told = g_strdup_vprintf (format, args);
  va_end (args);
}

static const EmQuote *
quote_of (EmSoak *soak)
{
  return em_document_get_quote (soak->document);
}

/* What the main loop has to do at once; animations never end. */
static void
drain (void)
{
  for (int i = 0; i < 30 && g_main_context_pending (NULL); i++)
    g_main_context_iteration (NULL, FALSE);
}

static void
wait_for_outlook (EmSoak *soak)
{
  for (int i = 0; i < 12000 && em_outlook_is_busy (em_window_get_outlook (soak->window)); i++)
    test_settle (5);
  ck_assert_msg (!em_outlook_is_busy (em_window_get_outlook (soak->window)), "the wires are compared for ever");
}

/* Finding something to act on */

typedef gboolean (*EmFits) (GtkWidget *widget);

static void
collect (GtkWidget *in, EmFits fits, GPtrArray *found)
{
  if (!gtk_widget_get_mapped (in) || !gtk_widget_get_sensitive (in))
    return;
  if (fits (in))
    g_ptr_array_add (found, in);
  for (GtkWidget *child = gtk_widget_get_first_child (in); child != NULL; child = gtk_widget_get_next_sibling (child))
    collect (child, fits, found);
}

/* One of those on the screen; NULL: there is none. */
static GtkWidget *
pick (EmSoak *soak, EmFits fits)
{
  g_autoptr (GPtrArray) found = g_ptr_array_new ();

  collect (gtk_window_get_child (GTK_WINDOW (soak->window)), fits, found);
  return found->len > 0 ? found->pdata[any (soak, (int) found->len)] : NULL;
}

static gboolean
is_entry (GtkWidget *widget)
{
  return GTK_IS_ENTRY (widget);
}

static gboolean
is_text_view (GtkWidget *widget)
{
  return GTK_IS_TEXT_VIEW (widget) && gtk_text_view_get_editable (GTK_TEXT_VIEW (widget));
}

static gboolean
is_drop_down (GtkWidget *widget)
{
  return GTK_IS_DROP_DOWN (widget);
}

static gboolean
is_fold (GtkWidget *widget)
{
  return GTK_IS_EXPANDER (widget);
}

/* Buttons that act by themselves; those of actions are driven by their actions, those of menus and choices by these. */
static gboolean
is_button (GtkWidget *widget)
{
  GtkWidget *parent = gtk_widget_get_parent (widget);

  return (GTK_IS_BUTTON (widget) || GTK_IS_CHECK_BUTTON (widget)) && gtk_actionable_get_action_name (GTK_ACTIONABLE (widget)) == NULL
         && !GTK_IS_MENU_BUTTON (parent) && !GTK_IS_DROP_DOWN (parent);
}

static gboolean
is_popover (GtkWidget *widget)
{
  return GTK_IS_POPOVER (widget);
}

/* Ways to act. Each tells what it did; FALSE: there was nothing to do it to. */

typedef struct
{
  const char *name;
  int         weight;
} EmDriven;

/* Of the window's action map. Features are added as often as they are taken away. */
static const EmDriven driven[] =
{
  { "undo", 14 }, { "redo", 12 }, { "add", 1 }, { "add-kind", 10 }, { "duplicate", 6 }, { "remove", 14 },
  { "accept", 4 }, { "move-up", 6 }, { "move-down", 6 }, { "copy-feature", 6 }, { "paste-feature", 8 }, { "units", 3 }, { "switch-units", 3 },
  { "wires-for", 3 }, { "wires-first", 3 }, { "deposit", 2 }, { "read-notes", 5 }, { "paper", 2 }, { "work", 3 },
  { "focus-pane", 4 }, { "dismiss", 2 }, { "new-revision", 1 }, { "copy-quote", 1 }, { "next-number", 1 },
};

/* Left alone: they open the system's own dialogs, or end the window. */
static const char *const not_driven[] = { "open", "save", "save-as", "print", "export-pdf", "export-lines", "export-wires", "close", "show-help-overlay" };

static int
weight_of_all (void)
{
  int sum = 0;

  for (gsize i = 0; i < G_N_ELEMENTS (driven); i++)
    sum += driven[i].weight;
  return sum;
}

static const char *
draw_action (EmSoak *soak)
{
  int at = any (soak, weight_of_all ());

  for (gsize i = 0; i < G_N_ELEMENTS (driven); i++)
    if ((at -= driven[i].weight) < 0)
      return driven[i].name;
  g_return_val_if_reached (NULL);
}

static GVariant *
target_of (EmSoak *soak, const char *action)
{
  if (g_str_equal (action, "add-kind"))
    return g_variant_new_string (em_kinds[any (soak, em_n_kinds)]->id);
  if (g_str_equal (action, "units"))
    return g_variant_new_string (any (soak, 2) ? "inch" : "metric");
  if (g_str_equal (action, "wires-for"))
    return g_variant_new_string (any (soak, 2) ? "feature" : "quote");
  if (g_str_equal (action, "wires-first"))
    return g_variant_new_string (any (soak, 2) ? "match" : "price");
  if (g_str_equal (action, "focus-pane"))
    return g_variant_new_int32 (1 + any (soak, 3));
  return NULL;
}

/* Windows that an action opened. */
static void
close_others (EmSoak *soak)
{
  g_autoptr (GList) windows = g_list_copy (gtk_application_get_windows (gtk_window_get_application (GTK_WINDOW (soak->window))));

  for (GList *window = windows; window != NULL; window = window->next)
    if (window->data != soak->window)
      gtk_window_destroy (window->data);
}

static gboolean
act (EmSoak *soak)
{
  const char *action = draw_action (soak);
  g_autoptr (GVariant) target = NULL;
  g_autofree char *shown = NULL;

  if (quote_of (soak)->n_features >= FEATURES_MOST
      && (g_str_equal (action, "add-kind") || g_str_equal (action, "duplicate") || g_str_equal (action, "paste-feature")))
    action = "remove";
  if ((target = target_of (soak, action)) != NULL)
    g_variant_ref_sink (target);
  shown = target != NULL ? g_variant_print (target, FALSE) : g_strdup ("");
  tell (soak, "action %s %s", action, shown);
  if (!g_action_group_get_action_enabled (G_ACTION_GROUP (soak->window), action))
    return FALSE;
  g_action_group_activate_action (G_ACTION_GROUP (soak->window), action, target);
  /* These come back by the main loop. */
  if (g_str_equal (action, "paste-feature") || g_str_equal (action, "copy-feature"))
    test_settle (8);
  if (g_str_equal (action, "next-number"))
    test_settle (60);
  if (g_str_equal (action, "new-revision") || g_str_equal (action, "copy-quote"))
    {
      test_settle (20);
      close_others (soak);
    }
  return TRUE;
}

static const char *const typed[] =
{
  "1", "2", "12.7", ".5 in", "20 thou", "0,5 mm", "1/2 in", "3 1/8", "0.25", "5", "7", "1.5", "40", "90", "10", "0.02", "2 x 0.4", "0.3-0.5",
  "", "0", "-3", "abc", "1e9", "999999999999", "12.7 kg", "80", "1,250.00", "15 %", "2, 5, 10", "Gate insert", "Parting line, side B",
  "Ölwanne – Größe 3", "P-1042", "2026-03-01", "  ", "\xE2\x80\x8F\xD7\xA9\xD7\x9C\xD7\x95\xD7\x9D", "<b>&amp;",
};

static gboolean
type (EmSoak *soak)
{
  GtkWidget *entry = pick (soak, is_entry);
  const char *text = typed[any (soak, (int) G_N_ELEMENTS (typed))];

  if (entry == NULL)
    return FALSE;
  tell (soak, "typed “%s” over “%s” in %s", text, gtk_editable_get_text (GTK_EDITABLE (entry)),
        gtk_widget_get_parent (entry) != NULL ? G_OBJECT_TYPE_NAME (gtk_widget_get_parent (gtk_widget_get_parent (entry))) : "?");
  gtk_widget_grab_focus (entry);
  test_type (entry, text);
  return TRUE;
}

static const char *const lines[] =
{
  "Weld 3 nicks on the parting line, .060 x .040, 1/2 long.\n", "Build up the core pin 0.5 mm over 20 mm.\n", "Steel is 1.2344, 48 HRC.\n",
  "leave .010 stock for machining ", "crack in the corner 25 mm long, 2 deep. ", "4 places ", "NOT the logo side!\n",
  "Bore worn to 25.4, finish 25.0, 30 long.\n", "x", " ", "\n", "Größe ändern: 3 Stück\n",
};

static gboolean
write_notes (EmSoak *soak)
{
  GtkWidget *view = pick (soak, is_text_view);
  const char *line = lines[any (soak, (int) G_N_ELEMENTS (lines))];
  GtkTextIter from, to;

  if (view == NULL)
    return FALSE;
  GtkTextBuffer *buffer = gtk_text_view_get_buffer (GTK_TEXT_VIEW (view));
  int n = gtk_text_buffer_get_char_count (buffer), at = any (soak, n + 1);
  gtk_widget_grab_focus (view);
  gtk_text_buffer_get_iter_at_offset (buffer, &from, at);
  gtk_text_buffer_place_cursor (buffer, &from);
  if (n > NOTES_MOST || any (soak, 3) == 0)
    {
      int end = n > NOTES_MOST ? n : MIN (n, at + any (soak, 20));
      tell (soak, "deleted %d to %d of %d characters", at, end, n);
      gtk_text_buffer_get_iter_at_offset (buffer, &to, end);
      gtk_text_buffer_delete (buffer, &from, &to);
    }
  else
    {
      tell (soak, "wrote “%s” at %d of %d", line, at, n);
      gtk_text_buffer_insert (buffer, &from, line, -1);
    }
  return TRUE;
}

static gboolean
choose (EmSoak *soak)
{
  GtkWidget *drop_down = pick (soak, is_drop_down);

  if (drop_down == NULL)
    return FALSE;
  guint n = g_list_model_get_n_items (gtk_drop_down_get_model (GTK_DROP_DOWN (drop_down)));
  if (n == 0)
    return FALSE;
  guint at = (guint) any (soak, (int) n);
  tell (soak, "chose %u of %u", at, n);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (drop_down), at);
  return TRUE;
}

static gboolean
fold (EmSoak *soak)
{
  GtkWidget *expander = pick (soak, is_fold);

  if (expander == NULL)
    return FALSE;
  tell (soak, "fold of %s", G_OBJECT_TYPE_NAME (gtk_widget_get_parent (expander)));
  gtk_expander_set_expanded (GTK_EXPANDER (expander), !gtk_expander_get_expanded (GTK_EXPANDER (expander)));
  return TRUE;
}

/* Whoever clicks sees what is clicked: the keyboard brings it into sight, and what stays out of it is left alone. */
static gboolean
bring_into_sight (EmSoak *soak, GtkWidget *widget, graphene_rect_t *out_place)
{
  g_autoptr (GtkWidget) kept = g_object_ref (widget);

  gtk_widget_grab_focus (widget);
  test_settle (20);
  /* Leaving another field may have changed what is there. */
  return gtk_widget_get_mapped (widget) && gtk_widget_compute_bounds (widget, GTK_WIDGET (soak->window), out_place)
         && out_place->size.height > 0 && out_place->origin.y >= 0
         && out_place->origin.y + out_place->size.height <= (float) gtk_widget_get_height (GTK_WIDGET (soak->window));
}

static gboolean
click (EmSoak *soak)
{
  GtkWidget *button = pick (soak, is_button), *popover;
  graphene_rect_t place;

  if (button == NULL || !bring_into_sight (soak, button, &place))
    return FALSE;
  tell (soak, "clicked %s in %s at %.0f, %.0f", G_OBJECT_TYPE_NAME (button), G_OBJECT_TYPE_NAME (gtk_widget_get_parent (button)), (double) place.origin.x, (double) place.origin.y);
  if (GTK_IS_CHECK_BUTTON (button))
    gtk_check_button_set_active (GTK_CHECK_BUTTON (button), !gtk_check_button_get_active (GTK_CHECK_BUTTON (button)));
  else
    g_signal_emit_by_name (button, "clicked");
  for (int i = 0; i < 5; i++)
    {
      test_settle (2);
      if (pick (soak, is_popover) == NULL)
        continue;
      test_settle (LOOKED_AT_MS);
      /* It may have closed by itself. */
      if ((popover = pick (soak, is_popover)) != NULL)
        gtk_popover_popdown (GTK_POPOVER (popover));
    }
  return TRUE;
}

static gboolean
select_row (EmSoak *soak)
{
  int n = quote_of (soak)->n_features;

  if (n == 0)
    return FALSE;
  int at = any (soak, n);
  tell (soak, "row %d of %d", at, n);
  gtk_selection_model_select_item (soak->features, (guint) at, TRUE);
  return TRUE;
}

/* What dropping a row on another does. */
static gboolean
drag_row (EmSoak *soak)
{
  int n = quote_of (soak)->n_features;

  if (n < 2)
    return FALSE;
  int from = any (soak, n), to = any (soak, n);
  tell (soak, "row %d dragged to %d", from, to);
  em_document_move (soak->document, from, to);
  return TRUE;
}

static gboolean
choose_wire (EmSoak *soak)
{
  EmWireTable *table = em_money_pane_get_wires (em_window_get_money (soak->window));

  wait_for_outlook (soak);
  int n = em_wire_table_count (table);
  if (n == 0)
    return FALSE;
  int at = any (soak, n);
  tell (soak, "wire %d of %d", at, n);
  return em_wire_table_choose (table, at);
}

static gboolean
save (EmSoak *soak)
{
  g_autofree char *path = g_build_filename (soak->folder, "soak.estimend", NULL);

  tell (soak, "saved");
  em_window_save_to (soak->window, path);
  for (int i = 0; i < 12000 && em_document_is_saving (soak->document); i++)
    test_settle (5);
  ck_assert (!em_document_is_saving (soak->document));
  return TRUE;
}

typedef struct
{
  const char *name;
  int         weight;
  gboolean  (*act) (EmSoak *soak);
} EmWay;

static const EmWay ways[] =
{
  { "actions", 34, act }, { "typing", 26, type }, { "notes", 6, write_notes }, { "choices", 8, choose }, { "folds", 3, fold },
  { "buttons", 8, click }, { "rows", 8, select_row }, { "drags", 3, drag_row }, { "wires", 3, choose_wire }, { "saves", 1, save },
};

static void
do_one (EmSoak *soak)
{
  gboolean is_done = FALSE;

  while (!is_done)
    {
      int at = any (soak, 100), way = 0;
      while ((at -= ways[way].weight) >= 0)
        way++;
      is_done = ways[way].act (soak);
      soak->n_of[way] += is_done;
    }
}

/* What has to hold after each. */

static int
count_rows (EmSoak *soak)
{
  return (int) g_list_model_get_n_items (G_LIST_MODEL (soak->features));
}

static void
check_shown (EmSoak *soak)
{
  const EmCost *cost = em_document_get_cost (soak->document);
  const char *price = em_money_pane_get_price (em_window_get_money (soak->window));
  gboolean is_stale;
  g_autofree char *total = em_words_money_bare (em_document_get_total (soak->document, &is_stale), &em_document_get_rates (soak->document)->currency);
  EmFeatureItem *item = gtk_single_selection_get_selected_item (GTK_SINGLE_SELECTION (soak->features));
  g_autofree char *told = last_told (soak);

  ck_assert_msg (n_logged == 0, "a warning was logged after%s", told);
  ck_assert_msg (g_str_equal (price, "–") || g_str_equal (price, total), "%s is shown, the total is %s after%s", price, total, told);
  ck_assert_msg (count_rows (soak) == quote_of (soak)->n_features, "%d rows for %d features after%s", count_rows (soak),
                 quote_of (soak)->n_features, told);
  ck_assert_msg (quote_of (soak)->n_features == 0 || em_document_get_selected_index (soak->document) >= 0, "nothing is selected after%s", told);
  if (quote_of (soak)->n_features > 0)
    ck_assert_msg (item != NULL && em_feature_item_get_id (item) == em_document_get_selected (soak->document),
                   "another row is selected after%s", told);
  ck_assert_msg (em_document_get_status (soak->document, NULL) != EM_OK || cost->n_features == quote_of (soak)->n_features,
                 "%d features are priced of %d after%s", cost->n_features, quote_of (soak)->n_features, told);
}

/* Prices kept up to date by edits are those of a quote priced from scratch, and a step back and forth changes nothing. */
static void
check_kept (EmSoak *soak)
{
  EmCost fresh;
  const EmCost *kept = em_document_get_cost (soak->document);
  g_autofree char *told = last_told (soak);

  em_cost_init (&fresh);
  if (em_cost_quote (&fresh, quote_of (soak), em_document_get_rates (soak->document), em_document_get_catalogue (soak->document), NULL, NULL) == EM_OK)
    {
      ck_assert_msg (fresh.totals.total_minor == kept->totals.total_minor, "%" G_GINT64_FORMAT " is kept, %" G_GINT64_FORMAT " is it anew after%s",
                     kept->totals.total_minor, fresh.totals.total_minor, told);
      ck_assert_int_eq (fresh.n_faults, kept->n_faults);
    }
  em_cost_clear (&fresh);
  if (!em_document_can_undo (soak->document))
    return;
  g_autofree char *before = test_bytes (soak->document);
  em_document_undo (soak->document);
  em_document_redo (soak->document);
  g_autofree char *after = test_bytes (soak->document);
  ck_assert_msg (g_str_equal (before, after), "a step back and forth made another quote after%s", told);
}

/* One action, undone at once to the bytes before it and done again: what makes no step, or the wrong one, is met where it
 * happens, and not hidden by an older step that brings the whole quote back. */
static void
do_one_and_back (EmSoak *soak)
{
  int n = 0;

  em_document_break (soak->document);
  g_autofree char *before = test_bytes (soak->document);
  do_one (soak);
  drain ();
  g_autofree char *after = test_bytes (soak->document), *back = g_strdup (after), *told = last_told (soak);
  /* An undo and a redo have no step of their own. */
  if (g_str_equal (before, after) || strstr (soak->told[soak->n_done % REMEMBERED], "do ") != NULL)
    return;
  while (n < STEPS_MOST && em_document_can_undo (soak->document) && !g_str_equal (before, back))
    {
      em_document_undo (soak->document);
      g_free (back);
      back = test_bytes (soak->document);
      n++;
    }
  ck_assert_msg (g_str_equal (before, back), "%d steps back do not undo the last of%s", n, told);
  for (int i = 0; i < n; i++)
    em_document_redo (soak->document);
  g_free (back);
  back = test_bytes (soak->document);
  ck_assert_msg (g_str_equal (after, back), "%d steps forth do not redo the last of%s", n, told);
}

static void
run (EmSoak *soak, int n_actions)
{
  for (int i = 0; i < n_actions; i++)
    {
      if (soak->n_done % 3 == 0)
        do_one_and_back (soak);
      else
        do_one (soak);
      drain ();
      check_shown (soak);
      if (soak->n_done % 25 == 24)
        {
          test_settle (15);
          check_kept (soak);
        }
      soak->n_done++;
    }
}

static gboolean
is_marked (GtkWidget *widget)
{
  return GTK_IS_ENTRY (widget) && gtk_widget_has_css_class (widget, "error");
}

static void
undo_to_start (EmSoak *soak, const char *first)
{
  g_autoptr (GPtrArray) marked = g_ptr_array_new ();

  for (int i = 0; em_document_can_undo (soak->document); i++)
    {
      em_document_undo (soak->document);
      if (i % 100 == 0)
        drain ();
    }
  g_autofree char *last = test_bytes (soak->document);
  ck_assert_msg (g_str_equal (first, last), "undoing %d actions gave another quote than the first:\n%s\n  instead of\n%s", soak->n_done, last, first);
  test_settle (50);
  check_shown (soak);
  collect (GTK_WIDGET (soak->window), is_marked, marked);
  ck_assert_msg (marked->len == 0, "%u entries still show what could not be taken, such as “%s”", marked->len,
                 gtk_editable_get_text (GTK_EDITABLE (marked->pdata[0])));
}

static void
activate (EmSoak *soak, const char *action, const char *target)
{
  g_action_group_activate_action (G_ACTION_GROUP (soak->window), action, target != NULL ? g_variant_new_string (target) : NULL);
}

/* What is allocated at the first state, with the steps back forgotten but one and the same things on the screen. */
static gsize
measure (EmSoak *soak)
{
  const char *customer = quote_of (soak)->text[EM_QUOTE_CUSTOMER];
  g_autofree char *other = g_strconcat (customer != NULL ? customer : "", "!", NULL);

  em_document_set_text (soak->document, EM_QUOTE_CUSTOMER, other);
  em_document_undo (soak->document);
  activate (soak, "wires-for", "quote");
  activate (soak, "wires-first", "price");
  activate (soak, "paper", NULL);
  activate (soak, "work", NULL);
  if (quote_of (soak)->n_features > 0)
    em_document_set_selected (soak->document, quote_of (soak)->feature[0].id);
  wait_for_outlook (soak);
  test_settle (1500);
  return mallinfo2 ().uordblks + mallinfo2 ().hblkhd;
}

static int
number_of (const char *variable, int usual)
{
  const char *text = g_getenv (variable);

  return text != NULL ? atoi (text) : usual;
}

static gboolean
has_grown (gsize early, gsize late, int n_actions)
{
  return late > early + (gsize) n_actions * LEAK_BYTES_PER_ACTION;
}

static void
soak_through (EmSoak *soak, int n_actions)
{
  const int legs[] = { n_actions / 5, 2 * n_actions / 5, 2 * n_actions / 5 };
  g_autofree char *first = test_bytes (soak->document);
  gsize allocated[G_N_ELEMENTS (legs)] = { 0 };

  for (gsize leg = 0; leg < G_N_ELEMENTS (legs); leg++)
    {
      run (soak, legs[leg]);
      undo_to_start (soak, first);
      if (n_actions >= WORTH_MEASURING)
        allocated[leg] = measure (soak);
    }
  for (gsize i = 0; i < G_N_ELEMENTS (ways); i++)
    g_print ("%d %s%s", soak->n_of[i], ways[i].name, i + 1 < G_N_ELEMENTS (ways) ? ", " : ".\n");
  if (n_actions < WORTH_MEASURING)
    return;
  g_print ("Allocated: %.1f MB after %d actions, %.1f MB after %d, %.1f MB after %d.\n", (double) allocated[0] / 1e6, legs[0],
           (double) allocated[1] / 1e6, legs[0] + legs[1], (double) allocated[2] / 1e6, soak->n_done);
  ck_assert_msg (!has_grown (allocated[0], allocated[1], legs[1]) || !has_grown (allocated[1], allocated[2], legs[2]),
                 "%zu bytes grew to %zu and to %zu", allocated[0], allocated[1], allocated[2]);
}

static void
soak_document (EmDocument *document, EmApplication *application, int n_actions)
{
  EmSoak soak = { .document = document, .rand = g_rand_new_with_seed ((guint32) number_of ("ESTIMEND_SOAK_SEED", 1)) };

  soaked = &soak;
  /* GLib takes one writer in the life of a process. */
  if (!has_writer)
    g_log_set_writer_func (count_warnings, NULL, NULL);
  has_writer = TRUE;
  soak.folder = g_dir_make_tmp ("estimend-XXXXXX", NULL);
  soak.window = test_window (application, document);
  soak.features = em_metal_pane_get_features (em_window_get_metal (soak.window));
  soak_through (&soak, n_actions);
  gtk_window_destroy (GTK_WINDOW (soak.window));
  test_settle (50);
  soaked = NULL;
  ck_assert_int_eq (n_logged, 0);

  g_autofree char *path = g_build_filename (soak.folder, "soak.estimend", NULL);
  g_remove (path);
  g_rmdir (soak.folder);
  g_free (soak.folder);
  for (int i = 0; i < REMEMBERED; i++)
    g_free (soak.told[i]);
  g_rand_free (soak.rand);
}

START_TEST (a_demo_is_worked_on)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = test_demo (NULL);

  soak_document (document, application, number_of ("ESTIMEND_SOAK_ACTIONS", 300));
}
END_TEST

/* Its rates and metals came with it and are not the shop's. */
START_TEST (a_sent_quote_is_worked_on)
{
  g_autoptr (EmApplication) application = test_application ();
  EmBasis *shop = em_application_get_basis (application);
  g_autoptr (EmDocument) demo = test_demo (NULL);
  g_autoptr (GError) error = NULL;
  EmRates rates;
  EmCatalogue catalogue;
  EmQuoteFile file;

  ck_assert (em_rates_copy (em_basis_get_rates (shop), &rates) == EM_OK && em_catalogue_copy (em_basis_get_catalogue (shop), &catalogue) == EM_OK);
  rates.margin_ppm = 123456;
  g_autoptr (EmBasis) other = em_basis_new_take (&rates, &catalogue);
  em_document_set_basis (demo, other);
  em_document_set_state (demo, EM_STATE_SENT);
  g_autofree char *bytes = test_bytes (demo);
  ck_assert_ptr_nonnull (strstr (bytes, "123456"));
  g_autoptr (GBytes) read = g_bytes_new (bytes, strlen (bytes));
  ck_assert_msg (em_quote_file_parse (read, "sent", &file, &error), "%s", error != NULL ? error->message : "");
  g_autoptr (EmDocument) document = em_document_new_take (shop, &file, NULL);
  soak_document (document, application, number_of ("ESTIMEND_SOAK_ACTIONS", 300) / 10);
}
END_TEST

START_TEST (an_empty_quote_is_worked_on)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = em_document_new (em_application_get_basis (application));

  soak_document (document, application, number_of ("ESTIMEND_SOAK_ACTIONS", 300) / 10);
}
END_TEST

/* An action that somebody adds has to be driven, or said why not. */
START_TEST (every_action_is_known)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = test_demo (NULL);
  EmWindow *window = test_window (application, document);
  g_auto (GStrv) names = g_action_group_list_actions (G_ACTION_GROUP (window));

  for (char **name = names; *name != NULL; name++)
    {
      gboolean is_known = FALSE;
      for (gsize i = 0; i < G_N_ELEMENTS (driven); i++)
        is_known = is_known || g_str_equal (driven[i].name, *name);
      for (gsize i = 0; i < G_N_ELEMENTS (not_driven); i++)
        is_known = is_known || g_str_equal (not_driven[i], *name);
      ck_assert_msg (is_known, "nothing drives the action %s", *name);
    }
  for (gsize i = 0; i < G_N_ELEMENTS (driven); i++)
    ck_assert_msg (g_strv_contains ((const char *const *) names, driven[i].name), "there is no action %s", driven[i].name);
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

int
main (void)
{
  TCase *tcase = tcase_create ("soak");

  tcase_add_test (tcase, every_action_is_known);
  tcase_add_test (tcase, a_demo_is_worked_on);
  tcase_add_test (tcase, a_sent_quote_is_worked_on);
  tcase_add_test (tcase, an_empty_quote_is_worked_on);
  return test_run ("soak", tcase, 7000);
}
