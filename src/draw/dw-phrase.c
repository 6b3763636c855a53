/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-phrase.h"

#include <glib.h>
#include <string.h>

static const char *
find (const dw_word *words, const char *name, size_t length)
{
  for (const dw_word *word = words; word->name != NULL; word++)
    if (strlen (word->name) == length && memcmp (word->name, name, length) == 0)
      return word->text;
  return NULL;
}

char *
dw_phrase_fill (const char *phrase, const dw_word *words)
{
  GString *out = g_string_new (NULL);
  while (*phrase != '\0')
    {
      const char *close = *phrase == '{' ? strchr (phrase, '}') : NULL;
      const char *text = close != NULL ? find (words, phrase + 1, (size_t)(close - phrase - 1))
                                       : NULL;
      if (text == NULL)
        {
          g_string_append_c (out, *phrase++);
          continue;
        }
      g_string_append (out, text);
      phrase = close + 1;
    }
  return g_string_free (out, FALSE);
}
