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
from model.cutting.task import Effort, Proof, Stock, Task, Wanted

SECONDS = 20.0
"""For each instance, unless a second argument says otherwise."""
LIST = "known_optima.csv"


@dataclass(frozen=True)
class Instance:
    """A file, the task it holds, who plans it, and the cost that is known to be least, or the value most."""

    name: str
    task: Task
    prove: Callable[[Task, Effort], Proof]
    known: int
    is_value: bool = False


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
        proof = each.prove(each.task, Effort(lambda start=start: perf_counter() - start > seconds))
        took = perf_counter() - start
        proven = "yes" if proof.is_proven else "no"
        numbers = f"{each.known:10}{proof.cost:10}{proof.bound:10}{proven:>8}{took:9.2f}"
        print(f"{each.name:34}{numbers}", flush=True)
        missed += _list_faults(each, proof)
    print(f"\nNot reached or not proven: {len(missed)}")
    print("\n".join(missed))
    return 1 if missed else 0


def _list_faults(each: Instance, proof: Proof) -> Iterator[str]:
    """What is not as it should be: of values the greatest is known, of costs the least."""
    sign = -1 if each.is_value else 1
    if sign * proof.cost > sign * each.known or not proof.is_proven:
        yield f"{each.name}: reached {proof.cost} of {each.known}, gap {sign * (proof.cost - proof.bound)}"
    if sign * proof.bound > sign * each.known:
        yield f"{each.name}: BOUND {proof.bound} IS BEYOND WHAT IS KNOWN, {each.known}"


def _list_instances(path: Path) -> Iterator[Instance]:
    with path.open(encoding="utf-8", newline="") as lines:
        for row in csv.DictReader(lines):
            file = path.parent / row["file"]
            if not file.exists():
                print(f"{row['file']:34} is listed and not there")
            elif "capacity" in row:
                yield Instance(file.stem, read_lengths(file.read_text()), _prove_boards, int(row["optimum"]))
            elif row["problem"].startswith("min"):
                yield _read_sheets(file, int(row["published_value"]))
            else:
                yield _read_values(file, int(row["published_value"]), "unlimited" in row["problem"])


def _prove_boards(task: Task, effort: Effort) -> Proof:
    return plan_boards(task, effort).proof


def _prove_sheets(task: Task, effort: Effort) -> Proof:
    from model.cutting.sheets import plan_sheets

    return plan_sheets(task, effort).proof


def read_lengths(text: str) -> Task:
    """Boards of one length, each at a price of 1."""
    lines = [[int(word) for word in line.split()] for line in text.splitlines() if line.strip()]
    capacity = lines[1][0]
    wanted = tuple(
        Wanted(f"p{n}", row[0], 1, row[1] if len(row) > 1 else 1) for n, row in enumerate(lines[2:])
    )
    return Task(wanted, (Stock("roll", capacity, 1, 1),), 0)


def _read_rows(file: Path) -> tuple[list[list[int]], list[list[int]]]:
    """The numbers of the lines of sheets and of items."""
    rows = [line.split() for line in file.read_text().splitlines() if line.strip() and line[0] != "#"]
    sheets = [[int(word) for word in row[1:]] for row in rows if row[0] == "sheet"]
    return sheets, [[int(word) for word in row[1:]] for row in rows if row[0] == "item"]


def _read_sheets(file: Path, known: int) -> Instance:
    sheets, pieces = _read_rows(file)
    priced = len(sheets) > 1
    stock = tuple(
        Stock(f"s{n}", length, width, price if priced else 1, None if copies < 0 else copies)
        for n, (length, width, price, copies) in enumerate(sheets)
    )
    wanted = tuple(Wanted(f"p{n}", *row[:2], count=row[2]) for n, row in enumerate(pieces))
    return Instance(file.stem, Task(wanted, stock, 0), _prove_sheets, known)


def _read_values(file: Path, known: int, is_endless: bool) -> Instance:
    """One sheet, the greatest value of pieces; without an end there are as many of each as lie on it."""
    from tests.bench.most_value import find_most

    sheets, pieces = _read_rows(file)
    length, width = sheets[0][:2]
    wanted = tuple(
        Wanted(f"p{n}", a, b, (length // a) * (width // b) if is_endless else copies)
        for n, (a, b, copies, _) in enumerate(pieces)
    )
    values = {f"p{n}": row[3] for n, row in enumerate(pieces)}

    def prove(task: Task, effort: Effort) -> Proof:
        return find_most(task, values, is_endless, effort.should_stop)

    return Instance(file.stem, Task(wanted, (Stock("s", length, width, 1),), 0), prove, known, is_value=True)


if __name__ == "__main__":
    arguments = sys.argv[1:]
    if not arguments:
        raise SystemExit("Say which folder holds the instances.")
    raise SystemExit(main(Path(arguments[0]), *map(float, arguments[1:2])))
