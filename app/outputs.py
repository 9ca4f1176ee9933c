"""What a job leaves behind on disk besides itself: packet, drawing file and list. No window, no Qt.

What the files look like is the business of render and export, which are loaded when something is written.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from app.drawing_files import USUAL_VERSION, build_drawing, build_moulding_drawings
from app.files import FileTrouble, describe_cause, save_together
from app.making import Making, load_planners, share, tell_nobody
from app.second_process import SecondProcess, open_second
from app.sweeping import unswept
from export.progress import Step
from model.job import UNTITLED, Job
from model.options import named_alone

if TYPE_CHECKING:
    from model.cutting.plan import CuttingPlan
    from model.cutting.stock_list import StockList
    from render.drawing import Sheet

PACKET, DRAWING, LIST, MATERIALS, SETTINGS = "packet", "drawing", "cut list", "materials", "saw settings"
BUYING, PLAN = "buying list", "cutting plan"
STEPS, DAYS, FINISHING, ANCHORS = "assembly steps", "day plan", "finishing", "anchors"
CHECKS, SITE = "checks", "site record"
ASSEMBLIES, MOULDINGS, OFFER, TEMPLATES = "sub-assemblies", "mouldings", "offer", "templates"
"""What may be asked for, by the name it has on the command line; OUTPUTS below says what each is."""
DRAWINGS = (DRAWING, ASSEMBLIES, MOULDINGS)
SHARED = frozenset({PACKET, DRAWING})
"""What is so much work that two processes are sooner done with it."""
_UNSAFE = '<>:"/\\|?*'
_LONGEST_STEM = 60
_MOST_STEM_BYTES = 180
"""Of the 255 that a file system gives a name, which leaves room for what each file's name ends with."""


@dataclass(frozen=True, slots=True)
class Output:
    """A file to be: its name, after that of its folder if it has one of its own, and what stands in it."""

    name: str
    data: bytes


def file_stem(job: Job) -> str:
    """The job's name, as far as every system lets it stand in a file's name."""
    words = "".join(" " if c in _UNSAFE or ord(c) < 32 else c for c in job.about.name)
    stem = " ".join(words.split())[:_LONGEST_STEM]
    return stem.encode()[:_MOST_STEM_BYTES].decode(errors="ignore").strip(" .") or UNTITLED


def name_output(job: Job, part: str) -> str:
    """The name of the file that holds one of CHOICES, or of the folder; of several options it says which."""
    return f"{file_stem(named_alone(job))} - {OUTPUTS[part].ends or part}"


def build_outputs(
    job: Job,
    paper: str,
    date_text: str,
    parts: tuple[str, ...] | None = None,
    step: Step | None = None,
    stock: StockList | CuttingPlan | None = None,
    dxf_version: str = USUAL_VERSION,
    tell_plan: Callable[[CuttingPlan], None] | None = None,
    second: SecondProcess | None = None,
) -> tuple[Output, ...]:
    """Work out the files of `parts`, of PARTS where nothing is said; nothing is written to disk yet.

    What is bought and how it is cut is planned out of the list given as `stock`, the usual sizes without one,
    or taken from a plan of this job that is there already; `tell_plan` is told which plan it is. Drawing
    files are written in `dxf_version`. A part of the work is done by `second` meanwhile, where there is one.
    `step` is told how far it is and may raise to end it. Raises Refused for another `paper`.
    """
    tell = step or tell_nobody
    tell(0.0, "Working out the boards")
    made: list[Output] = []
    parts = PARTS if parts is None else parts
    with unswept():
        making = Making(file_stem(job), named_alone(job), paper, date_text, stock, dxf_version, tell_plan)
        if second is not None and SHARED & set(parts):
            making.share_with(second, ASSEMBLIES in parts)
        for i, part in enumerate(parts):
            part_told = share(tell, i / len(parts), 1 / len(parts))
            part_told(0.0, f"Writing the {part}")
            made += _build_part(making, part, part_told)
    tell(1.0, "Writing the files")
    return tuple(made)


@contextmanager
def open_second_for(parts: tuple[str, ...]) -> Iterator[SecondProcess | None]:
    """A second process for `build_outputs`, which gets ready at once; None where it had nothing to do."""
    with open_second(bool(SHARED & set(parts))) as second:
        if second is not None:
            second.ask(load_planners)
        yield second


