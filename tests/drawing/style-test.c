// SPDX-License-Identifier: GPL-3.0-or-later
#include "drawing/style.h"

static const SwStyle *const styles[] = { &sw_style_light,
                                         &sw_style_dark,
                                         &sw_style_light_contrast,
                                         &sw_style_dark_contrast,
                                         &sw_style_paper };

/* Source: WCAG 2.1, success criterion 1.4.3: text needs 4.5:1. */
static void
test_inks_of_texts_are_readable (void)
{
  static const SwInkId inks[] = { SW_INK_MAIN, SW_INK_SECOND, SW_INK_DIMENSION, SW_INK_GRIP,
                                  SW_INK_TREE, SW_INK_STOP,   SW_INK_WARN,      SW_INK_TIP };

  for (guint i = 0; i < G_N_ELEMENTS (styles); i++) {
    for (guint j = 0; j < G_N_ELEMENTS (inks); j++)
      g_assert_cmpfloat (
        sw_ink_contrast (styles[i]->inks[inks[j]], styles[i]->inks[SW_INK_PAPER]),
        >=,
        4.5);
  }
}

/* Source: WCAG 2.1, definition of contrast ratio: black on white is 21, a colour on itself 1.
 */
static void
test_contrast_has_its_ends (void)
{
  SwInk black = { 0, 0, 0 }, white = { 1, 1, 1 };

  g_assert_cmpfloat_with_epsilon (sw_ink_contrast (black, white), 21, 1e-12);
  g_assert_cmpfloat_with_epsilon (sw_ink_contrast (white, white), 1, 1e-12);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/drawing/style/inks of texts are readable",
                   test_inks_of_texts_are_readable);
  g_test_add_func ("/drawing/style/contrast has its ends", test_contrast_has_its_ends);
  return g_test_run ();
}
