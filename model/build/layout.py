"""Where everything lies at a site: every line of the design laid out as near to it as can be.

What cannot be built as asked gets a Shortfall in the ledger.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from model.board import Point2
from model.build.behind import Rest, list_behind
from model.build.facing import STEEPEST, Lean
from model.build.flutes import fit_flutes
from model.build.frame_lines import Levels, fit_overmantel, lay_column, lay_frieze
from model.build.groove_room import groove_frame
from model.build.hearth_step import HearthStep, fit_hearth_step
from model.build.ledger import Ledger
from model.build.lines import LEAST_LAYER, LEFT, RIGHT, STRIP, Frame, Layout, Side, find_step_up
from model.build.moulding_room import (
    LEAST_BAND,
    LEAST_ZONE,
    fit_back_band,
    fit_bed_mould,
    fit_capital,
    fit_panel_mould,
    fit_plinth_cap,
    fit_slip,
    fit_tablet,
)
from model.build.mouldings import Mouldings, fit_edge
from model.build.obstacles import Ground, Meeting, list_obstacles
from model.build.overhang import end_overhang, fit_edge_height, least_overhang, mould_overhang
from model.build.shelf_step import fit_step
from model.build.taper import fit_slope, fit_width
from model.design import IN_FRONT, PLANK, Design
from model.reference.rates import MOISTURE
from model.site import Site

LEAST_MOUTH = 1.0
"""Height of the firebox's mouth that is left over a raised floor at least, in. Shop choice."""
LEAST_LEG = 12.0
"""Least height of the shelf's underside over the hearth that leaves a surround below it, in. Shop choice."""
LEAST_UNDER_FRIEZE = 6.0
"""Least column left free below the frieze, in. Shop choice."""
MOST_OUT_OF_LEVEL = 6.0
"""Most that a foot may lie off where it was expected, in.; beyond it the tape slipped. Shop choice."""


