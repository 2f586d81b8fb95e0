/* em-register: the quotes in the shop's folder, found by what is in them.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "config.h"

#include "em-register-private.h"

#include <math.h>
#include <string.h>

/* ---- entries ---- */

EmRegisterEntry *
em_register_entry_new (const char *path, const EmFileStamp *stamp)
{
  EmRegisterEntry *entry = g_atomic_rc_box_new0 (EmRegisterEntry);

  entry->path = g_strdup (path);
  entry->stamp = *stamp;
  return entry;
}

static void
clear_entry (gpointer data)
{
  EmRegisterEntry *entry = data;

  for (int i = 0; i < EM_N_ENTRY_TEXT; i++)
    g_free (entry->text[i]);
  g_free (entry->path);
  g_free (entry->problem);
  g_free (entry->folded);
}

void
em_register_entry_unref (gpointer entry)
{
  g_atomic_rc_box_release_full (entry, clear_entry);
}

/* ---- the register ---- */

EmRegister *
em_register_new_empty (const char *folder)
{
  EmRegister *reg = g_atomic_rc_box_new0 (EmRegister);

  reg->folder = g_canonicalize_filename (folder, NULL);
  reg->basis = g_strdup ("");
  reg->entries = g_ptr_array_new_with_free_func (em_register_entry_unref);
  reg->superseded = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  return reg;
}

EmRegister *
em_register_ref (EmRegister *reg)
{
  return g_atomic_rc_box_acquire (reg);
}

static void
clear_register (gpointer data)
{
  EmRegister *reg = data;

  g_free (reg->folder);
  g_free (reg->basis);
  g_ptr_array_unref (reg->entries);
  g_hash_table_unref (reg->superseded);
}

void
em_register_unref (EmRegister *reg)
{
  g_atomic_rc_box_release_full (reg, clear_register);
}

const char *
em_register_get_folder (const EmRegister *reg)
{
  return reg->folder;
}

guint
em_register_get_length (const EmRegister *reg)
{
  return reg->entries->len;
}

const EmRegisterEntry *
em_register_get_entry (const EmRegister *reg, guint index)
{
  return reg->entries->pdata[index];
}

char *
em_register_dup_path (const EmRegister *reg, guint index)
{
  return g_build_filename (reg->folder, em_register_get_entry (reg, index)->path, NULL);
}

/* Latest first; unreadable ones, which have no date, come last, by name. */
int
em_register_compare (gconstpointer a, gconstpointer b)
{
  const EmRegisterEntry *x = *(EmRegisterEntry *const *) a, *y = *(EmRegisterEntry *const *) b;
  int order = strcmp (y->text[EM_ENTRY_DATE], x->text[EM_ENTRY_DATE]);

  if (order == 0)
    order = strcmp (y->text[EM_ENTRY_NUMBER], x->text[EM_ENTRY_NUMBER]);
  if (order == 0)
    order = strcmp (y->text[EM_ENTRY_REVISION], x->text[EM_ENTRY_REVISION]);
  return order != 0 ? order : strcmp (x->path, y->path);
}

/* Entries are shared between snapshots as long as their files are the same. */
gboolean
em_register_equal (const EmRegister *reg, const EmRegister *other)
{
  return strcmp (reg->folder, other->folder) == 0 && strcmp (reg->basis, other->basis) == 0 && reg->entries->len == other->entries->len
         && (reg->entries->len == 0 || memcmp (reg->entries->pdata, other->entries->pdata, reg->entries->len * sizeof (gpointer)) == 0);
}

/* ---- revisions ---- */

char *
em_register_name (const char *number, const char *revision)
{
  if (number == NULL || *number == '\0')
    return g_strdup ("");
  return revision == NULL || *revision == '\0' ? g_strdup (number) : g_strdup_printf ("%s %s", number, revision);
}

static char *
name_of (const EmRegisterEntry *entry)
{
  return em_register_name (entry->text[EM_ENTRY_NUMBER], entry->text[EM_ENTRY_REVISION]);
}

static gboolean
is_decided (const EmRegisterEntry *entry)
{
  return entry->problem == NULL && (entry->state == EM_STATE_WON || entry->state == EM_STATE_LOST || entry->state == EM_STATE_LAPSED);
}

void
em_register_find_superseded (EmRegister *reg)
{
  g_autoptr (GHashTable) by_name = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);

  g_hash_table_remove_all (reg->superseded);
  for (guint i = 0; i < reg->entries->len; i++)
    g_hash_table_replace (by_name, name_of (reg->entries->pdata[i]), reg->entries->pdata[i]);
  for (guint i = 0; i < reg->entries->len; i++)
    {
      const EmRegisterEntry *entry = reg->entries->pdata[i];
      g_autofree char *own = name_of (entry);
      /* Up to the first quote; a name is met once, so quotes that revise each other end it too. */
      while (is_decided (reg->entries->pdata[i]) && entry != NULL && *entry->text[EM_ENTRY_REVISES] != '\0'
             && strcmp (entry->text[EM_ENTRY_REVISES], own) != 0
             && g_hash_table_add (reg->superseded, g_strdup (entry->text[EM_ENTRY_REVISES])))
        entry = g_hash_table_lookup (by_name, entry->text[EM_ENTRY_REVISES]);
    }
}

