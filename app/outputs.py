"""What a job leaves behind on disk besides itself: packet, drawing file and list. No window, no Qt.

What the files look like is the business of render and export, which are loaded when something is written.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING

from app.drawing_files import (
    UNTITLED,
    build_assembly_drawings,
    build_drawing,
    build_moulding_drawings,
)
from app.files import FileTrouble, describe_cause, save_bytes
from model.job import Job

if TYPE_CHECKING:
    from model.cutting.plan import CuttingPlan
    from model.cutting.stock_list import StockList
    from model.surround import Surround
    from model.takeoff.cut_list import Cut
    from model.takeoff.takeoff import Takeoff
    from render.drawing import Sheet

Step = Callable[[float, str], None]
"""Told how far it is, from 0 to 1, and what is being done. What it raises stops the work."""
PACKET, DRAWING, LIST, MATERIALS, SETTINGS = "packet", "drawing", "cut list", "materials", "saw settings"
BUYING, PLAN = "buying list", "cutting plan"
ASSEMBLIES, MOULDINGS, OFFER = "sub-assemblies", "mouldings", "offer"
PARTS = (PACKET, OFFER, DRAWING, ASSEMBLIES, MOULDINGS, LIST, MATERIALS, SETTINGS, BUYING, PLAN)
TEMPLATES = "templates"
CHOICES = (*PARTS, TEMPLATES)
"""What may be asked for: PARTS, and what not every job needs."""
FOLDERS = (ASSEMBLIES, MOULDINGS)
"""Parts that are a folder of drawing files."""
DRAWINGS = (DRAWING, *FOLDERS)
MOST_STEPS = 150
"""How far a cheaper cutting plan is looked for, for each material: about half a second. Steps, not seconds,
so that the same job gives the same packet; the packet says how good the plan is."""
SETTING_OUT = 0.35
"""How much of the work on the packet its sheets are."""
_UNSAFE = '<>:"/\\|?*'
_LONGEST_STEM = 60


@dataclass(frozen=True, slots=True)
class Output:
    """A file to be: its name, after that of its folder if it has one of its own, and what stands in it."""

    name: str
    data: bytes


def file_stem(job: Job) -> str:
    """The job's name, as far as every system lets it stand in a file's name."""
    words = "".join(" " if c in _UNSAFE or ord(c) < 32 else c for c in job.about.name)
    return " ".join(words.split())[:_LONGEST_STEM].strip(" .") or UNTITLED


def name_output(job: Job, part: str) -> str:
    """The name of the file that holds one of CHOICES, or of the folder."""
    endings = {PACKET: "packet.pdf", OFFER: "offer.pdf", DRAWING: "views.dxf", TEMPLATES: "templates.pdf"} | {
        part: part for part in FOLDERS
    }
    return f"{file_stem(job)} - {endings.get(part, f'{part}.csv')}"


def build_outputs(
    job: Job,
    paper: str,
    date_text: str,
    parts: tuple[str, ...] = PARTS,
    step: Step | None = None,
    stock: StockList | CuttingPlan | None = None,
    dxf_version: str = "R2010",
    tell_plan: Callable[[CuttingPlan], None] | None = None,
) -> tuple[Output, ...]:
    """Work out the files of `parts`; nothing is written to disk yet.

    What is bought and how it is cut is planned out of the list given as `stock`, the usual sizes without one,
    or taken from a plan of this job that is there already; `tell_plan` is told which plan it is. Drawing
    files are written in `dxf_version`.
    """
    from model.surround import plan_surround

    tell = step or _tell_nobody
    tell(0.0, "Working out the boards")
    surround = plan_surround(job)
    takeoff = cache(lambda: _take_off(surround))
    plan = cache(lambda: _plan_cutting(surround, stock, tell_plan))
    sheets: list[Sheet] = []
    made: list[Output] = []
    for i, part in enumerate(parts):
        share = _share(tell, i / len(parts), 1 / len(parts))
        if part in (PACKET, DRAWING, ASSEMBLIES) and not sheets:
            sheets += _build_sheets(
                surround, takeoff, plan, paper, date_text, _share(share, 0.0, SETTING_OUT)
            )
            share = _share(share, SETTING_OUT, 1 - SETTING_OUT)
        if part in FOLDERS:
            cuts = takeoff().cuts if part == ASSEMBLIES else ()
            made += _build_folder(part, surround, cuts, sheets, dxf_version, share)
            continue
        if part == TEMPLATES:
            made += _build_templates(surround, paper)
            continue
        if part == PACKET:
            data = _build_packet(surround, sheets, share)
        elif part == DRAWING:
            data = build_drawing(surround, takeoff().cuts, sheets, dxf_version, share).encode()
        elif part == OFFER:
            data = _build_offer(surround, takeoff, plan, paper, date_text, share)
        elif part in (BUYING, PLAN):
            data = _build_cutting(part, surround, plan, share)
        else:
            data = _build_list(part, surround, takeoff, share)
        made.append(Output(name_output(job, part), data))
    tell(1.0, "Writing the files")
    return tuple(made)


def build_packet_sheets(
    job: Job,
    paper: str,
    date_text: str,
    step: Step | None = None,
    stock: StockList | CuttingPlan | None = None,
) -> tuple[Sheet, ...]:
    """The packet's sheets themselves, to be shown or printed; `stock` as for `build_outputs`."""
    from model.surround import plan_surround

    tell = step or _tell_nobody
    tell(0.0, "Working out the boards")
    surround = plan_surround(job)
    return _build_sheets(
        surround,
        lambda: _take_off(surround),
        lambda: _find_plan(surround, stock),
        paper,
        date_text,
        tell,
    )


