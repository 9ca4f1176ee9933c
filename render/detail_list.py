"""Which details a surround needs, where each is cut and what it shows.

How they are drawn: render.detail_drawing.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from model.board import AXES
from model.build.access_panel import ACCESS_PANEL
from model.build.bores import is_bored
from model.build.cord_way import plan_cord_way
from model.build.level_backs import PACKING
from model.build.lines import Layout, Side
from model.build.obstacles import BASEBOARD
from model.surround import Surround
from model.takeoff.assemblies import list_assemblies
from render.extent import Box
from render.section_places import section_level, section_station

PLAN, UPRIGHT = "plan_section", "vertical_section"
AROUND = 0.6
"""Air shown before a face, in. Shop choice."""
BEHIND = 2.5
"""How far behind its face a part is shown, in. Shop choice."""
ASIDE = 2.75
"""How far past the corner that a detail is about its pieces are shown, in. Shop choice."""
SHOWN = 0.125
"""How far a board reaches into a detail that shows it, in. Shop choice."""
HOLE = 1.25
"""Wood shown round a hole or a wedge, in. Shop choice."""
DEEPEST = 7.0
"""A detail shows no more than this either way, in., so that it can be drawn large. Shop choice."""


@dataclass(frozen=True, slots=True)
class Detail:
    """`name` in render.sheets.DETAILS; `view` and `at` are its section and where that is taken.

    `box` is what is shown: left, bottom, right, top in that section's picture.
    """

    name: str
    view: str
    at: float
    box: Box


def list_details(surround: Surround) -> tuple[Detail, ...]:
    """Every detail of `surround`, from the shelf down; of both sides only where they differ."""
    return tuple(detail for detail in _list_wanted(surround) if _shows_wood(surround, detail))


def _list_wanted(surround: Surround) -> tuple[Detail, ...]:
    layout = surround.layout
    sides = _list_sides(surround)
    return (
        _shelf_edge(surround),
        *(_frieze_joint(layout, side) for side in sides),
        *(_column_corner(surround, side) for side in sides),
        *(_foot(surround, side) for side in sides),
        *(d for side in layout.sides for d in _baseboard(layout, side)),
        *_cords(surround),
        *_packing(surround),
    )


def _shows_wood(surround: Surround, detail: Detail) -> bool:
    """Whether a board that the plane cuts lies in the box."""
    left, bottom, right, top = detail.box
    cut, across = (1, (0, 2)) if detail.view == PLAN else (0, (2, 1))
    signs = (1.0, -1.0) if detail.view == PLAN else (-1.0, 1.0)
    for board in surround.boards:
        low, high = board.bounds
        h, v = (sorted((low[i] * sign, high[i] * sign)) for i, sign in zip(across, signs, strict=True))
        reaches = (
            h[0] < right - SHOWN and h[1] > left + SHOWN and v[0] < top - SHOWN and v[1] > bottom + SHOWN
        )
        if low[cut] < detail.at < high[cut] and reaches:
            return True
    return False


def _list_sides(surround: Surround) -> tuple[Side, ...]:
    layout = surround.layout
    is_twin = any(a.twin for a in list_assemblies(surround.boards) if a.name == "right column")
    return (layout.right,) if is_twin else (layout.left, layout.right)


def _shelf_edge(surround: Surround) -> Detail:
    layout = surround.layout
    front = layout.shelf_front + AROUND
    back = layout.frieze_front - layout.board - layout.panel - 1.0
    bottom = min(layout.edge_bottom, layout.shelf_bottom - layout.mould_size) - 0.75
    box = (-front, bottom, -max(back, front - DEEPEST), layout.shelf_top + AROUND)
    return Detail("detail_shelf_edge", UPRIGHT, section_station(surround), box)


def _column_corner(surround: Surround, side: Side) -> Detail:
    """The outer front corner in plan: face, return and what closes the panel."""
    level, layout = section_level(surround), surround.layout
    outer = side.sides_at(level)[1]
    stile = min((o[0] for o in side.frame.openings), default=side.inner) - side.inner
    front = layout.plinth_front
    box = (
        outer - max(stile + 1.5, ASIDE),
        -(front + AROUND),
        outer + layout.round_columns + AROUND,
        -(layout.column_front - BEHIND),
    )
    return _on_side(f"detail_column_{side.name}", PLAN, level, box, side)


def _frieze_joint(layout: Layout, side: Side) -> Detail:
    """Where the frieze meets the column, in plan at the middle of the frieze's panel."""
    _, low, _, high = (*layout.frieze_frame.openings, layout.frieze_frame.outline)[0]
    level = (low + high) / 2
    inner = side.sides_at(level)[0]
    front = max(layout.column_front, layout.frieze_front)
    box = (
        inner - ASIDE,
        -(front + AROUND),
        inner + ASIDE,
        -(min(layout.column_front, layout.frieze_front) - BEHIND),
    )
    return _on_side(f"detail_frieze_{side.name}", PLAN, level, box, side)


