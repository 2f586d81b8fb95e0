/* em-command: the table of commands, its help and its options.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "config.h"

#include "em-command-private.h"

#include <glib/gi18n.h>

#include <errno.h>
#include <stdio.h>
#include <string.h>
#include <unistd.h>

static const EmCommand commands[] =
{
  { "check", N_("Check quote files and say what is wrong with them"), N_("FILE…"), em_command_check },
  { "cost", N_("Price a quote"), N_("FILE"), em_command_cost },
  { "compare", N_("Price every wire the shop stocks over a quote"), N_("FILE"), em_command_compare },
  { "print", N_("Print a quote or its bench sheet to PDF"), N_("FILE -o OUT.pdf"), em_command_print },
  { "lines", N_("Write a quote's lines as CSV"), N_("FILE"), em_command_lines },
  { "read", N_("Read drawing notes into proposed features"), N_("NOTES"), em_command_read },
  { "steel", N_("Say what a base metal and a wire make together"), N_("BASE WIRE"), em_command_steel },
  { "prices", N_("Show what a supplier's price list changes, or take it over"), N_("LIST.csv"), em_command_prices },
};

static const EmCommand *
find_command (const char *name)
{
  for (gsize i = 0; i < G_N_ELEMENTS (commands); i++)
    if (g_str_equal (commands[i].name, name))
      return &commands[i];
  return NULL;
}

gboolean
em_command_is_ours (int argc, char **argv)
{
  return argc > 1 && (find_command (argv[1]) != NULL || g_str_equal (argv[1], "--version")
                      || g_str_equal (argv[1], "--help") || g_str_equal (argv[1], "-h"));
}

static void
print_help (void)
{
  int width = 0;

  g_print ("%s\n", _("Estimend prices micro-weld repairs of molds and dies."));
  g_print ("\n%s\n", _("In the window:"));
  g_print ("  estimend [%s]\n  estimend --demo\n", _("FILE…"));
  g_print ("\n%s\n", _("Without a window:"));
  for (gsize i = 0; i < G_N_ELEMENTS (commands); i++)
    width = MAX (width, (int) g_utf8_strlen (_(commands[i].arguments), -1));
  for (gsize i = 0; i < G_N_ELEMENTS (commands); i++)
    {
      g_print ("  estimend %-8s ", commands[i].name);
      em_command_cell (_(commands[i].arguments), width, FALSE);
      g_print (" %s\n", _(commands[i].summary));
    }
  g_print ("\n%s\n", _("“estimend COMMAND --help” tells a command's options. Figures are estimates."));
}

/** Prints text and spaces up to a number of columns. Columns, not bytes: words and money hold characters of several bytes. */
void
em_command_cell (const char *text, int columns, gboolean is_right)
{
  int pad = columns - (int) g_utf8_strlen (text, -1);

  g_print ("%*s%s%*s", is_right && pad > 0 ? pad : 0, "", text, !is_right && pad > 0 ? pad : 0, "");
}

int
em_command_misuse (const char *format, ...)
{
  va_list arguments;

  va_start (arguments, format);
  g_autofree char *sentence = g_strdup_vprintf (format, arguments);
  va_end (arguments);
  g_printerr ("estimend: %s\n", sentence);
  return EM_EXIT_MISUSE;
}

static int
run (int argc, char **argv)
{
  const EmCommand *command = argc > 1 ? find_command (argv[1]) : NULL;

  if (command != NULL)
    return command->run (argc - 1, argv + 1);
  if (argc > 1 && g_str_equal (argv[1], "--version"))
    {
      g_print ("estimend %s\n", EM_VERSION);
      return EM_EXIT_GOOD;
    }
  print_help ();
  return EM_EXIT_GOOD;
}

/* Half a table on a full disk must not pass for a whole one. Why it is half is no longer known by then, so it is asked again, by a
 * line break that does no more harm. */
int
em_command_run (int argc, char **argv)
{
  int status = run (argc, argv);

  if (fflush (stdout) == 0 && ferror (stdout) == 0)
    return status;
  errno = EIO;
  if (write (STDOUT_FILENO, "\n", 1) == 1)
    errno = EIO;
  g_printerr ("estimend: %s\n", g_strerror (errno));
  return EM_EXIT_INPUT;
}

gboolean
em_command_options (int *argc, char ***argv, const char *parameters, const GOptionEntry *entries, int *out_status)
{
  g_autoptr (GOptionContext) context = g_option_context_new (parameters);
  g_autoptr (GError) error = NULL;
  g_autofree char *name = g_strconcat ("estimend ", (*argv)[0], NULL);
  gboolean is_help = FALSE;
  const GOptionEntry help[] = {
    { "help", 'h', 0, G_OPTION_ARG_NONE, &is_help, N_("Tell the options"), NULL },
    G_OPTION_ENTRY_NULL
  };

  g_set_prgname (name);
  g_option_context_set_help_enabled (context, FALSE);
  g_option_context_set_translation_domain (context, GETTEXT_PACKAGE);
  if (entries != NULL)
    g_option_context_add_main_entries (context, entries, GETTEXT_PACKAGE);
  g_option_context_add_main_entries (context, help, GETTEXT_PACKAGE);
  if (!g_option_context_parse (context, argc, argv, &error))
    {
      *out_status = em_command_misuse ("%s", error->message);
      return FALSE;
    }
  if (is_help)
    {
      g_autofree char *text = g_option_context_get_help (context, TRUE, NULL);

      g_print ("%s", text);
      *out_status = EM_EXIT_GOOD;
      return FALSE;
    }
  return TRUE;
}
