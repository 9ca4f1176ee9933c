"""A small yard and single pieces for the tests of orders and plans; all prices are invented."""

from __future__ import annotations

from dataclasses import replace

from model.board import StockKind
from model.cutting.order import Order, order_pieces
from model.cutting.pieces import Material, Piece, Source
from model.cutting.serving import Serving
from model.cutting.stock_list import HandRow, SoldRow, StockList

POPLAR = Material(StockKind.BOARD, "poplar", 0.75)
PLYWOOD = Material(StockKind.PANEL, "plywood", 0.25)
PLAIN = StockList(trim_end=0.0, keep=12.0)
"""No trim, so that sums can be done in the head."""


def sold(name: str, width: float, length: float, price: int | None = None, **more: object) -> SoldRow:
    """A poplar board, 3/4 in. thick."""
    return replace(SoldRow(StockKind.BOARD, "poplar", name, 0.75, width, length, price), **more)


def on_hand(width: float, length: float, count: int = 1, clear: float = 0.0) -> HandRow:
    """Left-over poplar, 3/4 in. thick."""
    return HandRow(StockKind.BOARD, "poplar", "left over", 0.75, width, length, count, clear)


def piece(mark: str, length: float, width: float = 3.5, job: str = "a", **more: object) -> Piece:
    """A poplar piece of the job called `job`."""
    source = Source(job, mark, "rail", "frieze", 0)
    return replace(Piece(source, POPLAR, length, width), **more)


def order_of(pieces: list[Piece], *rows: SoldRow | HandRow, kerf: float = 1 / 8, **common: object) -> Order:
    """An order of pieces from a list of those rows."""
    stock_list = replace(
        PLAIN,
        sold=tuple(row for row in rows if isinstance(row, SoldRow)),
        on_hand=tuple(row for row in rows if isinstance(row, HandRow)),
        **common,
    )
    return order_pieces(pieces, Serving(stock_list), kerf)
