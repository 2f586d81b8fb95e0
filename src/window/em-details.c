/* em-details: who asks, for which tool, on what terms.
 *
 * Closed, it is one line that says the most of it; its fields are made when it is first opened, since most starts never
 * show them.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-details.h"

#include "em-field.h"
#include "em-quantity-entry.h"
#include "em-record-choice.h"
#include "em-steady.h"
#include "em-words.h"

#include <glib/gi18n.h>

/* What the printed sheet is like; the first option leaves it to the program or the rate book. */
enum { SHEET_OPTION_MAX = 6, N_SHEET_CHOICE = 2 };

typedef struct
{
  EmQuoteText which;
  const char *label;
  const char *id[SHEET_OPTION_MAX], *name[SHEET_OPTION_MAX];   /* NULL-terminated by name */
} EmSheetChoice;

static const EmSheetChoice sheet_choices[N_SHEET_CHOICE] =
{
  { EM_QUOTE_LANGUAGE, N_("Language on paper"), { NULL, "en", "de", "es", "fr" },
    { N_("As the program"), "English", "Deutsch", "Español", "Français" } },
  { EM_QUOTE_PAPER, N_("Paper"), { NULL, "a4", "letter" }, { N_("As the rate book"), N_("A4"), N_("US letter") } },
};

struct _EmDetails
{
  GtkWidget parent_instance;

  GtkWidget  *expander, *summary, *box;
  gboolean    is_made;    /* the fields below are there */
  GtkWidget  *entry[EM_N_QUOTE_TEXT];
  GtkWidget  *number[EM_N_QUOTE_NUMBER];
  GtkWidget  *base, *filler, *machine, *state, *breaks, *breaks_problem;
  GtkWidget  *sheet[N_SHEET_CHOICE];
  EmDocument *document;   /* owned */
};

G_DEFINE_FINAL_TYPE (EmDetails, em_details, GTK_TYPE_WIDGET)

enum { BLOCK_WHO, BLOCK_TOOL, BLOCK_TERMS, N_BLOCK };

typedef struct { EmQuoteText which; int block; const char *label; gboolean has_lines; } EmTextRow;

static const EmTextRow text_rows[] =
{
  { EM_QUOTE_CUSTOMER, BLOCK_WHO, N_("C_ustomer"), FALSE },
  { EM_QUOTE_CONTACT, BLOCK_WHO, N_("Contact"), FALSE },
  { EM_QUOTE_EMAIL, BLOCK_WHO, N_("E-mail"), FALSE },
  { EM_QUOTE_PHONE, BLOCK_WHO, N_("Phone"), FALSE },
  { EM_QUOTE_ADDRESS, BLOCK_WHO, N_("Address"), TRUE },
  { EM_QUOTE_REFERENCE, BLOCK_WHO, N_("Their reference"), FALSE },
  { EM_QUOTE_NUMBER, BLOCK_WHO, N_("Quote number"), FALSE },
  { EM_QUOTE_REVISION, BLOCK_WHO, N_("Revision"), FALSE },
  { EM_QUOTE_DATE, BLOCK_WHO, N_("Date"), FALSE },
  { EM_QUOTE_PREPARED_BY, BLOCK_WHO, N_("Prepared by"), FALSE },
  { EM_QUOTE_TOOL, BLOCK_TOOL, N_("_Tool"), FALSE },
  { EM_QUOTE_TOOL_NUMBER, BLOCK_TOOL, N_("Tool number"), FALSE },
  { EM_QUOTE_DRAWING, BLOCK_TOOL, N_("Drawing"), FALSE },
  { EM_QUOTE_COATING, BLOCK_TOOL, N_("Coating"), FALSE },
  { EM_QUOTE_LEAD_TIME, BLOCK_TERMS, N_("Lead time"), FALSE },
  { EM_QUOTE_SCOPE, BLOCK_TERMS, N_("What is included"), TRUE },
  { EM_QUOTE_TERMS, BLOCK_TERMS, N_("Terms"), TRUE },
  { EM_QUOTE_INTERNAL, BLOCK_TERMS, N_("Our own remarks"), TRUE },
};

typedef struct { EmQuoteNumber which; int block; const char *label; const char *unit; const char *hint; } EmNumberLabel;

