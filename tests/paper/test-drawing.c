/* test-drawing: drawings are to scale, and no size or kind upsets them.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-test-paper.h"

#include "../core/em-test-main.h"
#include "em-drawing.h"

#include <math.h>

typedef struct { int left, right, top, bottom, n; } Patch;

/* Everything but the metal to add is left white, so that its pixels can be counted. */
static void
make_style (EmDrawingStyle *style, double mm_per_pixel)
{
  const EmColour none = { 1, 1, 1, 0 };

  em_drawing_style_screen (style, FALSE);
  style->ink = style->quiet = style->base = style->accent = style->paper = none;
  style->metal = (EmColour) { 1, 0, 0, 1 };
  style->has_hatch = FALSE;
  style->mm_per_unit = mm_per_pixel;
}

static cairo_surface_t *
draw (const EmFeature *feature, const EmFeatureCost *cost, EmView view, int width, int height, const EmDrawingStyle *style, gboolean *out_is_whole)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, width, height);
  cairo_t *cr = cairo_create (surface);

  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_paint (cr);
  *out_is_whole = em_drawing_draw (cr, width, height, feature, cost, view, EM_UNITS_METRIC, style, -1);
  ck_assert_int_eq (cairo_status (cr), CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  return surface;
}

static Patch
find_red (cairo_surface_t *surface)
{
  int width = cairo_image_surface_get_width (surface), height = cairo_image_surface_get_height (surface);
  const unsigned char *bytes = cairo_image_surface_get_data (surface);
  Patch patch = { width, -1, height, -1, 0 };

  for (int y = 0; y < height; y++)
    for (int x = 0; x < width; x++)
      if (bytes[y * cairo_image_surface_get_stride (surface) + 4 * x] < 128)
        {
          patch.left = MIN (patch.left, x);
          patch.right = MAX (patch.right, x);
          patch.top = MIN (patch.top, y);
          patch.bottom = MAX (patch.bottom, y);
          patch.n++;
        }
  return patch;
}

/* A ledge 0.6 mm thick and 0.45 mm high on a screen of 0.1 mm a pixel: as many pixels wide as 0.6 mm times a whole ratio over
 * 0.1 mm, as high as 0.45 mm times the same, and as many in all as their product, a pixel's edge aside. */
START_TEST (test_metal_is_to_scale)
{
  EmFeature feature;
  EmDrawingStyle style;
  gboolean is_whole;

  em_feature_init (&feature, &ledge);
  feature.value[0] = 10;
  feature.value[1] = 0.6;
  feature.value[2] = 0.45;
  make_style (&style, 0.1);
  cairo_surface_t *surface = draw (&feature, NULL, EM_VIEW_SECTION, 900, 700, &style, &is_whole);
  Patch patch = find_red (surface);
  double width = patch.right - patch.left + 1, height = patch.bottom - patch.top + 1, ratio = width * 0.1 / 0.6;

  ck_assert (!is_whole);   /* not priced: no layers */
  ck_assert_double_gt (width, 100);
  ck_assert_double_eq_tol (ratio, round (ratio), 0.02 * ratio);
  ck_assert_double_eq_tol (height, 0.45 * round (ratio) / 0.1, 1.5);
  ck_assert_double_eq_tol (patch.n, 0.6 * 0.45 * round (ratio) * round (ratio) / 0.01, width + height);
  cairo_surface_destroy (surface);
  em_feature_clear (&feature);
}
END_TEST

/* Sizes any kind takes: its first required ones from here by what they are called, presets else. */
static double
sample (const EmField *field)
{
  static const struct { const char *word; double value; } samples[] = {
    { "angle", 60 }, { "length", 12 }, { "height", 1.2 }, { "small", 6 }, { "diameter", 8 }, { "width", 3 }, { "area", 40 }, { "depth", 1 },
    { "radius", 0.8 },
  };

  if (!isnan (field->preset))
    return field->preset;
  for (gsize i = 0; i < G_N_ELEMENTS (samples); i++)
    if (strstr (field->id, samples[i].word) != NULL)
      return samples[i].value;
  return field->is_required ? 0.6 : EM_ABSENT;
}

