"""A small picture of what one field measures: this fireplace or this surround with that one size marked."""

from __future__ import annotations

from model.parameters import find_parameter
from model.surround import Surround
from render.bench_picture import draw_bench_picture
from render.picture_frame import FieldPicture as FieldPicture
from render.size_picture import draw_part_picture, draw_size_picture
from render.tape_picture import draw_tape_picture


def draw_field_picture(surround: Surround, path: str) -> FieldPicture | None:
    """The picture of the row called `path`; None for what no drawing shows, such as a rate or a name.

    Raises Refused for a path that is not known.
    """
    find_parameter(path)
    drawn = draw_tape_picture(surround, path)
    drawn = drawn or draw_bench_picture(surround, path)
    return drawn or draw_size_picture(surround, path) or draw_part_picture(surround, path)
