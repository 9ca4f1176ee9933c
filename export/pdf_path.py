"""A path as a PDF page has it: numbers as short as they may be, the same ones for the same places.

It stands in for reportlab's own, which takes three times as long over its numbers. No pens here.
"""

from __future__ import annotations

from collections.abc import Iterable

from render.drawing import Segment

NOTHING = 1e-7
"""Points nearer to 0 than this are 0."""


class PagePath:
    """Lines in points from the page's lower left corner; `canvas.drawPath` takes it."""

    def __init__(self) -> None:
        self._code: list[str] = []
        self._known: dict[float, str] = {}

    def moveTo(self, x: float, y: float) -> None:
        """Begin a line at a place."""
        self._code.append(f"{self._tell(x)} {self._tell(y)} m")

    def lineTo(self, x: float, y: float) -> None:
        """Go on straight to a place."""
        self._code.append(f"{self._tell(x)} {self._tell(y)} l")

    def close(self) -> None:
        """Go back to where the line began."""
        self._code.append("h")

    def strokes(self, segments: Iterable[Segment], scale: float, left: float, bottom: float) -> None:
        """Lines of their own, `scale` points to their unit, their origin at (left, bottom)."""
        tell, put = self._tell, self._code.append
        for x1, y1, x2, y2 in segments:
            put(f"{tell(left + x1 * scale)} {tell(bottom + y1 * scale)} m")
            put(f"{tell(left + x2 * scale)} {tell(bottom + y2 * scale)} l")

    def getCode(self) -> str:
        """What stands in the page's stream."""
        return " ".join(["n", *self._code]) if self._code else ""

    def _tell(self, number: float) -> str:
        if number not in self._known:
            self._known[number] = format_points(number)
        return self._known[number]


def format_points(number: float) -> str:
    """A number with seven figures at most, six of them decimals, without needless ones.

    >>> format_points(0.25), format_points(-72.0), format_points(123.456789)
    ('.25', '-72', '123.4568')
    """
    size = abs(number)
    if size <= NOTHING:
        return "0"
    decimals = 6 if size < 10 else 5 if size < 100 else 4 if size < 1000 else 3 if size < 10000 else 2
    text = f"{number:.{decimals}f}".rstrip("0").rstrip(".")
    return text[1:] if text[0] == "0" and len(text) > 1 else text
