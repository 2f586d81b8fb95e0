/* em-command-private: what the commands share: loading, pricing, misuse.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-book-file.h"
#include "em-command.h"
#include "em-compare.h"
#include "em-cost.h"
#include "em-quote-file.h"
#include "em-range.h"

G_BEGIN_DECLS

enum { EM_EXIT_GOOD = 0, EM_EXIT_INPUT = 1, EM_EXIT_MISUSE = 2 };

typedef struct
{
  const char *name;
  const char *summary, *arguments;   /* N_ */
  int       (*run) (int argc, char **argv);   /* argv[0] is the command's name */
} EmCommand;

int em_command_check   (int argc, char **argv);
int em_command_cost    (int argc, char **argv);
int em_command_compare (int argc, char **argv);
int em_command_print   (int argc, char **argv);
int em_command_lines   (int argc, char **argv);
int em_command_read    (int argc, char **argv);
int em_command_steel   (int argc, char **argv);
int em_command_prices  (int argc, char **argv);

/* Says what was misused on standard error; EM_EXIT_MISUSE. */
int em_command_misuse (const char *format, ...) G_GNUC_PRINTF (1, 2);

/* A column of a table: text, padded to so many characters. */
void em_command_cell (const char *text, int columns, gboolean is_right);

/* Parses entries and --help out of argv. FALSE: nothing more to do but return *out_status. */
gboolean em_command_options (int *argc, char ***argv, const char *parameters, const GOptionEntry *entries, int *out_status);

/* A quote, the rates and metals it is priced with (its own when it was sent with them), and its cost. */
typedef struct
{
  EmQuoteFile  file;
  EmRates      own_rates;
  EmCatalogue  own_catalogue;
  EmCost       cost;
  const char  *process;           /* borrowed: one of em_process_ids to be priced for all of it, whatever the quote names; NULL: as it names */
  EmRange      range;             /* of the price, when dimensions carry one */
  const EmRates     *rates;       /* borrowed from above */
  const EmCatalogue *catalogue;
} EmJob;

void     em_job_init  (EmJob *out_job);
void     em_job_clear (EmJob *job);
/* rates_path and metals_path: other books than the shop's, even for a sent quote; NULL: none. Says what is wrong on standard error,
 * naming the file. Faulty features are no reason to fail: em_job_tell_faults. */
gboolean em_job_load  (EmJob *job, const char *path, const char *rates_path, const char *metals_path, EmTrace *trace);
/* Tells each faulty feature on standard error; FALSE when there is one. */
gboolean em_job_tell_faults (const EmJob *job, const char *path);

G_END_DECLS
