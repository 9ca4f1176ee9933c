"""A job worked out: its layout, its boards and their marks. Everything drawn or listed starts here."""

from __future__ import annotations

from collections.abc import Callable, Hashable
from dataclasses import dataclass, replace
from functools import cached_property
from typing import Any

from model.board import Board
from model.build.layout import lay_out
from model.build.lines import Layout
from model.build.surround import build_surround
from model.corners import Corners, list_corners, off_masonry
from model.job import Job
from model.survey import govern_site
from model.takeoff.marks import Kind, list_kinds, mark_pieces


@dataclass(frozen=True)
class Surround:
    """Everything that follows from a job before anything is checked, listed or drawn.

    `job` has the governing one of several readings of a size; `asked` is the job as it was given, where
    that is another.
    """

    job: Job
    layout: Layout
    boards: tuple[Board, ...]
    asked: Job | None = None

    @cached_property
    def corners(self) -> Corners:
        """Every board's corners, for checks and drawings alike. Worked out when first asked for."""
        return list_corners(self.boards)

    @cached_property
    def worked_out(self) -> dict[Hashable, Any]:
        """What those who list and draw it have worked out of it and ask for again; see model.once."""
        return {}

    def off_masonry(self) -> Surround:
        """The same, its corners' z taken from the masonry behind them where that is out of plumb."""
        twin = replace(self)
        vars(twin)["corners"] = off_masonry(self.corners, self.layout)
        return twin

    @cached_property
    def marks(self) -> tuple[str, ...]:
        """`marks[i]` is the mark of `boards[i]`; marks are unique. Worked out when first asked for."""
        return mark_pieces(self.kinds)

    @cached_property
    def kinds(self) -> tuple[Kind, ...]:
        """Which boards are alike, each kind with its mark. Worked out when first asked for."""
        return list_kinds(self.boards)

    def marks_of(self, is_meant: Callable[[Board], bool]) -> tuple[str, ...]:
        """The marks of those boards that are meant, in the boards' order."""
        return tuple(mark for mark, board in zip(self.marks, self.boards, strict=True) if is_meant(board))


def plan_surround(job: Job) -> Surround:
    """Work out `job`; never raises for a job whose values are in bounds."""
    site, asked = govern_site(job.site), None
    if site is not job.site:
        job, asked = replace(job, site=site), job
    layout = lay_out(job.site, job.design, job.shop.rates.moisture)
    boards = build_surround(job.site, job.design, layout)
    return Surround(job, layout, boards, asked)
