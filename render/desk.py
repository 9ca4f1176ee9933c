"""A sheet while it is being set out: what it is drawn from, what is on it so far, and its notes.

What stands on which sheet is in render.chapters; sheets get their numbers in render.packet.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache, partial

from model.check.finding import Finding, Guide
from model.cutting.plan import CuttingPlan
from model.surround import Surround
from model.takeoff.cut_list import Cut
from model.takeoff.takeoff import Takeoff
from render.drawing import Drawing, Mark, Placed
from render.extent import Box
from render.scales import Scale, list_scales
from render.shaded_front import draw_shaded
from render.sheet_notes import list_notes, tell_missing_letters
from render.sheets import CONTINUED, PICTURE, TITLES, Block, fit_notes, safe_area
from render.tables import Strip, pour_pages
from render.view_layout import DrawView, Layout, lay_views
from render.views import ViewOptions, draw_view

NO_SCALE = "–"
"""What stands in the scale's field of a sheet without drawings."""
MORE_NOTES = "More notes: on the sheet of notes."
"""What stands under a column of notes that does not hold them all."""


@dataclass(frozen=True, slots=True)
class Draft:
    """A sheet before it is known how many there are.

    `scale` is as its title block says it. `over` are notes that found no room on it, `joined` the titles of
    what stands on it after what it is called by.
    """

    title: str
    scale: str
    placed: tuple[Placed, ...]
    block: Block
    notes: tuple[str, ...] = ()
    over: tuple[str, ...] = ()
    joined: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Desk:
    """What every sheet is drawn from and on: the surround, what is known of it, and the paper's size.

    `findings` is None where nothing was checked; `takeoff` and `cutting` are None where that is not asked
    for, `bought` where nothing is bought yet. `size` is in paper inches.
    """

    surround: Surround
    size: tuple[float, float]
    findings: tuple[Finding, ...] | None = None
    guides: tuple[Guide, ...] = ()
    cuts: tuple[Cut, ...] = ()
    takeoff: Takeoff | None = None
    cutting: CuttingPlan | None = None
    bought: CuttingPlan | None = None

    @property
    def scales(self) -> tuple[Scale, ...]:
        """Those that are usual in the job's units, largest first."""
        return list_scales(self.surround.job.about.units)

    @property
    def area(self) -> Box:
        """The room for drawings, beside the title block."""
        return safe_area(*self.size, Block.BESIDE)

    @property
    def width(self) -> float:
        """The room for tables, above the title block, from left to right."""
        left, _, right, _ = safe_area(*self.size, Block.BELOW)
        return right - left


def draft_views(desk: Desk, views: tuple[str, ...], options: ViewOptions | None = None) -> list[Draft]:
    """One sheet with these views at the largest scale that holds them."""
    return [draft_layout(desk, views, lay(desk, drawer(desk.surround, options), views))]


def draft_layout(desk: Desk, views: tuple[str, ...], layout: Layout, notes: tuple[str, ...] = ()) -> Draft:
    """A sheet of views that are laid already, with `notes` and those that belong to the views."""
    notes += list_notes(desk.surround, views, desk.findings)
    draft = Draft(title_of_views(views), layout.scale.name, layout.placed, Block.BESIDE)
    return put_notes(desk, draft, notes)


def draft_pages(desk: Desk, title: str, strips: Sequence[Strip]) -> list[Draft]:
    """Sheets of tables, as many as it takes."""
    left, bottom, _, top = safe_area(*desk.size, Block.BELOW)
    pages = pour_pages(strips, (left, top), top - bottom)
    return [
        Draft(title_of_page(title, number), NO_SCALE, (place_table(marks),), Block.BELOW)
        for number, marks in enumerate(pages)
    ]


def title_of_page(title: str, number: int) -> str:
    """The title of a sheet where several have one; `number` counts from 0."""
    return title if number == 0 else title + CONTINUED


def place_table(marks: tuple[Mark, ...]) -> Placed:
    """Marks of tables, which lie in paper inches from the sheet's corner already."""
    return Placed(Drawing(marks), (0.0, 0.0), "table")


def put_notes(desk: Desk, draft: Draft, notes: tuple[str, ...]) -> Draft:
    """The draft with as many of the notes as its title block holds, and a word where the others stand."""
    told = tell_missing_letters(desk.surround.job.about)
    kept, over = fit_notes(*desk.size, (*told, *notes), MORE_NOTES)
    return replace(draft, notes=kept, over=over)


def title_of_views(views: Sequence[str]) -> str:
    """``Front elevation``; several are joined: ``Front and side elevation, plan``."""
    text = TITLES[views[0]]
    for view in views[1:]:
        title = TITLES[view].lower()
        kind = text.rpartition(" ")[2]
        joined = title.endswith(f" {kind}")
        text = f"{text.removesuffix(kind)}and {title}" if joined else f"{text}, {title}"
    return text


def lay(desk: Desk, draw: DrawView, views: tuple[str, ...], least: DrawView | None = None) -> Layout:
    """The views in the room for drawings at the largest usual scale that holds them; see `lay_views`."""
    return lay_views(views, draw, desk.scales, desk.area, least)


def lay_picture(desk: Desk, room: Box) -> Layout:
    """The shaded front within `room`, at the largest usual scale that fits."""
    draw = each_once(desk.surround, lambda surround, _, ratio: draw_shaded(surround, ratio))
    return lay_views((PICTURE,), draw, desk.scales, room)


def drawer(surround: Surround, options: ViewOptions | None = None) -> DrawView:
    """Draws views of `surround` as `options` say, but for the ratio."""
    wanted = options or ViewOptions()
    return each_once(surround, lambda job, view, ratio: draw_view(job, view, replace(wanted, ratio=ratio)))


def each_once(surround: Surround, draw: Callable[[Surround, str, float], Drawing]) -> DrawView:
    """`draw` for one surround, each view worked out once for each ratio."""
    return lru_cache(maxsize=64)(partial(draw, surround))
