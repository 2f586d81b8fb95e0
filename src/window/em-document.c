/* em-document: an open quote: the one thing in the window that changes it.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-document.h"

#include "em-history.h"
#include "em-lock-release.h"
#include "em-notes.h"
#include "em-register.h"
#include "em-save.h"

#include <glib/gi18n.h>
#include <string.h>

struct _EmDocument
{
  GObject parent_instance;

  EmQuoteFile file;          /* the quote lives in it; what it was sent with is in sent_basis */
  EmBasis    *shop_basis;
  EmBasis    *sent_basis;    /* a sent quote's own rates and metals, or NULL; changes and goes back with the quote */
  EmBasis    *settled_sent;  /* what it was after the last step, which the next has to bring back */
  EmCost      cost;
  EmStatus    status;        /* of the quote's own numbers */
  EmFault     fault;
  EmFeatureCost unreckoned;  /* stands for features the cost does not hold yet */
  EmHistory  *history;
  GHashTable *good_prices;   /* feature id → int64: the last that could be reckoned */
  int64_t     good_net_minor, good_total_minor;
  gboolean    has_good_total;
  GHashTable *problems;      /* "id/field" → text */
  uint32_t    selected_id;
  int32_t     selected_at;   /* where it was when last looked for */
  gboolean    awaits_wire;   /* see em_document_awaits_wire */
  char       *path;
  EmLock     *lock;          /* on path, or NULL */
  guint       n_saving;      /* saves under way */
};

G_DEFINE_FINAL_TYPE (EmDocument, em_document, G_TYPE_OBJECT)

enum { CHANGED, N_SIGNALS };
static guint signals[N_SIGNALS];

static EmBasis *
present_basis (EmDocument *self)
{
  return self->file.quote.has_sent_rates && self->sent_basis != NULL ? self->sent_basis : self->shop_basis;
}

static void
keep_good_price (EmDocument *self, int32_t index)
{
  const EmFeatureCost *cost = &self->cost.feature[index];

  if (cost->status != EM_OK)
    return;
  int64_t *kept = g_new (int64_t, 1);
  *kept = cost->price_minor;
  g_hash_table_insert (self->good_prices, GUINT_TO_POINTER (self->file.quote.feature[index].id), kept);
}

/* Keeps what could be reckoned, so that a slip of the keyboard does not blank the price. index: the one feature that changed, or −1. */
static void
keep_good_prices (EmDocument *self, int32_t index)
{
  const EmQuote *quote = &self->file.quote;

  if (self->status != EM_OK)
    return;
  if (index >= 0)
    keep_good_price (self, index);
  for (int32_t i = 0; index < 0 && i < self->cost.n_features && i < quote->n_features; i++)
    keep_good_price (self, i);
  if (self->cost.n_faults == 0 && quote->n_features > 0)
    {
      self->good_net_minor = self->cost.totals.net_minor;
      self->good_total_minor = self->cost.totals.total_minor;
      self->has_good_total = TRUE;
    }
}

/* Once for each reckoning: rows of a long quote ask. */
static void
look_for_wire (EmDocument *self)
{
  const EmCost *cost = &self->cost;

  self->awaits_wire = cost->n_faults > 0 && self->file.quote.text[EM_QUOTE_FILLER] == NULL;
  for (int32_t i = 0; self->awaits_wire && i < cost->n_features; i++)
    if (cost->feature[i].status != EM_OK && g_strcmp0 (cost->feature[i].fault.field, "filler") != 0)
      self->awaits_wire = FALSE;
}

static void
reckon (EmDocument *self, int32_t index)
{
  EmBasis *basis = present_basis (self);
  const EmRates *rates = em_basis_get_rates (basis);
  const EmCatalogue *catalogue = em_basis_get_catalogue (basis);
  const EmQuote *quote = &self->file.quote;

  gboolean is_alone = index >= 0 && self->status == EM_OK && self->cost.n_features == quote->n_features;

  /* One feature edited alone is reckoned alone. */
  if (is_alone)
    self->status = em_cost_update (&self->cost, index, quote, rates, catalogue, &self->fault);
  else
    self->status = em_cost_quote (&self->cost, quote, rates, catalogue, NULL, &self->fault);
  /* What is left is of another quote: its rows are not this one's, and its prices may not be printed. */
  if (self->status != EM_OK)
    {
      em_cost_clear (&self->cost);
      em_cost_init (&self->cost);
    }
  keep_good_prices (self, is_alone ? index : -1);
  look_for_wire (self);
}

