/* em-fit-bare: fields for sizes that do not tell what they are, by their places in a row and by how large they are.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-fit-parts.h"

#include <string.h>

/* No face is that narrow and no wall that low (common practice, no source). */
static const double THIN_MM = 0.6;

enum { SLENDER = 5 /* times as long as wide is a groove */ };

static const EmFitRow *
row_at (const EmFitter *f, int position)
{
  for (const EmFitRow *row = em_fit_rows[f->fit->kind]; row < em_fit_rows[f->fit->kind] + EM_FIT_ROW_MAX && row->field != NULL; row++)
    if (row->position == position)
      return row;
  return NULL;
}

static guint
free_positions (const EmFitter *f, const EmFitRow **out_rows)
{
  guint n = 0;

  for (int position = 1; position <= 3; position++)
    {
      const EmFitRow *row = row_at (f, position);
      gboolean is_round = (f->fit->kind == FACE || f->fit->kind == RECESS) &&
                          (em_fit_find (f->fit, "diameter") != NULL || em_fit_find (f->fit, "area") != NULL);

      if (row == NULL || em_fit_find (f->fit, row->field) != NULL || (is_round && position < 3))
        continue;
      out_rows[n++] = row;
    }
  return n;
}

static void
move_to (EmFitter *f, guint from, guint to)
{
  guint item = f->bare[from];

  for (; from > to; from--)
    f->bare[from] = f->bare[from - 1];
  for (; from < to; from++)
    f->bare[from] = f->bare[from + 1];
  f->bare[to] = item;
}

static guint
extreme (const EmFitter *f, gboolean is_largest)
{
  guint at = 0;

  for (guint i = 1; i < f->n_bare; i++)
    if (is_largest ? em_fitter_mm (f, f->bare[i]) > em_fitter_mm (f, f->bare[at])
        : em_fitter_mm (f, f->bare[i]) < em_fitter_mm (f, f->bare[at]))
      at = i;
  return at;
}

static gboolean
is_free (const EmFitRow **free_rows, guint n, guint at, const char *field)
{
  return at < n && strcmp (free_rows[at]->field, field) == 0;
}

/* The bare sizes of a repair and the fields that are free for them. */
typedef struct
{
  EmFitter   *f;
  const EmFitRow **rows;
  guint       n;
} Places;

/* "pad face .015", "SR 16, 25 dia mouth, 0.4 mm all over", "rounded about 0.4 mm": one size, too small for the first field. */
static gboolean
is_small_alone (const Places *p)
{
  EmFitter *f = p->f;
  int kind = f->fit->kind;

  if (f->n_bare != 1 || em_fitter_mm (f, f->bare[0]) > em_build_max_mm)
    return FALSE;
  if (kind == FACE || kind == SIDEWALL)
    return p->n == 3 || (p->n == 2 && is_free (p->rows, p->n, 1, "thickness") && em_fitter_mm (f, f->bare[0]) <= THIN_MM);
  if (kind == SEAT)
    return p->n == 2 && is_free (p->rows, p->n, 1, "thickness");
  return kind == WORN_CORNER && p->n == 2 &&
         (em_item_size (f->items, f->bare[0])->roles & (EM_ROLE_BUILD | EM_ROLE_ADD | EM_ROLE_WELD)) == 0;
}

/* "nick 1 x 8 x 1": the longest is the length. */
static gboolean
move_longest_of_nick (const Places *p)
{
  if (p->f->fit->kind != EDGE_NICK || p->n != 3 || p->f->n_bare != 3 || extreme (p->f, TRUE) == 0)
    return FALSE;
  move_to (p->f, extreme (p->f, TRUE), 0);
  return TRUE;
}

/* ".015 on the wall, 1.75 x .6": the one outside the row is the thickness. */
static gboolean
move_one_outside_row (const Places *p)
{
  EmFitter *f = p->f;

  if ((f->fit->kind != FACE && f->fit->kind != SIDEWALL) || p->n != 3 || f->n_bare != 3 ||
      em_item_size (f->items, f->bare[0])->chain != 0 || em_item_size (f->items, f->bare[1])->chain == 0)
    return FALSE;
  move_to (f, 0, 2);
  return TRUE;
}

/* ".015 x 1.75 x .6", "0.2 over 22 x 9": the smallest is what to add; of a recess it is the depth. */
static gboolean
move_smallest (const Places *p)
{
  EmFitter *f = p->f;
  gboolean is_flat = f->fit->kind == FACE || f->fit->kind == SIDEWALL;

  if ((!is_flat && f->fit->kind != RECESS) || f->n_bare != p->n ||
      !is_free (p->rows, p->n, p->n - 1, is_flat ? "thickness" : "depth") || extreme (f, FALSE) == p->n - 1)
    return FALSE;
  move_to (f, extreme (f, FALSE), p->n - 1);
  return TRUE;
}

