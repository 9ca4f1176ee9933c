"""Tells a fault above the sheet, with its report to copy and the way to save."""

from __future__ import annotations

import getpass
from collections.abc import Iterator
from contextlib import suppress
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtGui import QGuiApplication

from app.fault_report import write_report
from app.trouble import say_fault
from model.job import read_value
from model.parameters import TABLE, Kind

if TYPE_CHECKING:
    from app.window import Window

COPY, SAVE = "Copy a report", "Save as…"
COPIED = "The report is in the clipboard: where the program failed and on what system, no texts of the job."


def tell_fault(window: Window, error: BaseException) -> None:
    """Say what happened and where the work is; a report is written only when it is asked for."""
    kept = [keeper.kept_in for keeper in (window.recovery, window.stock_recovery) if keeper.is_unsaved]
    text = say_fault(bool(kept), kept[0] if kept and all(kept) else None)

    def save() -> None:
        window.files.save_as()

    saving = (SAVE, save)

    def copy() -> None:
        QGuiApplication.clipboard().setText(write_report(error, list_personal(window)))
        window.notice.say(f"{COPIED} {text}", (saving,), wrong=True)

    window.notice.say(text, ((COPY, copy), saving), wrong=True)


def list_personal(window: Window) -> tuple[str, ...]:
    """What people wrote into the job, where it lies on the disk, and who is at the machine."""
    job, path = window.session.job, window.session.path
    texts = [str(read_value(job, row.path)) for row in TABLE if row.kind is Kind.TEXT]
    places = [path.stem, *path.parts[1:-1]] if path else []
    return (*texts, *places, *_list_names())


def _list_names() -> Iterator[str]:
    """The names of who is at the machine, as far as the system knows them."""
    with suppress(RuntimeError):
        yield Path.home().name
    with suppress(KeyError, OSError, ImportError):
        yield getpass.getuser()
