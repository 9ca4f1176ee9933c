"""The lines of both columns over their feet: plinths, caps, capitals, taper, and what lies behind each.

Where they stand is model.build.foot's, what their faces show model.build.frame_lines'.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from model.board import Point2
from model.build.facing import STEEPEST, Lean
from model.build.foot import Foot
from model.build.frame_lines import Levels, lay_column
from model.build.groove_room import groove_frame
from model.build.ledger import Ledger
from model.build.lines import LEFT, Frame, Side, find_step_up
from model.build.moulding_room import LEAST_BAND, LEAST_ZONE, fit_capital, fit_plinth_cap
from model.build.overhang import end_overhang, least_overhang, room_before_columns
from model.build.shelf_lines import ShelfLines
from model.build.taper import Taper, fit_slope
from model.design import IN_FRONT, Design
from model.moulding.section import Section
from model.site import Site


@dataclass(frozen=True, slots=True)
class Zones:
    """Over what heights the columns show their faces, and the mouldings at both ends of them.

    `plinth_tops` are y over the left and the right plinth, or of the foot without one; `ends_at_frieze` says
    that what a column shows ends below the frieze and not beside it.
    """

    plinth_tops: Point2
    plinth_cap: Section | None
    capital: Section | None
    ends_at_frieze: bool
    taper: Taper


def fit_zones(
    site: Site,
    design: Design,
    feet: Sequence[Foot],
    shelf: ShelfLines,
    under_bed: float,
    wanted: Taper,
    ledger: Ledger,
) -> Zones:
    """Plinths, their caps, capitals and `wanted` of the taper, as far as there is room below the frieze.

    `feet` are the left one and the right one, `under_bed` is y of the bed mould's foot.
    """
    bottom = shelf.frieze_bottom
    zoned = design.frieze.place == IN_FRONT or bool(wanted.total)
    left, right = (foot.base + _plinth_height(design, foot, bottom, zoned, ledger) for foot in feet)
    higher = max(left, right)
    around = min(foot.inner + min(wanted.inner, 0.0) for foot in feet) - LEAST_BAND
    if shelf.edge_bottom < bottom:
        around = min(around, least_overhang(design) - shelf.hanging)
    capital = fit_capital(design, around, bottom - higher, ledger)
    under_capital = bottom - (capital.height if capital else 0.0)
    ends_at_frieze = capital is not None or zoned
    shown = under_capital if ends_at_frieze else under_bed
    cap = fit_plinth_cap(design, min(bottom, shown - LEAST_ZONE) - higher, ledger)
    lows = [top + (cap.height if cap else 0.0) for top in (left, right)]
    taper = _fit_taper(site, design, feet, wanted, lows, under_capital, ledger)
    return Zones((left, right), cap, capital, ends_at_frieze, taper)


def _plinth_height(design: Design, foot: Foot, frieze_bottom: float, zoned: bool, ledger: Ledger) -> float:
    """0 without a plinth; what the column shows is `zoned` where it ends below the frieze."""
    if not design.plinth.on:
        return 0.0
    asked = design.plinth.height
    below_frieze = LEAST_ZONE if zoned else 1.0
    built = min(asked, frieze_bottom - foot.base - below_frieze)
    return ledger.hold("plinth.height", asked, built, "the frieze comes down to it")


def _fit_taper(
    site: Site,
    design: Design,
    feet: Sequence[Foot],
    wanted: Taper,
    lows: Sequence[float],
    under_capital: float,
    ledger: Ledger,
) -> Taper:
    """What the shafts, from y in `lows` up to the capital, leave of `wanted`; noted with its reason."""
    shafts = [(foot.inner, foot.outer, low) for foot, low in zip(feet, lows, strict=True)]
    facing = (site.facing.width / 2, site.facing.proud)
    taper = fit_slope(wanted, shafts, under_capital, facing, design.board.thickness, ledger)
    if any(foot.step for foot in feet):
        taper = taper.held(0.0, "a column that steps over the hearth's end stands straight")
    ledger.hold("column.taper", design.column.taper, taper.total, taper.reason)
    return taper


def set_levels(
    design: Design, frieze: Frame, shelf: ShelfLines, step: float, under_bed: float, zones: Zones
) -> Levels:
    """What both columns' faces keep to beside and below `frieze`, under a shelf with `step` over them."""
    return Levels(
        frieze=frieze,
        shelf_bottom=shelf.bottom,
        edge_bottom=shelf.edge_bottom,
        edge_room=room_before_columns(design, step, shelf.hanging),
        under_bed=under_bed,
        capital=zones.capital,
        plinth_cap=zones.plinth_cap,
        ends_at_frieze=zones.ends_at_frieze,
        taper=zones.taper,
    )


def lay_side(
    site: Site,
    design: Design,
    foot: Foot,
    plinth_top: float,
    levels: Levels,
    moisture: float,
    ledger: Ledger,
) -> Side:
    """The column over `foot` with its face and what lies behind it; `moisture`, %, is its wood's as built."""
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


def _fit_lean(site: Site, foot: Foot, back: float, shelf_bottom: float, ledger: Ledger) -> Lean | None:
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
