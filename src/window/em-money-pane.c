/* em-money-pane: the price, where it goes, what else it could be, and what to beware of.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-money-pane.h"

#include "em-caution.h"
#include "em-deposit-view.h"
#include "em-extras.h"
#include "em-feature-lines.h"
#include "em-feature-row.h"
#include "em-field.h"
#include "em-money-bar.h"
#include "em-settings.h"
#include "em-steady.h"
#include "em-words.h"
#include "em-working.h"

#include <glib/gi18n.h>

struct _EmMoneyPane
{
  GtkWidget parent_instance;

  GtkWidget *summary, *price_button, *price, *currency, *price_note, *scroller, *picture, *features_fold, *features_name, *features_amount,
            *feature_lines, *lines, *breaks, *extras, *wires, *spinner, *wire_scope, *wire_table, *deposit_place,
            *cautions_fold, *cautions_names, *cautions;   /* template */

  GtkWidget  *bar, *key, *deposit, *deposit_fold;
  GtkWidget  *key_amount[EM_N_MONEY], *key_row[EM_N_MONEY];
  uint32_t    shown_cautions;
  int         frames_to_show;    /* until the deposit view, just opened, is laid out */
  gboolean    is_fold_by_hand;   /* features_fold: opened or closed by someone */
  EmDocument *document;   /* owned */
  EmOutlook  *outlook;    /* owned */
  guint       busy;       /* source id */
};

/* So many features are listed at once; more are one line to open. */
enum { FEATURES_OPEN_MOST = 3, BUSY_SHOWN_MS = 500, NAME_CHARS = 13 };

G_DEFINE_FINAL_TYPE (EmMoneyPane, em_money_pane, GTK_TYPE_WIDGET)

static const EmCurrency *
currency_of (EmMoneyPane *self)
{
  return &em_document_get_rates (self->document)->currency;
}

static void
empty (GtkWidget *box)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (box)) != NULL)
    gtk_box_remove (GTK_BOX (box), child);
}

static GtkWidget *
label_new (const char *text, const char *css_class, float xalign)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), xalign);
  if (css_class != NULL)
    gtk_widget_add_css_class (label, css_class);
  return label;
}

/* Price */

/* Nothing could be priced so far: what has to be given first. */
static void
append_what_lacks (EmMoneyPane *self, GString *text)
{
  const EmFault *fault = &em_document_get_cost (self->document)->first_fault;
  g_autofree char *sentence = em_words_fault (fault, em_document_get_quote (self->document), em_document_get_units (self->document));

  if (em_document_awaits_wire (self->document))
    g_string_append (text, _("No price yet: pick a wire below, and every feature takes it."));
  else
    g_string_append_printf (text, _("No price yet. %s"), sentence);
}

/* What sizes known only between limits do to the price. */
static void
append_range (EmMoneyPane *self, GString *text, const EmRange *range)
{
  const EmCurrency *currency = currency_of (self);
  g_autofree char *low = em_words_money_rough (range->p10_minor, range->p50_minor, currency);
  g_autofree char *high = em_words_money_rough (range->p90_minor, range->p50_minor, currency);

  if (em_range_is_wide (range))
    g_string_append_printf (text, _("\nBefore taxes about %s to %s, 8 times in 10"), low, high);
  else
    g_string_append (text, _("\nSizes not yet sure hardly move it."));
}

