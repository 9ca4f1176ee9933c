"""Holds a plan of sheets against its task, with nothing of the planner's: real sizes, saw cuts as gaps."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from model.cutting.task import Placed, SawnSheet, SheetPlan, Stock, Task, ThroughCut, Wanted

Box = tuple[int, int, int, int]


def check_sheet_plan(task: Task, plan: SheetPlan) -> list[str]:
    """Sentences about all that is wrong; none where the plan is sound."""
    stock = {each.key: each for each in task.stock}
    faults = _check_pieces(task, plan) + _check_supply(task, plan)
    cost = sum(stock[sheet.stock].price for sheet in plan.sheets if sheet.stock in stock)
    if cost != plan.proof.cost:
        faults.append(f"costs {cost}, said to cost {plan.proof.cost}")
    if plan.proof.bound > cost:
        faults.append(f"bound {plan.proof.bound} is above the cost {cost}")
    for number, sheet in enumerate(plan.sheets):
        faults += [f"sheet {number}: {fault}" for fault in _check_sheet(task, sheet, stock[sheet.stock])]
    return faults


def _check_pieces(task: Task, plan: SheetPlan) -> list[str]:
    made = Counter(piece.key for sheet in plan.sheets for piece in sheet.pieces)
    for refusal in plan.refused:
        made[refusal.key] += refusal.count
    wanted = Counter({each.key: each.count for each in task.wanted})
    return [f"{key}: {made[key]} for {wanted[key]}" for key in made | wanted if made[key] != wanted[key]]


def _check_supply(task: Task, plan: SheetPlan) -> list[str]:
    used = Counter(sheet.stock for sheet in plan.sheets)
    supply = {each.key: each.supply for each in task.stock}
    return [
        f"{count} of {key}"
        for key, count in used.items()
        if key not in supply or (supply[key] is not None and count > (supply[key] or 0))
    ]


def _check_sheet(task: Task, sheet: SawnSheet, stock: Stock) -> list[str]:
    room = stock.length - 2 * stock.trim_ends, stock.width - 2 * stock.trim_edges
    wanted = {each.key: each for each in task.wanted}
    faults = [fault for piece in sheet.pieces for fault in _check_piece(piece, wanted[piece.key], room)]
    if not sheet.pieces:
        faults.append("nothing is cut from it")
    if not is_guillotine(sheet.pieces, task.kerf):
        faults.append("its pieces do not part by straight cuts through the whole part")
    return faults + replay_cuts(sheet, room, task.kerf) + _check_left(sheet, room, task)


def _check_piece(piece: Placed, wanted: Wanted, room: tuple[int, int]) -> list[str]:
    sizes = {(wanted.length, wanted.width)}
    if wanted.may_turn:
        sizes.add((wanted.width, wanted.length))
    faults = []
    if (piece.length, piece.width) not in sizes:
        faults.append(f"{piece.key} is {piece.length} by {piece.width}")
    if min(piece.x, piece.y) < 0 or piece.x + piece.length > room[0] or piece.y + piece.width > room[1]:
        faults.append(f"{piece.key} is not inside the trimmed sheet")
    return faults


def is_guillotine(pieces: Sequence[Placed], kerf: int) -> bool:
    """Whether straight cuts right through, each `kerf` wide, part the pieces: any first cut will do."""
    if len(pieces) <= 1:
        return True
    for low, high in (
        (lambda p: p.x, lambda p: p.x + p.length),
        (lambda p: p.y, lambda p: p.y + p.width),
    ):
        ordered = sorted(pieces, key=low)
        reach = high(ordered[0])
        for i, piece in enumerate(ordered[1:], 1):
            if low(piece) >= reach + kerf and low(piece) >= reach:
                return is_guillotine(ordered[:i], kerf) and is_guillotine(ordered[i:], kerf)
            reach = max(reach, high(piece))
    return False


def replay_cuts(sheet: SawnSheet, room: tuple[int, int], kerf: int) -> list[str]:
    """Saw the sheet as told: every cut right through one part, every piece alone and to size at the end."""
    parts: set[Box] = {(0, 0, *room)}
    pieces = {_box(piece) for piece in sheet.pieces}
    faults = []
    for n, cut in enumerate(sheet.cuts):
        part = (cut.x0, cut.y0, cut.x1, cut.y1)
        if part not in parts:
            return [*faults, f"cut {n} is made on {part}, which is not there"]
        if not _inside(cut, part, kerf):
            faults.append(f"cut {n} does not part {part}")
        faults += [f"cut {n} goes through {piece}" for piece in pieces if _crosses(cut, piece, kerf)]
        parts.remove(part)
        parts |= set(_saw(cut, part, kerf))
    faults += [f"{piece} does not lie alone and to size" for piece in pieces if piece not in parts]
    lost = [each for each in sheet.left if _box(each) not in parts - pieces]
    return faults + [f"{each} is not left" for each in lost]


def _box(piece: Placed) -> Box:
    return piece.x, piece.y, piece.x + piece.length, piece.y + piece.width


def _inside(cut: ThroughCut, part: Box, kerf: int) -> bool:
    low, high = (part[0], part[2]) if cut.axis == "x" else (part[1], part[3])
    return cut.axis in ("x", "y") and low < cut.at < high


def _crosses(cut: ThroughCut, piece: Box, kerf: int) -> bool:
    """Whether the saw takes something of a piece that lies in the part."""
    if piece[0] < cut.x0 or piece[2] > cut.x1 or piece[1] < cut.y0 or piece[3] > cut.y1:
        return False
    low, high = (piece[0], piece[2]) if cut.axis == "x" else (piece[1], piece[3])
    return (low < cut.at + kerf and high > cut.at) if kerf else low < cut.at < high


def _saw(cut: ThroughCut, part: Box, kerf: int) -> list[Box]:
    x0, y0, x1, y1 = part
    after = cut.at + kerf
    if cut.axis == "x":
        halves = [(x0, y0, cut.at, y1), (after, y0, x1, y1)]
    else:
        halves = [(x0, y0, x1, cut.at), (x0, after, x1, y1)]
    return [half for half in halves if half[0] < half[2] and half[1] < half[3]]


def _check_left(sheet: SawnSheet, room: tuple[int, int], task: Task) -> list[str]:
    faults = []
    for each in sheet.left:
        if max(each.length, each.width) < task.keep:
            faults.append(f"{each} is not worth keeping")
        for piece in sheet.pieces:
            if _overlap(_box(each), _box(piece)):
                faults.append(f"{each} lies on {piece.key}")
    return faults


def _overlap(a: Box, b: Box) -> bool:
    return a[0] < b[2] and b[0] < a[2] and a[1] < b[3] and b[1] < a[3]
