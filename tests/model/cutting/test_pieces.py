"""What a surround asks of the yard, piece by piece."""

from __future__ import annotations

from collections import Counter

import pytest
from hypothesis import given, settings

from model.board import StockKind
from model.cutting.pieces import Material, Piece, list_mitres, list_pieces
from model.job import default_job, with_texts, with_value
from model.surround import Surround, plan_surround
from tests.planned import plan_of
from tests.strategies import jobs


def _widest(material: Material) -> float:
    return 11.25


def _plan(**settings_: str) -> Surround:
    pairs = [(path.replace("__", "."), text) for path, text in settings_.items()]
    return plan_surround(with_texts(default_job(), pairs))


def _pieces(surround: Surround, widest: float = 11.25) -> tuple[Piece, ...]:
    return list_pieces("job", surround, lambda material: widest)


def _named(surround: Surround, role: str, widest: float = 11.25) -> list[Piece]:
    return [p for p in _pieces(surround, widest) if surround.boards[p.source.board].role == role]


@settings(max_examples=40)
@given(jobs())
def test_every_board_of_any_job_is_asked_for_in_all_its_parts(job):
    surround = plan_of(job)
    pieces = list_pieces("job", surround, _widest)
    parts = Counter(piece.source.board for piece in pieces)
    assert set(parts) == set(range(len(surround.boards)))
    for piece in pieces:
        board = surround.boards[piece.source.board]
        assert piece.source.mark == surround.marks[piece.source.board]
        assert bool(piece.source.part) == (parts[piece.source.board] > 1)
        assert piece.length >= board.length - 1e-9
        assert piece.width * parts[piece.source.board] >= board.width - 1e-9 or piece.material.width
        assert all(0 <= run < piece.length for run in piece.mitres)


def test_a_board_longer_than_its_likes_by_less_than_a_mark_shows_is_asked_for_whole():
    """Of columns 1/10,000 in. apart in width the rails are one kind, counted from the narrower's."""
    job = with_value(with_value(default_job(), "column.width_left", 7.5), "column.width_right", 7.5001)
    surround = plan_surround(job)
    rails = _named(surround, "column bottom rail")
    (kind,) = {piece.source.mark[:-1] for piece in rails}
    longest = max(surround.boards[piece.source.board].length for piece in rails)
    trim = 2 * job.shop.allow.trim_end
    assert [piece.length - trim for piece in rails] == pytest.approx([longest, longest], abs=1e-9), kind


def test_a_wide_shelf_is_glued_from_strips_no_wider_than_boards_are_sold():
    surround = _plan(shelf__overhang_front="6", shelf__step="0", frieze__projection="6")
    whole = [p for p in _named(surround, "shelf top") if not p.source.part]
    strips = _named(surround, "shelf top", widest=5.5)
    assert whole == [] or whole[0].width <= 11.5
    assert len(strips) > 1
    assert {p.source.part for p in strips} == {
        f"strip {i} of {len(strips)}" for i in range(1, len(strips) + 1)
    }
    assert max(p.width for p in strips) <= 5.5 + 1e-9
    assert sum(p.width for p in strips) >= surround.boards[strips[0].source.board].width


def test_a_board_glued_because_none_is_wide_enough_gets_the_glue_ups_allowances():
    surround = _plan(column__projection="3", shelf__overhang_front="1", bed_mould__on="no")
    allow = surround.job.shop.allow
    whole, strips = _named(surround, "shelf top"), _named(surround, "shelf top", widest=3.5)
    assert len(whole) == 1 < len(strips)
    assert strips[0].length == pytest.approx(whole[0].length + allow.glue_length)
    trim = 2 * allow.trim_edge
    glued = sum(p.width - trim for p in strips)
    assert glued == pytest.approx(whole[0].width - trim + allow.glue_width)


def test_a_flat_frames_mitres_run_back_by_its_width_and_nothing_elses_do():
    surround = _plan(slip__on="yes", slip__width="2", bed_mould__on="yes", back_band__on="yes")
    runs = {surround.boards[p.source.board].role: p.mitres for p in _pieces(surround) if any(p.mitres)}
    assert set(runs) == {"slip leg", "slip head"}
    assert runs["slip head"] == pytest.approx((2.0, 2.0))
    assert sorted(runs["slip leg"]) == pytest.approx([0.0, 2.0])


def test_a_bevel_across_the_thickness_is_no_mitre():
    surround = _plan(shelf__edge_height="2")
    band = next(board for board in surround.boards if board.role == "edge band front")
    assert not band.low.is_square
    assert list_mitres(band) == (0.0, 0.0)


@pytest.mark.parametrize(("match", "stiles", "rails"), [("free", 0, 0), ("columns", 2, 0), ("both", 2, 1)])
def test_stiles_and_rails_share_a_board_where_that_is_asked(match: str, stiles: int, rails: int):
    surround = _plan(board__match=match)
    batches = {p.batch for p in _named(surround, "column stile")} - {""}
    assert len(batches) == stiles
    assert len({p.batch for p in _named(surround, "frieze top rail")} - {""}) == rails


@pytest.mark.parametrize(("grain", "turns"), [("along", False), ("free", True)])
def test_panels_turn_only_where_their_grain_may_run_either_way(grain: str, turns: bool):
    for piece in _pieces(_plan(panel__grain=grain)):
        assert piece.may_turn == (turns and piece.material.kind is StockKind.PANEL)


def test_a_moulding_is_asked_for_by_its_section_and_size():
    (material,) = {p.material for p in _named(_plan(), "bed mould frieze front")}
    assert material.kind is StockKind.MOULDING
    assert material.section
    assert material.width > 0
