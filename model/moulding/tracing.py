"""A closed outline as drawn becomes a section: which side is its back, its seat, its face, of what elements.

The outline is drawn as it hangs: the wall plumb on its left, the seat level on its top, the face to the
right and below. What kind of file it comes from is no business of this one.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from math import atan2, degrees, hypot, pi, radians, sin

from model.board import Point2
from model.errors import Refused
from model.moulding.elements import Element, Shape, cyma_recta, cyma_reversa, draw_element, scotia
from model.moulding.notation import check_section
from model.moulding.outline import Arc, Line, Outline, Stroke, arc_bulged
from model.moulding.section import Section

FIELD = "section drawing"
CLOSE = 1e-4
"""Points and centres this near to each other, in inches, are meant to be one."""
DECIMALS = 6
"""Sizes are rounded to so many, of an inch: finer than any drawing program keeps them true."""
MOST_STROKES = 120
FURTHEST = 1e6
"""Inches from the drawing's origin, and the bulge of a stroke, beyond which nothing is a moulding's: what is
infinite or no number at all is beyond it too."""
AS_IT_HANGS = "draw it as it hangs: its back plumb on the left, its seat level on top"

Vertex = tuple[float, float, float]
"""x, y in inches, and the bulge of the stroke that leaves it."""


def trace_section(vertices: Sequence[Vertex], name: str) -> Section:
    """The section whose outline is the closed polyline `vertices`, either way round.

    Raises Refused where it has no plumb back or no level seat, or cannot be worked.
    """
    strokes = _clockwise(_list_strokes(vertices, name))
    left, _, _, top = Outline(strokes).bounds
    strokes = tuple(_moved(stroke, -left, -top) for stroke in strokes)
    seat = [s for s in strokes if _is_level(s) and abs(s.start[1]) < CLOSE]
    back = [s for s in strokes if _is_plumb(s) and abs(s.start[0]) < CLOSE]
    if not seat or not back:
        raise Refused(FIELD, name, AS_IT_HANGS)
    face, spring = _part(strokes, seat, back, name)
    foot = face[-1].end[0]
    section = Section(name, tuple(_name_elements(face)), _rounded(foot), spring)
    if spring:
        section = _thickened(section, back)
    check_section(section, FIELD)
    return section


def _list_strokes(vertices: Sequence[Vertex], name: str) -> tuple[Stroke, ...]:
    if not all(abs(number) <= FURTHEST for vertex in vertices for number in vertex):
        raise Refused(FIELD, name, "a point or a bend of its outline is no number that can be drawn")
    strokes: list[Stroke] = []
    for (x0, y0, bulge), (x1, y1, _) in zip(vertices, [*vertices[1:], vertices[0]], strict=True):
        if hypot(x1 - x0, y1 - y0) < CLOSE:
            continue
        start, end = (x0, y0), (x1, y1)
        strokes.append(Line(start, end) if abs(bulge) < CLOSE else arc_bulged(start, end, bulge))
    if not 3 <= len(strokes) <= MOST_STROKES:
        raise Refused(FIELD, name, f"draw a closed outline of 3 to {MOST_STROKES} strokes")
    return tuple(strokes)


def _clockwise(strokes: tuple[Stroke, ...]) -> tuple[Stroke, ...]:
    if Outline(strokes).area > 0:
        return strokes
    return tuple(_reversed(stroke) for stroke in reversed(strokes))


def _reversed(stroke: Stroke) -> Stroke:
    if isinstance(stroke, Line):
        return Line(stroke.end, stroke.start)
    return Arc(stroke.end, stroke.start, stroke.centre, -stroke.turn)


def _moved(stroke: Stroke, dx: float, dy: float) -> Stroke:
    def there(point: Point2) -> Point2:
        return (point[0] + dx, point[1] + dy)

    if isinstance(stroke, Line):
        return Line(there(stroke.start), there(stroke.end))
    return Arc(there(stroke.start), there(stroke.end), there(stroke.centre), stroke.turn)


def _is_level(stroke: Stroke) -> bool:
    return isinstance(stroke, Line) and abs(stroke.end[1] - stroke.start[1]) < CLOSE


def _is_plumb(stroke: Stroke) -> bool:
    return isinstance(stroke, Line) and abs(stroke.end[0] - stroke.start[0]) < CLOSE


def _part(
    strokes: tuple[Stroke, ...], seat: list[Stroke], back: list[Stroke], name: str
) -> tuple[list[Stroke], float]:
    """The face from the seat's outer end to the foot, and how far the back is sprung, degrees."""
    # Seat and back may each be drawn in pieces.
    innermost, outermost = min(seat, key=lambda s: s.start[0]), max(seat, key=lambda s: s.end[0])
    lowest, highest = min(back, key=lambda s: s.start[1]), max(back, key=lambda s: s.end[1])
    first = strokes.index(outermost) + 1
    onward = [*strokes[first:], *strokes[:first]]
    face = onward[: onward.index(lowest)]
    behind = onward[onward.index(highest) + 1 : onward.index(innermost)]
    if face and _is_level(face[-1]) and face[-1].end[0] < face[-1].start[0]:
        face = face[:-1]  # the foot
    if not face or len(behind) > 1 or (behind and not isinstance(behind[0], Line)):
        raise Refused(FIELD, name, f"its back must be one straight line; {AS_IT_HANGS}")
    return face, _spring(behind[0]) if behind else 0.0


