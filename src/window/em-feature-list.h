/* em-feature-list: features as a list model: an item for each, the same one as long as its feature stays.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include <gio/gio.h>
#include <stdint.h>

G_BEGIN_DECLS

#define EM_TYPE_FEATURE_ITEM (em_feature_item_get_type ())
G_DECLARE_FINAL_TYPE (EmFeatureItem, em_feature_item, EM, FEATURE_ITEM, GObject)

uint32_t em_feature_item_get_id (EmFeatureItem *self);

#define EM_TYPE_FEATURE_LIST (em_feature_list_get_type ())
G_DECLARE_FINAL_TYPE (EmFeatureList, em_feature_list, EM, FEATURE_LIST, GObject)

EmFeatureList *em_feature_list_new  (void);
/* Takes over which features there are, in which order; tells of no more than came, went or moved. */
void           em_feature_list_show (EmFeatureList *self, const uint32_t *ids, guint n);
/* The feature at a position below the length. */
uint32_t       em_feature_list_get_id (EmFeatureList *self, guint position);

G_END_DECLS
