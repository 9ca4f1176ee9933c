"""How the work grows with panels, boards and jobs: ``python -m tests.bench.growth [WORD...]``.

Each curve is measured in processor time, the sizes in turns so that all see the same machine, the least of
the rounds taken; its exponent is fitted by least squares on logarithms, 1 for twice the work at twice the
size. WORD runs only the tables whose heading has it. Pieces, panels and prices are invented, the many jobs
are shipped ones with an eighth or so more of opening in each.
"""

from __future__ import annotations

import subprocess
import sys
import tempfile
from collections.abc import Callable, Sequence
from dataclasses import replace
from time import process_time

import numpy as np

from app.demo import list_demos, read_demo
from app.outputs import build_packet_sheets
from app.stock_lists import EXAMPLE, read_shipped_list
from export.pdf import write_pdf
from model.check.all import check_surround
from model.cutting.boards import plan_boards
from model.cutting.buying import list_buying
from model.cutting.order import build_order
from model.cutting.plan import plan_order
from model.cutting.sheets import plan_sheets
from model.cutting.task import Effort, Task
from model.job import Job, read_value, with_texts, with_value
from model.surround import Surround, plan_surround
from render.views import VIEWS, ViewOptions, draw_views
from tests.bench.cutting_boards import first_fit
from tests.bench.cutting_sheets import plain_first_fit
from tests.bench.processes import time_children
from tests.model.cutting.invented import merged
from tests.model.cutting.invented_sheets import draw_panels

PANELS = ((1, 1, 0), (1, 2, 0), (2, 4, 0), (3, 7, 0), (4, 7, 5), (4, 9, 7), (4, 11, 9))
"""Framed panels of each column, of the frieze and of the overmantel.

The first has plain columns, so its one is the frieze's. The rows allow 20 in all, the last but two; what is
past them is there to see that nothing jumps at their end.
"""
PIECES = (30, 100, 300, 1000)
SHEETS = (10, 30, 100, 300, 1000)
JOBS = (1, 5, 20, 50, 200)
ROUNDS = 3
SECONDS = 10.0
"""Of the processor, that a search for something cheaper gets."""
Row = tuple[float, ...]
Work = Callable[[], object]


def main() -> None:
    """Print all tables, or those that were asked for."""
    words = sys.argv[1:]
    for heading, show in TABLES.items():
        if not words or any(word.lower() in heading.lower() for word in words):
            print(f"\n{heading}", flush=True)
            show()


def show_panels() -> None:
    """An edit is a surround planned, drawn from the front and the side, and checked; no window."""
    counts, surrounds = [], []
    for columns, frieze, over in PANELS:
        counts.append((0 if columns == frieze else 2 * columns) + frieze + over)
        surrounds.append(plan_surround(_panelled(columns, frieze, over)))
    boards = [len(surround.boards) for surround in surrounds]
    jobs = [surround.asked or surround.job for surround in surrounds]
    edits = _time([lambda job=job: _edit(job) for job in jobs], 10 * ROUNDS)
    views = _time([lambda job=job: draw_views(plan_surround(job), VIEWS, _OPTIONS) for job in jobs], ROUNDS)
    packets = _time([lambda job=job: write_pdf(build_packet_sheets(job, "tabloid", ""), "") for job in jobs])
    rows = list(zip(counts, boards, edits, views, packets, strict=True))
    _show(("panels", "boards", "edit", "all views", "packet"), rows, by=0)
    _show_exponents("by boards", rows, 1, 2)


def show_pieces() -> None:
    """Pieces of up to 20 lengths and 20 offcuts; the first plan is there when nothing more is looked for."""
    tasks = [merged(3, count, count, 20, 24) for count in PIECES]
    _show_search("pieces", PIECES, tasks, plan_boards, first_fit)


def show_sheets() -> None:
    """Panels that are all different, out of three kinds of sheets."""
    tasks = [draw_panels(5, count) for count in SHEETS]
    _show_search("panels", SHEETS, tasks, plan_sheets, plain_first_fit)


def _show_search(
    head: str,
    sizes: Sequence[int],
    tasks: Sequence[Task],
    plan: Callable[..., object],
    plain: Callable[[Task], int],
) -> None:
    at_once = _time([lambda task=task: plan(task, Effort(lambda: True)) for task in tasks])
    plains = _time([lambda task=task: plain(task) for task in tasks])
    whole, gaps = [], []
    for task in tasks:
        start = process_time()
        proof = plan(task, _effort()).proof  # type: ignore[attr-defined]
        whole.append(process_time() - start)
        gaps.append(100 * (proof.cost - proof.bound) / proof.bound)
    rows = list(zip(sizes, plains, at_once, whole, strict=True))
    _show((head, "first fit", "first plan", "whole search"), rows, by=0)
    print("gap to the bound %" + "".join(f"{gap:10.2f}" for gap in gaps))


