"""What dialogs have alike: labels, what stands beside a picture, a body that scrolls, the last row."""

from __future__ import annotations

from PySide6.QtCore import QSize, Qt
from PySide6.QtWidgets import QDialog, QFrame, QHBoxLayout, QLabel, QLayout, QScrollArea, QVBoxLayout, QWidget

from app.buttons import PlainButton, StrongButton
from app.theme import RHYTHM, text_font
from app.thin_bar import ThinBar
from app.words import Words


def build_label(words: str, field: QWidget) -> QLabel:
    """The label of `field`, whose letter after & leads into it; the field is read out by the same words."""
    label = QLabel(words)
    label.setBuddy(field)
    field.setAccessibleName(words.replace("&", ""))
    return label


def build_words(text: str, points: float | None = None) -> Words:
    """Words over as many lines as they take, shown as they are; in the dialog's own size or in `points`."""
    label = Words(text)
    if points is not None:
        label.setFont(text_font(points))
    return label


def build_side(column: QVBoxLayout, width: int, name: str) -> QScrollArea:
    """What stands beside a picture, `width` pixels, to be scrolled up and down where a screen is low."""
    column.setContentsMargins(2 * RHYTHM, 2 * RHYTHM, 2 * RHYTHM, 2 * RHYTHM)
    column.setSpacing(RHYTHM)
    inner = QWidget()
    inner.setLayout(column)
    side = QScrollArea()
    side.setFrameShape(QScrollArea.Shape.NoFrame)
    side.setVerticalScrollBar(ThinBar(Qt.Orientation.Vertical))
    side.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
    side.setFocusPolicy(Qt.FocusPolicy.NoFocus)
    side.setWidgetResizable(True)
    side.setFixedWidth(width)
    side.setWidget(inner)
    side.setAccessibleName(name)
    return side


EDGES = QSize(2 * RHYTHM, 8 * RHYTHM)
"""Of the screen, which the system's own bars and a window's frame may want, pixels."""


class Body(QScrollArea):
    """What a dialog asks for, as large as it is; on a small screen it scrolls, and the last row stays."""

    def __init__(self, layout: QLayout) -> None:
        super().__init__()
        self._page = page = QWidget()
        page.setLayout(layout)
        layout.setContentsMargins(2, 2, RHYTHM, 2)
        self.setWidget(page)
        self.setWidgetResizable(True)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.setVerticalScrollBar(ThinBar(Qt.Orientation.Vertical))
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAsNeeded)

    def sizeHint(self) -> QSize:
        """So that nothing need be scrolled."""
        page = self._page
        return page.sizeHint().expandedTo(page.minimumSizeHint()) + QSize(RHYTHM // 2, RHYTHM // 2)

    def minimumSizeHint(self) -> QSize:
        """A few lines of it."""
        return QSize(30 * RHYTHM, 16 * RHYTHM)


def bring_forward(window: QWidget) -> None:
    """Show a window, before all others and ready to be typed into; one that is open already, too."""
    window.show()
    window.raise_()
    window.activateWindow()


def fit_screen(dialog: QWidget, wanted: QSize | None = None) -> None:
    """As large as it wants to be, or as `wanted`, where the screen has room for it."""
    room = dialog.screen().availableSize() - EDGES
    dialog.resize((wanted or dialog.sizeHint()).boundedTo(room))


def build_close(page: QWidget) -> PlainButton:
    """What closes a page on which everything is done at once, so that nothing is left to accept."""
    close = PlainButton("Close", "Close this page")
    close.setAutoDefault(False)  # Enter in a field would close it
    close.clicked.connect(page.close)
    return close


def build_foot(dialog: QDialog, going_on: StrongButton, leaving: str) -> QHBoxLayout:
    """The dialog's last row: `going_on` accepts it, beside it what leaves it; `leaving` explains that."""
    leave = PlainButton("Leave it", leaving)
    leave.setAutoDefault(False)
    leave.clicked.connect(dialog.reject)
    going_on.setDefault(True)
    going_on.clicked.connect(dialog.accept)
    row = QHBoxLayout()
    row.setSpacing(RHYTHM)
    row.addStretch(1)
    row.addWidget(leave)
    row.addWidget(going_on)
    return row