static void
settle_selection (EmDocument *self)
{
  const EmQuote *quote = &self->file.quote;

  if (self->selected_id != 0 && em_quote_find (quote, self->selected_id) < 0)
    self->selected_id = 0;
  if (self->selected_id == 0 && quote->n_features > 0)
    self->selected_id = quote->feature[0].id;
}

static void
emit_changed (EmDocument *self, EmChange what, int32_t index)
{
  g_signal_emit (self, signals[CHANGED], 0, (guint) what, (int) index);
}

/* Nobody could settle those of a feature that is gone. */
static void
settle_problems (EmDocument *self)
{
  GHashTableIter iter;
  gpointer key;

  g_hash_table_iter_init (&iter, self->problems);
  while (g_hash_table_iter_next (&iter, &key, NULL))
    {
      uint32_t feature_id = (uint32_t) g_ascii_strtoull (key, NULL, 10);
      if (feature_id != 0 && em_quote_find (&self->file.quote, feature_id) < 0)
        g_hash_table_iter_remove (&iter);
    }
}

/* The step just made, or gone by, knows it. */
static void
settle_sent (EmDocument *self)
{
  g_clear_pointer (&self->settled_sent, em_basis_unref);
  self->settled_sent = self->sent_basis != NULL ? em_basis_ref (self->sent_basis) : NULL;
}

static void
reckon_and_tell (EmDocument *self, EmChange what, int32_t index)
{
  /* The words alone have no price. */
  if (what != EM_CHANGE_NOTES)
    reckon (self, index);
  if (index < 0)
    {
      settle_selection (self);
      settle_problems (self);
    }
  emit_changed (self, what, index);
}

static void
em_document_finalize (GObject *object)
{
  EmDocument *self = EM_DOCUMENT (object);

  em_cost_clear (&self->cost);
  em_quote_file_clear (&self->file);
  g_clear_pointer (&self->shop_basis, em_basis_unref);
  g_clear_pointer (&self->sent_basis, em_basis_unref);
  g_clear_pointer (&self->settled_sent, em_basis_unref);
  g_clear_pointer (&self->history, em_history_free);
  g_clear_pointer (&self->good_prices, g_hash_table_unref);
  g_clear_pointer (&self->problems, g_hash_table_unref);
  g_clear_pointer (&self->path, g_free);
  em_lock_release_take (self->lock);
  G_OBJECT_CLASS (em_document_parent_class)->finalize (object);
}

static void
em_document_class_init (EmDocumentClass *class)
{
  G_OBJECT_CLASS (class)->finalize = em_document_finalize;

  signals[CHANGED] = g_signal_new ("changed", EM_TYPE_DOCUMENT, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                   G_TYPE_NONE, 2, G_TYPE_UINT, G_TYPE_INT);
}

static void
em_document_init (EmDocument *self)
{
  em_quote_file_init (&self->file);
  em_cost_init (&self->cost);
  self->history = em_history_new ();
  self->good_prices = g_hash_table_new_full (NULL, NULL, NULL, g_free);
  self->problems = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
}

EmDocument *
em_document_new (EmBasis *basis)
{
  EmDocument *self = g_object_new (EM_TYPE_DOCUMENT, NULL);
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();
  g_autofree char *today = g_date_time_format (now, "%Y-%m-%d");

  self->shop_basis = em_basis_ref (basis);
  self->file.quote.units = em_basis_get_rates (basis)->units;
  em_quote_set_text (&self->file.quote, EM_QUOTE_DATE, today);
  reckon (self, -1);
  return self;
}

EmDocument *
em_document_new_take (EmBasis *basis, EmQuoteFile *file, const char *path)
{
  EmDocument *self = g_object_new (EM_TYPE_DOCUMENT, NULL);

  self->shop_basis = em_basis_ref (basis);
  em_quote_file_clear (&self->file);
  self->file = *file;
  em_quote_file_init (file);
  self->path = g_strdup (path);
  if (self->file.sent_rates != NULL && self->file.sent_catalogue != NULL)
    {
      self->sent_basis = em_basis_new_take (self->file.sent_rates, self->file.sent_catalogue);
      g_clear_pointer (&self->file.sent_rates, g_free);
      g_clear_pointer (&self->file.sent_catalogue, g_free);
      settle_sent (self);
    }
  reckon (self, -1);
  settle_selection (self);
  return self;
}

