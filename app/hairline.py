"""Thin things that part the window: hairlines, and the handles that are drawn as such."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent
from PySide6.QtWidgets import (
    QSizePolicy,
    QSplitter,
    QSplitterHandle,
    QWidget,
)

from app.theme import colours


class Hairline(QWidget):
    """A level line across."""

    def __init__(self) -> None:
        super().__init__()
        self.setFixedHeight(1)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """One colour."""
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), QColor(colours().rule))


class _Handle(QSplitterHandle):
    def paintEvent(self, _event: QPaintEvent) -> None:
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), QColor(colours().rule))


class Parting(QSplitter):
    """Two panes with a hairline between them that can be dragged; neither can be dragged away."""

    def __init__(self, orientation: Qt.Orientation, first: QWidget, second: QWidget) -> None:
        super().__init__(orientation)
        self.setChildrenCollapsible(False)
        self.setHandleWidth(1)
        self.addWidget(first)
        self.addWidget(second)

    def createHandle(self) -> QSplitterHandle:
        """The hairline."""
        return _Handle(self.orientation(), self)
