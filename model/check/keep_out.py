"""Where wood may not be, as outlines to draw. What a surround's parts do there is model.check.mantel's."""

from __future__ import annotations

from math import acos, cos, pi, sin

from model.board import Point2
from model.check.mantel import RULES
from model.check.regime import IRC, NFPA211, Regime, find_regime
from model.reference.clearance import (
    IRC_NONE_WITHIN,
    IRC_PROJECTION_PER_INCH,
    IRC_ZONE,
    NFPA_ABOVE,
    NFPA_BESIDE,
    NFPA_NONE_WITHIN,
    NFPA_PROJECTION,
)
from model.site import Chart, Opening, Site

Ring = tuple[Point2, ...]

ARC_STEPS = 12
"""Facets of a quarter circle round the opening's corner."""
REACH = 12.0
"""How far out the boundary is drawn where no limit is left, in."""


def list_keep_out_rings(site: Site) -> tuple[Ring, ...]:
    """Outlines (x, y) on the front view from the hearth up, counter-clockwise, not closed, inner one first.

    Within the first no wood may be. Within the second its projection is bounded. None where nothing is
    known.
    """
    match find_regime(site):
        case Regime.MASONRY:
            none_within = IRC_NONE_WITHIN if site.rule != NFPA211 else NFPA_NONE_WITHIN
            return (_round_opening(site.opening, none_within.value), _bounded_zone(site))
        case Regime.CHART:
            return _list_chart_rings(site.opening, site.chart)
        case Regime.UNKNOWN:
            return ()


def list_allowed_slope(site: Site, reach: float = REACH) -> tuple[Point2, ...]:
    """The boundary (height above the opening, greatest projection) on the side view, rising with height.

    It runs on to `reach` where the rule sets no more limit. Empty where nothing is known.
    """
    match find_regime(site):
        case Regime.MASONRY if site.rule == NFPA211:
            low, high, out = NFPA_NONE_WITHIN.value, NFPA_ABOVE.value, NFPA_PROJECTION.value
            return ((low, 0.0), (low, out), (high, out), (high, max(reach, out)))
        case Regime.MASONRY:
            low, high, grade = IRC_NONE_WITHIN.value, IRC_ZONE.value, IRC_PROJECTION_PER_INCH.value
            return ((low, 0.0), (low, low * grade), (high, high * grade), (high, max(reach, high * grade)))
        case Regime.CHART:
            return _list_chart_steps(site.chart, reach)
        case Regime.UNKNOWN:
            return ()


def _round_opening(opening: Opening, off: float) -> Ring:
    """The line at a straight distance `off` the opening."""
    corner = [(off * cos(a), off * sin(a)) for a in (i * pi / 2 / ARC_STEPS for i in range(ARC_STEPS + 1))]
    return _mirror(opening, corner)


def _bounded_zone(site: Site) -> Ring:
    """Within 12 in. by IRC; by NFPA 211 within 12 in. above and too near the side for anything bold."""
    square = (NFPA_BESIDE.value + NFPA_PROJECTION.value, NFPA_ABOVE.value)
    rules = RULES[site.rule]
    if rules == RULES[NFPA211]:
        return _mirror(site.opening, [(square[0], 0.0), square])
    off = IRC_ZONE.value
    if rules == RULES[IRC]:
        return _round_opening(site.opening, off)
    last = acos(square[0] / off)
    arc = [(off * cos(a), off * sin(a)) for a in (i * last / ARC_STEPS for i in range(ARC_STEPS + 1))]
    return _mirror(site.opening, [*arc, square])


def _mirror(opening: Opening, corner: list[Point2]) -> Ring:
    """A ring from its right half: (beside, above) of points from the side's foot round to the top."""
    side, top = opening.width / 2, opening.height
    right = [(side + corner[0][0], 0.0), *((side + beside, top + above) for beside, above in corner)]
    return (*right, *((-x, y) for x, y in reversed(right)))


def _list_chart_rings(opening: Opening, chart: Chart) -> tuple[Ring, ...]:
    """By the first rows of both tables, and by the last."""
    rings = []
    for row in (0, -1):
        above = chart.shelf[row][1] if chart.shelf else 0.0
        beside = chart.legs[row][1] if chart.legs else 0.0
        ring = _mirror(opening, [(beside, above)])
        if (above or beside) and ring not in rings:
            rings.append(ring)
    return tuple(rings)


def _list_chart_steps(chart: Chart, reach: float) -> tuple[Point2, ...]:
    """Stairs: each row's projection from its height on, the last one without end."""
    points: list[Point2] = []
    out = 0.0
    for projection, height in chart.shelf:
        points += [(height, out), (height, projection)]
        out = projection
    return (*points, (points[-1][0] + reach, out)) if points else ()
