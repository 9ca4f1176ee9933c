"""That no two lines of a cut list share a name, and that the words say where the pieces are."""

from __future__ import annotations

import pytest
from hypothesis import given

from app.demo import list_demos, read_demo
from model.job import Job, default_job, with_texts
from model.takeoff.marks import list_kinds
from model.takeoff.naming import name_kinds
from tests.planned import plan_of
from tests.strategies import jobs


def _names(job: Job) -> dict[str, int]:
    """How many pieces each name stands for; fails where two lines share one."""
    boards = plan_of(job).boards
    kinds = list_kinds(boards)
    names = name_kinds(boards, kinds)
    assert len(set(names.values())) == len(kinds)
    return {names[kind.mark]: len(kind.pieces) for kind in kinds}


def _set(**values: str) -> Job:
    return with_texts(default_job(), [(name.replace("__", "."), text) for name, text in values.items()])


def test_like_pieces_keep_one_line_and_the_plain_name():
    names = _names(default_job())
    assert (names["column nailer"], names["column stile"], names["plinth return"]) == (4, 4, 4)


def test_nailers_stepped_over_a_proud_facing_are_inner_and_outer_lower_and_upper():
    """The brick demo's inner uprights go back to the wall over the facing, its outer ones lie on the wall."""
    names = {name: n for name, n in _names(read_demo("brick")).items() if name.endswith("column nailer")}
    assert names == {
        "lower inner column nailer": 2,
        "upper inner column nailer": 2,
        "outer column nailer": 2,
    }


def test_plinth_returns_of_two_lengths_are_inner_and_outer():
    names = {name: n for name, n in _names(read_demo("brick")).items() if name.endswith("plinth return")}
    assert names == {"inner plinth return": 2, "outer plinth return": 2}


def test_every_leg_of_the_bed_mould_has_its_own_name():
    names = [name for name in _names(default_job()) if "bed mould" in name]
    assert names == [
        "right bed mould outer return",
        "bed mould column front",
        "right bed mould inner return",
        "bed mould frieze front",
        "left bed mould inner return",
        "left bed mould outer return",
    ]


def test_a_leg_of_its_own_length_makes_its_columns_pieces_left_and_right():
    names = _names(_set(level__centre="20", level__left="21", level__right="20"))
    assert (names["left column stile"], names["right column stile"]) == (2, 2)


def test_returns_cut_alike_are_named_by_the_end_of_their_front():
    """A left column's outer return and a right column's inner one are mitred alike: left-hand ones."""
    names = _names(_set(capital__on="yes", plinth__on="no"))
    assert (names["left-hand capital return"], names["right-hand capital return"]) == (2, 2)


def test_stiles_rebated_along_one_edge_are_the_friezes_end_ones():
    names = _names(_set(panel__reveal="1/2", frieze__panels="4"))
    assert (names["end frieze stile"], names["middle frieze stile"]) == (2, 3)


@pytest.mark.parametrize("name", list_demos())
def test_no_two_lines_of_a_shipped_job_share_a_name(name):
    _names(read_demo(name))


@given(jobs())
def test_no_two_lines_of_any_job_share_a_name(job):
    _names(job)


def test_rails_between_the_lowest_and_the_uppermost_of_a_leaning_column_are_told_apart():
    names = _names(_set(column__taper="-3", column__panels="4"))
    assert [name for name in names if name.endswith("column middle rail")] == [
        "lower column middle rail",
        "middle short column middle rail",
        "middle long column middle rail",
        "upper column middle rail",
    ]
