"""Pictures of a tape held to the fireplace. Where it goes stands in render.tapes."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from math import hypot

from model.job import Job, read_value
from model.parameters import Kind, find_parameter
from model.site import Bolt, Site
from model.surround import Surround
from model.units import format_length
from render.board_outline import outline_board
from render.clipping import clip_drawing
from render.drawing import MM, Anchor, Drawing, Fill, Lines, Mark, Pen, Point, Polyline, Region, Text
from render.extent import Box, box_of, box_ring
from render.lettering import text_width
from render.picture_frame import FieldPicture, draw_box, fit_ratio, frame_around
from render.site_scene import WALL_DEPTH, Scene, draw_scene, scene_box
from render.stand_ins import fill_in
from render.tapes import Stretch, Tape, find_tape, first_pair, pair_boxes, set_box

CAPITALS = 2.5 * MM
"""Inches on paper: the smallest that reads on paper (ISO 3098 nominal size)."""
TICK = 0.06
"""Half a tick at the tape's end, inches on paper."""
NEAR, NEAREST, TINY = 24.0, 10.0, 1.5
"""Inches of the site that are shown round a small measure, and round one smaller than TINY."""
UNKNOWN = "?"
AS_IF = "Drawn as if there were one."
LARGER = "The lean is drawn larger than it is."
LEAN = 8.0
"""How much more a lean is drawn than it is."""


def draw_tape_picture(surround: Surround, path: str) -> FieldPicture | None:
    """The tape held to the fireplace for the row called `path`; None where no tape is."""
    job = surround.asked or surround.job
    filled = fill_in(job, path)
    tape = _find_tape(filled, surround, path)
    if tape is None:
        return None
    texts = _list_texts(job, path, tape, filled is not job)
    note = LARGER if path.startswith("plumb.") else AS_IF if filled is not job else ""
    return _draw_tape(filled.site, surround, path, tape, texts, note)


SHOWN = {
    "opening.width": ("readings.opening_width", 0, 0.0, 0.35),
    "opening.height": ("opening.height", 0, 0.2, 0.5),
    "facing.width": ("facing.width", 0, 0.0, 0.5),
    "facing.height": ("facing.height", 0, 0.0, 0.5),
}
"""What the picture of the whole fireplace says; which place of which row, how far to the right of it in
widths of the opening, and where along the tape it reads, so that all keep clear of each other."""


def draw_measured(surround: Surround) -> FieldPicture:
    """The fireplace from the front with its main sizes: of several readings those that govern."""
    job = surround.job
    stretches, texts, places = [], [], []
    for path, (shown, place, aside, along) in SHOWN.items():
        tape = find_tape(job.site, surround.layout, shown)
        assert tape is not None
        right = aside * job.site.opening.width
        (x0, y0), (x1, y1) = tape.stretches[place]
        stretches.append(((x0 + right, y0), (x1 + right, y1)))
        texts.append(format_length(read_value(job, path), job.about.length_style))
        places.append(along)
    tape = Tape(Scene.FRONT, tuple(stretches))
    return _draw_tape(job.site, surround, "", tape, tuple(texts), "", tuple(places))


def _find_tape(job: Job, surround: Surround, path: str) -> Tape | None:
    if not path.startswith("plumb."):
        return find_tape(job.site, surround.layout, path)
    top = job.site.facing.height
    lean = LEAN * float(read_value(job, path))
    stretch = ((0.0, top), (-lean, top)) if lean < 0 else ((-lean, 0.0), (0.0, 0.0))
    return Tape(Scene.SIDE, (stretch,))


def _list_texts(job: Job, path: str, tape: Tape, is_example: bool) -> tuple[str, ...]:
    """What is written at each stretch: the values there are."""
    row, value, style = find_parameter(path), read_value(job, path), job.about.length_style
    if row.kind is Kind.PAIRS:
        pair = tuple(format_length(each, style) for each in reversed(value[0])) if value else ()
        return pair or ("clearance", "projection")
    given = value if isinstance(value, tuple) else () if value is None or is_example else (value,)
    texts = tuple(format_length(each, style) for each in given)
    return (*texts, *(UNKNOWN for _ in tape.stretches))[: len(tape.stretches)]


def _draw_tape(
    site: Site,
    surround: Surround,
    path: str,
    tape: Tape,
    texts: tuple[str, ...],
    note: str,
    along: tuple[float, ...] = (),
) -> FieldPicture:
    """The tape before what it is held to; `along` says where on each stretch it reads, not its middle.

    Where nothing at all is near a tape that is shown from near, the whole fireplace is there beside it.
    """
    box = _frame_tape(site, tape)
    ratio = fit_ratio(box)
    ground = [*draw_scene(site, tape.scene), *_list_extras(site, surround, path, tape, box)]
    clipped = clip_drawing(Drawing(tuple(ground), ratio), box)
    if tape.near and not clipped.marks:
        return _draw_tape(site, surround, path, replace(tape, near=False), texts, note, along)
    places = along or (0.5,) * len(texts)
    marks = [
        mark
        for stretch, text, place in zip(tape.stretches, texts, places, strict=True)
        for mark in draw_stretch(stretch, text, ratio, path, place)
    ]
    return FieldPicture(clipped, Drawing(tuple(marks), ratio), note)


