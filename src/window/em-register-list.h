/* em-register-list: the quotes found in a register, as a list for GTK's views.
 *
 * Items are made when they are looked at, so that ten thousand quotes cost as little as ten.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-register.h"

G_BEGIN_DECLS

/* One place of the list: which entry of which register. */
#define EM_TYPE_REGISTER_ITEM (em_register_item_get_type ())
G_DECLARE_FINAL_TYPE (EmRegisterItem, em_register_item, EM, REGISTER_ITEM, GObject)

const EmRegisterEntry *em_register_item_get_entry (EmRegisterItem *self);
guint                  em_register_item_get_index (EmRegisterItem *self);   /* into its register */

#define EM_TYPE_REGISTER_LIST (em_register_list_get_type ())
G_DECLARE_FINAL_TYPE (EmRegisterList, em_register_list, EM, REGISTER_LIST, GObject)

EmRegisterList *em_register_list_new (void);
/* indices: guint, as em_register_search gives them; both may be NULL: nothing. */
void            em_register_list_show (EmRegisterList *self, EmRegister *reg, GArray *indices);

G_END_DECLS
