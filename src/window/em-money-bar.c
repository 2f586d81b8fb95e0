/* em-money-bar: where the money goes, as one bar to scale.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-money-bar.h"

#include "em-look.h"

#include <math.h>

struct _EmMoneyBar
{
  GtkWidget parent_instance;

  int64_t money_minor[EM_N_MONEY];
  int64_t whole_minor;   /* fills the width; 0: what the amounts come to */
  int     only;          /* the one kind a swatch shows; −1: the bar */
  bool    is_low;
};

G_DEFINE_FINAL_TYPE (EmMoneyBar, em_money_bar, GTK_TYPE_WIDGET)

enum { BAR_HEIGHT = 20, LOW_HEIGHT = 7, SWATCH = 12, HATCH_STEP = 5 };

static void
fill (GtkWidget *widget, cairo_t *cr, EmMoney money, double x, double width, double height)
{
  GdkRGBA colour, paper;
  double hatch;

  em_look_money (widget, money, &colour, &hatch);
  em_look_colour (widget, "em_paper", &paper);
  cairo_save (cr);
  cairo_rectangle (cr, x, 0, width, height);
  cairo_clip (cr);
  gdk_cairo_set_source_rgba (cr, &colour);
  cairo_paint (cr);
  if (hatch >= 0)
    {
      paper.alpha = 0.55f;
      gdk_cairo_set_source_rgba (cr, &paper);
      cairo_set_line_width (cr, 1.3);
      for (double at = x - height; at < x + width + height; at += HATCH_STEP)
        {
          double lean = hatch < 90 ? height : -height;
          cairo_move_to (cr, at, height);
          cairo_line_to (cr, at + lean, 0);
        }
      cairo_stroke (cr);
    }
  cairo_restore (cr);
}

static void
draw_bar (EmMoneyBar *self, cairo_t *cr, double width, double height)
{
  double whole = (double) self->whole_minor, at = 0;
  GdkRGBA paper;

  for (int i = 0; i < EM_N_MONEY && self->whole_minor == 0; i++)
    whole += (double) MAX (self->money_minor[i], 0);
  if (!(whole > 0))
    return;
  em_look_colour (GTK_WIDGET (self), "em_ground", &paper);
  for (int i = 0; i < EM_N_MONEY; i++)
    {
      double part = (double) MAX (self->money_minor[i], 0) / whole * width;
      if (part <= 0)
        continue;
      fill (GTK_WIDGET (self), cr, (EmMoney) i, at, part, height);
      at += part;
      gdk_cairo_set_source_rgba (cr, &paper);
      cairo_rectangle (cr, at - 0.5, 0, 1, height);
      cairo_fill (cr);
    }
}

static void
em_money_bar_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  EmMoneyBar *self = EM_MONEY_BAR (widget);
  int width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);
  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, (float) width, (float) height));

  if (self->only >= 0)
    fill (widget, cr, (EmMoney) self->only, 0, width, height);
  else
    draw_bar (self, cr, width, height);
  cairo_destroy (cr);
}

static void
em_money_bar_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum, int *natural,
                      int *minimum_baseline, int *natural_baseline)
{
  EmMoneyBar *self = EM_MONEY_BAR (widget);

  (void) for_size;
  *minimum = self->only >= 0 ? SWATCH : orientation == GTK_ORIENTATION_HORIZONTAL ? 100 : self->is_low ? LOW_HEIGHT : BAR_HEIGHT;
  *natural = *minimum;
  *minimum_baseline = *natural_baseline = -1;
}

static void
em_money_bar_class_init (EmMoneyBarClass *class)
{
  GTK_WIDGET_CLASS (class)->snapshot = em_money_bar_snapshot;
  GTK_WIDGET_CLASS (class)->measure = em_money_bar_measure;
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (class), GTK_ACCESSIBLE_ROLE_IMG);
}

static void
em_money_bar_init (EmMoneyBar *self)
{
  self->only = -1;
}

GtkWidget *
em_money_bar_new (void)
{
  return g_object_new (EM_TYPE_MONEY_BAR, NULL);
}

GtkWidget *
em_money_swatch_new (EmMoney money)
{
  EmMoneyBar *self = g_object_new (EM_TYPE_MONEY_BAR, "valign", GTK_ALIGN_CENTER, "halign", GTK_ALIGN_CENTER, NULL);

  self->only = (int) money;
  gtk_accessible_update_state (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_STATE_HIDDEN, TRUE, -1);
  return GTK_WIDGET (self);
}

GtkWidget *
em_money_bar_new_low (void)
{
  EmMoneyBar *self = g_object_new (EM_TYPE_MONEY_BAR, "valign", GTK_ALIGN_CENTER, NULL);

  self->is_low = true;
  gtk_accessible_update_state (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_STATE_HIDDEN, TRUE, -1);
  return GTK_WIDGET (self);
}

void
em_money_bar_show_of (EmMoneyBar *self, const int64_t *money_minor, int64_t whole_minor)
{
  self->whole_minor = whole_minor;
  em_money_bar_show (self, money_minor);
}

void
em_money_bar_show (EmMoneyBar *self, const int64_t *money_minor)
{
  for (int i = 0; i < EM_N_MONEY; i++)
    self->money_minor[i] = money_minor[i];
  gtk_widget_queue_draw (GTK_WIDGET (self));
}
