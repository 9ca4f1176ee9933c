"""The small drawing of a finding: the rule on this very surround, with the distances that count."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator

from model.check.anchors import CHECK as ANCHORS
from model.check.concealed import CHECK as CONCEALED
from model.check.cord_way import CHECK as CORD_WAY
from model.check.finding import Finding
from model.check.holding import FIXING, SAG, WEIGHED
from model.check.house import CHECK as HOUSE
from model.check.joinery import CHECK as JOINTS
from model.check.mantel import CHECK as MANTEL
from model.check.manuals_hearth import CHECK as HEARTH
from model.check.nailers_held import CHECK as HELD
from model.check.panels import CHECK as PANELS
from model.check.plain import FIT, SURVEY
from model.check.plinths import CHECK as PLINTHS
from model.check.television import CHECK as TELEVISION
from model.check.zone import CHECK as ZONE
from model.surround import Surround
from render.drawing import Drawing, Fill, Lines, Mark, Pen, Polyline, Region
from render.explained_base import draw_front, draw_side, stand_beside
from render.explained_clearance import draw_clearance_page, draw_concealed_page
from render.explained_fit import draw_fit_page, draw_plinth_page
from render.explained_hearth import draw_hearth_page, draw_zone_page
from render.explained_held import (
    draw_anchor_page,
    draw_cord_page,
    draw_held_page,
    draw_pull_page,
    draw_sag_page,
    draw_screen_page,
)
from render.explained_panels import draw_panels_page
from render.extent import drawing_extent

WIDE, HIGH = 6.0, 4.5
"""Room for the wood and the masonry, inches on paper. Shop choice."""
LEGEND: tuple[tuple[str, Callable[[Mark], bool]], ...] = (
    ("Dashed: what the rule asks.", lambda mark: _is_pen(mark, Pen.CLEARANCE)),
    ("Cross: the tightest place.", lambda mark: isinstance(mark, Lines) and mark.pen is Pen.FAULT),
    ("Tinted: the boards it concerns.", lambda mark: isinstance(mark, Region) and mark.fill is Fill.FAULT),
)
"""What the signs of a drawing mean, each with what it is told by."""


def draw_explanation(surround: Surround, finding: Finding) -> Drawing:
    """The finding in those views that show what it is about, as large as WIDE by HIGH has room for."""
    page = PAGES.get(finding.check, _draw_plain)
    return _fit(lambda ratio: page(surround, finding, ratio))


def list_legend(drawing: Drawing) -> tuple[str, ...]:
    """Sentences for the signs that a drawing has."""
    return tuple(said for said, tells in LEGEND if any(tells(mark) for mark in drawing.marks))


def _is_pen(mark: Mark, pen: Pen) -> bool:
    return isinstance(mark, Lines | Polyline) and mark.pen is pen


def _draw_plain(surround: Surround, finding: Finding, ratio: float) -> list[Mark]:
    """Front and side as they are: what the finding is about stands round them."""
    front: Iterator[Mark] = draw_front(surround, finding.boards)
    return stand_beside(front, draw_side(surround, finding.boards), ratio)


def _fit(draw: Callable[[float], Iterable[Mark]]) -> Drawing:
    """Lettered for the ratio at which it fits its room."""
    ratio = 12.0
    for _ in range(3):
        x0, y0, x1, y1 = drawing_extent(Drawing(tuple(draw(ratio)), ratio))
        ratio = max((x1 - x0) / WIDE, (y1 - y0) / HIGH)
    return Drawing(tuple(draw(ratio)), ratio)


PAGES: dict[str, Callable[[Surround, Finding, float], list[Mark]]] = {
    MANTEL: draw_clearance_page,
    CONCEALED: draw_concealed_page,
    HEARTH: draw_hearth_page,
    ZONE: draw_zone_page,
    SAG: draw_sag_page,
    WEIGHED: draw_sag_page,
    FIXING: draw_pull_page,
    ANCHORS: draw_anchor_page,
    HELD: draw_held_page,
    CORD_WAY: draw_cord_page,
    TELEVISION: draw_screen_page,
    PLINTHS: draw_plinth_page,
    HOUSE: _draw_plain,
    JOINTS: draw_fit_page,
    PANELS: draw_panels_page,
    FIT: draw_fit_page,
    SURVEY: draw_fit_page,
}
"""How the findings of each check are drawn, by its name."""
