"""Sections as text: what is written is read back, and what cannot be read says what is wanted."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from model.errors import Refused
from model.moulding.elements import CURVED, HALF_ROUND, Element, Shape, cavetto, fillet
from model.moulding.library import SECTIONS
from model.moulding.notation import (
    MOST_ELEMENTS,
    UNNAMED,
    check_section,
    clean_name,
    format_section,
    parse_section,
)
from model.moulding.section import Section

TEXT = """
name Cove and fillets
fillet 3/16 down, 3/16 back   # under the shelf
cavetto 1 1/8 down, 1 1/8 back
fillet 3/16 down
foot 3/16
"""
COVE = Section(
    "Cove and fillets", (fillet(0.1875, 0.1875), cavetto(1.125, 1.125), fillet(0.1875)), foot=0.1875
)
SIZES = st.integers(200, 3_000_000).map(lambda micro: micro / 1_000_000)


@st.composite
def elements(draw):
    shape = draw(st.sampled_from([s for s in Shape if s not in (Shape.ROUND, Shape.HOLLOW)]))
    down, back = draw(SIZES), draw(SIZES) * draw(st.sampled_from((-1, 1)))
    if shape in HALF_ROUND:
        return Element(shape, down)
    if shape is Shape.SCOTIA:
        return Element(shape, down, round(back / 3 * down / 4, 6))
    if shape in CURVED or shape is Shape.LINE:
        return Element(shape, down, back)
    return Element(shape, down, draw(st.sampled_from((back, 0.0))))


def assert_read_back(section):
    """A section that can be is read back the same; one that cannot is refused as text too."""
    text = format_section(section)
    try:
        check_section(section)
    except Refused:
        with pytest.raises(Refused):
            parse_section(text)
    else:
        assert parse_section(text) == section


def refusal(text):
    with pytest.raises(Refused) as caught:
        parse_section(text, "own section 1")
    return str(caught.value)


def test_lines_become_elements():
    assert parse_section(TEXT) == COVE


def test_lines_may_be_parted_by_semicolons():
    assert parse_section(TEXT.replace("# under the shelf", "").replace("\n", ";")) == COVE


def test_millimetres_are_read_where_they_are_said():
    section = parse_section("cavetto 25.4 mm down, 12.7 mm back; foot 1/8")
    assert section.elements == (cavetto(1.0, 0.5),)
    assert section.name == UNNAMED


def test_a_seat_says_the_same_as_a_foot():
    assert parse_section("cavetto 1 down, 3/4 back; foot 1/4") == parse_section(
        "seat 1; cavetto 1 down, 3/4 back"
    )


def test_a_sprung_back_is_read_with_its_thickness():
    section = parse_section("sprung 38, 5/8 thick; cyma recta 1 3/4 down, 1 3/8 back; foot 1/4")
    assert (section.spring, section.thickness) == (38.0, 0.625)


@pytest.mark.parametrize("name", sorted(SECTIONS))
def test_every_shipped_section_is_read_back_from_its_text(name):
    section = SECTIONS[name].section
    assert parse_section(format_section(section)) == section


@given(
    st.lists(elements(), min_size=1, max_size=6),
    st.text(st.characters(categories=("L", "N")), min_size=1, max_size=20),
    SIZES.map(lambda size: 2 * size),
)
def test_whatever_is_read_is_read_back_from_its_text(parts, name, foot):
    assert_read_back(Section(name, tuple(parts), foot))


@given(SIZES, SIZES, st.booleans(), st.booleans())
def test_free_arcs_are_read_back(down, back, hollow, long):
    radius = round((down**2 + back**2) ** 0.5, 6)
    element = Element(Shape.HOLLOW if hollow else Shape.ROUND, down, back, radius, long)
    assert_read_back(Section("arc", (fillet(2.0), element, fillet(2.0)), 6.0))


@pytest.mark.parametrize(
    ("text", "read", "wanted"),
    [
        ("", '""', "write one line for each element"),
        ("cavetto 1 down", "line 1", "how far back or out it leads"),
        ("fillet 1 down; zig 1 down", "line 2", "begin with name, flat, sprung, seat, foot or an element"),
        ("fillet", "line 1", "how far down it goes, such as fillet 1/8 down, 1/8 back"),
        ("ovolo 1 down, x back", "line 1", "write each size once, with its way, such as ovolo 3/4 down"),
        ("ovolo 1 down, 1/ back", "line 1", "write sizes as off a tape"),
        ("ovolo 1 down, 1 back, 1 back", "line 1", "write each size once"),
        ("ovolo 13 down, 1 back", "line 1", "no size may be over 12 in."),
        ("bead 1 down, 1 out", "line 1", "a half circle ends right below"),
        ("scotia 1 down, 1 out", "line 1", "lead out by less than its height"),
        ("round 1 down, 1 back, 1/2 radius", "line 1", "a radius of at least 0.707106781"),
        ("ovolo 1 down, 1 back, 1 radius", "line 1", "only round and hollow have a radius"),
        ("sprung 80, 1 thick; fillet 1 down", "line 1", "15 to 75"),
        ("name", "line 1", "1 to 60 characters"),
        ("foot 1; fillet 1 down; foot 1", "line 3", "foot stands twice"),
        ("seat 1; ovolo 1 down, 1 back; foot 1", '"seat 1; ovolo', "write one of them"),
        ("ovolo 1 down, 1 out", UNNAMED, "its seat would lie behind the wall"),
        ("ovolo 1 down, 1 back; seat 1/2", UNNAMED, "its foot would lie behind the wall"),
        ("fillet 1/16 down; foot 1", UNNAMED, "make it 1/8 to 12 in. high"),
        ("scotia 1 down; foot 1/8", UNNAMED, "runs past its seat, its foot or the wall"),
        ("fillet 1 down; line 2 up, 1 back; fillet 2 down; foot 1", UNNAMED, "runs past its seat"),
        ("sprung 45, 1/8 thick; ovolo 1 down, 1 back", UNNAMED, "make it thicker"),
        ("sprung 45, 3 thick; ovolo 1 down, 1 back", UNNAMED, "write flat"),
        ("sprung 45, 1/4 thick; cavetto 2 down, 2 back; fillet 1/4 down; foot 1/8", UNNAMED, "thicker"),
        ("line 0 down, 0 back; fillet 1 down; foot 1", "line 1", "write how far it goes"),
        ("ovolo 10 down, 10 back; foot 6", UNNAMED, "keep it within 12 in. of the wall"),
        ("fillet 1 down, 1 back; line 1/2 up, 1/2 out; fillet 1 down; foot 1/2", UNNAMED, "crosses itself"),
    ],
)
def test_what_cannot_be_read_is_refused_with_what_is_wanted(text, read, wanted):
    message = refusal(text)
    assert message.startswith("own section 1 ")
    assert read in message
    assert wanted in message


def test_a_section_of_too_many_elements_is_refused():
    assert str(MOST_ELEMENTS) in refusal("fillet 1/64 down;" * (MOST_ELEMENTS + 1))


@given(st.text(max_size=80))
def test_any_text_makes_a_name_that_is_read_back(text):
    section = replace(COVE, name=clean_name(text))
    assert parse_section(format_section(section)) == section


@pytest.mark.parametrize(
    ("stem", "name"),
    [("hall; 2 #3", "hall 2 3"), ("s\udcff", "s"), ("a\x1b[31mb", "a [31mb"), ("\x1b", UNNAMED)],
)
def test_a_files_name_becomes_a_name_that_any_text_can_hold(stem: str, name: str):
    assert clean_name(stem) == name
    assert clean_name(stem).encode()
