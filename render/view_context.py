"""What frames a view: floor, ceiling and wall lines, and the outline that dimension strings keep off."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from model.once import once
from model.surround import Surround
from model.units import format_length
from render.dimension_strings import Edge, place_strings, strings_reach
from render.drawing import Anchor, Dimension, Fill, Lines, Mark, Pen, Point, Polyline, Region, Segment, Text
from render.extent import Box, list_words
from render.lettering import text_width
from render.note_places import free_place, part_at_boxes, part_line
from render.obstacle_marks import drawn_reach, list_drawn
from render.site_solids import MASONRY_DEPTH, SLAB
from render.view_dimensions import list_strings

BESIDE = 5.0
"""Floor and ceiling run on this far past the widest thing, in. Shop choice."""
WALL_BESIDE = 6.0
WALL_ABOVE = 8.0
"""How much wall a section shows past the surround, in. Shop choice."""
NEAR_WALL = 10.0
"""A wall end or obstacle nearer than this to the shelf's end is drawn, in. Shop choice."""
BREAK = 0.12
"""Half the height of a break sign, inches on paper. Shop choice."""
HEADROOM = 0.42
"""From whatever stands highest to a ceiling drawn nearer than it is, inches on paper. Shop choice."""
NOTE_OFF = 0.06
"""From the ceiling's line to its note, inches on paper; twice that where anchors may lie close under it."""
AROUND_TEXT = 0.03
"""A line that gives way to a text stays this clear of it, inches on paper. Shop choice."""
NOTE_HEIGHT = 2.6 / 25.4
"""Capitals of notes in a view, inches on paper."""


@dataclass(frozen=True, slots=True)
class Frame:
    """The box of what a view is of, model inches: dimension strings keep off it, the ceiling lies over it."""

    left: float
    bottom: float
    right: float
    top: float

    @property
    def outline(self) -> tuple[float, float, float, float]:
        """Left, bottom, right, top."""
        return (self.left, self.bottom, self.right, self.top)

    @staticmethod
    def around(surround: Surround, view: str) -> Frame:
        """The box for `view`."""
        return once(surround, ("frame", view), lambda: Frame._around(surround, view))

    @staticmethod
    def _around(surround: Surround, view: str) -> Frame:
        layout = surround.layout
        top = max(layout.over.top if layout.over else layout.shelf_top, layout.facing_top)
        standing = (*list_drawn(layout), *layout.behind)
        front = max(layout.shelf_foremost, layout.hearth_front, layout.moulded_front)
        front = max([front, *(obstacle.z[1] for obstacle in standing)])
        foot = min([_foot(surround), *(obstacle.y[0] for obstacle in standing)])
        widest = max([drawn_reach(layout), *(abs(x) for obstacle in layout.behind for x in obstacle.x)])
        if view == "front":
            reach = widest
            return Frame(
                -reach, foot, reach, max([top, layout.opening_top, *(o.y[1] for o in layout.behind)])
            )
        if view == "side":
            return Frame(-front, foot, -layout.wall, top)
        behind = MASONRY_DEPTH - layout.wall
        if view == "vertical_section":
            slab = max(surround.job.site.hearth.thickness or SLAB, -layout.floor)
            feet = (*(side.lowest for side in layout.sides), *(obstacle.y[0] for obstacle in layout.behind))
            low = min(-slab, *feet)
            high = [layout.opening_top, *(obstacle.y[1] for obstacle in layout.behind)]
            return Frame(-front, low, behind, max(top, layout.shelf_top + WALL_ABOVE, *high))
        reach = max(layout.shelf_reach, layout.facing_side) + WALL_BESIDE
        reach = max(reach, layout.hearth_side, widest)
        return Frame(-reach, -front, reach, behind)


def _flush_slab(surround: Surround) -> float:
    """How deep a hearth flush with the floor is shown below it; 0 for a raised one."""
    hearth = surround.job.site.hearth
    return min(hearth.thickness or SLAB / 2, SLAB) if hearth.height == 0 and hearth.depth > 0 else 0.0


def _foot(surround: Surround) -> float:
    layout = surround.layout
    lowest = min(side.lowest for side in layout.sides)
    return min(layout.floor, lowest) - _flush_slab(surround)


def list_standing(surround: Surround, view: str) -> tuple[tuple[Edge, float], ...]:
    """Plumb lines of the view that run up past its outline, through the dimension strings there."""
    if view == "side":
        return ((Edge.ABOVE, -surround.layout.wall),)
    if view == "front":
        frame = Frame.around(surround, "front")
        ends = _near_wall_ends(surround, frame.left - BESIDE, frame.right + BESIDE)
        return tuple((Edge.ABOVE, x) for x in ends)
    return ()


