/* em-parts: of how many equal parts a note is, told apart from its repairs.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-parts.h"

#include "em-counts.h"
#include "em-list.h"
#include "em-refer.h"

#include <math.h>
#include <string.h>

enum
{
  LISTED_MAX = 12,       /* of one kind, told one by one */
  LITTLE_MAX = 4,        /* words before a number */
  SPREAD_MAX = 8,        /* repairs that a count behind them is of */
  PARTS_MAX = 256, RANGE_MAX = 64, /* parts; and of those numbered from one to the last, no "tool 16-220" */
  SHORT_LINE = 12,       /* items of one that says no more than how many there are */
  NAME_MIN = 4,          /* bytes of a word that may name a part */
  NAMED_ITEMS = 8,       /* of a repair that may name its part */
  NAME_WINDOW = 4        /* items from the beginning of a repair to the name of its part */
};

static gboolean
is_part (const EmReader *r, guint i)
{
  return i < r->end && em_item_says (r->items, i, EM_SAYS_PLACE) != NULL;
}

static gboolean
is_counted_part (const EmReader *r, guint i)
{
  return is_part (r, i) && em_phrase_tells (em_item (r->items, i)->phrase, EM_SAYS_PLACE, "counted");
}

static void
tell (EmReader *r, EmParts parts)
{
  r->parts = parts;
  r->n_since_parts = 0;
}

static gboolean
is_whole (const EmReader *r, guint i)
{
  return i < r->end && em_item (r->items, i)->type == EM_ITEM_SIZE && em_item_size (r->items, i)->is_whole;
}

/* "1-4", "1 thru 4": how many numbers that are. */
static double
range_at (const EmReader *r, guint i)
{
  const EmSize *size = i < r->end && em_item (r->items, i)->type == EM_ITEM_SIZE ? em_item_size (r->items, i) : NULL;

  if (size == NULL || size->unit != EM_UNIT_NONE || size->n_decimals > 0)
    return (double) NAN;
  if (size->low.d != 0)
    return em_fraction_plain (size->high) - em_fraction_plain (size->low) + 1;
  if (!is_whole (r, i) || !is_whole (r, i + 2) || em_item_size (r->items, i + 2)->unit != EM_UNIT_NONE ||
      !(em_item_says (r->items, i + 1, EM_SAYS_TO) != NULL || em_item_is_sign (r->items, i + 1, '-')))
    return (double) NAN;
  return em_fraction_plain (em_item_size (r->items, i + 2)->value) - em_fraction_plain (size->value) + 1;
}

/* The item behind a part and the point of its abbreviation: "Kav. 1-4". */
static guint
behind_part (const EmReader *r, guint part)
{
  return part + 1 + (part + 1 < r->end && em_item_is_sign (r->items, part + 1, '.'));
}

gboolean
em_parts_is_range (const EmReader *r, const EmParts *parts)
{
  return parts->item != EM_NO_ITEM && range_at (r, parts->item) > 1;
}

/* "Cav 1-4: land low": what the line tells each of them has. */
static gboolean
heads_line (const EmReader *r, guint part)
{
  guint range = behind_part (r, part), behind = range + 1 + (em_item_size (r->items, range)->low.d == 0 ? 2 : 0);

  while (part > r->first && em_item_says (r->items, part - 1, EM_SAYS_PLACE) != NULL)
    part--;
  return part == r->first && behind + 1 < r->end && em_item_is_sign (r->items, behind, ':');
}

/* "on 3 inserts the edge": so many parts have what the sentence tells. */
static gboolean
is_on_parts (const EmReader *r, guint count)
{
  static const char *const on[] = { "an", "auf", "bei", "on", "at", "en", "sur", "in" };

  return count > r->first && (count == r->first + 1 || em_item_is_soft_break (r->items, count - 2)) && !is_counted_part (r, count + 1) &&
         em_item_is_any_word_of (r->items, count - 1, on, G_N_ELEMENTS (on)) &&
         is_part (r, count + 1) && em_item_says (r->items, count + 1, EM_SAYS_KIND) == NULL &&
         !(count + 2 < r->end && em_item_is_soft_break (r->items, count + 2)) && count + 2 < r->end;
}

