"""The one table: what each row may hold, how it is read and written, and what it is called."""

from __future__ import annotations

import math
import re
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from model.errors import Refused
from model.parameters import BY_PATH, MOST_PAIRS, TABLE, Kind, find_parameter
from model.units import FEET_INCHES_16, INCHES_16, MILLIMETRES, LengthStyle, round_length
from tests.strategies import values

PROMISED = {
    "site": ("fireplace", "rule"),
    "opening": ("width", "height"),
    "facing": ("width", "height", "proud"),
    "hearth": ("height", "width", "depth"),
    "column": ("width", "projection", "margin"),
    "plinth": ("height",),
    "frieze": ("height", "projection"),
    "shelf": ("height", "thickness", "depth", "overhang_front", "overhang_end"),
    "panel": ("reveal",),
}
LENGTHS = [row for row in TABLE if row.kind is Kind.LENGTH]
NUMBERS = [row for row in TABLE if row.kind is Kind.NUMBER]
STYLES = (INCHES_16, FEET_INCHES_16, LengthStyle("inches", 32), MILLIMETRES)


def _outcome(read, given) -> tuple[object, Refused | None]:
    try:
        return read(given), None
    except Refused as refusal:
        return None, refusal


@pytest.mark.parametrize("row", LENGTHS, ids=lambda row: row.path)
def test_bounds_told_in_millimetres_are_taken_as_they_are_told(row):
    with pytest.raises(Refused) as caught:
        row.parse("99999 m", MILLIMETRES)
    least, most = re.fullmatch(r"write a length from (-?\d+ mm) to (\d+ mm)", caught.value.wanted).groups()
    for told, bound in ((least, row.lowest or 0.0), (most, row.highest)):
        assert row.parse(told, MILLIMETRES) == pytest.approx(bound, abs=1 / 25.4)


def _refusal(path: str, value: object) -> str:
    with pytest.raises(Refused) as caught:
        BY_PATH[path].check(value)
    return str(caught.value)


@pytest.mark.parametrize("path", [f"{first}.{last}" for first, lasts in PROMISED.items() for last in lasts])
def test_scripts_find_the_promised_paths(path):
    assert find_parameter(path).path == path


def test_every_path_stands_once_and_has_two_parts():
    assert len(BY_PATH) == len(TABLE)
    assert all(row.path.count(".") == 1 and row.path.islower() for row in TABLE)


@pytest.mark.parametrize("row", TABLE, ids=lambda row: row.path)
def test_a_row_holds_its_own_default(row):
    if not row.linked:
        assert row.check(row.default) == row.default


@pytest.mark.parametrize("row", TABLE, ids=lambda row: row.path)
def test_a_row_says_what_it_is_in_one_sentence(row):
    assert row.label
    assert row.group
    assert row.help.endswith(".")
    assert "\n" not in row.help


@pytest.mark.parametrize("row", LENGTHS, ids=lambda row: row.path)
def test_a_length_holds_its_bounds_and_nothing_beyond(row):
    assert row.check(row.lowest) == row.lowest
    assert row.check(row.highest) == row.highest
    for beyond in (row.lowest - 0.01, row.highest + 0.01, math.nan, math.inf, -math.inf, 10**400, -(10**400)):
        with pytest.raises(Refused):
            row.check(beyond)


@pytest.mark.parametrize("row", LENGTHS, ids=lambda row: row.path)
def test_a_length_refuses_what_is_no_number(row):
    for value in ("36", True, False, [], {}, (36,), b"36", 36j):
        with pytest.raises(Refused, match="write a length in inches"):
            row.check(value)
    if not row.optional:
        with pytest.raises(Refused, match="null"):
            row.check(None)


@pytest.mark.parametrize("crumb", [5e-324, -5e-324, 2.3e-308, -1e-17, -0.0])
def test_a_crumb_of_a_length_that_arithmetic_leaves_is_nothing(crumb):
    """Taken as a size it would be a solid without inside, and meshes and areas of it disagree."""
    across = find_parameter("bolt_one.across").check(crumb)
    assert across == 0.0
    assert math.copysign(1, across) == 1
    assert find_parameter("bolt_one.across").check(-1 / 1024) == -1 / 1024
    if crumb > 0:
        assert find_parameter("chart.shelf").check([(crumb, 4), (1, 6)]) == ((0.0, 4.0), (1.0, 6.0))


