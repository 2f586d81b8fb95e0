/* em-weak: what has too little to be a repair where others are told whole.
 *
 * Customers name things without asking for anything: "valve seat" in a title, "the pin is ⌀12" of what runs in a bore. Where another repair of
 * the note is whole, such a one is none; its words stay visible as unused.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-weak.h"

#include "em-fit.h"

#include <string.h>

enum { TOLD_WINDOW = 24 /* items of a remark */, SIZES_MOST = 4, NAMED_WINDOW = 32 /* repairs looked back over */ };

/* By which one size a kind may still be told alone, the rest to be asked. */
static const struct { int kind; const char *field; } alone[] = {
  { FACE, "thickness" }, { SIDEWALL, "thickness" }, { GROOVE, "length" }, { GROOVE, "depth" }, { RECESS, "diameter" },
};

/* Questions that a repair asks for its one size. */
static const char *const asked[] = { "side-or-diameter", "two-values", "cone-angle", "which-field", "decimal-comma" };

static gboolean
is_asked (const EmFit *fit)
{
  for (guint i = 0; i < fit->n_questions; i++)
    for (gsize k = 0; k < G_N_ELEMENTS (asked); k++)
      if (strcmp (fit->question[i].code, asked[k]) == 0)
        return TRUE;
  return FALSE;
}

/* The one size that was fitted; n: how many there are. */
static const EmFitted *
only_size (const EmFit *fit, guint *out_n)
{
  const EmFitted *only = NULL;

  *out_n = 0;
  for (guint i = 0; i < fit->n_fitted; i++)
    if (fit->fitted[i].item != EM_NO_ITEM && strcmp (fit->fitted[i].field, "stock") != 0 && strcmp (fit->fitted[i].field, "clearance") != 0)
      {
        only = &fit->fitted[i];
        (*out_n)++;
      }
  return only;
}

static gboolean
may_stand_alone (const EmItems *items, const EmProto *proto, int kind, const EmFitted *only)
{
  for (gsize k = 0; k < G_N_ELEMENTS (alone); k++)
    if (alone[k].kind == kind && strcmp (alone[k].field, only->field) == 0)
      return TRUE;
  /* "fill tapped holes 12 deep" */
  if (kind == RECESS && strcmp (only->field, "depth") == 0)
    return proto->has_fill;
  /* "edge rolled to R0.3" */
  return kind == WORN_CORNER && strcmp (only->field, "radius") == 0 && (em_item_size (items, only->item)->roles & EM_ROLE_RADIUS) != 0;
}

static gboolean
is_whole (const EmItems *items, const EmProto *proto)
{
  int second, kind = em_fit_kind (items, proto, &second, NULL);
  EmFit fit;

  if (kind < 0)
    return FALSE;
  em_fit_sizes (items, proto, kind, &fit);
  return fit.is_complete;
}

static gboolean
is_weak (const EmItems *items, const EmProto *proto)
{
  int second, kind = em_fit_kind (items, proto, &second, NULL);
  const EmFitted *only;
  EmFit fit;
  guint n;

  if (kind < 0 || proto->is_same || proto->is_one_of || proto->kind_reason != NULL || proto->chamfer_item != EM_NO_ITEM || proto->sizes->len > SIZES_MOST)
    return FALSE;
  if (proto->sizes->len == 0)
    return !(proto->head != 0 && proto->has_damage);
  em_fit_sizes (items, proto, kind, &fit);
  only = only_size (&fit, &n);
  return !fit.is_complete && !is_asked (&fit) && (n == 0 || (n == 1 && !may_stand_alone (items, proto, kind, only)));
}

