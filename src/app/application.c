// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/application.h"

#include <adwaita.h>

int
sw_application_main (int argc, char **argv)
{
  g_autoptr (AdwApplication) application =
    adw_application_new ("org.spirewright.Spirewright", G_APPLICATION_HANDLES_OPEN);
  return g_application_run (G_APPLICATION (application), argc, argv);
}
