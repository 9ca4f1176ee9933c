"""A picture is true to the drawing's scale, with or without a window."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest
from PySide6.QtGui import QImage

from app.picture import CLEAR, MOST_PIXELS, write_png
from model.errors import Refused
from render.drawing import Drawing, Fill, Region

PLATE = Drawing((Region(Fill.OPENING, (((0.0, 0.0), (36.0, 0.0), (36.0, 30.0), (0.0, 30.0)),)),), 12.0)

ALONE = """
from pathlib import Path
import sys
from app.picture import write_png
from render.drawing import Drawing, Text
Path(sys.argv[1]).write_bytes(write_png(Drawing((Text("H", (0.0, 0.0), 12.0),), 12.0), 96))
"""


def _read(data: bytes) -> QImage:
    image = QImage.fromData(data)
    assert not image.isNull()
    return image


def test_an_area_is_as_many_dots_wide_as_it_is_at_scale(dressed):
    image = _read(write_png(PLATE, 120))
    assert (image.width(), image.height()) == (360 + 2 * CLEAR * 120, 300 + 2 * CLEAR * 120)
    dark = [x for x in range(image.width()) if image.pixelColor(x, image.height() // 2).lightness() < 128]
    assert len(dark) == 360


def test_the_file_says_how_fine_it_is(dressed):
    assert _read(write_png(PLATE, 200)).dotsPerMeterX() == pytest.approx(200 / 0.0254, abs=1)


def test_the_same_drawing_gives_the_same_bytes(dressed):
    assert write_png(PLATE, 96) == write_png(PLATE, 96)


def test_without_its_paper_only_what_is_drawn_covers_what_it_is_laid_on(dressed):
    image = _read(write_png(PLATE, 60, clear=True))
    assert image.pixelColor(2, 2).alpha() == 0
    assert image.pixelColor(image.width() // 2, image.height() // 2).alpha() == 255
    assert _read(write_png(PLATE, 60)).pixelColor(2, 2).name() == "#ffffff"


def test_a_picture_beyond_all_bounds_is_refused(dressed):
    with pytest.raises(Refused, match=str(MOST_PIXELS)):
        write_png(PLATE, 10_000)


def test_letters_come_out_without_a_display_and_without_a_window(tmp_path: Path):
    bare = {k: v for k, v in os.environ.items() if k not in ("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM")}
    out = tmp_path / "h.png"
    subprocess.run(
        [sys.executable, "-c", ALONE, str(out)], cwd=Path(__file__).parents[2], env=bare, check=True
    )
    image = _read(out.read_bytes())
    columns = range(image.width())
    dark = [sum(image.pixelColor(x, y).lightness() < 128 for y in range(image.height())) for x in columns]
    upright = [x for x in columns if dark[x] > 80]
    assert len(upright) >= 8
    assert upright[-1] - upright[0] > 20
    assert 0 < dark[(upright[0] + upright[-1]) // 2] < 30
