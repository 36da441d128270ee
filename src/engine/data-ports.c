// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/data-ports.h"

#include <math.h>

enum { UNIVERSE_SLOTS = 512, LAST_UNIVERSE = 63999 }; /* ANSI E1.31 */

/* pixels·bits/rate + pause ≤ 1/frames, with room for the last bits: a frame that fits exactly
 * fits, though 1/30 s has no exact binary form.
 */
static int
pixels_by_timing (const SwDataSetup *data)
{
  double time_s = 1 / data->frame_hz - data->reset_us * 1e-6;
  double pixels = time_s * data->bit_rate_hz / data->bits_per_pixel;

  pixels = floor (pixels + 1e-9);
  return (int) CLAMP (pixels, 0, G_MAXINT / 2);
}

static int
port_pixels_max (const SwDataSetup *data)
{
  int timing = pixels_by_timing (data);

  return data->port_pixels_max > 0 ? MIN (timing, data->port_pixels_max) : timing;
}

static int
strips_per_port (const SwDesign *design, int most_pixels)
{
  int room = (most_pixels - design->data.skipped_pixels) / design->strip.pixels;
  int most = design->data.strips_per_port_max;

  if (most > 0)
    room = MIN (room, most);
  return CLAMP (room, 1, design->shape.strip_count);
}

static int
star_pixels (const SwDesign *design)
{
  return design->topper.kind == SW_TOPPER_STAR ? design->topper.pixels : 0;
}

static void
add_port (SwDataPlan *plan, const SwDataSetup *data, SwPort port)
{
  int driven = data->skipped_pixels + port.pixels;
  int universes = (driven + data->pixels_per_universe - 1) / data->pixels_per_universe;

  port.port = ++plan->ports;
  port.first_universe = data->first_universe + plan->universes;
  port.last_universe = port.first_universe + universes - 1;
  g_array_append_val (plan->rows, port);
  plan->universes += universes;
}

static void
add_strip_ports (SwDataPlan *plan, const SwDesign *design)
{
  int count = design->shape.strip_count;

  for (int first = 1; first <= count; first += plan->strips_per_port) {
    int last = MIN (first + plan->strips_per_port - 1, count);
    add_port (plan,
              &design->data,
              (SwPort){ .first_strip = first,
                        .last_strip = last,
                        .pixels = (last - first + 1) * design->strip.pixels });
  }
}

void
sw_data_plan_init (SwDataPlan *plan, const SwDesign *design)
{
  const SwDataSetup *data = &design->data;
  int star = star_pixels (design);

  *plan = (SwDataPlan){ .port_pixels_max = port_pixels_max (data),
                        .channels_per_pixel = data->bits_per_pixel / 8,
                        .rows = g_array_new (FALSE, FALSE, sizeof (SwPort)) };
  plan->strips_per_port = strips_per_port (design, plan->port_pixels_max);
  add_strip_ports (plan, design);
  if (star > 0)
    add_port (plan, data, (SwPort){ .pixels = star });
  plan->strip_too_long = design->strip.pixels + data->skipped_pixels > plan->port_pixels_max;
  plan->star_too_long = star > 0 && star + data->skipped_pixels > plan->port_pixels_max;
  plan->universe_overfull =
    data->pixels_per_universe * plan->channels_per_pixel > UNIVERSE_SLOTS;
  plan->universe_beyond = data->first_universe + plan->universes - 1 > LAST_UNIVERSE;
}

void
sw_data_plan_clear (SwDataPlan *plan)
{
  g_clear_pointer (&plan->rows, g_array_unref);
}

gboolean
sw_data_runs_up (const SwDataPlan *plan, const SwDesign *design, int strip)
{
  gboolean first_up = design->data.enter == SW_ENTER_RING;
  int place = (strip - 1) % plan->strips_per_port; /* on its port */

  return design->data.path == SW_PATH_UP_DOWN && place % 2 == 1 ? !first_up : first_up;
}

SwAddress
sw_data_address (const SwDataPlan *plan, const SwDesign *design, int strip, int pixel)
{
  guint row = strip == 0 ? plan->rows->len - 1 : (guint) ((strip - 1) / plan->strips_per_port);
  const SwPort *port = &g_array_index (plan->rows, SwPort, row);
  int before = strip == 0 ? 0 : (strip - port->first_strip) * design->strip.pixels;
  int index = design->data.skipped_pixels + before + pixel - 1;
  int each = design->data.pixels_per_universe;

  return (SwAddress){ .port = port->port,
                      .universe = port->first_universe + index / each,
                      .channel = 1 + index % each * plan->channels_per_pixel };
}
