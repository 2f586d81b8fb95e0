/* em-save: whole files, put on the disk without ever being half done.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "config.h"

#include "em-save.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gi18n-lib.h>
#include <stdio.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

enum { LINKS_MAX = 40, NAMES_MAX = 100, NAME_BYTES_MAX = 200, LOCK_TRIES_MAX = 500, LOCK_WAIT_US = 10000 };

static gboolean
refuse (GError **error, const char *path, const char *reason)
{
  g_autofree char *shown = g_filename_display_name (path);

  g_set_error (error, EM_FILE_ERROR, EM_FILE_ERROR_WRITE, _("“%s” was not saved: %s"), shown, reason);
  return FALSE;
}

/* ---- stamps ---- */

/* 0, or why the file can't be looked at. */
static int
look (const char *path, EmFileStamp *out_stamp)
{
  struct stat about;

  *out_stamp = (EmFileStamp) { 0 };
  if (stat (path, &about) != 0)
    return errno;
  out_stamp->device = about.st_dev;
  out_stamp->inode = about.st_ino;
  out_stamp->size = (guint64) about.st_size;
  out_stamp->modified_ns = about.st_mtim.tv_sec * G_GINT64_CONSTANT (1000000000) + about.st_mtim.tv_nsec;
  return 0;
}

void
em_file_stamp (const char *path, EmFileStamp *out_stamp)
{
  (void) look (path, out_stamp);
}

gboolean
em_file_stamp_equal (const EmFileStamp *a, const EmFileStamp *b)
{
  return a->device == b->device && a->inode == b->inode && a->size == b->size && a->modified_ns == b->modified_ns;
}

/* ---- where a save goes ---- */

/* The file that path stands for after all links, which need not exist yet; NULL for a ring of them. */
static char *
follow_links (const char *path)
{
  g_autofree char *at = g_strdup (path);

  for (int i = 0; i < LINKS_MAX; i++)
    {
      g_autofree char *target = g_file_read_link (at, NULL);

      if (target == NULL)
        return g_steal_pointer (&at);
      if (!g_path_is_absolute (target))
        {
          g_autofree char *folder = g_path_get_dirname (at);
          char *joined = g_build_filename (folder, target, NULL);

          g_free (target);
          target = joined;
        }
      g_free (at);
      at = g_steal_pointer (&target);
    }
  return NULL;
}

/* Whether there is a file to replace, and whether it may be. access() tells the superuser yes, so the bits are asked too. */
static gboolean
look_at_old (const char *path, struct stat *out_about, gboolean *out_exists, GError **error)
{
  *out_exists = stat (path, out_about) == 0;
  if (!*out_exists)
    return errno == ENOENT || refuse (error, path, g_strerror (errno));
  if (S_ISDIR (out_about->st_mode))
    return refuse (error, path, _("a folder has that name"));
  if (!S_ISREG (out_about->st_mode))
    return refuse (error, path, _("what has that name is no regular file"));
  if ((out_about->st_mode & 0222) == 0)
    return refuse (error, path, _("the file there is set read-only"));
  if (access (path, W_OK) != 0)
    return refuse (error, path, errno == EACCES ? _("the file there is set read-only") : g_strerror (errno));
  return TRUE;
}

/* ---- the new file ---- */

/* Whether path leads to the open file. */
static gboolean
is_at (const char *path, int fd)
{
  struct stat there, here;

  return lstat (path, &there) == 0 && fstat (fd, &here) == 0 && there.st_dev == here.st_dev && there.st_ino == here.st_ino;
}

/* A new file, locked for as long as its writer lives. −1 with errno; EEXIST: there is one, or somebody takes ours for one left
 * behind, having come between its making and its locking. */
static int
create_locked (const char *temporary, mode_t mode)
{
  int fd = open (temporary, O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, mode);

  if (fd < 0)
    return -1;
  if (flock (fd, LOCK_EX | LOCK_NB) == 0 ? is_at (temporary, fd) : errno != EWOULDBLOCK)
    return fd;   /* where files can't be locked nobody clears them away either */
  close (fd);
  errno = EEXIST;
  return -1;
}

