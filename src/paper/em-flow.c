/* em-flow: building rows, and drawing them.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-flow-private.h"

#include "em-paper.h"
#include "em-points.h"
#include "em-words.h"

#include <math.h>
#include <string.h>

#define SOFT_HYPHEN "\302\255"   /* U+00AD */
#define FAMILIES "Source Sans 3, Source Sans Pro, Open Sans, Noto Sans, DejaVu Sans, sans-serif"

static const struct { double size_pt; PangoWeight weight; double line_spacing; } styles[EM_N_TEXT] =
{
  [EM_TEXT_BODY]         = { 8.5, PANGO_WEIGHT_NORMAL, 1.12 },
  [EM_TEXT_STRONG]       = { 8.5, PANGO_WEIGHT_BOLD, 1.12 },
  [EM_TEXT_QUIET]        = { 7.5, PANGO_WEIGHT_NORMAL, 1.12 },
  [EM_TEXT_SMALL]        = { 7.0, PANGO_WEIGHT_NORMAL, 1.12 },
  [EM_TEXT_SMALL_STRONG] = { 7.0, PANGO_WEIGHT_BOLD, 1.12 },
  [EM_TEXT_LABEL]        = { 7.0, PANGO_WEIGHT_NORMAL, 1.0 },
  [EM_TEXT_HEADING]      = { 10.5, PANGO_WEIGHT_BOLD, 1.0 },
  [EM_TEXT_TITLE]        = { 21.0, PANGO_WEIGHT_NORMAL, 1.0 },
  [EM_TEXT_SHOP]         = { 13.0, PANGO_WEIGHT_BOLD, 1.0 },
  [EM_TEXT_SUM]          = { 11.0, PANGO_WEIGHT_BOLD, 1.0 },
};

/* Light enough to print as a grey that leaves black text readable. */
static const EmColour inks[EM_N_INK_COLOUR] =
{
  [EM_INK_TEXT]   = { 0.10, 0.11, 0.12, 1 },
  [EM_INK_QUIET]  = { 0.36, 0.37, 0.39, 1 },
  [EM_INK_ACCENT] = { EM_ACCENT_RED, EM_ACCENT_GREEN, EM_ACCENT_BLUE, 1 },
  [EM_INK_LINE]   = { 0.74, 0.74, 0.75, 1 },
  [EM_INK_TINT]   = { 0.955, 0.945, 0.935, 1 },
};

static char *font_family;

void
em_paper_set_font (const char *family)
{
  g_free (font_family);
  font_family = family != NULL ? g_strdup_printf ("%s, %s", family, FAMILIES) : NULL;
}

const char *
em_flow_font (void)
{
  return font_family != NULL ? font_family : FAMILIES;
}

static void
clear_item (gpointer data)
{
  EmItem *item = data;

  g_clear_object (&item->layout);
  if (item->free_data != NULL)
    item->free_data (item->data);
  g_free (item->link);
}

void
em_row_free (EmRow *row)
{
  g_array_unref (row->items);
  g_free (row->bookmark);
  g_free (row->dest);
  g_free (row);
}

EmRow *
em_row_new (void)
{
  EmRow *row = g_new0 (EmRow, 1);

  row->items = g_array_new (FALSE, TRUE, sizeof (EmItem));
  g_array_set_clear_func (row->items, clear_item);
  row->table = -1;
  return row;
}

/* Printed pages are laid out in points without hinting, so that they are the same at any scale. One map for all flows keeps
 * the fonts it loaded. */