def draw_context(
    surround: Surround,
    view: str,
    frame: Frame,
    dimensions: Sequence[Dimension],
    ratio: float,
    true_heights: bool = False,
) -> list[Mark]:
    """Floor, ceiling and wall as the view shows them, with its `dimensions` kept clear of.

    With `true_heights` the ceiling is where it is, however far off.
    """
    if view == "front":
        ceiling = _ceiling_line(surround, frame.top, dimensions, ratio)
        if true_heights:
            ceiling = max(frame.top, surround.layout.ceiling)
        return [
            *_front_context(surround, frame, ceiling, dimensions, ratio),
            _ceiling_note(surround, frame, ceiling, dimensions, ratio),
        ]
    if view == "side":
        top = Frame.around(surround, "front").top
        true = max(top, surround.layout.ceiling)
        return _side_context(
            surround, frame, dimensions, ratio, true if true_heights else _front_ceiling_line(surround, ratio)
        )
    if view == "vertical_section":
        return _floor_in_section(surround, frame)
    return []


def _ceiling_line(surround: Surround, top: float, dimensions: Sequence[Dimension], ratio: float) -> float:
    """y at which the ceiling is drawn: where it is, or nearer where it would waste the sheet.

    Drawn nearer it clears the front view's `dimensions`.
    """
    nearest = strings_reach(dimensions, max(top, _highest(surround))) + HEADROOM * ratio
    return max(top, min(surround.layout.ceiling, nearest))


def _front_ceiling_line(surround: Surround, ratio: float) -> float:
    """The front view's ceiling line, for the views that stand beside it."""
    frame = Frame.around(surround, "front")
    strings = [s for s in list_strings(surround, "front") if s.edge is Edge.ABOVE]
    style, standing = surround.job.about.length_style, list_standing(surround, "front")
    placed = place_strings(strings, frame.outline, ratio, style, standing)
    return _ceiling_line(surround, frame.top, placed, ratio)


def _slab(surround: Surround, left: float, right: float) -> list[Mark]:
    depth, floor = _flush_slab(surround), surround.layout.floor
    if not depth:
        return []
    ring = ((left, floor - depth), (right, floor - depth), (right, floor), (left, floor))
    return [Region(Fill.HEARTH, (ring,), "hearth"), Polyline(Pen.SITE, ring, True, "hearth")]


def _front_context(
    surround: Surround, frame: Frame, ceiling: float, dimensions: Sequence[Dimension], ratio: float
) -> list[Mark]:
    left, right = frame.left - BESIDE, frame.right + BESIDE
    layout, floor = surround.layout, surround.layout.floor
    marks = _slab(surround, -layout.hearth_side, layout.hearth_side)
    marks += _ground(surround, left, right)
    clear, words = AROUND_TEXT * ratio, list_words(dimensions)
    marks.append(_ceiling_between(left, right, ceiling, dimensions, clear))
    ends = tuple(
        part
        for x in _near_wall_ends(surround, left, right)
        for part in part_at_boxes(_wall_end(x, floor, ceiling), words, clear)
    )
    return [*marks, Lines(Pen.SITE, ends, "wall end")] if ends else marks


def _ceiling_between(
    left: float, right: float, y: float, dimensions: Sequence[Dimension], clear: float
) -> Lines:
    """The ceiling's line, broken where it would run over a text or along a dimension line."""
    level = [(d.span[0], d.line, d.span[1], d.line) for d in dimensions if not d.vertical]
    boxes = (*list_words(dimensions), *level)
    return Lines(Pen.SITE, part_at_boxes((left, y, right, y), boxes, clear), "ceiling")


def _ground(surround: Surround, left: float, right: float) -> list[Mark]:
    """The floor's line; where the feet were found out of level, what they stand on as it was measured."""
    layout, floor = surround.layout, surround.layout.floor
    level: list[Mark] = [Lines(Pen.GROUND, ((left, floor, right, floor),), "floor")]
    if surround.job.site.level.centre is None:
        return level
    (x0, y0), (x1, y1) = (
        (side.sign * (side.step.edge if side.step else side.outer + layout.plinth_out), side.base)
        for side in layout.sides
    )
    mouth = layout.opening_side
    measured = ((x0, y0), (-mouth, 0.0), (mouth, 0.0), (x1, y1))
    if floor < 0:
        return [*level, Polyline(Pen.SITE, measured, stands_for="hearth"), *_floor_under_legs(surround)]
    return [Polyline(Pen.GROUND, ((left, y0), *measured, (right, y1)), stands_for="floor")]


def _floor_under_legs(surround: Surround) -> list[Mark]:
    """The floor as measured under columns that step down to it."""
    out = surround.layout.plinth_out
    ends = [
        (s.sign * s.step.edge, s.sign * (s.outer + out), s.step.floor)
        for s in surround.layout.sides
        if s.step
    ]
    return [Lines(Pen.SITE, tuple((x0, y, x1, y) for x0, x1, y in ends), "floor")] if ends else []


