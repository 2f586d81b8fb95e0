/* em-metals-page: base metals or wires: a list to search, and the chosen record beside it.
 *
 * A shipped record that is changed becomes the shop's own, and can be given its shipped
 * figures again. Records are retired and not removed, since old quotes name them; only one
 * that was made just now goes away again.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-book-pages.h"

#include "em-book-file.h"
#include "em-field.h"
#include "em-place.h"
#include "em-rate-entry.h"
#include "em-wire-sizes.h"
#include "em-words.h"

#include <glib/gi18n.h>
#include <stdlib.h>
#include <string.h>

#define FIGURE(holder, id, name, unit, type, member, low, high) { id, EM_N (name), "metal", unit, type, offsetof (holder, member), low, high, 0 }

/* Wide limits: the core's own check speaks when a figure is out of them. */
static const EmRateField base_figures[] =
{
  FIGURE (EmBase, "density", "Density", "g/mm³", EM_RATE_REAL, density_g_per_mm3, 0.001, 0.03),
  FIGURE (EmBase, "hardness_low", "Hardness in use, from", "HRC", EM_RATE_REAL, hardness_low_hrc, 0, 70),
  FIGURE (EmBase, "hardness_high", "Hardness in use, to", "HRC", EM_RATE_REAL, hardness_high_hrc, 0, 70),
  FIGURE (EmBase, "hardness_low_hv", "Hardness off the HRC scale, from", "HV", EM_RATE_REAL, hardness_low_hv, 10, 2000),
  FIGURE (EmBase, "hardness_high_hv", "Hardness off the HRC scale, to", "HV", EM_RATE_REAL, hardness_high_hv, 10, 2000),
  FIGURE (EmBase, "temper", "Last tempering or aging", "°C", EM_RATE_REAL, temper_degc, 0, 1200),
  FIGURE (EmBase, "preheat_low", "TIG preheat, from", "°C", EM_RATE_REAL, preheat_low_degc, 0, 1000),
  FIGURE (EmBase, "preheat_high", "TIG preheat, to", "°C", EM_RATE_REAL, preheat_high_degc, 0, 1000),
  FIGURE (EmBase, "laser_preheat", "Laser preheat", "°C", EM_RATE_REAL, laser_preheat_degc, 0, 1000),
};

static const EmRateField base_retired = FIGURE (EmBase, "retired", "Retired: not offered any more, still priced in old quotes", "", EM_RATE_BOOL, is_retired, 0, 1);

static const EmRateField wire_figures[] =
{
  FIGURE (EmFiller, "density", "Density", "g/mm³", EM_RATE_REAL, density_g_per_mm3, 0.001, 0.03),
  FIGURE (EmFiller, "melt", "Heat to melt it, from room temperature", "J/g", EM_RATE_REAL, melt_j_per_g, 100, 5000),
  FIGURE (EmFiller, "hardness_low", "Nominal hardness, from", "HRC", EM_RATE_REAL, hardness_low_hrc, 0, 70),
  FIGURE (EmFiller, "hardness_high", "Nominal hardness, to", "HRC", EM_RATE_REAL, hardness_high_hrc, 0, 70),
  FIGURE (EmFiller, "aged_low", "Hardness aged, from", "HRC", EM_RATE_REAL, aged_low_hrc, 0, 70),
  FIGURE (EmFiller, "aged_high", "Hardness aged, to", "HRC", EM_RATE_REAL, aged_high_hrc, 0, 70),
  FIGURE (EmFiller, "hardness_low_hv", "Hardness off the HRC scale, from", "HV", EM_RATE_REAL, hardness_low_hv, 10, 2000),
  FIGURE (EmFiller, "hardness_high_hv", "Hardness off the HRC scale, to", "HV", EM_RATE_REAL, hardness_high_hv, 10, 2000),
  FIGURE (EmFiller, "stick", "Stick length, if not the rate book’s", "mm", EM_RATE_REAL, stick_mm, 10, 5000),
};

