"""A picture's proportions given to this fireplace, and what has to give so that every clearance is kept."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import partial

from model.check.all import check_surround
from model.check.finding import Finding, Status
from model.check.remedy import Remedy, find_remedies
from model.errors import Refused
from model.job import Job, read_value, with_value
from model.parameters import find_parameter
from model.photo.likeness import SHELF, Proportion
from model.surround import plan_surround
from model.survey import govern_site
from model.units import round_length

MOST_CURES = 8
"""Cures that are made one after the other, at most."""
CLOSE = 1 / 32
"""Inches that a size may differ by and still count as the one that was wanted."""


@dataclass(frozen=True, slots=True)
class Given:
    """A size as the picture has it and as it became, inches."""

    path: str
    words: str
    wanted: float
    got: float

    @property
    def gave(self) -> bool:
        """Whether it had to give."""
        return abs(self.wanted - self.got) > CLOSE


@dataclass(frozen=True, slots=True)
class Likened:
    """A job in a picture's proportions: each size, other rows that had to change, and what is still over."""

    job: Job
    sizes: tuple[Given, ...]
    besides: tuple[str, ...]
    left: tuple[Finding, ...]


def liken_job(
    job: Job,
    proportions: Sequence[Proportion],
    step: Callable[[float, str], object] = lambda done, words: None,
) -> Likened:
    """The job in these proportions, its clearances kept as far as sizes can; `step` may raise to end it."""
    wanted = {each.path: _wanted(job, each) for each in proportions}
    changed = job
    for path, value in wanted.items():
        changed = with_value(changed, path, _within(path, value))
    changed, others = _clear(changed, step)
    sizes = tuple(
        Given(each.path, each.words, wanted[each.path], float(read_value(changed, each.path)))
        for each in proportions
    )
    besides = tuple(find_parameter(path).name for path in others if path not in wanted)
    left = tuple(f for f in check_surround(plan_surround(changed)) if f.status is Status.FAIL)
    return Likened(changed, sizes, besides, left)


def whole_of(job: Job, proportion: Proportion) -> float:
    """What a proportion is of: the height or the width of the opening that governs, inches."""
    opening = govern_site(job.site).opening
    return opening.height if proportion.is_high else opening.width


def _wanted(job: Job, proportion: Proportion) -> float:
    """The size at this fireplace, on the job's tape."""
    value = proportion.value * whole_of(job, proportion)
    if proportion.path == SHELF and job.design.shelf.height_from == "floor":
        value += job.site.hearth.height
    return round_length(value, job.about.length_style)


def _within(path: str, value: float) -> float:
    """The nearest value that the row may hold."""
    row = find_parameter(path)
    assert row.lowest is not None
    assert row.highest is not None
    return min(max(value, row.lowest), row.highest)


def _clear(job: Job, step: Callable[[float, str], object]) -> tuple[Job, tuple[str, ...]]:
    """The job with cures made for what is over, the least first, and the rows that they changed."""
    changed: list[str] = []
    for count in range(MOST_CURES):
        step(count / MOST_CURES, "Keeping clear of the fire")
        cure = _find_cure(job, partial(step, count / MOST_CURES, "Keeping clear of the fire"))
        if cure is None:
            break
        try:
            job = cure.apply(job)
        except Refused:
            break
        changed += [change.path for change in cure.changes]
    return job, tuple(dict.fromkeys(changed))


def _find_cure(job: Job, go_on: Callable[[], object]) -> Remedy | None:
    """The least change of sizes for the worst finding that one helps."""
    surround = plan_surround(job)
    for finding in check_surround(surround):
        if finding.status is Status.FAIL:
            found = find_remedies(surround, finding, go_on)
            cure = next((each for each in found if not each.breaks and not each.is_drastic), None)
            if cure is not None:
                return cure
    return None
