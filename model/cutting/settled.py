"""What of a purchase still serves the design: boards that stay as planned, cut pieces, and what is free.

A bought board whose pieces are all still wanted stays as it was planned. Any other is free again: whole
where it is not cut, as its pieces and offcuts where it is.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field, replace

from model.board import StockKind
from model.cutting.pieces import Material, Piece
from model.cutting.purchase import BoughtBoard, PlannedPiece, Purchase
from model.cutting.serving import AS_THICK
from model.cutting.stock_list import HandRow
from model.cutting.task import UNITS, round_up, to_inches

OFF = UNITS // 8
"""Units by which a cut piece may be larger than another that it serves as. Shop choice."""


@dataclass(frozen=True, slots=True)
class Settled:
    """`kept` are the numbers of boards that stay as planned; `rows` are what is free.

    `done` says of a piece, by its place in the list, which bought board it comes out of.
    """

    kept: tuple[int, ...]
    done: dict[int, str]
    rows: tuple[HandRow, ...]


@dataclass(slots=True)
class _Account:
    """The pieces that are wanted, and what has been found for them so far."""

    pieces: Sequence[Piece]
    listed: Callable[[Material], Material]
    done: dict[int, str] = field(default_factory=dict)

    def find(self, planned: PlannedPiece, board: BoughtBoard, taken: set[int]) -> int | None:
        """The wanted piece that a planned one was planned for; None where that is gone, or larger now."""
        for i, piece in enumerate(self.pieces):
            same = (piece.source.mark, piece.source.part) == (planned.mark, planned.part)
            if same and i not in self.done and i not in taken and self._holds(planned, board, piece):
                return i
        return None

    def find_like(self, planned: PlannedPiece, board: BoughtBoard) -> int | None:
        """Another wanted piece of nearly the same size; None where there is none."""
        for i, piece in enumerate(self.pieces):
            length, width = _size(piece)
            near = planned.length - length <= OFF and planned.width - width <= OFF
            if i not in self.done and near and self._holds(planned, board, piece):
                return i
        return None

    def _holds(self, planned: PlannedPiece, board: BoughtBoard, piece: Piece) -> bool:
        material = self.listed(piece.material)
        of_it = (board.kind, board.wood, board.section) == (material.kind, material.wood, material.section)
        thick = abs(board.thickness - material.thickness) <= AS_THICK
        length, width = _size(piece)
        return of_it and thick and planned.length >= length and planned.width >= width


def _size(piece: Piece) -> tuple[int, int]:
    """The least length and width in units that a cut piece must have."""
    return round_up(piece.length), round_up(min(piece.bare, piece.width) if piece.bare else piece.width)


def settle(purchase: Purchase, pieces: Sequence[Piece], listed: Callable[[Material], Material]) -> Settled:
    """What of a job's purchase serves its `pieces`; `listed` is how a stock list gives a material."""
    account = _Account(pieces, listed)
    rows: list[HandRow] = []
    spare: list[tuple[PlannedPiece, BoughtBoard]] = []
    for board in purchase.boards:
        if board.is_cut:
            spare += _take_cut(board, account)
    for planned, board in spare:
        found = account.find_like(planned, board)
        if found is None:
            rows.append(_row(board, planned.length, planned.width, f"cut as {planned.mark}"))
        else:
            account.done[found] = f"cut already as {planned.mark}, board {board.number}"
    kept = []
    for board in purchase.boards:
        if board.is_cut or _keep(board, account):
            kept += [] if board.is_cut else [board.number]
            rows += (_row(board, left.length, left.width, "offcut of") for left in board.left)
        else:
            rows.append(_whole(board))
    return Settled(tuple(kept), account.done, tuple(_count_alike(rows)))


def _take_cut(board: BoughtBoard, account: _Account) -> Iterator[tuple[PlannedPiece, BoughtBoard]]:
    """Notes the pieces of a cut board that are still wanted; gives the others."""
    for planned in board.pieces:
        found = account.find(planned, board, set())
        if found is None:
            yield planned, board
        else:
            account.done[found] = f"cut already, board {board.number}"


def _keep(board: BoughtBoard, account: _Account) -> bool:
    """Whether all pieces of a board that is not cut are still wanted; notes them where they are."""
    taken: set[int] = set()
    for planned in board.pieces:
        found = account.find(planned, board, taken)
        if found is None:
            return False
        taken.add(found)
    account.done.update(dict.fromkeys(taken, f"board {board.number}, bought"))
    return True


def _row(board: BoughtBoard, length: int, width: int, words: str) -> HandRow:
    name = f"{words} {board.name}".strip()
    return HandRow(
        board.kind,
        board.wood,
        name,
        board.thickness,
        to_inches(width),
        to_inches(length),
        section=board.section,
        bought=True,
    )


def _whole(board: BoughtBoard) -> HandRow:
    """The whole board, as it was bought; a sheet without what is trimmed off its edges."""
    if board.kind is StockKind.PANEL:
        length, width = board.length - 2 * board.trim_ends, board.width - 2 * board.trim_edges
        return _row(board, length, width, "")
    return replace(_row(board, board.length, board.width, ""), clear=to_inches(board.trim_ends))


def _count_alike(rows: Sequence[HandRow]) -> Iterator[HandRow]:
    for row, count in Counter(rows).items():
        yield replace(row, count=count)
