/* em-fit-round: the sizes of bores, pins and seats.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-fit-parts.h"

#include <math.h>
#include <string.h>

enum { FAR_RATIO = 5 /* no two diameters of one thing are as far apart */, ALIKE_RATIO = 2 /* and where only one is called so,
      not even thus */ };

/* Two diameters of one thing farther apart than this are doubtful (common practice, no source). */
static const double UNLIKE_RATIO = 1.3;

/* What is told twice differs by no more than its decimals do. */
static const double TOLD_MM = 0.0013;

/* The word of wear right behind a size, or behind "is" there; EM_NO_ITEM: none. */
static guint
wear_behind (const EmFitter *f, guint item)
{
  static const char *const is[] = { "is", "are", "ist", "sind", "est", "sont", "está", "están" };
  guint word = item + 1;

  word += em_item_is_any_word_of (f->items, word, is, G_N_ELEMENTS (is));
  return word < f->items->items->len && em_item_says (f->items, word, EM_SAYS_LABEL) != NULL &&
         (em_item_says (f->items, word, EM_SAYS_LABEL)->roles & EM_ROLE_WORN) != 0 ? word : EM_NO_ITEM;
}

static gboolean
is_named_behind (const EmFitter *f, guint item)
{
  return wear_behind (f, item) != EM_NO_ITEM;
}

/* A whole number or one with a fit, and no word like "now" behind it. */
static gboolean
is_called (const EmFitter *f, guint item)
{
  const EmSize *size = em_item_size (f->items, item);

  return (size->has_fit || (size->is_whole && size->unit != EM_UNIT_INCH)) && (size->roles & EM_ROLE_DIAMETER) != 0 &&
         em_item_says (f->items, wear_behind (f, item), EM_SAYS_GLUE) == NULL && size->label_item != item + 1;
}

static gboolean
asks (const EmFitter *f, const char *code)
{
  for (guint i = 0; i < f->fit->n_questions; i++)
    if (strcmp (f->fit->question[i].code, code) == 0)
      return TRUE;
  return FALSE;
}

static void
fit_diameters (EmFitter *f, const guint *items, guint n)
{
  gboolean is_bore = f->fit->kind == BORE, is_seat = f->fit->kind == SEAT;
  guint large = items[0], small = items[0];
  gboolean has_role;

  for (guint i = 1; i < n; i++)
    {
      large = em_fitter_mm (f, items[i]) > em_fitter_mm (f, large) ? items[i] : large;
      small = em_fitter_mm (f, items[i]) < em_fitter_mm (f, small) ? items[i] : small;
    }
  /* Wear takes no third of a diameter: what is so far apart may be something else. */
  has_role = em_fitter_mm (f, large) < UNLIKE_RATIO * em_fitter_mm (f, small) &&
             ((em_item_size (f->items, large)->roles | em_item_size (f->items, small)->roles) &
              (EM_ROLE_WORN | EM_ROLE_FINISHED)) != 0;
  /* ".5 dia +.004 dia": no two of one thing, but how much on the diameter. */
  if (!is_seat && n == 2 && em_fitter_mm (f, small) <= em_build_max_mm &&
      em_fitter_mm (f, large) > FAR_RATIO * em_fitter_mm (f, small) && em_fit_find (f->fit, "build") == NULL)
    {
      em_fitter_put (f, "diameter", large, 1, "from-words");
      em_fitter_put (f, "build", small, 0.5, "from-words");
    }
  else if (em_fitter_is_near (em_fitter_mm (f, large), em_fitter_mm (f, small)))
    {
      /* "OD 12 worn, build up 0.3": how much it lacks is only asked to be per side or not. */
      gboolean is_worn = !is_seat && em_fit_find (f->fit, "build") == NULL && !asks (f, "side-or-diameter") &&
                         (em_item_size (f->items, large)->roles & (EM_ROLE_WORN | EM_ROLE_FINISHED)) == EM_ROLE_WORN &&
                         /* "⌀12 H7 worn", "⌀12 worn, 20 deep": a whole number is what it is called by */
                         !(n == 1 && is_named_behind (f, large) && is_called (f, large)) &&
                         /* "O.D. 12 worn, build up 0.3": the size that it has by name */
                         !(n == 1 && is_named_behind (f, large) && (f->proto->roles & (EM_ROLE_BUILD | EM_ROLE_ADD)) != 0);

      /* "pin ⌀8 worn": what is worn may still be told by the size it should have. */
      em_fitter_put (f, is_worn ? "worn" : "diameter", large, 1, n == 1 && is_named_behind (f, large) ? "from-words" : NULL);
    }
  else if (is_seat)
    {
      em_fitter_put (f, "diameter", large, 1, NULL);
      em_fitter_put (f, "diameter_small", small, 1, NULL);
    }
  else
    {
      em_fitter_put (f, "diameter", is_bore ? small : large, 1, has_role ? NULL : is_bore ? "larger-is-worn" : "smaller-is-worn");
      em_fitter_put (f, "worn", is_bore ? large : small, 1, has_role ? NULL : is_bore ? "larger-is-worn" : "smaller-is-worn");
    }
  for (guint i = 0; i < n; i++)
    if (em_fitter_is_near (em_fitter_mm (f, items[i]), em_fitter_mm (f, large)) ||
        em_fitter_is_near (em_fitter_mm (f, items[i]), em_fitter_mm (f, small)))
      em_item (f->items, items[i])->is_used = TRUE;
}

