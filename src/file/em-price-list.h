/* em-price-list: a supplier's price list, read row by row before anything changes.
 *
 * A CSV table (RFC 4180) with a line of column names: reference or wire; size_mm or size_in; price;
 * per (metre, gram, stick); currency if it likes. Parsing never touches the catalogue; the office sees
 * what each row would do, then applies the list or leaves it. A wire whose price it changes becomes the shop's own.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-quote-file.h"

G_BEGIN_DECLS

typedef enum
{
  EM_PRICE_ROW_CHANGES,    /* another price, or first to be stocked */
  EM_PRICE_ROW_NEW_SIZE,   /* a size this wire had not */
  EM_PRICE_ROW_SAME,
  EM_PRICE_ROW_UNKNOWN,    /* no such wire here: left alone */
  EM_PRICE_ROW_TWICE,      /* a row before names the same wire and size */
  EM_PRICE_ROW_BAD,        /* not to be understood: left alone */
  EM_N_PRICE_ROW
} EmPriceRowState;

extern const char *const em_price_row_ids[EM_N_PRICE_ROW];

typedef struct
{
  guint           line;        /* in the file */
  EmPriceRowState state;
  char           *name;        /* reference or wire as the list has it; owned */
  char           *filler_id;   /* NULL: unknown; owned */
  double          wire_mm;     /* NaN: not read */
  gint64          price_minor; /* in the currency the list was read for */
  EmPriceBasis    basis;
  gboolean        had_price;   /* old_minor and old_basis count */
  gint64          old_minor;
  EmPriceBasis    old_basis;
  char           *sentence;    /* what is wrong, or NULL; translated; owned */
} EmPriceRow;

typedef struct
{
  char       *name;
  GPtrArray  *rows;                      /* EmPriceRow* */
  guint       n_of[EM_N_PRICE_ROW];
} EmPriceList;

extern const char *const em_price_basis_ids[EM_N_PRICE_BASIS];   /* "metre", "gram", "stick" */

/* currency: the rate book's. NULL and EM_FILE_ERROR when the file as a whole is no such table. */
EmPriceList *em_price_list_parse (GBytes *bytes, const char *name, const EmCatalogue *catalogue, const EmCurrency *currency, GError **error);
EmPriceList *em_price_list_load  (const char *path, const EmCatalogue *catalogue, const EmCurrency *currency, GError **error);
void         em_price_list_free  (EmPriceList *list);
/* Applies the rows that change something. Wires are looked up anew; all or nothing. */
gboolean     em_price_list_apply (const EmPriceList *list, EmCatalogue *catalogue, guint *out_n_applied, GError **error);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (EmPriceList, em_price_list_free)

G_END_DECLS
