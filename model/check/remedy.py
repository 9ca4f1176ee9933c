"""Cures found by trial on the real model: the least change of one parameter or two that clears a finding.

Which parameters are tried stands in model.check.handle, how a cure is said in model.check.saying. Searching
plans the job many times over, so that it is done beside the window and never on the way of an edit.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from contextlib import suppress
from dataclasses import dataclass
from functools import partial
from math import ceil, floor

from model.check.all import check_built, check_surround
from model.check.finding import STATUS_WORD, Bound, Finding, Status
from model.check.handle import MORE, Handle, list_handles
from model.check.hearth import check_hearth
from model.check.in_force import read_statuses
from model.check.mantel import CHECK as MANTEL
from model.check.manuals_hearth import CHECK as HEARTH
from model.check.part import stands_beside
from model.check.saying import Change, read_number, say_changes
from model.check.wording import Wording
from model.check.worst import TIE_DIGITS, WORST_FIRST
from model.check.zone import CHECK as ZONE
from model.check.zone import check_zone
from model.errors import Refused
from model.job import Job, with_value
from model.parameters import Kind, Value, find_parameter
from model.surround import Surround, plan_surround

ALONE: dict[str, Callable[[Surround], Iterable[Finding]]] = {HEARTH: check_hearth, ZONE: check_zone}
"""What is asked while a value is sought for a finding of a check; all but the fire's for the others."""
MOST_OFFERED = 3
"""Cures that are offered for one finding."""
Key = tuple[str, str]
Entry = tuple[int, float, Finding]
Passes = Callable[[Job], bool]


@dataclass(frozen=True, slots=True)
class Remedy:
    """Changes that were tried and clear the finding they are offered for.

    `size` is how far lengths move in all, inches. `clears_all` says that no clearance is over any more;
    `worsens` names what stands worse than before, in sentences, `breaks` that some of it is over.
    """

    changes: tuple[Change, ...]
    sentence: str
    size: float
    clears_all: bool
    worsens: tuple[str, ...] = ()
    breaks: bool = False

    @property
    def is_drastic(self) -> bool:
        """Whether a part is left off or made otherwise, or stone or brick is to be built."""
        return self.builds_masonry or any(change.number is None for change in self.changes)

    @property
    def builds_masonry(self) -> bool:
        """Whether the hearth or the facing is to be made otherwise."""
        return any(change.path.split(".")[0] in ("hearth", "facing") for change in self.changes)

    def apply(self, job: Job) -> Job:
        """The job with the changes made."""
        for change in self.changes:
            job = with_value(job, change.path, change.value)
        return job


def find_remedies(
    surround: Surround, finding: Finding, go_on: Callable[[], object] = lambda: None
) -> tuple[Remedy, ...]:
    """Up to three ways to clear a finding that is over or close, the least first.

    Where none of them clears every clearance, one of two changes that does is among them if there is one.
    What puts something else over its limit is offered only where there is nothing better. None where
    nothing is wrong or no change of one or two parameters helps. `go_on` is called before each trial and may
    raise to end the search.
    """
    if finding.status not in (Status.FAIL, Status.WARN):
        return ()
    trial = _Trial(surround, finding, go_on)
    singles = list(trial.list_singles())
    found = [trial.describe([change]) for change in singles]
    if all(remedy.breaks or remedy.is_drastic for remedy in found):
        found += trial.join(singles)
    if finding.check == MANTEL and not any(r.clears_all and not r.breaks for r in found):
        found += trial.clear_all()
    return _choose(found)


def _choose(found: Iterable[Remedy]) -> tuple[Remedy, ...]:
    ranked = sorted({remedy.changes: remedy for remedy in found}.values(), key=_rank)
    sound = [remedy for remedy in ranked if not remedy.breaks] or ranked
    offered = sound[:MOST_OFFERED]
    whole = next((remedy for remedy in sound if remedy.clears_all), None)
    if whole is not None and whole not in offered:
        offered[-1] = whole
    return tuple(offered)


def _rank(remedy: Remedy) -> tuple[bool, bool, int, bool, float]:
    return remedy.breaks, remedy.is_drastic, len(remedy.changes), bool(remedy.worsens), remedy.size


