/* em-feature-row: a feature in the list.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-feature-row.h"

#include "em-kind-picture.h"
#include "em-words.h"

#include <glib/gi18n.h>

struct _EmFeatureRow
{
  GtkBox parent_instance;

  GtkWidget *badge, *picture, *name, *sizes, *problem, *price;   /* children */
  uint32_t   feature_id;
};

G_DEFINE_FINAL_TYPE (EmFeatureRow, em_feature_row, GTK_TYPE_BOX)

GtkWidget *
em_badge_new (int number)
{
  g_autofree char *text = g_strdup_printf ("%d", number);
  GtkWidget *badge = gtk_label_new (text);

  gtk_widget_add_css_class (badge, "badge");
  gtk_widget_set_valign (badge, GTK_ALIGN_CENTER);
  return badge;
}

static GtkWidget *
line_label (const char *css_class)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  if (css_class != NULL)
    gtk_widget_add_css_class (label, css_class);
  return label;
}

static void
em_feature_row_class_init (EmFeatureRowClass *class)
{
  (void) class;
}

static void
em_feature_row_init (EmFeatureRow *self)
{
  GtkWidget *words = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  gtk_box_set_spacing (GTK_BOX (self), 8);
  self->badge = em_badge_new (0);
  self->picture = em_kind_picture_new (NULL, 46, 30);
  self->name = line_label (NULL);
  self->sizes = line_label ("unit");
  self->problem = gtk_image_new_from_icon_name ("dialog-warning-symbolic");
  gtk_widget_add_css_class (self->problem, "problem");
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->problem), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Problem"), -1);
  self->price = gtk_label_new (NULL);
  gtk_label_set_xalign (GTK_LABEL (self->price), 1);
  gtk_widget_add_css_class (self->price, "money");
  gtk_widget_set_hexpand (words, TRUE);
  gtk_widget_set_valign (words, GTK_ALIGN_CENTER);
  gtk_box_append (GTK_BOX (words), self->name);
  gtk_box_append (GTK_BOX (words), self->sizes);
  gtk_box_append (GTK_BOX (self), self->badge);
  gtk_box_append (GTK_BOX (self), self->picture);
  gtk_box_append (GTK_BOX (self), words);
  gtk_box_append (GTK_BOX (self), self->problem);
  gtk_box_append (GTK_BOX (self), self->price);
}

GtkWidget *
em_feature_row_new (void)
{
  return g_object_new (EM_TYPE_FEATURE_ROW, NULL);
}

uint32_t
em_feature_row_get_feature_id (EmFeatureRow *self)
{
  return self->feature_id;
}

static void
show_price (EmFeatureRow *self, EmDocument *document, int32_t index)
{
  gboolean is_stale;
  int64_t minor = em_document_get_feature_price (document, index, &is_stale);
  g_autofree char *price = em_words_money_bare (minor, &em_document_get_rates (document)->currency);
  const EmFeatureCost *cost = em_document_get_feature_cost (document, index);
  g_autofree char *fault = cost->status != EM_OK ? em_words_fault (&cost->fault, NULL, em_document_get_units (document)) : NULL;

  gtk_label_set_text (GTK_LABEL (self->price), is_stale && minor == 0 ? "–" : price);
  if (is_stale)
    gtk_widget_add_css_class (self->price, "stale");
  else
    gtk_widget_remove_css_class (self->price, "stale");
  gtk_widget_set_tooltip_text (self->price, is_stale ? _("The last good price: something here needs attention") : NULL);
  /* That no wire is chosen yet is nobody's mistake, and the money pane says what to do about it. */
  gtk_widget_set_visible (self->problem, is_stale && !em_document_awaits_wire (document));
  gtk_widget_set_tooltip_text (self->problem, fault);
}

void
em_feature_row_show (EmFeatureRow *self, EmDocument *document, int32_t index)
{
  const EmFeature *feature = &em_document_get_quote (document)->feature[index];
  const char *label = feature->text[EM_FEATURE_LABEL];
  g_autofree char *number = g_strdup_printf ("%d", index + 1);
  g_autofree char *count = feature->count > 1 ? g_strdup_printf (" × %d", feature->count) : g_strdup ("");
  const char *kind = em_words (feature->kind->name);
  g_autofree char *name = g_strdup_printf ("%s%s", label != NULL ? label : kind, count);
  g_autofree char *sizes = em_words_sizes_short (feature, em_document_get_units (document));
  g_autofree char *second = label != NULL ? g_strdup_printf ("%s  %s", kind, sizes) : g_strdup (sizes);
  g_autofree char *told = em_words_sizes (feature, em_document_get_units (document));

  self->feature_id = feature->id;
  gtk_label_set_text (GTK_LABEL (self->badge), number);
  em_kind_picture_set_kind (EM_KIND_PICTURE (self->picture), feature->kind);
  gtk_label_set_text (GTK_LABEL (self->name), name);
  gtk_label_set_text (GTK_LABEL (self->sizes), second);
  gtk_widget_set_tooltip_text (self->sizes, told);
  show_price (self, document, index);
  g_autofree char *spoken = g_strdup_printf ("%d. %s, %s, %s, %s", index + 1, kind, name, told, gtk_label_get_text (GTK_LABEL (self->price)));
  gtk_accessible_update_property (GTK_ACCESSIBLE (gtk_widget_get_parent (GTK_WIDGET (self))), GTK_ACCESSIBLE_PROPERTY_LABEL, spoken, -1);
}
