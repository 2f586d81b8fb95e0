/* em-shop-page: who the shop is, what it prints, in which currency and units.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-book-pages.h"

#include "em-field.h"

#include <glib/gi18n.h>

typedef struct
{
  EmShopText  which;
  const char *name;       /* to be translated, with mnemonic */
  gboolean    is_lines;
} EmShopRow;

static const EmShopRow rows[] =
{
  { EM_SHOP_NAME, N_("_Name"), FALSE },
  { EM_SHOP_ADDRESS, N_("_Address"), TRUE },
  { EM_SHOP_PHONE, N_("_Phone"), FALSE },
  { EM_SHOP_EMAIL, N_("_E-mail"), FALSE },
  { EM_SHOP_WEB, N_("_Web site"), FALSE },
  { EM_SHOP_REGISTRATION, N_("Re_gistration and tax numbers"), FALSE },
  { EM_SHOP_BANK, N_("_Bank"), FALSE },
  { EM_SHOP_LOGO, N_("_Logo, a PNG or SVG file beside the rate book"), FALSE },
  { EM_SHOP_TERMS, N_("_Terms printed on every quote"), TRUE },
  { EM_SHOP_NUMBER_PATTERN, N_("Pattern of _quote numbers: # a figure, %Y the year, such as Q-%Y-###"), FALSE },
  { EM_RATES_EDITION, N_("E_dition of this rate book"), FALSE },
};

static const char *const papers[] = { "a4", "letter" };

typedef struct
{
  EmDraft   *draft;      /* owned */
  GtkWidget *text[G_N_ELEMENTS (rows)];   /* entry or text view */
  GtkWidget *paper, *units, *currency, *currency_problem;
} EmShop;

static void
free_shop (gpointer data)
{
  EmShop *shop = data;

  g_signal_handlers_disconnect_by_data (shop->draft, shop);
  g_object_unref (shop->draft);
  g_free (shop);
}

static void
put_text (EmShop *shop, EmShopText which, const char *text)
{
  EmRates *rates = em_draft_get_rates (shop->draft);

  if (em_text_equal (rates->text[which], text[0] != '\0' ? text : NULL))
    return;
  em_rates_set_text (rates, which, text[0] != '\0' ? text : NULL);
  em_page_touch (shop->draft, EM_DRAFT_RATES, "shop", NULL, em_shop_text_ids[which]);
}

static int
row_of (EmShop *shop, gpointer widget)
{
  int i = 0;

  while (shop->text[i] != widget)
    i++;
  return i;
}

static void
on_text (GtkEditable *entry, EmShop *shop)
{
  put_text (shop, rows[row_of (shop, entry)].which, gtk_editable_get_text (entry));
}

static void
on_lines (GtkTextBuffer *buffer, EmShop *shop)
{
  GtkTextIter start, end;

  gtk_text_buffer_get_bounds (buffer, &start, &end);
  g_autofree char *text = gtk_text_buffer_get_text (buffer, &start, &end, TRUE);
  put_text (shop, rows[row_of (shop, g_object_get_data (G_OBJECT (buffer), "view"))].which, text);
}

static void
on_paper (GtkDropDown *drop_down, GParamSpec *spec, EmShop *shop)
{
  (void) spec;
  put_text (shop, EM_SHOP_PAPER, papers[MIN (gtk_drop_down_get_selected (drop_down), 1)]);
  em_draft_break (shop->draft);
}

static void
on_units (GtkDropDown *drop_down, GParamSpec *spec, EmShop *shop)
{
  (void) spec;
  em_draft_get_rates (shop->draft)->units = gtk_drop_down_get_selected (drop_down) == 1 ? EM_UNITS_INCH : EM_UNITS_METRIC;
  em_page_touch (shop->draft, EM_DRAFT_RATES, "shop", NULL, "units");
  em_draft_break (shop->draft);
}

static void
on_currency (GtkEditable *entry, EmShop *shop)
{
  g_autofree char *code = g_ascii_strup (gtk_editable_get_text (entry), -1);
  EmCurrency currency;
  gboolean is_known = em_currency_find (code, &currency);

  gtk_widget_set_visible (shop->currency_problem, !is_known);
  em_draft_set_problem (shop->draft, "currency", is_known ? NULL : gtk_label_get_text (GTK_LABEL (shop->currency_problem)));
  if (!is_known || g_str_equal (currency.code, em_draft_get_rates (shop->draft)->currency.code))
    return;
  em_draft_get_rates (shop->draft)->currency = currency;
  em_page_touch (shop->draft, EM_DRAFT_RATES, "shop", NULL, "currency");
}

