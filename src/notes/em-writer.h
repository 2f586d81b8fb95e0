/* em-writer: what the files share that write a reading.
 *
 * Private to em-notes.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-fit.h"
#include "em-notes.h"
#include "em-read-result.h"

G_BEGIN_DECLS

enum { EM_LISTED_KEPT = 16 /* features of a list that "as item 1" may refer to */ };

typedef struct
{
  const char   *text;
  EmItems      *items;
  EmGrammar    *grammar;
  EmReadResult *result;
  GArray       *fields;      /* EmReadField of one feature */
  GArray       *as_mm, *as_inch; /* EmReadField: what the answers to inch or mm set */
  guint         first_guess; /* item of the first size whose unit must be asked */
  int           guess_feature; /* its feature; 0: several */
  gboolean      has_decimal_comma;
  guint         n_three;     /* sizes whose comma may part thousands */
  EmFit         last_fit;    /* of the feature written last, for "same" */
  struct { guint64 head; EmFit fit; } listed[EM_LISTED_KEPT]; /* by the number that heads it, for "as item 1" */
  guint32       last_line;   /* where it ends */
} EmWriter;

/* A field without a value, told by the item; EM_NO_ITEM: by no words. */
EmReadField em_writer_field       (const EmWriter *w, int feature, const char *field, guint item);
EmReadField em_writer_fitted      (const EmWriter *w, int feature, const EmFitted *fitted);
double      em_writer_mm          (const EmWriter *w, guint item);

/* What the fit of a repair leaves open. */
void        em_writer_ask_fit     (EmWriter *w, int feature, const EmFit *fit);
void        em_writer_ask_count   (EmWriter *w, int feature, guint item);
/* "2 x 45°": two places, or two legs? */
void        em_writer_ask_chamfer (EmWriter *w, int feature, guint item);
/* "1,250": 1.25 or 1250? */
void        em_writer_ask_comma   (EmWriter *w, int feature, const EmFitted *fitted);
/* ".250 (6.2)": which of the two? */
void        em_writer_ask_dual    (EmWriter *w, int feature, const EmFitted *fitted);
/* Between two kinds; first below 0: among the usual ones. */
void        em_writer_ask_kind    (EmWriter *w, int feature, const EmProto *proto, int first, int second);
/* Inch or mm, of all sizes whose unit was guessed; nothing if none was. */
void        em_writer_ask_units   (EmWriter *w);

G_END_DECLS
