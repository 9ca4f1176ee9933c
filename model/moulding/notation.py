"""A section as text, one line for each element, so that anyone can write one down and keep it.

::

    name Cove and fillets
    fillet 3/16 down, 3/16 back
    cavetto 1 1/8 down, 1 1/8 back
    fillet 3/16 down
    foot 3/16

The face is read from the seat on: from under the shelf down, or from the plinth up. ``down`` leads away
from the seat, ``back`` towards the wall, ``out`` away from it. ``foot`` is what is left between the end
of the face and the wall. A sprung moulding says ``sprung 38, 5/8 thick``: the degrees from the wall to
its back, and its thickness square to it. Sizes are read as off a tape, bare numbers in inches.
"""

from __future__ import annotations

import re
from functools import lru_cache
from math import hypot

from model.board import Point2
from model.errors import Refused, steers
from model.moulding.elements import CURVED, DRAWN, HALF_ROUND, Element, Shape
from model.moulding.outline import HAIR
from model.moulding.section import Section, back_contacts, thinnest
from model.units import INCHES, LengthStyle, format_length, parse_length

MOST_ELEMENTS = 60
LARGEST = 12.0
"""Largest size in a section, in. Shop choice."""
SMALLEST = 1e-4
"""Smallest height of an element, in. Shop choice."""
LEAST_HEIGHT = 0.125
"""Lowest moulding, in. Shop choice."""
LEAST_WOOD = 1 / 16
"""Least wood between a sprung back and the face, in. Shop choice."""
LEAST_SPRING, MOST_SPRING = 15.0, 75.0
"""Degrees a back may be sprung. Shop choice; 38 and 45 are usual."""
LONGEST_NAME = 60
DECIMALS = 9
"""Of an inch that a text can say."""
UNNAMED = "Own section"
CHECK_SAGITTA = 1 / 64
"""Fine enough to see whether a face crosses itself, in."""

_WAYS = {"down": ("down", 1), "up": ("down", -1), "back": ("back", 1), "out": ("back", -1)}
_SIZE = re.compile(r"\s*,?\s*([^a-z,]*(?:mm|cm|in\.?)?\s*)\b(down|up|back|out|radius|thick)\b\s*")
_EXAMPLES = {
    Shape.FILLET: "fillet 1/8 down, 1/8 back",
    Shape.BEAD: "bead 3/8 down",
    Shape.TORUS: "torus 3/4 down",
    Shape.SCOTIA: "scotia 3/4 down, 1/4 out",
    Shape.ROUND: "round 3/4 down, 1/2 back, 1 radius",
    Shape.HOLLOW: "hollow 3/4 down, 1/2 back, 1 radius",
}
_ONCE = ("name", "flat", "sprung", "seat", "foot")
_SIXTY_FOURTHS = LengthStyle(INCHES, 64)


@lru_cache(maxsize=64)
def parse_section(text: str, field: str = "section") -> Section:
    """The section that `text` says; lines end at a line break or a semicolon.

    Raises Refused naming the line, what was read and what is wanted, or what is wrong with the whole.
    """
    draft = _Draft(field)
    lines = [line.partition("#")[0].strip() for line in re.split(r"[;\n]", text)]
    for number, line in enumerate(lines, start=1):
        if line:
            draft.read(line, number)
    section = draft.finish(text)
    check_section(section, field)
    return section


