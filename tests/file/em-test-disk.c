/* em-test-disk: a disk that fails when it is told to.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

/* What the C library's checked versions put in the way of definitions of our own. */
#undef _FORTIFY_SOURCE
#define _GNU_SOURCE

#include "em-test-disk.h"

#include <dlfcn.h>
#include <errno.h>
#include <fcntl.h>
#include <signal.h>
#include <stdarg.h>
#include <stdio.h>
#include <string.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

enum { CALLS_MAX = 4096 };

static _Thread_local struct
{
  gboolean       is_armed, was_hit, is_half_out;
  EmTestDiskMode mode;
  int            nth, error_number, n_calls;
  char           calls[CALLS_MAX];
} disk;

void
em_test_disk_arm (EmTestDiskMode mode, int nth, int error_number)
{
  memset (&disk, 0, sizeof disk);
  disk.mode = mode;
  disk.nth = nth;
  disk.error_number = error_number;
  disk.is_armed = TRUE;
}

gboolean
em_test_disk_disarm (void)
{
  disk.is_armed = FALSE;
  return disk.was_hit;
}

const char *
em_test_disk_calls (void)
{
  return disk.calls;
}

/* Counts a call; TRUE with errno when it is to fail. */
static gboolean
fails (char letter)
{
  if (!disk.is_armed)
    return FALSE;

  int n = disk.n_calls++;

  if (n < CALLS_MAX - 1)
    disk.calls[n] = letter;
  if (disk.is_half_out && letter == 'w')
    {
      disk.is_half_out = FALSE;
      errno = disk.error_number;
      return TRUE;
    }
  if (n < disk.nth || (n > disk.nth && disk.mode != EM_TEST_DISK_DEAD) || (disk.mode == EM_TEST_DISK_SHORT && letter != 'r'))
    return FALSE;
  disk.was_hit = TRUE;
  if (disk.mode == EM_TEST_DISK_KILL)
    kill (getpid (), SIGKILL);
  errno = disk.error_number;
  return TRUE;
}

/* The C library's own. */
#define REAL(name, symbol) \
  static __typeof__ (&name) real; \
  if (real == NULL) \
    *(void **) &real = dlsym (RTLD_NEXT, symbol)

int
open (const char *path, int flags, ...)
{
  REAL (open, "open64");
  va_list arguments;

  va_start (arguments, flags);
  mode_t mode = (flags & O_CREAT) || (flags & O_TMPFILE) == O_TMPFILE ? va_arg (arguments, mode_t) : 0;
  va_end (arguments);
  return fails ('o') ? -1 : real (path, flags, mode);
}

ssize_t
read (int fd, void *buffer, size_t size)
{
  REAL (read, "read");
  if (!fails ('r'))
    return real (fd, buffer, size);
  return disk.mode == EM_TEST_DISK_SHORT ? 0 : -1;
}

/* How a full disk takes a long write: part of it, and an error for the next. */
ssize_t
write (int fd, const void *buffer, size_t size)
{
  REAL (write, "write");
  gboolean was_half_out = disk.is_half_out;

  if (!fails ('w'))
    return real (fd, buffer, size);
  if (was_half_out || disk.mode != EM_TEST_DISK_ONCE || size < 2)
    return -1;
  disk.is_half_out = TRUE;
  return real (fd, buffer, size / 2);
}

ssize_t
pwrite (int fd, const void *buffer, size_t size, off_t at)
{
  REAL (pwrite, "pwrite64");
  return fails ('W') ? -1 : real (fd, buffer, size, at);
}

/* The descriptor is gone even where closing tells an error (Linux, close(2)). */
int
close (int fd)
{
  REAL (close, "close");
  gboolean is_failing = disk.mode != EM_TEST_DISK_DEAD && fails ('c');
  int trouble = errno, result = real (fd);

  if (!is_failing)
    return result;
  errno = trouble;
  return -1;
}

#define STEP(letter, name, symbol, parameters, ...) \
  int \
  name parameters \
  { \
    REAL (name, symbol); \
    return fails (letter) ? -1 : real (__VA_ARGS__); \
  }

STEP ('s', fsync, "fsync", (int fd), fd)
STEP ('m', rename, "rename", (const char *from, const char *to), from, to)
STEP ('l', linkat, "linkat", (int at, const char *from, int to_at, const char *to, int flags), at, from, to_at, to, flags)
STEP ('u', unlink, "unlink", (const char *path), path)
STEP ('t', ftruncate, "ftruncate64", (int fd, off_t size), fd, size)
STEP ('f', fstat, "fstat64", (int fd, struct stat *about), fd, about)
STEP ('f', stat, "stat64", (const char *path, struct stat *about), path, about)
STEP ('f', lstat, "lstat64", (const char *path, struct stat *about), path, about)
STEP ('a', access, "access", (const char *path, int how), path, how)
STEP ('p', fchmod, "fchmod", (int fd, mode_t mode), fd, mode)
STEP ('p', fchown, "fchown", (int fd, uid_t user, gid_t group), fd, user, group)
STEP ('k', flock, "flock", (int fd, int how), fd, how)
STEP ('d', mkdir, "mkdir", (const char *path, mode_t mode), path, mode)