static void
show_price_note (EmMoneyPane *self, gboolean is_stale)
{
  const EmCost *cost = em_document_get_cost (self->document);
  const EmRange *range = em_outlook_get_range (self->outlook);
  g_autoptr (GString) text = g_string_new (NULL);
  EmFault fault;

  if (em_document_get_status (self->document, &fault) != EM_OK)
    {
      g_autofree char *sentence = em_words_fault (&fault, em_document_get_quote (self->document), em_document_get_units (self->document));
      g_string_append (text, sentence);
    }
  else if (cost->n_features == 0)
    g_string_append (text, _("The price appears with the first feature."));
  else if (cost->n_faults == cost->n_features && !em_document_has_total (self->document))
    append_what_lacks (self, text);
  else if (is_stale)
    g_string_append (text, em_document_has_total (self->document) ? _("The last good price. Something marked needs attention.")
                                                                  : _("Without what is marked, which needs attention."));
  else
    {
      g_autofree char *tax = em_words_money_bare (cost->totals.tax_minor, currency_of (self));
      g_string_append_printf (text, cost->totals.tax_minor != 0 ? _("Estimate, taxes of %s in it") : _("Estimate, before taxes"), tax);
      if (cost->totals.n_tools > 1)
        {
          g_autofree char *each = em_words_money_bare (cost->totals.each_minor, currency_of (self));
          g_string_append_printf (text, _("\n%d tools, %s each before taxes"), cost->totals.n_tools, each);
        }
    }
  if (range != NULL && !is_stale)
    append_range (self, text, range);
  if (em_document_get_rates (self->document)->is_demo)
    g_string_append_printf (text, "%s%s", text->len > 0 ? "\n" : "", _("Rates are the invented ones the program came with."));
  gtk_label_set_text (GTK_LABEL (self->price_note), text->str);
}

static void
show_price (EmMoneyPane *self)
{
  gboolean is_stale;
  int64_t total = em_document_get_total (self->document, &is_stale);
  g_autofree char *price = em_words_money (total, currency_of (self));
  g_autofree char *bare = em_words_money_bare (total, currency_of (self));
  const EmCost *cost = em_document_get_cost (self->document);
  gboolean is_priced = cost->n_faults < cost->n_features || (cost->n_features > 0 && em_document_has_total (self->document));

  gtk_label_set_text (GTK_LABEL (self->price), is_priced ? bare : "–");
  gtk_label_set_text (GTK_LABEL (self->currency), currency_of (self)->code);
  if (is_stale || !is_priced)
    gtk_widget_add_css_class (self->price, "stale");
  else
    gtk_widget_remove_css_class (self->price, "stale");
  g_autofree char *spoken = g_strdup_printf (is_stale ? _("Total %s, stale") : _("Total %s"), price);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->price_button), GTK_ACCESSIBLE_PROPERTY_LABEL, spoken, -1);
  if (cost->n_features > cost->n_faults)
    {
      g_autofree char *labour = em_words_duration (cost->labour_s);
      g_autofree char *arc_on = em_words_duration (cost->arc_on_s);
      g_autofree char *text = g_strdup_printf (_("%s of work, %s arc-on"), labour, arc_on);
      gtk_label_set_text (GTK_LABEL (self->summary), text);
    }
  else
    gtk_label_set_text (GTK_LABEL (self->summary), "");
  show_price_note (self, is_stale);
}

/* Where it goes */

static void
on_key (GtkButton *button, EmMoneyPane *self)
{
  EmMoney money = (EmMoney) GPOINTER_TO_INT (g_object_get_data (G_OBJECT (button), "money"));

  em_working_popup (GTK_WIDGET (button), self->document, EM_ROW_QUOTE, em_words_trace_of_money (money), em_words (em_moneys[money].name));
}

static void
add_key (EmMoneyPane *self, EmMoney money)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6), *button = gtk_button_new (), *child = gtk_flow_box_child_new ();
  GtkWidget *name = label_new (em_words (em_moneys[money].name), NULL, 0);

  self->key_amount[money] = label_new (NULL, "money", 1);
  /* Names are shortened only past this: two columns beside large amounts become one before that. */
  gtk_label_set_ellipsize (GTK_LABEL (name), PANGO_ELLIPSIZE_END);
  gtk_label_set_width_chars (GTK_LABEL (name), (int) MIN (g_utf8_strlen (em_words (em_moneys[money].name), -1), NAME_CHARS));
  gtk_label_set_max_width_chars (GTK_LABEL (name), NAME_CHARS);
  gtk_widget_set_tooltip_text (button, em_words (em_moneys[money].name));
  gtk_widget_set_hexpand (name, TRUE);
  gtk_box_append (GTK_BOX (row), em_money_swatch_new (money));
  gtk_box_append (GTK_BOX (row), name);
  gtk_box_append (GTK_BOX (row), self->key_amount[money]);
  gtk_button_set_child (GTK_BUTTON (button), row);
  gtk_widget_add_css_class (button, "line");
  g_object_set_data (G_OBJECT (button), "money", GINT_TO_POINTER (money));
  g_signal_connect (button, "clicked", G_CALLBACK (on_key), self);
  gtk_flow_box_child_set_child (GTK_FLOW_BOX_CHILD (child), button);
  gtk_widget_set_focusable (child, FALSE);
  gtk_flow_box_append (GTK_FLOW_BOX (self->key), child);
  self->key_row[money] = child;
}