static const EmRateField wire_switches[] =
{
  FIGURE (EmFiller, "polishes", "Takes a polish", "", EM_RATE_BOOL, polishes, 0, 1),
  FIGURE (EmFiller, "textures", "Takes a texture", "", EM_RATE_BOOL, textures, 0, 1),
  FIGURE (EmFiller, "nitrides", "Can be nitrided", "", EM_RATE_BOOL, nitrides, 0, 1),
  FIGURE (EmFiller, "machines_easily", "Machines easily", "", EM_RATE_BOOL, machines_easily, 0, 1),
  FIGURE (EmFiller, "resists_corrosion", "Resists corrosion", "", EM_RATE_BOOL, resists_corrosion, 0, 1),
  FIGURE (EmFiller, "resists_wear", "Resists wear", "", EM_RATE_BOOL, resists_wear, 0, 1),
};

static const EmRateField wire_retired = FIGURE (EmFiller, "retired", "Retired: not offered any more, still priced in old quotes", "", EM_RATE_BOOL, is_retired, 0, 1);

enum { TEXT_DESIGNATION, TEXT_SUPPLIER, TEXT_SOURCE, TEXT_REMARK, N_TEXT };
static const char *const text_ids[N_TEXT] = { "designation", "supplier", "source", "remark" };
enum { GRAMS_PER_CM3 = 1000, LIST_WIDTH = 260 };

typedef struct
{
  EmDraft    *draft;       /* owned */
  gboolean    is_wire;
  EmCatalogue shipped;     /* empty when it can't be read */
  int32_t     shown;
  int32_t     n_listed;
  GtkWidget  *search, *list, *form, *text[N_TEXT], *family, *process[EM_N_PROCESS], *balance, *shipped_button, *remove_button;
  EmWireSizes *sizes;      /* NULL for base metals; owned */
  GPtrArray  *entries;     /* EmRateEntry of the record */
  EmRateField element[EM_N_ELEMENT][2];
  char       *element_name[EM_N_ELEMENT][2];
} EmMetals;

static void
free_metals (gpointer data)
{
  EmMetals *metals = data;

  g_signal_handlers_disconnect_by_data (metals->draft, metals);
  g_object_unref (metals->draft);
  em_catalogue_clear (&metals->shipped);
  g_clear_pointer (&metals->sizes, em_wire_sizes_free);
  g_ptr_array_unref (metals->entries);
  for (int i = 0; i < EM_N_ELEMENT; i++)
    for (int bound = 0; bound < 2; bound++)
      g_free (metals->element_name[i][bound]);
  g_free (metals);
}

/* ---- one of the two kinds of record ---- */

static int32_t
count (EmMetals *metals)
{
  const EmCatalogue *catalogue = em_draft_get_catalogue (metals->draft);

  return metals->is_wire ? catalogue->n_fillers : catalogue->n_bases;
}

static EmBase *
base_at (EmMetals *metals, int32_t index)
{
  EmCatalogue *catalogue = em_draft_get_catalogue (metals->draft);

  return !metals->is_wire && index >= 0 && index < catalogue->n_bases ? &catalogue->base[index] : NULL;
}

static EmFiller *
wire_at (EmMetals *metals, int32_t index)
{
  EmCatalogue *catalogue = em_draft_get_catalogue (metals->draft);

  return metals->is_wire && index >= 0 && index < catalogue->n_fillers ? &catalogue->filler[index] : NULL;
}

static void *
hold_record (gpointer owner)
{
  EmMetals *metals = owner;
  void *base = base_at (metals, metals->shown);

  return base != NULL ? base : wire_at (metals, metals->shown);
}

static EmComposition *
composition_of (EmMetals *metals)
{
  EmBase *base = base_at (metals, metals->shown);
  EmFiller *wire = wire_at (metals, metals->shown);

  return base != NULL ? &base->composition : wire != NULL ? &wire->composition : NULL;
}

