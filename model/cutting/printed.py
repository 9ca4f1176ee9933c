"""What changed since a buying list was last printed, from a compact record of its counts."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from model.cutting.buying import BuyingList, describe_line
from model.errors import Refused, StockRefused
from model.json_object import Unread, check_version, read_object
from model.units import FEET_INCHES_16

FORMAT_KEY = "printed_list"
FORMAT_VERSION = 1
EXAMPLE = '{"printed_list": 1, "counts": {"1x6 yellow poplar, 8\'": 3}}'
MOST = 1_000_000

Counts = Mapping[str, int]
"""How many of each item were to be bought, spare ones included, by what it is called on the list."""


@dataclass(frozen=True, slots=True)
class Change:
    """One item of which more, fewer, or none are bought now."""

    item: str
    before: int
    now: int


def count_printed(buying: BuyingList) -> dict[str, int]:
    """The record of a list as it is printed now; items are named alike whatever the job's units are."""
    counts: dict[str, int] = {}
    for line in buying.lines:
        item = describe_line(line, FEET_INCHES_16)
        counts[item] = counts.get(item, 0) + line.count + line.spare
    return counts


def list_changes(before: Counts, now: Counts) -> tuple[Change, ...]:
    """What differs, in the order of the list as it is now; what is no longer bought comes last."""
    items = [*now, *(item for item in before if item not in now)]
    changes = (Change(item, before.get(item, 0), now.get(item, 0)) for item in items)
    return tuple(change for change in changes if change.before != change.now)


def write_printed(counts: Counts) -> str:
    """JSON text of a record, for keeping beside the jobs."""
    import msgspec

    text = {FORMAT_KEY: FORMAT_VERSION, "counts": dict(counts)}
    return msgspec.json.format(msgspec.json.encode(text), indent=1).decode() + "\n"


def read_printed(text: str | bytes) -> dict[str, int]:
    """The record that `text` holds. Raises StockRefused."""
    try:
        data = read_object(text, FORMAT_KEY, "a printed list's record", EXAMPLE)
        check_version(data.pop(FORMAT_KEY), FORMAT_KEY, FORMAT_VERSION)
    except Unread as trouble:
        raise StockRefused(trouble.faults) from None
    unknown = [name for name in data if name != "counts"]
    if unknown:
        raise StockRefused(tuple(f"{name}: not known here" for name in unknown))
    try:
        return check_counts(data.get("counts", {}))
    except Refused as refusal:
        raise StockRefused((str(refusal),)) from None


def check_counts(counts: Any) -> dict[str, int]:
    """The counts themselves. Raises Refused for what are none."""
    if not isinstance(counts, dict):
        raise Refused("counts", counts, "write an object of items with their counts")
    for item, count in counts.items():
        if isinstance(count, bool) or not isinstance(count, int) or not 0 <= count <= MOST:
            raise Refused(f"counts, {item}", count, f"write a whole number from 0 to {MOST}")
    return dict(counts)
