"""One step as a picture: its boards outlined dark and tinted, with their marks; what is there in grey.

What shows is worked out in render.axonometric, which steps there are in model.steps.
"""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING

from render.axonometric import Scene, rings_of
from render.board_marks import kind_of, mark_areas
from render.drawing import Drawing, Fill, Lines, Mark, Pen, Region, Ring, Segment
from render.near_lines import keep_apart
from render.screens import GRID

if TYPE_CHECKING:
    from shapely.geometry.base import BaseGeometry

SITE_FILLS = {"opening": Fill.OPENING, "hearth": Fill.HEARTH, "facing": Fill.FACING}
KNOWN = 0.25
"""Part of a board's picture that must show for it to be known. Shop choice."""
LEAST_MARKED = 0.0006
"""Square inches on paper of a board that is marked: the dot that its mark's line ends in. Shop choice."""
OFF = 0.02
"""A grey line nearer to a dark one than this, in inches, is the dark one."""


@dataclass(frozen=True)
class Staged:
    """A scene with the `marks` of its solids, empty for those of the site, which are there in each step."""

    scene: Scene
    marks: tuple[str, ...]

    @property
    def site(self) -> frozenset[int]:
        """The site's solids."""
        return frozenset(i for i, mark in enumerate(self.marks) if not mark)


@dataclass(frozen=True)
class Bare:
    """A picture without writing, and the rings of what shows of each picked board."""

    marks: tuple[Mark, ...]
    rings: tuple[tuple[int, tuple[Ring, ...]], ...]


def draw_step(staged: Staged, bare: Bare, ratio: float, named: Collection[int] = ()) -> Drawing:
    """The picture with the marks of those `named`, places in the scene, on or beside them."""
    drawing = Drawing(bare.marks, ratio)
    areas = [(kind_of(staged.marks[i]), rings) for i, rings in bare.rings if i in named and rings]
    return drawing.plus(*mark_areas(areas, ratio, drawing.marks, LEAST_MARKED).marks)


def outline_step(staged: Staged, picked: Collection[int], there: Collection[int]) -> Bare:
    """What shows, filled and outlined, at any ratio."""
    present = {*picked, *there, *staged.site}
    patches = [(i, staged.scene.see(i, present)) for i in sorted(present)]
    regions = [_fill(staged, i, shape, i in picked) for i, own in patches for _, shape in own if shape.area]
    dark = _outline([shape for i, own in patches for _, shape in own if i in picked])
    pale = _outline([shape for i, own in patches for _, shape in own if i not in picked])
    if dark is not None and pale is not None:
        pale = keep_apart(pale, dark, OFF)
    lines = [*_stroke(Pen.BEYOND, pale), *_stroke(Pen.EDGE, dark)]
    rings = [
        (i, tuple(ring for _, shape in own for ring in rings_of(shape))) for i, own in patches if i in picked
    ]
    return Bare((*regions, *lines), tuple(rings))


def count_known(staged: Staged, picked: Collection[int], there: Collection[int]) -> int:
    """How many of the picked boards show enough to be known."""
    present = {*picked, *there, *staged.site}
    return sum(staged.scene.seen(i, present) > KNOWN * staged.scene.whole(i) for i in picked)


def sum_seen(staged: Staged, picked: Collection[int], there: Collection[int]) -> float:
    """How much of the picked boards shows, in square inches of the picture at full size."""
    present = {*picked, *there, *staged.site}
    return sum(staged.scene.seen(i, present) for i in picked)


def _fill(staged: Staged, solid: int, shape: BaseGeometry, is_picked: bool) -> Region:
    role = staged.scene.solids[solid].role
    if not staged.marks[solid]:
        return Region(SITE_FILLS.get(role, Fill.WALL), rings_of(shape), role)
    return Region(Fill.CUT_WOOD if is_picked else Fill.BAND, rings_of(shape), staged.marks[solid])


def _outline(shapes: Sequence[BaseGeometry]) -> BaseGeometry | None:
    """The edges of some areas, each once."""
    import shapely

    return shapely.union_all([shape.boundary for shape in shapes], grid_size=GRID) if shapes else None


def _stroke(pen: Pen, lines: BaseGeometry | None) -> list[Mark]:
    import shapely

    if lines is None or lines.is_empty:
        return []
    segments: list[Segment] = []
    for line in shapely.get_parts(shapely.line_merge(lines)):
        points = shapely.get_coordinates(line.simplify(GRID / 2)).tolist()
        segments += [(*a, *b) for a, b in pairwise(points)]
    return [Lines(pen, tuple(segments))]
