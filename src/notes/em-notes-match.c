/* em-notes-match: which proposals of a new reading are the ones of the reading before.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-notes-match.h"

#include "em-notes-set.h"

#include <string.h>

/* Comparing every pair is left out for texts that are no notes. */
enum { PAIRS_MAX = 100000 };

static const double alike_enough = 0.5;   /* share of words in common (Dice) */

typedef struct
{
  guint32  id;
  char    *words;         /* normalised */
  gboolean is_matched;
} Old;

struct EmEarlier
{
  GArray     *olds;       /* Old, in order of the notes */
  GPtrArray  *rejected;   /* char*, normalised; NULL once met again */
  GHashTable *corrected;  /* "id field" */
  GHashTable *fields;     /* "id field" that had a mark → its words, normalised */
  GHashTable *ids;        /* ids with corrections */
  guint       n_news;
  guint32    *match;      /* by number − 1 */
  gboolean   *is_rejected;
  char      **words;      /* of the new proposals, normalised */
};

static char *
key (guint32 id, const char *field)
{
  return g_strdup_printf ("%u %s", id, field);
}

/* Blanks between words don't matter, nor does case. */
static char *
normalise (const char *text, gsize size, guint32 start, guint32 length)
{
  GString *words = g_string_new (NULL);

  if (start > size)
    return g_string_free (words, FALSE);
  length = (guint32) MIN (length, size - start);
  for (guint32 i = 0; i < length; i++)
    {
      char c = text[start + i];

      if (!g_ascii_isspace (c))
        g_string_append_c (words, g_ascii_tolower (c));
      else if (words->len > 0 && words->str[words->len - 1] != ' ')
        g_string_append_c (words, ' ');
    }
  return g_string_free (words, FALSE);
}

static void
clear_old (gpointer data)
{
  g_free (((Old *) data)->words);
}

static int
compare_strings (gconstpointer a, gconstpointer b)
{
  return strcmp (*(char *const *) a, *(char *const *) b);
}

static int
compare_marks (gconstpointer a, gconstpointer b)
{
  const EmMark *const *p = a, *const *q = b;

  return (*p)->start < (*q)->start ? -1 : (*p)->start > (*q)->start;
}

static void
take_mark (EmEarlier *earlier, const EmMark *mark, const char *notes, gsize size)
{
  Old old = { .id = mark->feature_id };

  if (mark->field != NULL)
    {
      g_hash_table_insert (earlier->fields, key (mark->feature_id, mark->field),
                           normalise (notes, size, mark->start, mark->length));
      if (mark->state == EM_MARK_REJECTED)
        {
          g_hash_table_add (earlier->corrected, key (mark->feature_id, mark->field));
          g_hash_table_add (earlier->ids, GUINT_TO_POINTER (mark->feature_id));
        }
    }
  else if (mark->state == EM_MARK_REJECTED && mark->length > 0)
    g_ptr_array_add (earlier->rejected, normalise (notes, size, mark->start, mark->length));
  else if (mark->feature_id != 0 && mark->length > 0 && mark->reason == NULL)
    {
      old.words = normalise (notes, size, mark->start, mark->length);
      g_array_append_val (earlier->olds, old);
    }
}

static void
take_marks (EmEarlier *earlier, const EmQuote *quote)
{
  const char *notes = quote->text[EM_QUOTE_NOTES] != NULL ? quote->text[EM_QUOTE_NOTES] : "";
  gsize size = strlen (notes);
  g_autoptr (GPtrArray) marks = g_ptr_array_new ();

  for (int32_t i = 0; i < quote->n_marks; i++)
    g_ptr_array_add (marks, &quote->mark[i]);
  g_ptr_array_sort (marks, compare_marks);
  for (guint i = 0; i < marks->len; i++)
    take_mark (earlier, g_ptr_array_index (marks, i), notes, size);
}

