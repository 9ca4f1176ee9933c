"""A plan made cheaper by taking a few of its sheets at a time and cutting their pieces anew.

Few pieces are cut anew exactly, more of them by many tries. Where that is no cheaper, what comes to lie on
the same sheets with less on the emptiest is kept: taken with others, that one may be spared later.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Sequence
from dataclasses import replace
from random import Random

from model.cutting.exact_sheets import ExactSheets
from model.cutting.multi_start import MultiStart
from model.cutting.packer import Layout, add, cost_of, downsize, pieces_of
from model.cutting.sheet_bounds import SheetBound
from model.cutting.sheet_cuts import Lying
from model.cutting.sheet_problem import SheetProblem

WORK = 3_000_000
"""Work of each time; see `ExactSheets`."""
NODES = 20
"""Most nodes of each time."""
TRIES = 30
"""Tries each time that there are too many pieces to cut them anew exactly."""
FEW_SHEETS = 20
"""Sheets up to which a plan is one of few."""
FIRST_PIECES = (16, 10)
"""Pieces that are taken together at first, in a plan of few sheets and in another."""
LEAST_PIECES = 8
ALWAYS = 3
"""Sheets of a plan's mean that are taken together however many pieces that is."""
FULL = 12
"""Power of what is filled by which sheets are drawn: the emptiest are nearly always among them."""
MOST_SHEETS = 8
"""Sheets that are taken together."""


class Regrouper:
    """Takes sheets by lot, those with much left on them more often."""

    def __init__(self, problem: SheetProblem, random: Random, should_stop: Callable[[], bool]) -> None:
        self._problem, self._random, self._should_stop = problem, random, should_stop
        self._most_pieces = self._fails = 0

    def improve(
        self,
        plan: Sequence[Layout],
        supply: Sequence[int | None],
        bound: int,
        times: int,
        told: Callable[[list[Layout]], None],
    ) -> list[Layout]:
        """The cheapest plan found by taking sheets so many times; `told` each better."""
        best = list(plan)
        self._most_pieces = self._most_pieces or FIRST_PIECES[len(best) > FEW_SHEETS]
        for _ in range(times):
            cost = cost_of(self._problem, best)
            if self._should_stop() or cost <= bound:
                break
            few = self._draw(best)
            rest = [layout for n, layout in enumerate(best) if n not in few]
            new = self._cut_anew([best[n] for n in few], _leave(supply, rest))
            self._note(new is not None, len(best))
            if new is not None:
                best = [*rest, *new]
            if cost_of(self._problem, best) < cost:
                told(best)
        return best

    def _draw(self, plan: Sequence[Layout]) -> set[int]:
        """Numbers of sheets to take together, two at least where there are two."""
        lot = [(self._random.random() * self._filled(layout) ** FULL, n) for n, layout in enumerate(plan)]
        few: set[int] = set()
        count = 0
        most = max(self._most_pieces, ALWAYS * sum(len(layout.pieces) for layout in plan) // len(plan))
        for _, n in sorted(lot):
            size = len(plan[n].pieces)
            if len(few) > 1 and count + size > most:
                continue
            few.add(n)
            count += size
            if len(few) == MOST_SHEETS:
                break
        return few

    def _filled(self, layout: Layout) -> float:
        room = self._problem.rooms[layout.sold]
        return _area(layout) / (room[0] * room[1])

    def _note(self, better: bool, sheets: int) -> None:
        """Take more pieces once nothing comes of as many times as there are sheets."""
        self._fails = 0 if better else self._fails + 1
        if self._fails > sheets:
            self._most_pieces += 1
            self._fails = 0

    def _cut_anew(self, old: Sequence[Layout], supply: Sequence[int | None]) -> list[Layout] | None:
        """Cheaper sheets for what lies on some, or ones that cost the same, the emptiest with less on it."""
        items, problem = take_part(
            self._problem, [piece for each in old for piece in pieces_of(each)], supply
        )
        own = [_rename(each, {item: n for n, item in enumerate(items)}) for each in old]
        exact = ExactSheets(problem, self._should_stop, WORK)
        is_few = sum(problem.demand) <= self._most_pieces
        if is_few and exact.find_bound(cost_of(problem, own)):
            new = self._solve(problem, exact, own)
        else:
            self._most_pieces = max(self._most_pieces - is_few, LEAST_PIECES)
            new = self._try(problem, own, supply)
        if new is None:
            return None
        return [_rename(each, dict(enumerate(items))) for each in downsize(problem, new, supply)]

    def _solve(self, problem: SheetProblem, exact: ExactSheets, old: Sequence[Layout]) -> list[Layout] | None:
        cost = cost_of(problem, old)
        low = SheetBound(problem, self._should_stop).lift(exact.bound, cost)
        plan = exact.solve(low, cost, NODES) if low < cost else None
        if plan is not None or len(old) == 1:
            return plan
        last = min(old, key=_area)
        mix = _mix(problem, old)
        mix[last.sold] -= 1
        return exact.empty(mix, last.sold, _area(last), NODES)

    def _try(
        self, problem: SheetProblem, old: Sequence[Layout], supply: Sequence[int | None]
    ) -> list[Layout] | None:
        multi_start = MultiStart(problem, self._random, self._should_stop)
        pieces = sorted(piece for each in old for piece in pieces_of(each))
        cheaper = multi_start.improve(old, pieces, supply, 0, TRIES)
        if cost_of(problem, cheaper) < cost_of(problem, old):
            return cheaper
        mix, least = tuple(_mix(problem, old)), min(_area(each) for each in old)
        for _ in range(TRIES):
            found = multi_start.try_mix(pieces, mix)
            if found is not None and min(_area(each) for each in found) < least:
                return found
        return None


def _mix(problem: SheetProblem, plan: Sequence[Layout]) -> list[int]:
    counts = Counter(layout.sold for layout in plan)
    return [counts[k] for k in range(len(problem.sold))]


def _area(layout: Layout) -> int:
    return sum(piece.sides[0] * piece.sides[1] for piece in layout.pieces)


def take_part(
    problem: SheetProblem, pieces: Sequence[int], supply: Sequence[int | None]
) -> tuple[list[int], SheetProblem]:
    """The items of some of the pieces, and the problem of these alone, whose items they are in that order."""
    counts = Counter(pieces)
    items = sorted(counts)
    part = tuple(replace(problem.items[i], keys=problem.items[i].keys[: counts[i]]) for i in items)
    sold = tuple(replace(each, supply=most) for each, most in zip(problem.sold, supply, strict=True))
    return items, SheetProblem(part, sold, problem.kerf)


def _leave(supply: Sequence[int | None], plan: Sequence[Layout]) -> list[int | None]:
    """What a plan leaves of a supply."""
    left = list(supply)
    for layout in plan:
        left[layout.sold] = add(left[layout.sold], -1)
    return left


def _rename(layout: Layout, items: Sequence[int] | dict[int, int]) -> Layout:
    return Layout(layout.sold, tuple(Lying(items[p.item], p.x, p.y, p.sides) for p in layout.pieces))
