/* em-register-window: the shop's past quotes.
 *
 * The files are read by threads; what is on the screen is a snapshot that the next scan replaces.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-register-window.h"

#include "em-field.h"
#include "em-register-list.h"
#include "em-register-work.h"
#include "em-settings.h"
#include "em-words.h"

#include <glib/gi18n.h>
#include <math.h>

struct _EmRegisterWindow
{
  GtkWindow parent_instance;

  EmApplication  *application;   /* borrowed: it owns all windows */
  EmRegister     *reg;           /* owned; NULL: no folder yet, or nothing read */
  EmRegisterList *list;          /* owned */
  GtkSingleSelection *selection; /* owned */
  GCancellable   *scan;          /* owned; NULL: none runs */
  GCancellable   *looking;       /* owned; of what is worked out for the selected quote */
  GtkFileChooserNative *chooser; /* owned */
  char           *said;          /* what the summary says instead for now, or NULL */

  GtkWidget *pages, *search, *states, *dates, *table, *summary, *progress, *cancel_button, *folder_label;
  GtkWidget *panel, *title, *facts, *state, *open_button, *copy_button, *revise_button, *changes;
};

G_DEFINE_FINAL_TYPE (EmRegisterWindow, em_register_window, GTK_TYPE_WINDOW)

typedef enum { COLUMN_NUMBER, COLUMN_DATE, COLUMN_CUSTOMER, COLUMN_TOOL, COLUMN_STATE, COLUMN_NET, N_COLUMN } EmRegisterColumn;
enum { DATES_ANY, DATES_THREE_MONTHS, DATES_TWELVE_MONTHS, DATES_THIS_YEAR };

enum { PANEL_WIDTH = 290 };

static void rescan (EmRegisterWindow *self);

/* ---- rows ---- */

static char *
number_text (const EmRegisterEntry *entry)
{
  g_autofree char *base = g_path_get_basename (entry->path);
  const char *number = entry->text[EM_ENTRY_NUMBER], *revision = entry->text[EM_ENTRY_REVISION];

  if (*number == '\0')
    return g_strdup (base);
  return *revision != '\0' ? g_strdup_printf ("%s · %s", number, revision) : g_strdup (number);
}

static char *
net_text (const EmRegisterEntry *entry)
{
  g_autofree char *money = entry->has_net ? em_words_money (entry->net_minor, &entry->currency) : NULL;

  if (money == NULL)
    return g_strdup (_("no price"));
  return entry->is_partial ? g_strdup_printf (_("%s, in part"), money) : g_steal_pointer (&money);
}

static char *
cell_text (const EmRegisterEntry *entry, EmRegisterColumn column)
{
  if (entry->problem != NULL && column != COLUMN_NUMBER)
    return g_strdup (column == COLUMN_CUSTOMER ? entry->problem : "");
  switch (column)
    {
    case COLUMN_NUMBER: return number_text (entry);
    case COLUMN_DATE: return em_words_date (entry->text[EM_ENTRY_DATE]);
    case COLUMN_CUSTOMER: return g_strdup (entry->text[EM_ENTRY_CUSTOMER]);
    case COLUMN_TOOL: return g_strdup (entry->text[EM_ENTRY_TOOL]);
    case COLUMN_STATE: return g_strdup (em_words_state (entry->state));
    case COLUMN_NET: return net_text (entry);
    case N_COLUMN: break;
    }
  return g_strdup ("");
}

static void
on_setup (GtkSignalListItemFactory *factory, GtkListItem *item)
{
  EmRegisterColumn column = (EmRegisterColumn) GPOINTER_TO_INT (g_object_get_data (G_OBJECT (factory), "column"));
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), column == COLUMN_NET ? 1 : 0);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  if (column == COLUMN_NET || column == COLUMN_DATE)
    gtk_widget_add_css_class (label, "money");
  if (column == COLUMN_NUMBER)
    gtk_widget_add_css_class (label, "strong");
  gtk_list_item_set_child (item, label);
}

