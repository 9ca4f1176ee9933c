"""Boards cut to length, and ripped first where wider ones are cheaper or the only way: the cheapest plan.

The plan is in whole boards and its cost is a sum of prices; `Proof` says what no plan can cost less than.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import replace

from model.cutting.first_fit import FirstFit, cost_of
from model.cutting.knapsack import Pattern
from model.cutting.problem import Problem, fits, list_refused, make_problem
from model.cutting.task import BoardPlan, Effort, Lane, Proof, Refusal, SawnBoard, Stock, Task, Wanted


def plan_boards(task: Task, effort: Effort | None = None) -> BoardPlan:
    """The cheapest boards of a task found within an effort; pieces that cannot be had are named apart."""
    effort = effort or Effort()
    refused = list_refused(task)
    names = {each.key for each in refused}
    wanted = tuple(each for each in task.wanted if each.count > 0 and each.key not in names)
    stock = tuple(s for s in task.stock if s.supply != 0 and any(fits(piece, s) for piece in wanted))
    if not wanted:
        return BoardPlan((), refused, Proof(0, 0))
    problem = make_problem(wanted, stock, task.kerf)
    start, short = _start(problem, wanted)
    if short:
        rest = replace(task, wanted=tuple(_less(each, short[each.key]) for each in wanted))
        plan = plan_boards(rest, effort)
        return replace(plan, refused=refused + _list_short(wanted, short) + plan.refused)
    return _search(problem, wanted, stock, refused, start, effort)


def _search(
    problem: Problem,
    wanted: Sequence[Wanted],
    stock: Sequence[Stock],
    refused: tuple[Refusal, ...],
    start: Sequence[Pattern],
    effort: Effort,
) -> BoardPlan:
    from model.cutting.search import Search

    def as_plan(boards: Sequence[Pattern], bound: int, duals: tuple[tuple[str, int], ...] = ()) -> BoardPlan:
        proof = Proof(cost_of(problem, boards), bound, duals)
        sawn = tuple(_saw(problem, board, wanted, stock) for board in boards)
        return BoardPlan(sawn, refused, proof)

    effort.tell(as_plan(start, 0))
    search = Search(
        problem, start, effort.should_stop, lambda boards: effort.tell(as_plan(boards, search.bound))
    )
    search.run()
    duals = tuple((each.key, int(w)) for each, w in zip(wanted, search.shown.worth, strict=True))
    return as_plan(search.best, search.bound, duals)


def _start(problem: Problem, wanted: Sequence[Wanted]) -> tuple[list[Pattern], Counter[str]]:
    """A first plan; where stock is too little for all pieces, how many of which it leaves out."""
    supply = [sold.supply for sold in problem.sold]
    demand = list(problem.demand)
    first_fit = FirstFit(problem)
    short: Counter[str] = Counter()
    while (plan := first_fit.best(demand, supply)) is None:
        smallest = min(
            (i for i, n in enumerate(demand) if n), key=lambda i: (wanted[i].length * wanted[i].width, i)
        )
        demand[smallest] -= 1
        short[wanted[smallest].key] += 1
    return plan, short


def _less(piece: Wanted, count: int) -> Wanted:
    return replace(piece, count=piece.count - count)


def _list_short(wanted: Sequence[Wanted], short: Counter[str]) -> tuple[Refusal, ...]:
    why = "too few boards are listed"
    return tuple(
        Refusal(each.key, short[each.key], why, each.length, each.width) for each in wanted if short[each.key]
    )


def _saw(problem: Problem, board: Pattern, wanted: Sequence[Wanted], stock: Sequence[Stock]) -> SawnBoard:
    lanes = []
    for lane in board.lanes:
        pieces = [wanted[item] for item, count in lane.items for _ in range(count)]
        pieces.sort(key=lambda each: (-each.width, -each.length, each.key))
        lanes.append(Lane(max(each.width for each in pieces), tuple(each.key for each in pieces)))
    lanes.sort(key=lambda lane: -lane.width)
    return SawnBoard(stock[board.sold].key, tuple(lanes))
