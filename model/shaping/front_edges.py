"""Edges of the front elevation, (x, y): columns, plinths, frieze, panels, shelf and what lies on them."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import chain

from model.build.frame_lines import LEAST_PANEL
from model.build.lines import NEAR, Layout, Rect, Side
from model.job import read_value
from model.shaping.frame_edges import list_row, share_after, share_before
from model.shaping.grip import ACROSS, UP, Edge, Segment
from model.surround import Surround


def list_front_edges(surround: Surround) -> Iterator[Edge]:
    """All that show, both columns' apart."""
    layout = surround.layout
    sides = chain.from_iterable(_list_side(surround, side) for side in layout.sides)
    return chain(
        sides,
        _list_frieze(layout),
        _list_on_facing(layout),
        list_shelf(surround, -layout.left.shelf_side, layout.right.shelf_side),
        _list_ends(surround),
        _list_over(surround),
    )


def own_path(surround: Surround, path: str, side: Side) -> str:
    """The row of that side alone where it holds something, else the one of both."""
    alone = f"{path.removesuffix('_end')}_{side.name}"
    return path if read_value(surround.job, alone) is None else alone


def _list_side(surround: Surround, side: Side) -> Iterator[Edge]:
    yield from _list_column(surround, side)
    yield from _list_plinth(surround.layout, side)
    yield from _list_panels(surround.layout, side)
    yield from _list_flutes(side)
    yield from _list_raised(side)
    yield from _list_capital(surround.layout, side)


def foot_of(layout: Layout, side: Side) -> float:
    """y where a column's own face begins: over its plinth and what lies on that."""
    cap = layout.mouldings.plinth_cap
    return side.plinth_top + (cap.height if cap else 0.0)


def head_of(layout: Layout) -> float:
    """y where it ends: under a frieze over it, or under the bed mould."""
    return layout.frieze_bottom if layout.frieze_over else layout.shelf_bottom - layout.mould_size


def _list_column(surround: Surround, side: Side) -> Iterator[Edge]:
    layout, turn = surround.layout, side.sign
    low, high = foot_of(layout, side), head_of(layout)
    words, width = f"side of the {side.name} column", own_path(surround, "column.width", side)
    if side.taper is None:
        outer, inner = (turn * x for x in (side.outer, side.inner))
        yield Edge(width, f"outer {words}", ((outer, low, outer, high),), ACROSS, turn)
        yield Edge("column.margin", f"inner {words}", ((inner, low, inner, high),), ACROSS, turn)
        return
    middle = (side.taper.outer.low + side.taper.outer.high) / 2
    halves = [tuple(_along(side, turn, y0, y1)) for y0, y1 in ((low, middle), (middle, high))]
    inner_leans = side.taper.inner.leans
    share = 2.0 if inner_leans else 1.0
    yield Edge(width, f"outer {words}, at its foot", (halves[0][1],), ACROSS, turn)
    yield Edge("column.taper", f"outer {words}, at its top", (halves[1][1],), ACROSS, -turn * share)
    yield Edge("column.margin", f"inner {words}", (halves[0][0],), ACROSS, turn)
    if inner_leans:
        yield Edge("column.taper", f"inner {words}, at its top", (halves[1][0],), ACROSS, turn * share)


def _along(side: Side, turn: float, y0: float, y1: float) -> Iterator[Segment]:
    """The inner and the outer edge of a tapered column between two levels."""
    (inner0, outer0), (inner1, outer1) = side.sides_at(y0), side.sides_at(y1)
    yield turn * inner0, y0, turn * inner1, y1
    yield turn * outer0, y0, turn * outer1, y1


def _list_plinth(layout: Layout, side: Side) -> Iterator[Edge]:
    out, turn, top = layout.plinth_out, side.sign, side.plinth_top
    if not out:
        return
    inner, outer, words = turn * (side.inner - out), turn * (side.outer + out), f"{side.name} plinth"
    yield Edge("plinth.height", f"top of the {words}", ((inner, top, outer, top),), UP, 1.0)
    yield Edge(
        "plinth.projection", f"outer side of the {words}", ((outer, side.lowest, outer, top),), ACROSS, turn
    )
    yield Edge(
        "plinth.projection", f"inner side of the {words}", ((inner, side.lowest, inner, top),), ACROSS, -turn
    )
    if cap := layout.mouldings.plinth_cap:
        reach, y = cap.projection, top + cap.height
        ends = sorted(turn * x for x in (side.inner - reach, side.outer + reach))
        yield Edge(
            "plinth_cap.size", f"top of the {side.name} plinth cap", ((ends[0], y, ends[1], y),), UP, 1.0
        )


