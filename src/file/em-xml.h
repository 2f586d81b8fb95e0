/* em-xml: reading and writing the XML of our own files.
 *
 * The reader streams and trusts nothing: no DOCTYPE (so no entities), no network, UTF-8
 * alone, no NUL, limits on size, depth, texts and counts. It fails once and for good: after
 * the first error every getter gives its fallback and em_xml_child FALSE, so that a
 * reading function asks once, at its end. The error names file, line and field.
 *
 * The writer gives the same bytes for the same calls, whatever the locale: two blanks a
 * level, one element a line.
 *
 *   reader = em_xml_reader_new (bytes, name, "urn:…", "shelf", NULL, error);   on the root
 *   em_xml_version (reader, 1, 0);
 *   em_xml_begin (reader);
 *   while (em_xml_child (reader))
 *     if (em_xml_is (reader, "box"))
 *       size = em_xml_real (reader, "size", NAN, 0.0, 10.0);
 *     else
 *       em_xml_refuse_element (reader);
 *   return em_xml_reader_finish (reader, error);
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-quote-file.h"

G_BEGIN_DECLS

/* ---- reading ---- */

typedef struct _EmXmlReader EmXmlReader;

typedef struct
{
  gsize size_max;        /* bytes of the file */
  guint depth_max;       /* of elements, the root being 1 */
  gsize text_max;        /* bytes of one text */
  gsize attribute_max;   /* bytes of one attribute */
  guint count_max;       /* elements */
} EmXmlLimits;

extern const EmXmlLimits em_xml_limits;   /* what NULL means: 16 MiB, fit for books and catalogues */

/* A regular file of at most size_max bytes, whole. Never waits on a pipe or a device. */
GBytes      *em_xml_read_file   (const char *path, gsize size_max, GError **error);

/* On the root, which must have this name in this namespace; else NULL and EM_FILE_ERROR_NOT_OURS. name is the file's, for errors. */
EmXmlReader *em_xml_reader_new  (GBytes *bytes, const char *name, const char *ns, const char *root,
                                 const EmXmlLimits *limits, GError **error);
void         em_xml_reader_free (EmXmlReader *reader);
/* Reads to the end of the document; FALSE and the first error, if any. Does not free. */
gboolean     em_xml_reader_finish (EmXmlReader *reader, GError **error);
gboolean     em_xml_is_good     (EmXmlReader *reader);
int          em_xml_line        (EmXmlReader *reader);   /* of the present element */

/* Attribute "version" of the present element, "major.minor". A newer major is refused; a newer minor is noted. */
void         em_xml_version     (EmXmlReader *reader, int major_known, int minor_known);
int          em_xml_major       (EmXmlReader *reader);
int          em_xml_minor       (EmXmlReader *reader);
gboolean     em_xml_is_newer    (EmXmlReader *reader);

/* A document inside another, whose root is the present element. Between the two calls its name space and its version (em_xml_version) count;
 * those around it are in *out_around meanwhile. */
typedef struct { gconstpointer ns, root_ns; int major, minor; gboolean is_newer; } EmXmlAround;
void         em_xml_enter       (EmXmlReader *reader, const char *ns, EmXmlAround *out_around);
void         em_xml_come_back   (EmXmlReader *reader, const EmXmlAround *around);

/* Into the present element, and on to its next child element; FALSE after the last. An element that was not begun
 * has to be empty. Attributes nobody asked for are refused when the reader moves on. */
void         em_xml_begin       (EmXmlReader *reader);
gboolean     em_xml_child       (EmXmlReader *reader);
gboolean     em_xml_is          (EmXmlReader *reader, const char *name);
const char  *em_xml_name        (EmXmlReader *reader);   /* local name of the present element */
/* The text of the present element, which holds nothing else; never NULL; the reader's, until it is asked for another. */
const char  *em_xml_text        (EmXmlReader *reader);
/* The present element whole, as XML that stands alone; g_free. NULL after an error. bytes_max: of the parser's memory, about, for all
 * that is taken and kept of one file. */
enum { EM_XML_PART_MAX = 32 << 20 };
char        *em_xml_take_element (EmXmlReader *reader, gsize bytes_max);

/* Attributes of the present element, each demanding the whole of its text. Absent gives fallback. Borrowed texts last
 * until the reader moves. low and high are allowed. */
