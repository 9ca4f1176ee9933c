"""The most that one sheet holds where no piece has an end: exact, and never less than there is."""

from __future__ import annotations

from functools import lru_cache
from random import Random

from model.cutting.guillotine import Guillotine
from model.cutting.sheet_problem import make_sheet_problem
from model.cutting.task import Stock, Wanted

COPIES = 40


def _draw(seed: int):
    """Some kinds of pieces, two sheets up to 20 by 20, and a worth for each kind."""
    random = Random(seed)
    wanted = tuple(
        Wanted(f"p{n}", random.randint(2, 9), random.randint(2, 9), COPIES, may_turn=random.random() < 0.5)
        for n in range(4)
    )
    stock = tuple(Stock(f"s{n}", random.randint(9, 20), random.randint(9, 20), 1) for n in range(2))
    problem = make_sheet_problem(wanted, stock, 0)
    return problem, [random.randint(1, 90) for _ in problem.items]


def _most(problem, worth, room) -> int:
    """By every first cut at every whole number."""

    @lru_cache(None)
    def most(x: int, y: int) -> int:
        best = max(
            (
                w
                for item, w in zip(problem.items, worth, strict=True)
                for a, b in item.ways
                if a <= x and b <= y
            ),
            default=0,
        )
        for at in range(1, x // 2 + 1):
            best = max(best, most(at, y) + most(x - at, y))
        for at in range(1, y // 2 + 1):
            best = max(best, most(x, at) + most(x, y - at))
        return best

    return most(*room)


def test_the_most_is_what_trying_every_cut_finds():
    for seed in range(25):
        problem, worth = _draw(seed)
        best, counts = Guillotine(problem.items, problem.rooms).price(worth)
        assert best == [_most(problem, worth, room) for room in problem.rooms], seed
        for most, count in zip(best, counts, strict=True):
            assert sum(w * n for w, n in zip(worth, count, strict=True)) == most


def test_coarser_sizes_never_find_less():
    coarser = 0
    for seed in range(25):
        problem, worth = _draw(seed)
        exact, rough = (Guillotine(problem.items, problem.rooms, most) for most in (10_000, 60))
        coarser += rough.grain > exact.grain == 1
        pairs = zip(exact.price(worth)[0], rough.price(worth)[0], strict=True)
        assert all(one <= two for one, two in pairs), seed
    assert coarser > 10
