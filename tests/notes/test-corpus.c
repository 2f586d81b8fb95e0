/* Precision and recall of the reader against readings by a person.
 *
 * corpus/grown holds notes that the lexicon was grown on, corpus/kept notes that were written, with their readings, before the
 * reader was run on them, corpus/met notes that were such and whose causes were mended only in part, corpus/mails whole mails and
 * calls as an office gets them, with greetings, talk and sizes in sentences. corpus/README.md is what authors of notes go by.
 * NNN.tsv is what a person reads in NNN.txt, in the rows of em_read_result_to_tsv, but with inches as
 * written and the unit "in": the check converts by 25.4 mm (NIST SP 811), apart from the reader's own arithmetic. A sixth
 * column says how a value was worked where it is not written in the note.
 * A person may name a field by what it measures where the program has another name for it on that kind, see same_field. Two readings
 * are the same that make the same quote: in a note of one repair what governs all is that repair's; what a diameter is now and
 * what is to be built up per side tell each other, and so do degrees of a circular edge and the length they make; a value that a
 * person worked out is right to half of its last figure; a drawing may lack its revision; a count of one goes without saying; "the dowel hole" is "dowel hole"; a size whose
 * comma is asked about may be left out or be given as it would first be taken.
 * A repair is compared with the one it is meant for: the repairs of both readings are paired in their order so that most rows agree, as
 * one that is found too much or not at all would else make every later one wrong. What is found too much, or not, counts with all its rows.
 * The output also tells what the figures are when repairs go by their bare numbers.
 * Conventions of the readings: a part of the tool is no unused text and "label" rows are not judged; only texts with meaning are
 * listed as unused and they count as found when a reported stretch overlaps them; a unit that stands apart from any size governs.
 *
 * Targets: precision and recall 0.97 on the grown half and 0.92 on the kept half, and no field wrong without a mark. Where a target
 * is not reached the limit is what is reached, and the output says so.
 *
 * usage: test-corpus FOLDER PRECISION RECALL UNMARKED FEWEST-NOTES
 * ESTIMEND_CORPUS_DETAIL=1 prints every difference, =2 also each field with why it is marked.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-notes.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define MM_PER_INCH 25.4

typedef struct
{
  int   line, feature;
  int   number;           /* of the reader; its feature is the one that it is paired with */
  int   start, end;       /* where an unused text stands in its line; -1 where it is not found as written */
  char *field, *value, *unit;
  gboolean is_worked;     /* not written in the note: a sixth column says how */
  gboolean is_found;
} Row;

typedef struct
{
  guint n_expected, n_got, n_right_recall, n_right_precision, n_right_line, n_marked_right /* and yet marked */;
} Score;

typedef struct
{
  GHashTable *by_field;   /* char* → Score */
  Score       all, known; /* known: all but texts that are said to be unused */
  guint       n_unmarked; /* wrong and stated as plainly read */
  guint       n_marked_right; /* right, and yet marked: what the office looks at for nothing */
  gboolean    has_detail, has_reasons, is_silent;
} Report;

static void
free_row (gpointer data)
{
  Row *row = data;

  g_free (row->field);
  g_free (row->value);
  g_free (row->unit);
  g_free (row);
}

static GPtrArray *
parse_rows (const char *tsv)
{
  GPtrArray *rows = g_ptr_array_new_with_free_func (free_row);
  g_auto (GStrv) lines = g_strsplit (tsv, "\n", -1);

  for (char **line = lines; *line != NULL; line++)
    {
      g_auto (GStrv) columns = g_strsplit (*line, "\t", -1);
      Row *row;

      if (g_strv_length (columns) < 4)
        continue;
      row = g_new0 (Row, 1);
      row->line = atoi (columns[0]);
      row->feature = row->number = atoi (columns[1]);
      row->field = g_strdup (columns[2]);
      row->value = g_strdup (columns[3]);
      row->unit = g_strdup (columns[4] != NULL ? columns[4] : "");
      row->is_worked = columns[4] != NULL && columns[5] != NULL && *columns[5] != '\0';
      g_ptr_array_add (rows, row);
    }
  return rows;
}

