/* em-draft: the shop's rate book and metals while they are being changed.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-draft.h"

#include "em-quote-file.h"
#include "em-steps.h"
#include "em-words.h"

#include <glib/gi18n.h>
#include <stdlib.h>

struct _EmDraft
{
  GObject parent_instance;

  EmBasis    *basis;        /* what it began from */
  EmBasis    *keeping;      /* on its way to the disk; NULL: nothing is */
  EmDocument *document;     /* owned or NULL */
  EmRates     rates;
  EmCatalogue catalogue;
  EmRates     settled_rates;       /* as they were after the last step, which the next has to bring back */
  EmCatalogue settled_catalogue;
  EmSteps    *steps;        /* of EmHeld */
  GHashTable *problems;     /* where → text */
  EmStatus    status;       /* of the draft as a whole */
  EmFault     fault;
  char       *culprit;      /* designation of the metal it lies with, or NULL */
  EmEffect    effect;
};

G_DEFINE_FINAL_TYPE (EmDraft, em_draft, G_TYPE_OBJECT)

static guint changed_signal, stepped_signal;

/* The side of a change that is not in the draft at present. */
typedef struct
{
  guint       parts;        /* that changed; the other is empty */
  EmRates     rates;
  EmCatalogue catalogue;
  char       *where;        /* or NULL */
} EmHeld;

/* Each step holds the whole of what changed: some tens of kilobytes of metals. */
#define STEPS_BYTES ((gsize) 64 * 1024 * 1024)
enum { RECORD_TEXT_BYTES = 256 };

/* Records are checked one by one, since the whole is not looked at before it is written. */
static EmStatus
check (EmDraft *self, EmFault *out_fault)
{
  EmStatus status = em_rates_check (&self->rates, out_fault);
  const char *culprit = NULL;

  for (int32_t i = 0; status == EM_OK && i < self->catalogue.n_bases; i++)
    {
      culprit = self->catalogue.base[i].designation;
      status = em_base_check (&self->catalogue.base[i], out_fault);
    }
  for (int32_t i = 0; status == EM_OK && i < self->catalogue.n_fillers; i++)
    {
      culprit = self->catalogue.filler[i].designation;
      status = em_filler_check (&self->catalogue.filler[i], out_fault);
    }
  g_free (self->culprit);
  self->culprit = status != EM_OK ? g_strdup (culprit) : NULL;
  return status;
}

static void
reckon_effect (EmDraft *self)
{
  EmEffect effect = { 0 };
  const EmQuote *quote = self->document != NULL ? em_document_get_quote (self->document) : NULL;
  const EmCost *before;
  EmCost after;

  self->effect = effect;
  if (quote == NULL || quote->n_features == 0)
    return;
  effect.has_quote = TRUE;
  effect.is_sent = quote->has_sent_rates;
  before = em_document_get_cost (self->document);
  em_cost_init (&after);
  if (!effect.is_sent && self->status == EM_OK && em_document_get_status (self->document, NULL) == EM_OK
      && em_cost_quote (&after, quote, &self->rates, &self->catalogue, NULL, NULL) == EM_OK)
    {
      effect.is_reckoned = TRUE;
      effect.before_minor = before->totals.total_minor;
      effect.after_minor = after.totals.total_minor;
      effect.faults_before = before->n_faults;
      effect.faults_after = after.n_faults;
      effect.tax_minor = after.totals.tax_minor - before->totals.tax_minor;
      effect.other_minor = effect.after_minor - effect.before_minor - effect.tax_minor;
      for (int i = 0; i < EM_N_MONEY; i++)
        {
          effect.money_minor[i] = after.money_minor[i] - before->money_minor[i];
          effect.other_minor -= effect.money_minor[i];
        }
    }
  em_cost_clear (&after);
  self->effect = effect;
}

static void
renew (EmDraft *self)
{
  self->status = check (self, &self->fault);
  reckon_effect (self);
  g_signal_emit (self, changed_signal, 0);
}

static gboolean
copy_basis (EmDraft *self)
{
  EmRates rates;
  EmCatalogue catalogue;

  if (em_rates_copy (em_basis_get_rates (self->basis), &rates) != EM_OK)
    return FALSE;
  if (em_catalogue_copy (em_basis_get_catalogue (self->basis), &catalogue) != EM_OK)
    {
      em_rates_clear (&rates);
      return FALSE;
    }
  em_rates_clear (&self->rates);
  em_catalogue_clear (&self->catalogue);
  self->rates = rates;
  self->catalogue = catalogue;
  g_hash_table_remove_all (self->problems);
  return TRUE;
}

