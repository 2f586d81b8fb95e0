/* em-lexicon: what words and short phrases of drawing notes mean, read from data.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-lexicon.h"

#include "em-place.h"
#include "em-slip.h"

#include <gio/gio.h>
#include <libxml/parser.h>
#include <libxml/tree.h>
#include <string.h>

enum { STEM_MIN = 4, HEAD_MIN = 5, ENDING_MAX = 24, FILE_BYTES_MAX = 4 * 1024 * 1024, PHRASE_TOKENS_MAX = 8 };

#define LEXICON_NAMESPACE "urn:estimend:notes"

const char *const em_note_kinds[EM_N_NOTE_KINDS] = {
  [EDGE_NICK] = "edge-nick", [WORN_CORNER] = "worn-corner", [SIDEWALL] = "sidewall", [FACE] = "face", [RIB] = "rib", [BORE] = "bore",
  [SEAT] = "seat", [PIN] = "pin", [DAM] = "dam", [RECESS] = "recess", [GROOVE] = "groove",
};

static const char *const says_names[EM_N_SAYS] = {
  "kind", "verb", "label", "unit", "places", "quantity", "number", "typical", "many", "times", "to", "preposition",
  "glue", "noise", "place", "all", "units", "material", "base", "coating", "finish", "refuse", "sound", "near",
  "thing", "slot", "access", "approximate", "minimum", "maximum", "reference", "tools", "same", "set", "equal", "fit",
  "between", "agent", "machining", "one-of", "talk", "plural",
};

static const char *const role_names[] = {
  "length", "width", "height", "depth", "thickness", "diameter", "radius", "sphere", "angle", "per-side",
  "on-diameter", "build", "worn", "finished", "leg", "gap", "draft", "stock", "clearance", "area", "arc", "small",
  "large", "hardness", "corners", "reference", "legs", "square",
};

static const char *const unit_names[EM_N_UNIT] = {
  "none", "mm", "cm", "m", "um", "tenth-mm", "hundredth-mm", "in", "thou", "ft", "deg", "mm2", "cm2", "in2", "HRC", "HB", "HV", "other",
};

/* A step of a phrase: from a node, by a word, standing apart or glued to the one before. */
typedef struct
{
  guint32  node, atom;
  gboolean is_glued;
} Step;

struct EmLexicon
{
  GHashTable   *atoms;     /* char* → guint, from 1 */
  GHashTable   *steps;     /* Step → guint node */
  GArray       *phrases;   /* EmPhrase by node; node 0 is the start */
  GPtrArray    *senses;    /* EmSense, owned */
  GPtrArray    *spoken;    /* what phrases point to, owned */
  GStringChunk *strings;
  EmSlips      *slips;
  GHashTable   *singles;   /* char* → guint atom of each phrase of one word */
  GHashTable   *heads;     /* the same, of languages that write compounds as one word */
  GPtrArray    *endings;   /* char*: words that differ only in these are alike */
  gboolean      has_compounds; /* of the file being read */
  guint         n_languages;
  EmUnits       units[EM_LANGUAGE_MAX];
  gboolean      has_units[EM_LANGUAGE_MAX];
};

static guint
hash_step (gconstpointer key)
{
  const Step *step = key;

  return (step->node * 2654435761u) ^ (step->atom * 40503u) ^ (guint) step->is_glued;
}

static gboolean
equal_step (gconstpointer a, gconstpointer b)
{
  const Step *p = a, *q = b;

  return p->node == q->node && p->atom == q->atom && p->is_glued == q->is_glued;
}

static int
index_of (const char *const *names, gsize n, const char *name)
{
  for (gsize i = 0; i < n; i++)
    if (g_strcmp0 (names[i], name) == 0)
      return (int) i;
  return -1;
}

