/* em-item: tokens grouped into phrases of the lexicon, sizes and signs.
 *
 * A size holds one number as written (decimal, fraction, mixed number, limits) with its unit,
 * its tolerance and its value in the other unit when both are given. Values are exact
 * fractions until a unit is known.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-lexicon.h"

G_BEGIN_DECLS

typedef enum { EM_ITEM_PHRASE, EM_ITEM_SIZE, EM_ITEM_SIGN, EM_ITEM_UNKNOWN, EM_ITEM_LINE } EmItemType;

typedef struct
{
  guint64 n, d;          /* value n/d */
} EmFraction;

/* Roles beyond the lexicon's, given by the grammar. */
enum { EM_ROLE_SLOT = 1 << 28, EM_ROLE_COUNT = 1 << 29, EM_ROLE_ADD = 1 << 30 /* right beside a verb of building */ };
#define EM_ROLE_WELD (1u << 31) /* right behind a verb of welding: likely what to add */

typedef struct
{
  EmFraction  value;
  EmFraction  low, high;     /* d 0: none */
  EmFraction  other;         /* the same size in the other unit; d 0: none */
  EmUnit      unit;          /* as written; EM_UNIT_NONE: bare */
  EmUnit      other_unit;
  guint       flags;         /* EmTokenFlags of its number */
  gboolean    is_fraction;
  gboolean    is_whole;      /* digits only */
  gboolean    has_fit;       /* a tolerance class of ISO 286 stands behind it */
  guint8      n_decimals;
  guint32     roles;         /* EmRole bits */
  guint32     chain;         /* sizes joined by × share a number; 0: alone */
  guint32     label_item;    /* item of the label that named it; G_MAXUINT32: none */
  gboolean    is_either;     /* one of two that the words leave open */
  gboolean    is_guessed;    /* its unit is only that of other sizes */
  gboolean    is_asked;      /* its unit is not sure enough: a question asks */
  const char *reason;        /* why it is less than plainly read, or NULL */
} EmSize;

typedef struct
{
  EmItemType      type;
  guint32         start, length, line;
  guint           flags;     /* EmTokenFlags of its first token */
  gboolean        is_used;
  gboolean        is_talk;   /* unknown to the grammar, but not worth showing as unused */
  gboolean        is_row;    /* begins a row of a table */
  gboolean        is_idle;   /* and that row says that nothing is to be done */
  gboolean        is_heading;/* stands in a table's line of headings */
  gboolean        is_where;  /* stands in a table's column of places */
  gboolean        is_number_of; /* alone in a table's column of counts */
  const char     *code;      /* the field that the code from here to code_end is of, in a table's column of codes; NULL: none */
  guint           code_end;
  guint           told_end;  /* behind the words from here that stay visible as one remark; 0: none */
  gunichar        sign;
  const EmPhrase *phrase;    /* may also be set beside a size: "420" */
  guint32         size;      /* index into sizes; only for EM_ITEM_SIZE */
} EmItem;

typedef struct
{
  const EmLexicon *lexicon;
  const char      *text;
  GArray          *items;    /* EmItem */
  GArray          *sizes;    /* EmSize */
  guint            n_words[EM_LANGUAGE_MAX]; /* words met that only the lexicon of that index has */
} EmItems;

EmItems *em_items_new  (const EmLexicon *lexicon, const char *text, gsize length);
void     em_items_free (EmItems *items);

/* value in unit as mm, mm², degrees, HRC (ASTM E140; NaN beyond its table) or plain; inches exactly 25.4 mm (NIST SP 811). */
double   em_fraction_in_mm (EmFraction value, EmUnit unit);
double   em_fraction_plain (EmFraction value);

static inline EmItem *
em_item (const EmItems *items, guint index)
{
  return &g_array_index (items->items, EmItem, index);
}

static inline EmSize *
em_item_size (const EmItems *items, guint index)
{
  return &g_array_index (items->sizes, EmSize, em_item (items, index)->size);
}

static inline gboolean
em_unit_is_area (EmUnit unit)
{
  return unit == EM_UNIT_MM2 || unit == EM_UNIT_CM2 || unit == EM_UNIT_INCH2;
}

static inline gboolean
em_unit_is_hardness (EmUnit unit)
{
  return unit == EM_UNIT_HRC || unit == EM_UNIT_HB || unit == EM_UNIT_HV;
}

/* Whether the item is just that word, in any case of ASCII; FALSE beyond the last one. */
gboolean em_item_is_word        (const EmItems *items, guint index, const char *word);
gboolean em_item_is_any_word_of (const EmItems *items, guint index, const char *const *words, gsize n_words);

/* The sense of a phrase item, or NULL. */
static inline const EmSense *
em_item_says (const EmItems *items, guint index, EmSays says)
{
  const EmItem *item = em_item (items, index);

  return item->type == EM_ITEM_PHRASE ? em_phrase_find (item->phrase, says) : NULL;
}

G_END_DECLS
