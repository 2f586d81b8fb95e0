/* em-metals: which of several metals is of which repair.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-metals.h"

#include "em-list.h"

#include <math.h>
#include <string.h>

enum
{
  METALS_MAX = 24, REPAIRS_MAX = 64,
  HEADS_MAX = 6,        /* "items 1, 2 and 4" */
  NAMES_MAX = 4,        /* "pins, bushes and bars" */
  NAME_WINDOW = 5,      /* items from a metal back to its part's name */
  NAME_ITEMS_MAX = 3,   /* items of a name */
  NAME_MIN = 3,         /* bytes of a name */
  COMPOUND_MIN = 4,     /* and of one that may end a longer word: "Stift" in "Kernstift" */
  WORD_MIN = 4,         /* bytes of a word of a name that may stand for it */
  ENDING_MAX = 2,       /* bytes of a plural's ending */
  HARDNESS_WINDOW = 4, COATING_WINDOW = 6,
  PART_NOUN = 5,        /* what a noun of a pin or a bore weighs at least */
  BEHIND_WINDOW = 6,    /* items from a metal to "in the handle", "(item 1)" */
  WHOLE_NAME = 1000,    /* what a name that stands there whole weighs more than one of its words */
  TEXT_MAX = 400        /* bytes of a repair that are looked over */
};

typedef struct
{
  guint32 from, to;     /* bytes */
  guint   first, last;  /* items */
} Name;

typedef struct
{
  const EmMetal *metal;
  Name           name[NAMES_MAX];
  guint          n_names;
  guint          n_behind;     /* of them, those behind the metal: other names where those before it fit nothing */
  guint64        head[HEADS_MAX]; /* "(item 1)", "2 and 3 are" */
  guint          n_heads;
  guint          first_head;   /* the item that those before the metal begin with, their word; or EM_NO_ITEM */
  gboolean       is_named;     /* words beside it tell of which part it is */
  gboolean       is_rest;
  guint          hardness;     /* its item, or EM_NO_ITEM */
  guint          coating;      /* its item, or EM_NO_ITEM */
  guint          n_given;      /* repairs that got it */
} Part;

/* "all other", "the rest": what no name tells. */
static gboolean
is_rest_word (const EmItems *items, guint i)
{
  static const char *const words[] = { "other", "others", "rest", "remaining", "übrige", "übrigen", "restliche", "andere", "anderen", "otros", "otras", "resto",
                                       "demás", "autres", "reste", "all other", "all others", "the others", "the rest" };

  return em_item_is_any_word_of (items, i, words, G_N_ELEMENTS (words));
}

/* The tool itself, whose metal is that of all that no name tells. */
static gboolean
is_tool_word (const EmItems *items, guint i)
{
  static const char *const words[] = { "mould", "mold", "moulds", "molds", "tool", "tools", "body", "bodies", "die", "dies", "mould body", "mold body", "die body", "base body", "main body", "tool body",
                                       "form", "werkzeug", "formkörper", "grundkörper", "molde", "herramienta", "cuerpo", "matriz", "moule", "outil", "corps", "filière",
                                       "plates", "halves", "shells", "mould halves", "mold halves" };

  return em_item_is_any_word_of (items, i, words, G_N_ELEMENTS (words));
}

/* What stands between a part and its metal. */
static gboolean
is_between (const EmItems *items, guint i)
{
  static const EmSays little[] = { EM_SAYS_GLUE, EM_SAYS_PREPOSITION, EM_SAYS_MATERIAL, EM_SAYS_ALL };
  static const char *const is[] = { "is", "are", "ist", "sind", "es", "son", "est", "sont", "be", "made of", "in" };

  if (em_item_is_any_word_of (items, i, is, G_N_ELEMENTS (is)))
    return TRUE;
  for (gsize k = 0; k < G_N_ELEMENTS (little); k++)
    if (em_item_says (items, i, little[k]) != NULL)
      return TRUE;
  return em_item_is_sign (items, i, ':') || em_item_is_sign (items, i, '=') || em_item_is_sign (items, i, '-');
}

static gboolean
ends_part (const EmItems *items, guint i)
{
  const EmItem *item = em_item (items, i);

  return item->type == EM_ITEM_LINE || item->type == EM_ITEM_SIZE || em_item_is_sign (items, i, '.') || em_item_is_sign (items, i, ';') ||
         em_item_is_sign (items, i, '/') || (em_item_is_soft_break (items, i) && !em_item_is_sign (items, i, '-')) ||
         em_phrase_find (item->phrase, EM_SAYS_BASE) != NULL;
}

