"""The page on which a photo of the wall is taken in, its opening marked, and the surround seen in it.

What passes between it and the job stands in app.photo_wall.
"""

from __future__ import annotations

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtWidgets import (
    QDialog,
    QHBoxLayout,
    QLineEdit,
    QVBoxLayout,
    QWidget,
)

from app.buttons import PlainButton, StrongButton, quiet_button
from app.dialog_parts import build_close, build_side, build_words, fit_screen
from app.photo_canvas import CORNERS, PhotoCanvas
from app.theme import SMALL_POINTS
from app.tick_box import Tick

SIZE = QSize(1180, 680)
BESIDE = 300
BEGIN = (
    "Choose a photo of your wall with the whole fireplace in it. Stand a little to one side, and do not "
    "crop it. It stays on this computer."
)
SET_CORNERS = (
    "Drag the four rings to the corners of the opening, clear of any frame in it. By key: 1 to 4 pick a "
    "corner, arrows move it, Shift ten times as far, Escape puts it back."
)
LENS = "Lens, as on 36 x 24 mm film"
LENS_HELP = (
    "The focal length that the camera would have on 36 x 24 mm film, in mm: 24 to 28 for most telephones. "
    "Leave it empty to have it from the corners."
)


class PhotoWindow(QDialog):
    """Shows the photo and how surely the surround stands in it. `lens_entered` hands on what was typed."""

    lens_entered = Signal(str)
    gone = Signal()

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setWindowTitle("On your own wall")
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        fit_screen(self, SIZE)
        self.canvas = PhotoCanvas()
        self.status = build_words("")
        self.corner = build_words("", SMALL_POINTS)
        self.hint = build_words(BEGIN, SMALL_POINTS)
        self.lens = QLineEdit()
        self.lens.setAccessibleName(LENS)
        self.lens.setAccessibleDescription(LENS_HELP)
        self.lens.setToolTip(LENS_HELP)
        self.lens.setPlaceholderText("from the corners")
        self.lens.editingFinished.connect(lambda: self.lens_entered.emit(self.lens.text()))
        self.wood = self._tick("Show the surround", True)
        self.band = self._tick("Show how surely it lies there", True)
        self.open_button = StrongButton("Choose a photo…", "Choose a JPEG, PNG or WebP file")
        self.save_button = PlainButton("Save the picture…", "Write what is seen as PNG or JPEG")
        self.keep_button = PlainButton("", "Where the photo is kept")
        self.drop_button = quiet_button(
            "Let go of the photo", "Take the photo off this job; no file is thrown away"
        )
        for button in (self.open_button, self.save_button, self.keep_button, self.drop_button):
            button.setAutoDefault(False)  # Enter in the lens's field would press one
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(0)
        row.addWidget(self.canvas, 1)
        row.addWidget(self._build_side())
        self.canvas.picked.connect(self.name_corner)
        self.name_corner(0)

    def _build_side(self) -> QWidget:
        column = QVBoxLayout()
        column.addWidget(self.open_button)
        column.addWidget(self.status)
        column.addWidget(self.hint)
        column.addWidget(self.corner)
        self.lens_label = build_words(LENS, SMALL_POINTS)
        self.lens_label.setBuddy(self.lens)
        choices = (self.lens_label, self.lens, self.wood, self.band)
        buttons = (self.save_button, self.keep_button, self.drop_button)
        self.parts: tuple[QWidget, ...] = (self.corner, *choices, *buttons)
        for part in choices:
            column.addWidget(part)
        column.addStretch(1)
        for button in buttons:
            column.addWidget(button)
        column.addWidget(build_close(self))
        return build_side(column, BESIDE, "The photo in words")

    def _tick(self, words: str, on: bool) -> Tick:
        box = Tick(words)
        box.setChecked(on)
        box.toggled.connect(self._show_parts)
        return box

    def _show_parts(self) -> None:
        self.canvas.shows_wood = self.wood.isChecked()
        self.canvas.shows_band = self.band.isChecked()
        self.canvas.update()

    def name_corner(self, corner: int) -> None:
        """Say which corner the arrow keys move."""
        self.corner.setText(f"Picked: {CORNERS[corner].lower()}.")

    def show_having(self, has_photo: bool) -> None:
        """Offer only what can be done, with a photo and without one."""
        for part in self.parts:
            part.setVisible(has_photo)
        self.hint.setText(SET_CORNERS if has_photo else BEGIN)
        self.status.setVisible(bool(self.status.text()))

    def say(self, text: str) -> None:
        """Say how it stands."""
        self.status.setText(text)
        self.status.setVisible(bool(text))

    def done(self, result: int) -> None:
        """Tell whoever put it up; Escape, its own button and the window's frame all come here."""
        self.gone.emit()
        super().done(result)
