/* em-register-table: the quotes found, in columns.
 *
 * GTK 4.8 does not tell by which column a view is sorted, so its sorter is asked to compare two marks: the column that is asked
 * first is the one, and what comes of it is the direction. The rows are then put in order here, by keys made once a register,
 * since ten thousand quotes are too many to compare anew at each key of a search.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-register-table.h"

#include "em-columns.h"
#include "em-register-list.h"
#include "em-settings.h"
#include "em-words.h"

#include <glib/gi18n.h>
#include <stdlib.h>
#include <string.h>

typedef enum { COLUMN_NUMBER, COLUMN_DATE, COLUMN_CUSTOMER, COLUMN_TOOL, COLUMN_STATE, COLUMN_NET, N_COLUMN } EmColumn;

/* Widths for text of the usual size; 0: what is left over. */
static const struct { const char *id, *title; int width; } columns[N_COLUMN] =
{
  [COLUMN_NUMBER] = { "number", N_("Number"), 84 }, [COLUMN_DATE] = { "date", N_("Date"), 98 },
  [COLUMN_CUSTOMER] = { "customer", N_("Customer"), 0 }, [COLUMN_TOOL] = { "tool", N_("Tool"), 0 },
  [COLUMN_STATE] = { "state", N_("State"), 78 }, [COLUMN_NET] = { "net", N_("Net price"), 114 },
};

enum { NO_COLUMN = -1, WIDTH_MIN = 40, WIDTH_MAX = 2000, CELL_EDGES = 18, WIDEST = 220 };

struct _EmRegisterTable
{
  GtkWidget parent_instance;

  GtkWidget *scrolled, *view;
  EmRegisterList *list;            /* owned */
  GtkSingleSelection *selection;   /* owned */
  EmRegister *reg;                 /* owned or NULL: what is shown */
  GArray     *found;               /* owned: indices in the register's order */
  guint      *order;               /* all indices of ordered_reg by the column sorted by; NULL: not made */
  EmRegister *ordered_reg;         /* owned; the one that order is of */
  int         sort_column;
  gboolean    is_descending, is_filling;
  guint       fitting;             /* source; 0: the columns shown fit */
  int         own_width[N_COLUMN]; /* that the table gave the column, not the user; −1: what is left over */
  GObject    *low, *high;          /* owned: the marks */
  GtkColumnViewColumn *column[N_COLUMN];   /* owned by the view */
};

G_DEFINE_FINAL_TYPE (EmRegisterTable, em_register_table, GTK_TYPE_WIDGET)

static guint selected_signal, activated_signal, sorted_signal;

/* ---- cells ---- */

char *
em_register_number_text (const EmRegisterEntry *entry)
{
  const char *number = entry->text[EM_ENTRY_NUMBER], *revision = entry->text[EM_ENTRY_REVISION];

  if (*number == '\0')
    return g_filename_display_basename (entry->path);
  return *revision != '\0' ? g_strdup_printf ("%s · %s", number, revision) : g_strdup (number);
}

char *
em_register_net_text (const EmRegisterEntry *entry)
{
  g_autofree char *money = entry->has_net ? em_words_money (entry->net_minor, &entry->currency) : NULL;

  if (money == NULL)
    return g_strdup (_("no price"));
  return entry->is_partial ? g_strdup_printf (_("%s, in part"), money) : g_steal_pointer (&money);
}

static char *
cell_text (const EmRegisterEntry *entry, EmColumn column)
{
  if (entry->problem != NULL && column != COLUMN_NUMBER)
    return g_strdup (column == COLUMN_CUSTOMER ? _("can’t be read") : "");
  switch (column)
    {
    case COLUMN_NUMBER: return em_register_number_text (entry);
    case COLUMN_DATE: return em_words_date (entry->text[EM_ENTRY_DATE]);
    case COLUMN_CUSTOMER: return g_strdup (entry->text[EM_ENTRY_CUSTOMER]);
    case COLUMN_TOOL: return g_strdup (entry->text[EM_ENTRY_TOOL]);
    case COLUMN_STATE: return g_strdup (em_words_state (entry->state));
    case COLUMN_NET: return em_register_net_text (entry);
    case N_COLUMN: break;
    }
  return g_strdup ("");
}