/* The text a token is known by: folded letters, digits as written, the folded sign. */
static gboolean
key_of (const char *text, const EmToken *token, char folded[EM_FOLDED_MAX])
{
  if (token->type == EM_TOKEN_SIGN)
    {
      folded[g_unichar_to_utf8 (token->sign, folded)] = '\0';
      return TRUE;
    }
  if (token->type == EM_TOKEN_NUMBER && token->length < EM_FOLDED_MAX)
    {
      for (guint32 i = 0; i < token->length; i++)
        folded[i] = g_ascii_isalpha (text[token->start + i]) ? '0' : text[token->start + i];
      folded[token->length] = '\0';
      return TRUE;
    }
  return token->type == EM_TOKEN_WORD && em_token_fold (text + token->start, token->length, folded);
}

static guint32
add_atom (EmLexicon *lexicon, const char *key)
{
  guint32 atom = GPOINTER_TO_UINT (g_hash_table_lookup (lexicon->atoms, key));

  if (atom == 0)
    {
      atom = g_hash_table_size (lexicon->atoms) + 1;
      g_hash_table_insert (lexicon->atoms, g_string_chunk_insert (lexicon->strings, key), GUINT_TO_POINTER (atom));
    }
  return atom;
}

static guint32
add_step (EmLexicon *lexicon, Step step)
{
  gpointer found = g_hash_table_lookup (lexicon->steps, &step);
  EmPhrase none = { 0 };

  if (found != NULL)
    return GPOINTER_TO_UINT (found);
  g_array_append_val (lexicon->phrases, none);
  g_hash_table_insert (lexicon->steps, g_memdup2 (&step, sizeof step), GUINT_TO_POINTER (lexicon->phrases->len - 1));
  return lexicon->phrases->len - 1;
}

static gboolean
refuse (GError **error, const char *name, int line, const char *format, ...)
{
  va_list arguments;
  g_autofree char *what = NULL;

  va_start (arguments, format);
  what = g_strdup_vprintf (format, arguments);
  va_end (arguments);
  g_set_error (error, G_IO_ERROR, G_IO_ERROR_INVALID_DATA, "%s:%d: %s", name, line, what);
  return FALSE;
}

static void
add_single (EmLexicon *lexicon, const char *key, guint32 atom)
{
  char *kept = g_string_chunk_insert_const (lexicon->strings, key);

  em_slips_add (lexicon->slips, key, atom);
  g_hash_table_insert (lexicon->singles, kept, GUINT_TO_POINTER (atom));
  if (lexicon->has_compounds)
    g_hash_table_insert (lexicon->heads, kept, GUINT_TO_POINTER (atom));
}

/* Adds one phrase of a sense. The same sense twice (another language's file) is kept once. */
static gboolean
add_phrase (EmLexicon *lexicon, const char *words, EmSense *sense)
{
  g_autoptr (GArray) tokens = em_token_split (words, strlen (words));
  guint32 node = 0;
  EmPhrase *phrase;

  /* A full stop at the end may also end the sentence: the grammar sees to it. */
  if (tokens->len > 1 && g_array_index (tokens, EmToken, tokens->len - 1).sign == '.')
    g_array_set_size (tokens, tokens->len - 1);
  if (tokens->len == 0 || tokens->len > PHRASE_TOKENS_MAX)
    return FALSE;
  for (guint i = 0; i < tokens->len; i++)
    {
      const EmToken *token = &g_array_index (tokens, EmToken, i);
      char key[EM_FOLDED_MAX];
      Step step = { node, 0, i > 0 && (token->flags & EM_TOKEN_GLUED) != 0 };

      if (!key_of (words, token, key))
        return FALSE;
      step.atom = add_atom (lexicon, key);
      node = add_step (lexicon, step);
      if (tokens->len == 1 && token->type == EM_TOKEN_WORD)
        add_single (lexicon, key, step.atom);
    }
  phrase = &g_array_index (lexicon->phrases, EmPhrase, node);
  phrase->languages |= 1u << lexicon->n_languages;
  for (guint i = 0; i < phrase->n_senses; i++)
    if (phrase->sense[i]->says == sense->says && phrase->sense[i]->place == sense->place &&
        g_strcmp0 (phrase->sense[i]->value, sense->value) == 0)
      {
        phrase->sense_languages[i] |= 1u << lexicon->n_languages;
        return TRUE;
      }
  if (phrase->n_senses < EM_SENSE_MAX)
    {
      phrase->sense_languages[phrase->n_senses] = 1u << lexicon->n_languages;
      phrase->sense[phrase->n_senses++] = sense;
    }
  return TRUE;
}

