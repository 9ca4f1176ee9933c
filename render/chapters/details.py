"""Details at full size, half size or a quarter: the largest that leaves more of them room on the sheet."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache

from render.cut_fills import CUT_WOOD
from render.desk import Desk, Draft, put_notes, title_of_page
from render.detail_drawing import DetailView
from render.detail_list import Detail, list_details
from render.drawing import Placed
from render.references import sheet_of
from render.row_packing import Spot, pack_rows
from render.scales import Scale
from render.sheets import LABELS, Block
from render.view_layout import BETWEEN, DrawView, lay_views

SMALLEST = 10.0
"""Details are drawn no smaller than a tenth where a sheet holds them so; as a rule a quarter or more."""
PART_OF_SHEET = (0.62, 0.66)
"""How much of a sheet's width and height a detail may take up, but at the smallest scale. Shop choice."""
AS_SHOWN = "As shown"
TITLE = "Details"
TAKEN = {
    "detail_shelf": "out of section B, sheet {vertical}.",
    "detail_column": "out of section A, sheet {plan}.",
    "detail_frieze": "level, through the frieze's panels; front on sheet {front}.",
    "detail_foot": "upright, through the column's middle; front on sheet {front}.",
    "detail_baseboard": "level, through the baseboard's middle; front on sheet {front}.",
    "detail_cord": "through the hole's middle; front on sheet {front}.",
    "detail_access": "level, through the panel's middle; front on sheet {front}.",
    "detail_packing": "where the packing is thickest.",
}
"""Where each kind of detail is cut."""
MARKS = "Marks are those of the cut list. Broken lines: edge of the detail."


@dataclass(frozen=True, slots=True)
class _Laid:
    """A detail at its scale, and the room it takes up on paper."""

    detail: Detail
    draw: DrawView
    scale: Scale
    size: tuple[float, float]


def draft_details(desk: Desk) -> list[Draft]:
    """As many sheets as it takes."""
    laid = [_lay_detail(desk, detail) for detail in list_details(desk.surround)]
    left, bottom, right, top = desk.area
    pages = pack_rows([one.size for one in laid], (right - left, top - bottom), BETWEEN)
    return [_draft(desk, number, _place_page(desk, laid, page)) for number, page in enumerate(pages)]


def _draft(desk: Desk, number: int, placed: tuple[Placed, ...]) -> Draft:
    scales = {p.drawing.ratio for p in placed if p.name.startswith("detail")}
    names = [scale.name for scale in desk.scales if scale.ratio in scales]
    draft = Draft(
        title_of_page(TITLE, number), names[0] if len(names) == 1 else AS_SHOWN, placed, Block.BESIDE
    )
    taken = dict.fromkeys(
        f"{LABELS[detail.name]}: {say_taken(detail)}"
        for detail in list_details(desk.surround)
        if any(part.name == detail.name for part in placed)
    )
    return put_notes(desk, draft, (*taken, f"{CUT_WOOD} Masonry: wide slant.", MARKS))


def say_taken(detail: Detail) -> str:
    """Where a detail is cut, and on which sheet the drawing is that it comes out of."""
    kind = "_".join(detail.name.split("_")[:2])
    sheets = {"plan": "plan_section", "vertical": "vertical_section", "front": "front"}
    return TAKEN[kind].format(**{word: sheet_of(name) for word, name in sheets.items()})


def _lay_detail(desk: Desk, detail: Detail) -> _Laid:
    """The detail at the largest scale at which it fits its part of a sheet."""
    shown = DetailView(desk.surround, detail)
    draw = cache(lambda _, ratio: shown.draw(ratio))
    left, bottom, right, top = desk.area
    room = (0.0, 0.0, (right - left) * PART_OF_SHEET[0], (top - bottom) * PART_OF_SHEET[1])
    scales = [scale for scale in desk.scales if scale.ratio <= SMALLEST]
    for scale in scales[:-1]:
        if lay_views((detail.name,), lambda _, ratio: shown.frame(ratio), (scale,), room).fits(room):
            layout = lay_views((detail.name,), draw, (scale,), room)
            if layout.fits(room):
                return _Laid(detail, draw, scale, layout.size)
    layout = lay_views((detail.name,), draw, desk.scales[len(scales) - 1 :], desk.area)
    return _Laid(detail, draw, layout.scale, layout.size)


def _place_page(desk: Desk, details: Sequence[_Laid], page: Sequence[Spot]) -> tuple[Placed, ...]:
    left, _, _, top = desk.area
    placed: tuple[Placed, ...] = ()
    for spot in page:
        laid = details[spot.index]
        x, y = left + spot.right, top - spot.below
        room = (x, y - laid.size[1], x + laid.size[0], y)
        placed += lay_views((laid.detail.name,), laid.draw, (laid.scale,), room).placed
    return placed
