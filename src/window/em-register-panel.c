/* em-register-panel: what is known of the selected quote.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-register-panel.h"

#include "em-beside.h"
#include "em-field.h"
#include "em-register-table.h"
#include "em-register-work.h"
#include "em-words.h"

#include <glib/gi18n.h>

struct _EmRegisterPanel
{
  GtkWidget parent_instance;

  GCancellable *looking;   /* owned; of what is worked out for the quote shown, or NULL */
  GtkWidget *scrolled, *title, *facts, *state, *changes;
};

G_DEFINE_FINAL_TYPE (EmRegisterPanel, em_register_panel, GTK_TYPE_WIDGET)

static guint state_signal;

enum { WIDTH = 290, SPACING = 8 };

/* A line for each fact that is known. */
static char *
facts_text (const EmRegisterEntry *entry)
{
  g_autoptr (GString) text = g_string_new (NULL);
  g_autofree char *date = em_words_date (entry->text[EM_ENTRY_DATE]);
  g_autofree char *net = entry->has_net ? em_words_money (entry->net_minor, &entry->currency) : NULL;
  const char *texts[] = { entry->text[EM_ENTRY_CUSTOMER], entry->text[EM_ENTRY_REFERENCE], entry->text[EM_ENTRY_TOOL], entry->text[EM_ENTRY_TOOL_NUMBER], date };

  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    if (texts[i] != NULL && *texts[i] != '\0')
      g_string_append_printf (text, "%s\n", texts[i]);
  g_string_append_printf (text, ngettext ("%d feature, ", "%d features, ", (gulong) entry->n_features), entry->n_features);
  if (net == NULL)
    g_string_append (text, _("no price"));
  else
    g_string_append_printf (text, entry->is_partial ? _("%s before taxes, without what can’t be priced") : _("%s before taxes"), net);
  if (entry->quoted_bench_s > 0 && entry->actual_bench_s > 0)
    {
      g_autofree char *quoted = em_words_duration (entry->quoted_bench_s), *actual = em_words_duration (entry->actual_bench_s);
      g_string_append_printf (text, _("\nAt the bench: %s quoted, %s taken"), quoted, actual);
    }
  g_string_append_printf (text, "\n%s", entry->path);
  return g_string_free (g_steal_pointer (&text), FALSE);
}

/* ---- what a revision changed ---- */

static void
on_compared (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (EmRegisterPanel) self = data;
  g_autoptr (GError) error = NULL;
  g_autofree char *text = em_register_work_compare_finish (result, &error);

  (void) source;
  if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED) || self->changes == NULL)
    return;
  gtk_label_set_text (GTK_LABEL (self->changes), text != NULL ? text : error->message);
}

/* The entry that the other one revises; its path, or NULL. */
static char *
dup_revised_path (EmRegister *reg, const EmRegisterEntry *entry)
{
  for (guint i = 0; i < em_register_get_length (reg); i++)
    {
      const EmRegisterEntry *other = em_register_get_entry (reg, i);
      if (other == entry || other->problem != NULL)
        continue;
      g_autofree char *name = em_revision_name (other->text[EM_ENTRY_NUMBER], other->text[EM_ENTRY_REVISION]);
      if (g_str_equal (name, entry->text[EM_ENTRY_REVISES]))
        return em_register_dup_path (reg, i);
    }
  return NULL;
}

static void
stop_looking (EmRegisterPanel *self)
{
  if (self->looking != NULL)
    g_cancellable_cancel (self->looking);
  g_clear_object (&self->looking);
}

static void
show_changes (EmRegisterPanel *self, EmRegister *reg, guint index, EmBasis *basis)
{
  const EmRegisterEntry *entry = em_register_get_entry (reg, index);

  gtk_label_set_text (GTK_LABEL (self->changes), "");
  if (entry->problem != NULL || *entry->text[EM_ENTRY_REVISES] == '\0')
    return;
  g_autofree char *old_path = dup_revised_path (reg, entry), *new_path = em_register_dup_path (reg, index);
  if (old_path == NULL)
    {
      g_autofree char *text = g_strdup_printf (_("Revises %s, which is not in this folder."), entry->text[EM_ENTRY_REVISES]);
      gtk_label_set_text (GTK_LABEL (self->changes), text);
      return;
    }
  self->looking = g_cancellable_new ();
  em_register_work_compare_async (old_path, new_path, basis, self->looking, on_compared, g_object_ref (self));
}

