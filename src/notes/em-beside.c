/* em-beside: how far what must be spared lies from a repair.
 *
 * A part between commas that tells a thing and a distance, and nothing that is to be done: "cooling channel 4 mm below", "thread at 3 mm". The
 * distance may stand in the part behind: "screw holes in the strip, keep 3 mm away". What the size is of is told by the words round it, which
 * are looked at as they stand, whatever phrase of the lexicon they are in.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-beside.h"

#include <math.h>
#include <string.h>

enum
{
  HEAD_NOUN = 3,         /* a noun of this weight stands for its kind */
  PART_MAX = 20,         /* items of a part that is looked over */
  OWN_WINDOW = 3,        /* items from a thing to a size of its own */
  GLUE_MAX = 3           /* little words between a size and what it is from */
};

/* A bore hardly wears by more. */
static const double NOW_SHARE = 0.2;

/* A part of the sentence. */
typedef struct
{
  guint    first, end;
  guint    thing;        /* what lies near, or EM_NO_ITEM */
  guint    other;        /* a slot or the like, of which only the distance is a field; or EM_NO_ITEM */
  guint    distance;     /* the size that says how far, or EM_NO_ITEM */
  guint    n_others;     /* sizes that are neither that nor the thing's own */
  gboolean is_repair;    /* something is wrong there, or to be done */
  gboolean has_noun;     /* of a repair, before the thing and the distance: "crack of 12 mm next to the hole" */
} Part;

/* Right behind a size they make a distance of it. */
static const char *const behind[] = {
  "away", "off", "from", "below", "beneath", "under", "underneath", "above", "beside", "behind", "next to", "short of", "clear of", "apart", "distant",
  "to the side", "to one side", "to the left", "to the right",
  "entfernt", "daneben", "darunter", "darüber", "dahinter", "davor", "davon", "neben", "unter der", "unter dem", "unterhalb", "oberhalb", "hinter der", "hinter dem", "weg", "vom", "von der", "von dem", "Entfernung", "Abstand", "seitlich",
  "de distancia", "de separación", "al lado", "por debajo", "debajo", "por encima", "encima", "detrás", "por detrás", "más abajo",
  "en dessous", "au-dessous", "dessous", "au-dessus", "à côté", "derrière", "plus bas", "plus loin", "de distance",
};

/* The same where one of these stands before the size. */
static const char *const weak_behind[] = {
  "of", "to", "zu", "zur", "zum", "de", "del", "du", "des", "d'",
  "there is", "there's", "runs", "befindet sich", "liegt", "verläuft", "hay", "pasa", "está", "queda", "se encuentra", "tiene", "il y a", "se trouve", "passe", "on a",
};

static const char *const before[] = {
  "at", "within", "by", "im Abstand", "im Abstand von", "Abstand", "bei", "in", "à", "À", "a", "à moins de", "a menos de", "à une distance de", "distance", "distance of", "distancia de",
  "distancia",
};

static gboolean
is_word_char (char c)
{
  return g_ascii_isalnum (c) || (c & 0x80) != 0;
}

/* One of the words stands at byte at of the text; accents are told apart. */
static gboolean
starts_with_any (const EmItems *items, guint at, const char *const *words, gsize n)
{
  for (gsize k = 0; k < n; k++)
    {
      gsize length = strlen (words[k]);

      if (g_ascii_strncasecmp (items->text + at, words[k], length) == 0 && (words[k][length - 1] == '\'' || !is_word_char (items->text[at + length])))
        return TRUE;
    }
  return FALSE;
}

/* The text up to byte end ends in one of the words. */
static gboolean
ends_in_any (const EmItems *items, guint first, guint end, const char *const *words, gsize n)
{
  for (gsize k = 0; k < n; k++)
    {
      gsize length = strlen (words[k]);

      if (end >= first + length && g_ascii_strncasecmp (items->text + end - length, words[k], length) == 0 &&
          (end == first + length || !is_word_char (items->text[end - length - 1])))
        return TRUE;
    }
  return FALSE;
}

static gboolean
is_size (const EmReader *r, guint i, guint end)
{
  return i < end && em_item (r->items, i)->type == EM_ITEM_SIZE;
}

