"""The sheet of one sub-assembly: its views, the section at a scale of its own, and room for its tables.

What the views show is render.part_views', what the tables say render.part_tables'.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from math import inf

from render.drawing import MM, Drawing, Placed, Text
from render.extent import Box, box_of, paper_extent
from render.part_views import Part, draw_part, frame_part, mark_part
from render.scales import Scale
from render.sheets import (
    PART_ABOVE,
    PART_FRONT,
    PART_LEFT,
    PART_LEVEL_CUT,
    PART_RIGHT,
    PART_UPRIGHT_CUT,
)
from render.tables import Strip, pour_strips, strips_height
from render.view_layout import BETWEEN, DrawView, lay_views

LEAST_TABLE = 70 * MM
"""Narrower than this a table of pieces cannot be read. Shop choice."""
MOST_TABLE = 150 * MM
"""Wider than this it only spreads. Shop choice."""
GIVEN_UP = 1.6
"""Tables stand on the drawings' sheet where those need not be smaller for it than by this. Shop choice."""

THIN = 2.5
"""A frame less deep than this shows nothing from its end that its section does not, in. Shop choice."""
PARTED = 1.6
"""The views stand on two sheets where on one they would be smaller than by this. Shop choice."""

SetTable = Callable[[float], Sequence[Strip]]
"""A table of a part, set for a width in paper inches."""


@dataclass(frozen=True, slots=True)
class PartLayout:
    """What is placed, the scales, how many of the tables found room, and which boards found no mark."""

    scales: tuple[Scale, Scale]
    placed: tuple[Placed, ...]
    tables: int
    unmarked: tuple[str, ...] = ()

    @property
    def size(self) -> tuple[float, float]:
        """The smaller, the larger its views are drawn."""
        return self.scales[0].ratio, self.scales[1].ratio


@dataclass(frozen=True, slots=True)
class Plan:
    """Which views share the first scale, which have their own, and whether those stand beside or below."""

    main: tuple[str, ...]
    own: tuple[str, ...]
    beside: bool

    @property
    def views(self) -> tuple[str, ...]:
        """All of them."""
        return (*self.main, *self.own)


def lay_part(
    part: Part, scales: Sequence[Scale], area: Box, tables: Sequence[SetTable]
) -> tuple[PartLayout, ...]:
    """The part's views within `area` at the largest of `scales`, its tables with them where they fit.

    One page, or where that makes the drawings too small two: the views that share a scale, then the others.
    Views without a table stand in the middle.
    """
    pages = _lay_pages(part, scales, area, tables)
    return tuple(page if page.tables else _centre(page, area) for page in pages)


def _lay_pages(
    part: Part, scales: Sequence[Scale], area: Box, tables: Sequence[SetTable]
) -> tuple[PartLayout, ...]:
    plans = list_plans(part)
    alone = _lay_best(part, [replace(plans[0], own=())], scales, area, ())
    if alone is None:
        return _lay_singly(part, plans[0].views, scales, area, tables)
    together = _lay_best(part, plans, scales, area, tables)
    if together is not None and together.size[0] <= PARTED * alone.size[0]:
        return (together,)
    rest = [Plan(plans[0].own, (), beside) for beside in (True, False)]
    others = _lay_best(part, rest, scales, area, tables) if plans[0].own else together
    return (alone, others) if others is not None else (alone,)


def _centre(layout: PartLayout, area: Box) -> PartLayout:
    """The same with all that is placed moved together to the middle of `area`."""
    boxes = [paper_extent(placed.drawing) for placed in layout.placed]
    corners = [
        (placed.at[0] + x, placed.at[1] + y)
        for placed, (x0, y0, x1, y1) in zip(layout.placed, boxes, strict=True)
        for x, y in ((x0, y0), (x1, y1))
    ]
    x0, y0, x1, y1 = box_of(corners)
    dx, dy = (area[0] + area[2] - x0 - x1) / 2, (area[1] + area[3] - y0 - y1) / 2
    moved = (replace(placed, at=(placed.at[0] + dx, placed.at[1] + dy)) for placed in layout.placed)
    return replace(layout, placed=tuple(moved))


