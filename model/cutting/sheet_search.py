"""The search for the cheapest sheets: a plan at once, a bound, many tries below the plan's cost."""

from __future__ import annotations

from collections.abc import Callable
from random import Random

from model.cutting.multi_start import MultiStart
from model.cutting.packer import Layout, Rules, cost_of, first_fit
from model.cutting.sheet_bounds import SheetBound
from model.cutting.sheet_problem import SheetProblem

SMALL = 40
"""Pieces up to which all are laid anew at each try."""
TRIES = 3_000
"""Tries for a job of a few pieces."""
STARTS = tuple(Rules("short", split) for split in ("longer", "shorter", "along", "across"))
"""Ways of laying that the first plan is the cheapest of."""
SHORT_TRIES = 200
"""Tries to lay all pieces where sheets are few."""


class SheetSearch:
    """Looks for the cheapest plan; `best` and `cost` are so far, `bound` is what no plan costs less than."""

    def __init__(
        self,
        problem: SheetProblem,
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

    @property
    def cost(self) -> int:
        """What the best plan so far costs, hundredths."""
        return cost_of(self.problem, self.best)

    def start(self) -> None:
        """A first plan; `over` are pieces for which sheets are too few."""
        plans = [
            first_fit(self.problem, self.pieces, self.supply, main, rules)
            for main in range(len(self.problem.sold))
            for rules in STARTS
        ]
        self.best, self.over = min(plans, key=self._rank)

    def _rank(self, made: tuple[list[Layout], list[int]]) -> tuple[int, int]:
        plan, over = made
        return sum(self.problem.items[piece].area for piece in over), cost_of(self.problem, plan)

    def run(self) -> None:
        """Search until the plan is proven, the work allowed is done or the asker says stop."""
        self._tell(self)
        bounds = SheetBound(self.problem, self._should_stop)
        self.bound = bounds.find(self.cost)
        if len(self.pieces) <= SMALL:
            self._multi_start.improve(self.best, self.pieces, self.supply, self.bound, TRIES, self._take)

    def _take(self, plan: list[Layout]) -> None:
        self.best = plan
        self._tell(self)