/* Says no more of a distance: "only", "about". */
static gboolean
is_little (const EmReader *r, guint i)
{
  return em_item_says (r->items, i, EM_SAYS_GLUE) != NULL || em_item_says (r->items, i, EM_SAYS_APPROXIMATE) != NULL || em_item_says (r->items, i, EM_SAYS_MINIMUM) != NULL;
}

/* A single size that measures nothing else. */
static gboolean
is_single (const EmReader *r, guint i)
{
  const guint32 other = EM_ROLE_DIAMETER | EM_ROLE_RADIUS | EM_ROLE_SPHERE | EM_ROLE_WIDTH | EM_ROLE_THICKNESS | EM_ROLE_LEG | EM_ROLE_ANGLE | EM_ROLE_COUNT |
                        EM_ROLE_REFERENCE | EM_ROLE_STOCK | EM_ROLE_HARDNESS | EM_ROLE_PER_SIDE | EM_ROLE_ON_DIAMETER | EM_ROLE_AREA | EM_ROLE_ARC;
  const EmSize *size = em_item_size (r->items, i);

  /* "polished 420", "bush is H13 at 48" */
  for (guint k = i > r->first + 2 ? i - 2 : r->first; k <= i; k++)
    if (em_phrase_find (em_item (r->items, k)->phrase, EM_SAYS_BASE) != NULL)
      return FALSE;
  /* "M30 above" */
  if (i > r->first && em_item_is_glued (r->items, i) && em_item (r->items, i - 1)->type != EM_ITEM_SIGN)
    return FALSE;
  return size->chain == 0 && (size->roles & other) == 0 && size->unit != EM_UNIT_DEGREE && !em_unit_is_hardness (size->unit) && !em_unit_is_area (size->unit) &&
         !em_item (r->items, i)->is_used;
}

/* "at", "within": ends right before the size, but for little words. */
static gboolean
is_led (const EmReader *r, const Part *part, guint i)
{
  const EmItems *items = r->items;
  guint start = em_item (items, part->first)->start;

  for (guint prior = i; prior > part->first && prior + GLUE_MAX > i; prior--)
    if (ends_in_any (items, start, em_item (items, prior - 1)->start + em_item (items, prior - 1)->length, before, G_N_ELEMENTS (before)))
      return TRUE;
    else if (!is_little (r, prior - 1))
      return FALSE;
  return FALSE;
}

/* No other size in the sentence from item i on. */
static gboolean
is_last_size (const EmReader *r, guint i)
{
  for (guint k = i; k < r->end && k < i + PART_MAX; k++)
    if (is_size (r, k, r->end))
      return FALSE;
  return TRUE;
}

/* "barreno Ø25 está a 25.08": how large it is now. */
static gboolean
is_size_now (const EmReader *r, const Part *part, guint i)
{
  double now = em_fraction_plain (em_item_size (r->items, i)->value);

  for (guint k = part->first; k < i; k++)
    if (is_size (r, k, part->end) && (em_item_size (r->items, k)->roles & EM_ROLE_DIAMETER) != 0 &&
        fabs (em_fraction_plain (em_item_size (r->items, k)->value) - now) < NOW_SHARE * now)
      return TRUE;
  return FALSE;
}

/* "distance to water line 4", "texture 2 mm" alone */
static gboolean
is_told_alone (const EmReader *r, const Part *part, guint i)
{
  static const char *const words[] = { "distance", "dist", "Abstand", "Entfernung", "distancia", "gap to", "clearance" };
  const EmSense *thing = part->thing != EM_NO_ITEM ? em_item_says (r->items, part->thing, EM_SAYS_THING) : NULL;

  if (thing == NULL || em_item_size (r->items, i)->roles != 0 || !is_last_size (r, i + 1))
    return FALSE;
  return starts_with_any (r->items, em_item (r->items, part->first)->start, words, G_N_ELEMENTS (words)) ||
         (part->thing + 1 == i && part->thing == r->first && i + 1 == r->end && strcmp (thing->value, "hole") != 0 && strcmp (thing->value, "thread") != 0);
}

