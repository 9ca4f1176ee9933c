"""The parts of the sections that need a larger scale: one column in plan, frieze and shelf from the side."""

from __future__ import annotations

from model.surround import Surround
from render.clipping import clip_drawing
from render.dimension_strings import Station, String, place_strings
from render.drawing import Drawing, Pen, Polyline
from render.extent import Box, box_ring
from render.sheets import DETAIL_TITLES
from render.view_dimensions import list_strings
from render.views import ViewOptions, draw_view

AROUND = 1.5
"""How much is shown round the part, in. Shop choice."""


def detail_of(view: str) -> str:
    """The name of the detail that goes with `view`, empty where there is none."""
    name = f"{view}_detail"
    return name if name in DETAIL_TITLES else ""


def draw_detail(surround: Surround, name: str, ratio: float) -> Drawing:
    """The named detail, lettered for `ratio`, in the coordinates of the view it is taken from."""
    view = name.removesuffix("_detail")
    box = detail_box(surround, view)
    strings = [string for whole in list_strings(surround, view) for string in strings_within(whole, box)]
    style = surround.job.about.length_style
    return draw_part(surround, view, ratio).plus(*place_strings(strings, box, ratio, style))


def draw_part(surround: Surround, view: str, ratio: float) -> Drawing:
    """What the detail of `view` shows, in its frame, without dimensions."""
    box = detail_box(surround, view)
    whole = draw_view(surround, view, ViewOptions(ratio=ratio, dimensions=False))
    edge = Polyline(Pen.GUIDE, box_ring(box), closed=True)
    return clip_drawing(whole, box).plus(edge)


def detail_box(surround: Surround, view: str) -> Box:
    """What of `view` is shown: left, bottom, right, top in its own coordinates."""
    layout, column = surround.layout, surround.layout.right
    if view == "plan_section":
        beside = max(AROUND, layout.plinth_out + AROUND / 2)
        return (
            min(column.inner, column.inner_top) - beside,
            -layout.plinth_front - AROUND,
            max(column.outer, column.outer_top) + beside,
            AROUND - layout.wall,
        )
    top = layout.shelf_top + AROUND
    return (-layout.shelf_foremost - AROUND, layout.frieze_bottom - AROUND, AROUND - layout.wall, top)


def draw_relieved(surround: Surround, view: str, ratio: float) -> Drawing:
    """`view` lettered for `ratio`, without the dimensions that its detail gives: none is given twice."""
    box = detail_box(surround, view)
    strings = tuple(string_outside(string, box) for string in list_strings(surround, view))
    return draw_view(surround, view, ViewOptions(ratio=ratio, strings=strings))


def strings_within(string: String, box: Box) -> list[String]:
    """The runs of a string's stations that are measured inside the box; single stations are no string."""
    inside = _list_runs(string, box)
    return [String(string.edge, string.stations[first : last + 1]) for first, last in inside]


def string_outside(string: String, box: Box) -> String:
    """The string with each run inside the box measured as a whole; empty when all of it lies inside."""
    runs = _list_runs(string, box)
    if runs == [(0, len(string.stations) - 1)]:
        return String(string.edge, ())
    hidden = {i for first, last in runs for i in range(first + 1, last)}
    merged = {last for first, last in runs if last - first > 1}
    kept = [
        Station(s.along, s.across) if i in merged else s
        for i, s in enumerate(string.stations)
        if i not in hidden
    ]
    return String(string.edge, tuple(kept))


def _list_runs(string: String, box: Box) -> list[tuple[int, int]]:
    """First and last index of each run of two or more neighbouring stations inside the box."""
    runs: list[tuple[int, int]] = []
    start = None
    for i, station in enumerate((*string.stations, None)):
        if station is not None and _is_inside(station, string.edge.vertical, box):
            start = i if start is None else start
        elif start is not None:
            runs += [(start, i - 1)] if i - start > 1 else []
            start = None
    return runs


def _is_inside(station: Station, vertical: bool, box: Box) -> bool:
    point = (station.across, station.along) if vertical else (station.along, station.across)
    return box[0] <= point[0] <= box[2] and box[1] <= point[1] <= box[3]