static gboolean
is_and (const EmItems *items, guint i)
{
  const EmSense *glue = em_item_says (items, i, EM_SAYS_GLUE);

  return (glue != NULL && g_strcmp0 (glue->value, "and") == 0) || em_item_is_sign (items, i, '&') || em_item_is_sign (items, i, '+');
}

/* Words of no name. */
static gboolean
is_little (const EmItems *items, guint i)
{
  return em_item (items, i)->type == EM_ITEM_SIGN || is_between (items, i) || em_item_says (items, i, EM_SAYS_VERB) != NULL;
}

static void
add_name (const EmItems *items, Part *part, guint first, guint last)
{
  const EmItem *end = em_item (items, last);
  Name name = { em_item (items, first)->start, end->start + end->length, first, last };

  if (part->n_names < NAMES_MAX && name.to - name.from >= NAME_MIN)
    part->name[part->n_names++] = name;
}

/* "pins and bushes": the names that end before item end. */
static void
find_names_before (const EmItems *items, Part *part, guint end)
{
  for (guint first = end; first > 0 && !ends_part (items, first - 1) && part->n_names < NAMES_MAX;)
    {
      guint last = first - 1;

      first = last;
      /* "INSERT B" */
      while (first > 0 && last - first + 1 < NAME_ITEMS_MAX && !ends_part (items, first - 1) && !is_little (items, first - 1))
        first--;
      add_name (items, part, first, last);
      if (first < 2 || !is_and (items, first - 1))
        break;
      first--;
    }
}

/* "C17200 inserts": the words right behind the metal, where none before it do. */
static void
find_name_behind (const EmItems *items, Part *part)
{
  guint first = part->metal->item + 1, last;

  if (first >= items->items->len || ends_part (items, first) ||
      (em_item_says (items, first, EM_SAYS_KIND) == NULL && em_item_says (items, first, EM_SAYS_PLACE) == NULL))
    return;
  for (last = first; last + 1 < items->items->len && last + 1 < first + NAME_ITEMS_MAX && !ends_part (items, last + 1) && !is_little (items, last + 1);)
    last++;
  if (is_tool_word (items, last))
    part->is_rest = TRUE;
  add_name (items, part, first, last);
}

static void
add_head (Part *part, guint64 head)
{
  if (part->n_heads < HEADS_MAX)
    part->head[part->n_heads++] = head;
}

static gboolean
has_head (const Part *part, guint64 head)
{
  for (guint i = 0; i < part->n_heads; i++)
    if (part->head[i] == head)
      return TRUE;
  return FALSE;
}

/* "2", "c": may be what heads a repair. */
static gboolean
is_head (const EmItems *items, guint i)
{
  const EmItem *item = em_item (items, i);

  return em_list_is_bare_whole (items, i) ? item->length <= 2 : item->type != EM_ITEM_SIZE && item->type != EM_ITEM_SIGN && item->length == 1 && em_list_head_at (items, i) != 0;
}

static gboolean
is_item_word (const EmItems *items, guint i)
{
  const EmSense *glue = em_item_says (items, i, EM_SAYS_GLUE);

  return glue != NULL && g_strcmp0 (glue->value, "item") == 0;
}

/* "1, 2 and 4", "a)-c)": those from first to end. */
static void
add_heads (const EmItems *items, Part *part, guint first, guint end)
{
  guint64 last = 0;
  gboolean is_range = FALSE;

  for (guint i = first; i < end; i++)
    if (is_head (items, i))
      {
        guint64 head = em_list_head_at (items, i);

        for (guint64 k = last + 1; is_range && k < head && part->n_heads < HEADS_MAX; k++)
          add_head (part, k);
        add_head (part, head);
        last = head;
        is_range = FALSE;
      }
    else
      is_range = em_item_is_sign (items, i, '-') || em_item_says (items, i, EM_SAYS_TO) != NULL;
}

