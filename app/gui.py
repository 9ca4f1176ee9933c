"""Starts the window's library, shows the window and loads the rest of the program behind it."""

from __future__ import annotations

import os
import signal
import sys
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QSocketNotifier, Qt
from PySide6.QtWidgets import QApplication

from app.demo import DEFAULT, names_demo
from app.first_look import show_sheet
from app.settings import WALKED, Settings, recovery_folder, settings_file
from app.theme import Ground, dress, load_typeface
from app.window import PRODUCT, Window

if TYPE_CHECKING:
    from app.ahead import Ahead


def run_window(name: str, ahead: Ahead | None = None) -> int:
    """Show the window with the job called `name`, or a new one, and stay until it is closed."""
    app = QApplication(sys.argv[:1])
    app.setApplicationName(PRODUCT.lower())
    app.setApplicationDisplayName("")
    app.setDesktopFileName(PRODUCT.lower())
    load_typeface()
    settings = Settings(settings_file())
    dress(app, read_ground(settings))
    is_first = not (name or settings.read(WALKED, False))
    name = name or (DEFAULT if is_first else "")
    signals = _gather_signals()
    window = Window(settings, recovery_folder(), bare=True)
    show_sheet(window, ahead, name)
    window.finish()
    _look_after(app, window)
    if name:
        _open_named(window, name)
    window.begin(ahead)
    if is_first:
        window.drafting.checked.connect(window.way.begin_by_itself, Qt.ConnectionType.SingleShotConnection)
    keeper = _end_on_signals(app, window, signals) if signals is not None else None
    code = app.exec()
    if keeper is not None:
        keeper.setEnabled(False)
    window.wind_up()
    window.session.retire()
    window.cutting.stock.session.retire()
    return code


def _look_after(app: QApplication, window: Window) -> None:
    """Faults, another ground and the icon: what the first look waits for none of."""
    from app.icon import program_icon
    from app.telling_faults import tell_fault
    from app.trouble import catch_faults

    catch_faults(partial(tell_fault, window), window.keep_unsaved)
    app.styleHints().colorSchemeChanged.connect(
        lambda _scheme: window.choose_ground(read_ground(window.settings))
    )
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


def _gather_signals() -> int | None:
    """From now on a signal that asks for the end waits to be read from here; None where there are none."""
    if sys.platform == "win32":
        return None
    reading, writing = os.pipe()
    os.set_blocking(reading, False)
    os.set_blocking(writing, False)
    signal.set_wakeup_fd(writing, warn_on_full_buffer=False)
    for number in (signal.SIGTERM, signal.SIGINT, signal.SIGHUP):
        if signal.getsignal(number) is not signal.SIG_IGN:  # as where it is to outlive its terminal
            signal.signal(number, lambda *_: None)
    return reading


def _end_on_signals(app: QApplication, window: Window, signals: int) -> QSocketNotifier:
    """Asked by the system to end, keep unsaved work and go without a question."""
    notifier = QSocketNotifier(signals, QSocketNotifier.Type.Read, app)

    def end() -> None:
        os.read(signals, 64)
        window.keep_unsaved()
        app.exit(0)

    notifier.activated.connect(end)
    return notifier
