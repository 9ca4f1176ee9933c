"""Edges dragged in the real window, one process for each job and size: from a pointer's move to painted.

Run by tests.bench with the job's name and the window's width and height; prints JSON. Moves come at 60 Hz;
one that has to wait for what the move before it left to do is measured from when it was due.

A move is painted when the view that the hand is in shows the new size, with its dimensions, its numbers and
the plate beside the pointer. The other view follows. How late it shows that size, or a later one, is told as
well: `behind`, from when the move was due to when both views are painted.
"""

from __future__ import annotations

import json
import os
import sys
import tempfile
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from statistics import median
from time import perf_counter, process_time, sleep

from PySide6.QtCore import QEvent, QPointF, Qt
from PySide6.QtGui import QMouseEvent
from PySide6.QtWidgets import QApplication

from app.demo import read_demo
from app.settings import Settings
from app.theme import Ground, dress, load_typeface
from app.window import Window
from tests.bench.edits import Watch

EDGES = (
    ("front", "outer side of the right column"),
    ("front", "inner side of the left column"),
    ("front", "lower edge of the frieze"),
    ("front", "right edge of panel 1 of the frieze"),
    ("front", "top of the right plinth"),
    ("front", "top of the shelf"),
    ("front", "right end of the shelf"),
    ("side", "front of the shelf"),
    ("side", "front of the column"),
)
"""What is dragged, by view and name."""
MOVES = 60
FIRST, REACH = 6, 24
"""Pixels from which a press counts as a drag, and that it goes out and back by from there."""
BEAT = 1 / 60


def main(name: str, width: int, height: int) -> None:
    """Open the shipped job of that name, drag its edges, print what was measured."""
    app = QApplication(sys.argv[:1])
    load_typeface()
    dress(app, Ground.LIGHT)
    with tempfile.TemporaryDirectory() as folder:
        window = Window(Settings(Path(folder) / "settings.ini"), Path(folder))
        window.resize(width, height)
        window.session.open(read_demo(name), None)
        window.show()
        window.begin()
        _rest(app, 0.5)
        for edge in EDGES[:2]:
            list(_drag(app, window, *edge))
        moves = [move for edge in EDGES for move in _drag(app, window, *edge)]
        print(json.dumps(_tell(moves)))
    os._exit(0)  # the unsaved job must not ask whether it may go


@dataclass(slots=True)
class Move:
    """One move: `took` seconds from when it was due to when the view in hand was painted, `behind` to when
    all views were; None for a move that led nowhere.

    `cpu` is what the process itself used of that, whatever else the machine did: to begin with, what it had
    used before.
    """

    due: float
    shown: object
    cpu: float
    is_changed: bool
    took: float = 0.0
    behind: float | None = None


def _tell(moves: list[Move]) -> dict[str, float]:
    """Of those that changed the job."""
    changed = [move for move in moves if move.is_changed]
    took, busy = sorted(move.took for move in changed), sorted(move.cpu for move in changed)
    behind = sorted(move.behind for move in changed if move.behind is not None)
    late = int(0.95 * len(changed))
    return {
        "moves": len(moves),
        "changed": len(changed),
        "median": median(took),
        "p95": took[late],
        "worst": took[-1],
        "cpu": median(busy),
        "cpu_p95": busy[late],
        "behind": median(behind),
        "behind_p95": behind[int(0.95 * len(behind))],
        "behind_worst": behind[-1],
    }


class Paints:
    """Sees when the sheet shows what a move led to: in the view that the hand is in, and in all of them."""

    def __init__(self, window: Window) -> None:
        self._drafting, self._watch = window.drafting, Watch(window.canvas, self._look)
        self._now: Move | None = None
        self._waiting: list[Move] = []
        self.end = self._watch.end

    @property
    def is_due(self) -> bool:
        """Whether the last move is not painted yet."""
        return self._now is not None

    def await_move(self, move: Move) -> None:
        """It has been sent, and what it led to is to be painted."""
        self._now = move
        if move.is_changed:
            self._waiting.append(move)

    def _look(self) -> None:
        now, move = self._watch.painted_at, self._now
        if move is not None:
            move.took, move.cpu, self._now = now - move.due, self._watch.busy_at - move.cpu, None
        shown = [i for i, each in enumerate(self._waiting) if each.shown is self._drafting.whole]
        followed = shown[-1] + 1 if shown else 0
        for each in self._waiting[:followed]:
            each.behind = now - each.due
        del self._waiting[:followed]


def _drag(app: QApplication, window: Window, view: str, name: str) -> Iterator[Move]:
    """Each move; what was moved is put back at the end."""
    at = _find_edge(window, view, name)
    grip = window.shaping.find_grip(at)
    assert grip is not None
    paints = Paints(window)
    _send(window, QEvent.Type.MouseButtonPress, at)
    due = perf_counter()
    for i in range(1, MOVES + 1):
        due = _wait(app, max(due + BEAT, perf_counter() - BEAT))
        off = FIRST + REACH - abs(i % (2 * REACH) - REACH)
        to = at + (QPointF(0, -off) if grip.way else QPointF(off, 0))
        job, busy = window.session.job, process_time()
        _send(window, QEvent.Type.MouseMove, to)
        move = Move(due, window.drafting.surround, busy, window.session.job is not job)
        paints.await_move(move)
        while paints.is_due:
            app.processEvents()
        if i > 1:  # the first finds what is worth stopping at
            yield move
    _rest(app, 0.05)
    window.shaping.put_back()
    _send(window, QEvent.Type.MouseButtonRelease, at)
    paints.end()
    _rest(app, 0.15)


def _find_edge(window: Window, view: str, name: str) -> QPointF:
    """A pixel at which the pointer takes hold of that edge."""
    place = window.canvas.place_of(view)
    grip = next(grip for grip in window.shaping.grips if (grip.view, grip.name) == (view, name))
    for part in (0.5, 0.3, 0.7, 0.15, 0.85):
        x0, y0, x1, y1 = grip.segments[0]
        at = place.to_pixels((x0 + part * (x1 - x0), y0 + part * (y1 - y0)))
        found = window.shaping.find_grip(at)
        if found is not None and found.key == grip.key:
            return at
    raise LookupError(name)


def _send(window: Window, kind: QEvent.Type, at: QPointF) -> None:
    button = Qt.MouseButton.NoButton if kind is QEvent.Type.MouseMove else Qt.MouseButton.LeftButton
    down = Qt.MouseButton.NoButton if kind is QEvent.Type.MouseButtonRelease else Qt.MouseButton.LeftButton
    event = QMouseEvent(kind, at, window.canvas.mapToGlobal(at), button, down, Qt.KeyboardModifier.NoModifier)
    QApplication.sendEvent(window.canvas, event)


def _wait(app: QApplication, due: float) -> float:
    """Let the window do what it has to do until the next move is due; when that is."""
    while perf_counter() < due:
        app.processEvents()
        sleep(max(min(0.0005, due - perf_counter()), 0))
    return due


def _rest(app: QApplication, seconds: float) -> None:
    _wait(app, perf_counter() + seconds)


if __name__ == "__main__":
    main(sys.argv[1], int(sys.argv[2]), int(sys.argv[3]))
