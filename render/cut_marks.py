"""The ends of a cutting plane's line beside a view: a heavy stroke, an arrow the way it looks, its letter."""

from __future__ import annotations

from collections.abc import Sequence

from render.drawing import Anchor, Mark, Pen, Point, Polyline, Text

START, STROKE = 0.06, 0.24
"""From the view's outline to the stroke's ends, inches on paper: clear of the first dimension line."""
ARROW = 0.1
"""How long the arrow is, inches on paper."""
LETTER = 2.6 / 25.4
"""Capitals of the letter, inches on paper."""


CUT_MARK = "cut mark"
"""What the strokes of such a mark stand for: no board, and no size of the model's."""


def draw_cut_end(
    at: float, end: float, out: float, level: bool, letter: str, ratio: float, taken: Sequence[float]
) -> list[Mark]:
    """One end of the line at `at`, where the view ends at `end` and `out` (1 or -1) leads away from it.

    A `level` plane is looked down on, an upright one from the right. The letter stands on the arrow's far
    side of the stroke unless one of the places `taken` along the view runs through it there.
    """
    near, far = end + out * START * ratio, end + out * STROKE * ratio
    tip = at - ARROW * ratio
    stroke = ((near, at), (far, at))
    arrow = ((far, at), (far - out * 0.03 * ratio, tip), (far - out * 0.06 * ratio, at))
    lies = -1.0 if _is_taken(at, 1.0, ratio, taken) else 1.0
    side = at + lies * (0.03 + LETTER / 2) * ratio - (0 if lies > 0 else ARROW * ratio)
    middle = _turn(((near + far) / 2, side), level)
    return [
        Polyline(Pen.CUT, tuple(_turn(p, level) for p in stroke), stands_for=CUT_MARK),
        Polyline(Pen.EDGE, tuple(_turn(p, level) for p in arrow), closed=True, stands_for=CUT_MARK),
        Text(letter, (middle[0], middle[1] - LETTER * ratio / 2), LETTER * ratio, Anchor.MIDDLE, bold=True),
    ]


def _is_taken(at: float, way: float, ratio: float, taken: Sequence[float]) -> bool:
    low, high = sorted((at, at + way * (0.06 + LETTER) * ratio))
    return any(low <= place <= high for place in taken)


def _turn(point: Point, level: bool) -> Point:
    return point if level else (point[1], point[0])
