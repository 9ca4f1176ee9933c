"""Views set out on a sheet in third-angle order at the largest standard scale that fits, with captions.

What the views show is drawn in render.views; here they are only placed.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from functools import cache

from render.drawing import MM, Drawing, Placed, Point, Text
from render.extent import Box, drawing_extent, paper_extent
from render.lettering import text_width
from render.scales import Scale, choose_scale, scale_caption
from render.sheets import LABELS, PART_VIEWS, TITLES

CAPTION_HEIGHT = 3.5 * MM
CAPTION_GAP = 1.5 * CAPTION_HEIGHT
CAPTION_BASE = 1.2 * MM
"""From the foot of a caption's room up to its baseline: what a comma reaches down."""
CAPTION_ROOM = 7.5 * MM
"""From a view's lowest mark down to the foot of its caption's room."""
CAPTION = "caption"
"""Name of the placed drawings that hold captions."""
BETWEEN = 12 * MM
"""Clear between neighbouring views."""

TWICE = 2
"""A detail is at least this much larger than its view. Shop choice."""
GIVEN_UP = 2
"""Scales that a view may give up for the sake of its detail. Shop choice."""

DrawView = Callable[[str, float], Drawing]
"""Draws a view, by name, lettered for a ratio."""


@dataclass(frozen=True, slots=True)
class Layout:
    """Views placed on the paper, with captions; `size` is the width and height they take up together.

    `scale` is the one the first view is drawn at.
    """

    scale: Scale
    placed: tuple[Placed, ...]
    size: tuple[float, float]

    def fits(self, area: Box) -> bool:
        """Whether all of it lies within `area` (left, bottom, right, top in paper inches)."""
        room = area[2] - area[0], area[3] - area[1]
        return self.size[0] <= room[0] and self.size[1] <= room[1]


@dataclass(frozen=True, slots=True)
class _Boxed:
    """A view with its extent on paper, inches about its origin, widened to hold its caption."""

    name: str
    drawing: Drawing
    box: Box
    caption: tuple[Text, ...]
    """Its title and its scale."""


def lay_views(
    names: Sequence[str], draw: DrawView, scales: Sequence[Scale], area: Box, least: DrawView | None = None
) -> Layout:
    """The named views within `area` (left, bottom, right, top in paper inches).

    The first stands at the lower left; one seen from the side stands right of it at the same heights, one
    seen from the left, whose name begins so, left of it, a plan over it on the same centre line. Where even
    the smallest scale does not fit, that one is used and the views run out over the area. A scale at which
    already what `least` draws has no room is not tried: a part of what `draw` draws, and sooner had.
    """
    room = area[2] - area[0], area[3] - area[1]
    box_at = cache(lambda ratio: _box_views(names, draw, ratio, scales))

    def fits(ratio: float) -> bool:
        width, height = _size(box_at(ratio))
        return width <= room[0] and height <= room[1]

    scale = choose_scale(_scales_worth_trying(names, least or draw, scales, room), fits)
    boxed = box_at(scale.ratio)
    return Layout(scale, _place(boxed, area), _size(boxed))


def lay_alone(name: str, draw: Callable[[float], Drawing], scales: Sequence[Scale], area: Box) -> Layout:
    """One drawing in the middle of `area` at the largest of `scales` that fits, without a caption."""
    drawn = cache(draw)
    scale = choose_scale(scales, lambda ratio: fits_room(drawn(ratio), area))
    drawing = drawn(scale.ratio)
    x0, y0, x1, y1 = paper_extent(drawing)
    return Layout(scale, (Placed(drawing, find_middle(drawing, area), name),), (x1 - x0, y1 - y0))


def fits_room(drawing: Drawing, room: Box) -> bool:
    """Whether a drawing, all its marks included, is no larger than `room`, paper inches."""
    x0, y0, x1, y1 = paper_extent(drawing)
    return x1 - x0 <= room[2] - room[0] and y1 - y0 <= room[3] - room[1]


def find_middle(drawing: Drawing, room: Box) -> Point:
    """Where a drawing's origin lies so that it stands in the middle of `room`, paper inches."""
    x0, y0, x1, y1 = paper_extent(drawing)
    return (room[0] + room[2] - x0 - x1) / 2, (room[1] + room[3] - y0 - y1) / 2


