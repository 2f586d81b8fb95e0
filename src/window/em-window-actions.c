/* em-window-actions: what can be done in a window, and when.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-window-private.h"

#include "em-application.h"
#include "em-revision.h"
#include "em-settings.h"

#include <glib/gi18n.h>

static int32_t
selected (EmWindow *self)
{
  return em_document_get_selected_index (self->document);
}

static void
on_undo (GSimpleAction *action, GVariant *target, gpointer data)
{
  EmWindow *self = data;

  (void) action;
  (void) target;
  em_document_undo (self->document);
}

static void
on_redo (GSimpleAction *action, GVariant *target, gpointer data)
{
  EmWindow *self = data;

  (void) action;
  (void) target;
  em_document_redo (self->document);
}

static void
on_add (GSimpleAction *action, GVariant *target, gpointer data)
{
  EmWindow *self = data;

  (void) action;
  (void) target;
  em_metal_pane_open_picker (EM_METAL_PANE (self->metal));
}

static void
on_add_kind (GSimpleAction *action, GVariant *target, gpointer data)
{
  EmWindow *self = data;
  const EmKind *kind = em_kind_find (g_variant_get_string (target, NULL));

  (void) action;
  if (kind == NULL)
    return;
  em_document_insert (self->document, selected (self) + 1, kind);
  em_metal_pane_close_picker (EM_METAL_PANE (self->metal));
  em_feature_editor_focus_field (em_metal_pane_get_editor (EM_METAL_PANE (self->metal)), NULL);
}

static void
on_duplicate (GSimpleAction *action, GVariant *target, gpointer data)
{
  EmWindow *self = data;

  (void) action;
  (void) target;
  em_document_duplicate (self->document, selected (self));
}

static void
on_remove (GSimpleAction *action, GVariant *target, gpointer data)
{
  EmWindow *self = data;

  (void) action;
  (void) target;
  em_document_remove (self->document, selected (self));
}

/* Then the next one that still waits for it is looked at. */
static void
on_accept (GSimpleAction *action, GVariant *target, gpointer data)
{
  EmWindow *self = data;
  int32_t index = selected (self);

  (void) action;
  (void) target;
  em_document_accept (self->document, index);
  const EmQuote *quote = em_document_get_quote (self->document);
  for (int32_t i = 1; i < quote->n_features; i++)
    if (em_feature_is_read (&quote->feature[(index + i) % quote->n_features]))
      {
        em_document_set_selected (self->document, quote->feature[(index + i) % quote->n_features].id);
        return;
      }
}

static void
on_move_up (GSimpleAction *action, GVariant *target, gpointer data)
{
  EmWindow *self = data;

  (void) action;
  (void) target;
  em_document_move (self->document, selected (self), selected (self) - 1);
}

static void
on_move_down (GSimpleAction *action, GVariant *target, gpointer data)
{
  EmWindow *self = data;

  (void) action;
  (void) target;
  em_document_move (self->document, selected (self), selected (self) + 1);
}

static void
on_copy (GSimpleAction *action, GVariant *target, gpointer data)
{
  EmWindow *self = data;
  g_autofree char *xml = em_document_copy_xml (self->document, selected (self));

  (void) action;
  (void) target;
  gdk_clipboard_set_text (gtk_widget_get_clipboard (GTK_WIDGET (self)), xml);
}

static void
say_no_feature (EmWindow *self, const GError *error)
{
  g_autofree char *sentence = g_strdup_printf (_("What was copied is no feature. %s"), error != NULL ? error->message : "");

  em_window_say (self, sentence);
}

static void
on_pasted (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (EmWindow) self = data;
  g_autoptr (GError) error = NULL;
  g_autofree char *text = gdk_clipboard_read_text_finish (GDK_CLIPBOARD (source), result, NULL);

  if (self->document == NULL)
    return;
  if (text == NULL || !em_document_paste_xml (self->document, selected (self) + 1, text, &error))
    say_no_feature (self, error);
}