EmDocument *
em_document_new_recovered (EmBasis *basis, EmQuoteFile *file, const char *path)
{
  EmDocument *self = em_document_new_take (basis, file, path);

  em_history_unmark_saved (self->history);
  return self;
}

EmDocument *
em_document_new_from_path (EmBasis *basis, const char *path, GError **error)
{
  EmQuoteFile file;

  if (!em_quote_file_load (path, &file, error))
    return NULL;
  return em_document_new_take (basis, &file, path);
}

const EmQuote *
em_document_get_quote (EmDocument *self)
{
  return &self->file.quote;
}

const EmCost *
em_document_get_cost (EmDocument *self)
{
  return &self->cost;
}

const EmFeatureCost *
em_document_get_feature_cost (EmDocument *self, int32_t index)
{
  if (index < self->cost.n_features && self->cost.n_features == self->file.quote.n_features)
    return &self->cost.feature[index];
  self->unreckoned.status = self->status != EM_OK ? self->status : EM_FAULT_MISSING;
  self->unreckoned.fault = self->fault;
  if (self->unreckoned.fault.field == NULL)
    self->unreckoned.fault.field = "quote";
  return &self->unreckoned;
}

EmStatus
em_document_get_status (EmDocument *self, EmFault *out_fault)
{
  if (out_fault != NULL && self->status != EM_OK)
    *out_fault = self->fault;
  return self->status;
}

EmBasis *
em_document_get_basis (EmDocument *self)
{
  return present_basis (self);
}

const EmRates *
em_document_get_rates (EmDocument *self)
{
  return em_basis_get_rates (present_basis (self));
}

const EmCatalogue *
em_document_get_catalogue (EmDocument *self)
{
  return em_basis_get_catalogue (present_basis (self));
}

EmUnits
em_document_get_units (EmDocument *self)
{
  return self->file.quote.units;
}

void
em_document_set_basis (EmDocument *self, EmBasis *basis)
{
  EmBasis *old = self->shop_basis;

  self->shop_basis = em_basis_ref (basis);
  em_basis_unref (old);
  reckon_and_tell (self, EM_CHANGE_BASIS, -1);
}

void
em_document_trace (EmDocument *self, int32_t row, EmTrace *out_trace)
{
  EmBasis *basis = present_basis (self);

  em_trace_init (out_trace);
  if (row >= 0)
    {
      EmFeatureCost one;
      em_cost_feature (&self->file.quote, row, em_basis_get_rates (basis), em_basis_get_catalogue (basis), &one, out_trace);
      return;
    }

  EmCost whole;
  em_cost_init (&whole);
  em_cost_quote (&whole, &self->file.quote, em_basis_get_rates (basis), em_basis_get_catalogue (basis), out_trace, NULL);
  em_cost_clear (&whole);
}

gboolean
em_document_awaits_wire (EmDocument *self)
{
  return self->awaits_wire;
}

int64_t
em_document_get_feature_price (EmDocument *self, int32_t index, gboolean *out_is_stale)
{
  uint32_t id = self->file.quote.feature[index].id;
  const EmFeatureCost *cost = em_document_get_feature_cost (self, index);

  *out_is_stale = cost->status != EM_OK || em_document_has_problem (self, id);
  if (cost->status == EM_OK)
    return cost->price_minor;

  const int64_t *kept = g_hash_table_lookup (self->good_prices, GUINT_TO_POINTER (id));
  return kept != NULL ? *kept : 0;
}

static gboolean
is_total_good (EmDocument *self)
{
  return self->status == EM_OK && self->cost.n_faults == 0;
}

int64_t
em_document_get_total (EmDocument *self, gboolean *out_is_stale)
{
  *out_is_stale = !is_total_good (self) || g_hash_table_size (self->problems) > 0;
  return is_total_good (self) || !self->has_good_total ? self->cost.totals.total_minor : self->good_total_minor;
}

gboolean
em_document_has_total (EmDocument *self)
{
  return is_total_good (self) || self->has_good_total;
}

int64_t
em_document_get_net (EmDocument *self, gboolean *out_is_stale)
{
  *out_is_stale = !is_total_good (self) || g_hash_table_size (self->problems) > 0;
  return is_total_good (self) || !self->has_good_total ? self->cost.totals.net_minor : self->good_net_minor;
}

