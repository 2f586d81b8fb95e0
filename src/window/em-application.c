/* em-application: the program.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "config.h"

#include "em-application.h"

#include "em-autosave.h"
#include "em-book-window.h"
#include "em-demo.h"
#include "em-lock.h"
#include "em-lock-release.h"
#include "em-look.h"
#include "em-manners.h"
#include "em-picture.h"
#include "em-place.h"
#include "em-register-window.h"
#include "em-save.h"
#include "em-settings.h"
#include "em-words.h"

#include <glib/gi18n.h>

struct _EmApplication
{
  GtkApplication parent_instance;

  EmBasis *basis;          /* NULL until started, or when it could not be read */
  char    *basis_problem;
  char    *demo;           /* to open at the start; "" the first */
  gboolean has_offered;    /* what a crash left */
  EmPictureWish *wish;     /* a picture of the window, then leave; NULL: none */
};

G_DEFINE_FINAL_TYPE (EmApplication, em_application, GTK_TYPE_APPLICATION)

typedef struct
{
  const char *action;
  const char *accels[3];
} EmAccel;

static const EmAccel accels[] =
{
  { "app.new", { "<Control>n" } },
  { "app.quit", { "<Control>q" } },
  { "win.open", { "<Control>o" } },
  { "win.save", { "<Control>s" } },
  { "win.save-as", { "<Control><Shift>s" } },
  { "win.print", { "<Control>p" } },
  { "win.export-pdf", { "<Control>e" } },
  { "win.close", { "<Control>w" } },
  { "win.undo", { "<Control>z" } },
  { "win.redo", { "<Control><Shift>z", "<Control>y" } },
  { "win.read-notes", { "<Control>r" } },
  { "win.add", { "<Control>plus", "<Control>equal" } },
  { "win.duplicate", { "<Control>d" } },
  { "win.remove", { "<Control><Shift>Delete" } },
  { "win.accept", { "<Control>Return", "<Control>KP_Enter" } },
  { "win.move-up", { "<Alt>Up" } },
  { "win.move-down", { "<Alt>Down" } },
  { "win.copy-feature", { "<Control><Shift>c" } },
  { "win.paste-feature", { "<Control><Shift>v" } },
  { "win.switch-units", { "<Control>u" } },
  { "app.register", { "<Control>l" } },
  { "app.book::money", { "<Control>b" } },
  { "win.deposit", { "F8" } },
  { "win.paper", { "F9" } },
  { "win.show-help-overlay", { "<Control>question", "F1" } },
  { "win.focus-pane(1)", { "<Alt>1" } },
  { "win.focus-pane(2)", { "<Alt>2" } },
  { "win.focus-pane(3)", { "<Alt>3" } },
  { "win.focus-pane(4)", { "<Alt>4" } },
};

static EmWindow *
active_window (EmApplication *self)
{
  GtkWindow *window = gtk_application_get_active_window (GTK_APPLICATION (self));

  return EM_IS_WINDOW (window) ? EM_WINDOW (window) : NULL;
}

/* stamp all zero: by its path alone. */
static EmWindow *
find_file (EmApplication *self, const char *path, const EmFileStamp *stamp)
{
  for (GList *window = gtk_application_get_windows (GTK_APPLICATION (self)); window != NULL; window = window->next)
    if (EM_IS_WINDOW (window->data))
      {
        EmDocument *document = em_window_get_document (window->data);
        const EmFileStamp *open = em_document_get_stamp (document);
        if (g_strcmp0 (em_document_get_path (document), path) == 0
            || (stamp->inode != 0 && open->inode == stamp->inode && open->device == stamp->device))
          return window->data;
      }
  return NULL;
}

static gboolean
has_other_files (EmApplication *self, const char *path)
{
  for (GList *window = gtk_application_get_windows (GTK_APPLICATION (self)); window != NULL; window = window->next)
    if (EM_IS_WINDOW (window->data))
      {
        const char *open = em_document_get_path (em_window_get_document (window->data));
        if (open != NULL && !g_str_equal (open, path))
          return TRUE;
      }
  return FALSE;
}

