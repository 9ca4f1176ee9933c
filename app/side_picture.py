"""Front elevations on paper at one scale and on one line of heights, each with the few sizes that matter."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QRectF, Qt, Signal
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QWidget

from app.latest import Latest
from app.painter import Gathered, Place, gather_drawing, paint_drawing
from app.theme import RHYTHM
from export.progress import Step
from render.drawing import Drawing, Fill
from render.pens import TINTS

if TYPE_CHECKING:
    from collections.abc import Sequence

    from model.differences import Compared
    from model.surround import Surround

CLEAR = 2 * RHYTHM
LINE_DOTS = 3.3
"""Pixels to a millimetre of line width."""
PAPER_DOTS = 66.0
"""Pixels to an inch of paper: how large writing is."""
FINEST, COARSEST = 2.0, 60.0
ROUNDS = 3
PAINTED_RATIO = 12.0
"""Nothing is lettered on a painted front, so any will do."""


def draw_few(option: Compared, ratio: float) -> Drawing:
    """The front with few sizes; what fails is marked on it."""
    from render.front_parted import CEILING
    from render.offer import shows_few
    from render.view_dimensions import list_strings
    from render.views import ViewOptions, draw_view

    strings = tuple(string for string in list_strings(option.surround, "front") if shows_few(string))
    shown = ViewOptions(ratio=ratio, strings=strings, findings=option.findings)
    whole = draw_view(option.surround, "front", shown)
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


def lay_out(pictures: Sequence[SidePicture], options: Sequence[Compared]) -> float:
    """Draw and place all of them at the largest scale at which each finds room; pixels to a model inch.

    Writing keeps its size, so that a drawing takes up more of the model the smaller its scale is: the scale
    is found in a few rounds.
    """
    scale, ratio = 0.0, 12.0
    for _ in range(ROUNDS):
        scale = show_drawings(pictures, [draw_few(each, ratio) for each in options])
        wanted = min(max(PAPER_DOTS / scale, FINEST), COARSEST)
        if abs(wanted - ratio) < 0.03 * ratio:
            break
        ratio = wanted
    return scale


def show_drawings(pictures: Sequence[SidePicture], drawings: Sequence[Drawing]) -> float:
    """Put the drawings on paper at one scale, their heights on one line; pixels to a model inch."""
    for picture, drawing in zip(pictures, drawings, strict=True):
        picture.show_drawing(gather_drawing(drawing))
    boxes = [picture.box for picture in pictures]
    top, foot = min(box.top() for box in boxes), max(box.bottom() for box in boxes)
    lowest = min(picture.height() for picture in pictures)
    wide = [picture.width() - 2 * CLEAR for picture in pictures]
    scales = [max(room, 40) / max(box.width(), 1.0) for room, box in zip(wide, boxes, strict=True)]
    scale = min(*scales, max(lowest - 2 * CLEAR, 40) / max(foot - top, 1.0))
    for picture in pictures:
        picture.place(scale, lowest / 2 + scale * (top + foot) / 2)
    return scale


class Painted(Latest):
    """Fronts in their colours, with shades and shadows: they take a while. `ready` hands on surrounds and
    drawings.
    """

    ready = Signal(object, object)

    def ask(self, surrounds: tuple[Surround, ...]) -> None:
        """Paint these; what is being painted is let go."""
        self._ask(surrounds)

    def answer(self, asked: tuple[Surround, ...], step: Step) -> tuple[Drawing, ...]:
        """One after the other; between two it may be ended."""
        from render.shaded_front import draw_shaded

        drawings = []
        for i, surround in enumerate(asked):
            step(i / len(asked), "")
            drawings.append(draw_shaded(surround, PAINTED_RATIO))
        return tuple(drawings)

    def hand_on(self, asked: tuple[Surround, ...], answer: tuple[Drawing, ...]) -> None:
        """To whoever listens."""
        self.ready.emit(asked, answer)