static void
build_picture (EmMoneyPane *self)
{
  GtkWidget *title = label_new (_("Where the money goes"), "section-name", 0);

  gtk_label_set_ellipsize (GTK_LABEL (title), PANGO_ELLIPSIZE_END);
  self->bar = em_money_bar_new ();
  self->key = gtk_flow_box_new ();
  gtk_flow_box_set_selection_mode (GTK_FLOW_BOX (self->key), GTK_SELECTION_NONE);
  gtk_flow_box_set_max_children_per_line (GTK_FLOW_BOX (self->key), 2);
  gtk_flow_box_set_homogeneous (GTK_FLOW_BOX (self->key), TRUE);
  gtk_flow_box_set_column_spacing (GTK_FLOW_BOX (self->key), 6);
  gtk_widget_add_css_class (self->key, "money-key");
  gtk_widget_add_css_class (self->key, "money-lines");
  gtk_box_append (GTK_BOX (self->picture), title);
  gtk_box_append (GTK_BOX (self->picture), self->bar);
  gtk_box_append (GTK_BOX (self->picture), self->key);
  gtk_accessible_update_relation (GTK_ACCESSIBLE (self->bar), GTK_ACCESSIBLE_RELATION_LABELLED_BY, title, NULL, -1);
  for (int i = 0; i < EM_N_MONEY; i++)
    add_key (self, (EmMoney) i);
}

static void
show_picture (EmMoneyPane *self)
{
  const EmCost *cost = em_document_get_cost (self->document);

  gtk_widget_set_visible (self->picture, cost->n_features > cost->n_faults);
  em_money_bar_show (EM_MONEY_BAR (self->bar), cost->money_minor);
  for (int i = 0; i < EM_N_MONEY; i++)
    {
      g_autofree char *amount = em_words_money_bare (cost->money_minor[i], currency_of (self));
      g_autofree char *spoken = g_strdup_printf ("%s %s", em_words (em_moneys[i].name), amount);
      gtk_label_set_text (GTK_LABEL (self->key_amount[i]), amount);
      gtk_accessible_update_property (GTK_ACCESSIBLE (gtk_flow_box_child_get_child (GTK_FLOW_BOX_CHILD (self->key_row[i]))),
                                      GTK_ACCESSIBLE_PROPERTY_LABEL, spoken, -1);
      gtk_widget_set_visible (self->key_row[i], cost->money_minor[i] != 0);
    }
}

/* Lines: rows are kept and filled anew, so that a keystroke costs a few labels and no widgets. */

static void
on_line (GtkButton *button, EmMoneyPane *self)
{
  GtkWidget *name = g_object_get_data (G_OBJECT (button), "name");

  em_working_popup (GTK_WIDGET (button), self->document, EM_ROW_QUOTE, NULL, gtk_label_get_text (GTK_LABEL (name)));
}

static GtkWidget *
line_row (EmMoneyPane *self, GtkWidget *box, int at)
{
  GtkWidget *button = gtk_widget_get_first_child (box);

  for (int i = 0; i < at && button != NULL; i++)
    button = gtk_widget_get_next_sibling (button);
  if (button != NULL)
    return button;

  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *indent = em_badge_new (0), *name = label_new (NULL, NULL, 0), *amount = label_new (NULL, "money", 1);
  button = gtk_button_new ();
  gtk_label_set_ellipsize (GTK_LABEL (name), PANGO_ELLIPSIZE_END);
  gtk_widget_set_hexpand (name, TRUE);
  /* The room of a feature's number, so that all names begin in one column. */
  gtk_widget_set_opacity (indent, 0);
  gtk_box_append (GTK_BOX (row), indent);
  gtk_box_append (GTK_BOX (row), name);
  gtk_box_append (GTK_BOX (row), amount);
  gtk_button_set_child (GTK_BUTTON (button), row);
  gtk_widget_add_css_class (button, "line");
  g_object_set_data (G_OBJECT (button), "name", name);
  g_object_set_data (G_OBJECT (button), "amount", amount);
  g_signal_connect (button, "clicked", G_CALLBACK (on_line), self);
  gtk_box_append (GTK_BOX (box), button);
  return button;
}

