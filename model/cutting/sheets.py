"""Panels cut from sheets by straight cuts right through: the cheapest plan, and the order of its cuts.

The plan is in whole sheets and its cost is a sum of prices; `Proof` says what no plan can cost less than.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Sequence
from dataclasses import replace

from model.cutting.asked import check_task
from model.cutting.packer import Layout
from model.cutting.sheet_cuts import Lying, Sawn, Sawyer, order_cuts
from model.cutting.sheet_problem import SheetProblem, Sides, holds, make_sheet_problem, refuse_too_large
from model.cutting.sheet_search import SheetSearch
from model.cutting.task import Effort, Placed, Proof, Refusal, SawnSheet, SheetPlan, Stock, Task, Wanted
from model.errors import Refused


def plan_sheets(task: Task, effort: Effort | None = None) -> SheetPlan:
    """The cheapest sheets of a task found within an effort; pieces that cannot be had are named apart.

    Raises `Refused` for a piece without a size and for other numbers that mean nothing, such as a kerf
    below 0; see model.cutting.asked.
    """
    effort = effort or Effort()
    check_task(task)
    _check_sizes(task.wanted)
    refused = refuse_too_large(task)
    names = {each.key for each in refused}
    wanted = tuple(each for each in task.wanted if each.count > 0 and each.key not in names)
    stock = tuple(each for each in task.stock if any(holds(each, piece) for piece in wanted))
    return _plan(task, wanted, stock, refused, effort)


def _check_sizes(wanted: Iterable[Wanted]) -> None:
    for piece in wanted:
        if piece.length <= 0 or piece.width <= 0:
            raise Refused(f"piece {piece.key}", (piece.length, piece.width), "a length and a width above 0")


def _plan(
    task: Task,
    wanted: tuple[Wanted, ...],
    stock: tuple[Stock, ...],
    refused: tuple[Refusal, ...],
    effort: Effort,
) -> SheetPlan:
    if not wanted:
        return SheetPlan((), refused, Proof(0, 0))
    writer = _Writer(task, make_sheet_problem(wanted, stock, task.kerf), stock, refused)
    tell: Callable[[SheetSearch], None] = lambda search: effort.tell(writer.write(search))  # noqa: E731
    search = SheetSearch(writer.problem, writer.sawyer, effort.should_stop, tell)
    search.start()
    if search.over:
        short = Counter(writer.keys_of(search.over))
        wanted = tuple(replace(each, count=each.count - short[each.key]) for each in wanted)
        wanted = tuple(each for each in wanted if each.count)
        return _plan(task, wanted, stock, refused + _list_short(task, short), effort)
    search.run()
    return writer.write(search)


def _list_short(task: Task, short: Counter[str]) -> tuple[Refusal, ...]:
    why = "too few sheets are listed"
    return tuple(
        Refusal(each.key, short[each.key], why, each.length, each.width)
        for each in task.wanted
        if short[each.key]
    )


class _Writer:
    """Writes the layouts of a search down as a plan of the task."""

    def __init__(
        self, task: Task, problem: SheetProblem, stock: Sequence[Stock], refused: tuple[Refusal, ...]
    ) -> None:
        self.problem, self._stock, self._refused = problem, stock, refused
        narrowest = min(min(each.length, each.width) for each in task.wanted)
        self.sawyer = Sawyer(task.kerf, (task.keep, narrowest))

    def keys_of(self, pieces: Sequence[int]) -> list[str]:
        """A key for each piece, the last of its item first."""
        taken: Counter[int] = Counter()
        keys = []
        for piece in pieces:
            taken[piece] += 1
            keys.append(self.problem.items[piece].keys[-taken[piece]])
        return keys

    def write(self, search: SheetSearch) -> SheetPlan:
        """The best plan so far."""
        keys = [list(item.keys) for item in self.problem.items]
        sheets = tuple(self._write_sheet(layout, keys) for layout in search.best)
        return SheetPlan(sheets, self._refused, Proof(search.cost, search.bound))

    def _write_sheet(self, layout: Layout, keys: list[list[str]]) -> SawnSheet:
        sawing = self.sawyer.saw(layout.pieces, self.problem.rooms[layout.sold])
        sawn = order_cuts(sawing.part, self.problem.kerf)
        pieces = tuple(self._write_piece(piece, keys) for piece in sawn.pieces)
        return SawnSheet(self._stock[layout.sold].key, pieces, sawn.cuts, self._write_left(sawn))

    def _write_piece(self, piece: Lying, keys: list[list[str]]) -> Placed:
        return self._place(keys[piece.item].pop(0), piece.x, piece.y, piece.sides)

    def _write_left(self, sawn: Sawn) -> tuple[Placed, ...]:
        return tuple(self._place("", x, y, room) for x, y, room in sawn.left if self.sawyer.worth_left(room))

    def _place(self, key: str, x: int, y: int, sides: Sides) -> Placed:
        return Placed(key, x, y, sides[0] - self.problem.kerf, sides[1] - self.problem.kerf)