/* "Pos. 2", "items 1, 2 and 4", "a)-c)", or "2 and 3" where the line begins with them: what ends before item end. FALSE: none. */
static gboolean
find_heads_before (const EmItems *items, Part *part, guint end)
{
  guint first = end, word;
  gboolean is_marked = FALSE, is_named;

  while (first > 0 && end - first < 2 * HEADS_MAX &&
         (is_head (items, first - 1) || em_item_is_sign (items, first - 1, ')') ||
          (first < end && (is_and (items, first - 1) || em_item_is_sign (items, first - 1, ',') || em_item_is_sign (items, first - 1, '-')))))
    is_marked |= em_item_is_sign (items, --first, ')');
  while (first < end && !is_head (items, first))
    first++;
  if (first == end || is_and (items, end - 1) || em_item_is_sign (items, end - 1, ',') || em_item_is_sign (items, end - 1, '-'))
    return FALSE;
  word = first > 0 ? first - 1 - (first > 1 && em_item_is_sign (items, first - 1, '.')) : 0;
  is_named = first > 0 && is_item_word (items, word);
  /* "2 P20 inserts" counts. */
  if (!is_named && !is_marked && (end == part->metal->item || (first > 0 && em_item (items, first - 1)->type != EM_ITEM_LINE)))
    return FALSE;
  add_heads (items, part, first, end);
  part->first_head = is_named ? word : first;
  return TRUE;
}

/* "1.2343 in the handle", "1.2083 (items 1, 2)" */
static void
find_place_behind (const EmItems *items, Part *part)
{
  for (guint i = part->metal->item + 1; i + 1 < items->items->len && i <= part->metal->item + BEHIND_WINDOW; i++)
    {
      if (em_item (items, i)->type == EM_ITEM_LINE || em_item_is_sign (items, i, '.') || em_phrase_find (em_item (items, i)->phrase, EM_SAYS_BASE) != NULL)
        return;
      if (is_item_word (items, i) && is_head (items, i + 1))
        {
          guint end = i + 2;

          while (end + 1 < items->items->len && end < i + 2 * HEADS_MAX && (is_and (items, end) || em_item_is_sign (items, end, ',')) && is_head (items, end + 1))
            end += 2;
          add_heads (items, part, i + 1, end);
          for (guint k = i; k < end && em_item_is_sign (items, i - 1, '('); k++)
            em_item (items, k)->is_used = TRUE;
          return;
        }
      if (em_item_says (items, i, EM_SAYS_PREPOSITION) != NULL &&
          (em_item_says (items, i + 1, EM_SAYS_PLACE) != NULL || em_item_says (items, i + 1, EM_SAYS_KIND) != NULL) && !is_tool_word (items, i + 1))
        {
          add_name (items, part, i + 1, i + 1);
          part->n_behind++;
          return;
        }
    }
}

/* The words beside the metal; FALSE: none that name a part. */
static gboolean
find_names (const EmItems *items, Part *part)
{
  guint end = part->metal->item;

  while (end > 0 && end + NAME_WINDOW > part->metal->item && !is_rest_word (items, end - 1) && is_between (items, end - 1) && !is_and (items, end - 1))
    end--;
  if (find_heads_before (items, part, end))
    return TRUE;
  if (end > 0 && !ends_part (items, end - 1))
    {
      part->is_rest = is_rest_word (items, end - 1) || is_tool_word (items, end - 1);
      find_names_before (items, part, end);
    }
  else
    find_name_behind (items, part);
  if (!part->is_rest)
    find_place_behind (items, part);
  return part->is_rest || part->n_names > 0 || part->n_heads > 0;
}

static guint
find_hardness (const EmItems *items, guint metal)
{
  for (guint i = metal + 1; i < items->items->len && i <= metal + HARDNESS_WINDOW; i++)
    {
      const EmItem *item = em_item (items, i);

      if (item->type == EM_ITEM_LINE || em_phrase_find (item->phrase, EM_SAYS_BASE) != NULL)
        break;
      /* What the table of HB and HV does not hold tells nothing. */
      if (item->type == EM_ITEM_SIZE && em_unit_is_hardness (em_item_size (items, i)->unit) &&
          isnan (em_fraction_in_mm (em_item_size (items, i)->value, em_item_size (items, i)->unit)))
        break;
      if (item->type == EM_ITEM_SIZE && (em_unit_is_hardness (em_item_size (items, i)->unit) || (em_item_size (items, i)->roles & EM_ROLE_HARDNESS) != 0))
        return i;
    }
  return EM_NO_ITEM;
}