/* "edge-nick:6 groove:2" */
static gboolean
read_weights (const char *value, EmSense *sense)
{
  g_auto (GStrv) parts = g_strsplit (value, " ", -1);

  for (char **part = parts; *part != NULL; part++)
    {
      g_auto (GStrv) pair = g_strsplit (*part, ":", 2);
      int kind = index_of (em_note_kinds, EM_N_NOTE_KINDS, pair[0]);
      gint64 weight;

      if (**part == '\0')
        continue;
      if (kind < 0 || pair[1] == NULL || !g_ascii_string_to_signed (pair[1], 10, -20, 20, &weight, NULL))
        return FALSE;
      sense->weight[kind] = (gint8) weight;
    }
  return TRUE;
}

static gboolean
read_roles (const char *value, EmSense *sense)
{
  g_auto (GStrv) parts = g_strsplit (value, " ", -1);

  for (char **part = parts; *part != NULL; part++)
    {
      int role = index_of (role_names, G_N_ELEMENTS (role_names), *part);

      if (role < 0)
        return FALSE;
      sense->roles |= 1u << role;
    }
  return TRUE;
}

static char *
take_attribute (xmlNode *node, const char *name)
{
  xmlChar *value = xmlGetNoNsProp (node, (const xmlChar *) name);
  char *copy = value != NULL ? g_strdup ((const char *) value) : NULL;

  xmlFree (value);
  return copy;
}

static gboolean
read_value (EmLexicon *lexicon, xmlNode *node, EmSense *sense, const char *name, GError **error)
{
  g_autofree char *value = take_attribute (node, "value");
  g_autofree char *kinds = take_attribute (node, "kinds");
  int line = (int) xmlGetLineNo (node), unit;

  sense->value = value != NULL ? g_string_chunk_insert_const (lexicon->strings, value) : NULL;
  if (kinds != NULL && !read_weights (kinds, sense))
    return refuse (error, name, line, "“kinds” is not a list of kind:weight: %s", kinds);
  if (sense->says == EM_SAYS_LABEL && (value == NULL || !read_roles (value, sense)))
    return refuse (error, name, line, "“value” is not a list of labels: %s", value);
  if (sense->says == EM_SAYS_UNIT || sense->says == EM_SAYS_UNITS || sense->says == EM_SAYS_NUMBER)
    {
      g_autofree char *in_number = take_attribute (node, "unit");
      const char *written = sense->says == EM_SAYS_NUMBER ? in_number : value;

      unit = index_of (unit_names, EM_N_UNIT, written != NULL ? written : "none");
      if (unit < 0)
        return refuse (error, name, line, "“%s” is not a unit: %s", sense->says == EM_SAYS_NUMBER ? "unit" : "value", written);
      sense->unit = (EmUnit) unit;
    }
  return TRUE;
}