def lay_out(site: Site, design: Design, moisture: float = MOISTURE.value) -> Layout:
    """The lines of `design` at `site`. Never fails for values in bounds; see `shortfalls`.

    `moisture`, %, is what the wood has on the bench: solid panels are cut by it.
    """
    ledger = Ledger()
    floor = -site.hearth.height
    feet = tuple(_place_foot(site, design, name, ledger) for name in (LEFT, RIGHT))
    inner = feet[0].inner
    highest_foot = max(0.0, *(foot.base for foot in feet))
    board = design.board.thickness
    column_front = design.column.projection
    frieze_front = _frieze_front(design, ledger)
    thickness = _shelf_thickness(design, ledger)
    shelf_top = _shelf_top(design, floor, thickness + highest_foot + LEAST_LEG, ledger)
    shelf_bottom = shelf_top - thickness
    frieze_height = ledger.hold(
        "frieze.height",
        design.frieze.height,
        min(design.frieze.height, shelf_bottom - highest_foot - LEAST_UNDER_FRIEZE),
        "there is not that much height under the shelf",
    )
    frieze_bottom = shelf_bottom - frieze_height
    edge = fit_edge_height(design, thickness, ledger)
    hanging = board if edge > thickness else 0.0
    worked_edge, worked_height = fit_edge(design, edge, ledger)
    wanted = fit_width(design, min(foot.outer - foot.inner for foot in feet), ledger)
    nearest = min(inner, inner + wanted.inner)
    breaks = [nearest - end_overhang(design, foot.name) for foot in feet]
    step = fit_step(design, breaks, worked_edge is not None, ledger)
    overhang = mould_overhang(design, frieze_front, step) - hanging
    bed = fit_bed_mould(design, nearest, overhang, frieze_height, ledger)
    under_bed = shelf_bottom - (bed.height if bed else 0.0)
    over = design.frieze.place == IN_FRONT
    zoned = over or bool(wanted.total)
    plinth_tops = [foot.base + _plinth_height(design, foot, frieze_bottom, zoned, ledger) for foot in feet]
    beside_band = least_overhang(design) - hanging if shelf_top - edge < frieze_bottom else nearest
    capital = fit_capital(
        design, min(nearest - LEAST_BAND, beside_band), frieze_bottom - max(plinth_tops), ledger
    )
    ends_at_frieze = capital is not None or zoned
    below = frieze_bottom - (capital.height if capital else 0.0) if ends_at_frieze else under_bed
    over_plinth = min(frieze_bottom, below - LEAST_ZONE) - max(plinth_tops)
    cap = fit_plinth_cap(design, over_plinth, ledger)
    lows = [top + (cap.height if cap else 0.0) for top in plinth_tops]
    bounds = [(foot.inner, foot.outer, low) for foot, low in zip(feet, lows, strict=True)]
    under_capital = frieze_bottom - (capital.height if capital else 0.0)
    facing = (site.facing.width / 2, site.facing.proud)
    taper = fit_slope(wanted, bounds, under_capital, facing, board, ledger)
    if any(foot.step for foot in feet):
        taper = taper.held(0.0, "a column that steps over the hearth's end stands straight")
    ledger.hold("column.taper", design.column.taper, taper.total, taper.reason)
    inner += taper.inner
    x0, x1 = (-feet[0].outer - taper.outer, feet[1].outer + taper.outer) if over else (-inner, inner)
    frieze_frame = lay_frieze(design, (x0, frieze_bottom, x1, shelf_bottom), frieze_front, under_bed, ledger)
    frieze_frame = groove_frame(site, design, moisture, frieze_frame, "frieze", ledger)
    narrowest = min(foot.outer - foot.inner for foot in feet) - max(taper.total, 0.0)
    flutes = fit_flutes(design, narrowest, bool(taper.total), ledger)
    levels = Levels(frieze_frame, shelf_bottom, under_bed, capital, cap, ends_at_frieze, taper)
    plinth_out = design.plinth.projection if design.plinth.on else 0.0
    left, right = (
        _finish_side(site, design, foot, plinth_top, levels, moisture, ledger)
        for foot, plinth_top in zip(feet, plinth_tops, strict=True)
    )
    shelf_back = -site.facing.proud if shelf_bottom >= site.facing.height else 0.0
    ceiling = floor + site.room.ceiling
    overmantel = fit_overmantel(site, design, (left, right), (shelf_top, ceiling), shelf_back, ledger)
    if overmantel is not None:
        frame = groove_frame(site, design, moisture, overmantel.frame, "overmantel", ledger)
        overmantel = replace(overmantel, frame=frame)
    framed = (left.frame, right.frame, frieze_frame, *([overmantel.frame] if overmantel else []))
    panel_mould = fit_panel_mould(design, framed, ledger)
    back_band = fit_back_band(site, design, (left, right), frieze_frame, cap, ledger)
    ground = Ground(
        site.facing.width / 2, site.facing.height, site.hearth.width / 2, floor, -site.facing.proud
    )
    meeting = Meeting(
        plinth_out,
        column_front - board,
        board,
        cap.height if cap else 0.0,
        design.slip.on or design.back_band.on,
        under_capital,
        capital.projection if capital else 0.0,
    )
    obstacles = list_obstacles(site, (left, right), meeting, ground, ledger)
    strips = _fit_strips(design, frieze_frame, ledger)
    hollow = frieze_front - max(board, frieze_frame.thickness(design.panel.thickness))
    own_back = -site.facing.proud if shelf_bottom - strips[0] >= site.facing.height else 0.0
    rest = Rest(shelf_bottom, inner, hollow, own_back, bool(strips[0]))
    behind = list_behind(site, ground, rest, ledger)
    return Layout(
        opening_side=site.opening.width / 2,
        opening_top=site.opening.height,
        opening_foot=min(site.opening.sill, site.opening.height - LEAST_MOUTH),
        facing_side=site.facing.width / 2,
        facing_top=site.facing.height,
        hearth_side=site.hearth.width / 2,
        hearth_front=site.hearth.depth,
        floor=floor,
        ceiling=floor + site.room.ceiling,
        wall=-site.facing.proud,
        left=left,
        right=right,
        column_inner=inner,
        column_front=column_front,
        plinth_front=column_front + plinth_out,
        plinth_out=plinth_out,
        frieze_bottom=frieze_bottom,
        frieze_front=frieze_front,
        shelf_bottom=shelf_bottom,
        shelf_top=shelf_top,
        shelf_front=max(column_front, frieze_front) + design.shelf.overhang_front,
        shelf_step=step,
        shelf_back=shelf_back,
        board=board,
        panel=design.panel.thickness,
        edge_bottom=shelf_top - edge,
        shelf_is_plank=design.shelf.kind == PLANK,
        frieze_frame=frieze_frame,
        frieze_over=over,
        strips=strips,
        tablet=fit_tablet(design, inner, frieze_frame, under_bed, hanging, ledger),
        slip=fit_slip(site, design, (left, right), frieze_frame, back_band, ledger),
        over=overmantel,
        flutes=flutes,
        mouldings=Mouldings(
            bed=bed,
            capital=capital,
            plinth_cap=cap,
            panel=panel_mould,
            back_band=back_band,
            edge=worked_edge,
            edge_size=worked_height,
        ),
        shortfalls=tuple(ledger.shortfalls),
        obstacles=obstacles,
        behind=behind,
    )


