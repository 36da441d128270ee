// SPDX-License-Identifier: GPL-3.0-or-later
/* units.h: people's units, in and out. Inside the program all is SI.
 *
 * In   14' 6 1/2"   14'-6½"   14 ft 6.5 in   4.42 m   3/4 in   2*24 in   (12 + 3) mm   30 MPH
 *      A bare number has the row's own unit (sw_units_name ()). Arithmetic: + - * / ( ).
 *      The language's decimal sign is taken; a point always is.
 * Out  feet, inches and sixteenths, or metres and millimetres; each rounded once.
 * Sources: the international foot is 0.3048 m and the avoirdupois pound 0.45359237 kg exactly
 *      (NIST Special Publication 811, appendix B).
 */
#pragma once
#include "engine/design.h"
#include "engine/language.h"
#include "engine/quantity.h"

/* Errors: SW_ERROR_SYNTAX with what was not understood and an example of what is. */
gboolean sw_units_parse (const char *text,
                         SwQuantity quantity,
                         SwUnits units,
                         const SwLanguage *language,
                         double *value,
                         GError **error);

/* Returns: (transfer full): value with its unit: "9′ 4 5/8″", "2.86 m", "51 mm", "40 %". Never
 * "-0". */
char *sw_units_format (double value,
                       SwQuantity quantity,
                       SwUnits units,
                       const SwLanguage *language);

/* The same without a unit, as an entry beside a unit label shows it; only feet keep their
 * marks. At least four digits; short lengths in sixteenths only where they are exact. What it
 * gives, sw_units_parse () reads back to within the shown digits.
 */
char *sw_units_format_bare (double value,
                            SwQuantity quantity,
                            SwUnits units,
                            const SwLanguage *language);

/* Returns: (transfer full): a length in inches and sixteenths only ("112 9/16″") or
 * millimetres. */
char *sw_units_format_tape (double metres, SwUnits units, const SwLanguage *language);

/* Returns: the unit's sign ("m", "in", "°", "mph"), "" where there is none. */
const char *sw_units_name (SwQuantity quantity, SwUnits units);

/* One unit of sw_units_name () in SI: 0.0254 for an inch; steps and bare numbers use it. */
double sw_units_factor (SwQuantity quantity, SwUnits units);
