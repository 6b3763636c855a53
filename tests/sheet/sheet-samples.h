/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file sheet-samples.h
 * What the tests of exports share: a project and a page of it.
 */
#pragma once

#include "sheet/dw-chart-page.h"
#include "test-support.h"

/** The demo of a rough club final; caller frees. */
dw_project *sample_project (void);

/** Options for its setups baseline and trial-1, letters of DejaVu Sans. */
dw_chart_page_options sample_options (const dw_project *project);
