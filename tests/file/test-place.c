/* test-place: places where a file can't be put: a full disk, one that is read-only, folders that are closed or gone, and
 * things that are in the way. What was there stays whole, the reason is told, and once the place is well again saving works.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#define _GNU_SOURCE   /* unshare() */

#include "em-save.h"
#include "em-test-file.h"
#include "em-test-shelf.h"

#include <errno.h>
#include <sched.h>
#include <stdio.h>
#include <sys/mount.h>

static char *folder, *recovery;

static void
make_folder (void)
{
  folder = em_test_folder_new ();
  recovery = g_build_filename (folder, "recovery", NULL);
}

static void
drop_folder (void)
{
  em_test_shelf_close ();
  em_test_folder_remove (recovery);
  em_test_folder_remove (folder);
  g_free (recovery);
  g_free (folder);
}

/* ---- disks of our own ---- */

static gboolean
put (const char *path, const char *text)
{
  int fd = open (path, O_WRONLY);
  gboolean is_good = fd >= 0 && write (fd, text, strlen (text)) == (ssize_t) strlen (text);

  if (fd >= 0)
    close (fd);
  return is_good;
}

/* A view of the file system that nobody else sees, in which we may mount. */
static gboolean
leave_the_others (void)
{
  g_autofree char *users = g_strdup_printf ("0 %u 1", (unsigned) geteuid ()), *groups = g_strdup_printf ("0 %u 1", (unsigned) getegid ());

  if (unshare (CLONE_NEWNS) != 0
      && (unshare (CLONE_NEWUSER | CLONE_NEWNS) != 0 || !put ("/proc/self/setgroups", "deny") || !put ("/proc/self/uid_map", users)
          || !put ("/proc/self/gid_map", groups)))
    return FALSE;
  return mount ("none", "/", "none", MS_REC | MS_PRIVATE, NULL) == 0;
}

/* A disk of this size in the place of the folder; FALSE, and said so, where nobody lets us have one. */
static gboolean
mount_disk (const char *size)
{
  g_autofree char *options = g_strdup_printf ("size=%s", size);

  if (leave_the_others () && mount ("tmpfs", folder, "tmpfs", 0, options) == 0)
    return TRUE;
  printf ("not tested: no disk may be mounted here (%s)\n", g_strerror (errno));
  return FALSE;
}

/* Takes what room there is, but for less than a page. */
static void
fill_disk (const char *path)
{
  static const char page[4096];
  int fd = open (path, O_WRONLY | O_CREAT, 0600);

  ck_assert_int_ge (fd, 0);
  while (write (fd, page, sizeof page) > 0)
    ;
  ck_assert_int_eq (errno, ENOSPC);
  close (fd);
}

/* ---- what is asked of each ---- */

static char *
write_old (const EmTestFile *file)
{
  ck_assert_msg (file->write (FALSE, NULL), "%s", file->name);
  return em_test_file_dup_content (file);
}

static void
expect_refusal (const EmTestFile *file, const char *old, const char *words)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *found = NULL;

  ck_assert_msg (!file->write (TRUE, &error), "%s was saved", file->name);
  ck_assert_msg (g_error_matches (error, EM_FILE_ERROR, EM_FILE_ERROR_WRITE), "%s: %s", file->name, error->message);
  ck_assert_msg (strstr (error->message, words) != NULL, "%s: %s", file->name, error->message);
  found = em_test_file_dup_content (file);
  ck_assert_msg (g_strcmp0 (found, old) == 0, "%s: the old one is not what it was", file->name);
}

static void
expect_new (const EmTestFile *file, const char *old)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *found = NULL;

  ck_assert_msg (file->write (TRUE, &error), "%s: %s", file->name, error != NULL ? error->message : "");
  found = em_test_file_dup_content (file);
  ck_assert_msg (found != NULL && g_strcmp0 (found, old) != 0, "%s: the old one is still there", file->name);
}

static int
count_half_written (void)
{
  int n = 0;

  for (int i = 0; i < 2; i++)
    {
      GDir *dir = g_dir_open (i == 0 ? folder : recovery, 0, NULL);
      const char *name;
      while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
        n += g_str_has_suffix (name, EM_SAVE_SUFFIX);
      g_clear_pointer (&dir, g_dir_close);
    }
  return n;
}

