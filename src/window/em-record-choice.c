/* em-record-choice: a drop-down of base metals, wires or machines.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-record-choice.h"

#include "em-field.h"

#include <glib/gi18n.h>

typedef struct
{
  EmRecordKind kind;
  char        *none;
  GPtrArray   *ids, *names;   /* char *; the first id is NULL */
} EmChoiceRecords;

static void
free_records (gpointer data)
{
  EmChoiceRecords *records = data;

  g_ptr_array_unref (records->ids);
  g_ptr_array_unref (records->names);
  g_free (records->none);
  g_free (records);
}

GtkWidget *
em_record_choice_new (const char *label, EmRecordKind kind, const char *none, GtkWidget **out_drop_down)
{
  const char *empty[] = { none, NULL };
  EmChoiceRecords *records = g_new0 (EmChoiceRecords, 1);
  GtkWidget *box = em_field_choice (label, empty, out_drop_down);
  g_autoptr (GtkExpression) expression = gtk_property_expression_new (GTK_TYPE_STRING_OBJECT, NULL, "string");

  records->kind = kind;
  records->none = g_strdup (none);
  records->ids = g_ptr_array_new_with_free_func (g_free);
  records->names = g_ptr_array_new_with_free_func (g_free);
  g_object_set_data_full (G_OBJECT (*out_drop_down), "records", records, free_records);
  gtk_drop_down_set_expression (GTK_DROP_DOWN (*out_drop_down), expression);
  gtk_drop_down_set_enable_search (GTK_DROP_DOWN (*out_drop_down), kind != EM_RECORD_MACHINE);
  return box;
}

typedef struct
{
  GPtrArray  *ids, *names;
  const char *chosen;
  gboolean    is_found;
} EmFilling;

static void
add (EmFilling *filling, const char *id, const char *name, gboolean is_retired)
{
  gboolean is_chosen = g_strcmp0 (id, filling->chosen) == 0;

  if (is_retired && !is_chosen)
    return;
  filling->is_found = filling->is_found || is_chosen;
  g_ptr_array_add (filling->ids, g_strdup (id));
  g_ptr_array_add (filling->names, is_retired ? g_strdup_printf (_("%s (retired)"), name) : g_strdup (name));
}

/* What is chosen besides machines; no id of a machine begins with a space. */
#define ANY " "

static const char *const any_names[EM_N_PROCESS] = { N_("Any pulsed laser"), N_("Any micro TIG") };

static gboolean
has_process (const EmRates *rates, EmProcess process)
{
  for (int32_t i = 0; i < rates->n_machines; i++)
    if (!rates->machine[i].is_retired && rates->machine[i].process == process)
      return TRUE;
  return FALSE;
}

static void
add_processes (EmFilling *filling, const EmRates *rates)
{
  for (int i = 0; i < EM_N_PROCESS; i++)
    {
      g_autofree char *id = g_strconcat (ANY, em_process_ids[i], NULL);
      add (filling, id, _(any_names[i]), !has_process (rates, (EmProcess) i));
    }
}

static void
add_all (EmFilling *filling, EmRecordKind kind, EmBasis *basis)
{
  const EmCatalogue *catalogue = em_basis_get_catalogue (basis);
  const EmRates *rates = em_basis_get_rates (basis);

  for (int32_t i = 0; kind == EM_RECORD_BASE && i < catalogue->n_bases; i++)
    add (filling, catalogue->base[i].id, catalogue->base[i].designation, catalogue->base[i].is_retired);
  for (int32_t i = 0; kind == EM_RECORD_WIRE && i < catalogue->n_fillers; i++)
    add (filling, catalogue->filler[i].id, catalogue->filler[i].designation, catalogue->filler[i].is_retired);
  if (kind == EM_RECORD_MACHINE)
    add_processes (filling, rates);
  for (int32_t i = 0; kind == EM_RECORD_MACHINE && i < rates->n_machines; i++)
    add (filling, rates->machine[i].id, rates->machine[i].name, rates->machine[i].is_retired);
  if (!filling->is_found && filling->chosen != NULL)
    add (filling, filling->chosen, filling->chosen, FALSE);
}

static gboolean
is_same (const GPtrArray *a, const GPtrArray *b)
{
  gboolean same = a->len == b->len;

  for (guint i = 0; same && i < a->len; i++)
    same = g_strcmp0 (a->pdata[i], b->pdata[i]) == 0;
  return same;
}

void
em_record_choice_show (GtkWidget *drop_down, EmBasis *basis, const char *id, gpointer data)
{
  EmChoiceRecords *records = g_object_get_data (G_OBJECT (drop_down), "records");
  EmFilling filling = { g_ptr_array_new_with_free_func (g_free), g_ptr_array_new_with_free_func (g_free), id, id == NULL };
  guint at = 0;

  g_ptr_array_add (filling.ids, NULL);
  g_ptr_array_add (filling.names, g_strdup (records->none));
  add_all (&filling, records->kind, basis);
  gboolean is_known = is_same (filling.ids, records->ids) && is_same (filling.names, records->names);
  g_ptr_array_unref (records->ids);
  g_ptr_array_unref (records->names);
  records->ids = filling.ids;
  records->names = filling.names;
  g_signal_handlers_block_matched (drop_down, G_SIGNAL_MATCH_DATA, 0, 0, NULL, NULL, data);
  if (!is_known)
    {
      g_ptr_array_add (records->names, NULL);
      em_field_set_options (drop_down, (const char *const *) records->names->pdata);
      g_ptr_array_set_size (records->names, (int) records->names->len - 1);
    }
  while (at + 1 < records->ids->len && g_strcmp0 (records->ids->pdata[at], id) != 0)
    at++;
  gtk_drop_down_set_selected (GTK_DROP_DOWN (drop_down), at);
  g_signal_handlers_unblock_matched (drop_down, G_SIGNAL_MATCH_DATA, 0, 0, NULL, NULL, data);
}

gboolean
em_record_choice_get (GtkWidget *drop_down, const char **out_id)
{
  EmChoiceRecords *records = g_object_get_data (G_OBJECT (drop_down), "records");
  guint at = gtk_drop_down_get_selected (GTK_DROP_DOWN (drop_down));

  if (at >= records->ids->len)
    return FALSE;
  *out_id = records->ids->pdata[at];
  return TRUE;
}

void
em_record_choice_show_machine (GtkWidget *drop_down, EmBasis *basis, const char *id, const char *process_id, gpointer data)
{
  g_autofree char *any = id == NULL && process_id != NULL ? g_strconcat (ANY, process_id, NULL) : NULL;

  em_record_choice_show (drop_down, basis, any != NULL ? any : id, data);
}

gboolean
em_record_choice_get_machine (GtkWidget *drop_down, const char **out_id, const char **out_process_id)
{
  const char *id;

  if (!em_record_choice_get (drop_down, &id))
    return FALSE;
  gboolean is_any = id != NULL && g_str_has_prefix (id, ANY);
  *out_id = is_any ? NULL : id;
  *out_process_id = is_any ? id + strlen (ANY) : NULL;
  return TRUE;
}