/* ---- steps ---- */

static void
free_held (gpointer data)
{
  EmHeld *held = data;

  em_rates_clear (&held->rates);
  em_catalogue_clear (&held->catalogue);
  g_free (held->where);
  g_free (held);
}

static EmHeld *
held_new (guint parts, const char *where)
{
  EmHeld *held = g_new0 (EmHeld, 1);

  em_rates_init (&held->rates);
  em_catalogue_init (&held->catalogue);
  held->parts = parts;
  held->where = g_strdup (where);
  return held;
}

static gsize
size_of (const EmHeld *held)
{
  return sizeof *held + (gsize) held->catalogue.n_bases * (sizeof (EmBase) + RECORD_TEXT_BYTES)
         + (gsize) held->catalogue.n_fillers * (sizeof (EmFiller) + RECORD_TEXT_BYTES);
}

/* Copies parts of these into *out, which is empty; FALSE, and nothing is there: no memory. */
static gboolean
copy_into (EmHeld *out, guint parts, const EmRates *rates, const EmCatalogue *catalogue)
{
  EmRates rates_copy;

  if (parts & EM_DRAFT_RATES && em_rates_copy (rates, &rates_copy) != EM_OK)
    return FALSE;
  if (parts & EM_DRAFT_CATALOGUE && em_catalogue_copy (catalogue, &out->catalogue) != EM_OK)
    {
      if (parts & EM_DRAFT_RATES)
        em_rates_clear (&rates_copy);
      return FALSE;
    }
  if (parts & EM_DRAFT_RATES)
    out->rates = rates_copy;
  return TRUE;
}

/* What held holds is in the other two from now on, and they in it. */
static void
swap_parts (EmHeld *held, EmRates *rates, EmCatalogue *catalogue)
{
  if (held->parts & EM_DRAFT_RATES)
    {
      EmRates other = *rates;
      *rates = held->rates;
      held->rates = other;
    }
  if (held->parts & EM_DRAFT_CATALOGUE)
    {
      EmCatalogue other = *catalogue;
      *catalogue = held->catalogue;
      held->catalogue = other;
    }
}

static guint
changed_parts (EmDraft *self, guint parts)
{
  guint changed = 0;

  if (parts & EM_DRAFT_RATES && !em_rates_equal (&self->rates, &self->settled_rates))
    changed |= EM_DRAFT_RATES;
  if (parts & EM_DRAFT_CATALOGUE && !em_catalogue_equal (&self->catalogue, &self->settled_catalogue))
    changed |= EM_DRAFT_CATALOGUE;
  return changed;
}

/* Makes what changed since the last step one. Where no memory is left it goes into the next. */
static void
record (EmDraft *self, guint parts, const char *where)
{
  guint changed = changed_parts (self, parts);
  guint64 key = where != NULL ? g_quark_from_string (where) : 0;
  EmHeld *held;

  if (changed == 0)
    return;
  held = held_new (changed, where);
  if (!copy_into (held, changed, &self->rates, &self->catalogue))
    {
      free_held (held);
      return;
    }
  swap_parts (held, &self->settled_rates, &self->settled_catalogue);
  if (em_steps_joins (self->steps, key))
    free_held (held);
  else
    em_steps_add_take (self->steps, key, held, size_of (held));
}

static void
step (EmDraft *self, EmStepWay way)
{
  EmHeld *held = em_steps_peek (self->steps, way);
  EmHeld *settled = held != NULL ? held_new (held->parts, NULL) : NULL;
  g_autofree char *where = NULL;

  if (held == NULL || !copy_into (settled, held->parts, &held->rates, &held->catalogue))
    {
      g_clear_pointer (&settled, free_held);
      return;
    }
  em_steps_go (self->steps, way);
  swap_parts (held, &self->rates, &self->catalogue);
  swap_parts (settled, &self->settled_rates, &self->settled_catalogue);
  free_held (settled);
  g_hash_table_remove_all (self->problems);
  where = g_strdup (held->where);
  renew (self);
  g_signal_emit (self, stepped_signal, 0, where);
}

static void
on_document_changed (EmDraft *self, guint what)
{
  if ((what & ~(guint) (EM_CHANGE_SELECTION | EM_CHANGE_FILE | EM_CHANGE_PROBLEMS)) == 0)
    return;
  reckon_effect (self);
  g_signal_emit (self, changed_signal, 0);
}

