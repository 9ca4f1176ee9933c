"""The program's icon, in the sizes that systems ask for."""

from __future__ import annotations

from importlib.resources import files

from PySide6.QtGui import QIcon, QPixmap

SIZES = (16, 32, 48, 128, 256)


def program_icon() -> QIcon:
    """Every size that is shipped."""
    icon = QIcon()
    for size in SIZES:
        icon.addPixmap(icon_picture(size))
    return icon


def icon_picture(size: int) -> QPixmap:
    """One of SIZES, pixels across."""
    picture = QPixmap()
    picture.loadFromData(files("assets").joinpath("icon", f"mantelwright-{size}.png").read_bytes())
    return picture