def _lay_best(
    part: Part, plans: Sequence[Plan], scales: Sequence[Scale], area: Box, tables: Sequence[SetTable]
) -> PartLayout | None:
    """The layout that draws the part largest; with its tables, unless that makes the drawings too small."""
    shown = list_plans(part)[0].views
    found = [f for plan in plans for f in _lay_plan(part, plan, shown, scales, area, tables)]
    if not found:
        return None
    largest = min(layout.size for layout in found)
    kept = [
        f for f in found if f.size <= largest or (_is_whole(f, tables) and f.size[0] <= GIVEN_UP * largest[0])
    ]
    return min(kept, key=lambda layout: (-layout.tables, layout.size))


def _is_whole(layout: PartLayout, tables: Sequence[SetTable]) -> bool:
    """Whether all tables stand beside the drawings, which those may be smaller for."""
    return bool(tables) and layout.tables == len(tables)


def list_plans(part: Part) -> tuple[Plan, ...]:
    """The ways to set out the views of a part, by how it lies."""
    if part.is_upright:
        return (
            Plan((PART_FRONT, PART_LEFT, PART_RIGHT), (PART_LEVEL_CUT,), True),
            Plan((PART_FRONT, PART_LEFT, PART_RIGHT), (PART_LEVEL_CUT,), False),
        )
    if part.is_moulding:
        return (Plan((PART_FRONT, PART_ABOVE), (), False),)
    if part.extent("z") > part.extent("y"):
        seen = {part.kinds[n] for view in (PART_FRONT, PART_ABOVE) for n, _, _ in part.list_seen(view)}
        above = PART_ABOVE if seen >= set(part.kinds) else PART_LEVEL_CUT
        return (Plan((PART_FRONT, above), (PART_UPRIGHT_CUT, PART_RIGHT), False),)
    if part.is_framing:
        return (Plan((PART_FRONT, PART_RIGHT), (PART_LEVEL_CUT,), False),)
    if part.extent("z") < THIN:
        return tuple(Plan((PART_FRONT,), (PART_UPRIGHT_CUT,), beside) for beside in (True, False))
    return (
        Plan((PART_FRONT,), (PART_UPRIGHT_CUT, PART_RIGHT), False),
        Plan((PART_FRONT, PART_RIGHT), (PART_UPRIGHT_CUT,), True),
    )


def list_views(part: Part) -> tuple[str, ...]:
    """What a file of its own shows: from the front, the right and above, and whatever its sheet shows."""
    listed = [view for plan in list_plans(part) for view in plan.views]
    return tuple(dict.fromkeys((PART_FRONT, PART_RIGHT, PART_ABOVE, *listed)))


def _lay_plan(
    part: Part,
    plan: Plan,
    shown: tuple[str, ...],
    scales: Sequence[Scale],
    area: Box,
    tables: Sequence[SetTable],
) -> Iterator[PartLayout]:
    """The largest layout for each number of tables that it holds, as far as there are any."""
    drawer = _Drawer(part, plan, shown)
    wanted = set(range(len(tables) + 1))
    largest = inf
    for scale in scales:
        if scale.ratio > GIVEN_UP * largest or not wanted:
            return
        for own in [s for s in scales if s.ratio <= scale.ratio] if plan.own else [scale]:
            plain = _lay_at(drawer, False, (scale, own), area, tables)
            if not wanted & {layout.tables for layout in plain}:
                continue
            for layout in _lay_at(drawer, True, (scale, own), area, tables)[::-1]:
                if layout.tables in wanted:
                    wanted -= {layout.tables, *(range(1, len(tables)) if layout.tables == 0 else ())}
                    largest = min(largest, scale.ratio)
                    yield replace(layout, unmarked=drawer.list_unmarked((scale, own)))


