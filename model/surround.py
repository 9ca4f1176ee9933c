"""A job worked out: its layout, its boards and their marks. Everything drawn or listed starts here."""

from __future__ import annotations

from dataclasses import dataclass

from model.board import Board
from model.build.layout import Layout, lay_out
from model.build.surround import build_surround
from model.job import Job
from model.takeoff.marks import mark_boards


@dataclass(frozen=True, slots=True)
class Surround:
    """`marks[i]` is the mark of `boards[i]`; marks are unique."""

    job: Job
    layout: Layout
    boards: tuple[Board, ...]
    marks: tuple[str, ...]


def plan_surround(job: Job) -> Surround:
    """Work out `job`; never raises for a job whose values are in bounds."""
    layout = lay_out(job.site, job.design)
    boards = build_surround(job.site, job.design, layout)
    return Surround(job, layout, boards, mark_boards(boards))
