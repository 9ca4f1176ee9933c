"""The packet: every sheet of a job, numbered, in the order of use. How each is set out is elsewhere."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache, partial

from model.check.finding import Finding, Guide
from model.cutting.buying import list_buying
from model.cutting.plan import CuttingPlan
from model.errors import Refused
from model.parameters import UNITS
from model.surround import Surround
from model.takeoff.anchors import plan_anchors
from model.takeoff.cut_list import Cut
from model.takeoff.saw_setups import list_corner_angles, list_setups
from model.takeoff.takeoff import Takeoff
from render.boards_sheet import BOARDS_OF, draw_boards, list_left_out
from render.buying_sheet import buying_strips
from render.checks_sheet import checks_strips
from render.cut_sheet import cut_strips
from render.cutting_sheet import cutting_strips
from render.details import detail_of, draw_detail, draw_relieved
from render.drawing import Drawing, Placed, Sheet
from render.extent import Box
from render.fixing_sheet import fixing_strips
from render.front_parted import draw_frame_sizes, draw_main_sizes
from render.guide_sheet import guide_strips
from render.materials_sheet import materials_strips
from render.moulding_sheet import lay_mouldings, list_used
from render.rough_sheet import rough_strips
from render.saw_sheet import CORNERS, corner_strips, saw_strips
from render.scales import Scale, list_scales
from render.sheet_notes import list_notes, tell_missing_letters
from render.sheets import (
    ANCHORS,
    BOARDS_COLUMN,
    BOARDS_FRONT,
    BOARDS_SHELF,
    BOARDS_SIDE,
    FRAME_SIZES,
    TITLES,
    VIEW_TITLES,
    Block,
    build_sheet,
    fit_notes,
    safe_area,
)
from render.sheets import paper_size as paper_size
from render.tables import Strip, heading_strip, paragraph_strips, pour_strips
from render.title_block import TitleBlock
from render.view_layout import DrawView, Layout, lay_views, lay_with_detail
from render.views import ViewOptions, draw_view

NO_SCALE = "–"
"""What stands in the scale's field of a sheet without drawings."""
PARTED_RATIO = 24
"""Drawn smaller than 1/2" = 1'-0", the front's dimensions are parted over two sheets. Shop choice."""
GOOD_RATIO = 16
"""The front view gives up scale for its neighbours down to 3/4" = 1'-0" and no further. Shop choice."""
MORE_NOTES = "More notes: on the sheet of notes."
"""What stands under a column of notes that does not hold them all."""
NOTE_GAP = 0.08
"""Clear between two notes on their own sheet, paper inches. Shop choice."""
UNTITLED = "Fireplace surround"
ALIKE = "Boards alike carry one mark; the cut list has a letter for each piece."


@dataclass(frozen=True, slots=True)
class _Draft:
    """A sheet before it is known how many there are."""

    title: str
    scale: str
    placed: tuple[Placed, ...]
    block: Block
    notes: tuple[str, ...] = ()
    over: tuple[str, ...] = ()
    """Notes that found no room on the sheet."""


@dataclass(frozen=True, slots=True)
class _Desk:
    """What every sheet is drawn from and on: the surround, its findings if checked, and the paper's size."""

    surround: Surround
    findings: tuple[Finding, ...] | None
    size: tuple[float, float]

    @property
    def scales(self) -> tuple[Scale, ...]:
        return list_scales(self.surround.job.about.units)

    @property
    def area(self) -> Box:
        """The room for drawings."""
        return safe_area(*self.size, Block.BESIDE)


def build_packet(
    surround: Surround,
    findings: Sequence[Finding],
    guides: Sequence[Guide],
    cuts: Sequence[Cut],
    paper: str,
    date_text: str,
    takeoff: Takeoff | None = None,
    cutting: CuttingPlan | None = None,
    bought: CuttingPlan | None = None,
) -> tuple[Sheet, ...]:
    """Elevations, sections, mouldings, checks and cut list of `surround` on `paper` (a key of PAPERS).

    With its `takeoff` rough sizes, saw settings and materials follow, with `cutting` what to buy and how
    each board and sheet is cut, those `bought` already first.

    Raises Refused for another paper.
    """
    desk = _Desk(surround, tuple(findings), paper_size(paper))
    left, _, right, _ = safe_area(*desk.size, Block.BELOW)
    checks = checks_strips(surround, findings, guides, right - left)
    list_of_cuts = (
        *cut_strips(cuts, surround.job.about.length_style, right - left),
        *saw_strips(list_setups(surround), right - left),
        *corner_strips(list_corner_angles(surround, CORNERS), right - left),
    )
    drafts = [
        *_draft_elevations(desk),
        _draft_section(desk, "plan_section"),
        _draft_section(desk, "vertical_section"),
        *_draft_boards(desk),
        *_draft_mouldings(desk),
        *_draft_anchors(desk),
        *_draft_pages("Checks", checks, desk.size),
        *_draft_pages("Cut list", list_of_cuts, desk.size),
        *(_draft_cutting(desk, cutting, bought, right - left) if cutting is not None else []),
        *(_draft_takeoff(desk, takeoff, right - left) if takeoff is not None else []),
        *_draft_pages("Fixing", fixing_strips(surround, right - left), desk.size),
    ]
    drafts += _draft_notes(desk, drafts, right - left)
    return _number_sheets(desk, drafts, date_text)


