"""The shelf: built up from boards with an edge band mitred round its front and ends, or a solid plank."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from math import ceil

from model.board import Board, End, Point2, Stock, block
from model.build.lines import LEAST_LAYER, Layout
from model.build.run import Profile, run_section, under
from model.moulding.outline import HAIR
from model.reference.lumber import WIDEST_BOARD

SHELF = "shelf"
END, FRONT = "edge band end", "edge band front"
OVER_COLUMN, RETURN = "edge band column front", "edge band return"
"""The edge band's pieces: a return joins both fronts where the shelf breaks forward over a column."""
STRIP, RIB = "shelf front strip", "shelf rib"
BREAK_STRIP, BREAK_RIB = "shelf break strip", "shelf break rib"
"""What keeps the layers of a hollow shelf apart, and those of its breaks."""
RIB_SPACING = 16.0
"""Most between the ribs of a hollow shelf, in. Common practice."""
RIB_WIDTH = 1.5
"""Width of a rib and of the strip that closes the front, in. Shop choice."""


def build_shelf(layout: Layout, stock: Stock) -> tuple[Board, ...]:
    """Top, underside, ribs and front strip as the thickness asks for, then the edge band; or the plank."""
    if layout.shelf_is_plank:
        return _plank(layout, stock)
    line = _front_line(layout, stock.thickness)
    top, bottom = layout.shelf_top, layout.shelf_bottom
    under_top = top - stock.thickness
    lower = min(stock.thickness, under_top - bottom)
    boards = _layer("shelf top", stock, (under_top, top), layout.shelf_back, line)
    if lower > 0:
        boards += _layer("shelf underside", stock, (bottom, bottom + lower), layout.shelf_back, line)
    if under_top - bottom - lower >= LEAST_LAYER / 2:
        boards += _hollow(stock, (bottom + lower, under_top), layout.shelf_back, line)
    return boards + _edge_band(layout, stock, line)


def _front_line(layout: Layout, inset: float) -> tuple[Point2, ...]:
    """The front in plan, (x, z) from the right end to the left, `inset` behind the shelf's outline."""
    left, right = layout.left, layout.right
    ends = right.shelf_side - inset, inset - left.shelf_side
    middle, front = layout.shelf_front - inset, layout.shelf_foremost - inset
    if not layout.shelf_step:
        return (ends[0], middle), (ends[1], middle)
    x = (ends[0], right.break_inner + inset, -left.break_inner - inset, ends[1])
    return (x[0], front), (x[1], front), (x[1], middle), (x[2], middle), (x[2], front), (x[3], front)


def _layer(role: str, stock: Stock, y: Point2, back: float, line: Sequence[Point2]) -> tuple[Board, ...]:
    """One layer, edge-glued from equal boards where it is wider than boards are sold.

    The foremost is sawn to `line`, the front in plan, where that breaks.
    """
    x, front = (line[-1][0], line[0][0]), line[0][1]
    count = max(1, ceil((front - back) / WIDEST_BOARD - 1e-9))
    step = (front - back) / count
    boards = [
        block(role, SHELF, stock, "x", x, y, (back + i * step, back + (i + 1) * step)) for i in range(count)
    ]
    if len(line) > 2:
        behind = back + (count - 1) * step
        section = ((behind, x[0]), *((z, at) for at, z in reversed(line)), (behind, x[1]))
        boards[-1] = Board(role, SHELF, stock, "y", section, End(y[0]), End(y[1]), grain="x")
    return tuple(boards)


def _plank(layout: Layout, stock: Stock) -> tuple[Board, ...]:
    """Edge-glued from equal boards; the foremost has its front edge worked, the ends are left square."""
    solid = replace(stock, thickness=layout.shelf_top - layout.shelf_bottom)
    x, y = (-layout.left.shelf_side, layout.right.shelf_side), (layout.shelf_bottom, layout.shelf_top)
    boards = _layer("shelf plank", solid, y, layout.shelf_back, _front_line(layout, 0.0))
    section = layout.mouldings.edge
    if section is None:
        return boards
    line = layout.shelf_front - section.projection
    profile = under(section, layout.shelf_top)
    deep = line - boards[-1].bounds[0][2]
    points = [(out if out > HAIR else -deep, across) for out, across in profile.points]
    worked = replace(profile, points=points)
    return boards[:-1] + run_section(["shelf plank"], SHELF, solid, [(x[1], line), (x[0], line)], worked)


def _hollow(stock: Stock, y: Point2, back: float, line: Sequence[Point2]) -> tuple[Board, ...]:
    """What keeps both layers apart: behind the front between the columns, then in each break."""
    ends = line[-1][0], line[0][0]
    if len(line) == 2:
        return _ribs((STRIP, RIB), stock, ends, y, (back, line[0][1]))
    (_, front), (inner, _), (_, middle), (left_inner, _) = line[:4]
    breaks = ((ends[0], left_inner), (inner, ends[1]))
    own = [board for x in breaks for board in _ribs((BREAK_STRIP, BREAK_RIB), stock, x, y, (middle, front))]
    return (*_ribs((STRIP, RIB), stock, ends, y, (back, middle)), *own)


def _ribs(roles: tuple[str, str], stock: Stock, x: Point2, y: Point2, z: Point2) -> tuple[Board, ...]:
    """A strip along the front; behind it ribs, one at each end and none further apart than RIB_SPACING.

    The strip fills what is too shallow or too short for ribs. `roles` are the strip's and the ribs'.
    """
    strip_role, rib_role = roles
    behind = z[1] - RIB_WIDTH
    if behind - z[0] < LEAST_LAYER or x[1] - x[0] < 2 * RIB_WIDTH + LEAST_LAYER:
        return (block(strip_role, SHELF, stock, "x", x, y, z),)
    strip = block(strip_role, SHELF, stock, "x", x, y, (behind, z[1]))
    first, last = x[0] + RIB_WIDTH / 2, x[1] - RIB_WIDTH / 2
    bays = max(1, ceil((last - first) / RIB_SPACING - 1e-9))
    centres = [first + (last - first) * i / bays for i in range(bays + 1)]
    spans = [(c - RIB_WIDTH / 2, c + RIB_WIDTH / 2) for c in centres]
    return (strip, *(block(rib_role, SHELF, stock, "z", span, y, (z[0], behind)) for span in spans))


def _edge_band(layout: Layout, stock: Stock, line: Sequence[Point2]) -> tuple[Board, ...]:
    """Round both ends and along the front, mitred in and out at the breaks."""
    y0, y1, t = layout.edge_bottom, layout.shelf_top, stock.thickness
    path = [(line[0][0], layout.shelf_back), *line, (line[-1][0], layout.shelf_back)]
    section = layout.mouldings.edge
    square = Profile([(0.0, y0), (t, y0), (t, y1), (0.0, y1)])
    profile = under(section, y1) if section else square
    fronts = [FRONT] if len(line) == 2 else [OVER_COLUMN, RETURN, FRONT, RETURN, OVER_COLUMN]
    return run_section([END, *fronts, END], SHELF, stock, path, profile)