static char **
text_of (EmMetals *metals, int which)
{
  EmBase *base = base_at (metals, metals->shown);
  EmFiller *wire = wire_at (metals, metals->shown);

  switch (which)
    {
    case TEXT_DESIGNATION: return base != NULL ? &base->designation : &wire->designation;
    case TEXT_SUPPLIER: return wire != NULL ? &wire->supplier_ref : NULL;
    case TEXT_SOURCE: return base != NULL ? &base->source : &wire->source;
    default: return base != NULL ? &base->remark : &wire->remark;
    }
}

static const char *
id_at (EmMetals *metals, int32_t index)
{
  return metals->is_wire ? wire_at (metals, index)->id : base_at (metals, index)->id;
}

/* A shipped record that is changed becomes the shop's own. */
static void
make_own (EmMetals *metals)
{
  if (metals->is_wire)
    wire_at (metals, metals->shown)->is_own = true;
  else
    base_at (metals, metals->shown)->is_own = true;
}

static const char *
page_of (EmMetals *metals)
{
  return metals->is_wire ? "wires" : "bases";
}

/* field NULL: a step of its own. */
static void
touch (EmMetals *metals, const char *field)
{
  em_page_touch (metals->draft, EM_DRAFT_CATALOGUE, page_of (metals), metals->shown >= 0 ? id_at (metals, metals->shown) : NULL, field);
  if (field == NULL)
    em_draft_break (metals->draft);
}

static void
touch_own (EmMetals *metals, const char *field)
{
  make_own (metals);
  touch (metals, field);
}

/* Of what is not typed. */
static void
touch_own_once (EmMetals *metals, const char *field)
{
  touch_own (metals, field);
  em_draft_break (metals->draft);
}

static void
on_edited (EmRateEntry *entry, EmMetals *metals)
{
  g_autofree char *field = em_rate_entry_dup_where (entry);

  touch_own (metals, field);
}

static int32_t
find_shipped (EmMetals *metals)
{
  const char *id = id_at (metals, metals->shown);

  return metals->is_wire ? em_catalogue_find_filler (&metals->shipped, id) : em_catalogue_find_base (&metals->shipped, id);
}

/* ---- the record ---- */

static void
on_text (GtkEditable *entry, EmMetals *metals)
{
  int which = GPOINTER_TO_INT (g_object_get_data (G_OBJECT (entry), "which"));
  char **text = text_of (metals, which);
  const char *typed = gtk_editable_get_text (entry);

  free (*text);
  *text = typed[0] != '\0' || which == TEXT_DESIGNATION ? em_text_dup (typed) : NULL;
  touch_own (metals, text_ids[which]);
}

static void
on_family (GtkDropDown *drop_down, GParamSpec *spec, EmMetals *metals)
{
  EmFamily family = (EmFamily) gtk_drop_down_get_selected (drop_down);

  (void) spec;
  if (metals->is_wire)
    wire_at (metals, metals->shown)->family = family;
  else
    base_at (metals, metals->shown)->family = family;
  touch_own_once (metals, "family");
}

static void
on_balance (GtkDropDown *drop_down, GParamSpec *spec, EmMetals *metals)
{
  (void) spec;
  composition_of (metals)->balance = (EmElement) gtk_drop_down_get_selected (drop_down);
  touch_own_once (metals, "balance");
}

static void
on_process (EmMetals *metals)
{
  uint32_t processes = 0;

  for (int i = 0; i < EM_N_PROCESS; i++)
    if (gtk_check_button_get_active (GTK_CHECK_BUTTON (metals->process[i])))
      processes |= 1u << i;
  wire_at (metals, metals->shown)->processes = processes;
  touch_own_once (metals, "processes");
}

static void
put_check (GtkWidget *button, gboolean is_active, gpointer data)
{
  g_signal_handlers_block_matched (button, G_SIGNAL_MATCH_DATA, 0, 0, NULL, NULL, data);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (button), is_active);
  g_signal_handlers_unblock_matched (button, G_SIGNAL_MATCH_DATA, 0, 0, NULL, NULL, data);
}

