"""Every board belongs to one part, named as the trade names it."""

from __future__ import annotations

import pytest
from hypothesis import given

from model.check.part import format_part, format_verb, list_parts, name_part, stands_beside
from model.job import default_job
from model.surround import plan_surround
from tests.planned import plan_of
from tests.strategies import jobs


@given(jobs())
def test_each_board_is_in_just_one_part(job):
    boards = plan_of(job).boards
    indices = sorted(i for members in list_parts(boards).values() for i in members)
    assert indices == list(range(len(boards)))


def test_plinths_and_nailers_are_parts_of_their_own():
    boards = plan_surround(default_job()).boards
    parts = {(board.role, name_part(board)) for board in boards}
    assert ("plinth front", "left plinth") in parts
    assert ("column stile", "left column") in parts
    assert ("column nailer", "right column nailers") in parts
    assert ("shelf nailer", "frieze nailers") in parts
    assert ("edge band front", "shelf") in parts
    assert ("soffit", "frieze") in parts


@pytest.mark.parametrize(
    ("part", "beside"),
    [
        ("left column", True),
        ("right plinth", True),
        ("left column nailers", True),
        ("frieze nailers", False),
        ("shelf", False),
    ],
)
def test_parts_beside_the_opening_are_moved_sideways(part, beside):
    assert stands_beside(part) is beside


def test_sentences_agree_in_number():
    assert f"{format_part('shelf')} {format_verb('shelf', 'stand')}" == "The shelf stands"
    assert (
        f"{format_part('frieze nailers')} {format_verb('frieze nailers', 'stand')}"
        == "The frieze nailers stand"
    )
