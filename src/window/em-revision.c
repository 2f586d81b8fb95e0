/* em-revision: a quote made from another, and what changed between two.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-revision.h"

#include "em-cost.h"
#include "em-document-edit.h"
#include "em-register.h"
#include "em-words.h"

#include <glib/gi18n.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

char *
em_revision_name (const char *number, const char *revision)
{
  return em_register_name (number, revision);
}

char *
em_revision_next (const char *revision)
{
  gsize length = revision != NULL ? strlen (revision) : 0, digits = 0;

  if (length == 0)
    return g_strdup ("A");
  while (digits < length && digits < 9 && g_ascii_isdigit (revision[length - 1 - digits]))
    digits++;
  if (digits > 0)
    return g_strdup_printf ("%.*s%0*d", (int) (length - digits), revision, (int) digits, atoi (revision + length - digits) + 1);

  char last = revision[length - 1];
  if (last == 'Z' || last == 'z' || !g_ascii_isalpha (last))
    return g_strconcat (revision, last == 'z' ? "a" : "A", NULL);
  return g_strdup_printf ("%.*s%c", (int) (length - 1), revision, last + 1);
}

static gboolean
has_revision (EmRegister *reg, const char *number, const char *revision)
{
  for (guint i = 0; reg != NULL && i < em_register_get_length (reg); i++)
    {
      const EmRegisterEntry *entry = em_register_get_entry (reg, i);
      if (g_str_equal (entry->text[EM_ENTRY_NUMBER], number) && g_str_equal (entry->text[EM_ENTRY_REVISION], revision))
        return TRUE;
    }
  return FALSE;
}

void
em_revision_pass (EmRegister *reg, EmQuote *quote)
{
  const char *number = quote->text[EM_QUOTE_NUMBER];

  while (number != NULL && quote->text[EM_QUOTE_REVISION] != NULL && has_revision (reg, number, quote->text[EM_QUOTE_REVISION]))
    {
      g_autofree char *next = em_revision_next (quote->text[EM_QUOTE_REVISION]);
      em_quote_set_text (quote, EM_QUOTE_REVISION, next);
    }
}

/* Neither its price nor its times are those of the job it came from. */
static void
make_draft (EmQuoteFile *file)
{
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();
  g_autofree char *today = g_date_time_format (now, "%Y-%m-%d");

  file->quote.state = EM_STATE_DRAFT;
  file->quote.has_sent_rates = false;
  if (file->sent_rates != NULL)
    em_rates_clear (file->sent_rates);
  if (file->sent_catalogue != NULL)
    em_catalogue_clear (file->sent_catalogue);
  g_clear_pointer (&file->sent_rates, g_free);
  g_clear_pointer (&file->sent_catalogue, g_free);
  file->stamp = (EmFileStamp) { 0 };
  em_quote_set_text (&file->quote, EM_QUOTE_DATE, today);
  for (int32_t i = 0; i < file->quote.n_features; i++)
    file->quote.feature[i].actual = (EmActual) { EM_ABSENT, EM_ABSENT, EM_ABSENT };
}

void
em_revision_make_copy (EmQuoteFile *file)
{
  make_draft (file);
  em_quote_set_text (&file->quote, EM_QUOTE_NUMBER, NULL);
  em_quote_set_text (&file->quote, EM_QUOTE_REVISION, NULL);
  em_quote_set_text (&file->quote, EM_QUOTE_REVISES, NULL);
}

void
em_revision_make_next (EmQuoteFile *file)
{
  g_autofree char *from = em_revision_name (file->quote.text[EM_QUOTE_NUMBER], file->quote.text[EM_QUOTE_REVISION]);
  g_autofree char *next = em_revision_next (file->quote.text[EM_QUOTE_REVISION]);

  make_draft (file);
  em_quote_set_text (&file->quote, EM_QUOTE_REVISES, from);
  em_quote_set_text (&file->quote, EM_QUOTE_REVISION, next);
}

/* ---- what changed ---- */

typedef struct
{
  const EmQuote   *quote;
  EmBasis         *basis;   /* owned */
  const EmRates   *rates;
  const EmCatalogue *catalogue;
  EmCost           cost;
  gboolean         is_priced;
  int32_t         *other;   /* by feature: where the other side has it, −1: nowhere */
} EmSide;

