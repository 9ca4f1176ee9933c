"""The cheapest sheets of some pieces, exactly: all sets a sheet holds, and the cheapest choice of them."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence

from model.cutting.packer import Layout
from model.cutting.set_choice import Pieces, SetChoice, list_columns
from model.cutting.sheet_cuts import Lying
from model.cutting.sheet_problem import SheetProblem, Sides, fits
from model.cutting.sheet_sets import SetFinder, TooMuch, list_partings

MOST_SETS = 3_000
"""Sets up to which a sheet is emptied."""


class ExactSheets:
    """Solves within `work` boxes put together; `bound` is what no plan costs less than, 0 if too much."""

    def __init__(self, problem: SheetProblem, should_stop: Callable[[], bool], work: int) -> None:
        self.problem, self._should_stop, self._work = problem, should_stop, work
        self.bound = 0
        self._choice: SetChoice | None = None
        self._layer: SetLayer | None = None

    def find_bound(self, most: int) -> bool:
        """List the sets and find the bound; whether that was not too much. `most` is what a plan costs."""
        try:
            finder = SetFinder(self.problem, self._should_stop, self._work)
            finder.run()
        except TooMuch:
            return False
        self._layer = SetLayer(finder)
        self._choice = SetChoice(self.problem, list_columns(self.problem, finder.levels), self._should_stop)
        self._choice.price_out(most)
        self.bound = self._choice.bound
        return True

    def solve(self, low: int, most: int, nodes: int) -> list[Layout] | None:
        """The cheapest plan found that costs from `low` to below `most`; None where there is none.

        To be asked once the bound was found; `low` is a sum of prices.
        """
        if self._choice is None or self._layer is None:
            return None
        chosen = self._choice.choose(low, most, nodes)
        self.bound = self._choice.bound
        return None if chosen is None else self._lay(self._layer, chosen)[0]

    def empty(self, mix: Sequence[int], sold: int, most: int, nodes: int) -> list[Layout] | None:
        """A plan of the sheets of a mix and one of `sold`, on which less than an area lies; None if none."""
        if self._choice is None or self._layer is None or self._choice.size > MOST_SETS:
            return None
        chosen = self._choice.leave_least(mix, most, nodes)
        if chosen is None:
            return None
        plan, over = self._lay(self._layer, chosen)
        if over and not self._layer.can_lay(over, self.problem.rooms[sold]):
            return None
        last = [Layout(sold, self._layer.lay(over, self.problem.rooms[sold]))] if over else []
        return [*plan, *last]

    def _lay(self, layer: SetLayer, chosen: Sequence[tuple[Pieces, int]]) -> tuple[list[Layout], Pieces]:
        """Sheets of the sets, pieces that several hold on the first alone, and pieces that none holds."""
        left = list(self.problem.demand)
        plan = []
        for pieces, sold in chosen:
            mine = []
            for piece in pieces:
                if left[piece]:
                    left[piece] -= 1
                    mine.append(piece)
            if mine:
                plan.append(Layout(sold, layer.lay(tuple(mine), self.problem.rooms[sold])))
        return plan, tuple(i for i, count in enumerate(left) for _ in range(count))


class SetLayer:
    """Lays sets that were found."""

    def __init__(self, finder: SetFinder) -> None:
        self._finder = finder
        self._known: dict[Pieces, list[Sides]] = {}

    def lay(self, pieces: Pieces, room: Sides) -> tuple[Lying, ...]:
        """Pieces, in order, laid in a room that holds a box of theirs."""
        box = next(each for each in self._list_boxes(pieces) if fits(each, room))
        return tuple(self._lay(pieces, box, 0, 0))

    def can_lay(self, pieces: Pieces, room: Sides) -> bool:
        """Whether a room holds pieces, which are in order."""
        return any(fits(box, room) for box in self._list_boxes(pieces))

    def _list_boxes(self, pieces: Pieces) -> list[Sides]:
        if pieces not in self._known:
            self._known[pieces] = self._finder.list_boxes(pieces)
        return self._known[pieces]

    def _lay(self, pieces: Pieces, box: Sides, x: int, y: int) -> Iterator[Lying]:
        if len(pieces) == 1:
            yield Lying(pieces[0], x, y, box)
            return
        one, two, a, b, beside = next(self._list_ways(pieces, box))
        yield from self._lay(one, a, x, y)
        yield from self._lay(two, b, x + a[0] * beside, y + a[1] * (1 - beside))

    def _list_ways(self, pieces: Pieces, box: Sides) -> Iterator[tuple[Pieces, Pieces, Sides, Sides, int]]:
        """First cuts that part a box of pieces: both parts with their boxes, and if they lie side by side."""
        for first, second in list_partings(len(pieces)):
            one, two = tuple(pieces[n] for n in first), tuple(pieces[n] for n in second)
            for a in self._list_boxes(one):
                for b in self._list_boxes(two):
                    if (a[0] + b[0], max(a[1], b[1])) == box:
                        yield one, two, a, b, 1
                    elif (max(a[0], b[0]), a[1] + b[1]) == box:
                        yield one, two, a, b, 0
