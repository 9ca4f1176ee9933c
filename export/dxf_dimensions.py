"""Dimensions for DXF: real ones, that a CAD program measures again, each with the block that draws it.

The block is drawn from the same strokes as paper and screen, so that no reader's fonts or fraction
settings change what is seen first. What a dimension says is decided where it was placed.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import log2, sqrt
from typing import TYPE_CHECKING

from export.dxf_entities import TEXT_STYLES, Pencil
from export.dxf_layers import Layer
from export.dxf_text import format_dxf_text, format_mtext
from export.dxf_written import ANONYMOUS, add_block, tell_point, tell_tag
from model.units import BOTH, FEET_INCHES, MILLIMETRES_ONLY, MM_PER_INCH, LengthStyle
from render.dimension_strings import LINE_STEP, TEXT_CLEAR, format_dimension
from render.dimension_strokes import EXTENSION_GAP, EXTENSION_OVERRUN, TICK_LENGTH, dimension_strokes
from render.drawing import Dimension

if TYPE_CHECKING:
    from ezdxf.document import Drawing as Document
    from ezdxf.layouts.blocklayout import BlockLayout

MEASURED = "<>"
"""Stands in a dimension's text for what the reader measures itself."""
_MEASURED_POINTS = "Defpoints"
"""The layer every DXF file has for points that are measured and never plotted."""
_LINEAR, _OWN_BLOCK, _TEXT_MOVED = 0, 32, 128
_MIDDLE_CENTRE = 5
_DECIMAL, _ARCHITECTURAL, _FRACTIONAL = 2, 4, 5
_NOT_STACKED = 2
_ZERO_INCHES_NO_ZERO_FEET = 3
_ABOVE_LINE = 1
_WITH_LEADER = 1
_ARROW = 1 / 8
"""Of arrowheads that a reader of the file may add, plotted inches."""
_SURE = 1e-6
"""Nearer than this to a half step (in.), another program may round the other way."""


@dataclass(frozen=True, slots=True)
class DimensionDress:
    """What the dimensions of one drawing share: `style` is a name in the document.

    `ratio` is the scale they are lettered for, `lengths` how a program is told to write them. `factor` is how
    many model inches one unit of their space stands for: 1 in model space, that of the scale on paper.
    """

    style: str
    layer: Layer
    ratio: float
    lengths: LengthStyle
    factor: float = 1.0


def build_dimension_style(
    document: Document, dress: DimensionDress, text_height: float, is_current: bool = False
) -> None:
    """Add the style that makes a CAD program measure again as `dress` says; `text_height` plotted inches.

    The current one is what new dimensions follow, and all of them in programs that know no styles.
    """
    entry = document.dimstyles.new(dress.style)
    settings = _list_sizes(text_height) | _list_unit_settings(dress.lengths, dress.factor)
    entry.update_dxf_attribs(settings | {"dimscale": dress.ratio, "dimtxsty": TEXT_STYLES[False]})
    if is_current:
        entry.copy_to_header(document)


def _list_sizes(text_height: float) -> dict[str, float | str]:
    """Paper sizes in plotted inches, none left to defaults in millimetres.

    A tick reaches DIMTSZ from its middle both along and across.
    """
    return {
        "dimtxt": text_height,
        "dimtsz": TICK_LENGTH / (2 * sqrt(2)),
        "dimasz": _ARROW,
        "dimdli": LINE_STEP,
        "dimcen": 0.0,
        "dimdsep": ord("."),
        "dimexo": EXTENSION_GAP,
        "dimexe": EXTENSION_OVERRUN,
        "dimgap": TEXT_CLEAR,
        "dimtad": _ABOVE_LINE,
        "dimtih": 0,
        "dimtoh": 0,
        "dimtix": 1,
        "dimtmove": _WITH_LEADER,
    }


