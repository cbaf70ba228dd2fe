#!/usr/bin/python3 -W ignore
"""a11y.py APP dump | lint | focus | wait ROLE NAME | rect ROLE NAME | press ROLE NAME | text ROLE NAME | value ROLE NAME [NEW]"""
import os, sys, time, gi
gi.require_version('Atspi', '2.0')
from gi.repository import Atspi
Atspi.init()
SCALE = float(os.environ.get('UI_SCALE', '1'))   # = QT_SCALE_FACTOR: Qt reports logical pixels
INTERACTIVE = {'push button','check box','radio button','text','spin button','combo box','slider','table','tree','tree table','list','menu item','page tab','canvas','image','toggle button','password text'}
def app(name, timeout=10):
    end = time.time() + timeout
    while time.time() < end:
        d = Atspi.get_desktop(0)
        for i in range(d.get_child_count()):
            a = d.get_child_at_index(i)
            if a and a.get_name() == name and a.get_child_count(): return a
        time.sleep(.05)
    sys.exit(f'no accessible application {name!r} (session bus? QT_LINUX_ACCESSIBILITY_ALWAYS_ON=1?)')
def walk(n, depth=0):
    yield n, depth
    if depth > 1 and not has(n, 'SHOWING'): return   # what is out of sight is not looked into
    for i in range(n.get_child_count()):
        c = n.get_child_at_index(i)
        if c: yield from walk(c, depth + 1)
def has(n, s): return n.get_state_set().contains(getattr(Atspi.StateType, s))
def text(n): return Atspi.Text.get_text(n, 0, -1) if 'Text' in n.get_interfaces() else ''
def find(a, role, name, timeout=5):
    end = time.time() + timeout
    while True:
        for n, _ in walk(a):
            if n.get_role_name() == role and n.get_name().startswith(name) and has(n, 'SHOWING'): return n
        if time.time() > end: sys.exit(f'not showing: {role} {name!r}')
        time.sleep(.05)
cmd, a = sys.argv[2], app(sys.argv[1])
if cmd == 'dump':
    for n, d in walk(a):
        e = n.get_extents(Atspi.CoordType.SCREEN) if 'Component' in n.get_interfaces() else None
        print('  ' * d + f"[{n.get_role_name()}] {n.get_name()!r}" + (f" desc={n.get_description()!r}" if n.get_description() else '')
              + (f" text={text(n)!r}" if text(n) else '') + (f" @{e.x},{e.y} {e.width}x{e.height}" if e else '')
              + ' ' + ' '.join(s for s in ('FOCUSED','SELECTED','CHECKED','EXPANDED') if has(n, s)))
elif cmd == 'lint':                       # interactive things without a name a screen reader can speak
    bad = [n for n, _ in walk(a) if n.get_role_name() in INTERACTIVE and has(n, 'SHOWING') and not n.get_name().strip()]
    for n in bad:
        e = n.get_extents(Atspi.CoordType.SCREEN); print(f'NAMELESS {n.get_role_name()} at {e.x},{e.y} {e.width}x{e.height}')
    sys.exit(1 if bad else 0)
elif cmd == 'focus':                      # may print two lines: Qt keeps FOCUSED on a view's current cell too
    for n, _ in walk(a):
        if has(n, 'FOCUSED') and has(n, 'SHOWING'): print(n.get_role_name(), repr(n.get_name()))
else:
    n = find(a, sys.argv[3], sys.argv[4])
    if cmd == 'rect': e = n.get_extents(Atspi.CoordType.SCREEN); print(int((e.x + e.width / 2) * SCALE), int((e.y + e.height / 2) * SCALE))
    elif cmd == 'press': sys.exit(0 if n.do_action(0) else 1)
    elif cmd == 'text': print(text(n))
    elif cmd == 'value':
        if len(sys.argv) > 5: n.set_current_value(float(sys.argv[5]))
        print(n.get_current_value())
