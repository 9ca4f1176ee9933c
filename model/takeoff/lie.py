"""How a piece lies in its place, in words for the cut list: its grain, its hand and which faces show."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence

from model.board import AXES, Board, StockKind
from model.takeoff.faces import Face
from model.takeoff.naming import list_hands
from model.takeoff.surfaces import Surfaces

GRAIN = {"x": "level", "y": "upright", "z": "front to back"}
LEAST_SHOWN = 1.0
"""Square inches under which a face is not said to show. Shop choice."""
LEAST_PART = 0.05
"""Part of all that shows of a piece under which a face is not named. Shop choice."""
NOTHING_SHOWS = "none"
MOULDED = "moulded face"


def describe_grain(board: Board) -> str:
    """Which way the grain runs in place; of a sheet, that of its face."""
    words = GRAIN[board.length_axis]
    return f"face {words}" if board.stock.kind is StockKind.PANEL else words


def find_hand(boards: Sequence[Board], twins: Sequence[Board]) -> str:
    """``left`` or ``right`` of the opening for like `boards` that have mirror `twins`, or ``left-hand``.

    That is which end of their own front they go to, where they stand on both sides of the opening.
    ``either`` for those that may be turned.
    """
    if not twins:
        return "either"
    middles = [board.bounds[0][0] + board.bounds[1][0] for board in boards]
    if all(x < 0 for x in middles):
        return "left"
    return "right" if all(x > 0 for x in middles) else list_hands([boards, twins])[0] or "handed"


def describe_shown(surfaces: Surfaces, which: Iterable[int]) -> str:
    """The faces of like boards that show, the largest first: ``front, underside``."""
    areas: Counter[str] = Counter()
    chosen = set(which)
    for face, seen in zip(surfaces.faces, surfaces.seen, strict=True):
        if face.owner in chosen and seen.area > 0:
            areas[_name_face(surfaces.boards[face.owner], face)] += seen.area
    least = max(LEAST_SHOWN, LEAST_PART * sum(areas.values()))
    names = [name for name, area in areas.most_common() if area >= least]
    return ", ".join(names) or NOTHING_SHOWS


def _name_face(board: Board, face: Face) -> str:
    """What a face is called in place: of an end its own word, of a moulding's section one word for all."""
    k = max(range(3), key=lambda i: abs(float(face.normal[i])))
    if AXES[k] == board.length_axis:
        return "end"
    if board.stock.kind is StockKind.MOULDING:
        return MOULDED
    ahead = face.normal[k] > 0
    if k == 0:
        middle = board.bounds[0][0] + board.bounds[1][0]
        return "side" if middle == 0 else "outer side" if ahead == (middle > 0) else "inner side"
    names = {1: ("underside", "top"), 2: ("back", "front")}
    return names[k][int(ahead)]
