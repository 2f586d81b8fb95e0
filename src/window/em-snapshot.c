/* em-snapshot: a quote as it was at one moment.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-snapshot.h"

#include <glib/gi18n.h>

struct _EmSnapshot
{
  EmQuoteFile file;
};

static gboolean
copy_sent (const EmQuoteFile *file, EmQuoteFile *copy)
{
  if (file->sent_rates != NULL)
    {
      copy->sent_rates = g_new0 (EmRates, 1);
      em_rates_init (copy->sent_rates);
      if (em_rates_copy (file->sent_rates, copy->sent_rates) != EM_OK)
        return FALSE;
    }
  if (file->sent_catalogue != NULL)
    {
      copy->sent_catalogue = g_new0 (EmCatalogue, 1);
      em_catalogue_init (copy->sent_catalogue);
      if (em_catalogue_copy (file->sent_catalogue, copy->sent_catalogue) != EM_OK)
        return FALSE;
    }
  return TRUE;
}

EmSnapshot *
em_snapshot_new (const EmQuoteFile *file, GError **error)
{
  EmSnapshot *self = g_new0 (EmSnapshot, 1);

  self->file = *file;
  self->file.sent_rates = NULL;
  self->file.sent_catalogue = NULL;
  em_quote_init (&self->file.quote);
  if (em_quote_copy (&file->quote, &self->file.quote) == EM_OK && copy_sent (file, &self->file))
    return self;
  g_set_error_literal (error, EM_FILE_ERROR, EM_FILE_ERROR_WRITE, _("Not enough memory"));
  em_snapshot_free (self);
  return NULL;
}

void
em_snapshot_free (EmSnapshot *self)
{
  if (self == NULL)
    return;
  em_quote_file_clear (&self->file);
  g_free (self);
}

GBytes *
em_snapshot_write (const EmSnapshot *self, GError **error)
{
  return em_quote_file_write (&self->file, error);
}
