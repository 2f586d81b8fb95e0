/* em-feature-editor: the selected feature's entries, made from its kind's field table.
 *
 * Kind fields are built anew when another kind is selected, and only filled otherwise,
 * so that typing never loses its place. Shared inputs are built once, each group's when it is first opened.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-feature-editor.h"

#include "em-actuals.h"
#include "em-beside.h"
#include "em-drawing-view.h"
#include "em-feature-slot.h"
#include "em-field.h"
#include "em-quantity-entry.h"
#include "em-record-choice.h"
#include "em-steady.h"
#include "em-words.h"
#include "em-working.h"

#include <glib/gi18n.h>

#define OVERRIDE_FIELD "override/0"

enum { HEAD_GAP_PX = 10 };

struct _EmFeatureEditor
{
  GtkWidget parent_instance;

  GtkWidget *views, *groups, *kind_name, *label_entry, *range_toggle, *accept_button, *fault_label,
            *head_name, *head_buttons, *plan_button, *plan_label;  /* template */

  GtkWidget *section, *plan;
  GtkWidget *expander[N_GROUP], *flow[N_GROUP];
  gboolean   is_made[N_GROUP];
  GArray    *kind_slots, *shared_slots;   /* EmSlot */
  GtkWidget *actuals;                     /* this and the next: NULL until their group is made */
  GtkWidget *filler, *machine, *override, *override_problem, *override_reason, *remark, *assumption;

  EmDocument   *document;      /* owned */
  const EmKind *kind;          /* the kind the slots are for */
  uint32_t      feature_id;
  int           shown_field;   /* dimension brought out in the drawing */
  GHashTable   *typed;         /* "id/field/bound" → text that can't be taken, while the document has its problem */
};

G_DEFINE_FINAL_TYPE (EmFeatureEditor, em_feature_editor, GTK_TYPE_WIDGET)

static int32_t
selected (EmFeatureEditor *self)
{
  return self->document != NULL ? em_document_get_selected_index (self->document) : -1;
}

static const EmFeature *
feature_of (EmFeatureEditor *self)
{
  int32_t index = selected (self);

  return index < 0 ? NULL : &em_document_get_quote (self->document)->feature[index];
}

static EmSlot *
find_slot (EmFeatureEditor *self, GtkWidget *widget)
{
  for (int which = 0; which < 2; which++)
    {
      GArray *slots = which == 0 ? self->kind_slots : self->shared_slots;
      for (guint i = 0; i < slots->len; i++)
        if (g_array_index (slots, EmSlot, i).widget == widget)
          return &g_array_index (slots, EmSlot, i);
    }
  return NULL;
}

/* typed stands in an entry of the feature; problem: why it can't be taken, or NULL. It is kept, so that it is still there
 * after a look at another feature. */
static void
settle_typed (EmFeatureEditor *self, const char *field, const char *typed, const char *problem)
{
  char *key = g_strdup_printf ("%u/%s", self->feature_id, field);

  if (problem != NULL)
    g_hash_table_insert (self->typed, key, g_strdup (typed));
  else
    {
      g_hash_table_remove (self->typed, key);
      g_free (key);
    }
  em_document_set_problem (self->document, self->feature_id, field, problem);
}

/* What was typed and can't be taken; NULL: nothing. */
static const char *
find_typed (EmFeatureEditor *self, const char *field, const char **out_problem)
{
  g_autofree char *key = g_strdup_printf ("%u/%s", self->feature_id, field);

  *out_problem = em_document_get_problem (self->document, self->feature_id, field);
  return *out_problem != NULL ? g_hash_table_lookup (self->typed, key) : NULL;
}

static char *
problem_field (EmFeatureEditor *self, const EmSlot *slot)
{
  return g_strdup_printf ("%s/%d", em_slot_id (slot, self->kind), (int) slot->bound);
}

static EmSlot *find_slot_by_id (EmFeatureEditor *self, const char *field_id);

static void
settle_problem (EmFeatureEditor *self, const EmSlot *slot, const char *problem)
{
  g_autofree char *field = problem_field (self, slot);
  GtkWidget *text = em_quantity_entry_get_text_widget (EM_QUANTITY_ENTRY (slot->widget));

  settle_typed (self, field, gtk_editable_get_text (GTK_EDITABLE (text)), problem);
}

