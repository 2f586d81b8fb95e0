/* em-notes-words: the reader's stable codes as sentences for people.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-notes.h"

#include <glib/gi18n-lib.h>

typedef struct
{
  const char *code, *text;
} Words;

static const Words question_words[] = {
  { "side-or-diameter", N_("Is the build-up per side or on the diameter?") },
  { "inch-or-mm", N_("Are these sizes in inches or in millimeters?") },
  { "which-kind", N_("What kind of repair is this?") },
  { "which-field", N_("What does this size measure?") },
  { "count-unknown", N_("How many places are there?") },
  { "count-or-chamfer", N_("Is this a number of places or the size of a chamfer?") },
  { "outer-or-bore", N_("Does the edge run round the outside or round a bore?") },
  { "second-leg", N_("Is the nick as deep on the other face?") },
  { "worn-or-finished", N_("Which of the two diameters is the worn one?") },
  { "decimal-comma", N_("Is the comma a decimal mark or does it part thousands?") },
  { "dual-mismatch", N_("The two units of this size do not agree. Which one is right?") },
  { "which-face", N_("Which face is meant, and how large is it?") },
  { "cone-angle", N_("Is this the angle of the whole cone or of one side?") },
  { "two-values", N_("Sizes are given twice with different values. Are these two repairs, or which are right?") },
};

static const Words answer_words[] = {
  { "per-side", N_("per side") },
  { "on-diameter", N_("on diameter") },
  { "inch", N_("inches") },
  { "mm", N_("millimeters") },
  { "one", N_("one") },
  { "places", N_("a number of places") },
  { "chamfer", N_("a chamfer") },
  { "outer", N_("round the outside") },
  { "bore", N_("round a bore") },
  { "same", N_("the same on both faces") },
  { "first", N_("the first") },
  { "second", N_("the second") },
  { "decimal", N_("a decimal mark") },
  { "thousands", N_("parts thousands") },
  { "included", N_("of the whole cone") },
  { "per-side-angle", N_("of one side") },
};

static const Words reason_words[] = {
  { "leading-dot-inch", N_("a number that begins with its decimal point is taken as inches (ASME Y14.5)") },
  { "leading-zero-mm", N_("a decimal with a zero before its point is taken as millimeters (ASME Y14.5)") },
  { "trailing-zero-inch", N_("a decimal that ends in a zero is taken as inches (ASME Y14.5)") },
  { "three-decimals", N_("decimals of three digits throughout are taken as inches (common practice)") },
  { "same-language", N_("notes in this language are in this unit") },
  { "fraction-inch", N_("a fraction is taken as inches") },
  { "general-note", N_("a general note says so") },
  { "units-differ", N_("the notes name two units; the one named last before it is taken") },
  { "same-feature", N_("other sizes of this feature are in this unit") },
  { "same-note", N_("other sizes in these notes are in this unit") },
  { "quote-units", N_("nothing says which unit: the quote’s own is taken") },
  { "soft-conversion", N_("the value is an inch size converted") },
  { "spelling", N_("taken as a spelling slip") },
  { "position", N_("told by its place in the row of sizes") },
  { "same-as-before", N_("as the repair before, which it refers to") },
  { "unsure-kind", N_("the kind of repair is not sure") },
  { "no-work", N_("neither wear nor build-up is told") },
  { "implausible", N_("an unusual size for this") },
  { "said-twice", N_("the notes say two things of this; what is said first is taken") },
  { "left-over", N_("a number beside it could not be used") },
  { "incomplete", N_("not all of its sizes are told") },
  { "strange-word", N_("a word beside it is not known") },
  { "maybe-one", N_("may be more of the repair before it") },
  { "compound", N_("told by the last part of the word") },
  { "last-free", N_("the only size that was still missing") },
  { "from-cone-angle", N_("worked out from the angle of the cone") },
  { "arc", N_("as long as that part of the circle") },
  { "ring", N_("taken as a ring, as long as its middle runs round") },
  { "converted-hardness", N_("converted from another scale of hardness (ASTM E140)") },
  { "largest", N_("the largest of the sizes") },
  { "smallest", N_("the smallest of the sizes") },
  { "from-words", N_("told by the words around it") },
  { "unplaced-sizes", N_("another size beside it could not be placed") },
  { "no-sizes", N_("named without any size") },
  { "heading", N_("the heading above says so") },
  { "shape-from-word", N_("the word for it suggests this form") },
  { "shape-from-sizes", N_("the sizes given suggest this form") },
  { "range-middle", N_("the middle of the limits given") },
  { "minimum", N_("given as a minimum") },
  { "maximum", N_("given as a maximum") },
  { "approximate", N_("given as approximate") },
  { "on-diameter", N_("half of what was given on the diameter") },
  { "half-angle", N_("twice the angle given per side") },
  { "larger-is-worn", N_("a worn bore is larger than a finished one") },
  { "smaller-is-worn", N_("a worn pin is smaller than a finished one") },
  { "equal-legs", N_("one size given for both legs") },
  { "own-line", N_("stands on a line of its own, so it is taken to govern all") },
  { "comma-decimal", N_("the comma is taken as a decimal mark") },
  { "comma-thousands", N_("the comma is taken to part thousands") },
  { "answered", N_("answered by the office") },
};

static const char *
find (const Words *words, gsize n_words, const char *code)
{
  for (gsize i = 0; i < n_words; i++)
    if (g_strcmp0 (words[i].code, code) == 0)
      return g_dgettext (GETTEXT_PACKAGE, words[i].text);
  return code;
}

const char *
em_notes_question_text (const char *code)
{
  return find (question_words, G_N_ELEMENTS (question_words), code);
}

const char *
em_notes_answer_text (const char *answer)
{
  return find (answer_words, G_N_ELEMENTS (answer_words), answer);
}

const char *
em_notes_reason_text (const char *reason)
{
  return find (reason_words, G_N_ELEMENTS (reason_words), reason);
}
