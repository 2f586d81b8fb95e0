/* em-unused: the words that a reading could not use.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-unused.h"

#include "em-name.h"
#include "em-notes-set.h"
#include "em-remark.h"

#include <string.h>

enum { FIRST_CODE = 100 /* a whole number from here is more than a count */, MONTHS = 12, DAYS = 31,
       ABBREVIATION = 4 /* letters before its point */, QUESTION_WORDS = 3, WELD_QUESTION_WORDS = 7, QUESTION_WINDOW = 30 /* items of a question */ };

/* "quiet": a word that only says where, "top"; "alone": one that says nothing without others, "dropped"; "strip": that a coating
 * must come off, which is an order to the shop even where it tells the coating. */
static gboolean
has_noise (const EmPhrase *phrase, const char *value)
{
  for (guint i = 0; i < phrase->n_senses; i++)
    if (phrase->sense[i]->says == EM_SAYS_NOISE && g_strcmp0 (phrase->sense[i]->value, value) == 0)
      return TRUE;
  return FALSE;
}

static gboolean
is_only_talk (const EmPhrase *phrase)
{
  for (guint i = 0; phrase != NULL && i < phrase->n_senses; i++)
    if (phrase->sense[i]->says != EM_SAYS_GLUE && phrase->sense[i]->says != EM_SAYS_TALK &&
        phrase->sense[i]->says != EM_SAYS_NOISE)
      return FALSE;
  return phrase != NULL;
}

/* "Gruß, Liese": a word with a capital that is only like one of talk is a name. */
static gboolean
is_name_like_talk (const EmItem *item)
{
  return (item->flags & EM_TOKEN_SLIP) != 0 && (item->flags & EM_TOKEN_CAPITAL) != 0 && (item->flags & EM_TOKEN_UPPER) == 0 &&
         (item->is_talk || is_only_talk (item->phrase));
}

/* "Danke, Sönke": so is one that is only like a repair, which is none by itself. */
static gboolean
is_name_like_repair (const EmItem *item)
{
  return (item->flags & EM_TOKEN_SLIP) != 0 && (item->flags & EM_TOKEN_CAPITAL) != 0 && (item->flags & EM_TOKEN_UPPER) == 0 &&
         item->type == EM_ITEM_PHRASE && em_phrase_find (item->phrase, EM_SAYS_KIND) != NULL;
}

static gboolean
is_content (const EmItem *item)
{
  const EmSense *number = item->type == EM_ITEM_PHRASE ? em_phrase_find (item->phrase, EM_SAYS_NUMBER) : NULL;
  static const EmSays empty[] = { EM_SAYS_GLUE, EM_SAYS_PREPOSITION, EM_SAYS_TO, EM_SAYS_TIMES, EM_SAYS_NEAR, EM_SAYS_AGENT,
                                  EM_SAYS_REFERENCE, EM_SAYS_BETWEEN, EM_SAYS_APPROXIMATE,
                                  EM_SAYS_VERB, EM_SAYS_PLACE };

  if (item->type == EM_ITEM_SIGN || item->type == EM_ITEM_LINE || item->sign != 0)
    return FALSE;
  if (is_name_like_talk (item))
    return TRUE;
  if (item->is_talk || item->is_heading)
    return FALSE;
  /* "PER SKETCH", without its number */
  if (item->type == EM_ITEM_PHRASE && has_noise (item->phrase, "matter") && em_phrase_find (item->phrase, EM_SAYS_REFERENCE) != NULL)
    return TRUE;
  if (item->type == EM_ITEM_PHRASE && (has_noise (item->phrase, "quiet") || has_noise (item->phrase, "unsure")))
    return FALSE;
  if (number != NULL && (g_strcmp0 (number->value, "1") == 0 || g_strcmp0 (number->value, EM_ARTICLE) == 0))
    return FALSE;
  for (gsize i = 0; item->type == EM_ITEM_PHRASE && i < G_N_ELEMENTS (empty); i++)
    if (em_phrase_find (item->phrase, empty[i]) != NULL)
      return FALSE;
  return TRUE;
}

