"""Marks: unique on every board, alike for pieces that can be exchanged, and only for those."""

from __future__ import annotations

import re
from dataclasses import replace
from itertools import permutations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from model.board import Board, End, Stock, StockKind, block
from model.build.run import Profile, run_section, under
from model.job import default_job
from model.moulding.library import SECTIONS
from model.surround import plan_surround
from model.takeoff.marks import list_kinds, mark_boards, shape_of
from tests.planned import plan_of
from tests.strategies import alike, jobs

POPLAR = Stock(StockKind.BOARD, 0.75, "poplar")
MOULD = Stock(StockKind.MOULDING, 1.5, "poplar")


def _stile(x: float, width: float = 2.0, role: str = "column stile", assembly: str = "left column") -> Board:
    return block(role, assembly, POPLAR, "y", (x, x + width), (0, 50), (3, 3.75))


def _rebated(axis: str, left: bool, right: bool) -> Board:
    """A two-inch member whose back corners are rebated 3/8 by 1/4."""
    back_left = [(0.0, 0.25), (0.375, 0.25), (0.375, 0.0)] if left else [(0.0, 0.0)]
    back_right = [(1.625, 0.0), (1.625, 0.25), (2.0, 0.25)] if right else [(2.0, 0.0)]
    section = (*back_left, *back_right, (2.0, 0.75), (0.0, 0.75))
    return Board("column stile", "left column", POPLAR, axis, section, End(0.0), End(50.0))


def _mould_run(path: list[tuple[float, float]]) -> tuple[Board, ...]:
    profile = under(SECTIONS["cove_and_fillets"].section.sized(1.5), 0.0)
    return run_section(["bed mould"] * (len(path) - 1), "bed mould", MOULD, path, profile)


def test_the_default_surround_is_marked_by_sub_assembly_kind_and_piece():
    surround = plan_surround(default_job())
    marks = dict(zip(surround.marks, surround.boards, strict=True))
    assert marks["C1a"].role == "column stile"
    assert marks["C1a"].assembly == "left column"
    assert marks["C1d"].assembly == "right column"
    assert marks["P2b"].role == "plinth front"
    assert marks["F2"].role == "frieze bottom rail"
    assert marks["S1"].role == "shelf top"
    assert marks["M4"].axis == "x"
    assert marks["N1d"].role == "column nailer"


@given(jobs())
def test_every_board_has_a_mark_of_its_own(job):
    surround = plan_of(job)
    assert len(set(surround.marks)) == len(surround.boards)
    assert all(re.fullmatch(r"[A-Z][1-9][0-9]*[a-z]*", mark) for mark in surround.marks)


@given(jobs())
def test_kinds_hold_every_board_once_and_are_numbered_without_a_gap(job):
    boards = plan_of(job).boards
    kinds = list_kinds(boards)
    assert sorted(i for kind in kinds for i in kind.pieces) == list(range(len(boards)))
    numbers: dict[str, list[int]] = {}
    for kind in kinds:
        numbers.setdefault(kind.mark[0], []).append(int(kind.mark[1:]))
    assert all(run == list(range(1, len(run) + 1)) for run in numbers.values())


@given(jobs())
def test_pieces_of_a_kind_agree_in_role_stock_and_size(job):
    boards = plan_of(job).boards
    for kind in list_kinds(boards):
        first, *others = (boards[i] for i in kind.pieces)
        for other in others:
            assert (other.role, other.stock) == (first.role, first.stock)
            sizes = [[*sorted((b.width, b.thickness)), b.length] for b in (first, other)]
            assert sizes[0] == pytest.approx(sizes[1], abs=1e-3)
            whole = [replace(b, bores=()).volume for b in (first, other)]
            assert whole[0] == pytest.approx(whole[1], rel=1e-2, abs=1e-2)


@given(alike())
def test_a_column_and_its_mirror_twin_need_no_pieces_of_their_own_unless_handed(job):
    boards = plan_of(job).boards
    for kind in list_kinds(boards):
        first = boards[kind.pieces[0]]
        handed = first.lean and shape_of(first) != shape_of(first, mirrored=True)
        if first.worked or handed:
            continue
        if kind.mark[0] == "C":
            assert {boards[i].assembly for i in kind.pieces} == {"left column", "right column"}
        elif first.axis == "z":
            assert shape_of(first) == shape_of(first, mirrored=True)


def test_a_single_piece_has_no_piece_letter_and_several_do():
    marks = mark_boards([_stile(0), _stile(9), _stile(20, width=3)])
    assert marks == ("C1a", "C1b", "C2")


def test_more_pieces_than_letters_go_on_with_two():
    marks = mark_boards([_stile(i) for i in range(30)])
    assert marks[25:28] == ("C1z", "C1aa", "C1ab")
    assert len(set(marks)) == 30


