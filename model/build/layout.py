"""Where everything lies: the lines that site and design put down before any board is placed.

What cannot be built as asked is laid out as near to it as can be, and a Shortfall says so.
"""

from __future__ import annotations

from dataclasses import dataclass

from model.design import Design
from model.site import Site

LEAST_PANEL = 1.0
"""Narrowest panel worth a frame, in. Shop choice."""
LEAST_LEG = 12.0
"""Least height of the shelf's underside over the hearth that leaves a surround below it, in. Shop choice."""
LEAST_UNDER_FRIEZE = 6.0
"""Least column left free below the frieze, in. Shop choice."""
LEAST_MOULD = 0.25
"""Smallest bed mould worth running, in. Shop choice."""
LEAST_LAYER = 0.125
"""Thinnest strip, rib or soffit that is cut as a piece of its own, in. Shop choice."""
RAIL_BEHIND_PLINTH = 0.75
"""How far a column's lowest rail runs down behind the plinth, in. Shop choice."""
PANEL_LAP = 0.375
"""How far a panel laps behind its frame where it sits in a rebate, in. Shop choice."""


@dataclass(frozen=True, slots=True)
class Shortfall:
    """A value that could not be built as asked: the parameter, asked and built, and why."""

    path: str
    asked: float
    built: float
    reason: str


Rect = tuple[float, float, float, float]
"""x0, y0, x1, y1 on a face of the surround."""


@dataclass(frozen=True, slots=True)
class Frame:
    """Stiles, rails and panel openings as built, seen from the front; the right column's for a column.

    `front` is z of its face, `reveal` how far behind it the panels lie. Exactly one of stiles and rails
    runs through: the stiles of a column, the rails of a frieze.
    """

    outline: Rect
    front: float
    reveal: float
    stiles: tuple[Rect, ...]
    rails: tuple[Rect, ...]
    openings: tuple[Rect, ...]


@dataclass(frozen=True, slots=True)
class Layout:
    """Room coordinates of the surround's lines, inches. Columns are given for the right-hand side (x > 0).

    `floor`, `ceiling` are y of the room's floor and ceiling; `wall` is z of the wall beside the facing.
    `column_base` is where columns stand; `*_front` are z of faces, `*_back` z of backs.
    """

    opening_side: float
    opening_top: float
    facing_side: float
    facing_top: float
    hearth_side: float
    hearth_front: float
    floor: float
    ceiling: float
    wall: float
    column_inner: float
    column_outer: float
    column_base: float
    column_front: float
    column_back: float
    column_on_hearth: bool
    plinth_top: float
    plinth_front: float
    plinth_out: float
    frieze_bottom: float
    frieze_front: float
    shelf_bottom: float
    shelf_top: float
    shelf_front: float
    shelf_side: float
    shelf_back: float
    mould_size: float
    board: float
    panel: float
    edge_bottom: float
    column_frame: Frame
    frieze_frame: Frame
    shortfalls: tuple[Shortfall, ...]

    @property
    def facing_margin(self) -> float:
        """Facing left showing between the opening's top and the frieze."""
        return self.frieze_bottom - self.opening_top


class _Ledger:
    """Collects what could not be built as asked while a layout is worked out."""

    def __init__(self) -> None:
        self.shortfalls: list[Shortfall] = []

    def hold(self, path: str, asked: float, built: float, reason: str) -> float:
        """`built`; noted when it is not what was asked."""
        if abs(asked - built) > 1e-9:
            self.shortfalls.append(Shortfall(path, asked, built, reason))
        return built


