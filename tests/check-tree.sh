#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
# Fails when the source tree holds what does not belong there.
# usage: check-tree.sh ROOT_DIR
#
# Looks at tracked and not ignored files where git knows the tree, else at all files outside build
# folders. Words that would find this very file are written in two pieces.
set -eu

cd "$1"
LC_ALL=C
export LC_ALL

scratch=$(mktemp -d)
trap 'rm -rf "$scratch"' EXIT
trap 'exit 1' HUP INT TERM
bad=0

if [ -e .git ] && git ls-files -co --exclude-standard > "$scratch/listed" 2> /dev/null; then
  while IFS= read -r file; do
    [ ! -f "$file" ] || printf '%s\n' "$file"
  done < "$scratch/listed" > "$scratch/files"
else
  find . -type d \( -name .git -o -name 'build*' -o -name __pycache__ \) -prune -o -type f -print \
    | sed 's|^\./||' > "$scratch/files"
fi
if [ ! -s "$scratch/files" ]; then
  echo "no files in $1"
  exit 1
fi

# 1. The top level is a short list.
sed 's|/.*||' "$scratch/files" | sort -u | while IFS= read -r name; do
  case $name in
    README.md | DEVELOPERS.md | meson.build | LICENSE) ;;
    src | ui | tests | data | demo | po) ;;
    .*) ;;
    *) echo "$name: does not belong on the top level" ;;
  esac
done > "$scratch/found"
if [ -s "$scratch/found" ]; then
  cat "$scratch/found"
  bad=1
fi

# 2. Words that no file may hold. LICENSE is not ours to change.
grep -v '^LICENSE$' "$scratch/files" | tr '\n' '\0' > "$scratch/ours"
forbid () { # forbid REASON GREP_ARGUMENT...
  reason=$1
  shift
  if xargs -0 grep -nI "$@" -- /dev/null < "$scratch/ours" > "$scratch/found"; then
    sed "s|^|$reason: |" "$scratch/found"
    bad=1
  fi
}
forbid "path of one machine" -E -e '(^|[^A-Za-z0-9_.})/-])/(wor''k|hom''e|roo''t|User''s)/'
forbid "file outside the project" -E -e '\.\./shar''ed'
forbid "unfinished" -wE -e 'TO''DO|FIX''ME|XX''X'
forbid "merge conflict" -E -e '^(<<<''<<<<|>>>''>>>>) '

# 3. Addresses: only those that names and licences are made of.
known='(www\.)?(gnu\.org|fsf\.org|w3\.org|relaxng\.org|freedesktop\.org)([/"<>) ]|$)'
xargs -0 grep -nIoE -e 'https?:''//[^ "<>)]*' -- /dev/null < "$scratch/ours" \
  | grep -vE "https?:""//$known" > "$scratch/found" || :
if [ -s "$scratch/found" ]; then
  sed 's|^|address: |' "$scratch/found"
  bad=1
fi

# 4. Every source file names its licence in its first lines.
while IFS= read -r file; do
  case $file in
    *.c | *.h | *.sh | *.py | .ci/run)
      if ! head -n 3 "$file" | grep -q 'SPDX-License-Identifier: GPL-3\.0-or-later'; then
        echo "$file: no SPDX line"
        bad=1
      fi
      ;;
  esac
done < "$scratch/files"

# 5. What is started by name must be startable.
if [ -f .ci/run ] && [ ! -x .ci/run ]; then
  echo ".ci/run: not executable"
  bad=1
fi

exit $bad