/* The size at i says how far. */
static gboolean
is_distance (const EmReader *r, const Part *part, guint i)
{
  const guint32 named = EM_ROLE_LENGTH | EM_ROLE_HEIGHT | EM_ROLE_DEPTH | EM_ROLE_BUILD;
  guint next = i + 1;
  gboolean is_at;

  /* "hole Ø6 at 4.5 of the nick": no second diameter. */
  if (em_item_size (r->items, i)->roles == EM_ROLE_DIAMETER && em_item_size (r->items, i)->chain == 0 && i > part->first && next < part->end && is_led (r, part, i) &&
      starts_with_any (r->items, em_item (r->items, next)->start, weak_behind, G_N_ELEMENTS (weak_behind)) && !is_size_now (r, part, i))
    return TRUE;
  if (!is_single (r, i))
    return FALSE;
  if ((em_item_size (r->items, i)->roles & EM_ROLE_CLEARANCE) != 0 || is_told_alone (r, part, i))
    return TRUE;
  is_at = is_led (r, part, i);
  if (next >= part->end || em_item_says (r->items, next, EM_SAYS_REFUSE) != NULL)
    return is_at && (em_item_size (r->items, i)->roles & named) == 0 && is_last_size (r, next) && !is_size_now (r, part, i);
  return starts_with_any (r->items, em_item (r->items, next)->start, behind, G_N_ELEMENTS (behind)) ||
         (is_at && starts_with_any (r->items, em_item (r->items, next)->start, weak_behind, G_N_ELEMENTS (weak_behind)));
}

/* "Ø4", "M5", "10-32": behind the thing, or before it, its own. */
static gboolean
is_own_size (const EmReader *r, const Part *part, guint i)
{
  const EmSize *size = em_item_size (r->items, i);

  if ((size->roles & (EM_ROLE_COUNT | EM_ROLE_REFERENCE)) != 0 || em_item (r->items, i)->is_used)
    return TRUE;
  return part->thing != EM_NO_ITEM && size->chain == 0 && (i > part->thing ? i - part->thing : part->thing - i) <= OWN_WINDOW &&
         ((size->roles & EM_ROLE_DIAMETER) != 0 || i == part->thing + 1 || i + 1 == part->thing);
}

/* Something is wrong with what the part names, or to be done to it. */
static gboolean
tells_repair (const EmReader *r, guint i)
{
  const EmSense *label = em_item_says (r->items, i, EM_SAYS_LABEL), *set = em_item_says (r->items, i, EM_SAYS_SET);
  const EmSense *noun = em_item_says (r->items, i, EM_SAYS_KIND);

  if (em_item_says (r->items, i, EM_SAYS_TALK) != NULL || em_item_says (r->items, i, EM_SAYS_THING) != NULL || em_item_says (r->items, i, EM_SAYS_NEAR) != NULL)
    return FALSE;
  return (em_item_says (r->items, i, EM_SAYS_VERB) != NULL && em_item_says (r->items, i, EM_SAYS_GLUE) == NULL) || (set != NULL && set->set_field == NULL) ||
         (noun != NULL && noun->value != NULL) ||
         (label != NULL && (label->roles & (EM_ROLE_BUILD | EM_ROLE_WORN | EM_ROLE_FINISHED)) != 0 && em_item_says (r->items, i, EM_SAYS_GLUE) == NULL);
}

static gboolean
is_none (const EmReader *r, guint i)
{
  static const char *const none[] = { "no", "not", "kein", "keine", "nicht", "sin" };

  return i > r->first && em_item_is_any_word_of (r->items, i - 1, none, G_N_ELEMENTS (none));
}

/* A thing that may lie near; "M2" is a steel, too. */
static gboolean
is_thing (const EmReader *r, guint i)
{
  return em_item_says (r->items, i, EM_SAYS_THING) != NULL && em_item_says (r->items, i, EM_SAYS_BASE) == NULL && !em_item (r->items, i)->is_used && !is_none (r, i);
}

