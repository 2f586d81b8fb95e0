/* em-wire-sizes: the sizes and prices of a wire, to be edited, added, sorted and taken away.
 *
 * Works on whatever wire its owner shows; each change makes that wire the shop's own.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-wire-sizes.h"

#include "em-book-pages.h"
#include "em-field.h"
#include "em-rate-entry.h"
#include "em-words.h"

#include <glib/gi18n.h>
#include <stdlib.h>

static const EmRateField size_figures[] =
{
  { "diameter", EM_N ("Diameter"), "metal", "mm", EM_RATE_REAL, offsetof (EmWireSize, wire_mm), 0.01, 10, 0 },
  { "price", EM_N ("Price"), "metal", "", EM_RATE_MINOR, offsetof (EmWireSize, price_minor), 0, 1e12, 0 },
  { "stocked", EM_N ("in stock"), "metal", "", EM_RATE_BOOL, offsetof (EmWireSize, is_stocked), 0, 1, 0 },
};

struct _EmWireSizes
{
  EmDraft        *draft;     /* owned */
  EmWireSizesHold hold;
  gpointer        owner;
  GtkWidget      *grid, *add_size, *demo_remark;   /* borrowed from the page */
  int32_t         n_sizes;   /* rows as built; −1: to be built anew */
};

typedef struct
{
  EmWireSizes *self;
  int          row;
} EmSizePlace;

static EmFiller *
wire_of (EmWireSizes *self)
{
  return self->hold (self->owner);
}

static void
touch (EmWireSizes *self, const char *field)
{
  EmFiller *wire = wire_of (self);

  wire->is_own = true;
  em_page_touch (self->draft, EM_DRAFT_CATALOGUE, "wires", wire->id, field);
}

/* Of what is not typed. */
static void
touch_once (EmWireSizes *self, const char *field)
{
  touch (self, field);
  em_draft_break (self->draft);
}

static void *
hold_size (gpointer owner)
{
  EmSizePlace *place = owner;
  EmFiller *wire = wire_of (place->self);

  return wire != NULL && place->row < wire->n_sizes ? &wire->size[place->row] : NULL;
}

static void
on_size_edited (EmRateEntry *entry, EmWireSizes *self)
{
  g_autofree char *field = em_rate_entry_dup_where (entry);

  wire_of (self)->has_demo_price = false;
  touch (self, field);
}

static int
by_diameter (const void *a, const void *b)
{
  double first = ((const EmWireSize *) a)->wire_mm, second = ((const EmWireSize *) b)->wire_mm;

  return first < second ? -1 : first > second;
}

static void
on_sort_sizes (EmWireSizes *self)
{
  EmFiller *wire = wire_of (self);

  qsort (wire->size, (size_t) wire->n_sizes, sizeof wire->size[0], by_diameter);
  touch_once (self, NULL);
}

static void
on_add_size (EmWireSizes *self)
{
  EmFiller *wire = wire_of (self);
  EmWireSize size = { 0.5, 0, EM_PER_METRE, true };

  if (wire->n_sizes >= EM_SIZE_MAX)
    return;
  if (wire->n_sizes > 0)
    {
      size = wire->size[wire->n_sizes - 1];
      size.wire_mm += 0.1;
    }
  wire->size[wire->n_sizes++] = size;
  touch_once (self, NULL);
}

static void
on_remove_size (GtkButton *button, EmWireSizes *self)
{
  EmFiller *wire = wire_of (self);
  int row = GPOINTER_TO_INT (g_object_get_data (G_OBJECT (button), "row"));

  for (int i = row; i + 1 < wire->n_sizes; i++)
    wire->size[i] = wire->size[i + 1];
  wire->n_sizes--;
  touch_once (self, NULL);
}

static char *
basis_field (int row)
{
  return g_strdup_printf ("%d/basis", row);
}

static void
on_price_basis (GtkDropDown *drop_down, GParamSpec *spec, EmWireSizes *self)
{
  int row = GPOINTER_TO_INT (g_object_get_data (G_OBJECT (drop_down), "row"));
  g_autofree char *field = basis_field (row);

  (void) spec;
  wire_of (self)->size[row].basis = (EmPriceBasis) gtk_drop_down_get_selected (drop_down);
  touch_once (self, field);
}

static void
empty_grid (GtkWidget *grid)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (grid)) != NULL)
    gtk_grid_remove (GTK_GRID (grid), child);
}

