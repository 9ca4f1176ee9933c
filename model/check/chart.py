"""A chart as it holds at one site: the tables in force, and what each asks at any projection.

Reading points of wood against it is model.check.manual's.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise
from math import inf, isfinite

import numpy as np

from model.check.clearance import HAIR, Lengths
from model.check.nearest import Plane, list_step_planes, list_tie_planes
from model.check.regime import LOCAL
from model.reference.sourced import Sourced, Standing
from model.site import AT_OPENING, LINEAR, Chart, Local, Opening, Site

CHART, AMENDMENT = "the manual's chart", "the local amendment"
NOT_NAMED = "the chart as entered; its manual and page are not named"
LAW_NOT_NAMED = "the amendment as entered; its text is not named"
Rows = Sequence[tuple[float, float]]
"""Greatest projection and the least distance up to it, by rising projection."""


@dataclass(frozen=True)
class Table:
    """One table of a chart, its distances from the opening, inches.

    Between `rows` it steps up to the next one, or runs `linear`. Past the last one the projection and `plus`
    are enough, never less than the last row; nothing is enough where that is None. `shift` is from the
    opening's top up to what the rows count from; nothing may be nearer than `none_within`.
    """

    rows: tuple[tuple[float, float], ...]
    linear: bool = False
    plus: float | None = None
    greatest: float | None = None
    none_within: float = 0.0
    shift: float = 0.0

    @property
    def is_known(self) -> bool:
        """Whether it says anything."""
        return bool(self.rows) or self.plus is not None

    @property
    def ends_at(self) -> float:
        """The greatest projection that it permits."""
        end = inf if self.plus is not None else self.rows[-1][0] if self.rows else 0.0
        return min(end, inf if self.greatest is None else self.greatest)

    def least(self, projection: Lengths) -> Lengths:
        """Least distance at each projection: infinite where none is enough, NaN where nothing is known."""
        asked = self._listed(np.asarray(projection, dtype=float)) + self.shift
        if self.greatest is not None:
            asked = np.where(projection > self.greatest + HAIR, np.where(np.isnan(asked), asked, inf), asked)
        found: Lengths = np.maximum(asked, self.none_within)
        return found

    def _listed(self, projection: Lengths) -> Lengths:
        """By the rows, before they are counted from the opening."""
        if not self.rows:
            return np.full(projection.shape, np.nan) if self.plus is None else projection + self.plus
        ends, heights = (np.array(column) for column in zip(*self.rows, strict=True))
        if self.linear:
            within: Lengths = np.interp(projection, ends, heights)
        else:
            within = np.append(heights, heights[-1])[np.searchsorted(ends + HAIR, projection)]
        past = inf if self.plus is None else np.maximum(projection + self.plus, heights[-1])
        return np.where(projection > ends[-1] + HAIR, past, within)

    @cached_property
    def breaks(self) -> tuple[float, ...]:
        """Projections at which what it asks steps up or turns, rising."""
        found = {end for end, _ in self.rows}
        floor = self.none_within - self.shift
        if self.linear:
            for (p0, d0), (p1, d1) in pairwise(self.rows):
                if (d0 - floor) * (d1 - floor) < 0:
                    found.add(p0 + (floor - d0) / (d1 - d0) * (p1 - p0))
        if self.plus is not None:
            found |= {self.rows[-1][1] - self.plus if self.rows else 0.0, floor - self.plus}
        if self.greatest is not None:
            found.add(self.greatest)
        return tuple(sorted(end for end in found if end >= 0))


@dataclass(frozen=True, slots=True)
class HeldChart:
    """What a site's chart asks above the opening and beside it, and where somebody read it.

    `rule` is what findings call it; `above_path` and `beside_path` are the rows of the table in force.
    `counts_from` says from where its heights count, empty for the opening's top.
    """

    above: Table
    beside: Table
    rule: str
    figure: Sourced
    above_path: str
    beside_path: str
    counts_from: str = ""

    @property
    def is_known(self) -> bool:
        """Whether either table says anything."""
        return self.above.is_known or self.beside.is_known


def read_chart(site: Site) -> HeldChart:
    """The manual's chart, or the local amendment where that governs."""
    return _read_local(site.local) if site.rule == LOCAL else _read_manual(site.chart, site.opening)


