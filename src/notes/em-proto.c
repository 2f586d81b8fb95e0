/* em-proto: what the items of a stretch add to a proposal.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-proto.h"

#include "em-counts.h"
#include "em-refer.h"
#include "em-slots.h"

#include <math.h>
#include <string.h>

enum
{
  ENGLISH = 1,           /* bit of the first lexicon */
  PREPOSITION_WINDOW = 3, FLAW = 7 /* a noun of this weight is damage by itself */,
  OWN_PER_DEMOTED = 5,   /* weights count fivefold, of nouns after a preposition twofold */
  DEMOTED = 2,
  STRONG_ONLY = 6,       /* a noun of this weight stands for itself where no other does */
  COLON_WINDOW = 4, EACH_WINDOW = 8, NAME_MIN = 4 /* bytes of a word that is named again */,
  CRACK_WINDOW = 6,      /* items from a crack to where it ends */
  OPEN_GROOVE = 8,       /* a groove that was cut; scratches and cracks weigh more */
  SIZES_MAX = 16,        /* of one repair */
  LITTLE = 3,            /* bytes of "is", "ist" */
  CODE_MIN = 1000,       /* a bare whole number from here is the name of a steel, an order or a part */
  STATE_NOUN = 4         /* a noun of this weight is a thing that "washed out" says something of */
};

/* Sizes that are no slot's, even where a slot was just named. */
static const guint32 never_slot = EM_ROLE_BUILD | EM_ROLE_ADD | EM_ROLE_PER_SIDE | EM_ROLE_STOCK | EM_ROLE_CLEARANCE |
                                  EM_ROLE_COUNT;

EmGiven
em_given_new (const char *field, const char *text, const EmItem *item)
{
  EmGiven given = { .field = { .field = field, .value = (double) NAN, .low = (double) NAN, .high = (double) NAN, .text = text,
                               .start = item->start, .length = item->length, .line = item->line },
                    .size_item = EM_NO_ITEM };

  return given;
}

EmProto *
em_proto_new (void)
{
  EmProto *proto = g_new0 (EmProto, 1);

  proto->sizes = g_array_new (FALSE, FALSE, sizeof (guint));
  proto->given = g_array_new (FALSE, FALSE, sizeof (EmGiven));
  proto->noun = proto->fill = proto->count_item = proto->typical_item = proto->chamfer_item = proto->parts.item = EM_NO_ITEM;
  proto->count = (double) NAN;
  return proto;
}

void
em_proto_free (gpointer data)
{
  EmProto *proto = data;

  g_array_unref (proto->sizes);
  g_array_unref (proto->given);
  g_free (proto);
}

guint32
em_reader_line_of (const EmReader *r, guint i)
{
  return em_item (r->items, i)->line;
}

/* "2 SETTINGS", "SEE SHT 2": a bare whole number beside a word that is not known measures nothing, and one as large as that in
 * "SHAFT 4340" is a code. */
static gboolean
is_stray (const EmReader *r, guint i)
{
  const EmSize *size = em_item_size (r->items, i);

  if (!size->is_whole || size->unit != EM_UNIT_NONE || size->label_item != G_MAXUINT32 || size->chain != 0 || size->roles != 0)
    return FALSE;
  if (em_fraction_plain (size->value) >= CODE_MIN)
    return TRUE;
  if (i + 1 < r->end && em_item (r->items, i + 1)->type == EM_ITEM_UNKNOWN)
    return TRUE;
  return i > r->first && (em_item (r->items, i - 1)->type == EM_ITEM_UNKNOWN ||
                          em_item_says (r->items, i - 1, EM_SAYS_NOISE) != NULL) &&
         (i + 1 >= r->end || em_item_is_soft_break (r->items, i + 1));
}

gboolean
em_reader_is_sized (const EmReader *r, guint i)
{
  const guint32 apart = EM_ROLE_STOCK | EM_ROLE_CLEARANCE | EM_ROLE_HARDNESS;

  return em_item_is_measure (r->items, i) && !em_item (r->items, i)->is_used &&
         (em_item_size (r->items, i)->roles & apart) == 0 && !is_stray (r, i);
}

/* "two of the holes", "one of the pins": those that are meant, not where they are. */
static gboolean
is_some_of (const EmReader *r, guint preposition)
{
  const EmSense *number = preposition > r->first ? em_item_says (r->items, preposition - 1, EM_SAYS_NUMBER) : NULL;

  return g_ascii_strncasecmp (r->items->text + em_item (r->items, preposition)->start, "of", 2) == 0 &&
         ((number != NULL && strchr (number->value, '/') == NULL) ||
          (preposition > r->first && em_item (r->items, preposition - 1)->type == EM_ITEM_SIZE &&
                                                                      em_item_size (r->items, preposition - 1)->is_whole));
}

/* A nick, a crack, a pit: damage by name, and no part that may be damaged. */
static gboolean
is_flaw (const EmSense *noun)
{
  return noun != NULL && (noun->weight[EDGE_NICK] >= FLAW || noun->weight[GROOVE] >= FLAW ||
                          (noun->weight[RECESS] >= FLAW && g_strcmp0 (noun->set_value, "cap") == 0));
}

/* The last word of a place told by a preposition: a part, or a noun by its capital, and no article. */
static gboolean
is_where (const EmReader *r, guint i)
{
  return em_item_says (r->items, i, EM_SAYS_KIND) != NULL || em_item_says (r->items, i, EM_SAYS_PLACE) != NULL ||
         (em_item (r->items, i)->flags & (EM_TOKEN_CAPITAL | EM_TOKEN_UPPER)) == EM_TOKEN_CAPITAL;
}

