"""Whether a task makes sense at all. What no stock holds is no such fault: a planner refuses it by name."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable

from model.cutting.task import Task
from model.errors import Refused


def check_task(task: Task) -> None:
    """Raise `Refused` for a number, price, trim or mitre below 0, and for a key that stands twice.

    Sizes are left to whoever plans: one board without a size does not hold up the others.
    """
    _check_not_negative("kerf", task.kerf)
    _check_not_negative("length worth keeping", task.keep)
    for each in task.stock:
        _check_not_negative(f"price of {each.key}", each.price)
        _check_not_negative(f"number of {each.key}", each.supply or 0)
        _check_not_negative(f"end trim of {each.key}", each.trim_ends)
        _check_not_negative(f"edge trim of {each.key}", each.trim_edges)
    for piece in task.wanted:
        _check_not_negative(f"number of {piece.key}", piece.count)
        _check_not_negative(f"mitre of {piece.key}", min(piece.mitre_low, piece.mitre_high))
    _check_once("piece", (piece.key for piece in task.wanted))
    _check_once("stock", (each.key for each in task.stock))


def _check_not_negative(field: str, read: int) -> None:
    if read < 0:
        raise Refused(field, read, "write 0 or more")


def _check_once(field: str, keys: Iterable[str]) -> None:
    for key, count in Counter(keys).items():
        if count > 1:
            raise Refused(field, key, "name each only once, with its count")
