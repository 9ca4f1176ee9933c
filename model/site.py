"""What was measured at the fireplace. Lengths in inches; `None` where a reading may be missing.

Defaults, bounds and help stand in the one table, model.parameters.
"""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Opening:
    """The firebox's clear mouth: `height` and `sill` from the finished hearth to its top and its foot."""

    width: float
    height: float
    sill: float = 0.0

    @property
    def area(self) -> float:
        """Square inches of the clear mouth."""
        return self.width * max(self.height - self.sill, 0.0)


@dataclass(frozen=True, slots=True)
class Facing:
    """Brick, stone or tile around the opening; its front face is the plane z = 0.

    `proud` is how far that face stands in front of the wall beside it, `added` how thick the noncombustible
    slips or tile are that will be laid on it round the opening.
    """

    width: float
    height: float
    proud: float
    added: float


@dataclass(frozen=True, slots=True)
class Hearth:
    """The noncombustible floor in front: `height` above the room's floor, `depth` out from the facing."""

    height: float
    width: float
    depth: float
    thickness: float | None


@dataclass(frozen=True, slots=True)
class Readings:
    """The same sizes read again at other places, and the opening's diagonals seen from the front."""

    opening_width: tuple[float, ...]
    opening_height: tuple[float, ...]
    facing_width: tuple[float, ...]
    facing_height: tuple[float, ...]
    hearth_depth: tuple[float, ...]
    diagonal_falling: float | None
    diagonal_rising: float | None


@dataclass(frozen=True, slots=True)
class Level:
    """Readings down from one level line: to the hearth at the opening, and to where each column stands.

    `floor_left` and `floor_right` go down to the floor under a column that steps over the hearth's end.
    """

    centre: float | None
    left: float | None
    right: float | None
    floor_left: float | None
    floor_right: float | None


@dataclass(frozen=True, slots=True)
class Plumb:
    """How far what is behind each column is out of plumb over the column's height, or up to its own top.

    Above nothing it leans toward the room at the top.
    """

    left: float | None
    right: float | None


CUT_BACK, NOTCHED = "cut_back", "notched"
"""How a baseboard and a column meet: the words that stand in a job file."""


@dataclass(frozen=True, slots=True)
class Baseboard:
    """The board along the wall's foot on either side, if any; `meets` is CUT_BACK or NOTCHED.

    `thickness` holds on both sides but where one side's own is given.
    """

    height_left: float | None
    height_right: float | None
    thickness: float
    thickness_left: float | None
    thickness_right: float | None
    meets: str


@dataclass(frozen=True, slots=True)
class Outlet:
    """An outlet on either side, if any: its middle from the centre line and over the floor, and its plate."""

    left: float | None
    right: float | None
    height_left: float
    height_right: float
    width: float
    tall: float


@dataclass(frozen=True, slots=True)
class Casing:
    """A window's or door's casing on either side, if any: its near edge from the centre line.

    Its ends are over the floor; `proud` is how far it stands out from the wall.
    """

    left: float | None
    right: float | None
    bottom_left: float
    top_left: float
    bottom_right: float
    top_right: float
    proud: float


KEEP, USE, REMOVE = "keep", "use", "remove"
"""What becomes of a ledger that is on the masonry already: the words that stand in a job file."""


@dataclass(frozen=True, slots=True)
class OldLedger:
    """A ledger on the masonry already, if any: its `top` over the hearth, and its size.

    `left` and `right` are from the centre line out to its ends; `use` is KEEP, USE or REMOVE.
    """

    top: float | None
    tall: float
    thick: float
    left: float
    right: float
    use: str


@dataclass(frozen=True, slots=True)
class Bolt:
    """A bolt or stud left in the masonry, if any: its middle, how far it stands out, and its diameter.

    `across` is from the centre line, less than nothing on the left; `up` is over the hearth.
    """

    across: float | None
    up: float
    out: float
    diameter: float


@dataclass(frozen=True, slots=True)
class Room:
    """Ceiling over the room's floor; wall free to the left and right of the opening's edges.

    `length` and `breadth` are the room's own, if they were measured. `driest` and `dampest` are the relative
    humidity of its air through the year, %.
    """

    ceiling: float
    left: float
    right: float
    length: float | None
    breadth: float | None
    driest: float
    dampest: float


@dataclass(frozen=True, slots=True)
class Television:
    """A set over the shelf, if any: its `diagonal` and its lower edge's `gap` over the shelf.

    `eye` is a seated person's eye over the floor, `away` that person's distance from the set.
    """

    diagonal: float | None
    gap: float
    eye: float
    away: float


@dataclass(frozen=True, slots=True)
class House:
    """What may be stirred up: the `year` it was built and the square feet of old paint taken off, if known.

    `old_board` says that there is old board, paper or cement sheet round the fireplace.
    """

    year: float | None
    painted: float | None
    old_board: bool


AT_OPENING, AT_HOOD, AT_OUTLET, AT_BASE = "opening", "hood", "outlet", "base"
"""What an appliance's chart counts heights from: the words that stand in a job file."""
STEP_UP, LINEAR = "step_up", "linear"
"""What holds between two rows of a chart."""


@dataclass(frozen=True, slots=True)
class Chart:
    """An appliance manual's chart.

    `shelf` pairs a greatest projection with the least height above the datum, `shelf_hood` the same where a
    `hood` is fitted, `legs` a greatest projection with the least distance beside the opening; all sorted by
    projection, empty when not entered. Heights count from `datum`, which but for AT_OPENING lies
    `datum_height` over the hearth. `between` is STEP_UP or LINEAR; past the last row of the shelf its own
    projection and `plus` are enough, nothing is where that is None. Nothing may stand out further than
    `greatest`. Within `none_above` and `none_beside` all must be noncombustible. `hearth_front`,
    `hearth_side` and `hearth_thickness` are the least hearth before the unit and beyond each side of its
    opening, 0 where the manual asks for none, None where it was not looked up.
    """

    shelf: tuple[tuple[float, float], ...]
    legs: tuple[tuple[float, float], ...]
    hood: bool
    shelf_hood: tuple[tuple[float, float], ...]
    datum: str
    datum_height: float | None
    between: str
    plus: float | None
    greatest: float | None
    none_above: float | None
    none_beside: float | None
    source: str
    hearth_front: float | None
    hearth_side: float | None
    hearth_thickness: float | None


@dataclass(frozen=True, slots=True)
class Local:
    """What a place has enacted for itself, as read there; like a chart counted from the opening."""

    shelf: tuple[tuple[float, float], ...]
    legs: tuple[tuple[float, float], ...]
    source: str
    hearth_front: float | None
    hearth_side: float | None
    hearth_thickness: float | None


@dataclass(frozen=True, slots=True)
class Site:
    """The fireplace as measured, and the rule set that governs it."""

    fireplace: str
    rule: str
    opening: Opening
    facing: Facing
    hearth: Hearth
    readings: Readings
    level: Level
    plumb: Plumb
    room: Room
    baseboard: Baseboard
    outlet: Outlet
    casing: Casing
    old_ledger: OldLedger
    bolt_one: Bolt
    bolt_two: Bolt
    bolt_three: Bolt
    chart: Chart
    local: Local
    tv: Television
    house: House