static void
on_draft_changed (EmShop *shop)
{
  const EmRates *rates = em_draft_get_rates (shop->draft);

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    if (rows[i].is_lines)
      em_field_put_lines (shop->text[i], rates->text[rows[i].which], shop);
    else
      em_field_put_text (shop->text[i], rates->text[rows[i].which], shop);
  em_field_put_choice (shop->paper, g_strcmp0 (rates->text[EM_SHOP_PAPER], "letter") == 0, shop);
  em_field_put_choice (shop->units, rates->units == EM_UNITS_INCH, shop);
  if (!em_draft_has_problem (shop->draft, "currency"))
    gtk_widget_set_visible (shop->currency_problem, FALSE);
  if (!gtk_widget_get_visible (shop->currency_problem))
    {
      g_autofree char *typed = g_ascii_strup (gtk_editable_get_text (GTK_EDITABLE (shop->currency)), -1);
      if (!g_str_equal (typed, rates->currency.code))
        em_field_put_text (shop->currency, rates->currency.code, shop);
    }
}

static void
add_texts (EmShop *shop, GtkWidget *box)
{
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    if (rows[i].is_lines)
      {
        GtkWidget *field = em_field_lines (_(rows[i].name), &shop->text[i]);
        GtkTextBuffer *buffer = gtk_text_view_get_buffer (GTK_TEXT_VIEW (shop->text[i]));
        g_object_set_data (G_OBJECT (buffer), "view", shop->text[i]);
        g_signal_connect (buffer, "changed", G_CALLBACK (on_lines), shop);
        gtk_box_append (GTK_BOX (box), field);
      }
    else
      {
        gtk_box_append (GTK_BOX (box), em_field_text (_(rows[i].name), &shop->text[i]));
        g_signal_connect (shop->text[i], "changed", G_CALLBACK (on_text), shop);
      }
}

GtkWidget *
em_shop_page_new (EmDraft *draft)
{
  const char *paper_names[] = { _("A4"), _("US letter"), NULL };
  const char *unit_names[] = { _("Millimeters"), _("Inches"), NULL };
  EmShop *shop = g_new0 (EmShop, 1);
  GtkWidget *box, *page = em_page_new (&box), *flow = em_fields_new ();

  shop->draft = g_object_ref (draft);
  em_fields_add (flow, em_field_text (_("_Currency, by its three letters"), &shop->currency));
  em_fields_add (flow, em_field_choice (_("_Units of new quotes"), unit_names, &shop->units));
  em_fields_add (flow, em_field_choice (_("Pape_r"), paper_names, &shop->paper));
  gtk_entry_set_max_length (GTK_ENTRY (shop->currency), 3);
  shop->currency_problem = em_page_remark (_("No ISO 4217 currency. Write EUR, USD, CHF, JPY …"));
  gtk_widget_add_css_class (shop->currency_problem, "problem");
  gtk_widget_set_visible (shop->currency_problem, FALSE);
  gtk_box_append (GTK_BOX (box), flow);
  gtk_box_append (GTK_BOX (box), shop->currency_problem);
  gtk_box_append (GTK_BOX (box), em_page_remark (_("Another currency does not convert amounts: they keep their figures.")));
  add_texts (shop, box);
  em_page_set_field (shop->currency, "currency");
  em_page_set_field (shop->units, "units");
  em_page_set_field (shop->paper, em_shop_text_ids[EM_SHOP_PAPER]);
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    em_page_set_field (shop->text[i], em_shop_text_ids[rows[i].which]);
  on_draft_changed (shop);
  g_signal_connect (shop->currency, "changed", G_CALLBACK (on_currency), shop);
  g_signal_connect (shop->units, "notify::selected", G_CALLBACK (on_units), shop);
  g_signal_connect (shop->paper, "notify::selected", G_CALLBACK (on_paper), shop);
  g_signal_connect_swapped (draft, "changed", G_CALLBACK (on_draft_changed), shop);
  g_object_set_data_full (G_OBJECT (page), "shop", shop, free_shop);
  return page;
}