class _Draft:
    """A section while its lines are read."""

    def __init__(self, field: str) -> None:
        self.field = field
        self.number = 0
        self.name = UNNAMED
        self.elements: list[Element] = []
        self.edges: dict[str, float] = {}
        self.spring = self.thickness = 0.0
        self.said: set[str] = set()

    def read(self, line: str, number: int) -> None:
        """Take in one line. Raises Refused."""
        self.number = number
        words = " ".join(line.lower().split())
        first = words.split(" ", 1)[0]
        rest = words[len(first) :].strip()
        if first in _ONCE:
            if first in self.said:
                raise self._refusal(line, f"{first} stands twice; keep one of them")
            self.said.add(first)
        if first == "name":
            self.name = self._read_name(line)
        elif first == "flat":
            self.spring = self.thickness = 0.0
        elif first == "sprung":
            self.spring, self.thickness = self._read_spring(line, rest)
        elif first in ("foot", "seat"):
            self.edges[first] = self._length(line, rest, f"{first} 1/8")
        else:
            self.elements.append(self._read_element(line, words))

    def _refusal(self, line: str, wanted: str) -> Refused:
        return Refused(self.field, line, f"line {self.number}: {wanted}")

    def _read_name(self, line: str) -> str:
        name = " ".join(line.split()[1:])
        if not 0 < len(name) <= LONGEST_NAME:
            raise self._refusal(line, f"write a name of 1 to {LONGEST_NAME} characters after it")
        return name

    def _read_spring(self, line: str, rest: str) -> tuple[float, float]:
        wanted = (
            f"write the degrees from the wall to the back, {LEAST_SPRING:g} to {MOST_SPRING:g}, and the "
            "thickness, such as sprung 38, 5/8 thick"
        )
        found = re.fullmatch(r"(\d+(?:\.\d+)?) ?°? ?(?:degrees)? ?, ?(.*) thick", rest)
        if found is None or not LEAST_SPRING <= float(found[1]) <= MOST_SPRING:
            raise self._refusal(line, wanted)
        return float(found[1]), self._length(line, found[2], "sprung 38, 5/8 thick")

    def _read_element(self, line: str, words: str) -> Element:
        shape = next((s for s in _longest_first() if words == s or words.startswith(f"{s} ")), None)
        if shape is None:
            raise self._refusal(
                line,
                "begin with name, flat, sprung, seat, foot or an element: " + ", ".join(Shape),
            )
        if len(self.elements) >= MOST_ELEMENTS:
            raise self._refusal(line, f"at most {MOST_ELEMENTS} elements are taken")
        example = _EXAMPLES.get(shape, f"{shape} 3/4 down, 3/4 back")
        rest, long = words[len(shape) :], False
        if rest.endswith(" the long way"):
            rest, long = rest.removesuffix(" the long way"), True
        sizes = self._read_sizes(line, rest, example)
        element = Element(
            shape, sizes.pop("down", 0.0), sizes.pop("back", 0.0), sizes.pop("radius", 0.0), long
        )
        fault = _find_fault(element)
        if fault or sizes:
            raise self._refusal(line, f"{fault or 'only down, back or out'}, such as {example}")
        return element

    def _read_sizes(self, line: str, rest: str, example: str) -> dict[str, float]:
        sizes: dict[str, float] = {}
        at = 0
        while at < len(rest):
            found = _SIZE.match(rest, at)
            way = _WAYS.get(found[2], (found[2], 1)) if found else ("", 0)
            if found is None or way[0] in sizes:
                raise self._refusal(line, f"write each size once, with its way, such as {example}")
            sizes[way[0]] = way[1] * self._length(line, found[1], example)
            at = found.end()
        return sizes

    def _length(self, line: str, text: str, example: str) -> float:
        try:
            value = parse_length(text.strip())
        except Refused:
            raise self._refusal(line, f"write sizes as off a tape, such as {example}") from None
        if value > LARGEST:
            raise self._refusal(line, f"no size may be over {LARGEST:g} in.")
        return round(value, DECIMALS)

    def finish(self, text: str) -> Section:
        """The section read. Raises Refused when its edges cannot be as said."""
        if not self.elements:
            raise Refused(
                self.field, text, "write one line for each element, such as cavetto 3/4 down, 3/4 back"
            )
        back = sum(element.back for element in self.elements)
        foot = self.edges.get("foot", self.edges["seat"] - back if "seat" in self.edges else 0.0)
        if len(self.edges) == 2 and abs(self.edges["seat"] - back - foot) > 1e-6:
            raise Refused(
                self.field,
                text,
                f"seat and foot differ by {_size_text(abs(back))} by the elements; write one of them",
            )
        return Section(self.name, tuple(self.elements), foot, self.spring, self.thickness)


def _longest_first() -> list[Shape]:
    return sorted(Shape, key=len, reverse=True)


