"""Which DXF layer a mark is drawn on, and what that layer looks like. Marks are written in export.dxf.

Names follow the pattern of the AIA CAD Layer Guidelines (US National CAD Standard): discipline A, a
major group of four letters, a minor group of four letters. OTLN, MCUT, MBND, PATT, IDEN, DIMS and NOTE are
theirs; the other minor groups are of the same form and name what a pen draws.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from model.units import MM_PER_INCH
from render.cut_marks import CUT_MARK
from render.drawing import Pen
from render.pens import INK, STROKES, luminance, rgb
from render.references import HELD
from render.sheets import SITE_CUT, SITE_FRONT, SITE_PLAN

_GROUPS = {
    "front": "ELEV",
    "side": "ELEV",
    "plan": "FLOR",
    "plan_section": "SECT",
    "vertical_section": "SECT",
    SITE_FRONT: "ELEV",
    SITE_CUT: "SECT",
    SITE_PLAN: "FLOR",
}
_OTHER_GROUP = "DETL"
FRAME = "frame"
"""The name of a sheet's border and title block among its drawings."""
_FRAME_GROUP = "ANNO-TTLB"

_DRAWN = {
    Pen.OUTLINE: "OTLN",
    Pen.EDGE: "EDGE",
    Pen.ARRIS: "ARIS",
    Pen.CUT: "MCUT",
    Pen.BEYOND: "MBND",
    Pen.HATCH: "PATT",
    Pen.SITE: "EXST",
    Pen.GROUND: "GRND",
    Pen.CENTRE: "CNTR",
}
_WRITTEN = {
    Pen.DIMENSION: "DIMS",
    Pen.TEXT: "NOTE",
    Pen.CLEARANCE: "CLRN",
    Pen.FAULT: "FALT",
    Pen.GUIDE: "GUID",
    Pen.BORDER: "TTLB",
    Pen.RULE: "RULE",
}
_MARKED = "IDEN"
_ROOM = "ROOM"
_ROOM_LINES = ("ceiling", "wall", "wall end")
"""What lines stand for that a sheet may draw nearer than they are."""
_SYMBOL_GROUP = "ANNO-SYMB"
"""For signs that have their size on paper, whatever pen draws them."""
LINE_PENS = (Pen.OUTLINE, Pen.EDGE, Pen.ARRIS, Pen.CUT, Pen.BEYOND, Pen.SITE, Pen.GROUND)
"""Pens that draw what is there, at any scale. All others draw what has its size on paper."""
WINDOW_LAYER = "A-ANNO-NPLT"
"""For the frames of viewports, which are seen on the screen and not plotted: the guidelines' own name."""

LEGAL_WEIGHTS = (
    0,
    5,
    9,
    13,
    15,
    18,
    20,
    25,
    30,
    35,
    40,
    50,
    53,
    60,
    70,
    80,
    90,
    100,
    106,
    120,
    140,
    158,
    200,
    211,
)
"""Line weights the format allows, in 1/100 mm (ezdxf documentation, "Lineweights")."""

PLAIN_INK = 7
"""The indexed colour that is black on white and white on black."""
LEAST_LUMINANCE = 0.15
"""Of a layer's colour: contrast 4 with black and 5.25 with white; WCAG 2.1 asks 3 of lines."""


@dataclass(frozen=True, slots=True)
class Layer:
    """A layer's name and the pen whose width, dashes and ink it carries."""

    name: str
    pen: Pen

    @property
    def is_for_all_scales(self) -> bool:
        """Whether it shows in viewports: lines of what is there, no hatch, no writing, no end of a room."""
        return self.pen in LINE_PENS and not self.name.endswith(_ROOM) and _SYMBOL_GROUP not in self.name

    @property
    def weight(self) -> int:
        """Line weight in 1/100 mm, the nearest the format allows."""
        return min(LEGAL_WEIGHTS, key=lambda legal: abs(legal - STROKES[self.pen].width * 100))

    @property
    def linetype(self) -> str:
        """Name of the line type; the solid one has a name the format gives."""
        return self.pen.name if STROKES[self.pen].dash else "Continuous"

    @property
    def pattern(self) -> tuple[float, ...]:
        """Whole length, then dashes above and gaps below zero, in plotted inches; empty when solid."""
        dash = [mm / MM_PER_INCH for mm in STROKES[self.pen].dash]
        return (sum(dash), *(-mm if i % 2 else mm for i, mm in enumerate(dash))) if dash else ()

    @property
    def colour(self) -> tuple[int, int, int] | None:
        """Red, green and blue from 0 to 255; None for plain ink, which turns white on a dark screen."""
        ink = STROKES[self.pen].ink
        return None if ink == INK else _lighten(ink)


def _lighten(ink: str) -> tuple[int, int, int]:
    """`ink`, mixed with white in hundredths until it can be read on a black screen as on white paper."""
    for white in range(100):
        red, green, blue = (round(255 * (c + (1 - c) * white / 100)) for c in rgb(ink))
        if luminance(f"#{red:02x}{green:02x}{blue:02x}") >= LEAST_LUMINANCE:
            break
    return red, green, blue


def nearest_index(layer: Layer) -> int:
    """The number from 1 to 255 of the indexed colour nearest to the layer's, 7 for plain ink."""
    return PLAIN_INK if layer.colour is None else _nearest_to(layer.colour)


@lru_cache(maxsize=64)
def _nearest_to(wanted: tuple[int, int, int]) -> int:
    from ezdxf.colors import aci2rgb

    return min(
        range(1, 256), key=lambda i: sum((a - b) ** 2 for a, b in zip(aci2rgb(i), wanted, strict=True))
    )


def is_symbol(stands_for: str) -> bool:
    """Whether a mark is part of a sign, such as that of a section, and of nothing that is there."""
    return stands_for == CUT_MARK or stands_for.startswith(HELD)


def find_layer(view: str, pen: Pen, stands_for: str = "") -> Layer:
    """The layer for what `pen` draws in the view of that name, or on the frame of a sheet."""
    if view == FRAME and pen is not Pen.BORDER:
        return Layer(f"A-{_FRAME_GROUP}-{_WRITTEN.get(pen) or _DRAWN[pen]}", pen)
    if pen in _WRITTEN:
        return Layer(f"A-ANNO-{_WRITTEN[pen]}", pen)
    if is_symbol(stands_for):
        return Layer(f"A-{_SYMBOL_GROUP}-{_DRAWN[pen]}", pen)
    drawn = _ROOM if pen is Pen.SITE and stands_for in _ROOM_LINES else _DRAWN[pen]
    return Layer(f"A-{_GROUPS.get(view, _OTHER_GROUP)}-{drawn}", pen)


def find_text_layer(view: str, pen: Pen, stands_for: str) -> Layer:
    """The layer for writing and what joins it to its place.

    A board's mark stands with its view, a parameter's or a note with the notes.
    """
    if pen is Pen.TEXT and stands_for and "." not in stands_for and not is_symbol(stands_for):
        return Layer(f"A-{_GROUPS.get(view, _OTHER_GROUP)}-{_MARKED}", pen)
    return find_layer(view, pen, stands_for)
