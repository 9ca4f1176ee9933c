"""Strings of dimensions: printed parts add up, texts keep off each other and off passing lines."""

import re
from dataclasses import replace
from fractions import Fraction
from itertools import combinations, pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from app.demo import read_demo
from model.units import FEET_INCHES_16, INCHES_16, MILLIMETRES, LengthStyle
from render.dimension_strings import TEXT_CLEAR, TEXT_HEIGHT, Edge, measure, place_strings
from render.dimension_strokes import dimension_text
from render.drawing import Drawing, Placed, Sheet
from render.extent import text_corners
from render.view_context import Frame
from render.view_dimensions import list_strings
from render.views import VIEWS
from tests.collisions import list_collisions
from tests.planned import plan_of
from tests.strategies import jobs

BOTH = LengthStyle("both")
BOX = (0.0, 0.0, 60.0, 54.0)


def in_sixteenths(text):
    """Sixteenths of an inch that a printed length says, read without the program's own reader."""
    match = re.fullmatch(r"(?:(\d+)'-)?(?:(\d+)(?: (\d+/\d+))?|(\d+/\d+))\"", text)
    assert match, text
    return int(
        sum(Fraction(part or 0) * unit for part, unit in zip(match.groups(), (192, 16, 16, 16), strict=True))
    )


def string_of(edge, *alongs):
    return measure(edge, *((a, 0.0, "") for a in alongs))


@given(st.lists(st.floats(0, 96), min_size=3, max_size=9, unique=True))
def test_printed_parts_add_up_to_the_printed_whole(places):
    places.sort()
    parts = place_strings([string_of(Edge.BELOW, *places)], BOX, 12, FEET_INCHES_16)
    whole = place_strings([string_of(Edge.BELOW, places[0], places[-1])], BOX, 12, FEET_INCHES_16)
    printed = sum(in_sixteenths(d.text) for d in parts)
    if whole:
        assert printed == in_sixteenths(whole[0].text)


def test_rounding_each_length_by_itself_would_not_add_up():
    # Three lengths of 5/96 in. round to 1/16 each, 3/16 together; the whole, 5/32, prints as 3/16 or 1/8.
    thirds = [0, 17 + 1 / 3, 34 + 2 / 3, 52]
    placed = place_strings([string_of(Edge.ABOVE, *thirds)], BOX, 12, FEET_INCHES_16)
    assert [d.text for d in placed] == ["1'-5 5/16\"", "1'-5 3/8\"", "1'-5 5/16\""]


def test_lengths_that_add_up_when_rounded_one_by_one_are_printed_so():
    # 57.15 mm after 920.75 and 292.1: from positions it would print as 58, though the whole allows 57.
    places = [0.0, 229 / 25.4, (229 + 920.75) / 25.4, (229 + 920.75 + 292.1) / 25.4, 59.0]
    placed = place_strings([string_of(Edge.LEFT, *places)], BOX, 12, MILLIMETRES)
    assert [d.text for d in placed] == ["229", "921", "292", "57"]


def test_strings_follow_each_other_outwards_at_drafting_distances():
    strings = [string_of(Edge.BELOW, 0, 30, 60), string_of(Edge.BELOW, 0, 60)]
    first, _, second = place_strings(strings, BOX, 12, FEET_INCHES_16)
    assert -first.line / 12 >= 3 / 8
    assert (first.line - second.line) / 12 >= 1 / 4


def test_a_text_too_wide_for_its_span_is_lifted_off_its_line():
    wide, narrow = place_strings([string_of(Edge.ABOVE, 0, 58, 59)], BOX, 12, FEET_INCHES_16)
    assert not wide.lifted
    assert narrow.lifted
    assert narrow.text_at[1] > wide.text_at[1]


def test_stations_that_fall_together_are_one():
    assert len(string_of(Edge.LEFT, 0, 0, 12, 12).stations) == 2


def boxes_of(dimensions):
    return [text_corners(dimension_text(d)) for d in dimensions]


def overlap(one, other):
    (ax0, ay0), (ax1, ay1) = (map(f, *one) for f in (min, max))
    (bx0, by0), (bx1, by1) = (map(f, *other) for f in (min, max))
    return ax0 < bx1 - 1e-6 and bx0 < ax1 - 1e-6 and ay0 < by1 - 1e-6 and by0 < ay1 - 1e-6


@settings(max_examples=20, deadline=None)
@given(jobs(), st.sampled_from(VIEWS), st.sampled_from((8, 12, 16, 24)))
def test_texts_of_a_view_never_lie_over_each_other(job, view, ratio):
    surround = plan_of(job)
    placed = place_strings(
        list_strings(surround, view), Frame.around(surround, view).outline, ratio, job.about.length_style
    )
    for (one, a), (other, b) in combinations(zip(placed, boxes_of(placed), strict=True), 2):
        assert not overlap(a, b), (one.text, other.text)


def list_crossed(dimensions, ratio):
    """Texts that a leader, a tick or the line of a dimension runs through, brackets and all."""
    sheet = Sheet("1", "t", 99, 99, (Placed(Drawing(tuple(dimensions), ratio), (30.0, 30.0)),))
    return [str(found) for found in list_collisions(sheet)]


