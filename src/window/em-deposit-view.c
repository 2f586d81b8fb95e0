/* em-deposit-view: what base and wire make together.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-deposit-view.h"

#include "em-constitution-picture.h"
#include "em-words.h"

#include <glib/gi18n.h>
#include <math.h>

enum { FACT_MAX = 8 };

struct _EmDepositView
{
  GtkWidget parent_instance;

  GtkWidget *box, *title, *facts, *switcher, *schaeffler, *wrc, *picture, *picture_text;
  GtkWidget *fact_name[FACT_MAX], *fact_value[FACT_MAX];
  int        n_facts;
  EmConstitution spot[2][EM_N_SPOT];   /* Schaeffler, WRC-1992 */
};

G_DEFINE_FINAL_TYPE (EmDepositView, em_deposit_view, GTK_TYPE_WIDGET)

static const EmConstitution nowhere = { EM_ABSENT, EM_ABSENT, EM_PHASE_UNKNOWN, EM_ABSENT, EM_ABSENT, false, NULL };

static GtkWidget *
text_new (const char *css_class, float xalign)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), xalign);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_widget_add_css_class (label, css_class);
  return label;
}

static void
add_fact (EmDepositView *self, const char *name, const char *value)
{
  int at = self->n_facts++;

  if (self->fact_name[at] == NULL)
    {
      self->fact_name[at] = text_new ("remark", 0);
      self->fact_value[at] = text_new ("money", 1);
      gtk_widget_set_valign (self->fact_name[at], GTK_ALIGN_START);
      gtk_widget_set_hexpand (self->fact_name[at], TRUE);
      gtk_label_set_width_chars (GTK_LABEL (self->fact_name[at]), 10);
      gtk_label_set_justify (GTK_LABEL (self->fact_value[at]), GTK_JUSTIFY_RIGHT);
      gtk_grid_attach (GTK_GRID (self->facts), self->fact_name[at], 0, at, 1, 1);
      gtk_grid_attach (GTK_GRID (self->facts), self->fact_value[at], 1, at, 1, 1);
    }
  gtk_label_set_text (GTK_LABEL (self->fact_name[at]), name);
  gtk_label_set_text (GTK_LABEL (self->fact_value[at]), value);
}

static void
add_estimate (EmDepositView *self, const char *name, const EmEstimate *estimate, const char *unit, int decimals)
{
  g_autofree char *value = em_words_estimate (estimate, unit, decimals);

  if (estimate->validity != EM_VALID_NOT_APPLICABLE)
    add_fact (self, name, value);
}

static void
add_hardness (EmDepositView *self, const EmPairing *pairing)
{
  g_autofree char *deposit = em_words_hardness (pairing), *tool = em_words_base_hardness (pairing);

  if (deposit != NULL)
    add_fact (self, pairing->is_hardness_from_catalogue ? _("Hardness of the deposit, catalog") : _("Hardness of the deposit, estimate"), deposit);
  if (tool != NULL)
    add_fact (self, _("Hardness of the tool"), tool);
}

static void
add_preheat (EmDepositView *self, const EmPairing *pairing)
{
  g_autofree char *degrees = em_words_number (pairing->preheat_degc, 0), *ceiling = em_words_number (pairing->preheat_ceiling_degc, 0);
  g_autofree char *text = NULL;

  if (!pairing->is_preheat_advised || isnan (pairing->preheat_degc))
    text = g_strdup (pairing->is_preheat_advised ? _("advised") : _("none advised"));
  else if (isnan (pairing->preheat_ceiling_degc))
    text = g_strdup_printf (_("about %s °C"), degrees);
  else
    text = g_strdup_printf (_("about %s °C, below %s °C"), degrees, ceiling);
  add_fact (self, _("Preheat"), text);
}