/* "in all", "in", "an allen" before the count heads the sentence. */
static gboolean
is_in_all_first (const EmReader *r, guint count)
{
  static const char *const in[] = { "in", "in all", "on all", "at all", "on", "an", "an allen", "in allen", "bei allen", "en", "en las", "en los", "en todas las", "dans", "dans les", "dans toutes les",
                                    "sur les", "sur" };

  return count > r->first && count <= r->first + 2 && em_item_is_any_word_of (r->items, r->first, in, G_N_ELEMENTS (in)) && count + 2 < r->end &&
         !em_item_is_soft_break (r->items, count + 2) && !em_item_is_sign (r->items, count + 2, ':');
}

/* "3 inserts: nick 4 x 1 x 1", "2 lifters - tip worn": how many parts have what the line tells. Their name is a plural, as "2 insert: …" may
 * be the second line of a list. */
static gboolean
is_title_of_line (const EmReader *r, guint count)
{
  const EmItem *name = count + 3 < r->end ? em_item (r->items, count + 1) : NULL;
  char last = name != NULL ? g_ascii_tolower (r->items->text[name->start + name->length - 1]) : '\0';

  return count == r->first && r->is_line_start && !r->is_listed && r->head == 0 && is_part (r, count + 1) && !is_counted_part (r, count + 1) &&
         em_item_says (r->items, count + 1, EM_SAYS_KIND) == NULL && strchr ("snex", last) != NULL &&
         (em_item_is_sign (r->items, count + 2, ':') || (em_item_is_sign (r->items, count + 2, '-') && !em_item_is_glued (r->items, count + 2)));
}

/* "a mould with 16 cavities, the following repair on every cavity": of what the next lines tell. */
static gboolean
says_every_part (const EmReader *r)
{
  gboolean is_per = FALSE;

  for (guint i = r->first; i < r->end; i++)
    {
      if (em_reader_is_sized (r, i))
        return FALSE;
      is_per |= em_counts_is_per_part (r, i);
    }
  return is_per;
}

/* "tool 220, cavities 1 and 3": all that a line of nothing else to do tells is which ones. */
static double
listed_to_end (const EmReader *r, guint part)
{
  guint end, n = em_counts_numbered (r, part, &end);

  return n > 1 && n <= PARTS_MAX && end + 1 >= r->end ? n : (double) NAN;
}

void
em_parts_note (EmReader *r)
{
  for (guint i = r->first; i + 1 < r->end; i++)
    {
      double n = is_whole (r, i) && em_list_is_bare_whole (r->items, i) && em_fraction_plain (em_item_size (r->items, i)->value) <= PARTS_MAX
                   ? em_fraction_plain (em_item_size (r->items, i)->value) : em_counts_number_at (r, i);

      /* "an 3 Einsätzen ist die Kante ausgebrochen" */
      if (n > 1 && is_on_parts (r, i))
        tell (r, (EmParts) { i, n, FALSE, FALSE });
      else if (n > 1 && is_title_of_line (r, i))
        {
          tell (r, (EmParts) { i, n, FALSE, FALSE });
          r->is_parts_line = TRUE;
        }
      /* "In all 4 cavities the edge is worn" */
      else if (n > 1 && is_counted_part (r, i + 1) && is_in_all_first (r, i))
        {
          tell (r, (EmParts) { i, n, FALSE, FALSE });
          r->is_parts_line = TRUE;
        }
      /* "4 cavities" */
      else if (n > 1 && is_counted_part (r, i + 1))
        tell (r, (EmParts) { i, n, TRUE, FALSE });
      /* "cavities 1-4", "gate insert 1-4:" */
      else if ((is_counted_part (r, i) || (is_part (r, i) && range_at (r, behind_part (r, i)) > 1 && heads_line (r, i))) && range_at (r, behind_part (r, i)) > 1 &&
               range_at (r, behind_part (r, i)) <= RANGE_MAX)
        {
          tell (r, (EmParts) { behind_part (r, i), range_at (r, behind_part (r, i)), !heads_line (r, i), FALSE });
          r->is_parts_line = heads_line (r, i);
        }
      else if (is_counted_part (r, i) && !isnan (listed_to_end (r, i)))
        tell (r, (EmParts) { i + 1, listed_to_end (r, i), TRUE, FALSE });
      /* "8-cavity mould" */
      else if (is_whole (r, i) && i + 2 < r->end && em_item_is_sign (r->items, i + 1, '-') && is_counted_part (r, i + 2) &&
               em_item_size (r->items, i)->value.n > 1 && em_item_size (r->items, i)->value.n <= PARTS_MAX)
        tell (r, (EmParts) { i, em_fraction_plain (em_item_size (r->items, i)->value), TRUE, FALSE });
    }
  r->parts.is_every |= r->parts.is_each && r->parts.item != EM_NO_ITEM && r->parts.item >= r->first && says_every_part (r);
}

