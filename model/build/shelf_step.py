"""How far a shelf's front breaks forward over the columns, as far as that can be built; no boards."""

from __future__ import annotations

from collections.abc import Sequence

from model.build.ledger import Ledger
from model.design import PLANK, Design

LEAST_BREAK = 0.25
"""Smallest step that is worth mitring an edge band round, in. Shop choice."""
LEAST_BETWEEN = 2.0
"""Nearest that a break comes to the opening's centre line, in. Shop choice."""
LEAST_WEB = 1.5
"""Least depth of a board behind what is sawn out of its front edge between the breaks, in. Shop choice."""


def fit_step(design: Design, break_inners: Sequence[float], worked: bool, ledger: Ledger) -> float:
    """The step as built, 0 for a straight front.

    `break_inners` are x of both breaks' inner ends, each as if it stood on the right; `worked` says that
    the shelf's edge is.
    """
    asked = design.shelf.step
    if not asked:
        return 0.0
    reason = _find_obstacle(design, break_inners, worked)
    return ledger.hold("shelf.step", asked, 0.0 if reason else asked, reason)


def _find_obstacle(design: Design, break_inners: Sequence[float], worked: bool) -> str:
    """Why the shelf has to run straight; empty where it has not."""
    plank = design.shelf.kind == PLANK
    depth = design.shelf_depth - (0.0 if plank else design.board.thickness)
    if design.shelf.step < LEAST_BREAK:
        return "that is too little to mitre round"
    if min(break_inners) < LEAST_BETWEEN:
        return "the columns' overhangs leave nothing between both breaks"
    if depth < LEAST_WEB:
        return "the shelf is too shallow to be sawn to that shape"
    if plank and worked:
        return "the worked edge of a plank runs straight"
    return ""
