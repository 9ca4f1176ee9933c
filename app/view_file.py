"""One view as the bytes of a file: SVG, picture, DXF or sheet, by its name's ending. Nothing is saved."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING

from app.drawing_files import USUAL_VERSION
from model.errors import Refused
from model.job import Job

if TYPE_CHECKING:
    from model.surround import Surround
    from render.views import ViewOptions

DRAWING_RATIO = 12.0
"""Model inches to an inch of paper where none is asked for: 1" = 1'-0"."""
SMALLEST_RATIO, LARGEST_RATIO = 1.0, 200.0
PAPER = "letter"
DOTS_PER_INCH, FEWEST_DOTS, MOST_DOTS = 150, 30, 600


@dataclass(frozen=True, slots=True)
class ViewWish:
    """How one view is wanted. `scale`, `paper` and `dots` as typed, empty where the program may choose."""

    view: str
    out: Path
    clearance: bool = False
    scale: str = ""
    paper: str = ""
    dots: str = ""
    dxf_version: str = USUAL_VERSION


def build_view_file(job: Job, wish: ViewWish, date_text: str) -> bytes:
    """The bytes of the file that `wish` names. Raises Refused for what the file's form has no use for."""
    form = wish.out.suffix.lower()
    if form not in _WRITERS:
        raise Refused("--out", str(wish.out), f"end the name in {', '.join(_WRITERS)}")
    if wish.scale and form == ".pdf":
        raise Refused("--scale", wish.scale, "a sheet takes the largest scale that fits its --paper")
    if wish.paper and form != ".pdf":
        raise Refused("--paper", wish.paper, "only a .pdf is laid on paper; the others take a --scale")
    if wish.dots and form != ".png":
        raise Refused("--dpi", wish.dots, "only a .png is made of dots")
    return _WRITERS[form](job, wish, date_text)


def _plan(job: Job, wish: ViewWish) -> tuple[Surround, ViewOptions]:
    from model.check.all import check_surround
    from model.surround import plan_surround
    from render.views import VIEWS, ViewOptions

    if wish.view not in VIEWS:
        raise Refused("--view", wish.view, "write one of " + ", ".join(VIEWS))
    surround = plan_surround(job)
    findings = check_surround(surround) if wish.clearance else ()
    return surround, ViewOptions(parse_ratio(wish.scale), clearance=wish.clearance, findings=findings)


def _svg(job: Job, wish: ViewWish, _date_text: str) -> bytes:
    from export.svg import write_svg
    from render.views import draw_view

    surround, options = _plan(job, wish)
    return write_svg(draw_view(surround, wish.view, options), job.about.title).encode()


def _png(job: Job, wish: ViewWish, _date_text: str) -> bytes:
    from app.picture import write_png
    from render.views import draw_view

    dots = parse_dots(wish.dots)
    surround, options = _plan(job, wish)
    return write_png(draw_view(surround, wish.view, options), dots)


def _dxf(job: Job, wish: ViewWish, _date_text: str) -> bytes:
    from export.dxf import write_dxf
    from render.drawing import Placed
    from render.views import draw_view

    surround, options = _plan(job, wish)
    drawing = draw_view(surround, wish.view, replace(options, true_heights=True, by_board=True))
    placed = (Placed(drawing, (0.0, 0.0), wish.view),)
    style, version = job.about.length_style, wish.dxf_version
    return write_dxf(placed, options.ratio, job.about.title, style, version=version).encode()


def _pdf(job: Job, wish: ViewWish, date_text: str) -> bytes:
    from export.pdf import write_pdf
    from render.packet import build_view_sheets

    surround, options = _plan(job, wish)
    sheets = build_view_sheets(surround, wish.view, wish.paper or PAPER, date_text, options)
    return write_pdf(sheets, job.about.title, job.about.maker)


_WRITERS: dict[str, Callable[[Job, ViewWish, str], bytes]] = {
    ".svg": _svg,
    ".png": _png,
    ".dxf": _dxf,
    ".pdf": _pdf,
}


def parse_ratio(text: str) -> float:
    """Model inches to an inch of paper, from ``12``, ``1:12`` or a scale by its name. Raises Refused."""
    from render.scales import ARCHITECTURAL, METRIC

    if not text:
        return DRAWING_RATIO
    squeezed = "".join(text.lower().split())
    for scale in ARCHITECTURAL + METRIC:
        if squeezed == "".join(scale.name.lower().split()):
            return scale.ratio
    ratio = _read_figure(squeezed.removeprefix("1:"))
    if ratio is None or not SMALLEST_RATIO <= ratio <= LARGEST_RATIO:
        raise Refused("--scale", text, 'write a scale from 1:1 to 1:200, such as 1:12 or 1" = 1\'-0"')
    return ratio


def parse_dots(text: str) -> int:
    """Dots to an inch of paper. Raises Refused."""
    if not text:
        return DOTS_PER_INCH
    dots = _read_figure(text)
    if dots is None or dots != int(dots) or not FEWEST_DOTS <= dots <= MOST_DOTS:
        raise Refused("--dpi", text, f"write a whole number from {FEWEST_DOTS} to {MOST_DOTS}")
    return int(dots)


def _read_figure(text: str) -> float | None:
    """A plain number, None for anything else."""
    digits = text.replace(".", "", 1)
    return float(text) if digits.isascii() and digits.isdigit() and len(text) < 9 else None
