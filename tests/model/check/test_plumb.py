"""What is said of masonry out of plumb."""

from __future__ import annotations

from model.check.all import check_surround
from model.check.finding import Status
from model.check.plumb import check_plumb
from model.job import default_job, with_texts
from model.surround import plan_surround


def plan(**texts: str):
    return plan_surround(
        with_texts(default_job(), [(path.replace("__", "."), text) for path, text in texts.items()])
    )


def test_plumb_masonry_raises_nothing():
    assert check_plumb(plan()) == ()
    assert check_plumb(plan(plumb__left="0")) == ()


def test_what_was_found_and_what_is_done_is_said_for_each_column():
    left = check_plumb(plan(plumb__left="1/2"))[0]
    assert (left.status, left.part, left.path) == (Status.PASS, "left column", "plumb.left")
    assert left.message == (
        'Behind the left column the masonry leans 1/2" toward the room at the top over 4\'-4": the column '
        'stands plumb, and its returns are 1/2" wider at their foot to follow it.'
    )


def test_a_shelf_is_said_to_follow_masonry_that_leans_away_and_where_it_cannot_it_is_warned_of():
    found = [f for f in check_plumb(plan(plumb__right="-3/8")) if f.part == "shelf"]
    assert [(f.status, f.measured, f.path) for f in found] == [(Status.PASS, 0.375, "plumb.right")]
    assert {"S1", "S2"} <= set(found[0].boards)
    moulded = {"shelf__kind": "plank", "shelf__thickness": "3", "shelf__edge_profile": "ovolo"}
    found = [f for f in check_plumb(plan(plumb__right="-3/8", **moulded)) if f.part == "shelf"]
    assert [(f.status, f.boards) for f in found] == [(Status.WARN, ("S1",))]
    assert not [f for f in check_plumb(plan(plumb__right="3/8")) if f.part == "shelf"]


def test_packing_behind_nailers_is_named_by_its_boards():
    (found,) = (f for f in check_plumb(plan(plumb__left="1/2", plumb__right="1/2")) if f.part == "nailers")
    assert found.status is Status.WARN
    assert found.measured == 0.5
    assert set(found.boards) >= {"N1a", "N1b"}


def test_wood_stands_further_off_masonry_that_falls_back_behind_it():
    """The plinth stands out 4 3/4 in. from a plumb facing, 5 1/4 in. from one half an inch back."""

    def deepest(surround):
        points = surround.off_masonry().corners
        return max(
            points.high[i, 2]
            for i, owner in enumerate(points.owner)
            if surround.boards[owner].role == "plinth front" and points.high[i, 1] == 0
        )

    assert deepest(plan()) == 4.75
    assert deepest(plan(plumb__left="1/2", plumb__right="1/2")) == 5.25


def test_a_part_that_clears_the_fire_only_as_drawn_is_warned_of():
    """11 in. over the opening 1 3/8 in. are allowed: the frieze stands out 1 1/4, 1 1/2 from the masonry."""
    close = {
        "frieze__projection": "1 1/4",
        "bed_mould__on": "no",
        "frieze__kind": "plain",
        "opening__height": "32",
    }

    def worst(**texts):
        found = [f for f in check_surround(plan(**close, **texts)) if f.part == "frieze"]
        return {f.status for f in found if f.check == "mantel clearance"}, [f.message for f in found]

    assert worst()[0] == {Status.PASS}
    statuses, messages = worst(plumb__left="1", plumb__right="1")
    assert statuses == {Status.PASS, Status.WARN}
    assert any(m.startswith("Measured from the masonry where it falls back: The frieze") for m in messages)
