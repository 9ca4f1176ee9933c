"""What each command does with a job. Arguments are read in app.cli; heavy modules load on use.

What is wrong with a job, a wish or a file is raised as a MantelwrightError, and said by app.cli.
"""

from __future__ import annotations

import json
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any

from app.demo import list_demos, names_demo, read_demo
from app.files import JOB_SUFFIX, FileTrouble, open_job_file, save_bytes, save_job_file
from app.outputs import OFFER, PARTS, build_outputs, write_outputs
from app.terminal import Terminal
from app.view_file import ViewWish, build_view_file
from model.errors import JobRefused, Refused
from model.job import Job, read_value, with_texts
from model.options import find_option, named_alone, take_up
from model.parameters import BY_PATH
from model.units import format_length

if TYPE_CHECKING:
    from app.cure_records import Cured
    from app.second_process import SecondProcess
    from model.check.finding import Finding
    from model.cutting.plan import CuttingPlan
    from model.cutting.stock_list import StockList
    from model.surround import Surround

DONE, FAILS, REFUSED, DISK, BROKEN = range(5)
"""Exit codes, the worse the higher: FAILS says that a check fails, REFUSED that the input is refused,
DISK that the disk failed, BROKEN that the program itself failed on one of several jobs."""
DEPTH, OVERHANG = "shelf.depth", "shelf.overhang_front"


@dataclass(frozen=True, slots=True)
class SheetWish:
    """The paper that sheets are laid on, their date, and the version that drawing files are written in."""

    paper: str
    date: str
    dxf_version: str


def read_job_named(name: str, settings: Sequence[str], terminal: Terminal, option: str = "") -> Job:
    """The job file or else the shipped job called `name`, with ``path=value`` settings made in its `option`,
    or in the one in work where none is named.

    Raises Refused or JobRefused for whatever is wrong with it, a file that cannot be opened included.
    """
    if names_demo(name):
        job = read_demo(name)
    else:
        path = Path(name)
        try:
            job, missing = open_job_file(path)
        except JobRefused as refusal:
            raise JobRefused(tuple(f"{path}: {fault}" for fault in refusal.faults)) from None
        except FileTrouble as trouble:
            raise JobRefused((str(trouble),)) from trouble
        if missing:
            terminal.warn(missing)
    if option:
        job = take_up(job, find_option(job, option))
    pairs = [_split_setting(setting) for setting in settings]
    changed = with_texts(job, pairs)
    _tell_what_governs(changed, pairs, terminal)
    return changed


def carry_photo_of(name: str, job: Job, terminal: Terminal) -> Job:
    """The job read as `name` with its photo in it, for what is put on paper; told where it is not there."""
    from app.photo_carried import carry_photo

    carried, trouble = carry_photo(job, None if names_demo(name) else Path(name).parent)
    if trouble:
        terminal.warn(trouble)
    return carried


def _split_setting(setting: str) -> tuple[str, str]:
    path, equals, text = setting.partition("=")
    if not equals:
        raise Refused("--set", setting, "write path=value, such as opening.width=36")
    return path.strip(), text


def _tell_what_governs(job: Job, pairs: Sequence[tuple[str, str]], terminal: Terminal) -> None:
    """Say so when the shelf's depth and its overhang were both set and cannot both hold."""
    given = dict(pairs)
    if DEPTH not in given or OVERHANG not in given:
        return
    style = job.about.length_style
    wanted, built = BY_PATH[OVERHANG].parse(given[OVERHANG]), read_value(job, OVERHANG)
    if wanted != built:
        terminal.warn(
            f"{DEPTH} governs: {OVERHANG} is {format_length(built, style)}, "
            f"not {format_length(float(str(wanted)), style)}"
        )


def run_packet(
    job: Job,
    out: Path,
    sheets: SheetWish,
    terminal: Terminal,
    stock_list: StockList | None = None,
    parts: tuple[str, ...] = PARTS,
    noted: Path | None = None,
    second: SecondProcess | None = None,
) -> int:
    """Write packet, drawing files and lists, or those `parts` alone, into the folder `out`; say which.

    What their buying list asks for is then noted in the job file `noted`. With a `second` process both work.
    """
    from app.bought_boards import note_list
    from render.sheets import paper_size

    paper_size(sheets.paper)
    plans: list[CuttingPlan] = []
    outputs = build_outputs(
        job,
        sheets.paper,
        sheets.date,
        parts,
        terminal.show_progress,
        stock_list,
        sheets.dxf_version,
        plans.append,
        second,
    )
    terminal.say_all(str(path) for path in write_outputs(out, outputs))
    if noted is not None and plans:
        note_list(noted, plans[0])
        terminal.warn(f"noted in {noted}: what the buying list asks for")
    return DONE