static EmColumn
column_of (gpointer object)
{
  return (EmColumn) GPOINTER_TO_INT (g_object_get_data (object, "column"));
}

/* Asked for when it is shown: a tooltip that is set asks the display where the pointer is, which for each cell at each key is a long time. */
static gboolean
on_query_tooltip (GtkWidget *label, int x, int y, gboolean is_keyboard, GtkTooltip *tooltip, GtkListItem *item)
{
  EmRegisterItem *row = gtk_list_item_get_item (item);
  const EmRegisterEntry *entry = row != NULL ? em_register_item_get_entry (row) : NULL;
  const char *text = entry != NULL && entry->problem != NULL ? entry->problem : gtk_label_get_text (GTK_LABEL (label));

  (void) x;
  (void) y;
  (void) is_keyboard;
  gtk_tooltip_set_text (tooltip, text);
  return *text != '\0';
}

static void
on_setup (GtkSignalListItemFactory *factory, GtkListItem *item)
{
  EmColumn column = column_of (factory);
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), column == COLUMN_NET ? 1 : 0);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  if (column == COLUMN_NET || column == COLUMN_DATE)
    gtk_widget_add_css_class (label, "money");
  if (column == COLUMN_NUMBER)
    gtk_widget_add_css_class (label, "strong");
  g_signal_connect_object (label, "query-tooltip", G_CALLBACK (on_query_tooltip), item, 0);
  gtk_widget_set_has_tooltip (label, TRUE);
  gtk_list_item_set_child (item, label);
}

static void
on_bind (GtkSignalListItemFactory *factory, GtkListItem *item)
{
  EmColumn column = column_of (factory);
  const EmRegisterEntry *entry = em_register_item_get_entry (gtk_list_item_get_item (item));
  GtkWidget *label = gtk_list_item_get_child (item);
  g_autofree char *text = cell_text (entry, column);

  gtk_label_set_text (GTK_LABEL (label), text);
  if (entry->problem != NULL && column == COLUMN_CUSTOMER)
    gtk_widget_add_css_class (label, "problem");
  else
    gtk_widget_remove_css_class (label, "problem");
}

/* ---- order ---- */

static EmColumn asked;      /* by the compare function, of the marks; the main thread's alone */
static gboolean was_asked;

typedef struct { EmRegisterTable *self; EmColumn column; } Mark;

static int
compare_marks (gconstpointer a, gconstpointer b, gpointer data)
{
  const Mark *mark = data;

  if (a != (gconstpointer) mark->self->low || b != (gconstpointer) mark->self->high)
    return 0;
  asked = mark->column;
  was_asked = TRUE;
  return -1;
}

/* Text by the language's order with numbers in it by their value; figures so that bytes sort as they do. */
static char *
key_of (const EmRegisterEntry *entry, EmColumn column)
{
  const char *text = column == COLUMN_CUSTOMER ? entry->text[EM_ENTRY_CUSTOMER] : entry->text[EM_ENTRY_TOOL];

  switch (column)
    {
    case COLUMN_NUMBER:
      {
        g_autofree char *number = em_register_number_text (entry);
        return g_utf8_collate_key_for_filename (number, -1);
      }
    case COLUMN_DATE: return g_strdup (entry->text[EM_ENTRY_DATE]);
    case COLUMN_STATE: return g_strdup_printf ("%d", entry->state);
    case COLUMN_NET:
      /* Amounts of one currency together; from the smallest int64 on, so that signs do not matter. */
      return entry->has_net ? g_strdup_printf ("1%s%020" G_GUINT64_FORMAT, entry->currency.code, (guint64) entry->net_minor ^ (G_GUINT64_CONSTANT (1) << 63))
                            : g_strdup ("0");
    case COLUMN_CUSTOMER: case COLUMN_TOOL: case N_COLUMN: break;
    }
  g_autofree char *folded = g_utf8_casefold (text, -1);
  return g_utf8_collate_key (folded, -1);
}

typedef struct { char *key; guint index; gboolean is_unreadable; } Keyed;

/* What can't be read comes last, whichever way. */
static int
compare_keyed (gconstpointer a, gconstpointer b, gpointer data)
{
  const Keyed *x = a, *y = b;
  int order = strcmp (x->key, y->key);

  if (x->is_unreadable != y->is_unreadable)
    return x->is_unreadable - y->is_unreadable;
  if (order != 0)
    return GPOINTER_TO_INT (data) ? -order : order;
  return x->index < y->index ? -1 : x->index > y->index;
}