def test_role_and_stock_part_pieces_of_one_shape():
    sides = (
        _stile(0),
        _stile(3, role="column outer return"),
        replace(_stile(6), stock=replace(POPLAR, wood="cherry")),
    )
    assert mark_boards(sides) == ("C1", "C2", "C3")


def test_both_columns_share_a_letter_and_plinth_boards_have_their_own():
    boards = [_stile(0), _stile(9, assembly="right column"), _stile(20, role="plinth front")]
    assert mark_boards(boards) == ("C1a", "C1b", "P1")


def test_sub_assemblies_that_begin_alike_get_different_letters():
    names = ("shelf", "soffit box", "side shelf", "casing", "column", "corbel", "crown", "cc", "cc c")
    marks = mark_boards([_stile(i, assembly=name) for i, name in enumerate(names)])
    letters = {name.split()[-1]: mark[0] for name, mark in zip(names, marks, strict=True)}
    assert len(set(letters.values())) == len(letters)
    assert letters["shelf"] == "S"


def test_a_piece_is_the_same_wherever_and_whichever_way_it_lies():
    spans = {"x": (0, 30), "y": (0, 2), "z": (0, 0.75)}
    shapes = set()
    for order in permutations("xyz"):
        x, y, z = (spans[axis] for axis in order)
        grain = "xyz"[order.index("x")]
        shapes.add(shape_of(block("a", "b", POPLAR, grain, x, y, z).moved(3.3, -7.1, 0.01)))
    assert len(shapes) == 1


def test_grain_the_other_way_makes_another_piece():
    along = block("a", "b", POPLAR, "x", (0, 30), (0, 2), (0, 0.75))
    across = block("a", "b", POPLAR, "y", (0, 30), (0, 2), (0, 0.75))
    assert shape_of(along) != shape_of(across)


def test_a_rebated_stile_is_the_same_turned_end_for_end():
    assert shape_of(_rebated("y", True, False)) == shape_of(_rebated("y", False, True))
    assert shape_of(_rebated("y", True, False)) == shape_of(_rebated("x", False, True))
    assert shape_of(_rebated("y", True, True)) != shape_of(_rebated("y", True, False))


def test_mirror_twins_of_rectangular_stock_are_the_same_turned_over():
    path = [(9, 0), (9, 5), (-9, 5), (-9, 0)]
    profile = Profile([(0, 0), (0.75, 0), (0.75, 2), (0, 2)])
    right, front, left = run_section(["end", "front", "end"], "shelf", POPLAR, path, profile)
    assert shape_of(right) == shape_of(left)
    assert shape_of(right) == shape_of(right.mirrored("shelf"))
    assert shape_of(front) != shape_of(right)


def test_moulding_returns_are_handed():
    right, _, left = _mould_run([(9, 0), (9, 5), (-9, 5), (-9, 0)])
    assert shape_of(right) != shape_of(left)
    assert shape_of(right, mirrored=True) == shape_of(left)
    assert shape_of(right.mirrored("bed mould")) == shape_of(left)


def test_a_moulding_mitred_alike_at_both_ends_is_its_own_mirror_twin():
    _, front, _ = _mould_run([(9, 0), (9, 5), (-9, 5), (-9, 0)])
    assert shape_of(front) == shape_of(front, mirrored=True)


def test_mitres_leaning_the_same_way_and_opposite_ways_are_different_pieces():
    section = ((0.0, 0.0), (0.75, 0.0), (0.75, 2.0), (0.0, 2.0))
    trapezium = Board("a", "b", POPLAR, "z", section, End(0, -1.0), End(20, 1.0))
    parallel = Board("a", "b", POPLAR, "z", section, End(0, 1.0), End(20, 1.0))
    assert trapezium.volume == pytest.approx(parallel.volume + 0.75 * 1.5)
    assert shape_of(trapezium) != shape_of(parallel)


thirds = st.floats(-50, 50)


@given(thirds, thirds, thirds, st.floats(0.5, 3), st.floats(6, 60), st.booleans())
def test_the_twin_of_any_mitred_piece_is_marked_the_same_wherever_it_stands(dx, dy, dz, width, length, both):
    section = ((0.0, 0.0), (width / 3, 0.0), (width / 3, width), (0.0, width))
    piece = Board("a", "b", POPLAR, "z", section, End(0, -1.0 if both else 0.0), End(length, 1.0))
    assert shape_of(piece) == shape_of(piece.mirrored("b"))
    moved, still = piece.moved(dx, dy, dz), piece
    assert _nearly_equal(shape_of(moved), shape_of(still))


def _nearly_equal(one, other) -> bool:
    """Moving far in floats may round a corner to the next step; no more than that."""
    return len(one) == len(other) and all(
        abs(a - b) <= 1
        for p, q in zip(sorted(one), sorted(other), strict=True)
        for a, b in zip(p, q, strict=True)
    )
