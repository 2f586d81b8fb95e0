/* em-sheet: the parts both sheets are made of.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-sheet.h"

#include "em-logo.h"
#include "em-words.h"

#include <glib/gi18n.h>
#include <math.h>
#include <string.h>

#define FACT_LINES   10
#define SHOP_LINES   6
#define NAME_MAX_CHARACTERS 160   /* where a feature is only referred to; where it is quoted its name is whole */
#define CELL_HEIGHT  230.0   /* a row grows no taller by its text */

const char *
em_sheet_text (const EmPaperSheet *sheet, EmQuoteText which)
{
  return sheet->source->quote->text[which];
}

const char *
em_sheet_shop (const EmPaperSheet *sheet, EmShopText which)
{
  return sheet->source->rates->text[which];
}

int32_t
em_sheet_count_features (const EmPaperSheet *sheet)
{
  return sheet->source->quote->n_features;
}

int32_t
em_sheet_count_marks (const EmPaperSheet *sheet)
{
  return sheet->source->quote->n_marks;
}

const EmBase *
em_sheet_base (const EmPaperSheet *sheet)
{
  const char *id = em_sheet_text (sheet, EM_QUOTE_BASE);
  int32_t index = id != NULL ? em_catalogue_find_base (sheet->source->catalogue, id) : -1;

  return index >= 0 ? &sheet->source->catalogue->base[index] : NULL;
}

double
em_sheet_hardness_hrc (const EmPaperSheet *sheet)
{
  const EmBase *base = em_sheet_base (sheet);

  if (!em_is_absent (sheet->source->quote->hardness_hrc) || base == NULL)
    return sheet->source->quote->hardness_hrc;
  return (base->hardness_low_hrc + base->hardness_high_hrc) / 2;
}

char *
em_sheet_base_name (const EmPaperSheet *sheet)
{
  const EmBase *base = em_sheet_base (sheet);
  double hardness = em_sheet_hardness_hrc (sheet);
  g_autofree char *figure = NULL;

  if (base == NULL)
    return NULL;
  if (em_is_absent (hardness))
    return g_strdup (base->designation);
  figure = em_words_figure (hardness, 3);
  return g_strdup_printf ("%s, %s" EM_NBSP "HRC", base->designation, figure);
}

char *
em_sheet_short_name (const EmPaperSheet *sheet, int32_t index)
{
  g_autofree char *name = em_words_feature_name (sheet->source->quote, index);
  g_autofree char *start = NULL;

  if (g_utf8_strlen (name, -1) <= NAME_MAX_CHARACTERS)
    return g_steal_pointer (&name);
  start = g_utf8_substring (name, 0, NAME_MAX_CHARACTERS - 1);
  return g_strconcat (start, "…", NULL);
}

char *
em_sheet_mark_words (const EmPaperSheet *sheet, const EmMark *mark)
{
  const char *notes = em_sheet_text (sheet, EM_QUOTE_NOTES);
  g_autofree char *words = NULL;

  if (notes == NULL || (gsize) mark->start + mark->length > strlen (notes))
    return NULL;
  words = g_strndup (notes + mark->start, mark->length);
  return g_utf8_make_valid (g_strstrip (words), -1);
}

void
em_sheet_right_take (EmRow *row, PangoLayout *layout, EmInkColour ink, double right, double y)
{
  em_row_text_take (row, layout, ink, right - em_layout_width (layout), y);
}

/* The first lines of text; what follows gives way to an ellipsis. */
static char *
first_lines (const char *text, int n_lines)
{
  const char *at = text;

  for (; n_lines > 0 && (at = strchr (at, '\n')) != NULL; n_lines--)
    at++;
  return at == NULL ? g_strdup (text) : g_strdup_printf ("%.*s…", (int) (at - 1 - text), text);
}

/* A paragraph of layout becomes so many lines at most, an ellipsis for what is cut. */
static PangoLayout *
cut (PangoLayout *layout, int n_lines)
{
  pango_layout_set_height (layout, -n_lines);
  pango_layout_set_ellipsize (layout, PANGO_ELLIPSIZE_END);
  return layout;
}

