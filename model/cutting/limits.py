"""How many boards a part of the search buys: of each stock, of several together, of one kind of lane."""

from __future__ import annotations

from dataclasses import dataclass, replace

from model.cutting.knapsack import Pattern
from model.cutting.problem import Problem


@dataclass(frozen=True, slots=True)
class Group:
    """Boards of any of some stocks, counted together; with a `kind` the lanes of that kind on them."""

    sold: frozenset[int]
    kind: int | None = None

    def count(self, pattern: Pattern) -> int:
        """How much one board counts."""
        if pattern.sold not in self.sold:
            return 0
        if self.kind is None:
            return 1
        return sum(lane.kind == self.kind for lane in pattern.lanes)


@dataclass(frozen=True, slots=True)
class Bounded:
    """A group with its least and its most; None for no most."""

    group: Group
    low: int
    high: int | None


@dataclass(frozen=True, slots=True)
class Limits:
    """Least and most boards of each stock, None for no most, and of groups."""

    low: tuple[int, ...]
    high: tuple[int | None, ...]
    groups: tuple[Bounded, ...] = ()

    def at_most(self, group: Group, number: int) -> Limits:
        """The same with no more than a number of a group."""
        if (sold := _only(group)) is not None:
            return replace(self, high=(*self.high[:sold], number, *self.high[sold + 1 :]))
        old = self._find(group)
        return self._with(Bounded(group, old.low, number))

    def at_least(self, group: Group, number: int) -> Limits:
        """The same with no fewer than a number of a group."""
        if (sold := _only(group)) is not None:
            return replace(self, low=(*self.low[:sold], number, *self.low[sold + 1 :]))
        old = self._find(group)
        return self._with(Bounded(group, number, old.high))

    def _find(self, group: Group) -> Bounded:
        return next((each for each in self.groups if each.group == group), Bounded(group, 0, None))

    def _with(self, bounded: Bounded) -> Limits:
        others = tuple(each for each in self.groups if each.group != bounded.group)
        return replace(self, groups=(*others, bounded))

    def after(self, pattern: Pattern, times: int) -> Limits:
        """What is left of limits once boards are settled."""
        low, high = list(self.low), list(self.high)
        low[pattern.sold] = max(low[pattern.sold] - times, 0)
        if (most := high[pattern.sold]) is not None:
            high[pattern.sold] = max(most - times, 0)
        groups = tuple(_less(each, each.group.count(pattern) * times) for each in self.groups)
        return Limits(tuple(low), tuple(high), groups)


def _only(group: Group) -> int | None:
    return next(iter(group.sold)) if group.kind is None and len(group.sold) == 1 else None


def _less(bounded: Bounded, number: int) -> Bounded:
    most = bounded.high
    return replace(
        bounded, low=max(bounded.low - number, 0), high=None if most is None else max(most - number, 0)
    )


def list_groups(problem: Problem) -> tuple[Group, ...]:
    """Groups to branch on: each stock, those at least so long and so wide, those of one width, and all."""
    sold = list(enumerate(problem.sold))
    groups = [Group(frozenset({s})) for s, _ in sold]
    for room in {0, *(each.room for _, each in sold)}:
        for across in {0, *(each.across for _, each in sold)}:
            groups.append(Group(frozenset(s for s, e in sold if e.room >= room and e.across >= across)))
    for across in {each.across for _, each in sold}:
        groups.append(Group(frozenset(s for s, each in sold if each.across == across)))
    return tuple({group: None for group in groups if group.sold})