/* "ej. pin hole, 3 mm off" behind a repair: a bore, though the lexicon has it for one to be mended. */
static gboolean
is_bore_near (const EmReader *r, guint i)
{
  const EmSense *noun = em_item_says (r->items, i, EM_SAYS_KIND);

  return r->current != NULL && noun != NULL && noun->value == NULL && noun->weight[BORE] >= HEAD_NOUN && noun->weight[PIN] == 0 && !em_item (r->items, i)->is_used;
}

/* "6 mm from the leader pin bore"; ".020 from the top and .015 from the bore" are the legs of a nick. */
static gboolean
is_bore_behind (const EmReader *r, const Part *part, const Part *prior, guint i)
{
  const EmSense *noun = em_item_says (r->items, i, EM_SAYS_KIND);

  return prior->distance == EM_NO_ITEM && noun != NULL && noun->weight[BORE] >= HEAD_NOUN && part->distance != EM_NO_ITEM && i > part->distance && i <= part->distance + GLUE_MAX;
}

/* "stands at": ends in a word that leads to a distance. */
static gboolean
leads_to_size (const EmReader *r, guint i, guint end)
{
  const EmItem *item = em_item (r->items, i);

  return is_size (r, i + 1, end) && ends_in_any (r->items, item->start, item->start + item->length, before, G_N_ELEMENTS (before));
}

/* "oil groove", "heater slot": a phrase that ends in the name of a slot. */
static gboolean
names_slot (const EmReader *r, guint i)
{
  static const char *const ends[] = { "groove", "grooves", "slot", "slots", "keyway", "channel" };
  const EmItem *item = em_item (r->items, i);

  return ends_in_any (r->items, item->start, item->start + item->length, ends, G_N_ELEMENTS (ends));
}

static Part
look (const EmReader *r, const Part *prior, guint first, guint end)
{
  Part part = { first, end, EM_NO_ITEM, EM_NO_ITEM, EM_NO_ITEM, 0, FALSE, FALSE };

  for (guint i = first; i < end && part.thing == EM_NO_ITEM; i++)
    if (is_thing (r, i))
      part.thing = i;
  for (guint i = first; i < end && part.thing == EM_NO_ITEM; i++)
    if (is_bore_near (r, i))
      part.thing = i;
  for (guint i = first; i < end; i++)
    if (is_size (r, i, end))
      {
        if (part.distance == EM_NO_ITEM && is_distance (r, &part, i))
          part.distance = i;
        else
          part.n_others += !is_own_size (r, &part, i);
      }
    else if (em_item (r->items, i)->type == EM_ITEM_PHRASE)
      {
        const EmSense *noun = em_item_says (r->items, i, EM_SAYS_KIND);

        /* "weg" behind the distance, "stands at" before it */
        part.is_repair |= i != part.distance + 1 && !leads_to_size (r, i, end) && tells_repair (r, i);
        if (part.thing == EM_NO_ITEM && is_bore_behind (r, &part, prior, i))
          part.thing = i;
        else if ((em_item_says (r->items, i, EM_SAYS_SLOT) != NULL || (noun == NULL && em_item_says (r->items, i, EM_SAYS_PLACE) != NULL)) && part.distance == EM_NO_ITEM &&
                 part.other == EM_NO_ITEM)
          part.other = i;
        else if (noun != NULL && em_item_says (r->items, i, EM_SAYS_SLOT) == NULL && names_slot (r, i) && part.distance == EM_NO_ITEM && part.other == EM_NO_ITEM)
          part.other = i;
        else
          part.has_noun |= noun != NULL && i != part.thing && part.distance == EM_NO_ITEM && (part.thing == EM_NO_ITEM || i < part.thing);
      }
  return part;
}

/* "4 mm from it", "2 mm daneben": from the repair told before. */
static gboolean
is_from_it (const EmReader *r, guint distance)
{
  static const char *const from_it[] = { "from it", "away", "off it", "below it", "under it", "beside it", "next to it", "from there", "davon", "daneben", "darunter", "entfernt", "weg",
                                         "al lado", "por debajo", "de ahí", "à côté", "en dessous", "de là" };

  return distance + 1 < r->items->items->len && starts_with_any (r->items, em_item (r->items, distance + 1)->start, from_it, G_N_ELEMENTS (from_it));
}

