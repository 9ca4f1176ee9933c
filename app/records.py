"""What the command line prints: records for scripts, tables in words for people. No files, no arguments."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from textwrap import fill
from typing import Any

from model.check.all import WHO_DECIDES
from model.check.finding import STATUS_WORD, Bound, Finding, Guide, Status
from model.measures import format_measure
from model.parameters import TABLE, Kind, Parameter
from model.takeoff.cut_list import Cut, thickness_style
from model.takeoff.rough import Rough
from model.units import INCHES_16, LengthStyle, format_length
from render.checks_sheet import GUIDES_ARE, count_findings, guide_texts, source_text, value_texts

PLACES = 6
"""Decimals of an inch in records; finer is rounding of the machine's."""
LINE = 100
"""Characters to a line of words."""


def finding_record(finding: Finding) -> dict[str, Any]:
    """One result for a script; lengths in `unit`, None where there is nothing to compare."""
    return {
        "check": finding.check,
        "rule": finding.rule,
        "standing": str(finding.standing),
        "source": finding.source,
        "status": str(finding.status),
        "part": finding.part,
        "measured": _rounded(finding.measured),
        "limit": _rounded(finding.limit),
        "bound": None if finding.limit is None else str(finding.bound),
        "unit": finding.unit,
        "message": finding.message,
        "cure": finding.cure,
    }


def guide_record(guide: Guide, style: LengthStyle) -> dict[str, Any]:
    """A proportion as a result that always passes; `limit` is the nearest end of the advised span.

    `bound` says which end; a span of one value is its lower end to what is narrower, its upper end to what
    is wider.
    """
    own, advised = guide_texts(guide, style)
    nearest = min((guide.advised_low, guide.advised_high), key=lambda end: abs(end - guide.own))
    least = guide.own < nearest or nearest == guide.advised_low < guide.advised_high
    return {
        "check": "proportion",
        "rule": guide.name,
        "standing": str(guide.standing),
        "source": guide.source,
        "status": str(Status.PASS),
        "part": guide.path.split(".")[0].replace("_", " "),
        "measured": _rounded(guide.own),
        "limit": _rounded(nearest),
        "bound": str(Bound.LEAST if least else Bound.MOST),
        "unit": guide.unit,
        "message": f"guide: {guide.name[:1].lower()}{guide.name[1:]}: {own} here, {advised} advised",
        "cure": "",
    }


def cut_record(cut: Cut) -> dict[str, Any]:
    """One line of the cut list for a script; lengths in inches."""
    return {
        "mark": cut.mark,
        "name": cut.name,
        "assembly": cut.assembly,
        "quantity": cut.quantity,
        "stock": cut.stock,
        "length": _rounded(cut.length),
        "width": _rounded(cut.width),
        "thickness": _rounded(cut.thickness),
        "ends": cut.ends,
        "notes": cut.notes,
        "pieces": list(cut.pieces),
        "short_points": _rounded(cut.short_length),
        "rough": _rough_record(cut.rough) if cut.rough else None,
        "grain": cut.grain,
        "hand": cut.hand,
        "shows": cut.shows,
    }


def _rough_record(rough: Rough) -> dict[str, Any]:
    """What is sawn first, each allowance by itself; inches."""
    sizes = {"length": rough.length, "width": rough.width}
    names = ("rough", "scribe", "trim", "glue_up")
    record: dict[str, Any] = {
        size: {name: _rounded(getattr(stretch, name)) for name in names} for size, stretch in sizes.items()
    }
    return {**record, "strips": rough.strips, "layers": rough.layers}


def _rounded(value: float | None) -> float | None:
    return None if value is None else round(value, PLACES)


