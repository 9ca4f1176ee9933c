"""A way for cords: how much room there is inside the box, and the holes that lead in and out of it.

The loose panel over it is model.build.access_panel's, the holes in the boards are model.build.bores';
what is wrong with a way is model.check.cord_way's.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil
from typing import TYPE_CHECKING

from model.board import AXES, Board, Point2, Point3, StockKind
from model.build.access_panel import ACCESS_PANEL, LIP, find_fixed_sheet
from model.build.lines import LEFT, Layout, Side
from model.design import Design
from model.fixing import IN_FRIEZE, OWN, CordWay
from model.reference.connectors import CONNECTORS, diagonal

if TYPE_CHECKING:
    from model.surround import Surround

BIT_STEP = 8
"""Hole saws and bits are bought in eighths of an inch. Shop choice."""
ASIDE = ("return", "plinth", "capital", "soffit", "back band", ACCESS_PANEL)
"""What is no part of the face that a way runs behind."""
HAIR = 1e-6
GRID = 1024.0
"""Middles of holes are laid on the grid that drawings keep, parts of an inch."""


@dataclass(frozen=True, slots=True)
class Hole:
    """A round hole along `axis` through `centre`, bored through what lies within `span` on that axis."""

    name: str
    axis: str
    centre: Point3
    diameter: float
    span: Point2


@dataclass(frozen=True, slots=True)
class Way:
    """Where cords run: upright at `middle` (x, z) from `low` to `high` (y), in a space `free` wide and deep.

    `plug` is the section that must pass. `loose` is the index of the loose panel, `sheet` of the fixed one
    behind it, `cut_out` what is sawn out of that, width and height; None where there is none.
    """

    part: str
    middle: Point2
    low: float
    high: float
    free: Point2
    plug: Point2
    holes: tuple[Hole, ...]
    loose: int | None
    sheet: int | None
    cut_out: Point2 | None

    @property
    def passes(self) -> bool:
        """Whether the plug fits along the way, either way round."""
        return fits(self.plug, self.free)

    @property
    def diameter(self) -> float:
        """Of its holes, in."""
        return self.holes[0].diameter


def fits(plug: Point2, free: Point2) -> bool:
    """Whether a rectangle goes through another, turned by a quarter if need be."""
    return min(plug) <= min(free) + HAIR and max(plug) <= max(free) + HAIR


def plug_size(cord: CordWay) -> Point2:
    """Width and height of the largest thing that must pass, in."""
    return (cord.own_width, cord.own_height) if cord.plug == OWN else CONNECTORS[cord.plug].across


def hole_size(cord: CordWay) -> float:
    """Diameter of the holes: the plug's diagonal and the clearance, up to the next eighth of an inch."""
    return ceil((diagonal(*plug_size(cord)) + cord.clearance) * BIT_STEP - HAIR) / BIT_STEP


def plan_cord_way(surround: Surround) -> Way | None:
    """The way as the boards leave it room; None where none is asked for."""
    return find_way(surround.job.design, surround.layout, surround.boards)


def find_way(design: Design, layout: Layout, boards: Sequence[Board]) -> Way | None:
    """The same of boards that are not bored for it yet; None alike."""
    cord = design.cord
    if not cord.on:
        return None
    if cord.place == IN_FRIEZE:
        return _finish(design, layout, boards, _room_in_frieze(layout, boards))
    side = layout.left if cord.place == LEFT else layout.right
    return _finish(design, layout, boards, _room_in_column(layout, side, boards, plug_size(cord)), side)


@dataclass(frozen=True, slots=True)
class _Room:
    """Free space x by z between `low` and the shelf; `clear` is z from the nailers' front to the face."""

    part: str
    x: Point2
    z: Point2
    clear: Point2
    low: float


def _room_in_column(layout: Layout, side: Side, boards: Sequence[Board], plug: Point2) -> _Room:
    """Between two uprights, or in front of them where the plug fits only there."""
    x = _span(side, side.narrowest[0] + layout.board, side.narrowest[1] - layout.board)
    part = f"{side.name} column"
    back = min(0.0, max(side.inner_back, side.outer_back))
    front = _back_of_face(boards, part, x, layout.column_front - layout.board)
    uprights = [b for b in boards if b.role == "column nailer" and x[0] - HAIR < b.bounds[0][0] < x[1] + HAIR]
    foremost = max([back, *(b.bounds[1][2] for b in uprights)])
    before = _Room(part, x, (foremost, front), (foremost, front), side.base)
    gap = _gap(x, [(b.bounds[0][0], b.bounds[1][0]) for b in uprights])
    between = _Room(part, gap, (back, front), (foremost, front), side.base)
    return max((between, before), key=lambda room: (fits(plug, _size(room)), min(_size(room))))


