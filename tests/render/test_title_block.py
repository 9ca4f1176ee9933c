"""Fields of the title block: as large as they fit, never outside, shortened only at the last."""

from itertools import combinations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely import Polygon, box

from render.drawing import Drawing, Polyline
from render.extent import list_texts, text_corners
from render.lettering import ELLIPSIS
from render.tables import SMALL
from render.title_block import LARGE, LOW_HEIGHT, TitleBlock, low_block, split_notes, tall_block

LOW_BOX, SPLIT = (0.0, 0.0, 9.8, LOW_HEIGHT), 3.8
TALL_BOX = (0.0, 0.0, 2.0, 7.4)
NAMES = st.text(st.characters(codec="utf-8", exclude_categories=["Cs"]), min_size=1, max_size=300)


def block_of(name, notes=()):
    return TitleBlock(
        name, name, name, "2025-03-04", name, "12 of 12", '1 1/2" = 1\'-0"', "Feet and inches", notes
    )


def draw(place, block):
    return Drawing(low_block(block, LOW_BOX, SPLIT) if place == "low" else tall_block(block, TALL_BOX))


def boxes_of(drawing):
    return [(text.text, Polygon(text_corners(text))) for text in list_texts(drawing)]


@pytest.mark.parametrize("place", ["low", "tall"])
@given(name=NAMES)
def test_a_name_of_any_length_stays_in_its_own_field(place, name):
    drawing = draw(place, block_of(name))
    for (one, area), (other, beside) in combinations(boxes_of(drawing), 2):
        assert not area.buffer(-0.004).intersects(beside.buffer(-0.004)), (one, other)
    frame = box(*(LOW_BOX if place == "low" else TALL_BOX)).buffer(0.001)
    assert all(frame.contains(area) for _, area in boxes_of(drawing))


@pytest.mark.parametrize("place", ["low", "tall"])
def test_a_name_too_long_for_its_field_says_that_it_is_cut_short(place):
    texts = [text.text for text in list_texts(draw(place, block_of("word " * 60)))]
    assert sum(text.endswith(ELLIPSIS) for text in texts) == 4


@pytest.mark.parametrize("place", ["low", "tall"])
def test_a_short_name_is_written_large_and_a_long_one_smaller(place):
    def height(name):
        return max(
            t.height for t in list_texts(draw(place, block_of(name))) if t.text.split()[0] == name.split()[0]
        )

    assert height("Hall") > height("Hall and staircase, ground floor of the invented house") >= SMALL


@pytest.mark.parametrize("place", ["low", "tall"])
def test_the_sheets_number_is_the_largest_writing(place):
    texts = list_texts(draw(place, block_of("Hall")))
    assert (
        next(text for text in texts if text.text == "12 of 12").height
        == LARGE
        == max(t.height for t in texts)
    )


@pytest.mark.parametrize("place", ["low", "tall"])
def test_the_projection_is_shown_by_its_sign(place):
    outlines = [mark for mark in draw(place, block_of("Hall")).marks if isinstance(mark, Polyline)]
    assert sorted(len(mark.points) for mark in outlines) == [4, 32, 32]


@pytest.mark.parametrize("place", ["low", "tall"])
def test_an_empty_field_keeps_its_label_to_be_filled_in_by_hand(place):
    empty = TitleBlock("Hall", "", "", "", "Front", "1 of 1", "", "Inches")
    texts = [text.text for text in list_texts(draw(place, empty))]
    assert {"Made for", "Made by", "Date", "Scale"} <= set(texts)


def test_notes_stand_above_the_fields_in_order_as_far_as_there_is_room():
    notes = tuple(f"Note {n} that says a good deal more than one line holds." for n in range(40))
    texts = list_texts(draw("tall", block_of("Hall", notes)))
    shown = [text for text in texts if text.text.startswith("Note ")]
    job = next(text for text in texts if text.text == "Job")
    assert [text.text.split()[1] for text in shown] == [str(n) for n in range(len(shown))]
    assert 2 < len(shown) < 40
    assert min(text.at[1] for text in shown) > job.at[1]


def test_notes_without_room_are_given_back_and_a_word_says_where_they_stand():
    notes = tuple(f"Note {n} that says a good deal more than one line holds." for n in range(40))
    box = (0.0, 0.0, 2.0, 8.0)
    kept, over = split_notes(notes, "More notes: elsewhere.", box)
    assert kept[-1] == "More notes: elsewhere."
    assert kept[:-1] + over == notes
    shown = " ".join(text.text for text in list_texts(Drawing(tall_block(block_of("Hall", kept), box))))
    assert "More notes: elsewhere." in shown
    assert f"Note {len(kept) - 2} " in shown
    assert split_notes(notes[:1], "More notes: elsewhere.", box) == (notes[:1], ())
