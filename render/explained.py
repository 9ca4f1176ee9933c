"""The small drawing of a finding: the rule on this very surround, with the distances that count."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator

from model.check.finding import Finding
from model.check.keep_out import list_allowed_slope, list_keep_out_rings
from model.check.mantel import CHECK as MANTEL
from model.check.manuals_hearth import CHECK as HEARTH
from model.surround import Surround
from model.units import format_length
from render.board_outline import outline_board, place_point
from render.dimension_strings import TEXT_HEIGHT
from render.drawing import Dimension, Drawing, Fill, Lines, Mark, Pen, Point, Polyline, Region, Segment
from render.extent import box_ring, drawing_extent
from render.shifting import shift_mark

WIDE, HIGH = 6.0, 4.5
"""Room for the wood and the masonry, inches on paper. Shop choice."""
APART = 0.9
"""Between front and side, inches on paper."""
CROSS = 0.07
LINE = 0.3
"""Half a cross, and how far a dimension line keeps off what it measures, inches on paper."""


def draw_explanation(surround: Surround, finding: Finding) -> Drawing:
    """The front with the side beside it; from above where the hearth's reach is in question."""
    if finding.check == HEARTH and not finding.part.endswith("thickness"):
        return _fit(lambda ratio: _draw_hearth(surround, finding, ratio))
    return _fit(lambda ratio: _draw_elevations(surround, finding, ratio))


def _fit(draw: Callable[[float], Iterable[Mark]]) -> Drawing:
    """Lettered for the ratio at which it fits its room."""
    ratio = 12.0
    for _ in range(3):
        x0, y0, x1, y1 = drawing_extent(Drawing(tuple(draw(ratio)), ratio))
        ratio = max((x1 - x0) / WIDE, (y1 - y0) / HIGH)
    return Drawing(tuple(draw(ratio)), ratio)


def _draw_elevations(surround: Surround, finding: Finding, ratio: float) -> list[Mark]:
    front = list(_draw_front(surround, finding, ratio))
    side = list(_draw_side(surround, finding, ratio))
    right = drawing_extent(Drawing(tuple(front), ratio))[2]
    left = drawing_extent(Drawing(tuple(side), ratio))[0]
    return [*front, *(shift_mark(mark, (right - left + APART * ratio, 0.0)) for mark in side)]


def _draw_front(surround: Surround, finding: Finding, ratio: float) -> Iterator[Mark]:
    layout = surround.layout
    mouth, top, foot = layout.opening_side, layout.opening_top, layout.opening_foot
    yield Region(
        Fill.FACING,
        (box_ring((-layout.facing_side, min(layout.floor, 0.0), layout.facing_side, layout.facing_top)),),
    )
    yield Region(Fill.OPENING, (box_ring((-mouth, foot, mouth, top)),))
    yield from _outline(surround, finding, "front")
    if finding.check == MANTEL:
        yield from (Polyline(Pen.CLEARANCE, ring, True) for ring in list_keep_out_rings(surround.job.site))
    reach = max(layout.facing_side, layout.hearth_side)
    yield Lines(Pen.GROUND, ((-reach, layout.floor, reach, layout.floor),))
    if finding.at is None:
        return
    x, y = place_point(finding.at, "front")
    yield _cross((x, y), ratio)
    if finding.check != MANTEL:
        return
    edge = mouth if x >= 0 else -mouth
    if abs(x) > mouth + 1e-6:
        yield _measure(surround, (edge, y), (x, y), False, layout.floor - LINE * ratio, ratio)
    if y > top + 1e-6:
        out = (abs(x) + LINE * ratio) * (1 if x >= 0 else -1)
        yield _measure(surround, (x, top), (x, y), True, out, ratio)


