"""The surround held against the rules."""

from __future__ import annotations

from render.checks_sheet import checks_strips
from render.desk import Desk, Draft, draft_pages


def draft_checks(desk: Desk) -> list[Draft]:
    """Findings, worst first, and proportions."""
    return draft_pages(
        desk, "Checks", checks_strips(desk.surround, desk.findings or (), desk.guides, desk.width)
    )
