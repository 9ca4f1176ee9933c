"""The page that explains one finding: a drawing of its rule on this surround, the arithmetic, the source."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent
from PySide6.QtWidgets import QDialog, QHBoxLayout, QScrollArea, QVBoxLayout, QWidget

from app.dialog_parts import build_close, build_words, fit_screen
from app.painter import gather_drawing, paint_drawing, place_within
from app.theme import RHYTHM, SMALL_POINTS, TEXT_POINTS, text_font
from app.thin_bar import ThinBar
from render.drawing import Drawing, Fill
from render.pens import TINTS

if TYPE_CHECKING:
    from model.check.explain import Explanation
    from model.check.finding import Finding
    from model.surround import Surround

SIZE = QSize(1040, 620)
TEXT_WIDTH = 420
CLEAR = 3 * RHYTHM
OUTDATED = "The design has changed since: this is of how it was. Explain it again for how it is now."
LINE_DOTS = 4.0
"""Pixels to a millimetre of line width, as on the sheet."""


class Picture(QWidget):
    """A drawing on paper, as large as fits."""

    def __init__(self, drawing: Drawing) -> None:
        super().__init__()
        self._gathered = gather_drawing(drawing)
        self.setMinimumSize(220, 160)
        self.setAccessibleName("Drawing of the rule on this surround")

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paper, and the drawing in its middle."""
        place = place_within(self._gathered.box, self.rect().adjusted(CLEAR, CLEAR, -CLEAR, -CLEAR))
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), QColor(TINTS[Fill.PAPER]))
            paint_drawing(painter, self._gathered, place, LINE_DOTS)


class ExplainedWindow(QDialog):
    """One finding as it was when it was asked about; it stays while the work goes on."""

    def __init__(self, parent: QWidget, explanation: Explanation, drawing: Drawing, legend: str = "") -> None:
        super().__init__(parent)
        self.setWindowTitle(explanation.title)
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        fit_screen(self, SIZE)
        self.texts: list[str] = []
        self.outdated = build_words(OUTDATED)
        self.outdated.setFont(text_font(SMALL_POINTS, bold=True))
        self.outdated.hide()
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(0)
        row.addWidget(Picture(drawing), 1)
        row.addWidget(self._build_text(explanation, legend))

    def say_outdated(self) -> None:
        """The design has gone on: what stands here is of how it was."""
        self.outdated.show()

    def _build_text(self, explanation: Explanation, legend: str) -> QWidget:
        page = QWidget()
        column = QVBoxLayout(page)
        column.setContentsMargins(2 * RHYTHM, 2 * RHYTHM, 2 * RHYTHM, RHYTHM)
        column.setSpacing(RHYTHM)
        column.addWidget(self.outdated)
        self._say(column, explanation.answer, bold=True)
        if explanation.clauses:
            self._say(column, "The rule", heading=True)
        for clause in explanation.clauses:
            self._say(column, clause)
        if explanation.arithmetic:
            self._say(column, "With this surround's numbers", heading=True)
        for line in explanation.arithmetic:
            self._say(column, line)
        self._say(column, "Where it is read", heading=True)
        self._say(column, explanation.source)
        self._say(column, explanation.decides, small=True)
        if legend:
            self._say(column, legend, small=True)
        column.addStretch(1)
        scroll = QScrollArea()
        scroll.setWidget(page)
        scroll.setAccessibleName("The rule in words")
        scroll.setWidgetResizable(True)
        scroll.setVerticalScrollBar(ThinBar(Qt.Orientation.Vertical))
        scroll.setFrameShape(QScrollArea.Shape.NoFrame)
        scroll.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        whole = QWidget()
        whole.setFixedWidth(TEXT_WIDTH)
        outer = QVBoxLayout(whole)
        outer.setContentsMargins(0, 0, 0, RHYTHM)
        outer.addWidget(scroll, 1)
        outer.addWidget(build_close(self), 0, Qt.AlignmentFlag.AlignHCenter)
        return whole

    def _say(
        self, column: QVBoxLayout, text: str, bold: bool = False, heading: bool = False, small: bool = False
    ) -> None:
        label = build_words(text)
        label.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        label.setFont(text_font(SMALL_POINTS if small or heading else TEXT_POINTS, bold=bold or heading))
        if heading:
            label.setContentsMargins(0, RHYTHM, 0, 0)
        self.texts.append(text)
        column.addWidget(label)


def explain_in_window(parent: QWidget, surround: Surround, finding: Finding) -> ExplainedWindow:
    """Open the page of one finding beside the work."""
    from model.check.explain import explain_finding
    from render.explained import draw_explanation, list_legend

    drawing = draw_explanation(surround, finding)
    legend = " ".join(list_legend(drawing))
    shown = ExplainedWindow(parent, explain_finding(surround, finding), drawing, legend)
    shown.show()
    return shown
