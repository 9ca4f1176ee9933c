"""The whole order planned: every group cut, what it costs, what no plan can cost less than, what is left.

How one group's boards or sheets are found stands in model.cutting.boards and model.cutting.sheets; what is
made of it for the yard in model.cutting.buying.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from model.cutting.boards import plan_boards
from model.cutting.left_over import LeftOver, list_left_of_board, list_left_of_sheet
from model.cutting.needless import drop_needless
from model.cutting.order import Group, Order
from model.cutting.pieces import Material, Source
from model.cutting.sheets import plan_sheets
from model.cutting.stock_list import HandRow, SoldRow
from model.cutting.task import (
    BoardPlan,
    Effort,
    Proof,
    Refusal,
    SawnBoard,
    SawnSheet,
    SheetPlan,
    Stock,
    Task,
    Wanted,
    to_inches,
)


@dataclass(frozen=True, slots=True)
class Sawn:
    """One board or sheet to be cut: its number, after those bought before, its row, and whose its pieces are.

    `sources` run as the pieces of `cut` do: lane after lane of a board, in the order of a sheet's pieces.
    `left` are its offcuts worth keeping.
    """

    number: int
    cut: SawnBoard | SawnSheet
    row: SoldRow | HandRow
    sources: tuple[Source, ...]
    left: tuple[LeftOver, ...]


@dataclass(frozen=True, slots=True)
class Short:
    """Pieces that nothing on the list holds: whose, why, and the least length and width that would do, in.

    `material` is what the list was looked through for.
    """

    sources: tuple[Source, ...]
    material: Material
    why: str
    wants_length: float
    wants_width: float

    @property
    def marks(self) -> str:
        """The pieces' marks, each once: ``S1, S2``."""
        return ", ".join(dict.fromkeys(source.mark for source in self.sources))


@dataclass(frozen=True, slots=True)
class GroupPlan:
    """How one group is cut out of the rows of `task`. Without prices the proof's figures are wood.

    The wood is in hundredths of a board foot, and costs nothing anywhere else.
    """

    group: Group
    task: Task
    plan: BoardPlan | SheetPlan
    sawn: tuple[Sawn, ...]
    is_priced: bool

    @property
    def proof(self) -> Proof:
        """What it costs and what no plan can cost less than."""
        return self.plan.proof


@dataclass(frozen=True, slots=True)
class CuttingPlan:
    """Every group's plan, and what could not be had. Money in whole hundredths."""

    order: Order
    groups: tuple[GroupPlan, ...]
    short: tuple[Short, ...]

    @property
    def cost(self) -> int:
        """What everything with a price costs, without spare boards."""
        return sum(each.proof.cost for each in self.groups if each.is_priced)

    @property
    def bound(self) -> int:
        """What no plan can cost less than."""
        return sum(each.proof.bound for each in self.groups if each.is_priced)

    @property
    def is_proven(self) -> bool:
        """Whether nothing cheaper, or out of less wood where no price is known, exists."""
        return all(each.proof.is_proven for each in self.groups)

    @property
    def sawn(self) -> tuple[Sawn, ...]:
        """Every board and sheet, as they are numbered."""
        return tuple(sawn for group in self.groups for sawn in group.sawn)


Watch = Callable[[int, Group], None]
"""Told which group, counted from 0, is begun."""


def plan_order(
    order: Order, effort: Effort | None = None, watch: Watch = lambda i, group: None
) -> CuttingPlan:
    """The cheapest plan found for each group. Rows without a price serve only what no other row holds."""
    used: Counter[str] = Counter()
    groups: list[GroupPlan] = []
    short: list[Short] = []
    for i, group in enumerate(order.groups):
        watch(i, group)
        for made in _plan_group(
            group, order, used, order.numbered + sum(len(g.sawn) for g in groups), effort or Effort()
        ):
            groups.append(made)
            used.update(sawn.cut.stock for sawn in made.sawn)
        short += [_say_short(refusal, groups) for refusal in groups[-1].plan.refused]
    return CuttingPlan(order, tuple(each for each in groups if each.sawn), tuple(short))


