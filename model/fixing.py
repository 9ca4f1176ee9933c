"""How the surround is held and what runs inside it, as chosen. Lengths in inches.

Defaults and bounds stand in model.parameters; what is built of it in model.build.
"""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Nailer:
    """The wood fixed to the masonry: `width` of a column's uprights, `clearance` on each side of them.

    `ledger` is the height of the strip under the shelf, `cleat` of the one behind the frieze's lower edge.
    """

    width: float
    clearance: float
    ledger: float
    cleat: float