/* "2 mm away from …" */
static gboolean
is_away (const EmReader *r, guint distance)
{
  static const char *const away[] = { "away from", "clear of", "weg von", "weg vom", "entfernt von", "entfernt vom", "de distancia de", "de distance de" };

  return distance + 1 < r->end && starts_with_any (r->items, em_item (r->items, distance + 1)->start, away, G_N_ELEMENTS (away));
}

/* "oil groove 1.5 from edge, keep clear": marks the words that spare it used. */
static gboolean
is_spared_behind (const EmReader *r, const Part *part)
{
  for (guint i = part->end; i < r->end && i < part->end + PART_MAX; i++)
    if (em_item_says (r->items, i, EM_SAYS_REFUSE) != NULL)
      {
        em_item (r->items, i)->is_used = TRUE;
        return TRUE;
      }
    else if (is_size (r, i, r->end))
      return FALSE;
  return FALSE;
}

/* "heater groove 4 mm from it" behind a repair: near has no word for it. */
static gboolean
is_other_near (const EmReader *r, const Part *part)
{
  return part->thing == EM_NO_ITEM && part->other != EM_NO_ITEM && part->distance != EM_NO_ITEM && part->n_others == 0 && !part->is_repair && !part->has_noun &&
         (is_from_it (r, part->distance) || is_spared_behind (r, part)) && (r->current != NULL || part->first > r->first);
}

static void
use_part (const EmReader *r, const Part *part)
{
  for (guint i = part->first; i < part->end; i++)
    if (em_item (r->items, i)->type == EM_ITEM_SIZE && i != part->distance)
      em_item_size (r->items, i)->roles |= EM_ROLE_REFERENCE;
    else if (em_item (r->items, i)->type == EM_ITEM_PHRASE && em_item_says (r->items, i, EM_SAYS_REFUSE) == NULL && em_item_says (r->items, i, EM_SAYS_BASE) == NULL)
      em_item (r->items, i)->is_used = TRUE;
}

/* The thing lies as far as the distance says. */
static void
take (EmReader *r, GArray *loose, guint thing, guint distance)
{
  const EmSense *sense = em_item_says (r->items, thing, EM_SAYS_THING);
  EmLoose one = { .given = em_given_new ("near", sense != NULL ? em_thing_near (sense) : "hole", em_item (r->items, thing)), .item = thing, .is_near = TRUE };

  g_array_append_val (loose, one);
  em_item (r->items, thing)->is_used = TRUE;
  em_item_size (r->items, distance)->roles = EM_ROLE_CLEARANCE;
}

/* "hole 6 dia, 10 mm from the corner, 12 deep, to be filled": behind the thing at the head of the sentence stands more of its own. */
static gboolean
is_repair_itself (const EmReader *r, const Part *thing, guint end)
{
  if (thing->first != r->first)
    return FALSE;
  for (guint i = end; i < r->end && i < end + PART_MAX; i++)
    if (em_item_says (r->items, i, EM_SAYS_KIND) != NULL || em_item_says (r->items, i, EM_SAYS_THING) != NULL)
      return FALSE;
    else if ((is_size (r, i, r->end) && is_single (r, i) && (em_item_size (r->items, i)->roles & EM_ROLE_CLEARANCE) == 0) ||
             (em_item_says (r->items, i, EM_SAYS_VERB) != NULL && g_strcmp0 (em_item_says (r->items, i, EM_SAYS_VERB)->value, "fill") == 0 &&
              em_item_says (r->items, i, EM_SAYS_REFUSE) == NULL))
      return TRUE;
  return FALSE;
}

/* "polish A3": a grade. */
static gboolean
is_grade (const EmReader *r, guint i)
{
  return i > r->first + 1 && em_item_is_glued (r->items, i) && em_item (r->items, i - 1)->type != EM_ITEM_SIGN && em_item (r->items, i - 1)->length == 1 &&
         em_item_says (r->items, i - 2, EM_SAYS_THING) != NULL;
}

