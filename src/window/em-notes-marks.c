/* em-notes-marks: what became of the customer's words, shown under them.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-notes-marks.h"

#include "em-look.h"
#include "em-points.h"

#include <glib/gi18n.h>
#include <stdlib.h>
#include <string.h>

/* The looks of features come round after so many, see em_look_underline. */
enum { N_THREADS = 18, GUTTER_WIDTH = 26, FEW = 64, SLICE_US = 8000, LOOKS_AT_ONCE = 32 };

/* In longer notes each leading point is not looked for at every key. */
enum { POINTS_MAX_BYTES = 20000 };

/* Of the accent behind words. */
#define CHOSEN_ALPHA 0.16

/* In order of rank: where words have several, a later one's underline and ground hold. */
typedef enum { LOOK_DOUBTED, LOOK_THREAD, LOOK_GENERAL = LOOK_THREAD + N_THREADS, LOOK_UNUSED, LOOK_REJECTED, LOOK_ASKED, LOOK_POINT, N_LOOK } Look;

typedef struct
{
  int  start, length;   /* characters */
  Look look;
} Stretch;

/* Where a feature's number stands. */
typedef struct
{
  int     at;   /* character its words begin at */
  int32_t feature;
} Number;

struct EmNotesMarks
{
  GtkTextView   *view;       /* borrowed */
  GtkTextBuffer *buffer;     /* owned */
  GtkWidget     *gutter;     /* the view's */
  GtkTextTag    *tag[N_LOOK];
  GArray        *shown;      /* Stretch: under the words, from n_applied on still to come */
  guint          n_applied;
  int            n_chars;    /* of the text when it was shown */
  GArray        *numbers;    /* Number, by place */
  guint          applying;   /* source id */
  GtkTextTag    *chosen;     /* under the words of the feature being looked at */
  GtkTextMark   *place;      /* where they begin */
  int32_t        chosen_feature;   /* −1: none */
  uint32_t       chosen_id;
};

static void
make_tags (EmNotesMarks *self)
{
  for (int look = 0; look < N_LOOK; look++)
    self->tag[look] = gtk_text_buffer_create_tag (self->buffer, NULL, NULL);
  for (int i = 0; i < N_THREADS; i++)
    g_object_set (self->tag[LOOK_THREAD + i], "underline", em_look_underline (i), NULL);
  g_object_set (self->tag[LOOK_DOUBTED], "underline", PANGO_UNDERLINE_ERROR, NULL);
  g_object_set (self->tag[LOOK_ASKED], "underline", PANGO_UNDERLINE_ERROR, NULL);
  /* In the text's own colour: GTK 4.8 frees the colour of an overline twice where tags meet. */
  g_object_set (self->tag[LOOK_GENERAL], "overline", PANGO_OVERLINE_SINGLE, NULL);
  g_object_set (self->tag[LOOK_UNUSED], "style", PANGO_STYLE_ITALIC, NULL);
  g_object_set (self->tag[LOOK_REJECTED], "strikethrough", TRUE, NULL);
  g_object_set (self->tag[LOOK_POINT], "allow-breaks", FALSE, NULL);
  /* The last made holds before the others. */
  self->chosen = gtk_text_buffer_create_tag (self->buffer, NULL, NULL);
}

void
em_notes_marks_recolour (EmNotesMarks *self)
{
  GtkWidget *widget = GTK_WIDGET (self->view);
  GdkRGBA colour, ground;

  for (int i = 0; i < N_THREADS; i++)
    {
      em_look_thread (widget, i, &colour);
      g_object_set (self->tag[LOOK_THREAD + i], "underline-rgba", &colour, NULL);
    }
  em_look_colour (widget, "em_caution_ground", &ground);
  em_look_colour (widget, "em_problem", &colour);
  g_object_set (self->tag[LOOK_DOUBTED], "underline-rgba", &colour, "background-rgba", &ground, NULL);
  g_object_set (self->tag[LOOK_ASKED], "underline-rgba", &colour, "background-rgba", &ground, NULL);
  em_look_colour (widget, "em_unused", &ground);
  g_object_set (self->tag[LOOK_UNUSED], "background-rgba", &ground, NULL);
  em_look_colour (widget, "em_accent", &colour);
  colour.alpha = (float) CHOSEN_ALPHA;
  g_object_set (self->chosen, "background-rgba", &colour, NULL);
  gtk_widget_queue_draw (self->gutter);
}

