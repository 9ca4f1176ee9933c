"""The search for the cheapest sheets: a plan at once, a bound, many tries below the plan's cost."""

from __future__ import annotations

from collections.abc import Callable
from itertools import product
from random import Random

from model.cutting.exact_sheets import ExactSheets
from model.cutting.multi_start import MultiStart
from model.cutting.neaten import Neatener
from model.cutting.packer import Layout, Rules, add, cost_of, downsize, first_fit, pieces_of
from model.cutting.sheet_bounds import SheetBound
from model.cutting.sheet_cuts import Sawyer
from model.cutting.sheet_problem import SheetProblem

SMALL = 40
"""Pieces up to which all are laid anew at each try."""
FIRST_TRIES = 300
"""Tries for a job of a few pieces before it is tried exactly."""
TRIES = 3_000
"""Tries after that."""
REWORKED = 1_200
"""Times that a few sheets of a larger job are laid anew."""
SHORT_TRIES = 200
"""Tries to lay all pieces where first fit found sheets too few."""
MOST_USED = 100
"""Sheets up to which that is tried."""
REWORK_TRIES = 40
"""Tries each time."""
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
        self._neatener = Neatener(problem, sawyer, Random(2), should_stop)

    @property
    def cost(self) -> int:
        """What the best plan so far costs, hundredths."""
        return cost_of(self.problem, self.best)

    def start(self) -> None:
        """A first plan; `over` are pieces for which sheets are too few."""
        plans = []
        for rules, main in product(STARTS, range(len(self.problem.sold))):
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
        if len(self.pieces) > SMALL:
            self._rework()
        else:
            self._search_few(bounds)
        self._tell(self)
        if not self._should_stop():
            self._take(self._neatener.neaten(self.best, self.supply))

    def _search_few(self, bounds: SheetBound) -> None:
        for tries in (FIRST_TRIES, TRIES):
            self._multi_start.improve(self.best, self.pieces, self.supply, self.bound, tries, self._take)
            if self.cost <= self.bound or self._should_stop():
                return
            if tries == FIRST_TRIES:
                self._solve(bounds)

    def _solve(self, bounds: SheetBound) -> None:
        """Try to settle it exactly."""
        exact = ExactSheets(self.problem, self._should_stop)
        plan = exact.solve()
        self.bound = max(self.bound, bounds.lift(exact.bound, self.cost))
        if plan is not None and cost_of(self.problem, plan) < self.cost:
            self._take(plan)

    def _rework(self) -> None:
        """Lay the pieces of a few sheets anew, again and again, wherever that makes them cheaper."""
        for _ in range(REWORKED):
            if self.cost <= self.bound or self._should_stop():
                return
            few = self._random.sample(range(len(self.best)), min(self._random.randint(2, 4), len(self.best)))
            old = [self.best[n] for n in few]
            rest = [layout for n, layout in enumerate(self.best) if n not in few]
            supply = list(self.supply)
            for layout in rest:
                supply[layout.sold] = add(supply[layout.sold], -1)
            pieces = sorted(piece for layout in old for piece in pieces_of(layout))
            if len(pieces) > SMALL:
                continue
            new = self._multi_start.improve(old, pieces, supply, 0, REWORK_TRIES)
            if cost_of(self.problem, new) < cost_of(self.problem, old):
                self._take(rest + new)

    def _take(self, plan: list[Layout]) -> None:
        self.best = plan
        self._tell(self)
