"""The packet: every sheet of a job, numbered, in the order of use. What is on each: render.chapters."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from types import MappingProxyType

from model.check.finding import Finding, Guide
from model.cutting.plan import CuttingPlan
from model.errors import Refused
from model.parameters import UNITS
from model.surround import Surround
from model.takeoff.assemblies import Assembly
from model.takeoff.cut_list import Cut
from model.takeoff.takeoff import Takeoff
from render.catalogue import Named
from render.chapters.anchors import draft_anchors, draft_fixing
from render.chapters.boards import draft_boards
from render.chapters.cautions import draft_cautions
from render.chapters.checks import draft_checks
from render.chapters.cover import draft_cover
from render.chapters.cutting import draft_buying, draft_cut_list, draft_materials, draft_plans, draft_rough
from render.chapters.day_plan import draft_day_plan
from render.chapters.details import draft_details
from render.chapters.elevations import draft_elevations
from render.chapters.finishing import draft_finishing
from render.chapters.joined import join_short
from render.chapters.mouldings import draft_mouldings
from render.chapters.notes import draft_notes
from render.chapters.sections import draft_sections
from render.chapters.shop import draft_shop, draft_twin, title_of_part
from render.chapters.site import draft_site
from render.chapters.steps import draft_steps
from render.desk import Desk, Draft, draft_views
from render.drawing import Sheet
from render.references import resolve_sheet
from render.sheets import CONTINUED, VIEW_TITLES, Block, build_sheet
from render.sheets import paper_size as paper_size
from render.title_block import TitleBlock
from render.view_layout import lay_alone
from render.views import ViewOptions

Chapter = Callable[[Desk], list[Draft]]
CHAPTERS: tuple[Chapter, ...] = (
    draft_site,
    draft_elevations,
    draft_sections,
    draft_details,
    draft_mouldings,
    draft_boards,
    draft_shop,
    draft_cut_list,
    draft_rough,
    draft_plans,
    draft_buying,
    draft_steps,
    draft_anchors,
    draft_fixing,
    draft_finishing,
    draft_day_plan,
    draft_materials,
    draft_checks,
    draft_cautions,
)
"""Between the site record, which comes first, and the notes, in the order of use."""
WITH_PLANS = (draft_plans, draft_buying)
"""Those that show what is bought and how it is cut."""
Plans = tuple[CuttingPlan, CuttingPlan | None]
"""What to buy and how to cut it, and what of that is bought already, None where nothing is."""


def build_packet(
    surround: Surround,
    findings: Sequence[Finding],
    guides: Sequence[Guide],
    cuts: Sequence[Cut],
    paper: str,
    date_text: str,
    takeoff: Takeoff | None = None,
    find_plans: Callable[[], Plans] | None = None,
    elsewhere: Mapping[Chapter, Callable[[], list[Draft]]] = MappingProxyType({}),
) -> tuple[Sheet, ...]:
    """Every chapter of `surround` on `paper` (a key of PAPERS).

    With its `takeoff` rough sizes, saw settings and materials are among them, with `find_plans` what to buy
    and how each board and sheet is cut, those bought already first. Chapters that are drafted `elsewhere`
    meanwhile come from there. Both are asked for once everything else is drafted.

    Raises Refused for another paper.
    """
    desk = Desk(surround, paper_size(paper), tuple(findings), tuple(guides), tuple(cuts), takeoff)
    late = {*WITH_PLANS, *elsewhere}
    drafted = {chapter: chapter(desk) for chapter in CHAPTERS if chapter not in late}
    if find_plans is not None:
        cutting, bought = find_plans()
        desk = replace(desk, cutting=cutting, bought=bought)
    drafted |= {chapter: chapter(desk) for chapter in WITH_PLANS}
    drafted |= {chapter: fetch() for chapter, fetch in elsewhere.items()}
    drafts = [draft for chapter in CHAPTERS for draft in drafted[chapter]]
    drafts = join_short(desk, [*drafts, *draft_notes(desk, drafts)])
    return number_sheets(desk, [*draft_cover(desk, drafts), *drafts], date_text)


def build_view_sheets(
    surround: Surround, view: str, paper: str, date_text: str, options: ViewOptions | None = None
) -> tuple[Sheet, ...]:
    """One view alone on a sheet, at the largest scale that fits whatever the ratio of `options`.

    Notes that find no room beside it follow on a sheet of their own.

    Raises Refused for a paper or view that is not known.
    """
    if view not in VIEW_TITLES:
        raise Refused("view", view, "write one of " + ", ".join(VIEW_TITLES))
    desk = Desk(surround, paper_size(paper))
    drafts = draft_views(desk, (view,), options)
    return number_sheets(desk, [*drafts, *draft_notes(desk, drafts)], date_text)


def build_drawing_sheet(surround: Surround, named: Named, paper: str, date_text: str) -> Sheet:
    """Any one drawing on a sheet, in the middle, at the largest scale that fits. Raises Refused for a paper.

    Its title stands in the title block.
    """
    desk = Desk(surround, paper_size(paper))
    layout = lay_alone(named.name, named.draw, desk.scales, desk.area)
    (sheet,) = number_sheets(
        desk, [Draft(named.title, layout.scale.name, layout.placed, Block.BESIDE)], date_text
    )
    return sheet


def number_sheets(desk: Desk, drafts: Sequence[Draft], date_text: str) -> tuple[Sheet, ...]:
    """Drafts as sheets with their title blocks and references to each other, numbered in this order."""
    where, count = list_holders(drafts), len(drafts)
    return tuple(
        _finish(desk, draft, f"{number} of {count}", date_text, where)
        for number, draft in enumerate(drafts, start=1)
    )


def build_twin_sheets(
    desk: Desk, assembly: Assembly, sheets: Sequence[Sheet], date_text: str
) -> tuple[Sheet, ...]:
    """Shop drawings of a sub-assembly that the packet's `sheets` show by its mirror twin, as it lies itself.

    They have the numbers of the sheets that show the twin; none where there are none.
    """
    titles = [sheet.title for sheet in sheets]
    shown = title_of_part(Assembly(assembly.twin, (), assembly.name))
    numbers = [s.number for s in sheets if s.title.removesuffix(CONTINUED) == shown]
    where = {title: titles.index(title) + 1 for title in titles}
    return tuple(
        _finish(desk, draft, numbers[min(n, len(numbers) - 1)], date_text, where)
        for n, draft in enumerate(draft_twin(desk, assembly) if numbers else [])
    )


def _finish(desk: Desk, draft: Draft, number: str, date_text: str, where: Mapping[str, int]) -> Sheet:
    """A draft with its title block, and with references to the sheets that are `where`."""
    about = desk.surround.job.about
    block = TitleBlock(
        job=about.title,
        client=about.client,
        maker=about.maker,
        date=date_text,
        title=draft.title,
        number=number,
        scale=draft.scale,
        units=UNITS[about.units],
        notes=draft.notes,
        revision=about.revision,
    )
    return resolve_sheet(build_sheet(*desk.size, draft.block, block, draft.placed), where)


def list_holders(drafts: Sequence[Draft]) -> dict[str, int]:
    """The number of the first sheet that holds each drawing, by its name, or has each title."""
    where: dict[str, int] = {}
    for number, draft in enumerate(drafts, start=1):
        for key in (draft.title, *draft.joined, *(placed.name for placed in draft.placed)):
            where.setdefault(key, number)
    return where