def _list_capital(layout: Layout, side: Side) -> Iterator[Edge]:
    capital = layout.mouldings.capital
    if capital is None:
        return
    y, reach = layout.frieze_bottom - capital.height, capital.projection
    ends = sorted(side.sign * x for x in (side.inner_top - reach, side.outer_top + reach))
    yield Edge(
        "capital.size", f"lower edge of the {side.name} capital", ((ends[0], y, ends[1], y),), UP, -1.0
    )


def _list_flutes(side: Side) -> Iterator[Edge]:
    if side.frame.flutes is None:
        return
    x0, y0, x1, y1 = side.frame.flutes
    left, right = sorted((side.sign * x0, side.sign * x1))
    words = f"end of the {side.name} column's flutes"
    yield Edge("flute.stop", f"lower {words}", ((left, y0, right, y0),), UP, 1.0)
    yield Edge("flute.stop", f"upper {words}", ((left, y1, right, y1),), UP, -1.0)


def _list_raised(side: Side) -> Iterator[Edge]:
    """The ends of the board laid on a column's face; its sides lie as far in as they do."""
    raised = side.frame.raised
    if raised is None:
        return
    words = f"end of the {side.name} column's raised board"
    for which, y, turn in (("lower", raised.y[0], 1.0), ("upper", raised.y[1], -1.0)):
        x = sorted(side.sign * at for at in side.edges.inset(raised.margin).at(y))
        yield Edge("raised.margin", f"{which} {words}", ((x[0], y, x[1], y),), UP, turn)


def _list_panels(layout: Layout, side: Side) -> Iterator[Edge]:
    """Upright edges all at once, level ones panel by panel; one beside the frieze keeps to that."""
    frame, turn = side.frame, side.sign
    if not frame.openings:
        return
    beside = tuple(rect for rect in frame.openings[1:][-1:] if _is_beside_frieze(layout, rect))
    own = frame.openings[: len(frame.openings) - len(beside)]
    sides = [tuple(_beside(side, rect, which) for rect in frame.openings) for which in (0, 1)]
    words = f"edge of the {side.name} column's panel" + ("s" if len(frame.openings) > 1 else "")
    yield Edge("column.stile", f"inner {words}", sides[0], ACROSS, turn)
    yield Edge("column.stile", f"outer {words}", sides[1], ACROSS, -turn)
    for i, rect in enumerate(own):
        column = f"{side.name} column"
        which = f"the {column}'s panel" if len(own) == 1 else f"panel {i + 1} of the {column}"
        lower, upper = _level(turn, rect, rect[1]), _level(turn, rect, rect[3])
        yield Edge("column.rail", f"lower edge of {which}", (lower,), UP, share_before(i, len(own)))
        yield Edge("column.rail", f"upper edge of {which}", (upper,), UP, share_after(i, len(own)))
    for rect in beside:
        if rect[3] - rect[1] <= LEAST_PANEL + NEAR:
            continue  # its rails give way whatever they are asked for
        path = "frieze.rail" if layout.frieze_frame.openings else "column.rail"
        which = f"the {side.name} column's panel beside the frieze"
        yield Edge(path, f"lower edge of {which}", (_level(turn, rect, rect[1]),), UP, 1.0)
        yield Edge(path, f"upper edge of {which}", (_level(turn, rect, rect[3]),), UP, -1.0)


def _is_beside_frieze(layout: Layout, rect: Rect) -> bool:
    """Whether a column's uppermost panel keeps to the frieze's panels, or lies as if there were some."""
    if layout.frieze_frame.openings:
        _, low, _, high = layout.frieze_frame.openings[0]
    else:
        low, high = rect[1], layout.shelf_bottom - layout.mould_size - (rect[1] - layout.frieze_bottom)
    return rect[1] > layout.frieze_bottom and abs(rect[1] - low) < NEAR and abs(rect[3] - high) < NEAR


def _beside(side: Side, rect: tuple[float, ...], which: int) -> Segment:
    """The inner (0) or outer (1) edge of a panel, leaning where the stile beside it does."""
    x0, y0, x1, y1 = rect
    ends = [(x0, x1), (x0, x1)]
    if side.frame.inside is not None:
        ends = [side.frame.inside.at(y) for y in (y0, y1)]
    return side.sign * ends[0][which], y0, side.sign * ends[1][which], y1


