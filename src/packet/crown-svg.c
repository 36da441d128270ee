// SPDX-License-Identifier: GPL-3.0-or-later
#include "packet/crown-svg.h"

#include <glib/gi18n.h>
#include <math.h>

#define MM 1000.0      /* a metre */
#define MARGIN_MM 12.0 /* round the outermost hole: its edge distance and the words */
#define TEXT_MM 2.5    /* the smallest lettering that reads well (ISO 3098) */
#define TITLE_MM 5.0
#define LABEL_PITCH_MM 5.0   /* least space between two strip numbers */
#define LEAST_HALF_MM 75.0   /* so that the words find room beside a small plate */
#define UNKNOWN_HOLE_M 0.003 /* pilot hole where the hook is not in the catalogue */

typedef struct {
  GString *text;
  const SwSolution *solution;
  const SwLanguage *language;
  double hole_mm, circle_mm, half_mm; /* diameter, radius, half the sheet's side */
} Plate;

/* XML 1.0 has no control characters, escaped or not. */
static char *
xml_text (const char *text)
{
  g_autofree char *clean = g_strdup (text);

  for (char *c = clean; *c != '\0'; c++) {
    if (g_ascii_iscntrl (*c))
      *c = ' ';
  }
  return g_markup_escape_text (clean, -1);
}

/* A place in mm, to the nanometre, whatever the locale; never "-0". */
static char *
mm (double value)
{
  char digits[G_ASCII_DTOSTR_BUF_SIZE];
  double whole_nm = round (value * 1e6);

  g_ascii_formatd (digits, sizeof digits, "%.6f", fabs (whole_nm) < 0.5 ? 0.0 : value);
  return g_strdup (digits);
}

static void
add_circle (Plate *plate, double x_mm, double y_mm, double r_mm)
{
  g_autofree char *x = mm (x_mm);
  g_autofree char *y = mm (y_mm);
  g_autofree char *r = mm (r_mm);

  g_string_append_printf (plate->text, "    <circle cx=\"%s\" cy=\"%s\" r=\"%s\"/>\n", x, y, r);
}

/* No circle element: those are holes, for whoever reads the file by machine. */
static void
add_guide (Plate *plate)
{
  g_autofree char *r = mm (plate->circle_mm);

  g_string_append_printf (plate->text,
                          "    <ellipse cx=\"0\" cy=\"0\" rx=\"%s\" ry=\"%s\"/>\n",
                          r,
                          r);
}

static void
add_line (Plate *plate, double x1_mm, double y1_mm, double x2_mm, double y2_mm)
{
  g_autofree char *x1 = mm (x1_mm);
  g_autofree char *y1 = mm (y1_mm);
  g_autofree char *x2 = mm (x2_mm);
  g_autofree char *y2 = mm (y2_mm);

  g_string_append_printf (plate->text,
                          "    <line x1=\"%s\" y1=\"%s\" x2=\"%s\" y2=\"%s\"/>\n",
                          x1,
                          y1,
                          x2,
                          y2);
}

static void
add_text (Plate *plate, double x_mm, double y_mm, double size_mm, const char *words)
{
  g_autofree char *x = mm (x_mm);
  g_autofree char *y = mm (y_mm);
  g_autofree char *size = mm (size_mm);
  g_autofree char *shown = xml_text (words);

  g_string_append_printf (plate->text,
                          "    <text x=\"%s\" y=\"%s\" font-size=\"%s\">%s</text>\n",
                          x,
                          y,
                          size,
                          shown);
}

static const char *
word (const Plate *plate, const char *id)
{
  return sw_language_text (plate->language, id);
}

static void
add_head (Plate *plate)
{
  g_autofree char *title = xml_text (plate->solution->design->title);
  g_autofree char *half = mm (-plate->half_mm);
  g_autofree char *side = mm (2 * plate->half_mm);

  g_string_append_printf (plate->text,
                          "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
                          "<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\" "
                          "width=\"%smm\" height=\"%smm\" viewBox=\"%s %s %s %s\">\n"
                          "  <title>%s</title>\n",
                          side,
                          side,
                          half,
                          half,
                          side,
                          side,
                          title);
}

static void
add_holes (Plate *plate)
{
  const GArray *holes = plate->solution->crown;

  g_string_append (plate->text,
                   "  <g id=\"cut\" fill=\"none\" stroke=\"#000000\" stroke-width=\"0.1\">\n");
  for (guint i = 0; i < holes->len; i++) {
    const SwHole *hole = &g_array_index (holes, SwHole, i);

    add_circle (plate, hole->x_m * MM, -hole->y_m * MM, plate->hole_mm / 2);
  }
  g_string_append (plate->text, "  </g>\n");
}