/* "pin 12 x 45 worn": behind a diameter and much greater, so that it is how long it is, whatever the word behind it says. */
static gboolean
is_length_of_row (const EmFitter *f, guint item)
{
  const double nearly = 0.2;
  const guint32 other = EM_ROLE_LENGTH | EM_ROLE_WIDTH | EM_ROLE_HEIGHT | EM_ROLE_DEPTH | EM_ROLE_THICKNESS | EM_ROLE_DIAMETER | EM_ROLE_RADIUS | EM_ROLE_FINISHED;
  const EmSize *size = em_item_size (f->items, item);

  for (guint i = 1; size->chain != 0 && f->fit->kind != SEAT && (size->roles & EM_ROLE_WORN) != 0 && (size->roles & other) == 0 && i < f->proto->sizes->len && i < EM_BARE_MAX; i++)
    {
      guint before = g_array_index (f->proto->sizes, guint, i - 1);

      if (g_array_index (f->proto->sizes, guint, i) == item)
        return em_item_size (f->items, before)->chain == size->chain && em_fitter_mm (f, item) > (1 + nearly) * em_fitter_mm (f, before);
    }
  return FALSE;
}

static gboolean
is_diameter (const EmFitter *f, guint item)
{
  const guint32 elsewhere = EM_ROLE_LENGTH | EM_ROLE_DEPTH | EM_ROLE_HEIGHT | EM_ROLE_RADIUS | EM_ROLE_SPHERE | EM_ROLE_THICKNESS;
  const EmSize *size = em_item_size (f->items, item);
  guint32 is_round = EM_ROLE_DIAMETER | EM_ROLE_LARGE | EM_ROLE_SMALL;

  if (f->fit->kind != SEAT)
    is_round |= EM_ROLE_WORN | EM_ROLE_FINISHED | EM_ROLE_LEG /* "egg shaped, 8.3 one way" */;
  /* "cone, 60 mm opening down to 52 mm" */
  else if ((f->proto->roles & EM_ROLE_LARGE) != 0 && (f->proto->roles & EM_ROLE_SMALL) == 0 && size->unit != EM_UNIT_DEGREE)
    is_round |= EM_ROLE_FINISHED;
  return size->unit != EM_UNIT_DEGREE && (size->roles & is_round) != 0 &&
         ((size->roles & elsewhere) == 0 || (size->roles & EM_ROLE_DIAMETER) != 0);
}

/* "⌀2.5 worn, now 2.46, 15 long": two diameters of one thing, told so. */
static gboolean
has_twin (const EmFitter *f, guint item)
{
  for (guint i = 0; i < f->proto->sizes->len && i < EM_BARE_MAX; i++)
    {
      guint other = g_array_index (f->proto->sizes, guint, i);
      double ratio = em_fitter_mm (f, other) / em_fitter_mm (f, item);

      if (other != item && (em_item_size (f->items, other)->roles & (EM_ROLE_DIAMETER | EM_ROLE_WORN |
                                                                     EM_ROLE_FINISHED)) != 0 && ratio > em_twin_low &&
                                                                       ratio * em_twin_low < 1)
        return ((em_item_size (f->items, item)->roles | em_item_size (f->items, other)->roles) & EM_ROLE_DIAMETER) != 0;
    }
  return FALSE;
}

