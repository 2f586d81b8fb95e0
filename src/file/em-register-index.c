/* em-register-index: the cache a register begins from.
 *
 * A serialized variant with a version in front, one file a folder. It lies where this user
 * alone writes; still it is checked to be whole, and anything odd means no index.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "config.h"

#include "em-register-private.h"

#include "em-save.h"
#include "em-xml.h"

#include <glib/gstdio.h>
#include <string.h>

#define ENTRY_TYPE "(ayasmsiiibbsxddstttx)"
#define VERSION    "Estimend register 1 " G_STRINGIFY (G_BYTE_ORDER)

enum { SIZE_MAX_BYTES = 1 << 30, SIZE_MAX_ENTRIES = 1000000 };

static char *
dup_index_path (const char *folder)
{
  const char *chosen = g_getenv ("ESTIMEND_STATE_DIR");
  g_autofree char *digest = g_compute_checksum_for_string (G_CHECKSUM_SHA256, folder, -1);
  g_autofree char *name = g_strconcat ("register-", digest, NULL);

  return chosen != NULL && *chosen != '\0' ? g_build_filename (chosen, name, NULL)
                                           : g_build_filename (g_get_user_state_dir (), "estimend", name, NULL);
}

/* ---- writing ---- */

static void
add_entry (GVariantBuilder *builder, const EmRegisterEntry *entry)
{
  const EmFileStamp *stamp = &entry->stamp;

  g_variant_builder_add (builder, "(@ay@asmsiiibbsxddstttx)", g_variant_new_bytestring (entry->path),
                         g_variant_new_strv ((const char *const *) entry->text, EM_N_ENTRY_TEXT), entry->problem, (gint32) entry->state,
                         entry->n_features, entry->n_tools, entry->has_net, entry->is_partial, entry->currency.code, entry->net_minor,
                         entry->quoted_bench_s, entry->actual_bench_s, entry->folded, stamp->device, stamp->inode, stamp->size,
                         stamp->modified_ns);
}

gboolean
em_register_index_write (const EmRegister *reg, GError **error)
{
  g_autofree char *path = dup_index_path (reg->folder), *folder = g_path_get_dirname (path);
  GVariantBuilder entries;

  g_variant_builder_init (&entries, G_VARIANT_TYPE ("a" ENTRY_TYPE));
  for (guint i = 0; i < reg->entries->len; i++)
    add_entry (&entries, em_register_get_entry (reg, i));
  g_autoptr (GVariant) whole = g_variant_ref_sink (g_variant_new ("(s@aysa" ENTRY_TYPE ")", VERSION, g_variant_new_bytestring (reg->folder),
                                                                  reg->basis, &entries));
  g_autoptr (GBytes) bytes = g_variant_get_data_as_bytes (whole);

  g_mkdir_with_parents (folder, 0700);
  return em_save_bytes (path, bytes, error);
}

/* ---- reading ---- */

/* FALSE where an entry is none that a scan could have made. */
static gboolean
read_texts (EmRegisterEntry *entry, GVariant *texts)
{
  gsize n;
  g_autofree const char **strv = g_variant_get_strv (texts, &n);

  for (gsize i = 0; n == EM_N_ENTRY_TEXT && i < n; i++)
    entry->text[i] = g_strdup (strv[i]);
  return n == EM_N_ENTRY_TEXT;
}

static EmRegisterEntry *
read_entry (GVariant *value)
{
  g_autoptr (GVariant) path = NULL, texts = NULL;
  const char *problem, *currency, *folded;
  gboolean has_net, is_partial;
  gint32 state;
  EmFileStamp stamp = { 0 };
  EmRegisterEntry *entry = em_register_entry_new ("", &stamp);

  g_variant_get (value, "(@ay@asm&siiibb&sxdd&stttx)", &path, &texts, &problem, &state, &entry->n_features, &entry->n_tools, &has_net,
                 &is_partial, &currency, &entry->net_minor, &entry->quoted_bench_s, &entry->actual_bench_s, &folded, &stamp.device,
                 &stamp.inode, &stamp.size, &stamp.modified_ns);
  g_free (entry->path);
  entry->path = g_strdup (g_variant_get_bytestring (path));
  entry->problem = g_strdup (problem);
  entry->folded = g_strdup (folded);
  entry->stamp = stamp;
  entry->has_net = has_net;
  entry->is_partial = is_partial;
  if (read_texts (entry, texts) && state >= 0 && state < EM_N_STATE && entry->path[0] != '\0'
      && (!has_net || em_currency_find (currency, &entry->currency)))
    {
      entry->state = (EmState) state;
      return entry;
    }
  em_register_entry_unref (entry);
  return NULL;
}

static gboolean
fill (EmRegister *reg, GVariant *whole)
{
  g_autoptr (GVariant) folder = NULL, entries = NULL;
  const char *version, *basis;

  g_variant_get (whole, "(&s@ay&s@a" ENTRY_TYPE ")", &version, &folder, &basis, &entries);
  if (strcmp (version, VERSION) != 0 || strcmp (g_variant_get_bytestring (folder), reg->folder) != 0
      || g_variant_n_children (entries) > SIZE_MAX_ENTRIES)
    return FALSE;
  g_free (reg->basis);
  reg->basis = g_strdup (basis);
  for (gsize i = 0; i < g_variant_n_children (entries); i++)
    {
      g_autoptr (GVariant) value = g_variant_get_child_value (entries, i);
      EmRegisterEntry *entry = read_entry (value);
      if (entry == NULL)
        return FALSE;
      g_ptr_array_add (reg->entries, entry);
    }
  return TRUE;
}

EmRegister *
em_register_new (const char *folder)
{
  EmRegister *reg = em_register_new_empty (folder);
  g_autofree char *path = dup_index_path (reg->folder);
  g_autoptr (GBytes) bytes = em_xml_read_file (path, SIZE_MAX_BYTES, NULL);
  g_autoptr (GVariant) whole = NULL;

  if (bytes == NULL)
    return reg;
  whole = g_variant_ref_sink (g_variant_new_from_bytes (G_VARIANT_TYPE ("(saysa" ENTRY_TYPE ")"), bytes, FALSE));
  if (!g_variant_is_normal_form (whole) || !fill (reg, whole))
    {
      em_register_unref (reg);
      return em_register_new_empty (folder);
    }
  em_register_find_superseded (reg);
  return reg;
}
