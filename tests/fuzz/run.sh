#!/usr/bin/env bash
# Copyright (C) 2026 The Estimend developers
# SPDX-License-Identifier: GPL-3.0-or-later
#
# usage: run.sh FOLDER SCHEMA TARGET SEED…
#
# Runs a fuzz target for ESTIMEND_FUZZ_SECONDS (10) from the seeds (files and folders) and from what earlier runs found,
# which is kept in FOLDER/corpus. Words for it are the names in SCHEMA ("-": none). Whatever breaks it is left in FOLDER.
# Prints what libFuzzer counted last.
set -u
folder=$1 schema=$2 target=$3
shift 3

rm -rf "$folder/seeds"
mkdir -p "$folder/corpus" "$folder/seeds"
for seed in "$@"; do
  cp -r "$seed" "$folder/seeds/" || exit 1
done
# Readings by a person are no seeds. Of many notes every n-th is taken, so that there is time left to change them: five a second and folder.
find "$folder/seeds" -name '*.tsv' -delete
for notes in "$folder"/seeds/*/; do
  find "$notes" -name '*.txt' | sort | awk -v most=$((${ESTIMEND_FUZZ_SECONDS:-10} * 5)) \
    '{ name[NR] = $0 } END { every = int((NR + most - 1) / most); for (i = 1; i <= NR; i++) if (every > 1 && i % every != 1) print name[i] }' |
    xargs -r -d '\n' rm --
done
# A line of these is a seed.
find "$folder/seeds" -name '*.lines' | while read -r lines; do
  split -l 1 -a 3 "$lines" "$lines-" && rm "$lines"
done
for line in "$folder"/seeds/*/*.lines-*; do
  [ -e "$line" ] && truncate -s -1 "$line"
done
words=()
if [ "$schema" != - ]; then
  grep -oE 'name="[^"]+"' "$schema" | sort -u | sed -E 's/name="(.*)"/"\1"\n"\1=\\""/' > "$folder/words"
  words=("-dict=$folder/words")
fi

# Memory from malloc, so that every block has its guards; a warning of GLib is a defect.
export G_SLICE=always-malloc G_DEBUG=fatal-warnings
export ASAN_OPTIONS=${ASAN_OPTIONS:-detect_leaks=1:allocator_may_return_null=1} UBSAN_OPTIONS=${UBSAN_OPTIONS:-halt_on_error=1:print_stacktrace=1}
# Without weights by rarity, which cost 8 of 10 seconds where a seed reaches a hundred thousand features, as notes do.
"$target" -entropic=0 -max_total_time="${ESTIMEND_FUZZ_SECONDS:-10}" -seed="${ESTIMEND_FUZZ_SEED:-1}" -timeout=10 -rss_limit_mb=1024 \
  -artifact_prefix="$folder/" -print_final_stats=1 "${words[@]}" "$folder/corpus" "$folder/seeds" > "$folder/log" 2>&1
status=$?

if [ $status -ne 0 ]; then
  tail -n 60 "$folder/log"
  exit 1
fi
grep -E 'cov: [0-9]+ ft: [0-9]+ corp: ' "$folder/log" | tail -n 1
grep -E '^stat::number_of_executed_units' "$folder/log"
