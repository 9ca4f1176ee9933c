"""Looks for cures of the finding in focus beside the window, off the way of edits; the latest counts."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Signal

from app.work import Work
from export.progress import Step

if TYPE_CHECKING:
    from model.check.finding import Finding
    from model.check.remedy import Remedy
    from model.surround import Surround

Asked = tuple["Surround", "Finding"]


class CureBeside(QObject):
    """`found` hands on the surround and the finding that were asked for last, with their cures."""

    found = Signal(object, object, object)

    def __init__(self) -> None:
        super().__init__()
        self._work = Work()
        self._asked: Asked | None = None
        self._doing: Asked | None = None
        self._work.done.connect(self._hand_on)
        self._work.stopped.connect(self._go_on)
        self._work.failed.connect(self._fail)

    def ask(self, surround: Surround, finding: Finding) -> None:
        """Look for cures of `finding`; what was asked before is let go."""
        self._asked = (surround, finding)
        if self._work.is_busy:
            self._work.stop()
        else:
            self._go_on()

    def let_go(self) -> None:
        """Nothing is wanted any more."""
        self._asked = None
        self._work.stop()

    def wait(self) -> None:
        """End what is being done before the window goes."""
        self._asked = None
        self._work.wait()

    def _go_on(self) -> None:
        if self._asked is None:
            return
        surround, finding = self._doing = self._asked
        self._work.start(lambda step: _find(surround, finding, step))

    def _hand_on(self, remedies: object) -> None:
        if self._asked is not None and self._asked is not self._doing:
            self._go_on()
        elif self._asked is not None:
            self.found.emit(*self._asked, remedies)

    def _fail(self, error: Exception) -> None:
        self._asked = None
        raise error


def _find(surround: Surround, finding: Finding, step: Step) -> tuple[Remedy, ...]:
    from model.check.remedy import find_remedies

    return find_remedies(surround, finding, lambda: step(0.0, ""))
