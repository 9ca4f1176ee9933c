"""The one table of everything a user may set; fields, files, scripts and tests are made from it.

A row says what a value is called, what it may be and which dimension shows it. How values hang
together in a job stands in model.job.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from difflib import get_close_matches
from enum import StrEnum
from itertools import pairwise
from typing import cast

from model.errors import Refused
from model.fixing import IN_FRIEZE, OWN
from model.measures import (
    BARE,
    COVERAGE,
    FLUID_OUNCE,
    INCH,
    MIL,
    PERCENT,
    PLACES,
    POUND,
    SQ_FT,
    Measure,
    format_measure,
    parse_measure,
)
from model.moulding.library import Use, list_choices
from model.moulding.notation import parse_section
from model.reference import rates
from model.reference.anchors import EDGE, LINTEL, SOFT_SHEAR, SOFT_TENSION, SPACING
from model.reference.connectors import CONNECTORS, HOLE_CLEARANCE, PANEL_CLEARANCE
from model.reference.sourced import Sourced
from model.units import INCHES_16, LengthStyle, format_length, parse_length

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


LONGEST_TEXT = 4000
PIECE_USES = {
    "nothing": "nothing",
    "shelf": "shelf top or plank",
    "shelf_underside": "shelf underside",
    "shelf_edge": "shelf edge band",
    "bed_mould": "bed mould",
    "frieze_board": "plain frieze",
    "column_face": "plain column faces",
    "column_stile": "column stiles",
    "ledger": "ledger under the shelf",
}
"""What a board on hand may be used for, by the word a job keeps."""
NOTHING = "nothing"
"""What a choice is called that had to be left out."""
MOST_PAIRS = 40
MOST_READINGS = 12
_NAMES = {
    "job.name": "job name",
    "job.client": "made for",
    "job.maker": "made by",
    "job.notes": "notes",
    "job.precision": "nearest fraction",
    **{
        f"{path}.{row}": f"{which} piece on hand, {words}"
        for path, which in (("piece_one", "first"), ("piece_two", "second"))
        for row, words in (
            ("name", "name"),
            ("use", "use"),
            ("length", "length"),
            ("width", "width"),
            ("thickness", "thickness"),
            ("clear", "ends kept clear"),
        )
    },
    "site.fireplace": "kind of fireplace",
    "site.rule": "governing rules",
    "chart.shelf": "manual's chart above the opening",
    "chart.legs": "manual's chart beside the opening",
    "chart.hearth_front": "manual's hearth in front",
    "chart.hearth_side": "manual's hearth at the sides",
    "chart.hearth_thickness": "manual's hearth thickness",
    "chart.source": "manual and page",
    "chart.hood": "hood of the appliance",
    "chart.shelf_hood": "manual's chart above, with the hood",
    "chart.datum": "start of the chart's heights",
    "chart.datum_height": "height of what the chart counts from",
    "chart.between": "reading between the chart's rows",
    "chart.plus": "height over the projection past the last row",
    "chart.greatest": "greatest projection by the manual",
    "chart.none_above": "noncombustible zone above",
    "chart.none_beside": "noncombustible zone beside",
    "local.shelf": "amendment's distances above the opening",
    "local.legs": "amendment's distances beside the opening",
    "local.hearth_front": "amendment's hearth in front",
    "local.hearth_side": "amendment's hearth at the sides",
    "local.hearth_thickness": "amendment's hearth thickness",
    "local.source": "text of the amendment",
    "opening.sill": "height of the firebox's floor over the hearth",
    "facing.added": "slips to be laid on the facing",
    "facing.proud": "facing's distance proud of the wall",
    "hearth.height": "hearth height over the floor",
    "room.ceiling": "ceiling height",
    "readings.diagonal_falling": "falling diagonal of the opening",
    "readings.diagonal_rising": "rising diagonal of the opening",
    "baseboard.height_left": "height of the left baseboard",
    "baseboard.height_right": "height of the right baseboard",
    "baseboard.thickness": "thickness of the baseboards",
    "baseboard.meets": "meeting of baseboard and column",
    "baseboard.thickness_left": "thickness of the left baseboard",
    "baseboard.thickness_right": "thickness of the right baseboard",
    **{
        f"old_ledger.{row}": f"old ledger's {words}"
        for row, words in (
            ("top", "top"),
            ("tall", "height"),
            ("thick", "thickness"),
            ("left", "left end"),
            ("right", "right end"),
            ("use", "use"),
        )
    },
    **{
        f"{path}.{row}": f"{which} bolt's {words}"
        for path, which in (("bolt_one", "first"), ("bolt_two", "second"), ("bolt_three", "third"))
        for row, words in (
            ("across", "place"),
            ("up", "height"),
            ("out", "length"),
            ("diameter", "diameter"),
        )
    },
    "level.floor_left": "level line over the floor, left",
    "level.floor_right": "level line over the floor, right",
    "column.over_edge": "column over the hearth's end",
    "outlet.left": "place of the left outlet",
    "outlet.height_left": "height of the left outlet",
    "outlet.right": "place of the right outlet",
    "outlet.height_right": "height of the right outlet",
    "outlet.width": "width of an outlet's plate",
    "outlet.tall": "height of an outlet's plate",
    "casing.left": "edge of the left casing",
    "casing.bottom_left": "foot of the left casing",
    "casing.top_left": "top of the left casing",
    "casing.right": "edge of the right casing",
    "casing.bottom_right": "foot of the right casing",
    "casing.top_right": "top of the right casing",
    "casing.proud": "projection of the casings",
    "plumb.left": "lean behind the left column",
    "plumb.right": "lean behind the right column",
    "room.left": "free wall to the left",
    "room.right": "free wall to the right",
    "column.taper": "column taper",
    "column.taper_edges": "leaning edges of the columns",
    "column.margin": "column margin from the opening",
    "column.panels": "number of column panels",
    "flute.count": "number of flutes",
    "flute.width": "width of a flute",
    "flute.depth": "depth of a flute",
    "flute.between": "flat between flutes",
    "flute.stop": "flutes' stop",
    "plinth.on": "plinths",
    "frieze.place": "frieze's place",
    "tablet.width": "tablet width",
    "tablet.height": "tablet height",
    "tablet.thickness": "tablet thickness",
    "frieze.panels": "number of frieze panels",
    "board.match": "matching grain",
    "panel.grain": "grain of the panels",
    "shelf.kind": "making of the shelf",
    "shelf.height_from": "start of the shelf height",
    "shelf.overhang_front": "shelf overhang at the front",
    "shelf.overhang_end": "shelf overhang at the ends",
    "shelf.step": "step of the shelf over the columns",
    "shelf.edge_size": "height of the shelf's moulded edge",
    "bed_mould.on": "bed mould",
    "bed_mould.profile": "bed mould section",
    "bed_mould.size": "bed mould size",
    "capital.on": "capital",
    "capital.profile": "capital section",
    "capital.size": "capital size",
    "plinth_cap.on": "plinth cap",
    "plinth_cap.profile": "plinth cap section",
    "plinth_cap.size": "plinth cap size",
    "panel_mould.on": "panel mould",
    "panel_mould.profile": "panel mould section",
    "panel_mould.size": "panel mould size",
    "back_band.on": "back band",
    "back_band.profile": "back band section",
    "back_band.size": "back band size",
    "cord.on": "cord way",
    "cord.place": "place of the cord way",
    "cord.plug": "largest plug",
    "cord.own_width": "width of the own plug",
    "cord.own_height": "height of the own plug",
    "cord.clearance": "hole's clearance round the plug",
    "cord.exit_height": "height of the lower cord hole",
    "cord.panel_clearance": "loose panel's clearance",
    "nailer.clearance": "nailer clearance",
    "slip.on": "inner slip",
    "over.on": "overmantel",
    "over.reach": "overmantel's reach",
    "over.panels": "number of overmantel panels",
    "own_section.first": "own section 1",
    "own_section.second": "own section 2",
    "own_section.third": "own section 3",
}
"""What messages call the rows whose group and label do not make a name together."""
MINUS = ("-", "\N{MINUS SIGN}")
YES = ("yes", "true", "on", "1")
NO = ("no", "false", "off", "0")


@dataclass(frozen=True, slots=True)
class Parameter:
    """One row. Lengths in inches. `choices` maps the stored word to the words shown.

    `group` is the heading it stands under; `optional` lengths may be `None` (not measured);
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

    @property
    def about(self) -> str:
        """The help, and for a figure of the trade where its default comes from."""
        if self.sourced is None:
            return self.help
        source = self.sourced.source.removesuffix(".")
        return f"{self.help} {self.sourced.standing.capitalize()}: {source}."

    @property
    def name(self) -> str:
        """What messages call it: ``opening width``, never just ``width``."""
        group, label = self.group.lower(), self.label.lower()
        return _NAMES.get(self.path) or f"{group.removesuffix('s')} {label}"

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
                value = parse_measure(text, self.name, self.measure, style)
            case Kind.COUNT:
                stripped = text.strip()
                if not (stripped.isascii() and stripped.isdigit() and len(stripped) < 6):
                    raise Refused(self.name, text, self._wanted())
                value = int(stripped)
            case Kind.CHOICE:
                value = self._parse_choice(text)
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
        return self.check(value, read=text)

    def check(self, value: object, read: object = None) -> Value:
        """`value` itself when the row may hold it; raises Refused otherwise. `read` is what to quote."""
        read = value if read is None else read
        match self.kind:
            case Kind.LENGTH:
                if value is None and self.optional:
                    return None
                if isinstance(value, bool) or not isinstance(value, int | float):
                    raise Refused(self.name, read, "write a length in inches, such as 36 or 36.5")
                if not self._within(value):
                    raise Refused(self.name, read, self._wanted())
                return float(value)
            case Kind.NUMBER:
                return self._check_number(value, read)
            case Kind.COUNT:
                if isinstance(value, bool) or not isinstance(value, int) or not self._within(value):
                    raise Refused(self.name, read, self._wanted())
                return value
            case Kind.CHOICE:
                if not isinstance(value, str) or value not in (self.choices or {}):
                    raise Refused(self.name, read, self._wanted())
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
                return self._check_pairs(value, read)
            case Kind.READINGS:
                return self._check_readings(value, read)
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
            case Kind.PAIRS:
                rows = cast(Pairs, value)
                return "; ".join(f"{format_length(p, style)} : {format_length(d, style)}" for p, d in rows)
            case Kind.READINGS:
                return ", ".join(format_length(reading, style) for reading in cast(Readings, value))
        return str(value)

    def _check_readings(self, value: object, read: object) -> Readings:
        if not isinstance(value, list | tuple) or len(value) > MOST_READINGS:
            raise Refused(self.name, read, f"write up to {MOST_READINGS} lengths parted by commas")
        for reading in value:
            number = isinstance(reading, int | float) and not isinstance(reading, bool)
            if not number or not self._within(reading):
                raise Refused(self.name, read, self._wanted() + ", or several parted by commas")
        return tuple(float(reading) for reading in value)

    def _check_text(self, value: object, read: object) -> str:
        if not isinstance(value, str):
            raise Refused(self.name, read, "write text")
        if len(value) > LONGEST_TEXT:
            raise Refused(self.name, read, f"write at most {LONGEST_TEXT} characters")
        if any(_is_control(c) for c in value):
            raise Refused(self.name, read, "write text without control characters")
        return value

    def _check_number(self, value: object, read: object) -> float | None:
        if value is None and self.optional:
            return None
        if isinstance(value, bool) or not isinstance(value, int | float) or not self._within(value):
            raise Refused(self.name, read, self._wanted())
        return float(value)

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
        raise Refused(self.name, text, self._wanted())

    def _parse_pairs(self, text: str, style: LengthStyle) -> Value:
        pairs = []
        for part in text.replace("\n", ";").split(";"):
            if not part.strip():
                continue
            halves = part.split(":")
            if len(halves) != 2:
                raise Refused(self.name, part.strip(), self._wanted())
            pairs.append(
                (parse_length(halves[0], self.name, style), parse_length(halves[1], self.name, style))
            )
        return tuple(pairs)

    def _check_pairs(self, value: object, read: object) -> Value:
        if not isinstance(value, list | tuple) or len(value) > MOST_PAIRS:
            raise Refused(self.name, read, self._wanted())
        pairs = []
        for pair in value:
            if not isinstance(pair, list | tuple) or len(pair) != 2:
                raise Refused(self.name, read, self._wanted())
            for number in pair:
                if isinstance(number, bool) or not isinstance(number, int | float) or not 0 <= number <= 200:
                    raise Refused(self.name, read, "write lengths from 0 to 200 in.; " + self._wanted())
            pairs.append((float(pair[0]), float(pair[1])))
        pairs.sort()
        for (p1, d1), (p2, d2) in pairwise(pairs):
            if p1 == p2:
                raise Refused(
                    self.name, read, f"give each projection once; {format_length(p1, INCHES_16)} stands twice"
                )
            if d2 < d1:
                raise Refused(
                    self.name,
                    read,
                    "a greater projection needs at least the same clearance; look at "
                    f"{format_length(p1, INCHES_16)} and {format_length(p2, INCHES_16)}",
                )
        return tuple(pairs)

    def _wanted(self) -> str:
        match self.kind:
            case Kind.LENGTH | Kind.READINGS:
                low = format_length(self.lowest or 0.0, INCHES_16)
                high = format_length(self.highest or 0.0, INCHES_16)
                return f"write a length from {low} to {high}"
            case Kind.NUMBER:
                low, high = (
                    format_measure(end or 0.0, self.measure, INCHES_16) for end in (self.lowest, self.highest)
                )
                return f"write a number from {low} to {high}"
            case Kind.COUNT:
                return f"write a whole number from {self.lowest:g} to {self.highest:g}"
            case Kind.CHOICE:
                return "write one of " + ", ".join(self.choices or {})
            case _:
                return (
                    "write rows of projection : clearance, parted by semicolons, such as 3/4 : 8; 2 1/2 : 10"
                )


