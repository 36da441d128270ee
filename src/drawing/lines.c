// SPDX-License-Identifier: GPL-3.0-or-later
/* The largest share that a line has of each pixel is kept in a mask, a byte a pixel: row by row
 * for steep lines, column by column for flat ones. The mask is laid on the image once.
 */
#include "drawing/lines.h"

#include "drawing/image-bytes.h"

#include <math.h>
#include <string.h>

/* A line that runs along the first axis: `along` counts its pixels there, `across` lies over.
 */
typedef struct {
  double along1, across1, along2, across2;
  double slope, half; /* across a pixel along; half its width across */
  gboolean flat;      /* the first axis is x */
} Run;

/* The part of the image that the lines touch. */
typedef struct {
  int x, y, width, height;
  guint8 *shares; /* owned */
} Mask;

struct SwLines {
  cairo_t *cr; /* borrowed */
  const SwStyle *style;
  SwLineLook look;
  gboolean direct; /* else a path */
  SwImageBytes image;
  GArray *runs; /* owned: Run */
};

SwLines *
sw_lines_begin (cairo_t *cr, const SwStyle *style, const SwLineLook *look)
{
  SwLines *lines = g_new0 (SwLines, 1);

  lines->cr = cr;
  lines->style = style;
  lines->look = *look;
  lines->direct = sw_image_bytes_take (cr, &lines->image);
  lines->runs = g_array_new (FALSE, FALSE, sizeof (Run));
  return lines;
}

static Run
run_of (double x1, double y1, double x2, double y2)
{
  if (fabs (x2 - x1) > fabs (y2 - y1))
    return x1 <= x2 ? (Run){ x1, y1, x2, y2, .flat = TRUE }
                    : (Run){ x2, y2, x1, y1, .flat = TRUE };
  return y1 <= y2 ? (Run){ y1, x1, y2, x2, .flat = FALSE }
                  : (Run){ y2, x2, y1, x1, .flat = FALSE };
}

static void
add_run (SwLines *lines, Run run)
{
  if (!(run.along2 > run.along1))
    return;
  run.slope = (run.across2 - run.across1) / (run.along2 - run.along1);
  run.half = lines->look.width * lines->image.scale / 2 * sqrt (1 + run.slope * run.slope);
  g_array_append_val (lines->runs, run);
}

void
sw_lines_add (SwLines *lines, double x1, double y1, double x2, double y2)
{
  double scale = lines->image.scale, most = 1e6;

  if (!(fabs (x1) < most && fabs (y1) < most && fabs (x2) < most && fabs (y2) < most))
    return;
  if (lines->direct) {
    add_run (lines, run_of (x1 * scale, y1 * scale, x2 * scale, y2 * scale));
    return;
  }
  cairo_move_to (lines->cr, x1, y1);
  cairo_line_to (lines->cr, x2, y2);
}

static Mask
mask_new (const SwLines *lines)
{
  double left = lines->image.width, top = lines->image.height, right = 0, bottom = 0;

  for (guint i = 0; i < lines->runs->len; i++) {
    const Run *run = &g_array_index (lines->runs, Run, i);
    double low = MIN (run->across1, run->across2) - run->half,
           high = MAX (run->across1, run->across2) + run->half;
    left = MIN (left, run->flat ? run->along1 : low);
    right = MAX (right, run->flat ? run->along2 : high);
    top = MIN (top, run->flat ? low : run->along1);
    bottom = MAX (bottom, run->flat ? high : run->along2);
  }
  Mask mask = { (int) MAX (floor (left), 0), (int) MAX (floor (top), 0), 0, 0, NULL };
  mask.width = MAX ((int) MIN (ceil (right), lines->image.width) - mask.x, 0);
  mask.height = MAX ((int) MIN (ceil (bottom), lines->image.height) - mask.y, 0);
  mask.shares = g_malloc0 ((gsize) mask.width * (gsize) mask.height);
  return mask;
}

static void
touch (Mask *mask, int x, int y, double share)
{
  if (x < 0 || y < 0 || x >= mask->width || y >= mask->height)
    return;
  guint8 *at = &mask->shares[(gsize) y * (gsize) mask->width + (gsize) x];

  *at = MAX (*at, (guint8) (share * 255 + 0.5));
}

static double
overlap (double low1, double high1, double low2, double high2)
{
  return MAX (0, MIN (high1, high2) - MAX (low1, low2));
}

static void
touch_across (Mask *mask, const Run *run, int along)
{
  double low = MAX (along, run->along1), high = MIN (along + 1, run->along2);
  double middle = run->across1 + ((low + high) / 2 - run->along1) * run->slope;
  double left = middle - run->half, right = middle + run->half;

  for (int across = (int) floor (left); across < right; across++) {
    double share = (high - low) * overlap (left, right, across, across + 1);
    touch (mask,
           (run->flat ? along : across) - mask->x,
           (run->flat ? across : along) - mask->y,
           share);
  }
}

