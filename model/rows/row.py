"""What a row of the table is, what it may hold, and how it reads and writes that.

Which rows there are stands in site, design, look, shop, time and offer beside this.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from itertools import pairwise
from typing import cast

from model.errors import Refused
from model.measures import BARE, PLACES, Measure, format_measure, parse_measure
from model.moulding.notation import parse_section
from model.reference.sourced import Sourced
from model.rows.names import NAMES
from model.sentences import end_sentence
from model.units import INCHES_16, LengthStyle, format_bounds, format_length, parse_length

Pairs = tuple[tuple[float, float], ...]
Readings = tuple[float, ...]
Value = float | int | str | bool | Pairs | tuple[float, ...] | None


class Kind(StrEnum):
    """What sort of value a row holds."""

    LENGTH = "length"
    COUNT = "count"
    CHOICE = "choice"
    YES_NO = "yes or no"
    TEXT = "text"
    PAIRS = "pairs of lengths"
    READINGS = "readings of one length"
    SECTION = "moulding section"
    NUMBER = "number"
    COLOUR = "colour"


COLOUR = re.compile("#[0-9a-f]{6}")
"""A colour of one's own: red, green and blue as two hexadecimal digits each."""
LONGEST_TEXT = 4000
NOTHING = "nothing"
"""What a choice is called that had to be left out."""
MOST_PAIRS = 40
MOST_READINGS = 12
MINUS = ("-", "\N{MINUS SIGN}")
LEAST = 1e-6
"""What is nearer to nothing than this, inches or a number's own unit, is nothing: no solid is so thin."""
YES = ("yes", "true", "on", "1")
NO = ("no", "false", "off", "0")