EmWindow *
em_application_find_path (EmApplication *self, const char *path)
{
  EmFileStamp stamp = { 0 };
  EmWindow *window = find_file (self, path, &stamp);

  /* The folder may be far away: it is asked only where the file could have two names. */
  if (window != NULL || !has_other_files (self, path))
    return window;
  em_file_stamp (path, &stamp);
  return find_file (self, path, &stamp);
}

/* A window that nothing was done in, the active one first; NULL: none. */
static EmWindow *
blank_window (EmApplication *self)
{
  for (GList *window = gtk_application_get_windows (GTK_APPLICATION (self)); window != NULL; window = window->next)
    if (EM_IS_WINDOW (window->data) && em_document_is_blank (em_window_get_document (window->data)))
      return window->data;
  return NULL;
}

EmWindow *
em_application_add_window (EmApplication *self, EmDocument *document)
{
  EmWindow *window = blank_window (self);

  if (window != NULL)
    {
      em_window_set_document (window, document);
      gtk_widget_activate_action (GTK_WIDGET (window), "win.work", NULL);
    }
  else
    window = em_window_new (GTK_APPLICATION (self), document);
  gtk_window_present (GTK_WINDOW (window));
  return window;
}

static void
on_new (GSimpleAction *action, GVariant *target, gpointer data)
{
  EmApplication *self = data;
  g_autoptr (EmDocument) document = em_document_new (self->basis);
  EmWindow *window = em_window_new (GTK_APPLICATION (self), document);

  (void) action;
  (void) target;
  gtk_window_present (GTK_WINDOW (window));
}

static void
open_demo (EmApplication *self, const char *id)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (EmDocument) document = em_demo_open (id, self->basis, &error);
  EmWindow *window = active_window (self);

  if (document != NULL)
    em_application_add_window (self, document);
  else if (window != NULL)
    em_window_say (window, error->message);
  else
    g_printerr ("%s\n", error->message);
}

static void
on_demo (GSimpleAction *action, GVariant *target, gpointer data)
{
  (void) action;
  open_demo (data, g_variant_get_string (target, NULL));
}

static void
on_open_path (GSimpleAction *action, GVariant *target, gpointer data)
{
  EmApplication *self = data;
  g_autoptr (GFile) file = g_file_new_for_path (g_variant_get_string (target, NULL));

  (void) action;
  em_application_open_quote (self, file, active_window (self));
}

static void
on_book (GSimpleAction *action, GVariant *target, gpointer data)
{
  EmApplication *self = data;

  (void) action;
  if (self->basis != NULL)
    em_book_window_present (self, active_window (self), g_variant_get_string (target, NULL));
}

static void
on_register (GSimpleAction *action, GVariant *target, gpointer data)
{
  EmApplication *self = data;

  (void) action;
  (void) target;
  if (self->basis != NULL)
    em_register_window_present (self);
}

static void
on_scheme (GSimpleAction *action, GVariant *state, gpointer data)
{
  const char *id = g_variant_get_string (state, NULL);

  (void) data;
  for (int i = 0; i < EM_N_SCHEME; i++)
    if (g_str_equal (em_scheme_ids[i], id))
      {
        g_settings_set_enum (em_settings_get (), "scheme", i);
        em_look_set_scheme ((EmScheme) i);
        g_simple_action_set_state (action, state);
      }
}

/* The program's picture as it comes with it, installed or not; NULL where nothing here can draw it. */
static GdkTexture *
load_picture (void)
{
  g_autoptr (GBytes) bytes = g_resources_lookup_data ("/org/estimend/Estimend/icons/scalable/apps/" EM_APP_ID ".svg", G_RESOURCE_LOOKUP_FLAGS_NONE, NULL);

  return bytes != NULL ? gdk_texture_new_from_bytes (bytes, NULL) : NULL;
}

/* GTK lets the program's name be selected, gives it the keyboard first, and so selects it. */
static void
unselect_labels (GtkWidget *within)
{
  if (GTK_IS_LABEL (within))
    gtk_label_select_region (GTK_LABEL (within), 0, 0);
  for (GtkWidget *child = gtk_widget_get_first_child (within); child != NULL; child = gtk_widget_get_next_sibling (child))
    unselect_labels (child);
}

