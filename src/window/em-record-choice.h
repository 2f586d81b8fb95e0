/* em-record-choice: a drop-down of base metals, wires or machines, to be searched in.
 *
 * Among the machines stands each process they are of, for any machine of it.
 * Retired records are left out unless one of them is the choice; an id nobody knows is shown as it is.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-basis.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

typedef enum { EM_RECORD_BASE, EM_RECORD_WIRE, EM_RECORD_MACHINE } EmRecordKind;

/* A box with its label, as em_field_choice makes them. none: what no choice is called. */
GtkWidget  *em_record_choice_new  (const char *label, EmRecordKind kind, const char *none, GtkWidget **out_drop_down);
/* Fills anew where the records have changed, and shows id (NULL: none), without signals to handler data. */
void        em_record_choice_show (GtkWidget *drop_down, EmBasis *basis, const char *id, gpointer data);
/* Of machines: the machine of this id, or else any of the process; both NULL: none. */
void        em_record_choice_show_machine (GtkWidget *drop_down, EmBasis *basis, const char *id, const char *process_id, gpointer data);
/* FALSE: nothing is chosen, as while it is being filled. *out_id NULL: none. Borrowed until shown again. */
gboolean    em_record_choice_get  (GtkWidget *drop_down, const char **out_id);
gboolean    em_record_choice_get_machine (GtkWidget *drop_down, const char **out_id, const char **out_process_id);

G_END_DECLS
