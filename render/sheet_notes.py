"""Short notes beside the drawings, so that one sheet alone still says what the work is made of."""

from __future__ import annotations

from collections.abc import Sequence

from model.board import Stock, StockKind
from model.check.finding import Finding
from model.parameters import FIREPLACES, RULES
from model.surround import Surround
from model.takeoff.cut_list import describe_stock
from model.units import format_length
from render.checks_sheet import count_findings

SECTIONS = ("plan_section", "vertical_section")


def list_notes(
    surround: Surround, views: tuple[str, ...], findings: Sequence[Finding] | None = None
) -> tuple[str, ...]:
    """Notes for a sheet that shows `views`, most wanted first; `findings` where the checks were made."""
    site, design = surround.job.site, surround.job.design
    style = surround.job.about.length_style
    wood = Stock(StockKind.BOARD, design.board.thickness, design.board.species)
    panel = format_length(design.panel.thickness, style)
    reveal = format_length(design.panel.reveal, style)
    notes = [
        f"Wood: {describe_stock(wood, style)}.",
        f"Panels: {panel} thick, {reveal} behind the face of their frame.",
        f"Shelf height is from the {design.shelf.height_from}.",
        f"Fireplace: {FIREPLACES[site.fireplace]}. Rules: {RULES[site.rule]}.",
    ]
    if any(view in SECTIONS for view in views):
        notes.insert(0, "Heavy outline and close hatch: wood cut through. Wide hatch: masonry cut through.")
    if findings is not None:
        notes.insert(0, f"Checks: {count_findings(findings)}. See their sheet before building.")
    return tuple(notes)