static void
on_about (GSimpleAction *action, GVariant *target, gpointer data)
{
  EmApplication *self = data;
  g_autoptr (GdkTexture) picture = load_picture ();

  (void) action;
  (void) target;
  GtkWidget *dialog
    = g_object_new (GTK_TYPE_ABOUT_DIALOG, "transient-for", gtk_application_get_active_window (GTK_APPLICATION (self)), "modal", TRUE,
                    "destroy-with-parent", TRUE, "program-name", "Estimend", "version", EM_VERSION, "logo-icon-name", EM_APP_ID,
                    "comments", _("Prices micro weld repairs of molds and dies from the customer’s words."),
                    "copyright", "© 2026 The Estimend developers", "license-type", GTK_LICENSE_GPL_3_0, NULL);
  if (picture != NULL)
    gtk_about_dialog_set_logo (GTK_ABOUT_DIALOG (dialog), GDK_PAINTABLE (picture));
  gtk_window_present (GTK_WINDOW (dialog));
  unselect_labels (dialog);
}

static void
on_quit (GSimpleAction *action, GVariant *target, gpointer data)
{
  GList *windows = g_list_copy (gtk_application_get_windows (data));

  (void) action;
  (void) target;
  for (GList *window = windows; window != NULL; window = window->next)
    gtk_window_close (window->data);
  g_list_free (windows);
}

static void
on_close_other (GSimpleAction *action, GVariant *target, gpointer data)
{
  (void) action;
  (void) target;
  gtk_window_close (data);
}

void
em_application_end_dialog (GtkDialog *dialog)
{
  gtk_window_set_transient_for (GTK_WINDOW (dialog), NULL);
  gtk_window_destroy (GTK_WINDOW (dialog));
}

GActionMap *
em_application_make_closable (GtkWindow *window)
{
  g_autoptr (GSimpleActionGroup) group = g_simple_action_group_new ();
  const GActionEntry close = { .name = "close", .activate = on_close_other };

  g_action_map_add_action_entries (G_ACTION_MAP (group), &close, 1, window);
  gtk_widget_insert_action_group (GTK_WIDGET (window), "win", G_ACTION_GROUP (group));
  return G_ACTION_MAP (group);
}

static const GActionEntry entries[] =
{
  { .name = "new", .activate = on_new },
  { .name = "demo", .activate = on_demo, .parameter_type = "s" },
  { .name = "open-path", .activate = on_open_path, .parameter_type = "s" },
  { .name = "book", .activate = on_book, .parameter_type = "s" },
  { .name = "register", .activate = on_register },
  { .name = "scheme", .state = "'system'", .change_state = on_scheme, .parameter_type = "s" },
  { .name = "about", .activate = on_about },
  { .name = "quit", .activate = on_quit },
};

static void
em_application_startup (GApplication *application)
{
  EmApplication *self = EM_APPLICATION (application);
  g_autoptr (GError) error = NULL;

  G_APPLICATION_CLASS (em_application_parent_class)->startup (application);
  em_lock_set_teller (em_words_moment);
  em_look_init ();
  em_manners_init ();
  if (em_place_is_build ())
    {
      g_autofree char *icons = g_build_filename (em_place_data_dir (), "icons", NULL);
      gtk_icon_theme_add_search_path (gtk_icon_theme_get_for_display (gdk_display_get_default ()), icons);
    }
  em_look_set_scheme ((EmScheme) g_settings_get_enum (em_settings_get (), "scheme"));
  g_action_map_add_action_entries (G_ACTION_MAP (self), entries, G_N_ELEMENTS (entries), self);
  g_simple_action_set_state (G_SIMPLE_ACTION (g_action_map_lookup_action (G_ACTION_MAP (self), "scheme")),
                             g_variant_new_string (em_scheme_ids[g_settings_get_enum (em_settings_get (), "scheme")]));
  for (gsize i = 0; i < G_N_ELEMENTS (accels); i++)
    gtk_application_set_accels_for_action (GTK_APPLICATION (self), accels[i].action, (const char *const *) accels[i].accels);
  self->basis = em_basis_load (&error);
  if (self->basis == NULL)
    self->basis_problem = g_strdup (error->message);
}

