"""A job that has its photo with it, wherever it is worked on: for paper, whose makers know no folders.

Where the photo is kept in the user's own files stands in app.photo_wall.
"""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

from app.files import FileTrouble
from model.errors import Refused
from model.job import Job


def carry_photo(job: Job, folder: Path | None) -> tuple[Job, str]:
    """The job with its photo inside, and why it has none though it should; `folder` is the job's own."""
    if job.photo is None or job.photo.kept:
        return job, ""
    from app.photo_file import encode_jpeg, find_photo
    from model.photo.stored import keep_bytes

    try:
        found = find_photo(job.photo, folder)
        kept = keep_bytes(encode_jpeg(found.image))
    except (FileTrouble, Refused) as trouble:
        return replace(job, photo=None), f"The offer has no photo: {trouble}"
    return replace(job, photo=replace(job.photo, file="", kept=kept)), ""
