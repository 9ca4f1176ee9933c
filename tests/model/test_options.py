"""Options of a job: what each step keeps, that names stay apart, and that nothing is lost on the way."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from model.cutting.purchase import Printed, Purchase
from model.errors import Refused
from model.job import Job, default_job, read_value, with_value
from model.options import (
    ALONE,
    FIRST_NAME,
    LONGEST_NAME,
    MOST_OPTIONS,
    MOST_THROWN,
    add_option,
    alone,
    bring_back,
    check_name,
    duplicate,
    find_option,
    list_options,
    move,
    name_apart,
    named_alone,
    rename,
    take_up,
    throw_away,
)


@pytest.fixture
def three() -> Job:
    """Columns 7, 8 and 9 in. wide, called so, the last one in work."""
    job = rename(with_value(default_job(), "column.width", 7), 0, "Seven")
    for width, name in ((8, "Eight"), (9, "Nine")):
        job = add_option(job)
        job = rename(with_value(job, "column.width", width), job.options.place, name)
    return job


def _widths(job: Job) -> list[float]:
    return [read_value(take_up(job, i), "column.width") for i in range(job.options.count)]


def test_a_new_job_has_one_design_and_says_nothing_of_options():
    assert default_job().options == ALONE
    assert default_job().options.names == (FIRST_NAME,)
    assert named_alone(default_job()) is default_job() or named_alone(default_job()) == default_job()


def test_an_added_option_starts_as_a_copy_and_then_goes_its_own_way(three: Job):
    assert three.options.names == ("Seven", "Eight", "Nine")
    assert _widths(three) == [7, 8, 9]
    assert three.options.place == 2


def test_taking_one_up_keeps_all_others_and_their_order(three: Job):
    for place in (0, 2, 1, 1, 0):
        three = take_up(three, place)
        assert three.options.place == place
        assert three.options.names == ("Seven", "Eight", "Nine")
        assert _widths(three) == [7, 8, 9]


def test_site_and_prices_are_common_and_hours_and_colour_are_each_options_own(three: Job):
    three = with_value(with_value(three, "opening.width", 40), "offer.hour", 70)
    three = with_value(with_value(three, "offer.hours", 12), "offer.colour", "white")
    first = take_up(three, 0)
    assert read_value(first, "opening.width") == 40
    assert read_value(first, "offer.hour") == 70
    assert read_value(first, "offer.hours") is None
    assert read_value(first, "offer.colour") == ""
    assert take_up(first, 2) == three


def test_what_was_bought_lies_there_whichever_option_is_in_work(three: Job):
    from dataclasses import replace

    bought = replace(three, purchase=Purchase(printed=(Printed("1x6", 3),)))
    assert take_up(bought, 0).purchase == bought.purchase
    assert throw_away(bought, 2).purchase == bought.purchase


def test_a_copy_is_named_after_what_it_is_a_copy_of_and_never_like_another(three: Job):
    once = duplicate(three, 0)
    twice = duplicate(once, 0)
    assert once.options.names == ("Seven", "Seven (2)", "Eight", "Nine")
    assert twice.options.names == ("Seven", "Seven (3)", "Seven (2)", "Eight", "Nine")
    assert _widths(twice) == [7, 7, 7, 8, 9]
    assert twice.options.place == 1


def test_names_at_the_longest_are_still_told_apart():
    long = "x" * LONGEST_NAME
    assert len(name_apart(long, [long])) == LONGEST_NAME
    assert name_apart(long, [long]) != long


@pytest.mark.parametrize(
    ("name", "words"),
    [
        ("", "write a name"), (" \n ", "write a name"), ("y" * 61, "at most 60"), ("a\x07", "a line of text"),
        ("seven", "another option is called so"), ("  Eight ", "another option is called so"),
        (3, "a line of text"), ("\ud800", "a line of text"),
    ],
)  # fmt: skip
def test_a_name_that_cannot_be_is_refused_in_words(name, words: str):
    with pytest.raises(Refused, match=words):
        check_name(name, ("Seven", "Eight"))


def test_an_option_may_be_called_what_it_is_called_already(three: Job):
    assert rename(three, 0, "SEVEN").options.names == ("SEVEN", "Eight", "Nine")
    assert rename(three, 2, " Nine   feet ").options.names[2] == "Nine feet"


@pytest.mark.parametrize(("place", "way", "names", "in_work"), [
    (0, 1, ("Eight", "Seven", "Nine"), 2), (2, -1, ("Seven", "Nine", "Eight"), 1),
    (2, -9, ("Nine", "Seven", "Eight"), 0), (0, 9, ("Eight", "Nine", "Seven"), 1),
    (1, 0, ("Seven", "Eight", "Nine"), 2),
])  # fmt: skip
def test_moving_one_changes_the_order_and_nothing_else(three: Job, place, way, names, in_work):
    moved = move(three, place, way)
    assert moved.options.names == names
    assert moved.options.place == in_work
    assert moved.design == three.design
    assert sorted(_widths(moved)) == [7, 8, 9]


def test_the_one_in_work_thrown_away_leaves_the_next_in_work_and_can_be_brought_back(three: Job):
    at_one = take_up(three, 1)
    left = throw_away(at_one, 1)
    assert left.options.names == ("Seven", "Nine")
    assert (left.options.name, read_value(left, "column.width")) == ("Nine", 9)
    back = bring_back(left, 0)
    assert back.options.names == ("Seven", "Nine", "Eight")
    assert (back.options.name, read_value(back, "column.width")) == ("Eight", 8)
    assert back.options.thrown == ()


def test_the_last_one_thrown_away_leaves_the_one_before_it_in_work(three: Job):
    assert throw_away(three, 2).options.name == "Eight"
    assert throw_away(three, 0).options.name == "Nine"


def test_the_only_design_is_not_thrown_away():
    with pytest.raises(Refused, match="keep at least one"):
        throw_away(default_job(), 0)


def test_brought_back_under_a_name_that_was_given_since_it_is_told_apart(three: Job):
    left = throw_away(three, 0)
    again = bring_back(rename(left, 0, "Seven"), 0)
    assert again.options.names == ("Seven", "Nine", "Seven (2)")


def test_a_job_holds_so_many_options_and_says_so():
    job = default_job()
    for _ in range(MOST_OPTIONS - 1):
        job = add_option(job)
    assert len({name.casefold() for name in job.options.names}) == MOST_OPTIONS
    for step in (add_option, lambda each: duplicate(each, 0)):
        with pytest.raises(Refused, match="at most"):
            step(job)
    thrown = throw_away(job, 4)
    with pytest.raises(Refused, match="at most"):
        bring_back(add_option(thrown), 0)


def test_of_those_thrown_away_the_latest_are_kept():
    job = default_job()
    for _ in range(MOST_THROWN + 2):
        job = throw_away(add_option(job), 0)
    assert len(job.options.thrown) == MOST_THROWN


def test_what_is_made_of_one_of_several_options_carries_its_name(three: Job):
    made = named_alone(with_value(three, "job.name", "Front room"))
    assert made.about.title == "Front room, Nine"
    assert made.options == ALONE
    assert named_alone(made) == made
    assert alone(three, 0).options == ALONE


def test_an_option_is_found_by_its_name_however_it_is_written(three: Job):
    assert find_option(three, " eIGHT ") == 1
    with pytest.raises(Refused, match="this job has Seven, Eight, Nine"):
        find_option(three, "Ten")


@given(st.lists(st.tuples(st.integers(0, 5), st.integers(0, 9), st.integers(-3, 3)), max_size=25))
def test_after_any_steps_each_design_is_there_once_and_one_is_in_work(steps):
    job = with_value(default_job(), "column.width", 6)
    for i, (what, place, way) in enumerate(steps):
        place %= job.options.count
        try:
            job = [
                add_option,
                lambda each, at=place: duplicate(each, at),
                lambda each, at=place, by=way: move(each, at, by),
                lambda each, at=place: take_up(each, at),
                lambda each, at=place: throw_away(each, at),
                lambda each: bring_back(each, 0) if each.options.thrown else each,
            ][what](job)
        except Refused:
            continue
        job = with_value(job, "column.width", 6 + (i % 8) / 8)
    names = [name.casefold() for name in job.options.names]
    assert len(names) == len(set(names)) == job.options.count == len(list_options(job))
    assert list_options(job)[job.options.place].design == job.design
