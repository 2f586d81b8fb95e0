#!/bin/sh
# Copyright (C) 2026 The Estimend developers
# SPDX-License-Identifier: GPL-3.0-or-later
#
# usage: check-hardening-fails.sh CHECK-HARDENING
#
# That the check of the built program can fail: a small program built with every guard passes it, and with any one of them left
# out it is told which.
command -v cc >/dev/null 2>&1 && command -v readelf >/dev/null 2>&1 || exit 77
check=$1
folder=$(mktemp -d) || exit 77
trap 'rm -rf "$folder"' EXIT
cat > "$folder/a.c" <<'C'
#include <stdio.h>
#include <string.h>
int main (int argc, char **argv)
{
  char text[16];
  memcpy (text, argv[0], strlen (argv[0]) % (unsigned) (16 + argc));
  snprintf (text, sizeof text * (unsigned) argc, "%s", argv[0]);
  return text[0];
}
C
all='-O2 -w -fPIE -pie -fstack-protector-strong -U_FORTIFY_SOURCE -D_FORTIFY_SOURCE=2 -Wl,-z,relro -Wl,-z,now -Wl,-z,noexecstack'
status=0

# try FLAGS WORDS: built with all guards and these flags after them, the check has to say these words; "" when it has to pass.
try () {
  # shellcheck disable=SC2086
  cc $all $1 "$folder/a.c" -o "$folder/a" 2>/dev/null || { echo "cannot be built: $1"; status=1; return; }
  if said=$("$check" "$folder/a" yes); then
    [ -z "$2" ] || { echo "passes with $1"; status=1; }
  else
    case "$said" in
      *"$2"*) [ -n "$2" ] || { echo "does not pass: $said"; status=1; } ;;
      *) echo "with $1 it says: $said"; status=1 ;;
    esac
  fi
}

try '' ''
try '-fno-PIE -no-pie' 'position independent'
try '-Wl,-z,lazy' 'bound at once'
try '-Wl,-z,norelro' 'read-only'
try '-fno-stack-protector' 'guarded frames'
try '-Wl,-z,execstack' 'stack can be run'
try '-U_FORTIFY_SOURCE' 'checked calls'
exit $status