def build_packet_sheets(
    job: Job,
    paper: str,
    date_text: str,
    step: Step | None = None,
    stock: StockList | CuttingPlan | None = None,
) -> tuple[Sheet, ...]:
    """The packet's sheets themselves, to be shown or printed; `stock` as for `build_outputs`."""
    tell = step or tell_nobody
    tell(0.0, "Working out the boards")
    return Making(file_stem(job), named_alone(job), paper, date_text, stock).build_sheets(tell)


def build_offer_sheets(
    job: Job,
    paper: str,
    date_text: str,
    step: Step | None = None,
    stock: StockList | CuttingPlan | None = None,
) -> tuple[Sheet, ...]:
    """The offer's sheets, to be shown or printed; `stock` as for `build_outputs`."""
    tell = step or tell_nobody
    tell(0.0, "Working out the price")
    return Making(file_stem(job), named_alone(job), paper, date_text, stock).build_offer()


def write_outputs(folder: Path, outputs: tuple[Output, ...]) -> tuple[Path, ...]:
    """Write the files into `folder`, which is made if need be as are those in it.

    All or none of them take their places where the disk is full. Raises FileTrouble for the first that fails.
    """
    paths = tuple(folder / output.name for output in outputs)
    for needed in dict.fromkeys((folder, *(path.parent for path in paths))):
        _make_folder(needed)
    save_together([(path, output.data) for path, output in zip(paths, outputs, strict=True)])
    return paths


def _make_folder(folder: Path) -> None:
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise FileTrouble(folder, "made", describe_cause(error), "Nothing was written.") from error


def _build_part(making: Making, part: str, tell: Step) -> Iterator[Output]:
    """The file of one of CHOICES, the files of its folder, or none where the job has nothing of it."""
    name, built = name_output(making.job, part), OUTPUTS[part].build(making, tell)
    if not isinstance(built, bytes):
        for own_name, text in built:
            yield Output(f"{name}/{own_name}", text.encode())
    elif built:
        yield Output(name, built)


def _build_packet(making: Making, tell: Step) -> bytes:
    from export.pdf import write_pdf

    sheets, tell = making.set_out(tell)
    return write_pdf(
        sheets,
        making.job.about.title,
        making.job.about.maker,
        progress=lambda done, of: tell(done / of, f"Writing sheet {min(done + 1, of)} of {of}"),
    )


def _build_offer(making: Making, _tell: Step) -> bytes:
    from export.pdf import write_pdf
    from render.offer import TITLE

    about = making.job.about
    return write_pdf(making.build_offer(), f"{about.title}: {TITLE.lower()}", about.maker)


def _build_templates(making: Making, _tell: Step) -> bytes:
    """Nothing where there is nothing to mark out."""
    from export.pdf import write_pdf
    from render.template_pages import build_template_sheets

    sheets = build_template_sheets(making.surround, making.paper)
    title = f"{making.job.about.title}: {TEMPLATES}"
    return write_pdf(sheets, title, making.job.about.maker) if sheets else b""


def _build_views(making: Making, tell: Step) -> bytes:
    sheets, tell = making.set_out(tell)
    return build_drawing(making.surround, making.takeoff.cuts, sheets, making.dxf_version, tell).encode()


def _build_assemblies(making: Making, tell: Step) -> Iterable[tuple[str, str]]:
    return making.build_assemblies(tell)


def _build_mouldings(making: Making, tell: Step) -> Iterator[tuple[str, str]]:
    return build_moulding_drawings(making.surround, making.dxf_version, tell)


def _build_cut_list(making: Making, _tell: Step) -> bytes:
    from export.csv import write_cut_list_csv

    return write_cut_list_csv(making.takeoff.cuts, making.style).encode()


def _build_materials(making: Making, _tell: Step) -> bytes:
    from export.csv import write_materials_csv

    return write_materials_csv(making.takeoff.materials, making.style).encode()


def _build_settings(making: Making, _tell: Step) -> bytes:
    from export.csv import write_settings_csv

    return write_settings_csv(making.takeoff.settings, making.takeoff.saw, making.style).encode()


def _build_buying(making: Making, _tell: Step) -> bytes:
    from export.cutting_csv import write_buying_csv
    from model.cutting.buying import list_buying
    from model.takeoff.materials import list_fastened

    fastened = list_fastened(making.takeoff.materials)
    return write_buying_csv(list_buying(making.plan), making.style, fastened).encode()


