// SPDX-License-Identifier: GPL-3.0-or-later
/* Source of what is JSON: RFC 8259 (2017): values 3, objects 4, numbers 6, strings 7, UTF-8
 * 8.1. What is refused beyond it (repeats, depth, size of numbers, U+0000) is this program's
 * own.
 */
#include "engine/error.h"
#include "engine/json-check.h"

#include <string.h>

static gboolean
check (const char *text, GError **error)
{
  return sw_json_check (text, strlen (text), 16, error);
}

static const char *const taken[] = {
  "{}",
  "[]",
  "null",
  " \t\r\n{ } \t\r\n",
  "true",
  "\"\"",
  "0",
  "-0",
  "-0.0",
  "0e5",
  "0E-0",
  "1.5e+3",
  "10",
  "9223372036854775807",
  "-9223372036854775808",
  "1.7976931348623157e308",
  "9223372036854775808.0",
  "1e-400", /* nearest double: 0 */
  "[1,2 ,\n3]",
  "{\"a\":{\"a\":[{\"a\":1},{\"a\":1}]}}", /* not the same object */
  "\"\\\"\\\\\\/\\b\\f\\n\\r\\t\\u00e9\\u00E9\"",
  "\"\\ud83c\\udf84\"", /* U+1F384 */
  "\"\360\237\216\204 \302\240 \177\"",
  "{\"\": 1, \" \": 2}",
  "[[[[[[[[[[[[[[[[]]]]]]]]]]]]]]]]",
};

static void
test_takes_json (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (taken); i++) {
    g_autoptr (GError) error = NULL;
    if (!check (taken[i], &error))
      g_error ("%s: %s", taken[i], error->message);
  }
}

