"""The picture of the surround on the wall for the homeowner's offer, out of a job that carries its photo."""

from __future__ import annotations

from typing import TYPE_CHECKING

from model.errors import Refused

if TYPE_CHECKING:
    from model.surround import Surround
    from render.offer import OnTheWall


def draw_for_paper(surround: Surround) -> OnTheWall | None:
    """The picture; None for a job without a photo, or whose corners fit no camera yet."""
    photo = surround.job.photo
    if photo is None or not photo.kept:
        return None
    from app.photo_file import encode_jpeg, find_photo
    from app.photo_painter import compose
    from model.photo.placed import find_camera
    from render.offer import OnTheWall
    from render.photo_picture import draw_on_photo

    try:
        picture = draw_on_photo(surround, find_camera(photo, surround.job.site.opening))
    except Refused:
        return None
    image = compose(find_photo(photo, None).image, picture, with_band=False)
    return OnTheWall(encode_jpeg(image), photo.width / photo.height, picture.off_inches)