/* Nothing in the sentence measures or says what is to be done, or what became of a thing. */
static gboolean
is_plain (const EmReader *r)
{
  for (guint i = r->first; i < r->end; i++)
    {
      const EmSense *noun = em_item_says (r->items, i, EM_SAYS_KIND), *label = em_item_says (r->items, i, EM_SAYS_LABEL);
      const EmSense *set = em_item_says (r->items, i, EM_SAYS_SET);

      if (label != NULL && (label->roles & (EM_ROLE_BUILD | EM_ROLE_WORN)) != 0 && em_item_says (r->items, i, EM_SAYS_GLUE) == NULL /* "is" */)
        return FALSE;
      if (em_reader_is_sized (r, i) || em_reader_is_verb (r, i) || (set != NULL && set->set_field == NULL) ||
          em_item_says (r->items, i, EM_SAYS_THING) != NULL || (noun != NULL && noun->value != NULL))
        return FALSE;
    }
  return TRUE;
}

/* The one number that counts in the sentence; EM_NO_ITEM: none or several. */
static guint
only_count (const EmReader *r, double *out_n)
{
  guint found = EM_NO_ITEM;

  for (guint i = r->first; i < r->end; i++)
    {
      double n = em_item (r->items, i)->is_used ? (double) NAN : em_counts_number_at (r, i);

      if (!(n > 1) || (found != EM_NO_ITEM && n == *out_n) /* "lot of 3 (all three)" */)
        continue;
      if (found != EM_NO_ITEM)
        return EM_NO_ITEM;
      found = i;
      *out_n = n;
    }
  return found;
}

static gboolean
says_any (const EmReader *r, EmSays says)
{
  for (guint i = r->first; i < r->end; i++)
    if (em_item_says (r->items, i, says) != NULL)
      return TRUE;
  return FALSE;
}

/* A part, or a thing that may be one, and no cavity. */
static gboolean
is_thing (const EmReader *r, guint i)
{
  return i >= r->first && i < r->end && !is_counted_part (r, i) && (is_part (r, i) || em_item_says (r->items, i, EM_SAYS_KIND) != NULL);
}

/* Says no more of a count: "INSERT 3 PCS SAME", "lot of 3 (same repair all three)". */
static gboolean
is_no_more (const EmReader *r, guint i)
{
  static const EmSays little[] = { EM_SAYS_SAME, EM_SAYS_TOOLS, EM_SAYS_ALL, EM_SAYS_NUMBER, EM_SAYS_GLUE, EM_SAYS_UNIT, EM_SAYS_PLACES,
                                   EM_SAYS_TALK };

  for (gsize k = 0; k < G_N_ELEMENTS (little); k++)
    if (em_item_says (r->items, i, little[k]) != NULL)
      return TRUE;
  /* "INSERT (QTY 8) 1.2379 58-60 HRC": what was read as the metal. */
  if (em_item (r->items, i)->is_used && (em_item (r->items, i)->type == EM_ITEM_SIZE || em_item (r->items, i)->type == EM_ITEM_PHRASE))
    return TRUE;
  return em_item_is_sign (r->items, i, ')') || em_item_is_sign (r->items, i, '(') || em_item_is_sign (r->items, i, '.') ||
         em_item_is_sign (r->items, i, ',') || em_item_is_sign (r->items, i, '/');
}

