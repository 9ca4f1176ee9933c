"""Each board's own tightest place by the clearance rules, for pictures and lists of all of them.

Parts are judged in model.check.mantel and model.check.manual; this is worked out on request only.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from model.board import Point3
from model.check.clearance import straight_distance
from model.check.finding import Status
from model.check.in_force import list_rules
from model.check.nearest import list_points
from model.check.part import name_part
from model.check.worst import TIE_DIGITS, judge, rank_spares
from model.surround import Surround


@dataclass(frozen=True, slots=True)
class BoardDistance:
    """One board of a `part`: where it is tightest, how far from the opening it is there and must be, inches.

    `needed` is infinite where no distance is enough, both are NaN where nothing is known.
    """

    mark: str
    part: str
    at: Point3
    measured: float
    needed: float
    status: Status


def list_board_distances(surround: Surround) -> tuple[BoardDistance, ...]:
    """One for each board in their order; none where no rule is known."""
    rules, planes = list_rules(surround.job.site)
    if not rules:
        return ()
    points = list_points(surround.corners, surround.job.site.opening, planes)
    distance = straight_distance(points.beside, points.above)
    held = [rule.hold(points.projection, points.beside, points.above, distance) for rule in rules]
    spares = np.array([one.spare for one in held])
    known = rank_spares(spares)
    ruling = np.argmin(known, axis=0)
    tightest = np.round(known[ruling, np.arange(len(ruling))], TIE_DIGITS)
    order = np.lexsort((-np.round(points.projection, TIE_DIGITS), tightest, points.board))
    first = np.searchsorted(points.board[order], np.arange(len(surround.boards)))
    found = []
    parts = map(name_part, surround.boards)
    for mark, part, i in zip(surround.marks, parts, order[first].tolist(), strict=True):
        one, spare = held[ruling[i]], float(spares[ruling[i], i])
        x, y, z = points.room[i].tolist()
        measured, needed = float(one.measured[i]), float(one.needed[i])
        found.append(BoardDistance(mark, part, (x, y, z), measured, needed, judge(spare, spare)))
    return tuple(found)
