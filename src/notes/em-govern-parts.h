/* em-govern-parts: what the readers of notes that govern share. Private to them.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-govern.h"

G_BEGIN_DECLS

enum { EM_GOVERN_WINDOW = 4 /* items looked over for what belongs together */, EM_SENTENCE_WINDOW = 40 /* of a sentence that may be looked over whole */ };

typedef struct
{
  EmGrammar      *grammar;
  const EmClause *c;
  GArray         *loose;
  gboolean        has_all;   /* "all over" stands in the sentence */
  gboolean        has_verb;  /* of repairing */
  gboolean        has_size;
  guint           n_nouns;
} Governor;

static inline EmItem *
item (const Governor *g, guint i)
{
  return em_item (g->c->items, i);
}

static inline const EmSense *
says (const Governor *g, guint i, EmSays what)
{
  return i >= g->c->first && i < g->c->end ? em_item_says (g->c->items, i, what) : NULL;
}

static inline gboolean
is_size (const Governor *g, guint i)
{
  return i >= g->c->first && i < g->c->end && item (g, i)->type == EM_ITEM_SIZE;
}

static inline gboolean
is_count (const Governor *g, guint i)
{
  return is_size (g, i) && (em_item_size (g->c->items, i)->roles & EM_ROLE_COUNT) != 0;
}

/* A field of the words from item from to item to, which are used up; text NULL: the words themselves. */
EmLoose *em_governor_add     (Governor *g, const char *field, const char *text, guint from, guint to);
void     em_governor_infer   (EmLoose *one, const char *reason);
/* "no texture near", "not nitrided" */
gboolean em_governor_is_none (const Governor *g, guint i);
/* "is", "was" and the like before a size. */
gboolean em_governor_is_is   (const Governor *g, guint i);

/* "H13, 50-52", "1.2363, 58": numbers without a scale beside the metal at base get the role of its hardness. */
void     em_governor_read_bare_hardness (Governor *g, guint base);

/* Fields that stand once: the first is taken, later ones stay visible as unused. TRUE for the first. */
gboolean em_governor_take_once (Governor *g, const char *field);

/* "PO 45871", "DWG A-2201": a number behind what kind of number it is, and "4471 mold" before it. */
void em_code_read        (Governor *g, guint i);
void em_code_read_before (Governor *g, guint i);
/* The number of a tool or a drawing in a table's column of them. */
void em_code_read_cell   (Governor *g, guint i);
/* "DO NOT WELD THREADS": what must stay free of weld. */
void em_refuse_read (Governor *g, guint i);
/* "FIN GRD BY CUST", "we mill it ourselves": who does what is done after welding. */
void     em_machining_read      (Governor *g, guint i);
/* "nitriding we grind away before", "antes de soldar": not what is done after welding. */
gboolean em_machining_is_before (const Governor *g, guint i);
/* "Do you also grind it to size?": no more than a question to the shop. */
gboolean em_machining_is_asked  (const Governor *g, guint i);
/* "We machine nothing here", "polish nothing": no work of that hand. */
gboolean em_machining_is_denied (const Governor *g, guint i);
/* "3 mm from the texture": what lies near a repair, and how near. */
/* "Abstand zur Profilkante mind. 1,5": marks the size as a clearance. */
void em_near_distance_told (Governor *g, guint i);
void em_near_read   (Governor *g, guint i);
/* "TEXTURE ON TOP FACE, PROTECT": the thing that the word at refusal spares lies near. */
void em_near_spare  (Governor *g, guint thing, guint refusal);
/* "thread .19 from pocket": the size behind a thing that says how far from a repair it lies, or EM_NO_ITEM. */
guint em_near_distance (const Governor *g, guint thing);

G_END_DECLS
