"""Unsaved work outlives the program; saved work leaves nothing behind."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from dataclasses import replace
from datetime import datetime
from pathlib import Path

import pytest
from PySide6.QtCore import QLockFile

from app.files import save_job_file
from app.keeping import LARGEST
from app.recovery import LeftBehind, Recovery, list_left_behind
from app.session import Session
from app.telling_kept import tell_kept
from model.job import Job, default_job, read_value, with_texts
from tests.full_disk import files_no_larger_than

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
    vast = tmp_path / "2-2.unsaved"
    with vast.open("wb") as file:
        file.truncate(LARGEST + 1)
    assert list_left_behind(tmp_path) == ()
    assert damaged.exists()
    assert vast.exists()


def test_a_folder_that_cannot_be_written_does_not_stop_the_work(session: Session, tmp_path: Path):
    (tmp_path / "file").write_text("in the way")
    recovery = Recovery(session, tmp_path / "file")
    session.set_text("opening.width", "40")
    recovery.keep()
    assert session.is_unsaved
    assert recovery.kept_in is None


def test_why_nothing_can_be_kept_is_told_once_until_something_could_be(session: Session, tmp_path: Path):
    folder = tmp_path / "unsaved"
    folder.write_text("in the way")
    recovery, told = Recovery(session, folder), []
    recovery.refused.connect(told.append)
    for width in ("40", "41"):
        session.set_text("opening.width", width)
        recovery.keep()
    assert len(told) == 1
    folder.unlink()
    recovery.keep()
    assert recovery.kept_in is not None
    recovery.forget()
    folder.rmdir()
    folder.write_text("in the way")
    recovery.keep()
    assert len(told) == 2


def test_a_disk_that_fills_up_leaves_what_was_kept_before(session: Session, tmp_path: Path):
    recovery, told = Recovery(session, tmp_path), []
    recovery.refused.connect(told.append)
    session.set_text("opening.width", "40")
    recovery.keep()
    session.set_text("opening.width", "41")
    with files_no_larger_than(100):
        recovery.keep()
    assert told == ["the disk cannot hold a file of this size"]
    recovery._lock.unlock()
    (found,) = list_left_behind(tmp_path)
    assert read_value(found.job, "opening.width") == 40
    found.discard()


def _kept(path: Path | None, job: Job, tmp_path: Path) -> LeftBehind:
    lock = QLockFile(str(tmp_path / "1.lock"))
    return LeftBehind(tmp_path / "1.unsaved", None, datetime(2026, 3, 4, 15, 6), lock, job, path)


def test_an_offer_says_what_the_file_does_not_hold(tmp_path: Path):
    path, job = tmp_path / "hall.mantel", default_job()
    save_job_file(path, job)
    assert tell_kept(_kept(path, job, tmp_path)).endswith("Its file holds the same.")
    texts = [("opening.width", "41 1/2"), ("shelf.thickness", "2 1/4")]
    two = with_texts(job, texts)
    words = tell_kept(_kept(path, two, tmp_path))
    assert words.startswith("Unsaved work on “hall” from 04 March, 15:06 was kept")
    assert words.endswith('does not hold: opening width 3\'-5 1/2" and shelf thickness 2 1/4".')
    more = with_texts(two, [("opening.height", "31"), ("job.name", "Hall"), ("job.client", "Invented")])
    assert tell_kept(_kept(path, more, tmp_path)).endswith(" and 2 more.")
    bought = replace(job, options=replace(job.options, name="Eight"))
    assert "an option, a photo or what was bought" in tell_kept(_kept(path, bought, tmp_path))


def test_an_offer_says_that_its_file_is_gone_or_no_job(tmp_path: Path):
    path = tmp_path / "hall.mantel"
    gone = tell_kept(_kept(path, default_job(), tmp_path))
    path.write_bytes(b"{")
    assert gone == tell_kept(_kept(path, default_job(), tmp_path))
    assert gone.endswith("The file it came from cannot be read now.")


def test_an_offer_of_work_without_a_file_says_what_was_entered(tmp_path: Path):
    job = with_texts(default_job(), [("opening.width", "40")])
    words = tell_kept(_kept(None, job, tmp_path))
    assert "“a new job”" in words
    assert words.endswith("It holds opening width 3'-4\".")


def test_work_beside_an_emptied_lock_is_found_once_the_lock_is_old(qapp, tmp_path: Path):
    with _start_keeper(tmp_path, "40", "die") as keeper:
        keeper.wait()
    (lock,) = tmp_path.glob("*.lock")
    lock.write_bytes(b"\0" * 8)
    assert list_left_behind(tmp_path) == ()
    os.utime(lock, (0, 0))
    (found,) = list_left_behind(tmp_path)
    assert read_value(found.job, "opening.width") == 40
    found.discard()


def test_an_emptied_lock_of_a_program_that_runs_is_left_alone(qapp, tmp_path: Path):
    with _start_keeper(tmp_path, "40", "stay") as keeper:
        (lock,) = tmp_path.glob("*.lock")
        os.truncate(lock, 0)
        os.utime(lock, (0, 0))
        assert list_left_behind(tmp_path) == ()
        keeper.kill()
        keeper.wait()


def test_kept_work_that_cannot_be_read_is_told_with_its_place_and_why(session: Session, tmp_path: Path):
    recovery = Recovery(session, tmp_path)
    session.set_text("opening.width", "40")
    recovery.keep()
    assert recovery.kept_in is not None
    newer, damaged, told = tmp_path / "1-1.unsaved", tmp_path / "2-2.unsaved", []
    kept = json.loads(recovery.kept_in.read_text())
    kept["job"] = '{"mantelwright": 99}'
    newer.write_text(json.dumps(kept))
    damaged.write_bytes(b"{")
    assert list_left_behind(tmp_path, told.append) == ()
    assert [str(path) in said for path, said in zip((newer, damaged), told, strict=True)] == [True, True]
    assert "written by a newer program" in told[0]
    assert "it is damaged" in told[1]
    assert newer.exists()
    recovery.forget()


def test_work_on_a_file_whose_links_lead_in_a_circle_is_kept(session: Session, tmp_path: Path):
    circle = tmp_path / "a.mantel"
    circle.symlink_to(circle)
    session.open(default_job(), circle)
    session.set_text("opening.width", "40")
    recovery = Recovery(session, tmp_path / "kept")
    recovery.keep()
    assert recovery.kept_in is not None
    recovery.forget()