def run_check(
    job: Job, form: str, terminal: Terminal, with_cures: bool = False, explained: bool = False
) -> int:
    """Say what the checks find, and what would cure it where that is asked for; FAILS when one fails."""
    from app.cure_records import cure_lines, explanation_lines
    from app.records import check_lines, guide_record
    from model.check.all import check_surround
    from model.check.finding import Status
    from model.check.proportion import list_guides
    from model.surround import plan_surround

    surround = plan_surround(job)
    findings, guides = check_surround(surround), list_guides(surround)
    code = FAILS if any(finding.status is Status.FAIL for finding in findings) else DONE
    style = job.about.length_style
    if form == "csv":
        from export.record_csv import write_checks_csv

        terminal.say_all(write_checks_csv(findings, guides, style).splitlines())
        return code
    cured = _list_cured(surround, findings) if with_cures else []
    if form == "json":
        records = _list_records(surround, findings, cured, explained)
        records += [guide_record(guide, style) for guide in guides]
        terminal.say(json.dumps(records, indent=2))
    else:
        terminal.say_all(cure_lines(cured, style))
        if explained:
            terminal.say_all(explanation_lines(surround, findings))
        terminal.say_all(check_lines(findings, guides, style))
    return code


def _list_cured(surround: Surround, findings: Sequence[Finding]) -> Cured:
    """Each finding that is over or close with its cures."""
    from model.check.finding import Status
    from model.check.remedy import find_remedies

    wanting = [f for f in findings if f.status in (Status.FAIL, Status.WARN)]
    return [(finding, find_remedies(surround, finding)) for finding in wanting]


def _list_records(
    surround: Surround, findings: Sequence[Finding], cured: Cured, explained: bool
) -> list[dict[str, Any]]:
    """Findings for a script, each with its cures and its explanation where they are asked for."""
    from app.cure_records import cure_record, explanation_record
    from app.records import finding_record

    style = surround.job.about.length_style
    records = [finding_record(finding) for finding in findings]
    for finding, remedies in cured:
        records[findings.index(finding)]["cures"] = [cure_record(remedy, style) for remedy in remedies]
    if explained:
        for record, finding in zip(records, findings, strict=True):
            record["explained"] = explanation_record(surround, finding)
    return records


def run_start(job: Job, out: Path, guide: str, terminal: Terminal) -> int:
    """Write a job whose design is sized from its measurements alone; say what of it is still over."""
    from model.check.first_design import GUIDES, size_first_design

    if guide not in GUIDES:
        raise Refused("--guide", guide, f"write one of {', '.join(GUIDES)}")
    _demand_ending("--out", out, JOB_SUFFIX)
    first = size_first_design(job, guide)
    if first is None:
        raise Refused(
            "governing rules", job.site.rule, "choose rules, or enter the chart, that give clearances"
        )
    save_job_file(out, first.job)
    terminal.say(str(out))
    terminal.say_all(finding.message for finding in first.left)
    return DONE


def run_fixing(job: Job, form: str, terminal: Terminal) -> int:
    """Say where the anchors go, what they carry, which holes cords take and in which order it goes up."""
    from app.fixing_records import fixing_lines, fixing_record
    from model.surround import plan_surround

    surround = plan_surround(job)
    if form == "json":
        terminal.say(json.dumps(fixing_record(surround), indent=2))
    elif form == "csv":
        from export.work_csv import write_anchors_csv

        terminal.say_all(write_anchors_csv(surround).splitlines())
    else:
        terminal.say_all(fixing_lines(surround))
    return DONE


def run_work(job: Job, what: str, form: str, terminal: Terminal) -> int:
    """Say the assembly steps (``steps``) or the day plan (``days``)."""
    from app import work_records
    from export.work_csv import write_days_csv, write_steps_csv
    from model.days.plan import plan_days
    from model.steps.plan import plan_steps
    from model.surround import plan_surround
    from model.takeoff.takeoff import take_off

    surround = plan_surround(job)
    taken = take_off(surround)
    if what == "days":
        plan = plan_days(surround, taken)
        csv_text, lines = write_days_csv(plan), work_records.day_lines(plan)
        record = work_records.list_day_records(plan)
    else:
        steps = (plan_steps(surround, taken), surround, taken)
        csv_text, lines = write_steps_csv(*steps), work_records.step_lines(*steps)
        record = work_records.list_step_records(*steps)
    if form == "json":
        terminal.say(json.dumps(record, indent=2))
    else:
        terminal.say_all(csv_text.splitlines() if form == "csv" else lines)
    return DONE


def run_materials(job: Job, form: str, terminal: Terminal) -> int:
    """Say what is used up, what it was measured on, what it weighs and how the saw is set."""
    from app.takeoff_records import takeoff_lines, takeoff_record
    from model.surround import plan_surround
    from model.takeoff.takeoff import take_off

    surround = plan_surround(job)
    takeoff = take_off(surround)
    if form == "json":
        terminal.say(json.dumps(takeoff_record(surround, takeoff), indent=2))
    elif form == "csv":
        from export.csv import write_materials_csv

        terminal.say_all(write_materials_csv(takeoff.materials, job.about.length_style).splitlines())
    else:
        terminal.say_all(takeoff_lines(surround, takeoff))
    return DONE


