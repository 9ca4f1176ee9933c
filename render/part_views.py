"""One sub-assembly alone as drawings: from the front, from either side, and cut through.

Where a part is cut and what is written on its views stands here; which sizes they carry is
render.part_dimensions', where they stand on a sheet render.part_sheet's.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise

from model.board import AXES, Board, StockKind
from model.build.groove import is_floating
from model.surround import Surround
from model.takeoff.assemblies import Assembly
from model.units import format_length
from render.board_marks import BoardMarks, kind_of, mark_areas
from render.cut_fills import hatch_cut
from render.cut_marks import draw_cut_end
from render.cutting_plane import cut_numbered
from render.dimension_strings import String, place_strings
from render.drawing import Dimension, Drawing, Fill, Mark, Pen, Polyline, Region, Ring
from render.extent import Box, box_of, box_ring
from render.number_places import Paper, list_strokes, list_words
from render.part_dimensions import list_part_strings
from render.sheets import PART_ABOVE as PLAN
from render.sheets import PART_FRONT as FRONT
from render.sheets import PART_LEFT as LEFT
from render.sheets import PART_LEVEL_CUT as LEVEL_CUT
from render.sheets import PART_RIGHT as RIGHT
from render.sheets import PART_UPRIGHT_CUT as UPRIGHT_CUT
from render.views import list_lines, list_lines_by_board
from render.visibility import (
    FROM_ABOVE,
    FROM_FRONT,
    FROM_RIGHT,
    Look,
    Projection,
    flatten_boards,
    project,
)

FROM_LEFT = Look((2, 1, 0), (1.0, 1.0, -1.0))
LOOKS = {
    FRONT: FROM_FRONT,
    LEFT: FROM_LEFT,
    RIGHT: FROM_RIGHT,
    PLAN: FROM_ABOVE,
    LEVEL_CUT: FROM_ABOVE,
    UPRIGHT_CUT: FROM_RIGHT,
}
"""The views of a part by the name they are placed under."""
ORDER = (FRONT, UPRIGHT_CUT, LEVEL_CUT, RIGHT, LEFT, PLAN)
"""A place is measured to in the first of these that shows it."""
SECTIONS = {LEVEL_CUT: "C", UPRIGHT_CUT: "D"}
"""The letters of the sections; A and B are those of the whole surround."""
NOT_CUT_FOR = ("plinth", "capital")
"""What stands round the foot and head of a part says nothing about how it is made inside."""


@dataclass(frozen=True, eq=False)
class Part:
    """A sub-assembly of `surround`, with what is seen of it worked out once for each view."""

    surround: Surround
    assembly: Assembly

    @cached_property
    def boards(self) -> tuple[Board, ...]:
        """Its boards."""
        return tuple(self.surround.boards[i] for i in self.assembly.pieces)

    @cached_property
    def kinds(self) -> tuple[str, ...]:
        """The mark of the kind of each of its boards."""
        return tuple(kind_of(self.surround.marks[i]) for i in self.assembly.pieces)

    @cached_property
    def bounds(self) -> tuple[tuple[float, float], ...]:
        """How far it reaches along x, y and z: low and high."""
        return tuple(
            (min(b.bounds[0][i] for b in self.boards), max(b.bounds[1][i] for b in self.boards))
            for i in range(3)
        )

    def extent(self, axis: str) -> float:
        """How far it reaches along a room axis."""
        low, high = self.bounds[AXES.index(axis)]
        return high - low

    @cached_property
    def is_upright(self) -> bool:
        """Whether it is higher than it is wide."""
        return self.extent("y") > self.extent("x")

    @property
    def is_moulding(self) -> bool:
        """Whether there is nothing in it but moulded pieces."""
        return all(board.worked is not None for board in self.boards)

    @property
    def is_framing(self) -> bool:
        """Whether there is nothing in it but what stays behind the wood."""
        return all(board.stock.kind is StockKind.FRAMING for board in self.boards)

    @cached_property
    def cuts(self) -> dict[str, float]:
        """Where its sections are taken: y of the level one, x of the upright one."""
        return {LEVEL_CUT: _find_cut(self, "y"), UPRIGHT_CUT: _find_cut(self, "x")}

    @cached_property
    def _projections(self) -> dict[str, tuple[Projection, tuple[int, ...]]]:
        return {}

    @cached_property
    def _strings(self) -> dict[tuple[str, tuple[str, ...]], tuple[String, ...]]:
        return {}

    def projection(self, view: str) -> tuple[Projection, tuple[int, ...]]:
        """What a view shows, and for each board of it its place in `boards`."""
        if view not in self._projections:
            self._projections[view] = self._project(view)
        return self._projections[view]

    def strings(self, view: str, shown: tuple[str, ...]) -> tuple[String, ...]:
        """The strings of dimensions of a view, without what another of those `shown` measures before it."""
        if (view, shown) not in self._strings:
            before = [v for v in ORDER[: ORDER.index(view)] if v in shown]
            rings = tuple((self.boards[n], rings) for n, rings, _ in self.list_seen(view))
            known = tuple(frozenset(self._list_known(view, k, before, shown)) for k in (0, 1))
            holes = [box_of(ring) for _, ring in self.list_holes(view)]
            one_sided = view == LEVEL_CUT and not self.is_upright
            self._strings[view, shown] = list_part_strings(rings, (known[0], known[1]), holes, one_sided)
        return self._strings[view, shown]

    def _list_known(
        self, view: str, k: int, before: Sequence[str], shown: tuple[str, ...]
    ) -> Iterator[float]:
        """Places along the picture's coordinate `k` of `view` that the views `before` it measure to."""
        axis, sign = LOOKS[view].axes[k], LOOKS[view].signs[k]
        for other in before:
            look = LOOKS[other]
            for string in self.strings(other, shown):
                j = 1 if string.edge.vertical else 0
                if look.axes[j] == axis:
                    yield from (station.along * look.signs[j] * sign for station in string.stations)

    def _project(self, view: str) -> tuple[Projection, tuple[int, ...]]:
        look = LOOKS[view]
        if view not in (LEVEL_CUT, UPRIGHT_CUT):
            return project(flatten_boards(self.boards), look), tuple(range(len(self.boards)))
        at = self.cuts[view]
        numbered = cut_numbered(self.boards, AXES[look.axes[2]], at)
        boards = tuple(board for _, board in numbered)
        return project(flatten_boards(boards), look, at), tuple(i for i, _ in numbered)

    def outline(self, view: str) -> Box:
        """The box of what a view shows: left, bottom, right, top."""
        look = LOOKS[view]
        spans = [
            sorted(value * sign for value in self.bounds[axis])
            for axis, sign in zip(look.axes[:2], look.signs[:2], strict=True)
        ]
        return spans[0][0], spans[1][0], spans[0][1], spans[1][1]

    def list_seen(self, view: str) -> Iterator[tuple[int, tuple[Ring, ...], bool]]:
        """Each board that shows, its rings, and whether they are where it is cut."""
        projection, places = self.projection(view)
        cut = set(projection.cut_owners())
        for owner in projection.seen_owners():
            is_cut = owner in cut
            rings = projection.cut_rings_of(owner) if is_cut else projection.rings_of(owner)
            yield places[owner], rings, is_cut

    def list_holes(self, view: str) -> Iterator[tuple[float, Ring]]:
        """How wide each round hole is that the view shows end on, and its outline there."""
        look = LOOKS[view]
        projection, places = self.projection(view)
        for owner in projection.seen_owners():
            for bore in self.boards[places[owner]].bores:
                if bore.is_round and bore.axis == AXES[look.axes[2]]:
                    ring = tuple(look.point(bore.place(point, bore.span[0])) for point in bore.ring)
                    yield bore.size[0], ring