static void
on_read (EmFeatureEditor *self, const EmReading *reading, GtkWidget *entry)
{
  EmSlot slot = *find_slot (self, entry);
  int32_t index = selected (self);
  double value = reading != NULL ? reading->value : EM_ABSENT;

  if (index < 0)
    return;
  settle_problem (self, &slot, NULL);
  if (slot.is_shared)
    em_document_set_feature_number (self->document, index, (EmFeatureNumber) slot.field, value);
  else if (slot.bound == EM_LIKELY && reading != NULL)
    em_document_set_reading (self->document, index, slot.field, reading);
  else
    em_document_set_value (self->document, index, slot.field, slot.bound, value);
}

static void
on_unread (EmFeatureEditor *self, const char *problem, GtkWidget *entry)
{
  settle_problem (self, find_slot (self, entry), problem);
}

static void
on_done (EmFeatureEditor *self)
{
  if (self->document != NULL)
    em_document_break (self->document);
}

static void
on_chosen (GtkWidget *drop_down, GParamSpec *spec, EmFeatureEditor *self)
{
  EmSlot slot = *find_slot (self, drop_down);
  guint chosen = gtk_drop_down_get_selected (GTK_DROP_DOWN (drop_down));
  int32_t index = selected (self);

  (void) spec;
  if (index < 0 || chosen == GTK_INVALID_LIST_POSITION)
    return;
  if (slot.is_shared)
    em_document_set_feature_number (self->document, index, (EmFeatureNumber) slot.field, chosen);
  else
    em_document_set_value (self->document, index, slot.field, EM_LIKELY, chosen);
  em_document_break (self->document);
}

static void
show_drawings (EmFeatureEditor *self)
{
  em_drawing_view_show (EM_DRAWING_VIEW (self->section), self->document, self->shown_field);
  em_drawing_view_show (EM_DRAWING_VIEW (self->plan), self->document, self->shown_field);
}

/* The dimension being typed stands out in the drawing. */
static void
on_entered (GtkEventController *controller, EmFeatureEditor *self)
{
  EmSlot *slot = find_slot (self, g_object_get_data (G_OBJECT (controller), "entry"));

  self->shown_field = slot != NULL && !slot->is_shared ? slot->field : -1;
  show_drawings (self);
}

static GtkWidget *
make_entry (EmFeatureEditor *self, const char *label, EmQuantityType type, const char *hint)
{
  GtkWidget *entry = em_quantity_entry_new (label, type);
  GtkEventController *focus = gtk_event_controller_focus_new ();

  em_quantity_entry_set_hint (EM_QUANTITY_ENTRY (entry), hint);
  g_object_set_data (G_OBJECT (focus), "entry", entry);
  g_signal_connect (focus, "enter", G_CALLBACK (on_entered), self);
  gtk_widget_add_controller (entry, focus);
  g_signal_connect_swapped (entry, "read", G_CALLBACK (on_read), self);
  g_signal_connect_swapped (entry, "unread", G_CALLBACK (on_unread), self);
  g_signal_connect_swapped (entry, "done", G_CALLBACK (on_done), self);
  return entry;
}

static void
add_shared (EmFeatureEditor *self, const EmSharedRow *row)
{
  const EmNumberRow *number = &em_feature_numbers[row->number];
  EmSlot slot = { .is_shared = TRUE, .field = row->number };

  if (number->quantity == EM_QUANTITY_CHOICE)
    {
      slot.box = em_field_choice (_(row->label), em_shared_options (row->number), &slot.widget);
      g_signal_connect (slot.widget, "notify::selected", G_CALLBACK (on_chosen), self);
    }
  else
    {
      slot.box = slot.widget = make_entry (self, _(row->label), number->quantity, row->hint != NULL ? _(row->hint) : NULL);
      em_quantity_entry_set_limits (EM_QUANTITY_ENTRY (slot.widget), number->low, number->high, number->quantity == EM_QUANTITY_COUNT);
    }
  em_fields_add (self->flow[row->group], slot.box);
  g_array_append_val (self->shared_slots, slot);
}

