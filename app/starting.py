"""Starts from the fireplace: has a first design sized beside the window, and puts it in place as one step."""

from __future__ import annotations

from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject

from app.notice import Notice
from app.progress_line import ProgressLine
from app.session import Session
from app.work import Work
from export.progress import Step
from model.job import Job

if TYPE_CHECKING:
    from model.check.first_design import FirstDesign

Sized = tuple[Job, "FirstDesign | None"]
NOT_KNOWN = (
    "No clearance is known for this fireplace yet, so no first design can be sized. Choose another "
    "rule set, or enter the manual's chart."
)


class Starting(QObject):
    """One design at a time; an edit made meanwhile is not overwritten."""

    def __init__(self, session: Session, notice: Notice) -> None:
        super().__init__()
        self._session, self._notice = session, notice
        self._work = Work()
        self.progress = ProgressLine(self._work, "Stop sizing; the job stays as it is")
        self._work.done.connect(self._put)
        self._work.failed.connect(self._fail)

    def begin(self, guide: str) -> None:
        """Size a first design by that proportion guide."""
        if self._work.is_busy:
            return
        self._notice.put_away()
        self.progress.begin("Trying sizes")
        self._work.start(partial(_size, self._session.job, guide))

    def wait(self) -> None:
        """End what is being done before the window goes."""
        self._work.wait()

    def _put(self, sized: Sized) -> None:
        job, first = sized
        if first is None:
            self._notice.say(NOT_KNOWN, wrong=True)
        elif self._session.job is not job:
            self._notice.say("The job was changed while sizes were tried; it is left as it is now.")
        else:
            self._session.change("start from this fireplace", first.job)
            self._notice.say(_tell(first), (("Undo", self._session.undo),))

    def _fail(self, error: Exception) -> None:
        raise error


def _size(job: Job, guide: str, step: Step) -> Sized:
    from model.check.first_design import size_first_design

    return job, size_first_design(job, guide, step)


def _tell(first: FirstDesign) -> str:
    """What came of it, in a sentence or two."""
    kept = first.boards - first.ripped
    text = (
        f"Sized from the measurements: {kept} of {first.boards} solid boards keep the width they are sold in."
    )
    if first.left:
        parts = ", ".join(dict.fromkeys(finding.part for finding in first.left))
        text += f" No size of the surround cures what is still over: {parts}."
    return text
