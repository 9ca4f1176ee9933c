"""The bar that shows whether a sheet was printed at its true size. Paper inches."""

from __future__ import annotations

from dataclasses import replace

from render.drawing import MM, Anchor, Fill, Lines, Mark, Pen, Region, Segment, Text

INCHES, TENS = 4, 10
"""How far the bar is divided: whole inches, and tens of millimetres to 100 mm."""
THICK = 2.2 * MM
PARTED = 0.6 * MM
"""Clear between the inches and the millimetres."""
HEIGHT = 2.5 * MM
LEVEL_LABEL = "Print at 100 %: this bar measures 4 in. above and 100 mm below."
LABEL = "Print at 100 %: this bar measures 4 in. on the left and 100 mm on the right."


def check_bar_marks(right: float, bottom: float) -> tuple[Mark, ...]:
    """An upright bar with `right` its right edge: inches on its left, tens of millimetres on its right.

    Its label reads from the right, left of it; both start at `bottom`.
    """
    middle = right - THICK - PARTED / 2
    inch_side = _division(middle - PARTED / 2, -THICK, bottom, 1.0, INCHES)
    mm_side = _division(middle + PARTED / 2, THICK, bottom, 10 * MM, TENS)
    label = Text(LABEL, (right - 2 * THICK - PARTED - 1.4 * MM, bottom), HEIGHT, Anchor.START, rotation=90)
    return (label, *inch_side, *mm_side)


def _division(edge: float, reach: float, bottom: float, step: float, count: int) -> tuple[Mark, ...]:
    """One side: every second part dark, a stroke at each end of every part."""
    strokes: list[Segment] = [(edge, bottom, edge, bottom + step * count)]
    strokes += [(edge, bottom + step * n, edge + reach, bottom + step * n) for n in range(count + 1)]
    dark = [
        Region(
            Fill.OPENING,
            (
                (
                    (edge, bottom + step * n),
                    (edge + reach, bottom + step * n),
                    (edge + reach, bottom + step * (n + 1)),
                    (edge, bottom + step * (n + 1)),
                ),
            ),
        )
        for n in range(0, count, 2)
    ]
    return (*dark, Lines(Pen.ARRIS, tuple(strokes)))


def level_bar_marks(left: float, bottom: float) -> tuple[Mark, ...]:
    """The same bar lying level, its label over it, with `left` and `bottom` its lower left corner."""
    return tuple(_turn(mark, left, bottom) for mark in check_bar_marks(0.0, 0.0))


def _turn(mark: Mark, left: float, bottom: float) -> Mark:
    """A mark of the upright bar a quarter turn clockwise: what ran up runs to the right."""

    def turn(x: float, y: float) -> tuple[float, float]:
        return left + y, bottom - x

    match mark:
        case Text():
            return replace(mark, text=LEVEL_LABEL, at=turn(*mark.at), rotation=mark.rotation - 90)
        case Region():
            return replace(mark, rings=tuple(tuple(turn(*p) for p in ring) for ring in mark.rings))
        case Lines():
            return replace(mark, segments=tuple((*turn(a, b), *turn(c, d)) for a, b, c, d in mark.segments))
        case _:
            raise TypeError(f"a check bar has no {type(mark).__name__}")
