"""Work beside the window of which only what was asked for last counts."""

from __future__ import annotations

from typing import Any

from PySide6.QtCore import QObject

from app.work import Work
from export.progress import Step


class Latest(QObject):
    """Answers one question at a time; a newer one stops the older, whose answer is then not handed on.

    A question is known by being the very same object.
    """

    def __init__(self) -> None:
        super().__init__()
        self._work = Work()
        self._asked: Any = None
        self._doing: Any = None
        self._work.done.connect(self._take)
        self._work.stopped.connect(self._go_on)
        self._work.failed.connect(self._fail)

    def answer(self, asked: Any, step: Step) -> Any:
        """What is worked out beside the window, on values that no edit changes; `step` may end it."""
        raise NotImplementedError

    def hand_on(self, asked: Any, answer: Any) -> None:
        """What is done with the answer to what was asked last."""
        raise NotImplementedError

    def let_go(self) -> None:
        """Nothing is wanted any more."""
        self._asked = None
        self._work.stop()

    def wait(self) -> None:
        """End what is being done before the window goes."""
        self._asked = None
        self._work.wait()

    def _ask(self, asked: Any) -> None:
        """Answer `asked`; what was asked before is let go."""
        self._asked = asked
        if self._work.is_busy:
            self._work.stop()
        else:
            self._go_on()

    def _go_on(self) -> None:
        asked = self._doing = self._asked
        if asked is not None:
            self._work.start(lambda step: self.answer(asked, step))

    def _take(self, answer: object) -> None:
        if self._asked is not self._doing:
            self._go_on()
        elif self._asked is not None:
            self.hand_on(self._asked, answer)

    def _fail(self, error: Exception) -> None:
        if self._asked is self._doing:
            self._asked = None
        self._go_on()
        raise error