/* "it stands 4 mm from the neighbour rib": what the words behind say goes before "stands". */
static gboolean
is_told_behind (const EmReader *r, guint i)
{
  const guint32 weak = EM_ROLE_HEIGHT | EM_ROLE_LENGTH | EM_ROLE_WORN;
  const EmSense *label = i + 1 < r->end ? em_item_says (r->items, i + 1, EM_SAYS_LABEL) : NULL;
  const EmSize *size = em_item_size (r->items, i);

  return label != NULL && label->roles == EM_ROLE_CLEARANCE && label->place == EM_LABEL_AFTER && size->chain == 0 && size->roles != 0 && (size->roles & ~weak) == 0 &&
         size->label_item != G_MAXUINT32 && size->label_item < i && em_item_says (r->items, size->label_item, EM_SAYS_TALK) != NULL;
}

/* "Keep away from the vents by 1.5", "stay clear of the slot, at least 2": how far to stay away. */
static gboolean
is_kept_away (const EmReader *r, guint i)
{
  static const char *const keep[] = { "keep", "stay", "remain", "hold" };
  static const char *const away[] = { "away", "clear", "off", "well away", "well clear" };
  guint first = i;

  if (!is_single (r, i) || (em_item_size (r->items, i)->roles & em_dimension_roles) != 0 || em_item (r->items, i)->is_used)
    return FALSE;
  while (first > r->first && first + PART_MAX > i && !em_item_is_soft_break (r->items, first - 1))
    first--;
  while (first < i && em_item_says (r->items, first, EM_SAYS_AGENT) != NULL)
    first++;
  for (gsize k = 0; k < G_N_ELEMENTS (keep); k++)
    {
      guint32 length = (guint32) strlen (keep[k]);
      guint32 at = em_item (r->items, first)->start;

      if (starts_with_any (r->items, at, &keep[k], 1) && r->items->text[at + length] == ' ')
        return starts_with_any (r->items, at + length + 1, away, G_N_ELEMENTS (away)) && is_last_size (r, i + 1);
    }
  return FALSE;
}

/* "texture close to edge (1 mm)", "thread right next to it, about 2": alone behind a thing and a word of nearness. */
static gboolean
is_near_by_so_much (const EmReader *r, guint i)
{
  guint k = i;
  gboolean has_near = FALSE, has_break = FALSE;

  /* In brackets it was taken for a size that only informs. */
  if (em_item (r->items, i)->is_used || em_item_size (r->items, i)->chain != 0 || (em_item_size (r->items, i)->roles & ~(guint32) EM_ROLE_REFERENCE) != 0 ||
      em_item_size (r->items, i)->unit == EM_UNIT_DEGREE || em_unit_is_hardness (em_item_size (r->items, i)->unit) ||
      !(i + 1 >= r->end || em_item_is_sign (r->items, i + 1, ')')) || !is_last_size (r, i + 1))
    return FALSE;
  while (k > r->first && is_little (r, k - 1))
    k--;
  has_break = k > r->first && (em_item_is_sign (r->items, k - 1, '(') || em_item_is_sign (r->items, k - 1, ','));
  if (!has_break)
    return FALSE;
  for (k--; k > r->first && k + PART_MAX > i && !em_item_is_soft_break (r->items, k - 1); k--)
    if (is_size (r, k - 1, i) || tells_repair (r, k - 1))
      return FALSE;
    else if (em_item_says (r->items, k - 1, EM_SAYS_NEAR) != NULL)
      has_near = TRUE;
    else if (is_thing (r, k - 1))
      return has_near;
  return FALSE;
}

/* "Tout près (2 mm) d'un taraudage", "muy cerca, a 2 mm, hay una rosca": the thing that a word of nearness and a distance set apart stand
 * before; EM_NO_ITEM: none. */
