# ui_lib.sh: source inside a script started by ui_run.sh. APPNAME = QApplication::applicationName().
HERE=$(dirname "$(readlink -f "${BASH_SOURCE[0]}")")
ui_start() { setsid "$@" >"$UI_RUN/app.log" 2>&1 & UI_PID=$!; }        # ui_start ./build/app file
ui_win()   { timeout "${2:-10}" xdotool search --sync --all --onlyvisible --pid "$UI_PID" --name "$1" | tail -1; }
ui_a11y()  { /usr/bin/python3 -W ignore "$HERE/a11y.py" "$APPNAME" "$@"; }
ui_key()   { xdotool key --delay 30 "$@"; sleep .08; }
ui_type()  { if printf %s "$1" | LC_ALL=C grep -q '[^ -~]'; then printf %s "$1" | xclip -selection clipboard -i; ui_key ctrl+v; else xdotool type --delay 15 -- "$1"; sleep .08; fi; }
ui_click() { read -r x y < <(ui_a11y rect "$1" "$2"); xdotool mousemove --sync "$x" "$y" click "${3:-1}"; sleep .1; }   # ROLE NAME [BUTTON]
ui_drag()  { xdotool mousemove --sync "$1" "$2" mousedown 1; for i in 1 2 3 4 5 6 7 8; do xdotool mousemove --sync $(($1+($3-$1)*i/8)) $(($2+($4-$2)*i/8)); done; xdotool mouseup 1; sleep .1; }
ui_shot()  { sleep .15; import -silent -window root "$1"; }
ui_close() { xdotool key alt+F4; sleep .3; }