/* "der Kern hat Risse", "la placa tiene dos grietas": without an article. */
static gboolean
is_has (const EmReader *r, guint i)
{
  static const char *const words[] = { "has", "have", "shows", "hat", "haben", "zeigt", "zeigen", "aufweist", "tiene", "tienen", "presenta", "presentan", "trae", "muestra",
                                       "ont", "présente", "présentent", "montre" };

  return em_item_is_any_word_of (r->items, i, words, G_N_ELEMENTS (words));
}

/* "hat am Anschnitt einen Riss": an article behind the place that begins what is there; "near a crack" has none before it. */
static gboolean
is_behind_place (const EmReader *r, guint i)
{
  const EmSense *article = i > r->first + 1 ? em_item_says (r->items, i - 1, EM_SAYS_NUMBER) : NULL;

  return is_flaw (em_item_says (r->items, i, EM_SAYS_KIND)) && article != NULL && g_strcmp0 (article->value, EM_ARTICLE) == 0 && is_where (r, i - 2);
}

/* Leads to what a hole is made for: "for", "for a". */
static gboolean
is_for (const EmReader *r, guint i)
{
  static const char *const words[] = { "for", "for a", "for the", "für", "für einen", "für den", "para", "para un", "para el", "pour", "pour un" };

  return em_item_is_any_word_of (r->items, i, words, G_N_ELEMENTS (words)) ||
         (i > r->first && em_item_says (r->items, i, EM_SAYS_NUMBER) != NULL && em_item_is_any_word_of (r->items, i - 1, words, G_N_ELEMENTS (words)));
}

/* "Tasche ist an einer Wand ausgewaschen", "pocket washed out on one wall": what is worn there is the wall. */
static gboolean
is_wall_that_wore (const EmReader *r, guint wall, guint preposition)
{
  const EmSense *noun = em_item_says (r->items, wall, EM_SAYS_KIND);
  guint beside[] = { wall + 1, preposition - 1 };

  if (noun == NULL || noun->value != NULL || noun->weight[SIDEWALL] == 0 || noun->weight[FACE] > 0)
    return FALSE;
  for (guint k = 0; k < G_N_ELEMENTS (beside); k++)
    if (beside[k] >= r->first && beside[k] < r->end)
      {
        const EmSense *label = em_item_says (r->items, beside[k], EM_SAYS_LABEL), *state = em_item_says (r->items, beside[k], EM_SAYS_KIND);

        if ((state != NULL && g_strcmp0 (state->value, "state") == 0) ||
            (label != NULL && (label->roles & EM_ROLE_WORN) != 0 && em_item_says (r->items, beside[k], EM_SAYS_GLUE) == NULL &&
             em_item (r->items, beside[k])->length > LITTLE))
          return TRUE;
      }
  return FALSE;
}

/* "6 blades, 2 chips per blade": what has so many each is no damage, here or where it is named before. */
static gboolean
is_of_each (const EmReader *r, guint i)
{
  const EmItem *noun = em_item (r->items, i);

  if (i > r->first + 2 && em_item_is_per (r->items, i - 1) && em_item_says (r->items, i - 2, EM_SAYS_KIND) != NULL)
    return !isnan (em_counts_number_at (r, i - 3));
  for (guint per = i + 3; per + 1 < r->end && per <= i + EACH_WINDOW; per++)
    if (em_item_is_per (r->items, per) && em_item_says (r->items, per + 1, EM_SAYS_KIND) != NULL && em_item_says (r->items, per - 1, EM_SAYS_KIND) != NULL &&
        em_item (r->items, per + 1)->length >= NAME_MIN && noun->length >= em_item (r->items, per + 1)->length &&
        g_ascii_strncasecmp (r->items->text + noun->start, r->items->text + em_item (r->items, per + 1)->start, em_item (r->items, per + 1)->length) == 0)
      return !isnan (em_counts_number_at (r, per - 2));
  return FALSE;
}

/* Told so by where it stands, whatever is before it. */
static gboolean
names_place (const EmReader *r, guint i)
{
  if (em_item (r->items, i)->is_where || is_of_each (r, i))
    return TRUE;
  /* "same pocket, floor low .008" */
  if (i > r->first && i + 2 < r->end && em_item_is_word (r->items, i - 1, "same") && em_item_is_sign (r->items, i + 1, ',') &&
      em_item_says (r->items, i + 2, EM_SAYS_KIND) != NULL && em_item_says (r->items, i + 2, EM_SAYS_KIND)->value == NULL)
    return TRUE;
  /* "shoulder face low 0.1 (outer dia 32)": only what the size is. */
  return i > r->first && em_item_is_sign (r->items, i - 1, '(') && em_item_says (r->items, i, EM_SAYS_LABEL) != NULL;
}

/* "cracked from the corner to the water line", "crack runs to the bore": as far as that. */
static gboolean
ends_crack (const EmReader *r, guint to)
{
  if (em_item_says (r->items, to, EM_SAYS_TO) == NULL)
    return FALSE;
  for (guint k = to; k-- > r->first && k + CRACK_WINDOW >= to && em_item (r->items, k)->type != EM_ITEM_SIZE;)
    {
      const EmSense *noun = em_item_says (r->items, k, EM_SAYS_KIND);

      if (noun != NULL && noun->weight[GROOVE] >= FLAW)
        return TRUE;
    }
  return FALSE;
}

/* What stands at k leads to a place, though it is no preposition. */
static gboolean
leads_to_place (const EmReader *r, guint k)
{
  const EmItem *item = em_item (r->items, k);

  /* "1 deep into the land" */
  if (em_item_is_word (r->items, k, "into") || ends_crack (r, k))
    return TRUE;
  /* "wall of shutoff pocket": a label of lengths, "2 in of shutoff", that is none here. */
  if (item->type == EM_ITEM_PHRASE && em_item_says (r->items, k, EM_SAYS_LABEL) != NULL &&
      (k == r->first || em_item (r->items, k - 1)->type != EM_ITEM_SIZE) &&
      g_ascii_strncasecmp (r->items->text + item->start, "of ", 3) == 0)
    return TRUE;
  /* "mirror polish near the pit" */
  return em_item_says (r->items, k, EM_SAYS_NEAR) != NULL && em_item_says (r->items, k, EM_SAYS_LABEL) == NULL;
}

