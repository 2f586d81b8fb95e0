/* em-document-edit: everything an office does to a quote, one function each.
 *
 * All are em_document_edit_* underneath: a step back, a new price and "changed". Numbers
 * of features and quotes go by a table, so that an entry is a row and not a function.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-document.h"
#include "em-notes.h"

G_BEGIN_DECLS

/* Inputs all kinds share. Lengths mm; NaN: absent. */
typedef enum
{
  EM_FEATURE_COUNT, EM_FEATURE_STOCK, EM_FEATURE_CLEARANCE, EM_FEATURE_SLOT_WIDTH, EM_FEATURE_SLOT_DEPTH, EM_FEATURE_SETTING,
  EM_FEATURE_SAFETY_LAYERS, EM_FEATURE_WIRE,
  EM_FEATURE_NEAR, EM_FEATURE_ACCESS, EM_FEATURE_MELT_OUT, EM_FEATURE_CAP, EM_FEATURE_FINISH,   /* choices */
  EM_N_FEATURE_NUMBER
} EmFeatureNumber;

typedef enum
{
  EM_QUOTE_TOOLS, EM_QUOTE_HARDNESS, EM_QUOTE_SECTION, EM_QUOTE_VALIDITY,
  EM_QUOTE_MARGIN, EM_QUOTE_CONTINGENCY, EM_QUOTE_RUSH, EM_QUOTE_DISCOUNT, EM_QUOTE_LEARNING,  /* ppm; NaN: the rate book's */
  EM_QUOTE_FEATURE_FINISH, EM_QUOTE_PREHEAT,        /* choices; preheat: EmChoice */
  EM_N_QUOTE_NUMBER
} EmQuoteNumber;

typedef enum { EM_LIKELY, EM_LOW, EM_HIGH } EmBound3;

typedef struct
{
  const char    *id;      /* fault field, and the name notes know it by */
  EmQuantityType quantity;
  double         low, high;
} EmNumberRow;

extern const EmNumberRow em_feature_numbers[EM_N_FEATURE_NUMBER];
extern const EmNumberRow em_quote_numbers[EM_N_QUOTE_NUMBER];

double   em_feature_get_number (const EmFeature *feature, EmFeatureNumber which);
double   em_quote_get_number   (const EmQuote *quote, EmQuoteNumber which);

gboolean em_document_set_text     (EmDocument *self, EmQuoteText which, const char *text);
/* A machine, any of a process, or both NULL: whichever is cheapest. One change. */
gboolean em_document_set_machine  (EmDocument *self, const char *machine_id, const char *process_id);
gboolean em_document_set_number   (EmDocument *self, EmQuoteNumber which, double value);
gboolean em_document_set_units    (EmDocument *self, EmUnits units);
/* Sent: keeps the rates and metals with the quote. Draft: back to the shop's present ones. */
gboolean em_document_set_state    (EmDocument *self, EmState state);
gboolean em_document_set_breaks   (EmDocument *self, const int32_t *tools, int32_t n);
gboolean em_document_add_extra    (EmDocument *self, const char *label, int64_t cost_minor, gboolean is_per_tool);
gboolean em_document_set_extra    (EmDocument *self, int32_t index, const char *label, int64_t cost_minor, gboolean is_per_tool);
gboolean em_document_remove_extra (EmDocument *self, int32_t index);

gboolean em_document_set_value    (EmDocument *self, int32_t index, int field, EmBound3 bound, double value);
/* "2 x 0.4", "0.3-0.5": all of a reading in one step. */
gboolean em_document_set_reading  (EmDocument *self, int32_t index, int field, const EmReading *reading);
gboolean em_document_set_feature_number (EmDocument *self, int32_t index, EmFeatureNumber which, double value);
gboolean em_document_set_feature_text   (EmDocument *self, int32_t index, EmFeatureText which, const char *text);
gboolean em_document_set_feature_machine (EmDocument *self, int32_t index, const char *machine_id, const char *process_id);
/* What the notes said of its sizes is right: they count as entered from now on, and later readings leave them alone. */
gboolean em_document_accept (EmDocument *self, int32_t index);
/* Whether there is a size from the notes that nobody accepted or corrected. */
gboolean em_feature_is_read (const EmFeature *feature);
/* index −1: for the whole quote, which sets the features' own wires aside, as a comparison over it prices it. Else for that
 * feature alone; the quote's own wire means none of its own. One step. */
gboolean em_document_choose_wire  (EmDocument *self, int32_t index, const char *filler_id);
gboolean em_document_set_override (EmDocument *self, int32_t index, gboolean has_override, int64_t minor);
gboolean em_document_set_actual   (EmDocument *self, int32_t index, const EmActual *actual);

/* Each selects what it made. */
gboolean em_document_insert       (EmDocument *self, int32_t at, const EmKind *kind);
gboolean em_document_duplicate    (EmDocument *self, int32_t index);
gboolean em_document_remove       (EmDocument *self, int32_t index);
gboolean em_document_move         (EmDocument *self, int32_t from, int32_t to);
char    *em_document_copy_xml     (EmDocument *self, int32_t index);
gboolean em_document_paste_xml    (EmDocument *self, int32_t at, const char *xml, GError **error);

/* Marks follow the words when text is typed before or within them. */
gboolean em_document_set_notes    (EmDocument *self, const char *text);
/* Reads the notes into proposals; the document keeps the reading for its questions until the next. */
void     em_document_apply_reading (EmDocument *self, EmReadResult *reading);
gboolean em_document_answer       (EmDocument *self, EmReadResult *reading, guint question, int answer);

G_END_DECLS