struct EmRevisionPair
{
  EmSide old_side, new_side;
};

/* Nobody reads more of them. */
enum { TOLD_MOST = 200 };

static void
open_side (EmSide *side, const EmQuote *quote, EmBasis *basis, const EmQuote *other)
{
  g_autoptr (GHashTable) places = g_hash_table_new (NULL, NULL);

  side->quote = quote;
  side->basis = em_basis_ref (basis);
  side->rates = em_basis_get_rates (basis);
  side->catalogue = em_basis_get_catalogue (basis);
  em_cost_init (&side->cost);
  side->is_priced = em_cost_quote (&side->cost, quote, side->rates, side->catalogue, NULL, NULL) == EM_OK;
  for (int32_t i = 0; i < other->n_features; i++)
    g_hash_table_insert (places, GUINT_TO_POINTER (other->feature[i].id), GINT_TO_POINTER (i + 1));
  side->other = g_new (int32_t, quote->n_features);
  for (int32_t i = 0; i < quote->n_features; i++)
    side->other[i] = GPOINTER_TO_INT (g_hash_table_lookup (places, GUINT_TO_POINTER (quote->feature[i].id))) - 1;
}

static void
close_side (EmSide *side)
{
  em_cost_clear (&side->cost);
  g_clear_pointer (&side->basis, em_basis_unref);
  g_free (side->other);
}

static gboolean
has_price (const EmSide *side, int32_t index)
{
  return side->is_priced && side->cost.feature[index].status == EM_OK;
}

static void
append_difference (GString *text, gint64 before, gint64 after, const EmCurrency *currency)
{
  g_autofree char *from = em_words_money_bare (before, currency), *to = em_words_money_bare (after, currency);
  g_autofree char *difference = em_words_money_bare (after - before, currency);

  g_string_append_printf (text, "%s → %s (%s%s)", from, to, after > before ? "+" : "", difference);
}

static void
add_net (GPtrArray *sentences, const EmSide *old_side, const EmSide *new_side)
{
  g_autoptr (GString) text = g_string_new (NULL);
  gboolean is_same_currency = g_str_equal (old_side->rates->currency.code, new_side->rates->currency.code);

  if (!old_side->is_priced || !new_side->is_priced || !is_same_currency
      || old_side->cost.totals.net_minor == new_side->cost.totals.net_minor)
    return;
  g_string_append_printf (text, "%s ", _("Net:"));
  append_difference (text, old_side->cost.totals.net_minor, new_side->cost.totals.net_minor, &new_side->rates->currency);
  g_ptr_array_add (sentences, g_string_free (g_steal_pointer (&text), FALSE));
}

static gboolean
is_same_value (double a, double b)
{
  return a == b || (isnan (a) && isnan (b));
}

static char *
value_text (double value, const EmField *field, EmUnits units)
{
  if (isnan (value))
    return g_strdup (_("none"));
  if (field->quantity == EM_QUANTITY_CHOICE)
    return g_strdup (em_words (field->option_names[(int) value]));
  return em_words_quantity (value, field->quantity, units);
}

static void
append_sizes (GString *text, const EmFeature *old_feature, const EmFeature *new_feature, EmUnits units)
{
  const EmKind *kind = new_feature->kind;

  for (int i = 0; i < kind->n_fields; i++)
    if (!is_same_value (old_feature->value[i], new_feature->value[i]))
      {
        g_autofree char *from = value_text (old_feature->value[i], &kind->fields[i], units);
        g_autofree char *to = value_text (new_feature->value[i], &kind->fields[i], units);
        g_string_append_printf (text, "; %s %s → %s", em_words (kind->fields[i].name), from, to);
      }
  if (old_feature->count != new_feature->count)
    g_string_append_printf (text, "; × %d → × %d", old_feature->count, new_feature->count);
}

/* What a job took is no part of what was quoted. */
static gboolean
is_quoted_same (const EmFeature *old_feature, const EmFeature *new_feature)
{
  EmFeature new_quoted = *new_feature;   /* borrows the texts */

  new_quoted.actual = old_feature->actual;
  return em_feature_equal (old_feature, &new_quoted);
}