void
em_document_set_problem (EmDocument *self, uint32_t feature_id, const char *field, const char *text)
{
  g_autofree char *key = g_strdup_printf ("%u/%s", feature_id, field);
  const char *present = g_hash_table_lookup (self->problems, key);

  if (g_strcmp0 (present, text) == 0)
    return;
  if (text != NULL)
    g_hash_table_insert (self->problems, g_steal_pointer (&key), g_strdup (text));
  else
    g_hash_table_remove (self->problems, key);
  emit_changed (self, EM_CHANGE_PROBLEMS, -1);
}

const char *
em_document_get_problem (EmDocument *self, uint32_t feature_id, const char *field)
{
  g_autofree char *key = g_strdup_printf ("%u/%s", feature_id, field);

  return g_hash_table_lookup (self->problems, key);
}

gboolean
em_document_has_problem (EmDocument *self, uint32_t feature_id)
{
  g_autofree char *prefix = g_strdup_printf ("%u/", feature_id);
  GHashTableIter iter;
  gpointer key;

  g_hash_table_iter_init (&iter, self->problems);
  while (g_hash_table_iter_next (&iter, &key, NULL))
    if (g_str_has_prefix (key, prefix))
      return TRUE;
  return FALSE;
}

guint
em_document_get_problems (EmDocument *self)
{
  return g_hash_table_size (self->problems);
}

uint32_t
em_document_get_selected (EmDocument *self)
{
  return self->selected_id;
}

int32_t
em_document_get_selected_index (EmDocument *self)
{
  const EmQuote *quote = &self->file.quote;

  if (self->selected_id == 0)
    return -1;
  if (self->selected_at < 0 || self->selected_at >= quote->n_features || quote->feature[self->selected_at].id != self->selected_id)
    self->selected_at = em_quote_find (quote, self->selected_id);
  return self->selected_at;
}

void
em_document_set_selected (EmDocument *self, uint32_t feature_id)
{
  if (self->selected_id == feature_id)
    return;
  em_history_break (self->history);
  self->selected_id = feature_id;
  emit_changed (self, EM_CHANGE_SELECTION, -1);
}

gboolean
em_document_edit_feature (EmDocument *self, int32_t index, guint64 key, EmEditFeature func, gconstpointer data)
{
  EmFeature *present = &self->file.quote.feature[index];
  EmFeature edited;

  if (em_feature_copy (present, &edited) != EM_OK)
    return FALSE;
  func (&edited, data);
  if (em_feature_equal (present, &edited))
    {
      em_feature_clear (&edited);
      return FALSE;
    }
  em_history_add_feature_take (self->history, key, EM_CHANGE_FEATURE, index, present);
  *present = edited;
  reckon_and_tell (self, EM_CHANGE_FEATURE, index);
  return TRUE;
}

/* The mark that em_notes_corrected changes for the feature's field; n_marks: it adds one. */
static int32_t
find_mark (const EmQuote *quote, uint32_t feature_id, const char *field)
{
  int32_t at = 0;

  while (at < quote->n_marks && (quote->mark[at].feature_id != feature_id || g_strcmp0 (quote->mark[at].field, field) != 0))
    at++;
  return at;
}

gboolean
em_document_correct_feature (EmDocument *self, int32_t index, guint64 key, const char *field, EmEditFeature func, gconstpointer data)
{
  EmQuote *quote = &self->file.quote;
  EmFeature edited, old = quote->feature[index];
  int32_t n_marks = quote->n_marks, mark_at = find_mark (quote, old.id, field);
  EmMark mark = { 0 };
  gboolean is_marked = FALSE;

  if (em_feature_copy (&old, &edited) != EM_OK)
    return FALSE;
  func (&edited, data);
  if (em_feature_equal (&old, &edited))
    {
      em_feature_clear (&edited);
      return FALSE;
    }
  quote->feature[index] = edited;
  if (mark_at < n_marks)
    {
      mark = quote->mark[mark_at];
      is_marked = mark.state != EM_MARK_REJECTED;
      mark.field = em_text_dup (mark.field);
      mark.reason = em_text_dup (mark.reason);
    }
  em_notes_corrected (quote, index, field);
  if (is_marked || quote->n_marks > n_marks)
    em_history_add_correction_take (self->history, key, EM_CHANGE_FEATURE | EM_CHANGE_MARKS, index, &old, mark_at,
                                    mark_at < n_marks ? &mark : NULL);
  else
    {
      em_history_add_feature_take (self->history, key, EM_CHANGE_FEATURE, index, &old);
      free (mark.field);
      free (mark.reason);
    }
  reckon_and_tell (self, is_marked || quote->n_marks > n_marks ? EM_CHANGE_FEATURE | EM_CHANGE_MARKS : EM_CHANGE_FEATURE, index);
  return TRUE;
}