@dataclass(frozen=True, slots=True)
class _Foot:
    """Where one column stands, before its height is known."""

    name: str
    inner: float
    outer: float
    base: float
    on_hearth: bool
    step: HearthStep | None = None

    @property
    def lowest(self) -> float:
        """y of its lowest part."""
        return self.step.floor if self.step else self.base


def _place_foot(site: Site, design: Design, name: str, ledger: Ledger) -> _Foot:
    """On the hearth that carries it whole, else beside it on the floor; then as its level reading says."""
    own = design.column.width_left if name == LEFT else design.column.width_right
    inner = site.opening.width / 2 + design.column.margin
    outer = inner + (design.column.width if own is None else own)
    around, side = design.plinth.projection if design.plinth.on else 0.0, site.hearth.width / 2
    on_hearth = outer + around <= side and design.column.projection + around <= site.hearth.depth
    base = -site.hearth.height if not on_hearth and inner - around >= side else 0.0
    reading = site.level.left if name == LEFT else site.level.right
    if reading is not None and site.level.centre is not None:
        measured = site.level.centre - reading
        held = min(max(measured, base - MOST_OUT_OF_LEVEL), base + MOST_OUT_OF_LEVEL)
        reason = f"that is more than {MOST_OUT_OF_LEVEL:g} in. out of level; measure again"
        ledger.hold(f"level.{name}", reading, reading + measured - held, reason)
        base = held
    step = fit_hearth_step(site, design, name, (inner, outer), base, ledger)
    return _Foot(name, inner, outer, base, on_hearth, step)


def _frieze_front(design: Design, ledger: Ledger) -> float:
    """Where its projection says, no thinner than a board; or against the columns' faces."""
    if design.frieze.place == IN_FRONT:
        return design.foremost
    asked, board = design.frieze.projection, design.board.thickness
    return ledger.hold("frieze.projection", asked, max(asked, board), "the boards are thicker than that")


def _plinth_height(design: Design, foot: _Foot, frieze_bottom: float, zoned: bool, ledger: Ledger) -> float:
    """0 without a plinth; what the column shows is `zoned` where it ends below the frieze."""
    if not design.plinth.on:
        return 0.0
    asked = design.plinth.height
    below_frieze = LEAST_ZONE if zoned else 1.0
    built = min(asked, frieze_bottom - foot.base - below_frieze)
    return ledger.hold("plinth.height", asked, built, "the frieze comes down to it")


