/* em-price-list: a supplier's price list against the catalogue.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "config.h"

#include "em-price-list.h"

#include "em-csv.h"
#include "em-quantity.h"
#include "em-shown.h"
#include "em-xml.h"

#include <glib/gi18n-lib.h>
#include <string.h>

typedef enum { COLUMN_REFERENCE, COLUMN_WIRE, COLUMN_SIZE_MM, COLUMN_SIZE_IN, COLUMN_PRICE, COLUMN_PER, COLUMN_CURRENCY, N_COLUMN } Column;

/* What a column may be called, lower case; separated by bars. */
static const char *const column_names[N_COLUMN] =
{
  [COLUMN_REFERENCE] = "reference|ref|article|article number|part number|item",
  [COLUMN_WIRE] = "wire|class|designation|id",
  [COLUMN_SIZE_MM] = "size_mm|size mm|size (mm)|diameter_mm|diameter mm|diameter (mm)",
  [COLUMN_SIZE_IN] = "size_in|size in|size (in)|diameter_in|diameter in|diameter (in)",
  [COLUMN_PRICE] = "price|unit price|net price",
  [COLUMN_PER] = "per|price per|unit",
  [COLUMN_CURRENCY] = "currency",
};

static const char *const basis_words[EM_N_PRICE_BASIS] = { "metre|meter|m", "gram|g", "stick|pc|piece|each" };

const char *const em_price_basis_ids[EM_N_PRICE_BASIS] = { "metre", "gram", "stick" };
const char *const em_price_row_ids[EM_N_PRICE_ROW] = { "changes", "new-size", "same", "unknown", "twice", "bad" };

/* Two sizes this near are one: a list's rounding, finer than any wire's tolerance. */
#define SIZE_TOLERANCE_MM 0.0005

static void
free_row (gpointer data)
{
  EmPriceRow *row = data;

  g_free (row->name);
  g_free (row->filler_id);
  g_free (row->sentence);
  g_free (row);
}

void
em_price_list_free (EmPriceList *list)
{
  if (list == NULL)
    return;
  g_ptr_array_unref (list->rows);
  g_free (list->name);
  g_free (list);
}

/* ---- words ---- */

static gboolean
is_one_of (const char *text, const char *words)
{
  g_auto (GStrv) list = g_strsplit (words, "|", -1);
  g_autofree char *folded = g_utf8_strdown (text, -1);

  return g_strv_contains ((const char *const *) list, g_strstrip (folded));
}

static gboolean
find_columns (const EmCsvRow *head, int column[N_COLUMN])
{
  for (int i = 0; i < N_COLUMN; i++)
    {
      column[i] = -1;
      for (guint at = 0; column[i] < 0 && at < head->n_cells; at++)
        if (is_one_of (head->cell[at], column_names[i]))
          column[i] = (int) at;
    }
  return (column[COLUMN_REFERENCE] >= 0 || column[COLUMN_WIRE] >= 0) && (column[COLUMN_SIZE_MM] >= 0 || column[COLUMN_SIZE_IN] >= 0)
         && column[COLUMN_PRICE] >= 0 && column[COLUMN_PER] >= 0;
}

/* The row's cell, stripped; "" where the row is too short or the table has no such column. */
static const char *
get_cell (const EmCsvRow *row, const int column[N_COLUMN], Column which)
{
  if (column[which] < 0 || (guint) column[which] >= row->n_cells)
    return "";
  return g_strstrip (row->cell[column[which]]);
}

static gboolean
spoil (EmPriceRow *row, const char *format, ...) G_GNUC_PRINTF (2, 3);

static gboolean
spoil (EmPriceRow *row, const char *format, ...)
{
  va_list arguments;

  va_start (arguments, format);
  row->sentence = g_strdup_vprintf (format, arguments);
  va_end (arguments);
  row->state = EM_PRICE_ROW_BAD;
  return FALSE;
}

/* ---- figures ---- */

/*
 * A price in minor units, digit by digit: no price passes through floating point. One decimal mark, point or comma, with no more
 * digits behind it than the currency has; marks of thousands are refused, since "1.234" could be either.
 */
