#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
# Shows that every check fails on what it is there to find, and passes what is right.
# usage: check-selftest.sh TESTS_DIR
#
# Samples are written to a scratch folder. Words that the checks would find in this very file are
# written in two pieces.
set -eu

tests=$(cd "$1" && pwd)
scratch=$(mktemp -d)
trap 'rm -rf "$scratch"' EXIT
trap 'exit 1' HUP INT TERM

n=0
bad=0
spdx='/* SPDX-License-Identifier: GPL-3.0-or-later */'

# A small project that passes everything, in a path with a space.
fresh () {
  root="$scratch/a project"
  rm -rf "$root"
  mkdir -p "$root/src/model" "$root/src/project" "$root/tests/model" "$root/tests/project" \
    "$root/.ci" "$root/src/window" "$root/tests/window" "$root/ui" "$root/po"
  cp "$tests/../.clang-format" "$root/"
  touch "$root/README.md" "$root/LICENSE"
  cat > "$root/src/model/dw-thing.h" << END
$spdx
#pragma once

#include <stddef.h>

#define DW_SAME 1e-9 /**< [m] */

/** Points [0, 1] are not units; p[i] is none either. */
typedef struct
{
  double length; /**< [m] finite */
  double rate;   /**< [1/s] */
  int count;
} dw_thing;

/**
 * Push it.
 *
 * @param speed  [m/s] any
 * @return       [N]
 */
double dw_thing_push (const dw_thing *thing, double speed);
END
  cat > "$root/src/model/dw-thing.c" << END
$spdx
#include "model/dw-thing.h"

double
dw_thing_push (const dw_thing *thing, double speed)
{
  return speed * thing->length;
}
END
  cat > "$root/src/project/dw-file.c" << END
$spdx
#include <glib.h>
#include <libxml/parser.h>

#include "model/dw-thing.h"
END
  cat > "$root/src/window/dw-panel.c" << END
$spdx
static const char *
words (int n)
{
  return n == 0 ? _ ("{what} in {unit}") : ngettext ("%d hole", "%d holes", n);
}
END
  printf '%s\n' '<interface>' '<object class="GtkButton">' \
    '<property name="label" translatable="yes">_Open</property>' '</object>' '</interface>' \
    > "$root/ui/panel.ui"
  printf '%s\n' '# what is read' 'src/window/dw-panel.c' 'ui/panel.ui' > "$root/po/POTFILES.in"
  printf '%s\n' '# languages' 'de' > "$root/po/LINGUAS"
  echo "i18n.gettext('sample', args: ['--keyword=dw_fail:5'])" > "$root/po/meson.build"
  cat > "$root/po/de.po" << 'END'
msgid ""
msgstr ""
"Project-Id-Version: sample 1\n"
"PO-Revision-Date: 2000-01-01 00:00+0000\n"
"Last-Translator: Sample\n"
"Language-Team: Sample\n"
"Language: de\n"
"MIME-Version: 1.0\n"
"Content-Type: text/plain; charset=UTF-8\n"
"Content-Transfer-Encoding: 8bit\n"
"Plural-Forms: nplurals=2; plural=(n != 1);\n"

msgid "{what} in {unit}"
msgstr "in {unit}: {what}"

#, c-format
msgid "%d hole"
msgid_plural "%d holes"
msgstr[0] "%d Bohrung"
msgstr[1] "%d Bohrungen"

msgid "_Open"
msgstr "Ö_ffnen"
END
  echo "$spdx" > "$root/tests/window/test-panel.c"
  echo "$spdx" > "$root/tests/model/test-thing.c"
  echo "$spdx" > "$root/tests/project/test-file.c"
  printf '#!/bin/sh\n# SPDX-License-Identifier: GPL-3.0-or-later\necho "good"\n' > "$root/tests/a.sh"
  printf '# SPDX-License-Identifier: GPL-3.0-or-later\nprint("good")\n' > "$root/tests/a.py"
  printf '#!/bin/bash\n# SPDX-License-Identifier: GPL-3.0-or-later\n[[ 1 ]]\n' > "$root/.ci/run"
  chmod +x "$root/.ci/run"
}

