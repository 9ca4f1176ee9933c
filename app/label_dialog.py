"""Asks how large the labels for the boards are and where the first one goes, with a picture of the sheet."""

from __future__ import annotations

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import (
    QComboBox,
    QDialog,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QSpinBox,
    QVBoxLayout,
    QWidget,
)

from app.buttons import StrongButton
from app.dialog_parts import Body, build_foot, build_label, fit_screen
from app.theme import RHYTHM, SMALL_POINTS, colours, text_font
from app.tick_box import Tick
from model.errors import Refused
from model.units import MILLIMETRES, LengthStyle
from render.label_stock import PAGES, STOCKS, LabelStock, describe_stock, parse_stock

OWN = "own"
PAPER_WORDS = {"letter": "Letter, 8 1/2 × 11 in.", "a4": "A4, 210 × 297 mm"}
SHORT_PAPERS = {"letter": "Letter", "a4": "A4"}
OWN_FIELDS = {
    "size": ("Label, wide x high", "2 5/8 x 1"),
    "grid": ("How many, across x down", "3 x 10"),
    "edges": ("From the page's left x top", ""),
    "pitch": ("From label to label, across x down", ""),
}
"""Words and a first entry of each field for labels of one's own; the last two may stay empty."""


class SheetPicture(QWidget):
    """The label sheet small: places used already crossed out, the others outlined."""

    def __init__(self) -> None:
        super().__init__()
        self.stock: LabelStock | None = None
        self.start, self.count = 1, 0
        self.setMinimumSize(QSize(21 * RHYTHM, 21 * RHYTHM))
        self.setAccessibleName("The label sheet")

    def show_stock(self, stock: LabelStock | None, start: int, count: int) -> None:
        """Show another sheet, the first label on place `start`, `count` of them."""
        self.stock, self.start, self.count = stock, start, count
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paper with its labels; those that are printed filled."""
        if self.stock is None:
            return
        c = colours()
        wide, high = self.stock.page
        scale = min((self.width() - 2) / wide, (self.height() - 2) / high)
        with QPainter(self) as painter:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            painter.translate((self.width() - wide * scale) / 2, (self.height() - high * scale) / 2)
            painter.setPen(QPen(QColor(c.soft), 1))
            painter.setBrush(QColor("#ffffff"))
            painter.drawRect(QRectF(0, 0, wide * scale, high * scale))
            size = self.stock.width * scale, self.stock.height * scale
            for place, (x, y) in enumerate(self.stock.corners(), start=1):
                box = QRectF(x * scale, (high - y - self.stock.height) * scale, *size)
                is_printed = self.start <= place < self.start + self.count
                painter.setBrush(QColor("#d9d9d9") if is_printed else Qt.BrushStyle.NoBrush)
                painter.setPen(QPen(QColor("#555555"), 1))
                painter.drawRoundedRect(box, 2, 2)
                if place < self.start:
                    painter.drawLine(box.bottomLeft(), box.topRight())


class LabelDialog(QDialog):
    """Which labels, from which place on; what is wrong with an entry is said below it."""

    def __init__(self, parent: QWidget, count: int, style: LengthStyle, kept: str = "") -> None:
        super().__init__(parent)
        self._count, self._style = count, style
        self.setWindowTitle("Labels for the boards")
        self.picture = SheetPicture()
        self.size_box = QComboBox()
        for name, stock in STOCKS.items():
            shown = MILLIMETRES if stock.paper == "a4" else style
            self.size_box.addItem(f"{SHORT_PAPERS[stock.paper]}, {describe_stock(stock, shown)}", name)
        self.size_box.addItem("A size of my own", OWN)
        self.size_box.setCurrentIndex(max(self.size_box.findData(kept), 0))
        self.paper_box = QComboBox()
        for paper in PAGES:
            self.paper_box.addItem(PAPER_WORDS[paper], paper)
        self.own_edits = {name: QLineEdit(text) for name, (_, text) in OWN_FIELDS.items()}
        self.start_box = QSpinBox()
        self.start_box.setMinimum(1)
        self.start_box.lineEdit().setAccessibleName("First label on place")
        self.outline_box = Tick("With the labels' edges, for a trial on plain paper")
        self.remark_label = QLabel()
        self.remark_label.setFont(text_font(SMALL_POINTS))
        self.remark_label.setWordWrap(True)
        self.write_button = StrongButton("Write the labels…", "Choose a file and write the labels into it")
        self._lay_out()
        self._connect()
        self._look()

    def _lay_out(self) -> None:
        grid = QGridLayout()
        grid.setHorizontalSpacing(2 * RHYTHM)
        grid.setVerticalSpacing(RHYTHM)
        rows: list[tuple[str, QWidget]] = [("&Labels", self.size_box), ("&Paper", self.paper_box)]
        rows += [(words, self.own_edits[name]) for name, (words, _) in OWN_FIELDS.items()]
        rows.append(("&First label on place", self.start_box))
        for number, (words, widget) in enumerate(rows):
            grid.addWidget(build_label(words, widget), number, 0)
            grid.addWidget(widget, number, 1)
        grid.addWidget(self.outline_box, len(rows), 0, 1, 2)
        grid.addWidget(self.remark_label, len(rows) + 1, 0, 1, 2)
        grid.setRowStretch(len(rows) + 2, 1)
        middle = QHBoxLayout()
        middle.setSpacing(3 * RHYTHM)
        middle.addWidget(Body(grid), 1)
        middle.addWidget(self.picture)
        outer = QVBoxLayout(self)
        outer.setContentsMargins(3 * RHYTHM, 3 * RHYTHM, 3 * RHYTHM, 2 * RHYTHM)
        outer.setSpacing(2 * RHYTHM)
        outer.addLayout(middle, 1)
        outer.addLayout(build_foot(self, self.write_button, "Close this and write nothing"))
        fit_screen(self)

    def _connect(self) -> None:
        self.size_box.currentIndexChanged.connect(self._look)
        self.paper_box.currentIndexChanged.connect(self._look)
        self.start_box.valueChanged.connect(self._look)
        for edit in self.own_edits.values():
            edit.textChanged.connect(self._look)

    @property
    def name(self) -> str:
        """The name of the chosen labels, or OWN."""
        return str(self.size_box.currentData())

    def read_stock(self) -> LabelStock:
        """The chosen labels. Raises Refused for those of one's own that cannot be."""
        if self.name != OWN:
            return STOCKS[self.name]
        texts = {name: edit.text() for name, edit in self.own_edits.items()}
        return parse_stock(str(self.paper_box.currentData()), **texts, style=self._style)

    @property
    def start(self) -> int:
        """The place of the first label."""
        return self.start_box.value()

    @property
    def outlined(self) -> bool:
        """Whether edges are drawn."""
        return self.outline_box.isChecked()

    @property
    def remark(self) -> str:
        """How many sheets it takes, or what is wrong."""
        return self.remark_label.text()

    def _look(self) -> None:
        for widget in (self.paper_box, *self.own_edits.values()):
            widget.setEnabled(self.name == OWN)
        try:
            stock = self.read_stock()
        except Refused as refusal:
            self.remark_label.setText(str(refusal))
            self.write_button.setEnabled(False)
            self.picture.show_stock(None, 1, 0)
            return
        self.start_box.setMaximum(stock.count)
        sheets = -(-(self.start - 1 + self._count) // stock.count)
        self.remark_label.setText(
            f"{self._count} labels on {sheets} sheet{'' if sheets == 1 else 's'}. Print at 100 %, on plain "
            "paper first."
        )
        self.write_button.setEnabled(True)
        self.picture.show_stock(stock, self.start, self._count)