static void
em_draft_finalize (GObject *object)
{
  EmDraft *self = EM_DRAFT (object);

  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->document);
  em_rates_clear (&self->rates);
  em_catalogue_clear (&self->catalogue);
  em_rates_clear (&self->settled_rates);
  em_catalogue_clear (&self->settled_catalogue);
  em_steps_free (self->steps);
  g_clear_pointer (&self->basis, em_basis_unref);
  g_clear_pointer (&self->keeping, em_basis_unref);
  g_clear_pointer (&self->problems, g_hash_table_unref);
  g_free (self->culprit);
  G_OBJECT_CLASS (em_draft_parent_class)->finalize (object);
}

static void
em_draft_class_init (EmDraftClass *class)
{
  G_OBJECT_CLASS (class)->finalize = em_draft_finalize;
  changed_signal = g_signal_new ("changed", EM_TYPE_DRAFT, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  stepped_signal = g_signal_new ("stepped", EM_TYPE_DRAFT, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
}

static void
em_draft_init (EmDraft *self)
{
  em_rates_init (&self->rates);
  em_catalogue_init (&self->catalogue);
  em_rates_init (&self->settled_rates);
  em_catalogue_init (&self->settled_catalogue);
  self->steps = em_steps_new (free_held);
  em_steps_set_most (self->steps, STEPS_BYTES);
  self->problems = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
}

EmDraft *
em_draft_new (EmBasis *basis, EmDocument *document)
{
  EmDraft *self = g_object_new (EM_TYPE_DRAFT, NULL);

  self->basis = em_basis_ref (basis);
  if (document != NULL)
    {
      self->document = g_object_ref (document);
      g_signal_connect_swapped (document, "changed", G_CALLBACK (on_document_changed), self);
    }
  if (!copy_basis (self) || em_rates_copy (&self->rates, &self->settled_rates) != EM_OK
      || em_catalogue_copy (&self->catalogue, &self->settled_catalogue) != EM_OK)
    {
      g_object_unref (self);
      return NULL;
    }
  renew (self);
  return self;
}

void
em_draft_set_document (EmDraft *self, EmDocument *document)
{
  if (self->document == document)
    return;
  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_set_object (&self->document, document);
  if (document != NULL)
    g_signal_connect_swapped (document, "changed", G_CALLBACK (on_document_changed), self);
  reckon_effect (self);
  g_signal_emit (self, changed_signal, 0);
}

EmDocument *
em_draft_get_document (EmDraft *self)
{
  return self->document;
}

EmRates *
em_draft_get_rates (EmDraft *self)
{
  return &self->rates;
}

EmCatalogue *
em_draft_get_catalogue (EmDraft *self)
{
  return &self->catalogue;
}

void
em_draft_touch (EmDraft *self, EmDraftPart part, const char *where)
{
  record (self, part, where);
  renew (self);
}

void
em_draft_break (EmDraft *self)
{
  em_steps_break (self->steps);
}

gboolean
em_draft_can_undo (EmDraft *self)
{
  return em_steps_peek (self->steps, EM_STEP_BACK) != NULL;
}

gboolean
em_draft_can_redo (EmDraft *self)
{
  return em_steps_peek (self->steps, EM_STEP_FORTH) != NULL;
}

void
em_draft_undo (EmDraft *self)
{
  step (self, EM_STEP_BACK);
}

void
em_draft_redo (EmDraft *self)
{
  step (self, EM_STEP_FORTH);
}

void
em_draft_set_problem (EmDraft *self, const char *where, const char *text)
{
  if (g_strcmp0 (g_hash_table_lookup (self->problems, where), text) == 0)
    return;
  if (text != NULL)
    g_hash_table_insert (self->problems, g_strdup (where), g_strdup (text));
  else
    g_hash_table_remove (self->problems, where);
  g_signal_emit (self, changed_signal, 0);
}

void
em_draft_forget_problem (EmDraft *self, const char *where)
{
  g_hash_table_remove (self->problems, where);
}

gboolean
em_draft_has_problem (EmDraft *self, const char *where)
{
  return g_hash_table_contains (self->problems, where);
}

gboolean
em_draft_has_problems (EmDraft *self)
{
  return g_hash_table_size (self->problems) > 0;
}

/* Not as the draft began. */
static guint
unkept_parts (EmDraft *self)
{
  guint parts = 0;

  if (!em_rates_equal (&self->rates, em_basis_get_rates (self->basis)))
    parts |= EM_BASIS_RATES;
  if (!em_catalogue_equal (&self->catalogue, em_basis_get_catalogue (self->basis)))
    parts |= EM_BASIS_CATALOGUE;
  return parts;
}

gboolean
em_draft_is_changed (EmDraft *self)
{
  return self->keeping != NULL || unkept_parts (self) != 0;
}

char *
em_draft_dup_trouble (EmDraft *self)
{
  guint n = g_hash_table_size (self->problems);
  g_autoptr (GList) problems = n == 1 ? g_hash_table_get_values (self->problems) : NULL;

  if (n == 1)
    return g_strdup (problems->data);
  if (n > 0)
    return g_strdup_printf (ngettext ("%u entry can’t be read.", "%u entries can’t be read.", n), n);
  if (self->status == EM_OK)
    return NULL;
  g_autofree char *sentence = em_words_fault (&self->fault, NULL, self->rates.units);
  return self->culprit != NULL ? g_strdup_printf ("%s – %s", self->culprit, sentence) : g_steal_pointer (&sentence);
}

const EmEffect *
em_draft_get_effect (EmDraft *self)
{
  return &self->effect;
}

void
em_draft_discard (EmDraft *self)
{
  if (self->keeping != NULL || !copy_basis (self))
    return;
  record (self, EM_DRAFT_RATES | EM_DRAFT_CATALOGUE, NULL);
  renew (self);
}

/* ---- keeping ---- */

EmBasis *
em_draft_get_basis (EmDraft *self)
{
  return self->basis;
}

gboolean
em_draft_is_keeping (EmDraft *self)
{
  return self->keeping != NULL;
}

static EmBasis *
copy_parts (const EmRates *rates, const EmCatalogue *catalogue)
{
  EmRates rates_copy;
  EmCatalogue catalogue_copy;

  if (em_rates_copy (rates, &rates_copy) != EM_OK)
    return NULL;
  if (em_catalogue_copy (catalogue, &catalogue_copy) != EM_OK)
    {
      em_rates_clear (&rates_copy);
      return NULL;
    }
  return em_basis_new_take (&rates_copy, &catalogue_copy);
}

EmBasis *
em_draft_snapshot (EmDraft *self)
{
  return copy_parts (&self->rates, &self->catalogue);
}

/* What is on the disk is what the draft goes on from. */
static gboolean
adopt (EmDraft *self, EmBasis *kept, guint parts)
{
  const EmBasis *rates = parts & EM_BASIS_RATES ? kept : self->basis, *catalogue = parts & EM_BASIS_CATALOGUE ? kept : self->basis;
  EmBasis *basis = copy_parts (em_basis_get_rates (rates), em_basis_get_catalogue (catalogue));

  if (basis == NULL)
    return FALSE;
  em_basis_unref (self->basis);
  self->basis = basis;
  return TRUE;
}

static void
on_saved (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (GTask) task = data;
  EmDraft *self = g_task_get_source_object (task);
  GError *error = NULL;
  guint written = em_basis_save_finish (result, &error);
  g_autoptr (EmBasis) kept = g_steal_pointer (&self->keeping);

  (void) source;
  if (written != 0 && !adopt (self, kept, written) && error == NULL)
    error = g_error_new_literal (EM_FILE_ERROR, EM_FILE_ERROR_WRITE, _("Not enough memory"));
  renew (self);
  if (error != NULL)
    g_task_return_error (task, error);
  else
    g_task_return_boolean (task, TRUE);
}

void
em_draft_keep_async (EmDraft *self, GAsyncReadyCallback callback, gpointer data)
{
  g_autoptr (GTask) task = g_task_new (self, NULL, callback, data);
  g_autofree char *trouble = em_draft_dup_trouble (self);
  guint parts = unkept_parts (self);

  g_return_if_fail (self->keeping == NULL);
  if (trouble == NULL)
    self->keeping = em_draft_snapshot (self);
  if (self->keeping == NULL)
    {
      g_task_return_new_error (task, EM_FILE_ERROR, trouble != NULL ? EM_FILE_ERROR_VALUE : EM_FILE_ERROR_WRITE, "%s",
                               trouble != NULL ? trouble : _("Not enough memory"));
      return;
    }
  em_basis_save_async (self->keeping, parts, on_saved, g_steal_pointer (&task));
  g_signal_emit (self, changed_signal, 0);
}

gboolean
em_draft_keep_finish (EmDraft *self, GAsyncResult *result, GError **error)
{
  (void) self;
  return g_task_propagate_boolean (G_TASK (result), error);
}
