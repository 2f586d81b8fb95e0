/* em-wrap: line ends that only wrap the sentences of a letter.
 *
 * "The shut-off face is 0.15 low" and below it "over 32 x 14 mm": programs for mail break lines so. A list has a line for each thing and
 * no such lines: they are long, begin like a sentence, do not end like one, and the next begins in lower case.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-wrap.h"

#include <string.h>

/* Bytes. Programs wrap at 66 to 80 (common practice, no source); the word that did not fit may be long. */
enum { LEAST_WRAPPED = 50, LEAST_WIDTH = 66, MOST_WIDTH = 84 };

typedef struct
{
  const EmLexicon *lexicon;
  int              language;
  const char      *text;
  const GArray    *tokens;
  guint            first;     /* token that begins the line */
  gboolean         is_prose;  /* the line goes on from one that was joined to it */
  guint32          width;     /* bytes of the longest line */
} Wrap;

static const EmToken *
token (const Wrap *w, guint i)
{
  return &g_array_index (w->tokens, EmToken, i);
}

static const EmPhrase *
phrase_at (const Wrap *w, guint i, guint n)
{
  guint n_tokens;

  return em_lexicon_match (w->lexicon, w->language, token (w, i), n, &n_tokens);
}

/* "of", "over a", "and": nothing ends with it. */
static gboolean
leads_on (const Wrap *w, guint i)
{
  static const EmSays little[] = { EM_SAYS_PREPOSITION, EM_SAYS_GLUE, EM_SAYS_TO, EM_SAYS_APPROXIMATE };
  const EmPhrase *phrase = token (w, i)->type == EM_TOKEN_WORD ? phrase_at (w, i, 1) : NULL;
  const EmSense *number = em_phrase_find (phrase, EM_SAYS_NUMBER);

  for (gsize k = 0; k < G_N_ELEMENTS (little); k++)
    if (em_phrase_find (phrase, little[k]) != NULL)
      return TRUE;
  return number != NULL && g_strcmp0 (number->value, EM_ARTICLE) == 0;
}

/* The line reads like one of a letter: words in lower case behind its first, and no columns. */
static gboolean
is_of_letter (const Wrap *w, guint end)
{
  guint32 from = token (w, w->first)->start, to = token (w, end)->start;
  guint n_small = 0, n_words = 0;

  if (to - from < LEAST_WRAPPED || memchr (w->text + from, '\t', to - from) != NULL || memchr (w->text + from, '|', to - from) != NULL)
    return FALSE;
  for (guint i = w->first; i < end; i++)
    if (token (w, i)->type == EM_TOKEN_WORD)
      {
        n_words++;
        n_small += (token (w, i)->flags & (EM_TOKEN_CAPITAL | EM_TOKEN_UPPER)) == 0;
      }
  return 2 * n_small > n_words && (w->is_prose || (token (w, w->first)->flags & EM_TOKEN_CAPITAL) != 0);
}

/* The next word did not fit into the width that the longest line shows. */
static gboolean
is_full (const Wrap *w, guint end)
{
  return w->width >= LEAST_WIDTH && token (w, end)->start - token (w, w->first)->start + 1 + token (w, end + 1)->length > w->width;
}

static guint32
width_of (const Wrap *w)
{
  guint first = 0;
  guint32 width = 0;

  for (guint i = 0; i < w->tokens->len; i++)
    if (token (w, i)->type == EM_TOKEN_LINE)
      {
        width = MAX (width, token (w, i)->start - token (w, first)->start);
        first = i + 1;
      }
  return width;
}

/* The line end at i only wraps. */
static gboolean
is_wrap (const Wrap *w, guint i)
{
  const EmToken *last, *next;

  if (i == w->first || i + 1 >= w->tokens->len || !is_of_letter (w, i))
    return FALSE;
  last = token (w, i - 1);
  next = token (w, i + 1);
  if (last->type != EM_TOKEN_WORD && last->type != EM_TOKEN_NUMBER && !(last->type == EM_TOKEN_SIGN && last->sign == ','))
    return FALSE;
  if (!is_full (w, i) || (w->width > MOST_WIDTH && last->type != EM_TOKEN_SIGN && !leads_on (w, i - 1)))
    return FALSE;
  if (next->type == EM_TOKEN_NUMBER)
    return leads_on (w, i - 1);
  /* "a) …" and "o …" begin a point of a list. */
  if (next->type != EM_TOKEN_WORD || (next->flags & EM_TOKEN_CAPITAL) != 0 || next->length < 2)
    return FALSE;
  /* "edge chipped 5 x 1 x 1" may be a thing of its own, "there is an / edge chipped" is none. */
  return leads_on (w, i - 1) || em_phrase_find (phrase_at (w, i + 1, w->tokens->len - i - 1), EM_SAYS_KIND) == NULL;
}

void
em_wrap_join (const EmLexicon *lexicon, int language, const char *text, GArray *tokens)
{
  Wrap w = { lexicon, language, text, tokens, 0, FALSE, 0 };
  guint n = 0;
  g_autoptr (GArray) kept = g_array_sized_new (FALSE, FALSE, sizeof (EmToken), tokens->len);

  w.width = width_of (&w);
  for (guint i = 0; i < tokens->len; i++)
    {
      const EmToken *at = token (&w, i);
      gboolean joins = at->type == EM_TOKEN_LINE && is_wrap (&w, i);

      if (!joins)
        g_array_append_val (kept, *at);
      if (at->type != EM_TOKEN_LINE)
        continue;
      w.is_prose = joins;
      w.first = i + 1;
    }
  n = kept->len;
  if (n > 0)
    memcpy (tokens->data, kept->data, n * sizeof (EmToken));
  g_array_set_size (tokens, n);
}
