"""Tables as comma-separated text for spreadsheets. What stands in them is model.takeoff's business."""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Iterable, Iterator, Sequence

from model.takeoff.cut_list import Cut, describe_stock, thickness_style
from model.takeoff.guide_settings import GuideSaw, Setting
from model.takeoff.materials import Material
from model.takeoff.packages import format_package
from model.takeoff.rough import Rough
from model.units import MILLIMETRES_ONLY, MM_PER_INCH, LengthStyle, format_length, round_length
from render.guide_sheet import describe_edge
from render.materials_sheet import describe_basis, format_rate

FORMULA_STARTS = ("=", "+", "-", "@", "\t", "\r", "\n", "\uff1d", "\uff0b", "\uff0d", "\uff20")
"""A spreadsheet may run a text field that begins so: OWASP, "CSV Injection", the wide forms included."""
UNSEEN = " \u00a0\u200b\ufeff"
"""What an importer may take off before it looks at a cell."""
NUMBER = re.compile(r"-?\d+(\.\d+)?")
DECIMALS = 5
"""Places that hold 1/32 in. exactly."""


def write_cut_list_csv(cuts: Sequence[Cut], style: LengthStyle) -> str:
    """The cut list as RFC 4180 text, a heading first, plain ASCII unless a name is not.

    Lengths stand twice: as read off a tape in `style`, and as the same length in decimals, in inches
    or millimetres as the heading says. Text that a spreadsheet would take for a formula is quoted.
    """
    unit = unit_name(style)
    sizes = ("length", "width", "thickness")
    decimals = (f"{size}_{unit}" for size in sizes)
    left_on = (
        f"{what}_{size}_{unit}" for size in sizes[:2] for what in ("rough", "scribe", "trim", "glue_up")
    )
    heading = (
        "mark", "name", "assembly", "quantity", "stock", *sizes, *decimals, "ends", "notes", "pieces",
        f"short_points_{unit}", *left_on, "grain", "hand", "shows",
    )  # fmt: skip
    return write_table(heading, (_row(cut, style) for cut in cuts))


def write_table(heading: Sequence[str], rows: Iterable[Sequence[str | int]]) -> str:
    """RFC 4180 text. No cell can run as a formula: one that begins like it and is no number is quoted."""
    text = io.StringIO(newline="")
    writer = csv.writer(text)
    writer.writerow(heading)
    writer.writerows([plain_text(cell) if isinstance(cell, str) else cell for cell in row] for row in rows)
    return text.getvalue()


def unit_name(style: LengthStyle) -> str:
    """``mm`` or ``in``: what the decimals of `decimal_text` are in, for headings."""
    return "mm" if style.units == MILLIMETRES_ONLY else "in"


def _row(cut: Cut, style: LengthStyle) -> tuple[str | int, ...]:
    sizes = ((cut.length, style), (cut.width, style), (cut.thickness, thickness_style(style)))
    return (
        cut.mark,
        cut.name,
        cut.assembly,
        cut.quantity,
        cut.stock,
        *(format_length(size, its_style) for size, its_style in sizes),
        *(decimal_text(size, its_style) for size, its_style in sizes),
        cut.ends.replace("°", "-degree"),
        cut.notes,
        " ".join(cut.pieces),
        decimal_text(cut.short_length, style),
        *_rough_cells(cut.rough, style),
        cut.grain,
        cut.hand,
        cut.shows,
    )


def _rough_cells(rough: Rough | None, style: LengthStyle) -> Iterator[str]:
    """The rough size and its allowances, first of the length, then of the width."""
    for stretch in (rough.length, rough.width) if rough else (None, None):
        for name in ("rough", "scribe", "trim", "glue_up"):
            yield decimal_text(getattr(stretch, name), thickness_style(style)) if stretch else ""


def write_materials_csv(materials: Sequence[Material], style: LengthStyle) -> str:
    """The materials as RFC 4180 text: how much, what to take, and the rates with their sources."""
    heading = ("material", "measured_on", "amount", "unit", "take", "rates", "sources")
    return write_table(heading, (_material_row(material, style) for material in materials))


def _material_row(material: Material, style: LengthStyle) -> tuple[str, ...]:
    rates = "; ".join(f"{rate.row.path} {format_rate(rate, style)}" for rate in material.rates)
    sources = "; ".join(f"{rate.row.path}: {rate.source} [{rate.standing}]" for rate in material.rates)
    return (
        material.name,
        describe_basis(material.basis, style),
        figure_text(material.amount * material.measure.scale(style)),
        material.unit or material.measure.named(style),
        format_package(material, style),
        rates,
        sources,
    )


def write_settings_csv(settings: Sequence[Setting], saw: GuideSaw, style: LengthStyle) -> str:
    """The saw settings as RFC 4180 text; no set-off where the blade is tilted and it is not known."""
    unit = unit_name(style)
    heading = (
        "stock", "cut", "edge", "angle_degrees", "kept", f"kept_{unit}", "pieces", f"set_off_{unit}",
        "guide_on", "shoe_edge", "keep", f"guide_line_{unit}", "saw_measured",
    )  # fmt: skip
    return write_table(heading, (_setting_row(setting, saw, style) for setting in settings))


def _setting_row(setting: Setting, saw: GuideSaw, style: LengthStyle) -> tuple[str, ...]:
    guide, fine = setting.guide, thickness_style(style)
    lies = ("", "", "", "", "")
    if guide is not None:
        on = "piece" if guide.on_piece else "waste"
        lies = (decimal_text(guide.set_off, fine), on, guide.shoe, guide.keep, decimal_text(guide.line, fine))
    return (
        describe_stock(setting.stock, style),
        str(setting.action),
        describe_edge(setting, style),
        f"{setting.angle:g}",
        format_length(setting.size, style),
        decimal_text(setting.size, style),
        " ".join(f"{mark}x{count}" for mark, count in setting.pieces),
        *lies,
        "yes" if saw.measured else "no",
    )


def plain_text(text: str) -> str:
    """`text` so that a spreadsheet shows it and never runs it; a number stays one."""
    starts = text.startswith(FORMULA_STARTS) or text.lstrip(UNSEEN).startswith(FORMULA_STARTS)
    is_risky = starts and not NUMBER.fullmatch(text)
    return f"'{text}" if is_risky else text


def decimal_text(length: float, style: LengthStyle) -> str:
    """`length` inches as `style` would print it, in decimals: of a millimetre where that is its only unit."""
    unit = MM_PER_INCH if style.units == MILLIMETRES_ONLY else 1.0
    return figure_text(round_length(length, style) * unit)


def figure_text(value: float) -> str:
    """A number in as few decimals as hold it to DECIMALS places."""
    return f"{value:.{DECIMALS}f}".rstrip("0").rstrip(".")
