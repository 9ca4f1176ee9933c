"""One line of the measuring list: a name left, a value right, and below them a sentence when one is due."""

from __future__ import annotations

from PySide6.QtCore import QRect, QSize, Qt, Signal
from PySide6.QtGui import QColor, QFontMetrics, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from app.theme import BAR, RHYTHM, ROW_HEIGHT, SMALL_POINTS, colours, text_font
from model.errors import Refused
from model.job import Job
from model.sentences import capitalise
from render.lettering import tie_fractions

SIDE = 2 * RHYTHM
VALUE_SHARE = 0.44
_MOST_HEIGHT = 400


def say_wanted(refusal: Refused) -> str:
    """The sentence below an entry that was refused."""
    return f"{capitalise(refusal.wanted)}."


class Row(QWidget):
    """A line that can be plain, lit (its dimension is in focus) or wrong (its entry was refused).

    `value_widget` is placed on the right by the row itself, or below the name when `is_tall`.
    """

    entered = Signal(str, str)
    stepped = Signal(str, int)
    focused = Signal(str)
    left = Signal(str)

    def __init__(
        self, path: str, label: str, help_text: str, value_height: int = 0, share: float = VALUE_SHARE
    ) -> None:
        super().__init__()
        self.path = path
        self.label = label
        self.help_text = help_text
        self.value_widget: QWidget | None = None
        self.message = ""
        self.note = ""
        self._value_height = value_height
        self._share = share
        self._lit = False
        self.is_quiet = False
        self._small = text_font(SMALL_POINTS)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setFixedHeight(ROW_HEIGHT + value_height)
        if help_text:
            self.setToolTip(help_text)

    @property
    def is_tall(self) -> bool:
        """Whether the value stands below the name, over the whole width."""
        return self._value_height > 0

    def place_value(self, widget: QWidget, name: str) -> None:
        """Take `widget` for the value; `name` is what a screen reader calls it."""
        self.value_widget = widget
        widget.setParent(self)
        widget.setAccessibleName(name)
        widget.setAccessibleDescription(self.help_text)

    def show_job(self, job: Job, fresh: bool) -> None:
        """Show this row's value in `job`; `fresh` when it is another job and nothing typed may stay."""
        raise NotImplementedError

    def take_cursor(self) -> None:
        """Put the keyboard into this row."""
        if self.value_widget is not None:
            self.value_widget.setFocus(Qt.FocusReason.OtherFocusReason)

    def commit(self) -> bool:
        """Send off what was typed and not yet entered; whether the row is then free of refused text."""
        return not self.message

    def refuse(self, message: str) -> None:
        """Keep what was typed and say below it what is wanted."""
        self.message = message
        if self.value_widget is not None:
            self.value_widget.setAccessibleDescription(f"{message} {self.help_text}")
        self._fit_height()

    def settle(self) -> None:
        """The entry was taken: no sentence, no colour."""
        if self.message:
            self.refuse("")

    def remark(self, note: str) -> None:
        """A sentence about a value that was taken but cannot be built as asked."""
        if note != self.note:
            self.note = note
            self._fit_height()

    def light(self, lit: bool) -> None:
        """Show the row in the colour of its dimension."""
        if lit != self._lit:
            self._lit = lit
            self.update()

    def _sentence(self) -> str:
        return tie_fractions(self.message or self.note)

    def _sentence_box(self, top: int) -> QRect:
        metrics = QFontMetrics(self._small)
        room = QRect(SIDE, top, max(60, self.width() - 2 * SIDE), _MOST_HEIGHT)
        return metrics.boundingRect(room, int(Qt.TextFlag.TextWordWrap), self._sentence())

    def _fit_height(self) -> None:
        height = ROW_HEIGHT + self._value_height
        if self._sentence():
            height += self._sentence_box(0).height() + RHYTHM // 2
        self.setFixedHeight(height)
        self.update()

    def sizeHint(self) -> QSize:
        """As wide as the list wants it."""
        return QSize(280, self.height())

    def resizeEvent(self, _event: QResizeEvent) -> None:
        """Put the value in its place and leave room for the sentence."""
        if self.value_widget is not None:
            self.value_widget.setGeometry(self._value_box())
        if self._sentence():
            self._fit_height()

    def _value_box(self) -> QRect:
        if self.is_tall:
            return QRect(SIDE, ROW_HEIGHT - 2, self.width() - 2 * SIDE, self._value_height)
        width = round((self.width() - 2 * SIDE) * self._share)
        return QRect(self.width() - SIDE - width, 1, width, ROW_HEIGHT - 3)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Ground, name, hairline and sentence; the value paints itself."""
        c = colours()
        with QPainter(self) as painter:
            self._paint_ground(painter)
            painter.setFont(self.font())
            painter.setPen(QColor(c.ink if self._lit else c.faint if self.is_quiet else c.soft))
            name_width = self.width() - 2 * SIDE if self.is_tall else self._value_box().left() - SIDE - 4
            name = QFontMetrics(self.font()).elidedText(self.label, Qt.TextElideMode.ElideRight, name_width)
            middle = int(Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft)
            painter.drawText(QRect(SIDE, 0, name_width, ROW_HEIGHT - 1), middle, name)
            painter.setPen(QColor(c.wrong if self.message else c.rule))
            line = ROW_HEIGHT - 1 + (self._value_height if self.is_tall else 0)
            painter.drawLine(SIDE, line, self.width() - SIDE, line)
            if self._sentence():
                self._paint_sentence(painter, line + 2)

    def _paint_ground(self, painter: QPainter) -> None:
        c = colours()
        if not (self.message or self._lit):
            return
        painter.fillRect(self.rect(), QColor(c.wrong_ground if self.message else c.lit_ground))
        painter.fillRect(0, 0, BAR, self.height(), QColor(c.wrong if self.message else c.lit))

    def _paint_sentence(self, painter: QPainter, top: int) -> None:
        c = colours()
        painter.setFont(self._small)
        painter.setPen(QColor(c.wrong if self.message else c.close))
        painter.drawText(self._sentence_box(top), int(Qt.TextFlag.TextWordWrap), self._sentence())
