// SPDX-License-Identifier: GPL-3.0-or-later
/* layers-test.c: a layer includes only itself and what lies below it. The libraries'
 * dependencies keep cairo out of the engine and GTK out of packet; this keeps our own folders
 * apart.
 */
#include <gio/gio.h>

static const struct {
  const char *layer;
  const char *above[5]; /* must not be included */
} layers[] = {
  { "engine", { "drawing", "packet", "commands", "app" } },
  { "drawing", { "packet", "commands", "app" } },
  { "packet", { "commands", "app" } },
  { "commands", { "app" } },
  { "app", { "commands" } },
};

static const char *const foreign[][2] = {
  { "engine", "<cairo" },     { "engine", "<pango" },   { "engine", "<gtk/" },
  { "engine", "<adwaita" },   { "drawing", "<gtk/" },   { "drawing", "<adwaita" },
  { "packet", "<gtk/" },      { "packet", "<adwaita" }, { "commands", "<gtk/" },
  { "commands", "<adwaita" },
};

static void
check_line (const char *layer, const char *file, const char *line)
{
  for (guint i = 0; i < G_N_ELEMENTS (layers); i++) {
    for (guint j = 0; g_str_equal (layers[i].layer, layer) && layers[i].above[j] != NULL; j++) {
      g_autofree char *start = g_strdup_printf ("#include \"%s/", layers[i].above[j]);
      if (g_str_has_prefix (line, start))
        g_error ("%s looks up: %s", file, line);
    }
  }
  for (guint i = 0; i < G_N_ELEMENTS (foreign); i++) {
    g_autofree char *start = g_strconcat ("#include ", foreign[i][1], NULL);
    if (g_str_equal (foreign[i][0], layer) && g_str_has_prefix (line, start))
      g_error ("%s includes what its layer must not see: %s", file, line);
  }
}

static guint
check_folder (const char *layer)
{
  g_autofree char *folder = g_build_filename (g_getenv ("SW_SOURCE"), "src", layer, NULL);
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  guint files = 0;
  const char *name;

  g_assert_nonnull (dir);
  while ((name = g_dir_read_name (dir)) != NULL) {
    g_autofree char *path = g_build_filename (folder, name, NULL);
    g_autofree char *text = NULL;
    if (!g_str_has_suffix (name, ".c") && !g_str_has_suffix (name, ".h"))
      continue;
    g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
    g_auto (GStrv) lines = g_strsplit (text, "\n", -1);
    for (guint i = 0; lines[i] != NULL; i++)
      check_line (layer, path, lines[i]);
    files++;
  }
  return files;
}

static void
test_no_layer_looks_up (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (layers); i++)
    g_assert_cmpuint (check_folder (layers[i].layer), >, 0);
}

static void
test_an_upward_include_is_seen (void)
{
  if (g_test_subprocess ()) {
    check_line ("engine", "cone.c", "#include \"drawing/view.h\"");
    return;
  }
  g_test_trap_subprocess (NULL, 0, G_TEST_SUBPROCESS_DEFAULT);
  g_test_trap_assert_failed ();
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/layers/no layer looks up", test_no_layer_looks_up);
  g_test_add_func ("/layers/an upward include is seen", test_an_upward_include_is_seen);
  return g_test_run ();
}
