"""How a solid panel floats in the groove of its frame: how deep that is, and how large the panel is cut.

It is cut at the moisture its wood has on the bench. At the dampest it must leave the grooves some play, at
the driest stay in them even if it is pushed over to one side. Whether a frame has room for that: groove_room.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import floor

from model.board import Board, Point2, StockKind
from model.reference.panels import ENDS, LEAST_HELD, PLAY, USUAL_DEPTH

STEP = 1 / 16
"""Panels are cut down to a step of the tape and grooves made as deep as one, in. Shop choice."""
HAIR = 1e-9
Rect = tuple[float, float, float, float]


@dataclass(frozen=True, slots=True)
class Swing:
    """What an inch across the grain gains from the bench to the dampest, and loses to the driest, in.

    `built`, `damp` and `dry` are the moistures, %: on the bench, at the dampest and at the driest.
    """

    built: float
    damp: float
    dry: float
    swells: float
    shrinks: float


@dataclass(frozen=True, slots=True)
class Groove:
    """A groove `depth` in. deep round all panels of one frame, whose wood moves by `swing`."""

    depth: float
    swing: Swing

    def width(self, across: float) -> float:
        """Cut width of a panel across its grain, in an opening that is `across` in. wide."""
        return _step_down((across + 2 * self.depth - 2 * PLAY.value) / (1 + self.swing.swells))

    def length(self, along: float) -> float:
        """Cut length of a panel in an opening that is `along` in. long."""
        return _step_down(along + 2 * self.depth - ENDS.value)

    def free(self, across: float) -> float:
        """What is left of both grooves together at the dampest, in."""
        return across + 2 * self.depth - self.width(across) * (1 + self.swing.swells)

    def held(self, across: float) -> float:
        """How far a panel reaches into one groove at the driest, pushed to the bottom of the other, in."""
        return self.width(across) * (1 - self.swing.shrinks) - across - self.depth

    def cut(self, opening: Rect) -> tuple[Point2, Point2, str]:
        """x and y of the panel in the middle of its opening, and the axis that its grain runs along."""
        x0, y0, x1, y1 = opening
        if is_upright(opening):
            return _about(x0, x1, self.width(x1 - x0)), _about(y0, y1, self.length(y1 - y0)), "y"
        return _about(x0, x1, self.length(x1 - x0)), _about(y0, y1, self.width(y1 - y0)), "x"


def is_upright(opening: Rect) -> bool:
    """Whether a panel's grain runs up: along its longer side."""
    x0, y0, x1, y1 = opening
    return y1 - y0 >= x1 - x0


def measure_across(opening: Rect) -> float:
    """How wide an opening is across the grain of its panel, in."""
    x0, y0, x1, y1 = opening
    return min(x1 - x0, y1 - y0)


def find_groove(openings: Sequence[Rect], swing: Swing, most: float) -> Groove | None:
    """The shallowest groove that holds every panel, no deeper than `most` in.; None where there is none."""
    groove = Groove(USUAL_DEPTH.value, swing)
    while groove.depth <= most + HAIR:
        if all(groove.held(measure_across(opening)) >= LEAST_HELD.value for opening in openings):
            return groove
        groove = Groove(groove.depth + STEP, swing)
    return None


def is_floating(board: Board) -> bool:
    """Whether a board is a solid panel, which nothing may hold but its groove and a pin at each end."""
    return board.stock.kind is StockKind.BOARD and board.role.endswith(" panel")


def _about(low: float, high: float, size: float) -> Point2:
    middle = (low + high) / 2
    return middle - size / 2, middle + size / 2


def _step_down(size: float) -> float:
    return floor(size / STEP + HAIR) * STEP
