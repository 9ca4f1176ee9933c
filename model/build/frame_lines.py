"""Stiles, rails and panels of columns, frieze and overmantel, as far as there is room for them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from math import inf

from model.board import Point2
from model.build.flutes import LEAST_STOP
from model.build.ledger import Ledger
from model.build.lines import LEAST_LAYER, Frame, Overmantel, RaisedBoard, Rect, Side
from model.build.taper import Edges, Taper
from model.design import FLUSH, FLUTED, FRAMED, IN_FRONT, LEAST_REVEAL, PLAIN, RAISED, TO_CEILING, Design
from model.moulding.section import Section
from model.site import Site

LEAST_PANEL = 1.0
"""Narrowest panel worth a frame, in. Shop choice."""
LEAST_RAISED = 2.0
"""Narrowest and lowest board that is laid on a column's face, in. Shop choice."""
LEAST_OVER = 6.0
"""Least height of an overmantel, in. Shop choice."""
IN_GROOVE = "solid panels lie in a groove of their frame, with wood behind it"
RAIL_BEHIND_PLINTH = 0.75
"""How far a column's lowest rail runs down behind the plinth, in. Shop choice."""


@dataclass(frozen=True, slots=True)
class Levels:
    """What both columns' frames keep to: the frieze's panels, the heights over them and the mouldings.

    Above y = `edge_bottom` the shelf's edge leaves `edge_room` before the columns' faces.
    """

    frieze: Frame
    shelf_bottom: float
    edge_bottom: float
    edge_room: float
    under_bed: float
    capital: Section | None
    plinth_cap: Section | None
    ends_at_frieze: bool
    taper: Taper

    @property
    def under_capital(self) -> float:
        """y of the capital's foot, or of the frieze's where there is none."""
        return self.frieze.outline[1] - (self.capital.height if self.capital else 0.0)


def fit_overmantel(
    site: Site, design: Design, sides: Sequence[Side], between: Point2, shelf_back: float, ledger: Ledger
) -> Overmantel | None:
    """As wide as the columns stand apart, on the shelf, `between` y of its top and of the ceiling.

    `shelf_back` is z behind the shelf. None where none is asked for, or less than LEAST_OVER has room.
    """
    over, (bottom, ceiling) = design.over, between
    if not over.on:
        return None
    free = ceiling - bottom
    height = free if over.reach == TO_CEILING else min(over.height, free)
    height = height if height >= LEAST_OVER else 0.0
    if over.reach != TO_CEILING or not height:
        ledger.hold("over.height", over.height, height, "the ceiling is too near over the shelf")
    if not height:
        return None
    back = -site.facing.proud if bottom >= site.facing.height else 0.0
    least = max(design.board.thickness, design.panel.thickness + LEAST_REVEAL)
    least = max(least, shelf_back - back + design.board.thickness)
    deepest = design.shelf_depth - back
    projection = min(max(over.projection, least), deepest)
    reason = "it stands on the shelf and is no thinner than its boards"
    ledger.hold("over.projection", over.projection, projection, reason)
    outline = (-sides[0].outer_top, bottom, sides[1].outer_top, bottom + height)
    return Overmantel(_over_frame(design, outline, back + projection, projection, ledger), back)


def _over_frame(design: Design, outline: Rect, front: float, depth: float, ledger: Ledger) -> Frame:
    x0, y0, x1, y1 = outline
    over, asked = design.over, design.panel.reveal
    reveal = min(asked, depth - design.panel.thickness)
    reason = "the overmantel stands too close to what is behind it for the panel"
    ledger.hold("panel.reveal", asked, reveal, reason)
    reveal = _grooved_reveal(design, reveal, ledger)
    count, stile = _fit_panels("over", "wide", over.panels, over.stile, x1 - x0, 1, ledger)
    ledger.hold("over.stile", over.stile, stile, "the field is too narrow for the stiles and a panel")
    rail = min(over.rail, (y1 - y0 - LEAST_PANEL) / 2)
    ledger.hold("over.rail", over.rail, rail, "the field is too low for two rails and a panel")
    low, high = y0 + rail, y1 - rail
    panel_width = (x1 - x0 - (count + 1) * stile) / count
    lefts = [x0 + stile + i * (panel_width + stile) for i in range(count)]
    return Frame(
        outline=outline,
        front=front,
        reveal=_reveal(design, reveal, front - design.panel.thickness),
        stiles=tuple((x, low, x + stile, high) for x in (x0, *(left + panel_width for left in lefts))),
        rails=((x0, y0, x1, low), (x0, high, x1, y1)),
        openings=tuple((left, low, left + panel_width, high) for left in lefts),
    )


