// SPDX-License-Identifier: GPL-3.0-or-later
/* sheet-pages.h: what stands on each build sheet. Sheets of text and tables fill a flow, which
 * breaks them into pages; drawings draw into a box.
 */
#pragma once
#include "packet/flow.h"

void sw_cover_fill (SwFlow *flow);
void sw_findings_fill (SwFlow *flow);
void sw_ring_marks_fill (SwFlow *flow);
void sw_as_built_fill (SwFlow *flow);
void sw_ring_fill (SwFlow *flow);
gboolean sw_ring_sheet_applies (const SwSolution *solution);
void sw_fits_fill (SwFlow *flow);
void sw_foot_fill (SwFlow *flow);

/* The sleeve's section, for a block of any flow; numbers as on the sheet of the fits. */
void sw_sleeve_section_block (const SwPen *pen, const SwBox *box, gpointer data);

void sw_crown_holes_fill (SwFlow *flow);
void sw_parts_fill (SwFlow *flow);
void sw_cuts_fill (SwFlow *flow);
void sw_power_fill (SwFlow *flow);
void sw_ports_fill (SwFlow *flow);
void sw_driver_box_fill (SwFlow *flow);
void sw_steps_fill (SwFlow *flow);
void sw_first_strip_fill (SwFlow *flow);
void sw_bench_log_fill (SwFlow *flow);
void sw_as_built_form_fill (SwFlow *flow);
void sw_raising_fill (SwFlow *flow);
void sw_power_on_fill (SwFlow *flow);
void sw_weekly_fill (SwFlow *flow);
void sw_take_down_fill (SwFlow *flow);
void sw_wind_fill (SwFlow *flow);
void sw_working_fill (SwFlow *flow);

/* The scale the drawing has in that box, `label` as "1:20". Returns: points a metre. */
void sw_side_sheet_draw (const SwPen *pen, const SwBox *box);
double sw_side_sheet_scale (const SwPen *pen, const SwBox *box, char label[16]);
void sw_top_sheet_draw (const SwPen *pen, const SwBox *box);
double sw_top_sheet_scale (const SwPen *pen, const SwBox *box, char label[16]);
