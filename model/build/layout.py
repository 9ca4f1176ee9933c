"""Where everything lies: the lines that site and design put down before any board is placed.

What cannot be built as asked is laid out as near to it as can be, and a Shortfall says so.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from model.board import Point2
from model.build.behind import Rest, list_behind
from model.build.facing import STEEPEST, Lean
from model.build.flutes import Flutes, fit_flutes
from model.build.hearth_step import HearthStep, fit_hearth_step
from model.build.ledger import LEFT_OUT, Ledger
from model.build.ledger import Shortfall as Shortfall
from model.build.mouldings import (
    LEAST_MOULD,
    Mouldings,
    Room,
    fit_edge,
    fit_moulding,
    least_side,
)
from model.build.obstacles import Ground, Meeting, Obstacle, list_obstacles, notch_at
from model.build.shelf_step import fit_step
from model.build.taper import Edges, Taper, fit_slope, fit_width
from model.design import (
    FLUSH,
    FLUTED,
    FRAMED,
    IN_FRONT,
    LEAST_REVEAL,
    PLAIN,
    PLANK,
    TABLET,
    TO_CEILING,
    Design,
)
from model.moulding.library import Use
from model.moulding.section import Section
from model.site import Site

LEAST_MOUTH = 1.0
"""Height of the firebox's mouth that is left over a raised floor at least, in. Shop choice."""
LEAST_PANEL = 1.0
"""Narrowest panel worth a frame, in. Shop choice."""
LEAST_LEG = 12.0
"""Least height of the shelf's underside over the hearth that leaves a surround below it, in. Shop choice."""
LEAST_UNDER_FRIEZE = 6.0
"""Least column left free below the frieze, in. Shop choice."""
MOST_OUT_OF_LEVEL = 6.0
"""Most that a foot may lie off where it was expected, in.; beyond it the tape slipped. Shop choice."""
LEAST_ZONE = 3.0
"""Least height between plinth and capital that takes two rails and a panel, in. Shop choice."""
LEAST_STOP = 0.25
"""Shortest plain piece at the end of flutes, in. Shop choice."""
LEAST_OVER = 6.0
"""Least height of an overmantel, in. Shop choice."""
LEAST_BAND = 1.0
"""Least length of a back band's leg, in. Shop choice."""
BETWEEN_PANEL_MOULDS = 0.25
"""Least panel left between the mouldings along two sides of it, in. Shop choice."""
NEAR = 1e-6
"""Places nearer to each other than this are one, in."""
LEAST_LAYER = 0.125
"""Thinnest strip, rib or soffit that is cut as a piece of its own, in. Shop choice."""
STRIP = 0.75
"""Dressed thickness of one-by strips, in. American Softwood Lumber Standard PS 20."""
LEAST_STEP = 1 / 16
"""A facing less proud of the wall than this, in., is scribed over and not stepped. Shop choice."""
RAIL_BEHIND_PLINTH = 0.75
"""How far a column's lowest rail runs down behind the plinth, in. Shop choice."""
PANEL_LAP = 0.375
"""How far a panel laps behind its frame where it sits in a rebate, in. Shop choice."""


Rect = tuple[float, float, float, float]
"""x0, y0, x1, y1 on a face of the surround."""


@dataclass(frozen=True, slots=True)
class Frame:
    """Stiles, rails and panel openings as built, seen from the front; a column's as if it stood on the right.

    `front` is z of its face, `reveal` how far behind it the panels lie. Exactly one of stiles and rails
    runs through: the stiles of a column, the rails of a frieze. A plain face has no openings: its boards
    stand where the members that run through would, and `reveal` is their thickness. `flutes` is which of
    a column's boards is fluted. `inside` are the edges of a tapered column's stiles along its panels; its
    stiles and outline are given at the foot, its openings and rails as far as they are upright.
    """

    outline: Rect
    front: float
    reveal: float
    stiles: tuple[Rect, ...]
    rails: tuple[Rect, ...]
    openings: tuple[Rect, ...]
    flutes: Rect | None = None
    inside: Edges | None = None

    @property
    def upright(self) -> tuple[Rect, ...]:
        """The openings whose sides do not lean: a panel mould is mitred square."""
        if self.inside is None:
            return self.openings
        return tuple(rect for rect in self.openings if rect[1] >= self.inside.inner.high)

    def thickness(self, panel: float) -> float:
        """From its face to the back of what lies behind it furthest, with panels `panel` thick."""
        return self.reveal + panel if self.openings else self.reveal


@dataclass(frozen=True, slots=True)
class Overmantel:
    """The framed field on the shelf: its frame, and z behind it at its foot."""

    frame: Frame
    back: float

    @property
    def top(self) -> float:
        """y of its upper end."""
        return self.frame.outline[3]


@dataclass(frozen=True, slots=True)
class Slip:
    """The flat frame on the facing, as built; `offset` is from the surround's inner edge to its own."""

    offset: float
    width: float
    thickness: float


@dataclass(frozen=True, slots=True)
class Tablet:
    """The raised field on a plain frieze: where it lies and how far it stands out, as built."""

    outline: Rect
    thickness: float


