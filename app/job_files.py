"""New, open, save and the question before unsaved work is lost. The disk itself is app.files' business."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import QObject, QStandardPaths
from PySide6.QtWidgets import QFileDialog, QMessageBox, QWidget

from app.demo import read_demo
from app.files import JOB_SUFFIX, FileTrouble, file_state, open_job_file, save_job_file
from app.leaving import may_leave
from app.notice import Notice
from app.outputs import file_stem
from app.session import Session
from app.settings import Settings
from model.errors import JobRefused
from model.job import Job, default_job

FILTER = f"Mantelwright jobs (*{JOB_SUFFIX});;All files (*)"
MOST_FAULTS = 4


class JobFiles(QObject):
    """Carries out what the menu asks about files; `commit` enters what is being typed before a save."""

    def __init__(
        self,
        window: QWidget,
        session: Session,
        settings: Settings,
        notice: Notice,
        commit: Callable[[], bool],
    ) -> None:
        super().__init__(window)
        self._window = window
        self._session = session
        self._settings = settings
        self._notice = notice
        self._commit = commit
        self._state: tuple[int, int] | None = None

    @property
    def folder(self) -> Path:
        """Where the dialogs start: beside the job, or where a job was last."""
        if self._session.path is not None:
            return self._session.path.parent
        kept = self._settings.read("folder", "")
        documents = QStandardPaths.writableLocation(QStandardPaths.StandardLocation.DocumentsLocation)
        places = (Path(place) for place in (kept, documents) if isinstance(place, str) and place)
        return next((place for place in places if place.is_dir()), Path.home())

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
        name, _ = QFileDialog.getOpenFileName(self._window, "Open a job", str(self.folder), FILTER)
        if name:
            self.open(Path(name))

    def open(self, path: Path) -> bool:
        """Open the job at `path`; says so and changes nothing when it cannot be read."""
        if not self.may_leave():
            return False
        try:
            job, missing = open_job_file(path)
        except FileTrouble as trouble:
            self._settings.drop_recent(path)
            self._notice.say(str(trouble), wrong=True)
            return False
        except JobRefused as refusal:
            self._notice.say(_explain(path, refusal), wrong=True)
            return False
        self._take(job, path)
        self._remember(path)
        if missing:
            self._notice.say(f"{missing} Measure before relying on them.")
        return True

    def _take(self, job: Job, path: Path | None) -> None:
        self._notice.put_away()
        self._state = file_state(path) if path is not None else None
        self._session.open(job, path)

    def save(self) -> bool:
        """Save to the job's file, asking for one the first time; whether it is saved."""
        if self._session.path is None:
            return self.save_as()
        state = file_state(self._session.path)
        if state is None or state == self._state:
            return self._write(self._session.path)
        return self._save_over_changes(self._session.path)

    def save_as(self) -> bool:
        """Ask for a file and save to it; whether it is saved."""
        start = self.folder / (file_stem(self._session.job) + JOB_SUFFIX)
        name, _ = QFileDialog.getSaveFileName(self._window, "Save the job", str(start), FILTER)
        if not name:
            return False
        path = with_job_suffix(Path(name))
        # The dialog asked about the name as it was typed, not about the one it became.
        if path != Path(name) and path.exists() and not self._may_replace(path):
            return False
        return self._write(path)

    def _save_over_changes(self, path: Path) -> bool:
        """Save to a file that something else wrote since; only as the person says."""
        text = f"“{path.name}” was changed by another program or window since it was opened here."
        detail = "Replacing it loses those changes. To keep both, save this job under another name."
        choice = self._ask("Changed elsewhere", text, detail, "Replace it", "Save as…")
        if choice == "Save as…":
            return self.save_as()
        return choice == "Replace it" and self._write(path)

    def _may_replace(self, path: Path) -> bool:
        text = f"There is already a job called “{path.name}” here."
        return self._ask("Replace a job", text, "Replacing it loses what is in it.", "Replace it") != ""

    def _ask(self, title: str, text: str, detail: str, *choices: str) -> str:
        """The choice that was made, "" for leaving everything as it is."""
        box = QMessageBox(self._window)
        box.setIcon(QMessageBox.Icon.NoIcon)
        box.setWindowTitle(title)
        box.setText(text)
        box.setInformativeText(detail)
        buttons = {box.addButton(choice, QMessageBox.ButtonRole.ActionRole): choice for choice in choices}
        stay = box.addButton("Stay", QMessageBox.ButtonRole.RejectRole)
        box.setDefaultButton(stay)
        box.setEscapeButton(stay)
        box.exec()
        return next((choice for button, choice in buttons.items() if button is box.clickedButton()), "")

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
        self._state = file_state(path)
        self._session.mark_saved(path)
        self._remember(path)
        if is_whole:
            self._notice.put_away()
        else:
            self._notice.say(
                "Saved without the entry that was refused; the value it had before is in the file."
            )
        return True

    def _save_elsewhere(self) -> None:
        self.save_as()

    def _remember(self, path: Path) -> None:
        self._settings.add_recent(path.resolve())
        self._settings.write("folder", str(path.resolve().parent))

    def may_leave(self) -> bool:
        """Whether the job may be put aside: it is saved, or the person said what to do with it."""
        self._commit()
        if not self._session.is_unsaved:
            return True
        text = f"“{self._session.name}” has changes that are not saved."
        return may_leave(self._window, "Unsaved work", text, self.save)


def _explain(path: Path, refusal: JobRefused) -> str:
    faults = list(refusal.faults[:MOST_FAULTS])
    more = len(refusal.faults) - len(faults)
    if more:
        faults.append(f"and {more} more")
    return f"{path} was not opened, and nothing in it was changed.\n" + "\n".join(faults)


def with_job_suffix(path: Path) -> Path:
    """The path with our ending, added where it is not there; a point in the name is part of the name."""
    return path if path.suffix.lower() == JOB_SUFFIX else path.with_name(path.name + JOB_SUFFIX)
