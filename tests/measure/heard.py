"""What a screen reader hears of the real program, over the real AT-SPI; fails where it must not.

It runs under the system's Python, which has the bindings, under X and on a session bus of its own
(Debian: at-spi2-core dbus gir1.2-atspi-2.0 python3-gi xdotool xvfb)::

    xvfb-run dbus-run-session -- /usr/bin/python3 tests/measure/heard.py PROGRAM [ARGUMENT...]

The program is opened on a home of its own, a leaf is taken, pressed home and read by keys and by a
screen reader's own means, and the call is put on record. Before that no word of what a leaf shows
may be heard at the picture; after it, it must be.
"""

from __future__ import annotations

import json
import os
import re
import subprocess
import sys
import tempfile
import time
import warnings
from collections.abc import Callable, Iterator, Sequence
from pathlib import Path
from typing import Any, Final, TypeVar

import gi

gi.require_version("Atspi", "2.0")
from gi.repository import Atspi, GLib  # noqa: E402  # the version is asked for first

PATIENCE: Final = 60.0
"""Seconds until something that has to come is missed; a busy machine is slow to start a program."""

TELLS: Final = re.compile(r"daylight|\btouch\b|held off|not seated|\bgap\b", re.IGNORECASE)
"""Words that say what a leaf shows. That a part touches another is said without them."""

Found = TypeVar("Found")


class UnheardError(AssertionError):
    """Something was heard that must not be, or was not."""


class Listener:
    """A screen reader: hears announcements, walks the tree, presses keys as its owner does."""

    def __init__(self) -> None:
        self.announced: list[str] = []
        self.changed: list[str] = []
        self._loop = GLib.MainLoop()
        Atspi.init()
        self._listener = Atspi.EventListener.new(self._hear)
        for kind in ("object:announcement", "object:property-change", "object:children-changed"):
            self._listener.register(kind)

    def _hear(self, event: Any) -> None:
        if event.type.startswith("object:announcement"):
            self.announced.append(str(event.any_data))
            print("   said:", event.any_data)
        else:
            self.changed.append(event.type)

    def attend(self, seconds: float) -> None:
        """Listen for a while."""
        GLib.timeout_add(round(1000 * seconds), self._loop.quit)
        self._loop.run()

    def until(self, what: str, look: Callable[[], Found | None]) -> Found:
        """Listen until `look` finds something; what is missing is called `what`."""
        end = time.monotonic() + PATIENCE
        while time.monotonic() < end:
            found = look()
            if found is not None and found is not False:
                return found
            self.attend(0.1)
        raise UnheardError(f"missed: {what}")

    def says(self, pattern: str, since: int) -> str:
        """Wait for an announcement like `pattern` among those after the first `since`."""
        return self.until(
            f"an announcement like {pattern!r}",
            lambda: next(
                (line for line in self.announced[since:] if re.search(pattern, line)), None
            ),
        )

    def application(self, pid: int) -> Any:
        """The program's root, once it is there."""

        def look() -> Any:
            desktop = Atspi.get_desktop(0)
            for each in children(desktop):
                if each.get_process_id() == pid:
                    return each
            return None

        return self.until("the program on the accessibility bus", look)


def children(node: Any) -> list[Any]:
    """What is below a node; one that goes while it is looked at has nothing."""
    try:
        found = [node.get_child_at_index(i) for i in range(node.get_child_count())]
    except GLib.Error:
        return []
    return [each for each in found if each is not None]


def walk(node: Any, depth: int = 0) -> Iterator[tuple[int, Any]]:
    """A node and all below it."""
    yield depth, node
    for each in children(node):
        yield from walk(each, depth + 1)


def told(node: Any) -> str:
    """Name and description of a node."""
    return f"{node.get_name()} | {node.get_description()}"


def find(root: Any, role: str, name: str = "") -> Any:
    """The first that shows, of a role, whose name begins with `name`."""
    for _, node in walk(root):
        try:
            shows = node.get_state_set().contains(Atspi.StateType.SHOWING)
            if shows and node.get_role_name() == role and node.get_name().startswith(name):
                return node
        except GLib.Error:
            continue
    return None


def parts(canvas: Any) -> list[Any]:
    """What the picture shows; other widgets may lie on it."""
    return [each for each in children(canvas) if each.get_role_name() == "image"]


def press(node: Any) -> None:
    """Do what a click on a control does."""
    names = [node.get_action_name(i) for i in range(node.get_n_actions())]
    wanted = next((i for i, name in enumerate(names) if name in ("Press", "Toggle")), None)
    if wanted is None or not node.do_action(wanted):
        raise UnheardError(f"{told(node)!r} can't be pressed: {names}")