/* Made here and not kept yet. */
static gboolean
is_new (EmMetals *metals)
{
  const EmCatalogue *kept = em_basis_get_catalogue (em_draft_get_basis (metals->draft));
  const EmFiller *wire = wire_at (metals, metals->shown);
  const EmBase *base = base_at (metals, metals->shown);

  return wire != NULL ? em_catalogue_find_filler (kept, wire->id) < 0 : base != NULL && em_catalogue_find_base (kept, base->id) < 0;
}

static void
show_record (EmMetals *metals)
{
  EmFiller *wire = wire_at (metals, metals->shown);
  EmBase *base = base_at (metals, metals->shown);

  gtk_widget_set_visible (metals->form, wire != NULL || base != NULL);
  if (wire == NULL && base == NULL)
    return;
  for (int i = 0; i < N_TEXT; i++)
    if (metals->text[i] != NULL)
      em_field_put_text (metals->text[i], *text_of (metals, i), metals);
  em_field_put_choice (metals->family, wire != NULL ? wire->family : base->family, metals);
  em_field_put_choice (metals->balance, composition_of (metals)->balance, metals);
  for (guint i = 0; i < metals->entries->len; i++)
    em_rate_entry_show (metals->entries->pdata[i]);
  gboolean is_own = wire != NULL ? wire->is_own : base->is_own;
  gtk_widget_set_sensitive (metals->shipped_button, is_own && find_shipped (metals) >= 0);
  gtk_widget_set_sensitive (metals->remove_button, is_new (metals));
  if (wire == NULL)
    return;
  for (int i = 0; i < EM_N_PROCESS; i++)
    put_check (metals->process[i], (wire->processes & (1u << i)) != 0, metals);
  em_wire_sizes_show (metals->sizes);
}

/* ---- the list ---- */

static char *
row_text (EmMetals *metals, int32_t index)
{
  EmFiller *wire = wire_at (metals, index);
  EmBase *base = base_at (metals, index);
  const char *designation = wire != NULL ? wire->designation : base->designation;
  gboolean is_own = wire != NULL ? wire->is_own : base->is_own, is_retired = wire != NULL ? wire->is_retired : base->is_retired;

  return g_strdup_printf ("%s%s%s", designation != NULL ? designation : "", is_own ? _(" · own") : "", is_retired ? _(" · retired") : "");
}

static void
show_list (EmMetals *metals)
{
  int32_t n = count (metals);

  for (; metals->n_listed > n; metals->n_listed--)
    gtk_list_box_remove (GTK_LIST_BOX (metals->list), GTK_WIDGET (gtk_list_box_get_row_at_index (GTK_LIST_BOX (metals->list), metals->n_listed - 1)));
  for (; metals->n_listed < n; metals->n_listed++)
    {
      GtkWidget *label = gtk_label_new (NULL);
      gtk_label_set_xalign (GTK_LABEL (label), 0);
      gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
      gtk_list_box_append (GTK_LIST_BOX (metals->list), label);
    }
  for (int32_t i = 0; i < n; i++)
    {
      g_autofree char *text = row_text (metals, i);
      GtkListBoxRow *row = gtk_list_box_get_row_at_index (GTK_LIST_BOX (metals->list), i);
      GtkWidget *label = gtk_list_box_row_get_child (row);
      if (g_str_equal (gtk_label_get_text (GTK_LABEL (label)), text))
        continue;
      gtk_label_set_text (GTK_LABEL (label), text);
      gtk_widget_set_tooltip_text (label, text);
      gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL, text, -1);
    }
}

static gboolean
is_listed (GtkListBoxRow *row, gpointer data)
{
  EmMetals *metals = data;
  g_autofree char *wanted = g_utf8_casefold (gtk_editable_get_text (GTK_EDITABLE (metals->search)), -1);
  g_autofree char *text = g_utf8_casefold (gtk_label_get_text (GTK_LABEL (gtk_list_box_row_get_child (row))), -1);

  return strstr (text, wanted) != NULL;
}