/* "The tool has three spots for you", "two places to weld": repairs, which are told one by one. */
static gboolean
is_trouble (const EmReader *r, guint i)
{
  static const char *const words[] = { "spot", "spots", "place", "places", "area", "areas", "problems", "problem areas", "jobs", "repairs", "issues", "things", "defects", "points", "bits", "damages",
                                       "items", "stellen", "schäden", "schadstellen", "reparaturen", "punkte", "zonas", "puntos", "daños", "defectos", "reparaciones", "sitios", "endroits", "zones", "défauts",
                                       "réparations", "dégâts" };

  return i < r->end && em_item_is_any_word_of (r->items, i, words, G_N_ELEMENTS (words));
}

/* "CORE PINS (8 PCS)", "RINGS x 6", by a word that may be unknown: what is counted stands before its number, which ends the title. */
static gboolean
is_counted_behind (const EmReader *r, guint count)
{
  gboolean is_pieces = count + 1 < r->end && em_item_says (r->items, count + 1, EM_SAYS_PLACES) != NULL;
  static const char *const has[] = { "has", "have", "has got", "have got", "got", "with", "hat", "mit", "tiene", "con", "a", "avec" };
  guint end = count + 1 + is_pieces;

  if (is_trouble (r, count + 1) && count > r->first && em_item_is_any_word_of (r->items, count - 1, has, G_N_ELEMENTS (has)))
    return FALSE;

  while (end < r->end && is_no_more (r, end))
    end++;
  if (end < r->end || count == r->first || !(is_pieces || em_item_says (r->items, count - 1, EM_SAYS_QUANTITY) != NULL || em_item_says (r->items, count - 1, EM_SAYS_TIMES) != NULL ||
                                              em_item_is_sign (r->items, count - 1, '(')))
    return FALSE;
  for (guint i = r->first; i < count; i++)
    if (is_thing (r, i) || (is_pieces && em_item (r->items, i)->type == EM_ITEM_UNKNOWN && em_item (r->items, i)->length >= NAME_MIN))
      return TRUE;
  return FALSE;
}

/* "4 CORE INSERTS, H13", "2 OFF PLATES", "QTY 3" */
static gboolean
is_counted_first (const EmReader *r, guint count)
{
  gboolean has_quantity = count > r->first && em_item_says (r->items, r->first, EM_SAYS_QUANTITY) != NULL;
  guint thing = count + 1, first = r->first;

  /* "We have 4 hot runner nozzles same type." */
  while (first < count && first < r->first + LITTLE_MAX && em_item_says (r->items, first, EM_SAYS_NUMBER) == NULL &&
         (em_item (r->items, first)->is_talk || em_item_says (r->items, first, EM_SAYS_GLUE) != NULL || em_item_says (r->items, first, EM_SAYS_AGENT) != NULL))
    first++;
  static const char *const with[] = { "with", "mit", "avec", "con" };

  if (has_quantity && count + 1 == r->end)
    return TRUE;
  if (is_trouble (r, thing))
    return FALSE;
  thing += thing < r->end && em_item_says (r->items, thing, EM_SAYS_PLACES) != NULL;
  /* "2 gleiche Kerne" */
  thing += thing < r->end && (em_item_says (r->items, thing, EM_SAYS_SAME) != NULL || em_item_says (r->items, thing, EM_SAYS_TOOLS) != NULL);
  /* "INSERT WITH 6 BLADES" */
  /* "three equal cutter plates" */
  if (thing > count + 1 && thing < r->end && em_item (r->items, thing)->type == EM_ITEM_UNKNOWN && is_part (r, thing + 1))
    return TRUE;
  /* "van las 3 placas iguales" */
  if (count > r->first && em_item_says (r->items, count - 1, EM_SAYS_GLUE) != NULL && is_part (r, count + 1) && says_any (r, EM_SAYS_SAME))
    return TRUE;
  return (count == first || has_quantity || em_item_is_soft_break (r->items, count - 1) ||
          (em_item_says (r->items, r->first, EM_SAYS_PLACE) != NULL && em_item_is_any_word_of (r->items, count - 1, with, G_N_ELEMENTS (with)))) &&
         is_thing (r, thing);
}

static void
use_all (const EmReader *r, guint count)
{
  for (guint i = r->first; i < r->end; i++)
    em_item (r->items, i)->is_used |= i == count || em_item (r->items, i)->type == EM_ITEM_PHRASE;
}

