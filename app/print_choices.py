"""What the print window may show of a job, and what sets the sheets of each out. No Qt."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import TYPE_CHECKING

from app.beside_packet import list_label_sheets
from app.outputs import build_offer_sheets, build_packet_sheets
from export.progress import Step
from model.job import Job
from model.options import named_alone

if TYPE_CHECKING:
    from model.cutting.plan import CuttingPlan
    from model.cutting.stock_list import StockList
    from render.drawing import Sheet

Build = Callable[[str, Step], "Sequence[Sheet]"]
"""Sets sheets out on a paper, by its name, and says how far it is."""
PACKET, OFFER, TEMPLATES = "The packet", "The offer", "Full-size templates"
LABELS, MEASURING = "Labels", "A blank measuring sheet"


def list_print_choices(
    job: Job, today: str, source: StockList | CuttingPlan, labels: str
) -> Mapping[str, Build]:
    """What may be printed by what it is called; `labels` names the label sheets that were last used.

    What is bought is planned out of `source`, or taken from it where it is a plan.
    """
    job = named_alone(job)
    return {
        PACKET: lambda paper, step: build_packet_sheets(job, paper, today, step, source),
        OFFER: lambda paper, step: build_offer_sheets(job, paper, today, step, source),
        TEMPLATES: lambda paper, _: _list_templates(job, paper),
        LABELS: lambda _paper, _step: _list_labels(job, labels),
        MEASURING: lambda paper, _: _list_measuring(job, paper),
    }


def _list_templates(job: Job, paper: str) -> Sequence[Sheet]:
    from model.surround import plan_surround
    from render.template_pages import build_template_sheets

    return build_template_sheets(plan_surround(job), paper)


def _list_labels(job: Job, labels: str) -> Sequence[Sheet]:
    from render.label_stock import STOCKS, USUAL

    return list_label_sheets(job, STOCKS.get(labels, STOCKS[USUAL]))


def _list_measuring(job: Job, paper: str) -> Sequence[Sheet]:
    from render.measuring_sheet import build_measuring_sheets

    return build_measuring_sheets(paper, job.about.units)