static void
on_search (EmMetals *metals)
{
  gtk_list_box_invalidate_filter (GTK_LIST_BOX (metals->list));
}

/* Another record, or the same with other sizes. */
static void
forget_sizes (EmMetals *metals)
{
  if (metals->sizes != NULL)
    em_wire_sizes_forget (metals->sizes);
}

static void
show (EmMetals *metals, int32_t index)
{
  metals->shown = index;
  forget_sizes (metals);
  show_record (metals);
  /* What could not be read of the record before is told no more. */
  em_draft_touch (metals->draft, 0, NULL);
}

static void
on_row (GtkListBox *list, GtkListBoxRow *row, EmMetals *metals)
{
  (void) list;
  if (row != NULL && gtk_list_box_row_get_index (row) != metals->shown)
    show (metals, gtk_list_box_row_get_index (row));
}

static void
select_row (EmMetals *metals, int32_t index)
{
  GtkListBoxRow *row = gtk_list_box_get_row_at_index (GTK_LIST_BOX (metals->list), index);

  /* A search may have hidden it. */
  if (row != NULL && !gtk_widget_get_child_visible (GTK_WIDGET (row)))
    gtk_editable_set_text (GTK_EDITABLE (metals->search), "");
  gtk_list_box_select_row (GTK_LIST_BOX (metals->list), row);
}

static void
select_last (EmMetals *metals)
{
  em_page_touch (metals->draft, EM_DRAFT_CATALOGUE, page_of (metals), id_at (metals, count (metals) - 1), NULL);
  em_draft_break (metals->draft);
  select_row (metals, count (metals) - 1);
  show (metals, count (metals) - 1);
  gtk_widget_grab_focus (metals->text[TEXT_DESIGNATION]);
}

static char *
free_id (EmMetals *metals, const char *stem)
{
  const EmCatalogue *catalogue = em_draft_get_catalogue (metals->draft);

  for (int n = 1;; n++)
    {
      g_autofree char *id = g_strdup_printf ("%s-%d", stem, n);
      if (em_catalogue_find_base (catalogue, id) < 0 && em_catalogue_find_filler (catalogue, id) < 0)
        return g_steal_pointer (&id);
    }
}

static void
rename_copy (EmMetals *metals, char **id, char **designation)
{
  g_autofree char *new_id = free_id (metals, *id), *name = g_strdup_printf (_("%s, copy"), *designation);

  free (*id);
  free (*designation);
  *id = em_text_dup (new_id);
  *designation = em_text_dup (name);
}

static void
on_copy (EmMetals *metals)
{
  EmCatalogue *catalogue = em_draft_get_catalogue (metals->draft);
  EmStatus status;

  if (metals->is_wire)
    {
      EmFiller copy;
      if (em_filler_copy (wire_at (metals, metals->shown), &copy) != EM_OK)
        return;
      rename_copy (metals, &copy.id, &copy.designation);
      copy.is_own = true;
      status = em_catalogue_add_filler_take (catalogue, &copy);
    }
  else
    {
      EmBase copy;
      if (em_base_copy (base_at (metals, metals->shown), &copy) != EM_OK)
        return;
      rename_copy (metals, &copy.id, &copy.designation);
      copy.is_own = true;
      status = em_catalogue_add_base_take (catalogue, &copy);
    }
  if (status == EM_OK)
    select_last (metals);
}

static void
on_shipped (EmMetals *metals)
{
  int32_t index = find_shipped (metals);

  if (index < 0)
    return;
  if (metals->is_wire)
    {
      EmFiller *wire = wire_at (metals, metals->shown), copy;
      if (em_filler_copy (&metals->shipped.filler[index], &copy) != EM_OK)
        return;
      em_filler_clear (wire);
      *wire = copy;
    }
  else
    {
      EmBase *base = base_at (metals, metals->shown), copy;
      if (em_base_copy (&metals->shipped.base[index], &copy) != EM_OK)
        return;
      em_base_clear (base);
      *base = copy;
    }
  forget_sizes (metals);
  touch (metals, NULL);
}

