"""The window's own colours and typeface, on a light and on a dark ground. The sheet stays paper on both.

What lines look like on paper is render.pens' business.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from functools import lru_cache
from importlib.resources import files

from PySide6.QtCore import Qt
from PySide6.QtGui import QColor, QFont, QFontDatabase, QGuiApplication, QPalette
from PySide6.QtWidgets import QApplication, QToolTip

from model.check.finding import Status
from render.lettering import FAMILY, TYPEFACES

RHYTHM = 8
"""Pixels; distances in the window are whole or half steps of it."""
ROW_HEIGHT = 28
BAR = 3
"""Width of the bar at the left of what is in focus or wrong."""
TEXT_POINTS = 10.5
SMALL_POINTS = 9.0


class Ground(StrEnum):
    """Which ground the window is shown on."""

    SYSTEM = "system"
    LIGHT = "light"
    DARK = "dark"


@dataclass(frozen=True, slots=True)
class Colours:
    """Colours of the window by what they are for.

    `lit` marks what is in focus, here and on the sheet; `marked` is behind text and lines that are selected.
    """

    desk: str
    panel: str
    entry: str
    ink: str
    soft: str
    faint: str
    rule: str
    lit: str
    lit_ground: str
    marked: str
    wrong: str
    wrong_ground: str
    strong: str
    on_strong: str
    over: str
    unknown: str
    close: str
    within: str


LIGHT = Colours(
    desk="#d5d3ce",
    panel="#f3f1ed",
    entry="#fffefb",
    ink="#242427",
    soft="#545356",
    faint="#6d6c6f",
    rule="#d9d6cf",
    lit="#a8480c",
    lit_ground="#fdeed9",
    marked="#f3cf9b",
    wrong="#9c1c1c",
    wrong_ground="#fbe9e6",
    strong="#2d4a5e",
    on_strong="#ffffff",
    over="#9c1c1c",
    unknown="#5b3f8c",
    close="#8a5a00",
    within="#3c6650",
)
DARK = Colours(
    desk="#232426",
    panel="#2e2f32",
    entry="#26272a",
    ink="#ecebe7",
    soft="#b6b5b2",
    faint="#9a9997",
    rule="#43444a",
    lit="#f0a35c",
    lit_ground="#4a3826",
    marked="#74552f",
    wrong="#ff9a8f",
    wrong_ground="#4a2c2a",
    strong="#9cc0d6",
    on_strong="#1b262d",
    over="#ff9a8f",
    unknown="#c5aef0",
    close="#e8b65c",
    within="#9ccbb0",
)
ON_PAPER = LIGHT
"""What is laid over the sheet keeps the light ground's colours, the sheet being paper."""

_colours = LIGHT


def colours() -> Colours:
    """The colours of the ground in use."""
    return _colours


def status_colour(status: Status, palette: Colours) -> QColor:
    """The colour that goes with a status; never without its shape and its word."""
    named = {
        Status.FAIL: palette.over,
        Status.UNKNOWN: palette.unknown,
        Status.WARN: palette.close,
        Status.PASS: palette.within,
    }
    return QColor(named[status])


def load_typeface() -> None:
    """Make the shipped typeface known to Qt, and nothing else of the machine's. Needs an application."""
    for name in TYPEFACES.values():
        data = files("assets").joinpath("fonts", name).read_bytes()
        if QFontDatabase.addApplicationFontFromData(data) < 0:
            raise RuntimeError(f"the typeface {name} could not be read")


def text_font(points: float = TEXT_POINTS, bold: bool = False) -> QFont:
    """The window's type, upright, in one of two weights."""
    return QFont(_build_font(points, bold))


@lru_cache(maxsize=64)
def _build_font(points: float, bold: bool) -> QFont:
    """Made once of a size and weight, for whoever paints; to be copied, since fonts can be changed."""
    font = QFont(FAMILY)
    font.setPointSizeF(points)
    font.setWeight(QFont.Weight.DemiBold if bold else QFont.Weight.Normal)
    return font


def is_dark(ground: Ground) -> bool:
    """Whether `ground` comes out dark on this machine now."""
    if ground is not Ground.SYSTEM:
        return ground is Ground.DARK
    return QGuiApplication.styleHints().colorScheme() == Qt.ColorScheme.Dark


def dress(app: QApplication, ground: Ground) -> None:
    """Give the whole program its colours and type. No style sheet: one makes the start a third longer."""
    global _colours
    _colours = DARK if is_dark(ground) else LIGHT
    app.setStyle("Fusion")
    app.setFont(text_font())
    app.setPalette(_palette(_colours))
    QToolTip.setPalette(app.palette())


def _palette(c: Colours) -> QPalette:
    palette = QPalette()
    roles = {
        QPalette.ColorRole.Window: c.panel,
        QPalette.ColorRole.Base: c.entry,
        QPalette.ColorRole.AlternateBase: c.panel,
        QPalette.ColorRole.Button: c.panel,
        QPalette.ColorRole.WindowText: c.ink,
        QPalette.ColorRole.Text: c.ink,
        QPalette.ColorRole.ButtonText: c.ink,
        QPalette.ColorRole.ToolTipBase: c.entry,
        QPalette.ColorRole.ToolTipText: c.ink,
        QPalette.ColorRole.PlaceholderText: c.faint,
        QPalette.ColorRole.Highlight: c.marked,
        QPalette.ColorRole.HighlightedText: c.ink,
        QPalette.ColorRole.Accent: c.strong,
        QPalette.ColorRole.Link: c.strong,
        QPalette.ColorRole.Mid: c.rule,
    }
    for role, colour in roles.items():
        palette.setColor(role, QColor(colour))
    for role in (QPalette.ColorRole.WindowText, QPalette.ColorRole.Text, QPalette.ColorRole.ButtonText):
        palette.setColor(QPalette.ColorGroup.Disabled, role, QColor(c.faint))
    return palette
