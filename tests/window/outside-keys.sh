#!/bin/sh
# Copyright (C) 2026 The Estimend developers
# SPDX-License-Identifier: GPL-3.0-or-later
#
# usage: outside-keys.sh PROGRAM
# What a hand on the keyboard alone must not get stuck in, from outside the process. Exit 77 (skipped) without xdotool.
command -v xdotool >/dev/null 2>&1 || exit 77
program=$1
folder=$(mktemp -d) || exit 77
"$program" &
pid=$!
trap 'kill $pid 2>/dev/null; rm -rf "$folder"' EXIT

fail ()
{
  echo "$1" >&2
  exit 1
}

# Without a window manager the keyboard must be given to each window by hand.
focus ()
{
  xdotool search --sync --onlyvisible --name "$1" windowfocus --sync >/dev/null 2>&1 || fail "no window named $1"
  sleep 0.3
}

key ()
{
  for k in "$@"; do
    xdotool key "$k"
    sleep 0.3
  done
}

# Up to ten seconds for a command to succeed.
wait_for ()
{
  for _ in $(seq 40); do
    "$@" && return 0
    sleep 0.25
  done
  return 1
}

n_windows ()
{
  xdotool search --onlyvisible --name "$1" 2>/dev/null | wc -l
}

are_two ()
{
  [ "$(n_windows 'Untitled quote')" -eq 2 ]
}

focus 'Untitled quote'
sleep 0.7
key alt+n                               # past the first questions
# An item of a submenu chosen by its letter and the arrows: the keyboard has to come back to the window.
key F10 e Down Return
key ctrl+n
wait_for are_two || fail 'after an item of a submenu the window no longer hears the keyboard'

# A share of the rate book typed over what stands there, as Tab selects it: the seventh entry is the overhead.
key ctrl+b
focus 'Rate book and metals'
sleep 0.7
key Tab Tab Tab Tab Tab Tab
key 1 2
key alt+k
has_overhead ()
{
  grep -Eq "overhead[^0-9]*$1[^0-9]" "$ESTIMEND_CONFIG_DIR/rates.xml" 2>/dev/null
}
wait_for has_overhead 120000 || fail "12 typed over an overhead is $(grep -Eo 'overhead[^0-9]*[0-9]*' "$ESTIMEND_CONFIG_DIR/rates.xml" 2>/dev/null)"
# Both figures are one step back; the keys are the main window's. Shipped are 15 %.
key ctrl+z alt+k
wait_for has_overhead 150000 || fail 'Ctrl+Z does not undo in the rate book'
key ctrl+shift+z alt+k
wait_for has_overhead 120000 || fail 'Ctrl+Shift+Z does not redo in the rate book'
exit 0