@dataclass(frozen=True, slots=True)
class Side:
    """One column and the shelf's end over it, as if it stood on the right (x > 0).

    `base` is y of where it stands, `on_hearth` whether the hearth carries it whole, `step` where it steps
    down from there to the floor. `inner_back` and
    `outer_back` are z behind its inner and outer sides, up to the top of the facing they lie on. `lean`
    is how that facing, or the wall where neither lies on it, is out of plumb. `inner` and `outer` are x of
    its sides at the foot, `taper` are both edges of a column that is tapered.
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
    lean: Lean | None = None
    step: HearthStep | None = None
    taper: Edges | None = None

    @property
    def lowest(self) -> float:
        """y of its lowest foot."""
        return self.step.floor if self.step else self.base

    def foot_at(self, x: float) -> float:
        """y of what carries a board whose inner side is at `x`."""
        return self.step.floor if self.step and x >= self.step.edge - NEAR else self.base

    @property
    def inner_top(self) -> float:
        """x of its inner side at the shelf."""
        return self.taper.inner.head if self.taper else self.inner

    @property
    def outer_top(self) -> float:
        """x of its outer side at the shelf."""
        return self.taper.outer.head if self.taper else self.outer

    @property
    def narrowest(self) -> Point2:
        """x of an upright strip between both its sides at every level."""
        return self.taper.narrowest if self.taper else (self.inner, self.outer)

    def swept(self, x: Point2) -> Point2:
        """x of what a return with sides at `x` at its foot lies before on its whole height."""
        inner = abs(x[0] - self.inner) < abs(x[1] - self.outer)
        lean = self.inner_top - self.inner if inner else self.outer_top - self.outer
        return min(x[0], x[0] + lean), max(x[1], x[1] + lean)

    def sides_at(self, y: float) -> Point2:
        """x of both its sides at a level."""
        return self.taper.at(y) if self.taper else (self.inner, self.outer)

    @property
    def sign(self) -> float:
        """-1 on the left, 1 on the right."""
        return -1.0 if self.name == LEFT else 1.0

    @property
    def width(self) -> float:
        """Face of the column at its foot, side to side."""
        return self.outer - self.inner

    @property
    def break_inner(self) -> float:
        """x of the inner end of the shelf's break over the column: it overhangs both its sides alike."""
        return self.inner_top - (self.shelf_side - self.outer_top)

    def lean_behind(self, back: float) -> Lean | None:
        """How what lies at z = `back` leans: the facing, or the wall where neither side is on the facing."""
        measured = back == max(self.inner_back, self.outer_back)
        return self.lean if measured else None


LEFT, RIGHT = "left", "right"


@dataclass(frozen=True, slots=True)
class Layout:
    """Room coordinates of the surround's lines, inches.

    `floor`, `ceiling` are y of the room's floor and ceiling; `wall` is z of the wall beside the facing.
    `*_front` are z of faces, `shelf_back` of the shelf's back; `shelf_step` is how much further forward the
    shelf's face lies over the columns. `column_inner` is x of both columns' inner
    sides beside the frieze, right of the centre line. `frieze_over` says that the frieze runs over the
    columns' faces, `strips` how high the ledger and the cleat behind it are, 0 where there is no room for
    them. `obstacles` stand in the room, `behind` was left on the masonry behind the surround.
    """

    opening_side: float
    opening_top: float
    opening_foot: float
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
    shelf_step: float
    shelf_back: float
    board: float
    panel: float
    edge_bottom: float
    shelf_is_plank: bool
    frieze_frame: Frame
    frieze_over: bool
    strips: Point2
    tablet: Tablet | None
    slip: Slip | None
    over: Overmantel | None
    flutes: Flutes | None
    mouldings: Mouldings
    shortfalls: tuple[Shortfall, ...]
    obstacles: tuple[Obstacle, ...] = ()
    behind: tuple[Obstacle, ...] = ()

    @property
    def sides(self) -> tuple[Side, Side]:
        """Left, then right."""
        return self.left, self.right

    @property
    def shelf_reach(self) -> float:
        """x of the further of both shelf ends."""
        return max(self.left.shelf_side, self.right.shelf_side)

    @property
    def shelf_foremost(self) -> float:
        """z of the shelf's front over the columns, where it stands out furthest."""
        return self.shelf_front + self.shelf_step

    @property
    def mould_size(self) -> float:
        """Height of the bed mould, 0 when there is none."""
        return self.mouldings.bed.height if self.mouldings.bed else 0.0

    @property
    def moulded_front(self) -> float:
        """z of plinth or capital, whichever stands out further."""
        return self.column_front + self.round_columns

    @property
    def round_columns(self) -> float:
        """How far plinth or capital stands out beyond a column's sides."""
        capital = self.mouldings.capital
        return max(self.plinth_out, capital.projection if capital else 0.0)

    @property
    def facing_margin(self) -> float:
        """Facing left showing between the opening's top and the frieze."""
        return self.frieze_bottom - self.opening_top

    @property
    def slip_front(self) -> float:
        """z of the slip's face, where what is wrapped round a column stops; 0 without one."""
        return self.slip.thickness if self.slip else 0.0

    def foot_notch(self, side: Side, x: Point2) -> Point2 | None:
        """(y, z) of the upper front corner of the notch round a baseboard in what stands at `x` before it."""
        round_it = notch_at(self.obstacles, side.name) if self.obstacles else None
        if round_it is None:
            return None
        low, high = sorted(abs(end) for end in round_it.x)
        return (round_it.y[1], round_it.z[1]) if x[0] < high - NEAR and low < x[1] - NEAR else None

    def step_up(self, base: float, back: float) -> float | None:
        """y at which a back that lies on the facing goes back to the wall; None where it does not."""
        return _step_up(self.facing_top, self.wall, (base, self.shelf_bottom), back)

    def set_back(self, x: float, y: float) -> float:
        """How far the masonry falls back from where it stands furthest out; straight between the columns."""
        left, right = (side.lean.set_back(y) if side.lean else 0.0 for side in self.sides)
        if left == right:
            return left
        part = (x + self.left.outer) / (self.left.outer + self.right.outer)
        return left + (right - left) * min(max(part, 0.0), 1.0)

    @property
    def leans(self) -> bool:
        """Whether the masonry is out of plumb behind either column."""
        return self.left.lean is not None or self.right.lean is not None

    @property
    def shelf_gaps(self) -> Point2:
        """How far masonry that leans away falls back behind the shelf's left and right end."""
        left, right = (
            side.lean.set_back(self.shelf_bottom)
            if side.lean and self.shelf_back == max(side.inner_back, side.outer_back)
            else 0.0
            for side in self.sides
        )
        return left, right

    def back_at(self, side: Side, back: float, level: float) -> float:
        """z behind a column's side from `level` up, where `back` is z behind its foot."""
        step = self.step_up(side.base, back)
        return self.wall if step is not None and step <= level else back