def show_jobs() -> None:
    """From jobs to the buying list; only the first plan is looked for, the search has its own table."""
    stock, named = read_shipped_list(EXAMPLE), []
    for number in range(max(JOBS)):
        job = read_demo(list_demos()[number % len(list_demos())])
        wider = float(read_value(job, "opening.width") or 0) + number / 8
        named.append((f"job {number}", with_value(job, "opening.width", wider)))
    surrounds = [(name, plan_surround(job)) for name, job in named]
    planning = _time([lambda n=n: [plan_surround(job) for _, job in named[:n]] for n in JOBS], 1)
    orders = [build_order(surrounds[:n], stock) for n in JOBS]
    ordering = _time([lambda n=n: build_order(surrounds[:n], stock) for n in JOBS], 1)
    plans = [plan_order(order, Effort(lambda: True)) for order in orders]
    cutting = _time([lambda order=order: plan_order(order, Effort(lambda: True)) for order in orders], 1)
    buying = _time([lambda plan=plan: list_buying(plan) for plan in plans], 1)
    pieces = [sum(map(len, (s for g in order.groups for s in g.sources.values()))) for order in orders]
    rows = list(zip(JOBS, pieces, planning, ordering, cutting, buying, strict=True))
    _show(("jobs", "pieces", "surrounds", "pieces listed", "first plan", "buying list"), rows, by=0)


def show_packets() -> None:
    """Whole processes, as they are started; with their starts, their files and whatever cores they use."""
    taken = []
    for count in JOBS:
        with tempfile.TemporaryDirectory() as folder:
            before = time_children()
            names = [list_demos()[number % len(list_demos())] for number in range(count)]
            command = [sys.executable, "-m", "app", "packet", *names, "--out", folder]
            subprocess.run(command, check=True, capture_output=True)
            taken.append(time_children() - before)
    _show(("jobs", "packets"), list(zip(JOBS, taken, strict=True)), by=0)


_OPTIONS = ViewOptions()
TABLES = {
    "Panels to an edit, to all views and to a packet": show_panels,
    "Boards: pieces of one section cut together": show_pieces,
    "Sheets: panels cut together": show_sheets,
    "Jobs bought and cut together": show_jobs,
    "Packets of several jobs in one go": show_packets,
}


def _panelled(columns: int, frieze: int, over: int) -> Job:
    """No bound is asked, for no form and no file would take the last of `PANELS`."""
    texts = [("column.kind", "plain")] if columns == frieze == 1 else []
    if over:
        texts += [("over.on", "yes"), ("room.ceiling", "108")]
    job = with_texts(read_demo("brick"), texts)
    design = replace(
        job.design,
        column=replace(job.design.column, panels=columns),
        frieze=replace(job.design.frieze, panels=frieze),
        over=replace(job.design.over, panels=over or job.design.over.panels),
    )
    return replace(job, design=design)


def _edit(job: Job) -> Surround:
    surround = plan_surround(job)
    draw_views(surround, ("front", "side"), _OPTIONS)
    check_surround(surround)
    return surround


def _effort() -> Effort:
    end = process_time() + SECONDS
    return Effort(lambda: process_time() > end)


def _time(works: Sequence[Work], rounds: int = ROUNDS) -> list[float]:
    """Least seconds of the processor for each, all of them in turns, after the largest has been done once."""
    works[-1]()
    least = [float("inf")] * len(works)
    for _ in range(rounds):
        for i, work in enumerate(works):
            start = process_time()
            work()
            least[i] = min(least[i], process_time() - start)
    return least


def fit_exponent(sizes: Sequence[float], seconds: Sequence[float]) -> float:
    """The power of size that the time goes by, least squares on logarithms."""
    return float(np.polyfit(np.log(sizes), np.log(np.maximum(seconds, 1e-6)), 1)[0])


def _show(heads: Sequence[str], rows: Sequence[Row], by: int) -> None:
    """Counts first, then milliseconds; a last line with the exponents by column `by`."""
    print("".join(f"{head:>14}" for head in heads))
    first = next(i for i, head in enumerate(heads) if head not in ("panels", "boards", "pieces", "jobs"))
    for row in rows:
        print("".join(f"{x:14.0f}" for x in row[:first]) + "".join(f"{1000 * x:14.1f}" for x in row[first:]))
    _show_exponents(f"by {heads[by]}", rows, by, first)


def _show_exponents(name: str, rows: Sequence[Row], by: int, first: int) -> None:
    sizes = [row[by] for row in rows]
    powers = [fit_exponent(sizes, [row[i] for row in rows]) for i in range(first, len(rows[0]))]
    print(f"{'power ' + name:>{14 * first}}" + "".join(f"{power:14.2f}" for power in powers))


if __name__ == "__main__":
    main()
