// SPDX-License-Identifier: GPL-3.0-or-later
/* ladder-ngspice-test.c: every ladder of the table as a netlist, solved by ngspice, node by
 * node. */
#include "engine/ladder.h"

#include <gio/gio.h>
#include <math.h>
#include <string.h>

static const struct {
  int pixels;
  SwLoad load;
  double supply_v, pixel_a, link_ohm, feed_ohm;
  int feeds[6];
} cases[] = {
  { 50, SW_LOAD_CONSTANT_CURRENT, 12, 0.0275, 0.00213, 0.0492, { 1 } },
  { 50, SW_LOAD_CONSTANT_CURRENT, 12, 0.0275, 0.00213, 0.0492, { 50 } },
  { 90, SW_LOAD_CONSTANT_CURRENT, 12, 0.0550, 0.00213, 0.0984, { 1, 90 } },
  { 120, SW_LOAD_CONSTANT_CURRENT, 5, 0.0100, 0.00500, 0.0300, { 1, 41, 81, 120 } },
  { 7, SW_LOAD_CONSTANT_CURRENT, 24, 1.0000, 0.02000, 0.5000, { 3 } },
  { 300, SW_LOAD_CONSTANT_CURRENT, 12, 0.0020, 0.00400, 0.0100, { 1, 101, 201 } },
  { 50, SW_LOAD_CONSTANT_POWER, 12, 0.0300, 0.00419, 0.0042, { 1 } },
  { 100, SW_LOAD_CONSTANT_POWER, 12, 0.0300, 0.00419, 0.0042, { 1 } },
  { 100, SW_LOAD_CONSTANT_POWER, 12, 0.0300, 0.00419, 0.0042, { 1, 100 } },
  { 100, SW_LOAD_CONSTANT_POWER, 5, 0.0600, 0.00419, 0.0042, { 1 } },
  { 60, SW_LOAD_CONSTANT_POWER, 24, 0.0500, 0.02000, 0.2000, { 60 } },
  { 90, SW_LOAD_CONSTANT_POWER, 12, 0.0400, 0.00300, 0.0500, { 1, 31, 61 } },
};

static guint
count_feeds (const int *feeds)
{
  guint n = 0;

  while (n < 6 && feeds[n] > 0)
    n++;
  return n;
}

/* The return rail is folded into the loop resistance, as the ladder's definition has it. */
static char *
netlist (guint i)
{
  GString *text = g_string_new ("ladder\n.options reltol=1e-9 abstol=1e-12 vntol=1e-10\n");

  g_string_append_printf (text, "V0 s 0 %.17g\n", cases[i].supply_v);
  for (guint j = 0; j < count_feeds (cases[i].feeds); j++)
    g_string_append_printf (text,
                            "Rf%u s p%d %.17g\n",
                            j,
                            cases[i].feeds[j],
                            cases[i].feed_ohm);
  for (int pixel = 1; pixel <= cases[i].pixels; pixel++) {
    if (pixel > 1)
      g_string_append_printf (text,
                              "R%d p%d p%d %.17g\n",
                              pixel,
                              pixel - 1,
                              pixel,
                              cases[i].link_ohm);
    if (cases[i].load == SW_LOAD_CONSTANT_CURRENT)
      g_string_append_printf (text, "I%d p%d 0 %.17g\n", pixel, pixel, cases[i].pixel_a);
    else
      g_string_append_printf (text,
                              "B%d p%d 0 I=%.17g/V(p%d)\n.nodeset V(p%d)=%g\n",
                              pixel,
                              pixel,
                              cases[i].pixel_a * cases[i].supply_v,
                              pixel,
                              pixel,
                              cases[i].supply_v);
  }
  g_string_append (text, ".control\nset numdgt=12\nop\nprint all\n.endc\n.end\n");
  return g_string_free (text, FALSE);
}

/* Not inlined: gcc 12 would warn of a pointer that dangles, wrongly. */
G_NO_INLINE static char *
run_ngspice (const char *circuit)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GSubprocess) process =
    g_subprocess_new (G_SUBPROCESS_FLAGS_STDIN_PIPE | G_SUBPROCESS_FLAGS_STDOUT_PIPE |
                        G_SUBPROCESS_FLAGS_STDERR_SILENCE,
                      &error,
                      "ngspice",
                      "-b",
                      NULL);
  char *output = NULL;

  g_assert_no_error (error);
  g_subprocess_communicate_utf8 (process, circuit, NULL, &output, NULL, &error);
  g_assert_no_error (error);
  return output;
}

static double
volts_of (const char *output, int pixel)
{
  g_autofree char *start = g_strdup_printf ("\np%d = ", pixel);
  const char *found = strstr (output, start);

  if (found == NULL)
    g_error ("ngspice did not print node p%d", pixel);
  return g_ascii_strtod (found + strlen (start), NULL);
}

static void
test_volts_agree_with_ngspice (gconstpointer data)
{
  guint i = GPOINTER_TO_UINT (data);
  SwLadder given = { cases[i].pixels, cases[i].supply_v,           cases[i].pixel_a,
                     cases[i].load,   cases[i].link_ohm,           cases[i].feed_ohm,
                     cases[i].feeds,  count_feeds (cases[i].feeds) };
  g_autofree double *volts = g_new (double, given.pixels);
  g_autofree char *circuit = netlist (i), *output = run_ngspice (circuit);

  g_assert_true (sw_ladder_solve (&given, volts, NULL).feasible);
  for (int pixel = 1; pixel <= given.pixels; pixel++)
    g_assert_cmpfloat_with_epsilon (volts[pixel - 1], volts_of (output, pixel), 1e-6);
}

int
main (int argc, char **argv)
{
  g_autofree char *program = g_find_program_in_path ("ngspice");

  g_test_init (&argc, &argv, NULL);
  if (program == NULL) {
    g_print ("# not run here: ngspice is missing\n1..0\n");
    return 0;
  }
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++) {
    g_autofree char *path = g_strdup_printf ("/engine/ladder-ngspice/ladder %u", i + 1);
    g_test_add_data_func (path, GUINT_TO_POINTER (i), test_volts_agree_with_ngspice);
  }
  return g_test_run ();
}