/* "À côté un petit creux rond": what is told there at the head of a sentence, and not what it is near to. */
static gboolean
begins_beside (const EmReader *r, guint k)
{
  const EmSense *article = k + 1 < r->end ? em_item_says (r->items, k + 1, EM_SAYS_NUMBER) : NULL;

  return k == r->first && article != NULL && strcmp (article->value, EM_ARTICLE) == 0 && !em_item_is_word (r->items, k, "near");
}

/* "Der Stift ist …", ", und der Zapfen", "hier ist der Sitz undicht": at the head of a part it is the article of what is told, and no "of the". */
static gboolean
is_article_at_head (const EmReader *r, guint i)
{
  static const char *const before[] = { "ist", "war", "hat", "wurde", "wird", "muss", "soll", "sollte", "dass", "daß", "weil", "da", "leider", "auch", "außerdem", "dann", "wenn", "wo" };

  return em_item_is_word (r->items, i, "der") &&
         (i == r->first || em_item_is_soft_break (r->items, i - 1) || em_item (r->items, i - 1)->type == EM_ITEM_SIGN ||
          em_item_is_any_word_of (r->items, i - 1, before, G_N_ELEMENTS (before)));
}

/* A noun after a preposition names the place: "nick IN SIDEWALL". */
gboolean
em_reader_is_demoted (const EmReader *r, guint i)
{
  static const char *const between[] = { "between", "between the", "entre", "entre les", "entre los", "entre las", "zwischen", "zwischen den" };
  const EmSense *noun = em_item_says (r->items, i, EM_SAYS_KIND);

  /* "on the lip chipped": what became of it is no place. */
  if (noun != NULL && (g_strcmp0 (noun->value, "state") == 0 || g_strcmp0 (noun->value, "damage") == 0))
    return FALSE;
  if (names_place (r, i))
    return TRUE;
  if (is_behind_place (r, i))
    return FALSE;
  for (guint k = i, n_passed = 0; k-- > r->first && k + PREPOSITION_WINDOW + n_passed >= i;)
    {
      const EmItem *item = em_item (r->items, k);
      const EmSense *glue = em_item_says (r->items, k, EM_SAYS_GLUE);

      /* "on a 40 mm dia shaft" */
      n_passed += item->type == EM_ITEM_SIZE && (em_item_size (r->items, k)->roles & EM_ROLE_DIAMETER) != 0;

      /* "the face of the plate has a score": what it has is no place. */
      if ((glue != NULL && g_strcmp0 (glue->value, "has") == 0) || (k + 2 >= i && is_has (r, k)))
        return FALSE;
      /* "Der Riss ist …" tells no other one than before. */
      if (is_article_at_head (r, k) && !is_flaw (noun))
        return FALSE;
      if (em_item_says (r->items, k, EM_SAYS_PREPOSITION) != NULL)
        return !is_some_of (r, k) && !is_wall_that_wore (r, i, k);
      if (leads_to_place (r, k))
        return !(is_flaw (noun) && begins_beside (r, k));
      /* "hole for 1/4 dowel" */
      if (item->type == EM_ITEM_SIZE && k + 1 == i && k > r->first && is_for (r, k - 1))
        return TRUE;
      /* "on end of ⌀.50 pin" */
      if (item->type == EM_ITEM_SIZE && (em_item_size (r->items, k)->roles & EM_ROLE_DIAMETER) != 0)
        continue;
      /* "on end of 3 core pins" */
      if (item->type == EM_ITEM_SIZE && k + 1 == i && k > r->first && (em_item_size (r->items, k)->roles & EM_ROLE_COUNT) != 0 &&
          em_item_says (r->items, k - 1, EM_SAYS_PREPOSITION) != NULL && em_item_says (r->items, k - 1, EM_SAYS_KIND) != NULL)
        continue;
      /* "on the rim scratch 25 long", "Am Kern Riefe 25 lang": what is there. */
      if (k + 1 == i && is_flaw (noun) && is_where (r, k))
        return FALSE;
      if (k + 1 == i && em_item_says (r->items, k, EM_SAYS_KIND) != NULL)
        continue;
      /* "rib between the 2 pockets" */
      if (item->type == EM_ITEM_SIZE && k + 1 == i && (em_item_size (r->items, k)->roles & (EM_ROLE_COUNT | EM_ROLE_REFERENCE)) != 0 && k > r->first &&
          em_item_is_any_word_of (r->items, k - 1, between, G_N_ELEMENTS (between)))
        return TRUE;
      if (item->type == EM_ITEM_SIZE || em_item_is_soft_break (r->items, k) || em_item_is_sign (r->items, k, ':') ||
          (em_item_says (r->items, k, EM_SAYS_KIND) != NULL && em_item_says (r->items, k, EM_SAYS_PLACE) == NULL))
        return FALSE;
    }
  return FALSE;
}

/* A number that names a part. */
static gboolean
is_name (const EmReader *r, guint i)
{
  return i < r->end && em_item (r->items, i)->type == EM_ITEM_SIZE && (em_item_size (r->items, i)->roles & EM_ROLE_REFERENCE) != 0;
}

/* Words between a noun and the colon that it heads. */
static gboolean
says_where (const EmReader *r, guint i)
{
  static const EmSays where[] = { EM_SAYS_SET, EM_SAYS_GLUE, EM_SAYS_PREPOSITION };

  for (gsize k = 0; k < G_N_ELEMENTS (where); k++)
    if (em_item_says (r->items, i, where[k]) != NULL)
      return TRUE;
  /* "cierre lateral corredera 1:" */
  if (em_item_says (r->items, i, EM_SAYS_PLACE) != NULL && em_item_says (r->items, i, EM_SAYS_KIND) == NULL && is_name (r, i + 1))
    return TRUE;
  if (is_name (r, i))
    return TRUE;
  return em_item_says (r->items, i, EM_SAYS_KIND) != NULL && em_reader_is_demoted (r, i);
}