class _Trial:
    """Tries changes on one surround for one finding; what was checked once is not checked again."""

    def __init__(self, surround: Surround, finding: Finding, go_on: Callable[[], object]) -> None:
        self.job = surround.asked or surround.job
        self._go_on = go_on
        self.finding = finding
        self.before = _list_worst(check_surround(surround))
        self._handles = list_handles(surround, finding)
        self._checked: dict[Job, dict[Key, Entry]] = {self.job: self.before}
        self._read: dict[Job, dict[str, Status]] = {}

    def list_singles(self) -> Iterator[Change]:
        """For each handle the least change that clears the finding."""
        for handle in self._handles:
            yield from self._search(self.job, handle, lambda job: self._clears(job, self.finding))

    def _clears(self, job: Job, finding: Finding) -> bool:
        if finding.check == MANTEL:
            status = self._read_statuses(job).get(finding.part, Status.PASS)
        elif job in self._checked:
            entry = self.check(job).get((finding.check, finding.part))
            status = entry[2].status if entry else Status.PASS
        else:
            status = self._ask_alone(job, finding)
        return WORST_FIRST.index(status) > WORST_FIRST.index(finding.status) and status is not Status.UNKNOWN

    def _ask_alone(self, job: Job, finding: Finding) -> Status:
        """The worst answer to what a finding is about, no other check being made."""
        ask = ALONE.get(finding.check, check_built)
        own = (f for f in ask(plan_surround(job)) if (f.check, f.part) == (finding.check, finding.part))
        return min((f.status for f in own), key=WORST_FIRST.index, default=Status.PASS)

    def _read_statuses(self, job: Job) -> dict[str, Status]:
        statuses = self._read.get(job)
        if statuses is None:
            statuses = self._read[job] = read_statuses(plan_surround(job))
        return statuses

    def _list_over(self, job: Job) -> list[str]:
        """Parts that are over by the clearance rules."""
        return [part for part, status in self._read_statuses(job).items() if status is Status.FAIL]

    def check(self, job: Job) -> dict[Key, Entry]:
        """The worst finding of each check and part of a job."""
        worst = self._checked.get(job)
        if worst is None:
            worst = self._checked[job] = _list_worst(check_surround(plan_surround(job)))
        return worst

    def describe(self, changes: Sequence[Change]) -> Remedy:
        """The remedy that these changes make up."""
        size, job = 0.0, self.job
        for change in changes:
            size += _distance(self.job, change)
            job = with_value(job, change.path, change.value)
        worse = self._list_worse(job)
        return Remedy(
            tuple(changes),
            say_changes(self.job, changes),
            size,
            not any(f.status is Status.FAIL and f.check == MANTEL for _, _, f in self.check(job).values()),
            tuple(f"After that, {STATUS_WORD[f.status]}: {f.message}" for _, _, f in worse),
            any(f.status is Status.FAIL for _, _, f in worse),
        )

    def _list_worse(self, job: Job) -> list[Entry]:
        """What stands worse than before, the worst first; the finding itself is not, once it is better."""
        own = (self.finding.check, self.finding.part)
        worse = [
            entry
            for key, entry in self.check(job).items()
            if entry[2].status in (Status.FAIL, Status.WARN)
            and (key not in self.before or entry[:2] < self.before[key][:2])
            and not (key == own and entry[2].status is not Status.FAIL)
        ]
        return sorted(worse, key=lambda entry: entry[:2])

    def join(self, singles: Iterable[Change]) -> Iterator[Remedy]:
        """Each change that puts something else over, with the least second one that makes up for it."""
        for change in singles:
            job = with_value(self.job, change.path, change.value)
            worse = [finding for _, _, finding in self._list_worse(job) if finding.status is Status.FAIL]
            if worse:
                yield from self._follow(change, job, worse[0], partial(self._clears, finding=worse[0]))

    def clear_all(self) -> Iterator[Remedy]:
        """Changes of one or two parameters that leave no clearance over; the first pair that is sound."""
        for handle in self._handles:
            for change in self._clear_group(handle):
                job = with_value(self.job, change.path, change.value)
                over = self._list_over(job)
                left = self.check(job).get((MANTEL, over[0])) if over else None
                if not over:
                    yield self.describe([change])
                elif left is not None:
                    for remedy in self._follow(change, job, left[2], lambda job: not self._list_over(job)):
                        yield remedy
                        if not remedy.breaks:
                            return

    def _follow(self, first: Change, job: Job, finding: Finding, passes: Passes) -> Iterator[Remedy]:
        """`first`, which makes `job`, with each second change for `finding` after which the job passes."""
        for handle in list_handles(plan_surround(job), finding):
            if handle.path != first.path:
                for second in self._search(job, handle, passes):
                    yield self.describe([first, second])

    def _clear_group(self, handle: Handle) -> Iterator[Change]:
        """The least change of one parameter that clears all parts that it can clear, this one among them."""
        values = _list_values(self.job, handle)
        never = set(self._list_over(self.job))
        for i in _list_strides(len(values)):
            with suppress(Refused):
                never &= set(self._list_over(with_value(self.job, handle.path, values[i])))
        alike = {
            part
            for part in self._list_over(self.job)
            if stands_beside(part) is stands_beside(self.finding.part)
        }
        group = alike - never | {self.finding.part}
        yield from self._search(self.job, handle, lambda job: not group & set(self._list_over(job)))

    def _search(self, job: Job, handle: Handle, passes: Passes) -> Iterator[Change]:
        """The least change of one parameter after which the job passes; nothing where there is none."""
        values = _list_values(job, handle)

        def passes_at(i: int) -> bool:
            self._go_on()
            try:
                return passes(with_value(job, handle.path, values[i]))
            except Refused:
                return False

        found = _find_first(len(values), passes_at)
        if found is not None:
            yield Change(handle.path, values[found])


