"""Measurements that cannot all be true. What is wrong with the design is not asked here."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations
from math import hypot, sqrt

from model.build.behind import BOLT
from model.build.obstacles import Obstacle
from model.check.clearance import HAIR
from model.check.finding import Bound, Finding, Status
from model.check.plain import SURVEY, build_plain
from model.check.wording import Wording
from model.parameters import find_parameter
from model.site import REMOVE
from model.surround import Surround
from model.survey import REREAD

READINGS_APART = 0.25
"""Readings of one size further apart than this, in., call for care. Shop choice."""
OUT_OF_SQUARE = 0.125
"""An opening whose top is pushed aside by more than this, in., shows. Shop choice."""
DIAGONALS_OFF = 0.5
"""Most that diagonals may disagree with width and height, in., before one was misread. Shop choice."""


def check_survey(surround: Surround) -> tuple[Finding, ...]:
    """Only contradictions, and what readings differ by where that needs care."""
    wording = Wording(surround.job.about.length_style)
    return (
        *_check_around_opening(surround, wording),
        *_check_between_walls(surround, wording),
        *_check_readings(surround, wording),
        *_check_diagonals(surround, wording),
        *_check_levels(surround, wording),
        *_check_old_ledger(surround, wording),
        *_check_bolts(surround, wording),
    )


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
            yield _contradict(part, message, f"{part}.width", 2 * side, 2 * free, Bound.MOST)
    if layout.opening_foot < site.opening.sill - HAIR:
        sill, top = wording.mark(site.opening.sill), wording.mark(site.opening.height)
        message = (
            f"The firebox's floor lies {sill} over the hearth, the opening's top {top}: no mouth is left."
        )
        yield _contradict(
            "opening", message, "opening.sill", site.opening.sill, layout.opening_foot, Bound.MOST
        )
    if layout.facing_top > layout.ceiling + HAIR:
        top, room = (wording.mark(y - layout.floor) for y in (layout.facing_top, layout.ceiling))
        message = f"The facing's top lies {top} over the floor, above the ceiling at {room}."
        yield _contradict("facing", message, "facing.height", layout.facing_top, layout.ceiling, Bound.MOST)


def _check_readings(surround: Surround, wording: Wording) -> Iterator[Finding]:
    """Sizes that were read several times and came out apart."""
    for reread in REREAD:
        readings = reread.list_readings((surround.asked or surround.job).site)
        apart = max(readings) - min(readings)
        if apart > READINGS_APART:
            name = find_parameter(reread.path).name.capitalize()
            governs = wording.mark(reread.governs(readings))
            message = (
                f"{name} was read from {wording.mark(min(readings))} to {wording.mark(max(readings))}, "
                f"{wording.distance(apart)} apart; {governs} governs."
            )
            cure = "Scribe to the difference, or read again if it cannot be seen."
            yield build_plain(
                SURVEY,
                Status.WARN,
                reread.part,
                message,
                reread.path,
                cure,
                apart,
                READINGS_APART,
                bound=Bound.MOST,
            )


def _check_diagonals(surround: Surround, wording: Wording) -> Iterator[Finding]:
    """How far the opening is out of square, and whether its diagonals can belong to its width and height.

    The squares of a parallelogram's diagonals add up to twice those of its sides, and differ by four times
    its width times how far its top is pushed aside (law of cosines).
    """
    opening, readings = surround.job.site.opening, surround.job.site.readings
    falling, rising = readings.diagonal_falling, readings.diagonal_rising
    if falling is None or rising is None:
        return
    square = hypot(opening.width, opening.height)
    mean = sqrt((falling**2 + rising**2) / 2)
    if abs(mean - square) > DIAGONALS_OFF:
        pair, wanted = f"{wording.mark(falling)} and {wording.mark(rising)}", wording.mark(square)
        message = (
            f"The opening's diagonals, {pair}, do not belong to its width and height, "
            f"which give {wanted}: {wording.distance(abs(mean - square))} off."
        )
        yield _contradict(
            "opening", message, "readings.diagonal_falling", abs(mean - square), DIAGONALS_OFF, Bound.MOST
        )
        return
    aside = abs(rising**2 - falling**2) / (4 * opening.width)
    if aside > OUT_OF_SQUARE:
        way = "right" if rising > falling else "left"
        message = (
            f"The opening is out of square: its top lies {wording.distance(aside)} to the {way} of its foot."
        )
        cure = "Set the columns plumb, and let the facing's margin taper."
        path = "readings.diagonal_rising"
        yield build_plain(
            SURVEY, Status.WARN, "opening", message, path, cure, aside, OUT_OF_SQUARE, bound=Bound.MOST
        )


def _check_levels(surround: Surround, wording: Wording) -> Iterator[Finding]:
    """A foot was read off a level line, but not the hearth it is compared with."""
    level = surround.job.site.level
    feet = [level.left, level.right]
    if any(side.step for side in surround.layout.sides):
        feet += [level.floor_left, level.floor_right]
    if level.centre is None and any(reading is not None for reading in feet):
        message = (
            "The level line's height over the hearth at the opening is missing; the feet are drawn level."
        )
        yield build_plain(
            SURVEY, Status.UNKNOWN, "hearth", message, "level.centre", "Read it from the same line."
        )


def _check_old_ledger(surround: Surround, wording: Wording) -> Iterator[Finding]:
    """An old ledger lies on the facing and clear of the opening."""
    site = surround.job.site
    old, facing, opening = site.old_ledger, site.facing, site.opening
    if old.top is None or old.use == REMOVE:
        return
    foot = old.top - old.tall
    if foot < opening.height - HAIR:
        low, over = wording.mark(foot), wording.mark(opening.height)
        message = (
            f"The old ledger's underside lies {low} over the hearth, the opening's top {over}: "
            f"it would reach {wording.distance(opening.height - foot)} into the opening."
        )
        yield _contradict("old ledger", message, "old_ledger.top", foot, opening.height)
    reach = max(old.left, old.right)
    if foot < facing.height and reach > facing.width / 2 + HAIR:
        path = "old_ledger.left" if old.left >= old.right else "old_ledger.right"
        wide, half = wording.distance(reach), wording.distance(facing.width / 2)
        message = (
            f"The old ledger ends {wide} from the centre line, the facing {half}: "
            f"{wording.distance(reach - facing.width / 2)} of it hangs beside the facing."
        )
        yield _contradict("old ledger", message, path, reach, facing.width / 2, Bound.MOST)


def _check_bolts(surround: Surround, wording: Wording) -> Iterator[Finding]:
    """Bolts stand in the facing, not in the opening, and not in each other."""
    site = surround.job.site
    half, bolts = site.facing.width / 2, [o for o in surround.layout.behind if o.kind == BOLT]
    for bolt in bolts:
        x, y = (sum(span) / 2 for span in (bolt.x, bolt.y))
        edges = (
            (abs(x), half, "from the centre line", bolt.path),
            (y, site.facing.height, "over the hearth", ""),
        )
        for at, edge, way, path in edges:
            if at > edge + HAIR:
                message = (
                    f"The {bolt.name} is {wording.mark(at)} {way}, the facing ends at {wording.mark(edge)}: "
                    f"it would lie {wording.distance(at - edge)} outside."
                )
                path = path or bolt.path.replace("across", "up")
                yield _contradict(bolt.name, message, path, at, edge, Bound.MOST)
        into = min(site.opening.width / 2 - abs(x), site.opening.height - y)
        if into > HAIR:
            inside = wording.distance(into)
            message = f"The {bolt.name} lies {inside} inside the opening, where there is no masonry."
            yield _contradict(bolt.name, message, bolt.path, -into, 0.0)
    yield from _check_bolts_apart(bolts, wording)


def _check_bolts_apart(bolts: list[Obstacle], wording: Wording) -> Iterator[Finding]:
    for one, other in combinations(bolts, 2):
        (x0, y0), (x1, y1) = (tuple(sum(span) / 2 for span in (o.x, o.y)) for o in (one, other))
        least = (one.x[1] - one.x[0] + other.x[1] - other.x[0]) / 2
        apart = hypot(x1 - x0, y1 - y0)
        if apart < least - HAIR:
            message = (
                f"The {one.name} and the {other.name} are {wording.distance(apart)} apart, "
                f"{wording.distance(least - apart)} less than their diameters take."
            )
            yield _contradict(other.name, message, other.path, apart, least)


def _contradict(
    part: str, message: str, path: str, measured: float, limit: float, bound: Bound = Bound.LEAST
) -> Finding:
    return build_plain(
        SURVEY, Status.FAIL, part, message, path, "Measure again.", measured, limit, bound=bound
    )
