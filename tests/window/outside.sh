#!/bin/sh
# Copyright (C) 2026 The Estimend developers
# SPDX-License-Identifier: GPL-3.0-or-later
#
# usage: outside.sh PROGRAM
# From a customer's words to a saved quote and a PDF by keyboard alone, from outside the process.
# Exit 77 (skipped) without xdotool or pdftotext.
command -v xdotool >/dev/null 2>&1 || exit 77
command -v pdftotext >/dev/null 2>&1 || exit 77
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

wait_for ()
{
  for _ in 1 2 3 4 5 6 7 8 9 10 11 12 13 14 15 16 17 18 19 20; do
    [ -s "$1" ] && return 0
    sleep 0.25
  done
  fail "$2"
}

focus 'Untitled quote'
sleep 0.7
xdotool key alt+n                       # past the first questions
sleep 0.3
xdotool key alt+1                       # the notes
sleep 0.2
xdotool type --delay 3 'P20 lid mold. Gate edge chipped 12 mm long, 0.5 x 0.4 mm. Face 20 x 10 mm low by 0.3 mm.'
sleep 0.3
xdotool key ctrl+r                      # read them
sleep 0.6
xdotool key ctrl+s
focus 'Save the quote'
xdotool key ctrl+a
xdotool type --delay 3 "$folder/by-hand.estimend"
xdotool key Return
wait_for "$folder/by-hand.estimend" 'nothing was saved'
grep -q 'edge-nick' "$folder/by-hand.estimend" || fail 'the chipped edge is not in the saved quote'
grep -q 'Gate edge chipped' "$folder/by-hand.estimend" || fail 'the words are not in the saved quote'
focus 'Estimend'
xdotool key ctrl+e
focus 'Save as PDF'
xdotool key ctrl+a
xdotool type --delay 3 "$folder/by-hand.pdf"
xdotool key Return
wait_for "$folder/by-hand.pdf" 'no PDF was written'
pdftotext "$folder/by-hand.pdf" - | grep -q 'Edge nick' || fail 'the chipped edge is not in the PDF'
focus 'Estimend'
xdotool key ctrl+w                      # nothing to lose: closes without a question
for _ in 1 2 3 4 5 6 7 8; do
  kill -0 $pid 2>/dev/null || exit 0
  sleep 0.25
done
fail 'the window did not close'
