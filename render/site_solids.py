"""What stands there already, as solids and lines round the boards: facing, opening, hearth, floor, wall."""

from __future__ import annotations

from model.board import Board, End, Point2, Stock, StockKind, block
from model.build.behind import BOLT, OLD_LEDGER
from model.build.lines import Layout
from render.obstacle_marks import list_drawn

STANDING = Stock(StockKind.STANDING, 0.0, "")
"""Not timber: drawn so that wood hides it and is hidden by it, never listed."""
MASONRY_DEPTH = 5.0
"""How much of the masonry behind its face is drawn, in.; its true depth is not measured."""
PROUD_OF_FACING = 4 / 1024
"""The opening is drawn this far in front of the facing, in., so that it shows as a hole."""
THIN = 0.25
"""Masonry drawn from the side behind a face that falls back past the wall, in."""
SLAB = 4.0
"""Thickness a hearth slab is drawn with where none was measured, in."""


def leaning_face(layout: Layout, x: float, y: Point2) -> tuple[Point2, ...]:
    """(y, z) of the masonry's face at `x` between two heights, from the lower up, as it was measured.

    Over the opening it lies between what it is behind both columns.
    """
    ends = [end for side in layout.sides if side.lean for end in (side.lean.base, side.lean.top)]
    levels = sorted({y[0], y[1], *(level for level in ends if y[0] < level < y[1])})
    return tuple((level, -layout.set_back(x, level)) for level in levels)


def _leaning(role: str, layout: Layout, x: Point2, y: Point2, behind: float) -> Board:
    """Masonry with its face as it was found at the nearer end of `x`."""
    face = leaning_face(layout, x[1], y)
    section = ((y[0], behind), (y[1], behind), *reversed(face))
    return Board(role, "site", STANDING, "x", section, End(x[0]), End(x[1]))


def _solid(role: str, x: Point2, y: Point2, z: Point2) -> Board:
    return block(role, "site", STANDING, "x", x, y, z)


def site_in_front(layout: Layout) -> tuple[Board, ...]:
    """Facing, opening and raised hearth as an elevation from the front shows them."""
    side, mouth = layout.facing_side, layout.opening_side
    facing_foot = min(layout.floor, 0.0)
    return (
        _solid("facing", (-side, side), (facing_foot, layout.facing_top), (layout.wall - MASONRY_DEPTH, 0.0)),
        _solid(
            "opening", (-mouth, mouth), (layout.opening_foot, layout.opening_top), (-1.0, PROUD_OF_FACING)
        ),
        *_raised_hearth(layout),
        *_obstacles(layout),
    )


def site_in_room(layout: Layout) -> tuple[Board, ...]:
    """The same for a view from beside; each half of a facing out of plumb as its own column's reading is."""
    if not layout.leans:
        return site_in_front(layout)
    foot, behind = min(layout.floor, 0.0), layout.wall - MASONRY_DEPTH
    halves = []
    for x in ((-layout.facing_side, 0.0), (0.0, layout.facing_side)):
        outer = min(x, key=lambda at: -abs(at))
        section = ((foot, behind), (layout.facing_top, behind))
        face = reversed(leaning_face(layout, outer, (foot, layout.facing_top)))
        halves.append(Board("facing", "site", STANDING, "x", (*section, *face), End(x[0]), End(x[1])))
    return (*halves, *site_in_front(layout)[1:])


def _obstacles(layout: Layout) -> tuple[Board, ...]:
    """Baseboards, outlets, casings and an old ledger, as boxes."""
    ledgers = tuple(_solid(o.kind, o.x, o.y, o.z) for o in layout.behind if o.kind == OLD_LEDGER)
    return tuple(_solid(o.kind, o.x, o.y, o.z) for o in list_drawn(layout)) + ledgers


def _behind(layout: Layout, at: float) -> list[Board]:
    """What was left on the masonry, as far as it lies left of the upright plane x = `at`."""
    return [_solid(o.kind, (o.x[0], min(o.x[1], at)), o.y, o.z) for o in layout.behind if o.x[0] < at]


def _beside(layout: Layout) -> tuple[Board, ...]:
    """Those to the right, which a view from there shows."""
    return tuple(_solid(o.kind, o.x, o.y, o.z) for o in list_drawn(layout) if o.side == "right")


def site_from_side(layout: Layout) -> tuple[Board, ...]:
    """Facing as far as it stands proud of the wall, and the hearth as far as it is raised."""
    if layout.wall >= 0:
        return (*_raised_hearth(layout), *_beside(layout))
    facing = (-layout.facing_side, layout.facing_side)
    most = max(side.lean.most if side.lean else 0.0 for side in layout.sides)
    behind = layout.wall if most < -layout.wall else -most - THIN
    return (
        _leaning("facing", layout, facing, (layout.floor, layout.facing_top), behind)
        if layout.leans
        else _solid("facing", facing, (layout.floor, layout.facing_top), (layout.wall, 0.0)),
        *_raised_hearth(layout),
        *_beside(layout),
    )