static const EmNumberLabel number_rows[] =
{
  { EM_QUOTE_TOOLS, BLOCK_TOOL, N_("Identical tools"), NULL, NULL },
  { EM_QUOTE_HARDNESS, BLOCK_TOOL, N_("Hardness"), "HRC", N_("catalog") },
  { EM_QUOTE_SECTION, BLOCK_TOOL, N_("Thickness at the weld"), NULL, N_("unknown") },
  { EM_QUOTE_PREHEAT, BLOCK_TOOL, N_("Preheat"), NULL, NULL },
  { EM_QUOTE_FEATURE_FINISH, BLOCK_TOOL, N_("Finish"), NULL, NULL },
  { EM_QUOTE_MARGIN, BLOCK_TERMS, N_("Margin"), "%", N_("rate book") },
  { EM_QUOTE_CONTINGENCY, BLOCK_TERMS, N_("Contingency"), "%", N_("rate book") },
  { EM_QUOTE_RUSH, BLOCK_TERMS, N_("Rush"), "%", N_("none") },
  { EM_QUOTE_DISCOUNT, BLOCK_TERMS, N_("Discount"), "%", N_("none") },
  { EM_QUOTE_LEARNING, BLOCK_TERMS, N_("Learning rate"), "%", N_("rate book") },
  { EM_QUOTE_VALIDITY, BLOCK_TERMS, N_("Holds for, days"), NULL, N_("rate book") },
};

static gboolean
is_share (EmQuoteNumber which)
{
  return which >= EM_QUOTE_MARGIN && which <= EM_QUOTE_LEARNING;
}

static void
on_text (GtkEditable *entry, EmDetails *self)
{
  EmQuoteText which = (EmQuoteText) GPOINTER_TO_INT (g_object_get_data (G_OBJECT (entry), "which"));

  em_document_set_text (self->document, which, gtk_editable_get_text (entry));
}

static void
on_lines (GtkTextBuffer *buffer, EmDetails *self)
{
  EmQuoteText which = (EmQuoteText) GPOINTER_TO_INT (g_object_get_data (G_OBJECT (buffer), "which"));
  GtkTextIter start, end;

  gtk_text_buffer_get_bounds (buffer, &start, &end);
  g_autofree char *text = gtk_text_buffer_get_text (buffer, &start, &end, TRUE);
  em_document_set_text (self->document, which, text);
}

static EmQuoteNumber
number_of (EmDetails *self, GtkWidget *widget)
{
  for (int i = 0; i < EM_N_QUOTE_NUMBER; i++)
    if (self->number[i] == widget)
      return (EmQuoteNumber) i;
  return EM_N_QUOTE_NUMBER;
}

/* Shares are typed as percent and held as parts per million. */
static void
on_read (EmDetails *self, const EmReading *reading, GtkWidget *entry)
{
  EmQuoteNumber which = number_of (self, entry);
  double value = reading != NULL ? reading->value : EM_ABSENT;
  int64_t ppm;

  em_document_set_problem (self->document, 0, em_quote_numbers[which].id, NULL);
  if (is_share (which) && reading != NULL && em_money_scale (value, 1e4, &ppm) == EM_OK)
    value = (double) ppm;
  em_document_set_number (self->document, which, value);
}

static void
on_unread (EmDetails *self, const char *problem, GtkWidget *entry)
{
  em_document_set_problem (self->document, 0, em_quote_numbers[number_of (self, entry)].id, problem);
}

static void
on_done (EmDetails *self)
{
  if (self->document != NULL)
    em_document_break (self->document);
}

static void
on_number_chosen (GtkWidget *drop_down, GParamSpec *spec, EmDetails *self)
{
  (void) spec;
  em_document_set_number (self->document, number_of (self, drop_down), gtk_drop_down_get_selected (GTK_DROP_DOWN (drop_down)));
}

static void
on_state (GtkWidget *drop_down, GParamSpec *spec, EmDetails *self)
{
  (void) spec;
  em_document_set_state (self->document, (EmState) gtk_drop_down_get_selected (GTK_DROP_DOWN (drop_down)));
}

static void
on_chosen (GtkWidget *drop_down, GParamSpec *spec, EmDetails *self)
{
  EmQuoteText which = (EmQuoteText) GPOINTER_TO_INT (g_object_get_data (G_OBJECT (drop_down), "which"));
  const char *id;

  (void) spec;
  if (em_record_choice_get (drop_down, &id))
    em_document_set_text (self->document, which, id);
}

static void
on_machine (GtkWidget *drop_down, GParamSpec *spec, EmDetails *self)
{
  const char *machine_id, *process_id;

  (void) spec;
  if (em_record_choice_get_machine (drop_down, &machine_id, &process_id))
    em_document_set_machine (self->document, machine_id, process_id);
}

