"""What changed since a buying list was last printed, from a compact record of its counts.

A job's own record stands in model.cutting.frozen, with the boards that were bought from the list.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from model.board import StockKind
from model.cutting.buying import BuyingList, Line, describe_moulding
from model.cutting.pieces import Material
from model.cutting.stock_list import HandRow, SoldRow, describe_row
from model.errors import Refused, StockRefused
from model.json_object import Unread, check_version, read_object
from model.units import FEET_INCHES_16

FORMAT_KEY = "printed_list"
FORMAT_VERSION = 1
EXAMPLE = '{"printed_list": 1, "counts": {"1x6 yellow poplar, 8\'": 3}}'
MOST = 1_000_000
"""Largest count that a record may hold."""

Counts = Mapping[str, int]
"""How many of each item were to be bought, spare ones included, by what it is called on the list."""


@dataclass(frozen=True, slots=True)
class Change:
    """One item of which more, fewer, or none are bought now."""

    item: str
    before: int
    now: int

    @property
    def words(self) -> str:
        """``new``, ``2 more``, ``1 fewer`` or, where none is left, ``gone``."""
        if not self.before or not self.now:
            return "gone" if self.before else "new"
        more = self.now - self.before
        return f"{more} more" if more > 0 else f"{-more} fewer"


def count_printed(buying: BuyingList) -> dict[str, int]:
    """The record of a list as it is printed now; items are named alike whatever the job's units are."""
    counts: dict[str, int] = {}
    for line in buying.lines:
        item = name_item(line.row, line.material)
        counts[item] = counts.get(item, 0) + line.count + line.spare
    return counts


def name_item(row: SoldRow | HandRow, material: Material) -> str:
    """What a record calls a size, the same whatever the job's units are; two rows alike are one item."""
    if row.kind is StockKind.MOULDING:
        return describe_moulding(row, material, FEET_INCHES_16)
    return describe_row(row, FEET_INCHES_16)


def list_changes(before: Counts, now: Counts) -> tuple[Change, ...]:
    """What differs, in the order of the list as it is now; what is no longer bought comes last."""
    items = [*now, *(item for item in before if item not in now)]
    changes = (Change(item, before.get(item, 0), now.get(item, 0)) for item in items)
    return tuple(change for change in changes if change.before != change.now)


def share_changes(
    changes: Sequence[Change], lines: Sequence[Line]
) -> tuple[tuple[Change | None, ...], tuple[Change, ...]]:
    """The change of each line, at the first line of its item; and those of what stands on no line."""
    left = {change.item: change for change in changes}
    shared = tuple([left.pop(name_item(line.row, line.material), None) for line in lines])
    return shared, tuple(left.values())


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