def test_a_length_that_was_not_measured_is_left_empty():
    row = BY_PATH["hearth.thickness"]
    assert row.parse("  ") is None
    assert row.check(None) is None
    assert row.format(None, INCHES_16) == ""
    with pytest.raises(Refused):
        BY_PATH["opening.width"].parse("  ")


@pytest.mark.parametrize(
    ("path", "name"),
    [
        ("opening.width", "opening width"),
        ("shelf.height", "shelf height"),
        ("column.stile", "column stile width"),
        ("plinth.projection", "plinth projection"),
        ("panel.reveal", "panel reveal"),
        ("board.thickness", "board thickness"),
        ("bed_mould.on", "bed mould"),
        ("bed_mould.size", "bed mould size"),
        ("site.fireplace", "kind of fireplace"),
        ("room.left", "free wall to the left"),
        ("column.margin", "column margin from the opening"),
        ("shelf.overhang_front", "shelf overhang at the front"),
        ("level.centre", "level line over the hearth"),
        ("times.column", "hours for one column"),
        ("offer.days", "days the offer holds"),
    ],
)
def test_a_row_is_called_what_people_call_it(path, name):
    assert BY_PATH[path].name == name


def test_no_two_rows_are_called_the_same():
    names = [row.name for row in TABLE]
    assert len(set(names)) == len(names)
    assert all(name and name == name.strip() for name in names)


def test_no_row_is_called_by_a_word_said_twice_over():
    for row in TABLE:
        words = row.name.split()
        assert all(word != before for before, word in pairwise(words)), row.name


@pytest.mark.parametrize("row", NUMBERS, ids=lambda row: row.path)
def test_a_number_holds_its_bounds_and_nothing_beyond(row):
    assert row.check(row.lowest) == row.lowest
    assert row.check(row.highest) == row.highest
    for bad in (row.lowest - 0.01, row.highest + 0.01, math.nan, math.inf, 10**400, "3", True, [], {}):
        with pytest.raises(Refused, match="write a number from"):
            row.check(bad)
    assert (row.optional and row.check(None) is None) or _refusal(row.path, None)


def test_a_number_is_read_in_its_own_unit_or_the_jobs():
    row = BY_PATH["rates.primer_coverage"]
    assert row.parse("250") == row.parse("250 sq ft/gal") == row.parse(" 250 ft²/gal ") == 250
    assert row.parse("6.136 m²/L") == pytest.approx(250, rel=1e-4)
    assert row.parse("6.136", MILLIMETRES) == pytest.approx(250, rel=1e-4)
    assert row.format(250.0, INCHES_16) == "250 sq ft/gal"
    assert row.format(250.0, MILLIMETRES) == "6.136 m²/L"
    assert BY_PATH["rates.moisture"].parse("8 %") == BY_PATH["rates.moisture"].parse("8") == 8


def test_a_number_that_is_none_or_has_another_unit_is_refused_with_an_example():
    row = BY_PATH["rates.primer_coverage"]
    for text in ("", "x", "-3", "250 lb", "1e3", "2 50", "250 sq ft", "9" * 400):
        with pytest.raises(Refused, match="write a number"):
            row.parse(text)
    with pytest.raises(Refused) as caught:
        row.parse("40")
    assert str(caught.value) == (
        'rate primer coverage "40": write a number from 50 sq ft/gal to 1000 sq ft/gal'
    )


def test_a_figure_of_the_trade_says_how_well_its_default_is_known():
    for row in TABLE:
        if row.sourced is not None:
            assert row.default in (row.sourced.value, None)
            assert row.about.startswith(row.help)
            assert row.sourced.source.removesuffix(".") in row.about
            assert not row.about.endswith("..")
            assert str(row.sourced.standing) in row.about.lower()
        else:
            assert row.about == row.help


