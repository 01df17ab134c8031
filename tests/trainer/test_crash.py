"""Crashes that really happen, in programs of their own; and what the next start makes of them."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
from pathlib import Path

import pytest

from trainer import late
from trainer.crash import MOST_REPORTS, Repeats, Session, aftermath, shortened, write_report
from trainer.places import Places, places

ROOT = Path(late.__file__).parents[1]

BEGIN = """
import faulthandler, os, signal, sys
from pathlib import Path
from trainer.crash import Session
session = Session(Path(sys.argv[1]), "Versions")
assert session.begin()
"""

WINDOW = """
import faulthandler, os, signal, sys
from PySide6.QtCore import QTimer, qFatal
from PySide6.QtWidgets import QApplication
from trainer import late
settling = late._Opening._settling
def settled(opening, broken):
    yield from settling(opening, broken)
    {do}
late._Opening._settling = settled
sys.exit(late.open_window(["x"], None))
"""


def run(code: str, *arguments: str) -> subprocess.CompletedProcess[str]:
    command = [sys.executable, "-c", code, *arguments]
    return subprocess.run(
        command, capture_output=True, text=True, check=False, cwd=ROOT, timeout=60
    )


def opened(do: str) -> subprocess.CompletedProcess[str]:
    """Open the window, and do something in it once it is filled."""
    return run(WINDOW.format(do=do))


@pytest.fixture
def folders(tmp_path: Path) -> Places:
    return Places(tmp_path / "settings.json", tmp_path / "data")


@pytest.mark.parametrize(
    ("fault", "says"),
    [
        ("faulthandler._sigsegv()", "Segmentation fault"),
        ("os.abort()", "Aborted"),
        ("faulthandler._stack_overflow()", "Fatal Python error"),
    ],
)
def test_a_crash_leaves_a_report(folders: Places, fault: str, says: str) -> None:
    done = run(f"{BEGIN}\ndef the_culprit():\n    {fault}\nthe_culprit()", str(folders.running))
    assert done.returncode < 0
    ended = aftermath(folders.running, folders.reports)
    assert ended is not None
    assert ended.crashed
    assert ended.report is not None
    text = ended.report.read_text(encoding="utf-8")
    assert text.startswith("Versions\n")
    assert says in text
    assert aftermath(folders.running, folders.reports) is None, "it is said once"


@pytest.mark.parametrize(
    "end",
    [
        "os.kill(os.getpid(), signal.SIGKILL)",
        "os.kill(os.getpid(), 15)",
        "os._exit(0)",
        # Python then writes to the terminal only.
        "faulthandler._fatal_error_c_thread()",
    ],
)
def test_an_end_that_nothing_explains_is_no_crash(folders: Places, end: str) -> None:
    run(f"{BEGIN}\n{end}", str(folders.running))
    ended = aftermath(folders.running, folders.reports)
    assert ended is not None
    assert (ended.crashed, ended.report) == (False, None)
    assert not folders.reports.exists()


def test_one_that_closes_leaves_nothing(folders: Places) -> None:
    assert run(f"{BEGIN}\nsession.end()", str(folders.running)).returncode == 0
    assert list(folders.running.iterdir()) == []
    assert aftermath(folders.running, folders.reports) is None


def test_one_that_still_runs_is_let_alone(folders: Places) -> None:
    code = f"{BEGIN}\nprint(flush=True)\nsys.stdin.read()\nsession.end()"
    with subprocess.Popen(
        [sys.executable, "-c", code, str(folders.running)],
        stdin=subprocess.PIPE, stdout=subprocess.PIPE, cwd=ROOT,
    ) as child:  # fmt: skip
        assert child.stdout is not None
        child.stdout.readline()
        assert aftermath(folders.running, folders.reports) is None
        assert len(list(folders.running.iterdir())) == 1
        child.kill()
    ended = aftermath(folders.running, folders.reports)
    assert ended is not None
    assert not ended.crashed


def test_of_several_the_crash_is_told(folders: Places) -> None:
    run(f"{BEGIN}\nos.abort()", str(folders.running))
    run(f"{BEGIN}\nos._exit(1)", str(folders.running))
    ended = aftermath(folders.running, folders.reports)
    assert ended is not None
    assert ended.crashed


def test_a_data_folder_that_cannot_be_written_costs_no_start(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("", encoding="utf-8")
    session = Session(tmp_path / "file" / "running", "")
    assert not session.begin()
    session.note("nothing")
    session.end()
    assert aftermath(tmp_path / "file" / "running", tmp_path) is None
    assert write_report(tmp_path / "file" / "reports", "x") is None


def test_a_report_names_nobody_s_folders() -> None:
    text = shortened(
        f'File "{ROOT}/trainer/window.py", {Path.home()}/x.tray.json, {sys.prefix}/lib/a.py'
    )
    assert text == f'File "trainer{os.sep}window.py", ~/x.tray.json, python{os.sep}lib/a.py'


@pytest.mark.parametrize("inside", [".venv", "../elsewhere/.venv"])
def test_wherever_the_environment_lies(inside: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """In the program's own folder, as README's commands make it, or beside it."""
    prefix = os.path.normpath(ROOT / inside)
    monkeypatch.setattr(sys, "prefix", prefix)
    text = shortened(f"{prefix}{os.sep}lib{os.sep}a.py {ROOT}{os.sep}trainer{os.sep}b.py")
    assert text == f"python{os.sep}lib{os.sep}a.py trainer{os.sep}b.py"


def test_reports_are_kept_up_to_a_number(tmp_path: Path) -> None:
    for n in range(MOST_REPORTS + 5):
        path = write_report(tmp_path, f"{n}")
        assert path is not None
        os.utime(path, (n, n))
    kept = {path.read_text(encoding="utf-8").strip() for path in tmp_path.iterdir()}
    assert kept == {f"{n}" for n in range(5, MOST_REPORTS + 5)}


def test_one_trouble_is_not_said_again_and_again() -> None:
    now = [0.0]
    repeats = Repeats(lambda: now[0])
    said = 0
    for second in range(600):
        now[0] = float(second)
        said += repeats.says("paint")
    assert said == Repeats.MOST
    said += sum(repeats.says(f"other {n}") for n in range(100))
    assert said == Repeats.ALTOGETHER


# The whole program


@pytest.mark.parametrize(
    ("do", "says"),
    [
        ("faulthandler._sigsegv()", "Segmentation fault"),
        ("QTimer.singleShot(0, lambda: qFatal('the ground is gone'))", "the ground is gone"),
    ],
)
def test_the_next_start_says_quietly_that_it_crashed(do: str, says: str) -> None:
    assert opened(do).returncode in (-signal.SIGSEGV, -signal.SIGABRT)
    told = "print(opening.frame.band.words.text()); opening.window.close()"
    done = opened(told)
    assert done.returncode == 0, done.stderr
    (report,) = places().reports.iterdir()
    assert "crashed" in done.stdout
    assert str(report) in done.stdout
    text = report.read_text(encoding="utf-8")
    assert says in text
    assert "Fatal Python error" in text
    assert opened(told).stdout.strip() == "", "it is said once"


def test_a_session_that_was_killed_is_said_to_be() -> None:
    opened("os.kill(os.getpid(), signal.SIGKILL)")
    done = opened("print(opening.frame.band.words.text()); opening.window.close()")
    assert "without closing" in done.stdout
    assert not places().reports.exists()


def test_an_end_that_is_asked_for_is_tidy() -> None:
    for name in ("SIGTERM", "SIGHUP", "SIGINT"):
        done = opened(f"os.kill(os.getpid(), signal.{name})")
        assert done.returncode == 0, (name, done.stderr)
        assert "Traceback" not in done.stderr
    assert list(places().running.iterdir()) == []


def test_a_painting_that_fails_each_time_is_said_once_and_the_window_lives() -> None:
    done = opened(
        "from PySide6.QtGui import QPainter\n"
        "    from PySide6.QtWidgets import QWidget\n"
        "    class Bad(QWidget):\n"
        "        def paintEvent(self, event):\n"
        "            painter = QPainter(self)\n"
        "            raise ValueError('no paint')\n"
        "    bad, turns = Bad(opening.window), []\n"
        "    bad.resize(40, 40)\n"
        "    bad.show()\n"
        "    def turn():\n"
        "        turns.append(1)\n"
        "        bad.update()\n"
        "        for dialog in opening.frame.dialogs:\n"
        "            if len(turns) % 20 == 0:\n"
        "                print(type(dialog).__name__)\n"
        "                dialog.reject()\n"
        "        if len(turns) == 150:\n"
        "            opening.window.close()\n"
        "    timer = QTimer(opening.window)\n"
        "    timer.timeout.connect(turn)\n"
        "    timer.start(5)\n"
    )
    assert done.returncode == 0, done.stderr
    assert done.stderr.count("ValueError: no paint") > 10
    assert done.stdout.split().count("UnforeseenDialog") == 1
    (report,) = places().reports.iterdir()
    text = report.read_text(encoding="utf-8")
    assert "ValueError: no paint" in text
    assert str(Path.home()) not in text


def test_an_error_in_a_thread_is_said_as_well() -> None:
    done = opened(
        "import threading\n"
        "    thread = threading.Thread(target=lambda: 1 / 0)\n"
        "    thread.start()\n"
        "    thread.join()\n"
        "    def turn():\n"
        "        for dialog in opening.frame.dialogs:\n"
        "            if hasattr(dialog, 'details'):\n"
        "                print(dialog.details.toPlainText())\n"
        "                opening.window.close()\n"
        "    timer = QTimer(opening.window)\n"
        "    timer.timeout.connect(turn)\n"
        "    timer.start(5)\n"
    )
    assert done.returncode == 0
    assert "ZeroDivisionError" in done.stdout
