"""A line for what needs several: notes, and a manual's chart with one pair on each line."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QMimeData, Qt, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent
from PySide6.QtWidgets import QPlainTextEdit

from app.fields.row import Row
from app.fields.window_keys import leave_to_window
from app.theme import RHYTHM
from app.thin_bar import ThinBar
from model.job import Job, read_value
from model.parameters import Kind, Parameter
from model.rows.row import LONGEST_TEXT

AREA_HEIGHT = 9 * RHYTHM
MOST_PASTED = 5 * LONGEST_TEXT
"""Characters; laying out a clipboard of millions would take minutes."""


class TextArea(QPlainTextEdit):
    """Shows a text of several lines; `entered` follows leaving when it is no longer the one shown."""

    entered = Signal(str)
    given_up = Signal()
    focused = Signal()
    left = Signal()

    def __init__(self) -> None:
        super().__init__()
        self._shown = ""
        self.setTabChangesFocus(True)
        self.setFrameShape(QPlainTextEdit.Shape.NoFrame)
        self.setVerticalScrollBar(ThinBar(Qt.Orientation.Vertical))
        self.document().setDocumentMargin(RHYTHM / 2)

    @property
    def is_touched(self) -> bool:
        """Whether something was typed that has not been taken."""
        return self.toPlainText() != self._shown

    def show_text(self, text: str) -> None:
        """Show `text` as what holds now."""
        self._shown = text
        if self.toPlainText() != text:
            self.setPlainText(text)

    def commit(self) -> None:
        """Send off the text if it was changed."""
        if self.is_touched:
            self.entered.emit(self.toPlainText())
        else:
            self.given_up.emit()

    def event(self, event: QEvent) -> bool:
        """Undo and redo belong to the window unless something is being typed here."""
        if not self.is_touched and leave_to_window(event):
            return False
        return super().event(event)

    def insertFromMimeData(self, source: QMimeData) -> None:
        """Of what is pasted, no more is laid out than shows that it is too much."""
        self.textCursor().insertText(source.text()[:MOST_PASTED])
        self.ensureCursorVisible()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Escape takes back what was typed."""
        if event.key() == Qt.Key.Key_Escape and self.is_touched:
            self.setPlainText(self._shown)
            self.given_up.emit()
        else:
            super().keyPressEvent(event)

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Tell the list."""
        super().focusInEvent(event)
        self.focused.emit()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Leaving enters what was typed; another window or a menu in front is not leaving."""
        super().focusOutEvent(event)
        if event.reason() not in (Qt.FocusReason.PopupFocusReason, Qt.FocusReason.ActiveWindowFocusReason):
            self.commit()
            self.left.emit()


class TextAreaRow(Row):
    """Shows the value below its name, over the whole width of the list."""

    def __init__(self, parameter: Parameter) -> None:
        super().__init__(parameter.path, parameter.label, parameter.help, value_height=AREA_HEIGHT)
        self._parameter = parameter
        self.area = TextArea()
        if parameter.kind is Kind.PAIRS:
            self.area.setPlaceholderText("projection : clearance, one pair on each line")
        self.place_value(self.area, parameter.name)
        self.area.entered.connect(lambda text: self.entered.emit(self.path, text))
        self.area.given_up.connect(self.settle)
        self.area.focused.connect(lambda: self.focused.emit(self.path))
        self.area.left.connect(lambda: self.left.emit(self.path))

    def show_job(self, job: Job, fresh: bool) -> None:
        """A refused text stays until it is put right or given up."""
        if fresh:
            self.settle()
        elif self.message:
            return
        text = self._parameter.format(read_value(job, self.path), job.about.length_style)
        self.area.show_text(text.replace("; ", "\n") if self._parameter.kind is Kind.PAIRS else text)

    def commit(self) -> bool:
        """Enter what is being typed."""
        self.area.commit()
        return not self.message
