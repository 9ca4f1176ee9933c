"""What had no room beside the drawings."""

from __future__ import annotations

from collections.abc import Sequence

from render.desk import Desk, Draft, draft_pages
from render.tables import Strip, heading_strip, paragraph_strips

NOTES = "Notes"
GAP = 0.08
"""Clear between two notes, paper inches. Shop choice."""


def draft_notes(desk: Desk, drafts: Sequence[Draft]) -> list[Draft]:
    """The notes that the other sheets did not hold, each once; no sheet where there is none."""
    notes = dict.fromkeys(note for draft in drafts for note in draft.over)
    if not notes:
        return []
    strips = [strip for note in notes for strip in (*paragraph_strips(note, desk.width), Strip(GAP))]
    return draft_pages(desk, NOTES, [heading_strip("Notes to the drawings"), *strips])
