// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/cut-plan.h"
#include "engine/design-keys.h"
#include "engine/error.h"

#include <glib/gstdio.h>
#include <locale.h>
#include <stdio.h>
#include <string.h>

/* A German locale of the test's own, in a folder of its own, as glibc's LOCPATH finds it.
 * Returns: (nullable): the folder.
 */
static char *
make_german (void)
{
  g_autofree char *localedef = g_find_program_in_path ("localedef");
  g_autofree char *dir = g_dir_make_tmp ("locale-XXXXXX", NULL);
  int status = 1;

  if (localedef == NULL || dir == NULL)
    return NULL;
  g_autofree char *command =
    g_strdup_printf ("%s --no-archive -i de_DE -f UTF-8 %s/de_DE.UTF-8", localedef, dir);
  g_autofree char *out = NULL;
  g_autofree char *err = NULL;
  if (!g_spawn_command_line_sync (command, &out, &err, &status, NULL) || status != 0)
    return NULL;
  return g_steal_pointer (&dir);
}

static void
remove_german (const char *dir)
{
  g_autofree char *command = g_strdup_printf ("rm -rf %s", dir);

  g_assert_true (g_spawn_command_line_sync (command, NULL, NULL, NULL, NULL));
}

static void
check_in_german (void)
{
  g_autoptr (GError) own = NULL, range = NULL, cut = NULL;
  g_autofree char *comma = g_strdup_printf ("%.1f", 0.5);
  g_autofree char *point = sw_plain_printf ("%.1f", 0.5);
  SwPiece piece = { 1.5, 1 };

  g_assert_cmpstr (comma, ==, "0,5"); /* the locale is really there */
  g_assert_cmpstr (point, ==, "0.5");
  sw_set_error (&own, SW_ERROR_RANGE, "x: %.15g", 99.5);
  g_assert_error (own, SW_ERROR, SW_ERROR_RANGE);
  g_assert_cmpstr (own->message, ==, "x: 99.5");
  g_assert_false (sw_key_check_number (sw_key_find ("shape.crown_height_m"), 99.5, &range));
  g_assert_cmpstr (range->message, ==, "shape.crown_height_m: 99.5 is outside 0.3 … 15");
  g_assert_null (sw_cut_plan_first_fit (NULL, 0.5, 0, &piece, 1, &cut));
  g_assert_cmpstr (cut->message, ==, "piece: 1.5 m is longer than the stock of 0.5 m");
  comma[0] = '\0';
  g_snprintf (comma, 4, "%.1f", 0.5);
  g_assert_cmpstr (comma, ==, "0,5"); /* and it was put back */
}

static void
test_decimal_point_in_every_locale (void)
{
  g_autofree char *dir = make_german ();

  if (dir != NULL)
    g_setenv ("LOCPATH", dir, TRUE);
  if (dir == NULL || setlocale (LC_ALL, "de_DE.UTF-8") == NULL) {
    g_test_message ("not run here: no German locale can be made (package locales)");
    return;
  }
  check_in_german ();
  setlocale (LC_ALL, "C.UTF-8");
  g_unsetenv ("LOCPATH");
  remove_german (dir);
}

static void
test_one_line_with_code (void)
{
  g_autoptr (GError) error = NULL;

  sw_set_error (&error, SW_ERROR_CHOICE, "%s: \"%s\" is not one of a | b", "k", "c");
  g_assert_error (error, SW_ERROR, SW_ERROR_CHOICE);
  g_assert_cmpstr (error->message, ==, "k: \"c\" is not one of a | b");
  sw_set_error (NULL, SW_ERROR_CHOICE, "nobody listens");
}

static const struct {
  const char *text;
  gssize length;
  const char *shown;
} lines[] = {
  { "plain", -1, "plain" },
  { "", -1, "" },
  { "a\nb\r\tc\177", -1, "a\\u000ab\\u000d\\u0009c\\u007f" },
  { "\302\205 \342\200\250 \342\200\251", -1, "\\u0085 \\u2028 \\u2029" },
  { "\303\251\360\237\216\204", -1, "\303\251\360\237\216\204" },
  { "\377x\303", -1, "\357\277\275x\357\277\275" },
  { "a\0b", 3, "a\357\277\275b" },
  { "abc", 2, "ab" },
};

static void
test_shown_text_is_one_line (void)
{
  g_autofree char *sixty = g_strnfill (60, 'x'), *more = g_strnfill (61, 'x');
  g_autofree char *whole = sw_shown (sixty, -1), *cut = sw_shown (more, -1);
  g_autofree char *expected = g_strconcat (sixty, "…", NULL);

  for (guint i = 0; i < G_N_ELEMENTS (lines); i++) {
    g_autofree char *shown = sw_shown (lines[i].text, lines[i].length);
    g_assert_cmpstr (shown, ==, lines[i].shown);
  }
  g_assert_cmpstr (whole, ==, sixty);
  g_assert_cmpstr (cut, ==, expected);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/error/code and words", test_one_line_with_code);
  g_test_add_func ("/engine/error/a decimal point in every locale",
                   test_decimal_point_in_every_locale);
  g_test_add_func ("/engine/error/shown text is one line", test_shown_text_is_one_line);
  return g_test_run ();
}
