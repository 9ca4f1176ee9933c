"""From a picture they like: what passes between the marked picture, what it tells and the job.

The proportions are one step of the session; the picture stays on this page alone.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from pathlib import Path

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QFileDialog, QWidget

from app.dialog_parts import bring_forward
from app.fields.row import say_wanted
from app.files import FileTrouble
from app.likeness_window import LikenessWindow
from app.photo_canvas import Place
from app.photo_file import FILTER, Photo, read_photo_file
from app.session import Session
from app.work import Work
from export.progress import Step
from model.check.liken import Likened, liken_job, whole_of
from model.errors import Refused
from model.job import Job
from model.photo.camera import focal_of_equivalent
from model.photo.likeness import (
    ACROSS,
    UP,
    Likeness,
    Proportion,
    first_marks,
    line_through,
    read_likeness,
)
from model.photo.stored import first_corners
from model.units import LengthStyle, format_length

NAMES = (*ACROSS, *UP)
LEAST_NOISE, NOISE = 1.0, 0.75
"""Pixels that a mark is set off by, at least and for each thousand of the picture's width. Shop choice."""


class Likening(QObject):
    """One page at a time."""

    def __init__(self, window: QWidget, session: Session, folder: Callable[[], Path]) -> None:
        super().__init__(window)
        self._window, self._session, self._folder = window, session, folder
        self.page: LikenessWindow | None = None
        self.photo: Photo | None = None
        self.likeness: Likeness | None = None
        self._given: Job | None = None
        self._work = Work()
        self._work.done.connect(self._put)
        self._work.failed.connect(self._fail)

    def show(self) -> LikenessWindow:
        """Put the page up, or bring it forward."""
        if self.page is None:
            page = self.page = LikenessWindow(self._window, NAMES)
            page.open_button.clicked.connect(self.ask_and_take)
            page.apply_button.clicked.connect(self.apply)
            page.undo_button.clicked.connect(self._undo)
            page.canvas.moved.connect(self._read)
            page.gone.connect(self._forget_page)
        bring_forward(self.page)
        return self.page

    def wait(self) -> None:
        """End what is being done before the window goes."""
        self._work.wait()

    def ask_and_take(self) -> None:
        """Ask for a picture and take it in."""
        name, _ = QFileDialog.getOpenFileName(
            self.page or self._window, "Choose a picture", str(self._folder()), FILTER
        )
        if name:
            self.take(Path(name))

    def take(self, path: Path) -> bool:
        """Take the picture at `path`; says so and changes nothing where it cannot be read."""
        assert self.page is not None
        try:
            photo = read_photo_file(path)
        except FileTrouble as trouble:
            self.page.say(str(trouble))
            return False
        self.photo = photo
        corners = first_corners(*photo.size)
        marks = first_marks(corners)
        self.page.canvas.show_photo(photo.image, (*corners, *(marks[name] for name in NAMES)))
        self.page.show_having(True)
        self._read(self.page.canvas.corners)
        return True

    def _read(self, places: tuple[Place, ...]) -> None:
        """What the marks tell as they stand now."""
        assert self.page is not None
        assert self.photo is not None
        corners, marks = places[:4], dict(zip(NAMES, places[4:], strict=True))
        equivalent, size = self.photo.equivalent, self.photo.size
        focal = focal_of_equivalent(equivalent, size) if equivalent is not None else None
        noise = max(LEAST_NOISE, NOISE * size[0] / 1000)
        try:
            self.page.canvas.show_lines(tuple(line_through(corners, name, marks[name]) for name in NAMES))
            self.likeness = read_likeness(corners, marks, size, focal, noise)
            self.page.sizes.setText(self._tell(self.likeness))
        except Refused as refusal:
            self.likeness = None
            self.page.sizes.setText(_tell_refusal(refusal))
        self.page.apply_button.setEnabled(self.likeness is not None and not self._work.is_busy)

    def _tell(self, likeness: Likeness) -> str:
        job = self._session.job
        lines = [_tell_size(each, job) for each in likeness.proportions]
        if likeness.shape is None:
            lines.append("The opening's own shape: the picture does not tell.")
        else:
            shape, spread = likeness.shape, likeness.shape_spread
            lines.append(f"Its opening is {shape:.2f} times as wide as high, give or take {spread:.2f}.")
        return "\n".join(lines)

    def apply(self) -> None:
        """Give this fireplace the proportions, beside the window."""
        if self.likeness is None or self._work.is_busy or self.page is None:
            return
        self.page.say("Trying sizes…")
        self.page.apply_button.setEnabled(False)
        self._work.start(partial(_liken, self._session.job, self.likeness.proportions))

    def _put(self, done: tuple[Job, Likened]) -> None:
        job, likened = done
        if self.page is not None:
            self.page.apply_button.setEnabled(self.likeness is not None)
        if self._session.job is not job:
            self._say("The job was changed while sizes were tried; it is left as it is now.")
            return
        self._session.change("take a picture's proportions", likened.job)
        is_step = likened.job != job
        self._given = likened.job if is_step else None
        self._say(tell_given(likened, job.about.length_style), can_undo=is_step)

    def _undo(self) -> None:
        """Take the sizes back, and no other step that was made since."""
        if self._session.job is self._given:
            self._session.undo()
            self._say("The sizes are as they were.")
        else:
            self._say("Other steps were made since; they are undone in the main window.")

    def _say(self, text: str, can_undo: bool = False) -> None:
        if self.page is not None:
            self.page.say(text, can_undo)

    def _fail(self, error: Exception) -> None:
        self._say("")
        raise error

    def _forget_page(self) -> None:
        self.page = self.photo = self.likeness = None
        self._work.stop()


def _liken(job: Job, proportions: tuple[Proportion, ...], step: Step) -> tuple[Job, Likened]:
    return job, liken_job(job, proportions, step)


def _tell_refusal(refusal: Refused) -> str:
    """What is wrong with the marks; of corners only what is to be done."""
    if refusal.field == "corners":
        return say_wanted(refusal)
    return f"{refusal.field.capitalize()} is {refusal.read}: {refusal.wanted}."


def _tell_size(each: Proportion, job: Job) -> str:
    """A proportion as it is and as it would be here, with how far it may be off."""
    whole, style = whole_of(job, each), job.about.length_style
    here, off = (_say_length(part * whole, style) for part in (each.value, each.spread))
    of = "heights" if each.is_high else "widths"
    return f"{each.words}: {each.value:.2f} {of} of the opening; here {here}, give or take {off}."


def _say_length(value: float, style: LengthStyle) -> str:
    """A length that no line of a label parts."""
    return format_length(value, style).replace(" ", "\N{NO-BREAK SPACE}")


def tell_given(likened: Likened, style: LengthStyle) -> str:
    """What was taken over, and what had to give."""
    gave = [size for size in likened.sizes if size.gave]
    lines = [f"{len(likened.sizes) - len(gave)} of {len(likened.sizes)} sizes are as in the picture."]
    for size in gave:
        wanted, got = (_say_length(value, style) for value in (size.wanted, size.got))
        lines.append(f"{size.words} had to give: {got} for {wanted}.")
    if likened.besides:
        lines.append(f"To keep clear of the fire, changed besides: {', '.join(likened.besides)}.")
    if likened.left:
        parts = "; ".join(dict.fromkeys(finding.part for finding in likened.left))
        lines.append(f"Still over a limit: {parts}.")
    return "\n".join(lines)
