"""The mouldings as built: which section each place takes, and how large it may be there.

The lines they run along belong to the files named after them.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import pi

from model.build.ledger import LEFT_OUT, Ledger
from model.design import Design, Moulding
from model.moulding.elements import fillet
from model.moulding.library import OWN, SECTIONS, USES, Use
from model.moulding.notation import parse_section
from model.moulding.outline import HAIR
from model.moulding.section import Section, draw_face

LEAST_MOULD = 0.25
"""Smallest moulding worth running, in. Shop choice."""
LEAST_EDGE = 0.125
"""Least wood left behind what is worked on a shelf's edge, in. Shop choice."""
LEAST_SQUARE = 1 / 1024
"""Least height of the square left over a shelf's worked edge, in.; less is no edge at all."""
SQUARE = "square"
"""The word for a shelf's edge that is not worked."""


@dataclass(frozen=True, slots=True)
class Mouldings:
    """Sections at the size they are built, None where there is none.

    `edge` is the whole section of the shelf's edge band when it is worked, `edge_size` how much of its
    height is.
    """

    bed: Section | None = None
    capital: Section | None = None
    plinth_cap: Section | None = None
    panel: Section | None = None
    back_band: Section | None = None
    edge: Section | None = None
    edge_size: float = 0.0


@dataclass(frozen=True, slots=True)
class Room:
    """How much of a moulding a place takes: its height and its projection at most, and what is in its way."""

    height: float
    projection: float
    reason: str


def fit_moulding(
    design: Design, use: Use, path: str, moulding: Moulding, room: Room, ledger: Ledger
) -> Section | None:
    """The section for one place, as large as asked or as there is room for; None when off or without room.

    `path` is the first part of its rows' paths. A job's own section is never made smaller than written.
    """
    if not moulding.on:
        return None
    section = _find_section(design, use, f"{path}.profile", moulding.profile, ledger)
    return _fit(section, moulding.profile, f"{path}.profile", f"{path}.size", moulding.size, room, ledger)


def _fit(
    section: Section, key: str, key_path: str, size_path: str, size: float, room: Room, ledger: Ledger
) -> Section | None:
    own = is_own(section, key)
    asked = section.height if own else size
    built = min(asked, room.height, room.projection * section.height / section.projection)
    if own and built < asked - HAIR:
        ledger.swap(key_path, key, LEFT_OUT, room.reason)
        return None
    if built < LEAST_MOULD:
        built = 0.0
    if own and not built:
        ledger.swap(key_path, key, LEFT_OUT, "it is too low to be cut as a piece of its own")
    elif not own:
        ledger.hold(size_path, asked, built, room.reason)
    return section.sized(built) if built else None


def is_own(section: Section, key: str) -> bool:
    """Whether `section`, built for the choice `key`, is one that the job brings along."""
    return key in OWN and section not in {shipped.section for shipped in SECTIONS.values()}


def _find_section(design: Design, use: Use, path: str, key: str, ledger: Ledger) -> Section:
    """The section a choice stands for; the place's usual one where the job's own is not written yet."""
    if key not in OWN:
        return SECTIONS[key].section
    texts = design.own_section
    text = (texts.first, texts.second, texts.third)[OWN.index(key)]
    if text.strip():
        return parse_section(text)
    usual = USES[use][0]
    ledger.swap(path, key, usual, "no such section is written")
    return SECTIONS[usual].section


def fit_edge(design: Design, height: float, ledger: Ledger) -> tuple[Section | None, float]:
    """The shelf's edge, `height` high and as thick as the boards, and how much of its height is worked.

    What is worked lies along the lower edge, and nothing stands out in front of it. None and 0 where it is
    square.
    """
    key = design.shelf.edge_profile
    if key == SQUARE:
        return None, 0.0
    path, thickness = "shelf.edge_profile", design.board.thickness
    section = _find_section(design, Use.SHELF_EDGE, path, key, ledger)
    if face_depth(section) < HAIR:
        return None, 0.0
    depth = (thickness - LEAST_EDGE) * section.projection / face_depth(section)
    room = Room(height, depth, "the edge band is not high and thick enough for more")
    fitted = _fit(section, key, path, "shelf.edge_size", design.shelf.edge_size, room, ledger)
    return (_on_edge(fitted, thickness, height), fitted.height) if fitted else (None, 0.0)


def _on_edge(section: Section, thickness: float, height: float) -> Section:
    """`section`'s face along the lower edge of a strip, square above it."""
    rest = height - section.height
    if rest < LEAST_SQUARE:
        section, rest = section.sized(height), 0.0
    shift = thickness - section.projection
    square = (fillet(rest, thickness - section.seat - shift),) if rest else ()
    return Section(section.name, (*square, *section.elements), section.foot + shift)


def face_depth(section: Section) -> float:
    """How deep the face is worked: from what stands out furthest to what lies back furthest."""
    return section.projection - min(-stroke.reach(pi) for stroke in draw_face(section))


def least_side(openings: Sequence[tuple[float, float, float, float]]) -> float:
    """The shortest side of any of `openings` (x0, y0, x1, y1)."""
    return min(min(x1 - x0, y1 - y0) for x0, y0, x1, y1 in openings)