/* New ones stand at the end. */
static void
on_remove (EmMetals *metals)
{
  EmCatalogue *catalogue = em_draft_get_catalogue (metals->draft);
  int32_t at = metals->shown;
  g_autofree char *id = g_strdup (id_at (metals, at));

  if (metals->is_wire)
    {
      em_filler_clear (&catalogue->filler[at]);
      memmove (&catalogue->filler[at], &catalogue->filler[at + 1], (size_t) (--catalogue->n_fillers - at) * sizeof (EmFiller));
    }
  else
    {
      em_base_clear (&catalogue->base[at]);
      memmove (&catalogue->base[at], &catalogue->base[at + 1], (size_t) (--catalogue->n_bases - at) * sizeof (EmBase));
    }
  metals->shown = MIN (at, count (metals) - 1);
  forget_sizes (metals);
  em_page_touch (metals->draft, EM_DRAFT_CATALOGUE, page_of (metals), id, NULL);
  em_draft_break (metals->draft);
}

static void
on_draft_changed (EmMetals *metals)
{
  if (metals->shown >= count (metals))
    metals->shown = count (metals) - 1;
  show_list (metals);
  show_record (metals);
}

/* The record whose step was undone or done again is shown. Its sizes may be others. */
static void
on_stepped (EmMetals *metals, const char *where)
{
  g_autofree char *id = em_page_dup_record (where, page_of (metals));
  const EmCatalogue *catalogue = em_draft_get_catalogue (metals->draft);
  int32_t at = metals->is_wire ? em_catalogue_find_filler (catalogue, id) : em_catalogue_find_base (catalogue, id);

  if (id == NULL || id[0] == '\0')
    return;
  if (at >= 0 && at != metals->shown)
    show (metals, at);
  select_row (metals, metals->shown);
}

/* ---- the page ---- */

static void
add_entry (EmMetals *metals, GtkWidget *flow, const EmRateField *field)
{
  GtkWidget *entry = em_rate_entry_new (field, metals->draft, hold_record, metals, FALSE);

  if (g_str_equal (field->unit, "g/mm³"))
    em_rate_entry_set_scale (EM_RATE_ENTRY (entry), GRAMS_PER_CM3, "g/cm³");
  g_signal_connect (entry, "edited", G_CALLBACK (on_edited), metals);
  g_ptr_array_add (metals->entries, entry);
  em_fields_add (flow, entry);
}

static void
add_text (EmMetals *metals, GtkWidget *box, int which, const char *name)
{
  gtk_box_append (GTK_BOX (box), em_field_text (name, &metals->text[which]));
  g_object_set_data (G_OBJECT (metals->text[which]), "which", GINT_TO_POINTER (which));
  em_page_set_field (metals->text[which], text_ids[which]);
  g_signal_connect (metals->text[which], "changed", G_CALLBACK (on_text), metals);
}

