/* SPDX-License-Identifier: GPL-3.0-or-later */
/* dampwright [FILE...]: the window. */
#include <glib/gi18n.h>
#include <locale.h>

#include "window/dw-application.h"

int
main (int argc, char **argv)
{
  /* an uninstalled program finds its translations where the tests put them */
  const char *folder = g_getenv ("DAMPWRIGHT_LOCALE_DIR");

  setlocale (LC_ALL, "");
  bindtextdomain (GETTEXT_PACKAGE, folder != NULL ? folder : DW_LOCALE_DIR);
  bind_textdomain_codeset (GETTEXT_PACKAGE, "UTF-8");
  textdomain (GETTEXT_PACKAGE);
  g_set_application_name ("Dampwright");

  g_autoptr (DwApplication) app = dw_application_new (G_APPLICATION_DEFAULT_FLAGS);
  return g_application_run (G_APPLICATION (app), argc, argv);
}
