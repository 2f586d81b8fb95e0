/* em-wire-table: every wire side by side.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-wire-table.h"

#include "em-field.h"
#include "em-money-bar.h"
#include "em-words.h"

#include <glib/gi18n.h>
#include <math.h>

struct _EmWireTable
{
  GtkWidget parent_instance;

  GtkWidget  *box, *suited, *compromise_fold, *compromises, *expander, *ruled_out;
  EmDocument *document;   /* owned */
  GPtrArray  *shown;      /* rows of the comparison that can be chosen, in order; borrowed until shown anew */
  int64_t     dearest_minor;   /* of the suited: the length of the bars is to this scale */
  uint32_t    feature_id;
  gboolean    has_present, is_by_match;
  gboolean    is_fold_by_hand;   /* compromise_fold: opened or closed by someone */
};

G_DEFINE_FINAL_TYPE (EmWireTable, em_wire_table, GTK_TYPE_WIDGET)

/* What nobody wants on a tool who has the choice (common practice): these stand apart however little they cost. */
#define EM_REASONS_COMPROMISE \
  (EM_REASON_BIT (EM_REASON_SOFTER) | EM_REASON_BIT (EM_REASON_CRACKS) | EM_REASON_BIT (EM_REASON_HOT_CRACKS) | EM_REASON_BIT (EM_REASON_RUSTS) \
   | EM_REASON_BIT (EM_REASON_DISSIMILAR) | EM_REASON_BIT (EM_REASON_AUSTENITIC_ON_TOOL) | EM_REASON_BIT (EM_REASON_COPPER_CONTENT))

static GtkWidget *
line (const char *text, const char *css_class, float xalign)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), xalign);
  if (css_class != NULL)
    gtk_widget_add_css_class (label, css_class);
  return label;
}

/* Reasons from first to before end, in one line that wraps. */
static char *
reasons_text (EmReasons reasons, const char *mark, int first, int end)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (int i = first; i < end; i++)
    if (reasons & EM_REASON_BIT (i))
      g_string_append_printf (text, "%s%s", text->len > 0 ? "\302\240· " : mark, em_words_reason ((EmReason) i));
  return g_string_free (g_steal_pointer (&text), FALSE);
}

static char *
hardness_text (const EmPairing *pairing)
{
  char *text = em_words_hardness (pairing);

  return text != NULL ? text : g_strdup (_("hardness not known"));
}

/* "wire 17.72 · arc-on 1 h 09 min · bench 7 h 03 min". */
static char *
effort_text (EmWireTable *self, const EmCompareRow *row)
{
  g_autofree char *cost = em_words_money_bare (row->filler_cost_minor, &em_document_get_rates (self->document)->currency);
  g_autofree char *arc_on = em_words_duration (row->arc_on_s), *bench = em_words_duration (row->labour_s);

  /* Translators: what the wire costs, arc-on time, time at the bench. */
  return g_strdup_printf (_("wire %s · arc-on %s · bench %s"), cost, arc_on, bench);
}

/* Which feature can't take it and why; NULL where the reasons say as much. */
static char *
fault_text (EmWireTable *self, const EmCompareRow *row)
{
  const EmQuote *quote = em_document_get_quote (self->document);

  return row->is_ruled_out && row->fault.code != EM_OK && row->fault.code != EM_FAULT_UNSUITED ? em_words_fault (&row->fault, quote, quote->units) : NULL;
}

/* "+12.40" against the present choice; NULL where there is nothing to tell. */
static char *
difference_text (EmWireTable *self, const EmCompareRow *row)
{
  g_autofree char *difference = em_words_money_bare (row->difference_minor, &em_document_get_rates (self->document)->currency);

  if (row->is_ruled_out || !self->has_present)
    return NULL;
  if (row->is_present)
    return g_strdup (_("chosen"));
  /* The mark of direction keeps the sign before its figures among words that run the other way. */
  return g_strdup_printf ("%s%s%s", gtk_widget_get_direction (GTK_WIDGET (self)) == GTK_TEXT_DIR_RTL ? "\342\200\216" : "",
                          row->difference_minor > 0 ? "+" : "", difference);
}

static void
on_clicked (GtkButton *button, EmWireTable *self)
{
  const char *filler = g_object_get_data (G_OBJECT (button), "filler");
  int32_t index = self->feature_id != 0 ? em_quote_find (em_document_get_quote (self->document), self->feature_id) : -1;

  if (self->feature_id != 0 && index < 0)
    return;
  em_document_choose_wire (self->document, index, filler);
  em_document_break (self->document);
}