static void
add_bound (EmFeatureEditor *self, GtkWidget *box, int field, EmBound3 bound)
{
  static const char *const labels[] = { [EM_LOW] = N_("at least"), [EM_HIGH] = N_("at most") };
  const EmField *row = &self->kind->fields[field];
  EmSlot slot = { .field = field, .bound = bound };

  slot.widget = slot.box = make_entry (self, _(labels[bound]), row->quantity, NULL);
  gtk_box_append (GTK_BOX (box), slot.box);
  g_object_bind_property (self->range_toggle, "active", slot.box, "visible", G_BINDING_SYNC_CREATE);
  g_array_append_val (self->kind_slots, slot);
}

static void
add_kind_field (EmFeatureEditor *self, int field)
{
  const EmField *row = &self->kind->fields[field];
  EmSlot slot = { .field = field };
  g_autofree char *label = row->quantity == EM_QUANTITY_CHOICE || row->symbol == NULL || row->symbol[0] == '\0'
                             ? g_strdup (em_words (row->name)) : g_strdup_printf ("%s  %s", em_words (row->name), row->symbol);

  if (row->quantity == EM_QUANTITY_CHOICE)
    {
      slot.box = em_field_choice (label, em_field_options (row), &slot.widget);
      g_signal_connect (slot.widget, "notify::selected", G_CALLBACK (on_chosen), self);
    }
  else
    {
      slot.widget = make_entry (self, label, row->quantity, NULL);
      slot.box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 4);
      gtk_box_append (GTK_BOX (slot.box), slot.widget);
      add_bound (self, slot.box, field, EM_LOW);
      add_bound (self, slot.box, field, EM_HIGH);
    }
  gtk_widget_set_valign (slot.box, GTK_ALIGN_START);
  em_fields_add (self->flow[GROUP_SIZE], slot.box);
  g_array_append_val (self->kind_slots, slot);
}

static void
build_kind (EmFeatureEditor *self, const EmKind *kind)
{
  g_array_set_size (self->kind_slots, 0);
  em_fields_clear (EM_FIELDS (self->flow[GROUP_SIZE]));
  self->kind = kind;
  for (int i = 0; i < kind->n_fields; i++)
    add_kind_field (self, i);
}

static void
fill_entry (EmFeatureEditor *self, const EmFeature *feature, const EmFeatureCost *cost, EmSlot *slot)
{
  EmQuantityEntry *entry = EM_QUANTITY_ENTRY (slot->widget);
  EmUnits units = em_document_get_units (self->document);
  g_autofree char *problem = NULL;
  double value = em_slot_value (slot, feature);
  g_autofree char *field = problem_field (self, slot);
  const char *why, *typed = find_typed (self, field, &why);

  if (typed == NULL)
    em_quantity_entry_forget_unread (entry);
  em_quantity_entry_set_value (entry, value, units);
  if (!slot->is_shared && slot->bound == EM_LIKELY && !em_is_absent (feature->kind->fields[slot->field].preset))
    {
      char hint[64];
      em_quantity_write (feature->kind->fields[slot->field].preset, feature->kind->fields[slot->field].quantity, units, '.', hint, sizeof hint);
      em_quantity_entry_set_hint (entry, hint);
    }
  /* What nobody has given yet is no mistake: its remark says that it is needed. */
  if (cost->status != EM_OK && cost->status != EM_FAULT_MISSING && slot->bound == EM_LIKELY
      && (g_strcmp0 (cost->fault.field, em_slot_id (slot, self->kind)) == 0
          || g_strcmp0 (cost->fault.other_field, em_slot_id (slot, self->kind)) == 0))
    problem = em_words_fault_of (&cost->fault, feature->kind, units);
  em_quantity_entry_set_problem (entry, problem);
  if (typed != NULL)
    em_quantity_entry_show_unread (entry, typed, why);
  em_quantity_entry_set_remark (entry, em_slot_remark (slot, feature));
}

