"""A small picture of what one field measures: this fireplace or this surround with that one size marked."""

from __future__ import annotations

from model.parameters import find_parameter
from render.bench_picture import draw_bench_picture
from render.picture_frame import FieldPicture as FieldPicture
from render.size_picture import BareViews as BareViews
from render.size_picture import draw_part_picture, draw_size_picture
from render.tape_picture import draw_tape_picture


def draw_field_picture(views: BareViews, path: str) -> FieldPicture | None:
    """The picture of the row called `path`; None for what no drawing shows, such as a rate or a name.

    Raises Refused for a path that is not known.
    """
    find_parameter(path)
    drawn = draw_tape_picture(views.surround, path)
    drawn = drawn or draw_bench_picture(views.surround, path)
    return drawn or draw_size_picture(views, path) or draw_part_picture(views, path)