/* Away with what a program left here that was stopped while it saved; a living one still holds the lock. */
static void
clear_left_behind (const char *temporary)
{
  int fd = open (temporary, O_WRONLY | O_CLOEXEC | O_NOFOLLOW | O_NONBLOCK);

  if (fd >= 0 && flock (fd, LOCK_EX | LOCK_NB) == 0 && is_at (temporary, fd))
    (void) unlink (temporary);
  if (fd >= 0)
    close (fd);
}

/* The same name each time, so that what is left behind is found by the next save; another one while that is taken. Others
 * must not read in it what the old file keeps from them. Returns −1 with errno. */
static int
create_beside (const char *path, const struct stat *old, char **out_temporary)
{
  g_autofree char *folder = g_path_get_dirname (path), *base = g_path_get_basename (path);
  mode_t mode = old != NULL ? 0600 : 0666;   /* the umask takes its part of the latter */

  for (int i = 0; i < NAMES_MAX; i++)
    {
      g_autofree char *number = i > 1 ? g_strdup_printf ("-%08x", g_random_int ()) : g_strdup ("");
      g_autofree char *name = g_strdup_printf (".%.*s%s" EM_SAVE_SUFFIX, NAME_BYTES_MAX, base, number);
      g_autofree char *temporary = g_build_filename (folder, name, NULL);
      int fd = create_locked (temporary, mode);

      if (fd >= 0)
        *out_temporary = g_steal_pointer (&temporary);
      if (fd >= 0 || errno != EEXIST)
        return fd;
      if (i == 0)
        clear_left_behind (temporary);
    }
  return -1;
}

static gboolean
write_all (int fd, GBytes *bytes)
{
  gsize size;
  const char *data = g_bytes_get_data (bytes, &size);

  while (size > 0)
    {
      ssize_t n = write (fd, data, size);

      if (n < 0 && errno == EINTR)
        continue;
      if (n == 0)
        errno = EIO;
      if (n <= 0)
        return FALSE;
      data += n;
      size -= (gsize) n;
    }
  return TRUE;
}

/* Another's file stays another's where we may give it away; where not, its contents still count more than its owner. The
 * mode comes after, since giving away clears bits of it. */
static gboolean
take_over (int fd, const struct stat *old)
{
  struct stat about;

  if (fstat (fd, &about) == 0 && (about.st_uid != old->st_uid || about.st_gid != old->st_gid)
      && fchown (fd, old->st_uid, old->st_gid) != 0)
    errno = 0;
  return fchmod (fd, old->st_mode & 07777) == 0;
}

/* Closes fd, since some disks tell only then that they are full; the lock lives on in a copy, which is *out_keep, or −1. Returns
 * 0, or the errno of the first step that failed. */
static int
fill (int fd, GBytes *bytes, const struct stat *old, int *out_keep)
{
  int trouble = 0;

  if (!write_all (fd, bytes) || (old != NULL && !take_over (fd, old)) || fsync (fd) != 0)
    trouble = errno;
  *out_keep = fcntl (fd, F_DUPFD_CLOEXEC, 0);
  if (close (fd) != 0 && trouble == 0)
    trouble = errno;
  return trouble;
}

/* ---- in its place ---- */

/* Of the folder, for the moment between a last look at the old file and the new one in its place: programs of ours that save the
 * same file at once come one after the other. Who can't have it goes on without. −1 with errno: it can't be opened. */
static int
lock_folder (const char *folder)
{
  int fd = open (folder, O_RDONLY | O_DIRECTORY | O_CLOEXEC);

  if (fd < 0)
    return -1;
  for (int i = 0; i < LOCK_TRIES_MAX && flock (fd, LOCK_EX | LOCK_NB) != 0; i++)
    {
      if (errno != EWOULDBLOCK && errno != EINTR)
        break;
      g_usleep (LOCK_WAIT_US);
    }
  return fd;
}