def _raised_hearth(layout: Layout) -> tuple[Board, ...]:
    if layout.floor >= 0 or layout.hearth_front <= 0:
        return ()
    x = (-layout.hearth_side, layout.hearth_side)
    return (_solid("hearth", x, (layout.floor, 0.0), (0.0, layout.hearth_front)),)


def site_from_above(layout: Layout, level: float, reach: float) -> tuple[Board, ...]:
    """Masonry cut at `level`, the wall out to `reach` either side, and the hearth below."""
    facing, wall = layout.facing_side, layout.wall
    behind = wall - MASONRY_DEPTH
    bolts = [_solid(o.kind, o.x, o.y, o.z) for o in layout.behind if o.kind == BOLT]
    solids = [solid for solid in (*_obstacles(layout), *bolts) if solid.bounds[0][1] < level]
    if layout.hearth_front > 0:
        hearth = (-layout.hearth_side, layout.hearth_side)
        solids.append(_solid("hearth", hearth, (layout.floor - 1.0, 0.0), (0.0, layout.hearth_front)))
    if level >= layout.facing_top:
        return (*solids, _solid("wall", (-reach, reach), (0.0, level), (behind, wall)))
    masonry = [(-facing, facing)]
    if level < layout.opening_top:
        masonry = [(-facing, -layout.opening_side), (layout.opening_side, facing)]
    solids += [_masonry_from_above("facing", layout, x, level) for x in masonry if x[1] > x[0]]
    if reach > facing:
        beside = (-reach, -facing), (facing, reach)
        if wall == 0 and layout.leans:
            return (*solids, *(_masonry_from_above("wall", layout, x, level) for x in beside))
        solids += [_solid("wall", x, (0.0, level), (behind, wall)) for x in beside]
    return tuple(solids)


def _masonry_from_above(role: str, layout: Layout, x: Point2, level: float) -> Board:
    """Masonry up to `level`, its front as it is there or, higher up, where the shelf meets it."""
    at = min(level, layout.shelf_bottom)
    ends = (-layout.left.outer, layout.right.outer) if layout.leans else ()
    places = [x[0], *(end for end in ends if x[0] < end < x[1]), x[1]]
    front = ((-layout.set_back(place, at), place) for place in places)
    behind = layout.wall - MASONRY_DEPTH
    section = ((behind, x[1]), (behind, x[0]), *front)
    return Board(role, "site", STANDING, "y", section, End(0.0), End(level))


def site_cut_beside(layout: Layout, at: float, top: float, thickness: float | None) -> tuple[Board, ...]:
    """Masonry, wall, hearth and baseboard cut by the upright plane x = `at` beside the opening."""
    behind = layout.wall - MASONRY_DEPTH
    x = (at - 1.0, at)
    foot = min(0.0, layout.floor)
    faced = layout.facing_top if abs(at) <= layout.facing_side else foot
    solids = [o for o in _obstacles(layout) if o.bounds[0][0] < at < o.bounds[1][0]]
    if faced > foot:
        solids.append(_leaning("facing", layout, x, (foot, faced), behind))
    if top > faced:
        solids.append(_solid("wall", x, (faced, top), (behind, layout.wall)))
    if abs(at) <= layout.hearth_side and layout.hearth_front > 0:
        slab = max(thickness or SLAB, -layout.floor)
        solids.append(_solid("hearth", x, (-slab, 0.0), (behind, layout.hearth_front)))
    return tuple(solids)


def site_cut_upright(layout: Layout, at: float, top: float, thickness: float | None) -> tuple[Board, ...]:
    """Masonry, wall and hearth cut by the upright plane x = `at`, which lies over the opening."""
    behind = layout.wall - MASONRY_DEPTH
    x = (at - 1.0, at)
    solids = [_firebox_side(layout, behind), *_behind(layout, at)]
    if layout.facing_top > layout.opening_top:
        solids.append(_leaning("facing", layout, x, (layout.opening_top, layout.facing_top), behind))
    if top > max(layout.facing_top, layout.opening_top):
        low = max(layout.facing_top, layout.opening_top)
        solids.append(_solid("wall", x, (low, top), (behind, layout.wall)))
    if layout.opening_foot > 0:
        solids.append(_solid("facing", x, (0.0, layout.opening_foot), (behind, 0.0)))
    slab = max(thickness or SLAB, -layout.floor)
    solids.append(_solid("hearth", x, (-slab, 0.0), (behind, max(layout.hearth_front, 0.5))))
    return tuple(solids)


def _firebox_side(layout: Layout, behind: float) -> Board:
    """The masonry beside the opening, whose inner side is seen beyond the cut."""
    side = max(layout.facing_side, layout.opening_side + 1.0)
    mouth = (layout.opening_foot, layout.opening_top)
    return _solid("firebox", (-side, -layout.opening_side), mouth, (behind, 0.0))
