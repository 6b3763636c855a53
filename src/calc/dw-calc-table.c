/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "calc/dw-calc-table.h"

#include <string.h>

#include "calc/dw-calc-text.h"

/* Blanks between columns. */
#define GAP 2

struct dw_calc_table
{
  const dw_calc_column *columns; /* borrowed */
  guint n_columns;
  GPtrArray *cells; /* of texts, owned, row by row */
};

/* Where the texts of a column stand. */
typedef struct
{
  int width;
  int before; /* widest part of a number before its point */
  int after;  /* widest part from the point on */
} layout;

dw_calc_table *
dw_calc_table_new (const dw_calc_column *columns)
{
  dw_calc_table *table = g_new0 (dw_calc_table, 1);
  table->columns = columns;
  while (columns[table->n_columns].head != NULL)
    table->n_columns++;
  table->cells = g_ptr_array_new_with_free_func (g_free);
  return table;
}

void
dw_calc_table_free (dw_calc_table *table)
{
  if (table == NULL)
    return;
  g_ptr_array_unref (table->cells);
  g_free (table);
}

void
dw_calc_table_add (dw_calc_table *table, const char *text)
{
  g_ptr_array_add (table->cells, g_strdup (text));
}

void
dw_calc_table_add_figure (dw_calc_table *table, double value)
{
  g_ptr_array_add (table->cells, dw_calc_figure (value, 3));
}

void
dw_calc_table_add_plain (dw_calc_table *table, double value)
{
  g_ptr_array_add (table->cells, dw_calc_plain (value));
}

guint
dw_calc_table_get_n_rows (const dw_calc_table *table)
{
  return (table->cells->len + table->n_columns - 1) / table->n_columns;
}

static int
width_of (const char *text)
{
  return (int)g_utf8_strlen (text, -1);
}

/* Characters before the point; all of them when there is none. */
static int
width_before_point (const char *text)
{
  const char *point = strchr (text, '.');
  return point == NULL || strchr (text, 'e') != NULL ? width_of (text) : (int)(point - text);
}

static layout
measure (const dw_calc_table *table, guint column)
{
  const dw_calc_column *c = &table->columns[column];
  layout l = { .width = MAX (width_of (c->head), width_of (c->unit)) };
  for (guint i = column; i < table->cells->len; i += table->n_columns)
    {
      const char *text = g_ptr_array_index (table->cells, i);
      const int before = c->is_text ? width_of (text) : width_before_point (text);
      l.before = MAX (l.before, before);
      l.after = MAX (l.after, width_of (text) - before);
    }
  l.width = MAX (l.width, l.before + l.after);
  return l;
}

static void
put_blanks (GString *line, int n)
{
  for (int i = 0; i < n; i++)
    g_string_append_c (line, ' ');
}

/* Head and unit stand over the right edge of numbers, over the left one of texts. */
static void
put_head (GString *line, const dw_calc_column *column, const layout *l, const char *text)
{
  if (!column->is_text)
    put_blanks (line, l->width - width_of (text));
  g_string_append (line, text);
  if (column->is_text)
    put_blanks (line, l->width - width_of (text));
}

static void
put_cell (GString *line, const dw_calc_column *column, const layout *l, const char *text)
{
  if (column->is_text)
    {
      put_head (line, column, l, text);
      return;
    }
  const int before = width_before_point (text);
  const int lead = l->width - l->after - before;
  put_blanks (line, lead);
  g_string_append (line, text);
  put_blanks (line, l->width - lead - width_of (text));
}

/* Prints a line without the blanks at its end and empties it. */
static void
print_line (FILE *file, GString *line)
{
  gsize length = line->len;
  while (length > 0 && line->str[length - 1] == ' ')
    length--;
  fprintf (file, "%.*s\n", (int)length, line->str);
  g_string_truncate (line, 0);
}

void
dw_calc_table_print (const dw_calc_table *table, FILE *file, int indent)
{
  g_autofree layout *layouts = g_new0 (layout, table->n_columns);
  g_autoptr (GString) line = g_string_new (NULL);
  for (guint c = 0; c < table->n_columns; c++)
    layouts[c] = measure (table, c);

  for (int row = 0; row < 2; row++)
    {
      for (guint c = 0; c < table->n_columns; c++)
        {
          const dw_calc_column *column = &table->columns[c];
          put_blanks (line, c == 0 ? indent : GAP);
          put_head (line, column, &layouts[c], row == 0 ? column->head : column->unit);
        }
      print_line (file, line);
    }
  for (guint i = 0; i < table->cells->len; i++)
    {
      const guint c = i % table->n_columns;
      put_blanks (line, c == 0 ? indent : GAP);
      put_cell (line, &table->columns[c], &layouts[c], g_ptr_array_index (table->cells, i));
      if (c + 1 == table->n_columns || i + 1 == table->cells->len)
        print_line (file, line);
    }
}
