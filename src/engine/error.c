// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/error.h"

GQuark
sw_error_quark (void)
{
  return g_quark_from_static_string ("sw-error-quark");
}
