"""The program as a person runs it: a real window on a real display, real keys, real files."""

from __future__ import annotations

import os
import re
import shutil
import signal
import subprocess
import sys
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

import pytest

from app.files import read_job_file, save_job_file
from app.settings import WALKED
from app.window import PRODUCT
from model.job import default_job, read_value

HOUSE = Path(__file__).parents[2]
TOOLS = ("Xvfb", "xdotool")
PATIENCE = 30.0

pytestmark = pytest.mark.skipif(
    not all(shutil.which(tool) for tool in TOOLS), reason=f"needs {' and '.join(TOOLS)}"
)


@contextmanager
def _running(command: list[str], **more: object) -> Iterator[subprocess.Popen[str]]:
    process = subprocess.Popen(command, text=True, **more)  # type: ignore[call-overload]
    try:
        yield process
    finally:
        with suppress(ProcessLookupError):
            process.kill()
        process.wait()


@pytest.fixture
def display() -> Iterator[str]:
    """A screen that nobody else uses; the server chooses its number. It does not begin anew when nobody is
    connected, as between two looks at it: a program that starts at that moment would be turned away.
    """
    reading, writing = os.pipe()
    command = [
        "Xvfb",
        "-displayfd",
        str(writing),
        "-screen",
        "0",
        "1366x768x24",
        "-nolisten",
        "tcp",
        "-noreset",
    ]
    quiet = subprocess.DEVNULL
    with _running(command, pass_fds=(writing,), stdout=quiet, stderr=quiet):
        os.close(writing)
        with os.fdopen(reading) as answer:
            yield f":{answer.readline().strip()}"


class Person:
    """Somebody at the keyboard of one running program."""

    def __init__(self, display: str, home: Path) -> None:
        self.complaints = home / "complaints.txt"
        self.settings = home / "mantelwright" / "settings.ini"
        self.settings.parent.mkdir(exist_ok=True)
        self.settings.write_text(f"[General]\n{WALKED}=true\n")  # been through the window before
        self._environment = {
            k: v for k, v in os.environ.items() if not k.startswith(("QT_", "XDG_", "WAYLAND"))
        } | {"DISPLAY": display, "HOME": str(home), "XDG_CONFIG_HOME": str(home), "XDG_DATA_HOME": str(home)}

    @contextmanager
    def start(self, *arguments: str) -> Iterator[subprocess.Popen[str]]:
        command = [sys.executable, "-m", "app", *arguments]
        with (
            self.complaints.open("w") as complaints,
            _running(command, cwd=HOUSE, env=self._environment, stderr=complaints) as program,
        ):
            yield program

    def use(self, *words: str) -> str:
        done = subprocess.run(["xdotool", *words], env=self._environment, capture_output=True, text=True)
        return done.stdout.strip()

    def see(self, title: str) -> str:
        """Wait for a window whose title holds `title`, and bring it to the keyboard."""
        found = wait_for(lambda: self.use("search", "--onlyvisible", "--name", re.escape(title)))
        window = found.split()[0]
        self.use("windowfocus", "--sync", window)
        return window

    def rest(self, program: subprocess.Popen[str]) -> None:
        """Wait until the program has loaded what it needs: it has used no processor time for a while."""
        quiet_since, before = time.monotonic(), -1
        until = quiet_since + PATIENCE
        while time.monotonic() < until and time.monotonic() - quiet_since < 0.6:
            used = sum(
                map(int, Path(f"/proc/{program.pid}/stat").read_text().rsplit(")", 1)[1].split()[11:13])
            )
            if used > before + 1:
                quiet_since, before = time.monotonic(), used
            time.sleep(0.05)

    def press(self, *keys: str) -> None:
        for key in keys:
            self.use("key", "--clearmodifiers", key)
            time.sleep(0.05)

    def write(self, text: str) -> None:
        self.use("type", "--delay", "5", text)


def wait_for(look: Callable[[], object]) -> str:
    """What `look` finds as soon as it finds something."""
    until = time.monotonic() + PATIENCE
    while time.monotonic() < until:
        if found := look():
            return str(found)
        time.sleep(0.1)
    raise AssertionError("nothing came of it")


