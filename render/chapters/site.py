"""The site as it was measured."""

from __future__ import annotations

from render.desk import Desk, Draft, draft_pages
from render.sheets import Block
from render.site_layout import lay_site
from render.site_sheet import site_strips

SITE = "Site record"


def draft_site(desk: Desk) -> list[Draft]:
    """A sketch with a letter for each size, then every value, with lines for those that are missing."""
    layout = lay_site(desk, desk.surround, NOTES)
    sketch = Draft(SITE, layout.scale.name, layout.placed, Block.BELOW)
    return [sketch, *draft_pages(desk, f"{SITE}, sizes", site_strips(desk.surround, desk.width))]


NOTES = (
    "Letters are those of the site record. The wall is drawn broken off; sizes that were read several times "
    "stand there with all readings.",
)
