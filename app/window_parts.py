"""Everything that the window consists of besides its sheet, and where it stands.

It is loaded once the sheet has been seen. What passes between the parts is app.window's business.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QSplitter, QWidget

from app.before import Before
from app.beside_writing import BesideWriting
from app.command_menu import CommandMenu
from app.curing import Curing
from app.cutting_beside import CuttingBeside
from app.drafting import Drafting
from app.fields.measuring_list import MeasuringList
from app.held_job import HeldJob
from app.job_files import JobFiles
from app.measuring import Measuring
from app.notice import Notice
from app.optioning import Optioning
from app.own_sections import OwnSections
from app.picturing import Picturing
from app.pricing import Pricing
from app.progress_line import ProgressLine
from app.recovery import Recovery
from app.rooms import LEAST_LIST_WIDTH, MOST_LIST_WIDTH
from app.seen import Seen
from app.session import Session
from app.shaping import Shaping
from app.sheet_field import SheetField
from app.starting import Starting
from app.stock_recovery import StockRecovery
from app.takeoff_beside import TakeoffBeside
from app.tray import Tray
from app.way import Way
from app.work import Loading, Work
from app.writing import Writing

if TYPE_CHECKING:
    from app.window import Window


def build_parts(window: Window) -> None:
    """Give the bare window its parts, those first that others ask. None of them is in its place yet."""
    _build_foundation(window)
    _build_lists(window)
    _build_sheet_parts(window)
    _build_outputs(window)
    window.loading = Loading()


def _build_foundation(window: Window) -> None:
    """The job, what is seen of it, and its file."""
    session = window.session = Session()
    window.fields = MeasuringList(session)
    window.tray = Tray()
    window.notice = Notice()
    window.work = Work()
    window.takeoff = TakeoffBeside()
    window.progress = ProgressLine(window.work)
    window.drafting = Drafting(session, window.canvas, window.wish)
    window.curing = Curing(session, window.drafting, window.tray.cures)
    window.picturing = Picturing(window.drafting, window.fields)
    window.measuring = Measuring(session, window.drafting)
    window.held = HeldJob(window.recovery_folder)
    window.files = files = JobFiles(
        window, session, window.settings, window.notice, window.commit_pending, window.held
    )
    window.recovery = Recovery(
        session,
        window.recovery_folder,
        find_state=lambda: files.state,
        list_typed=window.fields.list_typed,
    )
    window.recovery.setParent(window)  # what is typed in the window goes with it
    window.sections = OwnSections(window, session, window.files, window.notice)


def _build_lists(window: Window) -> None:
    """Cutting plans and options."""
    session, notice, tray = window.session, window.notice, window.tray
    window.cutting = CuttingBeside(window, session, window.settings, notice, tray.plans, tray.buying)
    window.stock_recovery = StockRecovery(window.cutting.stock, window.recovery_folder)
    window.stock_recovery.setParent(window)
    window.options = Optioning(
        window, session, window.drafting, window.cutting, notice, window.commit_pending
    )


def _build_sheet_parts(window: Window) -> None:
    """What is done on the sheet by hand."""
    session, canvas, drafting = window.session, window.canvas, window.drafting
    window.shaping = Shaping(session, canvas, drafting, window.cutting.find_list, window.find_guide)
    window.before = Before(session, canvas, drafting, window.bar.before_button)
    window.sheet_field = SheetField(session, canvas)


def _build_outputs(window: Window) -> None:
    """Price, first design, what the homeowner looks at, and what is written."""
    session, notice, options, cutting = window.session, window.notice, window.options, window.cutting
    window.pricing = Pricing(session, options, window.tray, window.fields.focus_path, cutting.show_stock)
    window.starting = Starting(session, notice)
    window.seen = Seen(window, session, lambda: window.files.folder, options.take_up, notice)
    window.writing = Writing(
        window,
        session,
        window.settings,
        window.work,
        window.progress,
        notice,
        cutting.find_list,
        lambda: cutting.current,
    )
    window.beside = BesideWriting(window, session, window.settings, window.files, notice)


def place_parts(window: Window) -> None:
    """Put the parts where their rooms are kept, and commands into the menus."""
    fields, column = window.fields, window.column
    fields.setMinimumWidth(LEAST_LIST_WIDTH)
    fields.setMaximumWidth(MOST_LIST_WIDTH)
    _put_in_place(window.level, window.list_room, fields)
    column.insertWidget(column.indexOf(window.options_room), window.options.bar)
    window.options_room.hide()
    column.insertWidget(column.indexOf(window.upright), window.notice)
    _put_in_place(window.upright, window.tray_room, window.tray)
    column.addWidget(window.progress)
    column.addWidget(window.starting.progress)
    window.pages.addWidget(window.measuring.page)
    _order_stops(window)
    window.way = Way(window)
    window.menus = CommandMenu(window)


def _put_in_place(parting: QSplitter, room: QWidget, part: QWidget) -> None:
    part.setSizePolicy(room.sizePolicy())  # in which a splitter keeps how much of a change is whose
    parting.replaceWidget(parting.indexOf(room), part)


def _order_stops(window: Window) -> None:
    """The tab key goes through the list before the sheet, although the sheet was there first."""
    for before, part in ((window.fields, window.bar), (window.notice, window.canvas)):
        last = _list_stops(before)[-1]
        for stop in _list_stops(part):
            QWidget.setTabOrder(last, stop)
            last = stop


def _list_stops(part: QWidget) -> list[QWidget]:
    """Where the tab key stops in a part."""
    return [w for w in (part, *part.findChildren(QWidget)) if w.focusPolicy() & Qt.FocusPolicy.TabFocus]
