"""Sets of pieces that one sheet holds: all of them, no others, and the smallest boxes of each."""

from __future__ import annotations

from itertools import combinations

import pytest

from model.cutting.sheet_problem import fits, make_sheet_problem
from model.cutting.sheet_sets import SetFinder, TooMuch, list_partings
from model.cutting.task import Stock
from tests.model.cutting.invented_sheets import draw_panels
from tests.model.cutting.panels import draw_few, list_pieces, make_problem
from tests.model.cutting.sheet_oracle import make_holder

MUCH = 10_000_000


def _find(problem, work=MUCH, should_stop=lambda: False):
    finder = SetFinder(problem, should_stop, work)
    finder.run()
    return finder


def _key(task, problem, group):
    """The items of pieces that are numbered as the oracle numbers them."""
    names = [each.key for each in task.wanted for _ in range(each.count)]
    items = {key: i for i, item in enumerate(problem.items) for key in item.keys}
    return tuple(sorted(items[names[n]] for n in group))


def test_the_sets_of_each_sheet_are_those_that_trying_each_cut_finds():
    tried = 0
    for seed in range(300, 380):
        task = draw_few(seed, 5)
        if task is None:
            continue
        problem = make_sheet_problem(task.wanted, task.stock, task.kerf)
        finder, holds = _find(problem), make_holder(task)
        number = len(list_pieces(problem))
        for size in range(1, number + 1):
            for group in combinations(range(number), size):
                pieces = _key(task, problem, group)
                for stock, room in zip(task.stock, problem.rooms, strict=True):
                    real = stock.length - 2 * stock.trim_ends, stock.width - 2 * stock.trim_edges
                    found = any(fits(box, room) for box in finder.list_boxes(pieces))
                    assert found == holds(group, *real), (seed, pieces)
        tried += 1
    assert tried > 20


def test_no_box_of_a_set_lies_within_another():
    task = draw_panels(1, 10)
    problem = make_sheet_problem(task.wanted, task.stock, task.kerf)
    finder = _find(problem)
    for level in finder.levels:
        for row in level.rows.tolist():
            boxes = finder.list_boxes(row)
            assert not any(one != two and fits(one, two) for one in boxes for two in boxes)


def test_a_set_is_maximal_where_no_piece_can_be_added():
    problem = make_problem((50, 60), (50, 60), (50, 20), stock=(Stock("s", 100, 60, 9),))
    levels = _find(problem).levels
    largest = {
        tuple(row)
        for level in levels
        for row, is_most in zip(level.rows, level.maximal, strict=True)
        if is_most
    }
    assert largest == {(0, 0), (0, 1)}


def test_a_pinwheel_is_no_set():
    problem = make_problem((2, 1), (2, 1), (1, 2), (1, 2), stock=(Stock("s", 3, 3, 9),))
    assert not _find(problem).list_boxes((0, 0, 1, 1))


def test_work_ends_where_it_is_allowed_to_and_when_told_to_stop():
    task = draw_panels(5, 30)
    problem = make_sheet_problem(task.wanted, task.stock, task.kerf)
    with pytest.raises(TooMuch):
        _find(problem, 100_000)
    with pytest.raises(TooMuch):
        _find(problem, should_stop=lambda: True)


def test_places_are_parted_in_two_in_every_way_once():
    for size in range(2, 7):
        ways = {frozenset((tuple(one), tuple(two))) for one, two in list_partings(size)}
        assert len(ways) == len(list(list_partings(size))) == 2 ** (size - 1) - 1
