"""Puts findings right: what passes between the finding in focus, its cures, the job and its undo stack."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject

from app.cure_bar import CureBar
from app.cure_beside import CureBeside
from app.drafting import Drafting
from app.pause import build_pause
from app.session import Session
from model.check.finding import Finding, Status
from model.parameters import find_parameter

if TYPE_CHECKING:
    from model.check.remedy import Remedy
    from model.surround import Surround

PAUSE = 150
"""Milliseconds without an edit and without another choice after which cures are looked for."""


class Curing(QObject):
    """Follows the finding in focus; a cure is one step of the session, and one undo."""

    def __init__(self, session: Session, drafting: Drafting, bar: CureBar) -> None:
        super().__init__()
        self._session, self._drafting, self._bar = session, drafting, bar
        self._finding: Finding | None = None
        self._done: tuple[int, str, str] | None = None
        self._beside = CureBeside()
        self._pause = build_pause(self, PAUSE, self._look)
        self._beside.found.connect(self._offer)
        session.changed.connect(self._let_go)
        bar.applied.connect(self._apply)
        bar.undone.connect(self._undo)

    def follow(self, finding: Finding | None) -> None:
        """Another finding is in focus, or the same after an edit; None for none."""
        self._finding = finding
        if self._done is not None and self._done == self._place(finding):
            return
        self._done = None
        self._beside.let_go()
        if finding is None:
            self._pause.stop()
            self._bar.hide()
        elif finding.status in (Status.FAIL, Status.WARN):
            self._bar.say_looking()
            self._pause.start()
        else:
            self._pause.stop()
            self._bar.say_nothing()

    def wait(self) -> None:
        """End what is being done before the window goes."""
        self._pause.stop()
        self._beside.wait()

    def _let_go(self) -> None:
        """What is being looked for is for a job that is no more."""
        self._pause.stop()
        self._beside.let_go()

    def _look(self) -> None:
        if self._finding is not None and self._drafting.surround is not None:
            self._beside.ask(self._drafting.surround, self._finding)

    def _offer(self, surround: Surround, finding: Finding, remedies: tuple[Remedy, ...]) -> None:
        if surround is self._drafting.surround and finding is self._finding:
            self._bar.show_remedies(remedies)

    def _place(self, finding: Finding | None) -> tuple[int, str, str]:
        """Which finding of which state of the job; where none is in focus, the one that was cured."""
        key = (finding.check, finding.part) if finding else self._done[1:] if self._done else ("", "")
        return (self._session.revision, *key)

    def _apply(self, remedy: Remedy) -> None:
        finding = self._finding
        if finding is None:
            return
        self._done = (self._session.revision + 1, finding.check, finding.part)
        words = ", ".join(find_parameter(change.path).name for change in remedy.changes)
        self._session.change(words, remedy.apply(self._session.job))
        self._bar.say_done(remedy.sentence)

    def _undo(self) -> None:
        self._done = None
        self._session.undo()