def _step_up(facing_top: float, wall: float, leg: Point2, back: float) -> float | None:
    stands_off = back == 0.0 and wall < -LEAST_STEP
    within = leg[0] + LEAST_LAYER <= facing_top <= leg[1] - LEAST_LAYER
    return facing_top if stands_off and within else None


def lay_out(site: Site, design: Design) -> Layout:
    """The lines of `design` at `site`. Never fails for values in bounds; see `shortfalls`."""
    ledger = Ledger()
    floor = -site.hearth.height
    feet = tuple(_place_foot(site, design, name, ledger) for name in (LEFT, RIGHT))
    inner = feet[0].inner
    highest_foot = max(0.0, *(foot.base for foot in feet))
    board = design.board.thickness
    column_front = design.column.projection
    frieze_front = _frieze_front(design, ledger)
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
    hanging = board if edge > thickness else 0.0
    worked_edge, worked_height = fit_edge(design, edge, ledger)
    wanted = fit_width(design, min(foot.outer - foot.inner for foot in feet), ledger)
    nearest = min(inner, inner + wanted.inner)
    breaks = [nearest - _end_overhang(design, foot.name) for foot in feet]
    step = fit_step(design, breaks, worked_edge is not None, ledger)
    overhang = _mould_overhang(design, frieze_front, step) - hanging
    bed = _fit_bed_mould(design, nearest, overhang, frieze_height, ledger)
    under_bed = shelf_bottom - (bed.height if bed else 0.0)
    over = design.frieze.place == IN_FRONT
    zoned = over or bool(wanted.total)
    plinth_tops = [foot.base + _plinth_height(design, foot, frieze_bottom, zoned, ledger) for foot in feet]
    beside_band = least_overhang(design) - hanging if shelf_top - edge < frieze_bottom else nearest
    capital = _fit_capital(
        design, min(nearest - LEAST_BAND, beside_band), frieze_bottom - max(plinth_tops), ledger
    )
    ends_at_frieze = capital is not None or zoned
    below = frieze_bottom - (capital.height if capital else 0.0) if ends_at_frieze else under_bed
    over_plinth = min(frieze_bottom, below - LEAST_ZONE) - max(plinth_tops)
    cap = _fit_plinth_cap(design, over_plinth, ledger)
    lows = [top + (cap.height if cap else 0.0) for top in plinth_tops]
    bounds = [(foot.inner, foot.outer, low) for foot, low in zip(feet, lows, strict=True)]
    under_capital = frieze_bottom - (capital.height if capital else 0.0)
    facing = (site.facing.width / 2, site.facing.proud)
    taper = fit_slope(wanted, bounds, under_capital, facing, board, ledger)
    if any(foot.step for foot in feet):
        taper = taper.held(0.0, "a column that steps over the hearth's end stands straight")
    ledger.hold("column.taper", design.column.taper, taper.total, taper.reason)
    inner += taper.inner
    x0, x1 = (-feet[0].outer - taper.outer, feet[1].outer + taper.outer) if over else (-inner, inner)
    frieze_frame = _frieze_frame(
        design, (x0, frieze_bottom, x1, shelf_bottom), frieze_front, under_bed, ledger
    )
    narrowest = min(foot.outer - foot.inner for foot in feet) - max(taper.total, 0.0)
    flutes = fit_flutes(design, narrowest, bool(taper.total), ledger)
    levels = _Levels(frieze_frame, shelf_bottom, under_bed, capital, cap, ends_at_frieze, taper)
    plinth_out = design.plinth.projection if design.plinth.on else 0.0
    left, right = (
        _finish_side(site, design, foot, plinth_top, levels, ledger)
        for foot, plinth_top in zip(feet, plinth_tops, strict=True)
    )
    shelf_back = -site.facing.proud if shelf_bottom >= site.facing.height else 0.0
    ceiling = floor + site.room.ceiling
    overmantel = _fit_overmantel(site, design, (left, right), (shelf_top, ceiling), shelf_back, ledger)
    framed = (left.frame, right.frame, frieze_frame, *([overmantel.frame] if overmantel else []))
    panel_mould = _fit_panel_mould(design, framed, ledger)
    back_band = _fit_back_band(site, design, (left, right), frieze_frame, cap, ledger)
    ground = Ground(
        site.facing.width / 2, site.facing.height, site.hearth.width / 2, floor, -site.facing.proud
    )
    meeting = Meeting(
        plinth_out,
        column_front - board,
        board,
        cap.height if cap else 0.0,
        design.slip.on or design.back_band.on,
    )
    obstacles = list_obstacles(site, (left, right), meeting, ground, ledger)
    strips = _fit_strips(design, frieze_frame, ledger)
    hollow = frieze_front - max(board, frieze_frame.thickness(design.panel.thickness))
    own_back = -site.facing.proud if shelf_bottom - strips[0] >= site.facing.height else 0.0
    rest = Rest(shelf_bottom, inner, hollow, own_back, bool(strips[0]))
    behind = list_behind(site, ground, rest, ledger)
    return Layout(
        opening_side=site.opening.width / 2,
        opening_top=site.opening.height,
        opening_foot=min(site.opening.sill, site.opening.height - LEAST_MOUTH),
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
        plinth_front=column_front + plinth_out,
        plinth_out=plinth_out,
        frieze_bottom=frieze_bottom,
        frieze_front=frieze_front,
        shelf_bottom=shelf_bottom,
        shelf_top=shelf_top,
        shelf_front=max(column_front, frieze_front) + design.shelf.overhang_front,
        shelf_step=step,
        shelf_back=shelf_back,
        board=board,
        panel=design.panel.thickness,
        edge_bottom=shelf_top - edge,
        shelf_is_plank=design.shelf.kind == PLANK,
        frieze_frame=frieze_frame,
        frieze_over=over,
        strips=strips,
        tablet=_fit_tablet(design, inner, frieze_frame, under_bed, hanging, ledger),
        slip=_fit_slip(site, design, (left, right), frieze_frame, back_band, ledger),
        over=overmantel,
        flutes=flutes,
        mouldings=Mouldings(
            bed=bed,
            capital=capital,
            plinth_cap=cap,
            panel=panel_mould,
            back_band=back_band,
            edge=worked_edge,
            edge_size=worked_height,
        ),
        shortfalls=tuple(ledger.shortfalls),
        obstacles=obstacles,
        behind=behind,
    )


