/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "calc/dw-calc-arguments.h"

#include <string.h>

#include "calc/dw-calc-error.h"

struct dw_calc_arguments
{
  const dw_calc_option *options; /* borrowed */
  const char **values;           /* owned array of borrowed texts, by option; NULL = not given */
  GPtrArray *operands;           /* of borrowed texts */
};

static int
n_options (const dw_calc_option *options)
{
  int n = 0;
  while (options[n].name != NULL)
    n++;
  return n;
}

void
dw_calc_arguments_free (dw_calc_arguments *arguments)
{
  if (arguments == NULL)
    return;
  g_free (arguments->values);
  g_ptr_array_unref (arguments->operands);
  g_free (arguments);
}

/* Index of the option with the first @p length bytes of @p word as its name, -1 = none. */
static int
find_option (const dw_calc_arguments *self, const char *word, size_t length)
{
  for (int i = 0; self->options[i].name != NULL; i++)
    if (strlen (self->options[i].name) == length
        && strncmp (self->options[i].name, word, length) == 0)
      return i;
  return -1;
}

/* Reads the option at words[*at] and moves *at to its last word. */
static gboolean
read_option (dw_calc_arguments *self, int n_words, char *const *words, int *at, GError **error)
{
  const char *word = words[*at];
  const char *equals = g_str_has_prefix (word, "--") ? strchr (word, '=') : NULL;
  const size_t length = equals != NULL ? (size_t)(equals - word) : strlen (word);
  const int i = find_option (self, word, length);
  if (i < 0)
    return dw_calc_misused (error, "unknown option \"%.*s\"", (int)length, word);

  const dw_calc_option *option = &self->options[i];
  if (self->values[i] != NULL)
    return dw_calc_misused (error, "%s is given twice", option->name);
  if (option->value == NULL)
    {
      if (equals != NULL)
        return dw_calc_misused (error, "%s takes no value", option->name);
      self->values[i] = "";
      return TRUE;
    }
  /* "--setup --axle front": the value was forgotten, "--axle" is none */
  const bool has_next = *at + 1 < n_words && !g_str_has_prefix (words[*at + 1], "--");
  if (equals == NULL && !has_next)
    return dw_calc_misused (error, "%s needs %s behind it", option->name, option->value);
  self->values[i] = equals != NULL ? equals + 1 : words[++*at];
  return TRUE;
}

dw_calc_arguments *
dw_calc_arguments_new (const dw_calc_option *options, int n_words, char *const *words,
                       GError **error)
{
  g_autoptr (dw_calc_arguments) self = g_new0 (dw_calc_arguments, 1);
  self->options = options;
  self->values = g_new0 (const char *, (gsize)n_options (options) + 1);
  self->operands = g_ptr_array_new ();

  bool options_end = false;
  for (int i = 0; i < n_words; i++)
    {
      if (options_end || words[i][0] != '-' || words[i][1] == '\0')
        g_ptr_array_add (self->operands, words[i]);
      else if (strcmp (words[i], "--") == 0)
        options_end = true;
      else if (!read_option (self, n_words, words, &i, error))
        return NULL;
      if (dw_calc_arguments_get (self, "--help") != NULL)
        break;
    }
  return g_steal_pointer (&self);
}

const char *
dw_calc_arguments_get (const dw_calc_arguments *self, const char *name)
{
  const int i = find_option (self, name, strlen (name));
  return i < 0 ? NULL : self->values[i];
}

const char *
dw_calc_arguments_require (const dw_calc_arguments *self, const char *name, GError **error)
{
  const char *value = dw_calc_arguments_get (self, name);
  if (value == NULL)
    dw_calc_misused (error, "%s is missing", name);
  return value;
}

bool
dw_calc_arguments_has (const dw_calc_arguments *self, const char *name)
{
  return dw_calc_arguments_get (self, name) != NULL;
}

gboolean
dw_calc_arguments_choose (const dw_calc_arguments *self, const char *name, const char *const *words,
                          int *value, GError **error)
{
  const char *text = dw_calc_arguments_get (self, name);
  if (text == NULL)
    return TRUE;
  for (int i = 0; words[i] != NULL; i++)
    if (strcmp (words[i], text) == 0)
      {
        *value = i;
        return TRUE;
      }
  g_autofree char *all = g_strjoinv (" or ", (char **)(guintptr)words);
  return dw_calc_misused (error, "%s needs %s, not \"%s\"", name, all, text);
}

bool
dw_calc_arguments_wants_csv (const dw_calc_arguments *self)
{
  return g_strcmp0 (dw_calc_arguments_get (self, "--format"), "csv") == 0;
}

guint
dw_calc_arguments_get_n_operands (const dw_calc_arguments *self)
{
  return self->operands->len;
}

const char *
dw_calc_arguments_get_operand (const dw_calc_arguments *self, guint index)
{
  g_return_val_if_fail (index < self->operands->len, NULL);

  return g_ptr_array_index (self->operands, index);
}
