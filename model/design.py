"""What was chosen: the surround itself. Lengths in inches; defaults and bounds in model.parameters."""

from dataclasses import dataclass

from model.fixing import AnchorRule, CordWay, Nailer
from model.reference.panels import CHEEK

FRAMED, PLAIN, FLUTED, RAISED, TABLET = "framed", "plain", "fluted", "raised", "tablet"
"""Kinds of column and of frieze: the words that stand in a job file."""
BOTH, OUTER = "both", "outer"
"""Which edges of a tapered column lean."""
BETWEEN, IN_FRONT = "between", "in_front"
"""Where a frieze runs: between the columns, or over their faces."""
BUILT_UP, PLANK = "built_up", "plank"
"""How a shelf is made."""
TO_CEILING, TO_HEIGHT = "ceiling", "height"
"""Where an overmantel ends."""
SHEET, SOLID = "sheet", "solid"
"""What panels are made of."""
FLUSH = 1 / 32
"""A reveal that differs less from the boards' thickness, in., is made flush with their back. Shop choice."""
LEAST_REVEAL = 1 / 16
"""Shallowest reveal that is worth a rebate, in. Shop choice."""


@dataclass(frozen=True, slots=True)
class Column:
    """A boxed leg; `margin` is from the opening's edge to its inner side.

    Both are `width` wide at the foot, but for one whose own width is given, and `taper` narrower at the top,
    wider below nothing. `taper_edges`, BOTH or OUTER, says which edges lean. `over_edge` is what one does at
    a raised hearth's end, in a word of model.build.hearth_step. `kind` is FRAMED, PLAIN, FLUTED or RAISED.
    """

    kind: str
    width: float
    width_left: float | None
    width_right: float | None
    taper: float
    taper_edges: str
    projection: float
    margin: float
    over_edge: str
    stile: float
    rail: float
    panels: int


@dataclass(frozen=True, slots=True)
class Flute:
    """The hollows up a fluted column's face: how many, each one's size, and the flat `between` two.

    `stop` is how much plain face is left at either end of them.
    """

    count: int
    width: float
    depth: float
    between: float
    stop: float


@dataclass(frozen=True, slots=True)
class Raised:
    """The board laid on a column's plain face: `margin` of the face is left showing all round it."""

    margin: float
    thickness: float


@dataclass(frozen=True, slots=True)
class Plinth:
    """The block wrapped round a column's foot, if any; `projection` beyond the column on three sides."""

    on: bool
    height: float
    projection: float


@dataclass(frozen=True, slots=True)
class Frieze:
    """The face under the shelf; `projection` from the masonry to its front where it lies between the columns.

    `kind` is FRAMED, PLAIN or TABLET, `place` BETWEEN or IN_FRONT: there it runs over the columns' faces.
    """

    kind: str
    place: str
    height: float
    projection: float
    stile: float
    rail: float
    panels: int


@dataclass(frozen=True, slots=True)
class Tablet:
    """The raised field in the middle of a plain frieze."""

    width: float
    height: float
    thickness: float


@dataclass(frozen=True, slots=True)
class Panel:
    """What fills a frame, SHEET or SOLID; `reveal` from the frame's front back to it.

    `grain` says how pieces may lie on the sheet they are cut from.
    """

    kind: str
    reveal: float
    thickness: float
    grain: str


@dataclass(frozen=True, slots=True)
class Shelf:
    """The mantel shelf; `height` to its top, from the hearth or the floor as `height_from` says.

    `overhang_front` is past the foremost part below it, `overhang_end` past the columns' outer sides,
    but for an end whose own overhang is given. `step` is how far the front breaks forward over each column
    and its overhang, which is as much on the column's inner side. `kind` is BUILT_UP or PLANK. `load`, lb per
    ft, will stand on it.
    """

    kind: str
    height: float
    height_from: str
    thickness: float
    overhang_front: float
    overhang_end: float
    overhang_left: float | None
    overhang_right: float | None
    step: float
    edge_height: float
    edge_profile: str
    edge_size: float
    load: float


@dataclass(frozen=True, slots=True)
class Overmantel:
    """The framed field on the shelf; `reach` is TO_CEILING or TO_HEIGHT, `projection` off what is behind."""

    on: bool
    reach: str
    height: float
    projection: float
    stile: float
    rail: float
    panels: int


@dataclass(frozen=True, slots=True)
class Moulding:
    """One place's moulding: whether there is one, the word for its section, and how high it is.

    How far it stands out follows from the section. A section of the job's own keeps its own size.
    """

    on: bool
    profile: str
    size: float


@dataclass(frozen=True, slots=True)
class Slip:
    """The flat frame on the facing along the surround's inner edge."""

    on: bool
    width: float
    thickness: float


@dataclass(frozen=True, slots=True)
class OwnSection:
    """Up to three sections that the job brings along, as text; empty where there is none."""

    first: str
    second: str
    third: str


@dataclass(frozen=True, slots=True)
class BoardStock:
    """The boards it is made of: thickness as measured, the wood, and what comes out of one board."""

    thickness: float
    species: str
    match: str


@dataclass(frozen=True, slots=True)
class Look:
    """Colours in pictures: a word of the palettes in model.look, or #rrggbb. `finish` is how the wood is."""

    finish: str
    paint: str
    stain: str
    facing: str
    wall: str


@dataclass(frozen=True, slots=True)
class Design:
    """One design for one site."""

    column: Column
    flute: Flute
    raised: Raised
    plinth: Plinth
    frieze: Frieze
    tablet: Tablet
    panel: Panel
    shelf: Shelf
    over: Overmantel
    bed_mould: Moulding
    capital: Moulding
    plinth_cap: Moulding
    panel_mould: Moulding
    back_band: Moulding
    slip: Slip
    own_section: OwnSection
    nailer: Nailer
    cord: CordWay
    anchor: AnchorRule
    board: BoardStock
    look: Look

    @property
    def foremost(self) -> float:
        """Projection of the foremost part that the shelf lies on."""
        if self.frieze.place == IN_FRONT:
            return self.column.projection + self.front_frieze
        return max(self.column.projection, self.frieze.projection)

    @property
    def front_frieze(self) -> float:
        """How thick a frieze over the columns is, with a sheet behind it where the panels lie there."""
        board, reveal = self.board.thickness, self.front_reveal
        backed = self.frieze.kind == FRAMED and reveal >= board
        return reveal + self.panel.thickness if backed else board

    @property
    def groove_reveal(self) -> float | None:
        """How far behind a frame's face solid panels lie at most, so that their groove leaves wood behind it.

        None where panels are no solid wood, or too thick for such a groove in the boards.
        """
        if self.panel.kind != SOLID:
            return None
        deepest = self.board.thickness - self.panel.thickness - CHEEK.value
        return deepest if deepest >= LEAST_REVEAL else None

    @property
    def front_reveal(self) -> float:
        """Reveal of a frieze over the columns: its panels lie within the boards or whole behind them."""
        asked, board = self.panel.reveal, self.board.thickness
        if self.groove_reveal is not None:
            return min(asked, self.groove_reveal)
        if asked > board - FLUSH:
            return board if asked < board + FLUSH else asked
        within = min(asked, board - self.panel.thickness)
        return within if within >= LEAST_REVEAL else board

    @property
    def shelf_depth(self) -> float:
        """Depth of the shelf from the masonry to its front edge between the columns."""
        return self.foremost + self.shelf.overhang_front