static void
fill (EmFeature *feature, const EmKind *kind)
{
  int worn = em_kind_field (kind, "worn"), finished = em_kind_field (kind, "diameter");

  em_feature_init (feature, kind);
  for (int i = 0; i < kind->n_fields; i++)
    feature->value[i] = sample (&kind->fields[i]);
  /* Round things: worn to either side of the finished 8 mm. A corner along a straight edge has no diameter. */
  if (worn >= 0)
    feature->value[worn] = g_str_equal (kind->id, "bore") ? 8.6 : 7.4;
  else if (finished >= 0 && em_kind_field (kind, "radius_to") >= 0)
    feature->value[finished] = EM_ABSENT;
}

/* Every kind, in both views, from a thumbnail to a wall: drawn whole, and its metal is there to see. */
START_TEST (test_every_kind_at_every_size)
{
  static const int sizes[][2] = { { 20, 16 }, { 110, 70 }, { 640, 480 }, { 60, 900 }, { 1500, 40 } };

  for (int k = 0; k < em_n_kinds; k++)
    {
      EmFeature feature;
      EmFeatureCost cost;

      fill (&feature, em_kinds[k]);
      ck_assert_msg (em_feature_solve (&feature, &cost.shape, NULL) == EM_OK, "%s", em_kinds[k]->id);
      em_test_cost_feature (&feature, &cost);
      for (gsize s = 0; s < G_N_ELEMENTS (sizes); s++)
        for (int view = EM_VIEW_SECTION; view <= EM_VIEW_PLAN; view++)
          {
            EmDrawingStyle style;
            gboolean is_whole;

            make_style (&style, 0);
            cairo_surface_t *surface = draw (&feature, &cost, (EmView) view, sizes[s][0], sizes[s][1], &style, &is_whole);

            ck_assert_msg (is_whole, "%s at %d × %d", em_kinds[k]->id, sizes[s][0], sizes[s][1]);
            if (s == 2)
              ck_assert_msg (find_red (surface).n > 20, "%s, view %d: no metal", em_kinds[k]->id, view);
            cairo_surface_destroy (surface);
          }
      em_feature_clear (&feature);
    }
}
END_TEST

static int
count_red_column (cairo_surface_t *surface, int x)
{
  const unsigned char *bytes = cairo_image_surface_get_data (surface);
  int n = 0;

  for (int y = 0; y < cairo_image_surface_get_height (surface); y++)
    n += bytes[y * cairo_image_surface_get_stride (surface) + 4 * x] < 128;
  return n;
}

/* A ledge a thousand times as long as it is wide: whole, its width would be a third of a pixel. Interrupted (ISO 128-3), both ends are
 * shown and the width can be seen; what is left out of the middle leaves a gap. */
START_TEST (test_long_plans_are_interrupted)
{
  EmFeature feature;
  EmDrawingStyle style;
  gboolean is_whole;

  em_feature_init (&feature, &ledge);
  feature.value[0] = 1000;
  feature.value[1] = 1;
  feature.value[2] = 0.5;
  make_style (&style, 0);
  style.paper = (EmColour) { 1, 1, 1, 1 };
  cairo_surface_t *surface = draw (&feature, NULL, EM_VIEW_PLAN, 400, 200, &style, &is_whole);
  Patch patch = find_red (surface);
  int middle = (patch.left + patch.right) / 2, gap = 0;

  ck_assert_int_gt (patch.bottom - patch.top, 15);
  ck_assert_int_gt (patch.right - patch.left, 200);
  for (int x = patch.left; x <= patch.right; x++)
    gap += count_red_column (surface, x) == 0;
  ck_assert_int_eq (count_red_column (surface, middle), 0);
  ck_assert_int_gt (gap, 4);
  ck_assert_int_lt (gap, 60);
  cairo_surface_destroy (surface);

  feature.value[0] = 5;
  surface = draw (&feature, NULL, EM_VIEW_PLAN, 400, 200, &style, &is_whole);
  patch = find_red (surface);
  for (int x = patch.left; x <= patch.right; x++)
    ck_assert_int_gt (count_red_column (surface, x), 0);
  cairo_surface_destroy (surface);
  em_feature_clear (&feature);
}
END_TEST

