#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
# Fails when a header does not compile alone, as C17, with the libraries of its layer and no others.
# Model, study and ride have ISO C; the others have what POSIX and the C library add to it.
# usage: check-headers.sh SRC_DIR [COMPILER...]
set -eu

src=$1
shift
[ $# -gt 0 ] || set -- cc

# pkg-config names of the libraries that a layer may use; see check-layers.sh.
libraries () {
  case $1 in
    model) ;;
    study | ride) echo gsl ;;
    project) echo gio-2.0 libxml-2.0 ;;
    draw) echo pangocairo ;;
    sheet | calc) echo gsl gio-2.0 libxml-2.0 pangocairo ;;
    window) echo gsl gio-2.0 libxml-2.0 gtk4 ;;
    *)
      echo "src/$1: not a layer of check-headers.sh" >&2
      return 1
      ;;
  esac
}

standard () {
  case $1 in
    model | study | ride) echo c17 ;;
    *) echo gnu17 ;;
  esac
}

bad=0
n=0
for folder in "$src"/*/; do
  layer=$(basename "$folder")
  packages=
  flags=
  for header in "$folder"*.h; do
    [ -f "$header" ] || continue
    if [ -z "$packages" ]; then
      packages=$(libraries "$layer") || exit 1
      # shellcheck disable=SC2086
      [ -z "$packages" ] || flags=$(pkg-config --cflags $packages) || exit 1
      packages=${packages:-none}
    fi
    n=$((n + 1))
    # The typedef: a header of macros only would leave nothing to compile.
    # shellcheck disable=SC2086
    if ! printf '#include "%s"\ntypedef int alone;\n' "$layer/$(basename "$header")" \
      | "$@" "-std=$(standard "$layer")" -Wall -Wextra -Wpedantic -Wshadow -Wstrict-prototypes -Wundef -Werror \
        -fsyntax-only -I "$src" $flags -x c -; then
      echo "src/$layer/$(basename "$header"): does not compile alone"
      bad=1
    fi
  done
done

if [ "$n" -eq 0 ]; then
  echo "no headers in $src"
  bad=1
fi
exit $bad
