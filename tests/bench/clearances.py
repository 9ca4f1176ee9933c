"""Clearances of many random designs against points all over their boards, the rules written down twice.

``python -m tests.bench.clearances [COUNT [SKIP]]``: COUNT masonry designs, 500 if not said, after SKIP
others. Prints every disagreement; ends with 1 if there is any.
"""

from __future__ import annotations

import sys
from time import monotonic

from tests.brute_clearance import is_covered, list_disagreements
from tests.numbered import draw_numbered, read_slice
from tests.wrong_designs import designs

COUNT = 500


def main() -> int:
    """Go through as many designs as the command line says."""
    count, skip = read_slice(COUNT)
    held, wrong, number, begun = 0, 0, skip, monotonic()
    while held < count:
        job = draw_numbered(designs(), number)
        held += is_covered(job)
        for words in list_disagreements(job):
            wrong += 1
            print(f"{number} {words}", flush=True)
        number += 1
    print(f"{held} designs, {skip} to {number - 1}, in {monotonic() - begun:.0f} s: {wrong} disagreements")
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main())
