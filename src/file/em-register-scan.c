/* em-register-scan: reads and prices what is new in the shop's folder.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "config.h"

#include "em-register-private.h"

#include "em-book-file.h"
#include "em-cost.h"
#include "em-save.h"

#include <errno.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <string.h>
#include <sys/stat.h>

#define SUFFIX ".estimend"

enum { DEPTH_MAX = 8, FILES_MAX = 200000, FOLDED_MAX = 64 * 1024, TOLD_EVERY_US = 50000 };

/* What one scan carries along. */
typedef struct
{
  EmRegister        *reg;          /* being made */
  GHashTable        *old;          /* path → EmRegisterEntry, borrowed from the older snapshot */
  gboolean           has_basis;    /* drafts of it were priced with the same rates */
  const EmRates     *rates;
  const EmCatalogue *catalogue;
  EmCost             cost;
  EmRegisterProgress progress;
  gpointer           progress_data;
  gint64             told_us;
  guint              n_read;       /* anew */
} Scan;

/* ---- files ---- */

static void
collect (const char *folder, const char *within, int depth, GPtrArray *paths)
{
  g_autofree char *whole = g_build_filename (folder, within, NULL);
  GDir *dir = g_dir_open (whole, 0, NULL);
  const char *name;

  while (dir != NULL && paths->len < FILES_MAX && (name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = *within != '\0' ? g_build_filename (within, name, NULL) : g_strdup (name);
      g_autofree char *full = g_build_filename (folder, path, NULL);
      struct stat about;
      if (name[0] == '.' || lstat (full, &about) != 0)
        continue;
      if (S_ISDIR (about.st_mode) && depth < DEPTH_MAX)
        collect (folder, path, depth + 1, paths);
      else if (!S_ISDIR (about.st_mode) && g_str_has_suffix (name, SUFFIX))
        g_ptr_array_add (paths, g_steal_pointer (&path));
    }
  g_clear_pointer (&dir, g_dir_close);
}

/* ---- one quote ---- */

static void
fill_texts (EmRegisterEntry *entry, const EmQuote *quote)
{
  static const EmQuoteText from[EM_N_ENTRY_TEXT] =
  {
    EM_QUOTE_NUMBER, EM_QUOTE_REVISION, EM_QUOTE_DATE, EM_QUOTE_CUSTOMER, EM_QUOTE_REFERENCE, EM_QUOTE_TOOL, EM_QUOTE_TOOL_NUMBER,
    EM_QUOTE_REVISES,
  };

  for (int i = 0; i < EM_N_ENTRY_TEXT; i++)
    entry->text[i] = g_strdup (quote != NULL && quote->text[from[i]] != NULL ? quote->text[from[i]] : "");
}

/* All words of the quote, cut where a customer's notes are a book; a line apart, so that no word is found across two. */
static char *
gather_words (const EmQuote *quote, const char *path)
{
  g_autoptr (GString) text = g_string_new (NULL);
  g_autofree char *name = g_filename_display_name (path);

  g_string_append (text, name);
  for (int i = 0; i < EM_N_QUOTE_TEXT; i++)
    if (i != EM_QUOTE_EXTRA && i != EM_QUOTE_NOTES && quote->text[i] != NULL)
      g_string_append_printf (text, "\n%s", quote->text[i]);
  for (int32_t i = 0; i < quote->n_features && text->len < FOLDED_MAX; i++)
    for (int k = 0; k < EM_N_FEATURE_TEXT; k++)
      if (k != EM_FEATURE_EXTRA && quote->feature[i].text[k] != NULL)
        g_string_append_printf (text, "\n%s", quote->feature[i].text[k]);
  if (quote->text[EM_QUOTE_NOTES] != NULL)
    g_string_append_printf (text, "\n%s", quote->text[EM_QUOTE_NOTES]);
  if (text->len > FOLDED_MAX)
    g_string_truncate (text, (gsize) (g_utf8_find_prev_char (text->str, text->str + FOLDED_MAX) - text->str));
  return em_register_fold (text->str);
}

/* Bench time quoted and spent, over the features where it was noted; for all tools. */
static void
compare_times (EmRegisterEntry *entry, const EmQuote *quote, const EmCost *cost)
{
  for (int32_t i = 0; i < quote->n_features && i < cost->n_features; i++)
    {
      const EmFeatureCost *feature = &cost->feature[i];
      double actual_s = quote->feature[i].actual.bench_s;
      if (feature->status != EM_OK || isnan (actual_s))
        continue;
      entry->actual_bench_s += actual_s;
      entry->quoted_bench_s += (feature->task_s[EM_TASK_ARC_ON] + feature->task_s[EM_TASK_HANDLING]) * quote->n_tools;
    }
}

/* A quote that was sent is priced by the rates it was sent with; without them it has no price that would hold. */
static void
price (Scan *scan, EmRegisterEntry *entry, const EmQuoteFile *file)
{
  const EmRates *rates = file->sent_rates != NULL ? file->sent_rates : scan->rates;
  const EmCatalogue *catalogue = file->sent_catalogue != NULL ? file->sent_catalogue : scan->catalogue;

  if (file->quote.state != EM_STATE_DRAFT && file->sent_rates == NULL)
    return;
  if (em_cost_quote (&scan->cost, &file->quote, rates, catalogue, NULL, NULL) != EM_OK)
    return;
  entry->has_net = TRUE;
  entry->is_partial = scan->cost.n_faults > 0 || file->n_kept > 0;
  entry->currency = rates->currency;
  entry->net_minor = scan->cost.totals.net_minor;
  compare_times (entry, &file->quote, &scan->cost);
}

static EmRegisterEntry *
read_quote (Scan *scan, const char *path, const char *full, const EmFileStamp *stamp)
{
  EmRegisterEntry *entry = em_register_entry_new (path, stamp);
  g_autoptr (GError) error = NULL;
  EmQuoteFile file;

  scan->n_read++;
  if (!em_quote_file_load (full, &file, &error))
    {
      g_autofree char *name = g_filename_display_name (path);
      fill_texts (entry, NULL);
      entry->problem = g_strdup (error->message);
      entry->folded = em_register_fold (name);
      return entry;
    }
  entry->state = file.quote.state;
  entry->n_features = file.quote.n_features;
  entry->n_tools = file.quote.n_tools;
  fill_texts (entry, &file.quote);
  entry->folded = gather_words (&file.quote, path);
  price (scan, entry, &file);
  em_quote_file_clear (&file);
  return entry;
}

/* The older snapshot's, where the file and what it is priced with are the same. */
static EmRegisterEntry *
find_old (Scan *scan, const char *path, const EmFileStamp *stamp)
{
  EmRegisterEntry *entry = g_hash_table_lookup (scan->old, path);

  if (entry == NULL || !em_file_stamp_equal (&entry->stamp, stamp) || (em_register_is_priced_now (entry) && !scan->has_basis))
    return NULL;
  return g_atomic_rc_box_acquire (entry);
}

/* ---- the scan ---- */

static void
tell (Scan *scan, guint n_done, guint n_files)
{
  gint64 now_us = g_get_monotonic_time ();

  if (scan->progress == NULL || (n_done < n_files && now_us - scan->told_us < TOLD_EVERY_US))
    return;
  scan->told_us = now_us;
  scan->progress (n_done, n_files, scan->progress_data);
}

static char *
digest_basis (const EmRates *rates, const EmCatalogue *catalogue)
{
  g_autoptr (GBytes) book = em_rates_write (rates, NULL), metals = em_catalogue_write (catalogue, FALSE, NULL);
  g_autoptr (GChecksum) sum = g_checksum_new (G_CHECKSUM_SHA256);

  if (book != NULL)
    g_checksum_update (sum, g_bytes_get_data (book, NULL), (gssize) g_bytes_get_size (book));
  if (metals != NULL)
    g_checksum_update (sum, g_bytes_get_data (metals, NULL), (gssize) g_bytes_get_size (metals));
  return g_strdup (g_checksum_get_string (sum));
}

static gboolean
read_all (Scan *scan, GPtrArray *paths, GCancellable *cancellable, GError **error)
{
  for (guint i = 0; i < paths->len; i++)
    {
      g_autofree char *full = g_build_filename (scan->reg->folder, paths->pdata[i], NULL);
      EmFileStamp stamp;
      EmRegisterEntry *entry;
      if (g_cancellable_set_error_if_cancelled (cancellable, error))
        return FALSE;
      em_file_stamp (full, &stamp);
      entry = find_old (scan, paths->pdata[i], &stamp);
      g_ptr_array_add (scan->reg->entries, entry != NULL ? entry : read_quote (scan, paths->pdata[i], full, &stamp));
      tell (scan, i + 1, paths->len);
    }
  return TRUE;
}

static void
index_old (Scan *scan, EmRegister *old)
{
  scan->old = g_hash_table_new (g_str_hash, g_str_equal);
  if (old == NULL || strcmp (old->folder, scan->reg->folder) != 0)
    return;
  scan->has_basis = strcmp (old->basis, scan->reg->basis) == 0;
  for (guint i = 0; i < old->entries->len; i++)
    {
      EmRegisterEntry *entry = old->entries->pdata[i];
      g_hash_table_insert (scan->old, entry->path, entry);
    }
}

EmRegister *
em_register_scan (const char *folder, EmRegister *old, const EmRates *rates, const EmCatalogue *catalogue,
                  EmRegisterProgress progress, gpointer progress_data, GCancellable *cancellable, GError **error)
{
  g_autoptr (EmRegister) reg = em_register_new_empty (folder);
  g_autoptr (GPtrArray) paths = g_ptr_array_new_with_free_func (g_free);
  Scan scan = { .reg = reg, .rates = rates, .catalogue = catalogue, .progress = progress, .progress_data = progress_data };
  GDir *dir = g_dir_open (reg->folder, 0, NULL);
  gboolean is_whole;

  if (dir == NULL)
    {
      g_set_error (error, EM_FILE_ERROR, EM_FILE_ERROR_READ, _("The folder %s cannot be read: %s."), reg->folder, g_strerror (errno));
      return NULL;
    }
  g_dir_close (dir);
  g_free (reg->basis);
  reg->basis = digest_basis (rates, catalogue);
  index_old (&scan, old);
  em_cost_init (&scan.cost);
  collect (reg->folder, "", 1, paths);
  is_whole = read_all (&scan, paths, cancellable, error);
  em_cost_clear (&scan.cost);
  g_hash_table_unref (scan.old);
  if (!is_whole)
    return NULL;
  g_ptr_array_sort (reg->entries, em_register_compare);
  em_register_find_superseded (reg);
  /* An index that can't be written costs the next start its time, nothing else. */
  if (scan.n_read > 0 || old == NULL || old->entries->len != reg->entries->len || !scan.has_basis)
    em_register_index_write (reg, NULL);
  return g_steal_pointer (&reg);
}

/* ---- in a thread ---- */

typedef struct
{
  char              *folder;
  EmRegister        *old;          /* owned or NULL */
  EmRates            rates;
  EmCatalogue        catalogue;
  EmRegisterProgress progress;
  gpointer           progress_data;
  GTask             *task;         /* borrowed: the scan runs in it */
} Order;

typedef struct
{
  GTask *task;                     /* owned, so that what progress_data leads to is still there */
  guint  n_done, n_files;
} Tidings;

static void
free_order (gpointer data)
{
  Order *order = data;

  g_free (order->folder);
  g_clear_pointer (&order->old, em_register_unref);
  em_rates_clear (&order->rates);
  em_catalogue_clear (&order->catalogue);
  g_free (order);
}

static gboolean
pass_on (gpointer data)
{
  Tidings *tidings = data;
  Order *order = g_task_get_task_data (tidings->task);

  if (!g_task_get_completed (tidings->task) && !g_cancellable_is_cancelled (g_task_get_cancellable (tidings->task)))
    order->progress (tidings->n_done, tidings->n_files, order->progress_data);
  return G_SOURCE_REMOVE;
}

static void
free_tidings (gpointer data)
{
  Tidings *tidings = data;

  g_object_unref (tidings->task);
  g_free (tidings);
}

static void
on_progress (guint n_done, guint n_files, gpointer data)
{
  Order *order = data;
  Tidings *tidings = g_new (Tidings, 1);

  *tidings = (Tidings) { g_object_ref (order->task), n_done, n_files };
  g_main_context_invoke_full (g_task_get_context (order->task), G_PRIORITY_DEFAULT, pass_on, tidings, free_tidings);
}

static void
scan_in_thread (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  Order *order = data;
  g_autoptr (EmRegister) begun = order->old == NULL ? em_register_new (order->folder) : em_register_ref (order->old);
  GError *error = NULL;
  EmRegister *reg;

  (void) source;
  reg = em_register_scan (order->folder, begun, &order->rates, &order->catalogue, order->progress != NULL ? on_progress : NULL, order,
                          cancellable, &error);
  if (reg != NULL)
    g_task_return_pointer (task, reg, (GDestroyNotify) em_register_unref);
  else
    g_task_return_error (task, error);
}

void
em_register_scan_async (const char *folder, EmRegister *old, const EmRates *rates, const EmCatalogue *catalogue,
                        EmRegisterProgress progress, gpointer progress_data, GCancellable *cancellable, GAsyncReadyCallback callback,
                        gpointer data)
{
  g_autoptr (GTask) task = g_task_new (NULL, cancellable, callback, data);
  Order *order = g_new0 (Order, 1);

  em_rates_init (&order->rates);
  em_catalogue_init (&order->catalogue);
  order->folder = g_strdup (folder);
  order->old = old != NULL ? em_register_ref (old) : NULL;
  order->progress = progress;
  order->progress_data = progress_data;
  order->task = task;
  g_task_set_task_data (task, order, free_order);
  if (em_rates_copy (rates, &order->rates) != EM_OK || em_catalogue_copy (catalogue, &order->catalogue) != EM_OK)
    g_task_return_new_error (task, EM_FILE_ERROR, EM_FILE_ERROR_READ, "%s", _("memory ran out."));
  else
    g_task_run_in_thread (task, scan_in_thread);
}

EmRegister *
em_register_scan_finish (GAsyncResult *result, GError **error)
{
  return g_task_propagate_pointer (G_TASK (result), error);
}
