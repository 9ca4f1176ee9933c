"""Guide and saw: where the guide lies, worked back from where the blade then cuts."""

from __future__ import annotations

from collections import Counter

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.demo import list_demos, read_demo
from model.board import StockKind
from model.cutting.pieces import list_pieces, plan_glued
from model.job import default_job, with_texts
from model.surround import plan_surround
from model.takeoff.guide_settings import (
    BEARING,
    ORDER,
    Action,
    find_saw,
    list_guide_settings,
    place_guide,
)
from model.takeoff.marks import list_kinds
from tests.planned import plan_of
from tests.strategies import jobs

OWN = [("saw.shoe_left", "1 1/2"), ("saw.shoe_right", "5"), ("saw.kerf", "0.1")]


def _saw(*settings: tuple[str, str]):
    return find_saw(with_texts(default_job(), settings or OWN))


def test_on_a_wide_piece_the_guide_lies_on_it_and_the_shoe_alone_counts():
    """9 in. kept, 5 in. of shoe: the guide lies 4 in. from the piece's edge."""
    guide = place_guide(9.0, _saw())
    assert (guide.set_off, guide.line, guide.on_piece, guide.shoe, guide.keep) == (
        5,
        4,
        True,
        "right",
        "right",
    )


def test_a_narrower_piece_takes_the_narrow_side_of_the_shoe():
    guide = place_guide(4.0, _saw())
    assert (guide.set_off, guide.line, guide.shoe, guide.keep) == (1.5, 2.5, "left", "left")


def test_from_the_waste_the_kerf_comes_on_top():
    """2 in. kept: the guide lies 5 in. and the kerf of 1/10 beyond the cut."""
    guide = place_guide(2.0, _saw())
    assert (guide.set_off, guide.line, guide.on_piece) == (pytest.approx(5.1), pytest.approx(7.1), False)
    assert (guide.shoe, guide.keep) == ("right", "left")


@given(st.floats(0.25, 100), st.floats(0.25, 12), st.floats(0.25, 12), st.floats(0.02, 0.25))
def test_the_blade_always_takes_its_kerf_beside_the_piece(size, left, right, kerf):
    """Laid out on a line: the piece from 0 to `size`, the guide at its place, the shoe against it."""
    own = [("saw.shoe_left", f"{left:.9f}"), ("saw.shoe_right", f"{right:.9f}"), ("saw.kerf", f"{kerf:.9f}")]
    guide = place_guide(size, _saw(*own))
    off = left if guide.shoe == "left" else right
    if guide.on_piece:
        blade = (guide.line + off, guide.line + off + kerf)
        assert guide.line >= BEARING - 1e-6
        assert guide.keep == guide.shoe
    else:
        blade = (guide.line - off - kerf, guide.line - off)
        assert guide.keep != guide.shoe
    assert blade[0] == pytest.approx(size, abs=1e-5)
    assert abs(guide.line - size) == pytest.approx(guide.set_off)


def test_a_saw_counts_as_measured_once_all_of_it_is():
    assert not find_saw(default_job()).measured
    assert not _saw(*OWN[:2]).measured
    assert _saw().measured
    assert _saw().kerf.value == 0.1


def test_equal_cuts_stand_once_with_all_their_pieces():
    settings = list_guide_settings(plan_surround(read_demo("brick")))
    keys = [(s.stock, s.action, s.size, s.angle) for s in settings]
    assert len(keys) == len(set(keys))
    (long,) = (s for s in settings if s.action is Action.CROSSCUT and s.size == 57.25)
    assert dict(long.pieces) == {"C1": 4, "C5": 2, "C6": 2}
    assert long.count == 8


@pytest.mark.parametrize("name", list_demos())
def test_rips_come_before_crosscuts_and_the_largest_first(name):
    settings = list_guide_settings(plan_surround(read_demo(name)))
    for stock in dict.fromkeys(s.stock for s in settings):
        mine = [s for s in settings if s.stock == stock]
        actions = [ORDER.index(s.action) for s in mine]
        assert actions == sorted(actions)
        for action in ORDER:
            sizes = [s.size for s in mine if s.action is action and s.angle == 0]
            assert sizes == sorted(sizes, reverse=True)


