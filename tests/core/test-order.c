/* Checks of core/em-order against every possible order of small jobs.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-order.h"
#include "em-test-main.h"

#include <stdint.h>
#include <string.h>

enum { SETTINGS_MAX = 10, WIRES = 4 };

/* A job as sets of wires, one for each setting. */
typedef struct
{
  int n;
  unsigned wires[SETTINGS_MAX];
} Job;

/* Fewest changes from here: every next setting, every wire of it first, every wire of it last. known holds what was found. */
static int
fewest (const Job *job, unsigned done, int at, int known[][WIRES + 1])
{
  int best = 1000;

  if (done == (1u << job->n) - 1)
    return 0;
  if (known[done][at + 1] >= 0)
    return known[done][at + 1];
  for (int s = 0; s < job->n; s++)
    for (int first = 0; first < WIRES && !(done >> s & 1); first++)
      for (int last = 0; last < WIRES; last++)
        {
          int n_wires = __builtin_popcount (job->wires[s]), changes;

          if (!(job->wires[s] >> first & 1) || !(job->wires[s] >> last & 1) || (first == last) != (n_wires == 1))
            continue;
          changes = n_wires - 1 + (at >= 0 && at != first) + fewest (job, done | 1u << s, last, known);
          best = changes < best ? changes : best;
        }
  known[done][at + 1] = best;
  return best;
}

static int32_t
items_of (const Job *job, EmOrderItem *items)
{
  int32_t n = 0;

  for (int w = WIRES - 1; w >= 0; w--)
    for (int s = 0; s < job->n; s++)
      if (job->wires[s] >> w & 1)
        {
          items[n] = (EmOrderItem) { .feature = n, .setting = s + 1, .wire = w };
          n++;
        }
  return n;
}

/* Visits are whole settings, each feature once, and count what they say they do. */
static void
check_visits (const EmOrderItem *items, int32_t n, const EmVisit *visits, int32_t settings, int32_t changes)
{
  bool seen[SETTINGS_MAX * WIRES] = { false }, was_open[16] = { false };
  int32_t counted_settings = 0, counted_changes = 0;

  for (int32_t i = 0; i < n; i++)
    {
      const EmOrderItem *item = &items[visits[i].feature];
      bool is_first = i == 0;

      ck_assert (!seen[visits[i].feature]);
      seen[visits[i].feature] = true;
      if (visits[i].is_new_setting)
        {
          ck_assert_msg (!was_open[item->setting], "setting %d is taken up twice", item->setting);
          was_open[item->setting] = true;
          counted_settings++;
        }
      else
        ck_assert_int_eq (item->setting, items[visits[i - 1].feature].setting);
      ck_assert_int_eq (visits[i].setting, counted_settings);
      ck_assert_int_eq (visits[i].is_new_wire, is_first || item->wire != items[visits[i - 1].feature].wire);
      counted_changes += !is_first && visits[i].is_new_wire;
    }
  ck_assert_int_eq (counted_settings, settings);
  ck_assert_int_eq (counted_changes, changes);
}

static uint32_t
draw (uint32_t *state)
{
  *state = *state * 1664525u + 1013904223u;
  return *state >> 8;
}

typedef struct { int several, missed, worst; } Tally;

static int known[1 << SETTINGS_MAX][WIRES + 1];

static void
try_job (EmOrderRoom *room, const Job *job, Tally *tally)
{
  EmOrderItem items[SETTINGS_MAX * WIRES];
  EmVisit visits[SETTINGS_MAX * WIRES];
  int32_t n = items_of (job, items), settings, changes;
  int best;

  memset (known, -1, sizeof known);
  ck_assert_int_eq (em_order_solve (room, items, n, visits, &settings, &changes), EM_OK);
  ck_assert_int_eq (settings, job->n);
  check_visits (items, n, visits, settings, changes);
  best = fewest (job, 0, -1, known);
  ck_assert_int_ge (changes, best);
  tally->several++;
  tally->missed += changes > best;
  tally->worst = changes - best > tally->worst ? changes - best : tally->worst;
}

/* Seeded random jobs over four wires, each setting taking any of them; every fourth job takes one wire a setting. */
static Tally
try_jobs (int n_jobs, int n_low, int n_high)
{
  uint32_t state = 7;
  Tally tally = { 0 };
  EmOrderRoom room;

  em_order_room_init (&room);
  for (int trial = 0; trial < n_jobs; trial++)
    {
      Job job = { .n = n_low + (int) (draw (&state) % (unsigned) (n_high - n_low + 1)) };

      for (int s = 0; s < job.n; s++)
        job.wires[s] = trial % 4 == 0 ? 1u << draw (&state) % WIRES : 1 + draw (&state) % ((1u << WIRES) - 1);
      try_job (&room, &job, &tally);
    }
  em_order_room_clear (&room);
  return tally;
}

/* Up to eight settings: the fewest changes there are, found here by trying every order. */
START_TEST (test_few_settings_are_exact)
{
  Tally tally = try_jobs (2000, 1, 8);

  ck_assert_int_eq (tally.missed, 0);
}
END_TEST

/* Nine and ten settings may be walked greedily: never more than two changes above the fewest on these. */
START_TEST (test_many_settings_are_near)
{
  Tally tally = try_jobs (300, 9, 10);

  ck_assert_msg (tally.worst <= 2, "%d of %d above the fewest, by up to %d", tally.missed, tally.several, tally.worst);
}
END_TEST

/* Two machines cannot share a setting; a feature with no setting number has its own; capped ones take one more for the setting. */
START_TEST (test_settings)
{
  const EmOrderItem items[] =
  {
    { .feature = 0, .setting = 1, .machine = 0, .wire = 3 },
    { .feature = 1, .setting = 1, .machine = 1, .wire = 3 },
    { .feature = 2, .setting = 0, .machine = 0, .wire = 3 },
    { .feature = 3, .setting = 0, .machine = 0, .wire = 3, .is_capped = true },
    { .feature = 4, .setting = 2, .machine = 0, .wire = 3, .is_capped = true },
    { .feature = 5, .setting = 2, .machine = 0, .wire = 3, .is_capped = true },
  };
  EmOrderRoom room;
  int32_t settings, changes;

  em_order_room_init (&room);
  ck_assert_int_eq (em_order_solve (&room, items, 6, NULL, &settings, &changes), EM_OK);
  ck_assert_int_eq (settings, 5 + 2);
  ck_assert_int_eq (changes, 0);
  ck_assert_int_eq (em_order_solve (&room, items, 0, NULL, &settings, &changes), EM_OK);
  ck_assert_int_eq (settings, 0);
  ck_assert_int_eq (changes, 0);
  em_order_room_clear (&room);
}
END_TEST

EM_TEST_MAIN ("core: order", test_few_settings_are_exact, test_many_settings_are_near, test_settings)
