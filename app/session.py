"""One job being edited: its steps back and forth, and whether it is saved. No widgets, no disk."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QObject, Signal
from PySide6.QtGui import QUndoCommand, QUndoStack

from model.job import Job, default_job, read_value, with_value
from model.parameters import Value, find_parameter
from model.stepping import step_value

_NEVER_MERGED = -1
_LARGEST_ID = 2**31 - 1


class Change(QUndoCommand):
    """One step: the job before and after."""

    def __init__(self, session: Session, words: str, after: Job) -> None:
        super().__init__(words)
        self.session, self.before, self.after = session, session.job, after

    def redo(self) -> None:
        """Put the job as it is after the step."""
        self.session.put_job(self.after)

    def undo(self) -> None:
        """Put the job as it was before the step."""
        self.session.put_job(self.before)

    def mergeWith(self, other: QUndoCommand) -> bool:
        """End where `other` ends, if that goes on with this one; a step that leads nowhere is dropped."""
        if not isinstance(other, Change) or not self.is_continued_by(other):
            return False
        self.after = other.after
        self.setObsolete(self.after == self.before)
        return True

    def is_continued_by(self, _other: Change) -> bool:
        """Whether the step that follows and this one are one step."""
        return False


class Edit(Change):
    """A step of one row. Those of one gesture become one."""

    def __init__(self, session: Session, path: str, after: Job, gesture: int) -> None:
        super().__init__(session, find_parameter(path).name, after)
        self.path, self.gesture = path, gesture

    def id(self) -> int:
        """Which steps Qt may try to merge with this one."""
        return self.gesture

    def is_continued_by(self, other: Change) -> bool:
        """Whether `other` goes on with the same row."""
        return isinstance(other, Edit) and other.path == self.path


class Session(QObject):
    """The job, its file and its undo stack.

    `changed` follows every new job, `replaced` a job that came from elsewhere (new or opened),
    `state_changed` a change of file name or of whether there is unsaved work. While something is tried, the
    job is one that no step leads to yet; any step ends that.
    """

    changed = Signal()
    replaced = Signal()
    state_changed = Signal()

    def __init__(self, job: Job | None = None, path: Path | None = None) -> None:
        super().__init__()
        self.job = job or default_job()
        self.path = path
        self.revision = 0
        self.stack = QUndoStack(self)
        self._gesture = 1
        self._recovered = False
        self._untried: Job | None = None
        self.stack.cleanChanged.connect(self._tell_state)

    def _tell_state(self, _clean: bool) -> None:
        self.state_changed.emit()

    @property
    def is_unsaved(self) -> bool:
        """Whether there is work that closing would lose."""
        return self._recovered or not self.stack.isClean()

    @property
    def name(self) -> str:
        """What to call the job in titles and questions."""
        if self.path is not None:
            return self.path.stem
        return self.job.about.name.strip().split("\n")[0][:60] or "New job"

    def retire(self) -> None:
        """Say nothing more: the window is going, and whoever listened may be gone before this is."""
        self.stack.blockSignals(True)
        self.blockSignals(True)

    def put_job(self, job: Job) -> None:
        """Show another state of the same job. Only steps call this."""
        self.job = job
        self.revision += 1
        self.changed.emit()

    @property
    def is_trying(self) -> bool:
        """Whether the job that is shown is only tried."""
        return self._untried is not None

    @property
    def before(self) -> Job | None:
        """The job before what is tried, else before the last step; None where nothing was changed."""
        if self._untried is not None:
            return self._untried
        step = self.stack.command(self.stack.index() - 1) if self.stack.index() else None
        return step.before if isinstance(step, Change) else None

    def try_job(self, job: Job) -> None:
        """Show a state of the job that is no step yet: `take` makes it one, `put_back` undoes it."""
        if job != self.job:
            self._untried = self._untried or self.job
            self.put_job(job)

    def take(self, path: str) -> None:
        """What is tried becomes one step, called after its row; nothing where it leads nowhere."""
        after, before = self.job, self._untried
        if before is None:
            return
        self._untried, self.job = None, before
        if after != before:
            self.stack.push(Edit(self, path, after, _NEVER_MERGED))

    def put_back(self) -> None:
        """Show the job as it was before anything was tried."""
        if self._untried is not None:
            job, self._untried = self._untried, None
            self.put_job(job)

    def begin_gesture(self) -> None:
        """From here on, stepping makes a new step to undo."""
        self._gesture = self._gesture % _LARGEST_ID + 1

    def set_text(self, path: str, text: str) -> None:
        """One step: the value that `text` means. Raises Refused and changes nothing."""
        value = find_parameter(path).parse(text, self.job.about.length_style)
        self._push(path, value, _NEVER_MERGED)

    def set_value(self, path: str, value: Value) -> None:
        """One step: a value picked rather than typed. Raises Refused and changes nothing."""
        self._push(path, value, _NEVER_MERGED)

    def step(self, path: str, count: int) -> None:
        """Move a value by `count` of its row's steps; steps of one gesture undo together. Raises Refused."""
        row = find_parameter(path)
        value = step_value(row, read_value(self.job, path), count, self.job.about.length_style)
        self._push(path, value, self._gesture)

    def _push(self, path: str, value: Value, gesture: int) -> None:
        self.put_back()
        after = with_value(self.job, path, value)
        if after != self.job:
            self.stack.push(Edit(self, path, after, gesture))

    def change(self, words: str, after: Job) -> None:
        """One step called `words` to another state of the job; none where it is the same."""
        self.put_back()
        if after != self.job:
            self.stack.push(Change(self, words, after))

    def undo(self) -> None:
        """One step back."""
        self.put_back()
        self.begin_gesture()
        self.stack.undo()

    def redo(self) -> None:
        """One step forth."""
        self.put_back()
        self.begin_gesture()
        self.stack.redo()

    def open(self, job: Job, path: Path | None, recovered: bool = False) -> None:
        """Take up another job. `recovered` work counts as unsaved until it is saved."""
        self._untried = None
        self.job, self.path = job, path
        self.revision += 1
        self._recovered = recovered
        self.begin_gesture()
        self.stack.clear()
        self.stack.setClean()
        self.replaced.emit()
        self.changed.emit()
        self.state_changed.emit()

    def mark_saved(self, path: Path) -> None:
        """What is in `path` is what is shown."""
        self.path = path
        self._recovered = False
        self.begin_gesture()
        self.stack.setClean()
        self.state_changed.emit()
