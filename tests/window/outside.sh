#!/bin/sh
# Copyright (C) 2026 The Estimend developers
# SPDX-License-Identifier: GPL-3.0-or-later
#
# usage: outside.sh PROGRAM DEMO.estimend
# The main job by keyboard alone, from outside the process: the demo's customer's words are typed into an empty quote and read, a wire is
# chosen, the quote is saved and made a PDF. What the file and the PDF say is held against the demo and against the command line.
# Exit 77 (skipped) without xdotool or pdftotext.
command -v xdotool >/dev/null 2>&1 || exit 77
command -v pdftotext >/dev/null 2>&1 || exit 77
program=$1
demo=$2
folder=$(mktemp -d) || exit 77
quote=$folder/by-hand.estimend
# No search for leaks: all that is ever found here is what GTK 4.8's file dialog leaves (the folders of its path bar, GFileInfo; ranges
# of GtkBitset), the folder's watch of GIO and the bus that is not there, 1.8 kB looked through piece by piece. Their libraries keep no
# frame pointers, so that they can't be passed over by name. What is ours is looked for in the tests that run within the process.
ASAN_OPTIONS=${ASAN_OPTIONS:+$ASAN_OPTIONS:}detect_leaks=0 "$program" &
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
  xdotool key "$@"
  sleep 0.3
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

kinds ()
{
  grep -o 'kind="[a-z-]*"' "$1" | sort
}

focus 'Untitled quote'
sleep 0.7
key alt+n                               # past the first questions
key alt+1                               # the notes
# "mm2" for "mm²": a keyboard that is made up for one letter at a time loses some on a busy machine.
sed -n '/<notes>/,/<\/notes>/p' "$demo" | sed 's/ *<notes>//; s/<\/notes>//; s/²/2/g' > "$folder/notes"
while IFS= read -r line; do
  xdotool type --delay 3 -- "$line"
  xdotool key Return
done < "$folder/notes"
key ctrl+r                              # read them
sleep 1
key ctrl+s
focus 'Save the quote'
key ctrl+a
xdotool type --delay 3 "$quote"
key Return
wait_for test -s "$quote" || fail 'nothing was saved'
kinds "$demo" > "$folder/wanted"
kinds "$quote" > "$folder/read"
cmp -s "$folder/wanted" "$folder/read" || fail "read from the notes: $(tr '\n' ' ' < "$folder/read")"
grep -qF "$(sed -n 1p "$folder/notes" | cut -c1-20)" "$quote" || fail 'the words are not in the saved quote'

# The wires are compared in the background: asked for until they are there.
focus 'Estimend'
has_wire ()
{
  key alt+4
  key Return
  key Escape
  key ctrl+s
  grep -q '<filler>' "$quote"
}
wait_for has_wire || fail 'no wire could be chosen'
key ctrl+e
focus 'Save as PDF'
key ctrl+a
xdotool type --delay 3 "$folder/by-hand.pdf"
key Return
wait_for test -s "$folder/by-hand.pdf" || fail 'no PDF was written'

# In minor units of a currency with two digits.
total=$("$program" cost --tsv "$quote" | awk -F '\t' '$1 == "quote" && $2 == "total" { printf "%.2f", $3 / 100 }')
[ -n "$total" ] && [ "$total" != 0.00 ] || fail 'the command line finds no total'
pdftotext -layout "$folder/by-hand.pdf" "$folder/text" || fail 'the PDF has no text'
tr -d ',' < "$folder/text" | grep -qF "$total" || fail "the total $total stands nowhere in the PDF"
focus 'Estimend'
key ctrl+w                              # nothing to lose: closes without a question
gone () { ! kill -0 $pid 2>/dev/null; }
wait_for gone || fail 'the window did not close'
wait $pid
ended=$?                                # of a sanitizer too
[ $ended -eq 0 ] || fail "the program ended with $ended"
exit 0
