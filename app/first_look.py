"""The first look at a job: its sheet, in a window in which there is nothing else yet.

What is typed and clicked meanwhile is left with Qt until the window is whole.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from PySide6.QtCore import QCoreApplication, QEvent, QEventLoop, QSocketNotifier, QTimer, SignalInstance

from app.ahead import PATIENCE
from app.lettering import letter_sheet
from app.shown import set_out

if TYPE_CHECKING:
    from app.ahead import Ahead
    from app.window import Window
    from app.working import FirstSight

UNSEEN_PAUSE = 1000
"""Milliseconds to wait for a picture: a window that is covered may never be painted."""


def show_sheet(window: Window, ahead: Ahead | None, name: str) -> None:
    """Show the bare window, and on its sheet the job called `name`, as far as `ahead` can draw it."""
    window.show()
    if ahead is None or window.canvas.isHidden():
        _wait_for(window.canvas.seen, UNSEEN_PAUSE)
        return
    ahead.ask_to_see(name, window.wish)
    answered = QSocketNotifier(ahead.answers_from, QSocketNotifier.Type.Read)
    _wait_for(answered.activated, round(1000 * PATIENCE))
    answered.setEnabled(False)
    sight = ahead.take_sight()
    if sight is not None:
        _put_up(window, ahead, name, sight)
        _wait_for(window.canvas.painted, UNSEEN_PAUSE)


def _put_up(window: Window, ahead: Ahead, name: str, sight: FirstSight) -> None:
    """On the sheet, with writing of the right size; the row of options takes its room off the sheet."""
    if sight.has_options:
        window.options_room.show()
        QCoreApplication.sendPostedEvents(None, QEvent.Type.LayoutRequest)
    window.canvas.show_views(set_out(sight.drawings))

    def draw_for(ratio: float) -> None:
        window.wish = replace(window.wish, ratio=ratio)
        ahead.ask_to_see(name, window.wish)
        again = ahead.take_sight()
        if again is not None:
            window.canvas.show_views(set_out(again.drawings))

    letter_sheet(window.canvas, window.wish.ratio, draw_for)


def _wait_for(signal: SignalInstance, patience: int) -> None:
    """Let everything go on but keys and pointer, until the signal comes."""
    loop = QEventLoop()
    signal.connect(loop.quit)
    QTimer.singleShot(patience, loop.quit)
    loop.exec(QEventLoop.ProcessEventsFlag.ExcludeUserInputEvents)