def _build_plan(making: Making, _tell: Step) -> bytes:
    from export.cutting_csv import write_cutting_csv

    bought = (making.bought,) if making.bought is not None else ()
    return write_cutting_csv(making.plan, making.style, bought).encode()


def _build_steps(making: Making, _tell: Step) -> bytes:
    from export.work_csv import write_steps_csv
    from model.steps.plan import plan_steps

    steps = plan_steps(making.surround, making.takeoff)
    return write_steps_csv(steps, making.surround, making.takeoff).encode()


def _build_days(making: Making, _tell: Step) -> bytes:
    from export.work_csv import write_days_csv
    from model.days.plan import plan_days

    return write_days_csv(plan_days(making.surround, making.takeoff)).encode()


def _build_finishing(making: Making, _tell: Step) -> bytes:
    from export.work_csv import write_finishing_csv
    from model.steps.finishing import list_finishing

    finishing = list_finishing(making.job, making.takeoff.materials)
    return write_finishing_csv(finishing, making.style).encode()


def _build_anchors(making: Making, _tell: Step) -> bytes:
    from export.work_csv import write_anchors_csv

    return write_anchors_csv(making.surround).encode()


def _build_checks(making: Making, _tell: Step) -> bytes:
    from export.record_csv import write_checks_csv

    return write_checks_csv(making.findings, making.guides, making.style).encode()


def _build_site(making: Making, _tell: Step) -> bytes:
    from export.record_csv import write_site_csv

    return write_site_csv(making.surround.asked or making.job).encode()


@dataclass(frozen=True, slots=True)
class OutputKind:
    """How a file's name ends, "" for a folder of files; what builds it, and in which words it is offered.

    `always` says that it is written where nothing else is asked for; what is not is of no use to every job.
    """

    ends: str
    build: Callable[[Making, Step], bytes | Iterable[tuple[str, str]]]
    words: str
    always: bool = True


OUTPUTS: dict[str, OutputKind] = {
    PACKET: OutputKind(
        "packet.pdf",
        _build_packet,
        "The packet: elevations, sections, checks, lists and cutting plans, true to scale (PDF)",
    ),
    OFFER: OutputKind(
        "offer.pdf",
        _build_offer,
        "The offer for the homeowner: picture, sizes, price, a place to sign (PDF)",
    ),
    DRAWING: OutputKind(
        "views.dxf", _build_views, "All views and the packet's sheets, for a drawing program (DXF)"
    ),
    ASSEMBLIES: OutputKind("", _build_assemblies, "Each sub-assembly alone, in a folder (DXF)"),
    MOULDINGS: OutputKind("", _build_mouldings, "Each moulding's section at full size, in a folder (DXF)"),
    TEMPLATES: OutputKind(
        "templates.pdf",
        _build_templates,
        "Full-size templates of mouldings, notches and holes, to lay on the wood (PDF)",
        always=False,
    ),
    LIST: OutputKind("cut list.csv", _build_cut_list, "Cut list"),
    MATERIALS: OutputKind("materials.csv", _build_materials, "Materials"),
    SETTINGS: OutputKind("saw settings.csv", _build_settings, "Saw settings"),
    BUYING: OutputKind("buying list.csv", _build_buying, "Buying list"),
    PLAN: OutputKind("cutting plan.csv", _build_plan, "Cutting plan"),
    STEPS: OutputKind("assembly steps.csv", _build_steps, "Assembly steps"),
    DAYS: OutputKind("day plan.csv", _build_days, "Day plan"),
    ANCHORS: OutputKind("anchors.csv", _build_anchors, "Anchors"),
    FINISHING: OutputKind("finishing.csv", _build_finishing, "Finishing"),
    CHECKS: OutputKind("checks.csv", _build_checks, "Checks"),
    SITE: OutputKind("site record.csv", _build_site, "Site record"),
}
"""All that can be written, in the order in which it is offered and written."""
CHOICES = tuple(OUTPUTS)
"""What may be asked for."""
PARTS = tuple(part for part, kind in OUTPUTS.items() if kind.always)
"""What is written where nothing was said."""
LISTS = tuple(part for part, kind in OUTPUTS.items() if kind.ends.endswith(".csv"))
"""Tables for a spreadsheet."""
