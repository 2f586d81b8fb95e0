/* em-recovery: unsaved work kept on the side, and found again after a crash.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "config.h"

#include "em-recovery.h"

#include "em-feature-xml.h"
#include "em-save.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <string.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#define NS        "urn:estimend:recovery"
#define SUFFIX    ".journal"
enum { SESSION_LENGTH = 16, TRIES_MAX = 5 };

/* A quote at its largest and what is around it. */
static const EmXmlLimits limits = { 257u << 20, 40, 8u << 20, 1u << 16, 5000001 };

/* ---- the session ---- */

static struct
{
  GMutex      mutex;
  char       *folder;
  char        id[SESSION_LENGTH + 1];   /* "" until there is one */
  guint       n_journals;
  GHashTable *claimed;    /* gone sessions that are ours to recover: id → open lock, kept until we end */
} session;

static char *
dup_folder (void)
{
  const char *chosen = g_getenv ("ESTIMEND_STATE_DIR");

  return chosen != NULL && *chosen != '\0' ? g_build_filename (chosen, "recovery", NULL)
                                           : g_build_filename (g_get_user_state_dir (), "estimend", "recovery", NULL);
}

static char *
lock_path (const char *folder, const char *id)
{
  g_autofree char *name = g_strconcat (id, ".lock", NULL);

  return g_build_filename (folder, name, NULL);
}

/* Whether path still leads to the open file: who sweeps may have removed it before we had its lock. */
static gboolean
is_still (const char *path, int fd)
{
  struct stat there, here;

  return stat (path, &there) == 0 && fstat (fd, &here) == 0 && there.st_dev == here.st_dev && there.st_ino == here.st_ino;
}

/* An open descriptor that holds the session's lock; −1 while its program runs. The system lets go of it when we end, however. */
static int
take_lock (const char *folder, const char *id)
{
  g_autofree char *path = lock_path (folder, id);
  int fd = open (path, O_RDWR | O_CREAT | O_CLOEXEC | O_NOFOLLOW, 0600);

  /* On a disk that became read-only, work can still be recovered. */
  if (fd < 0 && errno == EROFS)
    fd = open (path, O_RDONLY | O_CLOEXEC | O_NOFOLLOW);
  if (fd >= 0 && flock (fd, LOCK_EX | LOCK_NB) == 0 && is_still (path, fd))
    return fd;
  if (fd >= 0)
    close (fd);
  return -1;
}

/* With the mutex held. */
static gboolean
begin_session (GError **error)
{
  g_autofree char *folder = NULL;
  char id[SESSION_LENGTH + 1];

  if (session.id[0] != '\0')
    return TRUE;
  folder = dup_folder ();
  gboolean has_lock = FALSE;
  for (int i = 0; i < TRIES_MAX && !has_lock; i++)
    {
      g_snprintf (id, sizeof id, "%08x%08x", g_random_int (), g_random_int ());
      has_lock = g_mkdir_with_parents (folder, 0700) == 0 && take_lock (folder, id) >= 0;
    }
  if (!has_lock)
    {
      g_set_error (error, EM_FILE_ERROR, EM_FILE_ERROR_WRITE, _("Unsaved work cannot be kept in “%s”: %s."), folder, g_strerror (errno));
      return FALSE;
    }
  session.folder = g_steal_pointer (&folder);
  memcpy (session.id, id, sizeof id);
  return TRUE;
}

/* ---- journals ---- */

struct _EmJournal
{
  int      n_refs;
  GMutex   state;       /* of ticket and path; held for moments only */
  GMutex   writing;     /* held while the file is written */
  guint64  ticket;
  char    *path;        /* NULL until something was kept */
};

EmJournal *
em_journal_new (void)
{
  EmJournal *journal = g_new0 (EmJournal, 1);

  journal->n_refs = 1;
  g_mutex_init (&journal->state);
  g_mutex_init (&journal->writing);
  return journal;
}

EmJournal *
em_journal_ref (EmJournal *journal)
{
  g_atomic_int_inc (&journal->n_refs);
  return journal;
}