static void
on_sheet (GtkWidget *drop_down, GParamSpec *spec, EmDetails *self)
{
  const EmSheetChoice *choice = g_object_get_data (G_OBJECT (drop_down), "choice");
  guint at = gtk_drop_down_get_selected (GTK_DROP_DOWN (drop_down));

  (void) spec;
  if (at < SHEET_OPTION_MAX)
    em_document_set_text (self->document, choice->which, choice->id[at]);
}

static void
show_sheets (EmDetails *self)
{
  for (int i = 0; i < N_SHEET_CHOICE; i++)
    {
      const EmSheetChoice *choice = &sheet_choices[i];
      const char *id = em_document_get_quote (self->document)->text[choice->which];
      guint at = 0;
      for (guint option = 1; option < SHEET_OPTION_MAX && choice->name[option] != NULL; option++)
        if (g_strcmp0 (choice->id[option], id) == 0)
          at = option;
      em_field_put_choice (self->sheet[i], at, self);
    }
}

static void
add_sheets (EmDetails *self, GtkWidget *flow)
{
  for (int i = 0; i < N_SHEET_CHOICE; i++)
    {
      const char *names[SHEET_OPTION_MAX + 1] = { NULL };
      for (int option = 0; option < SHEET_OPTION_MAX && sheet_choices[i].name[option] != NULL; option++)
        names[option] = _(sheet_choices[i].name[option]);
      em_fields_add (flow, em_field_choice (_(sheet_choices[i].label), names, &self->sheet[i]));
      g_object_set_data (G_OBJECT (self->sheet[i]), "choice", (gpointer) &sheet_choices[i]);
      g_signal_connect (self->sheet[i], "notify::selected", G_CALLBACK (on_sheet), self);
    }
}

static void
show_records (EmDetails *self)
{
  const EmQuote *quote = em_document_get_quote (self->document);
  EmBasis *basis = em_document_get_basis (self->document);

  em_record_choice_show (self->base, basis, quote->text[EM_QUOTE_BASE], self);
  em_record_choice_show (self->filler, basis, quote->text[EM_QUOTE_FILLER], self);
  em_record_choice_show_machine (self->machine, basis, quote->text[EM_QUOTE_MACHINE], quote->text[EM_QUOTE_PROCESS], self);
}

/* "1, 5, 10" into ascending counts; FALSE when it is not that. */
static gboolean
read_breaks (const char *text, int32_t *out_tools, int *out_n)
{
  g_auto (GStrv) parts = g_strsplit_set (text, ",; ", -1);
  int n = 0;

  for (char **part = parts; *part != NULL; part++)
    {
      gint64 value;
      if (**part == '\0')
        continue;
      if (n == EM_BREAK_MAX || !em_integer_read (*part, &value) || value < 1 || value > 100000
          || (n > 0 && value <= out_tools[n - 1]))
        return FALSE;
      out_tools[n++] = (int32_t) value;
    }
  *out_n = n;
  return TRUE;
}

static void
on_breaks (GtkEditable *entry, EmDetails *self)
{
  int32_t tools[EM_BREAK_MAX];
  int n = 0;
  gboolean is_good = read_breaks (gtk_editable_get_text (entry), tools, &n);

  gtk_widget_set_visible (self->breaks_problem, !is_good);
  em_document_set_problem (self->document, 0, "break", is_good ? NULL : gtk_label_get_text (GTK_LABEL (self->breaks_problem)));
  if (is_good)
    em_document_set_breaks (self->document, tools, n);
}

static void
show_breaks (EmDetails *self)
{
  const EmQuote *quote = em_document_get_quote (self->document);
  g_autoptr (GString) text = g_string_new (NULL);

  for (int i = 0; i < quote->n_breaks; i++)
    g_string_append_printf (text, i == 0 ? "%d" : ", %d", quote->break_tools[i]);
  em_field_put_text (self->breaks, text->str, self);
}

static void
fill_breaks (EmDetails *self)
{
  const EmQuote *quote = em_document_get_quote (self->document);
  int32_t typed[EM_BREAK_MAX];
  int n = 0;

  if (!read_breaks (gtk_editable_get_text (GTK_EDITABLE (self->breaks)), typed, &n)
      || (n == quote->n_breaks && (n == 0 || memcmp (typed, quote->break_tools, (gsize) n * sizeof (int32_t)) == 0)))
    return;
  show_breaks (self);
}