/* "WORN .004": how much, not to what, when another size is many times as large. */
static gboolean
is_wear (const EmFitter *f, guint item)
{
  if ((em_item_size (f->items, item)->roles & EM_ROLE_WORN) == 0 || has_twin (f, item))
    return FALSE;
  for (guint i = 0; i < f->proto->sizes->len && i < EM_BARE_MAX; i++)
    if (em_fitter_mm (f, g_array_index (f->proto->sizes, guint, i)) > 5 * em_fitter_mm (f, item) &&
        em_item_size (f->items, g_array_index (f->proto->sizes, guint, i))->unit != EM_UNIT_DEGREE)
      return TRUE;
  return FALSE;
}

/* So many times the wear is no weld, but how thick the thing is (common practice, no source). */
static const double MOST_OVER = 4;

/* "walls 0.25 oversize, weld 0.4 mm thick": how thick the weld is to be tells more than the wear, as it is no less. */
static gboolean
is_below_thickness (const EmFitter *f, guint item)
{
  for (guint i = 0; f->proto->has_verb && (f->fit->kind == FACE || f->fit->kind == SIDEWALL) && i < f->proto->sizes->len && i < EM_BARE_MAX; i++)
    {
      guint other = g_array_index (f->proto->sizes, guint, i);
      guint32 roles = em_item_size (f->items, other)->roles;

      if (other != item && (roles & EM_ROLE_THICKNESS) != 0 && (roles & (EM_ROLE_WORN | EM_ROLE_FINISHED)) == 0 &&
          em_fitter_mm (f, other) > em_fitter_mm (f, item) && em_fitter_mm (f, other) < MOST_OVER * em_fitter_mm (f, item))
        return TRUE;
    }
  return FALSE;
}

/* "LOW .007, ADD .015": what to add is told apart from what is worn, which then is only talk. */
gboolean
em_fitter_is_outdone (const EmFitter *f, guint item)
{
  guint32 roles = em_item_size (f->items, item)->roles;

  if ((roles & EM_ROLE_ADD) != 0 || !(f->has_add || is_below_thickness (f, item)) || (roles & (EM_ROLE_BUILD | EM_ROLE_WORN)) == 0 ||
      (roles & ~(guint32) (EM_ROLE_BUILD | EM_ROLE_WORN | EM_ROLE_PER_SIDE | EM_ROLE_ON_DIAMETER)) != 0)
    return FALSE;
  return (f->fit->kind != BORE && f->fit->kind != PIN) || is_wear (f, item);
}

/* "pin 10 dia shall get 0.1 on the diameter": no two diameters of one thing. */
static gboolean
is_far_from_diameter (const EmFitter *f, guint item)
{
  for (guint i = 0; i < f->proto->sizes->len && i < EM_BARE_MAX; i++)
    {
      guint other = g_array_index (f->proto->sizes, guint, i);

      if ((em_item_size (f->items, other)->roles & EM_ROLE_DIAMETER) != 0 && em_fitter_mm (f, other) > FAR_RATIO * em_fitter_mm (f, item))
        return em_fitter_mm (f, item) <= em_build_max_mm;
    }
  return FALSE;
}

/* "OD turned 0.3 undersize": a shop measures across (common practice, no source). NULL: no such word; else why it is so much on the
 * diameter, which "0.05 too thin" only makes likely. */
