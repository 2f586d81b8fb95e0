/* volume-probe: the net volume of any shape, for checks written outside C.
 *
 * Reads lines "kind field=value …" from standard input and answers each with "volume NUMBER" in mm³ or "refused FIELD". A value
 * is a number in mm, degrees, mm², a count, or the index of an option; a field not named is absent. With the argument "kinds" it
 * prints instead each kind and its fields, a choice as "field:option,option…". Exit 1 on a line that names no kind or field.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-kind.h"
#include "em-quantity.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static void
print_kinds (void)
{
  for (int k = 0; k < em_n_kinds; k++)
    {
      printf ("%s", em_kinds[k]->id);
      for (int i = 0; i < em_kinds[k]->n_fields; i++)
        {
          const EmField *field = &em_kinds[k]->fields[i];

          printf (" %s", field->id);
          for (int option = 0; field->options != NULL && field->options[option] != NULL; option++)
            printf ("%c%s", option == 0 ? ':' : ',', field->options[option]);
        }
      printf ("\n");
    }
}

/* Puts "field=value" into value[]; false when it is none of kind's. */
static bool
take_field (const EmKind *kind, char *word, double *value)
{
  char *sign = strchr (word, '=');

  if (sign == NULL)
    return false;
  *sign = '\0';

  int field = em_kind_field (kind, word);

  return field >= 0 && em_number_read (sign + 1, &value[field]);
}

static bool
answer (char *line)
{
  double value[EM_FIELD_MAX];
  EmShape shape;
  EmFault fault = { 0 };
  const EmKind *kind = em_kind_find (strtok (line, " \n"));

  for (int i = 0; i < EM_FIELD_MAX; i++)
    value[i] = EM_ABSENT;
  for (char *word = strtok (NULL, " \n"); word != NULL; word = strtok (NULL, " \n"))
    if (kind == NULL || !take_field (kind, word, value))
      return false;
  if (kind == NULL)
    return false;
  if (em_shape_solve (kind, value, &shape, &fault) == EM_OK)
    printf ("volume %.17g\n", shape.net_volume_mm3);
  else
    printf ("refused %s\n", fault.field);
  return true;
}

int
main (int argc, char **argv)
{
  char line[1024];

  if (argc > 1 && strcmp (argv[1], "kinds") == 0)
    print_kinds ();
  else
    while (fgets (line, sizeof line, stdin) != NULL)
      if (!answer (line))
        {
          fprintf (stderr, "volume-probe: no such kind or field: %s\n", line);
          return EXIT_FAILURE;
        }
  return EXIT_SUCCESS;
}