def key(*keys: str) -> None:
    """Press keys, as a person does."""
    subprocess.run(["xdotool", "key", "--delay", "40", *keys], check=True)


def expect(true: object, what: str) -> None:
    """Fail unless `true`."""
    if not true:
        raise UnheardError(what)
    print("ok:", what)


def silent(where: str, lines: Sequence[str]) -> None:
    """Fail if any of `lines` says what a leaf shows."""
    loud = [line for line in lines if TELLS.search(line)]
    expect(not loud, f"{where} tells no reading {loud or ''}".rstrip())


def attend_bench(ear: Listener, app: Any) -> None:
    """Take a leaf, seat it, state what it shows and make the call, listening all the while."""
    canvas = ear.until("the picture", lambda: find(app, "canvas"))
    ear.until("the section", lambda: [each.get_name() for each in parts(canvas)] == ["Section"])
    before = {told(node) for _, node in walk(app)}
    since = len(ear.announced)
    key("8")
    ear.says("^8 mm, leg edge", since)
    leaf, tip = ear.until("leaf and tip", lambda: parts(canvas)[1:] if ear.changed else None)
    expect(leaf.get_name().startswith("Leaf 8 mm"), "a leaf that is taken is there, and its tip")
    since = len(ear.announced)
    key("space")
    ear.says("long edge on", since)
    ear.until("contacts at the leaf", lambda: "long edge on" in leaf.get_description())
    whole, part = (
        canvas.get_extents(Atspi.CoordType.SCREEN),
        tip.get_extents(Atspi.CoordType.SCREEN),
    )
    expect(
        whole.x <= part.x
        and whole.y <= part.y
        and part.x + part.width <= whole.x + whole.width
        and part.y + part.height <= whole.y + whole.height,
        "the tip lies within the picture",
    )
    silent("the picture", [told(node) for _, node in walk(canvas)])
    after = {told(node) for _, node in walk(app)}
    silent("what the press home has changed anywhere", sorted(after - before))
    since = len(ear.announced)
    actions = [canvas.get_action_name(i) for i in range(canvas.get_n_actions())]
    canvas.do_action(actions.index("turn over"))
    ear.says(".", since)
    canvas.do_action(actions.index("press home"))
    expect(True, f"the picture offers {', '.join(actions)}")
    for name in ("Daylight", "Convex", "Accept"):
        press(ear.until(name, lambda name=name: _control(app, name)))  # type: ignore[misc]
    ear.attend(0.5)
    silent("before the call, what was said", ear.announced)
    silent("the picture", [told(node) for _, node in walk(canvas)])
    since = len(ear.announced)
    press(ear.until("the record button", lambda: _control(app, "Put it on record")))
    said = ear.says("^On record", since)
    expect(TELLS.search(said), "after the call the reading is said")
    expect(TELLS.search(canvas.get_description()), "and stays to be read at the picture")


def _control(app: Any, name: str) -> Any:
    roles = ("push button", "radio button", "check box", "toggle button")
    return next((found for role in roles if (found := find(app, role, name))), None)


def run(command: Sequence[str], home: Path) -> None:
    """Start the program, listen, and end it."""
    config = home / "config" / "toe-and-throat"
    config.mkdir(parents=True)
    (config / "settings.json").write_text(json.dumps({"first_start_seen": True}))
    child = dict(os.environ, HOME=str(home), XDG_CONFIG_HOME=str(home / "config"))
    child |= {"XDG_DATA_HOME": str(home / "data"), "QT_QPA_PLATFORM": "xcb", "LC_ALL": "C.UTF-8"}
    child |= {"QT_ACCESSIBILITY": "1", "QT_LINUX_ACCESSIBILITY_ALWAYS_ON": "1"}
    ear = Listener()
    program = subprocess.Popen(command, env=child, stderr=subprocess.PIPE, text=True)
    try:
        app = ear.application(program.pid)
        search = ["xdotool", "search", "--onlyvisible", "--name", "Toe & Throat"]
        window = subprocess.run(search, check=True, capture_output=True, text=True).stdout.split()
        subprocess.run(["xdotool", "windowfocus", "--sync", window[0]], check=True)
        attend_bench(ear, app)
        expect(program.poll() is None, "the program still runs")
    finally:
        program.terminate()
        _, errors = program.communicate()
        print(errors, file=sys.stderr)
    expect("Traceback" not in errors, "no error was printed")


def main() -> int:
    """Run, and say how it went."""
    warnings.simplefilter("ignore", DeprecationWarning)
    with tempfile.TemporaryDirectory() as home:
        try:
            run(sys.argv[1:], Path(home))
        except UnheardError as failure:
            print("FAILED:", failure)
            return 1
    return 0


if __name__ == "__main__":
    sys.exit(main())
