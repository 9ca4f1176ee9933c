"""The window: the measuring list, the sheet and the tray, and what passes between them.

It is seen before it is whole: see `Window`. What it consists of besides the sheet is put together in
app.window_parts.
"""

from __future__ import annotations

import gc
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QSize, Qt, QTimer
from PySide6.QtGui import QCloseEvent, QResizeEvent
from PySide6.QtWidgets import QApplication, QMainWindow, QStackedWidget, QVBoxLayout, QWidget

from app.canvas import ZOOM_STEP, Canvas
from app.hairline import Parting
from app.lettering import COARSEST_RATIO, FINEST_RATIO, FIRST_RATIO
from app.rooms import (
    BUYING,
    CUTS,
    FINDINGS,
    LEAST_SHEET,
    LIST_WIDTH,
    MATERIALS,
    OPEN_HEIGHT,
    OPTIONS_HEIGHT,
    PLANNED,
    PLANS,
    PROPORTIONS,
    ROOMY,
    TITLES,
    ListRoom,
    TrayRoom,
)
from app.settings import Settings
from app.shown import ELEVATIONS
from app.theme import Ground, dress
from app.view_bar import CHOICES, ViewBar
from app.working import Wish

if TYPE_CHECKING:
    from app.ahead import Ahead
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
    from app.recovery import LeftBehind, Recovery
    from app.seen import Seen
    from app.session import Session
    from app.shaping import Shaping
    from app.sheet_field import SheetField
    from app.starting import Starting
    from app.stock_recovery import LeftList, StockRecovery
    from app.takeoff_beside import TakeoffBeside
    from app.tray import Tray
    from app.way import Way
    from app.work import Loading, Work
    from app.writing import Writing
    from model.check.finding import Finding
    from model.takeoff.takeoff import Takeoff
    from render.drawing import Segment

FIRST_SIZE = QSize(1366, 768)
PRODUCT = "Mantelwright"
UNMEASURED = "A new job: every size stands at a usual value until it is measured."
MENUS = ("&Job", "&Edit", "&Sheet", "&Options", "&Lists", "&Help")
LITTER = 20_000
"""New objects left over before it is looked for what of them may go: more than one edit makes."""
LOW = 440
"""Pixels of height below which there is room for the sheet or for the tray's lists, but not for both: as on a
laptop of 1366 by 768 dots at twice its size."""