@dataclass(frozen=True, slots=True)
class _Foot:
    """Where one column stands, before its height is known."""

    name: str
    inner: float
    outer: float
    base: float
    on_hearth: bool
    step: HearthStep | None = None

    @property
    def lowest(self) -> float:
        """y of its lowest part."""
        return self.step.floor if self.step else self.base


def _place_foot(site: Site, design: Design, name: str, ledger: Ledger) -> _Foot:
    """On the hearth that carries it whole, else beside it on the floor; then as its level reading says."""
    own = design.column.width_left if name == LEFT else design.column.width_right
    inner = site.opening.width / 2 + design.column.margin
    outer = inner + (design.column.width if own is None else own)
    around, side = design.plinth.projection if design.plinth.on else 0.0, site.hearth.width / 2
    on_hearth = outer + around <= side and design.column.projection + around <= site.hearth.depth
    base = -site.hearth.height if not on_hearth and inner - around >= side else 0.0
    reading = site.level.left if name == LEFT else site.level.right
    if reading is not None and site.level.centre is not None:
        measured = site.level.centre - reading
        held = min(max(measured, base - MOST_OUT_OF_LEVEL), base + MOST_OUT_OF_LEVEL)
        reason = f"that is more than {MOST_OUT_OF_LEVEL:g} in. out of level; measure again"
        ledger.hold(f"level.{name}", reading, reading + measured - held, reason)
        base = held
    step = fit_hearth_step(site, design, name, (inner, outer), base, ledger)
    return _Foot(name, inner, outer, base, on_hearth, step)


@dataclass(frozen=True, slots=True)
class _Levels:
    """What both columns' frames keep to: the frieze's panels, the heights over them and the mouldings."""

    frieze: Frame
    shelf_bottom: float
    under_bed: float
    capital: Section | None
    plinth_cap: Section | None
    ends_at_frieze: bool
    taper: Taper

    @property
    def under_capital(self) -> float:
        """y of the capital's foot, or of the frieze's where there is none."""
        return self.frieze.outline[1] - (self.capital.height if self.capital else 0.0)


def _frieze_front(design: Design, ledger: Ledger) -> float:
    """Where its projection says, no thinner than a board; or against the columns' faces."""
    if design.frieze.place == IN_FRONT:
        return design.foremost
    asked, board = design.frieze.projection, design.board.thickness
    return ledger.hold("frieze.projection", asked, max(asked, board), "the boards are thicker than that")


