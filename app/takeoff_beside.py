"""Takes materials off the boards beside the window, where it would hold up edits; only the latest counts."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Signal

from app.latest import Latest
from export.progress import Step

if TYPE_CHECKING:
    from model.surround import Surround
    from model.takeoff.takeoff import Takeoff


class TakeoffBeside(Latest):
    """`ready` hands on the takeoff of the surround that was asked for last."""

    ready = Signal(object)

    def ask(self, surround: Surround) -> None:
        """Work out `surround`, once what is being worked out is done; asked for twice it is done once."""
        if surround is not self._asked:
            self._ask(surround)

    def answer(self, asked: Surround, _step: Step) -> Takeoff:
        """Its takeoff, whole: it is soon done and not stopped."""
        from model.takeoff.takeoff import take_off

        return take_off(asked)

    def hand_on(self, _asked: Surround, answer: Takeoff) -> None:
        """To whoever listens."""
        self.ready.emit(answer)