def lay_with_detail(
    names: tuple[str, str], draws: tuple[DrawView, DrawView], scales: Sequence[Scale], area: Box
) -> Layout | None:
    """A view and its detail, by `names` and drawn by `draws`, the detail at least TWICE as large.

    The detail stands beside the view or below it. The view gives up at most GIVEN_UP scales to make
    room for it; `None` where that is not enough.
    """
    largest = lay_views(names[:1], draws[0], scales, area).scale
    start = scales.index(largest)
    for scale in scales[start : start + 1 + GIVEN_UP]:
        main = lay_views(names[:1], draws[0], (scale,), area)
        details = _lay_details(
            names[1], draws[1], [s for s in scales if s.ratio * TWICE <= scale.ratio], main, area
        )
        if details:
            return _join(names, draws, (main, min(details, key=lambda found: found.layout.scale.ratio)), area)
    return None


@dataclass(frozen=True, slots=True)
class _Found:
    """A detail laid out in the room left over, beside the view or below it."""

    layout: Layout
    beside: bool


def _lay_details(name: str, draw: DrawView, scales: Sequence[Scale], main: Layout, area: Box) -> list[_Found]:
    """The detail in each of the rooms that `main` leaves and that holds it at one of `scales`."""
    left, bottom, right, top = area
    width, height = main.size
    rooms = {
        True: (left + width + BETWEEN, bottom, right, top),
        False: (left, bottom, right, top - height - BETWEEN),
    }
    if not scales:
        return []
    found = []
    for beside, room in rooms.items():
        if room[2] > room[0] and room[3] > room[1]:
            layout = lay_views((name,), draw, scales, room)
            if layout.size[0] <= room[2] - room[0] and layout.size[1] <= room[3] - room[1]:
                found.append(_Found(layout, beside))
    return found


def _join(
    names: tuple[str, str], draws: tuple[DrawView, DrawView], layouts: tuple[Layout, _Found], area: Box
) -> Layout:
    """Both laid out side by side or one over the other, with the room that is left shared out."""
    left, bottom, right, top = area
    main, found = layouts
    (width, height), (other_width, other_height) = main.size, found.layout.size
    if found.beside:
        part = left + width + (right - left - width - other_width - BETWEEN) / 2
        rooms = ((left, bottom, part, top), (part + BETWEEN, bottom, right, top))
    else:
        part = top - height - (top - bottom - height - other_height - BETWEEN) / 2
        rooms = ((left, part, right, top), (left, bottom, right, part - BETWEEN))
    both = zip(names, draws, (main.scale, found.layout.scale), rooms, strict=True)
    placed = [lay_views((name,), draw, (scale,), room).placed for name, draw, scale, room in both]
    return Layout(main.scale, placed[0] + placed[1], (right - left, top - bottom))


def _scales_worth_trying(
    names: Sequence[str], draw: DrawView, scales: Sequence[Scale], room: tuple[float, float]
) -> Sequence[Scale]:
    """`scales` without the first ones, at which the first view alone would outgrow the room.

    Lettering shrinks against the view as scales grow, so a view lettered for a large scale is no larger,
    in model inches, than at any smaller one.
    """
    if len(scales) == 1:
        return scales
    low_x, low_y, high_x, high_y = drawing_extent(draw(names[0], scales[0].ratio))
    least = max((high_x - low_x) / room[0], (high_y - low_y) / room[1])
    return [scale for scale in scales if scale.ratio >= least] or scales[-1:]


def _box_views(names: Sequence[str], draw: DrawView, ratio: float, scales: Sequence[Scale]) -> list[_Boxed]:
    scale = next(scale for scale in scales if scale.ratio == ratio)
    return [
        _box_view(name, draw(name, ratio), _caption(name, scale, is_first=i == 0))
        for i, name in enumerate(names)
    ]


def _box_view(name: str, drawing: Drawing, caption: tuple[Text, ...]) -> _Boxed:
    x0, y0, x1, y1 = paper_extent(drawing)
    spare = max(0.0, _caption_width(caption) - (x1 - x0)) / 2
    return _Boxed(name, drawing, (x0 - spare, y0, x1 + spare, y1), caption)


