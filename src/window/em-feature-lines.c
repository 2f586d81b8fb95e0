/* em-feature-lines: what each feature costs.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-feature-lines.h"

#include "em-feature-list.h"
#include "em-feature-row.h"
#include "em-words.h"
#include "em-working.h"

#include <glib/gi18n.h>

struct _EmFeatureLines
{
  GtkWidget parent_instance;

  GtkWidget     *scrolled, *list;
  EmFeatureList *features;   /* those with a line; owned by the list */
  GArray        *lines;      /* int32_t into the cost's, by position in features */
  EmDocument    *document;   /* owned; NULL until shown */
};

G_DEFINE_FINAL_TYPE (EmFeatureLines, em_feature_lines, GTK_TYPE_WIDGET)

/* More lines than this high scroll by themselves. */
enum { MOST_HEIGHT = 320 };

static char *
name_of (const EmLine *line, const EmQuote *quote)
{
  const EmFeature *feature = &quote->feature[line->row];
  const char *label = feature->text[EM_FEATURE_LABEL] != NULL ? feature->text[EM_FEATURE_LABEL] : em_words (feature->kind->name);

  return line->is_override ? g_strdup_printf (_("%s (stated)"), label) : g_strdup (label);
}

/* NULL: none. While they are folded away the lines are not kept up to date, and unfolding binds rows before they are. */
static const EmLine *
line_at (EmFeatureLines *self, guint position)
{
  const EmCost *cost = em_document_get_cost (self->document);
  int32_t at = position < self->lines->len ? g_array_index (self->lines, int32_t, position) : cost->n_lines;

  return at < cost->n_lines && cost->line[at].type == EM_LINE_FEATURE && cost->line[at].row < em_document_get_quote (self->document)->n_features
         ? &cost->line[at] : NULL;
}

static void
fill_row (EmFeatureLines *self, GtkWidget *row)
{
  const EmLine *line = line_at (self, gtk_list_item_get_position (g_object_get_data (G_OBJECT (row), "item")));
  GtkWidget *badge = gtk_widget_get_first_child (row), *name_label = gtk_widget_get_next_sibling (badge);

  if (line == NULL)
    return;
  g_autofree char *name = name_of (line, em_document_get_quote (self->document));
  g_autofree char *amount = em_words_money_bare (line->amount_minor, &em_document_get_rates (self->document)->currency);
  g_autofree char *number = g_strdup_printf ("%d", line->row + 1);
  g_autofree char *spoken = g_strdup_printf ("%s %s", name, amount);
  gtk_label_set_text (GTK_LABEL (badge), number);
  gtk_label_set_text (GTK_LABEL (name_label), name);
  gtk_widget_set_tooltip_text (row, name);
  gtk_label_set_text (GTK_LABEL (gtk_widget_get_last_child (row)), amount);
  gtk_accessible_update_property (GTK_ACCESSIBLE (gtk_widget_get_parent (row)), GTK_ACCESSIBLE_PROPERTY_LABEL, spoken, -1);
}

static void
on_setup (GtkSignalListItemFactory *factory, GtkListItem *item)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8), *name = gtk_label_new (NULL), *amount = gtk_label_new (NULL);

  (void) factory;
  gtk_label_set_xalign (GTK_LABEL (name), 0);
  gtk_label_set_ellipsize (GTK_LABEL (name), PANGO_ELLIPSIZE_END);
  gtk_widget_set_hexpand (name, TRUE);
  gtk_label_set_xalign (GTK_LABEL (amount), 1);
  gtk_widget_add_css_class (amount, "money");
  gtk_box_append (GTK_BOX (row), em_badge_new (0));
  gtk_box_append (GTK_BOX (row), name);
  gtk_box_append (GTK_BOX (row), amount);
  g_object_set_data (G_OBJECT (row), "item", item);
  gtk_list_item_set_child (item, row);
}

static void
on_bind (GtkSignalListItemFactory *factory, GtkListItem *item, EmFeatureLines *self)
{
  (void) factory;
  fill_row (self, gtk_list_item_get_child (item));
}

