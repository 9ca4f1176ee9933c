"""Adds up what a plan's worths show, with nothing but whole numbers and no solver."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from model.cutting.task import BoardPlan, Stock, Task, Wanted

SCALE = 2**20


def certify(task: Task, plan: BoardPlan) -> int:
    """Hundredths that no plan for the pieces that were not refused costs less than. No mitres."""
    worth = dict(plan.proof.duals)
    wanted = _blocks(task, plan, worth)
    total = sum(piece.count * worth[piece.key] for piece in wanted)
    for stock in task.stock:
        saved = stock.price * SCALE - _best_board(stock, wanted, worth, task.kerf)
        assert saved >= 0 or stock.supply is not None, f"{stock.key} is worth more than it costs"
        total += min(saved, 0) * (stock.supply or 0)
    return max(-(-total // SCALE), 0)


def _blocks(task: Task, plan: BoardPlan, worth: dict[str, int]) -> list[Wanted]:
    """What is cut, each batch as one long piece that is worth what its pieces are."""
    refused = {refusal.key: refusal.count for refusal in plan.refused}
    left = [replace(p, count=p.count - refused.get(p.key, 0)) for p in task.wanted if p.count > 0]
    blocks = [piece for piece in left if piece.count > 0 and not piece.batch]
    for name in {piece.batch for piece in left if piece.count > 0 and piece.batch}:
        parts = [piece for piece in left if piece.batch == name and piece.count > 0]
        length = sum((piece.length + task.kerf) * piece.count for piece in parts) - task.kerf
        blocks.append(Wanted(f"batch {name}", length, max(piece.width for piece in parts)))
        worth[f"batch {name}"] = sum(worth[piece.key] * piece.count for piece in parts)
    return blocks


def _best_board(stock: Stock, wanted: Sequence[Wanted], worth: Mapping[str, int], kerf: int) -> int:
    """The most that one board of a stock is worth; each lane holds no more of a piece than are wanted."""
    room = stock.width - 2 * stock.trim_edges + kerf
    lanes: list[tuple[int, int]] = []
    whole = 0
    for width in {piece.width for piece in wanted}:
        within = [p for p in wanted if p.width <= width]
        lanes += [(width + kerf, _best_lane(stock, within, worth, kerf))] * (room // (width + kerf or 1))
        if width == stock.width:
            within = [p for p in within if p.width == width or p.width + kerf <= room]
            whole = _best_lane(stock, within, worth, kerf)
    return max(whole, _fill(room, lanes))


def _best_lane(stock: Stock, pieces: Sequence[Wanted], worth: Mapping[str, int], kerf: int) -> int:
    room = stock.length - 2 * stock.trim_ends + kerf
    copies = [(p.length + kerf, worth[p.key]) for p in pieces for _ in range(p.count)]
    return _fill(room, [copy for copy in copies if copy[0] <= room])


def _fill(room: int, copies: Sequence[tuple[int, int]]) -> int:
    """The greatest value of copies (size, value), each taken once at most, that a room holds."""
    best = {0: 0}
    for size, value in copies:
        for taken, so_far in list(best.items()):
            if taken + size <= room and best.get(taken + size, -1) < so_far + value:
                best[taken + size] = so_far + value
    return max(best.values())
