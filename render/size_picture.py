"""Pictures of a size of the design: the view that carries its dimension, with that one alone; or the boards a
row is about, tinted."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise

from model.once import once
from model.surround import Surround
from render.board_outline import outline_board
from render.clipping import clip_drawing
from render.dimension_strings import Edge, String, measure, place_strings
from render.drawing import Drawing, Fill, Hatch, Mark, Pen, Point, Polyline, Region
from render.extent import Box, box_of, drawing_extent
from render.part_rows import PartRow, find_part
from render.picture_frame import FieldPicture, fit_ratio, frame_around
from render.view_context import Frame
from render.view_dimensions import list_strings
from render.views import VIEWS, ViewOptions, draw_view

SMALL = 0.3
"""What takes up less of the view than this share is drawn larger, with only its surroundings."""


ALIKE = {
    "column.width_left": ("column.width", 0),
    "column.width_right": ("column.width", -1),
    "shelf.overhang_left": ("shelf.overhang_end", 0),
    "shelf.overhang_right": ("shelf.overhang_end", -1),
}
"""Rows for one side alone: the row that is shown while they are empty, and which of its places is theirs."""


def draw_size_picture(surround: Surround, path: str) -> FieldPicture | None:
    """The first view that carries the row's dimension, with that alone; None where no view carries it."""
    sought, place = ALIKE.get(path, (path, 0))
    for view in VIEWS:
        strings = list_strings(surround, view)
        found = [one for string in strings for one in _list_spans(string, path)]
        found = found or [one for string in strings for one in _list_spans(string, sought)]
        if found:
            return _draw_span(surround, path, view, found[place])
    return None


def _list_spans(string: String, path: str) -> list[String]:
    """Each distance of a string that stands for `path`, as a string of its own."""
    stations = string.stations
    return [
        String(string.edge, (before, after)) for before, after in pairwise(stations) if after.shows == path
    ]


def _draw_span(surround: Surround, path: str, view: str, span: String) -> FieldPicture:
    bare = _draw_bare(surround, view)
    whole = Frame.around(surround, view).outline
    (low, across), (high, other) = ((station.along, station.across) for station in span.stations)
    ends = ((across, low), (other, high)) if span.edge.vertical else ((low, across), (high, other))
    box = whole
    if high - low < SMALL * max(whole[2] - whole[0], whole[3] - whole[1]):
        box = _cut_off(frame_around(box_of(ends), high - low), whole, span.edge)
    ratio = fit_ratio(box)
    dimensions = place_strings((span,), box, ratio, surround.job.about.length_style)
    marked = tuple(replace(each, stands_for=path) for each in dimensions)
    return FieldPicture(_cut_out(bare, box, ratio), Drawing(marked, ratio))


def _draw_bare(surround: Surround, view: str) -> Drawing:
    """A view without dimensions, which the pictures of all its rows share."""
    return once(surround, ("bare", view), lambda: draw_view(surround, view, ViewOptions(dimensions=False)))


def _cut_off(box: Box, whole: Box, edge: Edge) -> Box:
    """`box` without what lies past the view on the side where the dimension line stands."""
    left, bottom, right, top = box
    match edge:
        case Edge.LEFT:
            return max(left, whole[0]), bottom, right, top
        case Edge.BELOW:
            return left, max(bottom, whole[1]), right, top
        case Edge.RIGHT:
            return left, bottom, min(right, whole[2]), top
        case _:
            return left, bottom, right, min(top, whole[3])


def _cut_out(drawing: Drawing, box: Box, ratio: float) -> Drawing:
    """What lies in the box, its hatches as wide as they are at that ratio."""
    scaled = (
        replace(mark, spacing=mark.spacing * ratio / drawing.ratio) if isinstance(mark, Hatch) else mark
        for mark in drawing.marks
    )
    return clip_drawing(Drawing(tuple(scaled), ratio), box)


def draw_part_picture(surround: Surround, path: str) -> FieldPicture | None:
    """The boards that the row is about, tinted in the whole view; with a size, that size on one of them.

    None where it is about no boards, or none of them is built.
    """
    part = find_part(path)
    if part is None:
        return None
    boards = [board for board in surround.boards if part.concerns(board)]
    if not boards:
        return None
    bare = _draw_bare(surround, part.view)
    rings = [outline_board(board, part.view) for board in boards]
    if part.edge is not None:
        return _measure_board(surround, path, part, bare, rings[-1])
    box = drawing_extent(bare)
    ratio = fit_ratio(box)
    return FieldPicture(_cut_out(bare, box, ratio), Drawing(tuple(_tint(rings, path)), ratio))


def _measure_board(
    surround: Surround, path: str, part: PartRow, bare: Drawing, ring: tuple[Point, ...]
) -> FieldPicture:
    assert part.edge is not None
    x0, y0, x1, y1 = box_of(ring)
    if part.edge.vertical:
        span = measure(part.edge, (y0, x1 if part.edge is Edge.RIGHT else x0, ""), (y1, x1, path))
        box = frame_around((x0, y0, x1, y1), y1 - y0) if x1 - x0 < 3 * (y1 - y0) else drawing_extent(bare)
    else:
        span = measure(part.edge, (x0, y0, ""), (x1, y0, path))
        box = frame_around((x0, y0, x1, y0 + x1 - x0), x1 - x0)
    box = _cut_off(box, Frame.around(surround, part.view).outline, part.edge)
    ratio = fit_ratio(box)
    dimensions = place_strings((span,), box, ratio, surround.job.about.length_style)
    tinted = clip_drawing(Drawing(tuple(_tint([ring], path)), ratio), box)
    return FieldPicture(_cut_out(bare, box, ratio), Drawing((*tinted.marks, *dimensions), ratio))


def _tint(rings: list[tuple[Point, ...]], path: str) -> Iterator[Mark]:
    for ring in rings:
        yield Region(Fill.SHELF_PIECE, (ring,), path)
    for ring in rings:
        yield Polyline(Pen.ARRIS, ring, True, path)