static gboolean
read_say (EmLexicon *lexicon, xmlNode *node, const char *name, GError **error)
{
  static const char *const places[] = { "either", "before", "after" };
  g_autofree char *is = take_attribute (node, "is");
  g_autofree char *place = take_attribute (node, "place");
  g_autofree char *needs = take_attribute (node, "needs");
  g_autofree char *own = take_attribute (node, "own");
  g_autofree char *set = take_attribute (node, "set");
  int says = index_of (says_names, EM_N_SAYS, is), line = (int) xmlGetLineNo (node), where = 0;
  xmlChar *content;
  EmSense *sense;

  if (says < 0)
    return refuse (error, name, line, "“is” is unknown: %s", is);
  if (place != NULL && (where = index_of (places, G_N_ELEMENTS (places), place)) < 0)
    return refuse (error, name, line, "“place” is unknown: %s", place);
  sense = g_new0 (EmSense, 1);
  g_ptr_array_add (lexicon->senses, sense);
  sense->says = (EmSays) says;
  sense->place = (EmLabelPlace) where;
  sense->needs_material = g_strcmp0 (needs, "material") == 0;
  sense->is_own = g_strcmp0 (own, "yes") == 0;
  if (set != NULL)
    {
      g_auto (GStrv) pair = g_strsplit (set, "=", 2);

      if (pair[0] == NULL || pair[1] == NULL)
        return refuse (error, name, line, "“set” is not field=value: %s", set);
      sense->set_field = g_string_chunk_insert_const (lexicon->strings, pair[0]);
      sense->set_value = g_string_chunk_insert_const (lexicon->strings, pair[1]);
    }
  if (!read_value (lexicon, node, sense, name, error))
    return FALSE;
  content = xmlNodeGetContent (node);
  {
    g_auto (GStrv) phrases = g_strsplit (content != NULL ? (const char *) content : "", "|", -1);

    xmlFree (content);
    if (*phrases == NULL)
      return refuse (error, name, line, "no phrase");
    for (char **phrase = phrases; *phrase != NULL; phrase++)
      {
        g_strdelimit (*phrase, "\n\r\t", ' ');
        g_strstrip (*phrase);
        if (!add_phrase (lexicon, *phrase, sense))
          return refuse (error, name, line, "not a phrase of one to %d words: “%s”", PHRASE_TOKENS_MAX, *phrase);
      }
  }
  return TRUE;
}

static gboolean
read_root (EmLexicon *lexicon, xmlNode *root, const char *name, GError **error)
{
  g_autofree char *units = NULL, *endings = NULL, *compounds = NULL;

  if (root == NULL || strcmp ((const char *) root->name, "lexicon") != 0 || root->ns == NULL ||
      strcmp ((const char *) root->ns->href, LEXICON_NAMESPACE) != 0)
    return refuse (error, name, 1, "not a lexicon of notes");
  if (lexicon->n_languages == EM_LANGUAGE_MAX)
    return refuse (error, name, 1, "more than %d lexicons", EM_LANGUAGE_MAX);
  endings = take_attribute (root, "endings");
  compounds = take_attribute (root, "compounds");
  lexicon->has_compounds = g_strcmp0 (compounds, "yes") == 0;
  if (endings != NULL)
    {
      g_auto (GStrv) each = g_strsplit (endings, " ", -1);

      for (char **ending = each; *ending != NULL; ending++)
        if (**ending != '\0' && lexicon->endings->len < ENDING_MAX)
          g_ptr_array_add (lexicon->endings, g_string_chunk_insert_const (lexicon->strings, *ending));
    }
  units = take_attribute (root, "units");
  lexicon->has_units[lexicon->n_languages] = units != NULL;
  lexicon->units[lexicon->n_languages] = g_strcmp0 (units, "in") == 0 ? EM_UNITS_INCH : EM_UNITS_METRIC;
  for (xmlNode *node = root->children; node != NULL; node = node->next)
    {
      if (node->type != XML_ELEMENT_NODE)
        continue;
      if (strcmp ((const char *) node->name, "say") != 0)
        return refuse (error, name, (int) xmlGetLineNo (node), "unknown element: %s", node->name);
      if (!read_say (lexicon, node, name, error))
        return FALSE;
    }
  lexicon->n_languages++;
  return TRUE;
}

/* What the phrase says in notes in the language of that index; of none for any other. */
static const EmPhrase *
speak (EmLexicon *lexicon, const EmPhrase *phrase, guint language)
{
  EmPhrase *spoken = g_new0 (EmPhrase, 1);
  guint32 bit = 1u << language;
  gboolean has_own = FALSE;

  g_ptr_array_add (lexicon->spoken, spoken);
  for (guint i = 0; i < phrase->n_senses; i++)
    has_own |= phrase->sense[i]->is_own && (phrase->sense_languages[i] & bit) != 0;
  spoken->languages = has_own ? bit : phrase->languages;
  for (guint i = 0; i < phrase->n_senses; i++)
    {
      gboolean is_here = (phrase->sense_languages[i] & bit) != 0;

      if (has_own ? !is_here : phrase->sense[i]->is_own)
        continue;
      spoken->sense[spoken->n_senses++] = phrase->sense[i];
    }
  return spoken;
}

