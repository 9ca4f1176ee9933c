"""``python -m tests.bench.kills [COUNT]``: COUNT kills, 1000 if not said, at random moments of saving."""

from __future__ import annotations

import sys
from collections import Counter
from pathlib import Path
from random import Random
from tempfile import TemporaryDirectory

from app.files import PART_SUFFIX
from tests.kills import kill_once, list_broken, list_there, list_whole

COUNT = 1000


def main() -> int:
    """The exit code: 1 where a file was lost or broken."""
    count = int(sys.argv[1]) if len(sys.argv) > 1 else COUNT
    chance, whole, broken, parts = Random(1), list_whole(), Counter[str](), 0
    with TemporaryDirectory() as name:
        folder = Path(name)
        for _ in range(count):
            before = list_there(folder, whole)
            kill_once(folder, chance)
            broken.update(list_broken(folder, whole, before))
            parts = max(parts, len(list(folder.rglob(f"*{PART_SUFFIX}"))))
    for fault, times in broken.items():
        print(f"{fault} ({times} times)")
    print(
        f"{count} kills while {len(whole)} files were written in turn: {broken.total()} lost or broken, "
        f"at most {parts} hidden parts beside them"
    )
    return 1 if broken else 0


if __name__ == "__main__":
    sys.exit(main())
