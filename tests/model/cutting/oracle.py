"""The cheapest plan of a small task by two ways that share nothing with the planner but end in scipy's MILP.

One lists every way to fill a board. The other gives each piece to a board and knows nothing of patterns.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cache
from itertools import permutations, product
from math import ceil

import numpy as np
from scipy.optimize import Bounds, LinearConstraint, milp

from model.cutting.task import Stock, Task, Wanted
from tests.model.cutting.checker import CLOSE, lane_end

Counts = tuple[int, ...]


@dataclass(frozen=True)
class Optimum:
    """The least cost, and the least number of boards at that cost."""

    cost: int
    boards: int


def find_optimum(task: Task) -> Optimum | None:
    """Of all plans that make every piece; None where there is none."""
    demand = tuple(piece.count for piece in task.wanted)
    columns = [(s, fill) for s, stock in enumerate(task.stock) for fill in list_fillings(task, stock)]
    if not columns:
        return None if any(demand) else Optimum(0, 0)
    made = np.array([fill for _, fill in columns], dtype=float).T
    used = np.array([[s == row for s, _ in columns] for row in range(len(task.stock))], dtype=float)
    most = [sum(demand) if each.supply is None else each.supply for each in task.stock]
    price = np.array([task.stock[s].price for s, _ in columns], dtype=float)
    rows = [LinearConstraint(made, lb=demand), LinearConstraint(used, ub=most)]
    cost = _solve(price, rows)
    if cost is None:
        return None
    boards = _solve(np.ones(len(columns)), [*rows, LinearConstraint(price[None, :], ub=cost + 0.5)])
    assert boards is not None
    return Optimum(cost, boards)


def _solve(price: np.ndarray, rows: Sequence[LinearConstraint]) -> int | None:
    answer = milp(price, constraints=rows, integrality=np.ones(len(price)), options={"mip_rel_gap": 0})
    return None if answer.x is None else round(float(price @ np.rint(answer.x)))


def list_fillings(task: Task, stock: Stock) -> list[Counts]:
    """What can come out of one board; nothing that is part of another filling. Batches all or none."""
    room = stock.width - 2 * stock.trim_edges
    found: set[Counts] = set()
    widths = sorted({piece.width for piece in task.wanted})
    lanes = {w: _list_lanes(task, stock, w, [p.width <= w for p in task.wanted]) for w in widths if w <= room}
    if stock.width in widths:
        holds = [p.width == stock.width or p.width <= room for p in task.wanted]
        found.update(_list_lanes(task, stock, stock.width, holds))
    demand = tuple(piece.count for piece in task.wanted)
    found.update(_list_ripped(lanes, room + task.kerf, task.kerf, demand))
    return _keep_largest(found)


def _list_ripped(lanes: dict[int, list[Counts]], room: int, kerf: int, demand: Counts) -> Iterator[Counts]:
    """Sums of lanes that lie beside each other, from wide to narrow."""
    widths = sorted(lanes, reverse=True)

    def extend(start: int, left: int, sums: Counts) -> Iterator[Counts]:
        if any(sums):
            yield sums
        for at in range(start, len(widths)):
            if widths[at] + kerf <= left:
                for lane in lanes[widths[at]]:
                    more = tuple(min(a + b, d) for a, b, d in zip(sums, lane, demand, strict=True))
                    if more != sums:
                        yield from extend(at, left - widths[at] - kerf, more)

    yield from extend(0, room, (0,) * len(demand))


def _list_lanes(task: Task, stock: Stock, width: int, holds: Sequence[bool]) -> list[Counts]:
    """Largest fillings of one lane, of the pieces that `holds` lets into it."""
    room = stock.length - 2 * stock.trim_ends
    found: set[Counts] = set()

    def extend(counts: list[int], at: int) -> None:
        if at == len(counts):
            if _batches_whole(task.wanted, counts):
                found.add(tuple(counts))
            return
        for number in range(task.wanted[at].count * holds[at] + 1):
            counts[at] = number
            pieces = [p for p, n in zip(task.wanted, counts, strict=True) for _ in range(n)]
            if pieces and shortest(tuple(pieces), width, task.kerf) > room + CLOSE:
                break
            extend(counts, at + 1)
        counts[at] = 0

    extend([0] * len(task.wanted), 0)
    return _keep_largest(found)


def _batches_whole(wanted: Sequence[Wanted], counts: Sequence[int]) -> bool:
    shares = {}
    for piece, number in zip(wanted, counts, strict=True):
        if piece.batch and piece.count:
            shares.setdefault(piece.batch, set()).add((number > 0, number == piece.count))
    return all(len(share) == 1 and share <= {(False, False), (True, True)} for share in shares.values())


@cache
def shortest(pieces: tuple[Wanted, ...], width: int, kerf: int) -> int:
    """The least whole length that pieces take in a lane, in any order, any of them turned."""
    if not any(piece.mitre_low or piece.mitre_high for piece in pieces):
        return sum(piece.length + kerf for piece in pieces) - kerf
    turns = list(product((False, True), repeat=len(pieces)))
    return min(
        ceil(lane_end(order, turn, width, kerf) - CLOSE)
        for order in set(permutations(pieces))
        for turn in turns
    )


def _keep_largest(found: set[Counts]) -> list[Counts]:
    ranked = sorted((f for f in found if any(f)), key=sum, reverse=True)
    kept: list[Counts] = []
    for each in ranked:
        if not any(all(a <= b for a, b in zip(each, other, strict=True)) for other in kept):
            kept.append(each)
    return kept


def assign_pieces(task: Task, most: int | None = None, seconds: float | None = None) -> int | None:
    """The least cost where every piece is as wide as every board, square and of no batch.

    With `most` boards of each stock at most, and what was found after `seconds`.
    """
    pieces = [piece for piece in task.wanted for _ in range(piece.count)]
    boards = [s for s in task.stock for _ in range(min(s.supply or most or len(pieces), len(pieces)))]
    boards = [board for board in boards if board.supply != 0]
    if not pieces or not boards:
        return None if pieces else 0
    n, m = len(pieces), len(boards)
    price = np.concatenate([[board.price for board in boards], np.zeros(n * m)])
    once = np.hstack([np.zeros((n, m)), np.kron(np.eye(n), np.ones(m))])
    size = np.array([piece.length + task.kerf for piece in pieces], dtype=float)
    room = np.diag([-(b.length - 2 * b.trim_ends + task.kerf) for b in boards]).astype(float)
    rows = [
        LinearConstraint(once, lb=1, ub=1),
        LinearConstraint(np.hstack([room, np.kron(size[None, :], np.eye(m))]), ub=0),
        LinearConstraint(_alike_in_order(boards, n), lb=0),
    ]
    answer = milp(
        price,
        constraints=rows,
        integrality=np.ones(len(price)),
        bounds=Bounds(0, 1),
        options={"mip_rel_gap": 0} | ({} if seconds is None else {"time_limit": seconds}),
    )
    return None if answer.x is None else round(float(price @ np.rint(answer.x)))


def _alike_in_order(boards: Sequence[Stock], pieces: int) -> np.ndarray:
    """Of two boards of one stock the first is taken first: no plan is lost, and fewer are looked at."""
    m = len(boards)
    rows = [np.zeros(m + pieces * m)]
    for at in range(m - 1):
        if boards[at] is boards[at + 1]:
            row = np.zeros(m + pieces * m)
            row[at], row[at + 1] = 1, -1
            rows.append(row)
    return np.array(rows)
