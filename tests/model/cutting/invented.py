"""Seeded tasks for boards, invented: no wood, price or job of anyone's."""

from __future__ import annotations

from dataclasses import replace
from random import Random

from model.cutting.task import UNITS, Stock, Task, Wanted

FOOT = 12 * UNITS


def small_task(seed: int) -> Task:
    """A few pieces of one width out of a few stocks, priced, limited and lying there: for the oracles."""
    rng = Random(f"small {seed}")
    unit = rng.choice((1, 4, 16, 64))
    kerf = rng.choice((0, 1, 2, 8))
    longest = rng.randint(10, 60) * unit
    stock = tuple(_stock(rng, f"s{s}", longest, unit) for s in range(rng.randint(1, 5)))
    room = max(each.length - 2 * each.trim_ends for each in stock if each.supply != 0)
    wanted = tuple(
        Wanted(f"p{p}", max(1, rng.randint(room // 8, room)), 64, rng.choice((1, 1, 1, 2, 3)))
        for p in range(rng.randint(1, 5))
    )
    return Task(wanted, stock, kerf, rng.choice((0, 8 * unit)))


def _stock(rng: Random, key: str, longest: int, unit: int) -> Stock:
    length = max(longest // 2, longest - rng.randint(0, longest // 2) // unit * unit)
    first = key == "s0"
    price = rng.choice((0, rng.randint(1, 30), 7, 7, length, length + rng.randint(0, 9)))
    supply = None if first else rng.choice((None, 0, 1, 1, 2, 3))
    return Stock(key, length, 64, max(price, first), supply, rng.choice((0, 0, 2)))


def ripped_task(seed: int) -> Task:
    """Pieces of several widths that may have to be ripped, with edges to be trimmed now and then."""
    rng = Random(f"ripped {seed}")
    kerf = rng.choice((0, 1, 2))
    widths = rng.sample(range(3, 24), rng.randint(2, 3))
    stock = tuple(
        Stock(
            f"s{s}",
            rng.randint(20, 60),
            rng.choice((*widths, rng.randint(10, 50), 24 + 4)),
            rng.randint(0 if s else 1, 40),
            None if not s else rng.choice((None, None, 1, 2)),
            rng.choice((0, 1)),
            rng.choice((0, 0, 1)),
        )
        for s in range(rng.randint(1, 4))
    )
    wanted = tuple(
        Wanted(f"p{p}", rng.randint(6, 40), rng.choice(widths), rng.choice((1, 1, 2)))
        for p in range(rng.randint(2, 4))
    )
    return Task(wanted, stock, kerf)


def mitred_task(seed: int, one_mitre: bool = True) -> Task:
    """Flat pieces with mitred ends, some square or narrower among them."""
    rng = Random(f"mitred {seed}")
    width = rng.choice((8, 16, 24))
    ends = (0, width, width) if one_mitre else (0, width, width // 2, 2 * width)
    wanted = tuple(
        Wanted(
            f"p{p}",
            rng.randint(20, 60),
            rng.choice((width, width, width, width // 2)),
            rng.choice((1, 1, 2)),
            rng.choice(ends),
            rng.choice(ends),
        )
        for p in range(rng.randint(1, 3))
    )
    stock = (
        Stock("s0", rng.randint(60, 120), width, rng.randint(10, 20)),
        Stock(
            "s1",
            rng.randint(60, 160),
            rng.choice((width, 2 * width + 4)),
            rng.randint(10, 30),
            rng.choice((None, 1)),
        ),
    )
    return Task(wanted, stock, rng.choice((0, 1, 4)))


def batched_task(seed: int) -> Task:
    """A small task some pieces of which must come out of one board."""
    rng = Random(f"batched {seed}")
    task = small_task(seed)
    wanted = tuple(
        replace(p, length=max(1, p.length // 2), batch=rng.choice(("", "", "a", "b"))) for p in task.wanted
    )
    return replace(task, wanted=wanted)


def odd_task(seed: int) -> Task:
    """Anything at all: no pieces, no stock, none of a piece, nothing free, too long, too wide, too little."""
    rng = Random(f"odd {seed}")
    task = rng.choice((small_task, ripped_task, mitred_task, batched_task))(seed)
    wanted, stock = list(task.wanted), list(task.stock)
    for _ in range(rng.randint(1, 3)):
        match rng.randint(0, 7):
            case 0:
                stock = [replace(each, supply=rng.randint(0, 2)) for each in stock]
            case 1:
                stock = stock[: rng.randint(0, 1)]
            case 2:
                wanted = wanted[: rng.randint(0, 1)]
            case 3:
                wanted.append(Wanted("long", 100 * FOOT, 4, rng.randint(1, 3), batch=rng.choice(("", "a"))))
            case 4:
                wanted.append(Wanted("wide", 10, 100 * UNITS))
            case 5:
                stock = [replace(each, price=0) for each in stock]
            case 6:
                wanted = [replace(each, count=rng.randint(0, 3)) for each in wanted]
            case 7:
                stock = [replace(each, trim_ends=each.length // rng.randint(2, 9)) for each in stock]
    unique = {piece.key: piece for piece in wanted}
    return Task(tuple(unique.values()), tuple(stock), task.kerf, rng.choice((0, 10)))


def section(seed: int, pieces: int = 40, offcuts: int = 4) -> Task:
    """One section of ordinary size out of 8 to 16 ft lengths and what lies there."""
    return merged(seed, -(-pieces // 40), pieces, offcuts, 16)


def merged(seed: int, jobs: int, pieces: int, offcuts: int, models: int) -> Task:
    """Part lists drawn from a catalogue of models until there are enough pieces; like lengths are one row."""
    rng = Random(f"merged {seed} {jobs} {models}")
    catalogue = [[_part(rng) for _ in range(rng.randint(10, 14))] for _ in range(models)]
    counts: dict[int, int] = {}
    total = 0
    while total < pieces:
        for length, count in rng.choice(catalogue):
            take = min(count, pieces - total)
            if take:
                counts[length] = counts.get(length, 0) + take
                total += take
    wanted = tuple(Wanted(f"p{n}", length, 224, c) for n, (length, c) in enumerate(sorted(counts.items())))
    return Task(wanted, (*_sold(rng), *_lying(rng, offcuts)), UNITS // 8, 24 * UNITS)


def _part(rng: Random) -> tuple[int, int]:
    """Legs, rails, returns, shelves: 4 to 92 in. in sixteenths, and how many of it."""
    low, high, most = rng.choice(((40, 56, 4), (4, 12, 4), (50, 92, 2), (12, 40, 3)))
    return rng.randint(16 * low, 16 * high) * UNITS // 16, rng.randint(1, most)


def _sold(rng: Random) -> tuple[Stock, ...]:
    """Dearer by the foot the longer, as a yard has it."""
    foot = rng.randint(180, 420)
    return tuple(
        Stock(
            f"{ft} ft",
            ft * FOOT,
            224,
            round(foot * ft * (1 + 0.015 * (ft - 8)) * rng.uniform(0.96, 1.04)),
            None,
            32,
        )
        for ft in (8, 10, 12, 16)
    )


def _lying(rng: Random, number: int) -> tuple[Stock, ...]:
    return tuple(
        Stock(f"offcut {n}", rng.randint(18 * 16, 70 * 16) * UNITS // 16, 224, 0, 1, 32)
        for n in range(number)
    )


WIDTHS = (96, 112, 144, 160, 176, 224, 272, 320, 352, 400, 464, 528, 592, 640)
"""Finished widths of parts of many kinds, in units."""
SOLD_WIDTHS = (96, 160, 224, 352, 464, 592, 720)
"""The usual dressed widths of nominal 1x2 to 1x12."""


def job_section(seed: int, pieces: int = 40) -> Task:
    """Boards of one thickness of a whole job: a dozen widths out of seven sold ones in six lengths."""
    rng = Random(f"job {seed}")
    widths = rng.sample(WIDTHS, rng.randint(10, 13))
    wanted = []
    while sum(piece.count for piece in wanted) < pieces:
        length, count = _part(rng)
        wanted.append(Wanted(f"p{len(wanted)}", length, rng.choice(widths), count))
    foot = rng.randint(60, 110)
    stock = [
        Stock(
            f"{width} x {ft} ft",
            ft * FOOT,
            width,
            round(foot * ft * width / 96 * (1 + 0.01 * (ft - 8)) * rng.uniform(0.97, 1.03)),
            None,
            32,
        )
        for width in SOLD_WIDTHS
        for ft in (6, 8, 10, 12, 14, 16)
    ]
    return Task(tuple(wanted), tuple(stock), UNITS // 8, 24 * UNITS)


def wide_task(seed: int) -> Task:
    """More pieces than `ripped_task` has, several lanes to a board, and hard to fill."""
    rng = Random(f"wide {seed}")
    widths = rng.sample(range(3, 14), 3)
    stock = tuple(
        Stock(
            f"s{s}",
            rng.randint(30, 60),
            rng.choice((*widths, rng.randint(14, 30), 28, 30)),
            rng.randint(10, 40) * rng.choice((1, 1, 5)),
            rng.choice((None, None, None, 2)) if s else None,
            rng.choice((0, 1)),
            rng.choice((0, 0, 1)),
        )
        for s in range(rng.randint(3, 5))
    )
    wanted = tuple(
        Wanted(f"p{p}", rng.randint(8, 32), rng.choice(widths), rng.choice((1, 2, 3)))
        for p in range(rng.randint(4, 5))
    )
    return Task(wanted, stock, rng.choice((0, 1, 2)))
