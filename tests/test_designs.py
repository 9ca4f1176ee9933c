"""Random designs by number, as the bench of all claims holds them."""

from __future__ import annotations

from hypothesis import strategies as st

from model.job import with_value
from tests.bench.drawn import Drawing, draw_design
from tests.bench.held import Lot, add_lot, count_tried, read_lots
from tests.strategies import jobs, put_design


def _draw(strategy: st.SearchStrategy):
    drawing = Drawing("test")
    with drawing.going_on():
        return drawing.draw(strategy)


def test_a_number_has_the_same_design_in_every_run_and_another_number_another():
    assert draw_design(7) == draw_design(7)
    assert draw_design(7) != draw_design(8)


def test_whoever_draws_a_job_gets_the_design_that_is_put_with_the_rows_they_hold_on_it():
    design = draw_design(7)
    with put_design(design):
        assert _draw(jobs()) == design
        assert _draw(jobs(shelf__step=1.5)) == with_value(design, "shelf.step", 1.5)
    assert _draw(jobs()) != design


def test_a_design_off_the_tape_is_put_on_it_without_leaving_its_bounds():
    design = with_value(draw_design(7), "column.width", 7.03)
    with put_design(design):
        assert _draw(jobs(in_between=False)).design.column.width == 7.0


def test_lots_that_are_done_are_read_back(tmp_path):
    path, lots = tmp_path / "lots", [Lot("a", 0, 20, {"one": 20}, {"one": 0.5}), Lot("b", 20, 40, {"one": 3})]
    for lot in lots:
        add_lot(path, lot)
    assert [lot.commit for lot in read_lots(path)] == ["a", "b"]
    assert count_tried(read_lots(path)) == {"one": 23}
    assert read_lots(tmp_path / "none") == []
