/* em-token: any bytes cut into words, numbers, signs and line ends.
 *
 * Tokens cover the text in order without overlap and only blanks lie between them. Bytes
 * that are no UTF-8 become junk tokens. Numbers keep their digits exactly, as a fraction
 * of whole numbers, so that inches convert without rounding twice.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef enum
{
  EM_TOKEN_WORD,    /* letters, with apostrophes inside */
  EM_TOKEN_NUMBER,
  EM_TOKEN_SIGN,    /* one character, its variants folded */
  EM_TOKEN_LINE,    /* end of a line */
  EM_TOKEN_JUNK     /* control characters, bytes that are no UTF-8, overlong digits */
} EmTokenType;

typedef enum
{
  EM_TOKEN_GLUED        = 1 << 0,  /* no blank before it */
  EM_TOKEN_CAPITAL      = 1 << 1,  /* first letter is upper case */
  EM_TOKEN_UPPER        = 1 << 2,  /* no lower case letter */
  EM_TOKEN_LEADING_DOT  = 1 << 3,  /* ".5" */
  EM_TOKEN_LEADING_ZERO = 1 << 4,  /* "0.5" */
  EM_TOKEN_DECIMAL      = 1 << 5,  /* has a decimal mark */
  EM_TOKEN_COMMA        = 1 << 6,  /* its decimal mark is a comma */
  EM_TOKEN_THREE        = 1 << 7,  /* "1,250": could be thousands */
  EM_TOKEN_VULGAR       = 1 << 8,  /* "½": one character that is a fraction */
  EM_TOKEN_SLIP         = 1 << 9,  /* atom found for a near spelling */
  EM_TOKEN_COMPOUND     = 1 << 10  /* atom found for the last part of the word */
} EmTokenFlags;

typedef struct
{
  guint32     start, length, line;   /* bytes; line from 1 */
  EmTokenType type;
  guint       flags;
  gunichar    sign;                  /* folded: '⌀' '°' '±' '×' '"' '\'' '-' … */
  guint32     atom;                  /* the lexicon's number for the folded text; 0: it has none */
  guint32     alike;                 /* where the text is known only within phrases: the number of a word like it, or 0 */
  guint64     numerator, denominator;/* of a number; denominator ≥ 1 */
  guint8      n_decimals;
} EmToken;

enum { EM_FOLDED_MAX = 48 };  /* longest word the reader can know, bytes, with its NUL */

/* Writes the folded form: lower case, ä ö ü ß as ae oe ue ss, other accents dropped. FALSE when it does not fit. */
gboolean em_token_fold (const char *text, gsize length, char folded[EM_FOLDED_MAX]);

/* GArray of EmToken, atoms 0. Time and memory are linear in length. */
GArray *em_token_split (const char *text, gsize length);

G_END_DECLS
