"""The homeowner's document: the surround as a picture, its few sizes, the offer to sign."""

from __future__ import annotations

from model.price import Price
from model.surround import Surround
from render.desk import Desk, Draft, draft_pages, each_once, lay_picture
from render.dimension_strings import String
from render.drawing import Drawing, Sheet
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
FEW = ("shelf.height", "opening.height", "opening.width", "shelf.depth")
"""Sizes that a homeowner asks for; the strings that show them, and the widths over all."""


def build_offer(surround: Surround, price: Price, paper: str, date_text: str) -> tuple[Sheet, ...]:
    """Picture, elevations and offer on `paper` (a key of PAPERS). Raises Refused for another."""
    desk = Desk(surround, paper_size(paper))
    words = offer_strips(surround, price, date_text, desk.width)
    drafts = [_draft_picture(desk), _draft_elevations(desk), *draft_pages(desk, OFFER, words)]
    return number_sheets(desk, drafts, date_text)


def _draft_picture(desk: Desk) -> Draft:
    layout = lay_picture(desk, safe_area(*desk.size, Block.BELOW))
    return Draft(TITLE, layout.scale.name, layout.placed, Block.BELOW)


def _draft_elevations(desk: Desk) -> Draft:
    room = safe_area(*desk.size, Block.BELOW)
    layout = lay_views(("front", "side"), each_once(desk.surround, _draw_few), desk.scales, room)
    return Draft(SIZES, layout.scale.name, layout.placed, Block.BELOW)


def _draw_few(surround: Surround, view: str, ratio: float) -> Drawing:
    """A view with the sizes that matter to who lives with it."""
    strings = tuple(string for string in list_strings(surround, view) if shows_few(string))
    whole = draw_view(surround, view, ViewOptions(ratio=ratio, strings=strings))
    return Drawing(tuple(mark for mark in whole.marks if mark.stands_for not in CEILING), ratio)


def shows_few(string: String) -> bool:
    """Whether a string is short and shows one of the few sizes, or a width over all."""
    shown = {station.shows for station in string.stations}
    over_all = shown == {""} and len(string.stations) == 2
    return over_all or bool(shown & set(FEW))