FIREPLACES = {
    "masonry": "Masonry, wood-burning",
    "factory_built": "Factory-built",
    "gas": "Gas",
    "electric": "Electric",
    "not_in_use": "Not in use",
}
RULES = {
    "strictest": "Strictest of IRC and NFPA 211",
    "irc": "IRC masonry",
    "nfpa211": "NFPA 211 masonry",
    "canada": "Canada, NBC 9.22",
    "australia": "Australia, Housing Provisions 12.4",
    "england": "England, Approved Document J",
    "local": "A local amendment",
    "manual": "The appliance's manual",
}
DATUMS = {
    "opening": "The opening's top",
    "hood": "The hood's edge",
    "outlet": "The hot-air outlet",
    "base": "The unit's base",
}
BETWEEN_ROWS = {"step_up": "Steps up to the next row", "linear": "Runs straight from row to row"}
UNITS = {"feet_inches": "Feet and inches", "inches": "Inches", "millimetres": "Millimetres"}
PRECISIONS = {"16": "1/16 in.", "32": "1/32 in."}
MEETS = {"cut_back": "Cut back to the column", "notched": "Column notched round it"}
OLD_LEDGER_USES = {
    "keep": "Left, and built over",
    "use": "Used as the ledger",
    "remove": "Taken off first",
}
OVER_EDGE = {"level": "Stands level with the hearth", "stepped": "Steps down to the floor"}
HEIGHTS_FROM = {"hearth": "The hearth", "floor": "The floor"}
TAPERED = {"both": "Both edges", "outer": "Outer edge only"}
COLUMNS = {"framed": "Framed panels", "plain": "Plain board", "fluted": "Fluted"}
FRIEZES = {"framed": "Framed panels", "plain": "Plain board", "tablet": "Plain, raised tablet"}
FRIEZE_PLACES = {"between": "Between the columns", "in_front": "Over the columns"}
SHELVES = {"built_up": "Built up from boards", "plank": "Solid plank"}
OVER_REACHES = {"ceiling": "The ceiling", "height": "A given height"}
MATCHES = {
    "free": "Nothing",
    "columns": "Each column's stiles",
    "frieze": "The frieze's rails",
    "both": "Stiles and rails",
}
GRAINS = {"along": "Along their length", "free": "Either way"}
SPECIES = {
    "poplar": "Yellow poplar",
    "white_pine": "Eastern white pine",
    "ponderosa": "Ponderosa pine",
    "maple": "Sugar maple",
    "red_oak": "Red oak",
    "white_oak": "White oak",
    "cherry": "Black cherry",
    "walnut": "Black walnut",
    "alder": "Red alder",
    "basswood": "Basswood",
}