/* ---- what is to be shown ---- */

/* From bytes to characters; marks mostly follow each other, so the way from the last is short. */
typedef struct
{
  const char *text;
  gsize       n_bytes, at;
  int         n_chars;   /* before at */
  gboolean    is_ascii;
} Place;

static Place
place_new (const char *text, int n_chars)
{
  gsize n_bytes = strlen (text);

  return (Place) { text, n_bytes, 0, 0, n_bytes == (gsize) n_chars };
}

static int
to_chars (Place *place, gsize byte)
{
  byte = MIN (byte, place->n_bytes);
  if (place->is_ascii)
    return (int) byte;
  if (byte >= place->at)
    place->n_chars += (int) g_utf8_strlen (place->text + place->at, (gssize) (byte - place->at));
  else
    place->n_chars -= (int) g_utf8_strlen (place->text + byte, (gssize) (place->at - byte));
  place->at = byte;
  return place->n_chars;
}

/* "LEAVE 0.2 ON ALL": each feature has its mark there, but the words govern all. */
static gboolean
is_note_for_all (const EmMark *mark)
{
  return g_strcmp0 (mark->field, "stock") == 0 && g_strcmp0 (mark->reason, "general-note") == 0;
}

static Look
look_of (const EmMark *mark, int32_t feature)
{
  switch (mark->state)
    {
    case EM_MARK_USED:
      if (is_note_for_all (mark))
        return LOOK_GENERAL;
      return (Look) (LOOK_THREAD + MAX (feature, 0) % N_THREADS);
    case EM_MARK_GENERAL: return LOOK_GENERAL;
    case EM_MARK_UNUSED: return LOOK_UNUSED;
    case EM_MARK_REJECTED: return LOOK_REJECTED;
    /* Of a feature with a question all words are doubted, those asked about most. */
    case EM_MARK_QUESTION: return mark->field == NULL && mark->reason == NULL ? LOOK_DOUBTED : LOOK_ASKED;
    case EM_N_MARK: break;
    }
  return LOOK_UNUSED;
}

static GHashTable *
places_of_features (const EmQuote *quote)
{
  GHashTable *places = g_hash_table_new (NULL, NULL);

  for (int32_t i = 0; i < quote->n_features; i++)
    g_hash_table_insert (places, GUINT_TO_POINTER (quote->feature[i].id), GINT_TO_POINTER (i + 1));
  return places;
}

/* The feature's own stretch goes before words it shares with others, such as a general note of stock; then the earlier. */
static gboolean
is_nearer_start (const EmMark *mark, const EmMark *first)
{
  if (first == NULL || (mark->field == NULL) != (first->field == NULL))
    return first == NULL || mark->field == NULL;
  return mark->start < first->start;
}

static int
compare_numbers (const void *a, const void *b)
{
  const Number *x = a, *y = b;

  return x->at != y->at ? (x->at > y->at) - (x->at < y->at) : (x->feature > y->feature) - (x->feature < y->feature);
}

static void
find_numbers (EmNotesMarks *self, const EmQuote *quote, GHashTable *places, Place *place)
{
  g_autofree const EmMark **first = g_new0 (const EmMark *, quote->n_features + 1);

  for (int32_t i = 0; i < quote->n_marks; i++)
    {
      int32_t feature = GPOINTER_TO_INT (g_hash_table_lookup (places, GUINT_TO_POINTER (quote->mark[i].feature_id))) - 1;
      if (feature >= 0 && quote->mark[i].state == EM_MARK_USED && is_nearer_start (&quote->mark[i], first[feature]))
        first[feature] = &quote->mark[i];
    }
  g_array_set_size (self->numbers, 0);
  for (int32_t i = 0; i < quote->n_features; i++)
    if (first[i] != NULL)
      {
        Number number = { to_chars (place, first[i]->start), i };
        g_array_append_val (self->numbers, number);
      }
  if (self->numbers->len > 0)
    qsort (self->numbers->data, self->numbers->len, sizeof (Number), compare_numbers);
}

static void
find_points (GArray *stretches, Place *place)
{
  if (place->n_bytes > POINTS_MAX_BYTES)
    return;
  for (gssize at = em_points_next (place->text, 0); at >= 0; at = em_points_next (place->text, (gsize) at + EM_POINT_BYTES))
    {
      Stretch stretch = { to_chars (place, (gsize) at), EM_POINT_BYTES, LOOK_POINT };

      g_array_append_val (stretches, stretch);
    }
}

