"""Rows of buttons that leave some away where there is no room for them; each of those is in a menu too."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtWidgets import QBoxLayout, QHBoxLayout, QWidget

NARROW = 560
"""Pixels below which a sentence stands over its buttons instead of beside them."""


def whole_width(row: QHBoxLayout, spared: Sequence[QWidget]) -> int:
    """Width that the row wants with all of `spared` shown, whichever of them are shown now."""
    return row.sizeHint().width() + sum(_width(row, widget) for widget in spared if widget.isHidden())


def least_width(row: QHBoxLayout, spared: Sequence[QWidget]) -> int:
    """Width that the row wants with none of `spared` shown."""
    return whole_width(row, spared) - sum(_width(row, widget) for widget in spared)


def spare(row: QHBoxLayout, spared: Sequence[QWidget], width: int) -> None:
    """Show as many of `spared` as there is room for in `width`; the first of them goes first."""
    wanted = whole_width(row, spared)
    for widget in spared:
        widget.setVisible(wanted <= width)
        if wanted > width:
            wanted -= _width(row, widget)


def _width(row: QHBoxLayout, widget: QWidget) -> int:
    return widget.sizeHint().width() + row.spacing()


def break_line(text: QWidget, above: QBoxLayout, beside: QBoxLayout, place: int, narrow: bool) -> None:
    """Give a sentence a line of its own over its buttons where it is narrow, else its `place` beside them."""
    wanted, other = (above, beside) if narrow else (beside, above)
    if wanted.indexOf(text) < 0:
        other.removeWidget(text)
        wanted.insertWidget(0 if narrow else place, text, 1)
