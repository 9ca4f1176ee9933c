"""From the start of a process to a window: an ``empty`` one of the same library and size, the program's with
a job's ``sheet`` painted in it, or the ``whole`` one with every list in it and nothing left to do.

Run by tests.bench as ``start KIND TIME JOB``; prints seconds since TIME on the monotonic clock, and those
that the window's own process worked. The second one, that draws ahead, has ended when this one does.
"""

from __future__ import annotations

import os
import sys
from contextlib import suppress
from time import monotonic, process_time

SIZE = (1366, 768)


def _say(since: float) -> None:
    print(monotonic() - since, process_time(), flush=True)


def start_empty(since: float) -> None:
    """A window with nothing in it, until it is painted."""
    from PySide6.QtGui import QPaintEvent
    from PySide6.QtWidgets import QApplication, QMainWindow

    class Empty(QMainWindow):
        def paintEvent(self, event: QPaintEvent) -> None:
            super().paintEvent(event)
            _say(since)
            os._exit(0)

    app = QApplication([])
    window = Empty()
    window.resize(*SIZE)
    window.show()
    app.exec()


def start_program(since: float, job: str, whole: bool) -> None:
    """The program as it is started with a job file."""
    import app.main
    from app import ahead

    load_window, start_ahead = app.main.load_window, ahead.start_ahead
    seconds: list[ahead.Ahead | None] = []

    def start_and_keep(name: str) -> ahead.Ahead | None:
        seconds.append(start_ahead(name))
        return seconds[-1]

    def end() -> None:
        _say(since)
        with suppress(ChildProcessError):  # it was let go already
            if seconds[0] is not None:
                seconds[0].end()
        os._exit(0)

    def load_and_watch():  # type: ignore[no-untyped-def]
        run_window = load_window()
        (_watch_whole if whole else _watch_sheet)(end)
        return run_window

    ahead.start_ahead = start_and_keep
    app.main.load_window = load_and_watch
    app.main.main([job])


def _watch_sheet(end) -> None:  # type: ignore[no-untyped-def]
    """Until the sheet is painted with a drawing on it."""
    from app.canvas import Canvas

    paint = Canvas.paintEvent

    def paint_and_say(canvas: Canvas, event: object) -> None:
        paint(canvas, event)  # type: ignore[arg-type]
        if canvas.views:
            end()

    Canvas.paintEvent = paint_and_say  # type: ignore[method-assign, assignment]


def _watch_whole(end) -> None:  # type: ignore[no-untyped-def]
    """Until the last of the lists that follow by themselves is shown, and what came of that is done."""
    from PySide6.QtCore import QTimer

    from app.window import Window

    begin = Window.begin

    def begin_and_watch(window: Window, *ahead: object) -> None:
        begin(window, *ahead)  # type: ignore[arg-type]
        window.drafting.listed.connect(lambda: QTimer.singleShot(0, end))

    Window.begin = begin_and_watch  # type: ignore[method-assign, assignment]


if __name__ == "__main__":
    kind, since = sys.argv[1], float(sys.argv[2])
    if kind == "empty":
        start_empty(since)
    else:
        start_program(since, sys.argv[3], whole=kind == "whole")
