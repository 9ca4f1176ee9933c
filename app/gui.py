"""Starts the window's library, shows the window and loads the rest of the program behind it."""

from __future__ import annotations

import os
import signal
import sys
from functools import partial
from pathlib import Path

from PySide6.QtCore import QSocketNotifier, Qt
from PySide6.QtWidgets import QApplication

from app.ahead import Ahead
from app.demo import DEFAULT, names_demo
from app.recovery import recovery_folder
from app.settings import Settings, settings_file
from app.telling_faults import tell_fault
from app.theme import Ground, dress, load_typeface
from app.trouble import catch_faults
from app.way import WALKED
from app.window import PRODUCT, Window


def run_window(name: str, ahead: Ahead | None = None) -> int:
    """Show the window with the job called `name`, or a new one, and stay until it is closed."""
    app = QApplication(sys.argv[:1])
    app.setApplicationName(PRODUCT.lower())
    app.setApplicationDisplayName("")
    app.setDesktopFileName(PRODUCT.lower())
    load_typeface()
    settings = Settings(settings_file())
    dress(app, read_ground(settings))
    window = Window(settings, recovery_folder())
    window.canvas.seen.connect(partial(_show_icon, app))
    app.styleHints().colorSchemeChanged.connect(lambda _scheme: window.choose_ground(read_ground(settings)))
    catch_faults(partial(tell_fault, window), window.recovery.keep)
    keeper = _end_on_signals(app, window)
    is_first = not (name or settings.read(WALKED, False))
    if name or is_first:
        _open_named(window, name or DEFAULT)
    window.show()
    if ahead is not None:
        window.begin(ahead)
    else:
        window.canvas.seen.connect(window.begin)
    if is_first:
        window.drafting.checked.connect(window.way.begin, Qt.ConnectionType.SingleShotConnection)
    code = app.exec()
    if keeper is not None:
        keeper.setEnabled(False)
    window.wind_up()
    window.session.retire()
    return code


def _show_icon(app: QApplication) -> None:
    """After the first drawing, which waits for nothing."""
    from app.icon import program_icon

    app.setWindowIcon(program_icon())


def _open_named(window: Window, name: str) -> None:
    """A file of that name comes before a shipped job."""
    if names_demo(name):
        window.files.open_example(name)
    else:
        window.files.open(Path(name))


def read_ground(settings: Settings) -> Ground:
    """The ground that was chosen last."""
    kept = settings.read("ground", Ground.SYSTEM.value)
    return Ground(kept) if kept in list(Ground) else Ground.SYSTEM


def _end_on_signals(app: QApplication, window: Window) -> QSocketNotifier | None:
    """Asked by the system to end, keep unsaved work and go without a question."""
    if sys.platform == "win32":
        return None
    reading, writing = os.pipe()
    os.set_blocking(reading, False)
    os.set_blocking(writing, False)
    signal.set_wakeup_fd(writing, warn_on_full_buffer=False)
    for number in (signal.SIGTERM, signal.SIGINT):
        signal.signal(number, lambda *_: None)
    notifier = QSocketNotifier(reading, QSocketNotifier.Type.Read, app)

    def end() -> None:
        os.read(reading, 64)
        window.recovery.keep()
        app.exit(0)

    notifier.activated.connect(end)
    return notifier