/* Once all languages are read: words that are spelled alike in two of them and mean different things. */
static void
tell_languages_apart (EmLexicon *lexicon)
{
  for (guint i = 1; i < lexicon->phrases->len; i++)
    {
      EmPhrase *phrase = &g_array_index (lexicon->phrases, EmPhrase, i);
      gboolean has_own = FALSE;

      for (guint k = 0; k < phrase->n_senses; k++)
        has_own |= phrase->sense[k]->is_own;
      if (!has_own)
        continue;
      phrase->spoken = g_new0 (const EmPhrase *, lexicon->n_languages + 1);
      g_ptr_array_add (lexicon->spoken, phrase->spoken);
      for (guint language = 0; language <= lexicon->n_languages; language++)
        phrase->spoken[language] = speak (lexicon, phrase, language);
    }
}

/* No DTD, no entities, no network; a parser context of its own. */
static gboolean
read_xml (EmLexicon *lexicon, const char *xml, gsize length, const char *name, GError **error)
{
  xmlParserCtxt *context = xmlNewParserCtxt ();
  xmlDoc *doc = xmlCtxtReadMemory (context, xml, (int) length, name, NULL, XML_PARSE_NONET | XML_PARSE_NOERROR |
                                   XML_PARSE_NOWARNING);
  gboolean is_good;

  if (doc == NULL)
    is_good = refuse (error, name, context->lastError.line, "%s",
                      context->lastError.message != NULL ? g_strchomp (context->lastError.message) : "not XML");
  else if (doc->intSubset != NULL)
    is_good = refuse (error, name, 1, "a lexicon has no document type");
  else
    is_good = read_root (lexicon, xmlDocGetRootElement (doc), name, error);
  xmlFreeDoc (doc);
  xmlFreeParserCtxt (context);
  return is_good;
}

static EmLexicon *
new_lexicon (void)
{
  EmLexicon *lexicon = g_new0 (EmLexicon, 1);
  EmPhrase none = { 0 };

  lexicon->atoms = g_hash_table_new (g_str_hash, g_str_equal);
  lexicon->steps = g_hash_table_new_full (hash_step, equal_step, g_free, NULL);
  lexicon->phrases = g_array_new (FALSE, TRUE, sizeof (EmPhrase));
  lexicon->senses = g_ptr_array_new_with_free_func (g_free);
  lexicon->spoken = g_ptr_array_new_with_free_func (g_free);
  lexicon->strings = g_string_chunk_new (4096);
  lexicon->slips = em_slips_new ();
  lexicon->singles = g_hash_table_new (g_str_hash, g_str_equal);
  lexicon->heads = g_hash_table_new (g_str_hash, g_str_equal);
  lexicon->endings = g_ptr_array_new ();
  g_array_append_val (lexicon->phrases, none);
  return lexicon;
}

void
em_lexicon_free (EmLexicon *lexicon)
{
  if (lexicon == NULL)
    return;
  g_hash_table_unref (lexicon->atoms);
  g_hash_table_unref (lexicon->steps);
  g_array_unref (lexicon->phrases);
  g_ptr_array_unref (lexicon->senses);
  g_ptr_array_unref (lexicon->spoken);
  g_string_chunk_free (lexicon->strings);
  em_slips_free (lexicon->slips);
  g_hash_table_unref (lexicon->singles);
  g_hash_table_unref (lexicon->heads);
  g_ptr_array_unref (lexicon->endings);
  g_free (lexicon);
}