def _room_in_frieze(layout: Layout, boards: Sequence[Board]) -> _Room:
    """In front of the strips behind the frieze, round the middle of its panel nearest the centre line."""
    middles = [(o[0] + o[2]) / 2 for o in layout.frieze_frame.openings]
    at = min(middles, key=lambda x: (abs(x), -x), default=0.0)
    half = layout.column_inner - abs(at) - layout.board
    x = (at - half, at + half)
    back = layout.wall if layout.frieze_bottom >= layout.facing_top else 0.0
    front = _back_of_face(boards, IN_FRIEZE, x, layout.frieze_front - layout.board)
    strips = [b for b in boards if b.role in ("shelf nailer", "soffit nailer")]
    foremost = max([back, *(b.bounds[1][2] for b in strips)])
    return _Room(IN_FRIEZE, x, (foremost, front), (foremost, front), layout.frieze_bottom)


def _back_of_face(boards: Sequence[Board], part: str, x: Point2, default: float) -> float:
    """z of the rearmost of what closes a part's front across `x`."""
    face = [
        b.bounds[0][2]
        for b in boards
        if b.assembly == part
        and b.stock.kind is not StockKind.FRAMING
        and not any(word in b.role for word in ASIDE)
        and b.bounds[0][0] < x[1] - HAIR
        and b.bounds[1][0] > x[0] + HAIR
    ]
    return min(face, default=default)


def _gap(x: Point2, spans: Sequence[Point2]) -> Point2:
    """The widest free stretch of `x` beside what covers `spans`."""
    edges = [x[0], *(edge for span in sorted(spans) for edge in span), x[1]]
    return max(zip(edges[::2], edges[1::2], strict=True), key=lambda free: free[1] - free[0])


def _span(side: Side, low: float, high: float) -> Point2:
    return (-high, -low) if side.name == LEFT else (low, high)


def _size(room: _Room) -> Point2:
    return max(room.x[1] - room.x[0], 0.0), max(room.z[1] - room.z[0], 0.0)


def _finish(
    design: Design, layout: Layout, boards: Sequence[Board], room: _Room, side: Side | None = None
) -> Way:
    """The holes at both ends, and the loose panel if one was built."""
    cord, size = design.cord, hole_size(design.cord)
    middle = _on_grid((room.x[0] + room.x[1]) / 2), _on_grid((room.z[0] + room.z[1]) / 2)
    upper = Hole(
        "upper", "y", (middle[0], layout.shelf_top, middle[1]), size, (layout.shelf_bottom, layout.shelf_top)
    )
    if side is None:
        low = room.low
        lower = Hole("lower", "y", (middle[0], low, middle[1]), size, (low, low + layout.board))
    else:
        low = min(side.base + cord.exit_height, layout.shelf_bottom - size)
        lower = _lower_hole(layout, side, room, low, size)
    loose = next((i for i, b in enumerate(boards) if b.role == ACCESS_PANEL), None)
    sheet = None if loose is None else find_fixed_sheet(boards[loose], boards)
    cut_out = None if loose is None else _cut_out(boards[loose])
    return Way(
        room.part, middle, low, layout.shelf_top, _size(room), plug_size(cord), (lower, upper),
        loose, sheet, cut_out,
    )  # fmt: skip


def _lower_hole(layout: Layout, side: Side, room: _Room, level: float, size: float) -> Hole:
    """Through a column's outer side, before the nailers where that leaves it room, else far out."""
    z0, z1 = room.clear
    z0 = min(z0, z1 - size)
    side_at = side.sides_at(level)[1]
    out = side_at + layout.round_columns + layout.board
    middle = (room.x[0] + room.x[1]) / 2
    span = (middle, out) if middle > 0 else (-out, middle)
    return Hole("lower", "x", (side.sign * side_at, _on_grid(level), _on_grid((z0 + z1) / 2)), size, span)


def _on_grid(place: float) -> float:
    return round(place * GRID) / GRID


def _cut_out(panel: Board) -> Point2:
    return panel.extent("x") - 2 * LIP, panel.extent("y") - 2 * LIP


def list_pierced(boards: Sequence[Board], hole: Hole) -> tuple[int, ...]:
    """Indices of the boards that a hole is bored through, wholly or in part."""
    along, radius = AXES.index(hole.axis), hole.diameter / 2

    def is_hit(board: Board) -> bool:
        low, high = board.bounds
        return all(
            low[i] < hole.span[1] - HAIR and high[i] > hole.span[0] + HAIR
            if i == along
            else low[i] < hole.centre[i] + radius - HAIR and high[i] > hole.centre[i] - radius + HAIR
            for i in range(3)
        )

    return tuple(i for i, board in enumerate(boards) if is_hit(board))


def is_within(board: Board, hole: Hole, margin: float) -> bool:
    """Whether a board holds the whole circle with `margin` round it."""
    low, high = board.bounds
    reach = hole.diameter / 2 + margin
    across = [i for i in range(3) if AXES[i] != hole.axis]
    return all(
        low[i] <= hole.centre[i] - reach + HAIR and hole.centre[i] + reach <= high[i] + HAIR for i in across
    )
