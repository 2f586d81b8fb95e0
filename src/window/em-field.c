/* em-field: labelled fields other than numbers.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-field.h"

#include "em-points.h"
#include "em-steady.h"
#include "em-words.h"

#include <string.h>

GtkWidget *
em_field_box (const char *label, GtkWidget *widget)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  GtkWidget *name = gtk_label_new_with_mnemonic (label);

  gtk_label_set_xalign (GTK_LABEL (name), 0);
  gtk_label_set_ellipsize (GTK_LABEL (name), PANGO_ELLIPSIZE_END);
  gtk_label_set_mnemonic_widget (GTK_LABEL (name), widget);
  gtk_widget_add_css_class (name, "field-name");
  gtk_widget_set_tooltip_text (name, gtk_label_get_text (GTK_LABEL (name)));
  gtk_widget_set_valign (box, GTK_ALIGN_START);
  gtk_box_append (GTK_BOX (box), name);
  gtk_box_append (GTK_BOX (box), widget);
  gtk_accessible_update_relation (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_RELATION_LABELLED_BY, name, NULL, -1);
  return box;
}

void
em_field_wrap_check (GtkWidget *check_button)
{
  GtkWidget *label = gtk_widget_get_last_child (check_button);

  g_return_if_fail (GTK_IS_LABEL (label));
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  gtk_label_set_natural_wrap_mode (GTK_LABEL (label), GTK_NATURAL_WRAP_NONE);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
}

static gboolean
is_cut (GtkWidget *text, const char *content)
{
  g_autoptr (PangoLayout) layout = gtk_widget_create_pango_layout (text, content);
  int width;

  pango_layout_get_pixel_size (layout, &width, NULL);
  return width > gtk_widget_get_width (text);
}

static const char *
find_cut (GtkWidget *widget)
{
  if (GTK_IS_LABEL (widget))
    return gtk_widget_get_mapped (widget) && pango_layout_is_ellipsized (gtk_label_get_layout (GTK_LABEL (widget)))
             ? gtk_label_get_text (GTK_LABEL (widget)) : NULL;
  if (GTK_IS_TEXT (widget))
    return is_cut (widget, gtk_editable_get_text (GTK_EDITABLE (widget))) ? gtk_editable_get_text (GTK_EDITABLE (widget)) : NULL;
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL; child = gtk_widget_get_next_sibling (child))
    {
      const char *cut = GTK_IS_POPOVER (child) ? NULL : find_cut (child);
      if (cut != NULL)
        return cut;
    }
  return NULL;
}

static gboolean
on_query_tooltip (GtkWidget *widget, int x, int y, gboolean is_by_keyboard, GtkTooltip *tooltip, gpointer data)
{
  const char *cut = find_cut (widget);

  (void) x;
  (void) y;
  (void) is_by_keyboard;
  (void) data;
  gtk_tooltip_set_text (tooltip, cut);
  return cut != NULL;
}

void
em_field_tell_whole (GtkWidget *widget)
{
  gtk_widget_set_has_tooltip (widget, TRUE);
  g_signal_connect (widget, "query-tooltip", G_CALLBACK (on_query_tooltip), NULL);
}

GtkWidget *
em_field_text (const char *label, GtkWidget **out_entry)
{
  *out_entry = gtk_entry_new ();
  /* The document keeps the steps back. */
  gtk_editable_set_enable_undo (GTK_EDITABLE (*out_entry), FALSE);
  gtk_editable_set_width_chars (GTK_EDITABLE (*out_entry), 6);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (*out_entry), 10);
  gtk_widget_set_hexpand (*out_entry, TRUE);
  em_field_tell_whole (*out_entry);
  return em_field_box (label, *out_entry);
}

GtkWidget *
em_field_lines (const char *label, GtkWidget **out_view)
{
  GtkWidget *scrolled = gtk_scrolled_window_new ();
  GtkWidget *box;

  *out_view = gtk_text_view_new ();
  gtk_text_view_set_wrap_mode (GTK_TEXT_VIEW (*out_view), GTK_WRAP_WORD_CHAR);
  gtk_text_view_set_accepts_tab (GTK_TEXT_VIEW (*out_view), FALSE);
  gtk_text_buffer_set_enable_undo (gtk_text_view_get_buffer (GTK_TEXT_VIEW (*out_view)), FALSE);
  gtk_widget_add_css_class (*out_view, "lines");
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scrolled), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), *out_view);
  gtk_widget_add_css_class (scrolled, "sheet");
  gtk_widget_add_css_class (scrolled, "lines-frame");
  box = em_field_box (label, scrolled);
  gtk_label_set_mnemonic_widget (GTK_LABEL (gtk_widget_get_first_child (box)), *out_view);
  gtk_accessible_update_relation (GTK_ACCESSIBLE (*out_view), GTK_ACCESSIBLE_RELATION_LABELLED_BY, gtk_widget_get_first_child (box), NULL, -1);
  return box;
}

/* Long names give way instead of widening the pane. */
static void
on_setup (GtkSignalListItemFactory *factory, GtkListItem *item)
{
  GtkWidget *label = gtk_label_new (NULL);

  (void) factory;
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_label_set_width_chars (GTK_LABEL (label), 6);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 10);
  gtk_list_item_set_child (item, label);
}