run_check () {
  case $1 in
    layers) sh "$tests/check-layers.sh" "$root/src" ;;
    units) python3 "$tests/check-units.py" "$root/src" ;;
    size) python3 "$tests/check-size.py" "$root/src" "$root/tests" ;;
    format) sh "$tests/check-format.sh" "$root" ;;
    mirror) sh "$tests/check-mirror.sh" "$root" ;;
    headers) sh "$tests/check-headers.sh" "$root/src" ;;
    tree) sh "$tests/check-tree.sh" "$root" ;;
    scripts) sh "$tests/check-scripts.sh" "$root" ;;
    po) sh "$tests/check-po.sh" "$root" ;;
  esac
}

passes () { # passes CHECK WHY
  n=$((n + 1))
  if ! run_check "$1" > "$scratch/log" 2>&1; then
    echo "$1 fails, though it should pass: $2"
    cat "$scratch/log"
    bad=$((bad + 1))
  fi
}

# fails CHECK MESSAGE WHY: the message must be there, so that it fails for the right reason.
fails () {
  n=$((n + 1))
  if run_check "$1" > "$scratch/log" 2>&1; then
    echo "$1 passes, though it should fail: $3"
    bad=$((bad + 1))
  elif ! grep -q -e "$2" "$scratch/log"; then
    echo "$1 fails without saying '$2': $3"
    cat "$scratch/log"
    bad=$((bad + 1))
  fi
  fresh
}

add () { # add FILE LINE...: append lines to a file of the sample
  file=$root/$1
  shift
  mkdir -p "$(dirname "$file")"
  printf '%s\n' "$@" >> "$file"
}

replace () { # replace FILE OLD NEW: in every line of a file of the sample
  sed "s|$2|$3|" "$root/$1" > "$scratch/replaced"
  if cmp -s "$scratch/replaced" "$root/$1"; then
    echo "the sample's $1 has no '$2'"
    bad=$((bad + 1))
  fi
  cp "$scratch/replaced" "$root/$1"
}

lines () { # lines N TEXT
  awk -v n="$1" -v text="$2" 'BEGIN { for (i = 0; i < n; i++) print text }'
}

fresh
for check in layers units size format mirror headers tree scripts po; do
  passes "$check" "the good sample"
done

# layers
add src/model/dw-thing.c '#include <glib.h>'
fails layers 'model may not use <glib.h>' "a library above the layer"
add src/model/dw-thing.c '#include <pthread.h>'
fails layers 'model may not use <pthread.h>' "more than ISO C in the model"
add src/model/dw-thing.c '#  include "project/dw-file.h"'
fails layers 'model may not use project' "a layer above"
add src/study/dw-scan.c '#include "ride/dw-car.h"'
fails layers 'study may not use ride' "a layer beside"
add src/project/dw-file.c '#include <gtk/gtk.h>'
fails layers 'project may not use <gtk/gtk.h>' "GTK below the window"
add src/project/dw-file.c '#include <cairo.h>'
fails layers 'project may not use <cairo.h>' "drawing below draw"
add src/model/dw-thing.c '#include "dw-thing.h"'
fails layers 'has no layer in front' "an include without its layer"
add src/model/dw-thing.c '#include "../project/dw-file.h"'
fails layers 'has no layer in front' "an include by a relative path"
add src/other/dw-thing.c '#include <stdio.h>'
fails layers 'not a layer' "an unknown folder"
add src/model/dw-thing.c 'static int counter;'
fails layers 'writable variable' "a global in the model"
add src/model/dw-thing.c 'static double table[] = { 1.0 };'
fails layers 'writable variable' "a writable table in the model"
add src/model/dw-thing.c '  printf ("hello");'
fails layers 'neither prints' "printing in the model"
add src/project/dw-file.c '  g_printerr ("hello");'
fails layers 'only the command line prints' "printing below the command line"
add src/model/dw-a.c '#include "model/dw-b.h"'
add src/model/dw-b.c '#include "model/dw-c.h"'
add src/model/dw-c.h '#include "model/dw-a.h"'
fails layers 'in a circle' "three files that use each other"
add src/model/dw-a.c '#include "model/dw-b.h"'
add src/model/dw-c.h '#include "model/dw-b.h"'
add src/model/dw-thing.c '  snprintf (text, 3, "x");' 'static const int limit = 3;' '#include <math.h>'
passes layers "no circle, no global, no printing"
fresh

