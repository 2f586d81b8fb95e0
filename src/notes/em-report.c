/* em-report: a size that a drawing or a report tells otherwise than what was measured.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-report.h"

#include <string.h>

enum { WINDOW = 8 /* items from a paper to what it says */, SIZES_BACK = 8 };

/* What a paper may tell otherwise; of what is worn, or high, it says what that shall be. */
static const guint32 twice = EM_ROLE_LENGTH | EM_ROLE_DEPTH;

/* As many times as long: no two sizes of one thing, or nothing but wear (common practice, no source). */
static const double farthest = 3, nearest = 1.03;

gboolean
em_report_is (const EmItems *items, guint i)
{
  static const char *const papers[] = { "operator", "setter", "inspector", "foreman", "toolmaker", "toolroom", "cmm", "report", "einrichter", "bediener", "werkzeugmacher",
                                        "meister", "opérateur", "régleur", "operario", "ajustador", "tag", "sketch", "drawing", "print", "dwg", "model", "cad", "sheet", "email", "label",
                                        "zeichnung", "skizze", "anhänger", "werkstatt", "messtechnik", "qualitätssicherung", "text", "modell", "protokoll", "plan", "croquis", "dessin", "étiquette", "plano", "dibujo", "etiqueta",
                                        "prüfbericht", "fiche", "rapport", "informe", "hoja", "certificate", "record", "table", "list", "tabelle",
                                        "liste", "tabla", "lista", "tableau", "order" };
  static const char *const says[] = { "form says", "form has", "card says", "ticket says" };
  const EmItem *item = em_item (items, i);
  const char *end = items->text + item->start + item->length;

  if (em_item_is_any_word_of (items, i, says, G_N_ELEMENTS (says)))
    return TRUE;
  for (gsize k = 0; k < G_N_ELEMENTS (papers); k++)
    {
      gsize n = strlen (papers[k]);

      if (item->length >= n && g_ascii_strncasecmp (end - n, papers[k], n) == 0)
        return TRUE;
      /* "drawing says", "print shows" in one phrase; "form" by itself may be a mold's name in German. */
      if (item->length > n && items->text[item->start + n] == ' ' && g_ascii_strncasecmp (items->text + item->start, papers[k], n) == 0)
        return TRUE;
    }
  return FALSE;
}

/* The size that the paper at item i tells: the next one behind it, or the one right before it. EM_NO_ITEM: none. */
static guint
size_of_paper (const EmItems *items, guint i, guint first, guint end)
{
  for (guint k = i + 1; k < end && k <= i + WINDOW && !em_item_is_soft_break (items, k); k++)
    if (em_item_is_measure (items, k))
      return k;
  for (guint k = i; k > first && k + WINDOW > i && !em_item_is_soft_break (items, k - 1); k--)
    if (em_item_is_measure (items, k - 1))
      return k - 1;
  return EM_NO_ITEM;
}

/* Both are lengths or both depths, or how much is missing, and differ, but not by more than two may of one thing. */
static gboolean
are_of_one (const EmItems *items, guint told, guint other)
{
  const guint32 missing = EM_ROLE_BUILD | EM_ROLE_ADD;
  const EmSize *p = em_item_size (items, told), *q = em_item_size (items, other);
  double a = em_fraction_plain (p->value), b = em_fraction_plain (q->value);

  if ((q->roles & missing) != 0 && (p->roles & ~(missing | EM_ROLE_WORN | EM_ROLE_FINISHED)) == 0 && p->chain == 0 && q->chain == 0 && p->unit == q->unit && a > 0 && b > 0 && a != b &&
      MAX (a, b) <= farthest * MIN (a, b))
    return TRUE;

  return (p->roles & twice) != 0 && (p->roles & em_dimension_roles & ~twice) == 0 && (p->roles & twice) == (q->roles & em_dimension_roles) &&
         p->chain == 0 && q->chain == 0 && p->unit == q->unit && a > 0 && b > 0 && MAX (a, b) <= farthest * MIN (a, b) && MAX (a, b) >= nearest * MIN (a, b);
}

/* A word of paper right before or behind the size: "drawing says 34", "25 sur le plan". */
static gboolean
is_by_paper (const EmClause *c, guint size)
{
  for (guint k = size; k-- > c->first && k + 4 >= size && (em_item (c->items, k)->type == EM_ITEM_PHRASE || em_item_is_sign (c->items, k, ':'));)
    if (em_report_is (c->items, k))
      return TRUE;
  for (guint k = size + 1; k < c->end && k <= size + 3 && (em_item (c->items, k)->type == EM_ITEM_PHRASE || em_item (c->items, k)->type == EM_ITEM_UNKNOWN); k++)
    if (em_report_is (c->items, k))
      return TRUE;
  return FALSE;
}