def _list_values(job: Job, handle: Handle) -> Sequence[Value]:
    return (handle.value,) if handle.way == 0 else _Values(job, handle)


class _Values(Sequence[Value]):
    """A row's values on the tape from where it stands to its bound, the nearest first."""

    def __init__(self, job: Job, handle: Handle) -> None:
        row = find_parameter(handle.path)
        start = read_number(job, handle.path)
        step = Wording(job.about.length_style).step if row.kind is Kind.LENGTH else 1.0
        bound = (row.highest if handle.way == MORE else row.lowest) or 0.0
        self._whole = row.kind is Kind.COUNT
        self._step = step * handle.way
        nearest = floor(start / step + 1e-6) + 1 if handle.way == MORE else ceil(start / step - 1e-6) - 1
        self._first = nearest * step
        self._length = max(floor((bound - self._first) / self._step + 1e-6) + 1, 0)

    def __len__(self) -> int:
        return self._length

    def __getitem__(self, i: int) -> Value:  # type: ignore[override]
        value = self._first + i * self._step
        return round(value) if self._whole else value


def _list_strides(count: int) -> list[int]:
    """Indices in strides that double, the last one among them."""
    doubled = [2**k - 1 for k in range(count.bit_length())]
    return [i for i in doubled if i < count - 1] + ([count - 1] if count else [])


def _find_first(count: int, passes: Callable[[int], bool]) -> int | None:
    """The first index that passes, sought in strides that double and then halve; None where none is met."""
    low = -1
    for i in _list_strides(count):
        if passes(i):
            return _halve(low, i, passes)
        low = i
    return None


def _halve(low: int, high: int, passes: Callable[[int], bool]) -> int:
    """Between `low`, which does not pass, and `high`, which does."""
    while high - low > 1:
        middle = (low + high) // 2
        low, high = (low, middle) if passes(middle) else (middle, high)
    return high


def _list_worst(findings: Iterable[Finding]) -> dict[Key, Entry]:
    """For each check and part the worst finding: its rank, worst least, and what it has to spare."""
    worst: dict[Key, Entry] = {}
    for finding in findings:
        key, entry = (finding.check, finding.part), (WORST_FIRST.index(finding.status), _spare(finding))
        if key not in worst or entry < worst[key][:2]:
            worst[key] = (*entry, finding)
    return worst


def _spare(finding: Finding) -> float:
    """What a failing finding is short by, below nothing; 0 for any other."""
    if finding.status is not Status.FAIL or finding.measured is None or finding.limit is None:
        return 0.0
    spare = finding.measured - finding.limit
    return round(-spare if finding.bound is Bound.MOST else spare, TIE_DIGITS)


def _distance(job: Job, change: Change) -> float:
    if change.number is None:
        return 0.0
    return abs(change.number - read_number(job, change.path))
