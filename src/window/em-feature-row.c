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
  const EmKind *kind;
  char      *shown;   /* what it says, in one; NULL: nothing yet */
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
em_feature_row_finalize (GObject *object)
{
  g_free (EM_FEATURE_ROW (object)->shown);
  G_OBJECT_CLASS (em_feature_row_parent_class)->finalize (object);
}

static void
em_feature_row_class_init (EmFeatureRowClass *class)
{
  G_OBJECT_CLASS (class)->finalize = em_feature_row_finalize;
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

/* What a row says, all of it. */
typedef struct
{
  char    *number, *name, *sizes, *told, *price, *fault, *spoken;
  gboolean is_stale, has_problem;
} EmRowWords;

static void
clear_words (EmRowWords *words)
{
  g_free (words->number);
  g_free (words->name);
  g_free (words->sizes);
  g_free (words->told);
  g_free (words->price);
  g_free (words->fault);
  g_free (words->spoken);
}

static void
find_price (EmRowWords *words, EmDocument *document, int32_t index)
{
  int64_t minor = em_document_get_feature_price (document, index, &words->is_stale);
  const EmFeatureCost *cost = em_document_get_feature_cost (document, index);

  words->price = words->is_stale && minor == 0 ? g_strdup ("–") : em_words_money_bare (minor, &em_document_get_rates (document)->currency);
  words->fault = cost->status != EM_OK ? em_words_fault (&cost->fault, NULL, em_document_get_units (document)) : NULL;
  /* That no wire is chosen yet is nobody's mistake, and the money pane says what to do about it. */
  words->has_problem = words->is_stale && !em_document_awaits_wire (document);
}

static void
find_words (EmRowWords *words, EmDocument *document, int32_t index)
{
  const EmFeature *feature = &em_document_get_quote (document)->feature[index];
  const char *label = feature->text[EM_FEATURE_LABEL], *kind = em_words (feature->kind->name);
  g_autofree char *count = feature->count > 1 ? g_strdup_printf (" × %d", feature->count) : g_strdup ("");
  g_autofree char *sizes = em_words_sizes_short (feature, em_document_get_units (document));

  words->number = g_strdup_printf ("%d", index + 1);
  words->name = g_strdup_printf ("%s%s", label != NULL ? label : kind, count);
  words->sizes = label != NULL ? g_strdup_printf ("%s  %s", kind, sizes) : g_strdup (sizes);
  words->told = em_words_sizes (feature, em_document_get_units (document));
  find_price (words, document, index);
  words->spoken = g_strdup_printf ("%d. %s, %s, %s, %s", index + 1, kind, words->name, words->told, words->price);
}

static void
put_price (EmFeatureRow *self, const EmRowWords *words)
{
  gtk_label_set_text (GTK_LABEL (self->price), words->price);
  if (words->is_stale)
    gtk_widget_add_css_class (self->price, "stale");
  else
    gtk_widget_remove_css_class (self->price, "stale");
  gtk_widget_set_tooltip_text (self->price, words->is_stale ? _("The last good price: something here needs attention") : NULL);
  gtk_widget_set_visible (self->problem, words->has_problem);
  gtk_widget_set_tooltip_text (self->problem, words->fault);
}

/* Each of the widgets would be laid out again, and many rows are shown anew by one key. */
static gboolean
is_shown_already (EmFeatureRow *self, const EmFeature *feature, const EmRowWords *words)
{
  g_autofree char *all = g_strdup_printf ("%s\n%s\n%s\n%s\n%d%d", words->spoken, words->name, words->sizes, words->fault != NULL ? words->fault : "",
                                          words->is_stale, words->has_problem);

  if (feature->id == self->feature_id && feature->kind == self->kind && g_strcmp0 (all, self->shown) == 0)
    return TRUE;
  g_free (self->shown);
  self->shown = g_steal_pointer (&all);
  return FALSE;
}

void
em_feature_row_show (EmFeatureRow *self, EmDocument *document, int32_t index)
{
  const EmFeature *feature = &em_document_get_quote (document)->feature[index];
  EmRowWords words;

  find_words (&words, document, index);
  if (!is_shown_already (self, feature, &words))
    {
      self->feature_id = feature->id;
      self->kind = feature->kind;
      gtk_label_set_text (GTK_LABEL (self->badge), words.number);
      em_kind_picture_set_kind (EM_KIND_PICTURE (self->picture), feature->kind);
      gtk_label_set_text (GTK_LABEL (self->name), words.name);
      gtk_label_set_text (GTK_LABEL (self->sizes), words.sizes);
      gtk_widget_set_tooltip_text (self->sizes, words.told);
      put_price (self, &words);
      gtk_accessible_update_property (GTK_ACCESSIBLE (gtk_widget_get_parent (GTK_WIDGET (self))), GTK_ACCESSIBLE_PROPERTY_LABEL, words.spoken, -1);
    }
  clear_words (&words);
}