EmLexicon *
em_lexicon_parse (const char *const *xml, GError **error)
{
  g_autoptr (EmLexicon) lexicon = new_lexicon ();

  for (; *xml != NULL; xml++)
    if (!read_xml (lexicon, *xml, strlen (*xml), "lexicon", error))
      return NULL;
  tell_languages_apart (lexicon);
  return g_steal_pointer (&lexicon);
}

EmLexicon *
em_lexicon_load (const char *const *paths, GError **error)
{
  g_autoptr (EmLexicon) lexicon = new_lexicon ();

  for (; *paths != NULL; paths++)
    {
      g_autofree char *xml = NULL;
      gsize length;

      if (!g_file_get_contents (*paths, &xml, &length, error))
        return NULL;
      if (length > FILE_BYTES_MAX)
        {
          refuse (error, *paths, 1, "more than %d bytes", FILE_BYTES_MAX);
          return NULL;
        }
      if (!read_xml (lexicon, xml, length, *paths, error))
        return NULL;
    }
  tell_languages_apart (lexicon);
  return g_steal_pointer (&lexicon);
}

EmLexicon *
em_lexicon_load_default (GError **error)
{
  g_autofree char *en = em_place_data_file ("notes-en.xml");
  g_autofree char *de = em_place_data_file ("notes-de.xml");
  g_autofree char *es = em_place_data_file ("notes-es.xml");
  g_autofree char *fr = em_place_data_file ("notes-fr.xml");
  const char *paths[] = { en, de, es, fr, NULL };

  return em_lexicon_load (paths, error);
}

/* "polierter" for "poliert", "gastadas" for "gastado": the word with another ending, or none. */
static guint32
find_inflected (const EmLexicon *lexicon, const char *key)
{
  gsize length = strlen (key);

  for (guint i = 0; i < lexicon->endings->len; i++)
    {
      const char *ending = lexicon->endings->pdata[i];
      gsize n = strlen (ending);
      char other[EM_FOLDED_MAX + 8];
      gpointer found;

      if (length < n + STEM_MIN || !g_str_has_suffix (key, ending))
        continue;
      g_snprintf (other, sizeof other, "%.*s", (int) (length - n), key);
      if ((found = g_hash_table_lookup (lexicon->singles, other)) != NULL)
        return GPOINTER_TO_UINT (found);
      for (guint k = 0; k < lexicon->endings->len; k++)
        {
          g_snprintf (other, sizeof other, "%.*s%s", (int) (length - n), key, (const char *) lexicon->endings->pdata[k]);
          if ((found = g_hash_table_lookup (lexicon->singles, other)) != NULL)
            return GPOINTER_TO_UINT (found);
        }
    }
  return 0;
}

/* "Formtrennkante" is a "Trennkante": the longest known word that it ends with. */
static guint32
find_head (const EmLexicon *lexicon, const char *key)
{
  gsize length = strlen (key);

  for (gsize at = 2; at + HEAD_MIN <= length; at++)
    {
      gpointer found = g_hash_table_lookup (lexicon->heads, key + at);

      if (found != NULL)
        return GPOINTER_TO_UINT (found);
    }
  return 0;
}

/* "NlCK": the only small letters among capitals are an l, which was read for an I. */
static guint32
find_misread (const EmLexicon *lexicon, const char *text, const EmToken *token)
{
  char key[EM_FOLDED_MAX];
  gboolean has_l = FALSE, has_capital = FALSE;

  if (token->length >= EM_FOLDED_MAX)
    return 0;
  for (guint32 i = 0; i < token->length; i++)
    {
      char c = text[token->start + i];

      if (!g_ascii_isupper (c) && c != 'l')
        return 0;
      has_l |= c == 'l';
      has_capital |= c != 'l';
      key[i] = c == 'l' ? 'i' : g_ascii_tolower (c);
    }
  key[token->length] = '\0';
  return has_l && has_capital ? GPOINTER_TO_UINT (g_hash_table_lookup (lexicon->atoms, key)) : 0;
}