static void
on_bind (GtkSignalListItemFactory *factory, GtkListItem *item)
{
  EmRegisterColumn column = (EmRegisterColumn) GPOINTER_TO_INT (g_object_get_data (G_OBJECT (factory), "column"));
  const EmRegisterEntry *entry = em_register_item_get_entry (gtk_list_item_get_item (item));
  GtkWidget *label = gtk_list_item_get_child (item);
  g_autofree char *text = cell_text (entry, column);

  gtk_label_set_text (GTK_LABEL (label), text);
  gtk_widget_set_tooltip_text (label, *text != '\0' ? text : NULL);
  if (entry->problem != NULL && column == COLUMN_CUSTOMER)
    gtk_widget_add_css_class (label, "problem");
  else
    gtk_widget_remove_css_class (label, "problem");
}

/* Widths are told for text of the usual size. */
static int
scaled (int width)
{
  int dpi = 0;

  g_object_get (gtk_settings_get_default (), "gtk-xft-dpi", &dpi, NULL);
  return dpi > 0 ? width * dpi / (96 * PANGO_SCALE) : width;
}

static void
add_column (EmRegisterWindow *self, EmRegisterColumn column, const char *title, int width)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
  g_autoptr (GtkColumnViewColumn) view_column = NULL;

  g_object_set_data (G_OBJECT (factory), "column", GINT_TO_POINTER ((int) column));
  g_signal_connect (factory, "setup", G_CALLBACK (on_setup), NULL);
  g_signal_connect (factory, "bind", G_CALLBACK (on_bind), NULL);
  view_column = gtk_column_view_column_new (title, factory);
  gtk_column_view_column_set_resizable (view_column, TRUE);
  gtk_column_view_column_set_expand (view_column, column == COLUMN_CUSTOMER || column == COLUMN_TOOL);
  if (width > 0)
    gtk_column_view_column_set_fixed_width (view_column, scaled (width));
  gtk_column_view_append_column (GTK_COLUMN_VIEW (self->table), view_column);
}

/* ---- searching ---- */

/* The first day wanted, ISO 8601; NULL: any. */
static char *
dup_first_day (EmRegisterWindow *self)
{
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();
  g_autoptr (GDateTime) then = NULL;

  switch (gtk_drop_down_get_selected (GTK_DROP_DOWN (self->dates)))
    {
    case DATES_THREE_MONTHS: then = g_date_time_add_months (now, -3); break;
    case DATES_TWELVE_MONTHS: then = g_date_time_add_months (now, -12); break;
    case DATES_THIS_YEAR: return g_date_time_format (now, "%Y-01-01");
    default: return NULL;
    }
  return g_date_time_format (then, "%Y-%m-%d");
}

/* "12 quotes · won 4 of 9 decided (44 %), by value 51 % · 3 jobs took 1.08 times what was reckoned" */
static char *
summary_text (EmRegisterWindow *self, const GArray *found)
{
  EmRegisterSummary sum;
  g_autoptr (GString) text = g_string_new (NULL);

  em_register_sum_up (self->reg, found, &sum);
  g_string_append_printf (text, ngettext ("%u quote", "%u quotes", found->len), found->len);
  if (sum.n_unreadable > 0)
    g_string_append_printf (text, ngettext (" · %u file can’t be read", " · %u files can’t be read", sum.n_unreadable), sum.n_unreadable);
  if (!isnan (sum.won_ratio))
    {
      g_autofree char *share = em_words_percent (llround (sum.won_ratio * 1e6));
      g_string_append_printf (text, _(" · won %u of %u decided, %s"), sum.n[EM_STATE_WON],
                              sum.n[EM_STATE_WON] + sum.n[EM_STATE_LOST] + sum.n[EM_STATE_LAPSED], share);
    }
  if (!isnan (sum.won_value_ratio))
    {
      g_autofree char *share = em_words_percent (llround (sum.won_value_ratio * 1e6));
      g_string_append_printf (text, _(" · by value %s"), share);
    }
  if (!isnan (sum.actual_ratio))
    {
      g_autofree char *ratio = em_words_number (sum.actual_ratio, 2);
      g_string_append_printf (text, ngettext (" · %u job took %s times the hours quoted", " · %u jobs took %s times the hours quoted", sum.n_timed),
                              sum.n_timed, ratio);
    }
  return g_string_free (g_steal_pointer (&text), FALSE);
}