def lay_out(site: Site, design: Design) -> Layout:
    """The lines of `design` at `site`. Never fails for values in bounds; see `shortfalls`."""
    ledger = _Ledger()
    floor = -site.hearth.height
    inner = site.opening.width / 2 + design.column.margin
    outer = inner + design.column.width
    base, on_hearth = _place_base(site, design, inner, outer)
    board = design.board.thickness
    column_front = design.column.projection
    frieze_front = ledger.hold(
        "frieze.projection",
        design.frieze.projection,
        max(design.frieze.projection, board),
        "the boards are thicker than that",
    )
    thickness = _shelf_thickness(design, ledger)
    shelf_top = _shelf_top(design, floor, thickness, ledger)
    shelf_bottom = shelf_top - thickness
    frieze_height = ledger.hold(
        "frieze.height",
        design.frieze.height,
        min(design.frieze.height, shelf_bottom - max(base, 0.0) - LEAST_UNDER_FRIEZE),
        "there is not that much height under the shelf",
    )
    frieze_bottom = shelf_bottom - frieze_height
    edge = _edge_height(design, thickness, ledger)
    mould = _mould_size(design, thickness, edge, frieze_height, ledger)
    plinth_height = ledger.hold(
        "plinth.height",
        design.plinth.height,
        min(design.plinth.height, frieze_bottom - base - 1.0),
        "the frieze comes down to it",
    )
    facing_side = site.facing.width / 2
    shelf_side = outer + design.shelf.overhang_end
    return Layout(
        opening_side=site.opening.width / 2,
        opening_top=site.opening.height,
        facing_side=facing_side,
        facing_top=site.facing.height,
        hearth_side=site.hearth.width / 2,
        hearth_front=site.hearth.depth,
        floor=floor,
        ceiling=floor + site.room.ceiling,
        wall=-site.facing.proud,
        column_inner=inner,
        column_outer=outer,
        column_base=base,
        column_front=column_front,
        column_back=-site.facing.proud if outer - board >= facing_side else 0.0,
        column_on_hearth=on_hearth,
        plinth_top=base + plinth_height,
        plinth_front=column_front + design.plinth.projection,
        plinth_out=design.plinth.projection,
        frieze_bottom=frieze_bottom,
        frieze_front=frieze_front,
        shelf_bottom=shelf_bottom,
        shelf_top=shelf_top,
        shelf_front=max(column_front, frieze_front) + design.shelf.overhang_front,
        shelf_side=shelf_side,
        shelf_back=-site.facing.proud if shelf_bottom >= site.facing.height else 0.0,
        mould_size=mould,
        board=board,
        panel=design.panel.thickness,
        edge_bottom=shelf_top - edge,
        column_frame=_column_frame(
            design, (inner, base, outer, shelf_bottom), base + plinth_height, mould, ledger
        ),
        frieze_frame=_frieze_frame(
            design, (-inner, frieze_bottom, inner, shelf_bottom), frieze_front, mould, ledger
        ),
        shortfalls=tuple(ledger.shortfalls),
    )


def _place_base(site: Site, design: Design, inner: float, outer: float) -> tuple[float, bool]:
    """Where the columns stand, and whether the hearth carries them whole."""
    side = site.hearth.width / 2
    around = design.plinth.projection
    if outer + around <= side and design.column.projection + around <= site.hearth.depth:
        return 0.0, True
    if inner - around >= side:
        return -site.hearth.height, False
    return 0.0, False


def _shelf_thickness(design: Design, ledger: _Ledger) -> float:
    """The nearest thickness that whole layers make up: one board, one and a layer, two, or two and ribs."""
    asked, board = design.shelf.thickness, design.board.thickness
    built = max(asked, board)
    for layers in (board, 2 * board):
        if layers < built < layers + LEAST_LAYER:
            built = layers
    return ledger.hold("shelf.thickness", asked, built, "it is built up from boards of the given thickness")


def _shelf_top(design: Design, floor: float, thickness: float, ledger: _Ledger) -> float:
    datum = 0.0 if design.shelf.height_from == "hearth" else floor
    built = max(datum + design.shelf.height, thickness + LEAST_LEG)
    ledger.hold("shelf.height", design.shelf.height, built - datum, "nothing can stand under so low a shelf")
    return built


def _edge_height(design: Design, thickness: float, ledger: _Ledger) -> float:
    """An edge band may hang below the shelf only where it clears what stands under it."""
    asked = design.shelf.edge_height
    overhang = min(design.shelf.overhang_front, design.shelf.overhang_end)
    built = asked if overhang >= design.board.thickness else min(asked, thickness)
    return ledger.hold("shelf.edge_height", asked, built, "the overhang leaves no room for it to hang lower")


