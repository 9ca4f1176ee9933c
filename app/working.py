"""Works a job out for the window. The program's heavy parts are loaded here, when they are first needed."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from model.board import Point3
from model.job import Job
from render.drawing import Drawing, Point, Ring

if TYPE_CHECKING:
    from model.check.finding import Finding, Guide
    from model.surround import Surround
    from model.takeoff.cut_list import Cut


@dataclass(frozen=True, slots=True)
class Wish:
    """What the sheet is to show: views by name, the ratio to letter for, and the keep-out or not."""

    views: tuple[str, ...]
    ratio: float
    clearance: bool


def load_heavy_parts() -> None:
    """Import what drawing and checking need, so that the first edit does not wait for it."""
    import render.views  # noqa: F401


def plan_job(job: Job) -> Surround:
    """The job with its boards."""
    from model.surround import plan_surround

    return plan_surround(job)


def check_plan(surround: Surround) -> tuple[Finding, ...]:
    """What the rules say of it, worst first."""
    from model.check.all import check_surround

    return check_surround(surround)


def list_plan_guides(surround: Surround) -> tuple[Guide, ...]:
    """Published proportions beside its own."""
    from model.check.proportion import list_guides

    return list_guides(surround)


def list_plan_cuts(surround: Surround) -> tuple[Cut, ...]:
    """Its cut list."""
    from model.takeoff.cut_list import list_cuts

    return list_cuts(surround)


def draw_plan(surround: Surround, wish: Wish, findings: tuple[Finding, ...]) -> list[tuple[str, Drawing]]:
    """The wished views by name."""
    from render.views import ViewOptions, draw_view

    options = ViewOptions(ratio=wish.ratio, clearance=wish.clearance, findings=findings)
    return [(name, draw_view(surround, name, options)) for name in wish.views]


def point_in_views(at: Point3, views: tuple[str, ...]) -> tuple[tuple[str, Point], ...]:
    """Where a point of the room lies in each view."""
    from render.board_outline import place_point

    return tuple((view, place_point(at, view)) for view in views)


def outline_in_views(
    surround: Surround, marks: frozenset[str], views: tuple[str, ...]
) -> tuple[tuple[str, Ring], ...]:
    """Outlines in each view of the boards with these marks."""
    from render.board_outline import outline_board

    boards = [board for board, mark in zip(surround.boards, surround.marks, strict=True) if mark in marks]
    return tuple((view, outline_board(board, view)) for view in views for board in boards)


def find_in_view(surround: Surround, view: str, point: Point) -> str:
    """The mark of the board seen at a point of a view, "" for none."""
    from render.board_outline import find_board

    return find_board(surround, view, point)
