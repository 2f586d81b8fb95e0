/* em-order: settings outside, wires inside, the next setting starting with the wire at hand.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-order.h"

#include <stdlib.h>
#include <string.h>

/* Keys hold a setting (10,000 at most), a machine (EM_MACHINE_MAX) and a wire number below 2²⁴. */
enum { DIGIT_BITS = 10, DIGITS = 1 << DIGIT_BITS, KEY_BITS = 50 };

/* One stop at one setting with one wire: sorted items [start, end). Runs of a setting lie together. */
typedef struct
{
  int32_t start, end;      /* in sorted */
  int32_t group, wire;
} Run;

typedef struct
{
  int32_t first_run, n_runs, n_left;
  bool    is_capped;
} Group;

/* The exact search: up to EXACT_ITEMS things to do (a setting of several wires, or all settings that take just one and
 * the same), over up to EXACT_WIRES wires. */
enum { EXACT_ITEMS = 8, EXACT_WIRES = 12, EXACT_STEPS = 20000 };

typedef struct
{
  uint32_t wires;      /* bit by place in Exact.wire */
  int32_t  group;      /* −1: all settings of the one wire */
} Item;

typedef struct
{
  int16_t changes;     /* between settings, fewest so far; −1: not reached */
  int8_t  item, from;  /* last item done, and the wire before it; −1: none */
} Reached;

typedef struct
{
  int32_t n_items, n_wires;
  Item    item[EXACT_ITEMS];
  int32_t start[EXACT_WIRES];                          /* of the wire in by_wire */
  Reached reached[1 << EXACT_ITEMS][EXACT_WIRES];      /* by items done and wire at hand */
} Exact;

struct EmOrderBuffers
{
  Exact        exact;
  int32_t      cap;
  EmOrderItem *sorted, *spare;
  Run         *run;
  Group       *group;
  int32_t     *by_wire;        /* runs in order of wire; of one wire, those alone in their setting first */
  int32_t     *wire_start;     /* by run: where its wire starts in by_wire */
  int32_t     *cursor, *open;  /* by that start: first run that may be left, and how many settings are */
  int32_t     *walk;           /* runs as visited */
};

void
em_order_room_init (EmOrderRoom *out_room)
{
  *out_room = (EmOrderRoom) { 0 };
}

static void
free_buffers (struct EmOrderBuffers *b)
{
  free (b->sorted);
  free (b->spare);
  free (b->run);
  free (b->group);
  free (b->by_wire);
  free (b->wire_start);
  free (b->cursor);
  free (b->open);
  free (b->walk);
  free (b);
}

void
em_order_room_clear (EmOrderRoom *room)
{
  if (room->buffers != NULL)
    free_buffers (room->buffers);
  em_order_room_init (room);
}

static bool
make_room (EmOrderRoom *room, int32_t n)
{
  struct EmOrderBuffers *b;
  size_t cap = (size_t) n + (size_t) n / 2 + 16;

  if (room->buffers != NULL && room->buffers->cap >= n)
    return true;
  b = calloc (1, sizeof *b);
  if (b == NULL)
    return false;
  b->cap = (int32_t) cap;
  b->sorted = malloc (cap * sizeof *b->sorted);
  b->spare = malloc (cap * sizeof *b->spare);
  b->run = malloc (cap * sizeof *b->run);
  b->group = malloc (cap * sizeof *b->group);
  b->by_wire = malloc (cap * sizeof *b->by_wire);
  b->wire_start = malloc (cap * sizeof *b->wire_start);
  b->cursor = malloc (cap * sizeof *b->cursor);
  b->open = malloc (cap * sizeof *b->open);
  b->walk = malloc (cap * sizeof *b->walk);
  if (b->sorted == NULL || b->spare == NULL || b->run == NULL || b->group == NULL || b->by_wire == NULL || b->wire_start == NULL || b->cursor == NULL
      || b->open == NULL || b->walk == NULL)
    {
      free_buffers (b);
      return false;
    }
  em_order_room_clear (room);
  room->buffers = b;
  return true;
}

static bool
is_same_setting (const EmOrderItem *a, const EmOrderItem *b)
{
  return a->setting != 0 && a->setting == b->setting && a->machine == b->machine;
}

/* What shared settings are sorted by: number, then machine, then wire; features of one wire keep their order. */
static uint64_t
key_of (const EmOrderItem *item)
{
  return ((uint64_t) (uint32_t) item->setting << 28) | ((uint64_t) item->machine << 24) | (uint64_t) item->wire;
}