@settings(max_examples=60, deadline=None)
@given(
    st.lists(st.integers(0, 80 * 8), min_size=2, max_size=24, unique=True),
    st.lists(st.integers(0, 80 * 8), min_size=2, max_size=4, unique=True),
    st.sampled_from(tuple(Edge)),
    st.sampled_from((8, 24, 48)),
    st.sampled_from((FEET_INCHES_16, MILLIMETRES, BOTH)),
)
def test_no_leader_runs_through_a_text_however_many_narrow_spans_there_are(inner, outer, edge, ratio, style):
    strings = [string_of(edge, *(at / 8 for at in sorted(places))) for places in (inner, outer)]
    assert list_crossed(place_strings(strings, BOX, ratio, style), ratio) == []


def test_leaders_to_the_outer_rows_of_spread_texts_keep_off_the_nearer_rows():
    # Blocks of an invented shelf, in sixteenths of an inch.
    lengths = [12, 24, 186, 40, 170, 80, 130, 119, 91, 159, 51, 24, 175, 250]
    lengths += [250, 250, 249, 250, 168, 82, 126, 124, 84, 166, 42, 208, 24, 12]
    places = [sum(lengths[:i]) / 16 for i in range(len(lengths) + 1)]
    for edge in Edge:
        strings = [string_of(edge, *places), string_of(edge, places[0], places[-1])]
        assert list_crossed(place_strings(strings, BOX, 96, FEET_INCHES_16), 96) == []


def test_letters_instead_of_lengths_are_placed_as_wide_as_they_are():
    string = string_of(Edge.BELOW, 0, 12, 27, 39)
    lettered = zip(string.stations, ("", "M", "A", "N"), strict=True)
    string = replace(string, stations=tuple(replace(station, says=says) for station, says in lettered))
    placed = place_strings([string, string_of(Edge.BELOW, 13.5, 25.5)], BOX, 48, INCHES_16)
    assert [(d.text, d.lifted) for d in placed[:3]] == [("M", False), ("A", False), ("N", False)]
    assert list_crossed(placed, 48) == []


@pytest.mark.parametrize("count", [4, 8, 16])
def test_texts_without_a_place_near_their_spans_are_spread_no_further_than_a_sheet_is_wide(count):
    spans = [at / 4 for at in range(count + 1)]
    placed = place_strings([string_of(Edge.RIGHT, *spans)], BOX, 48, BOTH)
    along = [dimension.text_at[1] for dimension in placed]
    assert max(along) - min(along) < 5.2 * 48
    assert list_crossed(placed, 48) == []


def test_a_text_stands_over_a_line_that_gives_way_rather_than_far_off():
    string = [string_of(Edge.ABOVE, 0, 24, 25, 49, 50)]
    placed = place_strings(string, BOX, 48, BOTH, [(Edge.ABOVE, 55.0)])
    assert max(d.text_at[1] for d in placed) - placed[0].line < 48 * 1.3
    assert list_crossed(placed, 48) == []


@settings(max_examples=20, deadline=None)
@given(jobs(job__units="feet_inches", job__precision="16"), st.sampled_from(VIEWS))
def test_every_dimension_prints_the_distance_it_measures(job, view):
    surround = plan_of(job)
    placed = place_strings(
        list_strings(surround, view), Frame.around(surround, view).outline, 12, LengthStyle("feet_inches", 16)
    )
    for dimension in placed:
        # Rounded positions at both ends may differ from the distance by half a step each.
        assert abs(in_sixteenths(dimension.text) / 16 - dimension.measure) <= 1 / 16 + 1e-9


def test_lettering_is_at_least_two_and_a_half_millimetres_on_paper():
    assert TEXT_HEIGHT * 25.4 >= 2.5
    assert TEXT_CLEAR > 0
    assert all(a is not b for a, b in pairwise(Edge))


@pytest.mark.parametrize("edge", list(Edge))
def test_a_string_stands_on_its_own_side_of_the_view(edge):
    (dimension,) = place_strings([string_of(edge, 10, 40)], BOX, 12, FEET_INCHES_16)
    side = {Edge.BELOW: BOX[1], Edge.LEFT: BOX[0], Edge.ABOVE: BOX[3], Edge.RIGHT: BOX[2]}[edge]
    assert (dimension.line - side) * edge.outward > 0
    assert dimension.vertical == (edge in (Edge.LEFT, Edge.RIGHT))


@pytest.mark.parametrize("ratio", [17.0, 18.0, 19.0, 19.6, 20.0, 21.0])
def test_a_small_size_stands_aside_rather_than_at_the_end_of_a_long_leader(ratio):
    surround = plan_of(read_demo("too-close"))
    strings = list_strings(surround, "front")
    outline = Frame.around(surround, "front").outline
    placed = place_strings(strings, outline, ratio, surround.job.about.length_style)
    for found in placed:
        if found.lifted:
            far = found.line - found.text_at[0] if found.vertical else found.line - found.text_at[1]
            assert abs(far) / ratio < 0.7, (found.text, ratio)
