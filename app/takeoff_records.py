"""What the command line prints of a takeoff: records for scripts, tables in words for people."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from app.records import table_lines
from model.measures import SQUARE_INCHES
from model.surround import Surround
from model.takeoff.cut_list import describe_stock
from model.takeoff.fasteners import count_fixings
from model.takeoff.guide_settings import Setting
from model.takeoff.materials import Material, Rate
from model.takeoff.packages import format_package
from model.takeoff.takeoff import Takeoff
from model.takeoff.weight import Load, centre_of, describe_lift, total_weight
from model.units import LengthStyle
from render.guide_sheet import COLUMNS, describe_pieces, say_saw, setting_texts
from render.materials_sheet import (
    describe_amount,
    describe_basis,
    describe_lengths,
    format_rate,
    list_measured,
    list_weights,
)

PLACES = 4
"""Decimals in records."""


def takeoff_record(surround: Surround, takeoff: Takeoff) -> dict[str, Any]:
    """Everything for a script: inches, square feet, pounds and the materials' own units."""
    style = surround.job.about.length_style
    return {
        "areas": {
            "primed": round(takeoff.surfaces.primed_area / SQUARE_INCHES, PLACES),
            "painted": round(takeoff.surfaces.painted_area / SQUARE_INCHES, PLACES),
            "glued": round(sum(fixing.glue for fixing in takeoff.fixings) / SQUARE_INCHES, PLACES),
            "unit": "sq ft",
        },
        "joints": [
            {"name": name, "length": round(length, PLACES), "unit": "in", "done": done}
            for name, length, done in describe_lengths(takeoff.joints)
        ],
        "fasteners": [
            {"means": str(means), "length": length, "count": count, "showing": shown}
            for means, length, count, shown in count_fixings(takeoff.fixings)
        ],
        "materials": [_material_record(material, style) for material in takeoff.materials],
        "weights": [_load_record(load) for load in takeoff.loads],
        "total": {
            "weight": round(total_weight(takeoff.loads), PLACES),
            "centre": _rounded(centre_of(takeoff.loads)),
            "unit": "lb",
        },
        "saw": {
            "measured": takeoff.saw.measured,
            "shoe_left": takeoff.saw.left.value,
            "shoe_right": takeoff.saw.right.value,
            "kerf": takeoff.saw.kerf.value,
            "settings": [_setting_record(setting) for setting in takeoff.settings],
        },
    }


def _rounded(at: Iterable[float]) -> list[float]:
    return [round(value, PLACES) + 0.0 for value in at]


def _material_record(material: Material, style: LengthStyle) -> dict[str, Any]:
    return {
        "material": material.name,
        "measured_on": describe_basis(material.basis, style),
        "amount": round(material.amount, PLACES),
        "unit": material.unit or material.measure.name,
        "take": format_package(material, style),
        "rates": [_rate_record(rate) for rate in material.rates],
    }


def _rate_record(rate: Rate) -> dict[str, Any]:
    unit = rate.row.measure.name or ("in" if rate.row.kind == "length" else "")
    return {
        "path": rate.row.path,
        "value": rate.value,
        "unit": unit,
        "standing": str(rate.standing),
        "source": rate.source,
    }


def _load_record(load: Load) -> dict[str, Any]:
    return {
        "assembly": load.name,
        "pieces": load.pieces,
        "weight": round(load.weight, PLACES),
        "centre": _rounded(load.centre),
        "lifted": round(load.lifted, PLACES),
        "advised": round(load.advised, PLACES),
        "who": describe_lift(load),
    }


def _setting_record(setting: Setting) -> dict[str, Any]:
    guide = setting.guide
    return {
        "action": str(setting.action),
        "stock": setting.stock.wood,
        "thickness": setting.stock.thickness,
        "kept": setting.size,
        "angle": setting.angle,
        "inward": setting.inward,
        "edges": setting.edges,
        "pieces": dict(setting.pieces),
        "set_off": None if guide is None else round(guide.set_off, PLACES),
        "guide_on": None if guide is None else "piece" if guide.on_piece else "waste",
        "shoe": None if guide is None else guide.shoe,
        "keep": None if guide is None else guide.keep,
        "guide_line": None if guide is None else round(guide.line, PLACES),
    }


def takeoff_lines(surround: Surround, takeoff: Takeoff) -> Iterable[str]:
    """Materials, surfaces and joints, weights, then the saw's settings."""
    style = surround.job.about.length_style
    yield from table_lines(
        ("Material", "Measured on", "Amount", "Take", "Rates"),
        [
            (
                material.name,
                describe_basis(material.basis, style),
                describe_amount(material, style),
                format_package(material, style),
                "; ".join(
                    f"{rate.row.path} {format_rate(rate, style)} [{rate.standing}]" for rate in material.rates
                ),
            )
            for material in takeoff.materials
        ],
    )
    yield ""
    yield from table_lines(("Surfaces and joints", "Amount", "What is done"), list_measured(takeoff, style))
    yield ""
    heading, *rows = list_weights(takeoff.loads, surround.layout.floor, style)
    yield from table_lines(heading, rows)
    yield ""
    yield say_saw(takeoff.saw, style)
    yield from table_lines(*setting_table(takeoff, style))


def setting_table(takeoff: Takeoff, style: LengthStyle) -> tuple[tuple[str, ...], list[tuple[str, ...]]]:
    """Heading and rows of the saw's settings, the pieces last."""
    names = [name for name in COLUMNS if name not in ("Cut", "Pieces")]
    rows = [
        (
            describe_stock(setting.stock, style),
            *setting_texts(setting, takeoff.saw, style),
            describe_pieces(setting),
        )
        for setting in takeoff.settings
    ]
    return ("Stock", *names, "Pieces"), rows
