"""The noncombustible hearth in front of a masonry fireplace; appliances' is in manuals_hearth."""

from __future__ import annotations

from collections.abc import Sequence

from model.check.clearance import HAIR
from model.check.finding import Finding, Status
from model.check.hearth_rules import HEARTH_RULES, HearthRule
from model.check.manuals_hearth import CHECK, check_manuals_hearth
from model.check.regime import IRC, LOCAL, MASONRY_KINDS
from model.check.wording import Wording
from model.measures import SQUARE_INCHES
from model.reference.hearth import THIN_RISE, THIN_THICKNESS
from model.reference.sourced import Sourced
from model.sentences import merge_stops
from model.site import Opening, Site
from model.surround import Surround


def check_hearth(surround: Surround) -> tuple[Finding, ...]:
    """Front, sides and thickness."""
    site = surround.job.site
    if site.fireplace not in MASONRY_KINDS or site.rule == LOCAL:
        return check_manuals_hearth(surround)
    wording = Wording(surround.job.about.length_style)
    rules = HEARTH_RULES.get(site.rule, HEARTH_RULES[IRC])
    return (
        _check_front(site, rules, wording),
        _check_sides(site, rules, wording),
        _check_thickness(site, rules, wording),
    )


def _check_front(site: Site, rules: Sequence[HearthRule], wording: Wording) -> Finding:
    """By what leaves least to spare; slips still to be laid take from what counts from the facing."""

    def reach(rule: HearthRule) -> float:
        return site.hearth.depth - (site.facing.added if rule.from_facing else 0.0)

    ruling = min(rules, key=lambda rule: reach(rule) - rule.front(site.opening).inches)
    needed, has = ruling.front(site.opening), reach(ruling)
    measured, least = wording.pair(has, needed.inches)
    message = (
        f"The hearth reaches {measured} in front of {_format_face(site, ruling)}; "
        f"{_format_class(site, ruling)} needs {least}."
    )
    if ruling.from_facing and site.facing.added > HAIR:
        message += f" The {wording.distance(site.facing.added)} of slips to be laid are taken off."
    elif any(rule.from_facing for rule in rules):
        message += " Slips or tile laid on the facing later take from that."
    more = needed.inches + site.facing.added if ruling.from_facing else needed.inches
    cure = f"Bring the hearth out to at least {wording.at_least(more)}."
    return _build_finding(rules, "hearth, front", has, needed, message, cure, "hearth.depth")


def _format_face(site: Site, ruling: HearthRule) -> str:
    """What the depth in front counts from."""
    if site.facing.added <= HAIR:
        return "the facing"
    return "the slips to be laid" if ruling.from_facing else "the masonry"


def _format_class(site: Site, ruling: HearthRule) -> str:
    if ruling.by_area:
        return _format_area(site.opening)
    return ruling.short


def _check_sides(site: Site, rules: Sequence[HearthRule], wording: Wording) -> Finding:
    reach = (site.hearth.width - site.opening.width) / 2
    ruling = max(rules, key=lambda rule: rule.side(site.opening).inches)
    needed = ruling.side(site.opening)
    measured, least = wording.pair(max(reach, 0.0), needed.inches)
    message = (
        f"The hearth reaches {measured} beyond each side of the opening; "
        f"{_format_class(site, ruling)} needs {least}."
    )
    width = wording.at_least(site.opening.width + 2 * needed.inches)
    cure = f"Widen the hearth to at least {width}."
    return _build_finding(rules, "hearth, sides", reach, needed, message, cure, "hearth.width")


def _check_thickness(site: Site, rules: Sequence[HearthRule], wording: Wording) -> Finding:
    """The exception for thin slabs is the IRC's, where the firebox's floor stands well over the hearth."""
    part, path, thickness = "hearth, thickness", "hearth.thickness", site.hearth.thickness
    ruling = max(rules, key=lambda rule: rule.thickness(site.opening).inches)
    needed = ruling.thickness(site.opening)
    remark = f" {ruling.remark}" if ruling.remark else ""
    if thickness is None:
        message = (
            f"How thick the hearth is in front is not known; {wording.distance(needed.inches)} is needed."
        )
        cure = "Measure it, at an edge or a loose tile."
        return _build_finding(rules, part, None, needed, message + remark, cure, path)
    measured, least = wording.pair(thickness, needed.inches)
    message = f"The hearth is {measured} thick in front; {least} is needed.{remark}"
    if ruling.may_be_thin and THIN_THICKNESS.value - HAIR <= thickness < needed.inches - HAIR:
        thin, rise = wording.distance(THIN_THICKNESS.value), wording.distance(THIN_RISE.value)
        message += f" {thin} is enough only where the firebox's floor lies {rise} or more above the hearth."
    cure = f"Lay a hearth at least {wording.at_least(needed.inches)} thick."
    return _build_finding(rules, part, thickness, needed, message, cure, path)


def _build_finding(
    rules: Sequence[HearthRule],
    part: str,
    measured: float | None,
    needed: Sourced,
    message: str,
    cure: str,
    path: str,
) -> Finding:
    """`measured` in inches; all `rules` in force are named, `needed` is what the strictest of them asks."""
    if measured is None:
        status = Status.UNKNOWN
    else:
        status = Status.PASS if measured >= needed.inches - HAIR else Status.FAIL
    thick = part.endswith("thickness")
    return Finding(
        check=CHECK,
        rule=", ".join(rule.thick_clause if thick else rule.clause for rule in rules),
        standing=needed.standing,
        source=needed.source,
        status=status,
        part=part,
        measured=measured,
        limit=needed.inches,
        unit="in",
        message=merge_stops(message),
        cure="" if status is Status.PASS else cure,
        path=path,
    )


def _format_area(opening: Opening) -> str:
    return f"an opening of {opening.area / SQUARE_INCHES:.2f} sq ft"