static gboolean
is_superseded (const EmRegister *reg, const EmRegisterEntry *entry)
{
  g_autofree char *name = g_hash_table_size (reg->superseded) > 0 ? name_of (entry) : NULL;

  return name != NULL && g_hash_table_contains (reg->superseded, name);
}

/* ---- search ---- */

/* NFKD takes accents off their letters; marks are then left out. */
char *
em_register_fold (const char *text)
{
  g_autofree char *apart = g_utf8_normalize (text, -1, G_NORMALIZE_ALL);
  g_autofree char *folded = g_utf8_casefold (apart != NULL ? apart : "", -1);
  GString *plain = g_string_sized_new (strlen (folded));

  for (const char *at = folded; *at != '\0'; at = g_utf8_next_char (at))
    {
      gunichar c = g_utf8_get_char (at);
      if (!g_unichar_ismark (c))
        g_string_append_unichar (plain, c);
    }
  return g_string_free (plain, FALSE);
}

static gboolean
fits (const EmRegisterEntry *entry, const EmRegisterQuery *query, char *const *words)
{
  const char *date = entry->text[EM_ENTRY_DATE];

  if (query->states != 0 && (entry->problem != NULL || !(query->states & (1u << entry->state))))
    return FALSE;
  if ((query->date_from != NULL || query->date_to != NULL) && *date == '\0')
    return FALSE;
  if ((query->date_from != NULL && strcmp (date, query->date_from) < 0) || (query->date_to != NULL && strcmp (date, query->date_to) > 0))
    return FALSE;
  for (; words != NULL && *words != NULL; words++)
    if (strstr (entry->folded, *words) == NULL)
      return FALSE;
  return TRUE;
}

GArray *
em_register_search (const EmRegister *reg, const EmRegisterQuery *query)
{
  GArray *found = g_array_new (FALSE, FALSE, sizeof (guint));
  g_autofree char *folded = query->text != NULL ? em_register_fold (query->text) : NULL;
  g_auto (GStrv) words = folded != NULL ? g_strsplit_set (folded, " \t\n", -1) : NULL;

  for (guint i = 0; i < reg->entries->len; i++)
    if (fits (reg->entries->pdata[i], query, words))
      g_array_append_val (found, i);
  return found;
}

/* ---- sums ---- */

/* The currency most of the priced quotes are in. */
static gboolean
commonest_currency (const EmRegister *reg, const GArray *indices, EmCurrency *out_currency)
{
  g_autoptr (GHashTable) counts = g_hash_table_new (g_str_hash, g_str_equal);
  guint most = 0;

  for (guint i = 0; i < indices->len; i++)
    {
      const EmRegisterEntry *entry = em_register_get_entry (reg, g_array_index (indices, guint, i));
      if (!entry->has_net)
        continue;
      guint n = GPOINTER_TO_UINT (g_hash_table_lookup (counts, entry->currency.code)) + 1;
      g_hash_table_replace (counts, (char *) entry->currency.code, GUINT_TO_POINTER (n));
      if (n > most)
        {
          most = n;
          *out_currency = entry->currency;
        }
    }
  return most > 0;
}

static double
won_share (double won, double lost, double lapsed)
{
  return won + lost + lapsed > 0.0 ? won / (won + lost + lapsed) : NAN;
}

static void
add_up (const EmRegister *reg, const EmRegisterEntry *entry, gboolean has_currency, EmRegisterSummary *sum, double *quoted_s, double *actual_s)
{
  int64_t net;

  if (entry->problem != NULL)
    {
      sum->n_unreadable++;
      return;
    }
  if (entry->quoted_bench_s > 0.0 && entry->actual_bench_s > 0.0)
    {
      sum->n_timed++;
      *quoted_s += entry->quoted_bench_s;
      *actual_s += entry->actual_bench_s;
    }
  if (is_superseded (reg, entry))
    return;
  sum->n[entry->state]++;
  if (has_currency && entry->has_net && strcmp (entry->currency.code, sum->currency.code) == 0
      && em_money_add (sum->net_minor[entry->state], entry->net_minor, &net) == EM_OK)
    sum->net_minor[entry->state] = net;
}

void
em_register_sum_up (const EmRegister *reg, const GArray *indices, EmRegisterSummary *out_summary)
{
  EmRegisterSummary sum = { 0 };
  double quoted_s = 0.0, actual_s = 0.0;
  gboolean has_currency = commonest_currency (reg, indices, &sum.currency);

  for (guint i = 0; i < indices->len; i++)
    add_up (reg, em_register_get_entry (reg, g_array_index (indices, guint, i)), has_currency, &sum, &quoted_s, &actual_s);
  sum.won_ratio = won_share (sum.n[EM_STATE_WON], sum.n[EM_STATE_LOST], sum.n[EM_STATE_LAPSED]);
  sum.won_value_ratio = won_share ((double) sum.net_minor[EM_STATE_WON], (double) sum.net_minor[EM_STATE_LOST],
                                   (double) sum.net_minor[EM_STATE_LAPSED]);
  sum.actual_ratio = quoted_s > 0.0 ? actual_s / quoted_s : NAN;
  *out_summary = sum;
}
