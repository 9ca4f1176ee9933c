"""First designs of many random sites: whether each passes every check, and how long one takes.

``python -m tests.bench.first_designs [COUNT [SKIP]]``: COUNT sites, 500 if not said, after SKIP others, the
guides by turns. Prints what is left over of each and how many boards are ripped; ends with 1 if anything is.
"""

from __future__ import annotations

import sys
from statistics import median
from time import monotonic, process_time

from model.check.first_design import GUIDES, size_first_design
from tests.numbered import draw_numbered, read_slice
from tests.usual_sites import sites

COUNT = 500


def main() -> int:
    """Go through as many sites as the command line says."""
    count, skip = read_slice(COUNT)
    wrong, ripped, boards, begun = 0, 0, 0, monotonic()
    seconds: list[float] = []
    for number in range(skip, skip + count):
        start = process_time()
        first = size_first_design(draw_numbered(sites(), number), GUIDES[number % len(GUIDES)])
        seconds.append(process_time() - start)
        if first is None:
            wrong += 1
            print(f"{number} nothing is sized", flush=True)
            continue
        wrong += bool(first.left)
        ripped, boards = ripped + first.ripped, boards + first.boards
        for finding in first.left:
            print(f"{number} left over: {finding.message}", flush=True)
    print(
        f"{count} sites in {monotonic() - begun:.0f} s: {wrong} that do not pass; of {boards} boards "
        f"{ripped} are ripped; s of processor time: median {median(seconds):.2f}, most {max(seconds):.2f}"
    )
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main())
