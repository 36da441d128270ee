// SPDX-License-Identifier: GPL-3.0-or-later
/* ring-calculix-test.c: five rings and arcs under lift, and three spoked rings that buckle in
 * plane, solved by CalculiX, a general finite element program, as quadratic beams. Its input
 * decks, tests/data/calculix/rings.inp and spokes.inp, say what they are; beside them stand the
 * results of version 2.20 (of rings.frd its block of section forces only). Where the program is
 * at hand it is run anew.
 *
 * It gives what a thin pipe leaves out (shear, about 1 % of the lift in the shortest bays) and
 * averages section forces over the elements at a tie.
 */
#include "engine/ring-plane.h"
#include "engine/ring-point-loads.h"
#include "engine/ring-statics.h"

#include <gio/gio.h>
#include <glib/gstdio.h>
#include <math.h>
#include <string.h>

#define NODES 6000
#define EVEN_N_PER_M 24.22401485
#define STRIPS 13

/* By node. */
typedef struct {
  double lift_m[NODES], moment_nm[NODES], torque_nm[NODES], tie_n[NODES];
  gboolean is_tie[NODES];
} Fields;

static char *
read_text (const char *directory, const char *name)
{
  g_autofree char *path = g_build_filename (directory, name, NULL);
  g_autoptr (GError) error = NULL;
  char *text = NULL;

  g_file_get_contents (path, &text, NULL, &error);
  g_assert_no_error (error);
  return text;
}

/* ".dat": a node and three components a line, under a title. */
static void
read_dat (Fields *fields, const char *text)
{
  g_auto (GStrv) lines = g_strsplit (text, "\n", -1);
  gboolean forces = FALSE;

  for (guint i = 0; lines[i] != NULL; i++) {
    int node = 0;
    double x, y, z;
    if (strstr (lines[i], "forces (") != NULL)
      forces = TRUE;
    if (sscanf (lines[i], "%d %lf %lf %lf", &node, &x, &y, &z) != 4)
      continue;
    g_assert_cmpint (node, <, NODES);
    if (forces) {
      fields->tie_n[node] += z;
      fields->is_tie[node] = TRUE;
    } else {
      fields->lift_m[node] = z;
    }
  }
}

/* ".frd": " -1", a node in ten columns and six section forces in twelve each; the fourth is the
 * torque, the sixth the bending moment about the plane's radius. Not inlined: gcc 12 would warn
 * of a pointer that dangles, wrongly. */
G_NO_INLINE static void
read_frd (Fields *fields, const char *text)
{
  const char *block = strstr (text, " -4  STRESS");

  g_assert_nonnull (block);
  g_auto (GStrv) lines = g_strsplit (block, "\n", -1);
  for (guint i = 1; lines[i] != NULL && !g_str_has_prefix (lines[i], " -3"); i++) {
    if (!g_str_has_prefix (lines[i], " -1"))
      continue;
    g_autofree char *node = g_strndup (lines[i] + 3, 10);
    g_autofree char *torque = g_strndup (lines[i] + 13 + 3 * 12, 12);
    g_autofree char *moment = g_strndup (lines[i] + 13 + 5 * 12, 12);
    int at = atoi (node);
    g_assert_cmpint (at, <, NODES);
    fields->torque_nm[at] = fabs (g_ascii_strtod (torque, NULL));
    fields->moment_nm[at] = fabs (g_ascii_strtod (moment, NULL));
  }
}

/* What the deck puts on a tie's own node is no force of the tie, but printed with it. */
G_NO_INLINE static void
take_loads_off (Fields *fields, const char *deck)
{
  const char *loads = strstr (deck, "*CLOAD");

  g_assert_nonnull (loads);
  g_auto (GStrv) lines = g_strsplit (loads, "\n", -1);
  for (guint i = 1; lines[i] != NULL && lines[i][0] != '*'; i++) {
    int node, direction;
    double force_n;
    g_assert_cmpint (sscanf (lines[i], "%d, %d, %lf", &node, &direction, &force_n), ==, 3);
    fields->tie_n[node] -= force_n;
  }
}

