"""How it is put together and up, one picture a step."""

from __future__ import annotations

from model.steps.plan import plan_steps
from render.desk import NO_SCALE, Desk, Draft, title_of_page
from render.sheets import Block, safe_area
from render.step_scenes import list_shown
from render.step_sheet import lay_steps

STEPS = "Assembly steps"


def draft_steps(desk: Desk) -> list[Draft]:
    """Every step in order; no sheet where nothing was taken off."""
    if desk.takeoff is None:
        return []
    steps = plan_steps(desk.surround, desk.takeoff)
    shown = list_shown(desk.surround, steps, desk.takeoff.glue_ups)
    pages = lay_steps(shown, desk.surround, desk.takeoff, safe_area(*desk.size, Block.BELOW))
    return [Draft(title_of_page(STEPS, n), NO_SCALE, page, Block.BELOW) for n, page in enumerate(pages)]
