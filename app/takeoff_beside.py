"""Takes materials off the boards beside the window, where it would hold up edits; only the latest counts."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Signal

from app.work import Work

if TYPE_CHECKING:
    from model.surround import Surround


class TakeoffBeside(QObject):
    """`ready` hands on the takeoff of the surround that was asked for last."""

    ready = Signal(object)

    def __init__(self) -> None:
        super().__init__()
        self._work = Work()
        self._asked: Surround | None = None
        self._wanted: Surround | None = None
        self._work.done.connect(self._hand_on)
        self._work.failed.connect(self._fail)

    def ask(self, surround: Surround) -> None:
        """Work out `surround`, once what is being worked out is done; asked for twice it is done once."""
        if surround is self._asked:
            return
        self._asked = surround
        if self._work.is_busy:
            self._wanted = surround
        else:
            self._start(surround)

    def wait(self) -> None:
        """End what is being done before the window goes."""
        self._wanted = None
        self._work.wait()

    def _start(self, surround: Surround) -> None:
        from model.takeoff.takeoff import take_off

        self._wanted = None
        self._work.start(lambda _step: take_off(surround))

    def _hand_on(self, takeoff: object) -> None:
        if self._wanted is not None:
            self._start(self._wanted)
        else:
            self.ready.emit(takeoff)

    def _fail(self, error: Exception) -> None:
        self._asked = None
        raise error