static gboolean
read_price (EmPriceRow *row, const char *text, const EmCurrency *currency)
{
  gint64 minor = 0;
  int behind = -1, digits = 0;

  for (const char *at = text; *at != '\0'; at++)
    {
      if ((*at == '.' || *at == ',') && behind < 0)
        behind = 0;
      else if (!g_ascii_isdigit (*at))
        return spoil (row, _("price: “%.40s” is no plain amount such as 12.50"), em_shown (text).text);
      else
        {
          if (minor > G_GINT64_CONSTANT (100000000000))
            return spoil (row, _("price: “%.40s” is too large"), em_shown (text).text);
          minor = minor * 10 + (*at - '0');
          digits++;
          behind += behind >= 0;
        }
    }
  if (digits == 0 || behind == 0)
    return spoil (row, _("price: “%.40s” is no plain amount such as 12.50"), em_shown (text).text);
  if (behind > currency->digits)
    return spoil (row, _("price: “%.40s” has more decimals than %s, which has %d"), em_shown (text).text, currency->code, currency->digits);
  /* "0.00" stands in lists where there is no price yet. */
  if (minor == 0)
    return spoil (row, _("price: “%.40s” would make the wire free; give it by hand if it is"), em_shown (text).text);
  for (int i = MAX (behind, 0); i < currency->digits; i++)
    minor *= 10;
  if (minor > G_GINT64_CONSTANT (1000000000000))
    return spoil (row, _("price: “%.40s” is too large"), em_shown (text).text);
  row->price_minor = minor;
  return TRUE;
}

/* A diameter, 0.05 to 5 mm as em_filler_check has it. */
static gboolean
read_size (EmPriceRow *row, const char *mm, const char *inch)
{
  gboolean is_inch = *mm == '\0';
  g_autofree char *text = g_strdelimit (g_strdup (is_inch ? inch : mm), ",", '.');
  g_autofree char *whole = g_str_has_prefix (text, ".") ? g_strconcat ("0", text, NULL) : g_strdup (text);
  double value;

  if (!em_number_read (whole, &value))
    return spoil (row, _("size: “%.40s” is no plain number such as 0.4"), em_shown (is_inch ? inch : mm).text);
  if (is_inch)
    value *= EM_MM_PER_INCH;
  if (!(value >= 0.05 && value <= 5.0))
    return spoil (row, _("size: “%.40s” lies outside 0.05 to 5 mm"), em_shown (is_inch ? inch : mm).text);
  row->wire_mm = value;
  return TRUE;
}

static gboolean
read_basis (EmPriceRow *row, const char *text)
{
  for (int i = 0; i < EM_N_PRICE_BASIS; i++)
    if (is_one_of (text, basis_words[i]))
      {
        row->basis = (EmPriceBasis) i;
        return TRUE;
      }
  return spoil (row, _("per: “%.40s” is none of metre, gram, stick"), em_shown (text).text);
}

/* ---- against the catalogue ---- */

/* By the supplier's reference first, then by id, then by designation or its first word, whatever the case. −1: none. */
static int32_t
find_wire (const EmCatalogue *catalogue, const char *reference, const char *wire)
{
  for (int32_t i = 0; *reference != '\0' && i < catalogue->n_fillers; i++)
    if (g_strcmp0 (catalogue->filler[i].supplier_ref, reference) == 0)
      return i;
  for (int32_t i = 0; *wire != '\0' && i < catalogue->n_fillers; i++)
    {
      const EmFiller *filler = &catalogue->filler[i];
      gsize first = strcspn (filler->designation, " (");

      if (g_ascii_strcasecmp (filler->id, wire) == 0 || g_ascii_strcasecmp (filler->designation, wire) == 0
          || (strncmp (filler->designation, "ER", 2) == 0 && strlen (wire) == first && g_ascii_strncasecmp (filler->designation, wire, first) == 0))
        return i;
    }
  return -1;
}

static int32_t
find_size (const EmFiller *filler, double wire_mm)
{
  for (int32_t i = 0; i < filler->n_sizes; i++)
    if (ABS (filler->size[i].wire_mm - wire_mm) < SIZE_TOLERANCE_MM)
      return i;
  return -1;
}

static void
compare (EmPriceRow *row, const EmFiller *filler)
{
  int32_t at = find_size (filler, row->wire_mm);

  if (at < 0)
    {
      row->state = EM_PRICE_ROW_NEW_SIZE;
      if (filler->n_sizes >= EM_SIZE_MAX)
        spoil (row, _("size: this wire already has %d sizes, as many as are held"), EM_SIZE_MAX);
      return;
    }
  row->wire_mm = filler->size[at].wire_mm;
  row->had_price = TRUE;
  row->old_minor = filler->size[at].price_minor;
  row->old_basis = filler->size[at].basis;
  /* The same figure as an invented one of ours is the supplier's all the same. */
  row->state = row->old_minor == row->price_minor && row->old_basis == row->basis && filler->size[at].is_stocked
               && (!filler->has_demo_price || filler->is_own)
                 ? EM_PRICE_ROW_SAME : EM_PRICE_ROW_CHANGES;
}

