"""Random designs through everything: ``python -m tests.bench.designs [COUNT [SKIP]] [--only WORD]``.

Every property test that asks for a job and nothing else is a claim about all designs; each is held against
the same COUNT designs (20,000 if not said), after SKIP others, spread over the cores. A design that breaks
one is written as a job file into ``broken/`` here, and the claim is named.
"""

from __future__ import annotations

import importlib
import inspect
import sys
import traceback
from argparse import ArgumentParser
from collections import Counter
from collections.abc import Callable, Iterator
from concurrent.futures import ProcessPoolExecutor, as_completed
from dataclasses import dataclass, field
from functools import cache
from multiprocessing import get_context
from pathlib import Path
from time import monotonic

from hypothesis import HealthCheck, Phase, given, seed, settings
from hypothesis.errors import UnsatisfiedAssumption

from app.files import save_job_file
from app.many_jobs import count_cores
from model.job import Job
from tests.strategies import jobs

COUNT, LOT = 20_000, 50
"""Designs of a run, and designs that one process works through before it tells."""
TESTS = Path(__file__).parents[1]
Claim = Callable[[Job], None]


@dataclass(frozen=True, slots=True)
class Told:
    """What became of one lot: how often each claim was tried; each fault with its claim and its design."""

    tried: Counter[str] = field(default_factory=Counter)
    faults: list[tuple[str, str, Job]] = field(default_factory=list)


def main() -> int:
    """The exit code: 1 where a claim did not hold."""
    parser = ArgumentParser(prog="python -m tests.bench.designs", description=(__doc__ or "").split("\n")[0])
    parser.add_argument("count", nargs="?", type=int, default=COUNT)
    parser.add_argument("skip", nargs="?", type=int, default=0)
    parser.add_argument("--only", default="", help="only claims whose name has this in it")
    wish = parser.parse_args()
    start, tried, broken = monotonic(), Counter[str](), 0
    lots = range(wish.skip // LOT, -(-(wish.skip + wish.count) // LOT))
    with ProcessPoolExecutor(count_cores(), mp_context=get_context("spawn")) as pool:
        for done in as_completed([pool.submit(try_lot, lot, wish.only) for lot in lots]):
            told = done.result()
            tried += told.tried
            for claim, fault, job in told.faults:
                broken += 1
                print(f"{claim}\n{fault}  kept as {_keep(claim, job, broken)}", flush=True)
            most = max(tried.values(), default=0)
            print(f"\r{most} designs, {monotonic() - start:.0f} s", end="", file=sys.stderr, flush=True)
    most = max(tried.values(), default=0)
    print(f"\n{most} designs, {len(tried)} claims, {broken} broken, {tried.total()} trials")
    return 1 if broken else 0


def _keep(claim: str, job: Job, number: int) -> Path:
    folder = Path("broken")
    folder.mkdir(exist_ok=True)
    path = folder / f"{claim.rpartition('.')[2][:60]}-{number}.mantel"
    save_job_file(path, job)
    return path


def try_lot(lot: int, only: str) -> Told:
    """Hold all claims against the designs of one lot; the same lot holds the same designs in every run."""
    told = Told()
    claims = {name: claim for name, claim in list_claims().items() if only in name}

    @seed(lot)
    @settings(
        max_examples=LOT,
        database=None,
        deadline=None,
        phases=(Phase.generate,),
        suppress_health_check=HealthCheck,
    )
    @given(jobs())
    def run(job: Job) -> None:
        for name, claim in claims.items():
            told.tried[name] += 1
            if fault := _try(claim, job):
                told.faults.append((name, fault, job))

    run()
    return told


def _try(claim: Claim, job: Job) -> str:
    """The last lines of what went wrong; nothing where the claim holds or says nothing about this design."""
    try:
        claim(job)
    except UnsatisfiedAssumption:
        pass
    except Exception:
        return "".join(traceback.format_exc(limit=-3).splitlines(keepends=True)[-12:])
    return ""


@cache
def list_claims() -> dict[str, Claim]:
    """Every property test about any one job, by module and name."""
    return dict(_find_claims())


def _find_claims() -> Iterator[tuple[str, Claim]]:
    for path in sorted(TESTS.rglob("test_*.py")):
        if "jobs()" not in path.read_text("utf-8"):
            continue
        name = ".".join(path.relative_to(TESTS.parent).with_suffix("").parts)
        for found, test in vars(importlib.import_module(name)).items():
            inner = getattr(getattr(test, "hypothesis", None), "inner_test", None)
            if inner is not None and list(inspect.signature(inner).parameters) == ["job"]:
                yield f"{name}.{found}", inner


if __name__ == "__main__":
    sys.exit(main())
