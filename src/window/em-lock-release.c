/* em-lock-release: taking away the lock beside a file, in a thread.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-lock-release.h"

static GMutex guard;
static GCond  settled;
static guint  n_going;   /* under guard */

static gpointer
release_in_thread (gpointer data)
{
  em_lock_free (data);
  g_mutex_lock (&guard);
  n_going--;
  g_cond_broadcast (&settled);
  g_mutex_unlock (&guard);
  return NULL;
}

void
em_lock_release_take (EmLock *lock)
{
  GThread *thread;

  if (lock == NULL)
    return;
  g_mutex_lock (&guard);
  n_going++;
  g_mutex_unlock (&guard);
  thread = g_thread_try_new ("lock", release_in_thread, lock, NULL);
  if (thread != NULL)
    g_thread_unref (thread);
  else
    release_in_thread (lock);
}

gboolean
em_lock_release_wait (guint milliseconds)
{
  gint64 end = g_get_monotonic_time () + milliseconds * G_TIME_SPAN_MILLISECOND;
  gboolean is_settled;

  g_mutex_lock (&guard);
  while (n_going > 0 && g_cond_wait_until (&settled, &guard, end))
    ;
  is_settled = n_going == 0;
  g_mutex_unlock (&guard);
  return is_settled;
}