static void
on_activated (GtkListView *list, guint position, EmFeatureLines *self)
{
  const EmLine *line = line_at (self, position);

  if (line == NULL)
    return;
  for (GtkWidget *place = gtk_widget_get_first_child (GTK_WIDGET (list)); place != NULL; place = gtk_widget_get_next_sibling (place))
    {
      GtkWidget *row = gtk_widget_get_first_child (place);
      if (row == NULL || gtk_list_item_get_position (g_object_get_data (G_OBJECT (row), "item")) != position)
        continue;
      g_autofree char *name = name_of (line, em_document_get_quote (self->document));
      em_working_popup (row, self->document, line->row, NULL, name);
      return;
    }
}

static void
em_feature_lines_dispose (GObject *object)
{
  EmFeatureLines *self = EM_FEATURE_LINES (object);

  g_clear_pointer (&self->scrolled, gtk_widget_unparent);
  g_clear_object (&self->document);
  g_clear_pointer (&self->lines, g_array_unref);
  G_OBJECT_CLASS (em_feature_lines_parent_class)->dispose (object);
}

/* As high as its lines, up to a limit: within what scrolls, nothing is given more than it needs at least. */
static void
em_feature_lines_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum, int *natural,
                          int *minimum_baseline, int *natural_baseline)
{
  EmFeatureLines *self = EM_FEATURE_LINES (widget);

  gtk_widget_measure (self->scrolled, orientation, for_size, minimum, natural, NULL, NULL);
  if (orientation == GTK_ORIENTATION_VERTICAL)
    {
      gtk_widget_measure (self->list, orientation, for_size, NULL, natural, NULL, NULL);
      *minimum = *natural = MAX (*minimum, MIN (*natural, MOST_HEIGHT));
    }
  *minimum_baseline = *natural_baseline = -1;
}

static void
em_feature_lines_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  gtk_widget_allocate (EM_FEATURE_LINES (widget)->scrolled, width, height, baseline, NULL);
}

static void
em_feature_lines_class_init (EmFeatureLinesClass *class)
{
  G_OBJECT_CLASS (class)->dispose = em_feature_lines_dispose;
  GTK_WIDGET_CLASS (class)->measure = em_feature_lines_measure;
  GTK_WIDGET_CLASS (class)->size_allocate = em_feature_lines_size_allocate;
}

static void
em_feature_lines_init (EmFeatureLines *self)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();

  self->lines = g_array_new (FALSE, FALSE, sizeof (int32_t));
  self->features = em_feature_list_new ();
  g_signal_connect (factory, "setup", G_CALLBACK (on_setup), NULL);
  g_signal_connect (factory, "bind", G_CALLBACK (on_bind), self);
  self->list = gtk_list_view_new (GTK_SELECTION_MODEL (gtk_no_selection_new (G_LIST_MODEL (self->features))), factory);
  gtk_list_view_set_single_click_activate (GTK_LIST_VIEW (self->list), TRUE);
  gtk_widget_add_css_class (self->list, "feature-lines");
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->list), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Features"), -1);
  g_signal_connect (self->list, "activate", G_CALLBACK (on_activated), self);
  self->scrolled = gtk_scrolled_window_new ();
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (self->scrolled), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (self->scrolled), self->list);
  gtk_widget_set_parent (self->scrolled, GTK_WIDGET (self));
}

GtkWidget *
em_feature_lines_new (void)
{
  return g_object_new (EM_TYPE_FEATURE_LINES, NULL);
}

void
em_feature_lines_show (EmFeatureLines *self, EmDocument *document)
{
  const EmQuote *quote = em_document_get_quote (document);
  const EmCost *cost = em_document_get_cost (document);
  g_autoptr (GArray) ids = g_array_new (FALSE, FALSE, sizeof (uint32_t));

  g_set_object (&self->document, document);
  g_array_set_size (self->lines, 0);
  for (int32_t i = 0; i < cost->n_lines && cost->n_features == quote->n_features; i++)
    if (cost->line[i].type == EM_LINE_FEATURE)
      {
        g_array_append_val (self->lines, i);
        g_array_append_val (ids, quote->feature[cost->line[i].row].id);
      }
  em_feature_list_show (self->features, (const uint32_t *) (void *) ids->data, ids->len);
  for (GtkWidget *place = gtk_widget_get_first_child (self->list); place != NULL; place = gtk_widget_get_next_sibling (place))
    if (gtk_widget_get_first_child (place) != NULL)
      fill_row (self, gtk_widget_get_first_child (place));
}

GListModel *
em_feature_lines_get_model (EmFeatureLines *self)
{
  return G_LIST_MODEL (self->features);
}