/* "R .5" without its R: an edge is longer than it is worn. A rib is longer than it is thick. */
static gboolean
move_longest_of_edge (const Places *p)
{
  if ((p->f->fit->kind != WORN_CORNER && p->f->fit->kind != RIB) || !is_free (p->rows, p->n, 0, "length") ||
      extreme (p->f, TRUE) == 0)
    return FALSE;
  move_to (p->f, extreme (p->f, TRUE), 0);
  return TRUE;
}

/* "rib 20 x 8 x 1.5": thinner than it is deep. */
static gboolean
move_thickness_of_rib (const Places *p)
{
  EmFitter *f = p->f;

  if (f->fit->kind != RIB || f->n_bare != 3 || p->n != 3 || em_fitter_mm (f, f->bare[2]) >= em_fitter_mm (f, f->bare[1]))
    return FALSE;
  move_to (f, 2, 1);
  return TRUE;
}

/* "gouge 30 x 2 x 0.5": as long, as wide and as deep, as drawings have it. */
static gboolean
move_width_of_groove (const Places *p)
{
  guint last = p->f->n_bare - 1;

  /* "scratch 20 long x 0.1 x 0.05" */
  if (p->f->fit->kind != GROOVE || p->n != p->f->n_bare || last < 1 || last > 2 || !is_free (p->rows, p->n, last, "gap") ||
      !is_free (p->rows, p->n, last - 1, "depth") ||
      em_item_size (p->f->items, p->f->bare[last])->chain == 0 || em_item_size (p->f->items, p->f->bare[last - 1])->chain == 0)
    return FALSE;
  move_to (p->f, last, last - 1);
  return TRUE;
}

/* "3 x 22": the longer one is the length. */
static gboolean
move_longer_side (const Places *p)
{
  EmFitter *f = p->f;

  if ((f->fit->kind != FACE && f->fit->kind != RECESS) || !is_free (p->rows, p->n, 0, "length") ||
      !is_free (p->rows, p->n, 1, "width") || em_fitter_mm (f, f->bare[1]) <= em_fitter_mm (f, f->bare[0]) ||
      (em_item_size (f->items, f->bare[0])->flags & EM_TOKEN_THREE) != 0 /* "1,250 x 12": it may be a thousand */)
    return FALSE;
  move_to (f, 0, 1);
  return TRUE;
}

/* Brings the bare sizes into the order of the free fields where their sizes tell more than their places; returns why they have
 * the fields they get. */
static const char *
order_bare (EmFitter *f, const EmFitRow **free_rows, guint n)
{
  static const struct { gboolean (*move)(const Places *p); const char *reason; } moves[] = {
    { move_longest_of_nick, "largest" }, { move_one_outside_row, "from-words" }, { move_smallest, "smallest" },
    { move_longest_of_edge, "largest" }, { move_thickness_of_rib, "smallest" },
    { move_width_of_groove, NULL /* and so is this */ }, { move_longer_side, NULL /* as good as by place */ },
  };
  Places p = { f, free_rows, n };
  const char *reason = "position";

  if (is_small_alone (&p))
    {
      free_rows[0] = free_rows[n - 1];
      return "smallest";
    }
  for (gsize i = 0; i < G_N_ELEMENTS (moves) && f->n_bare > 1; i++)
    if (moves[i].move (&p) && moves[i].reason != NULL)
      reason = moves[i].reason;
  return reason;
}

/* "3 mm too far over. 22 x 8, 5 deep": of more bare sizes than fields those of the one row that fills the fields are meant. */
static void
keep_row (EmFitter *f, guint n)
{
  guint kept[EM_BARE_MAX], n_kept = 0;
  guint32 chain = 0;

  if (f->n_bare <= n || n < 2)
    return;
  for (guint i = 0; i < f->n_bare; i++)
    {
      guint32 its = em_item_size (f->items, f->bare[i])->chain;

      if (its != 0 && chain != 0 && its != chain)
        return;
      chain = its != 0 ? its : chain;
      if (its != 0)
        kept[n_kept++] = f->bare[i];
    }
  if (n_kept != n)
    return;
  memcpy (f->bare, kept, n_kept * sizeof *kept);
  f->n_bare = n_kept;
}

/* One bare size beside a verb, no row. */
static gboolean
is_to_add (const EmFitter *f, guint item)
{
  const EmSize *size = em_item_size (f->items, item);
  gboolean is_beside = f->fit->kind != SEAT && f->proto->has_build;

  return size->chain == 0 && em_fitter_mm (f, item) <= em_build_max_mm && (is_beside || (size->roles & EM_ROLE_WELD) != 0);
}

