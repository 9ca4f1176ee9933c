"""Plans for boards beside first fit and a general solver: ``python -m tests.bench.cutting_boards``.

First fit is tried with each stock as the one it opens, its boards made cheaper after, and the best is taken.
The general solver is scipy's MILP, which gives each piece to a board. All tasks but the shipped jobs are
invented; the shipped jobs are cut from the shipped example list, whose prices are invented.
"""

from __future__ import annotations

import resource
from collections.abc import Callable
from dataclasses import replace
from math import ceil
from statistics import mean, median
from time import perf_counter

from app.demo import list_demos, read_demo
from app.stock_lists import EXAMPLE, read_shipped_list
from model.cutting.boards import plan_boards
from model.cutting.first_fit import FirstFit, cost_of
from model.cutting.items import gather_items
from model.cutting.order import build_order
from model.cutting.problem import make_problem
from model.cutting.task import Effort, Proof, Task
from model.surround import plan_surround
from tests.model.cutting.invented import job_section, merged, section
from tests.model.cutting.oracle import assign_pieces

SECTIONS = 10
RIVALS = 2
"""Sections that the general solver is given."""
RIVAL_SECONDS = 10.0
JOB_SECONDS = 20.0
"""After which a section of many widths is stopped; its bound rises to the end."""
MODELS = 24
"""In the catalogue that merged orders draw from."""


def main() -> None:
    """Print all figures."""
    show_sections()
    show_apart()
    show_jobs()
    show_merged(20, 800, 5.0, 3)
    show_merged(200, 8000, 20.0, 2)
    show_wide()
    peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
    print(f"\npeak memory of all of it {peak:.0f} MB, the general solver's included")


def first_fit(task: Task) -> int:
    """What first-fit decreasing costs."""
    problem = make_problem(gather_items(task.wanted, task.kerf), task.stock, task.kerf)
    plan = FirstFit(problem).best(problem.demand, [sold.supply for sold in problem.sold])
    assert plan is not None
    return cost_of(problem, plan)


def _plan(task: Task, seconds: float | None = None) -> tuple[Proof, float]:
    start = perf_counter()
    should_stop: Callable[[], bool] = lambda: seconds is not None and perf_counter() - start > seconds  # noqa: E731
    proof = plan_boards(task, Effort(should_stop)).proof
    return proof, perf_counter() - start


def _gap(proof: Proof) -> float:
    """Percent, rounded up to thousandths."""
    return ceil(1e5 * (proof.cost - proof.bound) / max(proof.bound, 1)) / 1e3


def show_sections() -> None:
    """Sections of 40 pieces out of four lengths and four offcuts."""
    plan_boards(section(99))  # loads the solver
    print(f"{SECTIONS} sections of 40 pieces, 4 lengths and 4 offcuts")
    print(f"{'cost':>10}{'bound':>10}{'seconds':>9}{'first fit':>11}{'dearer %':>10}{'general solver':>16}")
    times, savings, proven = [], [], 0
    for seed in range(SECTIONS):
        task = section(seed)
        proof, took = _plan(task)
        plain = first_fit(task)
        rival = assign_pieces(task, 8, RIVAL_SECONDS) if seed < RIVALS else None
        savings.append(100 * (plain - proof.cost) / plain)
        times.append(took)
        proven += proof.is_proven and took < 1
        dearer = 100 * (plain - proof.cost) / proof.cost
        numbers = f"{proof.cost:10}{proof.bound:10}{took:9.3f}{plain:11}{dearer:10.2f}"
        print(f"{numbers}{'' if rival is None else rival:>16}")
    print(
        f"proven within 1 s {proven} of {SECTIONS}, median {median(times):.3f} s; cheaper than first fit by"
    )
    print(f"{mean(savings):.2f} % on average; the general solver stopped after {RIVAL_SECONDS:.0f} s each")


