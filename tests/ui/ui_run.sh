#!/bin/bash
# ui_run.sh CMD...: run CMD in a private X server + session bus + window manager + empty home.
set -euo pipefail
RUN=$(mktemp -d); mkdir -p -m 700 "$RUN/rt" "$RUN/home"
export HOME=$RUN/home XDG_RUNTIME_DIR=$RUN/rt UI_RUN=$RUN
unset XDG_CONFIG_HOME XDG_DATA_HOME XDG_CACHE_HOME XDG_STATE_HOME WAYLAND_DISPLAY
Xvfb -displayfd 3 -screen 0 "${UI_GEOMETRY:-1280x800x24}" -dpi 96 -nolisten tcp -noreset \
     3>"$RUN/display" 2>"$RUN/xvfb.log" & X=$!
trap 'kill $X 2>/dev/null || true; wait $X 2>/dev/null || true; rm -rf "$RUN"' EXIT
for _ in $(seq 100); do [ -s "$RUN/display" ] && break; sleep .05; done
export DISPLAY=:$(tr -d '\n' <"$RUN/display")
export QT_QPA_PLATFORM=xcb QT_LINUX_ACCESSIBILITY_ALWAYS_ON=1 LANG=${UI_LANG:-C.UTF-8} LC_ALL=${UI_LANG:-C.UTF-8}
dbus-run-session -- bash -c '
  openbox >"$UI_RUN/wm.log" 2>&1 & WM=$!
  for _ in $(seq 100); do xprop -root _NET_SUPPORTING_WM_CHECK 2>/dev/null | grep -q "window id" && break; sleep .05; done
  rc=0; "$@" || rc=$?; kill $WM; exit $rc' _ "$@" \
  > >(grep --line-buffered -v "^SpiRegistry daemon") 2> >(grep -v -E "fd limit|ctivat(ing|ed) service|X connection to" >&2)
