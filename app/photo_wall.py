"""The surround on the homeowner's own wall: what passes between a photo, the page that shows it and the job.

Taking a photo in, setting its corners and saying where it is kept are steps of the session like any other.
"""

from __future__ import annotations

import os
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QFileDialog, QWidget

from app.asking import ask_where, with_ending
from app.dialog_parts import bring_forward
from app.files import FileTrouble, save_bytes
from app.notice import Notice
from app.outputs import file_stem
from app.photo_beside import PhotoBeside
from app.photo_file import FILTER, Photo, encode_jpeg, find_photo, read_photo_file, save_picture
from app.photo_painter import compose
from app.photo_window import PhotoWindow
from app.session import Session
from model.errors import Refused
from model.job import Job
from model.photo.stored import (
    LONGEST,
    MOST_BYTES,
    SHORTEST,
    Corners,
    WallPhoto,
    first_corners,
    is_plain,
    keep_bytes,
)
from model.survey import govern_site
from model.units import format_length
from render.drawing import Ring
from render.photo_picture import PhotoPicture

QUALITIES = (88, 75, 60)
"""Of the JPEG that a job keeps, tried in turn until it is small enough."""
PICTURES = {"Pictures (*.png *.jpg)": (".png", ".jpg", ".jpeg")}
"""What the picture may be saved as."""
WANTS_LENS = (
    "These corners do not tell which lens it was: the photo was taken too straight on. Type the lens below; "
    "most telephones have 24 to 28."
)
FIRST = "The corners are not set yet. Put the four rings on those of the opening."


