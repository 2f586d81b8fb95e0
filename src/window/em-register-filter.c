/* em-register-filter: what quotes are looked for, and in what order they are shown.
 *
 * Headers of columns take no keyboard in GTK 4.8, so the order can be chosen here too.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-register-filter.h"

#include "em-beside.h"
#include "em-register-table.h"
#include "em-words.h"

#include <glib/gi18n.h>

enum { SPACING_PX = 10, SEARCH_CHARS = 26, DATE_CHARS = 11 };

enum { DATES_ANY, DATES_THREE_MONTHS, DATES_TWELVE_MONTHS, DATES_THIS_YEAR, DATES_LAST_YEAR, DATES_CHOSEN };

/* A day that is typed: the first or the last one looked for. */
typedef struct { GtkWidget *entry; char *iso; gboolean is_wrong; } Day;

struct _EmRegisterFilter
{
  GtkWidget parent_instance;

  GtkWidget *box, *search, *states, *dates, *days, *problem, *order, *direction;
  Day        from, to;             /* typed */
  char      *date_from, *date_to;  /* owned: of the query last asked for */
};

G_DEFINE_FINAL_TYPE (EmRegisterFilter, em_register_filter, GTK_TYPE_WIDGET)

static guint changed_signal, sorted_signal, down_signal, activate_signal;

/* ---- what is looked for ---- */

static char *
months_ago (GDateTime *now, int n_months)
{
  g_autoptr (GDateTime) then = g_date_time_add_months (now, -n_months);

  return g_date_time_format (then, "%Y-%m-%d");
}

/* The days wanted, ISO 8601; NULL: open. */
static void
put_dates (EmRegisterFilter *self)
{
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();
  int year = g_date_time_get_year (now);

  g_clear_pointer (&self->date_from, g_free);
  g_clear_pointer (&self->date_to, g_free);
  switch (gtk_drop_down_get_selected (GTK_DROP_DOWN (self->dates)))
    {
    case DATES_THREE_MONTHS:
      self->date_from = months_ago (now, 3);
      break;
    case DATES_TWELVE_MONTHS:
      self->date_from = months_ago (now, 12);
      break;
    case DATES_THIS_YEAR:
      self->date_from = g_strdup_printf ("%04d-01-01", year);
      break;
    case DATES_LAST_YEAR:
      self->date_from = g_strdup_printf ("%04d-01-01", year - 1);
      self->date_to = g_strdup_printf ("%04d-12-31", year - 1);
      break;
    case DATES_CHOSEN:
      self->date_from = g_strdup (self->from.iso);
      self->date_to = g_strdup (self->to.iso);
      break;
    default:
      break;
    }
}

void
em_register_filter_query (EmRegisterFilter *self, EmRegisterQuery *out_query)
{
  guint state = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->states));

  put_dates (self);
  *out_query = (EmRegisterQuery) { gtk_editable_get_text (GTK_EDITABLE (self->search)), state > 0 ? 1u << (state - 1) : 0,
                                   self->date_from, self->date_to };
}

/* ---- days typed ---- */

/* A day that can't be read is left open meanwhile, and said to be. */
static void
read_day (Day *day, gboolean is_last)
{
  g_autofree char *text = g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (day->entry))));

  g_clear_pointer (&day->iso, g_free);
  day->is_wrong = *text != '\0' && !em_words_read_date (text, is_last, &day->iso);
}

static void
show_wrong (Day *day, gboolean is_wrong)
{
  if (is_wrong)
    gtk_widget_add_css_class (day->entry, "error");
  else
    gtk_widget_remove_css_class (day->entry, "error");
  gtk_accessible_update_state (GTK_ACCESSIBLE (day->entry), GTK_ACCESSIBLE_STATE_INVALID,
                               is_wrong ? GTK_ACCESSIBLE_INVALID_TRUE : GTK_ACCESSIBLE_INVALID_FALSE, -1);
}

static void
on_changed (EmRegisterFilter *self)
{
  gboolean is_chosen = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->dates)) == DATES_CHOSEN, is_turned;

  read_day (&self->from, FALSE);
  read_day (&self->to, TRUE);
  is_turned = self->from.iso != NULL && self->to.iso != NULL && g_strcmp0 (self->from.iso, self->to.iso) > 0;
  show_wrong (&self->from, self->from.is_wrong);
  show_wrong (&self->to, self->to.is_wrong || is_turned);
  gtk_label_set_text (GTK_LABEL (self->problem), self->from.is_wrong || self->to.is_wrong ? _("A date is written as 2026-03-31, 2026-03 or 2026.")
                                                 : is_turned ? _("The last day is before the first.") : "");
  gtk_widget_set_visible (self->problem, self->from.is_wrong || self->to.is_wrong || is_turned);
  gtk_widget_set_visible (self->days, is_chosen);
  g_signal_emit (self, changed_signal, 0);
}

