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
_TEXT_MOVED = 128
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
    (x1, y1), (x2, y2) = dimension.first, dimension.second
    base = (dimension.line, y2) if dimension.vertical else (x2, dimension.line)
    override = pencil.space.add_linear_dim(
        base=base,
        p1=(x1, y1),
        p2=(x2, y2),
        text=format_dxf_text(dimension.text)
        if pencil.is_old
        else choose_dimension_text(dimension, dress.lengths, dress.factor),
        angle=90 if dimension.vertical else 0,
        dimstyle=dress.style,
        dxfattribs={"layer": dress.layer.name},
    )
    entity = override.dimension.dxf
    entity.geometry = _draw_block(pencil, dimension, dress).name
    entity.text_midpoint = (*dimension.text_at, 0.0)
    entity.attachment_point = _MIDDLE_CENTRE
    entity.actual_measurement = dimension.measure
    if dimension.lifted or not _is_centred(dimension):
        entity.dimtype |= _TEXT_MOVED


def _is_centred(dimension: Dimension) -> bool:
    low, high = dimension.span
    along = dimension.text_at[1] if dimension.vertical else dimension.text_at[0]
    return abs(along - (low + high) / 2) < _SURE


def _draw_block(pencil: Pencil, dimension: Dimension, dress: DimensionDress) -> BlockLayout:
    block = pencil.document.blocks.new_anonymous_block(type_char="D")
    inside = pencil.inside(block)
    inside.draw_strokes(dimension_strokes(dimension, dress.ratio), dress.layer)
    for point in (dimension.first, dimension.second):
        block.add_point(point, dxfattribs={"layer": _MEASURED_POINTS})
    turn = 90 if dimension.vertical else 0
    inside.write_centred(dimension.text, dimension.text_at, dimension.height, turn, dress.layer)
    return block