/* "the radius", "first", "two": what such a word says without a size of its own, the words round it say, too. */
static gboolean
is_trade_word (const EmItem *item)
{
  static const EmSays trade[] = { EM_SAYS_KIND, EM_SAYS_LABEL, EM_SAYS_NUMBER, EM_SAYS_MACHINING, EM_SAYS_UNIT, EM_SAYS_UNITS,
                                 EM_SAYS_QUANTITY,
                                  EM_SAYS_PLACES, EM_SAYS_TYPICAL, EM_SAYS_MATERIAL, EM_SAYS_THING };

  if (item->type != EM_ITEM_PHRASE)
    return FALSE;
  if (em_phrase_find (item->phrase, EM_SAYS_ONE_OF) != NULL || has_noise (item->phrase, "alone"))
    return TRUE;
  for (gsize i = 0; i < G_N_ELEMENTS (trade) && em_phrase_find (item->phrase, EM_SAYS_NOISE) == NULL; i++)
    if (em_phrase_find (item->phrase, trade[i]) != NULL)
      return TRUE;
  return FALSE;
}

/* "M8": a thread (ISO 261) that nothing has used; no field takes it, and it says how large a hole is. */
static gboolean
is_thread (const EmItems *items, const EmItem *item)
{
  const char *text = items->text + item->start;

  if (item->length < 2 || item->length > 3 || item->type == EM_ITEM_SIZE || (text[0] != 'M' && text[0] != 'm'))
    return FALSE;
  return g_ascii_isdigit (text[1]) && (item->length == 2 || g_ascii_isdigit (text[2]));
}

/* A word that no lexicon knows, or one of the trade, alone among words that were read: it stands within what its repair shows.
 * Names, which are written with a capital, and whole stretches stay visible as unused. */
static gboolean
is_lone_word (const EmItems *items, guint first, guint end)
{
  const EmItem *item = em_item (items, first);
  gboolean is_upper = (item->flags & EM_TOKEN_UPPER) != 0;

  for (guint i = first + 1; i < end; i++)
    if (is_content (em_item (items, i)))
      return FALSE;
  if (is_thread (items, item))
    return FALSE;
  if (!is_trade_word (item) && (item->type != EM_ITEM_UNKNOWN || item->is_heading ||
                                (!is_upper && (item->flags & EM_TOKEN_CAPITAL) != 0) ||
                                !g_ascii_isalpha (items->text[item->start])))
    return FALSE;
  return (first > 0 && em_item (items, first - 1)->is_used) ||
         (end < items->items->len && em_item (items, end)->is_used);
}

/* ---- what matters ---- */

/* A word that an office would look up by itself: a name, a code, a state that asks for nothing, a wish, an instruction. */
static gboolean
matters (const EmItems *items, const EmItem *item)
{
  static const EmSays said[] = { EM_SAYS_SOUND, EM_SAYS_REFUSE, EM_SAYS_BASE, EM_SAYS_COATING, EM_SAYS_FINISH, EM_SAYS_ACCESS };
  const EmSense *set;

  if (item->type == EM_ITEM_UNKNOWN)
    return (item->flags & (EM_TOKEN_CAPITAL | EM_TOKEN_UPPER)) != 0 || !g_ascii_isalpha (items->text[item->start]);
  if (item->type != EM_ITEM_PHRASE)
    return FALSE;
  if (is_name_like_talk (item) || is_name_like_repair (item) || is_thread (items, item))
    return TRUE;
  for (gsize i = 0; i < G_N_ELEMENTS (said); i++)
    if (em_phrase_find (item->phrase, said[i]) != NULL && g_strcmp0 (em_phrase_find (item->phrase, said[i])->value, "denied") != 0)
      return TRUE;
  set = em_phrase_find (item->phrase, EM_SAYS_SET);
  return has_noise (item->phrase, "matter") || has_noise (item->phrase, "removed") || has_noise (item->phrase, "time") ||
         has_noise (item->phrase, "strip") ||
         (set != NULL && g_strcmp0 (set->set_field, "ends") == 0);
}

