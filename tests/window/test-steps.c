/* test-steps: a way back and forth over numbers. Expectations follow from what em-steps.h promises.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-steps.h"
#include "../core/em-test-main.h"

static int n_freed;

static void
free_number (gpointer number)
{
  n_freed++;
  g_free (number);
}

static void
add (EmSteps *steps, guint64 key, int number)
{
  int *held = g_new (int, 1);

  *held = number;
  em_steps_add_take (steps, key, held, 100);
}

/* What is gone by, or 0 where there is nothing that way. */
static int
go (EmSteps *steps, EmStepWay way)
{
  int *peeked = em_steps_peek (steps, way), *held = em_steps_go (steps, way);

  ck_assert_ptr_eq (peeked, held);
  return held != NULL ? *held : 0;
}

START_TEST (test_back_and_forth)
{
  EmSteps *steps = em_steps_new (free_number);

  n_freed = 0;
  ck_assert_int_eq (go (steps, EM_STEP_BACK), 0);
  for (int i = 1; i <= 3; i++)
    add (steps, 0, i);
  ck_assert_int_eq (go (steps, EM_STEP_FORTH), 0);
  ck_assert_int_eq (go (steps, EM_STEP_BACK), 3);
  ck_assert_int_eq (go (steps, EM_STEP_BACK), 2);
  ck_assert_int_eq (go (steps, EM_STEP_FORTH), 2);
  /* A new step takes the place of what was undone. */
  add (steps, 0, 4);
  ck_assert_int_eq (n_freed, 1);
  ck_assert_int_eq (go (steps, EM_STEP_FORTH), 0);
  ck_assert_int_eq (go (steps, EM_STEP_BACK), 4);
  ck_assert_int_eq (go (steps, EM_STEP_BACK), 2);
  ck_assert_int_eq (go (steps, EM_STEP_BACK), 1);
  ck_assert_int_eq (go (steps, EM_STEP_BACK), 0);
  em_steps_free (steps);
  ck_assert_int_eq (n_freed, 4);
}
END_TEST

/* One key in a row is one step; not over a break, a step back, a saved state or another key, and never key 0. */
START_TEST (test_joining)
{
  EmSteps *steps = em_steps_new (free_number);

  ck_assert (!em_steps_joins (steps, 7));
  add (steps, 7, 1);
  ck_assert (em_steps_joins (steps, 7) && !em_steps_joins (steps, 8));
  em_steps_break (steps);
  ck_assert (!em_steps_joins (steps, 7));
  add (steps, 7, 2);
  em_steps_mark_saved (steps);
  ck_assert (!em_steps_joins (steps, 7));
  add (steps, 7, 3);
  ck_assert (em_steps_joins (steps, 7));
  add (steps, 7, 4);
  go (steps, EM_STEP_BACK);
  ck_assert (!em_steps_joins (steps, 7));
  add (steps, 0, 5);
  ck_assert (!em_steps_joins (steps, 0));
  em_steps_free (steps);
}
END_TEST

START_TEST (test_saved)
{
  EmSteps *steps = em_steps_new (free_number);

  ck_assert (em_steps_is_saved (steps));   /* nothing done yet */
  add (steps, 0, 1);
  ck_assert (!em_steps_is_saved (steps));
  em_steps_mark_saved (steps);
  add (steps, 0, 2);
  go (steps, EM_STEP_BACK);
  ck_assert (em_steps_is_saved (steps));
  go (steps, EM_STEP_BACK);
  ck_assert (!em_steps_is_saved (steps));
  /* No step leads to it any more. */
  add (steps, 0, 3);
  ck_assert (!em_steps_is_saved (steps));
  em_steps_mark_saved (steps);
  em_steps_unmark_saved (steps);
  ck_assert (!em_steps_is_saved (steps));
  em_steps_free (steps);
}
END_TEST

/* Of 1, 2, 3, 4 with 4 undone, saved after so many steps: what is dropped is not met again, and a saved state on its far side never. */
static const struct { int saved_after; EmStepWay way; int back, forth; int saved_is_present; } drops[] =
{
  { 3, EM_STEP_BACK, 2, 4, 1 }, { 2, EM_STEP_BACK, 2, 4, 0 }, { 1, EM_STEP_BACK, 2, 4, 0 },
  { 3, EM_STEP_FORTH, 3, 0, 1 }, { 4, EM_STEP_FORTH, 3, 0, 0 }, { 2, EM_STEP_FORTH, 3, 0, 0 },
};

START_TEST (test_dropping)
{
  for (gsize i = 0; i < G_N_ELEMENTS (drops); i++)
    {
      EmSteps *steps = em_steps_new (free_number);

      for (int n = 1; n <= 4; n++)
        {
          add (steps, 0, n);
          if (n == drops[i].saved_after)
            em_steps_mark_saved (steps);
        }
      go (steps, EM_STEP_BACK);
      n_freed = 0;
      em_steps_drop (steps, drops[i].way);
      ck_assert_int_eq (n_freed, 1);
      ck_assert_msg (em_steps_is_saved (steps) == drops[i].saved_is_present, "row %d: saved", (int) i);
      ck_assert_msg (go (steps, EM_STEP_FORTH) == drops[i].forth, "row %d: forth", (int) i);
      if (drops[i].forth != 0)
        go (steps, EM_STEP_BACK);
      ck_assert_msg (go (steps, EM_STEP_BACK) == drops[i].back, "row %d: back", (int) i);
      /* Saved before the gap it is not met behind it; on this side of it, it is. */
      ck_assert_msg (em_steps_is_saved (steps) == (drops[i].saved_after == 2 && drops[i].way == EM_STEP_FORTH), "row %d: on the way", (int) i);
      em_steps_free (steps);
    }
  EmSteps *empty = em_steps_new (free_number);
  em_steps_drop (empty, EM_STEP_BACK);
  em_steps_drop (empty, EM_STEP_FORTH);
  ck_assert (em_steps_is_saved (empty));
  em_steps_free (empty);
}
END_TEST

/* A score of steps stays whatever they take; with room for 30 of them, 30 stay. */
START_TEST (test_forgetting)
{
  static const struct { gsize room; int kept; } rows[] = { { 1, 20 }, { 3000, 30 }, { 100000, 50 } };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      EmSteps *steps = em_steps_new (free_number);
      int n = 0;

      em_steps_set_most (steps, rows[i].room);
      for (int number = 1; number <= 50; number++)
        add (steps, 0, number);
      while (go (steps, EM_STEP_BACK) != 0)
        n++;
      ck_assert_int_eq (n, rows[i].kept);
      em_steps_free (steps);
    }
}
END_TEST

EM_TEST_MAIN ("window: steps", test_back_and_forth, test_joining, test_saved, test_dropping, test_forgetting)
