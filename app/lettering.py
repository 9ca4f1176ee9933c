"""For what ratio a sheet is lettered: its writing has the right size at the scale at which the sheet fits."""

from __future__ import annotations

from collections.abc import Callable

from app.canvas import Canvas

FIRST_RATIO = 12.0
FINEST_RATIO, COARSEST_RATIO = 2.0, 60.0
NEAR_ENOUGH = 0.05
"""Writing this much off its size is left alone."""
MOST_WRITING = 2.5
"""How often writing and dimension lines may make the sheet larger than wood and masonry; on a small sheet
they are drawn smaller instead."""
ROUNDS = 4


def letter_sheet(canvas: Canvas, ratio: float, draw: Callable[[float], object]) -> None:
    """Have what is on the canvas, lettered for `ratio`, drawn for others until its writing has its size.

    `draw` puts the same views onto the canvas, lettered for another ratio.
    """
    wanted = _foresee_ratio(canvas, ratio)
    for _ in range(ROUNDS):
        off = canvas.paper_dots / canvas.fit_scale() - ratio
        if abs(off) < NEAR_ENOUGH * ratio:
            return
        most = MOST_WRITING * canvas.paper_dots / canvas.solid_scale()
        wanted = min(max(wanted, FINEST_RATIO), most, COARSEST_RATIO)
        if abs(wanted - ratio) < NEAR_ENOUGH * ratio:
            return
        draw(wanted)
        if canvas.is_fitted:
            canvas.fit()
        wanted, ratio = _next_ratio(canvas, wanted, ratio, off), wanted


def _foresee_ratio(canvas: Canvas, ratio: float) -> float:
    """What is right if writing grows evenly with the ratio, while wood and masonry stay as they are."""
    whole, solid, room = canvas.content_box(), canvas.solid_box(), canvas.room()
    dots = canvas.paper_dots
    wanted = FINEST_RATIO
    for size, wood, clear in (
        (whole.width(), solid.width(), room.width()),
        (whole.height(), solid.height(), room.height()),
    ):
        left = clear - dots * (size - wood) / ratio
        wanted = max(wanted, dots * wood / left if left > 0 else COARSEST_RATIO)
    return wanted


def _next_ratio(canvas: Canvas, ratio: float, before: float, off_before: float) -> float:
    """The ratio to try next: a drawing grows evenly with it, so two tries show where it will be right."""
    off = canvas.paper_dots / canvas.fit_scale() - ratio
    wanted = ratio + off
    if off_before != off:
        wanted = ratio - off * (ratio - before) / (off - off_before)
    return wanted if wanted > FINEST_RATIO else ratio + off