def _mould_size(
    design: Design, thickness: float, edge: float, frieze_height: float, ledger: _Ledger
) -> float:
    if not design.bed_mould.on:
        return 0.0
    asked = design.bed_mould.size
    hanging = design.board.thickness if edge > thickness else 0.0
    room = min(design.shelf.overhang_front, design.shelf.overhang_end) - hanging
    least_frame = 2 * (design.board.thickness + LEAST_MOULD) + LEAST_PANEL
    built = min(asked, room, frieze_height - least_frame)
    if built < LEAST_MOULD:
        built = 0.0
    return ledger.hold("bed_mould.size", asked, built, "the overhang or the frieze leaves no room for more")


def _fit_panels(
    path: str, what: str, asked: int, member: float, free: float, extra: int, ledger: _Ledger
) -> tuple[int, float]:
    """Panels and member width that fit in `free`: n panels with n + `extra` members between and around."""
    count = asked
    while count > 1 and free - (count + extra) * member < count * LEAST_PANEL:
        count -= 1
    ledger.hold(f"{path}.panels", asked, count, f"the panels would be under {LEAST_PANEL:g} in. {what}")
    width = min(member, (free - count * LEAST_PANEL) / (count + extra))
    return count, width


def _column_frame(design: Design, outline: Rect, plinth_top: float, mould: float, ledger: _Ledger) -> Frame:
    x0, y0, x1, y1 = outline
    column = design.column
    stile = ledger.hold(
        "column.stile",
        column.stile,
        min(column.stile, (column.width - LEAST_PANEL) / 2),
        "the column is too narrow for two of them and a panel",
    )
    low, high = plinth_top, y1 - mould
    count, rail = _fit_panels("column", "high", column.panels, column.rail, high - low, 1, ledger)
    ledger.hold("column.rail", column.rail, rail, "the column is too low for the rails and a panel")
    panel_height = (high - low - (count + 1) * rail) / count
    inside = (x0 + stile, x1 - stile)
    bottoms = [low + rail + i * (panel_height + rail) for i in range(count)]
    rails = [(low - min(RAIL_BEHIND_PLINTH, low - y0), low + rail)]
    rails += [(bottom - rail, bottom) for bottom in bottoms[1:]] + [(high - rail, y1)]
    return Frame(
        outline=outline,
        front=column.projection,
        reveal=_reveal(design, design.panel.reveal),
        stiles=((x0, y0, inside[0], y1), (inside[1], y0, x1, y1)),
        rails=tuple((inside[0], low_edge, inside[1], high_edge) for low_edge, high_edge in rails),
        openings=tuple((inside[0], bottom, inside[1], bottom + panel_height) for bottom in bottoms),
    )


def _frieze_frame(design: Design, outline: Rect, front: float, mould: float, ledger: _Ledger) -> Frame:
    x0, y0, x1, y1 = outline
    frieze = design.frieze
    reveal = ledger.hold(
        "panel.reveal",
        design.panel.reveal,
        min(design.panel.reveal, front - design.panel.thickness),
        "the frieze stands too close to the masonry for the panel behind it",
    )
    count, stile = _fit_panels("frieze", "wide", frieze.panels, frieze.stile, x1 - x0, 1, ledger)
    ledger.hold("frieze.stile", frieze.stile, stile, "the frieze is too short for the stiles and a panel")
    rail = ledger.hold(
        "frieze.rail",
        frieze.rail,
        min(frieze.rail, (y1 - mould - y0 - LEAST_PANEL) / 2),
        "the frieze is too low for two rails and a panel",
    )
    low, high = y0 + rail, y1 - mould - rail
    panel_width = (x1 - x0 - (count + 1) * stile) / count
    lefts = [x0 + stile + i * (panel_width + stile) for i in range(count)]
    stile_lefts = [x0] + [left + panel_width for left in lefts]
    return Frame(
        outline=outline,
        front=front,
        reveal=_reveal(design, reveal),
        stiles=tuple((left, low, left + stile, high) for left in stile_lefts),
        rails=((x0, y0, x1, low), (x0, high, x1, y1)),
        openings=tuple((left, low, left + panel_width, high) for left in lefts),
    )


def _reveal(design: Design, asked: float) -> float:
    """Flush on the frame's back when the difference is too thin to cut."""
    board = design.board.thickness
    return board if abs(asked - board) < LEAST_LAYER / 4 else asked
