"""The question before something unsaved is put aside: a job, or a stock list."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtWidgets import QMessageBox, QWidget


def may_leave(window: QWidget, title: str, text: str, save: Callable[[], bool]) -> bool:
    """Whether the person lets it be put aside: saved by `save`, which says if it was, or lost."""
    box = QMessageBox(window)
    box.setIcon(QMessageBox.Icon.NoIcon)
    box.setWindowTitle(title)
    box.setText(text)
    box.setInformativeText("Leaving without saving loses them.")
    saving = box.addButton("Save", QMessageBox.ButtonRole.AcceptRole)
    leaving = box.addButton("Leave without saving", QMessageBox.ButtonRole.DestructiveRole)
    staying = box.addButton("Stay", QMessageBox.ButtonRole.RejectRole)
    box.setDefaultButton(saving)
    box.setEscapeButton(staying)
    box.exec()
    box.deleteLater()
    if box.clickedButton() is saving:
        return save()
    return box.clickedButton() is leaving
