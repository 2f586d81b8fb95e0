/* em-ask: what only the office can tell, and what each answer sets.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-writer.h"

#include <math.h>
#include <string.h>

static EmReadQuestion
new_question (const EmWriter *w, int feature, const char *code, const char *field, guint item)
{
  EmReadField at = em_writer_field (w, feature, field, item);
  EmReadQuestion question = { .feature = feature, .code = code, .field = field, .start = at.start, .length = at.length,
                             .line = at.line };

  return question;
}

static void
add_answer (EmWriter *w, EmReadQuestion *question, const char *answer, const EmReadField *sets, guint n_sets)
{
  int k = question->n_answers;

  if (k == EM_ANSWER_MAX)
    return;
  question->answer[k] = answer;
  question->first_set[k] = w->result->sets->len;
  question->n_sets[k] = n_sets;
  if (n_sets > 0)
    g_array_append_vals (w->result->sets, sets, n_sets);
  question->n_answers++;
}

static EmReadField
answer_value (const EmWriter *w, int feature, const char *field, guint item, double value)
{
  EmReadField set = em_writer_field (w, feature, field, item);

  set.value = value;
  set.reason = "answered";
  return set;
}

static EmReadField
answer_text (const EmWriter *w, int feature, const char *field, guint item, const char *text)
{
  EmReadField set = answer_value (w, feature, field, item, (double) NAN);

  set.text = text;
  return set;
}

static void
ask_side (EmWriter *w, int feature, guint item)
{
  EmReadQuestion question = new_question (w, feature, "side-or-diameter", "build", item);
  EmReadField side = answer_value (w, feature, "build", item, em_writer_mm (w, item));
  EmReadField diameter = answer_value (w, feature, "build", item, em_writer_mm (w, item) / 2);

  add_answer (w, &question, "per-side", &side, 1);
  add_answer (w, &question, "on-diameter", &diameter, 1);
  g_array_append_val (w->result->questions, question);
}

static void
ask_second_leg (EmWriter *w, int feature, guint item)
{
  EmReadQuestion question = new_question (w, feature, "second-leg", "leg_b", item);
  EmReadField leg = answer_value (w, feature, "leg_b", item, em_writer_mm (w, item));

  add_answer (w, &question, "same", &leg, 1);
  g_array_append_val (w->result->questions, question);
}

static void
ask_which_field (EmWriter *w, int feature, guint item)
{
  EmReadQuestion question = new_question (w, feature, "which-field", NULL, item);
  EmReadField length = answer_value (w, feature, "length", item, em_writer_mm (w, item));
  EmReadField legs[2] = { answer_value (w, feature, "leg_a", item, em_writer_mm (w, item)),
                          answer_value (w, feature, "leg_b", item, em_writer_mm (w, item)) };

  add_answer (w, &question, "length", &length, 1);
  add_answer (w, &question, "depth", legs, 2);
  g_array_append_val (w->result->questions, question);
}

static void
ask_edge_side (EmWriter *w, int feature, guint item)
{
  EmReadQuestion question = new_question (w, feature, "outer-or-bore", "side", item);
  EmReadField outer = answer_text (w, feature, "side", item, "outer");
  EmReadField bore = answer_text (w, feature, "side", item, "bore");

  add_answer (w, &question, "outer", &outer, 1);
  add_answer (w, &question, "bore", &bore, 1);
  g_array_append_val (w->result->questions, question);
}

static void
ask_which_face (EmWriter *w, int feature, guint item)
{
  EmReadQuestion question = new_question (w, feature, "which-face", NULL, item);

  g_array_append_val (w->result->questions, question);
}

static void
ask_cone (EmWriter *w, int feature, guint item, const EmFit *fit)
{
  static const char *const answers[] = { "included", "per-side-angle" };
  EmReadQuestion question = new_question (w, feature, "cone-angle", fit->cone[0].field, item);

  for (gsize i = 0; i < G_N_ELEMENTS (answers); i++)
    if (fit->cone[i].field != NULL)
      {
        EmReadField set = answer_value (w, feature, fit->cone[i].field, item, fit->cone[i].value);

        add_answer (w, &question, answers[i], &set, 1);
      }
  g_array_append_val (w->result->questions, question);
}

/* Where both sizes are of one field either may be right; else nobody but the customer knows. */
static void
ask_two_values (EmWriter *w, int feature, guint item, const EmFit *fit)
{
  static const char *const answers[] = { "first", "second" };
  gboolean is_one_field = fit->n_either == 2 && strcmp (fit->either[0].field, fit->either[1].field) == 0 && fit->either[0].item != fit->either[1].item;
  EmReadQuestion question = new_question (w, feature, "two-values", is_one_field ? fit->either[0].field : NULL, item);

  for (gsize i = 0; is_one_field && i < G_N_ELEMENTS (answers); i++)
    {
      EmReadField set = answer_value (w, feature, fit->either[i].field, fit->either[i].item, fit->either[i].value);

      add_answer (w, &question, answers[i], &set, 1);
    }
  g_array_append_val (w->result->questions, question);
}

static const struct { const char *code; void (*ask) (EmWriter *w, int feature, guint item); } fit_questions[] = {
  { "side-or-diameter", ask_side },
  { "second-leg", ask_second_leg },
  { "which-field", ask_which_field },
  { "outer-or-bore", ask_edge_side },
  { "which-face", ask_which_face },
};

