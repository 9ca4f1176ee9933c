"""An edge while somebody holds it: where it settles and why, and the job that shows it.

Pointer and keys are app.shaping's, what is worth stopping at is model.shaping's.
"""

from __future__ import annotations

from collections.abc import Iterator
from math import copysign
from typing import TYPE_CHECKING

from app.session import Session

if TYPE_CHECKING:
    from model.cutting.stock_list import StockList
    from model.job import Job
    from model.shaping.grip import Grip
    from model.shaping.snap import Mark, Pointer, Settled

UP, DOWN = 1, -1
PULL, HOLD = 4.0, 9.0
"""Pixels from which what is worth stopping at pulls an edge, and from which a limit does."""
MOST_PULL, MOST_HOLD = 0.375, 1.0
"""Inches beyond which it does not, however small the sheet is shown: what lies between must be in reach."""


class EdgeHold:
    """One edge from when it is taken hold of until it is let go. The session tries what it is moved to.

    `value` is the parameter's in inches, `reason` why it stopped there, "" where it is any fraction;
    `is_over` says that this is because something is over its limit.
    """

    def __init__(self, session: Session, grip: Grip) -> None:
        self._session = session
        self._job = session.job
        self.grip = grip
        self.value = grip.value
        self.reason = ""
        self.is_over = False
        self.marks: tuple[Mark, ...] = ()
        self.is_looking = False
        self._has_marks = False
        self._limits: Iterator[Mark | None] = iter(())

    @property
    def is_moved(self) -> bool:
        """Whether it is elsewhere than where it was taken."""
        return self.value != self.grip.value

    @property
    def moved(self) -> float:
        """How far along its way the edge is from where it was taken, inches."""
        return self.grip.place_of(self.value)

    @property
    def way(self) -> int:
        """Whether the value grows as the edge goes right or up, or gets less."""
        return int(copysign(1, self.grip.factor))

    @property
    def is_on_mark(self) -> bool:
        """Whether it lies where there is something worth stopping at."""
        from model.shaping.snap import SAME

        return any(abs(mark.value - self.value) <= SAME for mark in self.marks)

    def is_of(self, job: Job, grip: Grip) -> bool:
        """Whether it would take hold of that edge in that job."""
        return self._job is job and self.grip is grip

    def find_marks(self, stock_list: StockList, guide: str) -> None:
        """Find what is worth stopping at but for limits; nothing where that is known."""
        from model.shaping.marks import list_marks

        if not self._has_marks:
            self._has_marks = True
            self.marks = list_marks(self._job, self.grip, stock_list, guide)

    def look_out(self, stock_list: StockList, guide: str) -> None:
        """Find what is worth stopping at; the clearances' limits follow with `look_on`."""
        from model.shaping.limits import find_limits

        self.find_marks(stock_list, guide)
        self.is_looking = True
        self._limits = find_limits(self._job, self.grip)

    def look_on(self) -> bool:
        """Try one more value for the clearances' limits; whether there may be more to try."""
        from model.shaping.snap import explain_value

        try:
            found = next(self._limits)
        except StopIteration:
            return False
        if found is not None:
            self.marks = (found, *self.marks)
            if self.is_moved and not self.reason:
                told = explain_value(self.value, self.marks)
                self.reason, self.is_over = told.reason, told.is_over
        return True

    def move_to(self, off: float, pixel: float) -> None:
        """Follow a pointer `off` inches along from where it took the edge, `pixel` inches to a pixel."""
        from model.shaping.snap import Pointer

        part = pixel * abs(self.grip.factor)
        pointer = Pointer(min(PULL * part, MOST_PULL), min(HOLD * part, MOST_HOLD), part)
        self._settle(self.grip.value + self.grip.factor * off, pointer)

    def step(self, count: int) -> None:
        """Go `count` fractions of the tape, not none, right or up or the other way; nothing pulls."""
        from model.shaping.snap import step_along_tape

        style = self._job.about.length_style
        self._settle(step_along_tape(self.value, count * self.way, style))

    def jump(self, way: int) -> None:
        """Go to the next value worth stopping at, UP or DOWN as the edge moves; stay where there is none."""
        from model.shaping.snap import SAME, Pointer, next_mark

        while self.look_on():
            pass
        mark = next_mark(self.value, way * self.way, self.marks)
        if mark is not None:
            self._settle(mark.value, Pointer(SAME, SAME))

    def _settle(self, wanted: float, pointer: Pointer | None = None) -> None:
        from model.shaping.snap import EXACT, settle

        self._show(settle(self._job, self.grip, wanted, self.marks, pointer or EXACT))

    def _show(self, settled: Settled) -> None:
        from model.shaping.grip import move_edge
        from model.shaping.snap import SAME

        self.reason, self.is_over = settled.reason, settled.is_over
        if abs(settled.value - self.value) <= SAME:
            return
        back = abs(settled.value - self.grip.value) <= SAME
        self.value = self.grip.value if back else settled.value
        self._session.try_job(self._job if back else move_edge(self._job, self.grip, self.value))
