/* em-field: labelled fields other than numbers: a text, a choice, an amount.
 *
 * Each is a box of a label over its widget, tied for mnemonics and screen readers.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-fields.h"
#include "em-money.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

GtkWidget *em_field_box       (const char *label, GtkWidget *widget);
GtkWidget *em_field_text      (const char *label, GtkWidget **out_entry);
/* An entry or a drop-down of ours tells what it has no room for under the pointer. */
void       em_field_tell_whole (GtkWidget *widget);
/* A long name of a check button gives way in a narrow window. */
void       em_field_wrap_check (GtkWidget *check_button);
/* Several lines of text; Tab leaves it. */
GtkWidget *em_field_lines     (const char *label, GtkWidget **out_view);
/* options: NULL-terminated. */
GtkWidget *em_field_choice    (const char *label, const char *const *options, GtkWidget **out_drop_down);
void       em_field_set_options (GtkWidget *drop_down, const char *const *options);
/* Sets without signals to handler data. */
void       em_field_put_text   (GtkWidget *entry, const char *text, gpointer data);
void       em_field_put_lines  (GtkWidget *view, const char *text, gpointer data);
void       em_field_put_choice (GtkWidget *drop_down, guint selected, gpointer data);

/* "1,250.00", "1250,5", "80": the whole of text as an amount; FALSE when it is none, too large or finer than the
 * minor unit. The last point or comma before at most `digits` figures is the decimal mark. */
gboolean   em_money_read  (const char *text, const EmCurrency *currency, int64_t *out_minor);
/* As em_money_read takes it back; no grouping. */
char      *em_money_write (int64_t minor, const EmCurrency *currency);

/* For labels that wrap: Pango would break ".030" after its point. */
char      *em_field_keep_figures (const char *text);

/* An expander whose name, which may hold a mnemonic, gives way in narrow panes. */
GtkWidget *em_fold_new      (const char *name, GtkWidget *child);
void       em_fold_set_name (GtkWidget *fold, const char *name);

/* The button's menu of model, built when first opened. */
void       em_menu_set_late (GtkWidget *menu_button, GMenuModel *model);

G_END_DECLS