def show_apart() -> None:
    """The sections of every shipped job, each piece cut to length out of the narrowest width holding it."""
    print("\nShipped jobs, each width sold by itself, one strip from a board")
    print(f"{'job':12}{'sections':>9}{'pieces':>8}{'proven':>8}{'seconds':>9}{'first fit %':>20}")
    stock = read_shipped_list(EXAMPLE)
    times = []
    for name in list_demos():
        order = build_order([(name, plan_surround(read_demo(name)))], stock)
        tasks = [part for g in order.groups if not g.is_sheet and g.task.stock for part in _part(g.task)]
        plans = [_plan(task) for task in tasks]
        cost = sum(proof.cost for proof, _ in plans)
        dearer = 100 * (sum(map(first_fit, tasks)) - cost) / cost
        pieces = sum(piece.count for task in tasks for piece in task.wanted)
        times.append(sum(took for _, took in plans))
        proven = sum(proof.is_proven for proof, _ in plans)
        print(f"{name:12}{len(tasks):9}{pieces:8}{proven:8}{times[-1]:9.3f}{dearer:20.2f}")
    print(f"median {median(times):.3f} s for all sections of a job")


def _part(task: Task) -> list[Task]:
    """A task for each width that is sold: pieces wider than the next narrower one, as wide as the boards."""
    widths = sorted({stock.width for stock in task.stock})
    parts = []
    for narrower, width in zip([0, *widths], widths, strict=False):
        wanted = tuple(replace(p, width=width) for p in task.wanted if narrower < p.width <= width)
        stock = tuple(each for each in task.stock if each.width == width)
        parts.append(replace(task, wanted=wanted, stock=stock))
    return [part for part in parts if part.wanted]


def show_jobs() -> None:
    """The board sections of every shipped job, ripping from wider boards allowed."""
    print("\nShipped jobs, all sections that are cut from boards together")
    print(f"{'job':12}{'sections':>9}{'pieces':>8}{'proven':>8}{'gap %':>8}{'seconds':>9}{'first fit %':>20}")
    stock = read_shipped_list(EXAMPLE)
    for name in list_demos():
        order = build_order([(name, plan_surround(read_demo(name)))], stock)
        tasks = [group.task for group in order.groups if not group.is_sheet and group.task.stock]
        plans = [_plan(task, JOB_SECONDS) for task in tasks]
        cost, bound = (sum(values) for values in zip(*((p.cost, p.bound) for p, _ in plans), strict=True))
        pieces = sum(piece.count for task in tasks for piece in task.wanted)
        proven = sum(proof.is_proven for proof, _ in plans)
        dearer = 100 * (sum(map(first_fit, tasks)) - cost) / cost
        took = sum(took for _, took in plans)
        counts = f"{len(tasks):9}{pieces:8}{proven:8}{_gap(Proof(cost, bound)):8.3f}"
        print(f"{name:12}{counts}{took:9.3f}{dearer:20.2f}")


def show_merged(jobs: int, pieces: int, seconds: float, seeds: int) -> None:
    """Orders of many jobs at once."""
    print(f"\n{jobs} jobs merged, {pieces} pieces, stopped after {seconds:.0f} s")
    print(f"{'lengths':>8}{'cost':>10}{'bound':>10}{'gap %':>8}{'seconds':>9}{'first fit dearer %':>20}")
    for seed in range(seeds):
        task = merged(seed, jobs, pieces, 20, MODELS)
        proof, took = _plan(task, seconds)
        dearer = 100 * (first_fit(task) - proof.cost) / proof.cost
        numbers = f"{len(task.wanted):8}{proof.cost:10}{proof.bound:10}{_gap(proof):8.3f}{took:9.2f}"
        print(f"{numbers}{dearer:20.2f}")


def show_wide() -> None:
    """A dozen widths out of seven sold ones in six lengths."""
    print("\nSections of 40 pieces of a dozen widths, 42 stocks")
    print(f"{'cost':>10}{'bound':>10}{'gap %':>8}{'seconds':>9}{'first fit dearer %':>20}")
    for seed in range(4):
        task = job_section(seed)
        proof, took = _plan(task, JOB_SECONDS)
        dearer = 100 * (first_fit(task) - proof.cost) / proof.cost
        print(f"{proof.cost:10}{proof.bound:10}{_gap(proof):8.3f}{took:9.3f}{dearer:20.2f}")


if __name__ == "__main__":
    main()