def write_outputs(folder: Path, outputs: tuple[Output, ...]) -> tuple[Path, ...]:
    """Write the files into `folder`, which is made if need be as are those in it.

    Raises FileTrouble for the first that fails.
    """
    paths = tuple(folder / output.name for output in outputs)
    for needed in dict.fromkeys((folder, *(path.parent for path in paths))):
        _make_folder(needed)
    for path, output in zip(paths, outputs, strict=True):
        save_bytes(path, output.data)
    return paths


def _make_folder(folder: Path) -> None:
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise FileTrouble(folder, "made", describe_cause(error), "Nothing was written.") from error


def _take_off(surround: Surround) -> Takeoff:
    from model.takeoff.takeoff import take_off

    return take_off(surround)


def _plan_cutting(
    surround: Surround,
    stock: StockList | CuttingPlan | None,
    tell_plan: Callable[[CuttingPlan], None] | None,
) -> CuttingPlan:
    plan = _find_plan(surround, stock)
    if tell_plan is not None:
        tell_plan(plan)
    return plan


def _find_plan(surround: Surround, stock: StockList | CuttingPlan | None) -> CuttingPlan:
    from app.stock_lists import read_shipped_list
    from model.cutting.order import build_order
    from model.cutting.plan import CuttingPlan, plan_order
    from model.cutting.task import Effort, Steps

    if isinstance(stock, CuttingPlan):
        return stock
    order = build_order([(file_stem(surround.job), surround)], stock or read_shipped_list())
    steps = Steps(MOST_STEPS)
    return plan_order(order, Effort(steps.are_over), lambda *_: steps.begin())


def _build_sheets(
    surround: Surround,
    takeoff: Callable[[], Takeoff],
    plan: Callable[[], CuttingPlan],
    paper: str,
    date_text: str,
    tell: Step,
) -> tuple[Sheet, ...]:
    """The packet's sheets, which the drawing file shows too, numbered alike."""
    from model.check.all import check_surround
    from model.check.proportion import list_guides
    from model.cutting.frozen import show_bought
    from render.packet import build_packet

    tell(0.0, "Checking")
    findings, guides = check_surround(surround), list_guides(surround)
    tell(0.15, "Taking off the materials")
    lists = takeoff()
    tell(0.3, "Planning what to buy and how to cut it")
    cutting = plan()
    bought = show_bought(surround.job.purchase, cutting.order)
    tell(0.8, "Setting out the sheets")
    return build_packet(surround, findings, guides, lists.cuts, paper, date_text, lists, cutting, bought)


