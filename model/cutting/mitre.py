"""Mitred ends that share one cut: what that saves, and in which order pieces lie so that most of them do.

A flat piece turned half round lies with its long edge where its neighbour's short one is. Then ends of the
same name and the same mitre meet along one line: high to high, low to low. Only pieces as wide as their lane
are laid so, one mitre to a lane; every other end is freed by a square cut at its long point.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import isqrt

from model.cutting.task import Wanted

LOW, HIGH = 1, 2
"""Which ends of a piece can share a cut, as bits."""


def saving(mitre: int, width: int, kerf: int) -> int:
    """Units that two ends take less where one cut frees both; 0 where it saves nothing.

    A blade across a mitre takes kerf / cos of it along the board, rounded up here.
    """
    dust = _root_up(-(-(kerf * kerf * (mitre * mitre + width * width)) // (width * width)))
    return max(mitre + kerf - dust, 0)


def _root_up(number: int) -> int:
    return isqrt(number - 1) + 1 if number > 0 else 0


def list_ends(piece: Wanted, width: int, mitre: int) -> int:
    """The ends of a piece that can share a cut in a lane, as bits."""
    if piece.width != width or not mitre or piece.mitre_low + piece.mitre_high > piece.length:
        return 0
    return LOW * (piece.mitre_low == mitre) + HIGH * (piece.mitre_high == mitre)


def count_joints(both: int, low: int, high: int) -> int:
    """How many cuts are shared at most by so many pieces with both ends, the low or the high end mitred."""
    if not low and not high:
        return max(both - 1, 0)
    return (both + low) // 2 + (both + high) // 2


def arrange(pieces: Sequence[Wanted], width: int, mitre: int) -> tuple[list[Wanted], list[bool]]:
    """Pieces in an order that shares most cuts, and which of them are turned."""
    sorts: dict[int, list[Wanted]] = {0: [], LOW: [], HIGH: [], LOW | HIGH: []}
    for piece in pieces:
        sorts[list_ends(piece, width, mitre)].append(piece)
    chain = _Chain()
    open_end = _first_end(len(sorts[LOW | HIGH]), len(sorts[LOW]), len(sorts[HIGH]))
    if open_end and sorts[open_end]:
        chain.start(sorts[open_end].pop(), open_end)
    for piece in sorts[LOW | HIGH]:
        open_end = chain.follow(piece, open_end or HIGH, both=True)
    if open_end and sorts[open_end]:
        chain.follow(sorts[open_end].pop(), open_end, both=False)
    for end in (LOW, HIGH):
        for at, piece in enumerate(sorts[end]):
            if at % 2:
                chain.follow(piece, end, both=False)
            else:
                chain.start(piece, end)
    for piece in sorts[0]:
        chain.follow(piece, LOW, both=False)
    return chain.pieces, chain.turned


def _first_end(both: int, low: int, high: int) -> int:
    """The mitred end that the chain of pieces mitred at both ends starts from; 0 for none."""
    if not both or not (low or high):
        return 0
    if both % 2 == 0 and max(low, high) >= 2:
        return LOW if low >= 2 else HIGH
    return LOW if low else HIGH


class _Chain:
    """Pieces laid one after the other."""

    def __init__(self) -> None:
        self.pieces: list[Wanted] = []
        self.turned: list[bool] = []

    def start(self, piece: Wanted, end: int) -> None:
        """Lay a piece so that its mitred end is open to the next one."""
        self._lay(piece, end == LOW)

    def follow(self, piece: Wanted, end: int, both: bool) -> int:
        """Lay a piece with `end` first; the end that is open now, 0 where it is square."""
        self._lay(piece, end == HIGH)
        return (LOW | HIGH) - end if both else 0

    def _lay(self, piece: Wanted, turned: bool) -> None:
        self.pieces.append(piece)
        self.turned.append(turned)


def shortest(pieces: Sequence[Wanted], width: int, kerf: int) -> tuple[int, int]:
    """The least length that pieces take beside each other in a lane, and the mitre they share there or 0."""
    plain = sum(piece.length + kerf for piece in pieces) - kerf
    best = (plain, 0)
    for mitre in sorted({m for piece in pieces for m in (piece.mitre_low, piece.mitre_high) if m}):
        ends = [list_ends(piece, width, mitre) for piece in pieces]
        joints = count_joints(ends.count(LOW | HIGH), ends.count(LOW), ends.count(HIGH))
        best = min(best, (plain - joints * saving(mitre, width, kerf), mitre))
    return best
