"""Where everything lies at a site: every line of the design laid out as near to it as can be.

Each part's lines have a file of their own; here is in which order they follow from each other. What cannot
be built as asked gets a Shortfall in the ledger.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from functools import lru_cache

from model.board import Point2
from model.build.behind import Rest, list_behind
from model.build.column_lines import fit_zones, lay_side, set_levels
from model.build.flutes import Flutes, fit_flutes
from model.build.foot import Foot, place_foot
from model.build.frame_lines import Levels, fit_overmantel, lay_frieze
from model.build.groove_room import groove_frame
from model.build.ledger import Ledger
from model.build.lines import LEFT, RIGHT, STRIP, Frame, Layout, Overmantel, Rect, Side
from model.build.moulding_room import fit_back_band, fit_bed_mould, fit_panel_mould, fit_slip, fit_tablet
from model.build.mouldings import Mouldings
from model.build.obstacles import Ground, Meeting, Obstacle, find_ground, list_obstacles
from model.build.overhang import end_overhang, mould_overhang
from model.build.shelf_lines import ShelfLines, fit_shelf_lines
from model.build.shelf_step import fit_step
from model.build.taper import Taper, fit_width
from model.design import IN_FRONT, PLANK, Design
from model.moulding.section import Section
from model.reference.rates import MOISTURE
from model.site import Site

LEAST_MOUTH = 1.0
"""Height of the firebox's mouth that is left over a raised floor at least, in. Shop choice."""


@lru_cache(maxsize=4)
def lay_out(site: Site, design: Design, moisture: float = MOISTURE.value) -> Layout:
    """The lines of `design` at `site`. Never fails for values in bounds; see `shortfalls`.

    `moisture`, %, is what the wood has on the bench: solid panels are cut by it. Remembered: moving
    an edge asks for the same lines twice, first for what can be built and then to build it.
    """
    ledger = Ledger()
    feet = (place_foot(site, design, LEFT, ledger), place_foot(site, design, RIGHT, ledger))
    shelf = fit_shelf_lines(site, design, max(0.0, feet[0].base, feet[1].base), ledger)
    wanted = fit_width(design, min(foot.width for foot in feet), ledger)
    step, bed = _fit_shelf_front(design, feet, shelf, wanted, ledger)
    under_bed = shelf.bottom - (bed.height if bed else 0.0)
    zones = fit_zones(site, design, feet, shelf, under_bed, wanted, ledger)
    outline = _outline_frieze(design, feet, shelf, zones.taper)
    frieze = lay_frieze(design, outline, shelf.frieze_front, under_bed, ledger)
    frieze = groove_frame(site, design, moisture, frieze, "frieze", ledger)
    flutes = _fit_flutes(design, feet, zones.taper, ledger)
    levels = set_levels(design, frieze, shelf, step, under_bed, zones)
    left, right = sides = (
        lay_side(site, design, feet[0], zones.plinth_tops[0], levels, moisture, ledger),
        lay_side(site, design, feet[1], zones.plinth_tops[1], levels, moisture, ledger),
    )
    over = _lay_overmantel(site, design, sides, shelf, moisture, ledger)
    framed = [side.frame for side in sides] + [frieze] + ([over.frame] if over else [])
    panel_mould = fit_panel_mould(design, framed, ledger)
    back_band = fit_back_band(site, design, sides, frieze, zones.plinth_cap, ledger)
    ground = find_ground(site)
    obstacles = _list_obstacles(site, design, sides, levels, ground, ledger)
    strips = _fit_strips(design, frieze, ledger)
    inner = feet[0].inner + zones.taper.inner
    rest = _find_rest(site, design, frieze, inner, strips[0])
    behind = list_behind(site, ground, rest, ledger)
    tablet = fit_tablet(design, inner, frieze, under_bed, shelf.hanging, ledger)
    slip = fit_slip(site, design, sides, frieze, back_band, ledger)
    return Layout(
        opening_side=site.opening.width / 2,
        opening_top=site.opening.height,
        opening_foot=min(site.opening.sill, site.opening.height - LEAST_MOUTH),
        facing_side=site.facing.width / 2,
        facing_top=site.facing.height,
        hearth_side=site.hearth.width / 2,
        hearth_front=site.hearth.depth,
        floor=-site.hearth.height,
        ceiling=site.room.ceiling - site.hearth.height,
        wall=-site.facing.proud,
        left=left,
        right=right,
        column_inner=inner,
        column_front=design.column.projection,
        plinth_front=design.column.projection + _plinth_out(design),
        plinth_out=_plinth_out(design),
        frieze_bottom=shelf.frieze_bottom,
        frieze_front=shelf.frieze_front,
        shelf_bottom=shelf.bottom,
        shelf_top=shelf.top,
        shelf_front=max(design.column.projection, shelf.frieze_front) + design.shelf.overhang_front,
        shelf_step=step,
        shelf_back=_back_at(site, shelf.bottom),
        board=design.board.thickness,
        panel=design.panel.thickness,
        edge_bottom=shelf.edge_bottom,
        shelf_is_plank=design.shelf.kind == PLANK,
        frieze_frame=frieze,
        frieze_over=design.frieze.place == IN_FRONT,
        strips=strips,
        tablet=tablet,
        slip=slip,
        over=over,
        flutes=flutes,
        mouldings=Mouldings(
            bed=bed,
            capital=zones.capital,
            plinth_cap=zones.plinth_cap,
            panel=panel_mould,
            back_band=back_band,
            edge=shelf.worked,
            edge_size=shelf.worked_height,
        ),
        shortfalls=tuple(ledger.shortfalls),
        obstacles=obstacles,
        behind=behind,
    )


