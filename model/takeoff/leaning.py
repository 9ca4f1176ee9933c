"""Edges sawn askew on the face of a standing piece, in figures and words for the shop."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import atan, degrees

from model.board import Board, Point2
from model.takeoff.saw_angles import format_degrees
from model.units import LengthStyle, format_length


@dataclass(frozen=True, slots=True)
class AskewEdge:
    """A stretch of an edge: `low` and `high` inches up from the piece's foot, `inward` how far it comes in.

    Below nothing it goes out instead.
    """

    low: float
    high: float
    inward: float

    @property
    def angle(self) -> float:
        """Degrees off the upright."""
        return degrees(atan(abs(self.inward) / (self.high - self.low)))

    def describe(self, style: LengthStyle) -> str:
        """``1/2" in between 8" and 3'-7" up, 0.8° off``."""
        way = "in" if self.inward > 0 else "out"
        far, low, high = (format_length(size, style) for size in (abs(self.inward), self.low, self.high))
        return f"{far} {way} between {low} and {high} up, {format_degrees(self.angle)} off"


def list_askew(board: Board) -> tuple[AskewEdge, ...]:
    """The askew edges of a piece whose face is its section and stands upright, the inner one first."""
    if board.axis != "z" or board.grain != "y":
        return ()
    foot = board.bounds[0][1]
    found = []
    # Counter-clockwise, what rises lies on the right and what falls on the left.
    for (x0, y0), (x1, y1) in pairwise([*board.section, board.section[0]]):
        if x0 != x1 and y1 > y0:
            found.append((abs(x0), AskewEdge(y0 - foot, y1 - foot, x0 - x1)))
        elif x0 != x1 and y1 < y0:
            found.append((abs(x0), AskewEdge(y1 - foot, y0 - foot, x0 - x1)))
    return tuple(edge for _, edge in sorted(found, key=lambda pair: pair[0]))


def widths_at_ends(board: Board) -> Point2:
    """Widths at the foot and at the head of such a piece, inches."""
    foot, head = board.bounds[0][1], board.bounds[1][1]
    spans = ([x for x, y in board.section if y == level] for level in (foot, head))
    first, last = (max(xs) - min(xs) for xs in spans)
    return first, last


def describe_askew(board: Board, style: LengthStyle) -> list[str]:
    """How such a piece is sawn to shape; nothing for any other."""
    edges = list_askew(board)
    if not edges:
        return []
    foot, head = (format_length(width, style) for width in widths_at_ends(board))
    return [f"sawn to shape, {foot} wide at its foot, {head} at its head: {_say_edges(edges, style)}"]


def _say_edges(edges: Sequence[AskewEdge], style: LengthStyle) -> str:
    words = [edge.describe(style) for edge in edges]
    if len(words) == 1:
        return f"one edge {words[0]}"
    if words[0] == words[1]:
        return f"both edges {words[0]}"
    return f"one edge {words[0]}, the other {words[1]}"