static void
give (EmProto *proto, guint item, double n)
{
  if (proto->count_item != EM_NO_ITEM || proto->is_one_of)
    return;
  proto->count = n;
  proto->count_item = item;
  proto->is_count_loose = TRUE;
}

/* Those told before, back to where another count stands. */
static void
spread_over (const EmReader *r, guint item, double n)
{
  const GPtrArray *protos = r->grammar->protos;

  for (guint k = protos->len; k-- > 0 && k + SPREAD_MAX >= protos->len;)
    give (g_ptr_array_index (protos, k), item, n);
}

void
em_parts_spread (const EmReader *r, const EmProto *proto)
{
  if (proto->count_item != EM_NO_ITEM && proto->count > 1)
    spread_over (r, proto->count_item, proto->count);
}

/* "Both …", "alle drei …": how many of the repairs told before the sentence speaks of; 0: of one or none. */
static guint
n_spoken_of (const EmReader *r)
{
  static const struct { const char *word; guint n; } groups[] = {
    { "both", 2 }, { "all three", 3 }, { "all four", 4 }, { "all", SPREAD_MAX }, { "each", SPREAD_MAX }, { "all of them", SPREAD_MAX },
    { "beide", 2 }, { "alle drei", 3 }, { "alle", SPREAD_MAX }, { "alle stellen", SPREAD_MAX }, { "jeweils", SPREAD_MAX },
    { "les deux", 2 }, { "les trois", 3 }, { "tous", SPREAD_MAX }, { "toutes", SPREAD_MAX },
    { "los dos", 2 }, { "las dos", 2 }, { "ambos", 2 }, { "ambas", 2 }, { "los tres", 3 }, { "las tres", 3 }, { "todos", SPREAD_MAX },
  };
  static const char *const threes[] = { "three", "drei", "trois", "tres" };

  for (gsize k = 0; k < G_N_ELEMENTS (groups); k++)
    if (em_item_is_word (r->items, r->first, groups[k].word))
      return r->first + 1 < r->end && em_item_is_any_word_of (r->items, r->first + 1, threes, G_N_ELEMENTS (threes)) ? 3 : groups[k].n;
  return 0;
}

void
em_parts_share (const EmReader *r, guint first_given)
{
  const GPtrArray *protos = r->grammar->protos;
  guint n = n_spoken_of (r), last = protos->len;
  static const char *const shared[] = { "near", "clearance", "access", NULL };

  if (n < 2 || last < 2 || g_ptr_array_index (protos, last - 1) != r->current)
    return;
  for (guint k = last - 1; k-- > 0 && k + n >= last;)
    for (guint i = first_given; i < r->current->given->len; i++)
      {
        EmGiven given = g_array_index (r->current->given, EmGiven, i);

        if (!g_strv_contains (shared, given.field.field))
          continue;
        given.field.state = EM_READ_INFERRED;
        given.field.reason = "from-words";
        g_array_append_val (((EmProto *) g_ptr_array_index (protos, k))->given, given);
      }
}

/* "2 of each", "jeweils 2x" */
static gboolean
says_each (const EmReader *r)
{
  for (guint i = r->first; i < r->end; i++)
    if (em_item_is_per (r->items, i) || em_item_is_word (r->items, i, "of each"))
      return TRUE;
  return FALSE;
}

gboolean
em_parts_count_all (const EmReader *r)
{
  double n = 1;
  guint count;

  if (r->grammar->protos->len == 0 || (!says_any (r, EM_SAYS_ALL) && !says_each (r)) ||
      r->end - r->first > SHORT_LINE || !is_plain (r))
    return FALSE;
  count = only_count (r, &n);
  if (count == EM_NO_ITEM)
    return FALSE;
  spread_over (r, count, n);
  use_all (r, count);
  return TRUE;
}

/* "Qty nozzles: 4": the one repair whose words name the part; NULL: none or several. */
static EmProto *
of_part (const EmReader *r, guint part)
{
  const GPtrArray *protos = r->grammar->protos;
  const EmItem *its = em_item (r->items, part);
  EmProto *found = NULL;

  for (guint k = protos->len; its->length > NAME_MIN && k-- > 0 && k + SPREAD_MAX >= protos->len;)
    {
      EmProto *proto = g_ptr_array_index (protos, k);
      gboolean has_name = FALSE;

      for (guint i = proto->first; i <= proto->last && i < proto->first + NAMED_ITEMS && !has_name; i++)
        has_name = em_item (r->items, i)->length + 1 >= its->length &&
                   g_ascii_strncasecmp (r->items->text + em_item (r->items, i)->start, r->items->text + its->start, its->length - 1) == 0;
      if (has_name && found != NULL)
        return NULL;
      found = has_name ? proto : found;
    }
  return found;
}