static void
fill_line (EmMoneyPane *self, GtkWidget *box, int at, const char *name, int64_t minor, gboolean is_sum)
{
  GtkWidget *button = line_row (self, box, at);
  g_autofree char *amount = em_words_money_bare (minor, currency_of (self));
  g_autofree char *spoken = g_strdup_printf ("%s %s", name, amount);

  gtk_widget_set_visible (button, TRUE);
  gtk_label_set_text (GTK_LABEL (g_object_get_data (G_OBJECT (button), "name")), name);
  gtk_widget_set_tooltip_text (button, name);
  gtk_label_set_text (GTK_LABEL (g_object_get_data (G_OBJECT (button), "amount")), amount);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, spoken, -1);
  if (is_sum)
    {
      gtk_widget_add_css_class (button, "sum");
      gtk_widget_add_css_class (button, "total-line");
    }
  else
    {
      gtk_widget_remove_css_class (button, "sum");
      gtk_widget_remove_css_class (button, "total-line");
    }
}

static void
hide_rest (GtkWidget *box, int used)
{
  int at = 0;

  for (GtkWidget *child = gtk_widget_get_first_child (box); child != NULL; child = gtk_widget_get_next_sibling (child))
    if (at++ >= used)
      gtk_widget_set_visible (child, FALSE);
}

/* Not made while nobody sees them. */
static void
show_open_lines (EmMoneyPane *self)
{
  if (self->document != NULL && gtk_expander_get_expanded (GTK_EXPANDER (self->features_fold)))
    em_feature_lines_show (EM_FEATURE_LINES (self->feature_lines), self->document);
}

/* The sum of the features' lines on the line that opens them. */
static void
show_feature_lines (EmMoneyPane *self)
{
  const EmCost *cost = em_document_get_cost (self->document);
  int64_t sum_minor = 0;
  int n = 0;

  for (int32_t i = 0; i < cost->n_lines && cost->n_features > 0; i++)
    if (cost->line[i].type == EM_LINE_FEATURE)
      {
        n++;
        sum_minor += cost->line[i].amount_minor;
      }
  g_autofree char *name = g_strdup_printf (ngettext ("%d feature", "%d features", (gulong) n), n);
  g_autofree char *amount = em_words_money_bare (sum_minor, currency_of (self));
  g_autofree char *spoken = g_strdup_printf ("%s %s", name, amount);
  gtk_label_set_text (GTK_LABEL (self->features_name), name);
  gtk_label_set_text (GTK_LABEL (self->features_amount), amount);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->features_fold), GTK_ACCESSIBLE_PROPERTY_LABEL, spoken, -1);
  gtk_widget_set_visible (self->features_fold, n > 0);
  if (!self->is_fold_by_hand)
    gtk_expander_set_expanded (GTK_EXPANDER (self->features_fold), n <= FEATURES_OPEN_MOST);
  show_open_lines (self);
}

static void
show_lines (EmMoneyPane *self)
{
  const EmCost *cost = em_document_get_cost (self->document);
  int used = 0;
  gboolean has_tax = FALSE;

  show_feature_lines (self);
  for (int32_t i = 0; i < cost->n_lines && cost->n_features > 0; i++)
    {
      const EmLine *line = &cost->line[i];
      if (line->type == EM_LINE_FEATURE)
        continue;
      g_autofree char *name = em_words_line (line, em_document_get_quote (self->document), em_document_get_rates (self->document));
      if (line->type == EM_LINE_TAX && !has_tax)
        {
          fill_line (self, self->lines, used++, _("Net"), cost->totals.net_minor, TRUE);
          has_tax = TRUE;
        }
      fill_line (self, self->lines, used++, name, line->amount_minor, FALSE);
    }
  if (cost->n_lines > 0 && cost->n_features > 0)
    fill_line (self, self->lines, used++, cost->n_faults > 0 ? _("Total without what is marked") : _("Total"), cost->totals.total_minor, TRUE);
  hide_rest (self->lines, used);

  used = 0;
  for (int32_t i = 0; i < cost->n_breaks && cost->n_features > 0; i++)
    {
      const EmTotals *totals = &cost->breaks[i];
      g_autofree char *each = em_words_money_bare (totals->each_minor, currency_of (self));
      g_autofree char *name = g_strdup_printf (ngettext ("%d tool, %s each", "%d tools, %s each", (gulong) totals->n_tools), totals->n_tools, each);
      fill_line (self, self->breaks, used++, name, totals->net_minor, FALSE);
    }
  gtk_widget_set_visible (self->breaks, used > 0);
  hide_rest (self->breaks, used);
}

