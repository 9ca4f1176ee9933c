"""The one large entry of the measuring mode: a tape text, or one of a few words."""

from __future__ import annotations

from PySide6.QtCore import QRect, QSize, Qt, Signal
from PySide6.QtGui import QColor, QKeyEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QStackedLayout, QWidget

from app.buttons import CORNER
from app.fields.choice_row import ChoiceBox
from app.fields.tape_edit import TapeEdit
from app.theme import RHYTHM, colours, text_font
from model.job import Job, read_value
from model.parameters import Kind, Parameter

LARGE_POINTS = 18.0
YES_NO = {"yes": "Yes", "no": "No"}


class LargeChoice(ChoiceBox):
    """A choice that Enter confirms."""

    confirmed = Signal()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Arrow keys and letters choose, Enter goes on; the page keys and Escape are the page's."""
        if event.key() in (Qt.Key.Key_PageUp, Qt.Key.Key_PageDown, Qt.Key.Key_Escape):
            event.ignore()
        elif event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.confirmed.emit()
        else:
            super().keyPressEvent(event)


class MeasuringEntry(QWidget):
    """Shows the value of one row after another; `confirmed` follows Enter. Knows no lengths."""

    confirmed = Signal()

    def __init__(self) -> None:
        super().__init__()
        self._keys: tuple[str, ...] = ()
        self._shown = ""
        self._is_wrong = False
        self.edit = TapeEdit(steps=False)
        self.edit.setFont(text_font(LARGE_POINTS))
        self.edit.setAlignment(Qt.AlignmentFlag.AlignLeft)
        self.edit.returnPressed.connect(self.confirmed)
        self.choice = LargeChoice()
        self.choice.setFont(text_font(LARGE_POINTS * 0.75))
        self.choice.confirmed.connect(self.confirmed)
        self._stack = QStackedLayout(self)
        self.setContentsMargins(RHYTHM, 0, RHYTHM, 0)
        self._stack.addWidget(self.edit)
        self._stack.addWidget(self.choice)
        self.setFixedHeight(6 * RHYTHM)
        for inner in (self.edit, self.choice):
            inner.focused.connect(self.update)
            inner.left.connect(self.update)

    @property
    def inner(self) -> QWidget:
        """What the keyboard goes to."""
        return self.edit if self._stack.currentWidget() is self.edit else self.choice

    @property
    def text(self) -> str:
        """What stands there, as a row of the table reads it."""
        if self.inner is self.edit:
            return self.edit.text()
        return self._keys[self.choice.currentIndex()] if self._keys else ""

    @property
    def is_touched(self) -> bool:
        """Whether that is not what the job holds."""
        if self.inner is self.edit:
            return self.edit.is_touched
        return self.text != self._shown

    def show_row(self, row: Parameter, job: Job) -> None:
        """Ask for `row`, with what `job` holds ready to be typed over."""
        value, style = read_value(job, row.path), job.about.length_style
        choices = row.choices if row.choices is not None else YES_NO if row.kind is Kind.YES_NO else None
        if choices is None:
            self._stack.setCurrentWidget(self.edit)
            self.edit.setPlaceholderText("not there, or not measured" if row.may_be_empty else "")
            self.edit.show_text(row.format(value, style))
            self.edit.selectAll()
        else:
            self._stack.setCurrentWidget(self.choice)
            self._keys = tuple(choices)
            self._shown = str(value) if row.choices is not None else "yes" if value else "no"
            self.choice.clear()
            self.choice.addItems(list(choices.values()))
            self.choice.setCurrentIndex(self._keys.index(self._shown))
        for inner in (self.edit, self.choice):
            inner.setAccessibleName(row.name)
            inner.setAccessibleDescription(row.help)
        self.show_wrong(False)

    def show_wrong(self, wrong: bool) -> None:
        """Take the colours of an entry that was refused, or of one that was not."""
        self._is_wrong = wrong
        self.update()

    def take_cursor(self) -> None:
        """Put the keyboard into the entry."""
        self.inner.setFocus(Qt.FocusReason.OtherFocusReason)
        self.edit.selectAll()

    def sizeHint(self) -> QSize:
        """Large enough to be read from where the tape is held."""
        return QSize(300, 6 * RHYTHM)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """A ground and an edge of its own."""
        c = colours()
        edge = c.wrong if self._is_wrong else c.lit if self.inner.hasFocus() else c.rule
        with QPainter(self) as painter:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing, True)
            painter.setPen(QPen(QColor(edge), 2))
            painter.setBrush(QColor(c.wrong_ground if self._is_wrong else c.entry))
            box: QRect = self.rect()
            painter.drawRoundedRect(box.toRectF().adjusted(1, 1, -1, -1), CORNER, CORNER)
