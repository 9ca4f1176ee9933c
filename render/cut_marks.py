"""The ends of a cutting plane's line beside a view: a heavy stroke, an arrow the way it looks, its letter."""

from __future__ import annotations

import numpy as np

from render.drawing import Anchor, Mark, Pen, Point, Polyline, Text
from render.number_places import Paper, box_round

START, STROKE = 0.06, 0.24
"""From the view's outline to the stroke's ends, inches on paper: clear of the first dimension line."""
ARROW = 0.1
"""How long the arrow is, inches on paper."""
LETTER = 2.6 / 25.4
"""Capitals of the letter, inches on paper."""


CUT_MARK = "cut mark"
"""What the strokes of such a mark stand for: no board, and no size of the model's."""

REACH = 8
"""How far off the stroke a letter may stand, in halves of its height. Shop choice."""


def draw_cut_end(
    at: float, end: float, out: float, level: bool, letter: str, ratio: float, paper: Paper
) -> list[Mark]:
    """One end of the line at `at`, where the view ends at `end` and `out` (1 or -1) leads away from it.

    A `level` plane is looked down on, an upright one from the right. The letter stands on the arrow's far
    side of the stroke, or where else round it the `paper` is free.
    """
    near, far = end + out * START * ratio, end + out * STROKE * ratio
    tip = at - ARROW * ratio
    stroke = ((near, at), (far, at))
    arrow = ((far, at), (far - out * 0.03 * ratio, tip), (far - out * 0.06 * ratio, at))
    middle = _find_place(at, (near, far), level, ratio, paper)
    return [
        Polyline(Pen.CUT, tuple(_turn(p, level) for p in stroke)),
        Polyline(Pen.EDGE, tuple(_turn(p, level) for p in arrow), closed=True),
        Text(letter, (middle[0], middle[1] - LETTER * ratio / 2), LETTER * ratio, Anchor.MIDDLE, bold=True),
    ]


def _find_place(at: float, span: Point, level: bool, ratio: float, paper: Paper) -> Point:
    """The middle of the letter's box: the first that is free, else the first of all; it is taken."""
    beside, step = (0.04 + LETTER * 0.6) * ratio, LETTER * 0.5 * ratio
    tried = [
        _turn((sum(span) / 2 + aside * step, at + off), level)
        for aside in (0, 1, -1, 2, -2)
        for k in range(REACH)
        for off in (beside + k * step, -(beside + ARROW * ratio + k * step))
    ]
    boxes = np.array([box_round(p, LETTER * ratio * 0.9, LETTER * ratio * 1.3) for p in tried])
    free = paper.is_free(boxes)
    place = int(np.argmax(free)) if free.any() else 0
    paper.write(tuple(boxes[place].tolist()))
    return tried[place]


def _turn(point: Point, level: bool) -> Point:
    return point if level else (point[1], point[0])