/* "It occurs on all 4 inserts", "repeats in 3 cavities": so many parts have it. */
static gboolean
is_said_of_parts (const EmReader *r, guint count)
{
  static const char *const words[] = { "occurs", "occurs on", "occurs in", "repeats", "repeated", "repeat", "repeat on", "applies", "applies to", "apply to", "found", "present", "it", "it's", "this", "is", "are",
                                       "tritt", "gilt", "kommt", "betrifft", "se repite", "está", "aparece", "ocurre", "se répète", "se retrouve", "concerne", "vaut", "valable" };
  gboolean is_said = FALSE;

  for (guint i = r->first; i < count && !is_said; i++)
    is_said = em_item_is_any_word_of (r->items, i, words, G_N_ELEMENTS (words));
  return is_said && count + 1 < r->end && (is_part (r, count + 1) || em_item_says (r->items, count + 1, EM_SAYS_KIND) != NULL) && (count + 2 >= r->end - 1 || em_item_is_soft_break (r->items, count + 2));
}

/* "Item 2 is on …": the number of a repair told before measures nothing. */
static EmProto *
use_item_number (const EmReader *r)
{
  /* The word may have been passed over at the head of the line. */
  guint number = r->first + (em_list_is_item_word (r, r->first) ? 1 : 0);

  if (number > 0 && em_list_is_item_word (r, number - 1) && number + 1 < r->end && em_list_is_bare_whole (r->items, number) && em_item_says (r->items, number + 1, EM_SAYS_GLUE) != NULL &&
      em_refer_with (r, em_list_head_at (r->items, number)) != NULL)
    {
      em_item_size (r->items, number)->roles |= EM_ROLE_REFERENCE;
      em_item (r->items, number)->is_used = TRUE;
      return em_refer_with (r, em_list_head_at (r->items, number));
    }
  return NULL;
}

/* "Drei Hülsen sind gleich betroffen" */
static gboolean
are_affected (const EmReader *r, guint count)
{
  static const char *const words[] = { "affected", "concerned", "hit", "bad", "betroffen", "gleich betroffen", "afectados", "afectadas", "afectado", "concernés", "concernées", "touchés", "touchées" };

  if (count > r->first + 1 || count + 2 >= r->end || em_item_says (r->items, count + 2, EM_SAYS_GLUE) == NULL)
    return FALSE;
  for (guint i = count + 3; i < r->end; i++)
    if (em_item_is_any_word_of (r->items, i, words, G_N_ELEMENTS (words)))
      return TRUE;
  return FALSE;
}

/* "There are four.", "Son cuatro iguales." in a sentence of its own. */
static gboolean
are_so_many (const EmReader *r, guint count)
{
  static const char *const words[] = { "there are", "are", "we have", "i have", "es sind", "sind", "sind es", "es gibt", "wir haben", "davon", "hay", "son", "tenemos", "tengo", "il y en a", "y en a", "ce sont", "sont", "on en a",
                                       "nous en avons", "j'en ai" };
  guint end = count + 1;

  while (end < r->end && is_no_more (r, end))
    end++;
  return end >= r->end && count > r->first && count <= r->first + LITTLE_MAX && em_item_is_any_word_of (r->items, count - 1, words, G_N_ELEMENTS (words));
}

