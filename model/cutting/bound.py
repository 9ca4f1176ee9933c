"""What no plan can cost less than, shown with whole numbers and nothing else."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import gcd

import numpy as np

from model.cutting.knapsack import Knapsack
from model.cutting.lanes import Whole
from model.cutting.limits import Group, Limits
from model.cutting.problem import Problem

SCALE = 1 << 20
"""Worths are whole numbers of this part of a hundredth, so that adding them up is exact."""
MOST_SUMS = 1 << 24
"""Cost in hundredths up to which sums of prices are listed one by one."""


@dataclass(frozen=True, slots=True)
class Shown:
    """A bound, and the worth of each item that shows it, both in parts of SCALE of a hundredth."""

    scaled: int
    worth: Whole

    @property
    def cost(self) -> int:
        """Whole hundredths that no plan costs less than."""
        return -(-self.scaled // SCALE)


def show_bound(
    problem: Problem,
    knapsack: Knapsack,
    limits: Limits,
    worth: Whole,
    tolls: Mapping[Group, int] | None = None,
) -> tuple[Shown, Whole]:
    """The bound that worths show, and what the best board of each stock is worth by them, its tolls paid.

    `worth` has an entry for each item of the problem, in parts of SCALE of a hundredth.
    Every plan makes all pieces, whose worth is `sum(demand * worth)`, and each board of a stock brings at
    most what its best one is worth. Each board or lane of a group pays its toll, a negative one is paid to
    it, which a plan within limits does at most as often as they allow. Where boards without a most would
    bring more than they cost, all is scaled down until they do not.
    """
    tolls = _list_tolls(limits, tolls or {})
    on_lanes = np.zeros((len(problem.kinds), len(problem.sold)), dtype=np.int64)
    on_boards = np.zeros(len(problem.sold), dtype=np.int64)
    for group, toll in tolls.items():
        for s in group.sold:
            if group.kind is None:
                on_boards[s] += toll
            else:
                on_lanes[group.kind, s] += toll
    best = knapsack.price(worth, on_lanes if on_lanes.any() else None) - on_boards
    return _scaled(problem, limits, worth, tolls, best), best


def _list_tolls(limits: Limits, tolls: Mapping[Group, int]) -> dict[Group, int]:
    """The tolls that limits stand behind: for a most above 0, for a least below."""
    most = {each.group: each.high for each in limits.groups}
    return {g: toll for g, toll in tolls.items() if toll and g in most and (toll < 0 or most[g] is not None)}


def _scaled(problem: Problem, limits: Limits, worth: Whole, tolls: Mapping[Group, int], best: Whole) -> Shown:
    num, den = 1, 1
    for sold, most, value in zip(problem.sold, limits.high, best.tolist(), strict=True):
        if most is None and value * num > sold.price * SCALE * den:
            num, den = sold.price * SCALE, value
    if num != den:
        worth = np.array([w * num // den for w in worth.tolist()], dtype=np.int64)
    total = sum(w * d for w, d in zip(worth.tolist(), problem.demand, strict=True))
    for each in limits.groups:
        toll = -(-tolls.get(each.group, 0) * num // den)
        total -= toll * (each.low if toll < 0 else (each.high or 0))
    for sold, low, most, value in zip(problem.sold, limits.low, limits.high, best.tolist(), strict=True):
        saved = sold.price * SCALE - value * num // den
        total += saved * (low if saved >= 0 else (most or 0))
    return Shown(total, worth)


class PriceSums:
    """Which costs boards can add up to, between limits."""

    def __init__(self, problem: Problem, most: int) -> None:
        self._prices = [sold.price for sold in problem.sold]
        self._divisor = gcd(*self._prices) or 1
        self._most = most
        self._last: tuple[tuple[object, ...], int] = ((), 0)

    def lift(self, cost: int, limits: Limits) -> int:
        """The least sum of prices from `cost` on; one past the most asked for where there is none."""
        step = self._divisor
        least = -(-cost // step) * step
        if self._most > MOST_SUMS * step:
            return least
        base = sum(p * low for p, low in zip(self._prices, limits.low, strict=True))
        asked = (limits.low, limits.high)
        if self._last[0] != asked:
            self._last = (asked, self._list_sums(limits, (self._most - base) // step))
        sums = self._last[1]
        rest = max(least - base, 0) // step
        above = sums >> rest
        if not above:
            return self._most + 1
        return max(base + step * (rest + (above & -above).bit_length() - 1), least)

    def _list_sums(self, limits: Limits, most: int) -> int:
        """Bit n is set where boards over the least cost n steps together."""
        if most < 0:
            return 0
        mask = (1 << (most + 1)) - 1
        sums = 1
        for price, low, high in zip(self._prices, limits.low, limits.high, strict=True):
            step = price // self._divisor
            if step == 0:
                continue
            count = most // step if high is None else min(high - low, most // step)
            for times in _doubling(count):
                sums |= (sums << (step * times)) & mask
        return sums


def _doubling(count: int) -> Sequence[int]:
    parts, times = [], 1
    while count > 0:
        parts.append(min(times, count))
        count -= parts[-1]
        times *= 2
    return parts