static void
fill_slot (EmFeatureEditor *self, const EmFeature *feature, const EmFeatureCost *cost, EmSlot *slot)
{
  double value = em_slot_value (slot, feature);

  if (slot->bound == EM_LIKELY)
    gtk_widget_set_visible (slot->box, em_slot_is_shown (slot, feature));
  if (GTK_IS_DROP_DOWN (slot->widget))
    {
      if (em_is_absent (value) && !slot->is_shared)
        value = feature->kind->fields[slot->field].preset;
      em_field_put_choice (slot->widget, em_is_absent (value) ? GTK_INVALID_LIST_POSITION : (guint) value, self);
    }
  else
    fill_entry (self, feature, cost, slot);
}

static void
on_filler (GtkWidget *drop_down, GParamSpec *spec, EmFeatureEditor *self)
{
  const char *id;

  (void) spec;
  if (selected (self) >= 0 && em_record_choice_get (drop_down, &id))
    em_document_set_feature_text (self->document, selected (self), EM_FEATURE_FILLER, id);
  em_document_break (self->document);
}

static void
on_machine (GtkWidget *drop_down, GParamSpec *spec, EmFeatureEditor *self)
{
  const char *machine_id, *process_id;

  (void) spec;
  if (selected (self) >= 0 && em_record_choice_get_machine (drop_down, &machine_id, &process_id))
    em_document_set_feature_machine (self->document, selected (self), machine_id, process_id);
  em_document_break (self->document);
}

static void
show_override_problem (EmFeatureEditor *self, const char *problem)
{
  gtk_label_set_text (GTK_LABEL (self->override_problem), problem != NULL ? problem : "");
  gtk_widget_set_visible (self->override_problem, problem != NULL);
  if (problem != NULL)
    gtk_widget_add_css_class (self->override, "error");
  else
    gtk_widget_remove_css_class (self->override, "error");
}

static void
set_override_problem (EmFeatureEditor *self, const char *problem)
{
  show_override_problem (self, problem);
  settle_typed (self, OVERRIDE_FIELD, gtk_editable_get_text (GTK_EDITABLE (self->override)), problem);
}

static void
on_override (GtkEditable *entry, EmFeatureEditor *self)
{
  const char *text = gtk_editable_get_text (entry);
  int64_t minor = 0;

  if (selected (self) < 0)
    return;
  if (text[0] == '\0')
    em_document_set_override (self->document, selected (self), FALSE, 0);
  else if (em_money_read (text, &em_document_get_rates (self->document)->currency, &minor))
    em_document_set_override (self->document, selected (self), TRUE, minor);
  else
    {
      set_override_problem (self, _("Not an amount"));
      return;
    }
  set_override_problem (self, NULL);
}

static void
on_text (GtkEditable *entry, EmFeatureEditor *self)
{
  EmFeatureText which = (EmFeatureText) GPOINTER_TO_INT (g_object_get_data (G_OBJECT (entry), "which"));

  if (selected (self) >= 0)
    em_document_set_feature_text (self->document, selected (self), which, gtk_editable_get_text (entry));
}

static void
add_text (EmFeatureEditor *self, const char *label, EmFeatureText which, GtkWidget **out_entry)
{
  em_fields_add (self->flow[GROUP_PAPER], em_field_text (label, out_entry));
  g_object_set_data (G_OBJECT (*out_entry), "which", GINT_TO_POINTER (which));
  g_signal_connect (*out_entry, "changed", G_CALLBACK (on_text), self);
}

/* An override typed as "80" stays as typed while it means what the quote holds. */
static void
fill_override (EmFeatureEditor *self, const EmFeature *feature)
{
  const EmCurrency *currency = &em_document_get_rates (self->document)->currency;
  const char *typed = gtk_editable_get_text (GTK_EDITABLE (self->override));
  g_autofree char *text = feature->has_override ? em_money_write (feature->override_minor, currency) : g_strdup ("");
  int64_t minor;
  const char *why, *unread = find_typed (self, OVERRIDE_FIELD, &why);
  gboolean is_same = feature->has_override ? em_money_read (typed, currency, &minor) && minor == feature->override_minor
                                           : typed[0] == '\0';

  show_override_problem (self, unread != NULL ? why : NULL);
  if (unread != NULL || !is_same)
    em_field_put_text (self->override, unread != NULL ? unread : text, self);
}