/* Numbers of 32 bits after the point: a line of a thousand pixels ends where it should. */
#define ONE ((gint64) 1 << 32)

static gint64
fixed (double value)
{
  return (gint64) floor (value * 4294967296.0);
}

static void
raise_to (guint8 *at, gint64 share)
{
  guint8 byte = (guint8) ((share * 255 + ONE / 2) >> 32);

  *at = MAX (*at, byte);
}

/* Whether all that the run covers from `first` to before `past` lies in the mask. */
static gboolean
lies_inside (const Mask *mask, const Run *run, int first, int past)
{
  double at1 = run->across1 + (first - run->along1) * run->slope,
         at2 = run->across1 + (past - run->along1) * run->slope;
  int low = run->flat ? mask->y : mask->x,
      high = low + (run->flat ? mask->height : mask->width);

  return MIN (at1, at2) - run->half >= low + 1 && MAX (at1, at2) + run->half <= high - 1;
}

/* As touch_across () for pixels that the run crosses whole, from `first` to before `past`. */
static void
touch_whole (Mask *mask, const Run *run, int first, int past)
{
  gsize step = run->flat ? (gsize) mask->width : 1, next = run->flat ? 1 : (gsize) mask->width;
  gint64 wide = fixed (2 * run->half), slope = fixed (run->slope);
  gint64 left = fixed (run->across1 + (first + 0.5 - run->along1) * run->slope - run->half -
                       (run->flat ? mask->y : mask->x));
  guint8 *row = mask->shares + (gsize) (first - (run->flat ? mask->x : mask->y)) * next;

  for (int along = first; along < past; along++, left += slope, row += next) {
    gint64 right = left + wide, past_pixel = (left | (ONE - 1)) + 1;
    guint8 *at = row + (gsize) (left >> 32) * step;
    raise_to (at, MIN (right, past_pixel) - left);
    for (; past_pixel < right; past_pixel += ONE) {
      at += step;
      raise_to (at, MIN (right - past_pixel, ONE));
    }
  }
}

static void
touch_run (Mask *mask, const Run *run)
{
  int start = run->flat ? mask->x : mask->y,
      end = start + (run->flat ? mask->width : mask->height);
  int along = MAX ((int) floor (run->along1), start);
  int first = MAX ((int) ceil (run->along1), start),
      past = MIN ((int) floor (run->along2), end);

  if (past > first && lies_inside (mask, run, first, past)) {
    for (; along < first; along++)
      touch_across (mask, run, along);
    touch_whole (mask, run, first, past);
    along = past;
  }
  for (; along < MIN (run->along2, end); along++)
    touch_across (mask, run, along);
}

/* Most of the mask is empty: eight pixels are passed at once. */
static int
next_touched (const guint8 *shares, int x, int width)
{
  guint64 eight;

  for (; x + 8 <= width; x += 8) {
    memcpy (&eight, shares + x, sizeof eight);
    if (eight != 0)
      break;
  }
  while (x < width && shares[x] == 0)
    x++;
  return x;
}

static void
lay (const SwLines *lines, const Mask *mask)
{
  guint32 ink = sw_image_bytes_colour (lines->style, lines->look.ink);
  guint32 alpha = (guint32) lround (lines->look.alpha * 256);

  for (int y = 0; y < mask->height; y++) {
    guint32 *row =
      (guint32 *) (gpointer) (lines->image.bytes + (gsize) (mask->y + y) * lines->image.stride);
    const guint8 *shares = mask->shares + (gsize) y * (gsize) mask->width;
    for (int x = next_touched (shares, 0, mask->width); x < mask->width;
         x = next_touched (shares, x + 1, mask->width))
      row[mask->x + x] = sw_image_bytes_mixed (row[mask->x + x], ink, shares[x] * alpha >> 8);
  }
}

static void
write_bytes (const SwLines *lines)
{
  Mask mask = mask_new (lines);

  for (guint i = 0; i < lines->runs->len; i++)
    touch_run (&mask, &g_array_index (lines->runs, Run, i));
  lay (lines, &mask);
  g_free (mask.shares);
  cairo_surface_mark_dirty (lines->image.surface);
}

static void
stroke (const SwLines *lines)
{
  cairo_save (lines->cr);
  sw_style_set_ink_alpha (lines->style, lines->cr, lines->look.ink, lines->look.alpha);
  cairo_set_line_width (lines->cr, lines->look.width);
  cairo_set_line_cap (lines->cr, CAIRO_LINE_CAP_BUTT);
  cairo_stroke (lines->cr);
  cairo_restore (lines->cr);
}

void
sw_lines_end (SwLines *lines)
{
  if (lines->direct)
    write_bytes (lines);
  else
    stroke (lines);
  g_array_unref (lines->runs);
  g_free (lines);
}