/* Cautions */

static void
show_cautions (EmMoneyPane *self)
{
  uint32_t set = em_caution_quote (em_document_get_quote (self->document), em_document_get_cost (self->document),
                                   em_document_get_rates (self->document), em_document_get_catalogue (self->document));

  if (set == self->shown_cautions)
    return;
  self->shown_cautions = set;
  empty (self->cautions);
  g_autoptr (GString) names = g_string_new (NULL);
  for (int i = 0; i < EM_N_CAUTION; i++)
    if (set & (1u << i))
      {
        GtkWidget *label = label_new (em_words_caution ((EmCaution) i), NULL, 0);
        gtk_label_set_wrap (GTK_LABEL (label), TRUE);
        gtk_widget_set_tooltip_text (label, em_words (em_cautions[i].source));
        gtk_box_append (GTK_BOX (self->cautions), label);
        /* That local codes decide is said in full with the others; alone it is the only one. */
        if (i != EM_CAUTION_LOCAL_CODES || names->len == 0)
          g_string_append_printf (names, "%s%s", names->len > 0 ? "\302\240· " : "", em_words_caution_name ((EmCaution) i));
      }
  g_autofree char *spoken = g_strdup_printf (_("Cautions: %s"), names->str);
  gtk_label_set_text (GTK_LABEL (self->cautions_names), names->str);
  gtk_widget_set_tooltip_text (self->cautions_names, names->str);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->cautions_fold), GTK_ACCESSIBLE_PROPERTY_LABEL, spoken, -1);
}

static gboolean
on_busy_for_long (gpointer data)
{
  EmMoneyPane *self = data;

  self->busy = 0;
  gtk_widget_set_visible (self->spinner, TRUE);
  gtk_spinner_start (GTK_SPINNER (self->spinner));
  return G_SOURCE_REMOVE;
}

/* Nearly always the wires are compared before anyone would look for a sign of it. */
static void
show_busy (EmMoneyPane *self)
{
  gboolean is_busy = em_outlook_is_busy (self->outlook);

  if (is_busy && self->busy == 0 && !gtk_widget_get_visible (self->spinner))
    self->busy = g_timeout_add (BUSY_SHOWN_MS, on_busy_for_long, self);
  if (is_busy)
    return;
  g_clear_handle_id (&self->busy, g_source_remove);
  gtk_spinner_stop (GTK_SPINNER (self->spinner));
  gtk_widget_set_visible (self->spinner, FALSE);
}

static void
on_document_changed (EmMoneyPane *self, guint what)
{
  if (what == EM_CHANGE_FILE || what == EM_CHANGE_SELECTION)
    return;
  show_price (self);
  show_picture (self);
  show_lines (self);
  show_cautions (self);
  show_busy (self);
  gtk_widget_set_visible (self->wires, em_document_get_quote (self->document)->n_features > 0);
}

/* The chosen wire's, else that of the first in the table. */
static const EmCompareRow *
telling_row (EmMoneyPane *self, const EmCompare *compare)
{
  int64_t net;
  int32_t filler = em_wire_table_get_row (EM_WIRE_TABLE (self->wire_table), 0, &net);

  if (compare == NULL)
    return NULL;
  if (compare->present >= 0)
    return &compare->row[compare->present];
  for (int32_t i = 0; i < compare->n_rows; i++)
    if (compare->row[i].filler == filler)
      return &compare->row[i];
  return NULL;
}

