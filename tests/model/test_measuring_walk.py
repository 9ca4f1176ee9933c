"""The walk round a fireplace: all that is found there, nothing that is not there, from the fire outwards."""

from __future__ import annotations

from model.job import default_job, with_texts
from model.measuring_walk import AT_THE_DESK, GROUPS, LATER, is_measured_there, list_walk
from model.parameters import TABLE, find_parameter


def test_a_walk_comes_past_every_row_that_is_measured_there_once():
    job = with_texts(
        default_job(),
        [
            ("baseboard.height_left", "5"),
            ("outlet.left", "50"),
            ("casing.right", "60"),
            ("old_ledger.top", "48"),
            ("bolt_one.across", "9"),
        ],
    )
    walk = list_walk(job)
    assert len(set(walk)) == len(walk)
    assert {"outlet.height_left", "casing.top_right", "old_ledger.thick", "bolt_one.out"} <= set(walk)


def test_a_walk_does_not_ask_for_the_size_of_what_is_not_there():
    walk = list_walk(default_job())
    assert "outlet.left" in walk
    assert "outlet.height_left" not in walk
    assert "bolt_one.up" not in walk


def test_a_walk_goes_from_the_fire_outwards_and_reads_each_size_again_at_once():
    walk = list_walk(default_job())
    places = [GROUPS.index(find_parameter(path).group) for path in walk]
    assert places == sorted(places)
    assert walk[:4] == (
        "opening.width",
        "readings.opening_width",
        "opening.height",
        "readings.opening_height",
    )
    assert walk.index("readings.hearth_depth") == walk.index("hearth.depth") + 1


def test_what_is_copied_at_the_desk_is_not_asked_for_at_the_fireplace():
    assert not any(path.startswith(AT_THE_DESK) or path in LATER for path in list_walk(default_job()))
    assert {row.path for row in TABLE if is_measured_there(row)} >= set(list_walk(default_job()))
