"""Findings of hearth and noncombustible zone drawn: what there is, and what is asked."""

from __future__ import annotations

from collections.abc import Iterator

from model.check.clearance import HAIR
from model.check.finding import Finding
from model.surround import Surround
from render.drawing import Fill, Lines, Mark, Pen, Polyline, Region
from render.explained_base import DEEP, LINE, draw_front, draw_masonry, list_jambs, measure, write
from render.extent import box_ring


def draw_hearth_page(surround: Surround, finding: Finding, ratio: float) -> list[Mark]:
    """Its reach from above, or its thickness cut through."""
    if finding.part.endswith("thickness"):
        return list(_draw_slab(surround, finding, ratio))
    return list(_draw_reach(surround, finding, ratio))


def draw_zone_page(surround: Surround, finding: Finding, ratio: float) -> list[Mark]:
    """How far the facing runs round the opening, and how far the manual wants it to."""
    layout, limit = surround.layout, finding.limit or 0.0
    mouth, top = layout.opening_side, layout.opening_top
    marks = [*draw_front(surround, ())]
    if finding.path == "facing.height":
        x = layout.facing_side
        marks.append(Lines(Pen.CLEARANCE, ((-x, top + limit, x, top + limit),)))
        marks.append(measure(surround, (x, top), (x, layout.facing_top), True, x + LINE * ratio, ratio))
        marks.append(measure(surround, (-x, top), (-x, top + limit), True, -x - LINE * ratio, ratio))
        return marks
    low = layout.floor - LINE * ratio
    for turn in (-1.0, 1.0):
        x = turn * (mouth + limit)
        marks.append(Lines(Pen.CLEARANCE, ((x, 0.0, x, top),)))
    marks.append(measure(surround, (mouth, 0.0), (layout.facing_side, 0.0), False, low, ratio))
    marks.append(measure(surround, (-mouth - limit, 0.0), (-mouth, 0.0), False, low, ratio))
    return marks


def _draw_reach(surround: Surround, finding: Finding, ratio: float) -> Iterator[Mark]:
    """From above: masonry, opening, the hearth as it is and as it is asked."""
    site, layout = surround.job.site, surround.layout
    mouth, side, front = layout.opening_side, site.hearth.width / 2, site.hearth.depth
    yield from draw_masonry(surround)
    yield Region(Fill.HEARTH, (box_ring((-side, -front, side, 0.0)),))
    yield Polyline(Pen.EDGE, box_ring((-side, -front, side, 0.0)), True)
    if site.facing.added > HAIR:
        for near, far in list_jambs(surround):
            yield Polyline(Pen.SITE, box_ring((near, -site.facing.added, far, 0.0)), True)
    yield write("opening", (0.0, DEEP / 2), ratio)
    if finding.limit is None or finding.measured is None:
        return
    if finding.part == "hearth, front":
        start = finding.measured - front
        yield Lines(Pen.CLEARANCE, ((-side, start - finding.limit, side, start - finding.limit),))
        out = side + LINE * ratio
        yield measure(surround, (side, start), (side, -front), True, out, ratio)
        yield measure(surround, (-side, start), (-side, start - finding.limit), True, -out, ratio)
    else:
        least = mouth + finding.limit
        yield Lines(Pen.CLEARANCE, tuple((one * least, -front, one * least, 0.0) for one in (-1.0, 1.0)))
        low = -front - LINE * ratio
        yield measure(surround, (mouth, -front), (max(side, mouth), -front), False, low, ratio)
        yield measure(surround, (-least, -front), (-mouth, -front), False, low, ratio)


def _draw_slab(surround: Surround, finding: Finding, ratio: float) -> Iterator[Mark]:
    """Cut from front to back: the firebox's floor and the hearth before it."""
    site = surround.job.site
    depth, thick, limit = site.hearth.depth, site.hearth.thickness, finding.limit
    sill = site.opening.sill
    least = max(thick or 0.0, limit or 0.0, 1.0)
    yield Region(Fill.MASONRY, (box_ring((0.0, -least - 2, DEEP, sill)),))
    slab = box_ring((-depth, -(thick or least), 0.0, 0.0))
    yield Region(Fill.HEARTH, (slab,))
    yield Polyline(Pen.OUTLINE if thick is not None else Pen.SITE, slab, True)
    yield write("firebox", (DEEP / 2, sill + LINE * ratio), ratio)
    yield write("hearth", (-0.75 * depth, LINE / 2 * ratio), ratio)
    if limit:
        yield Lines(Pen.CLEARANCE, ((-depth, -limit, 0.0, -limit),))
        yield measure(surround, (-depth, 0.0), (-depth, -limit), True, -depth - LINE * ratio, ratio)
    if thick is not None:
        at = -depth / 2
        yield measure(surround, (at, 0.0), (at, -thick), True, at, ratio)
    else:
        yield write("thickness not known", (-depth / 2, -least - LINE * ratio), ratio)
    if sill > HAIR:
        yield measure(surround, (0.0, 0.0), (0.0, sill), True, -LINE * ratio, ratio)
