"""How the surround meets the facing and the wall behind it: what stays bare, and what stands off."""

from __future__ import annotations

from collections.abc import Iterator

from model.check.clearance import HAIR
from model.check.finding import Bound, Finding, Status
from model.check.part import FRIEZE, SHELF
from model.check.plain import FIT, build_plain
from model.check.wording import Wording
from model.surround import Surround


def check_backing(surround: Surround) -> tuple[Finding, ...]:
    """Findings of fit: a frieze over the opening, bare wall, wood that stands off; only what is amiss."""
    wording = Wording(surround.job.about.length_style)
    found = [*_check_frieze(surround, wording), *_check_bare_wall(surround, wording)]
    if surround.job.site.facing.proud > HAIR:
        found += _check_stand_off(surround, wording.distance(surround.job.site.facing.proud))
    return tuple(found)


def _check_frieze(surround: Surround, wording: Wording) -> Iterator[Finding]:
    margin = surround.layout.facing_margin
    if margin < -HAIR:
        message = f"The frieze comes {wording.distance(-margin)} down over the opening."
        cure = "Make the frieze lower, or set the shelf higher."
        yield build_plain(FIT, Status.FAIL, FRIEZE, message, "frieze.height", cure, margin, 0.0)


def _check_bare_wall(surround: Surround, wording: Wording) -> Iterator[Finding]:
    """Wall that shows between the facing's edge and the wood."""
    layout = surround.layout
    inner = max(layout.right.inner, layout.right.inner_top)
    beside = inner - layout.facing_side
    if beside > HAIR:
        message = f"{wording.distance(beside)} of bare wall shows between the facing and each column."
        cure = "Bring the columns in over the facing's edges, or widen the facing."
        yield build_plain(
            FIT,
            Status.WARN,
            "columns",
            message,
            "column.margin",
            cure,
            inner,
            layout.facing_side,
            bound=Bound.MOST,
        )
    above = layout.frieze_bottom - layout.facing_top
    if above > HAIR:
        message = f"{wording.distance(above)} of bare wall shows between the facing and the frieze."
        cure = "Bring the frieze down over the facing's top, or raise the facing."
        yield build_plain(
            FIT,
            Status.WARN,
            FRIEZE,
            message,
            "frieze.height",
            cure,
            layout.frieze_bottom,
            layout.facing_top,
            bound=Bound.MOST,
        )


def _check_stand_off(surround: Surround, off: str) -> Iterator[Finding]:
    """Backs that lie on a proud facing and run on past its edge, `off` the wall."""
    layout = surround.layout
    if any(
        side.outer_back == 0.0 and max(side.outer, side.outer_top) > layout.facing_side + HAIR
        for side in layout.sides
    ):
        message = f"The columns' outer sides straddle the facing's edge, {off} off the wall."
        cure = "Set the columns so that their outer sides lie on the facing or clear of it."
        yield build_plain(FIT, Status.WARN, "columns", message, "column.margin", cure)
    if layout.shelf_back == 0.0 and layout.shelf_reach > layout.facing_side + HAIR:
        message = f"The shelf's ends stand {off} off the wall beside the facing."
        cure = "Return the ends to the wall, or keep them on the facing."
        yield build_plain(FIT, Status.WARN, SHELF, message, "shelf.overhang_end", cure)