static Score *
score_of (Report *report, const char *field)
{
  Score *score = g_hash_table_lookup (report->by_field, field);

  if (score == NULL)
    {
      score = g_new0 (Score, 1);
      g_hash_table_insert (report->by_field, g_strdup (field), score);
    }
  return score;
}

static gboolean
is_text_row (const Row *row)
{
  return strcmp (row->field, "unused") == 0;
}

/* What a person worked out is right to half of its last figure; what is written, to the bit. */
static double
tolerance (const Row *row)
{
  const char *point = strchr (row->value, '.');
  double exact = 1e-9 * MAX (1, fabs (g_ascii_strtod (row->value, NULL)));

  return row->is_worked && point != NULL ? MAX (exact, 0.501 * pow (10, -(double) strlen (point + 1))) : exact;
}

static gboolean
is_same_value (const Row *expected, const Row *got)
{
  char *end_a, *end_b;
  double a = g_ascii_strtod (expected->value, &end_a), b = g_ascii_strtod (got->value, &end_b), allowed = tolerance (expected);

  /* metals.xml has the one for the other. */
  if (strcmp (expected->field, "base") == 0 && strcmp (expected->value, "1-2714") == 0)
    return strcmp (got->value, "l6") == 0;
  if (*expected->value == '\0' || *end_a != '\0' || *end_b != '\0' || *got->value == '\0')
    return g_ascii_strcasecmp (expected->value, got->value) == 0;
  if (strcmp (expected->unit, "in") == 0)
    {
      a *= MM_PER_INCH;
      allowed *= MM_PER_INCH;
    }
  if (strcmp (expected->unit, "in2") == 0)
    {
      a *= MM_PER_INCH * MM_PER_INCH;
      allowed *= MM_PER_INCH * MM_PER_INCH;
    }
  return fabs (a - b) <= allowed;
}

/* Two texts of a line share words. */
static gboolean
overlaps (const Row *a, const Row *b)
{
  if (a->start >= 0 && b->start >= 0)
    return a->start < b->end && b->start < a->end;
  return strstr (a->value, b->value) != NULL || strstr (b->value, a->value) != NULL;
}

static void
locate_texts (GPtrArray *rows, const char *text)
{
  g_auto (GStrv) lines = g_strsplit (text, "\n", -1);
  int n_lines = (int) g_strv_length (lines);

  for (guint i = 0; i < rows->len; i++)
    {
      Row *row = g_ptr_array_index (rows, i);
      const char *found = is_text_row (row) && row->line >= 1 && row->line <= n_lines ? strstr (lines[row->line - 1], row->value) : NULL;

      row->start = found != NULL ? (int) (found - lines[row->line - 1]) : -1;
      row->end = found != NULL ? row->start + (int) strlen (row->value) : -1;
    }
}

/* What is said of the only repair of a note governs the note, and the other way round. */
static gboolean
is_same_feature (const Row *expected, const Row *got, gboolean is_only)
{
  static const char *const either[] = { "stock", "finish", "hardness", "base", "coating" };

  for (gsize i = 0; is_only && i < G_N_ELEMENTS (either); i++)
    if (strcmp (got->field, either[i]) == 0)
      return TRUE;
  /* The unit is asked about all sizes of the only repair. */
  if (is_only && strcmp (got->field, "question") == 0 && strcmp (got->value, "inch-or-mm") == 0)
    return TRUE;
  return expected->feature == got->feature;
}

/* What must not be welded, without its article. */
static const char *
skip_article (const char *value)
{
  static const char *const articles[] = { "the ", "a ", "an ", "die ", "der ", "das ", "den ", "el ", "la ", "los ", "las ", "le ", "les " };

  for (gsize i = 0; i < G_N_ELEMENTS (articles); i++)
    if (g_ascii_strncasecmp (value, articles[i], strlen (articles[i])) == 0)
      return value + strlen (articles[i]);
  return value;
}

