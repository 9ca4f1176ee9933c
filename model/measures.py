"""Areas, volumes, weights and rates as people write them; lengths are model.units' business.

Inside the program they are inch-pound values in the unit that their row or line names.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from model.errors import Refused
from model.units import INCHES_PER_FOOT, MILLIMETRES_ONLY, MM_PER_INCH, LengthStyle

LITRES_PER_GALLON = 3.785411784
SQUARE_METRES_PER_SQUARE_FOOT = 0.09290304
METRES_PER_FOOT = 0.3048
KILOGRAMS_PER_POUND = 0.45359237
"""Exact by definition: NIST Handbook 44, appendix C."""
SQUARE_INCHES, CUBIC_INCHES = float(INCHES_PER_FOOT**2), float(INCHES_PER_FOOT**3)
"""In a square foot, and in a cubic foot."""
PLACES = 4
"""Significant figures of a rate in a field: finer than any of them is known."""
_NUMBER = re.compile(r"(?P<number>[0-9]{1,7}(?:[.,][0-9]{0,9})?|[.,][0-9]{1,9}) ?(?P<unit>\D.*)?")
_SPELLINGS = {"²": "2", "ft2": "sq ft", "ft^2": "sq ft", "sqft": "sq ft", "m^2": "m2", " per ": "/"}


@dataclass(frozen=True, slots=True)
class Measure:
    """A unit, what a job in millimetres writes in its place, and how many of those make one of it.

    With `decimals` it is always written with so many, whatever its size.
    """

    name: str
    metric: str
    factor: float
    decimals: int | None = None

    def named(self, style: LengthStyle) -> str:
        """What a job in `style` calls the unit; a bare number has none."""
        return self.metric if style.units == MILLIMETRES_ONLY else self.name

    def scale(self, style: LengthStyle) -> float:
        """What a value is multiplied by to be shown in `style`."""
        return self.factor if style.units == MILLIMETRES_ONLY else 1.0


BARE = Measure("", "", 1.0)
MONEY = Measure("", "", 1.0, decimals=2)
"""Of whatever currency: a stock list names it."""
PERCENT = Measure("%", "%", 1.0)
SQ_FT = Measure("sq ft", "m²", SQUARE_METRES_PER_SQUARE_FOOT)
COVERAGE = Measure("sq ft/gal", "m²/L", SQUARE_METRES_PER_SQUARE_FOOT / LITRES_PER_GALLON)
GALLON = Measure("gal", "L", LITRES_PER_GALLON)
FLUID_OUNCE = Measure("fl oz", "mL", LITRES_PER_GALLON * 1000 / 128)
POUND = Measure("lb", "kg", KILOGRAMS_PER_POUND)
FOOT = Measure("ft", "m", METRES_PER_FOOT)
POUND_PER_FOOT = Measure("lb/ft", "kg/m", KILOGRAMS_PER_POUND / METRES_PER_FOOT)
MIL = Measure("mil", "µm", MM_PER_INCH)
INCH = Measure("in", "mm", MM_PER_INCH)
HOUR = Measure("h", "h", 1.0)
HOUR_PER_FOOT = Measure("h/ft", "h/m", 1 / METRES_PER_FOOT)


def format_measure(value: float, measure: Measure, style: LengthStyle, places: int = 3) -> str:
    """`value` with its unit to so many significant figures, whole numbers never rounded.

    >>> from model.units import INCHES_16, MILLIMETRES
    >>> format_measure(12.345, SQ_FT, INCHES_16), format_measure(250, COVERAGE, MILLIMETRES)
    ('12.3 sq ft', '6.14 m²/L')
    >>> format_measure(2345.6, SQ_FT, INCHES_16)
    '2346 sq ft'
    """
    shown = value * measure.scale(style)
    number = f"{shown:.0f}" if abs(shown) >= 10 ** (places - 1) else f"{shown:.{places}g}"
    if measure.decimals is not None:
        number = f"{shown:.{measure.decimals}f}"
    elif "e" in number:
        number = f"{shown:.6f}".rstrip("0").rstrip(".")
    return f"{number} {measure.named(style)}".rstrip()


def parse_measure(text: str, field: str, measure: Measure, style: LengthStyle) -> float:
    """The value that `text` means; a bare number has the style's unit. Raises Refused.

    >>> from model.units import INCHES_16
    >>> parse_measure("250 sq ft/gal", "coverage", COVERAGE, INCHES_16)
    250.0
    """
    found = _NUMBER.fullmatch(" ".join(text.split()))
    unit = _plain(found["unit"] or "") if found else ""
    scales = {_plain(measure.metric): measure.factor, _plain(measure.name): 1.0}
    scales[""] = measure.scale(style)
    if found is None or unit not in scales:
        raise Refused(field, text, f"write a number, such as {_example(measure, style)}")
    return float(found["number"].replace(",", ".")) / scales[unit]


def _plain(unit: str) -> str:
    plain = unit.strip().lower().replace("μ", "µ")
    for written, meant in _SPELLINGS.items():
        plain = plain.replace(written, meant)
    return plain


def _example(measure: Measure, style: LengthStyle) -> str:
    return f"2.5 {measure.named(style)}".rstrip()
