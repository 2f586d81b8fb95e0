/* em-machines-page: the machines, their ratings, rates and starting values by wire.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-book-pages.h"

#include "em-field.h"
#include "em-rate-entry.h"
#include "em-words.h"

#include <glib/gi18n.h>
#include <math.h>
#include <stdlib.h>

typedef struct
{
  EmDraft   *draft;       /* owned */
  GtkWidget *chooser, *name, *process, *retired, *copy_button, *settings, *add_setting;
  GPtrArray *entries;     /* EmRateEntry of the machine's own figures */
  int        shown;       /* index in the rate book */
  int        n_settings;  /* rows of the table as built */
  EmProcess  table_process;
} EmMachines;

/* One figure of one row of the table. */
typedef struct
{
  EmMachines *machines;
  int         row;
} EmSettingPlace;

static void
free_machines (gpointer data)
{
  EmMachines *machines = data;

  g_signal_handlers_disconnect_by_data (machines->draft, machines);
  g_object_unref (machines->draft);
  g_ptr_array_unref (machines->entries);
  g_free (machines);
}

static EmMachine *
shown_machine (EmMachines *machines)
{
  EmRates *rates = em_draft_get_rates (machines->draft);

  return machines->shown >= 0 && machines->shown < rates->n_machines ? &rates->machine[machines->shown] : NULL;
}

static void *
hold_machine (gpointer owner)
{
  return shown_machine (owner);
}

static void *
hold_setting (gpointer owner)
{
  EmSettingPlace *place = owner;
  EmMachine *machine = shown_machine (place->machines);

  return machine != NULL && place->row < machine->n_settings ? &machine->setting[place->row] : NULL;
}

static void
touch (EmMachines *machines, const char *field)
{
  const EmMachine *machine = shown_machine (machines);

  em_page_touch (machines->draft, EM_DRAFT_RATES, "machines", machine != NULL ? machine->id : NULL, field);
}

/* Of what is not typed. */
static void
touch_once (EmMachines *machines, const char *field)
{
  touch (machines, field);
  em_draft_break (machines->draft);
}

static void
on_edited (EmRateEntry *entry, EmMachines *machines)
{
  g_autofree char *field = em_rate_entry_dup_where (entry);

  touch (machines, field);
}

/* A row whose process mask leaves the shown machine out would only invite wrong figures. */
static gboolean
is_wanted (const EmRateField *field, EmProcess process)
{
  return field->processes == 0 || (field->processes & (1u << process)) != 0;
}

/* ---- starting values ---- */

static int
by_wire (const void *a, const void *b)
{
  double first = ((const EmSetting *) a)->wire_mm, second = ((const EmSetting *) b)->wire_mm;

  return first < second ? -1 : first > second;
}

static void
on_sort (EmMachines *machines)
{
  EmMachine *machine = shown_machine (machines);

  qsort (machine->setting, (size_t) machine->n_settings, sizeof machine->setting[0], by_wire);
  touch_once (machines, NULL);
}

static void
on_remove_setting (GtkButton *button, EmMachines *machines)
{
  EmMachine *machine = shown_machine (machines);
  int row = GPOINTER_TO_INT (g_object_get_data (G_OBJECT (button), "row"));

  for (int i = row; i + 1 < machine->n_settings; i++)
    machine->setting[i] = machine->setting[i + 1];
  machine->n_settings--;
  touch_once (machines, NULL);
}

/* The next wire up, with the figures of the last row to start from. */
static void
on_add_setting (EmMachines *machines)
{
  EmMachine *machine = shown_machine (machines);
  EmSetting next = { machine->wire_low_mm, EM_ABSENT, EM_ABSENT, EM_ABSENT, EM_ABSENT, EM_ABSENT, EM_ABSENT };

  if (machine->n_settings >= EM_SETTING_MAX)
    return;
  if (machine->n_settings > 0)
    {
      next = machine->setting[machine->n_settings - 1];
      next.wire_mm += 0.1;
    }
  machine->setting[machine->n_settings++] = next;
  touch_once (machines, NULL);
}

static void
empty_grid (GtkWidget *grid)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (grid)) != NULL)
    gtk_grid_remove (GTK_GRID (grid), child);
}

