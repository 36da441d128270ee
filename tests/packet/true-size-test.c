// SPDX-License-Identifier: GPL-3.0-or-later
/* Tape and plate measured in the PDFs themselves, as mupdf's tracer reads them: every stroke
 * with its places in points, 72 to the inch (ISO 32000-1, 8.3.2.3). What must come out is in
 * the solution, to a tenth of a millimetre.
 */
#include "engine/starts.h"
#include "packet/sheets.h"

#include <glib/gstdio.h>
#include <math.h>
#include <string.h>

#define M_PER_PT (0.0254 / 72)
#define NEAR_M 1e-4

typedef struct {
  double x, y;
} Place;

/* One run of a path between two moves. */
typedef struct {
  GArray *places; /* owned: Place, of lines and curve ends */
  int page;
  gboolean dashed, curved, closed;
} Run;

typedef struct {
  GPtrArray *runs;
  int page;
  gboolean dashed;
  double matrix[6];
} Reader;

static void
run_free (gpointer data)
{
  g_array_unref (((Run *) data)->places);
  g_free (data);
}

static const char *
attribute (const char **names, const char **values, const char *name)
{
  for (guint i = 0; names[i] != NULL; i++) {
    if (g_str_equal (names[i], name))
      return values[i];
  }
  return NULL;
}

static void
read_matrix (Reader *reader, const char *text)
{
  g_auto (GStrv) numbers = g_strsplit (text, " ", 6);

  g_assert_cmpuint (g_strv_length (numbers), ==, 6);
  for (guint i = 0; i < 6; i++)
    reader->matrix[i] = g_ascii_strtod (numbers[i], NULL);
}

static void
add_place (Reader *reader, const char *x_text, const char *y_text)
{
  double x = g_ascii_strtod (x_text, NULL);
  double y = g_ascii_strtod (y_text, NULL);
  const double *m = reader->matrix;
  Place place = { m[0] * x + m[2] * y + m[4], m[1] * x + m[3] * y + m[5] };
  Run *run = g_ptr_array_index (reader->runs, reader->runs->len - 1);

  g_array_append_val (run->places, place);
}

static void
begin_run (Reader *reader)
{
  Run *run = g_new0 (Run, 1);

  run->places = g_array_new (FALSE, FALSE, sizeof (Place));
  run->page = reader->page;
  run->dashed = reader->dashed;
  g_ptr_array_add (reader->runs, run);
}

static void
start_cb (GMarkupParseContext *context,
          const char *element,
          const char **names,
          const char **values,
          gpointer data,
          GError **error)
{
  Reader *reader = data;
  Run *last =
    reader->runs->len == 0 ? NULL : g_ptr_array_index (reader->runs, reader->runs->len - 1);

  if (g_str_equal (element, "page")) {
    reader->page++;
  } else if (g_str_has_suffix (element, "_path")) {
    reader->dashed = attribute (names, values, "dash") != NULL;
    read_matrix (reader, attribute (names, values, "transform"));
  } else if (g_str_equal (element, "moveto")) {
    begin_run (reader);
    add_place (reader, attribute (names, values, "x"), attribute (names, values, "y"));
  } else if (g_str_equal (element, "lineto")) {
    add_place (reader, attribute (names, values, "x"), attribute (names, values, "y"));
  } else if (g_str_equal (element, "curveto")) {
    last->curved = TRUE;
    add_place (reader, attribute (names, values, "x3"), attribute (names, values, "y3"));
  } else if (g_str_equal (element, "closepath")) {
    last->closed = TRUE;
  }
}

static GPtrArray *
read_runs (const char *path)
{
  static const GMarkupParser parser = { .start_element = start_cb };
  const char *argv[] = { "mutool", "trace", path, NULL };
  g_autoptr (GError) error = NULL;
  g_autofree char *trace = NULL;
  Reader reader = { .runs = g_ptr_array_new_with_free_func (run_free) };
  g_autoptr (GMarkupParseContext) context = NULL;

  g_spawn_sync (NULL,
                (char **) (guintptr) argv,
                NULL,
                G_SPAWN_SEARCH_PATH,
                NULL,
                NULL,
                &trace,
                NULL,
                NULL,
                &error);
  g_assert_no_error (error);
  context = g_markup_parse_context_new (&parser, 0, &reader, NULL);
  g_markup_parse_context_parse (context, strstr (trace, "<document"), -1, &error);
  g_assert_no_error (error);
  return reader.runs;
}

typedef struct {
  const char *start;
  SwPaper paper;
  void (*change) (SwDesign *design);
} Case;

static SwSolution *
solve (const Case *kind)
{
  g_autoptr (SwDesign) design = sw_start_new (kind->start, NULL);
  g_autoptr (GError) error = NULL;
  SwSolution *solution;

  design->shape.facing_deg = 5;
  if (kind->change != NULL)
    kind->change (design);
  solution = sw_solution_new (design, sw_catalogue_builtin (NULL), &error);
  g_assert_no_error (error);
  return solution;
}