/* "BUILD UP FACE .015": one bare size beside a verb of building, no row. */
static void
fit_build_up (EmFitter *f)
{
  const char *build = em_fitter_build_field (f->fit->kind);

  for (guint i = 0; build != NULL && i < f->n_bare && em_fit_find (f->fit, build) == NULL; i++)
    if (is_to_add (f, f->bare[i]))
      {
        em_fitter_put (f, build, f->bare[i], 1, "from-words");
        move_to (f, i, f->n_bare - 1);
        f->n_bare--;
      }
}

/* A bare size that its kind alone tells: TRUE when nothing is left to do. n: how many fields are free. */
static gboolean
fit_by_kind (EmFitter *f, guint n)
{
  gboolean is_recess = f->fit->kind == RECESS && f->n_bare > 0;
  /* "pit 0.6, 0.3 deep" */
  gboolean is_pit = is_recess && f->n_bare == 1 && n == 2 && em_fitter_is_round_form (em_fit_given_text (f->proto, "form"));
  /* "Dowel hole 8 mm, fill it 20 mm deep", "tapar taladro 6 x 10 prof": what is filled was round. */
  gboolean is_hole = is_recess && (em_item_size (f->items, f->bare[0])->chain == 0 || f->n_bare == 1) && em_fitter_is_filled_hole (f) &&
                     em_fit_find (f->fit, "diameter") == NULL && em_fit_find (f->fit, "depth") != NULL &&
                     em_fit_find (f->fit, "length") == NULL;

  if (is_pit || is_hole)
    em_fitter_put (f, "diameter", f->bare[0], 1, "from-words");
  /* "the crest needs 0.4" */
  else if (f->fit->kind == RIB && f->n_bare == 1 && em_item_size (f->items, f->bare[0])->chain == 0 &&
           em_fit_find (f->fit, "coat") == NULL && em_fitter_mm (f, f->bare[0]) <= em_build_max_mm)
    em_fitter_put (f, "coat", f->bare[0], 1, "smallest");
  else if (f->fit->kind == EDGE_NICK && f->n_bare == 1 && n == 3)
    {
      em_fitter_ask (f, "which-field", f->bare[0]);
      em_item (f->items, f->bare[0])->is_used = TRUE;
    }
  else
    return FALSE;
  return TRUE;
}

/* "two cracks, 8 mm and 5 mm long": a size that stands in no row is no groove's width. */
static gboolean
is_no_width (const EmFitter *f, const EmFitRow **free_rows, guint n)
{
  return f->fit->kind == GROOVE && n == 1 && strcmp (free_rows[0]->field, "gap") == 0 && f->n_bare > 0 &&
         em_item_size (f->items, f->bare[0])->chain == 0 &&
         em_fitter_mm (f, f->bare[0]) * SLENDER > em_fit_find (f->fit, "length")->value;
}

/* "0.3 on top and 0.3 down 5 mm each side": the coat of a rib, told for its sides, too. */
static void
use_coat_twice (EmFitter *f)
{
  const EmFitted *coat = f->fit->kind == RIB ? em_fit_find (f->fit, "coat") : NULL;
  guint n = 0;

  for (guint i = 0; coat != NULL && i < f->n_bare; i++)
    if (f->bare[i] > coat->item && em_fitter_is_near (em_fitter_mm (f, f->bare[i]), coat->value))
      em_item (f->items, f->bare[i])->is_used = TRUE;
    else
      f->bare[n++] = f->bare[i];
  f->n_bare = coat != NULL ? n : f->n_bare;
}

void
em_fitter_bare (EmFitter *f)
{
  const EmFitRow *free_rows[4];
  const char *reason;
  guint n;

  fit_build_up (f);
  use_coat_twice (f);
  n = free_positions (f, free_rows);
  if (fit_by_kind (f, n))
    return;
  keep_row (f, n);
  reason = order_bare (f, free_rows, n);
  if (is_no_width (f, free_rows, n))
    return;
  for (guint i = 0; i < f->n_bare && i < n; i++)
    if (em_item_size (f->items, f->bare[i])->is_guessed ||
        !em_fitter_is_unusual (f->fit->kind, free_rows[i]->field, em_fitter_mm (f, f->bare[i])))
      em_fitter_put (f, free_rows[i]->field, f->bare[i], 1, n == 1 ? "last-free" : reason);
  /* A second row of sizes for one repair is another repair, or a change of mind: only the office can tell. */
  if (f->n_bare >= n + 2)
    em_fitter_ask (f, "two-values", f->bare[n]);
}
