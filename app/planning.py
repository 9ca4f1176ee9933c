"""Has plans worked out beside the window, one at a time; only the latest question counts."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QTimer, Signal

from app.files import describe_cause
from app.own_process import OwnProcess
from app.planning_process import Planned, Question, Stop, Told, serve
from model.bare import bare_job
from model.options import ALONE

if TYPE_CHECKING:
    from model.cutting.stock_list import StockList
    from model.job import Job

LISTEN = 30
"""Milliseconds between two looks for an answer."""
NOT_STARTED = "no process could be started for it"
ENDED = "planning ended unexpectedly; it starts again with the next change"


class Planning(QObject):
    """`planned` hands on a CuttingPlan of what was asked last; `failed` why there is none."""

    told = Signal(float, str)
    planned = Signal(object)
    failed = Signal(str)

    def __init__(self) -> None:
        super().__init__()
        self._process = OwnProcess(serve)
        self._number = 0
        self._asked: tuple[Job, StockList] | None = None
        self.is_busy = False
        self._listening = QTimer(self)
        self._listening.setInterval(LISTEN)
        self._listening.timeout.connect(self._listen)

    def ask(self, name: str, job: Job, stock_list: StockList) -> bool:
        """Plan `job` out of `stock_list`; whether it is another question than the last one."""
        if self.is_asked(job, stock_list):
            return False
        self._asked = (job, stock_list)
        self._number += 1
        self.is_busy = True
        question = Question(self._number, name, replace(job, options=ALONE, photo=None), stock_list)
        if not self._process.is_alive:
            self._process.end()
        try:
            self._process.send(question)
        except OSError as error:
            self._fail(f"{NOT_STARTED}: {describe_cause(error)}")
        else:
            self._listening.start()
        return True

    def is_asked(self, job: Job, stock_list: StockList) -> bool:
        """Whether that is what was asked last; what was printed since, what is offered, colours, the photo
        and other options make no other question of it.
        """
        if self._asked is None or self._asked[1] is not stock_list:
            return False
        asked = self._asked[0]
        if asked is job:
            return True
        return asked.site is job.site and bare_job(asked) == bare_job(job)

    def stop(self) -> None:
        """Have the best plan so far."""
        if self.is_busy:
            self._process.send(Stop())

    def end(self) -> None:
        """Let the process go."""
        self._listening.stop()
        self.is_busy = False
        self._process.end()

    def _listen(self) -> None:
        try:
            for answer in self._process.hear():
                self._hear(answer)
        except (EOFError, OSError):
            self._fail(ENDED)

    def _hear(self, answer: object) -> None:
        if isinstance(answer, Told) and answer.number == self._number:
            self.told.emit(answer.done, answer.words)
        elif isinstance(answer, Planned) and answer.number == self._number:
            self.is_busy = answer.may_improve
            if not self.is_busy:
                self._listening.stop()
            if answer.plan is None:
                self._fail(answer.trouble)
            else:
                self.planned.emit(answer.plan)

    def _fail(self, trouble: str) -> None:
        self.end()
        self._asked = None
        self.failed.emit(trouble)