static GPtrArray *
runs_of (const SwSolution *solution, SwPaper paper, SwSheetFile file)
{
  g_autoptr (SwSheets) sheets = sw_sheets_new (solution, paper, &sw_language_english);
  g_autoptr (GBytes) pdf = sw_sheets_to_pdf (sheets, file, NULL);
  g_autofree char *path = NULL;
  int opened = g_file_open_tmp ("true-size-XXXXXX.pdf", &path, NULL);
  GPtrArray *runs;

  g_close (opened, NULL);
  g_file_set_contents (path,
                       g_bytes_get_data (pdf, NULL),
                       (gssize) g_bytes_get_size (pdf),
                       NULL);
  runs = read_runs (path);
  g_unlink (path);
  return runs;
}

static const Place *
at (const Run *run, guint i)
{
  return &g_array_index (run->places, Place, i);
}

/* A lane is the only closed box that is not dashed. */
static gboolean
is_lane (const Run *run)
{
  return run->closed && !run->dashed && !run->curved && run->places->len >= 4;
}

/* A mark is a single upright line that begins on the lane's upper edge. */
static gboolean
is_mark_of (const Run *run, const Run *lane)
{
  double top = at (lane, 0)->y;

  return run->page == lane->page && !run->closed && !run->curved && run->places->len == 2 &&
         fabs (at (run, 0)->x - at (run, 1)->x) < 0.01 && fabs (at (run, 0)->y - top) < 0.01 &&
         at (run, 1)->y > top && at (run, 0)->x >= at (lane, 0)->x - 0.01 &&
         at (run, 0)->x <= at (lane, 1)->x + 0.01;
}

static int
rising (gconstpointer a, gconstpointer b)
{
  double x = *(const double *) a;
  double y = *(const double *) b;

  return (x > y) - (x < y);
}

/* Running lengths of all marks along the joined lanes, and the lanes' whole length. */
static GArray *
measured_marks (const GPtrArray *runs, double *length_m)
{
  GArray *marks = g_array_new (FALSE, FALSE, sizeof (double));

  *length_m = 0;
  for (guint i = 0; i < runs->len; i++) {
    const Run *lane = g_ptr_array_index (runs, i);

    if (!is_lane (lane))
      continue;
    for (guint j = 0; j < runs->len; j++) {
      const Run *run = g_ptr_array_index (runs, j);

      if (is_mark_of (run, lane)) {
        double arc_m = *length_m + (at (run, 0)->x - at (lane, 0)->x) * M_PER_PT;

        g_array_append_val (marks, arc_m);
      }
    }
    *length_m += (at (lane, 1)->x - at (lane, 0)->x) * M_PER_PT;
  }
  g_array_sort (marks, rising);
  return marks;
}

static double
arc_of (const SwSolution *solution, guint i)
{
  return solution->as_built != NULL
           ? g_array_index (solution->as_built->marks, SwAsBuiltMark, i).arc_m
           : g_array_index (solution->marks, SwRingMark, i).arc_m;
}

static double
whole_length_m (const SwSolution *solution)
{
  const SwShape *shape = &solution->design->shape;

  if (shape->coverage_deg < 360)
    return arc_of (solution, solution->marks->len - 1);
  if (solution->as_built != NULL)
    return solution->as_built->perimeter_m;
  return 2 * G_PI * (shape->ring_radius_m + solution->ring_od_m / 2);
}

static void
test_the_tape_measures_true (gconstpointer data)
{
  const Case *kind = data;
  g_autoptr (SwSolution) solution = solve (kind);
  g_autoptr (GPtrArray) runs = runs_of (solution, kind->paper, SW_SHEET_RING_TAPE);
  double length_m;
  g_autoptr (GArray) marks = measured_marks (runs, &length_m);

  g_assert_cmpuint (marks->len, ==, solution->marks->len);
  for (guint i = 0; i < marks->len; i++)
    g_assert_cmpfloat_with_epsilon (g_array_index (marks, double, i),
                                    arc_of (solution, i),
                                    NEAR_M);
  g_assert_cmpfloat_with_epsilon (length_m, whole_length_m (solution), 2 * NEAR_M);
}

/* The box round a run. */
static void
box_of (const Run *run, Place *middle, double *radius)
{
  double x0 = G_MAXDOUBLE, y0 = G_MAXDOUBLE, x1 = -G_MAXDOUBLE, y1 = -G_MAXDOUBLE;

  for (guint i = 0; i < run->places->len; i++) {
    x0 = MIN (x0, at (run, i)->x);
    x1 = MAX (x1, at (run, i)->x);
    y0 = MIN (y0, at (run, i)->y);
    y1 = MAX (y1, at (run, i)->y);
  }
  *middle = (Place){ (x0 + x1) / 2, (y0 + y1) / 2 };
  *radius = (x1 - x0) / 2;
}