/* "Ø12 according to the toolroom, Ø12.5 according to the drawing": two papers on the same size. */
static gboolean
are_of_papers (const EmClause *c, guint a, guint b)
{
  const guint32 told = twice | EM_ROLE_DIAMETER | EM_ROLE_WIDTH | EM_ROLE_HEIGHT | EM_ROLE_THICKNESS;
  const EmSize *p = em_item_size (c->items, a), *q = em_item_size (c->items, b);
  double ratio = em_fraction_plain (p->value) / em_fraction_plain (q->value);
  guint32 one = p->roles & told, other = q->roles & told;

  return a + WINDOW >= b && p->chain == 0 && q->chain == 0 && p->unit != EM_UNIT_DEGREE && q->unit != EM_UNIT_DEGREE && one != 0 && (other == 0 || one == other) &&
         ((p->roles | q->roles) & EM_ROLE_WORN) == 0 && MAX (ratio, 1 / ratio) < farthest && ratio != 1 && is_by_paper (c, a) && is_by_paper (c, b);
}

/* "length 30 (drawing says 34)", "it is 26 deep, the drawing says 30 deep": told otherwise on paper. Of what is worn, or high, the paper says what it
 * shall be. Once all labels of the clause are given. */
void
em_report_mark (const EmClause *c)
{
  const guint32 other = em_dimension_roles & ~twice;
  guint last = G_MAXUINT;

  for (guint i = c->first; i < c->end; i++)
    {
      EmSize *size = em_item_is_measure (c->items, i) ? em_item_size (c->items, i) : NULL, *first = last != G_MAXUINT ? em_item_size (c->items, last) : NULL;
      double ratio;

      if (size == NULL)
        continue;
      if (first != NULL && are_of_papers (c, last, i))
        {
          first->is_either = size->is_either = TRUE;
          first->roles &= ~(guint32) EM_ROLE_FINISHED;
          size->roles = first->roles;
        }
      ratio = first != NULL ? em_fraction_plain (size->value) / em_fraction_plain (first->value) : 0;
      if (first != NULL && last + WINDOW >= i && first->chain == 0 && size->chain == 0 && first->unit != EM_UNIT_DEGREE && (first->roles & twice) != 0 && (first->roles & (other | EM_ROLE_WORN | EM_ROLE_FINISHED)) == 0 &&
          (size->roles & other) == 0 && ((size->roles & twice) == (first->roles & twice) || ((size->roles & twice) == 0 && (first->roles & EM_ROLE_LENGTH) != 0)) &&
          MAX (ratio, 1 / ratio) < farthest && MAX (ratio, 1 / ratio) > nearest && is_by_paper (c, i) && !is_by_paper (c, last))
        {
          first->is_either = size->is_either = TRUE;
          size->roles |= first->roles & twice;
        }
      last = i;
    }
}

/* What a paper tells from first to end, where nothing is to be done; EM_NO_ITEM: nothing. */
static guint
told_between (const EmReader *r, guint first, guint end)
{
  guint told = EM_NO_ITEM;

  for (guint i = first; i < end && i < first + WINDOW; i++)
    {
      if (em_item_says (r->items, i, EM_SAYS_REFUSE) != NULL)
        return EM_NO_ITEM;
      if (told == EM_NO_ITEM && em_report_is (r->items, i))
        told = size_of_paper (r->items, i, first, end);
    }
  return told;
}

gboolean
em_report_take (EmReader *r, EmProto *before, guint first, guint end)
{
  guint told = before != NULL ? told_between (r, first, end) : EM_NO_ITEM;
  const GArray *sizes = before != NULL ? before->sizes : NULL;

  for (guint i = told != EM_NO_ITEM ? sizes->len : 0; i-- > 0 && i + SIZES_BACK >= sizes->len;)
    if (are_of_one (r->items, told, g_array_index (sizes, guint, i)))
      {
        em_item_size (r->items, g_array_index (sizes, guint, i))->is_either = em_item_size (r->items, told)->is_either = TRUE;
        em_reader_add_items (r, before, first, end);
        for (guint k = first; k < end; k++)
          em_item (r->items, k)->is_used |= em_report_is (r->items, k) || k == told || em_item_says (r->items, k, EM_SAYS_LABEL) != NULL;
        return TRUE;
      }
  return FALSE;
}
