"""What a small picture of one measure is made of, and how it is framed. What is in it stands elsewhere."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from render.drawing import Drawing, Fill, Mark, Pen, Polyline, Region
from render.extent import Box, box_ring

WIDE, HIGH = 3.0, 1.7
"""Room for what is drawn, inches on paper. Shop choice."""
AROUND, LEAST = 2.5, 12.0
"""How many times its size is shown round a small measure, and how many inches at least."""


@dataclass(frozen=True, slots=True)
class FieldPicture:
    """`ground` is what is measured, `marked` the measure itself; `note` says what is not as it is, if any."""

    ground: Drawing
    marked: Drawing
    note: str = ""

    @property
    def whole(self) -> Drawing:
        """Both, for paper and files."""
        return self.ground.plus(*self.marked.marks)


def frame_around(box: Box, size: float, least: float = LEAST) -> Box:
    """A frame of the picture's own shape round a small measure, model inches."""
    high = max(AROUND * size, least)
    wide = high * WIDE / HIGH
    x, y = (box[0] + box[2]) / 2, (box[1] + box[3]) / 2
    return x - wide / 2, y - high / 2, x + wide / 2, y + high / 2


def fit_ratio(box: Box) -> float:
    """Model inches to an inch of paper at which `box` fits the picture."""
    return max((box[2] - box[0]) / WIDE, (box[3] - box[1]) / HIGH)


def draw_box(fill: Fill, box: Box, pen: Pen) -> Iterator[Mark]:
    """A filled box with its outline."""
    yield Region(fill, (box_ring(box),))
    yield Polyline(pen, box_ring(box), closed=True)
