"""What is the maker's own: rates, times, allowances, saw, pieces on hand, the offer. Not design, not site.

Defaults and bounds stand in model.rows, sources in model.reference. Lengths in inches.
"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Rates:
    """How far materials go. Coverages in square feet to the gallon, losses and moisture in percent.

    `glue_film` in mils, `caulk_cartridge` in fluid ounces, `abrasive_disc` in square feet to a disc.
    """

    moisture: float
    primer_coverage: float
    primer_coats: int
    stain_coverage: float
    clear_coverage: float
    top_coverage: float
    top_coats: int
    coat_loss: float
    glue_film: float
    glue_loss: float
    caulk_cartridge: float
    caulk_loss: float
    bead_wood: float
    bead_masonry: float
    nail_factor: float
    nail_spacing: float
    brad_spacing: float
    filler_loss: float
    abrasive_disc: float
    abrasive_grits: int
    frame_screws: int
    hole_width: float
    hole_depth: float
    seam: float
    tape_sides: int


@dataclass(frozen=True, slots=True)
class Times:
    """How long work takes and what dries, in hours; `crew` people work `day` hours a day.

    `cut`, `install` and `finish` are for the whole surround, `column`, `frieze` and `shelf` for one of each,
    `panel`, `piece`, `mitre`, `anchor` and `coat` for each one, `moulding` for a foot. The others are waited
    for: `clamp` before a glued piece is handled, `cure` before it is fitted, `filler`, `caulk`, `primer`,
    `top`, `stain` and `clear` before the next work on them, `hard` and `clear_hard` after the last coat.
    """

    crew: int
    day: float
    cut: float
    column: float
    frieze: float
    shelf: float
    panel: float
    piece: float
    moulding: float
    mitre: float
    anchor: float
    install: float
    finish: float
    coat: float
    clamp: float
    cure: float
    filler: float
    caulk: float
    primer: float
    top: float
    hard: float
    stain: float
    clear: float
    clear_hard: float


@dataclass(frozen=True, slots=True)
class Allowances:
    """Wood left on a piece over its finished size, and taken off again in turn."""

    scribe: float
    trim_end: float
    trim_edge: float
    glue_length: float
    glue_width: float


@dataclass(frozen=True, slots=True)
class Saw:
    """A hand-held circular saw; `None` where it has not been measured.

    `shoe_left` and `shoe_right` run from the shoe's edges to the near side of the blade, as seen from
    behind the saw; `kerf` is the width of its cut.
    """

    shoe_left: float | None
    shoe_right: float | None
    kerf: float | None


NO_USE = "nothing"
"""The use of a piece on hand that is left out of account."""


@dataclass(frozen=True, slots=True)
class Piece:
    """A board that is there already, reclaimed or left over, and what it is to be used for.

    None where a size was not measured. `clear` is what of each end cannot be used: old holes, checks.
    """

    name: str
    use: str
    length: float | None
    width: float | None
    thickness: float | None
    clear: float


@dataclass(frozen=True, slots=True)
class Offer:
    """What the homeowner is offered. `hour` and `sundries` in the stock list's currency, `hours` of all work
    or of one kind, all None until they are set; percentages, and whether each is shown; words, a line for
    each thing.
    """

    hour: float | None
    hours: float | None
    cutting_hours: float | None
    building_hours: float | None
    fitting_hours: float | None
    finishing_hours: float | None
    sundries: float | None
    waste: float
    overhead: float
    margin: float
    tax: float
    shows: str
    waste_shown: bool
    overhead_shown: bool
    margin_shown: bool
    tax_shown: bool
    colour: str
    promised: str
    included: str
    left_out: str
    excluded: str
    allowances: str
    terms: str
    notes: str
    days: int


@dataclass(frozen=True, slots=True)
class Shop:
    """Everything of the maker's that a takeoff needs."""

    rates: Rates
    times: Times
    allow: Allowances
    saw: Saw
    piece_one: Piece
    piece_two: Piece
    offer: Offer
