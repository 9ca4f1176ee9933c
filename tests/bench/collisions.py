"""Every sheet of random designs looked through for what stands in its way.

``python -m tests.bench.collisions [COUNT [SKIP]] [--all] [--plans] [--beside]``: COUNT designs, 200 if not
said, after SKIP others, each on one paper in one unit by turns, or with --all on every paper in every unit;
with --plans what is bought and how it is cut is planned too, with --beside it is offer, templates, labels and
the measuring sheet that are looked through instead of the packet. Prints every collision, then how many of
each kind there were; ends with 1 if there was any.
"""

from __future__ import annotations

import sys
from collections import Counter
from collections.abc import Iterator
from contextlib import contextmanager
from itertools import product
from time import monotonic
from traceback import format_exc
from typing import Any

from hypothesis.internal.conjecture.providers import HypothesisProvider

from app.outputs import build_offer_sheets
from app.stock_lists import read_shipped_list
from model.check.all import check_surround
from model.check.proportion import list_guides
from model.cutting.order import build_order
from model.cutting.plan import CuttingPlan, plan_order
from model.cutting.task import Effort, Steps
from model.job import Job, with_value
from model.parameters import UNITS
from model.surround import Surround, plan_surround
from model.takeoff.cut_list import list_cuts
from model.takeoff.takeoff import take_off
from render.drawing import Sheet
from render.label_sheet import build_label_sheets, list_labels
from render.label_stock import LEAST_LABEL, PAGES, STOCKS, LabelStock
from render.measuring_sheet import build_measuring_sheets
from render.packet import build_packet
from render.sheets import PAPERS
from render.template_pages import build_template_sheets
from tests.collisions import Collision, list_collisions
from tests.numbered import draw_numbered, read_slice
from tests.strategies import jobs

COUNT = 200
STEPS = 20
"""How far a cutting plan is looked for: what is drawn matters here and not what it costs."""
TURNS = tuple(product(PAPERS, UNITS))
TINY = tuple(
    LabelStock(paper, 3, 10, *LEAST_LABEL, 0.5, 0.5, LEAST_LABEL[0] + 0.1, LEAST_LABEL[1]) for paper in PAGES
)
"""The smallest labels that may be asked for."""
DATE = "2026-01-02"


def build_random_job(number: int) -> Job:
    """Any job in range, the same for a number in every run as long as the table of parameters is the same."""
    with _without_own_numbers():
        return draw_numbered(jobs(in_between=False), number)


@contextmanager
def _without_own_numbers() -> Iterator[None]:
    """Numbers that stand in the program's code are no more likely than others: with each edit they differ."""
    provider: Any = HypothesisProvider
    drawn = provider._maybe_draw_constant
    provider._maybe_draw_constant = lambda *_, **__: None
    try:
        yield
    finally:
        provider._maybe_draw_constant = drawn


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
            build_packet(
                surround,
                findings,
                guides,
                takeoff.cuts,
                paper,
                DATE,
                takeoff,
                plan and (lambda: (plan, None)),
            ),
        )


def lay_out_beside(job: Job, papers: tuple[str, ...]) -> Iterator[tuple[str, tuple[Sheet, ...]]]:
    """What is printed beside the packet of a job, on each of some papers; labels on all they are sold on."""
    surround = plan_surround(job)
    plan = _plan(job, surround)
    for paper in papers:
        yield f"{paper} offer", build_offer_sheets(job, paper, DATE, stock=plan)
        yield f"{paper} templates", build_template_sheets(surround, paper)
        yield f"{paper} measuring", build_measuring_sheets(paper, job.about.units)
    labels = list_labels(surround, list_cuts(surround))
    for name, stock in (*STOCKS.items(), *((f"tiny {stock.paper}", stock) for stock in TINY)):
        yield f"labels {name}", build_label_sheets(labels, stock, outlined=True)


def _plan(job: Job, surround: Surround) -> CuttingPlan:
    steps = Steps(STEPS)
    order = build_order([(job.about.name or "job", surround)], read_shipped_list())
    return plan_order(order, Effort(steps.are_over), lambda *_: steps.begin())


def look_through(
    job: Job, papers: tuple[str, ...], plans: bool = False, beside: bool = False
) -> Iterator[tuple[str, Collision]]:
    """Every collision on the sheets of a job, with its paper; on those `beside` its packet instead."""
    for paper, sheets in lay_out_beside(job, papers) if beside else lay_out(job, papers, plans):
        for sheet in sheets:
            for collision in list_collisions(sheet):
                yield paper, collision


def main() -> int:
    """Look through as many designs as the command line says."""
    count, skip = read_slice(COUNT)
    kinds: Counter[str] = Counter()
    start = monotonic()
    for number in range(skip, skip + count):
        for where, kind, words in _list_faults(number):
            kinds[kind] += 1
            print(f"{number} {where} {words}", flush=True)
    print(f"{count} designs in {monotonic() - start:.0f} s: {dict(kinds) or 'no collisions'}")
    return 1 if kinds else 0


def _list_faults(number: int) -> Iterator[tuple[str, str, str]]:
    """Where, of what kind and in words: what is wrong on the sheets of a design, or that there are none."""
    job = build_random_job(number)
    turns = TURNS if "--all" in sys.argv else (TURNS[number % len(TURNS)],)
    for units in dict.fromkeys(unit for _, unit in turns):
        papers = tuple(paper for paper, unit in turns if unit == units)
        counted = with_value(job, "job.units", units)
        try:
            for paper, collision in look_through(
                counted, papers, "--plans" in sys.argv, "--beside" in sys.argv
            ):
                yield f"{paper} {units}", collision.kind, str(collision)
        except Exception:  # whatever it is, it is told, and the other designs are looked through
            yield units, "not drawn", format_exc()


if __name__ == "__main__":
    sys.exit(main())
