"""A line above the sheet that says what happened, what is safe and what can be done. It waits to be read."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QElapsedTimer, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QApplication, QHBoxLayout, QPushButton, QSizePolicy, QVBoxLayout, QWidget

from app.buttons import PlainButton, quiet_button
from app.sparing import NARROW, break_line
from app.theme import BAR, RHYTHM, colours
from app.words import Words

Choice = tuple[str, Callable[[], None]]
Offer = tuple[str, tuple[Choice, ...], bool]
"""What is said, with its choices and whether something failed."""
MOST_CHOICES = 2


class Notice(QWidget):
    """Hidden while there is nothing to say."""

    def __init__(self) -> None:
        super().__init__()
        self._wrong = False
        self._choices: tuple[Choice, ...] = ()
        self._waiting: list[Offer] = []
        self._offered: Offer | None = None
        self._text = Words()
        self._text.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        self._text.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
        self._followed = QElapsedTimer()
        self.buttons: list[QPushButton] = []
        self._above, self._row = QHBoxLayout(), QHBoxLayout()
        row = self._row
        row.setSpacing(RHYTHM)
        row.addWidget(self._text, 1)
        for i in range(MOST_CHOICES):
            button = PlainButton("", "")
            button.clicked.connect(lambda _on=False, i=i: self._take(i))
            self.buttons.append(button)
            row.addWidget(button)
        self.close_button = quiet_button("Put away", "Put this line away")
        self.close_button.clicked.connect(self._leave)
        row.addWidget(self.close_button)
        column = QVBoxLayout(self)
        column.setContentsMargins(2 * RHYTHM, RHYTHM, RHYTHM, RHYTHM)
        column.setSpacing(RHYTHM)
        column.addLayout(self._above)
        column.addLayout(row)
        self.hide()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """On a narrow screen the sentence stands over the buttons."""
        super().resizeEvent(event)
        break_line(self._text, self._above, self._row, 0, event.size().width() < NARROW)

    @property
    def text(self) -> str:
        """What is being said; nothing when it is put away."""
        return self._text.text()

    def say(self, text: str, choices: tuple[Choice, ...] = (), wrong: bool = False) -> None:
        """Say `text` with up to two choices; `wrong` when something failed. An offer waits meanwhile."""
        if self._offered is not None:
            self._waiting.insert(0, self._offered)
            self._offered = None
        self._show(text, choices, wrong)

    def _show(self, text: str, choices: tuple[Choice, ...], wrong: bool) -> None:
        self._wrong, self._choices = wrong, choices
        self._text.setText(text)
        self.setAccessibleName(text)
        for i, button in enumerate(self.buttons):
            button.setVisible(i < len(choices))
            if i < len(choices):
                button.setText(choices[i][0])
                button.updateGeometry()
        self.show()
        self.update()

    def offer(self, text: str, choices: tuple[Choice, ...] = (), wrong: bool = False) -> None:
        """Say it once nothing else stands here: it takes the place of nothing that was not read yet."""
        self._waiting.append((text, choices, wrong))
        self._say_next()

    def put_away(self) -> None:
        """Say no more of what was said, but what has waited; an offer stays until somebody answers it."""
        if self._offered is None:
            self._leave()

    def _leave(self) -> None:
        self._clear()
        self._say_next()

    def _clear(self) -> None:
        self._offered = None
        self._choices = ()
        self._text.clear()
        self.hide()

    def _say_next(self) -> None:
        if self._waiting and not self.text:
            self._offered = self._waiting.pop(0)
            self._show(*self._offered)

    def _take(self, i: int) -> None:
        if self._followed.isValid() and not self._followed.hasExpired(QApplication.doubleClickInterval()):
            return  # the second half of a double click, on what slid under the pointer
        _, act = self._choices[i]
        self._clear()
        act()
        self._followed.start()
        self._say_next()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """A ground of its own and a bar at the left."""
        c = colours()
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), QColor(c.wrong_ground if self._wrong else c.entry))
            painter.fillRect(0, 0, BAR, self.height(), QColor(c.wrong if self._wrong else c.strong))
            painter.setPen(QColor(c.rule))
            painter.drawLine(0, self.height() - 1, self.width(), self.height() - 1)
