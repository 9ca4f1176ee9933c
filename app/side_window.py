"""Two or three options side by side: fronts at one scale, counts of findings, prices, what differs."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QSize, Qt
from PySide6.QtGui import QAction, QCloseEvent, QKeySequence, QResizeEvent, QShowEvent
from PySide6.QtWidgets import (
    QComboBox,
    QHBoxLayout,
    QHeaderView,
    QLabel,
    QSizePolicy,
    QTableView,
    QVBoxLayout,
    QWidget,
)

from app.buttons import PlainButton, quiet_button
from app.counts import Counts
from app.dialog_parts import fit_screen
from app.hairline import Hairline, Parting
from app.pause import build_pause
from app.session import Session
from app.side_picture import Painted, SidePicture, lay_out, show_drawings
from app.table_parts import TextModel, dress_table
from app.theme import RHYTHM, SMALL_POINTS, text_font
from app.words import Words
from model.options import alone

if TYPE_CHECKING:
    from app.optioning import Optioning
    from model.differences import Compared
    from model.surround import Surround
    from render.drawing import Drawing

FIRST_SIZE = QSize(1240, 720)
MOST = 3
SOON = 40
"""Milliseconds after an edit until it is shown here too."""
PLACES = ("on the left", "in the middle", "on the right")
WORK_HERE, IN_WORK = "Work on this", "In work"
GO = "Enter or a double click on a setting goes to it in the list."
ALIKE = "These options do not differ in anything."


class Column(QWidget):
    """One option: which, its front, its counts and its price."""

    def __init__(self, where: str) -> None:
        super().__init__()
        self.chooser = QComboBox()
        self.chooser.setAccessibleName(f"Option {where}")
        self.chooser.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.chooser.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
        self.chooser.setMinimumContentsLength(12)
        self.work_button = PlainButton(WORK_HERE, f"Work on the option {where}")
        self.picture = SidePicture(f"Front of the option {where}")
        self.counts = Counts()
        self.price = QLabel()
        self.price.setFont(text_font(bold=True))
        self.price.setAccessibleName(f"Price of the option {where}")
        self.missing = Words()
        self.missing.setFont(text_font(SMALL_POINTS))
        head = QHBoxLayout()
        head.setContentsMargins(RHYTHM, RHYTHM // 2, RHYTHM, RHYTHM // 2)
        head.setSpacing(RHYTHM)
        head.addWidget(self.chooser, 1)
        head.addWidget(self.work_button)
        foot = QHBoxLayout()
        foot.setContentsMargins(2 * RHYTHM, RHYTHM // 2, 2 * RHYTHM, RHYTHM // 2)
        foot.addWidget(self.counts)
        foot.addStretch(1)
        foot.addWidget(self.price)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addLayout(head)
        column.addWidget(self.picture, 1)
        column.addLayout(foot)
        self.missing.setContentsMargins(2 * RHYTHM, 0, 2 * RHYTHM, RHYTHM // 2)
        column.addWidget(self.missing)

    def show_names(self, names: tuple[str, ...], place: int, in_work: bool) -> None:
        """Offer all options, the one at a place chosen."""
        self.chooser.blockSignals(True)
        if [self.chooser.itemText(i) for i in range(self.chooser.count())] != list(names):
            self.chooser.clear()
            self.chooser.addItems(names)
        self.chooser.setCurrentIndex(place)
        self.chooser.setToolTip(names[place])
        self.chooser.blockSignals(False)
        self.work_button.setText(IN_WORK if in_work else WORK_HERE)
        self.work_button.setEnabled(not in_work)
        self.work_button.updateGeometry()


class SideWindow(QWidget):
    """Follows the session: an edit of the one in work is seen here too."""

    def __init__(self, parent: QWidget, session: Session, options: Optioning) -> None:
        super().__init__(parent, Qt.WindowType.Window)
        self._session, self._options = session, options
        self.setWindowTitle("Options side by side")
        self.columns = [Column(where) for where in PLACES]
        self._names: list[str] = []
        self._places: list[int] = []
        self._compared: list[Compared] = []
        self._paths: list[str] = []
        self.painted = Painted()
        self._drawings: tuple[Drawing, ...] = ()
        self.colour_button = quiet_button(
            "In colour", "Show the fronts in their colours, with shades and shadows", checkable=True
        )
        self.third_button = quiet_button("A third", "Look at a third option too", checkable=True)
        self._texts = TextModel(("", "", ""), ())
        self.table = QTableView()
        self.words = QLabel(ALIKE)
        self._showing = build_pause(self, SOON, self.show_options)
        self._laying = build_pause(self, 0, self._lay)
        self._lay_out()
        self._connect()
        fit_screen(self, FIRST_SIZE)

    def _lay_out(self) -> None:
        upper = QWidget()
        self._row = QHBoxLayout(upper)
        self._row.setContentsMargins(0, 0, 0, 0)
        self._row.setSpacing(1)
        for each in self.columns:
            self._row.addWidget(each, 1)
        self.columns[2].hide()
        lower = QWidget()
        column = QVBoxLayout(lower)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        head = QHBoxLayout()
        head.setContentsMargins(2 * RHYTHM, RHYTHM // 2, RHYTHM, RHYTHM // 2)
        title = QLabel("What differs")
        title.setFont(text_font(bold=True))
        head.addWidget(title)
        head.addSpacing(2 * RHYTHM)
        head.addWidget(self.words, 1)
        head.addWidget(self.colour_button)
        head.addWidget(self.third_button)
        column.addWidget(Hairline())
        column.addLayout(head)
        column.addWidget(self.table, 1)
        dress_table(self.table)
        self.table.setAccessibleName("What differs between the options")
        self.table.setAccessibleDescription(GO)
        self.table.setToolTip(GO)
        self.parting = Parting(Qt.Orientation.Vertical, upper, lower)
        self.parting.setStretchFactor(0, 3)
        self.parting.setStretchFactor(1, 2)
        self.parting.setSizes([FIRST_SIZE.height() * 3 // 5, FIRST_SIZE.height() * 2 // 5])
        outer = QVBoxLayout(self)
        outer.setContentsMargins(0, 0, 0, 0)
        outer.addWidget(self.parting)

    def _connect(self) -> None:
        for which, column in enumerate(self.columns):
            column.chooser.activated.connect(lambda place, which=which: self.choose(which, place))
            column.work_button.clicked.connect(lambda _on=False, which=which: self._work_on(which))
            column.picture.resized.connect(self._laying.start)
        self.third_button.toggled.connect(self._show_third)
        self.colour_button.toggled.connect(lambda _on: self._draw())
        self.painted.ready.connect(self._take_painted)
        self.table.activated.connect(lambda index: self.go_to(index.row()))
        self._session.changed.connect(self._follow)
        self._options.priced.connect(self._follow)
        close = QAction(self)
        close.setShortcuts([QKeySequence("Esc"), *QKeySequence.keyBindings(QKeySequence.StandardKey.Close)])
        close.triggered.connect(self.close)
        self.addAction(close)

    @property
    def places(self) -> tuple[int, ...]:
        """Where the options stand that are looked at."""
        return tuple(self._places[: len(self._shown)])

    def choose(self, which: int, place: int) -> None:
        """Look at the option at a place in one of the columns."""
        self._names[which] = self._session.job.options.names[place]
        self.show_options()
        self._options.ask()

    def _work_on(self, which: int) -> None:
        self._options.take_up(self._places[which])

    def _show_third(self, on: bool) -> None:
        self.columns[2].setVisible(on)
        self.show_options()
        self._options.ask()

    def _follow(self) -> None:
        if self.isVisible():
            self._showing.start()

    @property
    def _shown(self) -> list[Column]:
        return self.columns if not self.columns[2].isHidden() else self.columns[:2]

    def _settle_places(self) -> None:
        """Keep to the options that were chosen by name, or else to where they stood."""
        names, first = self._session.job.options.names, self._session.job.options.place
        if self._places:
            self._places = [
                names.index(name) if name in names else min(place, len(names) - 1)
                for name, place in zip(self._names, self._places, strict=True)
            ]
        else:
            usual = [first, *(i for i in range(len(names)) if i != first)]
            self._places = [usual[which % len(usual)] for which in range(MOST)]
        self._names = [names[place] for place in self._places]

    def show_options(self) -> None:
        """Work out what is looked at, and show it."""
        from model.check.all import check_surround
        from model.differences import Compared
        from model.surround import plan_surround

        self._showing.stop()
        job = self._session.job
        if job.options.count == 1:
            self.close()
            return
        self._offer_third()
        self._settle_places()
        self._compared = []
        for column, place in zip(self._shown, self._places, strict=False):
            surround = plan_surround(alone(job, place))
            findings = check_surround(surround)
            self._compared.append(Compared(surround, findings))
            column.show_names(job.options.names, place, place == job.options.place)
            column.counts.show_findings(findings)
        self._draw()
        self._show_differences()

    def _offer_third(self) -> None:
        there = self._session.job.options.count > 2
        self.third_button.setEnabled(there)
        if not there and self.third_button.isChecked():
            self.third_button.setChecked(False)

    def _draw(self) -> None:
        """The lines at once; colours follow where they are wanted."""
        self._drawings = ()
        self._lay()
        if self.colour_button.isChecked():
            self.painted.ask(tuple(each.surround for each in self._compared))
        else:
            self.painted.let_go()

    def _take_painted(self, surrounds: tuple[Surround, ...], drawings: tuple[Drawing, ...]) -> None:
        same = len(surrounds) == len(self._compared) and all(
            one is each.surround for one, each in zip(surrounds, self._compared, strict=True)
        )
        if same and self.colour_button.isChecked():
            self._drawings = drawings
            self._lay()

    def _lay(self) -> None:
        """Fit what is there into the room there is."""
        pictures = [column.picture for column in self._shown]
        if len(self._drawings) == len(pictures):
            show_drawings(pictures, self._drawings)
        elif len(self._compared) == len(pictures):
            lay_out(pictures, self._compared)

    def wait(self) -> None:
        """End what is being painted before the window goes."""
        self._showing.stop()
        self._laying.stop()
        self.painted.wait()
        self.close()

    def _compare(self) -> list[Compared]:
        """What is drawn, with what is known of its price by now."""
        find_estimate, find_price = self._options.find_estimate, self._options.find_price
        return [
            replace(each, estimate=find_estimate(place), price=find_price(place))
            for each, place in zip(self._compared, self._places, strict=False)
        ]

    def _show_differences(self) -> None:
        from model.differences import list_differences, say_price

        compared = self._compare()
        for column, each in zip(self._shown, compared, strict=True):
            column.price.setText(say_price(each.price, compared[0].price))
            missing = each.price.missing if each.price is not None else ()
            column.missing.setText(f"Wanted for a price: {'; '.join(missing)}." if missing else "")
            column.missing.setVisible(bool(missing))
        lines = list_differences(compared)
        self._paths = [line.path for line in lines]
        headings = ("", "Of what", *(column.chooser.currentText() for column in self._shown))
        texts = TextModel(headings, ())
        before = ["", *(str(line.heading) for line in lines)]
        rows = zip(before, lines, strict=False)
        texts.show_texts(
            [
                ("" if line.heading == last else str(line.heading), line.name, *line.texts)
                for last, line in rows
            ]
        )
        row = self.table.currentIndex().row()
        self.table.setModel(texts)
        self._texts = texts  # only now may the one before go
        if 0 <= row < len(lines):
            self.table.setCurrentIndex(self._texts.index(row, 0))
        header = self.table.horizontalHeader()
        self.table.setColumnWidth(0, 12 * RHYTHM)
        self.table.setColumnWidth(1, 36 * RHYTHM)
        for section in range(2, len(headings)):
            header.setSectionResizeMode(section, QHeaderView.ResizeMode.Stretch)
        self.words.setText(f"{len(lines)} lines" if len(lines) > 1 else "" if lines else ALIKE)

    def go_to(self, row: int) -> None:
        """Go to the setting that a line is about, in the measuring list."""
        if 0 <= row < len(self._paths) and self._paths[row]:
            parent = self.parentWidget()
            if parent is not None:
                parent.activateWindow()
            self._options.asked.emit(self._paths[row])

    def showEvent(self, event: QShowEvent) -> None:
        """Up to date whenever it is seen; opened again, the option in work is among those looked at."""
        super().showEvent(event)
        if not event.spontaneous():
            self._look_at_work()
        self.show_options()

    def _look_at_work(self) -> None:
        self._settle_places()
        options = self._session.job.options
        if options.place not in self.places:
            self._places[0], self._names[0] = options.place, options.names[options.place]

    def changeEvent(self, event: QEvent) -> None:
        """Other colours."""
        if event.type() == QEvent.Type.PaletteChange:
            self.table.viewport().update()
        super().changeEvent(event)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Fit the fronts anew."""
        super().resizeEvent(event)
        self._laying.start()

    def closeEvent(self, event: QCloseEvent) -> None:
        """Nothing more is shown here until it is opened again."""
        self._showing.stop()
        self._laying.stop()
        super().closeEvent(event)