static GtkWidget *
head_new (const EmRateField *field)
{
  g_autofree char *text = field->unit[0] != '\0' && !g_str_equal (field->unit, "mm")
                          ? g_strdup_printf ("%s, %s", em_words (field->name), field->unit) : g_strdup (em_words (field->name));
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 1);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 10);
  gtk_label_set_justify (GTK_LABEL (label), GTK_JUSTIFY_RIGHT);
  gtk_widget_set_valign (label, GTK_ALIGN_END);
  gtk_widget_add_css_class (label, "field-name");
  return label;
}

static void
add_setting_row (EmMachines *machines, int row)
{
  EmMachine *machine = shown_machine (machines);
  EmSettingPlace *place = g_new0 (EmSettingPlace, 1);
  GtkWidget *remove = gtk_button_new_from_icon_name ("list-remove-symbolic");
  g_autofree char *row_name = g_strdup_printf (_("row %d of the starting values"), row + 1);
  g_autofree char *remove_name = g_strdup_printf (_("Remove row %d of the starting values"), row + 1);
  int column = 0;

  place->machines = machines;
  place->row = row;
  for (int i = 0; i < em_n_setting_fields; i++)
    if (is_wanted (&em_setting_fields[i], machine->process))
      {
        GtkWidget *entry = em_rate_entry_new (&em_setting_fields[i], machines->draft, hold_setting, place, TRUE);
        g_signal_connect (entry, "edited", G_CALLBACK (on_edited), machines);
        em_rate_entry_set_place (EM_RATE_ENTRY (entry), row_name);
        gtk_grid_attach (GTK_GRID (machines->settings), entry, column++, row + 1, 1, 1);
      }
  gtk_widget_add_css_class (remove, "flat");
  gtk_widget_add_css_class (remove, "row-remove");
  gtk_widget_set_valign (remove, GTK_ALIGN_START);
  gtk_widget_set_tooltip_text (remove, _("Remove"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (remove), GTK_ACCESSIBLE_PROPERTY_LABEL, remove_name, -1);
  g_object_set_data (G_OBJECT (remove), "row", GINT_TO_POINTER (row));
  g_object_set_data_full (G_OBJECT (remove), "place", place, g_free);
  g_signal_connect (remove, "clicked", G_CALLBACK (on_remove_setting), machines);
  gtk_grid_attach (GTK_GRID (machines->settings), remove, column, row + 1, 1, 1);
}

static void
build_settings (EmMachines *machines)
{
  EmMachine *machine = shown_machine (machines);
  int column = 0;

  empty_grid (machines->settings);
  for (int i = 0; i < em_n_setting_fields; i++)
    if (is_wanted (&em_setting_fields[i], machine->process))
      gtk_grid_attach (GTK_GRID (machines->settings), head_new (&em_setting_fields[i]), column++, 0, 1, 1);
  for (int row = 0; row < machine->n_settings; row++)
    add_setting_row (machines, row);
  machines->n_settings = machine->n_settings;
  machines->table_process = machine->process;
}

static void
show_settings (EmMachines *machines)
{
  EmMachine *machine = shown_machine (machines);

  if (machines->n_settings != machine->n_settings || machines->table_process != machine->process)
    build_settings (machines);
  for (GtkWidget *child = gtk_widget_get_first_child (machines->settings); child != NULL; child = gtk_widget_get_next_sibling (child))
    if (EM_IS_RATE_ENTRY (child))
      em_rate_entry_show (EM_RATE_ENTRY (child));
  gtk_widget_set_sensitive (machines->add_setting, machine->n_settings < EM_SETTING_MAX);
}

/* ---- the machine ---- */

static void
on_name (EmMachines *machines)
{
  EmMachine *machine = shown_machine (machines);

  free (machine->name);
  machine->name = em_text_dup (gtk_editable_get_text (GTK_EDITABLE (machines->name)));
  touch (machines, "name");
}

static void
on_process (GtkDropDown *drop_down, GParamSpec *spec, EmMachines *machines)
{
  (void) spec;
  shown_machine (machines)->process = (EmProcess) gtk_drop_down_get_selected (drop_down);
  touch_once (machines, "process");
}

static void
on_retired (EmMachines *machines)
{
  shown_machine (machines)->is_retired = gtk_check_button_get_active (GTK_CHECK_BUTTON (machines->retired));
  touch_once (machines, "retired");
}

static void
on_chosen (GtkDropDown *drop_down, GParamSpec *spec, EmMachines *machines)
{
  guint at = gtk_drop_down_get_selected (drop_down);

  (void) spec;
  if (at == GTK_INVALID_LIST_POSITION)
    return;
  machines->shown = (int) at;
  machines->n_settings = -1;
  em_draft_touch (machines->draft, 0, NULL);
}

/* "laser-300-2": no other machine's. */
static char *
free_id (const EmRates *rates, const char *id)
{
  for (int n = 2;; n++)
    {
      g_autofree char *next = g_strdup_printf ("%s-%d", id, n);
      if (em_rates_find_machine (rates, next) < 0)
        return g_steal_pointer (&next);
    }
}

static void
on_copy (EmMachines *machines)
{
  EmRates *rates = em_draft_get_rates (machines->draft);
  EmMachine copy;

  if (rates->n_machines >= EM_MACHINE_MAX || em_machine_copy (shown_machine (machines), &copy) != EM_OK)
    return;
  g_autofree char *id = free_id (rates, copy.id);
  g_autofree char *name = g_strdup_printf (_("%s, copy"), copy.name);
  free (copy.id);
  free (copy.name);
  copy.id = em_text_dup (id);
  copy.name = em_text_dup (name);
  if (em_rates_add_machine_take (rates, &copy) != EM_OK)
    return;
  machines->shown = rates->n_machines - 1;
  machines->n_settings = -1;
  touch_once (machines, NULL);
}

static void
show_chooser (EmMachines *machines)
{
  const EmRates *rates = em_draft_get_rates (machines->draft);
  g_autoptr (GPtrArray) names = g_ptr_array_new ();

  for (int i = 0; i < rates->n_machines; i++)
    g_ptr_array_add (names, rates->machine[i].name != NULL ? rates->machine[i].name : (char *) "");
  g_ptr_array_add (names, NULL);
  g_signal_handlers_block_by_func (machines->chooser, on_chosen, machines);
  em_field_set_options (machines->chooser, (const char *const *) names->pdata);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (machines->chooser), (guint) machines->shown);
  g_signal_handlers_unblock_by_func (machines->chooser, on_chosen, machines);
}

