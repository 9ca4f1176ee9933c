"""What each pen and each fill looks like on paper: widths and dashes in millimetres, ink and tint as #rrggbb.

Four widths, told apart at arm's length, after the ISO 128-24 pen series 0.18, 0.35, 0.5, 0.7 mm. A black
and white print must read as well as a coloured one: lines differ by width and dash, tints by their grey.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from render.drawing import Fill, Pen

FINE, THIN, MEDIUM, HEAVY = 0.18, 0.35, 0.5, 0.7

INK = "#1c1c1e"
BLUE_INK = "#1d4f86"
"""For dimensions: contrast with white well over 4.5, a dark grey when printed black and white."""
BROWN_INK = "#7a4a12"
RED_INK = "#9c1c1c"
GREY_INK = "#6a6a6c"
PALE_INK = "#8f8f92"

DASHED = (2.2, 1.0)
LONG_DASHED = (4.0, 1.2)
CHAIN = (5.0, 1.1, 0.6, 1.1)


@dataclass(frozen=True, slots=True)
class Stroke:
    """`width` and `dash` (on, off, …; empty for a whole line) in millimetres on paper, `ink` as #rrggbb."""

    width: float
    ink: str
    dash: tuple[float, ...] = ()


STROKES: Mapping[Pen, Stroke] = {
    Pen.CUT: Stroke(HEAVY, INK),
    Pen.OUTLINE: Stroke(MEDIUM, INK),
    Pen.EDGE: Stroke(THIN, INK),
    Pen.ARRIS: Stroke(FINE, INK),
    Pen.BEYOND: Stroke(FINE, GREY_INK),
    Pen.HATCH: Stroke(FINE, PALE_INK),
    Pen.SITE: Stroke(THIN, GREY_INK),
    Pen.GROUND: Stroke(HEAVY, INK),
    Pen.CENTRE: Stroke(FINE, INK, CHAIN),
    Pen.DIMENSION: Stroke(FINE, BLUE_INK),
    Pen.TEXT: Stroke(FINE, INK),
    Pen.CLEARANCE: Stroke(THIN, BROWN_INK, LONG_DASHED),
    Pen.FAULT: Stroke(HEAVY, RED_INK),
    Pen.GUIDE: Stroke(FINE, GREY_INK, DASHED),
    Pen.BORDER: Stroke(HEAVY, INK),
    Pen.RULE: Stroke(FINE, GREY_INK),
}

TINTS: Mapping[Fill, str] = {
    Fill.PAPER: "#ffffff",
    Fill.WOOD: "#fdfaf3",
    Fill.CUT_WOOD: "#ecdcbc",
    Fill.WALL: "#f7f7f5",
    Fill.FACING: "#eae6e1",
    Fill.HEARTH: "#ddd8d2",
    Fill.MASONRY: "#d3cdc6",
    Fill.OPENING: "#4b4c50",
    Fill.KEEP_OUT: "#f3d9b0",
    Fill.FAULT: "#f1beb7",
    Fill.SHADE: "#c9c4bb",
    Fill.SHADOW: "#a6a29b",
    Fill.BAND: "#eeeeec",
    Fill.COLUMN_PIECE: "#dbe6ee",
    Fill.FRIEZE_PIECE: "#e3ecda",
    Fill.SHELF_PIECE: "#f2e6cf",
    Fill.MOULDING_PIECE: "#eadfec",
    Fill.OTHER_PIECE: "#ededea",
}


def rgb(colour: str) -> tuple[float, float, float]:
    """Red, green and blue from 0 to 1 of a colour written #rrggbb."""
    red, green, blue = (int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5))
    return red, green, blue


def luminance(colour: str) -> float:
    """Relative luminance, 0 black to 1 white (WCAG 2.1, "relative luminance")."""
    linear = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in rgb(colour)]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def contrast(one: str, other: str) -> float:
    """Contrast ratio of two colours, 1 to 21 (WCAG 2.1, "contrast ratio")."""
    dark, light = sorted((luminance(one), luminance(other)))
    return (light + 0.05) / (dark + 0.05)
