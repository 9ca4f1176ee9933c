"""A job's own moulding sections, read from files and saved to them; app.section_file knows what is in one."""

from __future__ import annotations

from datetime import date
from pathlib import Path

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QFileDialog, QWidget

from app.asking import PDF, ask_where
from app.files import FileTrouble, save_bytes
from app.job_files import JobFiles
from app.notice import Notice
from app.session import Session
from app.view_file import PAPER
from model.errors import Refused
from model.job import read_value
from model.moulding.notation import format_section, parse_section
from model.moulding.section import Section
from model.units import INCHES_16, MILLIMETRES_ONLY, LengthStyle, format_length

PATHS = ("own_section.first", "own_section.second", "own_section.third")
KINDS = {"Drawings (*.dxf)": (".dxf",), "Texts (*.txt)": (".txt",)}
OPEN_FILTER = "Drawings and texts (*.dxf *.txt);;All files (*)"


class OwnSections(QObject):
    """Carries out what the menu asks about own section 1, 2 or 3, given as 0, 1 or 2."""

    def __init__(self, window: QWidget, session: Session, files: JobFiles, notice: Notice) -> None:
        super().__init__(window)
        self._window = window
        self._session = session
        self._files = files
        self._notice = notice

    def ask_and_read(self, number: int) -> None:
        """Ask for a drawing or a text and take its section into the job."""
        words = f"Read own section {number + 1}"
        name, _ = QFileDialog.getOpenFileName(self._window, words, str(self._files.folder), OPEN_FILTER)
        if name:
            self.read(number, Path(name))

    def read(self, number: int, path: Path) -> bool:
        """Take the section in the file; says so, and changes nothing when it cannot be read.

        A drawing that does not say its unit is taken to be in the job's.
        """
        from app.section_file import read_section_file

        style = self._session.job.about.length_style
        units = "mm" if style.units == MILLIMETRES_ONLY else "inches"
        try:
            section = read_section_file(path, units)
            self._session.set_text(PATHS[number], format_section(section))
        except (FileTrouble, Refused) as trouble:
            self._notice.say(str(trouble), wrong=True)
            return False
        self._notice.say(_describe(number, section, style))
        return True

    def has(self, number: int) -> bool:
        """Whether that section is written."""
        return bool(read_value(self._session.job, PATHS[number]).strip())

    def ask_and_save(self, number: int) -> None:
        """Ask for a file and save the section, as a drawing or as its text."""
        section = parse_section(read_value(self._session.job, PATHS[number]))
        start = self._files.folder / f"{section.name}.dxf"
        words = f"Save own section {number + 1}"
        where = ask_where(self._window, words, start, KINDS)
        if where is not None:
            self.save(section, where[0])

    def ask_and_write_library(self) -> None:
        """Ask for a file and write the whole library into it, full size."""
        start = self._files.folder / "Moulding library.pdf"
        where = ask_where(self._window, "Write the moulding library", start, PDF)
        if where is not None:
            self.write_library(where[0])

    def write_library(self, path: Path) -> bool:
        """Write the library's sheets; whether they are written."""
        from app.moulding_commands import build_sheets_pdf
        from render.moulding_sheet import list_library

        entries = list_library(INCHES_16)
        try:
            save_bytes(path, build_sheets_pdf(entries, None, PAPER, date.today().isoformat()))
        except FileTrouble as trouble:
            self._notice.say(str(trouble), wrong=True)
            return False
        self._notice.say(f"The moulding library is in {path}.")
        return True

    def save(self, section: Section, path: Path) -> bool:
        """Save `section` as a drawing where the file is one, else as its text; whether it is saved."""
        from app.section_file import DXF_SUFFIX
        from export.section_dxf import write_section_dxf

        is_drawing = path.suffix.lower() == DXF_SUFFIX
        text = write_section_dxf(section) if is_drawing else format_section(section)
        try:
            save_bytes(path, text.encode())
        except FileTrouble as trouble:
            self._notice.say(str(trouble), wrong=True)
            return False
        self._notice.say(f"Saved {section.name} to {path}.")
        return True


def _describe(number: int, section: Section, style: LengthStyle) -> str:
    high, out = (format_length(size, style) for size in (section.height, section.projection))
    return (
        f"{section.name}, {high} high and {out} out, is own section {number + 1} of this job. "
        "Choose it as the section of any moulding."
    )
