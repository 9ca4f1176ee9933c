"""The row above the sheet: which views are shown, keep-out, boards' marks, closer and further, packet."""

from __future__ import annotations

from PySide6.QtCore import QSize, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QButtonGroup, QHBoxLayout, QLayout, QWidget

from app.buttons import QuietButton, StrongButton, quiet_button
from app.sparing import least_width, spare
from app.theme import RHYTHM

CHOICES: tuple[tuple[str, tuple[str, ...]], ...] = (
    ("Elevations", ("front", "side")),
    ("Plan", ("plan",)),
    ("Plan section", ("plan_section",)),
    ("Vertical section", ("vertical_section",)),
)
"""What can be on the sheet: words, and the views they stand for."""
BEFORE = "Hold to see the surround as it was before the last step; on the sheet, hold the space bar"
ZOOMS = (
    ("Closer", "Come closer", 1),
    ("Further", "Go back", -1),
    ("Fit", "Bring the whole sheet into view", 0),
)


class ViewBar(QWidget):
    """Says what was asked for; the window carries it out."""

    views_chosen = Signal(object)
    clearance_toggled = Signal(bool)
    marks_toggled = Signal(bool)
    zoomed = Signal(int)
    packet_asked = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.setFixedHeight(6 * RHYTHM)
        self.view_buttons = QButtonGroup(self)
        self.clearance_button = quiet_button(
            "Keep-out", "Show where no wood may be, and how far it may stand out", True
        )
        self.marks_button = quiet_button("Marks", "Mark each board as in the cut list", True)
        self.before_button = quiet_button("Before", BEFORE)
        self.packet_button = StrongButton(
            "Write the packet…", "Write the sheets, the drawing file and the cut list"
        )
        self._row = row = QHBoxLayout(self)
        row.setContentsMargins(RHYTHM, 0, 2 * RHYTHM, 0)
        row.setSizeConstraint(QLayout.SizeConstraint.SetNoConstraint)
        row.setSpacing(RHYTHM // 2)
        for i, (words, _) in enumerate(CHOICES):
            button = quiet_button(words, f"Show: {words.lower()}", checkable=True)
            self.view_buttons.addButton(button, i)
            row.addWidget(button)
        self.view_buttons.button(0).setChecked(True)
        row.addSpacing(2 * RHYTHM)
        row.addWidget(self.clearance_button)
        row.addWidget(self.marks_button)
        row.addWidget(self.before_button)
        row.addStretch(1)
        self.zoom_buttons = [self._add_zoom(row, *zoom) for zoom in ZOOMS]
        row.addSpacing(RHYTHM)
        row.addWidget(self.packet_button)
        self.view_buttons.idClicked.connect(lambda i: self.views_chosen.emit(CHOICES[i][1]))
        self.clearance_button.toggled.connect(self.clearance_toggled)
        self.marks_button.toggled.connect(self.marks_toggled)
        self.packet_button.clicked.connect(self.packet_asked)

    def _add_zoom(self, row: QHBoxLayout, words: str, explained: str, way: int) -> QuietButton:
        button = quiet_button(words, explained)
        button.clicked.connect(lambda: self.zoomed.emit(way))
        row.addWidget(button)
        return button

    def _list_spared(self) -> list[QWidget]:
        """What a small screen does without, what goes first first: in the menu they stay.

        Closer and further go, then what is shown besides, then the views that are not on the sheet.
        """
        views, zooms = self.view_buttons.buttons(), self.zoom_buttons
        others: list[QWidget] = [
            button
            for button in self.findChildren(QuietButton)
            if button not in (self.packet_button, *views, *zooms)
        ]
        away = [button for button in views if not button.isChecked()]
        return [*reversed(zooms), *reversed(others), *reversed(away)]

    def minimumSizeHint(self) -> QSize:
        """Narrow enough for a small screen."""
        return QSize(least_width(self._row, self._list_spared()), self.height())

    def resizeEvent(self, _event: QResizeEvent) -> None:
        """Leave away what there is no room for."""
        self._make_room()

    def _make_room(self) -> None:
        """What is on the sheet keeps its button."""
        for button in self.view_buttons.buttons():
            if button.isChecked():
                button.show()
        spare(self._row, self._list_spared(), self.width())
        self.updateGeometry()

    def show_choice(self, views: tuple[str, ...]) -> None:
        """Tick the views that are shown, however they were chosen."""
        for i, (_, these) in enumerate(CHOICES):
            self.view_buttons.button(i).setChecked(these == views)
        self._make_room()
