"""Random designs through everything: ``python -m tests.bench.designs [COUNT [SKIP]] [--only WORD]``.

Every property test that asks for a job is a claim about designs, and each is held against COUNT of the
designs that its own strategy draws (20,000 if not said), after SKIP others, spread over the cores. Claims
about any job at all are held against the same designs; those about a narrower kind, such as gas fireplaces or
sides alike, against designs of that kind. A few take longer than all others together, such as those that cast
rays: `SELDOM` names them and says against every which design they are held, and so do the last lines. A
design that breaks a claim is written as a job file into ``broken/`` here, and the claim is named.
"""

from __future__ import annotations

import importlib
import sys
import traceback
import warnings
from argparse import ArgumentParser
from collections import Counter
from collections.abc import Callable, Iterator
from concurrent.futures import ProcessPoolExecutor, as_completed
from dataclasses import dataclass, field
from functools import cache
from multiprocessing import get_context
from pathlib import Path
from time import monotonic, process_time
from typing import Any

from hypothesis import HealthCheck, Phase, given, seed, settings
from hypothesis import strategies as st
from hypothesis.errors import UnsatisfiedAssumption

from app.files import save_job_file
from app.many_jobs import count_cores
from model.job import Job
from tests.strategies import jobs

COUNT, LOT = 20_000, 50
"""Designs of a run, and designs that one process works through before it tells."""
SELDOM = {
    "test_what_shows_of_any_design_is_what_a_ray_meets_first": 10,
    "test_rays_meet_the_same_in_a_photo_of_any_design": 10,
    "test_rays_to_the_light_find_the_same_shadows_on_any_design": 10,
    "test_it_passes_every_check_of_any_usual_fireplace": 10,
    "test_joints_of_any_job_are_as_long_when_it_is_turned_over": 10,
    "test_any_job_in_range_may_be_cured_or_not_but_never_raises": 10,
    "test_any_cure_that_is_offered_clears_its_finding_and_hides_no_harm": 5,
    "test_no_value_on_a_fine_grid_does_as_much_and_is_nearer": 5,
}
"""Claims that are held against every so many designs only, by name."""
DEAREST = 8
"""How many claims are named at the end with the processor time they take."""
TESTS = Path(__file__).parents[1]


@dataclass(frozen=True, slots=True)
class Claim:
    """A property test: what it is called, what it does, and the strategies that draw what it asks for."""

    name: str
    test: Callable[..., None]
    asks: dict[str, st.SearchStrategy[Any]]

    @property
    def every(self) -> int:
        """It is held against every so manyth design."""
        return SELDOM.get(self.name.rpartition(".")[2], 1)


@dataclass(frozen=True, slots=True)
class Told:
    """What became of one lot.

    How often each claim was tried and the seconds of processor time it took; each fault with its claim and
    its design.
    """

    tried: Counter[str] = field(default_factory=Counter)
    seconds: Counter[str] = field(default_factory=Counter)
    faults: list[tuple[str, str, Job]] = field(default_factory=list)