/* "blade 1.2344 nitrided, cavity p20": the coating told right behind the metal. */
static guint
find_coating (const EmItems *items, guint metal)
{
  for (guint i = metal + 1; i < items->items->len && i <= metal + COATING_WINDOW; i++)
    if (em_item (items, i)->type == EM_ITEM_LINE || em_item_is_sign (items, i, '.') || em_item_is_sign (items, i, ';') ||
        em_phrase_find (em_item (items, i)->phrase, EM_SAYS_BASE) != NULL || em_item_says (items, i, EM_SAYS_PLACE) != NULL ||
        em_item_says (items, i, EM_SAYS_KIND) != NULL)
      break;
    else if (em_item_says (items, i, EM_SAYS_COATING) != NULL)
      return i;
  return EM_NO_ITEM;
}

/* A sentence, or a part of a line behind a semicolon, ends before the byte. */
static gboolean
is_sentence_start (const EmItems *items, guint32 at)
{
  return at > 1 && items->text[at - 1] == ' ' && strchr (".;!?", items->text[at - 2]) != NULL;
}

/* The text of the repair, from the beginning of its line on, or of its sentence. */
static char *
text_of (const EmItems *items, const EmProto *proto, gboolean is_sentence)
{
  guint32 from = em_item (items, proto->first)->start, to = em_item (items, proto->last)->start + em_item (items, proto->last)->length;
  g_autofree char *text = NULL;

  while (from > 0 && items->text[from - 1] != '\n' && to - from < TEXT_MAX && !(is_sentence && is_sentence_start (items, from)))
    from--;
  text = g_strndup (items->text + from, MIN (to - from, TEXT_MAX));
  return g_utf8_casefold (text, -1);
}

/* Whether text begins with no more of the word than the ending of a plural: "pin" + "s", but not "pin" + "ch". */
static gboolean
is_plural_ending (const char *text)
{
  static const char *const endings[] = { "", "s", "es", "n", "en", "e", "r", "er" };
  gsize n = 0;

  while (n <= ENDING_MAX && g_ascii_isalpha (text[n]))
    n++;
  for (gsize k = 0; k < G_N_ELEMENTS (endings) && n <= ENDING_MAX && !g_ascii_isdigit (text[n]); k++)
    if (strlen (endings[k]) == n && strncmp (text, endings[k], n) == 0)
      return TRUE;
  return FALSE;
}

/* A whole word or its plural, or the end of a longer one. */
static gboolean
names (const char *text, const char *name)
{
  gsize n = strlen (name);

  for (const char *at = strstr (text, name); at != NULL; at = strstr (at + 1, name))
    {
      gboolean is_begun = at == text || !(g_ascii_isalnum (at[-1]) || (guchar) at[-1] >= 0x80);

      if (is_plural_ending (at + n) && (is_begun || n >= COMPOUND_MIN))
        return TRUE;
    }
  return FALSE;
}

static void
drop_general (EmGrammar *grammar, const char *field, guint32 start)
{
  for (guint i = grammar->general->len; i-- > 0;)
    {
      const EmReadField *general = &g_array_index (grammar->general, EmGiven, i).field;

      if (strcmp (general->field, field) == 0 && general->start == start)
        g_array_remove_index (grammar->general, i);
    }
}

static void
give_field (const EmGrammar *grammar, const char *field, const char *text, guint item, GArray *to)
{
  EmGiven given = em_given_new (field, text, em_item (grammar->items, item));

  given.size_item = text == NULL ? item : EM_NO_ITEM;
  given.field.state = EM_READ_INFERRED;
  given.field.reason = "from-words";
  g_array_append_val (to, given);
}

/* Gives the metal, its hardness and its coating to a repair, or to all. */
static void
give (EmGrammar *grammar, const Part *part, GArray *to)
{
  give_field (grammar, "base", part->metal->base, part->metal->item, to);
  if (part->hardness != EM_NO_ITEM)
    give_field (grammar, "hardness", NULL, part->hardness, to);
  if (part->coating != EM_NO_ITEM)
    give_field (grammar, "coating", em_item_says (grammar->items, part->coating, EM_SAYS_COATING)->value, part->coating, to);
}

