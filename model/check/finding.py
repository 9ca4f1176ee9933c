"""What a check says: one finding for each rule and part. The rules stand in the files beside this one."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING

from model.reference.sourced import Standing

if TYPE_CHECKING:
    from model.board import Point3


class Status(StrEnum):
    """The answer, worst first. UNKNOWN means that nothing is known to hold it against."""

    FAIL = "fail"
    UNKNOWN = "unknown"
    WARN = "warn"
    PASS = "pass"


class Bound(StrEnum):
    """Which way a limit holds: what is measured must be at least, or at most, as much."""

    LEAST = "least"
    MOST = "most"


STATUS_WORD = {
    Status.FAIL: "over",
    Status.UNKNOWN: "not known",
    Status.WARN: "close",
    Status.PASS: "within",
}
"""The word a person reads for each status, on screen and paper."""


@dataclass(frozen=True, slots=True)
class Finding:
    """One result. `measured` and `limit` in `unit`; `None` where there is nothing to compare;
    `bound` says which way the limit holds.

    `check` is a short identifier ("mantel clearance"), `part` the thing in the trade's words ("left
    column"), `message` a whole sentence. `at` is the worst point in the room, `boards` the marks of the
    boards concerned, `path` the parameter that moves it, `cure` a sentence, empty when nothing is wrong.
    """

    check: str
    rule: str
    standing: Standing
    source: str
    status: Status
    part: str
    measured: float | None
    limit: float | None
    unit: str
    message: str
    cure: str = ""
    at: Point3 | None = None
    boards: tuple[str, ...] = ()
    path: str = ""
    bound: Bound = Bound.LEAST


def count_statuses(findings: Iterable[Finding]) -> tuple[tuple[Status, int], ...]:
    """How many findings there are of each status that occurs, worst first."""
    counts = Counter(finding.status for finding in findings)
    return tuple((status, counts[status]) for status in Status if counts[status])


@dataclass(frozen=True, slots=True)
class Guide:
    """A published proportion beside the design's own; never a failure. Values in `unit`.

    `lines` are where the advised ends lie on the front: x, y of both ends of each, inches.
    """

    name: str
    own: float
    advised_low: float
    advised_high: float
    unit: str
    standing: Standing
    source: str
    path: str = ""
    lines: tuple[tuple[float, float, float, float], ...] = ()
