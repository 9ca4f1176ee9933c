"""A drawing is a recording: an unchanging list of marks in model inches, x to the right, y up.

Only what is drawn stands here. What a pen looks like is in render.pens; points, pixels and which way
y runs are the writers' business.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from model.units import MM_PER_INCH

Point = tuple[float, float]
Segment = tuple[float, float, float, float]
Ring = tuple[Point, ...]
MM = 1 / MM_PER_INCH
"""A millimetre in inches on paper."""


class Pen(StrEnum):
    """The role a line plays; widths, dashes and tones follow from it."""

    OUTLINE = "outline"
    EDGE = "edge"
    ARRIS = "arris"
    CUT = "cut"
    BEYOND = "beyond"
    HATCH = "hatch"
    SITE = "site"
    GROUND = "ground"
    CENTRE = "centre"
    DIMENSION = "dimension"
    TEXT = "text"
    CLEARANCE = "clearance"
    FAULT = "fault"
    GUIDE = "guide"
    BORDER = "border"
    RULE = "rule"


class Fill(StrEnum):
    """What an area is of."""

    WOOD = "wood"
    CUT_WOOD = "cut wood"
    FACING = "facing"
    WALL = "wall"
    HEARTH = "hearth"
    MASONRY = "cut masonry"
    OPENING = "opening"
    KEEP_OUT = "keep-out"
    FAULT = "fault"
    SHADE = "turned from the light"
    SHADOW = "in shadow"
    PAPER = "paper"
    BAND = "band"
    COLUMN_PIECE = "piece of a column"
    FRIEZE_PIECE = "piece of the frieze"
    SHELF_PIECE = "piece of the shelf"
    MOULDING_PIECE = "piece of a moulding"
    OTHER_PIECE = "any other piece"


class Anchor(StrEnum):
    """Which point of a text stands at its place: the baseline's start, middle or end."""

    START = "start"
    MIDDLE = "middle"
    END = "end"


@dataclass(frozen=True, slots=True)
class Lines:
    """Straight strokes (x1, y1, x2, y2) with one pen. `stands_for` is a board's mark or a parameter path.

    `ink` is a colour of their own, #rrggbb, where a picture is in colours that were chosen; else the pen's.
    """

    pen: Pen
    segments: tuple[Segment, ...]
    stands_for: str = ""
    ink: str = ""


@dataclass(frozen=True, slots=True)
class Polyline:
    """A bent stroke through its points, closed or not."""

    pen: Pen
    points: Ring
    closed: bool = False
    stands_for: str = ""


@dataclass(frozen=True, slots=True)
class Region:
    """A filled area: an outer ring, then holes; rings not closed. No outline of its own.

    `tint` is a colour of its own, #rrggbb, where a picture is in colours that were chosen; else the fill's.
    """

    fill: Fill
    rings: tuple[Ring, ...]
    stands_for: str = ""
    tint: str = ""


@dataclass(frozen=True, slots=True)
class Hatch:
    """Parallel strokes over an area: `angle` in degrees, `spacing` between strokes in model inches."""

    pen: Pen
    rings: tuple[Ring, ...]
    angle: float
    spacing: float
    stands_for: str = ""


@dataclass(frozen=True, slots=True)
class Text:
    """One line of writing. `height` is of the capitals, `rotation` degrees counter-clockwise."""

    text: str
    at: Point
    height: float
    anchor: Anchor = Anchor.START
    rotation: float = 0.0
    bold: bool = False
    pen: Pen = Pen.TEXT
    stands_for: str = ""


@dataclass(frozen=True, slots=True)
class Dimension:
    """A measured distance, level or plumb, that stays a dimension in every writer.

    `first` and `second` are the measured points. `vertical` says which way the distance runs. `line`
    is the dimension line's y (level) or x (plumb). `text` stands centred at `text_at`, turned 90
    degrees when `vertical`; `height` is of its capitals. A `text_at` off the line's span is joined to
    it by a short leader from the span's middle. `stands_for` is the parameter it shows, if any.
    """

    first: Point
    second: Point
    vertical: bool
    line: float
    text: str
    text_at: Point
    height: float
    lifted: bool = False
    stands_for: str = ""

    @property
    def span(self) -> tuple[float, float]:
        """Where the dimension line begins and ends, along its run, lower first."""
        i = 1 if self.vertical else 0
        low, high = sorted((self.first[i], self.second[i]))
        return low, high

    @property
    def measure(self) -> float:
        """The distance in model inches."""
        low, high = self.span
        return high - low


Mark = Lines | Polyline | Region | Hatch | Text | Dimension


@dataclass(frozen=True, slots=True)
class Drawing:
    """Marks in the order they are laid down, with the ratio they were lettered for.

    `ratio` is model inches to one inch on paper (12 for 1" = 1'-0"): texts and the distances between
    dimension lines are in model inches that come out right on paper at that ratio.
    """

    marks: tuple[Mark, ...]
    ratio: float = 1.0

    def plus(self, *marks: Mark) -> Drawing:
        """The same drawing with more laid over it."""
        return Drawing(self.marks + marks, self.ratio)


@dataclass(frozen=True, slots=True)
class Placed:
    """A drawing on a sheet: its model origin lies at `at` (paper inches from the lower left corner).

    `bookmark` is what it is found under in a document's outline, if its name does not say it.
    """

    drawing: Drawing
    at: Point
    name: str = ""
    bookmark: str = ""


@dataclass(frozen=True, slots=True)
class PlacedPicture:
    """A photo on a sheet: a JPEG's bytes, and left, bottom, right, top in paper inches."""

    data: bytes
    box: tuple[float, float, float, float]


@dataclass(frozen=True, slots=True)
class Link:
    """Writing that names a sheet: left, bottom, right, top in paper inches, and the sheet's number from 1."""

    box: tuple[float, float, float, float]
    to: int


@dataclass(frozen=True, slots=True)
class Sheet:
    """A page: size in paper inches, drawings each at its own ratio, its number, title and references."""

    number: str
    title: str
    width: float
    height: float
    placed: tuple[Placed, ...]
    links: tuple[Link, ...] = ()
    pictures: tuple[PlacedPicture, ...] = ()