def _list_unit_settings(style: LengthStyle, factor: float) -> dict[str, float | str]:
    """Units and precision. DIMRND is set to the last place shown: ezdxf reads its 0 as "whole units"."""
    if style.units == MILLIMETRES_ONLY:
        return {
            "dimlunit": _DECIMAL,
            "dimdec": 0,
            "dimrnd": 1.0,
            "dimlfac": MM_PER_INCH * factor,
            "dimpost": "",
        }
    shared: dict[str, float | str] = {
        "dimdec": round(log2(style.denominator)),
        "dimrnd": 1 / style.denominator,
        "dimfrac": _NOT_STACKED,
        "dimzin": _ZERO_INCHES_NO_ZERO_FEET,
        "dimlfac": factor,
    }
    if style.units == FEET_INCHES:
        return shared | {"dimlunit": _ARCHITECTURAL, "dimpost": ""}
    return shared | {"dimlunit": _FRACTIONAL, "dimpost": f'{MEASURED}"'}


def choose_dimension_text(dimension: Dimension, style: LengthStyle, factor: float = 1.0) -> str:
    """The text to store: "<>" where a program set to `style` shows the same, else the words themselves."""
    if style.units == BOTH:
        return format_mtext(dimension.text)
    measure = dimension.measure * factor
    shown = {format_dimension(measure + off, style) for off in (-_SURE, 0.0, _SURE)}
    return MEASURED if shown == {dimension.text} else format_mtext(dimension.text)


def write_dimension(pencil: Pencil, dimension: Dimension, dress: DimensionDress) -> None:
    """Add `dimension`, in place, to the space that `pencil` draws in.

    In R12, which cannot say in which fractions it measures, it always says its own words.
    """
    x, y = dimension.second
    base = (dimension.line, y) if dimension.vertical else (x, dimension.line)
    is_moved = dimension.lifted or not _is_centred(dimension)
    writer, handle = pencil.writer, pencil.writer.take_handle()
    body = tell_tag(2, _draw_block(pencil, dimension, dress).name) + tell_tag(3, dress.style)
    body += tell_point(10, base) + tell_point(11, dimension.text_at)
    body += tell_tag(70, _LINEAR + _OWN_BLOCK + (_TEXT_MOVED if is_moved else 0))
    ends = tell_point(13, dimension.first) + tell_point(14, dimension.second)
    turn = tell_tag(50, 90.0 if dimension.vertical else 0.0)
    if pencil.is_old:
        body += tell_tag(1, format_dxf_text(dimension.text)) + ends
        body += tell_point(15, (0, 0)) + tell_point(16, (0, 0)) + turn
    else:
        words = choose_dimension_text(dimension, dress.lengths, dress.factor)
        body = "100\nAcDbDimension\n280\n0\n" + body + tell_tag(71, _MIDDLE_CENTRE)
        body += tell_tag(42, float(dimension.measure)) + tell_tag(1, words)
        body += "100\nAcDbAlignedDimension\n" + ends + turn + "100\nAcDbRotatedDimension\n"
    writer.add_told("DIMENSION", writer.tell("DIMENSION", tell_tag(8, dress.layer.name), body, handle))


def _is_centred(dimension: Dimension) -> bool:
    low, high = dimension.span
    along = dimension.text_at[1] if dimension.vertical else dimension.text_at[0]
    return abs(along - (low + high) / 2) < _SURE


def _draw_block(pencil: Pencil, dimension: Dimension, dress: DimensionDress) -> BlockLayout:
    document = pencil.document
    block = add_block(document, document.blocks.anonymous_block_name("D"), ANONYMOUS)
    inside = pencil.inside(block)
    inside.draw_strokes(dimension_strokes(dimension, dress.ratio), dress.layer)
    for point in (dimension.first, dimension.second):
        inside.mark_point(point, _MEASURED_POINTS)
    turn = 90 if dimension.vertical else 0
    inside.write_centred(dimension.text, dimension.text_at, dimension.height, turn, dress.layer)
    return block
