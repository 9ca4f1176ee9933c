"""Unsaved work outlives the program; saved work leaves nothing behind."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

from app.recovery import Recovery, list_left_behind
from app.session import Session
from model.job import read_value

KEEPER = """
import os, sys
os.environ["QT_QPA_PLATFORM"] = "offscreen"
from pathlib import Path
from PySide6.QtCore import QCoreApplication
app = QCoreApplication([])
from app.recovery import Recovery
from app.session import Session
from model.job import default_job
session = Session()
keeper = Recovery(session, Path(sys.argv[1]))
session.open(default_job(), Path("parlour.mantel"))
session.set_text("opening.width", sys.argv[2])
keeper.keep()
print("kept", flush=True)
if sys.argv[3] == "stay":
    sys.stdin.read()
os._exit(1)
"""


def _start_keeper(folder: Path, width: str, then: str) -> subprocess.Popen[str]:
    """Another program that keeps a job and ends without tidying up, or stays until it is killed."""
    keeper = subprocess.Popen(
        [sys.executable, "-c", KEEPER, str(folder), width, then],
        cwd=Path(__file__).parents[2],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        text=True,
    )
    assert keeper.stdout is not None
    assert keeper.stdout.readline() == "kept\n"
    return keeper


@pytest.fixture
def session(qapp) -> Session:
    return Session()


def test_work_of_a_program_that_died_is_found_with_where_it_came_from(qapp, tmp_path: Path):
    with _start_keeper(tmp_path, "40", "die") as keeper:
        keeper.wait()
    (found,) = list_left_behind(tmp_path)
    assert read_value(found.job, "opening.width") == 40
    assert found.path is not None
    assert found.path.name == "parlour.mantel"
    found.discard()
    assert list_left_behind(tmp_path) == ()


def test_work_of_a_program_that_still_runs_is_left_alone(qapp, tmp_path: Path):
    with _start_keeper(tmp_path, "40", "stay") as keeper:
        assert list_left_behind(tmp_path) == ()
        keeper.kill()
        keeper.wait()
        assert len(list_left_behind(tmp_path)) == 1


def test_nothing_is_kept_while_nothing_is_unsaved(session: Session, tmp_path: Path):
    Recovery(session, tmp_path / "unsaved").keep()
    assert not (tmp_path / "unsaved").exists()


def test_an_edit_is_kept_by_itself_and_saving_throws_it_away(session: Session, tmp_path: Path, qtbot):
    recovery = Recovery(session, tmp_path, pause=20)
    session.set_text("opening.width", "40")
    qtbot.waitUntil(lambda: len(list(tmp_path.glob("*.unsaved"))) == 1, timeout=5000)
    session.mark_saved(tmp_path / "parlour.mantel")
    recovery.keep()
    assert list(tmp_path.iterdir()) == []


def test_edits_without_a_pause_are_kept_all_the_same(session: Session, tmp_path: Path, qtbot):
    keeper = Recovery(session, tmp_path, pause=100)
    session.begin_gesture()

    def kept_while_stepping() -> bool:
        session.step("opening.width", 1)
        return bool(list(tmp_path.glob("*.unsaved")))

    qtbot.waitUntil(kept_while_stepping, timeout=5000)
    keeper.forget()


def test_a_damaged_file_is_neither_offered_nor_removed(qapp, tmp_path: Path):
    damaged = tmp_path / "1-1.unsaved"
    damaged.write_bytes(b'{"job": 3')
    assert list_left_behind(tmp_path) == ()
    assert damaged.exists()


def test_a_folder_that_cannot_be_written_does_not_stop_the_work(session: Session, tmp_path: Path):
    (tmp_path / "file").write_text("in the way")
    recovery = Recovery(session, tmp_path / "file")
    session.set_text("opening.width", "40")
    recovery.keep()
    assert session.is_unsaved
