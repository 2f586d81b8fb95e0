/* em-edge-scroll: a list that moves on while something is dragged near its upper or lower edge.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-edge-scroll.h"

/* How far from an edge it begins, at most this share of the height; and how fast it is at the edge itself. */
#define EDGE_PX 40.0
#define EDGE_SHARE 0.25
#define PX_PER_S 900.0

typedef struct
{
  GtkScrollable *scrollable;   /* it owns this */
  double         share;        /* of the full speed, downwards */
  gint64         last_us;      /* of the frame clock; 0: no frame yet */
  guint          tick;         /* 0: it stands */
} EmEdgeScroll;

static gboolean
on_tick (GtkWidget *widget, GdkFrameClock *clock, gpointer data)
{
  EmEdgeScroll *edge = data;
  GtkAdjustment *adjustment = gtk_scrollable_get_vadjustment (edge->scrollable);
  gint64 now_us = gdk_frame_clock_get_frame_time (clock);

  (void) widget;
  if (edge->last_us != 0 && adjustment != NULL)
    gtk_adjustment_set_value (adjustment, gtk_adjustment_get_value (adjustment)
                                            + edge->share * PX_PER_S * (double) (now_us - edge->last_us) / G_USEC_PER_SEC);
  edge->last_us = now_us;
  return G_SOURCE_CONTINUE;
}

static void
set_share (EmEdgeScroll *edge, double share)
{
  edge->share = share;
  if (share == 0 && edge->tick != 0)
    {
      gtk_widget_remove_tick_callback (GTK_WIDGET (edge->scrollable), edge->tick);
      edge->tick = 0;
    }
  else if (share != 0 && edge->tick == 0)
    {
      edge->last_us = 0;
      edge->tick = gtk_widget_add_tick_callback (GTK_WIDGET (edge->scrollable), on_tick, edge, NULL);
    }
}

/* 0 where the zone of an edge begins, 1 at the edge and past it. */
static double
nearness (double distance, double zone)
{
  return CLAMP (1 - distance / zone, 0, 1);
}

static void
on_motion (EmEdgeScroll *edge, double x, double y)
{
  double height = gtk_widget_get_height (GTK_WIDGET (edge->scrollable)), zone = MIN (EDGE_PX, EDGE_SHARE * height);

  (void) x;
  set_share (edge, zone > 0 ? nearness (height - y, zone) - nearness (y, zone) : 0);
}

static void
on_enter (EmEdgeScroll *edge, double x, double y)
{
  on_motion (edge, x, y);
}

static void
on_leave (EmEdgeScroll *edge)
{
  set_share (edge, 0);
}

void
em_edge_scroll_add (GtkScrollable *scrollable)
{
  EmEdgeScroll *edge = g_new0 (EmEdgeScroll, 1);
  GtkEventController *motion = gtk_drop_controller_motion_new ();

  edge->scrollable = scrollable;
  g_signal_connect_swapped (motion, "enter", G_CALLBACK (on_enter), edge);
  g_signal_connect_swapped (motion, "motion", G_CALLBACK (on_motion), edge);
  g_signal_connect_swapped (motion, "leave", G_CALLBACK (on_leave), edge);
  gtk_widget_add_controller (GTK_WIDGET (scrollable), motion);
  g_object_set_data_full (G_OBJECT (scrollable), "edge-scroll", edge, g_free);
}
