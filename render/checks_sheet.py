"""The checks as they stand on paper: worst first, then guides and the job's notes.

What is checked stands in model.check; how pages are cut in render.tables.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from model.check.finding import STATUS_WORD, Finding, Guide, Status
from model.check.wording import Wording
from model.reference.sourced import Standing
from model.surround import Surround
from model.units import LengthStyle, format_length
from render.drawing import MM
from render.tables import (
    Cell,
    Column,
    Strip,
    Table,
    heading_strip,
    opening_strips,
    paragraph_strips,
    share_columns,
    table_strips,
)

WORST_FIRST = tuple(Status)
INCH_UNIT = "in"
GUIDES_ARE = "Published proportions beside this design. They are guides to look at, never rules to keep."


def checks_strips(
    surround: Surround, findings: Sequence[Finding], guides: Sequence[Guide], width: float
) -> tuple[Strip, ...]:
    """Everything the checks sheets say, for a page `width` wide."""
    style = surround.job.about.length_style
    ordered = order_findings(findings)
    strips = [
        heading_strip(f"Checks: {count_findings(findings)}"),
        *table_strips(Table(_check_columns(width), tuple(_check_row(f, style) for f in ordered))),
    ]
    if guides:
        strips += _guide_strips(guides, style, width)
    if surround.job.about.notes.strip():
        strips += [heading_strip("Notes for this job", above=3 * MM)]
        strips += paragraph_strips(surround.job.about.notes, width)
    return tuple(strips)


def order_findings(findings: Sequence[Finding]) -> list[Finding]:
    """Worst first, those alike in the order they were made."""
    return sorted(findings, key=lambda finding: WORST_FIRST.index(finding.status))


def count_findings(findings: Sequence[Finding]) -> str:
    """``1 over, 2 close, 9 within``: each answer that was given, worst first."""
    counts = Counter(finding.status for finding in findings)
    return ", ".join(f"{counts[s]} {STATUS_WORD[s]}" for s in WORST_FIRST if counts[s]) or "none made"


def _check_columns(width: float) -> tuple[Column, ...]:
    names = (
        "Result",
        "Part",
        "Measured",
        "Limit",
        "What was found",
        "Rule and source",
    )
    return share_columns(width, names, (25, 28, 21, 25, 81, 63), ends=("Measured", "Limit"))


def _check_row(finding: Finding, style: LengthStyle) -> tuple[Cell, ...]:
    measured, limit = value_texts(finding.measured, finding.limit, finding.unit, style)
    about = finding.message + (f"\nCure: {finding.cure}" if finding.cure else "")
    return (
        Cell(STATUS_WORD[finding.status], status=finding.status, bold=finding.status is Status.FAIL),
        Cell(finding.part),
        Cell(measured),
        Cell(f"{finding.bound} {limit}" if limit else ""),
        Cell(about),
        Cell(source_text(finding.rule, finding.source, finding.standing)),
    )


def source_text(rule: str, source: str, standing: Standing) -> str:
    """``rule: source [published]``, without the rule where the source says all of it."""
    said = set(source.replace(";", " ").split())
    named = source if set(rule.split()) <= said else f"{rule}: {source}" if source else rule
    return f"{named} [{standing}]" if named else f"[{standing}]"


def value_texts(
    measured: float | None, limit: float | None, unit: str, style: LengthStyle
) -> tuple[str, str]:
    """The two as text, "" where there is none; lengths as the findings' own sentences write them."""
    if unit != INCH_UNIT:
        return _number_text(measured, unit), _number_text(limit, unit)
    wording = Wording(style)
    if measured is not None and limit is not None:
        return wording.pair(measured, limit)
    alone = ["" if value is None else wording.distance(value) for value in (measured, limit)]
    return alone[0], alone[1]


def _length_text(value: float | None, style: LengthStyle) -> str:
    return "" if value is None else format_length(value, style)


def _number_text(value: float | None, unit: str) -> str:
    return "" if value is None else f"{value:.3f}".rstrip("0").rstrip(".") + (f" {unit}" if unit else "")


def _guide_strips(guides: Sequence[Guide], style: LengthStyle, width: float) -> list[Strip]:
    names = ("Proportion", "This design", "Advised", "Source")
    columns = share_columns(width, names, (78, 30, 45, 90), ends=("This design", "Advised"))
    rows = tuple(_guide_row(guide, style) for guide in guides)
    return [
        *opening_strips("Guides to proportion", GUIDES_ARE, width, above=3 * MM),
        *table_strips(Table(columns, rows)),
    ]


def _guide_row(guide: Guide, style: LengthStyle) -> tuple[Cell, ...]:
    return (
        Cell(guide.name),
        *map(Cell, guide_texts(guide, style)),
        Cell(source_text("", guide.source, guide.standing)),
    )


def guide_texts(guide: Guide, style: LengthStyle) -> tuple[str, str]:
    """What the design has and what is advised: ``6 1/2"`` and ``5" to 7"``."""

    def text(value: float) -> str:
        return _length_text(value, style) if guide.unit == INCH_UNIT else _number_text(value, guide.unit)

    low, high = text(guide.advised_low), text(guide.advised_high)
    return text(guide.own), low if low == high else f"{low} to {high}"
