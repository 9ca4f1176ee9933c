"""Each board's own tightest place by the clearance rules, for pictures and lists of all of them.

Parts are judged in model.check.mantel and model.check.manual; this is worked out on request only.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from model.board import Point3
from model.check.clearance import HAIR, Lengths, square_distance, straight_distance
from model.check.finding import Status
from model.check.in_force import list_rules
from model.check.nearest import Points, list_points
from model.check.part import name_part
from model.check.worst import TIE_DIGITS, Rule, judge, rank_spares
from model.surround import Surround

FIGURES = ("measured", "needed")


@dataclass(frozen=True, slots=True)
class BoardDistance:
    """One board of a `part`: where it is tightest, how far from the opening it is there and must be, inches.

    `measured` runs straight to the opening's nearest point, `square` is the larger of the level and the plumb
    distance there; `is_disputed` says that only the first is enough. `needed` is infinite where no distance
    is enough, all are NaN where nothing is known.
    """

    mark: str
    part: str
    at: Point3
    measured: float
    square: float
    needed: float
    status: Status
    is_disputed: bool


def list_board_distances(surround: Surround) -> tuple[BoardDistance, ...]:
    """One for each board in their order; none where no rule is known."""
    rules, planes = list_rules(surround.job.site)
    if not rules:
        return ()
    points = list_points(surround.corners, surround.job.site.opening, planes)
    straight, square = (
        _hold(rules, points, way(points.beside, points.above)) for way in (straight_distance, square_distance)
    )
    firsts = [_list_tightest(points, spares, len(surround.boards)) for _, _, spares in (straight, square)]
    found = []
    parts = map(name_part, surround.boards)
    for mark, part, i, j in zip(surround.marks, parts, *(f.tolist() for f in firsts), strict=True):
        spares = float(straight[2][i]), float(square[2][j])
        disputed = spares[0] >= -HAIR > spares[1]
        place = j if disputed else i
        x, y, z = points.room[place].tolist()
        measured, larger, needed = (float(values[place]) for values in (straight[0], square[0], straight[1]))
        found.append(BoardDistance(mark, part, (x, y, z), measured, larger, needed, judge(*spares), disputed))
    return tuple(found)


def _hold(rules: Sequence[Rule], points: Points, distance: Lengths) -> tuple[Lengths, Lengths, Lengths]:
    """By the rule that leaves each point the least: what is measured, what is needed, what is to spare."""
    held = [rule.hold(points.projection, points.beside, points.above, distance) for rule in rules]
    spares = np.array([one.spare for one in held])
    ruling = np.argmin(rank_spares(spares), axis=0)
    every = np.arange(len(ruling))
    measured, needed = (np.array([getattr(one, name) for one in held])[ruling, every] for name in FIGURES)
    return measured, needed, spares[ruling, every]


def _list_tightest(points: Points, spares: Lengths, count: int) -> NDArray[np.intp]:
    """For each of `count` boards the index of its tightest point, of equals the one furthest out."""
    tightest = np.round(rank_spares(spares), TIE_DIGITS)
    order = np.lexsort((-np.round(points.projection, TIE_DIGITS), tightest, points.board))
    return order[np.searchsorted(points.board[order], np.arange(count))]
