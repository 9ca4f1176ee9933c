"""Sub-assemblies: every board in one, and twins only where turning one over gives the other."""

import pytest

from app.demo import list_demos, read_demo
from model.job import default_job, with_texts
from model.surround import plan_surround
from model.takeoff.assemblies import list_assemblies


def assemblies_of(**texts):
    job = with_texts(default_job(), [(k.replace("__", "."), v) for k, v in texts.items()])
    return {a.name: a for a in list_assemblies(plan_surround(job).boards)}


@pytest.mark.parametrize("name", list_demos())
def test_every_board_is_in_one_assembly(name):
    boards = plan_surround(read_demo(name)).boards
    pieces = [i for assembly in list_assemblies(boards) for i in assembly.pieces]
    assert sorted(pieces) == list(range(len(boards)))


def test_columns_that_mirror_each_other_are_twins():
    found = assemblies_of()
    assert found["left column"].twin == "right column"
    assert found["right column"].twin == "left column"
    assert found["frieze"].twin == ""


@pytest.mark.parametrize(
    "texts",
    [
        {"column__width_left": "5", "column__width_right": "6"},
        {"level__centre": "20", "level__left": "20 1/2"},
        {"cord__on": "yes"},
        {"plumb__left": "1/2"},
    ],
)
def test_columns_that_differ_are_no_twins(texts):
    found = assemblies_of(**texts)
    assert {found["left column"].twin, found["right column"].twin} == {""}
