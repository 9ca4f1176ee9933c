"""Cheaper plans for some pieces, looked for by laying them in many orders on sheets that would be cheaper."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from random import Random

from model.cutting.mixes import Mix, list_mixes
from model.cutting.packer import Layout, Shuffler, cost_of, draw_rules, first_fit, lay, pieces_of
from model.cutting.sheet_problem import SheetProblem

MOST_MIXES = 400
"""Cheapest mixes that are tried."""
ASKED = 16
"""Tries between two questions whether to stop."""
Told = Callable[[list[Layout]], None]


class MultiStart:
    """Lays pieces at random, the same way each time it is made anew.

    `seen` is told every sheet that was laid, whether or not all pieces found a place.
    """

    def __init__(
        self,
        problem: SheetProblem,
        random: Random,
        should_stop: Callable[[], bool],
        seen: Callable[[Layout], None] = lambda layout: None,
    ) -> None:
        self.problem, self._should_stop, self._seen = problem, should_stop, seen
        self._random = random
        self._shuffler = Shuffler(problem, random)

    def improve(
        self,
        plan: Sequence[Layout],
        pieces: Sequence[int],
        supply: Sequence[int | None],
        bound: int,
        tries: int,
        told: Told = lambda plan: None,
    ) -> list[Layout]:
        """The cheapest plan found for the pieces of `plan` in at most so many tries; `told` each better."""
        best = list(plan)
        cost = cost_of(self.problem, plan)
        mixes = list_mixes(self.problem, pieces, supply, bound, cost, MOST_MIXES)
        for n in range(tries):
            if not mixes or (n % ASKED == 0 and self._should_stop()):
                break
            mix = mixes[int(len(mixes) * self._random.random() ** 2)]
            found = self.try_mix(pieces, mix)
            if found is None:
                continue
            best, cost = found, cost_of(self.problem, found)
            told(best)
            mixes = [each for each in mixes if self.price(each) < cost]
        return best

    def first_fit(
        self, plan: Sequence[Layout], supply: Sequence[int | None], bound: int, tries: int, told: Told
    ) -> list[Layout]:
        """The cheapest plan found by laying all pieces where they fit first; `told` each better."""
        best = list(plan)
        pieces = sorted(piece for layout in plan for piece in pieces_of(layout))
        for _ in range(tries):
            cost = cost_of(self.problem, best)
            if cost <= bound or self._should_stop():
                break
            main = int(self._random.random() * len(supply))
            order, rules = self._shuffler.shuffle(pieces), draw_rules(self._random)
            found, over = first_fit(self.problem, order, supply, main, rules)
            if not over and cost_of(self.problem, found) < cost:
                best = found
                told(best)
        return best

    def price(self, mix: Mix) -> int:
        """What a mix costs, hundredths."""
        return sum(sold.price * count for sold, count in zip(self.problem.sold, mix, strict=True))

    def try_mix(self, pieces: Sequence[int], mix: Mix) -> list[Layout] | None:
        """Pieces laid on the sheets of a mix, those left over first in a second go; None if some are left."""
        solds = [k for k, count in enumerate(mix) for _ in range(count)]
        lot = self._random.random()
        if lot < 0.5:
            solds.sort(key=lambda k: -self.problem.rooms[k][0] * self.problem.rooms[k][1])
        elif lot < 0.7:
            self._random.shuffle(solds)
        rooms = [self.problem.rooms[k] for k in solds]
        order = self._shuffler.shuffle(pieces)
        rules = draw_rules(self._random)
        for _ in range(2):
            laid, over = lay(self.problem.items, order, rooms, rules)
            plan = [Layout(k, tuple(each)) for k, each in zip(solds, laid, strict=True) if each]
            for layout in plan:
                self._seen(layout)
            if not over:
                return plan
            order = _put_first(order, over)
        return None


def _put_first(order: Sequence[int], first: Sequence[int]) -> list[int]:
    rest = list(order)
    for piece in first:
        rest.remove(piece)
    return [*first, *rest]
