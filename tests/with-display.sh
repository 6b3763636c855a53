#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
# Runs a command with an X display of its own, so that tests of the window neither show on the
# user's screen nor need one. Ends with the command's exit status.
# usage: with-display.sh COMMAND [ARGUMENT...]
#
# Where Xvfb is not installed, or the project has no tests that open a window, the command runs
# without any display.
set -eu

if [ $# -eq 0 ]; then
  echo "usage: with-display.sh COMMAND [ARGUMENT...]" >&2
  exit 2
fi

here=$(cd "$(dirname "$0")" && pwd)
unset DISPLAY WAYLAND_DISPLAY XAUTHORITY

if [ ! -d "$here/window" ] || ! command -v Xvfb > /dev/null 2>&1; then
  exec "$@"
fi

scratch=$(mktemp -d)
server=
clean_up () {
  if [ -n "$server" ]; then
    kill "$server" 2> /dev/null || :
    wait "$server" 2> /dev/null || :
  fi
  rm -rf "$scratch"
}
trap clean_up EXIT
trap 'exit 1' HUP INT TERM

# Xvfb chooses a free number itself and writes it once it can be used. It would start anew whenever
# its last window program ends, and meanwhile turn away the next one: -noreset.
Xvfb -displayfd 3 -noreset -screen 0 1920x1200x24 -nolisten tcp 3> "$scratch/number" \
  > "$scratch/log" 2>&1 < /dev/null &
server=$!
tries=0
until [ -s "$scratch/number" ]; do
  tries=$((tries + 1))
  if [ "$tries" -gt 100 ] || ! kill -0 "$server" 2> /dev/null; then
    echo "with-display: Xvfb did not start" >&2
    cat "$scratch/log" >&2
    exit 125
  fi
  sleep 0.1
done

DISPLAY=:$(cat "$scratch/number")
GDK_BACKEND=x11
# The plain renderer: no GL driver whose memory the sanitizers would report.
GSK_RENDERER=cairo
GDK_DEBUG=gl-disable
GSETTINGS_BACKEND=memory
export DISPLAY GDK_BACKEND GSK_RENDERER GDK_DEBUG GSETTINGS_BACKEND

status=0
"$@" || status=$?
exit "$status"