static void
on_draft_changed (EmMachines *machines)
{
  EmRates *rates = em_draft_get_rates (machines->draft);
  EmMachine *machine;

  if (machines->shown >= rates->n_machines)
    machines->shown = rates->n_machines - 1;
  machine = shown_machine (machines);
  if (machine == NULL)
    return;
  show_chooser (machines);
  em_field_put_text (machines->name, machine->name, machines);
  em_field_put_choice (machines->process, machine->process, machines);
  g_signal_handlers_block_by_func (machines->retired, on_retired, machines);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (machines->retired), machine->is_retired);
  g_signal_handlers_unblock_by_func (machines->retired, on_retired, machines);
  gtk_widget_set_sensitive (machines->copy_button, rates->n_machines < EM_MACHINE_MAX);
  for (guint i = 0; i < machines->entries->len; i++)
    {
      EmRateEntry *entry = machines->entries->pdata[i];
      gtk_widget_set_visible (GTK_WIDGET (entry), is_wanted (em_rate_entry_get_field (entry), machine->process));
      em_rate_entry_show (entry);
    }
  show_settings (machines);
}

/* The machine whose step was undone or done again is shown. */
static void
on_stepped (EmMachines *machines, const char *where)
{
  g_autofree char *id = em_page_dup_record (where, "machines");
  int32_t at = em_rates_find_machine (em_draft_get_rates (machines->draft), id);

  if (at < 0 || at == machines->shown)
    return;
  machines->shown = at;
  machines->n_settings = -1;
  on_draft_changed (machines);
}