static void
show_summary (EmDetails *self)
{
  const EmQuote *quote = em_document_get_quote (self->document);
  const char *base = quote->text[EM_QUOTE_BASE];
  int32_t at = base != NULL ? em_catalogue_find_base (em_document_get_catalogue (self->document), base) : -1;
  g_autoptr (GString) text = g_string_new (NULL);
  const char *parts[] = { quote->text[EM_QUOTE_CUSTOMER], quote->text[EM_QUOTE_TOOL],
                          at >= 0 ? em_document_get_catalogue (self->document)->base[at].designation : NULL };

  for (gsize i = 0; i < G_N_ELEMENTS (parts); i++)
    if (parts[i] != NULL)
      g_string_append_printf (text, "%s%s", text->len > 0 ? " · " : "", parts[i]);
  gtk_label_set_text (GTK_LABEL (self->summary), text->len > 0 ? text->str : _("Customer, tool and terms"));
}

static void
fill (EmDetails *self)
{
  const EmQuote *quote = em_document_get_quote (self->document);
  EmUnits units = em_document_get_units (self->document);

  for (int i = 0; i < EM_N_QUOTE_TEXT; i++)
    if (GTK_IS_TEXT_VIEW (self->entry[i]))
      em_field_put_lines (self->entry[i], quote->text[i], self);
    else if (self->entry[i] != NULL)
      em_field_put_text (self->entry[i], quote->text[i], self);
  for (int i = 0; i < EM_N_QUOTE_NUMBER; i++)
    {
      double value = em_quote_get_number (quote, (EmQuoteNumber) i);
      if (self->number[i] == NULL)
        continue;
      if (GTK_IS_DROP_DOWN (self->number[i]))
        em_field_put_choice (self->number[i], (guint) value, self);
      else
        em_quantity_entry_set_value (EM_QUANTITY_ENTRY (self->number[i]), is_share ((EmQuoteNumber) i) ? value / 1e4 : value, units);
    }
  show_records (self);
  show_sheets (self);
  em_field_put_choice (self->state, quote->state, self);
  fill_breaks (self);
}

/* What was typed but not taken is gone once its problem is settled, as by a step back. */
static void
forget_settled (EmDetails *self)
{
  for (int i = 0; i < EM_N_QUOTE_NUMBER; i++)
    if (self->number[i] != NULL && !GTK_IS_DROP_DOWN (self->number[i])
        && em_document_get_problem (self->document, 0, em_quote_numbers[i].id) == NULL)
      em_quantity_entry_forget_unread (EM_QUANTITY_ENTRY (self->number[i]));
  if (gtk_widget_get_visible (self->breaks_problem) && em_document_get_problem (self->document, 0, "break") == NULL)
    {
      gtk_widget_set_visible (self->breaks_problem, FALSE);
      show_breaks (self);
    }
}

static void
on_document_changed (EmDetails *self, guint what, int index)
{
  (void) index;
  if (self->is_made && what & EM_CHANGE_PROBLEMS)
    forget_settled (self);
  if (self->is_made && what & (EM_CHANGE_DETAILS | EM_CHANGE_UNITS | EM_CHANGE_BASIS))
    fill (self);
  show_summary (self);
}

static void
em_details_dispose (GObject *object)
{
  EmDetails *self = EM_DETAILS (object);

  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->document);
  g_clear_pointer (&self->expander, gtk_widget_unparent);
  G_OBJECT_CLASS (em_details_parent_class)->dispose (object);
}

static void
em_details_class_init (EmDetailsClass *class)
{
  G_OBJECT_CLASS (class)->dispose = em_details_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (class), GTK_TYPE_BIN_LAYOUT);
}

static void
add_text (EmDetails *self, GtkWidget *flow, const EmTextRow *row)
{
  GtkWidget **entry = &self->entry[row->which];
  GObject *source;

  if (row->has_lines)
    gtk_box_append (GTK_BOX (self->box), em_field_lines (_(row->label), entry));
  else
    em_fields_add (flow, em_field_text (_(row->label), entry));
  source = row->has_lines ? G_OBJECT (gtk_text_view_get_buffer (GTK_TEXT_VIEW (*entry))) : G_OBJECT (*entry);
  g_object_set_data (source, "which", GINT_TO_POINTER (row->which));
  g_signal_connect (source, "changed", row->has_lines ? G_CALLBACK (on_lines) : G_CALLBACK (on_text), self);
}

