/* em-fit-parts: what the files of em-fit share.
 *
 * Private to em-fit.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-fit.h"

G_BEGIN_DECLS

enum { EM_BARE_MAX = 12 };

/* Above this a bare size after "build up" is no build-up: micro welding adds tenths (common practice, no source). */
static const double em_build_max_mm = 2.5;

/* A worn diameter is nearer to the finished one than this (common practice, no source). */
static const double em_twin_low = 0.85;

enum { EM_FIT_ROW_MAX = 8 };

/* A field takes the first size whose label is among roles. position: its place in an unlabelled row, from 1; 0: none. */
typedef struct
{
  const char *field;
  guint32     roles;
  int         position;
  gboolean    is_required;
  const char *reason;      /* why the label is only likely to mean the field, or NULL */
} EmFitRow;

extern const EmFitRow em_fit_rows[EM_N_NOTE_KINDS][EM_FIT_ROW_MAX];

typedef struct
{
  const EmItems *items;
  const EmProto *proto;
  EmFit         *fit;
  guint          n_bare;
  guint          bare[EM_BARE_MAX];  /* items of sizes without a label */
  gboolean       has_add;         /* a size stands right beside a verb of building */
} EmFitter;

double      em_fitter_mm         (const EmFitter *f, guint item);
gboolean    em_fitter_is_near    (double a, double b);
/* Gives the size times factor to the field; reason NULL: the size's own. */
void        em_fitter_put        (EmFitter *f, const char *field, guint item, double factor, const char *reason);
void        em_fitter_put_text   (EmFitter *f, const char *field, const char *text, const char *reason);
void        em_fitter_ask        (EmFitter *f, const char *code, guint item);
/* Takes back what the field was given. */
void        em_fitter_drop       (EmFitter *f, const char *field);

/* The same, unless the field or the size is taken: FALSE. */
gboolean    em_fitter_offer      (EmFitter *f, const char *field, guint item, double factor, const char *reason);
/* "in a slot 3 wide, 12 deep" */
gboolean    em_fitter_slot       (EmFitter *f, guint item);
/* Gives a size that tells what it is to its field; FALSE: it tells nothing, or the field is taken. */
gboolean    em_fitter_labelled   (EmFitter *f, guint item);
/* A size of what was that another tells better. */
gboolean    em_fitter_is_outdone (const EmFitter *f, guint item);
/* More than the field is asked for in micro welding. */
gboolean    em_fitter_is_unusual     (int kind, const char *field, double value_mm);
gboolean    em_fitter_is_round_form  (const char *form);
/* "that hole is 9/16 across and 3/4 deep, weld it shut": round as the bore it was. */
gboolean    em_fitter_is_filled_hole (const EmFitter *f);
/* Gives the sizes that tell nothing to the fields that are left. */
void        em_fitter_bare           (EmFitter *f);
/* Bores, pins and seats: two diameters are told apart by wear, which closes a pin and opens a bore. */
void        em_fitter_round      (EmFitter *f);

/* The field that takes what is to be added; NULL: none. */
const char *em_fitter_build_field    (int kind);
/* Of a size as it is and as it shall be the difference is what to add. out_twins: the two; EM_NO_ITEM: none. */
void        em_fitter_difference     (EmFitter *f, guint out_twins[2]);
void        em_fitter_widened        (EmFitter *f, guint out_twins[2]);
void        em_fitter_lost_width     (EmFitter *f, const guint twins[2]);
/* "slot 4 wide: both flanks +0.1": of its walls the width is the slot's. */
void        em_fitter_mark_slot      (EmFitter *f);

/* What follows from the sizes that were found. */
void        em_fitter_finish_nick    (EmFitter *f);
void        em_fitter_finish_corner  (EmFitter *f);
/* "(should be 0.05)" beside a larger radius. */
gboolean    em_fitter_is_left        (const EmFitter *f, guint item);
gboolean    em_fitter_finish_side    (EmFitter *f);
void        em_fitter_finish_seat    (EmFitter *f);
void        em_fitter_finish_cone    (EmFitter *f);
void        em_fitter_finish_form    (EmFitter *f);
void        em_fitter_finish_face    (EmFitter *f);
/* Of a circular edge the part that is worn, told in degrees: as long as that. */
void        em_fitter_finish_arc     (EmFitter *f);
/* A round face with a width, or with two diameters, is a ring and no disc. */
void        em_fitter_finish_ring    (EmFitter *f);

G_END_DECLS
