"""Pieces and sheets made ready: a saw cut in every size, like pieces together, what is too large named."""

from __future__ import annotations

from model.cutting.sheet_problem import holds, make_sheet_problem, refuse_too_large, ways_of
from model.cutting.task import Stock, Task, Wanted

SHEET = Stock("s", 100, 60, 5, trim_ends=4, trim_edges=2)


def test_a_piece_and_a_trimmed_sheet_take_one_cut_more_each_way():
    problem = make_sheet_problem((Wanted("a", 40, 20),), (SHEET,), 3)
    assert problem.items[0].ways == ((43, 23),)
    assert problem.rooms == ((95, 59),)


def test_like_pieces_of_several_keys_are_one_item_and_the_largest_is_first():
    wanted = (Wanted("a", 10, 10), Wanted("b", 40, 20, 2), Wanted("c", 40, 20))
    problem = make_sheet_problem(wanted, (SHEET,), 0)
    assert [item.keys for item in problem.items] == [("b", "b", "c"), ("a",)]
    assert problem.demand == (3, 1)


def test_a_piece_that_may_turn_is_like_the_same_one_turned():
    wanted = (Wanted("a", 40, 20, may_turn=True), Wanted("b", 20, 40, may_turn=True), Wanted("c", 40, 20))
    problem = make_sheet_problem(wanted, (SHEET,), 0)
    assert sorted(item.keys for item in problem.items) == [("a", "b"), ("c",)]


def test_a_way_to_lie_that_no_sheet_holds_is_left_out():
    problem = make_sheet_problem((Wanted("a", 90, 20, may_turn=True),), (SHEET,), 0)
    assert problem.items[0].ways == ((90, 20),)


def test_a_square_lies_one_way_only():
    assert ways_of(Wanted("a", 9, 9, may_turn=True)) == ((9, 9),)


def test_a_sheet_of_which_there_are_none_holds_nothing():
    assert holds(SHEET, Wanted("a", 92, 56))
    assert not holds(SHEET, Wanted("a", 93, 56))
    assert not holds(Stock("s", 100, 60, 5, 0), Wanted("a", 1, 1))


def test_what_is_too_large_is_told_which_side_is_and_what_would_hold_it():
    wanted = (Wanted("fits", 93, 10), Wanted("wide", 10, 57), Wanted("both", 150, 50))
    refused = refuse_too_large(Task(wanted, (SHEET, Stock("strip", 200, 10, 5)), 0))
    assert [(each.key, each.why.split(",")[0], each.wants_length) for each in refused] == [
        ("wide", "wider than any sheet that is listed", 10),
        ("both", "no sheet that is listed is both long and wide enough", 150),
    ]
