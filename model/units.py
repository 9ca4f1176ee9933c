"""Tape text to inches and back: what people write off a tape, read exactly, and what a label shows.

Bounds and meanings of values belong to model.parameters; nothing here knows what is being measured.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from functools import cache, lru_cache
from math import ceil, floor
from typing import TYPE_CHECKING

from model.errors import Refused

if TYPE_CHECKING:
    from fractions import Fraction

MM_PER_INCH = 25.4
"""Exact by definition: NIST Handbook 44, appendix C (international inch of 1959)."""
INCHES_PER_FOOT = 12
FEET_INCHES, INCHES, MILLIMETRES_ONLY, BOTH = "feet_inches", "inches", "millimetres", "both"


@dataclass(frozen=True, slots=True)
class LengthStyle:
    """How lengths are written: the unit, and for inches the finest fraction (1/`denominator`).

    `units` is "feet_inches" (feet from one foot up), "inches", "millimetres" (whole ones; the
    denominator then has no say) or "both" (inches, then whole millimetres in brackets). Raises
    ValueError for other words, or a denominator no tape has.
    """

    units: str
    denominator: int = 16

    def __post_init__(self) -> None:
        if self.units not in (FEET_INCHES, INCHES, MILLIMETRES_ONLY, BOTH):
            raise ValueError(f"units {self.units!r}: feet_inches, inches, millimetres or both is wanted")
        if self.denominator not in _FRACTIONS:
            raise ValueError(f"denominator {self.denominator!r}: 1, 2, 4, 8, 16, 32 or 64 is wanted")


@cache
def find_style(units: str, denominator: int) -> LengthStyle:
    """The style of these; one of the few that there are, made once. Raises ValueError as LengthStyle does."""
    return LengthStyle(units, denominator)


def _fraction_texts(denominator: int) -> tuple[str, ...]:
    """Each part of an inch as it is written, in lowest terms: ``("", "1/4", "1/2", "3/4")`` for 4."""
    texts = [""]
    for part in range(1, denominator):
        common = part & -part
        texts.append(f"{part // common}/{denominator // common}")
    return tuple(texts)


_FRACTIONS = {2**power: _fraction_texts(2**power) for power in range(7)}
_HALF = 0.5 - 1e-9
"""A half, less what adding up metric readings may lose: 1638.5 mm still counts as a half."""

FEET_INCHES_16 = LengthStyle(FEET_INCHES, 16)
INCHES_16 = LengthStyle(INCHES, 16)
MILLIMETRES = LengthStyle(MILLIMETRES_ONLY)


def format_length(value: float, style: LengthStyle) -> str:
    """`value` inches as text to the nearest step of `style`; halves go away from zero.

    ``4'-4 5/16"``, ``52 5/16"``, ``1329 mm`` or ``52 5/16" [1329]``; less than a foot is written in inches
    only (``3/4"``), nothing is ``0"``. Raises Refused when `value` is not a number.
    """
    if style.units == MILLIMETRES_ONLY:
        return f"{_nearest(value * MM_PER_INCH)} mm"
    if style.units == BOTH:
        shown = format_length(value, find_style(INCHES, style.denominator))
        return f"{shown} [{_nearest(value * MM_PER_INCH)}]"
    steps = _nearest(value * style.denominator)
    sign = "-" if steps < 0 else ""
    inches, part = divmod(abs(steps), style.denominator)
    fraction = _FRACTIONS[style.denominator][part]
    if style.units == FEET_INCHES and inches >= INCHES_PER_FOOT:
        feet, inches = divmod(inches, INCHES_PER_FOOT)
        sign = f"{sign}{feet}'-"
    elif fraction and not inches:
        return f'{sign}{fraction}"'
    return f'{sign}{inches} {fraction}"' if fraction else f'{sign}{inches}"'


def without_feet(style: LengthStyle, finest: int = 1) -> LengthStyle:
    """The style for widths and thicknesses: as `style`, but never in feet, no coarser than 1/`finest`."""
    if style.units == MILLIMETRES_ONLY:
        return style
    return find_style(BOTH if style.units == BOTH else INCHES, max(style.denominator, finest))


def round_length(value: float, style: LengthStyle) -> float:
    """The inches that `format_length` prints for `value`: what a reader of the label would measure."""
    if style.units == MILLIMETRES_ONLY:
        return _nearest(value * MM_PER_INCH) * 10 / 254
    return _nearest(value * style.denominator) / style.denominator


def format_bounds(low: float, high: float, style: LengthStyle) -> tuple[str, str]:
    """The least and the greatest length between `low` and `high` as text: never rounded past either.

    In whole millimetres where `style` is, in inches to the 16th otherwise.

    >>> format_bounds(4.0, 20.0, MILLIMETRES), format_bounds(4.0, 20.0, FEET_INCHES_16)
    (('102 mm', '508 mm'), ('4"', '20"'))
    """
    if style.units != MILLIMETRES_ONLY:
        return format_length(low, INCHES_16), format_length(high, INCHES_16)
    return f"{ceil(low * MM_PER_INCH - 1e-6)} mm", f"{floor(high * MM_PER_INCH + 1e-6)} mm"


def _nearest(steps: float) -> int:
    """The nearest whole number, halves away from zero."""
    try:
        whole = int(steps)
    except (ValueError, OverflowError):
        raise Refused("length", steps, "a finite number of inches is wanted") from None
    over = steps - whole
    if over >= _HALF:
        return whole + 1
    return whole - 1 if over <= -_HALF else whole


LONGEST_TEXT = 60
"""More than any reading or sum needs, in characters."""
_EXAMPLES = {
    False: "write a length such as 36, 36 1/2, 3' 0-1/2\" or 914 mm",
    True: 'write a length such as 914, 91.4 cm, 36 1/2" or 3\' 0-1/2"',
}
"""What is wanted, by whether a bare number is millimetres."""
_DENOMINATORS = (2, 3, 4, 5, 6, 8, 10, 12, 16, 32, 64, 128)
"""Divisions found on tapes and rules, and the thirds to tenths that have a sign of their own."""

_VULGAR = {
    "½": "1/2", "⅓": "1/3", "⅔": "2/3", "¼": "1/4", "¾": "3/4", "⅕": "1/5", "⅖": "2/5", "⅗": "3/5",
    "⅘": "4/5", "⅙": "1/6", "⅚": "5/6", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8", "⅒": "1/10",
}  # fmt: skip
_SPELLINGS = {
    "'": "′’‘‛‵ʹʼ´`＇",
    '"': "″”“„‟‶ʺ˝＂",
    "/": "⁄∕",
    "-": "‐‑‒–—―−",
    "*": "×",
    " ": "\u200b\u200c\u200d\u200e\u200f\u2060\ufeff",
}
_PLAIN = str.maketrans(
    {odd: plain for plain, odds in _SPELLINGS.items() for odd in odds}
    | {sign: f" {text} " for sign, text in _VULGAR.items()}
)
"""Typographic signs as they are typed; signs that cannot be seen part figures, as a space does."""

_NUMBER = r"(?:[0-9]{1,6}(?:\.[0-9]{0,9})?|\.[0-9]{1,9})(?![0-9.])"
_FRACTION = r"[0-9]{1,4} ?/ ?[0-9]{1,4}(?![0-9])"
_FOLLOWED = r"(?= ?(?:[-+]|\Z))"
_INCH_TERM = (
    rf"(?:(?P<feet>{_NUMBER})(?: (?P<feet_part>{_FRACTION}))? ?(?P<foot_mark>'|feet|foot|ft\.?)"
    r"(?P<foot_dash> ?- ?(?=[0-9.])| ?))?"
    rf"(?:(?:(?P<whole>{_NUMBER})(?:(?P<dash> ?- ?| )(?P<part>{_FRACTION}))?|(?P<alone>{_FRACTION}))"
    rf"(?P<mark> ?(?:\"|inches|inch|in\.?))?)?{_FOLLOWED}"
)
_METRIC_TERM = rf"(?P<number>{_NUMBER}) ?(?P<unit>mm|cm|m|(?:milli|centi)?met(?:re|er)s?)\.?{_FOLLOWED}"
_SAID_AGAIN = r" ?\[[0-9]{1,6}\] ?\Z"
_COUNT = r"([1-9][0-9]{0,2}) ?\* ?"
_OPERATOR = r" ?\+ ?| - "
_TENTHS_OF_MM = {"mm": 10, "mi": 10, "cm": 100, "ce": 100, "m": 10_000, "me": 10_000}
"""By a unit's first two letters."""
_TENTHS_OF_MM_PER_INCH = 254


@cache
def _compiled(pattern: str) -> re.Pattern[str]:
    """`pattern` ready for use; compiling takes 5 ms in all, which need not be spent before typing."""
    return re.compile(pattern)


class _Unreadable(Exception):
    """Why a text is no length, for the caller that knows the field's name; may be empty."""


@dataclass(frozen=True, slots=True)
class _Term:
    """One reading in a text, with where it ends.

    `family` is "inch" or "metric", None when bare. A `closed` reading cannot go on, so that a dash
    after it can only take away. `spaced` says that a dash with spaces was read as the tape's own.
    """

    inches: Fraction
    family: str | None
    closed: bool
    spaced: bool
    end: int


def parse_length(text: str, field: str = "length", style: LengthStyle = INCHES_16) -> float:
    """The inches that `text` means; a bare number is inches, or millimetres when `style` is.

    Reads feet and inches, fractions, mm, cm and m as they are written off a tape. A dash between a
    whole number and a fraction is the tape's own: ``64 - 1/2`` is 64 1/2. Reads sums as well: ``+``
    adds, ``*`` after a whole count multiplies the length that follows, and a dash with a space on
    either side takes away where what stands before it is complete (it ends in an inch or metric unit,
    a fraction or decimals). Exact until the result is made a float. What stands in brackets behind the
    inches of a style of both units says the same again and is not read. Raises Refused, naming `field`,
    for everything else, for what could be read two ways and for results below nothing.
    """
    metric = style.units == MILLIMETRES_ONLY
    if style.units == BOTH:
        text = _compiled(_SAID_AGAIN).sub("", text)
    if len(text) > LONGEST_TEXT:
        raise Refused(field, text, _EXAMPLES[metric])
    try:
        return _read_sum(text, metric)
    except _Unreadable as trouble:
        reason = f"{trouble}; " if str(trouble) else ""
        raise Refused(field, text, reason + _EXAMPLES[metric]) from None


@lru_cache(maxsize=1024)
def _read_sum(text: str, metric: bool) -> float:
    """The inches of a text known to be short. Raises _Unreadable."""
    plain = text if text.isascii() else text.translate(_PLAIN)
    plain = " ".join(plain.lower().replace("''", '"').split())
    term, counted = _read_counted(plain, 0, metric)
    total, terms, sums = term.inches, [term], counted
    while term.end < len(plain):
        operator = _compiled(_OPERATOR).match(plain, term.end)
        if operator is None:
            raise _Unreadable(_explain(plain))
        before = term
        term, counted = _read_counted(plain, operator.end(), metric)
        if "-" in operator[0] and not (before.closed or counted):
            raise _Unreadable("where a dash takes away, give what stands before it a unit")
        total += -term.inches if "-" in operator[0] else term.inches
        terms.append(term)
        sums = True
    _check_sum(terms, sums, metric)
    if total < 0:
        raise _Unreadable("a length cannot be less than nothing")
    return float(total)


def _check_sum(terms: list[_Term], sums: bool, metric: bool) -> None:
    """Refuse what a sum leaves open: whose unit a bare number has, and what a spaced dash means."""
    families = {term.family for term in terms}
    if None in families and families - {None, "metric" if metric else "inch"}:
        raise _Unreadable("give each part of the sum its unit")
    if sums and any(term.spaced for term in terms):
        raise _Unreadable('in a sum write 64-1/2 to join and 64" - 1/2" to take away')


def _read_counted(plain: str, at: int, metric: bool) -> tuple[_Term, bool]:
    """The reading at `at`, times the count before it if there is one, and whether there was."""
    count = _compiled(_COUNT).match(plain, at)
    term = _read_term(plain, count.end() if count else at, metric)
    return (replace(term, inches=int(count[1]) * term.inches), True) if count else (term, False)


def _read_term(plain: str, at: int, metric: bool) -> _Term:
    """The reading at `at`. Raises _Unreadable when there is none."""
    from fractions import Fraction  # 4 ms to load: not before something is typed

    found = _compiled(_METRIC_TERM).match(plain, at)
    if found:
        tenths = Fraction(found["number"]) * _TENTHS_OF_MM[found["unit"][:2]]
        return _Term(tenths / _TENTHS_OF_MM_PER_INCH, "metric", True, False, found.end())
    found = _compiled(_INCH_TERM).match(plain, at)
    if found is None or found.end() == at:
        raise _Unreadable(_explain(plain))
    feet, whole, mark = found["feet"], found["whole"], found["mark"]
    part = _part(found["part"] or found["alone"])
    _check_reading(found, part)
    bare = feet is None and mark is None
    if bare and metric and part:
        raise _Unreadable("give a fraction its unit")
    inches = _part(found["feet_part"]) * INCHES_PER_FOOT + part
    inches += Fraction(feet or 0) * INCHES_PER_FOOT + Fraction(whole or 0)
    if bare and metric:
        inches = inches * 10 / _TENTHS_OF_MM_PER_INCH
    dashes = (found["foot_dash"] or "") + (found["dash"] or "")
    return _Term(
        inches,
        None if bare else "inch",
        closed=bool(mark or part or found["feet_part"] or "." in (whole or feet or "")),
        spaced=" " in dashes and "-" in dashes,
        end=found.end(),
    )


def _part(text: str | None) -> Fraction:
    """The part of a unit that a fraction such as ``3/8`` stands for, nothing for none."""
    from fractions import Fraction

    if text is None:
        return Fraction(0)
    above, below = (int(figure) for figure in text.split("/"))
    if not (0 < above < below and below in _DENOMINATORS):
        raise _Unreadable("write a fraction as it stands on a tape, such as 1/2, 3/8 or 15/16")
    return Fraction(above, below)


def _check_reading(found: re.Match[str], part: Fraction) -> None:
    """Refuse feet and inches that no tape shows together."""
    whole = found["whole"] or ""
    if part and "." in whole:
        raise _Unreadable("write a fraction or a decimal point, not both")
    if found["feet"] is None or not (whole or part):
        return
    if "." in found["feet"] or found["feet_part"]:
        raise _Unreadable("before inches write whole feet")
    if whole and float(whole) >= INCHES_PER_FOOT:
        raise _Unreadable("after feet, inches run from 0 up to 12")


_REASONS = (
    (r".*,", "write a point for decimals, not a comma"),
    (r" ?-", "a length cannot be less than nothing"),
    (
        r".*\*\*|.*\*.*\*|.*[0-9]/[0-9]+ ?\*|.*\. ?\*",
        "write a whole count first and then one length, such as 2*3 1/2",
    ),
    (r"(?=.*[0-9] ?['f\"i]).*[0-9] ?[cm]", "write feet and inches or millimetres, not both, unless as a sum"),
    (r".*/.*m", "write metric lengths with a decimal point"),
    (r".*[0-9] [0-9]+ [0-9]|.*/ ?[0-9]+ [0-9]", "write one whole number and one fraction"),
    (r".*[0-9] [0-9]+(?![0-9/]| ?/)", "mark feet and inches, as in 5' 4\""),
    (r".*[-]", "put a space on either side of a dash that takes away"),
)


def _explain(plain: str) -> str:
    """The likeliest slip in a text that cannot be read, empty when none is plain."""
    return next((reason for pattern, reason in _REASONS if re.match(pattern, plain)), "")
