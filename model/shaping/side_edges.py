"""Edges of the side elevation, (-z, y): how far each part stands out, and the heights that show there."""

from __future__ import annotations

from collections.abc import Iterator

from model.shaping.front_edges import foot_of, head_of, list_shelf
from model.shaping.grip import ACROSS, UP, Edge, Segment
from model.surround import Surround


def list_side_edges(surround: Surround) -> Iterator[Edge]:
    """All that show from the right."""
    layout, side = surround.layout, surround.layout.right
    yield _front("column.projection", "column", layout.column_front, foot_of(layout, side), head_of(layout))
    if layout.plinth_out:
        out, top = layout.plinth_front, side.plinth_top
        yield _front("plinth.projection", "plinth", out, side.lowest, top)
        yield Edge("plinth.height", "top of the plinth", (_level(out, top),), UP, 1.0)
    if cap := layout.mouldings.plinth_cap:
        y = side.plinth_top + cap.height
        yield Edge(
            "plinth_cap.size",
            "top of the plinth cap",
            (_level(layout.column_front + cap.projection, y),),
            UP,
            1.0,
        )
    if capital := layout.mouldings.capital:
        y, out = layout.frieze_bottom - capital.height, layout.column_front + capital.projection
        yield Edge("capital.size", "lower edge of the capital", (_level(out, y),), UP, -1.0)
    yield from _list_frieze(surround)
    yield from list_shelf(surround, -layout.shelf_foremost, -layout.shelf_back)
    low = min(layout.shelf_bottom, layout.edge_bottom)
    yield _front("shelf.overhang_front", "shelf", layout.shelf_foremost, low, layout.shelf_top)
    if over := layout.over:
        _, bottom, _, top = over.frame.outline
        yield _front("over.projection", "overmantel", over.frame.front, bottom, top)
        yield Edge(
            "over.height", "top of the overmantel", ((-over.frame.front, top, -over.back, top),), UP, 1.0
        )


def _list_frieze(surround: Surround) -> Iterator[Edge]:
    """Only where it stands out further than the columns in front of it."""
    layout = surround.layout
    front, column = layout.frieze_front, layout.column_front
    if front <= column:
        return
    low, high = layout.frieze_bottom, layout.shelf_bottom - layout.mould_size
    yield Edge("frieze.height", "lower edge of the frieze", ((-front, low, -column, low),), UP, -1.0)
    if not layout.frieze_over:
        yield _front("frieze.projection", "frieze", front, low, high)


def _front(path: str, words: str, z: float, low: float, high: float) -> Edge:
    return Edge(path, f"front of the {words}", ((-z, low, -z, high),), ACROSS, -1.0)


def _level(out: float, y: float) -> Segment:
    return -out, y, 0.0, y
