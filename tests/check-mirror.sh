#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
# Fails when a source file has no test file of the same noun, or a test file no source file:
# src/LAYER/dw-NOUN.c and tests/LAYER/test-NOUN.c.
# usage: check-mirror.sh ROOT_DIR
set -eu

cd "$1"

# Source files without a test file of their own, each with the reason. One that has a test after
# all, or that is gone, does not belong here.
exceptions='
'

excepted () {
  printf '%s' "$exceptions" | grep -q "^$1 "
}

bad=0
n=0
for source in src/*/dw-*.c; do
  [ -f "$source" ] || continue
  n=$((n + 1))
  layer=${source#src/}
  layer=${layer%%/*}
  noun=${source##*/dw-}
  noun=${noun%.c}
  test=tests/$layer/test-$noun.c
  if excepted "$source"; then
    if [ -f "$test" ]; then
      echo "$source: has a test and is still excepted in check-mirror.sh"
      bad=1
    fi
  elif [ ! -f "$test" ]; then
    echo "$source: no $test"
    bad=1
  fi
done

for test in tests/*/test-*.c; do
  [ -f "$test" ] || continue
  case $test in
    tests/support/*) continue ;; # what tests share is not a layer
  esac
  layer=${test#tests/}
  layer=${layer%%/*}
  noun=${test##*/test-}
  noun=${noun%.c}
  if [ ! -f "src/$layer/dw-$noun.c" ]; then
    echo "$test: no src/$layer/dw-$noun.c"
    bad=1
  fi
done

for source in $(printf '%s' "$exceptions" | sed 's/ .*//'); do
  if [ ! -f "$source" ]; then
    echo "$source: excepted in check-mirror.sh but not there"
    bad=1
  fi
done

if [ "$n" -eq 0 ]; then
  echo "no source files in $1/src"
  bad=1
fi
exit $bad
