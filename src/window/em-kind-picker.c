/* em-kind-picker: the kinds of repair by picture.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-kind-picker.h"

#include "em-field.h"
#include "em-kind-picture.h"
#include "em-words.h"

/* Its name breaks between words, not at the hyphen of "build-up". */
static char *
dup_name (const EmKind *kind)
{
  g_autoptr (GString) name = g_string_new (em_words (kind->name));

  g_string_replace (name, "-", "\342\200\221", 0);
  return g_strdup (name->str);
}

static GtkWidget *
card_new (const EmKind *kind)
{
  g_autofree char *name = dup_name (kind);
  GtkWidget *button = gtk_button_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 4);
  GtkWidget *label = gtk_label_new (name);

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_justify (GTK_LABEL (label), GTK_JUSTIFY_CENTER);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 14);
  gtk_box_append (GTK_BOX (box), em_kind_picture_new (kind, 84, 46));
  gtk_box_append (GTK_BOX (box), label);
  gtk_button_set_child (GTK_BUTTON (button), box);
  gtk_widget_add_css_class (button, "flat");
  gtk_widget_add_css_class (button, "kind-card");
  gtk_widget_set_tooltip_text (button, em_words (kind->summary));
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), "win.add-kind");
  gtk_actionable_set_action_target (GTK_ACTIONABLE (button), "s", kind->id);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, em_words (kind->name),
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, em_words (kind->summary), -1);
  return button;
}

GtkWidget *
em_kind_picker_new (int n_least, int n_most)
{
  GtkWidget *flow = em_fields_new ();

  em_fields_set_columns (EM_FIELDS (flow), n_least, n_most);
  em_fields_set_gaps (EM_FIELDS (flow), 2, 2);
  for (int i = 0; i < em_n_kinds; i++)
    em_fields_add (flow, card_new (em_kinds[i]));
  return flow;
}
