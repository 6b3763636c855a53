#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
# Installs the Debian packages that are missing; asks for nothing and does nothing when none is.
# usage: install-deps.sh [--only-run]
#
# --only-run: only what building and running the program needs, without tests and checks.
# As root it calls apt-get itself, otherwise through sudo.
set -eu

only_run=no
case ${1-} in
  '') ;;
  --only-run) only_run=yes ;;
  *)
    echo "usage: install-deps.sh [--only-run]" >&2
    exit 2
    ;;
esac

# One line a purpose.
packages='
  gcc libc6-dev
  meson ninja-build pkg-config python3
  libglib2.0-dev
  libxml2-dev
  libgsl-dev
  libcairo2-dev libpango1.0-dev
  libgtk-4-dev
  gettext
'
if [ "$only_run" = no ]; then
  packages="$packages
    check
    clang
    clang-format-14
    libasan8 libubsan1
    locales
    python3-scipy
    xvfb xauth dbus fonts-dejavu-core
    desktop-file-utils appstream
    poppler-utils
  "
fi

# Packages that are not there; nothing on a system without dpkg, where names are others anyway.
missing () {
  for package in $packages; do
    # A package may be there under the name of another that provides it (pkgconf, pkg-config).
    status=$(dpkg-query -W -f '${db:Status-Status}\n' "$package" 2> /dev/null || :)
    case $status in
      *not-installed*) echo "$package" ;;
      *installed*) ;;
      *) echo "$package" ;;
    esac
  done
}

if ! command -v dpkg-query > /dev/null 2>&1; then
  echo "install-deps: this is no Debian system; these packages of Debian 12 must be there by other means:"
  echo "install-deps:" $packages
  exit 0
fi

wanted=$(missing | tr '\n' ' ')
wanted=${wanted% }
if [ -z "$wanted" ]; then
  echo "install-deps: nothing to install"
  exit 0
fi

if [ "$(id -u)" -eq 0 ]; then
  as_root () { "$@"; }
elif command -v sudo > /dev/null 2>&1; then
  # Without a terminal sudo must not wait for a password that nobody can type.
  if [ -t 0 ]; then
    as_root () { sudo "$@"; }
  else
    as_root () { sudo -n "$@"; }
  fi
else
  echo "install-deps: missing: $wanted" >&2
  echo "install-deps: neither root nor sudo; as root, run: apt-get install --no-install-recommends $wanted" >&2
  exit 1
fi

# env: sudo does not hand variables on.
apt () {
  as_root env DEBIAN_FRONTEND=noninteractive LC_ALL=C.UTF-8 apt-get -q -y "$@" < /dev/null
}

echo "install-deps: installing with apt-get: $wanted"
if ! { apt update && apt install --no-install-recommends $wanted; }; then
  echo "install-deps: apt-get could not install: $wanted" >&2
  exit 1
fi

left=$(missing | tr '\n' ' ')
if [ -n "$left" ]; then
  echo "install-deps: still missing: $left" >&2
  exit 1
fi