def check_lines(findings: Sequence[Finding], guides: Sequence[Guide], style: LengthStyle) -> Iterable[str]:
    """The checks in words, worst first, then the guides and who decides."""
    for finding in findings:
        yield from _finding_lines(finding, style)
        yield ""
    yield f"Checks: {count_findings(findings)}."
    if guides:
        yield ""
        yield f"Guides. {GUIDES_ARE}"
        rows = [(guide.name, *guide_texts(guide, style), _guide_source(guide)) for guide in guides]
        yield from table_lines(("Proportion", "Here", "Advised", "Source"), rows)
    yield ""
    yield from _paragraph(WHO_DECIDES)


def _finding_lines(finding: Finding, style: LengthStyle) -> Iterable[str]:
    measured, limit = value_texts(finding.measured, finding.limit, finding.unit, style)
    compared = f": {measured or 'not known'} measured, at {finding.bound} {limit} wanted" if limit else ""
    yield f"{STATUS_WORD[finding.status].upper():<10} {finding.part}, {finding.check}{compared}"
    yield from _paragraph(finding.message, 11)
    if finding.cure:
        yield from _paragraph(f"Cure: {finding.cure}", 11)
    yield from _paragraph(source_text(finding.rule, finding.source, finding.standing), 11)


def _guide_source(guide: Guide) -> str:
    return source_text("", guide.source, guide.standing)


def cut_lines(cuts: Sequence[Cut], style: LengthStyle) -> Iterable[str]:
    """The cut list as a table."""
    yield from table_lines(
        ("Mark", "Piece", "For", "No.", "Length", "Width", "Thickness", "Stock", "Ends and notes"),
        [
            (
                cut.mark,
                cut.name,
                cut.assembly,
                str(cut.quantity),
                format_length(cut.length, style),
                format_length(cut.width, style),
                format_length(cut.thickness, thickness_style(style)),
                cut.stock,
                "; ".join(text for text in (cut.ends, cut.notes) if text),
            )
            for cut in cuts
        ],
    )


def parameter_lines() -> Iterable[str]:
    """Every path that ``--set`` takes, with what it may be, its default and its help."""
    rows = [(row.path, _allowed(row), _default(row), row.about) for row in TABLE]
    yield from table_lines(("Path", "May be", "Default", "What it is"), rows)


def _default(row: Parameter) -> str:
    """What a row begins with, of several lines the first."""
    first, *more = row.format(row.default, INCHES_16).split("\n")
    return f"{first} …" if more else first


def _allowed(row: Parameter) -> str:
    match row.kind:
        case Kind.LENGTH:
            low, high = (format_length(value or 0.0, INCHES_16) for value in (row.lowest, row.highest))
            return f"{low} to {high}" + (", or empty" if row.optional else "")
        case Kind.NUMBER:
            low, high = (
                format_measure(value or 0.0, row.measure, INCHES_16) for value in (row.lowest, row.highest)
            )
            return f"{low} to {high}" + (", or empty" if row.optional else "")
        case Kind.COUNT:
            return f"{row.lowest:g} to {row.highest:g}"
        case Kind.CHOICE:
            return " | ".join(row.choices or {})
        case Kind.COLOUR:
            return " | ".join((*(row.choices or {}), "#rrggbb"))
        case Kind.PAIRS:
            return "projection : clearance; …"
        case Kind.READINGS:
            return "lengths parted by commas"
        case _:
            return str(row.kind)


def table_lines(heading: Sequence[str], rows: Sequence[Sequence[str]]) -> Iterable[str]:
    """Columns as wide as what stands in them, two spaces apart; the last one runs on."""
    widths = [max(map(len, column)) for column in zip(heading, *rows, strict=True)][:-1]
    for row in (heading, *rows):
        fields = [text.ljust(width) for text, width in zip(row[:-1], widths, strict=True)]
        yield "  ".join((*fields, row[-1])).rstrip()


def _paragraph(text: str, indent: int = 0) -> Iterable[str]:
    if text:
        margin = " " * indent
        yield fill(" ".join(text.split()), LINE, initial_indent=margin, subsequent_indent=margin)
