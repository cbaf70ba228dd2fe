#!/usr/bin/env bash
# start_time.sh PROGRAM EMPTY_WINDOW FILE [RUNS]: time from start to a visible window, and memory then, of the
# program with the file and of an empty Qt window, in turn. To be run through tests/ui/ui_run.sh.
set -euo pipefail
program=$1 empty=$2 file=$3 runs=${4:-7}

# Milliseconds until a window of the process is on the screen; its resident memory in MiB.
once() {
    local begin end pid rss
    begin=$(date +%s%N)
    "$@" >/dev/null 2>&1 &
    pid=$!
    # Its own waiting looks twice a second; asked again at once it takes some milliseconds a time.
    until xdotool search --onlyvisible --all --pid "$pid" --name Shoulderline >/dev/null 2>&1; do :; done
    end=$(date +%s%N)
    sleep 1
    rss=$(awk '/VmRSS/ {printf "%.1f", $2 / 1024}' "/proc/$pid/status")
    kill "$pid"
    wait "$pid" 2>/dev/null || true
    echo "$(((end - begin) / 1000000)) $rss"
}

median() { sort -n | awk '{v[NR] = $1} END {print v[int((NR + 1) / 2)]}'; }

once "$program" "$file" >/dev/null  # warm
for _ in $(seq "$runs"); do
    once "$program" "$file" >>"$UI_RUN/full"
    once "$empty" >>"$UI_RUN/empty"
done
full_ms=$(cut -d' ' -f1 "$UI_RUN/full" | median)
empty_ms=$(cut -d' ' -f1 "$UI_RUN/empty" | median)
echo "start to window: $full_ms ms; empty window: $empty_ms ms; ratio $(awk "BEGIN {printf \"%.2f\", $full_ms / $empty_ms}")"
echo "memory: $(cut -d' ' -f2 "$UI_RUN/full" | median) MiB; empty window: $(cut -d' ' -f2 "$UI_RUN/empty" | median) MiB"
