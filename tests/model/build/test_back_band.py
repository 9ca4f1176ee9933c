"""The back band: on the facing along columns and frieze, standing on the plinths."""

import pytest

from model.build.back_band import build_back_band
from model.build.layout import lay_out
from model.job import default_job, with_texts


def built(*settings):
    job = with_texts(default_job(), [("back_band.on", "yes"), *(tuple(s.split("=")) for s in settings)])
    layout = lay_out(job.site, job.design)
    return layout, build_back_band(layout, "poplar")


def test_two_legs_and_a_head_lie_on_the_facing_inside_the_surround():
    layout, pieces = built("back_band.size=1")
    left, head, right = pieces
    assert [p.axis for p in pieces] == ["y", "x", "y"]
    assert {p.bounds[0][2] for p in pieces} == {0.0}
    assert (left.bounds[0][0], right.bounds[1][0]) == (-layout.column_inner, layout.column_inner)
    assert left.bounds[1][0] == pytest.approx(-layout.column_inner + 1)
    assert (head.bounds[1][1], head.bounds[0][1]) == pytest.approx(
        (layout.frieze_bottom, layout.frieze_bottom - 1)
    )


def test_legs_stand_square_on_the_plinths_and_are_mitred_at_the_head():
    layout, (left, _, right) = built()
    assert left.bounds[0][1] == layout.left.plinth_top
    assert (left.low.mitre, left.high.mitre) == (0, 45)
    assert (right.low.mitre, right.high.mitre) == (0, 45)


def test_legs_stand_on_a_plinth_cap_where_there_is_one():
    layout, (left, _, _) = built("plinth_cap.on=yes")
    assert left.bounds[0][1] == pytest.approx(layout.left.plinth_top + layout.mouldings.plinth_cap.height)


def test_it_is_thick_against_the_surround():
    layout, (left, _, _) = built()
    thick = max(u for u, v in left.section if v == -layout.column_inner)
    assert thick == pytest.approx(layout.mouldings.back_band.seat)
