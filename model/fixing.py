"""How the surround is held and what runs inside it, as chosen. Lengths in inches.

Defaults and bounds stand in model.parameters; what is built of it in model.build.
"""

from dataclasses import dataclass

OWN = "own"
"""The word for a plug that is in no table."""
IN_FRIEZE = "frieze"
"""The word for a way behind the frieze; the others name a column."""


@dataclass(frozen=True, slots=True)
class Nailer:
    """The wood fixed to the masonry: `width` of a column's uprights, `clearance` on each side of them.

    `ledger` is the height of the strip under the shelf, `cleat` of the one behind the frieze's lower edge.
    """

    width: float
    clearance: float
    ledger: float
    cleat: float


@dataclass(frozen=True, slots=True)
class CordWay:
    """A way for cords through a column or behind the frieze: where, and the largest thing that must pass.

    `plug` is a word of model.reference.connectors, or OWN for `own_width` by `own_height`. `clearance` is
    how much wider the hole is than the plug's diagonal, `exit_height` how high over a column's foot the lower
    hole lies, `panel_clearance` what is free on each side of the loose panel.
    """

    on: bool
    place: str
    plug: str
    own_width: float
    own_height: float
    clearance: float
    exit_height: float
    panel_clearance: float


@dataclass(frozen=True, slots=True)
class AnchorRule:
    """What one anchor may hold, pounds, and where it may go: least from an edge, most from the next.

    `lintel` is how much over the opening is left to what carries the masonry there.
    """

    tension: float
    shear: float
    edge: float
    spacing: float
    lintel: float