/* "88-120 rev C": a person may leave the revision out. */
static gboolean
is_same_drawing (const char *a, const char *b)
{
  gsize n = MIN (strlen (a), strlen (b));

  return n > 0 && g_ascii_strncasecmp (a, b, n) == 0 && (a[n] == '\0' || a[n] == ' ') && (b[n] == '\0' || b[n] == ' ');
}

/* "job 4410-2", "4410-2": with or without what kind of number it is. */
static gboolean
is_same_number (const char *a, const char *b)
{
  const char *last_a = strrchr (a, ' '), *last_b = strrchr (b, ' ');

  return g_ascii_strcasecmp (last_a != NULL ? last_a + 1 : a, last_b != NULL ? last_b + 1 : b) == 0;
}

/* One steel by two designations: 42CrMo4 is AISI 4140, C45U is AISI 1045 (EN 10027-2 numbers; common practice, no source). */
static gboolean
is_same_base (const char *a, const char *b)
{
  static const char *const same[][2] = { { "1-7225", "4140" }, { "1-1730", "1045" }, { "1-1191", "1045" } };

  for (gsize i = 0; i < G_N_ELEMENTS (same); i++)
    if (g_ascii_strcasecmp (a, same[i][0]) == 0 && g_ascii_strcasecmp (b, same[i][1]) == 0)
      return TRUE;
  return FALSE;
}

/* The reader tells these in one word, whatever the language of the note. */
static gboolean
is_same_thing (const char *written, const char *thing)
{
  static const struct { const char *thing, *words[12]; } things[] = {
    { "thread", { "thread", "tapped", "filet", "gewinde", "rosca" } },
    { "texture", { "textur", "grain", "narbung", "narben", "struktur", "spark finish", "sandblast", "gestrahlt", "genarbt", "erodiert", "etch" } },
    { "hole", { "hole", "bohrung", "trou", "agujero", "barreno", "bore", "channel", "kanal", "canal", "waterline", "termopar", "thermo" } },
    { "polish", { "polish", "poli", "hochglanz", "pulid", "mirror", "high gloss", "espejo" } },
  };
  g_autofree char *lower = g_utf8_strdown (written, -1);

  for (gsize i = 0; i < G_N_ELEMENTS (things); i++)
    for (gsize k = 0; strcmp (things[i].thing, thing) == 0 && k < G_N_ELEMENTS (things[i].words) && things[i].words[k] != NULL; k++)
      if (strstr (lower, things[i].words[k]) != NULL)
        return TRUE;
  return FALSE;
}

static gboolean
matches (const Row *expected, const Row *got, gboolean is_only)
{
  if (strcmp (expected->field, got->field) != 0)
    return FALSE;
  if (strcmp (expected->field, "drawing") == 0)
    return is_same_drawing (expected->value, got->value);
  if (strcmp (expected->field, "near") == 0 && is_same_feature (expected, got, is_only) && is_same_thing (expected->value, got->value))
    return TRUE;
  if (strcmp (expected->field, "reference") == 0 && expected->feature == got->feature && is_same_number (expected->value, got->value))
    return TRUE;
  if (strcmp (expected->field, "base") == 0 && is_same_feature (expected, got, is_only) && is_same_base (expected->value, got->value))
    return TRUE;
  if (strcmp (expected->field, "refuse") == 0)
    return g_ascii_strcasecmp (skip_article (expected->value), skip_article (got->value)) == 0 || is_same_thing (expected->value, got->value);
  if (is_text_row (expected))
    return expected->line == got->line && overlaps (expected, got);
  return is_same_feature (expected, got, is_only) && is_same_value (expected, got);
}

static const Row *
find_row (const GPtrArray *rows, int feature, const char *field)
{
  for (guint i = 0; i < rows->len; i++)
    {
      const Row *row = g_ptr_array_index (rows, i);

      if (row->feature == feature && strcmp (row->field, field) == 0)
        return row;
    }
  return NULL;
}

static double
value_mm (const Row *row)
{
  return g_ascii_strtod (row->value, NULL) * (strcmp (row->unit, "in") == 0 ? MM_PER_INCH : 1);
}