static void
show_wires (EmMoneyPane *self)
{
  const EmCompare *compare = em_outlook_get_compare (self->outlook);
  uint32_t feature_id = em_outlook_get_feature (self->outlook);
  int32_t index = feature_id != 0 ? em_quote_find (em_document_get_quote (self->document), feature_id) : -1;
  const EmCompareRow *row;

  em_wire_table_show (EM_WIRE_TABLE (self->wire_table), self->document, compare, feature_id);
  row = telling_row (self, compare);
  gtk_widget_set_visible (self->deposit_place, row != NULL);
  em_deposit_view_show (EM_DEPOSIT_VIEW (self->deposit), self->document, row);
  if (index >= 0)
    {
      g_autofree char *name = em_words_feature_name (em_document_get_quote (self->document), index);
      g_autofree char *text = g_strdup_printf (_("Price of the quote when only %s is welded with it"), name);
      gtk_label_set_text (GTK_LABEL (self->wire_scope), text);
    }
  else
    gtk_label_set_text (GTK_LABEL (self->wire_scope), _("Price of the quote when all of it is welded with one wire"));
}

static void
on_ready (EmMoneyPane *self)
{
  show_wires (self);
  show_busy (self);
  show_price (self);
}

static void
on_fold_by_hand (EmMoneyPane *self)
{
  self->is_fold_by_hand = TRUE;
}

static void
on_price (EmMoneyPane *self)
{
  em_working_popup (self->price_button, self->document, EM_ROW_QUOTE, NULL, _("How the price came about"));
}

static void
forget (EmMoneyPane *self)
{
  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  if (self->outlook != NULL)
    g_signal_handlers_disconnect_by_data (self->outlook, self);
  g_clear_object (&self->document);
  g_clear_object (&self->outlook);
  g_clear_handle_id (&self->busy, g_source_remove);
}

static void
em_money_pane_dispose (GObject *object)
{
  EmMoneyPane *self = EM_MONEY_PANE (object);
  GtkWidget *child = gtk_widget_get_first_child (GTK_WIDGET (self));

  forget (self);
  if (child != NULL)
    gtk_widget_unparent (child);
  G_OBJECT_CLASS (em_money_pane_parent_class)->dispose (object);
}

static void
em_money_pane_class_init (EmMoneyPaneClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  g_type_ensure (EM_TYPE_STEADY);
  g_type_ensure (EM_TYPE_EXTRAS);
  g_type_ensure (EM_TYPE_FEATURE_LINES);
  g_type_ensure (EM_TYPE_WIRE_TABLE);
  G_OBJECT_CLASS (class)->dispose = em_money_pane_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, EM_TYPE_STEADY_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/estimend/Estimend/money-pane.ui");
  gtk_widget_class_bind_template_child (widget_class, EmMoneyPane, summary);
  gtk_widget_class_bind_template_child (widget_class, EmMoneyPane, price_button);
  gtk_widget_class_bind_template_child (widget_class, EmMoneyPane, price);
  gtk_widget_class_bind_template_child (widget_class, EmMoneyPane, currency);
  gtk_widget_class_bind_template_child (widget_class, EmMoneyPane, price_note);
  gtk_widget_class_bind_template_child (widget_class, EmMoneyPane, picture);
  gtk_widget_class_bind_template_child (widget_class, EmMoneyPane, scroller);
  gtk_widget_class_bind_template_child (widget_class, EmMoneyPane, features_fold);
  gtk_widget_class_bind_template_child (widget_class, EmMoneyPane, features_name);
  gtk_widget_class_bind_template_child (widget_class, EmMoneyPane, features_amount);
  gtk_widget_class_bind_template_child (widget_class, EmMoneyPane, feature_lines);
  gtk_widget_class_bind_template_child (widget_class, EmMoneyPane, lines);
  gtk_widget_class_bind_template_child (widget_class, EmMoneyPane, breaks);
  gtk_widget_class_bind_template_child (widget_class, EmMoneyPane, extras);
  gtk_widget_class_bind_template_child (widget_class, EmMoneyPane, wires);
  gtk_widget_class_bind_template_child (widget_class, EmMoneyPane, spinner);
  gtk_widget_class_bind_template_child (widget_class, EmMoneyPane, wire_scope);
  gtk_widget_class_bind_template_child (widget_class, EmMoneyPane, wire_table);
  gtk_widget_class_bind_template_child (widget_class, EmMoneyPane, deposit_place);
  gtk_widget_class_bind_template_child (widget_class, EmMoneyPane, cautions_fold);
  gtk_widget_class_bind_template_child (widget_class, EmMoneyPane, cautions_names);
  gtk_widget_class_bind_template_child (widget_class, EmMoneyPane, cautions);
}