def test_a_tilted_blade_has_no_set_off_that_could_be_known():
    settings = list_guide_settings(plan_surround(default_job()))
    tilted = [s for s in settings if s.action is Action.BEVEL]
    assert {s.angle for s in tilted} == {45}
    assert all(s.guide is None for s in tilted)
    assert all(s.guide is not None for s in settings if s.action is not Action.BEVEL)


def test_a_glue_up_is_ripped_into_strips_and_again_when_it_is_dry():
    job = with_texts(default_job(), [("column.projection", "14")])
    settings = list_guide_settings(plan_surround(job))
    strips = [s for s in settings if s.action is Action.RIP and s.size == 7.25]
    dry = [s for s in settings if s.action is Action.GLUED_RIP]
    assert sum(count for s in strips for _, count in s.pieces) == 2 * sum(
        count for s in dry for _, count in s.pieces
    )


@given(jobs())
def test_every_piece_but_mouldings_is_crosscut_once_or_more(job):
    surround = plan_of(job)
    settings = list_guide_settings(surround)
    crosscut = {
        mark for s in settings for mark, _ in s.pieces if s.action not in (Action.RIP, Action.GLUED_RIP)
    }
    for kind in list_kinds(surround.boards):
        is_moulding = surround.boards[kind.pieces[0]].stock.kind is StockKind.MOULDING
        assert (kind.mark in crosscut) != is_moulding
    assert all(s.size > 0 and s.count > 0 for s in settings)


@given(jobs(), st.sampled_from([5.5, 11.25, 14.0]))
def test_rips_are_as_wide_and_as_many_as_the_pieces_that_are_asked_of_the_yard(job, widest):
    """Strips of a glue-up, and once more for each that is glued."""
    surround = plan_of(job)
    strips = Counter(
        (piece.source.mark, round(piece.width, 3))
        for piece in list_pieces("", surround, lambda material: widest)
        if piece.source.part.startswith("strip")
    )
    marks = {surround.marks[i]: kind.mark for kind in surround.kinds for i in kind.pieces}
    wanted: Counter[tuple[str, float]] = Counter()
    for (mark, width), count in strips.items():
        wanted[marks[mark], width] += count
    settings = list_guide_settings(surround, plan_glued(surround, lambda material: widest))
    glued = {mark for s in settings if s.action is Action.GLUED_RIP for mark, _ in s.pieces}
    assert glued == {mark for mark, _ in wanted}
    for (mark, width), count in wanted.items():
        rips = [
            (s.size, dict(s.pieces)[mark])
            for s in settings
            if s.action is Action.RIP and mark in dict(s.pieces)
        ]
        assert rips == [(pytest.approx(width, abs=2e-3), count)]


def test_a_shelf_that_scribe_stock_makes_wider_than_a_board_is_ripped_as_strips_and_when_it_is_glued():
    """11 1/4 in., 1/2 to scribe: two strips of half of 12 in. and 1/4 to trim; 11 3/4 once it is dry."""
    surround = plan_surround(with_texts(read_demo("brick"), [("shelf.overhang_front", "3 1/2")]))
    tops = {k.mark for k in surround.kinds if surround.boards[k.pieces[0]].role == "shelf top"}
    rips = [
        (s.action, s.size, count)
        for s in list_guide_settings(surround)
        for mark, count in s.pieces
        if mark in tops and s.action is not Action.CROSSCUT
    ]
    assert rips == [(Action.RIP, 6.25, 2), (Action.GLUED_RIP, 11.75, 1)]


def test_wood_thinner_than_the_jobs_boards_is_sawn_with_those_that_it_is_planed_from():
    surround = plan_surround(with_texts(read_demo("bedroom"), [("panel.kind", "solid")]))
    panels = {k.mark for k in surround.kinds if surround.boards[k.pieces[0]].role == "frieze panel"}
    found = {
        s.stock.thickness for s in list_guide_settings(surround) for mark, _ in s.pieces if mark in panels
    }
    assert found == {surround.job.design.board.thickness}
