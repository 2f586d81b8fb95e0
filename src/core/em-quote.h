/* em-quote: a customer's quote: who, what tool, which features, on what terms.
 *
 * Owns its features, strings, marks. Plain data: the window's document object is
 * the only one that changes an open one; file reads and writes it.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-feature.h"
#include "em-quantity.h"

#include <stddef.h>

typedef enum { EM_STATE_DRAFT, EM_STATE_SENT, EM_STATE_WON, EM_STATE_LOST, EM_STATE_LAPSED, EM_N_STATE } EmState;

/* Text members; em_quote_text_ids[] gives their stable names, in this order. */
typedef enum
{
  EM_QUOTE_NUMBER, EM_QUOTE_REVISION, EM_QUOTE_DATE /* ISO 8601 */, EM_QUOTE_PREPARED_BY,
  EM_QUOTE_CUSTOMER, EM_QUOTE_CONTACT, EM_QUOTE_ADDRESS /* lines */, EM_QUOTE_EMAIL, EM_QUOTE_PHONE,
  EM_QUOTE_REFERENCE /* the customer's */, EM_QUOTE_TOOL, EM_QUOTE_TOOL_NUMBER, EM_QUOTE_DRAWING,
  EM_QUOTE_BASE,      /* catalogue id of the tool's metal */
  EM_QUOTE_FILLER,    /* catalogue id of the wire unless a feature says otherwise */
  EM_QUOTE_MACHINE,   /* rate book machine id; NULL: cheapest that fits, per feature */
  EM_QUOTE_PROCESS,   /* em_process_ids: cheapest of its machines that fits; a machine goes before it */
  EM_QUOTE_COATING,   /* "chrome", "nitride", "pvd" or other words; NULL: none known */
  EM_QUOTE_NOTES,     /* the customer's words, whole */
  EM_QUOTE_SCOPE,     /* further text: what is included, and what is not */
  EM_QUOTE_TERMS,     /* NULL: the rate book's */
  EM_QUOTE_LANGUAGE,  /* paper: "en", "de", "es", "fr"; NULL: the program's */
  EM_QUOTE_PAPER,     /* "a4", "letter"; NULL: the rate book's */
  EM_QUOTE_LEAD_TIME,
  EM_QUOTE_INTERNAL,  /* office's own remarks, never printed */
  EM_QUOTE_REVISES,   /* number+revision this one came from */
  EM_QUOTE_OFFERS,    /* catalogue ids of the wires the paper offers beside the chosen one, spaces between */
  EM_QUOTE_EXTRA,     /* XML of a newer version, kept as is */
  EM_N_QUOTE_TEXT
} EmQuoteText;

enum { EM_BREAK_MAX = 6 };

/* A stretch of the notes and what became of it. */
typedef enum { EM_MARK_USED, EM_MARK_GENERAL, EM_MARK_UNUSED, EM_MARK_QUESTION, EM_MARK_REJECTED, EM_N_MARK } EmMarkState;

typedef struct
{
  uint32_t    start, length;   /* bytes into the notes, on character boundaries */
  uint32_t    feature_id;      /* 0: the quote as a whole */
  EmMarkState state;
  char       *field;           /* field id, or NULL: the feature as a whole */
  char       *reason;          /* stable code of the inference or question, or NULL */
} EmMark;

/* Bought-out work or another line the office adds. */
typedef struct
{
  char   *label;
  int64_t cost_minor;     /* what it costs the shop, for one tool */
  bool    is_per_tool;    /* else once for the order */
} EmExtra;

typedef struct
{
  char    *text[EM_N_QUOTE_TEXT];
  EmUnits  units;            /* shown and read in */
  EmState  state;
  double   hardness_hrc;     /* of the tool; NaN: catalogue's middle */
  double   section_mm;       /* thickness of steel at the weld, for preheat; NaN: unknown */
  bool     has_preheat;      /* the office decided: overrides the advice */
  EmChoice preheat;
  int32_t  n_tools;          /* identical tools, ≥ 1 */
  int32_t  n_breaks;
  int32_t  break_tools[EM_BREAK_MAX]; /* ascending; prices also shown for these */
  int64_t  learning_ppm;     /* Wright's rate; −1: the rate book's. 1,000,000: off */
  int64_t  margin_ppm, contingency_ppm, rush_ppm, discount_ppm; /* −1: the rate book's (rush, discount: none) */
  int32_t  validity_days;    /* −1: the rate book's */
  EmFinish finish;           /* default for features */
  bool     has_sent_rates;   /* a sent quote carries its rate book and metals (see file) */

  int32_t    n_features, cap_features;
  EmFeature *feature;
  int32_t    n_extras;
  EmExtra   *extra;
  int32_t    n_marks;
  EmMark    *mark;
  uint32_t   next_id;        /* higher than every id given so far; 0: they have run out, free ones are searched for */
} EmQuote;

extern const char *const em_quote_text_ids[EM_N_QUOTE_TEXT];
extern const char *const em_state_ids[EM_N_STATE];
extern const char *const em_mark_ids[EM_N_MARK];

void     em_quote_init (EmQuote *out_quote);
void     em_quote_clear (EmQuote *quote);
EmStatus em_quote_copy (const EmQuote *quote, EmQuote *out_copy);
bool     em_quote_equal (const EmQuote *a, const EmQuote *b);
EmStatus em_quote_set_text (EmQuote *quote, EmQuoteText which, const char *text);

/* Moves *feature (contents taken, even on failure) to position at; gives it an id when
 * its id is 0 or already used. */
EmStatus em_quote_insert_take (EmQuote *quote, int32_t at, EmFeature *feature);
/* Removes the feature at index into *out_feature, or frees it when NULL. */
void     em_quote_remove (EmQuote *quote, int32_t index, EmFeature *out_feature);
void     em_quote_move (EmQuote *quote, int32_t from, int32_t to);
int32_t  em_quote_find (const EmQuote *quote, uint32_t feature_id); /* index or −1 */
/* What next_id becomes when id is given. */
uint32_t em_quote_next_id (uint32_t next_id, uint32_t id);

/* Takes the strings of *mark / *extra. */
EmStatus em_quote_add_mark_take (EmQuote *quote, EmMark *mark);
void     em_quote_clear_marks (EmQuote *quote);
EmStatus em_quote_add_extra_take (EmQuote *quote, EmExtra *extra);
void     em_quote_remove_extra (EmQuote *quote, int32_t index);

/* Limits of the quote's own numbers (not of its features). fault.field: "tools", "break", "learning",
 * "margin", "contingency", "rush", "discount", "validity", "hardness", "section". */
EmStatus em_quote_check (const EmQuote *quote, EmFault *out_fault);
