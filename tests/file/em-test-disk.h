/* em-test-disk: a disk that fails when it is told to.
 *
 * Stands between the program under test and the C library: open, read, write, fsync, rename and their like are counted, and the
 * call with a given number fails with a given errno, as that call would, or is the last thing the program does. Only calls of the
 * thread that armed it count, and only while armed.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include <glib.h>

typedef enum
{
  EM_TEST_DISK_ONCE,     /* the one call; a write gets half its bytes out first, and then fails */
  EM_TEST_DISK_DEAD,     /* that and all after it, but for closing */
  EM_TEST_DISK_SHORT,    /* a read finds the end too early; other calls work */
  EM_TEST_DISK_KILL,     /* SIGKILL before the call */
} EmTestDiskMode;

/* nth counts from 0. */
void     em_test_disk_arm    (EmTestDiskMode mode, int nth, int error_number);
/* Whether anything was made to fail. */
gboolean em_test_disk_disarm (void);
/* Calls since the last arming, one letter each: o open, r read, w write, s fsync, c close, m rename, and others. */
const char *em_test_disk_calls (void);
