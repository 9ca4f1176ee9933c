"""Cures held against the model itself: whether each clears its finding, hides no harm, and is the least.

Nothing of the search is used: what counts is what all checks say, and every mark of a grid on the way. That
quick answers are those of all checks is a test of its own.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from model.check.all import check_surround
from model.check.finding import Finding, Status
from model.check.in_force import read_statuses
from model.check.mantel import CHECK as MANTEL
from model.check.remedy import Remedy
from model.check.saying import Change, read_number
from model.check.wording import Wording
from model.job import Job, with_value
from model.parameters import Kind, find_parameter
from model.surround import plan_surround

RANK = (Status.FAIL, Status.UNKNOWN, Status.WARN, Status.PASS)
GRID = 1 / 32
"""From one value tried to the next, in.; half a mark of a tape in sixteenths."""
Key = tuple[str, str]


@dataclass(frozen=True, slots=True)
class Amiss:
    """What is wrong with a cure: a word for the kind, and what it is about."""

    kind: str
    words: str


def read_worst(job: Job) -> dict[Key, Status]:
    """The worst answer of every check and part."""
    found: dict[Key, Status] = {}
    for finding in check_surround(plan_surround(job)):
        key = (finding.check, finding.part)
        found[key] = min(finding.status, found.get(key, Status.PASS), key=RANK.index)
    return found


def hold_cure(job: Job, finding: Finding, remedy: Remedy) -> Iterator[Amiss]:
    """Everything that is wrong with a cure that is offered for a finding of a job."""
    yield from hold_outcome(job, finding, remedy)
    smaller = find_smaller(job, finding, remedy)
    if smaller is not None:
        own = (finding.check, finding.part)
        yield Amiss("is not the least", f"{own}: {remedy.sentence} {smaller} does")


def hold_outcome(job: Job, finding: Finding, remedy: Remedy) -> Iterator[Amiss]:
    """Whether it clears its finding, and whether it says what else comes of it."""
    before, after = read_worst(job), read_worst(remedy.apply(job))
    own = (finding.check, finding.part)
    if not _is_cleared(finding, after):
        yield Amiss("does not clear", f"{own}: {remedy.sentence}")
    if remedy.clears_all is (Status.FAIL in _clearances(after)):
        yield Amiss("says all is clear, or not", f"{own}: {remedy.sentence}")
    for key, status in after.items():
        if key == own or status not in (Status.FAIL, Status.WARN):
            continue
        worse = RANK.index(status) < RANK.index(before.get(key, Status.PASS))
        told = remedy.worsens and (status is not Status.FAIL or remedy.breaks)
        if worse and not told:
            yield Amiss("hides harm", f"{own}: {remedy.sentence} {key} {status}")


def _is_cleared(finding: Finding, worst: dict[Key, Status]) -> bool:
    status = worst.get((finding.check, finding.part), Status.PASS)
    return RANK.index(status) > RANK.index(finding.status) and status is not Status.UNKNOWN


def _clearances(worst: dict[Key, Status]) -> set[Status]:
    return {status for (check, _), status in worst.items() if check == MANTEL}


def find_smaller(job: Job, finding: Finding, remedy: Remedy, most: int | None = None) -> float | None:
    """A value of the last change that does as much and is nearer by more than a mark of the tape.

    None where there is none, or where the change is no length. As much: the finding is cleared, and nothing
    is over that is not over after the cure too. Of the grid's values `most` are tried, the last ones first.
    """
    *first, last = remedy.changes
    if find_parameter(last.path).kind is not Kind.LENGTH or isinstance(last.value, bool | str):
        return None
    for change in first:
        job = with_value(job, change.path, change.value)
    left = _list_over(read_worst(with_value(job, last.path, last.value)))
    nearer = list(_list_nearer(job, last))
    if most is not None and len(nearer) > most:
        nearer = nearer[:: len(nearer) // (most // 2)] + nearer[-most // 2 :]
    for value in nearer:
        tried = with_value(job, last.path, value)
        if finding.check == MANTEL and not _may_clear(tried, finding):
            continue
        worst = read_worst(tried)
        if _is_cleared(finding, worst) and _list_over(worst) <= left:
            return value
    return None


def _may_clear(job: Job, finding: Finding) -> bool:
    """A quick no, so that what all checks say is asked only where it matters."""
    status = read_statuses(plan_surround(job)).get(finding.part, Status.PASS)
    return RANK.index(status) > RANK.index(finding.status)


def _list_over(worst: dict[Key, Status]) -> set[Key]:
    return {key for key, status in worst.items() if status is Status.FAIL}


def _list_nearer(job: Job, change: Change) -> Iterator[float]:
    """The grid from where a size stands to a mark of the tape short of where it is put."""
    assert isinstance(change.value, int | float)
    start, step = read_number(job, change.path), Wording(job.about.length_style).step
    way = 1 if change.value > start else -1
    room = abs(change.value - start) - max(step, 1 / 16)
    for i in range(1, int(room / GRID) + 1):
        yield start + way * i * GRID
