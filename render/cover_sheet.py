"""What the cover says in words: a summary of the job, and which sheet holds what.

How it stands beside the picture is render.chapters.cover's.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from model.board import Stock, StockKind
from model.check.finding import Finding
from model.job import About
from model.parameters import COLUMNS, FIREPLACES, FRIEZES, RULES, SHELVES
from model.surround import Surround
from model.takeoff.cut_list import describe_stock
from model.takeoff.weight import Load, list_loads, total_weight
from model.units import format_length
from render.checks_sheet import count_findings
from render.drawing import MM
from render.lettering import one_line
from render.references import sheet_of
from render.tables import Cell, Column, Strip, Table, heading_strip, paragraph_strips, table_strips

LABELS = 24 * MM
"""Width of the summary's first column."""
NUMBERS = 9 * MM
"""How far the contents' titles stand in."""
BETWEEN = 0.3 * MM
"""Clear between two of them."""
CHECKS = "Checks"


def summary_strips(
    surround: Surround, findings: Sequence[Finding] | None, loads: Sequence[Load] | None, width: float
) -> tuple[Strip, ...]:
    """What is built, where, how large and how heavy, and what the checks found."""
    lines = list_summary(surround, findings, list_loads(surround) if loads is None else loads)
    columns = (Column("Summary", LABELS, bold=True), Column("", width - LABELS))
    return table_strips(Table(columns, tuple((Cell(name), Cell(text)) for name, text in lines)))


def contents_strips(titles: Sequence[str], width: float) -> tuple[Strip, ...]:
    """The sheets by the titles they begin with, each with its number."""
    lines = [heading_strip("Contents")]
    for title in titles:
        lines += paragraph_strips(title, width, indent=NUMBERS, first=sheet_of(title))
        lines.append(Strip(BETWEEN))
    return tuple(lines)


def list_summary(
    surround: Surround, findings: Sequence[Finding] | None, loads: Sequence[Load]
) -> tuple[tuple[str, str], ...]:
    """Names and texts of the summary's lines, in their order."""
    return tuple(_list_lines(surround, findings, loads))


def _list_lines(
    surround: Surround, findings: Sequence[Finding] | None, loads: Sequence[Load]
) -> Iterator[tuple[str, str]]:
    job, layout = surround.job, surround.layout
    site, design, style = job.site, job.design, job.about.length_style

    def text(value: float) -> str:
        return format_length(value, style)

    yield "What", say_what(surround)
    yield (
        "Where",
        f"{FIREPLACES[site.fireplace]}, opening {text(site.opening.width)} wide and "
        f"{text(site.opening.height)} high. Rules: {RULES[site.rule]}.",
    )
    wide, high, deep = _measure(surround)
    yield "Over all", f"{text(wide)} wide, {text(high)} high, {text(deep)} deep."
    shelf = f"{text(layout.left.shelf_side + layout.right.shelf_side)} long, its top {text(layout.shelf_top)}"
    yield "Shelf", f"{shelf} over the hearth."
    wood = Stock(StockKind.BOARD, design.board.thickness, design.board.species)
    yield "Wood", f"{describe_stock(wood, style)}."
    groups = len({board.assembly for board in surround.boards})
    weight = total_weight(loads)
    yield "Boards", f"{len(surround.boards)} in {groups} sub-assemblies, {weight:.0f} lb together."
    if findings is not None:
        yield "Checks", f"{count_findings(findings)}. See sheet {sheet_of(CHECKS)} before building."
    if revision := say_revision(job.about):
        yield "Revision", revision
    if notes := one_line(job.about.notes):
        yield "Notes", notes if len(notes) <= MOST_NOTES else f"See sheet {sheet_of(CHECKS)}."


MOST_NOTES = 200
"""Characters of the job's notes that stand on the cover; longer ones are with the checks alone."""


def say_revision(about: About) -> str:
    """``B, 2026-11-20: frieze 1" lower; shelf of oak``; empty where nothing was revised."""
    changes = "; ".join(line.strip() for line in about.changes.splitlines() if line.strip())
    called = ", ".join(one_line(text) for text in (about.revision, about.revised) if text.strip())
    return ": ".join(text for text in (called, changes) if text)


def say_what(surround: Surround) -> str:
    """One sentence: columns, frieze, shelf and what stands over them."""
    design = surround.job.design
    parts = (
        f"columns {COLUMNS[design.column.kind].lower()}",
        f"frieze {FRIEZES[design.frieze.kind].lower()}",
        f"shelf {SHELVES[design.shelf.kind].lower()}",
    )
    over = ", with an overmantel" if design.over.on else ""
    return f"Fireplace surround{over}: {'; '.join(parts)}."


def _measure(surround: Surround) -> tuple[float, float, float]:
    """Width, height and depth of all boards together, inches."""
    lows, highs = zip(*(board.bounds for board in surround.boards), strict=True)
    wide, high, deep = (max(h[i] for h in highs) - min(low[i] for low in lows) for i in range(3))
    return wide, high, deep
