"""The page on which a picture of some surround is marked, and its proportions are read off.

What is read off stands in model.photo.likeness; what passes to the job in app.likening.
"""

from __future__ import annotations

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QPainter
from PySide6.QtWidgets import QDialog, QHBoxLayout, QVBoxLayout, QWidget

from app.buttons import PlainButton, StrongButton
from app.dialog_parts import build_close, build_side, build_words, fit_screen
from app.photo_canvas import CORNERS, PhotoCanvas
from app.theme import RHYTHM, SMALL_POINTS, text_font
from render.drawing import Ring

SIZE = QSize(1180, 680)
BESIDE = 340
BEGIN = "Choose a picture of a surround that you like: a JPEG, PNG or WebP file. It is not kept."
CLEAR, PLATE = 14, 170
"""Pixels from a ring's middle to its name, and how dark the name's plate is, to 255."""
MARK = (
    "Drag the rings: four to the corners of its opening, the others onto the lines they are named after. By "
    "key: Page up and Page down pick one, arrows move it, Shift ten times as far, Escape puts it back."
)


class LikenessCanvas(PhotoCanvas):
    """A picture with the opening's corners, and a ring for each line of the surround with its name beside it.

    `names` are those of the marks that follow the corners.
    """

    def __init__(self, names: tuple[str, ...]) -> None:
        super().__init__()
        self._names = names
        self._lines: tuple[Ring, ...] = ()
        self.setAccessibleName("Picture of a surround")
        self.setAccessibleDescription(MARK)

    def show_lines(self, lines: tuple[Ring, ...]) -> None:
        """The lines that the marks stand for, in the picture's pixels."""
        self._lines = lines
        self.update()

    def _paint_lines(self, painter: QPainter) -> None:
        for one, other in self._lines:
            painter.drawLine(self.to_screen(one), self.to_screen(other))

    def _paint_corners(self, painter: QPainter) -> None:
        super()._paint_corners(painter)
        marks = self.corners[len(CORNERS) :]
        for place, line, name in zip(marks, self._lines, self._names, strict=False):
            one, other = (self.to_screen(end) for end in line)
            upright = abs(one.y() - other.y()) > abs(one.x() - other.x())
            self._paint_name(painter, self.to_screen(place), name, upright)

    def _paint_name(self, painter: QPainter, at: QPointF, name: str, upright: bool) -> None:
        """On a dark plate, so that it shows on any picture, along its line."""
        picked = self.active >= len(CORNERS) and self._names[self.active - len(CORNERS)] == name
        painter.save()
        painter.setFont(text_font(SMALL_POINTS, bold=picked))
        painter.translate(at)
        if upright:
            painter.rotate(-90)
        size = painter.fontMetrics().size(0, name)
        plate = QRectF(CLEAR, -size.height() - 2, size.width() + RHYTHM, size.height())
        painter.fillRect(plate, QColor(0, 0, 0, PLATE))
        painter.setPen(QColor("white"))
        painter.drawText(plate, int(Qt.AlignmentFlag.AlignCenter), name)
        painter.restore()


class LikenessWindow(QDialog):
    """Shows the picture, its marks and what they tell."""

    gone = Signal()

    def __init__(self, parent: QWidget, names: tuple[str, ...]) -> None:
        super().__init__(parent)
        self.setWindowTitle("From a picture you like")
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        fit_screen(self, SIZE)
        self._names = (*(f"opening, {name.lower()}" for name in CORNERS), *names)
        self.canvas = LikenessCanvas(names)
        self.hint, self.picked = build_words(BEGIN, SMALL_POINTS), build_words("", SMALL_POINTS)
        self.sizes, self.told = build_words(""), build_words("")
        self.open_button = StrongButton("Choose a picture…", "Choose a JPEG, PNG or WebP file")
        self.apply_button = PlainButton(
            "Give this fireplace these proportions", "One step, which can be undone; clearances are kept"
        )
        self.undo_button = PlainButton("Undo", "Put the sizes back as they were")
        for button in (self.open_button, self.apply_button, self.undo_button):
            button.setAutoDefault(False)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(0)
        row.addWidget(self.canvas, 1)
        row.addWidget(self._build_side())
        self.canvas.picked.connect(self.name_mark)
        self.show_having(False)

    def _build_side(self) -> QWidget:
        column = QVBoxLayout()
        parts = (self.open_button, self.hint, self.picked, self.sizes, self.apply_button)
        for part in (*parts, self.told, self.undo_button):
            column.addWidget(part)
        column.addStretch(1)
        column.addWidget(build_close(self))
        return build_side(column, BESIDE, "What the picture tells")

    def name_mark(self, mark: int) -> None:
        """Say which mark the arrow keys move."""
        self.picked.setText(f"Picked: {self._names[mark]}.")

    def show_having(self, has_picture: bool) -> None:
        """Offer only what can be done, with a picture and without one."""
        for part in (self.picked, self.sizes, self.apply_button):
            part.setVisible(has_picture)
        self.hint.setText(MARK if has_picture else BEGIN)
        self.undo_button.hide()
        self.say("")
        if has_picture:
            self.name_mark(0)

    def say(self, text: str, can_undo: bool = False) -> None:
        """Say what came of it."""
        self.told.setText(text)
        self.told.setVisible(bool(text))
        self.undo_button.setVisible(can_undo)

    def done(self, result: int) -> None:
        """Tell whoever put it up; Escape, its own button and the window's frame all come here."""
        self.gone.emit()
        super().done(result)
