/* em-constitution-picture: base, wire and deposit on the Schaeffler or WRC-1992 picture.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-constitution.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define EM_TYPE_CONSTITUTION_PICTURE (em_constitution_picture_get_type ())
G_DECLARE_FINAL_TYPE (EmConstitutionPicture, em_constitution_picture, EM, CONSTITUTION_PICTURE, GtkWidget)

typedef enum { EM_SPOT_BASE, EM_SPOT_WIRE, EM_SPOT_DEPOSIT, EM_N_SPOT } EmSpot;

GtkWidget *em_constitution_picture_new  (void);
/* spots: EM_N_SPOT of them; one with NaN is not drawn. spoken: the same in words, for screen readers. */
void       em_constitution_picture_show (EmConstitutionPicture *self, const EmDiagram *diagram, const EmConstitution *spots,
                                         const char *spoken);
/* Translated. */
const char *em_spot_name (EmSpot spot);

G_END_DECLS