/* Every number, or every 5th, 10th, … where they would run into one another. */
static int
label_step (const Plate *plate, double radius_mm)
{
  double pitch_mm = radius_mm * sw_cone_step_deg (&plate->solution->design->shape) * G_PI / 180;

  if (pitch_mm >= LABEL_PITCH_MM)
    return 1;
  return 5 * (int) ceil (LABEL_PITCH_MM / pitch_mm / 5);
}

/* Strip numbers stand outside the holes; the hole of strip 1 has its own word. */
static void
add_numbers (Plate *plate)
{
  const GArray *holes = plate->solution->crown;
  double radius_mm = plate->circle_mm + plate->hole_mm / 2 + TEXT_MM;
  int step = label_step (plate, radius_mm);

  for (int strip = 1; strip <= (int) holes->len; strip++) {
    const SwHole *hole = &g_array_index (holes, SwHole, strip - 1);
    double k = radius_mm / plate->circle_mm * MM;
    char number[16];

    if (strip != 1 && strip % step != 0)
      continue;
    g_snprintf (number, sizeof number, "%d", strip);
    add_text (plate, hole->x_m * k, -hole->y_m * k + TEXT_MM * 0.35, TEXT_MM, number);
  }
}

#define LETTER_SHARE 0.65 /* of its size a letter is wide, at most on the average */

/* On one line, smaller where it is long. */
static double
title_mm (const Plate *plate)
{
  glong letters = MAX (g_utf8_strlen (plate->solution->design->title, -1), 1);

  return MIN (TITLE_MM, 2 * plate->half_mm / (LETTER_SHARE * (double) letters));
}

/* Inside the holes, between the last strip and the first. */
static void
add_seam (Plate *plate)
{
  const SwShape *shape = &plate->solution->design->shape;
  double azimuth_deg = sw_cone_azimuth_deg (shape, 1) - sw_cone_step_deg (shape) / 2;
  SwPoint at = sw_point_on_circle (azimuth_deg, plate->circle_mm * 0.85, 0);

  if (shape->coverage_deg >= 360)
    add_text (plate, at.x_m, -at.y_m, TEXT_MM, word (plate, N_ ("seam here")));
}

static void
add_words (Plate *plate)
{
  double half_mm = plate->half_mm;
  const char *below[] = {
    word (plate, N_ ("Top side up. Do not mirror: strip numbers grow anticlockwise.")),
    word (plate, N_ ("Millimetres, true size. Cut the group “cut” only.")),
  };

  add_text (plate,
            0,
            -half_mm + TITLE_MM + 2,
            title_mm (plate),
            plate->solution->design->title);
  add_text (plate, 0, -half_mm + TITLE_MM + 7, TEXT_MM, word (plate, N_ ("Crown plate")));
  for (guint i = 0; i < G_N_ELEMENTS (below); i++)
    add_text (plate, 0, half_mm - 7 + 4 * i, TEXT_MM, below[i]);
  add_text (plate, 0, half_mm - 13, TITLE_MM * 0.7, word (plate, N_ ("Viewer side")));
}

static void
add_notes (Plate *plate)
{
  g_string_append (plate->text,
                   "  <g id=\"notes\" fill=\"none\" stroke=\"#1d2433\" stroke-width=\"0.1\" "
                   "stroke-dasharray=\"2 1\">\n");
  add_guide (plate);
  add_line (plate, -4, 0, 4, 0);
  add_line (plate, 0, -4, 0, 4);
  g_string_append (plate->text,
                   "  </g>\n"
                   "  <g id=\"words\" fill=\"#1d2433\" font-family=\"sans-serif\" "
                   "text-anchor=\"middle\">\n");
  add_numbers (plate);
  add_seam (plate);
  add_words (plate);
  g_string_append (plate->text, "  </g>\n</svg>\n");
}

char *
sw_crown_svg (const SwSolution *solution, const SwLanguage *language)
{
  const SwDesign *design = solution->design;
  const SwHook *hook = sw_catalogue_hook (solution->catalogue, design->crown.hook);
  Plate plate = { .text = g_string_new (NULL), .solution = solution, .language = language };

  plate.hole_mm = (hook == NULL ? UNKNOWN_HOLE_M : hook->hole_m) * MM;
  plate.circle_mm = (design->shape.crown_radius_m - design->crown.hook_reach_m) * MM;
  plate.half_mm = MAX (plate.circle_mm + plate.hole_mm + MARGIN_MM, LEAST_HALF_MM) + 22;
  add_head (&plate);
  add_holes (&plate);
  add_notes (&plate);
  return g_string_free (plate.text, FALSE);
}