void
em_register_panel_show (EmRegisterPanel *self, EmRegister *reg, guint index, EmState state, EmBasis *basis)
{
  const EmRegisterEntry *entry = reg != NULL && index < em_register_get_length (reg) ? em_register_get_entry (reg, index) : NULL;
  gboolean is_good = entry != NULL && entry->problem == NULL;

  stop_looking (self);
  gtk_widget_set_visible (GTK_WIDGET (self), entry != NULL);
  if (entry == NULL)
    return;
  g_autofree char *title = em_register_number_text (entry);
  g_autofree char *facts = is_good ? facts_text (entry) : g_strdup_printf ("%s\n%s", entry->problem, entry->path);
  gtk_label_set_text (GTK_LABEL (self->title), title);
  gtk_label_set_text (GTK_LABEL (self->facts), facts);
  gtk_widget_set_sensitive (self->state, is_good);
  em_field_put_choice (self->state, state, self);
  show_changes (self, reg, index, basis);
}

const char *
em_register_panel_get_changes (EmRegisterPanel *self)
{
  return gtk_label_get_text (GTK_LABEL (self->changes));
}

/* ---- the panel ---- */

static void
on_state (GtkDropDown *drop_down, GParamSpec *spec, EmRegisterPanel *self)
{
  (void) spec;
  g_signal_emit (self, state_signal, 0, (int) gtk_drop_down_get_selected (drop_down));
}

static void
em_register_panel_dispose (GObject *object)
{
  EmRegisterPanel *self = EM_REGISTER_PANEL (object);

  stop_looking (self);
  self->changes = NULL;
  g_clear_pointer (&self->scrolled, gtk_widget_unparent);
  G_OBJECT_CLASS (em_register_panel_parent_class)->dispose (object);
}

static void
em_register_panel_class_init (EmRegisterPanelClass *class)
{
  G_OBJECT_CLASS (class)->dispose = em_register_panel_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (class), GTK_TYPE_BIN_LAYOUT);
  state_signal = g_signal_new ("state", EM_TYPE_REGISTER_PANEL, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1, G_TYPE_INT);
}

static GtkWidget *
label_new (const char *css_class)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 32);
  gtk_widget_add_css_class (label, css_class);
  return label;
}

static GtkWidget *
button_new (GtkWidget *box, const char *name, const char *tooltip, const char *action)
{
  GtkWidget *button = gtk_button_new_with_mnemonic (name);

  gtk_widget_set_tooltip_text (button, tooltip);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), action);
  gtk_box_append (GTK_BOX (box), button);
  return button;
}

static void
em_register_panel_init (EmRegisterPanel *self)
{
  const char *states[EM_N_STATE + 1] = { NULL };
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, SPACING), *known = gtk_box_new (GTK_ORIENTATION_VERTICAL, SPACING);
  GtkWidget *deeds = gtk_box_new (GTK_ORIENTATION_VERTICAL, SPACING);

  for (int i = 0; i < EM_N_STATE; i++)
    states[i] = em_words_state ((EmState) i);
  gtk_widget_add_css_class (box, "book-page");
  self->title = label_new ("section-name");
  self->facts = label_new ("quiet");
  gtk_label_set_selectable (GTK_LABEL (self->facts), TRUE);
  self->changes = label_new ("figure");
  gtk_box_append (GTK_BOX (known), self->title);
  gtk_box_append (GTK_BOX (known), self->facts);
  gtk_box_append (GTK_BOX (deeds), em_field_choice (_("_State"), states, &self->state));
  gtk_widget_add_css_class (button_new (deeds, _("_Open"), _("Enter in the table does it too"), "register.open"), "call");
  button_new (deeds, _("New _revision"), _("The same quote, to be changed and sent again"), "register.revise");
  button_new (deeds, _("_Copy as a new quote"), _("A draft for another job, with the same features"), "register.copy");
  gtk_box_append (GTK_BOX (box), em_beside_new (known, deeds, SPACING, 0));
  gtk_box_append (GTK_BOX (box), self->changes);
  g_signal_connect (self->state, "notify::selected", G_CALLBACK (on_state), self);
  self->scrolled = gtk_scrolled_window_new ();
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (self->scrolled), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (self->scrolled), box);
  gtk_scrolled_window_set_propagate_natural_height (GTK_SCROLLED_WINDOW (self->scrolled), TRUE);
  gtk_widget_set_size_request (self->scrolled, WIDTH, -1);
  gtk_widget_set_parent (self->scrolled, GTK_WIDGET (self));
  gtk_widget_set_hexpand (GTK_WIDGET (self), FALSE);
  gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
  gtk_widget_add_css_class (GTK_WIDGET (self), "register-panel");
}

GtkWidget *
em_register_panel_new (void)
{
  return g_object_new (EM_TYPE_REGISTER_PANEL, NULL);
}