def run_boards(job: Job, form: str, mesh: Path | None, terminal: Terminal) -> int:
    """Say the cut list as ``json``, ``csv`` or in words; with `mesh` write the boards there as well.

    With `mesh` and no form only the mesh's path is said.
    """
    from app.records import cut_lines, cut_record
    from model.surround import plan_surround
    from model.takeoff.cut_list import list_cuts
    from model.takeoff.surfaces import list_surfaces

    if mesh is not None:
        _demand_ending("--mesh", mesh, ".obj")
    surround = plan_surround(job)
    if mesh is not None:
        from export.mesh import write_obj

        save_bytes(mesh, write_obj(surround).encode())
        terminal.say_all([str(mesh)] if not form else [])
    cuts = list_cuts(surround, list_surfaces(surround) if form or mesh is None else None)
    if form == "json":
        terminal.say(json.dumps([cut_record(cut) for cut in cuts], indent=2))
    elif form == "csv":
        from export.csv import write_cut_list_csv

        terminal.say_all(write_cut_list_csv(cuts, job.about.length_style).splitlines())
    elif mesh is None:
        terminal.say_all(cut_lines(cuts, job.about.length_style))
    return DONE


def run_draw(job: Job, wish: ViewWish, date_text: str, terminal: Terminal) -> int:
    """Write one drawing to the file it is wished in; say which."""
    save_bytes(wish.out, build_view_file(job, wish, date_text))
    terminal.say(str(wish.out))
    return DONE


def run_views(job: Job, terminal: Terminal) -> int:
    """Say which drawings there are of the job."""
    from app.records import table_lines
    from app.view_file import list_views

    terminal.say_all(table_lines(("Name", "Drawing"), list_views(job)))
    return DONE


@dataclass(frozen=True, slots=True)
class LabelWish:
    """Labels by `name`, or of one's `own`: paper, size, grid, edges and pitch as typed, empty where not."""

    out: Path
    name: str
    own: tuple[str, str, str, str, str]
    start: int
    outlined: bool


def run_labels(job: Job, wish: LabelWish, terminal: Terminal) -> int:
    """Write a label for every board; say where."""
    from app.beside_packet import build_labels_pdf
    from render.label_stock import USUAL, find_stock, parse_stock

    paper, size, grid, edges, pitch = wish.own
    is_own = any(wish.own)
    if is_own and wish.name:
        raise Refused("--labels", wish.name, "give a name or a size of your own, not both")
    if is_own:
        stock = parse_stock(paper or "letter", size, grid, edges, pitch)
    else:
        stock = find_stock(wish.name or USUAL)
    save_bytes(_pdf_path(wish.out), build_labels_pdf(job, stock, wish.start, wish.outlined))
    terminal.say(str(wish.out))
    return DONE


def run_offer(
    job: Job,
    out: Path,
    paper: str,
    date_text: str,
    terminal: Terminal,
    stock_list: StockList | None = None,
) -> int:
    """Write the homeowner's offer; say where."""
    path = _pdf_path(out)
    (output,) = build_outputs(job, paper, date_text, (OFFER,), terminal.show_progress, stock_list)
    save_bytes(path, output.data)
    terminal.say(str(path))
    return DONE


def run_templates(job: Job, out: Path, paper: str, terminal: Terminal) -> int:
    """Write full-size templates; say where."""
    from app.beside_packet import build_templates_pdf

    save_bytes(_pdf_path(out), build_templates_pdf(job, paper))
    terminal.say(str(out))
    return DONE


def run_measuring(out: Path, paper: str, units: str, terminal: Terminal) -> int:
    """Write a blank sheet to measure with; say where."""
    from app.beside_packet import build_measuring_pdf

    save_bytes(_pdf_path(out), build_measuring_pdf(paper, units))
    terminal.say(str(out))
    return DONE


def _pdf_path(out: Path) -> Path:
    _demand_ending("--out", out, ".pdf")
    return out


def _demand_ending(option: str, out: Path, suffix: str) -> None:
    """Raises Refused: a name that ends otherwise may be that of a file of another kind."""
    if out.suffix.lower() != suffix:
        raise Refused(option, str(out), f"write the name of a {suffix} file")


def run_demos(terminal: Terminal) -> int:
    """Say which jobs are shipped, and what each is called."""
    from app.records import table_lines

    rows = [(name, read_demo(name).about.name) for name in list_demos()]
    terminal.say_all(table_lines(("Name", "Job (invented)"), rows))
    return DONE


def run_parameters(terminal: Terminal, pictures: Path | None, name: str, settings: Sequence[str] = ()) -> int:
    """Say every path that may be set; with `pictures` draw there what each measures on the job `name`."""
    from app.records import parameter_lines

    if pictures is not None:
        from app.field_pictures import build_field_pictures
        from app.outputs import write_outputs

        job = named_alone(read_job_named(name, settings, terminal))
        terminal.say_all(str(path) for path in write_outputs(pictures, build_field_pictures(job)))
        return DONE
    terminal.say_all(parameter_lines())
    return DONE