/* Some file systems have no way to do it, and say so; some let nobody look into a folder. */
static gboolean
sync_folder (int fd, int trouble)
{
  if (fd >= 0)
    trouble = fsync (fd) != 0 ? errno : 0;
  return trouble == 0 || trouble == EINVAL || trouble == EACCES;
}

static gboolean
refuse_changed (GError **error, const char *path)
{
  g_autofree char *shown = g_filename_display_name (path);

  g_set_error (error, EM_FILE_ERROR, EM_FILE_ERROR_CHANGED,
               _("“%s” was not saved: somebody else has changed it since it was opened here"), shown);
  return FALSE;
}

static gboolean
refuse_errno (GError **error, const char *path, int trouble)
{
  return refuse (error, path, trouble == ENOENT ? _("its folder is no longer there") : g_strerror (trouble));
}

typedef struct
{
  const char        *path;       /* as the user knows it */
  const char        *target;     /* after all links */
  const char        *temporary;
  const EmFileStamp *expected;   /* NULL: whatever is there may go */
  EmFileStamp       *out_stamp;  /* NULL: nobody asks */
} Replacing;

/* The stamp is taken in the same moment: were it another's who came right after, our next save would go over his work. */
static gboolean
replace (const Replacing *r, gboolean *out_is_there, GError **error)
{
  g_autofree char *folder_path = g_path_get_dirname (r->target);
  int folder = lock_folder (folder_path), trouble = errno, unseen;
  gboolean minds = r->expected != NULL && r->expected->inode != 0, is_good = FALSE;
  EmFileStamp found;

  unseen = look (r->target, &found);
  *out_is_there = FALSE;
  if (minds && unseen != 0 && unseen != ENOENT)   /* gone is not changed: the work is what counts */
    refuse_errno (error, r->path, unseen);
  else if (minds && unseen == 0 && !em_file_stamp_equal (r->expected, &found))
    refuse_changed (error, r->path);
  else if (rename (r->temporary, r->target) != 0)
    refuse_errno (error, r->path, errno);
  else
    {
      *out_is_there = TRUE;
      if (r->out_stamp != NULL)
        em_file_stamp (r->target, r->out_stamp);
      is_good = sync_folder (folder, trouble) || refuse (error, r->path, _("it is there, but the disk did not confirm that it will stay"));
    }
  if (folder >= 0)
    close (folder);
  return is_good;
}

static gboolean
save (const char *path, GBytes *bytes, const EmFileStamp *expected, EmFileStamp *out_stamp, GError **error)
{
  g_autofree char *target = follow_links (path);
  g_autofree char *temporary = NULL;
  struct stat old;
  gboolean exists, is_there = FALSE, is_good = FALSE;
  int fd, keep, trouble;

  if (target == NULL)
    return refuse (error, path, _("its links lead in a ring"));
  if (!look_at_old (target, &old, &exists, error))
    return FALSE;
  fd = create_beside (target, exists ? &old : NULL, &temporary);
  if (fd < 0)
    return refuse_errno (error, path, errno);
  trouble = fill (fd, bytes, exists ? &old : NULL, &keep);
  if (trouble != 0)
    refuse_errno (error, path, trouble);
  else
    {
      const Replacing r = { path, target, temporary, expected, out_stamp };
      is_good = replace (&r, &is_there, error);
    }
  if (!is_there)
    (void) unlink (temporary);
  if (keep >= 0)
    close (keep);
  return is_good;
}

gboolean
em_save_bytes (const char *path, GBytes *bytes, GError **error)
{
  return save (path, bytes, NULL, NULL, error);
}

gboolean
em_save_bytes_over (const char *path, GBytes *bytes, const EmFileStamp *expected, EmFileStamp *out_stamp, GError **error)
{
  return save (path, bytes, expected, out_stamp, error);
}
