"""Wood and the air shut up in it fill the body that is seen from outside, by an independent solid library.

The air is what is left of a room once the boards are taken out of it, and cannot get out: masonry and wall
are the room's back, hearth and floor its bottom.
"""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from manifold3d import Manifold, OpType

from model.job import Job, default_job, with_texts, with_value
from model.surround import plan_surround
from tests.solids import GRID, build_solid

ROOM = ((-200.0, 0.0, 0.0), (200.0, 150.0, 60.0))
PLAIN = [("column.kind", "plain"), ("frieze.kind", "plain"), ("bed_mould.on", "no")]


def _fill(job: Job) -> tuple[float, float]:
    """Volume of the boards as the model has it, and of the air shut up, cubic inches."""
    boards = plan_surround(job).boards
    low, high = np.array(ROOM)
    room = Manifold.cube(tuple(high - low)).translate(tuple(low))
    wood = Manifold.batch_boolean([build_solid(board, GRID) for board in boards], OpType.Add)
    air = sorted(part.volume() for part in (room - wood).decompose())
    return sum(board.volume for board in boards), sum(air[:-1])


def test_a_plain_surround_is_as_large_as_its_columns_plinths_frieze_and_shelf():
    """Two columns 7 1/2 x 4 x 52, wrapped 3/4 in. thick for 8 in.; frieze 62 x 3 x 9; shelf 83 x 7 x 2."""
    columns = 2 * 7.5 * 4 * 52
    plinths = 2 * (9 * 4.75 - 7.5 * 4) * 8
    wood, air = _fill(with_texts(default_job(), PLAIN))
    assert air > 0
    assert wood + air == pytest.approx(columns + plinths + 62 * 3 * 9 + 83 * 7 * 2)


def test_panels_take_their_recess_off_the_body():
    """Column panels 4 x 39 between members of 1 3/4 and 2 1/2, frieze panels 52 / 3 x 5, all 3/4 in. deep."""
    plain, framed = (sum(_fill(with_texts(default_job(), texts))) for texts in (PLAIN, PLAIN[2:]))
    recess = (2 * 4 * (52 - 8 - 2 * 2.5) + (62 - 4 * 2.5) * (9 - 2 * 2)) * 0.75
    assert plain - framed == pytest.approx(recess)


def _tape(low: float, high: float) -> st.SearchStrategy[float]:
    return st.integers(int(low * 16), int(high * 16)).map(lambda steps: steps / 16)


@settings(max_examples=25, deadline=None)
@given(_tape(5, 12), _tape(2.5, 6), _tape(6, 20), _tape(6, 14), _tape(1.5, 4), _tape(1, 5), _tape(2, 9))
def test_every_plain_surround_is_filled_by_its_wood_and_its_air(
    width, projection, margin, frieze, thickness, overhang, frieze_out
):
    sizes = {
        "column.width": width,
        "column.projection": projection,
        "column.margin": margin,
        "frieze.height": frieze,
        "frieze.projection": frieze_out,
        "nailer.ledger": 2.5,
        "shelf.thickness": thickness,
        "shelf.edge_height": thickness,
        "shelf.overhang_front": overhang,
        "shelf.overhang_end": overhang,
    }
    job = with_texts(default_job(), PLAIN)
    for path, value in sizes.items():
        job = with_value(job, path, value)
    surround = plan_surround(job)
    assert not surround.layout.shortfalls
    tall = 54 - thickness
    inner = 18 + margin
    columns = 2 * width * projection * tall
    plinths = 2 * ((width + 1.5) * (projection + 0.75) - width * projection) * 8
    across = 2 * (inner + width + overhang)
    shelf = across * (max(projection, frieze_out) + overhang) * thickness
    wood, air = _fill(job)
    assert wood + air == pytest.approx(columns + plinths + 2 * inner * frieze_out * frieze + shelf)
