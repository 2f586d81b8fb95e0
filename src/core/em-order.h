/* em-order: the order of work with fewest settings and wire changes.
 *
 * Private to the core room. A tool is set up, all that can be reached in that setting is
 * welded, and then it is turned. Features welded on two machines cannot share a setting.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-cost.h"

typedef struct
{
  int32_t feature;     /* index */
  int32_t setting;     /* as entered; 0: its own */
  int32_t machine;
  int32_t wire;        /* any number that tells filler and size together, ≥ 0 */
  bool    is_capped;
} EmOrderItem;

/* Room that em_order_solve works in; kept between calls so that it need not be found again. */
typedef struct
{
  struct EmOrderBuffers *buffers;
} EmOrderRoom;

void     em_order_room_init (EmOrderRoom *out_room);
void     em_order_room_clear (EmOrderRoom *room);

/* Settings in which all of one setting on one machine is done together; a setting with a capped feature takes one more, shared.
 * Wires are changed least within a setting, and the next setting is one that starts with the wire at hand where there is one:
 * the fewest there can be when no setting takes more than one wire or few
 * settings do (eight, or less the more wires there are), else a greedy walk. The first wire is no change.
 * items: n of them, in the order of entry. out_visits (n) may be NULL. EM_FAULT_MEMORY leaves the outputs untouched. */
EmStatus em_order_solve (EmOrderRoom *room, const EmOrderItem *items, int32_t n, EmVisit *out_visits,
                         int32_t *out_settings, int32_t *out_changes);