def _find_fault(element: Element) -> str:
    """What is wrong with an element's sizes, empty when they will do."""
    shape, down, back = element.shape, element.down, element.back
    if shape in DRAWN:
        reach = hypot(down, back)
        if reach < SMALLEST:
            return "write how far it goes"
        if shape is not Shape.LINE and element.radius < reach / 2 - 1e-6:
            return f"a radius of at least {_size_text(reach / 2)} reaches from end to end; write one"
        return "only arcs have a radius" if shape is Shape.LINE and element.radius else ""
    if element.radius or element.long:
        return "only round and hollow have a radius; write how far it goes"
    if down < SMALLEST:
        return "write how far down it goes"
    if shape in HALF_ROUND and back:
        return "a half circle ends right below where it began; write its height alone"
    if shape in CURVED and abs(back) < SMALLEST:
        return "write how far back or out it leads as well"
    if shape is Shape.SCOTIA and abs(back) > down - 2 * SMALLEST:
        return "its foot must lead out by less than its height"
    return ""


def check_section(section: Section, field: str = "section") -> None:
    """Raise Refused when no wood can have that section, saying what to change."""
    if clean_name(section.name) != section.name:
        raise Refused(field, section.name, "write its name without line breaks, semicolons and #")
    for element in section.elements:
        fault = _find_fault(element)
        if fault:
            raise Refused(field, format_element(element), fault)
    if not LEAST_HEIGHT <= section.height <= LARGEST:
        raise Refused(
            field,
            section.name,
            f"make it {_size_text(LEAST_HEIGHT)} to {_size_text(LARGEST)} in. high; "
            f"its elements add up to {_size_text(section.height)} in.",
        )
    if section.foot < -HAIR or section.seat < SMALLEST:
        part = "foot" if section.foot < -HAIR else "seat"
        raise Refused(
            field, section.name, f"its {part} would lie behind the wall; write a larger foot or seat"
        )
    if section.is_sprung:
        _check_back(section, field)
    points, _ = section.outline.facet(CHECK_SAGITTA)
    left, low, right, high = section.outline.bounds
    if high > 1e-6 or low < -section.height - 1e-6 or left < -1e-6:
        raise Refused(
            field, section.name, "its face runs past its seat, its foot or the wall; keep it between"
        )
    if right > LARGEST:
        raise Refused(field, section.name, f"keep it within {_size_text(LARGEST)} in. of the wall")
    if _crosses_itself(points):
        raise Refused(field, section.name, "its outline crosses itself; make the element before smaller")


def _check_back(section: Section, field: str) -> None:
    level, plumb = back_contacts(section)
    if level < LEAST_WOOD or plumb < LEAST_WOOD:
        raise Refused(field, section.name, "it is so thick that its back is a solid corner; write flat")
    if level > section.seat - LEAST_WOOD or plumb > section.height - LEAST_WOOD:
        raise Refused(
            field, section.name, "its back leaves nothing to lie against seat and wall; make it thicker"
        )
    if thinnest(section) < LEAST_WOOD:
        raise Refused(field, section.name, "its face comes through its back; make it thicker")


def clean_name(text: str) -> str:
    """`text` as far as it can be a section's name."""
    seen = "".join(" " if c in ";#" or steers(c) else c for c in text)
    return " ".join(seen.split())[:LONGEST_NAME].rstrip() or UNNAMED


def _crosses_itself(points: tuple[Point2, ...]) -> bool:
    from shapely import Polygon  # takes a while to load; not before a section is read

    return not Polygon(points).is_valid


def format_section(section: Section) -> str:
    """Text that `parse_section` reads back as the same section, as long as sizes have 9 decimals."""
    lines = [f"name {section.name}"]
    if section.is_sprung:
        lines.append(f"sprung {section.spring:.9g}, {_size_text(section.thickness)} thick")
    lines += [format_element(element) for element in section.elements]
    if section.foot:
        lines.append(f"foot {_size_text(section.foot)}")
    return "\n".join(lines) + "\n"


def format_element(element: Element) -> str:
    """One element's line."""
    sizes = [
        f"{_size_text(abs(size))} {way}"
        for size, way in (
            (element.down, "down" if element.down > 0 else "up"),
            (element.back, "back" if element.back > 0 else "out"),
            (element.radius, "radius"),
        )
        if size
    ]
    return f"{element.shape} {', '.join(sizes)}" + (" the long way" if element.long else "")


def _size_text(size: float) -> str:
    """``1 1/8`` where it is on a rule in 64ths, else decimals; bare, since bare numbers are inches."""
    if float(size * 64).is_integer():
        return format_length(size, _SIXTY_FOURTHS).rstrip('"')
    return f"{size:.{DECIMALS}f}".rstrip("0").rstrip(".") or "0"
