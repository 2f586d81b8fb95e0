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
#include <sys/stat.h>
#include <unistd.h>

enum { LINKS_MAX = 40, NAMES_MAX = 100 };

static gboolean
refuse (GError **error, const char *path, const char *reason)
{
  g_autofree char *shown = g_filename_display_name (path);

  g_set_error (error, EM_FILE_ERROR, EM_FILE_ERROR_WRITE, _("“%s” was not saved: %s"), shown, reason);
  return FALSE;
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
  if ((out_about->st_mode & 0222) == 0 || access (path, W_OK) != 0)
    return refuse (error, path, _("the file there is set read-only"));
  return TRUE;
}

/* ---- the new file ---- */

/* The umask gives its mode. Returns −1 with errno. */
static int
create_beside (const char *path, char **out_temporary)
{
  g_autofree char *folder = g_path_get_dirname (path);

  for (int i = 0; i < NAMES_MAX; i++)
    {
      g_autofree char *name = g_strdup_printf (".estimend-%08x.tmp", g_random_int ());
      g_autofree char *temporary = g_build_filename (folder, name, NULL);
      int fd = open (temporary, O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666);

      if (fd >= 0)
        *out_temporary = g_steal_pointer (&temporary);
      if (fd >= 0 || errno != EEXIST)
        return fd;
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
      if (n < 0)
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

static gboolean
sync_folder_of (const char *path)
{
  g_autofree char *folder = g_path_get_dirname (path);
  int fd = open (folder, O_RDONLY | O_DIRECTORY | O_CLOEXEC);
  gboolean is_done = fd >= 0 && fsync (fd) == 0;

  /* Some file systems have no way to do it, and say so. */
  if (!is_done && (errno == EINVAL || errno == EACCES))
    is_done = TRUE;
  if (fd >= 0)
    close (fd);
  return is_done;
}

/* 0, or the errno of the first step that failed. */
static int
fill (int fd, GBytes *bytes, const struct stat *old)
{
  int trouble = 0;

  if (!write_all (fd, bytes) || (old != NULL && !take_over (fd, old)) || fsync (fd) != 0)
    trouble = errno;
  if (close (fd) != 0 && trouble == 0)
    trouble = errno;
  return trouble;
}

gboolean
em_save_bytes (const char *path, GBytes *bytes, GError **error)
{
  g_autofree char *target = follow_links (path);
  g_autofree char *temporary = NULL;
  struct stat old;
  gboolean exists;
  int fd, trouble;

  if (target == NULL)
    return refuse (error, path, _("its links lead in a ring"));
  if (!look_at_old (target, &old, &exists, error))
    return FALSE;
  fd = create_beside (target, &temporary);
  if (fd < 0)
    return refuse (error, path, g_strerror (errno));
  trouble = fill (fd, bytes, exists ? &old : NULL);
  if (trouble == 0 && rename (temporary, target) != 0)
    trouble = errno;
  if (trouble != 0)
    {
      unlink (temporary);
      return refuse (error, path, g_strerror (trouble));
    }
  return sync_folder_of (target)
         || refuse (error, path, _("it is there, but the disk did not confirm that it will stay"));
}

/* ---- stamps ---- */

void
em_file_stamp (const char *path, EmFileStamp *out_stamp)
{
  struct stat about;

  *out_stamp = (EmFileStamp) { 0 };
  if (stat (path, &about) != 0)
    return;
  out_stamp->device = about.st_dev;
  out_stamp->inode = about.st_ino;
  out_stamp->size = (guint64) about.st_size;
  out_stamp->modified_ns = about.st_mtim.tv_sec * G_GINT64_CONSTANT (1000000000) + about.st_mtim.tv_nsec;
}

gboolean
em_file_stamp_equal (const EmFileStamp *a, const EmFileStamp *b)
{
  return a->device == b->device && a->inode == b->inode && a->size == b->size && a->modified_ns == b->modified_ns;
}

gboolean
em_save_bytes_over (const char *path, GBytes *bytes, const EmFileStamp *expected, EmFileStamp *out_stamp, GError **error)
{
  EmFileStamp found;

  em_file_stamp (path, &found);
  if (expected->inode != 0 && found.inode != 0 && !em_file_stamp_equal (expected, &found))
    {
      g_autofree char *shown = g_filename_display_name (path);
      g_set_error (error, EM_FILE_ERROR, EM_FILE_ERROR_CHANGED,
                   _("“%s” was not saved: somebody else has changed it since it was opened here"), shown);
      return FALSE;
    }
  if (!em_save_bytes (path, bytes, error))
    return FALSE;
  em_file_stamp (path, out_stamp);
  return TRUE;
}