static GtkWidget *
wrapped (const char *text)
{
  GtkWidget *label = line (text, "remark", 0);

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_width_chars (GTK_LABEL (label), 12);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 20);
  return label;
}

/* Stands by the first line of what it is beside. */
static GtkWidget *
figure (const char *text)
{
  GtkWidget *label = line (text, "money", 1);

  gtk_widget_set_valign (label, GTK_ALIGN_START);
  return label;
}

static gboolean
is_usual (const EmCompareRow *row)
{
  return (row->reasons & EM_REASON_BIT (EM_REASON_USUAL)) != 0;
}

gboolean
em_wire_is_compromise (const EmCompareRow *row)
{
  return !is_usual (row) && (row->reasons & EM_REASONS_COMPROMISE) != 0;
}

static int64_t
money_of (const EmCompareRow *row)
{
  int64_t sum_minor = 0;

  for (int i = 0; i < EM_N_MONEY; i++)
    sum_minor += MAX (row->money_minor[i], 0);
  return sum_minor;
}

/* Where this wire's money goes, in the colours and hatches of the bar above. */
static GtkWidget *
bar_new (EmWireTable *self, const EmCompareRow *row)
{
  GtkWidget *bar = em_money_bar_new_low ();

  gtk_widget_set_margin_top (bar, 2);
  gtk_widget_set_margin_bottom (bar, 2);
  em_money_bar_show_of (EM_MONEY_BAR (bar), row->money_minor, self->dearest_minor);
  return bar;
}

/* At a glance, before the reasons: what the trade would take. */
static GtkWidget *
usual_new (void)
{
  GtkWidget *label = line (em_words_reason (EM_REASON_USUAL), "usual", 0);

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  return label;
}

static GtkWidget *
row_grid (EmWireTable *self, const EmCompareRow *row, char **out_spoken)
{
  const EmFiller *filler = &em_document_get_catalogue (self->document)->filler[row->filler];
  const EmCurrency *currency = &em_document_get_rates (self->document)->currency;
  GtkWidget *grid = gtk_grid_new ();
  GtkWidget *name = line (filler->designation, "strong", 0);
  g_autofree char *hardness = hardness_text (&row->pairing);
  g_autofree char *price = row->is_ruled_out ? g_strdup ("–") : em_words_money_bare (row->net_minor, currency);
  g_autofree char *difference = difference_text (self, row);
  /* The usual one is named on a line of its own; that a compromise is the cheapest is no recommendation. */
  EmReasons untold = EM_REASON_BIT (EM_REASON_USUAL) | (em_wire_is_compromise (row) ? EM_REASON_BIT (EM_REASON_CHEAPEST) : 0);
  g_autofree char *good = reasons_text (row->reasons & ~untold, "+ ", 0, EM_REASON_SOFTER);
  g_autofree char *bad = reasons_text (row->reasons, "− ", EM_REASON_SOFTER, EM_REASON_WRONG_PROCESS);
  g_autofree char *out = reasons_text (row->reasons, "× ", EM_REASON_WRONG_PROCESS, EM_N_REASON);
  g_autofree char *effort = row->is_ruled_out ? NULL : effort_text (self, row), *fault = fault_text (self, row);
  const char *texts[] = { effort, good, bad, out, fault };
  int at = 2;

  gtk_label_set_wrap (GTK_LABEL (name), TRUE);
  gtk_label_set_natural_wrap_mode (GTK_LABEL (name), GTK_NATURAL_WRAP_NONE);
  gtk_widget_set_hexpand (name, TRUE);
  gtk_grid_set_column_spacing (GTK_GRID (grid), 10);
  gtk_grid_attach (GTK_GRID (grid), name, 0, 0, 1, 1);
  gtk_grid_attach (GTK_GRID (grid), figure (price), 1, 0, 1, 1);
  gtk_grid_attach (GTK_GRID (grid), wrapped (hardness), 0, 1, 1, 1);
  if (difference != NULL)
    gtk_grid_attach (GTK_GRID (grid), figure (difference), 1, 1, 1, 1);
  if (is_usual (row) && !row->is_ruled_out)
    gtk_grid_attach (GTK_GRID (grid), usual_new (), 0, at++, 2, 1);
  if (!row->is_ruled_out && self->dearest_minor > 0)
    gtk_grid_attach (GTK_GRID (grid), bar_new (self, row), 0, at++, 2, 1);
  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    if (texts[i] != NULL && texts[i][0] != '\0')
      gtk_grid_attach (GTK_GRID (grid), wrapped (texts[i]), 0, at++, 2, 1);
  *out_spoken = g_strdup_printf ("%s%s%s, %s, %s%s%s, %s %s %s %s %s", filler->designation, is_usual (row) ? ", " : "",
                                 is_usual (row) ? em_words_reason (EM_REASON_USUAL) : "", hardness, price, difference != NULL ? ", " : "",
                                 difference != NULL ? difference : "", effort != NULL ? effort : "", good, bad, out, fault != NULL ? fault : "");
  return grid;
}