def main() -> int:
    """The exit code: 1 where a claim did not hold."""
    parser = ArgumentParser(prog="python -m tests.bench.designs", description=(__doc__ or "").split("\n")[0])
    parser.add_argument("count", nargs="?", type=int, default=COUNT)
    parser.add_argument("skip", nargs="?", type=int, default=0)
    parser.add_argument("--only", default="", help="only claims whose name has this in it")
    parser.add_argument("--cores", type=int, default=count_cores(), help="processes at once")
    wish = parser.parse_args()
    start, whole = monotonic(), Told()
    lots = range(wish.skip // LOT, -(-(wish.skip + wish.count) // LOT))
    with ProcessPoolExecutor(wish.cores, mp_context=get_context("spawn")) as pool:
        for done in as_completed([pool.submit(try_lot, lot, wish.only) for lot in lots]):
            told = done.result()
            whole.tried.update(told.tried)
            whole.seconds.update(told.seconds)
            for claim, fault, job in told.faults:
                whole.faults.append((claim, fault, job))
                print(
                    f"{claim}\n{fault}  kept as {_keep(claim, job, wish.skip + len(whole.faults))}",
                    flush=True,
                )
            most = max(whole.tried.values(), default=0)
            print(f"\r{most} designs, {monotonic() - start:.0f} s", end="", file=sys.stderr, flush=True)
    print(f"\n{_sum_up(whole)}")
    return 1 if whole.faults else 0


def _sum_up(whole: Told) -> str:
    """How many designs, claims and faults; what was held less often than the rest; what took longest."""
    most, seconds = max(whole.tried.values(), default=0), whole.seconds.total()
    lines = [
        f"{most} designs, {len(whole.tried)} claims, {len(whole.faults)} broken, {whole.tried.total()} tries",
        f"  {seconds / max(most, 1):.2f} s of processor time a design, drawing it left out",
    ]
    lines += [f"  against every {every}th design only: {name}" for name, every in SELDOM.items()]
    for name, taken in whole.seconds.most_common(DEAREST):
        lines.append(f"  {taken / seconds:4.0%} {1000 * taken / whole.tried[name]:7.1f} ms  {name}")
    return "\n".join(lines)


def _keep(claim: str, job: Job, number: int) -> Path:
    folder = Path("broken")
    folder.mkdir(exist_ok=True)
    path = folder / f"{claim.rpartition('.')[2][:60]}-{number}.mantel"
    save_job_file(path, job)
    return path


def try_lot(lot: int, only: str) -> Told:
    """Hold all claims against the designs of one lot; the same lot holds the same designs in every run."""
    told = Told()
    claims = [claim for claim in list_claims() if only in claim.name]
    about_any = [claim for claim in claims if claim.asks["job"] is jobs()]
    _try_together(about_any, lot, told)
    for claim in claims:
        if claim not in about_any:
            _try_together([claim], lot, told)
    return told


def _try_together(claims: list[Claim], lot: int, told: Told) -> None:
    """Hold claims that ask for the same kind of job against the same jobs."""
    if not claims:
        return
    others = {c.name: st.fixed_dictionaries({k: s for k, s in c.asks.items() if k != "job"}) for c in claims}
    held = 0

    @seed(lot)
    @settings(
        max_examples=-(-LOT // (claims[0].every if len(claims) == 1 else 1)),
        database=None,
        deadline=None,
        phases=(Phase.generate,),
        suppress_health_check=list(HealthCheck),
    )
    @given(claims[0].asks["job"], st.fixed_dictionaries(others))
    def run(job: Job, rest: dict[str, dict[str, Any]]) -> None:
        nonlocal held
        held += 1
        for claim in claims:
            if len(claims) == 1 or held % claim.every == 0:
                start = process_time()
                fault = _try(claim, job, rest[claim.name])
                told.seconds[claim.name] += process_time() - start  # type: ignore[assignment]
                told.tried[claim.name] += 1
                if fault:
                    told.faults.append((claim.name, fault, job))

    run()


def _try(claim: Claim, job: Job, rest: dict[str, Any]) -> str:
    """The last lines of what went wrong; nothing where the claim holds or says nothing about this design."""
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("error")
            claim.test(job=job, **rest)
    except UnsatisfiedAssumption:
        pass
    except Exception:
        return "".join(traceback.format_exc(limit=-3).splitlines(keepends=True)[-12:])
    return ""


@cache
def list_claims() -> tuple[Claim, ...]:
    """Every property test that asks for one job."""
    return tuple(_find_claims())


def _find_claims() -> Iterator[Claim]:
    for path in sorted(TESTS.rglob("test_*.py")):
        if "@given(" not in path.read_text("utf-8"):
            continue
        name = ".".join(path.relative_to(TESTS.parent).with_suffix("").parts)
        for found, test in vars(importlib.import_module(name)).items():
            asks = getattr(getattr(test, "hypothesis", None), "_given_kwargs", {})
            if "job" in asks:
                yield Claim(f"{name}.{found}", test.hypothesis.inner_test, dict(asks))


if __name__ == "__main__":
    sys.exit(main())
