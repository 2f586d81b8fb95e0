/* em-recovery: unsaved work kept on the side, and found again after a crash.
 *
 * Each running program is a session with a lock that dies with it; each open quote has a
 * journal in it: one file, written whole or not at all, with the quote, where it belongs and
 * what that file looked like. Journals of sessions that are gone are what can be recovered.
 * They lie in g_get_user_state_dir()/estimend/recovery; ESTIMEND_STATE_DIR moves it.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-quote-file.h"

G_BEGIN_DECLS

/* ---- of the running program; any thread ---- */

typedef struct _EmJournal EmJournal;

EmJournal *em_journal_new   (void);
EmJournal *em_journal_ref   (EmJournal *journal);
void       em_journal_unref (EmJournal *journal);
/* What is written on a ticket taken before the last em_journal_drop comes to nothing, so that a late thread
 * does not bring back what has been saved since. */
guint64    em_journal_ticket (EmJournal *journal);
/* path NULL: never saved. opened: as the file was when it was read or written here. */
gboolean   em_journal_keep  (EmJournal *journal, guint64 ticket, GBytes *quote, const char *path, const EmFileStamp *opened,
                             const char *title, GError **error);
/* There is nothing to lose any more. Never waits for a write. */
void       em_journal_drop  (EmJournal *journal);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (EmJournal, em_journal_unref)

/* ---- after a crash ---- */

typedef struct
{
  char  *file;     /* the journal's own */
  char  *path;     /* where the quote belongs; NULL: never saved */
  char  *title;
  gint64 kept_s;   /* Unix time of the last writing */
} EmRecovered;

/* EmRecovered, newest first; empty when nothing was lost. Other running programs no longer find them. */
GPtrArray *em_recovery_find    (void);
/* out_file->stamp tells the file the work began from, so that saving over a newer one is asked about. */
gboolean   em_recovery_read    (const EmRecovered *recovered, EmQuoteFile *out_file, GError **error);
/* The same of a journal's bytes; name is the file's, for errors. */
gboolean   em_recovery_parse   (GBytes *journal, const char *name, EmQuoteFile *out_file, GError **error);
void       em_recovery_discard (const EmRecovered *recovered);

EmRecovered *em_recovered_copy (const EmRecovered *recovered);
void         em_recovered_free (EmRecovered *recovered);

G_END_DECLS
