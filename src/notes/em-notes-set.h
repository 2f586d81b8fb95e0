/* em-notes-set: one read field into a feature or quote.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-notes.h"

G_BEGIN_DECLS

/* Fields of feature 0 that live in the quote; NULL-terminated. */
extern const char *const em_general_fields[];

/* Puts a field of the kind or a shared input into the feature; unknown fields do nothing. */
void     em_feature_set_read     (EmFeature *feature, const EmReadField *field, EmOrigin origin);
void     em_feature_reset_shared (EmFeature *feature, const char *field);
/* Keeps id, shared inputs and values that the new kind has under the same name. */
void     em_feature_change_kind  (EmFeature *feature, const EmKind *kind);
/* Whether the office typed any of its values. */
gboolean em_feature_has_entered  (const EmFeature *feature);

void     em_quote_set_general    (EmQuote *quote, const EmReadField *field);
void     em_quote_reset_general  (EmQuote *quote, const char *field);
/* Whether the quote still has the default there, so that a first reading may fill it. */
gboolean em_quote_lacks_general  (const EmQuote *quote, const char *field);

/* First and one past the last index of a feature's fields. */
void     em_read_result_range    (const EmReadResult *result, int feature, guint *out_first, guint *out_last);

void     em_read_result_questions (const EmReadResult *result, int feature, guint *out_first, guint *out_last);

G_END_DECLS