/* "rib's 1 mm thick", "the die's lip": the word without it. */
static guint32
find_possessive (const EmLexicon *lexicon, const char *key)
{
  gsize length = strlen (key);
  char stem[EM_FOLDED_MAX];

  if (length < 4 || strcmp (key + length - 2, "'s") != 0)
    return 0;
  g_snprintf (stem, sizeof stem, "%.*s", (int) length - 2, key);
  return GPOINTER_TO_UINT (g_hash_table_lookup (lexicon->singles, stem));
}

static void
name_unknown (const EmLexicon *lexicon, const char *text, const char *key, EmToken *token)
{
  token->atom = find_misread (lexicon, text, token);
  token->flags |= token->atom != 0 ? EM_TOKEN_SLIP : 0;
  if (token->atom != 0)
    return;
  token->atom = find_possessive (lexicon, key);
  if (token->atom == 0)
    token->atom = find_inflected (lexicon, key);
  if (token->atom != 0)
    return;
  token->atom = em_slips_find (lexicon->slips, key);
  token->flags |= token->atom != 0 ? EM_TOKEN_SLIP : 0;
  if (token->atom != 0)
    return;
  token->atom = find_head (lexicon, key);
  token->flags |= token->atom != 0 ? EM_TOKEN_COMPOUND : 0;
}

void
em_lexicon_name (const EmLexicon *lexicon, const char *text, GArray *tokens)
{
  for (guint i = 0; i < tokens->len; i++)
    {
      EmToken *token = &g_array_index (tokens, EmToken, i);
      char key[EM_FOLDED_MAX];

      if (!key_of (text, token, key))
        continue;
      token->atom = GPOINTER_TO_UINT (g_hash_table_lookup (lexicon->atoms, key));
      if (token->type != EM_TOKEN_WORD)
        continue;
      if (token->atom == 0)
        name_unknown (lexicon, text, key, token);
      else
        token->alike = find_inflected (lexicon, key);
    }
}

static const EmPhrase *
phrase_at (const EmLexicon *lexicon, int language, guint32 node)
{
  const EmPhrase *phrase = &g_array_index (lexicon->phrases, EmPhrase, node);

  if (phrase->spoken != NULL)
    phrase = phrase->spoken[language >= 0 ? (guint) language : lexicon->n_languages];
  return node != 0 && phrase->n_senses > 0 ? phrase : NULL;
}

/* Follows phrases from node; a blank in a phrase is a blank, nothing or one hyphen in the text. */
static const EmPhrase *
follow (const EmLexicon *lexicon, int language, guint32 node, const EmToken *tokens, guint at, guint n, guint *out_n)
{
  const EmPhrase *best = phrase_at (lexicon, language, node);
  guint skip = 0, n_best;

  if (best != NULL)
    *out_n = at;
  if (at > PHRASE_TOKENS_MAX * 2)
    return best;
  if (node != 0 && at + 1 < n && tokens[at].type == EM_TOKEN_SIGN && tokens[at].sign == '-' &&
      (tokens[at].flags & EM_TOKEN_GLUED) != 0 && (tokens[at + 1].flags & EM_TOKEN_GLUED) != 0)
    skip = 1;
  for (int is_glued = 0; is_glued < 2; is_glued++)
    for (guint hyphen = 0; hyphen <= skip; hyphen++)
      {
        guint next = at + hyphen;
        Step step = { node, 0, is_glued };
        gpointer to;
        const EmPhrase *longer;

        if (next >= n || tokens[next].atom == 0 || tokens[next].type == EM_TOKEN_LINE)
          continue;
        if (is_glued && (hyphen > 0 || node == 0 || (tokens[next].flags & EM_TOKEN_GLUED) == 0))
          continue;
        step.atom = tokens[next].atom;
        to = g_hash_table_lookup (lexicon->steps, &step);
        /* "stripper rings" for "stripper ring" */
        if (to == NULL && node != 0 && tokens[next].alike != 0)
          {
            step.atom = tokens[next].alike;
            to = g_hash_table_lookup (lexicon->steps, &step);
          }
        if (to == NULL)
          continue;
        longer = follow (lexicon, language, GPOINTER_TO_UINT (to), tokens, next + 1, n, &n_best);
        if (longer != NULL && (best == NULL || n_best > *out_n))
          {
            best = longer;
            *out_n = n_best;
          }
      }
  return best;
}

