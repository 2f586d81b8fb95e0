/* em-slip: the word that a near spelling most likely means.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-slip.h"

#include <string.h>

enum { WORD_MIN = 4, WORD_MAX = 24, CANDIDATE_MAX = 6 };

typedef struct
{
  const char *word;
  guint32     atom;
} Known;

typedef struct
{
  guint n;
  Known known[CANDIDATE_MAX];
} Bucket;

struct EmSlips
{
  GHashTable   *buckets;  /* a word or a word less one letter → Bucket */
  GHashTable   *words;    /* set of words added */
  GStringChunk *strings;
};

EmSlips *
em_slips_new (void)
{
  EmSlips *slips = g_new0 (EmSlips, 1);

  slips->buckets = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
  slips->words = g_hash_table_new (g_str_hash, g_str_equal);
  slips->strings = g_string_chunk_new (4096);
  return slips;
}

void
em_slips_free (EmSlips *slips)
{
  g_hash_table_unref (slips->buckets);
  g_hash_table_unref (slips->words);
  g_string_chunk_free (slips->strings);
  g_free (slips);
}

static void
put (EmSlips *slips, const char *key, Known known)
{
  Bucket *bucket = g_hash_table_lookup (slips->buckets, key);

  if (bucket == NULL)
    {
      bucket = g_new0 (Bucket, 1);
      g_hash_table_insert (slips->buckets, g_strdup (key), bucket);
    }
  for (guint i = 0; i < bucket->n; i++)
    if (bucket->known[i].atom == known.atom)
      return;
  if (bucket->n < CANDIDATE_MAX)
    bucket->known[bucket->n++] = known;
}

static void
shorten (const char *word, gsize length, gsize at, char *shorter)
{
  memcpy (shorter, word, at);
  memcpy (shorter + at, word + at + 1, length - at);
}

void
em_slips_add (EmSlips *slips, const char *word, guint32 atom)
{
  gsize length = strlen (word);
  char shorter[WORD_MAX + 2];
  Known known;

  if (length < WORD_MIN || length > WORD_MAX || g_hash_table_contains (slips->words, word))
    return;
  known.word = g_string_chunk_insert (slips->strings, word);
  known.atom = atom;
  g_hash_table_add (slips->words, (gpointer) known.word);
  put (slips, word, known);
  for (gsize i = 1; i < length; i++)
    {
      shorten (word, length, i, shorter);
      put (slips, shorter, known);
    }
}

/* Whether one slip leads from word to known: optimal string alignment distance 1. */
static gboolean
is_one_slip (const char *word, const char *known)
{
  gsize n = strlen (word), m = strlen (known), i = 0, j = 0;

  if (word[0] != known[0])
    return FALSE;
  while (word[i] != '\0' && word[i] == known[i])
    i++;
  while (j < n - i && j < m - i && word[n - 1 - j] == known[m - 1 - j])
    j++;
  if (n == m && n - i - j == 2)
    return word[i] == known[i + 1] && word[i + 1] == known[i];
  if (n < WORD_MIN + 1 || m < WORD_MIN + 1)
    return FALSE;
  return (n == m && n - i - j == 1) || (n + 1 == m && n - i - j == 0) || (m + 1 == n && m - i - j == 0);
}

static void
consider (const EmSlips *slips, const char *key, const char *word, guint32 *found, guint *n_found)
{
  const Bucket *bucket = g_hash_table_lookup (slips->buckets, key);

  for (guint i = 0; bucket != NULL && i < bucket->n; i++)
    {
      guint32 atom = bucket->known[i].atom;
      gboolean is_new = TRUE;

      for (guint k = 0; k < *n_found; k++)
        is_new &= found[k] != atom;
      if (is_new && *n_found < CANDIDATE_MAX && is_one_slip (word, bucket->known[i].word))
        found[(*n_found)++] = atom;
    }
}

guint32
em_slips_find (const EmSlips *slips, const char *word)
{
  gsize length = strlen (word);
  char shorter[WORD_MAX + 2];
  guint32 found[CANDIDATE_MAX];
  guint n_found = 0;

  if (length < WORD_MIN || length > WORD_MAX)
    return 0;
  consider (slips, word, word, found, &n_found);
  for (gsize i = 1; i < length; i++)
    {
      shorten (word, length, i, shorter);
      consider (slips, shorter, word, found, &n_found);
    }
  return n_found == 1 ? found[0] : 0;
}