static void
add_composition (EmMetals *metals, GtkWidget *box)
{
  GtkWidget *inner = gtk_box_new (GTK_ORIENTATION_VERTICAL, 8), *flow = em_fields_new ();
  const char *names[EM_N_ELEMENT + 1] = { NULL };
  gsize offset = metals->is_wire ? offsetof (EmFiller, composition) : offsetof (EmBase, composition);

  for (int i = 0; i < EM_N_ELEMENT; i++)
    {
      names[i] = em_element_ids[i];
      for (int bound = 0; bound < 2; bound++)
        {
          gsize member = bound == 0 ? offsetof (EmComposition, low_pct) : offsetof (EmComposition, high_pct);
          metals->element_name[i][bound] = g_strdup_printf (bound == 0 ? _("%s, from") : _("%s, to"), em_element_ids[i]);
          metals->element[i][bound] = (EmRateField) { metals->element_name[i][bound], metals->element_name[i][bound], "metal", "%", EM_RATE_REAL,
                                                      offset + member + (gsize) i * sizeof (double), 0, 100, 0 };
          add_entry (metals, flow, &metals->element[i][bound]);
        }
    }
  gtk_box_append (GTK_BOX (inner), em_field_choice (_("The _rest is"), names, &metals->balance));
  gtk_box_append (GTK_BOX (inner), flow);
  gtk_box_append (GTK_BOX (box), em_fold_new (_("Com_position, percent by mass"), inner));
  em_page_set_field (metals->balance, "balance");
  g_signal_connect (metals->balance, "notify::selected", G_CALLBACK (on_balance), metals);
}

static EmFiller *
hold_wire (gpointer owner)
{
  EmMetals *metals = owner;

  return wire_at (metals, metals->shown);
}

static void
add_wire_parts (EmMetals *metals, GtkWidget *box)
{
  GtkWidget *processes = em_fields_new (), *switches = em_fields_new ();

  metals->sizes = em_wire_sizes_new (metals->draft, hold_wire, metals);
  em_wire_sizes_add_to (metals->sizes, box);
  for (int i = 0; i < EM_N_PROCESS; i++)
    {
      metals->process[i] = gtk_check_button_new_with_label (em_words_process ((EmProcess) i));
      g_signal_connect_swapped (metals->process[i], "toggled", G_CALLBACK (on_process), metals);
      em_fields_add (processes, metals->process[i]);
    }
  em_page_set_field (processes, "processes");
  gtk_box_append (GTK_BOX (box), em_page_heading (_("Fit for, and how it behaves")));
  gtk_box_append (GTK_BOX (box), processes);
  for (gsize i = 0; i < G_N_ELEMENTS (wire_switches); i++)
    add_entry (metals, switches, &wire_switches[i]);
  gtk_box_append (GTK_BOX (box), switches);
}

static GtkWidget *
button_new (EmMetals *metals, GtkWidget *flow, const char *name, const char *tooltip, GCallback callback)
{
  GtkWidget *button = gtk_button_new_with_mnemonic (name);

  gtk_widget_set_tooltip_text (button, tooltip);
  gtk_widget_set_halign (button, GTK_ALIGN_START);
  g_signal_connect_swapped (button, "clicked", callback, metals);
  em_fields_add (flow, button);
  return button;
}

static GtkWidget *
form_new (EmMetals *metals)
{
  const char *families[EM_N_FAMILY + 1] = { NULL };
  const EmRateField *figures = metals->is_wire ? wire_figures : base_figures;
  gsize n_figures = metals->is_wire ? G_N_ELEMENTS (wire_figures) : G_N_ELEMENTS (base_figures);
  GtkWidget *box, *page = em_page_new (&box), *buttons = em_fields_new (), *flow = em_fields_new ();
  GtkWidget *retired = em_fields_new ();

  for (int i = 0; i < EM_N_FAMILY; i++)
    families[i] = em_words_family ((EmFamily) i);
  button_new (metals, buttons, _("Add a _copy"), _("A new record with the figures of this one"), G_CALLBACK (on_copy));
  metals->shipped_button = button_new (metals, buttons, _("Shipped _figures"), _("Forget what the shop changed of this record"), G_CALLBACK (on_shipped));
  metals->remove_button = button_new (metals, buttons, _("_Remove"), _("Only what was added just now; retire the others"), G_CALLBACK (on_remove));
  gtk_box_append (GTK_BOX (box), buttons);
  add_text (metals, box, TEXT_DESIGNATION, _("_Designation"));
  gtk_box_append (GTK_BOX (box), em_field_choice (_("_Family"), families, &metals->family));
  em_page_set_field (metals->family, "family");
  g_signal_connect (metals->family, "notify::selected", G_CALLBACK (on_family), metals);
  if (metals->is_wire)
    {
      add_text (metals, box, TEXT_SUPPLIER, _("Supplier’s _article number"));
      add_wire_parts (metals, box);
    }
  for (gsize i = 0; i < n_figures; i++)
    add_entry (metals, flow, &figures[i]);
  gtk_box_append (GTK_BOX (box), em_page_heading (_("Figures")));
  gtk_box_append (GTK_BOX (box), flow);
  add_composition (metals, box);
  add_text (metals, box, TEXT_SOURCE, _("_Where the figures come from"));
  add_text (metals, box, TEXT_REMARK, _("Re_mark"));
  add_entry (metals, retired, metals->is_wire ? &wire_retired : &base_retired);
  gtk_box_append (GTK_BOX (box), retired);
  metals->form = box;
  gtk_widget_set_hexpand (page, TRUE);
  return page;
}

