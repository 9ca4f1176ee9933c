"""A line at the window's foot that says how far long work is, and stops it."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QLabel, QProgressBar, QWidget
from shiboken6 import isValid

from app.buttons import PlainButton
from app.theme import RHYTHM, ROW_HEIGHT
from app.work import Work

WHOLE = 1000


class ProgressLine(QWidget):
    """Shown while something is being worked on; `stops` says what stopping does."""

    def __init__(self, work: Work, stops: str = "Stop writing; nothing half-written stays behind") -> None:
        super().__init__()
        self._before: QWidget | None = None
        self._words = QLabel()
        self._bar = QProgressBar()
        self._bar.setRange(0, WHOLE)
        self._bar.setTextVisible(False)
        self._bar.setFixedHeight(RHYTHM)
        self._bar.setAccessibleName("How far it is")
        self.stop_button = PlainButton("Stop", stops)
        self.stop_button.clicked.connect(work.stop)
        row = QHBoxLayout(self)
        row.setContentsMargins(2 * RHYTHM, RHYTHM, 2 * RHYTHM, RHYTHM)
        row.setSpacing(2 * RHYTHM)
        row.addWidget(self._words)
        row.addWidget(self._bar, 1)
        row.addWidget(self.stop_button)
        self.setMinimumHeight(ROW_HEIGHT)
        self.hide()
        work.told.connect(self._tell)
        for ended in (work.done, work.failed, work.stopped):
            ended.connect(lambda *_: self._end())

    def begin(self, words: str) -> None:
        """Show the line before the first word comes back."""
        self._before = self.window().focusWidget()
        self._tell(0.0, words)
        self.show()

    def _end(self) -> None:
        """Put the line away; the keyboard goes back from its button to where it was."""
        before = self._before
        if self.stop_button.hasFocus() and before is not None and isValid(before) and before.isVisible():
            before.setFocus(Qt.FocusReason.OtherFocusReason)
        self.hide()

    def _tell(self, done: float, words: str) -> None:
        self._words.setText(words)
        self._bar.setValue(round(done * WHOLE))