def _fit_tablet(
    design: Design, inner: float, frieze: Frame, under_bed: float, hanging: float, ledger: Ledger
) -> Tablet | None:
    """In the middle of what shows of a plain frieze, behind an edge band that hangs `hanging` thick."""
    if design.frieze.kind != TABLET:
        return None
    asked, (_, y0, _, y1) = design.tablet, (*frieze.outline[:3], under_bed)
    reason = "the frieze is not large enough for more"
    width = ledger.hold("tablet.width", asked.width, min(asked.width, 2 * inner - LEAST_STEP), reason)
    height = ledger.hold("tablet.height", asked.height, min(asked.height, y1 - y0), reason)
    front = design.foremost + design.shelf.overhang_front - hanging
    thickness = min(asked.thickness, max(front - frieze.front, 0.0))
    if thickness < LEAST_LAYER:
        thickness = 0.0
    ledger.hold("tablet.thickness", asked.thickness, thickness, "the shelf does not reach over more")
    middle = (y0 + y1) / 2
    outline = (-width / 2, middle - height / 2, width / 2, middle + height / 2)
    return Tablet(outline, thickness) if thickness else None


def _plinth_height(design: Design, foot: _Foot, frieze_bottom: float, zoned: bool, ledger: Ledger) -> float:
    """0 without a plinth; what the column shows is `zoned` where it ends below the frieze."""
    if not design.plinth.on:
        return 0.0
    asked = design.plinth.height
    below_frieze = LEAST_ZONE if zoned else 1.0
    built = min(asked, frieze_bottom - foot.base - below_frieze)
    return ledger.hold("plinth.height", asked, built, "the frieze comes down to it")


def _finish_side(
    site: Site, design: Design, foot: _Foot, plinth_top: float, levels: _Levels, ledger: Ledger
) -> Side:
    facing, wall = site.facing.width / 2, -site.facing.proud
    outline = (foot.inner, foot.base, foot.outer, levels.shelf_bottom)
    low = plinth_top + (levels.plinth_cap.height if levels.plinth_cap else 0.0)
    taper = levels.taper.edges(foot.inner, foot.outer, low, levels.under_capital)
    inner, outer = taper.narrowest if taper else (foot.inner, foot.outer)
    inner_back = wall if min(foot.inner, inner) >= facing else 0.0
    outer_back = wall if outer - design.board.thickness >= facing else 0.0
    return Side(
        name=foot.name,
        inner=foot.inner,
        outer=foot.outer,
        base=foot.base,
        on_hearth=foot.on_hearth,
        inner_back=inner_back,
        outer_back=outer_back,
        plinth_top=plinth_top,
        shelf_side=foot.outer + levels.taper.outer + _end_overhang(design, foot.name),
        frame=_column_frame(design, outline, plinth_top, levels, taper, ledger),
        lean=_fit_lean(site, foot, max(inner_back, outer_back), levels.shelf_bottom, ledger),
        step=foot.step,
        taper=taper,
    )


def _end_overhang(design: Design, name: str) -> float:
    """How far the shelf passes the column on one side, LEFT or RIGHT."""
    shelf = design.shelf
    own = shelf.overhang_left if name == LEFT else shelf.overhang_right
    return shelf.overhang_end if own is None else own


def _fit_lean(site: Site, foot: _Foot, back: float, shelf_bottom: float, ledger: Ledger) -> Lean | None:
    """What was read of the masonry at z = `back`, from the column's foot up to the shelf or its own top."""
    asked = site.plumb.left if foot.name == LEFT else site.plumb.right
    if not asked:
        return None
    step = _step_up(site.facing.height, -site.facing.proud, (foot.base, shelf_bottom), back)
    top = shelf_bottom if step is None else step
    most = (top - foot.lowest) * STEEPEST
    reason = "that is more than one part in twelve out of plumb; measure again"
    built = ledger.hold(f"plumb.{foot.name}", asked, min(max(asked, -most), most), reason)
    return Lean(foot.lowest, top, built)


def least_overhang(design: Design) -> float:
    """The least that the shelf passes what is under it, at the front or at either end."""
    return min(design.shelf.overhang_front, *(_end_overhang(design, name) for name in (LEFT, RIGHT)))


def _least_overhang_at(design: Design) -> str:
    """Where the shelf passes least what is under it, for a sentence."""
    ends = {name: _end_overhang(design, name) for name in (LEFT, RIGHT)}
    least = min(ends.values())
    if design.shelf.overhang_front <= least:
        return "at the front" if design.shelf.overhang_front < least else "at the front and an end"
    if ends[LEFT] == ends[RIGHT]:
        return "at its ends"
    return f"at its {min(ends, key=lambda name: ends[name])} end"


def _mould_overhang(design: Design, frieze_front: float, step: float) -> float:
    """The least that the shelf, a `step` further out over the columns, passes what a bed mould lies on."""
    column, front = design.column.projection, design.shelf_depth
    if not (step and is_broken(design.frieze.place == IN_FRONT, column, frieze_front)):
        return least_overhang(design)
    ends = (_end_overhang(design, name) for name in (LEFT, RIGHT))
    return min(front - frieze_front, front + step - column, *ends)


def is_broken(over: bool, column: float, frieze: float) -> bool:
    """Whether what runs along faces at z = `column` and `frieze`, one `over` the other, goes round columns.

    A step too small to mitre round is run straight across, along whichever stands further out.
    """
    return not over and abs(column - frieze) >= LEAST_LAYER / 2


def _shelf_thickness(design: Design, ledger: Ledger) -> float:
    """The nearest thickness that whole layers make up: one board, one and a layer, two, or two and ribs."""
    asked, board = design.shelf.thickness, design.board.thickness
    if design.shelf.kind == PLANK:
        return asked
    built = max(asked, board)
    for layers in (board, 2 * board):
        if layers < built < layers + LEAST_LAYER:
            built = layers
    return ledger.hold("shelf.thickness", asked, built, "it is built up from boards of the given thickness")


