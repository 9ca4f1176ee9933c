"""Fewer cuts at no higher cost, then a larger rectangle left: the best found, nothing is proven of either."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from random import Random

from model.cutting.mixes import list_mixes
from model.cutting.multi_start import MultiStart
from model.cutting.packer import Layout, Shuffler, cost_of, draw_rules, lay, pieces_of
from model.cutting.sheet_cuts import Sawyer
from model.cutting.sheet_problem import SheetProblem

SHEET_TRIES = 12
"""Times that the pieces of each sheet are laid on it anew."""
PLAN_TRIES = 40
"""Times that all pieces of a small job are laid on sheets that cost the same."""
MOST_SHEETS = 60
"""Sheets up to which each is laid anew."""
MOST_PIECES = 40
"""Pieces up to which all are laid anew."""
MOST_MIXES = 40
ASKED = 8
"""Tries between two questions whether to stop."""

Worth = tuple[int, int, int]


class Neatener:
    """Lays a plan's pieces in other ways and keeps what is sawn with fewer cuts."""

    def __init__(
        self, problem: SheetProblem, sawyer: Sawyer, random: Random, should_stop: Callable[[], bool]
    ) -> None:
        self._problem, self._sawyer, self._random, self._should_stop = problem, sawyer, random, should_stop
        self._shuffler = Shuffler(problem, random)
        self._multi_start = MultiStart(problem, random, should_stop)

    def neaten(self, plan: Sequence[Layout], supply: Sequence[int | None]) -> list[Layout]:
        """The neatest plan found that costs the same."""
        best = self._neaten_sheets(plan)
        pieces = sorted(piece for layout in plan for piece in pieces_of(layout))
        if len(pieces) > MOST_PIECES:
            return best
        cost = cost_of(self._problem, plan)
        mixes = list_mixes(self._problem, pieces, supply, cost, cost + 1, MOST_MIXES)
        worth = self.worth(best)
        for n in range(PLAN_TRIES if mixes else 0):
            if n % ASKED == 0 and self._should_stop():
                break
            found = self._multi_start.try_mix(pieces, self._random.choice(mixes))
            if found is None:
                continue
            if (found_worth := self.worth(found)) < worth:
                best, worth = found, found_worth
        return self._neaten_sheets(best)

    def worth(self, plan: Sequence[Layout]) -> Worth:
        """Cuts, less the largest rectangle left, and length sawn, of all sheets together."""
        worths = [self._worth_of(layout) for layout in plan]
        return sum(w[0] for w in worths), min(w[1] for w in worths), sum(w[2] for w in worths)

    def _worth_of(self, layout: Layout) -> Worth:
        return self._sawyer.saw(layout.pieces, self._problem.rooms[layout.sold]).worth

    def _neaten_sheets(self, plan: Sequence[Layout]) -> list[Layout]:
        if len(plan) > MOST_SHEETS:
            return list(plan)
        return [self._neaten_sheet(layout) for layout in plan]

    def _neaten_sheet(self, layout: Layout) -> Layout:
        best, worth = layout, self._worth_of(layout)
        pieces, room = pieces_of(layout), self._problem.rooms[layout.sold]
        for n in range(SHEET_TRIES if len(pieces) > 1 else 0):
            if n % ASKED == 0 and self._should_stop():
                break
            laid, over = lay(
                self._problem.items, self._shuffler.shuffle(pieces), [room], draw_rules(self._random)
            )
            if over:
                continue
            found = Layout(layout.sold, tuple(laid[0]))
            if (found_worth := self._worth_of(found)) < worth:
                best, worth = found, found_worth
        return best
