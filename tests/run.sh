#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
# Builds and tests everything on a bare Debian 12, as root or with sudo, from any folder:
#   1. gcc -O2 with assertions, all tests and the checks of the source
#   2. gcc with address and undefined-behaviour sanitizers, all but the longest tests
#   3. clang with -Werror, all but the slow tests, in a locale with a decimal comma
# usage: sh tests/run.sh
#
# The last line is "N passed, N failed": tests over all builds; a build that fails counts as one
# failed test, and so does a test that was skipped. The exit status is 0 only if none failed.
#
# DW_BUILD_DIR  folder for the build folders (default: the source tree, or the user's cache when
#               the tree cannot be written)
# DW_JOBS       how many compilers and tests run at a time (default: the number of processors)
# DW_SEED       seed of the random tests (default: always the same)
set -u

root=$(cd "$(dirname "$0")/.." && pwd) || exit 1

sh "$root/tests/install-deps.sh" || exit 1

# The caller's language and compiler flags must not decide the outcome; each build sets its own.
unset LANG LANGUAGE LC_CTYPE LC_NUMERIC LC_TIME LC_COLLATE LC_MONETARY LC_MESSAGES LOCPATH
unset CFLAGS CPPFLAGS LDFLAGS CC CC_LD
unset ASAN_OPTIONS LSAN_OPTIONS UBSAN_OPTIONS
unset CK_FORK CK_RUN_CASE CK_RUN_SUITE CK_INCLUDE_TAGS CK_EXCLUDE_TAGS CK_DEFAULT_TIMEOUT
unset MESON_TESTTHREADS MESON_TEST_ITERATION
LC_ALL=C.UTF-8
export LC_ALL

jobs=${DW_JOBS:-$(getconf _NPROCESSORS_ONLN 2> /dev/null || echo 2)}

builds=${DW_BUILD_DIR:-$root}
if [ -z "${DW_BUILD_DIR-}" ] && [ ! -w "$root" ]; then
  builds=${XDG_CACHE_HOME:-${HOME:-/tmp}/.cache}/dampwright
fi
if ! mkdir -p "$builds/build-logs"; then
  echo "run: cannot write to $builds; name another folder in DW_BUILD_DIR" >&2
  exit 1
fi
builds=$(cd "$builds" && pwd) || exit 1

passed=0
failed=0

say () {
  printf '\n== %s\n' "$*"
}

# Locales with a decimal comma, made without root; the tests find them through LOCPATH.
make_locales () {
  LOCPATH=$builds/build-locales
  mkdir -p "$LOCPATH" || return 1
  for name in de_DE es_ES fr_FR; do
    [ -e "$LOCPATH/$name.UTF-8/LC_NUMERIC" ] && continue
    # An interrupted run must not leave half a locale behind.
    rm -rf "$LOCPATH/$name.UTF-8" "$LOCPATH/new"
    localedef -i "$name" -f UTF-8 "$LOCPATH/new" || return 1
    mv "$LOCPATH/new" "$LOCPATH/$name.UTF-8" || return 1
  done
  export LOCPATH
  # A test that needs one of them fails from now on when it is not there.
  DW_REQUIRE_LOCALES=1
  export DW_REQUIRE_LOCALES
}

# count RESULT... FILE: lines of meson's record with one of the results.
count () {
  grep -cE "\"result\": \"($1)\"" "$2"
}

# build_and_test NAME TITLE SETUP_OPTIONS TEST_OPTIONS; options without spaces inside.
build_and_test () {
  dir=$builds/build-$1
  log=$builds/build-logs/$1
  say "$2 ($dir)"
  # shellcheck disable=SC2086
  if [ -f "$dir/build.ninja" ]; then
    meson setup --reconfigure $3 "$dir" "$root" > "$log" 2>&1 \
      || { rm -rf "$dir" && meson setup $3 "$dir" "$root" > "$log" 2>&1; }
  else
    rm -rf "$dir" && meson setup $3 "$dir" "$root" > "$log" 2>&1
  fi
  if [ $? -ne 0 ]; then
    cat "$log"
    failed=$((failed + 1))
    return
  fi
  if ! ninja -C "$dir" -j "$jobs" > "$log" 2>&1; then
    cat "$log"
    failed=$((failed + 1))
    return
  fi

  record=$dir/meson-logs/testlog.json
  rm -f "$record"
  # shellcheck disable=SC2086
  sh "$root/tests/with-display.sh" meson test -C "$dir" --no-rebuild --num-processes "$jobs" \
    --print-errorlogs $4
  status=$?
  good=0
  all=0
  if [ -f "$record" ]; then
    good=$(count 'OK|EXPECTEDFAIL' "$record")
    all=$(grep -c '"result": ' "$record")
  fi
  passed=$((passed + good))
  failed=$((failed + all - good))
  if [ "$good" -eq 0 ] || { [ "$status" -ne 0 ] && [ "$good" -eq "$all" ]; }; then
    echo "run: the tests of this build did not run to their end"
    failed=$((failed + 1))
  fi
}

say "locales ($builds/build-locales)"
if ! make_locales; then
  echo "run: localedef could not make the locales" >&2
  failed=$((failed + 1))
fi

CC=gcc
CK_TIMEOUT_MULTIPLIER=5
export CC CK_TIMEOUT_MULTIPLIER
build_and_test release 'gcc -O2 with assertions' \
  '-Dbuildtype=release -Doptimization=2 -Db_ndebug=false -Dwerror=true' ''

CK_TIMEOUT_MULTIPLIER=20
ASAN_OPTIONS=detect_leaks=1:halt_on_error=1:detect_stack_use_after_return=1:strict_string_checks=1
UBSAN_OPTIONS=halt_on_error=1:print_stacktrace=1
export ASAN_OPTIONS UBSAN_OPTIONS
build_and_test sanitize 'gcc with address and undefined-behaviour sanitizers' \
  '-Dbuildtype=debugoptimized -Db_ndebug=false -Dwerror=true -Db_sanitize=address,undefined -Db_lundef=false' \
  '-t 5 --no-suite check --no-suite long'
unset ASAN_OPTIONS UBSAN_OPTIONS

CC=clang
CK_TIMEOUT_MULTIPLIER=5
# Programs that ask for the user's locale now get a decimal comma; messages stay English.
LC_ALL=
LC_NUMERIC=de_DE.UTF-8
LANG=C.UTF-8
export LC_ALL LC_NUMERIC LANG
build_and_test clang 'clang with -Werror, in a locale with a decimal comma' \
  '-Dbuildtype=debugoptimized -Db_ndebug=false -Dwerror=true' '--no-suite check --no-suite slow'

say 'all builds'
echo "$passed passed, $failed failed"
[ "$failed" -eq 0 ]
