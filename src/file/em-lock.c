/* em-lock: who has a quote open, for others on a shared folder to see.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#define _GNU_SOURCE   /* O_TMPFILE */

#include "config.h"

#include "em-lock.h"

#include "em-xml.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gi18n-lib.h>
#include <signal.h>
#include <stdio.h>
#include <string.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#define HEAD "Estimend lock 1"

enum { SIZE_MAX_BYTES = 4096, LINES = 6, OLD_S = 3 * 24 * 60 * 60, TORN_S = 60 };

/* One line each, after the head. */
enum { LINE_HEAD, LINE_NAME, LINE_HOST, LINE_PROCESS, LINE_BEGAN, LINE_SINCE };

struct _EmLock
{
  char *path;        /* of the quote */
  char *lock_path;
  char *content;
};

static char *
dup_lock_path (const char *path)
{
  g_autofree char *folder = g_path_get_dirname (path), *base = g_path_get_basename (path);
  g_autofree char *name = g_strdup_printf (".%.*s.lock", 200, base);

  return g_build_filename (folder, name, NULL);
}

/* When a process began, in the kernel's ticks, so that another that was given its number later is not taken for it. "" when
 * there is none. The name in parentheses may hold anything, so fields are counted behind the last one (proc(5), field 22). */
static char *
dup_began (gint64 process)
{
  g_autofree char *path = g_strdup_printf ("/proc/%" G_GINT64_FORMAT "/stat", process), *text = NULL;
  const char *behind;

  if (!g_file_get_contents (path, &text, NULL, NULL) || (behind = strrchr (text, ')')) == NULL)
    return g_strdup ("");
  g_auto (GStrv) fields = g_strsplit (behind + 1, " ", -1);   /* [0] is empty, [1] is field 3 */
  return g_strdup (g_strv_length (fields) > 20 ? fields[20] : "");
}

/* Names with no line breaks or other controls in them. */
static char *
dup_plain (const char *text)
{
  char *plain = g_utf8_make_valid (text != NULL ? text : "", -1);

  for (char *at = plain; *at != '\0'; at++)
    if ((guchar) *at < 0x20 || *at == 0x7f)
      *at = ' ';
  return plain;
}

static char *
dup_content (void)
{
  const char *real = g_get_real_name ();
  g_autofree char *name = dup_plain (real != NULL && *real != '\0' && !g_str_equal (real, "Unknown") ? real : g_get_user_name ());
  g_autofree char *host = dup_plain (g_get_host_name ()), *began = dup_began (getpid ());

  return g_strdup_printf (HEAD "\n%s\n%s\n%d\n%s\n%" G_GINT64_FORMAT "\n", name, host, (int) getpid (), began,
                          g_get_real_time () / G_USEC_PER_SEC);
}

/* ---- somebody's lock ---- */

static char *
read_content (const char *lock_path)
{
  g_autoptr (GBytes) bytes = em_xml_read_file (lock_path, SIZE_MAX_BYTES, NULL);

  return bytes != NULL ? g_strndup (g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes)) : NULL;
}

/* LINES lines and an empty rest; NULL when it is no lock of ours, or one that is just being written. */
static GStrv
parse (const char *content)
{
  g_auto (GStrv) lines = content != NULL && g_utf8_validate (content, -1, NULL) ? g_strsplit (content, "\n", LINES + 2) : NULL;

  if (lines == NULL || g_strv_length (lines) != LINES + 1 || !g_str_equal (lines[LINE_HEAD], HEAD))
    return NULL;
  return g_steal_pointer (&lines);
}

/* Its program is gone, as far as that can be told from here. */
static gboolean
is_left_behind (GStrv lines)
{
  gint64 process = g_ascii_strtoll (lines[LINE_PROCESS], NULL, 10), since = g_ascii_strtoll (lines[LINE_SINCE], NULL, 10);
  g_autofree char *here = dup_plain (g_get_host_name ()), *began = NULL;

  if (g_get_real_time () / G_USEC_PER_SEC - since > OLD_S)
    return TRUE;
  if (!g_str_equal (lines[LINE_HOST], here) || process <= 0 || process > G_MAXINT)
    return FALSE;
  if (kill ((pid_t) process, 0) != 0 && errno == ESRCH)
    return TRUE;
  began = dup_began (process);
  return *began != '\0' && *lines[LINE_BEGAN] != '\0' && !g_str_equal (began, lines[LINE_BEGAN]);
}

static char *(*tell_moment) (gint64 moment_s);

void
em_lock_set_teller (char *(*teller) (gint64 moment_s))
{
  tell_moment = teller;
}

static char *
moment_text (gint64 moment_s)
{
  g_autoptr (GDateTime) date = g_date_time_new_from_unix_local (moment_s);

  if (date == NULL)
    return g_strdup ("?");
  return tell_moment != NULL ? tell_moment (moment_s) : g_date_time_format (date, "%Y-%m-%d %H:%M");
}

