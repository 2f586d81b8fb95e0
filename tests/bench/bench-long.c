/* bench-long: a long quote in the window: what it takes to show it, to hold it, and to follow a key typed in it.
 *
 * Each length is a process of its own. The window is open with an empty quote first, so that what is told is of the features
 * alone. Times are the main thread's processor time, from the call or the key to the end of the painted frame that shows it, and the
 * longest turn of the main loop on the way; memory is what became resident. The yardsticks are a frame of a 60 Hz display and half a
 * second, after which people must be told what goes on.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "config.h"

#include "em-application.h"
#include "em-bench-shop.h"
#include "em-place.h"
#include "em-quantity-entry.h"
#include "em-words.h"

#include <locale.h>
#include <string.h>

enum { SKIPPED = 77, N_KEYS = 40, MAX_PATIENCE_S = 60 };

typedef struct
{
  EmApplication *application;
  EmWindow      *window;
  gint           n_painted;
} Bench;

/* Of all turns of the main loop since it was set to naught: how long the window did not answer. */
static double longest_s;

static double
main_thread_s (void)
{
  struct timespec now;

  clock_gettime (CLOCK_THREAD_CPUTIME_ID, &now);
  return (double) now.tv_sec + (double) now.tv_nsec * 1e-9;
}

static double
resident_mb (void)
{
  g_autofree char *status = NULL;
  const char *line;

  em_bench_demand (g_file_get_contents ("/proc/self/status", &status, NULL, NULL), "no /proc/self/status");
  line = strstr (status, "VmRSS:");
  return line != NULL ? g_ascii_strtod (line + strlen ("VmRSS:"), NULL) / 1024.0 : 0.0;
}

static void
keep_longest (double from_s)
{
  longest_s = MAX (longest_s, main_thread_s () - from_s);
}

static void
turn (void)
{
  double from = main_thread_s ();

  g_main_context_iteration (NULL, TRUE);
  keep_longest (from);
}

static void
on_after_paint (GdkFrameClock *clock, gint *n_painted)
{
  (void) clock;
  (*n_painted)++;
}

/* Until a frame is painted that was asked for after now. */
static void
wait_for_frame (Bench *bench)
{
  gint before = bench->n_painted;
  double from = em_bench_now_s ();

  gtk_widget_queue_draw (GTK_WIDGET (bench->window));
  while (bench->n_painted == before)
    {
      turn ();
      em_bench_demand (em_bench_now_s () - from < MAX_PATIENCE_S, "no frame comes");
    }
}

static gboolean
wake (gpointer data)
{
  *(gboolean *) data = TRUE;
  return G_SOURCE_REMOVE;
}

static void
settle (guint milliseconds)
{
  gboolean is_over = FALSE;

  g_timeout_add (milliseconds, wake, &is_over);
  while (!is_over)
    turn ();
}

static void
wait_for_outlook (Bench *bench)
{
  settle (200);
  while (em_outlook_is_busy (em_window_get_outlook (bench->window)))
    settle (20);
}

static void
open_window (Bench *bench)
{
  g_autoptr (EmDocument) blank = NULL;

  bench->application = em_application_new ();
  g_application_set_flags (G_APPLICATION (bench->application), G_APPLICATION_NON_UNIQUE | G_APPLICATION_HANDLES_OPEN);
  em_bench_demand (g_application_register (G_APPLICATION (bench->application), NULL, NULL), "no application");
  blank = em_document_new (em_application_get_basis (bench->application));
  bench->window = em_application_add_window (bench->application, blank);
  settle (300);
  g_signal_connect (gdk_surface_get_frame_clock (gtk_native_get_surface (GTK_NATIVE (bench->window))), "after-paint",
                    G_CALLBACK (on_after_paint), &bench->n_painted);
}

static EmDocument *
make_document (Bench *bench, int n_features, gboolean has_wire)
{
  EmQuoteFile file;

  em_quote_file_init (&file);
  em_bench_fill (&file.quote, n_features, EM_BENCH_ALL_KINDS);
  em_quote_set_text (&file.quote, EM_QUOTE_BASE, "h13");
  if (has_wire)
    em_quote_set_text (&file.quote, EM_QUOTE_FILLER, "h13-wire");
  return em_document_new_take (em_application_get_basis (bench->application), &file, NULL);
}

static int
compare_times (gconstpointer a, gconstpointer b)
{
  double x = *(const double *) a, y = *(const double *) b;

  return x < y ? -1 : x > y;
}

static const char *
first_size (const EmKind *kind)
{
  int field = 0;

  while (kind->fields[field].quantity != EM_QUANTITY_LENGTH)
    field++;
  return kind->fields[field].id;
}

/* Keys in the first entry of the feature in the middle; out_s: the middle and the worst of them. */
static void
type_keys (Bench *bench, double *out_middle_s, double *out_worst_s)
{
  EmDocument *document = em_window_get_document (bench->window);
  const EmQuote *quote = em_document_get_quote (document);
  int32_t index = quote->n_features / 2;
  EmFeatureEditor *editor = em_metal_pane_get_editor (em_window_get_metal (bench->window));
  double taken_s[N_KEYS];

  em_document_set_selected (document, quote->feature[index].id);
  wait_for_frame (bench);
  GtkWidget *entry = em_feature_editor_get_entry (editor, first_size (quote->feature[index].kind));
  GtkWidget *text = em_quantity_entry_get_text_widget (EM_QUANTITY_ENTRY (entry));
  gtk_widget_grab_focus (text);
  wait_for_outlook (bench);
  for (int i = 0; i < N_KEYS; i++)
    {
      g_autofree char *typed = g_strdup_printf ("%d.%d", 10 + i / 10, i % 10);
      double from = main_thread_s ();
      gtk_entry_buffer_set_text (gtk_entry_get_buffer (GTK_ENTRY (text)), typed, -1);
      wait_for_frame (bench);
      taken_s[i] = main_thread_s () - from;
    }
  qsort (taken_s, N_KEYS, sizeof taken_s[0], compare_times);
  *out_middle_s = taken_s[N_KEYS / 2];
  *out_worst_s = taken_s[N_KEYS - 1];
}

