"""The most valuable pieces out of one sheet, for published instances that ask for it.

The program has no such question of its own, but both answers are parts of its planner: what one sheet holds
where pieces have no end, and all sets of pieces that one holds where they have. Where those are too many,
the best of many tries is the answer and what it holds without an end the bound.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from random import Random

import numpy as np

from model.cutting.guillotine import Guillotine
from model.cutting.packer import Shuffler, draw_rules, lay
from model.cutting.sheet_problem import SheetProblem, make_sheet_problem
from model.cutting.sheet_sets import SetFinder, TooMuch
from model.cutting.task import Proof, Task

WORK = 60_000_000
TRIES = 20_000
MOST_PARTS = 1_000_000


def find_most(task: Task, values: dict[str, int], is_endless: bool, should_stop: Callable[[], bool]) -> Proof:
    """What is reached, as a cost, and what is not exceeded, as a bound; `values` are those of keys."""
    problem = make_sheet_problem(task.wanted, task.stock, task.kerf)
    worth = [max(values[key] for key in item.keys) for item in problem.items]
    (most,), _ = Guillotine(problem.items, problem.rooms, MOST_PARTS).price(worth)
    if is_endless:
        return Proof(most, most)
    finder = SetFinder(problem, should_stop, WORK)
    try:
        finder.run()
        is_complete = True
    except TooMuch:
        is_complete = False
    found = max(int(np.array(worth)[level.rows].sum(axis=1).max()) for level in finder.levels)
    if is_complete:
        return Proof(found, found)
    return Proof(max(found, _try(problem, worth, should_stop)), most)


def _try(problem: SheetProblem, worth: Sequence[int], should_stop: Callable[[], bool]) -> int:
    """The most that came to lie on a sheet in many tries."""
    random, best = Random(1), 0
    shuffler = Shuffler(problem, random)
    pieces = [i for i, count in enumerate(problem.demand) for _ in range(count)]
    for _ in range(TRIES):
        if should_stop():
            break
        some = [piece for piece in pieces if random.random() < 0.6]
        rest = [piece for piece in pieces if piece not in some]
        order = [*shuffler.shuffle(some), *shuffler.shuffle(rest)]
        laid, _ = lay(problem.items, order, problem.rooms, draw_rules(random))
        best = max(best, sum(worth[piece.item] for piece in laid[0]))
    return best
