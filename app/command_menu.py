"""The window's menus filled with its commands."""

from __future__ import annotations

from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtGui import QAction, QKeySequence
from PySide6.QtWidgets import QMenu

from app.demo import list_demos
from app.menus import add_choice, add_command, add_steps, fill_recent
from app.own_sections import PATHS
from app.rooms import TITLES
from app.theme import Ground
from app.view_bar import CHOICES
from model.parameters import UNITS

if TYPE_CHECKING:
    from app.window import Window

Key = QKeySequence.StandardKey
LIST_KEYS = ("Ctrl+5", "Ctrl+6", "Ctrl+7", "Ctrl+8", "Ctrl+B", "Ctrl+L", "Ctrl+R")
STOCK_LISTS = {"usual": "Usual sizes, without prices", "example": "Example, all its prices invented"}
"""The shipped lists by name."""
GROUNDS = {
    Ground.SYSTEM.value: "As the system has it",
    Ground.LIGHT.value: "Light",
    Ground.DARK.value: "Dark",
}
EXAMPLES = {
    "brick": "A wide living-room brick front",
    "bedroom": "A small bedroom hearth",
    "gas": "A gas unit with its manual's chart",
    "too-close": "One that breaks its rules",
}
STARTS = {
    "usual": "At usual heights",
    "orders": "By the orders, a quarter (Vignola)",
    "indoors": "By the orders indoors, a fifth",
    "le_muet": "By Le Muet's architrave",
    "serlio": "By Serlio's pilaster",
}
"""Proportion guides of a first design, by the word for each."""