static void
em_money_pane_init (EmMoneyPane *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  build_picture (self);
  self->deposit = em_deposit_view_new ();
  self->deposit_fold = em_fold_new (_("What _base and wire make together"), self->deposit);
  gtk_box_append (GTK_BOX (self->deposit_place), self->deposit_fold);
  g_signal_connect_swapped (self->features_fold, "notify::expanded", G_CALLBACK (show_open_lines), self);
  g_signal_connect_swapped (self->features_fold, "activate", G_CALLBACK (on_fold_by_hand), self);
  g_signal_connect_swapped (self->price_button, "clicked", G_CALLBACK (on_price), self);
}

void
em_money_pane_set_document (EmMoneyPane *self, EmDocument *document, EmOutlook *outlook)
{
  forget (self);
  self->document = g_object_ref (document);
  self->outlook = g_object_ref (outlook);
  em_wire_table_set_by_match (EM_WIRE_TABLE (self->wire_table), g_settings_get_boolean (em_settings_get (), "is-by-match"));
  g_signal_connect_object (document, "changed", G_CALLBACK (on_document_changed), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (outlook, "ready", G_CALLBACK (on_ready), self, G_CONNECT_SWAPPED);
  em_extras_set_document (EM_EXTRAS (self->extras), document);
  on_document_changed (self, EM_CHANGE_ALL);
  on_ready (self);
}

const char *
em_money_pane_get_price (EmMoneyPane *self)
{
  return gtk_label_get_text (GTK_LABEL (self->price));
}

void
em_money_pane_focus (EmMoneyPane *self)
{
  gtk_widget_grab_focus (self->price_button);
}

void
em_money_pane_set_by_match (EmMoneyPane *self, gboolean is_by_match)
{
  em_wire_table_set_by_match (EM_WIRE_TABLE (self->wire_table), is_by_match);
  show_wires (self);
}

void
em_money_pane_focus_wires (EmMoneyPane *self)
{
  if (!em_wire_table_focus (EM_WIRE_TABLE (self->wire_table)))
    gtk_widget_grab_focus (self->price_button);
}

EmWireTable *
em_money_pane_get_wires (EmMoneyPane *self)
{
  return EM_WIRE_TABLE (self->wire_table);
}

/* Counts the frames until the opened view has its height. */
static gboolean
show_when_laid_out (GtkWidget *fold, GdkFrameClock *clock, gpointer data)
{
  EmMoneyPane *self = data;
  GtkAdjustment *down = gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (self->scroller));
  GtkWidget *content = gtk_widget_get_ancestor (fold, GTK_TYPE_VIEWPORT);
  graphene_rect_t bounds;

  (void) clock;
  if (self->frames_to_show-- > 0)
    return G_SOURCE_CONTINUE;
  if (content != NULL && gtk_widget_compute_bounds (fold, content, &bounds))
    gtk_adjustment_clamp_page (down, gtk_adjustment_get_value (down) + (double) bounds.origin.y,
                               gtk_adjustment_get_value (down) + (double) (bounds.origin.y + MIN (bounds.size.height, gtk_adjustment_get_page_size (down))));
  return G_SOURCE_REMOVE;
}

void
em_money_pane_toggle_deposit (EmMoneyPane *self)
{
  gboolean is_open = !gtk_expander_get_expanded (GTK_EXPANDER (self->deposit_fold));

  gtk_expander_set_expanded (GTK_EXPANDER (self->deposit_fold), is_open);
  gtk_widget_grab_focus (self->deposit_fold);
  if (!is_open)
    return;
  self->frames_to_show = 2;
  gtk_widget_add_tick_callback (self->deposit_fold, show_when_laid_out, self, NULL);
}

char *
em_money_pane_deposit_text (EmMoneyPane *self)
{
  return em_deposit_view_text (EM_DEPOSIT_VIEW (self->deposit));
}