static PangoContext *
make_context (void)
{
  static PangoFontMap *map;
  PangoContext *context;
  cairo_font_options_t *options = cairo_font_options_create ();

  if (map == NULL)
    {
      map = pango_cairo_font_map_new ();
      pango_cairo_font_map_set_resolution (PANGO_CAIRO_FONT_MAP (map), 72);
    }
  context = pango_font_map_create_context (map);
  cairo_font_options_set_hint_style (options, CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_hint_metrics (options, CAIRO_HINT_METRICS_OFF);
  cairo_font_options_set_antialias (options, CAIRO_ANTIALIAS_GRAY);
  pango_cairo_context_set_font_options (context, options);
  pango_context_set_round_glyph_positions (context, FALSE);
  cairo_font_options_destroy (options);
  return context;
}

EmFlow *
em_flow_new (double width, double height, double margin_left, double margin_right, double margin_top, double margin_bottom)
{
  EmFlow *flow = g_new0 (EmFlow, 1);

  flow->width = width;
  flow->height = height;
  flow->left = margin_left;
  flow->right = margin_right;
  flow->top = margin_top;
  flow->bottom = margin_bottom;
  flow->context = make_context ();
  flow->rows = g_ptr_array_new_with_free_func ((GDestroyNotify) em_row_free);
  flow->made = g_ptr_array_new_with_free_func ((GDestroyNotify) em_row_free);
  flow->tables = g_array_new (FALSE, TRUE, sizeof (EmTable));
  flow->placed = g_array_new (FALSE, TRUE, sizeof (EmPlaced));
  flow->page_start = g_array_new (FALSE, TRUE, sizeof (guint));
  flow->bookmarks = g_array_new (FALSE, TRUE, sizeof (EmBookmark));
  flow->table = -1;
  for (int i = 0; i < EM_N_TEXT; i++)
    {
      flow->font[i] = pango_font_description_from_string (em_flow_font ());
      pango_font_description_set_absolute_size (flow->font[i], styles[i].size_pt * PANGO_SCALE);
      pango_font_description_set_weight (flow->font[i], styles[i].weight);
    }
  flow->attributes = pango_attr_list_new ();
  pango_attr_list_insert (flow->attributes, pango_attr_font_features_new ("tnum=1, lnum=1"));
  return flow;
}

void
em_flow_free (EmFlow *flow)
{
  if (flow == NULL)
    return;
  for (int i = 0; i < EM_N_TEXT; i++)
    pango_font_description_free (flow->font[i]);
  pango_attr_list_unref (flow->attributes);
  g_ptr_array_unref (flow->rows);
  g_ptr_array_unref (flow->made);
  g_array_unref (flow->tables);
  g_array_unref (flow->placed);
  g_array_unref (flow->page_start);
  g_array_unref (flow->bookmarks);
  g_object_unref (flow->context);
  g_free (flow->head_left);
  g_free (flow->head_right);
  g_free (flow->foot);
  g_free (flow->page_format);
  g_free (flow);
}

double
em_flow_width (const EmFlow *flow)
{
  return flow->width - flow->left - flow->right;
}

static void
set_text (EmFlow *flow, PangoLayout *layout, const char *text)
{
  PangoAttrList *barred = em_points_bar (flow->attributes, text);

  pango_layout_set_attributes (layout, barred != NULL ? barred : flow->attributes);
  g_clear_pointer (&barred, pango_attr_list_unref);
  pango_layout_set_text (layout, text, -1);
}

/* Long words part at their joints. Only the soft hyphens that a line does end with stay in the text: the others would be in
 * the way of whoever searches the pages. */
static void
hyphenate (EmFlow *flow, PangoLayout *layout, const char *text)
{
  g_autofree char *parted = em_words_hyphenate (text);
  g_autoptr (GString) kept = NULL;

  if (parted == NULL)
    return;
  set_text (flow, layout, parted);
  kept = g_string_new (NULL);
  for (GSList *at = pango_layout_get_lines_readonly (layout); at != NULL; at = at->next)
    {
      const PangoLayoutLine *line = at->data;
      const char *start = parted + line->start_index, *end = start + line->length, *stop = at->next != NULL ? parted + ((PangoLayoutLine *) at->next->data)->start_index
                                                                                                             : parted + strlen (parted);

      for (const char *c = start; c < stop; c = g_utf8_next_char (c))
        if (strncmp (c, SOFT_HYPHEN, strlen (SOFT_HYPHEN)) != 0 || (c + strlen (SOFT_HYPHEN) == end && at->next != NULL))
          g_string_append_len (kept, c, g_utf8_next_char (c) - c);
    }
  set_text (flow, layout, kept->str);
}

PangoLayout *
em_flow_layout (EmFlow *flow, EmTextStyle style, const char *text, double width, EmAlign align)
{
  PangoLayout *layout = pango_layout_new (flow->context);

  pango_layout_set_font_description (layout, flow->font[style]);
  pango_layout_set_line_spacing (layout, (float) styles[style].line_spacing);
  set_text (flow, layout, text != NULL ? text : "");
  if (width > 0)
    {
      pango_layout_set_width (layout, (int) (width * PANGO_SCALE));
      pango_layout_set_wrap (layout, PANGO_WRAP_WORD_CHAR);
      if (text != NULL && pango_layout_get_line_count (layout) > 1)
        hyphenate (flow, layout, text);
    }
  pango_layout_set_alignment (layout, align == EM_ALIGN_RIGHT ? PANGO_ALIGN_RIGHT : align == EM_ALIGN_CENTRE ? PANGO_ALIGN_CENTER : PANGO_ALIGN_LEFT);
  return layout;
}

double
em_layout_height (PangoLayout *layout)
{
  int height;

  pango_layout_get_size (layout, NULL, &height);
  return (double) height / PANGO_SCALE;
}

double
em_layout_width (PangoLayout *layout)
{
  int width;

  pango_layout_get_size (layout, &width, NULL);
  return (double) width / PANGO_SCALE;
}

EmRow *
em_flow_row (EmFlow *flow)
{
  EmRow *row = em_row_new ();

  row->table = flow->table;
  g_ptr_array_add (flow->rows, row);
  if (flow->table >= 0 && !flow->has_heading)
    {
      row->is_table_heading = row->keep_next = TRUE;
      g_array_index (flow->tables, EmTable, flow->table).heading = row;
      flow->has_heading = TRUE;
    }
  return row;
}

EmRow *
em_flow_last_row (EmFlow *flow)
{
  return g_ptr_array_index (flow->rows, flow->rows->len - 1);
}

guint
em_flow_n_rows (const EmFlow *flow)
{
  return flow->rows->len;
}

void
em_flow_keep (EmFlow *flow, guint first, guint last)
{
  for (guint i = first; i < MIN (last, flow->rows->len); i++)
    ((EmRow *) g_ptr_array_index (flow->rows, i))->keep_next = TRUE;
}

guint
em_flow_chain_start (const EmFlow *flow)
{
  guint first = flow->rows->len > 0 ? flow->rows->len - 1 : 0;

  for (; first > 0; first--)
    {
      const EmRow *before = g_ptr_array_index (flow->rows, first - 1);
      if (!before->keep_next && !before->wish_next)
        break;
    }
  return first;
}

void
em_flow_wish (EmFlow *flow, guint first, guint last)
{
  for (guint i = first; i < MIN (last, flow->rows->len); i++)
    ((EmRow *) g_ptr_array_index (flow->rows, i))->wish_next = TRUE;
}

static void
grow (EmRow *row, double bottom)
{
  row->height = MAX (row->height, bottom);
}

void
em_row_text_take (EmRow *row, PangoLayout *layout, EmInkColour ink, double x, double y)
{
  EmItem item = { .type = EM_ITEM_TEXT, .layout = layout, .ink = ink, .x = x, .y = y, .n_lines = -1 };

  g_array_append_val (row->items, item);
  grow (row, y + em_layout_height (layout));
}

/* Height of a line as Pango would advance it, line spacing in it. */
static double
line_height (PangoLayout *layout)
{
  return em_layout_height (layout) / pango_layout_get_line_count (layout);
}

void
em_row_lines_take (EmRow *row, PangoLayout *layout, EmInkColour ink, double x, double y, int first, int n_lines)
{
  EmItem item = { .type = EM_ITEM_TEXT, .layout = layout, .ink = ink, .x = x, .y = y, .first = first, .n_lines = n_lines };

  g_array_append_val (row->items, item);
  grow (row, y + n_lines * line_height (layout));
}

void
em_row_rule (EmRow *row, EmInkColour ink, double x0, double y0, double x1, double y1, double line_width)
{
  EmItem item = { .type = EM_ITEM_RULE, .ink = ink, .x = x0, .y = y0, .width = x1, .height = y1, .line_width = line_width };

  g_array_append_val (row->items, item);
  grow (row, MAX (y0, y1));
}

void
em_row_box (EmRow *row, EmInkColour ink, double x, double y, double width, double height, gboolean is_filled)
{
  EmItem item = { .type = is_filled ? EM_ITEM_FILL : EM_ITEM_FRAME, .ink = ink, .x = x, .y = y, .width = width, .height = height, .line_width = 0.6 };

  g_array_append_val (row->items, item);
  grow (row, y + height);
}

void
em_row_draw (EmRow *row, double x, double y, double width, double height, EmDrawFunc draw, gpointer data, GDestroyNotify free_data)
{
  EmItem item = { .type = EM_ITEM_DRAW, .x = x, .y = y, .width = width, .height = height, .draw = draw, .data = data, .free_data = free_data };

  g_array_append_val (row->items, item);
  grow (row, y + height);
}

static void
/* NOLINTNEXTLINE(readability-non-const-parameter): the row frees it. */
add_link (EmRow *row, double x, double y, double width, double height, char *take_link)
{
  EmItem item = { .type = EM_ITEM_LINK, .x = x, .y = y, .width = width, .height = height, .link = take_link };

  g_array_append_val (row->items, item);
}

/* Letters, digits and the signs addresses need; so nothing has to be escaped in cairo's attributes. */
static gboolean
is_address (const char *text)
{
  return text[0] != '\0' && text[strspn (text, "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-._~:/?#@&=+%")] == '\0';
}

void
em_row_link_dest (EmRow *row, double x, double y, double width, double height, const char *dest)
{
  add_link (row, x, y, width, height, g_strdup_printf ("dest='%s'", dest));
}

void
em_row_link_email (EmRow *row, double x, double y, double width, double height, const char *email)
{
  if (is_address (email) && strchr (email, '@') != NULL)
    add_link (row, x, y, width, height, g_strdup_printf ("uri='mailto:%s'", email));
}

void
em_row_link_web (EmRow *row, double x, double y, double width, double height, const char *web)
{
  gboolean has_scheme = g_str_has_prefix (web, "https://") || g_str_has_prefix (web, "http://");

  if (is_address (web) && strchr (web, '.') != NULL)
    add_link (row, x, y, width, height, g_strdup_printf ("uri='%s%s'", has_scheme ? "" : "https://", web));
}

/* Lines of one paragraph as rows: the first two and the last two stay together. */
static void
add_lines (EmFlow *flow, PangoLayout *layout, EmInkColour ink, double x, double space_before)
{
  int n_lines = pango_layout_get_line_count (layout);

  for (int i = 0; i < n_lines; i++)
    {
      EmRow *row = em_flow_row (flow);

      em_row_lines_take (row, g_object_ref (layout), ink, x, 0, i, 1);
      row->space_before = i == 0 ? space_before : 0;
      row->keep_next = n_lines > 1 && (i == 0 || i == n_lines - 2);
    }
}

void
em_flow_paragraph (EmFlow *flow, EmTextStyle style, EmInkColour ink, const char *text, double x, double width, double space_before)
{
  g_auto (GStrv) parts = g_strsplit (text != NULL ? text : "", "\n", -1);

  for (int i = 0; parts[i] != NULL; i++)
    {
      g_autoptr (PangoLayout) layout = em_flow_layout (flow, style, parts[i], width, EM_ALIGN_LEFT);

      add_lines (flow, layout, ink, x, i == 0 ? space_before : 1.5);
    }
}

void
em_flow_begin_table (EmFlow *flow, const EmCarry *carry)
{
  EmTable table = { 0 };

  g_return_if_fail (flow->table < 0);
  if (carry != NULL)
    {
      table.has_carry = TRUE;
      table.carry = *carry;
    }
  g_array_append_val (flow->tables, table);
  flow->table = (int) flow->tables->len - 1;
  flow->has_heading = FALSE;
}

void
em_flow_end_table (EmFlow *flow)
{
  flow->table = -1;
}

void
em_flow_set_running (EmFlow *flow, const char *head_left, const char *head_right, const char *foot, const char *page_format)
{
  flow->head_left = g_strdup (head_left);
  flow->head_right = g_strdup (head_right);
  flow->foot = g_strdup (foot);
  flow->page_format = g_strdup (page_format);
}

int
em_flow_pages (const EmFlow *flow)
{
  return (int) flow->page_start->len;
}

GArray *
em_flow_bookmarks (const EmFlow *flow)
{
  return flow->bookmarks;
}

static void
set_ink (cairo_t *cr, EmInkColour ink)
{
  cairo_set_source_rgba (cr, inks[ink].red, inks[ink].green, inks[ink].blue, inks[ink].alpha);
}

static void
draw_lines (cairo_t *cr, const EmItem *item)
{
  PangoLayoutIter *iter = pango_layout_get_iter (item->layout);
  int line = 0, top = 0;

  do
    {
      PangoRectangle logical;
      int baseline = pango_layout_iter_get_baseline (iter);

      pango_layout_iter_get_line_extents (iter, NULL, &logical);
      if (line == item->first)
        top = logical.y;
      if (line >= item->first && line < item->first + item->n_lines)
        {
          cairo_move_to (cr, item->x + (double) logical.x / PANGO_SCALE, item->y + (double) (baseline - top) / PANGO_SCALE);
          pango_cairo_show_layout_line (cr, pango_layout_iter_get_line_readonly (iter));
        }
      line++;
    }
  while (line < item->first + item->n_lines && pango_layout_iter_next_line (iter));
  pango_layout_iter_free (iter);
}

static void
draw_text (cairo_t *cr, const EmItem *item)
{
  set_ink (cr, item->ink);
  if (item->n_lines >= 0)
    {
      draw_lines (cr, item);
      return;
    }
  cairo_move_to (cr, item->x, item->y);
  pango_cairo_show_layout (cr, item->layout);
}

static void
draw_shape (cairo_t *cr, const EmItem *item)
{
  set_ink (cr, item->ink);
  cairo_set_line_width (cr, item->line_width);
  if (item->type == EM_ITEM_RULE)
    {
      cairo_move_to (cr, item->x, item->y);
      cairo_line_to (cr, item->width, item->height);
    }
  else
    cairo_rectangle (cr, item->x, item->y, item->width, item->height);
  if (item->type == EM_ITEM_FILL)
    cairo_fill (cr);
  else
    cairo_stroke (cr);
}

/* "[12.00 80.50]": with a point whatever the locale. */
static void
append_numbers (GString *text, const double *numbers, int n)
{
  for (int i = 0; i < n; i++)
    {
      char buffer[G_ASCII_DTOSTR_BUF_SIZE];

      g_string_append_printf (text, "%s%s", i == 0 ? "" : " ", g_ascii_formatd (buffer, sizeof buffer, "%.2f", numbers[i]));
    }
}

/* An empty tag at places of the page itself: cairo 1.16 takes them so whatever the transformation, later ones by it. */
static void
mark_place (cairo_t *cr, const char *tag, const char *attributes)
{
  cairo_save (cr);
  cairo_identity_matrix (cr);
  cairo_tag_begin (cr, tag, attributes);
  cairo_tag_end (cr, tag);
  cairo_restore (cr);
}

static void
draw_link (cairo_t *cr, const EmItem *item)
{
  g_autoptr (GString) attributes = g_string_new ("rect=[");
  double rect[4] = { item->x, item->y, item->width, item->height };

  cairo_user_to_device (cr, &rect[0], &rect[1]);
  append_numbers (attributes, rect, 4);
  g_string_append_printf (attributes, "] %s", item->link);
  mark_place (cr, CAIRO_TAG_LINK, attributes->str);
}

static void
draw_dest (cairo_t *cr, const char *dest)
{
  g_autoptr (GString) attributes = g_string_new (NULL);
  double x = 0, y = 0;

  cairo_user_to_device (cr, &x, &y);
  g_string_append_printf (attributes, "name='%s' x=", dest);
  append_numbers (attributes, &x, 1);
  g_string_append (attributes, " y=");
  append_numbers (attributes, &y, 1);
  mark_place (cr, CAIRO_TAG_DEST, attributes->str);
}

static void
draw_picture (cairo_t *cr, const EmItem *item)
{
  cairo_save (cr);
  cairo_translate (cr, item->x, item->y);
  item->draw (cr, item->width, item->height, item->data);
  cairo_restore (cr);
}

/* What a text is to a reader that speaks (ISO 32000-1, 14.8.4). */
static const char *
text_tag (const EmRow *row)
{
  if (row->table >= 0)
    return row->is_table_heading ? "TH" : "TD";
  return row->bookmark == NULL ? "P" : row->bookmark_level == 1 ? "H1" : "H2";
}

static void
draw_items (cairo_t *cr, const EmRow *row)
{
  const char *tag = text_tag (row);

  for (guint i = 0; i < row->items->len; i++)
    {
      const EmItem *item = &g_array_index (row->items, EmItem, i);

      if (item->type == EM_ITEM_LINK)
        draw_link (cr, item);
      else if (item->type != EM_ITEM_TEXT && item->type != EM_ITEM_DRAW)
        draw_shape (cr, item);
      else
        {
          const char *what = item->type == EM_ITEM_TEXT ? tag : "Figure";

          cairo_tag_begin (cr, what, NULL);
          (item->type == EM_ITEM_TEXT ? draw_text : draw_picture) (cr, item);
          cairo_tag_end (cr, what);
        }
    }
}

static void
draw_row (cairo_t *cr, const EmRow *row)
{
  if (row->dest != NULL)
    draw_dest (cr, row->dest);
  if (row->table >= 0)
    cairo_tag_begin (cr, "TR", NULL);
  draw_items (cr, row);
  if (row->table >= 0)
    cairo_tag_end (cr, "TR");
}

/* A table that runs on is one more table on the next page: its heading is there again. */
static void
change_table (cairo_t *cr, int *open, int table)
{
  if (*open == table)
    return;
  if (*open >= 0)
    cairo_tag_end (cr, "Table");
  if (table >= 0)
    cairo_tag_begin (cr, "Table", NULL);
  *open = table;
}

static void
show (EmFlow *flow, cairo_t *cr, const char *text, double y, EmAlign align, double share)
{
  g_autoptr (PangoLayout) layout = NULL;

  if (text == NULL)
    return;
  layout = em_flow_layout (flow, EM_TEXT_SMALL, text, 0, EM_ALIGN_LEFT);
  if (em_layout_width (layout) > em_flow_width (flow) * share)
    {
      pango_layout_set_width (layout, (int) (em_flow_width (flow) * share * PANGO_SCALE));
      pango_layout_set_ellipsize (layout, PANGO_ELLIPSIZE_END);
    }
  set_ink (cr, EM_INK_QUIET);
  cairo_move_to (cr, align == EM_ALIGN_RIGHT ? flow->width - flow->right - em_layout_width (layout) : flow->left, y);
  pango_cairo_show_layout (cr, layout);
}

static void
draw_running (EmFlow *flow, cairo_t *cr, int page)
{
  /* page_format has two whole numbers: this page and all pages. It comes translated from our own catalogs. */
  _Pragma ("GCC diagnostic push")
  _Pragma ("GCC diagnostic ignored \"-Wformat-nonliteral\"")
  g_autofree char *number = g_strdup_printf (flow->page_format, page + 1, em_flow_pages (flow));
  _Pragma ("GCC diagnostic pop")
  double foot_y = flow->height - flow->bottom + 14;

  if (page > 0)
    {
      show (flow, cr, flow->head_left, flow->top - 22, EM_ALIGN_LEFT, 0.6);
      show (flow, cr, flow->head_right, flow->top - 22, EM_ALIGN_RIGHT, 0.37);
    }
  show (flow, cr, flow->foot, foot_y, EM_ALIGN_LEFT, 0.7);
  show (flow, cr, number, foot_y, EM_ALIGN_RIGHT, 0.28);
}

void
em_flow_draw (EmFlow *flow, int page, cairo_t *cr)
{
  guint from, to;
  int table = -1;

  g_return_if_fail (page >= 0 && page < em_flow_pages (flow));
  from = g_array_index (flow->page_start, guint, page);
  to = page + 1 < em_flow_pages (flow) ? g_array_index (flow->page_start, guint, page + 1) : flow->placed->len;
  cairo_save (cr);
  for (guint i = from; i < to; i++)
    {
      const EmPlaced *placed = &g_array_index (flow->placed, EmPlaced, i);

      change_table (cr, &table, placed->row->table);
      cairo_save (cr);
      cairo_translate (cr, flow->left, placed->y);
      draw_row (cr, placed->row);
      cairo_restore (cr);
    }
  change_table (cr, &table, -1);
  draw_running (flow, cr, page);
  cairo_restore (cr);
}
