/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-xml-guard.h
 * Keeps libxml2 quiet and independent of the locale for the length of a call.
 *
 * What it changes belongs to the calling thread only and is put back.
 */
#pragma once

#include <glib.h>
#include <libxml/xmlerror.h>
#include <libxml/xmlversion.h>
#include <locale.h>

G_BEGIN_DECLS

/* The library made the argument of error handlers const in 2.12. */
#if LIBXML_VERSION >= 21200
typedef const xmlError dw_xml_error;
#else
typedef xmlError dw_xml_error;
#endif

/** What to put back. */
typedef struct
{
  xmlStructuredErrorFunc structured;
  void *structured_data;
  xmlGenericErrorFunc generic;
  void *generic_data;
  locale_t locale;
} dw_xml_guard;

/**
 * Before a run of calls to libxml2; initialises it once for the process.
 *
 * Messages that no context catches are dropped instead of printed. Numbers in
 * the schema are read by sscanf(): the thread's locale is "C" meanwhile.
 */
void dw_xml_guard_enter (dw_xml_guard *guard);

/** After it, in the same thread. */
void dw_xml_guard_leave (dw_xml_guard *guard);

G_END_DECLS
