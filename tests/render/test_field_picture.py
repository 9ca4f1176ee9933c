"""Pictures of fields: the measure that is marked is the field's own, and whatever is measured has one."""

from __future__ import annotations

from math import hypot, isfinite

import pytest
from hypothesis import given, settings

from app.demo import list_demos, read_demo
from model.errors import Refused
from model.idle import list_idle
from model.job import Job, default_job, read_value, with_texts
from model.parameters import TABLE, Kind
from model.surround import plan_surround
from model.units import format_length
from render.drawing import Dimension, Lines, Region, Text
from render.extent import box_of, drawing_extent
from render.field_picture import FieldPicture, draw_field_picture
from render.tape_picture import AS_IF, UNKNOWN, draw_measured
from tests.planned import plan_of
from tests.strategies import jobs

EVERYTHING = (
    ("column.kind", "fluted"),
    ("frieze.kind", "tablet"),
    ("capital.on", "yes"),
    ("plinth_cap.on", "yes"),
    ("back_band.on", "yes"),
    ("over.on", "yes"),
    ("slip.on", "yes"),
    ("hearth.height", "8"),
    ("column.over_edge", "stepped"),
    ("baseboard.height_left", "5"),
    ("outlet.right", "60"),
    ("casing.left", "58"),
    ("old_ledger.top", "44"),
    ("bolt_one.across", "10"),
    ("tv.diagonal", "50"),
    ("level.centre", "30"),
    ("level.left", "29 3/4"),
    ("plumb.right", "1/4"),
)
"""A job with one of everything that can be measured. Invented."""
FOUND = ("Opening", "Facing", "Hearth", "Levels", "Obstacles")
WORDS_ONLY = {"baseboard.meets", "old_ledger.use"}
"""Choices about the site; what they say is not a measure."""


def _draw(job, path: str) -> FieldPicture | None:
    return draw_field_picture(plan_surround(job), path)


def _tape(picture: FieldPicture) -> float:
    stroke = next(mark for mark in picture.marked.marks if isinstance(mark, Lines)).segments[0]
    return hypot(stroke[2] - stroke[0], stroke[3] - stroke[1])


def _texts(picture: FieldPicture) -> list[str]:
    return [mark.text for mark in picture.marked.marks if isinstance(mark, Text | Dimension)]


@pytest.mark.parametrize("start", ["new", *list_demos()])
def test_everything_measured_at_the_fireplace_has_its_picture(start: str):
    job = default_job() if start == "new" else read_demo(start)
    surround = plan_surround(job)
    wanted = [row.path for row in TABLE if row.group in FOUND and row.path not in list_idle(job)]
    missing = {path for path in wanted if draw_field_picture(surround, path) is None}
    assert missing <= WORDS_ONLY


def test_the_tape_is_as_long_as_what_it_reads():
    job = with_texts(default_job(), EVERYTHING)
    surround, tried = plan_surround(job), 0
    for row in TABLE:
        value = None if row.path in list_idle(job) else read_value(job, row.path)
        measured = row.group in (*FOUND, "Room", "Television") and not row.path.startswith("plumb.")
        if row.kind is not Kind.LENGTH or value in (None, 0.0) or not measured:
            continue
        picture = draw_field_picture(surround, row.path)
        assert picture is not None, row.path
        assert _tape(picture) == pytest.approx(abs(value)), row.path
        assert _texts(picture) == [format_length(value, job.about.length_style)], row.path
        tried += 1
    assert tried > 30


def test_a_size_of_the_design_is_marked_by_its_own_dimension():
    for name in list_demos():
        job = read_demo(name)
        surround = plan_surround(job)
        for path in ("column.width", "plinth.height", "frieze.height", "shelf.thickness", "panel.reveal"):
            if path in list_idle(job):
                continue
            picture = draw_field_picture(surround, path)
            assert picture is not None, path
            (dimension,) = (mark for mark in picture.marked.marks if isinstance(mark, Dimension))
            asked = read_value(surround.job, path)
            short = {s.path: s.built for s in surround.layout.shortfalls}
            assert dimension.measure == pytest.approx(short.get(path, asked)), (name, path)


def test_what_is_not_there_is_drawn_as_if_it_were_and_says_no_size():
    picture = _draw(default_job(), "baseboard.height_left")
    assert picture is not None
    assert picture.note == AS_IF
    assert _texts(picture) == [UNKNOWN]


def test_what_was_measured_is_drawn_as_it_is():
    picture = _draw(with_texts(default_job(), [("baseboard.height_left", "7")]), "baseboard.height_left")
    assert picture is not None
    assert picture.note == ""


