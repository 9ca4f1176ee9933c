"""One function for each sort of row that there is more than once."""

from __future__ import annotations

from collections.abc import Mapping

from model.measures import BARE, HOUR, INCH, Measure
from model.moulding.library import Use, list_choices
from model.reference.sourced import Sourced
from model.rows.row import Kind, Parameter
from model.rows.words import PIECE_USES


def length(
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
    """A length, inches; an `optional` one may be None, a `linked` one is another row's value once more."""
    default = None if default is None else float(default)
    return Parameter(path, label, group, Kind.LENGTH, default, help, low, high, step, None, optional, linked)


SMALLEST = "Readings at other places, parted by commas; the smallest of all governs."
LARGEST = "Readings at other places, parted by commas; the largest of all governs."


def readings(path: str, label: str, group: str, low: float, high: float, help: str) -> Parameter:
    """Further readings of a size, none to begin with."""
    return Parameter(path, label, group, Kind.READINGS, (), help, low, high)


def optional(path: str, label: str, group: str, low: float, high: float, help: str) -> Parameter:
    """A length that may be left empty, and is to begin with."""
    return length(path, label, group, None, low, high, help, optional=True)


def yes_no(path: str, label: str, group: str, default: bool, help: str) -> Parameter:
    return Parameter(path, label, group, Kind.YES_NO, default, help)


def count(path: str, label: str, group: str, default: int, low: int, high: int, help: str) -> Parameter:
    return Parameter(path, label, group, Kind.COUNT, default, help, low, high, 1)


def bolt(path: str, which: str) -> tuple[Parameter, ...]:
    """The rows of a bolt that was left in the masonry."""
    group, cap = "Obstacles", which.capitalize()
    return (
        optional(f"{path}.across", f"{cap} bolt, across", group, -120, 120,
                  "From the centre line to the middle of a bolt or stud left in the masonry, less than "
                  "nothing on the left; leave empty when there is none."),
        length(f"{path}.up", f"{cap} bolt, up", group, 48, 0, 144, "Its middle over the hearth."),
        length(f"{path}.out", f"{cap} bolt, stands out", group, 1.5, 0.0625, 16,
                "From the masonry to its end.", 0.0625),
        length(f"{path}.diameter", f"{cap} bolt, diameter", group, 0.5, 0.125, 2,
                "Of its thickest part, a nut on it included.", 0.0625),
    )  # fmt: skip


def piece(path: str, which: str) -> tuple[Parameter, ...]:
    """The rows of a board that is there already."""
    group, cap = "Pieces on hand", which.capitalize()
    return (
        choice(
            f"{path}.use",
            f"{cap} piece, used for",
            group,
            PIECE_USES,
            "What a reclaimed or left-over board is used for in place of a bought one.",
        ),
        text(f"{path}.name", f"{cap} piece", group, "What the cut list calls it, such as old beam."),
        optional(f"{path}.length", "Length", group, 1, 480, "End to end, as it lies there."),
        optional(f"{path}.width", "Width", group, 0.25, 60, "What of its width is sound."),
        optional(
            f"{path}.thickness", "Thickness", group, 0.125, 16, "As measured; more than needed is planed off."
        ),
        length(
            f"{path}.clear",
            "Ends kept clear",
            group,
            0,
            0,
            60,
            "What of each end cannot be used: old nail holes, checks.",
        ),
    )


def choice(path: str, label: str, group: str, choices: Mapping[str, str], help: str) -> Parameter:
    """One of `choices`, stored words to words shown; the first is the default."""
    return Parameter(path, label, group, Kind.CHOICE, next(iter(choices)), help, choices=choices)


def moulding(
    path: str, use: Use, on: bool, size: float, low: float, high: float, what: str, how_high: str
) -> tuple[Parameter, Parameter, Parameter]:
    """The three rows of one place's moulding: `what` it is, and what its size is in the room."""
    name, group = use.capitalize(), "Mouldings"
    return (
        Parameter(f"{path}.on", name, group, Kind.YES_NO, on, what),
        choice(f"{path}.profile", "Its section", group, list_choices(use), "Its section, from the seat on."),
        length(f"{path}.size", "Its size", group, size, low, high, how_high, 0.0625),
    )


def own_section(path: str, number: int) -> Parameter:
    """The text of a section that the job brings along, empty to begin with; `number` counts from 1."""
    help = "A line for each element, such as cavetto 3/4 down, 3/4 back; inches where no unit is written."
    return Parameter(path, f"Own section {number}", "Mouldings", Kind.SECTION, "", help)


def text(path: str, label: str, group: str, help: str, default: str = "") -> Parameter:
    return Parameter(path, label, group, Kind.TEXT, default, help)


def rate(
    path: str, label: str, help: str, sourced: Sourced, measure: Measure, low: float, high: float, step: float
) -> Parameter:
    """How far a material goes, or what is lost of it; the default is a figure of the trade, in `measure`."""
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


def coats(path: str, label: str, help: str, sourced: Sourced) -> Parameter:
    """How many coats there are of something, 0 for none."""
    return Parameter(path, label, "Rates", Kind.COUNT, int(sourced.value), help, 0, 6, 1, sourced=sourced)


def hours(
    path: str, label: str, help: str, sourced: Sourced, high: float = 40.0, measure: Measure = HOUR
) -> Parameter:
    """How long work or drying takes."""
    given = sourced.value
    return Parameter(
        path, label, "Time", Kind.NUMBER, given, help, 0.0, high, 0.25, measure=measure, sourced=sourced
    )


def work_length(
    path: str, label: str, group: str, help: str, sourced: Sourced, low: float, high: float, step: float
) -> Parameter:
    """A length that is no dimension of the surround."""
    return Parameter(path, label, group, Kind.LENGTH, sourced.value, help, low, high, step, sourced=sourced)


def saw(path: str, label: str, kind: Kind, help: str, sourced: Sourced, low: float, high: float) -> Parameter:
    """A measure of the user's own saw; not known until it is measured. `sourced` is the usual one."""
    measure = INCH if kind is Kind.NUMBER else BARE
    step = 0.01 if kind is Kind.NUMBER else 0.0625
    return Parameter(
        path, label, "Saw", kind, None, help, low, high, step, None, True, measure=measure, sourced=sourced
    )


def number(
    path: str,
    label: str,
    group: str,
    sourced: Sourced,
    measure: Measure,
    low: float,
    high: float,
    step: float,
    help: str,
) -> Parameter:
    """A number with a unit that begins at a figure of the trade."""
    return Parameter(
        path,
        label,
        group,
        Kind.NUMBER,
        sourced.value,
        help,
        low,
        high,
        step,
        measure=measure,
        sourced=sourced,
    )


def optional_number(
    path: str, label: str, group: str, low: float, high: float, step: float, help: str, measure: Measure
) -> Parameter:
    """A number that may be left empty."""
    return Parameter(
        path, label, group, Kind.NUMBER, None, help, low, high, step, optional=True, measure=measure
    )
