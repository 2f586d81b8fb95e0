#!/bin/sh
# Copyright (C) 2026 The Estimend developers
# SPDX-License-Identifier: GPL-3.0-or-later
#
# usage: tests/valgrind.sh BUILD-FOLDER [ROOM…]
#
# Memcheck over the rooms named: core file notes words paper (each test program as the suite runs it), command (the program as other
# programs run it) and window (the document's tests under a display of their own). All of them take an hour or two of one processor.
set -eu
build=$(cd "$1" && pwd)
shift
source=$(cd "$(dirname "$0")/.." && pwd)
[ $# -gt 0 ] || set -- core file notes words paper command window
memcheck="valgrind --quiet --error-exitcode=9 --leak-check=full --errors-for-leak-kinds=definite --show-leak-kinds=definite
  --suppressions=$source/tests/valgrind.supp --suppressions=/usr/share/glib-2.0/valgrind/glib.supp"
export G_SLICE=always-malloc CK_FORK=no CK_TIMEOUT_MULTIPLIER=30 LC_ALL=C.UTF-8
export ESTIMEND_TEST_DATA="$source/data" ESTIMEND_TEST_SOURCE="$source" ESTIMEND_TEST_BUILD="$build" GSETTINGS_SCHEMA_DIR="$build/data"

status=0
for room in "$@"; do
  case "$room" in
    command)
      ESTIMEND_TEST_WRAPPER=$(echo $memcheck) python3 "$source/tests/command/check-command.py" "$build/src/estimend" "$source/data" || status=1 ;;
    window)
      # shellcheck disable=SC2086
      "$source/tests/window/run-headless.sh" $memcheck "$build/tests/window/test-window-document" || status=1 ;;
    *)
      meson test -C "$build" --setup valgrind --suite "$room" --print-errorlogs || status=1 ;;
  esac
done
exit $status
