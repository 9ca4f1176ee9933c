"""A few boards cut anew: never dearer, never short of a piece or of stock."""

from __future__ import annotations

from collections import Counter

import numpy as np

from model.cutting.first_fit import FirstFit, cost_of
from model.cutting.items import gather_items
from model.cutting.problem import make_problem
from model.cutting.rework import rework
from tests.model.cutting.invented import job_section, section


def test_boards_cut_anew_cost_less_and_make_the_same():
    better = 0
    for task in (section(0), section(1), job_section(0)):
        items = gather_items(task.wanted, task.kerf)
        problem = make_problem(items, task.stock, task.kerf)
        boards = FirstFit(problem).best(problem.demand, [sold.supply for sold in problem.sold])
        assert boards is not None
        random = np.random.default_rng(3)
        for _ in range(4):
            again = rework(problem, boards, random, lambda: False, ())
            if again is None:
                continue
            assert cost_of(problem, again) < cost_of(problem, boards)
            made = Counter[int]()
            for board in again:
                made += board.counts()
            assert tuple(made[i] for i in range(len(items))) == problem.demand
            for s, sold in enumerate(problem.sold):
                assert sold.supply is None or sum(b.sold == s for b in again) <= sold.supply
            boards, better = again, better + 1
    assert better >= 3