static void
add_texts (EmDetails *self, GtkWidget *flow, int block)
{
  for (gsize i = 0; i < G_N_ELEMENTS (text_rows); i++)
    if (text_rows[i].block == block)
      add_text (self, flow, &text_rows[i]);
}

static GtkWidget *
number_choice (EmDetails *self, const EmNumberLabel *row)
{
  const char *finish[EM_N_FINISH + 1] = { NULL };
  const char *preheat[] = { _("As advised"), _("Yes"), _("No"), NULL };
  GtkWidget *box;

  for (int i = 0; i < EM_N_FINISH; i++)
    finish[i] = i == EM_FINISH_DEFAULT ? _("As usual, left to the customer") : em_words_finish ((EmFinish) i);
  box = em_field_choice (_(row->label), row->which == EM_QUOTE_PREHEAT ? preheat : finish, &self->number[row->which]);
  g_signal_connect (self->number[row->which], "notify::selected", G_CALLBACK (on_number_chosen), self);
  return box;
}

static void
add_numbers (EmDetails *self, GtkWidget *flow, int block)
{
  for (gsize i = 0; i < G_N_ELEMENTS (number_rows); i++)
    {
      const EmNumberLabel *row = &number_rows[i];
      const EmNumberRow *limits = &em_quote_numbers[row->which];
      if (row->block != block)
        continue;
      if (limits->quantity == EM_QUANTITY_CHOICE)
        {
          em_fields_add (flow, number_choice (self, row));
          continue;
        }
      /* Plain decimals are read as an angle's are: no unit of length comes into it. */
      EmQuantityType type = row->unit != NULL ? EM_QUANTITY_ANGLE : limits->quantity;
      GtkWidget *entry = em_quantity_entry_new (_(row->label), type);
      self->number[row->which] = entry;
      em_quantity_entry_set_unit (EM_QUANTITY_ENTRY (entry), row->unit);
      em_quantity_entry_set_hint (EM_QUANTITY_ENTRY (entry), row->hint != NULL ? _(row->hint) : NULL);
      em_quantity_entry_set_limits (EM_QUANTITY_ENTRY (entry), limits->low, limits->high, type == EM_QUANTITY_COUNT);
      g_signal_connect_swapped (entry, "read", G_CALLBACK (on_read), self);
      g_signal_connect_swapped (entry, "unread", G_CALLBACK (on_unread), self);
      g_signal_connect_swapped (entry, "done", G_CALLBACK (on_done), self);
      em_fields_add (flow, entry);
    }
}

static void
add_metal (EmDetails *self, GtkWidget *flow, const char *label, EmQuoteText which, GtkWidget **out_drop_down)
{
  EmRecordKind kind = which == EM_QUOTE_BASE ? EM_RECORD_BASE : which == EM_QUOTE_FILLER ? EM_RECORD_WIRE : EM_RECORD_MACHINE;

  em_fields_add_wide (flow, em_record_choice_new (label, kind, kind == EM_RECORD_MACHINE ? _("Cheapest that fits") : _("Not chosen"), out_drop_down));
  g_object_set_data (G_OBJECT (*out_drop_down), "which", GINT_TO_POINTER (which));
  g_signal_connect (*out_drop_down, "notify::selected", which == EM_QUOTE_MACHINE ? G_CALLBACK (on_machine) : G_CALLBACK (on_chosen), self);
}

static void
add_breaks (EmDetails *self, GtkWidget *flow)
{
  GtkWidget *box = em_field_text (_("Prices also for, tools"), &self->breaks);

  gtk_entry_set_placeholder_text (GTK_ENTRY (self->breaks), _("such as 2, 5, 10"));
  self->breaks_problem = gtk_label_new (_("Whole numbers of tools, rising, six at most"));
  gtk_label_set_wrap (GTK_LABEL (self->breaks_problem), TRUE);
  gtk_label_set_xalign (GTK_LABEL (self->breaks_problem), 0);
  gtk_label_set_max_width_chars (GTK_LABEL (self->breaks_problem), 14);
  gtk_widget_add_css_class (self->breaks_problem, "problem");
  gtk_widget_set_visible (self->breaks_problem, FALSE);
  gtk_box_append (GTK_BOX (box), self->breaks_problem);
  g_signal_connect (self->breaks, "changed", G_CALLBACK (on_breaks), self);
  em_fields_add (flow, box);
}