static void
add_changed (GPtrArray *sentences, const EmSide *old_side, int32_t from, const EmSide *new_side, int32_t to)
{
  const EmFeature *old_feature = &old_side->quote->feature[from], *new_feature = &new_side->quote->feature[to];
  g_autofree char *name = em_words_feature_name (new_side->quote, to);
  g_autoptr (GString) text = g_string_new (name);

  if (old_feature->kind == new_feature->kind)
    append_sizes (text, old_feature, new_feature, new_side->quote->units);
  else
    g_string_append_printf (text, "; %s", _("another kind of repair"));
  if (text->len == strlen (name) && !is_quoted_same (old_feature, new_feature))
    g_string_append_printf (text, "; %s", _("how it is welded or described"));
  if (has_price (old_side, from) && has_price (new_side, to)
      && old_side->cost.feature[from].price_minor != new_side->cost.feature[to].price_minor)
    {
      g_string_append (text, "; ");
      append_difference (text, old_side->cost.feature[from].price_minor, new_side->cost.feature[to].price_minor, &new_side->rates->currency);
    }
  if (text->len > strlen (name))
    g_ptr_array_add (sentences, g_string_free (g_steal_pointer (&text), FALSE));
}

static void
add_lone (GPtrArray *sentences, const EmSide *side, int32_t index, gboolean is_new)
{
  g_autofree char *name = em_words_feature_name (side->quote, index);
  g_autofree char *price = has_price (side, index) ? em_words_money_bare (side->cost.feature[index].price_minor, &side->rates->currency)
                                                   : g_strdup (_("no price"));

  g_ptr_array_add (sentences, g_strdup_printf (is_new ? _("Added: %s, %s") : _("Taken out: %s, %s"), name, price));
}

/* As add_changed would have something to tell. */
static gboolean
is_changed (const EmSide *old_side, int32_t from, const EmSide *new_side, int32_t to)
{
  return !is_quoted_same (&old_side->quote->feature[from], &new_side->quote->feature[to])
         || (has_price (old_side, from) && has_price (new_side, to)
             && old_side->cost.feature[from].price_minor != new_side->cost.feature[to].price_minor);
}

static void
add_features (GPtrArray *sentences, const EmSide *old_side, const EmSide *new_side)
{
  int n_more = 0;

  for (int32_t i = 0; i < new_side->quote->n_features; i++)
    {
      int32_t from = new_side->other[i];
      if (from >= 0 && !is_changed (old_side, from, new_side, i))
        continue;
      if (sentences->len >= TOLD_MOST)
        n_more++;
      else if (from >= 0)
        add_changed (sentences, old_side, from, new_side, i);
      else
        add_lone (sentences, new_side, i, TRUE);
    }
  for (int32_t i = 0; i < old_side->quote->n_features; i++)
    if (old_side->other[i] < 0 && sentences->len >= TOLD_MOST)
      n_more++;
    else if (old_side->other[i] < 0)
      add_lone (sentences, old_side, i, FALSE);
  if (n_more > 0)
    g_ptr_array_add (sentences, g_strdup_printf (ngettext ("%d more feature differs", "%d more features differ", (gulong) n_more), n_more));
}

typedef struct
{
  EmQuoteText which;
  const char *name;
} EmComparedText;

static const EmComparedText compared_texts[] =
{
  { EM_QUOTE_CUSTOMER, N_("Customer") }, { EM_QUOTE_TOOL, N_("Tool") }, { EM_QUOTE_BASE, N_("Metal of the tool") },
  { EM_QUOTE_FILLER, N_("Wire") }, { EM_QUOTE_MACHINE, N_("Machine") }, { EM_QUOTE_PROCESS, N_("Process") }, { EM_QUOTE_COATING, N_("Coating") },
  { EM_QUOTE_LEAD_TIME, N_("Lead time") }, { EM_QUOTE_SCOPE, N_("Scope") }, { EM_QUOTE_TERMS, N_("Terms") },
  { EM_QUOTE_NOTES, N_("The customer’s notes") },
};

