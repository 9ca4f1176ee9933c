"""One mark of a drawing as DXF entities. The document they stand in is set up in export.dxf.

Tints are left to paper and screen: on a CAD program's dark ground they would hide the lines over them.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from export.dxf_dimensions import DimensionDress, write_dimension
from export.dxf_entities import Pencil
from export.dxf_layers import FRAME, Layer, find_layer, find_text_layer, is_symbol
from export.polylines import join_segments
from render.drawing import (
    Dimension,
    Fill,
    Hatch,
    Lines,
    Mark,
    Pen,
    Point,
    Polyline,
    Region,
    Text,
)

_FILLED = Pen.EDGE
"""The pen whose layer dark areas are on."""


@dataclass(frozen=True, slots=True)
class Page:
    """What the marks of one drawing are written with: its view's name, and where its own origin lies."""

    pencil: Pencil
    dress: DimensionDress
    view: str
    origin: Point


def find_mark_layer(mark: Mark, view: str) -> Layer | None:
    """The layer that `mark` is written on in the view of that name; None for what is not written."""
    match mark:
        case Region():
            return find_layer(view, _FILLED, mark.stands_for) if _is_dark(mark, view) else None
        case Dimension():
            return find_layer(view, Pen.DIMENSION)
        case Text() | Lines() | Polyline():
            return find_text_layer(view, mark.pen, mark.stands_for)
        case _:
            return find_layer(view, mark.pen)


def find_layers(marks: Iterable[Mark], view: str) -> set[Layer]:
    """The layers that `marks` are written on."""
    return {layer for mark in marks if (layer := find_mark_layer(mark, view))}


def write_mark(page: Page, mark: Mark) -> None:
    """Add the entities of `mark`, which lies in the coordinates of the pencil's space."""
    layer, pencil = find_mark_layer(mark, page.view), page.pencil
    if layer is None:
        return
    match mark:
        case Lines():
            for points, closed in join_segments(mark.segments):
                pencil.draw_path(points, closed, layer)
        case Polyline():
            pencil.draw_path(mark.points, mark.closed, layer)
        case Hatch():
            pencil.hatch(mark, page.origin, layer)
        case Region():
            for ring in mark.rings:
                pencil.fill(ring, layer)
        case Text():
            pencil.write(mark, layer)
        case Dimension():
            write_dimension(pencil, mark, page.dress)


def _is_dark(region: Region, view: str) -> bool:
    """The dark parts of a sheet's check bar, and of the signs of sections; they hide nothing."""
    is_sign = view == FRAME or is_symbol(region.stands_for)
    return is_sign and region.fill is Fill.OPENING and all(2 < len(ring) < 5 for ring in region.rings)
