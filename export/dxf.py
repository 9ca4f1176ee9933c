"""Drawings as one DXF text: R2010, inches, full size in model space.

What each mark becomes stands in export.dxf_marks, layers and dimensions in files of their own.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING

from export.dxf_dimensions import DimensionDress, build_dimension_style
from export.dxf_file import VERSION, document_text, fixed_dates
from export.dxf_layers import Layer, find_layer
from export.dxf_marks import TEXT_STYLES, Page, list_layers, write_mark
from export.dxf_text import format_dxf_text
from model.units import FEET_INCHES_16, LengthStyle
from render.drawing import Anchor, Dimension, Drawing, Pen, Placed, Text
from render.extent import Box, drawing_extent
from render.lettering import FAMILY, TYPEFACES
from render.sheets import VIEW_TITLES

if TYPE_CHECKING:
    from ezdxf.document import Drawing as Document

CAPTION_HEIGHT = 3 / 16
TITLE_HEIGHT = 1 / 4
NOTE_HEIGHT = 1 / 8
"""Heights of capitals, inches on paper. Shop choice, over the 3/32 in. least of interior drawings."""
LINE_GAP = 3 / 8
"""Clear between a view's lowest mark and its caption, and round the title, inches on paper. Shop choice."""

_ARCHITECTURAL = 4
_SIXTEENTHS = 4
_NOTHING = (0.0, 0.0, 1.0, 1.0)
_MARGIN = 1.1


def write_dxf(
    placed: tuple[Placed, ...], ratio: float, title: str, lengths: LengthStyle = FEET_INCHES_16
) -> str:
    """DXF text of the views, each shifted by its `at` in model inches and captioned with its title.

    Writing, ticks and dashes come out right when plotted at 1:`ratio`; a CAD program that measures again
    writes `lengths`. The same input gives the same text, whenever and wherever it is written.
    """
    from ezdxf import units
    from ezdxf.filemanagement import new

    dress = DimensionDress(
        f"PLOT-1-{ratio:g}", TEXT_STYLES[False], find_layer("", Pen.DIMENSION).name, ratio, lengths
    )
    notes = Placed(Drawing(_list_notes(placed, ratio, title), ratio), (0.0, 0.0))
    pages = [*placed, notes]
    with fixed_dates():
        document = new(VERSION, units=units.IN)
        _set_header(document, _find_extent(pages), ratio, title)
        _add_text_styles(document)
        _add_layers(document, _find_layers(pages))
        build_dimension_style(document, dress, _find_dimension_height(placed))
        for view in pages:
            for mark in view.drawing.marks:
                write_mark(Page(document, dress, view.name, view.at), mark)
        return document_text(document)


def _list_notes(placed: tuple[Placed, ...], ratio: float, title: str) -> tuple[Text, ...]:
    """A caption under each named view, and under them all the title and what the sizes mean."""
    captions = [_build_caption(view, ratio) for view in placed if view.name]
    left, low, _, _ = _find_extent(placed)
    y = low - (CAPTION_HEIGHT + 2 * LINE_GAP + TITLE_HEIGHT) * ratio
    heading = Text(title, (left, y), TITLE_HEIGHT * ratio, bold=True, pen=Pen.BORDER)
    y -= (LINE_GAP + NOTE_HEIGHT) * ratio
    meaning = f"Inches, drawn full size. Lettering is sized for plotting at 1:{ratio:g}."
    return (*captions, heading, Text(meaning, (left, y), NOTE_HEIGHT * ratio, pen=Pen.BORDER))


def _build_caption(view: Placed, ratio: float) -> Text:
    left, low, right, _ = drawing_extent(view.drawing)
    at = (view.at[0] + (left + right) / 2, view.at[1] + low - (LINE_GAP + CAPTION_HEIGHT) * ratio)
    return Text(
        VIEW_TITLES.get(view.name, view.name),
        at,
        CAPTION_HEIGHT * ratio,
        Anchor.MIDDLE,
        bold=True,
        pen=Pen.BORDER,
    )


def _find_extent(placed: Iterable[Placed]) -> Box:
    """The room that all views take up together in model space."""
    boxes = []
    for view in placed:
        if view.drawing.marks:
            x0, y0, x1, y1 = drawing_extent(view.drawing)
            dx, dy = view.at
            boxes.append((x0 + dx, y0 + dy, x1 + dx, y1 + dy))
    lows_x, lows_y, highs_x, highs_y = zip(*boxes or [_NOTHING], strict=True)
    return min(lows_x), min(lows_y), max(highs_x), max(highs_y)


def _find_layers(placed: Iterable[Placed]) -> set[Layer]:
    return {layer for view in placed for mark in view.drawing.marks for layer in list_layers(mark, view.name)}


def _find_dimension_height(placed: tuple[Placed, ...]) -> float:
    """Height of the dimensions' capitals, plotted inches: that of the first, or of notes without any."""
    for view in placed:
        for mark in view.drawing.marks:
            if isinstance(mark, Dimension):
                return mark.height / view.drawing.ratio
    return NOTE_HEIGHT


def _set_header(document: Document, extent: Box, ratio: float, title: str) -> None:
    """Units, dashes and what is seen first; the title stands in the file's own properties."""
    x0, y0, x1, y1 = extent
    header = document.header
    header["$LUNITS"] = _ARCHITECTURAL
    header["$LUPREC"] = _SIXTEENTHS
    header["$LWDISPLAY"] = 1
    header["$LTSCALE"] = ratio
    header.custom_vars.append("Title", format_dxf_text(title))
    document.modelspace().reset_extents((x0, y0, 0.0), (x1, y1, 0.0))
    document.set_modelspace_vport((y1 - y0) * _MARGIN, ((x0 + x1) / 2, (y0 + y1) / 2))


def _add_text_styles(document: Document) -> None:
    for bold, name in TEXT_STYLES.items():
        style = document.styles.add(name, font=TYPEFACES[bold])
        style.set_extended_font_data(FAMILY, bold=bold)


def _add_layers(document: Document, layers: set[Layer]) -> None:
    """Line types, then layers, by name: the order must not hang on how a set happens to run."""
    for layer in sorted(layers, key=lambda layer: layer.name):
        if layer.pattern and layer.linetype not in document.linetypes:
            document.linetypes.add(
                layer.linetype, list(layer.pattern), description=f"{layer.pen.value} lines"
            )
        entry = document.layers.add(layer.name, linetype=layer.linetype, lineweight=layer.weight)
        if layer.colour:
            entry.rgb = layer.colour
