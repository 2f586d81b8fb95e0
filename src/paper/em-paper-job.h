/* em-paper-job: a quote with all that its sheets show beside it: range, wires offered, logo.
 *
 * Worked out afresh from the quote, so that the preview, the printer, a PDF and the command
 * line show the same whatever else is under way.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-paper.h"

G_BEGIN_DECLS

typedef struct
{
  EmPaperSource source;      /* of the members below and of what was borrowed */
  EmCompare     compare;
  EmRange       range;
  char         *logo_path;   /* NULL: none */
  struct EmLogo *logo;       /* NULL: none, or none that could be read, which is told when the pages are begun */
} EmPaperJob;

/* Borrows all but folder, where the rate book's logo lies. offers_all: every suited wire, not only those the quote names.
 * A job is there to be cleared whatever is returned. */
EmStatus em_paper_job_init  (EmPaperJob *out_job, const EmQuote *quote, const EmCost *cost, const EmRates *rates, const EmCatalogue *catalogue,
                             const char *folder, gboolean offers_all, EmFault *out_fault);
void     em_paper_job_clear (EmPaperJob *job);

/* Whether the quote names the wire of this id among those it offers. */
gboolean em_paper_offers    (const EmQuote *quote, const char *filler_id);
/* The quote's offers with that wire added or taken out; NULL: none left. */
char    *em_paper_with_offer (const EmQuote *quote, const char *filler_id, gboolean is_offered);

G_END_DECLS
