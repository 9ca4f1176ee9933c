"""A cut list worked out on paper, piece by piece, for the shipped bedroom job. The job is invented.

On paper, inches. The opening is 28 wide, so its edge is 14 off the centre line. The columns begin 12 3/4
further out, at 26 3/4, are 6 wide, and end at 32 3/4. The hearth is 48 wide and ends at 24: they stand
beside it, and since it is flush with the floor at the same height. The shelf's top is 48 1/4 over the floor
and 1 1/2 thick: its underside, the columns' top, is at 46 3/4. Boards are 3/4, sheets 1/4.
"""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass

import pytest

from app.demo import read_demo
from model.surround import plan_surround
from model.takeoff.cut_list import Cut, list_cuts


@dataclass(frozen=True)
class Paper:
    """One kind of piece as it was worked out: pieces, finished size, and length between short points."""

    pieces: int
    length: float
    width: float
    thickness: float
    short: float
    left_on: tuple[float, float]
    """Over the finished length and width: scribe and trim."""


BY_HAND: dict[tuple[str, float], Paper] = {
    # Column face. Stiles 1 1/2 wide run the whole 46 3/4, two to a column. A foot is scribed (1/2), both
    # ends are trimmed (1/2 each), both edges too (1/8 each).
    ("column stile", 46.75): Paper(4, 46.75, 1.5, 0.75, 46.75, (1.5, 0.25)),
    # Rails between them: 6 - 2 x 1 1/2 = 3. The lower one shows 2 over the plinth, 6 high, and runs 3/4 down
    # behind it: 2 3/4. The upper one shows 2 under the bed mould, 1 1/4 high: 3 1/4.
    ("column bottom rail", 3.0): Paper(2, 3.0, 2.75, 0.75, 3.0, (1.0, 0.25)),
    ("column top rail", 3.0): Paper(2, 3.0, 3.25, 0.75, 3.0, (1.0, 0.25)),
    # The panels lie 3/4 back, which is the boards' thickness: one sheet behind the whole frame, between the
    # returns 6 - 2 x 3/4 = 4 1/2 wide, from the lower rail's edge at 6 - 3/4 = 5 1/4 up to 46 3/4: 41 1/2.
    ("column panel", 41.5): Paper(2, 41.5, 4.5, 0.25, 41.5, (0.0, 0.0)),
    # Returns from the masonry to the back of the face: 2 1/2 - 3/4 = 1 3/4. Their back edge is scribed too.
    ("column inner return", 46.75): Paper(2, 46.75, 1.75, 0.75, 46.75, (1.5, 0.75)),
    ("column outer return", 46.75): Paper(2, 46.75, 1.75, 0.75, 46.75, (1.5, 0.75)),
    # Plinth 6 high, standing out 1/2: boards planed to that. Front 6 + 2 x 1/2 = 7 between long points, 6
    # between short ones; returns 2 1/2 + 1/2 = 3 and 2 1/2. Their lower edges are scribed to the floor.
    ("plinth front", 7.0): Paper(2, 7.0, 6.0, 0.5, 6.0, (1.0, 0.75)),
    ("plinth return", 3.0): Paper(4, 3.0, 6.0, 0.5, 2.5, (1.5, 0.75)),
    # Frieze between the columns: 2 x 26 3/4 = 53 1/2. 8 high, of which the bed mould covers 1 1/4. Rails show
    # 1 3/4: below 1 3/4, above 1 3/4 + 1 1/4 = 3. Stiles 8 - 1 1/4 - 2 x 1 3/4 = 3 1/4, three.
    ("frieze bottom rail", 53.5): Paper(1, 53.5, 1.75, 0.75, 53.5, (1.0, 0.25)),
    ("frieze top rail", 53.5): Paper(1, 53.5, 3.0, 0.75, 53.5, (1.0, 0.25)),
    ("frieze stile", 3.25): Paper(3, 3.25, 2.5, 0.75, 3.25, (1.0, 0.25)),
    # One sheet behind it over the soffit: 8 - 3/4 = 7 1/4. Soffit from the masonry to the frame's back:
    # 2 - 3/4 = 1 1/4, its back edge scribed.
    ("frieze panel", 53.5): Paper(1, 53.5, 7.25, 0.25, 53.5, (0.0, 0.0)),
    ("soffit", 53.5): Paper(1, 53.5, 1.25, 0.75, 53.5, (1.0, 0.75)),
    # Shelf: 2 1/2 past the columns, which stand out 2 1/2: 5 deep; 2 1/2 past their outer sides: 2 x 35 1/4 =
    # 70 1/2 long. Its band is 3/4, so the two layers are 4 1/4 by 69; 1 1/2 is just the two of them, no ribs.
    ("shelf top", 69.0): Paper(1, 69.0, 4.25, 0.75, 69.0, (1.0, 0.75)),
    ("shelf underside", 69.0): Paper(1, 69.0, 4.25, 0.75, 69.0, (1.0, 0.75)),
    ("edge band front", 70.5): Paper(1, 70.5, 1.5, 0.75, 69.0, (1.0, 0.25)),
    ("edge band end", 5.0): Paper(2, 5.0, 1.5, 0.75, 4.25, (1.5, 0.25)),
    # Nailers: the column is hollow for 6 - 2 x 3/4 = 4 1/2, room for two of 1 1/2, and deep for
    # 2 1/2 - 3/4 - 1/4 = 1 1/2. The frieze is hollow for 2 - 3/4 - 1/4 = 1: strips of 3/4, 3 1/2 and 1 1/2.
    ("column nailer", 46.75): Paper(4, 46.75, 1.5, 1.5, 46.75, (1.0, 0.0)),
    ("shelf nailer", 53.5): Paper(1, 53.5, 3.5, 0.75, 53.5, (1.0, 0.0)),
    ("soffit nailer", 53.5): Paper(1, 53.5, 1.5, 0.75, 53.5, (1.0, 0.0)),
    # Bed mould 1 1/4 by 1 1/4. Round a column: from the wall 2 1/2 along its side and 1 1/4 past the corner,
    # one to each hand; across its face 6 + 2 x 1 1/4; back to the frieze, 1/2 behind it: both mitres lean the
    # same way, 1/2 along each face and 1 3/4 over all. Along the frieze 53 1/2 on the back, and
    # 53 1/2 - 2 x 1 1/4 = 51 on the face. The ends at the wall are scribed.
    ("left bed mould outer return", 3.75): Paper(1, 3.75, 1.25, 1.25, 2.5, (1.5, 0.0)),
    ("right bed mould outer return", 3.75): Paper(1, 3.75, 1.25, 1.25, 2.5, (1.5, 0.0)),
    ("bed mould column front", 8.5): Paper(2, 8.5, 1.25, 1.25, 6.0, (1.0, 0.0)),
    ("left bed mould inner return", 1.75): Paper(1, 1.75, 1.25, 1.25, 0.5, (1.0, 0.0)),
    ("right bed mould inner return", 1.75): Paper(1, 1.75, 1.25, 1.25, 0.5, (1.0, 0.0)),
    ("bed mould frieze front", 53.5): Paper(1, 53.5, 1.25, 1.25, 51.0, (1.0, 0.0)),
}  # fmt: skip