static void
on_paste (GSimpleAction *action, GVariant *target, gpointer data)
{
  EmWindow *self = data;
  GdkClipboard *clipboard = gtk_widget_get_clipboard (GTK_WIDGET (self));
  g_autoptr (GdkContentFormats) formats = gdk_content_formats_union_deserialize_gtypes (gdk_content_formats_ref (gdk_clipboard_get_formats (clipboard)));

  (void) action;
  (void) target;
  /* GTK 4.8 never lets go of a reading that finds no text. */
  if (gdk_content_formats_contain_gtype (formats, G_TYPE_STRING))
    gdk_clipboard_read_text_async (clipboard, NULL, on_pasted, g_object_ref (self));
  else
    say_no_feature (self, NULL);
}

static void
on_units (GSimpleAction *action, GVariant *target, gpointer data)
{
  EmWindow *self = data;

  (void) action;
  em_document_set_units (self->document, g_str_equal (g_variant_get_string (target, NULL), "inch") ? EM_UNITS_INCH : EM_UNITS_METRIC);
  em_window_update_actions (self);
}

static void
on_switch_units (GSimpleAction *action, GVariant *target, gpointer data)
{
  EmWindow *self = data;

  (void) action;
  (void) target;
  em_document_set_units (self->document, em_document_get_units (self->document) == EM_UNITS_INCH ? EM_UNITS_METRIC : EM_UNITS_INCH);
}

static void
on_wires_for (GSimpleAction *action, GVariant *target, gpointer data)
{
  EmWindow *self = data;

  em_outlook_set_for_feature (self->outlook, g_str_equal (g_variant_get_string (target, NULL), "feature"));
  g_simple_action_set_state (action, target);
}

static void
on_wires_first (GSimpleAction *action, GVariant *target, gpointer data)
{
  EmWindow *self = data;

  gboolean is_by_match = g_str_equal (g_variant_get_string (target, NULL), "match");

  em_money_pane_set_by_match (EM_MONEY_PANE (self->money), is_by_match);
  g_settings_set_boolean (em_settings_get (), "is-by-match", is_by_match);
  g_simple_action_set_state (action, target);
}

static void
on_deposit (GSimpleAction *action, GVariant *target, gpointer data)
{
  EmWindow *self = data;

  (void) action;
  (void) target;
  em_money_pane_toggle_deposit (EM_MONEY_PANE (self->money));
}

static void
on_read_notes (GSimpleAction *action, GVariant *target, gpointer data)
{
  EmWindow *self = data;

  (void) action;
  (void) target;
  em_words_pane_read (EM_WORDS_PANE (self->words));
}

static void
on_paper (GSimpleAction *action, GVariant *target, gpointer data)
{
  EmWindow *self = data;
  gboolean is_shown = g_strcmp0 (gtk_stack_get_visible_child_name (GTK_STACK (self->stack)), "paper") == 0;

  (void) target;
  (void) action;
  if (!is_shown)
    em_paper_view_show (EM_PAPER_VIEW (self->paper), self->document);
  gtk_stack_set_visible_child_name (GTK_STACK (self->stack), is_shown ? "work" : "paper");
  em_window_update_actions (self);
}

static void
on_work (GSimpleAction *action, GVariant *target, gpointer data)
{
  EmWindow *self = data;

  (void) action;
  (void) target;
  gtk_stack_set_visible_child_name (GTK_STACK (self->stack), "work");
  g_settings_set_boolean (em_settings_get (), "is-first-start-done", TRUE);
  em_window_update_actions (self);
  em_window_start_at_notes (self);
}

static void
on_focus_pane (GSimpleAction *action, GVariant *target, gpointer data)
{
  EmWindow *self = data;
  int pane = g_variant_get_int32 (target);

  (void) action;
  gtk_stack_set_visible_child_name (GTK_STACK (self->stack), "work");
  if (pane == 1)
    em_words_pane_focus_notes (EM_WORDS_PANE (self->words));
  else if (pane == 2)
    em_metal_pane_focus_list (EM_METAL_PANE (self->metal));
  else if (pane == 3)
    em_money_pane_focus (EM_MONEY_PANE (self->money));
  else
    em_money_pane_focus_wires (EM_MONEY_PANE (self->money));
}

