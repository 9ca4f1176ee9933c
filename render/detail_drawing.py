"""A detail as a drawing: what a section shows within a box, its sizes, the marks of its boards.

Which details there are is render.detail_list's, on which sheet they stand render.chapters.details'.
"""

from __future__ import annotations

from collections.abc import Iterator

from model.surround import Surround
from render.board_marks import kind_of, mark_areas
from render.clipping import clip_drawing, clip_ring
from render.detail_list import Detail
from render.dimension_strings import place_strings
from render.drawing import Drawing, Lines, Mark, Pen, Ring
from render.extent import Box, box_sides
from render.part_dimensions import Rings, list_part_strings
from render.views import draw_section, project_at
from render.visibility import Projection

SITE_NAMES = {"facing": "masonry"}
"""What stands there, where it is called otherwise than in the program."""


class DetailView:
    """One detail, what it shows worked out once for all scales."""

    def __init__(self, surround: Surround, detail: Detail) -> None:
        self._surround, self._detail = surround, detail
        self._projection, self._places = project_at(surround, detail.view, detail.at)
        self._strings = list_part_strings(self._list_cut(), (frozenset(), frozenset()), within=detail.box)

    def draw(self, ratio: float) -> Drawing:
        """The detail lettered for `ratio`, in the coordinates of its section."""
        detail, style = self._detail, self._surround.job.about.length_style
        whole = draw_section(self._projection, detail.view, ratio)
        shown = clip_drawing(whole, detail.box).plus(_edge(detail.box))
        sized = shown.plus(*place_strings(self._strings, detail.box, ratio, style))
        return sized.plus(*mark_areas(self._list_named(), ratio, sized.marks).marks)

    def frame(self, ratio: float) -> Drawing:
        """What takes up as much room, but for marks beside it."""
        style = self._surround.job.about.length_style
        dimensions = place_strings(self._strings, self._detail.box, ratio, style)
        return Drawing((_edge(self._detail.box), *dimensions), ratio)

    def _list_cut(self) -> Rings:
        """Boards and site where they are cut."""
        solids = self._projection.solids.boards
        return tuple((solids[o], self._projection.cut_rings_of(o)) for o in self._projection.cut_owners())

    def _list_named(self) -> Iterator[tuple[str, list[Ring]]]:
        """What is shown in the box by what is written on it."""
        cut = set(self._projection.cut_owners())
        for owner in self._projection.seen_owners():
            rings = _rings_of(self._projection, owner, owner in cut)
            inside = [ring for ring in (clip_ring(ring, self._detail.box) for ring in rings) if ring]
            name = self._name(owner)
            if inside and (owner in cut or owner < self._projection.solids.site_start):
                yield name, inside

    def _name(self, owner: int) -> str:
        solids = self._projection.solids
        if owner < solids.site_start:
            return kind_of(self._surround.marks[self._places[owner]])
        return SITE_NAMES.get(solids.boards[owner].role, solids.boards[owner].role)


def _rings_of(projection: Projection, owner: int, is_cut: bool) -> tuple[Ring, ...]:
    return projection.cut_rings_of(owner) if is_cut else projection.rings_of(owner)


def _edge(box: Box) -> Mark:
    return Lines(Pen.GUIDE, box_sides(box))