/* One pass of a sort by digits, least first; each keeps the order of the one before. */
static void
sort_by_digit (const EmOrderItem *from, EmOrderItem *to, int32_t n, int shift)
{
  int32_t start[DIGITS + 1] = { 0 };

  for (int32_t i = 0; i < n; i++)
    start[((key_of (&from[i]) >> shift) & (DIGITS - 1)) + 1]++;
  for (int d = 0; d < DIGITS; d++)
    start[d + 1] += start[d];
  for (int32_t i = 0; i < n; i++)
    to[start[(key_of (&from[i]) >> shift) & (DIGITS - 1)]++] = from[i];
}

/* Items of shared settings to the front of sorted, by key; the rest behind them as they come. */
static void
sort_items (const EmOrderItem *items, int32_t n, EmOrderItem *sorted, EmOrderItem *spare)
{
  int32_t n_shared = 0, at;
  uint64_t differing = 0;
  EmOrderItem *from = sorted, *to = spare;

  for (int32_t i = 0; i < n; i++)
    if (items[i].setting != 0)
      {
        sorted[n_shared++] = items[i];
        differing |= key_of (&items[i]) ^ key_of (&sorted[0]);
      }
  for (int shift = 0; shift < KEY_BITS; shift += DIGIT_BITS)
    if ((differing >> shift) & (DIGITS - 1))
      {
        EmOrderItem *swap = from;

        sort_by_digit (from, to, n_shared, shift);
        from = to;
        to = swap;
      }
  if (from != sorted)
    memcpy (sorted, from, (size_t) n_shared * sizeof *sorted);
  at = n_shared;
  for (int32_t i = 0; i < n; i++)
    if (items[i].setting == 0)
      sorted[at++] = items[i];
}

static int32_t
find_runs (struct EmOrderBuffers *b, int32_t n, int32_t *out_groups)
{
  int32_t n_runs = 0, n_groups = 0;

  for (int32_t i = 0; i < n; i++)
    {
      bool same_setting = i > 0 && is_same_setting (&b->sorted[i - 1], &b->sorted[i]);

      if (!same_setting)
        b->group[n_groups++] = (Group) { .first_run = n_runs };
      if (!same_setting || b->sorted[i].wire != b->sorted[i - 1].wire)
        {
          b->run[n_runs++] = (Run) { .start = i, .group = n_groups - 1, .wire = b->sorted[i].wire };
          b->group[n_groups - 1].n_runs++;
        }
      b->run[n_runs - 1].end = i + 1;
      b->group[n_groups - 1].is_capped |= b->sorted[i].is_capped;
    }
  *out_groups = n_groups;
  return n_runs;
}

/* Runs of one wire, those alone in their setting or those that are not, appended to by_wire. Returns the next wire up. */
static int32_t
append_wire (struct EmOrderBuffers *b, int32_t n_runs, int32_t wire, bool is_alone, int32_t *at)
{
  int32_t next = INT32_MAX;

  for (int32_t i = 0; i < n_runs; i++)
    if (b->run[i].wire == wire)
      {
        if ((b->group[b->run[i].group].n_runs == 1) == is_alone)
          b->by_wire[(*at)++] = i;
      }
    else if (b->run[i].wire > wire && b->run[i].wire < next)
      next = b->run[i].wire;
  return next;
}

/* Wires number few, so a pass or two for each is quicker than a general sort. */
static void
sort_by_wire (struct EmOrderBuffers *b, int32_t n_runs)
{
  int32_t at = 0, wire = INT32_MAX;

  for (int32_t i = 0; i < n_runs; i++)
    wire = b->run[i].wire < wire ? b->run[i].wire : wire;
  while (at < n_runs)
    {
      int32_t start = at, next;

      append_wire (b, n_runs, wire, true, &at);
      next = append_wire (b, n_runs, wire, false, &at);
      for (int32_t k = start; k < at; k++)
        b->wire_start[b->by_wire[k]] = start;
      b->cursor[start] = start;
      b->open[start] = at - start;
      wire = next;
    }
}

static bool
is_open (const struct EmOrderBuffers *b, int32_t run)
{
  return b->group[b->run[run].group].n_left > 0;
}

/* A setting not yet visited that can start with the wire of run: one that needs only that wire before one with more. −1: none. */
static int32_t
find_next (struct EmOrderBuffers *b, int32_t run, int32_t n_runs)
{
  int32_t start = b->wire_start[run], *cursor = &b->cursor[start];

  while (*cursor < n_runs && b->wire_start[b->by_wire[*cursor]] == start && !is_open (b, b->by_wire[*cursor]))
    (*cursor)++;
  return *cursor < n_runs && b->wire_start[b->by_wire[*cursor]] == start ? b->by_wire[*cursor] : -1;
}

/* Which run of a setting to end with: one whose wire another open setting can start with. */
static int32_t
choose_last (struct EmOrderBuffers *b, const Group *group, int32_t first, int32_t n_runs)
{
  int32_t last = -1;

  for (int32_t r = group->first_run; r < group->first_run + group->n_runs; r++)
    if (r != first)
      {
        if (find_next (b, r, n_runs) >= 0)
          return r;
        last = r;
      }
  return last;
}

