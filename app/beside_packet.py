"""Documents that go beside the packet, as bytes: labels, templates, and a sheet to measure with."""

from __future__ import annotations

from typing import TYPE_CHECKING

from app.outputs import TEMPLATES, build_outputs, file_stem
from model.errors import Refused
from model.job import Job
from model.options import named_alone

if TYPE_CHECKING:
    from render.drawing import Sheet
    from render.label_stock import LabelStock

LABELS_TITLE, MEASURING_TITLE = "Labels", "Measuring sheet"


def name_labels(job: Job) -> str:
    """The name of the file that labels are written into."""
    return f"{file_stem(named_alone(job))} - labels.pdf"


def build_labels_pdf(job: Job, stock: LabelStock, start: int = 1, outlined: bool = False) -> bytes:
    """A label for every board of `job`. Raises Refused for a `start` that is not on the sheet."""
    from export.pdf import write_pdf

    job = named_alone(job)
    sheets = list_label_sheets(job, stock, start, outlined)
    return write_pdf(sheets, f"{job.about.title}: {LABELS_TITLE.lower()}", job.about.maker)


def list_label_sheets(
    job: Job, stock: LabelStock, start: int = 1, outlined: bool = False
) -> tuple[Sheet, ...]:
    """The same as sheets. Raises Refused as `build_labels_pdf` does."""
    from model.surround import plan_surround
    from model.takeoff.cut_list import list_cuts
    from render.label_sheet import build_label_sheets, list_labels

    surround = plan_surround(job)
    labels = list_labels(surround, list_cuts(surround))
    return build_label_sheets(labels, stock, start, outlined)


def build_measuring_pdf(paper: str, units: str) -> bytes:
    """A blank sheet for the sizes of a fireplace. Raises Refused for another paper."""
    from export.pdf import write_pdf
    from render.measuring_sheet import build_measuring_sheets

    return write_pdf(build_measuring_sheets(paper, units), MEASURING_TITLE)


def build_templates_pdf(job: Job, paper: str) -> bytes:
    """Full-size templates for what is moulded, notched, bored or cut askew in `job`.

    Raises Refused for another paper, and where there is nothing of the kind in the job.
    """
    outputs = build_outputs(job, paper, "", (TEMPLATES,))
    if not outputs:
        raise Refused(TEMPLATES, job.about.name, "this job has nothing that a template is laid on for")
    return outputs[0].data
