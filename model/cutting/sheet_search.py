"""The search for the cheapest sheets: a plan at once, a bound, many tries below the plan's cost."""

from __future__ import annotations

from collections.abc import Callable
from itertools import product
from random import Random

from model.cutting.exact_sheets import ExactSheets
from model.cutting.multi_start import MultiStart
from model.cutting.neaten import Neatener
from model.cutting.packer import Layout, Rules, cost_of, downsize, first_fit
from model.cutting.pattern_bound import PatternBound
from model.cutting.regroup import Regrouper
from model.cutting.sheet_bounds import SheetBound
from model.cutting.sheet_cuts import Sawyer
from model.cutting.sheet_problem import SheetProblem

SMALL = 40
"""Pieces up to which all are laid anew at each try."""
FIRST_WORK, WORK = 6_000_000, 60_000_000
"""Work of settling it exactly at first and at last; see `ExactSheets`."""
FIRST_TRIES, TRIES = 300, 300
"""Tries at first and before it is settled at last."""
FIRST_TIMES, TIMES = 12, 40
"""Times that a few sheets of a small job are cut anew before and after it is settled at last."""
MANY_TRIES = 40_000
"""Pieces of a larger job that are laid one by one before a few sheets are cut anew."""
MANY_TIMES = 800
"""Times that a few sheets of a larger job are cut anew."""
NODES = 1_000
"""Most nodes of the choice among sets."""
MANY = 400
"""Pieces beyond which the first plan is the cheapest of fewer, to be there soon."""
SHORT_TRIES = 200
"""Tries to lay all pieces where first fit found sheets too few."""
MOST_USED = 100
"""Sheets up to which that is tried."""
STARTS = tuple(Rules("short", split) for split in ("longer", "shorter", "along", "across"))
"""Ways of laying that the first plan is the cheapest of."""


class SheetSearch:
    """Looks for the cheapest plan; `best` and `cost` are so far, `bound` is what no plan costs less than."""

    def __init__(
        self,
        problem: SheetProblem,
        sawyer: Sawyer,
        should_stop: Callable[[], bool],
        tell: Callable[[SheetSearch], None],
    ) -> None:
        self.problem, self._should_stop, self._tell = problem, should_stop, tell
        self.supply = [sold.supply for sold in problem.sold]
        self.pieces = [i for i, count in enumerate(problem.demand) for _ in range(count)]
        self.best: list[Layout] = []
        self.over: list[int] = []
        self.bound = 0
        self._random = Random(1)
        self._multi_start = MultiStart(problem, self._random, should_stop)
        self._regrouper = Regrouper(problem, Random(3), should_stop)
        self._neatener = Neatener(problem, sawyer, Random(2), should_stop)

    @property
    def cost(self) -> int:
        """What the best plan so far costs, hundredths."""
        return cost_of(self.problem, self.best)

    def start(self) -> None:
        """A first plan; `over` are pieces for which sheets are too few."""
        plans = []
        starts = STARTS if len(self.pieces) <= MANY else STARTS[:1]
        for rules, main in product(starts, range(len(self.problem.sold))):
            plans.append(first_fit(self.problem, self.pieces, self.supply, main, rules))
            if self._should_stop() and not plans[-1][1]:
                break
        self.best, self.over = min(plans, key=self._rank)
        if self.over:
            self._use_all()

    def _use_all(self) -> None:
        """Try to lay all pieces on all the sheets there are, where first fit left some over."""
        few = [len(self.pieces) if each is None else min(each, len(self.pieces)) for each in self.supply]
        if sum(few) > MOST_USED:
            return
        for _ in range(SHORT_TRIES):
            if self._should_stop():
                return
            found = self._multi_start.try_mix(self.pieces, tuple(few))
            if found is not None:
                self.best, self.over = downsize(self.problem, found, self.supply), []
                return

    def _rank(self, made: tuple[list[Layout], list[int]]) -> tuple[int, int]:
        plan, over = made
        return sum(self.problem.items[piece].area for piece in over), cost_of(self.problem, plan)

    def run(self) -> None:
        """Search until the plan is proven, the work allowed is done or the asker says stop."""
        self._tell(self)
        bounds = SheetBound(self.problem, self._should_stop)
        self.bound = bounds.find(self.cost)
        if not self._is_done():
            (self._search_few if len(self.pieces) <= SMALL else self._search_many)(bounds)
        self._tell(self)
        if not self._should_stop():
            self._take(self._neatener.neaten(self.best, self.supply))

    def _search_few(self, bounds: SheetBound) -> None:
        self._try(FIRST_TRIES)
        if self._is_done() or self._solve(bounds, FIRST_WORK):
            return
        self._regroup(FIRST_TIMES)
        self._try(TRIES)
        self._finish(bounds, TIMES)

    def _search_many(self, bounds: SheetBound) -> None:
        if self._solve(bounds, FIRST_WORK):
            return
        tries = max(MANY_TRIES // len(self.pieces), 1)
        self._multi_start.first_fit(self.best, self.supply, self.bound, tries, self._take)
        self._regroup(FIRST_TIMES)
        self._finish(bounds, MANY_TIMES)

    def _finish(self, bounds: SheetBound, times: int) -> None:
        """Settle it by a better bound or exactly, or else cut sheets anew so many times."""
        if self._is_done():
            return
        if len(self.problem.items) < len(self.pieces):
            self._find_pattern_bound(bounds)
        if not self._is_done() and not self._solve(bounds, WORK):
            self._regroup(times)

    def _find_pattern_bound(self, bounds: SheetBound) -> None:
        patterns = PatternBound(self.problem, self._should_stop)
        patterns.find(self.best, self.cost, self.bound)
        self.bound = max(self.bound, bounds.lift(patterns.bound, self.cost))
        self._tell(self)

    def _try(self, tries: int) -> None:
        self._multi_start.improve(self.best, self.pieces, self.supply, self.bound, tries, self._take)

    def _regroup(self, times: int) -> None:
        self._regrouper.improve(self.best, self.supply, self.bound, times, self._take)

    def _is_done(self) -> bool:
        return self.cost <= self.bound or self._should_stop()

    def _solve(self, bounds: SheetBound, work: int) -> bool:
        """Try to settle it exactly; whether that was not too much."""
        exact = ExactSheets(self.problem, self._should_stop, work)
        if not exact.find_bound(self.cost):
            return False
        self.bound = max(self.bound, bounds.lift(exact.bound, self.cost))
        if not self._is_done():
            plan = exact.solve(self.bound, self.cost, NODES)
            if plan is not None:
                self._take(downsize(self.problem, plan, self.supply))
            self.bound = max(self.bound, bounds.lift(exact.bound, self.cost))
        return True

    def _take(self, plan: list[Layout]) -> None:
        self.best = plan
        self._tell(self)
