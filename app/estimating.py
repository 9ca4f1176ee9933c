"""Has options worked out beside the window, those that are looked at first, and keeps what came of it."""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Sequence
from dataclasses import replace
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QTimer, Signal

from app.estimating_process import Answered, Counted, Wanted, serve
from app.own_process import OwnProcess
from model.bare import bare_job
from model.job import Job, default_job

if TYPE_CHECKING:
    from model.cutting.stock_list import StockList

LISTEN = 40
"""Milliseconds between two looks for an answer."""
MOST_KEPT = 250
"""Answers that are kept; steps back and options that come up again are then known at once."""
_ABOUT = default_job().about


def strip(job: Job) -> Job:
    """A bare job without its names and units, which make no difference to what it takes."""
    return replace(bare_job(job), about=_ABOUT)


class Estimating(QObject):
    """`answered` says that one more option is known, or that it cannot be."""

    answered = Signal()

    def __init__(self) -> None:
        super().__init__()
        self._process = OwnProcess(serve)
        self._list: StockList | None = None
        self._sent: StockList | None = None
        self._kept: OrderedDict[Job, Counted | str] = OrderedDict()
        self._wanted: tuple[Job, ...] = ()
        self._doing: tuple[int, Job, StockList] | None = None
        self._number = 0
        self._listening = QTimer(self)
        self._listening.setInterval(LISTEN)
        self._listening.timeout.connect(self._listen)

    def use_list(self, stock_list: StockList) -> None:
        """Work out of another list; what is known of the one before is forgotten, unless only supplies and
        the way money is written are different.
        """
        if self._list is not None and not _takes_alike(self._list, stock_list):
            self._kept.clear()
        self._list = stock_list

    def find(self, job: Job) -> Counted | str | None:
        """What is known of `job`; words where it could not be worked out, None while it is not known."""
        return self._kept.get(strip(job))

    def ask(self, jobs: Sequence[Job]) -> None:
        """These are wanted, the first before the others; what was wanted before is dropped."""
        self._wanted = tuple(dict.fromkeys(strip(job) for job in jobs))
        self._go_on()

    @property
    def is_busy(self) -> bool:
        """Whether anything is being worked out."""
        return self._doing is not None

    def end(self) -> None:
        """Let the process go."""
        self._listening.stop()
        self._wanted, self._doing, self._sent = (), None, None
        self._process.end()

    def _go_on(self) -> None:
        """Ask for the next that is not known, unless one is being worked out."""
        job = next((each for each in self._wanted if each not in self._kept), None)
        if self._doing is not None or job is None or self._list is None:
            return
        if not self._process.is_alive:
            self._process.end()
            self._sent = None
        self._number += 1
        self._doing = (self._number, job, self._list)
        news = self._list if self._list is not self._sent else None
        try:
            self._process.send(Wanted(self._number, job, news))
        except OSError:  # there is no room for another process
            self._fail()
            return
        self._sent = self._list
        self._listening.start()

    def _listen(self) -> None:
        try:
            for answer in self._process.hear():
                self._hear(answer)
        except (EOFError, OSError):
            self._fail()

    def _hear(self, answer: object) -> None:
        if not isinstance(answer, Answered) or self._doing is None or answer.number != self._doing[0]:
            return
        _, job, stock_list = self._doing
        self._doing = None
        self._listening.stop()
        if self._list is not None and _takes_alike(stock_list, self._list):
            self._keep(job, answer.counted or answer.trouble)
        self._go_on()
        self.answered.emit()

    def _keep(self, job: Job, found: Counted | str) -> None:
        self._kept[job] = found
        while len(self._kept) > MOST_KEPT:
            self._kept.popitem(last=False)

    def _fail(self) -> None:
        """The process is gone: what it was doing cannot be known, and another is started for the rest."""
        doing, wanted = self._doing, self._wanted
        self.end()
        if doing is not None:
            self._keep(doing[1], "working it out ended unexpectedly; it is tried again after the next change")
        self._wanted = wanted
        self._go_on()
        self.answered.emit()


def _takes_alike(one: StockList, other: StockList) -> bool:
    """Whether the same is bought out of both."""
    same_rows = one.sold is other.sold and one.on_hand is other.on_hand
    return same_rows and replace(one, currency=other.currency, supplies=other.supplies) == other
