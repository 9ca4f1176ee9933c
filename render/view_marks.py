"""What is marked over a view on request: the keep-out, the allowed projection, and what fails.

A failing part is marked by a heavy outline, a cross at its worst point and words; never by colour alone.
"""

from __future__ import annotations

from collections.abc import Sequence

from model.check.finding import STATUS_WORD, Finding, Status
from model.check.keep_out import list_allowed_slope, list_keep_out_rings
from model.surround import Surround
from model.units import format_length
from render.dimension_strings import TEXT_HEIGHT
from render.drawing import Anchor, Fill, Hatch, Leader, Lines, Mark, Pen, Point, Polyline, Region, Text
from render.visibility import Look, Projection

KEEP_OUT_HATCH = (60.0, 0.22)
"""Angle in degrees and spacing in inches on paper of the keep-out's hatch. Shop choice."""
CROSS = 0.11
"""Half the size of the cross at a worst point, inches on paper. Shop choice."""
NOTE_SIZE = 0.85
"""Notes over a view beside its dimensions. Shop choice."""


def draw_clearance(surround: Surround, view: str, ratio: float) -> list[Mark]:
    """The band that no wood may enter (front), or how far wood may come forward at each height (side)."""
    site = surround.job.site
    if view == "front":
        return [mark for ring in list_keep_out_rings(site) for mark in _band(ring, ratio)]
    if view in ("side", "vertical_section"):
        return _slope(surround, ratio)
    return []


def _band(ring: Sequence[Point], ratio: float) -> list[Mark]:
    points = tuple(ring)
    angle, spacing = KEEP_OUT_HATCH
    return [
        Hatch(Pen.CLEARANCE, (points,), angle, spacing * ratio, "keep-out"),
        Polyline(Pen.CLEARANCE, points, closed=True, stands_for="keep-out"),
    ]


def _slope(surround: Surround, ratio: float) -> list[Mark]:
    """Above the opening, the line that wood may reach but not pass."""
    slope = list_allowed_slope(surround.job.site)
    if len(slope) < 2:
        return []
    top = surround.layout.opening_top
    line = tuple((-projection, top + above) for above, projection in slope)
    corner = line[-1]
    note = Text("wood stays right of this line", (corner[0], corner[1] + 0.06 * ratio),
                TEXT_HEIGHT * NOTE_SIZE * ratio, Anchor.START, pen=Pen.CLEARANCE)  # fmt: skip
    return [Polyline(Pen.CLEARANCE, line, stands_for="keep-out"), note]


def draw_faults(
    surround: Surround,
    view: str,
    look: Look,
    findings: Sequence[Finding],
    projection: Projection,
    ratio: float,
) -> list[Mark]:
    """Every failing finding that has a place, where this view shows it."""
    marks: list[Mark] = []
    placed = [f for f in findings if f.status is Status.FAIL and f.at is not None]
    if not placed:
        return []
    owners = {mark: i for i, mark in enumerate(surround.marks)}
    whole = view in ("front", "side", "plan")
    seen = set(projection.seen_owners()) if whole else set()
    for row, finding in enumerate(placed):
        for owner in sorted({owners[m] for m in finding.boards if m in owners} & seen):
            marks += [Region(Fill.FAULT, projection.rings_of(owner), finding.part)]
            marks += [Polyline(Pen.FAULT, ring, True, finding.part) for ring in projection.rings_of(owner)]
        marks += _worst_point(surround, view, look, finding, row, ratio)
    return marks


def _worst_point(
    surround: Surround, view: str, look: Look, finding: Finding, row: int, ratio: float
) -> list[Mark]:
    assert finding.at is not None
    x, y = look.point(finding.at)
    size = CROSS * ratio
    cross = ((x - size, y - size, x + size, y + size), (x - size, y + size, x + size, y - size))
    marks: list[Mark] = [Lines(Pen.FAULT, cross, finding.part)]
    if view == "front":
        height = TEXT_HEIGHT * NOTE_SIZE * ratio
        end = (0.0, surround.layout.opening_top * 0.8 - row * 2.2 * height)
        marks.append(
            Leader(((x, y), end), _words(surround, finding), height, Anchor.MIDDLE, Pen.FAULT, finding.part)
        )
    return marks


def _words(surround: Surround, finding: Finding) -> str:
    style = surround.job.about.length_style
    words = f"{finding.part} {STATUS_WORD[finding.status]}"
    if finding.measured is None or finding.limit is None or finding.unit != "in":
        return words
    return f"{words}: {format_length(finding.measured, style)}, wanted {format_length(finding.limit, style)}"
