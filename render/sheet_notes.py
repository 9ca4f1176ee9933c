"""Short notes beside the drawings, so that one sheet alone still says what the work is made of."""

from __future__ import annotations

from collections.abc import Sequence

from model.board import Stock, StockKind
from model.check.finding import Finding
from model.job import About
from model.parameters import FIREPLACES, RULES
from model.surround import Surround
from model.takeoff.cut_list import describe_stock
from model.units import LengthStyle, format_length
from render.checks_sheet import count_findings
from render.cut_fills import CUT_WOOD
from render.lettering import STAND_IN, missing_letters

SECTIONS = ("plan_section", "vertical_section")


def list_notes(
    surround: Surround, views: tuple[str, ...], findings: Sequence[Finding] | None = None
) -> tuple[str, ...]:
    """Notes for a sheet that shows `views`, most wanted first; `findings` where the checks were made."""
    site, design = surround.job.site, surround.job.design
    style = surround.job.about.length_style
    wood = Stock(StockKind.BOARD, design.board.thickness, design.board.species)
    notes = [
        f"Wood: {describe_stock(wood, style)}.",
        _say_panels(surround, style),
        f"Shelf height is from the {design.shelf.height_from}.",
        f"Fireplace: {FIREPLACES[site.fireplace]}. Rules: {RULES[site.rule]}.",
    ]
    if any(view in SECTIONS for view in views):
        notes.insert(0, f"{CUT_WOOD} Masonry: wide slant.")
    if findings is not None:
        notes.insert(0, f"Checks: {count_findings(findings)}. See their sheet before building.")
    return tuple(notes)


def tell_missing_letters(about: About) -> tuple[str, ...]:
    """A note where the typeface lacks letters of what is written about the job; none where it has all."""
    said = (about.name, about.client, about.maker, about.notes, about.revision, about.revised, about.changes)
    if not missing_letters("".join(said)):
        return ()
    return (
        f"This typeface lacks some letters of the job's texts; {STAND_IN} stands for each. Latin, Greek and "
        "Cyrillic letters print.",
    )


def _say_panels(surround: Surround, style: LengthStyle) -> str:
    """How thick they are, and how far behind the face of their frame, each part's where that differs.

    As asked where no part has any.
    """
    layout, panel = surround.layout, surround.job.design.panel
    frames = {"the columns": layout.right.frame, "the frieze": layout.frieze_frame}
    if layout.over is not None:
        frames["the overmantel"] = layout.over.frame
    framed = {part: frame for part, frame in frames.items() if frame.openings}
    thick = format_length(panel.thickness, style)
    solid = "solid, " if any(frame.groove for frame in framed.values()) else ""
    behind = {part: format_length(frame.reveal, style) for part, frame in framed.items()}
    if len(set(behind.values())) < 2:
        only = next(iter(behind.values()), format_length(panel.reveal, style))
        return f"Panels: {solid}{thick} thick, {only} behind the face of their frame."
    each = ", ".join(f"{off} in {part}" for part, off in behind.items())
    return f"Panels: {solid}{thick} thick, behind the face of their frame by {each}."
