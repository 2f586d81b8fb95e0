/* em-register-list: the quotes found in a register, as a list for GTK's views.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-register-list.h"

#include <gio/gio.h>

struct _EmRegisterItem
{
  GObject parent_instance;

  EmRegister *reg;     /* owned */
  guint       index;
};

G_DEFINE_FINAL_TYPE (EmRegisterItem, em_register_item, G_TYPE_OBJECT)

static void
em_register_item_finalize (GObject *object)
{
  em_register_unref (EM_REGISTER_ITEM (object)->reg);
  G_OBJECT_CLASS (em_register_item_parent_class)->finalize (object);
}

static void
em_register_item_class_init (EmRegisterItemClass *class)
{
  G_OBJECT_CLASS (class)->finalize = em_register_item_finalize;
}

static void
em_register_item_init (EmRegisterItem *self)
{
  (void) self;
}

const EmRegisterEntry *
em_register_item_get_entry (EmRegisterItem *self)
{
  return em_register_get_entry (self->reg, self->index);
}

guint
em_register_item_get_index (EmRegisterItem *self)
{
  return self->index;
}

struct _EmRegisterList
{
  GObject parent_instance;

  EmRegister *reg;       /* owned or NULL */
  GArray     *indices;   /* owned or NULL */
};

static GType
get_item_type (GListModel *model)
{
  (void) model;
  return EM_TYPE_REGISTER_ITEM;
}

static guint
get_n_items (GListModel *model)
{
  const GArray *indices = EM_REGISTER_LIST (model)->indices;

  return indices != NULL ? indices->len : 0;
}

static gpointer
get_item (GListModel *model, guint position)
{
  EmRegisterList *self = EM_REGISTER_LIST (model);
  EmRegisterItem *item;

  if (position >= get_n_items (model))
    return NULL;
  item = g_object_new (EM_TYPE_REGISTER_ITEM, NULL);
  item->reg = em_register_ref (self->reg);
  item->index = g_array_index (self->indices, guint, position);
  return item;
}

static void
list_init (GListModelInterface *interface)
{
  interface->get_item_type = get_item_type;
  interface->get_n_items = get_n_items;
  interface->get_item = get_item;
}

G_DEFINE_FINAL_TYPE_WITH_CODE (EmRegisterList, em_register_list, G_TYPE_OBJECT, G_IMPLEMENT_INTERFACE (G_TYPE_LIST_MODEL, list_init))

static void
em_register_list_finalize (GObject *object)
{
  EmRegisterList *self = EM_REGISTER_LIST (object);

  g_clear_pointer (&self->reg, em_register_unref);
  g_clear_pointer (&self->indices, g_array_unref);
  G_OBJECT_CLASS (em_register_list_parent_class)->finalize (object);
}

static void
em_register_list_class_init (EmRegisterListClass *class)
{
  G_OBJECT_CLASS (class)->finalize = em_register_list_finalize;
}

static void
em_register_list_init (EmRegisterList *self)
{
  (void) self;
}

EmRegisterList *
em_register_list_new (void)
{
  return g_object_new (EM_TYPE_REGISTER_LIST, NULL);
}

void
em_register_list_show (EmRegisterList *self, EmRegister *reg, GArray *indices)
{
  guint before = get_n_items (G_LIST_MODEL (self));

  if (reg != NULL)
    em_register_ref (reg);
  if (indices != NULL)
    g_array_ref (indices);
  g_clear_pointer (&self->reg, em_register_unref);
  g_clear_pointer (&self->indices, g_array_unref);
  self->reg = reg;
  self->indices = indices;
  g_list_model_items_changed (G_LIST_MODEL (self), 0, before, get_n_items (G_LIST_MODEL (self)));
}