static void
forget_order (EmRegisterTable *self)
{
  g_clear_pointer (&self->order, g_free);
  g_clear_pointer (&self->ordered_reg, em_register_unref);
}

static void
make_order (EmRegisterTable *self)
{
  guint n = em_register_get_length (self->reg);
  Keyed *keyed = g_new (Keyed, n);

  forget_order (self);
  for (guint i = 0; i < n; i++)
    {
      const EmRegisterEntry *entry = em_register_get_entry (self->reg, i);
      keyed[i] = (Keyed) { key_of (entry, (EmColumn) self->sort_column), i, entry->problem != NULL };
    }
  g_qsort_with_data (keyed, (int) n, sizeof *keyed, compare_keyed, GINT_TO_POINTER (self->is_descending));
  self->order = g_new (guint, n);
  self->ordered_reg = em_register_ref (self->reg);
  for (guint i = 0; i < n; i++)
    {
      self->order[i] = keyed[i].index;
      g_free (keyed[i].key);
    }
  g_free (keyed);
}

/* What was found, in the order wanted; new. */
static GArray *
in_order (EmRegisterTable *self)
{
  GArray *rows = g_array_sized_new (FALSE, FALSE, sizeof (guint), self->found->len);

  if (self->sort_column == NO_COLUMN)
    return g_array_append_vals (rows, self->found->data, self->found->len);
  if (self->order == NULL || self->ordered_reg != self->reg)
    make_order (self);

  guint n = em_register_get_length (self->reg);
  g_autofree gboolean *is_found = g_new0 (gboolean, n);
  for (guint i = 0; i < self->found->len; i++)
    is_found[g_array_index (self->found, guint, i)] = TRUE;
  for (guint i = 0; i < n; i++)
    /* NOLINTNEXTLINE(clang-analyzer-core.uninitialized.ArraySubscript): make_order filled as many as the register has. */
    if (is_found[self->order[i]])
      g_array_append_val (rows, self->order[i]);
  return rows;
}

/* The row whose quote lies in path; G_MAXUINT: none. */
static guint
find_row (EmRegisterTable *self, const GArray *rows, const char *path)
{
  for (guint i = 0; path != NULL && i < rows->len; i++)
    if (g_str_equal (em_register_get_entry (self->reg, g_array_index (rows, guint, i))->path, path))
      return i;
  return G_MAXUINT;
}

static char *
dup_selected_path (EmRegisterTable *self)
{
  EmRegisterItem *item = gtk_single_selection_get_selected_item (self->selection);

  return item != NULL ? g_strdup (em_register_item_get_entry (item)->path) : NULL;
}

static void
scroll_to (EmRegisterTable *self, guint row)
{
  GtkWidget *list = gtk_widget_get_last_child (self->view);

  if (list != NULL)
    gtk_widget_activate_action (list, "list.scroll-to-item", "u", row);
}

static gboolean
has_keyboard (EmRegisterTable *self)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));
  GtkWidget *focus = root != NULL ? gtk_root_get_focus (root) : NULL;

  return focus != NULL && gtk_widget_is_ancestor (focus, self->view);
}

/* To the selected row: GTK would go on from where the row was that had the keyboard. */
static void
take_keyboard (EmRegisterTable *self)
{
  GtkWidget *list = gtk_widget_get_last_child (self->view), *row = list != NULL ? gtk_widget_get_first_child (list) : NULL;

  while (row != NULL && (gtk_widget_get_state_flags (row) & GTK_STATE_FLAG_SELECTED) == 0)
    row = gtk_widget_get_next_sibling (row);
  if (row != NULL)
    gtk_widget_grab_focus (row);
  else if (list != NULL)
    gtk_widget_child_focus (list, GTK_DIR_TAB_FORWARD);
}