/* How the metal goes on, in one line; a click opens the working. */
static void
show_plan (EmFeatureEditor *self, const EmFeatureCost *cost)
{
  EmUnits units = em_document_get_units (self->document);

  gtk_widget_set_visible (self->plan_button, cost->status == EM_OK);
  if (cost->status != EM_OK)
    return;
  g_autofree char *wire = em_words_wire (cost->rules.wire_mm, units);
  g_autofree char *layers = g_strdup_printf (ngettext ("%d layer", "%d layers", (gulong) cost->plan.layers), cost->plan.layers);
  g_autofree char *n_tracks = em_words_number ((double) cost->plan.tracks, 0);
  g_autofree char *tracks = g_strdup_printf (ngettext ("%s track", "%s tracks", (gulong) cost->plan.tracks), n_tracks);
  g_autofree char *length = em_words_length (cost->welded_length_mm, units, 0);
  g_autofree char *arc_on = em_words_duration (cost->arc_on_s);
  g_autofree char *extra = em_words_money_bare (cost->office_choice_minor, &em_document_get_rates (self->document)->currency);
  g_autofree char *why = cost->why == EM_WHY_OFFICE && cost->office_choice_minor > 0
    ? g_strdup_printf (_(" · your choice of wire costs %s more than the cheapest"), extra)
    : g_strdup (cost->why == EM_WHY_ONLY ? _(" · the only wire that fits") : "");
  g_autofree char *text = g_strdup_printf (_("Wire %s · %s · %s · %s welded · %s arc-on%s"), wire, layers, tracks, length, arc_on, why);
  g_autofree char *kept = em_field_keep_figures (text);
  gtk_label_set_text (GTK_LABEL (self->plan_label), kept);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->plan_button), GTK_ACCESSIBLE_PROPERTY_LABEL, text, -1);
}

static void
on_plan (EmFeatureEditor *self)
{
  g_autofree char *name = em_words_feature_name (em_document_get_quote (self->document), selected (self));

  em_working_popup (self->plan_button, self->document, selected (self), NULL, name);
}

/* What is no slot, in the groups that were opened so far. */
static void
fill_made (EmFeatureEditor *self, const EmFeature *feature)
{
  if (self->is_made[GROUP_PAPER])
    {
      em_field_put_text (self->override_reason, feature->text[EM_FEATURE_OVERRIDE_REASON], self);
      em_field_put_text (self->remark, feature->text[EM_FEATURE_REMARK], self);
      em_field_put_text (self->assumption, feature->text[EM_FEATURE_ASSUMPTION], self);
      fill_override (self, feature);
    }
  if (self->is_made[GROUP_WELD])
    {
      em_record_choice_show (self->filler, em_document_get_basis (self->document), feature->text[EM_FEATURE_FILLER], self);
      em_record_choice_show_machine (self->machine, em_document_get_basis (self->document), feature->text[EM_FEATURE_MACHINE],
                                     feature->text[EM_FEATURE_PROCESS], self);
    }
  if (self->is_made[GROUP_AFTER])
    em_actuals_show (EM_ACTUALS (self->actuals), self->document);
}

/* Where a field says itself what is wrong with it, once is enough. */
static gboolean
is_told_at_its_field (EmFeatureEditor *self, const EmFeature *feature, const EmFeatureCost *cost)
{
  EmSlot *slot = cost->fault.field != NULL ? find_slot_by_id (self, cost->fault.field) : NULL;

  return slot != NULL && !GTK_IS_DROP_DOWN (slot->widget) && em_slot_is_shown (slot, feature) && gtk_widget_get_mapped (slot->widget);
}