# units
add src/model/dw-x.h 'typedef struct' '{' '  double mass; /**< of the car */' '} x;'
fails units 'double mass' "a field without unit"
add src/ride/dw-x.h 'typedef struct' '{' '  double x, y; /**< [m] */' '} x;'
fails units '2 doubles, 1 units' "two fields, one unit"
add src/study/dw-x.h '/** Works. @return [N] */' 'double dw_x (double speed);'
fails units '2 doubles, 1 units' "a parameter without unit"
add src/model/dw-x.h 'double dw_x (int n);'
fails units '1 doubles, 0 units' "a result without comment"
add src/model/dw-x.h '/** From values[i] in [0, 1]. */' 'double dw_x (int n);'
fails units '1 doubles, 0 units' "brackets that hold no unit"
add src/model/dw-x.h '/** @return [N] */' 'static inline double' 'dw_x (double a)' '{' \
  '  return a; /* [m] */' '}'
fails units '2 doubles, 1 units' "an inline function"
add src/model/dw-x.h '/** @param a,b  [K] two' ' * @return [N] */' 'double dw_x (double a, double b, double c);'
fails units '4 doubles, 3 units' "a unit shared by two of three parameters"
add src/model/dw-x.h '#define DW_LIMIT 0.5 /**< most */'
fails units 'number without unit: DW_LIMIT' "a constant without unit"
add src/model/dw-x.h '/** [1] share and [m] width' ' */' 'double dw_x (double a);' \
  '#define DW_N 16' '#define DW_PAIR(a) { a, 0.5 }' 'typedef struct' '{' \
  '  /** [m] before it */' '  double a;' '  double b[2]; /**< [degC] both */' \
  '  bool (*go) (void *data, double part); /**< part [1] that is done */' '} y;' \
  '/** "double" in a text. */' '#define DW_TEXT "a double"' \
  '/** @param a,b  [K] two' ' * @return [N] */' 'double dw_x (double a, double b);'
passes units "every way to write a unit"
fresh

# size
{ printf 'static int\nf (void)\n{\n'; lines 77 '  g ("}"); /* { */'; printf '}\n'; } \
  >> "$root/src/model/dw-thing.c"
fails size 'f has 81 lines' "a function of 81 lines"
{ printf 'static int\nf (void)\n{\n'; lines 76 '  g ("}"); /* { */'; printf '}\n'; } \
  >> "$root/src/model/dw-thing.c"
passes size "a function of 80 lines"
fresh
{ printf 'END_TEST\n\nSTART_TEST (long_one)\n{\n'; lines 79 "  g ('{');"; printf '}\nEND_TEST\n'; } \
  >> "$root/tests/model/test-thing.c"
fails size 'long_one has 82 lines' "a long test"
{ printf 'static const int t[] = {\n'; lines 300 '  1,'; printf '};\n'; } >> "$root/src/model/dw-thing.c"
{ printf 'static int\nf (void)\n{\n  static const int t[] = {\n'; lines 300 '    1,'
  printf '  };\n  return t[0];\n}\n'; } >> "$root/src/model/dw-thing.c"