/* Without rates nothing can be priced: say which file, and leave it to be mended. */
static gboolean
has_basis (EmApplication *self)
{
  GtkWidget *dialog;

  if (self->basis != NULL)
    return TRUE;
  g_printerr ("%s\n", self->basis_problem);
  dialog = gtk_message_dialog_new (NULL, 0, GTK_MESSAGE_ERROR, GTK_BUTTONS_CLOSE, "%s", _("The rate book can’t be read"));
  gtk_message_dialog_format_secondary_text (GTK_MESSAGE_DIALOG (dialog), "%s", self->basis_problem);
  gtk_application_add_window (GTK_APPLICATION (self), GTK_WINDOW (dialog));
  g_signal_connect (dialog, "response", G_CALLBACK (gtk_window_destroy), NULL);
  gtk_window_present (GTK_WINDOW (dialog));
  return FALSE;
}

static void
wish_granted (EmApplication *self)
{
  if (self->wish != NULL && active_window (self) != NULL)
    em_picture_take (active_window (self), self->wish);
}

/* What a crash left, once a start; not into a picture or a demonstration. */
static void
offer_once (EmApplication *self)
{
  if (!self->has_offered && self->wish == NULL)
    em_autosave_offer (self);
  self->has_offered = TRUE;
}

static void
em_application_activate (GApplication *application)
{
  EmApplication *self = EM_APPLICATION (application);
  EmWindow *window = active_window (self);

  if (!has_basis (self))
    return;
  if (window != NULL && self->demo == NULL)
    {
      gtk_window_present (GTK_WINDOW (window));
      return;
    }
  if (self->demo != NULL)
    open_demo (self, self->demo);
  else
    {
      g_autoptr (EmDocument) document = em_document_new (self->basis);
      window = em_application_add_window (self, document);
      if (!g_settings_get_boolean (em_settings_get (), "is-first-start-done"))
        em_window_show_welcome (window);
      offer_once (self);
    }
  g_clear_pointer (&self->demo, g_free);
  wish_granted (self);
}

static void
em_application_open (GApplication *application, GFile **files, int n_files, const char *hint)
{
  EmApplication *self = EM_APPLICATION (application);

  (void) hint;
  if (!has_basis (self))
    return;
  for (int i = 0; i < n_files; i++)
    {
      g_autoptr (EmDocument) blank = em_document_new (self->basis);
      EmWindow *window = active_window (self);
      if (window == NULL)
        window = em_application_add_window (self, blank);
      em_window_open_file (window, files[i]);
    }
  offer_once (self);
  wish_granted (self);
}

static int
em_application_handle_local_options (GApplication *application, GVariantDict *options)
{
  EmApplication *self = EM_APPLICATION (application);
  const char *path = NULL, *demo = NULL;

  if (g_variant_dict_lookup (options, "demo-name", "&s", &demo) || g_variant_dict_contains (options, "demo"))
    self->demo = g_strdup (demo != NULL ? demo : "");
  if (g_variant_dict_lookup (options, "screenshot", "^&ay", &path))
    self->wish = em_picture_wish_new (path, options);
  /* A picture or a demo is this process's own affair. */
  if (self->wish != NULL || self->demo != NULL)
    g_application_set_flags (application, g_application_get_flags (application) | G_APPLICATION_NON_UNIQUE);
  return -1;
}

static void
em_application_finalize (GObject *object)
{
  EmApplication *self = EM_APPLICATION (object);

  g_clear_pointer (&self->basis, em_basis_unref);
  g_free (self->basis_problem);
  g_free (self->demo);
  g_clear_pointer (&self->wish, em_picture_wish_free);
  G_OBJECT_CLASS (em_application_parent_class)->finalize (object);
}