def _fit_panels(
    path: str, what: str, asked: int, member: float, free: float, extra: int, ledger: Ledger
) -> tuple[int, float]:
    """Panels and member width that fit in `free`: n panels with n + `extra` members between and around."""
    count = asked
    while count > 1 and free - (count + extra) * member < count * LEAST_PANEL:
        count -= 1
    ledger.hold(f"{path}.panels", asked, count, f"the panels would be under {LEAST_PANEL:g} in. {what}")
    width = min(member, (free - count * LEAST_PANEL) / (count + extra))
    return count, width


def lay_column(
    design: Design, outline: Rect, plinth_top: float, levels: Levels, taper: Edges | None, ledger: Ledger
) -> Frame:
    """What a column's kind shows from the plinth up to the bed mould, the capital or a frieze over it."""
    cap = levels.plinth_cap
    low = plinth_top + (cap.height if cap else 0.0)
    high = levels.under_capital if levels.ends_at_frieze else levels.under_bed
    if design.column.kind == PLAIN:
        return _plain_face(design, outline, [outline])
    if design.column.kind == FLUTED:
        return _fluted_face(design, outline, low, high, ledger)
    if design.column.kind == RAISED:
        return _raised_face(design, outline, (low, high), levels, taper, ledger)
    return _framed_column(design, outline, (plinth_top, low, high), levels, taper, ledger)


def _plain_face(design: Design, outline: Rect, boards: Sequence[Rect], flutes: Rect | None = None) -> Frame:
    return Frame(outline, design.column.projection, design.board.thickness, tuple(boards), (), (), flutes)


def _fluted_face(design: Design, outline: Rect, low: float, high: float, ledger: Ledger) -> Frame:
    """Three boards one over the other: the flutes are in the middle one and end where it does."""
    x0, y0, x1, y1 = outline
    asked = design.flute.stop
    stop = min(asked, (high - low - LEAST_PANEL) / 2)
    stop = stop if stop >= LEAST_STOP else 0.0
    reason = "the column is too low for more" if stop else "that is too little for a piece of its own"
    ledger.hold("flute.stop", asked, stop, reason)
    levels = (y0, low + stop, high - stop, y1)
    boards = [(x0, a, x1, b) for a, b in pairwise(levels) if b - a > LEAST_LAYER / 2]
    return _plain_face(design, outline, boards, (x0, levels[1], x1, levels[2]))


def _raised_face(
    design: Design, outline: Rect, y: Point2, levels: Levels, taper: Edges | None, ledger: Ledger
) -> Frame:
    """One board, and one laid on it with the same margin all round what shows between two levels.

    Without the second where the shelf's edge hangs before it and leaves less than LEAST_LAYER.
    """
    x0, x1 = taper.narrowest if taper else (outline[0], outline[2])
    asked = design.raised
    margin = min(asked.margin, (x1 - x0 - LEAST_RAISED) / 2, (y[1] - y[0] - LEAST_RAISED) / 2)
    reason = f"the board would be under {LEAST_RAISED:g} in. wide or high"
    ledger.hold("raised.margin", asked.margin, margin, reason)
    room = levels.edge_room if levels.edge_bottom < y[1] - margin else asked.thickness
    thickness = min(asked.thickness, room) if room >= LEAST_LAYER else 0.0
    ledger.hold("raised.thickness", asked.thickness, thickness, "the shelf does not reach over more")
    raised = RaisedBoard((y[0] + margin, y[1] - margin), margin, thickness) if thickness else None
    return replace(_plain_face(design, outline, [outline]), raised=raised)


def _framed_column(
    design: Design,
    outline: Rect,
    reach: tuple[float, float, float],
    levels: Levels,
    taper: Edges | None,
    ledger: Ledger,
) -> Frame:
    """Panels over `reach`: the plinth's top, their zone's foot and its head; one more over a capital."""
    x0, y0, x1, y1 = outline
    plinth_top, low, high = reach
    column = design.column
    narrow = taper.narrowest if taper else (x0, x1)
    stile = ledger.hold(
        "column.stile",
        column.stile,
        min(column.stile, (narrow[1] - narrow[0] - LEAST_PANEL) / 2),
        "the column is too narrow for two of them and a panel",
    )
    panels = _stack_panels(design, low, high, ledger)
    leaning = (panels[0][0], panels[-1][1])
    if levels.ends_at_frieze and design.frieze.place != IN_FRONT:
        panels.append(_beside_frieze(design, levels))
    edges = [plinth_top - min(RAIL_BEHIND_PLINTH, plinth_top - y0), *(edge for p in panels for edge in p), y1]
    rails = zip(edges[::2], edges[1::2], strict=True)
    inside = _inside(taper, stile, leaning) if taper else None

    def within(y: Point2) -> Rect:
        left, right = inside.within(y) if inside else (x0 + stile, x1 - stile)
        return left, y[0], right, y[1]

    return Frame(
        outline=outline,
        front=column.projection,
        reveal=_column_reveal(design, taper, ledger),
        stiles=((x0, y0, x0 + stile, y1), (x1 - stile, y0, x1, y1)),
        rails=tuple(within(y) for y in rails),
        openings=tuple(within(y) for y in panels),
        inside=inside,
    )


