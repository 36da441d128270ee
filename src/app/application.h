// SPDX-License-Identifier: GPL-3.0-or-later
/* application.h: the libadwaita application: opening files, windows, accelerators. */
#pragma once
#include <adwaita.h>

/* The application with its looks, icons and keys; tests make one without an id. Returns:
 * (transfer full).
 */
AdwApplication *sw_application_new (const char *id, GApplicationFlags flags);

/* Opens the window. Returns: the exit status. */
int sw_application_main (int argc, char **argv);
