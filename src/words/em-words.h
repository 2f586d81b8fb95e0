/* em-words: codes into sentences, numbers into text, in one language at a time.
 *
 * The only room that turns the engine's codes into translated words. The program's
 * language comes from the locale; a paper's from its quote (em_words_push).
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-caution.h"
#include "em-compare.h"
#include "em-quote.h"
#include "em-trace.h"

#include <glib.h>

G_BEGIN_DECLS

/* Where the catalogs lie; once, before the first word. Without it everything is English. */
void em_words_init (const char *locale_dir);

/* Translates a core EM_N string; "" for NULL. Borrowed. */
const char *em_words (const char *text);

/* From here to the matching pop, translations and number formats are those of language ("en", "de", "es", "fr"; NULL or another: as they are).
 * Main thread only; nests. */
void em_words_push (const char *language);
void em_words_pop  (void);
/* "en", "de", "es" or "fr": the language in force. */
const char *em_words_language (void);

/* "2 · Edge nick (Gate insert) – Leg a: 0 mm was given, it should be between 0.01 mm and 50 mm." In units. quote may be NULL. */
char *em_words_fault (const EmFault *fault, const EmQuote *quote, EmUnits units);
char *em_words_fault_of (const EmFault *fault, const EmKind *kind, EmUnits units);  /* the same without the feature's name; kind may be NULL */
char *em_words_field (const char *field_id, const EmKind *kind);  /* label of any field id */

/* Locale's decimal mark, grouping; tabular. 12345.67 with ISO code: "12.345,67 EUR". */
char *em_words_money    (int64_t minor, const EmCurrency *currency);
char *em_words_money_bare (int64_t minor, const EmCurrency *currency);
/* An amount roughly known, with its code: in as many figures as leave three of price_minor (>= 0), without noughts for minor units. */
char *em_words_money_rough (int64_t minor, int64_t price_minor, const EmCurrency *currency);
/* A quantity with its unit in units. */
char *em_words_quantity (double value, EmQuantityType type, EmUnits units);
char *em_words_length   (double mm, EmUnits units, int decimals); /* worked out, so rounded: decimals of mm, one more of an inch */
char *em_words_wire     (double mm, EmUnits units); /* a wire's diameter, to hundredths of a millimetre or thousandths of an inch */
char *em_words_number   (double value, int decimals);
char *em_words_figure   (double value, int digits);  /* significant digits, trailing zeros dropped */
char *em_words_percent  (int64_t ppm);
char *em_words_duration (double seconds);   /* "2 h 05 min", "38 s" */
char *em_words_date     (const char *iso);
/* The other way: "2026-03-31", "31.3.2026", as em_words_date writes it, or a whole month or year, of which is_last asks for the last day.
 * FALSE when it is none of the calendar's. out_iso: g_free. */
gboolean em_words_read_date (const char *text, gboolean is_last, char **out_iso);
char *em_words_moment   (gint64 unix_s);    /* the local day as above, and "14:05"; "" for none of the calendar's */
char *em_words_mass     (double grams);
char *em_words_volume   (double mm3, EmUnits units);
char *em_words_term     (const EmTraceTerm *term, EmUnits units, const EmCurrency *currency);  /* "0.3 mm", "14.00 EUR", "56.00 EUR/h" */
const char *em_words_trace_name (const char *quantity);  /* "wire_length": "Wire used" */
const char *em_words_trace_of_money (EmMoney money);      /* "filler_cost": what a trace calls it */

const char *em_words_reason     (EmReason reason);
const char *em_words_caution    (EmCaution caution);
/* In two or three words. */
const char *em_words_caution_name (EmCaution caution);
const char *em_words_phase      (EmPhase phase);
const char *em_words_bound      (EmBound bound);
const char *em_words_access     (EmAccess access);
const char *em_words_finish     (EmFinish finish);
const char *em_words_state      (EmState state);
const char *em_words_near       (EmNear near);
const char *em_words_process    (EmProcess process);
const char *em_words_family     (EmFamily family);
char       *em_words_estimate   (const EmEstimate *estimate, const char *unit, int decimals); /* "about 290 °C" or "outside its limits (C)" */
char       *em_words_hardness      (const EmPairing *pairing);  /* "26 to 30 HRC nominal, up to about 49 by laser"; or NULL */
char       *em_words_base_hardness (const EmPairing *pairing);  /* "32 HRC", or NULL */
char       *em_words_constitution (const EmConstitution *point, gboolean is_wrc);  /* "Austenite and ferrite, about 9 % ferrite" */

/* German compounds with soft hyphens at their joints; NULL: none, or another language is in force. */
char *em_words_hyphenate (const char *text);

/* What will be done to a feature, in plain words for the customer: two or three sentences. */
char *em_words_feature (const EmQuote *quote, int32_t index, const EmFeatureCost *cost, const EmRates *rates, const EmCatalogue *catalogue);
char *em_words_feature_name (const EmQuote *quote, int32_t index);      /* "2 · Edge nick (Gate insert)" */
char *em_words_sizes   (const EmFeature *feature, EmUnits units);       /* "Length 10 mm, Leg a 0.5 mm" */
char *em_words_sizes_short (const EmFeature *feature, EmUnits units);   /* "l 10 · a 0.5 mm · β 3°" */
EmFinish em_words_finish_of (const EmQuote *quote, int32_t index);      /* never EM_FINISH_DEFAULT */
char *em_words_line    (const EmLine *line, const EmQuote *quote, const EmRates *rates);

G_END_DECLS
