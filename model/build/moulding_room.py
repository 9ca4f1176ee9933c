"""What room there is for each moulding, the slip and the tablet, and what is fitted into it."""

from __future__ import annotations

from collections.abc import Sequence

from model.build.frame_lines import LEAST_PANEL
from model.build.ledger import LEFT_OUT, Ledger
from model.build.lines import LEAST_LAYER, LEAST_STEP, Frame, Side, Slip, Tablet
from model.build.mouldings import LEAST_MOULD, Room, fit_moulding, least_side
from model.build.overhang import least_overhang_at
from model.design import TABLET, Design
from model.moulding.library import Use
from model.moulding.section import Section
from model.site import Site

LEAST_ZONE = 3.0
"""Least height between plinth and capital that takes two rails and a panel, in. Shop choice."""
LEAST_BAND = 1.0
"""Least length of a back band's leg, in. Shop choice."""
BETWEEN_PANEL_MOULDS = 0.25
"""Least panel left between the mouldings along two sides of it, in. Shop choice."""


def fit_tablet(
    design: Design, inner: float, frieze: Frame, under_bed: float, hanging: float, ledger: Ledger
) -> Tablet | None:
    """In the middle of what shows of a plain frieze, behind an edge band that hangs `hanging` thick.

    `inner` is x of the columns' inner sides, `under_bed` y of the bed mould's foot. None where none is asked
    for, or where it could not stand out by LEAST_LAYER.
    """
    if design.frieze.kind != TABLET:
        return None
    asked, (_, y0, _, y1) = design.tablet, (*frieze.outline[:3], under_bed)
    reason = "the frieze is not large enough for more"
    width = ledger.hold("tablet.width", asked.width, min(asked.width, 2 * inner - LEAST_STEP), reason)
    height = ledger.hold("tablet.height", asked.height, min(asked.height, y1 - y0), reason)
    front = design.foremost + design.shelf.overhang_front - hanging
    thickness = min(asked.thickness, max(front - frieze.front, 0.0))
    if thickness < LEAST_LAYER:
        thickness = 0.0
    ledger.hold("tablet.thickness", asked.thickness, thickness, "the shelf does not reach over more")
    middle = (y0 + y1) / 2
    outline = (-width / 2, middle - height / 2, width / 2, middle + height / 2)
    return Tablet(outline, thickness) if thickness else None


def fit_bed_mould(
    design: Design, inner: float, overhang: float, frieze_height: float, ledger: Ledger
) -> Section | None:
    """Under the shelf's `overhang`, leaving the frieze its frame; None as `fit_moulding` says."""
    least_frame = 2 * (design.board.thickness + LEAST_MOULD) + LEAST_PANEL
    room = Room(
        frieze_height - least_frame,
        min(overhang, inner - LEAST_BAND),
        f"the shelf's overhang {least_overhang_at(design)} or the frieze leaves no room for more",
    )
    return fit_moulding(design, Use.BED_MOULD, "bed_mould", design.bed_mould, room, ledger)


def fit_capital(design: Design, around: float, under_frieze: float, ledger: Ledger) -> Section | None:
    """No further out than `around`: clear of its twin, and of an edge band that hangs down to it.

    `under_frieze` is the height from the higher plinth to the frieze. None as `fit_moulding` says.
    """
    room = Room(
        under_frieze - LEAST_ZONE,
        around,
        "the column below the frieze, or the room round it, is not large enough for more",
    )
    return fit_moulding(design, Use.CAPITAL, "capital", design.capital, room, ledger)


def fit_plinth_cap(design: Design, over_plinth: float, ledger: Ledger) -> Section | None:
    """On the plinths, no further out than they stand; `over_plinth` is how high there is room over them.

    None without plinths, else as `fit_moulding` says.
    """
    if not design.plinth.on:
        return None
    room = Room(
        over_plinth,
        design.plinth.projection,
        "the plinth does not stand out far enough, or the column is not high enough, for more",
    )
    return fit_moulding(design, Use.PLINTH_CAP, "plinth_cap", design.plinth_cap, room, ledger)


def fit_panel_mould(design: Design, frames: Sequence[Frame], ledger: Ledger) -> Section | None:
    """As deep as the panels lie behind their frames and clear of itself across the narrowest of them.

    None where no upright panel has room for it, and as `fit_moulding` says.
    """
    openings = [opening for frame in frames for opening in frame.upright]
    moulding = design.panel_mould
    if moulding.on and len(openings) < sum(len(frame.openings) for frame in frames):
        reason = "in the columns' leaning panels its corners are not square"
        ledger.swap("panel_mould.profile", moulding.profile, LEFT_OUT, reason)
    if not openings:
        if moulding.on and design.over.on and not any(frame.openings for frame in frames):
            ledger.swap(
                "panel_mould.profile", moulding.profile, LEFT_OUT, "there is no panel that it goes round"
            )
        return None
    room = Room(
        (least_side(openings) - BETWEEN_PANEL_MOULDS) / 2,
        min(frame.reveal for frame in frames if frame.upright),
        "the panels are too narrow, or lie too close behind their frames, for more",
    )
    return fit_moulding(design, Use.PANEL_MOULD, "panel_mould", design.panel_mould, room, ledger)


def fit_back_band(
    site: Site,
    design: Design,
    sides: Sequence[Side],
    frieze: Frame,
    cap: Section | None,
    ledger: Ledger,
) -> Section | None:
    """On the facing that shows inside the surround, no thicker than columns and frieze stand out.

    None as `fit_moulding` says: there is no room where the surround's inner edge is not on the facing.
    """
    bottom = frieze.outline[1]
    feet = max(side.plinth_top for side in sides) + (cap.height if cap else 0.0)
    margin, backed = _inner_edge(site, sides, bottom)
    room = Room(
        min(margin, bottom - feet - LEAST_BAND) if backed else 0.0,
        min(design.column.projection, frieze.front) - LEAST_LAYER,
        "no more facing shows inside the surround"
        if backed
        else "the surround's inner edge is not on the facing",
    )
    return fit_moulding(design, Use.BACK_BAND, "back_band", design.back_band, room, ledger)


def _inner_edge(site: Site, sides: Sequence[Side], bottom: float) -> tuple[float, bool]:
    """How much facing shows inside the surround, and whether its whole inner edge lies on the facing."""
    margin = min(sides[0].inner - site.opening.width / 2, bottom - site.opening.height)
    on_facing = bottom <= site.facing.height and all(side.inner_back == 0.0 for side in sides)
    return margin, site.facing.proud == 0 or on_facing


def fit_slip(
    site: Site,
    design: Design,
    sides: Sequence[Side],
    frieze: Frame,
    band: Section | None,
    ledger: Ledger,
) -> Slip | None:
    """On the facing inside a back band, no thicker than columns and frieze stand out.

    None where none is asked for, or less than LEAST_MOULD has room.
    """
    if not design.slip.on:
        return None
    asked, bottom = design.slip, frieze.outline[1]
    offset = band.height if band else 0.0
    margin, backed = _inner_edge(site, sides, bottom)
    room = margin - offset if backed else 0.0
    reason = "no more facing shows there" if backed else "the surround's inner edge is not on the facing"
    width = min(asked.width, room) if room >= LEAST_MOULD else 0.0
    ledger.hold("slip.width", asked.width, width, reason)
    if not width:
        return None
    deep = min(asked.thickness, min(design.column.projection, frieze.front) - LEAST_LAYER)
    ledger.hold("slip.thickness", asked.thickness, deep, "columns and frieze do not stand out further")
    return Slip(offset, width, deep)