@dataclass(frozen=True, slots=True)
class Parameter:
    """One row. Lengths in inches. `choices` maps the stored word to the words shown.

    `group` is the heading it stands under; `optional` lengths may be `None` (not measured);
    a colour is one of its choices, whose `swatches` show it, or #rrggbb.
    `linked` rows are another handle on stored values and are not stored themselves. A number is stored in
    `measure`; `sourced` is where the default comes from, for figures of the trade.
    """

    path: str
    label: str
    group: str
    kind: Kind
    default: Value
    help: str
    lowest: float | None = None
    highest: float | None = None
    step: float = 0.125
    choices: Mapping[str, str] | None = None
    optional: bool = False
    linked: bool = False
    measure: Measure = BARE
    sourced: Sourced | None = None
    swatches: Mapping[str, str] | None = None

    @property
    def about(self) -> str:
        """The help, and for a figure of the trade where its default comes from."""
        if self.sourced is None:
            return self.help
        return f"{self.help} {self.sourced.standing.capitalize()}: {end_sentence(self.sourced.source)}"

    @property
    def name(self) -> str:
        """What messages call it: ``opening width``, never just ``width``."""
        group, label = self.group.lower(), self.label.lower()
        return NAMES.get(self.path) or f"{group.removesuffix('s')} {label}"

    @property
    def may_be_empty(self) -> bool:
        """Whether nothing may be entered."""
        return self.optional or self.kind is Kind.READINGS

    def parse(self, text: str, style: LengthStyle = INCHES_16) -> Value:
        """The value that `text` means, within bounds; a bare number has the style's unit. Raises Refused."""
        match self.kind:
            case Kind.LENGTH:
                if self.optional and not text.strip():
                    return None
                value: Value = self._parse_signed(text, style)
            case Kind.NUMBER:
                if self.optional and not text.strip():
                    return None
                try:
                    value = parse_measure(text, self.name, self.measure, style)
                except Refused as refusal:
                    raise Refused(self.name, text, self._wanted(style)) from refusal
            case Kind.COUNT:
                stripped = text.strip()
                if not (stripped.isascii() and stripped.isdigit() and len(stripped) < 6):
                    raise Refused(self.name, text, self._wanted(style))
                value = int(stripped)
            case Kind.CHOICE:
                value = self._parse_choice(text)
            case Kind.COLOUR:
                value = self._parse_colour(text)
            case Kind.YES_NO:
                word = text.strip().lower()
                if word not in YES + NO:
                    raise Refused(self.name, text, "write yes or no")
                value = word in YES
            case Kind.TEXT:
                value = text
            case Kind.SECTION:
                value = text if text.strip() else ""
            case Kind.PAIRS:
                value = self._parse_pairs(text, style)
            case Kind.READINGS:
                parts = [part for part in text.replace(";", ",").split(",") if part.strip()]
                value = tuple([parse_length(part, self.name, style) for part in parts])
        return self.check(value, text, style)

    def check(self, value: object, read: object = None, style: LengthStyle = INCHES_16) -> Value:
        """`value` itself when the row may hold it; raises Refused otherwise. A crumb of a length is nothing.

        `read` is what to quote; bounds are told in millimetres where `style` is, in inches otherwise.
        """
        read = value if read is None else read
        match self.kind:
            case Kind.LENGTH:
                if value is None and self.optional:
                    return None
                if isinstance(value, bool) or not isinstance(value, int | float):
                    raise Refused(self.name, read, "write a length in inches, such as 36 or 36.5")
                if not self._within(value):
                    raise Refused(self.name, read, self._wanted(style))
                return drop_crumb(value)
            case Kind.NUMBER:
                return self._check_number(value, read, style)
            case Kind.COUNT:
                if isinstance(value, bool) or not isinstance(value, int) or not self._within(value):
                    raise Refused(self.name, read, self._wanted(style))
                return value
            case Kind.CHOICE:
                if not isinstance(value, str) or value not in (self.choices or {}):
                    raise Refused(self.name, read, self._wanted(style))
                return value
            case Kind.COLOUR:
                named = isinstance(value, str) and (value in (self.choices or {}) or COLOUR.fullmatch(value))
                if not isinstance(value, str) or not named:
                    raise Refused(self.name, read, self._wanted(style))
                return value
            case Kind.YES_NO:
                if not isinstance(value, bool):
                    raise Refused(self.name, read, "write yes or no (true or false in a job file)")
                return value
            case Kind.TEXT:
                return self._check_text(value, read)
            case Kind.SECTION:
                text = self._check_text(value, read)
                if text.strip():
                    parse_section(text, self.name)
                return text
            case Kind.PAIRS:
                return self._check_pairs(value, read, style)
            case Kind.READINGS:
                return self._check_readings(value, read, style)
        raise AssertionError(self.kind)

    def format(self, value: Value, style: LengthStyle) -> str:
        """Text for a field; `parse` reads it back to within the style's step."""
        match self.kind:
            case Kind.LENGTH:
                return "" if value is None else format_length(cast(float, value), style)
            case Kind.NUMBER:
                return (
                    "" if value is None else format_measure(cast(float, value), self.measure, style, PLACES)
                )
            case Kind.YES_NO:
                return "yes" if value else "no"
            case Kind.CHOICE:
                return (self.choices or {}).get(str(value), NOTHING)
            case Kind.COLOUR:
                return (self.choices or {}).get(str(value), str(value))
            case Kind.PAIRS:
                rows = cast(Pairs, value)
                return "; ".join(f"{format_length(p, style)} : {format_length(d, style)}" for p, d in rows)
            case Kind.READINGS:
                return ", ".join(format_length(reading, style) for reading in cast(Readings, value))
        return str(value)

    def _check_readings(self, value: object, read: object, style: LengthStyle) -> Readings:
        if not isinstance(value, list | tuple) or len(value) > MOST_READINGS:
            raise Refused(self.name, read, f"write up to {MOST_READINGS} lengths parted by commas")
        for reading in value:
            number = isinstance(reading, int | float) and not isinstance(reading, bool)
            if not number or not self._within(reading):
                raise Refused(self.name, read, self._wanted(style) + ", or several parted by commas")
        return tuple(drop_crumb(reading) for reading in value)

    def _check_text(self, value: object, read: object) -> str:
        if not isinstance(value, str):
            raise Refused(self.name, read, "write text")
        if len(value) > LONGEST_TEXT:
            raise Refused(self.name, read, f"write at most {LONGEST_TEXT} characters")
        if any(is_control(c) for c in value):
            raise Refused(self.name, read, "write text without control characters")
        return value

    def _check_number(self, value: object, read: object, style: LengthStyle) -> float | None:
        if value is None and self.optional:
            return None
        if isinstance(value, bool) or not isinstance(value, int | float) or not self._within(value):
            raise Refused(self.name, read, self._wanted(style))
        return drop_crumb(value)

    def _within(self, value: float) -> bool:
        low_enough = self.highest is None or value <= self.highest
        return value == value and low_enough and (self.lowest is None or value >= self.lowest)

    def _parse_signed(self, text: str, style: LengthStyle) -> float:
        """A length; a row that goes below nothing takes a minus before it."""
        bare = text.strip()
        if (self.lowest or 0.0) < 0 and bare[:1] in MINUS:
            return -parse_length(bare[1:], self.name, style)
        return parse_length(text, self.name, style)

    def _parse_choice(self, text: str) -> str:
        word = text.strip().lower().replace(" ", "_").replace("-", "_")
        for key, shown in (self.choices or {}).items():
            if word == key or text.strip().lower() == shown.lower():
                return key
        raise Refused(self.name, text, self._wanted(INCHES_16))

    def _parse_colour(self, text: str) -> str:
        if COLOUR.fullmatch(own := text.strip().lower()):
            return own
        return self._parse_choice(text)

    def _parse_pairs(self, text: str, style: LengthStyle) -> Value:
        pairs = []
        for part in text.replace("\n", ";").split(";"):
            if not part.strip():
                continue
            halves = part.split(":")
            if len(halves) != 2:
                raise Refused(self.name, part.strip(), self._wanted(style))
            pairs.append(
                (parse_length(halves[0], self.name, style), parse_length(halves[1], self.name, style))
            )
        return tuple(pairs)

    def _check_pairs(self, value: object, read: object, style: LengthStyle) -> Value:
        if not isinstance(value, list | tuple) or len(value) > MOST_PAIRS:
            raise Refused(self.name, read, self._wanted(style))
        pairs = []
        for pair in value:
            if not isinstance(pair, list | tuple) or len(pair) != 2:
                raise Refused(self.name, read, self._wanted(style))
            for number in pair:
                if isinstance(number, bool) or not isinstance(number, int | float) or not 0 <= number <= 200:
                    least, most = format_bounds(0.0, 200.0, style)
                    raise Refused(
                        self.name, read, f"write lengths from {least} to {most}; {self._wanted(style)}"
                    )
            pairs.append((drop_crumb(pair[0]), drop_crumb(pair[1])))
        pairs.sort()
        for (p1, d1), (p2, d2) in pairwise(pairs):
            if p1 == p2:
                raise Refused(
                    self.name, read, f"give each projection once; {format_length(p1, style)} stands twice"
                )
            if d2 < d1:
                raise Refused(
                    self.name,
                    read,
                    "a greater projection needs at least the same clearance; look at "
                    f"{format_length(p1, style)} and {format_length(p2, style)}",
                )
        return tuple(pairs)

    def _wanted(self, style: LengthStyle) -> str:
        match self.kind:
            case Kind.LENGTH | Kind.READINGS:
                low, high = format_bounds(self.lowest or 0.0, self.highest or 0.0, style)
                return f"write a length from {low} to {high}"
            case Kind.NUMBER:
                low, high = (
                    format_measure(end or 0.0, self.measure, style) for end in (self.lowest, self.highest)
                )
                return f"write a number from {low} to {high}"
            case Kind.COUNT:
                return f"write a whole number from {self.lowest:g} to {self.highest:g}"
            case Kind.CHOICE:
                return "write one of " + ", ".join(self.choices or {})
            case Kind.COLOUR:
                return f"write one of {', '.join((self.choices or {}).values())}, or a colour such as #7c8f93"
            case _:
                return (
                    "write rows of projection : clearance, each on its line or parted by semicolons, such as "
                    "3/4 : 8; 2 1/2 : 10"
                )


def is_control(char: str) -> bool:
    """Whether a sheet or a file cannot hold `char`: control characters and halves of a character."""
    code = ord(char)
    return (code < 32 and char not in "\n\t") or 127 <= code < 160 or 0xD800 <= code <= 0xDFFF


def drop_crumb(value: float) -> float:
    """`value` as it is kept: nothing where it is nearer to nothing than LEAST."""
    return float(value) if abs(value) >= LEAST else 0.0