/* "Lifter pocket: sidewall 2.0 LG": a noun before a colon names the place when another noun follows. */
static gboolean
is_before_colon (const EmReader *r, guint i)
{
  guint colon = i + 1;
  gboolean is_sized;

  /* "core tip broken off: rib 0.8 thick", "slot for the blade: one wall" */
  while (colon < r->end && colon <= i + COLON_WINDOW && says_where (r, colon))
    colon++;
  /* "SHUTOFF PIN ⌀.250: TIP FACE LOW .010" */
  is_sized = colon + 2 < r->end && em_item (r->items, colon + 1)->type == EM_ITEM_SIZE && em_item_is_sign (r->items, colon + 2, ':') &&
             (em_item_size (r->items, colon + 1)->roles & ~(guint32) EM_ROLE_FINISHED) == EM_ROLE_DIAMETER;
  colon += is_sized ? 2 : 0;
  if (colon >= r->end || !em_item_is_sign (r->items, colon, ':'))
    return FALSE;
  for (guint k = colon + 1; k < r->end && k <= colon + 1 + PREPOSITION_WINDOW; k++)
    {
      const EmSense *noun = em_item_says (r->items, k, EM_SAYS_KIND);

      if (noun != NULL && (!is_sized || (noun->value == NULL && noun->weight[FACE] > 0)))
        return TRUE;
    }
  return FALSE;
}

/* "Groove it out": what is to be done with the thing, not another one. */
static gboolean
is_done_to_it (const EmReader *r, guint i)
{
  const EmSense *glue = i + 1 < r->items->items->len ? em_item_says (r->items, i + 1, EM_SAYS_GLUE) : NULL;

  return glue != NULL && g_strcmp0 (glue->value, "it") == 0;
}

/* "so that we can bore and hone here": what somebody does. */
static gboolean
is_done_by (const EmReader *r, guint i)
{
  static const char *const before[] = { "can", "will", "we'll", "we", "you", "you'll", "they", "they'll", "must", "shall", "could", "would" };

  return i > r->first && em_item_is_any_word_of (r->items, i - 1, before, G_N_ELEMENTS (before)) &&
         (i + 1 >= r->items->items->len || em_item (r->items, i + 1)->type != EM_ITEM_SIZE);
}

/* "rust pits removed, face now low": they are gone. */
static gboolean
is_removed (const EmReader *r, guint i)
{
  const EmSense *noise = i + 1 < r->items->items->len ? em_item_says (r->items, i + 1, EM_SAYS_NOISE) : NULL;

  return noise != NULL && g_strcmp0 (noise->value, "removed") == 0 && is_flaw (em_item_says (r->items, i, EM_SAYS_KIND));
}

/* A noun of a repair; "3.0 OD" is a size's label instead. */
gboolean
em_reader_is_noun (const EmReader *r, guint i)
{
  if (em_item_says (r->items, i, EM_SAYS_KIND) == NULL || is_done_to_it (r, i) || is_done_by (r, i) || em_item_is_of_face (r->items, i) ||
      is_removed (r, i) || (em_item (r->items, i)->is_heading && em_item (r->items, i)->is_talk))
    return FALSE;
  /* "flanks 10°": the draft of what was told before. */
  if (i + 1 < r->items->items->len && em_item (r->items, i + 1)->type == EM_ITEM_SIZE &&
      em_item_size (r->items, i + 1)->unit == EM_UNIT_DEGREE &&
      em_item_says (r->items, i, EM_SAYS_LABEL) != NULL &&
        (em_item_says (r->items, i, EM_SAYS_LABEL)->roles & (EM_ROLE_DRAFT | EM_ROLE_ANGLE)) != 0)
    return FALSE;
  /* "ID 62" names the bore and its size. */
  if (em_item (r->items, i)->is_used && em_item_says (r->items, i, EM_SAYS_LABEL) == NULL)
    return FALSE;
  /* "Pos 2 Kante R0,3": the number before the sentence is no length. */
  return em_item_says (r->items, i, EM_SAYS_LABEL) == NULL || i == r->first || em_item (r->items, i - 1)->type != EM_ITEM_SIZE ||
         (em_item_size (r->items, i - 1)->roles & (EM_ROLE_COUNT | EM_ROLE_REFERENCE)) != 0 || em_item_is_part_number (r->items, i - 1) ||
         em_item_is_few_of (r->items, i - 1);
}

/* "zu Schieber 2: Ausbruch", "zu Pos. 3": German for what it is about, against "Bohrung zu, 12 tief". */
static gboolean
is_about (const EmReader *r, guint i)
{
  return i == r->first && i + 1 < r->end && em_item_is_word (r->items, i, "zu") && !em_item_is_soft_break (r->items, i + 1);
}

gboolean
em_reader_is_verb (const EmReader *r, guint i)
{
  return !is_about (r, i) && em_item_says (r->items, i, EM_SAYS_VERB) != NULL &&
         (!em_item (r->items, i)->is_used || em_item_says (r->items, i, EM_SAYS_LABEL) != NULL);
}

/* "Kratzer Dichtfläche", "ding bottom of pocket": the damage, and where it is; a groove has a floor of its own. */
static gboolean
is_flaw_on_face (const EmReader *r, guint i)
{
  static const char *const parts[] = { "groove", "grooves", "nut", "nuten", "notch", "rille", "rillen" };
  const EmSense *flaw = em_item_says (r->items, i, EM_SAYS_KIND);
  const EmSense *face = i + 1 < r->end ? em_item_says (r->items, i + 1, EM_SAYS_KIND) : NULL;

  return is_flaw (flaw) && flaw->value == NULL && face != NULL && face->value == NULL && face->weight[FACE] > 0 &&
         !is_flaw (face) && !em_item_is_any_word_of (r->items, i, parts, G_N_ELEMENTS (parts));
}