def _shelf_top(design: Design, floor: float, least: float, ledger: Ledger) -> float:
    datum = 0.0 if design.shelf.height_from == "hearth" else floor
    built = max(datum + design.shelf.height, least)
    ledger.hold("shelf.height", design.shelf.height, built - datum, "nothing can stand under so low a shelf")
    return built


def _edge_height(design: Design, thickness: float, ledger: Ledger) -> float:
    """An edge band may hang below the shelf only where it clears what stands under it; a plank has none."""
    if design.shelf.kind == PLANK:
        return thickness
    asked = design.shelf.edge_height
    built = asked if least_overhang(design) >= design.board.thickness else min(asked, thickness)
    return ledger.hold("shelf.edge_height", asked, built, "the overhang leaves no room for it to hang lower")


def _fit_bed_mould(
    design: Design, inner: float, overhang: float, frieze_height: float, ledger: Ledger
) -> Section | None:
    """Under the shelf's `overhang`, leaving the frieze its frame."""
    least_frame = 2 * (design.board.thickness + LEAST_MOULD) + LEAST_PANEL
    room = Room(
        frieze_height - least_frame,
        min(overhang, inner - LEAST_BAND),
        f"the shelf's overhang {_least_overhang_at(design)} or the frieze leaves no room for more",
    )
    return fit_moulding(design, Use.BED_MOULD, "bed_mould", design.bed_mould, room, ledger)


def _fit_capital(design: Design, around: float, under_frieze: float, ledger: Ledger) -> Section | None:
    """No further out than `around`: clear of its twin, and of an edge band that hangs down to it."""
    room = Room(
        under_frieze - LEAST_ZONE,
        around,
        "the column below the frieze, or the room round it, is not large enough for more",
    )
    return fit_moulding(design, Use.CAPITAL, "capital", design.capital, room, ledger)


def _fit_plinth_cap(design: Design, over_plinth: float, ledger: Ledger) -> Section | None:
    if not design.plinth.on:
        return None
    room = Room(
        over_plinth,
        design.plinth.projection,
        "the plinth does not stand out far enough, or the column is not high enough, for more",
    )
    return fit_moulding(design, Use.PLINTH_CAP, "plinth_cap", design.plinth_cap, room, ledger)


def _fit_panel_mould(design: Design, frames: Sequence[Frame], ledger: Ledger) -> Section | None:
    """As deep as the panels lie behind their frames and clear of itself across the narrowest of them."""
    openings = [opening for frame in frames for opening in frame.upright]
    moulding = design.panel_mould
    if moulding.on and len(openings) < sum(len(frame.openings) for frame in frames):
        reason = "in the columns' leaning panels its corners are not square"
        ledger.swap("panel_mould.profile", moulding.profile, LEFT_OUT, reason)
    if not openings:
        return None
    room = Room(
        (least_side(openings) - BETWEEN_PANEL_MOULDS) / 2,
        min(frame.reveal for frame in frames if frame.upright),
        "the panels are too narrow, or lie too close behind their frames, for more",
    )
    return fit_moulding(design, Use.PANEL_MOULD, "panel_mould", design.panel_mould, room, ledger)


def _fit_back_band(
    site: Site,
    design: Design,
    sides: Sequence[Side],
    frieze: Frame,
    cap: Section | None,
    ledger: Ledger,
) -> Section | None:
    """On the facing that shows inside the surround, no thicker than columns and frieze stand out."""
    bottom = frieze.outline[1]
    feet = max(side.plinth_top for side in sides) + (cap.height if cap else 0.0)
    margin, backed = _inner_edge(site, sides, bottom)
    room = Room(
        min(margin, bottom - feet - LEAST_BAND) if backed else 0.0,
        min(design.column.projection, frieze.front) - LEAST_LAYER,
        "no more facing shows inside the surround"
        if backed
        else "the surround's inner edge is not on the facing",
    )
    return fit_moulding(design, Use.BACK_BAND, "back_band", design.back_band, room, ledger)


def _fit_overmantel(
    site: Site, design: Design, sides: Sequence[Side], between: Point2, shelf_back: float, ledger: Ledger
) -> Overmantel | None:
    """As wide as the columns stand apart, on the shelf, `between` its top and the ceiling."""
    over, (bottom, ceiling) = design.over, between
    if not over.on:
        return None
    free = ceiling - bottom
    height = free if over.reach == TO_CEILING else min(over.height, free)
    height = height if height >= LEAST_OVER else 0.0
    if over.reach != TO_CEILING or not height:
        ledger.hold("over.height", over.height, height, "the ceiling is too near over the shelf")
    if not height:
        return None
    back = -site.facing.proud if bottom >= site.facing.height else 0.0
    least = max(design.board.thickness, design.panel.thickness + LEAST_REVEAL)
    least = max(least, shelf_back - back + design.board.thickness)
    deepest = design.shelf_depth - back
    projection = min(max(over.projection, least), deepest)
    reason = "it stands on the shelf and is no thinner than its boards"
    ledger.hold("over.projection", over.projection, projection, reason)
    outline = (-sides[0].outer_top, bottom, sides[1].outer_top, bottom + height)
    return Overmantel(_over_frame(design, outline, back + projection, projection, ledger), back)


