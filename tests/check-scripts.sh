#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
# Fails when a script does not parse: *.sh as POSIX sh, .ci/run as bash, *.py as Python 3.
# usage: check-scripts.sh ROOT_DIR
set -eu

cd "$1"
scratch=$(mktemp)
trap 'rm -f "$scratch"' EXIT
trap 'exit 1' HUP INT TERM
bad=0

find src tests data demo po -type f \( -name '*.sh' -o -name '*.py' \) > "$scratch" 2> /dev/null || :
if [ ! -s "$scratch" ]; then
  echo "no scripts in $1"
  exit 1
fi

while IFS= read -r file; do
  case $file in
    *.sh)
      sh -n "$file" || bad=1
      # What bash understands and the standard's shell does not would fail only when it is run.
      if grep -nE -e '(^|[;&|] *|if |while |until |! )\[''\[ ' -e '[a-z})] <<''<|&''>' \
        -e '^ *fun''ction [A-Za-z_]+ *(\( *\))? *\{?$' "$file"; then
        echo "$file: not POSIX sh"
        bad=1
      fi
      ;;
    *.py)
      python3 -c 'import sys; compile(open(sys.argv[1], encoding="utf-8").read(), sys.argv[1], "exec")' \
        "$file" || bad=1
      ;;
  esac
done < "$scratch"

if [ -f .ci/run ]; then
  bash -n .ci/run || bad=1
fi
exit $bad
