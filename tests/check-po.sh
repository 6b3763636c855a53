#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
# Fails when a text of the window is not told in every language of po/LINGUAS: a message of the
# sources as they are now that has no translation, or one that is only a guess; a form, an access
# key or a {name} that a translation lost or made up; a source file that po/POTFILES.in forgets.
# usage: check-po.sh ROOT_DIR
#
# Nothing in ROOT_DIR is written: messages are taken from the sources into a scratch folder and
# merged there. DEVELOPERS.md says how to bring the files up to date.
set -eu

cd "$1"
LC_ALL=C.UTF-8
export LC_ALL

scratch=$(mktemp -d)
trap 'rm -rf "$scratch"' EXIT
trap 'exit 1' HUP INT TERM
bad=0

lines_of () { # lines_of FILE: without comments and empty lines
  sed -e 's/#.*//' -e 's/[[:space:]]*$//' -e '/^$/d' "$1"
}

# 1. Every file with texts is listed, and every listed file is there.
lines_of po/POTFILES.in | sort > "$scratch/listed"
while IFS= read -r file; do
  if [ ! -f "$file" ]; then
    echo "po/POTFILES.in: no $file"
    exit 1
  fi
done < "$scratch/listed"
grep -lE -e '(^|[^A-Za-z0-9_])(_|N_|C_|NC_|ngettext) ?\(' src/*/*.c src/*/*.h 2> /dev/null \
  > "$scratch/used" || :
grep -lE -e 'translatable="(yes|1|true)"' ui/*.ui 2> /dev/null >> "$scratch/used" || :
sort "$scratch/used" | comm -23 - "$scratch/listed" | sed 's|$|: has texts and is not in po/POTFILES.in|' \
  > "$scratch/found"
if [ -s "$scratch/found" ]; then
  cat "$scratch/found"
  bad=1
fi

# 2. The messages as they are now. The first words are those that meson's preset for GLib knows,
# the others stand in po/meson.build.
keywords=$(grep -oE -e '--keyword=[A-Za-z_]+:[0-9]+' po/meson.build || :)
# shellcheck disable=SC2086
if ! xgettext --files-from="$scratch/listed" --from-code=UTF-8 --output="$scratch/now.pot" \
  --keyword=_ --keyword=N_ --keyword=C_:1c,2 --keyword=NC_:1c,2 --keyword=g_dngettext:2,3 \
  --keyword=g_dpgettext2:2c,3 --flag=N_:1:pass-c-format --flag=C_:2:pass-c-format \
  --flag=g_strdup_printf:1:c-format --flag=g_string_append_printf:2:c-format $keywords \
  > "$scratch/log" 2>&1 || [ ! -s "$scratch/now.pot" ]; then
  cat "$scratch/log"
  echo "po: xgettext found no messages"
  exit 1
fi

# 3. Each language. The names in braces, which are filled in later, are compared by this program.
cat > "$scratch/names.py" << 'END'
import collections, re, struct, sys

data = open(sys.argv[1], "rb").read()
count, ids, texts = struct.unpack_from("<3I", data, 8)


def string(table, i):
    length, at = struct.unpack_from("<2I", data, table + 8 * i)
    return data[at:at + length].decode().split("\0")


def names(text):
    return collections.Counter(re.findall(r"\{[a-z_]+\}", text))


bad = False
for i in range(count):
    message = string(ids, i)
    source = message[0].split("\4")[-1]
    for text in string(texts, i) if source else []:
        if names(text) != names(source):
            print(f"{sys.argv[2]}: not the names in braces of the message: {source!r}, {text!r}")
            bad = True
sys.exit(bad)
END

missing () { # missing WHAT MSGATTRIB_OPTION LANGUAGE
  msgattrib --no-obsolete --no-location --no-wrap "$2" "$scratch/$3.po" > "$scratch/found"
  # nothing at all when there is none, else the header too
  if [ -s "$scratch/found" ]; then
    grep -c '^msgid ' "$scratch/found" | awk -v what="$1" -v file="po/$3.po" \
      '{ printf "%s: %s: %d\n", file, what, $1 - 1 }'
    sed -n 's/^msgid "\(..*\)"$/  \1/p' "$scratch/found"
    bad=1
  fi
}

lines_of po/LINGUAS > "$scratch/languages"
while IFS= read -r language; do
  po=po/$language.po
  if [ ! -f "$po" ]; then
    echo "$po: not there, and in po/LINGUAS"
    bad=1
    continue
  fi
  if ! msgfmt --check --check-accelerators=_ --output-file="$scratch/$language.mo" "$po" \
    > "$scratch/log" 2>&1 || [ -s "$scratch/log" ]; then
    cat "$scratch/log"
    echo "$po: msgfmt finds fault"
    bad=1
    continue
  fi
  msgmerge --quiet --no-wrap --output-file="$scratch/$language.po" "$po" "$scratch/now.pot"
  missing 'not translated' --untranslated "$language"
  missing 'fuzzy' --only-fuzzy "$language"
  python3 "$scratch/names.py" "$scratch/$language.mo" "$po" || bad=1
done < "$scratch/languages"

# 4. No language is forgotten.
for po in po/*.po; do
  [ -f "$po" ] || continue
  language=${po#po/}
  if ! grep -qx -e "${language%.po}" "$scratch/languages"; then
    echo "$po: not in po/LINGUAS"
    bad=1
  fi
done

exit $bad
