/* em-document: an open quote: the one thing in the window that changes it.
 *
 * Owns the quote, its cost, its way back and forth, and its place on disk. Every edit
 * goes through em_document_edit_quote or em_document_edit_feature, most by the typed
 * functions of em-document-edit.h; each records a step, prices anew and emits
 * "changed" (what, index). Getters borrow until the next edit.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-basis.h"
#include "em-cost.h"
#include "em-lock.h"
#include "em-quote-file.h"
#include "em-snapshot.h"

#include <gio/gio.h>

G_BEGIN_DECLS

#define EM_TYPE_DOCUMENT (em_document_get_type ())
G_DECLARE_FINAL_TYPE (EmDocument, em_document, EM, DOCUMENT, GObject)

/* What "changed" tells; index is the feature when one changed and at most its marks with it, else −1. Prices may differ after any but
 * EM_CHANGE_SELECTION and EM_CHANGE_FILE. */
typedef enum
{
  EM_CHANGE_FEATURE   = 1 << 0,
  EM_CHANGE_LIST      = 1 << 1,   /* features came, went or moved */
  EM_CHANGE_DETAILS   = 1 << 2,   /* texts and numbers of the quote itself */
  EM_CHANGE_NOTES     = 1 << 3,
  EM_CHANGE_MARKS     = 1 << 4,
  EM_CHANGE_UNITS     = 1 << 5,
  EM_CHANGE_BASIS     = 1 << 6,
  EM_CHANGE_PROBLEMS  = 1 << 7,   /* what is typed but can't be taken */
  EM_CHANGE_SELECTION = 1 << 8,
  EM_CHANGE_FILE      = 1 << 9,   /* path, saved or not */
  EM_CHANGE_ALL       = (1 << 10) - 1
} EmChange;

EmDocument *em_document_new           (EmBasis *basis);
/* Takes the contents of file. path NULL: an untitled copy, with something to lose only once edited. */
EmDocument *em_document_new_take      (EmBasis *basis, EmQuoteFile *file, const char *path);
EmDocument *em_document_new_from_path (EmBasis *basis, const char *path, GError **error);
/* As em_document_new_take, but there is something to lose. */
EmDocument *em_document_new_recovered (EmBasis *basis, EmQuoteFile *file, const char *path);

const EmQuote     *em_document_get_quote     (EmDocument *self);
const EmCost      *em_document_get_cost      (EmDocument *self);
/* Never NULL; holds the quote's fault where nothing could be reckoned. */
const EmFeatureCost *em_document_get_feature_cost (EmDocument *self, int32_t index);
EmStatus           em_document_get_status    (EmDocument *self, EmFault *out_fault);  /* of the quote itself */
EmBasis           *em_document_get_basis     (EmDocument *self);   /* the one it is priced on */
const EmRates     *em_document_get_rates     (EmDocument *self);
const EmCatalogue *em_document_get_catalogue (EmDocument *self);
EmUnits            em_document_get_units     (EmDocument *self);
/* The shop's book changed; a sent quote keeps its own. */
void               em_document_set_basis     (EmDocument *self, EmBasis *basis);
/* The working of one feature (row) or of the whole quote (EM_ROW_QUOTE). */
void               em_document_trace         (EmDocument *self, int32_t row, EmTrace *out_trace);

/* Last price that was good while the feature has a fault or something unreadable; is_stale says which it is. */
/* Nothing but the choice of a wire lacks: no price yet, and no mistake either. */
gboolean em_document_awaits_wire (EmDocument *self);
int64_t  em_document_get_feature_price (EmDocument *self, int32_t index, gboolean *out_is_stale);
int64_t  em_document_get_total         (EmDocument *self, gboolean *out_is_stale);
int64_t  em_document_get_net           (EmDocument *self, gboolean *out_is_stale);

/* Whether all of it has been priced at least once; else the total is without what has a fault. */
gboolean em_document_has_total   (EmDocument *self);

/* Something typed that can't be taken, by feature (0: the quote) and field; NULL text: settled. */
void     em_document_set_problem  (EmDocument *self, uint32_t feature_id, const char *field, const char *text);
gboolean em_document_has_problem  (EmDocument *self, uint32_t feature_id);
/* As it was set; NULL: there is none. A step back or forth settles them all, as does the end of their feature. */
const char *em_document_get_problem (EmDocument *self, uint32_t feature_id, const char *field);
guint    em_document_get_problems (EmDocument *self);

uint32_t em_document_get_selected       (EmDocument *self);   /* feature id; 0: none */
int32_t  em_document_get_selected_index (EmDocument *self);   /* −1: none */
void     em_document_set_selected       (EmDocument *self, uint32_t feature_id);

/* Changes a feature or the quote in place on a copy; when func leaves it as it was nothing is recorded and FALSE
 * comes back. Edits in a row with the same key ≠ 0 are one step. */
typedef void (*EmEditFeature) (EmFeature *feature, gconstpointer data);
typedef void (*EmEditQuote)   (EmQuote *quote, gconstpointer data);
gboolean em_document_edit_feature (EmDocument *self, int32_t index, guint64 key, EmEditFeature func, gconstpointer data);
/* The same to a feature that the customer's words may speak of: later readings of them leave its field, as the notes know it, alone. */
gboolean em_document_correct_feature (EmDocument *self, int32_t index, guint64 key, const char *field, EmEditFeature func, gconstpointer data);
gboolean em_document_edit_quote   (EmDocument *self, guint64 key, EmChange what, EmEditQuote func, gconstpointer data);
/* What is typed next is a step of its own. */
void     em_document_break   (EmDocument *self);
gboolean em_document_can_undo (EmDocument *self);
gboolean em_document_can_redo (EmDocument *self);
void     em_document_undo    (EmDocument *self);
void     em_document_redo    (EmDocument *self);

const char *em_document_get_path    (EmDocument *self);   /* NULL: never saved */
gboolean    em_document_is_modified (EmDocument *self);   /* there is something to lose */
gboolean    em_document_is_blank    (EmDocument *self);   /* new and untouched: may be replaced */
char       *em_document_dup_title   (EmDocument *self);
/* Things in the quote that a newer version wrote: not used, not priced, kept when saved. */
guint       em_document_get_n_kept  (EmDocument *self);
GBytes     *em_document_to_bytes    (EmDocument *self, GError **error);
/* The quote as it is now, for a thread to write. */
EmSnapshot *em_document_snapshot    (EmDocument *self, GError **error);
/* Keeps the shop's present rates and metals with the quote, for one about to be sent. */
void        em_document_take_sent_basis (EmDocument *self);
/* In a thread; the quote as it is now. What is edited meanwhile stays unsaved. */
void        em_document_save_async  (EmDocument *self, const char *path, GCancellable *cancellable,
                                     GAsyncReadyCallback callback, gpointer data);
/* EM_FILE_ERROR_CHANGED: somebody else wrote the file since it was opened here; it was left alone. */
gboolean    em_document_save_finish (EmDocument *self, GAsyncResult *result, GError **error);
/* The next save may go over what somebody else wrote. */
void        em_document_allow_overwrite (EmDocument *self);
/* A save is under way; what it writes counts as saved already. */
gboolean    em_document_is_saving (EmDocument *self);
/* The file as it was when it was read or written here; all zero: none. */
const EmFileStamp *em_document_get_stamp (EmDocument *self);
/* Others are told that the file is open here until the document goes or is saved elsewhere. Takes lock, which may be NULL. */
void        em_document_set_lock_take (EmDocument *self, EmLock *lock);

G_END_DECLS