static void
show_found (EmRegisterWindow *self)
{
  guint state = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->states));
  g_autofree char *first_day = dup_first_day (self);
  EmRegisterQuery query = { gtk_editable_get_text (GTK_EDITABLE (self->search)), state > 0 ? 1u << (state - 1) : 0, first_day, NULL };
  g_autoptr (GArray) found = NULL;
  g_autofree char *summary = NULL;

  gtk_stack_set_visible_child_name (GTK_STACK (self->pages), self->reg == NULL ? "empty" : "table");
  gtk_label_set_text (GTK_LABEL (self->folder_label), self->reg != NULL ? em_register_get_folder (self->reg) : "");
  if (self->reg == NULL)
    {
      em_register_list_show (self->list, NULL, NULL);
      gtk_label_set_text (GTK_LABEL (self->summary), self->said != NULL ? self->said : "");
      return;
    }
  found = em_register_search (self->reg, &query);
  em_register_list_show (self->list, self->reg, found);
  summary = summary_text (self, found);
  gtk_label_set_text (GTK_LABEL (self->summary), self->said != NULL ? self->said : summary);
}

static void
say (EmRegisterWindow *self, const char *sentence)
{
  g_free (self->said);
  self->said = g_strdup (sentence);
  show_found (self);
}

static void
on_query (EmRegisterWindow *self)
{
  g_clear_pointer (&self->said, g_free);
  show_found (self);
}

/* ---- the selected quote ---- */

static EmRegisterItem *
selected_item (EmRegisterWindow *self)
{
  return gtk_single_selection_get_selected_item (self->selection);
}

/* A line for each fact that is known. */
static char *
facts_text (const EmRegisterEntry *entry)
{
  g_autoptr (GString) text = g_string_new (NULL);
  g_autofree char *date = em_words_date (entry->text[EM_ENTRY_DATE]), *net = net_text (entry);
  const char *texts[] = { entry->text[EM_ENTRY_CUSTOMER], entry->text[EM_ENTRY_REFERENCE], entry->text[EM_ENTRY_TOOL], entry->text[EM_ENTRY_TOOL_NUMBER], date };

  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    if (texts[i] != NULL && *texts[i] != '\0')
      g_string_append_printf (text, "%s\n", texts[i]);
  g_string_append_printf (text, ngettext ("%d feature, ", "%d features, ", (gulong) entry->n_features), entry->n_features);
  g_string_append_printf (text, _("%s before taxes"), net);
  if (entry->quoted_bench_s > 0 && entry->actual_bench_s > 0)
    {
      g_autofree char *quoted = em_words_duration (entry->quoted_bench_s), *actual = em_words_duration (entry->actual_bench_s);
      g_string_append_printf (text, _("\nAt the bench: %s quoted, %s taken"), quoted, actual);
    }
  g_string_append_printf (text, "\n%s", entry->path);
  return g_string_free (g_steal_pointer (&text), FALSE);
}

static void
on_compared (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (EmRegisterWindow) self = data;
  g_autoptr (GError) error = NULL;
  g_autofree char *text = em_register_work_compare_finish (result, &error);

  (void) source;
  if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED) || self->changes == NULL)
    return;
  gtk_label_set_text (GTK_LABEL (self->changes), text != NULL ? text : error->message);
}

/* The entry the selected one revises; its path, or NULL. */
static char *
dup_revised_path (EmRegisterWindow *self, const EmRegisterEntry *entry)
{
  if (*entry->text[EM_ENTRY_REVISES] == '\0')
    return NULL;
  for (guint i = 0; i < em_register_get_length (self->reg); i++)
    {
      const EmRegisterEntry *other = em_register_get_entry (self->reg, i);
      if (other == entry || other->problem != NULL)
        continue;
      g_autofree char *name = em_revision_name (other->text[EM_ENTRY_NUMBER], other->text[EM_ENTRY_REVISION]);
      if (g_str_equal (name, entry->text[EM_ENTRY_REVISES]))
        return em_register_dup_path (self->reg, i);
    }
  return NULL;
}