static GArray *
find_stretches (const EmQuote *quote, GHashTable *places, Place *place)
{
  GArray *stretches = g_array_new (FALSE, FALSE, sizeof (Stretch));

  for (int32_t i = 0; i < quote->n_marks; i++)
    {
      const EmMark *mark = &quote->mark[i];
      int32_t feature = mark->feature_id != 0 ? GPOINTER_TO_INT (g_hash_table_lookup (places, GUINT_TO_POINTER (mark->feature_id))) - 1 : -1;
      if (mark->length == 0 || (mark->state == EM_MARK_USED && feature < 0 && mark->feature_id != 0))
        continue;
      Stretch stretch = { to_chars (place, mark->start), 0, look_of (mark, feature) };
      stretch.length = to_chars (place, (gsize) mark->start + mark->length) - stretch.start;
      g_array_append_val (stretches, stretch);
    }
  find_points (stretches, place);
  return stretches;
}

/* ---- under the words ---- */

static void
apply (EmNotesMarks *self, const Stretch *stretch)
{
  GtkTextIter start, end;

  gtk_text_buffer_get_iter_at_offset (self->buffer, &start, stretch->start);
  end = start;
  gtk_text_iter_forward_chars (&end, stretch->length);
  gtk_text_buffer_apply_tag (self->buffer, self->tag[stretch->look], &start, &end);
}

static gboolean
apply_some (gpointer data)
{
  EmNotesMarks *self = data;
  gint64 from = g_get_monotonic_time ();

  while (self->n_applied < self->shown->len && g_get_monotonic_time () - from < SLICE_US)
    for (guint i = 0; i < LOOKS_AT_ONCE && self->n_applied < self->shown->len; i++)
      apply (self, &g_array_index (self->shown, Stretch, self->n_applied++));
  if (self->n_applied < self->shown->len)
    return G_SOURCE_CONTINUE;
  self->applying = 0;
  return G_SOURCE_REMOVE;
}

static void
apply_all (EmNotesMarks *self)
{
  GtkTextIter start, end;

  g_clear_handle_id (&self->applying, g_source_remove);
  gtk_text_buffer_get_bounds (self->buffer, &start, &end);
  gtk_text_buffer_remove_all_tags (self->buffer, &start, &end);
  self->n_applied = 0;
  if (apply_some (self) == G_SOURCE_CONTINUE)
    self->applying = g_idle_add (apply_some, self);
}

static gboolean
is_over (const Stretch *a, const Stretch *b)
{
  return a->start < b->start + b->length && b->start < a->start + a->length;
}

/* What else marks the same words is put there again. */
static void
apply_again (EmNotesMarks *self, const Stretch *place)
{
  GtkTextIter start, end;

  gtk_text_buffer_get_iter_at_offset (self->buffer, &start, place->start);
  gtk_text_buffer_get_iter_at_offset (self->buffer, &end, place->start + place->length);
  gtk_text_buffer_remove_all_tags (self->buffer, &start, &end);
  for (guint i = 0; i < self->n_applied; i++)
    if (is_over (&g_array_index (self->shown, Stretch, i), place))
      apply (self, &g_array_index (self->shown, Stretch, i));
}

/* Where the words stay as they were, or went on with the text that was typed before them: the view moved the tags itself. */
static gboolean
is_same (const Stretch *now, const Stretch *before, int moved)
{
  return now->look == before->look && now->length == before->length && (now->start == before->start || now->start == before->start + moved);
}

/* FALSE: too many changed to go by each. */
static gboolean
apply_changed (EmNotesMarks *self, const GArray *before, int moved)
{
  guint changed[FEW], n_changed = 0;

  if (before->len != self->shown->len || self->applying != 0)
    return FALSE;
  for (guint i = 0; i < before->len; i++)
    if (!is_same (&g_array_index (self->shown, Stretch, i), &g_array_index (before, Stretch, i), moved))
      {
        if (n_changed == FEW)
          return FALSE;
        changed[n_changed++] = i;
      }
  for (guint i = 0; i < n_changed; i++)
    {
      Stretch old = g_array_index (before, Stretch, changed[i]);
      apply_again (self, &old);
      old.start += moved;
      apply_again (self, &old);
      apply_again (self, &g_array_index (self->shown, Stretch, changed[i]));
    }
  return TRUE;
}

