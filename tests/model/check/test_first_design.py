"""A first design passes, is made of boards as they are sold, and follows its guide."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from app.demo import list_demos, read_demo
from model.check.all import check_surround
from model.check.finding import Status
from model.check.first_design import GUIDES, size_first_design
from model.job import default_job, with_texts
from model.surround import plan_surround
from model.takeoff.cut_list import list_cuts
from tests.usual_sites import sites

SOLD = (1.5, 2.5, 3.5, 4.5, 5.5, 7.25, 9.25, 11.25)
"""Dressed widths of boards, PS 20, typed in."""
MASONRY = ("hearth", "facing", "readings", "room", "old_ledger", "bolt")
SPAN = {"le_muet": (1 / 6, 1 / 5), "serlio": (1 / 8, 1 / 6)}
"""Le Muet, ch. 36-40, and Serlio, IV ch. 8: column to opening width, typed in."""


@settings(max_examples=8)
@given(sites(), st.sampled_from(GUIDES))
def test_it_passes_every_check_of_any_usual_fireplace(job, guide):
    first = size_first_design(job, guide)
    assert first is not None
    assert [f.message for f in first.left] == []
    assert first.job.site == job.site
    assert first.job.about == job.about


@pytest.mark.parametrize("name", list_demos())
def test_what_is_left_of_a_shipped_job_is_masonry_only(name):
    first = size_first_design(read_demo(name))
    assert first is not None
    over = [f for f in check_surround(plan_surround(first.job)) if f.status is Status.FAIL]
    assert tuple(over) == first.left
    assert all(f.path.startswith(MASONRY) for f in over)
    assert plan_surround(first.job).layout.shortfalls == ()


def test_of_plain_faces_no_board_is_ripped():
    plain = with_texts(default_job(), [("column.kind", "plain"), ("frieze.kind", "plain")])
    first = size_first_design(plain)
    assert first is not None
    assert first.ripped == 0
    surround = plan_surround(first.job)
    solid = [cut for cut in list_cuts(surround) if "board" in cut.stock]
    assert solid
    assert all(any(abs(cut.width - width) < 1e-6 for width in SOLD) for cut in solid)


@pytest.mark.parametrize("guide", list(SPAN))
def test_the_column_is_as_wide_as_its_author_has_it(guide):
    """The opening of the brick front is 48 in. wide."""
    first = size_first_design(read_demo("brick"), guide)
    assert first is not None
    low, high = SPAN[guide]
    assert 48 * low <= first.job.design.column.width <= 48 * high


def test_the_orders_give_the_entablature_a_quarter_of_the_column():
    first = size_first_design(read_demo("bedroom"), "orders")
    assert first is not None
    layout = plan_surround(first.job).layout
    column, head = layout.frieze_bottom - layout.right.base, layout.shelf_top - layout.frieze_bottom
    assert head == pytest.approx(column / 4, rel=0.02)


def test_where_no_clearance_is_known_nothing_is_sized():
    job = with_texts(default_job(), [("site.fireplace", "gas")])
    assert size_first_design(job) is None


def test_faces_and_wood_stay_as_they_were_chosen():
    job = with_texts(default_job(), [("column.kind", "fluted"), ("board.species", "walnut")])
    first = size_first_design(job)
    assert first is not None
    assert (first.job.design.column.kind, first.job.design.board.species) == ("fluted", "walnut")