static void
on_dates (EmRegisterFilter *self)
{
  on_changed (self);
  if (gtk_drop_down_get_selected (GTK_DROP_DOWN (self->dates)) == DATES_CHOSEN)
    gtk_widget_grab_focus (self->from.entry);
}

/* ---- the words ---- */

static void
on_search_given_up (EmRegisterFilter *self)
{
  gtk_editable_set_text (GTK_EDITABLE (self->search), "");
}

/* From what is looked for to what was found. */
static gboolean
on_search_key (EmRegisterFilter *self, guint key)
{
  gboolean is_taken = FALSE;

  if (key == GDK_KEY_Down)
    g_signal_emit (self, down_signal, 0, &is_taken);
  return is_taken;
}

static void
on_activate (EmRegisterFilter *self)
{
  g_signal_emit (self, activate_signal, 0);
}

void
em_register_filter_set_text (EmRegisterFilter *self, const char *text)
{
  gtk_editable_set_text (GTK_EDITABLE (self->search), text);
}

void
em_register_filter_clear (EmRegisterFilter *self)
{
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->states), 0);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->dates), DATES_ANY);
  gtk_editable_set_text (GTK_EDITABLE (self->search), "");
  gtk_widget_grab_focus (self->search);
}

void
em_register_filter_focus (EmRegisterFilter *self)
{
  gtk_widget_grab_focus (self->search);
  gtk_editable_select_region (GTK_EDITABLE (self->search), 0, -1);
}

/* ---- the order ---- */

static void
show_direction (EmRegisterFilter *self)
{
  gboolean is_descending = gtk_toggle_button_get_active (GTK_TOGGLE_BUTTON (self->direction));

  gtk_button_set_icon_name (GTK_BUTTON (self->direction), is_descending ? "view-sort-descending-symbolic" : "view-sort-ascending-symbolic");
  gtk_widget_set_sensitive (self->direction, gtk_drop_down_get_selected (GTK_DROP_DOWN (self->order)) > 0);
}

static void
on_sorted (EmRegisterFilter *self)
{
  show_direction (self);
  g_signal_emit (self, sorted_signal, 0);
}

const char *
em_register_filter_get_sort (EmRegisterFilter *self, gboolean *out_is_descending)
{
  guint selected = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->order));

  *out_is_descending = selected > 0 && gtk_toggle_button_get_active (GTK_TOGGLE_BUTTON (self->direction));
  return selected > 0 ? em_register_table_column_id (selected - 1) : "";
}

void
em_register_filter_put_sort (EmRegisterFilter *self, const char *column, gboolean is_descending)
{
  guint selected = 0;

  for (guint i = 0; em_register_table_column_id (i) != NULL; i++)
    if (g_str_equal (em_register_table_column_id (i), column))
      selected = i + 1;
  g_signal_handlers_block_by_func (self->order, on_sorted, self);
  g_signal_handlers_block_by_func (self->direction, on_sorted, self);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->order), selected);
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (self->direction), selected > 0 && is_descending);
  g_signal_handlers_unblock_by_func (self->order, on_sorted, self);
  g_signal_handlers_unblock_by_func (self->direction, on_sorted, self);
  show_direction (self);
}

/* ---- the widget ---- */

static void
name_it (GtkWidget *widget, const char *name)
{
  gtk_accessible_update_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}

static GtkWidget *
row_new (void)
{
  return gtk_box_new (GTK_ORIENTATION_HORIZONTAL, SPACING_PX);
}

/* A name before its widget, tied for mnemonics and screen readers. */
static void
add_named (GtkWidget *row, const char *name, GtkWidget *widget)
{
  GtkWidget *label = gtk_label_new_with_mnemonic (name);

  gtk_label_set_mnemonic_widget (GTK_LABEL (label), widget);
  gtk_accessible_update_relation (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_RELATION_LABELLED_BY, label, NULL, -1);
  gtk_widget_add_css_class (label, "field-name");
  gtk_box_append (GTK_BOX (row), label);
  gtk_box_append (GTK_BOX (row), widget);
}

static GtkWidget *
search_new (EmRegisterFilter *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();

  self->search = gtk_search_entry_new ();
  g_object_set (self->search, "placeholder-text", _("Number, customer, tool, any words"), "width-chars", SEARCH_CHARS, NULL);
  name_it (self->search, _("Find a quote"));
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (on_search_key), self);
  gtk_widget_add_controller (self->search, keys);
  g_signal_connect_swapped (self->search, "stop-search", G_CALLBACK (on_search_given_up), self);
  g_signal_connect_swapped (self->search, "changed", G_CALLBACK (on_changed), self);
  g_signal_connect_swapped (self->search, "activate", G_CALLBACK (on_activate), self);
  return self->search;
}

