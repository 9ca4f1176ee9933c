"""Boards worth most, against every filling there is."""

from __future__ import annotations

from itertools import product
from random import Random

import numpy as np

from model.cutting.enumeration import list_patterns
from model.cutting.items import gather_items
from model.cutting.knapsack import Knapsack
from model.cutting.lanes import STATES, state_of
from model.cutting.mitre import count_joints
from model.cutting.problem import make_problem
from tests.model.cutting.invented import mitred_task, ripped_task, small_task


def test_the_board_worth_most_is_the_best_of_all_boards():
    """It may make more than is wanted where it has several lanes; filled again it does not."""
    checked = 0
    for seed in range(60):
        for task in (small_task(seed), ripped_task(seed), mitred_task(seed)):
            items = gather_items(task.wanted, task.kerf)
            problem = make_problem(items, task.stock, task.kerf)
            patterns = list_patterns(problem)
            if patterns is None:
                continue
            rng = Random(seed)
            worth = np.array([rng.randint(0, 50) for _ in items], dtype=np.int64)
            knapsack = Knapsack(problem, problem.demand)
            for s, best in enumerate(knapsack.price(worth).tolist()):
                most = max((_worth(p.counts(), worth) for p in patterns if p.sold == s), default=0)
                pattern = knapsack.pattern(s)
                assert _worth(pattern.counts(), worth) == best >= most, (task, s)
                if not knapsack.exceeds(pattern):
                    assert best == most, (task, s)
                    checked += 1
                again = knapsack.refill(pattern)
                assert not knapsack.exceeds(again)
                assert _worth(again.counts(), worth) <= most
    assert checked > 300


def _worth(counts: dict[int, int], worth: np.ndarray) -> int:
    return sum(int(worth[item]) * count for item, count in counts.items())


def test_what_pieces_more_would_share_depends_on_the_state_alone():
    for sorts in product(range(5), range(4), range(4)):
        stand_in = STATES[state_of(sorts)]
        for more in product(range(3), repeat=3):
            gain = count_joints(*_sum(sorts, more)) - count_joints(*sorts)
            assert gain == count_joints(*_sum(stand_in, more)) - count_joints(*stand_in), (sorts, more)


def _sum(one: tuple[int, ...], other: tuple[int, ...]) -> tuple[int, ...]:
    return tuple(a + b for a, b in zip(one, other, strict=True))
