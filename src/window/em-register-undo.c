/* em-register-undo: states written to quotes in the folder, and the way back.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-register-undo.h"

#include "em-book-pages.h"
#include "em-words.h"

struct _EmRegisterUndo
{
  GtkWidget parent_instance;

  EmSteps   *steps;     /* of EmWritten */
  gboolean   is_busy;   /* a file is being written */
  GtkWidget *row, *said, *button[2];   /* by EmStepWay; said is NULL once the bar is gone */
};

G_DEFINE_FINAL_TYPE (EmRegisterUndo, em_register_undo, GTK_TYPE_WIDGET)

static guint written_signal;

/* A sent quote keeps its rates and metals, some ninety kilobytes, on either side. */
#define STEPS_BYTES ((gsize) 64 * 1024 * 1024)
enum { SPACING = 10, SAID_CHARS = 20 };

typedef struct
{
  char   *path, *title;
  EmState from, to;
  GBytes *before, *after;   /* the whole file; NULL until it is written */
} EmWritten;

static void
free_written (gpointer data)
{
  EmWritten *written = data;

  g_free (written->path);
  g_free (written->title);
  g_clear_pointer (&written->before, g_bytes_unref);
  g_clear_pointer (&written->after, g_bytes_unref);
  g_free (written);
}

/* One try under way. */
typedef struct
{
  EmRegisterUndo *self;      /* owned */
  EmWritten      *written;   /* owned when new, else of the steps */
  EmStepWay       way;
} EmTry;

/* "D-1001 A: Sent → Draft" */
static void
say (EmRegisterUndo *self, const EmWritten *written, EmStepWay way)
{
  const char *from = em_words_state (way == EM_STEP_FORTH ? written->from : written->to);
  const char *to = em_words_state (way == EM_STEP_FORTH ? written->to : written->from);
  g_autofree char *text = g_strdup_printf ("%s: %s → %s", written->title, from, to);

  gtk_label_set_text (GTK_LABEL (self->said), text);
}

static void
show (EmRegisterUndo *self)
{
  gboolean is_any = FALSE;

  for (int way = EM_STEP_BACK; way <= EM_STEP_FORTH; way++)
    {
      gtk_widget_set_sensitive (self->button[way], em_register_undo_can_go (self, (EmStepWay) way));
      is_any = is_any || em_steps_peek (self->steps, (EmStepWay) way) != NULL;
    }
  gtk_widget_set_visible (GTK_WIDGET (self), is_any);
}

static void
set_busy (EmRegisterUndo *self, gboolean is_busy)
{
  self->is_busy = is_busy;
  if (self->said != NULL)
    show (self);
}

static void
tell (EmRegisterUndo *self, const char *path, const GError *error)
{
  set_busy (self, FALSE);
  g_signal_emit (self, written_signal, 0, path, error != NULL ? error->message : NULL);
}

/* ---- a new state ---- */

static void
on_written (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autofree EmTry *try = data;
  g_autoptr (EmRegisterUndo) self = try->self;
  EmWritten *written = try->written;
  g_autoptr (GError) error = NULL;
  g_autofree char *path = g_strdup (written->path);

  (void) source;
  if (em_register_work_state_finish (result, &written->before, &written->after, &error))
    {
      if (self->said != NULL)
        say (self, written, EM_STEP_FORTH);
      em_steps_add_take (self->steps, 0, written, g_bytes_get_size (written->before) + g_bytes_get_size (written->after));
    }
  else
    free_written (written);
  tell (self, path, error);
}

static EmTry *
try_new (EmRegisterUndo *self, EmWritten *written, EmStepWay way)
{
  EmTry *try = g_new0 (EmTry, 1);

  try->self = g_object_ref (self);
  try->written = written;
  try->way = way;
  set_busy (self, TRUE);
  return try;
}

gboolean
em_register_undo_set_state (EmRegisterUndo *self, const char *path, const char *title, EmState from, EmState to, EmBasis *basis)
{
  EmWritten *written;

  if (self->is_busy)
    return FALSE;
  written = g_new0 (EmWritten, 1);
  written->path = g_strdup (path);
  written->title = g_strdup (title);
  written->from = from;
  written->to = to;
  em_register_work_state_async (path, to, basis, NULL, on_written, try_new (self, written, EM_STEP_FORTH));
  return TRUE;
}

/* ---- back and forth ---- */

