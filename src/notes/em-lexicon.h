/* em-lexicon: what words and short phrases of drawing notes mean, read from data.
 *
 * A lexicon file lists phrases by what they say (a kind of repair, the label of a size, a
 * unit …). Several languages merge into one; a phrase may say several things and the
 * grammar chooses. Matching is by the longest phrase and takes time bounded by its length.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-notes.h"
#include "em-token.h"

G_BEGIN_DECLS

/* What a phrase says; the names in data are in em-lexicon.c, in this order. */
typedef enum
{
  EM_SAYS_KIND,       /* a noun that points to kinds of repair, with weights */
  EM_SAYS_VERB,       /* to weld, to build up: something is to be done */
  EM_SAYS_LABEL,      /* what the size beside it measures */
  EM_SAYS_UNIT,
  EM_SAYS_PLACES,     /* "4 PLCS": the number before it is a count */
  EM_SAYS_QUANTITY,   /* "QTY 4": the number after it is a count */
  EM_SAYS_NUMBER,     /* "three" */
  EM_SAYS_TYPICAL,    /* "TYP" */
  EM_SAYS_MANY,       /* "several": a count that is not told */
  EM_SAYS_TIMES,      /* between sizes, or "4X" */
  EM_SAYS_TO,         /* between two sizes of one thing */
  EM_SAYS_PREPOSITION,/* the noun after it is a place rather than the repair */
  EM_SAYS_GLUE,       /* means nothing by itself */
  EM_SAYS_NOISE,      /* an ordinary word, known so that it is not taken for a slip of another */
  EM_SAYS_PLACE,      /* a part of the tool: labels the feature */
  EM_SAYS_ALL,        /* governs the rest: "UOS", "all over" */
  EM_SAYS_UNITS,      /* "dimensions are in" */
  EM_SAYS_MATERIAL,   /* "MATL" */
  EM_SAYS_BASE,       /* a catalogue id */
  EM_SAYS_COATING,
  EM_SAYS_FINISH,     /* who machines */
  EM_SAYS_REFUSE,     /* "do not weld" */
  EM_SAYS_SOUND,      /* "no repair needed" */
  EM_SAYS_NEAR,       /* "adjacent" */
  EM_SAYS_THING,      /* what can be near: hole, texture, polish, thread */
  EM_SAYS_SLOT,       /* "in slot": the sizes after it are the slot's; value "name": only its name */
  EM_SAYS_ACCESS,
  EM_SAYS_APPROXIMATE,
  EM_SAYS_MINIMUM,
  EM_SAYS_MAXIMUM,
  EM_SAYS_REFERENCE,  /* "PO", "DWG": the words after it are a number */
  EM_SAYS_TOOLS,      /* identical tools */
  EM_SAYS_SAME,       /* "ditto" */
  EM_SAYS_SET,        /* sets a choice or a whole number of the feature */
  EM_SAYS_EQUAL,      /* both legs alike */
  EM_SAYS_FIT,        /* a tolerance class letter */
  EM_SAYS_BETWEEN,    /* "between 1 and 2" */
  EM_SAYS_AGENT,      /* who: "customer", "we", "you" */
  EM_SAYS_MACHINING,  /* what is done after welding: "grind" */
  EM_SAYS_ONE_OF,     /* "the first", "the other": one of several named before */
  EM_SAYS_TALK,       /* a word of letters and calls: the grammar knows nothing of it, and it is not worth showing as unused */
  EM_SAYS_PLURAL,     /* several of a thing, by its form: "Ausbrüche" */
  EM_N_SAYS
} EmSays;

/* Value of a number word that is an article too: "ein". */
#define EM_ARTICLE "01"

/* Roles a label gives to a size; bits. */
typedef enum
{
  EM_ROLE_LENGTH = 1 << 0,
  EM_ROLE_WIDTH = 1 << 1,
  EM_ROLE_HEIGHT = 1 << 2,
  EM_ROLE_DEPTH = 1 << 3,
  EM_ROLE_THICKNESS = 1 << 4,
  EM_ROLE_DIAMETER = 1 << 5,
  EM_ROLE_RADIUS = 1 << 6,
  EM_ROLE_SPHERE = 1 << 7,      /* SR */
  EM_ROLE_ANGLE = 1 << 8,
  EM_ROLE_PER_SIDE = 1 << 9,
  EM_ROLE_ON_DIAMETER = 1 << 10,
  EM_ROLE_BUILD = 1 << 11,      /* metal to add */
  EM_ROLE_WORN = 1 << 12,       /* as it is now */
  EM_ROLE_FINISHED = 1 << 13,   /* as it shall be */
  EM_ROLE_LEG = 1 << 14,
  EM_ROLE_GAP = 1 << 15,
  EM_ROLE_DRAFT = 1 << 16,
  EM_ROLE_STOCK = 1 << 17,
  EM_ROLE_CLEARANCE = 1 << 18,
  EM_ROLE_AREA = 1 << 19,
  EM_ROLE_ARC = 1 << 20,
  EM_ROLE_SMALL = 1 << 21,
  EM_ROLE_LARGE = 1 << 22,
  EM_ROLE_HARDNESS = 1 << 23,
  EM_ROLE_CORNERS = 1 << 24,
  EM_ROLE_REFERENCE = 1 << 25,  /* for information only: never used */
  EM_ROLE_LEGS = 1 << 26,       /* the whole row of sizes before it */
  EM_ROLE_SQUARE = 1 << 27      /* both sides of a square */
} EmRole;

