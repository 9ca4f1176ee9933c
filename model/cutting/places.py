"""Where each piece of a sawn board or sheet lies, from the end and the edge that it is measured from."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from model.cutting.left_over import list_shared
from model.cutting.pieces import Source
from model.cutting.plan import GroupPlan, Sawn
from model.cutting.task import Lane, SawnBoard, SawnSheet, Stock


@dataclass(frozen=True, slots=True)
class Place:
    """A piece in its place, in units from a board's low end and first edge or a sheet's near corner.

    `lane` and `number` count from 1; a sheet's pieces have lane 0. A `turned` one lies its high end first.
    """

    key: str
    source: Source
    lane: int
    number: int
    along: int
    across: int
    length: int
    width: int
    turned: bool = False


def list_places(sawn: Sawn, group: GroupPlan) -> tuple[Place, ...]:
    """Every piece of one board or sheet of a group's plan, in the order of its sources."""
    stock = next(each for each in group.task.stock if each.key == sawn.cut.stock)
    if isinstance(sawn.cut, SawnSheet):
        return tuple(_place_on_sheet(sawn, sawn.cut, stock))
    return tuple(_place_on_board(sawn, sawn.cut, stock, group))


def _place_on_sheet(sawn: Sawn, sheet: SawnSheet, stock: Stock) -> Iterator[Place]:
    for number, (piece, source) in enumerate(zip(sheet.pieces, sawn.sources, strict=True), start=1):
        along, across = stock.trim_ends + piece.x, stock.trim_edges + piece.y
        yield Place(piece.key, source, 0, number, along, across, piece.length, piece.width)


def _place_on_board(sawn: Sawn, board: SawnBoard, stock: Stock, group: GroupPlan) -> Iterator[Place]:
    sources = iter(sawn.sources)
    whole = len(board.lanes) == 1 and board.lanes[0].width == stock.width
    across = 0 if whole else stock.trim_edges
    for number, lane in enumerate(board.lanes, start=1):
        yield from _place_in_lane(lane, number, stock.trim_ends, across, group, sources)
        across += lane.width + group.task.kerf


def _place_in_lane(
    lane: Lane, number: int, start: int, across: int, group: GroupPlan, sources: Iterator[Source]
) -> Iterator[Place]:
    wanted = {each.key: each for each in group.task.wanted}
    pieces = [wanted[key] for key in lane.pieces]
    shared = [*list_shared(lane, pieces, group.task.kerf), 0]
    along = start
    for i, piece in enumerate(pieces):
        turned = bool(lane.turned) and lane.turned[i]
        size = piece.length, piece.width
        yield Place(piece.key, next(sources), number, i + 1, along, across, *size, turned)
        along += piece.length + group.task.kerf - shared[i]
