"""Masonry behind a column that leans: how far it falls back, and the cuts that follow it.

The plane z = 0 touches the masonry where it stands furthest out, so that what leans only ever falls back
from it, and neither fronts nor shelf move with a reading. What is done about it elsewhere is
model.check.plumb's.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from model.board import Board, End, Point2

if TYPE_CHECKING:
    from model.build.lines import Side

HAIR = 1e-9
STEEPEST = 1 / 12
"""Most that masonry may be out of plumb for each inch of height; beyond it the level slipped. Shop choice."""


@dataclass(frozen=True, slots=True)
class Lean:
    """Masonry from `base` up to `top` (y) that is `amount` out of plumb over that height.

    Above nothing it leans toward the room at the top, below nothing away from it.
    """

    base: float
    top: float
    amount: float

    @property
    def slope(self) -> float:
        """How far its face comes forward for each inch up."""
        return self.amount / (self.top - self.base)

    @property
    def most(self) -> float:
        """How far it falls back where it does most: at its foot, or at its head."""
        return abs(self.amount)

    def set_back(self, y: float) -> float:
        """How far it lies behind where it stands furthest out; level beyond its ends."""
        held = min(max(y, self.base), self.top)
        furthest_out = self.top if self.amount > 0 else self.base
        return self.slope * (furthest_out - held)

    def cut(self, back: float) -> End:
        """The end of a piece that runs out from masonry that stands furthest out at z = `back`."""
        furthest_out = self.top if self.amount > 0 else self.base
        return End(back - self.slope * furthest_out, 0.0, self.slope)


def follow_masonry(side: Side, boards: tuple[Board, ...]) -> tuple[Board, ...]:
    """`boards`, those that run out from masonry that leans behind their column cut there to follow it.

    What stops before the masonry, at a slip say, is left square, and so is what rises over the masonry's top:
    the wall above it stands where it is.
    """
    if side.lean is None:
        return boards
    back = max(side.inner_back, side.outer_back)
    cut, lean = side.lean.cut(back), side.lean
    return tuple(replace(b, low=cut) if _ends_at(b, lean, back) else b for b in boards)


def _ends_at(board: Board, lean: Lean, back: float) -> bool:
    at_back = board.axis == "z" and board.low == End(back)
    return at_back and max(v for _, v in board.section) <= lean.top + HAIR


def back_edge(
    y: Point2, back: float, lean: Lean | None, step: float | None, wall: float
) -> tuple[Point2, ...]:
    """The (y, z) corners of an upright piece's back edge from its foot up, over a step back to the wall."""
    top = y[1] if step is None else step
    first, last = (back - (lean.set_back(at) if lean else 0.0) for at in (y[0], top))
    above = () if step is None else ((y[1], wall),) if last == wall else ((step, wall), (y[1], wall))
    return ((y[0], first), (top, last), *above)
