// SPDX-License-Identifier: GPL-3.0-or-later
/* application.h: the libadwaita application: opening files, windows, accelerators. */
#pragma once

/* Opens the window. Returns: the exit status. */
int sw_application_main (int argc, char **argv);