static const char *
off_size (const EmFitter *f, guint item)
{
  static const char *const words[] = { "undersize", "oversize", "undersized", "oversized", "under size", "over size", "Untermaß", "Übermaß" };
  static const char *const likely[] = { "undersize by", "oversize by", "undersized by", "oversized by", "under by", "over by", "too small", "too big", "too large",
                                        "too thin", "too small by", "too big by", "too large by", "too thin by", "big by", "small by", "under", "over", "below size", "small", "thin", "big",
                                        "out of size", "off size", "Untermaß von", "zu klein", "zu groß", "zu dünn", "zu weit", "zu gross", "zu klein um", "zu groß um", "zu gross um", "zu dünn um", "dünner", "kleiner",
                                        "größer", "unter Maß", "trop petit de", "trop petite de", "trop grand", "trop petit", "trop mince", "sous cote", "sous la cote", "en dessous de la cote", "au-dessous de la cote", "sous le nominal",
                                        "más grande", "más pequeño", "más delgado", "demasiado grande", "demasiado pequeño", "demasiado delgado", "por debajo de medida", "bajo medida", "por debajo", "por debajo de cota", "por debajo de la cota", "por debajo de la medida", "bajo cota", "por debajo del nominal", "por debajo de nominal" };
  guint label = em_item_size (f->items, item)->label_item;

  if ((em_item_size (f->items, item)->roles & EM_ROLE_PER_SIDE) != 0 || em_fitter_mm (f, item) > em_build_max_mm)
    return NULL;
  /* "worn 0.04 under size" */
  if (label == G_MAXUINT32 || label < item)
    label = item + 1 < f->items->items->len && em_item_says (f->items, item + 1, EM_SAYS_LABEL) != NULL &&
            (em_item_says (f->items, item + 1, EM_SAYS_LABEL)->roles & EM_ROLE_BUILD) != 0 ? item + 1 : label;
  if (label == G_MAXUINT32)
    return NULL;
  if (label > item && em_item_is_any_word_of (f->items, label, words, G_N_ELEMENTS (words)))
    return "on-diameter";
  return em_item_is_any_word_of (f->items, label, words, G_N_ELEMENTS (words)) || em_item_is_any_word_of (f->items, label, likely, G_N_ELEMENTS (likely))
         ? "from-words" : NULL;
}

/* TRUE when the size is a build-up on a bore or pin, whose side may have to be asked. */
static gboolean
fit_build (EmFitter *f, guint item)
{
  guint32 roles = em_item_size (f->items, item)->roles;

  if (em_item_size (f->items, item)->unit == EM_UNIT_DEGREE || (roles & EM_ROLE_LENGTH) != 0)
    return FALSE;
  /* "should be 8.00 on the diameter": the diameter itself. */
  if ((roles & (EM_ROLE_WORN | EM_ROLE_FINISHED)) != 0 && (roles & EM_ROLE_ON_DIAMETER) != 0 && !is_wear (f, item) &&
      !is_far_from_diameter (f, item))
    return FALSE;
  if ((roles & EM_ROLE_ON_DIAMETER) != 0 || off_size (f, item) != NULL)
    return em_fitter_offer (f, "build", item, 0.5, off_size (f, item) != NULL ? off_size (f, item) : "on-diameter");
  /* "1.000 OD worn .004 dia", "20 H7 is 0.08 too large in diameter" */
  if ((roles & EM_ROLE_DIAMETER) != 0 && (is_wear (f, item) || (roles & EM_ROLE_BUILD) != 0) && !has_twin (f, item) && f->proto->sizes->len > 1 && em_fitter_mm (f, item) <= em_build_max_mm)
    return em_fitter_offer (f, "build", item, 0.5, "from-words");
  /* "⌀6, head side worn to 5.9": not how much, but to what. */
  if ((roles & EM_ROLE_PER_SIDE) != 0 && (roles & EM_ROLE_WORN) != 0 && em_fitter_mm (f, item) > em_build_max_mm &&
      has_twin (f, item))
    return FALSE;
  if ((roles & EM_ROLE_PER_SIDE) != 0)
    return em_fitter_offer (f, "build", item, 1, NULL);
  if (((roles & (EM_ROLE_BUILD | EM_ROLE_THICKNESS)) != 0 || is_wear (f, item)) && (roles & EM_ROLE_DIAMETER) == 0 &&
      em_fitter_mm (f, item) <= em_build_max_mm)
    {
      em_fitter_ask (f, "side-or-diameter", item);
      em_item (f->items, item)->is_used = TRUE;
      return TRUE;
    }
  return FALSE;
}

