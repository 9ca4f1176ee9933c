"""Asks where packet and drawing file go, has them written beside the window, says what became of it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from datetime import date
from functools import partial
from os.path import commonpath
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QUrl
from PySide6.QtGui import QDesktopServices
from PySide6.QtWidgets import QWidget

from app.asking import ask, ask_where
from app.drawing_files import USUAL_VERSION, VERSION_WORDS
from app.files import FileTrouble, save_bytes
from app.notice import Notice
from app.outputs import (
    BUYING,
    DRAWING,
    OFFER,
    PACKET,
    PARTS,
    build_outputs,
    name_output,
    open_second_for,
    write_outputs,
)
from app.packet_dialog import PacketDialog, say_names
from app.photo_carried import carry_photo
from app.progress_line import ProgressLine
from app.session import Session
from app.settings import Settings
from app.work import Work
from export.progress import Step
from model.job import Job

if TYPE_CHECKING:
    from model.cutting.plan import CuttingPlan
    from model.cutting.purchase import Printed
    from model.cutting.stock_list import StockList

DXF_FILTERS = {f"Drawing files, {words} (*.dxf)": version for version, words in VERSION_WORDS.items()}
"""What the drawing file may be, and the version that is written then."""

LEAVE = "Leave without them"


@dataclass(frozen=True, slots=True)
class Written:
    """Files that are there now, and what the buying list among them asks for; None where there is none.
    `lacks` is a sentence that says what one of them goes without.
    """

    paths: tuple[Path, ...]
    printed: tuple[Printed, ...] | None = None
    lacks: str = ""


class Writing(QObject):
    """Writes from the job as it is when it is asked; edits made meanwhile do not get into the files.

    What a buying list asked for is noted in the job once it is written.
    """

    def __init__(
        self,
        window: QWidget,
        session: Session,
        settings: Settings,
        work: Work,
        progress: ProgressLine,
        notice: Notice,
        find_list: Callable[[], StockList],
        find_plan: Callable[[], CuttingPlan | None],
    ) -> None:
        super().__init__(window)
        self._find_list, self._find_plan = find_list, find_plan
        self._window = window
        self._session = session
        self._settings = settings
        self._work = work
        self._progress = progress
        self._notice = notice
        self._asked_by: Job | None = None
        session.replaced.connect(self._forget)
        work.done.connect(self._take_note)
        work.done.connect(self._say_done)
        work.failed.connect(self._say_failed)
        work.stopped.connect(lambda: notice.say("Stopped. Nothing was written."))

    def ask_packet(self, folder: Path) -> None:
        """Ask for paper, parts and folder, then write."""
        if self._refuse_second():
            return
        kept = self._settings.read("packet folder", "")
        start = Path(kept) if isinstance(kept, str) and kept else folder
        dialog = PacketDialog(
            self._window,
            self._session.job,
            start,
            self._paper,
            str(self._settings.read("drawing version", USUAL_VERSION)),
        )
        if dialog.exec():
            self._settings.write("paper", dialog.paper)
            self._settings.write("packet folder", str(dialog.folder))
            self._settings.write("drawing version", dialog.dxf_version)
            self.write_packet(dialog.folder, dialog.paper, dialog.parts, dialog.dxf_version)
        dialog.deleteLater()

    def write_packet(
        self, folder: Path, paper: str, parts: tuple[str, ...] = PARTS, dxf_version: str = USUAL_VERSION
    ) -> None:
        """Write `parts` of the job as it is now into `folder`; the cutting plan is the one that is shown."""
        job, lacks = self._carry_photo() if OFFER in parts else (self._session.job, "")
        source = self._find_source()
        self._begin(partial(_write_packet, job, folder, paper, parts, source, dxf_version, lacks))

    def _carry_photo(self) -> tuple[Job, str]:
        """The job with its photo in it, for paper, and why it has none though it should."""
        path = self._session.path
        return carry_photo(self._session.job, path.parent if path is not None else None)

    def show_print(self) -> None:
        """Show what may be printed as it will be, first the packet on the paper it was last written on."""
        from app.print_choices import list_print_choices
        from app.print_window import PrintWindow

        today, labels = date.today().isoformat(), str(self._settings.read("labels", ""))
        job, lacks = self._carry_photo()
        if lacks:
            self._notice.say(lacks, wrong=True)
        choices = list_print_choices(job, today, self._find_source(), labels)
        shown = PrintWindow(self._window, choices, self._paper)
        shown.exec()
        shown.deleteLater()  # it holds every sheet

    def ask_drawing(self, folder: Path) -> None:
        """Ask for a file, then write the drawing file to it."""
        if self._refuse_second():
            return
        start = folder / name_output(self._session.job, DRAWING)
        kinds = dict.fromkeys(DXF_FILTERS, (".dxf",))
        where = ask_where(self._window, "Write the drawing file", start, kinds)
        if where is not None:
            path, chosen = where
            self.write_drawing(path, DXF_FILTERS.get(chosen, USUAL_VERSION))

    def write_drawing(self, path: Path, dxf_version: str = USUAL_VERSION) -> None:
        """Write the drawing file of the job as it is now to `path`, its sheets on the paper last chosen."""
        job, source = self._session.job, self._find_source()
        self._begin(partial(_write_drawing, job, path, self._paper, source, dxf_version))

    def _find_source(self) -> StockList | CuttingPlan:
        """The cutting plan that is shown, or what one is to be made of."""
        plan = self._find_plan()
        return self._find_list() if plan is None else plan

    @property
    def _paper(self) -> str:
        return str(self._settings.read("paper", "letter"))

    def _begin(self, work: partial[Written]) -> None:
        self._asked_by = self._session.job
        self._notice.put_away()
        self._progress.begin("Working out the boards")
        self._work.start(work)

    def _refuse_second(self) -> bool:
        if self._work.is_busy:
            self._notice.say("Something is still being written. Wait for it, or stop it below the sheet.")
        return self._work.is_busy

    def may_leave(self) -> bool:
        """Whether nothing is being written, or the person gives it up."""
        if not self._work.is_busy:
            return True
        text, detail = "Files are still being written.", "Leaving now writes none of them."
        return ask(self._window, "Still writing", text, detail, LEAVE) == LEAVE or not self._work.is_busy

    def _forget(self) -> None:
        """Another job was opened; what is written of the one before is not noted in it."""
        self._asked_by = None

    def _take_note(self, written: Written) -> None:
        """Note in the job what was printed, so that the next list can say what changed."""
        job = self._session.job
        if self._asked_by is None or written.printed is None or written.printed == job.purchase.printed:
            return
        purchase = replace(job.purchase, printed=written.printed)
        self._session.change("what was printed", replace(job, purchase=purchase))

    def _say_done(self, written: Written) -> None:
        paths = written.paths
        if not paths:
            self._notice.say("Nothing was written: this job has nothing of what was asked for.")
            return
        folder = Path(commonpath(path.parent for path in paths))
        names = say_names(tuple(dict.fromkeys(path.relative_to(folder).parts[0] for path in paths)))
        self._notice.say(
            " ".join(part for part in (written.lacks, f"Written to {folder}: {names}") if part),
            (("Open the folder", partial(_open_folder, folder)),),
            wrong=bool(written.lacks),
        )

    def _say_failed(self, error: object) -> None:
        if isinstance(error, FileTrouble):
            self._notice.say(
                f"{error} The job itself is untouched; choose another folder or make room.", wrong=True
            )
        elif isinstance(error, BaseException):
            raise error


def _write_packet(
    job: Job,
    folder: Path,
    paper: str,
    parts: tuple[str, ...],
    source: StockList | CuttingPlan,
    dxf_version: str,
    lacks: str,
    step: Step,
) -> Written:
    from model.cutting.buying import list_buying
    from model.cutting.frozen import note_printed

    plans: list[CuttingPlan] = []
    today = date.today().isoformat()
    with open_second_for(parts) as second:
        outputs = build_outputs(job, paper, today, parts, step, source, dxf_version, plans.append, second)
    paths = write_outputs(folder, outputs)
    if not (plans and {PACKET, BUYING} & set(parts)):
        return Written(paths, None, lacks)
    return Written(paths, note_printed(job.purchase, list_buying(plans[0])).printed, lacks)


def _write_drawing(
    job: Job, path: Path, paper: str, source: StockList | CuttingPlan, dxf_version: str, step: Step
) -> Written:
    today = date.today().isoformat()
    (output,) = build_outputs(job, paper, today, (DRAWING,), step, source, dxf_version)
    save_bytes(path, output.data)
    return Written((path,))


def _open_folder(folder: Path) -> None:
    QDesktopServices.openUrl(QUrl.fromLocalFile(str(folder)))