def _build_templates(surround: Surround, paper: str) -> list[Output]:
    """Nothing where there is nothing to mark out."""
    from export.pdf import write_pdf
    from render.template_pages import build_template_sheets

    sheets = build_template_sheets(surround, paper)
    title = f"{surround.job.about.name or UNTITLED}: templates"
    data = write_pdf(sheets, title, surround.job.about.maker) if sheets else b""
    return [Output(name_output(surround.job, TEMPLATES), data)] if sheets else []


def _build_packet(surround: Surround, sheets: Sequence[Sheet], tell: Step) -> bytes:
    from export.pdf import write_pdf

    about = surround.job.about
    return write_pdf(
        sheets,
        about.name or UNTITLED,
        about.maker,
        progress=lambda done, of: tell(done / of, f"Writing sheet {min(done + 1, of)} of {of}"),
    )


def _build_offer(
    surround: Surround,
    takeoff: Callable[[], Takeoff],
    plan: Callable[[], CuttingPlan],
    paper: str,
    date_text: str,
    tell: Step,
) -> bytes:
    from export.pdf import write_pdf
    from model.cutting.buying import list_buying
    from model.price import count_hours, make_price
    from model.steps.plan import plan_steps
    from render.offer import TITLE, build_offer

    tell(0.0, "Writing the offer")
    about, shop = surround.job.about, surround.job.shop
    coats = shop.rates.primer_coats + shop.rates.top_coats
    hours = count_hours(plan_steps(surround, takeoff()), shop.times, coats)
    price = make_price(list_buying(plan()), shop.offer, hours)
    sheets = build_offer(surround, price, paper, date_text)
    return write_pdf(sheets, f"{about.name or UNTITLED}: {TITLE.lower()}", about.maker)


def _build_folder(
    part: str, surround: Surround, cuts: Sequence[Cut], sheets: Sequence[Sheet], dxf_version: str, tell: Step
) -> list[Output]:
    """Several drawing files in a folder of their own."""
    folder = name_output(surround.job, part)
    if part == ASSEMBLIES:
        drawn = build_assembly_drawings(surround, cuts, sheets, dxf_version, tell)
    else:
        drawn = build_moulding_drawings(surround, dxf_version, tell)
    return [Output(f"{folder}/{name}", text.encode()) for name, text in drawn]


def _build_list(part: str, surround: Surround, takeoff: Callable[[], Takeoff], tell: Step) -> bytes:
    from export.csv import write_cut_list_csv, write_materials_csv, write_settings_csv

    tell(0.0, f"Writing the {part}")
    lists, style = takeoff(), surround.job.about.length_style
    if part == MATERIALS:
        return write_materials_csv(lists.materials, style).encode()
    if part == SETTINGS:
        return write_settings_csv(lists.settings, lists.saw, style).encode()
    return write_cut_list_csv(lists.cuts, style).encode()


def _build_cutting(part: str, surround: Surround, plan: Callable[[], CuttingPlan], tell: Step) -> bytes:
    from export.cutting_csv import write_buying_csv, write_cutting_csv
    from model.cutting.buying import list_buying

    tell(0.0, f"Writing the {part}")
    style = surround.job.about.length_style
    if part == BUYING:
        return write_buying_csv(list_buying(plan()), style).encode()
    return write_cutting_csv(plan(), style).encode()


def _share(tell: Step, start: float, part: float) -> Step:
    """Tells of a part of the work as the part of the whole that it is."""
    return lambda done, words: tell(start + part * done, words)


def _tell_nobody(_done: float, _words: str) -> None:
    """Nobody watches."""
