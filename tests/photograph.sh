#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
# Photographs every page of the window, in all themes, at two sizes and with letters of 150 %, in
# English and German, for people to look at. Fails when a picture cannot be made, or when the window
# has anything to say on standard error.
# usage: photograph.sh BUILD_DIR [FOLDER]     (FOLDER: BUILD_DIR/photographs when not given)
#
# Without a display it makes one through with-display.sh. German needs the locale de_DE.UTF-8, on
# the system or in LOCPATH; where DW_REQUIRE_LOCALES is not set it is left out when it is missing.
set -eu

if [ $# -lt 1 ] || [ $# -gt 2 ]; then
  echo "usage: photograph.sh BUILD_DIR [FOLDER]" >&2
  exit 2
fi
here=$(cd "$(dirname "$0")" && pwd)
build=$(cd "$1" && pwd)
folder=${2:-$build/photographs}

if [ -z "${DISPLAY-}" ]; then
  exec sh "$here/with-display.sh" sh "$0" "$build" "$folder"
fi

mkdir -p "$folder"
said=$(mktemp)
told=$(mktemp)
trap 'rm -f "$said" "$told"' EXIT
trap 'exit 1' HUP INT TERM

GSETTINGS_BACKEND=memory
GSETTINGS_SCHEMA_DIR=$build/data
GSK_RENDERER=cairo
GTK_A11Y=test
GTK_USE_PORTAL=0
DAMPWRIGHT_LOCALE_DIR=$build/po

export GSETTINGS_BACKEND GSETTINGS_SCHEMA_DIR GSK_RENDERER GTK_A11Y GTK_USE_PORTAL
export DAMPWRIGHT_LOCALE_DIR

bad=0
photograph () { # photograph LABEL LOCALE PROJECT [PAGE]
  LC_ALL=$2 LANGUAGE=${2%%_*} "$build/tests/window/photograph" "$folder" "$1" \
    "$3".dampwright ${4+"$4"} 2> "$said" > "$told" || { cat "$told"; bad=1; }
  if [ -s "$said" ]; then
    sed "s|^|$1: |" "$said" >&2
    bad=1
  fi
}

has_locale () { # has_locale LOCALE
  [ -n "$(LC_ALL=$1 locale charmap 2> /dev/null | grep UTF-8)" ]
}

rm -f "$folder"/*.png
photograph en C.UTF-8 club-final
photograph smooth C.UTF-8 smooth-indoor drilling
photograph void C.UTF-8 early-void drilling
if has_locale de_DE.UTF-8; then
  photograph de de_DE.UTF-8 club-final
elif [ -n "${DW_REQUIRE_LOCALES-}" ]; then
  echo "the locale de_DE.UTF-8 is missing" >&2
  bad=1
fi
echo "photographs are in $folder"
exit $bad
