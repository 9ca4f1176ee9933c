"""Saw settings on paper: where the guide of a hand-held circular saw goes for each rip and crosscut.

What the settings are is worked out in model.takeoff.guide_settings; mitre saws are render.saw_sheet's.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from model.measures import INCH, format_measure
from model.sentences import capitalise
from model.takeoff.cut_list import describe_stock, thickness_style
from model.takeoff.guide_settings import GuideSaw, Setting
from model.takeoff.saw_angles import format_degrees
from model.units import INCHES_PER_FOOT, LengthStyle, format_length
from render.tables import (
    FIGURES,
    ROW,
    Cell,
    Row,
    Strip,
    Table,
    opening_strips,
    share_columns,
    table_strips,
)

HOW = (
    "One setting for all equal cuts, in this order. Kept is the finished size with scribe stock on. The "
    "guide lies off the cut line by the set-off, on the piece that is kept or on the waste beside it. Left "
    "and right are seen from behind the saw; keep is the side of the blade on which the piece lies. Guide "
    "line: from the piece's other edge or end to the guide."
)
TAPERED = (
    "Of a tapered rip kept is what is left at its narrow end up to the other edge as ripped: mark both edges "
    "out, from where to where the cut list says, before either is sawn."
)
MEASURE = (
    "The saw is not measured: set-offs marked ~ are a usual saw's. Cut half way into a scrap, mark both "
    "edges of the shoe and both sides of the kerf, measure, and enter shoe and kerf with the job."
)
TILTED = "try on scrap, blade tilted"
COLUMNS = ("Cut", "What", "Kept", "Pieces", "Set-off", "Guide on", "Shoe edge", "Keep", "Guide line")
SHARES = (10, 34, 25, 62, 25, 28, 22, 18, 26)
_FIGURES = {"Kept", "Set-off", "Guide line"}
_BOLD = {"Kept", "Set-off"}


def guide_strips(
    settings: Sequence[Setting], saw: GuideSaw, style: LengthStyle, width: float
) -> tuple[Strip, ...]:
    """The settings for a page `width` wide, stock by stock; nothing where nothing is sawn."""
    if not settings:
        return ()
    columns = share_columns(width, COLUMNS, SHARES, _FIGURES, _BOLD)
    tapered = f" {TAPERED}" if any(setting.inward for setting in settings) else ""
    words = f"{HOW}{tapered} {say_saw(saw, style)}"
    return (
        *opening_strips("Saw settings: circular saw along a guide", words, width),
        *table_strips(Table(columns, tuple(_list_rows(settings, saw, style)), FIGURES, ROW, ruled=True)),
    )


def say_saw(saw: GuideSaw, style: LengthStyle) -> str:
    """What the saw measures, and what to do where it was not measured."""
    left, right = (format_length(rate.value, thickness_style(style)) for rate in (saw.left, saw.right))
    kerf = format_measure(saw.kerf.value, INCH, style)
    sizes = f"{left} of shoe left of the blade, {right} right of it, kerf {kerf}."
    return f"This saw: {sizes}" if saw.measured else f"{MEASURE} A usual saw: {sizes}"


def _list_rows(settings: Sequence[Setting], saw: GuideSaw, style: LengthStyle) -> Iterator[Row]:
    stock = None
    for setting in settings:
        if setting.stock != stock:
            stock = setting.stock
            words = describe_stock(stock, style)
            yield capitalise(words)
        yield _row(setting, saw, style)


def _row(setting: Setting, saw: GuideSaw, style: LengthStyle) -> Row:
    what, kept, *guide = setting_texts(setting, saw, style)
    return (Cell(box=True), Cell(what), Cell(kept), Cell(describe_pieces(setting)), *map(Cell, guide))


def setting_texts(setting: Setting, saw: GuideSaw, style: LengthStyle) -> tuple[str, ...]:
    """What is cut, what is kept, and where the guide lies: COLUMNS without the box and the pieces."""
    angle = f" {format_degrees(setting.angle)}" if setting.angle else ""
    edge = f", {describe_edge(setting, style)}" if setting.inward else ""
    first = (f"{setting.action}{angle}{edge}", format_length(setting.size, style))
    guide, fine = setting.guide, thickness_style(style)
    if guide is None:
        return (*first, "", TILTED, "", "", "")
    about = "" if saw.measured else "~"
    line = format_length(guide.line, style if guide.line > INCHES_PER_FOOT else fine)
    return (
        *first,
        f"{about}{format_length(guide.set_off, fine)}",
        "the piece" if guide.on_piece else "the waste",
        guide.shoe,
        guide.keep,
        f"{about}{line}",
    )


def describe_edge(setting: Setting, style: LengthStyle) -> str:
    """Which edge a tapered rip is, in the cut list's words: ``edge 5/8" out``; nothing for another cut."""
    if not setting.inward:
        return ""
    far = format_length(abs(setting.inward), thickness_style(style))
    edges = "edge" if setting.edges == 1 else "both edges"
    return f"{edges} {far} {'in' if setting.inward > 0 else 'out'}"


def describe_pieces(setting: Setting) -> str:
    """``C1 ×4, C5 ×2``; the count is left out for one."""
    return ", ".join(f"{mark} ×{count}" if count > 1 else mark for mark, count in setting.pieces)
