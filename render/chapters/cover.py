"""The cover: the surround as a picture, what it is in short, and which sheet holds what."""

from __future__ import annotations

from collections.abc import Sequence

from render.cover_sheet import contents_strips, summary_strips
from render.desk import Desk, Draft, lay_picture
from render.drawing import MM, Drawing, Placed
from render.sheets import CONTINUED, Block, safe_area
from render.tables import pour_strips, strips_height

COVER = "Cover"
CONTENTS_SHARE = 0.3
"""How much of the width the contents take. Shop choice."""
LEAST_CONTENTS = 74 * MM
GAP = 6 * MM
LEAST_PICTURE = 60 * MM
"""Height that the picture keeps; a summary that leaves it less goes on with the contents. Shop choice."""


def draft_cover(desk: Desk, drafts: Sequence[Draft]) -> list[Draft]:
    """The cover of `drafts`, all that follow it; a further sheet where the contents are long."""
    left, bottom, right, top = safe_area(*desk.size, Block.BELOW)
    wide = max(LEAST_CONTENTS, CONTENTS_SHARE * (right - left))
    split = right - wide - GAP
    loads = desk.takeoff.loads if desk.takeoff else None
    summary = summary_strips(desk.surround, desk.findings, loads, split - left)
    contents = contents_strips(list_titles(drafts), wide)
    high = strips_height(summary)
    if top - bottom - high - GAP < LEAST_PICTURE:
        summary, contents, high = (
            (),
            (*contents, *summary_strips(desk.surround, desk.findings, loads, wide)),
            0,
        )
    picture = lay_picture(desk, (left, bottom + high + (GAP if high else 0.0), split, top))
    pages = pour_strips(contents, (right - wide, top), top - bottom)
    (words,) = pour_strips(summary, (left, bottom + high), max(high, MM))
    texts = Placed(Drawing((*words, *pages[0])), (0.0, 0.0), "table")
    more = (Placed(Drawing(page), (left - (right - wide), 0.0), "table") for page in pages[1:])
    return [
        Draft(COVER, picture.scale.name, (*picture.placed, texts), Block.BELOW),
        *(Draft(COVER + CONTINUED, "–", (page,), Block.BELOW) for page in more),
    ]


def list_titles(drafts: Sequence[Draft]) -> tuple[str, ...]:
    """The titles of sheets, each once, in their order; what goes on over several sheets stands once."""
    return tuple(dict.fromkeys(draft.title for draft in drafts if not draft.title.endswith(CONTINUED)))