void
em_notes_marks_show (EmNotesMarks *self, const EmQuote *quote)
{
  const char *text = quote->text[EM_QUOTE_NOTES] != NULL ? quote->text[EM_QUOTE_NOTES] : "";
  g_autoptr (GHashTable) places = places_of_features (quote);
  g_autoptr (GArray) before = self->shown;
  int n_chars = gtk_text_buffer_get_char_count (self->buffer), moved = n_chars - self->n_chars;
  Place place = place_new (text, n_chars);

  self->shown = find_stretches (quote, places, &place);
  find_numbers (self, quote, places, &place);
  self->n_chars = n_chars;
  if (!apply_changed (self, before, moved))
    apply_all (self);
  gtk_widget_queue_draw (self->gutter);
}

void
em_notes_marks_forget (EmNotesMarks *self)
{
  g_clear_handle_id (&self->applying, g_source_remove);
  g_array_set_size (self->shown, 0);
  g_array_set_size (self->numbers, 0);
  self->n_applied = 0;
}

/* Of the whole proposal; of single words of it, as a general note of stock, only where there is nothing else. */
static gboolean
has_whole (const EmQuote *quote, uint32_t id)
{
  for (int32_t i = 0; i < quote->n_marks; i++)
    if (quote->mark[i].feature_id == id && quote->mark[i].field == NULL && quote->mark[i].length > 0)
      return TRUE;
  return FALSE;
}

static gboolean
is_chosen (const EmMark *mark, uint32_t id, gboolean is_whole)
{
  return mark->feature_id == id && mark->length > 0 && (mark->state == EM_MARK_USED || mark->state == EM_MARK_QUESTION)
         && (!is_whole || mark->field == NULL);
}

void
em_notes_marks_choose (EmNotesMarks *self, const EmQuote *quote, uint32_t id)
{
  const char *text = quote->text[EM_QUOTE_NOTES] != NULL ? quote->text[EM_QUOTE_NOTES] : "";
  Place place = place_new (text, gtk_text_buffer_get_char_count (self->buffer));
  gboolean is_whole = id != 0 && has_whole (quote, id), is_other = id != self->chosen_id;
  GtkTextIter start, end;
  int first = -1;

  self->chosen_id = id;
  self->chosen_feature = id != 0 ? em_quote_find (quote, id) : -1;
  gtk_text_buffer_get_bounds (self->buffer, &start, &end);
  gtk_text_buffer_remove_tag (self->buffer, self->chosen, &start, &end);
  for (int32_t i = 0; id != 0 && i < quote->n_marks; i++)
    if (is_chosen (&quote->mark[i], id, is_whole))
      {
        int from = to_chars (&place, quote->mark[i].start);
        gtk_text_buffer_get_iter_at_offset (self->buffer, &start, from);
        gtk_text_buffer_get_iter_at_offset (self->buffer, &end, to_chars (&place, (gsize) quote->mark[i].start + quote->mark[i].length));
        gtk_text_buffer_apply_tag (self->buffer, self->chosen, &start, &end);
        first = first < 0 ? from : MIN (first, from);
      }
  gtk_widget_queue_draw (self->gutter);
  if (first < 0 || !is_other || gtk_widget_has_focus (GTK_WIDGET (self->view)))
    return;
  gtk_text_buffer_get_iter_at_offset (self->buffer, &start, first);
  gtk_text_buffer_move_mark (self->buffer, self->place, &start);
  gtk_text_view_scroll_to_mark (self->view, self->place, 0.1, FALSE, 0, 0);
}

gboolean
em_notes_marks_is_busy (EmNotesMarks *self)
{
  return self->applying != 0;
}

/* ---- beside them ---- */

static int
offset_at (EmNotesMarks *self, int y)
{
  GtkTextIter iter;

  gtk_text_view_get_line_at_y (self->view, &iter, y, NULL);
  return gtk_text_iter_get_offset (&iter);
}

/* The first number at or behind a character. */
static guint
find_number (EmNotesMarks *self, int at)
{
  guint low = 0, high = self->numbers->len;

  while (low < high)
    {
      guint middle = (low + high) / 2;
      if (g_array_index (self->numbers, Number, middle).at < at)
        low = middle + 1;
      else
        high = middle;
    }
  return low;
}