CORD_PLACES = {"right": "Right column", "left": "Left column", IN_FRIEZE: "Frieze"}
PLUGS = {key: connector.name for key, connector in CONNECTORS.items()} | {OWN: "Own size"}


def _is_control(char: str) -> bool:
    """Whether a sheet or a file cannot hold `char`: control characters and halves of a character."""
    code = ord(char)
    return (code < 32 and char not in "\n\t") or 127 <= code < 160 or 0xD800 <= code <= 0xDFFF


def _length(
    path: str,
    label: str,
    group: str,
    default: float | None,
    low: float,
    high: float,
    help: str,
    step: float = 0.125,
    optional: bool = False,
    linked: bool = False,
) -> Parameter:
    default = None if default is None else float(default)
    return Parameter(path, label, group, Kind.LENGTH, default, help, low, high, step, None, optional, linked)


SMALLEST = "Readings at other places, parted by commas; the smallest of all governs."
LARGEST = "Readings at other places, parted by commas; the largest of all governs."


def _readings(path: str, label: str, group: str, low: float, high: float, help: str) -> Parameter:
    return Parameter(path, label, group, Kind.READINGS, (), help, low, high)


def _optional(path: str, label: str, group: str, low: float, high: float, help: str) -> Parameter:
    return _length(path, label, group, None, low, high, help, optional=True)


def _yes_no(path: str, label: str, group: str, default: bool, help: str) -> Parameter:
    return Parameter(path, label, group, Kind.YES_NO, default, help)


def _count(path: str, label: str, group: str, default: int, low: int, high: int, help: str) -> Parameter:
    return Parameter(path, label, group, Kind.COUNT, default, help, low, high, 1)


def _bolt(path: str, which: str) -> tuple[Parameter, ...]:
    """The rows of a bolt that was left in the masonry."""
    group, cap = "Obstacles", which.capitalize()
    return (
        _optional(f"{path}.across", f"{cap} bolt, across", group, -120, 120,
                  "From the centre line to the middle of a bolt or stud left in the masonry, less than "
                  "nothing on the left; leave empty when there is none."),
        _length(f"{path}.up", f"{cap} bolt, up", group, 48, 0, 144, "Its middle over the hearth."),
        _length(f"{path}.out", f"{cap} bolt, stands out", group, 1.5, 0.0625, 16,
                "From the masonry to its end.", 0.0625),
        _length(f"{path}.diameter", f"{cap} bolt, diameter", group, 0.5, 0.125, 2,
                "Of its thickest part, a nut on it included.", 0.0625),
    )  # fmt: skip


def _piece(path: str, which: str) -> tuple[Parameter, ...]:
    """The rows of a board that is there already."""
    group, cap = "Pieces on hand", which.capitalize()
    return (
        _choice(
            f"{path}.use",
            f"{cap} piece, used for",
            group,
            PIECE_USES,
            "What a reclaimed or left-over board is used for in place of a bought one.",
        ),
        _text(f"{path}.name", f"{cap} piece", group, "What the cut list calls it, such as old beam."),
        _optional(f"{path}.length", "Length", group, 1, 480, "End to end, as it lies there."),
        _optional(f"{path}.width", "Width", group, 0.25, 60, "What of its width is sound."),
        _optional(
            f"{path}.thickness", "Thickness", group, 0.125, 16, "As measured; more than needed is planed off."
        ),
        _length(
            f"{path}.clear",
            "Ends kept clear",
            group,
            0,
            0,
            60,
            "What of each end cannot be used: old nail holes, checks.",
        ),
    )


