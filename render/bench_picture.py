"""Pictures of what is measured at the bench: the saw, a piece that is there already, what is left on one."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from model.job import Job, read_value
from model.parameters import find_parameter
from model.surround import Surround
from render.drawing import Drawing, Fill, Lines, Mark, Pen, Region
from render.extent import Box, box_of, box_ring
from render.picture_frame import FieldPicture, draw_box, fit_ratio
from render.tape_picture import UNKNOWN, draw_stretch
from render.tapes import Stretch

SAW = "Seen from behind; the blade is drawn wider than it is."
BOARD = "Drawn shorter than it is."
BLADE, DEEP, PLATE = 0.5, 2.5, 0.25
"""The blade's width as it is drawn, how far it reaches below the shoe, and the shoe's thickness, in."""
USUAL_SHOE = (1.5, 5.0)
"""Left and right of the blade where it was not measured: invented, and no size is said of it."""
LONG, WIDE = 30.0, 8.0
"""A board as it is drawn, in.; what is left on it is drawn LEFT_ON wide."""
LEFT_ON, THICK = 3.0, 1.5


@dataclass(frozen=True, slots=True)
class _Sketch:
    """Boxes of wood and metal, what of them is picked out, where the tape goes, and what is not as it is."""

    boxes: tuple[tuple[Fill, Box], ...]
    picked: Box | None
    tape: Stretch
    note: str


def draw_bench_picture(surround: Surround, path: str) -> FieldPicture | None:
    """The picture of the row called `path`; None for what is not measured at the bench."""
    job = surround.asked or surround.job
    group, name = path.split(".")
    if group == "saw":
        sketch: _Sketch | None = _saw(job, name)
    elif group == "allow":
        sketch = _LEFT.get(name)
    else:
        sketch = _PIECE.get(name) if group in ("piece_one", "piece_two") else None
    return _draw(job, path, sketch) if sketch is not None else None


def _saw(job: Job, name: str) -> _Sketch:
    left, right = job.shop.saw.shoe_left or USUAL_SHOE[0], job.shop.saw.shoe_right or USUAL_SHOE[1]
    shoe = (-left, 0.0, right + BLADE, PLATE)
    blade = (0.0, -DEEP, BLADE, DEEP / 2)
    low = -0.5
    tapes: Mapping[str, Stretch] = {
        "shoe_left": ((-left, low), (0.0, low)),
        "shoe_right": ((BLADE, low), (BLADE + right, low)),
        "kerf": ((0.0, -DEEP + 0.4), (BLADE, -DEEP + 0.4)),
    }
    return _Sketch(((Fill.HEARTH, shoe), (Fill.MASONRY, blade)), None, tapes[name], SAW)


_BOARD: Box = (0.0, 0.0, LONG, WIDE)
_END: Box = (LONG + 4.0, 0.0, LONG + 4.0 + THICK, WIDE)
_FACE = ((Fill.WOOD, _BOARD), (Fill.CUT_WOOD, _END))
_PIECE: Mapping[str, _Sketch] = {
    "length": _Sketch(_FACE, None, ((0.0, WIDE / 2), (LONG, WIDE / 2)), BOARD),
    "width": _Sketch(_FACE, None, ((LONG * 0.8, 0.0), (LONG * 0.8, WIDE)), BOARD),
    "thickness": _Sketch(_FACE, None, ((_END[0], WIDE / 2), (_END[2], WIDE / 2)), BOARD),
    "clear": _Sketch(_FACE, (0.0, 0.0, LEFT_ON, WIDE), ((0.0, WIDE / 2), (LEFT_ON, WIDE / 2)), BOARD),
}
_ENDS = _Sketch(
    ((Fill.WOOD, _BOARD),), (0.0, 0.0, LEFT_ON, WIDE), ((0.0, WIDE / 2), (LEFT_ON, WIDE / 2)), BOARD
)
_EDGES = _Sketch(
    ((Fill.WOOD, _BOARD),), (0.0, 0.0, LONG, LEFT_ON / 2), ((LONG / 2, 0.0), (LONG / 2, LEFT_ON / 2)), BOARD
)
_LEFT: Mapping[str, _Sketch] = {
    "scribe": _EDGES,
    "trim_edge": _EDGES,
    "glue_width": _EDGES,
    "trim_end": _ENDS,
    "glue_length": _ENDS,
}


def _draw(job: Job, path: str, sketch: _Sketch) -> FieldPicture:
    left, low, right, high = box_of([corner for _, box in sketch.boxes for corner in box_ring(box)])
    whole = (left - 1.0, low - 1.0, right + 1.0, high + 1.0)
    ratio = fit_ratio(whole)
    row, value = find_parameter(path), read_value(job, path)
    text = UNKNOWN if value is None else row.format(value, job.about.length_style)
    marked = [*_pick(sketch.picked, path), *draw_stretch(sketch.tape, text, ratio, path)]
    boxes = (mark for fill, box in sketch.boxes for mark in draw_box(fill, box, Pen.OUTLINE))
    ground = Drawing((*boxes, _ground(whole)), ratio)
    return FieldPicture(ground, Drawing(tuple(marked), ratio), sketch.note)


def _ground(whole: Box) -> Lines:
    """What it lies on."""
    return Lines(Pen.RULE, ((whole[0], whole[1], whole[2], whole[1]),))


def _pick(box: Box | None, path: str) -> Iterator[Mark]:
    if box is not None:
        yield Region(Fill.SHELF_PIECE, (box_ring(box),), path)
