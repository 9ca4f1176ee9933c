"""Findings of what carries and hangs drawn: sag, the pull behind a shelf, anchors, cords, a set over it."""

from __future__ import annotations

from collections.abc import Iterator
from math import radians, tan

from model.build.cord_way import plan_cord_way
from model.check.finding import Finding
from model.check.holding import WEIGHED, work_out_pull, work_out_sag
from model.check.television import Screen, place_screen
from model.reference.bending import HEAVY, LEANING
from model.reference.cautions import LOOK_UP
from model.surround import Surround
from model.takeoff.anchors import plan_anchors
from render.drawing import Anchor, Fill, Lines, Mark, Pen, Point, Polyline, Region, Segment
from render.explained_base import (
    LINE,
    draw_front,
    draw_side,
    list_boards_of,
    measure,
    stand_beside,
    write,
)
from render.extent import box_ring
from render.symbols import circle_points

ARROW = 0.25
"""Height of an arrow for a load, inches on paper."""
DOT = 0.05
SIDES = 16
BULGE = 0.15
"""How deep a sag is drawn, inches on paper, however small it is."""


def draw_sag_page(surround: Surround, finding: Finding, ratio: float) -> list[Mark]:
    """The shelf with its load, how it would bend, and the span between the columns."""
    layout = surround.layout
    marks = [*draw_front(surround, list_boards_of(surround, "shelf"))]
    sag = work_out_sag(surround)
    if sag is None:
        return marks
    low, high = -layout.left.inner_top, layout.right.inner_top
    top, under = layout.shelf_top, layout.shelf_bottom
    for i in range(9):
        marks.append(_arrow((low + (high - low) * i / 8, top), ratio))
    said = f"{surround.job.design.shelf.load:g} lb per ft and its own weight"
    sags = sag.first
    if finding.check == WEIGHED:
        said, sags = f"{said}; {HEAVY.value:g} lb at the middle", sag.weighed
        marks.append(_arrow(((low + high) / 2, top), ratio, Pen.OUTLINE))
    marks.append(write(said, ((low + high) / 2, top + (ARROW + 0.12) * ratio), ratio))
    bend = [(low + (high - low) * i / 16, under - BULGE * ratio * _bend(i / 16)) for i in range(17)]
    marks.append(Polyline(Pen.CLEARANCE, tuple(bend)))
    line = layout.floor - LINE * ratio
    said = f"{sags:.3f} in. at first, drawn larger"
    marks.append(write(said, ((low + high) / 2, line - 1.6 * LINE * ratio), ratio, pen=Pen.CLEARANCE))
    marks.append(measure(surround, (low, under), (high, under), False, line, ratio))
    return marks


def _bend(t: float) -> float:
    """A beam's line under an even load, 1 in the middle: its equation over its middle's."""
    return 16 / 5 * (t - 2 * t**3 + t**4)


def _arrow(at: Point, ratio: float, pen: Pen = Pen.DIMENSION) -> Lines:
    """A load that points down to `at`."""
    x, y = at
    tall, head = ARROW * ratio, 0.06 * ratio
    strokes: tuple[Segment, ...] = (
        (x, y + tall, x, y),
        (x, y, x - head / 2, y + head),
        (x, y, x + head / 2, y + head),
    )
    return Lines(pen, strokes)


def draw_pull_page(surround: Surround, finding: Finding, ratio: float) -> list[Mark]:
    """From the side: who leans on the edge, where the shelf turns, where its screws are."""
    layout, found = surround.layout, work_out_pull(surround)
    marks = [*draw_side(surround, list_boards_of(surround, "shelf"))]
    edge, turn, back = -layout.shelf_foremost, -layout.frieze_front, -layout.shelf_back
    top = layout.shelf_top
    marks.append(_arrow((edge, top), ratio, Pen.OUTLINE))
    marks.append(write(f"{LEANING.value:g} lb", (edge, top + (ARROW + 0.05) * ratio), ratio, Anchor.MIDDLE))
    marks.append(
        write(f"{found.pull:.0f} lb up", (back + DOT * ratio, top + 0.1 * ratio), ratio, Anchor.START)
    )
    low = layout.shelf_bottom - 2 * LINE * ratio
    marks.append(measure(surround, (edge, low), (turn, low), False, layout.floor - LINE * ratio, ratio))
    marks.append(measure(surround, (turn, low), (back, low), False, layout.floor - 2 * LINE * ratio, ratio))
    return marks


