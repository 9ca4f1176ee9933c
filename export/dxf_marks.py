"""One mark of a drawing as DXF entities. The document they stand in is set up in export.dxf.

Tints are left to paper and screen: on a CAD program's dark ground they would hide the lines over them.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import cos, radians, sin
from typing import TYPE_CHECKING

from export.dxf_dimensions import DimensionDress, write_dimension
from export.dxf_layers import Layer, find_layer, find_text_layer
from export.dxf_text import format_dxf_text
from export.polylines import join_segments
from render.dimension_strokes import leader_text
from render.drawing import (
    Anchor,
    Dimension,
    Hatch,
    Leader,
    Lines,
    Mark,
    Pen,
    Point,
    Polyline,
    Region,
    Ring,
    Segment,
    Text,
)
from render.shifting import shift_mark

if TYPE_CHECKING:
    from ezdxf.document import Drawing as Document

TEXT_STYLES = {False: "LETTERING", True: "LETTERING-BOLD"}
"""Names of the text styles, keyed by whether they are bold."""

_ANCHORS = {Anchor.START: "LEFT", Anchor.MIDDLE: "CENTER", Anchor.END: "RIGHT"}
_OUTER_RING, _INNER_RING = 1, 16
_USER_PATTERN, _USER_PATTERN_TYPE = "_USER", 0
_BY_LAYER = 256


@dataclass(frozen=True, slots=True)
class Page:
    """A view's place in the document: its name and where its own origin lies, model inches."""

    document: Document
    dress: DimensionDress
    view: str
    origin: Point


def list_layers(mark: Mark, view: str) -> tuple[Layer, ...]:
    """The layers that `mark` is written on in the view of that name."""
    match mark:
        case Region():
            return ()
        case Dimension():
            return (find_layer(view, Pen.DIMENSION),)
        case Text() | Leader() | Lines() | Polyline():
            return (find_text_layer(view, mark.pen, mark.stands_for),)
        case _:
            return (find_layer(view, mark.pen),)


def write_mark(page: Page, mark: Mark) -> None:
    """Add the entities of `mark` to the model space of the page's document."""
    moved = shift_mark(mark, page.origin)
    for layer in list_layers(mark, page.view):
        match moved:
            case Lines():
                _write_lines(page, moved.segments, layer.name)
            case Polyline():
                _write_polyline(page, moved.points, moved.closed, layer.name)
            case Hatch():
                _write_hatch(page, moved, layer.name)
            case Text():
                write_text(page.document, moved, layer.name)
            case Dimension():
                write_dimension(page.document, moved, page.dress)
            case Leader():
                _write_leader(page, moved, layer.name)


def write_text(document: Document, text: Text, layer: str) -> None:
    """One line of writing whose capitals are `text.height` high; nothing for an empty one."""
    from ezdxf.enums import TextEntityAlignment

    written = format_dxf_text(text.text)
    if not written.strip():
        return
    look = {"layer": layer, "style": TEXT_STYLES[text.bold]}
    entity = document.modelspace().add_text(
        written, height=text.height, rotation=text.rotation, dxfattribs=look
    )
    entity.set_placement(text.at, align=TextEntityAlignment[_ANCHORS[text.anchor]])


def _write_lines(page: Page, segments: tuple[Segment, ...], layer: str) -> None:
    space = page.document.modelspace()
    for points, closed in join_segments(segments):
        if len(points) == 2:
            space.add_line(*points, dxfattribs={"layer": layer})
        else:
            space.add_lwpolyline(points, close=closed, dxfattribs={"layer": layer})


def _write_polyline(page: Page, points: Ring, closed: bool, layer: str) -> None:
    page.document.modelspace().add_lwpolyline(points, close=closed, dxfattribs={"layer": layer})


def _write_hatch(page: Page, hatch: Hatch, layer: str) -> None:
    """An area with its boundary and one family of strokes, half a spacing off the view's origin."""
    rings = [ring for ring in hatch.rings if len(ring) > 2]
    if not rings:
        return
    entity = page.document.modelspace().add_hatch(color=_BY_LAYER, dxfattribs={"layer": layer})
    entity.set_pattern_fill(
        _USER_PATTERN,
        color=_BY_LAYER,
        angle=hatch.angle,
        scale=hatch.spacing,
        pattern_type=_USER_PATTERN_TYPE,
        definition=[],
    )
    turn = radians(hatch.angle)
    across = (-sin(turn) * hatch.spacing, cos(turn) * hatch.spacing)
    base = (page.origin[0] + across[0] / 2, page.origin[1] + across[1] / 2)
    entity.set_pattern_definition([(hatch.angle, base, across, [])])
    for ring, kind in zip(rings, [_OUTER_RING] + [_INNER_RING] * len(rings), strict=False):
        entity.paths.add_polyline_path(ring, is_closed=True, flags=kind)


def _write_leader(page: Page, leader: Leader, layer: str) -> None:
    points = [p for i, p in enumerate(leader.points) if i == 0 or p != leader.points[i - 1]]
    if len(points) > 1:
        page.document.modelspace().add_leader(points, dimstyle=page.dress.style, dxfattribs={"layer": layer})
    write_text(page.document, leader_text(leader, page.dress.ratio), layer)