CUTS = list_cuts(plan_surround(read_demo("bedroom")))


def _listed(key: tuple[str, float]) -> list[Cut]:
    return [cut for cut in CUTS if (cut.name, cut.length) == key]


def test_the_list_has_just_the_pieces_on_paper():
    counts: Counter[tuple[str, float]] = Counter()
    for cut in CUTS:
        counts[cut.name, cut.length] += cut.quantity
    assert counts == {key: paper.pieces for key, paper in BY_HAND.items()}
    assert sum(counts.values()) == 45


@pytest.mark.parametrize("key", BY_HAND, ids=lambda key: f"{key[0]} {key[1]:g}")
def test_a_piece_is_cut_as_on_paper(key: tuple[str, float]):
    paper = BY_HAND[key]
    cuts = _listed(key)
    assert cuts
    for cut in cuts:
        assert (cut.length, cut.width, cut.thickness) == (paper.length, paper.width, paper.thickness)
        assert cut.short_length == pytest.approx(paper.short)
        assert cut.rough is not None
        left_on = (cut.rough.length.rough - cut.length, cut.rough.width.rough - cut.width)
        assert left_on == pytest.approx(paper.left_on)


def test_handed_pieces_are_the_mouldings_returns_alone():
    """A return with one square end, and one whose mitres are parallel, cannot be turned to the other side."""
    handed = {(cut.name, cut.length, cut.hand) for cut in CUTS if cut.hand != "either"}
    assert handed == {
        ("left bed mould outer return", 3.75, "left"),
        ("right bed mould outer return", 3.75, "right"),
        ("left bed mould inner return", 1.75, "left"),
        ("right bed mould inner return", 1.75, "right"),
    }