static const struct {
  const char *text;
  int code;
  const char *message;
} refused[] = {
  { "", SW_ERROR_SYNTAX, "design: the file is empty, one JSON object is allowed (line 1)" },
  { " \n ", SW_ERROR_SYNTAX, "design: the file ends where a value should be (line 2)" },
  { "{} {}", SW_ERROR_SYNTAX, "design: something stands behind the end of the JSON (line 1)" },
  { "1 2", SW_ERROR_SYNTAX, "design: something stands behind the end of the JSON (line 1)" },
  { "// a\n{}", SW_ERROR_SYNTAX, "design: // where a JSON value should be" },
  { "{ /* a */ }", SW_ERROR_SYNTAX, "design: a key in double quotes is missing (line 1)" },
  { "{'a': 1}", SW_ERROR_SYNTAX, "design: a key in double quotes is missing (line 1)" },
  { "{a: 1}", SW_ERROR_SYNTAX, "design: a key in double quotes is missing (line 1)" },
  { "['a']", SW_ERROR_SYNTAX, "[0]: 'a' where a JSON value should be" },
  { "[1,]", SW_ERROR_SYNTAX, "[1]: ] where a JSON value should be" },
  { "[,1]", SW_ERROR_SYNTAX, "[0]: , where a JSON value should be" },
  { "{\"a\": 1,}", SW_ERROR_SYNTAX, "a: a key in double quotes is missing (line 1)" },
  { "{\n\"a\": 1\n\"b\": 2}",
    SW_ERROR_SYNTAX,
    "a: a comma or a closing bracket is missing (line 3)" },
  { "{\"a\" 1}", SW_ERROR_SYNTAX, "a: the colon behind the key is missing (line 1)" },
  { "{\"a\"", SW_ERROR_SYNTAX, "a: the colon behind the key is missing (line 1)" },
  { "{\"a\":", SW_ERROR_SYNTAX, "a: the file ends where a value should be (line 1)" },
  { "[1", SW_ERROR_SYNTAX, "[0]: the file ends before its closing bracket (line 1)" },
  { "[1}", SW_ERROR_SYNTAX, "[0]: a comma or a closing bracket is missing (line 1)" },
  { "]", SW_ERROR_SYNTAX, "design: ] where a JSON value should be" },
  { "tru", SW_ERROR_SYNTAX, "design: tru where a JSON value should be" },
  { "trueish", SW_ERROR_SYNTAX, "design: trueish where a JSON value should be" },
  { "True", SW_ERROR_SYNTAX, "design: True where a JSON value should be" },
  { "[NaN]", SW_ERROR_SYNTAX, "[0]: NaN where a JSON value should be" },
  { "-Infinity", SW_ERROR_SYNTAX, "design: -Infinity is not a number as JSON writes it" },
  { "01", SW_ERROR_SYNTAX, "design: 01 is not a number as JSON writes it" },
  { "-01", SW_ERROR_SYNTAX, "design: -01 is not a number as JSON writes it" },
  { "1.", SW_ERROR_SYNTAX, "design: 1. is not a number as JSON writes it" },
  { ".5", SW_ERROR_SYNTAX, "design: .5 where a JSON value should be" },
  { "+1", SW_ERROR_SYNTAX, "design: +1 where a JSON value should be" },
  { "1e", SW_ERROR_SYNTAX, "design: 1e is not a number as JSON writes it" },
  { "1e+", SW_ERROR_SYNTAX, "design: 1e+ is not a number as JSON writes it" },
  { "0x10", SW_ERROR_SYNTAX, "design: 0x10 is not a number as JSON writes it" },
  { "1.2.3", SW_ERROR_SYNTAX, "design: 1.2.3 is not a number as JSON writes it" },
  { "[-]", SW_ERROR_SYNTAX, "[0]: - is not a number as JSON writes it" },
  { "9223372036854775808",
    SW_ERROR_RANGE,
    "design: 9223372036854775808 is a whole number beyond 64 bits" },
  { "-9223372036854775809",
    SW_ERROR_RANGE,
    "design: -9223372036854775809 is a whole number beyond 64 bits" },
  { "{\"a\": [0, 1e400]}", SW_ERROR_RANGE, "a[1]: 1e400 is too large for a number" },
  { "-1e400", SW_ERROR_RANGE, "design: -1e400 is too large for a number" },
  { "\"a", SW_ERROR_SYNTAX, "design: a text without its closing quote (line 1)" },
  { "\"a\\",
    SW_ERROR_SYNTAX,
    "design: an escape that JSON does not have, or \\u0000 (line 1)" },
  { "\"\\x\"",
    SW_ERROR_SYNTAX,
    "design: an escape that JSON does not have, or \\u0000 (line 1)" },
  { "\"\\u12g4\"",
    SW_ERROR_SYNTAX,
    "design: an escape that JSON does not have, or \\u0000 (line 1)" },
  { "\"\\u0000\"",
    SW_ERROR_SYNTAX,
    "design: an escape that JSON does not have, or \\u0000 (line 1)" },
  { "\"\\ud83c\"",
    SW_ERROR_SYNTAX,
    "design: an escape that JSON does not have, or \\u0000 (line 1)" },
  { "\"\\ud83c\\u0041\"",
    SW_ERROR_SYNTAX,
    "design: an escape that JSON does not have, or \\u0000 (line 1)" },
  { "\"\\udf84\"",
    SW_ERROR_SYNTAX,
    "design: an escape that JSON does not have, or \\u0000 (line 1)" },
  { "\"a\tb\"",
    SW_ERROR_SYNTAX,
    "design: a control character or line break inside a text, write it as \\u00… (line 1)" },
  { "{\"a\": \"x\ny\"}",
    SW_ERROR_SYNTAX,
    "a: a control character or line break inside a text, write it as \\u00… (line 1)" },
  { "\"\377\"", SW_ERROR_SYNTAX, "design: not UTF-8 text (line 1)" },
  { "\"\355\240\200\"", SW_ERROR_SYNTAX, "design: not UTF-8 text (line 1)" }, /* U+D800 */
  { "\"\300\200\"", SW_ERROR_SYNTAX, "design: not UTF-8 text (line 1)" }, /* overlong U+0000 */
  { "{\"a\": 1, \"a\": [2, 3]}",
    SW_ERROR_REPEATED,
    "a: [2 is given to a key that stands twice" },
  { "{\"b\": {\"a\": 1, \"\\u0061\": true}}",
    SW_ERROR_REPEATED,
    "b.a: true is given to a key that stands twice" },
  { "{\"a\": {}, \"b\": 1, \"a\": {}}",
    SW_ERROR_REPEATED,
    "a: { is given to a key that stands twice" },
  { "{\"x\\ny\": 1e400}", SW_ERROR_RANGE, "x\\u000ay: 1e400 is too large for a number" },
  { "{\"x\\u2028y\": nan}", SW_ERROR_SYNTAX, "x\\u2028y: nan where a JSON value should be" },
};

