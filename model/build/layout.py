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
MOST_OUT_OF_LEVEL = 6.0
"""Most that a foot may lie off where it was expected, in.; beyond it the tape slipped. Shop choice."""
LEAST_MOULD = 0.25
"""Smallest bed mould worth running, in. Shop choice."""
LEAST_LAYER = 0.125
"""Thinnest strip, rib or soffit that is cut as a piece of its own, in. Shop choice."""
LEAST_STEP = 1 / 16
"""A facing less proud of the wall than this, in., is scribed over and not stepped. Shop choice."""
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
    """Stiles, rails and panel openings as built, seen from the front; a column's as if it stood on the right.

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
class Side:
    """One column and the shelf's end over it, as if it stood on the right (x > 0).

    `base` is y of where it stands, `on_hearth` whether the hearth carries it whole. `inner_back` and
    `outer_back` are z behind its inner and outer sides, up to the top of the facing they lie on.
    """

    name: str
    inner: float
    outer: float
    base: float
    on_hearth: bool
    inner_back: float
    outer_back: float
    plinth_top: float
    shelf_side: float
    frame: Frame

    @property
    def sign(self) -> float:
        """-1 on the left, 1 on the right."""
        return -1.0 if self.name == LEFT else 1.0

    @property
    def width(self) -> float:
        """Face of the column, side to side."""
        return self.outer - self.inner


LEFT, RIGHT = "left", "right"


@dataclass(frozen=True, slots=True)
class Layout:
    """Room coordinates of the surround's lines, inches.

    `floor`, `ceiling` are y of the room's floor and ceiling; `wall` is z of the wall beside the facing.
    `*_front` are z of faces, `shelf_back` of the shelf's back. `column_inner` is x of both columns' inner
    sides, right of the centre line.
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
    left: Side
    right: Side
    column_inner: float
    column_front: float
    plinth_front: float
    plinth_out: float
    frieze_bottom: float
    frieze_front: float
    shelf_bottom: float
    shelf_top: float
    shelf_front: float
    shelf_back: float
    mould_size: float
    board: float
    panel: float
    edge_bottom: float
    frieze_frame: Frame
    shortfalls: tuple[Shortfall, ...]

    @property
    def sides(self) -> tuple[Side, Side]:
        """Left, then right."""
        return self.left, self.right

    @property
    def column_reach(self) -> float:
        """x of the further of both columns' outer sides."""
        return max(self.left.outer, self.right.outer)

    @property
    def shelf_reach(self) -> float:
        """x of the further of both shelf ends."""
        return max(self.left.shelf_side, self.right.shelf_side)

    @property
    def facing_margin(self) -> float:
        """Facing left showing between the opening's top and the frieze."""
        return self.frieze_bottom - self.opening_top

    def step_up(self, base: float, back: float) -> float | None:
        """y at which a back that lies on the facing goes back to the wall; None where it does not."""
        stands_off = back == 0.0 and self.wall < -LEAST_STEP
        within = base + LEAST_LAYER <= self.facing_top <= self.shelf_bottom - LEAST_LAYER
        return self.facing_top if stands_off and within else None


class _Ledger:
    """Collects what could not be built as asked while a layout is worked out."""

    def __init__(self) -> None:
        self.shortfalls: list[Shortfall] = []

    def hold(self, path: str, asked: float, built: float, reason: str) -> float:
        """`built`; noted, once for each path, when it is not what was asked."""
        known = any(shortfall.path == path for shortfall in self.shortfalls)
        if abs(asked - built) > 1e-9 and not known:
            self.shortfalls.append(Shortfall(path, asked, built, reason))
        return built


def lay_out(site: Site, design: Design) -> Layout:
    """The lines of `design` at `site`. Never fails for values in bounds; see `shortfalls`."""
    ledger = _Ledger()
    floor = -site.hearth.height
    feet = tuple(_place_foot(site, design, name, ledger) for name in (LEFT, RIGHT))
    inner = feet[0].inner
    highest_foot = max(0.0, *(foot.base for foot in feet))
    board = design.board.thickness
    column_front = design.column.projection
    frieze_front = ledger.hold(
        "frieze.projection",
        design.frieze.projection,
        max(design.frieze.projection, board),
        "the boards are thicker than that",
    )
    thickness = _shelf_thickness(design, ledger)
    shelf_top = _shelf_top(design, floor, thickness + highest_foot + LEAST_LEG, ledger)
    shelf_bottom = shelf_top - thickness
    frieze_height = ledger.hold(
        "frieze.height",
        design.frieze.height,
        min(design.frieze.height, shelf_bottom - highest_foot - LEAST_UNDER_FRIEZE),
        "there is not that much height under the shelf",
    )
    frieze_bottom = shelf_bottom - frieze_height
    edge = _edge_height(design, thickness, ledger)
    mould = _mould_size(design, thickness, edge, frieze_height, ledger)
    left, right = (
        _finish_side(site, design, foot, frieze_bottom, shelf_bottom, mould, ledger) for foot in feet
    )
    return Layout(
        opening_side=site.opening.width / 2,
        opening_top=site.opening.height,
        facing_side=site.facing.width / 2,
        facing_top=site.facing.height,
        hearth_side=site.hearth.width / 2,
        hearth_front=site.hearth.depth,
        floor=floor,
        ceiling=floor + site.room.ceiling,
        wall=-site.facing.proud,
        left=left,
        right=right,
        column_inner=inner,
        column_front=column_front,
        plinth_front=column_front + design.plinth.projection,
        plinth_out=design.plinth.projection,
        frieze_bottom=frieze_bottom,
        frieze_front=frieze_front,
        shelf_bottom=shelf_bottom,
        shelf_top=shelf_top,
        shelf_front=max(column_front, frieze_front) + design.shelf.overhang_front,
        shelf_back=-site.facing.proud if shelf_bottom >= site.facing.height else 0.0,
        mould_size=mould,
        board=board,
        panel=design.panel.thickness,
        edge_bottom=shelf_top - edge,
        frieze_frame=_frieze_frame(
            design, (-inner, frieze_bottom, inner, shelf_bottom), frieze_front, mould, ledger
        ),
        shortfalls=tuple(ledger.shortfalls),
    )