static void
add_size_row (EmWireSizes *self, int row)
{
  const char *bases[] = { _("per meter"), _("per gram"), _("per stick"), NULL };
  EmSizePlace *place = g_new0 (EmSizePlace, 1);
  GtkWidget *remove = gtk_button_new_from_icon_name ("list-remove-symbolic"), *basis = gtk_drop_down_new_from_strings (bases);
  g_autofree char *row_name = g_strdup_printf (_("size %d"), row + 1), *remove_name = g_strdup_printf (_("Remove size %d"), row + 1);
  g_autofree char *field = basis_field (row);
  g_autofree char *basis_name = g_strdup_printf (_("Price per what, size %d"), row + 1);

  place->self = self;
  place->row = row;
  for (int i = 0; i < (int) G_N_ELEMENTS (size_figures); i++)
    {
      GtkWidget *entry = em_rate_entry_new (&size_figures[i], self->draft, hold_size, place, TRUE);
      em_rate_entry_set_place (EM_RATE_ENTRY (entry), row_name);
      g_signal_connect (entry, "edited", G_CALLBACK (on_size_edited), self);
      gtk_grid_attach (GTK_GRID (self->grid), entry, i < 2 ? i : i + 1, row + 1, 1, 1);
    }
  gtk_widget_set_valign (basis, GTK_ALIGN_START);
  em_page_set_field (basis, field);
  g_object_set_data (G_OBJECT (basis), "row", GINT_TO_POINTER (row));
  gtk_drop_down_set_selected (GTK_DROP_DOWN (basis), wire_of (self)->size[row].basis);
  g_signal_connect (basis, "notify::selected", G_CALLBACK (on_price_basis), self);
  gtk_accessible_update_property (GTK_ACCESSIBLE (basis), GTK_ACCESSIBLE_PROPERTY_LABEL, basis_name, -1);
  gtk_grid_attach (GTK_GRID (self->grid), basis, 2, row + 1, 1, 1);
  gtk_widget_add_css_class (remove, "flat");
  gtk_widget_add_css_class (remove, "row-remove");
  gtk_widget_set_valign (remove, GTK_ALIGN_START);
  gtk_widget_set_tooltip_text (remove, _("Remove"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (remove), GTK_ACCESSIBLE_PROPERTY_LABEL, remove_name, -1);
  g_object_set_data (G_OBJECT (remove), "row", GINT_TO_POINTER (row));
  g_object_set_data_full (G_OBJECT (remove), "place", place, g_free);
  g_signal_connect (remove, "clicked", G_CALLBACK (on_remove_size), self);
  gtk_grid_attach (GTK_GRID (self->grid), remove, 4, row + 1, 1, 1);
}

static void
add_size_head (EmWireSizes *self)
{
  const char *names[] = { em_words (size_figures[0].name), em_words (size_figures[1].name) };

  for (int i = 0; i < 2; i++)
    {
      GtkWidget *label = gtk_label_new (names[i]);
      gtk_label_set_xalign (GTK_LABEL (label), 0);
      gtk_widget_add_css_class (label, "field-name");
      gtk_grid_attach (GTK_GRID (self->grid), label, i, 0, 1, 1);
    }
}

EmWireSizes *
em_wire_sizes_new (EmDraft *draft, EmWireSizesHold hold, gpointer owner)
{
  EmWireSizes *self = g_new0 (EmWireSizes, 1);

  self->draft = g_object_ref (draft);
  self->hold = hold;
  self->owner = owner;
  self->n_sizes = -1;
  return self;
}

void
em_wire_sizes_free (EmWireSizes *self)
{
  g_object_unref (self->draft);
  g_free (self);
}

void
em_wire_sizes_add_to (EmWireSizes *self, GtkWidget *box)
{
  GtkWidget *buttons = em_fields_new (), *sort = gtk_button_new_with_mnemonic (_("_Sort by diameter"));
  GtkWidget *scrolled = gtk_scrolled_window_new ();

  self->grid = gtk_grid_new ();
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scrolled), GTK_POLICY_AUTOMATIC, GTK_POLICY_NEVER);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), self->grid);
  gtk_grid_set_column_spacing (GTK_GRID (self->grid), 10);
  gtk_grid_set_row_spacing (GTK_GRID (self->grid), 6);
  self->add_size = gtk_button_new_with_mnemonic (_("Add a si_ze"));
  gtk_widget_set_halign (self->add_size, GTK_ALIGN_START);
  gtk_widget_set_halign (sort, GTK_ALIGN_START);
  em_fields_add (buttons, self->add_size);
  em_fields_add (buttons, sort);
  self->demo_remark = em_page_remark (_("The prices are invented; give your own."));
  gtk_box_append (GTK_BOX (box), em_page_heading (_("Sizes and prices")));
  gtk_box_append (GTK_BOX (box), self->demo_remark);
  gtk_box_append (GTK_BOX (box), scrolled);
  gtk_box_append (GTK_BOX (box), buttons);
  g_signal_connect_swapped (self->add_size, "clicked", G_CALLBACK (on_add_size), self);
  g_signal_connect_swapped (sort, "clicked", G_CALLBACK (on_sort_sizes), self);
}

void
em_wire_sizes_forget (EmWireSizes *self)
{
  self->n_sizes = -1;
}

void
em_wire_sizes_show (EmWireSizes *self)
{
  EmFiller *wire = wire_of (self);

  if (self->n_sizes != wire->n_sizes)
    {
      empty_grid (self->grid);
      add_size_head (self);
      for (int row = 0; row < wire->n_sizes; row++)
        add_size_row (self, row);
      self->n_sizes = wire->n_sizes;
    }
  for (GtkWidget *child = gtk_widget_get_first_child (self->grid); child != NULL; child = gtk_widget_get_next_sibling (child))
    if (EM_IS_RATE_ENTRY (child))
      em_rate_entry_show (EM_RATE_ENTRY (child));
    else if (GTK_IS_DROP_DOWN (child))
      em_field_put_choice (child, wire->size[GPOINTER_TO_INT (g_object_get_data (G_OBJECT (child), "row"))].basis, self);
  gtk_widget_set_sensitive (self->add_size, wire->n_sizes < EM_SIZE_MAX);
  gtk_widget_set_visible (self->demo_remark, wire->has_demo_price);
}
