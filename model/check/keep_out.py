"""Where wood may not be, as outlines to draw. What a surround's parts do there is model.check.mantel's."""

from __future__ import annotations

from math import acos, cos, isfinite, pi, sin

import numpy as np

from model.board import Point2
from model.check.chart import HeldChart, Table, read_chart
from model.check.clearance import HAIR
from model.check.regime import CANADA, IRC, NFPA211, Regime, find_regime
from model.reference.clearance import (
    IRC_NONE_WITHIN,
    IRC_PROJECTION_PER_INCH,
    IRC_ZONE,
    NBC_ABOVE,
    NBC_NONE_WITHIN,
    NBC_PROJECTION,
    NFPA_ABOVE,
    NFPA_BESIDE,
    NFPA_NONE_WITHIN,
    NFPA_PROJECTION,
)
from model.site import Opening, Site

Ring = tuple[Point2, ...]

ARC_STEPS = 12
"""Facets of a quarter circle round the opening's corner."""
REACH = 12.0
"""How far out the boundary is drawn where no limit is left, in."""
NONE_WITHIN = {NFPA211: NFPA_NONE_WITHIN, CANADA: NBC_NONE_WITHIN}
STEPS = {
    NFPA211: (NFPA_NONE_WITHIN, NFPA_ABOVE, NFPA_PROJECTION),
    CANADA: (NBC_NONE_WITHIN, NBC_ABOVE, NBC_PROJECTION),
}
"""Rules of one step above the opening: least height, that of what stands out more, and that projection."""


def list_keep_out_rings(site: Site) -> tuple[Ring, ...]:
    """Outlines (x, y) on the front view from the hearth up, counter-clockwise, not closed, inner one first.

    Within the first no wood may be. Within the second its projection is bounded. Empty where nothing is
    known.
    """
    match find_regime(site):
        case Regime.MASONRY:
            none_within = NONE_WITHIN.get(site.rule, IRC_NONE_WITHIN)
            return (_round_opening(site.opening, none_within.inches), _bounded_zone(site))
        case Regime.CHART:
            return _list_chart_rings(site.opening, read_chart(site))
        case Regime.SILENT | Regime.UNKNOWN:
            return ()


def list_allowed_slope(site: Site, reach: float = REACH) -> tuple[Point2, ...]:
    """The boundary (height above the opening, greatest projection) on the side view, rising with height.

    It runs on to `reach` where the rule sets no more limit. Empty where nothing is known.
    """
    match find_regime(site):
        case Regime.MASONRY if site.rule in STEPS:
            low, high, out = (figure.inches for figure in STEPS[site.rule])
            return ((low, 0.0), (low, out), (high, out), (high, max(reach, out)))
        case Regime.MASONRY:
            low, high, grade = IRC_NONE_WITHIN.value, IRC_ZONE.value, IRC_PROJECTION_PER_INCH.value
            return ((low, 0.0), (low, low * grade), (high, high * grade), (high, max(reach, high * grade)))
        case Regime.CHART:
            return _list_chart_steps(read_chart(site).above, reach)
        case Regime.SILENT | Regime.UNKNOWN:
            return ()


def list_allowed_beside(site: Site, reach: float = REACH) -> tuple[Point2, ...]:
    """The boundary (distance beside the opening, greatest projection) seen from above, rising with distance.

    It runs on to `reach` where the rule sets no more limit. Empty where nothing is known.
    """
    match find_regime(site):
        case Regime.MASONRY if site.rule == CANADA:
            return ((NBC_NONE_WITHIN.inches, 0.0), (NBC_NONE_WITHIN.inches, reach))
        case Regime.MASONRY if site.rule == NFPA211:
            near, out, base = NFPA_NONE_WITHIN.value, NFPA_PROJECTION.value, NFPA_BESIDE.value
            return ((near, 0.0), (near, out), (base + out, out), (base + max(reach, out), max(reach, out)))
        case Regime.MASONRY:
            low, high, grade = IRC_NONE_WITHIN.value, IRC_ZONE.value, IRC_PROJECTION_PER_INCH.value
            corner = ((low, 0.0), (low, low * grade), (high, high * grade))
            base = high - NFPA_BESIDE.value
            if site.rule == IRC:
                return (*corner, (high, max(reach, high * grade)))
            return (*corner, (high, base), (high + max(reach - base, 0.0), max(reach, base)))
        case Regime.CHART:
            return _list_chart_steps(read_chart(site).beside, reach)
        case Regime.SILENT | Regime.UNKNOWN:
            return ()