def _draw_side(surround: Surround, finding: Finding, ratio: float) -> Iterator[Mark]:
    layout = surround.layout
    yield Lines(Pen.SITE, ((0.0, layout.floor, 0.0, max(layout.shelf_top, layout.facing_top)),))
    yield Lines(Pen.GROUND, ((-max(layout.hearth_front, 12.0), layout.floor, 2.0, layout.floor),))
    yield from _outline(surround, finding, "side")
    if finding.check == MANTEL:
        slope = list_allowed_slope(surround.job.site)
        top = layout.opening_top
        if len(slope) > 1:
            yield Polyline(Pen.CLEARANCE, tuple((-out, top + above) for above, out in slope))
    if finding.at is None:
        return
    at = place_point(finding.at, "side")
    yield _cross(at, ratio)
    if finding.check == MANTEL and finding.at[2] > 1e-6:
        yield _measure(surround, (0.0, at[1]), at, False, layout.floor - LINE * ratio, ratio)


def _draw_hearth(surround: Surround, finding: Finding, ratio: float) -> Iterator[Mark]:
    """From above: masonry, opening, the hearth as it is and as it is asked."""
    site, layout = surround.job.site, surround.layout
    mouth, side, front = layout.opening_side, site.hearth.width / 2, site.hearth.depth
    deep = 8.0
    for one in (-1.0, 1.0):
        near, far = sorted((one * mouth, one * max(layout.facing_side, mouth + 4)))
        yield Region(Fill.MASONRY, (box_ring((near, 0.0, far, deep)),))
    yield Region(Fill.HEARTH, (box_ring((-side, -front, side, 0.0)),))
    yield Polyline(Pen.EDGE, box_ring((-side, -front, side, 0.0)), True)
    if site.facing.added > 0:
        for one in (-1.0, 1.0):
            near, far = sorted((one * mouth, one * max(layout.facing_side, mouth + 4)))
            yield Polyline(Pen.SITE, box_ring((near, -site.facing.added, far, 0.0)), True)
    if finding.limit is None or finding.measured is None:
        return
    if finding.part == "hearth, front":
        start = finding.measured - front
        yield Lines(Pen.CLEARANCE, ((-side, start - finding.limit, side, start - finding.limit),))
        out = side + LINE * ratio
        yield _measure(surround, (side, start), (side, -front), True, out, ratio)
        yield _measure(surround, (-side, start), (-side, start - finding.limit), True, -out, ratio)
    else:
        least = mouth + finding.limit
        yield Lines(Pen.CLEARANCE, tuple((one * least, -front, one * least, 0.0) for one in (-1.0, 1.0)))
        low = -front - LINE * ratio
        yield _measure(surround, (mouth, -front), (max(side, mouth), -front), False, low, ratio)
        yield _measure(surround, (-least, -front), (-mouth, -front), False, low, ratio)


def _outline(surround: Surround, finding: Finding, view: str) -> Iterator[Mark]:
    """All boards thinly, those the finding names heavily."""
    for board, mark in zip(surround.boards, surround.marks, strict=True):
        if mark not in finding.boards:
            yield Polyline(Pen.ARRIS, outline_board(board, view), True)
    for board, mark in zip(surround.boards, surround.marks, strict=True):
        if mark in finding.boards:
            ring = outline_board(board, view)
            yield Region(Fill.FAULT, (ring,))
            yield Polyline(Pen.OUTLINE, ring, True)


def _cross(at: Point, ratio: float) -> Lines:
    arm = CROSS * ratio
    (x, y) = at
    strokes: tuple[Segment, ...] = (
        (x - arm, y - arm, x + arm, y + arm),
        (x - arm, y + arm, x + arm, y - arm),
    )
    return Lines(Pen.FAULT, strokes)


def _measure(
    surround: Surround, first: Point, second: Point, vertical: bool, line: float, ratio: float
) -> Dimension:
    """One distance with its text in the middle."""
    i = 1 if vertical else 0
    height = TEXT_HEIGHT * ratio
    middle = (first[i] + second[i]) / 2
    off = line - 0.9 * height
    at = (off, middle) if vertical else (middle, off)
    text = format_length(abs(second[i] - first[i]), surround.job.about.length_style)
    return Dimension(first, second, vertical, line, text, at, height)