/* "Wand Tasche", "Innenkante Bohrung": languages that make one word of "PIN BORE" tell behind a wall, an edge or a face only of what it is one. */
static gboolean
is_of_next (const EmReader *r, guint i)
{
  const EmSense *side = i >= r->first && i + 1 < r->end && em_reader_is_noun (r, i) ? em_item_says (r->items, i, EM_SAYS_KIND) : NULL;
  const EmSense *part = side != NULL && em_reader_is_noun (r, i + 1) ? em_item_says (r->items, i + 1, EM_SAYS_KIND) : NULL;

  if (part == NULL || side->value != NULL || part->value != NULL ||
      ((em_item (r->items, i)->phrase->languages | em_item (r->items, i + 1)->phrase->languages) & ENGLISH) != 0)
    return FALSE;
  return side->weight[SIDEWALL] + side->weight[WORN_CORNER] + side->weight[FACE] > 0 && side->weight[RECESS] + side->weight[GROOVE] == 0 &&
         part->weight[RECESS] + part->weight[BORE] + part->weight[PIN] + part->weight[GROOVE] + part->weight[RIB] > 0 &&
         part->weight[SIDEWALL] + part->weight[WORN_CORNER] + part->weight[FACE] + part->weight[EDGE_NICK] == 0 && !is_flaw (part);
}

/* "PIN BORE": the last noun of a row is the thing, those before it say which. */
static gboolean
is_compound (const EmReader *r, guint i)
{
  guint next = i + 1;

  if (is_flaw_on_face (r, i) || is_of_next (r, i))
    return FALSE;

  while (next + 1 < r->end && next <= i + 2 && em_item_says (r->items, next, EM_SAYS_PLACE) != NULL &&
         em_item_says (r->items, next, EM_SAYS_KIND) == NULL)
    next++;
  /* "Kratzer Dichtfläche": which damage, and then where; a groove may be where its edge is. */
  if (next == i + 1 && is_flaw (em_item_says (r->items, i, EM_SAYS_KIND)) &&
      em_item_says (r->items, i, EM_SAYS_KIND)->weight[GROOVE] != OPEN_GROOVE && next < r->end && em_reader_is_noun (r, next) &&
      !is_flaw (em_item_says (r->items, next, EM_SAYS_KIND)))
    return FALSE;
  return next < r->end && em_reader_is_noun (r, next) &&
         em_item_says (r->items, next, EM_SAYS_KIND)->value == NULL /* "land peened": what became of it */;
}

static void
add_noun (const EmReader *r, EmProto *proto, guint i)
{
  const EmSense *sense = em_item_says (r->items, i, EM_SAYS_KIND);
  gboolean is_state = g_strcmp0 (sense->value, "state") == 0;
  /* "bore washed out": what became of the bore. */
  gboolean demoted = em_reader_is_demoted (r, i) || is_before_colon (r, i) || is_compound (r, i) || (i > r->first && is_of_next (r, i - 1)) ||
                     (is_state && proto->noun_weight >= STATE_NOUN);
  int best = 0, kind = 0;

  for (int k = 0; k < EM_N_NOTE_KINDS; k++)
    {
      proto->weight[k] += sense->weight[k] * (demoted ? DEMOTED : OWN_PER_DEMOTED);
      kind = sense->weight[k] > best ? k : kind;
      best = MAX (best, sense->weight[k]);
    }
  if (!demoted && sense->value == NULL)
    proto->kinds |= 1u << kind;
  best = demoted ? 1 : best;
  if (best > proto->noun_weight)
    {
      proto->noun_weight = best;
      proto->noun = i;
      proto->is_slip = (em_item (r->items, i)->flags & (EM_TOKEN_SLIP | EM_TOKEN_COMPOUND)) != 0;
      proto->is_part = i + 1 < r->end && em_item_says (r->items, i + 1, EM_SAYS_PLACE) != NULL;
    }
  em_item (r->items, i)->is_used = TRUE;
}

static void
give_text (const EmReader *r, EmProto *proto, const char *field, const char *text, guint i, EmReadState state, const char *reason)
{
  const EmItem *item = em_item (r->items, i);
  EmGiven given = em_given_new (field, text, item);

  given.field.state = state;
  given.field.reason = reason;
  if (g_ascii_isdigit (text[0]) && strlen (text) <= 4)
    {
      given.field.value = (double) g_ascii_strtoll (text, NULL, 10);
      given.field.text = NULL;
    }
  g_array_append_val (proto->given, given);
}

/* Labels that also mean something without a size beside them. */
static const guint32 modifiers = EM_ROLE_BUILD | EM_ROLE_WORN | EM_ROLE_FINISHED | EM_ROLE_PER_SIDE | EM_ROLE_ON_DIAMETER;

/* What a verb, a wear or a damage says of the kind. "Broken at the end, 6 missing": damage told twice is no more damage. */
static void
add_said (EmProto *proto, const EmSense *sense)
{
  gboolean is_damage = sense->says == EM_SAYS_SET && sense->set_field == NULL;

  for (int w = 0; w < EM_N_NOTE_KINDS; w++)
    {
      int before = is_damage ? proto->damage[w] : 0;

      proto->weight[w] += MAX (0, sense->weight[w] - before) * OWN_PER_DEMOTED;
      if (is_damage)
        proto->damage[w] = MAX (before, sense->weight[w]);
    }
}

static gboolean
is_all_parts (const EmReader *r, guint i)
{
  return i + 1 < r->end && em_item_says (r->items, i + 1, EM_SAYS_PLACE) != NULL &&
         em_item_says (r->items, i + 1, EM_SAYS_KIND) == NULL &&
         g_ascii_tolower (r->items->text[em_item (r->items, i + 1)->start + em_item (r->items, i + 1)->length - 1]) == 's';
}