gboolean
em_parts_count_named (const EmReader *r)
{
  EmProto *named = NULL, *item;
  double n = 1;
  guint count;

  if (r->grammar->protos->len == 0 || r->end - r->first > SHORT_LINE)
    return FALSE;
  item = use_item_number (r);
  if (!is_plain (r))
    return FALSE;
  count = only_count (r, &n);
  if (count == EM_NO_ITEM || n > PARTS_MAX)
    return FALSE;
  if (are_affected (r, count) || are_so_many (r, count))
    named = r->current;
  /* "occurs on all 4 inserts" behind the only one */
  else if (r->grammar->protos->len == 1)
    named = is_said_of_parts (r, count) ? g_ptr_array_index (r->grammar->protos, 0) : NULL;
  /* "Item 2 is on all 4 inserts" */
  else if (item != NULL)
    named = is_said_of_parts (r, count) ? item : NULL;
  else if (em_refer_items (r, r->first, &named, 1) == 0)
    named = em_item_says (r->items, r->first, EM_SAYS_QUANTITY) != NULL && is_part (r, r->first + 1) ? of_part (r, r->first + 1) : NULL;
  if (named == NULL || named->count_item != EM_NO_ITEM)
    return FALSE;
  give (named, count, n);
  use_all (r, count);
  return TRUE;
}

/* "4 ribs per cavity, 2 cavities": so many times so many. TRUE: taken. */
static gboolean
take_product (EmReader *r)
{
  for (guint i = r->first; i + 6 < r->end; i++)
    {
      double each = em_counts_number_at (r, i), parts = em_counts_number_at (r, i + 5);
      gboolean is_whole_one = isnan (each) && em_list_is_bare_whole (r->items, i);

      each = is_whole_one ? (double) em_item_size (r->items, i)->value.n : each;
      parts = isnan (parts) && em_list_is_bare_whole (r->items, i + 5) ? (double) em_item_size (r->items, i + 5)->value.n : parts;
      if (!(each >= 1) || !(parts > 1) || each * parts > PARTS_MAX || !is_thing (r, i + 1) || !em_item_is_per (r->items, i + 2) ||
          !is_part (r, i + 3) || !em_item_is_soft_break (r->items, i + 4) || !is_part (r, i + 6))
        continue;
      tell (r, (EmParts) { i, each * parts, FALSE, FALSE });
      use_all (r, i);
      em_item (r->items, i + 5)->is_used = TRUE;
      return TRUE;
    }
  return FALSE;
}

void
em_parts_read (EmReader *r)
{
  double n = 1;
  guint count;

  if (!is_plain (r) || take_product (r))
    return;
  count = only_count (r, &n);
  if (count != EM_NO_ITEM && (is_counted_first (r, count) || is_counted_behind (r, count)))
    {
      tell (r, (EmParts) { count, n, FALSE, FALSE });
      use_all (r, count);
    }
  /* Another title. */
  else if (r->n_since_parts > 0 && !r->parts.is_each)
    tell (r, (EmParts) { EM_NO_ITEM, 1, FALSE, FALSE });
}

void
em_parts_end_line (EmReader *r)
{
  if (r->is_parts_line)
    tell (r, (EmParts) { EM_NO_ITEM, 1, FALSE, FALSE });
  r->is_parts_line = FALSE;
}

void
em_parts_end (EmReader *r)
{
  if (r->n_since_parts > 0)
    tell (r, (EmParts) { EM_NO_ITEM, 1, FALSE, FALSE });
}

/* "Insert A: …", "pin 2 bent": one of them. */
static gboolean
names_one (const EmItems *items, const EmProto *proto)
{
  for (guint i = proto->first; i < proto->last && i < proto->first + NAME_WINDOW; i++)
    if (em_item_says (items, i, EM_SAYS_ONE_OF) != NULL ||
        ((em_item_says (items, i, EM_SAYS_PLACE) != NULL || em_item_says (items, i, EM_SAYS_KIND) != NULL) &&
         (em_list_is_bare_whole (items, i + 1) || em_item_is_sign (items, i + 1, '#') || em_item (items, i + 1)->length == 1) &&
         em_item_is_sign (items, MIN (i + 2, proto->last), ':')))
      return TRUE;
  return proto->is_one_of;
}

/* "Insert with 6 blades" over "blade 1 thick, tip short 0.6": what is counted is what is to be mended. */
static gboolean
counts_itself (const EmReader *r, const EmProto *proto)
{
  guint thing = proto->parts.item != EM_NO_ITEM ? proto->parts.item + 1 : EM_NO_ITEM;
  const EmSense *counted = thing != EM_NO_ITEM && thing < r->items->items->len ? em_item_says (r->items, thing, EM_SAYS_KIND) : NULL;
  int kind = 0;

  for (int k = 1; counted != NULL && k < EM_N_NOTE_KINDS; k++)
    kind = counted->weight[k] > counted->weight[kind] ? k : kind;
  return counted != NULL && proto->noun != EM_NO_ITEM && em_item_says (r->items, proto->noun, EM_SAYS_KIND)->weight[kind] > 0;
}