def draw_anchor_page(surround: Surround, finding: Finding, ratio: float) -> list[Mark]:
    """Every anchor on the front, those that hold the top filled."""
    plan = plan_anchors(surround)
    through = {surround.marks[anchor.board] for anchor in plan.anchors}
    marks = [*draw_front(surround, through), *_draw_spots(surround, ratio, filled=True)]
    foot = min(side.lowest for side in surround.layout.sides)
    out = max(surround.layout.left.shelf_side, surround.layout.right.shelf_side) + LINE * ratio
    marks.append(measure(surround, (0.0, foot), (0.0, foot + plan.drop), True, -out, ratio))
    return marks


def draw_held_page(surround: Surround, finding: Finding, ratio: float) -> list[Mark]:
    """Every anchor on the front, and the nailers tinted that are not held."""
    return [*draw_front(surround, finding.boards), *_draw_spots(surround, ratio)]


def _draw_spots(surround: Surround, ratio: float, filled: bool = False) -> Iterator[Mark]:
    """A ring for each anchor; those that hold the top `filled`."""
    for anchor in plan_anchors(surround).anchors:
        ring = circle_points((anchor.x, anchor.y), DOT * ratio, SIDES)
        if filled and anchor.upper:
            yield Region(Fill.OPENING, (ring,))
        yield Polyline(Pen.OUTLINE, ring, True)


def draw_cord_page(surround: Surround, finding: Finding, ratio: float) -> list[Mark]:
    """Where the cords run on the front: the way dashed, its holes as lines as long as they are wide."""
    marks = [*draw_front(surround, finding.boards)]
    way = plan_cord_way(surround)
    if way is None:
        return marks
    half, (x, _) = way.diameter / 2, way.middle
    ring = box_ring(
        (x - half, min(way.low, surround.layout.shelf_bottom), x + half, surround.layout.shelf_top)
    )
    marks.append(Polyline(Pen.CLEARANCE, ring, True))
    low = surround.layout.floor - LINE * ratio
    marks.append(measure(surround, (x - half, way.low), (x + half, way.low), False, low, ratio))
    return marks


def draw_screen_page(surround: Surround, finding: Finding, ratio: float) -> list[Mark]:
    """The set on the front; from the side how one looks up to it, and how far up is advised."""
    screen = place_screen(surround)
    front = [*draw_front(surround, ())]
    if screen is None:
        return front
    floor, half = surround.layout.floor, screen.wide / 2
    box = (-half, floor + screen.foot, half, floor + screen.foot + screen.tall)
    front += [Region(Fill.OPENING, (box_ring(box),)), Polyline(Pen.OUTLINE, box_ring(box), True)]
    return stand_beside(front, _draw_sight(surround, screen, ratio), ratio)


def _draw_sight(surround: Surround, screen: Screen, ratio: float) -> Iterator[Mark]:
    floor = surround.layout.floor
    yield from draw_side(surround, ())
    foot, top = floor + screen.foot, floor + screen.foot + screen.tall
    yield Lines(Pen.SITE, ((0.0, floor, 0.0, top + 4),))
    yield Region(Fill.OPENING, (box_ring((-2.0, foot, 0.0, top)),))
    eye = (-screen.away, floor + screen.eye)
    yield Lines(Pen.GROUND, ((eye[0] - 6, floor, 2.0, floor),))
    yield Polyline(Pen.OUTLINE, circle_points(eye, DOT * ratio, SIDES), True)
    yield write("eye", (eye[0], eye[1] + 0.1 * ratio), ratio)
    yield Lines(Pen.CENTRE, ((*eye, 0.0, floor + screen.middle),))
    yield Lines(Pen.CENTRE, ((*eye, 0.0, eye[1]),))
    rise = screen.away * tan(radians(LOOK_UP.value))
    yield Lines(Pen.CLEARANCE, ((*eye, 0.0, eye[1] + rise),))
    yield measure(surround, eye, (0.0, eye[1]), False, floor - LINE * ratio, ratio)
    yield measure(surround, (0.0, floor), (0.0, floor + screen.middle), True, LINE * ratio, ratio)
    middle = (-screen.away / 2, (eye[1] + floor + screen.middle) / 2 + 0.12 * ratio)
    yield write(f"{screen.up:.1f} degrees", middle, ratio)
