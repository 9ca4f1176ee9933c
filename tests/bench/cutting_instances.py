"""Published cutting instances out of a folder: ``python -m tests.bench.cutting_instances FOLDER [SECONDS]``.

Any folder below it that holds ``known_optima.csv`` is run. One-dimensional files have the number of lines,
the capacity and a length to a line, a count after it or not; two-dimensional ones ``sheet`` and ``item``
lines. The files belong to their authors and are not kept here.
"""

from __future__ import annotations

import csv
import sys
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path
from time import perf_counter

from model.cutting.boards import plan_boards
from model.cutting.task import BoardPlan, Effort, SheetPlan, Stock, Task, Wanted

SECONDS = 20.0
"""For each instance, unless a second argument says otherwise."""
LIST = "known_optima.csv"


@dataclass(frozen=True)
class Instance:
    """A file, the task it holds, who plans it, and the cost that is known to be least."""

    name: str
    task: Task
    plan: Callable[[Task, Effort], BoardPlan | SheetPlan]
    known: int


def main(folder: Path, seconds: float = SECONDS) -> int:
    """Run all instances; 0 if each known optimum was reached and proven."""
    lists = sorted(folder.rglob(LIST))
    if not lists:
        print(f"No {LIST} in {folder} or below it: nothing is measured.")
        return 2
    print(f"{'instance':34}{'known':>10}{'reached':>10}{'bound':>10}{'proven':>8}{'seconds':>9}")
    missed = []
    for each in (instance for path in lists for instance in _list_instances(path)):
        start = perf_counter()
        proof = each.plan(each.task, Effort(lambda start=start: perf_counter() - start > seconds)).proof
        took = perf_counter() - start
        proven = "yes" if proof.is_proven else "no"
        numbers = f"{each.known:10}{proof.cost:10}{proof.bound:10}{proven:>8}{took:9.2f}"
        print(f"{each.name:34}{numbers}", flush=True)
        if proof.cost > each.known or not proof.is_proven:
            missed.append(
                f"{each.name}: reached {proof.cost} of {each.known}, gap {proof.cost - proof.bound}"
            )
        if proof.bound > each.known:
            missed.append(f"{each.name}: BOUND {proof.bound} IS ABOVE WHAT IS KNOWN, {each.known}")
    print(f"\nNot reached or not proven: {len(missed)}")
    print("\n".join(missed))
    return 1 if missed else 0


def _list_instances(path: Path) -> Iterator[Instance]:
    with path.open(encoding="utf-8", newline="") as lines:
        for row in csv.DictReader(lines):
            file = path.parent / row["file"]
            if not file.exists():
                print(f"{row['file']:34} is listed and not there")
            elif "capacity" in row:
                yield Instance(file.stem, read_lengths(file.read_text()), plan_boards, int(row["optimum"]))
            elif row["problem"].startswith("min"):
                yield _read_sheets(file, int(row["published_value"]))
            else:
                print(f"{file.stem:34} asks for the greatest value out of one sheet: no planner here does")


def read_lengths(text: str) -> Task:
    """Boards of one length, each at a price of 1."""
    lines = [[int(word) for word in line.split()] for line in text.splitlines() if line.strip()]
    capacity = lines[1][0]
    wanted = tuple(
        Wanted(f"p{n}", row[0], 1, row[1] if len(row) > 1 else 1) for n, row in enumerate(lines[2:])
    )
    return Task(wanted, (Stock("roll", capacity, 1, 1),), 0)


def _read_sheets(file: Path, known: int) -> Instance:
    from model.cutting.sheets import plan_sheets

    rows = [line.split() for line in file.read_text().splitlines() if line.strip() and line[0] != "#"]
    sheets = [[int(word) for word in row[1:]] for row in rows if row[0] == "sheet"]
    pieces = [[int(word) for word in row[1:]] for row in rows if row[0] == "item"]
    priced = len(sheets) > 1
    stock = tuple(
        Stock(f"s{n}", length, width, price if priced else 1, None if copies < 0 else copies)
        for n, (length, width, price, copies) in enumerate(sheets)
    )
    wanted = tuple(Wanted(f"p{n}", *row[:2], count=row[2]) for n, row in enumerate(pieces))
    return Instance(file.stem, Task(wanted, stock, 0), plan_sheets, known)


if __name__ == "__main__":
    arguments = sys.argv[1:]
    if not arguments:
        raise SystemExit("Say which folder holds the instances.")
    raise SystemExit(main(Path(arguments[0]), *map(float, arguments[1:2])))