def _choice(path: str, label: str, group: str, choices: Mapping[str, str], help: str) -> Parameter:
    return Parameter(path, label, group, Kind.CHOICE, next(iter(choices)), help, choices=choices)


def _moulding(
    path: str, use: Use, on: bool, size: float, low: float, high: float, what: str, how_high: str
) -> tuple[Parameter, Parameter, Parameter]:
    """The three rows of one place's moulding: `what` it is, and what its size is in the room."""
    name, group = use.capitalize(), "Mouldings"
    return (
        Parameter(f"{path}.on", name, group, Kind.YES_NO, on, what),
        _choice(f"{path}.profile", "Its section", group, list_choices(use), "Its section, from the seat on."),
        _length(f"{path}.size", "Its size", group, size, low, high, how_high, 0.0625),
    )


def _own_section(path: str, number: int) -> Parameter:
    help = "A line for each element, such as cavetto 3/4 down, 3/4 back; inches where no unit is written."
    return Parameter(path, f"Own section {number}", "Mouldings", Kind.SECTION, "", help)


def _text(path: str, label: str, group: str, help: str) -> Parameter:
    return Parameter(path, label, group, Kind.TEXT, "", help)


def _rate(
    path: str, label: str, help: str, sourced: Sourced, measure: Measure, low: float, high: float, step: float
) -> Parameter:
    return Parameter(
        path,
        label,
        "Rates",
        Kind.NUMBER,
        sourced.value,
        help,
        low,
        high,
        step,
        measure=measure,
        sourced=sourced,
    )


def _coats(path: str, label: str, help: str, sourced: Sourced) -> Parameter:
    return Parameter(path, label, "Rates", Kind.COUNT, int(sourced.value), help, 0, 6, 1, sourced=sourced)


def _work_length(
    path: str, label: str, group: str, help: str, sourced: Sourced, low: float, high: float, step: float
) -> Parameter:
    """A length that is no dimension of the surround."""
    return Parameter(path, label, group, Kind.LENGTH, sourced.value, help, low, high, step, sourced=sourced)


def _saw(
    path: str, label: str, kind: Kind, help: str, sourced: Sourced, low: float, high: float
) -> Parameter:
    """A measure of the user's own saw; not known until it is measured. `sourced` is the usual one."""
    measure = INCH if kind is Kind.NUMBER else BARE
    step = 0.01 if kind is Kind.NUMBER else 0.0625
    return Parameter(
        path, label, "Saw", kind, None, help, low, high, step, None, True, measure=measure, sourced=sourced
    )