/* "⌀1.500 undersize .004": a diameter now of 1.496, or .002 to build up per side. */
static gboolean
is_same_wear (const GPtrArray *expected, const Row *want, const Row *got)
{
  const Row *diameter = find_row (expected, want->feature, "diameter");

  return want->feature == got->feature && strcmp (want->field, "worn") == 0 && strcmp (got->field, "build") == 0 && diameter != NULL &&
         fabs (fabs (value_mm (diameter) - value_mm (want)) - 2 * value_mm (got)) <= 1e-9;
}

/* "over 120°" of a circular edge: so much of the circle, or as long as that, in four figures. */
static gboolean
is_same_arc (const GPtrArray *expected, const Row *want, const Row *got)
{
  const Row *diameter = find_row (expected, want->feature, "diameter");
  double length_mm = diameter != NULL ? value_mm (diameter) * G_PI * value_mm (want) / 360 : 0;

  return want->feature == got->feature && strcmp (want->field, "arc") == 0 && strcmp (got->field, "length") == 0 && length_mm > 0 &&
         fabs (value_mm (got) - length_mm) <= 5e-4 * length_mm;
}

/* A round pit deeper than its mouth's radius is no cap: the program takes it for half an ellipsoid. */
static gboolean
is_same_pit (const GPtrArray *expected, const Row *want, const Row *got)
{
  const Row *diameter = find_row (expected, want->feature, "diameter"), *depth = find_row (expected, want->feature, "depth");

  return want->feature == got->feature && strcmp (want->field, "form") == 0 && strcmp (got->field, "form") == 0 && strcmp (want->value, "cap") == 0 &&
         strcmp (got->value, "ellipsoid") == 0 && diameter != NULL && depth != NULL && 2 * value_mm (depth) > value_mm (diameter);
}

static gboolean
has_one_repair (const GPtrArray *rows)
{
  for (guint i = 0; i < rows->len; i++)
    {
      const Row *row = g_ptr_array_index (rows, i);

      if (row->number > 1 && strcmp (row->field, "kind") == 0)
        return FALSE;
    }
  return TRUE;
}

/* That there is one of it goes without saying. */
static gboolean
is_count_of_one (const Row *row)
{
  return strcmp (row->field, "count") == 0 && strcmp (row->value, "1") == 0;
}

/* What a person may call a field of a kind, and what the program does. */
static const struct { const char *kind, *written, *field; } same_field[] = {
  { "groove", "width", "gap" },
  { "bore", "thickness", "build" }, { "bore", "coat", "build" },
  { "pin", "thickness", "build" }, { "pin", "coat", "build" },
  { "seat", "coat", "thickness" }, { "face", "coat", "thickness" },
};

static void
name_fields (GPtrArray *rows)
{
  for (guint i = 0; i < rows->len; i++)
    {
      Row *row = g_ptr_array_index (rows, i);
      const char *kind = "";

      for (guint k = 0; k < rows->len; k++)
        {
          const Row *other = g_ptr_array_index (rows, k);

          if (other->feature == row->feature && strcmp (other->field, "kind") == 0)
            kind = other->value;
        }
      for (gsize k = 0; k < G_N_ELEMENTS (same_field); k++)
        if (strcmp (same_field[k].kind, kind) == 0 && strcmp (same_field[k].written, row->field) == 0)
          {
            g_free (row->field);
            row->field = g_strdup (same_field[k].field);
          }
    }
}

/* A field that is wrong must carry its mark: inferred with a reason, or a question about it. */
static gboolean
is_marked (const EmReadResult *result, const Row *row)
{
  for (guint i = 0; i < result->fields->len; i++)
    {
      const EmReadField *field = &g_array_index (result->fields, EmReadField, i);

      if (field->feature == row->number && strcmp (field->field, row->field) == 0 && field->state != EM_READ_READ)
        return TRUE;
    }
  for (guint i = 0; i < result->questions->len; i++)
    {
      const EmReadQuestion *question = &g_array_index (result->questions, EmReadQuestion, i);

      if (question->feature == row->number && (question->field == NULL || strcmp (question->field, row->field) == 0 || strcmp (question->code, "which-kind") == 0))
        return TRUE;
    }
  return is_text_row (row) || strcmp (row->field, "question") == 0;
}

