"""Pieces gathered into items: like pieces are one item wanted often, a batch is one long piece."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from model.cutting.mitre import shortest
from model.cutting.task import Refusal, Stock, Wanted

Block = tuple[Wanted, ...]
"""What lies together: one piece, or all of a batch."""


@dataclass(frozen=True, slots=True)
class Item:
    """Like blocks, in units. `length` is what one takes in any lane, without a cut after it.

    `snug` is what it takes in a lane of just its `width`, where mitred ends within a batch share their cuts.
    """

    length: int
    snug: int
    width: int
    blocks: tuple[Block, ...]

    @property
    def piece(self) -> Wanted:
        """One piece like all of them."""
        return self.blocks[0][0]

    @property
    def is_batch(self) -> bool:
        """Whether its blocks are more than one piece."""
        return len(self.blocks[0]) > 1


def gather_items(wanted: Iterable[Wanted], kerf: int) -> tuple[Item, ...]:
    """Items for all pieces, in the order their first ones came."""
    blocks: dict[object, list[Block]] = {}
    for piece in wanted:
        one = replace(piece, count=1)
        if piece.count <= 0:
            continue
        if piece.batch:
            held = blocks.setdefault(piece.batch, [()])
            held[0] += (one,) * piece.count
        else:
            like = (piece.length, piece.width, piece.mitre_low, piece.mitre_high)
            blocks.setdefault(like, []).extend([(one,)] * piece.count)
    return tuple(_make_item(each, kerf) for each in blocks.values())


def _make_item(blocks: Sequence[Block], kerf: int) -> Item:
    width = max(piece.width for piece in blocks[0])
    plain = sum(piece.length + kerf for piece in blocks[0]) - kerf
    return Item(plain, shortest(blocks[0], width, kerf)[0], width, tuple(blocks))


def fits(item: Item, stock: Stock) -> bool:
    """Whether a block comes out of a whole board of a stock."""
    room = stock.length - 2 * stock.trim_ends
    has_size = all(piece.length > 0 and piece.width > 0 for piece in item.blocks[0])
    return has_size and stock.supply != 0 and item.snug <= room and fits_across(item.width, stock)


def fits_across(width: int, stock: Stock) -> bool:
    """Whether a board is wide enough: one just as wide is not ripped, so its edges stay."""
    return width == stock.width or width <= stock.width - 2 * stock.trim_edges


def refuse(item: Item, stock: Sequence[Stock]) -> tuple[Refusal, ...]:
    """Why an item comes out of no stock, one refusal for each key."""
    there = [each for each in stock if each.supply != 0]
    ends = min((each.trim_ends for each in there), default=0)
    why = _why(item, there)
    return list_refusals(item.blocks, why, item.snug + 2 * ends)


def list_refusals(blocks: Iterable[Block], why: str, wants_length: int) -> tuple[Refusal, ...]:
    """One refusal for each key among blocks."""
    counts: dict[str, int] = {}
    widths: dict[str, int] = {}
    for block in blocks:
        for piece in block:
            counts[piece.key] = counts.get(piece.key, 0) + 1
            widths[piece.key] = max(each.width for each in block)
    return tuple(Refusal(key, count, why, wants_length, widths[key]) for key, count in counts.items())


def _why(item: Item, there: Sequence[Stock]) -> str:
    of_batch = " together, as a batch" if item.is_batch else ""
    if any(piece.length <= 0 or piece.width <= 0 for piece in item.blocks[0]):
        return "has no size"
    if not there:
        return "nothing to cut it from is listed"
    if not any(item.snug <= each.length - 2 * each.trim_ends for each in there):
        return f"longer{of_batch} than any that is listed"
    if not any(fits_across(item.width, each) for each in there):
        return "wider than any that is listed"
    return "none that is listed is both long and wide enough"
