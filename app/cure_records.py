"""What the command line prints of cures and explanations: records for scripts, lines for people."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Any

from model.check.explain import explain_finding
from model.check.finding import Finding
from model.check.remedy import Remedy
from model.parameters import find_parameter
from model.surround import Surround
from model.units import LengthStyle

Cured = Sequence[tuple[Finding, tuple[Remedy, ...]]]


def cure_record(remedy: Remedy, style: LengthStyle) -> dict[str, Any]:
    """One cure for a script; `set` maps paths to the texts that ``--set`` takes."""
    return {
        "sentence": remedy.sentence,
        "set": dict(_list_settings(remedy, style)),
        "clears_all": remedy.clears_all,
        "worsens": list(remedy.worsens),
    }


def cure_lines(cured: Cured, style: LengthStyle) -> Iterable[str]:
    """For each finding that is over or close what would clear it, and how to set it."""
    for finding, remedies in cured:
        yield f"Cures for the {finding.part}, {finding.check}:"
        for remedy in remedies:
            yield f"  {' '.join((remedy.sentence, *remedy.worsens))}"
            settings = " ".join(f'--set "{path}={text}"' for path, text in _list_settings(remedy, style))
            yield f"    {settings}"
        if not remedies:
            yield "  No change of one or two sizes clears it."
        yield ""


def explanation_record(surround: Surround, finding: Finding) -> dict[str, Any]:
    """The page of one finding for a script."""
    page = explain_finding(surround, finding)
    return {
        "clauses": list(page.clauses),
        "arithmetic": list(page.arithmetic),
        "source": page.source,
        "decides": page.decides,
    }


def explanation_lines(surround: Surround, findings: Sequence[Finding]) -> Iterable[str]:
    """The page of every finding for people."""
    for finding in findings:
        page = explain_finding(surround, finding)
        yield page.title
        yield from (f"  {line}" for line in (page.answer, *page.clauses, *page.arithmetic, page.source))
        yield ""


def _list_settings(remedy: Remedy, style: LengthStyle) -> Iterable[tuple[str, str]]:
    for change in remedy.changes:
        row = find_parameter(change.path)
        stored = isinstance(change.value, str)
        yield change.path, str(change.value) if stored else row.format(change.value, style).replace('"', "")