/* A number that says something alone: a size with its unit or a point, the number of an order, "8 wide". "4" is only what it counts. */
static gboolean
is_telling (const EmItems *items, guint i)
{
  const EmSize *size = em_item_size (items, i);

  return size->unit != EM_UNIT_NONE || !size->is_whole || em_fraction_plain (size->value) >= FIRST_CODE ||
         (i + 1 < items->items->len && em_item_says (items, i + 1, EM_SAYS_LABEL) != NULL);
}

/* ---- sizes left over ---- */

typedef struct
{
  const EmItems *items;
  EmReadResult  *result;
  guint          at;     /* the last feature that begins before the stretch; spans are in order */
} Finder;

/* The feature whose words the stretch stands in, or behind which on its line; 0: none. */
static int
feature_round (Finder *f, const EmReadSpan *stretch)
{
  const GArray *spans = f->result->spans;
  const EmReadSpan *span;

  while (f->at < spans->len && g_array_index (spans, EmReadSpan, f->at).start <= stretch->start)
    f->at++;
  if (f->at == 0)
    return 0;
  span = &g_array_index (spans, EmReadSpan, f->at - 1);
  return stretch->start < span->start + span->length || stretch->line == span->line ? (int) f->at : 0;
}

static void
doubt_sizes (EmReadResult *result, int feature)
{
  guint first, last;

  em_read_result_range (result, feature, &first, &last);
  for (guint i = first; i < last; i++)
    {
      EmReadField *field = &g_array_index (result->fields, EmReadField, i);

      if (field->state != EM_READ_READ || (field->text != NULL && strcmp (field->field, "kind") != 0))
        continue;
      field->state = EM_READ_INFERRED;
      field->reason = "left-over";
    }
}

/* ---- the stretches ---- */

typedef struct
{
  EmReadSpan span;
  guint      first, n_content, n_numbers, n_unknown;
  gboolean   is_open, has_matter, is_whole /* holds a remark of some words */;
} Stretch;

/* A line of words that no lexicon has: nothing tells that it is only talk. */
static gboolean
is_strange_line (const EmItems *items, const Stretch *s, guint end)
{
  return s->n_unknown == s->n_content && (s->first == 0 || em_item (items, s->first - 1)->type == EM_ITEM_LINE) &&
         (end == items->items->len || em_item (items, end)->type == EM_ITEM_LINE);
}

static void
close_stretch (Finder *f, Stretch *s, guint end)
{
  gboolean is_size;
  int feature;

  if (!s->is_open)
    return;
  s->is_open = FALSE;
  if (!s->is_whole && is_lone_word (f->items, s->first, end))
    return;
  feature = feature_round (f, &s->span);
  is_size = feature > 0 && s->n_numbers == s->n_content;
  if (is_size)
    doubt_sizes (f->result, feature);
  s->span.is_minor = !is_size && !s->has_matter && !is_strange_line (f->items, s, end);
  g_array_append_val (f->result->unused, s->span);
}

/* No unit is written behind it. */
static gboolean
is_short (const EmItems *items, guint i)
{
  return em_item (items, i)->length <= 2;
}

/* A whole number of a day and, behind a stroke or a point, of a month: "19/06", "6/14", "27.08.". */
static gboolean
is_date (const EmItems *items, guint i)
{
  const EmSize *first = em_item_size (items, i), *second;

  if (i + 2 >= items->items->len || em_item (items, i + 2)->type != EM_ITEM_SIZE ||
      (!em_item_is_sign (items, i + 1, '/') && !em_item_is_sign (items, i + 1, '.')) || !em_item_is_glued (items, i + 1) ||
      !em_item_is_glued (items, i + 2))
    return FALSE;
  second = em_item_size (items, i + 2);
  return first->is_whole && second->is_whole && is_short (items, i) && is_short (items, i + 2) &&
         MIN (first->value.n, second->value.n) <= MONTHS && MAX (first->value.n, second->value.n) <= DAYS;
}

/* "3 DEG DRAFT": the words of its unit and of what it measures belong to a size that no field takes. */
static guint
end_of_size (const EmItems *items, guint i)
{
  guint end = i + 1;

  while (end < items->items->len && end <= i + 2 &&
         (em_item_says (items, end, EM_SAYS_UNIT) != NULL || em_item_says (items, end, EM_SAYS_LABEL) != NULL))
    end++;
  /* "3 DEG, 20 LONG"; "3 DEG LONG 20": the label is the next size's. */
  if (end < items->items->len && em_item (items, end)->type == EM_ITEM_SIZE && em_item_says (items, end - 1, EM_SAYS_LABEL) != NULL)
    end--;
  return end;
}