static void
fill (EmFeatureEditor *self)
{
  const EmFeature *feature = feature_of (self);

  gtk_widget_set_sensitive (self->groups, feature != NULL);
  if (feature == NULL)
    return;
  const EmFeatureCost *cost = em_document_get_feature_cost (self->document, selected (self));
  if (feature->kind != self->kind)
    build_kind (self, feature->kind);
  if (feature->id != self->feature_id && self->is_made[GROUP_AFTER])
    em_actuals_forget_unread (EM_ACTUALS (self->actuals));
  self->feature_id = feature->id;
  gtk_label_set_text (GTK_LABEL (self->kind_name), em_words (feature->kind->name));
  em_field_put_text (self->label_entry, feature->text[EM_FEATURE_LABEL], self);
  gtk_widget_set_visible (self->accept_button, em_feature_is_read (feature));
  fill_made (self, feature);
  gtk_widget_set_visible (self->expander[GROUP_AFTER], em_document_get_quote (self->document)->state == EM_STATE_WON);
  for (guint i = 0; i < self->kind_slots->len; i++)
    fill_slot (self, feature, cost, &g_array_index (self->kind_slots, EmSlot, i));
  for (guint i = 0; i < self->shared_slots->len; i++)
    fill_slot (self, feature, cost, &g_array_index (self->shared_slots, EmSlot, i));

  g_autofree char *fault = cost->status != EM_OK
    ? em_words_fault (&cost->fault, em_document_get_quote (self->document), em_document_get_units (self->document)) : NULL;
  g_autofree char *kept = em_field_keep_figures (fault != NULL ? fault : "");
  gtk_label_set_text (GTK_LABEL (self->fault_label), kept);
  gtk_widget_set_visible (self->fault_label, fault != NULL && !is_told_at_its_field (self, feature, cost) && !em_document_awaits_wire (self->document));
  show_plan (self, cost);
  show_drawings (self);
}

/* A feature with a range shows it; keeps: the entries stay when there is none. */
static void
show_range (EmFeatureEditor *self, gboolean keeps)
{
  const EmFeature *feature = feature_of (self);
  gboolean has_range = FALSE;

  for (int i = 0; feature != NULL && i < EM_FIELD_MAX; i++)
    has_range = has_range || !em_is_absent (feature->low[i]) || !em_is_absent (feature->high[i]);
  if (has_range || !keeps)
    gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (self->range_toggle), has_range);
}

static void
on_document_changed (EmFeatureEditor *self, guint what, int index)
{
  (void) index;
  if ((what & ~(guint) EM_CHANGE_FILE) == 0 || what == EM_CHANGE_PROBLEMS)
    return;
  if (what & (EM_CHANGE_SELECTION | EM_CHANGE_LIST))
    self->shown_field = -1;
  /* A step: what was typed but not taken is gone. */
  if (what & EM_CHANGE_PROBLEMS && self->is_made[GROUP_AFTER])
    em_actuals_forget_unread (EM_ACTUALS (self->actuals));
  show_range (self, (what & (EM_CHANGE_SELECTION | EM_CHANGE_LIST)) == 0);
  fill (self);
}

static void
em_feature_editor_dispose (GObject *object)
{
  EmFeatureEditor *self = EM_FEATURE_EDITOR (object);

  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->document);
  g_clear_pointer (&self->kind_slots, g_array_unref);
  g_clear_pointer (&self->shared_slots, g_array_unref);
  g_clear_pointer (&self->typed, g_hash_table_unref);
  GtkWidget *child = gtk_widget_get_first_child (GTK_WIDGET (self));
  if (child != NULL)
    gtk_widget_unparent (child);
  G_OBJECT_CLASS (em_feature_editor_parent_class)->dispose (object);
}

static void
em_feature_editor_class_init (EmFeatureEditorClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = em_feature_editor_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, EM_TYPE_STEADY_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/estimend/Estimend/feature-editor.ui");
  gtk_widget_class_bind_template_child (widget_class, EmFeatureEditor, views);
  gtk_widget_class_bind_template_child (widget_class, EmFeatureEditor, groups);
  gtk_widget_class_bind_template_child (widget_class, EmFeatureEditor, head_name);
  gtk_widget_class_bind_template_child (widget_class, EmFeatureEditor, head_buttons);
  gtk_widget_class_bind_template_child (widget_class, EmFeatureEditor, kind_name);
  gtk_widget_class_bind_template_child (widget_class, EmFeatureEditor, label_entry);
  gtk_widget_class_bind_template_child (widget_class, EmFeatureEditor, range_toggle);
  gtk_widget_class_bind_template_child (widget_class, EmFeatureEditor, accept_button);
  gtk_widget_class_bind_template_child (widget_class, EmFeatureEditor, fault_label);
  gtk_widget_class_bind_template_child (widget_class, EmFeatureEditor, plan_button);
  gtk_widget_class_bind_template_child (widget_class, EmFeatureEditor, plan_label);
}