/* Of a seat's section the right is the image of the left, layers and beads too: as many pixels of them either side of the middle. */
START_TEST (test_a_seats_layers_lie_on_both_sides)
{
  const EmKind *seat = em_kind_find ("seat");

  for (int form = 0; form < 2; form++)
    {
      EmFeature feature;
      EmFeatureCost cost;
      EmDrawingStyle style;
      gboolean is_whole;
      int halves[2] = { 0 };

      fill (&feature, seat);
      feature.value[em_kind_field (seat, "form")] = form;
      feature.value[em_kind_field (seat, "radius")] = 5;
      ck_assert_int_eq (em_feature_solve (&feature, &cost.shape, NULL), EM_OK);
      em_test_cost_feature (&feature, &cost);
      make_style (&style, 0);
      style.accent = style.metal;
      style.metal = style.ink;
      cairo_surface_t *surface = draw (&feature, &cost, EM_VIEW_SECTION, 900, 700, &style, &is_whole);
      Patch patch = find_red (surface);
      const unsigned char *bytes = cairo_image_surface_get_data (surface);

      for (int y = patch.top; y <= patch.bottom; y++)
        for (int x = patch.left; x <= patch.right; x++)
          halves[2 * x > patch.left + patch.right] += bytes[y * cairo_image_surface_get_stride (surface) + 4 * x] < 128;
      ck_assert_int_gt (halves[0], 300);
      ck_assert_msg (abs (halves[0] - halves[1]) <= halves[0] / 20, "form %d: %d pixels left, %d right", form, halves[0], halves[1]);
      cairo_surface_destroy (surface);
      em_feature_clear (&feature);
    }
}
END_TEST

/* Red pixels of the row, or of the column, through the middle of the patch. */
static int
count_through (cairo_surface_t *surface, Patch patch, gboolean is_row)
{
  const unsigned char *bytes = cairo_image_surface_get_data (surface);
  int x = (patch.left + patch.right) / 2, y = (patch.top + patch.bottom) / 2, stride = cairo_image_surface_get_stride (surface), n = 0;

  for (int i = is_row ? patch.left : patch.top; i <= (is_row ? patch.right : patch.bottom); i++)
    n += bytes[(is_row ? y : i) * stride + 4 * (is_row ? i : x)] < 235;
  return n;
}

/* Tracks run round a seat, so that from above as many cross the row through its middle as the column; along a box they cross
 * the column alone. */
START_TEST (test_tracks_run_round_a_seat)
{
  static const struct { const char *kind, *form; int which; gboolean is_round; } cases[] = {
    { "seat", "form", 0, TRUE }, { "seat", "form", 1, TRUE }, { "recess", "form", 0, FALSE },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      const EmKind *kind = em_kind_find (cases[i].kind);
      EmFeature feature;
      EmFeatureCost cost;
      EmDrawingStyle style;
      gboolean is_whole;

      fill (&feature, kind);
      feature.value[em_kind_field (kind, "form")] = cases[i].which;
      if (em_kind_field (kind, "radius") >= 0)
        {
          feature.value[em_kind_field (kind, "radius")] = 12;
          feature.value[em_kind_field (kind, "diameter")] = 20;
          feature.value[em_kind_field (kind, "depth")] = 6;
        }
      ck_assert_int_eq (em_feature_solve (&feature, &cost.shape, NULL), EM_OK);
      em_test_cost_feature (&feature, &cost);
      make_style (&style, 0);
      style.accent = style.metal;
      style.metal = style.ink;
      cairo_surface_t *surface = draw (&feature, &cost, EM_VIEW_PLAN, 900, 700, &style, &is_whole);
      Patch patch = find_red (surface);
      int across = count_through (surface, patch, TRUE), down = count_through (surface, patch, FALSE);

      ck_assert_int_gt (down, 5);
      if (cases[i].is_round)
        ck_assert_msg (4 * abs (across - down) <= MAX (across, down), "%s, form %d: %d across, %d down", cases[i].kind, cases[i].which, across, down);
      else
        ck_assert_msg (across < down / 2 || across > down * 2, "%s: %d across, %d down", cases[i].kind, across, down);
      cairo_surface_destroy (surface);
      em_feature_clear (&feature);
    }
}
END_TEST

START_TEST (test_no_room_no_drawing)
{
  EmFeature feature;
  EmDrawingStyle style;
  gboolean is_whole;

  em_feature_init (&feature, &ledge);
  make_style (&style, 0);
  for (int i = 0; i < 3; i++)
    feature.value[i] = 1;
  cairo_surface_destroy (draw (&feature, NULL, EM_VIEW_PLAN, 4, 4, &style, &is_whole));
  ck_assert (!is_whole);
  em_feature_clear (&feature);
}
END_TEST

EM_TEST_MAIN ("drawing", test_metal_is_to_scale, test_every_kind_at_every_size, test_long_plans_are_interrupted,
              test_a_seats_layers_lie_on_both_sides, test_tracks_run_round_a_seat, test_no_room_no_drawing)
