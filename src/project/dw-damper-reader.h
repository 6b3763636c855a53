/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-damper-reader.h
 * Reading the elements that make up a damper. One thread at a time.
 */
#pragma once

#include "model/dw-damper.h"
#include "project/dw-element-reader.h"
#include "project/dw-parts.h"

G_BEGIN_DECLS

/**
 * Read the content of a <damper>: its parts by the table, then how they fit by dw_damper_check().
 *
 * @param node    its axle is left to the caller
 * @param damper  of use only when nothing was reported as an error
 */
void dw_damper_read (const dw_element_reader *reader, xmlNode *node, dw_damper *damper);

/** Read a <piston> of the parts box. @param spare  zeroed; its name is set, the caller frees it */
void dw_spare_piston_read (const dw_element_reader *reader, xmlNode *node, dw_spare_piston *spare);

/** Read a <shim> of a stack or of the parts box. */
void dw_shim_read (const dw_element_reader *reader, xmlNode *node, dw_shim *shim);

/** Read an <oil> of the parts box. */
void dw_bottle_read (const dw_element_reader *reader, xmlNode *node, dw_bottle *bottle);

G_END_DECLS
