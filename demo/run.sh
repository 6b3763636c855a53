#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
# Builds Dampwright on a bare Debian 12 and shows it at work on the demonstration project.
# usage: sh demo/run.sh
#
# With a display it opens the window on the project. Without one it prints the damping forces of
# every setup, a comparison of two of them, a drilling table, a ladder of stacks and the builds
# nearest to a target, and writes the same as CSV, and the chart as PDF and PNG, to the current
# folder. Installs what is missing, as root or through sudo.
#
# DAMPWRIGHT_OUT   folder for the files (default: the current one)
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

# Leaves the paths of the programs that are built from this tree in $calc and $window.
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
  ninja -C "$dir" src/calc/dampcalc src/window/dampwright data/gschemas.compiled > "$log" 2>&1 \
    || { cat "$log"; exit 1; }
  calc=$dir/src/calc/dampcalc
  window=$dir/src/window/dampwright
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

  say "what drilling half of the front's holes would do: dampcalc drill"
  "$calc" drill "$project" --setup "$fitted" --axle front --most-holes 3
  "$calc" drill "$project" --setup "$fitted" --format csv -o "$out/club-final-drill.csv"

  say "what each stack of the shims at hand would do: dampcalc stacks"
  "$calc" stacks "$project" --setup "$fitted" --axle rear --most-leaves 2
  "$calc" stacks "$project" --setup "$fitted" --format csv -o "$out/club-final-stacks.csv"

  say "what comes nearest to a tenth less rebound: dampcalc match"
  "$calc" match "$project" --setup "$fitted" --axle front --keep compression --change rebound:-10
  "$calc" match "$project" --setup "$fitted" --axle front --keep compression --change rebound:-10 \
    --format csv -o "$out/club-final-match.csv"

  say "the chart: dampcalc chart"
  "$calc" chart "$project" --setup "$fitted,$trial" -o "$out/club-final-chart.pdf"
  "$calc" chart "$project" --setup "$fitted,$trial" -o "$out/club-final-chart.png"

  say "the setup sheet with its bench card: dampcalc sheet"
  "$calc" sheet "$project" --setup "$trial" --kind both -o "$out/club-final-sheet.pdf"
  "$calc" sheet "$project" --setup "$trial" -o "$out/club-final-sheet.png"

  say "written"
  for name in force.csv compare.csv drill.csv stacks.csv match.csv chart.pdf chart.png sheet.pdf \
    sheet.png; do
    file=$(cd "$out" && pwd)/club-final-$name
    if [ ! -s "$file" ]; then
      echo "$file: nothing was written" >&2
      exit 1
    fi
    echo "$file"
  done
}

# From the build folder: nothing needs to be installed for it.
show_window () {
  say "the window (close it to end)"
  GSETTINGS_SCHEMA_DIR=$dir/data DAMPWRIGHT_DEMO_DIR=$root/demo "$window" "$project"
}

if [ -n "${DAMPWRIGHT_CALC-}" ]; then
  calc=$DAMPWRIGHT_CALC
  show_numbers
  exit 0
fi
build
if [ -n "${DISPLAY-}${WAYLAND_DISPLAY-}" ]; then
  show_window
else
  show_numbers
fi