typedef enum { EM_LABEL_EITHER, EM_LABEL_BEFORE, EM_LABEL_AFTER } EmLabelPlace;

typedef enum
{
  EM_UNIT_NONE, EM_UNIT_MM, EM_UNIT_CM, EM_UNIT_METRE, EM_UNIT_UM,
  EM_UNIT_TENTH_MM, EM_UNIT_HUNDREDTH_MM, EM_UNIT_INCH, EM_UNIT_THOU, EM_UNIT_FOOT, EM_UNIT_DEGREE,
  EM_UNIT_MM2, EM_UNIT_CM2, EM_UNIT_INCH2, EM_UNIT_HRC, EM_UNIT_HB, EM_UNIT_HV,
  EM_UNIT_OTHER, /* liters, kilograms, bar: of no size */
  EM_N_UNIT
} EmUnit;

enum { EM_SENSE_MAX = 6, EM_LANGUAGE_MAX = 16 };

/* Kinds as the grammar counts them; the same ids as the engine's. */
enum { EDGE_NICK, WORN_CORNER, SIDEWALL, FACE, RIB, BORE, SEAT, PIN, DAM, RECESS, GROOVE, EM_N_NOTE_KINDS };
extern const char *const em_note_kinds[EM_N_NOTE_KINDS];

typedef struct
{
  EmSays       says;
  const char  *value;                    /* id, text or digits; NULL: none */
  guint32      roles;                    /* of a label */
  EmLabelPlace place;
  EmUnit       unit;                     /* of a unit; of a number that has one in it */
  gint8        weight[EM_N_NOTE_KINDS];  /* for kinds of repair */
  const char  *set_field, *set_value;    /* what the phrase sets on its feature, or NULL */
  gboolean     needs_material;           /* only beside a word for material */
  gboolean     is_own;                   /* only in notes in its language, and there nothing else */
} EmSense;

typedef struct _EmPhrase EmPhrase;

struct _EmPhrase
{
  guint            n_senses;
  guint32          languages;                   /* bits of the files it stands in */
  const EmSense   *sense[EM_SENSE_MAX];
  guint32          sense_languages[EM_SENSE_MAX];
  const EmPhrase **spoken;                      /* by language, and last by none, what it says there; NULL: the same everywhere */
};

/* Fills the tokens' atoms; near spellings of long words get the atom of the word meant, and EM_TOKEN_SLIP. */
void            em_lexicon_name  (const EmLexicon *lexicon, const char *text, GArray *tokens);
/* The one language that has the phrase, where it tells the language of a note; −1: none. */
int             em_phrase_language (const EmPhrase *phrase);
/* The language whose own words are two of three of those that one language alone has; −1: none. */
int             em_lexicon_language (const EmLexicon *lexicon, const EmToken *tokens, guint n);
/* The longest phrase that begins at tokens[0] of n and says something in notes in that language; NULL: none. */
const EmPhrase *em_lexicon_match (const EmLexicon *lexicon, int language, const EmToken *tokens, guint n, guint *out_n_tokens);
/* The units that notes use in the language that most of the words are in; FALSE when neither tells. */
gboolean        em_lexicon_units (const EmLexicon *lexicon, const guint n_words[EM_LANGUAGE_MAX], EmUnits *out_units);
const EmSense  *em_phrase_find   (const EmPhrase *phrase, EmSays says);
/* One of its senses says that with that value: a place that is "counted". */
gboolean        em_phrase_tells  (const EmPhrase *phrase, EmSays says, const char *value);

/* What the thing is to a repair beside it: an engraving is like a texture. */
const char     *em_thing_near    (const EmSense *thing);
/* What is refused of the thing; NULL: which hole, which engraving, only the words of the note say. */
const char     *em_thing_refused (const EmSense *thing);

/* One lexicon from memory, for tests. */
EmLexicon *em_lexicon_parse (const char *const *xml, GError **error);

G_END_DECLS