class PhotoWall(QObject):
    """One page at a time; it follows the job while it is open."""

    def __init__(self, window: QWidget, session: Session, folder: Callable[[], Path], notice: Notice) -> None:
        super().__init__(window)
        self._window, self._session, self._folder, self._notice = window, session, folder, notice
        self.page: PhotoWindow | None = None
        self.photo: Photo | None = None
        self.picture: PhotoPicture | None = None
        self._of: WallPhoto | None = None
        self._beside = PhotoBeside()
        self._beside.drawn.connect(self._take_picture)
        self._beside.refused.connect(self._take_refusal)
        session.changed.connect(self._follow)

    def show(self) -> PhotoWindow:
        """Put the page up, or bring it forward."""
        if self.page is None:
            page = self.page = PhotoWindow(self._window)
            page.open_button.clicked.connect(self.ask_and_take)
            page.save_button.clicked.connect(self.ask_and_save)
            page.keep_button.clicked.connect(self.keep_elsewhere)
            page.drop_button.clicked.connect(self.drop)
            page.lens_entered.connect(self.set_lens)
            page.canvas.moved.connect(self._show_edges)
            page.canvas.settled.connect(self.set_corners)
            page.gone.connect(self._forget_page)
            self._follow()
        bring_forward(self.page)
        return self.page

    def wait(self) -> None:
        """End what is being done before the window goes."""
        self._beside.wait()

    def ask_and_take(self) -> None:
        """Ask for a photo and take it in."""
        name, _ = QFileDialog.getOpenFileName(
            self.page or self._window, "Choose a photo", str(self._folder()), FILTER
        )
        if name:
            self.take(Path(name))

    def take(self, path: Path) -> bool:
        """Take the photo at `path` into the job; says so and changes nothing where it cannot be read."""
        try:
            photo = read_photo_file(path)
            width, height = photo.size
            opening = govern_site(self._session.job.site).opening
            stored = WallPhoto(
                width,
                height,
                first_corners(width, height, opening.width / opening.height),
                photo.equivalent,
                file=path.name,
            )
            if path.parent != self._job_folder() or not is_plain(path.name):
                stored = self._kept(stored, photo)
        except (FileTrouble, Refused) as trouble:
            self._say(str(trouble))
            return False
        self._put("take in a photo", stored)
        return True

    def _kept(self, stored: WallPhoto, photo: Photo) -> WallPhoto:
        """The photo kept in the job itself, as finely as it takes. Raises Refused where it is too large."""
        jpegs = (encode_jpeg(photo.image, quality) for quality in QUALITIES)
        fits = next((data for data in jpegs if len(data) <= MOST_BYTES), None)
        if fits is None:
            raise Refused("photo", "this one", "it is too large to keep in the job; save it beside the job")
        return replace(stored, file="", kept=keep_bytes(fits))

    def keep_elsewhere(self) -> None:
        """Move the photo out of the job to beside it, or into it."""
        stored, photo = self._session.job.photo, self.photo
        if stored is None or photo is None:
            return
        try:
            if stored.file:
                self._put("keep the photo in the job", self._kept(stored, photo))
            elif (folder := self._job_folder()) is not None:
                name = _free_name(folder, f"{file_stem(self._session.job)} - wall")
                save_bytes(folder / name, encode_jpeg(photo.image))
                self._put("keep the photo beside the job", replace(stored, file=name, kept=""))
            else:
                self._say("Save the job first: then there is a folder to keep the photo in.")
        except (FileTrouble, Refused) as trouble:
            self._say(str(trouble))

    def drop(self) -> None:
        """Take the photo off the job."""
        self._put("let go of the photo", None)

    def set_corners(self, corners: Corners) -> None:
        """One step: the corners as they were set."""
        stored = self._session.job.photo
        if stored is not None:
            self._put("set a corner of the photo", replace(stored, corners=corners))

    def set_lens(self, text: str) -> None:
        """One step: the focal length as typed; from the photo's data or its corners where it is empty."""
        stored = self._session.job.photo
        if stored is None or text.strip() == _lens_text(stored):
            return
        if not text.strip():
            own = self.photo.equivalent if self.photo is not None else None
            self._put("change the lens", replace(stored, equivalent=own, is_typed=False))
            return
        try:
            value = float(text.strip().removesuffix("mm"))
        except ValueError:
            value = 0.0
        if SHORTEST <= value <= LONGEST:
            self._put("change the lens", replace(stored, equivalent=value, is_typed=True))
        else:
            self._say(f"Write the lens as a number from {SHORTEST:.0f} to {LONGEST:.0f}, such as 26.")

    def ask_and_save(self) -> None:
        """Ask for a file and write the picture to it."""
        start = self._folder() / f"{file_stem(self._session.job)} - on the wall.png"
        where = ask_where(self.page or self._window, "Save the picture", start, PICTURES)
        if where is not None:
            self.save(where[0])

    def save(self, path: Path) -> bool:
        """Write photo and surround as one picture, with the band where it is shown."""
        if self.photo is None or self.picture is None:
            self._say("There is no picture yet: set the corners first.")
            return False
        shows_band = self.page is not None and self.page.band.isChecked()
        path = with_ending(path, "", PICTURES)
        try:
            save_picture(path, compose(self.photo.image, self.picture, shows_band))
        except FileTrouble as trouble:
            self._say(str(trouble))
            return False
        self._say(f"Written to {path.name}.")
        return True

    def _put(self, words: str, stored: WallPhoto | None) -> None:
        self._session.change(words, replace(self._session.job, photo=stored))

    def _job_folder(self) -> Path | None:
        return self._session.path.parent if self._session.path is not None else None

    def _say(self, text: str) -> None:
        if self.page is not None:
            self.page.say(text)
        else:
            self._notice.say(text)

    def _follow(self) -> None:
        """Show the job as it is now, while the page is open."""
        if self.page is None:
            return
        stored = self._session.job.photo
        if stored is None:
            self._show_none("")
            return
        try:
            self._read(stored)
        except FileTrouble as trouble:
            self._show_none(str(trouble))
            return
        self._show(stored)

    def _show_none(self, why: str) -> None:
        assert self.page is not None
        self.photo = self.picture = self._of = None
        self.page.canvas.show_photo(None, ())
        self.page.show_having(False)
        self.page.say(why)

    def _read(self, stored: WallPhoto) -> None:
        """The photo itself, read again only where it is another."""
        same = self._of is not None and (self._of.file, self._of.kept) == (stored.file, stored.kept)
        if not same or self.photo is None:
            self.photo = find_photo(stored, self._job_folder())
        self._of = stored

    def _show(self, stored: WallPhoto) -> None:
        assert self.page is not None
        assert self.photo is not None
        page = self.page
        page.canvas.show_photo(self.photo.image, stored.corners)
        page.show_having(True)
        page.lens.setText(_lens_text(stored))
        page.keep_button.setText("Keep it in the job" if stored.file else "Keep it beside the job")
        page.keep_button.setToolTip(
            f"It is read from {stored.file}, beside the job."
            if stored.file
            else "It is kept inside the job's file."
        )
        page.keep_button.updateGeometry()
        self._beside.ask(self._session.job)

    def _show_edges(self, corners: Corners) -> None:
        """Boxes for the wood while a corner moves; the wood itself follows when it rests."""
        job = self._session.job
        if self.page is not None and job.photo is not None:
            edges = _edges_of(replace(job, photo=replace(job.photo, corners=corners)))
            self.page.canvas.show_edges(edges)

    def _take_picture(self, job: Job, picture: PhotoPicture) -> None:
        if job is not self._session.job or self.page is None:
            return
        self.picture = picture
        self.page.canvas.show_picture(picture)
        off = format_length(picture.off_inches, job.about.length_style)
        sure = (
            f"19 times in 20 its true outline lies within {off} ({picture.off:.0f} pixels) of what is drawn."
        )
        if job.photo is not None and not job.photo.is_set:
            sure = FIRST
        elif picture.is_doubtful:
            sure = (
                f"Doubtful: the outline may be off by {off}. Set the corners under the loupe, type the lens, "
                "or take a photo from nearer."
            )
        self.page.say(sure)

    def _take_refusal(self, job: Job, refusal: Refused) -> None:
        if job is not self._session.job or self.page is None:
            return
        self.picture = None
        self.page.canvas.show_picture(None)
        is_set = job.photo is None or job.photo.is_set
        self.page.say(_tell(refusal) if is_set else FIRST)

    def _forget_page(self) -> None:
        self.page = None
        self._beside.let_go()


def _lens_text(stored: WallPhoto) -> str:
    return "" if stored.equivalent is None else f"{stored.equivalent:g}"


def _tell(refusal: Refused) -> str:
    """Why there is no picture, and what helps."""
    from model.photo.recover import FocalUnknown

    if isinstance(refusal, FocalUnknown):
        return WANTS_LENS
    verb = "are" if refusal.field.endswith("s") else "is"
    return (
        f"No camera sees the opening so: the {refusal.field} {verb} {refusal.read}. To do: {refusal.wanted}."
    )


def _free_name(folder: Path, stem: str) -> str:
    """A name for a JPEG that is not taken."""
    number = 1
    while os.path.exists(folder / (name := f"{stem}{'' if number == 1 else f' {number}'}.jpg")):
        number += 1
    return name


def _edges_of(job: Job) -> tuple[Ring, ...]:
    from model.photo.placed import find_camera
    from model.surround import plan_surround
    from render.photo_picture import project_outline

    assert job.photo is not None
    try:
        surround = plan_surround(job)
        return project_outline(surround, find_camera(job.photo, surround.job.site.opening).camera)
    except Refused:
        return ()