static GtkWidget *
row_new (EmWireTable *self, const EmCompareRow *row)
{
  const EmFiller *filler = &em_document_get_catalogue (self->document)->filler[row->filler];
  g_autofree char *spoken = NULL;
  GtkWidget *grid = row_grid (self, row, &spoken);

  if (row->is_ruled_out)
    {
      gtk_accessible_update_property (GTK_ACCESSIBLE (grid), GTK_ACCESSIBLE_PROPERTY_LABEL, spoken, -1);
      return grid;
    }
  GtkWidget *button = gtk_button_new ();
  gtk_button_set_child (GTK_BUTTON (button), grid);
  gtk_widget_add_css_class (button, "wire-row");
  if (row->is_present)
    gtk_widget_add_css_class (button, "chosen");
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, spoken, -1);
  g_object_set_data_full (G_OBJECT (button), "filler", g_strdup (filler->id), g_free);
  g_signal_connect (button, "clicked", G_CALLBACK (on_clicked), self);
  return button;
}

/* Objections less recommendations; that it is cheap is told by its price already. */
static int
objections (const EmCompareRow *row)
{
  EmReasons against = row->reasons & ~EM_REASONS_FOR & ~EM_REASONS_RULE_OUT;
  EmReasons in_favour = row->reasons & EM_REASONS_FOR & ~EM_REASON_BIT (EM_REASON_CHEAPEST);

  return __builtin_popcountll (against) - __builtin_popcountll (in_favour);
}

/* Compromises last. */
static int
by_price (gconstpointer a, gconstpointer b)
{
  const EmCompareRow *first = *(const EmCompareRow *const *) a, *second = *(const EmCompareRow *const *) b;

  if (em_wire_is_compromise (first) != em_wire_is_compromise (second))
    return em_wire_is_compromise (first) ? 1 : -1;
  return first->net_minor < second->net_minor ? -1 : first->net_minor > second->net_minor;
}

/* What the trade would take first, then the fewest objections. */
static int
by_match (gconstpointer a, gconstpointer b)
{
  const EmCompareRow *first = *(const EmCompareRow *const *) a, *second = *(const EmCompareRow *const *) b;
  int difference = is_usual (first) != is_usual (second) ? (is_usual (first) ? -1 : 1) : objections (first) - objections (second);

  if (difference == 0 || em_wire_is_compromise (first) != em_wire_is_compromise (second))
    return by_price (a, b);
  return difference;
}

static void
empty (GtkWidget *box)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (box)) != NULL)
    gtk_box_remove (GTK_BOX (box), child);
}

static void
em_wire_table_dispose (GObject *object)
{
  EmWireTable *self = EM_WIRE_TABLE (object);

  g_clear_object (&self->document);
  g_clear_pointer (&self->shown, g_ptr_array_unref);
  g_clear_pointer (&self->box, gtk_widget_unparent);
  G_OBJECT_CLASS (em_wire_table_parent_class)->dispose (object);
}

static void
em_wire_table_class_init (EmWireTableClass *class)
{
  G_OBJECT_CLASS (class)->dispose = em_wire_table_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (class), GTK_TYPE_BIN_LAYOUT);
}

static void
on_fold_by_hand (EmWireTable *self)
{
  self->is_fold_by_hand = TRUE;
}

static void
em_wire_table_init (EmWireTable *self)
{
  self->shown = g_ptr_array_new ();
  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  self->suited = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  self->ruled_out = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  self->expander = em_fold_new ("", self->ruled_out);
  self->compromises = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  self->compromise_fold = em_fold_new ("", self->compromises);
  g_signal_connect_swapped (self->compromise_fold, "activate", G_CALLBACK (on_fold_by_hand), self);
  gtk_box_append (GTK_BOX (self->box), self->suited);
  gtk_box_append (GTK_BOX (self->box), self->compromise_fold);
  gtk_box_append (GTK_BOX (self->box), self->expander);
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
}

