"""Whole packages that an amount is bought in. What they cost and where is not decided here."""

from __future__ import annotations

from math import ceil

from model.measures import FLUID_OUNCE, FOOT, GALLON, POUND, Measure
from model.takeoff.materials import Material
from model.units import MILLIMETRES_ONLY, LengthStyle

QUARTS, MOST_QUARTS = 4, 3
"""Quarts to the gallon; above so many quarts a gallon is taken."""
BOTTLES = (4, 8, 16, 32, 64, 128)
"""Fluid ounces of bottles and tubs. Common practice."""
METRIC_BOTTLES = (100, 250, 500, 1000, 2500, 5000)
"""Millilitres of the same. Common practice."""
METRIC_CANS = (0.75, 1.0, 2.5, 5.0, 10.0)
"""Litres of paint in a can. Common practice."""


def format_package(material: Material, style: LengthStyle) -> str:
    """What to take: ``2 cartridges``, ``1 qt``, ``8 fl oz``; counts and weights rounded up."""
    shown = material.amount * material.measure.scale(style)
    return _format(material.measure, shown, material.unit, style.units == MILLIMETRES_ONLY)


def _format(measure: Measure, shown: float, unit: str, metric: bool) -> str:
    if measure is GALLON:
        return _cans(shown) if metric else _quarts(shown)
    if measure is FLUID_OUNCE:
        size = _next(METRIC_BOTTLES if metric else BOTTLES, shown)
        return f"{size:g} {'mL' if metric else 'fl oz'}"
    if measure is POUND:
        return f"{_up(shown * 4) / 4:g} {'kg' if metric else 'lb'}"
    if measure is FOOT:
        return f"{_up(shown)} {'m' if metric else 'ft'}"
    count = _up(shown)
    return f"{count} {unit}{'s' if count > 1 else ''}".strip()


def _quarts(gallons: float) -> str:
    quarts = _up(gallons * QUARTS)
    return f"{quarts} qt" if quarts <= MOST_QUARTS else f"{_up(gallons)} gal"


def _cans(litres: float) -> str:
    return f"{_next(METRIC_CANS, litres):g} L"


def _next(sizes: tuple[float, ...], amount: float) -> float:
    """The smallest size that holds the amount, or as many of the largest as hold it."""
    fitting = [size for size in sizes if size >= amount - 1e-9]
    return fitting[0] if fitting else _up(amount / sizes[-1]) * sizes[-1]


def _up(amount: float) -> int:
    return ceil(amount - 1e-9)