static void
add_block (EmDetails *self, int block, const char *title)
{
  GtkWidget *flow = em_fields_new ();
  GtkWidget *label = gtk_label_new (title);
  const char *states[EM_N_STATE + 1] = { NULL };

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_add_css_class (label, "section-name");
  em_fields_set_columns (EM_FIELDS (flow), 1, 2);
  gtk_box_append (GTK_BOX (self->box), label);
  gtk_box_append (GTK_BOX (self->box), flow);
  if (block == BLOCK_TOOL)
    add_metal (self, flow, _("_Metal of the tool"), EM_QUOTE_BASE, &self->base);
  if (block == BLOCK_TERMS)
    {
      for (int i = 0; i < EM_N_STATE; i++)
        states[i] = em_words_state ((EmState) i);
      em_fields_add (flow, em_field_choice (_("State"), states, &self->state));
      g_signal_connect (self->state, "notify::selected", G_CALLBACK (on_state), self);
    }
  add_texts (self, flow, block);
  add_numbers (self, flow, block);
  if (block == BLOCK_TOOL)
    {
      add_metal (self, flow, _("Wire alloy"), EM_QUOTE_FILLER, &self->filler);
      add_metal (self, flow, _("Machine"), EM_QUOTE_MACHINE, &self->machine);
    }
  if (block == BLOCK_TERMS)
    {
      add_breaks (self, flow);
      add_sheets (self, flow);
    }
}

static void
make_fields (EmDetails *self)
{
  if (self->is_made)
    return;
  self->is_made = TRUE;
  gtk_box_remove (GTK_BOX (self->box), gtk_widget_get_first_child (self->box));
  add_block (self, BLOCK_WHO, _("Who asks"));
  add_block (self, BLOCK_TOOL, _("The tool"));
  add_block (self, BLOCK_TERMS, _("Terms"));
  if (self->document != NULL)
    on_document_changed (self, EM_CHANGE_ALL, -1);
}

/* Whole where people write it; what is pasted by mistake leaves room for the notes. */
enum { SUMMARY_LINES = 4 };

static void
em_details_init (EmDetails *self)
{
  self->expander = gtk_expander_new (NULL);
  g_signal_connect_swapped (self->expander, "notify::expanded", G_CALLBACK (make_fields), self);
  self->summary = gtk_label_new (NULL);
  gtk_label_set_xalign (GTK_LABEL (self->summary), 0);
  gtk_label_set_wrap (GTK_LABEL (self->summary), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (self->summary), PANGO_WRAP_WORD_CHAR);
  gtk_label_set_natural_wrap_mode (GTK_LABEL (self->summary), GTK_NATURAL_WRAP_NONE);
  gtk_label_set_ellipsize (GTK_LABEL (self->summary), PANGO_ELLIPSIZE_END);
  gtk_label_set_lines (GTK_LABEL (self->summary), SUMMARY_LINES);
  em_field_tell_whole (self->summary);
  gtk_widget_set_hexpand (self->summary, TRUE);
  gtk_widget_add_css_class (self->summary, "strong");
  gtk_expander_set_label_widget (GTK_EXPANDER (self->expander), em_steady_new (self->summary));
  gtk_accessible_update_relation (GTK_ACCESSIBLE (self->expander), GTK_ACCESSIBLE_RELATION_LABELLED_BY, self->summary, NULL, -1);
  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  gtk_widget_set_margin_top (self->box, 6);
  /* GTK's expander asks its child whether its height goes by its width, and would give a title of two lines the room of one. */
  gtk_box_append (GTK_BOX (self->box), em_fields_new ());
  gtk_expander_set_child (GTK_EXPANDER (self->expander), self->box);
  gtk_widget_set_parent (self->expander, GTK_WIDGET (self));
}

void
em_details_set_document (EmDetails *self, EmDocument *document)
{
  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_set_object (&self->document, document);
  g_signal_connect_object (document, "changed", G_CALLBACK (on_document_changed), self, G_CONNECT_SWAPPED);
  on_document_changed (self, EM_CHANGE_ALL, -1);
}

void
em_details_set_expanded (EmDetails *self, gboolean is_expanded)
{
  gtk_expander_set_expanded (GTK_EXPANDER (self->expander), is_expanded);
}

GtkWidget *
em_details_get_entry (EmDetails *self, EmQuoteText which)
{
  make_fields (self);
  return which == EM_QUOTE_BASE ? self->base : which == EM_QUOTE_FILLER ? self->filler
         : which == EM_QUOTE_MACHINE ? self->machine : self->entry[which];
}