/* Those that suit, and folded those that would be a compromise, unless one of them is chosen or nothing else is left. */
static void
show_rows (EmWireTable *self)
{
  int n_compromises = 0;
  gboolean is_one_chosen = FALSE;

  g_ptr_array_sort (self->shown, self->is_by_match ? by_match : by_price);
  for (guint i = 0; i < self->shown->len; i++)
    {
      const EmCompareRow *row = g_ptr_array_index (self->shown, i);
      gboolean is_apart = em_wire_is_compromise (row);

      n_compromises += is_apart;
      is_one_chosen = is_one_chosen || (is_apart && row->is_present);
      gtk_box_append (GTK_BOX (is_apart ? self->compromises : self->suited), row_new (self, row));
    }
  g_autofree char *label = g_strdup_printf (ngettext ("%d wire that would be a compromise", "%d wires that would be a compromise", (gulong) n_compromises),
                                            n_compromises);
  em_fold_set_name (self->compromise_fold, label);
  gtk_widget_set_visible (self->compromise_fold, n_compromises > 0);
  if (!self->is_fold_by_hand)
    gtk_expander_set_expanded (GTK_EXPANDER (self->compromise_fold), is_one_chosen || n_compromises == (int) self->shown->len);
}

void
em_wire_table_show (EmWireTable *self, EmDocument *document, const EmCompare *compare, uint32_t feature_id)
{
  GtkWidget *focus = gtk_widget_get_root (GTK_WIDGET (self)) != NULL ? gtk_root_get_focus (gtk_widget_get_root (GTK_WIDGET (self))) : NULL;
  gboolean had_focus = focus != NULL && (gtk_widget_is_ancestor (focus, self->suited) || gtk_widget_is_ancestor (focus, self->compromises));
  int n_out = 0;

  g_set_object (&self->document, document);
  self->feature_id = feature_id;
  self->has_present = compare != NULL && compare->present >= 0 && compare->row[compare->present].net_minor > 0;
  empty (self->suited);
  empty (self->compromises);
  empty (self->ruled_out);
  g_ptr_array_set_size (self->shown, 0);
  self->dearest_minor = 0;
  for (int i = 0; compare != NULL && i < compare->n_rows; i++)
    if (compare->row[i].is_ruled_out)
      {
        n_out++;
        gtk_box_append (GTK_BOX (self->ruled_out), row_new (self, &compare->row[i]));
      }
    else
      {
        g_ptr_array_add (self->shown, &compare->row[i]);
        self->dearest_minor = MAX (self->dearest_minor, money_of (&compare->row[i]));
      }
  show_rows (self);
  g_autofree char *label = g_strdup_printf (ngettext ("%d wire ruled out, and why", "%d wires ruled out, and why", (gulong) n_out), n_out);
  em_fold_set_name (self->expander, label);
  gtk_widget_set_visible (self->expander, n_out > 0);
  /* Rows are made anew; whoever stood on one stands on the chosen one. */
  if (had_focus)
    em_wire_table_focus (self);
}

void
em_wire_table_set_by_match (EmWireTable *self, gboolean is_by_match)
{
  self->is_by_match = is_by_match;
}

int
em_wire_table_count (EmWireTable *self)
{
  return (int) self->shown->len;
}

/* The button of a row, in the order shown; NULL: none. */
static GtkWidget *
button_at (EmWireTable *self, int at)
{
  GtkWidget *const boxes[] = { self->suited, self->compromises };

  for (gsize box = 0; box < G_N_ELEMENTS (boxes); box++)
    for (GtkWidget *child = gtk_widget_get_first_child (boxes[box]); child != NULL; child = gtk_widget_get_next_sibling (child))
      if (at-- == 0)
        return child;
  return NULL;
}

gboolean
em_wire_table_choose (EmWireTable *self, int at)
{
  GtkWidget *button = at >= 0 ? button_at (self, at) : NULL;

  if (button == NULL)
    return FALSE;
  g_signal_emit_by_name (button, "clicked");
  return TRUE;
}

gboolean
em_wire_table_focus (EmWireTable *self)
{
  GtkWidget *first = button_at (self, 0), *button;

  /* One in a closed fold can't have it. */
  for (int at = 0; (button = button_at (self, at)) != NULL; at++)
    if (gtk_widget_has_css_class (button, "chosen") && gtk_widget_get_root (button) != NULL)
      return gtk_widget_grab_focus (button);
  return first != NULL && gtk_widget_get_root (first) != NULL && gtk_widget_grab_focus (first);
}

gboolean
em_wire_table_is_apart (EmWireTable *self, int at)
{
  return at >= 0 && at < (int) self->shown->len && em_wire_is_compromise (g_ptr_array_index (self->shown, (guint) at));
}

int32_t
em_wire_table_get_row (EmWireTable *self, int at, int64_t *out_net_minor)
{
  if (at < 0 || at >= (int) self->shown->len)
    return -1;
  const EmCompareRow *row = g_ptr_array_index (self->shown, (guint) at);
  *out_net_minor = row->net_minor;
  return row->filler;
}