void
em_journal_unref (EmJournal *journal)
{
  if (!g_atomic_int_dec_and_test (&journal->n_refs))
    return;
  g_mutex_clear (&journal->state);
  g_mutex_clear (&journal->writing);
  g_free (journal->path);
  g_free (journal);
}

guint64
em_journal_ticket (EmJournal *journal)
{
  g_mutex_lock (&journal->state);
  guint64 ticket = journal->ticket;
  g_mutex_unlock (&journal->state);
  return ticket;
}

static void
remove_file (EmJournal *journal)
{
  if (journal->path != NULL)
    (void) unlink (journal->path);
}

/* Who holds writing removes the file himself when he sees that his ticket is spent; both looks are under the state's mutex,
 * so one of the two always does. */
void
em_journal_drop (EmJournal *journal)
{
  g_mutex_lock (&journal->state);
  journal->ticket++;
  if (g_mutex_trylock (&journal->writing))
    {
      remove_file (journal);
      g_mutex_unlock (&journal->writing);
    }
  g_mutex_unlock (&journal->state);
}

static GBytes *
wrap (GBytes *quote, const char *path, const EmFileStamp *opened, const char *title, GError **error)
{
  EmXmlWriter *writer = em_xml_writer_new ();
  g_autofree char *absolute = path != NULL ? g_canonicalize_filename (path, NULL) : NULL;
  g_autofree char *uri = absolute != NULL ? g_filename_to_uri (absolute, NULL, NULL) : NULL;

  em_xml_open (writer, "journal");
  em_xml_put (writer, "xmlns", NS);
  em_xml_put (writer, "version", "1.0");
  em_xml_put (writer, "file", uri);
  em_xml_put (writer, "title", title);
  em_xml_put_integer (writer, "kept", g_get_real_time () / G_USEC_PER_SEC);
  if (opened != NULL && opened->inode != 0)
    {
      /* As text, since identifiers may fill all 64 bits. */
      g_autofree char *stamp = g_strdup_printf ("%" G_GUINT64_FORMAT " %" G_GUINT64_FORMAT " %" G_GUINT64_FORMAT " %" G_GINT64_FORMAT,
                                                opened->device, opened->inode, opened->size, opened->modified_ns);
      em_xml_put (writer, "stamp", stamp);
    }
  em_xml_put_xml (writer, g_bytes_get_data (quote, NULL), g_bytes_get_size (quote));
  em_xml_close (writer);
  return em_xml_writer_finish (writer, error);
}

static gboolean
name_journal (EmJournal *journal, GError **error)
{
  gboolean is_good;

  g_mutex_lock (&session.mutex);
  is_good = begin_session (error);
  if (is_good && journal->path == NULL)
    {
      g_autofree char *name = g_strdup_printf ("%s-%u" SUFFIX, session.id, ++session.n_journals);
      journal->path = g_build_filename (session.folder, name, NULL);
    }
  g_mutex_unlock (&session.mutex);
  return is_good;
}

gboolean
em_journal_keep (EmJournal *journal, guint64 ticket, GBytes *quote, const char *path, const EmFileStamp *opened, const char *title,
                 GError **error)
{
  g_autoptr (GBytes) bytes = wrap (quote, path, opened, title, error);
  gboolean is_good = FALSE;

  if (bytes == NULL)
    return FALSE;
  g_mutex_lock (&journal->writing);
  g_mutex_lock (&journal->state);
  gboolean is_wanted = ticket == journal->ticket;
  gboolean is_named = is_wanted && name_journal (journal, error);
  g_mutex_unlock (&journal->state);
  if (is_named)
    is_good = em_save_bytes (journal->path, bytes, error);
  g_mutex_lock (&journal->state);
  if (ticket != journal->ticket)
    remove_file (journal);
  g_mutex_unlock (&journal->writing);
  g_mutex_unlock (&journal->state);
  return is_good || !is_wanted;
}

/* ---- after a crash ---- */

EmRecovered *
em_recovered_copy (const EmRecovered *recovered)
{
  EmRecovered *copy = g_new (EmRecovered, 1);

  *copy = (EmRecovered) { g_strdup (recovered->file), g_strdup (recovered->path), g_strdup (recovered->title), recovered->kept_s };
  return copy;
}

