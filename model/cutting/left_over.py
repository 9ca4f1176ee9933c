"""What a board or sheet leaves once its pieces are cut, as long as is worth keeping."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

from model.cutting.mitre import saving
from model.cutting.task import UNITS, Lane, SawnBoard, SawnSheet, Stock, Task, Wanted

NARROWEST = UNITS
"""A strip narrower than this is not worth keeping, units. Shop choice."""


@dataclass(frozen=True, slots=True)
class LeftOver:
    """An offcut, in units."""

    length: int
    width: int


def list_left_of_board(
    board: SawnBoard, stock: Stock, task: Task, wanted: Mapping[str, Wanted]
) -> tuple[LeftOver, ...]:
    """What is left at the end of each lane and beside all of them, the longest first."""
    usable = stock.length - 2 * stock.trim_ends
    across = stock.width - 2 * stock.trim_edges
    found = [
        LeftOver(usable - lane_length(lane, wanted, task.kerf) - task.kerf, lane.width)
        for lane in board.lanes
    ]
    beside = across - sum(lane.width + task.kerf for lane in board.lanes)
    found.append(LeftOver(usable, beside))
    return _worth_keeping(found, task.keep)


def list_left_of_sheet(sheet: SawnSheet, task: Task) -> tuple[LeftOver, ...]:
    """The parts that the plan says are left, the longest first."""
    return _worth_keeping([LeftOver(part.length, part.width) for part in sheet.left], task.keep)


def _worth_keeping(found: list[LeftOver], keep: int) -> tuple[LeftOver, ...]:
    kept = [left for left in found if left.length >= max(keep, 1) and left.width >= NARROWEST]
    return tuple(sorted(kept, key=lambda left: (-left.length, -left.width)))


def lane_length(lane: Lane, wanted: Mapping[str, Wanted], kerf: int) -> int:
    """Units of a lane that its pieces and the cuts between them take."""
    pieces = [wanted[key] for key in lane.pieces]
    shared = sum(list_shared(lane, pieces, kerf))
    return sum(piece.length for piece in pieces) + (len(pieces) - 1) * kerf - shared


def list_shared(lane: Lane, pieces: Sequence[Wanted], kerf: int) -> Iterator[int]:
    """How much less each cut between two pieces takes where it frees the mitred ends of both."""
    turns = lane.turned or (False,) * len(pieces)
    for (one, turned), (other, other_turned) in pairwise(zip(pieces, turns, strict=True)):
        after = one.mitre_low if turned else one.mitre_high
        before = other.mitre_high if other_turned else other.mitre_low
        meet = turned != other_turned and one.width == other.width == lane.width
        yield saving(after, lane.width, kerf) if meet and after and after == before else 0