static void
draw_number (EmNotesMarks *self, cairo_t *cr, const Number *number, gboolean has_more, int width, int y, int line_height)
{
  g_autofree char *text = g_strdup_printf (has_more ? "%d…" : "%d", number->feature + 1);
  g_autoptr (PangoLayout) layout = gtk_widget_create_pango_layout (self->gutter, text);
  GdkRGBA colour;
  int text_width, text_height;

  pango_layout_get_pixel_size (layout, &text_width, &text_height);
  em_look_thread (GTK_WIDGET (self->view), number->feature, &colour);
  gdk_cairo_set_source_rgba (cr, &colour);
  /* Of the feature being looked at: never colour alone. */
  if (number->feature == self->chosen_feature)
    {
      cairo_rectangle (cr, MAX (0, width - text_width - 7), y, text_width + 6, line_height);
      cairo_fill (cr);
      em_look_colour (GTK_WIDGET (self->view), "em_paper", &colour);
      gdk_cairo_set_source_rgba (cr, &colour);
    }
  /* NOLINTNEXTLINE(bugprone-integer-division): whole pixels. */
  cairo_move_to (cr, MAX (0, width - text_width - 4), y + (line_height - text_height) / 2);
  pango_cairo_show_layout (cr, layout);
}

static int
line_of (EmNotesMarks *self, const Number *number, int *out_height)
{
  GtkTextIter iter;
  GdkRectangle place;
  int x, y;

  gtk_text_buffer_get_iter_at_offset (self->buffer, &iter, number->at);
  gtk_text_view_get_iter_location (self->view, &iter, &place);
  gtk_text_view_buffer_to_window_coords (self->view, GTK_TEXT_WINDOW_LEFT, 0, place.y, &x, &y);
  *out_height = place.height;
  return y;
}

/* Numbers of the features in sight beside the line their words begin on; of several on one line the first feature's and "…". */
static void
draw_gutter (GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer data)
{
  EmNotesMarks *self = data;
  GdkRectangle sight;
  GtkTextIter end;
  guint last;

  (void) area;
  (void) height;
  gtk_text_view_get_visible_rect (self->view, &sight);
  gtk_text_view_get_line_at_y (self->view, &end, sight.y + sight.height, NULL);
  gtk_text_iter_forward_line (&end);
  last = find_number (self, gtk_text_iter_get_offset (&end) + 1);
  for (guint i = find_number (self, offset_at (self, sight.y)); i < last;)
    {
      const Number *number = &g_array_index (self->numbers, Number, i);
      int line_height, other_height, y = line_of (self, number, &line_height);
      guint next = i + 1;

      while (next < last && line_of (self, &g_array_index (self->numbers, Number, next), &other_height) == y)
        {
          if (g_array_index (self->numbers, Number, next).feature < number->feature)
            number = &g_array_index (self->numbers, Number, next);
          next++;
        }
      draw_number (self, cr, number, next > i + 1, width, y, line_height);
      i = next;
    }
}

/* ---- public ---- */

GtkWidget *
em_notes_marks_get_gutter (EmNotesMarks *self)
{
  return self->gutter;
}

EmNotesMarks *
em_notes_marks_new (GtkTextView *view)
{
  EmNotesMarks *self = g_new0 (EmNotesMarks, 1);
  GtkTextIter start;

  self->view = view;
  self->buffer = g_object_ref (gtk_text_view_get_buffer (view));
  self->shown = g_array_new (FALSE, FALSE, sizeof (Stretch));
  self->numbers = g_array_new (FALSE, FALSE, sizeof (Number));
  self->gutter = gtk_drawing_area_new ();
  gtk_drawing_area_set_content_width (GTK_DRAWING_AREA (self->gutter), GUTTER_WIDTH);
  gtk_drawing_area_set_draw_func (GTK_DRAWING_AREA (self->gutter), draw_gutter, self, NULL);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->gutter), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Numbers of the features"), -1);
  gtk_text_view_set_gutter (view, GTK_TEXT_WINDOW_LEFT, self->gutter);
  self->chosen_feature = -1;
  make_tags (self);
  gtk_text_buffer_get_start_iter (self->buffer, &start);
  self->place = gtk_text_buffer_create_mark (self->buffer, NULL, &start, TRUE);
  em_notes_marks_recolour (self);
  return self;
}

void
em_notes_marks_free (EmNotesMarks *self)
{
  em_notes_marks_forget (self);
  gtk_drawing_area_set_draw_func (GTK_DRAWING_AREA (self->gutter), NULL, NULL, NULL);
  g_array_unref (self->shown);
  g_array_unref (self->numbers);
  g_object_unref (self->buffer);
  g_free (self);
}