/* ---- disks ---- */

START_TEST (full_disk)
{
  const EmTestFile *file = &em_test_files[_i];

  if (!mount_disk ("512k"))
    return;
  em_test_shelf_open (folder);
  g_autofree char *old = write_old (file), *filler = g_build_filename (folder, "filler", NULL);
  fill_disk (filler);
  expect_refusal (file, old, g_strerror (ENOSPC));
  ck_assert_int_eq (count_half_written (), 0);
  ck_assert_int_eq (g_remove (filler), 0);
  expect_new (file, old);
  printf ("%s: disk full, told so; the old one whole, and saved once there was room\n", file->name);
  ck_assert_int_eq (umount2 (folder, MNT_DETACH), 0);
}
END_TEST

/* Not of the journal: its session's lock is open for writing, and such a disk can't be made read-only; test-disk has that. */
START_TEST (read_only_disk)
{
  const EmTestFile *file = &em_test_files[_i];

  if (!mount_disk ("512k"))
    return;
  em_test_shelf_open (folder);
  g_autofree char *old = write_old (file);
  ck_assert_int_eq (mount ("none", folder, "none", MS_REMOUNT | MS_RDONLY, NULL), 0);
  expect_refusal (file, old, g_strerror (EROFS));
  ck_assert_int_eq (mount ("none", folder, "none", MS_REMOUNT, NULL), 0);
  expect_new (file, old);
  printf ("%s: disk read-only, told so; the old one whole\n", file->name);
  ck_assert_int_eq (umount2 (folder, MNT_DETACH), 0);
}
END_TEST

/* ---- folders ---- */

/* The superuser may write anywhere, so he becomes somebody else for the rest of this test. */
static void
be_nobody (void)
{
  const uid_t nobody = 65534;

  if (geteuid () != 0)
    return;
  ck_assert_int_eq (chown (folder, nobody, nobody), 0);
  ck_assert (setresgid (nobody, nobody, nobody) == 0 && setresuid (nobody, nobody, nobody) == 0);
}

START_TEST (closed_folder)
{
  const EmTestFile *file = &em_test_files[_i];

  be_nobody ();
  em_test_shelf_open (folder);
  g_autofree char *old = write_old (file), *path = file->dup_path (), *around = g_path_get_dirname (path);
  ck_assert_int_eq (g_chmod (around, 0500), 0);
  expect_refusal (file, old, g_strerror (EACCES));
  ck_assert_int_eq (g_chmod (around, 0700), 0);
  expect_new (file, old);
}
END_TEST

/* As when a server or a stick goes away, and comes back with what was on it. */
START_TEST (folder_that_goes_away)
{
  const EmTestFile *file = &em_test_files[_i];

  em_test_shelf_open (folder);
  g_autofree char *old = write_old (file), *path = file->dup_path (), *around = g_path_get_dirname (path);
  g_autofree char *away = g_strconcat (folder, "-away", NULL);
  g_autoptr (GError) error = NULL;
  ck_assert_int_eq (g_rename (around, away), 0);
  /* The rate book, the metals and the index bring their folder with them. */
  if (!file->write (TRUE, &error))
    ck_assert_msg (strstr (error->message, "no longer there") != NULL, "%s: %s", file->name, error->message);
  else
    {
      g_autofree char *found = em_test_file_dup_content (file);
      ck_assert_msg (found != NULL && g_strcmp0 (found, old) != 0, "%s", file->name);
      em_test_folder_remove (around);
    }
  ck_assert_int_eq (g_rename (away, around), 0);
  expect_new (file, old);
}
END_TEST

/* A server that no longer answers: a file system without the program behind it, laid over the folder. Every call fails with ENOTCONN, as
 * libfuse's own users see it (fuse(4)). FALSE, and said so, where nobody lets us have one. */
