"""A line for a colour: picked from a few by name, or typed as one of one's own."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QObject, QRect, QSize, Qt
from PySide6.QtGui import QColor, QIcon, QPainter, QPaintEvent, QPixmap, QWheelEvent
from PySide6.QtWidgets import QComboBox

from app.fields.choice_row import CHOICE_SHARE, SIGN, paint_sign
from app.fields.row import Row
from app.fields.tape_edit import TapeEdit
from app.theme import RHYTHM, colours
from model.job import Job, read_value
from model.parameters import Parameter

SWATCH = 2 * RHYTHM
INNER = 4
"""Pixels that an entry keeps clear inside its own edge."""


class ColourBox(QComboBox):
    """Names with their colours, and room to type another. The wheel never turns it."""

    def __init__(self) -> None:
        super().__init__()
        self.edit = TapeEdit(steps=False)
        self.setEditable(True)
        self.setInsertPolicy(QComboBox.InsertPolicy.NoInsert)
        self.setLineEdit(self.edit)
        self.setFrame(False)
        self.setIconSize(QSize(SWATCH, SWATCH))
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self._shown = ""
        self.edit.installEventFilter(self)

    def show_colour(self, colour: str) -> None:
        """Show it, #rrggbb, beside its name or what is typed."""
        self._shown = colour
        self.update()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """The entry keeps to the room between the colour and the sign, whatever the style has in mind."""
        if watched is self.edit and event.type() in (QEvent.Type.Resize, QEvent.Type.Move):
            room = self.rect().adjusted(SWATCH + RHYTHM // 2, 0, INNER - SIGN, 0)
            if self.edit.geometry() != room:
                self.edit.setGeometry(room)
        return super().eventFilter(watched, event)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """The colour at the left, and the same sign that there are others as beside any choice."""
        with QPainter(self) as painter:
            paint_sign(painter, self.rect())
            if self._shown:
                paint_swatch(painter, QRect(0, (self.height() - SWATCH) // 2, SWATCH, SWATCH), self._shown)

    def wheelEvent(self, event: QWheelEvent) -> None:
        """The list's."""
        event.ignore()


class ColourRow(Row):
    """Shows a colour's name, or the colour as it is written, and sends what was picked or typed."""

    def __init__(self, parameter: Parameter) -> None:
        super().__init__(parameter.path, parameter.label, parameter.about, share=CHOICE_SHARE)
        self._parameter = parameter
        self._keys = tuple(parameter.choices or {})
        self.box = ColourBox()
        for key, words in (parameter.choices or {}).items():
            self.box.addItem(swatch_icon((parameter.swatches or {})[key]), words)
        self.place_value(self.box, parameter.name)
        self.box.edit.setAccessibleName(parameter.name)
        self.box.activated.connect(lambda index: self.entered.emit(self.path, self._keys[index]))
        self.box.edit.entered.connect(lambda text: self.entered.emit(self.path, text))
        self.box.edit.given_up.connect(self.settle)
        self.box.edit.focused.connect(lambda: self.focused.emit(self.path))
        self.box.edit.left.connect(lambda: self.left.emit(self.path))

    def show_job(self, job: Job, fresh: bool) -> None:
        """A refused text stays until it is put right or given up."""
        if not fresh and self.message and self.box.edit.is_touched:
            return
        self.settle()
        chosen = str(read_value(job, self.path))
        self.box.setCurrentIndex(self._keys.index(chosen) if chosen in self._keys else -1)
        self.box.show_colour((self._parameter.swatches or {}).get(chosen, chosen))
        self.box.edit.show_text(self._parameter.format(chosen, job.about.length_style))

    def commit(self) -> bool:
        """Enter what is being typed."""
        self.box.edit.commit()
        return not self.message


def swatch_icon(colour: str) -> QIcon:
    """A small square of a colour for a list of names."""
    pixmap = QPixmap(SWATCH, SWATCH)
    with QPainter(pixmap) as painter:
        paint_swatch(painter, pixmap.rect(), colour)
    return QIcon(pixmap)


def paint_swatch(painter: QPainter, box: QRect, colour: str) -> None:
    """A square of a colour, framed so that it shows on any ground."""
    painter.fillRect(box, QColor(colour))
    painter.setPen(QColor(colours().faint))
    painter.drawRect(box.adjusted(0, 0, -1, -1))
