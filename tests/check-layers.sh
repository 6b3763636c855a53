#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
# Fails when a source file uses what its layer may not use.
# usage: check-layers.sh SRC_DIR
#
# The table below is the one of src/README.md. Besides the includes it looks for
# cycles inside a layer, for writable variables outside functions where only
# values are allowed, and for printing where only the command line may print.
set -eu

cd "$1"
LC_ALL=C
export LC_ALL

# layer: layers and libraries it may use. "c" is ISO C, "posix" any other header of the C library.
table='
model    c
study    c model gsl
ride     c model gsl
project  c posix model study glib libxml
draw     c posix model study ride cairo pango glib
sheet    c posix model study ride project draw gsl glib libxml cairo pango
window   c posix model study ride project draw sheet gsl glib libxml cairo pango gtk
calc     c posix model study ride project draw sheet gsl glib libxml cairo pango
'

scratch=$(mktemp -d)
trap 'rm -rf "$scratch"' EXIT
trap 'exit 1' HUP INT TERM
bad=0

for folder in */; do
  layer=${folder%/}
  [ -d "$layer" ] || continue
  may=$(printf '%s' "$table" | sed -n "s/^$layer  *//p")
  if [ -z "$may" ]; then
    echo "src/$layer: not a layer of the table in check-layers.sh"
    bad=1
    continue
  fi

  : > "$scratch/pairs"
  for file in "$layer"/*.[ch]; do
    [ -f "$file" ] || continue
    awk -v file="$file" -v layer="$layer" -v may="$may" -v pairs="$scratch/pairs" '
      BEGIN {
        split (may, words, " ")
        for (i in words) allowed[words[i]] = 1
        allowed[layer] = 1
        n = split ("assert complex ctype errno fenv float inttypes iso646 limits locale math " \
                   "setjmp signal stdalign stdarg stdatomic stdbool stddef stdint stdio stdlib " \
                   "stdnoreturn string tgmath threads time uchar wchar wctype", c, " ")
        for (i = 1; i <= n; i++) iso[c[i] ".h"] = 1
        noun = file
        sub (/^.*\//, "", noun); sub (/\.[ch]$/, "", noun); sub (/-private$/, "", noun)
        values = layer == "model" || layer == "study" || layer == "ride"
        silent = values || layer == "project" || layer == "draw"
      }
      function fail (why) { print "src/" file ":" FNR ": " why; bad = 1 }
      function library (name) {
        if (name in iso) return "c"
        if (name ~ /^gsl\//) return "gsl"
        if (name ~ /^(glib|gio|gobject|gmodule)([\/.-]|$)/) return "glib"
        if (name ~ /^libxml2?\//) return "libxml"
        if (name ~ /^cairo/) return "cairo"
        if (name ~ /^pango/) return "pango"
        if (name ~ /^(gtk|gdk|gsk)\//) return "gtk"
        return "posix"
      }
      /^[ \t]*#[ \t]*include[ \t]*"/ {
        split ($0, part, "\"")
        name = part[2]
        if (name !~ /^[a-z]+\/[^\/]+$/) { fail ("include \"" name "\" has no layer in front"); next }
        from = name; sub (/\/.*/, "", from)
        if (!(from in allowed)) fail (layer " may not use " from ": \"" name "\"")
        if (from == layer) {
          other = name
          sub (/^.*\//, "", other); sub (/\.(h|inc)$/, "", other); sub (/-private$/, "", other)
          if (other != noun) print noun, other > pairs
        }
        next
      }
      /^[ \t]*#[ \t]*include[ \t]*</ {
        name = $0; sub (/^[^<]*</, "", name); sub (/>.*/, "", name)
        from = library (name)
        if (!(from in allowed)) fail (layer " may not use <" name ">")
        next
      }
      values && /^([ \t]+)?static [^(]*[;={]/ && !/const/ { fail ("writable variable: " $0) }
      values && /(^|[^a-z_0-9])(f?printf|f?puts|putchar|perror|fopen|getenv|setlocale) \(/ {
        fail (layer " neither prints nor reads its surroundings: " $0)
      }
      silent && !values && /(^|[^a-z_0-9])(printf|puts|putchar|perror|g_print|g_printerr) \(/ {
        fail ("only the command line prints: " $0)
      }
      END { close (pairs); exit bad }
    ' "$file" || bad=1
    # awk opens the file of pairs anew for every source file; keep what it found.
    cat "$scratch/pairs" >> "$scratch/all-$layer"
    : > "$scratch/pairs"
  done
  if [ -s "$scratch/all-$layer" ] && ! tsort "$scratch/all-$layer" > /dev/null 2> "$scratch/loop"; then
    echo "src/$layer: files use each other in a circle:"
    sed -n 's/^tsort: \(.*[^:]\)$/  \1/p' "$scratch/loop"
    bad=1
  fi
done

exit $bad
