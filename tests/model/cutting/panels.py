"""Small problems of sheets for the tests of the parts of their search."""

from __future__ import annotations

from model.cutting.sheet_problem import SheetProblem, make_sheet_problem
from model.cutting.task import Stock, Task, Wanted
from tests.model.cutting.invented_sheets import draw_odd

THREE = (Stock("whole", 100, 60, 100), Stock("half", 50, 60, 60), Stock("strip", 100, 20, 40))


def make_problem(
    *sides: tuple[int, int], stock: tuple[Stock, ...] = THREE, kerf: int = 0, may_turn: bool = False
) -> SheetProblem:
    """A problem of one piece for each two sides."""
    wanted = tuple(Wanted(f"p{n}", *pair, may_turn=may_turn) for n, pair in enumerate(sides))
    return make_sheet_problem(wanted, stock, kerf)


def list_pieces(problem: SheetProblem) -> list[int]:
    """An item for each piece, the largest first."""
    return [i for i, count in enumerate(problem.demand) for _ in range(count)]


def draw_few(seed: int, most: int) -> Task | None:
    """An odd task with pieces that all fit some sheet, at most so many; None where the seed gives another."""
    task = draw_odd(seed, most)
    fit = all(
        any(
            (way[0] <= s.length - 2 * s.trim_ends and way[1] <= s.width - 2 * s.trim_edges)
            for s in task.stock
            if s.supply != 0
            for way in ((w.length, w.width), (w.width, w.length))[: 1 + w.may_turn]
        )
        for w in task.wanted
    )
    return task if fit and sum(each.count for each in task.wanted) <= most else None