static Fields *
read_fields (const char *directory, const char *deck)
{
  Fields *fields = g_new0 (Fields, 1);
  g_autofree char *dat = read_text (directory, "rings.dat");
  g_autofree char *frd = read_text (directory, "rings.frd");

  read_dat (fields, dat);
  read_frd (fields, frd);
  take_loads_off (fields, deck);
  return fields;
}

/* The most over the thousand nodes of one ring. */
static SwRingAnswer
most_of (const Fields *fields, int base)
{
  SwRingAnswer most = { 0 };

  for (int node = base; node < base + 1000; node++) {
    most.lift_m = MAX (most.lift_m, fields->lift_m[node]);
    most.moment_nm = MAX (most.moment_nm, fields->moment_nm[node]);
    most.torque_nm = MAX (most.torque_nm, fields->torque_nm[node]);
    if (fields->is_tie[node])
      most.tie_n = MAX (most.tie_n, fabs (fields->tie_n[node]));
  }
  return most;
}

static const struct {
  int base, ties;
  double span_deg; /* 0: whole, strips from −90° to 90° */
} rings[] = { { 1000, 4, 360 },
              { 2000, 8, 360 },
              { 3000, 5, 180 },
              { 4000, 4, 270 },
              { 5000, 8, 0 } };

static double
ring_ei (void)
{
  return 2.76e9 * G_PI / 64 * (pow (0.02134, 4) - pow (0.0158, 4));
}

static SwRingAnswer
solve (guint i)
{
  double ei = ring_ei (), gj = ei / 1.38, deg[STRIPS];
  SwRingLoad even = { 1, ei, gj, EVEN_N_PER_M, rings[i].ties, rings[i].span_deg };
  SwRingPoints points = { 1, ei, gj, 10, STRIPS, deg, rings[i].ties, 0, 0 };
  SwRingAnswer answer;

  for (int strip = 0; strip < STRIPS; strip++)
    deg[strip] = 15 * (strip - STRIPS / 2);
  g_assert_true (rings[i].span_deg > 0 ? sw_ring_statics (&even, &answer)
                                       : sw_ring_point_loads (&points, &answer));
  return answer;
}

static void
expect_near (double found, double expected, double share)
{
  g_assert_cmpfloat_with_epsilon (found / expected, 1, share);
}

static void
check (const Fields *fields)
{
  for (guint i = 0; i < G_N_ELEMENTS (rings); i++) {
    SwRingAnswer theirs = most_of (fields, rings[i].base), ours = solve (i);
    expect_near (ours.lift_m, theirs.lift_m, 0.012);
    expect_near (ours.tie_n, theirs.tie_n, 0.003);
    expect_near (ours.moment_nm, theirs.moment_nm, 0.02);
    expect_near (ours.torque_nm, theirs.torque_nm, 0.05);
  }
}

static char *
data_directory (void)
{
  return g_build_filename (g_getenv ("SW_SOURCE"), "tests", "data", "calculix", NULL);
}

static void
test_agrees_with_the_kept_results (void)
{
  g_autofree char *directory = data_directory ();
  g_autofree char *deck = read_text (directory, "rings.inp");
  g_autofree Fields *kept = read_fields (directory, deck);

  check (kept);
}

static void
run_calculix (const char *directory, const char *name, const char *deck)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GSubprocessLauncher) launcher =
    g_subprocess_launcher_new (G_SUBPROCESS_FLAGS_STDOUT_SILENCE);
  g_autofree char *path = g_strdup_printf ("%s/%s.inp", directory, name);

  g_file_set_contents (path, deck, -1, &error);
  g_assert_no_error (error);
  g_subprocess_launcher_set_cwd (launcher, directory);
  g_autoptr (GSubprocess) process =
    g_subprocess_launcher_spawn (launcher, &error, "ccx", name, NULL);
  g_assert_no_error (error);
  g_assert_true (g_subprocess_wait_check (process, NULL, &error));
}