/* Visits one setting starting with run first; returns the run it ends with. */
static int32_t
visit_setting (struct EmOrderBuffers *b, int32_t first, int32_t n_runs, int32_t *at)
{
  Group *group = &b->group[b->run[first].group];
  int32_t last;

  group->n_left = 0;
  for (int32_t r = group->first_run; r < group->first_run + group->n_runs; r++)
    b->open[b->wire_start[r]]--;
  last = choose_last (b, group, first, n_runs);
  b->walk[(*at)++] = first;
  for (int32_t r = group->first_run; r < group->first_run + group->n_runs; r++)
    if (r != first && r != last)
      b->walk[(*at)++] = r;
  if (last >= 0)
    b->walk[(*at)++] = last;
  return last >= 0 ? last : first;
}

/* A fresh start: the setting that begins at a wire with an odd number of open ends, where a chain must begin or end. */
static int32_t
find_start (const struct EmOrderBuffers *b, int32_t n_runs)
{
  int32_t any = -1;

  for (int32_t k = 0; k < n_runs; k++)
    {
      int32_t run = b->by_wire[k];

      if (!is_open (b, run) || b->group[b->run[run].group].n_runs == 1)
        continue;
      if (b->open[b->wire_start[run]] % 2 == 1)
        return run;
      if (any < 0)
        any = run;
    }
  for (int32_t k = 0; any < 0 && k < n_runs; k++)
    if (is_open (b, b->by_wire[k]))
      any = b->by_wire[k];
  return any;
}

static void
walk_all (struct EmOrderBuffers *b, int32_t n_runs)
{
  int32_t at = 0, here = -1;

  while (at < n_runs)
    {
      int32_t next = here >= 0 ? find_next (b, here, n_runs) : -1;

      if (next < 0)
        next = find_start (b, n_runs);
      here = visit_setting (b, next, n_runs, &at);
    }
}

/* ---- the fewest, where there is little to try ---- */

static int32_t
wire_place (Exact *exact, int32_t start)
{
  for (int32_t i = 0; i < exact->n_wires; i++)
    if (exact->start[i] == start)
      return i;
  if (exact->n_wires == EXACT_WIRES)
    return -1;
  exact->start[exact->n_wires] = start;
  return exact->n_wires++;
}

static bool
add_item (struct EmOrderBuffers *b, int32_t group)
{
  Exact *exact = &b->exact;
  const Group *g = &b->group[group];
  Item item = { .group = g->n_runs > 1 ? group : -1 };

  for (int32_t r = g->first_run; r < g->first_run + g->n_runs; r++)
    {
      int32_t place = wire_place (exact, b->wire_start[r]);

      if (place < 0)
        return false;
      item.wires |= 1u << place;
    }
  if (item.group < 0)
    for (int32_t i = 0; i < exact->n_items; i++)
      if (exact->item[i].group < 0 && exact->item[i].wires == item.wires)
        return true;
  if (exact->n_items == EXACT_ITEMS)
    return false;
  exact->item[exact->n_items++] = item;
  return true;
}

static bool
list_items (struct EmOrderBuffers *b, int32_t n_groups)
{
  Exact *exact = &b->exact;

  exact->n_items = exact->n_wires = 0;
  for (int32_t g = 0; g < n_groups; g++)
    if (!add_item (b, g))
      return false;
  return (exact->n_items << exact->n_items) * exact->n_wires <= EXACT_STEPS;
}

static void
reach (Exact *exact, uint32_t done, int32_t item, int32_t from, int32_t to, int changes)
{
  Reached *reached = &exact->reached[done | 1u << item][to];

  if (reached->changes < 0 || changes < reached->changes)
    *reached = (Reached) { .changes = (int16_t) changes, .item = (int8_t) item, .from = (int8_t) from };
}

/* Every way to go on from a wire at hand (−1: none yet) with an item: starting with the wire at hand is never worse than
 * not, and it ends with any other of its wires. */
static void
go_on (Exact *exact, uint32_t done, int32_t from, int32_t item, int changes)
{
  uint32_t wires = exact->item[item].wires;
  bool is_joined = from >= 0 && (wires >> from & 1);
  bool is_single = (wires & (wires - 1)) == 0;

  for (int32_t to = 0; to < exact->n_wires; to++)
    if ((wires >> to & 1) && (is_single || !is_joined || to != from))
      reach (exact, done, item, from, to, changes + !is_joined);
}