/* A customer's list, a repair a line. */
static char *
make_notes (int n_lines)
{
  static const char *const lines[] = { "Edge nick, gate side, 12 mm long, 0.8 x 0.6 mm", "Recess 6 x 4 x 0.9 mm deep, beside the texture",
                                       "Build up face 18 x 9 mm, 0.5 mm thick", "Pin diameter 6 mm, build 0.25 mm, 10 mm long" };
  GString *text = g_string_new (NULL);

  for (int i = 0; i < n_lines; i++)
    g_string_append_printf (text, "%d) %s\n", i + 1, lines[i % (int) G_N_ELEMENTS (lines)]);
  return g_string_free (text, FALSE);
}

/* What the window does with a text that is dropped on it, until nothing of it goes on in the background. */
static void
take_notes (Bench *bench, int n_lines)
{
  g_autofree char *text = make_notes (n_lines);

  double from = main_thread_s ();

  em_words_pane_take_text (em_window_get_words (bench->window), text, FALSE, EM_UNITS_METRIC);
  keep_longest (from);
  while (em_words_pane_is_busy (em_window_get_words (bench->window)))
    turn ();
  wait_for_frame (bench);
}

static int
run (int n_features, const char *how)
{
  Bench bench = { 0 };
  gboolean is_read = strcmp (how, "notes") == 0;
  double from, show_s, opening_s, middle_s, worst_s, memory_mb;

  setlocale (LC_ALL, "");
  em_words_init (em_place_locale_dir ());
  open_window (&bench);
  g_autoptr (EmDocument) document = is_read ? em_document_new (em_application_get_basis (bench.application))
                                            : make_document (&bench, n_features, strcmp (how, "wire") == 0);
  if (is_read)
    em_document_set_text (document, EM_QUOTE_FILLER, "h13-wire");
  wait_for_frame (&bench);
  memory_mb = resident_mb ();
  longest_s = 0;
  from = main_thread_s ();
  em_window_set_document (bench.window, document);
  keep_longest (from);
  if (is_read)
    take_notes (&bench, n_features);
  wait_for_frame (&bench);
  show_s = main_thread_s () - from;
  memory_mb = resident_mb () - memory_mb;
  wait_for_outlook (&bench);
  opening_s = longest_s;
  em_bench_demand (em_document_get_quote (document)->n_features == n_features, "another number of features");
  type_keys (&bench, &middle_s, &worst_s);
  printf ("long %.6f %.6f %.1f %.6f %.6f\n", show_s, opening_s, memory_mb, middle_s, worst_s);
  fflush (stdout);
  _exit (EXIT_SUCCESS);
}

/* ---- the parent ---- */

typedef struct { double show_s, opening_s, memory_mb, middle_s, worst_s; } Told;

static Told
run_child (const char *program, int n_features, const char *how)
{
  g_autofree char *length = g_strdup_printf ("%d", n_features);
  const char *argv[] = { program, length, how, NULL };
  g_autofree char *said = NULL;
  Told told;
  char *at;
  int status;

  em_bench_demand (g_spawn_sync (NULL, (char **) argv, NULL, G_SPAWN_DEFAULT, NULL, NULL, &said, NULL, &status, NULL) && status == 0, length);
  at = strstr (said, "long ");
  em_bench_demand (at != NULL, "nothing told");
  told.show_s = g_ascii_strtod (at + strlen ("long "), &at);
  told.opening_s = g_ascii_strtod (at, &at);
  told.memory_mb = g_ascii_strtod (at, &at);
  told.middle_s = g_ascii_strtod (at, &at);
  told.worst_s = g_ascii_strtod (at, &at);
  return told;
}

int
main (int argc, char **argv)
{
  static const int lengths[] = { 11, 1000, 5000, 20000 };
  static const struct { const char *how, *words; } ways[] = { { "wire", "one wire" }, { "none", "no wire yet" }, { "notes", "read from a customer's list" } };
  bool is_met = true;

  if (argc > 2)
    return run (atoi (argv[1]), argv[2]);
  if (g_getenv ("DISPLAY") == NULL)
    return SKIPPED;
  for (gsize i = 0; i < G_N_ELEMENTS (lengths); i++)
    for (gsize way = 0; way < G_N_ELEMENTS (ways); way++)
      {
        Told told = run_child (argv[0], lengths[i], ways[way].how);
        printf ("%d features, %s: shown after %.2f s, %.1f MB more resident; a key %.1f ms, the worst %.1f ms\n", lengths[i], ways[way].words,
                told.show_s, told.memory_mb, told.middle_s * 1e3, told.worst_s * 1e3);
        fflush (stdout);
        is_met = em_bench_tell ("  the longest without an answer meanwhile", told.opening_s, "s", 0.5) && is_met;
        is_met = em_bench_tell ("  a key, to its frame", told.middle_s / EM_BENCH_FRAME_S, "frames", 1) && is_met;
      }
  return is_met ? EXIT_SUCCESS : EXIT_FAILURE;
}
