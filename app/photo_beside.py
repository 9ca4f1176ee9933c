"""Draws the surround for a photo beside the window; only what was asked last counts."""

from __future__ import annotations

from PySide6.QtCore import Signal

from app.latest import Latest
from export.progress import Step
from model.errors import Refused
from model.job import Job
from render.photo_picture import PhotoPicture


class PhotoBeside(Latest):
    """`drawn` hands on the job asked about with its picture, `refused` the job and why there is none."""

    drawn = Signal(object, object)
    refused = Signal(object, object)

    def ask(self, job: Job) -> None:
        """Have the surround of `job` drawn for its photo."""
        self._ask(job)

    def answer(self, asked: Job, _step: Step) -> PhotoPicture | Refused:
        """The picture, or why the corners give none."""
        try:
            return picture_of(asked)
        except Refused as refusal:
            return refusal

    def hand_on(self, asked: Job, answer: PhotoPicture | Refused) -> None:
        """Tell whoever listens."""
        (self.refused if isinstance(answer, Refused) else self.drawn).emit(asked, answer)


def picture_of(job: Job) -> PhotoPicture:
    """The surround of a job on its photo. Raises Refused where corners fit no camera or tell too little."""
    from model.photo.placed import find_camera
    from model.surround import plan_surround
    from render.photo_picture import draw_on_photo

    assert job.photo is not None
    surround = plan_surround(job)
    return draw_on_photo(surround, find_camera(job.photo, surround.job.site.opening))
