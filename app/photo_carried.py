"""A job that has its photo with it, wherever it is worked on: for paper, whose makers know no folders.

Where the photo is kept in the user's own files stands in app.photo_wall.
"""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

from app.files import FileTrouble
from model.errors import Refused
from model.job import Job
from model.survey import govern_site

NOT_SET = "the opening's corners are not set in it yet."
FITS_NO_CAMERA = "the opening's corners in it fit no camera yet."


def carry_photo(job: Job, folder: Path | None) -> tuple[Job, str]:
    """The job with its photo inside, and why it has none though it should; `folder` is the job's own.

    A photo whose corners were never set, or fit no camera, would show the surround where it does not stand.
    """
    if job.photo is None:
        return job, ""
    from app.photo_file import encode_jpeg, find_photo
    from model.photo.placed import find_camera
    from model.photo.stored import keep_bytes

    if not job.photo.is_set:
        return replace(job, photo=None), f"The offer has no photo: {NOT_SET}"
    try:
        find_camera(job.photo, govern_site(job.site).opening)
    except Refused:
        return replace(job, photo=None), f"The offer has no photo: {FITS_NO_CAMERA}"
    if job.photo.kept:
        return job, ""
    try:
        found = find_photo(job.photo, folder)
        kept = keep_bytes(encode_jpeg(found.image))
    except (FileTrouble, Refused) as trouble:
        return replace(job, photo=None), f"The offer has no photo: {trouble}"
    return replace(job, photo=replace(job.photo, file="", kept=kept)), ""