def _plan_group(
    group: Group, order: Order, used: Counter[str], first: int, effort: Effort
) -> Iterator[GroupPlan]:
    """The group out of what has a price or lies there, then what is refused out of the other rows."""
    sources = {key: list(whose) for key, whose in group.sources.items()}
    task = replace(group.task, stock=drop_needless(_less_used(group.task.stock, used), group.is_sheet))
    made = _cut(group, task, order, sources, first, True, effort)
    yield made
    refused = {refusal.key: refusal.count for refusal in made.plan.refused}
    if refused and group.unpriced:
        rest = tuple(replace(each, count=refused[each.key]) for each in task.wanted if refused.get(each.key))
        there = tuple(each for each in task.stock if isinstance(order.stock[each.key], HandRow))
        gone = used + Counter(sawn.cut.stock for sawn in made.sawn)
        stock = (*_less_used(there, gone - used), *drop_needless(group.unpriced, group.is_sheet))
        yield _cut(
            group,
            replace(task, wanted=rest, stock=stock),
            order,
            sources,
            first + len(made.sawn),
            False,
            effort,
        )


def _less_used(stock: Sequence[Stock], used: Mapping[str, int]) -> tuple[Stock, ...]:
    """The stock that is left of what lies there once and serves several groups."""
    return tuple(
        each if each.supply is None else replace(each, supply=max(0, each.supply - used.get(each.key, 0)))
        for each in stock
    )


def _cut(
    group: Group,
    task: Task,
    order: Order,
    sources: dict[str, list[Source]],
    first: int,
    is_priced: bool,
    effort: Effort,
) -> GroupPlan:
    """A group's plan; takes the sources of what it cuts off `sources`."""
    plan, cuts = _plan_task(group, task, effort)
    wanted = {each.key: each for each in task.wanted}
    stock = {each.key: each for each in task.stock}
    sawn: list[Sawn] = []
    for cut in _list_alike(cuts):
        whose = tuple(sources[key].pop(0) for key in list_keys(cut))
        left = _list_left(cut, stock[cut.stock], task, wanted)
        sawn.append(Sawn(first + len(sawn) + 1, cut, order.stock[cut.stock], whose, left))
    return GroupPlan(group, task, plan, tuple(sawn), is_priced)


def _plan_task(
    group: Group, task: Task, effort: Effort
) -> tuple[BoardPlan | SheetPlan, tuple[SawnBoard | SawnSheet, ...]]:
    """The plan, and what is sawn by it."""
    if group.is_sheet:
        sheets: SheetPlan = plan_sheets(task, effort)
        return sheets, sheets.sheets
    boards = plan_boards(task, effort)
    return boards, boards.boards


def list_keys(cut: SawnBoard | SawnSheet) -> tuple[str, ...]:
    """The keys of a board's or sheet's pieces, in the order that `Sawn.sources` runs."""
    if isinstance(cut, SawnBoard):
        return tuple(key for lane in cut.lanes for key in lane.pieces)
    return tuple(piece.key for piece in cut.pieces)


def _list_alike(cuts: Sequence[SawnBoard | SawnSheet]) -> list[SawnBoard | SawnSheet]:
    """The cuts, those out of the same stock in a run and like ones next to each other."""
    places: dict[str, int] = {}
    likes: dict[SawnBoard | SawnSheet, int] = {}
    for cut in cuts:
        places.setdefault(cut.stock, len(places))
        likes.setdefault(cut, len(likes))
    return sorted(cuts, key=lambda cut: (places[cut.stock], likes[cut]))


def _list_left(
    cut: SawnBoard | SawnSheet, stock: Stock, task: Task, wanted: Mapping[str, Wanted]
) -> tuple[LeftOver, ...]:
    if isinstance(cut, SawnBoard):
        return list_left_of_board(cut, stock, task, wanted)
    return list_left_of_sheet(cut, task)


def _say_short(refusal: Refusal, groups: Sequence[GroupPlan]) -> Short:
    """Whose pieces a refusal means: the last of their key, which no board was found for."""
    sources = groups[-1].group.sources[refusal.key][-refusal.count :]
    material = groups[-1].group.material
    return Short(
        sources, material, refusal.why, to_inches(refusal.wants_length), to_inches(refusal.wants_width)
    )