/* Ids as the designations they stand for; long texts are only said to differ. */
static char *
text_shown (const EmSide *side, EmQuoteText which)
{
  const char *text = side->quote->text[which];
  int32_t index;

  if (text == NULL)
    return g_strdup (_("none"));
  if (which == EM_QUOTE_BASE && (index = em_catalogue_find_base (side->catalogue, text)) >= 0)
    return g_strdup (side->catalogue->base[index].designation);
  if (which == EM_QUOTE_FILLER && (index = em_catalogue_find_filler (side->catalogue, text)) >= 0)
    return g_strdup (side->catalogue->filler[index].designation);
  if (which == EM_QUOTE_MACHINE && (index = em_rates_find_machine (side->rates, text)) >= 0)
    return g_strdup (side->rates->machine[index].name);
  if (which == EM_QUOTE_PROCESS && (index = em_process_find (text)) >= 0)
    return g_strdup (em_words_process ((EmProcess) index));
  return g_strdup (text);
}

static void
add_texts (GPtrArray *sentences, const EmSide *old_side, const EmSide *new_side)
{
  for (gsize i = 0; i < G_N_ELEMENTS (compared_texts); i++)
    {
      EmQuoteText which = compared_texts[i].which;
      if (em_text_equal (old_side->quote->text[which], new_side->quote->text[which]))
        continue;
      g_autofree char *from = text_shown (old_side, which), *to = text_shown (new_side, which);
      if (which == EM_QUOTE_SCOPE || which == EM_QUOTE_TERMS || which == EM_QUOTE_NOTES)
        g_ptr_array_add (sentences, g_strdup_printf (_("%s: other words"), _(compared_texts[i].name)));
      else
        g_ptr_array_add (sentences, g_strdup_printf ("%s: %s → %s", _(compared_texts[i].name), from, to));
    }
}

typedef struct
{
  EmQuoteNumber which;
  const char   *name, *unit;
} EmComparedNumber;

static const EmComparedNumber compared_numbers[] =
{
  { EM_QUOTE_TOOLS, N_("Tools"), "" }, { EM_QUOTE_HARDNESS, N_("Hardness"), " HRC" }, { EM_QUOTE_MARGIN, N_("Margin"), " %" },
  { EM_QUOTE_CONTINGENCY, N_("Contingency"), " %" }, { EM_QUOTE_RUSH, N_("Rush"), " %" }, { EM_QUOTE_DISCOUNT, N_("Discount"), " %" },
};

static char *
number_shown (double value, const char *unit)
{
  if (isnan (value))
    return g_strdup (_("none"));
  g_autofree char *number = em_words_figure (g_str_equal (unit, " %") ? value / 1e4 : value, 6);
  return g_strconcat (number, unit, NULL);
}

static void
add_numbers (GPtrArray *sentences, const EmSide *old_side, const EmSide *new_side)
{
  for (gsize i = 0; i < G_N_ELEMENTS (compared_numbers); i++)
    {
      double before = em_quote_get_number (old_side->quote, compared_numbers[i].which);
      double after = em_quote_get_number (new_side->quote, compared_numbers[i].which);
      if (is_same_value (before, after))
        continue;
      g_autofree char *from = number_shown (before, compared_numbers[i].unit), *to = number_shown (after, compared_numbers[i].unit);
      g_ptr_array_add (sentences, g_strdup_printf ("%s: %s → %s", _(compared_numbers[i].name), from, to));
    }
}

EmRevisionPair *
em_revision_pair_new (const EmQuote *old_quote, EmBasis *old_basis, const EmQuote *new_quote, EmBasis *new_basis)
{
  EmRevisionPair *pair = g_new0 (EmRevisionPair, 1);

  open_side (&pair->old_side, old_quote, old_basis, new_quote);
  open_side (&pair->new_side, new_quote, new_basis, old_quote);
  return pair;
}

void
em_revision_pair_free (EmRevisionPair *pair)
{
  if (pair == NULL)
    return;
  close_side (&pair->old_side);
  close_side (&pair->new_side);
  g_free (pair);
}

GPtrArray *
em_revision_pair_tell (const EmRevisionPair *pair)
{
  GPtrArray *sentences = g_ptr_array_new_with_free_func (g_free);

  add_net (sentences, &pair->old_side, &pair->new_side);
  add_features (sentences, &pair->old_side, &pair->new_side);
  add_numbers (sentences, &pair->old_side, &pair->new_side);
  add_texts (sentences, &pair->old_side, &pair->new_side);
  return sentences;
}