/* "DRAFT 3 DEG", but not "5 HIGH 3 DEG". */
static guint
start_of_size (const EmItems *items, guint i)
{
  gboolean is_led = i > 0 && em_item_says (items, i - 1, EM_SAYS_LABEL) != NULL && !em_item_is_soft_break (items, i - 1);

  return is_led && (i == 1 || em_item (items, i - 2)->type != EM_ITEM_SIZE) ? i - 1 : i;
}

static void
add_word (Finder *f, Stretch *s, guint i)
{
  const EmItem *item = em_item (f->items, i);

  if (!s->is_open)
    *s = (Stretch) { .span = { .line = item->line }, .first = item->type == EM_ITEM_SIZE ? start_of_size (f->items, i) : i, .is_open = TRUE };
  if (s->n_content == 0)
    s->span.start = em_item (f->items, s->first)->start;
  s->span.length = item->start + item->length - s->span.start;
  s->n_content++;
  /* "(12.5)" is told for information: nothing that the reading missed. */
  s->n_numbers += item->type == EM_ITEM_SIZE && (em_item_size (f->items, i)->roles & EM_ROLE_REFERENCE) == 0;
  s->n_unknown += item->type == EM_ITEM_UNKNOWN;
  if (item->type != EM_ITEM_SIZE)
    s->has_matter |= matters (f->items, item) || em_remark_is_verdict (f->items, i);
  else if (em_name_is_day (f->items, i))
    {
      s->span.length = em_item (f->items, i + 1)->start + em_item (f->items, i + 1)->length - s->span.start;
      s->has_matter = TRUE;
    }
  else
    {
      const EmItem *last = em_item (f->items, end_of_size (f->items, i) - 1);

      s->span.length = last->start + last->length - s->span.start;
      s->has_matter |= is_telling (f->items, i) || is_date (f->items, i);
    }
}

/* "from press 14": the number that names what the stretch ends in. */
static gboolean
is_name_behind (const EmItems *items, const Stretch *s, guint i)
{
  const EmItem *item = em_item (items, i), *before = i > 0 ? em_item (items, i - 1) : NULL;

  return s->is_open && item->type == EM_ITEM_SIZE && item->is_used && em_phrase_find (item->phrase, EM_SAYS_BASE) == NULL &&
         (em_item_size (items, i)->roles & EM_ROLE_REFERENCE) != 0 && s->span.start + s->span.length == before->start + before->length;
}

/* ---- questions to the shop ---- */

static gboolean
begins_sentence (const EmItems *items, guint i)
{
  static const char ends[] = ".?!;:>";

  if (i == 0 || em_item (items, i - 1)->type == EM_ITEM_LINE)
    return TRUE;
  for (gsize k = 0; ends[k] != '\0'; k++)
    if (em_item_is_sign (items, i - 1, (gunichar) ends[k]))
      return TRUE;
  return FALSE;
}

/* "Can you …?", "could you", which may be one phrase. */
static gboolean
asks_kindly (const EmItems *items, guint first)
{
  static const char *const can[] = { "can", "could", "would", "will", "können", "könnten", "könnt", "kann", "würden", "puede", "pueden",
                                     "podéis", "podrían", "podría", "pouvez", "pourriez", "peux", "peut" };
  const EmItem *item = em_item (items, first);

  for (gsize k = 0; k < G_N_ELEMENTS (can); k++)
    {
      gsize n = strlen (can[k]);

      if (n <= item->length && g_ascii_strncasecmp (items->text + item->start, can[k], n) == 0 &&
          (n == item->length || items->text[item->start + n] == ' '))
        return TRUE;
    }
  return FALSE;
}