static void
on_dismiss (GSimpleAction *action, GVariant *target, gpointer data)
{
  EmWindow *self = data;

  (void) action;
  (void) target;
  if (self->work != NULL)
    g_cancellable_cancel (self->work);
  em_window_say (self, NULL);
}

static void
on_open (GSimpleAction *action, GVariant *target, gpointer data)
{
  (void) action;
  (void) target;
  em_window_open_dialog (data);
}

static void
on_save (GSimpleAction *action, GVariant *target, gpointer data)
{
  (void) action;
  (void) target;
  em_window_save (data, FALSE);
}

static void
on_save_as (GSimpleAction *action, GVariant *target, gpointer data)
{
  (void) action;
  (void) target;
  em_window_save (data, TRUE);
}

static void
on_print (GSimpleAction *action, GVariant *target, gpointer data)
{
  (void) action;
  (void) target;
  em_window_print (data);
}

static void
on_export (GSimpleAction *action, GVariant *target, gpointer data)
{
  (void) action;
  (void) target;
  em_window_export_dialog (data);
}

static void
on_export_lines (GSimpleAction *action, GVariant *target, gpointer data)
{
  (void) action;
  (void) target;
  em_window_export_data_dialog (data, FALSE);
}

static void
on_export_wires (GSimpleAction *action, GVariant *target, gpointer data)
{
  (void) action;
  (void) target;
  em_window_export_data_dialog (data, TRUE);
}

/* From the quote as it stands here, saved or not. */
static void
derive (EmWindow *self, void (*make) (EmQuoteFile *file))
{
  EmApplication *application = EM_APPLICATION (gtk_window_get_application (GTK_WINDOW (self)));
  EmQuoteFile file;

  em_quote_file_init (&file);
  em_quote_clear (&file.quote);
  if (em_quote_copy (em_document_get_quote (self->document), &file.quote) != EM_OK)
    {
      em_window_say (self, _("Not enough memory"));
      return;
    }
  file.n_kept = em_document_get_n_kept (self->document);
  make (&file);
  g_autoptr (EmDocument) document = em_document_new_recovered (em_application_get_basis (application), &file, NULL);
  em_application_add_window (application, document);
}

static void
on_next_number (GSimpleAction *action, GVariant *target, gpointer data)
{
  (void) action;
  (void) target;
  em_window_give_number (data, FALSE);
}

static void
on_new_revision (GSimpleAction *action, GVariant *target, gpointer data)
{
  (void) action;
  (void) target;
  derive (data, em_revision_make_next);
}

static void
on_copy_quote (GSimpleAction *action, GVariant *target, gpointer data)
{
  (void) action;
  (void) target;
  derive (data, em_revision_make_copy);
}

static void
on_close (GSimpleAction *action, GVariant *target, gpointer data)
{
  (void) action;
  (void) target;
  gtk_window_close (GTK_WINDOW (data));
}

/* Made when first asked for. */
static void
on_help_overlay (GSimpleAction *action, GVariant *target, gpointer data)
{
  GtkApplicationWindow *window = data;

  (void) action;
  (void) target;
  if (gtk_application_window_get_help_overlay (window) == NULL)
    {
      g_autoptr (GtkBuilder) builder = gtk_builder_new_from_resource ("/org/estimend/Estimend/help-overlay.ui");
      gtk_application_window_set_help_overlay (window, GTK_SHORTCUTS_WINDOW (gtk_builder_get_object (builder, "help_overlay")));
    }
  gtk_window_present (GTK_WINDOW (gtk_application_window_get_help_overlay (window)));
}