/* The deck pulls its three rings so that each buckles first at the same factor, if it has the
 * waves ours has. Its pull keeps its direction: n²·EI/R³ instead of (n² − 1)·EI/R³ for ours,
 * which follows the pipe. Stiff spokes also bear a share of the pull, up to 8 % with eight,
 * that we leave out. */
static void
check_spokes (const char *text)
{
  static const int spokes[] = { 4, 6, 8 };
  g_auto (GStrv) halves = g_strsplit (text, "FACTOR\n\n", 2);

  g_assert_cmpuint (g_strv_length (halves), ==, 2);
  g_auto (GStrv) lines = g_strsplit (halves[1], "\n", -1);
  for (guint i = 0; i < G_N_ELEMENTS (spokes); i++) {
    SwRingPlane ring = { 1, ring_ei (), sw_ring_waves (spokes[i]) };
    double square = ring.waves * ring.waves, pull = pow (spokes[i] / 2, 2);
    double ours = sw_ring_plane_buckling (&ring) * square / (square - 1) / pull, theirs;
    int mode;
    g_assert_cmpint (sscanf (lines[i], "%d %lf", &mode, &theirs), ==, 2);
    g_assert_cmpint (mode, ==, (int) i + 1);
    g_assert_cmpfloat (ours, <=, theirs);
    g_assert_cmpfloat (ours, >, theirs / 1.09);
  }
}

static void
test_spokes_agree_with_the_kept_results (void)
{
  g_autofree char *directory = data_directory ();
  g_autofree char *text = read_text (directory, "spokes.dat");

  check_spokes (text);
}

static void
remove_all (const char *directory)
{
  g_autoptr (GDir) dir = g_dir_open (directory, 0, NULL);
  const char *name;

  while ((name = g_dir_read_name (dir)) != NULL) {
    g_autofree char *path = g_build_filename (directory, name, NULL);
    g_unlink (path);
  }
  g_rmdir (directory);
}

static void
test_agrees_with_a_fresh_run (void)
{
  g_autofree char *data = data_directory ();
  g_autofree char *deck = read_text (data, "rings.inp");
  g_autofree char *directory = g_dir_make_tmp ("sw-rings-XXXXXX", NULL);

  run_calculix (directory, "rings", deck);
  g_autofree Fields *fresh = read_fields (directory, deck);
  g_autofree Fields *kept = read_fields (data, deck);
  check (fresh);
  for (guint i = 0; i < G_N_ELEMENTS (rings); i++) {
    SwRingAnswer now = most_of (fresh, rings[i].base), then = most_of (kept, rings[i].base);
    expect_near (now.lift_m, then.lift_m, 1e-4);
    expect_near (now.moment_nm, then.moment_nm, 1e-4);
    expect_near (now.tie_n, then.tie_n, 1e-4);
  }
  remove_all (directory);
}

static void
test_spokes_agree_with_a_fresh_run (void)
{
  g_autofree char *data = data_directory ();
  g_autofree char *deck = read_text (data, "spokes.inp");
  g_autofree char *directory = g_dir_make_tmp ("sw-spokes-XXXXXX", NULL);

  run_calculix (directory, "spokes", deck);
  g_autofree char *text = read_text (directory, "spokes.dat");
  check_spokes (text);
  remove_all (directory);
}

int
main (int argc, char **argv)
{
  g_autofree char *program = g_find_program_in_path ("ccx");

  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/ring-calculix/agrees with the kept results",
                   test_agrees_with_the_kept_results);
  g_test_add_func ("/engine/ring-calculix/spokes agree with the kept results",
                   test_spokes_agree_with_the_kept_results);
  if (program == NULL) {
    g_print ("# not run here: ccx (CalculiX) is missing\n");
    return g_test_run ();
  }
  g_test_add_func ("/engine/ring-calculix/agrees with a fresh run",
                   test_agrees_with_a_fresh_run);
  g_test_add_func ("/engine/ring-calculix/spokes agree with a fresh run",
                   test_spokes_agree_with_a_fresh_run);
  return g_test_run ();
}