static void
fill (EmRegisterTable *self)
{
  gboolean had_keyboard = has_keyboard (self);
  g_autofree char *path = dup_selected_path (self);
  g_autoptr (GArray) rows = self->reg != NULL ? in_order (self) : NULL;
  guint row = rows != NULL ? find_row (self, rows, path) : G_MAXUINT;

  self->is_filling = TRUE;
  em_register_list_show (self->list, self->reg, rows);
  gtk_single_selection_set_selected (self->selection, row != G_MAXUINT ? row : 0);
  self->is_filling = FALSE;
  if (rows != NULL && rows->len > 0)
    scroll_to (self, row != G_MAXUINT ? row : 0);
  if (had_keyboard)
    take_keyboard (self);
  g_signal_emit (self, selected_signal, 0);
}

static void
on_sorter_changed (EmRegisterTable *self)
{
  GtkSorter *sorter = gtk_column_view_get_sorter (GTK_COLUMN_VIEW (self->view));

  was_asked = FALSE;
  GtkOrdering ordering = gtk_sorter_compare (sorter, self->low, self->high);
  self->sort_column = was_asked ? (int) asked : NO_COLUMN;
  self->is_descending = ordering == GTK_ORDERING_LARGER;
  forget_order (self);
  if (self->found != NULL)
    fill (self);
  g_signal_emit (self, sorted_signal, 0);
}

/* ---- remembering ---- */

static int
find_column (const char *id)
{
  for (int i = 0; i < N_COLUMN; i++)
    if (g_strcmp0 (columns[i].id, id) == 0)
      return i;
  return NO_COLUMN;
}

/* Widths are told for text of the usual size. */
static double
text_scale (void)
{
  int dpi = 0;

  g_object_get (gtk_settings_get_default (), "gtk-xft-dpi", &dpi, NULL);
  return dpi > 0 ? (double) dpi / (96 * PANGO_SCALE) : 1;
}

/* Columns that are not remembered, of another version's settings, keep their places behind the others. */
static void
recall (EmRegisterTable *self)
{
  g_autoptr (GVariant) kept = g_settings_get_value (em_settings_get (), "register-columns");
  g_autofree char *sorted_by = g_settings_get_string (em_settings_get (), "register-sort");
  guint position = 0;

  for (gsize i = 0; i < g_variant_n_children (kept); i++)
    {
      const char *id;
      gint32 width;
      g_variant_get_child (kept, i, "(&si)", &id, &width);
      int column = find_column (id);
      if (column == NO_COLUMN)
        continue;
      if (width >= WIDTH_MIN && width <= WIDTH_MAX)
        gtk_column_view_column_set_fixed_width (self->column[column], (int) (width * text_scale ()));
      gtk_column_view_insert_column (GTK_COLUMN_VIEW (self->view), position++, self->column[column]);
    }
  em_register_table_sort (self, sorted_by, g_settings_get_boolean (em_settings_get (), "register-is-descending"));
}

void
em_register_table_remember (EmRegisterTable *self)
{
  GListModel *model = gtk_column_view_get_columns (GTK_COLUMN_VIEW (self->view));
  GVariantBuilder builder;

  g_variant_builder_init (&builder, G_VARIANT_TYPE ("a(si)"));
  for (guint i = 0; i < g_list_model_get_n_items (model); i++)
    {
      g_autoptr (GtkColumnViewColumn) column = g_list_model_get_item (model, i);
      int width = gtk_column_view_column_get_fixed_width (column);
      gboolean is_users = width > 0 && width != self->own_width[column_of (column)];
      g_variant_builder_add (&builder, "(si)", columns[column_of (column)].id, is_users ? (int) (width / text_scale () + 0.5) : -1);
    }
  g_settings_set_value (em_settings_get (), "register-columns", g_variant_builder_end (&builder));
  g_settings_set_string (em_settings_get (), "register-sort", self->sort_column != NO_COLUMN ? columns[self->sort_column].id : "");
  g_settings_set_boolean (em_settings_get (), "register-is-descending", self->is_descending);
}

/* ---- the table ---- */

static int
text_width (EmRegisterTable *self, const char *text, gboolean is_strong)
{
  g_autoptr (PangoLayout) layout = gtk_widget_create_pango_layout (self->view, text);
  g_autoptr (PangoAttrList) strong = pango_attr_list_new ();
  int width;

  pango_attr_list_insert (strong, pango_attr_weight_new (PANGO_WEIGHT_BOLD));
  if (is_strong)
    pango_layout_set_attributes (layout, strong);

  pango_layout_get_pixel_size (layout, &width, NULL);
  return width + CELL_EDGES;
}

