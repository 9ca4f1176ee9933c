"""The sections that are shipped, by key, and which of them suit which place on a surround.

The names say what elements they are made of, from the seat on. Their proportions are shop choices unless
`source` names where they are taken from. All are given at a handy size and are made as large as asked.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum

from model.moulding.elements import (
    Element,
    bead,
    bevel,
    cavetto,
    cyma_recta,
    cyma_reversa,
    fillet,
    ovolo,
    scotia,
    torus,
)
from model.moulding.section import Section

SHOP_CHOICE = "shop choice"
WARE_TUSCAN = "Ware, The American Vignola, The Tuscan Order"
VITRUVIUS_ATTIC = "Vitruvius, De architectura 3.5.2"


class Use(StrEnum):
    """A place on a surround that a moulding is made for."""

    BED_MOULD = "bed mould"
    CAPITAL = "capital"
    PLINTH_CAP = "plinth cap"
    PANEL_MOULD = "panel mould"
    BACK_BAND = "back band"
    SHELF_EDGE = "shelf edge"


@dataclass(frozen=True, slots=True)
class Shipped:
    """A section of the library, and where its proportions come from."""

    section: Section
    source: str = SHOP_CHOICE


def _flat(name: str, *elements: Element, foot: float = 0.125, source: str = SHOP_CHOICE) -> Shipped:
    return Shipped(Section(name, elements, foot), source)


def _sprung(name: str, spring: float, thickness: float, *elements: Element, foot: float) -> Shipped:
    return Shipped(Section(name, elements, foot, spring, thickness))


# fmt: off
SECTIONS: Mapping[str, Shipped] = {
    "cove_and_fillets": _flat(
        "Cove and fillets",
        fillet(0.125, 0.125), cavetto(0.75, 0.75), fillet(0.125)),
    "ovolo_and_fillets": _flat(
        "Ovolo and fillets",
        fillet(0.125, 0.125), ovolo(0.6875, 0.6875), fillet(0.1875), foot=0.1875),
    "cyma_recta": _flat(
        "Cyma recta and fillets",
        fillet(0.1875), cyma_recta(1.125, 1.125), fillet(0.1875), foot=0.1875),
    "cyma_reversa": _flat(
        "Cyma reversa and fillets",
        fillet(0.1875, 0.0625), cyma_reversa(1.0, 0.875), fillet(0.1875), foot=0.1875),
    "cyma_recta_bead": _flat(
        "Cyma recta over a bead",
        fillet(0.1875), cyma_recta(0.9375, 0.9375), fillet(0.125, 0.0625), bead(0.25), fillet(0.125),
        foot=0.1875),
    "ovolo_bead": _flat(
        "Ovolo over a bead",
        fillet(0.1875, 0.0625), ovolo(0.75, 0.6875), fillet(0.0625, 0.0625), bead(0.25), fillet(0.125),
        foot=0.1875),
    "ovolo_cavetto": _flat(
        "Ovolo over a cavetto",
        fillet(0.1875, 0.125), ovolo(0.625, 0.5625), fillet(0.125, 0.0625), cavetto(0.5, 0.4375),
        fillet(0.125)),
    "bevel": _flat(
        "Bevel and fillets",
        fillet(0.25), bevel(0.75, 0.625), fillet(0.25), foot=0.1875),
    "steps": _flat(
        "Three steps",
        fillet(0.375, 0.3125), fillet(0.375, 0.3125), fillet(0.375), foot=0.3125),
    "crown_38": _sprung(
        "Crown, cyma recta over a cove, sprung 38°", 38.0, 0.75,
        fillet(0.25, 0.0625), cyma_recta(1.375, 1.125), fillet(0.125, 0.125), cavetto(0.5, 0.375),
        fillet(0.25), foot=0.125),
    "crown_45": _sprung(
        "Crown, cyma recta over a bead, sprung 45°", 45.0, 0.6875,
        fillet(0.25), cyma_recta(1.25, 1.25), fillet(0.125, 0.125), bead(0.25), fillet(0.1875), foot=0.1875),
    "cove_45": _sprung(
        "Cove, sprung 45°", 45.0, 0.6875,
        fillet(0.1875, 0.125), cavetto(1.25, 1.25), fillet(0.1875, 0.0625), foot=0.125),
    "bed_38": _sprung(
        "Ovolo over a cyma reversa, sprung 38°", 38.0, 0.625,
        fillet(0.1875, 0.0625), ovolo(0.5, 0.4375), fillet(0.125, 0.0625), cyma_reversa(0.75, 0.5625),
        fillet(0.1875), foot=0.125),
    "ovolo": _flat(
        "Ovolo and fillet",
        fillet(0.125, 0.0625), ovolo(0.5, 0.4375), fillet(0.125)),
    "cavetto": _flat(
        "Cavetto and fillet",
        fillet(0.1875, 0.0625), cavetto(0.5625, 0.5), foot=0.0625),
    "conge": _flat(
        "Fillet and congé",
        fillet(0.375), cavetto(0.5, 0.5), foot=0.0625),
    "astragal": _flat(
        "Bead between fillets",
        fillet(0.1875), bead(0.375), fillet(0.1875), foot=0.1875),
    "torus": _flat(
        "Torus and fillet",
        torus(0.5), fillet(0.1875), foot=0.25),
    "thirds": _flat(
        "Abacus, ovolo and necking in thirds",
        fillet(0.1875, 0.09375), fillet(0.5625, 0.09375), ovolo(0.5625, 0.46875), fillet(0.1875, 0.09375),
        fillet(0.46875), bead(0.1875), fillet(0.09375), foot=0.1875, source=WARE_TUSCAN),
    "attic_base": _flat(
        "Attic base: torus, scotia, torus",
        torus(0.75), fillet(0.125), scotia(0.5, 0.1875), fillet(0.125), torus(0.5),
        foot=0.3125, source=VITRUVIUS_ATTIC),
    "quirk_bead": _flat(
        "Quirk and bead",
        fillet(0.0625), bead(0.3125), foot=0.125),
    "half_round": _flat(
        "Half round",
        torus(0.75), foot=0.375),
}
# fmt: on
"""By the word that a job file keeps."""

USES: Mapping[Use, tuple[str, ...]] = {
    Use.BED_MOULD: (
        "cove_and_fillets", "ovolo_and_fillets", "cyma_recta", "cyma_reversa", "cyma_recta_bead",
        "ovolo_bead", "ovolo_cavetto", "bevel", "steps", "bed_38", "crown_38", "crown_45", "cove_45",
    ),
    Use.CAPITAL: (
        "ovolo_cavetto", "ovolo_bead", "cyma_reversa", "cyma_recta_bead", "thirds", "astragal",
        "cove_and_fillets", "bevel", "steps", "crown_38", "bed_38",
    ),
    Use.PLINTH_CAP: (
        "conge", "cove_and_fillets", "ovolo", "cyma_reversa", "torus", "attic_base", "bevel", "steps",
    ),
    Use.PANEL_MOULD: (
        "ovolo", "cavetto", "cyma_reversa", "cyma_recta", "ovolo_bead", "torus", "bevel", "steps",
    ),
    Use.BACK_BAND: (
        "ovolo", "cavetto", "cyma_reversa", "ovolo_bead", "torus", "bevel", "steps",
    ),
    Use.SHELF_EDGE: (
        "ovolo", "cavetto", "cyma_reversa", "cyma_recta", "quirk_bead", "half_round", "bevel", "steps",
    ),
}  # fmt: skip
"""What each place is offered, its default first."""

OWN = ("own_1", "own_2", "own_3")
"""Words for the sections that a job brings along itself."""


def list_choices(use: Use) -> dict[str, str]:
    """Words a job file keeps to the words shown, for one place; the job's own sections last."""
    shipped = {key: SECTIONS[key].section.name for key in USES[use]}
    return shipped | {key: f"Own section {number}" for number, key in enumerate(OWN, start=1)}