static void
show_changes (EmRegisterWindow *self, EmRegisterItem *item, const EmRegisterEntry *entry)
{
  g_autofree char *old_path = dup_revised_path (self, entry), *new_path = em_register_item_dup_path (item);

  if (self->looking != NULL)
    g_cancellable_cancel (self->looking);
  g_clear_object (&self->looking);
  gtk_label_set_text (GTK_LABEL (self->changes), "");
  if (*entry->text[EM_ENTRY_REVISES] == '\0')
    return;
  if (old_path == NULL)
    {
      g_autofree char *text = g_strdup_printf (_("Revises %s, which is not in this folder."), entry->text[EM_ENTRY_REVISES]);
      gtk_label_set_text (GTK_LABEL (self->changes), text);
      return;
    }
  self->looking = g_cancellable_new ();
  em_register_work_compare_async (old_path, new_path, em_application_get_basis (self->application), self->looking, on_compared, g_object_ref (self));
}

static void
on_selected (EmRegisterWindow *self)
{
  EmRegisterItem *item = selected_item (self);
  const EmRegisterEntry *entry = item != NULL ? em_register_item_get_entry (item) : NULL;
  gboolean is_good = entry != NULL && entry->problem == NULL;

  gtk_widget_set_visible (self->panel, entry != NULL);
  if (entry == NULL)
    return;
  g_autofree char *title = number_text (entry);
  g_autofree char *facts = is_good ? facts_text (entry) : g_strdup_printf ("%s\n%s", entry->problem, entry->path);
  gtk_label_set_text (GTK_LABEL (self->title), title);
  gtk_label_set_text (GTK_LABEL (self->facts), facts);
  gtk_widget_set_sensitive (self->state, is_good);
  gtk_widget_set_sensitive (self->copy_button, is_good);
  gtk_widget_set_sensitive (self->revise_button, is_good);
  em_field_put_choice (self->state, is_good ? entry->state : EM_STATE_DRAFT, self);
  show_changes (self, item, entry);
}

/* ---- what is done to it ---- */

void
em_register_window_open (EmRegisterWindow *self)
{
  EmRegisterItem *item = selected_item (self);
  g_autofree char *path = item != NULL ? em_register_item_dup_path (item) : NULL;
  g_autoptr (GFile) file = path != NULL ? g_file_new_for_path (path) : NULL;

  if (file != NULL)
    em_application_open_quote (self->application, file, NULL);
}

static void
on_derived (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (EmRegisterWindow) self = data;
  g_autoptr (GError) error = NULL;
  EmQuoteFile file;

  (void) source;
  if (!em_register_work_derive_finish (result, &file, &error))
    {
      if (self->summary != NULL)
        say (self, error->message);
      return;
    }
  g_autoptr (EmDocument) document = em_document_new_take (em_application_get_basis (self->application), &file, NULL);
  em_application_add_window (self->application, document);
}

static void
derive (EmRegisterWindow *self, gboolean is_revision)
{
  EmRegisterItem *item = selected_item (self);
  g_autofree char *path = item != NULL ? em_register_item_dup_path (item) : NULL;

  if (path != NULL)
    em_register_work_derive_async (path, is_revision, NULL, on_derived, g_object_ref (self));
}

void
em_register_window_copy (EmRegisterWindow *self)
{
  derive (self, FALSE);
}

void
em_register_window_revise (EmRegisterWindow *self)
{
  derive (self, TRUE);
}

static void
on_state_written (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (EmRegisterWindow) self = data;
  g_autoptr (GError) error = NULL;

  (void) source;
  if (!em_register_work_state_finish (result, &error) && self->summary != NULL)
    say (self, error->message);
  if (self->summary != NULL)
    rescan (self);
}

/* An open quote is changed where it is open, so that one does not overwrite the other. */
static EmDocument *
find_open_document (EmRegisterWindow *self, const char *path)
{
  for (GList *window = gtk_application_get_windows (GTK_APPLICATION (self->application)); window != NULL; window = window->next)
    if (EM_IS_WINDOW (window->data))
      {
        EmDocument *document = em_window_get_document (window->data);
        if (g_strcmp0 (em_document_get_path (document), path) == 0)
          return document;
      }
  return NULL;
}

void
em_register_window_set_state (EmRegisterWindow *self, EmState state)
{
  EmRegisterItem *item = selected_item (self);
  g_autofree char *path = item != NULL ? em_register_item_dup_path (item) : NULL;
  EmDocument *open = path != NULL ? find_open_document (self, path) : NULL;

  if (open != NULL)
    {
      em_document_set_state (open, state);
      say (self, _("That quote is open: its state is changed there. Save it to keep it."));
    }
  else if (path != NULL && em_register_item_get_entry (item)->state != state)
    em_register_work_state_async (path, state, em_application_get_basis (self->application), NULL, on_state_written, g_object_ref (self));
}