static gboolean
lay_dead_server_over (const char *path)
{
  int fd = leave_the_others () ? open ("/dev/fuse", O_RDWR | O_CLOEXEC) : -1;
  g_autofree char *options = g_strdup_printf ("fd=%d,rootmode=40000,user_id=%u,group_id=%u", fd, (unsigned) geteuid (), (unsigned) getegid ());
  gboolean is_good = fd >= 0 && mount ("server", path, "fuse", MS_NOSUID | MS_NODEV, options) == 0;

  if (!is_good)
    printf ("not tested: no server to go away may be mounted here (%s)\n", g_strerror (errno));
  if (fd >= 0)
    close (fd);
  return is_good;
}

START_TEST (server_that_goes_away)
{
  const EmTestFile *file = &em_test_files[_i];

  em_test_shelf_open (folder);
  g_autofree char *old = write_old (file), *path = file->dup_path (), *around = g_path_get_dirname (path), *found = NULL;
  if (!lay_dead_server_over (around))
    return;
  expect_refusal (file, NULL, g_strerror (ENOTCONN));
  ck_assert_int_eq (umount2 (around, MNT_DETACH), 0);
  found = em_test_file_dup_content (file);
  ck_assert_str_eq (found, old);
  ck_assert_int_eq (count_half_written (), 0);
  expect_new (file, old);
  printf ("%s: its server gone, told so; the old one whole when it came back\n", file->name);
}
END_TEST

START_TEST (folder_in_its_place)
{
  const EmTestFile *file = &em_test_files[_i];

  em_test_shelf_open (folder);
  g_autofree char *old = write_old (file), *path = file->dup_path (), *inside = g_build_filename (path, "somebody's", NULL);
  ck_assert (g_remove (path) == 0 && g_mkdir (path, 0700) == 0 && g_file_set_contents (inside, "work", -1, NULL));
  expect_refusal (file, NULL, "a folder has that name");
  ck_assert (g_file_test (inside, G_FILE_TEST_IS_REGULAR));
  ck_assert (g_remove (inside) == 0 && g_rmdir (path) == 0);
  expect_new (file, old);
}
END_TEST

/* A link stays one, and what it leads to is saved; one that leads nowhere makes the file there. */
START_TEST (link_in_its_place)
{
  const EmTestFile *file = &em_test_files[_i];
  g_autofree char *elsewhere = g_build_filename (folder, "elsewhere", NULL);

  em_test_shelf_open (folder);
  g_autofree char *old = write_old (file), *path = file->dup_path ();
  ck_assert (g_rename (path, elsewhere) == 0 && symlink (elsewhere, path) == 0);
  expect_new (file, old);
  ck_assert (g_file_test (path, G_FILE_TEST_IS_SYMLINK) && !g_file_test (elsewhere, G_FILE_TEST_IS_SYMLINK));
  ck_assert_int_eq (g_remove (elsewhere), 0);
  expect_new (file, old);
  ck_assert (g_file_test (path, G_FILE_TEST_IS_SYMLINK) && g_file_test (elsewhere, G_FILE_TEST_IS_REGULAR));
}
END_TEST

START_TEST (link_to_a_folder_that_is_gone)
{
  const EmTestFile *file = &em_test_files[_i];
  g_autofree char *gone = g_build_filename (folder, "gone", "elsewhere", NULL);

  em_test_shelf_open (folder);
  g_autofree char *old = write_old (file), *path = file->dup_path ();
  ck_assert (g_remove (path) == 0 && symlink (gone, path) == 0);
  expect_refusal (file, NULL, "no longer there");
  ck_assert (g_file_test (path, G_FILE_TEST_IS_SYMLINK));
  ck_assert_int_eq (g_remove (path), 0);
  expect_new (file, old);
}
END_TEST

int
main (void)
{
  const EmTestRow rows[] =
  {
    EM_TEST_LOOP (full_disk, em_test_files), { read_only_disk, EM_TEST_JOURNAL_FILE }, EM_TEST_LOOP (closed_folder, em_test_files),
    EM_TEST_LOOP (folder_that_goes_away, em_test_files), EM_TEST_LOOP (server_that_goes_away, em_test_files), EM_TEST_LOOP (folder_in_its_place, em_test_files),
    EM_TEST_LOOP (link_in_its_place, em_test_files), EM_TEST_LOOP (link_to_a_folder_that_is_gone, em_test_files),
  };

  return em_test_run_apart ("place", rows, (int) G_N_ELEMENTS (rows), make_folder, drop_folder);
}
