"""How high shelf and frieze lie and how the shelf's edge is made, as far as there is room over the feet.

What the shelf passes is model.build.overhang's, its step over the columns model.build.shelf_step's.
"""

from __future__ import annotations

from dataclasses import dataclass

from model.build.ledger import Ledger
from model.build.lines import LEAST_LAYER
from model.build.mouldings import fit_edge
from model.build.overhang import fit_edge_height
from model.design import IN_FRONT, PLANK, Design
from model.moulding.section import Section
from model.site import Site

LEAST_LEG = 12.0
"""Least height of the shelf's underside over the hearth that leaves a surround below it, in. Shop choice."""
LEAST_UNDER_FRIEZE = 6.0
"""Least column left free below the frieze, in. Shop choice."""


@dataclass(frozen=True, slots=True)
class ShelfLines:
    """Shelf and frieze as built, inches.

    `top` is y of the shelf's top, `frieze_front` z of the frieze's face. `edge` is how high the shelf's edge
    is, `hanging` how thick what of it hangs below the shelf, 0 where nothing does. `worked` is the edge's
    section where it is not square, `worked_height` how much of its height is worked.
    """

    top: float
    thickness: float
    frieze_height: float
    frieze_front: float
    edge: float
    hanging: float
    worked: Section | None
    worked_height: float

    @property
    def bottom(self) -> float:
        """y of the shelf's underside, where the frieze hangs from."""
        return self.top - self.thickness

    @property
    def frieze_bottom(self) -> float:
        """y of the frieze's lower edge."""
        return self.bottom - self.frieze_height

    @property
    def edge_bottom(self) -> float:
        """y of the lower edge of the shelf's edge."""
        return self.top - self.edge


def fit_shelf_lines(site: Site, design: Design, highest_foot: float, ledger: Ledger) -> ShelfLines:
    """Shelf and frieze over columns the higher of which stands at y = `highest_foot`."""
    front = _frieze_front(design, ledger)
    thickness = _shelf_thickness(design, ledger)
    top = _shelf_top(site, design, thickness + highest_foot + LEAST_LEG, ledger)
    asked, room = design.frieze.height, top - thickness - highest_foot - LEAST_UNDER_FRIEZE
    height = min(asked, room)
    ledger.hold("frieze.height", asked, height, "there is not that much height under the shelf")
    edge = fit_edge_height(design, thickness, ledger)
    hanging = design.board.thickness if edge > thickness else 0.0
    return ShelfLines(top, thickness, height, front, edge, hanging, *fit_edge(design, edge, ledger))


def _frieze_front(design: Design, ledger: Ledger) -> float:
    """Where its projection says, no thinner than a board; or against the columns' faces."""
    if design.frieze.place == IN_FRONT:
        return design.foremost
    asked, board = design.frieze.projection, design.board.thickness
    return ledger.hold("frieze.projection", asked, max(asked, board), "the boards are thicker than that")


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


def _shelf_top(site: Site, design: Design, least: float, ledger: Ledger) -> float:
    """y of it, no lower than `least`; asked for from the hearth or the floor."""
    datum = 0.0 if design.shelf.height_from == "hearth" else -site.hearth.height
    built = max(datum + design.shelf.height, least)
    ledger.hold("shelf.height", design.shelf.height, built - datum, "nothing can stand under so low a shelf")
    return built