static void
append_line (GString *text, const char *line)
{
  if (line == NULL || line[0] == '\0')
    return;
  if (text->len > 0)
    g_string_append_c (text, '\n');
  g_string_append (text, line);
}

/* Who the shop is, at the right of the letterhead. */
static char *
shop_lines (const EmPaperSheet *sheet)
{
  static const EmShopText parts[] = { EM_SHOP_ADDRESS, EM_SHOP_PHONE, EM_SHOP_EMAIL, EM_SHOP_WEB };
  GString *text = g_string_new (NULL);

  for (gsize i = 0; i < G_N_ELEMENTS (parts); i++)
    {
      g_autofree char *part = em_sheet_shop (sheet, parts[i]) != NULL ? first_lines (em_sheet_shop (sheet, parts[i]), SHOP_LINES) : NULL;

      append_line (text, part);
    }
  return g_string_free (text, FALSE);
}

static void
draw_logo (cairo_t *cr, double width, double height, gpointer data)
{
  em_logo_draw (data, cr, width, height);
}

static gboolean
add_logo (EmPaperSheet *sheet, EmRow *row, double *out_bottom, GError **error)
{
  const EmLogo *logo = sheet->source->logo;
  EmLogo *own = NULL;
  double width, height;

  *out_bottom = 0;
  if (sheet->source->logo_path == NULL || sheet->source->logo_path[0] == '\0')
    return TRUE;
  if (logo == NULL)
    logo = own = em_logo_load (sheet->source->logo_path, EM_LOGO_WIDTH, EM_LOGO_HEIGHT, error);
  if (logo == NULL)
    return FALSE;
  em_logo_get_size (logo, &width, &height);
  em_row_draw (row, 0, 0, width, height, draw_logo, (gpointer) logo, own != NULL ? (GDestroyNotify) em_logo_free : NULL);
  *out_bottom = height + 6;
  return TRUE;
}

char *
em_sheet_flatten (const char *text)
{
  return text != NULL ? g_strdelimit (g_strdup (text), "\r\n", ' ') : NULL;
}

static void
set_running (EmPaperSheet *sheet, const char *title)
{
  const char *number = em_sheet_text (sheet, EM_QUOTE_NUMBER), *revision = em_sheet_text (sheet, EM_QUOTE_REVISION);
  const char *customer = em_sheet_text (sheet, EM_QUOTE_CUSTOMER);
  g_autofree char *registration = em_sheet_flatten (em_sheet_shop (sheet, EM_SHOP_REGISTRATION));
  g_autofree char *shop = em_sheet_flatten (em_sheet_shop (sheet, EM_SHOP_NAME));
  g_autofree char *lines = g_strconcat (title, number != NULL ? " " : "", number != NULL ? number : "", revision != NULL ? " · " : "",
                                        revision != NULL ? revision : "", customer != NULL ? " · " : "", customer != NULL ? customer : "", NULL);
  g_autofree char *left = em_sheet_flatten (lines);

  /* TRANSLATORS: the first number is this page, the second how many there are. */
  em_flow_set_running (sheet->flow, left, shop, registration, _("Page %d of %d"));
}

/* The shop's mail and web addresses can be clicked, each on its line of the letterhead. */
static void
link_addresses (EmPaperSheet *sheet, EmRow *row, PangoLayout *layout, double x)
{
  static const struct { EmShopText which; void (*link) (EmRow *, double, double, double, double, const char *); } links[] = {
    { EM_SHOP_EMAIL, em_row_link_email }, { EM_SHOP_WEB, em_row_link_web },
  };
  const char *text = pango_layout_get_text (layout);

  for (gsize i = 0; i < G_N_ELEMENTS (links); i++)
    {
      const char *address = em_sheet_shop (sheet, links[i].which), *at = address != NULL && address[0] != '\0' ? strstr (text, address) : NULL;
      PangoRectangle from, to;

      if (at == NULL)
        continue;
      pango_layout_index_to_pos (layout, (int) (at - text), &from);
      pango_layout_index_to_pos (layout, (int) (at - text + (gssize) strlen (address)) - 1, &to);
      links[i].link (row, x + (double) from.x / PANGO_SCALE, (double) from.y / PANGO_SCALE, (double) (to.x + to.width - from.x) / PANGO_SCALE,
                     (double) (to.y + to.height - from.y) / PANGO_SCALE, address);
    }
}