/* What a set phrase or a shape in a noun gives: "tapered ends", "ball seat". */
static void
add_set_field (const EmReader *r, EmProto *proto, const EmSense *sense, guint i)
{
  /* "dia 64 outside": behind a diameter it says on which side an edge runs, and else only where. */
  gboolean is_behind = g_strcmp0 (sense->value, "behind") == 0, is_plain = sense->says == EM_SAYS_SET && !is_behind;

  if (sense->set_field == NULL || (is_behind && (proto->roles & EM_ROLE_DIAMETER) == 0))
    return;
  give_text (r, proto, sense->set_field, sense->set_value, i, is_plain ? EM_READ_READ : EM_READ_INFERRED,
             is_plain ? NULL : "shape-from-word");
  em_item (r->items, i)->is_used = TRUE;
}

/* What is to be done. */
static void
add_verb (EmProto *proto, const EmSense *sense, guint i)
{
  proto->has_verb = TRUE;
  proto->has_build |= g_strcmp0 (sense->value, "build") == 0;
  if (g_strcmp0 (sense->value, "fill") != 0)
    return;
  proto->has_fill = TRUE;
  proto->fill = i;
}

/* "3 identical tools, all of them have …": how many was told of the tools. */
static gboolean
is_all_tools (const EmReader *r, guint i)
{
  const GArray *general = r->grammar->general;

  if (em_item_is_word (r->items, i, "all of them") && em_refer_counts_tools (r, r->first, i))
    return TRUE;
  for (guint k = 0; em_item_is_word (r->items, i, "all of them") && k < general->len; k++)
    if (strcmp (g_array_index (general, EmGiven, k).field.field, "tools") == 0)
      return TRUE;
  return FALSE;
}

/* "ON ALL INSERTS", "several": how many is not told. */
static gboolean
is_open_count (const EmReader *r, const EmSense *sense, guint i)
{
  if (is_all_tools (r, i))
    return FALSE;
  return sense->says == EM_SAYS_TYPICAL || sense->says == EM_SAYS_MANY || (sense->says == EM_SAYS_ALL && is_all_parts (r, i));
}

/* "LEAVE .005 STOCK TYP": typical of the stock, not of a repair. */
static gboolean
is_of_stock (const EmReader *r, guint i)
{
  const EmSense *label = i > r->first ? em_item_says (r->items, i - 1, EM_SAYS_LABEL) : NULL;

  return (label != NULL && (label->roles & EM_ROLE_STOCK) != 0) ||
         (i > r->first && em_item (r->items, i - 1)->type == EM_ITEM_SIZE && (em_item_size (r->items, i - 1)->roles & EM_ROLE_STOCK) != 0);
}

static void
add_sense (const EmReader *r, EmProto *proto, const EmSense *sense, guint i)
{
  EmItem *item = em_item (r->items, i);
  gboolean is_little = em_phrase_find (item->phrase, EM_SAYS_GLUE) != NULL || em_phrase_find (item->phrase, EM_SAYS_NOISE) != NULL; /* "is", "ist" */
  gboolean is_worn = sense->says == EM_SAYS_LABEL && (sense->roles & EM_ROLE_WORN) != 0 && !is_little;

  if (sense->says == EM_SAYS_VERB && is_about (r, i))
    {
      item->is_used = TRUE;
      return;
    }
  add_set_field (r, proto, sense, i);
  if (sense->says == EM_SAYS_VERB || sense->says == EM_SAYS_SET || is_worn)
    {
      add_said (proto, sense);
      item->is_used = TRUE;
    }
  if (sense->says == EM_SAYS_LABEL && (sense->roles & ~modifiers) == 0)
    item->is_used = TRUE;
  proto->has_worn |= is_worn;
  if (sense->says == EM_SAYS_SET && sense->set_field == NULL)
    proto->has_damage = TRUE;
  proto->is_equal |= sense->says == EM_SAYS_EQUAL;
  item->is_used |= sense->says == EM_SAYS_ONE_OF && i + 1 < r->end && em_item_says (r->items, i + 1, EM_SAYS_KIND) != NULL;
  item->is_used |= sense->says == EM_SAYS_SAME || sense->says == EM_SAYS_EQUAL || sense->says == EM_SAYS_PLACE;
  if (sense->says == EM_SAYS_ACCESS && (i == r->first || em_item (r->items, i - 1)->type != EM_ITEM_SIZE))
    {
      give_text (r, proto, "access", sense->value, i, EM_READ_INFERRED, "from-words");
      item->is_used = TRUE;
    }
  if (sense->says == EM_SAYS_VERB)
    add_verb (proto, sense, i);
  if (is_open_count (r, sense, i) && proto->typical_item == EM_NO_ITEM && !is_of_stock (r, i))
    {
      proto->typical_item = i;
      item->is_used = TRUE;
    }
}

static void
add_phrase (const EmReader *r, EmProto *proto, guint i)
{
  const EmPhrase *phrase = em_item (r->items, i)->phrase;

  for (guint k = 0; k < phrase->n_senses; k++)
    add_sense (r, proto, phrase->sense[k], i);
}

/* "2 X 45°", "2x45°": as many, or a chamfer so large; "Kante: 2 X 45°" though the noun may be a label. */
static gboolean
is_chamfer (const EmReader *r, guint i)
{
  const double usual_deg = 45;
  const EmSize *size = em_item_size (r->items, i), *next;

  if (i + 2 >= r->end || !size->is_whole || size->unit != EM_UNIT_NONE ||
      (size->label_item != G_MAXUINT32 && em_item_says (r->items, size->label_item, EM_SAYS_KIND) == NULL) ||
      em_item_says (r->items, i + 1, EM_SAYS_TIMES) == NULL ||
      em_item (r->items, i + 2)->type != EM_ITEM_SIZE)
    return FALSE;
  next = em_item_size (r->items, i + 2);
  return next->unit == EM_UNIT_DEGREE &&
         ((em_item (r->items, i + 1)->flags & EM_TOKEN_GLUED) == 0 || fabs (em_fraction_plain (next->value) - usual_deg) < 0.5);
}