static gboolean
read_figures (EmPriceRow *row, const EmCsvRow *cells, const int column[N_COLUMN], const EmCurrency *currency)
{
  const char *code = get_cell (cells, column, COLUMN_CURRENCY);

  if (*code != '\0' && g_ascii_strcasecmp (code, currency->code) != 0)
    return spoil (row, _("currency: “%.40s”, but the rate book counts in %s"), em_shown (code).text, currency->code);
  return read_size (row, get_cell (cells, column, COLUMN_SIZE_MM), get_cell (cells, column, COLUMN_SIZE_IN))
         && read_price (row, get_cell (cells, column, COLUMN_PRICE), currency)
         && read_basis (row, get_cell (cells, column, COLUMN_PER));
}

static EmPriceRow *
read_row (const EmCsvRow *cells, const int column[N_COLUMN], const EmCatalogue *catalogue, const EmCurrency *currency)
{
  const char *reference = get_cell (cells, column, COLUMN_REFERENCE), *wire = get_cell (cells, column, COLUMN_WIRE);
  EmPriceRow *row = g_new0 (EmPriceRow, 1);
  int32_t at = find_wire (catalogue, reference, wire);

  row->line = cells->line;
  row->name = g_strdup (*reference != '\0' ? reference : wire);
  row->wire_mm = EM_ABSENT;
  if (*row->name == '\0')
    spoil (row, _("names no wire"));
  else if (!read_figures (row, cells, column, currency))
    ;
  else if (at < 0)
    row->state = EM_PRICE_ROW_UNKNOWN;
  else
    {
      row->filler_id = g_strdup (catalogue->filler[at].id);
      compare (row, &catalogue->filler[at]);
    }
  return row;
}

/* What rows so far said of one wire. Each row that counts takes one of its sizes or adds one, so that eight hold all. */
typedef struct
{
  double wire_mm[EM_SIZE_MAX];
  int    n_wires, n_new;
} Seen;

static gboolean
is_repeat (const Seen *seen, double wire_mm)
{
  for (int i = 0; i < seen->n_wires; i++)
    if (ABS (seen->wire_mm[i] - wire_mm) < SIZE_TOLERANCE_MM)
      return TRUE;
  return FALSE;
}

/* Settles what the row is among the rows before it, and notes it. */
static void
settle (EmPriceRow *row, Seen *seen, const EmFiller *filler)
{
  gboolean is_new = row->state == EM_PRICE_ROW_NEW_SIZE;

  if (is_repeat (seen, row->wire_mm))
    row->state = EM_PRICE_ROW_TWICE;
  else if (is_new && filler->n_sizes + seen->n_new >= EM_SIZE_MAX)
    spoil (row, _("size: this wire already has %d sizes, as many as are held"), EM_SIZE_MAX);
  else
    {
      seen->wire_mm[seen->n_wires++] = row->wire_mm;
      seen->n_new += is_new;
    }
}

/* seen: Seen by the wire's id. */
static void
add_row (EmPriceList *list, EmPriceRow *row, const EmCatalogue *catalogue, GHashTable *seen)
{
  if (row->filler_id != NULL && row->state < EM_PRICE_ROW_UNKNOWN)
    {
      Seen *so_far = g_hash_table_lookup (seen, row->filler_id);

      if (so_far == NULL)
        {
          so_far = g_new0 (Seen, 1);
          g_hash_table_insert (seen, row->filler_id, so_far);
        }
      settle (row, so_far, &catalogue->filler[em_catalogue_find_filler (catalogue, row->filler_id)]);
    }
  list->n_of[row->state]++;
  g_ptr_array_add (list->rows, row);
}

/*
 * em_price_list_parse:
 *
 * Reads the list against the catalogue and changes nothing. A row that can't be understood is BAD with a sentence that names
 * its cell; the others still count. Errors: those of em_csv_parse, and NOT_OURS for a table without the columns it needs.
 */
EmPriceList *
em_price_list_parse (GBytes *bytes, const char *name, const EmCatalogue *catalogue, const EmCurrency *currency, GError **error)
{
  g_autoptr (EmCsv) csv = em_csv_parse (bytes, name, error);
  int column[N_COLUMN];

  if (csv == NULL)
    return NULL;
  if (csv->rows->len == 0 || !find_columns (g_ptr_array_index (csv->rows, 0), column))
    {
      g_set_error (error, EM_FILE_ERROR, EM_FILE_ERROR_NOT_OURS,
                   _("%s: the first line has to name the columns: reference or wire, size_mm or size_in, price, per"), name);
      return NULL;
    }

  g_autoptr (GHashTable) seen = g_hash_table_new_full (g_str_hash, g_str_equal, NULL, g_free);
  EmPriceList *list = g_new0 (EmPriceList, 1);

  list->name = g_strdup (name);
  list->rows = g_ptr_array_new_with_free_func (free_row);
  for (guint i = 1; i < csv->rows->len; i++)
    add_row (list, read_row (g_ptr_array_index (csv->rows, i), column, catalogue, currency), catalogue, seen);
  return list;
}

