"""Front elevations on paper at one scale and on one line of heights, each with the few sizes that matter."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from PySide6.QtCore import QRectF, Qt, Signal
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QWidget

from app.painter import Gathered, Place, gather_drawing, paint_drawing
from app.theme import RHYTHM
from render.drawing import Drawing, Fill
from render.pens import TINTS

if TYPE_CHECKING:
    from collections.abc import Sequence

    from model.check.finding import Finding
    from model.surround import Surround

CLEAR = 2 * RHYTHM
LINE_DOTS = 3.3
"""Pixels to a millimetre of line width."""
PAPER_DOTS = 66.0
"""Pixels to an inch of paper: how large writing is."""
FINEST, COARSEST = 2.0, 60.0
ROUNDS = 3


@dataclass(frozen=True, slots=True)
class Worked:
    """What a picture is drawn from."""

    surround: Surround
    findings: tuple[Finding, ...]


def draw_few(worked: Worked, ratio: float) -> Drawing:
    """The front with few sizes; what fails is marked on it."""
    from render.front_parted import CEILING
    from render.offer import shows_few
    from render.view_dimensions import list_strings
    from render.views import ViewOptions, draw_view

    strings = tuple(string for string in list_strings(worked.surround, "front") if shows_few(string))
    options = ViewOptions(ratio=ratio, strings=strings, findings=worked.findings)
    whole = draw_view(worked.surround, "front", options)
    return Drawing(tuple(mark for mark in whole.marks if mark.stands_for not in CEILING), ratio)


class SidePicture(QWidget):
    """One front on its paper. `resized` says that another scale may fit."""

    resized = Signal()

    def __init__(self, name: str) -> None:
        super().__init__()
        self._gathered: Gathered | None = None
        self._scale, self._foot = 1.0, 0.0
        self.setMinimumSize(200, 160)
        self.setAccessibleName(name)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)

    @property
    def box(self) -> QRectF:
        """What the drawing takes up, model inches."""
        return self._gathered.box if self._gathered else QRectF()

    @property
    def scale(self) -> float:
        """Pixels to a model inch."""
        return self._scale

    def show_drawing(self, gathered: Gathered) -> None:
        """Take another drawing."""
        self._gathered = gathered
        self.update()

    def place(self, scale: float, foot: float) -> None:
        """Paint at `scale`, the model's height 0 so many pixels below the top."""
        self._scale, self._foot = scale, foot
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paper, and the drawing across its middle."""
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), QColor(TINTS[Fill.PAPER]))
            if self._gathered is not None:
                left = self.rect().center().x() - self._scale * self.box.center().x()
                paint_drawing(painter, self._gathered, Place(self._scale, left, self._foot), LINE_DOTS)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Another room."""
        super().resizeEvent(event)
        self.resized.emit()


def lay_out(pictures: Sequence[SidePicture], worked: Sequence[Worked]) -> float:
    """Draw and place all of them at the largest scale at which each finds room; pixels to a model inch.

    Writing keeps its size, so that a drawing takes up more of the model the smaller its scale is: the scale
    is found in a few rounds.
    """
    scale = 0.0
    ratio = 12.0
    for _ in range(ROUNDS):
        boxes = []
        for picture, each in zip(pictures, worked, strict=True):
            picture.show_drawing(gather_drawing(draw_few(each, ratio)))
            boxes.append(picture.box)
        top, foot = min(box.top() for box in boxes), max(box.bottom() for box in boxes)
        scale = _fit(pictures, boxes, foot - top)
        wanted = min(max(PAPER_DOTS / scale, FINEST), COARSEST)
        if abs(wanted - ratio) < 0.03 * ratio:
            break
        ratio = wanted
    middle = min(picture.height() for picture in pictures) / 2
    for picture in pictures:
        picture.place(scale, middle + scale * (top + foot) / 2)
    return scale


def _fit(pictures: Sequence[SidePicture], boxes: Sequence[QRectF], high: float) -> float:
    """The largest scale at which each box fits its picture's width, and `high` its height."""
    scales = []
    lowest = min(picture.height() for picture in pictures)
    for picture, box in zip(pictures, boxes, strict=True):
        wide, tall = picture.width() - 2 * CLEAR, lowest - 2 * CLEAR
        scales += [max(wide, 40) / max(box.width(), 1.0), max(tall, 40) / max(high, 1.0)]
    return min(scales)
