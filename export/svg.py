"""One drawing as SVG text: its physical size at its own ratio, the same text for the same drawing.

Coordinates are paper millimetres, y down. Writing stays writing, in the program's typeface.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from math import isfinite
from xml.sax.saxutils import escape, quoteattr

from model.units import MM_PER_INCH
from render.dimension_strokes import dimension_strokes, dimension_text
from render.drawing import (
    Anchor,
    Dimension,
    Drawing,
    Hatch,
    Lines,
    Mark,
    Pen,
    Polyline,
    Region,
    Ring,
    Segment,
    Text,
)
from render.extent import drawing_extent
from render.hatching import hatch_segments
from render.lettering import CAPITAL, FAMILY, text_runs
from render.pens import STROKES, TINTS

MARGIN = 0.25
"""Clear paper round the drawing, inches."""
ANCHORS = {Anchor.START: "start", Anchor.MIDDLE: "middle", Anchor.END: "end"}
_ILLEGAL = re.compile("[^\t\n\r -\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")
FONTS = f"'{FAMILY}', sans-serif"


def write_svg(drawing: Drawing, title: str = "") -> str:
    """SVG text of `drawing`, as large as it is on paper at its ratio, with a quarter inch round it.

    Each mark that stands for a board or a parameter carries it as ``data-for``. Raises ValueError for a
    drawing without marks or with a coordinate that is not a number.
    """
    low_x, low_y, high_x, high_y = drawing_extent(drawing)
    if not all(map(isfinite, (low_x, low_y, high_x, high_y))):
        raise ValueError("the drawing has a coordinate that is not a finite number")
    margin = MARGIN * drawing.ratio
    plotter = _Plotter(drawing.ratio, low_x - margin, high_y + margin)
    width = (high_x - low_x + 2 * margin) / drawing.ratio
    height = (high_y - low_y + 2 * margin) / drawing.ratio
    lines = [
        '<?xml version="1.0" encoding="UTF-8"?>',
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{_number(width)}in" height="{_number(height)}in" '
        f'viewBox="0 0 {_number(width * MM_PER_INCH)} {_number(height * MM_PER_INCH)}">',
        *([f"<title>{_clean(title)}</title>"] if title else []),
        '<rect width="100%" height="100%" fill="#ffffff"/>',
        f'<g fill="none" stroke-linejoin="round" font-family="{FONTS}">',
    ]
    for mark in drawing.marks:
        lines.extend(plotter.plot(mark))
    return "\n".join([*lines, "</g>", "</svg>", ""])


class _Plotter:
    """Turns marks into elements; `left` and `top` are the model place of the paper's corner."""

    def __init__(self, ratio: float, left: float, top: float) -> None:
        self.ratio, self.left, self.top = ratio, left, top
        self.scale = MM_PER_INCH / ratio

    def plot(self, mark: Mark) -> list[str]:
        match mark:
            case Lines():
                return [self._strokes(mark.pen, mark.segments, mark.stands_for, mark.ink)]
            case Polyline():
                return [self._path(mark.pen, self._trace(mark.points, mark.closed), mark.stands_for)]
            case Region():
                return [self._region(mark)]
            case Hatch():
                return [self._strokes(mark.pen, hatch_segments(mark), mark.stands_for)]
            case Text():
                return self._text(mark, mark.pen)
            case Dimension():
                strokes = self._strokes(Pen.DIMENSION, dimension_strokes(mark, self.ratio), mark.stands_for)
                return [strokes, *self._text(dimension_text(mark), Pen.DIMENSION)]

    def _place(self, x: float, y: float) -> str:
        return f"{_number((x - self.left) * self.scale)} {_number((self.top - y) * self.scale)}"

    def _strokes(self, pen: Pen, segments: Iterable[Segment], stands_for: str, ink: str = "") -> str:
        data = "".join(f"M{self._place(x1, y1)}L{self._place(x2, y2)}" for x1, y1, x2, y2 in segments)
        return self._path(pen, data, stands_for, ink)

    def _trace(self, points: Ring, closed: bool) -> str:
        return "M" + "L".join(self._place(*point) for point in points) + ("Z" if closed else "")

    def _path(self, pen: Pen, data: str, stands_for: str, ink: str = "") -> str:
        stroke = STROKES[pen]
        dash = ' stroke-dasharray="' + " ".join(map(_number, stroke.dash)) + '"' if stroke.dash else ""
        cap = "" if stroke.dash else ' stroke-linecap="round"'
        return (
            f'<path class="{pen}"{_stands_for(stands_for)} d="{data}" stroke="{ink or stroke.ink}" '
            f'stroke-width="{_number(stroke.width)}"{cap}{dash}/>'
        )

    def _region(self, region: Region) -> str:
        data = "".join(self._trace(ring, closed=True) for ring in region.rings)
        return (
            f'<path class="{region.fill}"{_stands_for(region.stands_for)} d="{data}" '
            f'fill="{region.tint or TINTS[region.fill]}" fill-rule="evenodd"/>'
        )

    def _text(self, text: Text, pen: Pen) -> list[str]:
        if not text.text:
            return []
        size = text.height * self.scale / CAPITAL
        x, y = self._place(*text.at).split()
        turn = f' transform="rotate({_number(-text.rotation)} {x} {y})"' if text.rotation else ""
        bold = ' font-weight="600"' if text.bold else ""
        return [
            f'<text{_stands_for(text.stands_for)} x="{x}" y="{y}" font-size="{_number(size)}"{bold} '
            f'fill="{STROKES[pen].ink}" text-anchor="{ANCHORS[text.anchor]}"{turn}>{_set(text, size)}</text>'
        ]


def _stands_for(name: str) -> str:
    return f" data-for={quoteattr(_legal(name))}" if name else ""


def _number(value: float) -> str:
    """Four decimals at most, without trailing zeros or a negative nothing."""
    text = f"{value:.4f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def _set(text: Text, size: float) -> str:
    """The line's words, its fractions in parts that are smaller and raised."""
    words, rise = [], 0.0
    for run in text_runs(text.text, text.bold):
        lift = f' dy="{_number((rise - run.rise) * size * CAPITAL)}"' if run.rise != rise else ""
        small = f' font-size="{_number(size * run.size)}"' if run.size != 1 else ""
        plain = _clean(run.text)
        words.append(f"<tspan{small}{lift}>{plain}</tspan>" if small or lift else plain)
        rise = run.rise
    return "".join(words)


def _clean(text: str) -> str:
    return escape(_legal(text))


def _legal(text: str) -> str:
    """`text` with what XML 1.0 cannot hold (section 2.2, Char) made U+FFFD."""
    return _ILLEGAL.sub("\ufffd", text)
