"""Works a job out for the window. The heavy parts of the program are loaded here, when they are first needed."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from model.job import Job
from render.drawing import Drawing

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
    import model.check.all
    import model.check.proportion
    import model.surround
    import model.takeoff.cut_list
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