static void
test_refuses_what_is_none (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (refused); i++) {
    g_autoptr (GError) error = NULL;
    if (check (refused[i].text, &error))
      g_error ("taken: %s", refused[i].text);
    g_assert_cmpstr (error->message, ==, refused[i].message);
    g_assert_error (error, SW_ERROR, refused[i].code);
  }
}

/* Every beginning of a text that needs its end is refused, and never read beyond. */
static void
test_refuses_every_beginning (void)
{
  const char *whole = "{\"a\": [1.5e3, true, null, \"\\u00e9\\ud83c\\udf84\\n\"], \"b\": {}}";

  for (gsize length = 0; length < strlen (whole); length++) {
    g_autofree char *part = g_memdup2 (whole, length); /* no 0 behind it */
    g_assert_false (sw_json_check (part, length, 16, NULL));
  }
  g_assert_true (check (whole, NULL));
}

static void
test_a_zero_byte_is_refused (void)
{
  g_assert_false (sw_json_check ("{}\0", 3, 16, NULL));
  g_assert_false (sw_json_check ("\"a\0b\"", 5, 16, NULL));
}

static void
test_counts_levels (void)
{
  g_autoptr (GError) error = NULL;

  g_assert_true (sw_json_check ("[{\"a\": []}]", 11, 3, NULL));
  g_assert_false (sw_json_check ("[{\"a\": []}]", 11, 2, &error));
  g_assert_cmpstr (error->message,
                   ==,
                   "[0].a: nested too deep, at most 2 levels are allowed (line 1)");
}

static char *
allowed_at (const char *path)
{
  return g_str_equal (path, "shape.width") ? g_strdup ("1 … 2") : NULL;
}

static void
test_says_what_is_allowed_there (void)
{
  const SwJsonRules rules = { 16, allowed_at };
  const char *text = "{\"shape\": {\"width\": NaN}}";
  g_autoptr (GError) error = NULL;

  g_assert_false (sw_json_check_keys (text, strlen (text), &rules, &error));
  g_assert_cmpstr (error->message,
                   ==,
                   "shape.width: NaN where a JSON value should be, 1 … 2 is allowed");
}

static void
test_a_long_name_is_cut (void)
{
  g_autofree char *name = g_strnfill (5000, 'k');
  g_autofree char *text = g_strdup_printf ("{\"%s\": {\"%s\": 1e999}}", name, name);
  g_autoptr (GError) error = NULL;

  g_assert_false (check (text, &error));
  g_assert_cmpuint (strlen (error->message), <, 200);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/json-check/takes JSON", test_takes_json);
  g_test_add_func ("/engine/json-check/refuses what is none", test_refuses_what_is_none);
  g_test_add_func ("/engine/json-check/refuses every beginning", test_refuses_every_beginning);
  g_test_add_func ("/engine/json-check/a zero byte is refused", test_a_zero_byte_is_refused);
  g_test_add_func ("/engine/json-check/counts levels", test_counts_levels);
  g_test_add_func ("/engine/json-check/says what is allowed there",
                   test_says_what_is_allowed_there);
  g_test_add_func ("/engine/json-check/a long name is cut", test_a_long_name_is_cut);
  return g_test_run ();
}
