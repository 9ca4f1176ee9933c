"""The homeowner's document: the surround as a picture, its few sizes, the offer to sign."""

from __future__ import annotations

from dataclasses import dataclass, replace

from model.price import Price
from model.surround import Surround
from model.units import format_length
from render.desk import NO_SCALE, Desk, Draft, draft_pages, each_once, lay_picture
from render.dimension_strings import String
from render.drawing import MM, Drawing, Placed, PlacedPicture, Sheet, Text
from render.front_parted import CEILING
from render.offer_sheet import offer_strips
from render.packet import number_sheets
from render.sheets import Block, paper_size, safe_area
from render.view_dimensions import list_strings
from render.view_layout import lay_views
from render.views import ViewOptions, draw_view

TITLE = "Your fireplace"
SIZES = "Its sizes"
OFFER = "Offer"
WALL = "On your wall"
WORDS = 3 * MM
"""Capitals of what stands under the photo, inches on paper."""
FEW = ("shelf.height", "opening.height", "opening.width", "shelf.depth")
"""Sizes that a homeowner asks for; the strings that show them, and the widths over all."""


@dataclass(frozen=True, slots=True)
class OnTheWall:
    """A photo with the surround in it: a JPEG, its width over its height, inches the outline may be off."""

    data: bytes
    shape: float
    off: float


def build_offer(
    surround: Surround, price: Price, paper: str, date_text: str, wall: OnTheWall | None = None
) -> tuple[Sheet, ...]:
    """Picture, photo if there is one, elevations and offer on `paper` (a key of PAPERS), or Refused."""
    desk = Desk(surround, paper_size(paper))
    words = offer_strips(surround, price, desk.width)
    pages = draft_pages(desk, OFFER, words)
    photo = [_draft_wall(desk, wall)] if wall is not None else []
    sheets = number_sheets(desk, [_draft_picture(desk), *photo, *_draft_elevations(desk), *pages], date_text)
    return tuple(
        replace(sheet, pictures=(_place_photo(desk, wall),)) if wall and sheet.title == WALL else sheet
        for sheet in sheets
    )


def _draft_wall(desk: Desk, wall: OnTheWall) -> Draft:
    """The sheet that the photo goes on, with what it is worth under it."""
    left, low, _, _ = safe_area(*desk.size, Block.BELOW)
    off = format_length(wall.off, desk.surround.job.about.length_style)
    text = f"A picture, no measurement: 19 times in 20 the true outline lies within {off} of what is drawn."
    words = Text(text, (left, low), WORDS)
    return Draft(WALL, NO_SCALE, (Placed(Drawing((words,)), (0.0, 0.0), "wall"),), Block.BELOW)


def _place_photo(desk: Desk, wall: OnTheWall) -> PlacedPicture:
    """As large as the sheet holds it, in the middle."""
    left, low, right, high = safe_area(*desk.size, Block.BELOW)
    low += 3 * WORDS
    width = min(right - left, (high - low) * wall.shape)
    height = width / wall.shape
    x, y = (left + right - width) / 2, (low + high - height) / 2
    return PlacedPicture(wall.data, (x, y, x + width, y + height))


def _draft_picture(desk: Desk) -> Draft:
    layout = lay_picture(desk, safe_area(*desk.size, Block.BELOW))
    return Draft(TITLE, layout.scale.name, layout.placed, Block.BELOW)


def _draft_elevations(desk: Desk) -> list[Draft]:
    """Front and side on one sheet; on one each where that does not hold both."""
    room, draw = safe_area(*desk.size, Block.BELOW), each_once(desk.surround, _draw_few)
    layout = lay_views(("front", "side"), draw, desk.scales, room)
    layouts = (
        [layout]
        if layout.fits(room)
        else [lay_views((view,), draw, desk.scales, room) for view in ("front", "side")]
    )
    return [Draft(SIZES, layout.scale.name, layout.placed, Block.BELOW) for layout in layouts]


def _draw_few(surround: Surround, view: str, ratio: float) -> Drawing:
    """A view with the sizes that matter to who lives with it, without what lies behind the wood."""
    strings = tuple(string for string in list_strings(surround, view) if shows_few(string))
    whole = draw_view(surround, view, ViewOptions(ratio=ratio, strings=strings))
    dropped = CEILING | {obstacle.path for obstacle in surround.layout.behind}
    return Drawing(tuple(mark for mark in whole.marks if mark.stands_for not in dropped), ratio)


def shows_few(string: String) -> bool:
    """Whether a string is short and shows one of the few sizes, or a width over all."""
    shown = {station.shows for station in string.stations}
    over_all = shown == {""} and len(string.stations) == 2
    return over_all or bool(shown & set(FEW))
