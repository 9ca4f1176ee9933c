"""Works a job out for the window. The program's heavy parts are loaded here, when they are first needed."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from model.board import Point3
    from model.build.lines import Layout
    from model.check.finding import Finding, Guide
    from model.job import Job
    from model.surround import Surround
    from model.takeoff.cut_list import Cut
    from render.drawing import Drawing, Point, Ring


@dataclass(frozen=True, slots=True)
class Wish:
    """What the sheet is to show: views by name, the ratio to letter for, and the keep-out or not."""

    views: tuple[str, ...]
    ratio: float
    clearance: bool


@dataclass(frozen=True, slots=True)
class Worked:
    """A job worked out: its lines, what the sheet marks of the findings, and the wished views by name.

    `faults` are the findings that the sheet marks, None when that was left for later; `plan` is None when it
    was worked out in another process.
    """

    layout: Layout
    faults: tuple[Finding, ...] | None
    drawings: tuple[tuple[str, Drawing], ...]
    plan: Surround | None

    def without_plan(self) -> Worked:
        """The same for another process, which need not load what boards are made of."""
        return replace(self, plan=None)


@dataclass(frozen=True, slots=True)
class FirstSight:
    """What is seen of a job before it is opened: the wished views, and whether it has options to choose."""

    drawings: tuple[tuple[str, Drawing], ...]
    has_options: bool


def load_drawing_parts() -> None:
    """Import what the first drawing needs: where boards lie, what fails of fire's rules, views."""
    from model.check import fire  # noqa: F401
    from render import views  # noqa: F401


def load_heavy_parts() -> None:
    """Import what drawing, checking and lists need, so that the first edit does not wait for it."""
    load_drawing_parts()
    import shapely  # noqa: F401  names and marks find their places with it

    from model.check import all, proportion  # noqa: F401
    from render import board_outline, checks_sheet, cut_sheet  # noqa: F401


def see_first(job: Job, wish: Wish) -> FirstSight:
    """The views of a job that is not opened yet, and the room that its options want."""
    options = job.options
    return FirstSight(work_out(job, wish).drawings, len(options.names) > 1 or bool(options.thrown))


def work_out(job: Job, wish: Wish, marked: bool = True) -> Worked:
    """Boards and views of a job; unless they are to be `marked`, what fails is left for later."""
    from model.check.fire import list_fire_faults
    from model.surround import plan_surround

    plan = plan_surround(job)
    faults = list_fire_faults(plan) if marked else None
    return Worked(plan.layout, faults, draw_plan(plan, wish, faults or ()), plan)


def check_plan(plan: Surround) -> tuple[tuple[Finding, ...], tuple[Finding, ...]]:
    """What all rules say, worst first; and of those about fire the ones that the sheet marks."""
    from model.check.all import check_surround
    from model.check.fire import check_fire, list_placed_faults

    fire = check_fire(plan)
    return check_surround(plan, fire), list_placed_faults(fire)


def draw_plan(plan: Surround, wish: Wish, findings: tuple[Finding, ...]) -> tuple[tuple[str, Drawing], ...]:
    """The wished views by name."""
    from render.views import ViewOptions, draw_views

    options = ViewOptions(ratio=wish.ratio, clearance=wish.clearance, findings=findings)
    return tuple(zip(wish.views, draw_views(plan, wish.views, options), strict=True))


def mark_plan(
    plan: Surround, drawings: tuple[tuple[str, Drawing], ...], ratio: float
) -> tuple[tuple[str, Drawing], ...]:
    """The named drawings of `plan` with the marks of the boards they show, as in the cut list."""
    from render.board_marks import mark_seen

    return tuple(
        (view, drawing.plus(*mark_seen(plan, view, ratio, drawing.marks).marks)) for view, drawing in drawings
    )


def list_plan_guides(plan: Surround) -> tuple[Guide, ...]:
    """Published proportions beside its own."""
    from model.check.proportion import list_guides

    return list_guides(plan)


def list_plan_cuts(plan: Surround) -> tuple[Cut, ...]:
    """Its cut list."""
    from model.takeoff.cut_list import list_cuts

    return list_cuts(plan)


def point_in_views(at: Point3, views: tuple[str, ...]) -> tuple[tuple[str, Point], ...]:
    """Where a point of the room lies in each view."""
    from render.board_outline import place_point

    return tuple((view, place_point(at, view)) for view in views)


def outline_in_views(
    plan: Surround, marks: frozenset[str], views: tuple[str, ...]
) -> tuple[tuple[str, Ring], ...]:
    """Outlines in each view of the boards with these marks."""
    from render.board_outline import outline_board

    boards = [board for board, mark in zip(plan.boards, plan.marks, strict=True) if mark in marks]
    return tuple((view, outline_board(board, view)) for view in views for board in boards)


def find_in_view(plan: Surround, view: str, point: Point) -> str:
    """The mark of the board seen at a point of a view, "" for none."""
    from render.board_outline import find_board

    return find_board(plan, view, point)
