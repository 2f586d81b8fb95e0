/* em-book-pages: the pages with nothing but figures, and what all pages are made of.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-book-pages.h"

#include "em-field.h"
#include "em-rate-entry.h"

#include <glib/gi18n.h>
#include <string.h>

GtkWidget *
em_page_new (GtkWidget **out_box)
{
  GtkWidget *scrolled = gtk_scrolled_window_new ();

  *out_box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  gtk_widget_add_css_class (*out_box, "book-page");
  /* With large letters a row may be wider than the screen; the window must not be. */
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scrolled), GTK_POLICY_AUTOMATIC, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), *out_box);
  gtk_widget_set_vexpand (scrolled, TRUE);
  return scrolled;
}

GtkWidget *
em_page_heading (const char *text)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_widget_add_css_class (label, "section-name");
  return label;
}

GtkWidget *
em_page_remark (const char *text)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 60);
  gtk_widget_add_css_class (label, "quiet");
  return label;
}

GtkWidget *
em_step_button_new (EmStepWay way, gboolean is_word)
{
  const char *name = way == EM_STEP_BACK ? _("Undo") : _("Redo");
  GtkWidget *button = is_word ? gtk_button_new_with_label (name)
                              : gtk_button_new_from_icon_name (way == EM_STEP_BACK ? "edit-undo-symbolic" : "edit-redo-symbolic");

  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  gtk_widget_set_tooltip_text (button, way == EM_STEP_BACK ? _("Undo (Ctrl+Z)") : _("Redo (Ctrl+Shift+Z)"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  if (!is_word)
    gtk_widget_add_css_class (button, "flat");
  return button;
}

/* ---- the way to a field ---- */

void
em_page_touch (EmDraft *draft, EmDraftPart part, const char *page, const char *record, const char *field)
{
  g_autofree char *where = g_strconcat (page, "/", record != NULL ? record : "", "/", field, NULL);

  em_draft_touch (draft, part, where);
}

char *
em_page_dup_record (const char *where, const char *page)
{
  g_auto (GStrv) parts = where != NULL ? g_strsplit (where, "/", 3) : NULL;

  return parts != NULL && parts[0] != NULL && g_str_equal (parts[0], page) ? g_strdup (parts[1]) : NULL;
}

void
em_page_set_field (GtkWidget *widget, const char *field)
{
  g_object_set_data_full (G_OBJECT (widget), "field", g_strdup (field), g_free);
}

static gboolean
is_field (GtkWidget *widget, const char *field)
{
  g_autofree char *figure = EM_IS_RATE_ENTRY (widget) ? em_rate_entry_dup_where (EM_RATE_ENTRY (widget)) : NULL;

  return g_strcmp0 (figure != NULL ? figure : g_object_get_data (G_OBJECT (widget), "field"), field) == 0;
}

static GtkWidget *
find_field (GtkWidget *widget, const char *field)
{
  GtkWidget *found = is_field (widget, field) ? widget : NULL;

  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL && found == NULL; child = gtk_widget_get_next_sibling (child))
    found = find_field (child, field);
  return found;
}

static gboolean
has_keyboard (GtkWidget *around)
{
  GtkWidget *focus = gtk_root_get_focus (gtk_widget_get_root (around));

  return focus != NULL && (focus == around || gtk_widget_is_ancestor (focus, around));
}

/* What is folded up stays so. */
void
em_page_focus_field (GtkWidget *page, const char *where)
{
  g_auto (GStrv) parts = g_strsplit (where, "/", 3);
  GtkWidget *found = g_strv_length (parts) == 3 && parts[2][0] != '\0' ? find_field (page, parts[2]) : NULL;

  if (found != NULL && !has_keyboard (found) && gtk_widget_get_mapped (found))
    gtk_widget_grab_focus (found);
}

/* ---- pages of figures ---- */

typedef struct
{
  const char *group;    /* and name of the page */
  EmDraft   *draft;     /* owned */
  GPtrArray *entries;   /* EmRateEntry, owned by the page */
  GtkWidget *ours;      /* check button, or NULL */
} EmFigures;

static void
free_figures (gpointer data)
{
  EmFigures *figures = data;

  g_signal_handlers_disconnect_by_data (figures->draft, figures);
  g_object_unref (figures->draft);
  g_ptr_array_unref (figures->entries);
  g_free (figures);
}

static void *
hold_rates (gpointer owner)
{
  return em_draft_get_rates (((EmFigures *) owner)->draft);
}

static void
on_edited (EmRateEntry *entry, EmFigures *figures)
{
  g_autofree char *field = em_rate_entry_dup_where (entry);

  em_page_touch (figures->draft, EM_DRAFT_RATES, figures->group, NULL, field);
}

static void
on_ours (EmFigures *figures)
{
  em_draft_get_rates (figures->draft)->is_demo = !gtk_check_button_get_active (GTK_CHECK_BUTTON (figures->ours));
  em_page_touch (figures->draft, EM_DRAFT_RATES, figures->group, NULL, "ours");
  em_draft_break (figures->draft);
}

static void
on_draft_changed (EmFigures *figures)
{
  for (guint i = 0; i < figures->entries->len; i++)
    em_rate_entry_show (figures->entries->pdata[i]);
  if (figures->ours == NULL)
    return;
  g_signal_handlers_block_by_func (figures->ours, on_ours, figures);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (figures->ours), !em_draft_get_rates (figures->draft)->is_demo);
  g_signal_handlers_unblock_by_func (figures->ours, on_ours, figures);
}

GtkWidget *
em_figures_page_new (EmDraft *draft, const char *group, const char *remark)
{
  EmFigures *figures = g_new0 (EmFigures, 1);
  GtkWidget *box, *page = em_page_new (&box), *flow = em_fields_new ();

  figures->group = group;
  figures->draft = g_object_ref (draft);
  figures->entries = g_ptr_array_new ();
  gtk_box_append (GTK_BOX (box), em_page_remark (remark));
  for (int i = 0; i < em_n_rate_fields; i++)
    if (g_str_equal (em_rate_fields[i].group, group))
      {
        GtkWidget *entry = em_rate_entry_new (&em_rate_fields[i], draft, hold_rates, figures, FALSE);
        g_signal_connect (entry, "edited", G_CALLBACK (on_edited), figures);
        g_ptr_array_add (figures->entries, entry);
        em_fields_add (flow, entry);
      }
  gtk_box_append (GTK_BOX (box), flow);
  if (g_str_equal (group, "money"))
    {
      figures->ours = gtk_check_button_new_with_mnemonic (_("These are our _own figures; the program’s invented ones have been gone over"));
      em_field_wrap_check (figures->ours);
      em_page_set_field (figures->ours, "ours");
      g_signal_connect_swapped (figures->ours, "toggled", G_CALLBACK (on_ours), figures);
      gtk_box_append (GTK_BOX (box), figures->ours);
    }
  g_signal_connect_swapped (draft, "changed", G_CALLBACK (on_draft_changed), figures);
  on_draft_changed (figures);
  g_object_set_data_full (G_OBJECT (page), "figures", figures, free_figures);
  return page;
}
