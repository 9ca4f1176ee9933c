"""Which sheets a plan could be of: numbers of each that together are large enough and cheap enough."""

from __future__ import annotations

from collections.abc import Sequence

from model.cutting.sheet_problem import SheetProblem, fits

STEPS = 200_000
"""Most numbers looked at."""

Mix = tuple[int, ...]
"""How many of each sheet."""


def list_mixes(
    problem: SheetProblem, pieces: Sequence[int], supply: Sequence[int | None], low: int, high: int, most: int
) -> list[Mix]:
    """At most `most` mixes that cost from `low` to below `high` and could hold the pieces, cheapest first.

    A mix is left out where it is too small in area, or has no sheet for one of the pieces. No mix holds more
    sheets than there are pieces.
    """
    search = _Mixes(problem, pieces, supply, low, high)
    search.extend([], 0, 0, 0)
    return [mix for _, mix in sorted(search.found)[:most]]


class _Mixes:
    def __init__(
        self,
        problem: SheetProblem,
        pieces: Sequence[int],
        supply: Sequence[int | None],
        low: int,
        high: int,
    ) -> None:
        self._low, self._high, self._count = low, high, len(pieces)
        self._supply = supply
        self._prices = [sold.price for sold in problem.sold]
        self._areas = [a * b for a, b in problem.rooms]
        self._wanted = sum(problem.items[piece].area for piece in pieces)
        self._holders = {
            frozenset(k for k, room in enumerate(problem.rooms) if any(fits(way, room) for way in item.ways))
            for item in (problem.items[piece] for piece in set(pieces))
        }
        self._steps = 0
        self.found: list[tuple[int, Mix]] = []

    def extend(self, counts: list[int], cost: int, area: int, sheets: int) -> None:
        """Go through the numbers of the next stock, and of all after it."""
        self._steps += 1
        if self._steps > STEPS:
            return
        k = len(counts)
        if k == len(self._prices):
            if cost >= self._low and area >= self._wanted and self._holds_all(counts):
                self.found.append((cost, tuple(counts)))
            return
        supply = self._supply[k]
        most = self._count - sheets if supply is None else min(self._count - sheets, supply)
        for count in range(most + 1):
            if cost + count * self._prices[k] >= self._high:
                break
            self.extend(
                [*counts, count],
                cost + count * self._prices[k],
                area + count * self._areas[k],
                sheets + count,
            )

    def _holds_all(self, counts: Sequence[int]) -> bool:
        there = {k for k, count in enumerate(counts) if count}
        return all(there & holders for holders in self._holders)