/* Why it is marked, "plain" if it is not. */
static const char *
reason_of (const EmReadResult *result, const Row *row)
{
  for (guint i = 0; i < result->fields->len; i++)
    {
      const EmReadField *field = &g_array_index (result->fields, EmReadField, i);

      if (field->feature == row->number && strcmp (field->field, row->field) == 0 && field->reason != NULL)
        return field->reason;
    }
  return is_marked (result, row) ? "asked" : "plain";
}

/* Both ask about the comma, the reader of this field, which the person leaves out. */
static gboolean
is_asked_comma (const EmReadResult *result, const GPtrArray *expected, const Row *row)
{
  const Row *asked = NULL;

  for (guint i = 0; i < expected->len && asked == NULL; i++)
    {
      const Row *want = g_ptr_array_index (expected, i);

      if (want->feature == row->feature && strcmp (want->field, "question") == 0 && strcmp (want->value, "decimal-comma") == 0)
        asked = want;
    }
  for (guint i = 0; asked != NULL && find_row (expected, row->feature, row->field) == NULL && i < result->questions->len; i++)
    {
      const EmReadQuestion *question = &g_array_index (result->questions, EmReadQuestion, i);

      if (question->feature == row->number && strcmp (question->code, "decimal-comma") == 0 && g_strcmp0 (question->field, row->field) == 0)
        return TRUE;
    }
  return FALSE;
}

#define MOST_REPAIRS 64
#define WITHOUT_PAIR 1000

/* How many rows of the reader's repair \a b agree with the person's repair \a a. */
static guint
count_agreement (const GPtrArray *expected, const GPtrArray *got, int a, int b)
{
  guint n = 0;

  for (guint g = 0; g < got->len; g++)
    {
      const Row *row = g_ptr_array_index (got, g);
      gboolean is_right = FALSE;

      for (guint e = 0; row->number == b && !is_text_row (row) && e < expected->len && !is_right; e++)
        {
          const Row *want = g_ptr_array_index (expected, e);

          is_right = want->feature == a && strcmp (want->field, row->field) == 0 && is_same_value (want, row);
        }
      n += is_right;
    }
  return n;
}

static int
last_feature (const GPtrArray *rows)
{
  int last = 0;

  for (guint i = 0; i < rows->len; i++)
    last = MAX (last, ((const Row *) g_ptr_array_index (rows, i))->feature);
  return MIN (last, MOST_REPAIRS);
}

/* Pairs the repairs of both readings in their order so that most rows agree; gives the reader's rows the person's numbers. */
static void
pair_repairs (const GPtrArray *expected, GPtrArray *got)
{
  static guint best[MOST_REPAIRS + 1][MOST_REPAIRS + 1]; /* of the first a and b repairs */
  int n_expected = last_feature (expected), n_got = last_feature (got), pair[MOST_REPAIRS + 1];

  for (int a = 1; a <= n_expected; a++)
    for (int b = 1; b <= n_got; b++)
      best[a][b] = MAX (MAX (best[a - 1][b], best[a][b - 1]), best[a - 1][b - 1] + count_agreement (expected, got, a, b));
  for (int b = 0; b <= n_got; b++)
    pair[b] = WITHOUT_PAIR + b;
  for (int a = n_expected, b = n_got; a > 0 && b > 0;)
    if (best[a][b] == best[a][b - 1])
      b--;
    else if (best[a][b] == best[a - 1][b])
      a--;
    else
      pair[b--] = a--;
  for (guint g = 0; g < got->len; g++)
    {
      Row *row = g_ptr_array_index (got, g);

      if (row->number > 0 && row->number <= n_got)
        row->feature = pair[row->number];
    }
}

