/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-short-names.h
 * Drop-downs whose button shows only as much of a long name as it has room for; the list shows all.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/** @param names  a drop-down of a GtkStringList */
void dw_short_names_apply (GtkDropDown *names);

G_END_DECLS