/* No window is there any more to wait with. */
static void
em_application_shutdown (GApplication *application)
{
  G_APPLICATION_CLASS (em_application_parent_class)->shutdown (application);
  em_lock_release_wait (EM_LOCK_PATIENCE_MS);
}

static void
em_application_class_init (EmApplicationClass *class)
{
  GApplicationClass *application_class = G_APPLICATION_CLASS (class);

  G_OBJECT_CLASS (class)->finalize = em_application_finalize;
  application_class->startup = em_application_startup;
  application_class->shutdown = em_application_shutdown;
  application_class->activate = em_application_activate;
  application_class->open = em_application_open;
  application_class->handle_local_options = em_application_handle_local_options;
}

static const GOptionEntry options[] =
{
  { "demo", 0, 0, G_OPTION_ARG_NONE, NULL, N_("Open a demo quote"), NULL },
  { "demo-name", 0, G_OPTION_FLAG_HIDDEN, G_OPTION_ARG_STRING, NULL, NULL, NULL },
  { "screenshot", 0, G_OPTION_FLAG_HIDDEN, G_OPTION_ARG_FILENAME, NULL, NULL, NULL },
  { "size", 0, G_OPTION_FLAG_HIDDEN, G_OPTION_ARG_STRING, NULL, NULL, NULL },
  { "text-scale", 0, G_OPTION_FLAG_HIDDEN, G_OPTION_ARG_DOUBLE, NULL, NULL, NULL },
  { "dark", 0, G_OPTION_FLAG_HIDDEN, G_OPTION_ARG_NONE, NULL, NULL, NULL },
  { "high-contrast", 0, G_OPTION_FLAG_HIDDEN, G_OPTION_ARG_NONE, NULL, NULL, NULL },
  { "right-to-left", 0, G_OPTION_FLAG_HIDDEN, G_OPTION_ARG_NONE, NULL, NULL, NULL },
  { "actions", 0, G_OPTION_FLAG_HIDDEN, G_OPTION_ARG_STRING, NULL, NULL, NULL },
  { NULL }
};

static void
em_application_init (EmApplication *self)
{
  g_application_add_main_option_entries (G_APPLICATION (self), options);
}

/* No resource path: with one, GTK makes the window of shortcuts along with every window of ours, and may read the desktop's icon theme
 * twice. */
EmApplication *
em_application_new (void)
{
  return g_object_new (EM_TYPE_APPLICATION, "application-id", EM_APP_ID, "flags", G_APPLICATION_HANDLES_OPEN,
                       "resource-base-path", NULL, NULL);
}

EmBasis *
em_application_get_basis (EmApplication *self)
{
  return self->basis;
}

void
em_application_set_basis (EmApplication *self, EmBasis *basis)
{
  EmBasis *old = self->basis;

  self->basis = em_basis_ref (basis);
  g_clear_pointer (&old, em_basis_unref);
  for (GList *window = gtk_application_get_windows (GTK_APPLICATION (self)); window != NULL; window = window->next)
    if (EM_IS_WINDOW (window->data))
      em_document_set_basis (em_window_get_document (window->data), basis);
}

typedef struct
{
  EmApplication *application;   /* owned */
  EmWindow      *window;        /* owned or NULL */
  char          *path;
  EmQuoteFile    file;
  gboolean       is_loaded, is_missing;
  EmLock        *lock;          /* owned or NULL */
  char          *locked;        /* who else has it open, in words; or NULL */
} EmLoading;

static void
free_loading (gpointer data)
{
  EmLoading *loading = data;

  g_object_unref (loading->application);
  g_clear_object (&loading->window);
  g_free (loading->path);
  if (loading->is_loaded)
    em_quote_file_clear (&loading->file);
  em_lock_free (loading->lock);
  g_free (loading->locked);
  g_free (loading);
}