def build_view_sheets(
    surround: Surround, view: str, paper: str, date_text: str, options: ViewOptions | None = None
) -> tuple[Sheet, ...]:
    """One view alone on a sheet, at the largest scale that fits whatever the ratio of `options`.

    Notes that find no room beside it follow on a sheet of their own.

    Raises Refused for a paper or view that is not known.
    """
    if view not in VIEW_TITLES:
        raise Refused("view", view, "write one of " + ", ".join(VIEW_TITLES))
    desk = _Desk(surround, None, paper_size(paper))
    left, _, right, _ = safe_area(*desk.size, Block.BELOW)
    drafts = _draft_views(desk, (view,), options)
    return _number_sheets(desk, drafts + _draft_notes(desk, drafts, right - left), date_text)


def _draft_elevations(desk: _Desk) -> list[_Draft]:
    """Front and side on one sheet, with the plan if that fits too, where the front stays large enough."""
    draw = _drawer(desk.surround)
    front = _lay(desk, draw, ("front",))
    if front.scale.ratio > PARTED_RATIO:
        main = _lay(desk, _each_once(desk.surround, draw_main_sizes), ("front",))
        if main.scale.ratio < front.scale.ratio:
            frames = _lay(desk, _each_once(desk.surround, draw_frame_sizes), (FRAME_SIZES,))
            return [
                _draft(desk, ("front",), main),
                _draft(desk, (FRAME_SIZES,), frames),
                *_draft_views(desk, ("side",)),
            ]
    for views in (("front", "side", "plan"), ("front", "side")):
        together = _lay(desk, draw, views)
        large_enough = together.scale == front.scale or together.scale.ratio <= GOOD_RATIO
        if large_enough and together.fits(desk.area):
            return [_draft(desk, views, together)]
    return [_draft(desk, ("front",), front), *_draft_views(desk, ("side",))]


def _draft_section(desk: _Desk, view: str) -> _Draft:
    """A section with its detail; alone, with all its dimensions, where no larger detail has room."""
    draws = (_each_once(desk.surround, draw_relieved), _each_once(desk.surround, draw_detail))
    layout = lay_with_detail((view, detail_of(view)), draws, desk.scales, desk.area)
    return _draft(desk, (view,), layout or _lay(desk, _drawer(desk.surround), (view,)))


def _draft_boards(desk: _Desk) -> list[_Draft]:
    """Every board that is seen or cut with its mark: both elevations, then both details side by side."""
    draw = _each_once(desk.surround, draw_boards)
    elevations = _lay(desk, draw, (BOARDS_FRONT, BOARDS_SIDE))
    alone = _lay(desk, draw, (BOARDS_FRONT,))
    left, bottom, right, top = desk.area
    middle = (left + right) / 2
    column, shelf = (
        lay_views((name,), draw, desk.scales, room)
        for name, room in (
            (BOARDS_COLUMN, (left, bottom, middle, top)),
            (BOARDS_SHELF, (middle, bottom, right, top)),
        )
    )
    details = Layout(column.scale, column.placed + shelf.placed, (right - left, top - bottom))
    together = elevations.scale == alone.scale or elevations.scale.ratio <= PARTED_RATIO
    sides = [elevations] if together else [alone, _lay(desk, draw, (BOARDS_SIDE,))]
    return [_draft_marked(desk, layout) for layout in (*sides, details)]


def _draft_marked(desk: _Desk, layout: Layout) -> _Draft:
    names = tuple(placed.name for placed in layout.placed if placed.name in BOARDS_OF)
    draft = _draft(desk, names, layout)
    missing = [
        mark
        for placed in layout.placed
        if placed.name in BOARDS_OF
        for mark in list_left_out(desk.surround, placed.name, placed.drawing.ratio)
    ]
    notes = [ALIKE]
    if missing:
        notes.append(f"Seen here but without room for their marks: {', '.join(missing)}.")
    title = "Boards, details" if BOARDS_COLUMN in names else "Boards, elevations"
    known = list_notes(desk.surround, names, desk.findings)
    return _put_notes(desk, replace(draft, title=title), (*notes, *known))


