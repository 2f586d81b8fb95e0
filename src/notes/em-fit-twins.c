/* em-fit-twins: a size as it is and as it shall be: what is to be added to flat things, ribs and the walls of slots.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-fit-parts.h"

/* A rib or a pad that lost more of its height is told as broken off (common practice, no source). */
static const double LEAST_HEIGHT = 0.5;

/* A hole is closed to its size by less (common practice, no source). */
static const double CLOSED_SHARE = 0.15;

/* "down to 4.8 from 5.0": what it was stands right behind what it is. */
static gboolean
is_from_behind (const EmFitter *f, guint to_be, guint now)
{
  static const char *const from[] = { "from", "instead of", "statt", "von", "en vez de", "au lieu de" };
  const EmSize *old = em_item_size (f->items, now);

  return to_be > now && to_be <= now + 3 && (old->roles & EM_ROLE_WORN) != 0 && em_item_size (f->items, to_be)->roles == 0 &&
         em_item_is_any_word_of (f->items, to_be - 1, from, G_N_ELEMENTS (from));
}

/* "should be .500 thick, measures .488", "height should be 8.0 but is 7.6": the difference is what to add to a flat thing. out_twins:
 * the two sizes that tell it. */
void
em_fitter_difference (EmFitter *f, guint out_twins[2])
{
  GArray *sizes = f->proto->sizes;
  const char *field = f->fit->kind == SEAT ? NULL : em_fitter_build_field (f->fit->kind);

  for (guint i = 0; field != NULL && !f->has_add && i < sizes->len && i < EM_BARE_MAX; i++)
    for (guint k = 0; k < sizes->len && k < EM_BARE_MAX; k++)
      {
        guint to_be = g_array_index (sizes, guint, i), now = g_array_index (sizes, guint, k);
        const EmSize *new = em_item_size (f->items, to_be), *old = em_item_size (f->items, now);
        double share = em_fitter_mm (f, now) / em_fitter_mm (f, to_be);

        gboolean is_now = (old->roles & EM_ROLE_WORN) != 0 ||
                          ((f->fit->kind == FACE || f->fit->kind == RIB) && (old->roles & EM_ROLE_HEIGHT) != 0);

        /* "step height .125, now .118" */
        gboolean is_to_be = (new->roles & EM_ROLE_FINISHED) != 0 || is_from_behind (f, to_be, now) ||
                            (f->fit->kind == FACE && (new->roles & (EM_ROLE_HEIGHT | EM_ROLE_WORN)) == EM_ROLE_HEIGHT &&
                             (old->roles & EM_ROLE_WORN) != 0) ||
                            /* "Maß 12,40 ist nur noch 12,15, Fläche 26 x 10" */
                            (f->fit->kind == FACE && i + 1 == k && new->roles == 0 && old->roles == EM_ROLE_WORN && sizes->len == 4 &&
                             (f->proto->roles & (EM_ROLE_BUILD | EM_ROLE_ADD | EM_ROLE_LENGTH | EM_ROLE_WIDTH)) == 0) ||
                            /* "Zunge 5,00 dick ist 4,85" */
                            ((f->fit->kind == FACE || f->fit->kind == SIDEWALL) && new->roles == EM_ROLE_THICKNESS && old->roles == EM_ROLE_WORN);

        if (!is_to_be || !is_now || (old->roles & EM_ROLE_FINISHED) != 0 ||
            new->unit != old->unit ||
            new->chain != 0 || old->chain != 0 ||
              ((new->roles | old->roles) & (EM_ROLE_RADIUS | EM_ROLE_DIAMETER | EM_ROLE_LENGTH | EM_ROLE_WIDTH)) != 0 ||
                share <= (((new->roles | old->roles) & EM_ROLE_HEIGHT) != 0 ? LEAST_HEIGHT : em_twin_low) || share >= 1 ||
            em_fitter_mm (f, to_be) * (1 - share) > em_build_max_mm)
          continue;
        em_fitter_put (f, field, to_be, 1 - share, "from-words");
        em_item (f->items, to_be)->is_used = em_item (f->items, now)->is_used = TRUE;
        out_twins[0] = to_be;
        out_twins[1] = now;
        return;
      }
}

