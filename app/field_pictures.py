"""Files of the pictures that help shows beside a field, for manuals and for looking them through."""

from __future__ import annotations

from app.outputs import Output
from model.job import Job
from model.parameters import TABLE


def build_field_pictures(job: Job) -> tuple[Output, ...]:
    """An .svg file, named after its path, for each row that has a say and a picture in `job`."""
    from export.svg import write_svg
    from model.idle import list_idle
    from model.surround import plan_surround
    from render.field_picture import draw_field_picture

    surround, idle = plan_surround(job), list_idle(job)
    drawn = ((row.path, draw_field_picture(surround, row.path)) for row in TABLE if row.path not in idle)
    return tuple(Output(f"{path}.svg", write_svg(each.whole).encode()) for path, each in drawn if each)