passes size "tables do not count"
fresh
add src/model/dw-thing.c 'static int' 'f (void)' '{'
fails size 'brace is not closed' "braces that do not match"
add src/model/dw-thing.c '}'
fails size 'brace too many' "braces that do not match"
lines 899 'int x;' >> "$root/tests/project/test-file.c"
fails size "no 'Long because" "a file of 900 lines without a reason"
{ echo '/* Long because the sample wants it. */'; lines 898 'int x;'; } >> "$root/tests/project/test-file.c"
passes size "a file of 900 lines with a reason"
add tests/project/test-file.c 'int y;'
fails size '901 lines, at most 900' "a file of 901 lines"
lines 699 'int x;' >> "$root/tests/project/test-file.c"
passes size "a file of 700 lines"
add tests/project/test-file.c 'int y;'
fails size "701 lines and no 'Long because" "a file of 701 lines without a reason"

# format
add src/model/dw-thing.c 'int   f(void){return 1;}'
fails format 'should be clang-formatted' "a function in another style"
add tests/model/test-thing.c 'int   f(void){return 1;}'
fails format 'should be clang-formatted' "a test in another style"
rm "$root/.clang-format"
fails format 'no .clang-format' "no style file"

# mirror
add src/model/dw-alone.c "$spdx"
fails mirror 'dw-alone.c: no tests/model/test-alone.c' "a source file without test"
add tests/model/test-gone.c "$spdx"
fails mirror 'test-gone.c: no src/model/dw-gone.c' "a test without source file"
mv "$root/tests/model/test-thing.c" "$root/tests/project/"
fails mirror 'dw-thing.c: no tests/model/test-thing.c' "a test in another layer's folder"

# headers
add src/model/dw-x.h "$spdx" '#pragma once' 'size_t dw_x (void);'
fails headers 'dw-x.h: does not compile alone' "a header that forgets an include"
add src/model/dw-x.h "$spdx" '#pragma once' '#include <glib.h>'
fails headers 'dw-x.h: does not compile alone' "a library that the layer does not have"
add src/model/dw-x.h "$spdx" '#pragma once' 'void dw_x ();'
fails headers 'dw-x.h: does not compile alone' "a warning"
add src/model/dw-x.h "$spdx" '#pragma once' '#include <locale.h>' 'extern locale_t dw_x;'
fails headers 'dw-x.h: does not compile alone' "more than ISO C in the model"
add src/project/dw-x.h "$spdx" '#pragma once' '#include <gio/gio.h>' '#include <locale.h>' \
  'GFile *dw_x (locale_t locale);'
add src/model/dw-y.h "$spdx" '#pragma once' '#define DW_Y 1'
passes headers "a library that the layer has, and a header of macros only"
fresh

# tree
add notes.txt 'hello'
fails tree 'notes.txt: does not belong' "a stray file on the top level"
add doc/manual.md 'hello'
fails tree 'doc: does not belong' "a stray folder on the top level"
add README.md 'See /wor''k/main/x for more.'
fails tree 'path of one machine' "a path of one machine"
add src/model/dw-thing.c '/* "/hom''e/me/x" */'
fails tree 'path of one machine' "a path of one user"
add tests/a.sh '. ../shar''ed/kit'
fails tree 'file outside the project' "a file outside the project"
add src/model/dw-thing.c '/* TO''DO: more */'
fails tree 'unfinished' "unfinished work"
add tests/a.py '# XX''X'
fails tree 'unfinished' "unfinished work in a script"
add README.md '<<<<''<<< HEAD'
fails tree 'merge conflict' "the rest of a merge"
add README.md 'https:''//example.org/x'
fails tree 'address: README.md' "an address"
echo 'int x;' > "$root/src/model/dw-thing.c"
fails tree 'dw-thing.c: no SPDX line' "a source file without licence"
echo 'print()' > "$root/tests/a.py"
fails tree 'a.py: no SPDX line' "a script without licence"
chmod -x "$root/.ci/run"
fails tree 'not executable' "a build script that cannot be started"
add README.md 'src/work/x, https:''//www.gnu.org/licenses/, mktemp -t a.XX''XXXX'
passes tree "words that only look alike"
fresh