static void
tell_locked (const char *path, GStrv lines, GError **error)
{
  g_autofree char *name = g_filename_display_basename (path), *since = NULL;

  if (lines == NULL)
    {
      g_set_error (error, EM_FILE_ERROR, EM_FILE_ERROR_LOCKED, _("Somebody else has “%s” open."), name);
      return;
    }
  since = moment_text (g_ascii_strtoll (lines[LINE_SINCE], NULL, 10));
  if (g_ascii_strtoll (lines[LINE_PROCESS], NULL, 10) == getpid ())
    g_set_error (error, EM_FILE_ERROR, EM_FILE_ERROR_LOCKED, _("“%s” is open in another window."), name);
  else
    /* Translators: a file, a person, a machine, a date and time. */
    g_set_error (error, EM_FILE_ERROR, EM_FILE_ERROR_LOCKED, _("“%s” is open by %s on %s, since %s."), name, lines[LINE_NAME],
                 lines[LINE_HOST], since);
}

/* One that its writer was stopped over, or whose disk was full: it begins like ours, makes no sense, and nobody has written to it
 * for longer than a lock takes to write. */
static gboolean
is_torn (const char *lock_path, const char *content)
{
  struct stat about;

  return content != NULL && strncmp (content, HEAD "\n", MIN (strlen (content), strlen (HEAD "\n"))) == 0
         && stat (lock_path, &about) == 0 && g_get_real_time () / G_USEC_PER_SEC - about.st_mtime > TORN_S;
}

static gboolean
may_be_taken (const char *lock_path, const char *content)
{
  g_auto (GStrv) lines = parse (content);

  return lines != NULL ? is_left_behind (lines) : is_torn (lock_path, content);
}

/* ---- ours ---- */

/* 0 or an errno. */
static int
put_content (int fd, const char *content)
{
  ssize_t length = (ssize_t) strlen (content), n = write (fd, content, (size_t) length);

  return n == length ? 0 : n < 0 ? errno : ENOSPC;
}

/* Without a moment in which it is there and empty. Not every file system can do that. 0 or an errno; EEXIST: there is one already. */
static int
create_at_once (const char *lock_path, const char *content)
{
  g_autofree char *folder = g_path_get_dirname (lock_path), *nameless = NULL;
  int fd = open (folder, O_TMPFILE | O_WRONLY | O_CLOEXEC, 0644), trouble;

  if (fd < 0)
    return errno;
  nameless = g_strdup_printf ("/proc/self/fd/%d", fd);
  trouble = put_content (fd, content);
  if (trouble == 0 && linkat (AT_FDCWD, nameless, AT_FDCWD, lock_path, AT_SYMLINK_FOLLOW) != 0)
    trouble = errno;
  close (fd);
  return trouble;
}

/* 0 or an errno; EEXIST: there is one already. */
static int
create (const char *lock_path, const char *content)
{
  int trouble = create_at_once (lock_path, content), fd;

  if (trouble == 0 || trouble == EEXIST)
    return trouble;
  fd = open (lock_path, O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0644);
  if (fd < 0)
    return errno;
  trouble = put_content (fd, content);
  if (close (fd) != 0 && trouble == 0)
    trouble = errno;
  if (trouble != 0)
    (void) unlink (lock_path);
  return trouble;
}

/* Over what is there, which then needs no more room on a full disk. */
static gboolean
overwrite (int fd, const char *content)
{
  size_t length = strlen (content);

  return pwrite (fd, content, length, 0) == (ssize_t) length && ftruncate (fd, (off_t) length) == 0;
}

/* Makes a lock left behind ours where it lies. Of several who found it, the system lets one in at a time, and the next reads
 * whose it is by then. *out_content: what was last seen in it. */
static gboolean
take_over (const char *lock_path, const char *mine, char **out_content)
{
  int fd = open (lock_path, O_RDWR | O_CLOEXEC | O_NOFOLLOW);
  gboolean is_ours = FALSE;

  if (fd >= 0 && flock (fd, LOCK_EX) == 0)
    {
      g_free (*out_content);
      *out_content = read_content (lock_path);
      is_ours = may_be_taken (lock_path, *out_content) && overwrite (fd, mine);
    }
  if (fd >= 0)
    close (fd);
  return is_ours;
}

EmLock *
em_lock_take (const char *path, GError **error)
{
  g_autofree char *lock_path = dup_lock_path (path), *mine = dup_content (), *theirs = NULL;
  int trouble = create (lock_path, mine);

  if (trouble == EEXIST)
    {
      theirs = read_content (lock_path);
      if (!may_be_taken (lock_path, theirs) || !take_over (lock_path, mine, &theirs))
        {
          g_auto (GStrv) owner = parse (theirs);
          tell_locked (path, owner, error);
          return NULL;
        }
      trouble = 0;
    }
  if (trouble != 0)
    {
      g_autofree char *name = g_filename_display_basename (path);
      g_set_error (error, EM_FILE_ERROR, EM_FILE_ERROR_WRITE, _("Others cannot be told that “%s” is open here: %s."), name,
                   g_strerror (trouble));
      return NULL;
    }

  EmLock *lock = g_new0 (EmLock, 1);

  lock->path = g_strdup (path);
  lock->lock_path = g_steal_pointer (&lock_path);
  lock->content = g_steal_pointer (&mine);
  return lock;
}

const char *
em_lock_get_path (const EmLock *lock)
{
  return lock->path;
}

void
em_lock_free (EmLock *lock)
{
  g_autofree char *found = NULL;

  if (lock == NULL)
    return;
  found = read_content (lock->lock_path);
  if (g_strcmp0 (found, lock->content) == 0)
    (void) unlink (lock->lock_path);
  g_free (lock->path);
  g_free (lock->lock_path);
  g_free (lock->content);
  g_free (lock);
}
