"""From the solver's boards to boards that can be sawn: which piece lies where, and which way round."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from model.cutting.items import Block, Item
from model.cutting.knapsack import Pattern
from model.cutting.mitre import arrange, shortest
from model.cutting.task import Lane, SawnBoard, Stock, Wanted


def saw_boards(
    boards: Sequence[Pattern], items: Sequence[Item], stock: Sequence[Stock], kerf: int
) -> tuple[SawnBoard, ...]:
    """Boards with pieces by their keys: stocks in the order listed, on each board the widest lane first."""
    blocks = [iter(item.blocks) for item in items]
    sawn = []
    for board in sorted(boards, key=lambda board: board.sold):
        lanes = [_lay(list(_take(lane.items, blocks)), kerf) for lane in board.lanes]
        lanes.sort(key=lambda lane: -lane.width)
        sawn.append(SawnBoard(stock[board.sold].key, tuple(lanes)))
    return tuple(sawn)


def _take(counts: Sequence[tuple[int, int]], blocks: Sequence[Iterator[Block]]) -> Iterator[Block]:
    for item, count in counts:
        for _ in range(count):
            yield next(blocks[item])


def _lay(blocks: Sequence[Block], kerf: int) -> Lane:
    """A lane of blocks: single pieces first, the longest of them first unless they share mitres."""
    width = max(piece.width for block in blocks for piece in block)
    single = sorted(
        (block[0] for block in blocks if len(block) == 1), key=lambda p: (-p.width, -p.length, p.key)
    )
    pieces: list[Wanted] = []
    turned: list[bool] = []
    for part in (single, *(block for block in blocks if len(block) > 1)):
        mitre = shortest(part, width, kerf)[1] if part else 0
        order, turns = arrange(part, width, mitre) if mitre else (list(part), [False] * len(part))
        pieces += order
        turned += turns
    return Lane(width, tuple(piece.key for piece in pieces), tuple(turned) if any(turned) else ())
