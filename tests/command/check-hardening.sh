#!/bin/sh
# Copyright (C) 2026 The Estimend developers
# SPDX-License-Identifier: GPL-3.0-or-later
#
# usage: check-hardening.sh PROGRAM yes|no
#
# The program as built, looked at from outside: may be loaded anywhere, its tables are read-only once it runs, its stack frames
# are guarded, nothing on the stack is run, and (yes: it was optimised without sanitizers) the C library checks sizes it knows.
command -v readelf >/dev/null 2>&1 || exit 77
program=$1 is_fortified=$2
about=$(LC_ALL=C readelf -W -h -d -l --dyn-syms "$program") || exit 1
status=0

want () {
  printf '%s\n' "$about" | grep -Eq "$2" || { echo "missing: $1"; status=1; }
}

want 'position independent' 'Type: +DYN'
want 'tables bound at once' 'FLAGS_1.*NOW'
want 'tables read-only' 'GNU_RELRO'
want 'guarded frames' '__stack_chk_fail'
printf '%s\n' "$about" | grep -E 'GNU_STACK.* RWE ' && { echo 'the stack can be run'; status=1; }
[ "$is_fortified" = yes ] && want 'checked calls of the C library' '__[a-z]+_chk(@|$)'
exit $status
