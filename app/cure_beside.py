"""Looks for cures of the finding in focus beside the window, off the way of edits; the latest counts."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Signal

from app.latest import Latest
from export.progress import Step

if TYPE_CHECKING:
    from model.check.finding import Finding
    from model.check.remedy import Remedy
    from model.surround import Surround

Asked = tuple["Surround", "Finding"]


class CureBeside(Latest):
    """`found` hands on the surround and the finding that were asked for last, with their cures."""

    found = Signal(object, object, object)

    def ask(self, surround: Surround, finding: Finding) -> None:
        """Look for cures of `finding`; what was asked before is let go."""
        self._ask((surround, finding))

    def answer(self, asked: Asked, step: Step) -> tuple[Remedy, ...]:
        """Its cures."""
        from model.check.remedy import find_remedies

        return find_remedies(*asked, lambda: step(0.0, ""))

    def hand_on(self, asked: Asked, answer: tuple[Remedy, ...]) -> None:
        """To whoever listens, with what they cure."""
        self.found.emit(*asked, answer)