# scripts
add tests/a.sh 'if true; then'
fails scripts . "a shell script that does not parse"
add tests/a.sh 'if [''[ -n "$1" ]]; then echo; fi'
fails scripts 'not POSIX sh' "bash in a POSIX script"
add tests/a.sh 'cat <<''< "$1"'
fails scripts . "more bash in a POSIX script"
add tests/a.sh 'fun''ction f {' '  echo' '}'
fails scripts . "a bash function"
add tests/a.py 'def f(:'
fails scripts 'SyntaxError' "a Python script that does not parse"
add .ci/run 'if true; then'
fails scripts . "a build script that does not parse"

# po
add src/window/dw-panel.c '/**/ const char *more (void) { return _ ("Anything else"); }'
fails po 'de.po: not translated: 1' "a new text"
fresh
replace src/window/dw-panel.c '{what} in {unit}' '{what} in the {unit}'
fails po 'de.po: fuzzy: 1' "a text that is another"
replace ui/panel.ui '"yes">_Open' '"yes" context="hole">_Open'
fails po 'de.po: [a-z ]*: 1' "a text that has a context now"
add src/model/dw-thing.c '/**/ dw_fail (err, 1, "field", 0, "it does not fit at all");'
add po/POTFILES.in 'src/model/dw-thing.c'
fails po 'it does not fit at all' "a new text behind a word of the project's own"
replace po/de.po '"in {unit}: {what}"' '""'
fails po 'de.po: not translated: 1' "a text that was never translated"
replace po/de.po '#, c-format' '#, c-format, fuzzy'
fails po 'de.po: fuzzy: 1' "a guess"
replace po/de.po '"in {unit}: {what}"' '"in {unit}: {wie}"'
fails po 'not the names in braces' "a name in braces that is translated"
replace po/de.po '"in {unit}: {what}"' '"in {unit}"'
fails po 'not the names in braces' "a name in braces that is lost"
replace po/de.po '"%d Bohrungen"' '"%s Bohrungen"'
fails po 'msgfmt finds fault' "another form"
replace po/de.po 'Ö_ffnen' 'Öffnen'
fails po 'msgfmt finds fault' "an access key that is lost"
replace po/de.po 'msgid "_Open"' 'msgid _Open'
fails po 'msgfmt finds fault' "a file that cannot be read"
add src/window/dw-other.c 'const char *text = N_("Other");'
fails po 'dw-other.c: has texts and is not in po/POTFILES.in' "a source file that is not read"
add ui/other.ui '<item translatable="yes">Other</item>'
fails po 'other.ui: has texts and is not in po/POTFILES.in' "a template that is not read"
add po/POTFILES.in 'src/window/dw-gone.c'
fails po 'no src/window/dw-gone.c' "a source file that is gone"
add po/LINGUAS 'fr'
fails po 'fr.po: not there' "a language without texts"
cp "$root/po/de.po" "$root/po/es.po"
fails po 'es.po: not in po/LINGUAS' "texts of no language"
add src/window/dw-other.c 'int n_ (int _a, int b_) { return some_ (_a) + C_a (b_); }'
add ui/other.ui '<item translatable="no">Other</item>'
add po/de.po '#~ msgid "Gone"' '#~ msgstr "Fort"'
{ echo '// one line more'; cat "$root/src/window/dw-panel.c"; } > "$scratch/moved"
cp "$scratch/moved" "$root/src/window/dw-panel.c"
passes po "no texts, a text that is used no more, and texts on other lines"
fresh

echo "$n samples, $bad of them judged wrongly"
[ "$bad" -eq 0 ]
