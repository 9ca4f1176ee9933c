"""One drawing as the bytes of a file: SVG, picture, DXF or sheet, by its name's ending. Nothing is saved."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from app.drawing_files import USUAL_VERSION
from model.errors import Refused
from model.job import Job

if TYPE_CHECKING:
    from model.surround import Surround
    from render.catalogue import Named
    from render.drawing import Drawing
    from render.views import ViewOptions

SMALLEST_RATIO, LARGEST_RATIO = 1.0, 200.0
PAPER = "letter"
DOTS_PER_INCH, FEWEST_DOTS, MOST_DOTS = 150, 30, 600
WHITE, CLEAR = "white", "clear"
GROUNDS = (WHITE, CLEAR)
"""What a picture lies on: white paper, or nothing, so that it can be laid over something else."""


@dataclass(frozen=True, slots=True)
class ViewWish:
    """How one drawing is wanted; empty where the program may choose.

    `scale`, `paper`, `dots` and `ground` are as typed.
    """

    view: str
    out: Path
    clearance: bool = False
    scale: str = ""
    paper: str = ""
    dots: str = ""
    ground: str = ""
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
    if wish.ground and form != ".png":
        raise Refused("--ground", wish.ground, "only a .png has a ground; the others have none")
    return _WRITERS[form](job, wish, date_text)


def list_views(job: Job) -> list[tuple[str, str]]:
    """Name and title of every drawing of `job`."""
    from model.surround import plan_surround
    from render.catalogue import list_named

    return [(named.name, named.title) for named in list_named(plan_surround(job))]


def _find(surround: Surround, wish: ViewWish, options: ViewOptions) -> Named:
    """The drawing that is wished, to be drawn with `options`. Raises Refused."""
    from render.catalogue import find_named
    from render.views import VIEWS

    named = find_named(surround, wish.view, options)
    if named is None:
        wanted = f"write one of {', '.join(VIEWS)}, or another of the names that draw JOB --list shows"
        raise Refused("--view", wish.view, wanted)
    if wish.clearance and named.name not in VIEWS:
        raise Refused("--clearance", named.name, "the keep-out is drawn in " + ", ".join(VIEWS))
    return named


def _choose_options(surround: Surround, wish: ViewWish) -> ViewOptions:
    from model.check.all import check_surround
    from render.views import ViewOptions

    findings = check_surround(surround) if wish.clearance else ()
    is_drawing_file = wish.out.suffix.lower() == ".dxf"
    return ViewOptions(
        clearance=wish.clearance, findings=findings, true_heights=is_drawing_file, by_board=is_drawing_file
    )


def _draw(job: Job, wish: ViewWish) -> tuple[str, Drawing, float]:
    """Name of the drawing that is wished, the drawing, and the ratio it is lettered for. Raises Refused."""
    from model.surround import plan_surround

    surround = plan_surround(job)
    named = _find(surround, wish, _choose_options(surround, wish))
    ratio = parse_ratio(wish.scale) or named.ratio
    return named.name, named.draw(ratio), ratio


def _svg(job: Job, wish: ViewWish, _date_text: str) -> bytes:
    from export.svg import write_svg

    _, drawing, _ = _draw(job, wish)
    return write_svg(drawing, job.about.title).encode()


def _png(job: Job, wish: ViewWish, _date_text: str) -> bytes:
    from app.picture import write_png

    dots, ground = parse_dots(wish.dots), wish.ground or WHITE
    if ground not in GROUNDS:
        raise Refused("--ground", wish.ground, "write " + " or ".join(GROUNDS))
    _, drawing, _ = _draw(job, wish)
    return write_png(drawing, dots, clear=ground == CLEAR)


def _dxf(job: Job, wish: ViewWish, _date_text: str) -> bytes:
    from export.dxf import write_dxf
    from render.drawing import Placed

    name, drawing, ratio = _draw(job, wish)
    placed = (Placed(drawing, (0.0, 0.0), name),)
    style, version = job.about.length_style, wish.dxf_version
    return write_dxf(placed, ratio, job.about.title, style, version=version).encode()


def _pdf(job: Job, wish: ViewWish, date_text: str) -> bytes:
    from export.pdf import write_pdf
    from model.surround import plan_surround
    from render.packet import build_drawing_sheet, build_view_sheets
    from render.views import VIEWS

    paper, surround = wish.paper or PAPER, plan_surround(job)
    options = _choose_options(surround, wish)
    named = _find(surround, wish, options)
    if named.name in VIEWS:
        sheets = build_view_sheets(surround, named.name, paper, date_text, options)
    else:
        sheets = (build_drawing_sheet(surround, named, paper, date_text),)
    return write_pdf(sheets, job.about.title, job.about.maker)


_WRITERS: dict[str, Callable[[Job, ViewWish, str], bytes]] = {
    ".svg": _svg,
    ".png": _png,
    ".dxf": _dxf,
    ".pdf": _pdf,
}


def parse_ratio(text: str) -> float | None:
    """Model inches to an inch of paper, from ``12``, ``1:12`` or a scale by its name; None for no text.

    Raises Refused.
    """
    from render.scales import ARCHITECTURAL, METRIC

    if not text:
        return None
    squeezed = "".join(text.lower().split())
    for scale in ARCHITECTURAL + METRIC:
        if squeezed == "".join(scale.name.lower().split()):
            return scale.ratio
    ratio = _read_figure(squeezed.removeprefix("1:"))
    if ratio is None or not SMALLEST_RATIO <= ratio <= LARGEST_RATIO:
        raise Refused("--scale", text, 'write a scale from 1:1 to 1:200, such as 1:12 or 1" = 1\'-0"')
    return ratio


def parse_dots(text: str) -> int:
    """Dots to an inch of paper, DOTS_PER_INCH for no text. Raises Refused."""
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
