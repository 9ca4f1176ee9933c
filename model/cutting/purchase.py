"""What a job keeps of a purchase: the list as it was last printed, the boards bought, and their frozen plan.

How a plan is frozen, and what is left of it once the design changes, stands in model.cutting.frozen and
model.cutting.settled.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from model.board import StockKind
from model.cutting.left_over import LeftOver
from model.cutting.task import SawnBoard, SawnSheet
from model.errors import Refused

MOST_BOARDS = 5000
LONGEST = 64 * 1200
"""Units; no board or sheet is longer."""
MOST_MONEY, MOST_WORDS = 100_000_000, 200
"""Largest number, and characters of a text, that a file may hold."""


@dataclass(frozen=True, slots=True)
class Printed:
    """How many of an item stood on the list as it was last printed."""

    item: str
    count: int


@dataclass(frozen=True, slots=True)
class PlannedPiece:
    """A piece that a bought board is to give: its key in the cuts, its board's mark, its size in units."""

    key: str
    mark: str
    part: str
    length: int
    width: int
    mitre_low: int = 0
    mitre_high: int = 0


@dataclass(frozen=True, slots=True)
class BoughtBoard:
    """One board or sheet of a frozen plan, in units; its cuts stand in `board` or in `sheet`.

    `price` is in hundredths, None where none was known and 0 for what lay there. `is_cut` once it is sawn.
    """

    number: int
    kind: StockKind
    wood: str
    name: str
    section: str
    thickness: float
    length: int
    width: int
    trim_ends: int
    trim_edges: int
    kerf: int
    price: int | None
    pieces: tuple[PlannedPiece, ...]
    left: tuple[LeftOver, ...]
    board: SawnBoard | None = None
    sheet: SawnSheet | None = None
    is_cut: bool = False

    @property
    def cut(self) -> SawnBoard | SawnSheet:
        """How it is sawn."""
        found = self.board or self.sheet
        assert found is not None
        return found


@dataclass(frozen=True, slots=True)
class Purchase:
    """What was printed and what was bought; nothing of either in a new job."""

    printed: tuple[Printed, ...] = ()
    boards: tuple[BoughtBoard, ...] = ()

    @property
    def cut(self) -> tuple[int, ...]:
        """Numbers of the boards that are sawn."""
        return tuple(board.number for board in self.boards if board.is_cut)


def store_purchase(purchase: Purchase) -> dict[str, Any]:
    """`purchase` as plain data for a job file."""
    import msgspec

    stored: dict[str, Any] = msgspec.to_builtins(purchase)
    return stored


def read_purchase(data: object) -> Purchase:
    """The purchase that a job file's data stands for. Raises Refused naming the first fault."""
    import msgspec

    try:
        purchase = msgspec.convert(data, Purchase)
    except msgspec.ValidationError as fault:
        words, _, path = str(fault).partition(" - at `$")
        raise Refused(
            f"purchase{path.removesuffix('`')}", _find(data, path), f"{words}; leave it as it was written"
        ) from None
    if msgspec.json.decode(msgspec.json.encode(purchase)) != data:
        raise Refused("purchase", data, "it has fields that are not known here, or lacks some")
    for refusal in _list_faults(purchase):
        raise refusal
    return purchase


def _find(data: Any, path: str) -> Any:
    """What stands at a path like ``.boards[0].price``, as far as there is anything."""
    for part in path.removesuffix("`").replace("[", ".").replace("]", "").split("."):
        try:
            data = data[int(part)] if part.isdigit() else data[part] if part else data
        except (KeyError, IndexError, TypeError):
            return data
    return data


def _list_faults(purchase: Purchase) -> Iterator[Refused]:
    """What is well formed and cannot be: sizes, cuts of pieces that are not there, numbers given twice."""
    if len(purchase.boards) > MOST_BOARDS or len(purchase.printed) > MOST_BOARDS:
        yield Refused("purchase", len(purchase.boards), f"keep at most {MOST_BOARDS} boards")
    numbers = [board.number for board in purchase.boards]
    if len(set(numbers)) < len(numbers):
        yield Refused("purchase", numbers, "give each board a number of its own")
    for each in purchase.printed:
        if not 0 <= each.count <= MOST_MONEY or len(each.item) > MOST_WORDS:
            yield Refused("purchase, printed", each.item, "write a count from 0 on of something short")
    for i, board in enumerate(purchase.boards):
        yield from _list_board_faults(f"purchase.boards[{i}]", board)


def _list_board_faults(where: str, board: BoughtBoard) -> Iterator[Refused]:
    if (board.board is None) == (board.sheet is None):
        yield Refused(where, board.number, "give it the cuts of a board or of a sheet, and not both")
        return
    sizes = [board.length, board.width, *(side for p in board.pieces for side in (p.length, p.width))]
    sizes += [side for left in board.left for side in (left.length, left.width)]
    small = (board.trim_ends, board.trim_edges, board.kerf, board.price or 0)
    if not all(0 < size <= LONGEST for size in sizes) or not 0 < board.thickness <= 100:
        yield Refused(where, max(sizes), f"write sizes above 0, up to {LONGEST} 64ths of an inch")
    if not all(0 <= value <= MOST_MONEY for value in small):
        yield Refused(where, min(small), "write trims, kerf and price of 0 or more")
    keys = [piece.key for piece in board.pieces]
    cut = _list_cut_keys(board)
    if sorted(keys) != sorted(cut) or len(set(keys)) < len(keys):
        yield Refused(where, keys, "list each piece once and cut it once")


def _list_cut_keys(board: BoughtBoard) -> list[str]:
    if board.board is not None:
        return [key for lane in board.board.lanes for key in lane.pieces]
    return [piece.key for piece in board.sheet.pieces] if board.sheet else []
