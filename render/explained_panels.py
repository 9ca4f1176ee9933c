"""Findings of solid panels drawn: the grooves beside one, at the dampest, as cut and at the driest."""

from __future__ import annotations

from collections.abc import Iterator

from model.check.finding import Finding
from model.check.panels import Floating, list_floating
from model.reference.panels import LEAST_HELD, PLAY
from model.surround import Surround
from model.units import format_length
from render.drawing import Fill, Lines, Mark, Pen, Point, Polyline, Region, Ring
from render.explained_base import write

BESIDE = 1.25
"""How much of each stile or rail is shown, and of the panel before it is broken off, in."""
BREAK = 0.5
"""Between the two ends of a panel that is drawn broken, in."""
APART = 0.62
"""Between two of the three sections, inches on paper."""


def draw_panels_page(surround: Surround, finding: Finding, ratio: float) -> list[Mark]:
    """Three sections across the grain, one under the other."""
    floating = next(f for f in list_floating(surround) if f.part == finding.part)
    board, reveal = surround.job.design.board.thickness, _reveal(surround, floating)
    panel = surround.job.design.panel.thickness
    across, depth = floating.width - floating.across, floating.groove.depth
    states = (
        (f"Dampest: {floating.free:.3f} in. free of both grooves together", (depth - floating.free / 2,) * 2),
        (f"As cut: {2 * depth - across:.3f} in. free of both together", (across / 2,) * 2),
        (f"Driest, pushed over: {floating.held:.3f} in. still held", (depth, floating.held)),
    )
    marks: list[Mark] = []
    for i, (said, reach) in enumerate(states):
        low = -i * (board + APART * ratio)
        z = (low, low + board - reveal - panel, low + board - reveal, low + board)
        marks += _draw_section(z, depth, (reach[0], reach[1]))
        marks.append(write(said, (BESIDE + BREAK / 2, low - 0.22 * ratio), ratio))
    marks += _draw_asked(floating, board, ratio)
    deep = format_length(depth, surround.job.about.length_style)
    marks.append(write(f"Grooves {deep} deep", (BESIDE + BREAK / 2, board + 0.14 * ratio), ratio))
    return marks


def _reveal(surround: Surround, floating: Floating) -> float:
    layout = surround.layout
    frames = [*(side.frame for side in layout.sides), layout.frieze_frame]
    frames += [layout.over.frame] if layout.over else []
    return next(frame.reveal for frame in frames if frame.groove is floating.groove)


def _draw_section(
    z: tuple[float, float, float, float], depth: float, reach: tuple[float, float]
) -> Iterator[Mark]:
    """Both members and what the panel's ends reach into their grooves; `z` are the four levels."""
    far = 2 * BESIDE + BREAK
    for turn, at, into in ((1.0, 0.0, reach[0]), (-1.0, far, reach[1])):
        member: Ring = (
            (-BESIDE, z[0]), (0.0, z[0]), (0.0, z[1]), (-depth, z[1]), (-depth, z[2]), (0.0, z[2]),
            (0.0, z[3]), (-BESIDE, z[3]),
        )  # fmt: skip
        end: Ring = ((-into, z[1]), (BESIDE, z[1]), (BESIDE, z[2]), (-into, z[2]))
        for fill, ring in ((Fill.CUT_WOOD, member), (Fill.FAULT, end)):
            placed = tuple((at + turn * x, y) for x, y in ring)
            yield Region(fill, (placed,))
            yield Polyline(Pen.OUTLINE, placed, True)


def _draw_asked(floating: Floating, board: float, ratio: float) -> Iterator[Mark]:
    """The play at the dampest and the least hold at the driest, dashed."""
    low = -2 * (board + APART * ratio)
    far, depth = 2 * BESIDE + BREAK, floating.groove.depth
    play: tuple[Point, ...] = ((-depth + PLAY.value, 0.0), (far + depth - PLAY.value, 0.0))
    for x, y in (*play, (far + LEAST_HELD.value, low)):
        yield Lines(Pen.CLEARANCE, ((x, y - 0.06 * ratio, x, y + board + 0.06 * ratio),))