static gboolean
is_circle (const Run *run, double radius_m, Place *middle)
{
  double radius;

  if (!run->curved)
    return FALSE;
  box_of (run, middle, &radius);
  return fabs (radius * M_PER_PT - radius_m) < NEAR_M;
}

/* The plate's centre on a page: the middle of the circle the holes stand on. */
static gboolean
find_centre (const GPtrArray *runs, int page, double circle_m, Place *centre)
{
  for (guint i = 0; i < runs->len; i++) {
    const Run *run = g_ptr_array_index (runs, i);

    if (run->page == page && !run->dashed && is_circle (run, circle_m, centre))
      return TRUE;
  }
  return FALSE;
}

/* Which strip's hole stands there, with up on the sheet away from the viewer. */
static int
hole_at (const SwSolution *solution, Place middle, Place centre)
{
  for (guint i = 0; i < solution->crown->len; i++) {
    const SwHole *hole = &g_array_index (solution->crown, SwHole, i);
    double x_m = (middle.x - centre.x) * M_PER_PT;
    double y_m = (centre.y - middle.y) * M_PER_PT;

    if (fabs (x_m - hole->x_m) < NEAR_M && fabs (y_m - hole->y_m) < NEAR_M)
      return (int) i;
  }
  return -1;
}

/* Every hole on the page is one of the solution's; those seen are noted. */
static void
check_page (const SwSolution *solution, const GPtrArray *runs, int page, gboolean *seen)
{
  const SwDesign *design = solution->design;
  double circle_m = design->shape.crown_radius_m - design->crown.hook_reach_m;
  const SwHook *hook = sw_catalogue_hook (solution->catalogue, design->crown.hook);
  Place centre = { 0 }, middle = { 0 };

  g_assert_true (find_centre (runs, page, circle_m, &centre));
  for (guint i = 0; i < runs->len; i++) {
    const Run *run = g_ptr_array_index (runs, i);
    int hole;

    if (run->page != page || !is_circle (run, hook->hole_m / 2, &middle))
      continue;
    hole = hole_at (solution, middle, centre);
    g_assert_cmpint (hole, >=, 0);
    seen[hole] = TRUE;
  }
}

/* The tree is turned by 5° (see solve ()), so that a mirrored plate is another one. */
static void
test_the_plate_measures_true (gconstpointer data)
{
  const Case *kind = data;
  g_autoptr (SwSolution) solution = solve (kind);
  g_autoptr (GPtrArray) runs = runs_of (solution, kind->paper, SW_SHEET_CROWN_PLATE);
  const Run *last = g_ptr_array_index (runs, runs->len - 1);
  g_autofree gboolean *seen = g_new0 (gboolean, solution->crown->len);

  for (int page = 1; page <= last->page; page++)
    check_page (solution, runs, page, seen);
  for (guint i = 0; i < solution->crown->len; i++)
    g_assert_true (seen[i]);
}

static void
set_two_strips (SwDesign *design)
{
  design->shape.strip_count = 2;
  design->shape.ring_radius_m = 0.1;
  design->shape.crown_radius_m = 0.05;
}

static void
set_many_strips (SwDesign *design)
{
  design->shape.strip_count = 512;
  design->shape.ring_radius_m = 10;
}

static void
set_measured (SwDesign *design)
{
  static const SwRingPoint points[] = { { 0, 1.03 },
                                        { 80, 1.01 },
                                        { 170, 0.99 },
                                        { 260, 1.02 },
                                        { 310, 1.00 } };

  g_array_append_vals (design->as_built.ring_points, points, G_N_ELEMENTS (points));
}

static const struct {
  const char *name;
  Case kind;
} kinds[] = {
  { "lawn", { "lawn", SW_PAPER_A4, NULL } },
  { "lawn, letter", { "lawn", SW_PAPER_LETTER, NULL } },
  { "porch, open", { "porch", SW_PAPER_A4, NULL } },
  { "landmark", { "landmark", SW_PAPER_LETTER, NULL } },
  { "two strips", { "lawn", SW_PAPER_A4, set_two_strips } },
  { "512 strips", { "lawn", SW_PAPER_LETTER, set_many_strips } },
  { "as measured", { "lawn", SW_PAPER_A4, set_measured } },
};

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (kinds); i++) {
    g_autofree char *tape = g_strdup_printf ("/packet/true-size/tape/%s", kinds[i].name);
    g_autofree char *plate = g_strdup_printf ("/packet/true-size/plate/%s", kinds[i].name);

    g_test_add_data_func (tape, &kinds[i].kind, test_the_tape_measures_true);
    g_test_add_data_func (plate, &kinds[i].kind, test_the_plate_measures_true);
  }
  return g_test_run ();
}