/* "valve seat pitted": the damage is all that names it. "Cracks" over the lines that tell of each says no more than they do. */
static gboolean
is_damage_alone (const EmItems *items, const EmProto *proto, const EmProto *next)
{
  const EmSense *noun = proto->noun != EM_NO_ITEM ? em_item_says (items, proto->noun, EM_SAYS_KIND) : NULL;
  int second;

  return noun != NULL && noun->value != NULL &&
         (next == NULL || em_fit_kind (items, next, &second, NULL) != em_fit_kind (items, proto, &second, NULL));
}

static gboolean
is_hurt (const EmItems *items, const EmProto *proto)
{
  for (guint i = proto->first; i <= proto->last && i < proto->first + TOLD_WINDOW; i++)
    if (em_item_says (items, i, EM_SAYS_SET) != NULL && em_item_says (items, i, EM_SAYS_SET)->set_field == NULL)
      return TRUE;
  return proto->has_damage || proto->has_worn;
}

/* "Bore was found worn": an office has to look at it, whatever its sizes are. */
static void
keep_told (EmItems *items, const EmProto *proto)
{
  guint end = proto->first;

  while (end <= proto->last && end < proto->first + TOLD_WINDOW && em_item (items, end)->type != EM_ITEM_LINE)
    end++;
  em_item (items, proto->first)->told_end = end;
}

static void
free_words (EmItems *items, const EmProto *proto, const EmProto *next)
{
  if (proto->noun != EM_NO_ITEM)
    em_item (items, proto->noun)->is_used = FALSE;
  if (proto->sizes->len == 0 && (is_hurt (items, proto) || is_damage_alone (items, proto, next)) && (next == NULL || !next->may_merge))
    keep_told (items, proto);
}

/* "You grind the dam": of the repairs before n, the one of that name; else the last; next where there is none. */
static EmProto *
meant_by (const EmItems *items, const EmProto *proto, const GPtrArray *protos, guint n, EmProto *next)
{
  const EmItem *noun = proto->noun != EM_NO_ITEM ? em_item (items, proto->noun) : NULL;

  for (guint i = n; noun != NULL && i-- > 0 && i + NAMED_WINDOW > n;)
    {
      EmProto *other = g_ptr_array_index (protos, i);

      if (other->sizes->len > 0 && other->noun != EM_NO_ITEM && em_item (items, other->noun)->phrase == noun->phrase)
        return other;
    }
  return n > 0 ? g_ptr_array_index (protos, n - 1) : next;
}

/* What is said beside a repair, and not only of its own kind. */
static gboolean
is_beside (const EmReadField *field)
{
  static const char *const beside[] = { "finish", "stock", "near", "clearance", "access" };

  for (gsize k = 0; k < G_N_ELEMENTS (beside); k++)
    if (strcmp (field->field, beside[k]) == 0)
      return TRUE;
  return FALSE;
}

static void
hand_over (const EmProto *proto, EmProto *to)
{
  for (guint i = 0; to != NULL && i < proto->given->len; i++)
    {
      EmGiven given = g_array_index (proto->given, EmGiven, i);

      if (!is_beside (&given.field))
        continue;
      given.field.state = EM_READ_INFERRED;
      given.field.reason = given.field.reason != NULL ? given.field.reason : "from-words";
      g_array_append_val (to->given, given);
    }
}

void
em_weak_leave_out (EmItems *items, GPtrArray *protos)
{
  gboolean has_whole = FALSE;
  guint n = 0;

  for (guint i = 0; i < protos->len && !has_whole; i++)
    has_whole = is_whole (items, g_ptr_array_index (protos, i));
  for (guint i = 0; has_whole && i < protos->len; i++)
    {
      EmProto *proto = g_ptr_array_index (protos, i), *next = i + 1 < protos->len ? g_ptr_array_index (protos, i + 1) : NULL;

      if (is_weak (items, proto))
        {
          hand_over (proto, meant_by (items, proto, protos, n, next));
          free_words (items, proto, next);
        }
      else
        g_ptr_array_index (protos, n++) = proto;
    }
  if (has_whole)
    g_ptr_array_set_size (protos, (int) n);
}
