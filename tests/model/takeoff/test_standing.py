"""What boards lie against, as solids."""

from __future__ import annotations

from itertools import pairwise

import pytest

from export.mesh import build_mesh
from model.job import default_job, with_texts, with_value
from model.surround import plan_surround
from model.takeoff.standing import FACING, list_standing


@pytest.mark.parametrize("height", [5.9e-166, 1e-6, 0.5])
def test_a_facing_out_of_plumb_is_a_solid_however_little_the_hearth_is_raised(height):
    """The floor and the foot are then two levels next to each other, and no edge may run between them."""
    job = with_value(with_texts(default_job(), [("plumb.right", "1")]), "hearth.height", height)
    surround = plan_surround(job)
    facings = [s for s in list_standing(surround.boards, surround.layout) if s.role == FACING]
    assert len(facings) > 2
    for solid in facings:
        assert all(abs(a - c) + abs(b - d) > 1e-4 for (a, b), (c, d) in pairwise(solid.section))
        build_mesh(solid)
