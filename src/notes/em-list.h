/* em-list: what heads a line, or a part of it, of a list.
 *
 * Private to the grammar: bullets, numbers, letters and names like "ITEM 2:", "(3)", "-B-", "W1 -".
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-proto.h"

G_BEGIN_DECLS

gboolean em_list_is_bullet       (const EmItem *item);
/* ".", ")" or ":" right behind the item before it. */
gboolean em_list_is_mark         (const EmReader *r, guint i);
/* "a" or "12" as in "a." and "12)". */
gboolean em_list_is_numeral      (const EmReader *r, guint i);
/* "ITEM", "Pos" */
gboolean em_list_is_item_word    (const EmReader *r, guint i);
/* ".1" of "Pos.1": the number behind the point of a word that is abbreviated; 0: none. */
guint64  em_list_pointed_number  (const EmItems *items, guint i);
/* "1.2", of two whole numbers from 1 on: 2048 · 1 + 2, above any number of a list; 0: none such. */
guint64  em_list_section_at      (const EmItems *items, guint i);
/* "3", or "c": the number or letter at i that heads a line or is referred to; 0: none. */
guint64  em_list_head_at         (const EmItems *items, guint i);
/* "Location: PL edge" in a form: where the repair told before it is. */
gboolean em_list_is_place_line   (const EmItems *items, guint i, guint end);
/* "Subject:", "Objet :": a line of a mail's head. */
gboolean em_list_is_mail_head    (const EmItems *items, guint i, guint end);
gboolean em_list_is_bare_whole   (const EmItems *items, guint i);
/* Uses up what heads the line from i to end, and returns the item after it. */
guint    em_list_skip_head       (EmReader *r, guint i, guint end);
/* The same of "(1)" or "(b)" that heads a part of a line. */
guint    em_list_skip_number     (EmReader *r, guint first, guint end);
/* "2) nick" within a line, the next number of its list. */
gboolean em_list_begins_number (const EmReader *r, guint i);
/* A colon, full stop or comma before the next number of such a list. */
gboolean em_list_precedes_number (EmReader *r, guint i, guint end);

G_END_DECLS
