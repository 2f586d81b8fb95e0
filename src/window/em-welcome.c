/* em-welcome: the first start.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-welcome.h"

#include "em-application.h"
#include "em-field.h"
#include "em-quote-file.h"
#include "em-settings.h"

#include <glib/gi18n.h>
#include <langinfo.h>
#include <locale.h>

struct _EmWelcome
{
  GtkWidget parent_instance;

  GtkWidget *demo_button, *fields, *problem, *start_button;   /* template */
  GtkWidget *name, *currency, *units;
  gboolean   is_keeping;
};

G_DEFINE_FINAL_TYPE (EmWelcome, em_welcome, GTK_TYPE_WIDGET)

static void
say (EmWelcome *self, const char *problem)
{
  gtk_label_set_text (GTK_LABEL (self->problem), problem != NULL ? problem : "");
  gtk_widget_set_visible (self->problem, problem != NULL);
}

/* What was asked can be mended at once where it stands. */
static void
mark_currency (EmWelcome *self, gboolean is_wrong)
{
  gtk_accessible_update_state (GTK_ACCESSIBLE (self->currency), GTK_ACCESSIBLE_STATE_INVALID,
                               is_wrong ? GTK_ACCESSIBLE_INVALID_TRUE : GTK_ACCESSIBLE_INVALID_FALSE, -1);
  if (is_wrong)
    {
      gtk_widget_add_css_class (self->currency, "error");
      gtk_widget_grab_focus (self->currency);
    }
  else
    gtk_widget_remove_css_class (self->currency, "error");
}

static void
on_currency_edited (EmWelcome *self)
{
  mark_currency (self, FALSE);
  say (self, NULL);
}

/* The shop's own book is the shipped one with what was asked put in. */
static EmBasis *
make_basis (EmWelcome *self, const EmBasis *basis, GError **error)
{
  EmRates rates;
  EmCatalogue catalogue;
  const char *code = gtk_editable_get_text (GTK_EDITABLE (self->currency));
  EmCurrency currency;
  g_autofree char *upper = g_ascii_strup (code, -1);

  if (!em_currency_find (upper, &currency))
    {
      g_set_error (error, G_IO_ERROR, G_IO_ERROR_INVALID_ARGUMENT, _("“%s” is no ISO 4217 currency. Write EUR, USD, CHF, JPY …"), code);
      return NULL;
    }
  if (em_rates_copy (em_basis_get_rates (basis), &rates) != EM_OK)
    return NULL;
  if (em_catalogue_copy (em_basis_get_catalogue (basis), &catalogue) != EM_OK)
    {
      em_rates_clear (&rates);
      return NULL;
    }
  rates.currency = currency;
  rates.units = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->units)) == 1 ? EM_UNITS_INCH : EM_UNITS_METRIC;
  em_rates_set_text (&rates, EM_SHOP_NAME, gtk_editable_get_text (GTK_EDITABLE (self->name)));
  return em_basis_new_take (&rates, &catalogue);
}

typedef struct
{
  EmWelcome     *welcome;       /* owned */
  EmApplication *application;   /* owned, and held until the book is on the disk */
  EmBasis       *basis;         /* owned */
  GtkWidget     *focus;         /* owned; who had the keyboard, or NULL */
} EmStart;

static void
set_keeping (EmWelcome *self, gboolean is_keeping)
{
  self->is_keeping = is_keeping;
  gtk_widget_set_sensitive (self->fields, !is_keeping);
  gtk_widget_set_sensitive (self->start_button, !is_keeping);
}

/* The window may have gone on to something else meanwhile, or away. */
static void
go_on (EmWelcome *self, EmBasis *basis)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));

  if (!EM_IS_WINDOW (root) || !gtk_widget_get_mapped (GTK_WIDGET (self)))
    return;
  if (em_document_is_blank (em_window_get_document (EM_WINDOW (root))))
    {
      g_autoptr (EmDocument) document = em_document_new (basis);
      em_window_set_document (EM_WINDOW (root), document);
    }
  gtk_widget_activate_action (GTK_WIDGET (self), "win.work", NULL);
}

