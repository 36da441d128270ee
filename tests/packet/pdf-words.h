// SPDX-License-Identifier: GPL-3.0-or-later
/* pdf-words.h: the words of a PDF and where they stand, as poppler's tools read them back. */
#pragma once
#include <glib.h>
#include <string.h>

typedef struct {
  double x0, y0, x1, y1;
  char *text;
  int page;
} Word;

/* Not inline: gcc 12 then takes the text for a dangling pointer to `output`. */
G_NO_INLINE static char *
output_of (const char *const *argv)
{
  g_autoptr (GError) error = NULL;
  char *output = NULL;
  int status;

  g_spawn_sync (NULL,
                (char **) (guintptr) argv,
                NULL,
                G_SPAWN_SEARCH_PATH,
                NULL,
                NULL,
                &output,
                NULL,
                &status,
                &error);
  g_assert_no_error (error);
  g_assert_true (g_spawn_check_wait_status (status, NULL));
  return output;
}

/* Pages end in a form feed. */
static inline char **
read_pages (const char *path)
{
  const char *argv[] = { "pdftotext", path, "-", NULL };
  g_autofree char *text = output_of (argv);

  return g_strsplit (text, "\f", -1);
}

static inline double
attribute (const char **names, const char **values, const char *name)
{
  for (guint i = 0; names[i] != NULL; i++) {
    if (g_str_equal (names[i], name))
      return g_ascii_strtod (values[i], NULL);
  }
  g_assert_not_reached ();
}

typedef struct {
  GArray *words;
  int page;
  gboolean in_word;
} Reader;

static inline void
start_cb (GMarkupParseContext *context,
          const char *element,
          const char **names,
          const char **values,
          gpointer data,
          GError **error)
{
  Reader *reader = data;

  reader->page += g_str_equal (element, "page");
  reader->in_word = g_str_equal (element, "word");
  if (reader->in_word) {
    Word word = { attribute (names, values, "xMin"),
                  attribute (names, values, "yMin"),
                  attribute (names, values, "xMax"),
                  attribute (names, values, "yMax"),
                  NULL,
                  reader->page };

    g_array_append_val (reader->words, word);
  }
}

static inline void
text_cb (GMarkupParseContext *context,
         const char *text,
         gsize length,
         gpointer data,
         GError **error)
{
  Reader *reader = data;

  if (reader->in_word)
    g_array_index (reader->words, Word, reader->words->len - 1).text = g_strndup (text, length);
  reader->in_word = FALSE;
}

static inline void
word_clear (gpointer word)
{
  g_free (((Word *) word)->text);
}

static inline GArray *
words_of (const char *path)
{
  static const GMarkupParser parser = { .start_element = start_cb, .text = text_cb };
  const char *argv[] = { "pdftotext", "-bbox", path, "-", NULL };
  g_autofree char *boxes = output_of (argv);
  Reader reader = { g_array_new (FALSE, TRUE, sizeof (Word)), 0, FALSE };
  g_autoptr (GMarkupParseContext) context =
    g_markup_parse_context_new (&parser, 0, &reader, NULL);
  g_autoptr (GError) error = NULL;

  g_array_set_clear_func (reader.words, word_clear);
  g_markup_parse_context_parse (context, strstr (boxes, "<html"), -1, &error);
  g_assert_no_error (error);
  return reader.words;
}

/* By more than a hair: the boxes are those of the font, taller than the letters. */
static inline gboolean
overlap (const Word *a, const Word *b)
{
  double wide = MIN (a->x1, b->x1) - MAX (a->x0, b->x0);
  double tall = MIN (a->y1, b->y1) - MAX (a->y0, b->y0);

  return a->page == b->page && wide > 0.8 && tall > 0.4 * MIN (a->y1 - a->y0, b->y1 - b->y0);
}