@dataclass(frozen=True, slots=True)
class _Foot:
    """Where one column stands, before its height is known."""

    name: str
    inner: float
    outer: float
    base: float
    on_hearth: bool


def _place_foot(site: Site, design: Design, name: str, ledger: _Ledger) -> _Foot:
    """On the hearth that carries it whole, else beside it on the floor; then as its level reading says."""
    own = design.column.width_left if name == LEFT else design.column.width_right
    inner = site.opening.width / 2 + design.column.margin
    outer = inner + (design.column.width if own is None else own)
    around, side = design.plinth.projection, site.hearth.width / 2
    on_hearth = outer + around <= side and design.column.projection + around <= site.hearth.depth
    base = -site.hearth.height if not on_hearth and inner - around >= side else 0.0
    reading = site.level.left if name == LEFT else site.level.right
    if reading is not None and site.level.centre is not None:
        measured = site.level.centre - reading
        held = min(max(measured, base - MOST_OUT_OF_LEVEL), base + MOST_OUT_OF_LEVEL)
        reason = f"that is more than {MOST_OUT_OF_LEVEL:g} in. out of level; measure again"
        ledger.hold(f"level.{name}", reading, reading + measured - held, reason)
        base = held
    return _Foot(name, inner, outer, base, on_hearth)


def _finish_side(
    site: Site,
    design: Design,
    foot: _Foot,
    frieze_bottom: float,
    shelf_bottom: float,
    mould: float,
    ledger: _Ledger,
) -> Side:
    plinth_height = ledger.hold(
        "plinth.height",
        design.plinth.height,
        min(design.plinth.height, frieze_bottom - foot.base - 1.0),
        "the frieze comes down to it",
    )
    own = design.shelf.overhang_left if foot.name == LEFT else design.shelf.overhang_right
    facing, wall, plinth_top = site.facing.width / 2, -site.facing.proud, foot.base + plinth_height
    outline = (foot.inner, foot.base, foot.outer, shelf_bottom)
    return Side(
        name=foot.name,
        inner=foot.inner,
        outer=foot.outer,
        base=foot.base,
        on_hearth=foot.on_hearth,
        inner_back=wall if foot.inner >= facing else 0.0,
        outer_back=wall if foot.outer - design.board.thickness >= facing else 0.0,
        plinth_top=plinth_top,
        shelf_side=foot.outer + (design.shelf.overhang_end if own is None else own),
        frame=_column_frame(design, outline, plinth_top, mould, ledger),
    )


def least_overhang(design: Design) -> float:
    """The least that the shelf passes what is under it, at the front or at either end."""
    shelf = design.shelf
    ends = [shelf.overhang_end if own is None else own for own in (shelf.overhang_left, shelf.overhang_right)]
    return min(shelf.overhang_front, *ends)


def _shelf_thickness(design: Design, ledger: _Ledger) -> float:
    """The nearest thickness that whole layers make up: one board, one and a layer, two, or two and ribs."""
    asked, board = design.shelf.thickness, design.board.thickness
    built = max(asked, board)
    for layers in (board, 2 * board):
        if layers < built < layers + LEAST_LAYER:
            built = layers
    return ledger.hold("shelf.thickness", asked, built, "it is built up from boards of the given thickness")


def _shelf_top(design: Design, floor: float, least: float, ledger: _Ledger) -> float:
    datum = 0.0 if design.shelf.height_from == "hearth" else floor
    built = max(datum + design.shelf.height, least)
    ledger.hold("shelf.height", design.shelf.height, built - datum, "nothing can stand under so low a shelf")
    return built


def _edge_height(design: Design, thickness: float, ledger: _Ledger) -> float:
    """An edge band may hang below the shelf only where it clears what stands under it."""
    asked = design.shelf.edge_height
    built = asked if least_overhang(design) >= design.board.thickness else min(asked, thickness)
    return ledger.hold("shelf.edge_height", asked, built, "the overhang leaves no room for it to hang lower")


def _mould_size(
    design: Design, thickness: float, edge: float, frieze_height: float, ledger: _Ledger
) -> float:
    if not design.bed_mould.on:
        return 0.0
    asked = design.bed_mould.size
    hanging = design.board.thickness if edge > thickness else 0.0
    room = least_overhang(design) - hanging
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
        min(column.stile, (x1 - x0 - LEAST_PANEL) / 2),
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
