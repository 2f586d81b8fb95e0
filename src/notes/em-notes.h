/* em-notes: a customer's words read into proposed features.
 *
 * Tokeniser, lexicon (data/notes-<language>.xml), grammar. Never invents a dimension; what it can't use stays visible.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-quote.h"

#include <glib.h>

G_BEGIN_DECLS

typedef struct EmLexicon EmLexicon;

EmLexicon *em_lexicon_load (const char *const *paths, GError **error);  /* several languages merged */
void       em_lexicon_free (EmLexicon *lexicon);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (EmLexicon, em_lexicon_free)

typedef enum { EM_READ_READ, EM_READ_INFERRED, EM_READ_MISSING } EmReadState;

typedef struct
{
  int         feature;      /* from 1; 0: general, governs the rest */
  const char *field;        /* kind's field id, "kind", "count", "stock", "clearance", "near", "finish", "base", "hardness", "coating", "units", "refuse" … */
  double      value;        /* mm, degrees, plain; NaN for text values */
  const char *text;         /* kind id, base id, choice option … or NULL */
  EmReadState state;
  const char *reason;       /* stable code when inferred: "leading-dot-inch", "general-note", "soft-conversion" … */
  guint32     start, length;/* bytes of the words it came from; length 0: none */
  guint32     line;         /* from 1 */
} EmReadField;

enum { EM_ANSWER_MAX = 6 };

typedef struct
{
  int         feature;      /* from 1 */
  const char *code;         /* stable: "side-or-diameter", "inch-or-mm", "which-kind", "count-unknown", "which-face" */
  guint32     start, length, line;
  int         n_answers;
  const char *answer[EM_ANSWER_MAX];   /* stable answer ids: "per-side", "on-diameter" */
  /* Applying answer k sets these fields of the feature. */
  EmReadField sets[EM_ANSWER_MAX][4];
  int         n_sets[EM_ANSWER_MAX];
} EmReadQuestion;

typedef struct
{
  guint32 start, length, line;
} EmReadSpan;

typedef struct
{
  int             n_features;
  GArray         *fields;     /* EmReadField, by feature then position */
  GArray         *questions;  /* EmReadQuestion */
  GArray         *unused;     /* EmReadSpan */
  GStringChunk   *strings;    /* owns the non-static text */
} EmReadResult;

/* text: any bytes; invalid UTF-8 is read as unusable characters. Linear in length. units: what a bare number is when nothing says. */
EmReadResult *em_notes_read (const EmLexicon *lexicon, const char *text, gsize length, EmUnits units);
void          em_read_result_free (EmReadResult *result);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (EmReadResult, em_read_result_free)

/* Puts proposals into quote: general fields and features with marks, origins; features the office corrected (origin entered) keep their
 * values, rejected stretches stay rejected. */
void em_notes_apply (const EmReadResult *result, const char *text, EmQuote *quote);
/* Applies answer of a question to the quote's feature. */
void em_notes_answer (const EmReadQuestion *question, int answer, EmQuote *quote, int32_t feature_index);

/* Text of an ASCII DXF (TEXT, MTEXT, DIMENSION, $INSUNITS), one note a line; NULL and error when it is not one. */
char *em_dxf_text (const char *bytes, gsize length, EmUnits *out_units, gboolean *out_has_units, GError **error);

G_END_DECLS