static const GActionEntry entries[] =
{
  { .name = "undo", .activate = on_undo },
  { .name = "redo", .activate = on_redo },
  { .name = "add", .activate = on_add },
  { .name = "add-kind", .activate = on_add_kind, .parameter_type = "s" },
  { .name = "duplicate", .activate = on_duplicate },
  { .name = "remove", .activate = on_remove },
  { .name = "accept", .activate = on_accept },
  { .name = "move-up", .activate = on_move_up },
  { .name = "move-down", .activate = on_move_down },
  { .name = "copy-feature", .activate = on_copy },
  { .name = "paste-feature", .activate = on_paste },
  { .name = "units", .activate = on_units, .parameter_type = "s", .state = "'metric'" },
  { .name = "switch-units", .activate = on_switch_units },
  { .name = "wires-for", .activate = on_wires_for, .parameter_type = "s", .state = "'quote'" },
  { .name = "wires-first", .activate = on_wires_first, .parameter_type = "s", .state = "'price'" },
  { .name = "deposit", .activate = on_deposit },
  { .name = "read-notes", .activate = on_read_notes },
  { .name = "paper", .activate = on_paper, .state = "false" },
  { .name = "work", .activate = on_work },
  { .name = "focus-pane", .activate = on_focus_pane, .parameter_type = "i" },
  { .name = "dismiss", .activate = on_dismiss },
  { .name = "open", .activate = on_open },
  { .name = "save", .activate = on_save },
  { .name = "save-as", .activate = on_save_as },
  { .name = "print", .activate = on_print },
  { .name = "export-pdf", .activate = on_export },
  { .name = "export-lines", .activate = on_export_lines },
  { .name = "export-wires", .activate = on_export_wires },
  { .name = "next-number", .activate = on_next_number },
  { .name = "new-revision", .activate = on_new_revision },
  { .name = "copy-quote", .activate = on_copy_quote },
  { .name = "close", .activate = on_close },
  { .name = "show-help-overlay", .activate = on_help_overlay },
};

static void
enable (EmWindow *self, const char *name, gboolean is_enabled)
{
  g_simple_action_set_enabled (G_SIMPLE_ACTION (g_action_map_lookup_action (G_ACTION_MAP (self), name)), is_enabled);
}

static void
put_state (EmWindow *self, const char *name, GVariant *state)
{
  g_simple_action_set_state (G_SIMPLE_ACTION (g_action_map_lookup_action (G_ACTION_MAP (self), name)), state);
}

void
em_window_add_actions (EmWindow *self)
{
  g_action_map_add_action_entries (G_ACTION_MAP (self), entries, G_N_ELEMENTS (entries), self);
  put_state (self, "wires-first", g_variant_new_string (g_settings_get_boolean (em_settings_get (), "is-by-match") ? "match" : "price"));
}

void
em_window_update_actions (EmWindow *self)
{
  const EmQuote *quote = em_document_get_quote (self->document);
  int32_t index = selected (self);
  const char *page = gtk_stack_get_visible_child_name (GTK_STACK (self->stack));
  gboolean is_welcome = g_strcmp0 (page, "welcome") == 0;

  /* Before the first questions are answered or passed over there is nothing to save or to look at. */
  enable (self, "save", !is_welcome);
  enable (self, "save-as", !is_welcome);
  enable (self, "paper", !is_welcome);
  enable (self, "units", !is_welcome);
  enable (self, "next-number", !is_welcome);
  enable (self, "undo", em_document_can_undo (self->document));
  enable (self, "redo", em_document_can_redo (self->document));
  enable (self, "duplicate", index >= 0);
  enable (self, "remove", index >= 0);
  enable (self, "copy-feature", index >= 0);
  enable (self, "accept", index >= 0 && em_feature_is_read (&quote->feature[index]));
  enable (self, "move-up", index > 0);
  enable (self, "move-down", index >= 0 && index + 1 < quote->n_features);
  enable (self, "read-notes", quote->text[EM_QUOTE_NOTES] != NULL);
  enable (self, "new-revision", quote->n_features > 0);
  enable (self, "copy-quote", quote->n_features > 0);
  enable (self, "print", quote->n_features > 0);
  enable (self, "export-pdf", quote->n_features > 0);
  enable (self, "export-lines", quote->n_features > 0);
  enable (self, "export-wires", quote->n_features > 0);
  put_state (self, "wires-for", g_variant_new_string (em_outlook_is_for_feature (self->outlook) ? "feature" : "quote"));
  put_state (self, "units", g_variant_new_string (quote->units == EM_UNITS_INCH ? "inch" : "metric"));
  put_state (self, "paper", g_variant_new_boolean (g_strcmp0 (page, "paper") == 0));
}
