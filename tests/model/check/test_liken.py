"""A picture's proportions at this fireplace: kept where they can be, and told where they had to give."""

from __future__ import annotations

import pytest

from app.demo import read_demo
from export.progress import Cancelled
from model.check.all import check_surround
from model.check.finding import Status
from model.check.liken import liken_job
from model.check.mantel import CHECK as MANTEL
from model.job import read_value, with_texts
from model.photo.likeness import Proportion
from model.surround import plan_surround


def proportions(**values: float) -> list[Proportion]:
    high = {"frieze.height", "shelf.height", "shelf.thickness"}
    paths = {key.replace("__", "."): value for key, value in values.items()}
    return [Proportion(path, path, value, 0.01, path in high) for path, value in paths.items()]


def test_sizes_go_with_this_openings_width_and_height():
    job = with_texts(read_demo("brick"), [("opening.width", "40"), ("opening.height", "30")])
    likened = liken_job(job, proportions(column__width=0.2, shelf__height=2.0))
    assert [(s.wanted, s.got) for s in likened.sizes] == [(8.0, 8.0), (60.0, 60.0)]
    assert not any(size.gave for size in likened.sizes)
    assert read_value(likened.job, "column.width") == 8.0


def test_sizes_go_with_the_reading_of_the_opening_that_governs():
    again = [("opening.width", "41"), ("readings.opening_width", "40"), ("opening.height", "30")]
    (column,) = liken_job(with_texts(read_demo("brick"), again), proportions(column__width=0.2)).sizes
    assert column.wanted == 8.0


def test_a_shelf_measured_from_the_floor_has_the_hearth_under_it():
    job = with_texts(read_demo("brick"), [("shelf.height_from", "floor")])
    (shelf,) = liken_job(job, proportions(shelf__height=1.9)).sizes
    assert shelf.wanted == pytest.approx(1.9 * job.site.opening.height + job.site.hearth.height, abs=1 / 16)


def test_what_comes_too_near_the_fire_gives_and_is_told():
    job = read_demo("brick")
    likened = liken_job(job, proportions(column__margin=0.02, shelf__height=1.4, frieze__height=0.3))
    gave = {size.path for size in likened.sizes if size.gave}
    assert gave or likened.besides
    findings = check_surround(plan_surround(likened.job))
    assert not [f for f in findings if f.status is Status.FAIL and f.check == MANTEL]
    assert likened.left == tuple(f for f in findings if f.status is Status.FAIL)


def test_a_size_beyond_its_row_is_held_to_it_and_told():
    (column,) = liken_job(read_demo("brick"), proportions(column__width=2.0)).sizes
    assert (column.got, column.gave) == (24.0, True)


def test_it_can_be_ended_on_the_way():
    def stop(_done: float, _words: str) -> None:
        raise Cancelled

    with pytest.raises(Cancelled):
        liken_job(read_demo("brick"), proportions(column__width=0.2), stop)
