#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
# Shows that install-deps.sh installs what is missing and only that, as root and through sudo, and
# says so when it can do neither. Nothing is installed: the tools it calls are stand-ins.
# usage: check-install.sh TESTS_DIR
set -eu

tests=$(cd "$1" && pwd)
scratch=$(mktemp -d)
trap 'rm -rf "$scratch"' EXIT
trap 'exit 1' HUP INT TERM

bad=0
tools=$scratch/tools
calls=$scratch/calls
mkdir "$tools"
for name in sh env tr cat dirname grep; do
  ln -s "$(command -v "$name")" "$tools/$name"
done

stand_in () { # stand_in NAME SCRIPT
  rm -f "$tools/$1"
  printf '#!%s\n%s\n' "$(command -v sh)" "$2" > "$tools/$1"
  chmod +x "$tools/$1"
}

# The system: what is installed, who calls, whether apt-get works.
system () { # system MISSING UID APT_STATUS
  : > "$calls"
  rm -f "$tools/sudo"
  printf '%s\n' "$1" > "$scratch/missing"
  stand_in id "echo $2"
  stand_in dpkg-query 'for last; do :; done
case " $(cat "'"$scratch"'/missing") " in *" $last "*) exit 1 ;; esac
echo installed'
  stand_in apt-get 'echo "apt-get $*" >> "'"$calls"'"
case " $* " in *" install "*) : > "'"$scratch"'/missing" ;; esac
exit '"$3"
}

run () {
  status=0
  PATH=$tools sh "$tests/install-deps.sh" "$@" > "$scratch/said" 2>&1 < /dev/null || status=$?
}

expect () { # expect WHAT CONDITION...
  what=$1
  shift
  if ! "$@"; then
    echo "wrong: $what (exit status $status)"
    cat "$scratch/said" "$calls"
    bad=1
  fi
}

said () { grep -q -e "$1" "$scratch/said"; }
called () { grep -q -e "$1" "$calls"; }

system '' 0 0
run
expect "all there: good" [ "$status" -eq 0 ]
expect "all there: says so" said 'nothing to install'
expect "all there: apt-get is not called" [ ! -s "$calls" ]

system 'check clang' 0 0
run
expect "root: good" [ "$status" -eq 0 ]
expect "root: lists are brought up to date" called 'apt-get .* update'
expect "root: only what is missing" called 'install --no-install-recommends check clang$'
expect "root: says what it does" said 'installing with apt-get: check clang$'

system 'check' 1000 0
run
expect "nobody: fails" [ "$status" -eq 1 ]
expect "nobody: names the packages" said 'missing: check$'
expect "nobody: apt-get is not called" [ ! -s "$calls" ]

system 'check' 1000 0
stand_in sudo 'echo "sudo $1" >> "'"$calls"'"
[ "$1" = -n ] && shift
exec "$@"'
run
expect "sudo: good" [ "$status" -eq 0 ]
expect "sudo: without a terminal it asks for no password" called 'sudo -n'
expect "sudo: installs" called 'install --no-install-recommends check$'

system 'check' 0 100
run
expect "apt-get fails: fails" [ "$status" -eq 1 ]
expect "apt-get fails: says so" said 'apt-get could not install: check'

system 'check clang libgsl-dev' 0 0
run --only-run
expect "only run: good" [ "$status" -eq 0 ]
expect "only run: leaves out what tests need" called 'install --no-install-recommends libgsl-dev$'

system '' 0 0
run --no-such-option
expect "wrong usage" [ "$status" -eq 2 ]

exit "$bad"
