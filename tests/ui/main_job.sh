#!/bin/bash
# The main job, as a person does it: main_job.sh PROGRAM PIECE, inside ui_run.sh. Changes the rail thickness of
# the armchair, reads what moved, takes it back, follows a finding, saves a PDF, and closes.
set -uo pipefail
APPNAME=shoulderline
. "$(dirname "$(readlink -f "${BASH_SOURCE[0]}")")/ui_lib.sh"
. "$(dirname "$(readlink -f "${BASH_SOURCE[0]}")")/job_checks.sh"
PROGRAM=$1
cp "$2" "$UI_RUN/chair.shoulder"
there() { kill -0 "$UI_PID" 2>/dev/null; }

ui_start "$PROGRAM" "$UI_RUN/chair.shoulder"
check "the window names the piece" ui_win '^Waiting-room armchair - Shoulderline$'
check "the rails are 7/8 in thick" field_shows 'rail thickness' '7/8'
check "every part is on the canvas for assistive tools" sees "[image] 'side rail, upper, left'"
check "nothing that one may use is nameless" ui_a11y lint

ui_click text 'rail thickness'; ui_type '1 1/8'; ui_key Return
check "the title shows unsaved work" ui_win '^\*Waiting-room armchair - Shoulderline$'
check "what moved tells the tenon" sees 'side rail, upper into front post, tenon thickness: 3/8, was 5/16'

ui_key ctrl+z
check "undo brings 7/8 in back" field_shows 'rail thickness' '7/8'
check "undo leaves nothing unsaved" ui_win '^Waiting-room armchair - Shoulderline$'
ui_key ctrl+shift+z
check "redo makes it 1 1/8 in again" field_shows 'rail thickness' '1 1/8'

ui_click 'push button' 'must mend:'
check "a finding leads to its joint, with its sizes" field_shows 'tenon thickness' '3/8'

ui_key ctrl+3
check "the joint's proportions are told with their sources" sees 'Fairham, Woodwork Joints, General rule'
check "its strength carries the caution" sees 'no proof that a piece is safe to sit on'
ui_a11y press 'push button' 'house rule for tenon thickness to stock'; sleep .4
ui_type '0.5'
check "a house rule is foreseen before it is taken" sees 'It would change:'
ui_key alt+t
check "the house rule stands" sees 'your house rule for tenon thickness'
ui_key ctrl+z
no_house_rule() { for _ in $(seq 40); do ui_a11y dump | grep -F "your house rule" >/dev/null || return 0; sleep .1; done; return 1; }
check "and is taken back like any change" no_house_rule
ui_a11y press 'push button' 'loads that the piece is to bear'; sleep .4
ui_type 'swell'; ui_key Tab Tab Tab; ui_type '300'; ui_key alt+s
check "a load of the maker's own is carried" sees 'swell: 300 N'
ui_key Escape; ui_key ctrl+z
ui_key ctrl+1

ui_click text 'seat height'; ui_type '16 3/x'; ui_key Return
check "what cannot be read is refused in words" sees 'expected'
ui_key Escape
check "and the value stays" field_shows 'seat height' '16 3/4'

ui_key ctrl+4
check "the prints tell their pages" sees 'full size. Print at 100 %'
ui_click 'push button' 'Save PDF'; sleep 1
ui_key ctrl+a; ui_type "$UI_RUN/parts.pdf"; ui_key Return
pdf_is_there() { for _ in $(seq 100); do [ -s "$UI_RUN/parts.pdf" ] && [ "$(head -c 5 "$UI_RUN/parts.pdf")" = %PDF- ] && return 0; sleep .1; done; return 1; }
check "the PDF is written" pdf_is_there

ui_close
check "closing asks" ui_a11y wait alert 'Save changes'
ui_key Escape; sleep .3
check "Esc keeps it open" there
ui_close
ui_a11y wait alert 'Save changes' >/dev/null 2>&1
ui_a11y press 'push button' 'Discard' || ui_a11y press 'push button' 'Close without Saving' || true
check "Discard closes it" gone
check "and leaves no snapshot behind" bash -c '[ -z "$(ls "$HOME/.local/state/shoulderline/recovery" 2>/dev/null)" ]'
check "the program printed no warning" bash -c '! grep -iE "warning|QObject|error" "$UI_RUN/app.log"'
[ -s "$UI_RUN/app.log" ] && cat "$UI_RUN/app.log"
if [ "$failed" -gt 0 ] && kill -0 "$UI_PID" 2>/dev/null; then ui_a11y dump | head -150; kill "$UI_PID"; fi
echo "$passed passed, $failed failed"
[ "$failed" -eq 0 ]