static void
add_size (const EmReader *r, EmProto *proto, guint i)
{
  EmSize *size = em_item_size (r->items, i);

  if ((size->roles & EM_ROLE_COUNT) != 0)
    {
      em_counts_add_number (r, proto, i);
      return;
    }
  /* A hardness that the table does not hold stays unused. */
  if ((size->roles & (EM_ROLE_REFERENCE | EM_ROLE_HARDNESS)) != 0 || em_unit_is_hardness (size->unit))
    return;
  if (is_chamfer (r, i))
    {
      proto->chamfer_item = i;
      em_item (r->items, i)->is_used = TRUE;
      return;
    }
  if (proto->chamfer_item != EM_NO_ITEM && i == proto->chamfer_item + 2)
    {
      em_item (r->items, i)->is_used = TRUE;
      return;
    }
  if (is_stray (r, i))
    return;
  g_array_append_val (proto->sizes, i);
  proto->roles |= size->roles;
}

static void
use_connectives (const EmReader *r, guint i)
{
  EmItem *item = em_item (r->items, i);
  static const EmSays used[] = { EM_SAYS_TO, EM_SAYS_UNIT, EM_SAYS_PLACES, EM_SAYS_MATERIAL };

  item->is_used |= em_slots_is_in (r->items, i);
  for (gsize k = 0; k < G_N_ELEMENTS (used); k++)
    item->is_used |= em_item_says (r->items, i, used[k]) != NULL;
}

/* German "die": a little word of the language that most of the words are in. */
gboolean
em_reader_is_foreign_article (const EmReader *r, guint i)
{
  const EmItem *item = em_item (r->items, i);
  guint32 languages = item->phrase->languages & ~1u;

  return em_item_says (r->items, i, EM_SAYS_GLUE) != NULL && languages != 0 &&
         ((item->flags & EM_TOKEN_CAPITAL) == 0 || (i == r->first && (item->flags & EM_TOKEN_UPPER) == 0)) &&
         r->items->n_words[g_bit_nth_lsf (languages, -1)] > r->items->n_words[0];
}

void
em_reader_take_aside (const EmReader *r, EmProto *proto, guint first, guint end, gboolean words_too)
{
  for (guint i = first; i < end; i++)
    {
      const EmSense *access = em_item_says (r->items, i, EM_SAYS_ACCESS);

      if (access != NULL && !em_item (r->items, i)->is_used)
        {
          give_text (r, proto, "access", access->value, i, EM_READ_INFERRED, "from-words");
          em_item (r->items, i)->is_used = TRUE;
        }
      if (em_item_says (r->items, i, EM_SAYS_KIND) != NULL &&
          g_strcmp0 (em_item_says (r->items, i, EM_SAYS_KIND)->set_field, "side") == 0)
        give_text (r, proto, "side", em_item_says (r->items, i, EM_SAYS_KIND)->set_value, i, EM_READ_INFERRED, "shape-from-word");
      proto->is_per_part |= em_counts_is_per_part (r, i);
      /* "4 seats per plate, 2 plates" */
      if (proto->count_item == EM_NO_ITEM || proto->count_item >= first)
        em_counts_add_loose (r, proto, i, words_too);
    }
}

/* "Top of the flow dam broke off": where no other noun stands, the dam is what the sizes are of. */
static void
raise_only_noun (const EmReader *r, EmProto *proto)
{
  const EmSense *sense = proto->noun != EM_NO_ITEM &&
                         proto->kinds == 0 ? em_item_says (r->items, proto->noun, EM_SAYS_KIND) : NULL;

  for (int k = 0; sense != NULL && sense->value == NULL && k < EM_N_NOTE_KINDS; k++)
    if (sense->weight[k] >= STRONG_ONLY)
      {
        proto->weight[k] += sense->weight[k] * (OWN_PER_DEMOTED - DEMOTED);
        proto->kinds |= 1u << k;
      }
}

/* "Weld shut 6 holes ⌀.25 and 2 holes ⌀.31": what is to be done with the first is to be done with the next, too. */
void
em_reader_share_fill (const EmReader *r, EmProto *proto, const EmProto *before)
{
  if (before == NULL || before == proto || before->fill == EM_NO_ITEM || before->fill < r->first || proto->has_verb ||
      proto->has_worn ||
      proto->has_damage)
    return;
  add_phrase (r, proto, before->fill);
}

/* "Add .010 to: face A 1.0 x .5, wall B 1.0 x .25": as much on the next, where it tells no other. */
void
em_reader_share_build (const EmReader *r, EmProto *proto, const EmProto *before)
{
  const guint32 told = EM_ROLE_BUILD | EM_ROLE_ADD | EM_ROLE_WORN | EM_ROLE_PER_SIDE | EM_ROLE_THICKNESS | EM_ROLE_RADIUS | EM_ROLE_DIAMETER;
  guint item = EM_NO_ITEM;

  if (before == NULL || before == proto || before->sizes->len < 2 || before->noun == EM_NO_ITEM || proto->sizes->len != 2 ||
      (proto->roles & told) != 0 || proto->has_damage || proto->has_worn || proto->weight[FACE] + proto->weight[SIDEWALL] == 0)
    return;
  for (guint i = 0; i < before->sizes->len && i < SIZES_MAX && item == EM_NO_ITEM; i++)
    {
      guint size = g_array_index (before->sizes, guint, i);

      if (size >= r->first && size < before->noun && (em_item_size (r->items, size)->roles & EM_ROLE_BUILD) != 0 &&
          em_item_size (r->items, size)->chain == 0)
        item = size;
    }
  if (item == EM_NO_ITEM)
    return;
  if (em_item_size (r->items, item)->reason == NULL)
    em_item_size (r->items, item)->reason = "from-words";
  g_array_append_val (proto->sizes, item);
  proto->roles |= em_item_size (r->items, item)->roles;
}

