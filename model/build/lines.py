"""The lines that site and design put down before any board is placed, and what follows.

How they come about stands in layout beside this.
"""

from __future__ import annotations

from dataclasses import dataclass

from model.board import Point2
from model.build.facing import Lean
from model.build.flutes import Flutes
from model.build.groove import Groove
from model.build.hearth_step import HearthStep
from model.build.ledger import Shortfall
from model.build.mouldings import Mouldings
from model.build.obstacles import Obstacle, notch_at
from model.build.taper import Edges, upright

NEAR = 1e-6
"""Places nearer to each other than this are one, in."""
LEAST_LAYER = 0.125
"""Thinnest strip, rib or soffit that is cut as a piece of its own, in. Shop choice."""
STRIP = 0.75
"""Dressed thickness of one-by strips, in. American Softwood Lumber Standard PS 20."""
LEAST_STEP = 1 / 16
"""A facing less proud of the wall than this, in., is scribed over and not stepped. Shop choice."""
PANEL_LAP = 0.375
"""How far a panel laps behind its frame where it sits in a rebate, in. Shop choice."""
Rect = tuple[float, float, float, float]
"""x0, y0, x1, y1 on a face of the surround."""


@dataclass(frozen=True, slots=True)
class RaisedBoard:
    """What is laid on a column's plain face between two levels, and how much of the face shows round it."""

    y: Point2
    margin: float
    thickness: float


@dataclass(frozen=True, slots=True)
class Frame:
    """Stiles, rails and panel openings as built, seen from the front; a column's as if it stood on the right.

    `front` is z of its face, `reveal` how far behind it the panels lie. Exactly one of stiles and rails
    runs through: the stiles of a column, the rails of a frieze. A plain face has no openings: its boards
    stand where the members that run through would, and `reveal` is their thickness. `flutes` is which of
    a column's boards is fluted, `raised` what is laid on them. `inside` are the edges of a tapered column's
    stiles along its panels; its stiles and outline are given at the foot, its openings and rails as far as
    they are upright. `groove` is what solid panels float in, None where panels are sheets.
    """

    outline: Rect
    front: float
    reveal: float
    stiles: tuple[Rect, ...]
    rails: tuple[Rect, ...]
    openings: tuple[Rect, ...]
    flutes: Rect | None = None
    raised: RaisedBoard | None = None
    inside: Edges | None = None
    groove: Groove | None = None

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

    `inner` and `outer` are x of its sides at the foot, `taper` both edges of a column that is tapered;
    `shelf_side` is x of the shelf's end. `base` is y of where it stands, `plinth_top` y over its plinth.
    `on_hearth` says whether the hearth carries it whole, `step` where it steps down from there to the floor.
    `inner_back` and `outer_back` are z behind its inner and outer sides, up to the top of the facing they lie
    on. `lean` is how that facing, or the wall where neither lies on it, is out of plumb.
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
    def edges(self) -> Edges:
        """Both its edges, upright where it is not tapered."""
        return self.taper or Edges(upright(self.inner), upright(self.outer))

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
        """How what lies at z = `back` leans: the facing, or the wall where neither side is on the facing.

        None where it was not read or is plumb, and for a back that does not lie on it.
        """
        measured = back == max(self.inner_back, self.outer_back)
        return self.lean if measured else None


LEFT, RIGHT = "left", "right"


@dataclass(frozen=True, slots=True)
class Layout:
    """Room coordinates of the surround's lines, inches.

    `*_side` are x right of the centre line, where the left lies alike; so is `column_inner`, x of both
    columns' inner sides beside the frieze. `*_top`, `*_bottom`, `*_foot`, `floor` and `ceiling` are y, and
    `edge_bottom` is that of the shelf's edge. `*_front` are z of faces, `shelf_back` of the shelf's back,
    `wall` of the wall beside the facing. `plinth_out` is how far plinths stand out from the columns,
    `shelf_step` how much further forward the shelf's face lies over them; `board` and `panel` are
    thicknesses. `frieze_over` says that the frieze runs over the columns' faces, `strips` how high the ledger
    and the cleat behind it are, 0 where there is no room for them. `obstacles` stand in the room, `behind`
    was left on the masonry behind the surround.
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
        """(y, z) of the upper front corner of the notch round a baseboard in what stands at `x` before it.

        None where the column is not notched, or not there.
        """
        round_it = notch_at(self.obstacles, side.name) if self.obstacles else None
        if round_it is None:
            return None
        low, high = sorted(abs(end) for end in round_it.x)
        return (round_it.y[1], round_it.z[1]) if x[0] < high - NEAR and low < x[1] - NEAR else None

    def step_up(self, base: float, back: float) -> float | None:
        """y at which a back that lies on the facing goes back to the wall; None where it does not."""
        return find_step_up(self.facing_top, self.wall, (base, self.shelf_bottom), back)

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


def find_step_up(facing_top: float, wall: float, leg: Point2, back: float) -> float | None:
    """y at which a back that lies on the facing goes back to the wall; None where it does not.

    `leg` is y of the piece's foot and head, `back` z of its back at the foot, `wall` z of the wall beside the
    facing. Over a facing that is less proud than LEAST_STEP the back runs straight.
    """
    stands_off = back == 0.0 and wall < -LEAST_STEP
    within = leg[0] + LEAST_LAYER <= facing_top <= leg[1] - LEAST_LAYER
    return facing_top if stands_off and within else None


def is_broken(over: bool, column: float, frieze: float) -> bool:
    """Whether what runs along faces at z = `column` and `frieze`, one `over` the other, goes round columns.

    A step too small to mitre round is run straight across, along whichever stands further out.
    """
    return not over and abs(column - frieze) >= LEAST_LAYER / 2
