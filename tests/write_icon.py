"""The icon's pictures out of its drawing: ``python -m tests.write_icon``, after the drawing has changed."""

from __future__ import annotations

import os
from pathlib import Path

SIZES = (16, 32, 48, 128, 256)
FOLDER = Path(__file__).parents[1] / "assets" / "icon"


def main() -> None:
    """Write a picture of each size, and one file of all for systems that want that."""
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    from PIL import Image
    from PySide6.QtCore import QRectF, Qt
    from PySide6.QtGui import QGuiApplication, QImage, QPainter
    from PySide6.QtSvg import QSvgRenderer

    app = QGuiApplication([])
    drawing = QSvgRenderer(str(FOLDER / "mantelwright.svg"))
    for size in SIZES:
        image = QImage(size, size, QImage.Format.Format_ARGB32)
        image.fill(Qt.GlobalColor.transparent)
        with QPainter(image) as painter:
            drawing.render(painter, QRectF(0, 0, size, size))
        image.save(str(FOLDER / f"mantelwright-{size}.png"))
    app.quit()
    with Image.open(FOLDER / f"mantelwright-{SIZES[-1]}.png") as largest:
        largest.save(FOLDER / "mantelwright.ico", sizes=[(size, size) for size in SIZES])


if __name__ == "__main__":
    main()