static guint
thing_behind_distance (const EmReader *r, guint i, guint *out_near)
{
  guint k = i, thing = i + 2;

  if (em_item (r->items, i)->is_used || em_item_size (r->items, i)->chain != 0 || (em_item_size (r->items, i)->roles & ~(guint32) (EM_ROLE_REFERENCE | EM_ROLE_LENGTH)) != 0 ||
      em_item_size (r->items, i)->unit == EM_UNIT_DEGREE || !(em_item_is_sign (r->items, i + 1, ')') || em_item_is_sign (r->items, i + 1, ',')))
    return EM_NO_ITEM;
  while (k > r->first && k + GLUE_MAX > i && em_item (r->items, k - 1)->type == EM_ITEM_PHRASE)
    k--;
  if (k < r->first + 2 || !(em_item_is_sign (r->items, k - 1, '(') || em_item_is_sign (r->items, k - 1, ',')) || em_item_says (r->items, k - 2, EM_SAYS_NEAR) == NULL)
    return EM_NO_ITEM;
  *out_near = k - 2;
  for (; thing < r->end && thing <= i + 2 + GLUE_MAX && em_item (r->items, thing)->type == EM_ITEM_PHRASE; thing++)
    if (is_thing (r, thing))
      return thing;
  return EM_NO_ITEM;
}

static void
take_things_behind (EmReader *r, GArray *loose)
{
  for (guint i = r->first, near; i + 2 < r->end; i++)
    {
      guint thing = is_size (r, i, r->end) ? thing_behind_distance (r, i, &near) : EM_NO_ITEM;

      if (thing == EM_NO_ITEM)
        continue;
      take (r, loose, thing, i);
      for (guint k = near; k < thing; k++)
        if (k != i)
          em_item (r->items, k)->is_used = TRUE;
    }
}

/* Sizes whose words say more than their labels. */
static void
mark_told (const EmReader *r)
{
  for (guint i = r->first; i < r->end; i++)
    if (!is_size (r, i, r->end))
      continue;
    else if (is_grade (r, i))
      {
        em_item_size (r->items, i)->roles |= EM_ROLE_REFERENCE;
        em_item (r->items, i)->is_used = em_item (r->items, i - 1)->is_used = TRUE;
      }
    else if (is_told_behind (r, i))
      {
        em_item_size (r->items, i)->roles = EM_ROLE_CLEARANCE;
        em_item (r->items, i + 1)->is_used = TRUE;
      }
    else if (is_kept_away (r, i) || is_near_by_so_much (r, i))
      em_item_size (r->items, i)->roles = EM_ROLE_CLEARANCE;
}

void
em_beside_read (EmReader *r, GArray *loose)
{
  Part prior = { 0, 0, EM_NO_ITEM, EM_NO_ITEM, EM_NO_ITEM, 0, FALSE, FALSE };
  guint first = r->first;

  mark_told (r);
  take_things_behind (r, loose);
  for (guint i = r->first; i <= r->end; i++)
    {
      Part part;

      if (i < r->end && !em_item_is_soft_break (r->items, i))
        continue;
      part = look (r, &prior, first, MIN (i, first + PART_MAX));
      if (part.thing != EM_NO_ITEM && part.distance != EM_NO_ITEM && part.n_others == 0 && !part.is_repair && !part.has_noun && !is_repair_itself (r, &part, i))
        {
          take (r, loose, part.thing, part.distance);
          use_part (r, &part);
        }
      else if (is_other_near (r, &part))
        {
          em_item_size (r->items, part.distance)->roles = EM_ROLE_CLEARANCE;
          use_part (r, &part);
        }
      /* ", 2 mm away from the vent slot" */
      else if (part.distance != EM_NO_ITEM && part.thing == EM_NO_ITEM && part.n_others == 0 && part.first > r->first && is_away (r, part.distance))
        em_item_size (r->items, part.distance)->roles = EM_ROLE_CLEARANCE;
      /* "screw holes in the strip, keep 3 mm away" */
      else if (prior.thing != EM_NO_ITEM && prior.distance == EM_NO_ITEM && prior.n_others == 0 && !prior.is_repair && part.thing == EM_NO_ITEM &&
               part.distance != EM_NO_ITEM && part.n_others == 0 && !part.is_repair && !is_repair_itself (r, &prior, i))
        {
          take (r, loose, prior.thing, part.distance);
          use_part (r, &prior);
          use_part (r, &part);
        }
      prior = part;
      first = i + 1;
    }
}
