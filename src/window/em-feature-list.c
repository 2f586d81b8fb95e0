/* em-feature-list: features as a list model.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-feature-list.h"

struct _EmFeatureItem
{
  GObject parent_instance;

  uint32_t id;
};

G_DEFINE_FINAL_TYPE (EmFeatureItem, em_feature_item, G_TYPE_OBJECT)

static void
em_feature_item_class_init (EmFeatureItemClass *class)
{
  (void) class;
}

static void
em_feature_item_init (EmFeatureItem *self)
{
  (void) self;
}

uint32_t
em_feature_item_get_id (EmFeatureItem *self)
{
  return self->id;
}

struct _EmFeatureList
{
  GObject parent_instance;

  GPtrArray *items;   /* EmFeatureItem, in order */
};

static GType
get_item_type (GListModel *model)
{
  (void) model;
  return EM_TYPE_FEATURE_ITEM;
}

static guint
get_n_items (GListModel *model)
{
  return EM_FEATURE_LIST (model)->items->len;
}

static gpointer
get_item (GListModel *model, guint position)
{
  EmFeatureList *self = EM_FEATURE_LIST (model);

  return position < self->items->len ? g_object_ref (self->items->pdata[position]) : NULL;
}

static void
model_init (GListModelInterface *interface)
{
  interface->get_item_type = get_item_type;
  interface->get_n_items = get_n_items;
  interface->get_item = get_item;
}

G_DEFINE_FINAL_TYPE_WITH_CODE (EmFeatureList, em_feature_list, G_TYPE_OBJECT, G_IMPLEMENT_INTERFACE (G_TYPE_LIST_MODEL, model_init))

static void
em_feature_list_finalize (GObject *object)
{
  g_clear_pointer (&EM_FEATURE_LIST (object)->items, g_ptr_array_unref);
  G_OBJECT_CLASS (em_feature_list_parent_class)->finalize (object);
}

static void
em_feature_list_class_init (EmFeatureListClass *class)
{
  G_OBJECT_CLASS (class)->finalize = em_feature_list_finalize;
}

static void
em_feature_list_init (EmFeatureList *self)
{
  self->items = g_ptr_array_new_with_free_func (g_object_unref);
}

EmFeatureList *
em_feature_list_new (void)
{
  return g_object_new (EM_TYPE_FEATURE_LIST, NULL);
}

uint32_t
em_feature_list_get_id (EmFeatureList *self, guint position)
{
  return ((EmFeatureItem *) self->items->pdata[position])->id;
}

/* How many features at the start, then at the end, are where they were. */
static void
count_same (EmFeatureList *self, const uint32_t *ids, guint n_new, guint *out_head, guint *out_tail)
{
  guint n_old = self->items->len, least = MIN (n_old, n_new), head = 0, tail = 0;

  while (head < least && em_feature_list_get_id (self, head) == ids[head])
    head++;
  while (tail < least - head && em_feature_list_get_id (self, n_old - 1 - tail) == ids[n_new - 1 - tail])
    tail++;
  *out_head = head;
  *out_tail = tail;
}

static EmFeatureItem *
take_or_make (GHashTable *old, uint32_t id)
{
  EmFeatureItem *item = g_hash_table_lookup (old, GUINT_TO_POINTER (id));

  if (item != NULL)
    return g_object_ref (item);
  item = g_object_new (EM_TYPE_FEATURE_ITEM, NULL);
  item->id = id;
  return item;
}

void
em_feature_list_show (EmFeatureList *self, const uint32_t *ids, guint n)
{
  g_autoptr (GHashTable) old = NULL;
  GPtrArray *items, *before = self->items;
  guint head, tail;

  count_same (self, ids, n, &head, &tail);
  if (before->len == n && head == n)
    return;
  old = g_hash_table_new (NULL, NULL);
  items = g_ptr_array_new_full (n, g_object_unref);
  for (guint i = head; i < before->len - tail; i++)
    g_hash_table_insert (old, GUINT_TO_POINTER (em_feature_list_get_id (self, i)), before->pdata[i]);
  for (guint i = 0; i < n; i++)
    if (i < head)
      g_ptr_array_add (items, g_object_ref (before->pdata[i]));
    else if (i >= n - tail)
      g_ptr_array_add (items, g_object_ref (before->pdata[before->len - (n - i)]));
    else
      g_ptr_array_add (items, take_or_make (old, ids[i]));
  self->items = items;
  g_list_model_items_changed (G_LIST_MODEL (self), head, before->len - tail - head, n - tail - head);
  g_ptr_array_unref (before);
}
