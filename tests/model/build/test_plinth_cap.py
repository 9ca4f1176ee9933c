"""The plinth cap: on the plinth, its wide side down, round the column and back to the masonry."""

import pytest

from model.build.layout import lay_out
from model.build.plinth_cap import build_plinth_caps
from model.job import default_job, with_texts


def built(*settings):
    job = with_texts(default_job(), [("plinth_cap.on", "yes"), *(tuple(s.split("=")) for s in settings)])
    layout = lay_out(job.site, job.design)
    return layout, build_plinth_caps(layout, "poplar")


def test_it_stands_on_the_plinth_with_its_seat_down():
    layout, pieces = built("plinth_cap.size=3/4")
    assert len(pieces) == 6
    assert {p.worked.seat for p in pieces} == {"-y"}
    assert {p.bounds[0][1] for p in pieces} == {layout.right.plinth_top}
    assert max(p.bounds[1][1] for p in pieces) == pytest.approx(layout.right.plinth_top + 0.75)


def test_it_is_widest_on_the_plinth():
    layout, pieces = built("plinth_cap.profile=cove_and_fillets")
    front = next(p for p in pieces if p.role == "plinth cap front")
    widest = max(v for _, v in front.section)
    assert {u for u, v in front.section if v == widest} >= {layout.right.plinth_top}


def test_each_foot_has_its_own_level():
    layout, pieces = built("level.centre=20", "level.left=21", "level.right=19")
    lows = {p.assembly: p.bounds[0][1] for p in pieces}
    assert lows == {"left column": layout.left.plinth_top, "right column": layout.right.plinth_top}
    assert layout.right.plinth_top - layout.left.plinth_top == pytest.approx(2)


def test_there_is_none_without_plinths():
    assert built("plinth.on=no")[1] == ()
