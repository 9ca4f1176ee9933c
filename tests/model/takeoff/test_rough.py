"""Rough sizes: what is left on, and why."""

from __future__ import annotations

from collections import defaultdict

import pytest
from hypothesis import given

from app.demo import list_demos, read_demo
from model.board import Board, StockKind
from model.build.level_backs import PACKING, gap_left
from model.job import Job, default_job, with_texts
from model.surround import plan_surround
from model.takeoff.marks import GRID, list_kinds
from model.takeoff.rough import list_glue_ups, list_touched, plan_rough, shortest_line
from tests.planned import plan_of
from tests.strategies import jobs


def longest_line(board: Board) -> float:
    """Inches along the grain between the two ends where they are furthest apart."""
    if board.length_axis != board.axis:
        return board.length
    return max(board.high.position(u, v) - board.low.position(u, v) for u, v in board.section)


def _by_role(*settings: str):
    job = with_texts(default_job(), [tuple(setting.split("=")) for setting in settings])
    surround = plan_surround(job)
    kinds = list_kinds(surround.boards)
    rough = plan_rough(surround)
    return {surround.boards[kind.pieces[0]].role: rough[kind.mark] for kind in kinds}


def test_a_stile_is_left_long_for_the_hearth_and_for_trimming_and_wide_for_its_edges():
    """52 in. long and 1 3/4 wide: 1/2 in. to scribe its foot, 1/2 in. off each end, 1/8 off each edge."""
    stile = _by_role()["column stile"]
    assert (stile.length.finished, stile.length.scribe, stile.length.trim) == (52, 0.5, 1)
    assert (stile.width.finished, stile.width.scribe, stile.width.trim) == (1.75, 0, 0.25)
    assert stile.length.rough == 53.5
    assert stile.length.to_saw == 52.5


def test_a_return_is_left_wide_for_the_masonry():
    """3 1/4 in. wide: 1/2 in. to scribe along the brick, 1/8 in. off each edge."""
    side = _by_role()["column outer return"]
    assert (side.width.finished, side.width.scribe, side.width.rough) == (3.25, 0.5, 4.0)


def test_a_rail_between_stiles_has_nothing_to_scribe():
    rail = _by_role()["frieze top rail"]
    assert (rail.length.scribe, rail.width.scribe) == (0, 0)


def test_a_sheet_is_cut_to_size_and_framing_is_shimmed():
    rough = _by_role()
    panel, nailer = rough["column panel"], rough["column nailer"]
    assert panel.length.rough == panel.length.finished
    assert panel.width.rough == panel.width.finished
    assert nailer.length.scribe == 0
    assert nailer.width.trim == 0


def test_a_wide_side_is_glued_up_longer_and_wider():
    """13 1/4 in. of two strips: 1/2 in. more length and 1/4 in. more width, apart from trim and scribe."""
    side = _by_role("column.projection=14")["column outer return"]
    assert (side.strips, side.length.glue_up, side.width.glue_up) == (2, 0.5, 0.25)
    assert side.strip_width == pytest.approx((13.25 + 0.5 + 0.25) / 2 + 0.25)


def test_boards_that_lie_edge_to_edge_are_one_glue_up():
    surround = plan_surround(with_texts(default_job(), [("column.projection", "14")]))
    parts = list_glue_ups(surround.boards)
    for i, board in enumerate(surround.boards):
        assert parts[i] == (2 if board.role in ("shelf top", "shelf underside") else 1), board.role


def test_a_board_that_scribe_stock_makes_wider_than_is_sold_says_by_how_much():
    """A shelf of 11 1/4 in. boards: 1/2 in. to scribe and 1/4 in. of trim are too much."""
    surround = plan_surround(with_texts(read_demo("brick"), [("shelf.overhang_front", "3 1/2")]))
    kinds = list_kinds(surround.boards)
    rough = plan_rough(surround)
    tops = [rough[kind.mark] for kind in kinds if surround.boards[kind.pieces[0]].role == "shelf top"]
    assert [top.too_wide for top in tops] == [0.75]


@pytest.mark.parametrize("name", list_demos())
def test_every_board_of_a_shipped_job_comes_out_of_boards_as_they_are_sold(name):
    surround = plan_surround(read_demo(name))
    rough = plan_rough(surround)
    assert not [mark for mark, size in rough.items() if size.too_wide]


@pytest.mark.parametrize(
    ("setting", "role", "size", "rough"),
    [
        ("allow.scribe=1", "column stile", "length", 54),
        ("allow.trim_end=1", "column stile", "length", 54.5),
        ("allow.trim_edge=0", "column stile", "width", 1.75),
        ("allow.glue_length=2", "column outer return", "length", 53.5),
    ],
)
def test_every_allowance_has_its_say(setting, role, size, rough):
    assert getattr(_by_role(setting)[role], size).rough == rough