/* "⌀3, should be 18": what is called no diameter and lies far from one that is may be a length. Returns how many are left. */
static guint
drop_foreign (const EmFitter *f, guint *items, guint n)
{
  guint named = EM_NO_ITEM, n_left = 0;

  for (guint i = 0; i < n && named == EM_NO_ITEM; i++)
    if ((em_item_size (f->items, items[i])->roles & EM_ROLE_DIAMETER) != 0)
      named = items[i];
  for (guint i = 0; i < n; i++)
    {
      double ratio = named != EM_NO_ITEM ? em_fitter_mm (f, items[i]) / em_fitter_mm (f, named) : 1;

      if ((em_item_size (f->items, items[i])->roles & EM_ROLE_DIAMETER) != 0 || (ratio < ALIKE_RATIO && ratio * ALIKE_RATIO > 1))
        items[n_left++] = items[i];
    }
  return n_left;
}

/* "S⌀", "SR": no words. */
static gboolean
is_sphere_sign (const EmFitter *f, guint item)
{
  guint label = em_item_size (f->items, item)->label_item;

  return label != G_MAXUINT32 && em_item (f->items, label)->length <= 4;
}

/* "needs 0.1 on the bore, 12 dia, 20 deep": thin beside the diameter told, and the only size that tells nothing of itself. */
static gboolean
is_alone_and_thin (const EmFitter *f, const guint *diameters, guint n)
{
  return f->n_bare == 1 && n == 1 && em_fitter_mm (f, f->bare[0]) * FAR_RATIO * ALIKE_RATIO < em_fitter_mm (f, diameters[0]) &&
         (em_fit_find (f->fit, "length") != NULL);
}

/* "bored .004 too big, want .625 have .629": the two diameters tell which side it is. */
static void
drop_told_question (EmFitter *f)
{
  const EmFitted *wanted = em_fit_find (f->fit, "diameter"), *worn = em_fit_find (f->fit, "worn");

  for (guint i = 0; wanted != NULL && worn != NULL && i < f->fit->n_questions; i++)
    {
      double added_mm = em_fitter_mm (f, f->fit->question[i].item), wear_mm = fabs (wanted->value - worn->value);

      if (strcmp (f->fit->question[i].code, "side-or-diameter") != 0 ||
          (fabs (added_mm - wear_mm) > TOLD_MM && fabs (2 * added_mm - wear_mm) > TOLD_MM))
        continue;
      memmove (f->fit->question + i, f->fit->question + i + 1, (f->fit->n_questions - i - 1) * sizeof *f->fit->question);
      f->fit->n_questions--;
      return;
    }
}

/* Another size so near to it that it may be another diameter, or that tells how much is missing. */
static gboolean
has_near_size (const EmFitter *f, guint item)
{
  const double nearly = 0.15;

  for (guint i = 0; i < f->proto->sizes->len && i < EM_BARE_MAX; i++)
    {
      guint other = g_array_index (f->proto->sizes, guint, i);

      if (other != item && (em_item_size (f->items, other)->roles & (EM_ROLE_PER_SIDE | EM_ROLE_ON_DIAMETER | EM_ROLE_BUILD | EM_ROLE_ADD)) != 0)
        return TRUE;
      if (other != item && fabs (em_fitter_mm (f, other) / em_fitter_mm (f, item) - 1) < nearly)
        return TRUE;
    }
  return FALSE;
}

/* "bore oversize 10.00/10.05": what it shall be and what it is, where nothing else is told. TRUE: both are given. */
static gboolean
take_pair (EmFitter *f, guint item)
{
  const EmItem *its = em_item (f->items, item);
  const EmSize *size = em_item_size (f->items, item);
  const EmFitted *there = em_fit_find (f->fit, "diameter");
  const double mean = em_fraction_plain (size->value), low = em_fraction_plain (size->low), high = em_fraction_plain (size->high);

  if (there != NULL || (f->fit->kind != BORE && f->fit->kind != PIN) || size->low.d == 0 || memchr (f->items->text + its->start, '/', its->length) == NULL ||
      !(f->proto->has_worn || f->proto->has_damage || (size->roles & EM_ROLE_WORN) != 0) || !(mean > 0) || high > low * ALIKE_RATIO ||
      has_near_size (f, item))
    return FALSE;
  em_fitter_put (f, "diameter", item, (f->fit->kind == BORE ? low : high) / mean, "position");
  em_fitter_put (f, "worn", item, (f->fit->kind == BORE ? high : low) / mean, "position");
  return TRUE;
}