static GtkWidget *
metals_page_new (EmDraft *draft, gboolean is_wire)
{
  EmMetals *metals = g_new0 (EmMetals, 1);
  GtkWidget *page = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0), *left = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  GtkWidget *scrolled = gtk_scrolled_window_new ();
  g_autofree char *shipped = em_place_data_file ("metals.xml");

  metals->draft = g_object_ref (draft);
  metals->is_wire = is_wire;
  metals->entries = g_ptr_array_new ();
  if (!em_catalogue_load (shipped, &metals->shipped, NULL))
    em_catalogue_init (&metals->shipped);
  metals->search = gtk_search_entry_new ();
  gtk_accessible_update_property (GTK_ACCESSIBLE (metals->search), GTK_ACCESSIBLE_PROPERTY_LABEL, is_wire ? _("Find a wire") : _("Find a base metal"), -1);
  g_object_set (metals->search, "placeholder-text", is_wire ? _("Find a wire") : _("Find a base metal"), NULL);
  metals->list = gtk_list_box_new ();
  gtk_list_box_set_selection_mode (GTK_LIST_BOX (metals->list), GTK_SELECTION_BROWSE);
  gtk_list_box_set_filter_func (GTK_LIST_BOX (metals->list), is_listed, metals, NULL);
  gtk_widget_add_css_class (metals->list, "features");
  gtk_accessible_update_property (GTK_ACCESSIBLE (metals->list), GTK_ACCESSIBLE_PROPERTY_LABEL, is_wire ? _("Wires") : _("Base metals"), -1);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scrolled), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), metals->list);
  gtk_widget_set_vexpand (scrolled, TRUE);
  gtk_widget_add_css_class (left, "book-list");
  gtk_box_append (GTK_BOX (left), metals->search);
  gtk_box_append (GTK_BOX (left), scrolled);
  gtk_widget_set_size_request (left, LIST_WIDTH, -1);
  gtk_box_append (GTK_BOX (page), left);
  gtk_box_append (GTK_BOX (page), form_new (metals));
  on_draft_changed (metals);
  g_signal_connect (metals->list, "row-selected", G_CALLBACK (on_row), metals);
  gtk_list_box_select_row (GTK_LIST_BOX (metals->list), gtk_list_box_get_row_at_index (GTK_LIST_BOX (metals->list), 0));
  g_signal_connect_swapped (metals->search, "search-changed", G_CALLBACK (on_search), metals);
  g_signal_connect_swapped (draft, "changed", G_CALLBACK (on_draft_changed), metals);
  g_signal_connect_swapped (draft, "stepped", G_CALLBACK (on_stepped), metals);
  g_object_set_data_full (G_OBJECT (page), "metals", metals, free_metals);
  return page;
}

GtkWidget *
em_bases_page_new (EmDraft *draft)
{
  return metals_page_new (draft, FALSE);
}

GtkWidget *
em_wires_page_new (EmDraft *draft)
{
  return metals_page_new (draft, TRUE);
}