class _Drawer:
    """Draws each view of a plan once for each ratio, its frame alone or all of it, and measures them."""

    def __init__(self, part: Part, plan: Plan, shown: tuple[str, ...]) -> None:
        self.plan = plan
        self._part, self._shown = part, shown
        self._plain: dict[tuple[str, float], Drawing] = {}
        self._marked: dict[tuple[str, float], tuple[Drawing, frozenset[str]]] = {}
        self._sizes: dict[tuple[tuple[str, ...], float, bool], tuple[float, float]] = {}

    def draw(self, is_marked: bool) -> DrawView:
        """Draws the views with the marks of their boards, or only the frames of them."""
        return self._draw_marked if is_marked else self._draw_plain

    def size(self, views: tuple[str, ...], scale: Scale, is_marked: bool) -> tuple[float, float]:
        """Width and height of some views together on paper."""
        key = views, scale.ratio, is_marked
        if key not in self._sizes:
            self._sizes[key] = lay_views(views, self.draw(is_marked), (scale,), (0.0, 0.0, 1.0, 1.0)).size
        return self._sizes[key]

    def _draw_plain(self, view: str, ratio: float) -> Drawing:
        key = view, ratio
        if key not in self._plain:
            self._plain[key] = frame_part(self._part, view, ratio, self._shown)
        return self._plain[key]

    def _draw_marked(self, view: str, ratio: float) -> Drawing:
        key = view, ratio
        if key not in self._marked:
            drawing = draw_part(self._part, view, ratio, self._shown)
            found = mark_part(self._part, drawing, view)
            told = frozenset(mark.text for mark in found.marks if isinstance(mark, Text))
            self._marked[key] = drawing.plus(*found.marks), told
        return self._marked[key][0]

    def list_unmarked(self, scales: tuple[Scale, Scale]) -> tuple[str, ...]:
        """The marks that stand on none of the views at these scales."""
        told: set[str] = set()
        for views, scale in zip((self.plan.main, self.plan.own), scales, strict=True):
            told = told.union(*(self._marked[view, scale.ratio][1] for view in views))
        return tuple(mark for mark in dict.fromkeys(self._part.kinds) if mark not in told)


def _lay_at(
    drawer: _Drawer,
    is_marked: bool,
    scales: tuple[Scale, Scale],
    area: Box,
    tables: Sequence[SetTable],
) -> list[PartLayout]:
    """What the sheet holds at these scales of the main views and of the others, with each count of tables."""
    plan, draw = drawer.plan, drawer.draw(is_marked)
    main = drawer.size(plan.main, scales[0], is_marked)
    if not _has_room(area, main):
        return []
    first, rest = _split(area, main, plan.beside)
    second = rest
    if plan.own:
        own = drawer.size(plan.own, scales[1], is_marked)
        if not _has_room(rest, own):
            return []
        second, rest = _split(rest, own, not plan.beside)
    placed = lay_views(plan.main, draw, scales[:1], first).placed
    placed += lay_views(plan.own, draw, scales[1:], second).placed if plan.own else ()
    return [PartLayout(scales, placed, 0), *_add_tables(PartLayout(scales, placed, 0), rest, tables)]


def _add_tables(bare: PartLayout, room: Box, tables: Sequence[SetTable]) -> Iterator[PartLayout]:
    """The layout with the first table, with the first two, as far as they have room."""
    left, bottom, right, top = room
    if right - left < LEAST_TABLE:
        return
    strips: list[Strip] = []
    for count, table in enumerate(tables, start=1):
        strips += table(min(right - left, MOST_TABLE))
        if strips_height(strips) > top - bottom:
            return
        (marks,) = pour_strips(strips, (left, top), top - bottom)
        yield replace(bare, placed=(*bare.placed, Placed(Drawing(marks), (0.0, 0.0), "table")), tables=count)


def _has_room(room: Box, size: tuple[float, float]) -> bool:
    return size[0] <= room[2] - room[0] and size[1] <= room[3] - room[1]


def _split(area: Box, size: tuple[float, float], beside: bool) -> tuple[Box, Box]:
    """The part of `area` for something of that size, left or at the top, and the rest beside or below it."""
    left, bottom, right, top = area
    if beside:
        return (left, bottom, left + size[0], top), (left + size[0] + BETWEEN, bottom, right, top)
    return (left, top - size[1], right if size[0] > (right - left) / 2 else left + size[0], top), (
        left,
        bottom,
        right,
        top - size[1] - BETWEEN,
    )


def _lay_singly(
    part: Part, views: Sequence[str], scales: Sequence[Scale], area: Box, tables: Sequence[SetTable]
) -> tuple[PartLayout, ...]:
    """Each view on a page of its own, where they have no room together."""
    found = [_lay_best(part, [Plan((view,), (), True)], scales, area, ()) for view in views[:-1]]
    found.append(_lay_best(part, [Plan((views[-1],), (), True)], scales, area, tables))
    return tuple(layout for layout in found if layout is not None)