/* Gives the sizes that tell what they are to their fields. Returns how many diameters are among them, and leaves the bare ones to f. */
static guint
fit_told (EmFitter *f, guint *diameters)
{
  guint n = 0;

  for (guint i = 0; i < f->proto->sizes->len; i++)
    {
      guint item = g_array_index (f->proto->sizes, guint, i);
      const guint32 roles = em_item_size (f->items, item)->roles;

      if ((is_length_of_row (f, item) && em_fitter_offer (f, "length", item, 1, "position")) ||
          em_fitter_is_outdone (f, item) || em_fitter_slot (f, item) || take_pair (f, item) || (f->fit->kind != SEAT && fit_build (f, item)))
        continue;
      /* "S⌀12": twice the radius; "sphere dia 18" may be the mouth's. */
      if (f->fit->kind == SEAT && (roles & EM_ROLE_SPHERE) != 0 && (roles & EM_ROLE_DIAMETER) != 0 &&
          em_fitter_offer (f, "radius", item, 0.5, is_sphere_sign (f, item) ? NULL : "from-words"))
        continue;
      if (is_diameter (f, item) && n < EM_BARE_MAX)
        diameters[n++] = item;
      else if (!em_fitter_labelled (f, item) && (roles & ~(guint32) (EM_ROLE_BUILD | EM_ROLE_ADD | EM_ROLE_WELD)) == 0 &&
               f->n_bare < EM_BARE_MAX)
        f->bare[f->n_bare++] = item;
    }
  return n;
}

/* The first bare size is what to add, per side or on the diameter: that is asked. */
static gboolean
asks_for_build (EmFitter *f, const guint *diameters, guint n)
{
  if (f->fit->kind == SEAT || f->n_bare == 0 || !(f->proto->has_build || is_alone_and_thin (f, diameters, n)) ||
      em_item_size (f->items, f->bare[0])->chain != 0 || em_fitter_mm (f, f->bare[0]) > em_build_max_mm ||
      em_fit_find (f->fit, "build") != NULL || !(n > 0 || f->n_bare == 1))
    return FALSE;
  em_fitter_ask (f, "side-or-diameter", f->bare[0]);
  em_item (f->items, f->bare[0])->is_used = TRUE;
  return TRUE;
}

/* "sphere radius 10, 5 deep, 0.5 on the seat": no mouth is that small. */
static gboolean
is_no_mouth (const EmFitter *f, double value_mm)
{
  return f->fit->kind == SEAT && value_mm <= em_build_max_mm && em_fit_find (f->fit, "radius") != NULL &&
         em_fit_find (f->fit, "thickness") == NULL;
}

/* "bore dia 6, is 6.08, bring back to 6.00": the two that were told are one. */
static gboolean
is_told_twice (const EmFitter *f, const guint *diameters, guint n)
{
  return n == 2 && f->fit->kind != SEAT && em_fitter_is_near (em_fitter_mm (f, diameters[0]), em_fitter_mm (f, diameters[1]));
}

void
em_fitter_round (EmFitter *f)
{
  guint diameters[EM_BARE_MAX], n = fit_told (f, diameters), taken = asks_for_build (f, diameters, n) ? 1 : 0;

  /* "5.00/4.90, 18 mm": both diameters are told. */
  if (n == 0 && em_fit_find (f->fit, "diameter") != NULL && em_fit_find (f->fit, "worn") != NULL)
    return;
  /* A bare size first in the row is the diameter; a second one nearly as large is the other diameter. */
  for (; taken < f->n_bare && n < EM_BARE_MAX; taken++)
    {
      double first = n > 0 ? em_fitter_mm (f, diameters[0]) : 0, value = em_fitter_mm (f, f->bare[taken]);

      /* Said once more: "BORE 32 MM: 32.00". */
      if (n > 0 && em_fitter_is_near (value, first))
        em_item (f->items, f->bare[taken])->is_used = TRUE;
      else if (n == 0 ? is_no_mouth (f, value) : fabs (value / first - 1) > 0.15 || (n > 1 && !is_told_twice (f, diameters, n)))
        break;
      else
        diameters[n++] = f->bare[taken];
    }
  n = drop_foreign (f, diameters, n);
  if (n > 0)
    fit_diameters (f, diameters, n);
  drop_told_question (f);
  memmove (f->bare, f->bare + taken, (f->n_bare - taken) * sizeof *f->bare);
  f->n_bare -= taken;
}