def test_a_bad_length_is_refused_by_name_with_an_example():
    with pytest.raises(Refused) as caught:
        BY_PATH["opening.width"].parse("3x")
    assert str(caught.value) == 'opening width "3x": write a length such as 36, 36 1/2, 3\' 0-1/2" or 914 mm'


def test_a_length_out_of_bounds_is_refused_with_the_bounds():
    with pytest.raises(Refused) as caught:
        BY_PATH["opening.width"].parse("20'")
    assert str(caught.value) == 'opening width "20\'": write a length from 12" to 120"'
    assert _refusal("opening.width", 3.5) == 'opening width 3.5: write a length from 12" to 120"'


def test_a_count_is_a_whole_number_in_bounds():
    row = BY_PATH["column.panels"]
    assert row.parse(" 3 ") == 3
    for text in ("0", "5", "-1", "2.0", "two", "", "٣", "²", "9" * 5000, "1e0"):
        with pytest.raises(Refused, match="write a whole number from 1 to 4"):
            row.parse(text)
    for value in (2.0, True, "2", None, 10**400):
        with pytest.raises(Refused, match="write a whole number from 1 to 4"):
            row.check(value)


@pytest.mark.parametrize("text", ["factory_built", "Factory-built", "FACTORY BUILT", " factory-built "])
def test_a_choice_is_read_as_stored_or_as_shown(text):
    assert BY_PATH["site.fireplace"].parse(text) == "factory_built"


def test_a_choice_refuses_other_words_and_lists_its_own():
    with pytest.raises(Refused) as caught:
        BY_PATH["site.rule"].parse("nfpa")
    rules = "strictest, irc, nfpa211, canada, australia, england, local, manual"
    assert str(caught.value) == f'governing rules "nfpa": write one of {rules}'
    for value in (None, 3, "IRC", ["irc"], {}):
        assert "write one of" in _refusal("site.rule", value)


def test_every_choice_reads_back_from_the_words_shown():
    for row in TABLE:
        for key in row.choices or {}:
            assert row.parse(row.format(key, INCHES_16)) == key


@pytest.mark.parametrize(
    ("text", "value"), [("yes", True), ("On", True), ("1", True), ("NO", False), ("off ", False)]
)
def test_yes_and_no_are_read_in_the_usual_words(text, value):
    assert BY_PATH["bed_mould.on"].parse(text) is value


def test_yes_or_no_refuses_numbers_and_other_words():
    for text in ("", "maybe", "2", "yesno"):
        with pytest.raises(Refused, match="write yes or no"):
            BY_PATH["bed_mould.on"].parse(text)
    for value in (1, 0, None, "yes", []):
        assert "write yes or no" in _refusal("bed_mould.on", value)


def test_a_text_keeps_lines_and_letters_and_refuses_what_no_sheet_can_hold():
    row = BY_PATH["job.notes"]
    written = "Ünïcode, 木\nsecond line\twith a tab 🪵"
    assert row.check(written) == written
    for bad in ("bell\x07", "\x00", "escape\x1b[31m", "\x7f", "\x9b", "half \ud83e", "carriage\r"):
        assert "control characters" in _refusal("job.notes", bad)
    assert "at most 4000 characters" in _refusal("job.notes", "x" * 4001)
    assert len(_refusal("job.notes", "x" * 400000)) < 200
    assert "write text" in _refusal("job.notes", 5)


def test_a_chart_is_read_row_by_row_and_sorted():
    row = BY_PATH["chart.shelf"]
    assert row.parse("2 1/2 : 10; 3/4:8 ;\n 6\" : 1'") == ((0.75, 8.0), (2.5, 10.0), (6.0, 12.0))
    assert row.parse("") == ()
    assert row.parse("19.05 mm : 203.2 mm") == ((0.75, 8.0),)
    assert row.format(((0.75, 8.0), (2.5, 10.0)), INCHES_16) == '3/4" : 8"; 2 1/2" : 10"'


