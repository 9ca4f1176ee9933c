"""Packet, offer, labels and others as they will be printed: small, one sheet large; which pages and where."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtCore import QSize, QTimer
from PySide6.QtGui import QCloseEvent, QColor, QIcon, QPainter, QPaintEvent, QPixmap, QResizeEvent
from PySide6.QtWidgets import (
    QComboBox,
    QDialog,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QListWidget,
    QListWidgetItem,
    QProgressBar,
    QSpinBox,
    QVBoxLayout,
    QWidget,
)

from app.buttons import PlainButton, StrongButton
from app.dialog_parts import build_label, fit_screen
from app.packet_dialog import PAPERS
from app.print_choices import Build
from app.printing import EVERY, find_printer, list_cut_off, list_printers, parse_pages, print_sheets
from app.sheet_painter import ReadySheet, make_ready, picture_sheet
from app.theme import RHYTHM, SMALL_POINTS, colours, text_font
from app.work import Work
from model.errors import Refused
from render.drawing import Sheet

if TYPE_CHECKING:
    from PySide6.QtPrintSupport import QPrinter

SMALL = 132
"""Pixels that a sheet is wide in the list."""
EDGE = 12
NO_PRINTER = "No printer is set up here. Write a PDF and print that, at 100 %."
SETTING_OUT = "Setting out the sheets…"
NOTHING = "This job has nothing of it."
TRUE_SIZE = "Every sheet is printed at 100 %. Measure the bar at its edge."


class LargeSheet(QWidget):
    """One sheet as large as there is room for."""

    def __init__(self) -> None:
        super().__init__()
        self.ready: ReadySheet | None = None
        self._picture: QPixmap | None = None
        self.setAccessibleName("The sheet in focus")
        self.setMinimumSize(QSize(240, 120))

    def show_sheet(self, ready: ReadySheet | None) -> None:
        """Show another sheet."""
        self.ready, self._picture = ready, None
        self.update()

    def resizeEvent(self, _event: QResizeEvent) -> None:
        """Painted anew at its new size."""
        self._picture = None

    def paintEvent(self, _event: QPaintEvent) -> None:
        """The desk, and the sheet in the middle of it."""
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), QColor(colours().desk))
            if self.ready is None:
                return
            sheet = self.ready.sheet
            room = self.width() - 2 * EDGE, self.height() - 2 * EDGE
            width = max(int(min(room[0], room[1] * sheet.width / sheet.height)), 1)
            if self._picture is None:
                self._picture = picture_sheet(self.ready, width, self.devicePixelRatioF())
            height = width * sheet.height / sheet.width
            painter.drawPixmap(
                round((self.width() - width) / 2), round((self.height() - height) / 2), self._picture
            )


class PrintWindow(QDialog):
    """Sets the sheets out beside the window, shows them, prints those that are wished."""

    def __init__(
        self,
        parent: QWidget | None,
        choices: Mapping[str, Build],
        paper: str,
        printer: QPrinter | None = None,
    ) -> None:
        super().__init__(parent)
        self.setWindowTitle("Print")
        self._given, self._choices = printer, choices
        self._is_unwanted = False  # what is being set out, where something else was chosen since
        self.what_box, self.paper_box = QComboBox(), QComboBox()
        self.what_box.addItems(list(choices))
        self.paper_box.addItems(list(PAPERS.values()))
        self.paper_box.setCurrentIndex(list(PAPERS).index(paper) if paper in PAPERS else 0)
        self.sheets: list[ReadySheet] = []
        self._work = Work()
        self._stop_printing = False
        self.list = QListWidget()
        self.large = LargeSheet()
        self.pages_edit = QLineEdit(EVERY)
        self.copies_box = QSpinBox()
        self.copies_box.lineEdit().setAccessibleName("Copies")
        self.printer_box = QComboBox()
        self.words = QLabel(SETTING_OUT)
        self.bar = QProgressBar()
        self.print_button = StrongButton("Print", "Print the pages chosen on the printer chosen")
        self.stop_button = PlainButton("Leave it", "Close this and print nothing more")
        self._pictures = QTimer(self)
        self._pictures.timeout.connect(self._picture_next)
        self._lay_out()
        self._connect()
        fit_screen(self, QSize(1000, 680))
        self._set_out()

    def _lay_out(self) -> None:
        """Head, then the sheets beside the large one, then what is said and the foot."""
        self._dress_parts()
        middle = QHBoxLayout()
        middle.setSpacing(0)
        middle.addWidget(self.list)
        middle.addWidget(self.large, 1)
        below = QVBoxLayout()
        below.setContentsMargins(2 * RHYTHM, RHYTHM, 2 * RHYTHM, 2 * RHYTHM)
        below.setSpacing(RHYTHM)
        below.addWidget(self.words)
        below.addWidget(self.bar)
        below.addLayout(self._lay_out_foot())
        outer = QVBoxLayout(self)
        outer.setContentsMargins(0, 0, 0, 0)
        outer.setSpacing(0)
        outer.addLayout(self._lay_out_head())
        outer.addLayout(middle, 1)
        outer.addLayout(below)

    def _dress_parts(self) -> None:
        self.list.setIconSize(QSize(SMALL, SMALL))
        self.list.setFixedWidth(SMALL + 12 * RHYTHM)
        self.list.setAccessibleName("Sheets")
        self.list.setWordWrap(True)
        self.copies_box.setRange(1, 99)
        self.bar.setRange(0, 1000)
        self.bar.setTextVisible(False)
        self.bar.setFixedHeight(RHYTHM)
        self.words.setFont(text_font(SMALL_POINTS))
        self.words.setWordWrap(True)
        self.stop_button.setAutoDefault(False)
        self.pages_edit.setMaximumWidth(18 * RHYTHM)
        self.printer_box.setMinimumWidth(24 * RHYTHM)
        names = [self._given.printerName()] if self._given is not None else list_printers()
        self.printer_box.addItems(names)
        self.print_button.setEnabled(False)
        self.print_button.setDefault(True)

    def _lay_out_foot(self) -> QHBoxLayout:
        """Which pages go to which printer, how often, and the buttons."""
        foot = QHBoxLayout()
        foot.setSpacing(RHYTHM)
        fields: tuple[tuple[str, QWidget], ...] = (
            ("&Pages", self.pages_edit),
            ("&Copies", self.copies_box),
            ("P&rinter", self.printer_box),
        )
        for words, widget in fields:
            foot.addWidget(build_label(words, widget))
            foot.addWidget(widget)
            foot.addSpacing(RHYTHM)
        foot.addStretch(1)
        foot.addWidget(self.stop_button)
        foot.addWidget(self.print_button)
        return foot

    def _lay_out_head(self) -> QHBoxLayout:
        """What is printed, and on which paper."""
        head = QHBoxLayout()
        head.setContentsMargins(2 * RHYTHM, 2 * RHYTHM, 2 * RHYTHM, 2 * RHYTHM)
        head.setSpacing(RHYTHM)
        for words, widget in (("&What", self.what_box), ("Pap&er", self.paper_box)):
            head.addWidget(build_label(words, widget))
            head.addWidget(widget)
            head.addSpacing(2 * RHYTHM)
        head.addStretch(1)
        return head

    def _connect(self) -> None:
        self._work.told.connect(self._tell)
        self._work.done.connect(self._show)
        self._work.failed.connect(self._fail)
        self._work.stopped.connect(self._set_out)
        self.what_box.currentIndexChanged.connect(self._set_out_anew)
        self.paper_box.currentIndexChanged.connect(self._set_out_anew)
        self.list.currentRowChanged.connect(self._turn_to)
        self.pages_edit.textChanged.connect(self._look)
        self.printer_box.currentIndexChanged.connect(self._look)
        self.print_button.clicked.connect(self.print)
        self.stop_button.clicked.connect(self.reject)

    def _set_out_anew(self) -> None:
        """Another document or paper was chosen: what is shown or being worked on is no longer wanted."""
        self._pictures.stop()
        self.sheets = []
        self.list.clear()
        self.large.show_sheet(None)
        self.print_button.setEnabled(False)
        self.pages_edit.setText(EVERY)
        self.words.setText(SETTING_OUT)
        self._is_unwanted = self._work.is_busy
        if self._is_unwanted:
            self._work.stop()
        else:
            self._set_out()

    def _set_out(self) -> None:
        self._is_unwanted = False
        self.bar.setValue(0)
        self.bar.show()
        paper = list(PAPERS)[self.paper_box.currentIndex()]
        self._work.start(partial(self._choices[self.what_box.currentText()], paper))

    def _tell(self, done: float, words: str) -> None:
        self.bar.setValue(round(done * 1000))
        self.words.setText(f"{words}…")

    def _show(self, sheets: Sequence[Sheet]) -> None:
        """All sheets are there; their small pictures follow one by one."""
        if self._is_unwanted:
            self._set_out()
            return
        self.bar.hide()
        self.sheets = [make_ready(sheet) for sheet in sheets]
        for number, ready in enumerate(self.sheets, start=1):
            item = QListWidgetItem(f"{number}  {ready.sheet.title}")
            item.setToolTip(ready.sheet.title)
            self.list.addItem(item)
        if not self.sheets:
            self.words.setText(NOTHING)
            return
        self.list.setCurrentRow(0)
        self._look()
        self._pictures.start(0)

    def _fail(self, error: object) -> None:
        if self._is_unwanted:
            self._set_out()
            return
        self.bar.hide()
        self.words.setText(f"The sheets could not be set out: {error}")

    def _picture_next(self) -> None:
        row = next((r for r in range(self.list.count()) if self.list.item(r).icon().isNull()), None)
        if row is None:
            self._pictures.stop()
            return
        ready = self.sheets[row]
        width = round(SMALL * min(1.0, ready.sheet.width / ready.sheet.height))
        self.list.item(row).setIcon(QIcon(picture_sheet(ready, width, self.devicePixelRatioF())))

    def _turn_to(self, row: int) -> None:
        self.large.show_sheet(self.sheets[row] if 0 <= row < len(self.sheets) else None)

    @property
    def chosen(self) -> list[ReadySheet]:
        """The sheets that are to be printed. Raises Refused for pages that there are not."""
        return [self.sheets[page - 1] for page in parse_pages(self.pages_edit.text(), len(self.sheets))]

    def _look(self) -> None:
        """Say what will be printed, or why nothing can be."""
        self.print_button.setEnabled(False)
        if not self.sheets:
            return
        try:
            chosen = self.chosen
        except Refused as refusal:
            self.words.setText(str(refusal))
            return
        if not self.printer_box.count():
            self.words.setText(NO_PRINTER)
            return
        count = f"{len(chosen)} sheet{'' if len(chosen) == 1 else 's'}. {TRUE_SIZE}"
        lost = list_cut_off(self._find_printer(), chosen)
        if lost:
            count += f" This printer's margins cut something off sheet {', '.join(lost)}."
        self.words.setText(count)
        self.print_button.setEnabled(True)

    def _find_printer(self) -> QPrinter:
        return self._given if self._given is not None else find_printer(self.printer_box.currentText())

    def print(self) -> None:
        """Print the pages chosen; how far it is stands below, and it can be stopped."""
        from PySide6.QtWidgets import QApplication

        chosen = self.chosen
        printer = self._find_printer()
        printer.setCopyCount(self.copies_box.value())
        self.print_button.setEnabled(False)
        self._stop_printing = False
        self._let_choose(False)
        self.bar.show()

        def told(done: int) -> bool:
            self._tell(done / len(chosen), f"Printing sheet {done} of {len(chosen)}")
            QApplication.processEvents()
            return not self._stop_printing

        is_done = print_sheets(printer, chosen, told)
        self.bar.hide()
        self._let_choose(True)
        if self._stop_printing:
            return
        if is_done:
            self.accept()
        else:
            self._look()
            self.words.setText("The printer did not take the sheets. Look whether it is on, or write a PDF.")

    def _let_choose(self, may: bool) -> None:
        """What is being printed stays as it was chosen until it is printed or left."""
        for widget in (self.what_box, self.paper_box, self.pages_edit, self.copies_box, self.printer_box):
            widget.setEnabled(may)

    def done(self, result: int) -> None:
        """Nothing goes on beside it once it is closed."""
        self._stop_printing = True
        self._work.stopped.disconnect(self._set_out)
        self._pictures.stop()
        self._work.wait()
        super().done(result)

    def closeEvent(self, event: QCloseEvent) -> None:
        """As if it were left."""
        self.reject()
        event.accept()
