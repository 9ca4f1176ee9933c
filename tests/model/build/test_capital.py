"""The capital: below the frieze's lower edge, round each column and back to what stands behind it."""

import pytest

from model.build.capital import build_capitals
from model.build.layout import lay_out
from model.job import default_job, with_texts


def built(*settings):
    job = with_texts(default_job(), [("capital.on", "yes"), *(tuple(s.split("=")) for s in settings)])
    layout = lay_out(job.site, job.design)
    return layout, build_capitals(layout, "poplar")


def test_each_column_has_a_front_and_two_returns():
    _, pieces = built()
    roles = [(piece.assembly, piece.role) for piece in pieces]
    for side in ("left", "right"):
        own = [role for assembly, role in roles if assembly == f"{side} column"]
        assert sorted(own) == ["capital front", "capital return", "capital return"]


def test_it_hangs_from_the_friezes_lower_edge_and_stands_out_by_its_projection():
    layout, pieces = built("capital.size=2")
    section = layout.mouldings.capital
    assert {piece.bounds[1][1] for piece in pieces} == {layout.frieze_bottom}
    assert min(p.bounds[0][1] for p in pieces) == pytest.approx(layout.frieze_bottom - 2)
    right = [p for p in pieces if p.assembly == "right column"]
    assert max(p.bounds[1][0] for p in right) == pytest.approx(layout.right.outer + section.projection)
    assert min(p.bounds[0][0] for p in right) == pytest.approx(layout.column_inner - section.projection)
    assert max(p.bounds[1][2] for p in right) == pytest.approx(layout.column_front + section.projection)


def test_its_returns_go_back_to_the_masonry():
    _, pieces = built()
    assert {p.bounds[0][2] for p in pieces if p.axis == "z"} == {0.0}


def test_on_a_proud_facing_only_the_return_beside_it_goes_back_to_the_wall():
    layout, pieces = built("facing.proud=4", "facing.width=64")
    assert layout.right.outer - layout.board >= layout.facing_side > layout.right.inner
    assert sorted({p.bounds[0][2] for p in pieces if p.axis == "z"}) == [-4.0, 0.0]


def test_its_inner_return_stops_at_a_back_band():
    layout, pieces = built("back_band.on=yes")
    inner = [p for p in pieces if p.axis == "z" and p.assembly == "right column" and p.worked.out == "-x"]
    assert [p.bounds[0][2] for p in inner] == [pytest.approx(layout.mouldings.back_band.projection)]
