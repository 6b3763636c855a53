#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
# Builds Dampwright on a bare Debian 12 and shows it at work on the demonstration project.
# usage: sh demo/run.sh
#
# Prints the damping forces of every setup and a comparison of two of them, and writes the same as
# CSV to the current folder. Installs what is missing, as root or through sudo.
#
# DAMPWRIGHT_OUT   folder for the CSV files (default: the current one)
# DAMPWRIGHT_CALC  a dampcalc to use instead of building one
# DW_BUILD_DIR     folder for the build folder (default: the source tree, or the user's cache when
#                  the tree cannot be written)
set -eu

root=$(cd "$(dirname "$0")/.." && pwd)
project=$root/demo/club-final.dampwright
fitted=baseline
trial=trial-1
out=${DAMPWRIGHT_OUT:-.}

say () {
  printf '\n== %s\n' "$*"
}

# Leaves the path of a dampcalc that is built from this tree in $calc.
build () {
  say "packages"
  sh "$root/tests/install-deps.sh" --only-run

  builds=${DW_BUILD_DIR:-$root}
  if [ -z "${DW_BUILD_DIR-}" ] && [ ! -w "$root" ]; then
    builds=${XDG_CACHE_HOME:-${HOME:-/tmp}/.cache}/dampwright
  fi
  mkdir -p "$builds/build-logs"
  builds=$(cd "$builds" && pwd)
  dir=$builds/build-demo
  log=$builds/build-logs/demo

  say "build ($dir)"
  # What cannot be configured any more, after a move of the tree say, is made anew.
  if [ ! -f "$dir/build.ninja" ] \
    || ! meson setup --reconfigure -Dbuildtype=release "$dir" "$root" > "$log" 2>&1; then
    rm -rf "$dir"
    meson setup -Dbuildtype=release "$dir" "$root" > "$log" 2>&1 || { cat "$log"; exit 1; }
  fi
  ninja -C "$dir" src/calc/dampcalc > "$log" 2>&1 || { cat "$log"; exit 1; }
  calc=$dir/src/calc/dampcalc
}

# The main job without a display: what does a change do, in numbers.
show_numbers () {
  mkdir -p "$out"

  say "forces of every setup: dampcalc force"
  "$calc" force "$project"
  "$calc" force "$project" --format csv -o "$out/club-final-force.csv"

  say "the fitted setup and a trial: dampcalc compare"
  "$calc" compare "$project" "$fitted" "$trial"
  "$calc" compare "$project" "$fitted" "$trial" --format csv -o "$out/club-final-compare.csv"

  say "written"
  for name in force compare; do
    file=$(cd "$out" && pwd)/club-final-$name.csv
    if [ ! -s "$file" ]; then
      echo "$file: nothing was written" >&2
      exit 1
    fi
    echo "$file"
  done
}

if [ -n "${DAMPWRIGHT_CALC-}" ]; then
  calc=$DAMPWRIGHT_CALC
else
  build
fi
show_numbers
