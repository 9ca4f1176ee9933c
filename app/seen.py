"""Puts up what the homeowner looks at: the picture on the whole screen, photos of the wall and of others.

Loaded with the window, so the pages themselves come when they are first asked for.
"""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QWidget

from app.notice import Notice
from app.session import Session

if TYPE_CHECKING:
    from app.likening import Likening
    from app.photo_wall import PhotoWall
    from app.show_window import ShowWindow


class Seen(QObject):
    """One page of each sort at a time. `take_up` puts the option at a place in work."""

    def __init__(
        self,
        window: QWidget,
        session: Session,
        folder: Callable[[], Path],
        take_up: Callable[[int], object],
        notice: Notice,
    ) -> None:
        super().__init__(window)
        self._window, self._session, self._folder, self._notice = window, session, folder, notice
        self._take_up = take_up
        self.wall: PhotoWall | None = None
        self.show_page: ShowWindow | None = None
        self.likening: Likening | None = None

    def show_picture(self) -> ShowWindow:
        """The picture for the homeowner, on the whole screen."""
        from app.show_window import ShowWindow, find_side

        if self.show_page is None:
            side = find_side(self._window.screen().size())
            self.show_page = ShowWindow(self._session, self._take_up, side)
            self.show_page.gone.connect(self._forget)
        self.show_page.setGeometry(self._window.screen().geometry())
        self.show_page.showFullScreen()
        self.show_page.activateWindow()
        return self.show_page

    def show_wall(self) -> None:
        """The surround on a photo of the wall."""
        from app.photo_wall import PhotoWall

        if self.wall is None:
            self.wall = PhotoWall(self._window, self._session, self._folder, self._notice)
        self.wall.show()

    def show_likeness(self) -> None:
        """Proportions off a picture of another surround."""
        from app.likening import Likening

        if self.likening is None:
            self.likening = Likening(self._window, self._session, self._folder)
        self.likening.show()

    def wait(self) -> None:
        """End what runs beside the window, and put the pages away."""
        if self.show_page is not None:
            self.show_page.close()
        for beside in (self.wall, self.likening):
            if beside is not None:
                beside.wait()

    def _forget(self) -> None:
        if self.show_page is not None:
            self.show_page.deleteLater()
        self.show_page = None
