"""Acts once nothing has happened for a while. What happens in a rhythm has a QTimer of its own."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QObject, QTimer, SignalInstance


def build_pause(owner: QObject, milliseconds: int, act: Callable[[], object] | SignalInstance) -> QTimer:
    """A timer that, so long after it was last started, does `act` once; it goes with `owner`.

    Started with another time, it waits for that.
    """
    timer = QTimer(owner)
    timer.setSingleShot(True)
    timer.setInterval(milliseconds)
    timer.timeout.connect(act)
    return timer