def _fit_shelf_front(
    design: Design, feet: Sequence[Foot], shelf: ShelfLines, wanted: Taper, ledger: Ledger
) -> tuple[float, Section | None]:
    """How far the shelf's front breaks forward over the columns, and the bed mould under it."""
    nearest = min(foot.inner + min(wanted.inner, 0.0) for foot in feet)
    breaks = [nearest - end_overhang(design, foot.name) for foot in feet]
    step = fit_step(design, breaks, shelf.worked is not None, ledger)
    overhang = mould_overhang(design, shelf.frieze_front, step) - shelf.hanging
    return step, fit_bed_mould(design, nearest, overhang, shelf.frieze_height, ledger)


def _outline_frieze(design: Design, feet: Sequence[Foot], shelf: ShelfLines, taper: Taper) -> Rect:
    """Between the columns' inner sides at their heads, or over both columns."""
    left, right = feet
    if design.frieze.place == IN_FRONT:
        x0, x1 = -left.outer - taper.outer, right.outer + taper.outer
    else:
        x0, x1 = -left.inner - taper.inner, right.inner + taper.inner
    return x0, shelf.frieze_bottom, x1, shelf.bottom


def _fit_flutes(design: Design, feet: Sequence[Foot], taper: Taper, ledger: Ledger) -> Flutes | None:
    narrowest = min(foot.width for foot in feet) - max(taper.total, 0.0)
    return fit_flutes(design, narrowest, bool(taper.total), ledger)


def _lay_overmantel(
    site: Site, design: Design, sides: Sequence[Side], shelf: ShelfLines, moisture: float, ledger: Ledger
) -> Overmantel | None:
    between = (shelf.top, site.room.ceiling - site.hearth.height)
    over = fit_overmantel(site, design, sides, between, _back_at(site, shelf.bottom), ledger)
    if over is None:
        return None
    return replace(over, frame=groove_frame(site, design, moisture, over.frame, "overmantel", ledger))


def _back_at(site: Site, y: float) -> float:
    """z of what lies behind at a level over the opening: the wall over the facing's top, else the facing."""
    return -site.facing.proud if y >= site.facing.height else 0.0


def _list_obstacles(
    site: Site, design: Design, sides: Sequence[Side], levels: Levels, ground: Ground, ledger: Ledger
) -> tuple[Obstacle, ...]:
    """What stands in the room, met by the columns as they are laid out."""
    cap, capital = levels.plinth_cap, levels.capital
    meeting = Meeting(
        plinth_out=_plinth_out(design),
        clear=design.column.projection - design.board.thickness,
        board=design.board.thickness,
        cap=cap.height if cap else 0.0,
        inside=design.slip.on or design.back_band.on,
        under_capital=levels.under_capital,
        capital_out=capital.projection if capital else 0.0,
    )
    return list_obstacles(site, sides, meeting, ground, ledger)


def _plinth_out(design: Design) -> float:
    """How far plinths stand out from the columns, 0 without them."""
    return design.plinth.projection if design.plinth.on else 0.0


def _find_rest(site: Site, design: Design, frieze: Frame, inner: float, strip: float) -> Rest:
    """What is to rest on a ledger under the shelf, `strip` high, 0 where there is no room for one."""
    top = frieze.outline[3]
    return Rest(top, inner, _frieze_hollow(design, frieze), _back_at(site, top - strip), bool(strip))


def _frieze_hollow(design: Design, frieze: Frame) -> float:
    """How far the masonry lies behind the frieze's panels and frame."""
    return frieze.front - max(design.board.thickness, frieze.thickness(design.panel.thickness))


def _fit_strips(design: Design, frieze: Frame, ledger: Ledger) -> Point2:
    """Heights of the ledger under the shelf and of the cleat over the soffit: the cleat has half of the
    hollow at most, the ledger what that leaves."""
    if _frieze_hollow(design, frieze) < STRIP:
        return 0.0, 0.0
    _, bottom, _, top = frieze.outline
    hollow, asked = top - bottom - design.board.thickness, design.nailer
    over_soffit = min(asked.cleat, hollow / 2)
    under_shelf = min(asked.ledger, hollow - over_soffit)
    reason = "behind the frieze it has what the cleat over the soffit leaves of the height"
    ledger.hold("nailer.ledger", asked.ledger, under_shelf, reason)
    reason = "behind the frieze it has half of the height"
    return under_shelf, ledger.hold("nailer.cleat", asked.cleat, over_soffit, reason)