/* The widest of the texts that the rows have in a column whose texts are of one kind, by their lengths; "" without any. */
static char *
longest_text (EmRegisterTable *self, EmColumn column)
{
  const EmRegisterEntry *longest[2] = { NULL, NULL };   /* and of the prices in part */
  g_autofree char *whole = NULL, *part = NULL;
  gint64 most[2] = { -1, -1 };

  for (guint i = 0; self->reg != NULL && i < em_register_get_length (self->reg); i++)
    {
      const EmRegisterEntry *entry = em_register_get_entry (self->reg, i);
      g_autofree char *number = column == COLUMN_NUMBER ? em_register_number_text (entry) : NULL;
      gint64 length = number != NULL ? g_utf8_strlen (number, -1) : entry->net_minor < 0 ? -entry->net_minor : entry->net_minor;
      int kind = number == NULL && entry->is_partial;
      if (length <= most[kind] || (number == NULL && !entry->has_net))
        continue;
      most[kind] = length;
      longest[kind] = entry;
    }
  whole = longest[0] != NULL ? cell_text (longest[0], column) : g_strdup ("");
  part = longest[1] != NULL ? cell_text (longest[1], column) : g_strdup ("");
  return g_utf8_strlen (whole, -1) >= g_utf8_strlen (part, -1) ? g_steal_pointer (&whole) : g_steal_pointer (&part);
}

/* Of what is one of few, the longest fits in whatever language: "28 sept. 2026", "Auftrag erhalten". */
static int
usual_width (EmRegisterTable *self, EmColumn column)
{
  int width = (int) (columns[column].width * text_scale ());

  for (int month = 1; month <= 12 && column == COLUMN_DATE; month++)
    {
      g_autofree char *iso = g_strdup_printf ("2026-%02d-28", month), *date = em_words_date (iso);
      width = MAX (width, text_width (self, date, FALSE));
    }
  for (int state = 0; state < EM_N_STATE && column == COLUMN_STATE; state++)
    width = MAX (width, text_width (self, em_words_state ((EmState) state), FALSE));
  if (column == COLUMN_NUMBER || column == COLUMN_NET)
    {
      g_autofree char *longest = longest_text (self, column);
      width = CLAMP (text_width (self, longest, column == COLUMN_NUMBER), width, (int) (WIDEST * text_scale ()));
    }
  return width;
}

/* Unless the user chose another width. */
static void
put_own_width (EmRegisterTable *self, EmColumn column)
{
  if (columns[column].width == 0 || gtk_column_view_column_get_fixed_width (self->column[column]) != self->own_width[column])
    return;
  self->own_width[column] = usual_width (self, column);
  gtk_column_view_column_set_fixed_width (self->column[column], self->own_width[column]);
}

static void
add_column (EmRegisterTable *self, EmColumn column)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
  Mark *mark = g_new (Mark, 1);
  g_autoptr (GtkSorter) sorter = NULL;

  *mark = (Mark) { self, column };
  sorter = GTK_SORTER (gtk_custom_sorter_new (compare_marks, mark, g_free));
  g_object_set_data (G_OBJECT (factory), "column", GINT_TO_POINTER ((int) column));
  g_signal_connect (factory, "setup", G_CALLBACK (on_setup), NULL);
  g_signal_connect (factory, "bind", G_CALLBACK (on_bind), NULL);
  g_autoptr (GtkColumnViewColumn) view_column = gtk_column_view_column_new (_(columns[column].title), factory);
  g_object_set_data (G_OBJECT (view_column), "column", GINT_TO_POINTER ((int) column));
  gtk_column_view_column_set_resizable (view_column, TRUE);
  gtk_column_view_column_set_expand (view_column, columns[column].width == 0);
  gtk_column_view_column_set_sorter (view_column, sorter);
  self->own_width[column] = columns[column].width > 0 ? usual_width (self, column) : -1;
  gtk_column_view_column_set_fixed_width (view_column, self->own_width[column]);
  if (column == COLUMN_NET)
    em_columns_set_figures (view_column);
  gtk_column_view_append_column (GTK_COLUMN_VIEW (self->view), view_column);
  self->column[column] = view_column;
}

/* ---- columns that there is room for ---- */

/* Characters that a column of texts wants, and that it can do with. */
enum { CHARS_WANTED = 14, CHARS_NEEDED = 8 };

