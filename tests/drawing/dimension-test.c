// SPDX-License-Identifier: GPL-3.0-or-later
#include "drawing/dimension.h"

#define WIDTH 200
#define HEIGHT 160

typedef struct {
  cairo_surface_t *image;
  cairo_t *cr;
  SwView view;
  SwTextCache *texts;
  SwPicture picture;
} Sheet;

static void
sheet_init (Sheet *sheet)
{
  sheet->image = cairo_image_surface_create (CAIRO_FORMAT_RGB24, WIDTH, HEIGHT);
  sheet->cr = cairo_create (sheet->image);
  sheet->view = (SwView){ WIDTH, HEIGHT, 100, 150, 40 };
  sheet->texts = sw_text_cache_new ();
  sheet->picture = (SwPicture){ &sheet->view,
                                &sw_style_light,
                                &sw_language_english,
                                sheet->texts,
                                SW_DRAW_DIMENSIONS };
  sw_style_set_ink (&sw_style_light, sheet->cr, SW_INK_PAPER);
  cairo_paint (sheet->cr);
}

static void
sheet_clear (Sheet *sheet)
{
  sw_text_cache_free (sheet->texts);
  cairo_destroy (sheet->cr);
  cairo_surface_destroy (sheet->image);
}

static guint32
colour_at (Sheet *sheet, int x, int y)
{
  cairo_surface_flush (sheet->image);
  const guchar *row = cairo_image_surface_get_data (sheet->image) +
                      (gsize) y * (gsize) cairo_image_surface_get_stride (sheet->image);

  return ((const guint32 *) (gconstpointer) row)[x] & 0xffffffu;
}

/* The dimension ink #2F5D8A and the paper #F7F5F0, nothing between: the line fills its pixels.
 */
static void
test_lines_are_sharp (void)
{
  Sheet sheet;
  SwHeightDimension height = { 120.3, 140.7, 20.2, 60, 60, "2.86 m" };

  sheet_init (&sheet);
  sw_dimension_height (sheet.cr, &sheet.picture, &height);
  g_assert_cmphex (colour_at (&sheet, 120, 50), ==, 0x2f5d8au);
  g_assert_cmphex (colour_at (&sheet, 119, 50), ==, 0xf7f5f0u);
  g_assert_cmphex (colour_at (&sheet, 121, 50), ==, 0xf7f5f0u);
  sw_dimension_width (sheet.cr, &sheet.picture, 20.4, 100.6, 90.5, 60, "1 m");
  g_assert_cmphex (colour_at (&sheet, 40, 90), ==, 0x2f5d8au);
  g_assert_cmphex (colour_at (&sheet, 40, 91), ==, 0xf7f5f0u);
  sheet_clear (&sheet);
}

static guint
count (Sheet *sheet, guint32 colour)
{
  guint n = 0;

  for (int y = 0; y < HEIGHT; y++) {
    for (int x = 0; x < WIDTH; x++)
      n += colour_at (sheet, x, y) == colour;
  }
  return n;
}

/* Red all over: paper shows only where the text stands. */
static void
test_a_slant_makes_room_for_its_text (void)
{
  Sheet sheet;
  SwSlantDimension slant = { 30, 140, 90, 20, 20, 8, "2.86 m" };

  sheet_init (&sheet);
  cairo_set_source_rgb (sheet.cr, 1, 0, 0);
  cairo_paint (sheet.cr);
  sw_dimension_along (sheet.cr, &sheet.picture, &slant);
  g_assert_cmpuint (count (&sheet, 0xf7f5f0u), >, 150);
  sheet_clear (&sheet);
}

/* Where the text is longer than the line nothing is drawn. */
static void
test_a_short_slant_stays_away (void)
{
  Sheet sheet;
  SwSlantDimension slant = { 30, 140, 40, 125, 20, 8, "2.86 m" };

  sheet_init (&sheet);
  sw_dimension_along (sheet.cr, &sheet.picture, &slant);
  g_assert_cmpuint (count (&sheet, 0xf7f5f0u), ==, WIDTH * HEIGHT);
  sheet_clear (&sheet);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/drawing/dimension/lines are sharp", test_lines_are_sharp);
  g_test_add_func ("/drawing/dimension/a slant makes room for its text",
                   test_a_slant_makes_room_for_its_text);
  g_test_add_func ("/drawing/dimension/a short slant stays away",
                   test_a_short_slant_stays_away);
  return g_test_run ();
}
