#!/bin/bash
# How a post stands, stated in the window: stance_job.sh PROGRAM PIECE, inside ui_run.sh. Types rake and splay of
# the raked chair's front posts and another level of its stretchers, and takes it all back.
set -uo pipefail
APPNAME=shoulderline
. "$(dirname "$(readlink -f "${BASH_SOURCE[0]}")")/ui_lib.sh"
. "$(dirname "$(readlink -f "${BASH_SOURCE[0]}")")/job_checks.sh"
PROGRAM=$1
cp "$2" "$UI_RUN/chair.shoulder"

ui_start "$PROGRAM" "$UI_RUN/chair.shoulder"
check "the window names the piece" ui_win 'Shoulderline$'
# High enough for the whole of the form.
xdotool windowmove "$(ui_win 'Shoulderline$')" 0 24 windowsize --sync "$(ui_win 'Shoulderline$')" 1270 1540
ui_click 'table cell' 'front post' || ui_click 'tree item' 'front post'
check "the form tells how the post stands" sees 'part: leans back by (rake)'
enter 'part: leans back by (rake)' '3 deg'
check "the rake is taken" field_shows 'part: leans back by (rake)' '3°'
enter 'part: leans in by (splay)' '2 deg'
check "the splay is taken" field_shows 'part: leans in by (splay)' '2°'
ui_key ctrl+z; ui_key ctrl+z
check "both are taken back" field_shows 'part: leans back by (rake)' ''
ui_close
check "nothing is left unsaved, so it closes" gone
echo "$passed passed, $failed failed"
[ "$failed" -eq 0 ]
