#!/bin/sh
# Copyright (C) 2026 The Estimend developers
# SPDX-License-Identifier: GPL-3.0-or-later
#
# usage: tests/valgrind.sh BUILD-FOLDER [ROOM[:TEST]…]
#
# Memcheck over the rooms named: core file notes words paper (each test program as the suite runs it), command (the program as other
# programs run it) and window (each under a display of its own), or over one test of a room. All of them take hours of one processor.
set -eu
build=$(cd "$1" && pwd)
shift
source=$(cd "$(dirname "$0")/.." && pwd)
[ $# -gt 0 ] || set -- core file notes words paper command window
memcheck="valgrind --quiet --vgdb=no --error-exitcode=9 --leak-check=full --errors-for-leak-kinds=definite --show-leak-kinds=definite
  --suppressions=$source/tests/valgrind.supp"
export G_SLICE=always-malloc CK_FORK=no CK_TIMEOUT_MULTIPLIER=30 LC_ALL=C.UTF-8
export ESTIMEND_TEST_DATA="$source/data" ESTIMEND_TEST_SOURCE="$source" ESTIMEND_TEST_BUILD="$build" GSETTINGS_SCHEMA_DIR="$build/data"

# GTK's own list is in its development package.
for list in /usr/share/glib-2.0/valgrind/glib.supp /usr/share/gtk-4.0/valgrind/gtk.supp; do
  [ -f "$list" ] && memcheck="$memcheck --suppressions=$list"
done

# room_test SUITE [TEST]: scripts and what they run are not ours. Whatever Memcheck says is a failure, also of a child whose exit nobody looks at.
room_test () {
  suite=$1
  shift
  meson test -C "$build" --setup valgrind --suite "$suite" --no-suite scripts --print-errorlogs "$@" || return 1
  if grep '^==[0-9][0-9]*== ' "$build/meson-logs/testlog-valgrind.txt"; then
    echo "Memcheck found this in a child"
    return 1
  fi
}

# window_test NAME: its pauses and the waits of a machine thirty times as slow are in its own limits, which CK_TIMEOUT_MULTIPLIER stretches.
window_test () {
  a11y=none
  fork=no
  fatal=fatal-criticals
  case "$1" in
    accessible|dialogs) a11y=test ;;
    # Their tests begin with settings that nobody has changed.
    register) fork=yes ;;
    # And GTK 4.8 looks for the pointer in a window that a test has destroyed since, which it tells and lives on.
    register-look) fork=yes; fatal=none ;;
  esac
  echo "window:$1"
  # shellcheck disable=SC2086
  CK_FORK=$fork ESTIMEND_TEST_SLOW=5 GTK_A11Y=$a11y G_DEBUG=$fatal "$source/tests/window/run-headless.sh" $memcheck "$build/tests/window/test-window-$1"
}

# What a script asks of the engine.
solids () {
  ESTIMEND_TEST_WRAPPER=$(echo $memcheck) meson test -C "$build" --timeout-multiplier 30 --print-errorlogs solids
}

status=0
for room in "$@"; do
  test=${room#*:}
  case "$room" in
    command)
      ESTIMEND_TEST_WRAPPER=$(echo $memcheck) python3 "$source/tests/command/check-command.py" "$build/src/estimend" "$source/data" || status=1 ;;
    window)
      for program in "$build"/tests/window/test-window-*; do
        [ -f "$program" ] && [ -x "$program" ] || continue
        window_test "${program##*/test-window-}" || status=1
      done ;;
    window:*)
      window_test "$test" || status=1 ;;
    core:solids)
      solids || status=1 ;;
    *:*)
      room_test "${room%%:*}" "$test" || status=1 ;;
    *)
      room_test "$room" || status=1
      [ "$room" != core ] || solids || status=1 ;;
  esac
done
exit $status