static int
width_of (EmRegisterTable *self, EmColumn column, int n_chars)
{
  int fixed = gtk_column_view_column_get_fixed_width (self->column[column]);
  g_autofree char *text = g_strnfill ((gsize) n_chars, 'n');

  return fixed > 0 ? fixed : MAX (text_width (self, text, FALSE), text_width (self, _(columns[column].title), TRUE));
}

static int
width_of_all (EmRegisterTable *self, int n_chars)
{
  int width = 0;

  for (int i = 0; i < N_COLUMN; i++)
    width += width_of (self, (EmColumn) i, n_chars);
  return width;
}

/* What the panel tells too is left out of a narrow table rather than have it scrolled sideways. */
static gboolean
fit (gpointer data)
{
  static const EmColumn may_go[] = { COLUMN_TOOL, COLUMN_DATE };
  EmRegisterTable *self = data;
  int room = gtk_widget_get_width (GTK_WIDGET (self)), needed = width_of_all (self, CHARS_NEEDED);

  self->fitting = 0;
  for (gsize i = 0; i < G_N_ELEMENTS (may_go); i++)
    {
      gboolean is_shown = needed <= room;
      if (!is_shown)
        needed -= width_of (self, may_go[i], CHARS_NEEDED);
      if (gtk_column_view_column_get_visible (self->column[may_go[i]]) != is_shown)
        gtk_column_view_column_set_visible (self->column[may_go[i]], is_shown);
    }
  return G_SOURCE_REMOVE;
}

/* NOLINTBEGIN(readability-non-const-parameter): GtkWidget's own. */
static void
em_register_table_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum, int *natural, int *minimum_baseline,
                           int *natural_baseline)
/* NOLINTEND(readability-non-const-parameter) */
{
  EmRegisterTable *self = EM_REGISTER_TABLE (widget);

  (void) minimum_baseline;
  (void) natural_baseline;
  gtk_widget_measure (self->scrolled, orientation, for_size, minimum, natural, NULL, NULL);
  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    *natural = MAX (*minimum, width_of_all (self, CHARS_WANTED));
}

/* Columns can't come and go while sizes are given out. */
static void
em_register_table_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  EmRegisterTable *self = EM_REGISTER_TABLE (widget);

  gtk_widget_size_allocate (self->scrolled, &(GtkAllocation) { 0, 0, width, height }, baseline);
  if (self->fitting == 0)
    self->fitting = g_idle_add_full (G_PRIORITY_HIGH_IDLE, fit, self, NULL);
}

static void
on_selected (EmRegisterTable *self)
{
  if (!self->is_filling)
    g_signal_emit (self, selected_signal, 0);
}

static void
on_activated (EmRegisterTable *self)
{
  g_signal_emit (self, activated_signal, 0);
}

static void
em_register_table_dispose (GObject *object)
{
  EmRegisterTable *self = EM_REGISTER_TABLE (object);

  if (self->fitting != 0)
    g_source_remove (self->fitting);
  self->fitting = 0;
  if (self->selection != NULL)
    g_signal_handlers_disconnect_by_data (self->selection, self);
  if (self->view != NULL)
    g_signal_handlers_disconnect_by_data (gtk_column_view_get_sorter (GTK_COLUMN_VIEW (self->view)), self);
  self->view = NULL;
  g_clear_pointer (&self->scrolled, gtk_widget_unparent);
  forget_order (self);
  g_clear_object (&self->selection);
  g_clear_object (&self->list);
  g_clear_object (&self->low);
  g_clear_object (&self->high);
  g_clear_pointer (&self->reg, em_register_unref);
  g_clear_pointer (&self->found, g_array_unref);
  G_OBJECT_CLASS (em_register_table_parent_class)->dispose (object);
}