void
em_recovered_free (EmRecovered *recovered)
{
  g_free (recovered->file);
  g_free (recovered->path);
  g_free (recovered->title);
  g_free (recovered);
}

/* What a newer minor version put into a journal is of no use here, and a journal is never written again: it is passed over, so that the
 * work in it is not out of reach. In a file of this version it is refused. */
static void
pass_over_newer (EmXmlReader *reader, gboolean is_element)
{
  EmXmlKept nothing = { NULL, 0 };

  if (is_element)
    em_xml_keep_element (reader, &nothing, "");
  else
    em_xml_keep_attributes (reader, &nothing, "");
  em_xml_kept_clear (&nothing);
}

/* On the root of a journal, its attributes read. NULL: none of ours, or damaged. */
static EmXmlReader *
open_journal (GBytes *bytes, const char *name, EmRecovered *recovered, EmFileStamp *out_stamp, GError **error)
{
  EmXmlReader *reader = em_xml_reader_new (bytes, name, NS, "journal", &limits, error);
  const char *uri, *stamp;

  if (reader == NULL)
    return NULL;
  em_xml_version (reader, 1, 0);
  uri = em_xml_attribute (reader, "file");
  recovered->path = uri != NULL ? g_filename_from_uri (uri, NULL, NULL) : NULL;
  recovered->title = g_strdup (em_xml_attribute (reader, "title"));
  recovered->kept_s = em_xml_integer (reader, "kept", 0, 0, G_MAXINT64 / G_USEC_PER_SEC);
  stamp = em_xml_attribute (reader, "stamp");
  if (stamp != NULL && sscanf (stamp, "%" G_GUINT64_FORMAT " %" G_GUINT64_FORMAT " %" G_GUINT64_FORMAT " %" G_GINT64_FORMAT,
                               &out_stamp->device, &out_stamp->inode, &out_stamp->size, &out_stamp->modified_ns) != 4)
    em_xml_refuse (reader, EM_FILE_ERROR_VALUE, "stamp", _("cannot be read."));
  pass_over_newer (reader, FALSE);
  return reader;
}

/* One that cannot be read is still told of, by its name; it may be mended by hand. */
static EmRecovered *
look_at (const char *file)
{
  EmRecovered *recovered = g_new0 (EmRecovered, 1);
  EmFileStamp stamp = { 0 };
  g_autoptr (GBytes) bytes = em_xml_read_file (file, limits.size_max, NULL);
  g_autoptr (EmXmlReader) reader = bytes != NULL ? open_journal (bytes, file, recovered, &stamp, NULL) : NULL;

  recovered->file = g_strdup (file);
  if (recovered->title == NULL)
    recovered->title = g_filename_display_basename (recovered->path != NULL ? recovered->path : file);
  return recovered;
}

/* The session a file's name tells, of a journal or of one half written; FALSE for other files and for our own. */
static gboolean
is_others (const char *name, const char *suffix, char *out_id)
{
  if (!g_str_has_suffix (name, suffix) || strlen (name) <= SESSION_LENGTH || name[SESSION_LENGTH] != '-'
      || strspn (name, "0123456789abcdef") != SESSION_LENGTH || g_str_has_prefix (name, session.id[0] != '\0' ? session.id : "-"))
    return FALSE;
  memcpy (out_id, name, SESSION_LENGTH);
  out_id[SESSION_LENGTH] = '\0';
  return TRUE;
}

/* Whether the session is gone and ours to recover. */
static gboolean
claim (const char *folder, const char *id)
{
  int fd;

  if (session.claimed == NULL)
    session.claimed = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  if (g_hash_table_contains (session.claimed, id))
    return TRUE;
  fd = take_lock (folder, id);
  if (fd >= 0)
    g_hash_table_insert (session.claimed, g_strdup (id), GINT_TO_POINTER (fd));
  return fd >= 0;
}

/* What a session that is gone was just writing when it went; the whole one before it is there too. */
static void
remove_half_written (const char *folder, const char *name, const char *id)
{
  g_autofree char *path = g_build_filename (folder, name, NULL);

  if (claim (folder, id))
    (void) unlink (path);
}

