/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "project/dw-xml-guard.h"

#include <libxml/globals.h>
#include <libxml/parser.h>

static gpointer
initialise (G_GNUC_UNUSED gpointer data)
{
  xmlInitParser ();
  return (gpointer)newlocale (LC_ALL_MASK, "C", (locale_t)0);
}

static locale_t
c_locale (void)
{
  static GOnce once = G_ONCE_INIT;
  return (locale_t)g_once (&once, initialise, NULL);
}

static void
drop_structured (G_GNUC_UNUSED void *data, G_GNUC_UNUSED dw_xml_error *error)
{
}

static void drop_generic (void *data, const char *format, ...) G_GNUC_PRINTF (2, 3);

static void
drop_generic (G_GNUC_UNUSED void *data, G_GNUC_UNUSED const char *format, ...)
{
}

void
dw_xml_guard_enter (dw_xml_guard *guard)
{
  const locale_t c = c_locale ();
  guard->structured = xmlStructuredError;
  guard->structured_data = xmlStructuredErrorContext;
  guard->generic = xmlGenericError;
  guard->generic_data = xmlGenericErrorContext;
  xmlSetStructuredErrorFunc (NULL, drop_structured);
  xmlSetGenericErrorFunc (NULL, drop_generic);
  guard->locale = uselocale (c);
}

void
dw_xml_guard_leave (dw_xml_guard *guard)
{
  uselocale (guard->locale);
  xmlSetGenericErrorFunc (guard->generic_data, guard->generic);
  xmlSetStructuredErrorFunc (guard->structured_data, guard->structured);
}
