#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
# Fails when a C file is not formatted as .clang-format says.
# usage: check-format.sh ROOT_DIR
#
# To format: clang-format -i FILE... (version 14, the one of Debian 12; other versions differ).
set -eu

cd "$1"

tool=clang-format-14
command -v "$tool" > /dev/null 2>&1 || tool=clang-format
if ! "$tool" --version 2> /dev/null | grep -q 'version 14\.'; then
  echo "check-format.sh needs clang-format 14"
  exit 1
fi

if [ ! -f .clang-format ]; then
  echo "no .clang-format in $1"
  exit 1
fi
if [ -z "$(find src tests -name '*.[ch]' -print 2> /dev/null | head -n 1)" ]; then
  echo "no C files in src and tests of $1"
  exit 1
fi
find src tests -name '*.[ch]' -type f -print0 \
  | xargs -0 "$tool" --style=file --fallback-style=none --dry-run -Werror