static int
compare_kept (gconstpointer a, gconstpointer b)
{
  gint64 x = (*(EmRecovered *const *) a)->kept_s, y = (*(EmRecovered *const *) b)->kept_s;

  return x < y ? 1 : x > y ? -1 : 0;
}

/* Locks whose session is gone and left nothing. Between our taking one and removing it nobody can begin a session of that
 * random name. */
static void
sweep_locks (const char *folder, GHashTable *with_journals)
{
  GDir *dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    {
      if (!g_str_has_suffix (name, ".lock"))
        continue;
      g_autofree char *id = g_strndup (name, strlen (name) - strlen (".lock"));
      if (strcmp (id, session.id) == 0 || g_hash_table_contains (with_journals, id) || g_hash_table_contains (session.claimed, id))
        continue;
      int fd = take_lock (folder, id);
      if (fd < 0)
        continue;
      g_autofree char *path = lock_path (folder, id);
      (void) unlink (path);
      close (fd);
    }
  g_clear_pointer (&dir, g_dir_close);
}

GPtrArray *
em_recovery_find (void)
{
  GPtrArray *found = g_ptr_array_new_with_free_func ((GDestroyNotify) em_recovered_free);
  g_autofree char *folder = dup_folder ();
  g_autoptr (GHashTable) with_journals = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  GDir *dir = g_dir_open (folder, 0, NULL);
  const char *name;
  char id[SESSION_LENGTH + 1];

  g_mutex_lock (&session.mutex);
  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    if (is_others (name, SUFFIX, id))
      {
        g_hash_table_add (with_journals, g_strdup (id));
        if (!claim (folder, id))
          continue;
        g_autofree char *file = g_build_filename (folder, name, NULL);
        g_ptr_array_add (found, look_at (file));
      }
    else if (name[0] == '.' && is_others (name + 1, SUFFIX EM_SAVE_SUFFIX, id))
      remove_half_written (folder, name, id);
  g_clear_pointer (&dir, g_dir_close);
  if (session.claimed == NULL)
    session.claimed = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  sweep_locks (folder, with_journals);
  g_mutex_unlock (&session.mutex);
  g_ptr_array_sort (found, compare_kept);
  return found;
}

/* The one quote of a journal is read where it stands, as any other file of a quote would be: what is refused there is refused here, and a
 * large one takes no more memory. */
static void
read_inside (EmXmlReader *reader, const char *name, EmQuoteFile *file)
{
  gboolean has_quote = FALSE;

  em_xml_begin (reader);
  while (em_xml_child (reader))
    if (!has_quote && strcmp (em_xml_name (reader), "quote") == 0)
      {
        EmXmlAround around;
        em_xml_enter (reader, EM_QUOTE_NS, &around);
        em_quote_file_read (reader, name, file);
        em_xml_come_back (reader, &around);
        has_quote = TRUE;
      }
    else
      pass_over_newer (reader, TRUE);
  if (em_xml_is_good (reader) && !has_quote)
    em_xml_refuse (reader, EM_FILE_ERROR_VALUE, "quote", _("missing."));
}

gboolean
em_recovery_parse (GBytes *journal, const char *name, EmQuoteFile *out_file, GError **error)
{
  EmRecovered about = { 0 };
  EmFileStamp stamp = { 0 };
  g_autoptr (EmXmlReader) reader = open_journal (journal, name, &about, &stamp, error);
  EmQuoteFile file;

  g_free (about.path);
  g_free (about.title);
  if (reader == NULL)
    return FALSE;
  em_quote_file_init (&file);
  read_inside (reader, name, &file);
  if (em_xml_reader_finish (reader, error))
    {
      *out_file = file;
      out_file->stamp = stamp;
      return TRUE;
    }
  em_quote_file_clear (&file);
  return FALSE;
}

gboolean
em_recovery_read (const EmRecovered *recovered, EmQuoteFile *out_file, GError **error)
{
  g_autofree char *name = g_path_get_basename (recovered->file);
  g_autoptr (GBytes) bytes = em_xml_read_file (recovered->file, limits.size_max, error);

  return bytes != NULL && em_recovery_parse (bytes, name, out_file, error);
}

void
em_recovery_discard (const EmRecovered *recovered)
{
  (void) unlink (recovered->file);
}
