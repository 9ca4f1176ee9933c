"""How the wood looks, for the homeowner to choose: its finish, and the colours that finish comes in.

What is picked is handed on; nothing is changed here.
"""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QColor, QFontMetrics, QKeyEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QWidget

from app.buttons import PlainButton, press_by_enter
from app.theme import RHYTHM, colours, text_font
from model.design import Look
from model.look import PAINTED, STAINED
from model.parameters import find_parameter

FINISH = "look.finish"
COLOURS = {PAINTED: "look.paint", STAINED: "look.stain"}
"""The row of the colour that each finish has; a clear coat has none."""


class Swatch(QPushButton):
    """A colour to pick."""

    def __init__(self, words: str, colour: str, side: int) -> None:
        super().__init__()
        self.colour = colour
        self.setAccessibleName(words)
        self.setToolTip(words)
        self.setCheckable(True)
        self.setFixedSize(side, side)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter picks it as the space bar does."""
        if not press_by_enter(self, event):
            super().keyPressEvent(event)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """The colour; the one in use has a heavy frame, the one in focus a lit one."""
        c = colours()
        with QPainter(self) as painter:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing, True)
            pen = painter.pen()
            pen.setColor(QColor(c.lit if self.hasFocus() else c.ink if self.isChecked() else c.faint))
            pen.setWidth(3 if self.hasFocus() or self.isChecked() else 1)
            painter.setPen(pen)
            painter.setBrush(QColor(self.colour))
            painter.drawRoundedRect(self.rect().adjusted(3, 3, -4, -4), 4, 4)


class FinishBar(QWidget):
    """The finish as a button that goes to the next one, and swatches of its colours.

    `picked` hands on a row's path and the stored word that was chosen.
    """

    picked = Signal(str, str)

    def __init__(self, side: int) -> None:
        super().__init__()
        self._finish = PAINTED
        self._finishes = dict(find_parameter(FINISH).choices or {})
        self.next_ = PlainButton("", "The wood painted, stained or under a clear coat")
        self.next_.setAccessibleName("Finish of the wood")
        self.next_.setFont(text_font(side * 0.22, bold=True))
        metrics = QFontMetrics(self.next_.font())
        wide = max(metrics.horizontalAdvance(words) for words in self._finishes.values())
        self.next_.setFixedWidth(wide + 3 * RHYTHM)
        self.next_.clicked.connect(self._go_on)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(0)  # a swatch keeps clear of its own edges
        row.addWidget(self.next_)
        row.addSpacing(RHYTHM)
        self.swatches: dict[tuple[str, str], Swatch] = {}
        """By the row's path and the stored word of the colour."""
        for path in COLOURS.values():
            for key, swatch in _build_swatches(path, round(side * 0.7)):
                swatch.clicked.connect(lambda _on=False, path=path, key=key: self.picked.emit(path, key))
                self.swatches[path, key] = swatch
                row.addWidget(swatch)

    def show_look(self, look: Look) -> None:
        """The finish and the colour in use; a colour of one's own is no swatch's."""
        self._finish = look.finish
        self.next_.setText(self._finishes[look.finish])
        self.next_.setAccessibleDescription(self._finishes[look.finish])
        shown = COLOURS.get(look.finish, "")
        for (path, key), swatch in self.swatches.items():
            swatch.setVisible(path == shown)
            swatch.setChecked(key == (look.paint if path == COLOURS[PAINTED] else look.stain))

    def _go_on(self) -> None:
        keys = list(self._finishes)
        self.picked.emit(FINISH, keys[(keys.index(self._finish) + 1) % len(keys)])


def _build_swatches(path: str, side: int) -> list[tuple[str, Swatch]]:
    row = find_parameter(path)
    words = row.choices or {}
    return [
        (key, Swatch(f"{row.label}: {words[key]}", colour, side))
        for key, colour in (row.swatches or {}).items()
    ]
