"""Boards cut to length, and ripped first where wider ones are cheaper or the only way: the cheapest plan.

The plan is in whole boards and its cost is a sum of prices; `Proof` says what no plan can cost less than.
Lanes are as wide as pieces that are wanted. Mitred ends share a cut as model.cutting.mitre has it, and a
batch lies in one block. Among plans of least cost, few boards and one long offcut are looked for, unproven.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from model.cutting.asked import check_task
from model.cutting.first_fit import FirstFit, cost_of
from model.cutting.items import Item, fits, gather_items, list_refusals, refuse
from model.cutting.knapsack import Pattern
from model.cutting.longest_offcut import lengthen_offcut
from model.cutting.problem import Problem, make_problem
from model.cutting.saw import saw_boards
from model.cutting.shortage import leave_out
from model.cutting.spare_boards import spare_boards
from model.cutting.task import BoardPlan, Effort, Proof, Refusal, Stock, Task

TOO_FEW = "too few boards are listed"


def plan_boards(task: Task, effort: Effort | None = None) -> BoardPlan:
    """The cheapest boards of a task found within an effort; pieces that cannot be had are named apart.

    Raises `Refused` for numbers that mean nothing, such as a kerf below 0; see model.cutting.asked.
    """
    check_task(task)
    effort = effort or Effort()
    items = gather_items(task.wanted, task.kerf)
    lacking = [item for item in items if not any(fits(item, each) for each in task.stock)]
    refused = tuple(refusal for item in lacking for refusal in refuse(item, task.stock))
    items = tuple(item for item in items if any(fits(item, each) for each in task.stock))
    if not items:
        return BoardPlan((), refused, Proof(0, 0))
    stock = tuple(s for s in task.stock if any(fits(item, s) for item in items))
    problem = make_problem(items, stock, task.kerf)
    start = FirstFit(problem).best(problem.demand, [sold.supply for sold in problem.sold])
    if start is None:
        problem, start = leave_out(problem, effort.should_stop)
        refused += _list_short(items, problem)
    return _search(_Order(task, problem, items, stock, refused), start, effort)


def _list_short(items: Sequence[Item], problem: Problem) -> tuple[Refusal, ...]:
    return tuple(
        refusal
        for item, count in zip(items, problem.demand, strict=True)
        for refusal in list_refusals(item.blocks[count:], TOO_FEW, item.snug)
    )


@dataclass(frozen=True, slots=True)
class _Order:
    """A task and what was made of it. An item's first blocks are cut, as many as the problem demands."""

    task: Task
    problem: Problem
    items: Sequence[Item]
    stock: Sequence[Stock]
    refused: tuple[Refusal, ...]

    def plan(self, boards: Sequence[Pattern], bound: int) -> BoardPlan:
        """Boards in the words of the task."""
        sawn = saw_boards(boards, self.items, self.stock, self.task.kerf)
        return BoardPlan(sawn, self.refused, Proof(cost_of(self.problem, boards), bound))

    def share_worth(self, worth: Sequence[int]) -> tuple[tuple[str, int], ...]:
        """The worth of each key: a batch's is shared out evenly among its pieces, rounded down."""
        duals: dict[str, int] = {}
        for item, count, value in zip(self.items, self.problem.demand, worth, strict=True):
            for block in item.blocks[:count]:
                duals.update((piece.key, int(value) // len(block)) for piece in block)
        return tuple(duals.items())


def _search(order: _Order, start: Sequence[Pattern], effort: Effort) -> BoardPlan:
    from model.cutting.search import Search

    effort.tell(order.plan(start, 0))
    search = Search(
        order.problem,
        start,
        effort.should_stop,
        lambda boards: effort.tell(order.plan(boards, search.bound)),
    )
    search.run()
    boards = search.best
    if search.bound >= search.cost and not effort.should_stop():
        boards = lengthen_offcut(order.problem, spare_boards(order.problem, boards, effort.should_stop))
    plan = order.plan(boards, search.bound)
    duals = order.share_worth(search.shown.worth.tolist())
    return replace(plan, proof=replace(plan.proof, duals=duals))