/* In the list that drops down there is room for them whole. */
static void
on_setup_listed (GtkSignalListItemFactory *factory, GtkListItem *item)
{
  GtkWidget *label = gtk_label_new (NULL);

  (void) factory;
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_list_item_set_child (item, label);
}

static void
on_bind (GtkSignalListItemFactory *factory, GtkListItem *item)
{
  GtkStringObject *string = gtk_list_item_get_item (item);

  (void) factory;
  gtk_label_set_text (GTK_LABEL (gtk_list_item_get_child (item)), gtk_string_object_get_string (string));
}

static GtkListItemFactory *
name_factory (gboolean is_listed)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();

  g_signal_connect (factory, "setup", is_listed ? G_CALLBACK (on_setup_listed) : G_CALLBACK (on_setup), NULL);
  g_signal_connect (factory, "bind", G_CALLBACK (on_bind), NULL);
  return factory;
}

GtkWidget *
em_field_choice (const char *label, const char *const *options, GtkWidget **out_drop_down)
{
  g_autoptr (GtkListItemFactory) factory = name_factory (FALSE);
  g_autoptr (GtkListItemFactory) listed = name_factory (TRUE);

  *out_drop_down = gtk_drop_down_new_from_strings (options);
  gtk_drop_down_set_factory (GTK_DROP_DOWN (*out_drop_down), factory);
  gtk_drop_down_set_list_factory (GTK_DROP_DOWN (*out_drop_down), listed);
  gtk_widget_set_hexpand (*out_drop_down, TRUE);
  em_field_tell_whole (*out_drop_down);
  return em_field_box (label, *out_drop_down);
}

static gboolean
has_options (GtkWidget *drop_down, const char *const *options)
{
  GtkStringList *list = GTK_STRING_LIST (gtk_drop_down_get_model (GTK_DROP_DOWN (drop_down)));
  guint n = g_list_model_get_n_items (G_LIST_MODEL (list));

  for (guint i = 0; i < n; i++)
    if (options[i] == NULL || !g_str_equal (options[i], gtk_string_list_get_string (list, i)))
      return FALSE;
  return options[n] == NULL;
}

/* GTK 4.8 falls over a list that is exchanged while one of it is being chosen: the same is left as it is. */
void
em_field_set_options (GtkWidget *drop_down, const char *const *options)
{
  if (has_options (drop_down, options))
    return;

  g_autoptr (GtkStringList) list = gtk_string_list_new (options);

  gtk_drop_down_set_model (GTK_DROP_DOWN (drop_down), G_LIST_MODEL (list));
}

void
em_field_put_text (GtkWidget *entry, const char *text, gpointer data)
{
  if (text == NULL)
    text = "";
  if (g_str_equal (text, gtk_editable_get_text (GTK_EDITABLE (entry))))
    return;
  g_signal_handlers_block_matched (entry, G_SIGNAL_MATCH_DATA, 0, 0, NULL, NULL, data);
  gtk_editable_set_text (GTK_EDITABLE (entry), text);
  g_signal_handlers_unblock_matched (entry, G_SIGNAL_MATCH_DATA, 0, 0, NULL, NULL, data);
}

void
em_field_put_lines (GtkWidget *view, const char *text, gpointer data)
{
  GtkTextBuffer *buffer = gtk_text_view_get_buffer (GTK_TEXT_VIEW (view));
  GtkTextIter start, end;

  gtk_text_buffer_get_bounds (buffer, &start, &end);
  g_autofree char *shown = gtk_text_buffer_get_text (buffer, &start, &end, TRUE);
  if (g_str_equal (shown, text != NULL ? text : ""))
    return;
  g_signal_handlers_block_matched (buffer, G_SIGNAL_MATCH_DATA, 0, 0, NULL, NULL, data);
  gtk_text_buffer_set_text (buffer, text != NULL ? text : "", -1);
  g_signal_handlers_unblock_matched (buffer, G_SIGNAL_MATCH_DATA, 0, 0, NULL, NULL, data);
}

void
em_field_put_choice (GtkWidget *drop_down, guint selected, gpointer data)
{
  if (gtk_drop_down_get_selected (GTK_DROP_DOWN (drop_down)) == selected)
    return;
  g_signal_handlers_block_matched (drop_down, G_SIGNAL_MATCH_DATA, 0, 0, NULL, NULL, data);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (drop_down), selected);
  g_signal_handlers_unblock_matched (drop_down, G_SIGNAL_MATCH_DATA, 0, 0, NULL, NULL, data);
}

/* Where the decimal mark stands, or NULL: the last mark, unless it groups thousands. */
static const char *
find_mark (const char *text, int digits)
{
  const char *mark = NULL;
  int n_marks = 0;

  for (const char *c = text; *c != '\0'; c++)
    if (*c == '.' || *c == ',')
      {
        mark = c;
        n_marks++;
      }
  if (mark == NULL || digits == 0)
    return NULL;
  gsize n_after = strlen (mark + 1);
  /* "1.250" of a currency with two digits groups; "1.250" of one with three is a decimal. */
  if (n_after == 3 && digits != 3)
    return NULL;
  return n_after <= (gsize) digits || n_marks == 1 ? mark : NULL;
}