static void
add_override (EmFeatureEditor *self)
{
  GtkWidget *box = em_field_text (_("Line price, stated"), &self->override);

  gtk_editable_set_alignment (GTK_EDITABLE (self->override), 1);
  gtk_widget_add_css_class (self->override, "figure");
  gtk_widget_set_direction (GTK_WIDGET (gtk_editable_get_delegate (GTK_EDITABLE (self->override))), GTK_TEXT_DIR_LTR);
  gtk_entry_set_placeholder_text (GTK_ENTRY (self->override), _("calculated"));
  self->override_problem = gtk_label_new (NULL);
  gtk_label_set_xalign (GTK_LABEL (self->override_problem), 0);
  gtk_widget_add_css_class (self->override_problem, "problem");
  gtk_widget_set_visible (self->override_problem, FALSE);
  gtk_box_append (GTK_BOX (box), self->override_problem);
  g_signal_connect (self->override, "changed", G_CALLBACK (on_override), self);
  em_fields_add (self->flow[GROUP_PAPER], box);
}

static void
fill_group (EmFeatureEditor *self, int group)
{
  for (int i = 0; i < em_n_shared_rows; i++)
    if (em_shared_rows[i].group == group)
      add_shared (self, &em_shared_rows[i]);
}

static void
make_weld (EmFeatureEditor *self)
{
  em_fields_add (self->flow[GROUP_WELD], em_record_choice_new (_("Wire alloy"), EM_RECORD_WIRE, _("As the quote"), &self->filler));
  em_fields_add (self->flow[GROUP_WELD], em_record_choice_new (_("Machine"), EM_RECORD_MACHINE, _("As the quote"), &self->machine));
  g_signal_connect (self->filler, "notify::selected", G_CALLBACK (on_filler), self);
  g_signal_connect (self->machine, "notify::selected", G_CALLBACK (on_machine), self);
}

static void
make_paper (EmFeatureEditor *self)
{
  add_override (self);
  add_text (self, _("Reason for the stated price"), EM_FEATURE_OVERRIDE_REASON, &self->override_reason);
  add_text (self, _("Remark for the bench"), EM_FEATURE_REMARK, &self->remark);
  add_text (self, _("Assumption, printed"), EM_FEATURE_ASSUMPTION, &self->assumption);
}

static void
make_group (EmFeatureEditor *self, int group)
{
  if (self->is_made[group])
    return;
  self->is_made[group] = TRUE;
  if (group == GROUP_WELD)
    make_weld (self);
  else if (group == GROUP_PAPER)
    make_paper (self);
  else if (group == GROUP_AFTER)
    gtk_box_append (GTK_BOX (self->flow[GROUP_AFTER]), self->actuals = em_actuals_new ());
  fill_group (self, group);
  if (self->document != NULL)
    fill (self);
}

static void
on_opened (GtkExpander *expander, GParamSpec *spec, EmFeatureEditor *self)
{
  (void) spec;
  for (int group = 0; group < N_GROUP; group++)
    if (self->expander[group] == GTK_WIDGET (expander))
      make_group (self, group);
}

static void
add_group (EmFeatureEditor *self, int group, const char *name)
{
  self->flow[group] = group == GROUP_AFTER ? gtk_box_new (GTK_ORIENTATION_VERTICAL, 0) : em_fields_new ();
  self->expander[group] = em_fold_new (name, self->flow[group]);
  gtk_box_append (GTK_BOX (self->groups), self->expander[group]);
  g_signal_connect (self->expander[group], "notify::expanded", G_CALLBACK (on_opened), self);
}