def _spring(back: Stroke) -> float:
    (x0, y0), (x1, y1) = back.start, back.end
    return round(degrees(atan2(x1 - x0, y1 - y0)), 4)


def _thickened(section: Section, back: Sequence[Stroke]) -> Section:
    """`section` with its thickness, from where its back leaves the wall."""
    plumb = -max(stroke.end[1] for stroke in back)
    turn = radians(section.spring)
    reach = max(stroke.reach(-turn) for stroke in replace(section, spring=0.0).outline.strokes)
    return replace(section, thickness=_rounded(reach - plumb * sin(turn)))


def _name_elements(face: Sequence[Stroke]) -> list[Element]:
    """The face's strokes by their names, those of two strokes first."""
    elements: list[Element] = []
    i = 0
    while i < len(face):
        pair = face[i : i + 2]
        element = _name_pair(pair[0], pair[1]) if len(pair) == 2 else None
        i += 2 if element else 1
        elements.append(element or _name_stroke(pair[0]))
    return elements


def _sizes(start: Point2, end: Point2) -> tuple[float, float]:
    return _rounded(start[1] - end[1]), _rounded(start[0] - end[0])


def _rounded(size: float) -> float:
    return round(size, DECIMALS) + 0.0


def _name_pair(first: Stroke, second: Stroke) -> Element | None:
    down, back = _sizes(first.start, second.end)
    if isinstance(first, Line) and isinstance(second, Line):
        steps_back = _is_plumb(first) and _is_level(second) and down > 0 and back > 0
        steps_out = _is_level(first) and _is_plumb(second) and down > 0 and back < 0
        return Element(Shape.FILLET, down, back) if steps_back or steps_out else None
    if isinstance(first, Line) or isinstance(second, Line) or down <= 0:
        return None
    tries = [scotia(down, back)] if abs(back) < down else []
    if back:
        tries += [cyma_recta(down, back), cyma_reversa(down, back)]
    return next((e for e in tries if _is_drawn_as(e, (first, second))), None)


def _name_stroke(stroke: Stroke) -> Element:
    down, back = _sizes(stroke.start, stroke.end)
    if isinstance(stroke, Line):
        if down > 0 and not back:
            return Element(Shape.FILLET, down)
        return Element(Shape.BEVEL if down > 0 else Shape.LINE, down, back)
    shapes = (Shape.OVOLO, Shape.CAVETTO) if down > 0 and back else (Shape.BEAD,) if down > 0 else ()
    for shape in shapes:
        if _is_drawn_as(Element(shape, down, back), (stroke,)):
            return Element(shape, down, back)
    shape = Shape.HOLLOW if stroke.turn > 0 else Shape.ROUND
    radius = max(_rounded(stroke.radius), _rounded(hypot(down, back) / 2 + 10**-DECIMALS / 2))
    return Element(shape, down, back, radius, abs(stroke.turn) > pi)


def _is_drawn_as(element: Element, strokes: Sequence[Stroke]) -> bool:
    """Whether an element's arcs are those of `strokes`, to within what a drawing keeps true."""
    drawn = draw_element(element, strokes[0].start)
    return len(drawn) == len(strokes) and all(
        isinstance(one, Arc)
        and isinstance(other, Arc)
        and (one.turn > 0) == (other.turn > 0)
        and hypot(one.centre[0] - other.centre[0], one.centre[1] - other.centre[1]) < 10 * CLOSE
        and hypot(one.end[0] - other.end[0], one.end[1] - other.end[1]) < 10 * CLOSE
        for one, other in zip(drawn, strokes, strict=True)
    )