static void
judge (Report *report, const char *name, const EmReadResult *result, GPtrArray *expected, GPtrArray *got)
{
  gboolean is_only = has_one_repair (expected) && has_one_repair (got);

  for (guint g = 0; g < got->len; g++)
    {
      Row *row = g_ptr_array_index (got, g);
      gboolean is_right = FALSE;
      Score *score;

      if (strcmp (row->field, "label") == 0 || is_count_of_one (row) || is_asked_comma (result, expected, row))
        continue;
      score = score_of (report, row->field);
      for (guint e = 0; e < expected->len; e++)
        {
          Row *want = g_ptr_array_index (expected, e);

          if (!matches (want, row, is_only) && !is_same_wear (expected, want, row) && !is_same_arc (expected, want, row) &&
              !is_same_pit (expected, want, row))
            continue;
          score->n_right_line += !is_right && want->line == row->line;
          report->all.n_right_line += !is_right && want->line == row->line;
          is_right = want->is_found = TRUE;
        }
      score->n_got++;
      report->all.n_got++;
      report->known.n_got += !is_text_row (row);
      score->n_right_precision += is_right;
      report->all.n_right_precision += is_right;
      report->known.n_right_precision += is_right && !is_text_row (row);
      score->n_marked_right += is_right && is_marked (result, row);
      report->n_marked_right += is_right && !is_text_row (row) && strcmp (row->field, "question") != 0 && is_marked (result, row);
      if (report->has_reasons)
        printf ("%s: %s %s %s = %s\n", name, is_right ? "RIGHT" : "WRONG", reason_of (result, row), row->field, row->value);
      if (!is_right && !is_marked (result, row))
        {
          report->n_unmarked++;
          if (!report->is_silent)
            printf ("%s: wrong and unmarked: feature %d %s = %s %s\n", name, row->number, row->field, row->value, row->unit);
        }
      else if (!is_right && report->has_detail)
        printf ("%s: not in the reading: feature %d %s = %s %s\n", name, row->number, row->field, row->value, row->unit);
    }
  for (guint e = 0; e < expected->len; e++)
    {
      const Row *want = g_ptr_array_index (expected, e);
      Score *score = score_of (report, want->field);

      if (is_count_of_one (want))
        continue;
      score->n_expected++;
      report->all.n_expected++;
      report->known.n_expected += !is_text_row (want);
      report->known.n_right_recall += want->is_found && !is_text_row (want);
      score->n_right_recall += want->is_found;
      report->all.n_right_recall += want->is_found;
      if (!want->is_found && report->has_detail)
        printf ("%s: not found: feature %d %s = %s %s\n", name, want->feature, want->field, want->value, want->unit);
    }
}

static void
forget_found (GPtrArray *expected)
{
  for (guint e = 0; e < expected->len; e++)
    ((Row *) g_ptr_array_index (expected, e))->is_found = FALSE;
}

static gboolean
judge_note (Report *report, Report *by_number, const EmLexicon *lexicon, const char *folder, const char *name)
{
  g_autofree char *stem = g_strndup (name, strlen (name) - 4);
  g_autofree char *text_path = g_build_filename (folder, name, NULL);
  g_autofree char *tsv_name = g_strconcat (stem, ".tsv", NULL);
  g_autofree char *tsv_path = g_build_filename (folder, tsv_name, NULL);
  g_autofree char *text = NULL, *tsv = NULL, *read = NULL;
  g_autoptr (EmReadResult) result = NULL;
  g_autoptr (GPtrArray) expected = NULL, got = NULL;
  gsize length;

  if (!g_file_get_contents (text_path, &text, &length, NULL) || !g_file_get_contents (tsv_path, &tsv, NULL, NULL))
    return FALSE;
  result = em_notes_read (lexicon, text, length, EM_UNITS_METRIC);
  read = em_read_result_to_tsv (result, text);
  expected = parse_rows (tsv);
  name_fields (expected);
  got = parse_rows (read);
  locate_texts (expected, text);
  locate_texts (got, text);
  judge (by_number, stem, result, expected, got);
  forget_found (expected);
  pair_repairs (expected, got);
  judge (report, stem, result, expected, got);
  return TRUE;
}

static double
share (guint part, guint whole)
{
  return whole == 0 ? 1 : (double) part / whole;
}

