"""Asks what is to be written for the yard and the shop, on which paper and where."""

from __future__ import annotations

import os
from collections.abc import Sequence
from pathlib import Path

from PySide6.QtCore import QSize, Qt
from PySide6.QtWidgets import (
    QComboBox,
    QDialog,
    QFileDialog,
    QGridLayout,
    QLabel,
    QLineEdit,
    QVBoxLayout,
    QWidget,
)

from app.buttons import PlainButton, StrongButton
from app.dialog_parts import Body, build_foot, build_label, fit_screen
from app.drawing_files import USUAL_VERSION, VERSION_WORDS
from app.files import tell_folder
from app.outputs import CHOICES, LISTS, OUTPUTS, PARTS, name_output
from app.theme import RHYTHM, SMALL_POINTS, text_font
from app.tick_box import Tick
from app.words import Words
from model.job import Job

PAPERS = {
    "letter": "Letter, 11 × 8 1/2 in.",
    "tabloid": "Tabloid, 17 × 11 in.",
    "a4": "A4, 297 × 210 mm",
    "a3": "A3, 420 × 297 mm",
}
LISTS_ARE = "Lists for a spreadsheet (CSV)"
MOST_NAMED = 3
"""Files that are named before they are written; of more it is said how many."""
ACROSS = 4
"""Lists that stand beside each other."""


class PacketDialog(QDialog):
    """Paper, parts and folder; what is there already and would be replaced is said before."""

    def __init__(
        self, parent: QWidget, job: Job, folder: Path, paper: str, dxf_version: str = USUAL_VERSION
    ) -> None:
        super().__init__(parent)
        self._job = job
        self.setWindowTitle("Write the packet")
        self.paper_box = QComboBox()
        self.paper_box.addItems(list(PAPERS.values()))
        self.paper_box.setCurrentIndex(list(PAPERS).index(paper) if paper in PAPERS else 0)
        self.version_box = QComboBox()
        self.version_box.addItems([f"DXF {words}" for words in VERSION_WORDS.values()])
        versions = list(VERSION_WORDS)
        self.version_box.setCurrentIndex(versions.index(dxf_version) if dxf_version in versions else 0)
        self.folder_edit = QLineEdit(str(folder))
        self.part_boxes = {part: Tick(OUTPUTS[part].words) for part in CHOICES}
        self._remark_label = Words()
        self._remark_label.setFont(text_font(SMALL_POINTS))
        self.write_button = StrongButton("Write the packet", "Write the chosen files into the folder")
        self._lay_out()
        self.folder_edit.textChanged.connect(self._look)
        for part, box in self.part_boxes.items():
            box.setChecked(part in PARTS)
            box.toggled.connect(self._look)
        self._look()

    def _lay_out(self) -> None:
        grid = QGridLayout()
        grid.setHorizontalSpacing(2 * RHYTHM)
        grid.setVerticalSpacing(RHYTHM)
        grid.addWidget(build_label("&Paper", self.paper_box), 0, 0)
        grid.addWidget(self.paper_box, 0, 1, 1, 2)
        grid.addWidget(build_label("&Folder", self.folder_edit), 1, 0)
        grid.addWidget(self.folder_edit, 1, 1)
        choose = PlainButton("Choose…", "Choose the folder")
        choose.setAutoDefault(False)
        choose.clicked.connect(self._choose)
        grid.addWidget(choose, 1, 2)
        grid.addWidget(build_label("&Drawings", self.version_box), 2, 0)
        grid.addWidget(self.version_box, 2, 1, 1, 2)
        grid.addWidget(QLabel("Write"), 3, 0, Qt.AlignmentFlag.AlignTop)
        whole = [box for part, box in self.part_boxes.items() if part not in LISTS]
        for row, box in enumerate(whole, start=3):
            grid.addWidget(box, row, 1, 1, 2)
        grid.addLayout(self._lay_out_lists(), 3 + len(whole), 1, 1, 2)
        outer = QVBoxLayout(self)
        outer.setContentsMargins(2 * RHYTHM, 2 * RHYTHM, 2 * RHYTHM, 2 * RHYTHM)
        outer.setSpacing(2 * RHYTHM)
        outer.addWidget(Body(grid), 1)
        outer.addWidget(self._remark_label)
        outer.addLayout(build_foot(self, self.write_button, "Close this and write nothing"))
        fit_screen(self, self.sizeHint().expandedTo(QSize(86 * RHYTHM, 0)))

    def _lay_out_lists(self) -> QGridLayout:
        lists = QGridLayout()
        lists.setVerticalSpacing(RHYTHM)
        lists.addWidget(QLabel(LISTS_ARE), 0, 0, 1, ACROSS)
        for place, part in enumerate(LISTS):
            lists.addWidget(self.part_boxes[part], 1 + place // ACROSS, place % ACROSS)
        return lists

    @property
    def paper(self) -> str:
        """The name of the chosen paper."""
        return list(PAPERS)[self.paper_box.currentIndex()]

    @property
    def dxf_version(self) -> str:
        """The name of the version that drawing files are written in."""
        return list(VERSION_WORDS)[self.version_box.currentIndex()]

    @property
    def folder(self) -> Path:
        """The chosen folder."""
        return Path(self.folder_edit.text().strip()).expanduser()

    @property
    def parts(self) -> tuple[str, ...]:
        """What is to be written."""
        return tuple(part for part, box in self.part_boxes.items() if box.isChecked())

    @property
    def remark(self) -> str:
        """What is said about the files before they are written."""
        return self._remark_label.text()

    def _choose(self) -> None:
        chosen = QFileDialog.getExistingDirectory(self, "Folder for the packet", str(self.folder))
        if chosen:
            self.folder_edit.setText(chosen)

    def _look(self) -> None:
        """Say what will be replaced, and let nothing be written where there is nothing to write."""
        names = [name_output(self._job, part) for part in self.parts]
        wanted = self._find_wanted(names)
        self._remark_label.setText(wanted or self._say_written(names))
        self.write_button.setEnabled(not wanted)

    def _find_wanted(self, names: list[str]) -> str:
        """What is to be put right before anything can be written."""
        if not names:
            return "Choose at least one of these."
        return tell_folder(self.folder) if self.folder_edit.text().strip() else "Choose a folder."

    def _say_written(self, names: list[str]) -> str:
        there = [name for name in names if os.path.exists(self.folder / name)]
        if there:
            return f"Replaces what is there: {say_names(there)}"
        made = "" if os.path.exists(self.folder) else "Makes the folder. "
        return f"{made}Writes {say_names(names)}"


def say_names(names: Sequence[str]) -> str:
    """The names of a few files; of many the first, and how many more."""
    few = names if len(names) <= MOST_NAMED else names[: MOST_NAMED - 1]
    more = len(names) - len(few)
    return ", ".join(few) + (f" and {more} more" if more else "")
