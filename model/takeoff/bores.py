"""Boards that a bolt or stud left in the masonry stands in, and are bored or notched over it on the bench.

Edges that are notched for one in the drawing already are model.build.behind's.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from model.board import CROSS, Board, Point2, StockKind
from model.build.behind import BOLT, ROUND_BOLT
from model.build.obstacles import Obstacle
from model.units import LengthStyle, format_length

if TYPE_CHECKING:
    from model.surround import Surround

HAIR = 1e-6
SOUND = 0.125
"""Wood left before a hole that does not go through, in. Shop choice."""
RIM = 0.25
"""Wood left beside a hole in a board, in. Shop choice."""


def stands_in(board: Board, obstacle: Obstacle) -> bool:
    """Whether any of a board's wood lies where the obstacle does; a mitred end counts to its long point."""
    spans = (obstacle.x, obstacle.y, obstacle.z)
    low, high = board.bounds
    if any(min(high[i], spans[i][1]) - max(low[i], spans[i][0]) <= HAIR for i in range(3)):
        return False
    iu, iv = CROSS[board.axis]
    return len(board.section) == 4 or _area_within(board.section, spans[iu], spans[iv]) > HAIR


def _area_within(section: Sequence[Point2], u: Point2, v: Point2) -> float:
    """Area of a polygon within a rectangle, clipped by one side of that after another."""
    points = list(section)
    for axis, limit, way in ((0, u[0], 1), (0, u[1], -1), (1, v[0], 1), (1, v[1], -1)):
        points = _clip(points, axis, limit, way)
        if not points:
            return 0.0
    ring = zip(points, [*points[1:], points[0]], strict=True)
    return abs(sum(a * d - c * b for (a, b), (c, d) in ring)) / 2


def _clip(points: Sequence[Point2], axis: int, limit: float, way: int) -> list[Point2]:
    """What of a polygon lies on one side of a line; `way` 1 keeps what is over `limit`."""
    kept: list[Point2] = []
    for one, other in zip(points, [*points[1:], points[0]], strict=True):
        first, second = (way * (p[axis] - limit) for p in (one, other))
        if first >= 0:
            kept.append(one)
        if first * second < 0:
            part = first / (first - second)
            kept.append((one[0] + part * (other[0] - one[0]), one[1] + part * (other[1] - one[1])))
    return kept


def makes_way(board: Board, obstacle: Obstacle) -> bool:
    """Whether a hole or a notch takes care of a bolt: in framing, or within a flat board on the masonry."""
    if obstacle.kind != BOLT:
        return False
    if board.stock.kind is StockKind.FRAMING:
        return True
    low, high = board.bounds
    inside = all(
        low[i] + RIM <= span[0] - ROUND_BOLT and span[1] + ROUND_BOLT <= high[i] - RIM
        for i, span in ((0, obstacle.x), (1, obstacle.y))
    )
    blind = low[2] <= obstacle.z[0] + HAIR and obstacle.z[1] + SOUND <= high[2]
    return inside and blind and board.worked is None and not board.curved


def list_bores(surround: Surround) -> dict[int, list[str]]:
    """Words for each board that is bored or notched over a bolt, by its index."""
    work: dict[int, list[str]] = {}
    style = surround.job.about.length_style
    for obstacle in surround.layout.behind:
        for i, board in enumerate(surround.boards):
            if makes_way(board, obstacle) and stands_in(board, obstacle):
                work.setdefault(i, []).append(_describe(board, obstacle, style))
    return work


def _describe(board: Board, bolt: Obstacle, style: LengthStyle) -> str:
    """Size, depth where it does not go through, and the middle of the hole from two sides of the piece."""
    low, high = board.bounds
    size = format_length(bolt.x[1] - bolt.x[0] + 2 * ROUND_BOLT, style)
    across, up = (
        format_length((span[0] + span[1]) / 2 - low[i], style) for i, span in ((0, bolt.x), (1, bolt.y))
    )
    through = bolt.z[1] + ROUND_BOLT >= high[2]
    deep = "through" if through else f"{format_length(bolt.z[1] + ROUND_BOLT - low[2], style)} deep"
    whole = all(
        low[i] <= span[0] - ROUND_BOLT and span[1] + ROUND_BOLT <= high[i]
        for i, span in ((0, bolt.x), (1, bolt.y))
    )
    verb = f"bore {size} dia. {deep}" if whole else f"notch one edge {size} wide {deep}"
    end, edge = (f"{across} from its left", f"{up} from its lower")
    ways = (f"{end} end", f"{edge} edge") if board.length_axis == "x" else (f"{edge} end", f"{end} edge")
    return f"{verb} over the {bolt.name}, centre {ways[0]} and {ways[1]}"
