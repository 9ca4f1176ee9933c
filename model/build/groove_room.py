"""Whether a frame has room for the groove that solid panels want; where it has not, its panels are sheets."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from model.build.groove import Swing, find_groove
from model.build.ledger import Ledger
from model.build.lines import Frame
from model.design import SHEET, SOLID, Design
from model.reference.moisture import swell
from model.reference.panels import LEAST_WEB
from model.seasons import list_moistures
from model.site import Site


def groove_frame(site: Site, design: Design, built: float, frame: Frame, name: str, ledger: Ledger) -> Frame:
    """`frame` with the groove for solid panels made at `built` % moisture; as it is where none is cut."""
    if design.panel.kind != SOLID or not frame.openings:
        return frame
    if frame.inside is not None:
        reason = "the panels of a tapered column are one sheet right behind its boards"
    elif design.groove_reveal is None:
        reason = "the boards are too thin for a groove that takes panels of that thickness"
    else:
        groove = find_groove(frame.openings, find_swing(site, design, built), most_depth(frame))
        if groove is not None:
            return replace(frame, groove=groove)
        reason = f"the {name}'s stiles and rails are too narrow for the groove that such panels move in"
    ledger.swap("panel.kind", SOLID, SHEET, reason)
    return frame


def find_swing(site: Site, design: Design, built: float) -> Swing:
    """How the wood of the design moves at the site from `built` % moisture on."""
    dry, damp, fire = list_moistures(site)
    wettest, driest, species = max(built, damp), min(built, dry, fire), design.board.species
    swells, shrinks = (swell(species, 1.0, built, end) for end in (wettest, driest))
    return Swing(built, wettest, driest, swells, -shrinks)


def most_depth(frame: Frame) -> float:
    """How deep a groove may be without leaving too little of any stile or rail, in."""
    stiles = _room([x1 - x0 for x0, _, x1, _ in frame.stiles])
    return min(stiles, _room([y1 - y0 for _, y0, _, y1 in frame.rails]))


def _room(widths: Sequence[float]) -> float:
    """The outer members are grooved along one edge, those between two panels along both."""
    edges = [1, *[2] * (len(widths) - 2), 1]
    return min((width - LEAST_WEB.value) / count for width, count in zip(widths, edges, strict=True))
