"""Findings of clearance drawn: the keep-out on this surround, the tightest place, how far off it is."""

from __future__ import annotations

from collections.abc import Iterator
from math import hypot

from model.check.clearance import HAIR
from model.check.concealed import BESIDE
from model.check.finding import Finding
from model.check.keep_out import list_allowed_beside, list_allowed_slope, list_keep_out_rings
from model.reference.clearance import IRC_FRONT_SPACE
from model.surround import Surround
from model.units import format_length
from render.board_outline import place_point
from render.drawing import Lines, Mark, Pen, Polyline
from render.explained_base import (
    LINE,
    draw_above,
    draw_cross,
    draw_front,
    draw_side,
    measure,
    stand_beside,
    stand_under,
    write,
)


def draw_clearance_page(surround: Surround, finding: Finding, ratio: float) -> list[Mark]:
    """The front, with the side where the height decides, from above where the distance beside does."""
    front = list(_draw_front(surround, finding, ratio))
    if finding.at is not None and _is_beside(surround, finding):
        return stand_under(front, _draw_above(surround, finding, ratio), ratio)
    return stand_beside(front, _draw_side(surround, finding, ratio), ratio)


def draw_concealed_page(surround: Surround, finding: Finding, ratio: float) -> list[Mark]:
    """The front with hidden wood picked out, the side with the air it would keep off the masonry."""
    front = [*draw_front(surround, finding.boards)]
    if finding.part == BESIDE:
        return stand_under(front, _draw_air_beside(surround, finding, ratio), ratio)
    return stand_beside(front, _draw_air(surround, finding, ratio), ratio)


def _is_beside(surround: Surround, finding: Finding) -> bool:
    x, y, _ = finding.at or (0.0, 0.0, 0.0)
    beside, above = abs(x) - surround.layout.opening_side, y - surround.layout.opening_top
    return beside > HAIR and beside >= above


def _draw_front(surround: Surround, finding: Finding, ratio: float) -> Iterator[Mark]:
    layout = surround.layout
    mouth, top = layout.opening_side, layout.opening_top
    yield from draw_front(surround, finding.boards)
    yield from (Polyline(Pen.CLEARANCE, ring, True) for ring in list_keep_out_rings(surround.job.site))
    if finding.at is None:
        return
    x, y = place_point(finding.at, "front")
    yield draw_cross(finding.at, "front", ratio)
    edge = mouth if x >= 0 else -mouth
    off_side, over = abs(x) > mouth + HAIR, y > top + HAIR
    if off_side:
        yield measure(surround, (edge, y), (x, y), False, layout.floor - LINE * ratio, ratio)
    if over:
        yield measure(surround, (x, top), (x, y), True, _outside(surround, x, ratio), ratio)
    if off_side and over:
        straight = format_length(hypot(x - edge, y - top), surround.job.about.length_style)
        yield Lines(Pen.DIMENSION, ((edge, top, x, y),))
        at = (edge / 2, top - LINE * ratio)
        yield write(f"straight {straight}", at, ratio, pen=Pen.CLEARANCE)


def _draw_side(surround: Surround, finding: Finding, ratio: float) -> Iterator[Mark]:
    layout = surround.layout
    yield from draw_side(surround, finding.boards)
    slope = list_allowed_slope(surround.job.site)
    if len(slope) > 1:
        yield Polyline(Pen.CLEARANCE, tuple((-out, layout.opening_top + above) for above, out in slope))
    if finding.at is None:
        return
    yield draw_cross(finding.at, "side", ratio)
    at = place_point(finding.at, "side")
    if finding.at[2] > HAIR:
        yield measure(surround, (0.0, at[1]), at, False, layout.floor - LINE * ratio, ratio)


def _draw_above(surround: Surround, finding: Finding, ratio: float) -> Iterator[Mark]:
    """What is allowed beside the opening, mirrored, and how far out the tightest place is."""
    assert finding.at is not None
    mouth = surround.layout.opening_side
    yield from draw_above(surround, finding.boards)
    allowed = list_allowed_beside(surround.job.site)
    for turn in (-1.0, 1.0) if len(allowed) > 1 else ():
        yield Polyline(Pen.CLEARANCE, tuple((turn * (mouth + off), -out) for off, out in allowed))
    yield draw_cross(finding.at, "plan", ratio)
    x, out = place_point(finding.at, "plan")
    if finding.at[2] > HAIR:
        yield measure(surround, (x, 0.0), (x, out), True, _outside(surround, x, ratio), ratio)


def _outside(surround: Surround, x: float, ratio: float) -> float:
    """A dimension line clear of all boards, on the side of the centre line that `x` is on."""
    out = max(abs(board.bounds[i][0]) for board in surround.boards for i in (0, 1)) + LINE * ratio
    return out if x >= 0 else -out


def _draw_air_beside(surround: Surround, finding: Finding, ratio: float) -> Iterator[Mark]:
    """From above: the facing that stands proud, and the air that framing keeps off its sides."""
    proud, side = surround.job.site.facing.proud, surround.layout.facing_side
    yield from draw_above(surround, finding.boards)
    for turn in (-1.0, 1.0):
        edge, off = turn * side, turn * (side + IRC_FRONT_SPACE.value)
        yield Lines(Pen.SITE, ((edge, 0.0, edge, proud), (edge, proud, turn * (side + 6), proud)))
        yield Lines(Pen.CLEARANCE, ((off, 0.0, off, proud),))
    if finding.at is not None:
        yield draw_cross(finding.at, "plan", ratio)
        turn = 1.0 if finding.at[0] > 0 else -1.0
        line = -surround.layout.shelf_foremost - LINE * ratio
        near = (turn * (side + (finding.measured or 0.0)), 0.0)
        yield measure(surround, (turn * side, 0.0), near, False, line, ratio)


def _draw_air(surround: Surround, finding: Finding, ratio: float) -> Iterator[Mark]:
    yield from draw_side(surround, finding.boards)
    layout, air = surround.layout, IRC_FRONT_SPACE.value
    yield Lines(Pen.CLEARANCE, ((-air, layout.floor, -air, layout.shelf_top),))
    yield measure(
        surround, (0.0, layout.floor), (-air, layout.floor), False, layout.floor - LINE * ratio, ratio
    )
    if finding.at is not None:
        yield draw_cross(finding.at, "side", ratio)