static void
show_facts (EmDepositView *self, const EmPairing *pairing)
{
  self->n_facts = 0;
  add_hardness (self, pairing);
  add_preheat (self, pairing);
  add_estimate (self, _("Carbon equivalent (IIW)"), &pairing->ce_iiw, "%", 2);
  add_estimate (self, _("Martensite starts at"), &pairing->ms_degc, "°C", 0);
  add_estimate (self, _("As quenched, from its carbon"), &pairing->martensite_hrc, "HRC", 0);
  for (int i = 0; i < FACT_MAX; i++)
    if (self->fact_name[i] != NULL)
      {
        gtk_widget_set_visible (self->fact_name[i], i < self->n_facts);
        gtk_widget_set_visible (self->fact_value[i], i < self->n_facts);
      }
}

static const EmDiagram *
shown_diagram (EmDepositView *self)
{
  return gtk_toggle_button_get_active (GTK_TOGGLE_BUTTON (self->wrc)) ? &em_diagram_wrc1992 : &em_diagram_schaeffler;
}

/* Where the deposit lies, then what the picture can't vouch for. */
static char *
picture_sentence (const EmDiagram *diagram, const EmConstitution *deposit)
{
  gboolean is_wrc = diagram == &em_diagram_wrc1992;
  g_autofree char *cr_eq = em_words_number (deposit->cr_eq, 1), *ni_eq = em_words_number (deposit->ni_eq, 1);
  g_autofree char *field = em_words_constitution (deposit, is_wrc);
  g_autoptr (GString) text = g_string_new (NULL);

  /* Translators: the last is what the diagram says of the deposit, such as "Austenite and ferrite, about 9 % ferrite". */
  g_string_append_printf (text, _("Deposit: Cr equivalent %s, Ni equivalent %s: %s. "), cr_eq, ni_eq, field);
  if (!deposit->is_inside)
    g_string_append_printf (text, "%s ", _("So it is drawn hollow, with no field told."));
  g_string_append (text, is_wrc ? _("Lines as published, for arc welds; read them to half an equivalent.")
                                : _("Boundaries are approximate, up to 0.7 equivalents either way."));
  g_string_append_printf (text, " (%s)", diagram->source);
  return g_string_free (g_steal_pointer (&text), FALSE);
}

static void
show_picture (EmDepositView *self)
{
  const EmDiagram *diagram = shown_diagram (self);
  const EmConstitution *spots = self->spot[diagram == &em_diagram_wrc1992];
  gboolean is_shown = !isnan (spots[EM_SPOT_DEPOSIT].cr_eq);

  gtk_widget_set_visible (self->picture, is_shown);
  gtk_widget_set_visible (self->switcher, is_shown);
  gtk_widget_set_visible (self->picture_text, is_shown);
  if (!is_shown)
    return;
  g_autofree char *sentence = picture_sentence (diagram, &spots[EM_SPOT_DEPOSIT]);
  gtk_label_set_text (GTK_LABEL (self->picture_text), sentence);
  em_constitution_picture_show (EM_CONSTITUTION_PICTURE (self->picture), diagram, spots, sentence);
}

static void
put_spots (EmDepositView *self, const EmBase *base, const EmFiller *filler, const EmPairing *pairing)
{
  EmChemistry chemistry;

  for (int i = 0; i < EM_N_SPOT; i++)
    self->spot[0][i] = self->spot[1][i] = nowhere;
  self->spot[0][EM_SPOT_DEPOSIT] = pairing->schaeffler;
  self->spot[1][EM_SPOT_DEPOSIT] = pairing->wrc;
  if (isnan (pairing->schaeffler.cr_eq) || base == NULL)
    return;
  em_composition_middle (&base->composition, chemistry);
  self->spot[0][EM_SPOT_BASE] = em_steel_schaeffler (chemistry);
  self->spot[1][EM_SPOT_BASE] = em_steel_wrc1992 (chemistry);
  em_composition_middle (&filler->composition, chemistry);
  self->spot[0][EM_SPOT_WIRE] = em_steel_schaeffler (chemistry);
  self->spot[1][EM_SPOT_WIRE] = em_steel_wrc1992 (chemistry);
}