@pytest.fixture
def person(display: str, tmp_path: Path) -> Person:
    (tmp_path / "home").mkdir()
    return Person(display, tmp_path / "home")


def _width(path: Path) -> float:
    return read_value(read_job_file(path), "opening.width")


def test_a_dimension_is_typed_saved_written_out_and_there_again_after_reopening(
    person: Person, tmp_path: Path
):
    job, out = tmp_path / "parlour.mantel", tmp_path / "out"
    save_job_file(job, default_job())
    out.mkdir()
    with person.start(str(job)) as program:
        person.see("parlour")
        person.rest(program)
        person.press("F6", "F6", "F6")  # round from the opening's width, where the cursor is at first
        person.write("40 1/2")
        person.press("Return")
        person.see("parlour*")
        person.press("ctrl+s")
        wait_for(lambda: _width(job) == 40.5)
        person.press("ctrl+shift+d")
        person.see("Write the drawing file")
        person.press("ctrl+a")
        person.write(str(out / "parlour.dxf"))
        person.press("Return")
        drawing = out / "parlour.dxf"
        wait_for(lambda: drawing.exists() and "3'-4 1/2" in drawing.read_text())
        person.see("parlour")
        person.press("ctrl+q")
        assert program.wait(PATIENCE) == 0
        assert "Traceback" not in person.complaints.read_text()
    with person.start(str(job)) as program:
        person.see("parlour")
        person.rest(program)
        person.press("F6", "F6", "F6", "Up", "Return", "ctrl+s")
        wait_for(lambda: _width(job) == 40.625)
        person.press("ctrl+q")
        assert program.wait(PATIENCE) == 0


@pytest.fixture
def heard_hang_ups() -> Iterator[None]:
    """Started so that they outlive their terminal, the tests would hand on that it is not heard of."""
    before = signal.signal(signal.SIGHUP, signal.SIG_DFL)
    yield
    signal.signal(signal.SIGHUP, before)


@pytest.mark.usefixtures("heard_hang_ups")
def test_a_program_asked_to_end_by_the_system_offers_the_work_at_the_next_start(
    person: Person, tmp_path: Path
):
    with person.start() as program:
        person.see("New job")
        person.rest(program)
        person.press("F6", "F6", "F6")
        person.write("44")
        person.press("Return")
        person.see("New job*")
        program.send_signal(signal.SIGTERM)
        assert program.wait(PATIENCE) == 0
    kept = list((tmp_path / "home").rglob("*.unsaved"))
    assert len(kept) == 1
    with person.start() as program:
        person.see("New job")
        wait_for(lambda: list((tmp_path / "home").rglob("*.lock")))
        program.send_signal(signal.SIGHUP)  # its terminal was closed
        assert program.wait(PATIENCE) == 0
    assert list((tmp_path / "home").rglob("*.unsaved")) == kept


def test_the_first_start_leads_through_a_shipped_job_and_the_next_begins_a_new_one(person: Person):
    person.settings.unlink()
    with person.start() as program:
        person.see("Living room, brick front")
        person.rest(program)
        person.press("Escape")  # skips the rest of the way
        person.press("ctrl+q")
        assert program.wait(PATIENCE) == 0
        assert "Traceback" not in person.complaints.read_text()
    assert f"{WALKED}=true" in person.settings.read_text()
    with person.start() as program:
        person.see("New job")
        person.press("ctrl+q")
        assert program.wait(PATIENCE) == 0


def test_what_is_typed_before_the_window_is_whole_is_entered_once_it_is(person: Person, tmp_path: Path):
    job = tmp_path / "parlour.mantel"
    save_job_file(job, default_job())
    with person.start(str(job)) as program:
        person.use("windowfocus", wait_for(lambda: person.use("search", "--onlyvisible", "--name", PRODUCT)))
        person.write("41 1/2")
        person.press("Return", "ctrl+s")
        wait_for(lambda: _width(job) == 41.5)
        person.press("ctrl+q")
        assert program.wait(PATIENCE) == 0
    assert "Traceback" not in person.complaints.read_text()