def _level(turn: float, rect: tuple[float, ...], y: float) -> Segment:
    left, right = sorted((turn * rect[0], turn * rect[2]))
    return left, y, right, y


def _list_frieze(layout: Layout) -> Iterator[Edge]:
    frame = layout.frieze_frame
    x0, y0, x1, _ = frame.outline
    yield Edge("frieze.height", "lower edge of the frieze", ((x0, y0, x1, y0),), UP, -1.0)
    if frame.openings:
        yield from list_row("frieze", frame.openings, "the frieze")
    if layout.tablet is None:
        return
    left, low, right, high = layout.tablet.outline
    yield Edge("tablet.width", "left edge of the tablet", ((left, low, left, high),), ACROSS, -2.0)
    yield Edge("tablet.width", "right edge of the tablet", ((right, low, right, high),), ACROSS, 2.0)
    yield Edge("tablet.height", "lower edge of the tablet", ((left, low, right, low),), UP, -2.0)
    yield Edge("tablet.height", "upper edge of the tablet", ((left, high, right, high),), UP, 2.0)


def _list_on_facing(layout: Layout) -> Iterator[Edge]:
    """Slip and back band along the surround's inner edge; what lies outside the other moves it along."""
    band = layout.mouldings.back_band
    if band:
        yield from _list_flat(layout, "back_band.size", "back band", band.height)
    if layout.slip:
        yield from _list_flat(layout, "slip.width", "inner slip", layout.slip.offset + layout.slip.width)


def _list_flat(layout: Layout, path: str, words: str, reach: float) -> Iterator[Edge]:
    x, y = layout.column_inner - reach, layout.frieze_bottom - reach
    for side in layout.sides:
        at = side.sign * x
        yield Edge(
            path, f"inner edge of the {words}, {side.name}", ((at, side.base, at, y),), ACROSS, -side.sign
        )
    yield Edge(path, f"lower edge of the {words}", ((-x, y, x, y),), UP, -1.0)


def list_shelf(surround: Surround, start: float, end: float) -> Iterator[Edge]:
    """The shelf's level edges as they show from `start` to `end` of a view, and the bed mould's foot."""
    layout = surround.layout
    top, under, band = layout.shelf_top, layout.shelf_bottom, layout.edge_bottom
    yield Edge("shelf.height", "top of the shelf", ((start, top, end, top),), UP, 1.0)
    alike = abs(band - under) <= NEAR
    if band >= under - NEAR:
        also = ("shelf.edge_height",) if alike and not layout.shelf_is_plank else ()
        yield Edge("shelf.thickness", "underside of the shelf", ((start, under, end, under),), UP, -1.0, also)
    if not alike and not layout.shelf_is_plank:
        words = "lower edge of the shelf's edge band"
        yield Edge("shelf.edge_height", words, ((start, band, end, band),), UP, -1.0)
    foot = under - layout.mould_size
    if layout.mouldings.bed and foot < band - NEAR:
        yield _bed_mould(layout, foot, start < 0 < end)


def _bed_mould(layout: Layout, y: float, in_front: bool) -> Edge:
    """Its foot: from end to end in front, from the masonry to its face from the side."""
    if in_front:
        ends = (-layout.left.outer_top, layout.right.outer_top)
    else:
        ends = (-max(layout.column_front, layout.frieze_front), 0.0)
    return Edge("bed_mould.size", "lower edge of the bed mould", ((ends[0], y, ends[1], y),), UP, -1.0)


def _list_ends(surround: Surround) -> Iterator[Edge]:
    layout = surround.layout
    low = min(layout.shelf_bottom, layout.edge_bottom)
    for side in layout.sides:
        x, path = side.sign * side.shelf_side, own_path(surround, "shelf.overhang_end", side)
        yield Edge(path, f"{side.name} end of the shelf", ((x, low, x, layout.shelf_top),), ACROSS, side.sign)


def _list_over(surround: Surround) -> Iterator[Edge]:
    over = surround.layout.over
    if over is None:
        return
    x0, _, x1, top = over.frame.outline
    yield Edge("over.height", "top of the overmantel", ((x0, top, x1, top),), UP, 1.0)
    yield from list_row("over", over.frame.openings, "the overmantel")