const EmPhrase *
em_lexicon_match (const EmLexicon *lexicon, int language, const EmToken *tokens, guint n, guint *out_n_tokens)
{
  const EmPhrase *phrase;
  EmToken alike;

  *out_n_tokens = 0;
  phrase = follow (lexicon, language, 0, tokens, 0, n, out_n_tokens);
  if (phrase != NULL || n == 0 || tokens[0].alike == 0)
    return phrase;
  alike = tokens[0];
  alike.atom = alike.alike;
  return follow (lexicon, language, 0, &alike, 0, 1, out_n_tokens);
}

int
em_phrase_language (const EmPhrase *phrase)
{
  if (phrase == NULL || phrase->languages == 0 || (phrase->languages & (phrase->languages - 1)) != 0 ||
      em_phrase_find (phrase, EM_SAYS_UNIT) != NULL || em_phrase_find (phrase, EM_SAYS_BASE) != NULL ||
      em_phrase_find (phrase, EM_SAYS_TIMES) != NULL)
    return -1;
  return g_bit_nth_lsf (phrase->languages, -1);
}

int
em_lexicon_language (const EmLexicon *lexicon, const EmToken *tokens, guint n)
{
  guint n_words[EM_LANGUAGE_MAX] = { 0 }, n_all = 0, most = 0;

  for (guint i = 0; i < n; i++)
    {
      Step step = { 0, tokens[i].type == EM_TOKEN_WORD ? tokens[i].atom : 0, FALSE };
      gpointer to = step.atom != 0 ? g_hash_table_lookup (lexicon->steps, &step) : NULL;
      int language = to != NULL ? em_phrase_language (&g_array_index (lexicon->phrases, EmPhrase, GPOINTER_TO_UINT (to))) : -1;

      if (language < 0)
        continue;
      n_all++;
      n_words[language]++;
    }
  for (guint i = 0; i < lexicon->n_languages; i++)
    most = n_words[i] > n_words[most] ? i : most;
  return n_all > 0 && n_words[most] * 3 >= n_all * 2 ? (int) most : -1;
}

gboolean
em_lexicon_units (const EmLexicon *lexicon, const guint n_words[EM_LANGUAGE_MAX], EmUnits *out_units)
{
  guint most = 0, n_all = 0;

  for (guint i = 0; i < lexicon->n_languages; i++)
    {
      n_all += n_words[i];
      most = n_words[i] > n_words[most] ? i : most;
    }
  /* Notes in one language borrow words of another. */
  if (n_all == 0 || n_words[most] * 3 < n_all * 2 || !lexicon->has_units[most])
    return FALSE;
  *out_units = lexicon->units[most];
  return TRUE;
}

const EmSense *
em_phrase_find (const EmPhrase *phrase, EmSays says)
{
  if (phrase != NULL)
    for (guint i = 0; i < phrase->n_senses; i++)
      if (phrase->sense[i]->says == says)
        return phrase->sense[i];
  return NULL;
}

const char *
em_thing_near (const EmSense *thing)
{
  return strcmp (thing->value, "engraving") == 0 ? "texture" : thing->value;
}

const char *
em_thing_refused (const EmSense *thing)
{
  return strcmp (thing->value, "hole") == 0 || strcmp (thing->value, "engraving") == 0 ? NULL : thing->value;
}

gboolean
em_phrase_tells (const EmPhrase *phrase, EmSays says, const char *value)
{
  for (guint i = 0; phrase != NULL && i < phrase->n_senses; i++)
    if (phrase->sense[i]->says == says && g_strcmp0 (phrase->sense[i]->value, value) == 0)
      return TRUE;
  return FALSE;
}
