"""What the commands for mouldings do: the library or a job's own, printed, on paper or as drawing files."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from app.drawing_files import USUAL_VERSION, name_drawing
from app.files import FileTrouble, describe_cause, save_bytes, save_together
from app.section_file import read_section_file
from app.terminal import Terminal
from model.errors import Refused
from model.job import Job, default_job
from model.moulding.library import SECTIONS, USES
from model.moulding.notation import format_section
from model.units import format_length

if TYPE_CHECKING:
    from model.surround import Surround
    from render.moulding_sheet import Entry

PDF_SUFFIX, DXF_SUFFIX = ".pdf", ".dxf"
LIBRARY = "Mouldings"


@dataclass(frozen=True, slots=True)
class MouldingWish:
    """What to make of a job's mouldings, of the library where `job` is None; `out`, `dxf` may be None.

    `corner` is what the corners measure, degrees, where that is not what was drawn.
    """

    job: Job | None
    out: Path | None
    dxf: Path | None
    paper: str
    date: str
    corner: float | None = None
    dxf_version: str = USUAL_VERSION


def run_mouldings(wish: MouldingWish, terminal: Terminal) -> int:
    """Say the mouldings, or write them: full size on sheets, or one drawing file each."""
    from render.moulding_sheet import list_library, list_used

    job = wish.job or default_job()
    style = job.about.length_style
    surround = _plan(wish.job)
    entries = list_used(surround.layout.mouldings, style) if surround else list_library(style)
    if wish.out is None and wish.dxf is None:
        terminal.say_all(_list_lines(entries, job, of_library=surround is None))
        terminal.say_all(_list_settings(surround, wish.corner) if surround else ())
        return 0
    written = []
    if wish.out is not None:
        if wish.out.suffix.lower() != PDF_SUFFIX:
            raise Refused("--out", str(wish.out), "write the name of a .pdf file")
        save_bytes(wish.out, build_sheets_pdf(entries, wish.job, wish.paper, wish.date))
        written.append(wish.out)
    if wish.dxf is not None:
        written += _write_drawings(entries, wish.dxf, wish.dxf_version)
    terminal.say_all(str(path) for path in written)
    return 0


def _plan(job: Job | None) -> Surround | None:
    if job is None:
        return None
    from model.surround import plan_surround

    return plan_surround(job)


def _list_settings(surround: Surround, corner: float | None) -> Iterator[str]:
    """The mitre saw's settings, each with the ends that are cut so."""
    from model.takeoff.saw_angles import format_degrees
    from model.takeoff.saw_setups import list_setups
    from render.saw_sheet import HOW

    setups = list_setups(surround, corner)
    if setups:
        where = f" for corners of {format_degrees(corner)}" if corner else ""
        yield from ("", f"Mitre saw settings{where}", HOW)
    for setup in setups:
        first, *others = (f"{setting.lie}, {setting.describe()}" for setting in setup.settings)
        yield "; ".join(ends.describe() for ends in setup.ends)
        yield f"    {first}"
        yield from (f"    or {other}" for other in others)


def _list_lines(entries: Sequence[Entry], job: Job, of_library: bool) -> list[str]:
    from app.records import table_lines
    from render.moulding_sheet import describe_back, section_style

    style = section_style(job.about.length_style)
    keys = list(SECTIONS) if of_library else [entry.heading for entry in entries]
    rows: list[tuple[str, ...]] = []
    for key, entry in zip(keys, entries, strict=True):
        section = entry.section
        uses = ", ".join(use for use, offered in USES.items() if key in offered)
        sizes = [format_length(size, style) for size in (section.height, section.projection)]
        rows.append((key, section.name, *sizes, describe_back(section, style), uses))
    if of_library:
        return list(table_lines(("Word", "Section", "High", "Out", "Back", "For"), rows))
    return list(table_lines(("Place", "Section", "High", "Out", "Back"), [row[:-1] for row in rows]))


def build_sheets_pdf(entries: Sequence[Entry], job: Job | None, paper: str, date_text: str) -> bytes:
    """A PDF of `entries` full size: a job's, or the library's where `job` is None. Raises Refused."""
    from export.pdf import write_pdf
    from model.parameters import UNITS
    from render.moulding_sheet import build_moulding_sheets
    from render.scales import list_scales
    from render.title_block import TitleBlock

    about = (job or default_job()).about
    name = LIBRARY if job is None else about.name or LIBRARY
    block = TitleBlock(
        job=name,
        client=about.client,
        maker=about.maker,
        date=date_text,
        title="Moulding library, full size" if job is None else "Mouldings, full size",
        number="",
        scale=list_scales(about.units)[0].name,
        units=UNITS[about.units],
        revision=about.revision,
    )
    sheets = build_moulding_sheets(entries, paper, block, about.length_style)
    return write_pdf(sheets, f"{name}: {block.title}")


def _write_drawings(entries: Sequence[Entry], folder: Path, version: str) -> list[Path]:
    """One drawing file for each section, named after it, and after its place where a job has one twice."""
    from export.section_dxf import write_section_dxf

    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise FileTrouble(folder, "made", describe_cause(error), "Nothing was written.") from error
    files = []
    for entry in entries:
        name = (
            entry.heading
            if entry.heading == entry.section.name
            else f"{entry.heading} - {entry.section.name}"
        )
        files.append((folder / name_drawing(name), write_section_dxf(entry.section, version).encode()))
    save_together(files)
    return [path for path, _ in files]


def run_section(name: str, units: str, out: Path | None, terminal: Terminal) -> int:
    """Say a section as text: the one in a drawing or text file, or a shipped one by its word.

    With `out` write it as a drawing file as well.
    """
    section = SECTIONS[name].section if name in SECTIONS else read_section_file(Path(name), units)
    if out is not None:
        if out.suffix.lower() != DXF_SUFFIX:
            raise Refused("--out", str(out), "write the name of a .dxf file")
        from export.section_dxf import write_section_dxf

        save_bytes(out, write_section_dxf(section).encode())
    terminal.say_all(format_section(section).splitlines())
    return 0