static void
add_head (EmMachines *machines, GtkWidget *box)
{
  const char *none[] = { NULL };
  const char *processes[] = { em_words_process (EM_PROCESS_LASER), em_words_process (EM_PROCESS_GTAW), NULL };
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 10), *halves = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 10);
  GtkWidget *field = em_field_choice (_("_Machine"), none, &machines->chooser);

  gtk_widget_set_hexpand (field, TRUE);
  machines->copy_button = gtk_button_new_with_mnemonic (_("Add a _copy"));
  gtk_widget_set_tooltip_text (machines->copy_button, _("A new machine with the figures of this one"));
  gtk_widget_set_valign (machines->copy_button, GTK_ALIGN_END);
  gtk_box_append (GTK_BOX (row), field);
  gtk_box_append (GTK_BOX (row), machines->copy_button);
  gtk_box_append (GTK_BOX (box), row);
  gtk_box_set_homogeneous (GTK_BOX (halves), TRUE);
  gtk_box_append (GTK_BOX (halves), em_field_text (_("_Name"), &machines->name));
  gtk_box_append (GTK_BOX (halves), em_field_choice (_("_Process"), processes, &machines->process));
  gtk_box_append (GTK_BOX (box), halves);
  machines->retired = gtk_check_button_new_with_mnemonic (_("_Retired: not chosen any more, still priced in old quotes"));
  em_field_wrap_check (machines->retired);
  gtk_box_append (GTK_BOX (box), machines->retired);
}

static void
add_settings (EmMachines *machines, GtkWidget *box)
{
  GtkWidget *buttons = em_fields_new (), *sort = gtk_button_new_with_mnemonic (_("_Sort by wire"));
  GtkWidget *scrolled = gtk_scrolled_window_new ();

  machines->settings = gtk_grid_new ();
  gtk_grid_set_column_spacing (GTK_GRID (machines->settings), 10);
  gtk_grid_set_row_spacing (GTK_GRID (machines->settings), 6);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scrolled), GTK_POLICY_AUTOMATIC, GTK_POLICY_NEVER);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), machines->settings);
  machines->add_setting = gtk_button_new_with_mnemonic (_("Add a _wire size"));
  gtk_widget_set_halign (machines->add_setting, GTK_ALIGN_START);
  gtk_widget_set_halign (sort, GTK_ALIGN_START);
  em_fields_add (buttons, machines->add_setting);
  em_fields_add (buttons, sort);
  gtk_box_append (GTK_BOX (box), em_page_heading (_("Starting values by wire")));
  gtk_box_append (GTK_BOX (box), em_page_remark (_("Between two sizes they are interpolated. Always try them on scrap first.")));
  gtk_box_append (GTK_BOX (box), scrolled);
  gtk_box_append (GTK_BOX (box), buttons);
  g_signal_connect_swapped (machines->add_setting, "clicked", G_CALLBACK (on_add_setting), machines);
  g_signal_connect_swapped (sort, "clicked", G_CALLBACK (on_sort), machines);
}

GtkWidget *
em_machines_page_new (EmDraft *draft)
{
  EmMachines *machines = g_new0 (EmMachines, 1);
  GtkWidget *box, *page = em_page_new (&box), *flow = em_fields_new ();

  machines->draft = g_object_ref (draft);
  machines->entries = g_ptr_array_new ();
  machines->n_settings = -1;
  add_head (machines, box);
  for (int i = 0; i < em_n_machine_fields; i++)
    {
      GtkWidget *entry = em_rate_entry_new (&em_machine_fields[i], draft, hold_machine, machines, FALSE);
      g_signal_connect (entry, "edited", G_CALLBACK (on_edited), machines);
      g_ptr_array_add (machines->entries, entry);
      em_fields_add (flow, entry);
    }
  gtk_box_append (GTK_BOX (box), flow);
  add_settings (machines, box);
  g_signal_connect_swapped (machines->name, "changed", G_CALLBACK (on_name), machines);
  g_signal_connect (machines->process, "notify::selected", G_CALLBACK (on_process), machines);
  g_signal_connect_swapped (machines->retired, "toggled", G_CALLBACK (on_retired), machines);
  g_signal_connect (machines->chooser, "notify::selected", G_CALLBACK (on_chosen), machines);
  g_signal_connect_swapped (machines->copy_button, "clicked", G_CALLBACK (on_copy), machines);
  em_page_set_field (machines->name, "name");
  em_page_set_field (machines->process, "process");
  em_page_set_field (machines->retired, "retired");
  g_signal_connect_swapped (draft, "changed", G_CALLBACK (on_draft_changed), machines);
  g_signal_connect_swapped (draft, "stepped", G_CALLBACK (on_stepped), machines);
  on_draft_changed (machines);
  g_object_set_data_full (G_OBJECT (page), "machines", machines, free_machines);
  return page;
}