def _find_cut(part: Part, axis: str) -> float:
    """Through the middle of the largest opening that shows a panel, else where most pieces are cut."""
    i = AXES.index(axis)
    panels = [n for n, b in enumerate(part.boards) if b.stock.kind is StockKind.PANEL or is_floating(b)]
    rings = [ring for n, found, _ in part.list_seen(FRONT) if n in panels for ring in found]
    if rings:
        largest = max(rings, key=_box_area)
        values = [point[i] for point in largest]
        return (min(values) + max(values)) / 2
    inner = [b for b in part.boards if b.role.split()[0] not in NOT_CUT_FOR] or list(part.boards)
    edges = sorted({round(b.bounds[k][i], 6) for b in inner for k in (0, 1)})
    middles = [(a + b) / 2 for a, b in pairwise(edges)]
    centre = (edges[0] + edges[-1]) / 2

    def worth(at: float) -> tuple[int, float]:
        cut = Counter(b.bounds[0][i] < at < b.bounds[1][i] for b in inner)[True]
        return cut, -abs(at - centre)

    return max(middles, key=worth)


def _box_area(ring: Ring) -> float:
    left, bottom, right, top = box_of(ring)
    return (right - left) * (top - bottom)


def draw_part(part: Part, view: str, ratio: float, shown: tuple[str, ...], by_board: bool = False) -> Drawing:
    """The named view of `part` with its sizes, lettered for `ratio`; its boards are not marked yet.

    `shown` are all the views that stand on its sheet: no size is given twice. `by_board` parts its lines as
    `render.views.ViewOptions` says.
    """
    projection, places = part.projection(view)
    names = [part.surround.marks[part.assembly.pieces[n]] for n in places]
    lines = list_lines_by_board(projection, names) if by_board else list_lines(projection)
    bare = (*_draw_wood(projection, view, ratio), *lines)
    plain = (*bare, *_list_sizes(part, view, ratio, shown))
    return Drawing((*plain, *draw_cuts(part, view, ratio, shown, plain)), ratio)


