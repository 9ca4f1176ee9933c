"""Several views set out round the front view, full size, for a drawing without sheets."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from math import ceil, floor

from render.drawing import Drawing, Placed
from render.extent import drawing_extent

GAP = 1.5
"""Clear between neighbouring views, inches on paper. Shop choice."""

_PLAN, _LEFT = "plan", "left"
"""What the names of views begin with that are seen from above, and from the left; others from the right."""
_LEVEL = ("front", "side", "vertical_section")
"""Views in this order from left to right, then others as they are given."""


def place_third_angle(views: Iterable[tuple[str, Drawing]], above: float | None = None) -> tuple[Placed, ...]:
    """The named views in third-angle order; `Placed.at` is in model inches, for a model space at 1:1.

    What is seen from the right stands right of the front view at the same heights, what is seen from the left
    stands left of it; what is seen from above stands over it, centre line on centre line, in the order given.
    Views lie whole inches apart. The front view stands at the origin, or as many whole inches higher as it
    takes for all marks to lie above `above`.
    """
    given = list(views)
    level = sorted((v for v in given if not v[0].startswith(_PLAN)), key=lambda view: _rank(view[0]))
    placed, top = _place_level(level)
    for name, drawing in given:
        if name.startswith(_PLAN):
            _, low, _, high = drawing_extent(drawing)
            y = float(ceil(top + GAP * drawing.ratio - low)) if placed else 0.0
            placed.append(Placed(drawing, (0.0, y), name))
            top = y + high
    return tuple(placed) if above is None else _raise_views(placed, above)


def place_beside(placed: Sequence[Placed], others: Iterable[Placed]) -> tuple[Placed, ...]:
    """`others` in a column right of all that is `placed`, from its lowest mark upward."""
    boxes = [(view.at, drawing_extent(view.drawing)) for view in placed if view.drawing.marks]
    right = max((at[0] + box[2] for at, box in boxes), default=0.0)
    y = min((at[1] + box[1] for at, box in boxes), default=0.0)
    found = []
    for view in others:
        left, low, _, high = drawing_extent(view.drawing)
        gap = GAP * max((v.drawing.ratio for v in placed), default=1.0)
        at = (float(ceil(right + gap - left)), float(ceil(y - low)))
        found.append(replace(view, at=at))
        y = at[1] + high + gap
    return tuple(found)


def _raise_views(placed: Sequence[Placed], above: float) -> tuple[Placed, ...]:
    lowest = min((view.at[1] + drawing_extent(view.drawing)[1] for view in placed), default=above)
    up = max(0.0, float(ceil(above - lowest)))
    return tuple(replace(view, at=(view.at[0], view.at[1] + up)) for view in placed)


def _rank(name: str) -> int:
    return _LEVEL.index(name) if name in _LEVEL else len(_LEVEL)


def _place_level(views: list[tuple[str, Drawing]]) -> tuple[list[Placed], float]:
    """The views side by side, the first at the origin, and the height their marks reach."""
    placed: list[Placed] = []
    left = right = top = 0.0
    for name, drawing in views:
        low, _, high, y = drawing_extent(drawing)
        top = max(top, y) if placed else y
        if not placed:
            x, left, right = 0.0, low, high
        elif name.startswith(_LEFT):
            x = float(floor(left - GAP * drawing.ratio - high))
            left = x + low
        else:
            x = float(ceil(right + GAP * drawing.ratio - low))
            right = x + high
        placed.append(Placed(drawing, (x, 0.0), name))
    return placed, top