static GtkWidget *
choices_new (EmRegisterFilter *self)
{
  const char *states[EM_N_STATE + 2] = { _("All states") };
  const char *dates[] = { _("Any date"), _("Last 3 months"), _("Last 12 months"), _("This year"), _("Last year"), _("From … to …"), NULL };
  GtkWidget *row = row_new ();

  for (int i = 0; i < EM_N_STATE; i++)
    states[i + 1] = em_words_state ((EmState) i);
  self->states = gtk_drop_down_new_from_strings (states);
  self->dates = gtk_drop_down_new_from_strings (dates);
  name_it (self->states, _("State"));
  name_it (self->dates, _("Date"));
  gtk_box_append (GTK_BOX (row), self->states);
  gtk_box_append (GTK_BOX (row), self->dates);
  g_signal_connect_swapped (self->states, "notify::selected", G_CALLBACK (on_changed), self);
  g_signal_connect_swapped (self->dates, "notify::selected", G_CALLBACK (on_dates), self);
  return row;
}

static void
add_order (EmRegisterFilter *self, GtkWidget *row)
{
  g_autoptr (GtkStringList) orders = gtk_string_list_new (NULL);

  gtk_string_list_append (orders, _("Latest first"));
  for (guint i = 0; em_register_table_column_id (i) != NULL; i++)
    gtk_string_list_append (orders, em_register_table_column_title (i));
  self->order = gtk_drop_down_new (G_LIST_MODEL (g_object_ref (orders)), NULL);
  self->direction = gtk_toggle_button_new ();
  gtk_widget_set_tooltip_text (self->direction, _("From the last to the first"));
  name_it (self->direction, _("From the last to the first"));
  add_named (row, _("Sort _by"), self->order);
  gtk_box_append (GTK_BOX (row), self->direction);
  g_signal_connect_swapped (self->order, "notify::selected", G_CALLBACK (on_sorted), self);
  g_signal_connect_swapped (self->direction, "toggled", G_CALLBACK (on_sorted), self);
  show_direction (self);
}

static GtkWidget *
day_new (EmRegisterFilter *self, Day *day)
{
  day->entry = gtk_entry_new ();
  gtk_editable_set_width_chars (GTK_EDITABLE (day->entry), DATE_CHARS);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (day->entry), DATE_CHARS);
  gtk_entry_set_placeholder_text (GTK_ENTRY (day->entry), _("any"));
  g_signal_connect_swapped (day->entry, "changed", G_CALLBACK (on_changed), self);
  return day->entry;
}

static GtkWidget *
days_new (EmRegisterFilter *self)
{
  GtkWidget *row = row_new ();

  self->problem = gtk_label_new (NULL);
  gtk_label_set_xalign (GTK_LABEL (self->problem), 0);
  gtk_label_set_wrap (GTK_LABEL (self->problem), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (self->problem), 56);
  gtk_widget_add_css_class (self->problem, "problem");
  add_named (row, _("Fro_m"), day_new (self, &self->from));
  add_named (row, _("_to"), day_new (self, &self->to));
  self->days = em_beside_new (row, self->problem, SPACING_PX, 0);
  return self->days;
}

static void
em_register_filter_dispose (GObject *object)
{
  EmRegisterFilter *self = EM_REGISTER_FILTER (object);

  g_clear_pointer (&self->box, gtk_widget_unparent);
  g_clear_pointer (&self->from.iso, g_free);
  g_clear_pointer (&self->to.iso, g_free);
  g_clear_pointer (&self->date_from, g_free);
  g_clear_pointer (&self->date_to, g_free);
  G_OBJECT_CLASS (em_register_filter_parent_class)->dispose (object);
}

static void
em_register_filter_class_init (EmRegisterFilterClass *class)
{
  G_OBJECT_CLASS (class)->dispose = em_register_filter_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (class), GTK_TYPE_BIN_LAYOUT);
  changed_signal = g_signal_new ("changed", EM_TYPE_REGISTER_FILTER, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  sorted_signal = g_signal_new ("sorted", EM_TYPE_REGISTER_FILTER, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  down_signal = g_signal_new ("down", EM_TYPE_REGISTER_FILTER, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_BOOLEAN, 0);
  activate_signal = g_signal_new ("activate", EM_TYPE_REGISTER_FILTER, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
em_register_filter_init (EmRegisterFilter *self)
{
  GtkWidget *search = search_new (self), *choices = choices_new (self);

  add_order (self, choices);
  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  gtk_box_append (GTK_BOX (self->box), em_beside_new (search, choices, SPACING_PX, 0));
  gtk_box_append (GTK_BOX (self->box), days_new (self));
  gtk_widget_set_visible (self->days, FALSE);
  gtk_widget_set_visible (self->problem, FALSE);
  gtk_widget_add_css_class (GTK_WIDGET (self), "book-head");
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
}

GtkWidget *
em_register_filter_new (void)
{
  return g_object_new (EM_TYPE_REGISTER_FILTER, NULL);
}