static void
load_in_thread (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  EmLoading *loading = data;
  g_autoptr (GError) lock_error = NULL;
  GError *error = NULL;

  (void) source;
  (void) cancellable;
  loading->is_loaded = em_quote_file_load (loading->path, &loading->file, &error);
  if (loading->is_loaded)
    {
      em_lock_release_wait (EM_LOCK_PATIENCE_MS);
      /* Where no lock can be put there is nobody to tell, or nothing to save. */
      loading->lock = em_lock_take (loading->path, &lock_error);
      if (g_error_matches (lock_error, EM_FILE_ERROR, EM_FILE_ERROR_LOCKED))
        loading->locked = g_strdup (lock_error->message);
      g_task_return_boolean (task, TRUE);
    }
  else
    {
      loading->is_missing = !g_file_test (loading->path, G_FILE_TEST_EXISTS);
      g_task_return_error (task, error);
    }
}

static void
on_loaded (GObject *source, GAsyncResult *result, gpointer data)
{
  EmLoading *loading = g_task_get_task_data (G_TASK (result));
  EmApplication *self = loading->application;
  g_autoptr (GError) error = NULL;

  (void) source;
  (void) data;
  g_application_release (G_APPLICATION (self));
  if (loading->window != NULL)
    em_window_end_work (loading->window);
  if (!g_task_propagate_boolean (G_TASK (result), &error))
    {
      if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
        return;
      if (loading->is_missing)
        em_settings_drop_recent (loading->path);
      g_autofree char *name = g_path_get_basename (loading->path);
      g_autofree char *sentence = g_strdup_printf (_("%s could not be opened. %s"), name, error->message);
      if (loading->window != NULL)
        em_window_say (loading->window, sentence);
      else
        g_printerr ("%s\n", sentence);
      return;
    }
  /* By another path, or twice in a row. */
  EmWindow *open = find_file (self, loading->path, &loading->file.stamp);
  if (open != NULL)
    {
      gtk_window_present (GTK_WINDOW (open));
      return;
    }
  guint n_kept = loading->file.n_kept;
  g_autoptr (EmDocument) document = em_document_new_take (self->basis, &loading->file, loading->path);
  EmWindow *window = em_application_add_window (self, document);
  em_document_set_lock_take (document, g_steal_pointer (&loading->lock));
  em_settings_add_recent (loading->path);
  if (loading->locked != NULL)
    {
      g_autofree char *sentence = g_strdup_printf (_("%s If both are changed, the one saved last is asked first."), loading->locked);
      em_window_say (window, sentence);
    }
  else if (n_kept > 0)
    {
      g_autofree char *sentence = g_strdup_printf (ngettext ("A newer version wrote this file. %u thing it holds can’t be used here: it is not in the price, and is kept when the quote is saved.",
                                                             "A newer version wrote this file. %u things it holds can’t be used here: they are not in the price, and are kept when the quote is saved.", n_kept), n_kept);
      em_window_say (window, sentence);
    }
}

void
em_application_open_quote (EmApplication *self, GFile *file, EmWindow *window)
{
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  g_autoptr (GTask) task = g_task_new (NULL, cancellable, on_loaded, NULL);
  EmLoading *loading;

  if (g_file_peek_path (file) == NULL)
    {
      em_window_say (window, _("Only files on this machine or a mounted folder can be opened."));
      return;
    }
  EmWindow *open = find_file (self, g_file_peek_path (file), &(EmFileStamp) { 0 });
  if (open != NULL)
    {
      gtk_window_present (GTK_WINDOW (open));
      return;
    }
  loading = g_new0 (EmLoading, 1);
  loading->application = g_object_ref (self);
  loading->window = window != NULL ? g_object_ref (window) : NULL;
  loading->path = g_file_get_path (file);
  g_task_set_task_data (task, loading, free_loading);
  g_task_set_return_on_cancel (task, TRUE);
  g_application_hold (G_APPLICATION (self));
  if (window != NULL)
    {
      g_autofree char *name = g_path_get_basename (loading->path);
      g_autofree char *text = g_strdup_printf (_("Opening %s… Dismiss to stop."), name);
      em_window_begin_work (window, text, cancellable);
    }
  g_task_run_in_thread (task, load_in_thread);
}

int
em_application_main (int argc, char **argv)
{
  g_autoptr (EmApplication) application = em_application_new ();

  return g_application_run (G_APPLICATION (application), argc, argv);
}
