/* em-fit: the kind of a proposal, and a field for each of its sizes.
 *
 * Labelled sizes go where their label says; sizes without one go by their place in the row
 * (length first, as on drawings), and say so. What fits nowhere is left over.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-grammar.h"

G_BEGIN_DECLS

enum { EM_FIT_MAX = 14, EM_FIT_QUESTION_MAX = 4 };

typedef struct
{
  const char *field;
  double      value, low, high;  /* mm, mm², degrees */
  double      factor;            /* value = size × factor: ½ on diameter, 2 for an angle per side */
  guint       item;              /* the size, or EM_NO_ITEM */
  guint       words;             /* the item to show for it where that is another; EM_NO_ITEM: the size */
  EmReadState state;
  const char *reason;
  const char *text;
} EmFitted;

typedef struct
{
  const char *code;
  guint       item;
} EmFitQuestion;

typedef struct
{
  int           kind;            /* index in em_note_kinds */
  guint         n_fitted;
  EmFitted      fitted[EM_FIT_MAX];
  guint         n_questions;
  EmFitQuestion question[EM_FIT_QUESTION_MAX];
  guint         n_either;
  EmFitted      either[2];       /* of "two-values": the sizes of one field of which one is right */
  EmFitted      cone[2];         /* of "cone-angle": what the angle makes of the seat if it is included, if it is per side */
  gboolean      is_complete;     /* every required field has a size */
  gboolean      has_unplaced;    /* a size of the repair found no field */
} EmFit;

/* The likeliest kind, −1 when nothing tells; *out_second the next as likely, or −1 when the first stands alone;
 * *out_is_close (may be NULL): another kind has more than half its weight. */
int         em_fit_kind  (const EmItems *items, const EmProto *proto, int *out_second, gboolean *out_is_close);
/* Sizes have their units by now. form: a form given in words, or NULL. */
void        em_fit_sizes (const EmItems *items, const EmProto *proto, int kind, EmFit *out_fit);
const EmFitted *em_fit_find (const EmFit *fit, const char *field);
/* Required fields of a kind that the fit lacks; NULL-terminated, at most max. */
guint       em_fit_missing (const EmFit *fit, const char **out_fields, guint max);

/* A slot or a groove that was cut, by its name; no scratch. */
gboolean em_fit_is_slot (const EmSense *noun);

/* "close hole ⌀10.15 to ⌀10.00": from a diameter to one a little smaller. */
gboolean em_fit_is_closed_to_size (const EmItems *items, const EmProto *proto);

/* A text given in words for the field, or NULL. */
const char *em_fit_given_text (const EmProto *proto, const char *field);

G_END_DECLS