# fmt: off
TABLE: tuple[Parameter, ...] = (
    _text("job.name", "Job name", "Job", "What this job is called on every sheet."),
    _text("job.client", "Made for", "Job", "Whose fireplace it is."),
    _text("job.maker", "Made by", "Job", "Who draws and builds it."),
    _text("job.notes", "Notes", "Job", "Anything to remember; printed with the checks."),
    _choice("job.units", "Units", "Job", UNITS, "How lengths are shown; any unit may be typed."),
    _choice("job.precision", "Nearest", "Job", PRECISIONS, "How fine inch fractions are shown."),
    _choice("site.fireplace", "Kind of fireplace", "Fireplace", FIREPLACES,
            "Decides whether masonry rules or the appliance's manual govern."),
    _choice("site.rule", "Governing rules", "Fireplace", RULES,
            "The clearance rules the surround is held against."),
    Parameter("chart.shelf", "Manual's chart, above", "Fireplace", Kind.PAIRS, (),
              "From the manual: each greatest projection and the least height above the opening."),
    Parameter("chart.legs", "Manual's chart, beside", "Fireplace", Kind.PAIRS, (),
              "From the manual: each greatest projection and the least distance beside the opening."),
    _yes_no("chart.hood", "A hood is fitted", "Fireplace", False,
            "Manuals give a table of its own for the unit with its hood on."),
    Parameter("chart.shelf_hood", "Chart with the hood", "Fireplace", Kind.PAIRS, (),
              "From the manual: each greatest projection and the least height, with the hood fitted."),
    _choice("chart.datum", "Chart's heights are from", "Fireplace", DATUMS,
            "What the manual counts the heights of its chart from."),
    _optional("chart.datum_height", "Which lies over the hearth", "Fireplace", -24, 120,
              "Height over the hearth of what the chart counts from; 0 for a unit that stands on it."),
    _choice("chart.between", "Between two rows", "Fireplace", BETWEEN_ROWS,
            "How the manual says to read its chart; stepping up is the safe way where it does not say."),
    _optional("chart.plus", "Past the last row, add", "Fireplace", 0, 72,
              "Where the manual's formula is the projection and so much more; leave empty where nothing "
              "further out is permitted."),
    _optional("chart.greatest", "Greatest projection", "Fireplace", 0, 48,
              "The deepest shelf that the manual permits at any height; leave empty where it names none."),
    _optional("chart.none_above", "Noncombustible, above", "Fireplace", 0, 96,
              "How far above the opening the manual wants everything noncombustible."),
    _optional("chart.none_beside", "Noncombustible, beside", "Fireplace", 0, 60,
              "How far beside the opening the manual wants everything noncombustible."),
    _optional("chart.hearth_front", "Manual's hearth, front", "Fireplace", 0, 96,
              "Least hearth in front by the manual; 0 where it asks for none."),
    _optional("chart.hearth_side", "Manual's hearth, sides", "Fireplace", 0, 60,
              "Least hearth beyond each side of the opening by the manual; 0 where it asks for none."),
    _optional("chart.hearth_thickness", "Manual's hearth, thick", "Fireplace", 0, 12,
              "Least thickness of the hearth by the manual; 0 where it asks for none."),
    _text("chart.source", "Manual and page", "Fireplace", "Title, revision and page the chart was read on."),
    Parameter("local.shelf", "Amendment, above", "Fireplace", Kind.PAIRS, (),
              "As enacted: each greatest projection and the least height above the opening; end with a great "
              "projection, such as 60 : 12, where the text sets no more limit."),
    Parameter("local.legs", "Amendment, beside", "Fireplace", Kind.PAIRS, (),
              "As enacted: each greatest projection and the least distance beside the opening."),
    _optional("local.hearth_front", "Amendment, hearth front", "Fireplace", 0, 96,
              "Least hearth in front as enacted; 0 where nothing is asked."),
    _optional("local.hearth_side", "Amendment, hearth sides", "Fireplace", 0, 60,
              "Least hearth beyond each side of the opening as enacted; 0 where nothing is asked."),
    _optional("local.hearth_thickness", "Amendment, hearth thick", "Fireplace", 0, 12,
              "Least thickness of the hearth as enacted; 0 where nothing is asked."),
    _text("local.source", "Amendment's text", "Fireplace",
          "The ordinance, its number and date, and who was asked."),
    _length("opening.width", "Width", "Opening", 36, 12, 120, "Clear mouth of the firebox, side to side."),
    _length("opening.height", "Height", "Opening", 30, 10, 84,
            "From the finished hearth to the top of the mouth."),
    _length("opening.sill", "Firebox floor over the hearth", "Opening", 0, 0, 20,
            "From the hearth up to the floor of the fire, where that is raised; 0 when they are level."),
    _readings("readings.opening_width", "Width, read again", "Opening", 12, 120, SMALLEST),
    _readings("readings.opening_height", "Height, read again", "Opening", 10, 84, SMALLEST),
    _optional(
        "readings.diagonal_falling", "Diagonal, falling", "Opening", 12, 160, "Top left to bottom right."
    ),
    _optional(
        "readings.diagonal_rising", "Diagonal, rising", "Opening", 12, 160, "Bottom left to top right."
    ),
    _length("facing.width", "Width", "Facing", 78, 12, 240, "Brick, stone or tile, edge to edge."),
    _length("facing.height", "Height", "Facing", 56, 10, 144, "From the hearth to the facing's top."),
    _length("facing.proud", "Stands proud", "Facing", 0, 0, 12, "From the wall out to the facing's front."),
    _length("facing.added", "Slips to be laid", "Facing", 0, 0, 4,
            "Thickness of noncombustible slips or tile still to be laid on the facing round the opening; "
            "they take from a hearth that counts from the facing.", 0.0625),
    _readings("readings.facing_width", "Width, read again", "Facing", 12, 240, LARGEST),
    _readings("readings.facing_height", "Height, read again", "Facing", 10, 144, LARGEST),
    _length("hearth.height", "Height over floor", "Hearth", 0, 0, 24,
            "Top of the hearth above the floor; 0 when flush."),
    _length("hearth.width", "Width", "Hearth", 72, 12, 300, "Side to side, centred on the opening."),
    _length("hearth.depth", "Depth in front", "Hearth", 20, 0, 60,
            "From the facing out to the hearth's front edge."),
    _length("hearth.thickness", "Thickness", "Hearth", None, 0.125, 24,
            "Noncombustible thickness in front; leave empty when not known.", optional=True),
    _readings("readings.hearth_depth", "Depth, read again", "Hearth", 0, 60, SMALLEST),
    _length(
        "level.centre",
        "Level line over the hearth",
        "Levels",
        None,
        0,
        96,
        "From any level line down to the hearth at the opening; leave empty when all is level.",
        optional=True,
    ),
    _length(
        "level.left",
        "Over the left foot",
        "Levels",
        None,
        0,
        96,
        "From the same line down to where the left column stands.",
        optional=True,
    ),
    _length(
        "level.right",
        "Over the right foot",
        "Levels",
        None,
        0,
        96,
        "From the same line down to where the right column stands.",
        optional=True,
    ),
    _optional("level.floor_left", "Over the floor, left", "Levels", 0, 120,
              "From the same line down to the floor beside the hearth, where the left column steps over its "
              "end."),
    _optional("level.floor_right", "Over the floor, right", "Levels", 0, 120,
              "From the same line down to the floor beside the hearth, where the right column steps over its "
              "end."),
    _optional("plumb.left", "Out of plumb, left", "Levels", -2, 2,
              "How far the facing leans over the left column's height: toward the room at the top, or "
              "less than nothing when away from it; leave empty when it is plumb."),
    _optional("plumb.right", "Out of plumb, right", "Levels", -2, 2,
              "The same behind the right column."),
    _length("room.ceiling", "Ceiling height", "Room", 96, 48, 300, "From the floor to the ceiling."),
    _length("room.left", "Wall free, left", "Room", 60, 0, 400,
            "From the opening's left edge to the first obstacle."),
    _length("room.right", "Wall free, right", "Room", 60, 0, 400,
            "From the opening's right edge to the first obstacle."),
    _optional("baseboard.height_left", "Baseboard, left", "Obstacles", 1, 10,
              "Height of a baseboard on the wall to the left; leave empty when there is none."),
    _optional("baseboard.height_right", "Baseboard, right", "Obstacles", 1, 10,
              "Height of a baseboard on the wall to the right; leave empty when there is none."),
    _length("baseboard.thickness", "Baseboard's thickness", "Obstacles", 0.5, 0.25, 1.5,
            "How far the baseboards stand out from the wall.", 0.0625),
    _optional("baseboard.thickness_left", "Thickness, left only", "Obstacles", 0.25, 1.5,
              "Where the left baseboard differs; leave empty when both are alike."),
    _optional("baseboard.thickness_right", "Thickness, right only", "Obstacles", 0.25, 1.5,
              "Where the right baseboard differs; leave empty when both are alike."),
    _choice("baseboard.meets", "Where it meets a column", "Obstacles", MEETS,
            "Whether a baseboard ends at the column or runs on behind it."),
    _optional("outlet.left", "Outlet, left", "Obstacles", 0, 200,
              "From the opening's centre line to the outlet's middle; leave empty when there is none."),
    _length("outlet.height_left", "Its height, left", "Obstacles", 15, 0, 120,
            "From the floor to the outlet's middle."),
    _optional("outlet.right", "Outlet, right", "Obstacles", 0, 200,
              "From the opening's centre line to the outlet's middle; leave empty when there is none."),
    _length("outlet.height_right", "Its height, right", "Obstacles", 15, 0, 120,
            "From the floor to the outlet's middle."),
    _length("outlet.width", "Outlet plate, wide", "Obstacles", 2.75, 1, 12, "Width of the outlets' plates."),
    _length("outlet.tall", "Outlet plate, high", "Obstacles", 4.5, 1, 12, "Height of the outlets' plates."),
    _optional("casing.left", "Casing, left", "Obstacles", 0, 200,
              "From the opening's centre line to the near edge of a window's or door's casing; leave empty "
              "when there is none."),
    _length("casing.bottom_left", "Its foot, left", "Obstacles", 0, 0, 200, "Over the floor."),
    _length("casing.top_left", "Its top, left", "Obstacles", 84, 0, 300, "Over the floor."),
    _optional("casing.right", "Casing, right", "Obstacles", 0, 200,
              "From the opening's centre line to the near edge of a window's or door's casing; leave empty "
              "when there is none."),
    _length("casing.bottom_right", "Its foot, right", "Obstacles", 0, 0, 200, "Over the floor."),
    _length("casing.top_right", "Its top, right", "Obstacles", 84, 0, 300, "Over the floor."),
    _length("casing.proud", "Casing stands out", "Obstacles", 0.75, 0.125, 4,
            "How far the casings stand out from the wall.", 0.0625),
    _optional("old_ledger.top", "Old ledger, top", "Obstacles", 4, 144,
              "Top of a ledger that is on the masonry already, over the hearth; leave empty when there is "
              "none."),
    _length("old_ledger.tall", "Old ledger, height", "Obstacles", 3.5, 0.5, 12,
            "From its underside to its top."),
    _length("old_ledger.thick", "Old ledger, thickness", "Obstacles", 1.5, 0.25, 6,
            "How far it stands out from the masonry.", 0.0625),
    _length("old_ledger.left", "Old ledger, to the left", "Obstacles", 24, 0, 120,
            "From the centre line to its left end."),
    _length("old_ledger.right", "Old ledger, to the right", "Obstacles", 24, 0, 120,
            "From the centre line to its right end."),
    _choice("old_ledger.use", "Old ledger is", "Obstacles", OLD_LEDGER_USES,
            "Whether boards are cut round it, the shelf rests on it, or it comes off before work begins."),
    *_bolt("bolt_one", "first"),
    *_bolt("bolt_two", "second"),
    *_bolt("bolt_three", "third"),
    _choice("column.kind", "Face", "Columns", COLUMNS, "What the columns' faces are made of."),
    _length("column.width", "Width", "Columns", 7.5, 4, 24, "Face of the column, side to side."),
    _length(
        "column.width_left",
        "Width, left only",
        "Columns",
        None,
        4,
        24,
        "Where the left column must differ; leave empty when both are alike.",
        optional=True,
    ),
    _length(
        "column.width_right",
        "Width, right only",
        "Columns",
        None,
        4,
        24,
        "Where the right column must differ; leave empty when both are alike.",
        optional=True,
    ),
    _length("column.taper", "Narrower at the top", "Columns", 0, -6, 12,
            "How much narrower a column is at its top than at its foot, both edges together; less than "
            "nothing when it is wider. It leans between plinth and capital, or up to the frieze."),
    _choice("column.taper_edges", "Edges that lean", "Columns", TAPERED,
            "Both edges alike, or the outer one alone, so that the inner one stays upright."),
    _length("column.projection", "Projection", "Columns", 4, 2, 16, "From the masonry to the column's face."),
    _length("column.margin", "From the opening", "Columns", 13, 0, 60,
            "Opening's edge to the column's inner side."),
    _choice("column.over_edge", "Over a raised hearth's end", "Columns", OVER_EDGE,
            "What a column's foot does where a raised hearth ends under it."),
    _length("column.stile", "Stile width", "Columns", 1.75, 1.25, 8,
            "Upright members of the column's frame."),
    _length("column.rail", "Rail width", "Columns", 2.5, 1, 10, "Level members, as seen between mouldings."),
    _count("column.panels", "Panels", "Columns", 1, 1, 4, "Panels one above the other in each column."),
    _count("flute.count", "Flutes", "Columns", 5, 1, 15, "Hollows up the face of each column."),
    _length("flute.width", "Flute width", "Columns", 0.625, 0.25, 2, "Each hollow, edge to edge.", 0.0625),
    _length("flute.depth", "Flute depth", "Columns", 0.25, 0.0625, 0.75,
            "From the face to the hollow's bottom.", 0.0625),
    _length("flute.between", "Between flutes", "Columns", 0.375, 0.125, 2,
            "The flat left between two hollows.", 0.0625),
    _length("flute.stop", "Flutes stop short", "Columns", 1.5, 0, 24,
            "Plain pieces of this height end the flutes at both ends; 0 lets them run through."),
    _yes_no("plinth.on", "Plinths", "Plinths", True, "A block wrapped round each column's foot."),
    _length("plinth.height", "Height", "Plinths", 8, 2, 24, "Foot block, from where the column stands."),
    _length("plinth.projection", "Projection", "Plinths", 0.75, 0.25, 2,
            "Beyond the column on its three free sides."),
    _choice("frieze.kind", "Face", "Frieze", FRIEZES, "What the face under the shelf is made of."),
    _choice("frieze.place", "Runs", "Frieze", FRIEZE_PLACES,
            "Between the columns, or over their faces from side to side."),
    _length("frieze.height", "Height", "Frieze", 9, 4, 36, "From its lower edge to the shelf's underside."),
    _length("frieze.projection", "Projection", "Frieze", 3, 0.75, 16,
            "From the masonry to the frieze's face."),
    _length("frieze.stile", "Stile width", "Frieze", 2.5, 1, 8, "Upright members between the panels."),
    _length("frieze.rail", "Rail width", "Frieze", 2, 1.25, 8, "Level members, as seen below the bed mould."),
    _count("frieze.panels", "Panels", "Frieze", 3, 1, 7, "Panels side by side."),
    _length("tablet.width", "Tablet width", "Frieze", 16, 2, 96, "The raised field in the frieze's middle."),
    _length("tablet.height", "Tablet height", "Frieze", 5, 1, 30, "Its height; it lies in the middle."),
    _length("tablet.thickness", "Tablet thickness", "Frieze", 0.5, 0.125, 2,
            "How far it stands out from the frieze.", 0.0625),
    _length("panel.reveal", "Reveal", "Panels", 0.75, 0.125, 1, "From the frame's face back to the panel."),
    _length("panel.thickness", "Thickness", "Panels", 0.25, 0.125, 0.5,
            "The sheet as measured, not as named.", 0.03125),
    _choice("panel.grain", "Grain runs", "Panels", GRAINS,
            "How panels may lie on a sheet; either way where they are painted."),
    _choice("shelf.kind", "Made as", "Shelf", SHELVES,
            "Built up with an edge band round it, or edge-glued from solid stock as thick as the shelf."),
    _length("shelf.height", "Height", "Shelf", 54, 30, 108,
            "To the shelf's top, from the hearth or the floor."),
    _choice("shelf.height_from", "Height is from", "Shelf", HEIGHTS_FROM,
            "Where the tape's hook sits for the shelf height."),
    _length("shelf.thickness", "Thickness", "Shelf", 2, 0.75, 6, "Top to underside."),
    _length("shelf.depth", "Depth", "Shelf", None, 1, 32,
            "From the masonry to the front edge; typing it sets the front overhang.", linked=True),
    _length("shelf.overhang_front", "Overhang, front", "Shelf", 3, 0, 16, "Past the foremost part below."),
    _length("shelf.overhang_end", "Overhang, ends", "Shelf", 3, 0, 24,
            "Past the column's outer side, each end."),
    _length(
        "shelf.overhang_left",
        "Overhang, left only",
        "Shelf",
        None,
        0,
        24,
        "Where the left end must differ, for a window or a wall; empty when alike.",
        optional=True,
    ),
    _length(
        "shelf.overhang_right",
        "Overhang, right only",
        "Shelf",
        None,
        0,
        24,
        "Where the right end must differ, for a window or a wall; empty when alike.",
        optional=True,
    ),
    _length("shelf.step", "Step over the columns", "Shelf", 0, 0, 4,
            "How far the front breaks forward over each column and its overhangs; 0 runs straight."),
    _length("shelf.edge_height", "Edge band height", "Shelf", 2, 0.5, 8,
            "Mitred strip round the front and ends."),
    _choice("shelf.edge_profile", "Edge section", "Shelf",
            {"square": "Square"} | list_choices(Use.SHELF_EDGE),
            "What is worked on the edge band's lower edge."),
    _length("shelf.edge_size", "Edge section height", "Shelf", 0.75, 0.25, 6,
            "How high up the edge band it reaches.", 0.0625),
    _yes_no("over.on", "Overmantel", "Overmantel", False, "A framed field on the shelf, against the wall."),
    _choice("over.reach", "Reaches up to", "Overmantel", OVER_REACHES, "Where the field ends."),
    _length("over.height", "Height", "Overmantel", 30, 6, 120, "Over the shelf's top."),
    _length("over.projection", "Projection", "Overmantel", 1.5, 0.75, 12,
            "From what is behind it to its face."),
    _length("over.stile", "Stile width", "Overmantel", 3, 1.25, 12, "Upright members of its frame."),
    _length("over.rail", "Rail width", "Overmantel", 3, 1.25, 12, "Level members of its frame."),
    _count("over.panels", "Panels", "Overmantel", 3, 1, 5, "Panels side by side."),
    *_moulding("bed_mould", Use.BED_MOULD, True, 1.5, 0.5, 5,
               "A moulding in the angle under the shelf.",
               "Its height; how far it comes forward follows from its section."),
    *_moulding("capital", Use.CAPITAL, False, 2, 0.5, 6,
               "A moulding round each column below the frieze, returned to the masonry.",
               "Its height, up to the frieze's lower edge."),
    *_moulding("plinth_cap", Use.PLINTH_CAP, False, 0.75, 0.25, 4,
               "A moulding on each plinth round its column, returned to the masonry.",
               "Its height over the plinth."),
    *_moulding("panel_mould", Use.PANEL_MOULD, False, 0.625, 0.25, 2,
               "A mitred frame inside each panel opening.",
               "Its width on the panel, as seen from the front."),
    *_moulding("back_band", Use.BACK_BAND, False, 1, 0.25, 4,
               "A moulding on the facing along the surround's inner edge.",
               "Its width on the facing."),
    _own_section("own_section.first", 1),
    _own_section("own_section.second", 2),
    _own_section("own_section.third", 3),
    _yes_no("slip.on", "Inner slip", "Slip", False,
            "A flat frame on the facing inside columns and frieze, behind the plinths."),
    _length("slip.width", "Width", "Slip", 2, 0.5, 12, "On the facing, inwards from the surround's edge."),
    _length("slip.thickness", "Thickness", "Slip", 0.5, 0.25, 1, "How far it stands off the facing.", 0.0625),
    _length("nailer.width", "Width", "Nailers", 1.5, 0.75, 3.5,
            "Face of each upright fixed to the masonry inside a column."),
    _length("nailer.clearance", "Free each side", "Nailers", 0, 0, 0.25,
            "Left between a nailer and the wood beside it, so that the box slides over it.", 0.0625),
    _length("nailer.ledger", "Ledger height", "Nailers", 3.5, 0.75, 7.25,
            "Strip under the shelf; at most half of what the frieze hides."),
    _length("nailer.cleat", "Cleat height", "Nailers", 1.5, 0.75, 5.5,
            "Strip behind the frieze's lower edge; at most half of what the frieze hides."),
    Parameter("anchor.tension", "Pull on one", "Anchors", Kind.NUMBER, SOFT_TENSION.value,
              "What one anchor may be pulled with; after a pull test, a fifth of what it held.",
              5, 2000, 10, measure=POUND, sourced=SOFT_TENSION),
    Parameter("anchor.shear", "Shear on one", "Anchors", Kind.NUMBER, SOFT_SHEAR.value,
              "What one anchor may carry downwards; after a test, a fifth of what it held.",
              5, 2000, 10, measure=POUND, sourced=SOFT_SHEAR),
    _work_length("anchor.edge", "Least from an edge", "Anchors",
                 "From the opening and from the masonry's own edges to an anchor.", EDGE, 1.25, 12, 0.25),
    _work_length("anchor.spacing", "Most apart", "Anchors", "Between anchors along one nailer.",
                 SPACING, 4, 32, 1),
    _work_length("anchor.lintel", "Free over the opening", "Anchors",
                 "Height over the opening's top that is left to its lintel.", LINTEL, 0, 24, 0.5),
    Parameter("cord.on", "Cord way", "Cord way", Kind.YES_NO, False,
              "A way for cords inside the surround, with holes at its foot and through the shelf."),
    _choice("cord.place", "Runs in", "Cord way", CORD_PLACES, "Where the cords run."),
    _choice("cord.plug", "Largest plug", "Cord way", PLUGS,
            "The largest thing that must pass; it sizes the holes."),
    _length("cord.own_width", "Own plug, width", "Cord way", 1.5, 0.125, 4,
            "Of the plug that was measured, where it is in no table.", 0.0625),
    _length("cord.own_height", "Own plug, height", "Cord way", 1, 0.125, 4,
            "Of the plug that was measured, where it is in no table.", 0.0625),
    _work_length("cord.clearance", "Hole wider by", "Cord way", "Over the plug's diagonal.",
                 HOLE_CLEARANCE, 0, 1, 0.0625),
    _length("cord.exit_height", "Lower hole over the foot", "Cord way", 12, 2, 36,
            "Middle of the hole in a column's outer side, from where the column stands."),
    _work_length("cord.panel_clearance", "Loose panel, free each side", "Cord way",
                 "Between the panel that lifts out and what frames it.",
                 PANEL_CLEARANCE, 0.03125, 0.25, 0.03125),
    _length("board.thickness", "Thickness", "Boards", 0.75, 0.5, 1,
            "The dressed boards as measured.", 0.03125),
    _choice("board.species", "Species", "Boards", SPECIES, "The wood of the boards."),
    _choice("board.match", "Matching grain", "Boards", MATCHES,
            "What is cut out of one board, end to end, so that its grain matches."),
    _rate("rates.moisture", "Moisture content", "What the boards hold when they are lifted.",
          rates.MOISTURE, PERCENT, 4, 19, 1),
    _rate("rates.primer_coverage", "Primer coverage", "What a gallon of primer covers once.",
          rates.PRIMER_COVERAGE, COVERAGE, 50, 1000, 10),
    _coats("rates.primer_coats", "Primer coats", "Coats on every face of every board.", rates.PRIMER_COATS),
    _rate("rates.top_coverage", "Top coat coverage", "What a gallon of top coat covers once.",
          rates.TOP_COVERAGE, COVERAGE, 50, 1000, 10),
    _coats("rates.top_coats", "Top coats", "Coats on the faces that show.", rates.TOP_COATS),
    _rate("rates.coat_loss", "Coating lost", "What stays in brush, roller and can, or in the air.",
          rates.COAT_LOSS, PERCENT, 0, 70, 5),
    _rate("rates.glue_film", "Glue film", "How thick glue is spread, wet, on one of the two faces.",
          rates.GLUE_FILM, MIL, 1, 40, 1),
    _rate("rates.glue_loss", "Glue lost", "What is squeezed out and wiped off.",
          rates.GLUE_LOSS, PERCENT, 0, 70, 5),
    _rate("rates.caulk_cartridge", "Caulk cartridge", "What one cartridge holds.",
          rates.CAULK_CARTRIDGE, FLUID_OUNCE, 1, 40, 0.1),
    _rate("rates.caulk_loss", "Caulk lost", "What is wiped off or stays in the nozzle.",
          rates.CAULK_LOSS, PERCENT, 0, 70, 5),
    _work_length("rates.bead_wood", "Bead, wood to wood", "Rates", "Leg of the fillet in an inside corner.",
                 rates.BEAD_WOOD, 0.0625, 0.5, 0.0625),
    _work_length("rates.bead_masonry", "Bead, wood to masonry", "Rates",
                 "Leg of the fillet along masonry and wall.", rates.BEAD_MASONRY, 0.0625, 1, 0.0625),
    _rate("rates.nail_factor", "Nail length", "In thicknesses of the piece that is nailed on.",
          rates.NAIL_FACTOR, BARE, 2, 4, 0.5),
    _work_length("rates.nail_spacing", "Nails apart", "Rates", "Most between finish nails along a piece.",
                 rates.NAIL_SPACING, 4, 32, 1),
    _work_length("rates.brad_spacing", "Brads apart", "Rates", "Most between brads along a panel's edge.",
                 rates.BRAD_SPACING, 2, 16, 1),
    _rate("rates.filler_loss", "Filler lost", "What is sanded off, over what the holes and seams hold.",
          rates.FILLER_LOSS, PERCENT, 0, 400, 25),
    _rate("rates.abrasive_disc", "Area to a disc", "What one abrasive disc sands before it is dull.",
          rates.ABRASIVE_DISC, SQ_FT, 1, 100, 1),
    _coats("rates.abrasive_grits", "Grits on bare wood", "Sandings before the first coat.",
           rates.ABRASIVE_GRITS),
    _coats("rates.frame_screws", "Screws to a frame joint", "Pocket screws where a rail meets a stile.",
           rates.FRAME_SCREWS),
    _rate("rates.hole_width", "Nail hole, wide", "What a set nail leaves to be filled.",
          rates.HOLE_WIDTH, INCH, 0.02, 0.5, 0.01),
    _rate("rates.hole_depth", "Nail hole, deep", "How deep nails are set below the face.",
          rates.HOLE_DEPTH, INCH, 0.02, 0.5, 0.01),
    _rate("rates.seam", "Seam", "How wide and deep a flush seam is before it is filled.",
          rates.SEAM, INCH, 0, 0.25, 0.01),
    Parameter("rates.tape_sides", "Taped sides", "Rates", Kind.COUNT, int(rates.TAPE_SIDES.value),
              "Sides of a loose panel that carry hook-and-loop tape, the longer first.", 1, 4, 1,
              sourced=rates.TAPE_SIDES),
    _work_length("allow.scribe", "Scribe stock", "Cutting", "Left on edges and ends that are fitted on site.",
                 rates.SCRIBE, 0, 2, 0.0625),
    _work_length("allow.trim_end", "Trim, each end", "Cutting", "Left on each end until the last cut.",
                 rates.TRIM_END, 0, 4, 0.125),
    _work_length("allow.trim_edge", "Trim, each edge", "Cutting", "Left on each edge until the last rip.",
                 rates.TRIM_EDGE, 0, 0.5, 0.0625),
    _work_length("allow.glue_length", "Glue-up, longer", "Cutting",
                 "Left on the length of what is glued up until it is dry.", rates.GLUE_LENGTH, 0, 4, 0.125),
    _work_length("allow.glue_width", "Glue-up, wider", "Cutting",
                 "Left on the width of what is glued up until it is dry.", rates.GLUE_WIDTH, 0, 2, 0.125),
    _saw("saw.shoe_left", "Shoe left of the blade", Kind.LENGTH,
         "Left edge of the shoe to the blade, seen from behind; leave empty when not measured.",
         rates.SHOE_LEFT, 0.25, 12),
    _saw("saw.shoe_right", "Shoe right of the blade", Kind.LENGTH,
         "Right edge of the shoe to the blade, seen from behind; leave empty when not measured.",
         rates.SHOE_RIGHT, 0.25, 12),
    _saw("saw.kerf", "Kerf", Kind.NUMBER, "Width of its cut; leave empty when not measured.",
         rates.KERF, 0.02, 0.25),
    *_piece("piece_one", "first"),
    *_piece("piece_two", "second"),
)
# fmt: on
BY_PATH: dict[str, Parameter] = {row.path: row for row in TABLE}


def find_parameter(path: str) -> Parameter:
    """The row for `path`. Raises Refused, with the nearest paths, when there is none."""
    if path in BY_PATH:
        return BY_PATH[path]
    near = get_close_matches(path, BY_PATH, n=2)
    hint = f"write {' or '.join(near)}" if near else "write a path such as opening.width"
    raise Refused("parameter", path, hint)
