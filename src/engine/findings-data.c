// SPDX-License-Identifier: GPL-3.0-or-later
/* findings-data.c: ports, universes, frames and leads. */
#include "engine/finding-table.h"

#include <glib/gi18n.h>
#include <math.h>
#include <string.h>

#define SLOTS 512           /* of a universe. Source: ANSI E1.31 */
#define UNIVERSE_MOST 63999 /* Source: ANSI E1.31 */
#define LEAD_MOST_M 5       /* for pixel data without a booster; common practice, no source */
#define FRAMES_LEAST_HZ 20  /* below, movement is seen in steps; common practice, no source */

static double
frame_s (const SwDataSetup *data, int pixels)
{
  return (double) pixels * data->bits_per_pixel / data->bit_rate_hz + data->reset_us * 1e-6;
}

/* What lets a port drive so many pixels: its own limit lifted, or fewer frames a second. */
static void
offer_longer_port (const SwSolution *s, SwFindingDraft *draft, int pixels)
{
  const SwDataSetup *data = &s->design->data;
  double hz = sw_round_down (1 / frame_s (data, pixels), 1);

  if (data->port_pixels_max > 0)
    sw_draft_remedy (draft, "data.port_pixels_max", 0);
  if (hz >= FRAMES_LEAST_HZ)
    sw_draft_remedy (draft, "data.frame_hz", hz);
}

static void
say_port (SwFindingDraft *draft, const SwSolution *s, int pixels)
{
  sw_draft_say (draft, "pixels", SW_QUANTITY_COUNT, pixels);
  sw_draft_say (draft, "most", SW_QUANTITY_COUNT, s->data.port_pixels_max);
}

static gboolean
port_too_short (const SwSolution *s, SwFindingDraft *draft)
{
  int skipped = s->design->data.skipped_pixels;
  int pixels = s->design->strip.pixels + skipped;

  if (!s->data.strip_too_long)
    return FALSE;
  say_port (draft, s, pixels);
  offer_longer_port (s, draft, pixels);
  sw_draft_remedy (draft, "strip.pixels", s->data.port_pixels_max - skipped);
  return TRUE;
}

static gboolean
star_port_too_short (const SwSolution *s, SwFindingDraft *draft)
{
  int skipped = s->design->data.skipped_pixels;
  int pixels = s->design->topper.pixels + skipped;

  if (!s->data.star_too_long)
    return FALSE;
  say_port (draft, s, pixels);
  offer_longer_port (s, draft, pixels);
  sw_draft_remedy (draft, "topper.pixels", s->data.port_pixels_max - skipped);
  return TRUE;
}

static gboolean
universe_overfull (const SwSolution *s, SwFindingDraft *draft)
{
  int channels = s->data.channels_per_pixel;

  if (!s->data.universe_overfull)
    return FALSE;
  sw_draft_say (draft,
                "channels",
                SW_QUANTITY_COUNT,
                (double) s->design->data.pixels_per_universe * channels);
  sw_draft_say (draft, "slots", SW_QUANTITY_COUNT, SLOTS);
  sw_draft_say (draft, "fit", SW_QUANTITY_COUNT, SLOTS / channels);
  sw_draft_remedy (draft, "data.pixels_per_universe", SLOTS / channels);
  return TRUE;
}

static gboolean
universe_beyond (const SwSolution *s, SwFindingDraft *draft)
{
  if (!s->data.universe_beyond)
    return FALSE;
  sw_draft_say (draft,
                "last",
                SW_QUANTITY_COUNT,
                s->design->data.first_universe + s->data.universes - 1);
  sw_draft_say (draft, "most", SW_QUANTITY_COUNT, UNIVERSE_MOST);
  sw_draft_remedy (draft, "data.first_universe", UNIVERSE_MOST - s->data.universes + 1);
  return TRUE;
}

static gboolean
lead_long (const SwSolution *s, SwFindingDraft *draft)
{
  if (s->design->data.lead_m <= LEAD_MOST_M)
    return FALSE;
  sw_draft_say (draft, "lead", SW_QUANTITY_LENGTH, s->design->data.lead_m);
  sw_draft_say (draft, "most", SW_QUANTITY_LENGTH, LEAD_MOST_M);
  sw_draft_remedy (draft, "data.lead_m", LEAD_MOST_M);
  return TRUE;
}

static gboolean
frames_few (const SwSolution *s, SwFindingDraft *draft)
{
  double hz = s->design->data.frame_hz;

  if (hz >= FRAMES_LEAST_HZ)
    return FALSE;
  sw_draft_say (draft, "hz", SW_QUANTITY_FREQUENCY, hz);
  sw_draft_say (draft, "least", SW_QUANTITY_FREQUENCY, FRAMES_LEAST_HZ);
  sw_draft_remedy (draft, "data.frame_hz", FRAMES_LEAST_HZ);
  return TRUE;
}

static gboolean
colours_differ (const SwSolution *s, SwFindingDraft *draft)
{
  const SwDataSetup *data = &s->design->data;
  gsize colours = strlen (data->colour_order);

  if ((int) colours == s->data.channels_per_pixel)
    return FALSE;
  sw_draft_say_text (draft, "order", data->colour_order);
  sw_draft_say (draft, "bits", SW_QUANTITY_COUNT, data->bits_per_pixel);
  sw_draft_say (draft, "channels", SW_QUANTITY_COUNT, s->data.channels_per_pixel);
  return TRUE;
}

const SwFindingRow sw_findings_of_data[] = {
  { SW_LEVEL_STOP,
    "port-too-short",
    "strip.pixels",
    N_ ("One strip has {pixels} pixels with the skipped ones, but a port drives {most} at this "
        "frame rate. Use fewer frames a second or shorter strips."),
    port_too_short },
  { SW_LEVEL_STOP,
    "star-port-too-short",
    "topper.pixels",
    N_ ("The star has {pixels} pixels with the skipped ones, but a port drives {most} at this "
        "frame rate. Use fewer frames a second or fewer pixels."),
    star_port_too_short },
  { SW_LEVEL_STOP,
    "universe-overfull",
    "data.pixels_per_universe",
    N_ ("So many pixels would take {channels} channels of a universe, which has {slots}. {fit} "
        "pixels fit."),
    universe_overfull },
  { SW_LEVEL_STOP,
    "universe-beyond",
    "data.first_universe",
    N_ ("The last universe would be {last}; {most} is the highest there is."),
    universe_beyond },
  { SW_LEVEL_WARN,
    "data-lead-long",
    "data.lead_m",
    N_ (
      "Over {lead} of lead data may arrive damaged; up to {most} is usual. Move the driver box "
      "nearer, or put a booster in."),
    lead_long },
  { SW_LEVEL_WARN,
    "colours-differ",
    "data.colour_order",
    N_ ("The colour order {order} does not match {bits} bits a pixel, which make {channels} "
        "channels."),
    colours_differ },
  { SW_LEVEL_TIP,
    "frames-few",
    "data.frame_hz",
    N_ ("At {hz} movement is seen in steps; {least} and more look smooth."),
    frames_few },
  { 0 }
};