EmPriceList *
em_price_list_load (const char *path, const EmCatalogue *catalogue, const EmCurrency *currency, GError **error)
{
  g_autofree char *name = g_filename_display_basename (path);
  g_autoptr (GBytes) bytes = em_xml_read_file (path, EM_CSV_BYTES_MAX, error);

  if (bytes == NULL)
    return NULL;
  return em_price_list_parse (bytes, name, catalogue, currency, error);
}

/* ---- applying ---- */

/* Sets or adds the size, in its place by diameter. FALSE where the wire is full. */
static gboolean
put_size (EmFiller *filler, const EmPriceRow *row)
{
  int32_t at = find_size (filler, row->wire_mm);

  if (at < 0)
    {
      if (filler->n_sizes >= EM_SIZE_MAX)
        return FALSE;
      for (at = filler->n_sizes++; at > 0 && filler->size[at - 1].wire_mm > row->wire_mm; at--)
        filler->size[at] = filler->size[at - 1];
      filler->size[at].wire_mm = row->wire_mm;
    }
  filler->size[at].price_minor = row->price_minor;
  filler->size[at].basis = row->basis;
  filler->size[at].is_stocked = true;
  filler->is_own = true;
  return TRUE;
}

/* Whether the list prices every stocked size of the wire, so that none of its prices is invented any more. */
static gboolean
prices_all (const EmPriceList *list, const EmFiller *filler)
{
  for (int32_t i = 0; i < filler->n_sizes; i++)
    {
      gboolean is_priced = !filler->size[i].is_stocked;

      for (guint k = 0; !is_priced && k < list->rows->len; k++)
        {
          const EmPriceRow *row = g_ptr_array_index (list->rows, k);

          is_priced = row->state < EM_PRICE_ROW_UNKNOWN && g_strcmp0 (row->filler_id, filler->id) == 0
                      && ABS (row->wire_mm - filler->size[i].wire_mm) < SIZE_TOLERANCE_MM;
        }
      if (!is_priced)
        return FALSE;
    }
  return TRUE;
}

static gboolean
apply_rows (const EmPriceList *list, EmCatalogue *catalogue, guint *out_n, GError **error)
{
  *out_n = 0;
  for (guint i = 0; i < list->rows->len; i++)
    {
      const EmPriceRow *row = g_ptr_array_index (list->rows, i);
      int32_t at = em_catalogue_find_filler (catalogue, row->filler_id);

      if (row->state != EM_PRICE_ROW_CHANGES && row->state != EM_PRICE_ROW_NEW_SIZE)
        continue;
      if (at < 0 || !put_size (&catalogue->filler[at], row))
        {
          g_set_error (error, EM_FILE_ERROR, EM_FILE_ERROR_CHANGED, _("%s, line %u: the catalogue has changed since the list was read; read it again"),
                       list->name, row->line);
          return FALSE;
        }
      ++*out_n;
    }
  for (int32_t i = 0; i < catalogue->n_fillers; i++)
    if (catalogue->filler[i].has_demo_price && catalogue->filler[i].is_own && prices_all (list, &catalogue->filler[i]))
      catalogue->filler[i].has_demo_price = false;
  return TRUE;
}

/*
 * em_price_list_apply:
 *
 * Prices and stocks the sizes of rows that CHANGE or add a size, marks their wires as the shop's own, and takes "invented" off a wire
 * whose stocked sizes the list prices all. On failure the catalogue is untouched.
 */
gboolean
em_price_list_apply (const EmPriceList *list, EmCatalogue *catalogue, guint *out_n_applied, GError **error)
{
  EmCatalogue changed;
  guint n;

  if (em_catalogue_copy (catalogue, &changed) != EM_OK)
    {
      g_set_error_literal (error, EM_FILE_ERROR, EM_FILE_ERROR_READ, _("no memory to apply the list"));
      return FALSE;
    }
  if (!apply_rows (list, &changed, &n, error))
    {
      em_catalogue_clear (&changed);
      return FALSE;
    }
  em_catalogue_clear (catalogue);
  *catalogue = changed;
  if (out_n_applied != NULL)
    *out_n_applied = n;
  return TRUE;
}