static void
on_state (GtkDropDown *drop_down, GParamSpec *spec, EmRegisterWindow *self)
{
  (void) spec;
  em_register_window_set_state (self, (EmState) gtk_drop_down_get_selected (drop_down));
}

/* ---- scanning ---- */

static void
show_progress (EmRegisterWindow *self)
{
  gtk_widget_set_visible (self->progress, self->scan != NULL);
  gtk_widget_set_visible (self->cancel_button, self->scan != NULL);
}

static void
on_progress (guint n_done, guint n_files, gpointer data)
{
  EmRegisterWindow *self = data;
  g_autofree char *text = g_strdup_printf (_("%u of %u files"), n_done, n_files);

  if (self->progress == NULL)
    return;
  gtk_progress_bar_set_fraction (GTK_PROGRESS_BAR (self->progress), n_files > 0 ? (double) n_done / n_files : 0);
  gtk_progress_bar_set_text (GTK_PROGRESS_BAR (self->progress), text);
}

static void
on_scanned (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (EmRegisterWindow) self = data;
  g_autoptr (GError) error = NULL;
  EmRegister *reg = em_register_scan_finish (result, &error);

  (void) source;
  /* Another scan may have taken this one's place. */
  if (self->summary == NULL || self->scan != g_task_get_cancellable (G_TASK (result)))
    {
      g_clear_pointer (&reg, em_register_unref);
      return;
    }
  g_clear_object (&self->scan);
  show_progress (self);
  if (reg == NULL)
    {
      if (error != NULL && !g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
        say (self, error->message);
      return;
    }
  g_clear_pointer (&self->reg, em_register_unref);
  self->reg = reg;
  show_found (self);
  on_selected (self);
}

static void
rescan (EmRegisterWindow *self)
{
  g_autofree char *folder = g_settings_get_string (em_settings_get (), "shop-folder");
  EmBasis *basis = em_application_get_basis (self->application);

  if (self->scan != NULL)
    g_cancellable_cancel (self->scan);
  g_clear_object (&self->scan);
  if (*folder == '\0')
    {
      show_found (self);
      return;
    }
  if (self->reg != NULL && !g_str_equal (em_register_get_folder (self->reg), folder))
    g_clear_pointer (&self->reg, em_register_unref);
  if (self->reg == NULL)
    self->reg = em_register_new (folder);
  self->scan = g_cancellable_new ();
  gtk_progress_bar_set_fraction (GTK_PROGRESS_BAR (self->progress), 0);
  show_found (self);
  show_progress (self);
  em_register_scan_async (folder, self->reg, em_basis_get_rates (basis), em_basis_get_catalogue (basis), on_progress, self, self->scan,
                          on_scanned, g_object_ref (self));
}

static void
on_rescan (EmRegisterWindow *self)
{
  g_clear_pointer (&self->said, g_free);
  rescan (self);
}

static void
on_cancel (EmRegisterWindow *self)
{
  if (self->scan != NULL)
    g_cancellable_cancel (self->scan);
  g_clear_object (&self->scan);
  show_progress (self);
}

void
em_register_window_set_folder (EmRegisterWindow *self, const char *folder)
{
  g_settings_set_string (em_settings_get (), "shop-folder", folder);
  g_clear_pointer (&self->said, g_free);
  rescan (self);
}

static void
on_folder_chosen (GtkNativeDialog *dialog, int response, EmRegisterWindow *self)
{
  g_autoptr (GFile) file = response == GTK_RESPONSE_ACCEPT ? gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog)) : NULL;

  if (file != NULL && g_file_peek_path (file) != NULL)
    em_register_window_set_folder (self, g_file_peek_path (file));
}

static void
on_choose_folder (EmRegisterWindow *self)
{
  g_clear_object (&self->chooser);
  self->chooser = gtk_file_chooser_native_new (_("Folder of the shop’s quotes"), GTK_WINDOW (self), GTK_FILE_CHOOSER_ACTION_SELECT_FOLDER,
                                               _("_Choose"), _("_Cancel"));
  g_signal_connect (self->chooser, "response", G_CALLBACK (on_folder_chosen), self);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (self->chooser));
}

