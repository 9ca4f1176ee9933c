"""Measurements that cannot all be true. What is wrong with the design is not asked here."""

from __future__ import annotations

from collections.abc import Iterator

from model.check.clearance import HAIR
from model.check.finding import Finding, Status
from model.check.plain import SURVEY, build_plain
from model.check.wording import Wording
from model.surround import Surround


def check_survey(surround: Surround) -> tuple[Finding, ...]:
    """Only contradictions."""
    wording = Wording(surround.job.about.length_style)
    return (*_check_around_opening(surround, wording), *_check_between_walls(surround, wording))


def _check_around_opening(surround: Surround, wording: Wording) -> Iterator[Finding]:
    """Facing and hearth are at least as large as the opening they surround."""
    site = surround.job.site
    pairs = (
        ("facing", "facing.width", "wide", site.facing.width, site.opening.width),
        ("facing", "facing.height", "high", site.facing.height, site.opening.height),
        ("hearth", "hearth.width", "wide", site.hearth.width, site.opening.width),
    )
    for part, path, way, measured, least in pairs:
        if measured < least - HAIR:
            has, needs = wording.distance(measured), wording.distance(least)
            message = f"The {part} is {has} {way}, less than the opening, which is {needs}."
            yield _contradict(part, message, path, measured, least)


def _check_between_walls(surround: Surround, wording: Wording) -> Iterator[Finding]:
    """Facing and hearth lie within the walls and the ceiling they were measured between."""
    site, layout = surround.job.site, surround.layout
    free = layout.opening_side + min(site.room.left, site.room.right)
    for part, side in (("facing", layout.facing_side), ("hearth", layout.hearth_side)):
        if side > free + HAIR:
            wide, room = wording.distance(2 * side), wording.distance(2 * free)
            message = f"The {part} is {wide} wide, but centred on the opening there is room for {room} only."
            yield _contradict(part, message, f"{part}.width", 2 * side, 2 * free)
    if layout.facing_top > layout.ceiling + HAIR:
        top, room = (wording.mark(y - layout.floor) for y in (layout.facing_top, layout.ceiling))
        message = f"The facing's top lies {top} over the floor, above the ceiling at {room}."
        yield _contradict("facing", message, "facing.height", layout.facing_top, layout.ceiling)


def _contradict(part: str, message: str, path: str, measured: float, limit: float) -> Finding:
    return build_plain(SURVEY, Status.FAIL, part, message, path, "Measure again.", measured, limit)