@pytest.mark.parametrize(
    ("text", "why"),
    [
        ("3/4", "projection : clearance"),
        ("3/4 : 8 : 9", "projection : clearance"),
        ("3/4 : x", "write a length such as"),
        ("3/4 : 8; 3/4 : 9", 'give each projection once; 3/4" stands twice'),
        ("3/4 : 8; 2 : 7", 'look at 3/4" and 2"'),
        ("3/4 : 201", 'from 0" to 200"'),
    ],
)
def test_a_chart_that_makes_no_sense_is_refused(text, why):
    with pytest.raises(Refused) as caught:
        BY_PATH["chart.shelf"].parse(text)
    assert why in str(caught.value)
    assert str(caught.value).startswith("manual's chart above the opening")


def test_a_stored_chart_is_checked_like_a_typed_one():
    assert BY_PATH["chart.legs"].check([[3, 8], [1, 8]]) == ((1.0, 8.0), (3.0, 8.0))
    too_many = [[i, i] for i in range(MOST_PAIRS + 1)]
    for value in (None, 5, "1:2", {"1": 2}, [1], [[1]], [[1, 2, 3]], [[1, "2"]], [[True, 2]], [[-1, 2]],
                  [[math.nan, 2]], [[1, math.inf]], [[10**400, 1]], too_many):  # fmt: skip
        assert "manual's chart beside the opening" in _refusal("chart.legs", value)


def test_an_unknown_path_is_refused_with_the_nearest():
    with pytest.raises(Refused) as caught:
        find_parameter("opening.widht")
    assert str(caught.value) == 'parameter "opening.widht": write opening.width or opening.height'
    with pytest.raises(Refused, match=r"write a path such as opening\.width"):
        find_parameter("zzz")
    with pytest.raises(Refused):
        find_parameter("x" * 100000)


@given(st.data(), st.sampled_from([row for row in TABLE if not row.linked]), st.sampled_from(STYLES))
def test_what_a_field_shows_reads_back_to_within_its_step(data, row, style):
    value = data.draw(values(row))
    shown = row.format(value, style)
    match row.kind:
        case Kind.LENGTH if value is not None:
            rounded = round_length(value, style)
            if row.lowest <= rounded <= row.highest:
                assert row.parse(shown, style) == rounded
        case Kind.NUMBER if value is not None:
            near = float(f"{value * row.measure.scale(style):.4g}") / row.measure.scale(style)
            if row.lowest <= near <= row.highest:
                off = 0.5 * 10**-places if (places := row.measure.decimals) is not None else 1e-6
                assert row.parse(shown, style) == pytest.approx(near, rel=1e-3, abs=off)
        case Kind.PAIRS:
            rounded = tuple((round_length(p, style), round_length(c, style)) for p, c in value)
            if len({p for p, _ in rounded}) == len(rounded):
                assert row.parse(shown, style) == rounded
        case Kind.READINGS:
            rounded = tuple(round_length(reading, style) for reading in value)
            if all(row.lowest <= reading <= row.highest for reading in rounded):
                assert row.parse(shown, style) == rounded
        case _:
            assert row.parse(shown, style) == value


@given(st.data(), st.sampled_from([row for row in TABLE if not row.linked]))
def test_a_value_in_range_is_kept_as_it_is(data, row):
    value = data.draw(values(row))
    assert row.check(value) == value


@given(st.sampled_from(TABLE), st.one_of(st.text(max_size=30), st.text("0123456789 ./:;'\"", max_size=20)))
def test_any_text_is_read_or_refused_by_name(row, text):
    value, refusal = _outcome(row.parse, text)
    if refusal is None:
        assert row.check(value) == value
    else:
        assert refusal.field == row.name
        assert str(refusal).startswith(row.name)


JSON = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=5),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=3), inner, max_size=3),
)


@given(st.sampled_from(TABLE), JSON)
def test_any_stored_value_is_kept_or_refused_by_name(row, value):
    checked, refusal = _outcome(row.check, value)
    if refusal is None:
        assert row.check(checked) == checked
    else:
        assert str(refusal).startswith(row.name)
        assert len(str(refusal)) < 300


@pytest.mark.parametrize("row", NUMBERS, ids=lambda row: row.path)
def test_what_is_no_number_is_told_the_bounds_of_the_row(row):
    with pytest.raises(Refused, match=r"write a number from .+ to .+") as refused:
        row.parse("abc", INCHES_16)
    assert "such as" not in str(refused.value)