/* ---- the window ---- */

static void
em_register_window_dispose (GObject *object)
{
  EmRegisterWindow *self = EM_REGISTER_WINDOW (object);

  if (self->scan != NULL)
    g_cancellable_cancel (self->scan);
  if (self->looking != NULL)
    g_cancellable_cancel (self->looking);
  if (self->selection != NULL)
    g_signal_handlers_disconnect_by_data (self->selection, self);
  self->summary = self->progress = self->changes = NULL;
  g_clear_object (&self->scan);
  g_clear_object (&self->looking);
  g_clear_object (&self->chooser);
  g_clear_object (&self->selection);
  g_clear_object (&self->list);
  g_clear_pointer (&self->reg, em_register_unref);
  g_clear_pointer (&self->said, g_free);
  G_OBJECT_CLASS (em_register_window_parent_class)->dispose (object);
}

static void
em_register_window_class_init (EmRegisterWindowClass *class)
{
  G_OBJECT_CLASS (class)->dispose = em_register_window_dispose;
}

static GtkWidget *
label_new (const char *text, const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  gtk_widget_add_css_class (label, css_class);
  return label;
}

static GtkWidget *
top_new (EmRegisterWindow *self)
{
  const char *states[EM_N_STATE + 2] = { _("All states") };
  const char *dates[] = { _("Any date"), _("Last 3 months"), _("Last 12 months"), _("This year"), NULL };
  GtkWidget *top = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 10);

  for (int i = 0; i < EM_N_STATE; i++)
    states[i + 1] = em_words_state ((EmState) i);
  self->search = gtk_search_entry_new ();
  g_object_set (self->search, "placeholder-text", _("Number, customer, tool, any words"), NULL);
  gtk_widget_set_hexpand (self->search, TRUE);
  self->states = gtk_drop_down_new_from_strings (states);
  self->dates = gtk_drop_down_new_from_strings (dates);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->search), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Find a quote"), -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->states), GTK_ACCESSIBLE_PROPERTY_LABEL, _("State"), -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->dates), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Date"), -1);
  gtk_widget_add_css_class (top, "book-head");
  gtk_box_append (GTK_BOX (top), self->search);
  gtk_box_append (GTK_BOX (top), self->states);
  gtk_box_append (GTK_BOX (top), self->dates);
  return top;
}

static GtkWidget *
table_new (EmRegisterWindow *self)
{
  static const struct { const char *title; int width; } columns[N_COLUMN] =
  {
    [COLUMN_NUMBER] = { N_("Number"), 100 }, [COLUMN_DATE] = { N_("Date"), 102 }, [COLUMN_CUSTOMER] = { N_("Customer"), 0 },
    [COLUMN_TOOL] = { N_("Tool"), 0 }, [COLUMN_STATE] = { N_("State"), 84 }, [COLUMN_NET] = { N_("Net price"), 126 },
  };
  GtkWidget *scrolled = gtk_scrolled_window_new ();

  self->table = gtk_column_view_new (GTK_SELECTION_MODEL (g_object_ref (self->selection)));
  gtk_widget_add_css_class (self->table, "register");
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->table), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Quotes found"), -1);
  for (int i = 0; i < N_COLUMN; i++)
    add_column (self, (EmRegisterColumn) i, _(columns[i].title), columns[i].width);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), self->table);
  gtk_widget_set_hexpand (scrolled, TRUE);
  gtk_widget_set_vexpand (scrolled, TRUE);
  return scrolled;
}

static GtkWidget *
empty_new (EmRegisterWindow *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12), *button = gtk_button_new_with_mnemonic (_("_Choose the folder"));
  GtkWidget *teach = label_new (_("Save quotes into one folder, on this machine or a shared one. Here they are found again by number, customer, tool and words, and counted: what was won, and how long jobs took."), "teach");

  gtk_label_set_max_width_chars (GTK_LABEL (teach), 56);
  gtk_widget_set_halign (box, GTK_ALIGN_CENTER);
  gtk_widget_set_valign (box, GTK_ALIGN_CENTER);
  gtk_widget_set_halign (button, GTK_ALIGN_START);
  gtk_widget_add_css_class (button, "call");
  gtk_box_append (GTK_BOX (box), label_new (_("Where does the shop keep its quotes?"), "section-name"));
  gtk_box_append (GTK_BOX (box), teach);
  gtk_box_append (GTK_BOX (box), button);
  g_signal_connect_swapped (button, "clicked", G_CALLBACK (on_choose_folder), self);
  return box;
}

