"""The sub-assemblies that are put together on the bench, and which of them are mirror twins.

What holds their pieces together stands in model.takeoff.assembly_joints.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass

from model.board import Board
from model.takeoff.marks import GRID

Place = tuple[object, ...]


@dataclass(frozen=True, slots=True)
class Assembly:
    """What is lifted as one: its name and the places of its boards in the list of boards.

    `twin` names the sub-assembly that is the same turned over, "" where there is none.
    """

    name: str
    pieces: tuple[int, ...]
    twin: str = ""


def list_assemblies(boards: Sequence[Board]) -> tuple[Assembly, ...]:
    """Every sub-assembly of `boards` in the order they go up; each of two mirror twins names the other."""
    pieces: dict[str, list[int]] = {}
    for i, board in enumerate(boards):
        pieces.setdefault(board.assembly, []).append(i)
    twins = _find_twins(boards, pieces)
    return tuple(Assembly(name, tuple(own), twins.get(name, "")) for name, own in pieces.items())


def _find_twins(boards: Sequence[Board], pieces: dict[str, list[int]]) -> dict[str, str]:
    """Pairs stand on either side of the opening: ``left column`` and ``right column``."""
    twins: dict[str, str] = {}
    for name, own in pieces.items():
        other = name.replace("left ", "right ", 1)
        if other == name or other not in pieces:
            continue
        mirrored = Counter(_place_of(boards[i].mirrored(other)) for i in own)
        if mirrored == Counter(_place_of(boards[i]) for i in pieces[other]):
            twins |= {name: other, other: name}
    return twins


def _place_of(board: Board) -> Place:
    """What a piece is and where it lies, equal for pieces that are drawn alike."""
    corners = sorted(tuple(round(value * GRID) for value in corner) for corner in board.vertices)
    bores = sorted(
        (bore.axis, *(round(value * GRID) for value in (*bore.at, *bore.size, *bore.span)))
        for bore in board.bores
    )
    return board.role, board.stock, board.length_axis, tuple(corners), tuple(bores)
