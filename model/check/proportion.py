"""A design's proportions beside what published authors advise. Guides only: nothing here fails."""

from __future__ import annotations

from dataclasses import replace
from math import sqrt

from model.check.finding import Guide
from model.reference.proportion import (
    ARCHITRAVE_TO_OPENING_HIGH,
    ARCHITRAVE_TO_OPENING_LOW,
    CARVED_FRIEZE_TO_HEAD,
    CORINTHIAN_DIAMETERS,
    CORINTHIAN_TO_OPENING,
    CORINTHIAN_TO_OPENING_SEEMLY,
    CORNICE_TO_ARCHITRAVE,
    DORIC_OPENING_HEIGHTS,
    DORIC_OPENING_HEIGHTS_SMALL,
    ENTABLATURE_TO_COLUMN,
    FRIEZE_TO_ARCHITRAVE,
    INDOOR_ENTABLATURE_TO_COLUMN,
    IONIC_WIDTHS_TO_ARCHITRAVE,
    ROOT_TO_OPENING,
    SHELF_OVER_FLOOR_HIGH,
    SHELF_OVER_FLOOR_LOW,
    TUSCAN_DIAMETERS,
)
from model.reference.sourced import Sourced
from model.surround import Surround
from model.units import INCHES_PER_FOOT

UPRIGHT = ("column.width", "opening.width")
"""Sizes that are drawn as upright lines."""
Line = tuple[float, float, float, float]


def list_guides(surround: Surround) -> tuple[Guide, ...]:
    """Column, entablature, frieze, cornice and shelf, each beside its author's advice, in inches.

    The order's column is the column up to the frieze; its entablature is frieze and shelf; its cornice
    is shelf and bed mould, its frieze what lies between. The column's face is architrave or pilaster.
    """
    guides = (
        *_list_for_entablature(surround),
        *_list_for_column(surround),
        *_list_for_parts(surround),
        _shelf(surround),
        *_list_for_room(surround),
    )
    return tuple(replace(guide, lines=_place_lines(surround, guide)) for guide in guides)


def _place_lines(surround: Surround, guide: Guide) -> tuple[Line, ...]:
    """Where the advised size would end, measured from where the design's own begins."""
    layout = surround.layout
    reach = max(layout.left.shelf_side, layout.right.shelf_side)
    lines: list[Line] = []
    for size in dict.fromkeys((guide.advised_low, guide.advised_high)):
        if guide.path in UPRIGHT:
            near = 0.0 if guide.path == "opening.width" else layout.right.inner
            out = size / 2 if guide.path == "opening.width" else near + size
            lines += [(turn * out, layout.floor, turn * out, layout.shelf_top) for turn in (-1.0, 1.0)]
        else:
            y = _level(surround, guide, size)
            lines.append((-reach, y, reach, y))
    return tuple(lines)


def _level(surround: Surround, guide: Guide, size: float) -> float:
    """Height over the hearth at which an advised height ends."""
    layout = surround.layout
    match guide.path:
        case "shelf.height":
            return layout.floor + size
        case "opening.height":
            return size
        case "shelf.thickness":
            return layout.shelf_top - size
        case _:
            return layout.frieze_bottom + size


def _guide(name: str, own: float, low: float, high: float, figure: Sourced, path: str) -> Guide:
    return Guide(name, own, min(low, high), max(low, high), "in", figure.standing, figure.source, path)


def _list_for_entablature(surround: Surround) -> tuple[Guide, ...]:
    layout = surround.layout
    column, own = layout.frieze_bottom - layout.right.base, layout.shelf_top - layout.frieze_bottom

    def guide(name: str, share: Sourced) -> Guide:
        return _guide(name, own, share.value * column, share.value * column, share, "frieze.height")

    return (
        guide("Frieze and shelf to column, a quarter", ENTABLATURE_TO_COLUMN),
        guide("Frieze and shelf to column, a fifth indoors", INDOOR_ENTABLATURE_TO_COLUMN),
    )


def _list_for_column(surround: Surround) -> tuple[Guide, ...]:
    layout, opening = surround.layout, surround.job.site.opening
    own, height = layout.right.width, layout.frieze_bottom - layout.right.base

    def guide(name: str, low: float, high: float, figure: Sourced) -> Guide:
        return _guide(name, own, low, high, figure, "column.width")

    return (
        guide(
            "Column width to height, by the orders",
            height / CORINTHIAN_DIAMETERS.value, height / TUSCAN_DIAMETERS.value, TUSCAN_DIAMETERS,
        ),
        guide(
            "Column width to height, an eighth",
            height / IONIC_WIDTHS_TO_ARCHITRAVE.value, height / IONIC_WIDTHS_TO_ARCHITRAVE.value,
            IONIC_WIDTHS_TO_ARCHITRAVE,
        ),
        guide(
            "Column width to opening width, as an architrave",
            opening.width * ARCHITRAVE_TO_OPENING_LOW.value, opening.width * ARCHITRAVE_TO_OPENING_HIGH.value,
            ARCHITRAVE_TO_OPENING_LOW,
        ),
        guide(
            "Column width to opening width, as a pilaster",
            opening.width * CORINTHIAN_TO_OPENING_SEEMLY.value, opening.width * CORINTHIAN_TO_OPENING.value,
            CORINTHIAN_TO_OPENING,
        ),
        guide(
            "Column width to opening height, as a pilaster",
            opening.height / DORIC_OPENING_HEIGHTS_SMALL.value, opening.height / DORIC_OPENING_HEIGHTS.value,
            DORIC_OPENING_HEIGHTS,
        ),
    )  # fmt: skip


def _list_for_parts(surround: Surround) -> tuple[Guide, ...]:
    layout = surround.layout
    module = layout.right.width
    cornice = layout.shelf_top - layout.shelf_bottom + layout.mould_size
    frieze = layout.shelf_bottom - layout.mould_size - layout.frieze_bottom

    def guide(name: str, own: float, share: Sourced, path: str) -> Guide:
        return _guide(name, own, share.value * module, share.value * module, share, path)

    return (
        guide("Frieze to column width, three quarters", frieze, FRIEZE_TO_ARCHITRAVE, "frieze.height"),
        guide(
            "Frieze to column width, five quarters when carved",
            frieze,
            CARVED_FRIEZE_TO_HEAD,
            "frieze.height",
        ),
        guide("Shelf and bed mould to column width", cornice, CORNICE_TO_ARCHITRAVE, "shelf.thickness"),
    )


def _shelf(surround: Surround) -> Guide:
    own = surround.layout.shelf_top - surround.layout.floor
    low, high = SHELF_OVER_FLOOR_LOW, SHELF_OVER_FLOOR_HIGH
    return _guide("Shelf over the floor", own, low.value, high.value, low, "shelf.height")


def _list_for_room(surround: Surround) -> tuple[Guide, ...]:
    """The opening by the size of its room, where that was measured: it is built, and only to look at."""
    room, opening = surround.job.site.room, surround.job.site.opening
    if room.length is None or room.breadth is None:
        return ()
    long, broad, high = (value / INCHES_PER_FOOT for value in (room.length, room.breadth, room.ceiling))
    tall, wide = (
        INCHES_PER_FOOT * ROOT_TO_OPENING.value * sqrt(size) for size in (long + high, long + broad + high)
    )
    return (
        _guide("Opening height by the room", opening.height, tall, tall, ROOT_TO_OPENING, "opening.height"),
        _guide("Opening width by the room", opening.width, wide, wide, ROOT_TO_OPENING, "opening.width"),
    )