def _foot(surround: Surround, side: Side) -> Detail:
    """The column's foot from the side: plinth, its cap, and what it stands on."""
    layout = surround.layout
    low, _, high, _ = (*side.frame.openings, side.frame.outline)[0]
    cap = layout.mouldings.plinth_cap
    top = max(side.plinth_top, side.base) + (cap.height if cap else 0.0) + 1.25
    front = max(layout.plinth_front, layout.column_front + (cap.projection if cap else 0.0)) + AROUND
    bottom = side.base - 0.75
    box = (-front, max(bottom, top - 2 * DEEPEST), -(layout.column_front - BEHIND), top)
    at = (low + high) / 2
    return Detail(f"detail_foot_{side.name}", UPRIGHT, side.sign * at, box)


def _baseboard(layout: Layout, side: Side) -> Iterator[Detail]:
    """Where a baseboard meets the column, in plan at the middle of its height."""
    for obstacle in layout.obstacles:
        on_side = (sum(obstacle.x) > 0) == (side.name == "right")
        starts = min(abs(end) for end in obstacle.x)
        if obstacle.kind == BASEBOARD and on_side and starts < side.outer + layout.plinth_out + ASIDE - SHOWN:
            level = side.lowest + (obstacle.y[1] - side.lowest) / 2
            outer, front = side.sides_at(level)[1], obstacle.z[1]
            box = (outer - ASIDE, -(front + 1.5), outer + layout.plinth_out + ASIDE, -(layout.wall - AROUND))
            yield _on_side(f"detail_baseboard_{side.name}", PLAN, level, box, side)


def _cords(surround: Surround) -> Iterator[Detail]:
    """Each hole for cords, cut along its middle, and the edge of the loose panel."""
    way = plan_cord_way(surround)
    if way is None:
        return
    for hole in way.holes:
        x, y, z = hole.centre
        half = hole.diameter / 2 + HOLE
        along = [b.bounds for b in surround.boards if is_bored(b, hole)]
        if not along:
            continue
        k = AXES.index(hole.axis)
        low, high = min(b[0][k] for b in along) - AROUND, max(b[1][k] for b in along) + AROUND
        if hole.axis == "y":
            yield Detail(f"detail_cord_{hole.name}", UPRIGHT, x, (-z - half, low, -z + half, high))
        else:
            yield Detail(f"detail_cord_{hole.name}", PLAN, y, (low, -z - half, high, -z + half))
    for board in surround.boards:
        if board.role == ACCESS_PANEL:
            (_, y0, z0), (x1, y1, z1) = board.bounds
            box = (x1 - ASIDE, -(z1 + AROUND), x1 + ASIDE, -(z0 - BEHIND))
            yield Detail("detail_access", PLAN, (y0 + y1) / 2, box)


def _packing(surround: Surround) -> Iterator[Detail]:
    """The thickest wedge behind each thing that is packed out."""
    for role in sorted(PACKING):
        wedges = [board for board in surround.boards if board.role == role]
        if not wedges:
            continue
        low, high = max(wedges, key=lambda board: board.extent("z")).bounds
        middle = [(a + b) / 2 for a, b in zip(low, high, strict=True)]
        name = f"detail_packing_{role.removesuffix(' packing').replace(' ', '_')}"
        if high[1] - low[1] > high[0] - low[0]:
            box = (low[0] - HOLE, -(high[2] + HOLE), high[0] + HOLE, -(low[2] - HOLE))
            yield Detail(name, PLAN, middle[1], box)
        else:
            at = middle[0] if abs(middle[0]) > 1e-6 else section_station(surround)
            box = (-(high[2] + HOLE), low[1] - HOLE, -(low[2] - HOLE), high[1] + HOLE)
            yield Detail(name, UPRIGHT, at, box)


def _on_side(name: str, view: str, at: float, box: Box, side: Side) -> Detail:
    """A detail laid out on the right, on the side that it is of."""
    left, bottom, right, top = box
    return Detail(name, view, at, box if side.sign > 0 else (-right, bottom, -left, top))
