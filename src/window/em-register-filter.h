/* em-register-filter: what quotes are looked for, and in what order they are shown.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-register.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define EM_TYPE_REGISTER_FILTER (em_register_filter_get_type ())
G_DECLARE_FINAL_TYPE (EmRegisterFilter, em_register_filter, EM, REGISTER_FILTER, GtkWidget)

/* Signals: "changed", something else is looked for; "sorted", another order is chosen; "down", by the arrow from the words on to what
 * was found, whose handler says whether there is any; "activate", by Enter in the words. */
GtkWidget  *em_register_filter_new   (void);
/* What out_query points to stays until the filter changes. */
void        em_register_filter_query (EmRegisterFilter *self, EmRegisterQuery *out_query);
void        em_register_filter_set_text (EmRegisterFilter *self, const char *text);
void        em_register_filter_clear (EmRegisterFilter *self);   /* all quotes; the keyboard goes to the words */
void        em_register_filter_focus (EmRegisterFilter *self);   /* to the words, ready to be typed over */
/* The column chosen, as em_register_table_sort takes it. */
const char *em_register_filter_get_sort (EmRegisterFilter *self, gboolean *out_is_descending);
/* Shows that order without a signal. */
void        em_register_filter_put_sort (EmRegisterFilter *self, const char *column, gboolean is_descending);

G_END_DECLS
