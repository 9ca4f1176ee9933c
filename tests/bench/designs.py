"""Random designs through everything: ``python -m tests.bench.designs [COUNT [SKIP]] [--only WORD]``.

Every property test that asks for a job is a claim about designs, and each is held against COUNT designs
(20,000 if not said), after SKIP others. A design has a number and is the same in every run. Claims about a
narrower kind, such as gas fireplaces or sides alike, are held against every second design, with the rows
put on it that make it one; those about fireplaces as they are usual draw their own. A few take longer than
all others together, such as those that cast rays: `SELDOM` names them, and the last lines say against how
many designs each was held. A design that breaks a claim is written as a job file into ``broken/`` here.

With ``--kept FILE`` each lot of numbers that is done leaves a line there, with the commit it was done at;
numbers that have one are not done again, so that a long run may be stopped and gone on with.
"""

from __future__ import annotations

import gc
import sys
import traceback
import warnings
from argparse import ArgumentParser, Namespace
from collections import Counter
from collections.abc import Iterable
from concurrent.futures import ProcessPoolExecutor, as_completed
from functools import cache
from multiprocessing import get_context
from pathlib import Path
from time import monotonic, process_time

from hypothesis.errors import UnsatisfiedAssumption

from app.files import save_job_file
from app.own_process import count_cores
from model.job import Job
from tests.bench.claims import Claim, list_claims
from tests.bench.drawn import Drawing, draw_design
from tests.bench.held import Lot, add_lot, count_tried, find_commit, read_lots
from tests.strategies import narrow, put_design

COUNT, LOT = 20_000, 10
"""Designs of a run, and designs that one process works through before it tells."""
MADE_BETWEEN = 50_000
"""How many more values there are when waste is looked for again."""
DEAREST = 8
"""How many claims are named at the end with the processor time they take."""
SHOWN = 12
"""Lines of a fault that are shown."""


def main() -> int:
    """The exit code: 1 where a claim did not hold."""
    wish = _read_wish()
    start, commit = monotonic(), find_commit()
    done = read_lots(wish.kept)
    held = {number for lot in done for number in range(lot.first, lot.stop)}
    lots = [first for first in _list_lots(wish.count, wish.skip) if first not in held]
    with ProcessPoolExecutor(wish.cores, mp_context=get_context("spawn")) as pool:
        for lot in as_completed([pool.submit(try_lot, first, wish.only, commit) for first in lots]):
            done.append(lot.result())
            add_lot(wish.kept, done[-1])
            so_far = sum(lot.stop - lot.first for lot in done)
            print(f"\r{so_far} designs, {monotonic() - start:.0f} s", end="", file=sys.stderr, flush=True)
    print(f"\n{sum_up(done)}")
    return 1 if any(lot.faults for lot in done) else 0


def _read_wish() -> Namespace:
    parser = ArgumentParser(prog="python -m tests.bench.designs", description=(__doc__ or "").split("\n")[0])
    parser.add_argument("count", nargs="?", type=int, default=COUNT)
    parser.add_argument("skip", nargs="?", type=int, default=0)
    parser.add_argument("--only", default="", help="only claims whose name has this in it")
    parser.add_argument("--cores", type=int, default=count_cores(), help="processes at once")
    parser.add_argument("--kept", type=Path, help="file that says which numbers are done")
    return parser.parse_args()


def _list_lots(count: int, skip: int) -> range:
    """The first number of each lot."""
    return range(skip // LOT * LOT, skip + count, LOT)


def sum_up(lots: list[Lot]) -> str:
    """How many designs at which commit, how often each claim was held, and what took longest."""
    tried, seconds = count_tried(lots), Counter[str]()
    for lot in lots:
        seconds.update(lot.seconds)  # type: ignore[arg-type]
    designs = sum(lot.stop - lot.first for lot in lots)
    faults = [fault for lot in lots for fault in lot.faults]
    lines = [
        f"{designs} designs, {len(tried)} claims, {len(faults)} broken, {tried.total()} tries",
        f"  {seconds.total() / max(designs, 1):.2f} s of processor time a design, drawing it left out",
        *_list_commits(lots),
        *(f"  broken: {name} by design {number}" for name, number in faults),
        *_list_seldom(tried, designs),
    ]
    for name, taken in seconds.most_common(DEAREST):
        lines.append(f"  {taken / seconds.total():4.0%} {1000 * taken / tried[name]:7.1f} ms  {name}")
    return "\n".join(lines)


def _list_commits(lots: Iterable[Lot]) -> list[str]:
    counts: Counter[str] = Counter()
    for lot in lots:
        counts[lot.commit] += lot.stop - lot.first
    return [f"  {count} of them at {commit or 'no commit'}" for commit, count in counts.items()]


def _list_seldom(tried: Counter[str], designs: int) -> list[str]:
    return [f"  held against {n} of them only: {name}" for name, n in tried.items() if n < designs]


def try_lot(first: int, only: str, commit: str = "") -> Lot:
    """Hold all claims against the designs of one lot."""
    _load_claims()
    told = Lot(commit, first, first + LOT)
    faults = [fault for number in range(first, told.stop) for fault in try_design(number, only, told)]
    return Lot(commit, first, told.stop, told.tried, told.seconds, tuple(faults))


@cache
def _load_claims() -> None:
    """Once in each process; what is loaded is not looked through for waste, what is worked out seldom."""
    list_claims()
    gc.freeze()
    gc.set_threshold(MADE_BETWEEN)


def try_design(number: int, only: str, told: Lot) -> list[tuple[str, int]]:
    """Hold all claims whose turn it is against one design; which of them it breaks."""
    design, broken = draw_design(number), []
    for claim in list_claims():
        if only in claim.name and number % claim.every == 0:
            start = process_time()
            with put_design(design):
                fault = _try(claim, number, design)
            told.seconds[claim.name] = told.seconds.get(claim.name, 0.0) + process_time() - start
            told.tried[claim.name] = told.tried.get(claim.name, 0) + 1
            if fault:
                broken.append((claim.name, number))
                print(f"{claim.name} by design {number}\n{fault}", flush=True)
    return broken


def _try(claim: Claim, number: int, design: Job) -> str:
    """The last lines of what went wrong; nothing where the claim holds or says nothing about this design."""
    drawing = Drawing(claim.name, number)
    asked: dict[str, object] = {}
    try:
        with warnings.catch_warnings(), drawing.going_on():
            warnings.simplefilter("error")
            for name, strategy in claim.asks.items():
                asked[name] = narrow(strategy, design) or drawing.draw(strategy)
            claim.test(**asked)
    except UnsatisfiedAssumption:
        pass
    except Exception:
        said = "".join(traceback.format_exc(limit=-3).splitlines(keepends=True)[-SHOWN:])
        return said + (
            f"  kept as {_keep(claim, job, number)}" if isinstance(job := asked.get("job"), Job) else ""
        )
    return ""


def _keep(claim: Claim, job: Job, number: int) -> Path:
    folder = Path("broken")
    folder.mkdir(exist_ok=True)
    path = folder / f"{claim.name.rpartition('.')[2][:60]}-{number}.mantel"
    save_job_file(path, job)
    return path


if __name__ == "__main__":
    sys.exit(main())