static void
search (Exact *exact)
{
  uint32_t all = (1u << exact->n_items) - 1;

  for (uint32_t done = 0; done <= all; done++)
    for (int32_t w = 0; w < exact->n_wires; w++)
      exact->reached[done][w] = (Reached) { .changes = -1, .item = -1, .from = -1 };
  for (int32_t item = 0; item < exact->n_items; item++)
    go_on (exact, 0, -1, item, -1);
  for (uint32_t done = 1; done < all; done++)
    for (int32_t w = 0; w < exact->n_wires; w++)
      if (exact->reached[done][w].changes >= 0)
        for (int32_t item = 0; item < exact->n_items; item++)
          if (!(done >> item & 1))
            go_on (exact, done, w, item, exact->reached[done][w].changes);
}

/* Runs of a setting in reverse: the one that ends with wire `to` first, the one that starts with `from` last. */
static int32_t
write_group_back (struct EmOrderBuffers *b, int32_t group, int32_t from, int32_t to, int32_t at)
{
  const Exact *exact = &b->exact;
  const Group *g = &b->group[group];
  int32_t first = -1, last = -1;

  for (int32_t r = g->first_run; r < g->first_run + g->n_runs; r++)
    {
      last = b->wire_start[r] == exact->start[to] ? r : last;
      first = from >= 0 && from != to && b->wire_start[r] == exact->start[from] ? r : first;
    }
  b->walk[--at] = last;
  for (int32_t r = g->first_run + g->n_runs - 1; r >= g->first_run; r--)
    if (r != first && r != last)
      b->walk[--at] = r;
  if (first >= 0)
    b->walk[--at] = first;
  return at;
}

static void
walk_exact (struct EmOrderBuffers *b, int32_t n_runs)
{
  Exact *exact = &b->exact;
  uint32_t done = (1u << exact->n_items) - 1;
  int32_t at = n_runs, to = -1;

  search (exact);
  for (int32_t w = 0; w < exact->n_wires; w++)
    if (exact->reached[done][w].changes >= 0 && (to < 0 || exact->reached[done][w].changes < exact->reached[done][to].changes))
      to = w;
  while (done != 0)
    {
      const Reached reached = exact->reached[done][to];
      const Item *item = &exact->item[reached.item];

      if (item->group >= 0)
        at = write_group_back (b, item->group, reached.from, to, at);
      else
        for (int32_t k = n_runs - 1; k >= 0; k--)
          if (b->wire_start[b->by_wire[k]] == exact->start[to] && b->group[b->run[b->by_wire[k]].group].n_runs == 1)
            b->walk[--at] = b->by_wire[k];
      done &= ~(1u << reached.item);
      to = reached.from;
    }
}

/* Nothing to join: every setting takes one wire, so runs in order of wire are the fewest changes there can be. */
static void
walk_by_wire (struct EmOrderBuffers *b, int32_t n_runs)
{
  memcpy (b->walk, b->by_wire, (size_t) n_runs * sizeof *b->walk);
}

static int32_t
fill_visits (const struct EmOrderBuffers *b, int32_t n_runs, EmVisit *out_visits)
{
  int32_t at = 0, changes = 0, setting = 0, last_group = -1, last_wire = -1;

  for (int32_t i = 0; i < n_runs; i++)
    {
      const Run *run = &b->run[b->walk[i]];
      bool is_new_setting = run->group != last_group, is_new_wire = i == 0 || run->wire != last_wire;

      setting += is_new_setting;
      changes += i > 0 && is_new_wire;
      for (int32_t k = run->start; k < run->end && out_visits != NULL; k++)
        out_visits[at++] = (EmVisit) { .feature = b->sorted[k].feature, .setting = setting,
                                       .is_new_setting = is_new_setting && k == run->start, .is_new_wire = is_new_wire && k == run->start };
      last_group = run->group;
      last_wire = run->wire;
    }
  return changes;
}

EmStatus
em_order_solve (EmOrderRoom *room, const EmOrderItem *items, int32_t n, EmVisit *out_visits,
                int32_t *out_settings, int32_t *out_changes)
{
  int32_t n_groups, n_runs, capped = 0;
  struct EmOrderBuffers *b;

  if (!make_room (room, n))
    return EM_FAULT_MEMORY;
  b = room->buffers;
  sort_items (items, n, b->sorted, b->spare);
  n_runs = find_runs (b, n, &n_groups);
  sort_by_wire (b, n_runs);
  for (int32_t g = 0; g < n_groups; g++)
    {
      b->group[g].n_left = 1;
      capped += b->group[g].is_capped;
    }
  if (n_runs == n_groups)
    walk_by_wire (b, n_runs);
  else if (list_items (b, n_groups))
    walk_exact (b, n_runs);
  else
    walk_all (b, n_runs);
  *out_changes = fill_visits (b, n_runs, out_visits);
  *out_settings = n_groups + capped;
  return EM_OK;
}