gboolean
em_document_edit_quote (EmDocument *self, guint64 key, EmChange what, EmEditQuote func, gconstpointer data)
{
  EmQuote edited;

  if (em_quote_copy (&self->file.quote, &edited) != EM_OK)
    return FALSE;
  func (&edited, data);
  if (em_quote_equal (&self->file.quote, &edited))
    {
      em_quote_clear (&edited);
      return FALSE;
    }
  em_history_add_quote_take (self->history, key, what, &self->file.quote, self->settled_sent);
  self->file.quote = edited;
  settle_sent (self);
  reckon_and_tell (self, what, -1);
  return TRUE;
}

void
em_document_break (EmDocument *self)
{
  em_history_break (self->history);
}

gboolean
em_document_can_undo (EmDocument *self)
{
  return em_history_can_undo (self->history);
}

gboolean
em_document_can_redo (EmDocument *self)
{
  return em_history_can_redo (self->history);
}

/* What was typed but not taken is gone once the quote moves under it. */
static void
tell_step (EmDocument *self, guint what, int32_t index)
{
  g_hash_table_remove_all (self->problems);
  settle_sent (self);
  if (index >= 0)
    {
      self->selected_id = self->file.quote.feature[index].id;
      reckon (self, index);
      emit_changed (self, (EmChange) what | EM_CHANGE_SELECTION | EM_CHANGE_PROBLEMS, index);
    }
  else
    reckon_and_tell (self, (EmChange) what | EM_CHANGE_PROBLEMS, -1);
}

void
em_document_undo (EmDocument *self)
{
  guint what;
  int32_t index;

  if (em_history_undo (self->history, &self->file.quote, &self->sent_basis, &what, &index))
    tell_step (self, what, index);
}

void
em_document_redo (EmDocument *self)
{
  guint what;
  int32_t index;

  if (em_history_redo (self->history, &self->file.quote, &self->sent_basis, &what, &index))
    tell_step (self, what, index);
}

const char *
em_document_get_path (EmDocument *self)
{
  return self->path;
}

gboolean
em_document_is_modified (EmDocument *self)
{
  return !em_history_is_saved (self->history);
}

gboolean
em_document_is_blank (EmDocument *self)
{
  return self->path == NULL && !em_history_can_undo (self->history) && !em_history_can_redo (self->history)
         && self->file.quote.n_features == 0;
}

char *
em_document_dup_title (EmDocument *self)
{
  /* With the revision: a file is named by it too, and must not take the place of the one before. */
  g_autofree char *name = em_register_name (self->file.quote.text[EM_QUOTE_NUMBER], self->file.quote.text[EM_QUOTE_REVISION]);
  const char *customer = self->file.quote.text[EM_QUOTE_CUSTOMER];

  if (*name != '\0' && customer != NULL)
    return g_strdup_printf ("%s · %s", name, customer);
  if (*name != '\0' || customer != NULL)
    return g_strdup (*name != '\0' ? name : customer);
  if (self->path != NULL)
    return g_filename_display_basename (self->path);
  return g_strdup (_("Untitled quote"));
}

guint
em_document_get_n_kept (EmDocument *self)
{
  return self->file.n_kept;
}

/* What goes to disk now. Shallow: borrows everything. */
static EmQuoteFile
present_file (EmDocument *self)
{
  EmQuoteFile file = self->file;

  if (!file.quote.has_sent_rates)
    {
      file.sent_rates = NULL;
      file.sent_catalogue = NULL;
    }
  else if (self->sent_basis != NULL)
    {
      file.sent_rates = (EmRates *) em_basis_get_rates (self->sent_basis);
      file.sent_catalogue = (EmCatalogue *) em_basis_get_catalogue (self->sent_basis);
    }
  return file;
}

GBytes *
em_document_to_bytes (EmDocument *self, GError **error)
{
  EmQuoteFile file = present_file (self);

  return em_quote_file_write (&file, error);
}

