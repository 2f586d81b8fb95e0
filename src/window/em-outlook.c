/* em-outlook: what takes longer than a keystroke.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-outlook.h"

enum { PAUSE_MS = 120 };

typedef struct
{
  EmQuote   quote;
  EmBasis  *basis;
  int32_t   feature;      /* index whose wire changes, −1: all of them */
  uint32_t  feature_id;   /* 0: all of them */
  EmCompare compare;
  EmRange   range;
  gboolean  has_compare, has_range;
} EmStudyJob;

struct _EmOutlook
{
  GObject parent_instance;

  EmDocument *document;    /* owned; NULL once disposed */
  EmStudyJob *latest;      /* finished, or NULL */
  gboolean    is_running, is_outdated, is_for_feature;
  guint       pause;       /* source id */
};

G_DEFINE_FINAL_TYPE (EmOutlook, em_outlook, G_TYPE_OBJECT)

static guint ready_signal;

static void
free_job (gpointer data)
{
  EmStudyJob *job = data;

  em_quote_clear (&job->quote);
  em_basis_unref (job->basis);
  em_compare_clear (&job->compare);
  g_free (job);
}

static void
study_in_thread (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  EmStudyJob *job = data;
  const EmRates *rates = em_basis_get_rates (job->basis);
  const EmCatalogue *catalogue = em_basis_get_catalogue (job->basis);

  (void) source;
  (void) cancellable;
  job->has_compare = job->quote.n_features > 0
                     && em_compare_quote (&job->compare, &job->quote, job->feature, rates, catalogue, NULL) == EM_OK;
  job->has_range = job->quote.n_features > 0
                   && em_range_quote (&job->quote, rates, catalogue, EM_RANGE_SAMPLES, EM_RANGE_SEED, &job->range, NULL) == EM_OK;
  g_task_return_boolean (task, TRUE);
}

static void start (EmOutlook *self);

static void
on_studied (GObject *source, GAsyncResult *result, gpointer data)
{
  EmOutlook *self = EM_OUTLOOK (source);
  EmStudyJob *job = g_task_get_task_data (G_TASK (result));

  (void) data;
  self->is_running = FALSE;
  if (self->document == NULL)
    return;
  if (self->latest != NULL)
    free_job (self->latest);
  self->latest = g_memdup2 (job, sizeof *job);
  /* The task's own copy goes on empty. */
  em_quote_init (&job->quote);
  em_compare_init (&job->compare);
  em_basis_ref (job->basis);
  g_signal_emit (self, ready_signal, 0);
  if (self->is_outdated)
    start (self);
}

static void
start (EmOutlook *self)
{
  EmStudyJob *job = g_new0 (EmStudyJob, 1);
  g_autoptr (GTask) task = NULL;

  self->is_outdated = FALSE;
  if (em_quote_copy (em_document_get_quote (self->document), &job->quote) != EM_OK)
    {
      g_free (job);
      return;
    }
  job->feature = self->is_for_feature ? em_document_get_selected_index (self->document) : -1;
  job->feature_id = job->feature >= 0 ? job->quote.feature[job->feature].id : 0;
  job->basis = em_basis_ref (em_document_get_basis (self->document));
  em_compare_init (&job->compare);
  self->is_running = TRUE;
  task = g_task_new (self, NULL, on_studied, NULL);
  g_task_set_task_data (task, job, free_job);
  g_task_run_in_thread (task, study_in_thread);
}

static gboolean
on_paused (gpointer data)
{
  EmOutlook *self = data;

  self->pause = 0;
  if (self->is_running)
    self->is_outdated = TRUE;
  else
    start (self);
  return G_SOURCE_REMOVE;
}

static void
start_soon (EmOutlook *self)
{
  if (self->pause == 0)
    self->pause = g_timeout_add_full (G_PRIORITY_DEFAULT_IDLE, PAUSE_MS, on_paused, self, NULL);   /* what is to be drawn comes first */
}

static void
on_document_changed (EmOutlook *self, guint what)
{
  guint idle = EM_CHANGE_FILE | EM_CHANGE_PROBLEMS | (self->is_for_feature ? 0 : EM_CHANGE_SELECTION);

  if ((what & ~idle) != 0)
    start_soon (self);
}

static void
em_outlook_dispose (GObject *object)
{
  EmOutlook *self = EM_OUTLOOK (object);

  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->document);
  g_clear_handle_id (&self->pause, g_source_remove);
  g_clear_pointer (&self->latest, free_job);
  G_OBJECT_CLASS (em_outlook_parent_class)->dispose (object);
}

static void
em_outlook_class_init (EmOutlookClass *class)
{
  G_OBJECT_CLASS (class)->dispose = em_outlook_dispose;
  ready_signal = g_signal_new ("ready", EM_TYPE_OUTLOOK, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
em_outlook_init (EmOutlook *self)
{
  (void) self;
}

EmOutlook *
em_outlook_new (EmDocument *document)
{
  EmOutlook *self = g_object_new (EM_TYPE_OUTLOOK, NULL);

  self->document = g_object_ref (document);
  g_signal_connect_object (document, "changed", G_CALLBACK (on_document_changed), self, G_CONNECT_SWAPPED);
  on_document_changed (self, EM_CHANGE_ALL);
  return self;
}

const EmCompare *
em_outlook_get_compare (EmOutlook *self)
{
  return self->latest != NULL && self->latest->has_compare ? &self->latest->compare : NULL;
}

void
em_outlook_set_for_feature (EmOutlook *self, gboolean is_for_feature)
{
  if (self->is_for_feature == is_for_feature)
    return;
  self->is_for_feature = is_for_feature;
  start_soon (self);
}

gboolean
em_outlook_is_for_feature (EmOutlook *self)
{
  return self->is_for_feature;
}

uint32_t
em_outlook_get_feature (EmOutlook *self)
{
  return self->latest != NULL ? self->latest->feature_id : 0;
}

const EmRange *
em_outlook_get_range (EmOutlook *self)
{
  return self->latest != NULL && self->latest->has_range && self->latest->range.has_range ? &self->latest->range : NULL;
}

gboolean
em_outlook_is_busy (EmOutlook *self)
{
  return self->is_running || self->pause != 0;
}