def _plans(boxed: Sequence[_Boxed]) -> list[_Boxed]:
    return [view for view in boxed[1:] if view.name.startswith("plan")]


def _lefts(boxed: Sequence[_Boxed]) -> list[_Boxed]:
    return [view for view in boxed[1:] if view.name.startswith("left")]


def _level(boxed: Sequence[_Boxed]) -> list[_Boxed]:
    """The first view, then those beside it."""
    return [boxed[0], *(view for view in boxed[1:] if not view.name.startswith("plan"))]


def _size(boxed: Sequence[_Boxed]) -> tuple[float, float]:
    """Width and height of all views set out, captions included."""
    left, right = _reach(boxed)
    across = [view.box[2] - view.box[0] for view in _level(boxed)[1:]]
    width = right - left + sum(across) + BETWEEN * len(across)
    low, high = _heights(boxed)
    plans = [view.box[3] - view.box[1] for view in _plans(boxed)]
    return width, high - low + CAPTION_ROOM + sum(h + CAPTION_ROOM + BETWEEN for h in plans)


def _reach(boxed: Sequence[_Boxed]) -> tuple[float, float]:
    """How far the first view and the plans over it reach left and right of their common centre line."""
    column = [boxed[0], *_plans(boxed)]
    return min(view.box[0] for view in column), max(view.box[2] for view in column)


def _heights(boxed: Sequence[_Boxed]) -> tuple[float, float]:
    level = _level(boxed)
    return min(view.box[1] for view in level), max(view.box[3] for view in level)


def _place(boxed: Sequence[_Boxed], area: Box) -> tuple[Placed, ...]:
    width, height = _size(boxed)
    left = area[0] + (area[2] - area[0] - width) / 2
    bottom = area[1] + (area[3] - area[1] - height) / 2
    low, high = _heights(boxed)
    reach, lefts = _reach(boxed), _lefts(boxed)
    room = sum(view.box[2] - view.box[0] + BETWEEN for view in lefts)
    origin = left + room - reach[0], bottom + CAPTION_ROOM - low
    placed = _placed_view(boxed[0], origin, bottom)
    rights = [view for view in _level(boxed)[1:] if view not in lefts]
    for start, views in ((left, lefts), (left + room + reach[1] - reach[0] + BETWEEN, rights)):
        x = start
        for view in views:
            placed += _placed_view(view, (x - view.box[0], origin[1]), bottom)
            x += view.box[2] - view.box[0] + BETWEEN
    y = origin[1] + high + BETWEEN
    for view in _plans(boxed):
        placed += _placed_view(view, (origin[0], y + CAPTION_ROOM - view.box[1]), y)
        y += CAPTION_ROOM + view.box[3] - view.box[1] + BETWEEN
    return placed


def _placed_view(view: _Boxed, at: tuple[float, float], below: float) -> tuple[Placed, ...]:
    """The view with its caption, whose lowest part stands at `below`."""
    middle = at[0] + (view.box[0] + view.box[2]) / 2
    left = middle - _caption_width(view.caption) / 2
    base = below + CAPTION_BASE
    marks = tuple(replace(text, at=(left + text.at[0], base)) for text in view.caption)
    return Placed(view.drawing, at, view.name), Placed(Drawing(marks), (0.0, 0.0), CAPTION)


def _caption(name: str, scale: Scale, is_first: bool) -> tuple[Text, ...]:
    """What stands under a view, from 0 on: its mark and title, and its scale.

    A part's further views are at the scale of the first, which has it.
    """
    told = is_first or name not in PART_VIEWS
    title = f"{LABELS[name]}  {TITLES[name].upper()}" if name in LABELS else TITLES[name].upper()
    texts = [Text(title, (0.0, 0.0), CAPTION_HEIGHT, bold=True)]
    if told:
        texts.append(Text(scale_caption(scale), (0.0, 0.0), CAPTION_HEIGHT))
    start, placed = 0.0, []
    for text in texts:
        placed.append(replace(text, at=(start, 0.0)))
        start += text_width(text.text, text.height, text.bold) + CAPTION_GAP
    return tuple(placed)


def _caption_width(caption: tuple[Text, ...]) -> float:
    last = caption[-1]
    return last.at[0] + text_width(last.text, last.height, last.bold)