def draw_cuts(
    part: Part, view: str, ratio: float, shown: tuple[str, ...], under: Sequence[Mark]
) -> list[Mark]:
    """On the front, where the sections on the sheet are taken and which way they look, clear of `under`."""
    if view != FRONT:
        return []
    left, bottom, right, top = part.outline(FRONT)
    paper, marks = Paper(list_strokes(under, ratio), (), list_words(under)), list[Mark]()
    for cut, letter in SECTIONS.items():
        if cut in shown:
            ends = (left, right) if cut == LEVEL_CUT else (bottom, top)
            for end, out in zip(ends, (-1.0, 1.0), strict=True):
                marks += draw_cut_end(part.cuts[cut], end, out, cut == LEVEL_CUT, letter, ratio, paper)
    return marks


def frame_part(part: Part, view: str, ratio: float, shown: tuple[str, ...]) -> Drawing:
    """What takes up as much room as `draw_part` draws, and is quicker had."""
    frame = Polyline(Pen.GUIDE, box_ring(part.outline(view)), closed=True)
    return Drawing((frame, *_list_sizes(part, view, ratio, shown)), ratio)


def _list_sizes(part: Part, view: str, ratio: float, shown: tuple[str, ...]) -> tuple[Dimension, ...]:
    style = part.surround.job.about.length_style
    return place_strings(part.strings(view, shown), part.outline(view), ratio, style)


def mark_part(part: Part, drawing: Drawing, view: str) -> BoardMarks:
    """Marks for every board that the view shows, and what is bored through them, clear of the `drawing`."""
    style = part.surround.job.about.length_style
    areas = [(part.kinds[n], rings) for n, rings, _ in part.list_seen(view)]
    holes = [(f"{format_length(size, style)} hole", (ring,)) for size, ring in part.list_holes(view)]
    return mark_areas([*areas, *holes], drawing.ratio, drawing.marks)


def _draw_wood(projection: Projection, view: str, ratio: float) -> list[Mark]:
    marks: list[Mark] = [Region(Fill.WOOD, projection.wood_rings, "wood")]
    for turn, owner in enumerate(projection.cut_owners()):
        rings, board = projection.cut_rings_of(owner), projection.solids.boards[owner]
        marks += [Region(Fill.CUT_WOOD, rings), *hatch_cut(board, rings, LOOKS[view].axes, ratio, turn)]
    return marks
