"""Edits in the real window, one process for each job: from accepted text to painted sheet, and the memory.

Run by tests.bench with the job's name as argument; prints JSON.
"""

from __future__ import annotations

import json
import os
import sys
import tempfile
from collections.abc import Callable, Iterator
from itertools import cycle, islice
from pathlib import Path
from statistics import median
from time import perf_counter, process_time, sleep

from PySide6.QtCore import QEvent, QObject
from PySide6.QtWidgets import QApplication

from app.canvas import Canvas
from app.demo import read_demo
from app.settings import Settings
from app.theme import Ground, dress, load_typeface
from app.window import Window
from model.job import read_value
from tests.bench.displays import SIZE

EDITS = 300
WARM = 20
BURST = 10
"""Edits that follow each other like arrow keys; then the window has time for its slower lists."""
PAUSE = 0.12
STEP = 1 / 16
PATHS = (
    "column.width",
    "shelf.height",
    "frieze.height",
    "opening.width",
    "shelf.overhang_front",
    "plinth.height",
    "column.margin",
    "column.rail",
    "shelf.overhang_end",
    "frieze.stile",
    "opening.height",
    "column.projection",
    "bed_mould.size",
    "panel.reveal",
    "frieze.rail",
)
_PAGE = os.sysconf("SC_PAGE_SIZE") if hasattr(os, "sysconf") else 4096


class Watch(QObject):
    """Counts how often the sheet is painted, until its `end`; when that was last done, and what the process
    had used of the processor by then. `tell` follows each time."""

    def __init__(self, canvas: Canvas, tell: Callable[[], object] = lambda: None) -> None:
        super().__init__()
        self.count = 0
        self.painted_at = self.busy_at = 0.0
        self._canvas, self._tell = canvas, tell
        canvas.installEventFilter(self)

    def end(self) -> None:
        """Watch no more."""
        self._canvas.removeEventFilter(self)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if event.type() is not QEvent.Type.Paint:
            return False
        watched.event(event)
        self.painted_at, self.busy_at = perf_counter(), process_time()
        self.count += 1
        self._tell()
        return True


def main(name: str) -> None:
    """Open the shipped job of that name, edit it, print what was measured."""
    app = QApplication(sys.argv[:1])
    load_typeface()
    dress(app, Ground.LIGHT)
    with tempfile.TemporaryDirectory() as folder:
        window = Window(Settings(Path(folder) / "settings.ini"), Path(folder))
        window.resize(*SIZE)
        window.session.open(read_demo(name), None)
        window.show()
        window.begin()
        watch = Watch(window.canvas)
        edits = _list_edits(window)
        for path, text in islice(edits, WARM):
            _edit(app, window, watch, path, text)
        rest(app)
        warm = read_memory()
        times, busy = [], []
        for path, text in islice(edits, EDITS):
            before = process_time()
            times.append(_edit(app, window, watch, path, text))
            busy.append(watch.busy_at - before)
            if len(times) % BURST == 0:
                rest(app)
        after = read_memory()
        for path, text in islice(edits, EDITS):
            _edit(app, window, watch, path, text)
        rest(app)
        print(json.dumps(_tell(times, busy, warm, after, read_memory())))
    os._exit(0)  # the unsaved job must not ask whether it may go


def _tell(times: list[float], busy: list[float], warm: float, after: float, later: float) -> dict[str, float]:
    """Seconds and megabytes; `cpu` is what the process itself used, whatever else the machine was doing."""
    ranked = sorted(times)
    return {
        "median": median(times),
        "p95": ranked[int(0.95 * len(ranked))],
        "worst": ranked[-1],
        "cpu": median(busy),
        "warm_mb": warm,
        "after_mb": after,
        "later_mb": later,
    }


def _list_edits(window: Window) -> Iterator[tuple[str, str]]:
    """Rows in turn, each a little off its first value, never twice the same in a row."""
    first = {path: read_value(window.session.job, path) for path in PATHS}
    for count in cycle(range(1, 9)):
        for path in PATHS:
            yield path, f"{first[path] - count * STEP:.4f} in"


def _edit(app: QApplication, window: Window, watch: Watch, path: str, text: str) -> float:
    """Seconds from the accepted text until the sheet with the changed front and side view is painted."""
    before, job = watch.count, window.session.job
    start = perf_counter()
    window.session.set_text(path, text)
    while watch.count == before:
        app.processEvents()
    took = watch.painted_at - start
    surround = window.drafting.surround
    assert surround is not None
    assert surround.job is window.session.job is not job
    return took


def rest(app: QApplication) -> None:
    """Let the window see to its slower lists."""
    end = perf_counter() + PAUSE
    while perf_counter() < end:
        app.processEvents()
        sleep(0.005)


def read_memory() -> float:
    """Resident megabytes of this process; 0 where the system does not say."""
    try:
        return int(Path("/proc/self/statm").read_text().split()[1]) * _PAGE / 1e6
    except OSError:
        return 0.0


if __name__ == "__main__":
    main(sys.argv[1])
