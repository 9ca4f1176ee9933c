"""Short chapters of tables that stand on the sheet where the one before them ends."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from render.chapters.anchors import FIXING
from render.chapters.cautions import CAUTIONS
from render.chapters.finishing import FINISHING
from render.chapters.notes import NOTES
from render.desk import Desk, Draft
from render.drawing import MM, Drawing, Placed
from render.extent import drawing_extent
from render.sheets import CONTINUED, Block, safe_area
from render.shifting import shift_mark

JOINED = ((FIXING, FINISHING), (CAUTIONS, NOTES))
"""Chapters that are read at the same place one after the other. Lists that are handed out stay alone."""
BETWEEN = 6 * MM
"""Clear between two chapters on one sheet. Shop choice."""


def join_short(desk: Desk, drafts: Sequence[Draft]) -> list[Draft]:
    """The drafts with each short chapter of JOINED on its forerunner's last sheet where it has room."""
    joined: list[Draft] = []
    for n, draft in enumerate(drafts):
        alone = [other.title for other in drafts[n + 1 : n + 2]] != [draft.title + CONTINUED]
        before = joined[-1] if joined else None
        pair = before and (before.title.removesuffix(CONTINUED), draft.title)
        together = _join(desk, before, draft) if before and pair in JOINED and alone else None
        if together is not None:
            joined[-1] = together
        else:
            joined.append(draft)
    return joined


def _join(desk: Desk, upper: Draft, lower: Draft) -> Draft | None:
    """Both on one sheet; None where the lower has no room under the upper."""
    _, bottom, _, top = safe_area(*desk.size, Block.BELOW)
    (above,), (below,) = upper.placed, lower.placed
    down = drawing_extent(above.drawing)[1] - BETWEEN - top
    if drawing_extent(below.drawing)[1] + down < bottom:
        return None
    marks = (*above.drawing.marks, *(shift_mark(mark, (0.0, down)) for mark in below.drawing.marks))
    title = f"{upper.title.removesuffix(CONTINUED)}, {lower.title.lower()}"
    placed = (Placed(Drawing(marks), above.at, above.name),)
    return replace(upper, title=title, placed=placed, joined=(upper.title, lower.title))
