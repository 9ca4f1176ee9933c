"""Tables as comma-separated text for spreadsheets. What stands in them is model.takeoff's business."""

from __future__ import annotations

import csv
import io
from collections.abc import Sequence

from model.takeoff.cut_list import Cut, thickness_style
from model.units import MILLIMETRES_ONLY, MM_PER_INCH, LengthStyle, format_length, round_length

FORMULA_STARTS = ("=", "+", "-", "@", "\t", "\r")
"""A spreadsheet may run a text field that begins so."""
DECIMALS = 5
"""Places that hold 1/32 in. exactly."""


def write_cut_list_csv(cuts: Sequence[Cut], style: LengthStyle) -> str:
    """The cut list as RFC 4180 text, a heading first, plain ASCII unless a name is not.

    Lengths stand twice: as read off a tape in `style`, and as the same length in decimals, in inches
    or millimetres as the heading says. Text that a spreadsheet would take for a formula is quoted.
    """
    unit = "mm" if style.units == MILLIMETRES_ONLY else "in"
    text = io.StringIO(newline="")
    writer = csv.writer(text)
    sizes = ("length", "width", "thickness")
    decimals = (f"{size}_{unit}" for size in sizes)
    writer.writerow(
        ("mark", "name", "assembly", "quantity", "stock", *sizes, *decimals, "ends", "notes", "pieces")
    )
    writer.writerows(_row(cut, style) for cut in cuts)
    return text.getvalue()


def _row(cut: Cut, style: LengthStyle) -> tuple[str | int, ...]:
    sizes = ((cut.length, style), (cut.width, style), (cut.thickness, thickness_style(style)))
    return (
        _plain(cut.mark),
        _plain(cut.name),
        _plain(cut.assembly),
        cut.quantity,
        _plain(cut.stock),
        *(_plain(format_length(size, its_style)) for size, its_style in sizes),
        *(_decimal(size, its_style) for size, its_style in sizes),
        _plain(cut.ends.replace("°", "-degree")),
        _plain(cut.notes),
        _plain(" ".join(cut.pieces)),
    )


def _plain(text: str) -> str:
    """`text` so that a spreadsheet shows it and never runs it."""
    return f"'{text}" if text.startswith(FORMULA_STARTS) else text


def _decimal(length: float, style: LengthStyle) -> str:
    unit = MM_PER_INCH if style.units == MILLIMETRES_ONLY else 1.0
    return f"{round_length(length, style) * unit:.{DECIMALS}f}".rstrip("0").rstrip(".")
