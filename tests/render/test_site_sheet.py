"""The site record: table and sketch."""

import pytest

from model.job import default_job, with_texts
from model.parameters import BY_PATH, TABLE
from model.surround import plan_surround
from render.drawing import Dimension, Text
from render.sheets import SITE_FRONT, SITE_PLAN
from render.site_sheet import GROUPS, LINE, site_strips
from render.site_sketch import KEYS, draw_site


def rows_of(*settings):
    """Words of each strip of the table, by what was measured."""
    strips = site_strips(plan_surround(with_texts(default_job(), settings)), 10.0)
    return [[mark.text for mark in strip.marks if isinstance(mark, Text)] for strip in strips]


def row(rows, what):
    return next(words for words in rows if what in words)


def test_what_was_measured_stands_with_its_letter_in_the_jobs_units():
    assert row(rows_of(), "Opening width")[:3] == ["A", "Opening width", "3'-0\""]
    assert row(rows_of(("job.units", "millimetres")), "Opening width")[2] == "914 mm"


def test_all_readings_of_a_size_stand_there_and_not_the_governing_one_alone():
    rows = rows_of(("readings.opening_width", "35 1/2, 36 1/4"))
    assert row(rows, "Opening width")[2] == "3'-0\""
    words = " ".join(" ".join(words) for words in rows)
    assert "2'-11 1/2\"," in words
    assert "3'-0 1/4\"" in words


def test_what_is_not_there_has_a_line_to_write_on():
    assert LINE in row(rows_of(), "Hearth thickness")
    assert LINE in row(rows_of(), "Outlet plate, wide")
    assert LINE not in row(rows_of(("outlet.left", "50")), "Outlet plate, wide")


def test_every_row_of_the_site_is_in_it_where_a_manual_governs():
    settings = (("site.fireplace", "gas"), ("site.rule", "manual"))
    words = " ".join(" ".join(words) for words in rows_of(*settings))
    for parameter in TABLE:
        if parameter.group in GROUPS and not parameter.linked:
            assert parameter.help.split(".")[0].split(" ")[0] in words


def test_a_masonry_job_has_no_lines_for_a_manual():
    assert not [words for words in rows_of() if "Manual's chart, above" in words]


def test_the_sketch_measures_each_size_it_letters_where_it_is():
    job = with_texts(default_job(), (("facing.proud", "2"), ("hearth.height", "6")))
    surround = plan_surround(job)
    sizes = {
        mark.stands_for: mark
        for name in (SITE_FRONT, SITE_PLAN)
        for mark in draw_site(surround, name, 16.0).marks
        if isinstance(mark, Dimension)
    }
    for path in ("opening.width", "opening.height", "facing.width", "facing.proud", "hearth.depth"):
        part, field = path.split(".")
        assert sizes[path].measure == pytest.approx(getattr(getattr(job.site, part), field))
    assert {KEYS[path] for path in sizes} == {mark.text for mark in sizes.values()}
    assert set(sizes) <= set(BY_PATH)
    assert len({mark.text for mark in sizes.values()}) == len(sizes)