static void
match_exactly (EmEarlier *earlier)
{
  g_autoptr (GHashTable) by_words = g_hash_table_new (g_str_hash, g_str_equal);

  /* Backwards, so that the first of equal stretches is met first; each list is threaded through the index. */
  for (guint i = earlier->olds->len; i-- > 0;)
    {
      Old *old = &g_array_index (earlier->olds, Old, i);
      GSList *list = g_hash_table_lookup (by_words, old->words);

      g_hash_table_insert (by_words, old->words, g_slist_prepend (list, GUINT_TO_POINTER (i)));
    }
  for (guint n = 0; n < earlier->n_news; n++)
    {
      GSList *list = g_hash_table_lookup (by_words, earlier->words[n]);
      Old *old;

      if (list == NULL)
        continue;
      old = &g_array_index (earlier->olds, Old, GPOINTER_TO_UINT (list->data));
      earlier->match[n] = old->id;
      old->is_matched = TRUE;
      g_hash_table_insert (by_words, earlier->words[n], g_slist_delete_link (list, list));
    }
  {
    GHashTableIter iter;
    gpointer list;

    g_hash_table_iter_init (&iter, by_words);
    while (g_hash_table_iter_next (&iter, NULL, &list))
      g_slist_free (list);
  }
}

static void
match_rejected (EmEarlier *earlier)
{
  for (guint i = 0; i < earlier->rejected->len; i++)
    for (guint n = 0; n < earlier->n_news; n++)
      if (earlier->match[n] == 0 && !earlier->is_rejected[n] &&
          strcmp (earlier->words[n], g_ptr_array_index (earlier->rejected, i)) == 0)
        {
          earlier->is_rejected[n] = TRUE;
          break;
        }
}

/* Dice's share of words in common. */
static double
alike (const char *a, const char *b)
{
  g_auto (GStrv) p = g_strsplit_set (a, " ,;:", -1);
  g_auto (GStrv) q = g_strsplit_set (b, " ,;:", -1);
  guint n = g_strv_length (p), m = g_strv_length (q), common = 0;

  for (guint i = 0; i < n; i++)
    for (guint j = 0; j < m; j++)
      if (*q[j] != '\0' && strcmp (p[i], q[j]) == 0)
        {
          common++;
          *q[j] = '\0';
          break;
        }
  return n + m == 0 ? 0 : 2.0 * common / (n + m);
}

static void
match_alike (EmEarlier *earlier)
{
  if ((guint64) earlier->n_news * earlier->olds->len > PAIRS_MAX)
    return;
  for (guint n = 0; n < earlier->n_news; n++)
    {
      double best = alike_enough;
      Old *found = NULL;

      for (guint i = 0; earlier->match[n] == 0 && !earlier->is_rejected[n] && i < earlier->olds->len; i++)
        {
          Old *old = &g_array_index (earlier->olds, Old, i);
          double share = old->is_matched ? 0 : alike (old->words, earlier->words[n]);

          if (share >= best && (found == NULL || share > best))
            {
              best = share;
              found = old;
            }
        }
      if (found != NULL)
        {
          found->is_matched = TRUE;
          earlier->match[n] = found->id;
        }
    }
}

EmEarlier *
em_earlier_new (const EmReadResult *result, const char *text, const EmQuote *quote)
{
  EmEarlier *earlier = g_new0 (EmEarlier, 1);
  gsize size = strlen (text);

  earlier->olds = g_array_new (FALSE, FALSE, sizeof (Old));
  g_array_set_clear_func (earlier->olds, clear_old);
  earlier->rejected = g_ptr_array_new_with_free_func (g_free);
  earlier->corrected = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  earlier->fields = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
  earlier->ids = g_hash_table_new (NULL, NULL);
  earlier->n_news = (guint) result->n_features;
  earlier->match = g_new0 (guint32, earlier->n_news);
  earlier->is_rejected = g_new0 (gboolean, earlier->n_news);
  earlier->words = g_new0 (char *, earlier->n_news + 1);
  for (guint i = 0; i < earlier->n_news; i++)
    {
      const EmReadSpan *span = &g_array_index (result->spans, EmReadSpan, i);

      earlier->words[i] = normalise (text, size, span->start, span->length);
    }
  take_marks (earlier, quote);
  match_exactly (earlier);
  match_rejected (earlier);
  match_alike (earlier);
  return earlier;
}

