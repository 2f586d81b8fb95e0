/* bench-start: from the start of the process to its first painted frame: the program with the demo quote open, and a bare
 * GTK window of the same size.
 *
 * Each start is a process of its own, by turns, the best of several; processor time from exec on, dynamic linking in it, and
 * wall time beside it. Resident memory is what the process holds just then.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "config.h"

#include "em-application.h"
#include "em-bench.h"
#include "em-place.h"
#include "em-words.h"

#include <locale.h>
#include <string.h>

enum { RUNS = 7, SKIPPED = 77, WIDTH = 1180, HEIGHT = 760, PLAIN_ROWS = 60 };

/* Told by a child on its standard output. */
typedef struct { double cpu_s, wall_s, resident_mb; } Start;

/* ---- the child ---- */

static double
resident_mb (void)
{
  g_autofree char *status = NULL;
  const char *line;

  em_bench_demand (g_file_get_contents ("/proc/self/status", &status, NULL, NULL), "no /proc/self/status");
  line = strstr (status, "VmRSS:");
  return line != NULL ? g_ascii_strtod (line + strlen ("VmRSS:"), NULL) / 1024.0 : 0.0;
}

/* Ahead of GTK's own handler, which ends the signal. */
static gboolean
on_render (GSignalInvocationHint *hint, guint n_values, const GValue *values, gpointer has_painted)
{
  (void) hint;
  (void) n_values;
  (void) values;
  *(gboolean *) has_painted = TRUE;
  return FALSE;
}

static void
on_after_paint (GdkFrameClock *clock, gboolean *has_painted)
{
  (void) clock;
  if (!*has_painted)
    return;
  printf ("start %.6f %.1f\n", em_bench_now_s (), resident_mb ());
  fflush (stdout);
  _exit (EXIT_SUCCESS);
}

static void
on_realize (GtkWidget *window, gboolean *has_painted)
{
  GdkSurface *surface = gtk_native_get_surface (GTK_NATIVE (window));

  g_signal_add_emission_hook (g_signal_lookup ("render", GDK_TYPE_SURFACE), 0, on_render, has_painted, NULL);
  g_signal_connect (gdk_surface_get_frame_clock (surface), "after-paint", G_CALLBACK (on_after_paint), has_painted);
}

static void
on_window_added (GtkApplication *application, GtkWindow *window, gboolean *has_painted)
{
  (void) application;
  g_signal_connect (window, "realize", G_CALLBACK (on_realize), has_painted);
}

/* Rows of a label, a field and a button, as many as our window shows; none: bare. */
static GtkWidget *
make_rows (int n)
{
  GtkWidget *grid = gtk_grid_new ();

  for (int i = 0; i < n; i++)
    {
      g_autofree char *text = g_strdup_printf ("Row %d of some words, and 12.5 mm", i);
      gtk_grid_attach (GTK_GRID (grid), gtk_label_new (text), 3 * (i % 3), i / 3, 1, 1);
      gtk_grid_attach (GTK_GRID (grid), gtk_entry_new (), 3 * (i % 3) + 1, i / 3, 1, 1);
      gtk_grid_attach (GTK_GRID (grid), gtk_button_new_with_label (text), 3 * (i % 3) + 2, i / 3, 1, 1);
    }
  return grid;
}

static void
on_bare_activate (GtkApplication *application, gpointer n_rows)
{
  GtkWidget *window = gtk_application_window_new (application);

  if (GPOINTER_TO_INT (n_rows) > 0)
    gtk_window_set_child (GTK_WINDOW (window), make_rows (GPOINTER_TO_INT (n_rows)));
  gtk_window_set_default_size (GTK_WINDOW (window), WIDTH, HEIGHT);
  gtk_window_present (GTK_WINDOW (window));
}

static GtkApplication *
make_bare (int n_rows)
{
  GtkApplication *application = gtk_application_new ("org.estimend.Bare", G_APPLICATION_NON_UNIQUE);

  g_signal_connect (application, "activate", G_CALLBACK (on_bare_activate), GINT_TO_POINTER (n_rows));
  return application;
}

/* As main() does. */
static GtkApplication *
make_ours (void)
{
  em_words_init (em_place_locale_dir ());
  return GTK_APPLICATION (em_application_new ());
}

static int
run (const char *which)
{
  gboolean is_ours = strcmp (which, "--ours") == 0;
  const char *argv[] = { "bench-start", "--demo", NULL };
  gboolean has_painted = FALSE;
  GtkApplication *application;

  setlocale (LC_ALL, "");
  application = is_ours ? make_ours () : make_bare (strcmp (which, "--plain") == 0 ? PLAIN_ROWS : 0);
  g_signal_connect (application, "window-added", G_CALLBACK (on_window_added), &has_painted);
  /* The first frame ends the process. */
  g_application_run (G_APPLICATION (application), is_ours ? 2 : 1, (char **) argv);
  return EXIT_FAILURE;
}

/* ---- the parent ---- */

static Start
start_once (const char *program, const char *which)
{
  const char *argv[] = { program, which, NULL };
  g_autofree char *told = NULL;
  gint64 from = g_get_monotonic_time ();
  Start start = { 0 };
  char *rest, *line;
  int status;

  em_bench_demand (g_spawn_sync (NULL, (char **) argv, NULL, G_SPAWN_DEFAULT, NULL, NULL, &told, NULL, &status, NULL) && status == 0, which);
  start.wall_s = (double) (g_get_monotonic_time () - from) / G_USEC_PER_SEC;
  line = strstr (told, "start ");
  em_bench_demand (line != NULL, "no first frame");
  start.cpu_s = g_ascii_strtod (line + strlen ("start "), &rest);
  start.resident_mb = g_ascii_strtod (rest, NULL);
  return start;
}

static void
keep_best (Start *best, Start start)
{
  best->cpu_s = MIN (best->cpu_s, start.cpu_s);
  best->wall_s = MIN (best->wall_s, start.wall_s);
  best->resident_mb = MIN (best->resident_mb, start.resident_mb);
}

static void
tell (const char *what, const Start *start)
{
  printf ("%-50s %4.0f ms of processor, %4.0f ms on the wall, %.1f MB resident\n", what, start->cpu_s * 1e3, start->wall_s * 1e3, start->resident_mb);
}

int
main (int argc, char **argv)
{
  Start ours = { 1e9, 1e9, 1e9 }, bare = ours, plain = ours;
  bool is_met;

  if (argc > 1)
    return run (argv[1]);
  if (g_getenv ("DISPLAY") == NULL)
    return SKIPPED;
  for (int i = 0; i < RUNS; i++)
    {
      keep_best (&ours, start_once (argv[0], "--ours"));
      keep_best (&bare, start_once (argv[0], "--bare"));
      keep_best (&plain, start_once (argv[0], "--plain"));
    }
  tell ("ours, the demo open", &ours);
  tell ("a bare window", &bare);
  tell ("a window of 180 plain labels, fields and buttons", &plain);
  is_met = em_bench_tell ("start to the demo's first frame against a bare window", ours.cpu_s / bare.cpu_s, "times", 1.3);
  is_met = em_bench_tell ("resident memory then", ours.resident_mb / bare.resident_mb, "times", 1.3) && is_met;
  return is_met ? EXIT_SUCCESS : EXIT_FAILURE;
}
