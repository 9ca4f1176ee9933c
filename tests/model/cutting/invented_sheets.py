"""Invented tasks of sheets, drawn from a seed."""

from __future__ import annotations

from random import Random

from model.cutting.task import UNITS, Stock, Task, Wanted

EIGHTH = UNITS // 8
SIZES = ((48, 24, 1.22), (48, 48, 1.08), (96, 48, 1.0))
"""Inches along and across, and how dear an area of it is."""


def draw_panels(seed: int, count: int) -> Task:
    """Panels of 10 to 80 by 4 to 34 in., two in five may turn, a saw cut of 1/8 in., three sheets."""
    random = Random(seed)
    wanted = tuple(
        Wanted(
            f"p{n}",
            random.randrange(10 * 8, 80 * 8 + 1) * EIGHTH,
            random.randrange(4 * 8, 34 * 8 + 1) * EIGHTH,
            may_turn=random.random() < 0.4,
        )
        for n in range(count)
    )
    stock = tuple(
        Stock(f"{a}x{b}", a * UNITS, b * UNITS, round(a * b * 2 * dear * random.uniform(0.97, 1.03)))
        for a, b, dear in SIZES
    )
    return Task(wanted, stock, EIGHTH, 6 * UNITS)


def draw_odd(seed: int, most: int = 9) -> Task:
    """Anything: few small sizes that recur, trims, offcuts at no price, short supply, pieces too large."""
    random = Random(seed)
    side = random.choice((6, 10, 20, 60))
    sides = [random.randint(1, side) for _ in range(6)]
    wanted = tuple(
        Wanted(
            f"p{n}",
            random.choice(sides),
            random.choice(sides),
            random.choice((1, 1, 1, 2, 3)),
            may_turn=random.random() < 0.5,
        )
        for n in range(random.randint(1, most))
    )
    stock = tuple(_draw_stock(random, n, side) for n in range(random.randint(1, 4)))
    return Task(wanted, stock, random.choice((0, 1, 1, 2)), random.choice((0, side // 2)))


def _draw_stock(random: Random, n: int, side: int) -> Stock:
    length, width = random.randint(side // 2, 2 * side), random.randint(side // 2, 2 * side)
    trim = random.random() < 0.3
    offcut = random.random() < 0.25
    return Stock(
        f"s{n}",
        length,
        width,
        0 if offcut else random.randint(1, 3) * length * width // 2 + 1,
        random.randint(0, 3) if offcut or random.random() < 0.2 else None,
        trim_ends=random.randint(0, 2) if trim else 0,
        trim_edges=random.randint(0, 2) if trim else 0,
    )
