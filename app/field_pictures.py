"""Files of the pictures that help shows beside a field, for manuals and for looking them through."""

from __future__ import annotations

from pathlib import Path

from app.files import save_bytes
from model.job import Job
from model.parameters import TABLE


def write_field_pictures(job: Job, folder: Path) -> tuple[Path, ...]:
    """An .svg file in `folder`, made if need be, for each row that has a picture on this job.

    Raises FileTrouble.
    """
    from export.svg import write_svg
    from model.idle import list_idle
    from model.surround import plan_surround
    from render.field_picture import BareViews, draw_field_picture

    views, idle = BareViews(plan_surround(job)), list_idle(job)
    written = []
    for row in TABLE:
        picture = None if row.path in idle else draw_field_picture(views, row.path)
        if picture is not None:
            path = folder / f"{row.path}.svg"
            save_bytes(path, write_svg(picture.whole).encode())
            written.append(path)
    return tuple(written)