def _draft_anchors(desk: _Desk) -> list[_Draft]:
    """The front with every anchor numbered as in its table; no page where there is none."""
    if not plan_anchors(desk.surround).anchors:
        return []
    layout = _lay(desk, _each_once(desk.surround, _draw_anchored), (ANCHORS,))
    return [_draft(desk, (ANCHORS,), layout)]


def _draw_anchored(surround: Surround, _: str, ratio: float) -> Drawing:
    return draw_view(surround, "front", ViewOptions(ratio, dimensions=False, anchors=True))


def _draft_mouldings(desk: _Desk) -> list[_Draft]:
    """Every moulding of the job full size; no page where there is none."""
    style = desk.surround.job.about.length_style
    area = safe_area(*desk.size, Block.BELOW)
    pages = lay_mouldings(list_used(desk.surround.layout.mouldings, style), area, style)
    full_size = desk.scales[0].name
    return [_Draft("Mouldings, full size", full_size, page, Block.BELOW) for page in pages]


def _draft_cutting(desk: _Desk, plan: CuttingPlan, bought: CuttingPlan | None, width: float) -> list[_Draft]:
    """What to buy, and every board and sheet as it is cut; no page for what there is none of."""
    style = desk.surround.job.about.length_style
    buying = buying_strips(plan, list_buying(plan), style, width)
    plans = cutting_strips(plan, style, width, bought)
    return [
        *(_draft_pages("Buying list", buying, desk.size) if buying else []),
        *(_draft_pages("Cutting plans", plans, desk.size) if plans else []),
    ]


def _draft_takeoff(desk: _Desk, takeoff: Takeoff, width: float) -> list[_Draft]:
    """What is sawn first, how the saw is guided, and what is used up and lifted."""
    style, floor = desk.surround.job.about.length_style, desk.surround.layout.floor
    return [
        *_draft_pages("Rough sizes", rough_strips(takeoff.cuts, style, width), desk.size),
        *_draft_pages("Saw settings", guide_strips(takeoff.settings, takeoff.saw, style, width), desk.size),
        *_draft_pages(
            "Materials", materials_strips(takeoff, desk.surround.job, floor, style, width), desk.size
        ),
    ]


def _draft_notes(desk: _Desk, drafts: Sequence[_Draft], width: float) -> list[_Draft]:
    """What had no room beside the drawings, each note once; no page where there is none."""
    notes = dict.fromkeys(note for draft in drafts for note in draft.over)
    if not notes:
        return []
    gap = Strip(NOTE_GAP)
    strips = [strip for note in notes for strip in (*paragraph_strips(note, width), gap)]
    return _draft_pages("Notes", [heading_strip("Notes to the drawings"), *strips], desk.size)


def _draft_views(desk: _Desk, views: tuple[str, ...], options: ViewOptions | None = None) -> list[_Draft]:
    return [_draft(desk, views, _lay(desk, _drawer(desk.surround, options), views))]


def _draft(desk: _Desk, views: tuple[str, ...], layout: Layout) -> _Draft:
    notes = list_notes(desk.surround, views, desk.findings)
    return _put_notes(
        desk, _Draft(title_of_views(views), layout.scale.name, layout.placed, Block.BESIDE), notes
    )


def _put_notes(desk: _Desk, draft: _Draft, notes: tuple[str, ...]) -> _Draft:
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


def _lay(desk: _Desk, draw: DrawView, views: tuple[str, ...]) -> Layout:
    return lay_views(views, draw, desk.scales, desk.area)


def _drawer(surround: Surround, options: ViewOptions | None = None) -> DrawView:
    """Draws views of `surround` as `options` say, but for the ratio."""
    wanted = options or ViewOptions()
    return _each_once(surround, lambda job, view, ratio: draw_view(job, view, replace(wanted, ratio=ratio)))


def _each_once(surround: Surround, draw: Callable[[Surround, str, float], Drawing]) -> DrawView:
    """`draw` for one surround, each view worked out once for each ratio."""
    return lru_cache(maxsize=64)(partial(draw, surround))


def _draft_pages(title: str, strips: Sequence[Strip], size: tuple[float, float]) -> list[_Draft]:
    left, bottom, _, top = safe_area(*size, Block.BELOW)
    pages = pour_strips(strips, (left, top), top - bottom)
    titles = [title if number == 0 else f"{title}, continued" for number in range(len(pages))]
    return [
        _Draft(name, NO_SCALE, (Placed(Drawing(marks), (0.0, 0.0), "table"),), Block.BELOW)
        for name, marks in zip(titles, pages, strict=True)
    ]


def _number_sheets(desk: _Desk, drafts: Sequence[_Draft], date_text: str) -> tuple[Sheet, ...]:
    about = desk.surround.job.about
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
            notes=draft.notes,
        )
        sheets.append(build_sheet(*desk.size, draft.block, block, draft.placed))
    return tuple(sheets)