EmSnapshot *
em_document_snapshot (EmDocument *self, GError **error)
{
  EmQuoteFile file = present_file (self);

  return em_snapshot_new (&file, error);
}

void
em_document_take_sent_basis (EmDocument *self)
{
  g_clear_pointer (&self->sent_basis, em_basis_unref);
  self->sent_basis = em_basis_ref (self->shop_basis);
}

typedef struct
{
  char       *path;
  EmSnapshot *snapshot;
  EmFileStamp expected;   /* all zero: nobody's work can be lost there */
  EmFileStamp stamp;      /* once written */
  gboolean    wants_lock; /* the file is another than the one that has it */
  EmLock     *lock;       /* once written, where it could be had */
} EmSaving;

static void
free_saving (gpointer data)
{
  EmSaving *saving = data;

  g_free (saving->path);
  em_snapshot_free (saving->snapshot);
  em_lock_free (saving->lock);
  g_free (saving);
}

static void
save_in_thread (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  EmSaving *saving = data;
  GError *error = NULL;
  g_autoptr (GBytes) bytes = em_snapshot_write (saving->snapshot, &error);

  (void) source;
  (void) cancellable;
  /* Up to here a long quote can be stopped; the file is then as it was. */
  if (bytes != NULL && g_task_return_error_if_cancelled (task))
    return;
  if (bytes == NULL || !em_save_bytes_over (saving->path, bytes, &saving->expected, &saving->stamp, &error))
    {
      g_task_return_error (task, error);
      return;
    }
  if (saving->wants_lock)
    {
      em_lock_release_wait (EM_LOCK_PATIENCE_MS);
      saving->lock = em_lock_take (saving->path, NULL);
    }
  g_task_return_boolean (task, TRUE);
}

void
em_document_allow_overwrite (EmDocument *self)
{
  self->file.stamp = (EmFileStamp) { 0 };
}

gboolean
em_document_is_saving (EmDocument *self)
{
  return self->n_saving > 0;
}

const EmFileStamp *
em_document_get_stamp (EmDocument *self)
{
  return &self->file.stamp;
}

void
em_document_set_lock_take (EmDocument *self, EmLock *lock)
{
  em_lock_release_take (self->lock);
  self->lock = lock;
}

void
em_document_save_async (EmDocument *self, const char *path, GCancellable *cancellable, GAsyncReadyCallback callback, gpointer data)
{
  g_autoptr (GTask) task = g_task_new (self, cancellable, callback, data);
  GError *error = NULL;
  EmSnapshot *snapshot = em_document_snapshot (self, &error);

  if (snapshot == NULL)
    {
      g_task_return_error (task, error);
      return;
    }

  EmSaving *saving = g_new0 (EmSaving, 1);
  saving->path = g_strdup (path);
  saving->snapshot = snapshot;
  if (g_strcmp0 (path, self->path) == 0)
    saving->expected = self->file.stamp;
  saving->wants_lock = self->lock == NULL || g_strcmp0 (em_lock_get_path (self->lock), path) != 0;
  self->n_saving++;
  g_task_set_task_data (task, saving, free_saving);
  em_history_break (self->history);
  em_history_mark_saved (self->history);
  g_task_run_in_thread (task, save_in_thread);
}

gboolean
em_document_save_finish (EmDocument *self, GAsyncResult *result, GError **error)
{
  EmSaving *saving = g_task_get_task_data (G_TASK (result));

  if (saving != NULL)
    self->n_saving--;
  if (!g_task_propagate_boolean (G_TASK (result), error))
    {
      em_history_unmark_saved (self->history);
      /* It may be there all the same, and then is nobody else's change. */
      if (saving != NULL && saving->stamp.inode != 0 && g_strcmp0 (saving->path, self->path) == 0)
        self->file.stamp = saving->stamp;
      emit_changed (self, EM_CHANGE_FILE, -1);
      return FALSE;
    }
  g_free (self->path);
  /* NOLINTNEXTLINE(clang-analyzer-core.NullDereference): a task that had nothing to save has failed. */
  self->path = g_strdup (saving->path);
  self->file.stamp = saving->stamp;
  if (saving->wants_lock)
    em_document_set_lock_take (self, g_steal_pointer (&saving->lock));
  emit_changed (self, EM_CHANGE_FILE, -1);
  return TRUE;
}
