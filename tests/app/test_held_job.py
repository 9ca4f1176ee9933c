"""Two windows on one job are told of each other when the second opens it, not when work is at stake."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

from app.files import save_job_file
from app.held_job import HeldJob
from app.recovery import list_left_behind
from app.window import Window
from model.job import default_job

HOLDER = """
import sys
from pathlib import Path
from app.held_job import HeldJob
held = HeldJob(Path(sys.argv[1]))
print(held.hold(Path(sys.argv[2])), flush=True)
sys.stdin.read()
"""


def _start_holder(folder: Path, path: Path) -> subprocess.Popen[str]:
    """Another program that has a job open until it is killed."""
    holder = subprocess.Popen(
        [sys.executable, "-c", HOLDER, str(folder), str(path)],
        cwd=Path(__file__).parents[2],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        text=True,
    )
    assert holder.stdout is not None
    assert holder.stdout.readline() == "False\n"
    return holder


@pytest.fixture
def parlour(tmp_path: Path) -> Path:
    path = tmp_path / "parlour.mantel"
    save_job_file(path, default_job())
    return path


@pytest.fixture
def kept(window: Window) -> Path:
    return window.recovery_folder


def test_a_job_open_in_another_window_is_told_when_it_is_opened(window: Window, parlour: Path, kept: Path):
    with _start_holder(kept, parlour) as other:
        assert window.files.open(parlour)
        assert window.notice.text.startswith("“parlour.mantel” is open in another window as well.")
        other.kill()
    assert window.files.open(parlour)
    assert window.notice.text == ""


def test_it_is_told_of_a_link_to_the_same_file_too(window: Window, parlour: Path, kept: Path):
    link = parlour.with_name("link.mantel")
    link.symlink_to(parlour)
    with _start_holder(kept, parlour) as other:
        assert window.files.open(link)
        assert "in another window" in window.notice.text
        other.kill()


def test_saving_to_a_file_that_another_window_has_open_is_told_once(
    window: Window, parlour: Path, kept: Path, monkeypatch
):
    monkeypatch.setattr("app.job_files.ask_where", lambda *_: (parlour, ""))
    with _start_holder(kept, parlour) as other:
        assert window.files.save_as()
        assert "in another window" in window.notice.text
        assert window.files.save()
        assert window.notice.text == ""
        other.kill()


def test_a_window_lets_go_of_a_job_when_it_opens_another_or_ends(window: Window, parlour: Path, kept: Path):
    other = HeldJob(kept)
    assert window.files.open(parlour)
    assert other.hold(parlour)
    window.files.new()
    assert not other.hold(parlour)
    other.let_go()
    assert window.files.open(parlour)
    window.wind_up()
    assert not other.hold(parlour)
    other.let_go()
    assert list(kept.iterdir()) == []


def test_what_is_held_is_no_work_left_behind(window: Window, parlour: Path, kept: Path):
    assert window.files.open(parlour)
    assert len(list(kept.iterdir())) == 1
    assert list_left_behind(kept) == ()


def test_a_folder_that_takes_no_lock_is_told_nobody(window: Window, parlour: Path, kept: Path):
    kept.write_text("in the way")
    assert window.files.open(parlour)
    assert window.notice.text == ""


def test_a_lock_that_a_power_cut_emptied_holds_no_job_once_it_is_old(qapp, parlour: Path, tmp_path: Path):
    folder = tmp_path / "locks"
    first = HeldJob(folder)
    first.hold(parlour)
    (lock,) = folder.iterdir()
    first.let_go()
    lock.write_bytes(b"")
    assert HeldJob(folder).hold(parlour)
    os.utime(lock, (0, 0))
    again = HeldJob(folder)
    assert not again.hold(parlour)
    again.let_go()