gboolean     em_xml_has         (EmXmlReader *reader, const char *name);
gboolean     em_xml_has_unread  (EmXmlReader *reader);   /* an attribute nobody asked for so far */
gboolean     em_xml_need        (EmXmlReader *reader, const char *name);   /* refuses the element without it */
const char  *em_xml_attribute   (EmXmlReader *reader, const char *name);   /* NULL when absent */
const char  *em_xml_needed      (EmXmlReader *reader, const char *name);   /* both: NULL after the refusal */
double       em_xml_real        (EmXmlReader *reader, const char *name, double fallback, double low, double high);
gint64       em_xml_integer     (EmXmlReader *reader, const char *name, gint64 fallback, gint64 low, gint64 high);
gboolean     em_xml_boolean     (EmXmlReader *reader, const char *name, gboolean fallback);   /* "yes", "no" */
/* Index into ids. In a file of a newer minor version a word not among them is left unread, so that it can be kept. */
int          em_xml_choice      (EmXmlReader *reader, const char *name, const char *const *ids, int n_ids, int fallback);

/* Fails with “file, line, field: sentence”. field NULL: the element's name. */
void         em_xml_refuse      (EmXmlReader *reader, EmFileError code, const char *field, const char *format, ...) G_GNUC_PRINTF (4, 5);
void         em_xml_refuse_element (EmXmlReader *reader);   /* is not known here */
void         em_xml_refuse_fault (EmXmlReader *reader, const EmFault *fault);   /* what a check of the core found */
/* Takes over another reader's or function's error. */
void         em_xml_refuse_take (EmXmlReader *reader, GError *error);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (EmXmlReader, em_xml_reader_free)

/* ---- keeping what a newer minor version wrote ----
 *
 * What is not known goes as XML into a text that is saved with the record it was found in, each piece with the place it
 * belongs to, and back there when written. */

typedef struct
{
  GString *text;     /* NULL while empty */
  guint    n_kept;
} EmXmlKept;

/* Both refuse when the file is not of a newer minor version. at: where in its record, "" for the record itself. */
void         em_xml_keep_attributes (EmXmlReader *reader, EmXmlKept *kept, const char *at);   /* those not asked for */
void         em_xml_keep_element    (EmXmlReader *reader, EmXmlKept *kept, const char *at);
/* All that the present element holds, of an element that in this version holds nothing. */
void         em_xml_keep_children   (EmXmlReader *reader, EmXmlKept *kept, const char *at);
void         em_xml_kept_clear      (EmXmlKept *kept);

/* ---- writing ---- */

typedef struct _EmXmlWriter EmXmlWriter;

EmXmlWriter *em_xml_writer_new   (void);
void         em_xml_writer_free  (EmXmlWriter *writer);
/* Consumes the writer. NULL and EM_FILE_ERROR_WRITE if some text was no UTF-8, or memory ran out. */
GBytes      *em_xml_writer_finish (EmXmlWriter *writer, GError **error);

void         em_xml_open         (EmXmlWriter *writer, const char *name);
void         em_xml_close        (EmXmlWriter *writer);
/* Attributes of the element just opened. NULL texts and NaN are left out. */
void         em_xml_put          (EmXmlWriter *writer, const char *name, const char *text);
void         em_xml_put_real     (EmXmlWriter *writer, const char *name, double value);
void         em_xml_put_integer  (EmXmlWriter *writer, const char *name, gint64 value);
void         em_xml_put_boolean  (EmXmlWriter *writer, const char *name, gboolean value);
/* <name>text</name>; nothing for NULL. */
void         em_xml_put_text     (EmXmlWriter *writer, const char *name, const char *text);
/* The text of the element just opened, which then holds nothing else. */
void         em_xml_put_content  (EmXmlWriter *writer, const char *text);
/* XML of our own making, on lines of its own; an XML declaration in front is left away. */
void         em_xml_put_xml      (EmXmlWriter *writer, const char *xml, gsize length);
/* What was kept at this place: attributes the element just opened has not been given, then elements inside it. The first
 * does both, for an element that holds nothing else or whose own children come after. kept stays as it is until the writer is
 * finished. */
void         em_xml_put_kept     (EmXmlWriter *writer, const char *kept, const char *at);
void         em_xml_put_kept_attributes (EmXmlWriter *writer, const char *kept, const char *at);
void         em_xml_put_kept_elements   (EmXmlWriter *writer, const char *kept, const char *at);
/* As em_xml_put_text, with the attributes that were kept at this place. */
void         em_xml_put_text_kept       (EmXmlWriter *writer, const char *name, const char *text, const char *kept, const char *at);
/* Highest minor version any of kept came from; 0 for NULL. Where it can't be told, the writer will not finish. */
int          em_xml_kept_minor   (EmXmlWriter *writer, const char *kept);

G_END_DECLS
