"""Asks where something is to be saved, and before a file goes that nobody asked about.

What is asked before unsaved work is put aside is in app.leaving.
"""

from __future__ import annotations

import os
from collections.abc import Mapping
from pathlib import Path

from PySide6.QtWidgets import QFileDialog, QMessageBox, QWidget

Kinds = Mapping[str, tuple[str, ...]]
"""What may be chosen in the dialog, as it words it, and the endings of such files, with their point: the
first is added to a name that has none of all these."""
PDF: Kinds = {"PDF (*.pdf)": (".pdf",)}
REPLACE, ELSEWHERE = "Replace it", "Save as…"


def ask_where(window: QWidget, title: str, start: Path, kinds: Kinds) -> tuple[Path, str] | None:
    """The file to save to and which of `kinds` was chosen; None where nothing is to be saved.

    The dialog asks before a file goes by the name that was typed; here it is asked by the one it became.
    """
    name, kind = QFileDialog.getSaveFileName(window, title, str(start), ";;".join(kinds))
    if not name:
        return None
    path = with_ending(Path(name), kind, kinds)
    if path != Path(name) and os.path.exists(path) and not _may_replace(window, path):
        return None
    return path, kind


def with_ending(path: Path, kind: str, kinds: Kinds) -> Path:
    """The path with the ending of `kind`, where it has none of `kinds`: a point may be part of a name."""
    if path.suffix.lower() in {ending for endings in kinds.values() for ending in endings}:
        return path
    return path.with_name(path.name + kinds.get(kind, next(iter(kinds.values())))[0])


def _may_replace(window: QWidget, path: Path) -> bool:
    text = f"There is already a file called “{path.name}” here."
    return ask(window, "Replace a file", text, "Replacing it loses what is in it.", REPLACE) == REPLACE


def ask_over_changes(window: QWidget, path: Path, what: str) -> str:
    """REPLACE, ELSEWHERE or "", of a file that something else wrote since; `what` is to be saved there."""
    text = f"“{path.name}” was changed by another program or window since it was opened here."
    detail = f"Replacing it loses those changes. To keep both, save this {what} under another name."
    return ask(window, "Changed elsewhere", text, detail, REPLACE, ELSEWHERE)


def say_anew(path: Path, what: str) -> str:
    """Of a file that was no longer there when `what` it holds was saved."""
    return (
        f"“{path.name}” was no longer where it was opened; it is written there anew. If it was moved, or its "
        f"disk was taken away, save the {what} there as well."
    )


def ask(window: QWidget, title: str, text: str, detail: str, *choices: str) -> str:
    """The choice that was made, "" for leaving everything as it is."""
    box = QMessageBox(window)
    box.setIcon(QMessageBox.Icon.NoIcon)
    box.setWindowTitle(title)
    box.setText(text)
    box.setInformativeText(detail)
    buttons = {box.addButton(choice, QMessageBox.ButtonRole.ActionRole): choice for choice in choices}
    stay = box.addButton("Stay", QMessageBox.ButtonRole.RejectRole)
    box.setDefaultButton(stay)
    box.setEscapeButton(stay)
    box.exec()
    box.deleteLater()
    return next((choice for button, choice in buttons.items() if button is box.clickedButton()), "")