def _stack_panels(design: Design, low: float, high: float, ledger: Ledger) -> list[Point2]:
    """y of each panel's edges from `low` up to `high`, with rails below, between and above them."""
    column = design.column
    count, rail = _fit_panels("column", "high", column.panels, column.rail, high - low, 1, ledger)
    ledger.hold("column.rail", column.rail, rail, "the column is too low for the rails and a panel")
    height = (high - low - (count + 1) * rail) / count
    bottoms = [low + rail + i * (height + rail) for i in range(count)]
    return [(bottom, bottom + height) for bottom in bottoms]


def _inside(taper: Edges, stile: float, panels: Point2) -> Edges:
    """Along stiles that are `stile` wide beside the panels, and upright beside the rails below and above.

    So only the rails between two panels have angled ends.
    """
    whole = taper.inset(stile)
    return Edges(whole.inner.held(*panels), whole.outer.held(*panels))


def _column_reveal(design: Design, taper: Edges | None, ledger: Ledger) -> float:
    """As asked; a tapered column's panels are one sheet right behind its boards."""
    asked, board = design.panel.reveal, design.board.thickness
    built = _reveal(design, asked)
    if taper is None:
        return _grooved_reveal(design, built, ledger)
    if built == board:
        return built
    reason = "the panels of a tapered column are one sheet right behind its boards"
    return ledger.hold("panel.reveal", asked, board, reason)


def _beside_frieze(design: Design, levels: Levels) -> Point2:
    """Foot and head of the panel over a capital: the frieze's, or what rails like its own would leave."""
    if levels.frieze.openings:
        _, low, _, high = levels.frieze.openings[0]
        return low, high
    bottom = levels.frieze.outline[1]
    rail = min(design.column.rail, (levels.under_bed - bottom - LEAST_PANEL) / 2)
    return bottom + rail, levels.under_bed - rail


def _frieze_reveal(design: Design, front: float, ledger: Ledger) -> float:
    asked = design.panel.reveal
    if design.frieze.place == IN_FRONT:
        built = design.front_reveal
        reason = "the panels of a frieze over the columns lie within its boards, or behind them"
        reason = IN_GROOVE if design.groove_reveal is not None else reason
        return built if abs(built - asked) < FLUSH else ledger.hold("panel.reveal", asked, built, reason)
    built = min(asked, front - design.panel.thickness)
    reason = "the frieze stands too close to the masonry for the panel behind it"
    return _grooved_reveal(design, ledger.hold("panel.reveal", asked, built, reason), ledger)


def _grooved_reveal(design: Design, reveal: float, ledger: Ledger) -> float:
    """`reveal`, or less where solid panels lie in a groove."""
    if design.groove_reveal is None:
        return reveal
    built = min(reveal, design.groove_reveal)
    return ledger.hold("panel.reveal", design.panel.reveal, built, IN_GROOVE) if built < reveal else reveal


def lay_frieze(design: Design, outline: Rect, front: float, under_bed: float, ledger: Ledger) -> Frame:
    """The frieze's panels, as many as `outline` has room for; one board over all of it unless it is framed.

    `front` is z of its face. Panels end below y = `under_bed`, the foot of the bed mould.
    """
    x0, y0, x1, y1 = outline
    frieze = design.frieze
    if frieze.kind != FRAMED:
        return Frame(outline, front, design.board.thickness, (), (outline,), ())
    reveal = _frieze_reveal(design, front, ledger)
    count, stile = _fit_panels("frieze", "wide", frieze.panels, frieze.stile, x1 - x0, 1, ledger)
    ledger.hold("frieze.stile", frieze.stile, stile, "the frieze is too short for the stiles and a panel")
    rail = ledger.hold(
        "frieze.rail",
        frieze.rail,
        min(frieze.rail, (under_bed - y0 - LEAST_PANEL) / 2),
        "the frieze is too low for two rails and a panel",
    )
    low, high = y0 + rail, under_bed - rail
    panel_width = (x1 - x0 - (count + 1) * stile) / count
    lefts = [x0 + stile + i * (panel_width + stile) for i in range(count)]
    stile_lefts = [x0] + [left + panel_width for left in lefts]
    return Frame(
        outline=outline,
        front=front,
        reveal=_reveal(design, reveal, front - design.panel.thickness),
        stiles=tuple((left, low, left + stile, high) for left in stile_lefts),
        rails=((x0, y0, x1, low), (x0, high, x1, y1)),
        openings=tuple((left, low, left + panel_width, high) for left in lefts),
    )


def _reveal(design: Design, asked: float, most: float = inf) -> float:
    """Flush on the frame's back where the difference is too thin to cut; no further back than `most`."""
    board = design.board.thickness
    return board if abs(asked - board) < FLUSH and board <= most else asked