static void
take_back (EmGrammar *grammar, const Part *part)
{
  em_item (grammar->items, part->metal->item)->is_used = TRUE;
  for (guint k = 0; k < part->n_names - part->n_behind; k++)
    for (guint i = part->name[k].first; i < part->metal->item; i++)
      em_item (grammar->items, i)->is_used = TRUE;
  for (guint i = part->first_head; i < part->metal->item; i++)
    em_item (grammar->items, i)->is_used = TRUE;
  drop_general (grammar, "base", em_item (grammar->items, part->metal->item)->start);
  if (part->coating != EM_NO_ITEM)
    drop_general (grammar, "coating", em_item (grammar->items, part->coating)->start);
  if (part->hardness == EM_NO_ITEM)
    return;
  em_item (grammar->items, part->hardness)->is_used = TRUE;
  drop_general (grammar, "hardness", em_item (grammar->items, part->hardness)->start);
}

/* "pins M2" are of "pin 12 dia", "bushes O1" of "bush 12 dia". */
static void
drop_plural (char *name)
{
  static const char *const hissing[] = { "shes", "ches", "sses", "xes" };
  gsize n = strlen (name);

  for (gsize k = 0; k < G_N_ELEMENTS (hissing); k++)
    if (n > NAME_MIN + 1 && g_str_has_suffix (name, hissing[k]))
      {
        name[n - 2] = '\0';
        return;
      }
  if (n > NAME_MIN && (name[n - 1] == 's' || name[n - 1] == 'e' || name[n - 1] == 'n'))
    name[n - 1] = '\0';
}

/* Of any part. */
static gboolean
is_part_word (const char *word)
{
  static const char *const words[] = { "insert", "inserts", "part", "parts", "piece", "pieces", "steel", "component", "components", "side", "sides", "plate", "plates", "block", "blocks",
                                       "einsatz", "einsätze", "einsätzen", "teil", "teile", "platte", "platten", "seite", "inserto", "insertos", "pieza", "piezas", "placa", "placas",
                                       "pièce", "pièces", "plaque", "plaques", "insertion", "material", "only", "both", "with", "from", "made" };

  for (gsize k = 0; k < G_N_ELEMENTS (words); k++)
    if (strcmp (word, words[k]) == 0)
      return TRUE;
  return FALSE;
}

/* How well the name, casefolded, fits the repair's text: whole, or by one of its words that not every part has. 0: not. */
static guint
fit_of_name (const char *text, char *name)
{
  g_auto (GStrv) words = NULL;
  guint best = 0;

  if (names (text, name))
    return WHOLE_NAME + (guint) strlen (name);
  drop_plural (name);
  if (names (text, name))
    return WHOLE_NAME + (guint) strlen (name);
  words = g_strsplit_set (name, " -/", -1);
  for (guint w = 0; words[w] != NULL; w++)
    if (strlen (words[w]) >= WORD_MIN && !is_part_word (words[w]) && names (text, words[w]))
      best = MAX (best, (guint) strlen (words[w]));
  return best;
}

/* That of the best of the part's names. */
static guint
fit_of_part (const EmItems *items, const Part *part, const char *text)
{
  guint best = 0;

  for (guint k = 0; k < part->n_names; k++)
    {
      g_autofree char *written = g_strndup (items->text + part->name[k].from, part->name[k].to - part->name[k].from), *name = g_utf8_casefold (written, -1);

      best = MAX (best, fit_of_name (text, name));
    }
  return best;
}

/* "Core insert (H13, 48 HRC): edge R0.4": the metal stands in the words of the repair itself. */
static gboolean
is_told_within (const EmProto *proto, const Part *part)
{
  return part->metal->item >= proto->first && part->metal->item <= proto->last;
}

/* The metal of a repair: that which it tells itself, whose number it bears, or whose name fits best; NULL: none. */
static Part *
part_of (const EmItems *items, Part *parts, guint n_parts, const EmProto *proto, const char *text)
{
  Part *best = NULL;
  guint fit = 0;

  for (guint k = 0; k < n_parts; k++)
    if (is_told_within (proto, &parts[k]))
      return &parts[k];
  for (guint k = 0; k < n_parts; k++)
    {
      guint this_fit = parts[k].is_rest || !parts[k].is_named ? 0 : fit_of_part (items, &parts[k], text);

      if (has_head (&parts[k], proto->head))
        return &parts[k];
      if (this_fit > fit)
        {
          fit = this_fit;
          best = &parts[k];
        }
    }
  return best;
}

static gboolean
has_other (const EmGrammar *grammar)
{
  for (guint i = 1; i < grammar->metals->len; i++)
    if (strcmp (g_array_index (grammar->metals, EmMetal, i).base, g_array_index (grammar->metals, EmMetal, 0).base) != 0)
      return TRUE;
  return FALSE;
}