static void
em_deposit_view_dispose (GObject *object)
{
  g_clear_pointer (&EM_DEPOSIT_VIEW (object)->box, gtk_widget_unparent);
  G_OBJECT_CLASS (em_deposit_view_parent_class)->dispose (object);
}

static void
em_deposit_view_class_init (EmDepositViewClass *class)
{
  G_OBJECT_CLASS (class)->dispose = em_deposit_view_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (class), GTK_TYPE_BIN_LAYOUT);
}

static void
em_deposit_view_init (EmDepositView *self)
{
  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  self->title = text_new ("strong", 0);
  self->facts = gtk_grid_new ();
  gtk_grid_set_column_spacing (GTK_GRID (self->facts), 10);
  gtk_grid_set_row_spacing (GTK_GRID (self->facts), 2);
  self->switcher = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);
  gtk_widget_add_css_class (self->switcher, "linked");
  self->schaeffler = gtk_toggle_button_new_with_label ("Schaeffler");
  self->wrc = gtk_toggle_button_new_with_label ("WRC-1992");
  gtk_toggle_button_set_group (GTK_TOGGLE_BUTTON (self->wrc), GTK_TOGGLE_BUTTON (self->schaeffler));
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (self->schaeffler), TRUE);
  gtk_box_append (GTK_BOX (self->switcher), self->schaeffler);
  gtk_box_append (GTK_BOX (self->switcher), self->wrc);
  self->picture = em_constitution_picture_new ();
  self->picture_text = text_new ("remark", 0);
  gtk_box_append (GTK_BOX (self->box), self->title);
  gtk_box_append (GTK_BOX (self->box), self->facts);
  gtk_box_append (GTK_BOX (self->box), self->switcher);
  gtk_box_append (GTK_BOX (self->box), self->picture);
  gtk_box_append (GTK_BOX (self->box), self->picture_text);
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
  g_signal_connect_swapped (self->wrc, "toggled", G_CALLBACK (show_picture), self);
}

GtkWidget *
em_deposit_view_new (void)
{
  return g_object_new (EM_TYPE_DEPOSIT_VIEW, NULL);
}

void
em_deposit_view_show (EmDepositView *self, EmDocument *document, const EmCompareRow *row)
{
  const EmCatalogue *catalogue = em_document_get_catalogue (document);
  const char *base_id = em_document_get_quote (document)->text[EM_QUOTE_BASE];
  int32_t index = base_id != NULL ? em_catalogue_find_base (catalogue, base_id) : -1;
  const EmBase *base = index >= 0 ? &catalogue->base[index] : NULL;

  gtk_widget_set_visible (GTK_WIDGET (self), row != NULL);
  if (row == NULL)
    return;
  const EmFiller *filler = &catalogue->filler[row->filler];
  g_autofree char *title = base != NULL ? g_strdup_printf (_("%s on %s"), filler->designation, base->designation)
                                        : g_strdup (filler->designation);
  gtk_label_set_text (GTK_LABEL (self->title), title);
  show_facts (self, &row->pairing);
  put_spots (self, base, filler, &row->pairing);
  show_picture (self);
}

char *
em_deposit_view_text (EmDepositView *self)
{
  g_autoptr (GString) text = g_string_new (gtk_label_get_text (GTK_LABEL (self->title)));

  for (int i = 0; i < self->n_facts; i++)
    g_string_append_printf (text, "\n%s: %s", gtk_label_get_text (GTK_LABEL (self->fact_name[i])),
                            gtk_label_get_text (GTK_LABEL (self->fact_value[i])));
  if (gtk_widget_get_visible (self->picture_text))
    g_string_append_printf (text, "\n%s", gtk_label_get_text (GTK_LABEL (self->picture_text)));
  return g_string_free (g_steal_pointer (&text), FALSE);
}
