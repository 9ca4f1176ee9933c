"""How many findings there are of each status, in shape and words; seen even when the list is folded away."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from PySide6.QtCore import QRect, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFontMetrics, QPainter, QPaintEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from app.status_shape import paint_shape
from app.theme import RHYTHM, ROW_HEIGHT, colours, status_colour, text_font
from model.check.finding import STATUS_WORD, Finding, Status

SHAPE = 11


class Counts(QWidget):
    """One shape, number and word for each status that occurs, worst first."""

    def __init__(self) -> None:
        super().__init__()
        self._counts: Counter[Status] = Counter()
        self.setSizePolicy(QSizePolicy.Policy.Maximum, QSizePolicy.Policy.Fixed)
        self.setAccessibleName("Counts of findings")

    def show_findings(self, findings: tuple[Finding, ...]) -> None:
        """Count again."""
        counts = Counter(finding.status for finding in findings)
        if counts != self._counts:
            self._counts = counts
            told = ", ".join(text for _, text in self._list_texts())
            self.setAccessibleDescription(told)
            self.setToolTip(told)
            self.updateGeometry()
            self.update()

    def _list_texts(self, short: bool = False) -> Iterator[tuple[Status, str]]:
        for status in Status:
            if self._counts[status]:
                word = "" if short else f" {STATUS_WORD[status]}"
                yield status, f"{self._counts[status]}{word}"

    def _width(self, short: bool) -> int:
        metrics = QFontMetrics(text_font(bold=True))
        widths = (metrics.horizontalAdvance(text) for _, text in self._list_texts(short))
        return sum(SHAPE + RHYTHM + width + 2 * RHYTHM for width in widths)

    def sizeHint(self) -> QSize:
        """As wide as the words are."""
        return QSize(self._width(short=False), ROW_HEIGHT)

    def minimumSizeHint(self) -> QSize:
        """As wide as shapes and figures are; the words are then told by the pointer and to be read out."""
        return QSize(self._width(short=True), ROW_HEIGHT)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Shapes and words in a row."""
        font = text_font(bold=True)
        metrics = QFontMetrics(font)
        left = 0
        with QPainter(self) as painter:
            painter.setFont(font)
            for status, text in self._list_texts(short=self.width() < self._width(short=False)):
                colour = QColor(status_colour(status, colours()))
                paint_shape(painter, status, QRectF(left, (self.height() - SHAPE) / 2, SHAPE, SHAPE), colour)
                left += SHAPE + RHYTHM
                painter.setPen(colour)
                width = metrics.horizontalAdvance(text)
                box = QRect(left, 0, width + RHYTHM, self.height())
                painter.drawText(box, int(Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft), text)
                left += width + 2 * RHYTHM
