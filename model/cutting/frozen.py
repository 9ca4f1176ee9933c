"""Plans kept once the wood is bought: frozen into what a job keeps, and shown again from it.

What of them still serves when the design changes is model.cutting.settled's business.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from model.board import StockKind
from model.cutting.buying import BuyingList
from model.cutting.order import Group, Order
from model.cutting.pieces import Material, Source
from model.cutting.places import list_places
from model.cutting.plan import CuttingPlan, GroupPlan, Sawn, list_keys
from model.cutting.printed import Change, count_printed, list_changes, name_item
from model.cutting.purchase import BoughtBoard, PlannedPiece, Printed, Purchase
from model.cutting.stock_list import HandRow, SoldRow, StockList
from model.cutting.task import (
    BoardPlan,
    Lane,
    Proof,
    SawnBoard,
    SawnSheet,
    SheetPlan,
    Stock,
    Task,
    Wanted,
    to_inches,
)
from model.errors import Refused


def note_printed(purchase: Purchase, buying: BuyingList | None = None) -> Purchase:
    """`purchase` with the list as it is printed now; without a list nothing is still to be bought.

    What is bought already counts with what the list still asks for, so that buying it is no change.
    """
    counts = _count_all(purchase, buying)
    return replace(purchase, printed=tuple(Printed(*pair) for pair in counts.items()))


def list_since_printed(purchase: Purchase, buying: BuyingList) -> tuple[Change, ...] | None:
    """What is to be had now, bought already or not, beside the list last printed; None where none was."""
    if not purchase.printed:
        return None
    return list_changes(printed_counts(purchase), _count_all(purchase, buying))


def _count_all(purchase: Purchase, buying: BuyingList | None) -> dict[str, int]:
    counts = Counter(count_printed(buying) if buying else {})
    counts.update(name_item(_row(board), _material(board)) for board in purchase.boards if board.price != 0)
    return dict(counts)


def printed_counts(purchase: Purchase) -> dict[str, int]:
    """The counts of the list last printed, for model.cutting.printed.list_changes."""
    return {each.item: each.count for each in purchase.printed}


def freeze_plan(purchase: Purchase, plan: CuttingPlan) -> Purchase:
    """`purchase` with a plan's boards bought, after those that stay as they were planned or are cut.

    Raises Refused for a plan of several jobs: each job's file keeps its own boards.
    """
    if len(plan.order.jobs) > 1:
        raise Refused(
            "jobs", ", ".join(plan.order.jobs), "plan one job by itself to keep what was bought for it"
        )
    standing = _list_standing(purchase, plan.order)
    bought = [_freeze(sawn, group) for group in plan.groups for sawn in group.sawn]
    return replace(purchase, boards=(*standing, *bought))


def show_bought(purchase: Purchase, order: Order) -> CuttingPlan | None:
    """The bought boards that stay as they were planned or are cut, as a plan; None where there are none.

    Boards that an edit has set free are not among them: a plan for `order` cuts them anew.
    """
    standing = [each.number for each in _list_standing(purchase, order)]
    return show_frozen(purchase, order, standing) if standing else None


@dataclass(frozen=True, slots=True)
class Outgrown:
    """A piece planned on a bought board larger than it is wanted now.

    `planned` and `now` are its length and width on that board and as they are asked for, in.
    """

    number: int
    source: Source
    planned: tuple[float, float]
    now: tuple[float, float]


def list_outgrown(bought: CuttingPlan, order: Order) -> tuple[Outgrown, ...]:
    """Pieces of `bought`, as `show_bought` gives it for `order`, that the design asks for smaller by now."""
    wanted = {(each.source.mark, each.source.part): (each.length, each.width) for each in order.settled}
    return tuple(
        Outgrown(sawn.number, place.source, _inches(place.length, place.width), _inches(*now))
        for group in bought.groups
        for sawn in group.sawn
        for place in list_places(sawn, group)
        if (now := wanted.get((place.source.mark, place.source.part)))
        and (place.length > now[0] or place.width > now[1])
    )


def _inches(length: int, width: int) -> tuple[float, float]:
    return to_inches(length), to_inches(width)


def _list_standing(purchase: Purchase, order: Order) -> list[BoughtBoard]:
    return [each for each in purchase.boards if each.is_cut or each.number in order.kept]


def mark_cut(purchase: Purchase, numbers: Iterable[int], is_cut: bool = True) -> Purchase:
    """`purchase` with the boards of those numbers sawn, or not sawn after all."""
    these = set(numbers)
    boards = (replace(each, is_cut=is_cut) if each.number in these else each for each in purchase.boards)
    return replace(purchase, boards=tuple(boards))


def _freeze(sawn: Sawn, group: GroupPlan) -> BoughtBoard:
    wanted = {each.key: each for each in group.task.wanted}
    stock = next(each for each in group.task.stock if each.key == sawn.cut.stock)
    material, row, number = group.group.material, sawn.row, sawn.number
    keys = [f"{number}.{i}" for i in range(1, len(sawn.sources) + 1)]
    pieces = tuple(
        _plan_piece(key, wanted[old], source)
        for key, old, source in zip(keys, list_keys(sawn.cut), sawn.sources, strict=True)
    )
    cut = rename_keys(sawn.cut, keys)
    return BoughtBoard(
        number,
        row.kind,
        row.wood,
        row.name,
        material.section,
        row.thickness or material.thickness,
        stock.length,
        stock.width,
        stock.trim_ends,
        stock.trim_edges,
        group.task.kerf,
        row.price if isinstance(row, SoldRow) else 0,
        pieces,
        sawn.left,
        board=cut if isinstance(cut, SawnBoard) else None,
        sheet=cut if isinstance(cut, SawnSheet) else None,
    )


def _plan_piece(key: str, wanted: Wanted, source: Source) -> PlannedPiece:
    size = wanted.length, wanted.width
    return PlannedPiece(key, source.mark, source.part, *size, wanted.mitre_low, wanted.mitre_high)


def rename_keys(cut: SawnBoard | SawnSheet, keys: Sequence[str]) -> SawnBoard | SawnSheet:
    """`cut` with its pieces called by `keys`, in the order of `list_keys`."""
    names = iter(keys)
    if isinstance(cut, SawnSheet):
        return replace(cut, pieces=tuple(replace(piece, key=next(names)) for piece in cut.pieces))
    lanes = (Lane(lane.width, tuple(next(names) for _ in lane.pieces), lane.turned) for lane in cut.lanes)
    return SawnBoard(cut.stock, tuple(lanes))


def show_frozen(purchase: Purchase, order: Order, only: Iterable[int] | None = None) -> CuttingPlan:
    """The frozen boards as a plan to draw and list; `only` those numbers where given.

    Sources are found among what `order` has settled; a piece no longer wanted keeps its mark and has no
    board in the design (-1).
    """
    these = None if only is None else set(only)
    known = {(each.source.mark, each.source.part): each.source for each in order.settled}
    job = order.jobs[0] if order.jobs else ""
    by_material: dict[Material, list[BoughtBoard]] = {}
    for board in purchase.boards:
        if these is None or board.number in these:
            by_material.setdefault(_material(board), []).append(board)
    groups = tuple(_show_group(m, boards, known, job) for m, boards in by_material.items())
    shown = Order(order.jobs, (), {}, StockList(currency=order.stock_list.currency), order.kerf)
    return CuttingPlan(shown, groups, ())


def _material(board: BoughtBoard) -> Material:
    width = to_inches(board.width) if board.kind is StockKind.MOULDING else 0.0
    return Material(board.kind, board.wood, board.thickness, board.section, width)


def _show_group(
    material: Material, boards: Sequence[BoughtBoard], known: dict[tuple[str, str], Source], job: str
) -> GroupPlan:
    wanted = tuple(
        Wanted(p.key, p.length, p.width, 1, p.mitre_low, p.mitre_high) for b in boards for p in b.pieces
    )
    stock = tuple(
        Stock(str(b.number), b.length, b.width, b.price or 0, 1, b.trim_ends, b.trim_edges) for b in boards
    )
    task = Task(wanted, stock, max(board.kerf for board in boards))
    sources = {
        p.key: (known.get((p.mark, p.part), Source(job, p.mark, "", "", -1, p.part)),)
        for b in boards
        for p in b.pieces
    }
    cuts = [replace(board.cut, stock=str(board.number)) for board in boards]
    sawn = tuple(
        Sawn(b.number, cut, _row(b), tuple(sources[key][0] for key in list_keys(cut)), b.left)
        for b, cut in zip(boards, cuts, strict=True)
    )
    cost = sum(board.price or 0 for board in boards)
    plan: BoardPlan | SheetPlan
    if material.kind is StockKind.PANEL:
        plan = SheetPlan(tuple(c for c in cuts if isinstance(c, SawnSheet)), (), Proof(cost, cost))
    else:
        plan = BoardPlan(tuple(c for c in cuts if isinstance(c, SawnBoard)), (), Proof(cost, cost))
    return GroupPlan(Group(material, task, (), sources), task, plan, sawn, True)


def _row(board: BoughtBoard) -> SoldRow | HandRow:
    """What the board was bought as."""
    size = board.thickness, to_inches(board.width), to_inches(board.length)
    return SoldRow(board.kind, board.wood, board.name, *size, board.price, section=board.section)