static void
print_score (const char *name, const Score *score)
{
  printf ("%-14s precision %.3f (%u of %u, %u of them marked)  recall %.3f (%u of %u)\n", name, share (score->n_right_precision, score->n_got),
          score->n_right_precision, score->n_got, score->n_marked_right, share (score->n_right_recall, score->n_expected), score->n_right_recall,
          score->n_expected);
}

static int
compare_names (gconstpointer a, gconstpointer b)
{
  return strcmp (*(char *const *) a, *(char *const *) b);
}

int
main (int argc, char **argv)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (EmLexicon) lexicon = NULL;
  g_autoptr (GPtrArray) names = g_ptr_array_new_with_free_func (g_free);
  g_autofree char *folder = NULL;
  g_autoptr (GList) fields = NULL;
  Report report = { .by_field = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free),
                    .has_detail = g_getenv ("ESTIMEND_CORPUS_DETAIL") != NULL,
                    .has_reasons = g_strcmp0 (g_getenv ("ESTIMEND_CORPUS_DETAIL"), "2") == 0 };
  Report by_number = { .by_field = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free), .is_silent = TRUE };
  const char *name, *data = g_getenv ("ESTIMEND_TEST_DATA");
  g_autofree char *en = g_build_filename (data != NULL ? data : "data", "notes-en.xml", NULL);
  g_autofree char *de = g_build_filename (data != NULL ? data : "data", "notes-de.xml", NULL);
  g_autofree char *es = g_build_filename (data != NULL ? data : "data", "notes-es.xml", NULL);
  g_autofree char *fr = g_build_filename (data != NULL ? data : "data", "notes-fr.xml", NULL);
  const char *paths[] = { en, de, es, fr, NULL };
  GDir *dir;
  gboolean is_good;

  if (argc != 6)
    return 2;
  folder = g_build_filename (g_getenv ("ESTIMEND_TEST_SOURCE") != NULL ? g_getenv ("ESTIMEND_TEST_SOURCE") : ".", "tests", "notes", "corpus", argv[1], NULL);
  lexicon = em_lexicon_load (paths, &error);
  dir = lexicon != NULL ? g_dir_open (folder, 0, &error) : NULL;
  if (dir == NULL)
    {
      fprintf (stderr, "%s\n", error->message);
      return 1;
    }
  while ((name = g_dir_read_name (dir)) != NULL)
    if (g_str_has_suffix (name, ".txt"))
      g_ptr_array_add (names, g_strdup (name));
  g_dir_close (dir);
  g_ptr_array_sort (names, compare_names);
  for (guint i = 0; i < names->len; i++)
    if (!judge_note (&report, &by_number, lexicon, folder, g_ptr_array_index (names, i)))
      {
        fprintf (stderr, "%s: no reading beside it\n", (char *) g_ptr_array_index (names, i));
        return 1;
      }
  fields = g_list_sort (g_hash_table_get_keys (report.by_field), (GCompareFunc) strcmp);
  for (GList *field = fields; field != NULL; field = field->next)
    print_score (field->data, g_hash_table_lookup (report.by_field, field->data));
  printf ("%s: %u notes; wrong and unmarked: %u (limit %s, target 0); right line: %u of %u; limits: precision %s, recall %s\n", argv[1], names->len,
          report.n_unmarked, argv[4], report.all.n_right_line, report.all.n_right_precision, argv[2], argv[3]);
  printf ("right and yet marked: %u of %u\n", report.n_marked_right, report.known.n_right_precision);
  print_score ("all", &report.all);
  print_score ("all but unused", &report.known);
  printf ("repairs by their bare numbers: wrong and unmarked: %u\n", by_number.n_unmarked);
  print_score ("all", &by_number.all);
  is_good = names->len >= (guint) atoi (argv[5]) && share (report.all.n_right_precision, report.all.n_got) >= g_ascii_strtod (argv[2], NULL) &&
            share (report.all.n_right_recall, report.all.n_expected) >= g_ascii_strtod (argv[3], NULL) && report.n_unmarked <= (guint) atoi (argv[4]);
  g_hash_table_unref (report.by_field);
  g_hash_table_unref (by_number.by_field);
  return is_good ? 0 : 1;
}
