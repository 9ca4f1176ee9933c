"""A column's face without panels: plain, fluted, or with a board laid on it.

It is built as if it stood on the right, over the edges of both returns, and its edges may lean; a framed
face is model.build.frame's, one that is tapered model.build.tapered_column's.
"""

from __future__ import annotations

from collections.abc import Iterator

from model.board import Board, End, Point2, Stock
from model.build.flutes import Flutes
from model.build.lines import Layout, RaisedBoard, Side
from model.build.taper import Edges, build_strip, upright


def build_plain_face(layout: Layout, side: Side, stock: Stock) -> tuple[Board, ...]:
    """The boards of the face from the foot up, and what is laid on them."""
    return tuple(_list_boards(layout, side, stock))


def _list_boards(layout: Layout, side: Side, stock: Stock) -> Iterator[Board]:
    words, edges, frame = f"{side.name} column", side.edges, side.frame
    z = (layout.column_front - stock.thickness, layout.column_front)
    for rect in frame.stiles:
        y = (rect[1], rect[3])
        if layout.flutes is None:
            yield build_strip("column face", words, stock, edges, y, z)
        elif rect == frame.flutes:
            yield from _flute(layout.flutes, words, stock, edges, y, z)
        else:
            yield build_strip("column flute stop", words, stock, edges, y, z)
    if frame.raised:
        yield _raise(frame.raised, words, stock, edges, layout.column_front)


def _flute(flutes: Flutes, words: str, stock: Stock, edges: Edges, y: Point2, z: Point2) -> Iterator[Board]:
    """The fluted board, upright; between two margins where an edge leans."""
    leans = edges.inner.leans or edges.outer.leans
    x = flutes.strip(edges.narrowest) if leans else edges.narrowest
    section, curved = flutes.section(x, z)
    yield Board("column fluted face", words, stock, "y", section, End(y[0]), End(y[1]), curved)
    if leans:
        for margin in (Edges(edges.inner, upright(x[0])), Edges(upright(x[1]), edges.outer)):
            yield build_strip("column flute margin", words, stock, margin, y, z)


def _raise(raised: RaisedBoard, words: str, stock: Stock, edges: Edges, front: float) -> Board:
    z = (front, front + raised.thickness)
    return build_strip("column raised board", words, stock, edges.inset(raised.margin), raised.y, z)