static GtkWidget *
button_new (EmRegisterWindow *self, const char *name, const char *tooltip, GCallback callback)
{
  GtkWidget *button = gtk_button_new_with_mnemonic (name);

  gtk_widget_set_tooltip_text (button, tooltip);
  g_signal_connect_swapped (button, "clicked", callback, self);
  gtk_box_append (GTK_BOX (self->panel), button);
  return button;
}

static GtkWidget *
panel_new (EmRegisterWindow *self)
{
  const char *states[EM_N_STATE + 1] = { NULL };
  GtkWidget *scrolled = gtk_scrolled_window_new ();

  for (int i = 0; i < EM_N_STATE; i++)
    states[i] = em_words_state ((EmState) i);
  self->panel = gtk_box_new (GTK_ORIENTATION_VERTICAL, 8);
  gtk_widget_add_css_class (self->panel, "book-page");
  self->title = label_new (NULL, "section-name");
  self->facts = label_new (NULL, "quiet");
  gtk_label_set_max_width_chars (GTK_LABEL (self->facts), 32);
  gtk_label_set_selectable (GTK_LABEL (self->facts), TRUE);
  gtk_widget_set_focusable (self->facts, FALSE);
  gtk_box_append (GTK_BOX (self->panel), self->title);
  gtk_box_append (GTK_BOX (self->panel), self->facts);
  gtk_box_append (GTK_BOX (self->panel), em_field_choice (_("_State"), states, &self->state));
  self->open_button = button_new (self, _("_Open"), _("Enter in the table does it too"), G_CALLBACK (em_register_window_open));
  self->revise_button = button_new (self, _("New _revision"), _("The same quote, to be changed and sent again"), G_CALLBACK (em_register_window_revise));
  self->copy_button = button_new (self, _("_Copy as a new quote"), _("A draft for another job, with the same features"), G_CALLBACK (em_register_window_copy));
  gtk_widget_add_css_class (self->open_button, "call");
  self->changes = label_new (NULL, "figure");
  gtk_label_set_max_width_chars (GTK_LABEL (self->changes), 32);
  gtk_box_append (GTK_BOX (self->panel), self->changes);
  g_signal_connect (self->state, "notify::selected", G_CALLBACK (on_state), self);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scrolled), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), self->panel);
  gtk_widget_set_size_request (scrolled, PANEL_WIDTH, -1);
  gtk_widget_set_hexpand (scrolled, FALSE);
  gtk_widget_add_css_class (scrolled, "register-panel");
  return scrolled;
}

static GtkWidget *
foot_new (EmRegisterWindow *self)
{
  GtkWidget *foot = gtk_grid_new (), *words = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  GtkWidget *again = gtk_button_new_from_icon_name ("view-refresh-symbolic"), *folder = gtk_button_new_from_icon_name ("folder-open-symbolic");

  self->summary = label_new (NULL, "figure");
  self->folder_label = label_new (NULL, "remark");
  gtk_label_set_wrap (GTK_LABEL (self->folder_label), FALSE);
  gtk_label_set_ellipsize (GTK_LABEL (self->folder_label), PANGO_ELLIPSIZE_MIDDLE);
  self->progress = gtk_progress_bar_new ();
  gtk_progress_bar_set_show_text (GTK_PROGRESS_BAR (self->progress), TRUE);
  gtk_widget_set_valign (self->progress, GTK_ALIGN_CENTER);
  self->cancel_button = gtk_button_new_with_mnemonic (_("S_top"));
  gtk_widget_set_hexpand (words, TRUE);
  gtk_widget_set_valign (words, GTK_ALIGN_CENTER);
  gtk_box_append (GTK_BOX (words), self->summary);
  gtk_box_append (GTK_BOX (words), self->folder_label);
  gtk_widget_set_tooltip_text (again, _("Look through the folder again"));
  gtk_widget_set_tooltip_text (folder, _("Another folder"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->progress), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Reading quotes"), -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (again), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Look through the folder again"), -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (folder), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Another folder"), -1);
  GtkWidget *parts[] = { words, self->progress, self->cancel_button, again, folder };
  for (gsize i = 0; i < G_N_ELEMENTS (parts); i++)
    {
      gtk_widget_set_valign (parts[i], GTK_ALIGN_CENTER);
      gtk_grid_attach (GTK_GRID (foot), parts[i], (int) i, 0, 1, 1);
    }
  gtk_grid_set_column_spacing (GTK_GRID (foot), 10);
  gtk_widget_add_css_class (foot, "book-foot");
  g_signal_connect_swapped (again, "clicked", G_CALLBACK (on_rescan), self);
  g_signal_connect_swapped (folder, "clicked", G_CALLBACK (on_choose_folder), self);
  g_signal_connect_swapped (self->cancel_button, "clicked", G_CALLBACK (on_cancel), self);
  return foot;
}

