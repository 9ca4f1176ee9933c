"""A column that steps over the end of a raised hearth: its inner part on the hearth, the outer on the floor.

Where a column stands that does not is model.build.foot's.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from model.board import Board, End, Point2, block
from model.build.flutes import LEAST_STOP
from model.build.ledger import Ledger
from model.design import FLUSH, FLUTED, FRAMED, Design
from model.site import Site

if TYPE_CHECKING:
    from model.build.lines import Rect, Side

LEVEL, STEPPED = "level", "stepped"
"""What a column does at a hearth's end: the words that stand in a job file."""
LEAST_DROP = 0.5
"""A floor less far below a hearth, in., is shimmed and not stepped down to. Shop choice."""
LEAST_ON = 0.25
"""Least of a hearth beyond the inner side of a column that is to stand on it, in. Shop choice."""
OUT_OF_LEVEL = 6.0
"""Most that a floor or a foot may lie off where it was expected, in.; beyond it the tape slipped.

Shop choice."""
HAIR = 1e-6


@dataclass(frozen=True, slots=True)
class HearthStep:
    """x of the hearth's end, as if the column stood on the right, and y of the floor beyond it."""

    edge: float
    floor: float


def fit_hearth_step(
    site: Site, design: Design, name: str, span: Point2, base: float, ledger: Ledger
) -> HearthStep | None:
    """The step under a column with sides at x in `span` whose inner part stands at y = `base`; or none."""
    if design.column.over_edge != STEPPED or site.hearth.height <= 0:
        return None
    around, edge = design.plinth.projection if design.plinth.on else 0.0, site.hearth.width / 2
    if not span[0] - around < edge < span[1] + around:
        return None
    floor = _read_floor(site, name, ledger)
    reason = _why_not(site, design, span, edge, base - floor)
    if reason:
        ledger.swap("column.over_edge", STEPPED, LEVEL, reason)
        return None
    return HearthStep(edge, floor)


def _read_floor(site: Site, name: str, ledger: Ledger) -> float:
    """y of the floor beside the hearth: as read off the level line, or the hearth's height below it."""
    expected, level = -site.hearth.height, site.level
    reading = level.floor_left if name == "left" else level.floor_right
    if reading is None or level.centre is None:
        return expected
    measured = level.centre - reading
    held = min(max(measured, expected - OUT_OF_LEVEL), expected + OUT_OF_LEVEL)
    reason = f"that is more than {OUT_OF_LEVEL:g} in. off the hearth's height over the floor; measure again"
    ledger.hold(f"level.floor_{name}", reading, reading + measured - held, reason)
    return held


def _why_not(site: Site, design: Design, span: Point2, edge: float, drop: float) -> str:
    """Why the column cannot step down by `drop` at x = `edge`; empty where it can."""
    board, around = design.board.thickness, design.plinth.projection if design.plinth.on else 0.0
    if not span[0] + board + LEAST_ON <= edge <= span[1] - board:
        return "the hearth ends under one of the column's sides"
    if design.column.projection + around > site.hearth.depth:
        return "the hearth does not reach out as far as the column"
    if drop < LEAST_DROP:
        return "the floor lies no lower there"
    if design.column.kind == FLUTED and not design.plinth.on and design.flute.stop < LEAST_STOP:
        return "its flutes run down to its foot, which cannot be notched there"
    return _why_frame_cannot(design, span, edge)


def _why_frame_cannot(design: Design, span: Point2, edge: float) -> str:
    """A frame rebated or grooved for its panels takes a step between its stiles only, behind a plinth."""
    column = design.column
    behind = design.panel.reveal > design.board.thickness - FLUSH and design.groove_reveal is None
    if column.kind != FRAMED or behind:
        return ""
    stile = min(column.stile, (span[1] - span[0] - 1.0) / 2)
    between = span[0] + stile <= edge <= span[1] - stile
    return (
        ""
        if between and design.plinth.on
        else "its frame is rebated or grooved for the panels where it would be notched"
    )


def outline_foot(side: Side, rect: Rect) -> tuple[Point2, ...]:
    """(x, y) corners of what fills `rect`, on down to the floor beyond a step where it stands on the foot."""
    x0, y0, x1, y1 = rect
    step = side.step
    if step is None or x1 <= step.edge + HAIR or y0 > side.base + HAIR:
        return ((x0, y0), (x1, y0), (x1, y1), (x0, y1))
    if x0 >= step.edge - HAIR:
        return ((x0, step.floor), (x1, step.floor), (x1, y1), (x0, y1))
    return ((x0, y0), (step.edge, y0), (step.edge, step.floor), (x1, step.floor), (x1, y1), (x0, y1))


def step_down(side: Side, board: Board) -> Board:
    """`board`, on down to the floor as far as it passes the step where it stands on the column's foot."""
    (x0, y0, z0), (x1, y1, z1) = board.bounds
    outline = outline_foot(side, (x0, y0, x1, y1))
    if min(y for _, y in outline) == y0:
        return board
    if len(outline) > 4:
        section = End(z0), End(z1)
        grain = board.length_axis
        return replace(board, axis="z", section=outline, low=section[0], high=section[1], grain=grain)
    assert side.step is not None
    if board.axis == "y":
        return replace(board, low=End(side.step.floor))
    return block(
        board.role, board.assembly, board.stock, board.axis, (x0, x1), (side.step.floor, y1), (z0, z1)
    )
