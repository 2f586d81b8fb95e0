/* em-proto: what the items of a stretch add to a proposal.
 *
 * Private to the grammar. The reader's state is one struct that em-grammar moves along the sentences.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-grammar.h"

G_BEGIN_DECLS

typedef struct
{
  EmGrammar *grammar;
  EmItems   *items;
  EmProto   *current;        /* what a continuation adds to, or NULL */
  EmProto   *heading;        /* gives its kind to the lines under it, or NULL */
  GArray    *waiting;        /* EmGiven for the next proposal: things near it */
  guint32    n_chains;
  guint      first, end;     /* the sentence */
  guint64    list_number;    /* of the "(2)" that began the line before; 0: none */
  guint64    inline_number;  /* of "(1)" within a line */
  guint      inline_length;  /* items of its number and marks; 0: none yet */
  char       inline_letter;  /* of "A)" that began the line, or the last such letter within it; 0: none */
  char       bare_letter;    /* of "A edge nick" that began the line before; 0: none */
  guint64    bare_number;    /* the same of "2 face" */
  char       code_letter;    /* the same of "Z2 face" */
  guint64    code_number;
  guint64    section;        /* of "1.2 face" that began the line before; 0: none */
  guint      early_first, early_end; /* labelled sizes that stand before their noun; equal: none */
  EmParts    parts;          /* told above, for the repairs to come */
  gboolean   is_parts_line;  /* only for those of the line */
  guint      n_since_parts;  /* repairs begun since */
  guint      mention_first, mention_end; /* a thing named without sizes; equal: none */
  guint      fill_heading;   /* the verb of "fill the following:"; EM_NO_ITEM: none */
  gboolean   has_loose;      /* the sentence holds notes that govern */
  gboolean   is_one_of;      /* the segment is one of several named together */
  gboolean   is_bullet;      /* it begins a numbered or bulleted line */
  gboolean   is_listed;      /* it stands in such a line */
  gboolean   has_ticked;        /* some box of the notes is ticked */
  gboolean   is_dash, was_dash; /* the line, or the one before, begins with a dash or the like */
  gboolean   is_line_start;
  guint64    head;           /* the number, or the letter, that heads the line; 0: none */
  gboolean   is_place_line;  /* "Location: …" */
  gboolean   is_mail_head;   /* the line says what the mail is about */
} EmReader;

EmProto *em_proto_new  (void);
void     em_proto_free (gpointer data);

guint32  em_reader_line_of    (const EmReader *r, guint i);
/* A size that measures the repair: neither stock nor clearance nor hardness. */
gboolean em_reader_is_sized   (const EmReader *r, guint i);
/* A noun after a preposition names the place: "nick IN SIDEWALL". */
gboolean em_reader_is_demoted (const EmReader *r, guint i);
gboolean em_reader_is_noun    (const EmReader *r, guint i);
gboolean em_reader_is_verb    (const EmReader *r, guint i);
/* German "die", where the most of the words are German: no die. */
gboolean em_reader_is_foreign_article (const EmReader *r, guint i);
/* A count or the access told apart from the repair: ", 4 holes, hard to reach"; with words_too also "both are the same". */
void     em_reader_take_aside (const EmReader *r, EmProto *proto, guint first, guint end, gboolean words_too);
/* "one 3 x 1 x 1", "two of them": what one of several named before measures. */
gboolean em_reader_begins_one_of (const EmReader *r, guint i);
/* The item after the segment that begins at start; *out_is_before_one_of: what follows is one of several named together. */
guint    em_reader_end_of_segment (const EmReader *r, guint start, gboolean *out_is_before_one_of);
/* The verb of filling of the proposal before it in the sentence, where it has neither verb nor damage of its own. */
void     em_reader_share_fill (const EmReader *r, EmProto *proto, const EmProto *before);
/* What is to be built up, told before the first of several: "add .010 to face A and face B". */
void     em_reader_share_build (const EmReader *r, EmProto *proto, const EmProto *before);
/* Adds the items from first to end; nouns that name things near were used before. */
void     em_reader_add_items  (EmReader *r, EmProto *proto, guint first, guint end);

G_END_DECLS
