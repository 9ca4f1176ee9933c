"""Asks where labels and the measuring sheet go, writes them, and says what became of it."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QWidget

from app.asking import PDF, ask_where
from app.beside_packet import MEASURING_TITLE, build_labels_pdf, build_measuring_pdf, name_labels
from app.files import FileTrouble, save_bytes
from app.job_files import JobFiles
from app.notice import Notice
from app.session import Session
from app.settings import Settings


class BesideWriting(QObject):
    """Carries out what the menu asks for; the paper is the one the packet was last written on."""

    def __init__(
        self, window: QWidget, session: Session, settings: Settings, files: JobFiles, notice: Notice
    ) -> None:
        super().__init__(window)
        self._window, self._session, self._settings = window, session, settings
        self._files, self._notice = files, notice

    def ask_labels(self) -> None:
        """Ask for the size of the labels and a file, then write them."""
        from app.label_dialog import LabelDialog
        from model.surround import plan_surround

        job = self._session.job
        dialog = LabelDialog(
            self._window,
            len(plan_surround(job).boards),
            job.about.length_style,
            str(self._settings.read("labels", "")),
        )
        if dialog.exec():
            self._settings.write("labels", dialog.name)
            path = self._ask("Write the labels", name_labels(job))
            if path is not None:
                data = build_labels_pdf(job, dialog.read_stock(), dialog.start, dialog.outlined)
                self._save(path, data, "The labels are")
        dialog.deleteLater()

    def ask_measuring(self) -> None:
        """Ask for a file and write a blank measuring sheet into it."""
        path = self._ask("Write a measuring sheet", f"{MEASURING_TITLE}.pdf")
        if path is not None:
            paper = str(self._settings.read("paper", "letter"))
            data = build_measuring_pdf(paper, self._session.job.about.units)
            self._save(path, data, "A blank measuring sheet is")

    def _ask(self, words: str, name: str) -> Path | None:
        where = ask_where(self._window, words, self._files.folder / name, PDF)
        return None if where is None else where[0]

    def _save(self, path: Path, data: bytes, words: str) -> None:
        try:
            save_bytes(path, data)
        except FileTrouble as trouble:
            self._notice.say(f"{trouble} Choose another folder or make room.", wrong=True)
        else:
            self._notice.say(f"{words} in {path}.")