static void
em_register_window_init (EmRegisterWindow *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0), *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);

  self->list = em_register_list_new ();
  self->selection = gtk_single_selection_new (G_LIST_MODEL (g_object_ref (self->list)));
  self->pages = gtk_stack_new ();
  gtk_stack_add_named (GTK_STACK (self->pages), table_new (self), "table");
  gtk_stack_add_named (GTK_STACK (self->pages), empty_new (self), "empty");
  gtk_widget_set_hexpand (self->pages, TRUE);
  gtk_box_append (GTK_BOX (row), self->pages);
  gtk_box_append (GTK_BOX (row), panel_new (self));
  gtk_widget_set_vexpand (row, TRUE);
  gtk_box_append (GTK_BOX (box), top_new (self));
  gtk_box_append (GTK_BOX (box), row);
  gtk_box_append (GTK_BOX (box), foot_new (self));
  gtk_window_set_child (GTK_WINDOW (self), box);
  gtk_window_set_title (GTK_WINDOW (self), _("Past quotes"));
  gtk_window_set_default_size (GTK_WINDOW (self), 1100, 700);
  gtk_widget_add_css_class (GTK_WIDGET (self), "estimend");
  show_progress (self);
  g_signal_connect_swapped (self->search, "changed", G_CALLBACK (on_query), self);
  g_signal_connect_swapped (self->search, "activate", G_CALLBACK (em_register_window_open), self);
  g_signal_connect_swapped (self->states, "notify::selected", G_CALLBACK (on_query), self);
  g_signal_connect_swapped (self->dates, "notify::selected", G_CALLBACK (on_query), self);
  g_signal_connect_swapped (self->selection, "notify::selected-item", G_CALLBACK (on_selected), self);
  g_signal_connect_swapped (self->table, "activate", G_CALLBACK (em_register_window_open), self);
}

EmRegisterWindow *
em_register_window_present (EmApplication *application)
{
  EmRegisterWindow *self = NULL;

  for (GList *window = gtk_application_get_windows (GTK_APPLICATION (application)); window != NULL && self == NULL; window = window->next)
    if (EM_IS_REGISTER_WINDOW (window->data))
      self = window->data;
  if (self == NULL)
    {
      self = g_object_new (EM_TYPE_REGISTER_WINDOW, "application", application, NULL);
      self->application = application;
    }
  rescan (self);
  on_selected (self);
  gtk_window_present (GTK_WINDOW (self));
  gtk_widget_grab_focus (self->search);
  return self;
}

gboolean
em_register_window_is_scanning (EmRegisterWindow *self)
{
  return self->scan != NULL;
}

void
em_register_window_search (EmRegisterWindow *self, const char *text)
{
  gtk_editable_set_text (GTK_EDITABLE (self->search), text);
  on_query (self);
}

guint
em_register_window_count (EmRegisterWindow *self)
{
  return g_list_model_get_n_items (G_LIST_MODEL (self->list));
}

void
em_register_window_select (EmRegisterWindow *self, guint row)
{
  gtk_single_selection_set_selected (self->selection, row);
}

const char *
em_register_window_get_summary (EmRegisterWindow *self)
{
  return gtk_label_get_text (GTK_LABEL (self->summary));
}

const char *
em_register_window_get_changes (EmRegisterWindow *self)
{
  return gtk_label_get_text (GTK_LABEL (self->changes));
}
