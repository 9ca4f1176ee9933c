"""Every sheet of random designs looked through for what stands in its way.

``python -m tests.bench.collisions [COUNT [SKIP]] [--all] [--plans]``: COUNT designs, 200 if not said, after
SKIP others, each on one paper in one unit by turns, or with --all on every paper in every unit; with --plans
what is bought and how it is cut is planned too. Prints every collision, then how many of each kind there
were; ends with 1 if there was any.
"""

from __future__ import annotations

import sys
from collections import Counter
from collections.abc import Iterator
from itertools import product
from time import monotonic

from hypothesis import HealthCheck, Phase, given, seed, settings

from app.stock_lists import read_shipped_list
from model.check.all import check_surround
from model.check.proportion import list_guides
from model.cutting.order import build_order
from model.cutting.plan import CuttingPlan, plan_order
from model.cutting.task import Effort, Steps
from model.job import Job, with_value
from model.parameters import UNITS
from model.surround import Surround, plan_surround
from model.takeoff.takeoff import take_off
from render.drawing import Sheet
from render.packet import build_packet
from render.sheets import PAPERS
from tests.collisions import Collision, list_collisions
from tests.strategies import jobs

COUNT = 200
STEPS = 20
"""How far a cutting plan is looked for: what is drawn matters here and not what it costs."""
DRAWN = 4
"""How many jobs are drawn for a number; the last is taken, since the first ones are simple."""
TURNS = tuple(product(PAPERS, UNITS))


def build_random_job(number: int) -> Job:
    """Any job in range, the same for a number in every run."""
    found: list[Job] = []

    @seed(number)
    @settings(
        max_examples=DRAWN,
        database=None,
        deadline=None,
        phases=[Phase.generate],
        suppress_health_check=list(HealthCheck),
    )
    @given(job=jobs(in_between=False))
    def keep(job: Job) -> None:
        found.append(job)

    keep()
    return found[-1]


def lay_out(
    job: Job, papers: tuple[str, ...], plans: bool = False
) -> Iterator[tuple[str, tuple[Sheet, ...]]]:
    """The packet of a job on each of some papers."""
    surround = plan_surround(job)
    findings, guides, takeoff = check_surround(surround), list_guides(surround), take_off(surround)
    plan = _plan(job, surround) if plans else None
    for paper in papers:
        yield (
            paper,
            build_packet(surround, findings, guides, takeoff.cuts, paper, "2026-01-02", takeoff, plan),
        )


def _plan(job: Job, surround: Surround) -> CuttingPlan:
    steps = Steps(STEPS)
    order = build_order([(job.about.name or "job", surround)], read_shipped_list())
    return plan_order(order, Effort(steps.are_over), lambda *_: steps.begin())


def look_through(job: Job, papers: tuple[str, ...], plans: bool = False) -> Iterator[tuple[str, Collision]]:
    """Every collision on the sheets of a job, with its paper."""
    for paper, sheets in lay_out(job, papers, plans):
        for sheet in sheets:
            for collision in list_collisions(sheet):
                yield paper, collision


def main() -> int:
    """Look through as many designs as the command line says."""
    numbers = [int(word) for word in sys.argv[1:] if word.isdigit()]
    count, skip = numbers[0] if numbers else COUNT, numbers[1] if len(numbers) > 1 else 0
    every, plans = "--all" in sys.argv, "--plans" in sys.argv
    kinds: Counter[str] = Counter()
    start = monotonic()
    for number in range(skip, skip + count):
        job = build_random_job(number)
        turns = TURNS if every else (TURNS[number % len(TURNS)],)
        for units in dict.fromkeys(unit for _, unit in turns):
            papers = tuple(paper for paper, unit in turns if unit == units)
            for paper, collision in look_through(with_value(job, "job.units", units), papers, plans):
                kinds[collision.kind] += 1
                print(f"{number} {paper} {units} {collision}", flush=True)
    print(f"{count} designs in {monotonic() - start:.0f} s: {dict(kinds) or 'no collisions'}")
    return 1 if kinds else 0


if __name__ == "__main__":
    sys.exit(main())
