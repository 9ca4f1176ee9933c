"""Whether a plan for boards can be sawn and says the truth, worked out from the pieces' outlines.

Nothing of the planner is used. Pieces are laid on the board one after the other, with a blade's width of dust
between them, and it is seen where the last one ends.
"""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterator, Sequence
from itertools import pairwise
from math import hypot

from model.cutting.task import BoardPlan, Lane, SawnBoard, Stock, Task, Wanted

CLOSE = 1e-7
"""Units below which two places are one; a blade along a mitre takes no whole number of them."""
Ends = tuple[tuple[float, float], tuple[float, float]]


def list_faults(task: Task, plan: BoardPlan) -> list[str]:
    """Everything that is wrong with a plan, in words; nothing where it is right."""
    wanted = {piece.key: piece for piece in task.wanted}
    stock = {each.key: each for each in task.stock}
    faults = [f"{b.stock} is not listed" for b in plan.boards if b.stock not in stock]
    faults += [f"{key} is not wanted" for b in plan.boards for key in keys_of(b) if key not in wanted]
    if faults:
        return faults
    for board in plan.boards:
        faults += _board_faults(board, stock[board.stock], wanted, task.kerf)
    return [*faults, *_count_faults(task, plan), *_batch_faults(task, plan), *_money_faults(task, plan)]


def keys_of(board: SawnBoard) -> Iterator[str]:
    """The pieces of a board."""
    for lane in board.lanes:
        yield from lane.pieces


def _board_faults(board: SawnBoard, stock: Stock, wanted: dict[str, Wanted], kerf: int) -> Iterator[str]:
    if not board.lanes:
        yield f"{board.stock} is bought for nothing"
    room = stock.width - 2 * stock.trim_edges
    whole = len(board.lanes) == 1 and board.lanes[0].width == stock.width
    ripped = sum(lane.width for lane in board.lanes) + kerf * (len(board.lanes) - 1)
    if not whole and ripped > room:
        yield f"lanes of {board.stock} take {ripped} of {room}"
    for lane in board.lanes:
        pieces = [wanted[key] for key in lane.pieces]
        if not pieces:
            yield f"a lane of {board.stock} is empty"
            continue
        for piece in pieces:
            if piece.width > lane.width or (whole and room < piece.width < stock.width):
                yield f"{piece.key} is wider than its lane"
        yield from _lane_faults(lane, pieces, stock, kerf)


def _lane_faults(lane: Lane, pieces: Sequence[Wanted], stock: Stock, kerf: int) -> Iterator[str]:
    if lane.turned and len(lane.turned) != len(pieces):
        yield f"{len(lane.turned)} turns for {len(pieces)} pieces"
        return
    end = lane_end(pieces, lane.turned or (False,) * len(pieces), lane.width, kerf)
    room = stock.length - 2 * stock.trim_ends
    if end > room + CLOSE:
        yield f"{lane.pieces} end at {end} of {room} on {stock.key}"


def lane_end(pieces: Sequence[Wanted], turned: Sequence[bool], width: int, kerf: int) -> float:
    """Where the last of pieces laid into a lane one after the other ends, from the first one's start."""
    end: float = 0
    start: float = 0
    laid = [_ends(piece, turn) for piece, turn in zip(pieces, turned, strict=True)]
    reach: float = pieces[0].length
    for (one, left), (other, right) in pairwise(zip(pieces, laid, strict=True)):
        start += _step(one, other, left, right, width, kerf)
        end = start + other.length
        reach = max(reach, end)
    return reach


def _ends(piece: Wanted, turned: bool) -> Ends:
    """Where a piece that starts at 0 begins and ends, along the near and the far edge of its lane."""
    long, low, high = piece.length, piece.mitre_low, piece.mitre_high
    return ((high, long - low), (0, long)) if turned else ((0, long), (low, long - high))


def _step(one: Wanted, other: Wanted, left: Ends, right: Ends, width: int, kerf: int) -> float:
    """From one start to the next: by a square cut between them, or one slanting cut that frees both."""
    square = one.length + kerf
    slopes = left[0][1] - left[1][1], right[0][0] - right[1][0]
    sound = all(p.width == width and p.mitre_low + p.mitre_high <= p.length for p in (one, other))
    if not sound or slopes[0] != slopes[1] or not slopes[0]:
        return square
    dust = kerf * hypot(slopes[0], width) / width
    return min(square, left[0][1] - right[0][0] + dust)


def _count_faults(task: Task, plan: BoardPlan) -> Iterator[str]:
    made = Counter(key for board in plan.boards for key in keys_of(board))
    refused = Counter[str]()
    for refusal in plan.refused:
        refused[refusal.key] += refusal.count
        if not refusal.why or refusal.count <= 0:
            yield f"{refusal.key} is refused without a reason"
    for piece in task.wanted:
        if made[piece.key] + refused[piece.key] != max(piece.count, 0):
            yield f"{made[piece.key]} + {refused[piece.key]} of {piece.count} {piece.key}"
    used = Counter(board.stock for board in plan.boards)
    for each in task.stock:
        if each.supply is not None and used[each.key] > each.supply:
            yield f"{used[each.key]} of {each.supply} {each.key}"
    yield from _refusal_faults(task, plan, used)


def _refusal_faults(task: Task, plan: BoardPlan, used: Counter[str]) -> Iterator[str]:
    """Nothing is refused while a whole board that would hold it lies unused."""
    wanted = {piece.key: piece for piece in task.wanted}
    for refusal in plan.refused:
        piece = wanted[refusal.key]
        if refusal.wants_length < piece.length or refusal.wants_width < piece.width:
            yield f"{refusal.key} would not come out of what it is said to want"
        for stock in task.stock:
            left = stock.supply is None or used[stock.key] < stock.supply
            if left and piece.length > 0 < piece.width and holds(stock, piece) and not piece.batch:
                yield f"{refusal.key} is refused, and {stock.key} would hold it"


def holds(stock: Stock, piece: Wanted) -> bool:
    """Whether a whole board holds a piece."""
    wide = piece.width == stock.width or piece.width <= stock.width - 2 * stock.trim_edges
    return wide and piece.length <= stock.length - 2 * stock.trim_ends


def _batch_faults(task: Task, plan: BoardPlan) -> Iterator[str]:
    batch = {piece.key: piece.batch for piece in task.wanted if piece.batch}
    lanes = defaultdict(set)
    for b, board in enumerate(plan.boards):
        for number, lane in enumerate(board.lanes):
            for key in lane.pieces:
                lanes[batch.get(key, "")].add((b, number))
    for name, places in lanes.items():
        if name and len(places) > 1:
            yield f"batch {name} lies in {len(places)} lanes"


def _money_faults(task: Task, plan: BoardPlan) -> Iterator[str]:
    price = {each.key: each.price for each in task.stock}
    cost = sum(price[board.stock] for board in plan.boards)
    if cost != plan.proof.cost:
        yield f"costs {cost}, not {plan.proof.cost}"
    if not 0 <= plan.proof.bound <= plan.proof.cost:
        yield f"bound {plan.proof.bound} for {plan.proof.cost}"
