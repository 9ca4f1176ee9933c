"""From the start of a process to its first drawing, beside an empty window of the same library and size.

Run by tests.bench as ``start (program|empty) TIME``; prints seconds since TIME on the monotonic clock.
"""

from __future__ import annotations

import os
import sys
from time import monotonic

SIZE = (1366, 768)


def _say(since: float) -> None:
    print(monotonic() - since, flush=True)
    os._exit(0)


def start_empty(since: float) -> None:
    """A window with nothing in it, until it is painted."""
    from PySide6.QtGui import QPaintEvent
    from PySide6.QtWidgets import QApplication, QMainWindow

    class Empty(QMainWindow):
        def paintEvent(self, event: QPaintEvent) -> None:
            super().paintEvent(event)
            _say(since)

    app = QApplication([])
    window = Empty()
    window.resize(*SIZE)
    window.show()
    app.exec()


def start_program(since: float, job: str) -> None:
    """The program as it is started with a job file, until its sheet is painted with a drawing on it."""
    import app.main

    load_window = app.main.load_window

    def load_and_watch():  # type: ignore[no-untyped-def]
        run_window = load_window()
        from app.canvas import Canvas

        paint = Canvas.paintEvent

        def paint_and_say(canvas: Canvas, event: object) -> None:
            paint(canvas, event)  # type: ignore[arg-type]
            if canvas.views:
                _say(since)

        Canvas.paintEvent = paint_and_say  # type: ignore[method-assign, assignment]
        return run_window

    app.main.load_window = load_and_watch
    app.main.main([job])


if __name__ == "__main__":
    kind, since = sys.argv[1], float(sys.argv[2])
    if kind == "empty":
        start_empty(since)
    else:
        start_program(since, sys.argv[3])