def _finish_side(
    site: Site,
    design: Design,
    foot: _Foot,
    plinth_top: float,
    levels: Levels,
    moisture: float,
    ledger: Ledger,
) -> Side:
    facing, wall = site.facing.width / 2, -site.facing.proud
    outline = (foot.inner, foot.base, foot.outer, levels.shelf_bottom)
    low = plinth_top + (levels.plinth_cap.height if levels.plinth_cap else 0.0)
    taper = levels.taper.edges(foot.inner, foot.outer, low, levels.under_capital)
    inner, outer = taper.narrowest if taper else (foot.inner, foot.outer)
    inner_back = wall if min(foot.inner, inner) >= facing else 0.0
    outer_back = wall if outer - design.board.thickness >= facing else 0.0
    frame = lay_column(design, outline, plinth_top, levels, taper, ledger)
    return Side(
        name=foot.name,
        inner=foot.inner,
        outer=foot.outer,
        base=foot.base,
        on_hearth=foot.on_hearth,
        inner_back=inner_back,
        outer_back=outer_back,
        plinth_top=plinth_top,
        shelf_side=foot.outer + levels.taper.outer + end_overhang(design, foot.name),
        frame=groove_frame(site, design, moisture, frame, "column", ledger),
        lean=_fit_lean(site, foot, max(inner_back, outer_back), levels.shelf_bottom, ledger),
        step=foot.step,
        taper=taper,
    )


def _fit_lean(site: Site, foot: _Foot, back: float, shelf_bottom: float, ledger: Ledger) -> Lean | None:
    """What was read of the masonry at z = `back`, from the column's foot up to the shelf or its own top."""
    asked = site.plumb.left if foot.name == LEFT else site.plumb.right
    if not asked:
        return None
    step = find_step_up(site.facing.height, -site.facing.proud, (foot.base, shelf_bottom), back)
    top = shelf_bottom if step is None else step
    most = (top - foot.lowest) * STEEPEST
    reason = "that is more than one part in twelve out of plumb; measure again"
    built = ledger.hold(f"plumb.{foot.name}", asked, min(max(asked, -most), most), reason)
    return Lean(foot.lowest, top, built)


def _shelf_thickness(design: Design, ledger: Ledger) -> float:
    """The nearest thickness that whole layers make up: one board, one and a layer, two, or two and ribs."""
    asked, board = design.shelf.thickness, design.board.thickness
    if design.shelf.kind == PLANK:
        return asked
    built = max(asked, board)
    for layers in (board, 2 * board):
        if layers < built < layers + LEAST_LAYER:
            built = layers
    return ledger.hold("shelf.thickness", asked, built, "it is built up from boards of the given thickness")


def _shelf_top(design: Design, floor: float, least: float, ledger: Ledger) -> float:
    datum = 0.0 if design.shelf.height_from == "hearth" else floor
    built = max(datum + design.shelf.height, least)
    ledger.hold("shelf.height", design.shelf.height, built - datum, "nothing can stand under so low a shelf")
    return built


def _fit_strips(design: Design, frieze: Frame, ledger: Ledger) -> Point2:
    """Heights of the ledger under the shelf and of the cleat over the soffit: half of the hollow at most."""
    if frieze.front - max(design.board.thickness, frieze.thickness(design.panel.thickness)) < STRIP:
        return 0.0, 0.0
    _, bottom, _, top = frieze.outline
    most = (top - bottom - design.board.thickness) / 2
    asked, reason = design.nailer, "behind the frieze each of ledger and cleat has half of its height"
    under_shelf = ledger.hold("nailer.ledger", asked.ledger, min(asked.ledger, most), reason)
    return under_shelf, ledger.hold("nailer.cleat", asked.cleat, min(asked.cleat, most), reason)