/* "slot is 4 wide, 19 deep": the depth behind the comma is the slot's, whose width stands before it. */
static gboolean
is_depth_of_slot (const EmReader *r, guint slot, guint comma)
{
  const guint32 told = EM_ROLE_DEPTH | EM_ROLE_LENGTH | EM_ROLE_BUILD;

  return slot != EM_NO_ITEM && em_item_is_sign (r->items, comma, ',') && comma + 1 < r->end && comma > slot + 1 &&
         comma <= slot + 4 &&
         em_item (r->items, comma + 1)->type == EM_ITEM_SIZE &&
         (em_item_size (r->items, comma + 1)->roles & told) == EM_ROLE_DEPTH;
}

/* At least two sizes follow. */
static gboolean
is_row (const EmReader *r, guint first, guint end)
{
  guint n = 0;

  for (guint i = first; i < end; i++)
    n += em_item_is_measure (r->items, i) && (em_item_size (r->items, i)->roles & EM_ROLE_PER_SIDE) == 0;
  return n >= 2;
}

/* "die lip 48 wide has a nick 3 long": how large the part is that has it. */
static void
skip_part_with_flaw (const EmReader *r, guint first, guint end)
{
  guint has = first;

  while (has < end && !(em_item_says (r->items, has, EM_SAYS_GLUE) != NULL &&
                        g_strcmp0 (em_item_says (r->items, has, EM_SAYS_GLUE)->value, "has") == 0))
    has++;
  if (has + 1 >= end || !is_flaw (em_item_says (r->items, has + 1, EM_SAYS_KIND)) || !is_row (r, has, end))
    return;
  for (guint i = first; i < has; i++)
    if (em_item_is_measure (r->items, i) && em_item_size (r->items, i)->chain == 0 &&
        (em_item_size (r->items, i)->roles & (EM_ROLE_LENGTH | EM_ROLE_WIDTH | EM_ROLE_HEIGHT | EM_ROLE_THICKNESS | EM_ROLE_DIAMETER)) != 0 &&
        (em_item_size (r->items, i)->roles & (EM_ROLE_BUILD | EM_ROLE_WORN)) == 0)
      em_item_size (r->items, i)->roles |= EM_ROLE_REFERENCE;
}

/* "The slot is 5 wide, 140 long and 6 deep, to be filled": the slot itself, where no wall or rib lies in it. */
static void
fill_slot (const EmReader *r, const EmProto *proto)
{
  if (proto->weight[SIDEWALL] + proto->weight[RIB] > 0)
    return;
  for (guint i = 0; i < proto->sizes->len && i < SIZES_MAX; i++)
    em_item_size (r->items, g_array_index (proto->sizes, guint, i))->roles &= ~(guint32) EM_ROLE_SLOT;
}

/* "feed slot wall | 2.75 | .50": what a table's heading names is no slot's. */
static gboolean
is_in_column (const EmReader *r, guint i)
{
  guint32 label = em_item_size (r->items, i)->label_item;

  return label != G_MAXUINT32 && em_item (r->items, label)->is_heading;
}

/* Adds the items from first to end; nouns that name things near were used before. */
void
em_reader_add_items (EmReader *r, EmProto *proto, guint first, guint end)
{
  guint in_slot = EM_NO_ITEM;

  skip_part_with_flaw (r, first, end);
  if (proto->last == 0 && proto->first == 0)
    proto->first = first;
  proto->last = end - 1;
  for (guint i = first; i < end; i++)
    {
      EmItem *item = em_item (r->items, i);

      if (item->is_used && item->type != EM_ITEM_PHRASE)
        continue;
      if (item->type == EM_ITEM_SIZE)
        {
          /* "cracked corners in pocket 8 long": no length is a slot's. */
          if (((em_item_size (r->items, i)->roles & EM_ROLE_LENGTH) != 0 && em_item_size (r->items, i)->chain == 0) || is_in_column (r, i))
            in_slot = EM_NO_ITEM;
          if (in_slot != EM_NO_ITEM && (em_item_size (r->items, i)->roles & never_slot) == 0)
            em_item_size (r->items, i)->roles |= EM_ROLE_SLOT;
          add_size (r, proto, i);
        }
      if (((em_item_is_soft_break (r->items, i) && item->type == EM_ITEM_SIGN) || em_item_is_sign (r->items, i, ':')) &&
          !is_depth_of_slot (r, in_slot, i))
        in_slot = EM_NO_ITEM;
      if (item->type != EM_ITEM_PHRASE)
        continue;
      if (em_slots_is_in (r->items, i))
        in_slot = i;
      if (em_reader_is_noun (r, i))
        add_noun (r, proto, i);
      else if (em_item_says (r->items, i, EM_SAYS_VERB) == NULL && is_done_to_it (r, i))
        item->is_used = TRUE;
      em_counts_add_word (r, proto, i);
      proto->is_per_part |= em_counts_is_per_part (r, i);
      if (!item->is_used || em_item_says (r->items, i, EM_SAYS_KIND) != NULL || em_item_says (r->items, i, EM_SAYS_LABEL) != NULL)
        add_phrase (r, proto, i);
      use_connectives (r, i);
    }
  raise_only_noun (r, proto);
  em_counts_add_sides (r, proto, first, end);
  if (proto->has_fill)
    fill_slot (r, proto);
  for (guint k = 0; k < r->waiting->len; k++)
    g_array_append_val (proto->given, g_array_index (r->waiting, EmGiven, k));
  g_array_set_size (r->waiting, 0);
}