def _frame_tape(site: Site, tape: Tape) -> Box:
    """The tape and the whole fireplace, or only what is about it."""
    x0, y0, x1, y1 = box_of([point for stretch in tape.stretches for point in stretch])
    if tape.near:
        size = max(x1 - x0, y1 - y0)
        return frame_around((x0, y0, x1, y1), size, NEAREST if size < TINY else NEAR)
    a0, b0, a1, b1 = scene_box(site, tape.scene)
    return min(a0, x0 - 2), min(b0, y0 - 2), max(a1, x1 + 2), max(b1, y1 + 2)


def draw_stretch(stretch: Stretch, text: str, ratio: float, path: str, along: float = 0.5) -> Iterator[Mark]:
    """A line from end to end, a tick at each, and what it reads `along` it, 0 to 1, on a plate of paper."""
    (x0, y0), (x1, y1) = stretch
    long = hypot(x1 - x0, y1 - y0) or 1.0
    across = (-(y1 - y0) / long * TICK * ratio, (x1 - x0) / long * TICK * ratio)
    ticks = tuple((x - across[0], y - across[1], x + across[0], y + across[1]) for x, y in stretch)
    yield Lines(Pen.DIMENSION, ((x0, y0, x1, y1), *ticks), path)
    yield from _write(text, (x0 + (x1 - x0) * along, y0 + (y1 - y0) * along), stretch, ratio, path)


def _write(text: str, at: Point, stretch: Stretch, ratio: float, path: str) -> Iterator[Mark]:
    """On the line where there is room, else beside it."""
    height, width = CAPITALS * ratio, text_width(text, CAPITALS * ratio)
    (x0, y0), (x1, y1) = stretch
    x, y = at
    if abs(x1 - x0) >= abs(y1 - y0):
        if abs(x1 - x0) < width + 6 * TICK * ratio:
            y += height + 2 * TICK * ratio
    elif abs(y1 - y0) < height + 6 * TICK * ratio:
        x += width / 2 + 3 * TICK * ratio
    clear = 0.4 * height
    plate = (x - width / 2 - clear, y - height / 2 - clear, x + width / 2 + clear, y + height / 2 + clear)
    yield Region(Fill.PAPER, (box_ring(plate),), path)
    yield Text(text, (x, y - height / 2), height, Anchor.MIDDLE, pen=Pen.DIMENSION, stands_for=path)


def _list_extras(site: Site, surround: Surround, path: str, tape: Tape, box: Box) -> Iterator[Mark]:
    """What a measure is taken from beside the fireplace itself."""
    group = path.split(".")[0]
    if group == "level" and site.level.centre is not None:
        yield Lines(Pen.CENTRE, ((box[0], site.level.centre, box[2], site.level.centre),))
    elif group == "plumb":
        yield from _draw_lean(site, path)
    elif group == "tv":
        yield from _draw_set(site, surround, tape.scene)
    elif group.startswith("bolt_") and not tape.near:
        yield from _point_at(getattr(site, group))
    elif group in ("chart", "local") and tape.scene in (Scene.SIDE, Scene.ABOVE):
        yield from _draw_pair(site, group, path, tape.scene)


def _point_at(bolt: Bolt) -> Iterator[Mark]:
    """A cross on a bolt, which is too small to be seen on the whole fireplace."""
    x, y, arm = bolt.across or 0.0, bolt.up, 1.5
    yield Lines(Pen.OUTLINE, ((x - arm, y, x + arm, y), (x, y - arm, x, y + arm)))


def _draw_lean(site: Site, path: str) -> Iterator[Mark]:
    """The facing beside the opening as it leans, and a plumb line down its height."""
    top, lean = site.facing.height, LEAN * (getattr(site.plumb, path.split(".")[1]) or 0.0)
    back = site.facing.proud + WALL_DEPTH
    ring = ((0.0, 0.0), (-lean, top), (back, top), (back, 0.0))
    yield Region(Fill.MASONRY, (ring,))
    yield Polyline(Pen.OUTLINE, ring, closed=True)
    plumb = -max(lean, 0.0)
    yield Lines(Pen.CENTRE, ((plumb, 0.0, plumb, top + 4.0),))


def _draw_set(site: Site, surround: Surround, scene: Scene) -> Iterator[Mark]:
    """The surround in outline and the set over it."""
    view = "front" if scene is Scene.FRONT else "side"
    yield from _outline_boards(surround, view)
    x0, y0, x1, y1 = set_box(site, surround.layout)
    if scene is Scene.SIDE:
        x0, x1 = -3.0, -1.0
    yield from draw_box(Fill.BAND, (x0, y0, x1, y1), Pen.OUTLINE)


def _draw_pair(site: Site, group: str, path: str, scene: Scene) -> Iterator[Mark]:
    """A piece of wood as a row of the chart has it."""
    if path.split(".")[1] not in ("shelf", "shelf_hood", "legs", "plus", "greatest"):
        return
    own = site.chart if group == "chart" else site.local
    table = own.legs if scene is Scene.ABOVE else own.shelf
    if path == "chart.shelf_hood":
        table = site.chart.shelf_hood
    yield from draw_box(Fill.CUT_WOOD, pair_boxes(site, first_pair(table))[scene], Pen.OUTLINE)


def _outline_boards(surround: Surround, view: str) -> Iterator[Mark]:
    for board in surround.boards:
        yield Polyline(Pen.ARRIS, outline_board(board, view), closed=True)
