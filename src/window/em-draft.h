/* em-draft: the shop's rate book and metals while they are being changed, and what that does to the open quote.
 *
 * A working copy: nothing outside it changes before it is kept. Emits "changed" after
 * every em_draft_touch, with the effect worked out anew. Each touch that changed
 * something is a step, and "stepped" (where) follows "changed" when one is undone or
 * done again.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-document.h"

G_BEGIN_DECLS

#define EM_TYPE_DRAFT (em_draft_get_type ())
G_DECLARE_FINAL_TYPE (EmDraft, em_draft, EM, DRAFT, GObject)

typedef enum { EM_DRAFT_RATES = EM_BASIS_RATES, EM_DRAFT_CATALOGUE = EM_BASIS_CATALOGUE } EmDraftPart;

typedef struct
{
  gboolean has_quote;    /* one with features is open */
  gboolean is_sent;      /* it keeps the rates it was sent with, so nothing changes */
  gboolean is_reckoned;  /* the figures below count; else the draft can't price it */
  int64_t  before_minor, after_minor;             /* total */
  int64_t  money_minor[EM_N_MONEY];               /* after less before */
  int64_t  tax_minor, other_minor;                /* the same of the taxes, and of what stands between the work and them */
  int32_t  faults_before, faults_after;           /* features that can't be priced */
} EmEffect;

/* document NULL: no quote is open. */
EmDraft     *em_draft_new           (EmBasis *basis, EmDocument *document);
/* The quote whose effect is shown from now on; NULL: none. */
void         em_draft_set_document  (EmDraft *self, EmDocument *document);
EmDocument  *em_draft_get_document  (EmDraft *self);   /* or NULL */
/* For changing in place; em_draft_touch follows. part 0: nothing was changed but what is shown. where: page, record and field,
 * "machines/laser-300/name", of which record may be empty; touches in a row of the same are one step. NULL: a step of its own. */
EmRates     *em_draft_get_rates     (EmDraft *self);
EmCatalogue *em_draft_get_catalogue (EmDraft *self);
void         em_draft_touch         (EmDraft *self, EmDraftPart part, const char *where);
/* What is typed next is a step of its own. */
void         em_draft_break         (EmDraft *self);
/* A step back or forth settles all problems; what was discarded comes back, too. */
gboolean     em_draft_can_undo      (EmDraft *self);
gboolean     em_draft_can_redo      (EmDraft *self);
void         em_draft_undo          (EmDraft *self);
void         em_draft_redo          (EmDraft *self);
/* Something typed that can't be taken, by where; text: which entry, and why. NULL text: settled. */
void         em_draft_set_problem   (EmDraft *self, const char *where, const char *text);
/* The same as settling, where the entry went away; told with the next change. */
void         em_draft_forget_problem (EmDraft *self, const char *where);
gboolean     em_draft_has_problem   (EmDraft *self, const char *where);
gboolean     em_draft_has_problems  (EmDraft *self);
gboolean     em_draft_is_changed    (EmDraft *self);
/* Why it can't be kept as it is, in words; NULL: it can. */
char        *em_draft_dup_trouble   (EmDraft *self);
const EmEffect *em_draft_get_effect (EmDraft *self);
/* All as before; nothing while it is being kept. */
void         em_draft_discard       (EmDraft *self);
/* A copy of the draft as it stands; NULL: no memory. */
EmBasis     *em_draft_snapshot      (EmDraft *self);
/* Writes what was changed to the shop's own files on a thread. What is changed meanwhile is not kept with it, and stays a change.
 * FALSE: not all is on the disk. What is there is what the draft goes on from, its basis; the rest stays in the draft as it was. */
void         em_draft_keep_async    (EmDraft *self, GAsyncReadyCallback callback, gpointer data);
gboolean     em_draft_keep_finish   (EmDraft *self, GAsyncResult *result, GError **error);
gboolean     em_draft_is_keeping    (EmDraft *self);
EmBasis     *em_draft_get_basis     (EmDraft *self);

G_END_DECLS
