"""Finishing as it stands on paper: each step with where it goes, how much of what, and how long it dries.

What is done and how much is used is worked out in model.steps.finishing and model.takeoff.materials.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from model.sentences import capitalise, end_sentence
from model.steps.finishing import Finish
from model.steps.work import round_up
from model.takeoff.materials import Material
from model.units import LengthStyle
from render.checks_sheet import source_text
from render.drawing import MM
from render.materials_sheet import describe_amount, describe_basis, format_rate
from render.tables import (
    ROW,
    SMALL,
    Cell,
    Row,
    Strip,
    Table,
    heading_strip,
    opening_strips,
    paragraph_strips,
    share_columns,
    table_strips,
)

COLUMNS = ("", "Step", "How", "Where", "Take", "Work", "Dries", "Done")
SHARES = (9, 38, 56, 62, 48, 18, 16, 14)
LOOSE, UP = "Before anything is put together", "When everything is up"
WHAT = (
    "Amounts are of the faces and joints as drawn, with the losses of the sheet of materials. Drying times "
    "are for a warm, dry room; what the tin says goes before them."
)
WHOLE = 0.999


def finishing_strips(finishing: Sequence[Finish], style: LengthStyle, width: float) -> tuple[Strip, ...]:
    """The steps in two groups, then where the drying times come from, for a page `width` wide."""
    columns = share_columns(width, COLUMNS, SHARES, ends=("Work", "Dries"), bold=("Step",))
    rows: list[Row] = []
    for heading, loose in ((LOOSE, True), (UP, False)):
        own = [(n, finish) for n, finish in enumerate(finishing, start=1) if finish.loose is loose]
        rows += [heading] if own else []
        rows += [_row(n, finish, style) for n, finish in own]
    return (
        *opening_strips("Finishing", WHAT, width),
        *table_strips(Table(columns, tuple(rows), SMALL, ROW, ruled=True)),
        *_source_strips(finishing, style, width),
    )


def _row(number: int, finish: Finish, style: LengthStyle) -> Row:
    return (
        Cell(str(number)),
        Cell(finish.title),
        Cell(finish.how),
        Cell("\n".join(f"{m.name}: {describe_basis(m.basis, style)}" for m in finish.materials)),
        Cell("\n".join(say_amount(material, finish.share, style) for material in finish.materials)),
        Cell(f"{round_up(finish.hours):g} h"),
        Cell(format_rate(finish.dries, style) if finish.dries else ""),
        Cell(box=True),
    )


def say_amount(material: Material, share: float, style: LengthStyle) -> str:
    """What this step takes of a material: its name with its amount."""
    part = material if share > WHOLE else replace(material, amount=material.amount * share)
    return f"{material.name}: {describe_amount(part, style)}"


def _source_strips(finishing: Sequence[Finish], style: LengthStyle, width: float) -> list[Strip]:
    rates = {finish.dries.row.path: finish.dries for finish in finishing if finish.dries}
    if not rates:
        return []
    said = "; ".join(
        f"{rate.row.label.lower()} after {format_rate(rate, style)} "
        f"({source_text('', rate.source, rate.standing)})"
        for rate in rates.values()
    )
    return [
        heading_strip("Where the drying times are from", above=3 * MM),
        *paragraph_strips(capitalise(end_sentence(said)), width),
    ]
