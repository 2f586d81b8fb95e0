/* em-fields: entries in columns of one width, as many as there is room for.
 *
 * Each line is as high as its own entries want, so that a sentence under one of them moves only what is below.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define EM_TYPE_FIELDS (em_fields_get_type ())
G_DECLARE_FINAL_TYPE (EmFields, em_fields, EM, FIELDS, GtkWidget)

/* Up to four columns, six pixels between lines and ten between columns. */
GtkWidget *em_fields_new         (void);
void       em_fields_set_columns (EmFields *self, int least, int most);
void       em_fields_set_gaps    (EmFields *self, int column_gap, int line_gap);
void       em_fields_add         (GtkWidget *fields, GtkWidget *widget);
/* On a line of its own, all columns wide. */
void       em_fields_add_wide    (GtkWidget *fields, GtkWidget *widget);
void       em_fields_clear       (EmFields *self);

G_END_DECLS
