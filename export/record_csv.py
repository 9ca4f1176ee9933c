"""What was measured and what was found, as comma-separated text; what stands in it is model's."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from export.csv import figure_text, write_table
from model.check.finding import STATUS_WORD, Finding, Guide
from model.job import Job
from model.units import LengthStyle
from render.checks_sheet import guide_texts, order_findings, value_texts
from render.site_sheet import list_measured


def write_checks_csv(findings: Sequence[Finding], guides: Sequence[Guide], style: LengthStyle) -> str:
    """Findings, worst first, then guides to proportion; what was measured as text and in figures."""
    heading = (
        "result", "check", "part", "measured", "limit", "bound", "value", "against", "unit", "message",
        "cure", "rule", "source", "standing", "boards",
    )  # fmt: skip
    rows = [_finding_row(finding, style) for finding in order_findings(findings)]
    return write_table(heading, [*rows, *(_guide_row(guide, style) for guide in guides)])


def _finding_row(finding: Finding, style: LengthStyle) -> tuple[str, ...]:
    return (
        STATUS_WORD[finding.status],
        finding.check,
        finding.part,
        *value_texts(finding.measured, finding.limit, finding.unit, style),
        "" if finding.limit is None else str(finding.bound),
        *(_figure(value) for value in (finding.measured, finding.limit)),
        finding.unit,
        finding.message,
        finding.cure,
        finding.rule,
        finding.source,
        str(finding.standing),
        " ".join(finding.boards),
    )


def _guide_row(guide: Guide, style: LengthStyle) -> tuple[str, ...]:
    own, advised = guide_texts(guide, style)
    ends = dict.fromkeys((_figure(guide.advised_low), _figure(guide.advised_high)))
    return (
        "guide", "proportion", guide.name, own, advised, "", _figure(guide.own), " to ".join(ends),
        guide.unit, "", "", "", guide.source, str(guide.standing), "",
    )  # fmt: skip


def _figure(value: float | None) -> str:
    return "" if value is None else figure_text(value)


def write_site_csv(job: Job) -> str:
    """Everything measured at the site, a line for each, empty where nothing was."""
    return write_table(("group", "key", "what", "path", "measured", "where"), _site_rows(job))


def _site_rows(job: Job) -> Iterator[tuple[str, ...]]:
    for measured in list_measured(job):
        row = measured.row
        yield row.group, measured.key, measured.label, row.path, measured.text, row.help
