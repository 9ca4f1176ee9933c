"""New, open, save and the question before unsaved work is lost. The disk itself is app.files' business."""

from __future__ import annotations

import os
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QStandardPaths
from PySide6.QtWidgets import QFileDialog, QWidget

from app.asking import ELSEWHERE, REPLACE, ask_over_changes, ask_where, say_anew
from app.demo import read_demo
from app.files import JOB_SUFFIX, FileState, FileTrouble, file_state, open_job_file, save_job_file
from app.held_job import HeldJob
from app.leaving import may_leave
from app.notice import Notice
from app.outputs import file_stem
from app.session import Session
from app.settings import Settings
from model.errors import JobRefused
from model.job import Job, default_job

if TYPE_CHECKING:
    from app.recovery import LeftBehind

KINDS = {f"Mantelwright jobs (*{JOB_SUFFIX})": (JOB_SUFFIX,), "All files (*)": (JOB_SUFFIX,)}
MOST_FAULTS = 4
PARTLY = "Saved without the entry that was refused; the value it had before is in the file."


class JobFiles(QObject):
    """Carries out what the menu asks about files; `commit` enters what is being typed before a save."""

    def __init__(
        self,
        window: QWidget,
        session: Session,
        settings: Settings,
        notice: Notice,
        commit: Callable[[], bool],
        held: HeldJob,
    ) -> None:
        super().__init__(window)
        self._window = window
        self._session = session
        self._settings = settings
        self._notice = notice
        self._commit = commit
        self._held = held
        self.state: FileState | None = None
        """How the job's file was when it was last read or written here."""

    @property
    def folder(self) -> Path:
        """Where the dialogs start: beside the job, or where a job was last."""
        if self._session.path is not None:
            return self._session.path.parent
        kept = self._settings.read("folder", "")
        documents = QStandardPaths.writableLocation(QStandardPaths.StandardLocation.DocumentsLocation)
        places = (Path(place) for place in (kept, documents) if isinstance(place, str) and place)
        return next((place for place in places if os.path.isdir(place)), Path.home())

    def new(self) -> None:
        """Begin a job with everything at its default."""
        if self.may_leave():
            self._take(default_job(), None)

    def open_example(self, name: str) -> None:
        """Open a shipped job as a new one, so that the shipped one stays as it is."""
        if self.may_leave():
            self._take(read_demo(name), None)

    def ask_and_open(self) -> None:
        """Ask for a file and open it."""
        name, _ = QFileDialog.getOpenFileName(self._window, "Open a job", str(self.folder), ";;".join(KINDS))
        if name:
            self.open(Path(name))

    def open(self, path: Path) -> bool:
        """Open the job at `path`; says so and changes nothing when it cannot be read."""
        if not self.may_leave():
            return False
        state = file_state(path)  # as it was before it is read, so that what is written meanwhile counts
        try:
            job, missing = open_job_file(path)
        except FileTrouble as trouble:
            self._settings.drop_recent(path)
            self._notice.say(str(trouble), wrong=True)
            return False
        except JobRefused as refusal:
            self._notice.say(_explain(path, refusal), wrong=True)
            return False
        is_elsewhere = self._take(job, path, state)
        self._remember(path)
        lacks = f"{missing} Measure before relying on them." if missing else ""
        self._tell_opened(lacks, path if is_elsewhere else None)
        return True

    def _take(self, job: Job, path: Path | None, state: FileState | None = None) -> bool:
        """Open it here; whether another window has it open."""
        self._notice.put_away()
        self.state = state
        self._session.open(job, path)
        return self._held.hold(path)

    def _tell_opened(self, said: str, elsewhere: Path | None) -> None:
        """Say what there is to say of a job just opened or saved, and where another window has it open."""
        also = _tell_elsewhere(elsewhere) if elsewhere is not None else ""
        if said or also:
            self._notice.say("\n".join(filter(None, (said, also))))

    def take_up(self, work: LeftBehind) -> bool:
        """Go on with work that was left behind; whether the job that was open could be put aside."""
        if not self.may_leave():
            return False
        self.state = work.state
        self._session.open(work.job, work.path, recovered=True)
        self._tell_opened("", work.path if self._held.hold(work.path) else None)
        return True

    def save(self) -> bool:
        """Save to the job's file, asking for one the first time; whether it is saved."""
        if self._session.path is None:
            return self.save_as()
        state = file_state(self._session.path)
        if state is None and self.state is not None:
            return self._write_anew(self._session.path)
        if state is None or state == self.state:
            return self._write(self._session.path)
        choice = ask_over_changes(self._window, self._session.path, "job")
        if choice == ELSEWHERE:
            return self.save_as()
        return choice == REPLACE and self._write(self._session.path)

    def save_as(self) -> bool:
        """Ask for a file and save to it; whether it is saved."""
        start = self.folder / (file_stem(self._session.job) + JOB_SUFFIX)
        where = ask_where(self._window, "Save the job", start, KINDS)
        return where is not None and self._write(where[0])

    def _write_anew(self, path: Path) -> bool:
        """Save to where the file was that is there no more; it may be on a disk that was taken away."""
        is_done = self._write(path)
        if is_done:
            self._notice.say(say_anew(path, "job"), (("Save as…", self._save_elsewhere),))
        return is_done

    def _write(self, path: Path) -> bool:
        is_whole = self._commit()
        try:
            save_job_file(path, self._session.job)
        except FileTrouble as trouble:
            self._notice.say(
                f"{trouble} Your work is still here; make room, or save it somewhere else.",
                (("Save as…", self._save_elsewhere),),
                wrong=True,
            )
            return False
        is_other = path != self._session.path
        is_elsewhere = self._held.hold(path) and is_other
        self.state = file_state(path)
        self._session.mark_saved(path)
        self._remember(path)
        self._notice.put_away()
        self._tell_opened("" if is_whole else PARTLY, path if is_elsewhere else None)
        return True

    def _save_elsewhere(self) -> None:
        self.save_as()

    def _remember(self, path: Path) -> None:
        self._settings.add_recent(Path(os.path.realpath(path)))
        self._settings.write("folder", str(Path(os.path.realpath(path)).parent))

    def may_leave(self) -> bool:
        """Whether the job may be put aside: it is saved, or the person said what to do with it."""
        self._commit()
        if not self._session.is_unsaved:
            return True
        text = f"“{self._session.name}” has changes that are not saved."
        return may_leave(self._window, "Unsaved work", text, self.save)


def _tell_elsewhere(path: Path) -> str:
    return (
        f"“{path.name}” is open in another window as well. Go on in one of them: neither sees what the other "
        "changes, and each asks before it writes over what the other has saved."
    )


def _explain(path: Path, refusal: JobRefused) -> str:
    faults = list(refusal.faults[:MOST_FAULTS])
    more = len(refusal.faults) - len(faults)
    if more:
        faults.append(f"and {more} more")
    return f"{path} was not opened, and nothing in it was changed.\n" + "\n".join(faults)
