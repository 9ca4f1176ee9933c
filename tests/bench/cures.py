"""Cures of many random designs that fail, each held against the model by a fine grid; and how long they take.

``python -m tests.bench.cures [COUNT [SKIP]]``: COUNT designs, 500 if not said, after SKIP others. One finding
of each is taken by turns. Prints what is wrong with a cure, then times; ends with 1 if anything was wrong.
"""

from __future__ import annotations

import sys
from collections import Counter
from statistics import median, quantiles
from time import monotonic, process_time

from model.check.all import check_surround
from model.check.finding import Finding, Status
from model.check.mantel import CHECK as MANTEL
from model.check.remedy import Remedy, find_remedies
from model.job import Job
from model.surround import Surround, plan_surround
from tests.cure_trials import hold_cure
from tests.numbered import draw_numbered, read_slice
from tests.wrong_designs import designs

COUNT = 500


def pick_finding(job: Job, number: int) -> tuple[Surround, Finding] | None:
    """A finding that is over, clearances before others two times in three; None where nothing is."""
    surround = plan_surround(job)
    over = [f for f in check_surround(surround) if f.status is Status.FAIL]
    clearances = [f for f in over if f.check == MANTEL]
    among = clearances if clearances and number % 3 else over
    return (surround, among[number % len(among)]) if among else None


def main() -> int:
    """Go through as many designs as the command line says."""
    count, skip = read_slice(COUNT)
    amiss: Counter[str] = Counter()
    seconds: list[float] = []
    offered, number, begun, slowest = 0, skip, monotonic(), ""
    while len(seconds) < count:
        job = draw_numbered(designs(), number)
        picked = pick_finding(job, number)
        if picked is not None:
            start = process_time()
            remedies: tuple[Remedy, ...] = find_remedies(*picked)
            seconds.append(process_time() - start)
            if seconds[-1] == max(seconds):
                slowest = f"{number}, {picked[1].check} of the {picked[1].part}"
            offered += len(remedies)
            for remedy in remedies:
                for wrong in hold_cure(job, picked[1], remedy):
                    amiss[wrong.kind] += 1
                    print(f"{number} {wrong.kind}: {wrong.words}", flush=True)
            if not remedies and picked[1].check == MANTEL:
                amiss["none for a clearance"] += 0
                print(f"{number} no cure: {picked[1].part}: {picked[1].message}", flush=True)
        number += 1
    ninety = quantiles(seconds, n=10)[-1] if count > 1 else seconds[0]
    print(
        f"{count} findings of designs {skip} to {number - 1}, {offered} cures, {monotonic() - begun:.0f} s: "
        f"{dict(amiss) or 'nothing amiss'}"
    )
    print(
        f"s of processor time: median {median(seconds):.3f}, ninth {ninety:.3f}, "
        f"most {max(seconds):.3f} ({slowest})"
    )
    return 1 if sum(amiss.values()) else 0


if __name__ == "__main__":
    sys.exit(main())