def _over_frame(design: Design, outline: Rect, front: float, depth: float, ledger: Ledger) -> Frame:
    x0, y0, x1, y1 = outline
    over, asked = design.over, design.panel.reveal
    reveal = min(asked, depth - design.panel.thickness)
    reason = "the overmantel stands too close to what is behind it for the panel"
    ledger.hold("panel.reveal", asked, reveal, reason)
    count, stile = _fit_panels("over", "wide", over.panels, over.stile, x1 - x0, 1, ledger)
    ledger.hold("over.stile", over.stile, stile, "the field is too narrow for the stiles and a panel")
    rail = min(over.rail, (y1 - y0 - LEAST_PANEL) / 2)
    ledger.hold("over.rail", over.rail, rail, "the field is too low for two rails and a panel")
    low, high = y0 + rail, y1 - rail
    panel_width = (x1 - x0 - (count + 1) * stile) / count
    lefts = [x0 + stile + i * (panel_width + stile) for i in range(count)]
    return Frame(
        outline=outline,
        front=front,
        reveal=_reveal(design, reveal),
        stiles=tuple((x, low, x + stile, high) for x in (x0, *(left + panel_width for left in lefts))),
        rails=((x0, y0, x1, low), (x0, high, x1, y1)),
        openings=tuple((left, low, left + panel_width, high) for left in lefts),
    )


def _inner_edge(site: Site, sides: Sequence[Side], bottom: float) -> tuple[float, bool]:
    """How much facing shows inside the surround, and whether its whole inner edge lies on the facing."""
    margin = min(sides[0].inner - site.opening.width / 2, bottom - site.opening.height)
    on_facing = bottom <= site.facing.height and all(side.inner_back == 0.0 for side in sides)
    return margin, site.facing.proud == 0 or on_facing


def _fit_slip(
    site: Site,
    design: Design,
    sides: Sequence[Side],
    frieze: Frame,
    band: Section | None,
    ledger: Ledger,
) -> Slip | None:
    """On the facing inside a back band, no thicker than columns and frieze stand out."""
    if not design.slip.on:
        return None
    asked, bottom = design.slip, frieze.outline[1]
    offset = band.height if band else 0.0
    margin, backed = _inner_edge(site, sides, bottom)
    room = margin - offset if backed else 0.0
    reason = "no more facing shows there" if backed else "the surround's inner edge is not on the facing"
    width = min(asked.width, room) if room >= LEAST_MOULD else 0.0
    ledger.hold("slip.width", asked.width, width, reason)
    if not width:
        return None
    deep = min(asked.thickness, min(design.column.projection, frieze.front) - LEAST_LAYER)
    ledger.hold("slip.thickness", asked.thickness, deep, "columns and frieze do not stand out further")
    return Slip(offset, width, deep)


def _fit_panels(
    path: str, what: str, asked: int, member: float, free: float, extra: int, ledger: Ledger
) -> tuple[int, float]:
    """Panels and member width that fit in `free`: n panels with n + `extra` members between and around."""
    count = asked
    while count > 1 and free - (count + extra) * member < count * LEAST_PANEL:
        count -= 1
    ledger.hold(f"{path}.panels", asked, count, f"the panels would be under {LEAST_PANEL:g} in. {what}")
    width = min(member, (free - count * LEAST_PANEL) / (count + extra))
    return count, width


def _column_frame(
    design: Design, outline: Rect, plinth_top: float, levels: _Levels, taper: Edges | None, ledger: Ledger
) -> Frame:
    """What a column's kind shows from the plinth up to the bed mould, the capital or a frieze over it."""
    cap = levels.plinth_cap
    low = plinth_top + (cap.height if cap else 0.0)
    high = levels.under_capital if levels.ends_at_frieze else levels.under_bed
    if design.column.kind == PLAIN:
        return _plain_face(design, outline, [outline])
    if design.column.kind == FLUTED:
        return _fluted_face(design, outline, low, high, ledger)
    return _framed_column(design, outline, (plinth_top, low, high), levels, taper, ledger)


def _plain_face(design: Design, outline: Rect, boards: Sequence[Rect], flutes: Rect | None = None) -> Frame:
    return Frame(outline, design.column.projection, design.board.thickness, tuple(boards), (), (), flutes)


def _fluted_face(design: Design, outline: Rect, low: float, high: float, ledger: Ledger) -> Frame:
    """Three boards one over the other: the flutes are in the middle one and end where it does."""
    x0, y0, x1, y1 = outline
    asked = design.flute.stop
    stop = min(asked, (high - low - LEAST_PANEL) / 2)
    stop = stop if stop >= LEAST_STOP else 0.0
    reason = "the column is too low for more" if stop else "that is too little for a piece of its own"
    ledger.hold("flute.stop", asked, stop, reason)
    levels = (y0, low + stop, high - stop, y1)
    boards = [(x0, a, x1, b) for a, b in pairwise(levels) if b - a > LEAST_LAYER / 2]
    return _plain_face(design, outline, boards, (x0, levels[1], x1, levels[2]))