def _round_opening(opening: Opening, off: float) -> Ring:
    """The line at a straight distance `off` the opening."""
    corner = [(off * cos(a), off * sin(a)) for a in (i * pi / 2 / ARC_STEPS for i in range(ARC_STEPS + 1))]
    return _mirror(opening, corner)


def _bounded_zone(site: Site) -> Ring:
    """Within 12 in. by IRC; by NFPA 211 within 12 in. above and too near the side for anything bold.

    By the NBC within 300 mm above; at the sides nothing more is bounded than what may not be there at all.
    """
    if site.rule == CANADA:
        return _mirror(
            site.opening, [(NBC_NONE_WITHIN.inches, 0.0), (NBC_NONE_WITHIN.inches, NBC_ABOVE.inches)]
        )
    square = (NFPA_BESIDE.value + NFPA_PROJECTION.value, NFPA_ABOVE.value)
    if site.rule == NFPA211:
        return _mirror(site.opening, [(square[0], 0.0), square])
    off = IRC_ZONE.value
    if site.rule == IRC:
        return _round_opening(site.opening, off)
    last = acos(square[0] / off)
    arc = [(off * cos(a), off * sin(a)) for a in (i * last / ARC_STEPS for i in range(ARC_STEPS + 1))]
    return _mirror(site.opening, [*arc, square])


def _mirror(opening: Opening, corner: list[Point2]) -> Ring:
    """A ring from its right half: (beside, above) of points from the side's foot round to the top."""
    side, top = opening.width / 2, opening.height
    right = [(side + corner[0][0], 0.0), *((side + beside, top + above) for beside, above in corner)]
    return (*right, *((-x, y) for x, y in reversed(right)))


def _list_chart_rings(opening: Opening, chart: HeldChart) -> tuple[Ring, ...]:
    """By what the tables ask of the slimmest wood, and of what stands out as far as they permit."""
    rings: list[Ring] = []
    for last in (False, True):
        above, beside = (_asked(table, last) for table in (chart.above, chart.beside))
        ring = _mirror(opening, [(beside, above)])
        if (above or beside) and ring not in rings:
            rings.append(ring)
    return tuple(rings)


def _asked(table: Table, last: bool) -> float:
    """Distance at the table's start or end; 0 where it says nothing."""
    if not table.is_known:
        return 0.0
    ends = [end for end in table.breaks if end <= table.ends_at + HAIR]
    asked = float(table.least(np.array([ends[-1] if last and ends else 0.0]))[0])
    return asked if isfinite(asked) else 0.0


def _list_chart_steps(table: Table, reach: float) -> tuple[Point2, ...]:
    """Each break's height from the last one's on, straight up where the table steps; then without end."""
    if not table.is_known:
        return ()
    ends = [end for end in table.breaks if end <= table.ends_at + HAIR]
    points: list[Point2] = []
    out = 0.0
    for end in ends:
        low, high = (_height(table, at) for at in (out + 2 * HAIR, end))
        points += [(low, out), (high, end)]
        out = end
    if table.plus is not None and table.greatest is None:
        return (*points, (_height(table, out + 2 * HAIR), out), (_height(table, out + reach), out + reach))
    return (*points, (points[-1][0] + reach, out)) if points else ()


def _height(table: Table, projection: float) -> float:
    return round(float(table.least(np.array([projection]))[0]), 4)