void
em_writer_ask_fit (EmWriter *w, int feature, const EmFit *fit)
{
  for (guint i = 0; i < fit->n_questions; i++)
    if (strcmp (fit->question[i].code, "cone-angle") == 0)
      ask_cone (w, feature, fit->question[i].item, fit);
    else if (strcmp (fit->question[i].code, "two-values") == 0)
      ask_two_values (w, feature, fit->question[i].item, fit);
    else for (gsize k = 0; k < G_N_ELEMENTS (fit_questions); k++)
      if (strcmp (fit->question[i].code, fit_questions[k].code) == 0)
        fit_questions[k].ask (w, feature, fit->question[i].item);
}

void
em_writer_ask_count (EmWriter *w, int feature, guint item)
{
  EmReadQuestion question = new_question (w, feature, "count-unknown", "count", item);
  EmReadField one = answer_value (w, feature, "count", item, 1);

  add_answer (w, &question, "one", &one, 1);
  g_array_append_val (w->result->questions, question);
}

void
em_writer_ask_chamfer (EmWriter *w, int feature, guint item)
{
  const EmSize *size = em_item_size (w->items, item);
  EmReadQuestion question = new_question (w, feature, "count-or-chamfer", NULL, item);
  double value = em_fraction_in_mm (size->value, size->unit == EM_UNIT_INCH ? EM_UNIT_INCH : EM_UNIT_MM);
  EmReadField places = answer_value (w, feature, "count", item, em_fraction_plain (size->value));
  EmReadField legs[2] = { answer_value (w, feature, "leg_a", item, value), answer_value (w, feature, "leg_b", item, value) };

  add_answer (w, &question, "places", &places, 1);
  add_answer (w, &question, "chamfer", legs, 2);
  g_array_append_val (w->result->questions, question);
}

void
em_writer_ask_comma (EmWriter *w, int feature, const EmFitted *fitted)
{
  EmReadQuestion question = new_question (w, feature, "decimal-comma", fitted->field, fitted->item);
  EmReadField point = answer_value (w, feature, fitted->field, fitted->item, fitted->value);
  EmReadField thousands = answer_value (w, feature, fitted->field, fitted->item, fitted->value * 1000);

  add_answer (w, &question, "decimal", &point, 1);
  add_answer (w, &question, "thousands", &thousands, 1);
  g_array_append_val (w->result->questions, question);
}

void
em_writer_ask_dual (EmWriter *w, int feature, const EmFitted *fitted)
{
  const EmSize *size = em_item_size (w->items, fitted->item);
  EmReadQuestion question = new_question (w, feature, "dual-mismatch", fitted->field, fitted->item);
  EmReadField first = answer_value (w, feature, fitted->field, fitted->item, fitted->value);
  EmReadField second = answer_value (w, feature, fitted->field, fitted->item,
                                     em_fraction_in_mm (size->other, size->other_unit) * fitted->factor);

  add_answer (w, &question, "first", &first, 1);
  add_answer (w, &question, "second", &second, 1);
  g_array_append_val (w->result->questions, question);
}

static void
add_kind_answer (EmWriter *w, EmReadQuestion *question, const EmProto *proto, int kind, guint item)
{
  g_autoptr (GArray) sets = g_array_new (FALSE, FALSE, sizeof (EmReadField));
  EmReadField set = answer_text (w, question->feature, "kind", item, em_note_kinds[kind]);
  EmFit fit;

  g_array_append_val (sets, set);
  em_fit_sizes (w->items, proto, kind, &fit);
  for (guint i = 0; i < fit.n_fitted; i++)
    {
      set = em_writer_fitted (w, question->feature, &fit.fitted[i]);
      g_array_append_val (sets, set);
    }
  add_answer (w, question, em_note_kinds[kind], (EmReadField *) (void *) sets->data, sets->len);
}

void
em_writer_ask_kind (EmWriter *w, int feature, const EmProto *proto, int first, int second)
{
  static const int usual[] = { FACE, SIDEWALL, EDGE_NICK, RECESS, BORE, PIN };
  guint item = proto->noun != EM_NO_ITEM ? proto->noun : proto->first;
  EmReadQuestion question = new_question (w, feature, "which-kind", "kind", item);

  if (first >= 0)
    {
      add_kind_answer (w, &question, proto, first, item);
      add_kind_answer (w, &question, proto, second, item);
    }
  else
    for (gsize i = 0; i < G_N_ELEMENTS (usual); i++)
      add_kind_answer (w, &question, proto, usual[i], item);
  g_array_append_val (w->result->questions, question);
}

void
em_writer_ask_units (EmWriter *w)
{
  EmReadQuestion question;
  guint at = 0;

  if (w->first_guess == EM_NO_ITEM)
    return;
  question = new_question (w, w->guess_feature, "inch-or-mm", NULL, w->first_guess);
  add_answer (w, &question, "mm", (EmReadField *) (void *) w->as_mm->data, w->as_mm->len);
  add_answer (w, &question, "inch", (EmReadField *) (void *) w->as_inch->data, w->as_inch->len);
  while (at < w->result->questions->len && g_array_index (w->result->questions, EmReadQuestion, at).feature < question.feature)
    at++;
  g_array_insert_val (w->result->questions, at, question);
}