static void
em_register_table_class_init (EmRegisterTableClass *class)
{
  G_OBJECT_CLASS (class)->dispose = em_register_table_dispose;
  GTK_WIDGET_CLASS (class)->measure = em_register_table_measure;
  GTK_WIDGET_CLASS (class)->size_allocate = em_register_table_size_allocate;
  selected_signal = g_signal_new ("selected", EM_TYPE_REGISTER_TABLE, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  activated_signal = g_signal_new ("activated", EM_TYPE_REGISTER_TABLE, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  sorted_signal = g_signal_new ("sorted", EM_TYPE_REGISTER_TABLE, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
em_register_table_init (EmRegisterTable *self)
{
  self->sort_column = NO_COLUMN;
  self->low = g_object_new (G_TYPE_OBJECT, NULL);
  self->high = g_object_new (G_TYPE_OBJECT, NULL);
  self->list = em_register_list_new ();
  self->selection = gtk_single_selection_new (G_LIST_MODEL (g_object_ref (self->list)));
  self->view = gtk_column_view_new (GTK_SELECTION_MODEL (g_object_ref (self->selection)));
  self->scrolled = gtk_scrolled_window_new ();
  gtk_widget_add_css_class (self->view, "register");
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->view), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Quotes found"), -1);
  for (int i = 0; i < N_COLUMN; i++)
    add_column (self, (EmColumn) i);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (self->scrolled), self->view);
  gtk_widget_set_parent (self->scrolled, GTK_WIDGET (self));
  gtk_widget_set_hexpand (GTK_WIDGET (self), TRUE);
  gtk_widget_set_vexpand (GTK_WIDGET (self), TRUE);
  g_signal_connect_swapped (gtk_column_view_get_sorter (GTK_COLUMN_VIEW (self->view)), "changed", G_CALLBACK (on_sorter_changed), self);
  g_signal_connect_swapped (self->selection, "notify::selected-item", G_CALLBACK (on_selected), self);
  g_signal_connect_swapped (self->view, "activate", G_CALLBACK (on_activated), self);
  recall (self);
  em_columns_align (GTK_COLUMN_VIEW (self->view));
}

GtkWidget *
em_register_table_new (void)
{
  return g_object_new (EM_TYPE_REGISTER_TABLE, NULL);
}

void
em_register_table_show (EmRegisterTable *self, EmRegister *reg, const GArray *found)
{
  EmRegister *old = self->reg;

  self->reg = reg != NULL ? em_register_ref (reg) : NULL;
  g_clear_pointer (&self->found, g_array_unref);
  self->found = g_array_new (FALSE, FALSE, sizeof (guint));
  if (found != NULL)
    g_array_append_vals (self->found, found->data, found->len);
  if (self->reg != old)
    {
      put_own_width (self, COLUMN_NUMBER);
      put_own_width (self, COLUMN_NET);
      gtk_widget_queue_resize (GTK_WIDGET (self));
    }
  g_clear_pointer (&old, em_register_unref);
  fill (self);
}

guint
em_register_table_count (EmRegisterTable *self)
{
  return g_list_model_get_n_items (G_LIST_MODEL (self->list));
}

void
em_register_table_select (EmRegisterTable *self, guint row)
{
  gtk_single_selection_set_selected (self->selection, row);
}

guint
em_register_table_get_index (EmRegisterTable *self, guint row)
{
  g_autoptr (EmRegisterItem) item = g_list_model_get_item (G_LIST_MODEL (self->list), row);

  return item != NULL ? em_register_item_get_index (item) : G_MAXUINT;
}

guint
em_register_table_get_selected (EmRegisterTable *self)
{
  EmRegisterItem *item = gtk_single_selection_get_selected_item (self->selection);

  return item != NULL ? em_register_item_get_index (item) : G_MAXUINT;
}

void
em_register_table_focus (EmRegisterTable *self)
{
  take_keyboard (self);
}

void
em_register_table_sort (EmRegisterTable *self, const char *column, gboolean is_descending)
{
  int found = find_column (column);

  gtk_column_view_sort_by_column (GTK_COLUMN_VIEW (self->view), found != NO_COLUMN ? self->column[found] : NULL,
                                  is_descending ? GTK_SORT_DESCENDING : GTK_SORT_ASCENDING);
}

const char *
em_register_table_get_sort (EmRegisterTable *self, gboolean *out_is_descending)
{
  *out_is_descending = self->sort_column != NO_COLUMN && self->is_descending;
  return self->sort_column != NO_COLUMN ? columns[self->sort_column].id : "";
}

const char *
em_register_table_column_id (guint column)
{
  return column < N_COLUMN ? columns[column].id : NULL;
}

const char *
em_register_table_column_title (guint column)
{
  return column < N_COLUMN ? _(columns[column].title) : NULL;
}