class Window(QMainWindow):
    """One job in one window. `begin` draws it.

    While it is `bare` there are the sheet, the row above it, the titles of the menus and, empty, the rooms
    of everything else, each as large as it will be. `finish` builds what belongs there.
    """

    session: Session
    fields: MeasuringList
    tray: Tray
    notice: Notice
    work: Work
    takeoff: TakeoffBeside
    progress: ProgressLine
    drafting: Drafting
    curing: Curing
    picturing: Picturing
    measuring: Measuring
    recovery: Recovery
    held: HeldJob
    files: JobFiles
    sections: OwnSections
    cutting: CuttingBeside
    stock_recovery: StockRecovery
    options: Optioning
    shaping: Shaping
    before: Before
    sheet_field: SheetField
    pricing: Pricing
    starting: Starting
    seen: Seen
    writing: Writing
    beside: BesideWriting
    loading: Loading
    way: Way
    menus: CommandMenu

    def __init__(self, settings: Settings, recovery_folder: Path, bare: bool = False) -> None:
        super().__init__()
        self.settings = settings
        self.recovery_folder = recovery_folder
        self.is_bare = True
        self._read_last: tuple[str, str, str] | None = None
        self.setWindowTitle(PRODUCT)
        self.canvas = Canvas()
        self.bar = ViewBar()
        self.menu_titles = {title: self.menuBar().addMenu(title) for title in MENUS}
        self.resize(FIRST_SIZE.boundedTo(self.screen().availableSize()))
        self.restoreGeometry(settings.read_bytes("window"))
        self.wish = self._read_wish()
        self.bar.show_choice(self.wish.views)
        self._lay_out()
        self._restore_partings()
        self._share_height()
        if not bare:
            self.finish()

    def _read_wish(self) -> Wish:
        """What the sheet showed last, and the ratio it was lettered for."""
        views, ratio = self.settings.read("views", []), self.settings.read("ratio", FIRST_RATIO)
        known = [choice for _, choice in CHOICES if list(choice) == views]
        can_be = isinstance(ratio, float) and FINEST_RATIO <= ratio <= COARSEST_RATIO
        return Wish(known[0] if known else ELEVATIONS, ratio if can_be else FIRST_RATIO, clearance=False)

    def _lay_out(self) -> None:
        """The rooms, with nothing but the sheet in them."""
        sheet = QWidget()
        self.column = column = QVBoxLayout(sheet)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.bar)
        self.options_room = QWidget()
        self.options_room.setFixedHeight(OPTIONS_HEIGHT)
        self.options_room.hide()
        column.addWidget(self.options_room)
        self.tray_room = TrayRoom(bool(self.settings.read("folded", self.height() < LOW)))
        self.upright = Parting(Qt.Orientation.Vertical, self.canvas, self.tray_room)
        self.upright.setStretchFactor(0, 4)
        self.upright.setStretchFactor(1, 1)
        self.upright.setSizes([FIRST_SIZE.height() - OPEN_HEIGHT, OPEN_HEIGHT])
        column.addWidget(self.upright, 1)
        self.list_room = ListRoom()
        self.list_room.setHidden(bool(self.settings.read("list_folded", False)))
        self.level = Parting(Qt.Orientation.Horizontal, self.list_room, sheet)
        self.level.setStretchFactor(1, 1)
        self.level.setSizes([LIST_WIDTH, FIRST_SIZE.width() - LIST_WIDTH])
        self.canvas.setMinimumSize(LEAST_SHEET)
        self.pages = QStackedWidget()
        self.pages.addWidget(self.level)
        self.setCentralWidget(self.pages)
        self.list_room.setFocus(Qt.FocusReason.OtherFocusReason)

    def _restore_partings(self) -> None:
        self.upright.restoreState(self.settings.read_bytes("upright"))
        self.level.restoreState(self.settings.read_bytes("level"))

    def finish(self) -> None:
        """Build everything but the sheet and put it where its room was kept; nothing once that is done."""
        if not self.is_bare:
            return
        from app.window_parts import build_parts, place_parts

        is_folded, list_is_folded = self.tray_room.is_folded, self.list_room.isHidden()
        build_parts(self)
        place_parts(self)
        self.is_bare = False
        self._connect()
        self._show_state()
        page = self.settings.read("page", FINDINGS)
        if page in range(len(TITLES)) and page != FINDINGS:
            self.tray.turn_to(page)
        self._restore_partings()
        self.tray.fold(is_folded)
        self.fold_list(list_is_folded)
        self.fields.begin()

    def _connect(self) -> None:
        self.session.state_changed.connect(self._show_state)
        self.session.replaced.connect(self._forget_focus)
        self.fields.focused.connect(self.canvas.light_path)
        self.canvas.dimension_clicked.connect(self.sheet_field.open)
        self.shaping.typed.connect(self.sheet_field.open)
        self.sheet_field.opened.connect(self.fields.point_at)
        self.canvas.view_clicked.connect(self._pick_board)
        self.bar.views_chosen.connect(self.choose_views)
        self.bar.clearance_toggled.connect(self.drafting.show_clearance)
        self.bar.marks_toggled.connect(self.drafting.show_marks)
        self.bar.zoomed.connect(self.zoom)
        self.bar.packet_asked.connect(self.write_packet)
        self.drafting.laid_out.connect(self._show_plan)
        self.drafting.checked.connect(self._show_findings)
        self.drafting.listed.connect(self._show_lists)
        self.tray.findings.chosen.connect(self._show_finding)
        self.tray.findings.asked.connect(self.fields.focus_path)
        self.tray.cures.explained.connect(self.explain)
        self.tray.guides.chosen.connect(self._rule_guides)
        self.tray.cuts.chosen.connect(self._show_boards)
        self.tray.turned.connect(self._make_room)
        self.tray.turned.connect(lambda _page: self._forget_focus())
        self.tray.buying.chosen.connect(self._show_boards)
        self.tray.plans.chosen.connect(self._show_piece)
        self.tray.turned.connect(lambda _page: self._ask_slow_lists())
        self.tray.folded.connect(lambda _folded: self._ask_slow_lists())
        self.tray.folded.connect(lambda _folded: self._share_height())
        self.session.changed.connect(self.cutting.mark_outdated)
        self.cutting.list_settled.connect(self._ask_slow_lists)
        self.options.asked.connect(self.fields.focus_path)
        self.takeoff.ready.connect(self._show_materials)
        self.loading.finished.connect(self._take_over)
        self.recovery.refused.connect(self._say_unkept)
        self.fields.typed.connect(self.recovery.keep_soon)
        self.stock_recovery.refused.connect(self._say_unkept)
        self.measuring.shown.connect(self._turn_page)
        self.measuring.design_asked.connect(lambda: self.start_from_fireplace("usual"))
        self.fields.measuring_asked.connect(self.measure)

    def begin(self, ahead: Ahead | None = None) -> None:
        """Draw the job, and offer what an ended program left behind. `ahead` draws until all is loaded."""
        self.drafting.start(ahead)
        if ahead is None:
            self.fields.build_rest()
            self._settle()
        elif self.canvas.isVisible():
            self.canvas.painted.connect(self._load_rest, Qt.ConnectionType.SingleShotConnection)
        else:
            self._load_rest()
        QTimer.singleShot(0, self.offer_left_behind)

    def _load_rest(self) -> None:
        """What nobody sees yet."""
        self.loading.start()
        self.fields.build_rest()

    def _take_over(self) -> None:
        """All is loaded."""
        self.drafting.take_over()
        self._settle()

    def _settle(self) -> None:
        """What is there by now stays; looking through it again for what may go would hold up edits."""
        gc.freeze()
        gc.set_threshold(LITTER)
        gc.enable()

    def offer_left_behind(self) -> None:
        """Ask about unsaved work that was left behind, one after the other, the latest first."""
        from app.recovery import list_left_behind
        from app.stock_recovery import list_left_lists

        unread: list[str] = []
        found = list_left_behind(self.recovery_folder, unread.append)
        lists = list_left_lists(self.recovery_folder, unread.append)
        for said in unread:
            self.notice.offer(said, wrong=True)
        if not (found or lists):
            return
        from app.telling_kept import tell_kept, tell_kept_list

        for work in found:
            choices = ("Open it", partial(self._take_up, work)), ("Throw it away", work.discard)
            self.notice.offer(tell_kept(work), choices)
        for left in lists:
            choices = ("Open it", partial(self._take_up_list, left)), ("Throw it away", left.discard)
            self.notice.offer(tell_kept_list(left), choices)

    def _take_up(self, work: LeftBehind) -> None:
        """What was left behind is thrown away once this window keeps the same; else it is offered again."""
        if self.files.take_up(work):
            self.recovery.keep()
            if self.recovery.kept_in is not None:
                work.discard()

    def _take_up_list(self, left: LeftList) -> None:
        """As `_take_up`; the list is shown in its window."""
        if self.cutting.stock.take_up(left):
            self.stock_recovery.keep()
            if self.stock_recovery.kept_in is not None:
                left.discard()
            self.cutting.show_stock()

    def keep_unsaved(self) -> None:
        """Keep all that is unsaved at once: the program may be about to end."""
        try:
            self.recovery.keep()
        finally:
            self.stock_recovery.keep()

    def _say_unkept(self, cause: str) -> None:
        """Say that a crash would cost what is not saved."""
        text = f"No copy of unsaved work can be kept in {self.recovery_folder}: {cause}. Save often."
        self.notice.offer(text, wrong=True)

    def choose_views(self, views: tuple[str, ...]) -> None:
        """Put other views on the sheet."""
        self.bar.show_choice(views)
        self.drafting.choose_views(views)

    def fold_list(self, folded: bool) -> None:
        """Leave the whole width to the sheet, or show the measuring list beside it."""
        self.fields.setHidden(folded)

    def read_list(self, page: int) -> None:
        """Turn the tray to a list and put the keyboard there."""
        self.tray.turn_to(page)
        self.tray.shown_list.setFocus(Qt.FocusReason.ShortcutFocusReason)

    def zoom(self, way: int) -> None:
        """Closer (1), further (-1) or the whole sheet (0)."""
        if way == 0:
            self.canvas.fit()
        else:
            self.canvas.zoom_by(ZOOM_STEP**way)

    def commit_pending(self) -> bool:
        """Enter what is being typed, wherever it is; whether nothing of it was refused."""
        self.shaping.take()
        taken = self.sheet_field.commit(), self.fields.commit_pending(), self.measuring.commit()
        return all(taken)

    def begin_job(self) -> None:
        """A new job, and the offer to measure for it."""
        before = self.session.revision
        self.files.new()
        if self.session.revision != before:
            self.notice.say(UNMEASURED, (("Measure one by one", self.measure),))

    def measure(self) -> None:
        """Ask for one measurement after another."""
        self.commit_pending()
        self.measuring.begin()

    def _turn_page(self, measuring: bool) -> None:
        """The measuring mode has the whole window."""
        self.pages.setCurrentIndex(1 if measuring else 0)
        if not measuring:
            self.take_cursor()

    def take_cursor(self) -> None:
        """Put the keyboard into the measuring list, or onto the sheet while the list is folded away."""
        if self.fields.isHidden():
            self.canvas.setFocus(Qt.FocusReason.OtherFocusReason)
        else:
            self.fields.focus_again()

    def explain(self) -> None:
        """Open the page that explains the finding in focus."""
        finding = self.tray.findings.current()
        if finding is not None and self.drafting.surround is not None:
            from app.explained_window import explain_in_window

            explained = explain_in_window(self, self.drafting.surround, finding)
            self.session.changed.connect(explained.say_outdated)

    def start_from_fireplace(self, guide: str) -> None:
        """Size a first design from the measurements alone."""
        self.commit_pending()
        self.starting.begin(guide)

    def find_guide(self) -> str:
        """The proportion that is ruled over the front."""
        return self.tray.guides.current_name() if self.tray.is_shown(PROPORTIONS) else ""

    def write_packet(self) -> None:
        """Ask what to write, and write it beside the work."""
        self.commit_pending()
        self.writing.ask_packet(self.files.folder)

    def show_print(self) -> None:
        """Show the packet as it will be printed, with what is being typed entered first."""
        self.commit_pending()
        self.writing.show_print()

    def write_drawing(self) -> None:
        """Ask for a file, and write the drawing file to it beside the work."""
        self.commit_pending()
        self.writing.ask_drawing(self.files.folder)

    def undo(self) -> None:
        """One step back; what is being typed is entered first and is that step."""
        self.commit_pending()
        self.session.undo()

    def redo(self) -> None:
        """One step forth."""
        self.session.redo()

    def choose_ground(self, ground: Ground) -> None:
        """Show everything on a light or a dark ground."""
        self.settings.write("ground", ground.value)
        app = QApplication.instance()
        assert isinstance(app, QApplication)
        dress(app, ground)
        self.fields.recolour()

    def _show_state(self) -> None:
        title, is_unsaved = f"{self.session.name}[*] – {PRODUCT}", self.session.is_unsaved
        if title != self.windowTitle():
            self.setWindowTitle(title)
        if is_unsaved is not self.isWindowModified():
            self.setWindowModified(is_unsaved)  # Qt tells every widget, even where nothing changes

    def _show_plan(self) -> None:
        """What follows from an edit: title and derived values."""
        if self.drafting.layout is not None:
            self._show_state()
            self.fields.show_layout(self.drafting.layout)

    def _show_findings(self) -> None:
        style = self.session.job.about.length_style
        self.tray.counts.show_findings(self.drafting.findings)
        self.tray.make_room()
        self.tray.findings.show_findings(self.drafting.findings, style)

    def _show_lists(self) -> None:
        style = self.session.job.about.length_style
        self.tray.guides.show_guides(self.drafting.guides, style)
        self.tray.cuts.show_cuts(self.drafting.cuts, style)
        self._ask_slow_lists()

    def _make_room(self, page: int) -> None:
        """A plan or a price is no use in a slit: turned to, it gets two fifths of the height."""
        if page in ROOMY:
            self._raise_tray(self.height())

    def _raise_tray(self, wanted: int) -> None:
        """Make the tray as high as is wanted where it is lower, but no more than two fifths of the height."""
        sheet, tray = self.upright.sizes()
        least = min(wanted, (sheet + tray) * 2 // 5)
        if tray < least and not self.tray.is_folded:
            self.upright.setSizes([sheet + tray - least, least])

    def resizeEvent(self, event: QResizeEvent) -> None:
        """A low window shows the sheet or the tray's lists."""
        super().resizeEvent(event)
        self._share_height()

    def _share_height(self) -> None:
        """On a low screen the tray covers the sheet while it is open."""
        tray = self.tray_room if self.is_bare else self.tray
        self.canvas.setHidden(self.height() < LOW and not tray.is_folded)

    def _ask_slow_lists(self) -> None:
        """Only while they are read: taking materials off and planning take a while."""
        if any(self.tray.is_shown(page) for page in PLANNED) and self.drafting.surround is not None:
            self.cutting.ask()
        if self.tray.is_shown(MATERIALS) and self.drafting.surround is not None:
            self.takeoff.ask(self.drafting.surround)

    def _show_materials(self, takeoff: Takeoff) -> None:
        self.tray.materials.show_materials(takeoff.materials, self.session.job.about.length_style)

    def _show_finding(self, finding: Finding | None) -> None:
        """Mark where the finding in focus is; its boards are outlined too. Another one is read whole."""
        self.curing.follow(finding)
        which = (finding.check, finding.rule, finding.part) if finding is not None else None
        if which not in (None, self._read_last):
            self._raise_tray(self.tray.height_in_focus())
        self._read_last = which
        points = self.drafting.place_finding(finding) if finding is not None else ()
        self.canvas.show_finding(finding, points)
        self.canvas.show_outlines(self.drafting.outline_boards(frozenset(finding.boards if finding else ())))

    def _rule_guides(self, lines: tuple[Segment, ...]) -> None:
        """The guide in focus lies over the front while its list is read."""
        self.canvas.show_guides(lines if self.tray.is_shown(PROPORTIONS) else ())

    def _show_boards(self, marks: frozenset[str]) -> None:
        self.canvas.show_finding(None)
        self.canvas.show_outlines(self.drafting.outline_boards(marks))

    def _show_piece(self, marks: frozenset[str]) -> None:
        """A piece picked on a cutting plan is outlined on the sheet, and in focus in the cut list."""
        self.tray.cuts.focus_mark(self.tray.plans.sheet.mark)
        self._show_boards(marks)  # last: its line of the cut list has all its like in focus

    def _forget_focus(self) -> None:
        """Nothing on the sheet is pointed at but what the list now shown has in focus."""
        self._rule_guides(self.tray.guides.current_lines())
        if self.tray.page == FINDINGS:
            self._show_finding(self.tray.findings.current())
        else:
            in_focus = {
                CUTS: self.tray.cuts.current_pieces,
                BUYING: self.tray.buying.marks,
                PLANS: self.tray.plans.marks,
            }
            self._show_boards(in_focus.get(self.tray.page, frozenset)())

    def _pick_board(self, view: str, point: tuple[float, float]) -> None:
        """A click on wood turns to its line of the cut list; a click beside it lets go."""
        mark = self.drafting.find_board(view, point)
        if not mark:
            self.canvas.setFocus(Qt.FocusReason.MouseFocusReason)
            self._show_boards(frozenset())
            return
        self.drafting.list_rest()
        if self.tray.is_shown(PLANS):
            self.tray.plans.sheet.focus_mark(mark)
            self._show_boards(frozenset({mark}))
            return
        self.tray.turn_to(CUTS)
        self.tray.cuts.focus_mark(mark)

    def wind_up(self) -> None:
        """End everything that runs beside the window, and let go of the job's file."""
        self.held.let_go()
        self.work.wait()
        self.takeoff.wait()
        self.curing.wait()
        self.picturing.wind_up()
        self.starting.wait()
        self.seen.wait()
        self.options.wait()
        self.cutting.wait()
        self.loading.wait()
        self.drafting.wind_up()

    def closeEvent(self, event: QCloseEvent) -> None:
        """Nothing unsaved is lost without being asked about; a bare window is about to be whole."""
        event.ignore()  # until all that follows is done: should any of it fail, the window stays
        may_go = not self.is_bare and self.writing.may_leave()
        if not (may_go and self.files.may_leave() and self.cutting.may_leave()):
            return
        self.wind_up()
        self.recovery.forget()
        self.stock_recovery.forget()
        self.settings.write_bytes("window", self.saveGeometry())
        self.settings.write_bytes("upright", self.upright.saveState())
        self.settings.write_bytes("level", self.level.saveState())
        self.settings.write("folded", self.tray.is_folded)
        self.settings.write("list_folded", self.fields.isHidden())
        self.settings.write("page", self.tray.page)
        self.settings.write("views", list(self.drafting.views))
        self.settings.write("ratio", self.drafting.ratio)
        event.accept()