/* Each repair gets the metal whose name fits it best. How many got one. */
static guint
give_to_named (EmGrammar *grammar, Part *parts, guint n_parts)
{
  guint n_named = 0;

  for (guint i = 0; i < MIN (grammar->protos->len, REPAIRS_MAX); i++)
    {
      const EmProto *proto = g_ptr_array_index (grammar->protos, i);
      g_autofree char *sentence = !proto->is_merged ? text_of (grammar->items, proto, TRUE) : NULL, *line = NULL;
      Part *part = sentence != NULL ? part_of (grammar->items, parts, n_parts, proto, sentence) : NULL;

      /* "The core is H13, the cavity P20. Core has a dent.": the words of its own sentence tell more than those of all the line. */
      if (part == NULL && sentence != NULL)
        part = part_of (grammar->items, parts, n_parts, proto, line = text_of (grammar->items, proto, FALSE));
      if (part == NULL)
        continue;
      give (grammar, part, proto->given);
      part->n_given++;
      n_named++;
    }
  return n_named;
}

/* A pin, a bushing or an insert, and no land or edge of something. */
static gboolean
is_part_apart (const EmItems *items, guint i)
{
  const EmSense *noun = em_item_says (items, i, EM_SAYS_KIND);

  return noun != NULL ? noun->weight[PIN] + noun->weight[BORE] >= PART_NOUN : em_item_says (items, i, EM_SAYS_PLACE) != NULL;
}

/* "Pins chrome plated": of the repairs that bear the part's name, where others do not. */
static void
hand_out_coating (EmGrammar *grammar, const EmMetal *coating)
{
  Part part = { .metal = coating, .hardness = EM_NO_ITEM, .coating = EM_NO_ITEM, .first_head = EM_NO_ITEM };
  EmGiven given = em_given_new ("coating", coating->base, em_item (grammar->items, coating->item));
  guint n_given = 0, n = 0;
  gboolean is_named[REPAIRS_MAX] = { FALSE };

  if (!find_names (grammar->items, &part) || part.is_rest || part.n_names == 0 || !is_part_apart (grammar->items, part.name[0].last) ||
      grammar->protos->len > REPAIRS_MAX)
    return;
  for (guint i = 0; i < grammar->protos->len; i++)
    {
      const EmProto *proto = g_ptr_array_index (grammar->protos, i);
      g_autofree char *text = !proto->is_merged ? text_of (grammar->items, proto, FALSE) : NULL;

      is_named[i] = text != NULL && fit_of_part (grammar->items, &part, text) > 0;
      n += text != NULL;
      n_given += is_named[i];
    }
  if (n_given == 0 || n_given == n)
    return;
  given.field.state = EM_READ_INFERRED;
  given.field.reason = "from-words";
  for (guint i = 0; i < grammar->protos->len; i++)
    if (is_named[i])
      g_array_append_val (((EmProto *) g_ptr_array_index (grammar->protos, i))->given, given);
  drop_general (grammar, "coating", em_item (grammar->items, coating->item)->start);
}

void
em_coatings_hand_out (EmGrammar *grammar)
{
  for (guint i = 0; i < grammar->coatings->len && i < METALS_MAX; i++)
    hand_out_coating (grammar, &g_array_index (grammar->coatings, EmMetal, i));
}

void
em_metals_hand_out (EmGrammar *grammar)
{
  Part parts[METALS_MAX] = { 0 };
  guint n_parts = 0;

  if (!has_other (grammar) || grammar->metals->len > METALS_MAX || grammar->protos->len == 0)
    return;
  for (guint i = 0; i < grammar->metals->len; i++)
    {
      Part part = { .metal = &g_array_index (grammar->metals, EmMetal, i), .first_head = EM_NO_ITEM };

      part.hardness = find_hardness (grammar->items, part.metal->item);
      part.coating = find_coating (grammar->items, part.metal->item);
      part.is_named = find_names (grammar->items, &part);
      parts[n_parts++] = part;
    }
  if (give_to_named (grammar, parts, n_parts) == 0)
    return;
  for (guint k = 0; k < n_parts; k++)
    if (parts[k].n_given > 0 || parts[k].is_rest)
      {
        take_back (grammar, &parts[k]);
        if (parts[k].is_rest)
          give (grammar, &parts[k], grammar->general);
      }
}
