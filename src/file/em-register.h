/* em-register: the quotes in the shop's folder, found by what is in them.
 *
 * A register is a snapshot that never changes, safe in any thread. A scan reads what is new
 * or changed since an older snapshot, prices it and writes the index that the next start
 * begins from. The index is a cache: damaged or gone, it is made again.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-quote-file.h"

G_BEGIN_DECLS

typedef enum
{
  EM_ENTRY_NUMBER, EM_ENTRY_REVISION, EM_ENTRY_DATE, EM_ENTRY_CUSTOMER, EM_ENTRY_REFERENCE, EM_ENTRY_TOOL, EM_ENTRY_TOOL_NUMBER,
  EM_ENTRY_REVISES, EM_N_ENTRY_TEXT
} EmEntryText;

/* One quote. Texts are "" where the quote has none. */
typedef struct
{
  char      *path;              /* within the folder */
  char      *text[EM_N_ENTRY_TEXT];
  char      *problem;           /* why it cannot be read, or NULL; then nothing below counts */
  EmState    state;
  int32_t    n_features, n_tools;
  gboolean   has_net;           /* could be priced: a sent quote by its own rates, a draft by the shop's */
  gboolean   is_partial;        /* some features could not */
  EmCurrency currency;
  int64_t    net_minor;
  double     quoted_bench_s, actual_bench_s;   /* over the features whose time was noted after the job; 0: none */
  char      *folded;            /* what is searched */
  EmFileStamp stamp;
} EmRegisterEntry;

typedef struct _EmRegister EmRegister;

EmRegister *em_register_ref   (EmRegister *reg);
void        em_register_unref (EmRegister *reg);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (EmRegister, em_register_unref)

const char            *em_register_get_folder (const EmRegister *reg);
guint                  em_register_get_length (const EmRegister *reg);
/* Latest date first, then by number. */
const EmRegisterEntry *em_register_get_entry  (const EmRegister *reg, guint index);
char                  *em_register_dup_path   (const EmRegister *reg, guint index);   /* whole */
/* Whether two snapshots hold the same files as they were then, priced with the same rates. */
gboolean               em_register_equal      (const EmRegister *reg, const EmRegister *other);
/* "Q-12 A": what a later revision calls the quote it revises; "" without a number. g_free. */
char                  *em_register_name       (const char *number, const char *revision);

/* What the last scan of this folder left, at once; empty when there was none. */
EmRegister *em_register_new (const char *folder);

/* In the scanning thread, some twenty times a second. */
typedef void (*EmRegisterProgress) (guint n_done, guint n_files, gpointer data);

/* old: a snapshot of the same folder, or NULL. Folders in it are looked into, hidden ones and links to folders are not. NULL when the
 * folder cannot be read, or with G_IO_ERROR_CANCELLED. A quote that cannot be read is an entry with a problem. */
EmRegister *em_register_scan (const char *folder, EmRegister *old, const EmRates *rates, const EmCatalogue *catalogue,
                              EmRegisterProgress progress, gpointer progress_data, GCancellable *cancellable, GError **error);
/* The same in a thread; progress comes in the caller's main context. Copies rates and catalogue. */
void        em_register_scan_async  (const char *folder, EmRegister *old, const EmRates *rates, const EmCatalogue *catalogue,
                                     EmRegisterProgress progress, gpointer progress_data, GCancellable *cancellable,
                                     GAsyncReadyCallback callback, gpointer data);
EmRegister *em_register_scan_finish (GAsyncResult *result, GError **error);

typedef struct
{
  const char *text;       /* words that all have to occur, in whatever case and with or without accents; NULL: any */
  guint       states;     /* bit a state; 0: any */
  const char *date_from, *date_to;   /* ISO 8601, both included; NULL: open. What has no date lies between none. */
} EmRegisterQuery;

/* Indices into reg of what fits, in its order. Free with g_array_unref; elements guint. */
GArray *em_register_search (const EmRegister *reg, const EmRegisterQuery *query);

typedef struct
{
  /* A quote of which a later revision in the folder is decided counts no more: the job was won or lost once. */
  guint   n[EM_N_STATE], n_unreadable;
  double  won_ratio;            /* won of those decided (won, lost, lapsed), by count; NaN: none decided */
  double  won_value_ratio;      /* the same by net price, of those in the currency below that have one; NaN */
  EmCurrency currency;          /* the commonest */
  int64_t net_minor[EM_N_STATE];/* in that currency */
  guint   n_timed;              /* quotes with times noted after the job */
  double  actual_ratio;         /* actual / quoted bench time over those; NaN: none */
} EmRegisterSummary;

/* Over indices, as em_register_search gives them. */
void em_register_sum_up (const EmRegister *reg, const GArray *indices, EmRegisterSummary *out_summary);

/* What is searched for of a text: compatible forms made one, no case, no accents. g_free. */
char *em_register_fold (const char *text);

G_END_DECLS
