#!/bin/bash
# A back that swings, and the bow of its slats, stated in the window: swing_job.sh PROGRAM PIECE, inside ui_run.sh.
# Types the lean of the armchair's first station and the rise of its back slats, sees what moved, and takes it back.
set -uo pipefail
APPNAME=shoulderline
. "$(dirname "$(readlink -f "${BASH_SOURCE[0]}")")/ui_lib.sh"
. "$(dirname "$(readlink -f "${BASH_SOURCE[0]}")")/job_checks.sh"
PROGRAM=$1
cp "$2" "$UI_RUN/chair.shoulder"

ui_start "$PROGRAM" "$UI_RUN/chair.shoulder"
check "the window names the piece" ui_win 'Shoulderline$'
# High enough for the whole of the form.
xdotool windowmove "$(ui_win 'Shoulderline$')" 0 24 windowsize --sync "$(ui_win 'Shoulderline$')" 1270 2340
ui_click 'table cell' 'back slat' || ui_click 'tree item' 'back slat'
check "the form tells the bow" sees 'part: rises'
enter 'part: rises' '1 in'
check "the rise is taken" field_shows 'part: rises' '1'
check "the slats' plies or form are told to move" sees 'back slat'
ui_key ctrl+z
check "the rise is taken back" field_shows 'part: rises' '3/4'
check "the form tells the swing" sees 'swing: leans by'
enter 'swing: leans by' '13 deg'
check "the lean is taken" field_shows 'swing: leans by' '13°'
ui_key ctrl+z
check "the lean is taken back" field_shows 'swing: leans by' '12°'
[ -n "${UI_SHOT:-}" ] && ui_shot "$UI_SHOT"
ui_close
check "nothing is left unsaved, so it closes" gone
echo "$passed passed, $failed failed"
[ "$failed" -eq 0 ]