static void
on_put_back (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autofree EmTry *try = data;
  g_autoptr (EmRegisterUndo) self = try->self;
  g_autofree char *path = g_strdup (try->written->path);
  g_autoptr (GError) error = NULL;

  (void) source;
  if (em_register_work_replace_finish (result, &error))
    {
      if (self->said != NULL)
        say (self, try->written, try->way);
      em_steps_go (self->steps, try->way);
    }
  /* Who has changed it meanwhile would lose that: there is no way over it. */
  else if (g_error_matches (error, EM_FILE_ERROR, EM_FILE_ERROR_CHANGED))
    em_steps_drop (self->steps, try->way);
  tell (self, path, error);
}

gboolean
em_register_undo_can_go (EmRegisterUndo *self, EmStepWay way)
{
  return !self->is_busy && em_steps_peek (self->steps, way) != NULL;
}

void
em_register_undo_go (EmRegisterUndo *self, EmStepWay way)
{
  EmWritten *written = em_steps_peek (self->steps, way);

  if (!em_register_undo_can_go (self, way))
    return;
  em_register_work_replace_async (written->path, way == EM_STEP_BACK ? written->after : written->before,
                                  way == EM_STEP_BACK ? written->before : written->after, on_put_back, try_new (self, written, way));
}

gboolean
em_register_undo_is_busy (EmRegisterUndo *self)
{
  return self->is_busy;
}

const char *
em_register_undo_get_said (EmRegisterUndo *self)
{
  return gtk_widget_get_visible (GTK_WIDGET (self)) ? gtk_label_get_text (GTK_LABEL (self->said)) : NULL;
}

/* ---- the bar ---- */

static void
on_undo (EmRegisterUndo *self)
{
  em_register_undo_go (self, EM_STEP_BACK);
}

static void
on_redo (EmRegisterUndo *self)
{
  em_register_undo_go (self, EM_STEP_FORTH);
}

static void
em_register_undo_dispose (GObject *object)
{
  EmRegisterUndo *self = EM_REGISTER_UNDO (object);

  self->said = NULL;
  g_clear_pointer (&self->row, gtk_widget_unparent);
  G_OBJECT_CLASS (em_register_undo_parent_class)->dispose (object);
}

static void
em_register_undo_finalize (GObject *object)
{
  em_steps_free (EM_REGISTER_UNDO (object)->steps);
  G_OBJECT_CLASS (em_register_undo_parent_class)->finalize (object);
}

static void
em_register_undo_class_init (EmRegisterUndoClass *class)
{
  G_OBJECT_CLASS (class)->dispose = em_register_undo_dispose;
  G_OBJECT_CLASS (class)->finalize = em_register_undo_finalize;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (class), GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (class), GTK_ACCESSIBLE_ROLE_STATUS);
  written_signal = g_signal_new ("written", EM_TYPE_REGISTER_UNDO, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 2, G_TYPE_STRING, G_TYPE_STRING);
}

static void
em_register_undo_init (EmRegisterUndo *self)
{
  self->steps = em_steps_new (free_written);
  em_steps_set_most (self->steps, STEPS_BYTES);
  self->row = gtk_grid_new ();
  self->said = gtk_label_new (NULL);
  gtk_label_set_xalign (GTK_LABEL (self->said), 0);
  gtk_label_set_wrap (GTK_LABEL (self->said), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (self->said), PANGO_WRAP_WORD_CHAR);
  gtk_label_set_width_chars (GTK_LABEL (self->said), SAID_CHARS);
  gtk_widget_set_hexpand (self->said, TRUE);
  gtk_grid_attach (GTK_GRID (self->row), self->said, 0, 0, 1, 1);
  for (int way = EM_STEP_BACK; way <= EM_STEP_FORTH; way++)
    {
      self->button[way] = em_step_button_new ((EmStepWay) way, TRUE);
      g_signal_connect_swapped (self->button[way], "clicked", way == EM_STEP_BACK ? G_CALLBACK (on_undo) : G_CALLBACK (on_redo), self);
      gtk_grid_attach (GTK_GRID (self->row), self->button[way], way + 1, 0, 1, 1);
    }
  gtk_grid_set_column_spacing (GTK_GRID (self->row), SPACING);
  gtk_widget_add_css_class (self->row, "step-bar");
  gtk_widget_set_parent (self->row, GTK_WIDGET (self));
  gtk_accessible_update_relation (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_RELATION_LABELLED_BY, self->said, NULL, -1);
  gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
}

GtkWidget *
em_register_undo_new (void)
{
  return g_object_new (EM_TYPE_REGISTER_UNDO, NULL);
}