class CommandMenu:
    """Builds the menus once; what changes in them is brought up to date when they open."""

    def __init__(self, window: Window) -> None:
        self._window = window
        self._add_job_menu()
        self._add_edit_menu()
        self._add_sheet_menu()
        window.options.add_menu(self._menu("&Options"))
        self._add_list_menu()
        self._add_help_menu()

    def _menu(self, title: str) -> QMenu:
        return self._window.menu_titles[title]

    def _add_job_menu(self) -> None:
        window, files = self._window, self._window.files
        menu = self._menu("&Job")
        add_command(menu, "&New", window.begin_job, Key.New)
        examples = menu.addMenu("New from an &example")
        for name in list_demos():
            add_command(examples, EXAMPLES.get(name, name), partial(files.open_example, name))
        starts = menu.addMenu("Start from this &fireplace")
        for key, words in STARTS.items():
            add_command(starts, words, partial(window.start_from_fireplace, key))
        add_command(menu, "&Open…", files.ask_and_open, Key.Open)
        self.recent = menu.addMenu("Open &recent")
        menu.aboutToShow.connect(self._fill_recent)
        self._fill_recent()
        menu.addSeparator()
        add_command(menu, "&Save", files.save, Key.Save)
        add_command(menu, "Save &as…", files.save_as, Key.SaveAs)
        menu.addSeparator()
        add_command(menu, "&Print…", window.show_print, Key.Print)
        add_command(menu, "&Write the packet…", window.write_packet, "Ctrl+Shift+P")
        add_command(menu, "Write the &drawing file…", window.write_drawing, "Ctrl+Shift+D")
        add_command(menu, "Write &labels…", window.beside.ask_labels)
        add_command(menu, "Write a blan&k measuring sheet…", window.beside.ask_measuring)
        menu.addSeparator()
        self._add_own_sections(menu.addMenu("&Moulding sections"))
        menu.addSeparator()
        add_command(menu, "&Quit", window.close, (Key.Quit, Key.Close, "Ctrl+Q"))

    def _add_own_sections(self, menu: QMenu) -> None:
        sections = self._window.sections
        for number in range(len(PATHS)):
            add_command(menu, f"Read own section {number + 1}…", partial(sections.ask_and_read, number))
        menu.addSeparator()
        saves = [
            add_command(menu, f"Save own section {number + 1}…", partial(sections.ask_and_save, number))
            for number in range(len(PATHS))
        ]
        menu.aboutToShow.connect(partial(self._offer_saves, saves))
        menu.addSeparator()
        add_command(menu, "Write the library, full size…", sections.ask_and_write_library)

    def _offer_saves(self, saves: list[QAction]) -> None:
        for number, action in enumerate(saves):
            action.setEnabled(self._window.sections.has(number))

    def _fill_recent(self) -> None:
        window = self._window
        fill_recent(
            self.recent, window.settings.list_recent(), window.files.open, window.settings.clear_recent
        )

    def _add_edit_menu(self) -> None:
        window = self._window
        menu = self._menu("&Edit")
        add_steps(menu, window.session.stack, window.undo, window.redo)
        menu.addSeparator()
        add_command(menu, "&Measure one by one", window.measure, "F7")
        add_command(
            menu,
            "Fold the measuring &list, or open it",
            lambda: window.fold_list(not window.fields.isHidden()),
            "F8",
        )
        places = menu.addMenu("&Go to")
        for title in window.fields.titles:
            add_command(places, title, partial(window.fields.go_to, title))
        add_command(menu, "Fold the group &in focus, or open it", window.fields.fold_group, "F9")
        units = menu.addMenu("&Units")
        self.units = add_choice(units, UNITS, lambda key: window.session.set_value("job.units", key))
        menu.aboutToShow.connect(self._tick_units)

    def _tick_units(self) -> None:
        self.units[self._window.session.job.about.units].setChecked(True)

    def _add_sheet_menu(self) -> None:
        window = self._window
        menu = self._menu("&Sheet")
        for i, (words, views) in enumerate(CHOICES, start=1):
            add_command(menu, words, partial(window.choose_views, views), f"Ctrl+{i}")
        menu.addSeparator()
        add_command(menu, "Keep-out", window.bar.clearance_button.toggle, "Ctrl+K")
        add_command(menu, "Marks", window.bar.marks_button.toggle, "Ctrl+M")
        menu.addSeparator()
        add_command(menu, "&Closer", lambda: window.zoom(1), (Key.ZoomIn, "Ctrl+="))
        add_command(menu, "&Further", lambda: window.zoom(-1), Key.ZoomOut)
        add_command(menu, "Fi&t", lambda: window.zoom(0), "Ctrl+0")
        menu.addSeparator()
        add_command(menu, "Take hold of an &edge", window.shaping.pick, "Ctrl+T")
        add_command(menu, "Picture for the &homeowner", window.seen.show_picture, (Key.FullScreen, "F11"))
        add_command(menu, "On your own &wall…", window.seen.show_wall, "Ctrl+Shift+W")
        add_command(menu, "From a picture you &like…", window.seen.show_likeness)
        menu.addSeparator()
        ground = menu.addMenu("Light or da&rk")
        grounds = add_choice(ground, GROUNDS, lambda key: window.choose_ground(Ground(key)))
        kept = str(window.settings.read("ground", Ground.SYSTEM.value))
        grounds.get(kept, grounds[Ground.SYSTEM.value]).setChecked(True)

    def _add_list_menu(self) -> None:
        window = self._window
        menu = self._menu("&Lists")
        for page, (title, keys) in enumerate(zip(TITLES, LIST_KEYS, strict=True)):
            add_command(menu, title, partial(window.read_list, page), keys)
        add_command(menu, "Explain the finding in focus…", window.explain, "Ctrl+E")
        add_command(
            menu,
            "Fold the lists, or open them",
            lambda: window.tray.fold(not window.tray.is_folded),
            "Ctrl+9",
        )
        menu.addSeparator()
        stock = menu.addMenu("&Stock list")
        add_command(stock, "Show and change it…", window.cutting.show_stock, "Ctrl+Shift+L")
        stock.addSeparator()
        self.stock_lists = add_choice(stock, STOCK_LISTS, window.cutting.use_list)
        self.own_list = QAction("", stock, checkable=True, enabled=False)
        self.own_list.setActionGroup(next(iter(self.stock_lists.values())).actionGroup())
        stock.addAction(self.own_list)
        stock.aboutToShow.connect(self._tick_stock_list)
        stock.addSeparator()
        add_command(stock, "Open…", window.cutting.stock.ask_and_use)
        add_command(stock, "Save a copy…", window.cutting.stock.ask_and_save_copy)
        self._add_purchase(menu.addMenu("&Purchase"))
        menu.addSeparator()
        add_command(menu, "Next pane", self._go_on, "F6")

    def _tick_stock_list(self) -> None:
        """The list in use is ticked; one of the person's own has a line while it is."""
        cutting = self._window.cutting
        own = cutting.list_name not in self.stock_lists
        self.own_list.setVisible(own)
        self.own_list.setText(cutting.stock.title if own else "")
        (self.own_list if own else self.stock_lists[cutting.list_name]).setChecked(True)

    def _add_purchase(self, menu: QMenu) -> None:
        """What is noted of the plan that is shown; a line that cannot be chosen says why."""
        cutting = self._window.cutting
        for command in (cutting.bought.keep, cutting.bought.release, cutting.bought.cut):
            menu.addAction(command)
        menu.addSeparator()
        menu.addAction(cutting.enough)

    def _go_on(self) -> None:
        """Put the keyboard into the next of measuring list, sheet and tray."""
        window = self._window
        if window.fields.isAncestorOf(window.focusWidget() or window):
            window.canvas.setFocus(Qt.FocusReason.ShortcutFocusReason)
        elif window.canvas.hasFocus() and not window.tray.is_folded:
            window.tray.shown_list.setFocus(Qt.FocusReason.ShortcutFocusReason)
        else:
            window.take_cursor()

    def _add_help_menu(self) -> None:
        menu = self._menu("&Help")
        add_command(menu, "A short &way through the window", self._window.way.begin)
        add_command(menu, "&About Mantelwright", self._show_about, Key.HelpContents)

    def _show_about(self) -> None:
        from app.about import show_about

        show_about(self._window)