/* Figures in [text, end), grouped by threes or not at all, times ten each onto *minor. Grouping by the decimal mark, or
 * behind a leading zero, is no number: "0.125" euros is not 125. */
static gboolean
read_whole (const char *text, const char *end, char mark, int64_t *minor)
{
  char separator = '\0';
  int n_group = 0;

  for (const char *c = text; c < end; c++)
    if (g_ascii_isdigit (*c))
      {
        if (__builtin_mul_overflow (*minor, 10, minor) || __builtin_add_overflow (*minor, *c - '0', minor))
          return FALSE;
        n_group++;
      }
    else
      {
        if (strchr ("., '", *c) == NULL || *c == mark || (separator == '\0' ? n_group < 1 || n_group > 3 || *text == '0' : *c != separator || n_group != 3))
          return FALSE;
        separator = *c;
        n_group = 0;
      }
  return separator == '\0' || n_group == 3;
}

gboolean
em_money_read (const char *text, const EmCurrency *currency, int64_t *out_minor)
{
  g_autoptr (GString) amount = g_string_new (text);
  const char *mark, *end;
  int64_t minor = 0;
  int n_after = 0;

  /* Blanks and apostrophes that keep together what belongs together. */
  g_string_replace (amount, "\302\240", " ", 0);
  g_string_replace (amount, "\342\200\257", " ", 0);
  g_string_replace (amount, "\342\200\231", "'", 0);
  g_strstrip (amount->str);
  end = amount->str + strlen (amount->str);
  mark = find_mark (amount->str, currency->digits);
  if (strpbrk (amount->str, "0123456789") == NULL || !read_whole (amount->str, mark != NULL ? mark : end, mark != NULL ? *mark : '\0', &minor))
    return FALSE;
  for (const char *c = mark != NULL ? mark + 1 : end; c < end; c++, n_after++)
    if (!g_ascii_isdigit (*c) || n_after == currency->digits || __builtin_mul_overflow (minor, 10, &minor)
        || __builtin_add_overflow (minor, *c - '0', &minor))
      return FALSE;
  for (; n_after < currency->digits; n_after++)
    if (__builtin_mul_overflow (minor, 10, &minor))
      return FALSE;
  *out_minor = minor;
  return TRUE;
}

char *
em_money_write (int64_t minor, const EmCurrency *currency)
{
  char mark = g_str_equal (em_words_language (), "en") ? '.' : ',';
  int64_t unit = 1;

  for (int i = 0; i < currency->digits; i++)
    unit *= 10;
  if (currency->digits == 0)
    return g_strdup_printf ("%" G_GINT64_FORMAT, minor);
  return g_strdup_printf ("%" G_GINT64_FORMAT "%c%0*" G_GINT64_FORMAT, minor / unit, mark, currency->digits, minor % unit);
}

char *
em_field_keep_figures (const char *text)
{
  GString *kept = g_string_new (NULL);
  gsize from = 0;

  for (gssize at = em_points_next (text, 0); at >= 0; at = em_points_next (text, from))
    {
      g_string_append_len (kept, text + from, at + 1 - (gssize) from);
      g_string_append (kept, "\342\201\240");
      from = (gsize) at + 1;
    }
  g_string_append (kept, text + from);
  return g_string_free (kept, FALSE);
}

GtkWidget *
em_fold_new (const char *name, GtkWidget *child)
{
  GtkWidget *fold = gtk_expander_new (NULL);
  GtkWidget *label = gtk_label_new_with_mnemonic (name);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  gtk_label_set_natural_wrap_mode (GTK_LABEL (label), GTK_NATURAL_WRAP_NONE);
  gtk_label_set_mnemonic_widget (GTK_LABEL (label), fold);
  gtk_expander_set_label_widget (GTK_EXPANDER (fold), em_steady_new (label));
  gtk_widget_set_margin_top (child, 6);
  gtk_expander_set_child (GTK_EXPANDER (fold), child);
  gtk_accessible_update_relation (GTK_ACCESSIBLE (fold), GTK_ACCESSIBLE_RELATION_LABELLED_BY, label, NULL, -1);
  return fold;
}

void
em_fold_set_name (GtkWidget *fold, const char *name)
{
  GtkWidget *label = gtk_widget_get_first_child (gtk_expander_get_label_widget (GTK_EXPANDER (fold)));

  gtk_label_set_text (GTK_LABEL (label), name);
  gtk_widget_set_tooltip_text (label, name);
}

static void
make_menu (GtkMenuButton *button, gpointer model)
{
  if (gtk_menu_button_get_popover (button) == NULL)
    gtk_menu_button_set_menu_model (button, model);
}

void
em_menu_set_late (GtkWidget *menu_button, GMenuModel *model)
{
  gtk_menu_button_set_create_popup_func (GTK_MENU_BUTTON (menu_button), make_menu, g_object_ref (model), g_object_unref);
}
