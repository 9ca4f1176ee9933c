"""Plans for sheets beside plain first fit and a general solver: ``python -m tests.bench.cutting_sheets``.

First fit takes the panels by area, opens one kind of sheet only and makes each sheet smaller afterwards; the
best kind counts. The general solver is scipy's MILP, which gives each panel to one sheet of many by area
alone: its answer is no plan, and the most that can be asked of it is a bound. All panels are invented.
"""

from __future__ import annotations

import resource
from statistics import mean, median
from time import perf_counter

import numpy as np
from scipy.optimize import Bounds, LinearConstraint, milp

from model.cutting.packer import Rules, cost_of, first_fit
from model.cutting.sheet_problem import make_sheet_problem
from model.cutting.sheets import plan_sheets
from model.cutting.task import Effort, Task
from tests.model.cutting.invented_sheets import draw_panels

SIZES = (10, 12, 20, 25, 30)
SEEDS = 8
SECONDS = 1.0
MERGED = 1000
MERGED_SECONDS = 20.0


def main() -> None:
    """Print all figures."""
    plan_sheets(draw_panels(99, 8))  # loads the solver
    for count in SIZES:
        show_panels(count)
    show_merged()
    peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
    print(f"\npeak memory of all of it {peak:.0f} MB, the general solver's included")


def plain_first_fit(task: Task) -> int:
    """What first fit by falling area costs."""
    problem = make_sheet_problem(task.wanted, task.stock, task.kerf)
    supply = [sold.supply for sold in problem.sold]
    pieces = [i for i, count in enumerate(problem.demand) for _ in range(count)]
    kinds = range(len(problem.sold))
    plans = [first_fit(problem, pieces, supply, main, Rules("first", "longer"))[0] for main in kinds]
    return min(cost_of(problem, plan) for plan in plans)


def area_bound(task: Task) -> int:
    """The cheapest sheets of enough area, by a general solver."""
    kerf = task.kerf
    area = sum((each.length + kerf) * (each.width + kerf) * each.count for each in task.wanted)
    rooms = np.array([(each.length + kerf) * (each.width + kerf) for each in task.stock], dtype=float)
    prices = np.array([each.price for each in task.stock], dtype=float)
    enough = LinearConstraint(rooms[None, :] / area, 1, np.inf)
    answer = milp(prices, integrality=np.ones(len(prices)), bounds=Bounds(0, np.inf), constraints=enough)
    return round(answer.fun)


def show_panels(count: int) -> None:
    """Jobs of some panels, stopped after a second."""
    print(f"\n{SEEDS} jobs of {count} panels, 3 kinds of sheets, stopped after {SECONDS:.0f} s")
    heads = ("cost", "bound", "gap %", "seconds", "cuts", "first fit", "area alone")
    print("".join(f"{head:>11}" for head in heads))
    proven, savings, times = 0, [], []
    for seed in range(SEEDS):
        task = draw_panels(seed, count)
        start = perf_counter()
        plan = plan_sheets(task, Effort(lambda start=start: perf_counter() - start > SECONDS))
        times.append(perf_counter() - start)
        cost, bound = plan.proof.cost, plan.proof.bound
        plain = plain_first_fit(task)
        savings.append(100 * (plain - cost) / plain)
        proven += plan.proof.is_proven
        cuts = sum(len(sheet.cuts) for sheet in plan.sheets)
        gap = 100 * (cost - bound) / bound
        print(
            f"{cost:11}{bound:11}{gap:11.1f}{times[-1]:11.2f}{cuts:11}{plain:11}{area_bound(task):11}",
            flush=True,
        )
    print(f"proven {proven} of {SEEDS}, median {median(times):.2f} s,", end=" ")
    print(f"cheaper than first fit by {mean(savings):.1f} % on average")


def show_merged() -> None:
    """Two hundred jobs of five panels, all different."""
    task = draw_panels(5, MERGED)
    start = perf_counter()
    proof = plan_sheets(task, Effort(lambda: perf_counter() - start > MERGED_SECONDS)).proof
    took = perf_counter() - start
    saved = 100 * (1 - proof.cost / plain_first_fit(task))
    print(f"\n{MERGED} panels at once, all different: cost {proof.cost}, bound {proof.bound},", end=" ")
    print(f"{took:.1f} s, {saved:.1f} % cheaper than first fit")


if __name__ == "__main__":
    main()