/* One title counts the parts of all repairs, which are several: so many tools. */
static gboolean
are_tools (const EmReader *r)
{
  const GPtrArray *protos = r->grammar->protos;
  const EmParts *first = protos->len > 1 ? &((EmProto *) g_ptr_array_index (protos, 0))->parts : NULL;

  for (guint k = 0; first != NULL && k < protos->len; k++)
    {
      const EmProto *proto = g_ptr_array_index (protos, k);

      if (counts_itself (r, proto) || proto->parts.item != first->item || proto->count_item != EM_NO_ITEM || names_one (r->items, proto))
        return FALSE;
    }
  return first != NULL && first->item != EM_NO_ITEM && !first->is_each;
}

/* The number is read as that of equal tools: nothing is to be counted twice. */
static gboolean
counts_tools (const EmReader *r, const EmParts *parts)
{
  const GArray *general = r->grammar->general;

  for (guint i = 0; i < general->len; i++)
    {
      const EmReadField *field = &g_array_index (general, EmGiven, i).field;

      if (strcmp (field->field, "tools") == 0 && field->start == em_item (r->items, parts->item)->start)
        return TRUE;
    }
  return FALSE;
}

static void
give_tools (const EmReader *r, const EmParts *parts)
{
  EmGiven given = em_given_new ("tools", NULL, em_item (r->items, parts->item));

  given.field.value = parts->n;
  given.field.state = EM_READ_INFERRED;
  given.field.reason = "from-words";
  g_array_append_val (r->grammar->general, given);
}

/* "Two nicks: 4 x 1 x 1 and 6 x 1 x 1": what was counted is told one by one. */
static void
forget_count_of_listed (const EmReader *r, guint k)
{
  EmProto *first = g_ptr_array_index (r->grammar->protos, k);
  double n = first->count;

  if (first->count_item == EM_NO_ITEM || n < 2 || n > LISTED_MAX || k + n > r->grammar->protos->len)
    return;
  for (guint i = k + 1; i < k + n; i++)
    {
      const EmProto *next = g_ptr_array_index (r->grammar->protos, i);

      if (g_strcmp0 (next->kind_reason, "heading") != 0 || next->count_item != EM_NO_ITEM ||
          em_reader_line_of (r, next->first) != em_reader_line_of (r, first->first))
        return;
    }
  first->count_item = EM_NO_ITEM;
  first->count = (double) NAN;
}

void
em_parts_multiply (EmReader *r)
{
  for (guint k = 0; k < r->grammar->protos->len; k++)
    forget_count_of_listed (r, k);
  if (are_tools (r))
    {
      give_tools (r, &((EmProto *) g_ptr_array_index (r->grammar->protos, 0))->parts);
      return;
    }
  for (guint k = 0; k < r->grammar->protos->len; k++)
    {
      EmProto *proto = g_ptr_array_index (r->grammar->protos, k);
      const EmParts *parts = &proto->parts;
      gboolean is_here;

      if (parts->item == EM_NO_ITEM || names_one (r->items, proto) || proto->count_item == parts->item || counts_tools (r, parts))
        continue;
      /* "Cav 1-4: 2 chips": of all, or of each. */
      is_here = em_parts_is_range (r, parts) && em_reader_line_of (r, parts->item) == em_reader_line_of (r, proto->first);
      proto->is_count_loose |= is_here;
      if ((proto->is_per_part || parts->is_every) && !proto->is_multiplied)
        {
          proto->count = (proto->count_item != EM_NO_ITEM ? proto->count : 1) * parts->n;
          proto->count_item = proto->count_item != EM_NO_ITEM ? proto->count_item : parts->item;
          proto->is_count_loose = TRUE;
          em_item (r->items, parts->item)->is_used = TRUE;
        }
      else if (!parts->is_each || is_here)
        give (proto, parts->item, parts->n);
    }
}