/* The mark that ends the question beginning at first, none of whose words a field has used; 0: none begins there. */
static guint
question_end (const EmItems *items, guint first)
{
  guint n_words = 0, n_least = QUESTION_WORDS;

  for (guint k = first; k < items->items->len && k < first + QUESTION_WINDOW && em_item (items, k)->type != EM_ITEM_LINE; k++)
    if (em_item_is_sign (items, k, '?'))
      return n_words >= n_least ? k : 0;
    else if (em_item (items, k)->is_used || em_remark_asks_as_all (items, k) || (k > first && begins_sentence (items, k)))
      return 0;
    else
      {
        n_words += em_item (items, k)->type != EM_ITEM_SIGN;
        /* "Can you weld it?" asks for what the letter asks for, "Can you weld it here while we wait?" for more. */
        if (em_item_says (items, k, EM_SAYS_VERB) != NULL && asks_kindly (items, first))
          n_least = WELD_QUESTION_WORDS;
      }
  return 0;
}

/* "Could it be ready by Thursday?": an office answers it, whatever its words are. The item behind it; 0: there is none. */
static guint
write_question (Finder *f, Stretch *s, guint first)
{
  const EmItems *items = f->items;
  guint end = begins_sentence (items, first) ? question_end (items, first) : 0;
  EmReadSpan span;

  while (first < end && em_item (items, first)->type == EM_ITEM_SIGN)
    first++;
  if (first >= end)
    return 0;
  close_stretch (f, s, first);
  span = (EmReadSpan) { .start = em_item (items, first)->start, .line = em_item (items, first)->line };
  span.length = em_item (items, end - 1)->start + em_item (items, end - 1)->length - span.start;
  g_array_append_val (f->result->unused, span);
  return end;
}

/* "The vents are all right, leave them": a remark is listed with all its words, and with what else is said beside it. The item
 * behind it; 0: there is none. */
static guint
add_remark (Finder *f, Stretch *s, guint first)
{
  guint end = em_remark_end (f->items, first);

  if (end == 0)
    return 0;
  if (!s->is_open)
    *s = (Stretch) { .span = { .line = em_item (f->items, first)->line, .start = em_item (f->items, first)->start }, .first = first, .is_open = TRUE };
  s->span.length = em_item (f->items, end - 1)->start + em_item (f->items, end - 1)->length - s->span.start;
  s->n_content++;
  s->has_matter = s->is_whole = TRUE;
  return end;
}

/* ". Please": what follows is another remark. "Hr. Wendlandt", "approx. 300 kg" go on. */
static gboolean
ends_sentence (const EmItems *items, guint i)
{
  const EmItem *before = i > 0 ? em_item (items, i - 1) : NULL;

  return before != NULL && i + 1 < items->items->len && (em_item_is_sign (items, i, '.') || em_item_is_sign (items, i, '!')) &&
         before->length > ABBREVIATION && !em_item_is_glued (items, i + 1) && (em_item (items, i + 1)->flags & (EM_TOKEN_CAPITAL | EM_TOKEN_UPPER)) != 0;
}

void
em_unused_write (EmItems *items, EmReadResult *result)
{
  Finder f = { items, result, 0 };
  Stretch s = { 0 };

  for (guint i = 0, end; i < items->items->len; i++)
    {
      /* A sentence may go on in the next line, a stretch does not. */
      if (s.is_open && i > 0 && !s.is_whole && em_item (items, i)->line != em_item (items, i - 1)->line)
        close_stretch (&f, &s, i);
      if ((end = write_question (&f, &s, i)) != 0 || (end = add_remark (&f, &s, i)) != 0)
        i = end - 1;
      else if (em_item (items, i)->type == EM_ITEM_SIZE && em_item (items, i)->is_talk)
        continue; /* a time of day parts nothing */
      else if (is_name_behind (items, &s, i))
        s.span.length = em_item (items, i)->start + em_item (items, i)->length - s.span.start;
      else if (em_item (items, i)->type == EM_ITEM_LINE || (em_item (items, i)->is_used && !em_remark_has_noise (items, i, "strip")))
        close_stretch (&f, &s, i);
      else if (ends_sentence (items, i))
        close_stretch (&f, &s, i);
      else if (is_content (em_item (items, i)) && !em_remark_is_town (items, i) && !em_remark_is_part_name (items, i))
        add_word (&f, &s, i);
    }
  close_stretch (&f, &s, items->items->len);
}
