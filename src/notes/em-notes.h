/* em-notes: a customer's words read into proposed features.
 *
 * Tokeniser (em-token), lexicon in data (em-lexicon, data/notes-<language>.xml), grammar
 * (em-clause, em-fit). Never invents a dimension; what it can't use stays visible.
 * Conventions: ASME Y14.5-2018 and Y14.38 (inch and metric drawings), ISO 129-1.
 * No GTK. Texts are bytes; spans are byte offsets on character boundaries of valid UTF-8.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-quote.h"

#include <glib.h>

G_BEGIN_DECLS

typedef struct EmLexicon EmLexicon;

/* Several languages merged. The error names the file and what is wrong with it. */
EmLexicon *em_lexicon_load (const char *const *paths, GError **error);
/* The shipped English, German and Spanish lexicons. */
EmLexicon *em_lexicon_load_default (GError **error);
void       em_lexicon_free (EmLexicon *lexicon);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (EmLexicon, em_lexicon_free)

typedef enum { EM_READ_READ, EM_READ_INFERRED, EM_READ_MISSING } EmReadState;

typedef struct
{
  int         feature;      /* from 1; 0: general, governs the rest */
  const char *field;        /* kind's field id, "kind", "count", "stock", "clearance", "near", "slot_width", "slot_depth",
                             * "finish", "access", "label"; general: "units", "base", "hardness", "coating", "tools",
                             * "reference", "drawing", "tool_number", "stock", "finish"; "refuse" (do not weld) */
  double      value;        /* mm, mm², degrees, HRC, plain; NaN for text values */
  double      low, high;    /* "0.3-0.5": limits, value the middle; NaN when none */
  const char *text;         /* kind id, base id, choice option … or NULL */
  EmReadState state;
  const char *reason;       /* stable code when inferred: "leading-dot-inch", "general-note", "spelling" …; may be set when read */
  guint32     start, length;/* bytes of the words it came from; length 0: none */
  guint32     line;         /* from 1 */
} EmReadField;

enum { EM_ANSWER_MAX = 6 };

typedef struct
{
  int         feature;      /* from 1; 0: general */
  const char *code;         /* stable: "side-or-diameter", "inch-or-mm", "which-kind", "which-field", "which-face", "count-unknown",
                             * "count-or-chamfer", "outer-or-bore", "second-leg", "decimal-comma", "dual-mismatch", "two-values", "cone-angle" */
  const char *field;        /* the field it is about, or NULL */
  guint32     start, length, line;
  int         n_answers;    /* 0: only the office can tell */
  const char *answer[EM_ANSWER_MAX];   /* stable answer ids: "per-side", "on-diameter"; kinds' ids for "which-kind" */
  /* Applying answer k sets n_sets[k] fields from sets[first_set[k]] of the result. */
  guint32     first_set[EM_ANSWER_MAX];
  guint32     n_sets[EM_ANSWER_MAX];
} EmReadQuestion;

typedef struct
{
  guint32  start, length, line;
  gboolean is_minor;        /* of an unused stretch: talk that an office passes over, shown but not listed */
} EmReadSpan;

typedef struct
{
  int           n_features;
  gboolean      has_written;/* no note says the unit, but the sizes that tell theirs agree on written */
  EmUnits       written;
  gsize         n_unread;   /* bytes at the end that were not looked at: the text is longer than EM_NOTES_READ_MAX */
  GArray       *fields;     /* EmReadField, by feature then position */
  GArray       *questions;  /* EmReadQuestion, by feature then position */
  GArray       *sets;       /* EmReadField, what answers set */
  GArray       *spans;      /* EmReadSpan, the stretch of feature 1, 2, …: spans[feature - 1] */
  GArray       *unused;     /* EmReadSpan, in order */
  GArray       *ids;        /* guint32, after em_notes_apply: the quote's feature id of feature 1, 2, …; 0: rejected earlier */
  GStringChunk *strings;    /* owns the non-static text */
} EmReadResult;

/* More than any note: what lies beyond is not looked at, stays visible as unused and is counted. */
enum { EM_NOTES_READ_MAX = 2 * 1024 * 1024 };

/* text: any bytes; invalid UTF-8 is read as unusable characters. Linear in length; at most 4 GB. units: what a
 * bare number is when nothing says (and then a question asks). Never NULL. */
EmReadResult *em_notes_read (const EmLexicon *lexicon, const char *text, gsize length, EmUnits units);
void          em_read_result_free (EmReadResult *result);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (EmReadResult, em_read_result_free)

/* line<TAB>feature<TAB>field<TAB>value<TAB>unit, a row a field, question and unused stretch that is not minor, by feature (0 first) then
 * position. Missing fields have no row. "question" has the code as value, "unused" the words. Tabs, line ends and bytes
 * that are no UTF-8 are written as spaces. */
char *em_read_result_to_tsv (const EmReadResult *result, const char *text);

/* Puts proposals into quote, and text as its notes: general fields and features with marks and origins. A feature is
 * matched to its earlier proposal by its words. What the office entered, corrected or answered stays; stretches it rejected stay
 * rejected; proposals whose words are gone go too, unless corrected. A quote without features so far is shown in the unit that
 * all sizes are written in. Fills result->ids. */
void em_notes_apply (EmReadResult *result, const char *text, EmQuote *quote);
/* Which questions of result still wait for their answer in the quote it was applied to, and how many; free with g_free. The quote's
 * marks tell, so that a step back opens a question again. */
gboolean *em_notes_open_questions (const EmReadResult *result, const EmQuote *quote, int *out_n);
/* Applies an answer to the quote's feature; general questions take feature_index −1. What the office entered itself meanwhile stays,
 * unless the answer is about nothing else. */
void em_notes_answer (const EmReadResult *result, guint question, int answer, EmQuote *quote, int32_t feature_index);
/* The office changed a field itself ("count", "stock", a kind's field …): later readings leave it alone. */
void em_notes_corrected (EmQuote *quote, int32_t feature_index, const char *field);
/* Removes the feature; later readings don't propose its words again. */
void em_notes_reject (EmQuote *quote, int32_t feature_index);

/* Translated sentences for the stable codes; the code itself when unknown. */
const char *em_notes_question_text (const char *code);
const char *em_notes_answer_text   (const char *answer);
const char *em_notes_reason_text   (const char *reason);

/* Text of an ASCII DXF (TEXT, MTEXT, DIMENSION, $INSUNITS), one note a line; NULL and error when it is not one. */
char *em_dxf_text (const char *bytes, gsize length, EmUnits *out_units, gboolean *out_has_units, GError **error);

G_END_DECLS
