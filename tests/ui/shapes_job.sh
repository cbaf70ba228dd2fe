#!/bin/bash
# Shapes in the window: shapes_job.sh PROGRAM PIECE, inside ui_run.sh.
# Drags a point of the armchair's arm on its drawing and takes it back, moves one by keys, eases an arris in the form,
# and fills in the survey of an original.
set -uo pipefail
APPNAME=shoulderline
. "$(dirname "$(readlink -f "${BASH_SOURCE[0]}")")/ui_lib.sh"
. "$(dirname "$(readlink -f "${BASH_SOURCE[0]}")")/job_checks.sh"
PROGRAM=$1
cp "$2" "$UI_RUN/chair.shoulder"

lacks() { for _ in $(seq 40); do ui_a11y dump | grep -F -- "$1" >/dev/null || return 0; sleep .1; done; return 1; }
shot() { [ -z "${UI_SHOTS:-}" ] || ui_shot "$UI_SHOTS/$1.png"; }

ui_start "$PROGRAM" "$UI_RUN/chair.shoulder"
check "the window names the piece" ui_win 'Shoulderline$'
xdotool windowmove "$(ui_win 'Shoulderline$')" 0 24 windowsize --sync "$(ui_win 'Shoulderline$')" 1270 2740
check "how one sits on it is told" sees 'Sitting: seat'
shot sitting
ui_click 'table cell' 'arm'
ui_key ctrl+2
check "the arm's points are on its drawing" sees 'face edge, point 2'
check "and its easings in the form" sees 'part: size'
shot arm
enter 'part: size' '2 in'
check "a chamfer larger than the wood is told with the largest that can be made" sees 'can be made'
ui_key ctrl+z
check "and is taken back" field_shows 'part: size' '1/8'
[ -z "${UI_SHOTS:-}" ] || ui_a11y dump > "$UI_SHOTS/dump.txt"
read -r x y < <(ui_a11y rect 'image' 'face edge, point 2')
ui_drag "$x" "$y" "$x" $((y + 14))
shot dragged
check "the point follows the drag" sees 'face edge, point 2'
check "what it moved is told" sees 'arm'
check "it is no more where it was" lacks "desc='24 along, 3/8 in'"
ui_key ctrl+z
check "the whole drag is taken back in one step" sees "desc='24 along, 3/8 in'"
shot undone
xdotool key alt+e; sleep .3; ui_key o
check "the survey opens" ui_win 'Survey of an Original'
ui_type '17 in'; ui_key Return
check "a found figure is set beside the one chosen" sees 'more'
shot survey
ui_key Escape
ui_key ctrl+z
ui_close
check "nothing is left unsaved, so it closes" gone
echo "$passed passed, $failed failed"
[ "$failed" -eq 0 ]
