"""Published proportions beside the design's own: guides to look at, never failures."""

from __future__ import annotations

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, QRectF, Signal
from PySide6.QtGui import QColor, QPainter, QPen
from PySide6.QtWidgets import QHeaderView, QStyleOptionViewItem, QTableView

from app.table_parts import PaddedCell, TextModel, dress_table
from app.theme import RHYTHM, colours
from model.check.finding import Guide
from model.units import LengthStyle
from render.drawing import Segment

Index = QModelIndex | QPersistentModelIndex
HEADINGS = ("Proportion", "This design", "Advised", "", "Source")
FIGURES = (1, 2)
SCALE = 3
"""Column in which the design's own value is shown beside the advised range."""
_ROOM = 0.75
"""How much of the advised value is shown to either side of it."""


class GuideModel(TextModel):
    """Guides as a table of texts."""

    def __init__(self) -> None:
        super().__init__(HEADINGS, FIGURES)
        self.guides: tuple[Guide, ...] = ()

    def show(self, guides: tuple[Guide, ...], style: LengthStyle) -> None:
        """Take other guides."""
        self.guides = guides
        self.show_texts([_texts(guide, style) for guide in guides])


class GuideScale(PaddedCell):
    """The advised range as a band on a line, the design's own value as an upright stroke."""

    def __init__(self, model: GuideModel) -> None:
        super().__init__()
        self._model = model

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        """Paint one line; a value off the line stands at its end."""
        super().paint(painter, option, index)
        guide, c = self._model.guides[index.row()], colours()
        box = QRectF(option.rect).adjusted(2 * RHYTHM, 0, -2 * RHYTHM, 0)
        middle = (guide.advised_low + guide.advised_high) / 2
        reach = _ROOM * abs(middle) or 1.0

        def place(value: float) -> float:
            part = (value - middle + reach) / (2 * reach)
            return box.left() + min(max(part, 0.0), 1.0) * box.width()

        y = box.center().y()
        painter.save()
        painter.setPen(QPen(QColor(c.faint), 1))
        painter.drawLine(int(box.left()), int(y), int(box.right()), int(y))
        low, high = place(guide.advised_low), place(guide.advised_high)
        painter.fillRect(QRectF(low - 1, y - 4, max(high - low, 0) + 2, 8), QColor(c.faint))
        painter.setPen(QPen(QColor(c.ink), 2))
        own = place(guide.own)
        painter.drawLine(int(own), int(y - 8), int(own), int(y + 8))
        painter.restore()


class GuideList(QTableView):
    """The table. `chosen` hands on the lines of the guide in focus."""

    chosen = Signal(object)

    def __init__(self) -> None:
        super().__init__()
        self._guides = GuideModel()
        self.setModel(self._guides)
        self._scale = GuideScale(self._guides)
        self.setItemDelegateForColumn(SCALE, self._scale)
        dress_table(self)
        self.setAccessibleName("Proportions")
        header = self.horizontalHeader()
        for column, width in enumerate((300, 112, 168, 176)):
            self.setColumnWidth(column, width)
        self.setToolTip("Choose a line to see its proportion ruled over the front.")
        self.selectionModel().currentChanged.connect(lambda *_: self._choose())
        header.setSectionResizeMode(len(HEADINGS) - 1, QHeaderView.ResizeMode.Stretch)

    def show_guides(self, guides: tuple[Guide, ...], style: LengthStyle) -> None:
        """Show other guides; the one in focus stays in focus."""
        row = self.currentIndex().row()
        self._guides.show(guides, style)
        if 0 <= row < len(guides):
            self.setCurrentIndex(self._guides.index(row, 0))
        self._choose()

    def current_lines(self) -> tuple[Segment, ...]:
        """Where the guide in focus would have its size end; none where none is in focus."""
        row = self.currentIndex().row()
        return self._guides.guides[row].lines if 0 <= row < len(self._guides.guides) else ()

    def current_name(self) -> str:
        """What the guide in focus is called, "" where none is."""
        row = self.currentIndex().row()
        return self._guides.guides[row].name if 0 <= row < len(self._guides.guides) else ""

    def _choose(self) -> None:
        self.chosen.emit(self.current_lines())


def _texts(guide: Guide, style: LengthStyle) -> tuple[str, ...]:
    from render.checks_sheet import source_text, value_texts

    own, low = value_texts(guide.own, guide.advised_low, guide.unit, style)
    _, high = value_texts(guide.own, guide.advised_high, guide.unit, style)
    advised = low if low == high else f"{low} to {high}"
    return guide.name, own, advised, "", source_text("", guide.source, guide.standing)