/* "slot opened up to 8.3, must be 8.0", "keyway 8 wide is now 8.15": its wall has lost the difference, and the slot shall be so wide. */
void
em_fitter_widened (EmFitter *f, guint out_twins[2])
{
  const guint32 width = EM_ROLE_WIDTH | EM_ROLE_GAP | EM_ROLE_WORN | EM_ROLE_FINISHED | EM_ROLE_SLOT | EM_ROLE_PER_SIDE;
  GArray *sizes = f->proto->sizes;

  for (guint i = 0; i < sizes->len && i < EM_BARE_MAX; i++)
    for (guint k = 0; k < sizes->len && k < EM_BARE_MAX; k++)
      {
        guint to_be = g_array_index (sizes, guint, i), now = g_array_index (sizes, guint, k);
        const EmSize *new = em_item_size (f->items, to_be), *old = em_item_size (f->items, now);
        double share = em_fitter_mm (f, to_be) / em_fitter_mm (f, now);

        /* "keyway 8 wide is now 8.15" */
        gboolean is_to_be = (new->roles & EM_ROLE_FINISHED) != 0 || ((new->roles & (EM_ROLE_WIDTH | EM_ROLE_GAP)) != 0 && (new->roles & EM_ROLE_WORN) == 0 &&
                                                                     (old->roles & EM_ROLE_WORN) != 0);

        if (!is_to_be || (old->roles & EM_ROLE_FINISHED) != 0 || ((new->roles | old->roles) & ~width) != 0 ||
            new->unit != old->unit || new->chain != 0 || old->chain != 0 || share <= em_twin_low || share >= 1)
          continue;
        em_fitter_put (f, "slot_width", to_be, 1, "from-words");
        em_item (f->items, to_be)->is_used = em_item (f->items, now)->is_used = TRUE;
        out_twins[0] = to_be;
        out_twins[1] = now;
        return;
      }
}

/* Of a slot that became too wide nothing else may tell what its wall has lost. */
void
em_fitter_lost_width (EmFitter *f, const guint twins[2])
{
  const EmFitted *width = em_fit_find (f->fit, "slot_width");

  if (width != NULL && width->item == twins[0] && em_fit_find (f->fit, "thickness") == NULL)
    em_fitter_put (f, "thickness", twins[0], em_fitter_mm (f, twins[1]) / em_fitter_mm (f, twins[0]) - 1, "from-words");
}

/* "slot 4 wide: both flanks +0.1": of its walls the width is the slot's. */
void
em_fitter_mark_slot (EmFitter *f)
{
  const EmSense *noun = f->proto->noun != EM_NO_ITEM ? em_item_says (f->items, f->proto->noun, EM_SAYS_KIND) : NULL;

  for (guint i = 0; f->fit->kind == SIDEWALL && noun != NULL && em_fit_is_slot (noun) && i < f->proto->sizes->len && i < EM_BARE_MAX; i++)
    {
      EmSize *size = em_item_size (f->items, g_array_index (f->proto->sizes, guint, i));

      if (size->roles == EM_ROLE_WIDTH || size->roles == EM_ROLE_GAP)
        size->roles |= EM_ROLE_SLOT;
    }
}

gboolean
em_fit_is_closed_to_size (const EmItems *items, const EmProto *proto)
{
  for (guint i = 0; i + 1 < proto->sizes->len && i < EM_BARE_MAX; i++)
    {
      const EmSize *now = em_item_size (items, g_array_index (proto->sizes, guint, i));
      const EmSize *new = em_item_size (items, g_array_index (proto->sizes, guint, i + 1));
      double ratio = em_fraction_in_mm (now->value, now->unit) / em_fraction_in_mm (new->value, new->unit);

      if ((now->roles & new->roles & EM_ROLE_DIAMETER) != 0 && now->unit == new->unit && ratio > 1 && ratio - 1 < CLOSED_SHARE)
        return TRUE;
    }
  return FALSE;
}