def _read_local(local: Local) -> HeldChart:
    return HeldChart(
        Table(local.shelf),
        Table(local.legs),
        AMENDMENT,
        cite_chart(local),
        "local.shelf",
        "local.legs",
    )


COUNTED = {"hood": "the hood's edge", "outlet": "the hot-air outlet", "base": "the unit's base"}
"""What heights count from, as it stands in a sentence."""


def _read_manual(chart: Chart, opening: Opening) -> HeldChart:
    elsewhere = chart.datum != AT_OPENING
    lost = elsewhere and chart.datum_height is None
    return HeldChart(
        Table(
            () if lost else chart.shelf_hood if chart.hood else chart.shelf,
            chart.between == LINEAR,
            None if lost else chart.plus,
            chart.greatest,
            chart.none_above or 0.0,
            (chart.datum_height or 0.0) - opening.height if elsewhere else 0.0,
        ),
        Table(chart.legs, chart.between == LINEAR, none_within=chart.none_beside or 0.0),
        CHART,
        cite_chart(chart),
        "chart.datum_height" if lost else "chart.shelf_hood" if chart.hood else "chart.shelf",
        "chart.legs",
        COUNTED.get(chart.datum, ""),
    )


def cite_chart(chart: Chart | Local) -> Sourced:
    """Where the user says that what was entered was read, with no value of its own."""
    unnamed = LAW_NOT_NAMED if isinstance(chart, Local) else NOT_NAMED
    return Sourced(0.0, "in", Standing.ENTERED, chart.source.strip() or unnamed)


def list_chart_planes(chart: HeldChart, opening: Opening) -> tuple[Plane, ...]:
    """Where the chart takes a step or turns, and where its two tables leave equally much at a corner."""
    ties: set[tuple[float, float]] = set()
    for low, high in _list_spans(chart.above, chart.beside):
        near, far = low + (high - low) / 3, low + (high - low) / 1.5
        excess = [_excess(chart, p) for p in (near, far)]
        if all(map(isfinite, excess)):
            slope = (excess[1] - excess[0]) / (far - near)
            ties.add((round(excess[0] - slope * near, 9), round(slope, 9)))
    planes = [plane for excess, slope in sorted(ties) for plane in list_tie_planes(opening, excess, -slope)]
    steps = sorted({*chart.above.breaks, *chart.beside.breaks})
    return (*list_step_planes(steps), *planes)


def _excess(chart: HeldChart, projection: float) -> float:
    """By how much more the table above asks than the one beside."""
    at = np.array([projection])
    with np.errstate(invalid="ignore"):
        return float((chart.above.least(at) - chart.beside.least(at))[0])


def _list_spans(*tables: Table) -> list[tuple[float, float]]:
    """Between two breaks of any of the tables each asks along a straight line."""
    ends = sorted({0.0, *(end for table in tables for end in table.breaks)})
    return list(pairwise((*ends, ends[-1] + 12.0)))


def list_clearing_sides(chart: HeldChart, opening: Opening) -> tuple[Plane, ...]:
    """Boundaries just within what each table asks: where a part moved one way only is tightest next."""
    side, top, within = opening.width / 2, opening.height, 2 * HAIR
    planes: dict[Plane, None] = {}
    for slope, excess in _list_lines(chart.above):
        planes[(0.0, 1.0, -slope, top + excess - within)] = None
    for slope, excess in _list_lines(chart.beside):
        for turn in (-1.0, 1.0):
            planes[(turn, 0.0, -slope, side + excess - within)] = None
    return tuple(planes)


def _list_lines(table: Table) -> list[tuple[float, float]]:
    """Slope and start of each line along which a table asks."""
    lines = []
    for low, high in _list_spans(table):
        near, far = low + (high - low) / 3, low + (high - low) / 1.5
        one, two = table.least(np.array([near, far])).tolist()
        if isfinite(one) and isfinite(two):
            slope = (two - one) / (far - near)
            lines.append((round(slope, 9), round(one - slope * near, 9)))
    return lines
