"""What was chosen: the surround itself. Lengths in inches; defaults and bounds in model.parameters."""

from dataclasses import dataclass

from model.fixing import Nailer


@dataclass(frozen=True, slots=True)
class Column:
    """A boxed leg; `margin` is from the opening's edge to its inner side.

    Both are `width` wide, but for one whose own width is given.
    """

    width: float
    width_left: float | None
    width_right: float | None
    projection: float
    margin: float
    stile: float
    rail: float
    panels: int


@dataclass(frozen=True, slots=True)
class Plinth:
    """The block wrapped round a column's foot; `projection` beyond the column on three sides."""

    height: float
    projection: float


@dataclass(frozen=True, slots=True)
class Frieze:
    """The framed board between the columns; `projection` from the masonry to its front."""

    height: float
    projection: float
    stile: float
    rail: float
    panels: int


@dataclass(frozen=True, slots=True)
class Panel:
    """The thin sheet behind a frame; `reveal` from the frame's front back to the sheet."""

    reveal: float
    thickness: float


@dataclass(frozen=True, slots=True)
class Shelf:
    """The mantel shelf; `height` to its top, from the hearth or the floor as `height_from` says.

    `overhang_front` is past the foremost part below it, `overhang_end` past the columns' outer sides,
    but for an end whose own overhang is given.
    """

    height: float
    height_from: str
    thickness: float
    overhang_front: float
    overhang_end: float
    overhang_left: float | None
    overhang_right: float | None
    edge_height: float
    edge_profile: str
    edge_size: float


@dataclass(frozen=True, slots=True)
class Moulding:
    """One place's moulding: whether there is one, the word for its section, and how high it is.

    How far it stands out follows from the section. A section of the job's own keeps its own size.
    """

    on: bool
    profile: str
    size: float


@dataclass(frozen=True, slots=True)
class OwnSection:
    """Up to three sections that the job brings along, as text; empty where there is none."""

    first: str
    second: str
    third: str


@dataclass(frozen=True, slots=True)
class BoardStock:
    """The boards it is made of: thickness as measured, and the wood."""

    thickness: float
    species: str


@dataclass(frozen=True, slots=True)
class Design:
    """One design for one site."""

    column: Column
    plinth: Plinth
    frieze: Frieze
    panel: Panel
    shelf: Shelf
    bed_mould: Moulding
    capital: Moulding
    plinth_cap: Moulding
    panel_mould: Moulding
    back_band: Moulding
    own_section: OwnSection
    nailer: Nailer
    board: BoardStock

    @property
    def foremost(self) -> float:
        """Projection of the foremost part that the shelf lies on."""
        return max(self.column.projection, self.frieze.projection)

    @property
    def shelf_depth(self) -> float:
        """Depth of the shelf from the masonry to its front edge."""
        return self.foremost + self.shelf.overhang_front
