/* em-register-private: the register's parts, shared by its files alone.
 *
 * em-register.c holds and searches, em-register-scan.c reads the folder,
 * em-register-index.c the cache.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-register.h"

G_BEGIN_DECLS

struct _EmRegister
{
  char      *folder;    /* absolute */
  char      *basis;     /* what drafts were priced with, as a digest */
  GPtrArray *entries;   /* EmRegisterEntry, each shared with older snapshots */
  GHashTable *superseded; /* names of quotes of which a later revision is decided */
};

EmRegister      *em_register_new_empty   (const char *folder);
EmRegisterEntry *em_register_entry_new   (const char *path, const EmFileStamp *stamp);
void             em_register_entry_unref (gpointer entry);
int              em_register_compare     (gconstpointer a, gconstpointer b);
/* Once all entries are there. */
void             em_register_find_superseded (EmRegister *reg);
/* Whether the price depends on the shop's present rates. */
static inline gboolean
em_register_is_priced_now (const EmRegisterEntry *entry)
{
  return entry->problem == NULL && entry->state == EM_STATE_DRAFT;
}

gboolean em_register_index_write (const EmRegister *reg, GError **error);

G_END_DECLS