def _framed_column(
    design: Design,
    outline: Rect,
    reach: tuple[float, float, float],
    levels: _Levels,
    taper: Edges | None,
    ledger: Ledger,
) -> Frame:
    """Panels over `reach`: the plinth's top, their zone's foot and its head; one more over a capital."""
    x0, y0, x1, y1 = outline
    plinth_top, low, high = reach
    column = design.column
    beside_frieze = levels.ends_at_frieze and design.frieze.place != IN_FRONT
    narrow = taper.narrowest if taper else (x0, x1)
    stile = ledger.hold(
        "column.stile",
        column.stile,
        min(column.stile, (narrow[1] - narrow[0] - LEAST_PANEL) / 2),
        "the column is too narrow for two of them and a panel",
    )
    count, rail = _fit_panels("column", "high", column.panels, column.rail, high - low, 1, ledger)
    ledger.hold("column.rail", column.rail, rail, "the column is too low for the rails and a panel")
    panel_height = (high - low - (count + 1) * rail) / count
    bottoms = [low + rail + i * (panel_height + rail) for i in range(count)]
    panels = [(bottom, bottom + panel_height) for bottom in bottoms]
    if beside_frieze:
        panels.append(_beside_frieze(design, levels))
    edges = [plinth_top - min(RAIL_BEHIND_PLINTH, plinth_top - y0), *(edge for p in panels for edge in p), y1]
    rails = zip(edges[::2], edges[1::2], strict=True)
    leaning = (panels[0][0], panels[count - 1][1])
    inside = _inside(taper, stile, leaning) if taper else None

    def within(y: Point2) -> Rect:
        left, right = inside.within(y) if inside else (x0 + stile, x1 - stile)
        return left, y[0], right, y[1]

    return Frame(
        outline=outline,
        front=column.projection,
        reveal=_column_reveal(design, taper, ledger),
        stiles=((x0, y0, x0 + stile, y1), (x1 - stile, y0, x1, y1)),
        rails=tuple(within(y) for y in rails),
        openings=tuple(within(y) for y in panels),
        inside=inside,
    )


def _inside(taper: Edges, stile: float, panels: Point2) -> Edges:
    """Along stiles that are `stile` wide beside the panels, and upright beside the rails below and above.

    So only the rails between two panels have angled ends.
    """
    whole = taper.inset(stile)
    return Edges(whole.inner.held(*panels), whole.outer.held(*panels))


def _column_reveal(design: Design, taper: Edges | None, ledger: Ledger) -> float:
    """As asked; a tapered column's panels are one sheet right behind its boards."""
    asked, board = design.panel.reveal, design.board.thickness
    built = _reveal(design, asked)
    if taper is None or built == board:
        return built
    reason = "the panels of a tapered column are one sheet right behind its boards"
    return ledger.hold("panel.reveal", asked, board, reason)


def _beside_frieze(design: Design, levels: _Levels) -> Point2:
    """Foot and head of the panel over a capital: the frieze's, or what rails like its own would leave."""
    if levels.frieze.openings:
        _, low, _, high = levels.frieze.openings[0]
        return low, high
    bottom = levels.frieze.outline[1]
    rail = min(design.column.rail, (levels.under_bed - bottom - LEAST_PANEL) / 2)
    return bottom + rail, levels.under_bed - rail


def _frieze_reveal(design: Design, front: float, ledger: Ledger) -> float:
    asked = design.panel.reveal
    if design.frieze.place == IN_FRONT:
        built = design.front_reveal
        reason = "the panels of a frieze over the columns lie within its boards, or behind them"
        return built if abs(built - asked) < FLUSH else ledger.hold("panel.reveal", asked, built, reason)
    built = min(asked, front - design.panel.thickness)
    reason = "the frieze stands too close to the masonry for the panel behind it"
    return ledger.hold("panel.reveal", asked, built, reason)


def _frieze_frame(design: Design, outline: Rect, front: float, under_bed: float, ledger: Ledger) -> Frame:
    x0, y0, x1, y1 = outline
    frieze = design.frieze
    if frieze.kind != FRAMED:
        return Frame(outline, front, design.board.thickness, (), (outline,), ())
    reveal = _frieze_reveal(design, front, ledger)
    count, stile = _fit_panels("frieze", "wide", frieze.panels, frieze.stile, x1 - x0, 1, ledger)
    ledger.hold("frieze.stile", frieze.stile, stile, "the frieze is too short for the stiles and a panel")
    rail = ledger.hold(
        "frieze.rail",
        frieze.rail,
        min(frieze.rail, (under_bed - y0 - LEAST_PANEL) / 2),
        "the frieze is too low for two rails and a panel",
    )
    low, high = y0 + rail, under_bed - rail
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


def _fit_strips(design: Design, frieze: Frame, ledger: Ledger) -> Point2:
    """Heights of the ledger under the shelf and of the cleat over the soffit: half of the hollow at most."""
    if frieze.front - max(design.board.thickness, frieze.thickness(design.panel.thickness)) < STRIP:
        return 0.0, 0.0
    _, bottom, _, top = frieze.outline
    most = (top - bottom - design.board.thickness) / 2
    asked, reason = design.nailer, "behind the frieze each of ledger and cleat has half of its height"
    under_shelf = ledger.hold("nailer.ledger", asked.ledger, min(asked.ledger, most), reason)
    return under_shelf, ledger.hold("nailer.cleat", asked.cleat, min(asked.cleat, most), reason)


def _reveal(design: Design, asked: float) -> float:
    """Flush on the frame's back when the difference is too thin to cut."""
    board = design.board.thickness
    return board if abs(asked - board) < FLUSH else asked
