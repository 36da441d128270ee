// SPDX-License-Identifier: GPL-3.0-or-later
/* flow.h: blocks that run down a page and on to the next: headings, paragraphs, tick boxes,
 * tables, pictures. Heights are known before anything is drawn, so the number of pages is too.
 */
#pragma once
#include "packet/pen.h"

typedef struct SwFlow SwFlow;

typedef void (*SwBlockDraw) (const SwPen *pen, const SwBox *box, gpointer data);

typedef struct {
  double height;
  double gap;    /* above it, not at the head of a page */
  gboolean keep; /* on one page with the next block */
  SwBlockDraw draw;
  gpointer data;       /* owned */
  GDestroyNotify free; /* nullable */
} SwBlock;

/* The pen is borrowed while blocks are added, and not needed after. */
SwFlow *sw_flow_new (const SwPen *pen, double width, double height);
void sw_flow_free (SwFlow *flow);

const SwPen *sw_flow_pen (const SwFlow *flow);
double sw_flow_width (const SwFlow *flow);

/* Any block. With `head` (nullable, a block that was added before): that one again where this
 * one begins a page. Returns: (transfer none): the block as kept. */
const SwBlock *sw_flow_add (SwFlow *flow, const SwBlock *block, const SwBlock *head);

void sw_flow_title (SwFlow *flow, const char *text);
void sw_flow_heading (SwFlow *flow, const char *text);
void sw_flow_text (SwFlow *flow, const char *text);
/* With a box to tick. */
void sw_flow_tick (SwFlow *flow, const char *text);
/* A sign (octagon, triangle, circle), a bold word, a sentence. */
void sw_flow_signed (SwFlow *flow, SwLevel level, const char *word, const char *text);
/* The same with the level's word, and `more` (nullable) below. */
void sw_flow_finding (SwFlow *flow, SwLevel level, const char *text, const char *more);
/* Framed, a triangle before the bold `word`: what can hurt. */
void sw_flow_caution (SwFlow *flow, const char *word, const char *text);
void sw_flow_gap (SwFlow *flow, double height);

/* Breaks the pages; add nothing after it. Returns: how many, at least 1. */
int sw_flow_pages (SwFlow *flow);

/* All of the first page's height in use. */
double sw_flow_height (SwFlow *flow);

/* Page 0 … of it with the upper left corner at x, y. */
void sw_flow_draw (const SwFlow *flow, const SwPen *pen, double x, double y, int page);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwFlow, sw_flow_free)