def _near_wall_ends(surround: Surround, left: float, right: float) -> list[float]:
    layout, room = surround.layout, surround.job.site.room
    ends = [-(layout.opening_side + room.left), layout.opening_side + room.right]
    return [x for x in ends if left <= x <= right and abs(x) <= layout.shelf_reach + NEAR_WALL]


def _wall_end(x: float, floor: float, ceiling: float) -> Segment:
    return (x, floor, x, ceiling)


def _highest(surround: Surround) -> float:
    """What stands highest of all that is drawn at the front, the ceiling aside."""
    layout = surround.layout
    obstacles = [obstacle.y[1] for obstacle in list_drawn(layout)]
    return max(Frame.around(surround, "front").top, layout.opening_top, *obstacles)


def _ceiling_note(
    surround: Surround, frame: Frame, ceiling: float, dimensions: Sequence[Dimension], ratio: float
) -> Text:
    """How high the ceiling is, over its line or else under it, where no dimension is in the way.

    A ceiling that is drawn nearer is drawn clear of them all.
    """
    height_text = format_length(surround.job.site.room.ceiling, surround.job.about.length_style)
    broken = ceiling < surround.layout.ceiling - 1e-6
    words = f"Ceiling {height_text} over the floor" + (" (drawn nearer)" if broken else "")
    height = NOTE_HEIGHT * ratio
    over, under = (
        ceiling + (NOTE_OFF if dimensions else 2 * NOTE_OFF) * ratio,
        ceiling - NOTE_OFF * ratio - height,
    )
    ends = _near_wall_ends(surround, frame.left - BESIDE, frame.right + BESIDE)
    levels = (over,) if ends or under - height < _highest(surround) else (over, under)
    at = ((frame.left + frame.right) / 2, levels[0])
    if not broken:
        size, reach = (text_width(words, height), height), (frame.left, frame.right)
        free = free_place(size, reach, levels, dimensions, ratio) if ceiling >= _highest(surround) else None
        at = free or (
            at[0],
            strings_reach(dimensions, max(_highest(surround), ceiling)) + levels[0] - ceiling,
        )
    return Text(words, at, height, Anchor.MIDDLE, stands_for="room.ceiling")


def _side_context(
    surround: Surround, frame: Frame, dimensions: Sequence[Dimension], ratio: float, ceiling: float
) -> list[Mark]:
    left, wall, floor = frame.left - BESIDE, -surround.layout.wall, surround.layout.floor
    marks = _slab(surround, -surround.layout.hearth_front, 0.0)
    marks.append(Lines(Pen.GROUND, ((left, floor, wall, floor),), "floor"))
    clear = AROUND_TEXT * ratio
    marks.append(_ceiling_between(left, wall, ceiling, dimensions, clear))
    broken = ceiling < surround.layout.ceiling - 1e-6
    sign = _break_sign(wall, ceiling - HEADROOM / 2 * ratio, dimensions, ratio) if broken else ()
    if sign:
        marks.append(Polyline(Pen.SITE, ((wall, floor), *sign, (wall, ceiling)), stands_for="wall"))
    else:
        upright = part_line(_wall_end(wall, floor, ceiling), dimensions, clear)
        marks.append(Lines(Pen.SITE, upright, "wall"))
    return [*marks, *_leaning_masonry(surround)]


def _break_sign(x: float, at: float, dimensions: Sequence[Dimension], ratio: float) -> tuple[Point, ...]:
    """A zigzag of a plumb line where height is left out, as large as texts beside it let it be.

    Nothing where one of them stands over the line.
    """
    words = list_words(dimensions)
    for size in (BREAK * part * ratio for part in (1.0, 0.75, 0.5)):
        beside = x - size / 2, at - size, x + size / 2, at + size
        if not any(_meet(box, beside) for box in words):
            step = size / 3
            return (x, at - size), (x - size / 2, at - step), (x + size / 2, at + step), (x, at + size)
    return ()


def _meet(one: Box, other: Box) -> bool:
    return one[0] < other[2] and other[0] < one[2] and one[1] < other[3] and other[1] < one[3]


def _leaning_masonry(surround: Surround) -> list[Mark]:
    """The face of masonry out of plumb behind the right column, as it was found."""
    layout, lean = surround.layout, surround.layout.right.lean
    if lean is None:
        return []
    back = max(layout.right.inner_back, layout.right.outer_back)
    face = tuple((lean.set_back(y) - back, y) for y in (lean.base, lean.top))
    return [Polyline(Pen.SITE, face, stands_for="plumb.right")]


def _floor_in_section(surround: Surround, frame: Frame) -> list[Mark]:
    front = -max(surround.layout.hearth_front, 0.5)
    floor, left = surround.layout.floor, frame.left - BESIDE
    return [Lines(Pen.GROUND, ((left, floor, front, floor),), "floor")]
