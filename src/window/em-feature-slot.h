/* em-feature-slot: what an entry of the feature editor stands for, in the kind's table or in the one shared by all kinds.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-document-edit.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* One number of the kind's table or of the shared ones. */
typedef struct
{
  gboolean   is_shared;
  int        field;        /* index in the kind's table, or EmFeatureNumber */
  EmBound3   bound;
  GtkWidget *widget;       /* EmQuantityEntry or GtkDropDown */
  GtkWidget *box;          /* what is shown or hidden */
} EmSlot;

enum { GROUP_SIZE, GROUP_PLACE, GROUP_WELD, GROUP_PAPER, GROUP_AFTER, N_GROUP };

typedef struct
{
  EmFeatureNumber number;
  int             group;
  const char     *label;
  const char     *hint;     /* what an empty entry means */
} EmSharedRow;

extern const EmSharedRow em_shared_rows[];
extern const int         em_n_shared_rows;

/* Of a choice; NULL-terminated, valid until the next call. */
const char *const *em_shared_options (EmFeatureNumber number);
const char *const *em_field_options  (const EmField *field);

/* Its stable name; kind: of the feature. */
const char *em_slot_id       (const EmSlot *slot, const EmKind *kind);
double      em_slot_value    (const EmSlot *slot, const EmFeature *feature);
gboolean    em_slot_is_shown (const EmSlot *slot, const EmFeature *feature);
/* Where its value is from, or that it is still needed; "" keeps the line free, so that entries side by side stay in line. */
const char *em_slot_remark   (const EmSlot *slot, const EmFeature *feature);

G_END_DECLS
