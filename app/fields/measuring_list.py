"""The column of all fields, group by group. It shows the session's job and asks it for changes.

Only what is in view at first is made before the first drawing is seen; whoever asks for more gets all.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from itertools import pairwise

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QFrame, QHBoxLayout, QScrollArea, QVBoxLayout, QWidget

from app.buttons import quiet_button
from app.fields.choice_row import ChoiceRow
from app.fields.colour_row import ColourRow
from app.fields.derived_row import DerivedRow
from app.fields.group import Group
from app.fields.help_pane import HelpPane
from app.fields.row import Row, say_wanted
from app.fields.tape_row import TapeRow
from app.fields.text_area_row import TextAreaRow
from app.fields.yes_no_row import YesNoRow
from app.hairline import Hairline
from app.pause import build_pause
from app.session import Session
from app.theme import RHYTHM
from app.thin_bar import ThinBar
from model.build.layout import lay_out
from model.build.ledger import Shortfall
from model.build.lines import Layout
from model.derived import Derived, list_derived
from model.errors import Refused
from model.idle import list_idle
from model.job import list_changed, read_value
from model.parameters import TABLE, Kind, Parameter, find_parameter
from model.site import Site
from model.survey import list_governed
from model.units import LengthStyle, format_length
from render.lettering import STAND_IN, missing_letters

AREAS = (
    "job.notes",
    "job.changes",
    "chart.shelf",
    "chart.shelf_hood",
    "chart.legs",
    "local.shelf",
    "local.legs",
    "offer.promised",
    "offer.included",
    "offer.left_out",
    "offer.excluded",
    "offer.allowances",
    "offer.terms",
    "offer.notes",
)
TEXTS = tuple(row.path for row in TABLE if row.kind is Kind.TEXT)
FIRST_PATH = "opening.width"
LAST_GROUP = "Job"
"""What is written about the job comes after what is measured and chosen."""
FOLDED = ("Television", "House", "Rates", "Time", "Offer", "Cutting", "Saw", "Pieces on hand")
"""What is set up once for a shop is folded away at first."""
PICTURED_FROM = 440
"""Pixels of height from which on the list leaves room for pictures."""
FIRST_ROWS = 40
"""As many rows as the tallest list shows without scrolling."""
HINT = "Type what the tape reads, such as 64 1/2, 5' 4-1/2\" or 1638 mm. Arrow keys and wheel step."


def build_row(parameter: Parameter) -> Row:
    """The kind of line that a row of the table is typed, picked or ticked in."""
    if parameter.path in AREAS or parameter.kind is Kind.SECTION:
        return TextAreaRow(parameter)
    if parameter.kind is Kind.CHOICE:
        return ChoiceRow(parameter)
    if parameter.kind is Kind.COLOUR:
        return ColourRow(parameter)
    return YesNoRow(parameter) if parameter.kind is Kind.YES_NO else TapeRow(parameter)


class MeasuringList(QWidget):
    """All rows, and below them the help for the one in focus. `focused` names its path, "" for none."""

    focused = Signal(str)
    refused = Signal(str)
    measuring_asked = Signal()
    typed = Signal()

    def __init__(self, session: Session) -> None:
        super().__init__()
        self._session = session
        self._job = session.job
        self._rows: dict[str, Row] = {}
        self._derived: dict[str, DerivedRow] = {}
        self._groups: dict[str, Group] = {}
        titles = dict.fromkeys(row.group for row in TABLE)
        self.titles = tuple(sorted(titles, key=lambda title: title == LAST_GROUP))
        self._unbuilt = list(self.titles)
        self._layout: Layout | None = None
        self._idle: frozenset[str] = frozenset()
        self._noted: set[str] = set()
        self._refused: set[str] = set()
        self._focus_path = ""
        self._sought: Row | None = None
        self._raised = ""
        self._settling = build_pause(self, 0, self._show_sought)
        self._last_path = FIRST_PATH
        self._scroll = QScrollArea()
        self._scroll.setWidgetResizable(True)
        self._scroll.setFrameShape(QFrame.Shape.NoFrame)
        self._scroll.setVerticalScrollBar(ThinBar(Qt.Orientation.Vertical))
        self._scroll.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self._scroll.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self._column = QVBoxLayout()
        self._scroll.setWidget(self._build_column())
        self.help = HelpPane(HINT)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(0)
        self.measure_button = quiet_button(
            "Measure one by one", "Ask for one measurement after another, with a picture of each (F7)"
        )
        self.measure_button.clicked.connect(lambda _on=False: self.measuring_asked.emit())
        head = QHBoxLayout()
        head.setContentsMargins(RHYTHM - 1, RHYTHM // 2, RHYTHM, 0)
        head.addWidget(self.measure_button)
        head.addStretch(1)
        layout.addLayout(head)
        layout.addWidget(self._scroll, 1)
        layout.addWidget(Hairline())
        layout.addWidget(self.help)
        session.changed.connect(self._show_job)
        session.replaced.connect(self._show_other_job)
        self._show_other_job()

    @property
    def rows(self) -> dict[str, Row]:
        """All rows that are typed, picked or ticked, by path."""
        self.build_rest()
        return self._rows

    @property
    def derived(self) -> dict[str, DerivedRow]:
        """All rows that only show what follows from others, by key."""
        self.build_rest()
        return self._derived

    @property
    def groups(self) -> dict[str, Group]:
        """All groups by title."""
        self.build_rest()
        return self._groups

    def build_rest(self) -> None:
        """Make what is further down, if it is not there yet."""
        if not self._unbuilt:
            return
        there = list(self._rows.values())
        derived = self._list_derived()
        for title in self._unbuilt:
            self._build_group(title, derived)
            self._groups[title].show()  # what joins a window that is shown would else wait for its next turn
        self._unbuilt = []
        _chain(list(self._rows.values())[len(there) - 1 :])
        self._show_rows(list(self._rows)[len(there) :], fresh=True)
        if self._layout is not None:
            self.show_layout(self._layout)

    def _build_column(self) -> QWidget:
        column = QWidget()
        column.setLayout(self._column)
        self._column.setContentsMargins(0, 0, 0, 2 * RHYTHM)
        self._column.setSpacing(0)
        self._column.addStretch(1)
        derived = self._list_derived()
        while self._unbuilt and len(self._rows) < FIRST_ROWS:
            self._build_group(self._unbuilt.pop(0), derived)
        return column

    def _list_derived(self) -> tuple[Derived, ...]:
        job = self._session.job
        return list_derived(lay_out(job.site, job.design, job.shop.rates.moisture), job.design.cord)

    def _build_group(self, title: str, derived: Sequence[Derived]) -> None:
        rows = [self._add_row(row) for row in TABLE if row.group == title]
        rows += [self._add_derived(item) for item in derived if item.group == title]
        self._groups[title] = Group(title, rows, folded=title in FOLDED)
        self._column.insertWidget(len(self._groups) - 1, self._groups[title])

    def _add_row(self, parameter: Parameter) -> Row:
        row = build_row(parameter)
        row.entered.connect(self._enter)
        if isinstance(row, TextAreaRow):
            row.area.textChanged.connect(self.typed)
        row.stepped.connect(self._step)
        row.focused.connect(self._focus)
        row.left.connect(self._leave)
        self._rows[parameter.path] = row
        return row

    def _add_derived(self, derived: Derived) -> Row:
        self._derived[derived.key] = DerivedRow(derived)
        return self._derived[derived.key]

    def show_layout(self, layout: Layout) -> None:
        """Show what follows from the job, and which values could not be built as asked."""
        self._layout = layout
        style = self._session.job.about.length_style
        for item in list_derived(layout, self._session.job.design.cord):
            line = self._derived.get(item.key)
            if line is None:
                continue
            line.setVisible(item.value is not None)
            if item.value is not None:
                line.show_length(item.value, style)
        notes = {path: self._tell_letters(path) for path in TEXTS}
        notes |= _tell_governed(self._session.job.site, style)
        notes |= {short.path: _tell_short(short, style) for short in layout.shortfalls}
        due = {path for path, note in notes.items() if note}
        for path in (due | self._noted) & self._rows.keys():
            self._rows[path].remark(notes.get(path, ""))
        self._noted = due

    def _tell_letters(self, path: str) -> str:
        """Which letters of a text the sheets cannot print, "" where they print them all."""
        missing = missing_letters(str(read_value(self._session.job, path)))
        return f"The sheets' typeface has no {' '.join(missing)}; paper shows {STAND_IN}." if missing else ""

    def minimumSizeHint(self) -> QSize:
        """A few rows and the help, which leaves its pictures away before rows are."""
        return QSize(0, 28 * RHYTHM)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """A low screen has no room for pictures."""
        super().resizeEvent(event)
        self.help.make_room(event.size().height() >= PICTURED_FROM)

    def begin(self) -> None:
        """The cursor in the first measurement, the list at its top: nothing is laid out yet to scroll by."""
        self._rows[FIRST_PATH].take_cursor()
        self._scroll.verticalScrollBar().setValue(0)

    def focus_path(self, path: str) -> None:
        """Put the cursor in the field of `path`, scrolled into view."""
        row = self._rows.get(path) or self.rows.get(path)
        if row is None or row.value_widget is None:
            return
        self.show()
        self._groups[find_parameter(path).group].fold(False)
        self._sought, self._raised = row, ""
        self._show_sought()
        row.take_cursor()
        self._settling.start()  # what was unfolded has its place then

    def _show_sought(self) -> None:
        """Scroll so that what was gone to is in sight, or a group's heading at the top."""
        if self._raised:
            self._scroll.verticalScrollBar().setValue(self.groups[self._raised].y())
        elif self._sought is not None:
            self._scroll.ensureWidgetVisible(self._sought, 0, 6 * RHYTHM)

    def point_at(self, path: str) -> None:
        """Show the field of `path` as the one in focus while it is typed elsewhere; none for an empty one."""
        if self._focus_path and self._focus_path != path:
            self._leave(self._focus_path)
        if path in self.rows:
            self._groups[find_parameter(path).group].fold(False)
            self._focus(path)

    def go_to(self, title: str) -> None:
        """Put the cursor into the first field of a group."""
        rows = [row for row in self.groups[title].rows if row.path in self.rows and not row.isHidden()]
        if rows:
            self.focus_path(rows[0].path)
            self._raised = title
            self._show_sought()

    def fold_group(self) -> None:
        """Fold the group that the cursor is or was in, or open it and put the cursor there again."""
        path = self._last_path
        group = self.groups[find_parameter(path).group]
        group.fold(not group.is_folded)
        self._last_path = path  # the cursor has gone on to what is still shown
        if not group.is_folded:
            self.focus_again()

    def focus_again(self) -> None:
        """Put the cursor where it last was in the list, the first measurement to begin with."""
        self.focus_path(self._last_path)

    def commit_pending(self) -> bool:
        """Enter what is being typed; whether nothing refused stands in the list."""
        settled = [row.commit() for row in self._rows.values()]
        return all(settled)

    def list_typed(self) -> tuple[tuple[str, str], ...]:
        """Paths and texts of areas in which something was typed that is not entered yet."""
        areas = [row for row in self._rows.values() if isinstance(row, TextAreaRow)]
        return tuple((row.path, row.area.toPlainText()) for row in areas if row.area.is_touched)

    def recolour(self) -> None:
        """Take the colours of the ground in use."""
        for row in self._derived.values():
            row.recolour()
        self.update()

    def _show_job(self) -> None:
        """What is not as it was shown, what is being typed, and what was refused; all in another style."""
        before, job = self._job, self._session.job
        self._job = job
        if before.about.length_style != job.about.length_style:
            self._show_rows(self._rows, fresh=False)
        else:
            due = list_changed(before, job) | self._refused | {self._focus_path}
            self._show_rows(due & self._rows.keys(), fresh=False)
            self._refused = {path for path in self._refused if self._rows[path].message}

    def _show_other_job(self) -> None:
        self._job = self._session.job
        self._show_rows(self._rows, fresh=True)
        self.recolour()

    def _show_rows(self, paths: Iterable[str], fresh: bool) -> None:
        """Show these, and of all rows only those that have a say; `fresh` rows may never have been shown."""
        job = self._session.job
        for path in paths:
            self._rows[path].show_job(job, fresh)
        idle = list_idle(job)
        for path in self._rows if fresh else (idle ^ self._idle) & self._rows.keys():
            row = self._rows[path]
            if row.isHidden() is not (path in idle):
                row.setHidden(path in idle)
        self._idle = idle

    def _enter(self, path: str, text: str) -> None:
        self._ask(path, lambda: self._session.set_text(path, text))

    def _step(self, path: str, count: int) -> None:
        self._ask(path, lambda: self._session.step(path, count))

    def _ask(self, path: str, change: Callable[[], None]) -> None:
        row = self.rows[path]
        try:
            change()
        except Refused as refusal:
            row.refuse(say_wanted(refusal))
            self._refused.add(path)
            self.refused.emit(path)
        else:
            row.settle()
            row.show_job(self._session.job, False)

    def _focus(self, path: str) -> None:
        if self._focus_path and self._focus_path != path:
            self._rows[self._focus_path].light(False)
        self._focus_path = self._last_path = path
        self._session.begin_gesture()
        row = self._rows[path]
        row.light(True)
        self._scroll.ensureWidgetVisible(row, 0, 2 * RHYTHM)
        self.help.say(row.help_text)
        self.focused.emit(path)

    def _leave(self, path: str) -> None:
        self.rows[path].light(False)
        if self._focus_path == path:
            self._focus_path = ""
            self.help.say(HINT)
            self.focused.emit("")


def _chain(rows: Sequence[Row]) -> None:
    """Let the tab key go from each row to the next, whatever was made between them."""
    stops = [row.value_widget for row in rows if row.value_widget is not None]
    for before, after in pairwise(stops):
        QWidget.setTabOrder(before, after)


def _tell_governed(site: Site, style: LengthStyle) -> dict[str, str]:
    """For each size that was read again and does not govern, which reading does."""
    return {
        reread.path: f"Read again as {format_length(governing, style)}, which governs."
        for reread, governing in list_governed(site)
    }


def _tell_short(short: Shortfall, style: LengthStyle) -> str:
    return f"Built as {find_parameter(short.path).format(short.built, style)}: {short.reason}."
