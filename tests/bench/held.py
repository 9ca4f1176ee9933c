"""What a long run of designs leaves in a file, so that it can be gone on with: a line for each lot.

A line says at which state of the code, against which numbers and how often each claim was held, and what
broke. Running and judging are not done here.
"""

from __future__ import annotations

import json
from collections import Counter
from collections.abc import Iterable
from dataclasses import asdict, dataclass, field
from pathlib import Path
from subprocess import run

ROOT = Path(__file__).parents[2]


@dataclass(frozen=True, slots=True)
class Lot:
    """Designs `first` up to, not with, `stop`: how often each claim was held, its seconds, claims broken."""

    commit: str
    first: int
    stop: int
    tried: dict[str, int] = field(default_factory=dict)
    seconds: dict[str, float] = field(default_factory=dict)
    faults: tuple[tuple[str, int], ...] = ()


def read_lots(path: Path | None) -> list[Lot]:
    """Lots that are done; none where there is no file yet."""
    if path is None or not path.exists():
        return []
    return [Lot(**json.loads(line)) for line in path.read_text("utf-8").splitlines()]


def add_lot(path: Path | None, lot: Lot) -> None:
    """One more line."""
    if path is not None:
        with path.open("a", encoding="utf-8") as file:
            file.write(json.dumps(asdict(lot)) + "\n")


def find_commit() -> str:
    """The commit of this code, with a plus where something was changed since; empty outside a repository."""

    def ask(*words: str) -> str:
        return run(
            ["git", "-C", str(ROOT), *words], capture_output=True, text=True, check=False
        ).stdout.strip()

    return ask("rev-parse", "--short=10", "HEAD") + ("+" if ask("status", "--porcelain", "-uno") else "")


def count_tried(lots: Iterable[Lot]) -> Counter[str]:
    """How often each claim was held."""
    tried: Counter[str] = Counter()
    for lot in lots:
        tried.update(lot.tried)
    return tried
