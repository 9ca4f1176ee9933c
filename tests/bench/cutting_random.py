"""Random jobs held against the checkers and the oracles: ``python -m tests.bench.cutting_random [JOBS]``.

Half of them are of boards and half of sheets. Every plan must be sound, no bound may be above what an oracle
finds where there are few enough pieces, and what is said to be proven must be what it finds.
"""

from __future__ import annotations

import sys
from collections import Counter
from collections.abc import Iterator
from time import perf_counter

from model.cutting.boards import plan_boards
from model.cutting.sheets import plan_sheets
from model.cutting.task import Task
from tests.model.cutting import invented
from tests.model.cutting.checker import list_faults
from tests.model.cutting.invented_sheets import draw_odd
from tests.model.cutting.oracle import find_optimum
from tests.model.cutting.sheet_checker import check_sheet_plan
from tests.model.cutting.sheet_oracle import solve_task

JOBS = 2_000
FIRST_SEED = 100_000
"""Past those of the everyday tests."""
MOST_BY_ORACLE = 7
"""Pieces up to which an oracle is asked about sheets."""
SHOWN = 100


def main(jobs: int = JOBS) -> int:
    """Print what is wrong and a line of figures; 0 if nothing is wrong."""
    start, tally, faults = perf_counter(), Counter[str](), 0
    for n in range(jobs):
        check = _check_boards if n % 2 else _check_sheets
        for fault in check(FIRST_SEED + n // 2, tally):
            faults += 1
            print(f"job {n}: {fault}")
        if (n + 1) % SHOWN == 0:
            print(f"{n + 1} jobs, {perf_counter() - start:.0f} s, {faults} faults", flush=True)
    print(", ".join(f"{count} {what}" for what, count in tally.items()))
    return 1 if faults else 0


def _check_boards(seed: int, tally: Counter[str]) -> Iterator[str]:
    odd = invented.odd_task(seed)
    yield from list_faults(odd, plan_boards(odd))
    task = invented.small_task(seed)
    plan = plan_boards(task)
    yield from list_faults(task, plan)
    best = find_optimum(task)
    tally["plans of boards"] += 2
    if best is not None and not plan.refused:
        yield from _compare(best.cost, plan.proof.cost, plan.proof.bound)
        tally["of boards compared with an oracle"] += 1


def _check_sheets(seed: int, tally: Counter[str]) -> Iterator[str]:
    task = draw_odd(seed)
    plan = plan_sheets(task)
    yield from check_sheet_plan(task, plan)
    tally["plans of sheets"] += 1
    tally["of sheets proven"] += plan.proof.is_proven
    if _count(task) <= MOST_BY_ORACLE and not plan.refused:
        least = solve_task(task)
        yield from _compare(least, plan.proof.cost, plan.proof.bound)
        tally["of sheets compared with an oracle"] += 1


def _count(task: Task) -> int:
    return sum(each.count for each in task.wanted)


def _compare(least: int | None, cost: int, bound: int) -> Iterator[str]:
    if least is None or not bound <= least <= cost:
        yield f"bound {bound} and cost {cost} where {least} is least"


if __name__ == "__main__":
    raise SystemExit(main(*map(int, sys.argv[1:2])))