gboolean
em_sheet_add_letterhead (EmPaperSheet *sheet, const char *title, GError **error)
{
  EmRow *row = em_flow_row (sheet->flow);
  g_autofree char *lines = shop_lines (sheet);
  double bottom, column = sheet->width * 0.42;
  PangoLayout *contact;

  if (!add_logo (sheet, row, &bottom, error))
    return FALSE;
  if (em_sheet_shop (sheet, EM_SHOP_NAME) != NULL)
    {
      g_autofree char *name = first_lines (em_sheet_shop (sheet, EM_SHOP_NAME), 3);

      em_row_text_take (row, cut (em_flow_layout (sheet->flow, EM_TEXT_SHOP, name, sheet->width - column - 12, EM_ALIGN_LEFT), 3), EM_INK_TEXT, 0, bottom);
    }
  contact = cut (em_flow_layout (sheet->flow, EM_TEXT_QUIET, lines, column, EM_ALIGN_RIGHT), 2);
  em_row_text_take (row, contact, EM_INK_QUIET, sheet->width - column, 0);
  link_addresses (sheet, row, contact, sheet->width - column);
  em_row_rule (row, EM_INK_ACCENT, 0, row->height + 8, sheet->width, row->height + 8, 1.4);
  row->height += 16;
  set_running (sheet, title);
  return TRUE;
}

void
em_sheet_add_heading (EmPaperSheet *sheet, const char *text, double space_before)
{
  EmRow *row = em_flow_row (sheet->flow);

  em_row_text_take (row, em_flow_layout (sheet->flow, EM_TEXT_HEADING, text, sheet->width, EM_ALIGN_LEFT), EM_INK_ACCENT, 0, 0);
  row->height += 4;
  row->space_before = space_before;
  row->keep_next = TRUE;
  row->bookmark = g_strdup (text);
  row->bookmark_level = 1;
}

void
em_sheet_add_bullet (EmPaperSheet *sheet, EmTextStyle style, const char *text, double x, double width)
{
  EmCellText cell = { style, EM_INK_TEXT, g_strdup (text), 0 };
  EmRow *row = em_flow_row (sheet->flow);

  row->space_before = 1.5;
  em_row_text_take (row, em_flow_layout (sheet->flow, style, "•", 0, EM_ALIGN_LEFT), EM_INK_ACCENT, x, 0);
  em_sheet_stack_take (sheet, row, &cell, 1, x + 10, 0, width - 10);
}

void
em_sheet_add_notice (EmPaperSheet *sheet, const char *text)
{
  EmRow *row = em_flow_row (sheet->flow);
  PangoLayout *layout = em_flow_layout (sheet->flow, EM_TEXT_STRONG, text, sheet->width - 22, EM_ALIGN_LEFT);
  double height = em_layout_height (layout) + 12;

  em_row_box (row, EM_INK_TINT, 0, 0, sheet->width, height, TRUE);
  em_row_box (row, EM_INK_ACCENT, 0, 0, 3, height, TRUE);
  em_row_text_take (row, layout, EM_INK_TEXT, 12, 6);
  row->space_before = 6;
  row->height = height;
}

double
em_sheet_add_fact (EmPaperSheet *sheet, EmRow *row, const char *label, const char *value, double x, double y, double width)
{
  g_autofree char *text = NULL;
  PangoLayout *layout;
  double height;

  if (value == NULL || value[0] == '\0')
    return y;
  text = first_lines (value, FACT_LINES);
  em_row_text_take (row, em_flow_layout (sheet->flow, EM_TEXT_LABEL, label, width, EM_ALIGN_LEFT), EM_INK_QUIET, x, y);
  /* A letterhead's fact is a line or a few; what is longer is cut with an ellipsis, each of its lines too. */
  layout = cut (em_flow_layout (sheet->flow, EM_TEXT_BODY, text, width, EM_ALIGN_LEFT), 3);
  height = em_layout_height (layout);
  em_row_text_take (row, layout, EM_INK_TEXT, x, y + 9.5);
  return y + 9.5 + height + 5;
}

