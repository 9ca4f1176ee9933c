"""The packet: every sheet of a job, numbered, in the order of use. How each is set out is elsewhere."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import lru_cache

from model.check.finding import Finding, Guide
from model.errors import Refused
from model.parameters import UNITS
from model.surround import Surround
from model.takeoff.cut_list import Cut
from render.checks_sheet import checks_strips
from render.cut_sheet import cut_strips
from render.drawing import Drawing, Placed, Sheet
from render.scales import list_scales
from render.sheets import PAPERS, VIEW_TITLES, TitleBlock, build_sheet, safe_area
from render.tables import Strip, pour_strips
from render.view_layout import DrawView, Layout, lay_views
from render.views import ViewOptions, draw_view

NO_SCALE = "–"
"""What stands in the scale's field of a sheet without drawings."""
UNTITLED = "Fireplace surround"


@dataclass(frozen=True, slots=True)
class _Draft:
    """A sheet before it is known how many there are."""

    title: str
    scale: str
    placed: tuple[Placed, ...]


def build_packet(
    surround: Surround,
    findings: Sequence[Finding],
    guides: Sequence[Guide],
    cuts: Sequence[Cut],
    paper: str,
    date_text: str,
) -> tuple[Sheet, ...]:
    """Elevations, sections, checks and cut list of `surround` on `paper` (a key of PAPERS).

    Raises Refused for another paper.
    """
    size = paper_size(paper)
    left, _, right, _ = safe_area(*size)
    checks = checks_strips(surround, findings, guides, right - left)
    list_of_cuts = cut_strips(cuts, surround.job.about.length_style, right - left)
    drafts = [
        *_draft_elevations(surround, size),
        *_draft_views(surround, size, ("plan_section",)),
        *_draft_views(surround, size, ("vertical_section",)),
        *_draft_pages("Checks", checks, size),
        *_draft_pages("Cut list", list_of_cuts, size),
    ]
    return _number_sheets(surround, drafts, size, date_text)


def build_view_sheet(
    surround: Surround, view: str, paper: str, date_text: str, options: ViewOptions | None = None
) -> Sheet:
    """One view alone on a sheet, at the largest scale that fits whatever the ratio of `options`.

    Raises Refused for a paper or view that is not known.
    """
    if view not in VIEW_TITLES:
        raise Refused("view", view, "write one of " + ", ".join(VIEW_TITLES))
    size = paper_size(paper)
    return _number_sheets(surround, _draft_views(surround, size, (view,), options), size, date_text)[0]


def paper_size(paper: str) -> tuple[float, float]:
    """Width and height of a paper by name, paper inches. Raises Refused."""
    if paper not in PAPERS:
        raise Refused("paper", paper, "write one of " + ", ".join(PAPERS))
    return PAPERS[paper]


def _draft_elevations(surround: Surround, size: tuple[float, float]) -> list[_Draft]:
    """Front and side on one sheet, with the plan if that fits too, where the front loses no scale by it."""
    draw = _drawer(surround)
    front = _lay(surround, draw, size, ("front",))
    for views in (("front", "side", "plan"), ("front", "side")):
        together = _lay(surround, draw, size, views)
        if together.scale == front.scale:
            return [_draft(views, together)]
    return [_draft(("front",), front), *_draft_views(surround, size, ("side",))]


def _draft_views(
    surround: Surround, size: tuple[float, float], views: tuple[str, ...], options: ViewOptions | None = None
) -> list[_Draft]:
    return [_draft(views, _lay(surround, _drawer(surround, options), size, views))]


def _draft(views: tuple[str, ...], layout: Layout) -> _Draft:
    return _Draft(title_of_views(views), layout.scale.name, layout.placed)


def title_of_views(views: Sequence[str]) -> str:
    """``Front elevation``; several are joined: ``Front and side elevation, plan``."""
    text = VIEW_TITLES[views[0]]
    for view in views[1:]:
        title = VIEW_TITLES[view].lower()
        kind = text.rpartition(" ")[2]
        joined = title.endswith(f" {kind}")
        text = f"{text.removesuffix(kind)}and {title}" if joined else f"{text}, {title}"
    return text


def _lay(surround: Surround, draw: DrawView, size: tuple[float, float], views: tuple[str, ...]) -> Layout:
    return lay_views(views, draw, list_scales(surround.job.about.units), safe_area(*size))


def _drawer(surround: Surround, options: ViewOptions | None = None) -> DrawView:
    """Draws views of `surround`, each at each ratio once."""
    wanted = options or ViewOptions()

    @lru_cache(maxsize=64)
    def draw(view: str, ratio: float) -> Drawing:
        return draw_view(surround, view, replace(wanted, ratio=ratio))

    return draw


def _draft_pages(title: str, strips: Sequence[Strip], size: tuple[float, float]) -> list[_Draft]:
    left, bottom, _, top = safe_area(*size)
    pages = pour_strips(strips, (left, top), top - bottom)
    titles = [title if number == 0 else f"{title}, continued" for number in range(len(pages))]
    return [
        _Draft(name, NO_SCALE, (Placed(Drawing(marks), (0.0, 0.0), "table"),))
        for name, marks in zip(titles, pages, strict=True)
    ]


def _number_sheets(
    surround: Surround, drafts: Sequence[_Draft], size: tuple[float, float], date_text: str
) -> tuple[Sheet, ...]:
    about = surround.job.about
    sheets = []
    for number, draft in enumerate(drafts, start=1):
        block = TitleBlock(
            job=about.name or UNTITLED,
            client=about.client,
            maker=about.maker,
            date=date_text,
            title=draft.title,
            number=f"{number} of {len(drafts)}",
            scale=draft.scale,
            units=UNITS[about.units],
        )
        sheets.append(build_sheet(*size, block, draft.placed))
    return tuple(sheets)