static void
on_kept (GObject *source, GAsyncResult *result, gpointer data)
{
  EmStart *start = data;
  g_autoptr (EmWelcome) self = start->welcome;
  g_autoptr (EmApplication) application = start->application;
  g_autoptr (EmBasis) basis = start->basis;
  g_autoptr (GtkWidget) focus = start->focus;
  g_autoptr (GError) error = NULL;
  gboolean is_kept = em_basis_save_finish (result, &error) != 0;

  (void) source;
  g_free (start);
  set_keeping (self, FALSE);
  if (is_kept)
    {
      em_application_set_basis (application, basis);
      g_settings_set_boolean (em_settings_get (), "is-first-start-done", TRUE);
      go_on (self, basis);
    }
  else
    {
      say (self, error->message);
      /* What can't be used while the book is kept gives the keyboard away. */
      if (focus != NULL && gtk_widget_get_root (focus) != NULL)
        gtk_widget_grab_focus (focus);
    }
  g_application_release (G_APPLICATION (application));
}

static void
on_start (EmWelcome *self)
{
  GtkWindow *window = GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (self)));
  EmApplication *application = EM_APPLICATION (gtk_window_get_application (window));
  g_autoptr (GError) error = NULL;
  EmStart *start;

  if (self->is_keeping)
    return;
  g_autoptr (EmBasis) basis = make_basis (self, em_application_get_basis (application), &error);
  if (basis == NULL)
    {
      say (self, error != NULL ? error->message : _("Not enough memory"));
      mark_currency (self, g_error_matches (error, G_IO_ERROR, G_IO_ERROR_INVALID_ARGUMENT));
      return;
    }
  start = g_new0 (EmStart, 1);
  g_set_object (&start->focus, gtk_root_get_focus (GTK_ROOT (window)));
  say (self, NULL);
  set_keeping (self, TRUE);
  start->welcome = g_object_ref (self);
  start->application = g_object_ref (application);
  start->basis = em_basis_ref (basis);
  g_application_hold (G_APPLICATION (application));
  em_basis_save_async (basis, EM_BASIS_RATES, on_kept, start);
}

static void
em_welcome_dispose (GObject *object)
{
  GtkWidget *child = gtk_widget_get_first_child (GTK_WIDGET (object));

  if (child != NULL)
    gtk_widget_unparent (child);
  G_OBJECT_CLASS (em_welcome_parent_class)->dispose (object);
}

static void
em_welcome_class_init (EmWelcomeClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = em_welcome_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/estimend/Estimend/welcome.ui");
  gtk_widget_class_bind_template_child (widget_class, EmWelcome, demo_button);
  gtk_widget_class_bind_template_child (widget_class, EmWelcome, fields);
  gtk_widget_class_bind_template_child (widget_class, EmWelcome, problem);
  gtk_widget_class_bind_template_child (widget_class, EmWelcome, start_button);
}

/* As people count and measure where the program runs. */
static const char *
local_currency (void)
{
  static char code[4];
  EmCurrency currency;

  g_strlcpy (code, localeconv ()->int_curr_symbol, sizeof code);
  return em_currency_find (code, &currency) ? code : "USD";
}

static gboolean
is_local_inch (void)
{
#ifdef _NL_MEASUREMENT_MEASUREMENT
  return nl_langinfo (_NL_MEASUREMENT_MEASUREMENT)[0] == 2;
#else
  return FALSE;
#endif
}

static void
em_welcome_init (EmWelcome *self)
{
  const char *units[] = { _("Millimeters"), _("Inches"), NULL };

  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_box_append (GTK_BOX (self->fields), em_field_text (_("Name _of your shop"), &self->name));
  gtk_box_append (GTK_BOX (self->fields), em_field_text (_("_Currency, by its three letters"), &self->currency));
  gtk_box_append (GTK_BOX (self->fields), em_field_choice (_("_Units of new quotes"), units, &self->units));
  gtk_entry_set_max_length (GTK_ENTRY (self->currency), 3);
  gtk_editable_set_text (GTK_EDITABLE (self->currency), local_currency ());
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->units), is_local_inch ());
  /* Enter in any of them goes on. */
  g_signal_connect_swapped (self->name, "activate", G_CALLBACK (on_start), self);
  g_signal_connect_swapped (self->currency, "activate", G_CALLBACK (on_start), self);
  g_signal_connect_swapped (self->currency, "changed", G_CALLBACK (on_currency_edited), self);
  g_signal_connect_swapped (self->start_button, "clicked", G_CALLBACK (on_start), self);
}

GtkWidget *
em_welcome_new (void)
{
  return g_object_new (EM_TYPE_WELCOME, NULL);
}