void
em_earlier_free (EmEarlier *earlier)
{
  g_array_unref (earlier->olds);
  g_ptr_array_unref (earlier->rejected);
  g_hash_table_unref (earlier->corrected);
  g_hash_table_unref (earlier->fields);
  g_hash_table_unref (earlier->ids);
  g_free (earlier->match);
  g_free (earlier->is_rejected);
  g_strfreev (earlier->words);
  g_free (earlier);
}

guint
em_earlier_n (const EmEarlier *earlier)
{
  return earlier->olds->len;
}

guint32
em_earlier_id (const EmEarlier *earlier, guint index)
{
  return g_array_index (earlier->olds, Old, index).id;
}

gboolean
em_earlier_is_matched (const EmEarlier *earlier, guint index)
{
  return g_array_index (earlier->olds, Old, index).is_matched;
}

guint32
em_earlier_match_of (const EmEarlier *earlier, int number)
{
  return earlier->match[number - 1];
}

gboolean
em_earlier_is_rejected (const EmEarlier *earlier, int number)
{
  return earlier->is_rejected[number - 1];
}

gboolean
em_earlier_had_field (const EmEarlier *earlier, guint32 id, const char *field)
{
  g_autofree char *name = key (id, field);

  return g_hash_table_contains (earlier->fields, name);
}

gboolean
em_earlier_says_the_same (const EmEarlier *earlier, guint32 id, const char *field, const char *text, guint32 start,
                          guint32 length)
{
  g_autofree char *name = key (id, field);
  g_autofree char *words = normalise (text, strlen (text), start, length);
  const char *old = g_hash_table_lookup (earlier->fields, name);

  return old != NULL && strcmp (old, words) == 0;
}

gboolean
em_earlier_is_corrected (const EmEarlier *earlier, guint32 id, const char *field)
{
  g_autofree char *name = key (id, field);

  return g_hash_table_contains (earlier->corrected, name);
}

gboolean
em_earlier_has_corrections (const EmEarlier *earlier, guint32 id)
{
  return g_hash_table_contains (earlier->ids, GUINT_TO_POINTER (id));
}

/* The words that say the field now; none when nothing does. */
static void
put_words (const EmReadResult *result, int number, const char *field, EmMark *mark)
{
  guint first, last;

  em_read_result_range (result, number, &first, &last);
  for (guint i = first; i < last; i++)
    {
      const EmReadField *row = &g_array_index (result->fields, EmReadField, i);

      if (strcmp (row->field, field) == 0 && row->length > 0)
        {
          mark->start = row->start;
          mark->length = row->length;
          return;
        }
    }
}

void
em_earlier_mark_corrected (const EmEarlier *earlier, const EmReadResult *result, int number, EmQuote *quote, guint32 id)
{
  g_autofree char *prefix = g_strdup_printf ("%u ", id);
  GHashTableIter iter;
  gpointer name;
  g_autoptr (GPtrArray) names = g_ptr_array_new ();

  if (!em_earlier_has_corrections (earlier, id))
    return;
  g_hash_table_iter_init (&iter, earlier->corrected);
  while (g_hash_table_iter_next (&iter, &name, NULL))
    if (g_str_has_prefix (name, prefix))
      g_ptr_array_add (names, name);
  /* A table has no order; files do. */
  g_ptr_array_sort (names, compare_strings);
  for (guint i = 0; i < names->len; i++)
    {
      const char *field = (const char *) g_ptr_array_index (names, i) + strlen (prefix);
      EmMark mark = { .feature_id = id, .state = EM_MARK_REJECTED, .field = em_text_dup (field) };

      put_words (result, number, field, &mark);
      em_quote_add_mark_take (quote, &mark);
    }
}

gboolean
em_notes_has_marks (const EmQuote *quote, guint32 id)
{
  for (int32_t i = 0; i < quote->n_marks; i++)
    if (quote->mark[i].feature_id == id)
      return TRUE;
  return FALSE;
}
