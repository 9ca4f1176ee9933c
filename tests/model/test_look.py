"""Colours that are chosen: words of the palettes, own ones, and the tone of each wood."""

import re
from dataclasses import replace

import pytest

from model.errors import Refused
from model.job import default_job, read_job, with_texts, with_value, write_job
from model.look import BARE, FACINGS, PAINTS, STAINS, WALLS, mix_colours, name_finish, wood_colour
from model.parameters import SPECIES, find_parameter


def test_every_wood_has_a_tone_and_every_colour_is_written_in_full():
    assert set(BARE) == set(SPECIES)
    named = [c for palette in (PAINTS, STAINS, FACINGS, WALLS) for _, c in palette.values()]
    assert all(re.fullmatch("#[0-9a-f]{6}", colour) for colour in (*named, *BARE.values()))


@pytest.mark.parametrize("text", ["greenish", "#12345", "#1234567", "#12345g", "", "rgb(1,2,3)"])
def test_what_is_no_colour_is_refused_with_those_there_are(text):
    with pytest.raises(Refused, match=r"Milk.*or a colour such as #7c8f93"):
        find_parameter("look.paint").parse(text)


def test_an_own_colour_is_kept_as_it_was_written_and_read_again():
    job = with_texts(default_job(), [("look.paint", "#AABBCC"), ("look.wall", "Moss")])
    assert (job.design.look.paint, job.design.look.wall) == ("#aabbcc", "moss")
    assert read_job(write_job(job)) == job
    row = find_parameter("look.wall")
    assert row.parse(row.format("moss", job.about.length_style)) == "moss"


def test_a_file_with_a_colour_that_is_none_is_refused():
    with pytest.raises(Refused, match="colour of the paint"):
        with_value(default_job(), "look.paint", "#zzzzzz")


def test_paint_hides_the_wood_a_stain_lets_it_through_and_a_clear_coat_shows_it():
    look = default_job().design.look
    assert wood_colour(replace(look, finish="painted"), "walnut") == wood_colour(look, "poplar")
    assert wood_colour(replace(look, finish="clear"), "walnut") == BARE["walnut"]
    stained = replace(look, finish="stained")
    assert wood_colour(stained, "walnut") != wood_colour(stained, "maple")


def test_mixing_all_of_one_colour_leaves_nothing_of_the_other():
    assert mix_colours("#102030", "#ffffff", 1.0) == "#102030"
    assert mix_colours("#000000", "#ffffff", 0.5) == "#808080"


def test_a_finish_is_named_as_it_was_chosen():
    look = default_job().design.look
    assert name_finish(replace(look, paint="moss")) == "painted, moss"
    assert name_finish(replace(look, finish="stained", stain="#aabbcc")) == "stained, #aabbcc"
    assert name_finish(replace(look, finish="clear")) == "clear coat"
