"""The line under the findings: what would put the one in focus right, done with one click and undone so.

The cures themselves are found in model.check.remedy.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QSize, Signal
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QSizePolicy, QVBoxLayout, QWidget

from app.buttons import PlainButton, quiet_button
from app.sparing import NARROW, break_line
from app.theme import RHYTHM, colours
from app.words import Words

if TYPE_CHECKING:
    from model.check.remedy import Remedy

LOOKING = "Looking for the least change that clears it."
NONE = "No change of one or two sizes clears this."


class CureBar(QWidget):
    """Hidden while no finding is in focus. `applied` hands on a cure, `undone` takes the last one back."""

    applied = Signal(object)
    undone = Signal()
    explained = Signal()

    def __init__(self) -> None:
        super().__init__()
        self._remedies: tuple[Remedy, ...] = ()
        self._shown = 0
        self._text = Words()
        self._text.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
        self.do_button = PlainButton("Do this", "Make this change; Undo takes it back as one step")
        self.other_button = quiet_button("Another way", "Show the next cure")
        self.undo_button = PlainButton("Undo", "Take the change back")
        self.explain_button = quiet_button("Explain…", "Show this rule on this surround, with its arithmetic")
        self.do_button.clicked.connect(self._apply)
        self.other_button.clicked.connect(self._turn)
        self.undo_button.clicked.connect(self.undone)
        self.explain_button.clicked.connect(self.explained)
        self._above = QHBoxLayout()
        self._row = QHBoxLayout()
        self._row.setSpacing(RHYTHM)
        for widget in (self.do_button, self.undo_button, self._text, self.other_button, self.explain_button):
            self._row.addWidget(widget, 1 if widget is self._text else 0)
        column = QVBoxLayout(self)
        column.setContentsMargins(2 * RHYTHM, RHYTHM // 2, RHYTHM, RHYTHM // 2)
        column.setSpacing(RHYTHM // 2)
        column.addLayout(self._above)
        column.addLayout(self._row)
        self.setAccessibleName("Cures")
        self.hide()

    def minimumSizeHint(self) -> QSize:
        """Narrow enough for a small screen, where the sentence stands over the buttons."""
        shown = (self.do_button, self.other_button)
        return QSize(sum(button.sizeHint().width() for button in shown) + 5 * RHYTHM, 5 * RHYTHM)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Where it is narrow the sentence has a line of its own; explaining is in the menu too."""
        super().resizeEvent(event)
        narrow = event.size().width() < NARROW
        self.explain_button.setVisible(not narrow)
        break_line(self._text, self._above, self._row, 2, narrow)

    @property
    def text(self) -> str:
        """What the line says."""
        return self._text.text()

    def say_looking(self) -> None:
        """A search is under way."""
        self._say(LOOKING)

    def say_nothing(self) -> None:
        """The finding in focus needs no cure, or has none that is a size: it can be explained still."""
        self._say("")

    def show_remedies(self, remedies: tuple[Remedy, ...]) -> None:
        """Offer cures, the first one shown."""
        self._remedies, self._shown = remedies, 0
        if remedies:
            self._show()
        else:
            self._say(NONE)

    def say_done(self, sentence: str) -> None:
        """A cure was made; it can be taken back from here too."""
        self._say(f"Done: {sentence}", undo=True)

    def _say(self, text: str, undo: bool = False) -> None:
        self._remedies = ()
        self._text.setText(text)
        self._settle(undo)

    def _show(self) -> None:
        remedy = self._remedies[self._shown]
        clears = " Then no clearance is over." if remedy.clears_all else ""
        self._text.setText(" ".join((remedy.sentence + clears, *remedy.worsens)))
        self._settle(undo=False)

    def _settle(self, undo: bool) -> None:
        self.do_button.setVisible(bool(self._remedies))
        self.undo_button.setVisible(undo)
        self.other_button.setVisible(len(self._remedies) > 1)
        if len(self._remedies) > 1:
            self.other_button.setText(f"Another way ({self._shown + 1} of {len(self._remedies)})")
            self.other_button.updateGeometry()
        self.setAccessibleDescription(self._text.text())
        self.show()

    def _turn(self) -> None:
        self._shown = (self._shown + 1) % len(self._remedies)
        self._show()

    def _apply(self) -> None:
        self.applied.emit(self._remedies[self._shown])

    def paintEvent(self, _event: QPaintEvent) -> None:
        """A ground of its own, parted from the list above it."""
        c = colours()
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), QColor(c.panel))
            painter.setPen(QColor(c.rule))
            painter.drawLine(0, 0, self.width(), 0)
