#!/bin/bash
# What the jobs in a real window have in common, sourced by each: how its sentences are checked and counted, what is
# waited for, how a field is filled in.
passed=0 failed=0
check() {  # check SENTENCE COMMAND...
    local sentence=$1
    shift
    if "$@" >/dev/null 2>&1; then passed=$((passed + 1)); echo "ok: $sentence"
    else failed=$((failed + 1)); echo "NOT: $sentence"; fi
}
sees() { for _ in $(seq 40); do ui_a11y dump | grep -F -- "$1" >/dev/null && return 0; sleep .1; done; return 1; }
field_shows() { for _ in $(seq 40); do [ "$(ui_a11y text text "$1")" = "$2" ] && return 0; sleep .1; done; return 1; }
gone() { for _ in $(seq 50); do kill -0 "$UI_PID" 2>/dev/null || return 0; sleep .1; done; return 1; }
enter() { ui_click text "$1"; ui_key ctrl+a; ui_type "$2"; ui_key Return; }  # enter FIELD TEXT