def test_a_name_and_a_rate_have_words_only():
    for path in ("job.client", "rates.glue_film", "times.crew", "offer.tax", "site.rule"):
        assert _draw(default_job(), path) is None


def test_a_path_that_is_not_known_is_refused():
    with pytest.raises(Refused):
        _draw(default_job(), "opening.depth")


def test_one_side_alone_is_marked_on_its_own_side():
    left, right = (_draw(default_job(), f"column.width_{side}") for side in ("left", "right"))
    assert left is not None
    assert right is not None
    ends = [
        next(mark for mark in picture.marked.marks if isinstance(mark, Dimension)).first[0]
        for picture in (left, right)
    ]
    assert ends[0] < 0 < ends[1]


def test_a_small_size_is_drawn_larger_with_only_its_surroundings():
    picture = _draw(read_demo("brick"), "plinth.height")
    whole = _draw(read_demo("brick"), "shelf.height")
    assert picture is not None
    assert whole is not None
    x0, _, x1, _ = drawing_extent(picture.ground)
    assert x1 - x0 < 0.5 * (drawing_extent(whole.ground)[2] - drawing_extent(whole.ground)[0])


def test_pictures_of_everything_that_can_be_built_are_drawn():
    job = with_texts(default_job(), EVERYTHING)
    surround = plan_surround(job)
    drawn = [row.path for row in TABLE if draw_field_picture(surround, row.path) is not None]
    assert {"capital.size", "over.stile", "slip.width", "tablet.width", "flute.width"} <= set(drawn)
    assert {"nailer.width", "tv.away", "casing.proud", "bolt_one.out", "level.floor_left"} <= set(drawn)


def test_the_sizes_of_a_raised_board_have_pictures():
    surround = plan_surround(with_texts(default_job(), [("column.kind", "raised")]))
    for path in ("raised.margin", "raised.thickness"):
        assert draw_field_picture(surround, path) is not None, path


@given(jobs())
@settings(max_examples=25)
def test_no_job_that_can_be_entered_has_a_picture_that_is_empty_or_cannot_be_drawn(job: Job):
    surround, idle = plan_of(job), list_idle(job)
    for row in TABLE:
        picture = None if row.path in idle else draw_field_picture(surround, row.path)
        if picture is not None:
            assert picture.ground.marks, row.path
            assert picture.marked.marks, row.path
            assert all(isfinite(side) for side in drawing_extent(picture.whole)), row.path


def test_what_is_measured_at_the_bench_has_its_picture_and_says_that_it_is_not_to_scale():
    job = with_texts(default_job(), [("piece_one.use", "shelf"), ("saw.shoe_left", "4 3/4")])
    surround = plan_surround(job)
    for row in TABLE:
        if row.group in ("Saw", "Cutting") or row.path in ("piece_one.length", "piece_one.clear"):
            picture = draw_field_picture(surround, row.path)
            assert picture is not None, row.path
            assert picture.note, row.path
    known = draw_field_picture(surround, "saw.shoe_left")
    unknown = draw_field_picture(surround, "saw.shoe_right")
    assert known is not None
    assert unknown is not None
    assert _tape(known) == 4.75
    assert (_texts(known), _texts(unknown)) == (['4 3/4"'], [UNKNOWN])


@pytest.mark.parametrize("name", list_demos())
def test_sizes_of_the_whole_fireplace_stand_clear_of_each_others_tapes(name: str):
    surround = plan_of(read_demo(name))
    marks = draw_measured(surround).marked.marks
    plates = [box_of(list(m.rings[0])) for m in marks if isinstance(m, Region)]
    tapes = [m.segments[0] for m in marks if isinstance(m, Lines)]
    assert len(plates) == len(tapes) == 4
    for own, (x0, y0, x1, y1) in enumerate(plates):
        for other, (a0, b0, a1, b1) in enumerate(tapes):
            apart = max(x0, min(a0, a1)) > min(x1, max(a0, a1)) or max(y0, b0) > min(y1, max(b0, b1))
            assert own == other or apart
    half = surround.job.site.opening.width / 2
    assert plates[0][0] > -half
    assert plates[1][2] < half


def test_the_whole_fireplace_shows_the_reading_that_governs():
    job = with_texts(default_job(), (("opening.width", "36 1/2"), ("readings.opening_width", "35 7/16")))
    texts = [m.text for m in draw_measured(plan_surround(job)).marked.marks if isinstance(m, Text)]
    assert texts[0] == format_length(35.4375, job.about.length_style)