static void
spill (EmPaperSheet *sheet, PangoLayout *layout, EmInkColour ink, double x, int first)
{
  for (int line = first; line < pango_layout_get_line_count (layout); line++)
    em_row_lines_take (em_flow_row (sheet->flow), g_object_ref (layout), ink, x, 0, line, 1);
}

/* Lines that still fit on the row; the rest spills. Returns the bottom. */
static double
stack (EmPaperSheet *sheet, EmRow *row, PangoLayout *layout, EmInkColour ink, double x, double y)
{
  int n_lines = pango_layout_get_line_count (layout), fit;
  double height = em_layout_height (layout), line = height / n_lines;

  if (y + height <= CELL_HEIGHT)
    {
      em_row_text_take (row, g_object_ref (layout), ink, x, y);
      return y + height;
    }
  fit = CLAMP ((int) ((CELL_HEIGHT - y) / line), 0, n_lines);
  if (fit > 0)
    em_row_lines_take (row, g_object_ref (layout), ink, x, y, 0, fit);
  spill (sheet, layout, ink, x, fit);
  return CELL_HEIGHT;
}

void
em_sheet_stack_take (EmPaperSheet *sheet, EmRow *row, EmCellText *texts, int n_texts, double x, double y, double width)
{
  for (int i = 0; i < n_texts; i++)
    {
      if (texts[i].text != NULL && texts[i].text[0] != '\0')
        {
          g_autoptr (PangoLayout) layout = em_flow_layout (sheet->flow, texts[i].style, texts[i].text, width, EM_ALIGN_LEFT);

          y = stack (sheet, row, layout, texts[i].ink, x, y + texts[i].space);
        }
      g_clear_pointer (&texts[i].text, g_free);
    }
}

typedef struct
{
  const EmPaperSource *source;
  int32_t              index;
  EmView               view;
} FeatureDrawing;

static void
draw_feature (cairo_t *cr, double width, double height, gpointer data)
{
  const FeatureDrawing *drawing = data;
  const EmQuote *quote = drawing->source->quote;
  EmDrawingStyle style;

  em_drawing_style_paper (&style);
  style.font_family = em_flow_font ();
  em_drawing_draw (cr, width, height, &quote->feature[drawing->index], &drawing->source->cost->feature[drawing->index],
                   drawing->view, quote->units, &style, -1);
}

void
em_sheet_draw_feature (EmPaperSheet *sheet, EmRow *row, int32_t index, EmView view, double x, double y, double width, double height)
{
  FeatureDrawing *drawing = g_new (FeatureDrawing, 1);

  *drawing = (FeatureDrawing) { sheet->source, index, view };
  em_row_draw (row, x, y, width, height, draw_feature, drawing, g_free);
}

/** Cautions whose table row names one of papers, with the source beside each when wanted. */
void
em_sheet_add_cautions (EmPaperSheet *sheet, unsigned papers, gboolean has_sources)
{
  const EmPaperSource *source = sheet->source;
  uint32_t set = em_caution_quote (source->quote, source->cost, source->rates, source->catalogue);
  gboolean has_heading = FALSE;

  for (int i = 0; i < EM_N_CAUTION; i++)
    {
      g_autofree char *text = NULL;

      if ((set & (1u << i)) == 0 || (em_cautions[i].papers & papers) == 0)
        continue;
      if (!has_heading)
        em_sheet_add_heading (sheet, _("Cautions"), 14);
      has_heading = TRUE;
      text = has_sources && em_cautions[i].source != NULL && em_cautions[i].source[0] != '\0'
             ? g_strdup_printf ("%s (%s)", em_words_caution ((EmCaution) i), em_words (em_cautions[i].source))
             : g_strdup (em_words_caution ((EmCaution) i));
      em_sheet_add_bullet (sheet, has_sources ? EM_TEXT_BODY : EM_TEXT_QUIET, text, 0, sheet->width);
    }
}