@given(jobs())
def test_a_rough_size_is_the_finished_size_and_its_allowances(job):
    surround = plan_of(job)
    kinds = list_kinds(surround.boards)
    allow = job.shop.allow
    planned = plan_rough(surround)
    for kind in kinds:
        board, rough = surround.boards[kind.pieces[0]], planned[kind.mark]
        for stretch in (rough.length, rough.width):
            assert stretch.rough == pytest.approx(
                stretch.finished + stretch.scribe + stretch.trim + stretch.glue_up
            )
            gap = max(gap_left(surround.layout, surround.boards[i]) for i in kind.pieces)
            left = [stretch.scribe - extra for extra in {0.0, gap}]
            assert any(scribe == pytest.approx(n * allow.scribe) for scribe in left for n in range(3))
        sizes = [(like.length, like.width) for like in (surround.boards[i] for i in kind.pieces)]
        for stretch, along in zip((rough.length, rough.width), zip(*sizes, strict=True), strict=True):
            assert stretch.finished == max(along)
            assert max(along) - min(along) < 3 / GRID
        if board.stock.kind is StockKind.PANEL:
            assert rough.length.trim == rough.width.trim == 0


@given(jobs())
def test_short_points_are_never_longer_than_long_points(job):
    for board in plan_of(job).boards:
        assert 0 < shortest_line(board) <= longest_line(board) + 1e-9
        assert longest_line(board) <= board.length + 1e-9


def test_points_of_mitred_pieces_by_hand():
    """The default shelf's front band is 83 in. between long points and 3/4 in. thick."""
    boards = {board.role: board for board in plan_surround(default_job()).boards}
    front, end = boards["edge band front"], boards["edge band end"]
    assert (longest_line(front), shortest_line(front)) == (36 + 2 * (13 + 7.5 + 3), 83 - 1.5)
    assert (longest_line(end), shortest_line(end)) == (7, 6.25)


def test_feet_and_backs_touch_and_fronts_do_not():
    surround = plan_surround(default_job())
    touched = list_touched(surround)
    by_role = {board.role: touched[i] for i, board in enumerate(surround.boards)}
    assert by_role["column stile"] == (1, 0)
    assert by_role["column outer return"] == (1, 1)
    assert by_role["soffit"] == (0, 1)
    assert by_role["edge band front"] == (0, 0)
    assert by_role["edge band end"] == (1, 0)
    assert by_role["plinth front"] == (0, 1)


LEANING = "plumb.left=0.75", "plinth_cap.on=yes", "capital.on=yes"


def _scribed(job: Job) -> dict[tuple[str, str], list[tuple[int, int]]]:
    """How many ends and edges of each board are fitted on site, by sub-assembly and role."""
    surround = plan_surround(job)
    touched, scribed = list_touched(surround), defaultdict(list)
    for i, board in enumerate(surround.boards):
        if board.role not in PACKING:
            scribed[board.assembly, board.role].append(touched[i])
    return {key: sorted(sides) for key, sides in scribed.items()}


PAST_THE_FACING = "plumb.left=-0.75", "plumb.right=0.5", "facing.width=94", "facing.height=72"
"""The shelf's ends are 48 3/4 in. off the centre line and run on past the brick."""


@pytest.mark.parametrize(
    "settings",
    [
        (*LEANING, "column.taper=1"),
        (*LEANING, "plumb.right=-0.5"),
        (*LEANING, "level.left=40.25"),
        PAST_THE_FACING,
    ],
)
def test_masonry_out_of_plumb_is_scribed_to_where_plumb_masonry_is(settings):
    """What backs one board, or lies under it, stands against none that butts it or lies beside it."""
    job = with_texts(read_demo("brick"), [tuple(setting.split("=")) for setting in settings])
    plumb = with_texts(job, [("plumb.left", "0"), ("plumb.right", "0")])
    assert _scribed(job) == _scribed(plumb)


def test_boards_that_are_mitred_together_before_leaning_masonry_are_sawn_to_one_width():
    """Plinth of 9 in., 1/2 in. to scribe at the hearth; a capital of 2 in. stock has none beside it."""
    surround = plan_surround(
        with_texts(read_demo("brick"), [tuple(s.split("=")) for s in (*LEANING, "column.taper=1")])
    )
    rough, roles = plan_rough(surround), {"plinth return", "plinth front", "capital return", "soffit"}
    found = defaultdict(set)
    for kind in surround.kinds:
        found[surround.boards[kind.pieces[0]].role].add(rough[kind.mark])
    assert {role: {size.width.to_saw for size in found[role]} for role in roles - {"soffit"}} == {
        "plinth return": {9.5},
        "plinth front": {9.5},
        "capital return": {2},
    }
    assert {size.length.scribe for size in found["soffit"]} == {0}