/* In large letters or a narrow pane the buttons stand below the feature's name. */
static void
break_head (EmFeatureEditor *self)
{
  GtkWidget *name = g_object_ref (self->head_name), *buttons = g_object_ref (self->head_buttons), *head;

  gtk_box_remove (GTK_BOX (self->groups), name);
  gtk_box_remove (GTK_BOX (self->groups), buttons);
  head = em_beside_new (name, buttons, HEAD_GAP_PX, 0);
  em_beside_set_tight (EM_BESIDE (head));
  gtk_box_prepend (GTK_BOX (self->groups), head);
  g_object_unref (name);
  g_object_unref (buttons);
}

static void
em_feature_editor_init (EmFeatureEditor *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  break_head (self);
  self->shown_field = -1;
  self->kind_slots = g_array_new (FALSE, FALSE, sizeof (EmSlot));
  self->shared_slots = g_array_new (FALSE, FALSE, sizeof (EmSlot));
  self->typed = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
  self->section = em_drawing_view_new (EM_VIEW_SECTION);
  self->plan = em_drawing_view_new (EM_VIEW_PLAN);
  gtk_box_append (GTK_BOX (self->views), self->section);
  gtk_box_append (GTK_BOX (self->views), self->plan);
  em_field_tell_whole (self->label_entry);
  g_object_set_data (G_OBJECT (self->label_entry), "which", GINT_TO_POINTER (EM_FEATURE_LABEL));
  g_signal_connect_swapped (self->plan_button, "clicked", G_CALLBACK (on_plan), self);
  g_signal_connect (self->label_entry, "changed", G_CALLBACK (on_text), self);

  self->flow[GROUP_SIZE] = em_fields_new ();
  gtk_box_append (GTK_BOX (self->groups), self->flow[GROUP_SIZE]);
  add_group (self, GROUP_PLACE, _("_Where it is"));
  add_group (self, GROUP_WELD, _("_How it is welded"));
  add_group (self, GROUP_PAPER, _("Price and pap_er"));
  add_group (self, GROUP_AFTER, _("After the _job"));
}

void
em_feature_editor_set_document (EmFeatureEditor *self, EmDocument *document)
{
  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_set_object (&self->document, document);
  g_signal_connect_object (document, "changed", G_CALLBACK (on_document_changed), self, G_CONNECT_SWAPPED);
  show_range (self, FALSE);
  fill (self);
}

static EmSlot *
find_slot_by_id (EmFeatureEditor *self, const char *field_id)
{
  for (int which = 0; which < 2; which++)
    {
      GArray *slots = which == 0 ? self->kind_slots : self->shared_slots;
      for (guint i = 0; i < slots->len; i++)
        {
          EmSlot *slot = &g_array_index (slots, EmSlot, i);
          if (slot->bound == EM_LIKELY && (field_id == NULL || g_str_equal (em_slot_id (slot, self->kind), field_id)))
            return slot;
        }
    }
  return NULL;
}

/* One of a group that was never opened is made for it. */
static EmSlot *
need_slot (EmFeatureEditor *self, const char *field_id)
{
  EmSlot *slot = find_slot_by_id (self, field_id);

  for (int i = 0; slot == NULL && i < em_n_shared_rows; i++)
    if (g_strcmp0 (em_feature_numbers[em_shared_rows[i].number].id, field_id) == 0)
      {
        make_group (self, em_shared_rows[i].group);
        slot = find_slot_by_id (self, field_id);
      }
  return slot;
}

GtkWidget *
em_feature_editor_get_entry (EmFeatureEditor *self, const char *field_id)
{
  EmSlot *slot = need_slot (self, field_id);

  return slot != NULL ? slot->widget : NULL;
}

void
em_feature_editor_focus_field (EmFeatureEditor *self, const char *field_id)
{
  EmSlot *slot = need_slot (self, field_id);

  if (slot == NULL)
    return;
  GtkWidget *expander = gtk_widget_get_ancestor (slot->box, GTK_TYPE_EXPANDER);
  if (expander != NULL)
    gtk_expander_set_expanded (GTK_EXPANDER (expander), TRUE);
  gtk_widget_grab_focus (slot->widget);
}
