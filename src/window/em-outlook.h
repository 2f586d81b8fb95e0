/* em-outlook: what takes longer than a keystroke: every wire compared, the range of the price.
 *
 * Works in a thread on copies and lags behind the typing by a moment; emits "ready".
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-compare.h"
#include "em-document.h"
#include "em-range.h"

G_BEGIN_DECLS

#define EM_TYPE_OUTLOOK (em_outlook_get_type ())
G_DECLARE_FINAL_TYPE (EmOutlook, em_outlook, EM, OUTLOOK, GObject)

EmOutlook       *em_outlook_new         (EmDocument *document);
/* NULL until there is one; borrowed until the next "ready". */
const EmCompare *em_outlook_get_compare (EmOutlook *self);
/* Whether wires are compared for the selected feature alone instead of over the whole quote. */
void             em_outlook_set_for_feature (EmOutlook *self, gboolean is_for_feature);
gboolean         em_outlook_is_for_feature  (EmOutlook *self);
/* The feature the comparison is for; 0: the whole quote. */
uint32_t         em_outlook_get_feature (EmOutlook *self);
const EmRange   *em_outlook_get_range   (EmOutlook *self);
gboolean         em_outlook_is_busy     (EmOutlook *self);

G_END_DECLS
