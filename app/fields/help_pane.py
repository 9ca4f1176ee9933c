"""The foot of the measuring list: a sentence about the row in focus, and a picture of what it measures."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QFrame, QVBoxLayout, QWidget

from app.fields.picture_view import PictureView
from app.fields.row import SIDE
from app.theme import RHYTHM, SMALL_POINTS, text_font
from app.words import Words
from render.picture_frame import FieldPicture

TEXT_HEIGHT = 8 * RHYTHM
PICTURE_HEIGHT = 19 * RHYTHM


class HelpPane(QWidget):
    """As high whether there is a picture or not, so that the list above never jumps.

    On a low screen there are words alone; see `make_room`.
    """

    def __init__(self, hint: str) -> None:
        super().__init__()
        self.picture = PictureView()
        self.label = Words()
        self.label.setFont(text_font(SMALL_POINTS))
        self.label.setAlignment(Qt.AlignmentFlag.AlignTop | Qt.AlignmentFlag.AlignLeft)
        self.label.setFrameShape(QFrame.Shape.NoFrame)
        self._words = self._note = ""
        column = QVBoxLayout(self)
        column.setContentsMargins(SIDE, RHYTHM, SIDE, RHYTHM)
        column.setSpacing(RHYTHM // 2)
        column.addWidget(self.picture, 1)
        column.addWidget(self.label)
        self.label.setFixedHeight(TEXT_HEIGHT)
        self.make_room(True)
        self.say(hint)

    @property
    def text(self) -> str:
        """What is said."""
        return self.label.text()

    def say(self, words: str) -> None:
        """Say `words`, the help of the row in focus; its picture follows, if there is one."""
        self._words = words
        self.show_picture(None)

    def show_picture(self, picture: FieldPicture | None) -> None:
        """Show it beside what is said."""
        note = f" {picture.note}" if picture is not None and picture.note else ""
        self.label.setText(self._words + note)
        self.picture.show_picture(picture, self._words)

    def make_room(self, tall: bool) -> None:
        """Leave the picture away where the list would have no room beside it."""
        self.picture.setVisible(tall)
        self.setFixedHeight(TEXT_HEIGHT + 2 * RHYTHM + (PICTURE_HEIGHT if tall else 0))

    def resizeEvent(self, event: QResizeEvent) -> None:
        """A narrower list breaks the sentence into more lines, which its place has room for."""
        super().resizeEvent(event)
        self.label.setMaximumWidth(max(event.size().width() - 2 * SIDE, 60))
